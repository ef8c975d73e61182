package plate

import (
	"math"

	"footward.example/footward/internal/basis"
)

const clauseCentre = "statics: section moment of the plate, elastic peak by a thin plate on a stiff bed"

// Centre is the bending of the plate under the middle of a soft footprint.
type Centre struct {
	Done   bool
	Block  float64 // length of the pressed block along x [mm]
	Q      float64 // pressure on it [MPa]
	AlongY bool    // whether the governing section bends along y
	Line   float64 // two plates: force per width of the one pressed harder [N/mm]
	M1     float64 // two plates: moment per width at that one [Nmm/mm]
	M0     float64 // between the two, where it is greatest [Nmm/mm]
	M2     float64 // at the other [Nmm/mm]
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
//	two plates, along x: a beam on two lines under a block of pressure
//
// Source: statics.
func (r *Result) centre() {
	in, c := r.in, &r.Centre
	if in.Footprint.Stiff || !r.centreCovered() {
		return
	}
	p, f := &in.Plate, &in.Footprint
	c.Done, c.Block = true, p.SizeX-2*r.M/r.P
	c.Q = r.P / (c.Block * p.SizeY)
	x := c.Q * p.SizeX * (p.SizeX - f.SizeX) / 8
	y := c.Q * p.SizeY * (p.SizeY - f.SizeY) / 8
	if f.Shape == TwoPlates {
		x = r.between(f.SizeX - f.Thick)
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

// centreCovered reports whether the moment under a soft footprint can be found:
// under compression, and with a moment only of two plates across their gap,
// which bring it in as a pair of forces, while no side lifts.
func (r *Result) centreCovered() bool {
	if r.Case != Uniaxial || r.Biaxial {
		return r.Case == Concentric
	}
	return r.in.Footprint.Shape == TwoPlates && !r.frame.AlongY && r.P > 0 && r.Misfit == Fits && !r.Loose &&
		(r.US.Small || r.EC.Pressed && !r.EC.Lifted)
}

// between returns the greatest moment per width along x of a plate under two
// lines that stand apart, pressed from below by a block at its edge [Nmm/mm].
func (r *Result) between(apart float64) float64 {
	p, c := &r.in.Plate, &r.Centre
	c.Line = (r.P/2 + r.M/apart) / p.SizeY
	c.M1, c.M2 = c.blockMoment((p.SizeX-apart)/2), c.blockMoment((p.SizeX+apart)/2)-c.Line*apart
	c.M0 = 0
	// Between the lines the moment is greatest where the shear is zero.
	if zero := c.Line / c.Q; zero > (p.SizeX-apart)/2 && zero < min((p.SizeX+apart)/2, c.Block) {
		c.M0 = c.Line * ((p.SizeX-apart)/2 - zero/2)
	}
	return max(math.Abs(c.M1), math.Abs(c.M0), math.Abs(c.M2))
}

// blockMoment returns the moment per width of the block at a distance from the
// edge at which it lies [Nmm/mm].
func (c *Centre) blockMoment(from float64) float64 {
	if from > c.Block {
		return c.Q * c.Block * (from - c.Block/2)
	}
	return c.Q * from * from / 2
}
