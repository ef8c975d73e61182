package pin_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

// TestColumnThatEndsBelowItsShoeIsNoticed has its lowest pins 155 mm above the foot of
// the plates: 200 mm to the middle, less half of 90 mm.
func TestColumnThatEndsBelowItsShoeIsNoticed(t *testing.T) {
	for end, below := range map[float64]bool{120: false, 155: false, 156: false, 157: true, 400: true} {
		in := foot(basis.Eurocode)
		in.Layout.EndDistance = end
		r, _ := check(t, in)
		var n limit.Notices
		r.Notices(&n)
		found := false
		for _, v := range n.All() {
			found = found || v.Code == "pin_end_below_foot"
		}
		assert.Equal(t, below, found, "%g mm", end)
	}
}
