package base_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/anchor"
	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pad"
	"footward.example/footward/internal/plate"
	"footward.example/footward/internal/ring"
	"footward.example/footward/internal/tie"
)

var families = []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}

// TestShearActsAtTheUpperFace: V times plate and grout is a moment for all that lies
// below. A base under M + V (t + t_g) without its shear has the same support, plate, rods
// and tension of the anchorage.
func TestShearActsAtTheUpperFace(t *testing.T) {
	for _, b := range families {
		for _, s := range []struct{ with, lowered geom.Actions }{
			// (30 + 30) mm 100 kN is 6 kNm.
			{geom.Actions{N: -100e3, My: 50e6, Vx: 100e3}, geom.Actions{N: -100e3, My: 56e6}},
			{geom.Actions{N: -100e3, My: -50e6, Vx: 100e3}, geom.Actions{N: -100e3, My: -56e6}},
			{geom.Actions{N: -100e3, Mx: 50e6, Vy: 100e3}, geom.Actions{N: -100e3, Mx: 56e6}},
			{geom.Actions{N: -100e3, Mx: -50e6, Vy: 100e3}, geom.Actions{N: -100e3, Mx: -56e6}},
			{geom.Actions{N: 0, Vx: -100e3}, geom.Actions{N: 0, My: -6e6}},
			{geom.Actions{N: 0, Vy: -100e3}, geom.Actions{N: 0, Mx: 6e6}},
		} {
			in, alone := column(b, s.with), column(b, s.lowered)
			in.Anchorage, alone.Anchorage = anchorages()["headed"], anchorages()["headed"]
			r, got := check(t, in)
			_, want := check(t, alone)
			for _, id := range []string{"base_equilibrium", "resultant_on_base", "plate_compression_flange", "plate_tension_tstub",
				"plate_cantilever", "plate_tension_cantilever", "rod_tension", "plate_punching", "anchor_cone", "anchor_rod_tension"} {
				if w, has := want[id]; has {
					assert.Equal(t, w.Verdict, got[id].Verdict, "%v %s", b, id)
					assert.InDelta(t, w.Demand, got[id].Demand, 1e-6*(1+w.Demand), "%v %+v %s", b, s.with, id)
				}
			}
			var sheet derive.Sheet
			r.Derive(&sheet)
			assert.NoError(t, derive.Verify(sheet.Steps))
			var l limit.Notices
			r.Notices(&l)
			assert.Contains(t, codes(&l), "base_shear_lever")
		}
	}
}

func codes(l *limit.Notices) []string {
	var out []string
	for _, n := range l.All() {
		out = append(out, n.Code)
	}
	return out
}

// TestShearBesideAMomentStaysWithinTheMethod: the lever of a small shear about the other
// axis is put on the moment, and does not make it one about both.
func TestShearBesideAMomentStaysWithinTheMethod(t *testing.T) {
	for _, b := range families {
		for _, a := range []geom.Actions{{N: -300e3, Vx: 5e3, Vy: -3e3}, {N: -300e3, Mx: 40e6, Vx: 5e3, Vy: 3e3}, {N: 60e3, Vx: 2e3, Vy: 2e3}} {
			_, got := check(t, column(b, a))
			for id, s := range got {
				assert.NotContains(t, s.Reason, "both axes", "%v %+v %s", b, a, id)
			}
			still := a
			still.Vx, still.Vy = 0, 0
			_, without := check(t, column(b, still))
			for _, id := range []string{"plate_compression", "plate_compression_flange", "plate_tension_tstub", "plate_cantilever"} {
				if s := without[id]; s.Rated && got[id].Rated {
					assert.GreaterOrEqual(t, got[id].Demand, s.Demand, "%v %s", b, id)
				}
			}
		}
	}
}

// TestRodsHaveTheTensionOfThePlatesOwnMethod takes F_T = (M + N z_C)/(z_T + z_C) of the
// fixed base of an HE 200 B with z_T 160, z_C 92.5 mm: (60e6 - 100e3 92.5)/252.5 = 200.99
// kN for two rods, above the sharing's, whose block lies at the edge of the plate.
func TestRodsHaveTheTensionOfThePlatesOwnMethod(t *testing.T) {
	in := column(basis.Eurocode, geom.Actions{N: -100e3, Mx: -60e6})
	in.Base.Stretch = 3000 // without prying
	in.Anchorage = anchorages()["headed"]
	r, got := check(t, in)
	ft := (60e6 - 100e3*92.5) / 252.5
	require.InDelta(t, ft, got["plate_tension_tstub"].Demand, 1)
	for _, id := range []string{"rod_tension", "anchor_rod_tension"} {
		assert.InDelta(t, ft/2, got[id].Demand, 1, id)
	}
	assert.GreaterOrEqual(t, got["anchor_cone"].Demand, ft-1)
	assert.InDelta(t, ft/2, max(r.Rows[0].Tensions[0], r.Rows[0].Tensions[2]), 1)
}

