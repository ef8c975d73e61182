package tie

import "footward.example/footward/internal/limit"

// The notices, in the order of an answer.
var (
	model = &limit.Notice{Code: "tie_outside_codes", Severity: limit.Caution,
		Text: "No code covers a fill clamped by rods: confirm by a load test or by the observational method (EN 1997-1 2.7)."}
	even = &limit.Notice{Code: "tie_even_pressure", Severity: limit.Assumption,
		Text: "The fill presses evenly on the bottom plate, about the resultant of the rods; what presses in the middle only bends the plate more: give pressed_x_mm and pressed_y_mm."}
	weight = &limit.Notice{Code: "tie_weight", Severity: limit.Assumption,
		Text: "The clamped weight must be tied to the bottom plate as a whole, must not be part of the actions, and counts buoyant under water. The combinations must include those of equilibrium (EN 1990 Table A1.2(A), ASCE 7 with 0.9 D or 0.6 D)."}
	ground = &limit.Notice{Code: "tie_ground_wedge", Severity: limit.Caution,
		Text: "Ground outside the prism above the plate is counted: only for backfill compacted and tested, above the water, that nobody digs away."}
	edge = &limit.Notice{Code: "tie_overturning_edge", Severity: limit.Caution,
		Text: "Overturning is taken about the edge of the bottom plate: the ground must carry the pressure there, which is not checked here."}
	loss = &limit.Notice{Code: "tie_preload_loss", Severity: limit.Caution,
		Text: "A small settlement takes all preload of short rods: tighten again after the first load, and count on preload only where it is watched."}
	reach = &limit.Notice{Code: "tie_corrosion_access", Severity: limit.Caution,
		Text: "Nuts and plate below cannot be looked at: allow for corrosion over the whole life."}
)

// Remarks returns the notices of the part in order.
func Remarks() []*limit.Notice {
	return []*limit.Notice{model, even, weight, ground, edge, loss, reach}
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
	if r.in.Preload > 0 || r.in.Needed > 0 {
		l.Add(loss)
	}
	l.Add(reach)
}
