package settle_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/settle"
)

// sandOverClay is a circle of 1.4 m under 90 kPa on 1.5 m of loose sand over 3 m
// of soft clay.
func sandOverClay(b basis.Basis) settle.Input {
	return settle.Input{
		Design: basis.Design{Basis: b, EC: basis.Recommended()}, Shape: settle.Circle, Diameter: 1400, Depth: 600, Rigid: true, Above: 17e-6, Water: 2000,
		Layers: []settle.Layer{
			{Thickness: 1500, Modulus: 4, Poisson: 0.3, Weight: 18e-6, N60: 4},
			{Thickness: 3000, Weight: 17e-6, Oedometer: settle.Oedometer{Compression: 0.3, Void: 1}},
		},
		Stages: []settle.Stage{{Net: 0.09}},
	}
}

func TestSandAndClayBelowItSettleTogether(t *testing.T) {
	for _, b := range bases {
		in := sandOverClay(b)
		r, states := check(t, in)
		s, total := last(r), states["settle_total"]
		assert.Equal(t, limit.Pass, states["settle_burland_burbidge"].Verdict)
		assert.Equal(t, limit.Pass, states["settle_consolidation"].Verdict)
		assert.Equal(t, limit.Fail, total.Verdict)
		assert.InDelta(t, s.Burland+s.Consolidation, total.Demand, 1e-9)
		assert.InDelta(t, 29.0, s.Burland, 0.1)

		// By elasticity alone the sand settles 0.93 q D (1 - 0.3^2)/4 of the share of the influence above 1.5 m.
		in.Layers[0].N60 = 0
		r, states = check(t, in)
		z := 1500 / 700.0
		root := math.Sqrt(1 + z*z)
		hand := 0.93 * 0.09 * 1400 / 4 * (0.91 - 1.3/2*(1/root+0.4/(root+z)))
		assert.InDelta(t, hand+last(r).Consolidation, states["settle_total"].Demand, 1e-9)
		assert.Equal(t, limit.Fail, states["settle_total"].Verdict)

		// Half the load holds.
		in = sandOverClay(b)
		in.Stages[0].Net = 0.045
		_, states = check(t, in)
		assert.Equal(t, limit.Pass, states["settle_total"].Verdict)
	}
}

func TestALayerWithoutDataWithinReachIsNotPassedOver(t *testing.T) {
	in := sandOverClay(basis.Eurocode)
	in.Stages[0].Net = 0.045
	in.Layers[1].Oedometer = settle.Oedometer{}
	_, states := check(t, in)
	assert.Equal(t, limit.OutOfScope, states["settle_total"].Verdict)
	assert.Contains(t, states["settle_total"].Reason, "layers[1]")
	// With what is known already too much, nothing else matters.
	in.Limits.Total = 10
	_, states = check(t, in)
	assert.Equal(t, limit.Fail, states["settle_total"].Verdict)
	// Where the stress no longer reaches, nothing is asked of it.
	in.Limits.Total = 0
	in.Layers[0].Thickness = 20000
	_, states = check(t, in)
	assert.Equal(t, limit.NotApplicable, states["settle_total"].Verdict)
	// Its modulus alone is enough, and its settlement is added.
	in = sandOverClay(basis.Eurocode)
	in.Stages[0].Net = 0.045
	in.Layers[0].Modulus, in.Layers[1].Oedometer, in.Layers[1].Modulus = 0, settle.Oedometer{}, 8
	r, states := check(t, in)
	assert.Equal(t, limit.Pass, states["settle_total"].Verdict)
	assert.Greater(t, states["settle_total"].Demand, last(r).Burland*1.05)
}

func TestClayBetweenSandsIsLeftToItsOwnMethod(t *testing.T) {
	in := sandOverClay(basis.Eurocode)
	in.Layers = []settle.Layer{
		{Thickness: 500, Weight: 17e-6, N60: 10, Cone: 5},
		{Thickness: 400, Weight: 17e-6, Oedometer: settle.Oedometer{Compression: 0.3, Void: 1}},
		{Thickness: 5000, Weight: 17e-6, N60: 10, Cone: 5},
	}
	in.Stages[0].Net = 0.04
	r, states := check(t, in)
	s := last(r)
	assert.InDelta(t, max(s.Burland, s.Schmertmann)+s.Consolidation, states["settle_total"].Demand, 1e-9)
	var sheet derive.Sheet
	r.Derive(&sheet)
	require.NoError(t, derive.Verify(sheet.Steps))
	steps := map[string]float64{}
	for _, one := range sheet.Steps {
		steps[one.Symbol] = one.Value
	}
	assert.InDelta(t, states["settle_total"].Demand, steps["s_total"], 1e-9)
}

func TestNeighbourIsHeldAgainstTheWholeSettlement(t *testing.T) {
	in := sandOverClay(basis.Eurocode)
	in.Neighbours = []settle.Neighbour{{Distance: 10000, Settlement: 0}}
	r, states := check(t, in)
	assert.InDelta(t, (last(r).Burland+last(r).Consolidation)/10000, states["settle_differential"].Demand, 1e-9)
}

