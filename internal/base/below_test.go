package base_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/bed"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/ring"
	"footward.example/footward/internal/settle"
	"footward.example/footward/internal/tie"
)

// onRings is the base of column on two tiers of 700 mm, on sand.
func onRings(b basis.Basis, a geom.Actions) *base.ColumnInput {
	in := column(b, a)
	in.Base.Support = bearing.Input{Design: in.Base.Support.Design, SizeX: 420, SizeY: 420}
	tier := ring.Tier{
		Diameter: 700, Height: 300,
		Ring: ring.Ring{Kind: ring.Steel, Capacity: 400e3, Stiffness: 8e5, Tested: true},
		Fill: ring.Fill{UnitWeight: 20e-6, Phi: 38 * math.Pi / 180, Modulus: 40, Tested: true},
	}
	in.Below = base.Substructure{
		HasStack: true, HasGround: true, HasSettlement: true,
		Stack: ring.Input{
			Tiers: []ring.Tier{tier, tier}, LoadTested: true, LoadTest: 2000e3, Key: 40e3,
			Safety: ring.Safety{PhiB: 0.5, PhiSliding: 0.8},
		},
		Levelling:   base.Levelling{Thickness: 100, UnitWeight: 18e-6},
		OtherWeight: 2e3,
		Ground: ground.Input{
			Depth: 600, Soil: ground.Soil{Friction: 34 * math.Pi / 180, Above: 17e-6, Below: 18e-6, Dry: true},
			Interface: ground.Interface{Share: 1}, Author: ground.Vesic, Resistance: 0.45,
		},
		Settlement: settle.Input{HalfSpace: true, Layers: []settle.Layer{{Thickness: 5000, Modulus: 30, Poisson: 0.3, Weight: 18e-6}}},
		Service:    []base.Case{{Name: "service", Stage: 1, Actions: a}},
		Sustained:  []base.Case{{Name: "dead", Stage: 1, Actions: geom.Actions{N: a.N / 2}}},
		Pairs:      []base.Pair{{Name: "pair", Stage: 1, Permanent: a, Weight: 1}},
	}
	return in
}

// TestStackAndGroundEqualTheirParts calls the parts one by one, under a load that
// no rod takes part in.
func TestStackAndGroundEqualTheirParts(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		a := geom.Actions{N: -120e3, Vx: 3e3}
		in := onRings(b, a)
		r, got := check(t, in)

		rods := ring.Rods{Count: len(in.Base.At), Area: in.Base.Rod.Thread.NetArea(in.Base.Rod.Corrosion), Modulus: 210000, Length: 600}
		if b.US() {
			rods.Modulus = 199948
		}
		stack := in.Below.Stack
		// The fill lies a plate's thickness below the foot of the column.
		onFill := geom.Actions{N: a.N, Vx: a.Vx, My: a.Vx * in.Base.Plate.Plate.Thickness}
		stack.Design, stack.Actions, stack.Service, stack.Rods = in.Base.Plate.Design, onFill, onFill, rods
		stack.Shoe = ring.Shoe{SizeX: 420, SizeY: 420}
		first, err := ring.Check(&stack)
		require.NoError(t, err)
		plate := in.Base.Plate
		c := math.Sqrt(2 * tie.MomentResistance(&plate.Plate, &plate.Design) / first.Tiers[0].Strength)
		stack.Shoe.Loaded = min(420, min(plate.Footprint.SizeX, plate.Footprint.SizeY)+2*c)
		whole, err := ring.Check(&stack)
		require.NoError(t, err)
		want := states(t, whole)
		delete(want, "ring_shoe_bearing") // for information only

		spread := whole.Tiers[1].Bottom.Diameter
		g := in.Below.Ground
		g.Design, g.Shape, g.Diameter, g.Permanent, g.Linked = stack.Design, ground.Circle, spread, a, true
		g.Height = plate.Plate.Thickness + 600 + 100
		g.Bed = math.Pi / 4 * spread * spread * 100 * 18e-6
		g.Weight = math.Pi/4*700*700*600*20e-6 + 2e3 + g.Bed
		under, err := ground.Check(&g)
		require.NoError(t, err)
		for id, s := range states(t, under) {
			want[id] = s
		}
		s := in.Below.Settlement
		s.Design, s.Shape, s.Diameter, s.Depth, s.Above, s.Dry = stack.Design, settle.Circle, spread, 600, 17e-6, true
		net := g.Weight - math.Pi/4*spread*spread*600*17e-6
		above := func(a geom.Actions) float64 {
			one := stack
			one.Actions, one.Service = geom.Actions{}, a
			r, err := ring.Check(&one)
			require.NoError(t, err)
			return r.Settles.Total
		}
		s.Stages = []settle.Stage{{N: 60e3 + net, Above: above(geom.Actions{N: -60e3})}, {N: 120e3 + net, My: 3e3 * g.Height, Above: above(a)}}
		// All of the plate is pressed: M/(k I) at half its height, k A of the 2 to 1 spread:
		// 40/(4/pi 280/(420 700) + 320/(pi/4 700^2)).
		s.Stages[1].TurnY = 3e3 * (plate.Plate.Thickness + 300) / (40 / (4/math.Pi*280/(420*700) + 320/(math.Pi/4*700*700)) / (420 * 420) * math.Pow(420, 4) / 12)
		sinks, err := settle.Check(&s)
		require.NoError(t, err)
		for id, s := range states(t, sinks) {
			want[id] = s
		}
		require.Len(t, r.SettledIn(), len(r.Settled().Stages))
		assert.InDelta(t, sinks.Stages[1].Elastic, r.Settled().Stages[1].Elastic, 1e-9)
		for id, w := range want {
			g, ok := got[id]
			if assert.True(t, ok, "%v %s", b, id) {
				assert.Equal(t, w.Verdict, g.Verdict, "%v %s: %s", b, id, g.Reason)
				assert.InDelta(t, w.Demand, g.Demand, 1e-6*(1+w.Demand), "%v %s", b, id)
				assert.InDelta(t, w.Resistance, g.Resistance, 1e-6*(1+w.Resistance), "%v %s", b, id)
			}
		}
		var sheet derive.Sheet
		r.Derive(&sheet)
		assert.NoError(t, derive.Verify(sheet.Steps), "%v", b)
	}
}

