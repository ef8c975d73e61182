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
	Reason string // why a moment or an uplift is beyond the basis; empty: it is not
	Loose  bool   // whether a side lifts that no rod holds
	Both   bool   // whether both sides lift
	Row    Row    // of the rods on the lifted side

	EC     Eurocode
	US     American
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
		r.Case, r.Reason = Biaxial, bothAxes
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
		r.frame = in.frame(r.upliftAlongY(), 1)
	}
	if in.Design.Basis == basis.Eurocode {
		r.eurocode()
	} else {
		r.us()
	}
	r.centre()
	return r, nil
}

const bothAxes = "moments about both axes at once are not covered: the method holds for a moment about one axis"

// upliftAlongY chooses the direction in which rods hold a plate that is only
// pulled: that of the flanges; of a tube, the one that has rods outside it.
func (r *Result) upliftAlongY() bool {
	if r.in.Footprint.Shape == TwoPlates {
		return false
	}
	f := r.in.frame(true, 1)
	row, _ := r.in.row(&f)
	return row.Count > 0 || r.in.Footprint.Shape != Tube
}

// pulled returns the tension that the base was found to give the rods outside the
// footprint on the lifted side, or on the other where that is more [N]. It turns
// the frame to that side.
func (r *Result) pulled() float64 {
	in, f := r.in, &r.frame
	var sides [2]float64
	for i, t := range in.Shared.Tensions {
		s := in.Rods.At[i].X
		if f.AlongY {
			s = in.Rods.At[i].Y
		}
		switch s *= f.Side; {
		case s > f.H/2:
			sides[0] += t
		case s < -f.H/2:
			sides[1] += t
		}
	}
	if sides[1] > sides[0] {
		f.Side = -f.Side
		return sides[1]
	}
	return sides[0]
}

// hold finds the rods on the lifted side, and on the other side too where both
// lift. It reports whether there are any that can be used.
func (r *Result) hold(both bool) bool {
	if len(r.in.Rods.At) == 0 {
		r.Loose = true
		return false
	}
	r.Row, r.Reason = r.in.row(&r.frame)
	if r.Reason == "" && both {
		opposite := r.frame
		opposite.Side = -opposite.Side
		other, why := r.in.row(&opposite)
		switch {
		case why != "":
			r.Reason = why
		case math.Abs(other.S-r.Row.S) > inMiddle || other.Count != r.Row.Count:
			r.Reason = "both sides lift, and their rods differ in place or number"
		}
	}
	return r.Reason == ""
}
