package size

import (
	"strings"

	"footward.example/footward/internal/base"
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
	// the height of the actions come from the base.
	Pad PadInput
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
	r := &Compared{}
	var err error
	if r.Rings, err = base.CheckColumn(&in.Base); err != nil {
		return nil, err
	}
	p := in.pad()
	if r.Pad, err = SearchPad(&p); err != nil {
		return nil, err
	}
	rings, err := compare.RingQuantities(in.stack())
	if err != nil {
		return nil, err
	}
	concrete, err := compare.PadQuantities(in.concrete(&p, &r.Pad.Best))
	if err != nil {
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
	}
	// A layer under the rings is not one under the pad, but the ground is the same.
	p.Ground.Linked = true
	p.Pairs = b.Below.Pairs
	if p.Pad.Column == (pad.Column{}) {
		plate, f := &b.Base.Plate.Plate, &b.Base.Plate.Footprint
		p.Pad.Column = pad.Column{SizeX: (f.SizeX + plate.SizeX) / 2, SizeY: (f.SizeY + plate.SizeY) / 2}
	}
	if p.Above == 0 {
		p.Above = b.Base.Plate.Plate.Thickness
	}
	if p.Soil == 0 {
		p.Soil = b.Below.Ground.Soil.Above
	}
	return p
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
		s.Rods.Count, s.Rods.Diameter, s.Rods.Length = len(b.Base.At), b.Base.Rod.Thread.Diameter, base.StretchLength(&b.Base)
	}
	if b.HasWeld {
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
	out.UnitWeight = p.Concrete
	out.Dig = in.dig(p.Ground.Depth)
	if out.Blinding > 0 {
		out.Dig.Depth += out.Blinding
	}
	if out.Against {
		out.Dig.Space, out.Dig.Slope = 0, 0
	}
	return &out
}

// ValidateComparison adds to faults everything that does not fit.
func ValidateComparison(in *Comparison, faults *limit.Faults) {
	before := len(*faults)
	add := func(found limit.Faults, field func(string) string) {
		for _, f := range found {
			if f.Field = field(f.Field); f.Field != "" {
				*faults = append(*faults, f)
			}
		}
	}
	base.ValidateColumn(&in.Base, faults)
	s := &in.Base.Below
	if !s.HasStack {
		faults.Add(limit.Missing, "base.substructure.stack", "is needed: it is what a pad is held against")
	}
	if !s.HasGround {
		faults.Add(limit.Missing, "base.substructure.ground", "is needed: the pad is sized for it")
	}
	if n := len(s.Stack.Tiers); s.HasStack && len(in.Stack.Rings) != n {
		faults.Add(limit.Number, "supply.rings", "must say of every tier what its ring is")
	}
	if len(*faults) > before {
		return
	}
	var found limit.Faults
	p := in.pad()
	ValidatePad(&p, &found)
	add(found, padPath)
	found = nil
	compare.ValidateStack(in.stack(), &found)
	add(found, func(field string) string {
		switch part, _, _ := strings.Cut(field, "."); part {
		case "shoe", "bottom_plate", "weld", "levelling":
			return "" // those of the base
		case "excavation":
			return field
		}
		return "supply." + field
	})
	found = nil
	compare.ValidatePad(in.concrete(&p, &PadChoice{SizeX: p.Plan.Most, SizeY: p.across(p.Plan.Most), Thickness: p.Thickness.Most, Bars: min(0, len(p.Bars)-1)}), &found)
	add(found, padPath)
	found = nil
	compare.Validate(&compare.Input{Footings: []compare.Footing{{Items: []compare.Item{{Kind: compare.Fill, Mass: 1}}}}, Rates: in.Rates}, &found)
	*faults = append(*faults, found...)
}

// padPath is the contract's path of a field of the pad.
func padPath(field string) string {
	switch part, rest, _ := strings.Cut(field, "."); part {
	case "excavation":
		return field
	case "pad", "concrete", "plan", "thickness":
		if part == "concrete" {
			return "pad.concrete"
		}
		if part == "pad" {
			return "pad." + rest
		}
		return "pad." + field
	case "interface", "soil", "layer", "presumptive", "footing", "permanent", "variable", "method", "forces", "basis":
		return "" // those of the base, which have been looked at
	}
	return "pad." + field
}

// Notices appends the notices of rings, pad and count.
func (r *Compared) Notices(l *limit.Notices) { r.Count.Notices(l) }
