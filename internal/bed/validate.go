package bed

import (
	"fmt"
	"math"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// Ranges that the kernel accepts.
const (
	mostPatches  = 8
	mostRods     = 64
	leastSize    = 1   // mm
	greatestSize = 1e5 // mm
	greatestGap  = 1e4 // mm
	// N/mm3
	leastModulus    = 1e-6
	greatestModulus = 1e6
	// N/mm
	leastStiffness    = 1e-3
	greatestStiffness = 1e9
	// Longer side over the shorter; a beam is not a plate.
	greatestAspect = 100
	// Longer side over the length l; beyond it the mesh is too coarse.
	greatestReach = 25
	slack         = 1e-9 // of the plate, by which a patch may touch its edge
)

func within(v, low, high float64) bool { return v >= low && v <= high }

// Validate adds to faults everything about the input that does not fit.
func Validate(in *Input, faults *limit.Faults) {
	before := len(*faults)
	in.Plate.validate(faults)
	if !within(in.Modulus, leastModulus, greatestModulus) {
		faults.Add(limit.OutOfRange, "bed.subgrade_modulus_n_mm3",
			fmt.Sprintf("modulus of %g N/mm3 is not between %g and %g N/mm3", in.Modulus, leastModulus, greatestModulus))
	}
	if len(*faults) == before {
		longer := max(in.Plate.SizeX, in.Plate.SizeY)
		if l := RelativeStiffness(&in.Plate, in.Modulus); !(longer <= greatestReach*l) {
			faults.Add(limit.OutOfRange, "plate.thickness_mm", fmt.Sprintf(
				"bends within l = %.3g mm, too short for a side of %g mm (at most %g l)", l, longer, float64(greatestReach)))
		}
	}
	if n := len(in.Patches); n < 1 || n > mostPatches {
		faults.Add(limit.Number, "patches", fmt.Sprintf("has %d patches; must have 1 to %d", n, mostPatches))
	}
	for i := range in.Patches {
		in.Patches[i].validate(&in.Plate, fmt.Sprintf("patches[%d]", i), faults)
	}
	if len(in.Rods) > mostRods {
		faults.Add(limit.Number, "rods", fmt.Sprintf("has %d rods; must have at most %d", len(in.Rods), mostRods))
	}
	for i := range in.Rods {
		in.Rods[i].validate(&in.Plate, fmt.Sprintf("rods[%d]", i), faults)
	}
}

func (p *Plate) validate(faults *limit.Faults) {
	length := func(v float64, field string) bool {
		if within(v, leastSize, greatestSize) {
			return true
		}
		faults.Add(limit.OutOfRange, field, fmt.Sprintf("length of %g mm is not between %d and %g mm", v, leastSize, greatestSize))
		return false
	}
	x, y := length(p.SizeX, "plate.size_x_mm"), length(p.SizeY, "plate.size_y_mm")
	if x && y && max(p.SizeX, p.SizeY) > greatestAspect*min(p.SizeX, p.SizeY) {
		faults.Add(limit.Geometry, "plate", fmt.Sprintf("one side is more than %d times the other", greatestAspect))
	}
	length(p.Thickness, "plate.thickness_mm")
	if !within(p.E, 1, 1e7) {
		faults.Add(limit.OutOfRange, "plate.modulus_mpa", fmt.Sprintf("modulus of %g MPa is not between 1 and 1e7 MPa", p.E))
	}
	if !(p.Nu >= 0 && p.Nu < 0.5) {
		faults.Add(limit.OutOfRange, "plate.poisson_ratio", fmt.Sprintf("ratio of %g is not from 0 to below 0.5", p.Nu))
	}
}

// holds reports whether a rectangle about a point lies on the plate.
func (p *Plate) holds(at geom.Point, sizeX, sizeY float64) bool {
	return math.Abs(at.X)+sizeX/2 <= p.SizeX/2*(1+slack) && math.Abs(at.Y)+sizeY/2 <= p.SizeY/2*(1+slack)
}

func (p *Patch) validate(on *Plate, field string, faults *limit.Faults) {
	if !within(p.SizeX, slack, greatestSize) || !within(p.SizeY, slack, greatestSize) {
		faults.Add(limit.OutOfRange, field, "needs two sizes that are positive")
	}
	if !on.holds(p.At, p.SizeX, p.SizeY) {
		faults.Add(limit.Geometry, field, "is not on the plate")
	}
	(&geom.Actions{N: p.N, Mx: p.Mx, My: p.My}).Range(field, faults)
}

func (r *Rod) validate(on *Plate, field string, faults *limit.Faults) {
	if !within(r.Stiffness, leastStiffness, greatestStiffness) {
		faults.Add(limit.OutOfRange, field, fmt.Sprintf("stiffness of %g N/mm is not between %g and %g N/mm",
			r.Stiffness, leastStiffness, greatestStiffness))
	}
	if !within(r.Preload, 0, geom.GreatestForce) || !within(r.Gap, 0, greatestGap) {
		faults.Add(limit.OutOfRange, field, "needs a preload and a gap that are not negative")
	}
	if r.Preload > 0 && r.Gap > 0 {
		faults.Add(limit.Conflict, field, "has a preload or a gap, not both")
	}
	if !on.holds(r.At, 0, 0) {
		faults.Add(limit.Geometry, field, "does not stand on the plate")
	}
}
