package plate

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

// The notices, in the order of an answer.
var (
	softUnknown = &limit.Notice{Code: "plate_stiffness_unknown", Severity: limit.Assumption,
		Text: "Whether the footprint keeps the plate flat was not stated: it is taken as soft, and the plate's centre is checked too."}
	softPeak = &limit.Notice{Code: "plate_centre_peak", Severity: limit.Info,
		Text: "Under a soft footprint the greatest moment is taken as the mean over the section times a peak factor for a plate on a bed: an engineering model outside the codes."}
	spreadPlate = &limit.Notice{Code: "plate_bearing_included", Severity: limit.Info,
		Text: "The resistance under compression holds plate and support together: the support bears its full strength under the footprint widened by c."}
	bearingApart = &limit.Notice{Code: "plate_bearing_apart", Severity: limit.Caution,
		Text: "Pressure on the support is used here to bend the plate; its own check is CheckBearing."}
	rodsToo = &limit.Notice{Code: "plate_rods_apart", Severity: limit.Caution,
		Text: "The tension found for the lifted side must be carried by the rods and by what holds them: check both for it."}
	yieldLine = &limit.Notice{Code: "plate_yield_line", Severity: limit.Info,
		Text: "A straight yield line past the flange, round a corner of the plate or along the side of the footprint, holds the rods less than the clause's own pattern and governs."}
	noPrying = &limit.Notice{Code: "plate_no_prying", Severity: limit.Info,
		Text: "The rods stretch so far that no prying develops (L_b above L_b*)."}
	withPrying = &limit.Notice{Code: "plate_prying", Severity: limit.Caution,
		Text: "Prying develops (L_b not above L_b*): the force in the rods and in what holds them is higher than their share of the tension, by Q of the derivation."}
	castIn = &limit.Notice{Code: "plate_stretch_length", Severity: limit.Assumption,
		Text: "The stretch length of the rods was not given: anchor bolts cast in concrete are taken, 8 d + grout + plate + washer + half a nut."}
	pryingUS = &limit.Notice{Code: "plate_prying_us", Severity: limit.Caution,
		Text: "Prying is not part of the tension by Design Guide 1: the plate is given the thickness at which it need not be counted."}
	columnApart = &limit.Notice{Code: "plate_column_not_checked", Severity: limit.Caution,
		Text: "Flange and web of the column at the plate, its walls, or the two plates, are not checked for the forces that they bring in: check them apart (EN 1993-1-8 6.2.6.7, 6.2.6.8; AISC 360-22 J10). With the Eurocode give the steel of an I-section or a tube."}
	columnSection = &limit.Notice{Code: "plate_column_section", Severity: limit.Assumption,
		Text: "Flange and web of the column: class by bending alone, without fillets, a tube with corners of three wall thicknesses; the column itself is not checked."}
	pryingModel = &limit.Notice{Code: "plate_prying_elastic", Severity: limit.Info,
		Text: "Prying on the rods is that of an elastic strip held by rods that stretch; the plate is not credited with it (EN 1993-1-8 6.2.6.11(2))."}
	beyondTips = &limit.Notice{Code: "plate_rods_beyond_flange", Severity: limit.Caution,
		Text: "The rods stand further apart than the flange is wide: the method takes the plate to bend along the flange. An engineer must judge."}
	weldless = &limit.Notice{Code: "plate_weld_not_counted", Severity: limit.Info,
		Text: "No weld throat was given: the lever arm m of the T-stub is measured to the face of the footprint."}
	innerRods = &limit.Notice{Code: "plate_inner_rods", Severity: limit.Info,
		Text: "Rods inside the outline of the footprint are not counted on the lifted side."}
	hollow = &limit.Notice{Code: "plate_inside_hollow", Severity: limit.Info,
		Text: "The plate inside a hollow footprint or between two plates is held as a simply supported slab or span, beyond the printed method and on the safe side."}
	blockLambda = &limit.Notice{Code: "plate_lambda_under_moment", Severity: limit.Info,
		Text: "Under a moment lambda is that of a plate which the greatest pressure presses all over, on an elastic bed 1: beyond the printed method and on the safe side."}
	shortBlock = &limit.Notice{Code: "plate_short_block", Severity: limit.Info,
		Text: "The pressed block is shorter than a third of a cantilever across it or under the footprint: that cantilever is bent in proportion, since a third of it bends with the block. Design Guide 1 prints no rule for it; yield lines at any angle hold."}
	width45 = &limit.Notice{Code: "plate_effective_width", Severity: limit.Info,
		Text: "On the lifted side the width that bends grows at 45 degrees from each rod, no wider than the plate, half way to the next rod, or what yield lines past the flange hold."}
	shearOther = &limit.Notice{Code: "plate_shear_not_used", Severity: limit.Info,
		Text: "Shear and torsion do not bend the plate; shear along the web alone reduces the column's own section, where that is checked."}
	soilPressure = &limit.Notice{Code: "plate_uniform_pressure", Severity: limit.Assumption,
		Text: "Pressure is uniform under the plate or its pressed part. On a soft bed a large thin plate is pressed more under the column; on rock or a hard spot less evenly."}
)

