package ground

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/material"
)

const (
	memory = " (not compared with the printed edition)"
	bowles = "Bowles, 5th ed., Tables 4-1 to 4-5" + memory
)

// Derive writes the check down.
func (r *Result) Derive(to *derive.Sheet) {
	s, in := to, r.in
	s.Given("W", in.Weight, "N", "footing, stack and soil above")
	s.Given("h", in.Height, "mm", "from the base to where the actions act")
	if in.Shape == Circle {
		s.Given("D_f", in.Diameter, "mm", "footing")
	} else {
		s.Given("b_x", in.SizeX, "mm", "footing")
		s.Given("b_y", in.SizeY, "mm", "footing")
	}
	r.deriveActions(s)
	s.Given("d", in.Depth, "mm", "depth of the base")
	if r.Head > 0 {
		s.Given("gamma_w", material.WaterWeight, "N/mm3", "water")
		s.Given("d_w", in.Soil.Water, "mm", "depth of the water")
		s.Step("u_w", "gamma_w (d - d_w)", r.Head, "MPa", "statics; water above the base")
		if in.Shape == Circle {
			s.Step("U", "u_w pi D_f^2 / 4", r.Buoyancy, "N", "buoyancy")
		} else {
			s.Step("U", "u_w b_x b_y", r.Buoyancy, "N", "buoyancy")
		}
	}
	if in.known() {
		s.Given("gamma_a", in.Soil.Above, "N/mm3", "ground above the base")
		s.Step("q", "gamma_a d", r.Beside, "MPa", "statics")
		if r.Head > 0 {
			s.Step("q'", "max(0, q - u_w)", r.Overburden, "MPa", "effective")
		} else {
			s.Step("q'", "q", r.Overburden, "MPa", "effective; no water above the base")
		}
		s.Given("gamma_b", in.Soil.Below, "N/mm3", "ground below the base, wet")
		if r.Weight != in.Soil.Below {
			s.Given("gamma_w", material.WaterWeight, "N/mm3", "water")
			s.Step("gamma_e", "gamma_b - gamma_w", r.Weight, "N/mm3", "water within one width below the base")
		} else {
			s.Step("gamma_e", "gamma_b", r.Weight, "N/mm3", "no water within one width below the base")
		}
		for i := range r.Bearing {
			if !in.thin() && (r.Bearing[i].Author != Terzaghi || r.Bearing[i].H == 0) {
				r.deriveBearing(s, &r.Bearing[i])
			}
		}
		if r.Sliding != nil {
			r.deriveSliding(s)
		}
	}
	if r.Share > 0 && !r.Lifted {
		r.deriveReach(s)
	}
	r.deriveBalance(s)
	if in.Presumptive.Pressure > 0 && r.Kern && in.Design.Basis != basis.USLRFD {
		r.derivePresumptive(s)
	}
	if r.Punch != nil && !in.thin() {
		r.derivePunch(s)
	}
}

// deriveActions notes the actions, all of which the loads are made of.
func (r *Result) deriveActions(s *derive.Sheet) {
	g, q := &r.in.Permanent, &r.in.Variable
	s.Given("N_G", g.N, "N", "permanent, tension positive")
	s.Given("V_x,G", g.Vx, "N", "permanent")
	s.Given("V_y,G", g.Vy, "N", "permanent")
	s.Given("M_x,G", g.Mx, "Nmm", "permanent")
	s.Given("M_y,G", g.My, "Nmm", "permanent")
	if r.in.lift() > 0 {
		s.Given("L_G", r.in.lift(), "N", "of the permanent force, what lifts by a source of its own")
	}
	s.Given("N_Q", q.N, "N", "variable, tension positive")
	s.Given("V_x,Q", q.Vx, "N", "variable")
	s.Given("V_y,Q", q.Vy, "N", "variable")
	s.Given("M_x,Q", q.Mx, "Nmm", "variable")
	s.Given("M_y,Q", q.My, "Nmm", "variable")
}

// deriveLoad writes one load on the base; full with its eccentricities.
func (r *Result) deriveLoad(s *derive.Sheet, l Load, source string, full bool) {
	s.Factor("gamma_G", l.GammaG, source)
	s.Factor("gamma_Q", l.GammaQ, source+"; 0 where left out as favourable")
	s.Factor("gamma_Q,N", l.GammaP, source+"; on the force across the base")
	s.Step("V", r.across(s, l, source), l.V, "N", "statics")
	s.Step("H_x", r.one("V_x"), l.Hx, "N", "statics")
	s.Step("H_y", r.one("V_y"), l.Hy, "N", "statics")
	s.Step("H", "sqrt(H_x^2 + H_y^2)", l.H, "N", "statics")
	if !full {
		return
	}
	s.Step("M_x", r.one("M_x")+" + H_y h", l.Mx, "Nmm", "statics; magnitudes added")
	s.Step("M_y", r.one("M_y")+" + H_x h", l.My, "Nmm", "statics; magnitudes added")
	if l.V > 0 {
		s.Step("e_x", "M_y / V", l.Ex, "mm", "statics")
		s.Step("e_y", "M_x / V", l.Ey, "mm", "statics")
		s.Step("e", "sqrt(e_x^2 + e_y^2)", l.E, "mm", "statics")
	}
}

