package ring

import (
	"strconv"
	"strings"

	"footward.example/footward/internal/derive"
)

// DeriveMovement writes settlement and preload; the tiers must be written before.
func (r *Result) DeriveMovement(sheet *derive.Sheet) {
	in := r.in
	if r.NoService == "" {
		sheet.Given("s_b", in.Bedding, "mm", "bedding")
		sheet.Given("d_v0", r.Tiers[0].ServiceTop.Diameter, "mm", "circle through which the plate presses in service")
		sum := "s_b"
		for i := range r.Tiers {
			s, out, t := steps{sheet, strconv.Itoa(i + 1)}, &r.Tiers[i], &in.Tiers[i]
			before := strconv.Itoa(i)
			top := out.ServiceTop.Diameter
			s.step("d_u#", "min(d_v"+before+", D_#)", top, "mm", "loaded circle in service, top")
			s.step("d_v#", "min(D_#, d_u# + h_#)", min(t.Diameter, top+t.Height), "mm", "2 to 1 spread")
			s.step("z_c#", "min(h_#, D_# - d_u#)", min(t.Height, max(0, t.Diameter-out.ServiceTop.Diameter)), "mm", "height over which the load spreads")
			s.step("G_#", "4 z_c# / (pi d_u# d_v#) + 4 (h_# - z_c#) / (pi D_#^2)", out.Give, "1/mm", "height over area, 2 to 1 spread")
			s.step("q_s#", "((P_ser + W_"+before+") G_# + gamma_# D_#^2 (ln(d_v# / d_u#) + d_u# / d_v# - 1 + (h_#^2 - z_c#^2) / (2 D_#^2))) / h_#",
				out.Along, "MPa", "mean stress in service over the height, without preload")
			if out.Modulus > 0 {
				s.given("M_s#", out.Modulus, "MPa", "constrained modulus, given or by the table along the height")
				s.step("s_c#", "q_s# h_# / M_s#", out.Compressed, "mm", "constrained modulus")
				sum += " + s_c" + s.at
			}
			if out.Stiffness > 0 {
				s.given("M_c#", out.Stiffness, "N/mm", "ring, what corrosion leaves of it")
				s.step("e_c#", "K_0# q_s# D_# / (2 M_c#)", out.HoopStrain, "", "thin cylinder")
				s.step("s_e#", "2 e_c# h_#", out.Spread, "mm", "constant volume")
				sum += " + s_e" + s.at
			}
		}
		sheet.Step("s", sum, r.Settles.Total, "mm", "the stack itself")
	}
	rods, k := &in.Rods, &r.Springs
	if rods.Count == 0 {
		return
	}
	sheet.Given("n_r", float64(rods.Count), "", "rods")
	sheet.Given("E_r", rods.Modulus, "MPa", "rods")
	sheet.Given("A_r", rods.Area, "mm2", "stress area")
	sheet.Given("L_r", rods.Length, "mm", "length that stretches")
	sheet.Step("k_r", "n_r E_r A_r / L_r", k.Rods, "N/mm", "statics")
	sheet.Given("delta_r", rods.Creep, "mm", "shortening after tightening")
	sheet.Given("P_r", r.Load, "N", "compression after tightening")
	if k.Stack > 0 {
		if rods.Stack > 0 {
			sheet.Given("k_m", k.Stack, "N/mm", "stack, given")
		} else {
			give := make([]string, len(r.Tiers))
			for i := range r.Tiers {
				at := strconv.Itoa(i + 1)
				give[i] = "G_" + at + " / M_s" + at
			}
			sheet.Step("k_m", "1 / ("+strings.Join(give, " + ")+")", k.Stack, "N/mm", "stack, the moduli of the fill in series; statics")
		}
		sheet.Step("F_P", "P_r k_r / (k_r + k_m) / n_r", k.Load, "N", "loss of a rod by load")
		sheet.Step("F_c", "delta_r / (1 / k_r + 1 / k_m) / n_r", k.Settled, "N", "loss of a rod by settlement")
	} else {
		sheet.Step("F_P", "P_r / n_r", k.Load, "N", "loss of a rod by load, at most")
		sheet.Step("F_c", "delta_r k_r / n_r", k.Settled, "N", "loss of a rod by settlement, at most")
	}
	sheet.Given("F_0", rods.Preload, "N", "preload of a rod when tightened")
	sheet.Given("rho_r", rods.Relaxed, "", "share lost to relaxation")
	sheet.Step("F_l", "max(0, F_0 (1 - rho_r) - F_P - F_c)", k.Left, "N", "left")
}
