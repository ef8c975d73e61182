package weld

import "footward.example/footward/internal/limit"

// The notices, in the order of an answer.
var (
	weaker = &limit.Notice{Code: "weld_filler_matches", Severity: limit.Assumption,
		Text: "The filler is taken to be at least as strong as the parts joined (EN 1993-1-8 4.2); a complete-penetration weld needs it by every basis."}
	correlation = &limit.Notice{Code: "weld_correlation_factor", Severity: limit.Assumption,
		Text: "A steel has no correlation factor in EN 1993-1-8 Table 4.1: beta_w = 1.0 is taken, the most cautious."}
	angles = &limit.Notice{Code: "weld_fusion_faces", Severity: limit.Assumption,
		Text: "Fillet legs are equal and the parts meet at 60 to 120 degrees (EN 1993-1-8 4.3.2.1)."}
	depth = &limit.Notice{Code: "weld_penetration_depth", Severity: limit.Assumption,
		Text: "The throat of a partial-penetration weld is taken to be the depth that is reached consistently, as prepared and proved by procedure."}
	root = &limit.Notice{Code: "weld_root_bending", Severity: limit.Caution,
		Text: "Bending about the root of a weld from one side only is not part of this check and should be avoided (EN 1993-1-8 4.12)."}
	ends = &limit.Notice{Code: "weld_ends_deducted", Severity: limit.Info,
		Text: "One throat was taken off each end, since full size up to the ends was not stated (EN 1993-1-8 4.5.1)."}
	elasticGroup = &limit.Notice{Code: "weld_elastic_group", Severity: limit.Info,
		Text: "The group shares its actions by the elastic vector method, without directional strength increase; compression is carried by the weld, not by contact."}
	aboutCentre = &limit.Notice{Code: "weld_about_centre", Severity: limit.Info,
		Text: "The group is taken to turn about its instantaneous centre; the base metal is checked with the elastic forces."}
	compatible = &limit.Notice{Code: "weld_directional_increase", Severity: limit.Assumption,
		Text: "The directional strength increase is taken: all runs are loaded at the same angle and deform alike (AISC 360 J2.4). " +
			"It does not hold at the end of a rectangular hollow section in tension: set own_section there."}
	hollow = &limit.Notice{Code: "weld_hollow_section_end", Severity: limit.Info,
		Text: "Runs with their own section under a force square to the plate are taken as the end of a hollow section: no directional strength increase (AISC 360 J2.4)."}
	shared = &limit.Notice{Code: "weld_shared_section", Severity: limit.Assumption,
		Text: "Two runs or segments are taken to share one thickness of the parts, as fillets on both faces; set own_section where each has its own."}
	larger = &limit.Notice{Code: "weld_larger_than_part", Severity: limit.Caution,
		Text: "The legs of the fillet are longer than the thinner part is thick: the part holds less than the weld, and takes much heat and distortion."}
	longLine = &limit.Notice{Code: "weld_long_line", Severity: limit.Caution,
		Text: "A line of weld longer than 150 throats (Eurocode) or 100 legs (US) carries along itself and counts in full. Where it is loaded from its end, as in a lap, it is less effective (EN 1993-1-8 4.11, AISC 360 J2.2b): set end_loaded."}
	closedLine = &limit.Notice{Code: "weld_continuous", Severity: limit.Assumption,
		Text: "The segments are said to be one closed line without ends: least length and leg go by the whole of it."}
	twoOnOne = &limit.Notice{Code: "weld_segments_coincide", Severity: limit.Caution,
		Text: "Segments lie on one another and both count, as fillets on the two faces of a part that is drawn as a line. Where it is one weld, leave one of them out."}
	static = &limit.Notice{Code: "weld_static_load", Severity: limit.Caution,
		Text: "Static load only: fatigue, brittle fracture, lamellar tearing of the plate and inspection of the weld are not part of this check."}
)

// Remarks returns the notices of the part in order.
func Remarks() []*limit.Notice {
	return []*limit.Notice{weaker, correlation, angles, depth, root, ends, elasticGroup, aboutCentre, compatible,
		hollow, shared, larger, longLine, closedLine, twoOnOne, static}
}

// Notices appends the notices.
func (r *Result) Notices(l *limit.Notices) {
	w := &r.in.Weld
	ec := isEC(r.in)
	if ec && w.Filler.Strength == 0 || w.Type == CompletePenetration {
		l.Add(weaker)
	}
	if ec {
		for i := range w.Parts {
			if s := &w.Parts[i].Steel; (s.Grade != nil && s.Grade.BetaW == 0) || (s.Grade == nil && s.BetaW == 0) {
				l.Add(correlation)
			}
		}
		if w.Type == Fillet {
			l.Add(angles)
		}
	}
	if w.Type == PartialPenetration {
		l.Add(depth)
	}
	if w.Type != CompletePenetration {
		l.Add(root)
	}
	if r.End > 0 {
		l.Add(ends)
	}
	switch {
	case r.Grouped && r.elastic():
		l.Add(elasticGroup)
	case r.Grouped && !ec:
		l.Add(aboutCentre)
	case ec || w.Type != Fillet:
	case hollowEnd(r.in):
		l.Add(hollow)
	case r.US.Kds > 1:
		l.Add(compatible)
	}
	if !ec && r.Sections < 1 || ec && w.Type != CompletePenetration && r.EC.Beside.Used > 0 && r.EC.Beside.Sections < 1 {
		l.Add(shared)
	}
	if w.Type == Fillet && r.Leg > r.Thin+rounding {
		l.Add(larger)
	}
	if r.long() {
		l.Add(longLine)
	}
	if r.Grouped && r.in.Group.Continuous {
		l.Add(closedLine)
	}
	if r.Grouped && r.in.Group.double() {
		l.Add(twoOnOne)
	}
	l.Add(static)
}
