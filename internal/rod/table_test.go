package rod_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/rod"
)

// TestShearOfEveryClass: EN 1993-1-8:2005 Table 3.4, threads in the plane: alpha_v is
// 0.6 for 4.6, 5.6 and 8.8 and 0.5 for the others. M20, A_s 245, gamma_M2 1.25.
func TestShearOfEveryClass(t *testing.T) {
	for class, kN := range map[string]float64{
		"ISO 898-1 4.6":  47.04, // 0.6 400 245/1.25
		"ISO 898-1 4.8":  39.2,  // 0.5 400 245/1.25
		"ISO 898-1 5.6":  58.8,  // 0.6 500 245/1.25
		"ISO 898-1 5.8":  49.0,  // 0.5 500 245/1.25
		"ISO 898-1 6.8":  58.8,  // 0.5 600 245/1.25
		"ISO 898-1 8.8":  94.08, // 0.6 800 245/1.25
		"ISO 898-1 10.9": 98.0,  // 0.5 1000 245/1.25
	} {
		in := four(basis.Eurocode, "M20", class, 22, 150)
		in.Actions = geom.Actions{N: 4e3, Vx: 4e3}
		r, s := check(t, in)
		assert.InDelta(t, kN, r.FvRd/1e3, 0.01, class)
		assert.True(t, s["rod_tension"].Rated, class)
	}
}

// TestBearingAtASideEdge: EN 1993-1-8:2005 Table 3.4, M20 in holes of 22, plate 20 mm
// of f_u 470, e_1 50: alpha_d = 50/66 = 0.7576.
func TestBearingAtASideEdge(t *testing.T) {
	for name, c := range map[string]struct{ wide, apart, kN float64 }{
		// k_1 = 2.8 30/22 - 1.7 = 2.1182; 2.1182 0.7576 470 20 20/1.25
		"edge": {360, 300, 241.35},
		// k_1 = 1.4 54/22 - 1.7 = 1.7364
		"spacing": {400, 54, 197.84},
		"neither": {400, 300, 284.85}, // 2.5
	} {
		in := four(basis.Eurocode, "M20", "ISO 898-1 8.8", 22, 150)
		in.Plate.SizeY = c.wide
		for i := range in.At {
			in.At[i].Y *= c.apart / 300
		}
		in.Actions = geom.Actions{Vx: 100e3}
		_, s := check(t, in)
		assert.InDelta(t, c.kN*1e3, s["plate_bearing"].Resistance, 20, name)
	}
}

// TestHolesTooNear: 2.4 d_0 = 52.8 mm between holes of 22 mm, 8/3 d = 50.8 mm for
// 3/4 in by AISC 360-22 J3.3.
func TestHolesTooNear(t *testing.T) {
	for b, least := range map[basis.Basis]float64{basis.Eurocode: 52.8, basis.USLRFD: 50.8} {
		in := four(b, "M20", "ISO 898-1 8.8", 22, 150)
		if b.US() {
			in = four(b, "3/4-10 UNC", "ASTM F1554 Gr 36", 21, 150)
		}
		in.Actions = geom.Actions{Vx: 1e3}
		for _, far := range []bool{true, false} {
			half := (least - 0.1) / 2
			if far {
				half = (least + 0.1) / 2
			}
			for i, x := range []float64{-half, half, half, -half} {
				in.At[i].X = x
			}
			_, s := check(t, in)
			assert.Equal(t, map[bool]limit.Verdict{true: limit.Pass, false: limit.Fail}[far], s["hole_pattern_minimum"].Verdict, "%v %g", b, half)
		}
	}
}

// TestLooseHolesUS: AISC 360-22 Tables J3.3 and J3.3M: 1/8 in, or 3 mm, from 1 in on;
// 2 mm below.
func TestLooseHolesUS(t *testing.T) {
	for thread, c := range map[string][2]float64{
		"7/8-9 UNC": {24.2, 24.3}, // 22.225 + 2
		"1-8 UNC":   {28.5, 28.7}, // 25.4 + 3.2
	} {
		in := four(basis.USLRFD, thread, "ASTM F1554 Gr 36", c[0], 120)
		assert.False(t, rod.Oversized(in), thread)
		in.Holes.Diameter = c[1]
		assert.True(t, rod.Oversized(in), thread)
	}
}

