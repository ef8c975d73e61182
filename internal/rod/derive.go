package rod

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
)

// Derive writes the calculation step by step.
func (r *Result) Derive(s *derive.Sheet) {
	in := r.in
	us := in.Design.Basis.US()
	switch in.Design.Basis {
	case basis.Eurocode:
		s.Factor("gamma_M2", in.Design.EC.GammaM2, "EN 1993-1-8:2005 Table 2.1")
	case basis.USLRFD:
		s.Factor("phi", basis.Rupture.Phi, clauseJ37)
	default:
		s.Factor("Omega", basis.Rupture.Omega, clauseJ37)
	}
	r.deriveSteel(s)
	_, fu, _ := in.Plate.Steel.At(in.Plate.Thickness)
	s.Given("f_u", fu, "MPa", "plate")
	s.Given("t_p", in.Plate.Net(), "mm", "plate, corrosion taken off")
	s.Given("d_0", in.Holes.Diameter, "mm", "hole")
	r.deriveForces(s)
	if us {
		r.deriveUS(s)
	} else {
		r.deriveEC(s)
	}
	r.deriveGap(s)
	if h := &in.Holes; h.Tolerance > 0 {
		s.Given("tol", h.Tolerance, "mm", "position tolerance")
		s.Step("play", "(d_0 - d) / 2", (h.Diameter-in.Rod.Thread.Diameter)/2, "mm", "geometry")
	}
	if clause := tight.Clause[in.Design.Basis]; us {
		s.Given("e_min", r.Edge.EdgeNeed, "mm", "least edge distance, by the table for d and what a wider hole adds; "+clause)
		s.Step("p_min", "8 / 3 d", r.Edge.HoleNeed, "mm", "least spacing; "+clause)
	} else {
		s.Step("e_min", "1.2 d_0", r.Edge.EdgeNeed, "mm", "least edge distance; "+clause)
		s.Step("p_min", "2.4 d_0", r.Edge.HoleNeed, "mm", "least spacing; "+clause)
	}
	s.Given("e_p", r.Edge.Has, "mm", "the tightest distance of the pattern")
}

// DeriveForces writes the forces of the rods, for a part that uses them.
func (r *Result) DeriveForces(s *derive.Sheet) { r.deriveForces(s) }

func (r *Result) deriveForces(s *derive.Sheet) {
	in, w := r.in, &r.Worst
	s.Given("n", float64(len(in.At)), "", "rods")
	if r.Friction > 0 {
		r.Rub.Derive(s)
	}
	if len(in.Each) > 0 {
		s.Given("F_t,Ed", w.Ft, "N", "greatest tension given")
		s.Given("F_v,Ed", w.Fv, "N", "greatest shear given")
		return
	}
	a, g, sh := &in.Actions, &r.Share.Group, &r.Share
	s.Given("N", a.N, "N", "tension positive")
	s.Given("M_x", a.Mx, "Nmm", "about x")
	s.Given("M_y", a.My, "Nmm", "about y")
	s.Given("V_x", a.Vx, "N", "along x")
	s.Given("V_y", a.Vy, "N", "along y")
	s.Given("T", a.T, "Nmm", "torsion")
	s.Given("X_c", g.X, "mm", "centroid of the rods")
	s.Given("Y_c", g.Y, "mm", "centroid of the rods")
	s.Given("I_x", g.Ix, "mm2", "sum of (y - Y_c)^2")
	s.Given("I_y", g.Iy, "mm2", "sum of (x - X_c)^2")
	s.Given("I_xy", g.Ixy, "mm2", "sum of (x - X_c)(y - Y_c)")
	if r.Tense && r.TensionReason == "" {
		p := in.At[w.Tension]
		s.Given("a_x", sh.SlopeX, "N/mm", "slope of the tensions along x: elastic group")
		s.Given("a_y", sh.SlopeY, "N/mm", "slope of the tensions along y: elastic group")
		s.Given("x_t", p.X, "mm", "rod with the greatest tension")
		s.Given("y_t", p.Y, "mm", "rod with the greatest tension")
		s.Step("F_t,Ed", "N / n + a_x (x_t - X_c) + a_y (y_t - Y_c)", w.Ft, "N", "elastic group")
	} else {
		s.Given("F_t,Ed", 0, "N", noTension)
	}
	if r.ShearReason != "" || !r.Sheared {
		s.Given("F_v,Ed", w.Fv, "N", "shear of a rod")
		return
	}
	p := in.At[w.Shear]
	f := r.Force(w.Shear)
	if r.Friction > 0 {
		s.Step("V", "sqrt(V_x^2 + V_y^2)", r.V, "N", "statics")
		s.Step("k_V", "max(0, 1 - "+r.rubs()+" / V)", r.Left, "", "share of the shear that friction leaves")
	} else {
		s.Given("k_V", 1, "", "share of the shear that friction leaves: none is counted")
	}
	s.Given("t_J", sh.Turn, "N/mm", "torsion about the centroid over I_x + I_y")
	s.Given("x_v", p.X, "mm", "rod with the greatest shear")
	s.Given("y_v", p.Y, "mm", "rod with the greatest shear")
	s.Step("V_ix", "k_V (V_x / n - t_J (y_v - Y_c))", f.ShearX, "N", "elastic group")
	s.Step("V_iy", "k_V (V_y / n + t_J (x_v - X_c))", f.ShearY, "N", "elastic group")
	s.Step("F_v,Ed", "sqrt(V_ix^2 + V_iy^2)", w.Fv, "N", "statics")
}

