package rod

import "footward.example/footward/internal/limit"

// The notices, in the order of an answer.
var (
	cut = &limit.Notice{Code: "rods_thread_making", Severity: limit.Assumption,
		Text: "How the threads were made was not stated: threads cut on site are taken, with 0.85 of the resistance by Eurocode."}
	ratio = &limit.Notice{Code: "rods_class_by_strength", Severity: limit.Assumption,
		Text: "The rod is described by strengths, not by a property class: alpha_v is taken as 0.5, the lower value of EN 1993-1-8 Table 3.4."}
	inPlane = &limit.Notice{Code: "rods_thread_in_shear_plane", Severity: limit.Info,
		Text: "The thread is taken to stand in the shear plane."}
	nut = &limit.Notice{Code: "rods_nut_width", Severity: limit.Assumption,
		Text: "The mean width of the nut was not given: 1.5 diameters are taken for punching, less than any standard hexagon nut."}
	elastic = &limit.Notice{Code: "rods_elastic_sharing", Severity: limit.Info,
		Text: "Forces are shared among the rods by the elastic method of bolt groups, for a plate that is rigid against the rods."}
	prying = &limit.Notice{Code: "rods_prying_not_included", Severity: limit.Caution,
		Text: "Prying is not part of the rod tensions: see the check of plate bending, or include it in rod_forces."}
	anchorage = &limit.Notice{Code: "rods_anchorage_not_checked", Severity: limit.Caution,
		Text: "What holds the far end of the rods (concrete, fill, bottom plate) is not part of this check."}
	frictionUsed = &limit.Notice{Code: "rods_friction_counted", Severity: limit.Assumption,
		Text: "Friction is counted towards the shear: the compression given must act whenever the shear does, and must not come from preload."}
	frictionOff = &limit.Notice{Code: "rods_friction_not_counted", Severity: limit.Info,
		Text: "Friction was given but is not counted, because the base also twists or stands off its support."}
	gap = &limit.Notice{Code: "rods_stand_off", Severity: limit.Caution,
		Text: "Compression and buckling of the rods across the gap, and the plate's sway on them, are not part of this check."}
	washers = &limit.Notice{Code: "rods_welded_washers", Severity: limit.Assumption,
		Text: "The welds of the plate washers that carry the shear, and bearing in the washers' own holes, must be checked as welds and plates of their own."}
	washerSteel = &limit.Notice{Code: "rods_washer_steel", Severity: limit.Assumption,
		Text: "Plate washers are taken to be of the plate's steel."}
	service = &limit.Notice{Code: "rods_static_load", Severity: limit.Caution,
		Text: "Static load only: fatigue, preload, brittle fracture and fire are not part of this check."}
)

// Remarks returns the notices of the part in order.
func Remarks() []*limit.Notice {
	return []*limit.Notice{cut, ratio, inPlane, nut, elastic, prying, anchorage, frictionUsed, frictionOff, gap,
		washers, washerSteel, service}
}

// Notices appends the notices.
func (r *Result) Notices(l *limit.Notices) {
	in := r.in
	us := in.Design.Basis.US()
	if in.Rod.Making == 0 && !us {
		l.Add(cut)
	}
	if in.Rod.Steel.Class == "" && !us && !in.Rod.ShankInPlane {
		l.Add(ratio)
	}
	if !in.Rod.ShankInPlane && r.Sheared {
		l.Add(inPlane)
	}
	if in.Rod.NutWidth == 0 && r.Tense {
		l.Add(nut)
	}
	if len(in.Each) == 0 {
		l.Add(elastic)
	}
	if r.Tense {
		l.Add(prying)
	}
	if !in.Anchored {
		l.Add(anchorage)
	}
	if in.Friction.Counted {
		if r.Friction > 0 {
			l.Add(frictionUsed)
		} else {
			l.Add(frictionOff)
		}
	}
	if in.StandOff.Gap > 0 {
		l.Add(gap)
	}
	if in.Holes.WeldedWashers && r.Oversize {
		l.Add(washers)
	}
	if in.Holes.WasherSide > 0 && us {
		l.Add(washerSteel)
	}
	l.Add(service)
}
