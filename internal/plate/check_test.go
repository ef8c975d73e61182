package plate_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/plate"
)

const (
	inch = 25.4
	ksi  = 6.894757293168361
	kip  = 4448.2216152605
)

func check(t require.TestingT, in *plate.Input) (*plate.Result, map[string]limit.State) {
	r, err := plate.Check(in)
	require.NoError(t, err)
	var l limit.List
	r.States(&l)
	out := map[string]limit.State{}
	for _, s := range l.All() {
		out[s.Kind.ID] = s
	}
	return &r, out
}

// us returns a W12x96 (d 12.7 in, b_f 12.2 in, t_f 0.9 in) on a plate in inches
// with a bearing strength in ksi.
func us(b basis.Basis, sizeX, sizeY, t, fy, pressure float64) *plate.Input {
	return &plate.Input{
		Design: basis.Design{Basis: b, EC: basis.Recommended()},
		Plate:  geom.Plate{SizeX: sizeX * inch, SizeY: sizeY * inch, Thickness: t * inch, Steel: material.Steel{Fy: fy * ksi, Fu: 1.5 * fy * ksi}},
		Footprint: plate.Footprint{Shape: plate.ISection, SizeX: 12.2 * inch, SizeY: 12.7 * inch,
			Thick: 0.9 * inch, Web: 0.55 * inch, Stiff: true, StiffStated: true},
		Bearing: plate.Bearing{Pressure: pressure * ksi, Clause: "test"},
	}
}

// TestConcentricPlateUS holds AISC Design Examples v16.0, Example J.6 (plate of
// A572 Gr 50: t 1.54 in both ways) and the same example with A36 of v14/v15 (t
// 1.82 and 1.81 in; from memory).
func TestConcentricPlateUS(t *testing.T) {
	for _, c := range []struct {
		basis            basis.Basis
		fy, p, pressure  float64
		t, digits, x, fp float64
	}{
		{basis.USLRFD, 50, 690, 875.16 / 484, 1.54, 0.005, 0.788, 1.43},
		{basis.USASD, 50, 460, 582.857 / 484, 1.54, 0.005, 0.789, 0.95},
		{basis.USLRFD, 36, 690, 875.16 / 484, 1.82, 0.005, 0.788, 1.43},
		{basis.USASD, 36, 460, 582.857 / 484, 1.81, 0.01, 0.789, 0.95},
	} {
		in := us(c.basis, 22, 22, 2, c.fy, c.pressure)
		in.Actions.N = -c.p * kip
		r, s := check(t, in)
		assert.InDelta(t, 4.97, r.US.M1/inch, 0.005)
		assert.InDelta(t, 6.12, r.US.N1/inch, 0.005)
		assert.InDelta(t, 3.11, r.US.Inside/inch, 0.005)
		assert.InDelta(t, c.x, r.US.X, 0.001)
		assert.InDelta(t, c.fp, r.US.Fp/ksi, 0.005)
		assert.InDelta(t, c.t, s["plate_cantilever"].Required/inch, c.digits)
		assert.Equal(t, limit.PlateThickness, s["plate_cantilever"].Size)
		assert.Equal(t, limit.NotApplicable, s["plate_tension_cantilever"].Verdict)
	}
}

// TestSmallMoment holds AISC Design Guide 1, 2nd ed., small-moment example (from
// memory).
func TestSmallMoment(t *testing.T) {
	in := us(basis.USLRFD, 19, 19, 1.5, 36, 2.21)
	in.Actions.N, in.Actions.Mx = -376*kip, 940*kip*inch
	r, s := check(t, in)
	assert.InDelta(t, 2.5, r.US.E/inch, 0.005)
	assert.InDelta(t, 5.02, r.US.Ecrit/inch, 0.01)
	assert.InDelta(t, 14.0, r.US.Y/inch, 0.01)
	assert.InDelta(t, 1.41, r.US.Fp/ksi, 0.005)
	assert.InDelta(t, 1.37, s["plate_cantilever"].Required/inch, 0.01)
	assert.InDelta(t, 1.03, 1.4907*r.US.M1/inch*math.Sqrt(r.US.Fp/(36*ksi)), 0.01)
	// 1.41 of 2.21 ksi is more than 2.5 of 5.02 in.
	assert.InDelta(t, r.US.Fp/in.Bearing.Pressure, s["plate_equilibrium"].Utilization, 1e-9)
}

