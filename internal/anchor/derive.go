package anchor

import (
	"fmt"
	"math"

	"footward.example/footward/internal/derive"
)

// Derive writes the calculation step by step.
func (r *Result) Derive(s *derive.Sheet) {
	if r.reason != "" {
		return
	}
	in := r.in
	if r.ec {
		s.Factor("gamma_Mc", in.Design.EC.GammaC, "EN 1992-4:2018 Table 4.1: gamma_C, gamma_inst 1.0")
		s.Step("k_R", "1 / gamma_Mc", r.Factor, "", "EN 1992-4:2018 4.4.3")
	} else {
		s.Factor("phi_c", phiConcrete, "ACI 318-19 Table 17.5.3, without supplementary reinforcement")
		s.Step("k_R", "phi_c", r.Factor, "", "ACI 318-19 Table 17.5.3")
	}
	s.Given("f_c", in.Block.Concrete.Strength, "MPa", "concrete")
	s.Given("h_ef", in.Embedment, "mm", "embedment")
	s.Given("h", in.Block.Height, "mm", "height of the block")
	s.Given("A_s", r.As, "mm2", "stress area left after corrosion")
	s.Given("d_n", r.D, "mm", "diameter left after corrosion")
	s.Given("f_uk", in.Steel.Fu, "MPa", "rod")
	s.Given("f_yk", in.Steel.Fy, "MPa", "rod")
	r.deriveHead(s)
	if len(r.pulling.rods) > 0 {
		r.deriveTension(s)
	}
	if len(r.pushing.rods) > 0 {
		r.deriveShear(s)
	}
	if r.alone() == "" {
		r.deriveBoth(s)
	}
}

func (r *Result) clause(ec, us string) string {
	if r.ec {
		return ec
	}
	return us
}

func (r *Result) deriveHead(s *derive.Sheet) {
	h := &r.in.Head
	if h.Area > 0 {
		s.Given("A_h", r.Ah, "mm2", "bearing area of the head")
		return
	}
	s.Given("d", r.in.Thread.Diameter, "mm", "rod")
	s.Given("d_head", h.Diameter, "mm", "head")
	s.Given("t_h", h.Thickness, "mm", "head")
	s.Step("d_h", "min(d_head, 6 t_h + d)", min(h.Diameter, 6*h.Thickness+r.in.Thread.Diameter), "mm", "EN 1992-4:2018 7.2.1.5")
	s.Step("A_h", "pi / 4 (d_h^2 - d^2)", r.Ah, "mm2", "geometry")
}

func (r *Result) deriveTension(s *derive.Sheet) {
	t := &r.Steel
	s.Given("N_Ed", r.pulling.force, "N", "tension of the rods together")
	s.Given("N_Ed,1", r.Ft, "N", "rod with the greatest tension")
	steel := steelTension.Clause[r.in.Design.Basis]
	if r.ec {
		s.Step("N_Rk,s", "A_s f_uk", t.NRk, "N", steel)
		s.Step("gamma_Ms,N", "max(1.4, 1.2 f_uk / f_yk)", t.GammaN, "", "EN 1992-4:2018 Table 4.1")
		s.Step("N_Rd,s", "N_Rk,s / gamma_Ms,N", t.NRd, "N", steel)
	} else {
		s.Given("f_u,max", mostFu, "MPa", "ACI 318-19 17.6.1.2")
		s.Factor("phi_N", t.GammaN, "ACI 318-19 Table 17.5.3(a)")
		s.Step("N_Rk,s", "A_s min(f_uk, 1.9 f_yk, f_u,max)", t.NRk, "N", steel)
		s.Step("N_Rd,s", "phi_N N_Rk,s", t.NRd, "N", steel)
	}
	r.deriveCone(s, &r.Cone, &r.breaking, &r.pulling, "N", concreteCone.Clause[r.in.Design.Basis])
	pull := pullOut.Clause[r.in.Design.Basis]
	s.Given("k_2", r.Pull.K, "", r.clause(pull, "8 times psi_c,P; "+pull))
	s.Step("N_Rk,p", "k_2 A_h f_c", r.Pull.NRk, "N", pull)
	s.Step("N_Rd,p", "N_Rk,p k_R", r.Pull.NRd, "N", pull)
	if r.Blow.Applies {
		r.deriveBlow(s)
	}
}

