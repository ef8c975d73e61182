package section_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/section"
)

func rectangle(x, y float64) []geom.Point {
	r := section.Rectangle(x, y)
	return r[:]
}

// even returns a pressure over a rectangle between two corners.
func even(x0, y0, x1, y1, p float64) *section.Pressure {
	return &section.Pressure{Zone: []geom.Point{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}, P: p}
}

// TestStraightFaceBendsAsACantilever holds p a^2/2 under the whole plate, p Y (a -
// Y/2) under a block at the edge, and the wedge and fan of a linear pressure.
func TestStraightFaceBendsAsACantilever(t *testing.T) {
	p := &section.Plate{Outline: rectangle(400, 600)}
	h := &section.Hull{Corners: rectangle(200, 200)}
	l := section.WorstPressed(p, h, even(-200, -300, 200, 300, 2), nil)
	assert.InEpsilon(t, 2.0*200*200/2, l.Unit, 1e-9, "m of the longer side")
	assert.InDelta(t, 400, l.Length, 1e-9)
	assert.InDelta(t, 100, l.Offset, 1e-9)
	l = section.WorstPressed(p, h, even(-200, 250, 200, 300, 12), nil)
	assert.InEpsilon(t, 12.0*50*(200-25), l.Unit, 1e-9, "a block of 50 mm")
	assert.InDelta(t, math.Pi/2, l.Angle, 1e-6)
	// From nothing at y = 0 to 3 MPa at the edge: 1 MPa at the face.
	z := even(-200, 0, 200, 300, 0)
	z.Y = 0.01
	assert.InEpsilon(t, 1.0*200*200/2+2.0*200*200/3, section.WorstPressed(p, h, z, nil).Unit, 1e-9)
	// A round hull: the chord square to the longer side.
	round := &section.Hull{Corners: []geom.Point{{}}, Round: 100}
	assert.InEpsilon(t, 2.0*200*200/2, section.WorstPressed(p, round, even(-200, -300, 200, 300, 2), nil).Unit, 1e-9)
}

// TestCornerBendsAcross holds a load at a free corner: m = F/2 across it, the exact
// collapse of a corner by K. W. Johansen (F = 2 m_pl).
func TestCornerBendsAcross(t *testing.T) {
	p := &section.Plate{Outline: rectangle(400, 400)}
	h := &section.Hull{Corners: rectangle(200, 200)}
	l := section.WorstPressed(p, h, even(198, 198, 200, 200, 25), nil)
	assert.InEpsilon(t, 100.0/2, l.Unit, 0.02)
	assert.InDelta(t, math.Pi/4, l.Angle, 0.01)
	// A rod there: wedge of 45 degrees, or the whole line across the corner.
	rods := []section.Rod{{At: geom.Point{X: 160, Y: 160}, Tension: 1000}}
	l = section.PulledAt(p, h, rods, section.Wedge, math.Pi/4)
	assert.InEpsilon(t, 500, l.Unit, 1e-6)
	l = section.PulledAt(p, h, rods, section.YieldLines, math.Pi/4)
	assert.InEpsilon(t, 1000*60*math.Sqrt2/(2*100*math.Sqrt2), l.Unit, 1e-6)
	// At the face the plate's side is near.
	assert.InEpsilon(t, 1000*60.0/(60+40), section.WorstPulled(p, h, rods, section.Wedge).Unit, 1e-6)
	assert.InEpsilon(t, 1000*60.0/(40+2*60+0.625*40), section.WorstPulled(p, h, rods, section.YieldLines).Unit, 1e-6)
}

