package bearing

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
)

// Derive writes the calculation step by step.
func (r *Result) Derive(s *derive.Sheet) {
	in := r.in
	s.Given("B", in.SizeX, "mm", "contact along x")
	s.Given("L", in.SizeY, "mm", "contact along y")
	s.Given("N_Ed", in.Actions.N, "N", "tension positive")
	if !r.Compressed {
		factors(in, &r.Timber, s)
		return
	}
	s.Given("M_x", in.Actions.Mx, "Nmm", "about x")
	s.Given("M_y", in.Actions.My, "Nmm", "about y")
	s.Step("P", "-N_Ed", r.P, "N", "compression")
	s.Step("e_x", "M_y / P", r.Ex, "mm", "statics")
	s.Step("e_y", "-M_x / P", r.Ey, "mm", "statics")
	s.Step("u_e", "max(2 abs(e_x) / B, 2 abs(e_y) / L)", r.Ratio, "", "statics; at most 1")
	if !r.OnBase {
		factors(in, &r.Timber, s)
		return
	}
	s.Step("b_0", "B - 2 abs(e_x)", r.X, "mm", "effective area, centred on the resultant")
	s.Step("l_0", "L - 2 abs(e_y)", r.Y, "mm", "effective area, centred on the resultant")
	s.Step("A_0", "b_0 l_0", r.A, "mm2", "effective area")
	factors(in, &r.Timber, s)
	switch in.Medium {
	case Concrete:
		r.Concrete.derive(in, s, " + e_")
		if in.Design.Basis.US() {
			s.Step("u", "P / R_c", r.P/r.Concrete.Rc, "", clauseJ8)
			return
		}
		s.Step("u_c", "P / F_Rdu", r.P/r.Concrete.FRdu, "", clausePartial)
		s.Step("sigma_Ed", "P / A_0", r.Q, "MPa", clauseJoint)
		s.Step("u_j", "sigma_Ed / f_jd", r.Q/r.Concrete.Fjd, "", clauseJoint)
	case Timber:
		r.Timber.derive(in, s)
		s.Step("u", "P / R_t", r.P/r.Timber.Capacity, "", timberClause(in))
	default:
		s.Given("p", in.Given.Pressure, "MPa", in.Given.from())
		s.Step("sigma_Ed", "P / A_0", r.Q, "MPa", "statics")
		s.Step("u", "sigma_Ed / p", r.Q/in.Given.Pressure, "", "statics")
	}
}

// Derive writes where the available pressure comes from, over the whole contact
// area b_0 by l_0.
func (st *Strength) Derive(s *derive.Sheet) {
	in := st.in
	s.Given("b_0", in.SizeX, "mm", "contact along x")
	s.Given("l_0", in.SizeY, "mm", "contact along y")
	s.Step("A_0", "b_0 l_0", in.SizeX*in.SizeY, "mm2", "contact area")
	factors(in, &st.Timber, s)
	switch in.Medium {
	case Concrete:
		st.Concrete.derive(in, s, "")
	case Timber:
		st.Timber.derive(in, s)
		s.Step("p", "R_t / A_0", st.Pressure, "MPa", st.Clause)
	default:
		s.Given("p", st.Pressure, "MPa", in.Given.from())
	}
}

func factors(in *Input, t *TimberStrength, s *derive.Sheet) {
	f := &in.Design.EC
	switch b := in.Design.Basis; {
	case in.Medium == Concrete && b == basis.Eurocode:
		s.Factor("gamma_C", f.GammaC, "EN 1992-1-1:2004 2.4.2.4")
		s.Factor("alpha_cc", f.AlphaCC, "EN 1992-1-1:2004 3.1.6(1)")
		s.Factor("beta_j", f.BetaJ, clauseJoint)
	case in.Medium == Concrete && b == basis.USLRFD:
		s.Factor("phi_c", basis.ConcreteBearing.Phi, clauseJ8)
	case in.Medium == Concrete:
		s.Factor("Omega_c", basis.ConcreteBearing.Omega, clauseJ8)
	case in.Medium == Timber && b == basis.Eurocode && t.GammaM > 0:
		s.Factor("gamma_M", t.GammaM, "EN 1995-1-1:2004 Table 2.3")
		s.Factor("k_mod", t.Kmod, "EN 1995-1-1:2004 Table 3.1")
	case in.Medium == Timber && b == basis.USLRFD && t.Phi > 0:
		s.Factor("phi_t", t.Phi, "NDS 2018 Table N2")
	}
}

// deriveScale writes by how much the loaded area grows within the block; off, with the
// axis behind it, is what the area stands off the middle of the contact.
func (c *ConcreteStrength) deriveScale(in *Input, s *derive.Sheet, grows, off, clause string) {
	b := &in.Block
	s.Given("h_c", b.Height, "mm", "height of the block")
	for _, a := range [...]struct {
		axis, side, of     string
		size, stands, room float64
	}{{"x", "B_c", "b_0", b.SizeX, b.OffsetX, c.RoomX}, {"y", "L_c", "l_0", b.SizeY, b.OffsetY, c.RoomY}} {
		s.Given(a.side, a.size, "mm", "block along "+a.axis)
		s.Given("o_"+a.axis, a.stands, "mm", "plate off the middle of the block")
		away := "o_" + a.axis
		if off != "" {
			away += off + a.axis
		}
		s.Step("g_"+a.axis, "min("+a.side+" - 2 abs("+away+"), "+a.of+" + "+grows+")", a.room, "mm", "to which it may grow about its middle")
	}
	s.Step("k_A", "min(g_x / b_0, g_y / l_0)", c.Scale, "", clause)
}

