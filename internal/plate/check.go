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
	Biaxial         // moments about both axes
)

// Result holds every intermediate value of a check.
type Result struct {
	in   *Input
	Case Case
	N    float64 // axial force, tension positive [N]
	P    float64 // compression, a magnitude; 0 under tension [N]
	M    float64 // moment, a magnitude [Nmm]
	T    float64 // thickness left after corrosion [mm]
	Fy   float64 // yield strength at the thickness as built [MPa]

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
	switch {
	case a.Mx != 0 && a.My != 0:
		r.Case, r.Misfit = Biaxial, BothAxes
	case a.Mx != 0:
		// M_x > 0 presses the -y side, so the +y side lifts.
		r.Case, r.M = Uniaxial, math.Abs(a.Mx)
		r.frame = in.frame(true, math.Copysign(1, a.Mx))
	case a.My != 0:
		// M_y > 0 presses the +x side, so the -x side lifts.
		r.Case, r.M = Uniaxial, math.Abs(a.My)
		r.frame = in.frame(false, -math.Copysign(1, a.My))
	case a.N < 0:
		r.Case = Concentric
		r.frame = in.frame(true, 1)
	case a.N > 0:
		r.Case = Uplift
		r.frame = in.frame(in.Footprint.Shape != TwoPlates, 1)
	}
	if r.Case == Uplift && in.Footprint.Shape == Tube {
		r.uplift()
	} else {
		r.run()
	}
	r.centre()
	return r, nil
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
