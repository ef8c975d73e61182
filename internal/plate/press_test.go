package plate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/plate"
)

// lightly returns a US plate of 457 by 406 by 31.75 mm, F_y 345, on concrete of 30.5 MPa,
// with rods 100 mm each way off a tube of 203 mm.
func lightly(b basis.Basis) *plate.Input {
	in := ec(457.2, 31.75, 345, 30.5, plate.Footprint{Shape: plate.Tube, SizeX: 203.2, SizeY: 203.2, Thick: 9.5})
	in.Design.Basis, in.Plate.SizeY = b, 406.4
	in.Rods = plate.Rods{At: corners(175, 100), Resistance: 100e3, Diameter: 25.4, StressArea: 390}
	return in
}

// TestPlateIsBentByWhatPresses takes N -29 kN and M 16.1 kNm, then a hundredth of it: the
// block is Y long under 30.5 MPa, the plate's cantilever m = (457.2 - 0.95 203.2)/2 =
// 132.1 mm. f_p Y (m - Y/2) is 0.2 of the plate's moment, and goes with the load.
func TestPlateIsBentByWhatPresses(t *testing.T) {
	for _, b := range []basis.Basis{basis.USLRFD, basis.USASD} {
		in := lightly(b)
		in.Actions.N, in.Actions.My = -29e3, 16.1e6
		r, s := check(t, in)
		y := r.US.Y
		assert.Less(t, y, 10.0)
		assert.InDelta(t, 132.08, r.US.M1, 0.01)
		assert.InDelta(t, 30.5*y*(132.08-y/2), r.US.Along, 5)
		assert.Equal(t, limit.Pass, s["plate_cantilever"].Verdict)
		assert.Less(t, s["plate_cantilever"].Utilization, 0.5)
		whole := s["plate_cantilever"].Utilization

		in.Actions.N, in.Actions.My = -290, 0.161e6
		_, s = check(t, in)
		assert.InDelta(t, whole/100, s["plate_cantilever"].Utilization, 0.0005)
	}
}

// TestStrongerBedNeverBendsThePlateMore holds for what rods pull and the column presses:
// the block gets shorter as it gets stronger. On an elastic bed the peak of the sharing
// bends it, whatever the strength.
func TestStrongerBedNeverBendsThePlateMore(t *testing.T) {
	in := lightly(basis.USASD)
	in.Actions.N, in.Actions.My = -50e3, 20e6
	in.Shared = plate.Shared{Known: true, Elastic: true, Peak: 0.511, Tensions: make([]float64, 4)}
	for _, strength := range []float64{1.2, 2, 20} {
		in.Bearing.Pressure = strength
		r, s := check(t, in)
		assert.InDelta(t, 0.511*132.08*132.08/2, r.US.Along, 5)
		assert.InDelta(t, max(r.US.Along, r.US.Across, r.US.Under), s["plate_cantilever"].Demand, 1e-9)
	}
}

// TestStrongerIsNeverWorse raises one thing at a time: no limit state of the plate that
// holds is lost, and none is used more. Where the plate's edge or the axis cuts the
// Eurocode's pressed strip, its middle and so the lever arm shift with c, a little, to
// either side: those are left out.
func TestStrongerIsNeverWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t)
		better := *in
		more := rapid.Float64Range(1, 2).Draw(t, "more")
		switch rapid.IntRange(0, 3).Draw(t, "what") {
		case 0:
			better.Plate.Steel.Fy *= more
			better.Plate.Steel.Fu *= more
		case 1:
			better.Plate.Thickness *= more
		case 2:
			better.Rods.Resistance *= more
		case 3:
			if in.Design.Basis.US() {
				return // see TestStrongerBedNeverBendsThePlateMore
			}
			better.Bearing.Pressure *= more
		}
		if cutStrip(in) || cutStrip(&better) {
			return
		}
		was, is := states(t, in), states(t, &better)
		for i := range was {
			if was[i].Verdict == limit.Pass && (is[i].Verdict == limit.Fail || is[i].Verdict == limit.OutOfScope) ||
				was[i].Rated && is[i].Rated && is[i].Utilization > was[i].Utilization*(1+1e-6) {
				t.Fatalf("%s: %v %g, stronger %v %g", was[i].Kind.ID, was[i].Verdict, was[i].Utilization, is[i].Verdict, is[i].Utilization)
			}
		}
	})
}

