package ground

import (
	"fmt"
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
)

const (
	greatestSize = 1e5
	degree       = math.Pi / 180
	mostFriction = 45 * degree
)

func within(v, low, high float64) bool { return v >= low && v <= high }

// optional is within its bounds or 0.
func optional(v, low, high float64) bool { return v == 0 || within(v, low, high) }

// Validate adds to faults everything that does not fit.
func Validate(in *Input, faults *limit.Faults) {
	if !in.Design.Valid() {
		faults.Add(limit.UnknownValue, "basis.family", "must be a known basis with usable factors")
	}
	switch in.Shape {
	case Rectangle:
		size(faults, "footing.rectangle.size_x_mm", in.SizeX)
		size(faults, "footing.rectangle.size_y_mm", in.SizeY)
	case Circle:
		size(faults, "footing.circle.diameter_mm", in.Diameter)
	default:
		faults.Add(limit.Missing, "footing.plan", "must be a rectangle or a circle")
	}
	for _, f := range [...]struct {
		field          string
		v, least, most float64
	}{
		{"footing.depth_mm", in.Depth, 0, greatestSize}, {"height_mm", in.Height, 0, greatestSize},
		{"permanent.n_kn", in.Lift, 0, geom.GreatestForce},
		{"weight_kn", in.Weight, 0, geom.GreatestForce}, {"weight_kn", in.Bed, 0, in.Weight},
		{"soil.cohesion_kpa", in.Soil.Cohesion, 0, 10}, {"soil.undrained_strength_kpa", in.Soil.Undrained, 0, 10},
		{"soil.unit_weight_kn_m3", in.Soil.Below, 0, 4e-5}, {"soil.unit_weight_above_kn_m3", in.Soil.Above, 0, 4e-5},
		{"presumptive.pressure_kpa", in.Presumptive.Pressure, 0, 100},
		{"layer.thickness_mm", in.Layer.Thickness, 0, greatestSize},
	} {
		if !within(f.v, f.least, f.most) {
			faults.Add(limit.OutOfRange, f.field, fmt.Sprintf("must be a number from %g to %g in N, mm and rad", f.least, f.most))
		}
	}
	if !in.Soil.Dry && !within(in.Soil.Water, 0, 1e6) {
		faults.Add(limit.OutOfRange, "soil.water_depth_mm", "must be a number from 0 to 1e+06 mm")
	}
	for _, f := range [...]struct {
		field string
		v     float64
	}{{"soil.friction_angle_deg", in.Soil.Friction}, {"soil.critical_angle_deg", in.Soil.Critical}} {
		if !optional(f.v, degree*(1-1e-9), mostFriction*(1+1e-9)) {
			faults.Add(limit.OutOfRange, f.field, "must be from 1 to 45 degrees")
		}
	}
	for _, v := range [...]float64{in.Partials.GSup, in.Partials.GInf, in.Partials.Q, in.Partials.QC, in.Partials.GDst, in.Partials.GStb, in.Partials.QDst} {
		if !optional(v, 0.1, 10) {
			faults.Range("partials", v, 0.1, 10, 1, ", each factor")
			break
		}
	}
	in.Permanent.Range("permanent", faults)
	in.Variable.Range("variable", faults)
	validateSoil(in, faults)
	validateMethod(in, faults)
}

func size(faults *limit.Faults, field string, v float64) {
	if !within(v, 1, greatestSize) {
		faults.Add(limit.OutOfRange, field, fmt.Sprintf("must be from 1 to %g mm", greatestSize))
	}
}

