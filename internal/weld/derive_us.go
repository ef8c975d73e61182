package weld

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
)

// available writes a nominal strength made available: "phi R" or "R / Omega".
func (r *Result) available(mark, formula string) string {
	if r.in.Design.Basis == basis.USLRFD {
		return "phi" + mark + " " + formula
	}
	return formula + " / Omega" + mark
}

func (r *Result) deriveUS(s *derive.Sheet) {
	if r.beyondUS() != "" {
		return
	}
	r.deriveForces(s)
	w := &r.in.Weld
	s.Given("F_EXX", w.Filler.Strength, "MPa", "filler")
	switch {
	case r.byCentre():
		r.deriveCentre(s)
	case w.Type == Fillet:
		r.deriveMetal(s)
	case w.Type == PartialPenetration:
		u := &r.US
		r.flow(s, "", u.GrooveSpot, u.GrooveFlow)
		s.Step("r_n", "0.6 F_EXX a", metalShare*w.Filler.Strength*r.A, "N/mm", clauseGroove)
		s.Step("r_nv", r.available("", "r_n"), u.GrooveShear, "N/mm", clauseGroove)
		s.Step("r_nt", r.available("_t", "r_n"), u.GrooveTension, "N/mm", clauseGroove)
		s.Step("u_g", "sqrt((q_par^2 + q_acr^2) / r_nv^2 + (q_nor / r_nt)^2)", u.Groove, "", clauseGroove)
	}
	r.deriveBase(s)
}

// deriveMetal holds the governing force per length against the fillet.
func (r *Result) deriveMetal(s *derive.Sheet) {
	u := &r.US
	r.flow(s, "", u.Spot, u.Flow)
	s.Step("q", "sqrt(q_par^2 + q_acr^2 + q_nor^2)", u.Demand, "N/mm", statics)
	switch {
	case r.Grouped:
		s.Given("k_ds", 1, "", "group shared elastically; AISC 360-22 J2.4")
	case u.Demand > 0 && !hollowEnd(r.in):
		s.Step("sin_theta", "sqrt(q_acr^2 + q_nor^2) / q", math.Sqrt(u.Flow.Across*u.Flow.Across+u.Flow.Normal*u.Flow.Normal)/u.Demand,
			"", "angle of the force to the axis")
		s.Step("k_ds", "1 + 0.5 sin_theta^1.5", u.Kds, "", clauseKds)
	default:
		s.Given("k_ds", u.Kds, "", "no directional increase; AISC 360-22 J2.4")
	}
	if r.Grouped {
		s.Given("l_q", r.lengthOf(u.Spot), "mm", "governing segment, or the whole of a closed line")
		s.Step("w_c", "min(w, l_q / 4)", u.Legs, "mm", clauseJ22b)
	} else {
		s.Step("w_c", "min(w, l_eff / 4)", u.Legs, "mm", clauseJ22b)
	}
	legs, leg := u.Legs, "w_c"
	if r.Grouped {
		legs, leg = r.W, "w"
	}
	ratio := r.lap() / legs
	if r.lapped() {
		s.Given("l_j", r.lap(), "mm", "lap along its force")
		s.Step("l_w", "l_j / "+leg, ratio, "", "length over leg")
	}
	switch {
	case !r.lapped():
		s.Given("beta", 1, "", "not loaded from its end; "+clauseJ22b)
	case ratio <= farLegs:
		s.Step("beta", "min(1, 1.2 - 0.002 l_w)", u.Beta, "", clauseBeta)
	default:
		s.Step("beta", "180 / l_w", u.Beta, "", clauseJ22b)
	}
	s.Step("r_n", "0.6 F_EXX k_ds beta 0.707 w_c", u.Metal/u.Factor, "N/mm", clauseMetal)
	s.Step("r_a", r.available("", "r_n"), u.Metal, "N/mm", clauseMetal)
	s.Step("u_w", "q / r_a", u.Demand/u.Metal, "", clauseMetal)
	if !r.Grouped {
		s.Step("R_n", "r_n n l_eff", u.Metal/u.Factor*r.Runs*r.Length, "N", clauseMetal)
		s.Step("R_a", "r_a n l_eff", u.Metal*r.Runs*r.Length, "N", clauseMetal)
	}
}

