package size_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/size"
)

// TestNoThroatHelpsAColumnThatIsTooThin: where the wall yields beside its weld, a
// larger weld does not mend it; a thicker wall does.
func TestNoThroatHelpsAColumnThatIsTooThin(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		in := offer(b, geom.Actions{N: 280e3})
		in.Throats = []float64{4, 5, 6, 8, 10}
		in.Base.Weld.FullSize = true
		r, err := size.Search(in)
		require.NoError(t, err)
		require.True(t, r.Found, b)
		in.Base.Weld.Parts[1].Thickness, in.Base.Weld.Parts[1].Corrosion = 4, 3
		r, err = size.Search(in)
		require.NoError(t, err)
		assert.False(t, r.Found, b)
		assert.Equal(t, "weld_base_metal", r.Best.Governing, b)
	}
}