// TestPreloadActsOnAllThatItClamps: rods tightened to 60 kN pull bottom plate and nuts by
// 60 kN and press the bed by 4 60 kN over 420 420 mm, and what acts besides. Where nothing
// pulls otherwise, less preload is less.
func TestPreloadActsOnAllThatItClamps(t *testing.T) {
	for _, b := range families {
		in := through(b, 760, 20)
		a := geom.Actions{N: -120e3}
		in.Cases[0].Actions = a
		_, loose := check(t, in)
		assert.Equal(t, limit.NotApplicable, loose["tie_plate_bending"].Verdict)
		in.Anchorage.Through.Preload = 60e3
		_, got := check(t, in)
		for _, id := range []string{"rod_tension", "tie_plate_punching", "plate_punching"} {
			assert.GreaterOrEqual(t, got[id].Demand, 60e3*(1-1e-9), "%v %s", b, id)
			assert.Less(t, got[id].Demand, 75e3, "%v %s", b, id)
		}
		assert.NotEqual(t, limit.NotApplicable, got["tie_plate_bending"].Verdict)
		assert.GreaterOrEqual(t, got["base_pressure"].Demand, 4*60e3/(420*420)*(1-1e-9), "%v", b)
		assert.Greater(t, got["ring_edge_stress"].Demand, loose["ring_edge_stress"].Demand)
	}
}

// TestPreloadThatLastsPressesASoftBed: 4 20 kN and 50 kN over 420 420 mm of 0.05 N/mm3,
// where rods of 353 mm2 and 600 mm take most of what unloads them.
func TestPreloadThatLastsPressesASoftBed(t *testing.T) {
	in := column(basis.Eurocode, geom.Actions{N: -50e3})
	in.Base.Support.Medium = bearing.Given
	in.Base.Support.Given = bearing.GivenPressure{Pressure: 1, Source: "test"}
	in.Modulus, in.Preload = 0.05, 20e3
	r, got := check(t, in)
	kr := 210e3 * in.Base.Rod.Thread.NetArea(0) / 600
	held := 20e3 - 50e3/(0.05*420*420+4*kr)*kr
	assert.InDelta(t, (4*held+50e3)/(420*420), got["base_pressure"].Demand, 1e-3)
	assert.InDelta(t, 20e3, r.Rows[0].Tensions[0], 1e-6, "as tightened, before the force comes")
	assert.GreaterOrEqual(t, got["base_pressure"].Demand, 4*20e3/(420.*420))
}

// TestWornRodsHandOnWhatNewOnesAttract on an elastic bed, where stiffer rods get more.
func TestWornRodsHandOnWhatNewOnesAttract(t *testing.T) {
	for _, b := range families {
		in := column(b, geom.Actions{N: -200e3, Mx: 60e6})
		in.Modulus, in.Anchorage = 5, anchorages()["headed"]
		in.Base.Stretch = 3000
		_, fresh := check(t, in)
		in.Base.Rod.Corrosion = 3
		_, worn := check(t, in)
		for _, id := range []string{"rod_tension", "anchor_cone", "base_pressure"} {
			assert.GreaterOrEqual(t, worn[id].Demand, fresh[id].Demand*(1-1e-9), "%v %s", b, id)
		}
	}
}

// TestGroutOfItsOwnBlockReachesTheRods: EN 1992-4 7.2.2.3.1, 1 - 0.01 12 mm
// up to half a diameter; ACI 318-19
// 17.7.1.2.1, 0.8.
func TestGroutOfItsOwnBlockReachesTheRods(t *testing.T) {
	for b, want := range map[basis.Basis]float64{basis.Eurocode: 0.88, basis.USLRFD: 0.8} {
		in := column(b, geom.Actions{N: -100e3, Vx: 10e3})
		in.Base.Support.Medium = bearing.Given
		in.Base.Support.Given = bearing.GivenPressure{Pressure: 10, Source: "test"}
		in.Anchorage = anchorages()["headed"]
		s := &in.Base.Support.Block
		in.Anchorage.BlockOfSupport = false
		in.Anchorage.Headed.Block.Concrete, in.Anchorage.Headed.Block.SizeX = s.Concrete, s.SizeX
		in.Anchorage.Headed.Block.SizeY, in.Anchorage.Headed.Block.Height = s.SizeY, s.Height
		_, bare := check(t, in)
		in.Anchorage.Headed.Under = anchor.Under{GroutThick: 12, GroutStrength: 40}
		_, got := check(t, in)
		require.Positive(t, bare["anchor_rod_shear"].Resistance, "%v %+v", b, bare["anchor_rod_shear"])
		assert.InEpsilon(t, want*bare["anchor_rod_shear"].Resistance, got["anchor_rod_shear"].Resistance, 1e-9, "%v", b)
	}
}

