package pin

import (
	"fmt"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
)

// Ranges that the kernel accepts; the contract's are narrower or the same.
const (
	greatestSize = 1e4  // mm
	leastSize    = 1e-1 // mm
	rounding     = 1e-6 // mm; sizes converted from inches are no smaller
)

func within(v, low, high float64) bool { return v >= low && v <= high }

// field is a number, where it stands in the contract, and what it may be.
type field struct {
	path      string
	v         float64
	low, high float64
	zero      bool // whether 0 is allowed beside the range
}

func (f *field) check(faults *limit.Faults) bool {
	if f.zero && f.v == 0 || within(f.v, f.low, f.high) {
		return true
	}
	faults.Add(limit.OutOfRange, f.path, fmt.Sprintf("of %g must be from %g to %g", f.v, f.low, f.high))
	return false
}

// Validate adds to faults everything about the input that does not fit.
func Validate(in *Input, faults *limit.Faults) {
	if !in.Design.Valid() {
		faults.Add(limit.UnknownValue, "basis.family", "is not a design basis with usable factors")
	}
	validateTimber(in, faults)
	validatePin(in, faults)
	validatePlates(in, faults)
	validateLayout(in, faults)
	for _, f := range [...]field{
		{"forces.n_kn", in.Actions.N, -geom.GreatestForce, geom.GreatestForce, true},
		{"forces.v_kn", in.Actions.V, -geom.GreatestForce, geom.GreatestForce, true},
		{"forces.m_knm", in.Actions.M, -geom.GreatestMoment, geom.GreatestMoment, true},
		{"basis.eurocode.timber.gamma_m_connections", in.GammaConnection, 1, 2, true},
	} {
		f.check(faults)
	}
}

func validateTimber(in *Input, faults *limit.Faults) {
	t, us := &in.Timber, in.Design.Basis.US()
	if t.Kind < material.SolidSoftwood || t.Kind > material.SolidHardwood {
		faults.Add(limit.UnknownValue, "timber.kind", "is not known")
	}
	if t.Duration > Instantaneous {
		faults.Add(limit.UnknownValue, "timber.load_duration", "is not known")
	}
	switch {
	case t.ServiceClass == 0 && !us:
		faults.Add(limit.Missing, "timber.service_class", "is needed by Eurocode: 1, 2 or 3")
	case t.ServiceClass < 0 || t.ServiceClass > 3:
		faults.Add(limit.UnknownValue, "timber.service_class", "must be 1, 2 or 3")
	}
	for _, f := range [...]field{
		{"timber.density_kg_m3", t.Density, 100, 1500, us},
		{"timber.specific_gravity", t.Gravity, 0.1, 1.5, !us},
		{"timber.size_along_pin_mm", t.AlongPin, leastSize, greatestSize, false},
		{"timber.size_across_pin_mm", t.AcrossPin, leastSize, greatestSize, false},
		{"timber.shear_strength_mpa", t.Shear, 1e-3, 1e3, false},
		{"timber.tension_along_mpa", t.Tension, 1e-3, 1e3, false},
		{"timber.compression_along_mpa", t.Compression, 1e-3, 1e3, false},
		{"timber.compression_across_mpa", t.Across, 1e-3, 1e3, true},
		{"timber.modulus_mpa", t.Modulus, 1e2, 1e5, true},
		{"timber.k_mod", t.Kmod, 0.1, 1.1, true},
		{"timber.load_duration_factor", t.LoadDuration, 0.1, 1.6, true}, // NDS 2018 11.3.2: not above 1.6
		{"timber.time_effect_factor", t.TimeEffect, 0.1, 1, true},       // 1.25 for impact is not for connections; NDS 2018 Table N3
		{"timber.wet_factor", t.WetFactor, 0.1, 1, true},
	} {
		f.check(faults)
	}
}

func validatePin(in *Input, faults *limit.Faults) {
	p, us := &in.Pin, in.Design.Basis.US()
	if p.Kind != Bolt && p.Kind != Dowel {
		faults.Add(limit.UnknownValue, "pin.kind", "must be a bolt or a dowel")
	}
	if p.Kind == Dowel && p.Nuts {
		faults.Add(limit.Conflict, "pin.nuts", "a dowel has no nuts; a bar with nuts is a bolt")
	}
	for _, f := range [...]field{
		{"pin.diameter_mm", p.Diameter, 1, 200, false},
		{"pin.fu_mpa", p.Fu, 10, 3e3, false},
		{"pin.fy_mpa", p.Fy, 10, 3e3, false},
		{"pin.fy_bending_mpa", p.Fyb, 10, 3e3, !us},
		{"pin.washer_diameter_mm", p.Washer, leastSize, greatestSize, true},
	} {
		f.check(faults)
	}
	if p.Fu > 0 && p.Fy > p.Fu {
		faults.Add(limit.Conflict, "pin.fy_mpa", fmt.Sprintf("of %g MPa exceeds the tensile strength of %g MPa", p.Fy, p.Fu))
	}
	if p.Washer > 0 && !(p.Washer > p.Diameter+washerClearance) {
		faults.Add(limit.Geometry, "pin.washer_diameter_mm",
			fmt.Sprintf("washer of %g mm does not cover the hole of a pin of %g mm", p.Washer, p.Diameter))
	}
}

