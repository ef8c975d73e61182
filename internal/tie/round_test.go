package tie_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/tie"
)

// square is four rods of 10 kN at an offset both ways in a plate of 1000 mm.
func square(b basis.Basis, at float64) tie.Input {
	in := stack(b)
	in.Plate = geom.Plate{SizeX: 1000, SizeY: 1000, Thickness: 30, Steel: material.Steel{Fy: 235, Fu: 360}}
	in.At = []geom.Point{{X: -at, Y: -at}, {X: at, Y: -at}, {X: -at, Y: at}, {X: at, Y: at}}
	in.PressX, in.PressY, in.Preload, in.Needed = 1000, 1000, 0, 0
	return in
}

// TestRoundFillBendsThePlateByTheCentroidOfItsHalf: rods 300 mm off the middle of a plate
// of 1000 mm: section in the middle 20 kN (300 - 250) under even fill on all of it, 20 kN
// (300 - 4 500/(3 pi)) under a circle, 20 kN (300 - 4 450/(3 pi)) under one of 900 mm.
func TestRoundFillBendsThePlateByTheCentroidOfItsHalf(t *testing.T) {
	for _, b := range bases {
		for _, c := range []struct {
			diameter float64
			m        float64
		}{
			{0, 20e3 * 50}, {1000, 20e3 * (300 - 2000/(3*math.Pi))}, {900, 20e3 * (300 - 1800/(3*math.Pi))},
			{400, 20e3 * (300 - 800/(3*math.Pi))}, // rods beyond the fill bend it as well
		} {
			in := square(b, 300)
			if c.diameter > 0 {
				in.PressX, in.PressY, in.PressDiameter = 0, 0, c.diameter
			}
			r, _ := check(t, in)
			// Over 282 mm from each nut both ways it is all of the plate.
			for i := range r.Bend {
				assert.GreaterOrEqual(t, r.Bend[i].PerMM, c.m/1000*(1-1e-9))
				if r.Bend[i].At == 0 {
					assert.InEpsilon(t, c.m, r.Bend[i].M, 1e-9)
				}
			}
			m, ok := r.Moment()
			assert.True(t, ok)
			assert.Equal(t, max(r.Bend[0].PerMM, r.Bend[1].PerMM), m)
			var sheet derive.Sheet
			r.Derive(&sheet)
			require.NoError(t, derive.Verify(sheet.Steps))
		}
	}
}

// TestCircleIsInBalance: moments of a circle's segments by strips.
func TestCircleIsInBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := square(basis.Eurocode, rapid.Float64Range(50, 450).Draw(t, "at"))
		in.PressX, in.PressY, in.PressDiameter = 0, 0, rapid.Float64Range(100, 1000).Draw(t, "D")
		in.Each = []float64{10e3, rapid.Float64Range(8e3, 12e3).Draw(t, "F"), 10e3, 10e3}
		r, _ := check(t, in)
		for i, b := range r.Bend {
			if b.Reason != "" {
				continue
			}
			m := 0.0
			for k, p := range in.At {
				at := p.X
				if i == 1 {
					at = p.Y
				}
				if at > b.At {
					m += in.Each[k] * (at - b.At)
				}
			}
			const n = 20000
			for k := range n {
				z := -b.Half + 2*b.Half*(float64(k)+0.5)/n
				if x := b.E + z; x > b.At {
					m -= b.Load * 2 * math.Sqrt(b.Half*b.Half-z*z) * 2 * b.Half / n * (x - b.At)
				}
			}
			assert.InDelta(t, m, b.M, 1e-4*r.Pull*500)
		}
	})
}

// TestFillOfUnknownPlanIsTheWorseOfPlateAndCircle, and so is a circle that reaches past
// the plate.
func TestFillOfUnknownPlanIsTheWorseOfPlateAndCircle(t *testing.T) {
	for _, at := range []float64{100, 200, 300, 420} {
		in := square(basis.Eurocode, at)
		whole, _ := check(t, in)
		in.PressX, in.PressY, in.PressDiameter = 0, 0, 1000
		circle, _ := check(t, in)
		in.PressDiameter = 0
		unknown, _ := check(t, in)
		in.PressDiameter = 1200
		past, _ := check(t, in)
		for i := range 2 {
			want := max(whole.Bend[i].PerMM, circle.Bend[i].PerMM)
			assert.InEpsilon(t, want, unknown.Bend[i].PerMM, 1e-12)
			assert.InEpsilon(t, want, past.Bend[i].PerMM, 1e-12)
		}
	}
	in := square(basis.Eurocode, 300)
	in.PressDiameter = 900
	_, err := tie.Check(&in)
	var faults limit.Faults
	require.ErrorAs(t, err, &faults)
	assert.Equal(t, "anchorage.through.pressed_diameter_mm", faults[0].Field)
	assert.Equal(t, limit.Conflict, faults[0].Fault)
}

