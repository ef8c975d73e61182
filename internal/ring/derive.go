package ring

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
)

// steps writes steps whose symbols carry a # for the number of a tier.
type steps struct {
	*derive.Sheet
	at string
}

func (s steps) given(symbol string, v float64, unit, clause string) {
	s.Given(strings.ReplaceAll(symbol, "#", s.at), v, unit, clause)
}

func (s steps) step(symbol, expression string, v float64, unit, clause string) {
	s.Step(strings.ReplaceAll(symbol, "#", s.at), strings.ReplaceAll(expression, "#", s.at), v, unit, clause)
}

// Derive writes the calculation step by step, tier by tier.
func (r *Result) Derive(sheet *derive.Sheet) {
	r.DeriveStress(sheet)
	r.deriveStability(sheet)
	r.DeriveMovement(sheet)
}

// DeriveStability writes sliding and overturning under actions of their own; what
// the stack is must be written before.
func (r *Result) DeriveStability(sheet *derive.Sheet) {
	r.deriveActions(sheet)
	r.deriveStability(sheet)
}

func (r *Result) deriveActions(sheet *derive.Sheet) {
	a := &r.in.Actions
	sheet.Given("N", a.N, "N", "on top, tension positive")
	sheet.Step("P", "max(0, 0 - N)", r.Press, "N", "compression on top")
	sheet.Given("V_x", a.Vx, "N", "along x")
	sheet.Given("V_y", a.Vy, "N", "along y")
	sheet.Given("M_x", a.Mx, "Nmm", "about x")
	sheet.Given("M_y", a.My, "Nmm", "about y")
}

// DeriveStress writes the tiers with their stresses and hoop forces.
func (r *Result) DeriveStress(sheet *derive.Sheet) {
	in := r.in
	from := func(given float64, by string) string {
		if given > 0 {
			return "given in the request"
		}
		return by
	}
	sheet.Factor("gamma_G", r.Safety.Unfavourable, "weight where it presses; "+from(in.Safety.Unfavourable, "EN 1990 Table A1.2, ASCE 7-22 2.3.1"))
	sheet.Factor("gamma_stb", r.Safety.Favourable, "weight where it holds; "+from(in.Safety.Favourable, "EN 1990 Table A1.2(A), ASCE 7-22 2.3.1"))
	r.deriveFactors(sheet)
	r.deriveActions(sheet)
	sheet.Given("P_0", r.Preload, "N", "preload of all rods, which presses")
	sheet.Given("P_ser", max(0, -in.Service.N), "N", "compression in service")
	weight, depth := 0.0, 0.0
	sheet.Given("W_0", 0, "N", "weight above the first tier")
	sheet.Given("z_0", 0, "mm", "depth of the shoe")
	sheet.Given("d_0", r.Shoe, "mm", "loaded circle of the shoe")
	sheet.Given("F_w0", 0, "N", "friction above the first tier")
	for i := range r.Tiers {
		s := steps{sheet, strconv.Itoa(i + 1)}
		t := &in.Tiers[i]
		before := strconv.Itoa(i)
		s.given("D_#", t.Diameter, "mm", "inner, ring")
		s.given("h_#", t.Height, "mm", "height of the tier")
		s.given("gamma_#", t.Fill.UnitWeight, "N/mm3", "fill")
		s.step("d_t#", "min(d_"+before+", D_#)", r.Tiers[i].Top.Diameter, "mm", "loaded circle, top")
		s.step("d_#", "min(D_#, d_t# + h_#)", r.Tiers[i].Bottom.Diameter, "mm", "2 to 1 spread")
		weight += t.Fill.UnitWeight * math.Pi / 4 * t.Diameter * t.Diameter * t.Height
		depth += t.Height
		s.step("W_#", "W_"+before+" + gamma_# pi D_#^2 h_# / 4", weight, "N", "statics")
		s.step("z_#", "z_"+before+" + h_#", depth, "mm", "statics")
		r.deriveTier(s, i, before)
	}
	r.deriveHeave(sheet)
}

func (r *Result) deriveFactors(s *derive.Sheet) {
	switch r.in.Design.Basis {
	case basis.Eurocode:
		s.Factor("gamma_phi", r.Safety.GammaPhi, "EN 1997-1:2004 Annex A, Table A.4, on tan(phi) and c")
		s.Factor("k_f", 1, "the strength of the fill has its factors already")
	case basis.USLRFD:
		s.Factor("k_f", or(r.Safety.PhiB, 1), "phi_b of the fill; 1 where none was given")
	case basis.USASD:
		s.Factor("FS", r.Safety.Fill, "allowable-stress practice")
		s.Step("k_f", "1 / FS", 1/r.Safety.Fill, "", "allowable-stress practice")
	}
}

