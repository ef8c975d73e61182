package pin

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
)

// The notices, in the order of an answer.
var (
	sharing = &limit.Notice{Code: "pin_elastic_sharing", Severity: limit.Info,
		Text: "Pins share the force evenly and the moment by the polar inertia of the group; two plates take half of each pin's force."}
	ropeUsed = &limit.Notice{Code: "pin_rope_effect", Severity: limit.Assumption,
		Text: "The rope effect of bolts is counted (EN 1995-1-1 8.2.2(2)): nuts and washers must stay tight as the timber shrinks, and the plates must rest on the timber."}
	ropeOff = &limit.Notice{Code: "pin_rope_effect_not_counted", Severity: limit.Info,
		Text: "The rope effect of the bolts is not counted: there is a gap, no washer, or no strength across the grain was given."}
	loose = &limit.Notice{Code: "pin_plate_counts_as_thin", Severity: limit.Info,
		Text: "The holes exceed the pin by 0.1 d or more: plates of any thickness count as thin (EN 1995-1-1 8.2.3(1))."}
	holeEC = &limit.Notice{Code: "pin_holes", Severity: limit.Assumption,
		Text: "Holes by EN 1995-1-1 10.4: in timber at most 1 mm wider than a bolt, and no wider than a dowel; in steel at most 2 mm or 0.1 d wider than a bolt."}
	holeUS = &limit.Notice{Code: "pin_holes_us", Severity: limit.Assumption,
		Text: "Holes in timber are taken as 1/16 in wider than a bolt at most (NDS 12.1.3). Threads do not bear on the timber over more than a quarter of it: otherwise give the root diameter as diameter."}
	gapTheory = &limit.Notice{Code: "pin_gap_theory", Severity: limit.Caution,
		Text: "The codes print no yield formulas across a gap: the same theory with the gap in it is used. Closing the gap is better."}
	duration = &limit.Notice{Code: "pin_load_duration", Severity: limit.Assumption,
		Text: "The load duration was not stated: permanent load is taken, the most cautious."}
	moist = &limit.Notice{Code: "pin_wet_service", Severity: limit.Assumption,
		Text: "The moisture class was not stated: wet service is taken."}
	damp = &limit.Notice{Code: "pin_glulam_moisture", Severity: limit.Caution,
		Text: "Glued laminated timber of service class 2 is taken as dry. It reaches 20 %, while NDS 5.3.3 counts it as wet from 16 %: where it may be damper, state service class 3."}
	belowFoot = &limit.Notice{Code: "pin_end_below_foot", Severity: limit.Caution,
		Text: "By the distances given the column's end lies below the foot of the plates, where a shoe has its base plate: the lowest pins stand less above the foot than off the end. Where the end stops at the base plate, its distance is less, and what the timber holds at its end too."}
	modulus = &limit.Notice{Code: "pin_group_action", Severity: limit.Assumption,
		Text: "C_g by NDS 11.3.6, for load along and across the grain as it occurs; the timber's stiffness across the grain is taken as a twentieth of that along it, for which the NDS has no value."}
	factorsUS = &limit.Notice{Code: "pin_nds_factors", Severity: limit.Assumption,
		Text: "NDS: timber dry when put together (green timber that dries needs a lower wet service factor for several rows, Table 11.3.3: give it), temperature up to 100 F, no incising, no end grain factor; size factors are part of the values given. At an angle to the grain the distances for both directions are asked for."}
	splitting1 = &limit.Notice{Code: "pin_splitting", Severity: limit.Caution,
		Text: "EN 1995-1-1 8.1.4 makes no difference for a connection at the end of the member, where splitting is easier: keep the force across the grain well below the resistance, or reinforce."}
	shrinkage = &limit.Notice{Code: "pin_shrinkage", Severity: limit.Caution,
		Text: "Timber shrinks across the grain while steel does not: rows wide apart on one plate split the column. Let the rows move, or keep them close."}
	standing = &limit.Notice{Code: "pin_end_bearing", Severity: limit.Assumption,
		Text: "The column's end is cut square and stands on the plate in full before the pins take load: compression then does not load the pins. Water must drain from the end grain."}
	hanging = &limit.Notice{Code: "pin_end_clear", Severity: limit.Info,
		Text: "The end of the column does not stand on a plate: all compression goes through the pins."}
	cantilevers = &limit.Notice{Code: "pin_plates_sway", Severity: limit.Caution,
		Text: "The plates count as cantilevers whose heads go sideways along the pins with the column's foot: K = 2, for lateral torsional buckling too. " +
			"K = 1 needs bolts with nuts at two levels without a gap, a plate that fits its slot, or a foot that is held along the pins (plates.foot_held_along_pins)."}
	keptUpright = &limit.Notice{Code: "pin_plates_upright", Severity: limit.Assumption,
		Text: "The column keeps the heads of the plates upright along the pins, by nuts at two levels without a gap or by a slot that the plate fits: K = 1. The column must be held along the pins at its upper end."}
	heldFoot = &limit.Notice{Code: "pin_foot_held", Severity: limit.Assumption,
		Text: "The column's foot is said to be held along the pins by something else than the plates: K = 1 for the plates. What holds it is not part of this check."}
	uneven = &limit.Notice{Code: "pin_uneven_plates", Severity: limit.Info,
		Text: "The actions are eccentric between the plates: pins, timber at them, plates and weld are held as if both plates carried the share of the nearer."}
	square = &limit.Notice{Code: "pin_plates_in_plane", Severity: limit.Caution,
		Text: "Forces square to the plates, torsion, and the base plate of the shoe under its plates are not part of this check."}
	bracket = &limit.Notice{Code: "pin_bracket_weld", Severity: limit.Caution,
		Text: "The weld of the plates to the shoe, forces square to the plates and torsion are not part of this check."}
	column = &limit.Notice{Code: "pin_column_not_checked", Severity: limit.Caution,
		Text: "The column itself is not part of this check: buckling, and bending with tension at the holes, must be checked beside it."}
	durable = &limit.Notice{Code: "pin_durability", Severity: limit.Caution,
		Text: "Protect steel by service class (EN 1995-1-1 Table 4.1; NDS 11.1.4) and end grain from wet. Steel in contact with treated or acid timber corrodes faster. Fire, fatigue and load reversal (EN 1995-1-1 8.1.5) are not checked."}
	coded = &limit.Notice{Code: "pin_by_code", Severity: limit.Info,
		Text: "The states follow published codes: no load test is needed for them. Some clauses are cited from memory: compare with your edition."}
)

