package pin

import "footward.example/footward/internal/derive"

// ofLines writes what lines of pins carry along them together.
func (r *Result) ofLines(pins, force, apart string) string {
	if r.Polar > 0 {
		return pins + " (" + force + " / n_p + abs(M) " + apart + " / (2 J_p))"
	}
	return pins + " " + force + " / n_p"
}

func (r *Result) deriveTearing(s *derive.Sheet) {
	p := &r.Steel
	if p.Torn == 0 {
		return
	}
	s.Given("e_1", r.in.Plates.EndDistance, "mm", "last pin to the end of the plates")
	edge, _, _ := r.in.around()
	s.Step("e_2", "(w - (m_r - 1) a_2) / 2", edge, "mm", "geometry")
	if p.Ends.Lines > 0 {
		r.deriveTorn(s, &p.Ends, "0", r.ofLines("m_0 n_r", "N_j", "a_2 (m_r - m_0)"),
			"(n_r - 1)", "a_1", "e_1", "a_2", "e_2", "rows that tear out together, where it is worst")
	}
	if p.Sides.Lines > 0 {
		r.deriveTorn(s, &p.Sides, "90", r.ofLines("m_90 m_r", "abs(V)", "a_1 (n_r - m_90)"),
			"(m_r - 1)", "a_2", "e_2", "a_1", "e_1", "levels that tear out together, where it is worst")
	}
	if p.Ends.Lines > 0 && p.Sides.Lines > 0 && p.Sides.Holds > 0 {
		s.Step("F_t", "F_t,0 + F_t,90 R_t,0 / R_t,90", p.Torn, "N", "both directions add up: limit analysis")
	}
}

// deriveTorn writes the block that tears out in one direction.
func (r *Result) deriveTorn(s *derive.Sheet, t *Tearing, mark, force, pins, pitch, end, apart, beside, what string) {
	clause := r.clause(clauseTearingEC, clauseTearingUS)
	hole := "d_0"
	if !r.ec {
		hole = "(d_0 + 25.4 / 16)"
	}
	name := func(symbol string) string { return symbol + "," + mark }
	s.Given("m_"+mark, float64(t.Lines), "", what)
	s.Given(name("n_v"), float64(t.Planes), "", "planes of shear")
	s.Step(name("F_t"), r.uneven(force), t.Force, "N", clauseShare)
	s.Step(name("A_nv"), name("n_v")+" n_s t_s ("+pins+" max(0, "+pitch+" - "+hole+") + max(0, "+end+" - "+hole+" / 2))", t.Net, "mm2", clause)
	across := "(m_" + mark + " - 1) max(0, " + apart + " - " + hole + ")"
	if t.Planes == 1 {
		across += " + max(0, " + beside + " - " + hole + " / 2)"
	}
	s.Step(name("A_nt"), "n_s t_s ("+across+")", t.Across, "mm2", clause)
	even := ""
	if r.in.Actions.M != 0 {
		even = "0.5 "
	}
	if r.ec {
		s.Step(name("R_t"), even+"f_up "+name("A_nt")+" / gamma_M2 + f_yp "+name("A_nv")+" / (sqrt(3) gamma_M0)", t.Holds, "N", clause)
		return
	}
	s.Step(name("A_gv"), name("n_v")+" n_s t_s ("+pins+" "+pitch+" + "+end+")", t.Gross, "mm2", clause)
	s.Step(name("R_t"), r.available("(0.6 min(f_up "+name("A_nv")+", f_yp "+name("A_gv")+") + "+even+"f_up "+name("A_nt")+")", "r"), t.Holds, "N", clause)
}