func (r *Result) deriveTier(s steps, i int, before string) {
	t, out := &r.in.Tiers[i], &r.Tiers[i]
	s.given("phi_k#", t.Fill.Phi, "rad", "fill")
	s.given("c_k#", t.Fill.Cohesion, "MPa", "fill")
	s.given("phi_#", out.Phi, "rad", "design angle: atan(tan(phi_k)/gamma_phi) by the Eurocode, else phi_k")
	if r.in.Design.Basis == basis.Eurocode {
		s.step("c_#", "c_k# / gamma_phi", out.C, "MPa", "EN 1997-1:2004 Annex A")
	} else {
		s.step("c_#", "c_k#", out.C, "MPa", "fill")
	}
	s.step("K_p#", "(1 + sin(phi_#)) / (1 - sin(phi_#))", out.Kp, "", "Rankine 1857")
	s.step("K_a#", "1 / K_p#", out.Ka, "", "Rankine 1857")
	s.step("K_0#", "1 - sin(phi_k#)", out.K0, "", "Jaky 1944")
	s.given("sigma_c#", t.Fill.Compaction, "MPa", "locked in by compaction")
	r.deriveRing(s, i)
	if r.NoService == "" && !out.serviceLost() {
		s.given("q_ser#", out.Service, "MPa", "greatest edge stress in service, as below with the service values")
		s.step("T_0#", "(K_0# q_ser# + sigma_c#) D_# h_# / 2", out.ByRest, "N", "thin cylinder")
	}
	if r.NoStress != "" {
		return
	}
	deriveFace(s, &out.Top, "t#", before)
	deriveFace(s, &out.Bottom, "b#", s.at)
	if f := &out.Within; f.Level > 0 {
		r.deriveWithin(s, f, before, "w#", "part of the height, between top and bottom, at which the edge stress is greatest")
	}
	if out.lost() {
		return
	}
	if !slices.ContainsFunc(r.Tiers[:i], func(t TierResult) bool { return t.lost() }) {
		r.deriveWall(s, i, before)
	}
	if out.Within.Level > 0 {
		s.step("q_v#", "max(q_vt#, q_vb#, q_vw#)", out.Even, "MPa", "greatest even stress")
		s.step("q_e#", "max(q_et#, q_eb#, q_ew#)", out.Edge, "MPa", "greatest edge stress")
	} else {
		s.step("q_v#", "max(q_vt#, q_vb#)", out.Even, "MPa", "greatest even stress")
		s.step("q_e#", "max(q_et#, q_eb#)", out.Edge, "MPa", "greatest edge stress")
	}
	const needs = "max(0, q_e# - 2 c_# sqrt(K_p#)) / K_p#"
	if out.Needed > 0.1*out.Edge/out.Kp || out.C == 0 {
		s.step("sigma_3n#", needs, out.Needed, "MPa", "Mohr and Coulomb, turned round")
	} else {
		// A small difference of great numbers cannot be followed with six digits.
		s.given("sigma_3n#", out.Needed, "MPa", "(q - 2 c sqrt(K_p))/K_p, not below 0")
	}
	s.step("T_n#", "sigma_3n# D_# h_# / 2", out.ByNeed, "N", "thin cylinder")
	switch {
	case out.Moves > 0:
		s.given("e_t#", t.Ring.Yields, "", "hoop strain stood in a test")
		if t.Ring.Stiffness > 0 && out.Rd > 0 {
			s.given("M_#", t.Ring.Stiffness, "N/mm", "ring, as built")
			s.step("u_#", "max(T_Rd# / (M_# h_#), e_t#) D_# / 2", out.Moves, "mm", "movement of the ring at its design hoop force")
		} else {
			s.step("u_#", "e_t# D_# / 2", out.Moves, "mm", "movement of the ring")
		}
		s.step("K_u#", "max(K_a#, K_0# - (K_0# - K_a#) min(1, max(0, u_# / (0.0005 h_#) - 1)))", out.K, "", "EN 1997-1:2004 9.5.2(2), Annex C Table C.1 (not compared with the printed edition)")
	case t.Ring.Stiffness == 0 && t.Ring.Kind.extensible():
		s.step("K_u#", "K_a#", out.K, "", "an extensible ring, not verified without its stiffness")
	default:
		s.step("K_u#", "max(K_a#, K_0#)", out.K, "", "EN 1997-1:2004 9.5.2(2): the ring is not known to move")
	}
	s.step("T_a#", "(K_u# q_e# + gamma_G sigma_c#) D_# h_# / 2", out.ByEarth, "N", "thin cylinder")
	s.step("T_Ed#", "max(T_n#, T_a#)", out.Ultimate, "N", "the larger governs")
}

