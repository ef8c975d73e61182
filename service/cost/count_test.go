package cost_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
	"footward.example/footward/service/cost"
	"footward.example/footward/service/guard"
)

// TestCombinationsAreCountedWithoutWritingThemOut for random sets of actions.
func TestCombinationsAreCountedWithoutWritingThemOut(t *testing.T) {
	validator, err := guard.NewValidator()
	require.NoError(t, err)
	service := api.NewLoad(validator)
	rapid.Check(t, func(t *rapid.T) {
		m := &footwardv1.CombineActionsRequest{
			Basis:     footwardv1.On(footwardv1.Basis(rapid.IntRange(1, 3).Draw(t, "basis"))),
			ActionSet: &footwardv1.ActionSet{},
		}
		stages := rapid.IntRange(1, 4).Draw(t, "stages")
		for s := range stages {
			m.ActionSet.Stages = append(m.ActionSet.Stages, &footwardv1.Stage{Name: fmt.Sprint("stage ", s)})
		}
		american := m.Basis.Basis() != footwardv1.Basis_BASIS_EUROCODE
		for i := range rapid.IntRange(1, 8).Draw(t, "actions") {
			a := &footwardv1.Action{
				Name: fmt.Sprint("action ", i), Forces: &footwardv1.ForcesAtFoot{NKn: -1},
				Kind: rapid.SampledFrom([]footwardv1.ActionKind{
					footwardv1.ActionKind_ACTION_KIND_PERMANENT, footwardv1.ActionKind_ACTION_KIND_SNOW,
					footwardv1.ActionKind_ACTION_KIND_WIND, footwardv1.ActionKind_ACTION_KIND_IMPOSED,
				}).Draw(t, "kind"),
				FirstStage: uint32(rapid.IntRange(0, stages).Draw(t, "first")),
			}
			if a.Kind != footwardv1.ActionKind_ACTION_KIND_PERMANENT {
				a.ExclusiveGroup = rapid.SampledFrom([]string{"", "side"}).Draw(t, "alternative")
			}
			if a.Kind == footwardv1.ActionKind_ACTION_KIND_IMPOSED && !american {
				a.Category = footwardv1.ImposedCategory(rapid.IntRange(1, 3).Draw(t, "category"))
			}
			if !american && a.Kind == footwardv1.ActionKind_ACTION_KIND_SNOW {
				a.SnowSite = footwardv1.SnowSite_SNOW_SITE_HIGH
			}
			m.ActionSet.Actions = append(m.ActionSet.Actions, a)
		}
		r, err := service.CombineActions(t.Context(), m)
		if err != nil {
			t.Skip(err) // alternatives that cannot be, or too many
		}
		n, counted := float64(len(r.GetCombinations())), cost.Combinations(m)
		assert.True(t, counted >= n/3 && counted <= 8*n+8*float64(stages), "%g counted, %g written out", counted, n)
	})
}
