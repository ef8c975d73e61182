package rod

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
)

// DeriveBending writes how the rods bend by US practice, for a part that uses it.
func (r *Result) DeriveBending(s *derive.Sheet) {
	if !r.bends() || !r.Sheared {
		return
	}
	if r.in.Design.Basis == basis.USLRFD {
		s.Factor("phi", basis.Rupture.Phi, clauseJ37)
	} else {
		s.Factor("Omega", basis.Rupture.Omega, clauseJ37)
	}
	r.deriveSteel(s)
	r.deriveNominal(s)
	r.deriveGap(s)
}

func (r *Result) deriveGap(s *derive.Sheet) {
	in, b := r.in, &r.Bend
	if !r.bends() || b.Rod < 0 {
		return
	}
	clause := "EN 1992-4:2018 6.2.2.3"
	if in.Design.Basis.US() {
		clause = clauseBendUS
	}
	s.Given("gap", in.StandOff.Gap, "mm", "clear gap under the plate")
	s.Given("t_fix", in.Plate.Thickness, "mm", "plate as built")
	s.Given("a_3", r.inside(), "mm", "where the rod is held below the surface; "+clause)
	if b.Washers {
		s.Given("t_w,b", b.Tw, "mm", "welded washers, which alone bear on the rods")
		s.Step("l_a", "a_3 + gap + t_fix + t_w,b / 2", b.Arm, "mm", clause)
	} else {
		s.Step("l_a", "a_3 + gap + t_fix / 2", b.Arm, "mm", clause)
	}
	s.Given("alpha_M", b.AlphaM, "", "1: the plate may turn; 2: it may not; "+clause)
	s.Given("N_b", b.Ft, "N", "governing rod, tension")
	s.Given("V_b,g", b.Fv, "N", "governing rod, shear")
	if in.Design.Basis == basis.Eurocode {
		s.Step("W_el", "pi d_s^3 / 32", b.W, "mm3", "stress diameter")
		s.Factor("gamma_Ms,N", b.GammaN, "EN 1992-4:2018 Table 4.1")
		s.Factor("gamma_Ms,V", b.GammaV, "EN 1992-4:2018 Table 4.1")
		s.Step("M0_Rk,s", "1.2 W_el f_ub", b.M0, "Nmm", clauseBendEC)
		s.Step("N_Rd,s", "A_s f_ub / gamma_Ms,N", b.NRd, "N", "EN 1992-4:2018 7.2.1.3")
		s.Step("M_Rk,s", "M0_Rk,s max(0, 1 - N_b / N_Rd,s)", b.M, "Nmm", clauseBendEC)
		s.Step("V_Rd,s,M", "alpha_M M_Rk,s / (l_a gamma_Ms,V)", b.VRd, "N", clauseBendEC)
		return
	}
	switch {
	case in.StandOff.Gap > 0:
		s.Step("W_el", "pi d_s^3 / 32", b.W, "mm3", "stress diameter")
	case r.Worn:
		s.Step("W_el", "d_s^3 / 6", b.W, "mm3", "plastic modulus of what is left of the thread")
	default:
		s.Step("W_el", "d_n^3 / 6", b.W, "mm3", "plastic modulus of the nominal section; "+clause)
	}
	s.Step("M_b", "V_b,g l_a / alpha_M", b.Fv*b.Arm/b.AlphaM, "Nmm", clause)
	s.Step("f_rb", "M_b / W_el", b.Fv*b.Arm/b.AlphaM/b.W, "MPa", clause)
	s.Step("f_ta", "N_b / A_b", b.Ft/r.Ab, "MPa", clause)
	s.Step("f_tb", "f_ta + f_rb", b.Stress, "MPa", clause)
	s.Step("f_rv,b", "V_b,g / A_b", b.Fv/r.Ab, "MPa", clauseJ38)
	formula := "phi max(0, min(F_nt, 1.3 F_nt - F_nt f_rv,b / (phi F_nv)))"
	if in.Design.Basis == basis.USASD {
		formula = "max(0, min(F_nt, 1.3 F_nt - Omega F_nt f_rv,b / F_nv)) / Omega"
	}
	s.Step("F_available", formula, b.Available, "MPa", clauseJ38)
}
