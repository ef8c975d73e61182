package api_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/proto"

	"footward.example/footward/client"
	"footward.example/footward/client/local"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
)

// shelter is the boat shelter of the demo: a light frame, ballast that comes
// later, snow and wind that lifts.
func shelter() *footwardv1.CombineActionsRequest {
	n := func(kn float64) *footwardv1.ForcesAtFoot { return &footwardv1.ForcesAtFoot{NKn: kn} }
	return &footwardv1.CombineActionsRequest{
		Label: "shelter",
		Basis: footwardv1.On(footwardv1.Basis_BASIS_EUROCODE),
		ActionSet: &footwardv1.ActionSet{Stages: []*footwardv1.Stage{{Name: "frame up"}, {Name: "ballast on"}}, Actions: []*footwardv1.Action{
			{Name: "frame", Kind: footwardv1.ActionKind_ACTION_KIND_PERMANENT, Forces: n(-20)},
			{Name: "ballast", Kind: footwardv1.ActionKind_ACTION_KIND_PERMANENT, FirstStage: 2, Forces: n(-39)},
			{Name: "snow", Kind: footwardv1.ActionKind_ACTION_KIND_SNOW, SnowSite: footwardv1.SnowSite_SNOW_SITE_LOW, Forces: n(-24)},
			{Name: "wind", Kind: footwardv1.ActionKind_ACTION_KIND_WIND, Forces: &footwardv1.ForcesAtFoot{NKn: 24, VXKn: 6}},
		}},
	}
}

func TestCombineActions(t *testing.T) {
	c, err := local.Start(patient)
	require.NoError(t, err)
	defer func() { assert.NoError(t, c.Close()) }()
	r, err := c.CombineActions(t.Context(), shelter())
	require.NoError(t, err)
	assert.Equal(t, "shelter", r.GetLabel())
	assert.Len(t, r.GetEnvelopes(), 5, "strength, equilibrium and three of serviceability")
	assert.NotEmpty(t, r.GetProvenance().GetCaution())
	strength := r.GetEnvelopes()[0]
	assert.Equal(t, footwardv1.CombinationKind_COMBINATION_KIND_STRENGTH, strength.GetKind())
	up := r.GetCombinations()[strength.GetExtremes()[0].GetGreatest()]
	assert.Equal(t, "EN 1990 (6.10), set B: 1 frame + 1.5 wind", up.GetName())
	assert.Equal(t, uint32(1), up.GetStage())
	assert.InDelta(t, 16, up.GetForces().GetNKn(), 1e-9)
	assert.InDelta(t, 9, up.GetForces().GetVXKn(), 1e-9)
	down := r.GetCombinations()[strength.GetExtremes()[0].GetLeast()]
	assert.Equal(t, "EN 1990 (6.10), set B: 1.35 frame + 1.35 ballast + 1.5 snow", down.GetName())
	assert.InDelta(t, -1.35*59-1.5*24, down.GetForces().GetNKn(), 1e-9)

	short := shelter()
	short.EnvelopeOnly = true
	e, err := c.CombineActions(t.Context(), short)
	require.NoError(t, err)
	assert.Less(t, len(e.GetCombinations()), len(r.GetCombinations()))
	for k, x := range e.GetEnvelopes() {
		for i, got := range x.GetExtremes() {
			want := r.GetEnvelopes()[k].GetExtremes()[i]
			assert.True(t, proto.Equal(r.GetCombinations()[want.GetGreatest()], e.GetCombinations()[got.GetGreatest()]))
			assert.True(t, proto.Equal(r.GetCombinations()[want.GetLeast()], e.GetCombinations()[got.GetLeast()]))
		}
	}
}

func TestCombineActionsNamesEveryFault(t *testing.T) {
	m := shelter()
	m.ActionSet.Actions[0].Name = ""
	m.ActionSet.Actions[1].FirstStage, m.ActionSet.Actions[1].LastStage = 2, 1
	m.ActionSet.Actions[2].Kind = 99
	m.ActionSet.Actions[3].Psi = &footwardv1.PsiFactors{Psi_0: 2}
	m.ActionSet.Kinds = []footwardv1.CombinationKind{0}
	_, err := api.NewLoad(rules()).CombineActions(context.Background(), m)
	var fields []string
	for _, v := range client.Violations(err) {
		fields = append(fields, v.GetField())
	}
	assert.ElementsMatch(t, []string{"action_set.actions[0].name", "action_set.actions[1].last_stage",
		"action_set.actions[2].kind", "action_set.actions[3].psi.psi_0", "action_set.kinds[0]"}, fields)
}

// FuzzCombine sends the bytes of a message: combinations with finite sums, or a
// refusal that names its fields.
func FuzzCombine(f *testing.F) {
	s := api.NewLoad(rules())
	for _, change := range []func(*footwardv1.CombineActionsRequest){
		func(*footwardv1.CombineActionsRequest) {},
		func(m *footwardv1.CombineActionsRequest) { m.Basis = footwardv1.On(footwardv1.Basis_BASIS_US_ASD) },
		func(m *footwardv1.CombineActionsRequest) { m.ActionSet.Stages = nil },
		func(m *footwardv1.CombineActionsRequest) { m.ActionSet.Actions[0].Forces = nil },
		func(m *footwardv1.CombineActionsRequest) { m.ActionSet.Actions[0].Name = strings.Repeat("é", 60) },
	} {
		m := shelter()
		change(m)
		wire, err := proto.Marshal(m)
		require.NoError(f, err)
		f.Add(wire)
	}
	f.Fuzz(func(t *testing.T, wire []byte) {
		var m footwardv1.CombineActionsRequest
		if proto.Unmarshal(wire, &m) != nil {
			return
		}
		agrees(t, &m)
		r, err := s.CombineActions(context.Background(), &m)
		if err != nil {
			refused(t, err)
			return
		}
		finite(t, r.ProtoReflect())
	})
}
