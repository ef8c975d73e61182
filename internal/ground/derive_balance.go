package ground

import "footward.example/footward/internal/derive"

func (r *Result) deriveReach(s *derive.Sheet) {
	clause := eccentricity.Clause[r.in.Design.Basis]
	r.deriveLoad(s, r.Reach, r.actionSource(nil, false), true)
	if r.in.Shape == Circle {
		s.Step("eta_e", "e / D_f", r.Share, "", clause)
		return
	}
	s.Step("eta_e", "e_x / b_x + e_y / b_y", r.Share, "", clause)
}

func (r *Result) deriveBalance(s *derive.Sheet) {
	in, clause := r.in, overturning.Clause[r.in.Design.Basis]
	mx, my, weight, own := "", "", "W", in.partials()
	if in.Bed > 0 {
		s.Given("W_bed", in.Bed, "N", "loose layer below the footing, which holds nothing")
		weight = "W - W_bed"
	}
	float, floats := "", ""
	if r.Head > 0 {
		float, floats = " + U", " + gamma_G,dst U"
	}
	lift, press := "max(0, N_G)", "max(0, 0 - N_G)"
	if in.Lift > 0 {
		lift, press = "L_G", "L_G - N_G"
	}
	if in.Design.Basis.US() {
		s.Factor("FS_s", in.stability(), "factor of safety; 1.5 is common practice")
		s.Step("N_dst", "max(0, N_G + N_Q)"+float, r.Uplift.Demand, "N", clause)
		s.Step("N_stb", "("+weight+" + max(0, 0 - (N_G + N_Q))) / FS_s", r.Uplift.Holds, "N", clause)
		mx = "(abs(M_y,G + M_y,Q) + abs(V_x,G + V_x,Q) h)"
		my = "(abs(M_x,G + M_x,Q) + abs(V_y,G + V_y,Q) h)"
	} else {
		given := ""
		if !in.recommended() {
			given = " with factors as given"
		}
		s.Factor("gamma_stb", own.GStb, "EN 1997-1:2004 Tables A.1, A.15"+memory+given)
		s.Factor("gamma_G,dst", own.GDst, "EN 1997-1:2004 Table A.1"+memory+given)
		s.Factor("gamma_Q,dst", own.QDst, "EN 1997-1:2004 Tables A.1, A.15"+memory+given)
		s.Step("N_dst", "gamma_G,dst "+lift+" + gamma_Q,dst max(0, N_Q)"+floats, r.Uplift.Demand, "N", clause)
		s.Step("N_stb", "gamma_stb ("+weight+" + "+press+")", r.Uplift.Holds, "N", clause)
		mx = "(gamma_G,dst (abs(M_y,G) + abs(V_x,G) h) + gamma_Q,dst (abs(M_y,Q) + abs(V_x,Q) h))"
		my = "(gamma_G,dst (abs(M_x,G) + abs(V_y,G) h) + gamma_Q,dst (abs(M_x,Q) + abs(V_y,Q) h))"
	}
	if in.Shape == Circle {
		s.Step("M_dst", "sqrt("+mx+"^2 + "+my+"^2) + N_dst D_f / 2", r.Overturning[0].Demand, "Nmm", clause)
		s.Step("M_stb", "N_stb D_f / 2", r.Overturning[0].Holds, "Nmm", clause)
		return
	}
	s.Step("M_dst,x", mx+" + N_dst b_x / 2", r.Overturning[0].Demand, "Nmm", clause)
	s.Step("M_stb,x", "N_stb b_x / 2", r.Overturning[0].Holds, "Nmm", clause)
	s.Step("M_dst,y", my+" + N_dst b_y / 2", r.Overturning[1].Demand, "Nmm", clause)
	s.Step("M_stb,y", "N_stb b_y / 2", r.Overturning[1].Holds, "Nmm", clause)
}

func (r *Result) derivePresumptive(s *derive.Sheet) {
	in, float := r.in, ""
	if r.Head > 0 {
		float = " + U"
	}
	r.deriveLoad(s, r.Contact, "unfactored", true)
	s.Given("e_x", r.Contact.Ex, "mm", "statics")
	s.Given("e_y", r.Contact.Ey, "mm", "statics")
	s.Given("e", r.Contact.E, "mm", "statics")
	if in.Shape == Circle {
		s.Step("p_max", "max(0, V"+float+") / (pi D_f^2 / 4) (1 + 8 e / D_f)", r.Peak, "MPa", "statics")
	} else {
		s.Step("p_max", "max(0, V"+float+") / (b_x b_y) (1 + 6 e_x / b_x + 6 e_y / b_y)", r.Peak, "MPa", "statics")
	}
	s.Given("p_a", in.Presumptive.Pressure, "MPa", in.Presumptive.Source)
}

func (r *Result) derivePunch(s *derive.Sheet) {
	in, p := r.in, r.Punch
	if p.Area == 0 {
		return
	}
	clause := "Meyerhof and Hanna 1978" + memory
	r.deriveLoad(s, p.Load, r.actionSource(p.set, p.set.late), true)
	r.deriveArea(s, p.Load, p.Effective)
	s.Given("c_2", in.Layer.Clay, "MPa", "clay below the layer, characteristic")
	r.deriveMaterial(s, "gamma_cu", p.set.cu)
	s.Step("c_2,d", "c_2 / gamma_cu", p.Clay, "MPa", r.reduced())
	if p.Reason != "" {
		return
	}
	s.Given("H_1", in.Layer.Thickness, "mm", "layer")
	s.Given("K_s", in.Layer.Punching, "", "punching shear, as given")
	s.Given("phi_1", p.Friction, "rad", "design angle of the layer")
	s.Step("i_c", "0.5 (1 + sqrt(1 - H / (A' c_2,d)))", p.I, "", "EN 1997-1:2004 D.3")
	switch {
	case p.Slant == 0:
		s.Given("i_s", 0, "", "the force is inclined by phi_1 or more: the layer does not count")
	case p.H > 0:
		s.Step("i_s", "(1 - acos(V / sqrt(V^2 + H^2)) / phi_1)^2", p.Slant, "", "our own choice, by analogy with Meyerhof's i_gamma")
	default:
		s.Given("i_s", 1, "", "the force is straight down")
	}
	switch {
	case in.Shape != Circle:
		s.Step("u_1", "2 (B' + L')", p.Rim, "mm", "edge along which the layer shears")
	case p.E == 0:
		s.Step("u_1", "pi D_f", p.Rim, "mm", "edge along which the layer shears")
	default:
		s.Step("u_1", "min(4 R_f acos(e / R_f), 2 (B' + L'))", p.Rim, "mm", "edge along which the layer shears")
	}
	s.Step("q_ult", "(1 + 0.2 B' / L') (pi + 2) c_2,d i_c + u_1 / (2 A') H_1 (gamma_e H_1 + 2 q') K_s i_s tan(phi_1) + q'",
		p.Pressure, "MPa", clause)
	r.deriveResistance(s, p.set, p.Resistance)
}
