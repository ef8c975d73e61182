package plate

import (
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
	if r.Case == Idle || r.Case == Biaxial {
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
	} else {
		r.deriveUS(s)
	}
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
	if r.Row.Count > 0 {
		s.Given("z_T", r.Row.S, "mm", "row of rods outside the flange")
	}
	switch {
	case e.Pressed && e.Shared:
		s.Given("C_Ed", e.Fc, "N", "from the sharing of the base, where that is more")
	case e.Pressed && e.Lifted:
		s.Step("C_Ed", "(M - N_Ed z_T) / (z_T + z_C)", e.Fc, "N", clauseMoment)
	case e.Pressed && r.Reason == "":
		s.Step("C_Ed", "P / 2 + M / (2 z_C)", e.Fc, "N", clauseMoment)
	}
	if e.Pressed && r.Reason == "" {
		s.Step("F_C,Rd", "f_B A_eff", e.FcFlange, "N", "EN 1993-1-8:2005 6.2.6.9")
		s.Step("u_C", "C_Ed / F_C,Rd", e.Fc/e.FcFlange, "", clauseMoment)
	}
	if e.Lifted {
		if e.Shared {
			s.Given("T_Ed", e.Ft, "N", "from the sharing of the base, which is more than by the lever arms")
		} else if e.Pressed {
			s.Step("T_Ed", "(M + N_Ed z_C) / (z_T + z_C)", e.Ft, "N", clauseMoment)
		} else {
			s.Step("T_Ed", "N_Ed / 2 + M / (2 z_T)", e.Ft, "N", clauseMoment)
		}
		e.TStub.derive(r, s)
		s.Step("u_T", "T_Ed / F_T,Rd", e.Ft/e.TStub.FtRd, "", clauseTStub)
	}
}

func (t *TStub) derive(r *Result, s *derive.Sheet) {
	in := r.in
	s.Given("a_w", in.WeldThroat, "mm", "throat of the weld round the footprint")
	s.Step("m", "z_T - h / 2 - 0.8 sqrt(2) a_w", t.M, "mm", "EN 1993-1-8:2005 Figure 6.8")
	s.Step("e_x", "L / 2 - z_T", t.Ex, "mm", "to the edge of the plate")
	s.Given("w", r.Row.Gauge, "mm", "between the two rods")
	s.Given("e", r.Row.Edge, "mm", "from a rod to the side of the plate")
	s.Step("l_cp", "min(2 pi m, pi m + w, pi m + 2 e)", t.Lcp, "mm", "EN 1993-1-8:2005 Table 6.6, circular")
	s.Step("l_nc", "min(4 m + 1.25 e_x, e + 2 m + 0.625 e_x, B / 2, w / 2 + 2 m + 0.625 e_x)", t.Lnc, "mm",
		"EN 1993-1-8:2005 Table 6.6, non-circular")
	s.Given("A_s", in.Rods.StressArea, "mm2", "stress area of a rod, left after corrosion")
	s.Given("F_t,Rd", in.Rods.Resistance, "N", "tension resistance of a rod; EN 1993-1-8:2005 Table 3.4")
	if in.Rods.Stretch > 0 {
		s.Given("L_b", t.Lb, "mm", "given stretch length")
	} else {
		s.Given("d", in.Rods.Diameter, "mm", "rod")
		s.Given("t_g", in.Bearing.GroutThick, "mm", "grout")
		s.Given("t_wa", in.Rods.Washer, "mm", "washer")
		s.Step("L_b", "8 d + t_g + t_0 + t_wa + 0.4 d", t.Lb, "mm", "EN 1993-1-8:2005 Table 6.2, anchor bolts")
	}
	s.Step("L_b*", "8.8 m^3 A_s / (min(l_cp, l_nc) t^3)", t.LbStar, "mm", "EN 1993-1-8:2005 Table 6.2; prying where L_b is not above it")
	s.Step("F_T,3", "2 F_t,Rd", t.F3, "N", "EN 1993-1-8:2005 Table 6.2, mode 3")
	if !t.Prying {
		s.Step("l_1", "min(2 l_cp, l_nc)", t.L1, "mm", "without prying circular patterns double")
		s.Step("M_pl,1", "0.25 l_1 t^2 f_y / gamma_M0", t.Mpl1, "Nmm", "EN 1993-1-8:2005 Table 6.2")
		s.Step("F_T,12", "2 M_pl,1 / m", t.F1, "N", "EN 1993-1-8:2005 Table 6.2, modes 1 and 2 without prying")
		s.Step("F_T,Rd", "min(F_T,12, F_T,3)", t.FtRd, "N", clauseTStub)
		return
	}
	s.Step("n", "min(e_x, 1.25 m)", t.N, "mm", "EN 1993-1-8:2005 Table 6.2")
	s.Step("l_1", "min(l_cp, l_nc)", t.L1, "mm", "EN 1993-1-8:2005 Table 6.6, mode 1")
	s.Step("M_pl,1", "0.25 l_1 t^2 f_y / gamma_M0", t.Mpl1, "Nmm", "EN 1993-1-8:2005 Table 6.2")
	s.Step("M_pl,2", "0.25 l_nc t^2 f_y / gamma_M0", t.Mpl2, "Nmm", "EN 1993-1-8:2005 Table 6.2")
	s.Step("F_T,1", "4 M_pl,1 / m", t.F1, "N", "EN 1993-1-8:2005 Table 6.2, mode 1")
	s.Step("F_T,2", "(2 M_pl,2 + n F_T,3) / (m + n)", t.F2, "N", "EN 1993-1-8:2005 Table 6.2, mode 2")
	s.Step("F_T,Rd", "min(F_T,1, F_T,2, F_T,3)", t.FtRd, "N", clauseTStub)
}

