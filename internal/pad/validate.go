package pad

import (
	"fmt"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// Ranges that the kernel accepts; the contract's are narrower or the same.
const (
	greatestSize  = 1e5 // mm
	greatestDepth = 1e4 // mm
)

func within(v, low, high float64) bool { return v >= low && v <= high }

// Validate adds to faults everything that does not fit.
func Validate(in *Input, faults *limit.Faults) {
	if !in.Design.Valid() {
		faults.Add(limit.UnknownValue, "basis.family", "must be a known basis with usable factors")
	}
	for _, f := range [...]struct {
		field          string
		v, least, most float64
	}{
		{"pad.size_x_mm", in.SizeX, 1, greatestSize}, {"pad.size_y_mm", in.SizeY, 1, greatestSize},
		{"pad.thickness_mm", in.Thickness, 1, greatestDepth},
		{"column.size_x_mm", in.Column.SizeX, 1, greatestSize}, {"column.size_y_mm", in.Column.SizeY, 1, greatestSize},
		{"concrete.strength_mpa", in.Concrete.Strength, 1, 1e3},
		{"weight_kn", in.Weight, 0, geom.GreatestForce},
	} {
		if !within(f.v, f.least, f.most) {
			faults.Add(limit.OutOfRange, f.field, fmt.Sprintf("must be a number from %g to %g in N, mm and MPa", f.least, f.most))
		}
	}
	if in.Column.SizeX > in.SizeX {
		faults.Add(limit.Geometry, "column.size_x_mm", fmt.Sprintf("of %g mm is wider than the pad of %g mm", in.Column.SizeX, in.SizeX))
	}
	if in.Column.SizeY > in.SizeY {
		faults.Add(limit.Geometry, "column.size_y_mm", fmt.Sprintf("of %g mm is wider than the pad of %g mm", in.Column.SizeY, in.SizeY))
	}
	if in.Height != 0 && !within(in.Height, in.Thickness, greatestSize) {
		faults.Add(limit.Geometry, "height_mm", fmt.Sprintf("is measured from the underside: it cannot be less than the thickness of %g mm", in.Thickness))
	}
	in.Actions.Range("forces", faults)
	validateBars(in, faults)
}

// clearLeast is the least clear spacing of bars [mm]: 1 in; EN 1992-1-1 has d_g + 5
// mm, less for aggregate up to 20 mm.
const clearLeast = inch

// LeastSpacing returns the least spacing of bars of a diameter between their centres
// [mm].
//
//	phi + max(phi, 25.4 mm)
//
// Source: EN 1992-1-1:2004 8.2(2); ACI 318-19 25.2.1.
func LeastSpacing(diameter float64) float64 { return diameter + max(diameter, clearLeast) }

func validateBars(in *Input, faults *limit.Faults) {
	s := &in.Reinforcement
	if *s == (Reinforcement{}) {
		return
	}
	for _, b := range [...]struct {
		field string
		bars  Bars
	}{{"reinforcement.x", s.X}, {"reinforcement.y", s.Y}} {
		if !within(b.bars.Diameter, 1, 100) {
			faults.Add(limit.OutOfRange, b.field+".diameter_mm", "must be from 1 to 100 mm, in both directions")
		}
		if !within(b.bars.Spacing, 1, 5000) {
			faults.Add(limit.OutOfRange, b.field+".spacing_mm", "must be from 1 to 5000 mm")
		} else if b.bars.Spacing < LeastSpacing(b.bars.Diameter)*(1-1e-9) {
			faults.Add(limit.Geometry, b.field+".spacing_mm", fmt.Sprintf(
				"of %g mm leaves too little room between bars of %g mm: at least %.4g mm", b.bars.Spacing, b.bars.Diameter, LeastSpacing(b.bars.Diameter)))
		}
	}
	if !within(s.Yield, 100, 1000) {
		faults.Add(limit.OutOfRange, "reinforcement.yield_strength_mpa", "must be from 100 to 1000 MPa")
	}
	if !within(s.Bend, 0, greatestDepth) {
		faults.Add(limit.OutOfRange, "reinforcement.bend_mm", "must be a length, not negative")
	}
	if !within(s.Cover, 1, 1000) {
		faults.Add(limit.OutOfRange, "reinforcement.cover_mm", "must be from 1 to 1000 mm")
	} else if !(s.Cover+s.X.Diameter+s.Y.Diameter < in.Thickness) {
		faults.Add(limit.Geometry, "reinforcement.cover_mm", fmt.Sprintf(
			"of %g mm and two layers of bars do not fit in a thickness of %g mm", s.Cover, in.Thickness))
	}
}
