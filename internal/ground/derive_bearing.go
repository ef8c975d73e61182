package ground

import (
	"math"
	"strings"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
)

// clause returns where the factors of the bearing are from.
func (b *Bearing) clause() string {
	switch {
	case b.Author == Annex && b.Drained:
		return "EN 1997-1:2004 D.4"
	case b.Author == Annex:
		return "EN 1997-1:2004 D.3"
	}
	return bowles
}

func (r *Result) deriveBearing(s *derive.Sheet, b *Bearing) {
	in := r.in
	r.deriveLoad(s, b.Load, r.actionSource(b.set, b.set.late), true)
	if b.Area == 0 {
		return
	}
	r.deriveArea(s, b.Load, b.Effective)
	clause := b.clause()
	if b.Drained {
		s.Given("phi_k", in.Soil.Friction, "rad", "drained, characteristic")
		s.Given("c_k", in.Soil.Cohesion, "MPa", "drained, characteristic")
		r.deriveMaterial(s, "gamma_phi", b.set.phi)
		r.deriveMaterial(s, "gamma_c", b.set.c)
		s.Step("t_d", "tan(phi_k) / gamma_phi", math.Tan(b.Friction), "", r.reduced())
		s.Given("phi_d", b.Friction, "rad", "the angle whose tangent is t_d")
		s.Step("c_d", "c_k / gamma_c", b.Strength, "MPa", r.reduced())
	} else {
		s.Given("c_u,k", in.Soil.Undrained, "MPa", "undrained, characteristic")
		r.deriveMaterial(s, "gamma_cu", b.set.cu)
		s.Step("c_d", "c_u,k / gamma_cu", b.Strength, "MPa", r.reduced())
	}
	r.deriveFactors(s, b, clause)
	if b.Reason != "" {
		return
	}
	s.Step("i_c", r.inclination(s, b), b.I.C, "", clause)
	if b.Drained {
		r.inclinationRest(s, b, clause)
	} else {
		s.Given("i_q", b.I.Q, "", clause)
	}
	switch {
	case b.added():
		s.Step("p_c", "c_d N_c min(s_c d_c i_c, s_c + d_c + i_c - 2)", b.Strength*b.N.C*b.together(), "MPa", clause)
	default:
		s.Step("p_c", "c_d N_c s_c d_c i_c", b.Strength*b.N.C*b.together(), "MPa", clause)
	}
	pq := b.Overburden * b.N.Q * b.S.Q * b.D.Q * b.I.Q
	if b.Drained {
		s.Step("p_q", "q' N_q s_q d_q i_q", pq, "MPa", clause)
	} else {
		s.Step("p_q", "q N_q s_q d_q i_q", pq, "MPa", clause)
	}
	if b.Drained {
		width := "B'"
		if b.Breadth != b.Width {
			s.Step("B_c", "2 B' / sqrt(pi)", b.Breadth, "mm", "diameter of a circle as great, as Terzaghi has it")
			width = "B_c"
		}
		s.Step("p_gamma", "0.5 gamma_e "+width+" N_gamma s_gamma d_gamma i_gamma",
			0.5*b.Weight*b.Breadth*b.N.Gamma*b.S.Gamma*b.D.Gamma*b.I.Gamma, "MPa", clause)
		s.Step("q_ult", "p_c + p_q + p_gamma", b.Pressure, "MPa", clause)
	} else {
		s.Step("q_ult", "p_c + p_q", b.Pressure, "MPa", clause)
	}
	r.deriveResistance(s, b.set, b.Resistance)
	if b.set.late {
		f := Load{GammaG: b.by.g, GammaQ: b.by.q, GammaP: b.by.p, GammaW: b.by.w}
		s.Factor("gamma_G", f.GammaG, r.actionSource(b.set, false))
		s.Factor("gamma_Q,N", f.GammaP, r.actionSource(b.set, false))
		text := strings.TrimSuffix(r.across(s, f, r.actionSource(b.set, false)), " - U")
		s.Step("V_d", "max(0, "+text+")", b.Demand, "N", "EN 1997-1:2004 2.4.7.3.2")
	}
}

