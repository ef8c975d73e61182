package pin

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/material"
)

const clauseShare = "elastic method of bolt groups"

// derivePin writes the governing pin against the timber.
func (r *Result) derivePin(s *derive.Sheet) {
	s.Given("n_p", float64(r.Pins), "", "pins")
	if r.Polar > 0 {
		s.Given("J_p", r.Polar, "mm2", "sum of x^2 + z^2")
	}
	if r.reason != "" {
		return
	}
	if r.Polar > 0 {
		s.Given("x_i", r.X, "mm", "governing pin, from the middle of the group")
		s.Given("z_i", r.Z, "mm", "governing pin, from the middle of the group")
		a, n := &r.in.Actions, float64(r.Pins)
		shared(s, "F_x", r.uneven("V / n_p + M z_i / J_p"), r.Fx, a.V/n)
		shared(s, "F_z", r.uneven("N_j / n_p - M x_i / J_p"), r.Fz, r.Nj/n)
	} else {
		s.Step("F_x", r.uneven("V / n_p"), r.Fx, "N", clauseShare)
		s.Step("F_z", r.uneven("N_j / n_p"), r.Fz, "N", clauseShare)
	}
	s.Step("F_i", "sqrt(F_x^2 + F_z^2)", r.F, "N", "statics")
	s.Given("alpha", r.Alpha, "rad", "angle of F_i to the grain")
	if r.ec {
		r.deriveEC(s)
		return
	}
	r.deriveUS(s)
}

// shared writes a component of a pin's force. Where the part of the moment nearly
// takes away the even part, six digits do not give it, and it stands as a value.
func shared(s *derive.Sheet, symbol, expression string, value, even float64) {
	if math.Abs(value) < 0.3*math.Abs(even) {
		s.Given(symbol, value, "N", expression+", terms that nearly cancel; "+clauseShare)
		return
	}
	s.Step(symbol, expression, value, "N", clauseShare)
}

func (r *Result) deriveEC(s *derive.Sheet) {
	in, e := r.in, &r.EC
	s.Given("rho_k", in.Timber.Density, "kg/m3", "timber")
	s.Step("f_h,0", "0.082 (1 - 0.01 d) rho_k", e.Fh0, "MPa", clauseFace)
	if in.Timber.Kind == material.SolidHardwood {
		s.Step("k_90", "0.9 + 0.015 d", e.K90, "", clauseFace)
	} else {
		s.Step("k_90", "1.35 + 0.015 d", e.K90, "", clauseFace)
	}
	s.Step("f_h", "f_h,0 / (k_90 (F_x / F_i)^2 + (F_z / F_i)^2)", e.Fh, "MPa", clauseFace)
	s.Step("q_h", "f_h d", e.Q, "N/mm", clauseFace)
	s.Step("M_y", "0.3 f_u d^2.6", e.My, "Nmm", clauseYield)
	if e.Fax > 0 {
		s.Given("f_c,90", in.Timber.Across, "MPa", "timber, across the grain")
		s.Given("D_w", e.Disc, "mm", "diameter that counts as washer; 8.5.2(3)")
		s.Given("A_w", e.Bears/(underWasher*in.Timber.Across), "mm2", "pi/4 D_w^2 without the hole: d_0, or d + 2 mm for a washer on timber")
		s.Step("F_ax,1", "3 f_c,90 A_w", e.Bears, "N", clauseRope)
		s.Step("F_ax,2", "0.9 f_u 0.72 pi / 4 d^2", e.Pulls, "N", clauseRope)
		s.Step("F_ax", "min(F_ax,1, F_ax,2)", e.Fax, "N", clauseRope)
	} else {
		s.Given("F_ax", 0, "N", "no rope effect is counted")
	}
	m := &e.Modes
	hinged := func(name, formula string, v *Mode) {
		s.Step("F_"+name, formula, v.Johansen, "N", clauseLateralEC)
		s.Step("F_"+name+",R", "F_"+name+" + min(F_ax / 4, 0.25 F_"+name+")", v.Total, "N", clauseRope)
	}
	if in.Plates.Arrangement == Inside {
		s.Given("t_1", r.Timber.Side, "mm", "timber on one side of the slot")
		s.Step("F_f", "q_h t_1", m[0].Total, "N", "EN 1995-1-1:2004 (8.11 f)")
		hinged("g", "2 (q_h t_1^2 / 4 + M_y) / (t_1 / 2 + c + sqrt((t_1 / 2 + c)^2 + t_1^2 / 4 + M_y / q_h))", &m[1])
		hinged("h", "4.6 M_y / (c + sqrt(c^2 + 4 M_y / q_h))", &m[2])
		s.Step("F_v", "min(F_f, F_g,R, F_h,R)", e.FvRk, "N", clauseLateralEC)
	} else {
		s.Step("F_j", "0.5 q_h b", m[0].Total, "N", "EN 1995-1-1:2004 (8.12 j), (8.13 l)")
		hinged("k", "2.3 M_y / (c + sqrt(c^2 + 2 M_y / q_h))", &m[1])
		hinged("m", "4.6 M_y / (c + sqrt(c^2 + 4 M_y / q_h))", &m[3])
		s.Step("F_thin", "min(F_j, F_k,R)", e.Thin, "N", clauseLateralEC)
		s.Step("F_thick", "min(F_j, F_m,R)", e.Thick, "N", clauseLateralEC)
		if in.loose() {
			s.Step("F_v", "F_thin", e.FvRk, "N", "hole wider by 0.1 d or more; EN 1995-1-1:2004 8.2.3(1)")
		} else {
			s.Step("F_v", "F_thin + min(1, max(0, t_s / (0.5 d) - 1)) (F_thick - F_thin)", e.FvRk, "N", clauseLateralEC)
		}
	}
	if in.Layout.InRow > 1 {
		s.Step("n_ef", "min(n_r, n_r^0.9 (a_1 / (13 d))^0.25)", e.Nef, "", clauseEffective)
	} else {
		s.Step("n_ef", "n_r", e.Nef, "", clauseEffective)
	}
	s.Step("k_ef", "n_ef / n_r + (1 - n_ef / n_r) 2 alpha / pi", e.Eff, "", clauseEffective)
	s.Step("F_v,Rd", "2 F_v k_mod / gamma_Mc", e.FvRd, "N", clauseDesign)
	s.Step("F_v,ef", "k_ef F_v,Rd", r.Lateral, "N", clauseEffective)
	s.Step("u_v", "F_i / F_v,ef", r.F/r.Lateral, "", clauseLateralEC)
	if in.Layout.InRow > 1 && r.Row > 0 {
		s.Given("F_v,0", e.Along, "N", "of a shear plane along the grain, as F_v with alpha 0")
		s.Step("F_row,Rd", "n_ef 2 F_v,0 k_mod / gamma_Mc", e.Row, "N", clauseRowEC)
		s.Given("F_row", r.Row, "N", "greatest force of a row along the grain")
		s.Step("u_row", "F_row / F_row,Rd", r.Row/e.Row, "", clauseRowEC)
	}
}

