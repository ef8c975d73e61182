package weld

import (
	"math"
	"strings"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
)

const (
	statics     = "statics"
	vectorShare = "elastic vector method, statics"
)

// Derive writes the calculation step by step.
func (r *Result) Derive(s *derive.Sheet) {
	r.deriveFactors(s)
	if s.FactorsOnly {
		return
	}
	r.deriveSize(s)
	r.deriveLength(s)
	switch {
	case isEC(r.in):
		r.deriveEC(s)
	default:
		r.deriveUS(s)
	}
}

func (r *Result) deriveFactors(s *derive.Sheet) {
	w := &r.in.Weld
	b := r.in.Design.Basis
	if b == basis.Eurocode {
		s.Factor("gamma_M0", r.in.Design.EC.GammaM0, "EN 1993-1-1:2005 6.1(1)")
		if w.Type != CompletePenetration {
			s.Factor("gamma_M2", r.in.Design.EC.GammaM2, "EN 1993-1-8:2005 Table 2.1")
		}
		return
	}
	factor := func(mark string, f basis.Strength, clause string) {
		if b == basis.USLRFD {
			s.Factor("phi"+mark, f.Phi, clause)
		} else {
			s.Factor("Omega"+mark, f.Omega, clause)
		}
	}
	factor("", basis.Rupture, "AISC 360-22 Table J2.5, J4.2(b)")
	if w.Type == PartialPenetration {
		factor("_t", basis.GrooveTension, clauseGroove)
	}
	factor("_vy", basis.ShearYield, "AISC 360-22 J4.2(a)")
	factor("_ty", basis.TensionYield, "AISC 360-22 J4.1(a)")
}

// deriveSize notes throat and leg, as made and as left.
func (r *Result) deriveSize(s *derive.Sheet) {
	w := &r.in.Weld
	us := !isEC(r.in)
	switch {
	case w.Type == CompletePenetration:
		s.Given("t_1", w.Parts[0].Thickness, "mm", "first part")
		s.Given("t_2", w.Parts[1].Thickness, "mm", "second part")
		s.Step("a_0", "min(t_1, t_2)", r.Throat, "mm", "thinner part")
	case w.Leg > 0 && us:
		s.Given("w_0", w.Leg, "mm", "leg as made")
		s.Step("a_0", "0.707 w_0", r.Throat, "mm", "AISC Manual part 8")
	case w.Leg > 0:
		s.Given("w_0", w.Leg, "mm", "leg as made")
		s.Step("a_0", "w_0 / sqrt(2)", r.Throat, "mm", "EN 1993-1-8:2005 4.5.2(1)")
	default:
		s.Given("a_0", r.Throat, "mm", "throat as made")
		if us && w.Type == Fillet {
			s.Step("w_0", "a_0 / 0.707", r.Leg, "mm", "AISC Manual part 8")
		}
	}
	s.Given("delta", w.Corrosion, "mm", "throat lost to corrosion")
	s.Step("a", "a_0 - delta", r.A, "mm", "throat left")
	if us && w.Type == Fillet {
		s.Step("w", "a / 0.707", r.W, "mm", "leg left")
	}
}

// deriveLength notes lengths, and holds sizes and lengths against their least.
func (r *Result) deriveLength(s *derive.Sheet) {
	w := &r.in.Weld
	what, l := "length of a run, end to end", r.in.Run.Length
	if r.Grouped {
		what, l = "shortest segment, end to end", r.in.Group.Segments[r.Shortest].Length()
	}
	if r.Grouped && r.in.Group.Continuous {
		what, l = "closed line of weld, all round", r.Length
	}
	s.Given("l", l, "mm", what)
	if r.End > 0 {
		s.Step("l_eff", "max(0, l - 2 a_0)", r.Length, "mm", clauseEffective)
	} else {
		s.Step("l_eff", "l", r.Length, "mm", "full size up to both ends")
	}
	if isEC(r.in) {
		if w.Type == Fillet {
			s.Given("a_min", leastThroat, "mm", clauseThroat)
			s.Step("u_a", "a_min / a_0", leastThroat/r.Throat, "", clauseThroat)
		}
		if w.Type != CompletePenetration {
			least := max(leastLength, leastThroats*r.Throat)
			s.Step("l_min", "max(30, 6 a_0)", least, "mm", clauseLength)
			if r.Length > 0 {
				s.Step("u_l", "l_min / l_eff", least/r.Length, "", clauseLength)
			}
		}
		return
	}
	u := &r.US
	switch w.Type {
	case Fillet:
		s.Given("w_min", u.Least, "mm", clauseJ24+", thinner part of "+derive.Number(r.Thin)+" mm")
		s.Step("u_size", "w_min / w_0", u.Least/r.Leg, "", clauseJ24)
		if u.Most > 0 {
			s.Given("w_max", u.Most, "mm", clauseJ22b+", along an edge")
			s.Step("u_edge", "w_0 / w_max", r.Leg/u.Most, "", clauseJ22b)
		}
		s.Step("l_min", "4 w_0", leastLegs*r.Leg, "mm", clauseJ22b)
		s.Step("u_l", "l_min / l_eff", leastLegs*r.Leg/r.Length, "", clauseJ22b)
	case PartialPenetration:
		s.Given("a_min", u.Least, "mm", clauseJ23+", thinner part of "+derive.Number(r.Thin)+" mm")
		s.Step("u_size", "a_min / a_0", u.Least/r.Throat, "", clauseJ23)
	}
}

// collinear is the ratio of inertias below which segments count as one line.
const collinear = 1e-9