// TestTinyMomentLeavesTheUseOfThePlate, with rods and without: what the compression uses
// of the bed does not vanish beside a moment.
func TestTinyMomentLeavesTheUseOfThePlate(t *testing.T) {
	for _, rods := range []bool{false, true} {
		in := us(basis.USLRFD, 19, 19, 1.5, 36, 2.21)
		if rods {
			in.Rods = plate.Rods{At: []geom.Point{{Y: 200}, {Y: -200}}, Resistance: 60 * kip, Diameter: 38, StressArea: 900}
		}
		in.Actions.N = -376 * kip
		_, without := check(t, in)
		in.Actions.Mx = 1e-3 * kip * inch
		_, with := check(t, in)
		want := 376 / (2.21 * 19 * 19)
		assert.InEpsilon(t, want, without["plate_equilibrium"].Utilization, 1e-9)
		assert.InEpsilon(t, want, with["plate_equilibrium"].Utilization, 1e-5)
		in.Actions.N = -0.95 / want * 376 * kip
		_, with = check(t, in)
		assert.InDelta(t, 0.95, with["plate_equilibrium"].Utilization, 1e-5)
	}
}

// TestLargeMoment holds AISC Design Guide 1, 2nd ed., large-moment example (from
// memory). Its tension side is printed for the whole width of the plate; here
// the width at 45 degrees is less, so more thickness is asked for.
func TestLargeMoment(t *testing.T) {
	in := us(basis.USLRFD, 19, 22, 2, 36, 2.21)
	in.Actions.N, in.Actions.Mx = -376*kip, 3600*kip*inch
	f := 9.5 * inch
	for _, x := range []float64{-6, 6} {
		in.Rods.At = append(in.Rods.At, geom.Point{X: x * inch, Y: f}, geom.Point{X: x * inch, Y: -f})
	}
	in.Rods.Resistance, in.Rods.Diameter, in.Rods.StressArea = 60*kip, 1.5*inch, 1.41*inch*inch
	r, s := check(t, in)
	assert.InDelta(t, 9.57, r.US.E/inch, 0.01)
	assert.InDelta(t, 11.6, r.US.Y/inch, 0.05)
	assert.InDelta(t, 111, r.US.Tu/kip, 1.5)
	// Printed with 1.5 for sqrt(2/0.9) = 1.4907.
	assert.InDelta(t, 1.85, s["plate_cantilever"].Required/inch*1.5/1.4907, 0.005)
	assert.InDelta(t, 3.60, r.US.Arm/inch, 0.005)
	// Rods 6 in from the middle: 3.5 in to the side of the plate, 3.6 in inwards.
	assert.InDelta(t, 7.1, r.US.Width/inch, 0.001)
	printed := 2.108 * math.Sqrt(r.US.Tu/kip*3.60/(19*36))
	assert.Greater(t, s["plate_tension_cantilever"].Required/inch, printed)
	for _, s := range s {
		if s.Kind.ID != "plate_centre" && !strings.HasPrefix(s.Kind.ID, "plate_section") {
			assert.Equal(t, limit.Pass, s.Verdict, s.Kind.ID)
		}
	}
	in.Rods.At = nil
	_, s = check(t, in)
	assert.Equal(t, limit.Fail, s["plate_equilibrium"].Verdict)
	assert.NotEmpty(t, s["plate_equilibrium"].Reason)
}

// TestPlateTooSmallForMoment turns the root of Design Guide 1 imaginary.
func TestPlateTooSmallForMoment(t *testing.T) {
	in := us(basis.USLRFD, 19, 22, 2, 36, 2.21)
	in.Actions.N, in.Actions.Mx = -376*kip, -7000*kip*inch
	in.Rods = plate.Rods{At: []geom.Point{{X: 0, Y: -9.5 * inch}}, Resistance: 60 * kip, Diameter: 38, StressArea: 900}
	r, s := check(t, in)
	assert.Greater(t, r.US.Need, r.US.Have)
	assert.Equal(t, limit.Fail, s["plate_equilibrium"].Verdict)
	assert.Greater(t, s["plate_equilibrium"].Utilization, 1.0)
}

