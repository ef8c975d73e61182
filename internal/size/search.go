package size

import (
	"errors"
	"strings"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pad"
)

// Choice is one choice, by its places in the lists.
type Choice struct {
	Plan, Thickness, Rod, Throat, Bottom, Stack int

	Mass        float64 // plates, rods, weld metal, fill [kg]
	Cost        float64 // by the rates [-]
	Verdict     limit.Verdict
	Governing   string // id of the limit state; empty: the choice cannot be built
	Rated       bool
	Utilization float64 // [-]
	Combination string
	Reason      string // why that state is out of scope or fails without numbers
}

// Dimension is what is chosen.
type Dimension uint8

// The dimensions.
const (
	PlanSize Dimension = iota + 1
	PlateThickness
	RodSize
	WeldThroat
	BottomOfStack
	StackOfRings
	PadPlan
	PadDepth
	PadReinforcement
)

// Stop is what stops the next smaller value of a list.
type Stop struct {
	Dimension   Dimension
	Place       int
	State       string // id of the limit state; empty: it passes and costs more
	Rated       bool
	Utilization float64 // [-]
	Reason      string  // why it is out of scope or fails without numbers
}

// Result is the outcome of a search.
type Result struct {
	Found   bool
	Best    Choice // when none is found, the closest miss
	Next    *Choice
	Stops   []Stop
	Choices int
	Checked int
	notices limit.Notices
}

// Notices appends the notices of the best choice.
func (r *Result) Notices(l *limit.Notices) {
	for _, n := range r.notices.All() {
		l.Add(n)
	}
}

// Search finds the cheapest choice that holds. Errors: limit.Faults; *limit.Scope
// where the basis covers no choice; that of Stop.
func Search(in *Input) (*Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	s := &search{in: in, noRod: map[[5]int]bool{}, noWeld: map[[2]int]bool{}}
	all, err := s.choices()
	if err != nil {
		return nil, err
	}
	r := &Result{Choices: len(all)}
	var miss *Choice
	for i := range all {
		at := s.choice(int(all[i].at))
		c := &at
		if s.noRod[c.butThroat()] || s.noWeld[[2]int{c.Thickness, c.Throat}] {
			continue
		}
		built, err := s.try(c)
		if err != nil {
			return nil, err
		}
		switch {
		case !built:
		case !s.passes(c):
			if miss == nil || closer(c, miss) {
				kept := *c
				miss = &kept
			}
		case !r.Found:
			r.Found, r.Best = true, *c
		default:
			next := *c
			r.Next = &next
		}
		if r.Next != nil {
			break
		}
	}
	r.Checked = s.checked
	if !r.Found {
		if miss == nil {
			return nil, s.nothing
		}
		r.Best = *miss
	}
	return r, s.explain(r)
}

// search remembers what is known to fail.
type search struct {
	in      *Input
	noRod   map[[5]int]bool // all but the throat: whatever it is
	noWeld  map[[2]int]bool // thickness, throat: whatever the plan and rod
	checked int
	nothing error // why the first choice that cannot be built cannot
	notices limit.Notices
}

// try checks a choice; built is false when it cannot be built or the basis does
// not cover its support.
func (s *search) try(c *Choice) (built bool, err error) {
	if s.in.Stop != nil {
		if err := s.in.Stop(); err != nil {
			return false, err
		}
	}
	b := s.in.Build(c)
	r, err := base.CheckColumn(&b)
	s.checked++
	var faults limit.Faults
	var scope *limit.Scope
	switch {
	case errors.As(err, &faults), errors.As(err, &scope):
		if s.nothing == nil {
			s.nothing = err
		}
		return false, nil
	case err != nil:
		return false, err
	}
	var l limit.List
	r.States(&l)
	c.Verdict = l.Verdict()
	for _, k := range l.All() {
		s.learn(c, &k)
	}
	if g := governing(&l); g != nil {
		c.Governing, c.Rated, c.Utilization, c.Combination, c.Reason = g.Kind.ID, g.Rated, g.Utilization, g.Combination, g.Reason
	}
	s.notices.Reset()
	r.Notices(&s.notices)
	return true, nil
}

// detailing are the limit states of the base that hold a least size or distance: one
// that is just kept leaves as much margin as any other.
var detailing = map[string]bool{
	"weld_throat_minimum": true, "weld_size_minimum": true, "weld_size_maximum": true, "weld_length_minimum": true,
	"hole_tolerance": true, "hole_pattern_minimum": true,
}

