package load

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// Most combinations that one input may make.
const Most = 20000

// askEvery is how many combinations are looked at between two questions to Stop.
const askEvery = 1024

// Combination is one combination of actions.
type Combination struct {
	Name      string
	Situation Situation
	Stage     int       // counted from 1
	Factors   []float64 // of each action; 0: not in it [-]
	Sum       geom.Actions
	Lasting   Lasting
}

// Extreme names the combinations with the greatest and the least of a component.
type Extreme struct{ Greatest, Least int }

// Envelope holds the extremes of N, V_x, V_y, M_x, M_y, T over the combinations
// of a situation.
type Envelope struct {
	Situation Situation
	Extremes  [6]Extreme
}

// Result are the combinations and their envelopes.
type Result struct {
	in           *Input
	Combinations []Combination
	Envelopes    []Envelope
}

// Combine writes out every combination. Errors: limit.Faults; that of Stop.
//
// Source: EN 1990:2002+A1:2005 6.4.3, 6.5.3, Table A1.2; ASCE 7-22 2.3.1, 2.4.1.
func Combine(in *Input) (*Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	c := collector{in: in, seen: map[string]bool{}}
	situations := in.Situations
	if len(situations) == 0 {
		situations = in.Usual()
	}
	for _, s := range situations {
		first := len(c.out)
		for stage := range in.Stages {
			c.begin(s, stage+1)
			if in.Basis == basis.Eurocode {
				c.en1990()
			} else {
				c.asce7()
			}
			if c.stopped != nil {
				return nil, c.stopped
			}
			if c.full {
				faults.Add(limit.Number, "actions", fmt.Sprintf(
					"make more than %d combinations: bring actions together that always act together, or name alternatives", Most))
				return nil, faults
			}
		}
		if len(c.out) > first {
			c.envelope(s, first)
		}
	}
	return &Result{in: in, Combinations: c.out, Envelopes: c.envelopes}, nil
}

// collector gathers the combinations of one situation and stage after another.
type collector struct {
	in        *Input
	situation Situation
	stage     int
	permanent []int
	variable  []int
	accident  []int
	rule      *rule // of ASCE 7
	factors   []float64
	seen      map[string]bool
	full      bool
	added     int   // equal ones among them
	stopped   error // of Stop
	out       []Combination
	envelopes []Envelope
}

// begin finds the actions of a stage.
func (c *collector) begin(s Situation, stage int) {
	c.situation, c.stage = s, stage
	c.permanent, c.variable, c.accident = c.permanent[:0], c.variable[:0], c.accident[:0]
	c.factors = make([]float64, len(c.in.Actions))
	clear(c.seen)
	for i := range c.in.Actions {
		a := &c.in.Actions[i]
		if stage < a.First || a.Last > 0 && stage > a.Last {
			continue
		}
		switch a.Kind {
		case Permanent:
			c.permanent = append(c.permanent, i)
		case Accidental:
			c.accident = append(c.accident, i)
		default:
			c.variable = append(c.variable, i)
		}
	}
}

// eachPermanent takes every permanent action with its upper and lower factor.
func (c *collector) eachPermanent(sup, inf float64, then func()) {
	c.permanentFrom(0, sup, inf, then)
}

func (c *collector) permanentFrom(i int, sup, inf float64, then func()) {
	if c.full {
		return
	}
	if i == len(c.permanent) {
		then()
		return
	}
	c.factors[c.permanent[i]] = sup
	c.permanentFrom(i+1, sup, inf, then)
	if inf != sup {
		c.factors[c.permanent[i]] = inf
		c.permanentFrom(i+1, sup, inf, then)
	}
	c.factors[c.permanent[i]] = 0
}

// add keeps the factors as they stand, unless equal ones are there already or
// none acts.
func (c *collector) add(standard string) {
	// Factors of zero may make all of many thousand sets equal.
	if c.added++; c.added%askEvery == 0 && c.in.Stop != nil {
		if c.stopped = c.in.Stop(); c.stopped != nil {
			c.full = true
			return
		}
	}
	var key []byte
	acts := false
	for _, f := range c.factors {
		acts = acts || f != 0
		key = append(strconv.AppendUint(key, math.Float64bits(f), 36), ' ')
	}
	if !acts || c.seen[string(key)] {
		return
	}
	c.seen[string(key)] = true
	if len(c.out) == Most {
		c.full = true
		return
	}
	n := Combination{Situation: c.situation, Stage: c.stage, Factors: append([]float64(nil), c.factors...)}
	var terms []string
	for i, f := range c.factors {
		if f == 0 {
			continue
		}
		a := &c.in.Actions[i]
		terms = append(terms, strconv.FormatFloat(f, 'g', 5, 64)+" "+a.Name)
		n.Sum.N += f * a.Forces.N
		n.Sum.Vx += f * a.Forces.Vx
		n.Sum.Vy += f * a.Forces.Vy
		n.Sum.Mx += f * a.Forces.Mx
		n.Sum.My += f * a.Forces.My
		n.Sum.T += f * a.Forces.T
	}
	n.Lasting = c.lasting()
	n.Name = standard + ": " + strings.Join(terms, " + ")
	c.out = append(c.out, n)
}

func (c *collector) envelope(s Situation, first int) {
	e := Envelope{Situation: s}
	for k := range e.Extremes {
		e.Extremes[k] = Extreme{first, first}
		for i := first + 1; i < len(c.out); i++ {
			v := component(&c.out[i].Sum, k)
			if v > component(&c.out[e.Extremes[k].Greatest].Sum, k) {
				e.Extremes[k].Greatest = i
			}
			if v < component(&c.out[e.Extremes[k].Least].Sum, k) {
				e.Extremes[k].Least = i
			}
		}
	}
	c.envelopes = append(c.envelopes, e)
}

func component(a *geom.Actions, k int) float64 {
	return [...]float64{a.N, a.Vx, a.Vy, a.Mx, a.My, a.T}[k]
}
