package bed

import (
	"math"

	"footward.example/footward/internal/geom"
)

// Plate is a rectangle of one thickness, centred on the origin.
type Plate struct {
	SizeX     float64 // along x [mm]
	SizeY     float64 // along y [mm]
	Thickness float64 // that bends, net of corrosion [mm]
	E         float64 // modulus of elasticity [MPa]
	Nu        float64 // Poisson's ratio [-]
}

// Rigidity returns the bending rigidity of the plate per width D [Nmm].
//
//	D = E t^3 / (12 (1 - nu^2))
//
// Source: Kirchhoff's plate theory.
func (p *Plate) Rigidity() float64 {
	return p.E * p.Thickness * p.Thickness * p.Thickness / (12 * (1 - p.Nu*p.Nu))
}

// RelativeStiffness returns the length by which a plate on a bed of modulus k
// [N/mm3] measures distances [mm]; a load is felt over about four of it.
//
//	l = (D/k)^(1/4)
//
// Source: Westergaard 1926, radius of relative stiffness (from memory).
func RelativeStiffness(p *Plate, modulus float64) float64 {
	return math.Sqrt(math.Sqrt(p.Rigidity() / modulus))
}

// StiffReach is how far a plate may reach past what stands on it and be taken as
// rigid, in lengths l [-]: see Rigid.
const StiffReach = 0.6

// Rigid reports whether a plate that reaches past the outline of what stands on
// it by an overhang a [mm] may be taken as rigid, with l of RelativeStiffness:
//
//	a <= 0.6 l
//
// Measured of square plates of 400 to 1000 mm under a footprint of a third to a
// half of their size: the peak pressure is then at most 7 % above the mean, and the
// cantilever moment at most 4 % below that of an even pressure. It says nothing
// about the moment at the middle of a soft footprint, nor about what lies between
// patches that stand apart.
func Rigid(overhang, l float64) bool { return overhang <= StiffReach*l }

// Patch is a loaded rectangle of the plate. Its forces act at its own centre and
// press with
//
//	q = -N/A + 12 M_y (x - x_c)/(A b_x^2) - 12 M_x (y - y_c)/(A b_y^2)
type Patch struct {
	At    geom.Point // centre
	SizeX float64    // along x [mm]
	SizeY float64    // along y [mm]
	N     float64    // axial force, tension positive [N]
	Mx    float64    // moment about x, positive presses the -y side [Nmm]
	My    float64    // moment about y, positive presses the +x side [Nmm]
	// Whether what stands on it keeps the plate flat there, such as a steel stub.
	// How it presses within the patch then makes no difference.
	Stiff bool
}

// covers reports whether a point lies within the patch.
func (p *Patch) covers(x, y float64) bool {
	return math.Abs(x-p.At.X) < p.SizeX/2 && math.Abs(y-p.At.Y) < p.SizeY/2
}

// Spread shares N, M_x and M_y of actions at the origin out to the patches by
// one linear pressure over all of them, such as the two flanges of a column.
// Patches must not overlap. It reports whether they can carry the moments.
func Spread(patches []Patch, a *geom.Actions) bool {
	var area, sx, sy float64
	for i := range patches {
		p := &patches[i]
		b := p.SizeX * p.SizeY
		area, sx, sy = area+b, sx+b*p.At.X, sy+b*p.At.Y
	}
	g := geom.Group{N: area, X: sx / area, Y: sy / area}
	for i := range patches {
		p := &patches[i]
		b, x, y := p.SizeX*p.SizeY, p.At.X-g.X, p.At.Y-g.Y
		g.Ix += b * (y*y + p.SizeY*p.SizeY/12)
		g.Iy += b * (x*x + p.SizeX*p.SizeX/12)
		g.Ixy += b * x * y
	}
	s := g.Share(a)
	for i := range patches {
		p := &patches[i]
		b := p.SizeX * p.SizeY
		p.N = b * s.Axial(p.At)
		p.My = -s.SlopeX * b * p.SizeX * p.SizeX / 12
		p.Mx = s.SlopeY * b * p.SizeY * p.SizeY / 12
	}
	return s.Bends
}

// Rod holds the plate down at a point.
type Rod struct {
	At        geom.Point
	Stiffness float64 // E A / L [N/mm]
	Preload   float64 // tension before the actions, when all rods have pressed the bed [N]
	Gap       float64 // rise of the plate before the rod pulls [mm]
}

// Input is an elastic plate under loads.
type Input struct {
	Plate Plate
	// Modulus of subgrade reaction k [N/mm3].
	Modulus float64
	Patches []Patch
	Rods    []Rod
}

// actions returns what the patches bring to the origin.
func (in *Input) actions() geom.Actions {
	var a geom.Actions
	for i := range in.Patches {
		p := &in.Patches[i]
		a.N += p.N
		a.Mx += p.Mx + p.At.Y*p.N
		a.My += p.My - p.At.X*p.N
	}
	return a
}

// stiff reports whether a stiff patch covers a point.
func (in *Input) stiff(x, y float64) bool {
	for i := range in.Patches {
		if p := &in.Patches[i]; p.Stiff && p.covers(x, y) {
			return true
		}
	}
	return false
}

// overhang returns the greatest distance from the box around the patches to an
// edge of the plate [mm].
func (in *Input) overhang() float64 {
	left, right, lower, upper := in.Plate.SizeX, in.Plate.SizeX, in.Plate.SizeY, in.Plate.SizeY
	for i := range in.Patches {
		p := &in.Patches[i]
		x, y := (in.Plate.SizeX-p.SizeX)/2, (in.Plate.SizeY-p.SizeY)/2
		left, right = min(left, x+p.At.X), min(right, x-p.At.X)
		lower, upper = min(lower, y+p.At.Y), min(upper, y-p.At.Y)
	}
	return max(0, left, right, lower, upper)
}