func (r *Result) deriveRing(s steps, i int) {
	t, out := &r.in.Tiers[i], &r.Tiers[i]
	if out.Reduced == 0 {
		return
	}
	s.given("T_k#", t.Ring.Capacity, "N", "ring")
	r.deriveDurability(s, i)
	s.given("k_j#", out.Joint, "", "joint; by default of the kind, no source")
	s.given("gamma_R#", out.Partial, "", "partial or safety factor of the ring")
	s.step("T_r#", "T_k# k_d# k_j#", out.Reduced, "N", "ring")
	if out.Stretch > 0 {
		s.given("M_#", t.Ring.Stiffness, "N/mm", "ring")
		s.given("e_a#", or(t.Ring.Strain, strainByDefault), "", "axial strain allowed")
		s.step("T_m#", "M_# k_d# k_j# (1 - sqrt(1 - e_a#)) / (1 - e_a#) h_#", out.Stretch, "N", "Henkel and Gilbert 1952")
		s.step("T_Rd#", "min(T_r#, T_m#) / gamma_R#", out.Rd, "N", "the lesser governs")
	} else {
		s.step("T_Rd#", "T_r# / gamma_R#", out.Rd, "N", "ring")
	}
	if r.in.Design.Basis == basis.Eurocode {
		s.step("sigma_3#", "2 T_Rd# / (D_# h_#)", out.Confinement, "MPa", "thin cylinder")
	} else {
		s.step("sigma_3#", "2 T_Rd# gamma_R# / (D_# h_#)", out.Confinement, "MPa", "thin cylinder; the factor comes with the fill")
	}
	s.step("sigma_R#", "k_f (K_p# sigma_3# + 2 c_# sqrt(K_p#))", out.Strength, "MPa", "Mohr and Coulomb")
	s.step("c_r#", "sigma_3# sqrt(K_p#) / 2", out.Apparent, "MPa", "the same effect as a cohesion, never added")
	s.step("sigma_Rc#", "2 k_f (c_# + c_r#) sqrt(K_p#)", out.ByCohesion, "MPa", "Mohr and Coulomb")
}

// deriveWithin writes a face between top and bottom of a tier.
func (r *Result) deriveWithin(s steps, f *Face, before, at, what string) {
	s.given("k_"+at, float64(f.Level)/cuts, "", what)
	s.step("W_"+at, "W_"+before+" + k_"+at+" (W_# - W_"+before+")", (f.Force-r.Press-r.Preload)/r.Safety.Unfavourable, "N", "statics")
	s.step("z_"+at, "z_"+before+" + k_"+at+" h_#", f.Depth, "mm", "statics")
	deriveFace(s, f, at, strings.ReplaceAll(at, "#", s.at))
}

