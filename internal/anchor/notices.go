package anchor

import "footward.example/footward/internal/limit"

// The notices, in the order of an answer.
var (
	cracked = &limit.Notice{Code: "anchor_cracked", Severity: limit.Info,
		Text: "The concrete is taken as cracked."}
	uncracked = &limit.Notice{Code: "anchor_uncracked", Severity: limit.Assumption,
		Text: "The concrete is taken as uncracked: that must be shown for all loads, shrinkage and temperature included."}
	plain = &limit.Notice{Code: "anchor_no_reinforcement", Severity: limit.Info,
		Text: "No reinforcement beside the rods is counted."}
	splitting = &limit.Notice{Code: "anchor_splitting", Severity: limit.Caution,
		Text: "Splitting is not checked: keep the least spacing, edge distance and height of the product's assessment or of ACI 318 17.9, or reinforce against it."}
	block = &limit.Notice{Code: "anchor_block", Severity: limit.Caution,
		Text: "The block itself (its reinforcement, its bending, how it hands the forces on) is not checked."}
	pry = &limit.Notice{Code: "anchor_pry_out_factor", Severity: limit.Assumption,
		Text: "EN 1992-4 leaves k_8 for pry-out to the assessment of the product: 1, the least, is taken."}
	frontRow = &limit.Notice{Code: "anchor_edge_row", Severity: limit.Info,
		Text: "At an edge the rods nearest to it are taken to carry the whole shear."}
	magnitudes = &limit.Notice{Code: "anchor_shear_magnitudes", Severity: limit.Info,
		Text: "The shears of the rods count by their magnitudes, whatever their directions."}
	light = &limit.Notice{Code: "anchor_normal_weight", Severity: limit.Assumption,
		Text: "The concrete is taken as normal-weight."}
	ductile = &limit.Notice{Code: "anchor_ductile", Severity: limit.Assumption,
		Text: "The rod's steel is taken as ductile (more than 8 % strain at rupture by EN 1992-4, 14 % by ACI 318)."}
	brittleClass = &limit.Notice{Code: "anchor_class_not_ductile", Severity: limit.Info,
		Text: "The class is not known to have the strain at rupture that the basis asks for (ISO 898-1): the values of brittle steel are taken."}
	lever = &limit.Notice{Code: "anchor_lever_arm", Severity: limit.Assumption,
		Text: "By EN 1992-4 6.2.2.3 the rods carry their shear with a lever arm (what lies under the plate, or how it bears on them, asks for it); the plate may turn unless plate_holds_rotation says that it may not."}
	looseHoles = &limit.Notice{Code: "anchor_loose_holes", Severity: limit.Caution,
		Text: "The holes exceed the nominal clearance: the rods carry shear only where welded washers or a setting plate hand it to them, which CheckAnchorRods asks for."}
	static = &limit.Notice{Code: "anchor_static_load", Severity: limit.Caution,
		Text: "Static load only: earthquake, fatigue and fire are not part of this check."}
)

// Remarks returns the notices of the part in order.
func Remarks() []*limit.Notice {
	return []*limit.Notice{cracked, uncracked, plain, splitting, block, pry, frontRow, magnitudes, light, ductile, brittleClass, lever, looseHoles, static}
}

// Notices appends the notices.
func (r *Result) Notices(l *limit.Notices) {
	if r.reason != "" {
		return
	}
	in, shear := r.in, len(r.pushing.rods) > 0
	for _, n := range [...]struct {
		notice *limit.Notice
		holds  bool
	}{
		{cracked, !in.Uncracked}, {uncracked, in.Uncracked}, {plain, true}, {splitting, true}, {block, true},
		{pry, r.ec && in.PryFactor == 0 && shear}, {frontRow, shear}, {magnitudes, shear},
		{light, in.LightFactor == 0}, {ductile, !r.Brittle}, {brittleClass, r.ByClass},
		{lever, shear && r.Steel.Lever.Why != ""}, {looseHoles, shear && in.Under.Loose}, {static, true},
	} {
		if n.holds {
			l.Add(n.notice)
		}
	}
}