func TestGrowthOfTheFirstThreeYearsIsCountedFromTheFirstDay(t *testing.T) {
	at := func(years float64) float64 {
		in := sandOverClay(basis.Eurocode)
		in.Years = years
		r, _ := check(t, in)
		return last(r).Burland
	}
	// f_t = 1 + R_3 = 1.3 at 3 years, 1 + 0.3 + 0.2 lg 10 = 1.5 at 30.
	assert.InDelta(t, 1.3*at(0), at(3), 1e-9)
	assert.InDelta(t, 1.3*at(0), at(0.5), 1e-9)
	assert.InDelta(t, 1.5*at(0), at(30), 1e-9)
}

func TestCreepOfTenYearsIsFourTenths(t *testing.T) {
	at := func(years float64) float64 {
		in := sandOverClay(basis.Eurocode)
		in.Layers = []settle.Layer{{Thickness: 5000, Weight: 17e-6, Cone: 5}}
		in.Years = years
		r, _ := check(t, in)
		return last(r).Schmertmann
	}
	// Schmertmann: C_2 = 1 + 0.2 lg(t/0.1): 1.2 at 1 year, 1.4 at 10.
	assert.InDelta(t, 1.2*at(0), at(1), 1e-9)
	assert.InDelta(t, 1.4*at(0), at(10), 1e-9)
}

func TestLimitsGivenReplaceTheDefaults(t *testing.T) {
	in := pad(basis.Eurocode)
	_, free := check(t, in)
	in.Limits = settle.Limits{Total: 20, Distortion: 1.0 / 1000, Tilt: 0.001}
	_, states := check(t, in)
	assert.InDelta(t, 20, states["settle_elastic"].Resistance, 1e-12)
	assert.InDelta(t, 0.001, states["settle_differential"].Resistance, 1e-12)
	assert.InDelta(t, 0.001, states["settle_tilt"].Resistance, 1e-12)
	assert.InDelta(t, 2*free["settle_differential"].Utilization, states["settle_differential"].Utilization, 1e-9)
}

func TestTiltWithoutALimitIsNotLetPassBeyondOneInFiveHundred(t *testing.T) {
	in := sandOverClay(basis.Eurocode)
	in.Layers = []settle.Layer{{Thickness: 10000, Modulus: 10, Poisson: 0.3, Weight: 17e-6}}
	// 3 M (1 - 0.09)/(4 700^3 10) = 1/500: M = 10.05 kNm.
	for _, c := range []struct {
		m    float64
		want limit.Verdict
	}{{10.0e6, limit.NotApplicable}, {10.1e6, limit.OutOfScope}} {
		in.Stages = []settle.Stage{{N: 150e3, Mx: c.m}}
		r, states := check(t, in)
		assert.Equal(t, c.want, states["settle_tilt"].Verdict)
		assert.Contains(t, codes(r), "settle_no_tilt_limit")
		in.Stages = []settle.Stage{{N: 150e3, My: c.m}}
		_, states = check(t, in)
		assert.Equal(t, c.want, states["settle_tilt"].Verdict)
		// What turns above the ground does so by its own design.
		in.Stages[0].TurnX = 0.01
		_, states = check(t, in)
		assert.Equal(t, c.want, states["settle_tilt"].Verdict)
	}
}

func TestClayAtTheSurfaceIsIntegratedToItsLimit(t *testing.T) {
	// A wide load on normally consolidated clay: s = C_c/(1+e) int lg(1 + q/(g z)) dz
	// = C_c/((1+e) ln 10) [H ln(1 + a/H) + a ln(1 + H/a)], a = q/g.
	in := sandOverClay(basis.Eurocode)
	in.Dry, in.Diameter, in.Depth = true, 90000, 0
	in.Layers = []settle.Layer{{Thickness: 3000, Weight: 17e-6, Oedometer: settle.Oedometer{Compression: 0.3, Void: 1}}}
	r, _ := check(t, in)
	a, h := 0.09/17e-6, 3000.0
	hand := 0.3 / 2 / math.Ln10 * (h*math.Log(1+a/h) + a*math.Log(1+h/a))
	assert.InDelta(t, hand, last(r).Consolidation, 2e-3*hand)
}

func TestWaterAtTheSurfaceIsNoSafeSideForBlowCounts(t *testing.T) {
	in := sandOverClay(basis.Eurocode)
	in.Depth, in.Water = 2000, 0
	r, _ := check(t, in)
	wet := last(r).Burland
	assert.Contains(t, codes(r), "settle_water_blow_count")
	in.Dry = true
	r, _ = check(t, in)
	assert.Greater(t, last(r).Burland, wet)
	assert.NotContains(t, codes(r), "settle_water_blow_count")
}

func TestTiltIsHeldByTheLayersThatItKnowsOrNotAtAll(t *testing.T) {
	in := sandOverClay(basis.Eurocode)
	in.Limits.Tilt = 0.01
	in.Stages = []settle.Stage{{N: 60e3, My: 5e6}}
	r, states := check(t, in)
	// The clay below one width has no modulus, the sand within it 4 MPa: 3 5 (1 - 0.09)/(4 0.343 4000).
	assert.InDelta(t, 3*5*0.91/(4*0.343*4000), states["settle_tilt"].Demand, 1e-9)
	var sheet derive.Sheet
	r.Derive(&sheet)
	require.NoError(t, derive.Verify(sheet.Steps))
	in.Layers[0].Modulus = 0
	_, states = check(t, in)
	assert.Equal(t, limit.OutOfScope, states["settle_tilt"].Verdict)
	in.Stages[0].My = 0
	_, states = check(t, in)
	assert.Equal(t, limit.NotApplicable, states["settle_tilt"].Verdict)
}
