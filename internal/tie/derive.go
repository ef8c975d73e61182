package tie

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
)

// Derive writes the calculation step by step.
func (r *Result) Derive(s *derive.Sheet) {
	r.deriveSteel(s)
	r.deriveWeight(s)
	r.deriveSprings(s)
	if r.Pull > 0 {
		r.derivePlate(s)
	}
}

// deriveSteel writes what the bottom plate resists in bending.
func (r *Result) deriveSteel(s *derive.Sheet) {
	in := r.in
	fy, _, _ := in.Plate.Steel.At(in.Plate.Thickness)
	s.Given("t_b", in.Plate.Net(), "mm", "bottom plate, corrosion taken off")
	s.Given("f_yb", fy, "MPa", "bottom plate")
	clause := bending.Clause[in.Design.Basis]
	if in.Design.Basis.US() {
		r.deriveFactor(s, "k_b", basis.Flexure, "AISC 360-22 F1")
		s.Step("m_R", "k_b f_yb t_b^2 / 4", r.Resists, "Nmm/mm", clause)
		return
	}
	s.Factor("gamma_M0", in.Design.EC.GammaM0, "EN 1993-1-1:2005 6.1(1)")
	s.Step("m_R", "f_yb t_b^2 / (6 gamma_M0)", r.Resists, "Nmm/mm", clause)
}

func (r *Result) deriveWeight(s *derive.Sheet) {
	in, a := r.in, &r.in.Actions
	source := uplift.Clause[in.Design.Basis]
	if in.Share > 0 {
		source = "given in the request"
	}
	s.Factor("gamma_stb", r.Share, "weight that the rods hold; "+source)
	if !in.ClampedFound {
		s.Given("W", in.Clamped, "N", "what the rods clamp")
	}
	s.Given("b_x", in.Plate.SizeX, "mm", "bottom plate")
	s.Given("b_y", in.Plate.SizeY, "mm", "bottom plate")
	s.Given("h_s", in.Soil.Depth, "mm", "depth of the bottom plate")
	s.Given("gamma_s", in.Soil.Weight, "N/mm3", "ground outside the prism above the plate")
	s.Given("theta", in.Soil.Angle, "rad", "from the vertical")
	s.Step("W_s", "gamma_s h_s^2 tan(theta) (b_x + b_y + pi / 3 h_s tan(theta))", r.Outside, "N", "geometry")
	s.Step("W_d", "gamma_stb (W + W_s)", r.Holds, "N", uplift.Clause[in.Design.Basis])
	s.Given("N", a.N, "N", "tension positive")
	s.Given("H", in.Height, "mm", "from the foot to the underside of the bottom plate")
	s.Given("M_y", a.My, "Nmm", "about y")
	s.Given("V_x", a.Vx, "N", "along x")
	r.deriveArm(s, "x", "y", 0)
	s.Step("M_dst,x", "max(0, N) a_x + abs(M_y) + abs(V_x) H", r.Turn[0].Demand, "Nmm", "statics")
	s.Step("M_stb,x", "(gamma_stb W + max(0, 0 - N)) a_x", r.Turn[0].Holds, "Nmm", "statics")
	s.Given("M_x", a.Mx, "Nmm", "about x")
	s.Given("V_y", a.Vy, "N", "along y")
	r.deriveArm(s, "y", "x", 1)
	s.Step("M_dst,y", "max(0, N) a_y + abs(M_x) + abs(V_y) H", r.Turn[1].Demand, "Nmm", "statics")
	s.Step("M_stb,y", "(gamma_stb W + max(0, 0 - N)) a_y", r.Turn[1].Holds, "Nmm", "statics")
}

// deriveArm writes the arm of the line about which the foot turns along one axis.
func (r *Result) deriveArm(s *derive.Sheet, axis, across string, i int) {
	t := &r.Turn[i]
	if t.Fill >= [2]float64{r.in.Plate.SizeX, r.in.Plate.SizeY}[i]/2 || r.Share*r.in.Clamped+max(0, -r.in.Actions.N) == 0 {
		s.Step("a_"+axis, "b_"+axis+" / 2", t.Arm, "mm", "edge of the bottom plate")
		return
	}
	s.Given("r_"+axis, t.Fill, "mm", "half of the fill that presses on the bottom plate")
	s.Step("a_"+axis, "min(b_"+axis+" / 2, r_"+axis+" + m_R b_"+across+" / (gamma_stb W + max(0, 0 - N)))", t.Arm, "mm",
		"as far as the bottom plate carries what holds")
}

