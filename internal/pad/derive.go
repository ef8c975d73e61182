package pad

import "footward.example/footward/internal/derive"

const (
	statics  = "statics"
	ecPlain  = "EN 1992-1-1:2004+AC (from memory) 12.9.3(1)"
	ecShear  = "EN 1992-1-1:2004 6.2.2(1)"
	ecPunch  = "EN 1992-1-1:2004 6.4.4(2)"
	aciPlain = "ACI 318-19 14.5"
	aciBend  = "ACI 318-19 22.2"
)

// Derive writes the check down.
func (r *Result) Derive(to *derive.Sheet) {
	if r.Scope != "" {
		return
	}
	s, in := to, r.in
	s.Given("B", in.SizeX, "mm", "pad along x")
	s.Given("L", in.SizeY, "mm", "pad along y")
	s.Given("h", in.Thickness, "mm", "pad")
	s.Given("c_x", in.Column.SizeX, "mm", "loaded area along x")
	s.Given("c_y", in.Column.SizeY, "mm", "loaded area along y")
	s.Given("N", in.Actions.N, "N", "tension positive")
	s.Given("W", in.Weight, "N", "pad and soil above")
	r.derivePressure(s)
	if !r.OnPad {
		return
	}
	if in.Design.Basis.US() {
		r.deriveACI(s)
	} else {
		r.deriveEC(s)
	}
}

func (r *Result) derivePressure(s *derive.Sheet) {
	in := r.in
	s.Given("V_x", in.Actions.Vx, "N", "along x")
	s.Given("V_y", in.Actions.Vy, "N", "along y")
	s.Given("M_x,0", in.Actions.Mx, "Nmm", "about x")
	s.Given("M_y,0", in.Actions.My, "Nmm", "about y")
	s.Given("h_a", in.lever(), "mm", "from the underside to where the actions act")
	s.Step("V", "W - N", r.V, "N", statics)
	s.Step("M_x", "abs(M_x,0) + abs(V_y) h_a", r.Mx, "Nmm", statics)
	s.Step("M_y", "abs(M_y,0) + abs(V_x) h_a", r.My, "Nmm", statics)
	if !(r.V > 0) {
		return
	}
	s.Step("e_x", "M_y / V", r.Ex, "mm", statics)
	s.Step("e_y", "M_x / V", r.Ey, "mm", statics)
	s.Step("u_e", "2 max(e_x / B, e_y / L)", r.Share, "", "statics; under 1")
	if !r.OnPad {
		return
	}
	if r.Kern {
		s.Step("k_p", "1 + 6 e_x / B + 6 e_y / L", r.Factor, "", "statics; the whole underside presses")
	} else {
		s.Step("k_x", oneWayText(r.Ex/in.SizeX, "e_x / B"), oneWay(r.Ex/in.SizeX), "", "statics")
		s.Step("k_y", oneWayText(r.Ey/in.SizeY, "e_y / L"), oneWay(r.Ey/in.SizeY), "", "statics")
		s.Step("k_p", "k_x k_y", r.Factor, "", "statics; part of the pad lifts")
	}
	s.Step("p_max", "V / (B L) k_p", r.Gross, "MPa", statics)
	s.Step("p_net", "max(0, p_max - W / (B L))", r.Net, "MPa", "the weight lies evenly and bends nothing")
	if r.Hang > 0 {
		if r.Kern && r.V > 0 {
			s.Step("w_h", "W / (B L) - V / (B L) (2 - k_p)", r.Hang, "MPa", "weight over the least pressure")
		} else {
			s.Step("w_h", "W / (B L)", r.Hang, "MPa", "weight at the edge that lifts")
		}
	}
}

func oneWayText(share float64, e string) string {
	if share <= kern {
		return "1 + 6 " + e
	}
	return "4 / (3 (1 - 2 " + e + "))"
}

// names are how symbols of the two directions end.
var names = [2]struct{ axis, size, column string }{{"x", "B", "c_x"}, {"y", "L", "c_y"}}