// detail reports whether a limit state is a rule of detailing, of the base or its pad.
func detail(k *limit.Kind) bool { return detailing[k.ID] || pad.Detailing(k) }

// governing returns the state that governs a choice: one that fails; else the first
// that is out of scope, for it is what keeps the choice from passing; else the one that
// is used most but for rules of detailing.
func governing(l *limit.List) *limit.State {
	switch l.Verdict() {
	case limit.OutOfScope:
		return outside(l)
	case limit.Pass:
	default:
		return l.Governing()
	}
	var most *limit.State
	all := l.All()
	for i := range all {
		s := &all[i]
		if s.Rated && s.Verdict == limit.Pass && !detail(s.Kind) && (most == nil || s.Utilization > most.Utilization) {
			most = s
		}
	}
	if most == nil {
		return l.Governing()
	}
	return most
}

// learn remembers what a state that does not pass says of other choices.
func (s *search) learn(c *Choice, k *limit.State) {
	fails := k.Verdict == limit.Fail || k.Verdict == limit.OutOfScope || k.Verdict == limit.Pass && k.Rated && !detail(k.Kind) && k.Utilization > s.in.Most
	switch {
	case !fails:
	case strings.HasPrefix(k.Kind.ID, "weld_"):
		s.noWeld[[2]int{c.Thickness, c.Throat}] = true
	// The lever arm of the T-stub reaches to the weld, and whether the plate is
	// covered at all depends on it.
	case k.Kind.ID != "plate_tension_tstub" && !(k.Verdict == limit.OutOfScope && strings.HasPrefix(k.Kind.ID, "plate_")):
		s.noRod[c.butThroat()] = true
	}
}

// slack lets a utilization that is just the greatest pass.
const slack = 1e-9

func (s *search) passes(c *Choice) bool {
	return c.Verdict == limit.Pass && (!c.Rated || c.Utilization <= s.in.Most+slack)
}

// closer reports whether a choice misses by less than another.
func closer(c, than *Choice) bool {
	if a, b := c.Verdict == limit.OutOfScope, than.Verdict == limit.OutOfScope; a != b {
		return b
	}
	if c.Rated != than.Rated {
		return c.Rated
	}
	return c.Utilization < than.Utilization
}

// explain finds the notices of the best choice and what stops smaller ones.
func (s *search) explain(r *Result) error {
	best := r.Best
	if _, err := s.try(&best); err != nil {
		return err
	}
	r.notices = s.notices
	s.in.remark(&r.notices)
	if !r.Found {
		return nil
	}
	in := s.in
	for _, d := range []struct {
		dimension Dimension
		n, at     int
		value     func(int) float64
		set       func(*Choice, int)
	}{
		{PlanSize, len(in.Plans), best.Plan, func(i int) float64 { return in.Plans[i].SizeX * in.Plans[i].SizeY }, func(c *Choice, i int) { c.Plan = i }},
		{PlateThickness, len(in.Thickness), best.Thickness, func(i int) float64 { return in.Thickness[i] }, func(c *Choice, i int) { c.Thickness = i }},
		{RodSize, len(in.Rods), best.Rod, in.strength, func(c *Choice, i int) { c.Rod = i }},
		{WeldThroat, len(in.Throats), best.Throat, func(i int) float64 { return in.Throats[i] }, func(c *Choice, i int) { c.Throat = i }},
		{BottomOfStack, len(in.Bottoms), best.Bottom, func(i int) float64 { p := &in.Bottoms[i]; return p.SizeX * p.SizeY * p.Thickness },
			func(c *Choice, i int) { c.Bottom = i }},
		{StackOfRings, len(in.Stacks), best.Stack, func(i int) float64 { return volume(in.Stacks[i].Tiers) }, func(c *Choice, i int) { c.Stack = i }},
	} {
		below := -1
		for i := range d.n {
			if d.value(i) < d.value(d.at) && (below < 0 || d.value(i) > d.value(below)) {
				below = i
			}
		}
		if below < 0 {
			continue
		}
		smaller := best
		d.set(&smaller, below)
		built, err := s.try(&smaller)
		if err != nil {
			return err
		}
		stop := Stop{Dimension: d.dimension, Place: below}
		switch {
		case !built:
			stop.State = notBuilt
		case !s.passes(&smaller):
			stop.State, stop.Rated, stop.Utilization, stop.Reason = smaller.Governing, smaller.Rated, smaller.Utilization, smaller.Reason
		}
		r.Stops = append(r.Stops, stop)
	}
	return nil
}

// notBuilt stands for a choice whose parts do not fit together.
const notBuilt = "does_not_fit"