// across writes the force across the base.
func (r *Result) across(s *derive.Sheet, l Load, source string) string {
	text := "gamma_G (W - N_G) - gamma_Q,N N_Q"
	if l.GammaW != l.GammaG {
		s.Factor("gamma_W", l.GammaW, source+"; on the weight and what presses, of another source")
		text = "gamma_W (W - N_G) - gamma_Q,N N_Q"
		if r.in.lift() > 0 {
			text = "gamma_W (W - N_G + L_G) - gamma_G L_G - gamma_Q,N N_Q"
		}
	}
	if r.Head > 0 {
		text += " - U"
	}
	return text
}

// one writes the magnitude of a component; where variable actions count one by one,
// one against the permanent is left out.
func (r *Result) one(symbol string) string {
	text := "abs(gamma_G " + symbol + ",G + gamma_Q " + symbol + ",Q)"
	if r.in.apart() {
		return "max(" + text + ", abs(gamma_G " + symbol + ",G))"
	}
	return text
}

// actionSource returns the source of the factors on actions; f is nil where no
// approach is named.
func (r *Result) actionSource(f *set, late bool) string {
	if r.in.Design.Basis.US() {
		return "actions of one combination as given"
	}
	name := ""
	if f != nil {
		name = ", " + f.name
	}
	if late {
		return "characteristic, for eccentricity and inclination; EN 1997-1:2004 2.4.7.3.4" + name
	}
	if !r.in.recommended() {
		return "EN 1997-1:2004 Table A.3 with factors as given" + name
	}
	return "EN 1997-1:2004 Table A.3" + name
}

// reduced returns the source of design strengths.
func (r *Result) reduced() string {
	if r.in.Design.Basis.US() {
		return "strength as given"
	}
	return "EN 1997-1:2004 2.4.6.2"
}

func (r *Result) deriveArea(s *derive.Sheet, l Load, a Effective) {
	clause := "EN 1997-1:2004 D.2; Meyerhof 1953"
	switch {
	case r.in.Shape != Circle:
		s.Step("B'", "min(b_x - 2 e_x, b_y - 2 e_y)", a.Width, "mm", clause)
		s.Step("L'", "max(b_x - 2 e_x, b_y - 2 e_y)", a.Length, "mm", clause)
		s.Step("A'", "B' L'", a.Area, "mm2", clause)
	case l.E == 0:
		s.Step("A'", "pi D_f^2 / 4", a.Area, "mm2", "geometry")
		s.Step("L'", "sqrt(A')", a.Length, "mm", "geometry")
		s.Step("B'", "A' / L'", a.Width, "mm", "geometry")
	default:
		clause = "API RP 2GEO, DNV-ST-0126" + memory
		s.Step("R_f", "D_f / 2", r.in.Diameter/2, "mm", "geometry")
		s.Step("A'", "2 (R_f^2 acos(e / R_f) - e sqrt(R_f^2 - e^2))", a.Area, "mm2", clause)
		s.Step("L'", "sqrt(A' sqrt(R_f^2 - e^2) / (R_f - e))", a.Length, "mm", clause)
		s.Step("B'", "A' / L'", a.Width, "mm", clause)
	}
}

func (r *Result) deriveSliding(s *derive.Sheet) {
	in, one := r.in, r.Sliding
	clause := sliding.Clause[in.Design.Basis]
	r.deriveLoad(s, one.Load, r.actionSource(one.set, false), !one.Drained)
	over := "gamma_R,h"
	s.Given("k_i", in.Interface.Share, "", "share of the angle of friction on the base")
	if in.Design.Basis.US() {
		over = "FS_s"
		if in.Slip > 0 {
			s.Factor("phi_s", in.Slip, "as given")
			s.Step(over, "1 / phi_s", one.set.rh, "", "LRFD")
		} else {
			s.Factor(over, one.set.rh, "factor of safety; 1.5 is common practice")
		}
	} else {
		s.Factor(over, one.set.rh, "EN 1997-1:2004 Table A.5"+memory)
	}
	if one.Drained {
		s.Given("phi_cv", in.critical(), "rad", "at constant volume")
		r.deriveMaterial(s, "gamma_phi", one.set.phi)
		s.Step("R_h", "max(0, V) tan(k_i phi_cv) / gamma_phi / "+over, one.Resistance, "N", clause)
		return
	}
	s.Given("c_u,k", in.Soil.Undrained, "MPa", "undrained, characteristic")
	r.deriveMaterial(s, "gamma_cu", one.set.cu)
	if one.Area > 0 {
		r.deriveArea(s, one.Load, one.Effective)
	} else {
		s.Given("A'", 0, "mm2", "no contact")
	}
	if in.Interface.Sealed {
		s.Step("R_h", "A' k_i c_u,k / gamma_cu / "+over, one.Resistance, "N", clause)
		return
	}
	if in.Design.Basis.US() {
		s.Step("R_h", "min(A' k_i c_u,k / gamma_cu, 0.4 max(0, V)) / FS_s", one.Resistance, "N", clause)
		return
	}
	s.Step("R_h", "min(A' k_i c_u,k / gamma_cu / gamma_R,h, 0.4 max(0, V))", one.Resistance, "N", clause)
}
