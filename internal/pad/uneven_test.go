package pad

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestShareOfMomentInPunching: EN 1992-1-1:2004 Table 6.1, k by c_1/c_2, straight between.
func TestShareOfMomentInPunching(t *testing.T) {
	for c, want := range map[float64]float64{0.2: 0.45, 0.5: 0.45, 0.55: 0.465, 0.75: 0.525, 1: 0.6, 1.5: 0.65, 2: 0.7, 2.5: 0.75, 3: 0.8, 4: 0.8} {
		assert.InDelta(t, want, uneven(300*c, 300), 1e-12, c)
	}
}
