package derive

import (
	"math"
	"strconv"
	"strings"
)

// usual and most are how many significant digits of a number are written.
const (
	usual = 6
	most  = 17
)

// substitute returns expression with every noted name replaced by so many digits
// of its value.
func (s *Sheet) substitute(expression string, digits int) string {
	var b strings.Builder
	for i := 0; i < len(expression); {
		if !letter(expression[i]) {
			// A number is copied whole, so that the e of 1e5 is no name.
			if n := numberLen(expression[i:]); n > 0 {
				b.WriteString(expression[i : i+n])
				i += n
				continue
			}
			b.WriteByte(expression[i])
			i++
			continue
		}
		n := nameLen(expression[i:])
		name := expression[i : i+n]
		if v, ok := s.known[name]; ok {
			b.WriteString(number(v, digits))
		} else {
			b.WriteString(name)
		}
		i += n
	}
	return b.String()
}

// Number writes a value with six significant digits, without exponent where
// that can be read; a negative value stands in parentheses.
func Number(v float64) string { return number(v, usual) }

func number(v float64, digits int) string {
	a := math.Abs(v)
	var t string
	switch {
	case v == 0:
		return "0"
	case a >= 1e9 || a < 1e-4:
		t = strconv.FormatFloat(v, 'e', digits-1, 64)
	default:
		t = strconv.FormatFloat(v, 'f', max(0, digits-1-int(math.Floor(math.Log10(a)))), 64)
		if strings.Contains(t, ".") {
			t = strings.TrimRight(strings.TrimRight(t, "0"), ".")
		}
	}
	if v < 0 {
		return "(" + t + ")"
	}
	return t
}

func letter(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '_'
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// nameLen returns the length of the name at the start of t. A name goes on
// through letters, digits, underscores and primes, and through a comma or a
// point that a letter or digit follows at once: F_t,Rd but not min(a, b).
func nameLen(t string) int {
	n := 0
	for n < len(t) {
		c := t[n]
		inner := (c == ',' || c == '.') && n+1 < len(t) && (letter(t[n+1]) || digit(t[n+1]))
		if !letter(c) && !digit(c) && c != '\'' && !inner {
			break
		}
		n++
	}
	return n
}

// numberLen returns the length of the number at the start of t, or 0.
func numberLen(t string) int {
	n := 0
	for n < len(t) && (digit(t[n]) || t[n] == '.') {
		n++
	}
	if n > 0 && n+1 < len(t) && (t[n] == 'e' || t[n] == 'E') {
		m := n + 1
		if t[m] == '-' || t[m] == '+' {
			m++
		}
		if m < len(t) && digit(t[m]) {
			for m < len(t) && digit(t[m]) {
				m++
			}
			return m
		}
	}
	return n
}
