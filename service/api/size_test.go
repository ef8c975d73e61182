package api_test

import (
	"context"
	"os"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"

	"footward.example/footward/client"
	"footward.example/footward/client/footward/reading"
	"footward.example/footward/client/local"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// demoBase is the whole foot of the demo.
func demoBase(t testing.TB) *footwardv1.CheckColumnBaseRequest {
	t.Helper()
	f, err := os.Open("../../testdata/demo/5-base.yaml")
	require.NoError(t, err)
	defer func() { _ = f.Close() }()
	items, err := reading.Read(f)
	require.NoError(t, err)
	return items[0].Check.GetColumnBase()
}

func sizing(t testing.TB) *footwardv1.SizeColumnBaseRequest {
	m := demoBase(t)
	return &footwardv1.SizeColumnBaseRequest{
		Label: "sizing", Basis: m.GetBasis(), Exposure: m.GetExposure(), Base: m.GetBase(),
		Loads: &footwardv1.SizeColumnBaseRequest_ActionSet{ActionSet: m.GetActionSet()},
		Offer: &footwardv1.SizeOffer{
			Plans: []*footwardv1.PlatePlan{
				{SizeXMm: 450, SizeYMm: 450, Positions: []*footwardv1.RodPosition{{XMm: -180, YMm: -90}, {XMm: 180, YMm: -90}, {XMm: 180, YMm: 90}, {XMm: -180, YMm: 90}}},
				{SizeXMm: 500, SizeYMm: 500},
			},
			ThicknessMm: []float64{10, 12, 15, 20}, Rods: rodOffers("M16", "M20"), ThroatMm: []float64{3, 4, 5},
		},
	}
}

func TestCheckColumnBase(t *testing.T) {
	c, err := local.Start(patient)
	require.NoError(t, err)
	defer func() { assert.NoError(t, c.Close()) }()
	m := demoBase(t)
	m.IncludeCombinations, m.Detail = true, footwardv1.Detail_DETAIL_DERIVATION
	r, err := c.CheckColumnBase(t.Context(), m)
	require.NoError(t, err)
	assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, r.GetResult().GetVerdict())
	combined, err := c.CombineActions(t.Context(), &footwardv1.CombineActionsRequest{
		Basis: m.GetBasis(), ActionSet: &footwardv1.ActionSet{
			Stages: m.GetActionSet().GetStages(), Actions: m.GetActionSet().GetActions(),
			Kinds: []footwardv1.CombinationKind{
				footwardv1.CombinationKind_COMBINATION_KIND_STRENGTH, footwardv1.CombinationKind_COMBINATION_KIND_EQUILIBRIUM,
			},
		},
	})
	require.NoError(t, err)
	require.Len(t, r.GetResult().GetCombinationRows(), len(combined.GetCombinations()))
	for i, row := range r.GetResult().GetCombinationRows() {
		assert.Equal(t, combined.GetCombinations()[i].GetName(), row.GetCombination())
		assert.True(t, proto.Equal(combined.GetCombinations()[i].GetForces(), row.GetForces()))
		assert.Len(t, row.GetRodTensionsKn(), 4)
		assert.LessOrEqual(t, row.GetGoverningUtilization(), r.GetResult().GetGoverningUtilization())
	}
	assert.NotEmpty(t, r.GetResult().GetDerivation())
	finite(t, r.ProtoReflect())
}

func TestColumnBaseNamesEveryFault(t *testing.T) {
	m := demoBase(t)
	m.Base.Plate.ThicknessMm = -1
	m.Base.Sharing = &footwardv1.ForceSharing{SubgradeModulusNMm3: -1}
	m.Base.Rods.Holes.DiameterMm = 10
	m.Base.Weld.Parts[0].Steel.Source = &footwardv1.Steel_Grade{Grade: "no such steel"}
	m.GetActionSet().Actions[1].LastStage = 1
	_, err := service(t).CheckColumnBase(context.Background(), m)
	var fields []string
	for _, v := range client.Violations(err) {
		fields = append(fields, v.GetField())
	}
	assert.ElementsMatch(t, []string{"base.plate.thickness_mm", "base.sharing.subgrade_modulus_n_mm3", "base.rods.holes.diameter_mm",
		"base.weld.parts[0].steel.grade", "action_set.actions[1].last_stage"}, fields)
}