// deriveMaterial writes a partial factor on a strength.
func (r *Result) deriveMaterial(s *derive.Sheet, symbol string, value float64) {
	if r.in.Design.Basis.US() {
		s.Given(symbol, value, "", "no factor on strengths in this basis")
		return
	}
	s.Factor(symbol, value, "EN 1997-1:2004 Table A.4")
}

// deriveResistance writes the design resistance of an ultimate pressure.
func (r *Result) deriveResistance(s *derive.Sheet, f *set, value float64) {
	switch r.in.Design.Basis {
	case basis.Eurocode:
		s.Factor("gamma_R,v", f.rv, "EN 1997-1:2004 Table A.5"+memory)
		s.Step("R_d", "q_ult A' / gamma_R,v", value, "N", "EN 1997-1:2004 2.4.7.3")
	case basis.USLRFD:
		s.Factor("phi_b", r.in.Resistance, "as given")
		s.Step("R_d", "phi_b q_ult A'", value, "N", "LRFD")
	default:
		s.Factor("FS", f.rv, "factor of safety; 3 is common practice")
		s.Step("R_d", "q_ult A' / FS", value, "N", "ASD")
	}
}

// deriveFactors writes bearing, shape and depth factors.
func (r *Result) deriveFactors(s *derive.Sheet, b *Bearing, clause string) {
	in := r.in
	switch {
	case !b.Drained:
		s.Given("N_c", b.N.C, "", clause+"; limit for phi = 0")
		s.Given("N_q", b.N.Q, "", clause+"; limit for phi = 0")
	case b.Author == Terzaghi:
		s.Step("N_q", "exp(2 (0.75 pi - phi_d / 2) t_d) / (2 cos(pi / 4 + phi_d / 2)^2)", b.N.Q, "", clause)
		s.Step("N_c", "(N_q - 1) / t_d", b.N.C, "", clause)
		s.Given("N_gamma", b.N.Gamma, "", "Terzaghi's table, interpolated"+memory)
	default:
		s.Step("N_q", "exp(pi t_d) tan(pi / 4 + phi_d / 2)^2", b.N.Q, "", clause)
		s.Step("N_c", "(N_q - 1) / t_d", b.N.C, "", clause)
		s.Step("N_gamma", map[Author]string{
			Meyerhof: "(N_q - 1) tan(1.4 phi_d)", Hansen: "1.5 (N_q - 1) t_d",
			Vesic: "2 (N_q + 1) t_d", Annex: "2 (N_q - 1) t_d",
		}[b.Author], b.N.Gamma, "", clause)
	}
	ratio := "B' / L'"
	shape := map[Author]words{
		Terzaghi: {"1 + 0.3 " + ratio, "1", "1 - 0.2 " + ratio},
		Meyerhof: {"1 + 0.2 tan(pi / 4 + phi_d / 2)^2 " + ratio, "1 + 0.1 tan(pi / 4 + phi_d / 2)^2 " + ratio, "s_q"},
		Hansen:   {"1 + N_q / N_c " + ratio, "1 + sin(phi_d) " + ratio, "1 - 0.4 " + ratio},
		Vesic:    {"1 + N_q / N_c " + ratio, "1 + t_d " + ratio, "1 - 0.4 " + ratio},
		Annex:    {"(s_q N_q - 1) / (N_q - 1)", "1 + sin(phi_d) " + ratio, "1 - 0.3 " + ratio},
	}[b.Author]
	if b.Author == Terzaghi && in.Shape == Circle {
		shape.gamma = "0.6"
	}
	if b.H > 0 && (b.Author == Hansen || b.Author == Vesic) {
		shape = words{"min(1, " + shape.c + ")", "min(1, " + shape.q + ")", "min(1, " + shape.gamma + ")"}
	}
	if !b.Drained {
		s.Given("phi_d", 0, "rad", "undrained")
		s.Given("t_d", 0, "", "undrained")
		if b.Author == Annex {
			shape.c = "1 + 0.2 " + ratio
		}
	}
	d := words{"1", "1", "1"}
	flat := b.Author == Meyerhof && b.Friction <= 10*degree
	if flat {
		shape.q, shape.gamma = "1", "1"
	}
	s.Step("s_q", shape.q, b.S.Q, "", clause)
	s.Step("s_c", shape.c, b.S.C, "", clause)
	switch b.Author {
	case Meyerhof:
		s.Given("k_D", min(in.Depth/in.width(), 2.5), "", "depth over width, at most 2.5")
		d = words{"1 + 0.2 tan(pi / 4 + phi_d / 2) k_D", "1 + 0.1 tan(pi / 4 + phi_d / 2) k_D", "d_q"}
		if flat {
			d.q = "1"
		}
	case Hansen, Vesic:
		s.Given("k_D", depthRatio(min(in.Depth/in.width(), 2.5)), "", "depth over width, as an angle beyond pi/4")
		d = words{"1 + 0.4 k_D", "1 + 2 t_d (1 - sin(phi_d))^2 k_D", "1"}
	}
	s.Step("d_c", d.c, b.D.C, "", clause)
	s.Step("d_q", d.q, b.D.Q, "", clause)
	if b.Drained {
		s.Step("s_gamma", shape.gamma, b.S.Gamma, "", clause)
		s.Step("d_gamma", d.gamma, b.D.Gamma, "", clause)
	}
}

