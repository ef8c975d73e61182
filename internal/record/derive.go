package record

import (
	"fmt"
	"math"

	"footward.example/footward/internal/derive"
)

const read = "record of the test"

// Derive writes the steps.
func (r *Result) Derive(d *derive.Sheet) {
	d.Given("b", r.Width, "mm", "plate")
	d.Given("A", r.Area, "mm2", "plate")
	d.Given("P_max", r.Most, "N", read)
	r.deriveModuli(d)
	if s := &r.Subgrade; s.Plate > 0 {
		d.Given("q_s", s.Pressure, "MPa", "first loading, between readings")
		d.Given("s_k", s.At, "mm", "settlement at which k_s is read")
		d.Step("k_s", "q_s / s_k", s.Plate, "MPa/mm", "q/s")
		if s.Scale > 0 {
			d.Given("B", r.in.Footing.Width, "mm", "given in the request")
			if r.in.Footing.Clay {
				d.Step("m", "B / b", s.Scale, "", "Terzaghi 1955 (from memory)")
			} else {
				d.Step("m", "min(4, (2 B / (B + b))^2)", s.Scale, "", "Terzaghi and Peck 1948")
			}
			d.Step("k_s,B", "k_s / m", s.Footing, "MPa/mm", "")
		}
	}
	r.deriveCreep(d)
	r.deriveClamp(d)
	if h := &r.Hyperbola; h.Known {
		const chin = "Kondner 1963, Chin 1970 (from memory)"
		d.Given("P_u", h.Ultimate, "N", chin+": least squares of s/P on s")
		d.Given("k_0", h.Initial, "N/mm", chin)
		d.Step("P_b", "0.1 b / (1 / k_0 + 0.1 b / P_u)", h.Tenth, "N", "at a tenth of the width: extrapolated")
		d.Step("P_h", "min(P_b, 1.25 P_max)", h.Bound, "N", "an engineering choice: extrapolated")
	}
	d.Given("R", r.Resistance, "N", map[bool]string{true: "least of the criteria that were met", false: "lower bound: greatest load held"}[r.Failed()])
}

func (r *Result) deriveModuli(d *derive.Sheet) {
	if r.in.Diameter == 0 {
		return
	}
	const din = "DIN 18134:2012 (from memory)"
	for i, c := range [...]*Cycle{&r.FirstLoading, &r.Reload} {
		if !c.Known {
			continue
		}
		if i == 0 || !r.FirstLoading.Known {
			d.Step("r", "b / 2", r.in.Diameter/2, "mm", "")
			d.Given("sigma_max", r.Greatest, "MPa", "first loading")
			d.Given("nu", r.in.Poisson, "", "given, or by default")
		}
		name := fmt.Sprint(i + 1)
		d.Given("a_1,"+name, c.Fit.A1, "mm/MPa", din+": least squares")
		d.Given("a_2,"+name, c.Fit.A2, "mm/MPa2", din)
		d.Step("E_v"+name, "1.5 r / (a_1,"+name+" + a_2,"+name+" sigma_max)", c.Ev, "MPa", din)
		d.Step("E_PLT,"+name, fmt.Sprintf("1 / (a_1,%s + a_2,%s sigma_max) %.10g b / 4 (1 - nu^2)", name, name, math.Pi), c.Eplt, "MPa", "EN 1997-2:2007 K.2 (from memory)")
	}
}

func (r *Result) deriveCreep(d *derive.Sheet) {
	for i := range r.Creep {
		c := &r.Creep[i]
		if c.Reason != "" {
			continue
		}
		name := fmt.Sprintf("_%d", c.Stage)
		source := "least squares of s on log10 t"
		if c.None {
			source = "no measurable creep: one-sided 95 % bound"
		}
		d.Given("alpha"+name, c.Used, "mm", source)
		if r.in.Years > 0 {
			d.Given("s_hold"+name, c.Settlement, "mm", "last reading of the hold")
			d.Given("t_hold"+name, c.Last, "min", read)
			d.Given("t_life", r.in.Years*minutesPerYear, "min", "design life")
			d.Step("s_life"+name, fmt.Sprintf("s_hold%s + alpha%s ln(t_life / t_hold%s) / ln(10)", name, name, name), c.Life, "mm", "log-linear creep")
		}
	}
	if b := &r.creepBreak; r.CreepLoad > 0 {
		d.Given("a_c", b.Before.Intercept, "mm", "first line of alpha on P")
		d.Given("b_c", b.Before.Slope, "mm/N", "first line")
		d.Given("a_d", b.Past.Intercept, "mm", "second line")
		d.Given("b_d", b.Past.Slope, "mm/N", "second line")
		d.Step("P_c", "(a_d - a_c) / (b_c - b_d)", r.CreepLoad, "N", "where both lines meet")
	}
}

func (r *Result) deriveClamp(d *derive.Sheet) {
	c := &r.in.Clamp
	if c.Asked {
		d.Given("k_f", c.Fill, "N/mm", "given in the request")
		d.Given("k_r", c.Rods, "N/mm", "given in the request")
		d.Given("F_0", c.Preload, "N", "given in the request")
		d.Step("N_0", "F_0 (k_f + k_r) / k_r", r.Slack, "N", "two springs")
		if r.Lost > 0 {
			d.Given("delta", c.Embedment, "mm", "given in the request")
			d.Step("dF", "min(F_0, k_f k_r / (k_f + k_r) delta)", r.Lost, "N", "two springs")
		}
	}
	if f := &r.Fade; f.Known {
		d.Given("F_1", f.Fitted, "N", "record of the preload, line at its last reading")
		d.Given("c_F", f.Per, "N", "loss a cycle of log10 t, not below 0")
		d.Given("n_c", f.Cycles, "", "log10 of the design life over the last reading")
		d.Step("F_life", "max(0, F_1 - c_F n_c)", f.Left, "N", "log-linear loss")
		d.Given("F_least", f.Least, "N", "one-sided 95 % bound of the line")
	}
}
