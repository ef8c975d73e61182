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
		Text: "Level ground and a level base only: peat, organic or loose fill, mud, slopes, collapsible, swelling or liquefiable ground, repeated load and water above the base are out of scope."}
	beside = &limit.Notice{Code: "ground_overburden", Severity: limit.Assumption,
		Text: "The ground beside the base up to the depth given must stay for life and is counted by its weight. Passive resistance is not counted."}
	noCover = &limit.Notice{Code: "ground_no_overburden", Severity: limit.Info,
		Text: "The ground beside the base does not count: its depth or its unit weight was not given. Passive resistance is not counted."}
	depths = &limit.Notice{Code: "ground_depth_factors", Severity: limit.Caution,
		Text: "The author's depth factors count the shear strength of the ground above the base: it must be as strong as that below."}
	magnitudes = &limit.Notice{Code: "ground_magnitudes", Severity: limit.Info,
		Text: "Moments at the base add the magnitudes of the moment and of the shear times its height, whatever their signs."}
	approach = &limit.Notice{Code: "ground_design_approach", Severity: limit.Assumption,
		Text: "Partial factors are the recommended ones of EN 1997-1 Annex A, of which some rest on memory; the National Annex chooses the design approach and may change them."}
	together = &limit.Notice{Code: "ground_variable_linked", Severity: limit.Assumption,
		Text: "The variable actions are taken as one, all or nothing: give every combination of them by itself."}
	combination = &limit.Notice{Code: "ground_one_combination", Severity: limit.Assumption,
		Text: "The actions and the weight are those of one combination: check every one, also those with the least weight."}
	authors = &limit.Notice{Code: "ground_author", Severity: limit.Info,
		Text: "Bearing, shape, depth and inclination factors are one author's set, written from memory of the usual tables; authors differ by half in the factor of weight."}
	constant = &limit.Notice{Code: "ground_constant_volume", Severity: limit.Assumption,
		Text: "No angle at constant volume was given: sliding takes the angle of friction, at most 30 degrees, which is common practice without a source; clays can have less."}
	layered = &limit.Notice{Code: "ground_layer", Severity: limit.Caution,
		Text: "The layer must be compacted, tested and wider than its spread; K_s must be that for the design strengths. A levelling course is no layer."}
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
		investigate, presume, frost, exclude, beside, noCover, depths, magnitudes, approach, together, combination,
		authors, constant, layered, settlement, edge, ring,
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
	default:
		l.Add(approach)
		if in.Linked {
			l.Add(together)
		}
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
