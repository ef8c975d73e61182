package pin

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
)

// Derive writes the calculation step by step.
func (r *Result) Derive(s *derive.Sheet) {
	in, l := r.in, &r.in.Layout
	s.Given("N", in.Actions.N, "N", "tension positive")
	s.Given("V", in.Actions.V, "N", "across the grain")
	s.Given("M", in.Actions.M, "Nmm", "about the axis of the pins")
	s.Given("N_j", r.Nj, "N", "what the pins carry of N: none of the compression where the end bears")
	s.Given("d", in.Pin.Diameter, "mm", "pin")
	s.Given("f_u", in.Pin.Fu, "MPa", "pin")
	s.Given("f_y", in.Pin.Fy, "MPa", "pin")
	s.Given("d_0", in.Plates.Hole, "mm", "hole of the plates")
	s.Given("t_s", r.net(), "mm", "plate, corrosion taken off")
	s.Given("c", in.Plates.Gap, "mm", "gap between plate and timber")
	if e := in.Plates.Eccentricity; e > 0 {
		s.Given("e_a", e, "mm", "eccentricity of the actions along the pins")
		s.Given("x_p", in.apart(), "mm", "inner face of a plate from the middle between the plates")
		s.Step("k_e", "1 + e_a / x_p", r.Uneven, "", "statics: twice the share of the nearer plate")
	}
	s.Given("m_r", float64(l.Rows), "", "rows")
	s.Given("n_r", float64(l.InRow), "", "pins in a row")
	s.Given("a_1", l.SpacingAlong, "mm", "spacing along the grain; 0: none")
	s.Given("a_2", l.SpacingAcross, "mm", "spacing across the grain; 0: none")
	s.Given("a_3", l.EndDistance, "mm", "distance to the column's end")
	s.Given("a_4", l.EdgeDistance, "mm", "distance to the column's edge")
	s.Given("b", in.Timber.AlongPin, "mm", "column along the pins")
	s.Given("h", in.Timber.AcrossPin, "mm", "column across the pins")
	s.Given("b_t", r.Timber.Width, "mm", "its width without the slot")
	r.deriveFactors(s)
	if r.Loaded && r.Unshared == "" {
		r.derivePin(s)
	}
	r.deriveTimber(s)
	r.derivePlates(s)
}

// uneven writes a share that counts k_e times.
func (r *Result) uneven(formula string) string {
	if r.in.Plates.Eccentricity == 0 {
		return formula
	}
	return "k_e (" + formula + ")"
}

func (r *Result) clause(ec, us string) string {
	if r.ec {
		return ec
	}
	return us
}

func (r *Result) deriveFactors(s *derive.Sheet) {
	t := &r.Timber
	switch r.in.Design.Basis {
	case basis.Eurocode:
		s.Factor("k_mod", t.Kmod, "EN 1995-1-1:2004 Table 3.1")
		s.Factor("gamma_Mc", t.GammaC, "EN 1995-1-1:2004 Table 2.3, connections")
		s.Factor("gamma_Mt", t.GammaM, "EN 1995-1-1:2004 Table 2.3, timber")
		s.Factor("gamma_M0", r.in.Design.EC.GammaM0, "EN 1993-1-1:2005 6.1(1)")
		s.Factor("gamma_M1", r.in.Design.EC.GammaM1, "EN 1993-1-1:2005 6.1(1)")
		s.Factor("gamma_M2", r.in.Design.EC.GammaM2, "EN 1993-1-8:2005 Table 2.1")
	case basis.USLRFD:
		s.Factor("lambda", t.Lambda, "NDS 2018 Table N3")
		s.Factor("C_M", t.CM, "NDS 2018 Table 11.3.3")
		s.Factor("K_F", ndsConnection.kf, "NDS 2018 Table N1, connections")
		s.Factor("phi_z", ndsConnection.phi, "NDS 2018 Table N2, connections")
		s.Factor("phi_r", basis.Rupture.Phi, "AISC 360-22 J3.7, J3.11, D2")
		s.Factor("phi_y", basis.Flexure.Phi, "AISC 360-22 F1, D2, E1")
	default:
		s.Factor("C_D", t.CD, "NDS 2018 Table 2.3.2")
		s.Factor("C_M", t.CM, "NDS 2018 Table 11.3.3")
		s.Factor("Omega_r", basis.Rupture.Omega, "AISC 360-22 J3.7, J3.11, D2")
		s.Factor("Omega_y", basis.Flexure.Omega, "AISC 360-22 F1, D2, E1")
	}
}

// available writes a nominal strength of steel as it may be used; mark is r for
// rupture, y for yielding.
func (r *Result) available(formula, mark string) string {
	if r.in.Design.Basis == basis.USLRFD {
		return "phi_" + mark + " " + formula
	}
	return formula + " / Omega_" + mark
}