// TestRowOfRodsBendsAsTheClauses holds the wedge of AISC Design Guide 1 and the
// effective lengths of EN 1993-1-8:2005 Table 6.6 for two rods outside a flange.
func TestRowOfRodsBendsAsTheClauses(t *testing.T) {
	for _, c := range []struct{ plate, m, w, e, ex float64 }{
		{400, 60, 200, 100, 50}, {300, 60, 60, 120, 50}, {600, 60, 280, 160, 400}, {300, 30, 200, 50, 200}, {500, 40, 60, 220, 300},
	} {
		y := 150 + c.m
		p := &section.Plate{Outline: rectangle(c.w+2*c.e, 2*(y+c.ex))}
		h := &section.Hull{Corners: rectangle(2000, 300)} // wider than the plate: the flange alone
		rods := []section.Rod{{At: geom.Point{X: -c.w / 2, Y: y}, Tension: 5e4}, {At: geom.Point{X: c.w / 2, Y: y}, Tension: 5e4}}
		lcp := min(2*math.Pi*c.m, math.Pi*c.m+c.w, math.Pi*c.m+2*c.e)
		lnc := min(4*c.m+1.25*c.ex, c.e+2*c.m+0.625*c.ex, c.w/2+c.e, c.w/2+2*c.m+0.625*c.ex)
		l := section.PulledAt(p, h, rods, section.YieldLines, math.Pi/2)
		assert.InEpsilon(t, 5e4*c.m/min(lcp, lnc), l.Unit, 1e-9, "%+v", c)
		wide := min(c.m, c.e) + min(c.m, c.w/2)
		l = section.PulledAt(p, h, rods, section.Wedge, math.Pi/2)
		assert.InEpsilon(t, 5e4*c.m/wide, l.Unit, 1e-9, "%+v", c)
	}
}

type problem struct {
	plate section.Plate
	hull  section.Hull
	zone  section.Pressure
	rods  []section.Rod
}

// draw draws a plate, a hull within it, what presses on a part cut off by a line, and
// rods outside the hull or inside it.
func draw(t *rapid.T) *problem {
	f := func(low, high float64, name string) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	x, y := f(100, 1000, "x"), f(100, 1000, "y")
	q := &problem{plate: section.Plate{Outline: rectangle(x, y)}}
	if rapid.Bool().Draw(t, "round") {
		q.hull = section.Hull{Corners: []geom.Point{{}}, Round: f(0.05, 0.45, "radius") * min(x, y)}
	} else {
		q.hull = section.Hull{Corners: rectangle(x*f(0.1, 0.9, "hull x"), y*f(0.1, 0.9, "hull y")), Round: f(0, 0.04, "weld") * min(x, y)}
	}
	a, off := f(0, 2*math.Pi, "neutral"), f(-0.4, 0.4, "off")*min(x, y)
	sin, cos := math.Sincos(a)
	var zone []geom.Point
	for i, c := range q.plate.Outline {
		d := q.plate.Outline[(i+1)%4]
		u, v := c.X*cos+c.Y*sin-off, d.X*cos+d.Y*sin-off
		if u > 0 {
			zone = append(zone, c)
		}
		if (u > 0) != (v > 0) {
			k := u / (u - v)
			zone = append(zone, geom.Point{X: c.X + k*(d.X-c.X), Y: c.Y + k*(d.Y-c.Y)})
		}
	}
	q.zone = section.Pressure{Zone: zone, P: 10}
	if rapid.Bool().Draw(t, "linear") {
		q.zone = section.Pressure{Zone: zone, P: -0.01 * off, X: 0.01 * cos, Y: 0.01 * sin}
	}
	for range rapid.IntRange(1, 8).Draw(t, "rods") {
		q.rods = append(q.rods, section.Rod{At: geom.Point{X: x * f(-0.49, 0.49, "rod x"), Y: y * f(-0.49, 0.49, "rod y")}, Tension: f(0, 1e5, "T")})
	}
	return q
}

// turn turns everything by an angle.
func (q *problem) turn(by float64) *problem {
	sin, cos := math.Sincos(by)
	point := func(p geom.Point) geom.Point { return geom.Point{X: cos*p.X - sin*p.Y, Y: sin*p.X + cos*p.Y} }
	points := func(in []geom.Point) (out []geom.Point) {
		for _, p := range in {
			out = append(out, point(p))
		}
		return out
	}
	r := &problem{plate: section.Plate{Outline: points(q.plate.Outline)}, hull: section.Hull{Corners: points(q.hull.Corners), Round: q.hull.Round}}
	s := point(geom.Point{X: q.zone.X, Y: q.zone.Y})
	r.zone = section.Pressure{Zone: points(q.zone.Zone), P: q.zone.P, X: s.X, Y: s.Y}
	for _, rod := range q.rods {
		r.rods = append(r.rods, section.Rod{At: point(rod.At), Tension: rod.Tension})
	}
	return r
}

func (q *problem) worst() (pressed, wedge, lines section.Line) {
	return section.WorstPressed(&q.plate, &q.hull, &q.zone, nil), section.WorstPulled(&q.plate, &q.hull, q.rods, section.Wedge),
		section.WorstPulled(&q.plate, &q.hull, q.rods, section.YieldLines)
}