func (r *Result) deriveUS(s *derive.Sheet) {
	u := &r.US
	s.Step("q_max", "f_B B", u.Q, "N/mm", clauseBlock)
	if r.Case == Uniaxial && r.P > 0 {
		s.Step("e", "M / P", u.E, "mm", "statics")
		s.Step("e_crit", "L / 2 - P / (2 q_max)", u.Ecrit, "mm", clauseBlock)
	}
	if r.Row.Count > 0 && (u.Fp > 0 || u.Lifted) {
		s.Given("f", r.Row.S, "mm", "row of rods outside the footprint")
	}
	if r.Row.Count > 0 && (u.Fp > 0 || u.Lifted) && !u.Small && r.Case != Concentric {
		if r.Case == Uplift {
			s.Given("M", 0, "Nmm", "no moment")
		}
		s.Step("M_f", "M - N_Ed f", u.Need, "Nmm", "moment about the rods")
		if u.Need > 0 {
			s.Step("M_f,max", "q_max (f + L / 2)^2 / 2", u.Have, "Nmm", "greatest moment of the pressure about the rods")
		}
	}
	switch shared := r.in.Shared.Known && u.Fp == r.in.Shared.Peak; {
	case u.Fp == 0:
	case shared:
		s.Given("f_p", u.Fp, "MPa", "greatest pressure, from the sharing of the base")
		s.Given("Y", u.Y, "mm", "pressed length")
	case r.Case == Concentric:
		s.Step("f_p", "P / (L B)", u.Fp, "MPa", clauseCantilever)
		s.Given("Y", u.Y, "mm", "pressed over the whole length")
	case u.Small:
		s.Step("Y", "L - 2 e", u.Y, "mm", clauseBlock)
		s.Step("f_p", "P / (B Y)", u.Fp, "MPa", clauseBlock)
	default:
		s.Step("Y", "f + L / 2 - sqrt((f + L / 2)^2 - 2 M_f / q_max)", u.Y, "mm", clauseBlock)
		s.Step("f_p", "f_B", u.Fp, "MPa", clauseBlock)
	}
	r.deriveResistance(s)
	if u.Fp > 0 {
		r.derivePress(s)
	}
	if u.Lifted {
		if u.Shared {
			s.Given("T", u.Tu, "N", "from the sharing of the base, which is more than of the block")
		} else if u.Need > 0 {
			s.Step("T", "max(0, q_max Y + N_Ed)", u.Tu, "N", clauseBlock)
		} else {
			s.Step("T", "N_Ed / 2 + M / (2 f)", u.Tu, "N", "statics: both sides lift")
		}
		s.Step("x", "f - h / 2 + t_f / 2", u.Arm, "mm", clauseTension)
		s.Given("n_r", float64(r.Row.Count), "", "rods in the row")
		s.Given("b_r", u.Width, "mm", "width at 45 degrees of the rod that has the least")
		s.Step("m_t", "T / n_r x / b_r", u.Mt, "N", clauseTension)
		s.Step("u_t", "m_t / m_R", u.Mt/u.Rm, "", clauseTension)
	}
}

