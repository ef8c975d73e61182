package plate

import (
	"math"

	"footward.example/footward/internal/basis"
)

const clauseCentre = "statics: section moment of the plate, elastic peak by a thin plate on a soft bed"

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
	Edge   float64 // under a moment: pressure at the edge of a straight line [MPa]
	Fall   float64 // by which it falls off for each mm [MPa/mm]
	Linear float64 // moment per width of that at the one pressed harder [Nmm/mm]
	Mean   float64 // mean moment per width over the section [Nmm/mm]
	Peak   float64 // greatest over mean moment [-]
	E      float64 // of the load over 8 that a small footprint adds at its middle [-]
	Force  float64 // that load [N]
	Reach  float64 // two plates, along them: how far from one the plate bends at most [mm]
	OutS   float64 // two plates, along them: width that bends on the outside of one [mm]
	InS    float64 // on its inside [mm]
	M      float64 // moment per width [Nmm/mm]
	Rm     float64 // its resistance [Nmm/mm]
}

// The greatest moment of a thin plate on a soft bed, held against finite elements of
// plates with L/B 1 to 3 and c/B 0.05 to 0.5, never more than 4 % below them: over the
// mean it is 2.1/(1 + c/B); a small footprint adds at its middle P/8 times
// 0.85 - 0.66 ln(c_m/B) - 2.1/(1 + c_m/B), if that is positive, with c_m the mean of its
// two sizes and B the shorter side of the plate.
const (
	peak      = 2.1
	smallBase = 0.85
	smallLog  = 0.66
)

// The width that bends along two plates, on either side of one: 0.9/sqrt(1/d^2 + 1/(a L)^2),
// d to the edge or half way to the other and a = 0.195 + 0.25 c/L, at most 0.295. It is no
// more than what the same finite elements give where this direction governs.
const (
	lineShare  = 0.9
	lineBase   = 0.195
	lineGrowth = 0.25
	lineMost   = 0.295
)

// lineWidth returns that width [mm].
func (c *Centre) lineWidth(d float64) float64 {
	return lineShare / math.Sqrt(1/(d*d)+1/(c.Reach*c.Reach))
}

// centre finds the moment under a soft footprint.
//
//	mean = q L^2/8 (1 - c/L), the load spread over the footprint's size c
//	two plates, across: a beam on two lines under a block of pressure
//	two plates, along: F_1 (L - c)/8 over the width that bends
//
// Source: statics; thin plates on a soft bed by finite elements, as above.
func (r *Result) centre() {
	in, c := r.in, &r.Centre
	if in.Footprint.Stiff || !r.centreCovered() {
		return
	}
	p, f := &in.Plate, &in.Footprint
	c.Done, c.Block = true, p.SizeX-2*r.M/r.P
	c.Q = r.P / (c.Block * p.SizeY)
	meanX := c.Q * p.SizeX * (p.SizeX - f.SizeX) / 8
	meanY := c.Q * p.SizeY * (p.SizeY - f.SizeY) / 8
	// A section that bends along x runs across y, and the other way round.
	peakX, peakY := peak/(1+f.SizeY/p.SizeY), peak/(1+f.SizeX/p.SizeX)
	size := (f.SizeX + f.SizeY) / 2
	c.Force = r.P
	if f.Shape == TwoPlates {
		apart := f.SizeX - f.Thick
		meanX, size = r.between(apart), (f.Thick+f.SizeY)/2
		c.Force = c.Line * p.SizeY
		c.Reach = min(lineMost*p.SizeY, lineBase*p.SizeY+lineGrowth*f.SizeY)
		c.OutS, c.InS = c.lineWidth((p.SizeX-apart)/2), c.lineWidth(apart/2)
		meanY, peakY = c.Force*(p.SizeY-f.SizeY)/8/(c.OutS+c.InS), 1
	}
	size /= min(p.SizeX, p.SizeY)
	c.E = max(0, smallBase-smallLog*math.Log(size)-peak/(1+size))
	small := c.Force / 8 * c.E
	x, y := meanX*peakX+small, meanY*peakY
	if f.Shape != TwoPlates {
		y += small
	}
	c.Mean, c.Peak, c.M = meanX, peakX, x
	if y > x {
		c.AlongY, c.Mean, c.Peak, c.M = true, meanY, peakY, y
	}
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
	if r.M > 0 {
		r.linear((p.SizeX - apart) / 2)
	}
	return max(math.Abs(c.M1), math.Abs(c.M0), math.Abs(c.M2), c.Linear)
}

// linear finds the moment per width at a distance from the edge where the pressure is a
// straight line, or a triangle once a part gapes: an elastic bed presses the edge more
// than the block does.
func (r *Result) linear(a float64) {
	c, l := &r.Centre, r.in.Plate.SizeX
	line, e := r.P/r.in.Plate.SizeY, r.M/r.P
	if e <= l/6 {
		c.Edge, c.Fall = line/l*(1+6*e/l), 12*line*e/(l*l*l)
	} else {
		pressed := 3 * (l/2 - e)
		c.Edge, c.Fall = 2*line/pressed, 2*line/(pressed*pressed)
	}
	a = min(a, c.Edge/c.Fall)
	c.Linear = c.Edge*a*a/2 - c.Fall*a*a*a/6
}

// blockMoment returns the moment per width of the block at a distance from the
// edge at which it lies [Nmm/mm].
func (c *Centre) blockMoment(from float64) float64 {
	if from > c.Block {
		return c.Q * c.Block * (from - c.Block/2)
	}
	return c.Q * from * from / 2
}