// deriveSteel writes what is left of a rod.
func (r *Result) deriveSteel(s *derive.Sheet) {
	in := r.in
	s.Given("d", in.Rod.Thread.Diameter, "mm", "nominal diameter")
	s.Given("A_s,0", in.Rod.Thread.StressArea, "mm2", "stress area as made")
	s.Given("delta", in.Rod.Corrosion, "mm", "diameter lost to corrosion")
	s.Step("d_n", "d - delta", r.D, "mm", "diameter left")
	s.Step("d_s", "sqrt(4 A_s,0 / pi) - delta", r.Ds, "mm", "diameter of the stress area left")
	s.Step("A_s", "pi / 4 d_s^2", r.As, "mm2", "stress area left")
	s.Given("f_ub", in.Rod.Steel.Fu, "MPa", "rod")
	s.Given("f_yb", in.Rod.Steel.Fy, "MPa", "rod")
}

// deriveStrength writes the tension resistance of a rod by Eurocode.
func (r *Result) deriveStrength(s *derive.Sheet) {
	s.Given("k_2", r.EC.K2, "", clauseTension)
	s.Given("k_cut", r.EC.Cut, "", "threads; EN 1993-1-8:2005 3.6.1(3)")
	s.Step("F_t,Rd", "k_cut k_2 f_ub A_s / gamma_M2", r.FtRd, "N", clauseTension)
}

// DeriveTension writes where the tension resistance of one rod by Eurocode comes
// from, for a part that uses it.
func (r *Result) DeriveTension(s *derive.Sheet) {
	s.Factor("gamma_M2", r.in.Design.EC.GammaM2, "EN 1993-1-8:2005 Table 2.1")
	r.deriveSteel(s)
	r.deriveStrength(s)
}

