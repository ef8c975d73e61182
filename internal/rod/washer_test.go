package rod_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/rod"
)

// TestNutMustNotFallThroughItsHole: a nut of 30 mm over a hole of 60 mm.
func TestNutMustNotFallThroughItsHole(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		in := four(b, "M20", "ISO 898-1 8.8", 60, 120)
		in.Actions = geom.Actions{N: 40e3}
		_, s := check(t, in)
		assert.Equal(t, limit.Fail, s["plate_punching"].Verdict)
		assert.False(t, s["plate_punching"].Rated)
		in.Holes.WasherThickness = 30
		_, s = check(t, in)
		assert.Equal(t, limit.OutOfScope, s["plate_washer_bending"].Verdict, "how wide is the washer?")
		in.Holes.WasherSide = 90
		_, s = check(t, in)
		assert.Equal(t, limit.Pass, s["plate_punching"].Verdict)
		assert.Equal(t, limit.Pass, s["plate_washer_bending"].Verdict)
		in.Holes.WasherSide, in.Holes.WasherThickness = 0, 0
		in.Rod.NutWidth = 61
		_, s = check(t, in)
		assert.Equal(t, limit.Pass, s["plate_punching"].Verdict, "a head wide enough")
	}
}

// TestWasherOverAWideHoleBends: EN 1993-1-1 6.2.5, M20, d_0 45, washer 60x60x2 of
// S235: 235 (60 - 20 - 2) 2^2/45 = 794 N; 60 mm wide and 24 mm thick 114.3 kN.
func TestWasherOverAWideHoleBends(t *testing.T) {
	in := four(basis.Eurocode, "M20", "ISO 898-1 8.8", 45, 120)
	in.Holes.WasherSide, in.Holes.WasherThickness, in.Holes.WasherFy = 60, 2, 235
	in.Actions = geom.Actions{N: 400e3}
	r, s := check(t, in)
	assert.InDelta(t, 794, s["plate_washer_bending"].Resistance, 0.5)
	assert.Equal(t, limit.Fail, s["plate_washer_bending"].Verdict)
	assert.InDelta(t, 794, followed(t, &r)["R_w"], 0.5)
	in.Holes.WasherThickness = 24
	_, s = check(t, in)
	assert.InDelta(t, 114.3e3, s["plate_washer_bending"].Resistance, 50)
	assert.Equal(t, limit.Pass, s["plate_washer_bending"].Verdict)
	// A nut that stands on the plate round a common hole bends nothing.
	in.Holes.Diameter, in.Holes.WasherThickness = 22, 2
	_, s = check(t, in)
	assert.Equal(t, limit.NotApplicable, s["plate_washer_bending"].Verdict)
}

// TestRodsUnderWeldedWashersBend holds AISC Design Guide 1, 3rd ed., Example
// 4.7-6: 1 1/8 in rods 42.2 > 26.5 ksi, 1 1/2 in rods 20.3 < 32.6 ksi; ASD 25.0 >
// 18.7 and 12.0 < 21.8 ksi.
func TestRodsUnderWeldedWashersBend(t *testing.T) {
	for _, c := range []struct {
		b                  basis.Basis
		thread             string
		n, v, has, gets    float64
		passes             bool
		modulus, moment, d float64
	}{
		{basis.USLRFD, "1 1/8-7 UNC", 73.2, 38, 42.2, 26.5, false, 0.237, 5.64, 0.05},
		{basis.USASD, "1 1/8-7 UNC", 42.6, 22.8, 25, 18.7, false, 0.237, 3.39, 0.06},
		{basis.USLRFD, "1 1/2-6 UNC", 73.2, 38, 20.3, 32.6, true, 0.562, 5.64, 0.1},
		{basis.USASD, "1 1/2-6 UNC", 42.6, 22.8, 12, 21.8, true, 0.562, 3.39, 0.06},
	} {
		in := four(c.b, c.thread, "ASTM F1554 Gr 36", 0, 7*inch)
		in.Plate = geom.Plate{SizeX: 24 * inch, SizeY: 24 * inch, Thickness: inch, Steel: material.Steel{Fy: 50 * ksi, Fu: 65 * ksi}}
		in.Holes = rod.Holes{Diameter: in.Rod.Thread.Diameter + 0.75*inch, WeldedWashers: true, WasherThickness: 0.375 * inch, WasherSide: 4 * inch}
		in.Actions = geom.Actions{N: c.n * kip, Vy: c.v * kip}
		r, s := check(t, in)
		got := s["rod_stand_off_stress"]
		assert.InDelta(t, c.has, got.Demand/ksi, c.d, c.thread)
		assert.InDelta(t, c.gets, got.Resistance/ksi, 0.06, c.thread)
		assert.Equal(t, c.passes, got.Verdict == limit.Pass, c.thread)
		v := followed(t, &r)
		assert.InDelta(t, c.modulus, v["W_el"]/inch/inch/inch, 0.0006)
		assert.InDelta(t, c.moment, v["M_b"]/kip/inch, 0.01)
		assert.InDelta(t, 0.594, v["l_a"]/v["alpha_M"]/inch, 0.0005)
	}
}

