package pin_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/pin"
)

// TestEdgeDistanceAlongTheGrain holds NDS Table 12.5.1C row by row (from memory), D
// 12: 1.5 D, or half the spacing of rows where l/D is over 6; 4 D across the grain.
func TestEdgeDistanceAlongTheGrain(t *testing.T) {
	for _, c := range []struct {
		along, apart float64
		rows         int
		a            pin.Actions
		want         float64
	}{
		{72, 80, 2, pin.Actions{N: 1e3}, 18},
		{73, 80, 2, pin.Actions{N: 1e3}, 40},
		{73, 80, 1, pin.Actions{N: 1e3}, 18},
		{73, 30, 2, pin.Actions{N: 1e3}, 18},
		{72, 80, 2, pin.Actions{N: -1e3}, 18},
		{72, 80, 2, pin.Actions{V: 1e3}, 48},
		{72, 80, 2, pin.Actions{N: 1e3, V: 1e3}, 48},
	} {
		for _, b := range []basis.Basis{basis.USLRFD, basis.USASD} {
			in := foot(b)
			in.Timber.AlongPin, in.Layout.SpacingAcross, in.Layout.Rows, in.Actions = c.along, c.apart, c.rows, c.a
			in.Layout.EdgeDistance = 17.9
			r, s := check(t, in)
			assert.InDelta(t, c.want, r.Least[3].Needs, 1e-9, "%v", c)
			assert.Equal(t, limit.Fail, s["pin_spacing"].Verdict)
		}
	}
}

// TestSlenderAndStockyPlatesByE3 goes over F_y/F_e 2.25: (E3-2) below it, (E3-3)
// above. Plates 2 of 4 by 180, F_y 248.2, held, E 199 948: F_e = pi^2 E t^2/(12 L^2).
func TestSlenderAndStockyPlatesByE3(t *testing.T) {
	for _, arm := range []float64{60, 68, 69, 400} {
		in := single(basis.USASD)
		in.Plates.Steel = material.Steel{Fy: 248.2, Fu: 399.9}
		in.Plates.Thickness, in.Plates.Width, in.Plates.Arm, in.Plates.Held = 4, 180, arm, true
		in.Actions.N = -8e3
		fe := math.Pi * math.Pi * 29000 * 6.894757293168 * 16 / (12 * arm * arm)
		want := math.Pow(0.658, 248.2/fe) * 248.2
		if 248.2/fe > 2.25 {
			want = 0.877 * fe
		}
		_, s := check(t, in)
		assert.InEpsilon(t, want*1440/1.67, s["bracket_compression"].Resistance, 1e-9, arm)
	}
}

// TestShearAboveHalfOfThePlasticShearIsBeyondTheBending: two plates of 8 by 140
// S235, V_pl = 2240 235/sqrt(3) = 303.9 kN; by AISC G 0.6 F_y A with 1 or 1/1.5.
func TestShearAboveHalfOfThePlasticShearIsBeyondTheBending(t *testing.T) {
	for b, plastic := range map[basis.Basis]float64{
		basis.Eurocode: 2240 * 235 / math.Sqrt(3), basis.USLRFD: 0.6 * 235 * 2240, basis.USASD: 0.6 * 235 * 2240 / 1.5,
	} {
		for _, sign := range []float64{1, -1} {
			in := foot(b)
			in.Actions = pin.Actions{V: sign * 0.49 * plastic}
			_, s := check(t, in)
			assert.NotEqual(t, limit.OutOfScope, s["bracket_bending"].Verdict)
			in.Actions.V = sign * 0.51 * plastic
			_, s = check(t, in)
			assert.Equal(t, limit.OutOfScope, s["bracket_bending"].Verdict)
		}
	}
}

