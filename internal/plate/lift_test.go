package plate_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/plate"
)

// corners are four rods at plus and minus x and y.
func corners(x, y float64) []geom.Point {
	return []geom.Point{{X: -x, Y: -y}, {X: x, Y: -y}, {X: -x, Y: y}, {X: x, Y: y}}
}

// TestRodsBeyondTheTubeBendThePlateRoundItsCorner takes a plate of 354 mm under a tube
// of 200 mm, rods at 150 mm both ways, t 12, f_y 355: m_pl = 12^2 355/4 = 12 780 N. A
// line at 45 degrees past the tube's corner is 2 77 sqrt(2) = 217.8 mm long and 70.71
// mm off the rod: 12 780 217.8/70.71 = 39.36 kN a rod. Along a wall both rods of a side
// have 12 780 354/50/2 = 45.24 kN each. So 4 39.36 = 157 kN is the most.
func TestRodsBeyondTheTubeBendThePlateRoundItsCorner(t *testing.T) {
	in := ec(354, 12, 355, 15, plate.Footprint{Shape: plate.Tube, SizeX: 200, SizeY: 200, Thick: 10})
	in.Rods = plate.Rods{At: corners(150, 150), Resistance: 146.7e3, Diameter: 20, StressArea: 245}
	in.Actions.N = 260e3
	r, s := check(t, in)
	require.True(t, r.EC.TStub.Prying)
	u := s["plate_tension_tstub"]
	assert.Equal(t, limit.Fail, u.Verdict)
	assert.InDelta(t, 73.55e3, u.Resistance, 5)
	assert.Less(t, u.Resistance, 2*39.36e3)
	in.Actions.N = 145e3
	_, s = check(t, in)
	assert.Equal(t, limit.Pass, s["plate_tension_tstub"].Verdict)

	// With rods of both sides just beyond the walls, the plate bends about a wall that
	// they stand beside: rods at x 160, y 120 beside a tube of 100 by 200, m 20 along
	// y, but off the wall along x by 110: beyond the ends of that flange.
	in.Footprint.SizeX, in.Rods.At = 100, corners(160, 120)
	_, s = check(t, in)
	assert.NotEqual(t, limit.Pass, s["plate_tension_tstub"].Verdict)
}

// TestUpliftOfATubeDoesNotDependOnTheNamesOfTheAxes turns a tube of 200 by 180 whose
// rods stand beyond the walls' ends along one axis only.
func TestUpliftOfATubeDoesNotDependOnTheNamesOfTheAxes(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		in := ec(520, 30, 355, 15, plate.Footprint{Shape: plate.Tube, SizeX: 200, SizeY: 180, Thick: 10})
		in.Design.Basis, in.Plate.SizeY = b, 440
		in.Rods = plate.Rods{At: corners(200, 150), Resistance: 146.7e3, Diameter: 20, StressArea: 245}
		in.Actions.N = 20e3
		turned := *in
		turned.Plate.SizeX, turned.Plate.SizeY = 440, 520
		turned.Footprint.SizeX, turned.Footprint.SizeY = 180, 200
		turned.Rods.At = corners(150, 200)
		_, one := check(t, in)
		_, two := check(t, &turned)
		for id := range one {
			assert.Equal(t, one[id], two[id], "%v %s", b, id)
		}
		for _, id := range []string{"plate_tension_tstub", "plate_tension_cantilever"} {
			if s, ok := one[id]; ok {
				assert.Equal(t, limit.Pass, s.Verdict, "%v %s", b, id)
			}
		}
	}
}

// TestRodsOfTheLiftedSideAreEnough takes N 10 kN and M 60 kNm, which lift one side
// only: no rods are asked for on the other.
func TestRodsOfTheLiftedSideAreEnough(t *testing.T) {
	in := ec(600, 40, 355, 15, plate.Footprint{Shape: plate.ISection, SizeX: 300, SizeY: 300, Thick: 19, Web: 11})
	in.Plate.SizeX = 500
	in.Rods = plate.Rods{At: []geom.Point{{X: -120, Y: 220}, {X: 120, Y: 220}}, Resistance: 200e3, Diameter: 24, StressArea: 353}
	in.Actions.N, in.Actions.Mx = 10e3, 60e6
	r, s := check(t, in)
	assert.Equal(t, limit.Pass, s["plate_tension_tstub"].Verdict, s["plate_tension_tstub"].Reason)
	assert.InDelta(t, (60e6+10e3*r.EC.Zc)/(220+r.EC.Zc), r.EC.Ft, 1)
	assert.False(t, r.Both)
	in.Actions.Mx = 1e6 // both sides lift, and the other has no rods
	r, s = check(t, in)
	assert.Equal(t, plate.NoRow, r.Misfit)
	assert.Equal(t, limit.OutOfScope, s["plate_tension_tstub"].Verdict)
}

