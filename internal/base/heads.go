package base

import (
	"fmt"
	"math"

	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/limit"
)

// oneBlock refuses a block for the heads of rods that reaches further or is stronger
// than the concrete below the plate in which they lie: one block has one size and one
// strength. A footing below a pedestal, into which the rods go on, may be another.
func (in *ColumnInput) oneBlock(faults *limit.Faults) {
	a, s := &in.Anchorage, &in.Base.Support
	if a.Kind != Headed || a.BlockOfSupport || s.Medium != bearing.Concrete || !(a.Headed.Embedment < s.Block.Height) {
		return
	}
	b, own := &a.Headed.Block, &s.Block
	further := func(size, offset, ownSize, ownOffset float64) bool {
		return size/2-math.Abs(offset) > ownSize/2-math.Abs(ownOffset)+1 || size > ownSize+1 // but for rounding
	}
	if b.Concrete.Strength > own.Concrete.Strength*1.001 || b.Height > own.Height+1 ||
		further(b.SizeX, b.OffsetX, own.SizeX, own.OffsetX) || further(b.SizeY, b.OffsetY, own.SizeY, own.OffsetY) {
		faults.Add(limit.Conflict, "base.anchorage.headed.block", fmt.Sprintf(
			"is larger or stronger than the concrete block below the plate, in which the heads lie %g mm deep: leave it out", a.Headed.Embedment))
	}
}