// TestRodsThatPullPressTheFill: the fill carries what acts and what the rods pull.
func TestRodsThatPullPressTheFill(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		pulled := onRings(b, geom.Actions{N: -20e3, My: 9e6})
		r, got := check(t, pulled)
		row := r.Rows[0]
		tension := 0.0
		for _, v := range row.Tensions {
			tension += v
		}
		require.Positive(t, tension, "%v", b)
		// The even stress is at least the greatest pressure of the plate.
		assert.GreaterOrEqual(t, got["ring_fill_strength"].Demand, row.Peak*(1-1e-9), "%v", b)
		var sheet derive.Sheet
		r.Derive(&sheet)
		assert.NoError(t, derive.Verify(sheet.Steps), "%v", b)
	}
}

func TestMoreLoadNeverLightensTheWayToTheGround(t *testing.T) {
	watched := []string{"ring_fill_strength", "ring_hoop_ultimate", "ring_hoop_service", "ground_bearing", "ground_bearing_da1_1",
		"ground_bearing_da1_2", "ground_bearing_da2", "ground_bearing_da3", "settle_elastic"}
	rapid.Check(t, func(t *rapid.T) {
		b := rapid.SampledFrom([]basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}).Draw(t, "basis")
		n := -rapid.Float64Range(10e3, 300e3).Draw(t, "N")
		more := n * rapid.Float64Range(1.01, 2).Draw(t, "times")
		_, light := check(t, onRings(b, geom.Actions{N: n}))
		_, heavy := check(t, onRings(b, geom.Actions{N: more}))
		for _, id := range watched {
			assert.GreaterOrEqual(t, heavy[id].Utilization, light[id].Utilization*(1-1e-9), "%v %s", b, id)
		}
	})
}

// through has a square bottom plate under the stack of onRings.
func through(b basis.Basis, side, thickness float64) *base.ColumnInput {
	in := onRings(b, geom.Actions{N: -120e3, My: 2e6})
	in.Anchorage = base.Anchorage{Kind: base.Through, Through: tie.Input{
		Plate:  geom.Plate{SizeX: side, SizeY: side, Thickness: thickness, Steel: material.Steel{Fy: 235, Fu: 360}},
		PressX: side, PressY: side,
	}}
	in.Below.Subgrade, in.Base.Stretch = 0.05, 0 // the rods stretch over what they clamp
	return in
}

func TestBottomPlatePastTheFill(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		for _, c := range []struct{ side, thickness float64 }{{760, 20}, {1300, 10}} {
			in := through(b, c.side, c.thickness)
			_, got := check(t, in)
			s := got["bottom_plate_on_ground"]
			require.True(t, s.Rated, "%v %s", b, s.Reason)

			// By hand: the fill's square, all weights, the moment of the one case.
			e := 210000.0
			if b.US() {
				e = 199948
			}
			heavy := map[basis.Basis]float64{basis.Eurocode: 1.35, basis.USLRFD: 1.4, basis.USASD: 1}[b]
			weight := math.Pi/4*700*700*600*20e-6 + 77e-6*c.side*c.side*c.thickness + 2e3
			side := 700 * math.Sqrt(math.Pi) / 2
			var solver bed.Solver
			want := 0.0
			for _, n := range []float64{-120e3 - heavy*weight, -120e3 - weight} {
				r, err := solver.Solve(&bed.Input{
					Plate: bed.Plate{SizeX: c.side, SizeY: c.side, Thickness: c.thickness, E: e, Nu: 0.3}, Modulus: 0.05,
					Patches: []bed.Patch{{SizeX: side, SizeY: side, N: n, My: 2e6}},
				})
				require.NoError(t, err)
				for _, v := range []bed.Bending{r.X, r.Y} {
					want = max(want, math.Abs(v.Sag.Unit), math.Abs(v.Hog.Unit), v.Most)
				}
			}
			assert.InEpsilon(t, want, s.Demand, 1e-9, "%v", b)
		}
		// Ground of unknown stiffness: nothing past the fill counts.
		unknown := through(b, 760, 20)
		unknown.Below.Subgrade = 0
		_, got := check(t, unknown)
		assert.Equal(t, limit.NotApplicable, got["bottom_plate_on_ground"].Verdict)
	}
}

