package compare

import (
	"math"

	"footward.example/footward/internal/limit"
)

// Bars are equal bars of one direction at the underside of a pad.
type Bars struct {
	Diameter float64 // [mm]; 0: none
	Spacing  float64 // between centres, at most [mm]
}

// Plinth is what stands on a pad under the column.
type Plinth struct {
	SizeX  float64 // [mm]
	SizeY  float64 // [mm]
	Height float64 // [mm]; 0: none
}

// Pad is a concrete pad.
type Pad struct {
	SizeX      float64 // [mm]
	SizeY      float64 // [mm]
	Thickness  float64 // [mm]
	Plinth     Plinth
	X          Bars    // bars along x
	Y          Bars    // bars along y
	Cover      float64 // of the ends and the first bars [mm]
	Bend       float64 // length of every bar bent up at each end [mm]
	Other      float64 // starter bars, chairs and laps [kg]
	UnitWeight float64 // of the concrete [N/mm3]; 0: 24 kN/m3 (EN 1991-1-1:2002 Table A.1, from memory)
	Blinding   float64 // thickness [mm]; 0: none
	Beyond     float64 // blinding beyond the pad on every side [mm]
	Against    bool    // cast against the ground: the sides of the pad need no formwork
	Dig        Dig
}

// PadQuantities counts the items of a concrete pad.
//
//	concrete: x y h and the plinth; bars are not taken off
//	bars along x: ceil((y - 2 c - phi)/s) + 1 of x - 2 c + 2 bends
//	formwork: 2 (x + y) h, unless cast against the ground, and 2 (x + y) h of the plinth
//	taken up in the ground: blinding, pad and plinth below the surface
//
// Errors: limit.Faults.
func PadQuantities(in *Pad) ([]Item, error) {
	var faults limit.Faults
	ValidatePad(in, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	weight := in.UnitWeight
	if weight == 0 {
		weight = concrete
	}
	p := &in.Plinth
	volume := in.SizeX*in.SizeY*in.Thickness + p.SizeX*p.SizeY*p.Height
	out := []Item{{Kind: Concrete, Volume: volume / mm3PerM3, Mass: kg(volume, weight)}}
	bars := in.bars(in.X, in.SizeX, in.SizeY) + in.bars(in.Y, in.SizeY, in.SizeX) + in.Other
	if bars > 0 {
		out = append(out, Item{Kind: Reinforcement, Mass: bars})
	}
	blinding := Course{SizeX: in.SizeX + 2*in.Beyond, SizeY: in.SizeY + 2*in.Beyond, Thickness: in.Blinding, UnitWeight: weight}
	if in.Blinding > 0 {
		i := blinding.item(Blinding)
		i.Loose = 0 // it is no loose material
		out = append(out, i)
	} else {
		blinding.SizeX, blinding.SizeY = in.SizeX, in.SizeY
	}
	forms := 2 * (p.SizeX + p.SizeY) * p.Height
	if !in.Against {
		forms += 2 * (in.SizeX + in.SizeY) * in.Thickness
	}
	if forms > 0 {
		out = append(out, Item{Kind: Formwork, Area: forms / mm2PerM2})
	}
	return append(out, in.Dig.items(blinding.SizeX, blinding.SizeY, in.taken(&blinding))...), nil
}

// bars returns the mass of the bars of one direction.
func (in *Pad) bars(b Bars, length, width float64) float64 {
	if b.Diameter == 0 {
		return 0
	}
	number := math.Ceil((width-2*in.Cover-b.Diameter)/b.Spacing-1e-9) + 1
	return number * (length - 2*in.Cover + 2*in.Bend) * quarter * b.Diameter * b.Diameter * steel
}

// taken returns the volume below the surface.
func (in *Pad) taken(blinding *Course) float64 {
	left := in.Dig.Depth
	volume := 0.0
	for _, part := range [...]struct{ area, height float64 }{
		{blinding.SizeX * blinding.SizeY, in.Blinding},
		{in.SizeX * in.SizeY, in.Thickness},
		{in.Plinth.SizeX * in.Plinth.SizeY, in.Plinth.Height},
	} {
		h := min(left, part.height)
		volume += part.area * h
		left -= h
	}
	return volume
}
