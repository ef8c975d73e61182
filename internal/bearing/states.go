package bearing

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

// The limit states, in the order of an answer.
var (
	onBase = &limit.Kind{
		ID: "resultant_on_base", Title: "Resultant inside the contact area", Measure: limit.Ratio,
		Clause: [basis.Count]string{basis.Eurocode: "statics", basis.USLRFD: "statics", basis.USASD: "statics"},
	}
	partial = &limit.Kind{
		ID: "concrete_partially_loaded", Title: "Concrete under a partially loaded area", Measure: limit.Force,
		Clause: [basis.Count]string{basis.Eurocode: clausePartial},
	}
	joint = &limit.Kind{
		ID: "joint_design_pressure", Title: "Bearing pressure in the joint of the base plate", Measure: limit.Stress,
		Clause: [basis.Count]string{basis.Eurocode: clauseJoint},
	}
	concrete = &limit.Kind{
		ID: "concrete_bearing", Title: "Concrete in bearing", Measure: limit.Force,
		Clause: [basis.Count]string{basis.USLRFD: clauseJ8, basis.USASD: clauseJ8},
	}
	along = &limit.Kind{
		ID: "timber_along_grain", Title: "Timber in compression along the grain", Measure: limit.Force,
		Clause: [basis.Count]string{basis.Eurocode: clauseAlongEC, basis.USLRFD: clauseAlongUS, basis.USASD: clauseAlongUS},
	}
	across = &limit.Kind{
		ID: "timber_across_grain", Title: "Timber in compression across the grain", Measure: limit.Force,
		Clause: [basis.Count]string{basis.Eurocode: clauseAcrossEC, basis.USLRFD: clauseAcrossUS, basis.USASD: clauseAcrossUS},
	}
	given = &limit.Kind{
		ID: "given_design_pressure", Title: "Pressure given by the designer", Measure: limit.Stress,
		Clause: [basis.Count]string{
			basis.Eurocode: "pressure given in the request", basis.USLRFD: "pressure given in the request",
			basis.USASD: "pressure given in the request",
		},
	}
)

// Kinds returns the limit states of the part in order.
func Kinds() []*limit.Kind {
	return []*limit.Kind{onBase, partial, joint, concrete, along, across, given}
}

const (
	notPressed = "N is not negative: there is no compression to bear"
	offBase    = "the resultant lies outside the contact area"
)

// States appends the limit states in their fixed order.
func (r *Result) States(l *limit.List) {
	if !r.Compressed {
		l.Add(limit.Skip(onBase, notPressed))
		r.skip(l, notPressed)
		return
	}
	s := limit.Evaluate(onBase, r.Ratio, 1)
	if !r.OnBase {
		s.Verdict = limit.Fail
		l.Add(s)
		r.skip(l, offBase)
		return
	}
	l.Add(s)
	switch in := r.in; {
	case in.Medium == Concrete && in.Design.Basis.US():
		l.Add(limit.Evaluate(concrete, r.P, r.Concrete.Rc).Need(limit.ContactSide, r.side(l)))
	case in.Medium == Concrete:
		side := r.side(l)
		l.Add(limit.Evaluate(partial, r.P, r.Concrete.FRdu).Need(limit.ContactSide, side))
		if r.Concrete.GroutReason != "" {
			l.Add(limit.Beyond(joint, r.Concrete.GroutReason))
			return
		}
		l.Add(limit.Evaluate(joint, r.Q, r.Concrete.Fjd).Need(limit.ContactSide, side))
	case in.Medium == Timber && in.Timber.Direction == AlongGrain:
		l.Add(limit.Evaluate(along, r.P, r.Timber.Capacity).Need(limit.ContactSide, r.side(l)))
	case in.Medium == Timber:
		l.Add(limit.Evaluate(across, r.P, r.Timber.Capacity).Need(limit.ContactSide, r.side(l)))
	default:
		s := limit.Evaluate(given, r.Q, in.Given.Pressure).Need(limit.ContactSide, r.side(l))
		if in.Given.Found {
			s.Clause = in.Given.Source
		}
		l.Add(s)
	}
}

func (r *Result) skip(l *limit.List, why string) {
	switch in := r.in; {
	case in.Medium == Concrete && in.Design.Basis.US():
		l.Add(limit.Skip(concrete, why))
	case in.Medium == Concrete:
		l.Add(limit.Skip(partial, why))
		l.Add(limit.Skip(joint, why))
	case in.Medium == Timber && in.Timber.Direction == AlongGrain:
		l.Add(limit.Skip(along, why))
	case in.Medium == Timber:
		l.Add(limit.Skip(across, why))
	default:
		l.Add(limit.Skip(given, why))
	}
}

// side returns the side of the smallest square that carries the compression
// concentrically on the same support [mm], or 0 where none does or the load is
// eccentric. The resistance of a square grows with its side, so halving the
// interval finds it.
//
// Source: the clauses of the limit states, turned round.
func (r *Result) side(l *limit.List) float64 {
	if l.NoSizes || r.Ratio != 0 {
		return 0
	}
	low, high := 0.0, greatestSize
	if r.in.Medium == Concrete {
		b := &r.in.Block
		high = min(b.SizeX-2*math.Abs(b.OffsetX), b.SizeY-2*math.Abs(b.OffsetY))
	}
	if !(r.capacity(high) >= r.P) {
		return 0
	}
	for range 60 {
		middle := (low + high) / 2
		if r.capacity(middle) >= r.P {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}

// capacity returns what a square contact carries concentrically [N].
func (r *Result) capacity(side float64) float64 {
	switch in := r.in; in.Medium {
	case Concrete:
		c := concreteStrength(in, side, side, 0, 0)
		if in.Design.Basis.US() {
			return c.Rc
		}
		return min(c.FRdu, c.Fjd*side*side)
	case Timber:
		t := timberStrength(in, side, side)
		return t.Capacity
	}
	return r.in.Given.Pressure * side * side
}
