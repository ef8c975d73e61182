package limit

import (
	"fmt"
	"strings"
)

// Fault is the kind of thing a caller got wrong.
type Fault uint8

// The faults.
const (
	Missing Fault = iota + 1
	OutOfRange
	UnknownValue
	Conflict
	Geometry
	Number // too many or too few
)

// Invalid is a field that the caller got wrong.
type Invalid struct {
	// Field is the path of the field as the contract spells it, such as
	// plate.size_x_mm or rods.positions[2].
	Field  string
	Reason string // what is wrong, with value, limit and unit
	Fault  Fault
}

// Faults are all the fields that the caller got wrong, in order.
type Faults []Invalid

// Error lists the faults.
func (f Faults) Error() string {
	var b strings.Builder
	for i, v := range f {
		if i > 0 {
			b.WriteString("; ")
		}
		b.WriteString(v.Field)
		b.WriteString(": ")
		b.WriteString(v.Reason)
	}
	return b.String()
}

// Add appends a fault.
func (f *Faults) Add(fault Fault, field, reason string) {
	*f = append(*f, Invalid{Field: field, Reason: reason, Fault: fault})
}

// Err returns the faults as an error, or nil when there are none.
func (f Faults) Err() error {
	if len(f) == 0 {
		return nil
	}
	return f
}

// Scope is the error of a check that the chosen basis does not cover at all.
type Scope struct {
	Clause string
	Reason string
}

// Error says what is not covered.
func (s *Scope) Error() string { return s.Reason + " (" + s.Clause + ")" }

// Range adds a fault where a number is none, or not from least to most, all of which it
// names in a unit of so many of the kernel's own.
func (f *Faults) Range(field string, v, least, most, unit float64, name string) {
	if !(v >= least && v <= most) {
		f.Add(OutOfRange, field, fmt.Sprintf("is %g and must be from %g to %g%s", v/unit, least/unit, most/unit, name))
	}
}
