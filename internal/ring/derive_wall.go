package ring

import "math"

// deriveWall writes the friction of the fill down to the lower edge of a tier.
func (r *Result) deriveWall(s steps, i int, before string) {
	t, out := &r.in.Tiers[i], &r.Tiers[i]
	most := "max(q_et# / q_mt#, q_eb# / q_mb#)"
	if f := &out.UnevenWithin; f.Level > 0 {
		r.deriveWithin(s, f, before, "u#", "part of the height, between top and bottom, at which the edge stress is most times the mean")
		most = "max(q_et# / q_mt#, q_eb# / q_mb#, q_eu# / q_mu#)"
	}
	s.step("k_q#", most, out.Uneven, "", "edge stress over mean stress, the greatest of the tier")
	s.step("l_w#", "4 K_0# tan(2 phi_k# / 3) / D_#", 4*out.K0*math.Tan(2.0/3.0*t.Fill.Phi)/t.Diameter, "1/mm", "Janssen 1895")
	s.step("F_w#", "F_w"+before+" + k_q# q_mt# (1 - exp(0 - l_w# h_#)) pi d_ft#^2 / 4 + gamma_G gamma_# (h_# - (1 - exp(0 - l_w# h_#)) / l_w#) pi D_#^2 / 4",
		out.Wall, "N", "friction of the fill that the edge of the ring may have to carry")
}

func (r *Result) deriveDurability(s steps, i int) {
	ring, out := &r.in.Tiers[i].Ring, &r.Tiers[i]
	source := "durability; by default of the kind, no source"
	if ring.Durability > 0 {
		source = "durability; given in the request"
	}
	if !r.in.Exposed || ring.Wall == 0 {
		s.given("k_d#", out.Durability, "", source)
		return
	}
	s.given("k_d0#", or(ring.Durability, durability[ring.Kind]), "", source)
	s.given("Delta_#", r.in.Face, "mm", "loss of one face, by the exposure")
	least := "min(k_d0#"
	for _, part := range [...]struct {
		symbol, share, expression, name string
		thick                           float64
	}{
		{"t_w#", "k_w#", "max(0, 1 - 2 Delta_# / t_w#)", "wall of the ring, as built", ring.Wall},
		{"d_b#", "k_b#", "max(0, 1 - 2 Delta_# / d_b#)^2", "bolts of the joint, as built", ring.Bolt},
		{"t_j#", "k_l#", "max(0, 1 - 2 Delta_# / t_j#)", "lugs and welds of the joint, as built", ring.Lug},
	} {
		if part.thick == 0 {
			continue
		}
		s.given(part.symbol, part.thick, "mm", part.name)
		s.step(part.share, part.expression, corroded(part.thick, r.in.Face, part.symbol == "d_b#"), "", "what both faces leave")
		least += ", " + part.share
	}
	s.step("k_d#", least+")", out.Durability, "", "durability and corrosion, the lesser")
}
