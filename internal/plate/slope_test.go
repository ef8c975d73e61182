package plate

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestCornersAreTriedEveryTwoDegrees from the flange to the line across it.
func TestCornersAreTriedEveryTwoDegrees(t *testing.T) {
	assert.Len(t, slopes, 44)
	for i, s := range slopes {
		assert.InEpsilon(t, math.Tan(float64(i+1)*math.Pi/90), s, 1e-6)
	}
}