func (r *Result) deriveSpan(s *derive.Sheet, i int) {
	a, n := &r.Spans[i], names[i]
	s.Step("a_"+n.axis, "("+n.size+" - "+n.column+") / 2", a.A, "mm", "overhang")
	if r.in.reinforced() {
		s.Given("phi_"+n.axis, a.Bar, "mm", "bars")
		s.Given("s_"+n.axis, a.Gap, "mm", "spacing of the bars")
		s.Step("A_s,"+n.axis, "0.785398 phi_"+n.axis+"^2 / s_"+n.axis, a.As, "mm", "bars per width, mm2/mm")
		s.Given("d_"+n.axis, a.Depth, "mm", "effective depth")
		m := "p_net a_" + n.axis + "^2 / 2"
		if a.Band != 1 {
			m = "2 max(B, L) / (B + L) " + m
		}
		s.Step("m_"+n.axis, m, a.M, "Nmm/mm", "at the face")
	} else {
		s.Step("m_"+n.axis, "p_net a_"+n.axis+"^2 / 2", a.M, "Nmm/mm", "at the face")
	}
	if r.Hang > 0 {
		s.Step("m_t,"+n.axis, "w_h a_"+n.axis+"^2 / 2", a.MTop, "Nmm/mm", "top in tension")
	}
}

func (r *Result) deriveEC(s *derive.Sheet) {
	in, f, ec := r.in, &r.Strength, &r.in.Design.EC
	s.Factor("gamma_C", ec.GammaC, "EN 1992-1-1:2004 2.4.2.4")
	s.Factor("alpha_cc", ec.AlphaCC, "EN 1992-1-1:2004 3.1.6(1)")
	s.Given("f_ck", in.Concrete.Strength, "MPa", "concrete")
	s.Step("f_ctm", "0.3 f_ck^(2 / 3)", f.Fctm, "MPa", "EN 1992-1-1:2004 Table 3.1")
	s.Step("f_ctd", "0.7 f_ctm / gamma_C", f.Fctd, "MPa", "EN 1992-1-1:2004 3.1.6(2)")
	s.Factor("alpha_ct,pl", f.AlphaPl, "EN 1992-1-1:2004 12.3.1")
	s.Step("f_ctd,pl", "alpha_ct,pl f_ctd", f.FctdPl, "MPa", "EN 1992-1-1:2004 12.3.1")
	if in.reinforced() {
		s.Factor("gamma_S", f.GammaS, "EN 1992-1-1:2004 2.4.2.4")
		s.Step("f_cd", "alpha_cc f_ck / gamma_C", f.Fcd, "MPa", "EN 1992-1-1:2004 3.1.6(1)")
		s.Given("f_yk", in.Reinforcement.Yield, "MPa", "bars")
		s.Step("f_yd", "f_yk / gamma_S", f.Fyd, "MPa", "EN 1992-1-1:2004 3.2.7")
		s.Given("c_nom", in.Reinforcement.Cover, "mm", "cover")
		s.Given("l_h", in.Reinforcement.Bend, "mm", "bent up")
	}
	for i := range r.Spans {
		r.deriveSpan(s, i)
		a, x := &r.Spans[i], names[i].axis
		if r.Hang > 0 {
			s.Step("m_pl,"+x, "f_ctd,pl (0.85 h)^2 / 6", a.Plain, "Nmm/mm", "EN 1992-1-1:2004 12.3.1, 12.9.3")
		}
		if !in.reinforced() {
			s.Step("h_F,"+x, "a_"+x+" sqrt(3 p_net / f_ctd,pl) / 0.85", a.Need, "mm", ecPlain)
			s.Step("v_"+x, "p_net a_"+x, a.V, "N/mm", "at the face")
			s.Step("v_Rd,"+x, "f_ctd,pl h / 1.5", a.VRd, "N/mm", "EN 1992-1-1:2004 12.6.3")
			continue
		}
		a.deriveBarsEC(s, x, names[i].column, r.in.Reinforcement.Bend > 0)
	}
	if in.reinforced() {
		r.derivePunchEC(s)
	}
}

