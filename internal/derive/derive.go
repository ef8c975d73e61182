// Package derive writes a calculation as steps that can be followed with a
// pencil: symbol, formula, the same formula with the numbers put in, value,
// unit and clause.
//
// A formula is written in plain characters: + - * / ^ ( ), numbers, names such
// as f_jd or F_t,Rd, and the functions sqrt, min, max, abs, sin, cos, tan, exp
// and ln. A blank between two factors multiplies: "0.9 f_ub A_s / gamma_M2"
// is 0.9 * f_ub * A_s / gamma_M2 read from left to right. All steps are in N,
// mm, MPa and rad, so the numbers can be put in as they stand.
package derive

import (
	"math"
	"slices"
)

// Step is one line of a derivation.
type Step struct {
	Symbol     string
	Expression string  // empty for a value that is given or looked up
	Numbers    string  // the expression with the numbers put in
	Value      float64 // in Unit
	Unit       string  // N, mm, mm2, mm3, mm4, MPa, Nmm, N/mm, rad, or empty
	Clause     string
}

// Factor is a partial or resistance factor that a check used.
type Factor struct {
	Symbol string
	Value  float64
	Source string
}

// Sheet collects the steps of one check, and the factors it used.
type Sheet struct {
	Steps   []Step
	Factors []Factor
	// FactorsOnly drops the steps, for answers that show only the factors.
	FactorsOnly bool
	known       map[string]float64
}

// Given notes a value that the caller gave or a table holds.
func (s *Sheet) Given(symbol string, value float64, unit, clause string) {
	if s.FactorsOnly {
		return
	}
	s.note(symbol, value)
	s.Steps = append(s.Steps, Step{Symbol: symbol, Value: value, Unit: unit, Clause: clause})
}

// Step notes a value computed by expression, whose names must be noted before.
// The numbers are put in with as many digits as the value needs. Where no digits
// give it, since the terms cancel beyond what a computed number holds, the value
// stands alone; a formula that is wrong keeps its numbers, and Verify tells. A
// value that is no finite number, such as the utilization of what has no
// resistance, is left out: the limit state says why.
func (s *Sheet) Step(symbol, expression string, value float64, unit, clause string) {
	if s.FactorsOnly || !(math.Abs(value) <= math.MaxFloat64) {
		return
	}
	step := Step{Symbol: symbol, Expression: expression, Value: value, Unit: unit, Clause: clause}
	step.Numbers = s.substitute(expression, usual)
	for _, digits := range [...]int{usual, 9, 12, most} {
		numbers := step.Numbers
		if digits > usual {
			numbers = s.substitute(expression, digits)
		}
		v, err := evaluate(numbers)
		if err != nil {
			break
		}
		if agree(v.is, value) {
			step.Numbers = numbers
			break
		}
		if digits == most && math.Abs(v.is-value) <= v.within {
			step.Expression, step.Numbers = "", ""
		}
	}
	s.Steps = append(s.Steps, step)
	s.note(symbol, value)
}

// Factor notes a partial or resistance factor, both as a factor, once, and as a
// value for later expressions.
func (s *Sheet) Factor(symbol string, value float64, source string) {
	if !s.FactorsOnly {
		s.note(symbol, value)
	}
	f := Factor{Symbol: symbol, Value: value, Source: source}
	if !slices.Contains(s.Factors, f) {
		s.Factors = append(s.Factors, f)
	}
}

// Reset empties the sheet and keeps its memory.
func (s *Sheet) Reset(factorsOnly bool) {
	clear(s.known)
	s.Steps, s.Factors, s.FactorsOnly = s.Steps[:0], s.Factors[:0], factorsOnly
}

func (s *Sheet) note(symbol string, value float64) {
	if s.known == nil {
		s.known = make(map[string]float64)
	}
	s.known[symbol] = value
}
