package plate

import (
	"fmt"
	"math"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// ValidateClear adds to faults rods that would pass through the steel that stands on
// the plate. A solid footprint may be recessed over them.
func ValidateClear(f *Footprint, at []geom.Point, diameter float64, faults *limit.Faults) {
	for i, p := range at {
		if d := f.clear(p); d < diameter/2-inLine {
			faults.Add(limit.Geometry, fmt.Sprintf("rods.positions[%d]", i), fmt.Sprintf(
				"rod of %g mm at x %g mm, y %g mm passes through the steel of the footprint, which is %.3g mm off its axis",
				diameter, p.X, p.Y, d))
		}
	}
}

// clear returns how far a place lies off the steel of the footprint, 0 in it [mm].
func (f *Footprint) clear(p geom.Point) float64 {
	x, y := math.Abs(p.X), math.Abs(p.Y)
	b, h := f.SizeX/2, f.SizeY/2
	switch f.Shape {
	case ISection:
		return min(off(x, y, 0, b, h-f.Thick, h), off(x, y, 0, f.Web/2, 0, h))
	case Tube:
		return min(off(x, y, b-f.Thick, b, 0, h), off(x, y, 0, b, h-f.Thick, h))
	case Pipe:
		r := math.Hypot(x, y)
		return max(0, r-b, b-f.Thick-r)
	case TwoPlates:
		return off(x, y, b-f.Thick, b, 0, h)
	}
	return math.Inf(1)
}

// off returns how far a place lies off a rectangle [mm].
func off(x, y, left, right, low, high float64) float64 {
	return math.Hypot(max(0, left-x, x-right), max(0, low-y, y-high))
}
