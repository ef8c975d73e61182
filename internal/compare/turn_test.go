package compare_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/compare"
)

// TestTurnedPadCountsTheSame: x for y of pad, plinth and bars.
func TestTurnedPadCountsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := func(name string, low, high int) float64 { return float64(rapid.IntRange(low, high).Draw(t, name)) }
		in := compare.Pad{SizeX: mm("x", 600, 4000), SizeY: mm("y", 600, 4000), Thickness: mm("h", 200, 900),
			X: compare.Bars{Diameter: mm("phi_x", 8, 25), Spacing: mm("s_x", 80, 300)},
			Y: compare.Bars{Diameter: mm("phi_y", 8, 25), Spacing: mm("s_y", 80, 300)}, Cover: 50, Bend: mm("bend", 0, 200),
			Plinth: compare.Plinth{SizeX: mm("plinth x", 200, 500), SizeY: mm("plinth y", 200, 500), Height: mm("plinth h", 0, 300)}}
		before := padItems(t, in)
		in.SizeX, in.SizeY, in.X, in.Y = in.SizeY, in.SizeX, in.Y, in.X
		in.Plinth.SizeX, in.Plinth.SizeY = in.Plinth.SizeY, in.Plinth.SizeX
		after := padItems(t, in)
		assert.Len(t, after, len(before))
		for id, a := range before {
			b := after[id]
			assert.InDelta(t, a.Volume, b.Volume, 1e-9*(1+a.Volume), id)
			assert.InDelta(t, a.Mass, b.Mass, 1e-9*(1+a.Mass), id)
			assert.InDelta(t, a.Area, b.Area, 1e-9*(1+a.Area), id)
		}
	})
}
