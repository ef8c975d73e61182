package api_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/proto"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
)

// framed has the combinations of a base's action set as load cases, as a frame analysis
// would bring them: those of design values, and beside them those of service values.
func framed(t testing.TB, m *footwardv1.CheckColumnBaseRequest, kinds ...footwardv1.CombinationKind) *footwardv1.CheckColumnBaseRequest {
	t.Helper()
	var list []*footwardv1.LoadCase
	add := func(basis footwardv1.Basis, as footwardv1.CombinationKind, kinds ...footwardv1.CombinationKind) {
		set := proto.CloneOf(m.GetActionSet())
		set.Kinds = kinds
		in := proto.CloneOf(m.GetBasis())
		if basis != in.Basis() {
			in = footwardv1.On(basis)
		}
		r, err := api.NewLoad(rules()).CombineActions(t.Context(), &footwardv1.CombineActionsRequest{Basis: in, ActionSet: set})
		require.NoError(t, err)
		for _, c := range r.GetCombinations() {
			k := &footwardv1.LoadCase{Name: c.GetName(), Stage: c.GetStage(), Forces: c.GetForces(), Kind: c.GetKind(), LoadDuration: c.GetLoadDuration()}
			if as != 0 {
				k.Kind, k.Name = as, as.String()+c.GetName()
			}
			if k.GetKind() == characteristic || k.GetKind() == accidental {
				k.Permanent = &footwardv1.ForcesAtFoot{}
				for _, term := range c.GetTerms() {
					if a := set.GetActions()[term.GetAction()]; a.GetKind() == footwardv1.ActionKind_ACTION_KIND_PERMANENT {
						addTo(k.Permanent, a.GetForces(), term.GetFactor())
					}
				}
			}
			list = append(list, k)
		}
	}
	switch basis := m.GetBasis().Basis(); basis {
	case footwardv1.Basis_BASIS_EUROCODE:
		add(basis, 0, kinds...)
	case footwardv1.Basis_BASIS_US_LRFD:
		add(basis, 0)
		add(footwardv1.Basis_BASIS_US_ASD, footwardv1.CombinationKind_COMBINATION_KIND_CHARACTERISTIC)
	default:
		add(basis, 0)
		add(footwardv1.Basis_BASIS_US_LRFD, footwardv1.CombinationKind_COMBINATION_KIND_FACTORED)
	}
	out := proto.CloneOf(m)
	out.Loads = &footwardv1.CheckColumnBaseRequest_LoadCases{LoadCases: &footwardv1.LoadCases{Cases: list}}
	return out
}

func addTo(sum, f *footwardv1.ForcesAtFoot, by float64) {
	sum.NKn += by * f.GetNKn()
	sum.VXKn += by * f.GetVXKn()
	sum.VYKn += by * f.GetVYKn()
	sum.MXKnm += by * f.GetMXKnm()
	sum.MYKnm += by * f.GetMYKnm()
	sum.TKnm += by * f.GetTKnm()
}

const (
	strength       = footwardv1.CombinationKind_COMBINATION_KIND_STRENGTH
	equilibrium    = footwardv1.CombinationKind_COMBINATION_KIND_EQUILIBRIUM
	characteristic = footwardv1.CombinationKind_COMBINATION_KIND_CHARACTERISTIC
	accidental     = footwardv1.CombinationKind_COMBINATION_KIND_ACCIDENTAL
)

// TestCombinationsOfAFrameAnalysisAreTheActionsThemselves: a base on rings down to the
// ground, whose settlement is predicted, has the same answer state by state.
func TestCombinationsOfAFrameAnalysisAreTheActionsThemselves(t *testing.T) {
	m := onRings(t)
	actions, cases := checked(t, m), checked(t, framed(t, m, strength, equilibrium, characteristic))
	require.Equal(t, actions.GetVerdict(), cases.GetVerdict(), cases.GetReason())
	require.Len(t, cases.GetLimitStates(), len(actions.GetLimitStates()))
	for i, want := range actions.GetLimitStates() {
		got := cases.GetLimitStates()[i]
		assert.Equal(t, want.GetVerdict(), got.GetVerdict(), want.GetId())
		assert.InDelta(t, want.GetUtilization(), got.GetUtilization(), 1e-9, want.GetId())
	}
	assert.NotEmpty(t, noticeText(cases, "base_characteristic_given"))
}

