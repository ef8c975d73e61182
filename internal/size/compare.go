package size

import (
	"math"
	"slices"
	"strings"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/compare"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pad"
	"footward.example/footward/internal/ring"
)

// Comparison is a base on its stack of rings against a concrete pad for the same
// loads on the same ground.
type Comparison struct {
	Base base.ColumnInput // with a stack and the ground
	// Pad is sized: ground, pairs and, where they are not given, the loaded area and
	// the height of the actions come from the base. Unless Above says otherwise, the
	// foot of the column stays at its level, on a plinth.
	Pad      PadInput
	AbovePad bool    // whether Pad.Above is given
	PlinthX  float64 // size of a plinth [mm]; 0: that of the base's plate
	PlinthY  float64 // [mm]
	Anchors  float64 // rods that hold the shoe on the pad [kg]; 0: not known
	// Stack says of the rings, from the top down, and of what else there is only what
	// the base does not: outer diameter, mass, reuse, loose factor, other steel.
	Stack  compare.Stack
	Margin float64 // of the levelling layer beyond the footing on every side [mm]
	// Concrete says of the pad what the search does not find: plinth, blinding, other
	// steel, whether it is cast against the ground.
	Concrete compare.Pad
	Dig      compare.Dig // its depth is that of each footing
	Rates    compare.Rates
}

// Compared is the outcome of Compare: the ring footing first, then the pad.
type Compared struct {
	Rings *base.ColumnResult
	Pad   *PadResult
	Count *compare.Result
	light bool // whether rings of known mass weigh nothing on the ground
}

// Names of the two footings.
const (
	ringFooting = "ring footing"
	padFooting  = "concrete pad"
)