func cutStrip(in *plate.Input) bool {
	r, err := plate.Check(in)
	f, p := &in.Footprint, &in.Plate
	return err != nil || in.Design.Basis == basis.Eurocode && in.Actions.Mx+in.Actions.My != 0 &&
		(r.EC.C > min(f.SizeX, f.SizeY)/2-f.Thick || r.EC.C > min(p.SizeX-f.SizeX, p.SizeY-f.SizeY)/2)
}

// TestPullOfTheSharingPressesTheBlockLonger gives the rods more tension than the block's
// own: 2 60 kN and 20 kN of compression press 140 000/(30.5 406.4) = 11.29 mm.
func TestPullOfTheSharingPressesTheBlockLonger(t *testing.T) {
	in := lightly(basis.USLRFD)
	in.Actions = geom.Actions{N: -20e3, My: 16e6}
	in.Shared = plate.Shared{Known: true, Peak: 30.5, Tensions: []float64{60e3, 0, 60e3, 0}}
	r, _ := check(t, in)
	assert.True(t, r.US.Bent)
	assert.InDelta(t, 11.295, r.US.Y, 0.001)
	assert.InDelta(t, 120e3, r.US.Tu, 1e-6)
	// A low peak of the sharing bends it less than that block would.
	in.Shared.Peak = 1
	in.Actions.My = 1e6
	r, _ = check(t, in)
	assert.InDelta(t, 132.08*132.08/2, r.US.Along, 1)
}

// TestPlateInsideAnISectionDoesNotJumpWhereAMomentBegins takes W24 x 176 on 330 by 635
// mm under 2753 kN, X = 4 612 325/937^2 0.431 = 0.391, lambda = 2 0.625/(1 + 0.780) =
// 0.703 (AISC Manual Part 14): a moment of nearly nothing changes nothing, a greater one
// never helps, and where it presses with full strength lambda is 1.
func TestPlateInsideAnISectionDoesNotJumpWhereAMomentBegins(t *testing.T) {
	for _, b := range []basis.Basis{basis.USLRFD, basis.USASD} {
		for _, alongY := range []bool{true, false} {
			in := ec(635, 31.75, 345, 30.5, plate.Footprint{Shape: plate.ISection, SizeX: 325, SizeY: 612, Thick: 19, Web: 13})
			in.Design.Basis, in.Plate.SizeX = b, 330.2
			in.Actions.N = -2753e3
			r, _ := check(t, in)
			require.InDelta(t, 0.703, r.US.Lambda, 2e-3)
			before := r.US.Mu
			for _, share := range []float64{1e-8, 1e-6, 1e-3, 0.05, 0.1, 0.2, 0.28} {
				m := share * 2753e3 * 635
				in.Actions.Mx, in.Actions.My = m, 0
				if !alongY {
					in.Actions.Mx, in.Actions.My = 0, m*330.2/635
				}
				r, s := check(t, in)
				require.True(t, r.US.Small)
				assert.GreaterOrEqual(t, s["plate_cantilever"].Demand, before*(1-1e-12), "%v %g", b, share)
				if share < 1e-5 {
					assert.InEpsilon(t, before, s["plate_cantilever"].Demand, 1e-4, "%v %g", b, share)
				}
				before = s["plate_cantilever"].Demand
			}
			assert.Greater(t, r.US.Lambda, 0.7)
			in.Actions.Mx, in.Actions.My = 0, 0
		}
	}
}

// TestWhatIsLeftOfCancellingMomentsChoosesNoMethod presses plates with moments of a
// rounding error beside 800 kN: stiff and soft footprints of both families answer as
// without; 1 kNm acts.
func TestWhatIsLeftOfCancellingMomentsChoosesNoMethod(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		for _, soft := range []bool{false, true} {
			in := ec(340, 25, 235, 12, plate.Footprint{Shape: plate.ISection, SizeX: 200, SizeY: 200, Thick: 15, Web: 9})
			if soft {
				in.Footprint = plate.Footprint{Shape: plate.Rectangle, SizeX: 200, SizeY: 200, StiffStated: true}
			}
			in.Design.Basis, in.Actions.N = b, -800e3
			plain, want := check(t, in)
			require.Equal(t, plate.Concentric, plain.Case)
			for _, m := range []float64{1e-9, 0.1, -0.2} {
				in.Actions.Mx, in.Actions.My = m, m/2
				r, got := check(t, in)
				assert.Equal(t, plate.Concentric, r.Case)
				assert.Equal(t, want, got, "%v %v %g", b, soft, m)
			}
			in.Actions.Mx, in.Actions.My = 1e6, 0
			r, _ := check(t, in)
			assert.Equal(t, plate.Uniaxial, r.Case)
		}
	}
}
