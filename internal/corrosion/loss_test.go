package corrosion_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/corrosion"
	"footward.example/footward/internal/limit"
)

func draw(t *rapid.T) corrosion.Exposure {
	return corrosion.Exposure{
		Ground: corrosion.Ground(rapid.IntRange(0, int(corrosion.CompactedAggressiveFill)).Draw(t, "ground")),
		Years:  rapid.Float64Range(0.1, 100).Draw(t, "years"),
		Rate:   rapid.Float64Range(0, 0.2).Draw(t, "rate"),
	}
}

func TestLongerNeverLosesLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := draw(t)
		longer := e
		longer.Years = min(100, e.Years+rapid.Float64Range(0, 50).Draw(t, "more"))
		assert.LessOrEqual(t, e.PerFace(), longer.PerFace()+1e-12)
	})
}

func TestCompactedFillLosesHalf(t *testing.T) {
	for _, years := range []float64{1, 5, 17, 60, 100} {
		loose := corrosion.Exposure{Ground: corrosion.LooseFill, Years: years}
		dense := corrosion.Exposure{Ground: corrosion.CompactedFill, Years: years}
		assert.InDelta(t, loose.PerFace()/2, dense.PerFace(), 1e-12)
	}
}

func TestBetweenTheColumnsByAStraightLine(t *testing.T) {
	e := corrosion.Exposure{Ground: corrosion.PollutedNatural, Years: 15}
	assert.InDelta(t, 0.45, e.PerFace(), 1e-12)
	assert.InDelta(t, 0.9, e.Plate(), 1e-12)
	assert.InDelta(t, 0.9, e.Rod(), 1e-12)
	assert.InDelta(t, 0.45, e.Throat(false), 1e-12)
	assert.InDelta(t, 0.9, e.Throat(true), 1e-12)
	e.Years = 2
	assert.InDelta(t, 0.15, e.PerFace(), 1e-12, "the figure of five years, on the safe side")
}

func TestExposureThatDoesNotFitIsNamed(t *testing.T) {
	for _, k := range []struct {
		field string
		e     corrosion.Exposure
	}{
		{"corrosion.design_life_years", corrosion.Exposure{Ground: corrosion.LooseFill, Years: 101}},
		{"corrosion.ground", corrosion.Exposure{Ground: 99, Years: 10}},
		{"corrosion.ground", corrosion.Exposure{Years: 10}},
		{"corrosion.rate_mm_per_year", corrosion.Exposure{Rate: -1, Years: 10}},
		{"corrosion.rate_mm_per_year", corrosion.Exposure{Rate: 0.1, Ground: corrosion.LooseFill, Years: 10}},
	} {
		var faults limit.Faults
		k.e.Validate("corrosion", &faults)
		if assert.Len(t, faults, 1, k.field) {
			assert.Equal(t, k.field, faults[0].Field)
		}
	}
}