func (c *ConcreteStrength) derive(in *Input, s *derive.Sheet, off string) {
	if in.Design.Basis.US() {
		s.Given("f'c", in.Block.Concrete.Strength, "MPa", "concrete")
		c.deriveScale(in, s, "4 h_c", off, "sqrt(A2/A1), similar and concentric within the block; ACI 318-19 22.8.3.2")
		s.Step("P_p", "0.85 f'c A_0 min(k_A, 2)", c.Pp, "N", clauseJ8)
		if in.Design.Basis == basis.USLRFD {
			s.Step("R_c", "phi_c P_p", c.Rc, "N", clauseJ8)
		} else {
			s.Step("R_c", "P_p / Omega_c", c.Rc, "N", clauseJ8)
		}
		s.Step("f_p,max", "R_c / A_0", c.Fp, "MPa", clauseJ8)
		return
	}
	s.Given("f_ck", in.Block.Concrete.Strength, "MPa", "concrete")
	s.Step("f_cd", "alpha_cc f_ck / gamma_C", c.Fcd, "MPa", "EN 1992-1-1:2004 3.1.6(1)")
	c.deriveScale(in, s, "h_c", off, "sqrt(A_c1/A_c0), similar and concentric within the block; EN 1992-1-1:2004 6.7(3)")
	s.Step("F_Rdu", "A_0 f_cd min(k_A, 3)", c.FRdu, "N", clausePartial)
	s.Step("f_jd", "beta_j F_Rdu / A_0", c.Fjd, "MPa", clauseJoint)
}

func (t *TimberStrength) derive(in *Input, s *derive.Sheet) {
	b := &in.Timber
	us := in.Design.Basis.US()
	if b.Direction == AlongGrain {
		switch {
		case !us:
			s.Given("f_c,0,k", b.Timber.Along, "MPa", "timber")
			s.Step("f_d", "k_mod f_c,0,k / gamma_M", t.F, "MPa", "EN 1995-1-1:2004 2.4.1")
		case in.Design.Basis == basis.USLRFD:
			s.Given("F_c", b.Timber.Along, "MPa", "timber")
			s.Given("C_M", t.CM, "", "NDS Supplement 2018, wet service")
			s.Given("K_F", t.KF, "", "NDS 2018 Table N1")
			s.Given("lambda", t.Lambda, "", "NDS 2018 Table N3")
			s.Step("f_d", "F_c C_M K_F phi_t lambda", t.F, "MPa", clauseAlongUS)
		default:
			s.Given("F_c", b.Timber.Along, "MPa", "timber")
			s.Given("C_M", t.CM, "", "NDS Supplement 2018, wet service")
			s.Given("C_D", t.CD, "", "NDS 2018 Table 2.3.2")
			s.Step("f_d", "F_c C_M C_D", t.F, "MPa", clauseAlongUS)
		}
		s.Step("R_t", "A_0 f_d", t.Capacity, "N", timberClause(in))
		return
	}
	s.Given("l", t.Length, "mm", "contact along the grain")
	s.Given("b", t.Width, "mm", "contact across the grain")
	if us {
		s.Given("F_cp", b.Timber.Across, "MPa", "timber, F_c-perp")
		s.Given("C_M", t.CM, "", "NDS Supplement 2018, wet service")
		s.Given("C_b", t.Cb, "", "NDS 2018 3.10.4")
		s.Given("K_F", t.KF, "", "NDS 2018 Table N1; 1 for ASD")
		s.Given("phi_p", t.Phi, "", "NDS 2018 Table N2; 1 for ASD")
		s.Step("f_d", "F_cp C_M C_b K_F phi_p", t.F, "MPa", clauseAcrossUS)
		s.Step("R_t", "l b f_d", t.Capacity, "N", clauseAcrossUS)
		return
	}
	s.Given("f_c,90,k", b.Timber.Across, "MPa", "timber")
	s.Given("k_c,90", t.Kc90, "", "EN 1995-1-1:2004+A1:2008 6.1.5(2) to (4)")
	s.Given("l_x", t.Extra, "mm", "min(30 mm, a, l, l_1/2) at each end; "+clauseAcrossEC)
	s.Step("A_ef", "b (l + 2 l_x)", t.Area, "mm2", clauseAcrossEC)
	s.Step("f_d", "k_c,90 k_mod f_c,90,k / gamma_M", t.F, "MPa", clauseAcrossEC)
	s.Step("R_t", "A_ef f_d", t.Capacity, "N", clauseAcrossEC)
}
