package ring

import (
	"fmt"
	"math"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

const (
	mostTiers    = 8
	greatestSize = 1e5
)

func within(v, low, high float64) bool { return v >= low && v <= high }

// bounds are what a number must keep to; a number that may be left out is 0 or
// within them.
type bounds struct {
	field          string
	v, least, most float64
	optional       bool
}

func (b *bounds) check(faults *limit.Faults, path string) {
	if b.optional && b.v == 0 || within(b.v, b.least, b.most) {
		return
	}
	or := ""
	if b.optional {
		or = "0 or "
	}
	faults.Add(limit.OutOfRange, path+b.field, fmt.Sprintf("must be %sfrom %g to %g in N, mm and rad", or, b.least, b.most))
}

// Validate adds to faults everything about the stack that does not fit.
func Validate(in *Input, faults *limit.Faults) {
	if !in.Design.Basis.Valid() {
		faults.Add(limit.UnknownValue, "basis.family", "is none of the design bases")
	}
	in.Actions.Range("forces", faults)
	in.Service.Range("service_forces", faults)
	validateShoe(&in.Shoe, faults)
	if n := len(in.Tiers); n < 1 || n > mostTiers {
		faults.Add(limit.Number, "tiers", fmt.Sprintf("has %d tiers, must have 1 to %d", n, mostTiers))
	} else {
		for i := range in.Tiers {
			validateTier(&in.Tiers[i], fmt.Sprintf("tiers[%d].", i), faults)
		}
	}
	s := &in.Safety
	for _, b := range [...]bounds{
		{"basis.eurocode.ground.gamma_phi_fill", s.GammaPhi, 1, 3, true}, {"basis.us_asd.fill_safety_factor", s.Fill, 1, 20, true},
		{"basis.us_lrfd.fill_resistance_factor", s.PhiB, 0.1, 1, true}, {"basis.us_asd.stability_safety_factor", s.Stability, 1, 10, true},
		{"basis.us_lrfd.sliding_resistance_factor", s.PhiSliding, 0.1, 1, true},
		{"basis.eurocode.actions.gamma_g_sup", s.Unfavourable, 1, 3, true}, {"basis.eurocode.actions.gamma_g_inf", s.Favourable, 0.1, 1, true},
		{"load_test_kn", in.LoadTest, 0, geom.GreatestForce, false}, {"settlement_limit_mm", in.Settlement, 1e-3, greatestSize, true},
		{"bedding_mm", in.Bedding, 0, greatestSize, false}, {"shear_key_kn", in.Key, 0, geom.GreatestForce, false},
		{"forces", in.Clamp, 0, geom.GreatestForce, false}, {"load_test_shoe_mm", in.TestShoe, 10, greatestSize, true},
		{"cover_kpa", in.Cover, 0, 1, false}, {"exposure", in.Face, 0, greatestSize, false},
	} {
		b.check(faults, "")
	}
	if in.LoadTested && in.LoadTest == 0 {
		faults.Add(limit.Missing, "load_test_kn", "is needed of a load test")
	}
	validateRods(&in.Rods, faults)
}

func validateShoe(s *Shoe, faults *limit.Faults) {
	before := len(*faults)
	for _, b := range [...]bounds{
		{"size_x_mm", s.SizeX, 10, greatestSize, false}, {"size_y_mm", s.SizeY, 10, greatestSize, false},
		{"loaded_diameter_mm", s.Loaded, 10, greatestSize, true}, {"friction_coefficient", s.Rubs, 0, 1, true},
	} {
		b.check(faults, "shoe.")
	}
	if len(*faults) > before {
		return
	}
	if s.Round && s.SizeX != s.SizeY {
		faults.Add(limit.Conflict, "shoe.size_y_mm", "must be the diameter of a round plate, as size_x_mm is")
		return
	}
	most := 2 * math.Sqrt(s.SizeX*s.SizeY/math.Pi)
	if s.Round {
		most = s.SizeX
	}
	if s.Loaded > most*(1+1e-9) {
		faults.Add(limit.Geometry, "shoe.loaded_diameter_mm", fmt.Sprintf(
			"of %g mm is a larger circle than the plate has area for, %.6g mm", s.Loaded, most))
	}
}

func validateTier(t *Tier, path string, faults *limit.Faults) {
	if t.Ring.Kind < Steel || t.Ring.Kind > Other {
		faults.Add(limit.UnknownValue, path+"ring.kind", "is none of the kinds of ring")
	}
	if t.Fill.Grade > Sn85 {
		faults.Add(limit.UnknownValue, path+"fill.grade", "is none of the grades of compaction")
	}
	r, f := &t.Ring, &t.Fill
	for _, b := range [...]bounds{
		{"diameter_mm", t.Diameter, 50, greatestSize, false}, {"height_mm", t.Height, 10, 5000, false},
		{"ring.capacity_kn", r.Capacity, 1, geom.GreatestForce, true}, {"ring.stiffness_kn_m", r.Stiffness, 1e-2, geom.GreatestForce, true},
		{"ring.axial_strain", r.Strain, 1e-3, 0.2, true}, {"ring.durability_factor", r.Durability, 0.01, 1, true},
		{"ring.joint_factor", r.Joint, 0.01, 1, true}, {"ring.partial_factor", r.Partial, 1, 20, true},
		{"ring.edge_load_kn", r.EdgeLoad, 1, geom.GreatestForce, true}, {"ring.tested_strain", r.Yields, 0, 0.5, false}, {"ring.wall_thickness_mm", r.Wall, 1e-3, greatestSize, true},
		{"ring.joint_bolt_mm", r.Bolt, 1e-3, greatestSize, true}, {"ring.joint_thickness_mm", r.Lug, 1e-3, greatestSize, true},
		{"fill.unit_weight_kn_m3", f.UnitWeight, 5e-6, 3e-5, false}, {"fill.friction_angle_deg", f.Phi, 20 * math.Pi / 180, 50 * math.Pi / 180, false},
		{"fill.cohesion_kpa", f.Cohesion, 0, 0.1, false}, {"fill.modulus_mpa", f.Modulus, 0.1, 1000, true},
		{"fill.compaction_stress_kpa", f.Compaction, 0, 1, false},
	} {
		b.check(faults, path)
	}
	for _, part := range [...]struct {
		field string
		v     float64
	}{{"wall_thickness_mm", r.Wall}, {"joint_bolt_mm", r.Bolt}, {"joint_thickness_mm", r.Lug}} {
		if part.v > 0 && r.Kind != Steel {
			faults.Add(limit.Conflict, path+"ring."+part.field, "goes with a ring of steel only")
		} else if part.v > 0 && r.Wall == 0 {
			faults.Add(limit.Missing, path+"ring.wall_thickness_mm", "is needed beside the joint")
			break
		}
	}
	if f.Modulus != 0 && f.Grade != NoGrade {
		faults.Add(limit.Conflict, path+"fill.modulus_mpa", "and fill.grade are two answers to one question")
	}
}

func validateRods(r *Rods, faults *limit.Faults) {
	if r.Count < 0 || r.Count > 64 {
		faults.Add(limit.Number, "rods.count", "must be 0 to 64")
	}
	if r.Count == 0 {
		if r.Preload != 0 || r.Needed != 0 || r.Relaxed != 0 || r.Load != 0 {
			faults.Add(limit.Missing, "rods.count", "is needed where there is preload")
		}
		return
	}
	for _, b := range [...]bounds{
		{"area_mm2", r.Area, 1, 1e5, false}, {"modulus_mpa", r.Modulus, 1e3, 1e6, false},
		{"length_mm", r.Length, 10, greatestSize, false}, {"preload_kn", r.Preload, 0, geom.GreatestForce, false},
		{"creep_mm", r.Creep, 0, 1000, false}, {"stack_stiffness_kn_mm", r.Stack, 1, 1e12, true},
		{"needed_preload_kn", r.Needed, 0, geom.GreatestForce, false}, {"relaxation", r.Relaxed, 0, 1, false},
		{"service_forces", r.Load, 0, geom.GreatestForce, false},
	} {
		b.check(faults, "rods.")
	}
}