// TestStrongAxisOfBiaxialExample holds the strong-axis part of AISC Design Guide
// 1, 3rd ed., Example 4.7-14.
func TestStrongAxisOfBiaxialExample(t *testing.T) {
	in := us(basis.USLRFD, 14, 14, 1.75, 50, 4.42)
	in.Footprint.SizeX, in.Footprint.SizeY, in.Footprint.Thick = 8.11*inch, 8.5*inch, 0.685*inch
	in.Actions.N, in.Actions.Mx = -90*kip, 700*kip*inch
	in.Rods = plate.Rods{At: []geom.Point{{X: -5.5 * inch, Y: 5.5 * inch}, {X: 5.5 * inch, Y: 5.5 * inch}},
		Resistance: 60 * kip, Diameter: 38, StressArea: 900}
	r, s := check(t, in)
	assert.InDelta(t, 6.27, r.US.Ecrit/inch, 0.005)
	assert.InDelta(t, 7.78, r.US.E/inch, 0.005)
	assert.InDelta(t, 1.7, r.US.Y/inch, 0.05)
	assert.InDelta(t, 15.2, r.US.Tu/kip, 3)
	assert.InDelta(t, 2.96, r.US.M1/inch, 0.005)
	assert.InDelta(t, 3.76, r.US.N1/inch, 0.005)
	assert.InDelta(t, 1.59, r.US.Arm/inch, 0.005)
	assert.InDelta(t, 1.67, s["plate_cantilever"].Required/inch, 0.007)
}

// ec returns a plate of side size and thickness t with a footprint, in mm, and
// f_jd in MPa.
func ec(size, t, fy, fjd float64, f plate.Footprint) *plate.Input {
	f.Stiff, f.StiffStated = true, true
	return &plate.Input{
		Design:    basis.Design{Basis: basis.Eurocode, EC: basis.Recommended()},
		Plate:     geom.Plate{SizeX: size, SizeY: size, Thickness: t, Steel: material.Steel{Fy: fy, Fu: 1.5 * fy}},
		Footprint: f,
		Bearing:   plate.Bearing{Pressure: fjd, Clause: "test"},
	}
}

var he200b = plate.Footprint{Shape: plate.ISection, SizeX: 200, SizeY: 200, Thick: 15, Web: 9}

// TestEffectiveArea holds SCI P358 Table G.33 (CHS 273x5 on 400x400x20) and the
// simple column base of F. Wald (HE 200 B on 340x340x18; lecture "Design of steel
// buildings", Brussels 2014, second hand).
func TestEffectiveArea(t *testing.T) {
	in := ec(400, 20, 265, 17, plate.Footprint{Shape: plate.Pipe, SizeX: 273, SizeY: 273, Thick: 5})
	in.Actions.N = -1e6
	r, s := check(t, in)
	assert.InDelta(t, 45.6, r.EC.C, 0.05)
	assert.InDelta(t, 1376, s["plate_compression"].Resistance/1e3, 1)

	in = ec(340, 18, 235, 2.0/3*2.5*8, he200b)
	in.Actions.N = -889.5e3
	r, s = check(t, in)
	assert.InDelta(t, 43.7, r.EC.C, 0.15)
	assert.InDelta(t, 66714, r.EC.Area, 1)
	assert.InDelta(t, 887, s["plate_compression"].Resistance/1e3, 3)
	assert.InDelta(t, 18, s["plate_compression"].Required, 0.01)
}

// wald returns the fixed column base of the same lecture: HE 200 B on
// 420x420x30, M24 rods of f_ub 360 MPa.
func wald() *plate.Input {
	in := ec(420, 30, 235, 21.33, he200b)
	in.WeldThroat = 6
	in.Bearing.GroutThick = 30
	in.Rods = plate.Rods{At: []geom.Point{{X: -120, Y: 160}, {X: 120, Y: 160}, {X: -120, Y: -160}, {X: 120, Y: -160}},
		Resistance: 0.9 * 360 * 353 / 1.25, Diameter: 24, StressArea: 353}
	return in
}

// TestTStubWithoutPrying holds that base; its l_4 and l_5 (282.7 and 212.7 mm)
// come from e_a and e_b exchanged and do not govern.
func TestTStubWithoutPrying(t *testing.T) {
	in := wald()
	in.Actions.N, in.Actions.Mx = -500e3, 92e6
	r, s := check(t, in)
	ts := r.EC.TStub
	assert.InDelta(t, 53.2, ts.M, 0.05)
	assert.InDelta(t, 210, ts.Lnc, 0.5)
	assert.InDelta(t, 275.3, 4*ts.M+1.25*ts.Ex, 0.1)
	assert.InDelta(t, 417.4, ts.F1/1e3, 0.5)
	assert.InDelta(t, 183.0, ts.F3/1e3, 0.05)
	assert.InDelta(t, 183.0, s["plate_tension_tstub"].Resistance/1e3, 0.05)
	assert.InDelta(t, 261.5, ts.Lb, 0.2) // half a nut of 9.5 mm there, 9.6 mm here
	assert.InDelta(t, 82.5, ts.LbStar, 0.5)
	assert.False(t, ts.Prying)
	// Equilibrium, EN 1993-1-8 Table 6.7: 92.46 kNm on the tension side with z_C
	// 92.5 mm. Here the inner edge of the strip is clear of the axis as well.
	assert.InDelta(t, 92.5, r.EC.Zc, 1e-9)
	in.Actions.Mx = 92.46e6
	_, s = check(t, in)
	assert.InDelta(t, 1, s["plate_tension_tstub"].Utilization, 1e-4)
	in.Actions.Mx = 92e6
	r, _ = check(t, in)
	assert.InDelta(t, (92e6-500e3*92.5)/252.5, r.EC.Ft, 1)
	assert.InDelta(t, r.EC.Ft+500e3, r.EC.Fc, 1)
}