func TestSizeColumnBase(t *testing.T) {
	c, err := local.Start(patient)
	require.NoError(t, err)
	defer func() { assert.NoError(t, c.Close()) }()
	m := sizing(t)
	r, err := c.SizeColumnBase(t.Context(), m)
	require.NoError(t, err)
	require.True(t, r.GetFound())
	assert.Equal(t, uint32(2*4*2*3), r.GetChoices())
	best := r.GetBest()
	assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, best.GetVerdict())
	assert.LessOrEqual(t, best.GetGoverningUtilization(), 1.0)
	assert.LessOrEqual(t, best.GetCost(), r.GetNextBest().GetCost())
	assert.NotEmpty(t, r.GetStops())
	assert.NotEmpty(t, r.GetNotices())

	// What was chosen passes when it is checked as it is.
	chosen := demoBase(t)
	chosen.Base.Plate.SizeXMm, chosen.Base.Plate.SizeYMm, chosen.Base.Plate.ThicknessMm = best.GetSizeXMm(), best.GetSizeYMm(), best.GetThicknessMm()
	if p := m.GetOffer().GetPlans()[best.GetPlan()].GetPositions(); len(p) > 0 {
		chosen.Base.Rods.Positions = p
	}
	chosen.Base.Rods.Rod.Thread.Source = &footwardv1.Thread_Designation{Designation: best.GetThreadDesignation()}
	chosen.Base.Rods.Rod.NutMeanWidthMm = 0
	if best.GetThreadDesignation() == "M16" {
		chosen.Base.Rods.Holes.DiameterMm = 22
	}
	chosen.Base.Weld.Size, chosen.Base.Weld.Parts[0].ThicknessMm = &footwardv1.WeldSpec_ThroatMm{ThroatMm: best.GetThroatMm()}, best.GetThicknessMm()
	own, err := c.CheckColumnBase(t.Context(), chosen)
	require.NoError(t, err)
	assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, own.GetResult().GetVerdict(), own.GetResult().GetGoverningLimitStateId())
	// What governs a choice is no rule of detailing.
	for _, s := range own.GetResult().GetLimitStates() {
		if s.GetId() == best.GetGoverningLimitStateId() {
			assert.InEpsilon(t, best.GetGoverningUtilization(), s.GetUtilization(), 1e-9)
		}
	}
}

func TestSizeColumnBaseNamesEveryFaultAndStops(t *testing.T) {
	m := sizing(t)
	m.Offer.Rods = rodOffers("M20", "M21")
	m.Offer.ThicknessMm = []float64{10, 0}
	m.MaxUtilization = 2
	_, err := service(t).SizeColumnBase(context.Background(), m)
	var fields []string
	for _, v := range client.Violations(err) {
		fields = append(fields, v.GetField())
	}
	assert.ElementsMatch(t, []string{"offer.rods[1].thread", "offer.thickness_mm[1]", "max_utilization"}, fields)

	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err = service(t).SizeColumnBase(ctx, sizing(t))
	assert.Equal(t, codes.Canceled, status.Code(err))
}

// FuzzSize sends the bytes of a message: a choice with finite numbers, a refusal
// that names its fields, or no answer in time.
func FuzzSize(f *testing.F) {
	s := service(f)
	for _, change := range []func(*footwardv1.SizeColumnBaseRequest){
		func(*footwardv1.SizeColumnBaseRequest) {},
		func(m *footwardv1.SizeColumnBaseRequest) { m.Offer = &footwardv1.SizeOffer{} },
		func(m *footwardv1.SizeColumnBaseRequest) { m.Base.Rods = nil },
		func(m *footwardv1.SizeColumnBaseRequest) { m.Basis = footwardv1.On(footwardv1.Basis_BASIS_US_ASD) },
		func(m *footwardv1.SizeColumnBaseRequest) { m.Loads = nil },
	} {
		m := sizing(f)
		change(m)
		wire, err := proto.Marshal(m)
		require.NoError(f, err)
		f.Add(wire)
	}
	f.Fuzz(func(t *testing.T, wire []byte) {
		var m footwardv1.SizeColumnBaseRequest
		if proto.Unmarshal(wire, &m) != nil {
			return
		}
		agrees(t, &m)
		ctx, cancel := context.WithTimeout(context.Background(), 2*time.Second)
		defer cancel()
		r, err := s.SizeColumnBase(ctx, &m)
		switch code := status.Code(err); {
		case err == nil:
			finite(t, r.ProtoReflect())
		case code == codes.DeadlineExceeded || code == codes.FailedPrecondition:
		default:
			refused(t, err)
		}
	})
}

func rodOffers(threads ...string) []*footwardv1.RodOffer {
	var out []*footwardv1.RodOffer
	for _, t := range threads {
		out = append(out, &footwardv1.RodOffer{Thread: t})
	}
	return out
}

// TestNoRatesAtAllMeanTheMass also where the message is there and empty.
func TestNoRatesAtAllMeanTheMass(t *testing.T) {
	m := sizing(t)
	r, err := service(t).SizeColumnBase(t.Context(), m)
	require.NoError(t, err)
	m.Rates = &footwardv1.SizeRates{}
	empty, err := service(t).SizeColumnBase(t.Context(), m)
	require.NoError(t, err)
	assert.True(t, proto.Equal(r, empty))
	assert.InDelta(t, r.GetBest().GetMassKg(), r.GetBest().GetCost(), 1e-9)
	m.Rates.PlatePerKg = 2
	some, err := service(t).SizeColumnBase(t.Context(), m)
	require.NoError(t, err)
	found := false
	for _, n := range some.GetNotices() {
		if n.GetCode() == "size_costs_nothing" {
			found = true
			assert.Contains(t, n.GetText(), "rods, weld, fill")
		}
	}
	assert.True(t, found)
}

