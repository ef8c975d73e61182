package rod

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
)

func (r *Result) deriveUS(s *derive.Sheet) {
	in, u, w := r.in, &r.US, &r.Worst
	times := func(formula string) string { // a nominal strength made available
		if in.Design.Basis == basis.USLRFD {
			return "phi " + formula
		}
		return formula + " / Omega"
	}
	r.deriveNominal(s)
	s.Step("R_t", times("F_nt A_b"), r.FtRd, "N", clauseJ37)
	s.Step("R_v", times("F_nv A_b"), r.FvRd, "N", clauseJ37)
	s.Step("u_t", "F_t,Ed / R_t", w.Ft/r.FtRd, "", clauseJ37)
	s.Step("u_v", "F_v,Ed / R_v", w.Fv/r.FvRd, "", clauseJ37)
	if w.Combined >= 0 {
		s.Given("V_c", w.Fvc, "N", "governing rod, shear")
		s.Given("T_c", w.Ftc, "N", "governing rod, tension")
		s.Step("f_rv", "V_c / A_b", w.Fvc/r.Ab, "MPa", clauseJ38)
		available := r.availableTension(w.Fvc)
		nominal := available / u.Factor
		formula := "max(0, min(F_nt, 1.3 F_nt - F_nt f_rv / (phi F_nv)))"
		if in.Design.Basis == basis.USASD {
			formula = "max(0, min(F_nt, 1.3 F_nt - Omega F_nt f_rv / F_nv))"
		}
		s.Step("F'_nt", formula, nominal, "MPa", clauseJ38)
		s.Step("R_t'", times("F'_nt A_b"), available*r.Ab, "N", clauseJ38)
		if available > 0 {
			s.Step("u_c", "T_c / R_t'", w.Interaction, "", clauseJ38)
		}
	}
	if w.Bearing >= 0 {
		s.Step("R_b", times("2.4 d_n t_p f_u"), w.FbRd, "N", clauseJ311)
		s.Given("V_b", w.Fb, "N", "shear of the governing rod")
		s.Given("l_c", max(0, w.Lc), "mm", "clear distance along the force")
		s.Step("R_o", times("1.2 l_c t_p f_u"), w.FoRd, "N", clauseJ311)
	}
	s.Given("d_m", r.nut(), "mm", "mean width of the nut")
	s.Step("R_p", times("0.6 f_u pi d_m t_p"), u.Punching, "N", clausePunch4)
	r.deriveWasher(s)
	if r.V > 0 && in.StandOff.Gap == 0 {
		s.Given("V", r.V, "N", "shear on the base")
		s.Given("n_v", r.carrying(), "", "rods that carry shear")
		formula := "n_v R_v"
		if r.Friction > 0 {
			formula = "F_f + " + formula
		}
		s.Step("R_base", formula, u.Base, "N", clauseMu)
	}
}

// deriveNominal writes the nominal stresses of a rod.
func (r *Result) deriveNominal(s *derive.Sheet) {
	in, u := r.in, &r.US
	s.Step("A_b", "pi / 4 d_n^2", r.Ab, "mm2", "nominal area left")
	fnt, fnv := "0.75 f_ub", "0.45 f_ub"
	if r.Worn {
		fnt, fnv = "min(0.75 f_ub, f_ub A_s / A_b)", "min(0.45 f_ub, 0.563 f_ub A_s / A_b)"
	}
	if in.Rod.ShankInPlane {
		fnv = "0.563 f_ub"
	}
	s.Step("F_nt", fnt, u.Fnt, "MPa", "AISC 360-22 Table J3.2")
	s.Step("F_nv", fnv, u.Fnv, "MPa", "AISC 360-22 Table J3.2")
}
