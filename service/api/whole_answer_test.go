package api_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// wholeAnswer is an answer of a column base with all that can be asked for.
type wholeAnswer struct {
	asked *footwardv1.CheckColumnBaseRequest
	*footwardv1.CheckColumnBaseResponse
	state map[string]*footwardv1.LimitState
	steps map[string][]*footwardv1.DerivationStep
}

// wholeAnswers asks every column base of the corpus.
func wholeAnswers(t *testing.T, look func(name string, a *wholeAnswer)) {
	t.Helper()
	s, asked := service(t), 0
	for _, k := range append(corpus(t), rubbing(t)...) {
		m := k.item.GetColumnBase()
		if m == nil {
			continue
		}
		asked++
		m.Detail, m.IncludeCombinations = footwardv1.Detail_DETAIL_DERIVATION, true
		r, err := s.CheckColumnBase(t.Context(), m)
		require.NoError(t, err, k.name)
		a := &wholeAnswer{m, r, map[string]*footwardv1.LimitState{}, map[string][]*footwardv1.DerivationStep{}}
		for _, l := range r.GetResult().GetLimitStates() {
			if l.GetDemand() != 0 || l.Utilization != nil {
				a.state[l.GetId()] = l
			}
		}
		for _, d := range r.GetResult().GetDerivation() {
			a.steps[d.GetSymbol()] = append(a.steps[d.GetSymbol()], d)
		}
		look(k.name, a)
	}
	require.Greater(t, asked, 20)
}

// rubbing returns the demo's base, its shear on friction with and without a key, its
// rods with and without preload, pulled and pressed.
func rubbing(t *testing.T) (out []named) {
	for i := range 8 {
		for _, k := range corpus(t) {
			if k.name != "demo/5-base" {
				continue
			}
			b := k.item.GetColumnBase().GetBase()
			b.Friction = true
			if i&1 != 0 {
				b.GetSubstructure().GetStack().ShearKeyKn = 0
			}
			if i&2 != 0 {
				b.GetAnchorage().GetThrough().InitialPreloadKn = 90
				b.GetAnchorage().GetThrough().NeededPreloadKn = 20
			}
			if i&4 != 0 {
				k.item.GetColumnBase().Loads = &footwardv1.CheckColumnBaseRequest_LoadCases{LoadCases: &footwardv1.LoadCases{
					Cases: []*footwardv1.LoadCase{{Name: "pressed", Forces: &footwardv1.ForcesAtFoot{NKn: -50, VXKn: 12}}},
				}}
			}
			out = append(out, named{fmt.Sprintf("demo/5-base, rubbing %d", i), k.item})
		}
	}
	return out
}

// said is a figure with the place of the answer where it stands.
type said struct {
	where string
	value float64
}

func (a *wholeAnswer) demands(ids ...string) (out []said) {
	for _, id := range ids {
		if l := a.state[id]; l != nil {
			out = append(out, said{"demand of " + id, l.GetDemand()})
		}
	}
	return out
}

// step appends the value of the one step of a symbol whose clause holds words [unit].
func (a *wholeAnswer) step(symbol, words string, unit float64) (out []said) {
	for _, d := range a.steps[symbol] {
		if strings.Contains(d.GetClause(), words) {
			out = append(out, said{"step " + symbol, d.GetValue() / unit})
		}
	}
	return out
}

// row returns what the table has for the combination of a limit state.
func (a *wholeAnswer) row(id string) *footwardv1.CombinationRow {
	l := a.state[id]
	if l == nil {
		return nil
	}
	for _, r := range a.GetResult().GetCombinationRows() {
		if r.GetCombination() == l.GetCombination() && r.GetStage() == l.GetStage() {
			return r
		}
	}
	return nil
}