// onBlock is a plate on a reinforced block on sand, whose cover is just kept.
func onBlock(t testing.TB, cover float64) *footwardv1.SizeColumnBaseRequest {
	m := comparison(t)
	b := m.GetBase()
	b.Anchorage, b.Rods, b.Weld, b.Friction = nil, nil, nil, true
	b.Support = &footwardv1.Support{Medium: &footwardv1.Support_Concrete{Concrete: &footwardv1.ConcreteBlock{
		Concrete: m.Pad.Concrete, SizeXMm: 1800, SizeYMm: 1800, HeightMm: 500}}}
	s := b.Substructure
	s.Stack, s.Levelling, s.Settlement = nil, nil, nil
	s.Reinforcement = &footwardv1.PadReinforcement{Bars: &footwardv1.PadBars{DiameterMm: 12, SpacingMm: 150}, CoverMm: cover, FyMpa: 500}
	kn := func(n, v float64) *footwardv1.ForcesAtFoot { return &footwardv1.ForcesAtFoot{NKn: n, VXKn: v} }
	return &footwardv1.SizeColumnBaseRequest{
		Basis: m.GetBasis(), Exposure: m.GetExposure(), Base: b, MaxUtilization: 0.9,
		Loads: &footwardv1.SizeColumnBaseRequest_ActionSet{ActionSet: &footwardv1.ActionSet{Actions: []*footwardv1.Action{
			{Name: "G", Kind: footwardv1.ActionKind_ACTION_KIND_PERMANENT, Forces: kn(-80, 0)},
			{Name: "S", Kind: footwardv1.ActionKind_ACTION_KIND_SNOW, Forces: kn(-30, 1)},
		}}},
		Offer: &footwardv1.SizeOffer{ThicknessMm: []float64{20, 40}},
	}
}

// TestRulesOfDetailingLeaveMarginToStrength finds a base whose cover is just kept, 75 of 75
// mm, though its strength shall be used to 0.9 only; a cover too small is none.
func TestRulesOfDetailingLeaveMarginToStrength(t *testing.T) {
	r, err := service(t).SizeColumnBase(t.Context(), onBlock(t, 75))
	require.NoError(t, err, "%v", client.Violations(err))
	require.True(t, r.GetFound(), "%v %v", r.GetBest().GetGoverningLimitStateId(), r.GetBest().GetReason())
	assert.LessOrEqual(t, r.GetBest().GetGoverningUtilization(), 0.9)
	assert.NotEqual(t, "pad_cover", r.GetBest().GetGoverningLimitStateId())
	r, err = service(t).SizeColumnBase(t.Context(), onBlock(t, 74))
	require.NoError(t, err)
	assert.False(t, r.GetFound())
	assert.Equal(t, "pad_cover", r.GetBest().GetGoverningLimitStateId())
}

// TestAStackThatWasNotTestedIsNoChoice has three concrete rings offered beside two that
// were loaded; with a test of their own they are a choice.
func TestAStackThatWasNotTestedIsNoChoice(t *testing.T) {
	m := sizing(t)
	m.Exposure, m.Base.Substructure.Settlement = nil, nil
	m.Offer = &footwardv1.SizeOffer{}
	own := m.GetBase().GetSubstructure().GetStack()
	offer := func(tested bool, kn float64, change func(*footwardv1.RingTier)) *footwardv1.SizeColumnBaseResponse {
		k := &footwardv1.StackOffer{LoadTested: tested, LoadTestKn: kn}
		for _, tier := range own.GetTiers() {
			one := proto.CloneOf(tier)
			change(one)
			k.Tiers = append(k.Tiers, one)
		}
		m.Offer.Stacks = []*footwardv1.StackOffer{k}
		r, err := service(t).SizeColumnBase(t.Context(), m)
		require.NoError(t, err, "%v", client.Violations(err))
		return r
	}
	higher := func(tier *footwardv1.RingTier) { tier.HeightMm = 660 }
	assert.True(t, offer(false, 0, func(*footwardv1.RingTier) {}).GetFound(), "that of the base")
	r := offer(false, 0, higher)
	assert.False(t, r.GetFound())
	assert.Equal(t, footwardv1.Verdict_VERDICT_OUT_OF_SCOPE, r.GetBest().GetVerdict())
	assert.Contains(t, r.GetBest().GetReason(), "load")
	assert.True(t, offer(true, own.GetLoadTestKn(), higher).GetFound())
}
