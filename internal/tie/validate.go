package tie

import (
	"fmt"
	"math"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

const (
	path         = "anchorage.through."
	greatestSize = 1e5
)

func within(v, low, high float64) bool { return v >= low && v <= high }

// Validate adds to faults everything about the stack and its bottom plate that
// does not fit; rods and their forces are those of their own check.
func Validate(in *Input, faults *limit.Faults) {
	var own limit.Faults
	in.Plate.Validate(&own)
	for _, f := range own {
		f.Field = path + "bottom_" + f.Field
		*faults = append(*faults, f)
	}
	for _, f := range [...]struct {
		field          string
		v, least, most float64
	}{
		{"pressed_x_mm", in.PressX, 0, greatestSize}, {"pressed_y_mm", in.PressY, 0, greatestSize},
		{"pressed_diameter_mm", in.PressDiameter, 0, greatestSize},
		{"height_mm", in.Height, 1e-3, greatestSize}, {"clamped_weight_kn", in.Clamped, 0, geom.GreatestForce},
		{"ground.depth_mm", in.Soil.Depth, 0, greatestSize}, {"soil.unit_weight_kn_m3", in.Soil.Weight, 0, 1e-3},
		{"ground.angle_deg", in.Soil.Angle, 0, math.Pi / 3}, {"initial_preload_kn", in.Preload, 0, geom.GreatestForce},
		{"relaxation", in.Relaxed, 0, 1}, {"fill_settlement_mm", in.Settlement, 0, greatestSize},
		{"stack_stiffness_kn_mm", in.Stack, 0, 1e12}, {"needed_preload_kn", in.Needed, 0, geom.GreatestForce},
		{"max_stretch_mm", in.MostStretch, 0, greatestSize}, {"basis.eurocode.actions.gamma_g_inf", in.Share, 0, 1},
		{"stack_load", in.Load, 0, geom.GreatestForce}, {"initial_preload_kn", in.Held, 0, geom.GreatestForce},
		{"initial_preload_kn", in.RodStrength, 0, math.MaxFloat64},
	} {
		if !within(f.v, f.least, f.most) {
			faults.Add(limit.OutOfRange, path+f.field, fmt.Sprintf("must be a number from %g to %g in N, mm and rad", f.least, f.most))
		}
	}
	if in.PressDiameter > 0 && (in.PressX > 0 || in.PressY > 0) {
		faults.Add(limit.Conflict, path+"pressed_diameter_mm", "and pressed_x_mm, pressed_y_mm are two answers to one question")
	}
	if in.PressX > in.Plate.SizeX {
		faults.Add(limit.Geometry, path+"pressed_x_mm", fmt.Sprintf("of %g mm is wider than the bottom plate of %g mm", in.PressX, in.Plate.SizeX))
	}
	if in.PressY > in.Plate.SizeY {
		faults.Add(limit.Geometry, path+"pressed_y_mm", fmt.Sprintf("of %g mm is wider than the bottom plate of %g mm", in.PressY, in.Plate.SizeY))
	}
	if !within(in.Length, 1e-3, greatestSize) {
		faults.Add(limit.Missing, "rods.rod.stretch_length_mm", "is needed for rods through to a bottom plate")
	} else if !(in.Modulus*in.RodArea > 0) {
		faults.Add(limit.OutOfRange, "rods.rod", "has nothing left that stretches")
	}
	validateRods(in, faults)
}

func validateRods(in *Input, faults *limit.Faults) {
	if !within(in.Hole, 1e-3, greatestSize) || !within(in.Nut, 1e-3, greatestSize) {
		faults.Add(limit.OutOfRange, "rods.holes", "and nuts must have positive sizes")
	} else if !(max(in.Cover, in.Nut) > in.Hole) {
		faults.Add(limit.Geometry, "rods.holes.diameter_mm", fmt.Sprintf(
			"of %g mm lets the nut of %g mm through the bottom plate: give washer_side_mm or nut_mean_width_mm", in.Hole, max(in.Cover, in.Nut)))
	}
	for i, p := range in.At {
		if !(math.Abs(p.X)+in.Hole/2 < in.Plate.SizeX/2 && math.Abs(p.Y)+in.Hole/2 < in.Plate.SizeY/2) {
			faults.Add(limit.Geometry, fmt.Sprintf("rods.positions[%d]", i), fmt.Sprintf(
				"is not inside the bottom plate of %g by %g mm", in.Plate.SizeX, in.Plate.SizeY))
		}
	}
	if in.ShareReason != "" {
		return
	}
	if len(in.Each) != len(in.At) || len(in.At) == 0 {
		faults.Add(limit.Number, "rod_forces", fmt.Sprintf("has %d forces for %d rods", len(in.Each), len(in.At)))
	}
	for i, t := range in.Each {
		geom.RangeOfRod(i, t, 0, 0, faults)
	}
	in.Actions.Range("forces", faults)
}