// TestBearingIsNeverLeftOutInSilence where rods pull in every combination.
func TestBearingIsNeverLeftOutInSilence(t *testing.T) {
	for _, b := range families {
		r, got := check(t, column(b, geom.Actions{N: -100e3, Mx: 60e6}))
		ids := []string{"resultant_on_base", "concrete_bearing"}
		if b == basis.Eurocode {
			ids = []string{"resultant_on_base", "concrete_partially_loaded", "joint_design_pressure"}
		}
		for _, id := range ids {
			assert.Equal(t, limit.NotApplicable, got[id].Verdict, id)
			assert.Contains(t, got[id].Reason, "rods pull", id)
		}
		// The state in which rods are checked is shown.
		assert.InEpsilon(t, r.Rows[0].Peak, got["base_pressure"].Demand, 1e-12)
	}
}

// TestBarsWithoutGroundAreRefused: they would be dropped.
func TestBarsWithoutGroundAreRefused(t *testing.T) {
	in := column(basis.USLRFD, geom.Actions{N: -100e3})
	in.Below.Reinforcement = pad.Reinforcement{X: pad.Bars{Diameter: 12, Spacing: 200}, Y: pad.Bars{Diameter: 12, Spacing: 200}, Cover: 50, Yield: 420}
	_, err := base.CheckColumn(in)
	var faults limit.Faults
	require.ErrorAs(t, err, &faults)
	assert.Equal(t, "base.substructure.ground", faults[0].Field)
	assert.Equal(t, limit.Missing, faults[0].Fault)
}

// TestDerivationIsOfTheCombinationThatUsesStrengthMost, though the rule of the holes,
// which is the same in all, is used more.
func TestDerivationIsOfTheCombinationThatUsesStrengthMost(t *testing.T) {
	in := column(basis.Eurocode, geom.Actions{})
	in.Cases = []base.Case{
		{Name: "first", Actions: geom.Actions{N: -10e3}}, {Name: "second", Actions: geom.Actions{N: -300e3, Mx: 60e6}}, {Name: "third", Actions: geom.Actions{N: -20e3}},
	}
	in.Base.Holes.Diameter = 40 // edge distances are nearly used up
	r, _ := check(t, in)
	var sheet derive.Sheet
	r.Derive(&sheet)
	assert.Contains(t, sheet.Steps[0].Clause, "second")
}

// TestKeyOfAStackIsToldToTheBase: a shoe without rods slides on one interface only.
func TestKeyOfAStackIsToldToTheBase(t *testing.T) {
	in := onRings(basis.Eurocode, geom.Actions{N: -50e3, Vx: 10e3})
	in.Base.HasRods, in.Base.At = false, nil
	_, got := check(t, in)
	assert.Equal(t, limit.NotApplicable, got["base_shear_path"].Verdict, got["base_shear_path"].Reason)
	assert.Equal(t, limit.Pass, got["ring_sliding"].Verdict)
	in.Below.Stack.Key = 0
	in.Cases[0].Actions.Vx = 25e3
	_, got = check(t, in)
	assert.Equal(t, limit.Fail, got["ring_sliding"].Verdict, "friction of the fill alone")
	in.Cases[0].Actions.T = 1e6
	_, got = check(t, in)
	assert.Equal(t, limit.Fail, got["base_shear_path"].Verdict)
}

// TestStrongerFillNeverShortensThePlate: the same plate under the same actions presses
// through the same circle, whatever the rings bear.
func TestStrongerFillNeverShortensThePlate(t *testing.T) {
	for _, b := range families {
		for _, a := range []geom.Actions{{N: -60e3, My: 4e6}, {N: -30e3, Mx: 6e6, Vy: 2e3}, {N: -80e3, Vx: 3e3}} {
			var before map[string]limit.State
			for _, capacity := range []float64{260e3, 400e3, 700e3, 2000e3} {
				in := onRings(b, a)
				in.Base.Plate.Plate.Thickness, in.Weld.Parts[0].Thickness = 15, 15
				in.Below.Stack.Tiers = append([]ring.Tier(nil), in.Below.Stack.Tiers...)
				for i := range in.Below.Stack.Tiers {
					in.Below.Stack.Tiers[i].Ring.Capacity = capacity
				}
				in.Below.Stack.Settlement = 10
				_, got := check(t, in)
				for id, s := range before {
					if s.Rated && got[id].Rated && s.Verdict != limit.NotApplicable {
						assert.LessOrEqual(t, got[id].Utilization, s.Utilization*(1+1e-3)+1e-3, "%v %+v %g %s", b, a, capacity, id)
					}
				}
				before = got
			}
		}
	}
}