// deriveCone writes a cone; its symbols end with mark.
func (r *Result) deriveCone(s *derive.Sheet, c *Cone, g, all *group, mark, clause string) {
	if some, of := len(g.rods), len(all.rods); some < of {
		s.Given("F_Ed,"+mark, g.force, "N", fmt.Sprintf("force of the %d of %d rods whose cone is used most", some, of))
	}
	s.Given("h_"+mark, c.H, "mm", "embedment that counts beside near edges; "+clause)
	power := "^1.5"
	if c.Power != 1.5 {
		power = "^(5 / 3)"
	}
	s.Given("k_c,"+mark, c.K, "", "for N and mm; "+clause)
	s.Step("N_0,"+mark, "k_c,"+mark+" sqrt(f_c) h_"+mark+power, c.N0, "N", clause)
	s.Step("A_0,"+mark, "(3 h_"+mark+")^2", c.A0, "mm2", clause)
	s.Given("A_c,"+mark, c.A, "mm2", "area of the cones, cut off at the edges; "+clause)
	s.Given("c_"+mark, g.least, "mm", "nearest edge")
	s.Step("psi_s,"+mark, "min(1, 0.7 + 0.3 c_"+mark+" / (1.5 h_"+mark+"))", c.PsiS, "", clause)
	s.Given("e_x,"+mark, g.ex, "mm", "eccentricity of the force")
	s.Given("e_y,"+mark, g.ey, "mm", "eccentricity of the force")
	s.Step("psi_ec,"+mark, "1 / (1 + 2 e_x,"+mark+" / (3 h_"+mark+")) / (1 + 2 e_y,"+mark+" / (3 h_"+mark+"))",
		c.PsiEx*c.PsiEy, "", clause)
	if r.ec {
		s.Step("psi_o,"+mark, "min(1, 0.5 + h_"+mark+" / 200)", c.PsiRe, "", clause)
	} else {
		s.Given("psi_o,"+mark, c.PsiC, "", "uncracked concrete; "+clause)
	}
	s.Step("R_k,"+mark, "N_0,"+mark+" A_c,"+mark+" / A_0,"+mark+" psi_s,"+mark+" psi_ec,"+mark+" psi_o,"+mark, c.NRk, "N", clause)
	s.Step("R_d,"+mark, "R_k,"+mark+" k_R", c.NRd, "N", clause)
}

func (r *Result) deriveBlow(s *derive.Sheet) {
	b, clause := &r.Blow, blowOutState.Clause[r.in.Design.Basis]
	s.Given("N_Ed,cb", b.Force, "N", "tension of the row at the face "+sides[b.Side].name)
	s.Given("c_1", b.C1, "mm", "distance of the row from the face")
	s.Given("c_2", b.C2, "mm", "nearest corner")
	s.Given("n_cb", float64(b.Rods), "", "rods of the row")
	if r.ec {
		k := blowCracked
		if r.in.Uncracked {
			k = blowUncracked
		}
		s.Given("k_5", k, "", clause)
		s.Step("N_0,cb", "k_5 c_1 sqrt(A_h f_c)", b.N0, "N", clause)
		s.Step("A_0,cb", "(4 c_1)^2", b.A0, "mm2", clause)
		s.Given("A_cb", b.A, "mm2", "area on the face; "+clause)
		s.Given("s_cb", b.S, "mm", "greatest step along the face")
		s.Step("psi_s,cb", "min(1, 0.7 + 0.3 c_2 / (2 c_1))", b.PsiS, "", clause)
		s.Step("psi_g,cb", "max(1, sqrt(n_cb) + (1 - sqrt(n_cb)) s_cb / (4 c_1))", b.PsiG, "", clause)
		s.Given("psi_ec,cb", b.PsiEc, "", "eccentricity of the force; "+clause)
		s.Step("N_Rk,cb", "N_0,cb A_cb / A_0,cb psi_s,cb psi_g,cb psi_ec,cb", b.NRk, "N", clause)
	} else {
		s.Given("k_cb", blowOut*r.light(), "", "160 in pounds, inches and psi; "+clause)
		s.Step("N_0,cb", "k_cb c_1 sqrt(A_h f_c)", b.N0, "N", clause)
		s.Given("psi_s,cb", b.PsiS, "", "(1 + c_2/c_1)/4 near a corner; "+clause)
		s.Given("psi_g,cb", b.PsiG, "", "1 and, for each step along the face, the step over 6 c_1, at most 1; "+clause)
		s.Step("N_Rk,cb", "N_0,cb psi_s,cb psi_g,cb", b.NRk, "N", clause)
	}
	s.Step("N_Rd,cb", "N_Rk,cb k_R", b.NRd, "N", clause)
}