func TestTurningAllTurnsTheSectionOnly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := draw(t)
		by := rapid.Float64Range(0, 2*math.Pi).Draw(t, "by")
		a1, b1, c1 := q.worst()
		a2, b2, c2 := q.turn(by).worst()
		for i, pair := range [][2]section.Line{{a1, a2}, {b1, b2}, {c1, c2}} {
			assert.InDelta(t, pair[0].Unit, pair[1].Unit, 5e-3*pair[0].Unit+1e-6, "%d", i)
		}
	})
}

// TestSearchFindsTheWorstLine holds the search against lines at every tenth of a
// degree.
func TestSearchFindsTheWorstLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := draw(t)
		pressed, wedge, lines := q.worst()
		for i := range 3600 {
			a := 2 * math.Pi * float64(i) / 3600
			for k, pair := range [][2]float64{
				{section.PressedAt(&q.plate, &q.hull, &q.zone, nil, a).Unit, pressed.Unit},
				{section.PulledAt(&q.plate, &q.hull, q.rods, section.Wedge, a).Unit, wedge.Unit},
				{section.PulledAt(&q.plate, &q.hull, q.rods, section.YieldLines, a).Unit, lines.Unit},
			} {
				require.False(t, !(pair[0] <= pair[1]*1.005+1e-6), "kind %d at %g: %g found %g", k, a, pair[0], pair[1])
			}
		}
	})
}

func TestMoreForceNeverBendsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := draw(t)
		a1, b1, c1 := q.worst()
		q.zone.P, q.zone.X, q.zone.Y = 1.1*q.zone.P, 1.1*q.zone.X, 1.1*q.zone.Y
		for i := range q.rods {
			q.rods[i].Tension *= rapid.Float64Range(1, 1.2).Draw(t, "more")
		}
		a2, b2, c2 := q.worst()
		assert.False(t, !(a2.Unit >= a1.Unit*(1-1e-9)))
		assert.False(t, !(b2.Unit >= b1.Unit*(1-1e-4)), "%v %v", b1, b2)
		assert.False(t, !(c2.Unit >= c1.Unit*(1-1e-4)), "%v %v", c1, c2)
	})
}

func TestSectionsAreFiniteAndAllocateNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := draw(t)
		a, b, c := q.worst()
		for _, l := range []section.Line{a, b, c} {
			for _, v := range []float64{l.Unit, l.Moment, l.Length, l.Offset, l.Angle} {
				require.False(t, math.IsNaN(v) || math.IsInf(v, 0), "%+v", l)
			}
			require.False(t, !(l.Unit >= 0 && l.Angle >= 0 && l.Angle < 2*math.Pi))
		}
	})
	p := &section.Plate{Outline: rectangle(500, 400)}
	h := &section.Hull{Corners: rectangle(200, 200)}
	z := even(-250, -200, 250, 200, 2)
	rods := []section.Rod{{At: geom.Point{X: 200, Y: 150}, Tension: 1}, {At: geom.Point{X: -200, Y: 150}, Tension: 2}, {At: geom.Point{X: 200, Y: -150}, Tension: 3}, {At: geom.Point{X: -200, Y: -150}, Tension: 4}}
	assert.Zero(t, testing.AllocsPerRun(10, func() {
		section.WorstPressed(p, h, z, nil)
		section.WorstPulled(p, h, rods, section.YieldLines)
	}))
}

func BenchmarkWorst(b *testing.B) {
	p := &section.Plate{Outline: rectangle(500, 400)}
	h := &section.Hull{Corners: rectangle(200, 200)}
	z := even(-250, -200, 250, 200, 2)
	z.X = 0.001
	rods := []section.Rod{{At: geom.Point{X: 200, Y: 150}, Tension: 1}, {At: geom.Point{X: -200, Y: 150}, Tension: 2}, {At: geom.Point{X: 200, Y: -150}, Tension: 3}, {At: geom.Point{X: -200, Y: -150}, Tension: 4}}
	b.Run("pressed", func(b *testing.B) {
		for b.Loop() {
			section.WorstPressed(p, h, z, nil)
		}
	})
	b.Run("pulled", func(b *testing.B) {
		for b.Loop() {
			section.WorstPulled(p, h, rods, section.Wedge)
		}
	})
}
