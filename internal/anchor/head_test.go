package anchor_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/anchor"
	"footward.example/footward/internal/limit"
)

// TestHeadLiesInTheConcrete takes heads of 20 mm in a block 700 mm high: 680 mm deep is
// the most.
func TestHeadLiesInTheConcrete(t *testing.T) {
	for depth, refused := range map[float64]bool{400: false, 680: false, 681: true, 700: true} {
		for _, b := range bases {
			in := group(b)
			in.Embedment = depth
			var f limit.Faults
			anchor.Validate(&in, &f)
			assert.Equal(t, refused, len(f) > 0, "%g mm: %v", depth, f)
		}
	}
}
