package pad_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/pad"
)

const (
	inch = 25.4
	kip  = 4448.2216152605
	psi  = 4.4482216152605 / (inch * inch)
	foot = 12 * inch
)

// TestRectangularColumnOnASquarePad: PCA Notes on ACI 318-11, Examples 22.1 to 22.3
// (from memory, confidence medium, recomputed): 13 ft square, 33 in thick, d 28 in,
// column 30 by 12 in, f'c 3000 psi, f_y 60 ksi, P_u 860 kip, 13 No. 8 bars. Printed:
// 5.10 ksf; one-way V_u 243 kip; two-way 780 kip against 812; M_u 1193 ft kip, A_s
// 9.6 in2. The book rounds the pressure of 5.09 up and rho to 0.0022. One-way resistance
// changed with ACI 318-19.
func TestRectangularColumnOnASquarePad(t *testing.T) {
	in := pad.Input{
		Design: basis.Design{Basis: basis.USLRFD, EC: basis.Recommended()},
		SizeX:  13 * foot, SizeY: 13 * foot, Thickness: 33 * inch,
		Column: pad.Column{SizeX: 30 * inch, SizeY: 12 * inch}, Concrete: material.Concrete{Strength: 3000 * psi},
		Reinforcement: pad.Reinforcement{
			X: pad.Bars{Diameter: inch, Spacing: 12 * inch}, Y: pad.Bars{Diameter: inch, Spacing: 12 * inch},
			Cover: 4 * inch, Yield: 60e3 * psi,
		},
		Actions: geom.Actions{N: -5.10 * 13 * 13 * kip},
	}
	r, states := check(t, in)
	assert.InDelta(t, 28, r.Punch.D/inch, 1e-9)
	assert.InDelta(t, 5.10, r.Net/(kip/(foot*foot)), 1e-9)
	wide := r.Spans[1] // along y, 6 ft overhang
	assert.InDelta(t, 6, wide.A/foot, 1e-9)
	// The book takes 28 in for both directions, this layer has 27.5.
	assert.InDelta(t, 243, wide.V*13*foot/kip*(6-28.0/12)/(6-27.5/12), 1)
	assert.InDelta(t, 780, r.Punch.V*r.Punch.U*r.Punch.D/kip, 1)
	assert.InDelta(t, 812, r.Punch.R*r.Punch.U*r.Punch.D/kip, 0.5)
	assert.InDelta(t, 1193, wide.M*13*foot/(kip*foot), 0.5)
	assert.Equal(t, limit.Pass, states["pad_punching"].Verdict)
	assert.Equal(t, limit.Pass, states["pad_bending_y"].Verdict)
	in.Reinforcement.YBelow, in.Reinforcement.Cover = true, 4.5*inch
	r, _ = check(t, in)
	assert.InDelta(t, 28, r.Spans[1].Depth/inch, 1e-9)
	assert.InDelta(t, 9.6, r.Spans[1].AsNeed*13*foot/(inch*inch), 0.13)
}

// TestSquarePadUnderASquareColumn: Wight and MacGregor, Reinforced Concrete, 6th
// ed., Example 15-2 (from memory, confidence medium, recomputed): 11 ft 2 in square,
// 32 in thick, d 28 in, column 18 in square, f'c 3000 psi, P_u 912 kip. Printed: 7.31
// ksf; two-way V_u 804 kip against 846; one-way V_u 204 kip; M_u 954 ft kip.
func TestSquarePadUnderASquareColumn(t *testing.T) {
	side := 11*foot + 2*inch
	in := pad.Input{
		Design: basis.Design{Basis: basis.USLRFD, EC: basis.Recommended()},
		SizeX:  side, SizeY: side, Thickness: 32 * inch,
		Column: pad.Column{SizeX: 18 * inch, SizeY: 18 * inch}, Concrete: material.Concrete{Strength: 3000 * psi},
		Reinforcement: pad.Reinforcement{
			X: pad.Bars{Diameter: inch, Spacing: 11 * inch}, Y: pad.Bars{Diameter: inch, Spacing: 11 * inch},
			Cover: 3 * inch, Yield: 60e3 * psi,
		},
		Actions: geom.Actions{N: -912 * kip},
	}
	r, _ := check(t, in)
	assert.InDelta(t, 28, r.Punch.D/inch, 1e-9)
	assert.InDelta(t, 7.31, r.Net/(kip/(foot*foot)), 0.005)
	assert.InDelta(t, 804, r.Punch.V*r.Punch.U*r.Punch.D/kip, 0.7)
	assert.InDelta(t, 846, r.Punch.R*r.Punch.U*r.Punch.D/kip, 0.7)
	mean := (r.Spans[0].V + r.Spans[1].V) / 2 * side / kip
	assert.InDelta(t, 204, mean, 0.5)
	assert.InDelta(t, 954, r.Spans[0].M*side/(kip*foot), 1)
}