// TestReadyCombinationsAreNeverKinderThanTheirActions, in each published base that gives
// actions. They may be harder: the factor on weights of a ready one is not known.
func TestReadyCombinationsAreNeverKinderThanTheirActions(t *testing.T) {
	seen := map[footwardv1.Basis]int{}
	for _, item := range requests(t) {
		m := item.GetColumnBase()
		if m.GetActionSet() == nil || m.GetBasis().GetEurocode().GetActions() != nil || len(m.GetActionSet().GetKinds()) > 0 {
			continue
		}
		if m.GetBase().GetSupport().GetTimber() != nil && m.GetBasis().Basis() != footwardv1.Basis_BASIS_EUROCODE {
			continue // CombineActions tells lambda and C_D of a combination, not how long it lasts
		}
		kinds := []footwardv1.CombinationKind{strength, equilibrium, characteristic}
		if slices.ContainsFunc(m.GetActionSet().GetActions(), func(a *footwardv1.Action) bool { return a.GetKind() == footwardv1.ActionKind_ACTION_KIND_ACCIDENTAL }) {
			kinds = append(kinds, accidental)
		}
		actions, cases := checked(t, m), checked(t, framed(t, m, kinds...))
		seen[m.GetBasis().Basis()]++
		for _, want := range actions.GetLimitStates() {
			got := state(t, cases, want.GetId())
			if want.GetVerdict() != footwardv1.Verdict_VERDICT_PASS {
				assert.NotEqual(t, footwardv1.Verdict_VERDICT_PASS, got.GetVerdict(), "%s %s %s", m.GetBasis().Basis(), want.GetId(), want.GetCombination())
			}
			if want.Utilization != nil && got.Utilization != nil {
				assert.GreaterOrEqual(t, got.GetUtilization(), want.GetUtilization()*(1-1e-9), "%s %s %s", m.GetBasis().Basis(), want.GetId(), want.GetCombination())
			} else {
				assert.Equal(t, want.GetVerdict(), got.GetVerdict(), "%s %s %s", m.GetLabel(), want.GetId(), got.GetReason())
			}
		}
	}
	assert.Len(t, seen, 3, "%v", seen)
}

// TestWhatLoadCasesLeaveOutIsNotPassed: no equilibrium, no characteristic values, or
// these of one stage alone.
func TestWhatLoadCasesLeaveOutIsNotPassed(t *testing.T) {
	m := onRings(t)
	open := func(r *footwardv1.CheckResult, ids ...string) {
		t.Helper()
		assert.NotEqual(t, footwardv1.Verdict_VERDICT_PASS, r.GetVerdict())
		for _, id := range ids {
			assert.NotEqual(t, footwardv1.Verdict_VERDICT_PASS, state(t, r, id).GetVerdict(), id)
		}
	}
	open(checked(t, framed(t, m, strength, characteristic)), "ring_overturning")
	open(checked(t, framed(t, m, strength, equilibrium)), "ground_bearing_da2", "settle_total", "ring_settlement")
	half := framed(t, m, strength, equilibrium, characteristic)
	for _, k := range half.GetLoadCases().GetCases() {
		if k.GetKind() == characteristic {
			k.Stage = 1
		}
	}
	open(checked(t, half), "ground_bearing_da2", "settle_total")
	assert.Contains(t, state(t, checked(t, half), "ground_bearing_da2").GetReason(), "stage 2")
}

// TestKindsOfLoadCasesAreHeldToTheirBasis by their paths.
func TestKindsOfLoadCasesAreHeldToTheirBasis(t *testing.T) {
	fields := func(basis footwardv1.Basis, cases ...*footwardv1.LoadCase) (out []string) {
		m := onRings(t)
		m.Basis = footwardv1.On(basis)
		m.Loads = &footwardv1.CheckColumnBaseRequest_LoadCases{LoadCases: &footwardv1.LoadCases{Cases: cases}}
		_, err := call(service(t), m)
		for _, v := range client.Violations(err) {
			out = append(out, v.GetField())
		}
		return out
	}
	one := func(name string, kind footwardv1.CombinationKind, permanent *footwardv1.ForcesAtFoot) *footwardv1.LoadCase {
		return &footwardv1.LoadCase{Name: name, Kind: kind, Forces: &footwardv1.ForcesAtFoot{NKn: -50}, Permanent: permanent}
	}
	part := &footwardv1.ForcesAtFoot{NKn: -30}
	factored := footwardv1.CombinationKind_COMBINATION_KIND_FACTORED
	assert.ElementsMatch(t, []string{"load_cases.cases[1].kind", "load_cases.cases[2].name", "load_cases.cases[3].permanent", "load_cases.cases[4].permanent", "load_cases.cases[5].permanent"},
		fields(footwardv1.Basis_BASIS_EUROCODE, one("a", strength, nil), one("b", factored, nil), one("a", strength, nil),
			one("c", characteristic, nil), one("d", accidental, nil), one("e", strength, part)))
	assert.Contains(t, fields(footwardv1.Basis_BASIS_EUROCODE, one("a", characteristic, part)), "load_cases.cases")
	assert.Subset(t, fields(footwardv1.Basis_BASIS_US_LRFD, one("a", strength, nil), one("b", equilibrium, nil), one("c", factored, nil)),
		[]string{"load_cases.cases[1].kind", "load_cases.cases[2].kind"})
	assert.Subset(t, fields(footwardv1.Basis_BASIS_US_ASD, one("a", strength, nil), one("b", characteristic, nil)), []string{"load_cases.cases[1].kind"})
}