func validatePlates(in *Input, faults *limit.Faults) {
	p := &in.Plates
	if p.Arrangement < Outside || p.Arrangement > Both {
		faults.Add(limit.UnknownValue, "plates.arrangement", "must be outside the timber, inside, or both")
	}
	switch {
	case !(p.Eccentricity >= 0 && (p.Eccentricity == 0 || p.Eccentricity < in.Timber.AlongPin/2)):
		faults.Add(limit.Geometry, "plates.eccentricity_mm",
			fmt.Sprintf("of %g mm must be less than half the column of %g mm", p.Eccentricity, in.Timber.AlongPin))
	case p.Eccentricity > 0 && p.Arrangement == Inside:
		faults.Add(limit.Conflict, "plates.eccentricity_mm", "goes with plates outside: one plate inside is bent out of its plane")
	}
	for _, f := range [...]field{
		{"plates.width_mm", p.Width, leastSize, greatestSize, false},
		{"plates.end_distance_mm", p.EndDistance, leastSize, greatestSize, false},
		{"plates.arm_mm", p.Arm, leastSize, greatestSize, false},
		{"plates.gap_mm", p.Gap, 0, 1e3, true},
		{"plates.dowel_bearing_strength_mpa", p.Embedment, 10, 3e3, true},
	} {
		f.check(faults)
	}
	thickness := field{"plates.thickness_mm", p.Thickness, leastSize, 300, false}
	if thickness.check(faults) {
		if !(p.Corrosion >= 0 && p.Corrosion < p.Thickness) {
			faults.Add(limit.Geometry, "plates.corrosion_allowance_mm",
				fmt.Sprintf("loss of %g mm leaves nothing of the %g mm plate", p.Corrosion, p.Thickness))
		}
		if fy, fu, ok := p.Steel.At(p.Thickness); !ok || !within(fy, 10, 3e3) || !within(fu, fy, 3e3) {
			faults.Add(limit.OutOfRange, "plates.steel", fmt.Sprintf("has no strength at %g mm", p.Thickness))
		}
	}
	if !(p.Hole >= in.Pin.Diameter && p.Hole <= 2*in.Pin.Diameter) {
		faults.Add(limit.Geometry, "plates.hole_diameter_mm",
			fmt.Sprintf("hole of %g mm does not fit a pin of %g mm", p.Hole, in.Pin.Diameter))
	}
	if p.Arrangement == Inside && !(in.slot() < in.Timber.AlongPin) {
		faults.Add(limit.Geometry, "plates.gap_mm",
			fmt.Sprintf("a slot of %g mm leaves nothing of the %g mm timber", in.slot(), in.Timber.AlongPin))
	}
}

func validateLayout(in *Input, faults *limit.Faults) {
	l := &in.Layout
	counted := true
	if l.Rows < 1 || l.Rows > MaxRows {
		faults.Add(limit.Number, "layout.rows", fmt.Sprintf("of %d must be 1 to %d", l.Rows, MaxRows))
		counted = false
	}
	if l.InRow < 1 || l.InRow > MaxInRow {
		faults.Add(limit.Number, "layout.pins_per_row", fmt.Sprintf("of %d must be 1 to %d", l.InRow, MaxInRow))
		counted = false
	}
	d := in.Pin.Diameter
	for _, f := range [...]field{
		{"layout.end_distance_mm", l.EndDistance, d / 2, greatestSize, false},
		{"layout.edge_distance_mm", l.EdgeDistance, d / 2, greatestSize, false},
		{"layout.group_factor", l.GroupFactor, 0.05, 1, true},
	} {
		f.check(faults)
	}
	if !counted {
		return
	}
	along := field{"layout.spacing_along_mm", l.SpacingAlong, max(leastSize, in.Plates.Hole), greatestSize, l.InRow == 1}
	across := field{"layout.spacing_across_mm", l.SpacingAcross, max(leastSize, in.Plates.Hole), greatestSize, l.Rows == 1}
	along.check(faults)
	if !across.check(faults) {
		return
	}
	if need := in.across() + 2*l.EdgeDistance; !(need <= in.Timber.AcrossPin+rounding) {
		faults.Add(limit.Geometry, "layout.edge_distance_mm",
			fmt.Sprintf("rows and edges need %g mm, the column has %g mm", need, in.Timber.AcrossPin))
	}
	if need := in.across() + in.Plates.Hole; !(need < in.Plates.Width) {
		faults.Add(limit.Geometry, "plates.width_mm",
			fmt.Sprintf("of %g mm does not hold rows and holes of %g mm", in.Plates.Width, need))
	}
	if !(in.along()/2 < in.Plates.Arm) {
		faults.Add(limit.Geometry, "plates.arm_mm",
			fmt.Sprintf("of %g mm puts the lowest pins below the foot of the plates", in.Plates.Arm))
	}
}

// across returns the distance of the outer rows [mm].
func (in *Input) across() float64 { return float64(in.Layout.Rows-1) * in.Layout.SpacingAcross }

// along returns the distance of the outer pins of a row [mm].
func (in *Input) along() float64 { return float64(in.Layout.InRow-1) * in.Layout.SpacingAlong }

// apart returns how far the shear planes of two plates are from the middle between
// them [mm].
func (in *Input) apart() float64 { return in.Timber.AlongPin/2 + in.Plates.Gap }

// slot returns the width of the slot in the timber [mm]; 0: none.
func (in *Input) slot() float64 {
	if in.Plates.Arrangement != Inside {
		return 0
	}
	return in.Plates.Thickness + 2*in.Plates.Gap
}
