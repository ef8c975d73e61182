package compare

import "footward.example/footward/internal/limit"

// Ring is a ring of a stack with its fill, or several equal ones.
type Ring struct {
	Inner      float64 // diameter of the fill; of a tyre the mean one of the space that is filled [mm]
	Outer      float64 // diameter [mm]
	Height     float64 // [mm]
	Count      int     // equal rings on top of one another
	Mass       float64 // of each ring, without fill [kg]
	Reused     bool    // whether the ring had a life before
	Tyre       bool    // whether it is a worn tyre
	UnitWeight float64 // of the fill, compacted [N/mm3]
	Loose      float64 // loose over compacted volume of the fill [-]; 0: not known
}

// Plate is a steel plate.
type Plate struct {
	SizeX     float64 // or the diameter of a round one [mm]
	SizeY     float64 // of a round one its diameter again [mm]
	Thickness float64 // [mm]; 0: no plate
	Round     bool
}

// volume of the plate, its holes not taken off.
func (p *Plate) volume() float64 {
	v := p.SizeX * p.SizeY * p.Thickness
	if p.Round {
		v *= quarter
	}
	return v
}

// Mass returns the mass of the plate [kg].
//
// Source: geometry.
func (p *Plate) Mass() float64 { return p.volume() * steel }

// Rods are equal rods through the stack.
type Rods struct {
	Count    int     // 0: none
	Diameter float64 // nominal, which is a little too heavy for a thread [mm]
	Length   float64 // of each [mm]
	Fittings float64 // nuts and washers of all [kg]
}

// Weld is the weld of the shoe.
type Weld struct {
	Length float64 // of all runs [mm]; 0: none
	Throat float64 // of a fillet [mm]
}

// Mass returns the mass of a fillet weld with equal legs [kg].
//
// Source: geometry.
func (w *Weld) Mass() float64 { return w.Length * w.Throat * w.Throat * steel }

// Sheet is a geotextile.
type Sheet struct {
	SizeX  float64 // [mm]; 0: none
	SizeY  float64 // [mm]
	Layers int
	Laps   float64 // share that laps and cuttings add [-]
	Mass   float64 // for each m2 [kg]; 0: not known
}

// Stack is a stack of rings with its steel.
type Stack struct {
	Rings      []Ring // from the top down
	Shoe       Plate
	Bottom     Plate
	Brackets   float64 // other steel of the shoe, as plate [kg]
	Rods       Rods
	Weld       Weld
	Levelling  Course
	Geotextile Sheet
	Dig        Dig
}

// RingQuantities counts the items of a stack of rings.
//
//	fill: pi/4 inner^2 height; ring: count and mass; rod: pi/4 d^2 length
//	weld: a^2 length, the section of a fillet with equal legs
//	taken up in the ground: levelling layer, bottom plate and pi/4 outer^2 height of
//	every ring, from the bottom of the pit up to the surface
//
// Holes, and the room of the rods in the fill, are not taken off. Errors:
// limit.Faults.
func RingQuantities(in *Stack) ([]Item, error) {
	var faults limit.Faults
	ValidateStack(in, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	var out []Item
	add := func(i Item) {
		if i.Mass > 0 || i.Volume > 0 || i.Area > 0 {
			out = append(out, i)
		}
	}
	plate := func(name string, p *Plate) {
		add(Item{Kind: SteelPlate, Name: name, Mass: p.Mass()})
	}
	plate("shoe plate", &in.Shoe)
	add(Item{Kind: SteelPlate, Name: "brackets of the shoe", Mass: in.Brackets})
	plate("bottom plate", &in.Bottom)
	d := in.Rods.Diameter
	add(Item{Kind: SteelRod, Mass: float64(in.Rods.Count)*quarter*d*d*in.Rods.Length*steel + in.Rods.Fittings, Count: in.Rods.Count})
	add(Item{Kind: WeldMetal, Mass: in.Weld.Mass()})
	var fill Item
	known := true
	for i := range in.Rings {
		r := &in.Rings[i]
		n := float64(r.Count)
		k := NewRing
		if r.Reused {
			k = ReusedRing
		}
		add(Item{Kind: k, Mass: n * r.Mass, Count: r.Count, Tyre: r.Tyre})
		v := n * quarter * r.Inner * r.Inner * r.Height
		fill.Kind = Fill
		fill.Volume += v / mm3PerM3
		fill.Loose += v / mm3PerM3 * r.Loose
		fill.Mass += kg(v, r.UnitWeight)
		known = known && r.Loose > 0
	}
	if !known {
		fill.Loose = 0 // a part of it is no volume to order
	}
	add(fill)
	add(in.Levelling.item(Levelling))
	g := &in.Geotextile
	area := g.SizeX * g.SizeY * float64(g.Layers) * (1 + g.Laps) / mm2PerM2
	add(Item{Kind: Geotextile, Area: area, Mass: area * g.Mass})
	x, y := in.plan()
	return append(out, in.Dig.items(x, y, in.taken())...), nil
}

// plan returns the plan of the bottom of the pit, without working space.
func (in *Stack) plan() (x, y float64) {
	x, y = max(in.Levelling.SizeX, in.Bottom.SizeX), max(in.Levelling.SizeY, in.Bottom.SizeY)
	for i := range in.Rings {
		x, y = max(x, in.Rings[i].Outer), max(y, in.Rings[i].Outer)
	}
	return x, y
}

// taken returns the volume that the stack takes up below the surface.
func (in *Stack) taken() float64 {
	left := in.Dig.Depth
	volume := 0.0
	up := func(area, height float64) {
		h := min(left, height)
		volume += area * h
		left -= h
	}
	up(in.Levelling.SizeX*in.Levelling.SizeY, in.Levelling.Thickness)
	if in.Bottom.Thickness > 0 {
		up(in.Bottom.volume()/in.Bottom.Thickness, in.Bottom.Thickness)
	}
	for i := len(in.Rings) - 1; i >= 0; i-- {
		r := &in.Rings[i]
		up(quarter*r.Outer*r.Outer, r.Height*float64(r.Count))
	}
	return volume
}
