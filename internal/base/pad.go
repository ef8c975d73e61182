package base

import (
	"fmt"
	"strings"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/pad"
)

// offMiddle is why a block is no pad whose concrete can be checked.
const offMiddle = "the plate stands off the middle of the block: its bending and punching as a pad are not covered"

// padWeights are the factors on the weight of a pad where it hangs and where it holds,
// of a combination that does not say: EN 1990 Table A1.2(B), where it may be one of
// equilibrium (A); ASCE 7-22 2.3.1.
func padWeights(b basis.Basis, k *Case) []float64 {
	switch {
	case len(k.Weights) > 0:
		return k.Weights
	case b.US():
		return []float64{1.4, 0.9}
	}
	return []float64{1.35, 0.9}
}

const ofPad = " on the weight of the pad"

// OnPad names a combination with the factor on the weight of the pad.
func OnPad(name string, weight float64) string { return fmt.Sprintf("%s; %g%s", name, weight, ofPad) }

// OffPad returns the name of the combination alone.
func OffPad(name string) string {
	if at := strings.LastIndex(name, "; "); at >= 0 && strings.HasSuffix(name, ofPad) {
		return name[:at]
	}
	return name
}

// pad returns the concrete block as a pad on the ground under one case, less what
// water lifts it by.
func (in *ColumnInput) pad(p *plan, k *Case, weight, lift float64) pad.Input {
	b, plate, f := &in.Base.Support.Block, &in.Base.Plate.Plate, &in.Base.Plate.Footprint
	return pad.Input{
		Design: in.Base.Plate.Design, SizeX: b.SizeX, SizeY: b.SizeY, Thickness: b.Height, Concrete: b.Concrete,
		// Halfway between column and edge of the plate: ACI 318-19 Table 13.2.7.1.
		Column:        pad.Column{SizeX: (f.SizeX + plate.SizeX) / 2, SizeY: (f.SizeY + plate.SizeY) / 2},
		Reinforcement: in.Below.Reinforcement, Blinding: in.Below.Blinding, Actions: k.Actions, Factored: in.Base.Plate.Design.Basis != basis.USASD || len(in.Below.Factored) > 0,
		Height: p.height - in.Below.Levelling.Thickness, Weight: max(0, weight*p.weight-lift), SizeEffect: in.Below.SizeEffect,
	}
}

// factored returns the cases that concrete is held to.
func (in *ColumnInput) factored() []Case {
	if in.Base.Plate.Design.Basis == basis.USASD && len(in.Below.Factored) > 0 {
		return in.Below.Factored
	}
	return in.Cases
}

// padStrength checks a concrete block that stands on the ground as a pad.
func (c *column) padStrength(r *ColumnResult) error {
	p := &c.foot.plan
	if p.offX != 0 || p.offY != 0 {
		c.beyond(r, pad.Kinds(), offMiddle)
		return nil
	}
	cases := c.in.factored()
	lifts := c.in.afloat(p)
	c.foot.pad = padCase{weight: 1}
	used := -1.0
	for i := range cases {
		if err := c.in.stopped(); err != nil {
			return err
		}
		for _, w := range padWeights(c.in.Base.Plate.Design.Basis, &cases[i]) {
			for _, lift := range lifts {
				in := c.in.pad(p, &cases[i], w, lift)
				out, err := pad.Check(&in)
				if err != nil {
					return err
				}
				out.Notices(&r.notices)
				c.list.Reset()
				c.list.NoSizes = true
				out.States(&c.list)
				name := OnPad(cases[i].Name, w)
				for _, s := range c.list.All() {
					s.Combination, s.Stage = name, cases[i].Stage
					r.take(s, -1)
				}
				if most := strongest(c.list.All()); most != nil && most.Utilization > used {
					used, c.foot.pad = most.Utilization, padCase{i, w, lift}
				}
			}
		}
	}
	return nil
}

// afloat returns what water above its base lifts a pad by: nothing where it is lower,
// which counts too, and all of the highest [N].
func (in *ColumnInput) afloat(p *plan) []float64 {
	g := &in.Below.Ground
	if !in.Below.HasGround || g.Soil.Dry || g.Soil.Water >= g.Depth {
		return []float64{0}
	}
	return []float64{0, WaterWeight * (g.Depth - g.Soil.Water) * p.area()}
}

// WaterWeight is the unit weight of water [N/mm3].
const WaterWeight = 9.81e-6

// padCase is the case, the factor on weight and the buoyancy that govern a pad.
type padCase struct {
	at     int
	weight float64
	lift   float64 // [N]
}

func (c *column) derivePad(s *derive.Sheet) {
	p := &c.foot.plan
	if c.in.Below.HasStack || p.offX != 0 || p.offY != 0 {
		return
	}
	cases := c.in.factored()
	k := &cases[c.foot.pad.at]
	s.Given("case_pad", float64(c.foot.pad.at+1), "", "combination that governs the concrete of the pad: "+OnPad(k.Name, c.foot.pad.weight))
	in := c.in.pad(p, k, c.foot.pad.weight, c.foot.pad.lift)
	if out, err := pad.Check(&in); err == nil {
		out.Derive(s)
	}
}
