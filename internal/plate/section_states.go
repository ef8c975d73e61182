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
	clausePulledUS  = "statics of straight sections; AISC Design Guide 1, 2nd ed., 3.4; AISC 360-22 F11"
)

var (
	pressedAt = &limit.Kind{
		ID: "plate_section_pressed", Title: "Plate in bending where it is pressed, sections at any angle", Measure: limit.Ratio,
		Clause: [basis.Count]string{basis.Eurocode: clausePressed, basis.USLRFD: clausePressedUS, basis.USASD: clausePressedUS},
	}
	pulledAt = &limit.Kind{
		ID: "plate_section_pulled", Title: "Plate in bending where rods pull, sections at any angle", Measure: limit.Ratio,
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
	return e.Need(limit.PlateThickness, r.sectionNeed(func(s *Sections) float64 { return s.Mp / s.Rp }, s.Mp))
}

func (r *Result) pulledState(l *limit.List) limit.State {
	if s, done := r.unasked(pulledAt); done {
		return s
	}
	s := &r.Sections
	used := func(s *Sections) float64 {
		if r.in.Design.Basis == basis.Eurocode {
			return max(s.Mt/s.Rt, s.Rods) // as a T-stub, which its rods hold too
		}
		return s.Mt / s.Rt
	}
	if u := used(s); !(u > 0) || u < hardly && s.Mp > 0 {
		return limit.Skip(pulledAt, "no rod pulls that the plate must hold")
	}
	e := limit.Evaluate(pulledAt, used(s), 1)
	if e.Reason = where(&s.Pulled); used(s) > s.Mt/s.Rt {
		e.Reason = "the rod that pulls most governs"
	}
	if l.NoSizes || e.Utilization < slight {
		return e
	}
	return e.Need(limit.PlateThickness, r.sectionNeed(used, s.Mt))
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
// [mm]. In United States practice what bends does not depend on it; by Eurocode it
// spreads the pressure, so it is searched.
func (r *Result) sectionNeed(used func(*Sections) float64, m float64) float64 {
	in := r.in
	if in.Design.Basis.US() {
		phi := basis.Flexure.Factor(in.Design.Basis)
		return in.Plate.Needed(func(fy, _ float64) float64 { return math.Sqrt(4 * m / (phi * fy)) })
	}
	return in.Plate.Needed(func(fy, _ float64) float64 {
		enough := func(t float64) bool {
			var s Sections
			c := r.Sections.find(t * math.Sqrt(fy/(3*in.Bearing.Pressure*in.Design.EC.GammaM0)))
			r.sections(&s, t, fy, c)
			return c.Found && used(&s) <= 1
		}
		low, high := leastThickness, r.T
		if enough(low) {
			return 0
		}
		for !enough(high) {
			if low, high = high, 2*high; high > thickest {
				return math.Inf(1)
			}
		}
		for range thicknessSteps {
			if middle := math.Sqrt(low * high); enough(middle) {
				high = middle
			} else {
				low = middle
			}
		}
		return high
	})
}

// thicknessSteps narrow the thickness to 1e-4 of it.
const thicknessSteps = 17