func validateSoil(in *Input, faults *limit.Faults) {
	s := &in.Soil
	known := s.Friction != 0 || s.Undrained != 0
	if !known && in.Presumptive.Pressure == 0 {
		faults.Add(limit.Missing, "soil", "needs a drained or an undrained strength, or a presumptive pressure with its source")
	}
	if s.Cohesion > 0 && s.Friction == 0 {
		faults.Add(limit.Missing, "soil.friction_angle_deg", "is needed beside a drained cohesion")
	}
	if s.Critical > 0 && s.Friction > 0 && s.Critical > s.Friction*(1+1e-9) {
		faults.Add(limit.Conflict, "soil.critical_angle_deg", "is the angle at constant volume: it cannot be above the angle of friction")
	}
	if s.Critical > 0 && s.Friction == 0 {
		faults.Add(limit.Missing, "soil.friction_angle_deg", "is needed beside the angle at constant volume")
	}
	if s.Friction > 0 && s.Below == 0 {
		faults.Add(limit.Missing, "soil.unit_weight_kn_m3", "is needed for drained strength")
	}
	if s.Friction > 0 && !s.Dry && s.Water < in.Depth+in.width() && s.Below > 0 && s.Below <= material.WaterWeight {
		faults.Add(limit.OutOfRange, "soil.unit_weight_kn_m3", "is wet, and below water cannot be less than that of water")
	}
	if known && !within(in.Interface.Share, 1e-3, 1) {
		faults.Add(limit.OutOfRange, "base_contact.friction_share", "must be above 0 and not above 1: 1 cast or fill contact, 2/3 smooth steel")
	}
	if in.Presumptive.Pressure > 0 && in.Presumptive.Source == "" {
		faults.Add(limit.Missing, "presumptive.source", "is needed: a presumptive pressure counts only with its source")
	}
	l := &in.Layer
	if l.Thickness == 0 {
		return
	}
	if !within(l.Clay, 1e-6, 10) {
		faults.Add(limit.OutOfRange, "layer.undrained_strength_kpa", "must be a positive strength of the clay below")
	}
	if !within(l.Punching, 1e-3, 30) {
		faults.Add(limit.OutOfRange, "layer.punching_coefficient", "must be above 0 and not above 30")
	}
	if s.Friction == 0 {
		faults.Add(limit.Missing, "soil.friction_angle_deg", "of the granular layer is needed")
	}
	if s.Undrained > 0 || s.Cohesion > 0 {
		faults.Add(limit.Conflict, "layer", "is granular: soil is the layer and has neither cohesion nor undrained strength")
	}
}

func validateMethod(in *Input, faults *limit.Faults) {
	for i, a := range in.Approaches {
		if a < DA1Part1 || a > DA3 {
			faults.Add(limit.UnknownValue, fmt.Sprintf("design_approaches[%d]", i), "must be a design approach of EN 1997-1")
		}
	}
	if !in.Design.Basis.US() {
		return
	}
	family := "basis.us_lrfd"
	if in.Design.Basis == basis.USASD {
		family = "basis.us_asd"
	}
	known := in.Soil.Friction != 0 || in.Soil.Undrained != 0
	if known && (in.Author < Terzaghi || in.Author > Vesic) {
		faults.Add(limit.Missing, "bearing_author", "must name the author of the bearing factors")
	}
	if !optional(in.Safety, 1, 10) {
		faults.Add(limit.OutOfRange, "basis.us_asd.bearing_safety_factor", "must be from 1 to 10")
	}
	if !optional(in.Slip, 0.1, 1) {
		faults.Add(limit.OutOfRange, "basis.us_lrfd.sliding_resistance_factor", "must be from 0.1 to 1")
	}
	if !optional(in.Stability, 1, 10) {
		faults.Add(limit.OutOfRange, family+".stability_safety_factor", "must be from 1 to 10")
	}
	if in.Design.Basis == basis.USLRFD && known && !within(in.Resistance, 0.1, 1) {
		kind := limit.OutOfRange
		if in.Resistance == 0 {
			kind = limit.Missing
		}
		faults.Add(kind, "basis.us_lrfd.bearing_resistance_factor", "is needed from 0.1 to 1 where the ground is checked: there is no default")
	}
}