// TestMoreMomentNeverEasesTheFill also where rods begin to pull.
func TestMoreMomentNeverEasesTheFill(t *testing.T) {
	for _, thickness := range []float64{6, 10, 20, 30} {
		before := map[string]float64{}
		for m := 0.0; m <= 12e6; m += 0.5e6 {
			in := onRings(basis.Eurocode, geom.Actions{N: -50e3, My: m})
			in.Base.Plate.Plate.Thickness, in.Weld.Parts[0].Thickness = thickness, thickness
			_, got := check(t, in)
			for _, id := range []string{"ring_hoop_ultimate", "ring_edge_stress"} {
				s := got[id]
				if !s.Rated {
					before[id] = math.Inf(1) // no balance, or beyond the method
					continue
				}
				assert.GreaterOrEqual(t, s.Demand, min(before[id], s.Resistance)*(1-1e-6), "%s %g mm at %g", id, thickness, m)
				before[id] = s.Demand
			}
		}
	}
}

func TestLevellingHoldsNothing(t *testing.T) {
	lifted := func(levelling float64) map[string]limit.State {
		in := through(basis.Eurocode, 760, 20)
		in.Cases[0].Actions = geom.Actions{N: 2e3}
		in.Below.Pairs[0].Permanent, in.Below.Pairs[0].Variable = geom.Actions{}, geom.Actions{N: 2e3, Vx: 100}
		in.Below.Levelling.Thickness = levelling
		_, got := check(t, in)
		return got
	}
	thin, thick := lifted(10), lifted(400)
	assert.InDelta(t, thin["ground_uplift"].Resistance, thick["ground_uplift"].Resistance, 1e-6)
	assert.LessOrEqual(t, thin["ground_overturning"].Utilization, thick["ground_overturning"].Utilization)
}

func TestRodsThatEndNowhereHoldNothing(t *testing.T) {
	in := onRings(basis.Eurocode, geom.Actions{N: 2e3, Vx: 100})
	_, got := check(t, in)
	for _, id := range []string{"ring_sliding", "ring_overturning", "ground_uplift", "ground_overturning"} {
		assert.NotEqual(t, limit.Pass, got[id].Verdict, id)
	}
}

func TestFootSettlesWithItsStack(t *testing.T) {
	in := onRings(basis.Eurocode, geom.Actions{N: -120e3})
	in.Below.Settlement.Neighbours = []settle.Neighbour{{Distance: 4000, Settlement: 0}}
	r, got := check(t, in)
	last := r.Settled().Stages[len(r.Settled().Stages)-1]
	require.Positive(t, last.Above)
	assert.InDelta(t, last.Elastic+last.Above, got["settle_elastic"].Demand, 1e-9)
	assert.InDelta(t, (last.Elastic+last.Above)/4000, got["settle_differential"].Demand, 1e-9)
	in.Below.Stack.Tiers = append([]ring.Tier(nil), in.Below.Stack.Tiers...)
	in.Below.Stack.Tiers[1].Fill.Modulus = 0
	in.Modulus = 0.05
	_, got = check(t, in)
	assert.Equal(t, limit.OutOfScope, got["settle_elastic"].Verdict, "the stack's own settlement is not known")
}

func TestRodsThroughTheStackTakeItsHeightAndWeight(t *testing.T) {
	in := through(basis.Eurocode, 760, 20)
	own := through(basis.Eurocode, 760, 20)
	own.Anchorage.Through.Height = in.Base.Plate.Plate.Thickness + 600 + 20
	own.Anchorage.Through.Clamped = math.Pi/4*700*700*600*20e-6 + 77e-6*760*760*20
	_, got := check(t, in)
	_, want := check(t, own)
	for _, id := range []string{"tie_uplift", "tie_overturning"} {
		assert.InDelta(t, want[id].Demand, got[id].Demand, 1e-6, id)
		assert.InDelta(t, want[id].Resistance, got[id].Resistance, 1e-3, id)
	}
}