// Remarks returns the notices of the part in order.
func Remarks() []*limit.Notice {
	return []*limit.Notice{sharing, ropeUsed, ropeOff, loose, holeEC, holeUS, gapTheory, duration, moist, damp, modulus, factorsUS,
		splitting1, shrinkage, standing, hanging, belowFoot, cantilevers, keptUpright, heldFoot, uneven, square, bracket, column, durable, coded}
}

// Notices appends the notices.
func (r *Result) Notices(l *limit.Notices) {
	in, t := r.in, &r.in.Timber
	l.Add(sharing)
	if r.ec {
		r.noticesEC(l)
	} else {
		l.Add(holeUS)
	}
	if in.Plates.Gap > 0 {
		l.Add(gapTheory)
	}
	if r.ec && t.Duration == NotStated && t.Kmod == 0 || in.Design.Basis == basis.USASD && t.LoadDuration == 0 ||
		in.Design.Basis == basis.USLRFD && t.TimeEffect == 0 {
		l.Add(duration)
	}
	if !r.ec {
		if t.ServiceClass == 0 {
			l.Add(moist)
		}
		if t.ServiceClass == 2 && t.Kind == material.GluedLaminated {
			l.Add(damp)
		}
		if !r.US.Given && r.US.Cg < 1 {
			l.Add(modulus)
		}
		l.Add(factorsUS)
	}
	if r.ec && r.Shear > 0 && t.Kind != material.SolidHardwood {
		l.Add(splitting1)
	}
	if in.Layout.Rows > 1 {
		l.Add(shrinkage)
	}
	if in.EndBears {
		l.Add(standing)
	} else {
		l.Add(hanging)
	}
	if in.Layout.EndDistance > in.Plates.Arm-in.along()/2+1 { // but for rounding
		l.Add(belowFoot)
	}
	switch {
	case in.Plates.Held:
		l.Add(heldFoot)
	case r.Steel.K == guided:
		l.Add(keptUpright)
	default:
		l.Add(cantilevers)
	}
	if in.Plates.Eccentricity > 0 {
		l.Add(uneven)
	}
	if in.Welded {
		l.Add(square)
	} else {
		l.Add(bracket)
	}
	l.Add(column)
	l.Add(durable)
	l.Add(coded)
}

func (r *Result) noticesEC(l *limit.Notices) {
	in := r.in
	switch {
	case r.EC.Fax > 0:
		l.Add(ropeUsed)
	case in.Pin.Kind == Bolt && in.Pin.Nuts && r.reason == "":
		l.Add(ropeOff)
	}
	if in.Plates.Arrangement == Outside && in.loose() {
		l.Add(loose)
	}
	l.Add(holeEC)
}