// TestHolesWithoutTensionTakeNothingOffAWidthBesideThem: only two of four rods pull, and
// the fill ends 10 mm beyond their nuts.
func TestHolesWithoutTensionTakeNothingOffAWidthBesideThem(t *testing.T) {
	in := stack(basis.Eurocode)
	in.At = []geom.Point{{X: -200, Y: -230}, {X: 200, Y: -230}, {X: -200, Y: 230}, {X: 200, Y: 230}}
	in.Each = []float64{0, 10e3, 0, 10e3}
	in.Nut, in.Preload, in.Needed, in.PressY = 32.3, 0, 0, 480
	r, states := check(t, in)
	assert.Equal(t, limit.Pass, states["tie_plate_bending"].Verdict)
	assert.Less(t, states["tie_plate_bending"].Utilization, 0.5)
	assert.Greater(t, r.Bend[1].Width, 20.0)
	// A hole wider than its nut is spanned by its washer.
	in.Each, in.Hole, in.Cover = []float64{10e3, 10e3, 10e3, 10e3}, 42, 60
	_, states = check(t, in)
	assert.Equal(t, limit.Pass, states["tie_plate_bending"].Verdict)
}

// TestSectionAtTheRimOfAHoleIsWeakened: one rod in the middle of a strip of 600 mm, nut 36
// mm, hole 26 mm: every section nearer than 13 mm lacks the hole.
func TestSectionAtTheRimOfAHoleIsWeakened(t *testing.T) {
	in := stack(basis.Eurocode)
	in.Preload, in.Needed = 0, 0
	// The second rod, without tension, has its hole 12 mm beside the section that governs.
	in.At, in.Each = []geom.Point{{}, {X: 12, Y: 100}}, []float64{40e3, 0}
	r, _ := check(t, in)
	assert.InDelta(t, 0, r.Bend[0].At, 1e-9)
	assert.InDelta(t, 600-2*26, r.Bend[0].Width, 1e-9)
	in.At[1].X = 30
	r, _ = check(t, in)
	assert.InDelta(t, 600-26, r.Bend[0].Width, 1e-9)
}

// TestRodsBearTheirInitialPreload by hand: four M20 of 245 mm2 and 1000 mm are k_r 205.8
// kN/mm; beside 20 kN/mm they take 0.91143 of what the actions add.
func TestRodsBearTheirInitialPreload(t *testing.T) {
	for _, b := range bases {
		in := stack(b)
		in.RodArea, in.Preload, in.Stack, in.RodStrength, in.Top = 245, 60e3, 20e3, 100e3, in.Plate
		r, states := check(t, in)
		assert.InDelta(t, 60e3+10e3*0.911426, r.Ft, 1)
		assert.InDelta(t, 4*r.Ft, r.Pull, 1e-6)
		assert.InDelta(t, 10e3, r.Acts, 1e-9)
		assert.InDelta(t, 0.691143, states["tie_rod_tension"].Utilization, 1e-5)
		assert.InEpsilon(t, 60e3, states["tie_top_punching"].Demand, 1e-12)
		assert.InEpsilon(t, r.Ft, states["tie_plate_punching"].Demand, 1e-12)
		// The actions at rest: preload is there all the same.
		in.Each, in.Actions, in.PressX, in.PressY = []float64{0, 0, 0, 0}, geom.Actions{}, 0, 0
		r, states = check(t, in)
		assert.InEpsilon(t, 240e3, r.Pull, 1e-12)
		assert.NotEqual(t, limit.NotApplicable, states["tie_plate_bending"].Verdict)
		assert.InEpsilon(t, r.Bend[0].PerMM, r.Top[0].PerMM, 1e-12) // the same plate, all of it pressed
		// Above its strength it fails, whatever the actions.
		in.Preload = 100.1e3
		_, states = check(t, in)
		assert.Equal(t, limit.Fail, states["tie_rod_tension"].Verdict)
		in.Preload = 99.9e3
		_, states = check(t, in)
		assert.Equal(t, limit.Pass, states["tie_rod_tension"].Verdict)
		// A stack of unknown stiffness leaves all to the rods; more than it clamps takes
		// its clamping off.
		in.Stack, in.Preload, in.Each = 0, 20e3, []float64{10e3, 10e3, 10e3, 90e3}
		r, _ = check(t, in)
		assert.InDelta(t, 110e3, r.Ft, 1e-6)
		in.Stack, in.Held = 1e9, 5e3
		r, _ = check(t, in)
		assert.InDelta(t, 90e3, r.Ft, 1e-6)
	}
}

