package base

import (
	"fmt"
	"math"

	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/plate"
	"footward.example/footward/internal/weld"
)

var weldOfBase = &limit.Notice{Code: "base_weld_parts", Severity: limit.Caution,
	Text: "The weld was given other parts than the base has: it is checked with the wall of the base's footprint, and with the weaker of both steels at the plate."}

// agree adds to faults what the weld says of the plate that the base does not.
func (in *ColumnInput) agree(faults *limit.Faults) {
	t, of := in.Weld.Parts[0].Thickness, in.Base.Plate.Plate.Thickness
	if in.HasWeld && differ(t, of) {
		faults.Add(limit.Conflict, "base.weld.parts[0].thickness_mm", fmt.Sprintf("of %g mm is not the plate's, of %g mm", t, of))
	}
}

func differ(a, b float64) bool { return a > 0 && b > 0 && math.Abs(a-b) > 1e-6*b }

// weldOf returns the weld with the parts that the base knows: the wall of a footprint
// of one thickness all round, and the plate's steel where the weld's is stronger. A
// thicker wall or a stronger steel than there is would weld better than the real one.
func (in *ColumnInput) weldOf() (w weld.Spec, changed bool) {
	w = in.Weld
	p, f := &in.Base.Plate.Plate, &in.Base.Plate.Footprint
	round := f.Shape == plate.Tube || f.Shape == plate.Pipe || f.Shape == plate.TwoPlates
	if round && differ(w.Parts[1].Thickness, f.Thick) {
		w.Parts[1].Thickness, changed = f.Thick, true
	}
	_, own, told := w.Parts[0].Steel.At(p.Thickness)
	_, has, known := p.Steel.At(p.Thickness)
	if told && known && own > has*(1+1e-6) {
		w.Parts[0].Steel, changed = p.Steel, true
	}
	return w, changed
}