func (r *Result) derivePlate(s *derive.Sheet) {
	in, b := r.in, worst(&r.Bend)
	if in.Preload > 0 {
		r.derivePreloaded(s)
	}
	_, fu, _ := in.Plate.Steel.At(in.Plate.Thickness)
	us := in.Design.Basis.US()
	s.Given("T", r.Pull, "N", "tension of the rods together")
	if in.Preload == 0 {
		s.Given("F_t", r.Ft, "N", "rod with the greatest tension")
	}
	s.Given("f_ub", fu, "MPa", "bottom plate")
	s.Given("d_m", in.Nut, "mm", "nut or washer")
	switch {
	case us:
		r.deriveFactor(s, "k_r", basis.Rupture, "AISC 360-22 J4.2")
		s.Step("R_p", "k_r 0.6 f_ub pi d_m t_b", r.Punch, "N", punching.Clause[in.Design.Basis])
	default:
		s.Factor("gamma_M2", in.Design.EC.GammaM2, "EN 1993-1-8:2005 Table 2.1")
		s.Step("R_p", "0.6 pi d_m t_b f_ub / gamma_M2", r.Punch, "N", punching.Clause[in.Design.Basis])
	}
	if b.Reason != "" {
		return
	}
	if r.bare[axis(&r.Bend)] {
		sum := 0.0
		for _, t := range in.Each {
			sum += t
		}
		s.Given("T", sum, "N", "tension of the rods together, the preload lost")
	}
	deriveBend(s, r, b, "b", "T", "m_s")
}

// deriveBend writes the section of a plate that governs: at ends its symbols, pull is the
// force on the plate.
func deriveBend(s *derive.Sheet, r *Result, b *Bend, at, pull, moment string) {
	if b.Round {
		s.Given("R_"+at, b.Half, "mm", "radius of the circle of pressure round the resultant")
		s.Step("p_"+at, pull+" / (pi R_"+at+"^2)", b.Load, "MPa", "statics")
	} else {
		s.Given("c_"+at, b.Half, "mm", "half the block of pressure along the axis that governs")
		s.Step("p_"+at, pull+" / (2 c_"+at+")", b.Load, "N/mm", "statics")
	}
	s.Given("s_"+at, b.At, "mm", "section that governs, from the middle of the plate")
	s.Given("M_"+at, b.M, "Nmm", "moment of rods and pressure beyond it; statics")
	s.Given("b_"+at, b.Width, "mm", "width over which it spreads: from the nuts at 45 degrees to that section, or as far as the pressure reaches past it, within the plate, holes taken off; common practice, no source")
	s.Step(moment, "abs(M_"+at+") / b_"+at, b.PerMM, "Nmm/mm", "statics")
}

// derivePreloaded writes what the initial preload adds to the rods and does above.
func (r *Result) derivePreloaded(s *derive.Sheet) {
	in := r.in
	t := in.Each[r.tense]
	s.Given("t_a", t, "N", "that rod by the actions")
	s.Given("P_h", in.Held, "N", "preload that is in t_a")
	if in.Stack > 0 {
		s.Step("F_t", "max(t_a, P_0 + max(0, t_a - P_h) k_r / (k_r + k_m))", r.Ft, "N", "springs in parallel")
	} else {
		s.Step("F_t", "max(t_a, P_0 + max(0, t_a - P_h))", r.Ft, "N", "stack of unknown stiffness")
	}
	if b := worst(&r.Top); in.Top.Thickness > 0 && b.Reason == "" {
		s.Given("n_t", float64(len(in.At)), "", "rods")
		s.Step("T_0", "n_t P_0", float64(len(in.At))*in.Preload, "N", "initial preload of all rods")
		deriveBend(s, r, b, "u", "T_0", "m_u")
	}
}

func (r *Result) deriveFactor(s *derive.Sheet, symbol string, f basis.Strength, source string) {
	b := r.in.Design.Basis
	if b == basis.USLRFD {
		s.Factor("phi", f.Phi, source)
		s.Step(symbol, "phi", f.Factor(b), "", source)
		return
	}
	s.Factor("Omega", f.Omega, source)
	s.Step(symbol, "1 / Omega", f.Factor(b), "", source)
}

func (r *Result) deriveSprings(s *derive.Sheet) {
	in := r.in
	s.Given("E", in.Modulus, "MPa", "rods")
	s.Given("A_s", in.RodArea, "mm2", "stress area left")
	s.Given("L", in.Length, "mm", "length that stretches")
	if r.Acts > 0 {
		s.Given("F_a", r.Acts, "N", "rod that the actions pull most")
		s.Step("delta_t", "F_a L / (E A_s)", r.Stretch, "mm", "statics")
	}
	if in.Preload == 0 {
		return
	}
	k := &r.Springs
	s.Given("n_r", float64(len(in.At)), "", "rods")
	s.Step("k_r", "n_r E A_s / L", k.Rods, "N/mm", "statics")
	s.Given("s_f", in.Settlement, "mm", "settlement of the fill after tightening")
	s.Given("N_l", r.Load, "N", "compression after tightening")
	if in.Stack > 0 {
		s.Given("k_m", in.Stack, "N/mm", "stiffness of the stack")
		s.Step("P_s", "s_f / (1 / k_r + 1 / k_m) / n_r", k.Settled, "N", "springs in series")
		s.Step("P_l", "N_l k_r / (k_r + k_m) / n_r", k.Load, "N", "springs in parallel")
	} else {
		s.Step("P_s", "s_f k_r / n_r", k.Settled, "N", "at most, a rigid stack")
		s.Step("P_l", "N_l / n_r", k.Load, "N", "at most, a soft stack")
	}
	s.Given("P_0", in.Preload, "N", "preload of a rod when tightened")
	s.Given("rho", in.Relaxed, "", "share lost to relaxation")
	s.Step("P_left", "max(0, P_0 (1 - rho) - P_s - P_l)", k.Left, "N", "springs in series")
}
