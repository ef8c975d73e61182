package section_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/section"
)

// ray returns how far it is from a point to the edge of a rectangle about the origin.
func ray(from geom.Point, angle, halfX, halfY float64) float64 {
	sin, cos := math.Sincos(angle)
	far := math.Inf(1)
	if math.Abs(cos) > 1e-12 {
		far = min(far, (math.Copysign(halfX, cos)-from.X)/cos)
	}
	if math.Abs(sin) > 1e-12 {
		far = min(far, (math.Copysign(halfY, sin)-from.Y)/sin)
	}
	return far
}

// bent returns the least moment per width by mechanisms of two flaps: hinges along
// two rays from a corner of the hull to the plate's edge and a fold between them, to
// which the flaps rise. Work of the loads over that of the yield lines; plastic
// moments are alike both ways (K. W. Johansen, from memory).
func bent(plate, hull []geom.Point, loads []section.Rod) (need float64) {
	halfX, halfY := plate[2].X, plate[2].Y
	const steps = 18
	for k, c := range hull {
		// Rays outside the hull: from along one face to along the other.
		first := math.Atan2(hull[(k+3)%4].Y-c.Y, hull[(k+3)%4].X-c.X)
		for i := range steps {
			for j := i + 2; j <= steps; j++ {
				low, high := first+1.5*math.Pi*float64(i)/steps, first+1.5*math.Pi*float64(j)/steps
				if high-low >= math.Pi {
					continue
				}
				for m := i + 1; m < j; m++ {
					fold := first + 1.5*math.Pi*float64(m)/steps
					if inside := func(a float64) bool {
						p := geom.Point{X: c.X + 1e-6*math.Cos(a), Y: c.Y + 1e-6*math.Sin(a)}
						return math.Abs(p.X) < hull[2].X && math.Abs(p.Y) < hull[2].Y
					}; inside(low) || inside(high) || inside(fold) {
						continue
					}
					w1, w2 := 1/math.Sin(fold-low), 1/math.Sin(high-fold) // rise of 1 at unit distance along the fold
					if !(w1 > 0 && w2 > 0) {
						continue
					}
					inner := ray(c, low, halfX, halfY)*w1 + ray(c, high, halfX, halfY)*w2 +
						ray(c, fold, halfX, halfY)*math.Abs(w1*math.Cos(fold-low)+w2*math.Cos(high-fold))
					outer := 0.0
					for _, l := range loads {
						d := math.Hypot(l.At.X-c.X, l.At.Y-c.Y)
						a := math.Atan2(l.At.Y-c.Y, l.At.X-c.X)
						for a < low {
							a += 2 * math.Pi
						}
						switch {
						case a <= fold:
							outer += l.Tension * d * math.Sin(a-low) * w1
						case a <= high:
							outer += l.Tension * d * math.Sin(high-a) * w2
						}
					}
					need = max(need, outer/inner)
				}
			}
		}
	}
	return need
}

// pieces returns a pressure over a convex zone as loads: the zone's triangles, each
// cut into equal ones.
func pieces(zone []geom.Point, pressure float64) (loads []section.Rod) {
	const n = 8
	for k := 1; k+1 < len(zone); k++ {
		o, a, b := zone[0], zone[k], zone[k+1]
		u := geom.Point{X: (a.X - o.X) / n, Y: (a.Y - o.Y) / n}
		v := geom.Point{X: (b.X - o.X) / n, Y: (b.Y - o.Y) / n}
		load := pressure * math.Abs(u.X*v.Y-u.Y*v.X) / 2
		for i := range n {
			for j := range n - i {
				for _, third := range [2]float64{1. / 3, 2. / 3} {
					if s, t := float64(i)+third, float64(j)+third; s+t < n {
						loads = append(loads, section.Rod{At: geom.Point{X: o.X + s*u.X + t*v.X, Y: o.Y + s*u.Y + t*v.Y}, Tension: load})
					}
				}
			}
		}
	}
	return loads
}

// TestSectionsStayBelowTheYieldLines holds that no mechanism of two flaps about a
// corner needs more of the plate than the worst section does, for rods and for
// pressure, and that a single rod never gets more than half of a full fan (2 pi).
func TestSectionsStayBelowTheYieldLines(t *testing.T) {
	closest, nearest := math.Inf(1), math.Inf(1)
	rapid.Check(t, func(t *rapid.T) {
		f := func(low, high float64, name string) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		x, y := f(200, 600, "x"), f(200, 600, "y")
		plate, hull := rectangle(x, y), rectangle(x*f(0.2, 0.7, "b"), y*f(0.2, 0.7, "h"))
		p, h := &section.Plate{Outline: plate}, &section.Hull{Corners: hull}
		var rods []section.Rod
		for range rapid.IntRange(1, 4).Draw(t, "n") {
			q := geom.Point{X: x / 2 * f(-0.95, 0.95, "rx"), Y: y / 2 * f(-0.95, 0.95, "ry")}
			if math.Abs(q.X) > hull[2].X+5 || math.Abs(q.Y) > hull[2].Y+5 {
				rods = append(rods, section.Rod{At: q, Tension: f(1e3, 1e5, "T")})
			}
		}
		need := bent(plate, hull, rods)
		for _, s := range []section.Spread{section.Wedge, section.YieldLines} {
			l := section.WorstPulled(p, h, rods, s)
			if need > 0 {
				closest = min(closest, l.Unit/need)
			}
			assert.False(t, !(l.Unit >= 0.999*need), "spread %d: %g below %g", s, l.Unit, need)
			for _, r := range rods {
				assert.False(t, !(l.Unit >= 0.999*r.Tension/(2*math.Pi)))
			}
		}
		// Pressure over a part of the plate, as loads in the middle of small triangles.
		a := f(0, 2*math.Pi, "neutral")
		sin, cos := math.Sincos(a)
		zone := geom.Beyond(plate, geom.Point{X: cos, Y: sin}, f(-0.3, 0.3, "off")*min(x, y))
		grid := pieces(zone, 10)
		l := section.WorstPressed(p, h, &section.Pressure{Zone: zone, P: 10}, nil)
		if need := bent(plate, hull, grid); need > 1 {
			nearest = min(nearest, l.Unit/need)
			assert.False(t, !(l.Unit >= 0.97*need), "pressed %g below %g", l.Unit, need)
		}
	})
	assert.Less(t, closest, 2.0, "the mechanisms come near")
	assert.Less(t, nearest, 1.5, "the mechanisms come near")
}
