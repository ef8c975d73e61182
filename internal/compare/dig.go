package compare

import "math"

// What quantities are turned into.
const (
	mm3PerM3 = 1e9
	mm2PerM2 = 1e6
	gravity  = 9.80665 // m/s2, standard
	steel    = 7.85e-6 // kg/mm3; EN 1991-1-1:2002 Table A.4, 77 to 78.5 kN/m3 (from memory)
	concrete = 24e-6   // N/mm3; EN 1991-1-1:2002 Table A.1, normal weight (from memory)
	quarter  = math.Pi / 4
)

// kg returns the mass of a volume of a unit weight.
func kg(volume, unitWeight float64) float64 { return volume * unitWeight / gravity }

// Dig is the excavation of a footing.
type Dig struct {
	Depth      float64 // from the surface to the underside of the lowest course [mm]; 0: none
	Space      float64 // working space on every side, at the bottom [mm]
	Slope      float64 // of the sides, across for 1 down [-]; 0: upright
	UnitWeight float64 // of the soil in place [N/mm3]; 0: not known
	Bulking    float64 // loose over in-place volume of the soil [-]; 0: not known
}

// pit returns the volume of a pit with sloping sides over a rectangle.
//
//	V = D (a b + (a + b) m D + 4/3 m^2 D^2)
//
// a and b are the plan at the bottom with the working space, m is the slope. It is
// the integral of (a + 2 m z)(b + 2 m z) from 0 to D.
func (d *Dig) pit(x, y float64) float64 {
	a, b, m := x+2*d.Space, y+2*d.Space, d.Slope
	return d.Depth * (a*b + (a+b)*m*d.Depth + 4.0/3*m*m*d.Depth*d.Depth)
}

// items returns excavation, backfill and surplus of a pit over a plan, of which a
// volume is taken up. Soil put back is as dense as it was.
func (d *Dig) items(x, y, taken float64) []Item {
	if d.Depth == 0 {
		return nil
	}
	pit := d.pit(x, y)
	taken = min(taken, pit)
	out := []Item{d.item(Excavation, pit)}
	if back := pit - taken; back > 0 {
		out = append(out, d.item(Backfill, back))
	}
	if taken > 0 {
		out = append(out, d.item(Surplus, taken))
	}
	return out
}

func (d *Dig) item(k Kind, volume float64) Item {
	return Item{Kind: k, Volume: volume / mm3PerM3, Loose: volume / mm3PerM3 * d.Bulking, Mass: kg(volume, d.UnitWeight)}
}

// Course is a layer below a footing.
type Course struct {
	SizeX      float64 // [mm]
	SizeY      float64 // [mm]
	Thickness  float64 // compacted [mm]; 0: none
	UnitWeight float64 // compacted [N/mm3]
	Loose      float64 // loose over compacted volume [-]; 0: not known
}

func (c *Course) volume() float64 { return c.SizeX * c.SizeY * c.Thickness }

func (c *Course) item(k Kind) Item {
	v := c.volume()
	return Item{Kind: k, Volume: v / mm3PerM3, Loose: v / mm3PerM3 * c.Loose, Mass: kg(v, c.UnitWeight)}
}
