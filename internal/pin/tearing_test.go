package pin_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pin"
)

const tearing = "bracket_block_tearing"

// slim is one thin plate, wider than its twelve holes, in a wide column.
func slim(b basis.Basis) *pin.Input {
	in := foot(b)
	in.Timber.AlongPin, in.Timber.AcrossPin = 240, 420
	in.Pin.Fu, in.Pin.Fy = 800, 640
	in.Plates.Arrangement, in.Plates.Thickness, in.Plates.Hole, in.Plates.Width = pin.Inside, 3, 13.5, 420
	in.Plates.EndDistance, in.Plates.Arm = 33.75, 121
	in.Layout = pin.Layout{Rows: 4, InRow: 3, SpacingAlong: 60.5, SpacingAcross: 48, EndDistance: 84, EdgeDistance: 138, GroupFactor: 1}
	in.Actions = pin.Actions{N: 250e3}
	return in
}

// TestThinPlateTearsOutAroundItsHoles: 360 310.5/1.25 + 235 726/sqrt(3) = 187.9 kN
// by EN 1993-1-8 3.10.2, while hole and net section would hold.
func TestThinPlateTearsOutAroundItsHoles(t *testing.T) {
	in := slim(basis.Eurocode)
	_, s := check(t, in)
	assert.Equal(t, limit.Pass, s["bracket_hole_bearing"].Verdict)
	assert.Equal(t, limit.Pass, s["bracket_net_section"].Verdict)
	assert.Equal(t, limit.Fail, s[tearing].Verdict)
	whole := 360*310.5/1.25 + 235*726/math.Sqrt(3)
	assert.InDelta(t, whole, s[tearing].Resistance, 1e-6)
	assert.InDelta(t, 3*250e3/whole, s[tearing].Required, 1e-6)
	in.Plates.Thickness = 4
	_, s = check(t, in)
	assert.Equal(t, limit.Pass, s[tearing].Verdict)
}

// TestMomentHalvesTheTensionOfABlock: the smallest moment makes the group
// eccentric: V_eff,2 and U_bs 0.5 count half of the tension.
func TestMomentHalvesTheTensionOfABlock(t *testing.T) {
	for _, b := range bases {
		in := slim(b)
		r, _ := check(t, in)
		plain := r.Steel.Ends
		in.Actions.M = 1e-3
		r, _ = check(t, in)
		tension := map[basis.Basis]float64{basis.Eurocode: 1 / 1.25, basis.USLRFD: 0.75, basis.USASD: 0.5}[b] * 360 * plain.Across
		assert.InEpsilon(t, plain.Holds-tension/2, r.Steel.Ends.Holds, 1e-9)
	}
}

// TestRowNearTheSideTearsThroughIt: with the outer rows 10 mm from the side, one
// row goes out through the edge: 1 plane of shear and 10 - 6.75 mm in tension.
func TestRowNearTheSideTearsThroughIt(t *testing.T) {
	in := slim(basis.Eurocode)
	in.Plates.Width = 3*48 + 20
	r, _ := check(t, in)
	line := 3 * (2*(60.5-13.5) + 33.75 - 6.75)
	assert.Equal(t, 1, r.Steel.Ends.Planes)
	for k, worst := 1, 0.0; k <= 4; k++ {
		holds := 360*3*(float64(k-1)*34.5+3.25)/1.25 + 235*line/math.Sqrt(3)
		worst = max(worst, 250e3*float64(k)/4/holds)
		assert.GreaterOrEqual(t, r.Steel.Ends.Force/r.Steel.Ends.Holds, worst*(1-1e-12))
	}
	// The next section that could break is the net one: no block holds more than it
	// by f_u and the plane of shear that is left.
	assert.LessOrEqual(t, r.Steel.Ends.Holds*4/float64(r.Steel.Ends.Lines), 4*(360*3*(3*34.5+3.25)/1.25+235*line/math.Sqrt(3)))
}

// TestPressedPlateIsNotTornFromItsEnd: compression goes to the foot, where the
// plate goes on; shear still tears it sideways, both ways alike.
func TestPressedPlateIsNotTornFromItsEnd(t *testing.T) {
	for _, b := range bases {
		in := slim(b)
		in.Actions.N = -50e3
		_, s := check(t, in)
		assert.Equal(t, limit.NotApplicable, s[tearing].Verdict)
		in.Actions.V = 20e3
		_, right := check(t, in)
		assert.True(t, right[tearing].Rated)
		in.Actions.V = -20e3
		_, left := check(t, in)
		assert.Equal(t, right[tearing].Utilization, left[tearing].Utilization)
		one := single(b)
		_, s = check(t, one)
		assert.Equal(t, limit.NotApplicable, s[tearing].Verdict)
	}
}

// TestBlockIsNeverStrongerUnderMore: more of either force, or less plate.
func TestBlockIsNeverStrongerUnderMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		_, before := check(t, in)
		if !before[tearing].Rated {
			t.Skip("nothing tears")
		}
		used := before[tearing].Utilization
		more := *in
		switch rapid.IntRange(0, 2).Draw(t, "what") {
		case 0:
			more.Actions.V *= 1.3
		case 1:
			more.Actions.N += 0.3 * math.Abs(in.Actions.N)
		default:
			more.Plates.Hole += 0.1
		}
		if more.EndBears && more.Actions.N < 0 {
			t.Skip("the end bears")
		}
		_, after := check(t, &more)
		assert.True(t, !after[tearing].Rated && after[tearing].Verdict == limit.Fail || after[tearing].Utilization >= used*(1-1e-9))
	})
}