func (a *Span) deriveBarsEC(s *derive.Sheet, x, column string, bent bool) {
	s.Step("A_s,max,"+x, "0.8 d_"+x+" f_cd / f_yd 0.0035 / (0.0035 + f_yd / 200000)", a.AsMost, "mm", "bars yield; EN 1992-1-1:2004 6.1")
	as := "min(A_s," + x + ", A_s,max," + x + ")"
	s.Step("m_Rd,"+x, as+" f_yd (d_"+x+" - "+as+" f_yd / (2 f_cd))", a.MRd, "Nmm/mm", "EN 1992-1-1:2004 6.1")
	if a.AsNeed > 0 {
		s.Step("A_s,req,"+x, "f_cd / f_yd (d_"+x+" - sqrt(d_"+x+"^2 - 2 m_"+x+" / f_cd))", a.AsNeed, "mm", "EN 1992-1-1:2004 6.1, turned round")
	}
	s.Step("rho_min,"+x, "max(0.26 f_ctm / f_yk, 0.0013)", a.RhoMin, "", "EN 1992-1-1:2004 9.2.1.1(1)")
	s.Step("rho_"+x, "A_s,"+x+" / d_"+x, a.Rho, "", "bars over effective depth")
	if bent {
		s.Given("x_b,"+x, a.Reach, "mm", "from min(h / 2, a_"+x+") to a_"+x+", where bent bars are used most; EN 1992-1-1:2004 9.8.2.2(5)")
	} else {
		s.Step("x_b,"+x, "min(h / 2, a_"+x+")", a.Reach, "mm", "EN 1992-1-1:2004 9.8.2.2(5)")
	}
	s.Step("F_s,"+x, "p_net x_b,"+x+" (a_"+x+" + 0.15 "+column+" - x_b,"+x+" / 2) / (0.9 d_"+x+")", a.Pull, "N/mm", "EN 1992-1-1:2004 9.8.2.2")
	if a.Bond > 0 { // else nothing pulls the bars
		s.Step("l_bd,"+x, "max(phi_"+x+" / 4 F_s,"+x+" / A_s,"+x+" / (2.25 f_ctd), 10 phi_"+x+", 100)", a.Bond, "mm", "EN 1992-1-1:2004 8.4")
	}
	s.Step("l_has,"+x, "x_b,"+x+" - c_nom + l_h", a.Has, "mm", "EN 1992-1-1:2004 9.8.2.2")
	s.Step("v_"+x, "p_net max(0, a_"+x+" - d_"+x+")", a.V, "N/mm", "at d from the face; EN 1992-1-1:2004 6.2.1(8)")
	s.Step("k_v,"+x, "min(1 + sqrt(200 / d_"+x+"), 2)", a.K, "", ecShear)
	s.Given("rho_l,"+x, a.RhoV, "", "bars that reach l_bd + d beyond the section; EN 1992-1-1:2004 Figure 6.3")
	s.Step("v_Rd,"+x, "max(0.18 / gamma_C k_v,"+x+" (100 rho_l,"+x+" f_ck)^(1 / 3), 0.035 k_v,"+x+"^1.5 sqrt(f_ck)) d_"+x, a.VRd, "N/mm", ecShear)
	s.Step("v_face,"+x, "p_net a_"+x, a.VFace, "N/mm", "at the face")
	s.Step("v_max,"+x, "0.5 d_"+x+" 0.6 (1 - f_ck / 250) f_cd", a.Strut, "N/mm", "EN 1992-1-1:2004 6.2.2(6)")
}

