package api_test

import (
	"context"
	"math"
	"os"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"

	"buf.build/go/protoyaml"

	"footward.example/footward/client"
	"footward.example/footward/client/local"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

func comparison(t testing.TB) *footwardv1.CompareFootingsRequest {
	t.Helper()
	text, err := os.ReadFile("../../testdata/demo-more/compare.yaml")
	require.NoError(t, err)
	m := &footwardv1.CompareFootingsRequest{}
	require.NoError(t, protoyaml.Unmarshal(text, m))
	return m
}

// TestCompareFootingsByHand: the demo's quantities, worked by hand.
func TestCompareFootingsByHand(t *testing.T) {
	c, err := local.Start(patient)
	require.NoError(t, err)
	defer func() { assert.NoError(t, c.Close()) }()
	request := comparison(t)
	m, err := c.CompareFootings(t.Context(), request)
	require.NoError(t, err)
	finite(t, m.ProtoReflect())
	require.Len(t, m.GetFootings(), 2)
	rows := map[string]*footwardv1.ItemRow{}
	for _, f := range m.GetFootings() {
		for _, r := range f.GetRows() {
			rows[f.GetName()+" "+r.GetName()] = r
		}
	}
	assert.InDelta(t, 500*500*20*7.85e-6, rows["ring footing shoe plate"].GetMassKg(), 1e-9)
	assert.InDelta(t, 4*math.Pi/4*400*(1350+3*20)*7.85e-6+6, rows["ring footing steel rods"].GetMassKg(), 1e-9)
	fill := math.Pi / 4 * 1.4 * 1.4 * 1.3
	assert.InDelta(t, fill, rows["ring footing granular fill"].GetVolumeM3(), 1e-9)
	assert.InDelta(t, 1.2*fill, rows["ring footing granular fill"].GetLooseVolumeM3(), 1e-9)
	assert.InDelta(t, 1.2*fill*35, rows["ring footing granular fill"].GetCost().GetValue(), 1e-6)
	assert.InDelta(t, 1.65*1.65*0.1, rows["ring footing levelling layer"].GetVolumeM3(), 1e-9)
	p := m.GetPad()
	require.True(t, p.GetFound())
	// The foot stays at its level: 20 + 1300 + 15 + 100 mm over the rings' base, which is
	// 200 mm higher than the pad's; the plinth ends below the plate.
	plinth := 500 * 500 * (1435 + 200 - 20 - p.GetThicknessMm())
	volume := (p.GetSizeXMm()*p.GetSizeYMm()*p.GetThicknessMm() + plinth) / 1e9
	assert.InDelta(t, volume, rows["concrete pad concrete"].GetVolumeM3(), 1e-9)
	assert.InDelta(t, volume*24/9.80665*1000*0.113, rows["concrete pad concrete"].GetCarbon().GetValue(), 0.1)
	assert.True(t, rows["concrete pad concrete"].GetCarbon().GetByDefault())
	assert.Contains(t, rows["concrete pad concrete"].GetCarbon().GetSource(), "not compared with the printed edition")

	// Totals are the sums of their rows, and the contrast that of the totals.
	for _, f := range m.GetFootings() {
		cost, carbon := 0.0, 0.0
		for _, r := range f.GetRows() {
			cost += r.GetCost().GetValue()
			carbon += r.GetCarbon().GetValue()
		}
		assert.InDelta(t, cost, f.GetTotals().GetCost().GetValue(), 1e-6)
		assert.InDelta(t, carbon, f.GetTotals().GetCarbon().GetValue(), 1e-6)
		assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, f.GetResult().GetVerdict())
	}
	a, b := m.GetFootings()[0].GetTotals().GetCost().GetValue(), m.GetFootings()[1].GetTotals().GetCost().GetValue()
	assert.InDelta(t, b-a, m.GetContrast().GetCost().GetDifference(), 1e-6)
	assert.InDelta(t, b/a, m.GetContrast().GetCost().GetRatio(), 1e-9)
	assert.NotEmpty(t, p.GetStops())

	// The ring footing's result is that of its own check.
	alone, err := c.CheckColumnBase(t.Context(), &footwardv1.CheckColumnBaseRequest{
		Label: "ring footing", Basis: request.GetBasis(), Exposure: request.GetExposure(), Base: request.GetBase(),
		Loads: &footwardv1.CheckColumnBaseRequest_ActionSet{ActionSet: request.GetActionSet()},
	})
	require.NoError(t, err)
	// Only CheckColumnBase points to combinations.
	own := proto.CloneOf(alone.GetResult())
	own.Combinations, own.SettlementStages = nil, nil
	for _, s := range own.GetLimitStates() {
		s.CombinationIndex, s.StageIndex = nil, nil
	}
	assert.True(t, proto.Equal(own, m.GetFootings()[0].GetResult()))
}