func (r *Result) deriveEC(s *derive.Sheet) {
	in, e, w := r.in, &r.EC, &r.Worst
	r.deriveStrength(s)
	s.Step("u_t", "F_t,Ed / F_t,Rd", w.Ft/r.FtRd, "", clauseTension)
	s.Given("k_w", e.Wide, "", "EN 1993-1-8:2005 3.6.1(5)")
	s.Given("alpha_v", e.AlphaV, "", clauseShear)
	s.Given("A_v", e.Av, "mm2", "A_s, or the shank's area where it stands in the shear plane")
	s.Step("F_v,Rd", "k_cut k_w alpha_v f_ub A_v / gamma_M2", r.FvRd, "N", clauseShear)
	s.Step("u_v", "F_v,Ed / F_v,Rd", w.Fv/r.FvRd, "", clauseShear)
	if w.Combined >= 0 {
		s.Given("F_t,c", w.Ftc, "N", "governing rod, tension")
		s.Given("F_v,c", w.Fvc, "N", "governing rod, shear")
		s.Step("u_c", "F_v,c / F_v,Rd + F_t,c / (1.4 F_t,Rd)", w.Interaction, "", clauseCombined)
	}
	if (r.V > 0 || r.Sheared) && in.StandOff.Gap == 0 && !e.NoAlpha {
		r.deriveBaseEC(s)
	}
	if w.Bearing >= 0 {
		h := surround(in, w.Bearing, w.AlongY)
		_, fu, _ := in.Plate.Steel.At(in.Plate.Thickness)
		alpha, k1 := bearingFactors(&h, in.Holes.Diameter, in.Rod.Steel.Fu/fu)
		s.Given("e_1", h.E1, "mm", "nearest edge along the force")
		s.Given("e_2", h.E2, "mm", "nearest edge across it")
		s.Given("p_1", h.P1, "mm", "nearest hole along the force; 1e9: none")
		s.Given("p_2", h.P2, "mm", "nearest hole across it; 1e9: none")
		s.Step("alpha_b", "min(e_1 / (3 d_0), p_1 / (3 d_0) - 1 / 4, f_ub / f_u, 1)", alpha, "", clauseBearing)
		s.Step("k_1", "min(2.8 e_2 / d_0 - 1.7, 1.4 p_2 / d_0 - 1.7, 2.5)", k1, "", clauseBearing)
		over := 1.0
		if r.Oversize {
			over = oversizedBear
		}
		s.Given("k_o", over, "", "0.8 for oversized holes; "+clauseBearing)
		s.Step("F_b,Rd", "max(0, k_o k_1 alpha_b f_u d_n t_p / gamma_M2)", w.FbRd, "N", clauseBearing)
		s.Given("F_b,Ed", w.Fb, "N", "component of the governing rod's shear")
	}
	s.Given("d_m", e.Dm, "mm", "mean width of the nut")
	s.Step("B_p,Rd", "0.6 pi d_m t_p f_u / gamma_M2", e.BpRd, "N", clausePunch)
	s.Step("u_p", "F_t,Ed / B_p,Rd", w.Ft/e.BpRd, "", clausePunch)
	r.deriveWasher(s)
}

// rubs returns the symbol of what friction takes.
func (r *Result) rubs() string {
	if r.in.Design.Basis.US() {
		return "F_f"
	}
	return "F_f,Rd"
}

func (r *Result) deriveWasher(s *derive.Sheet) {
	in := r.in
	if !(r.Washer > 0) || !r.spans() {
		return
	}
	factor, source := basis.Flexure.Factor(in.Design.Basis), "0.90, or 1/1.67; AISC 360-22 F1"
	if !in.Design.Basis.US() {
		factor, source = 1/in.Design.EC.GammaM0, "1/gamma_M0; EN 1993-1-1:2005 6.1(1)"
	}
	s.Factor("f_b", factor, source)
	s.Given("F_y", r.washerFy(), "MPa", "plate washer")
	s.Given("s_w", in.Holes.WasherSide, "mm", "plate washer")
	s.Given("t_w", in.Holes.WasherThickness, "mm", "plate washer")
	s.Step("R_w", "f_b F_y max(0, s_w - d - 2) t_w^2 / d_0", r.Washer, "N", clauseWasher)
}

func (r *Result) deriveBaseEC(s *derive.Sheet) {
	e := &r.EC
	s.Given("V", r.V, "N", "shear on the base")
	s.Step("alpha_bc", "0.44 - 0.0003 f_yb", e.AlphaBc, "", "EN 1993-1-8:2005 6.2.2(7)")
	s.Step("F_2,vb,Rd", "alpha_bc f_ub A_s / gamma_M2", e.F2vb, "N", "EN 1993-1-8:2005 6.2.2(7)")
	s.Given("F_1,vb,Rd", e.F1vb, "N", "least of F_v,Rd and the plate's bearing; Table 3.4")
	s.Step("F_vb,Rd", "min(F_1,vb,Rd, F_2,vb,Rd)", e.FvbRd, "N", "EN 1993-1-8:2005 6.2.2(7)")
	s.Given("n_v", r.carrying(), "", "rods that carry shear")
	formula := "n_v F_vb,Rd"
	if r.Friction > 0 {
		formula = "F_f,Rd + " + formula
	}
	s.Step("F_v,base", formula, e.FvRd, "N", clauseBase)
	s.Step("u_2", "F_v,Ed / F_2,vb,Rd", r.Worst.Fv/e.F2vb, "", clauseAnchor)
}