func (r *Result) derivePunchEC(s *derive.Sheet) {
	in, c := r.in, &r.Column
	s.Step("d", "(d_x + d_y) / 2", c.D, "mm", "EN 1992-1-1:2004 6.4.2(1)")
	s.Given("k_t,x", uneven(in.Column.SizeX, in.Column.SizeY), "", "EN 1992-1-1:2004 Table 6.1, moment about y")
	s.Given("k_t,y", uneven(in.Column.SizeY, in.Column.SizeX), "", "EN 1992-1-1:2004 Table 6.1, moment about x")
	s.Given("a_0", 0, "mm", "at the column")
	r.derivePerimeter(s, c, "0")
	s.Step("v_Rd,max", "0.4 0.6 (1 - f_ck / 250) f_cd", c.R, "MPa", "EN 1992-1-1:2004+A1:2014 6.4.5(3) (from memory)")
	if r.PunchSkip != "" {
		return
	}
	p := &r.Punch
	s.Given("a_u", p.A, "mm", "the perimeter within 2 d that is used most")
	r.derivePerimeter(s, p, "u")
	s.Step("k_v", "min(1 + sqrt(200 / d), 2)", p.K, "", ecPunch)
	s.Step("rho", "min(sqrt(rho_x rho_y), 0.02)", p.Rho, "", ecPunch)
	s.Step("v_Rd", "max(0.18 / gamma_C k_v (100 rho f_ck)^(1 / 3), 0.035 k_v^1.5 sqrt(f_ck)) 2 d / a_u", p.R, "MPa", ecPunch)
}

func (r *Result) derivePerimeter(s *derive.Sheet, p *Perimeter, n string) {
	if !(p.U > 0) {
		return
	}
	s.Step("u_"+n, "2 (c_x + c_y) + 6.283185 a_"+n, p.U, "mm", "EN 1992-1-1:2004 6.4.2")
	s.Step("A_"+n, "c_x c_y + 2 (c_x + c_y) a_"+n+" + 3.141593 a_"+n+"^2", p.Area, "mm2", "EN 1992-1-1:2004 6.4.2")
	r.deriveForce(s, p, n)
	s.Step("v_e,"+n, "p_net max(0, B L - A_"+n+") / (u_"+n+" d)", p.Even, "MPa", "greatest pressure outside the perimeter")
	s.Step("W_x,"+n, "c_x^2 / 2 + c_x c_y + 2 c_y a_"+n+" + 4 a_"+n+"^2 + 3.141593 a_"+n+" c_x", perimeterModulus(r.in.Column.SizeX, r.in.Column.SizeY, p.A), "mm2", "EN 1992-1-1:2004 6.4.3(3)")
	s.Step("W_y,"+n, "c_y^2 / 2 + c_x c_y + 2 c_x a_"+n+" + 4 a_"+n+"^2 + 3.141593 a_"+n+" c_y", perimeterModulus(r.in.Column.SizeY, r.in.Column.SizeX, p.A), "mm2", "EN 1992-1-1:2004 6.4.3(3)")
	s.Step("v_t,"+n, "V_"+n+" / (u_"+n+" d) + k_t,x M_y / (W_x,"+n+" d) + k_t,y M_x / (W_y,"+n+" d)", p.Turn, "MPa", "EN 1992-1-1:2004 6.4.3(3), 6.4.4(2)")
	s.Step("v_Ed,"+n, "max(v_e,"+n+", v_t,"+n+")", p.V, "MPa", "the greater counts")
}

func (r *Result) deriveForce(s *derive.Sheet, p *Perimeter, n string) {
	if r.Kern {
		s.Step("V_"+n, "max(0, 0 - N) max(0, 1 - A_"+n+" / (B L))", p.Force, "N", "less the mean pressure inside")
		return
	}
	s.Step("V_"+n, "max(0, 0 - N)", p.Force, "N", "not reduced where the pad lifts")
}

func (r *Result) factors(s *derive.Sheet) {
	if r.in.reinforced() {
		s.Factor("phi_b", phiBend, "ACI 318-19 Table 21.2.2")
		s.Factor("phi_v", phiShear, "ACI 318-19 Table 21.2.1(b)")
	}
	if !r.in.reinforced() || r.Hang > 0 {
		s.Factor("phi_p", phiPlainACI, "ACI 318-19 Table 21.2.1")
	}
}