// TestPadUnderAnEccentricPlate: the ground feels the plate off the middle.
func TestPadUnderAnEccentricPlate(t *testing.T) {
	in := column(basis.Eurocode, geom.Actions{N: -400e3})
	in.Base.Support.Block.SizeX, in.Base.Support.Block.SizeY, in.Base.Support.Block.Height = 2000, 1800, 500
	in.Base.Support.Block.OffsetX, in.Base.Support.Block.OffsetY = 200, -100
	in.Below = base.Substructure{
		HasGround: true,
		Ground: ground.Input{
			Depth: 600, Soil: ground.Soil{Friction: 34 * math.Pi / 180, Above: 17e-6, Below: 18e-6, Dry: true},
			Interface: ground.Interface{Share: 1},
		},
		Pairs: []base.Pair{{Name: "pair", Permanent: geom.Actions{N: -400e3}, Weight: 1}},
	}
	_, got := check(t, in)
	weight := 24e-6 * 2000 * 1800 * 500
	want := 400e3/(400e3+weight)*200/2000 + 400e3/(400e3+weight)*100/1800
	assert.InDelta(t, want, got["ground_eccentricity"].Demand, 1e-9)
}

func TestSubstructureThatDoesNotFitIsNamed(t *testing.T) {
	for field, change := range map[string]func(*base.ColumnInput){
		"base.substructure.stack.tiers[1].fill.friction_angle_deg": func(in *base.ColumnInput) { in.Below.Stack.Tiers[1].Fill.Phi = 2 },
		"base.substructure.ground.soil.friction_angle_deg":         func(in *base.ColumnInput) { in.Below.Ground.Soil.Friction = 2 },
		"base.substructure.ground.depth_mm":                        func(in *base.ColumnInput) { in.Below.Ground.Depth = math.NaN() },
		"base.substructure.settlement.layers[0].modulus_mpa":       func(in *base.ColumnInput) { in.Below.Settlement.Layers[0].Modulus = -1 },
		"base.substructure.other_weight_kn":                        func(in *base.ColumnInput) { in.Below.OtherWeight = -1 },
		"base.substructure.levelling.thickness_mm":                 func(in *base.ColumnInput) { in.Below.Levelling.Thickness = math.Inf(1) },
		"base.substructure.ground":                                 func(in *base.ColumnInput) { in.Below.HasGround = false },
		"base.substructure.stack": func(in *base.ColumnInput) {
			in.Below.HasStack = false
			in.Base.Support.Medium, in.Base.Support.Given = bearing.Given, bearing.GivenPressure{Pressure: 1, Granular: true}
			in.Modulus = 0.1
		},
		"base.support": func(in *base.ColumnInput) { in.Below.Stack.Tiers[0].Ring.Capacity = 0; in.Modulus = 0.1 },
	} {
		in := onRings(basis.Eurocode, geom.Actions{N: -100e3})
		in.Below.Stack.Tiers = append([]ring.Tier(nil), in.Below.Stack.Tiers...)
		change(in)
		var faults limit.Faults
		base.ValidateColumn(in, &faults)
		var names []string
		for _, f := range faults {
			names = append(names, f.Field)
		}
		assert.Contains(t, names, field)
		_, err := base.CheckColumn(in)
		assert.Error(t, err, field)
	}
}

func TestCombinationsMadeReadyLeaveTheGroundOpen(t *testing.T) {
	in := onRings(basis.Eurocode, geom.Actions{N: -100e3})
	in.Below.Pairs, in.Below.Service, in.Below.NoPairs, in.Below.NoService = nil, nil, "made ready", "made ready"
	r, got := check(t, in)
	for _, id := range []string{"ground_bearing_da1_1", "ground_sliding", "settle_elastic"} {
		assert.Equal(t, limit.OutOfScope, got[id].Verdict, id)
		assert.Equal(t, "made ready", got[id].Reason, id)
	}
	assert.Equal(t, limit.NotApplicable, got["ring_hoop_service"].Verdict)
	assert.Nil(t, r.Settled())
	var sheet derive.Sheet
	r.Derive(&sheet)
	assert.NoError(t, derive.Verify(sheet.Steps))
}

func BenchmarkColumnToTheGround(b *testing.B) {
	for name, in := range map[string]*base.ColumnInput{
		"stack and ground":  onRings(basis.Eurocode, geom.Actions{N: -120e3, Vx: 3e3}),
		"thin bottom plate": through(basis.Eurocode, 1300, 10),
	} {
		b.Run(name, func(b *testing.B) {
			in.NoSizes = true
			b.ReportAllocs()
			for b.Loop() {
				r, err := base.CheckColumn(in)
				if err != nil || len(r.Rows) != 1 {
					b.Fatal(err)
				}
			}
		})
	}
}