func (r *Result) deriveShear(s *derive.Sheet) {
	t, steel := &r.Steel, steelShear.Clause[r.in.Design.Basis]
	s.Given("V_Ed", r.V, "N", "shear of the rods, by magnitude")
	s.Given("V_Ed,1", r.Fv, "N", "rod with the greatest shear")
	s.Given("k_6", t.K6, "", steel)
	s.Given("k_gr", t.KGrout, "", "grout under the plate; "+steel)
	if r.ec {
		s.Step("V_Rk,s", "k_6 k_gr A_s f_uk", t.VRk, "N", steel)
		s.Given("gamma_Ms,V", t.GammaV, "", "EN 1992-4:2018 Table 4.1")
		s.Step("V_Rd,s", "V_Rk,s / gamma_Ms,V", t.VRd, "N", steel)
		if t.Lever.Why != "" {
			r.deriveLever(s)
		}
	} else {
		s.Given("f_u,max", mostFu, "MPa", "ACI 318-19 17.6.1.2")
		s.Factor("phi_V", t.GammaV, "ACI 318-19 Table 17.5.3(a)")
		s.Step("V_Rk,s", "k_6 k_gr A_s min(f_uk, 1.9 f_yk, f_u,max)", t.VRk, "N", steel)
		s.Step("V_Rd,s", "phi_V V_Rk,s", t.VRd, "N", steel)
	}
	clause := pryOut.Clause[r.in.Design.Basis]
	r.deriveCone(s, &r.Pry, &r.prying, &r.pushing, "V", clause)
	s.Given("k_8", r.KPry, "", clause)
	s.Step("V_Rd,cp", "k_8 R_d,V", r.PryRd, "N", clause)
	if r.Edge.Applies {
		r.deriveEdge(s)
	}
}

// deriveLever writes the shear with a lever arm.
func (r *Result) deriveLever(s *derive.Sheet) {
	const where, clause = "EN 1992-4:2018 6.2.2.3", "EN 1992-4:2018 7.2.2.3.2"
	t, l, u := &r.Steel, &r.Steel.Lever, &r.in.Under
	s.Given("t_gr", u.GroutThick, "mm", "grout")
	s.Given("gap", u.Gap, "mm", "clear gap")
	s.Given("t_fix", u.Plate, "mm", "plate as built")
	s.Given("a_3", l.A3, "mm", "0.5 d, or 0 where a nut clamps the rods; "+where)
	if u.Washer > 0 {
		s.Given("t_w,b", u.Washer, "mm", "welded washers, which alone bear on the rods")
		s.Step("e_1", "t_gr + gap + t_fix + t_w,b / 2", l.E1, "mm", where)
	} else {
		s.Step("e_1", "t_gr + gap + t_fix / 2", l.E1, "mm", where)
	}
	s.Step("l_a", "a_3 + e_1", l.Arm, "mm", where+": "+l.Why)
	s.Given("alpha_M", l.AlphaM, "", "1: the plate may turn; 2: it may not; "+where)
	s.Step("W_el", "pi / 32 (4 A_s / pi)^1.5", l.W, "mm3", "stress diameter")
	s.Step("M0_Rk,s", "1.2 W_el f_uk", l.M0, "Nmm", clause)
	s.Given("N_l", l.Ft, "N", "governing rod, tension")
	s.Given("V_l", l.Fv, "N", "governing rod, shear")
	s.Step("gamma_Ms,N", "max(1.4, 1.2 f_uk / f_yk)", t.GammaN, "", "EN 1992-4:2018 Table 4.1")
	s.Step("N_Rd,s", "A_s f_uk / gamma_Ms,N", t.NRd, "N", steelTension.Clause[r.in.Design.Basis])
	s.Step("M_Rk,s", "M0_Rk,s max(0, 1 - N_l / N_Rd,s)", l.M, "Nmm", clause)
	s.Step("V_Rd,s,M", "min(alpha_M M_Rk,s / (l_a gamma_Ms,V), k_6 A_s f_uk / gamma_Ms,V)", l.VRd, "N", clause)
}

