package plate

import (
	"fmt"
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/section"
)

const (
	clausePressed   = "statics of straight sections; pressure by EN 1993-1-8:2005 6.2.5(4)"
	clausePulled    = "statics of straight sections; lengths by EN 1993-1-8:2005 Table 6.6"
	clausePressedUS = "statics of straight sections; AISC Manual Part 14; AISC 360-22 F11"
	clausePulledUS  = "statics of straight sections; AISC Design Guide 1, 3rd ed. 2024, chapter 4; AISC 360-22 F11"
)

var (
	pressedAt = &limit.Kind{
		ID: "plate_section_pressed", Title: "Plate in bending where it is pressed, sections at any angle", Measure: limit.Ratio, Model: true,
		Clause: [basis.Count]string{basis.Eurocode: clausePressed, basis.USLRFD: clausePressedUS, basis.USASD: clausePressedUS},
	}
	pulledAt = &limit.Kind{
		ID: "plate_section_pulled", Title: "Plate in bending where rods pull, sections at any angle", Measure: limit.Ratio, Model: true,
		Clause: [basis.Count]string{basis.Eurocode: clausePulled, basis.USLRFD: clausePulledUS, basis.USASD: clausePulledUS},
	}
)

const (
	patternFits = "the clause's own pattern fits and holds the plate"
	bothAxes    = "moments about both axes at once are beyond the clauses' pattern, and the contact of plate and support is not known"
	held        = "; critical sections at any angle hold the plate"
	innerOnly   = "no rods stand where the plate could be held: those inside a hollow or solid footprint, or on its weld, are not counted"
)

// beyondClause returns the state of a kind whose pattern does not fit.
func (r *Result) beyondClause(k *limit.Kind) limit.State {
	if r.Sections.Known {
		return limit.Skip(k, r.Misfit.Reason()+held)
	}
	return limit.Beyond(k, r.Misfit.Reason())
}

// columnLeft returns the state of the column's own section where the pattern by which
// its forces are found does not fit.
func (r *Result) columnLeft(k *limit.Kind, otherwise string) limit.State {
	if r.Misfit != Fits && r.Sections.Known {
		return limit.Skip(k, r.Misfit.Reason()+"; the column's own section is not checked")
	}
	return r.settled(k, otherwise)
}

// balanced holds the equilibrium found for the sections beside that of the clause.
func (r *Result) balanced(s limit.State) limit.State {
	c := &r.Sections.Contact
	switch {
	case !r.Sections.Known || s.Verdict == limit.Fail:
		return s
	case !c.Found && r.left():
		return limit.Beyond(equilibrium, innerOnly)
	case !c.Found && c.Need > 1:
		s = limit.Evaluate(equilibrium, c.Need, 1)
		s.Reason = c.Reason
		return s
	case !c.Found:
		return limit.State{Kind: equilibrium, Verdict: limit.Fail, Reason: c.Reason}
	case s.Verdict == limit.NotApplicable && r.Misfit != Fits:
		return limit.Skip(equilibrium, "support and rods balance the actions")
	}
	return s
}

// left reports whether there are rods, none of which counts.
func (r *Result) left() bool {
	for i := range r.in.Rods.At {
		if r.Counts(i) {
			return false
		}
	}
	return len(r.in.Rods.At) > 0
}

// unasked returns the state of a section that is not evaluated, if so.
func (r *Result) unasked(k *limit.Kind) (limit.State, bool) {
	switch s := &r.Sections; {
	case r.Case == Idle:
		return limit.Skip(k, idle), true
	case !s.Asked:
		return limit.Skip(k, patternFits), true
	case !s.Known && r.Misfit == Fits:
		return limit.Beyond(k, bothAxes), true
	case !s.Known:
		return limit.Beyond(k, r.Misfit.Reason()), true
	case !s.Contact.Found:
		return limit.Skip(k, unbalance), true
	}
	return limit.State{}, false
}

func (r *Result) pressedState(l *limit.List) limit.State {
	if s, done := r.unasked(pressedAt); done {
		return s
	}
	s := &r.Sections
	if !(s.Mp > 0) {
		return limit.Skip(pressedAt, noPress)
	}
	e := limit.Evaluate(pressedAt, s.Mp/s.Rp, 1)
	switch {
	case r.in.Design.Basis == basis.Eurocode:
		e.Reason = fmt.Sprintf("the balance needs %.3g of the bearing strength within c of the footprint", s.Contact.Need)
	case s.Inside:
		e.Reason = "the plate inside the footprint governs"
	default:
		e.Reason = where(&s.Pressed)
	}
	if l.NoSizes || e.Utilization < slight {
		return e
	}
	return e.Need(limit.PlateThickness, r.sectionNeed(false, s.Mp))
}

