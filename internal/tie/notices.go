package tie

import "footward.example/footward/internal/limit"

// The notices, in the order of an answer.
var (
	model = &limit.Notice{Code: "tie_outside_codes", Severity: limit.Caution,
		Text: "No code covers a fill clamped by rods: confirm by a load test or by the observational method (EN 1997-1 2.7)."}
	even = &limit.Notice{Code: "tie_even_pressure", Severity: limit.Assumption,
		Text: "The fill presses evenly on the bottom plate, about the resultant of the rods. Where the rods stand far out, a narrower or round fill bends the plate more: give pressed_diameter_mm, or pressed_x_mm and pressed_y_mm; without them the worse of the whole plate and the circle in it counts. Where they stand near the middle, rings that press at the rim bend it more than fill does."}
	weight = &limit.Notice{Code: "tie_weight", Severity: limit.Assumption,
		Text: "The clamped weight must be tied to the bottom plate as a whole, must not be part of the actions, and counts buoyant under water. The combinations must include those of equilibrium (EN 1990 Table A1.2(A), ASCE 7 with 0.9 D or 0.6 D)."}
	ground = &limit.Notice{Code: "tie_ground_wedge", Severity: limit.Caution,
		Text: "Ground outside the prism above the plate is counted: only for backfill compacted and tested, above the water, that nobody digs away."}
	edge = &limit.Notice{Code: "tie_overturning_edge", Severity: limit.Caution,
		Text: "Overturning is taken about the edge of the bottom plate, or as far beyond the fill as it carries what holds: the ground must carry the pressure there, which is not checked here."}
	first = &limit.Notice{Code: "tie_initial_preload", Severity: limit.Assumption,
		Text: "Initial preload is borne by rods, nuts and both plates as soon as it is there, and actions add to it what a clamped stack leaves to the rods; it presses the fill, and holds nothing. The upper plate is taken without what stands on it."}
	levelled = &limit.Notice{Code: "tie_levelled", Severity: limit.Assumption,
		Text: "What the fill settles before and by the tightening is taken to be levelled out by it; preload is lost by what settles afterwards, relaxation and load."}
	loss = &limit.Notice{Code: "tie_preload_loss", Severity: limit.Caution,
		Text: "A small settlement takes all preload of short rods: tighten again after the first load, and count on preload only where it is watched."}
	reach = &limit.Notice{Code: "tie_corrosion_access", Severity: limit.Caution,
		Text: "Nuts and plate below cannot be looked at: allow for corrosion over the whole life."}
)

// Remarks returns the notices of the part in order.
func Remarks() []*limit.Notice {
	return []*limit.Notice{model, even, weight, ground, edge, first, levelled, loss, reach}
}

// Notices appends the notices.
func (r *Result) Notices(l *limit.Notices) {
	l.Add(model)
	if r.Pull > 0 {
		l.Add(even)
	}
	l.Add(weight)
	if r.Outside > 0 {
		l.Add(ground)
	}
	l.Add(edge)
	if r.in.Preload > 0 {
		l.Add(first)
		l.Add(levelled)
	}
	if r.in.Preload > 0 || r.in.Needed > 0 {
		l.Add(loss)
	}
	l.Add(reach)
}
