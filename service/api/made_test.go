package api_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

func addressed(t testing.TB, m *footwardv1.CheckColumnBaseRequest) *footwardv1.CheckColumnBaseResponse {
	t.Helper()
	r, err := service(t).CheckColumnBase(t.Context(), m)
	require.NoError(t, err)
	return r
}

// TestAnswerPointsToItsCombinations: by index, each once, with kind and terms; rows, limit
// states and stages of the settlement alike.
func TestAnswerPointsToItsCombinations(t *testing.T) {
	m := onRings(t)
	m.IncludeCombinations = true
	r := addressed(t, m)
	all := r.GetResult().GetCombinations()
	seen := map[string]bool{}
	for _, c := range all {
		key := c.GetName() + strings.Repeat("'", int(c.GetStage()))
		assert.False(t, seen[key], key)
		seen[key] = true
		assert.NotZero(t, c.GetKind())
		assert.NotEmpty(t, c.GetTerms())
	}
	for _, row := range r.GetResult().GetCombinationRows() {
		c := all[row.GetCombinationIndex()]
		assert.Equal(t, row.GetCombination(), c.GetName())
		assert.InDelta(t, row.GetForces().GetNKn(), c.GetForces().GetNKn(), 1e-9)
	}
	pointed := 0
	for _, s := range r.GetResult().GetLimitStates() {
		if s.GetStage() > 0 {
			assert.Equal(t, s.GetStage()-1, s.GetStageIndex(), s.GetId())
		}
		if s.CombinationIndex == nil {
			continue
		}
		pointed++
		c := all[s.GetCombinationIndex()]
		assert.True(t, strings.HasPrefix(s.GetCombination(), c.GetName()), "%s: %s", s.GetId(), s.GetCombination())
		assert.Equal(t, s.GetStage(), c.GetStage(), s.GetId())
	}
	assert.Greater(t, pointed, 30)
	require.NotEmpty(t, r.GetResult().GetSettlementStages())
	for i, s := range r.GetResult().GetSettlementStages() {
		if s.CombinationIndex != nil {
			assert.Equal(t, s.GetName(), all[s.GetCombinationIndex()].GetName())
		} else {
			assert.Contains(t, s.GetName(), "permanent actions")
		}
		require.NotNil(t, s.StageIndex)
		if i > 0 {
			before := r.GetResult().GetSettlementStages()[i-1]
			assert.False(t, before.GetName() == s.GetName() && before.GetStageIndex() == s.GetStageIndex(), "%s twice in a row", s.GetName())
		}
	}
	// Without the table only what is pointed to is written.
	m.IncludeCombinations = false
	assert.Less(t, len(addressed(t, m).GetResult().GetCombinations()), len(all))
}

// TestContactIsInBalance: of each combination the pressed zone, of whose linear pressure
// the peak and the neutral axis tell, carries what acts and the rods pull (statics). The
// rods' shears add up to what acts.
func TestContactIsInBalance(t *testing.T) {
	m := onRings(t)
	m.IncludeCombinations = true
	for _, row := range addressed(t, m).GetResult().GetCombinationRows() {
		c := row.GetContact()
		require.NotNil(t, c)
		if len(c.GetOutline()) == 0 {
			continue
		}
		// A linear pressure: zero on the neutral axis, the peak where it is farthest.
		at := func(p *footwardv1.PlanPoint) float64 {
			if c.NeutralAxisDeg == nil {
				return c.GetPeakPressureMpa()
			}
			along := c.GetNeutralAxisDeg() * math.Pi / 180
			beyond := func(p *footwardv1.PlanPoint) float64 {
				return p.GetXMm()*math.Cos(along) + p.GetYMm()*math.Sin(along) - c.GetNeutralAxisOffsetMm()
			}
			return c.GetPeakPressureMpa() * beyond(p) / beyond(c.GetPeak())
		}
		force, area := 0.0, 0.0
		first := c.GetOutline()[0]
		for i := 2; i < len(c.GetOutline()); i++ {
			a, b := c.GetOutline()[i-1], c.GetOutline()[i]
			part := ((a.GetXMm()-first.GetXMm())*(b.GetYMm()-first.GetYMm()) - (b.GetXMm()-first.GetXMm())*(a.GetYMm()-first.GetYMm())) / 2
			area += part
			force += part * (at(first) + at(a) + at(b)) / 3
		}
		assert.InEpsilon(t, c.GetAreaMm2(), math.Abs(area), 1e-6, row.GetCombination())
		pulls := 0.0
		for _, p := range c.GetOutline() {
			assert.GreaterOrEqual(t, at(p), -1e-9*c.GetPeakPressureMpa())
			assert.LessOrEqual(t, at(p), c.GetPeakPressureMpa()*(1+1e-6))
		}
		shear := [2]float64{}
		for i, f := range row.GetRodForces() {
			pulls += f.GetTensionKn()
			assert.InDelta(t, row.GetRodTensionsKn()[i], f.GetTensionKn(), 1e-9)
			shear[0] += f.GetShearXKn()
			shear[1] += f.GetShearYKn()
		}
		// What is checked is never less than what balances.
		assert.GreaterOrEqual(t, pulls+1e-6, math.Abs(force)/1e3+row.GetForces().GetNKn(), row.GetCombination())
		assert.InDelta(t, row.GetForces().GetVXKn(), shear[0], 1e-6)
		assert.InDelta(t, row.GetForces().GetVYKn(), shear[1], 1e-6)
	}
}
