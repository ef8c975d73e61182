package api_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// TestPadUnderActionsMadeReadyIsShownWhole has every strength of a pad followed by its
// numbers, also where the ground is not checked because the actions come combined.
func TestPadUnderActionsMadeReadyIsShownWhole(t *testing.T) {
	for _, id := range []string{"ground-pad-bars", "ground-pad-bars-us"} {
		m := columnBaseOf(t, id)
		m.Loads = &footwardv1.CheckColumnBaseRequest_LoadCases{LoadCases: &footwardv1.LoadCases{
			Cases: []*footwardv1.LoadCase{{Name: "ready", Forces: &footwardv1.ForcesAtFoot{NKn: -300}}},
		}}
		m.Detail = footwardv1.Detail_DETAIL_DERIVATION
		r, err := service(t).CheckColumnBase(t.Context(), m)
		require.NoError(t, err)
		require.NotNil(t, state(t, r.GetResult(), "pad_bending_x").Utilization)
		symbols := map[string]bool{}
		for _, s := range r.GetResult().GetDerivation() {
			symbols[s.GetSymbol()] = true
		}
		for _, s := range []string{"p_net", "m_x", "v_x"} {
			assert.True(t, symbols[s], "%s: %s", id, s)
		}
	}
}

// columnBaseOf returns the column base of a figure.
func columnBaseOf(t testing.TB, id string) *footwardv1.CheckColumnBaseRequest {
	t.Helper()
	for _, s := range sources(t) {
		for i := range s.Figures {
			if s.Figures[i].ID == id {
				return item(t, &s.Figures[i]).GetColumnBase()
			}
		}
	}
	require.Fail(t, "no figure "+id)
	return nil
}