func (r *Result) deriveTimber(s *derive.Sheet) {
	t, in := &r.Timber, r.in
	s.Given("d_h", t.Hole, "mm", "hole of the timber")
	s.Given("f_t,0", in.Timber.Tension, "MPa", "timber, tension along the grain")
	s.Given("f_v", in.Timber.Shear, "MPa", "timber, shear")
	if r.ec {
		s.Step("f_t,d", "k_mod f_t,0 / gamma_Mt", t.Ft, "MPa", clauseDesign)
	} else {
		r.adjusted(s, "f_t,d", "f_t,0", t.Ft, "t", &ndsTension)
		r.adjusted(s, "f_v,d", "f_v", t.Fv, "v", &ndsShear)
	}
	s.Step("A_t", "b_t max(0, h - m_r d_h)", t.Net, "mm2", "geometry")
	s.Step("R_t", "f_t,d A_t", t.Tension, "N", r.clause(clauseNetEC, clauseNetUS))
	if r.End > 0 {
		s.Given("f_c,0", in.Timber.Compression, "MPa", "timber, compression along the grain")
		if r.ec {
			s.Step("f_c,d", "k_mod f_c,0 / gamma_Mt", t.Fc, "MPa", clauseDesign)
		} else {
			r.adjusted(s, "f_c,d", "f_c,0", t.Fc, "c", &ndsCompression)
		}
		s.Step("R_c", "f_c,d b_t h", t.Bearing, "N", r.clause(clauseEndEC, clauseEndUS))
		s.Step("u_c", "abs(N) / R_c", r.End/t.Bearing, "", r.clause(clauseEndEC, clauseEndUS))
	}
	if r.Shear > 0 && r.Unshared == "" {
		s.Given("F_90", r.Shear, "N", "greatest sum of the pins' forces across the grain, level by level from either end")
		s.Step("h_e", "(m_r - 1) a_2 + a_4", t.He, "mm", "geometry")
		if r.ec {
			s.Step("f_v,d", "k_mod f_v / gamma_Mt", t.Fv, "MPa", clauseDesign)
			s.Given("k_cr", cracked, "", "EN 1995-1-1:2004+A1:2008 6.1.7(2)")
			s.Step("F_90,Rd", "min(14 b_t sqrt(h_e / (1 - h_e / h)) k_mod / gamma_Mc, 2 / 3 k_cr b_t h f_v,d)", t.Split, "N", clauseSplitEC)
		} else {
			s.Step("F_90,Rd", "2 / 3 f_v,d b_t h_e (h_e / h)^2", t.Split, "N", clauseSplitUS)
		}
	}
	if t.Out > 0 {
		r.deriveBlock(s)
	}
}

// adjusted writes a reference design value of NDS as it may be used.
func (r *Result) adjusted(s *derive.Sheet, symbol, from string, value float64, mark string, f *strength) {
	s.Factor("C_M,"+mark, r.moisture(f), "NDS Supplement 2018 Tables 4A, 5A (not compared with the printed edition)")
	if r.in.Design.Basis == basis.USASD {
		s.Step(symbol, from+" C_M,"+mark+" C_D", value, "MPa", "NDS 2018 4.3, 5.3")
		return
	}
	s.Factor("K_F,"+mark, f.kf, "NDS 2018 Table N1")
	s.Factor("phi_"+mark, f.phi, "NDS 2018 Table N2")
	s.Step(symbol, from+" C_M,"+mark+" K_F,"+mark+" phi_"+mark+" lambda", value, "MPa", "NDS 2018 4.3, 5.3, Appendix N")
}

func (r *Result) deriveBlock(s *derive.Sheet) {
	t, clause := &r.Timber, r.clause(clauseBlockEC, clauseBlockUS)
	s.Given("m_b", float64(t.Out), "", "rows that shear out together, of those that pull most, where it is worst")
	s.Step("F_0", r.ofLines("m_b n_r", "N_j", "a_2 (m_r - m_b)"), t.Pull, "N", clauseShare)
	s.Step("L_t", "(m_b - 1) max(0, a_2 - d_h)", t.Lt, "mm", "geometry")
	if !r.ec {
		critical := "a_3"
		if r.in.Layout.InRow > 1 {
			critical = "min(a_1, a_3)"
		}
		s.Step("Z_RT", "n_r f_v,d b_t "+critical, t.TearRow, "N", clause)
		s.Step("F_0,Rd", "Z_RT + f_t,d b_t L_t", t.Block, "N", clause)
		return
	}
	s.Step("L_v", "2 ((n_r - 1) max(0, a_1 - d_h) + max(0, a_3 - d_h / 2))", t.Lv, "mm", clause)
	if t.Straight {
		s.Step("A_v", "L_v b_t", t.Lv*t.Width, "mm2", clause)
	} else {
		s.Given("t_ef", t.Tef, "mm", clause+", (A.7)")
		s.Step("A_v", "min(L_v b_t, L_v (L_t + 2 t_ef))", t.Lv*r.wide(t.Out), "mm2", clause)
	}
	s.Step("F_0,Rd", "max(1.5 L_t b_t f_t,0, 0.7 A_v f_v) k_mod / gamma_Mc", t.Block, "N", clause)
}