// TestSquarePadByTheEurocode: Mosley, Bungey and Hulse, Reinforced Concrete Design to
// Eurocode 2, Example 10.1 (from memory, confidence medium, recomputed): 2.8 m square,
// 600 mm thick, d 520 mm, column 400 mm, C30/37, 1000 kN and 350 kN. Printed: 239
// kN/m2; 4393 kN at the column with 0.5 nu f_cd; V_Ed 626 kN and 0.15 N/mm2 at 2 d;
// 482 kNm.
func TestSquarePadByTheEurocode(t *testing.T) {
	in := pad.Input{
		Design: basis.Design{Basis: basis.Eurocode, EC: basis.Recommended()},
		SizeX:  2800, SizeY: 2800, Thickness: 600,
		Column: pad.Column{SizeX: 400, SizeY: 400}, Concrete: material.Concrete{Strength: 30},
		Reinforcement: pad.Reinforcement{
			X: pad.Bars{Diameter: 20, Spacing: 300}, Y: pad.Bars{Diameter: 20, Spacing: 300}, Cover: 60, Yield: 500,
		},
		Actions: geom.Actions{N: -(1.35*1000e3 + 1.5*350e3)},
	}
	r, states := check(t, in)
	require.InDelta(t, 520, r.Punch.D, 1e-9)
	assert.InDelta(t, 0.239, r.Net, 0.0005)
	assert.InDelta(t, 4393e3, r.Column.R/0.4*0.5*r.Column.U*r.Column.D, 0.5e3)
	assert.InDelta(t, 482, r.Spans[0].M*2800/1e6, 0.5)
	assert.InDelta(t, 1875e3*(1-0.16/7.84), r.Column.V*r.Column.U*r.Column.D, 1e-3) // less the pressure under the column
	// At 2 d the book has 626 kN over 8134 mm; the perimeter that governs is nearer.
	far := 626e3 / (8134 * 520)
	assert.InDelta(t, 0.15, far, 0.005)
	assert.Less(t, r.Punch.A, 2*520.0)
	_, resistance := 0.0, r.Punch.R*r.Punch.A/(2*520)
	assert.GreaterOrEqual(t, states["pad_punching"].Utilization, far/resistance*(1-1e-3))
}

// TestPlainPadByHand: worked by hand. C25/30: f_ctm 2.565, f_ctd,pl = 0.8 x 0.7 x
// 2.565/1.5 = 0.9576 MPa. 1.2 m square under 300 mm with 288 kN: 0.2 MPa, a 450 mm,
// h_F = 450 sqrt(0.6/0.9576)/0.85 = 419.1 mm. tau: 0.2 x 450 = 90 N/mm against 0.9576
// x 450/1.5 = 287.3 N/mm.
func TestPlainPadByHand(t *testing.T) {
	in := footing(basis.Eurocode)
	in.SizeX, in.SizeY, in.Thickness = 1200, 1200, 450
	in.Column, in.Reinforcement = pad.Column{SizeX: 300, SizeY: 300}, pad.Reinforcement{}
	in.Actions, in.Weight = geom.Actions{N: -288e3}, 30e3
	_, states := check(t, in)
	s := states["pad_plain_thickness"]
	assert.InDelta(t, 419.1, s.Demand, 0.1)
	assert.InDelta(t, 419.1, s.Required, 0.1)
	assert.Equal(t, limit.PadThickness, s.Size)
	assert.InDelta(t, 90, states["pad_plain_shear"].Demand, 1e-9)
	assert.InDelta(t, 287.3, states["pad_plain_shear"].Resistance, 0.1)

	// ACI: f'c 3626 psi, root 60.2 psi = 0.41518 MPa; h - 2 in = 399.2 mm. Bending
	// 0.2 x 450^2/2 = 20 250 against 0.6 x 5 x 0.41518 x 399.2^2/6 = 33 082 Nmm/mm.
	// Punching on 4 x 699.2 mm: 0.2 (1200^2 - 699.2^2)/(2796.8 x 399.2) = 0.1704
	// against 0.6 x 2 x 4/3 x 0.41518 = 0.6643 MPa.
	in.Design.Basis = basis.USLRFD
	_, states = check(t, in)
	assert.InDelta(t, 20250, states["pad_plain_bending"].Demand, 1e-6)
	assert.InDelta(t, 33082, states["pad_plain_bending"].Resistance, 10)
	assert.InDelta(t, 0.1704, states["pad_plain_punching"].Demand, 1e-4)
	assert.InDelta(t, 0.6643, states["pad_plain_punching"].Resistance, 1e-4)
}

