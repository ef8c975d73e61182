package plate

import (
	"fmt"
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

func (t *TStub) derive(r *Result, s *derive.Sheet) {
	in := r.in
	s.Given("a_w", in.WeldThroat, "mm", "throat of the weld round the footprint")
	s.Step("m", "z_r - h / 2 - 0.8 sqrt(2) a_w", t.M, "mm", "EN 1993-1-8:2005 Figure 6.8")
	s.Step("e_x", "L / 2 - z_r", t.Ex, "mm", "to the edge of the plate")
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
	t.Corner.derive(r, s, "m")
	s.Step("l_y", "h_y m / 2", t.Ly, "mm", "effective length that holds as much")
	s.Step("l_1", "min(l_cp, l_nc, l_y)", t.L1, "mm", "EN 1993-1-8:2005 Table 6.6; not above the yield line")
	s.Step("L_b*", "8.8 m^3 A_s / (l_1 t^3)", t.LbStar, "mm", "EN 1993-1-8:2005 Table 6.2; prying where L_b is not above it")
	s.Step("M_pl,1", "0.25 l_1 t^2 f_y / gamma_M0", t.Mpl1, "Nmm", "EN 1993-1-8:2005 Table 6.2")
	s.Step("F_T,12", "2 M_pl,1 / m", t.F1, "N", "EN 1993-1-8:2005 Table 6.2, modes 1 and 2 without prying; 6.2.6.11(2)")
	s.Step("F_T,3", "2 F_t,Rd", t.F3, "N", "EN 1993-1-8:2005 Table 6.2, mode 3")
	s.Step("F_T,Rd", "min(F_T,12, F_T,3)", t.FtRd, "N", clauseTStub)
	if t.Prying {
		s.Step("n", "min(e_x, 1.25 m)", t.N, "mm", "EN 1993-1-8:2005 Table 6.2")
		s.Step("k", "0.625 L_b l_1 t^3 / (8.8 A_s)", edgeShare/2*t.M*t.M*t.M*t.Lb/t.LbStar, "mm3", "stretch of the rods; statics of an elastic strip")
		s.Step("Q", "min(max(0, T_Ed (m^2 n / 2 - k) / (m n^2 + n^3 / 3 + k), (T_Ed m - 2 M_pl,1) / n), 2 M_pl,1 / n)",
			r.EC.Prying, "N", "prying, for the rods and what holds them; EN 1993-1-8:2005 6.2.6.11(3)")
	}
}

// derive writes the yield line past the flange; the rods stand at m off it.
func (c *Corner) derive(r *Result, s *derive.Sheet, m string) {
	s.Given("n_r", float64(r.Row.Count), "", "rods in the row")
	sum := ""
	for i, p := range r.in.Rods.At {
		b, ok := r.frame.beyond(p, c.Low)
		if !ok {
			continue
		}
		name := fmt.Sprintf("v_%d", i+1)
		s.Given(name, b+r.frame.W/2, "mm", "rod across the direction of the moment")
		arm := "(" + name + " - b / 2) k_y + " + m
		if c.Side {
			arm = name + " - b / 2"
		}
		if sum != "" {
			sum += " + "
		}
		sum += "max(0, " + arm + ")"
	}
	if c.Side {
		s.Given("r_y", c.Rows, "", "rows that pull")
		s.Step("a_y", sum, c.Arms, "mm", "rods beyond the side of the footprint, along which the yield line runs that holds least")
		s.Step("h_y", "n_r L / (a_y r_y)", c.Hold, "", "yield line; Johansen 1962")
		return
	}
	s.Given("k_y", c.Slope, "", "slope against the flange of the yield line through its end that holds least")
	s.Step("a_y", sum, c.Arms, "mm", "rods beyond that line")
	edge := m + " + L / 2 - z_r"
	if r.in.Design.Basis.US() {
		edge = m + " + L / 2 - f_r"
	}
	s.Step("q_y", edge, r.frame.L/2-r.Row.S+c.off(r), "mm", "from that edge of the flange to the edge of the plate")
	s.Step("s_y", "min((B - b) / 2, (L - q_y) / k_y) + min(q_y / k_y, (B + b) / 2)", c.S, "mm", "length of the line across the plate, along the flange")
	s.Step("h_y", "n_r (1 + k_y^2) s_y / a_y", c.Hold, "", "yield line; Johansen 1962")
}

// off returns the distance of the rods from the fixed edge of the line [mm].
func (c *Corner) off(r *Result) float64 {
	if r.in.Design.Basis.US() {
		return r.Row.S - r.frame.H/2
	}
	return r.EC.TStub.M
}

func (r *Result) deriveUS(s *derive.Sheet) {
	u := &r.US
	s.Step("q_max", "f_B B", u.Q, "N/mm", clauseBlock)
	if r.Case == Uniaxial && r.P > 0 {
		s.Step("e", "M / P", u.E, "mm", "statics")
		s.Step("e_crit", "L / 2 - P / (2 q_max)", u.Ecrit, "mm", clauseBlock)
	}
	l := &r.lifts
	if l.row[first].Count > 0 && (u.Fp > 0 || u.Lifted) && !u.Small && r.Case != Concentric {
		s.Given("f", l.row[first].S, "mm", "row of rods outside the footprint")
		if r.Case == Uplift {
			s.Given("M", 0, "Nmm", "no moment")
		}
		s.Step("M_f", "M - N_Ed f", u.Need, "Nmm", "moment about the rods")
		if u.Need > 0 {
			s.Step("M_f,max", "q_max (f + L / 2)^2 / 2", u.Have, "Nmm", "greatest moment of the pressure about the rods")
		}
	}
	switch {
	case u.Fp == 0:
	case u.Bent:
		r.deriveBent(s)
	case r.Case == Concentric:
		s.Step("f_p", "P / (L B)", u.Fp, "MPa", clauseCantilever)
		s.Given("Y", u.Y, "mm", "pressed over the whole length")
	case u.Small:
		s.Step("Y", "L - 2 e", u.Y, "mm", clauseBlock)
		s.Step("f_p", "P / (B Y)", u.Fp, "MPa", clauseBlock)
	default:
		s.Step("Y", block, u.Y, "mm", clauseBlock)
		s.Step("f_p", "f_B", u.Fp, "MPa", clauseBlock)
	}
	r.deriveResistance(s)
	if u.Fp > 0 {
		r.derivePress(s)
	}
	if !u.Lifted {
		return
	}
	if r.Both {
		s.Given("f_2", l.row[other].S, "mm", "row of rods on the other side, which lifts too")
	}
	switch shown := r.frame.Side == l.side; {
	case u.Shared:
		s.Given("T", u.Tu, "N", "from the sharing of the base, which is more than of the block")
	case r.Both && shown:
		s.Step("T", "(N_Ed f_2 + M) / (f + f_2)", u.Tu, "N", "statics: both sides lift")
	case r.Both:
		s.Step("T", "(N_Ed f - M) / (f + f_2)", u.Tu, "N", "statics: both sides lift")
	default:
		if u.Bent {
			s.Step("Y_0", block, u.Block, "mm", clauseBlock)
			s.Step("T", "max(0, q_max Y_0 + N_Ed)", u.Tu, "N", clauseBlock)
			break
		}
		s.Step("T", "max(0, q_max Y + N_Ed)", u.Tu, "N", clauseBlock)
	}
	s.Given("f_r", r.Row.S, "mm", "row of rods that governs")
	s.Step("x", "f_r - h / 2 + t_f / 2", u.Arm, "mm", clauseTension)
	s.Given("b_45", u.Wide, "mm", "width at 45 degrees of the rod that has the least")
	s.Step("m_f", "f_r - h / 2", r.Row.S-r.frame.H/2, "mm", "from the flange to the rods")
	u.Corner.derive(r, s, "m_f")
	s.Step("b_r", "min(b_45, h_y x / n_r)", u.Width, "mm", clauseTension+"; not above the yield line")
	s.Step("m_t", "T / n_r x / b_r", u.Mt, "N", clauseTension)
	s.Step("u_t", "m_t / m_R", u.Mt/u.Rm, "", clauseTension)
}

// block is the length of the block that balances with the rods.
const block = "f + L / 2 - sqrt((f + L / 2)^2 - 2 M_f / q_max)"

// deriveBent writes what the base was found to press.
func (r *Result) deriveBent(s *derive.Sheet) {
	u := &r.US
	if u.Fp == r.in.Shared.Peak {
		s.Given("f_p", u.Fp, "MPa", "greatest pressure, from the sharing of the base")
		s.Given("Y", u.Y, "mm", "taken over the whole length")
		return
	}
	_, sum, _ := r.sharing()
	s.Given("T_all", sum, "N", "tension of all rods, from the sharing of the base")
	s.Step("f_p", "f_B", u.Fp, "MPa", clauseBlock)
	s.Step("Y", "min(L, max(0, T_all - N_Ed) / q_max)", u.Y, "mm", "block that presses as much as rods and actions pull")
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
	s.Step("m_1", "f_p min(Y, m) (m - min(Y, m) / 2)", u.Along, "N", clauseBlock)
	deriveStrip(s, "m_2", "n", "Y", u.Y, u.N1, f.L, u.Across)
	deriveStrip(s, "m_3", "l_i", "(Y - m)", u.Y-u.M1, u.Inside, f.L-u.M1, u.Under)
	s.Step("m_p", "max(m_1, m_2, m_3)", u.Mu, "N", clauseCantilever)
	s.Step("u_p", "m_p / m_R", u.Mu/u.Rm, "", clauseCantilever)
}

func deriveStrip(s *derive.Sheet, name, lever, length string, y, v, l, moment float64) {
	if strip(y, v, l) == 1 {
		s.Step(name, "f_p "+lever+"^2 / 2", moment, "N", clauseCantilever)
		return
	}
	s.Step(name, "f_p "+lever+"^2 / 2 min(1, max(0, "+length+") / ("+lever+" / 3))", moment, "N",
		clauseCantilever+"; a strip pressed over less than a third of "+lever+" bends that width")
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
