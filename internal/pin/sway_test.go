package pin_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pin"
)

// posts is a column on two thin plates, 4 by 120 mm and 200 mm high, with one pin.
func posts(b basis.Basis) *pin.Input {
	in := single(b)
	in.Timber.AlongPin, in.Timber.AcrossPin = 160, 160
	in.Layout.EdgeDistance = 80
	in.Plates.Thickness, in.Plates.Width, in.Plates.EndDistance = 4, 120, 50
	in.Actions = pin.Actions{N: -25e3}
	return in
}

// TestTwoCantileversCarryLessThanTheirEulerLoad: pi^2 E I/(2 L)^2 of two plates of
// 4 by 120 mm is pi^2 210000 1280/400^2 = 16.58 kN, by AISC with E 199 948 MPa
// 15.79 kN: 25 kN must not pass, whatever the code.
func TestTwoCantileversCarryLessThanTheirEulerLoad(t *testing.T) {
	for _, b := range bases {
		in := posts(b)
		r, s := check(t, in)
		assert.Equal(t, limit.Fail, s["bracket_compression"].Verdict, b)
		assert.InDelta(t, 2, r.Steel.K, 0)
		assert.Less(t, s["bracket_compression"].Resistance, math.Pi*math.Pi*210000*2*120*64/12/(400*400))
		in.Plates.Held = true
		r, s = check(t, in)
		assert.InDelta(t, 1, r.Steel.K, 0)
		assert.Equal(t, limit.Pass, s["bracket_compression"].Verdict, b)
	}
	// Slenderness 400 sqrt(12)/4/93.91 = 3.689: chi of curve c 1/(8.1581 + sqrt(8.1581^2
	// - 3.689^2)) = 0.06479, 14.62 kN; E3-3 with K L/r 346.4: 0.877 pi^2 199948/346.4^2
	// = 14.42 MPa of 960 mm2, times 0.9.
	_, s := check(t, posts(basis.Eurocode))
	assert.InDelta(t, 14.617e3, s["bracket_compression"].Resistance, 10)
	_, s = check(t, posts(basis.USLRFD))
	assert.InDelta(t, 0.9*0.877*math.Pi*math.Pi*199948/(346.41*346.41)*960, s["bracket_compression"].Resistance, 1)
}

// TestWhatKeepsThePlatesUpright: nuts hold the heads only at two levels and without
// a gap, a slot only as far as its play allows no tilt over 1/100.
func TestWhatKeepsThePlatesUpright(t *testing.T) {
	nuts := func(in *pin.Input) { in.Pin.Nuts, in.Layout.InRow, in.Layout.SpacingAlong = true, 2, 90 }
	inside := func(in *pin.Input) { in.Plates.Arrangement = pin.Inside }
	for _, c := range []struct {
		name   string
		change func(*pin.Input)
		k      float64
		notice string
	}{
		{"one level", func(in *pin.Input) { in.Pin.Nuts = true }, 2, "pin_plates_sway"},
		{"two levels with nuts", nuts, 1, "pin_plates_upright"},
		{"two levels without nuts", func(in *pin.Input) { nuts(in); in.Pin.Nuts = false }, 2, "pin_plates_sway"},
		{"two levels of dowels", func(in *pin.Input) { nuts(in); in.Pin.Nuts, in.Pin.Kind = false, pin.Dowel }, 2, "pin_plates_sway"},
		{"two levels across a gap", func(in *pin.Input) { nuts(in); in.Plates.Gap = 1 }, 2, "pin_plates_sway"},
		{"inside", inside, 1, "pin_plates_upright"},
		// The slot is 120 + 50 mm deep: 0.85 mm of play on either side tilt 1/100.
		{"inside with little play", func(in *pin.Input) { inside(in); in.Plates.Gap = 0.84 }, 1, "pin_plates_upright"},
		{"inside with play", func(in *pin.Input) { inside(in); in.Plates.Gap = 0.86 }, 2, "pin_plates_sway"},
		{"held", func(in *pin.Input) { in.Plates.Held = true }, 1, "pin_foot_held"},
	} {
		for _, b := range bases {
			in := posts(b)
			c.change(in)
			r, _ := check(t, in)
			assert.InDelta(t, c.k, r.Steel.K, 0, c.name)
			var n limit.Notices
			r.Notices(&n)
			found := map[string]bool{}
			for _, v := range n.All() {
				found[v.Code] = true
			}
			for _, code := range []string{"pin_plates_sway", "pin_plates_upright", "pin_foot_held"} {
				assert.Equal(t, code == c.notice, found[code], "%s: %s", c.name, code)
			}
		}
	}
}

// TestLateralTorsionalBucklingHasTheSameLength: a plate twice as high under the
// same moment is as slender as one whose head goes sideways.
func TestLateralTorsionalBucklingHasTheSameLength(t *testing.T) {
	for _, b := range bases {
		in := posts(b)
		in.Layout.Rows, in.Layout.SpacingAcross, in.Layout.EdgeDistance = 2, 60, 50
		in.Actions = pin.Actions{M: 1e5}
		sways, _ := check(t, in)
		in.Plates.Arm, in.Plates.Held = 400, true
		held, _ := check(t, in)
		assert.InEpsilon(t, held.Steel.ChiLT, sways.Steel.ChiLT, 1e-12)
		assert.Less(t, sways.Steel.ChiLT, 1.0)
	}
}

// TestBucklingIsDividedByItsOwnFactor: EN 1993-1-1 (6.47) has gamma_M1; the plain
// section (6.10) has gamma_M0, and a stress that no buckling reduces too.
func TestBucklingIsDividedByItsOwnFactor(t *testing.T) {
	in := posts(basis.Eurocode)
	_, s := check(t, in)
	plain, stress := s["bracket_compression"].Resistance, s["bracket_bending"].Resistance
	assert.InDelta(t, 235, stress, 1e-9)
	in.Design.EC.GammaM1 = 1.1
	r, s := check(t, in)
	assert.InDelta(t, plain/1.1, s["bracket_compression"].Resistance, 1e-9)
	assert.InDelta(t, 235/1.1, s["bracket_bending"].Resistance, 1e-9)
	assert.InDelta(t, 960*235, r.Steel.Yield, 1e-9)
	in.Actions.N = 25e3 // pulled: nothing buckles
	_, s = check(t, in)
	assert.InDelta(t, 235, s["bracket_bending"].Resistance, 1e-9)
	in.Actions.V = 100 // pulled and bent: it buckles sideways
	r, s = check(t, in)
	assert.Less(t, r.Steel.ChiLT, 1.0)
	assert.InDelta(t, 235/1.1, s["bracket_bending"].Resistance, 1e-9)
	in.Actions.V = 0
	in.Actions.N, in.Plates.Thickness = -25e3, 90 // stocky: slenderness below 0.2
	_, s = check(t, in)
	assert.InDelta(t, 2*90*120*235/1.1, s["bracket_compression"].Resistance, 1e-6)
	in.Design.EC.GammaM0 = 1.2
	_, s = check(t, in)
	assert.InDelta(t, 2*90*120*235/1.2, s["bracket_compression"].Resistance, 1e-6)
}
