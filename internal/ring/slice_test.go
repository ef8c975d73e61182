package ring_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/ring"
)

// Another way through a stack: from its top down in thin slices, each with its own circle,
// force, moment and greatest stress.

// strips finds the greatest stress of a circle by strips across it: the line at which
// they lift is moved until the strips' own eccentricity is that of the load.
func strips(diameter, force, e float64) float64 {
	const parts = 200
	r := diameter / 2
	lies := func(lift float64) (sum, moment float64) { // stress grows by 1 from the line
		for i := range parts {
			x := r * (2*(float64(i)+0.5)/parts - 1)
			f := max(0, x-lift) * 2 * math.Sqrt(r*r-x*x) * 2 * r / parts
			sum, moment = sum+f, moment+f*x
		}
		return sum, moment
	}
	low, high := -1e4*r, 0.97*r
	for range 50 {
		mid := (low + high) / 2
		if sum, moment := lies(mid); moment < e*sum {
			low = mid
		} else {
			high = mid
		}
	}
	sum, _ := lies(low)
	return force * (r - low) / sum
}

// TestHoopForceIsThatOfSlices: the greatest stress of any slice of a tier, times its
// coefficient of earth pressure, pulls half a ring from the other half. No slice inside a
// tier has more than the faces that are shown, within 1.5 %.
func TestHoopForceIsThatOfSlices(t *testing.T) {
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		in.Actions.N = -rapid.Float64Range(10e3, 300e3).Draw(t, "P")
		in.Actions.Vx *= rapid.Float64Range(0, 3).Draw(t, "V more")
		r, _ := check(t, in)
		if r.NoStress != "" {
			return
		}
		const parts = 16
		d, weight, depth := r.Shoe, 0.0, 0.0
		press, heavy, light := max(0, -in.Actions.N), r.Safety.Unfavourable, r.Safety.Favourable
		for i := range in.Tiers {
			tier, out := &in.Tiers[i], &r.Tiers[i]
			if out.Top.Lost || out.Bottom.Lost {
				return
			}
			own := tier.Fill.UnitWeight * math.Pi / 4 * tier.Diameter * tier.Diameter
			d = min(d, tier.Diameter)
			edge := 0.0
			for k := range parts + 1 {
				z := tier.Height * float64(k) / parts
				m := math.Hypot(math.Abs(in.Actions.Mx)+math.Abs(in.Actions.Vy)*(depth+z), math.Abs(in.Actions.My)+math.Abs(in.Actions.Vx)*(depth+z))
				n := press + r.Preload + heavy*(weight+own*z)
				e := 0.0
				if m > 0 {
					e = m / (press + light*(weight+own*z))
				}
				across := min(tier.Diameter, d+z)
				if !(e < 0.8*across/2) {
					return // a handful of strips presses
				}
				edge = max(edge, strips(across, n, e))
			}
			d = min(tier.Diameter, d+tier.Height)
			weight, depth = weight+own*tier.Height, depth+tier.Height
			if !(math.Abs(edge-out.Edge) <= 0.015*edge) {
				t.Fatalf("tier %d: %g by slices, %g", i, edge, out.Edge)
			}
			// Half a ring: pressure along the pull, all round.
			pull := 0.0
			for k := range 1000 {
				angle := (float64(k) + 0.5) / 1000 * math.Pi
				pull += (out.K*edge + heavy*tier.Fill.Compaction) * math.Sin(angle) * tier.Diameter / 2 * math.Pi / 1000 * tier.Height / 2
			}
			if !(math.Abs(pull-out.ByEarth) <= 0.015*pull) {
				t.Fatalf("tier %d: pulls %g by slices, %g", i, pull, out.ByEarth)
			}
			compared++
		}
	})
	assert.Greater(t, compared, 50)
}

// TestStressWithinATierIsItsGreatest by hand: 60 kN and 30 kN along it on 300 mm, in a ring
// of 700x300 mm. A quarter down the circle is 375 mm and the fill 577 N heavy: 60 779 N at
// 2.25e6/60 519 = 37.18 mm, 0.5503 (1 + 8 37.18/375) = 0.9868 MPa. Top 0.8488 MPa.
func TestStressWithinATierIsItsGreatest(t *testing.T) {
	in := stack(basis.Eurocode)
	in.Actions, in.Shoe = geom.Actions{N: -60e3, Vx: 30e3}, ring.Shoe{SizeX: 300, SizeY: 300}
	in.Tiers = []ring.Tier{tier(ring.Steel, 700, 300, 150e3)}
	in.Service = in.Actions
	r, states := check(t, in)
	out := &r.Tiers[0]
	assert.InEpsilon(t, 0.8488, out.Top.Edge, 1e-4)
	assert.InEpsilon(t, 0.9868, out.Edge, 2e-4)
	assert.Greater(t, out.Edge, out.Bottom.Edge)
	assert.InEpsilon(t, 0.9868, states["ring_edge_stress"].Demand, 2e-4)
	// In service the weight counts once: 60 577 N at 37.14 mm.
	assert.InEpsilon(t, 60577/110447.*(1+8*2.25e6/60577/375), out.Service, 2e-4)
	var sheet derive.Sheet
	r.Derive(&sheet)
	assert.NoError(t, derive.Verify(sheet.Steps))
}

