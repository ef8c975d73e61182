package rod

import (
	"fmt"
	"math"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// Ranges that the kernel accepts; the contract's are narrower or the same.
const (
	greatestSize = 1e5 // mm
)

func within(v, low, high float64) bool { return v >= low && v <= high }

// Validate adds to faults everything about the input that does not fit.
func Validate(in *Input, faults *limit.Faults) {
	if !in.Design.Valid() {
		faults.Add(limit.UnknownValue, "basis.family", "is not a design basis with usable factors")
	}
	in.Plate.Validate(faults)
	in.Rod.Validate(faults)
	validateHoles(in, faults)
	validatePlaces(in, faults)
	validateForces(in, faults)
}

// Validate adds to faults everything about the rod itself that does not fit.
func (r *Rod) Validate(faults *limit.Faults) {
	d, a := r.Thread.Diameter, r.Thread.StressArea
	if !within(d, 1, 1e3) {
		faults.Add(limit.OutOfRange, "rods.rod.thread", "needs a positive diameter")
	} else if !(a > 0 && a < r.Thread.NominalArea()) {
		faults.Add(limit.Geometry, "rods.rod.thread.properties.stress_area_mm2",
			fmt.Sprintf("of %g mm2 must be less than the %.4g mm2 of the nominal diameter", a, r.Thread.NominalArea()))
	}
	if !within(r.Steel.Fy, 1, 1e4) || !within(r.Steel.Fu, 1, 1e4) {
		faults.Add(limit.OutOfRange, "rods.rod.steel", "has no strength at this diameter")
	}
	if r.Making > CutOnSite {
		faults.Add(limit.UnknownValue, "rods.rod.thread_making", "is not known")
	}
	if threaded := d > 0 && a > 0; threaded && !(r.Corrosion < math.Sqrt(4*a/math.Pi)) || !(r.Corrosion >= 0) {
		faults.Add(limit.Geometry, "rods.rod.corrosion_allowance_mm",
			fmt.Sprintf("loss of %g mm leaves nothing of the %g mm rod", r.Corrosion, d))
	}
	if !(r.NutWidth == 0 || within(r.NutWidth, d, 10*d)) {
		faults.Add(limit.Geometry, "rods.rod.nut_mean_width_mm",
			fmt.Sprintf("of %g mm does not fit a rod of %g mm", r.NutWidth, d))
	}
}

func validateHoles(in *Input, faults *limit.Faults) {
	h, d := &in.Holes, in.Rod.Thread.Diameter
	if !within(h.Diameter, 1e-3, greatestSize) {
		faults.Add(limit.OutOfRange, "rods.holes.diameter_mm", "must be a positive length")
	} else if !(h.Diameter > d) {
		faults.Add(limit.Geometry, "rods.holes.diameter_mm",
			fmt.Sprintf("hole of %g mm is not larger than the rod of %g mm", h.Diameter, d))
	}
	if !within(h.Tolerance, 0, greatestSize) {
		faults.Add(limit.OutOfRange, "rods.holes.position_tolerance_mm", "must be a length, not negative")
	}
	if !within(h.WasherThickness, 0, greatestSize) {
		faults.Add(limit.OutOfRange, "rods.holes.washer_thickness_mm", "must be a length, not negative")
	}
	if h.WasherFy != 0 {
		faults.Range("rods.holes.washer_fy_mpa", h.WasherFy, 1, 1e4, 1, " MPa")
	}
	switch {
	case !within(h.WasherSide, 0, greatestSize):
		faults.Add(limit.OutOfRange, "rods.holes.washer_side_mm", "must be a length, not negative")
	case h.WasherSide > 0 && !(h.WasherSide > h.Diameter):
		faults.Add(limit.Geometry, "rods.holes.washer_side_mm",
			fmt.Sprintf("washer of %g mm does not cover the hole of %g mm", h.WasherSide, h.Diameter))
	case h.WasherSide > 0 && h.WasherThickness == 0:
		faults.Add(limit.Missing, "rods.holes.washer_thickness_mm", "is needed for the plate washer")
	}
}

func validatePlaces(in *Input, faults *limit.Faults) {
	if len(in.At) == 0 || len(in.At) > MaxRods {
		faults.Add(limit.Number, "rods.positions", fmt.Sprintf("has %d places; must have 1 to %d", len(in.At), MaxRods))
		return
	}
	r := in.Holes.Diameter / 2
	for i, p := range in.At {
		if !(math.Abs(p.X)+r < in.Plate.SizeX/2 && math.Abs(p.Y)+r < in.Plate.SizeY/2) {
			faults.Add(limit.Geometry, fmt.Sprintf("rods.positions[%d]", i), fmt.Sprintf(
				"hole of %g mm at x %g mm, y %g mm is not inside the plate of %g by %g mm",
				in.Holes.Diameter, p.X, p.Y, in.Plate.SizeX, in.Plate.SizeY))
			continue
		}
		for j, q := range in.At[:i] {
			if dx, dy := p.X-q.X, p.Y-q.Y; dx*dx+dy*dy <= in.Holes.Diameter*in.Holes.Diameter {
				faults.Add(limit.Geometry, fmt.Sprintf("rods.positions[%d]", i),
					fmt.Sprintf("its hole runs into that of rods.positions[%d]", j))
				break
			}
		}
	}
}

func validateForces(in *Input, faults *limit.Faults) {
	in.Actions.Range("forces", faults)
	f := &in.Friction
	faults.Range("friction.coefficient", f.Coefficient, 0, 1, 1, "")
	faults.Range("friction.compression_kn", f.Compression, 0, geom.GreatestForce, 1e3, " kN")
	faults.Range("stand_off.gap_mm", in.StandOff.Gap, 0, greatestSize, 1, " mm")
	if f.Strength != 0 {
		faults.Range("friction.concrete_strength_mpa", f.Strength, 1, 1e3, 1, " MPa")
	}
	if len(in.Each) == 0 {
		return
	}
	if len(in.Each) != len(in.At) {
		faults.Add(limit.Number, "rod_forces",
			fmt.Sprintf("has %d forces for %d rods", len(in.Each), len(in.At)))
	}
	for i, f := range in.Each {
		geom.RangeOfRod(i, f.Tension, f.ShearX, f.ShearY, faults)
	}
}