func (r *Result) deriveUS(s *derive.Sheet) {
	in, u := r.in, &r.US
	s.Given("G", in.Timber.Gravity, "", "specific gravity of the timber")
	s.Given("psi", psi, "MPa", "a pound per square inch")
	s.Step("F_e,0", "11200 psi G", u.FeAlong, "MPa", clauseBearingUS)
	s.Step("F_e,90", "6100 psi G^1.45 / sqrt(d / 25.4)", u.FeAcross, "MPa", clauseBearingUS)
	s.Step("F_e", "F_e,0 F_e,90 / (F_e,0 (F_x / F_i)^2 + F_e,90 (F_z / F_i)^2)", u.Fe, "MPa", clauseBearingUS)
	s.Given("F_e,s", u.FeSteel, "MPa", "plate: given, or 1.5 F_u; NDS 2018 Appendix I.2")
	s.Given("F_yb", in.Pin.Fyb, "MPa", "pin, bending yield strength")
	main, side := "F_e", "F_e,s"
	if in.Plates.Arrangement == Inside {
		main, side = side, main
	}
	s.Step("q_m", main+" d", u.Qm, "N/mm", "main member")
	s.Step("q_s", side+" d", u.Qs, "N/mm", "side member")
	s.Given("l_m", u.Lm, "mm", "main member")
	s.Given("l_s", u.Ls, "mm", "side member")
	s.Step("M_p", "F_yb d^3 / 6", u.Mp, "Nmm", clauseLateralUS)
	s.Step("K_theta", "1 + 0.5 alpha / pi", u.Ktheta, "", "NDS 2018 Table 12.3.1B")
	const clause = "NDS 2018 Table 12.3.1A, in the form of AWC TR12"
	s.Step("Z_Im", "q_m l_m / (4 K_theta)", u.Zi, "N", clause)
	s.Step("Z_Is", "2 q_s l_s / (4 K_theta)", u.Zs, "N", clause)
	s.Step("A_3", "1 / (4 q_s) + 1 / (2 q_m)", 1/(4*u.Qs)+1/(2*u.Qm), "mm/N", clause)
	s.Step("B_3", "l_s / 2 + c", u.Ls/2+in.Plates.Gap, "mm", clause)
	s.Step("K_3", "M_p + q_s l_s^2 / 4", u.Mp+u.Qs*u.Ls*u.Ls/4, "Nmm", clause)
	s.Step("Z_III", "4 K_3 / (B_3 + sqrt(B_3^2 + 4 A_3 K_3)) / (3.2 K_theta)", u.Ziii, "N", clause)
	s.Step("A_4", "1 / (2 q_s) + 1 / (2 q_m)", 1/(2*u.Qs)+1/(2*u.Qm), "mm/N", clause)
	s.Step("Z_IV", "8 M_p / (c + sqrt(c^2 + 8 A_4 M_p)) / (3.2 K_theta)", u.Ziv, "N", clause)
	s.Step("Z", "min(Z_Im, Z_Is, Z_III, Z_IV)", u.Z, "N", clauseLateralUS)
	s.Given("C_g", u.Cg, "", "group action: given, or "+clauseGroup)
	if in.Design.Basis == basis.USLRFD {
		s.Step("Z'", "Z C_g C_M K_F phi_z lambda", r.Lateral, "N", clauseAdjust)
	} else {
		s.Step("Z'", "Z C_g C_M C_D", r.Lateral, "N", clauseAdjust)
	}
	s.Step("u_v", "F_i / Z'", r.F/r.Lateral, "", clauseLateralUS)
}
