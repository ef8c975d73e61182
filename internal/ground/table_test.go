package ground_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/ground"
)

// TestTerzaghisTable: N_gamma at every 5 degrees, the lesser of its two printings (from
// memory).
func TestTerzaghisTable(t *testing.T) {
	for i, want := range []float64{0, 0.14, 0.56, 1.52, 3.64, 8.34, 19.13, 42.4, 100.4, 297.5, 1153} {
		n := ground.BearingFactors(ground.Terzaghi, float64(i)*5*math.Pi/180)
		assert.InDelta(t, want, n.Gamma, 1e-9*(1+want), "%d degrees", 5*i)
	}
}
