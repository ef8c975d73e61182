package ground_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
)

// gravel is a round base of 2 m on 1 m of gravel over soft clay, force straight down.
func gravel() ground.Input {
	in := block()
	in.Shape, in.Diameter = ground.Circle, 2000
	in.Soil = ground.Soil{Friction: 38 * degree, Above: 18e-6, Below: 18e-6, Dry: true}
	in.Layer = ground.Layer{Thickness: 1000, Clay: 0.02, Punching: 3}
	in.Approaches = []ground.Approach{ground.DA1Part1}
	return in
}

func TestRoundBaseShearsTheLayerAlongItsOwnEdge(t *testing.T) {
	in := gravel()
	r, states := check(t, in)
	// Meyerhof and Hanna: 1.2 5.14 c + 2 gamma H^2 (1 + 2 D/H) K_s tan(38)/D + gamma D_f over pi m2.
	q := 1.2*(math.Pi+2)*0.02 + 2*18e-6*1000*1000*(1+2*500.0/1000)*3*math.Tan(38*degree)/2000 + 18e-6*500
	assert.InDelta(t, q*math.Pi*1e6, states["ground_punching"].Resistance, 1)
	assert.InDelta(t, 681e3, states["ground_punching"].Resistance, 1e3)
	adds(t, r)
	// Off the middle the edge is that of the part that bears, never longer than the whole one.
	in.Permanent.Mx = 20e6
	r, _ = check(t, in)
	assert.Less(t, r.Punch.Rim, math.Pi*2000)
	adds(t, r)
}

func TestGroundBesideTheBaseHoldsTheLayerOnlyWhereItIs(t *testing.T) {
	in := gravel()
	in.Soil.Above = 0
	_, states := check(t, in)
	q := 1.2*(math.Pi+2)*0.02 + 2*18e-6*1000*1000*3*math.Tan(38*degree)/2000
	assert.InDelta(t, q*math.Pi*1e6, states["ground_punching"].Resistance, 1)
}

func TestAForceAlongTheBaseTakesTheLayerAwayLittleByLittle(t *testing.T) {
	in := gravel()
	in.Height = 0
	_, states := check(t, in)
	was := states["ground_punching"].Resistance
	whole := was
	for _, h := range []float64{1, 10, 100, 1e3, 5e3, 10e3, 20e3, 40e3} {
		in.Permanent.Vx = h
		r, states := check(t, in)
		now := states["ground_punching"].Resistance
		assert.Less(t, now, was, "%g N", h)
		if h <= 10 {
			assert.InDelta(t, whole, now, 1e-3*whole, "%g N", h)
		}
		adds(t, r)
		was = now
		in.Permanent.Vx, in.Permanent.Vy = 0, h
		_, across := check(t, in)
		assert.InDelta(t, now, across["ground_punching"].Resistance, 1e-6*now)
		in.Permanent.Vy = 0
	}
}

func TestGravelUnderAWindBaseIsUsed(t *testing.T) {
	in := gravel()
	in.Permanent = geom.Actions{N: -300e3}
	in.Variable = geom.Actions{Vx: 5e3}
	_, states := check(t, in)
	assert.Equal(t, limit.Pass, states["ground_punching"].Verdict)
	in.Permanent.N = -600e3
	_, states = check(t, in)
	assert.Equal(t, limit.Fail, states["ground_punching"].Verdict)
}

func TestClayUnderAnInclinedForceByHand(t *testing.T) {
	in := gravel()
	in.Height, in.Permanent.Vx = 0, 30e3
	r, _ := check(t, in)
	// Annex D.3: i_c = 0.5 (1 + sqrt(1 - H/(A' c))), the worst with the least weight, which is the same.
	p := r.Punch
	assert.InDelta(t, 0.5*(1+math.Sqrt(1-p.H/(math.Pi*1e6*0.02))), p.I, 1e-9)
}

func TestTerzaghisCircleCountsByItsDiameter(t *testing.T) {
	in := gravel()
	in.Layer = ground.Layer{}
	in.Design.Basis, in.Author = 3, ground.Terzaghi
	in.Soil.Above = 0
	r, _ := check(t, in)
	n := ground.BearingFactors(ground.Terzaghi, 38*degree)
	assert.InDelta(t, 0.3*18e-6*2000*n.Gamma, r.Bearing[0].Pressure, 1e-9)
	adds(t, r)
}

func TestTerzaghisTableAtItsEnds(t *testing.T) {
	// Terzaghi's N_gamma as in Bowles, Table 4-2 and the usual reprints (from memory).
	for phi, want := range map[float64]float64{5: 0.14, 10: 0.56, 15: 1.52, 20: 3.64, 25: 8.34, 30: 19.13, 35: 42.4, 40: 100.4, 45: 297.5} {
		assert.InDelta(t, want, ground.BearingFactors(ground.Terzaghi, phi*degree).Gamma, 1e-6*want, "%g", phi)
	}
}

func TestDepthCountsUpToTwoAndAHalfWidths(t *testing.T) {
	for _, a := range []ground.Author{ground.Meyerhof, ground.Hansen, ground.Vesic} {
		at := ground.DepthFactors(a, 30*degree, 2500, 1000)
		assert.Equal(t, at, ground.DepthFactors(a, 30*degree, 3000, 1000))
		assert.Less(t, ground.DepthFactors(a, 30*degree, 2400, 1000).Q, at.Q)
	}
}