// Compare checks the ring footing, sizes the pad and counts both. Errors:
// limit.Faults; *limit.Scope where the basis does not cover the base; that of Stop.
func Compare(in *Comparison) (*Compared, error) {
	var faults limit.Faults
	ValidateComparison(in, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	r := &Compared{light: in.light()}
	var err error
	if r.Rings, err = base.CheckColumn(&in.Base); err != nil {
		return nil, err
	}
	p := in.pad()
	if r.Pad, err = SearchPad(&p); err != nil {
		return nil, err
	}
	stack := in.stack()
	rings, err := compare.RingQuantities(stack)
	if err != nil {
		return nil, err
	}
	concrete, err := compare.PadQuantities(in.concrete(&p, &r.Pad.Best))
	if err != nil {
		return nil, err
	}
	concrete = append(in.shoe(stack), concrete...)
	if in.Base.Base.HasRods {
		concrete = append(concrete, compare.Item{Kind: compare.SteelRod, Name: "anchor rods", Mass: in.Anchors, Count: len(in.Base.Base.At)})
	}
	if in.Base.HasWeld && stack.Weld.Length == 0 {
		// What a weld through the plate takes is not known: both totals lack it.
		unknown := compare.Item{Kind: compare.WeldMetal, Count: 1}
		rings, concrete = append(rings, unknown), append(concrete, unknown)
	}
	if err := in.settles(r); err != nil {
		return nil, err
	}
	r.Count, err = compare.Compare(&compare.Input{
		Footings: []compare.Footing{{Label: ringFooting, Items: rings}, {Label: padFooting, Items: concrete}}, Rates: in.Rates,
	})
	return r, err
}

// pad returns what is sized.
func (in *Comparison) pad() PadInput {
	p, b := in.Pad, &in.Base
	depth := p.Ground.Depth
	p.Ground = b.Below.Ground
	p.Ground.Design = b.Base.Plate.Design
	if depth > 0 {
		p.Ground.Depth = depth
		if l := &p.Ground.Layer; l.Thickness > 0 {
			// The layer ends where it ends, however deep the pad stands in it.
			l.Thickness = max(0, l.Thickness-(depth-b.Below.Ground.Depth))
		}
	}
	p.Ground.Linked = true
	p.Pairs = b.Below.Pairs
	plate, f := &b.Base.Plate.Plate, &b.Base.Plate.Footprint
	if !in.AbovePad {
		p.Foot = base.Height(b) + p.Ground.Depth - b.Below.Ground.Depth
		p.Plinth = Plinth{SizeX: in.plinthX(), SizeY: in.plinthY(), Plate: plate.Thickness}
	}
	if p.Pad.Column == (pad.Column{}) {
		p.Pad.Column = pad.Column{SizeX: (f.SizeX + plate.SizeX) / 2, SizeY: (f.SizeY + plate.SizeY) / 2}
	}
	if p.Soil == 0 {
		p.Soil = b.Below.Ground.Soil.Above
	}
	return p
}

func (in *Comparison) plinthX() float64 {
	if in.PlinthX > 0 {
		return in.PlinthX
	}
	return in.Base.Base.Plate.Plate.SizeX
}

func (in *Comparison) plinthY() float64 {
	if in.PlinthY > 0 {
		return in.PlinthY
	}
	return in.Base.Base.Plate.Plate.SizeY
}

// shoe returns what of the base both footings have: plate, other steel and weld.
func (in *Comparison) shoe(s *compare.Stack) (out []compare.Item) {
	plate := compare.Plate{SizeX: s.Shoe.SizeX, SizeY: s.Shoe.SizeY, Thickness: s.Shoe.Thickness}
	out = append(out, compare.Item{Kind: compare.SteelPlate, Name: "shoe plate", Mass: plate.Mass()})
	if s.Brackets > 0 {
		out = append(out, compare.Item{Kind: compare.SteelPlate, Name: "brackets of the shoe", Mass: s.Brackets})
	}
	if s.Weld.Length > 0 {
		out = append(out, compare.Item{Kind: compare.WeldMetal, Mass: s.Weld.Mass()})
	}
	return out
}

// stack returns what the stack is made of.
func (in *Comparison) stack() *compare.Stack {
	s, b := in.Stack, &in.Base
	s.Rings = append([]compare.Ring(nil), s.Rings...)
	for i := range s.Rings {
		t, r := &b.Below.Stack.Tiers[i], &s.Rings[i]
		r.Inner, r.Height, r.Count, r.UnitWeight = t.Diameter, t.Height, 1, t.Fill.UnitWeight
		r.Tyre = t.Ring.Kind == ring.Tyre
	}
	plate := &b.Base.Plate.Plate
	s.Shoe = compare.Plate{SizeX: plate.SizeX, SizeY: plate.SizeY, Thickness: plate.Thickness}
	if b.Anchorage.Kind == base.Through {
		p := &b.Anchorage.Through.Plate
		s.Bottom = compare.Plate{SizeX: p.SizeX, SizeY: p.SizeY, Thickness: p.Thickness}
	}
	if b.Base.HasRods {
		d := b.Base.Rod.Thread.Diameter
		s.Rods.Count, s.Rods.Diameter, s.Rods.Length = len(b.Base.At), d, base.StretchLength(&b.Base)+ends*d
	}
	if b.HasWeld && b.Base.Plate.WeldThroat > 0 {
		s.Weld = compare.Weld{Length: base.WeldLength(&b.Base), Throat: b.Base.Plate.WeldThroat}
	}
	if l := &b.Below.Levelling; l.Thickness > 0 {
		x, y := s.Bottom.SizeX, s.Bottom.SizeY
		for i := range s.Rings {
			x, y = max(x, s.Rings[i].Outer), max(y, s.Rings[i].Outer)
		}
		loose := s.Levelling.Loose
		s.Levelling = compare.Course{SizeX: x + 2*in.Margin, SizeY: y + 2*in.Margin, Thickness: l.Thickness, UnitWeight: l.UnitWeight, Loose: loose}
	}
	s.Dig = in.dig(b.Below.Ground.Depth)
	return &s
}

// ends is what of a rod lies in its nuts and beyond, in diameters: common practice, no
// source.
const ends = 3

func (in *Comparison) dig(depth float64) compare.Dig {
	d := in.Dig
	d.Depth = depth
	if d.UnitWeight == 0 {
		d.UnitWeight = in.Base.Below.Ground.Soil.Above
	}
	return d
}

// concrete returns what a pad is made of.
func (in *Comparison) concrete(p *PadInput, c *PadChoice) *compare.Pad {
	out := in.Concrete
	out.SizeX, out.SizeY, out.Thickness = c.SizeX, c.SizeY, c.Thickness
	if c.Bars >= 0 {
		b := compare.Bars(p.Bars[c.Bars])
		out.X, out.Y, out.Cover, out.Bend = b, b, p.Pad.Reinforcement.Cover, p.Pad.Reinforcement.Bend
	}
	if top := p.Plinth.height(p.Foot, c.Thickness); top > 0 {
		out.Plinth = compare.Plinth{SizeX: in.plinthX(), SizeY: in.plinthY(), Height: top}
	}
	out.Dig = in.dig(p.Ground.Depth)
	if out.Blinding > 0 {
		out.Dig.Depth += out.Blinding
	}
	if out.Against {
		out.Dig.Space, out.Dig.Slope = 0, 0
	}
	return &out
}

// settles predicts how the pad settles where the base's settlement is asked for, and
// puts that among what the pad answers with.
func (in *Comparison) settles(r *Compared) error {
	if !in.Base.Below.HasSettlement {
		return nil
	}
	p, c := in.pad(), &r.Pad.Best
	one := in.Base
	one.NoSizes, one.HasWeld, one.Anchorage = true, false, base.Anchorage{}
	one.Base.HasRods, one.Preload = false, 0
	one.Base.Support = bearing.Input{
		Design: one.Base.Plate.Design, SizeX: one.Base.Plate.Plate.SizeX, SizeY: one.Base.Plate.Plate.SizeY, Medium: bearing.Concrete,
		Block: bearing.Block{Concrete: p.Pad.Concrete, SizeX: c.SizeX, SizeY: c.SizeY, Height: c.Thickness},
	}
	one.Below.HasStack, one.Below.Levelling = false, base.Levelling{}
	one.Below.Ground, one.Below.Concrete, one.Below.Reinforcement = p.Ground, plainConcrete, pad.Reinforcement{}
	one.Below.OtherWeight = max(0, c.Weight-plainConcrete*c.SizeX*c.SizeY*c.Thickness)
	arm := max(0, p.height(c.Thickness)-one.Base.Plate.Plate.Thickness-c.Thickness)
	one.Below.Service, one.Below.Sustained = raised(one.Below.Service, arm), raised(one.Below.Sustained, arm)
	out, err := base.CheckColumn(&one)
	if err != nil {
		return err
	}
	var l limit.List
	out.States(&l)
	for _, s := range l.All() {
		if strings.HasPrefix(s.Kind.ID, "settle_") {
			r.Pad.states.Add(s)
		}
	}
	return nil
}

// raised returns cases whose shear acts higher than they say: its moment adds to theirs
// whatever the signs, as that of the height of the pad does.
func raised(cases []base.Case, arm float64) []base.Case {
	out := slices.Clone(cases)
	for i := range out {
		a := &out[i].Actions
		a.Mx, a.My = math.Abs(a.Mx)+math.Abs(a.Vy)*arm, math.Abs(a.My)+math.Abs(a.Vx)*arm
	}
	return out
}

// Notices appends the notices of rings, pad and count.
func (r *Compared) Notices(l *limit.Notices) {
	r.Count.Notices(l)
	if r.light {
		l.Add(lightRings)
	}
}

// light reports whether the rings are heavier than all the weight that is given besides.
func (in *Comparison) light() bool {
	sum := 0.0
	for i := range in.Stack.Rings {
		sum += in.Stack.Rings[i].Mass
	}
	return sum*gravity > in.Base.Below.OtherWeight
}