func (r *Result) derivePlates(s *derive.Sheet) {
	p, in := &r.Steel, r.in
	s.Given("f_yp", p.Fy, "MPa", "plate")
	s.Given("f_up", p.Fu, "MPa", "plate")
	s.Given("w", in.Plates.Width, "mm", "width of a plate")
	s.Given("n_s", p.Count, "", "plates")
	s.Given("L", in.Plates.Arm, "mm", "middle of the pins above the foot of the plates")
	s.Step("A_p", "n_s t_s w", p.A, "mm2", "geometry")
	hole := "d_0"
	if !r.ec {
		hole = "(d_0 + 25.4 / 16)"
	}
	s.Step("A_p,net", "n_s t_s max(0, w - m_r "+hole+")", p.Anet, "mm2", "geometry")
	s.Given("W_p", p.W, "mm3", "section modulus at the pins, holes taken off")
	s.Step("N_p,E", r.uneven("abs(N_j)"), p.N, "N", "statics")
	s.Step("M_p,E", r.uneven("abs(M) + abs(V) L"), p.M, "Nmm", "statics")
	if r.ec {
		s.Step("R_y", "A_p f_yp / gamma_M0", p.Yield, "N", clausePlateNetEC)
		s.Step("R_u", "0.9 A_p,net f_up / gamma_M2", p.Rupture, "N", clausePlateNetEC)
	} else {
		s.Step("R_y", r.available("f_yp A_p", "y"), p.Yield, "N", clausePlateNetUS)
		s.Step("R_u", r.available("f_up A_p,net", "r"), p.Rupture, "N", clausePlateNetUS)
	}
	r.deriveBuckling(s)
	if p.Anet > 0 && p.W > 0 {
		chi := ""
		if r.Nj < 0 {
			chi = "chi "
		}
		s.Step("sigma", "N_p,E / ("+chi+"A_p,net) + M_p,E / (chi_LT W_p)", p.Stress, "MPa", r.clause(clausePlateEC, clausePlateUS))
	}
	switch {
	case r.ec && r.buckles():
		s.Step("f_d", "f_yp / max(gamma_M0, gamma_M1)", p.Allowed, "MPa", clausePlateEC)
	case r.ec:
		s.Step("f_d", "f_yp / gamma_M0", p.Allowed, "MPa", clausePlateEC)
	default:
		s.Step("f_d", r.available("f_yp", "y"), p.Allowed, "MPa", clausePlateUS)
	}
	if r.Loaded && r.Unshared == "" {
		r.deriveHoles(s)
		r.deriveTearing(s)
	}
	s.Given("e_has", p.Has, "mm", "tightest distance of the holes")
	s.Given("e_min", p.Needs, "mm", pattern.Clause[in.Design.Basis])
}

func (r *Result) deriveBuckling(s *derive.Sheet) {
	p := &r.Steel
	s.Given("K", p.K, "", "of the plates' length: 2 as cantilevers, 1 where their heads are kept upright or the foot is held")
	s.Step("L_k", "K L", p.K*r.in.Plates.Arm, "mm", "length of buckling out of the plates' plane")
	if !r.ec {
		s.Given("E_s", modulusUS, "MPa", "AISC 360-22")
		s.Step("chi_LT", "min(1, 1.9 E_s t_s^2 / (L_k w f_yp))", p.ChiLT, "", "AISC 360-22 F11.2")
		if r.Nj < 0 {
			s.Step("r_e", "12 f_yp L_k^2 / (pi^2 E_s t_s^2)", p.Lambda, "", "AISC 360-22 (E3-4)")
			formula := "0.658^r_e"
			if p.Lambda > euler {
				formula = "0.877 / r_e"
			}
			s.Step("chi", formula, p.Chi, "", clauseBuckleUS)
			s.Step("R_b", r.available("chi f_yp A_p", "y"), p.Buckle, "N", clauseBuckleUS)
		}
		return
	}
	s.Given("E_s", steelModulus, "MPa", "EN 1993-1-1:2005 3.2.6")
	s.Step("lambda_LT", "sqrt(L_k w f_yp / (t_s^2 E_s pi sqrt(81 / 210)))", p.LambLT, "", "EN 1993-1-1:2005 6.3.2.2")
	r.deriveCurve(s, "LT", p.LambLT, imperfectLT, p.ChiLT)
	if r.Nj < 0 {
		s.Step("lambda_b", "L_k sqrt(12) / t_s sqrt(f_yp / E_s) / pi", p.Lambda, "", clauseBuckleEC)
		r.deriveCurve(s, "b", p.Lambda, imperfect, p.Chi)
		s.Step("chi", "chi_b", p.Chi, "", clauseBuckleEC)
		s.Step("R_b", "A_p f_yp min(chi / gamma_M1, 1 / gamma_M0)", p.Buckle, "N", clauseBuckleEC)
	}
}

