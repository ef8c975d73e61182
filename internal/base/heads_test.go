package base_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/anchor"
	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// TestHeadsLieInTheConcreteBelowThePlate gives the heads a block of their own although
// they lie in the plate's: one that is larger, higher, stronger or set off towards the
// middle is refused; the same, a lesser one, and a footing below a pedestal are not.
func TestHeadsLieInTheConcreteBelowThePlate(t *testing.T) {
	for name, c := range map[string]struct {
		change  func(b *anchor.Block)
		embed   float64
		refused bool
	}{
		"the same":         {func(*anchor.Block) {}, 0, false},
		"smaller":          {func(b *anchor.Block) { b.SizeX -= 50 }, 0, false},
		"wider":            {func(b *anchor.Block) { b.SizeX *= 3 }, 0, true},
		"longer":           {func(b *anchor.Block) { b.SizeY *= 3 }, 0, true},
		"higher":           {func(b *anchor.Block) { b.Height *= 2 }, 0, true},
		"stronger":         {func(b *anchor.Block) { b.Concrete.Strength *= 2 }, 0, true},
		"footing below it": {func(b *anchor.Block) { b.SizeX, b.Height = 3*b.SizeX, 3*b.Height }, 1.2, false},
	} {
		for _, f := range []basis.Basis{basis.Eurocode, basis.USLRFD} {
			in := column(f, geom.Actions{N: -100e3})
			in.Anchorage = anchorages()["headed"]
			s := &in.Base.Support.Block
			h := &in.Anchorage.Headed
			in.Anchorage.BlockOfSupport = false
			h.Block = anchor.Block{Concrete: s.Concrete, SizeX: s.SizeX, SizeY: s.SizeY, Height: s.Height, OffsetX: s.OffsetX, OffsetY: s.OffsetY}
			if c.embed > 0 {
				h.Embedment = c.embed * s.Height
			}
			c.change(&h.Block)
			var faults limit.Faults
			base.ValidateColumn(in, &faults)
			assert.Equal(t, c.refused, len(faults) > 0, "%s: %v", name, faults)
		}
	}
}