// deriveResistance writes the available moment per width, in N since Nmm/mm is
// N.
func (r *Result) deriveResistance(s *derive.Sheet) {
	if r.in.Design.Basis == basis.USLRFD {
		s.Step("m_R", "phi_b f_y t^2 / 4", r.US.Rm, "N", "AISC 360-22 F11; per width")
	} else {
		s.Step("m_R", "f_y t^2 / 4 / Omega_b", r.US.Rm, "N", "AISC 360-22 F11; per width")
	}
}

func (r *Result) derivePress(s *derive.Sheet) {
	u, f, in := &r.US, &r.frame, r.in
	along, across := depthLine, depthLine
	switch in.Footprint.Shape {
	case Pipe:
		along, across = widthLine, widthLine
	case ISection:
		if f.AlongY {
			across = widthLine
		} else {
			along = widthLine
		}
	}
	s.Given("k_1", along, "", "bending line along "+axis(f.AlongY)+"; "+clauseCantilever)
	s.Given("k_2", across, "", "bending line along "+axis(!f.AlongY)+"; "+clauseCantilever)
	s.Step("m", "(L - k_1 h) / 2", u.M1, "mm", clauseCantilever)
	s.Step("n", "(B - k_2 b) / 2", u.N1, "mm", clauseCantilever)
	switch in.Footprint.Shape {
	case ISection:
		if r.Case == Concentric {
			s.Step("X", "4 h b / (h + b)^2 P / (f_B L B)", u.X, "", clauseCantilever)
			s.Step("lambda", "min(1, 2 sqrt(min(1, X)) / (1 + sqrt(1 - min(1, X))))", u.Lambda, "", clauseCantilever)
		} else {
			s.Given("lambda", u.Lambda, "", "greatest value, as a moment acts")
		}
		s.Step("l_i", "lambda sqrt(h b) / 4", u.Inside, "mm", "lambda n'; "+clauseCantilever)
	case Tube:
		s.Step("a", "min(h, b) - 2 t_f", min(f.H, f.W)-2*in.Footprint.Thick, "mm", "inside of the tube")
		s.Step("k", "a / (max(h, b) - 2 t_f)", (min(f.H, f.W)-2*in.Footprint.Thick)/(max(f.H, f.W)-2*in.Footprint.Thick), "", "inside of the tube")
		s.Step("l_i", "a (sqrt(3 + k^2) - k) / sqrt(12)", u.Inside, "mm", "yield lines of a simply supported slab")
	case Pipe:
		s.Step("l_i", "(h - 2 t_f) / 2 / sqrt(3)", u.Inside, "mm", "yield lines of a simply supported slab")
	case TwoPlates:
		clear := "(h - 2 t_f) / 2"
		if f.AlongY {
			clear = "(b - 2 t_f) / 2"
		}
		s.Step("l_i", clear, u.Inside, "mm", "simple span between the plates")
	default:
		s.Given("l_i", 0, "mm", "solid footprint")
	}
	if u.Y < u.M1 && !r.in.Shared.Known {
		s.Step("m_1", "f_p Y (m - Y / 2)", u.Fp*u.Y*(u.M1-u.Y/2), "N", clauseBlock)
	} else {
		s.Step("m_1", "f_p m^2 / 2", u.Fp*u.M1*u.M1/2, "N", clauseCantilever)
	}
	s.Step("m_p", "max(m_1, f_p max(n, l_i)^2 / 2)", u.Mu, "N", clauseCantilever)
	s.Step("u_p", "m_p / m_R", u.Mu/u.Rm, "", clauseCantilever)
}

