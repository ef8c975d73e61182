package base

import (
	"fmt"
	"math"

	"footward.example/footward/internal/limit"
)

// sameWithin is how far two figures of one thing may lie apart.
const sameWithin = 0.01

// validateThrough adds to faults what rods through the stack say of it that the stack
// contradicts: its height either way; weights and depths where they would hold more. What
// counts less of them, such as a buoyant weight, is the caller's to take.
func (in *ColumnInput) validateThrough(faults *limit.Faults) {
	const path = "base.anchorage.through."
	s, t := &in.Below, &in.Anchorage.Through
	if h := in.clampedHeight(); t.Height > 0 && math.Abs(t.Height-h) > sameWithin*h {
		faults.Add(limit.Conflict, path+"height_mm", fmt.Sprintf(
			"of %g mm is not that of plate, stack and bottom plate, %g mm; 0 takes that", t.Height, h))
	}
	p := &in.Base.Plate.Plate
	if w := in.clamped() + steelWeight*p.SizeX*p.SizeY*p.Thickness + s.OtherWeight; t.Clamped > w*(1+sameWithin) {
		faults.Add(limit.Conflict, path+"clamped_weight_kn", fmt.Sprintf(
			"of %.4g kN is more than fill straight above the bottom plate, both plates and other_weight_kn weigh, %.4g kN; 0 takes fill and bottom plate",
			t.Clamped/1e3, w/1e3))
	}
	if g := &s.Ground; s.HasGround && t.Soil.Depth > 0 {
		if d := g.Depth - s.Levelling.Thickness; t.Soil.Depth > d*(1+sameWithin) {
			faults.Add(limit.Conflict, path+"ground.depth_mm", fmt.Sprintf(
				"of %g mm is deeper than the bottom plate lies by base.substructure.ground.depth_mm, %g mm", t.Soil.Depth, d))
		}
		if w := g.Soil.Above; w > 0 && t.Soil.Weight > w*(1+sameWithin) {
			faults.Add(limit.Conflict, path+"ground.unit_weight_kn_m3", fmt.Sprintf(
				"of %.4g kN/m3 is more than base.substructure.ground.soil.unit_weight_above_kn_m3, %.4g kN/m3", t.Soil.Weight*1e6, w*1e6))
		}
	}
}

// smoothSteel is the share of the angle of friction of the ground that a bottom plate of
// steel has on it: EN 1997-1:2004 6.5.3(10), 9.5.1(6), as of smooth concrete and sheet
// piles (from memory).
const smoothSteel = 2.0 / 3

// onSteel reports whether a stack stands on the ground by a bottom plate.
func (in *ColumnInput) onSteel() bool {
	return in.Below.HasStack && in.Anchorage.Kind == Through
}