func TestFootingsThatDoNotHoldAreNotCompared(t *testing.T) {
	c, err := local.Start(patient)
	require.NoError(t, err)
	defer func() { assert.NoError(t, c.Close()) }()
	request := comparison(t)
	request.Pad.Plan = &footwardv1.SizeSteps{MinMm: 500, StepMm: 50, MaxMm: 600}
	m, err := c.CompareFootings(t.Context(), request)
	require.NoError(t, err)
	assert.False(t, m.GetPad().GetFound())
	assert.NotEqual(t, footwardv1.Verdict_VERDICT_PASS, m.GetFootings()[1].GetResult().GetVerdict())
	assert.NotEmpty(t, m.GetContrast().GetReason())
	assert.Nil(t, m.GetContrast().GetCost())

	// A layer that ends above the pad is no ground of it.
	request = comparison(t)
	ground := request.GetBase().GetSubstructure().GetGround()
	ground.Layer = &footwardv1.GranularLayer{ThicknessMm: 600, UndrainedStrengthKpa: 30, PunchingCoefficient: 3}
	request.Pad.DepthMm = 1200
	_, err = c.CompareFootings(t.Context(), request)
	assert.Equal(t, codes.InvalidArgument, status.Code(err))
}

func TestMissingRatesMakeTotalsPartial(t *testing.T) {
	c, err := local.Start(patient)
	require.NoError(t, err)
	defer func() { assert.NoError(t, c.Close()) }()
	request := comparison(t)
	request.Rates, request.Transport, request.NoDefaultCarbon = request.GetRates()[:1], nil, true
	m, err := c.CompareFootings(t.Context(), request)
	require.NoError(t, err)
	assert.Contains(t, m.GetFootings()[0].GetTotals().GetCost().GetMissing(), "granular fill")
	assert.Contains(t, m.GetFootings()[1].GetTotals().GetCarbon().GetMissing(), "concrete")
	assert.Nil(t, m.GetContrast().GetCost().Difference)
	assert.Nil(t, m.GetContrast().GetCarbon().Ratio)
	assert.NotNil(t, m.GetContrast().GetMass().Difference, "quantities are whole")
}

func TestCompareFootingsOnEveryBasis(t *testing.T) {
	c, err := local.Start(patient)
	require.NoError(t, err)
	defer func() { assert.NoError(t, c.Close()) }()
	for _, b := range []footwardv1.Basis{footwardv1.Basis_BASIS_US_LRFD, footwardv1.Basis_BASIS_US_ASD} {
		request := comparison(t)
		request.Basis = footwardv1.On(b)
		share := 0.5
		request.GetBase().GetSubstructure().GetGround().BearingAuthor = footwardv1.BearingAuthor_BEARING_AUTHOR_VESIC
		if f := request.GetBasis().GetUsLrfd(); f != nil {
			f.BearingResistanceFactor, f.FillResistanceFactor, f.SlidingResistanceFactor = &share, &share, &share
		}
		for _, p := range request.GetBase().GetWeld().GetParts() {
			p.Steel = &footwardv1.Steel{Source: &footwardv1.Steel_Grade{Grade: "ASTM A36"}}
		}
		request.GetBase().GetWeld().Filler = &footwardv1.WeldMetal{Source: &footwardv1.WeldMetal_Grade{Grade: "AWS E70"}}
		m, err := c.CompareFootings(t.Context(), request)
		require.NoError(t, err, "%v %v", b, client.Violations(err))
		finite(t, m.ProtoReflect())
		assert.NotEmpty(t, m.GetFootings()[1].GetResult().GetLimitStates())
	}
}