func (r *Result) deriveCentre(s *derive.Sheet) {
	c, in := &r.Centre, r.in
	if !c.Done {
		return
	}
	p, f := &in.Plate, &in.Footprint
	size, foot, over, wide := p.SizeX, f.SizeX, p.SizeY, f.SizeY
	if c.AlongY {
		size, foot, over, wide = p.SizeY, f.SizeY, p.SizeX, f.SizeX
	}
	s.Given("L_c", size, "mm", "plate along "+axis(c.AlongY)+", which governs the centre")
	s.Given("B_c", over, "mm", "plate across it")
	s.Given("c_c", foot, "mm", "footprint along it")
	s.Given("b_c", wide, "mm", "footprint across it")
	switch {
	case r.M == 0:
		s.Step("q", "P / (L_c B_c)", c.Q, "MPa", "statics")
	case c.AlongY:
		s.Step("Y_c", "B_c - 2 M / P", c.Block, "mm", "block of pressure about the resultant")
		s.Step("q", "P / (L_c Y_c)", c.Q, "MPa", "statics")
	default:
		s.Step("Y_c", "L_c - 2 M / P", c.Block, "mm", "block of pressure about the resultant")
		s.Step("q", "P / (B_c Y_c)", c.Q, "MPa", "statics")
	}
	if f.Shape == TwoPlates && !c.AlongY {
		r.deriveBetween(s, foot-f.Thick)
	} else {
		s.Step("m_mean", "q L_c^2 / 8 (1 - c_c / L_c)", c.Mean, "N", "statics")
	}
	s.Step("k_p", "2.1 / (1 + b_c / B_c)", c.Peak, "", "greatest over mean moment; "+clauseCentre)
	s.Step("m_c", "m_mean k_p", c.M, "N", clauseCentre)
	if in.Design.Basis == basis.Eurocode {
		s.Step("m_R", "f_y t^2 / 6 / gamma_M0", c.Rm, "N", "elastic section, as EN 1993-1-8:2005 6.2.5(4)")
	}
	s.Step("u_m", "m_c / m_R", c.M/c.Rm, "", clauseCentre)
}

func (r *Result) deriveBetween(s *derive.Sheet, apart float64) {
	c, size := &r.Centre, r.in.Plate.SizeX
	s.Step("s", "c_c - t_f", apart, "mm", "between the middles of the two plates")
	if r.M == 0 {
		s.Given("M", 0, "Nmm", "no moment")
		s.Given("Y_c", c.Block, "mm", "pressed over the whole length")
	}
	s.Step("F_1", "(P / 2 + M / s) / B_c", c.Line, "N/mm", "line load of the plate pressed harder")
	block := func(from float64, text string) string {
		if from > c.Block {
			return "q Y_c (" + text + " - Y_c / 2)"
		}
		return "q (" + text + ")^2 / 2"
	}
	s.Step("m_1", block((size-apart)/2, "(L_c - s) / 2"), c.M1, "N", "statics: at that plate")
	s.Step("m_2", block((size+apart)/2, "(L_c + s) / 2")+" - F_1 s", c.M2, "N", "statics: at the other")
	if c.M0 == 0 {
		s.Given("m_0", 0, "N", "no greater moment between them")
	} else {
		s.Step("m_0", "F_1 ((L_c - s) / 2 - F_1 / q / 2)", c.M0, "N", "statics: between them, where the shear is zero")
	}
	s.Step("m_mean", "max(abs(m_1), abs(m_0), abs(m_2))", c.Mean, "N", "statics")
}
