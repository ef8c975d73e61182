package limit_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/limit"
)

var kind = &limit.Kind{ID: "a", Title: "A", Measure: limit.Force}

func TestEvaluateAtItsBoundaries(t *testing.T) {
	for _, c := range []struct {
		name               string
		demand, resistance float64
		want               limit.Verdict
		rated              bool
	}{
		{"below", 9, 10, limit.Pass, true},
		{"equal", 10, 10, limit.Pass, true},
		{"equal but for rounding", 10 * (1 + 1e-12), 10, limit.Pass, true},
		{"just above", 10.0001, 10, limit.Fail, true},
		{"no resistance", 1, 0, limit.Fail, false},
		{"negative resistance", 1, -1, limit.Fail, false},
		{"nothing to resist", 0, 0, limit.Pass, false},
		{"resistance not a number", 1, math.NaN(), limit.Fail, false},
		{"demand not a number", math.NaN(), 1, limit.Fail, false},
		{"demand infinite", math.Inf(1), 1, limit.Fail, false},
		{"resistance infinite", 1, math.Inf(1), limit.Fail, false},
		{"utilization infinite", 1e300, 1e-300, limit.Fail, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := limit.Evaluate(kind, c.demand, c.resistance)
			assert.Equal(t, c.want, s.Verdict)
			assert.Equal(t, c.rated, s.Rated)
		})
	}
}

func TestListVerdictAndGoverning(t *testing.T) {
	pass, worse := limit.Evaluate(kind, 1, 10), limit.Evaluate(kind, 9, 10)
	fail := limit.Evaluate(kind, 11, 10)
	none := limit.Evaluate(kind, 1, 0)
	skip, beyond := limit.Skip(kind, "nothing"), limit.Beyond(kind, "too much")
	for _, c := range []struct {
		name      string
		states    []limit.State
		want      limit.Verdict
		governing float64 // utilization; NaN: none
	}{
		{"empty", nil, limit.NotApplicable, math.NaN()},
		{"only skipped", []limit.State{skip}, limit.NotApplicable, math.NaN()},
		{"passes", []limit.State{skip, pass, worse}, limit.Pass, 0.9},
		{"out of scope outweighs pass", []limit.State{worse, beyond, pass}, limit.OutOfScope, 0.9},
		{"fail outweighs out of scope", []limit.State{beyond, fail, pass}, limit.Fail, 1.1},
		{"fail without resistance governs", []limit.State{fail, none}, limit.Fail, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			var l limit.List
			for _, s := range c.states {
				l.Add(s)
			}
			assert.Equal(t, c.want, l.Verdict())
			if g := l.Governing(); math.IsNaN(c.governing) {
				assert.Nil(t, g)
			} else if assert.NotNil(t, g) {
				assert.InDelta(t, c.governing, g.Utilization, 1e-12)
			}
		})
	}
}

func TestListOverflowIsNeverSilent(t *testing.T) {
	var l limit.List
	for range limit.MaxStates + 1 {
		l.Add(limit.Evaluate(kind, 1, 10))
	}
	assert.Equal(t, limit.OutOfScope, l.Verdict())
}

func TestNeedLeavesOutWhatIsNoSize(t *testing.T) {
	for _, mm := range []float64{0, -1, 2.6e-17, math.NaN(), math.Inf(1)} {
		assert.Equal(t, limit.NoSize, limit.Evaluate(kind, 1, 1).Need(limit.WeldThroat, mm).Size)
	}
	assert.Equal(t, limit.WeldThroat, limit.Evaluate(kind, 1, 1).Need(limit.WeldThroat, 3).Size)
}

func TestFaultsAreAnErrorOnlyWhenThereAreSome(t *testing.T) {
	var f limit.Faults
	assert.NoError(t, f.Err())
	f.Add(limit.Missing, "plate", "is required")
	f.Add(limit.Geometry, "rods", "stand outside")
	assert.EqualError(t, f.Err(), "plate: is required; rods: stand outside")
	var again limit.Faults
	assert.True(t, errors.As(f.Err(), &again))
}

func TestNoticesHoldEachOnce(t *testing.T) {
	var l limit.Notices
	n := &limit.Notice{Code: "a"}
	l.Add(n)
	l.Add(n)
	assert.Len(t, l.All(), 1)
	l.Reset()
	assert.Empty(t, l.All())
}

// TestNumberBeyondItsRangeIsNamedWithIt, as it was given, and NaN is beyond every range.
func TestNumberBeyondItsRangeIsNamedWithIt(t *testing.T) {
	var faults limit.Faults
	faults.Range("forces.n_kn", 3e9, -1e9, 1e9, 1e3, " kN")
	faults.Range("size_mm", math.NaN(), 0, 5, 1, " mm")
	faults.Range("size_mm", 5, 0, 5, 1, " mm")
	require.Len(t, faults, 2)
	assert.Equal(t, "is 3e+06 and must be from -1e+06 to 1e+06 kN", faults[0].Reason)
	assert.Equal(t, "is NaN and must be from 0 to 5 mm", faults[1].Reason)
}
