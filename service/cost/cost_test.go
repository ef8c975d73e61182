package cost_test

import (
	"math"
	"os"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/proto"

	"footward.example/footward/client/footward/reading"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
	"footward.example/footward/service/cost"
	"footward.example/footward/service/guard"
)

// asked reads a request of the demo.
func asked[M proto.Message](t *testing.T, path string, m M) M {
	t.Helper()
	f, err := os.Open("../../testdata/demo-more/" + path)
	require.NoError(t, err)
	defer func() { _ = f.Close() }()
	faults, err := reading.One(f, m)
	require.NoError(t, err)
	require.Empty(t, faults)
	return m
}

func rods(n int) *footwardv1.RodGroup {
	return &footwardv1.RodGroup{Positions: make([]*footwardv1.RodPosition, n)}
}

func base(b *footwardv1.ColumnBase, n int) *footwardv1.CheckColumnBaseRequest {
	return &footwardv1.CheckColumnBaseRequest{Base: b, Loads: &footwardv1.CheckColumnBaseRequest_LoadCases{
		LoadCases: &footwardv1.LoadCases{Cases: make([]*footwardv1.LoadCase, n)},
	}}
}

func settlement(layers, stages, neighbours int) *footwardv1.CheckSettlementRequest {
	return &footwardv1.CheckSettlementRequest{Layers: make([]*footwardv1.GroundLayer, layers),
		Stages: make([]*footwardv1.SettlementStage, stages), Neighbours: make([]*footwardv1.SettlementNeighbour, neighbours)}
}

func size(cases int, offer *footwardv1.SizeOffer) *footwardv1.SizeColumnBaseRequest {
	return &footwardv1.SizeColumnBaseRequest{Offer: offer, Loads: &footwardv1.SizeColumnBaseRequest_LoadCases{
		LoadCases: &footwardv1.LoadCases{Cases: make([]*footwardv1.LoadCase, cases)},
	}}
}

// TestMoreOfAnythingTakesLonger walks up in what each kind of work grows with.
func TestMoreOfAnythingTakesLonger(t *testing.T) {
	group := func(n int) *footwardv1.CheckWeldRequest {
		return &footwardv1.CheckWeldRequest{Layout: &footwardv1.CheckWeldRequest_Group{Group: &footwardv1.WeldGroup{Segments: make([]*footwardv1.WeldSegment, n)}}}
	}
	held := &footwardv1.ColumnBase{Rods: rods(4)}
	bearings := func(n int) *footwardv1.CheckManyRequest {
		m := &footwardv1.CheckManyRequest{}
		for range n {
			m.Items = append(m.Items, &footwardv1.CheckItem{Check: &footwardv1.CheckItem_Bearing{Bearing: &footwardv1.CheckBearingRequest{}}})
		}
		return m
	}
	for name, steps := range map[string][]any{
		"lines of a weld": {group(1), group(20), group(200)},
		"rods":            {&footwardv1.CheckAnchorRodsRequest{Rods: rods(4)}, &footwardv1.CheckAnchorRodsRequest{Rods: rods(64)}},
		"settlement":      {settlement(1, 1, 0), settlement(50, 1, 0), settlement(50, 100, 0), settlement(50, 100, 50)},
		"combinations":    {base(held, 1), base(held, 100), base(held, 2000)},
		"rods of a base":  {base(&footwardv1.ColumnBase{}, 10), base(held, 10), base(&footwardv1.ColumnBase{Rods: rods(64)}, 10)},
		"choices":         {size(10, &footwardv1.SizeOffer{}), size(10, &footwardv1.SizeOffer{ThicknessMm: make([]float64, 50)}), size(2000, &footwardv1.SizeOffer{ThicknessMm: make([]float64, 50)})},
		"items":           {bearings(0), bearings(1), bearings(1000), bearings(10000)},
		"detail":          {&footwardv1.CheckBearingRequest{Detail: footwardv1.Detail_DETAIL_GOVERNING}, &footwardv1.CheckBearingRequest{}, &footwardv1.CheckBearingRequest{Detail: footwardv1.Detail_DETAIL_DERIVATION}},
	} {
		last := time.Duration(-1)
		for i, m := range steps {
			c := cost.Of(m)
			assert.Greater(t, c.Usual, last, "%s, %d", name, i)
			assert.LessOrEqual(t, c.Least, c.Usual, name)
			last = c.Usual
		}
	}
}

// TestWhatIsRefusedAtOnceIsNoWork: what has more than its bounds allow is told so
// without any work, so it need not wait for room to do it.
func TestWhatIsRefusedAtOnceIsNoWork(t *testing.T) {
	many := make([]float64, 100)
	step := &footwardv1.SizeSteps{MinMm: 100, StepMm: 1e-9, MaxMm: 1e5}
	for name, m := range map[string]any{
		"nothing":                nil,
		"too many items":         &footwardv1.CheckManyRequest{Items: make([]*footwardv1.CheckItem, 10001)},
		"too many choices":       size(2000, &footwardv1.SizeOffer{ThicknessMm: many, ThroatMm: many, Plans: make([]*footwardv1.PlatePlan, 100)}),
		"too many kinds":         &footwardv1.CombineActionsRequest{ActionSet: &footwardv1.ActionSet{Kinds: make([]footwardv1.CombinationKind, 1e6)}},
		"too many pins":          &footwardv1.CheckPinRequest{Layout: &footwardv1.PinLayout{Rows: math.MaxUint32, PinsPerRow: math.MaxUint32}},
		"pads without end":       &footwardv1.CompareFootingsRequest{Pad: &footwardv1.PadOffer{Plan: step, Thickness: step}},
		"pads by no step at all": &footwardv1.CompareFootingsRequest{Pad: &footwardv1.PadOffer{Plan: &footwardv1.SizeSteps{}}},
	} {
		assert.LessOrEqual(t, cost.Of(m).Usual, time.Millisecond, name)
		assert.GreaterOrEqual(t, cost.Of(m).Usual, time.Duration(0), name)
	}
}

// TestSearchesTakeAtLeastTheirLeast by a factor of three: with less time than that left
// they are refused. What they take beyond is reported; it depends on what they find.
func TestSearchesTakeAtLeastTheirLeast(t *testing.T) {
	if testing.Short() {
		t.Skip("the race detector slows some work more than other")
	}
	validator, err := guard.NewValidator()
	require.NoError(t, err)
	service := api.NewCheck(validator, nil, math.MaxInt32)
	sizes, footings := asked(t, "sizes.yaml", &footwardv1.SizeColumnBaseRequest{}), asked(t, "compare.yaml", &footwardv1.CompareFootingsRequest{})
	// Fewer choices take seconds less, and show the same.
	sizes.Offer.Stacks, sizes.Offer.BottomPlates, sizes.Offer.Rods = sizes.Offer.Stacks[1:2], sizes.Offer.BottomPlates[1:2], sizes.Offer.Rods[1:2]
	for name, one := range map[string]struct {
		m    any
		work func() error
	}{
		"sizes":   {sizes, func() error { _, err := service.SizeColumnBase(t.Context(), sizes); return err }},
		"compare": {footings, func() error { _, err := service.CompareFootings(t.Context(), footings); return err }},
	} {
		c := cost.Of(one.m)
		took := time.Duration(beside(1, func() { require.NoError(t, one.work()) }) * float64(referenceTakes))
		t.Logf("%s: %v; estimated %v, at the least %v", name, took, c.Usual, c.Least)
		assert.Greater(t, took, c.Least/3, name)
	}
}
