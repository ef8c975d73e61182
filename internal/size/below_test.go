package size_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/ring"
	"footward.example/footward/internal/size"
	"footward.example/footward/internal/tie"
)

func tier(diameter, height float64) ring.Tier {
	return ring.Tier{
		Diameter: diameter, Height: height,
		Ring: ring.Ring{Kind: ring.Steel, Capacity: 600e3, Joint: 1, Tested: true},
		Fill: ring.Fill{UnitWeight: 20e-6, Phi: 38 * math.Pi / 180, Modulus: 40, Tested: true},
	}
}

// stacked is the base of offer on a stack, a bottom plate and sand.
func stacked(cases ...geom.Actions) *size.Input {
	in := offer(basis.Eurocode, cases...)
	b := &in.Base
	b.Base.Support = bearing.Input{Design: b.Base.Support.Design, SizeX: 420, SizeY: 420}
	b.Base.Stretch = 1300
	b.Anchorage = base.Anchorage{Kind: base.Through, Through: tie.Input{
		Plate: geom.Plate{SizeX: 1300, SizeY: 1300, Thickness: 15, Steel: b.Base.Plate.Plate.Steel}, PressX: 1300, PressY: 1300}}
	b.Below = base.Substructure{
		HasStack: true, HasGround: true,
		Stack: ring.Input{Tiers: []ring.Tier{tier(1200, 600), tier(1200, 600)}, LoadTested: true, LoadTest: 900e3, Key: 20e3},
		Ground: ground.Input{Depth: 400, Interface: ground.Interface{Share: 1},
			Soil: ground.Soil{Friction: 33 * math.Pi / 180, Above: 17e-6, Below: 18e-6, Dry: true}},
		Service: []base.Case{{Name: "service", Actions: geom.Actions{N: -150e3}}},
	}
	for _, a := range cases {
		b.Below.Pairs = append(b.Below.Pairs, base.Pair{Name: "pair", Permanent: a, Weight: 1})
	}
	in.Bottoms = []size.BottomPlate{{1000, 1000, 8}, {1300, 1300, 8}, {1300, 1300, 15}, {1500, 1500, 20}}
	in.Stacks = []size.Stack{
		{Tiers: []ring.Tier{tier(900, 500)}, RingsCost: 100, LoadTested: true, LoadTest: 900e3},
		{Tiers: []ring.Tier{tier(1200, 500), tier(1200, 500)}, RingsCost: 180, LoadTested: true, LoadTest: 900e3},
		{Tiers: []ring.Tier{tier(1200, 600), tier(1200, 600)}, RingsCost: 200}, // that of the base, and so its test
		{Tiers: []ring.Tier{tier(1400, 700), tier(1400, 700)}, RingsCost: 260, LoadTested: true, LoadTest: 900e3},
	}
	return in
}

// TestBottomPlateAndStackAreTheCheapestThatHold tries every choice.
func TestBottomPlateAndStackAreTheCheapestThatHold(t *testing.T) {
	found := 0
	for _, cases := range [][]geom.Actions{
		{{N: -150e3, Vx: 6e3}}, {{N: -150e3, Vx: 6e3}, {N: 15e3, Vx: 4e3}}, {{N: -60e3, Vx: 9e3, My: 8e6}},
	} {
		in := stacked(cases...)
		r, err := size.Search(in)
		require.NoError(t, err)
		cheapest := math.Inf(1)
		for b := range in.Bottoms {
			for k := range in.Stacks {
				c := size.Choice{Bottom: b, Stack: k}
				built := in.Build(&c)
				assert.InDelta(t, 1300-1200-15+in.Bottoms[b].Thickness+height(in.Stacks[k].Tiers), built.Base.Stretch, 1e-9)
				out, err := base.CheckColumn(&built)
				require.NoError(t, err)
				var l limit.List
				out.States(&l)
				if l.Verdict() != limit.Pass {
					continue
				}
				cost := cost(&built) + in.Stacks[k].RingsCost
				cheapest = min(cheapest, cost)
			}
		}
		require.Equal(t, !math.IsInf(cheapest, 1), r.Found)
		if r.Found {
			found++
			assert.InDelta(t, cheapest, r.Best.Cost, 1e-6)
			assert.NotEmpty(t, r.Stops)
		}
	}
	assert.Positive(t, found)
}

