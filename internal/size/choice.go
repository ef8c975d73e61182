package size

import (
	"cmp"
	"math"
	"slices"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/ring"
)

// steel is the density of steel [kg/mm3]: EN 1991-1-1:2002 Table A.4, 77 to 78.5
// kN/m3 (from memory).
const steel = 7.85e-6

const gravity = 9.81 // m/s2

// butThroat returns the places of all but the throat.
func (c *Choice) butThroat() [5]int { return [5]int{c.Plan, c.Thickness, c.Rod, c.Bottom, c.Stack} }

// priced is a choice by its number, kept small since there may be many.
type priced struct {
	cost float64 // [-]
	at   uint32  // counted through stacks, bottoms, throats, rods, thicknesses, plans
}

// askEvery is how many choices are listed between two questions to Stop.
const askEvery = 1024

// choices lists every choice, the cheapest first.
func (s *search) choices() ([]priced, error) {
	in, n := s.in, 1
	for _, offered := range in.offered() {
		n *= max(1, offered)
	}
	out := make([]priced, n)
	for i := range out {
		if i%askEvery == 0 && in.Stop != nil {
			if err := in.Stop(); err != nil {
				return nil, err
			}
		}
		c := s.choice(i)
		out[i] = priced{c.Cost, uint32(i)}
	}
	slices.SortFunc(out, func(a, b priced) int { return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.at, b.at)) })
	return out, nil
}

// choice returns a choice by its number, with mass and cost.
func (s *search) choice(at int) Choice {
	var place [6]int
	for i, n := range s.in.offered() {
		place[i] = at % max(1, n)
		at /= max(1, n)
	}
	c := Choice{Stack: place[0], Bottom: place[1], Throat: place[2], Rod: place[3], Thickness: place[4], Plan: place[5]}
	s.weigh(&c)
	return c
}

// offered returns how many there are to choose from of each.
func (in *Input) offered() [6]int {
	return [6]int{len(in.Stacks), len(in.Bottoms), len(in.Throats), len(in.Rods), len(in.Thickness), len(in.Plans)}
}

// weigh finds mass and cost.
func (s *search) weigh(c *Choice) {
	b, rates := s.in.Build(c), &s.in.Rates
	p := &b.Base.Plate.Plate
	plate := p.SizeX * p.SizeY * p.Thickness * steel
	rods, n := 0.0, 0
	if b.Base.HasRods {
		d := b.Base.Rod.Thread.Diameter
		n = len(b.Base.At)
		rods = float64(n) * math.Pi / 4 * d * d * rodLength(&b) * steel
	}
	weld := 0.0
	if b.HasWeld {
		a := b.Base.Plate.WeldThroat
		weld = base.WeldLength(&b.Base) * a * a * steel
	}
	if b.Anchorage.Kind == base.Through {
		p := &b.Anchorage.Through.Plate
		plate += p.SizeX * p.SizeY * p.Thickness * steel
	}
	fill, rings := 0.0, 0.0
	if b.Below.HasStack {
		for i := range b.Below.Stack.Tiers {
			t := &b.Below.Stack.Tiers[i]
			fill += t.Fill.UnitWeight * math.Pi / 4 * t.Diameter * t.Diameter * t.Height / gravity
		}
		if len(s.in.Stacks) > 0 {
			rings = s.in.Stacks[c.Stack].RingsCost
		}
	}
	c.Mass = plate + rods + weld + fill
	perKg := rates.RodKg
	if len(s.in.Rods) > 0 && s.in.Rods[c.Rod].OwnKg {
		perKg = s.in.Rods[c.Rod].PerKg
	}
	c.Cost = rates.PlateKg*plate + perKg*rods + rates.EachRod*float64(n) + rates.WeldKg*weld + rates.FillKg*fill + rings
}

