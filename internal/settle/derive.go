package settle

import (
	"fmt"
	"math"
	"strings"

	"footward.example/footward/internal/derive"
)

// Derive writes the calculation step by step, each method for the stage that
// governs it.
func (r *Result) Derive(s *derive.Sheet) {
	in := r.in
	if in.Shape == Circle {
		s.Given("D", in.Diameter, "mm", "footing")
		s.Step("A", "pi / 4 D^2", r.Area, "mm2", "geometry")
	} else {
		s.Given("b_x", in.SizeX, "mm", "footing")
		s.Given("b_y", in.SizeY, "mm", "footing")
		s.Step("A", "b_x b_y", r.Area, "mm2", "geometry")
	}
	s.Given("B", r.Width, "mm", "lesser side or diameter")
	s.Given("L", r.Length, "mm", "greater side or diameter")
	for i, l := range in.Layers {
		s.Given(numbered("h", i), l.Thickness, "mm", "layer")
	}
	if r.NoElastic == "" {
		r.deriveElastic(s)
	}
	if r.NoTilt == "" {
		r.deriveTilt(s)
	}
	if r.NoSchmertmann == "" {
		r.deriveSchmertmann(s)
	}
	if r.NoBurland == "" {
		r.deriveBurland(s)
	}
	if r.NoConsolidation == "" {
		r.deriveConsolidation(s)
	}
	r.deriveTotal(s)
	r.deriveUneven(s)
}

func numbered(symbol string, i int) string { return fmt.Sprintf("%s_%d", symbol, i+1) }

// pressure writes the net pressure of the stage that governs a method.
func (r *Result) pressure(s *derive.Sheet, of func(*Settled) float64) *Settled {
	at := r.greatest(func(s *Settled) float64 { return of(s) + s.Above })
	stage, given := &r.Stages[at], &r.in.Stages[at]
	if given.N > 0 {
		s.Given("N", given.N, "N", fmt.Sprintf("stage %d, net", at+1))
		s.Step("q", "N / A", stage.Pressure, "MPa", "statics")
	} else {
		s.Given("q", stage.Pressure, "MPa", fmt.Sprintf("stage %d, net", at+1))
	}
	return stage
}

func (r *Result) deriveElastic(s *derive.Sheet) {
	clause := elastic.Clause[r.in.Design.Basis]
	stage := r.pressure(s, func(s *Settled) float64 { return s.Elastic })
	s.Given("I_f", r.Embedment, "", "depth factor")
	var parts []string
	for i, l := range r.in.Layers {
		s.Given(numbered("E", i), l.Modulus, "MPa", "layer")
		s.Given(numbered("nu", i), l.Poisson, "", "layer")
		s.Given(numbered("I_s", i), r.Influence[i],
			"", "difference of the influence at bottom and top of the layer; Steinbrenner 1934, for a circle Foster and Ahlvin 1954")
		parts = append(parts, numbered("I_s", i)+" / "+numbered("E", i))
	}
	s.Step("s_centre", "q B I_f ("+strings.Join(parts, " + ")+")", stage.Centre, "mm", clause)
	if r.in.Rigid {
		if r.Factor == rigidFinite {
			s.Given("k_rigid", r.Factor, "", "rigid over flexible centre")
		} else {
			s.Step("k_rigid", "pi / 4", r.Factor, "", "Boussinesq's punch")
		}
		s.Step("s_elastic", "k_rigid s_centre", stage.Elastic, "mm", clause)
		above(s, "s_elastic", stage.Elastic, stage)
		return
	}
	above(s, "s_centre", stage.Centre, stage)
}

// above adds what stands on the ground settles by itself.
func above(s *derive.Sheet, symbol string, ground float64, stage *Settled) {
	if stage.Above == 0 {
		return
	}
	s.Given("s_above", stage.Above, "mm", "what stands on the ground settles by itself in this stage")
	s.Step(symbol+",all", symbol+" + s_above", ground+stage.Above, "mm", "sum")
}

