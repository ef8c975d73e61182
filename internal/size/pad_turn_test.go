package size_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/size"
)

// TestPadUnderItsOwnCombinationsTakesEitherDirectionAlike has one square pad under a
// shear along x alone and along y alone, without combinations made ready.
func TestPadUnderItsOwnCombinationsTakesEitherDirectionAlike(t *testing.T) {
	use := func(q geom.Actions) float64 {
		in := alone(*shelter(basis.Eurocode), 2200, 500, 1)
		in.Cases, in.Ground.Variable, in.Pad.Reinforcement.Cover = nil, q, 75
		r, err := size.SearchPad(in)
		require.NoError(t, err)
		var sheet derive.Sheet
		r.Derive(&sheet)
		share := 0.0
		for _, one := range sheet.Steps {
			if one.Symbol == "u_e" {
				share = one.Value
			}
		}
		return share
	}
	none := use(geom.Actions{N: -80e3})
	x, y := use(geom.Actions{N: -80e3, Vx: 12e3}), use(geom.Actions{N: -80e3, Vy: 12e3})
	assert.InDelta(t, x, y, 1e-9)
	assert.Greater(t, y, none)
}
