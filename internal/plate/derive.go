package plate

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
)

// Derive writes the calculation step by step.
func (r *Result) Derive(s *derive.Sheet) {
	in := r.in
	switch f := &in.Design.EC; in.Design.Basis {
	case basis.Eurocode:
		s.Factor("gamma_M0", f.GammaM0, "EN 1993-1-1:2005 6.1(1)")
	case basis.USLRFD:
		s.Factor("phi_b", basis.Flexure.Phi, "AISC 360-22 F1")
	default:
		s.Factor("Omega_b", basis.Flexure.Omega, "AISC 360-22 F1")
	}
	if s.FactorsOnly {
		return
	}
	s.Given("t_0", in.Plate.Thickness, "mm", "thickness as built")
	s.Given("t_corr", in.Plate.Corrosion, "mm", "thickness lost to corrosion")
	s.Step("t", "t_0 - t_corr", r.T, "mm", "thickness left")
	s.Given("f_y", r.Fy, "MPa", "steel, at the thickness as built")
	s.Given("f_B", in.Bearing.Pressure, "MPa", "bearing strength: "+in.Bearing.Clause)
	s.Given("N_Ed", r.N, "N", "tension positive")
	if r.Case == Idle {
		return
	}
	f := &r.frame
	s.Given("L", f.L, "mm", "plate along "+axis(f.AlongY))
	s.Given("B", f.B, "mm", "plate along "+axis(!f.AlongY))
	s.Given("h", f.H, "mm", "footprint along "+axis(f.AlongY))
	s.Given("b", f.W, "mm", "footprint along "+axis(!f.AlongY))
	if in.Footprint.Shape != Rectangle {
		s.Given("t_f", in.Footprint.Thick, "mm", "flange, wall or plate of the footprint")
	}
	if in.Footprint.Shape == ISection {
		s.Given("t_w", in.Footprint.Web, "mm", "web of the footprint")
	}
	if r.P > 0 {
		s.Step("P", "-N_Ed", r.P, "N", "compression")
	}
	if r.Case == Uniaxial {
		s.Given("M", r.M, "Nmm", "magnitude of the moment that presses along "+axis(f.AlongY))
	}
	if in.Design.Basis == basis.Eurocode {
		r.deriveEC(s)
		r.deriveColumn(s)
	} else {
		r.deriveUS(s)
	}
	r.deriveSections(s)
	r.deriveCentre(s)
}

func axis(y bool) string {
	if y {
		return "y"
	}
	return "x"
}

func (r *Result) deriveEC(s *derive.Sheet) {
	e := &r.EC
	s.Step("c", "t sqrt(f_y / (3 f_B gamma_M0))", e.C, "mm", "EN 1993-1-8:2005 6.2.5(4)")
	if r.Case == Concentric {
		s.Given("A_eff", e.Area, "mm2", "footprint widened by c, within the plate, nothing counted twice; EN 1993-1-8:2005 6.2.5(5), (6)")
		s.Step("N_Rd", "f_B A_eff", e.FcRd, "N", clauseCompression)
		s.Step("u_c", "P / N_Rd", r.P/e.FcRd, "", clauseCompression)
		return
	}
	if e.FcFlange == 0 {
		return
	}
	s.Step("y_o", "min(h / 2 + c, L / 2)", min(r.frame.H/2+e.C, r.frame.L/2), "mm", "outer edge of the pressed strip")
	s.Step("y_i", "max(0, h / 2 - t_f - c)", max(0, r.frame.H/2-r.in.Footprint.Thick-e.C), "mm", "inner edge of the pressed strip")
	s.Step("A_eff", "min(b + 2 c, B) (y_o - y_i)", e.Flange, "mm2", "EN 1993-1-8:2005 6.2.5(5), (6)")
	s.Step("z_C", "(y_o + y_i) / 2", e.Zc, "mm", "EN 1993-1-8:2005 6.2.8.1(2)")
	if r.Case == Uplift {
		s.Given("M", 0, "Nmm", "no moment")
	}
	l := &r.lifts
	z1, z2 := l.row[first].S, l.row[other].S
	if l.t[first] > 0 || e.Pressed && l.row[first].Count > 0 {
		s.Given("z_T", z1, "mm", "row of rods outside the flange that lifts")
	}
	if r.Both {
		s.Given("z_T2", z2, "mm", "row of rods on the other side, which lifts too")
	}
	own, text := r.P > 0 && r.M <= r.P*e.Zc, "(M - N_Ed z_T) / (z_T + z_C)"
	if own {
		text = "P / 2 + M / (2 z_C)"
	}
	switch {
	case !e.Pressed || r.Misfit != Fits:
	case l.shared[first] || l.shared[other]:
		_, sum, moment := r.sharing()
		s.Given("T_all", sum, "N", "tension of all rods, from the sharing of the base")
		s.Given("M_all", moment, "Nmm", "its moment about the axis")
		s.Step("C_Ed", "max("+text+", min(T_all - N_Ed, (T_all - N_Ed) / 2 + (M - M_all) / (2 z_C)))", e.Fc, "N", clauseMoment)
	default:
		s.Step("C_Ed", text, e.Fc, "N", clauseMoment)
	}
	if e.Pressed && r.Misfit == Fits {
		s.Step("F_C,Rd", "f_B A_eff", e.FcFlange, "N", "EN 1993-1-8:2005 6.2.6.9")
		s.Step("u_C", "C_Ed / F_C,Rd", e.Fc/e.FcFlange, "", clauseMoment)
	}
	if !e.Lifted {
		return
	}
	switch shown := r.frame.Side == l.side; {
	case e.Shared:
		s.Given("T_Ed", e.Ft, "N", "from the sharing of the base, which is more than by the lever arms")
	case r.Both && shown:
		s.Step("T_Ed", "(N_Ed z_T2 + M) / (z_T + z_T2)", e.Ft, "N", clauseMoment)
	case r.Both:
		s.Step("T_Ed", "(N_Ed z_T - M) / (z_T + z_T2)", e.Ft, "N", clauseMoment)
	default:
		s.Step("T_Ed", "(M + N_Ed z_C) / (z_T + z_C)", e.Ft, "N", clauseMoment)
	}
	s.Given("z_r", r.Row.S, "mm", "row of rods that governs")
	e.TStub.derive(r, s)
	s.Step("u_T", "T_Ed / F_T,Rd", e.Ft/e.TStub.FtRd, "", clauseTStub)
}

