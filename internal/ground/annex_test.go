package ground_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
)

func TestFactorsOfTheAnnexAreUsed(t *testing.T) {
	in := block()
	in.Permanent.Vx, in.Variable = 4e3, geom.Actions{Vx: 2e3}
	g := &in.Design.EC.Ground
	*g = basis.Ground{Phi: 1.1, C: 1.2, Cu: 1.3, Rv: 1.5, Rh: 1.2, GSup: 1.2, GInf: 0.95, Q: 1.4, QA2: 1.1, GDst: 1.05, GStb: 0.85, QDst: 1.45}
	one := func(a ground.Approach) (*ground.Result, map[string]limit.State) {
		in.Approaches = []ground.Approach{a}
		r, states := check(t, in)
		adds(t, r)
		return r, states
	}
	tan := math.Tan(30 * degree)
	for a, want := range map[ground.Approach][2]float64{
		// With G favourable V = 0.95 (80 + 30) = 104.5 and H = 0.95 4 + q 2; else 1.2 (1 in A2).
		ground.DA1Part1: {0.95*4e3 + 1.4*2e3, 104.5e3 * tan},
		ground.DA1Part2: {0.95*4e3 + 1.1*2e3, 104.5e3 * tan / 1.1},
		ground.DA2:      {0.95*4e3 + 1.4*2e3, 104.5e3 * tan / 1.2},
		ground.DA3:      {0.95*4e3 + 1.4*2e3, 104.5e3 * tan / 1.1},
	} {
		_, states := one(a)
		assert.InDelta(t, want[0]/want[1], states["ground_sliding"].Utilization, 1e-9, "%v", a)
	}
	r, states := one(ground.DA2)
	assert.InDelta(t, r.Bearing[0].Pressure*r.Bearing[0].Area/1.5, r.Bearing[0].Resistance, 1e-6)
	// EQU: 1.05 of 4 kN at 0.6 m and 1.45 of 2 against 0.85 of 110 kN at 0.75 m.
	assert.InDelta(t, (1.05*4e3+1.45*2e3)*600/(0.85*110e3*750), states["ground_overturning"].Utilization, 1e-9)
	in.Permanent.N, in.Permanent.Vx, in.Variable = 20e3, 0, geom.Actions{N: 1e3}
	_, states = one(ground.DA2)
	assert.InDelta(t, (1.05*20e3+1.45*1e3)/(0.85*30e3), states["ground_uplift"].Utilization, 1e-9)
	// Factors of the combinations count before them.
	in.Partials = ground.Partials{GStb: 0.8}
	_, states = one(ground.DA2)
	assert.InDelta(t, (1.05*20e3+1.45*1e3)/(0.8*30e3), states["ground_uplift"].Utilization, 1e-9)
}

func TestUndrainedFactorsOfTheAnnexAreUsed(t *testing.T) {
	in := block()
	in.Soil = ground.Soil{Undrained: 0.05, Above: 18e-6, Below: 18e-6, Dry: true}
	in.Design.EC.Ground.Cu = 1.6
	in.Approaches = []ground.Approach{ground.DA3}
	r, _ := check(t, in)
	assert.InDelta(t, 0.05/1.6, r.Bearing[0].Strength, 1e-12)
}

func TestSlidingUnderOneApproachAtATime(t *testing.T) {
	tan := math.Tan(30 * degree)
	for a, want := range map[ground.Approach]float64{
		// G 6 kN along, 110 kN down, Q 2 kN along: Annex A sets by hand.
		ground.DA1Part1: (6 + 1.5*2) / (110 * tan),
		ground.DA1Part2: (6 + 1.3*2) / (110 * tan / 1.25),
		ground.DA2:      (6 + 1.5*2) / (110 * tan / 1.1),
		ground.DA3:      (6 + 1.5*2) / (110 * tan / 1.25),
	} {
		in := block()
		in.Permanent.Vx, in.Variable.Vx = 6e3, 2e3
		in.Approaches = []ground.Approach{a}
		_, states := check(t, in)
		assert.InDelta(t, want, states["ground_sliding"].Utilization, 1e-9, "%v", a)
	}
}

func TestFrictionOfTheBaseIsAtMostThirtyDegreesUnlessKnown(t *testing.T) {
	in := block()
	in.Soil.Friction, in.Soil.Critical, in.Permanent.Vx = 36*degree, 0, 5e3
	in.Approaches = []ground.Approach{ground.DA1Part1}
	_, states := check(t, in)
	assert.InDelta(t, 5e3/(110e3*math.Tan(30*degree)), states["ground_sliding"].Utilization, 1e-9)
	in.Soil.Friction = 28 * degree
	_, states = check(t, in)
	assert.InDelta(t, 5e3/(110e3*math.Tan(28*degree)), states["ground_sliding"].Utilization, 1e-9)
}

func TestAllowableStabilityTakesOneAndAHalf(t *testing.T) {
	in := block()
	in.Design.Basis, in.Author = basis.USASD, ground.Vesic
	in.Permanent.Vx = 9e3
	r, states := check(t, in)
	assert.InDelta(t, 110e3*math.Tan(30*degree)/1.5, states["ground_sliding"].Resistance, 1e-6)
	assert.InDelta(t, 9e3*600, states["ground_overturning"].Demand, 1e-6)
	assert.InDelta(t, 110e3*750/1.5, states["ground_overturning"].Resistance, 1e-6)
	assert.Contains(t, codes(r), "ground_stability_factor")
	// LRFD takes the factor that a stack of rings takes, for sliding alone.
	in.Design.Basis, in.Resistance, in.Slip = basis.USLRFD, 0.45, 0.8
	r, states = check(t, in)
	assert.InDelta(t, 110e3*math.Tan(30*degree)*0.8, states["ground_sliding"].Resistance, 1e-6)
	assert.InDelta(t, 110e3*750/1.5, states["ground_overturning"].Resistance, 1e-6)
	adds(t, r)
	in.Slip = 0
	_, states = check(t, in)
	assert.InDelta(t, 110e3*math.Tan(30*degree)/1.5, states["ground_sliding"].Resistance, 1e-6)
}