// pried returns a plate of 220 by 220 mm by hand: m 50, e_x 40, n 40, two rods of 100
// kN a side, t 10, f_y 250, w 100, e 60, b 220 mm.
//
//	l_cp = min(314.2, 257.1, 277.1) = 257.1, l_nc = min(250, 185, 110, 175) = 110
//	M_pl = 0.25 110 100 250 = 687 500 Nmm, F_12 = 2 687 500 / 50 = 27 500 N
//	L_b* = 8.8 50^3 157 / (110 10^3) = 1570 mm
func pried() *plate.Input {
	in := ec(220, 10, 250, 20, plate.Footprint{Shape: plate.Tube, SizeX: 40, SizeY: 40, Thick: 5})
	in.Rods = plate.Rods{At: []geom.Point{{X: -50, Y: 70}, {X: 50, Y: 70}, {X: -50, Y: -70}, {X: 50, Y: -70}},
		Resistance: 100e3, Diameter: 16, StressArea: 157, Stretch: 60}
	return in
}

// TestPryingDoesNotHelpThePlate holds EN 1993-1-8 6.2.6.11(2): the plate is that
// without prying, whose mode 1 would be 4 M_pl/m, whatever the rods stretch.
func TestPryingDoesNotHelpThePlate(t *testing.T) {
	in := pried()
	in.Actions.N = 40e3
	for _, stretch := range []float64{60, 1569, 1571, 4000} {
		in.Rods.Stretch = stretch
		r, s := check(t, in)
		ts := r.EC.TStub
		assert.Equal(t, stretch < 1570, ts.Prying, "L_b* %g", ts.LbStar)
		assert.InDelta(t, 1570, ts.LbStar, 0.01)
		assert.InDelta(t, 257.1, ts.Lcp, 0.1)
		assert.InDelta(t, 110, ts.Lnc, 1e-9)
		assert.InDelta(t, 27500, ts.F1, 1e-6)
		assert.InDelta(t, 20e3/27.5e3, s["plate_tension_tstub"].Utilization, 1e-9)
		assert.InDelta(t, 10*math.Sqrt(20/27.5), s["plate_tension_tstub"].Required, 1e-6)
	}
}

// TestCircularPatternsCountOnce takes a plate on which the letter of EN 1993-1-8
// Table 6.6 governs by l_cp: I 300x300x19 on 900x700x12, rods at 140 and 190 mm, m
// 40, l_cp = pi 40 + 2 0.5 (700 - 280) = 545.7 or 2 pi 40 = 251.3 or pi 40 + 280 =
// 405.7, l_nc = min(4 40 + 1.25 260, 700/2, ...) = 350: 2 251.3 12^2 355/4/40 = 160.6 kN.
func TestCircularPatternsCountOnce(t *testing.T) {
	in := ec(900, 12, 355, 15, plate.Footprint{Shape: plate.ISection, SizeX: 300, SizeY: 300, Thick: 19, Web: 11})
	in.Plate.SizeX = 700
	in.Rods = plate.Rods{At: []geom.Point{{X: -140, Y: 190}, {X: 140, Y: 190}, {X: -140, Y: -190}, {X: 140, Y: -190}},
		Resistance: 203e3, Diameter: 24, StressArea: 353, Stretch: 4000}
	in.Actions.Mx = 72e6
	r, s := check(t, in)
	assert.InDelta(t, 251.3, r.EC.TStub.L1, 0.05)
	assert.InDelta(t, 160.6e3, s["plate_tension_tstub"].Resistance, 50)
	assert.Equal(t, limit.Fail, s["plate_tension_tstub"].Verdict)
	in.Plate.Thickness = 16
	_, s = check(t, in)
	assert.Equal(t, limit.Pass, s["plate_tension_tstub"].Verdict)
}