// TestRodsUnderWeldedWashersBendByEurocode: EN 1992-4 6.2.2.3, 7.2.2.3.2: M24 8.8,
// plate 30, washer 12: l_a = 12 + 30 + 6 = 48 mm; M0_Rk,s = 1.2 pi 21.2^3/32 800 =
// 0.898 kNm; 0.898e6/(48 1.25) = 14.97 kN, twice that where the plate holds the rod.
func TestRodsUnderWeldedWashersBendByEurocode(t *testing.T) {
	in := four(basis.Eurocode, "M24", "ISO 898-1 8.8", 45, 120)
	in.Plate.Thickness = 30
	in.Holes.WeldedWashers, in.Holes.WasherThickness, in.Holes.WasherSide = true, 12, 80
	in.Actions = geom.Actions{Vx: 4 * 20e3}
	r, s := check(t, in)
	assert.InDelta(t, 14.97e3, s["rod_stand_off_bending"].Resistance, 20)
	assert.Equal(t, limit.Fail, s["rod_stand_off_bending"].Verdict)
	followed(t, &r)
	in.Holes.HoldsRotation = true
	_, s = check(t, in)
	assert.InDelta(t, 29.94e3, s["rod_stand_off_bending"].Resistance, 40)
	assert.Equal(t, limit.Pass, s["rod_stand_off_bending"].Verdict)
	in.Holes.WasherThickness, in.Holes.WasherSide = 0, 0 // as thick as the plate: l_a 57 mm
	r, s = check(t, in)
	assert.InDelta(t, 29.94e3*48/57, s["rod_stand_off_bending"].Resistance, 40)
	assert.True(t, noticed(&r, "rods_washer_thickness"))
	in.Holes.Diameter = 26 // the plate bears on the rod
	_, s = check(t, in)
	assert.Equal(t, limit.NotApplicable, s["rod_stand_off_bending"].Verdict)
	assert.NotContains(t, s["rod_stand_off_bending"].Reason, "no gap under")
}

// TestAcrossAGapTheStandOffSaysWhetherThePlateMayTurn has the lever arm 12 + 40 + 15 mm;
// what is said of the holes is of washers and grout.
func TestAcrossAGapTheStandOffSaysWhetherThePlateMayTurn(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		in := four(b, "M24", "ISO 898-1 8.8", 26, 120)
		in.Plate.Thickness = 30
		in.StandOff = rod.StandOff{Gap: 40}
		in.Actions = geom.Actions{Vx: 20e3}
		bends := func(holes, standOff bool) float64 {
			in.Holes.HoldsRotation, in.StandOff.PlateHoldsRotation = holes, standOff
			r, _ := check(t, in)
			return r.Bend.AlphaM
		}
		assert.Equal(t, 1.0, bends(true, false))
		assert.Equal(t, 2.0, bends(false, true))
	}
}

// TestRodsAcrossAGapAreNotPressed: compression has nowhere to go but the rods.
func TestRodsAcrossAGapAreNotPressed(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		in := four(b, "M20", "ISO 898-1 8.8", 22, 150)
		in.StandOff = rod.StandOff{Gap: 60}
		for _, a := range []geom.Actions{{N: -600e3, Vx: 8e3}, {N: -1}, {N: -6e6, Mx: 1e6}, {N: 1e3, My: 50e6}, {Mx: 1e6}} {
			in.Actions = a
			_, s := check(t, in)
			assert.Equal(t, limit.OutOfScope, s["rod_tension"].Verdict)
			assert.Contains(t, s["rod_tension"].Reason, "buckling")
		}
		in.Actions = geom.Actions{N: 40e3, Vx: 8e3, My: 1e6}
		_, s := check(t, in)
		assert.Equal(t, limit.Pass, s["rod_tension"].Verdict)
		in.Actions = geom.Actions{Vx: 8e3}
		_, s = check(t, in)
		assert.Equal(t, limit.NotApplicable, s["rod_tension"].Verdict)
	}
}
