package plate

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
)

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
	two := f.Shape == TwoPlates
	if !two {
		s.Step("m_mean", "q L_c^2 / 8 (1 - c_c / L_c)", c.Mean, "N", "statics")
		s.Given("P_c", c.Force, "N", "load of the footprint")
		s.Step("c_m", "(c_c + b_c) / 2 / min(L_c, B_c)", (foot+wide)/2/min(size, over), "", "size of the footprint over the plate's shorter side")
		r.deriveSmall(s)
	} else {
		r.deriveBetween(s)
	}
	if in.Design.Basis == basis.Eurocode {
		s.Step("m_R", "f_y t^2 / 6 / gamma_M0", c.Rm, "N", "elastic section, as EN 1993-1-8:2005 6.2.5(4)")
	}
	s.Step("u_m", "m_c / m_R", c.M/c.Rm, "", clauseCentre)
}

// deriveSmall writes the greatest moment of a small footprint.
func (r *Result) deriveSmall(s *derive.Sheet) {
	c := &r.Centre
	s.Step("k_p", "2.1 / (1 + b_c / B_c)", c.Peak, "", "greatest over mean moment; "+clauseCentre)
	if c.E == 0 {
		s.Given("e_p", 0, "", "the footprint is not so small that it adds at its middle")
	} else {
		s.Step("e_p", "max(0, 0.85 - 0.66 ln(c_m) - 2.1 / (1 + c_m))", c.E, "", "of P/8, at the middle of a small footprint; "+clauseCentre)
	}
	s.Step("m_c", "m_mean k_p + P_c / 8 e_p", c.M, "N", clauseCentre)
}

func (r *Result) deriveBetween(s *derive.Sheet) {
	c, p, f := &r.Centre, &r.in.Plate, &r.in.Footprint
	across, along, size := "c_c", "B_c", "L_c"
	if c.AlongY {
		across, along, size = "b_c", "L_c", "B_c"
	}
	s.Step("s", across+" - t_f", f.SizeX-f.Thick, "mm", "between the middles of the two plates")
	if r.M == 0 {
		s.Given("M", 0, "Nmm", "no moment")
		s.Given("Y_c", c.Block, "mm", "pressed over the whole length")
	}
	s.Step("F_1", "(P / 2 + M / s) / "+along, c.Line, "N/mm", "line load of the plate pressed harder")
	s.Step("P_c", "F_1 "+along, c.Force, "N", "its load")
	if c.AlongY {
		s.Step("r_c", "min(0.295 L_c, 0.195 L_c + 0.25 c_c)", c.Reach, "mm", "how far from one of the plates it bends at most; "+clauseCentre)
		s.Step("b_o", "0.9 / sqrt(4 / (B_c - s)^2 + 1 / r_c^2)", c.OutS, "mm", "width that bends outside one of the plates; "+clauseCentre)
		s.Step("b_i", "0.9 / sqrt(4 / s^2 + 1 / r_c^2)", c.InS, "mm", "inside it")
		s.Step("m_c", "P_c (L_c - c_c) / 8 / (b_o + b_i)", c.M, "N", clauseCentre)
		return
	}
	block := func(from float64, text string) string {
		if from > c.Block {
			return "q Y_c (" + text + " - Y_c / 2)"
		}
		return "q (" + text + ")^2 / 2"
	}
	apart := f.SizeX - f.Thick
	s.Step("m_1", block((p.SizeX-apart)/2, "("+size+" - s) / 2"), c.M1, "N", "statics: at that plate")
	s.Step("m_2", block((p.SizeX+apart)/2, "("+size+" + s) / 2")+" - F_1 s", c.M2, "N", "statics: at the other")
	if c.M0 == 0 {
		s.Given("m_0", 0, "N", "no greater moment between them")
	} else {
		s.Step("m_0", "F_1 (("+size+" - s) / 2 - F_1 / q / 2)", c.M0, "N", "statics: between them, where the shear is zero")
	}
	most := "max(abs(m_1), abs(m_0), abs(m_2))"
	if r.M > 0 {
		most = "max(abs(m_1), abs(m_0), abs(m_2), m_e)"
		if r.M/r.P <= p.SizeX/6 {
			s.Step("p_e", "P / (L_c B_c) (1 + 6 M / P / L_c)", c.Edge, "MPa", "statics: pressure at the edge, a straight line")
			s.Step("p_f", "12 M / (L_c^3 B_c)", c.Fall, "N/mm3", "statics: its fall")
		} else {
			s.Step("p_e", "2 P / (3 (L_c / 2 - M / P) B_c)", c.Edge, "MPa", "statics: pressure at the edge, a triangle")
			s.Step("p_f", "2 P / ((3 (L_c / 2 - M / P))^2 B_c)", c.Fall, "N/mm3", "statics: its fall")
		}
		s.Step("a_e", "min((L_c - s) / 2, p_e / p_f)", min((p.SizeX-apart)/2, c.Edge/c.Fall), "mm", "pressed beyond that plate")
		s.Step("m_e", "p_e a_e^2 / 2 - p_f a_e^3 / 6", c.Linear, "N", "statics: at that plate, by the straight line")
	}
	s.Step("m_mean", most, c.Mean, "N", "statics")
	s.Step("c_m", "(t_f + b_c) / 2 / min(L_c, B_c)", (f.Thick+f.SizeY)/2/min(p.SizeX, p.SizeY), "", "size of one plate over the plate's shorter side")
	r.deriveSmall(s)
}
