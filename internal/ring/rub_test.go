package ring_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/ring"
)

// TestShoeRubsByTheLesserCoefficient: friction under a plate that is counted elsewhere
// by another coefficient is of the same interface, so the lesser holds, and the key
// beside it as before.
func TestShoeRubsByTheLesserCoefficient(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		in := stack(b)
		free, err := ring.Check(&in)
		require.NoError(t, err)
		in.Key = 5e3
		for _, c := range []struct{ rubs, want float64 }{
			{0, free.Rubs()}, {0.1, 0.1}, {0.9, free.Rubs()},
		} {
			in.Shoe.Rubs = c.rubs
			r, err := ring.Check(&in)
			require.NoError(t, err)
			assert.InEpsilon(t, 60e3*c.want+5e3, r.Slides[0].Holds, 1e-12, "%v %g", b, c.rubs)
			assert.Equal(t, free.Slides[1], r.Slides[1])
			var sheet derive.Sheet
			r.DeriveStress(&sheet)
			r.DeriveStability(&sheet)
			require.NoError(t, derive.Verify(sheet.Steps))
		}
	}
	in := stack(basis.Eurocode)
	in.Shoe.Rubs = math.NaN()
	_, err := ring.Check(&in)
	assert.Error(t, err)
}
