package weld

import "footward.example/footward/internal/derive"

func (r *Result) deriveEC(s *derive.Sheet) {
	if r.none() || r.beyondEC() != "" {
		return
	}
	r.deriveForces(s)
	e, w := &r.EC, &r.in.Weld
	if w.Type == CompletePenetration {
		r.deriveFull(s)
		return
	}
	for i, mark := range [2]string{"_1", "_2"} {
		p := &w.Parts[i]
		_, fu := p.strengths()
		s.Given("f_u"+mark, fu, "MPa", "part joined")
		s.Given("beta_w"+mark, p.Steel.Correlation(), "", "EN 1993-1-8:2005 Table 4.1")
	}
	s.Step("f_u", "min(f_u_1, f_u_2)", e.Fu, "MPa", clauseWeaker)
	s.Step("f_u,b", "min(f_u_1 / beta_w_1, f_u_2 / beta_w_2)", e.FuBeta, "MPa", clauseWeaker)
	if r.lapped() {
		s.Given("L_j", r.lap(), "mm", "lap along its force")
		s.Step("beta_Lw", "max(0, min(1, 1.2 - 0.2 L_j / (150 a)))", e.BetaLw, "", clauseLap)
	} else {
		s.Given("beta_Lw", 1, "", "not loaded from its end; "+clauseLap)
	}
	d := &e.Directional
	r.flow(s, "", d.Spot, d.Flow)
	if d.Plane {
		s.Step("sigma_perp", "min(q_nor, q_acr) / a", d.SPerp, "MPa", clauseDirectional)
		s.Step("tau_perp", "max(q_nor, q_acr) / a", d.TPerp, "MPa", clauseDirectional)
	} else {
		s.Step("sigma_perp", "abs(q_nor - q_acr) / (sqrt(2) a)", d.SPerp, "MPa", clauseDirectional)
		s.Step("tau_perp", "(q_nor + q_acr) / (sqrt(2) a)", d.TPerp, "MPa", clauseDirectional)
	}
	s.Step("tau_par", "q_par / a", d.TPar, "MPa", clauseDirectional)
	s.Step("sigma_w", "sqrt(sigma_perp^2 + 3 (tau_perp^2 + tau_par^2))", d.Value, "MPa", clauseDirectional)
	s.Step("f_w,Rd", "beta_Lw f_u,b / gamma_M2", e.SRd, "MPa", clauseDirectional)

	put := r.flow(s, ",n", e.Perp.Spot, e.Perp.Flow)
	worst := "({q_nor} + {q_acr}) / (sqrt(2) a)"
	if w.Type == PartialPenetration {
		worst = "max(({q_nor} + {q_acr}) / sqrt(2), {q_nor}, {q_acr}) / a"
	}
	s.Step("sigma_perp,max", put(worst), e.Perp.Value, "MPa", clauseDirectional)
	s.Step("f_n,Rd", "beta_Lw 0.9 f_u / gamma_M2", e.NRd, "MPa", clauseDirectional)

	put = r.flow(s, ",s", e.Simplified.Spot, e.Simplified.Flow)
	s.Step("F_w,Ed", put("sqrt({q_par}^2 + {q_acr}^2 + {q_nor}^2)"), e.Simplified.Value, "N/mm", clauseSimplified)
	s.Step("f_vw,d", "beta_Lw f_u,b / (sqrt(3) gamma_M2)", e.FwRd/r.A, "MPa", clauseSimplified)
	s.Step("F_w,Rd", "f_vw,d a", e.FwRd, "N/mm", clauseSimplified)
	r.deriveBeside(s)
	if e.BetaLw == 0 {
		return
	}
	s.Step("u_d", "sigma_w / f_w,Rd", d.Value/e.SRd, "", clauseDirectional)
	s.Step("u_n", "sigma_perp,max / f_n,Rd", e.Perp.Value/e.NRd, "", clauseDirectional)
	s.Step("u_s", "F_w,Ed / F_w,Rd", e.Simplified.Value/e.FwRd, "", clauseSimplified)
}

// deriveBeside holds the governing flow against the part beside the weld.
func (r *Result) deriveBeside(s *derive.Sheet) {
	b := &r.EC.Beside
	if b.Used == 0 {
		return
	}
	fy, _ := r.in.Weld.Parts[b.Part].strengths()
	put := r.flow(s, ",b", b.Spot, b.Flow)
	s.Given("t_b", r.baseThickness(b.Part), "mm", "governing part, corrosion taken off")
	s.Given("f_y,b", fy, "MPa", "governing part")
	s.Given("k_s", b.Sections, "", "thicknesses over the runs that share them")
	s.Step("r_bv", "f_y,b t_b k_s / (sqrt(3) gamma_M0)", b.Shear, "N/mm", clauseBeside)
	if b.Part == 0 {
		s.Step("r_bn", "f_y,b t_b / (sqrt(3) gamma_M0)", b.Normal, "N/mm", "through the plate; "+clauseBeside)
	} else {
		s.Step("r_bn", "f_y,b t_b k_s / gamma_M0", b.Normal, "N/mm", clauseBeside)
	}
	s.Step("u_b", put("sqrt(({q_par}^2 + {q_acr}^2) / r_bv^2 + ({q_nor} / r_bn)^2)"), b.Used, "", clauseBeside)
}

func (r *Result) deriveFull(s *derive.Sheet) {
	e := &r.EC
	for i, mark := range [2]string{"_1", "_2"} {
		fy, _ := r.in.Weld.Parts[i].strengths()
		s.Given("f_y"+mark, fy, "MPa", "part joined")
	}
	s.Step("f_y", "min(f_y_1, f_y_2)", e.Fy, "MPa", clauseButt)
	r.flow(s, "", e.Full.Spot, e.Full.Flow)
	s.Step("sigma_eq", "sqrt((q_nor / a)^2 + 3 ((q_acr / a)^2 + (q_par / a)^2))", e.Full.Value, "MPa", clauseButt)
	s.Step("sigma_Rd", "f_y / gamma_M0", e.FullRd, "MPa", clauseButt)
	s.Step("u", "sigma_eq / sigma_Rd", e.Full.Value/e.FullRd, "", clauseButt)
}