// TestBothSidesLiftWithRodsAtDifferentDistances takes N 100 kN, M 2 kNm and rods at
// 200 and 160 mm: T_1 = (100 160 + 2000)/360 = 50, T_2 = (100 200 - 2000)/360 = 50 kN.
func TestBothSidesLiftWithRodsAtDifferentDistances(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD} {
		in := wald()
		in.Design.Basis, in.Plate.SizeY = b, 500
		in.Rods.At = []geom.Point{{X: -100, Y: 200}, {X: 100, Y: 200}, {X: -100, Y: -160}, {X: 100, Y: -160}}
		in.Actions.N, in.Actions.Mx = 100e3, 2e6
		r, _ := check(t, in)
		require.True(t, r.Both)
		for i := range in.Rods.At {
			assert.InDelta(t, 25e3, r.RodPull(i), 1e-6)
		}
		// The farther row bends the plate more.
		assert.InDelta(t, 200, r.Row.S, 1e-9)
	}
}

// TestRodsThatTheBasePullsOnTheOtherSideBendThePlateToo gives the far row, which is
// weaker, the tension of a preload: its own T-stub governs.
func TestRodsThatTheBasePullsOnTheOtherSideBendThePlateToo(t *testing.T) {
	in := wald()
	in.Plate.SizeY = 520
	in.Rods.At = []geom.Point{{X: -100, Y: 160}, {X: 100, Y: 160}, {X: -100, Y: -230}, {X: 100, Y: -230}}
	in.Actions.N, in.Actions.Mx = -100e3, 20e6
	in.Shared = plate.Shared{Known: true, Peak: 5, Tensions: []float64{40e3, 40e3, 45e3, 45e3}}
	r, s := check(t, in)
	assert.InDelta(t, 90e3, s["plate_tension_tstub"].Demand, 1e-6)
	assert.InDelta(t, 230-100-0.8*math.Sqrt2*6, r.EC.TStub.M, 1e-9)
	assert.InDelta(t, 45e3, r.RodPull(3), 1e-6)
	assert.GreaterOrEqual(t, r.RodPull(0), 40e3)
	// C_1 = min(C, C/2 + (M - sum T s)/(2 z_C)), C = 170 + 100 kN, sum T s = 80 160 -
	// 90 230 = -7.9 kNm: 135 + 27.9e3/(2 92.5) = 285.8 > 270 kN.
	assert.InDelta(t, 270e3, s["plate_compression_flange"].Demand, 1)

	// Where the other side's rods do not fit, that is said, whatever the first holds.
	in.Rods.At[2].X = -20
	r, s = check(t, in)
	assert.Equal(t, plate.OffMiddle, r.Misfit)
	assert.Equal(t, limit.OutOfScope, s["plate_tension_tstub"].Verdict)
	// And a reason that was there before stays.
	in.Actions.N, in.Actions.Mx = 200e3, 1e6
	in.Rods.At[2].X = -100
	in.Rods.At[0].X = -20
	r, _ = check(t, in)
	assert.Equal(t, plate.OffMiddle, r.Misfit)
}

// TestMomentsAboutBothAxesNeedTheContact holds that without it the plate is out of
// scope, in every basis, whatever the compression and however small the second
// moment; the clauses' own states hold one moment alone.
func TestMomentsAboutBothAxesNeedTheContact(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		for _, n := range []float64{-300e3, 0, 100e3, -1} {
			in := wald()
			in.Design.Basis, in.Actions = b, geom.Actions{N: n, Mx: 1e3, My: 1e3}
			r, s := check(t, in)
			assert.True(t, r.Biaxial && r.NeedsSections())
			for id, s := range s {
				assert.NotEqual(t, limit.Fail, s.Verdict, "%v %g %s: %s", b, n, id, s.Reason)
			}
			assert.Equal(t, limit.OutOfScope, s["plate_section_pressed"].Verdict)
			assert.Equal(t, limit.OutOfScope, s["plate_section_pulled"].Verdict)
		}
	}
}