// TestSoftFootprintGovernsAtTheCentre holds the peak moments of a thin plate
// under a uniform patch on a bed (finite elements; 400/200/25, 600/250/25 and
// 1000/300/40 mm on 50 MN/m3): 2.68, 2.39 and 2.20 times the cantilever moment at
// the face. The model must not be below them, nor far above.
func TestSoftFootprintGovernsAtTheCentre(t *testing.T) {
	for _, c := range []struct{ size, foot, t, ratio float64 }{
		{400, 200, 25, 2.68}, {600, 250, 25, 2.39}, {1000, 300, 40, 2.20},
	} {
		in := ec(c.size, c.t, 265, 1, plate.Footprint{Shape: plate.Rectangle, SizeX: c.foot, SizeY: c.foot})
		in.Footprint.Stiff = false
		in.Actions.N = -50e3
		r, s := check(t, in)
		q := 50e3 / (c.size * c.size)
		face := q * (c.size - c.foot) * (c.size - c.foot) / 8
		assert.Greater(t, r.Centre.M/face, c.ratio)
		assert.Less(t, r.Centre.M/face, 1.1*c.ratio)
		assert.True(t, s["plate_centre"].Rated)
		in.Footprint.Stiff = true
		_, s = check(t, in)
		assert.Equal(t, limit.NotApplicable, s["plate_centre"].Verdict)
	}
}

// TestTwoPlatesUnderAMoment works a plate of 400 by 100 mm by hand: lines 200 mm
// apart, P 80 kN, M 2 kNm. The block is 350 mm long, q = 80000/350/100 = 2.2857
// MPa, F_1 = (40000 + 10000)/100 = 500 N/mm, m_1 = q 100^2/2 = 11 429 Nmm/mm, zero
// shear at 218.75 mm, m_0 = 500 (100 - 109.375) = -4687.5, m_2 = q 300^2/2 - 500 200
// = 2857 = q 50^2/2 of the part beyond it. A straight line presses the edge by 2 (1 + 6
// 25/400) = 2.75 MPa and falls by 1.5/400: 2.75 100^2/2 - 0.00375 100^3/6 = 13 125.
func TestTwoPlatesUnderAMoment(t *testing.T) {
	in := ec(400, 25, 235, 20, plate.Footprint{Shape: plate.TwoPlates, SizeX: 210, SizeY: 90, Thick: 10})
	in.Footprint.Stiff, in.Plate.SizeY = false, 100
	in.Actions.N, in.Actions.My = -80e3, 2e6
	r, s := check(t, in)
	assert.InDelta(t, 11429, r.Centre.M1, 1)
	assert.InDelta(t, -4687.5, r.Centre.M0, 1)
	assert.InDelta(t, 2857, r.Centre.M2, 1)
	assert.InDelta(t, 13125, r.Centre.Mean, 1)
	assert.InDelta(t, 13125*2.1/1.9/(625*235./6), s["plate_centre"].Utilization, 1e-4)

	in.Actions.Mx, in.Actions.My = 2e6, 0
	_, s = check(t, in)
	assert.Equal(t, limit.OutOfScope, s["plate_centre"].Verdict)
}