// deriveCentre holds the actions against the strength about the instantaneous
// centre.
func (r *Result) deriveCentre(s *derive.Sheet) {
	c := &r.Centre
	if c.Demand == 0 || !c.Converged {
		return
	}
	s.Given("n_e", float64(c.Elements), "", "elements of the weld")
	s.Step("V", "sqrt(V_x^2 + V_y^2)", c.Force, "N", statics)
	unit := "N"
	switch {
	case c.Moment:
		unit = "Nmm"
		s.Given("R_n", c.Nominal, unit, "moment of all elements about the instantaneous centre; "+clauseCentre)
	case c.Between:
		s.Step("e", "abs(T_c) / V", c.Torsion/c.Force, "mm", "eccentricity of the force")
		s.Given("e_1", c.Arm, "mm", "0.1 of the longest segment, below which the strength is interpolated")
		s.Given("R_0", c.Concentric, unit, "strength without eccentricity; AISC 360-22 J2.4")
		s.Given("R_1", c.AtArm, unit, "strength at e_1: sum of all elements; "+clauseCentre)
		s.Step("R_n", "R_0 + (R_1 - R_0) e / e_1", c.Nominal, unit, "between the two")
	default:
		s.Step("e", "abs(T_c) / V", c.Torsion/c.Force, "mm", "eccentricity of the force")
		s.Given("R_n", c.Nominal, unit, "resultant of all elements; "+clauseCentre)
	}
	s.Given("x_ic", c.X, "mm", "instantaneous centre from the centroid, along x")
	s.Given("y_ic", c.Y, "mm", "instantaneous centre from the centroid, along y")
	s.Step("R_a", r.available("", "R_n"), c.Available, unit, clauseMetal)
	if c.Moment {
		s.Step("u_ic", "abs(T_c) / R_a", c.Demand/c.Available, "", clauseCentre)
	} else {
		s.Step("u_ic", "V / R_a", c.Demand/c.Available, "", clauseCentre)
	}
}

// elasticAgain notes what the elastic forces on the base metal are made of.
func (r *Result) elasticAgain(s *derive.Sheet) {
	s.Step("t_J", "T_c / J", r.Share.Turn, "MPa", vectorShare)
	s.Given("a_x", 0, "MPa", "actions in the plane of the weld only")
	s.Given("a_y", 0, "MPa", "actions in the plane of the weld only")
}

// deriveBase holds the governing force per length against the base metal.
func (r *Result) deriveBase(s *derive.Sheet) {
	u := &r.US
	if u.Base == 0 {
		return
	}
	if r.byCentre() {
		r.elasticAgain(s)
	}
	fy, fu := r.in.Weld.Parts[u.Part].strengths()
	put := r.flow(s, ",b", u.BaseSpot, u.BaseFlow)
	s.Given("t_b", r.baseThickness(u.Part), "mm", "governing part")
	s.Given("F_y", fy, "MPa", "governing part")
	s.Given("F_u", fu, "MPa", "governing part")
	s.Given("k_s", r.Sections, "", "thicknesses over the runs that share them")
	shear := "min(" + r.available("_vy", "0.6 F_y") + ", " + r.available("", "0.6 F_u") + ") t_b"
	s.Step("r_bv", shear+" k_s", u.BaseShear, "N/mm", "AISC 360-22 J4.2")
	if u.Part == 0 {
		s.Step("r_bn", shear, u.BaseNormal, "N/mm", "through the plate; AISC 360-22 J4.2")
	} else {
		s.Step("r_bn", "min("+r.available("_ty", "F_y")+", "+r.available("", "F_u")+") t_b k_s", u.BaseNormal, "N/mm", "AISC 360-22 J4.1")
	}
	s.Step("u_b", put("sqrt(({q_par}^2 + {q_acr}^2) / r_bv^2 + ({q_nor} / r_bn)^2)"), u.Base, "", clauseBase)
	if !r.Grouped {
		s.Step("R_b", "r_bv n l_eff", u.BaseShear*r.Runs*r.Length, "N", "parallel to the plate, all runs")
	}
}