func (r *Result) deriveTilt(s *derive.Sheet) {
	at := r.greatest(tiltOf)
	stage, given := &r.Stages[at], &r.in.Stages[at]
	if stage.Tilt == 0 {
		return
	}
	clause := tilt.Clause[r.in.Design.Basis]
	turns := given.TurnX > 0 || given.TurnY > 0
	plus := [2]string{}
	if turns {
		plus = [2]string{" + theta_x,above", " + theta_y,above"}
		s.Given("theta_x,above", given.TurnX, "rad", "what stands on the ground turns by itself in this stage")
		s.Given("theta_y,above", given.TurnY, "rad", "what stands on the ground turns by itself in this stage")
	}
	if r.NoTilt != "" {
		s.Step("theta", "sqrt(theta_x,above^2 + theta_y,above^2)", stage.Tilt, "rad", clause)
		return
	}
	k := ""
	if !r.in.Rigid {
		s.Step("k_t", "512 / (45 pi^2)", flexibleTilt, "", "mean rotation of a flexible circle over that of a rigid one")
		k = "k_t "
	}
	n := r.softest
	s.Given(numbered("E", n), r.in.Layers[n].Modulus, "MPa", "layer")
	s.Given(numbered("nu", n), r.in.Layers[n].Poisson, "", "layer")
	s.Step("c_E", fmt.Sprintf("(1 - %s^2) / %s", numbered("nu", n), numbered("E", n)), r.Give, "mm2/N",
		"softest layer within one width below the base")
	s.Given("M_x", math.Abs(given.Mx), "Nmm", fmt.Sprintf("stage %d", at+1))
	s.Given("M_y", math.Abs(given.My), "Nmm", fmt.Sprintf("stage %d", at+1))
	if r.in.Shape == Circle {
		s.Step("a_x", "D / 2", r.Radii[0], "mm", "geometry")
		s.Step("a_y", "D / 2", r.Radii[1], "mm", "geometry")
	} else {
		s.Step("a_x", "(b_x b_y^3 / (3 pi))^0.25", r.Radii[0], "mm", "circle of the same second moment of area")
		s.Step("a_y", "(b_y b_x^3 / (3 pi))^0.25", r.Radii[1], "mm", "circle of the same second moment of area")
	}
	s.Step("theta_x", k+"3 M_x c_E / (4 a_x^3)"+plus[0], stage.TiltX, "rad", clause)
	s.Step("theta_y", k+"3 M_y c_E / (4 a_y^3)"+plus[1], stage.TiltY, "rad", clause)
	s.Step("theta", "sqrt(theta_x^2 + theta_y^2)", stage.Tilt, "rad", clause)
}

func (r *Result) deriveSchmertmann(s *derive.Sheet) {
	stage := r.pressure(s, func(s *Settled) float64 { return s.Schmertmann })
	if stage.Pressure == 0 {
		return
	}
	clause := schmertmann.Clause[r.in.Design.Basis]
	sand := &r.Sand
	s.Given("sigma_v0", sand.Overlying, "MPa", "effective, at the base before the footing")
	s.Given("sigma_vp", sand.AtPeak, "MPa", "effective, at the depth of the peak")
	s.Given("k_p", sand.Share, "", "share of plane strain, (L/B - 1)/9 up to 1")
	s.Step("I_zp", "0.5 + 0.1 sqrt(q / sigma_vp)", sand.peak(stage.Pressure), "", clause)
	s.Step("C_1", "max(0.5, 1 - 0.5 sigma_v0 / q)", sand.depthFactor(stage.Pressure), "", clause)
	s.Given("t", r.in.Years, "", "years")
	if r.in.Years > 0.1 {
		s.Step("C_2", "1 + 0.2 ln(t / 0.1) / ln(10)", sand.Creep, "", clause)
	} else {
		s.Given("C_2", sand.Creep, "", clause)
	}
	var parts []string
	for i, a := range r.areas(stage.Pressure) {
		if a == 0 || sand.Moduli[i] == 0 {
			continue // clay consolidates instead
		}
		s.Given(numbered("q_c", i), r.in.Layers[i].Cone, "MPa", "layer")
		s.Step(numbered("E_c", i), "(2.5 + k_p) "+numbered("q_c", i), sand.Moduli[i], "MPa", clause)
		s.Given(numbered("J", i), a, "mm", "area of the strain influence over the layer")
		parts = append(parts, numbered("J", i)+" / "+numbered("E_c", i))
	}
	if len(parts) > 0 {
		s.Step("s_schmertmann", "C_1 C_2 q ("+strings.Join(parts, " + ")+")", stage.Schmertmann, "mm", clause)
		above(s, "s_schmertmann", stage.Schmertmann, stage)
	}
}

func (r *Result) deriveBurland(s *derive.Sheet) {
	stage := r.pressure(s, func(s *Settled) float64 { return s.Burland })
	clause := burland.Clause[r.in.Design.Basis]
	sand := &r.Sand
	s.Given("N_60", sand.Blows, "", "mean over the depth of influence")
	s.Given("z_I", sand.Reach, "mm", "depth of influence: B^0.75 in m, or 2 B where N falls with depth")
	s.Given("H", sand.Thick, "mm", "sand within it")
	s.Given("sigma_v0", sand.Overlying, "MPa", "effective, at the base before the footing")
	s.Given("sigma_p", sand.Highest, "MPa", "greatest effective stress that the base has known")
	s.Step("f_s", "(1.25 L / B / (L / B + 0.25))^2", sand.Shape, "", clause)
	s.Step("f_l", "H / z_I (2 - H / z_I)", sand.Layer, "", clause)
	if r.in.Years > 0 {
		s.Given("t", r.in.Years, "", "years; up to 3 the growth of all three")
		s.Step("f_t", "1 + 0.3 + 0.2 ln(max(t, 3) / 3) / ln(10)", sand.Time, "", clause)
	} else {
		s.Given("f_t", sand.Time, "", clause)
	}
	s.Step("I_c", "1.71 / N_60^1.4", sand.Index, "", clause)
	s.Step("q'", "q + sigma_v0", stage.Pressure+sand.Overlying, "MPa", "statics")
	counts := "q' / 3"
	if stage.Pressure+sand.Overlying > sand.Highest {
		counts = "(q' - 2 / 3 sigma_p)"
	}
	if stage.Pressure > 0 {
		s.Step("s_burland", "f_s f_l f_t 1000 "+counts+" (B / 1000)^0.7 I_c", stage.Burland, "mm", clause)
		above(s, "s_burland", stage.Burland, stage)
	}
}

