package anchor_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/anchor"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// never holds each state that is evaluated both times.
func never(t *rapid.T, less, than map[string]limit.State, what string) {
	evaluated := func(s limit.State) bool { return s.Verdict == limit.Pass || s.Verdict == limit.Fail }
	for id, s := range than {
		if now := less[id]; evaluated(s) && evaluated(now) && !(use(now) >= use(s)*(1-1e-9)) {
			t.Fatalf("%s: %s uses %g, not %g", what, id, use(now), use(s))
		}
	}
}

// TestRodThatCarriesMostIsNotHiddenByTheOthers: in tension and pry-out a group is never
// used less than the rod with most of its force, alone; nor than any that stands apart.
func TestRodThatCarriesMostIsNotHiddenByTheOthers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		_, all := check(t, in)
		for name, force := range map[string]func(anchor.Force) float64{
			"anchor_cone":    func(f anchor.Force) float64 { return f.Tension },
			"anchor_pry_out": func(f anchor.Force) float64 { return math.Hypot(f.ShearX, f.ShearY) },
		} {
			most := 0
			for i, f := range in.Each {
				if force(f) > force(in.Each[most]) {
					most = i
				}
			}
			for k, p := range in.At {
				apart, alike := true, false
				for i, q := range in.At {
					apart = apart && (i == k || max(math.Abs(p.X-q.X), math.Abs(p.Y-q.Y)) >= 3*in.Embedment)
				}
				for i := range in.Each {
					// Rods that pull alike are the group that the standards mean.
					alike = alike || i != most && force(in.Each[i]) > 0.999*force(in.Each[most])
				}
				if (k != most || alike) && !apart {
					continue
				}
				one := in
				one.Each = make([]anchor.Force, len(in.At))
				one.Each[k] = in.Each[k]
				_, alone := check(t, one)
				never(t, map[string]limit.State{name: all[name]}, map[string]limit.State{name: alone[name]}, "all")
			}
		}
	})
}

// TestRowAtTheEdgeIsNotHeldByTheRowBehindIt: two rods 100 mm from the edge pull 30 kN each,
// two 250 mm behind them 1 kN each; h_ef 150, f_ck 30, cracked. The row alone, by hand:
// N_0 = 8.9 sqrt(30) 150^1.5 = 89.55 kN, A = (100 + 225)(225 + 200 + 225) = 211 250 mm2
// over 450^2, psi_s = 0.7 + 0.3 100/225 = 0.833, /1.5: 51.90 kN, used 60/51.90. With the
// row behind it A would be 373 750 mm2, e 116.9 mm: 60.41 kN, used 62/60.41.
func TestRowAtTheEdgeIsNotHeldByTheRowBehindIt(t *testing.T) {
	in := group(bases[0])
	in.Embedment = 150
	in.Block.SizeX, in.Block.SizeY, in.Block.OffsetX = 2000, 2000, -775
	in.At = []geom.Point{{X: -125, Y: -100}, {X: -125, Y: 100}, {X: 125, Y: -100}, {X: 125, Y: 100}}
	in.Each = []anchor.Force{{Tension: 30e3}, {Tension: 30e3}, {Tension: 1e3}, {Tension: 1e3}}
	r, states := check(t, in)
	assert.InEpsilon(t, 211250, r.Cone.A, 1e-9)
	assert.InEpsilon(t, 60/51.90, states["anchor_cone"].Utilization, 1e-3)
	assert.InEpsilon(t, 60e3, states["anchor_cone"].Demand, 1e-9)
	// Rods that pull alike are the group that the standards mean.
	for i := range in.Each {
		in.Each[i].Tension = 10e3
	}
	_, states = check(t, in)
	assert.InEpsilon(t, 40e3, states["anchor_cone"].Demand, 1e-9)
	assert.Less(t, states["anchor_cone"].Utilization, 1.0)
	var sheet derive.Sheet
	r.Derive(&sheet)
	assert.NoError(t, derive.Verify(sheet.Steps))
}

// TestMoreForceInTheWorstRodIsNeverUsedLess in tension, where all stand within 3 h_ef. (More
// in a rod that carries less may even the group out; eccentricities of shear beside an edge
// are paid for more than they cost.)
func TestMoreForceInTheWorstRodIsNeverUsedLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		in.Embedment = rapid.Float64Range(150, 240).Draw(t, "deep")
		wide, long := rapid.Float64Range(60, 250).Draw(t, "wide"), rapid.Float64Range(120, 250).Draw(t, "long")
		for i := range in.At {
			in.At[i] = geom.Point{X: float64(i%2)*wide - wide/2, Y: float64(i/2)*long/2 - long/2}
			in.Each[i] = anchor.Force{Tension: max(in.Each[i].Tension, 100)} // none that joins the group anew
		}
		_, before := check(t, in)
		in.Each = append([]anchor.Force(nil), in.Each...)
		most := 0
		for i, f := range in.Each {
			if f.Tension > in.Each[most].Tension {
				most = i
			}
		}
		in.Each[most].Tension *= rapid.Float64Range(1, 3).Draw(t, "by")
		_, after := check(t, in)
		never(t, after, before, "more")
	})
}

// TestShearTurnedByAnyAngleIsNeverUsedLess than its parts along x and along y alone.
func TestShearTurnedByAnyAngleIsNeverUsedLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		v, angle := rapid.Float64Range(100, 40e3).Draw(t, "V"), rapid.Float64Range(0, 2*math.Pi).Draw(t, "angle")
		load := func(x, y float64) map[string]limit.State {
			out := in
			out.Each = make([]anchor.Force, len(in.At))
			for i := range out.Each {
				out.Each[i] = anchor.Force{Tension: in.Each[i].Tension, ShearX: v * x, ShearY: v * y}
			}
			_, s := check(t, out)
			return s
		}
		s, c := math.Sincos(angle)
		whole := load(c, s)
		never(t, whole, load(c, 0), "all of it, not along x alone")
		never(t, whole, load(0, s), "all of it, not along y alone")
	})
}