// TestSettlementIsThatOfSlices of fill by its grade or modulus, and of rings that stretch:
// a slice of constant volume gains across half of what it loses in height.
func TestSettlementIsThatOfSlices(t *testing.T) {
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		for i := range in.Tiers {
			if rapid.Bool().Draw(t, "modulus") {
				in.Tiers[i].Fill.Grade, in.Tiers[i].Fill.Modulus = ring.NoGrade, rapid.Float64Range(5, 120).Draw(t, "M_s")
			}
		}
		r, _ := check(t, in)
		if r.NoService != "" {
			return
		}
		const parts = 200
		load, d, weight := max(0, -in.Service.N), r.Shoe, 0.0
		for i := range in.Tiers {
			tier, out := &in.Tiers[i], &r.Tiers[i]
			own := tier.Fill.UnitWeight * math.Pi / 4 * tier.Diameter * tier.Diameter
			d = min(d, tier.Diameter)
			down, mean := 0.0, 0.0
			for k := range parts {
				z := tier.Height * (float64(k) + 0.5) / parts
				across := min(tier.Diameter, d+z)
				q := (load + weight + own*z) / (math.Pi / 4 * across * across)
				m := tier.Fill.Modulus
				if m == 0 {
					m = ring.ConstrainedModulus(tier.Fill.Grade, q)
				}
				down, mean = down+q/m*tier.Height/parts, mean+q/parts
			}
			d = min(tier.Diameter, d+tier.Height)
			weight += own * tier.Height
			if !(math.Abs(down-out.Compressed) <= 0.01*down) {
				t.Fatalf("tier %d: %g mm by slices, %g", i, down, out.Compressed)
			}
			if out.Stiffness > 0 {
				// Pressure at rest, hoop force of it per height, strain, and twice that down.
				strain := out.K0 * mean * tier.Diameter / 2 / out.Stiffness
				if !(math.Abs(2*strain*tier.Height-out.Spread) <= 0.01*out.Spread) {
					t.Fatalf("tier %d: %g mm by its ring, %g", i, 2*strain*tier.Height, out.Spread)
				}
			}
			compared++
		}
	})
	assert.Positive(t, compared)
}

// TestLoadTurnedByAnyAngleIsNeverUsedLess than the parts along x and y: of the parts of
// a load none alone is used more than all of it.
func TestLoadTurnedByAnyAngleIsNeverUsedLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		in.Actions.N = -rapid.Float64Range(20e3, 300e3).Draw(t, "P")
		v, m := rapid.Float64Range(0, 4e3).Draw(t, "V"), rapid.Float64Range(0, 3e6).Draw(t, "M all")
		angle := rapid.Float64Range(0, 2*math.Pi).Draw(t, "angle")
		s, c := math.Sincos(angle)
		load := func(x, y float64) map[string]float64 {
			in.Actions.Vx, in.Actions.Vy, in.Actions.Mx, in.Actions.My = v*x, v*y, -m*y, m*x
			in.Service = in.Actions
			_, states := check(t, in)
			return usedOf(states)
		}
		whole, one, other := load(c, s), load(c, 0), load(0, s)
		for id, u := range whole {
			// Of what fails, a tier that is beyond the method has no number to be worst by.
			if u <= 1 && u < max(one[id], other[id])*(1-1e-9) {
				t.Fatalf("%s: %g under all, %g and %g under its parts", id, u, one[id], other[id])
			}
		}
	})
}

// TestWeakestTierIsNeverHiddenByTheOthers: no tier of a stack can be made worse and the
// stack better.
func TestWeakestTierIsNeverHiddenByTheOthers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		_, states := check(t, in)
		before := usedOf(states)
		in.Tiers = append([]ring.Tier(nil), in.Tiers...)
		worse := &in.Tiers[rapid.IntRange(0, len(in.Tiers)-1).Draw(t, "tier")]
		worse.Ring.Capacity *= rapid.Float64Range(0.5, 1).Draw(t, "of its strength")
		worse.Fill.Compaction *= rapid.Float64Range(1, 3).Draw(t, "compacted")
		_, states = check(t, in)
		for id, u := range usedOf(states) {
			if u < before[id]*(1-1e-9) {
				t.Fatalf("%s: %g, then %g", id, before[id], u)
			}
		}
	})
}

// usedOf returns what each state uses, infinite where it fails without a number; what is
// beyond the method is left out.
func usedOf(states map[string]limit.State) map[string]float64 {
	out := map[string]float64{}
	for id, s := range states {
		switch {
		case s.Verdict == limit.Fail && !s.Rated:
			out[id] = math.Inf(1)
		case s.Rated && s.Verdict != limit.OutOfScope:
			out[id] = s.Utilization
		}
	}
	return out
}