// deriveGroup shares the actions among the segments.
func (r *Result) deriveGroup(s *derive.Sheet) {
	in, g, sh := &r.in.Group, &r.Group, &r.Share
	a, c := &in.Actions, &r.Actions
	s.Given("N", a.N, "N", "tension positive")
	s.Given("V_x", a.Vx, "N", "along x")
	s.Given("V_y", a.Vy, "N", "along y")
	s.Given("M_x", a.Mx, "Nmm", "about x")
	s.Given("M_y", a.My, "Nmm", "about y")
	s.Given("T", a.T, "Nmm", "torsion")
	s.Given("x_0", in.AtX, "mm", "where the actions are applied")
	s.Given("y_0", in.AtY, "mm", "where the actions are applied")
	s.Given("z_0", in.AtZ, "mm", "height above the weld")
	s.Given("L_w", g.N, "mm", "effective length of all segments")
	s.Given("X_c", g.X, "mm", "centroid")
	s.Given("Y_c", g.Y, "mm", "centroid")
	s.Given("I_x", g.Ix, "mm3", "line integral of (y - Y_c)^2")
	s.Given("I_y", g.Iy, "mm3", "line integral of (x - X_c)^2")
	s.Given("I_xy", g.Ixy, "mm3", "line integral of (x - X_c)(y - Y_c)")
	s.Step("J", "I_x + I_y", g.Ix+g.Iy, "mm3", "polar inertia of the lines")
	s.Step("T_c", "T + (x_0 - X_c) V_y - (y_0 - Y_c) V_x", c.T-g.X*c.Vy+g.Y*c.Vx, "Nmm", "about the centroid")
	if r.byCentre() {
		return
	}
	s.Step("M_xc", "M_x + (y_0 - Y_c) N - z_0 V_y", c.Mx-g.Y*c.N, "Nmm", "about the centroid")
	s.Step("M_yc", "M_y - (x_0 - X_c) N + z_0 V_x", c.My+g.X*c.N, "Nmm", "about the centroid")
	s.Step("t_J", "T_c / J", sh.Turn, "MPa", vectorShare)
	if g.Ix*g.Iy-g.Ixy*g.Ixy <= collinear*(g.Ix+g.Iy)*(g.Ix+g.Iy) {
		s.Given("a_x", sh.SlopeX, "MPa", "moments along the one line of the segments, over J")
		s.Given("a_y", sh.SlopeY, "MPa", "moments along the one line of the segments, over J")
		return
	}
	s.Step("a_x", "-(M_yc I_x + M_xc I_xy) / (I_x I_y - I_xy^2)", sh.SlopeX, "MPa", vectorShare)
	s.Step("a_y", "(M_xc I_y + M_yc I_xy) / (I_x I_y - I_xy^2)", sh.SlopeY, "MPa", vectorShare)
}

// flow notes the flow that governs a criterion in a group, its symbols marked,
// and returns what writes formulas with them: names in braces. A run has one
// flow only, noted with the forces.
func (r *Result) flow(s *derive.Sheet, mark string, at Spot, f Flow) func(formula string) string {
	if !r.Grouped {
		return strings.NewReplacer("{", "", "}", "").Replace
	}
	put := strings.NewReplacer("{", "", "}", mark).Replace
	full := &r.in.Group.Segments[at.Segment]
	t := full.Trimmed(r.End)
	p := t.A
	if at.End == 1 {
		p = t.B
	}
	l := full.Length()
	ux, uy := (full.B.X-full.A.X)/l, (full.B.Y-full.A.Y)/l
	qx, qy := r.Share.Shear(p)
	if f == (Flow{}) {
		// Where a criterion is met by nothing anywhere, any place shows it.
		f = Flow{math.Abs(qx*ux + qy*uy), math.Abs(qy*ux - qx*uy), math.Abs(r.Share.Axial(p))}
	}
	note := func(symbol, expression string, value float64, unit, clause string) {
		s.Step(symbol+mark, put(expression), value, unit, clause)
	}
	s.Given("x"+mark, p.X, "mm", "governing end of a segment")
	s.Given("y"+mark, p.Y, "mm", "governing end of a segment")
	s.Given("c_x"+mark, ux, "", "direction of the segment")
	s.Given("c_y"+mark, uy, "", "direction of the segment")
	note("q_x", "V_x / L_w - t_J ({y} - Y_c)", qx, "N/mm", vectorShare)
	note("q_y", "V_y / L_w + t_J ({x} - X_c)", qy, "N/mm", vectorShare)
	note("q_par", "abs({q_x} {c_x} + {q_y} {c_y})", f.Along, "N/mm", "along the axis")
	note("q_acr", "abs({q_y} {c_x} - {q_x} {c_y})", f.Across, "N/mm", "across it, parallel to the plate")
	note("q_nor", "abs(N / L_w + a_x ({x} - X_c) + a_y ({y} - Y_c))", f.Normal, "N/mm", "square to the plate")
	return put
}

// deriveForces notes what the flows are made of.
func (r *Result) deriveForces(s *derive.Sheet) {
	if r.Grouped {
		r.deriveGroup(s)
		return
	}
	s.Given("n", r.Runs, "", "runs")
	s.Given("F_par", math.Abs(r.in.Run.Along), "N", "force along the axis")
	s.Given("F_acr", math.Abs(r.in.Run.Across), "N", "force across it, parallel to the plate")
	s.Given("F_nor", math.Abs(r.in.Run.Normal), "N", "force square to the plate")
	r.flows(func(_ Spot, f Flow) {
		s.Step("q_par", "F_par / (n l_eff)", f.Along, "N/mm", statics)
		s.Step("q_acr", "F_acr / (n l_eff)", f.Across, "N/mm", statics)
		s.Step("q_nor", "F_nor / (n l_eff)", f.Normal, "N/mm", statics)
	})
}