func TestComparisonThatDoesNotFitIsNamed(t *testing.T) {
	c, err := local.Start(patient)
	require.NoError(t, err)
	defer func() { assert.NoError(t, c.Close()) }()
	for field, change := range map[string]func(*footwardv1.CompareFootingsRequest){
		"base.substructure.stack":           func(m *footwardv1.CompareFootingsRequest) { m.Base.Substructure.Stack = nil },
		"base.substructure.ground":          func(m *footwardv1.CompareFootingsRequest) { m.Base.Substructure.Ground = nil },
		"supply.rings":                      func(m *footwardv1.CompareFootingsRequest) { m.Supply.Rings = m.Supply.Rings[:1] },
		"supply.rings[0].outer_diameter_mm": func(m *footwardv1.CompareFootingsRequest) { m.Supply.Rings[0].OuterDiameterMm = 1 },
		"supply.rings[1].outer_diameter_mm": func(m *footwardv1.CompareFootingsRequest) { m.Supply.Rings[1].OuterDiameterMm = 1000 },
		"pad.concrete.grade": func(m *footwardv1.CompareFootingsRequest) {
			m.Pad.Concrete.Source = &footwardv1.Concrete_Grade{Grade: "none"}
		},
		"pad.plan": func(m *footwardv1.CompareFootingsRequest) {
			m.Pad.Plan = &footwardv1.SizeSteps{MinMm: 900, StepMm: 50, MaxMm: 800}
		},
		"rates[1].kind":             func(m *footwardv1.CompareFootingsRequest) { m.Rates[1].Kind = m.Rates[0].Kind },
		"rates[0].cost.per":         func(m *footwardv1.CompareFootingsRequest) { m.Rates[0].Cost.Per = 0 },
		"rates[0].cost.source":      func(m *footwardv1.CompareFootingsRequest) { m.Rates[0].Cost.Source = "" },
		"excavation.bulking_factor": func(m *footwardv1.CompareFootingsRequest) { m.Excavation.BulkingFactor = 0.5 },
		"action_set":                func(m *footwardv1.CompareFootingsRequest) { m.ActionSet = nil },
	} {
		m := comparison(t)
		change(m)
		_, err := c.CompareFootings(t.Context(), m)
		require.Equal(t, codes.InvalidArgument, status.Code(err), field)
		var fields []string
		for _, v := range client.Violations(err) {
			fields = append(fields, v.GetField())
		}
		assert.Contains(t, fields, field)
	}
}

// FuzzCompare sends the bytes of a message: a comparison with finite numbers, a
// refusal that names its fields, or no answer in time.
func FuzzCompare(f *testing.F) {
	s := service(f)
	for _, change := range []func(*footwardv1.CompareFootingsRequest){
		func(*footwardv1.CompareFootingsRequest) {},
		func(m *footwardv1.CompareFootingsRequest) { m.Pad.Bars, m.Pad.DepthMm = nil, 0 },
		func(m *footwardv1.CompareFootingsRequest) { m.Rates = nil },
		func(m *footwardv1.CompareFootingsRequest) { m.Basis = footwardv1.On(footwardv1.Basis_BASIS_US_LRFD) },
		func(m *footwardv1.CompareFootingsRequest) { m.Supply = nil },
	} {
		m := comparison(f)
		m.Pad.Plan = &footwardv1.SizeSteps{MinMm: 1000, StepMm: 500, MaxMm: 2000}
		change(m)
		wire, err := proto.Marshal(m)
		require.NoError(f, err)
		f.Add(wire)
	}
	f.Fuzz(func(t *testing.T, wire []byte) {
		var m footwardv1.CompareFootingsRequest
		if proto.Unmarshal(wire, &m) != nil {
			return
		}
		agrees(t, &m)
		ctx, cancel := context.WithTimeout(context.Background(), 2*time.Second)
		defer cancel()
		r, err := s.CompareFootings(ctx, &m)
		switch code := status.Code(err); {
		case err == nil:
			finite(t, r.ProtoReflect())
		case code == codes.DeadlineExceeded || code == codes.FailedPrecondition:
		default:
			refused(t, err)
		}
	})
}
