package plate

import (
	"fmt"
	"math"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// Ranges that the kernel accepts; the contract's are narrower or the same.
const (
	greatestSize = 1e5  // mm
	leastSize    = 1e-3 // mm
)

func within(v, low, high float64) bool { return v >= low && v <= high }

// Validate adds to faults everything about the input that does not fit.
func Validate(in *Input, faults *limit.Faults) {
	if !in.Design.Valid() {
		faults.Add(limit.UnknownValue, "basis.family", "is not a design basis with usable factors")
	}
	in.Plate.Validate(faults)
	validateFootprint(in, faults)
	in.Actions.Range("forces", faults)
	if !within(in.Bearing.Pressure, 1e-9, 1e4) || !within(in.Bearing.GroutThick, 0, greatestSize) {
		faults.Add(limit.OutOfRange, "support", "offers no bearing pressure")
	}
	if !within(in.WeldThroat, 0, greatestSize) || !within(in.WeldLost, 0, greatestSize) {
		faults.Add(limit.OutOfRange, "footprint_weld_throat_mm", "must be a length, not negative")
	}
	validateRods(in, faults)
	ValidateClear(&in.Footprint, in.Rods.At, in.Rods.Diameter, faults)
	if s := &in.Shared; s.Known && (len(s.Tensions) != len(in.Rods.At) || !within(s.Peak, 0, 1e4)) {
		faults.Add(limit.Number, "rods", fmt.Sprintf("has %d places and %d tensions", len(in.Rods.At), len(s.Tensions)))
	}
}

func validateRods(in *Input, faults *limit.Faults) {
	r := &in.Rods
	if len(r.At) == 0 {
		return
	}
	if !within(r.Resistance, 1e-3, geom.GreatestForce) {
		faults.Add(limit.OutOfRange, "rods.rod", fmt.Sprintf("resists %g kN and must resist from 1e-06 to %g kN", r.Resistance/1e3, geom.GreatestForce/1e3))
	}
	for _, f := range [...]struct {
		name           string
		v, least, most float64
		unit           string
	}{
		{"diameter", r.Diameter, 1, 1e3, "mm"}, {"stress area", r.StressArea, 1e-3, 1e6, "mm2"},
		{"washer", r.Washer, 0, greatestSize, "mm"}, {"length that stretches", r.Stretch, 0, greatestSize, "mm"},
	} {
		if !within(f.v, f.least, f.most) {
			faults.Add(limit.OutOfRange, "rods.rod", fmt.Sprintf("has a %s of %g %s and must have from %g to %g", f.name, f.v, f.unit, f.least, f.most))
		}
	}
	for i, p := range r.At {
		if !(math.Abs(p.X) < in.Plate.SizeX/2 && math.Abs(p.Y) < in.Plate.SizeY/2) {
			faults.Add(limit.Geometry, fmt.Sprintf("rods.positions[%d]", i), fmt.Sprintf(
				"x %g mm, y %g mm is not inside the plate of %g by %g mm", p.X, p.Y, in.Plate.SizeX, in.Plate.SizeY))
		}
	}
}

// paths are the fields of a footprint as the contract spells them.
type paths struct{ x, y, thick string }

var shapePaths = map[Shape]paths{
	ISection:  {"footprint.i_section.width_mm", "footprint.i_section.depth_mm", "footprint.i_section.flange_mm"},
	Tube:      {"footprint.tube.size_x_mm", "footprint.tube.size_y_mm", "footprint.tube.wall_mm"},
	Pipe:      {"footprint.pipe.diameter_mm", "footprint.pipe.diameter_mm", "footprint.pipe.wall_mm"},
	Rectangle: {"footprint.rectangle.size_x_mm", "footprint.rectangle.size_y_mm", ""},
	TwoPlates: {"footprint.two_plates.gap_mm", "footprint.two_plates.length_mm", "footprint.two_plates.thickness_mm"},
}

func validateFootprint(in *Input, faults *limit.Faults) {
	f := &in.Footprint
	path, known := shapePaths[f.Shape]
	if !known {
		faults.Add(limit.Missing, "footprint", "needs one of i_section, tube, pipe, rectangle, two_plates")
		return
	}
	onPlate(faults, path.x, "x", f.SizeX, in.Plate.SizeX)
	if path.y != path.x || f.SizeX <= in.Plate.SizeX {
		onPlate(faults, path.y, "y", f.SizeY, in.Plate.SizeY)
	}
	if f.SteelKnown {
		if fy, fu, ok := f.Steel.At(max(f.Thick, f.Web)); !ok || !within(fy, 1, 1e4) || !within(fu, 1, 1e4) {
			faults.Add(limit.OutOfRange, "footprint.steel", fmt.Sprintf("has no strength at %g mm", max(f.Thick, f.Web)))
		}
	}
	if f.Shape == Rectangle {
		return
	}
	across := f.SizeX
	switch f.Shape {
	case ISection:
		across = f.SizeY
		if !within(f.Web, leastSize, f.SizeX) {
			faults.Add(limit.Geometry, "footprint.i_section.web_mm",
				fmt.Sprintf("web of %g mm does not fit flanges of %g mm", f.Web, f.SizeX))
		}
	case Tube:
		across = min(f.SizeX, f.SizeY)
	}
	if !(f.Thick >= leastSize && 2*f.Thick < across) {
		faults.Add(limit.Geometry, path.thick,
			fmt.Sprintf("twice %g mm does not fit into a footprint of %g mm", f.Thick, across))
	}
}

func onPlate(faults *limit.Faults, field, axis string, size, plate float64) {
	switch {
	case !within(size, leastSize, greatestSize):
		faults.Range(field, size, leastSize, greatestSize, 1, " mm")
	case !(size <= plate):
		faults.Add(limit.Geometry, field,
			fmt.Sprintf("the footprint of %g mm along %s stands over the plate of %g mm", size, axis, plate))
	}
}
