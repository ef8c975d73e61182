package plate

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

// Case is how the actions press and lift the plate.
type Case uint8

// The cases. The zero value: no action that bends the plate.
const (
	Idle       Case = iota
	Concentric      // compression alone
	Uniaxial        // a moment about one axis
	Uplift          // tension alone
)

// Result holds every intermediate value of a check.
type Result struct {
	in   *Input
	Case Case
	// Whether moments act about both axes: the one that the clauses' states show is
	// then taken alone.
	Biaxial bool
	N       float64 // axial force, tension positive [N]
	P       float64 // compression, a magnitude; 0 under tension [N]
	M       float64 // moment, a magnitude [Nmm]
	T       float64 // thickness left after corrosion [mm]
	Fy      float64 // yield strength at the thickness as built [MPa]

	frame  frame
	Misfit Misfit // why a moment or an uplift is beyond the clauses
	Loose  bool   // whether a side lifts that no rod holds
	Both   bool   // whether both sides lift
	Row    Row    // of the rods on the lifted side that governs
	lifts  lifts

	EC     Eurocode
	US     American
	Column Column
	Centre Centre

	Sections Sections
}

// Check verifies a base plate. Errors: limit.Faults.
func Check(in *Input) (Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return Result{}, faults
	}
	a := &in.Actions
	r := Result{in: in, N: a.N, P: max(0, -a.N), T: in.Plate.Net()}
	r.Fy, _, _ = in.Plate.Steel.At(in.Plate.Thickness)
	mx, my := in.moments()
	switch {
	case mx && my:
		r.both()
	case mx:
		r.aboutX()
	case my:
		r.aboutY()
	case a.N < 0:
		r.Case = Concentric
		r.frame = in.frame(true, 1)
	case a.N > 0:
		r.Case = Uplift
		r.frame = in.frame(in.Footprint.Shape != TwoPlates, 1)
	}
	switch {
	case r.Biaxial: // done
	case r.Case == Uplift && in.Footprint.Shape == Tube:
		r.uplift()
	default:
		r.run()
	}
	r.centre()
	r.ask()
	return r, nil
}

// leastShare is the share of the compression times the plate's size up to which a
// moment is only what is left of moments that cancel.
const leastShare = 1e-9

// Acts reports whether a moment [Nmm] beside the axial force n [N] on a plate of the
// size [mm] is one at all: that of a rounding error must not choose the method.
func Acts(m, n, size float64) bool { return math.Abs(m) > max(0, -n)*size*leastShare }

// moments reports about which axes a moment acts.
func (in *Input) moments() (aboutX, aboutY bool) {
	a := &in.Actions
	return Acts(a.Mx, a.N, in.Plate.SizeY), Acts(a.My, a.N, in.Plate.SizeX)
}

// aboutX leaves the moment about x alone: M_x > 0 presses the -y side, so the +y
// side lifts.
func (r *Result) aboutX() {
	m := r.in.Actions.Mx
	r.Case, r.M, r.frame = Uniaxial, math.Abs(m), r.in.frame(true, math.Copysign(1, m))
}

// aboutY leaves the moment about y alone: M_y > 0 presses the +x side, so the -x
// side lifts.
func (r *Result) aboutY() {
	m := r.in.Actions.My
	r.Case, r.M, r.frame = Uniaxial, math.Abs(m), r.in.frame(false, -math.Copysign(1, m))
}

// slightMoment is the share of the other moment below which a moment hardly counts
// for the clauses' states.
const slightMoment = 0.05

// both holds moments about both axes by the clauses as if one acted alone, which the
// critical sections hold together. It shows the one that is used more; one that is
// slight counts in proportion, so that a moment that vanishes changes nothing.
func (r *Result) both() {
	r.Biaxial = true
	y := *r
	r.aboutX()
	r.run()
	y.aboutY()
	y.run()
	mx, my := r.M/r.frame.H, y.M/y.frame.H
	countX, countY := min(1, mx/my/slightMoment), min(1, my/mx/slightMoment)
	ux, uy := countX*r.used(), countY*y.used()
	if uy > ux && !(r.Misfit != Fits && countY < 1) || uy <= ux && y.Misfit != Fits && countX < 1 {
		*r = y
	}
}

// used returns how far the clauses' own states are used [-].
func (r *Result) used() float64 {
	var l limit.List
	l.NoSizes = true
	r.clauses(&l)
	if g := l.Governing(); g != nil && g.Rated {
		return g.Utilization
	} else if g != nil {
		return math.Inf(1)
	}
	return 0
}

func (r *Result) run() {
	if r.in.Design.Basis == basis.Eurocode {
		r.eurocode()
		r.column()
	} else {
		r.us()
	}
}

// uplift holds a tube that is only pulled by the rods outside the one pair of walls
// or the other, whichever holds better: the plate is free to take either way.
func (r *Result) uplift() {
	x := *r
	x.frame = r.in.frame(false, 1)
	r.run()
	x.run()
	if x.Misfit == Fits && (r.Misfit != Fits || x.strain() < r.strain()) {
		*r = x
	}
}

// strain returns how far the lifted side is used [-].
func (r *Result) strain() float64 {
	if r.in.Design.Basis == basis.Eurocode {
		return r.EC.Ft / r.EC.TStub.FtRd
	}
	return r.US.Mt / r.US.Rm
}
