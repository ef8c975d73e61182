package trial_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/trial"
)

func TestWhatIsNoPopulationIsRefused(t *testing.T) {
	for field, change := range map[string]func(*trial.Input){
		"tests":                       func(in *trial.Input) { in.Tests = nil },
		"tests[0].load_kn":            func(in *trial.Input) { in.Tests[0].Load = 0 },
		"tests[1].load_kn":            func(in *trial.Input) { in.Tests[1].Load = math.NaN() },
		"tests[1].specimen":           func(in *trial.Input) { in.Tests[1].Specimen = "tyre" },
		"tests[2].ground":             func(in *trial.Input) { in.Mode = trial.GroundFailed; in.Tests[2].Ground = "clay" },
		"tests[2].size_mm":            func(in *trial.Input) { in.Tests[2].Size = 800 },
		"tests[1].date":               func(in *trial.Input) { in.Tests[1].Date = "30.4.2026" },
		"tests[1].mode":               func(in *trial.Input) { in.Tests[1].Failed = false },
		"mode":                        func(in *trial.Input) { in.Mode = trial.NoMode },
		"variation.value":             func(in *trial.Input) { known(in, math.NaN()) },
		"correlation.xi_least":        func(in *trial.Input) { in.Correlation.Mean = 1.38 },
		"conversion_factors[0].value": func(in *trial.Input) { in.Conversions = []trial.Conversion{{Value: 1.2}} },
	} {
		in := failing(five...)
		change(in)
		_, err := trial.Assess(in)
		var faults limit.Faults
		require.True(t, errors.As(err, &faults), field)
		var fields []string
		for _, f := range faults {
			fields = append(fields, f.Field)
		}
		assert.Contains(t, fields, field)
	}
}

func TestTwoTestsOfUnknownVariationGiveNoValue(t *testing.T) {
	for _, loads := range [][]float64{{200e3}, {200e3, 210e3}} {
		r := assessed(t, failing(loads...))
		assert.Zero(t, r.Characteristic)
		assert.Contains(t, r.Reason, "V must be given")
		assert.Positive(t, assessed(t, known(failing(loads...), 0.15)).Characteristic)
	}
}

func TestEqualResultsTakeTheFloor(t *testing.T) {
	r := assessed(t, failing(200e3, 200e3, 200e3, 200e3))
	assert.True(t, r.Floored)
	assert.InDelta(t, 200e3*(1-2.63*0.10), r.Characteristic, 1)
}

func TestFloorYieldsToARecordOfTwentyTestsAlone(t *testing.T) {
	in := known(failing(200e3, 202e3, 201e3), 0.06)
	assert.InDelta(t, 0.10, assessed(t, in).Used, 1e-12)
	in.Variation.Comparable = 20
	assert.InDelta(t, 0.06, assessed(t, in).Used, 1e-12)
}

func TestNormalWithoutPositiveValueGivesNone(t *testing.T) {
	// V 0.297 of three tests: k V = 3.37 x 0.297 = 1.0009.
	in := failing(200e3*(1-0.297), 200e3, 200e3*(1+0.297))
	r := assessed(t, in)
	assert.Zero(t, r.Characteristic)
	assert.Contains(t, r.Reason, "log-normal")
	in.LogNormal = true
	assert.Positive(t, assessed(t, in).Characteristic)
}

func TestScatteredSampleGivesNoValue(t *testing.T) {
	r := assessed(t, failing(100e3, 200e3, 300e3, 150e3, 280e3))
	assert.Zero(t, r.Characteristic)
	assert.Contains(t, r.Reason, "not homogeneous")
	assert.Zero(t, r.Correlated.Characteristic)
}

func TestSurvivorsOfUnknownVariationAreALowerBoundOnly(t *testing.T) {
	r := assessed(t, surviving(failing(190e3, 205e3, 230e3, 215e3), 220e3))
	assert.Zero(t, r.Characteristic)
	assert.Contains(t, r.Reason, "lower bound only")
}

func TestAnotherModeIsASurvivor(t *testing.T) {
	in := known(failing(190e3, 205e3, 230e3), 0.15)
	in.Tests = append(in.Tests, trial.Test{Load: 220e3, Failed: true, Mode: trial.GroundFailed}, trial.Test{Load: 220e3})
	same := known(surviving(failing(190e3, 205e3, 230e3), 220e3, 220e3), 0.15)
	assert.InDelta(t, assessed(t, same).Characteristic, assessed(t, in).Characteristic, 1e-6)
}

