package derive

import (
	"fmt"
	"math"
	"strconv"
)

// Evaluate computes an expression in which every name has been replaced by its
// number: the check that a printed step really gives its printed value.
func Evaluate(numbers string) (float64, error) {
	v, err := evaluate(numbers)
	return v.is, err
}

// known is a value with the error that it may carry: what rounding of the
// numbers it was computed from may have come to.
type known struct{ is, within float64 }

// rounding is the relative error of a number that was computed and then put in.
const rounding = 1e-13

func exactly(v float64) known { return known{v, rounding * math.Abs(v)} }

func evaluate(numbers string) (known, error) {
	p := parser{text: numbers}
	v, err := p.sum()
	if err != nil {
		return known{}, err
	}
	p.blanks()
	if p.at != len(p.text) {
		return known{}, fmt.Errorf("derive: %q: unexpected %q", numbers, p.text[p.at:])
	}
	return v, nil
}

type parser struct {
	text string
	at   int
}

func (p *parser) blanks() {
	for p.at < len(p.text) && p.text[p.at] == ' ' {
		p.at++
	}
}

func (p *parser) peek() byte {
	p.blanks()
	if p.at == len(p.text) {
		return 0
	}
	return p.text[p.at]
}

func (p *parser) sum() (known, error) {
	v, err := p.product()
	for err == nil {
		c := p.peek()
		if c != '+' && c != '-' {
			return v, nil
		}
		p.at++
		var w known
		w, err = p.product()
		if c == '-' {
			w.is = -w.is
		}
		v = known{v.is + w.is, v.within + w.within}
	}
	return known{}, err
}

// product reads factors from left to right; a factor that follows without an
// operator multiplies.
func (p *parser) product() (known, error) {
	v, err := p.power()
	for err == nil {
		c := p.peek()
		var w known
		switch {
		case c == '*' || c == '/':
			p.at++
			w, err = p.power()
			if c == '/' {
				w = w.inverse()
			}
		case c == '(' || digit(c) || letter(c):
			w, err = p.power()
		default:
			return v, nil
		}
		v = known{v.is * w.is, math.Abs(v.is)*w.within + math.Abs(w.is)*v.within + v.within*w.within}
	}
	return known{}, err
}

func (v known) inverse() known {
	low := math.Abs(v.is) - v.within
	if !(low > 0) {
		return known{1 / v.is, math.Inf(1)}
	}
	return known{1 / v.is, v.within / low / math.Abs(v.is)}
}

func (p *parser) power() (known, error) {
	v, err := p.factor()
	if err != nil || p.peek() != '^' {
		return v, err
	}
	p.at++
	w, err := p.power()
	out := math.Pow(v.is, w.is)
	share := 0.0
	if v.within > 0 {
		share += math.Abs(w.is) * v.within / math.Abs(v.is)
	}
	if w.within > 0 && v.is > 0 {
		share += math.Abs(math.Log(v.is)) * w.within
	}
	return known{out, math.Abs(out) * share}, err
}

func (p *parser) factor() (known, error) {
	c := p.peek()
	switch {
	case c == '-':
		p.at++
		v, err := p.power()
		return known{-v.is, v.within}, err
	case c == '(':
		p.at++
		v, err := p.sum()
		return v, p.close(err)
	case digit(c):
		n := numberLen(p.text[p.at:])
		v, err := strconv.ParseFloat(p.text[p.at:p.at+n], 64)
		p.at += n
		return exactly(v), err
	case letter(c):
		return p.call()
	}
	return known{}, fmt.Errorf("derive: %q: a value is missing at %d", p.text, p.at)
}

func (p *parser) close(err error) error {
	if err == nil && p.peek() != ')' {
		return fmt.Errorf("derive: %q: ) is missing at %d", p.text, p.at)
	}
	p.at++
	return err
}

func (p *parser) call() (known, error) {
	n := nameLen(p.text[p.at:])
	name := p.text[p.at : p.at+n]
	p.at += n
	if name == "pi" {
		return known{is: math.Pi}, nil
	}
	if p.peek() != '(' {
		return known{}, fmt.Errorf("derive: %q: %s has no value", p.text, name)
	}
	p.at++
	v, err := p.sum()
	for err == nil && p.peek() == ',' {
		p.at++
		var w known
		w, err = p.sum()
		switch name {
		case "min":
			v = known{math.Min(v.is, w.is), max(v.within, w.within)}
		case "max":
			v = known{math.Max(v.is, w.is), max(v.within, w.within)}
		default:
			return known{}, fmt.Errorf("derive: %q: %s takes one value", p.text, name)
		}
	}
	if err = p.close(err); err != nil {
		return known{}, err
	}
	if name == "min" || name == "max" {
		return v, nil
	}
	f, ok := functions[name]
	if !ok {
		return known{}, fmt.Errorf("derive: %q: %s is no function", p.text, name)
	}
	return f.of(v), nil
}

// function is a function of one value, with its slope.
type function struct{ is, slope func(float64) float64 }

var functions = map[string]function{
	"abs":  {math.Abs, func(float64) float64 { return 1 }},
	"sqrt": {math.Sqrt, func(v float64) float64 { return 0.5 / math.Sqrt(v) }},
	"sin":  {math.Sin, math.Cos},
	"cos":  {math.Cos, math.Sin},
	"tan":  {math.Tan, func(v float64) float64 { return 1 + math.Pow(math.Tan(v), 2) }},
	"acos": {math.Acos, func(v float64) float64 { return 1 / math.Sqrt(1-v*v) }},
	"exp":  {math.Exp, math.Exp},
	"ln":   {math.Log, func(v float64) float64 { return 1 / v }},
}

// of takes the error by the slope where the value stands; where that has no end,
// as at the ends of sqrt and acos, the error is about its root.
func (f function) of(v known) known {
	off := math.Abs(f.slope(v.is)) * v.within
	if v.within == 0 {
		off = 0
	} else if !(off <= math.MaxFloat64) {
		off = 2 * math.Sqrt(v.within)
	}
	return known{f.is(v.is), off}
}
