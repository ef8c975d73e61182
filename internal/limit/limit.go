// Package limit holds what every check answers with: limit states and their
// verdicts, notices, and the two kinds of refusal (what the caller got wrong,
// and what the chosen basis does not cover).
package limit

import (
	"math"

	"footward.example/footward/internal/basis"
)

// Verdict is the outcome of a limit state or a check.
type Verdict uint8

// The verdicts. The zero value is none of them.
const (
	Unset Verdict = iota
	Pass
	Fail
	NotApplicable
	OutOfScope
)

// Measure is the dimension of a demand and its resistance. The kernel counts
// in N, mm, MPa and rad.
type Measure uint8

// The measures.
const (
	Ratio       Measure = iota // no dimension
	Force                      // N
	Moment                     // Nmm
	Stress                     // MPa
	ForceLength                // N/mm, a force per length
	UnitMoment                 // Nmm/mm, a moment per width
	Length                     // mm
)

// Size is what a required size is the size of.
type Size uint8

// The sizes.
const (
	NoSize Size = iota
	PlateThickness
	WeldThroat
	WeldLeg
	WeldLength
	RodDiameter
	ContactSide
	HoleDiameter
	PinDiameter // its holes grow with it
	ColumnThickness
	PinSpacingAlong
	PinSpacingAcross
	PinEndDistance
	PinEdgeDistance
	BracketEndDistance
	BracketWidth
	PadThickness
	SteelPerWidth // area of bars per width, mm2/mm
)

// Kind is what stays the same about a limit state from one evaluation to the
// next. Each part keeps one ordered table of its kinds.
type Kind struct {
	ID      string // stable, snake case
	Title   string // in words
	Measure Measure
	// Model says that it is an engineering model outside the codes.
	Model bool
	// Clause by basis; empty where the basis does not have the limit state.
	Clause [basis.Count]string
}

// State is a limit state evaluated.
type State struct {
	Kind        *Kind
	Demand      float64 // not negative [unit of Kind.Measure]
	Resistance  float64 // 0 unless Rated [unit of Kind.Measure]
	Utilization float64 // Demand / Resistance [-]; 0 unless Rated
	Required    float64 // least size that satisfies the state [mm]; 0 unless Size is set
	Reason      string  // why not applicable, out of scope, or failed without numbers
	Clause      string  // of this evaluation, where it differs from Kind's; else empty
	Member      int     // governing rod, segment or part, counted from 1; 0: the whole
	Rated       bool    // whether there is a resistance
	Verdict     Verdict
	Size        Size
	Combination string // of a column base: the combination of the state
	Stage       int    // of a column base: its stage, counted from 1
}

// slack lets a part that has exactly the required size pass in spite of
// rounding in the last digits.
const slack = 1e-9

// Evaluate compares a demand with a resistance. A resistance that is not
// positive fails any demand but none at all, and has no utilization; so does a
// number that is not finite, which thus never leaves the kernel.
func Evaluate(k *Kind, demand, resistance float64) State {
	if !finite(demand) || demand < 0 {
		return State{Kind: k, Verdict: Fail, Reason: "the demand is beyond what can be computed"}
	}
	s := State{Kind: k, Demand: demand, Verdict: Fail}
	u := demand / resistance
	if !(resistance > 0) || !finite(resistance) || !finite(u) {
		s.Reason = "no resistance is left"
		if demand == 0 {
			s.Verdict, s.Reason = Pass, ""
		}
		return s
	}
	s.Rated, s.Resistance, s.Utilization = true, resistance, u
	if u <= 1+slack {
		s.Verdict = Pass
	}
	return s
}

func finite(v float64) bool { return math.Abs(v) <= math.MaxFloat64 }

// Skip returns a state that does not apply, with the reason.
func Skip(k *Kind, reason string) State {
	return State{Kind: k, Verdict: NotApplicable, Reason: reason}
}

// Beyond returns a state that the basis does not cover, with the reason.
func Beyond(k *Kind, reason string) State {
	return State{Kind: k, Verdict: OutOfScope, Reason: reason}
}

// leastSize is the least size that is one; below it is what rounding leaves [mm].
const leastSize = 1e-3

// Need adds the least size that would satisfy the state; a size that is none, or no
// finite number, is left out.
func (s State) Need(size Size, mm float64) State {
	if mm >= leastSize && mm < 1e6 {
		s.Size, s.Required = size, mm
	}
	return s
}

// Of names the member that governs, counted from 1.
func (s State) Of(member int) State {
	s.Member = member
	return s
}

// MaxStates is the most limit states that one check can have.
const MaxStates = 96

// List is an ordered list of evaluated limit states. It allocates nothing.
type List struct {
	n  int
	at [MaxStates]State
	// NoSizes says that required sizes are not wanted, which saves their search.
	NoSizes bool
}

// Add appends a state. Beyond MaxStates it keeps the list as it is and makes
// the verdict OutOfScope, so that nothing is lost in silence.
func (l *List) Add(s State) {
	if l.n == MaxStates {
		l.at[MaxStates-1].Verdict = OutOfScope
		l.at[MaxStates-1].Reason = "too many limit states"
		return
	}
	l.at[l.n] = s
	l.n++
}

// Reset empties the list.
func (l *List) Reset() { l.n = 0 }

// All returns the states in order. The slice is valid until the next change.
func (l *List) All() []State { return l.at[:l.n] }

// Verdict returns the verdict of the whole: Fail when any state fails, else
// OutOfScope when any is out of scope, else Pass when any passes, else
// NotApplicable.
func (l *List) Verdict() Verdict {
	v := NotApplicable
	for i := range l.at[:l.n] {
		switch l.at[i].Verdict {
		case Fail:
			return Fail
		case OutOfScope:
			v = OutOfScope
		case Pass:
			if v == NotApplicable {
				v = Pass
			}
		}
	}
	return v
}

// Governing returns the state that governs: the first that fails without a
// utilization, else the one with the highest utilization (of equals, the
// first), else nil. A state that does not apply may show its numbers but never
// governs.
func (l *List) Governing() *State {
	var g *State
	for i := range l.at[:l.n] {
		s := &l.at[i]
		if s.Verdict == Fail && !s.Rated {
			return s
		}
		counts := s.Verdict == Pass || s.Verdict == Fail
		if s.Rated && counts && (g == nil || s.Utilization > g.Utilization) {
			g = s
		}
	}
	return g
}
