package ground

import "footward.example/footward/internal/limit"

// The notices, in the order of an answer.
var (
	investigate = &limit.Notice{Code: "ground_investigation", Severity: limit.Assumption,
		Text: "Strengths, unit weights and the highest water must come from an investigation of this ground; inspect the formation before the base is placed (EN 1997-1 3 and 4)."}
	presume = &limit.Notice{Code: "ground_presumptive_value", Severity: limit.Caution,
		Text: "A presumptive pressure is no property of this ground: it holds for the conditions of its source only, often for widths of 1 m and more and water far below the base."}
	frost = &limit.Notice{Code: "ground_frost", Severity: limit.Assumption,
		Text: "The base must be below frost depth, seasonal moisture and disturbed ground."}
	exclude = &limit.Notice{Code: "ground_out_of_scope", Severity: limit.Caution,
		Text: "Level ground and a level base only: peat, organic or loose fill, mud, slopes, collapsible, swelling or liquefiable ground, and repeated load are out of scope."}
	beside = &limit.Notice{Code: "ground_overburden", Severity: limit.Assumption,
		Text: "The ground beside the base up to the depth given must stay for life and is counted by its weight. Passive resistance is not counted."}
	noCover = &limit.Notice{Code: "ground_no_overburden", Severity: limit.Info,
		Text: "The ground beside the base does not count: its depth or its unit weight was not given. Passive resistance is not counted."}
	depths = &limit.Notice{Code: "ground_depth_factors", Severity: limit.Caution,
		Text: "The author's depth factors count the shear strength of the ground above the base: it must be as strong as that below."}
	magnitudes = &limit.Notice{Code: "ground_magnitudes", Severity: limit.Info,
		Text: "Moments at the base add the magnitudes of the moment and of the shear times its height, whatever their signs."}
	approach = &limit.Notice{Code: "ground_design_approach", Severity: limit.Assumption,
		Text: "Partial factors are the recommended ones of EN 1997-1 Annex A, of which some were not compared with the printed edition; the National Annex chooses the design approach and may change them (basis.eurocode.ground). Without design_approaches all stand side by side, and one that the annex does not choose may fail."}
	together = &limit.Notice{Code: "ground_variable_linked", Severity: limit.Assumption,
		Text: "The variable actions are taken as one, all or nothing: give every combination of them by itself."}
	source = &limit.Notice{Code: "ground_one_source", Severity: limit.Assumption,
		Text: "Permanent moments and forces along the base are taken as of one source with the weight, all favourable or all unfavourable; a permanent lift takes its own factor. Where they come from elsewhere, such as the pretension of a guy or the thrust of earth, set permanent_apart."}
	combination = &limit.Notice{Code: "ground_one_combination", Severity: limit.Assumption,
		Text: "The actions and the weight are those of one combination: check every one, also those with the least weight."}
	twice = &limit.Notice{Code: "ground_stability_factor", Severity: limit.Assumption,
		Text: "The factor of safety of sliding, overturning and uplift divides what holds also where the combination has reduced it (0.9 D, 0.6 D of ASCE 7), on the safe side. Where the combinations carry the margin give stability_safety_factor 1, for sliding by LRFD sliding_resistance_factor."}
	afloat = &limit.Notice{Code: "ground_water_above_base", Severity: limit.Caution,
		Text: "Water stands above the base: it lifts the whole base, with the factor 1 for bearing and sliding, as a destabilising permanent action for uplift and overturning, and takes nothing off the pressure that the ground must bear. Seepage, heave and ground that softens are not covered."}
	unknownWater = &limit.Notice{Code: "ground_water_not_known", Severity: limit.Assumption,
		Text: "No water level was given: it is taken at the surface."}
	level = &limit.Notice{Code: "ground_height_zero", Severity: limit.Caution,
		Text: "height_mm is 0: the shear is taken to act at the base itself and turns nothing. That is on the unsafe side if it acts higher."}
	weightless = &limit.Notice{Code: "ground_weight_zero", Severity: limit.Caution,
		Text: "weight_kn is 0: neither footing nor soil on it presses. That is on the unsafe side for the bearing of the ground."}
	authors = &limit.Notice{Code: "ground_author", Severity: limit.Info,
		Text: "Bearing, shape, depth and inclination factors are one author's set, not compared with the printed edition; authors differ by half in the factor of weight."}
	constant = &limit.Notice{Code: "ground_constant_volume", Severity: limit.Assumption,
		Text: "No angle at constant volume was given: sliding takes the angle of friction, at most 30 degrees, which is common practice without a source; clays can have less."}
	layered = &limit.Notice{Code: "ground_layer", Severity: limit.Caution,
		Text: "The layer must be compacted, tested and wider than its spread; K_s must be that for the design strengths. Under an inclined force its shear counts by (1 - theta/phi)^2, our own choice. A levelling course is no layer."}
	settlement = &limit.Notice{Code: "ground_settlement", Severity: limit.Caution,
		Text: "Settlement, tilt and their limits are not part of this check."}
	edge = &limit.Notice{Code: "ground_overturning_edge", Severity: limit.Info,
		Text: "Overturning is taken about the edge; the ground yields before that, so bearing and eccentricity govern on soft ground."}
	ring = &limit.Notice{Code: "ground_ring_footing", Severity: limit.Caution,
		Text: "Footings of rings filled with soil are outside the routine of EN 1997: confirm them by a load test or by the observational method (2.7)."}
)

// Remarks returns the notices of the part in order.
func Remarks() []*limit.Notice {
	return []*limit.Notice{
		investigate, presume, frost, exclude, beside, noCover, depths, magnitudes, approach, together, source, combination,
		twice, afloat, unknownWater, level, weightless, authors, constant, layered, settlement, edge, ring,
	}
}

// Notices appends the notices.
func (r *Result) Notices(l *limit.Notices) {
	in := r.in
	us := in.Design.Basis.US()
	l.Add(investigate)
	if in.Presumptive.Pressure > 0 {
		l.Add(presume)
	}
	l.Add(frost)
	l.Add(exclude)
	if r.Overburden > 0 {
		l.Add(beside)
	} else {
		l.Add(noCover)
	}
	if us && in.known() && in.Author != Terzaghi {
		l.Add(depths)
	}
	if in.Height > 0 {
		l.Add(magnitudes)
	}
	switch {
	case us:
		l.Add(combination)
		l.Add(twice)
	default:
		l.Add(approach)
		if in.Linked {
			l.Add(together)
		}
		if g := &in.Permanent; !in.Apart && (g.Vx != 0 || g.Vy != 0 || g.Mx != 0 || g.My != 0) {
			l.Add(source)
		}
	}
	if r.Head > 0 {
		l.Add(afloat)
		if in.Soil.Water == 0 {
			l.Add(unknownWater)
		}
	}
	if in.Height == 0 && in.pushed() {
		l.Add(level)
	}
	if in.Weight == 0 {
		l.Add(weightless)
	}
	if us && in.known() {
		l.Add(authors)
	}
	if in.Soil.Friction > 0 && in.Soil.Critical == 0 {
		l.Add(constant)
	}
	if in.Layer.Thickness > 0 {
		l.Add(layered)
	}
	l.Add(settlement)
	l.Add(edge)
	l.Add(ring)
}
