package derive

import (
	"errors"
	"fmt"
	"math"
)

// Verify reports every step whose printed numbers do not give its printed
// value to four digits, or whose expression holds a name without a value.
func Verify(steps []Step) error {
	var all []error
	for _, s := range steps {
		if s.Expression == "" {
			continue
		}
		v, err := Evaluate(s.Numbers)
		if err != nil {
			all = append(all, fmt.Errorf("%s = %s: %w", s.Symbol, s.Expression, err))
			continue
		}
		if !agree(v, s.Value) {
			all = append(all, fmt.Errorf("%s = %s = %s gives %g, not %g",
				s.Symbol, s.Expression, s.Numbers, v, s.Value))
		}
	}
	return errors.Join(all...)
}

// agree tells whether a printed step gives its value to four digits.
func agree(v, value float64) bool {
	return math.Abs(v-value) <= 1e-4*math.Max(math.Abs(v), math.Abs(value))+1e-9
}