func TestBeyondTheBasis(t *testing.T) {
	both := func(in *plate.Input) { in.Actions.Mx, in.Actions.My = 1e6, 1e6 }
	for name, c := range map[string]struct {
		change func(*plate.Input)
		state  string
	}{
		"both axes":             {both, "plate_section_pressed"},
		"both axes, US":         {func(in *plate.Input) { both(in); in.Design.Basis = basis.USASD }, "plate_section_pulled"},
		"web axis":              {func(in *plate.Input) { in.Actions.My = 1e6 }, "plate_compression_flange"},
		"pipe lifts":            {func(in *plate.Input) { in.Footprint.Shape, in.Actions.N = plate.Pipe, 1e4 }, "plate_tension_tstub"},
		"two rows":              {func(in *plate.Input) { in.Actions.N = 1e4; in.Rods.At[0].Y = 150 }, "plate_tension_tstub"},
		"row out of middle":     {func(in *plate.Input) { in.Actions.N = 1e4; in.Rods.At[0].X = -100 }, "plate_tension_tstub"},
		"rods inside":           {func(in *plate.Input) { in.Actions.N = 1e4; in.Rods.At = []geom.Point{{X: 50}} }, "plate_tension_tstub"},
		"rods on the weld":      {func(in *plate.Input) { in.Actions.N, in.WeldThroat = 1e4, 60 }, "plate_tension_tstub"},
		"rods round the corner": {func(in *plate.Input) { in.Actions.N, in.Footprint.SizeX = 1e4, 120 }, "plate_tension_tstub"},
		"rods round the corner, US": {func(in *plate.Input) {
			in.Design.Basis, in.Actions.N, in.Footprint.SizeX = basis.USLRFD, 1e4, 90
		}, "plate_tension_cantilever"},
		"soft under a moment": {func(in *plate.Input) { in.Actions.Mx = 1e6; in.Footprint.Stiff = false }, "plate_centre"},
		"pipe lifts, US": {func(in *plate.Input) {
			in.Design.Basis, in.Footprint.Shape, in.Actions.N = basis.USLRFD, plate.Pipe, 1e4
		}, "plate_tension_cantilever"},
	} {
		t.Run(name, func(t *testing.T) {
			in := wald()
			in.Actions.N = -100e3
			c.change(in)
			_, s := check(t, in)
			assert.Equal(t, limit.OutOfScope, s[c.state].Verdict)
			assert.NotEmpty(t, s[c.state].Reason)
		})
	}
}

// TestInvertedSizes puts the required thickness in and finds it just enough.
func TestInvertedSizes(t *testing.T) {
	grade, ok := material.SteelByName("EN 10025-2 S355")
	require.True(t, ok)
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		for _, my := range []float64{0, 20e6, 60e6, 95e6} {
			in := wald()
			in.Design.Basis = b
			in.Plate.Steel, in.Plate.Corrosion = material.Steel{Grade: grade}, 2
			in.Actions.N, in.Actions.Mx = -400e3, my
			in.Rods.Resistance = 300e3
			_, first := check(t, in)
			for id, s := range first {
				if s.Size != limit.PlateThickness {
					continue
				}
				again := *in
				again.Plate.Thickness = s.Required
				_, then := check(t, &again)
				assert.LessOrEqual(t, then[id].Utilization, 1+1e-6, "%s %v %g: %g mm", id, b, my, s.Required)
				assert.InDelta(t, 1, then[id].Utilization, 2e-3, "%s %v %g: %g mm", id, b, my, s.Required)
			}
		}
	}
}

func TestNothingToBend(t *testing.T) {
	_, s := check(t, wald())
	for id, s := range s {
		assert.Equal(t, limit.NotApplicable, s.Verdict, id)
	}
}

func TestDerivationCanBeRecomputed(t *testing.T) {
	steps := func(in *plate.Input, what ...any) {
		r, err := plate.Check(in)
		require.NoError(t, err)
		var sheet derive.Sheet
		r.Derive(&sheet)
		assert.NoError(t, derive.Verify(sheet.Steps), what...)
	}
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		for _, shape := range []plate.Shape{plate.ISection, plate.Tube, plate.Pipe, plate.Rectangle, plate.TwoPlates} {
			for _, stretch := range []float64{0, 20} {
				for _, a := range []geom.Actions{{N: -3e5}, {N: -3e5, Mx: 1e7}, {N: -3e5, My: 6e7}, {N: -2e5, Mx: -8e7},
					{N: 1e5}, {N: 1e5, Mx: 1e6}, {N: 1e4, Mx: 3e7, Vy: 9e4}, {Mx: 3e7}, {N: -1, Mx: 1, My: 1}, {}} {
					in := wald()
					in.Design.Basis, in.Footprint.Shape, in.Actions = b, shape, a
					in.Rods.Stretch, in.Footprint.Stiff = stretch, stretch > 0
					in.Rods.At[0].Y, in.Rods.At[1].Y = 170, 170
					if a.My != 0 {
						for i, p := range in.Rods.At {
							in.Rods.At[i] = geom.Point{X: p.Y, Y: p.X}
						}
					}
					steps(in, b, shape, a)
					in.Footprint.Steel, in.Footprint.SteelKnown = material.Steel{Fy: 355, Fu: 490}, true
					in.Shared = plate.Shared{Known: true, Elastic: stretch > 0, Peak: 9, Tensions: []float64{9e4, 8e4, 1e4, 3e4}}
					steps(in, "shared", b, shape, a)
					in.Footprint.Thick, in.Footprint.Web, in.Shared.Peak = 7, 2, 0.1
					steps(in, "slender", b, shape, a)
				}
			}
		}
	}
}
