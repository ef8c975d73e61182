package bearing

import "footward.example/footward/internal/limit"

// The notices, in the order of an answer.
var (
	eccentric = &limit.Notice{Code: "bearing_effective_area", Severity: limit.Info,
		Text: "Eccentric load: the pressure is taken as uniform over the rectangle centred on the resultant (plastic distribution). Peak pressures of an elastic bed are higher."}
	noShear = &limit.Notice{Code: "bearing_shear_not_checked", Severity: limit.Caution,
		Text: "Shear and torsion at the contact are not part of this check. Where shear is high, EN 1992-1-1 6.7(3) asks for a lower bearing resistance: an engineer must judge."}
	bursting = &limit.Notice{Code: "bearing_bursting_reinforcement", Severity: limit.Caution,
		Text: "Tension across the block from the spreading load (bursting, EN 1992-1-1 6.7(4); ACI 318) needs reinforcement, which is not part of this check."}
	bedded = &limit.Notice{Code: "bearing_full_bedding", Severity: limit.Assumption,
		Text: "The plate is taken as fully bedded on the support without voids."}
	grouted = &limit.Notice{Code: "bearing_grout_conditions", Severity: limit.Info,
		Text: "Strength and thickness of the grout were held against the conditions for beta_j of EN 1993-1-8 6.2.5(7)."}
	groutUS = &limit.Notice{Code: "bearing_grout_strength_us", Severity: limit.Assumption,
		Text: "The grout is taken to be at least as strong as the concrete below; common practice in the US asks for twice its strength."}
	duration = &limit.Notice{Code: "bearing_load_duration", Severity: limit.Assumption,
		Text: "The load duration was not stated: permanent load is taken, the most cautious."}
	moisture = &limit.Notice{Code: "bearing_wet_service", Severity: limit.Assumption,
		Text: "The moisture class was not stated: wet service is taken, the most cautious."}
	temperature = &limit.Notice{Code: "bearing_nds_factors", Severity: limit.Assumption,
		Text: "NDS: temperature up to 100 F, no incising; size factor not included. Buckling of the column is not part of this check."}
	endPlate = &limit.Notice{Code: "bearing_end_grain_plate", Severity: limit.Assumption,
		Text: "End grain bears on a steel plate that is flat and square to the grain; buckling of the column is not part of this check."}
	byDesigner = &limit.Notice{Code: "bearing_pressure_given", Severity: limit.Assumption,
		Text: "The pressure was given by the designer, who answers for it and for its source."}
	granular = &limit.Notice{Code: "bearing_granular_fill", Severity: limit.Caution,
		Text: "Granular fill under a plate has no code for this use: prove it by a load test to at least 1.5 times the service load or by the observational method (EN 1997-1 2.7), and check settlement and loss of fill."}
)

// Remarks returns the notices of the part in order.
func Remarks() []*limit.Notice {
	return []*limit.Notice{eccentric, noShear, bursting, bedded, grouted, groutUS, duration, moisture,
		temperature, endPlate, byDesigner, granular}
}

// Notices appends the notices.
func (r *Result) Notices(l *limit.Notices) {
	in := r.in
	if r.Compressed && r.Ratio > 0 {
		l.Add(eccentric)
	}
	if in.Actions.Vx != 0 || in.Actions.Vy != 0 || in.Actions.T != 0 {
		l.Add(noShear)
	}
	supportNotices(in, l)
}

// Notices appends the notices about the support.
func (s *Strength) Notices(l *limit.Notices) { supportNotices(s.in, l) }

func supportNotices(in *Input, l *limit.Notices) {
	us := in.Design.Basis.US()
	switch in.Medium {
	case Concrete:
		l.Add(bursting)
		switch {
		case in.Block.GroutThick == 0:
			l.Add(bedded)
		case us:
			l.Add(groutUS)
		default:
			l.Add(grouted)
		}
	case Timber:
		t := &in.Timber
		if us && t.ServiceClass == 0 {
			l.Add(moisture)
		}
		if us {
			l.Add(temperature)
		}
		if (!us && t.Duration == NotStated) || (us && t.LoadDuration == 0 && t.TimeEffect == 0) {
			l.Add(duration)
		}
		if t.Direction == AlongGrain {
			l.Add(endPlate)
		}
	case Given:
		if !in.Given.Found {
			l.Add(byDesigner)
		}
		if in.Given.Granular {
			l.Add(granular)
		}
	}
}
