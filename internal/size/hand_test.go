package size_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pad"
	"footward.example/footward/internal/size"
)

// TestAPadForShearAlongYIsThatForShearAlongX lets the search make the cases of the
// concrete: shear and moment along y ask for what they ask along x.
func TestAPadForShearAlongYIsThatForShearAlongX(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD} {
		search := func(variable geom.Actions, column pad.Column) *size.PadResult {
			in := shelter(b)
			in.Bars = nil // whose layers differ in depth
			in.Cases, in.Ground.Variable, in.Pad.Column, in.Above = nil, variable, column, 1500
			r, err := size.SearchPad(in)
			require.NoError(t, err)
			return r
		}
		x := search(geom.Actions{N: -80e3, Vx: 12e3, My: 6e6}, pad.Column{SizeX: 200, SizeY: 300})
		y := search(geom.Actions{N: -80e3, Vy: 12e3, Mx: -6e6}, pad.Column{SizeX: 300, SizeY: 200})
		none := search(geom.Actions{N: -80e3}, pad.Column{SizeX: 200, SizeY: 300})
		require.True(t, x.Found)
		assert.Equal(t, [4]float64{x.Best.SizeX, x.Best.SizeY, x.Best.Thickness, float64(x.Best.Bars)},
			[4]float64{y.Best.SizeX, y.Best.SizeY, y.Best.Thickness, float64(y.Best.Bars)})
		assert.InDelta(t, x.Best.Utilization, y.Best.Utilization, 1e-9)
		assert.Greater(t, x.Best.SizeX, none.Best.SizeX, "shear counts")
		px, py := states(x), states(y)
		for id := range px {
			other := id
			if swapped, ok := strings.CutSuffix(id, "_x"); ok {
				other = swapped + "_y"
			} else if swapped, ok := strings.CutSuffix(id, "_y"); ok {
				other = swapped + "_x"
			}
			assert.InDelta(t, px[id], py[other], 1e-9, id)
		}
	}
}

// TestMassAndCostOfAChoiceByHand has a plate of 420 x 420 x 30 mm, four M20 over 500 mm and
// a weld of 6 mm round an HE 200 B.
func TestMassAndCostOfAChoiceByHand(t *testing.T) {
	in := offer(basis.Eurocode, geom.Actions{N: -300e3})
	in.Rates = size.Rates{PlateKg: 2, RodKg: 3, EachRod: 5, WeldKg: 40}
	r, err := size.Search(in)
	require.NoError(t, err)
	require.True(t, r.Found)
	plate, rods := 420*420*30*7.85e-6, 4*math.Pi/4*400*500*7.85e-6
	weld := (r.Best.Cost - 2*plate - 3*rods - 20) / 40
	assert.InDelta(t, plate+rods+weld, r.Best.Mass, 1e-9)
	// Round 2 x (200 + 170 + 2 x 95.5 - ...) of the profile: some 1.0 to 1.2 m of 36 mm2.
	assert.InDelta(t, 1.1e3*36*7.85e-6, weld, 0.1*1.1e3*36*7.85e-6)
}

func states(r *size.PadResult) map[string]float64 {
	var l limit.List
	r.States(&l)
	out := map[string]float64{}
	for _, s := range l.All() {
		out[s.Kind.ID] = s.Utilization
	}
	return out
}