// Remarks returns the notices of the part in order.
func Remarks() []*limit.Notice {
	return []*limit.Notice{softUnknown, softPeak, spreadPlate, bearingApart, rodsToo, yieldLine, noPrying, withPrying, pryingModel, castIn,
		pryingUS, columnApart, columnSection, beyondTips, weldless, innerRods, hollow, blockLambda, shortBlock, width45, shearOther, soilPressure,
		sectionModel, sectionAlone, sectionBay, sectionPrying, sectionLeft}
}

// Notices appends the notices.
func (r *Result) Notices(l *limit.Notices) {
	in := r.in
	a := &in.Actions
	if !in.Footprint.StiffStated {
		l.Add(softUnknown)
	}
	if r.Centre.Done {
		l.Add(softPeak)
	}
	if a.Vx != 0 || a.Vy != 0 || a.T != 0 {
		l.Add(shearOther)
	}
	if r.Case == Idle {
		return
	}
	if in.Design.Basis == basis.Eurocode {
		r.noticesEC(l)
	} else {
		r.noticesUS(l)
	}
	switch e := &r.EC; {
	case r.Column.Known:
		l.Add(columnSection)
	case e.Pressed && r.Misfit == Fits || e.Lifted || r.US.Lifted:
		l.Add(columnApart)
	}
	if r.EC.Lifted || r.US.Lifted {
		l.Add(rodsToo)
		if s := &r.EC.TStub; r.EC.Lifted && s.Ly < min(s.Lcp, s.Lnc) || r.US.Lifted && r.US.Width < r.US.Wide {
			l.Add(yieldLine)
		}
		if r.beyondTips() > 0 {
			l.Add(beyondTips)
		}
		if r.inner() {
			l.Add(innerRods)
		}
	}
	r.noticesSections(l)
}

func (r *Result) noticesEC(l *limit.Notices) {
	e := &r.EC
	if r.Case == Concentric || e.Pressed {
		l.Add(spreadPlate)
	}
	if !e.Lifted {
		return
	}
	if r.in.Rods.Stretch == 0 {
		l.Add(castIn)
	}
	if r.in.WeldThroat == 0 {
		l.Add(weldless)
	}
	if e.TStub.Prying {
		l.Add(withPrying)
		l.Add(pryingModel)
	} else {
		l.Add(noPrying)
	}
}

func (r *Result) noticesUS(l *limit.Notices) {
	u := &r.US
	if u.Fp > 0 {
		l.Add(bearingApart)
		l.Add(soilPressure)
		switch shape := r.in.Footprint.Shape; {
		case shape == ISection && r.Case == Uniaxial:
			l.Add(blockLambda)
		case shape == Tube || shape == Pipe || shape == TwoPlates:
			l.Add(hollow)
		}
	}
	if long := r.frame.L; u.Fp > 0 && (strip(u.Y, u.N1, long) < 1 || strip(u.Y-u.M1, u.Inside, long-u.M1) < 1) {
		l.Add(shortBlock)
	}
	if u.Lifted {
		l.Add(width45)
		l.Add(pryingUS)
	}
}

// inner reports whether rods on the lifted side stand within the footprint.
func (r *Result) inner() bool {
	for _, p := range r.in.Rods.At {
		s := p.X
		if r.frame.AlongY {
			s = p.Y
		}
		if s *= r.frame.Side; s > 0 && s <= r.frame.H/2 {
			return true
		}
	}
	return false
}
