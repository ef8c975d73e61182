package ring_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/ring"
)

// TestWallFrictionSeesTheMostUnevenStressOfATier: shear turns the load to an edge further
// down, or a preload and the fill's own weight do so at one depth between.
func TestWallFrictionSeesTheMostUnevenStressOfATier(t *testing.T) {
	for name, c := range map[string]struct {
		shear, weight float64
		within        bool
	}{
		"at the foot":  {20e3, 20e-6, false},
		"in between":   {2e3, 20e-6, true},
		"at every one": {0, 20e-6, false},
	} {
		t.Run(name, func(t *testing.T) {
			in := stack(basis.Eurocode)
			in.Actions, in.Shoe = geom.Actions{N: -60e3, Vx: c.shear}, ring.Shoe{SizeX: 500, SizeY: 500}
			in.Tiers = []ring.Tier{tier(ring.Steel, 600, 400, 150e3)}
			if c.within {
				in.Actions.N, in.Tiers[0].Diameter, in.Tiers[0].Height, in.Shoe = -8e3, 1500, 1200, ring.Shoe{SizeX: 300, SizeY: 300}
			}
			in.Service = in.Actions
			r, _ := check(t, in)
			out, own := &r.Tiers[0], &in.Tiers[0]
			assert.Equal(t, c.within, out.UnevenWithin.Level > 0)
			most := 0.0
			for level := range 9 {
				z := own.Height * float64(level) / 8
				d := min(own.Diameter, r.Shoe+z)
				weight := own.Fill.UnitWeight * math.Pi / 4 * own.Diameter * own.Diameter * z
				most = max(most, ring.EdgeFactor(d, c.shear*z/(r.Press+0.9*weight)))
			}
			l := 4 * out.K0 * math.Tan(2.0/3.0*own.Fill.Phi) / own.Diameter
			share := -math.Expm1(-l * own.Height)
			area := math.Pi / 4 * own.Diameter * own.Diameter
			want := most*r.Press*share + 1.35*own.Fill.UnitWeight*area*(own.Height-share/l)
			assert.InEpsilon(t, want, out.Wall, 1e-9)
			var sheet derive.Sheet
			r.Derive(&sheet)
			assert.NoError(t, derive.Verify(sheet.Steps))
		})
	}
}

// TestShearTurnsTheLoadOnAnEdgeToItsFoot: at the foot of the ring the moment is greater.
func TestShearTurnsTheLoadOnAnEdgeToItsFoot(t *testing.T) {
	in := stack(basis.Eurocode)
	in.Shoe.SizeX, in.Tiers[0].Ring.EdgeLoad = 590, 1e6
	in.Actions.Vx = 10e3
	_, states := check(t, in)
	// 5e5 + 10e3 * 200 over 60e3: 41.7 mm of 600.
	assert.InEpsilon(t, 60e3*(1+4*2.5e6/60e3/600), states["ring_local_edge"].Demand, 1e-12)
	in.Actions.Vx = 45e3 // 158 mm, beyond a quarter of 600; on top 8 mm
	_, states = check(t, in)
	assert.Equal(t, limit.OutOfScope, states["ring_local_edge"].Verdict)
}

// TestRingHandsItsEdgeLoadToOneAsWideBelow: rings of one width stand on one another.
func TestRingHandsItsEdgeLoadToOneAsWideBelow(t *testing.T) {
	in := stack(basis.Eurocode)
	in.Shoe.SizeX, in.Tiers[0].Ring.EdgeLoad = 590, 1e6
	in.Tiers[1].Diameter = 600
	_, states := check(t, in)
	assert.Equal(t, limit.OutOfScope, states["ring_local_edge"].Verdict)
	assert.Contains(t, states["ring_local_edge"].Reason, "tier 2")
	in.Tiers[1].Ring.EdgeLoad = 60e3
	_, states = check(t, in)
	assert.Equal(t, limit.Fail, states["ring_local_edge"].Verdict)
	assert.Equal(t, 2, states["ring_local_edge"].Member)
	in.Tiers[1].Ring.EdgeLoad = 1e6
	_, states = check(t, in)
	require.Equal(t, limit.Pass, states["ring_local_edge"].Verdict)
	in.Tiers[1].Diameter, in.Tiers[1].Ring.EdgeLoad = 601, 0
	_, states = check(t, in)
	assert.Equal(t, limit.Pass, states["ring_local_edge"].Verdict, "the ring above stands on fill")
}