// TestNoFrictionBesideTorsion, nor under a plate that stands on its rods: what presses
// the plate turns it too, or is not there.
func TestNoFrictionBesideTorsion(t *testing.T) {
	in := four(basis.Eurocode, "M20", "ISO 898-1 8.8", 22, 150)
	in.Actions = geom.Actions{N: -200e3, Vx: 30e3}
	in.Friction = rod.Friction{Counted: true, Compression: 200e3}
	r, _ := check(t, in)
	require.Positive(t, r.Friction)
	in.Actions.T = 1e6
	r, _ = check(t, in)
	assert.Zero(t, r.Friction)
	in.Actions.T = 0
	in.StandOff.Gap = 40
	r, _ = check(t, in)
	assert.Zero(t, r.Friction)
}

// TestHardRodAcrossAGap: EN 1992-4:2018 Table 4.1, class 10.9: gamma_Ms,N = 1.2/0.9 =
// 1.33, not below 1.4; gamma_Ms,V = 1.5 from f_uk 800 on. 245 1000/1.4 = 175 kN.
func TestHardRodAcrossAGap(t *testing.T) {
	in := four(basis.Eurocode, "M20", "ISO 898-1 10.9", 22, 150)
	in.StandOff.Gap = 40
	in.Actions = geom.Actions{N: 4e3, Vx: 4e3}
	r, _ := check(t, in)
	assert.InDelta(t, 1.4, r.Bend.GammaN, 1e-12)
	assert.InDelta(t, 1.5, r.Bend.GammaV, 1e-12)
	assert.InDelta(t, 175e3, r.Bend.NRd, 1)
}

// TestWorstRodOfPullAndShear is the one that has both, whatever its place.
func TestWorstRodOfPullAndShear(t *testing.T) {
	for i := range 4 {
		in := four(basis.Eurocode, "M20", "ISO 898-1 8.8", 22, 150)
		in.Each = []rod.Force{{Tension: 1e3, ShearX: 1e3}, {Tension: 1e3, ShearX: 1e3}, {Tension: 1e3, ShearX: 1e3}, {Tension: 1e3, ShearX: 1e3}}
		in.Each[i] = rod.Force{Tension: 100e3, ShearX: 30e3}
		_, s := check(t, in)
		// 30/94.08 + 100/(1.4 141.12), EN 1993-1-8:2005 Table 3.4
		assert.InDelta(t, 0.8250, s["rod_combined"].Utilization, 1e-4)
		assert.Equal(t, i+1, s["rod_combined"].Member)
	}
}

// TestThicknessForTearOut: AISC 360-22 J3.11: tear-out goes with the thickness.
func TestThicknessForTearOut(t *testing.T) {
	in := four(basis.USLRFD, "3/4-10 UNC", "ASTM F1554 Gr 105", 21, 150)
	in.Plate.Thickness, in.Actions = 4, geom.Actions{Vx: 240e3}
	_, s := check(t, in)
	tear := s["plate_tear_out"]
	require.Positive(t, tear.Demand)
	assert.InEpsilon(t, 4*tear.Demand/tear.Resistance, tear.Required, 1e-9)
}

// TestAsManyRodsAsAllowed: 64.
func TestAsManyRodsAsAllowed(t *testing.T) {
	in := four(basis.Eurocode, "M20", "ISO 898-1 8.8", 22, 150)
	in.Plate.SizeX, in.Plate.SizeY = 4000, 4000
	in.Actions = geom.Actions{N: 4e3}
	in.At = nil
	for i := range 64 {
		in.At = append(in.At, geom.Point{X: float64(i%8)*200 - 700, Y: float64(i/8)*200 - 700})
	}
	_, err := rod.Check(in)
	require.NoError(t, err)
	in.At = append(in.At, geom.Point{X: 1800, Y: 1800})
	_, err = rod.Check(in)
	assert.Error(t, err)
}