func (r *Result) deriveColumn(s *derive.Sheet) {
	c, f, foot := &r.Column, &r.frame, &r.in.Footprint
	if !c.Known {
		return
	}
	s.Given("f_y,c", c.Fy, "MPa", "steel of the column")
	web, webs := "t_w", "t_w (h - 2 t_f)"
	if foot.Shape == Tube {
		web, webs = "t_f", "2 t_f (h - 2 t_f)"
	}
	if r.EC.Pressed && r.Misfit == Fits {
		s.Given("class", float64(c.Class), "", "of the section in bending; EN 1993-1-1:2005 Table 5.2; 2 stands for 1 too")
		r.deriveModulus(s, web)
		s.Given("V_Ed", c.V, "N", "shear along the web")
		s.Step("V_pl", webs+" f_y,c / sqrt(3) / gamma_M0", c.Vpl, "N", "EN 1993-1-1:2005 6.2.6(2), without flanges")
		if c.Rho > 0 {
			s.Step("rho", "min(1, (2 V_Ed / V_pl - 1)^2)", c.Rho, "", "EN 1993-1-1:2005 6.2.8(3)")
		} else {
			s.Given("rho", 0, "", "V_Ed is not above V_pl / 2; EN 1993-1-1:2005 6.2.8(2)")
		}
		s.Step("M_c,Rd", "max(0, W_c) (1 - rho) f_y,c / gamma_M0", c.McRd, "Nmm", "EN 1993-1-1:2005 6.2.5(2)")
		text := "M_c,Rd / (h - t_f)"
		if f.H > tallSection {
			text = "min(" + text + ", b t_f f_y,c / gamma_M0 / 0.8)"
		}
		s.Step("F_c,fb,Rd", text, c.FcRd, "N", clauseColumnPressed)
		s.Step("u_fb", "C_Ed / F_c,fb,Rd", r.EC.Fc/c.FcRd, "", clauseColumnPressed)
	}
	if r.EC.Lifted {
		s.Step("F_t,wb,Rd", "l_1 "+web+" f_y,c / gamma_M0", c.FtRd, "N", clauseColumnPulled)
		s.Step("u_wb", "T_Ed / F_t,wb,Rd", r.EC.Ft/c.FtRd, "", clauseColumnPulled)
	}
}

func (r *Result) deriveModulus(s *derive.Sheet, web string) {
	c, count := &r.Column, ""
	lostW, lostI := "", ""
	if r.in.Footprint.Shape == Tube {
		count, lostW, lostI = "2 ", " - 2 A_r h", " - A_r h^2"
		s.Step("A_r", "(4 - pi) 5 t_f^2 / 4", (4-math.Pi)*5*square(r.in.Footprint.Thick)/4, "mm2", "what a round corner of 3 t_f lacks")
	}
	if c.Class < 3 {
		s.Step("W_c", "b t_f (h - t_f) + "+count+web+" (h - 2 t_f)^2 / 4"+lostW, c.W, "mm3", "plastic section modulus, without fillets")
		return
	}
	s.Step("I_c", "b t_f (h - t_f)^2 / 2 + b t_f^3 / 6 + "+count+web+" (h - 2 t_f)^3 / 12"+lostI, c.W*r.frame.H/2, "mm4", "second moment of area, without fillets")
	s.Step("W_c", "I_c / (h / 2)", c.W, "mm3", "elastic section modulus")
}
