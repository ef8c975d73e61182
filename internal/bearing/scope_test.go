package bearing_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
)

// TestConcreteUpToC90: EN 1992-1-1:2004 3.1.2(2).
func TestConcreteUpToC90(t *testing.T) {
	for strength, taken := range map[float64]bool{89: true, 90: true, 91: false} {
		in := exampleJ6(basis.USLRFD, 1e6)
		in.Block.Concrete.Strength = strength
		_, err := bearing.Check(in)
		assert.Equal(t, taken, err == nil, "%g: %v", strength, err)
	}
}