// TestWeakAxisOfAnISectionIsPressedButNotPulled takes M_y on an I-section: where no
// side lifts the plate is held, where one lifts that side is out of scope.
func TestWeakAxisOfAnISectionIsPressedButNotPulled(t *testing.T) {
	in := wald()
	in.Design.Basis = basis.USLRFD
	in.Actions.N, in.Actions.My = -300e3, 10e6
	r, s := check(t, in)
	assert.Equal(t, plate.Fits, r.Misfit)
	assert.Equal(t, limit.Pass, s["plate_cantilever"].Verdict)
	in.Actions.My = 70e6
	r, s = check(t, in)
	assert.Equal(t, plate.NoFlange, r.Misfit)
	assert.Equal(t, limit.OutOfScope, s["plate_tension_cantilever"].Verdict)
	assert.Positive(t, r.RodPull(0)+r.RodPull(1), "the rods are pulled all the same")
}

// TestThickerWeldNeverHoldsLess shortens the lever arm m.
func TestThickerWeldNeverHoldsLess(t *testing.T) {
	in := pried()
	in.Actions.N = 40e3
	last := 0.0
	for throat := 0.0; throat < 17; throat++ {
		in.WeldThroat = throat
		_, s := check(t, in)
		assert.GreaterOrEqual(t, s["plate_tension_tstub"].Resistance, last*(1-1e-9), "throat %g", throat)
		last = s["plate_tension_tstub"].Resistance
	}
}

// TestWornWeldLengthensTheLeverArm takes 0.6 mm off a throat of 4 mm: m grows by 0.8
// sqrt(2) 0.6 = 0.679 mm.
func TestWornWeldLengthensTheLeverArm(t *testing.T) {
	in := wald()
	in.Actions.N, in.Actions.Mx, in.WeldThroat = -500e3, 92e6, 4
	sound, _ := check(t, in)
	in.WeldLost = 0.6
	worn, _ := check(t, in)
	assert.InDelta(t, 0.679, worn.EC.TStub.M-sound.EC.TStub.M, 0.001)
	in.WeldLost = 9
	worn, _ = check(t, in)
	assert.InDelta(t, 60, worn.EC.TStub.M, 1e-9)
}

// TestColumnFlangeAndWebAtThePlate works HE 200 B by hand, S235, without fillets: W_pl
// = 200 15 185 + 9 170^2/4 = 620 025 mm3, class 2 of less (95.5/15 = 6.4, 170/9 = 18.9);
// F_c,fb = 620 025 235/185 = 787.6 kN; F_t,wb = 210 9 235 = 444.2 kN.
func TestColumnFlangeAndWebAtThePlate(t *testing.T) {
	in := wald()
	in.Actions.N, in.Actions.Mx = -500e3, -92e6
	_, s := check(t, in)
	assert.Equal(t, limit.NotApplicable, s["column_flange_compression"].Verdict)
	assert.NotEmpty(t, s["column_web_tension"].Reason)
	in.Footprint.Steel, in.Footprint.SteelKnown = material.Steel{Fy: 235, Fu: 360}, true
	r, s := check(t, in)
	assert.InDelta(t, 787.6e3, s["column_flange_compression"].Resistance, 50)
	assert.InDelta(t, r.EC.Fc, s["column_flange_compression"].Demand, 1e-6)
	assert.InDelta(t, 444.15e3, s["column_web_tension"].Resistance, 1)
	assert.InDelta(t, r.EC.Ft, s["column_web_tension"].Demand, 1e-6)

	// V_pl = 9 170 235/sqrt(3) = 207.6 kN; V 150 kN: rho = (300/207.6 - 1)^2 = 0.1981.
	in.Actions.Vy = -150e3
	_, s = check(t, in)
	assert.InDelta(t, 787.6e3*(1-0.1981), s["column_flange_compression"].Resistance, 200)
	in.Actions.Vy = 0

	// Class 3 (145.5/13 = 11.2 between 10 and 14): I 300 200 13 9: I = 300 13 187^2/2 +
	// 300 13^3/6 + 9 174^3/12 = 72.25e6 mm4, W = 722.5e3: 722.5e3 235/187 = 907.9 kN.
	in.Footprint.SizeX, in.Footprint.Thick = 300, 13
	r, s = check(t, in)
	assert.Equal(t, 3, r.Column.Class)
	assert.InDelta(t, 907.9e3, s["column_flange_compression"].Resistance, 200)

	// A thin flange is of class 4: out of scope, and failing where even class 3 does.
	in.Footprint.Thick, in.Footprint.Web = 4, 3
	_, s = check(t, in)
	assert.Equal(t, limit.Fail, s["column_flange_compression"].Verdict)
	in.Actions.N, in.Actions.Mx = -1e3, -5e6
	_, s = check(t, in)
	assert.Equal(t, limit.OutOfScope, s["column_flange_compression"].Verdict)
}