func (r *Result) deriveConsolidation(s *derive.Sheet) {
	stage := r.pressure(s, func(s *Settled) float64 { return s.Consolidation })
	var parts []string
	for i, v := range r.compressions(stage.Pressure) {
		o := &r.in.Layers[i].Oedometer
		if o.Compression == 0 {
			continue
		}
		s.Given(numbered("C_c", i), o.Compression, "", "oedometer test")
		s.Given(numbered("C_r", i), o.Recompression, "", "oedometer test")
		s.Given(numbered("e_0", i), o.Void, "", "oedometer test")
		s.Given(numbered("s_c", i), v, "mm", "sum over the slices of the layer of h/(1+e_0) times C_r or C_c times the logarithm of the stress ratio; Terzaghi")
		parts = append(parts, numbered("s_c", i))
	}
	s.Step("s_consolidation", strings.Join(parts, " + "), stage.Consolidation, "mm", consolidation.Clause[r.in.Design.Basis])
	above(s, "s_consolidation", stage.Consolidation, stage)
}

// deriveTotal adds the parts that the methods find of different layers.
func (r *Result) deriveTotal(s *derive.Sheet) {
	m := r.methods()[4]
	if m.reason != "" {
		return
	}
	clause := total.Clause[r.in.Design.Basis]
	at := r.greatest(m.of)
	stage := &r.Stages[at]
	t := &stage.Total
	s.Given("q", stage.Pressure, "MPa", fmt.Sprintf("stage %d, net", at+1))
	s.Given("I_f", r.Embedment, "", "depth factor")
	s.Given("k_s", r.Factor, "", "rigid over flexible centre; 1 flexible")
	sum := []string{}
	part := func(symbol, expression string, value float64, why string) {
		if value > 0 {
			s.Step(symbol, expression, value, "mm", why)
			sum = append(sum, symbol)
		}
	}
	switch t.By {
	case byElasticity:
		part("s_sand", r.elasticText(s, (*Layer).notClay), t.Sand, "layers that are no clay, by elasticity")
	case byCone:
		part("s_sand", "s_schmertmann", t.Sand, "sand, by cone resistance")
	case byBlows:
		part("s_sand", "s_burland", t.Sand, "sand, by blow count")
	}
	part("s_clay", "s_consolidation", t.Clay, "clay")
	part("s_rest", r.elasticText(s, (*Layer).rest), t.Rest, "layers known by their modulus alone")
	if len(sum) == 0 {
		return
	}
	s.Step("s_total", strings.Join(sum, " + "), t.Sum, "mm", clause)
	above(s, "s_total", t.Sum, stage)
}

// elasticText writes the elastic settlement of some of the layers.
func (r *Result) elasticText(s *derive.Sheet, counts func(*Layer) bool) string {
	parts := []string{}
	for i := range r.in.Layers {
		l := &r.in.Layers[i]
		if !counts(l) || l.Modulus == 0 {
			continue
		}
		s.Given(numbered("E", i), l.Modulus, "MPa", "layer")
		s.Given(numbered("I_s", i), r.Influence[i], "", "influence of the layer; Steinbrenner 1934, for a circle Foster and Ahlvin 1954")
		parts = append(parts, numbered("I_s", i)+" / "+numbered("E", i))
	}
	if len(parts) == 0 {
		return "0"
	}
	return "k_s q B I_f (" + strings.Join(parts, " + ") + ")"
}

func (r *Result) deriveUneven(s *derive.Sheet) {
	if r.Worst.Neighbour == 0 {
		return
	}
	n := r.in.Neighbours[r.Worst.Neighbour-1]
	s.Given("s_n", n.Settlement, "mm", fmt.Sprintf("neighbour %d", r.Worst.Neighbour))
	s.Given("s_w", r.Worst.Settlement, "mm", "this base, by the method that differs most")
	s.Step("Delta_s", "abs(s_w - s_n)", r.Worst.Difference, "mm", "statics")
	s.Given("l", n.Distance, "mm", "between the centres")
	s.Step("beta", "Delta_s / l", r.Worst.Ratio, "", differential.Clause[r.in.Design.Basis])
}
