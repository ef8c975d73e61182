package pad

import "footward.example/footward/internal/derive"

func (r *Result) deriveACI(s *derive.Sheet) {
	in, f := r.in, &r.Strength
	r.factors(s)
	s.Given("f'c", in.Concrete.Strength, "MPa", "concrete")
	s.Given("psi", psi, "MPa", "1 psi")
	s.Step("r_c", "sqrt(f'c psi)", f.Root, "MPa", "sqrt(f'c) of psi and in psi")
	if in.reinforced() {
		s.Given("f_y", in.Reinforcement.Yield, "MPa", "bars")
		s.Given("beta_1", f.BetaOne, "", "ACI 318-19 22.2.2.4.3")
		s.Given("c_c", in.Reinforcement.Cover, "mm", "cover")
	}
	if !in.reinforced() || r.Hang > 0 {
		s.Step("h_n", "max(0, h - 50.8)", positive(f.Counts), "mm", "cast against soil; ACI 318-19 14.5.1.7")
	}
	for i := range r.Spans {
		r.deriveSpan(s, i)
		a, x := &r.Spans[i], names[i].axis
		if !in.reinforced() || r.Hang > 0 {
			s.Step("m_n,"+x, "phi_p 5 r_c h_n^2 / 6", a.Plain, "Nmm/mm", aciPlain)
		}
		if in.reinforced() {
			r.deriveBarsACI(s, a, x)
			continue
		}
		s.Step("v_"+x, "p_net max(0, a_"+x+" - h_n)", a.V, "N/mm", "at h from the face; ACI 318-19 13.2.7.2")
		s.Step("v_n,"+x, "phi_p 4 / 3 r_c h_n", a.VRd, "N/mm", aciPlain)
	}
	if r.PunchSkip == "" {
		r.derivePunchACI(s)
	}
}

func (r *Result) deriveBarsACI(s *derive.Sheet, a *Span, x string) {
	s.Step("A_s,max,"+x, "0.85 f'c beta_1 / f_y d_"+x+" 0.003 / (0.006 + f_y / 200000)", a.AsMost, "mm", "tension-controlled; ACI 318-19 21.2.2")
	as := "min(A_s," + x + ", A_s,max," + x + ")"
	s.Step("m_n,b,"+x, "phi_b "+as+" f_y (d_"+x+" - "+as+" f_y / (1.7 f'c))", a.MRd, "Nmm/mm", aciBend)
	if a.AsNeed > 0 {
		s.Step("A_s,req,"+x, "0.85 f'c / f_y (d_"+x+" - sqrt(d_"+x+"^2 - 2 m_"+x+" / (phi_b 0.85 f'c)))", a.AsNeed, "mm", "ACI 318-19 22.2, turned round")
	}
	s.Step("rho_g,"+x, "A_s,"+x+" / h", a.Rho, "", "at least 0.0018; ACI 318-19 8.6.1.1")
	s.Given("l_d,"+x, a.Bond, "mm", "ACI 318-19 25.4.2.3, 25.4.10.1, not under 12 in")
	s.Step("l_has,"+x, "a_"+x+" - c_c", a.Has, "mm", "from the face; ACI 318-19 13.2.8")
	s.Step("v_"+x, "p_net max(0, a_"+x+" - d_"+x+")", a.V, "N/mm", "at d from the face; ACI 318-19 13.2.7.2")
	s.Given("lambda_s,"+x, a.K, "", "size effect; ACI 318-19 22.5.5.1.3, 13.2.6.2")
	s.Step("rho_w,"+x, "A_s,"+x+" / d_"+x, a.RhoV, "", "bars over effective depth")
	s.Step("v_c,"+x, "phi_v min(8 lambda_s,"+x+" rho_w,"+x+"^(1 / 3), 5) r_c d_"+x, a.VRd, "N/mm", "ACI 318-19 22.5.5.1")
}

func (r *Result) derivePunchACI(s *derive.Sheet) {
	in, p := r.in, &r.Punch
	if in.reinforced() {
		s.Step("d", "(d_x + d_y) / 2", p.D, "mm", "both layers")
	} else {
		s.Step("d", "h_n", p.D, "mm", "plain concrete")
	}
	if !(p.U > 0) {
		return // no depth is left that counts
	}
	s.Step("b_x", "c_x + d", in.Column.SizeX+p.D, "mm", "ACI 318-19 22.6.4.1")
	s.Step("b_y", "c_y + d", in.Column.SizeY+p.D, "mm", "ACI 318-19 22.6.4.1")
	s.Step("b_o", "2 (b_x + b_y)", p.U, "mm", "ACI 318-19 22.6.4.1")
	s.Step("A_o", "b_x b_y", p.Area, "mm2", "inside the perimeter")
	r.deriveForce(s, p, "o")
	s.Step("v_e", "p_net max(0, B L - A_o) / (b_o d)", p.Even, "MPa", "greatest pressure outside the perimeter")
	s.Step("g_x", "1 - 1 / (1 + 2 / 3 sqrt(b_x / b_y))", gamma(in.Column.SizeX+p.D, in.Column.SizeY+p.D), "", "ACI 318-19 8.4.4.2.2, moment about y")
	s.Step("g_y", "1 - 1 / (1 + 2 / 3 sqrt(b_y / b_x))", gamma(in.Column.SizeY+p.D, in.Column.SizeX+p.D), "", "ACI 318-19 8.4.4.2.2, moment about x")
	s.Step("J_x", "d b_x^3 / 6 + b_x d^3 / 6 + d b_y b_x^2 / 2", polar(in.Column.SizeX+p.D, in.Column.SizeY+p.D, p.D), "mm4", "ACI 318-19 8.4.4.2.3")
	s.Step("J_y", "d b_y^3 / 6 + b_y d^3 / 6 + d b_x b_y^2 / 2", polar(in.Column.SizeY+p.D, in.Column.SizeX+p.D, p.D), "mm4", "ACI 318-19 8.4.4.2.3")
	s.Step("v_t", "V_o / (b_o d) + g_x M_y b_x / (2 J_x) + g_y M_x b_y / (2 J_y)", p.Turn, "MPa", "ACI 318-19 8.4.4.2.3")
	s.Step("v_u", "max(v_e, v_t)", p.V, "MPa", "the greater counts")
	s.Step("beta", "max(c_x, c_y) / min(c_x, c_y)", max(in.Column.SizeX, in.Column.SizeY)/min(in.Column.SizeX, in.Column.SizeY), "", "loaded area")
	if !in.reinforced() {
		s.Step("v_n", "phi_p min(1 + 2 / beta, 2) 4 / 3 r_c", p.R, "MPa", "ACI 318-19 Table 14.5.5.1")
		return
	}
	s.Given("lambda_s", p.K, "", "size effect; ACI 318-19 22.6.5.2, 13.2.6.2")
	s.Step("v_c", "phi_v min(4, 2 + 4 / beta, 2 + 40 d / b_o) lambda_s r_c", p.R, "MPa", "ACI 318-19 22.6.5.2")
}
