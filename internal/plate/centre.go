package plate

import (
	"math"

	"footward.example/footward/internal/basis"
)

const clauseCentre = "statics: section moment of the plate, elastic peak by a thin plate on a stiff bed"

// Centre is the bending of the plate under the middle of a soft footprint.
type Centre struct {
	Q      float64 // mean pressure [MPa]
	AlongY bool    // whether the governing section bends along y
	Mean   float64 // mean moment per width over the section [Nmm/mm]
	Peak   float64 // greatest over mean moment [-]
	M      float64 // moment per width [Nmm/mm]
	Rm     float64 // its resistance [Nmm/mm]
}

// peak is the numerator of the ratio of greatest to mean section moment. The
// ratio peak/(1 + c/B) is on the safe side of a thin plate under a uniform patch
// on a bed: 1.34, 1.39 and 1.54 at c/B 0.5, 0.417 and 0.3.
const peak = 2.1

// centre finds the moment under a soft footprint.
//
//	mean = q L^2/8 (1 - c/L), the load spread over the footprint's size c
//	two plates, along x: |q L^2/8 - q L s/4| or q o^2/2 at a plate, o = (L - s)/2
//
// Source: statics.
func (r *Result) centre() {
	in, c := r.in, &r.Centre
	if r.Case != Concentric || in.Footprint.Stiff {
		return
	}
	p, f := &in.Plate, &in.Footprint
	c.Q = r.P / (p.SizeX * p.SizeY)
	x := c.Q * p.SizeX * (p.SizeX - f.SizeX) / 8
	y := c.Q * p.SizeY * (p.SizeY - f.SizeY) / 8
	if f.Shape == TwoPlates {
		apart := f.SizeX - f.Thick
		x = max(math.Abs(c.Q*p.SizeX*(p.SizeX-2*apart)/8), c.Q*square(p.SizeX-apart)/8)
	}
	// A section that bends along x runs across y, and the other way round.
	peakX, peakY := peak/(1+f.SizeY/p.SizeY), peak/(1+f.SizeX/p.SizeX)
	c.Mean, c.Peak = x, peakX
	if y*peakY > x*peakX {
		c.AlongY, c.Mean, c.Peak = true, y, peakY
	}
	c.M = c.Mean * c.Peak
	c.Rm = r.T * r.T * r.Fy / 6 / in.Design.EC.GammaM0
	if in.Design.Basis.US() {
		c.Rm = basis.Flexure.Factor(in.Design.Basis) * r.Fy * r.T * r.T / 4
	}
}