func (r *Result) pulledState(l *limit.List) limit.State {
	if s, done := r.unasked(pulledAt); done {
		return s
	}
	s := &r.Sections
	used := max(s.Mt/s.Rt, s.Rods) // as a T-stub, which its rods hold too
	if r.in.Design.Basis.US() {
		used = s.Mt / s.Rt
	}
	if !(used > 0) || used < hardly && s.Mp > 0 {
		return limit.Skip(pulledAt, "no rod pulls that the plate must hold")
	}
	e := limit.Evaluate(pulledAt, used, 1)
	if e.Reason = where(&s.Pulled); used > s.Mt/s.Rt {
		e.Reason = "the rod that pulls most governs"
	}
	if l.NoSizes || e.Utilization < slight {
		return e
	}
	return e.Need(limit.PlateThickness, r.sectionNeed(true, s.Mt))
}

// hardly is the use below which rods only follow the tilt of a stiff support [-].
const hardly = 1e-3

// slight is the use below which no thickness is asked for [-]: so thin a plate would
// share the actions otherwise.
const slight = 0.02

// where names a section.
func where(l *section.Line) string {
	text := fmt.Sprintf("the section %.4g mm off the column axis at %.3g degrees from x governs", l.Offset, l.Angle*180/math.Pi)
	if l.Count == 1 {
		return text + ", past 1 rod"
	}
	if l.Count > 1 {
		return text + fmt.Sprintf(", past %d rods", l.Count)
	}
	return text
}

// leastThickness is one that needs not be asked for [mm].
const leastThickness = 0.01

// thickest bounds the search for a thickness [mm].
const thickest = 1000.0

// sectionNeed returns the thickness as built at which a use of the sections is 1
// [mm], on the pulled side or the pressed. In United States practice what bends does
// not depend on it; by Eurocode it spreads the pressure, so it is searched.
func (r *Result) sectionNeed(pulled bool, m float64) float64 {
	in := r.in
	if in.Design.Basis.US() {
		phi := basis.Flexure.Factor(in.Design.Basis)
		return in.Plate.Needed(func(fy, _ float64) float64 { return math.Sqrt(4 * m / (phi * fy)) })
	}
	if pulled && r.Sections.Rods > 1 {
		return 0 // the rods give way first
	}
	// c, the strengths and the use follow from t sqrt(f_y) alone.
	t := r.searchThickness(pulled)
	return in.Plate.Needed(func(fy, _ float64) float64 { return t * math.Sqrt(r.Fy/fy) })
}

// searchThickness returns the net thickness of the plate's own steel at which the
// sections are just used up [mm]; infinity where there is none.
func (r *Result) searchThickness(pulled bool) float64 {
	in := r.in
	of := func(s *Sections) float64 {
		switch {
		case !pulled:
			return s.Mp / s.Rp
		case s.Rods > 1:
			return math.Inf(1)
		}
		return s.Mt / s.Rt
	}
	use := func(t float64) float64 {
		var s Sections
		r.sections(&s, t, r.Fy, r.Sections.find(t*math.Sqrt(r.Fy/(3*in.Bearing.Pressure*in.Design.EC.GammaM0)), pulled))
		if !s.Contact.Found {
			return math.Inf(1)
		}
		return of(&s)
	}
	// It follows a power of the thickness nearly.
	t1, u1 := r.T, of(&r.Sections)
	t2 := t1 * math.Sqrt(u1)
	for range secants {
		u2 := use(t2)
		if u2 <= 1 && u2 > 1-closeUse {
			return t2
		}
		power := math.Log(u2/u1) / math.Log(t2/t1)
		if !(power < -0.5 && power > -8) {
			break
		}
		t1, u1, t2 = t2, u2, t2*math.Pow(u2*(1+closeUse/2), -1/power)
	}
	low, high := leastThickness, r.T
	if use(low) <= 1 {
		return 0
	}
	for use(high) > 1 {
		if low, high = high, 2*high; high > thickest {
			return math.Inf(1)
		}
	}
	for range thicknessSteps {
		if middle := math.Sqrt(low * high); use(middle) <= 1 {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}

const (
	secants  = 8
	closeUse = 2e-4 // of 1, that is near enough
)

// thicknessSteps narrow the thickness to 1e-4 of it.
const thicknessSteps = 17