func (r *Result) deriveCurve(s *derive.Sheet, mark string, lambda, alpha, chi float64) {
	const clause = "EN 1993-1-1:2005 (6.49), (6.56)"
	if lambda <= noBuckling {
		s.Given("chi_"+mark, 1, "", "slenderness up to 0.2; "+clause)
		return
	}
	s.Given("alpha_"+mark, alpha, "", "EN 1993-1-1:2005 Tables 6.1, 6.3")
	s.Step("Phi_"+mark, "0.5 (1 + alpha_"+mark+" (lambda_"+mark+" - 0.2) + lambda_"+mark+"^2)",
		0.5*(1+alpha*(lambda-noBuckling)+lambda*lambda), "", clause)
	s.Step("chi_"+mark, "min(1, 1 / (Phi_"+mark+" + sqrt(Phi_"+mark+"^2 - lambda_"+mark+"^2)))", chi, "", clause)
}

func (r *Result) deriveHoles(s *derive.Sheet) {
	p, in := &r.Steel, r.in
	s.Given("F_most", r.Most, "N", "greatest force on a pin")
	s.Step("F_p", "F_most / n_s", p.Share, "N", "on one plate")
	if r.ec {
		s.Given("alpha_b", p.Alpha, "", "direction that governs; "+clauseHoleEC)
		s.Given("k_1", p.K1, "", clauseHoleEC)
		s.Step("F_b,Rd", "k_1 alpha_b f_up d t_s / gamma_M2", p.Table34, "N", clauseHoleEC)
		if in.Pin.Kind == Dowel {
			s.Step("F_b,Rd,p", "1.5 d t_s min(f_yp, f_y) / gamma_M0", p.Pin310, "N", "EN 1993-1-8:2005 Table 3.10")
			s.Step("F_s,Rd", "0.6 pi / 4 d^2 f_u / gamma_M2", p.Cut, "N", clausePinEC)
		} else {
			s.Step("F_s,Rd", "0.5 0.72 pi / 4 d^2 f_u / gamma_M2", p.Cut, "N", clausePinEC)
		}
	} else {
		s.Step("F_b,Rd", r.available("2.4 d t_s f_up", "r"), p.Hole, "N", clauseHoleUS)
		s.Given("l_c", p.Lc, "mm", "least clear distance")
		s.Step("F_o,Rd", r.available("1.2 l_c t_s f_up", "r"), p.Tear, "N", clauseHoleUS)
		s.Step("F_s,Rd", r.available("0.45 pi / 4 d^2 f_u", "r"), p.Cut, "N", clausePinUS)
	}
	s.Step("F_s", "F_most / 2", p.Plane, "N", "on a shear plane")
	if in.Plates.Gap == 0 || r.reason != "" {
		return
	}
	s.Given("q_d", p.Q, "N/mm", "what the timber resists per length, at the worst angle")
	s.Given("x_q", p.Block, "mm", "F_s over q_d, within the timber")
	arm := "(t_s + x_q) / 2 + c"
	if in.Plates.Arrangement == Inside {
		arm = "t_s / 4 + x_q / 2 + c"
	}
	clause := gap.Clause[in.Design.Basis]
	s.Step("l_b", arm, p.Arm, "mm", clause)
	s.Step("M_g", "F_s l_b", p.Bend, "Nmm", clause)
	if r.ec {
		s.Step("M_Rd", "1.5 pi d^3 / 32 f_y / gamma_M0", p.BendRd, "Nmm", clause)
	} else {
		s.Step("M_Rd", r.available("f_y min(d^3 / 6, 1.6 pi d^3 / 32)", "y"), p.BendRd, "Nmm", clause)
	}
	s.Step("u_g", "(M_g / M_Rd)^2 + (F_s / F_s,Rd)^2", p.Sum, "", clause)
}