// TestThinUpperPlateIsLeftToAnEngineer: what stands on it may stiffen it.
func TestThinUpperPlateIsLeftToAnEngineer(t *testing.T) {
	in := stack(basis.Eurocode)
	in.Preload, in.RodStrength, in.Top = 60e3, 1e6, in.Plate
	in.Top.Thickness = 8
	_, states := check(t, in)
	s := states["tie_top_bending"]
	assert.Equal(t, limit.OutOfScope, s.Verdict)
	assert.Greater(t, s.Utilization, 1.0)
	in.Top.Thickness = s.Required
	_, states = check(t, in)
	assert.Equal(t, limit.Pass, states["tie_top_bending"].Verdict)
	assert.InDelta(t, 1, states["tie_top_bending"].Utilization, 1e-6)
}

// TestPlateIsHeldWithoutItsPreloadToo: rods that pull beyond the edge of the fill have no
// balance once their preload is gone.
func TestPlateIsHeldWithoutItsPreloadToo(t *testing.T) {
	in := stack(basis.Eurocode)
	in.PressX, in.Each, in.Preload = 300, []float64{0, 10e3, 0, 10e3}, 40e3
	_, states := check(t, in)
	assert.Equal(t, limit.Fail, states["tie_plate_bending"].Verdict)
}

// TestPreloadLeftIsThatOfRelaxationSettlementAndLoad: 60 kN less three tenths, what 0.05 mm
// takes, and 5.4 kN of compression.
func TestPreloadLeftIsThatOfRelaxationSettlementAndLoad(t *testing.T) {
	in := stack(basis.Eurocode)
	in.Preload, in.Relaxed, in.Settlement, in.Stack, in.Load = 60e3, 0.3, 0.05, 22e3, 5.4e3
	r, _ := check(t, in)
	k := 4 * 210000 * 353 / 1000.0
	assert.InEpsilon(t, 42e3-5.4e3/4*k/(k+22e3)-0.05/(1/k+1/22e3)/4, r.Springs.Left, 1e-9)
	in.Load, in.Actions = 0, geom.Actions{N: -5.4e3}
	same, _ := check(t, in)
	assert.Equal(t, r.Springs, same.Springs)
}

// TestTurnedTieAnswersTheSame: what lies and acts along x answers as along y.
func TestTurnedTieAnswersTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		in.Plate.SizeY, in.PressDiameter = 700, rapid.SampledFrom([]float64{0, 550, 800}).Draw(t, "D")
		if in.PressDiameter > 0 || rapid.Bool().Draw(t, "unknown") {
			in.PressX, in.PressY = 0, 0
		}
		in.Top, in.RodStrength = in.Plate, 150e3
		_, before := check(t, in)
		in.At = append([]geom.Point(nil), in.At...)
		for i, p := range in.At {
			in.At[i] = geom.Point{X: p.Y, Y: -p.X}
		}
		in.Plate.SizeX, in.Plate.SizeY = in.Plate.SizeY, in.Plate.SizeX
		in.Top, in.PressX, in.PressY = in.Plate, in.PressY, in.PressX
		a := in.Actions
		in.Actions = geom.Actions{N: a.N, Vx: a.Vy, Vy: -a.Vx, Mx: -a.My, My: a.Mx}
		_, after := check(t, in)
		for id, s := range before {
			assert.Equal(t, s.Verdict, after[id].Verdict, id)
			assert.InDelta(t, s.Utilization, after[id].Utilization, 1e-6*s.Utilization, id)
			if id == "tie_overturning" {
				continue // a pull alone turns both edges alike
			}
			assert.InDelta(t, s.Demand, after[id].Demand, 1e-6*s.Demand, id)
			assert.InDelta(t, s.Resistance, after[id].Resistance, 1e-6*s.Resistance, id)
		}
	})
}