// TestReinforcedPadByHand: worked by hand. C25/30, B500, 2 m square, 500 mm thick, 400
// mm column, 12 mm at 150: A_s = 0.75398 mm2/mm; d = 500 - 50 - 6 = 444, then 432.
// 1000 kN: 0.25 MPa, a 800, m = 80 000 Nmm/mm. f_cd 16.667, f_yd 434.78:
// m_Rd = 327.82 (444 - 327.82/33.333) = 142 327. rho_min = 0.26 x 2.565/500 = 0.001334.
// Anchorage: x 250, R 62.5, z_e = 800 + 60 - 125 = 735, F_s = 62.5 x 735/399.6 =
// 114.96 N/mm; f_bd = 2.25 x 1.19699 = 2.6932; 3 x 114.96/0.75398/2.6932 = 169.8 mm.
// Shear: 0.25 x 356 = 89; k = 1 + sqrt(200/444) = 1.6712; v_min = 0.035 x 2.1604 x 5 =
// 0.37807, 167.86 N/mm, the bars being too short to count.
func TestReinforcedPadByHand(t *testing.T) {
	bars := pad.Bars{Diameter: 12, Spacing: 150}
	in := pad.Input{
		Design: basis.Design{Basis: basis.Eurocode, EC: basis.Recommended()},
		SizeX:  2000, SizeY: 2000, Thickness: 500, Column: pad.Column{SizeX: 400, SizeY: 400},
		Concrete:      material.Concrete{Strength: 25},
		Reinforcement: pad.Reinforcement{X: bars, Y: bars, Cover: 50, Yield: 500},
		Actions:       geom.Actions{N: -1000e3}, Blinding: true,
	}
	r, states := check(t, in)
	x := r.Spans[0]
	assert.InDelta(t, 80000, x.M, 1e-6)
	assert.InDelta(t, 142327, x.MRd, 10)
	assert.InDelta(t, 0.001334, x.RhoMin, 1e-6)
	assert.InDelta(t, 114.96, x.Pull, 0.01)
	assert.InDelta(t, 169.8, x.Bond, 0.1)
	assert.InDelta(t, 200, x.Has, 1e-9)
	assert.InDelta(t, 89, x.V, 1e-9)
	assert.InDelta(t, 167.86, x.VRd, 0.02)
	assert.Zero(t, x.RhoV)
	assert.Equal(t, limit.Pass, states["pad_cover"].Verdict)

	// Punching, d 438, at a = 400: u = 1600 + 2513.3 = 4113.3, A_u = 0.16 + 0.64 +
	// 0.50265 = 1.30265 m2; V = 1000 (1 - 1.30265/4) = 674.3 kN; v = 0.37429 MPa. rho =
	// 0.001721, k = 1.67574: v_min = 0.035 x 2.16924 x 5 = 0.37962, times 876/400 =
	// 0.83136. Used 0.4502; the perimeter that governs is used at least as much.
	assert.GreaterOrEqual(t, states["pad_punching"].Utilization, 0.4501)
	assert.Less(t, states["pad_punching"].Utilization, 0.46)
	// At the column 1000 (1 - 0.04)/(1600 x 438) = 1.36986 MPa against 0.4 x 0.54 x
	// 16.667 = 3.6 MPa.
	assert.InDelta(t, 1.36986, states["pad_column_perimeter"].Demand, 1e-5)
	assert.InDelta(t, 3.6, states["pad_column_perimeter"].Resistance, 1e-9)

	// With 40 kNm the whole pad still presses: e = 40 mm, p = 0.25 (1 + 0.12) = 0.28.
	// At the column beside 960 kN: k 0.6, W = 400^2/2 + 400^2 = 240 000; 0.6 x 40e6 /
	// (240 000 x 438) = 0.22831, together 1.59817 MPa.
	in.Actions.My = 40e6
	r, states = check(t, in)
	assert.InDelta(t, 0.28, r.Net, 1e-9)
	assert.InDelta(t, 1.59817, states["pad_column_perimeter"].Demand, 1e-5)
}

// TestPressureByHand: e = B/4 leaves 3 B/4 under a triangle: p = 2 V/(0.75 B L).
func TestPressureByHand(t *testing.T) {
	in := footing(basis.Eurocode)
	in.Weight, in.Actions = 0, geom.Actions{N: -300e3, My: 300e3 * 450}
	r, _ := check(t, in)
	assert.InEpsilon(t, 2*300e3/(0.75*1800*1500), r.Net, 1e-12)
	assert.False(t, r.Kern)
	assert.InEpsilon(t, 2*math.Abs(in.Actions.N)/(1800*1500)*4/3, r.Gross, 1e-12)
}