func height(tiers []ring.Tier) (sum float64) {
	for _, t := range tiers {
		sum += t.Height
	}
	return sum
}

// cost is the mass of steel and fill, in kg, by hand.
func cost(b *base.ColumnInput) float64 {
	plates := b.Base.Plate.Plate.SizeX*b.Base.Plate.Plate.SizeY*b.Base.Plate.Plate.Thickness +
		b.Anchorage.Through.Plate.SizeX*b.Anchorage.Through.Plate.SizeY*b.Anchorage.Through.Plate.Thickness
	rods := 4 * math.Pi / 4 * 20 * 20 * b.Base.Stretch
	weld := base.WeldLength(&b.Base) * 6 * 6
	fill := 0.0
	for _, t := range b.Below.Stack.Tiers {
		fill += 20e-6 * math.Pi / 4 * t.Diameter * t.Diameter * t.Height / 9.81
	}
	return 7.85e-6*(plates+rods+weld) + fill
}

func TestOffersBelowThatDoNotFitAreNamed(t *testing.T) {
	for field, change := range map[string]func(*size.Input){
		"offer.bottom_plates":                        func(in *size.Input) { in.Base.Anchorage.Kind = base.NotHeld },
		"offer.stacks":                               func(in *size.Input) { in.Base.Below.HasStack = false },
		"base.anchorage.through.height_mm":           func(in *size.Input) { in.Base.Anchorage.Through.Height = 1000 },
		"offer.bottom_plates[1]":                     func(in *size.Input) { in.Bottoms[1].Thickness = math.NaN() },
		"offer.stacks[3].rings_cost":                 func(in *size.Input) { in.Stacks[3].RingsCost = -1 },
		"offer.stacks[2].tiers[1].fill.cohesion_kpa": func(in *size.Input) { in.Stacks[2].Tiers[1].Fill.Cohesion = -1 },
		"offer.stacks[1].load_test_kn":               func(in *size.Input) { in.Stacks[1].LoadTest = 0 },
		"offer.stacks[0].load_test_kn":               func(in *size.Input) { in.Stacks[0].LoadTested = false },
		"offer.stacks[0].tiers":                      func(in *size.Input) { in.Stacks[0].Tiers = nil },
	} {
		in := stacked(geom.Actions{N: -100e3})
		change(in)
		var faults limit.Faults
		size.Validate(in, &faults)
		if assert.Len(t, faults, 1, field) {
			assert.Equal(t, field, faults[0].Field)
		}
	}
}

// TestALoadTestVouchesForTheBuildThatWasTested has another stack offered than the base's:
// without a test of its own it is no choice, with one, or like the base's, it is.
func TestALoadTestVouchesForTheBuildThatWasTested(t *testing.T) {
	search := func(k size.Stack) *size.Result {
		in := stacked(geom.Actions{N: -100e3, Vx: 4e3})
		in.Bottoms, in.Stacks = nil, []size.Stack{k}
		r, err := size.Search(in)
		require.NoError(t, err)
		return r
	}
	own := []ring.Tier{tier(1200, 600), tier(1200, 600)}
	assert.True(t, search(size.Stack{Tiers: own}).Found)
	other := []ring.Tier{tier(1200, 500), tier(1200, 500)}
	r := search(size.Stack{Tiers: other})
	assert.False(t, r.Found)
	assert.Equal(t, limit.OutOfScope, r.Best.Verdict)
	assert.Contains(t, r.Best.Reason, "load")
	assert.True(t, search(size.Stack{Tiers: other, LoadTested: true, LoadTest: 900e3}).Found)
	assert.False(t, search(size.Stack{Tiers: own, LoadTested: true, LoadTest: 100e3}).Found, "a test of its own counts")
}