// Build returns the base of a choice.
func (in *Input) Build(c *Choice) base.ColumnInput {
	b := in.Base
	b.NoSizes, b.Stop = true, in.Stop
	if len(in.Plans) > 0 {
		p := &in.Plans[c.Plan]
		b.Base.Plate.Plate.SizeX, b.Base.Plate.Plate.SizeY = p.SizeX, p.SizeY
		b.Base.Support.SizeX, b.Base.Support.SizeY = p.SizeX, p.SizeY
		if p.At != nil {
			b.Base.At = p.At
		}
	}
	if len(in.Thickness) > 0 {
		b.Base.Plate.Plate.Thickness = in.Thickness[c.Thickness]
		b.Weld.Parts[0].Thickness = in.Thickness[c.Thickness]
	}
	if len(in.Rods) > 0 {
		clearance := b.Base.Holes.Diameter - b.Base.Rod.Thread.Diameter
		b.Base.Rod.Thread = in.Rods[c.Rod].Thread
		if steel := in.Rods[c.Rod].Steel; steel.Fu > 0 {
			b.Base.Rod.Steel = steel
		}
		b.Base.Holes.Diameter = b.Base.Rod.Thread.Diameter + clearance
		b.Base.Rod.NutWidth = 0 // that of the base's own rod does not fit others
	}
	if len(in.Throats) > 0 {
		b.Weld.Throat, b.Base.Plate.WeldThroat = in.Throats[c.Throat], in.Throats[c.Throat]
	}
	if len(in.Bottoms) > 0 {
		p, own := &in.Bottoms[c.Bottom], &b.Anchorage.Through.Plate
		// What presses on the whole of one plate presses on the whole of another.
		if b.Anchorage.Through.PressX == own.SizeX {
			b.Anchorage.Through.PressX = p.SizeX
		}
		if b.Anchorage.Through.PressY == own.SizeY {
			b.Anchorage.Through.PressY = p.SizeY
		}
		lengthen(&b, p.Thickness-own.Thickness)
		own.SizeX, own.SizeY, own.Thickness = p.SizeX, p.SizeY, p.Thickness
	}
	if len(in.Stacks) > 0 {
		k, stack := &in.Stacks[c.Stack], &b.Below.Stack
		lengthen(&b, height(k.Tiers)-height(stack.Tiers))
		// A test vouches for the build that was tested.
		if k.LoadTested || !slices.Equal(k.Tiers, stack.Tiers) {
			stack.LoadTested, stack.LoadTest = k.LoadTested, k.LoadTest
		}
		stack.Tiers = k.Tiers
	}
	return b
}

// rodLength returns the length of a rod [mm]: with a head in concrete from the head to
// the upper face of the plate, else that over which it stretches.
func rodLength(b *base.ColumnInput) float64 {
	if b.Anchorage.Kind != base.Headed {
		return base.StretchLength(&b.Base)
	}
	grout := b.Anchorage.Headed.Under.GroutThick
	if grout == 0 {
		grout = b.Base.Support.Block.GroutThick
	}
	return b.Anchorage.Headed.Embedment + grout + b.Base.Plate.Plate.Thickness + b.Base.Holes.WasherThickness
}

// lengthen has the rods stretch over a longer length [mm].
func lengthen(b *base.ColumnInput, by float64) {
	if b.Base.Stretch > 0 {
		b.Base.Stretch += by
	}
}

func height(tiers []ring.Tier) (sum float64) {
	for i := range tiers {
		sum += tiers[i].Height
	}
	return sum
}

// volume returns by what stacks are ordered from small to great [mm3].
func volume(tiers []ring.Tier) (sum float64) {
	for i := range tiers {
		sum += tiers[i].Diameter * tiers[i].Diameter * tiers[i].Height * math.Pi / 4
	}
	return sum
}

// strength returns by what rods are ordered from small to great: that of a rod in
// tension.
func (in *Input) strength(i int) float64 {
	steel := in.Rods[i].Steel
	if steel.Fu == 0 {
		steel = in.Base.Base.Rod.Steel
	}
	return in.Rods[i].Thread.StressArea * steel.Fu
}
