package plate

import (
	"fmt"

	"footward.example/footward/internal/derive"
)

func (t *TStub) derive(r *Result, s *derive.Sheet) {
	in := r.in
	s.Given("a_0", in.WeldThroat, "mm", "throat of the weld round the footprint as made")
	s.Given("a_corr", in.WeldLost, "mm", "throat lost to corrosion")
	s.Step("a_w", "max(0, a_0 - a_corr)", in.weldLeft(), "mm", "throat left")
	s.Step("m", "z_r - h / 2 - 0.8 sqrt(2) a_w", t.M, "mm", "EN 1993-1-8:2005 Figure 6.8")
	s.Step("e_x", "L / 2 - z_r", t.Ex, "mm", "to the edge of the plate")
	s.Given("w", r.Row.Gauge, "mm", "between the two rods")
	s.Given("e", r.Row.Edge, "mm", "from a rod to the side of the plate")
	s.Step("l_cp", "min(2 pi m, pi m + w, pi m + 2 e)", t.Lcp, "mm", "EN 1993-1-8:2005 Table 6.6, circular")
	s.Step("l_nc", "min(4 m + 1.25 e_x, e + 2 m + 0.625 e_x, B / 2, w / 2 + 2 m + 0.625 e_x)", t.Lnc, "mm",
		"EN 1993-1-8:2005 Table 6.6, non-circular")
	s.Given("A_s", in.Rods.StressArea, "mm2", "stress area of a rod, left after corrosion")
	s.Given("F_t,Rd", in.Rods.Resistance, "N", "tension resistance of a rod; EN 1993-1-8:2005 Table 3.4")
	if in.Rods.Stretch > 0 {
		s.Given("L_b", t.Lb, "mm", "given stretch length")
	} else {
		s.Given("d", in.Rods.Diameter, "mm", "rod")
		s.Given("t_g", in.Bearing.GroutThick, "mm", "grout")
		s.Given("t_wa", in.Rods.Washer, "mm", "washer")
		s.Step("L_b", "8 d + t_g + t_0 + t_wa + 0.4 d", t.Lb, "mm", "EN 1993-1-8:2005 Table 6.2, anchor bolts")
	}
	t.Corner.derive(r, s, "m")
	s.Step("l_y", "h_y m / 2", t.Ly, "mm", "effective length that holds as much")
	s.Step("l_1", "min(l_cp, l_nc, l_y)", t.L1, "mm", "EN 1993-1-8:2005 Table 6.6; not above the yield line")
	s.Step("L_b*", "8.8 m^3 A_s / (l_1 t^3)", t.LbStar, "mm", "EN 1993-1-8:2005 Table 6.2; prying where L_b is not above it")
	s.Step("M_pl,1", "0.25 l_1 t^2 f_y / gamma_M0", t.Mpl1, "Nmm", "EN 1993-1-8:2005 Table 6.2")
	s.Step("F_T,12", "2 M_pl,1 / m", t.F1, "N", "EN 1993-1-8:2005 Table 6.2, modes 1 and 2 without prying; 6.2.6.11(2)")
	s.Step("F_T,3", "2 F_t,Rd", t.F3, "N", "EN 1993-1-8:2005 Table 6.2, mode 3")
	s.Step("F_T,Rd", "min(F_T,12, F_T,3)", t.FtRd, "N", clauseTStub)
	if t.Prying {
		s.Step("n", "min(e_x, 1.25 m)", t.N, "mm", "EN 1993-1-8:2005 Table 6.2")
		s.Step("k", "0.625 L_b l_1 t^3 / (8.8 A_s)", edgeShare/2*t.M*t.M*t.M*t.Lb/t.LbStar, "mm3", "stretch of the rods; statics of an elastic strip")
		s.Step("Q", "min(max(0, T_Ed (m^2 n / 2 - k) / (m n^2 + n^3 / 3 + k), (T_Ed m - 2 M_pl,1) / n), 2 M_pl,1 / n)",
			r.EC.Prying, "N", "prying, for the rods and what holds them; EN 1993-1-8:2005 6.2.6.11(3)")
	}
}

// derive writes the yield line past the flange; the rods stand at m off it.
func (c *Corner) derive(r *Result, s *derive.Sheet, m string) {
	s.Given("n_r", float64(r.Row.Count), "", "rods in the row")
	sum := ""
	for i, p := range r.in.Rods.At {
		b, ok := r.frame.beyond(p, c.Low)
		if !ok {
			continue
		}
		name := fmt.Sprintf("v_%d", i+1)
		s.Given(name, b+r.frame.W/2, "mm", "rod across the direction of the moment")
		arm := "(" + name + " - b / 2) k_y + " + m
		if c.Side {
			arm = name + " - b / 2"
		}
		if sum != "" {
			sum += " + "
		}
		sum += "max(0, " + arm + ")"
	}
	if c.Side {
		s.Given("r_y", c.Rows, "", "rows that pull")
		s.Step("a_y", sum, c.Arms, "mm", "rods beyond the side of the footprint, along which the yield line runs that holds least")
		s.Step("h_y", "n_r L / (a_y r_y)", c.Hold, "", "yield line; Johansen 1962")
		return
	}
	s.Given("k_y", c.Slope, "", "slope against the flange of the yield line through its end that holds least")
	s.Step("a_y", sum, c.Arms, "mm", "rods beyond that line")
	edge := m + " + L / 2 - z_r"
	if r.in.Design.Basis.US() {
		edge = m + " + L / 2 - f_r"
	}
	s.Step("q_y", edge, r.frame.L/2-r.Row.S+c.off(r), "mm", "from that edge of the flange to the edge of the plate")
	s.Step("s_y", "min((B - b) / 2, (L - q_y) / k_y) + min(q_y / k_y, (B + b) / 2)", c.S, "mm", "length of the line across the plate, along the flange")
	s.Step("h_y", "n_r (1 + k_y^2) s_y / a_y", c.Hold, "", "yield line; Johansen 1962")
}

// off returns the distance of the rods from the fixed edge of the line [mm].
func (c *Corner) off(r *Result) float64 {
	if r.in.Design.Basis.US() {
		return r.Row.S - r.frame.H/2
	}
	return r.EC.TStub.M
}