// TestTubeIsNoStrongerThanOneWithRoundCorners takes 200x200x10: W_pl of the tables is
// 508 cm3 cold formed (EN 10219-2) and 531 cm3 hot finished (EN 10210-2), both from
// memory.
func TestTubeIsNoStrongerThanOneWithRoundCorners(t *testing.T) {
	in := wald()
	in.Footprint.Shape, in.Footprint.Thick = plate.Tube, 10
	in.Footprint.Steel, in.Footprint.SteelKnown = material.Steel{Fy: 355, Fu: 490}, true
	in.Actions.N, in.Actions.Mx = -500e3, 92e6
	r, _ := check(t, in)
	assert.Equal(t, 2, r.Column.Class)
	assert.Less(t, r.Column.W, 508e3)
	assert.Greater(t, r.Column.W, 0.97*508e3)
}

// TestColumnOfEveryClass goes through the limits of EN 1993-1-1 Table 5.2 for S235: an
// outstand of 10 and 14 t, a tube's wall of 38 and 42 t, a web in bending of 83 and 124 t.
func TestColumnOfEveryClass(t *testing.T) {
	for _, c := range []struct {
		shape        plate.Shape
		x, y, tf, tw float64
		class        int
	}{
		{plate.ISection, 210, 200, 10, 10, 2}, {plate.ISection, 211, 200, 10, 10, 3},
		{plate.ISection, 290, 200, 10, 10, 3}, {plate.ISection, 291, 200, 10, 10, 4},
		{plate.ISection, 100, 186, 10, 2, 2}, {plate.ISection, 100, 187, 10, 2, 3},
		{plate.ISection, 100, 268, 10, 2, 3}, {plate.ISection, 100, 269, 10, 2, 4},
		{plate.Tube, 200, 100, 5, 0, 2}, {plate.Tube, 201, 100, 5, 0, 3}, {plate.Tube, 220, 100, 5, 0, 3}, {plate.Tube, 221, 100, 5, 0, 4},
		{plate.Tube, 60, 255, 3, 0, 2}, {plate.Tube, 60, 256, 3, 0, 3}, {plate.Tube, 60, 379, 3, 0, 4},
	} {
		in := ec(700, 30, 235, 20, plate.Footprint{Shape: c.shape, SizeX: c.x, SizeY: c.y, Thick: c.tf, Web: c.tw})
		in.Footprint.Steel, in.Footprint.SteelKnown = material.Steel{Fy: 235, Fu: 360}, true
		in.Actions = geom.Actions{N: -100e3, Mx: 1e6}
		r, _ := check(t, in)
		assert.Equal(t, c.class, r.Column.Class, "%+v", c)
		if c.shape != plate.Tube {
			continue
		}
		// Turned by a quarter the same walls bear the same.
		in.Footprint.SizeX, in.Footprint.SizeY = c.y, c.x
		in.Actions = geom.Actions{N: -100e3, My: 1e6}
		turned, _ := check(t, in)
		assert.Equal(t, r.Column, turned.Column, "%+v", c)
	}
}

// TestTallColumnAndShearOfATube: above 600 mm the web is a fifth at most, so flanges of
// 300 by 20 bear 300 20 235/0.8 = 1762.5 kN. Both walls of a tube of 200x200x10 shear: V_pl
// = 2 10 180 235/sqrt(3) = 488.4 kN; V 400 kN: rho = (800/488.4 - 1)^2 = 0.407.
func TestTallColumnAndShearOfATube(t *testing.T) {
	in := ec(900, 30, 235, 20, plate.Footprint{Shape: plate.ISection, SizeX: 300, SizeY: 700, Thick: 20, Web: 15})
	in.Footprint.Steel, in.Footprint.SteelKnown = material.Steel{Fy: 235, Fu: 360}, true
	in.Actions = geom.Actions{N: -1e6, Mx: 1e6}
	_, s := check(t, in)
	assert.InDelta(t, 1762.5e3, s["column_flange_compression"].Resistance, 1)

	in = ec(500, 30, 235, 20, plate.Footprint{Shape: plate.Tube, SizeX: 200, SizeY: 200, Thick: 10})
	in.Footprint.Steel, in.Footprint.SteelKnown = material.Steel{Fy: 235, Fu: 360}, true
	in.Actions = geom.Actions{N: -1e6, My: 1e6}
	_, s = check(t, in)
	whole := s["column_flange_compression"].Resistance
	in.Actions.Vx = 400e3
	r, s := check(t, in)
	assert.InDelta(t, 488.4e3, r.Column.Vpl, 100)
	assert.InDelta(t, whole*(1-0.407), s["column_flange_compression"].Resistance, 1e-3*whole)
	in.Actions.Vx = 600e3
	_, s = check(t, in)
	assert.Equal(t, limit.Fail, s["column_flange_compression"].Verdict)
}