// words are the expressions of three factors.
type words struct{ c, q, gamma string }

// inclination notes what i_c needs and returns its expression.
func (r *Result) inclination(s *derive.Sheet, b *Bearing) string {
	if b.H == 0 {
		return "1"
	}
	s.Given("c_a", b.Grip, "MPa", "adhesion on the base")
	switch {
	case b.Author == Meyerhof:
		s.Given("theta", math.Atan2(b.H, b.V), "rad", "of the force from the vertical")
		return "(1 - 2 theta / pi)^2"
	case !b.Drained && b.Author == Vesic:
		r.deriveExponent(s, b)
		return "1 - m H / (A' c_a N_c)"
	case !b.Drained:
		return "0.5 (1 + sqrt(1 - H / (A' c_a)))"
	}
	s.Step("h_r", "H / (V + A' c_a / t_d)", b.H/(b.V+b.Area*b.Grip/math.Tan(b.Friction)), "", b.clause())
	if b.Author == Hansen {
		s.Step("i_q", "(1 - 0.5 h_r)^5", b.I.Q, "", b.clause())
	} else {
		r.deriveExponent(s, b)
		s.Step("i_q", "(1 - h_r)^m", b.I.Q, "", b.clause())
	}
	return "i_q - (1 - i_q) / (N_c t_d)"
}

// deriveExponent writes m, by the direction of H.
func (r *Result) deriveExponent(s *derive.Sheet, b *Bearing) {
	across, clause := "(2 + B' / L') / (1 + B' / L')", "exponent, by the direction of H; "+b.clause()
	in := r.in
	if in.Shape == Circle {
		s.Step("m", across, b.M, "", "exponent, of a circle that across it; "+b.clause())
		return
	}
	ratio, along := b.Width/b.Length, "H_x"
	if in.SizeX-2*b.Load.Ex < in.SizeY-2*b.Load.Ey {
		along = "H_y"
	}
	s.Step("m_B", across, (2+ratio)/(1+ratio), "", clause)
	s.Step("m_L", "(2 + L' / B') / (1 + L' / B')", (2*ratio+1)/(ratio+1), "", clause)
	s.Step("m", "m_L ("+along+" / H)^2 + m_B (1 - ("+along+" / H)^2)", b.M, "", clause)
}

func (r *Result) inclinationRest(s *derive.Sheet, b *Bearing, clause string) {
	switch {
	case b.H == 0:
		s.Given("i_q", 1, "", clause)
		s.Given("i_gamma", 1, "", clause)
	case b.Author == Meyerhof:
		s.Step("i_q", "i_c", b.I.Q, "", clause)
		s.Step("i_gamma", "max(0, 1 - theta / phi_d)^2", b.I.Gamma, "", clause)
	case b.Author == Hansen:
		s.Step("i_gamma", "(1 - 0.7 h_r)^5", b.I.Gamma, "", clause)
	default:
		s.Step("i_gamma", "(1 - h_r)^(m + 1)", b.I.Gamma, "", clause)
	}
}
