package base

import (
	"fmt"
	"math"

	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/plate"
)

// agree adds to faults what the weld says of the parts that the base knows: the plate,
// and the wall of the column where it has one thickness all round.
func (in *ColumnInput) agree(faults *limit.Faults) {
	if !in.HasWeld {
		return
	}
	p, f := &in.Base.Plate.Plate, &in.Base.Plate.Footprint
	differ := func(a, b float64) bool { return a > 0 && b > 0 && math.Abs(a-b) > 1e-6*b }
	if t := in.Weld.Parts[0].Thickness; differ(t, p.Thickness) {
		faults.Add(limit.Conflict, "base.weld.parts[0].thickness_mm", fmt.Sprintf("of %g mm is not the plate's, of %g mm", t, p.Thickness))
	}
	if f.Shape == plate.Tube || f.Shape == plate.Pipe || f.Shape == plate.TwoPlates {
		if t := in.Weld.Parts[1].Thickness; differ(t, f.Thick) {
			faults.Add(limit.Conflict, "base.weld.parts[1].thickness_mm", fmt.Sprintf("of %g mm is not the footprint's, of %g mm", t, f.Thick))
		}
	}
	_, w, told := in.Weld.Parts[0].Steel.At(p.Thickness)
	_, of, known := p.Steel.At(p.Thickness)
	if told && known && w > of*(1+1e-6) {
		faults.Add(limit.Conflict, "base.weld.parts[0].steel", fmt.Sprintf("has f_u %g MPa, the plate %g MPa", w, of))
	}
}
