package derive

import (
	"fmt"
	"math"
	"strconv"
)

// Evaluate computes an expression in which every name has been replaced by its
// number: the check that a printed step really gives its printed value.
func Evaluate(numbers string) (float64, error) {
	p := parser{text: numbers}
	v, err := p.sum()
	if err != nil {
		return 0, err
	}
	p.blanks()
	if p.at != len(p.text) {
		return 0, fmt.Errorf("derive: %q: unexpected %q", numbers, p.text[p.at:])
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

func (p *parser) sum() (float64, error) {
	v, err := p.product()
	for err == nil {
		c := p.peek()
		if c != '+' && c != '-' {
			return v, nil
		}
		p.at++
		var w float64
		w, err = p.product()
		if c == '-' {
			w = -w
		}
		v += w
	}
	return 0, err
}

// product reads factors from left to right; a factor that follows without an
// operator multiplies.
func (p *parser) product() (float64, error) {
	v, err := p.power()
	for err == nil {
		c := p.peek()
		var w float64
		switch {
		case c == '*' || c == '/':
			p.at++
			w, err = p.power()
			if c == '/' {
				w = 1 / w
			}
		case c == '(' || digit(c) || letter(c):
			w, err = p.power()
		default:
			return v, nil
		}
		v *= w
	}
	return 0, err
}

func (p *parser) power() (float64, error) {
	v, err := p.factor()
	if err != nil || p.peek() != '^' {
		return v, err
	}
	p.at++
	w, err := p.power()
	return math.Pow(v, w), err
}

func (p *parser) factor() (float64, error) {
	c := p.peek()
	switch {
	case c == '-':
		p.at++
		v, err := p.power()
		return -v, err
	case c == '(':
		p.at++
		v, err := p.sum()
		return v, p.close(err)
	case digit(c):
		n := numberLen(p.text[p.at:])
		v, err := strconv.ParseFloat(p.text[p.at:p.at+n], 64)
		p.at += n
		return v, err
	case letter(c):
		return p.call()
	}
	return 0, fmt.Errorf("derive: %q: a value is missing at %d", p.text, p.at)
}

func (p *parser) close(err error) error {
	if err == nil && p.peek() != ')' {
		return fmt.Errorf("derive: %q: ) is missing at %d", p.text, p.at)
	}
	p.at++
	return err
}

func (p *parser) call() (float64, error) {
	n := nameLen(p.text[p.at:])
	name := p.text[p.at : p.at+n]
	p.at += n
	if name == "pi" {
		return math.Pi, nil
	}
	if p.peek() != '(' {
		return 0, fmt.Errorf("derive: %q: %s has no value", p.text, name)
	}
	p.at++
	v, err := p.sum()
	for err == nil && p.peek() == ',' {
		p.at++
		var w float64
		w, err = p.sum()
		switch name {
		case "min":
			v = math.Min(v, w)
		case "max":
			v = math.Max(v, w)
		default:
			return 0, fmt.Errorf("derive: %q: %s takes one value", p.text, name)
		}
	}
	if err = p.close(err); err != nil {
		return 0, err
	}
	switch name {
	case "min", "max":
		return v, nil
	case "sqrt":
		return math.Sqrt(v), nil
	case "abs":
		return math.Abs(v), nil
	case "sin":
		return math.Sin(v), nil
	case "cos":
		return math.Cos(v), nil
	case "tan":
		return math.Tan(v), nil
	case "acos":
		return math.Acos(v), nil
	case "exp":
		return math.Exp(v), nil
	case "ln":
		return math.Log(v), nil
	}
	return 0, fmt.Errorf("derive: %q: %s is no function", p.text, name)
}