func (r *Result) deriveEdge(s *derive.Sheet) {
	e, clause := &r.Edge, concreteEdge.Clause[r.in.Design.Basis]
	s.Given("c_e", e.C1, "mm", "distance of the row from the edge "+sides[e.Side].name+", as it counts; "+clause)
	s.Given("c_k", e.C2, "mm", "nearest corner")
	s.Given("h_ef", r.in.Embedment, "mm", "embedment")
	switch {
	case !r.ec:
		s.Step("l_f", "min(h_ef, 8 d_n)", e.Lf, "mm", clause)
	case r.D > 24:
		s.Step("l_f", "min(h_ef, max(8 d_n, 300))", e.Lf, "mm", clause)
	default:
		s.Step("l_f", "min(h_ef, 12 d_n)", e.Lf, "mm", clause)
	}
	if r.ec {
		k := edgeCracked
		if r.in.Uncracked {
			k = edgeUncracked
		}
		s.Given("k_9", k, "", clause)
		s.Step("alpha", "0.1 (l_f / c_e)^0.5", e.Alpha, "", clause)
		s.Step("beta", "0.1 (d_n / c_e)^0.2", e.Beta, "", clause)
		s.Step("V_0", "k_9 d_n^alpha l_f^beta sqrt(f_c) c_e^1.5", e.V0, "N", clause)
	} else {
		s.Given("k_e1", edgeOne*r.light(), "", "7 in pounds, inches and psi; "+clause)
		s.Given("k_e2", edgeTwo*r.light(), "", "9 in pounds, inches and psi; "+clause)
		s.Step("V_0", "min(k_e1 (l_f / d_n)^0.2 sqrt(d_n), k_e2) sqrt(f_c) c_e^1.5", e.V0, "N", clause)
	}
	s.Step("A_0,e", "4.5 c_e^2", e.A0, "mm2", clause)
	s.Given("A_e", e.A, "mm2", "area on the face, cut off at corners and base; "+clause)
	s.Step("psi_s,e", "min(1, 0.7 + 0.3 c_k / (1.5 c_e))", e.PsiS, "", clause)
	s.Step("psi_h,e", "max(1, sqrt(1.5 c_e / h))", e.PsiH, "", clause)
	s.Given("e_e", e.E, "mm", "eccentricity of the shear along the edge")
	s.Step("psi_ec,e", "1 / (1 + 2 e_e / (3 c_e))", e.PsiEc, "", clause)
	s.Given("V_n", e.Vn, "N", "shear towards the edge")
	s.Given("V_t", e.Vt, "N", "shear along the edge")
	s.Step("V_e", "sqrt(V_n^2 + V_t^2)", math.Hypot(e.Vn, e.Vt), "N", "statics")
	s.Step("psi_a,e", "V_e / sqrt(V_n^2 + (0.5 V_t)^2)", e.PsiA, "", clause)
	s.Given("psi_c,e", e.PsiC, "", "uncracked concrete where ACI 318 has it; "+clause)
	s.Step("V_Rk,c", "V_0 A_e / A_0,e psi_s,e psi_h,e psi_ec,e psi_a,e psi_c,e", e.VRk, "N", clause)
	s.Step("V_Rd,c", "V_Rk,c k_R", e.VRd, "N", clause)
}

func (r *Result) deriveBoth(s *derive.Sheet) {
	clause := both.Clause[r.in.Design.Basis]
	n, v := r.shares()
	s.Given("u_N", n, "", "greatest utilization in tension that counts; "+clause)
	s.Given("u_V", v, "", "greatest utilization in shear that counts; "+clause)
	if r.ec {
		s.Step("u_NV", "min(u_N^1.5 + u_V^1.5, (u_N + u_V) / 1.2)", min(math.Pow(n, 1.5)+math.Pow(v, 1.5), (n+v)/sumACI), "", clause)
		return
	}
	s.Step("u_NV", "(u_N + u_V) / 1.2", (n+v)/sumACI, "", clause)
}
