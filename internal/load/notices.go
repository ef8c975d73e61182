package load

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/limit"
)

// The notices, in the order of an answer.
var (
	linear = &limit.Notice{Code: "load_linear", Severity: limit.Assumption,
		Text: "Actions at the foot are added as they are: effects of second order, and supports that let go, are not part of it."}
	noQuake = &limit.Notice{Code: "load_no_earthquake", Severity: limit.Caution,
		Text: "Earthquake, fatigue and fire are not combined here."}
	ownAnnex = &limit.Notice{Code: "load_national_annex", Severity: limit.Assumption,
		Text: "Partial and psi factors are the recommended ones unless given; the national annex may ask for others and for (6.10a) with (6.10b)."}
	eachAlone = &limit.Notice{Code: "load_permanent_apart", Severity: limit.Info,
		Text: "Every permanent action has its upper and lower factor on its own, which is on the safe side where several come from one source."}
	mountain = &limit.Notice{Code: "load_snow_site", Severity: limit.Assumption,
		Text: "The site of snow was not stated: the higher psi factors are taken."}
	snowStrength = &limit.Notice{Code: "load_snow_strength_level", Severity: limit.Assumption,
		Text: "Snow, wind and rain are the strength-level loads of ASCE 7-22; those of earlier editions have other factors."}
	fullLive = &limit.Notice{Code: "load_live_factor", Severity: limit.Info,
		Text: "L has the factor 1.0 in combinations 3 and 4; the lower factor that ASCE 7 allows for some uses is not taken."}
	basicOnly = &limit.Notice{Code: "load_basic_combinations", Severity: limit.Caution,
		Text: "Fluids, soil pressure, flood, ice, self-straining and extraordinary actions of ASCE 7 are not combined here."}
)

// Notices that name actions; the text here is what an answer fills in.
var (
	partsOfOne = &limit.Notice{Code: "load_parts_of_one_action", Severity: limit.Assumption,
		Text: "Parts of one action, which act together with one factor, each also absent: ACTIONS. Say exclusive_group where they exclude each other, part_of where they are independent."}
	partsApart = &limit.Notice{Code: "load_parts_independent", Severity: limit.Assumption,
		Text: "Taken as independent of each other, by category or part_of, so one leads while the other accompanies: ACTIONS. Where all imposed actions are to be one beside wind and snow (EN 1991-1-1 3.3.1, not compared with the printed edition), give them one part_of."}
	inNone = &limit.Notice{Code: "load_action_not_combined", Severity: limit.Caution,
		Text: "In no combination that was asked for: ACTIONS."}
	wholeOrNone = &limit.Notice{Code: "load_whole_or_absent", Severity: limit.Caution,
		Text: "A variable action has its whole value or none: what is worst in between, such as an eccentricity or the friction that is left, is not looked for."}
)

// Remarks returns the notices of the part in order.
func Remarks() []*limit.Notice {
	return []*limit.Notice{linear, noQuake, ownAnnex, eachAlone, mountain, snowStrength, fullLive, basicOnly,
		partsOfOne, partsApart, inNone, wholeOrNone}
}

// Notices appends the notices.
func (r *Result) Notices(l *limit.Notices) {
	r.general(l)
	r.named(l)
}

func (r *Result) general(l *limit.Notices) {
	l.Add(linear)
	l.Add(noQuake)
	if r.in.Basis.US() {
		l.Add(snowStrength)
		if r.in.Basis == basis.USLRFD {
			l.Add(fullLive)
		}
		l.Add(basicOnly)
		return
	}
	l.Add(ownAnnex)
	permanent := 0
	for i := range r.in.Actions {
		a := &r.in.Actions[i]
		if a.Kind == Permanent {
			permanent++
		}
		if a.Kind == Snow && a.Site == 0 && !a.OwnPsi {
			l.Add(mountain)
		}
	}
	if permanent > 1 {
		l.Add(eachAlone)
	}
}

const tableA12 = "EN 1990:2002+A1:2005 Table A1.2"

// Derive writes the factors used.
func (r *Result) Derive(s *derive.Sheet) {
	if r.in.Basis != basis.Eurocode {
		return
	}
	f := &r.in.Factors
	s.Factor("gamma_G,sup", f.GSup, tableA12+"(B)")
	s.Factor("gamma_G,inf", f.GInf, tableA12+"(B)")
	s.Factor("gamma_Q", f.Q, tableA12+"(B)")
	s.Factor("xi", f.Xi, tableA12+"(B)")
	s.Factor("gamma_G,sup (A)", f.GSupA, tableA12+"(A)")
	s.Factor("gamma_G,inf (A)", f.GInfA, tableA12+"(A)")
	s.Factor("gamma_Q (C)", f.QC, tableA12+"(C)")
}