func TestLoadsThatFollowTheOrderGiveNoValue(t *testing.T) {
	r := assessed(t, failing(180e3, 190e3, 201e3, 209e3, 220e3))
	assert.True(t, r.Trend.Clear)
	assert.Zero(t, r.Characteristic)
	assert.Zero(t, r.Correlated.Characteristic)
	assert.Zero(t, r.Resistance.Load)
}

func TestOrderIsThatOfTheDates(t *testing.T) {
	in := failing(201e3, 180e3, 220e3, 190e3, 209e3)
	for i, day := range []string{"2026-04-03", "2026-04-01", "2026-04-05", "2026-04-02", "2026-04-04"} {
		in.Tests[i].Date = day
	}
	assert.True(t, assessed(t, in).Trend.Clear)
}

func TestLeftOutTestStaysBeside(t *testing.T) {
	in := failing(append([]float64{120e3}, five...)...)
	in.Tests[0].Removed = "ring cracked in transport"
	r := assessed(t, in)
	assert.Equal(t, 5, r.Failed)
	assert.InDelta(t, assessed(t, failing(five...)).Characteristic, r.Characteristic, 1e-9)
	assert.Less(t, r.Everything, r.Characteristic)
}

func TestContradictedVariationIsUnknown(t *testing.T) {
	r := assessed(t, known(failing(170e3, 240e3, 200e3, 150e3), 0.10))
	assert.True(t, r.Contradicted)
	assert.InDelta(t, assessed(t, failing(170e3, 240e3, 200e3, 150e3)).Characteristic, r.Characteristic, 1e-9)
}

// TestFailureFarBelowSurvivorsGivesNoValue: likelihood would run over a low result.
func TestFailureFarBelowSurvivorsGivesNoValue(t *testing.T) {
	for _, in := range []*trial.Input{
		known(surviving(failing(100e3), 400e3, 400e3, 400e3), 0.10),
		known(surviving(failing(150e3, 260e3), 200e3), 0.10),
	} {
		r := assessed(t, in)
		assert.True(t, r.Contradicted)
		assert.Zero(t, r.Characteristic)
		assert.Contains(t, r.Reason, "contradict")
	}
}

func TestDesignValueNeedsItsDecisions(t *testing.T) {
	in := known(failing(five...), 0.15)
	r := assessed(t, in)
	assert.Zero(t, r.Design)
	assert.Contains(t, r.DesignReason, "eta_d = 1 is a decision")
	in.Conversions = []trial.Conversion{{Value: 1, Reason: "decided"}}
	r = assessed(t, in)
	assert.Zero(t, r.Design)
	assert.Contains(t, r.DesignReason, "no partial factor")
	assert.InDelta(t, 128.408e3, r.Direct, 10)
	in.Factor = 1.4
	r = assessed(t, in)
	assert.InDelta(t, r.Characteristic/1.4, r.Design, 1e-6)
}

func TestDirectValueOfFewTestsNeedsKnownVariation(t *testing.T) {
	in := failing(five...)
	in.Conversions = []trial.Conversion{{Value: 1, Reason: "decided"}}
	r := assessed(t, in)
	assert.Zero(t, r.Direct)
	assert.Contains(t, r.DirectReason, "at least 10 tests")
}

func TestBiasedModelIsNotPooled(t *testing.T) {
	in := failing(100e3, 125e3, 170e3, 220e3, 260e3)
	for i, p := range []float64{100e3, 120e3, 150e3, 180e3, 200e3} {
		in.Tests[i].Predicted, in.Tests[i].Size = p, p/200
	}
	in.Family = trial.Family{Asked: true, Predicted: 150e3, Variation: 0.1}
	// The order of testing is not that of the sizes.
	in.Tests[0], in.Tests[3] = in.Tests[3], in.Tests[0]
	in.Tests[1], in.Tests[4] = in.Tests[4], in.Tests[1]
	r := assessed(t, in)
	assert.Zero(t, r.Characteristic)
	assert.Contains(t, r.Reason, "biased")
}

func TestPhiNeedsTestsToFailureThatAgree(t *testing.T) {
	assert.Contains(t, assessed(t, surviving(failing(five...), 200e3)).Resistance.Reason, "without failure")
	assert.Contains(t, assessed(t, failing(200e3, 210e3)).Resistance.Reason, "at least 3")
	assert.Contains(t, assessed(t, failing(200e3, 260e3, 190e3)).Resistance.Reason, "15 %")
	assert.Positive(t, assessed(t, failing(five...)).Resistance.Load)
}