// deriveFace writes a face; level is the number of weight and depth above it.
func deriveFace(s steps, f *Face, at, level string) {
	write := func(symbol, expression string, v float64, unit, clause string) {
		expression = strings.NewReplacer("@", at, "%", level).Replace(expression)
		s.step(strings.ReplaceAll(symbol, "@", at), expression, v, unit, clause)
	}
	s.given("d_f"+at, f.Diameter, "mm", "loaded circle")
	write("N_@", "P + P_0 + gamma_G W_%", f.Force, "N", "statics")
	write("N_l@", "P + gamma_stb W_%", f.Light, "N", "statics, without preload")
	write("M_@", "sqrt((abs(M_x) + abs(V_y) z_%)^2 + (abs(M_y) + abs(V_x) z_%)^2)", f.Moment, "Nmm", "statics")
	if f.Lost {
		return
	}
	if f.Moment > 0 {
		write("e_@", "M_@ / N_l@", f.E, "mm", "statics")
	} else {
		s.given("e_"+at, 0, "mm", "no moment")
	}
	write("q_m@", "4 N_@ / (pi d_f@^2)", f.Mean, "MPa", "statics")
	if f.E <= f.Diameter/4 {
		write("A_@", "2 ((d_f@ / 2)^2 acos(2 e_@ / d_f@) - e_@ sqrt((d_f@ / 2)^2 - e_@^2))", f.Effective, "mm2", "effective area of a circle")
	} else {
		s.given("A_"+at, f.Effective, "mm2", "2 (R^2 acos(e/R) - e sqrt(R^2 - e^2))")
	}
	write("q_v@", "N_@ / A_@", f.Even, "MPa", "even stress")
	if f.E <= f.Diameter/8 {
		write("q_e@", "q_m@ (1 + 8 e_@ / d_f@)", f.Edge, "MPa", "edge stress within the kern")
	} else {
		s.given("k_e"+at, EdgeFactor(f.Diameter, f.E), "", "edge over mean, no tension, by iteration")
		write("q_e@", "k_e@ q_m@", f.Edge, "MPa", "edge stress beyond the kern")
	}
}

func (r *Result) deriveStability(sheet *derive.Sheet) {
	in, n := r.in, len(r.Tiers)
	last := strconv.Itoa(n)
	if r.Shear > 0 {
		sheet.Step("V", "sqrt(V_x^2 + V_y^2)", r.Shear, "N", "statics")
		switch in.Design.Basis {
		case basis.Eurocode:
			sheet.Step("k_s", "1 / gamma_phi", 1/r.Safety.GammaPhi, "", "EN 1997-1:2004 Annex A")
		case basis.USASD:
			sheet.Factor("FS_s", r.Safety.Stability, "allowable-stress practice, sliding and overturning")
			sheet.Step("k_s", "1 / FS_s", 1/r.Safety.Stability, "", "allowable-stress practice")
		case basis.USLRFD:
			sheet.Factor("k_s", or(r.Safety.PhiSliding, 1), "sliding; 1 where none was given")
		}
		for i, slide := range r.Slides {
			s := steps{sheet, strconv.Itoa(i)}
			s.given("delta_#", slide.Angle, "rad", "friction under tier "+s.at+", 0 is the shoe; two thirds of the fill's against shoe and bottom")
			clamped := i < n && in.Clamp > 0
			switch {
			case slide.Force <= 0.1*(in.Actions.N+slide.Force):
				s.given("N_s#", slide.Force, "N", "weight that holds less the pull, not below 0")
			case clamped:
				s.given("N_c#", in.Clamp, "N", "tension of the rods, which presses shoe and tiers together")
				s.step("N_s#", "max(0, gamma_stb W_# - N + N_c#)", slide.Force, "N", "statics")
			default:
				s.step("N_s#", "max(0, gamma_stb W_# - N)", slide.Force, "N", "statics")
			}
			rubs, clause := "N_s# tan(delta_#) k_s", "friction"
			if i == 0 && in.Shoe.Rubs > 0 {
				s.given("mu_#", in.Shoe.Rubs, "", "as friction is counted under the plate, its factor included")
				rubs = "N_s# min(tan(delta_#) k_s, mu_#)"
			}
			if i == 0 && in.Key > 0 {
				s.given("V_key", in.Key, "N", "bearing path from shoe to rings, proven elsewhere")
				rubs, clause = rubs+" + V_key", "friction and bearing path"
			}
			s.step("V_R#", rubs, slide.Holds, "N", clause)
		}
	}
	sheet.Step("M_dst", "max(0, N) D_"+last+" / 2 + sqrt((abs(M_x) + abs(V_y) z_"+last+")^2 + (abs(M_y) + abs(V_x) z_"+last+")^2)",
		r.Turn.Demand, "Nmm", "statics")
	holds := "(P + gamma_stb W_" + last + ") D_" + last + " / 2"
	if in.Design.Basis == basis.USASD {
		sheet.Factor("FS_s", r.Safety.Stability, "allowable-stress practice, sliding and overturning")
		holds += " / FS_s"
	}
	sheet.Step("M_stb", holds, r.Turn.Holds, "Nmm", "statics")
	if r.NoStress == "" && r.Surface > 0 {
		sheet.Given("q_R0", r.Surface, "MPa", "fill under the shoe without rings, EN 1997-1:2004 Annex D.4, for information")
	}
}
