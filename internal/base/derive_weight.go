package base

import (
	"strconv"

	"footward.example/footward/internal/bed"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/ground"
)

// concrete returns the unit weight of a footing of concrete [N/mm3].
func (s *Substructure) concrete() float64 {
	switch {
	case s.Concrete > 0:
		return s.Concrete
	case s.Reinforcement.X.Diameter > 0:
		return barsConcrete
	}
	return plainConcrete
}

// deriveClamped writes what rods through a stack clamp, where it was found.
func (in *ColumnInput) deriveClamped(s *derive.Sheet) {
	t := &in.Anchorage.Through
	if !t.ClampedFound || in.Anchorage.Kind != Through {
		return
	}
	p := &t.Plate
	s.Given("gamma_st", steelWeight, "N/mm3", "steel; EN 1991-1-1:2002 Table A.4 (from memory)")
	s.Given("l_x", p.SizeX, "mm", "bottom plate along x")
	s.Given("l_y", p.SizeY, "mm", "bottom plate along y")
	s.Given("t_b,0", p.Thickness, "mm", "bottom plate as made")
	sum := "gamma_st l_x l_y t_b,0"
	for i := range in.Below.Stack.Tiers {
		tier, at := &in.Below.Stack.Tiers[i], strconv.Itoa(i+1)
		s.Given("gamma_f"+at, tier.Fill.UnitWeight, "N/mm3", "fill")
		s.Given("D_f"+at, tier.Diameter, "mm", "inner, ring")
		s.Given("h_f"+at, tier.Height, "mm", "tier")
		sum += " + gamma_f" + at + " pi / 4 min(D_f" + at + ", l_x, l_y)^2 h_f" + at
	}
	s.Step("W", sum, t.Clamped, "N", "what the rods clamp: bottom plate and the fill straight above its inscribed circle")
}

// deriveWeight writes what presses on the ground beside the actions of a pair, as the
// sum of its parts, and the outline with which it does.
func (c *column) deriveWeight(s *derive.Sheet, k *Pair) {
	b, p := &c.in.Below, &c.foot.plan
	sum := "W_c"
	if c.foot.stack == nil {
		d := &c.in.Base.Support.Block
		s.Given("gamma_c", b.concrete(), "N/mm3", "concrete of the footing")
		s.Given("l_x", p.sizeX, "mm", "footing along x")
		s.Given("l_y", p.sizeY, "mm", "footing along y")
		s.Given("h_c", d.Height, "mm", "height of the footing")
		s.Step("W_c", "gamma_c l_x l_y h_c", b.concrete()*p.sizeX*p.sizeY*d.Height, "N", "footing")
	} else {
		s.Step("W_f", "W_"+strconv.Itoa(len(b.Stack.Tiers)), c.foot.stack.Weight, "N", "fill of all tiers")
		sum = "W_f"
		if c.in.Anchorage.Kind == Through {
			t := &c.in.Anchorage.Through.Plate
			s.Given("gamma_st", steelWeight, "N/mm3", "steel; EN 1991-1-1:2002 Table A.4 (from memory)")
			s.Given("l_x", t.SizeX, "mm", "bottom plate along x")
			s.Given("l_y", t.SizeY, "mm", "bottom plate along y")
			s.Given("t_b,0", t.Thickness, "mm", "bottom plate as made")
			s.Step("W_st", "gamma_st l_x l_y t_b,0", steelWeight*t.SizeX*t.SizeY*t.Thickness, "N", "bottom plate")
			sum += " + W_st"
		}
	}
	s.Given("W_o", b.OtherWeight, "N", "other weight, given")
	c.deriveOutline(s)
	s.Given("gamma_l", b.Levelling.UnitWeight, "N/mm3", "levelling layer")
	s.Given("h_l", b.Levelling.Thickness, "mm", "levelling layer")
	s.Step("W_l", "gamma_l h_l A_g", p.bed, "N", "levelling layer below the footing")
	s.Given("k_W", k.Weight, "", "factor of the combination on weights")
	s.Step("W_g", "k_W ("+sum+" + W_o + W_l)", k.Weight*(p.weight+p.bed), "N", "sum, W of the ground below")
	s.Step("W_l,g", "k_W W_l", k.Weight*p.bed, "N", "its part below the footing, W_bed below")
}

// deriveOutline writes the area with which a footing presses on the ground.
func (c *column) deriveOutline(s *derive.Sheet) {
	p := &c.foot.plan
	if p.shape != ground.Circle {
		s.Step("A_g", "l_x l_y", p.area(), "mm2", "geometry")
		return
	}
	s.Given("d_g", p.stack, "mm", "circle to which the load spreads in the stack, 2 to 1 from the least circle of the plate")
	if p.side == 0 {
		s.Step("A_g", "pi / 4 d_g^2", p.area(), "mm2", "geometry")
		return
	}
	t := &c.in.Anchorage.Through.Plate
	thin := thin(t, c.in.Base.Plate.Design.Basis)
	s.Given("E_b", thin.E, "MPa", "bottom plate")
	s.Given("t_bn", t.Net(), "mm", "bottom plate, corrosion taken off")
	s.Given("k_g", c.in.Below.Subgrade, "N/mm3", "reaction of the ground, given")
	s.Step("l_b", "(E_b t_bn^3 / (12 (1 - 0.3^2) k_g))^0.25", bed.RelativeStiffness(thin, c.in.Below.Subgrade), "mm",
		"length of the bottom plate on its bed; Westergaard 1926 (from memory)")
	s.Step("D_g", "min(min(l_x, l_y), d_g + 2 0.6 l_b)", p.d, "mm", "circle on the ground: past the fill as far as the bottom plate is stiff, 0.6 l on each side; from the bed solved by elements")
	s.Step("A_g", "pi / 4 D_g^2", p.area(), "mm2", "geometry")
}
