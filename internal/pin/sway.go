package pin

const (
	cantilever = 2.0 // K of a plate whose head goes sideways and turns
	guided     = 1.0 // K of a plate whose head goes sideways but does not turn
	mostTilt   = 1.0 / 100
)

// sways returns the factor K of the plates' length of buckling out of their plane [-].
//
// With one level of pins, or nothing that holds the plates to the timber, each
// plate is a cantilever whose head goes sideways with the column's foot: K is 2.
// Where the column keeps the heads upright, or its foot is held along the pins, it
// is 1. A plate in a slot is kept upright by the timber on both sides, as far as
// play in the slot does not let it tilt by more than 1/100: half of that is the
// bow from which curve c comes (EN 1993-1-1 Table 5.1).
//
// The same length counts for lateral torsional buckling: a cantilever under a
// moment all along it buckles at pi/(2 L) sqrt(E I G J), half of what a plate held
// at its head does.
//
// Source: theory of columns; AISC 360-22 Table C-A-7.1 (from memory).
func (r *Result) sways() float64 {
	if r.in.Plates.Held || r.in.upright() {
		return guided
	}
	return cantilever
}

// upright reports whether the column keeps the heads of the plates upright.
func (in *Input) upright() bool {
	p, l := &in.Plates, &in.Layout
	if p.Arrangement == Inside {
		return 2*p.Gap <= mostTilt*(l.EndDistance+in.along()+p.EndDistance)
	}
	return in.Pin.Kind == Bolt && in.Pin.Nuts && l.InRow > 1 && p.Gap == 0
}

// ofStress returns the partial factor of the stress in the plates, Eurocode [-]:
// that of buckling where a reduction for it counts and it is the greater.
//
// Source: EN 1993-1-1:2005 6.1(1), 6.3.1, 6.3.2.
func (r *Result) ofStress() float64 {
	g := &r.in.Design.EC
	if r.buckles() {
		return max(g.GammaM0, g.GammaM1)
	}
	return g.GammaM0
}

// buckles reports whether a reduction for buckling counts in the stress.
func (r *Result) buckles() bool {
	s := &r.Steel
	return s.M > 0 && s.ChiLT < 1 || r.Nj < 0 && s.Chi < 1
}

// pressed returns what area and yield strength are multiplied by in compression,
// Eurocode [-].
//
// Source: EN 1993-1-1:2005 (6.10), (6.47).
func (r *Result) pressed() float64 {
	g := &r.in.Design.EC
	return min(r.Steel.Chi/g.GammaM1, 1/g.GammaM0)
}
