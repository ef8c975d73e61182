package rod

import (
	"slices"
	"strings"

	"footward.example/footward/internal/friction"
	"footward.example/footward/internal/limit"
)

// mostISO898 is the greatest diameter of ISO 898-1 (from memory) [mm].
const mostISO898 = 39

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
		Text: "Friction was given but is not counted, because the base is not pressed, twists too, or stands off its support."}
	frictionLess = &limit.Notice{Code: "rods_friction_limited", Severity: limit.Caution,
		Text: "More compression was given for friction than the forces press with: only theirs is counted, and none where they lift the base."}
	gap = &limit.Notice{Code: "rods_stand_off", Severity: limit.Caution,
		Text: "Compression and buckling of the rods across the gap, and the plate's sway on them, are not part of this check."}
	washers = &limit.Notice{Code: "rods_welded_washers", Severity: limit.Assumption,
		Text: "The welds of the plate washers that carry the shear, and bearing in the washers' own holes, must be checked as welds and plates of their own."}
	washerSteel = &limit.Notice{Code: "rods_washer_steel", Severity: limit.Assumption,
		Text: "Plate washers are taken to be of the plate's steel."}
	washerThick = &limit.Notice{Code: "rods_washer_thickness", Severity: limit.Assumption,
		Text: "The thickness of the welded washers was not given: that of the plate is taken for the lever arm of the rods."}
	smallWide = &limit.Notice{Code: "rods_small_in_wide_hole", Severity: limit.Caution,
		Text: "Rods up to M14 in holes of 2 mm clearance: EN 1993-1-8 3.6.1(5) also wants the group's bearing resistance not above its shear resistance, which is not checked."}
	bigClass = &limit.Notice{Code: "rods_class_beyond_m39", Severity: limit.Caution,
		Text: "ISO 898-1 ends at M39: the strength of this class at this diameter must be shown by the maker."}
	service = &limit.Notice{Code: "rods_static_load", Severity: limit.Caution,
		Text: "Static load only: fatigue, preload, brittle fracture and fire are not part of this check."}
)

// Remarks returns the notices of the part in order.
func Remarks() []*limit.Notice {
	return slices.Concat([]*limit.Notice{cut, ratio, inPlane, nut, elastic, prying, anchorage, frictionUsed, frictionOff, frictionLess, gap,
		washers, washerSteel, washerThick, smallWide, bigClass, service}, friction.Remarks())
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
		if r.Clamped {
			l.Add(frictionLess)
		}
	}
	if in.StandOff.Gap > 0 {
		l.Add(gap)
	}
	if in.Holes.WeldedWashers && r.Oversize {
		l.Add(washers)
	}
	if in.Holes.WasherSide > 0 && in.Holes.WasherFy == 0 && r.spans() {
		l.Add(washerSteel)
	}
	if r.Bend.Washers && in.Holes.WasherThickness == 0 {
		l.Add(washerThick)
	}
	if r.EC.Wide == wideSmall && r.Sheared {
		l.Add(smallWide)
	}
	if in.Rod.Thread.Diameter > mostISO898 && strings.HasPrefix(in.Rod.Steel.Class, "ISO 898-1") {
		l.Add(bigClass)
	}
	l.Add(service)
	if r.Friction > 0 {
		r.Rub.Notices(l)
	}
}