// TestThinPlateIsASmallWasher: of min(12 t, 4 d) EN 1995-1-1 8.5.2(3) counts 12 t =
// 36 mm for a plate of 3 mm at M12: 3 2.5 pi/4 (36^2 - 13^2) = 6638.6 N.
func TestThinPlateIsASmallWasher(t *testing.T) {
	in := single(basis.Eurocode)
	in.Pin.Nuts, in.Plates.Thickness = true, 3
	r, _ := check(t, in)
	assert.InDelta(t, 36, r.EC.Disc, 1e-12)
	assert.InDelta(t, 6638.6, r.EC.Bears, 0.1)
	in.Plates.Thickness, in.Plates.Corrosion = 4, 1
	r, _ = check(t, in)
	assert.InDelta(t, 36, r.EC.Disc, 1e-12, "what corrosion leaves")
	in.Plates.Thickness, in.Plates.Corrosion = 5, 0
	r, _ = check(t, in)
	assert.InDelta(t, 48, r.EC.Disc, 1e-12, "4 d")
}

// TestRoundPinInBendingAcrossAGap: AISC 360-22 (F11-1) caps Z F_y at 1.6 S F_y: of a
// round bar d^3/6 is 1.698 S, so that 1.6 pi d^3/32 governs.
func TestRoundPinInBendingAcrossAGap(t *testing.T) {
	for b, factor := range map[basis.Basis]float64{basis.USLRFD: 0.9, basis.USASD: 1 / 1.67} {
		in := single(b)
		in.Plates.Gap = 4
		r, _ := check(t, in)
		assert.InDelta(t, factor*240*1.6*math.Pi*12*12*12/32, r.Steel.BendRd, 1e-6)
	}
	in := single(basis.Eurocode)
	in.Plates.Gap = 4
	r, _ := check(t, in)
	assert.InDelta(t, 1.5*240*math.Pi*12*12*12/32, r.Steel.BendRd, 1e-6, "EN 1993-1-8 Table 3.10")
}

// TestWhatIsNotStatedIsTheCautiousValue: permanent load, wet service, and the
// factors of the tables.
func TestWhatIsNotStatedIsTheCautiousValue(t *testing.T) {
	in := foot(basis.Eurocode)
	in.Timber.Duration = 0
	for class, want := range map[int]float64{1: 0.6, 2: 0.6, 3: 0.5} {
		in.Timber.ServiceClass = class
		r, _ := check(t, in)
		assert.InDelta(t, want, r.Timber.Kmod, 0)
		assert.InDelta(t, 1.3, r.Timber.GammaC, 0)
		assert.InDelta(t, 1.3, r.Timber.GammaM, 0)
	}
	in.Timber.Kind = material.GluedLaminated
	r, _ := check(t, in)
	assert.InDelta(t, 1.25, r.Timber.GammaM, 0)
	for _, b := range []basis.Basis{basis.USLRFD, basis.USASD} {
		in = foot(b)
		in.Timber.ServiceClass = 0
		r, _ = check(t, in)
		assert.InDelta(t, 0.9, r.Timber.CD, 0)
		assert.InDelta(t, 0.6, r.Timber.Lambda, 0)
		assert.InDelta(t, 0.7, r.Timber.CM, 0)
		assert.InDelta(t, 1.5*360, r.US.FeSteel, 1e-9)
	}
}

// TestDampGlulamIsNoticed: service class 2 reaches 20 %, NDS has glulam wet from 16.
func TestDampGlulamIsNoticed(t *testing.T) {
	for _, b := range bases {
		for _, kind := range []material.TimberKind{material.SolidSoftwood, material.GluedLaminated} {
			for class := 1; class <= 3; class++ {
				in := foot(b)
				in.Timber.Kind, in.Timber.ServiceClass = kind, class
				r, _ := check(t, in)
				var n limit.Notices
				r.Notices(&n)
				found := false
				for _, v := range n.All() {
					found = found || v.Code == "pin_glulam_moisture"
				}
				assert.Equal(t, b.US() && kind == material.GluedLaminated && class == 2, found)
			}
		}
	}
}