// TestThinPlatePressesAsFarAsItBends takes d_0 = b_f + 2 c of a centred force by hand:
// 2 m_R = N/(pi d_0^2/4) c^2, so d_0 = b_f/(1 - 2 sqrt(2 m_R pi/(4 N))).
func TestThinPlatePressesAsFarAsItBends(t *testing.T) {
	for _, b := range families {
		in := onRings(b, geom.Actions{N: -400e3})
		p := &in.Base.Plate.Plate
		p.Thickness, in.Weld.Parts[0].Thickness = 8, 8
		_, got := check(t, in)
		m := tie.MomentResistance(p, &in.Base.Plate.Design)
		d := 200 / (1 - 2*math.Sqrt(2*m*math.Pi/4/400e3))
		require.Less(t, d, 420.)
		assert.InEpsilon(t, 400e3/(math.Pi/4*d*d), got["ring_edge_stress"].Demand, 2e-4, "%v", b)
	}
}

// TestStackSettlesOnce: the settlement of the stack in service is one figure, and goes on
// without a jump where rods begin to pull.
func TestStackSettlesOnce(t *testing.T) {
	before := 0.0
	for m := 2e6; m <= 7e6; m += 0.25e6 {
		in := onRings(basis.Eurocode, geom.Actions{N: -40e3, My: m})
		in.Below.Stack.Settlement = 50
		in.Below.Sustained = nil
		r, got := check(t, in)
		stages := r.Settled().Stages
		own := got["ring_settlement"].Demand
		assert.InDelta(t, own, stages[len(stages)-1].Above, 1e-9, "M %g", m)
		if before > 0 {
			assert.InEpsilon(t, before, own, 0.2, "M %g", m)
		}
		before = own
	}
}

// TestUpliftOfATubeKeepsItsRodsUnderShear: uplift with a little shear is still uplift.
func TestUpliftOfATubeKeepsItsRodsUnderShear(t *testing.T) {
	in := column(basis.Eurocode, geom.Actions{N: 20e3, Vx: 1e3})
	in.Base.Plate.Footprint.Shape, in.Base.Plate.Footprint.Thick = plate.Tube, 10
	_, got := check(t, in)
	s := got["plate_tension_tstub"]
	require.True(t, s.Rated, s.Reason)
	// 1 kN 60 mm over an arm of 120 mm: 0.5 kN more.
	assert.InDelta(t, 20.5e3/2, s.Demand, 1)
}

// TestTorsionOfAPlateOffTheMiddle under shear along y alone.
func TestTorsionOfAPlateOffTheMiddle(t *testing.T) {
	for _, c := range []struct {
		offX, offY float64
		a          geom.Actions
		turns      bool
	}{{200, 0, geom.Actions{N: -400e3, Vy: 5e3}, true}, {0, 200, geom.Actions{N: -400e3, Vy: 5e3}, false},
		{0, 200, geom.Actions{N: -400e3, Vx: 5e3}, true}, {200, 0, geom.Actions{N: -400e3, Vx: 5e3}, false}} {
		in := column(basis.Eurocode, c.a)
		s := &in.Base.Support.Block
		s.SizeX, s.SizeY, s.Height, s.OffsetX, s.OffsetY = 2000, 1800, 500, c.offX, c.offY
		in.Below = onRings(basis.Eurocode, c.a).Below
		in.Below.HasStack, in.Below.HasSettlement, in.Below.Levelling = false, false, base.Levelling{}
		_, got := check(t, in)
		if c.turns {
			assert.Contains(t, got["ground_sliding"].Reason, "torsion", "%+v", c)
		} else {
			assert.NotContains(t, got["ground_sliding"].Reason, "torsion", "%+v", c)
		}
	}
}

// TestRequiredThicknessHoldsWithItsOwnLever: a thicker plate has the shear act higher.
func TestRequiredThicknessHoldsWithItsOwnLever(t *testing.T) {
	for _, b := range families {
		tried := 0
		defer func() { assert.Positive(t, tried) }()
		for _, a := range []geom.Actions{{N: -50e3, Mx: 40e6, Vy: 60e3}, {N: 100e3, Vx: 80e3}, {N: -400e3, Vx: 50e3}} {
			in := column(b, a)
			in.Base.Plate.Plate.Thickness, in.Weld.Parts[0].Thickness = 8, 8
			_, got := check(t, in)
			for id, s := range got {
				if s.Size != limit.PlateThickness || s.Verdict != limit.Fail {
					continue
				}
				tried++
				thick := *in
				thick.Base.Plate.Plate.Thickness, thick.Weld.Parts[0].Thickness = s.Required*(1+1e-6), s.Required*(1+1e-6)
				_, now := check(t, &thick)
				assert.NotEqual(t, limit.Fail, now[id].Verdict, "%v %+v %s at %g: %g", b, a, id, s.Required, now[id].Utilization)
			}
		}
	}
}
