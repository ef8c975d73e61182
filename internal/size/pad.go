package size

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/pad"
)

// Unit weights of concrete [N/mm3]: EN 1991-1-1:2002 Table A.1 (from memory).
const (
	plainConcrete = 24e-6
	barsConcrete  = 25e-6
)

// SearchPad finds the smallest plan, in steps, whose ground holds with the weight of
// the pad and the soil above it and whose concrete holds at some thickness, then the
// least thickness, then the least bars. The weight grows with the thickness, so both
// are checked together. Errors: limit.Faults; that of Stop.
func SearchPad(in *PadInput) (*PadResult, error) {
	var faults limit.Faults
	ValidatePad(in, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	s := newPads(in)
	r := &PadResult{Choices: in.Plan.count() * in.Thickness.count() * len(s.bars)}
	var closest, plan miss
	for i := range in.Plan.count() {
		here := miss{}
		best, err := s.onPlan(in.Plan.at(i), &here, r)
		if err != nil {
			return nil, err
		}
		if best != nil {
			r.Found, r.Best = true, *best
			break
		}
		closest.take(here.choice)
		plan = here
	}
	r.Checked = s.checked
	if !r.Found {
		if closest.choice == nil {
			return nil, s.nothing
		}
		r.Best = *closest.choice
		r.Stops = nil
	} else if plan.choice != nil {
		r.Stops = append([]PadStop{{PadPlan, *plan.choice}}, r.Stops...)
	}
	return r, s.explain(r)
}

// miss is the choice that fails by least.
type miss struct{ choice *PadChoice }

func (m *miss) take(c *PadChoice) {
	if c == nil {
		return
	}
	if m.choice == nil || closerPad(c, m.choice) {
		one := *c
		m.choice = &one
	}
}

func closerPad(c, than *PadChoice) bool {
	if a, b := c.Verdict == limit.OutOfScope, than.Verdict == limit.OutOfScope; a != b {
		return b
	}
	if c.Rated != than.Rated {
		return c.Rated
	}
	return c.Utilization < than.Utilization
}

// pads is a search under way.
type pads struct {
	in      *PadInput
	cases   []PadCase
	pairs   []base.Pair
	bars    []int // places in the list, the least first; plain: -1
	checked int
	nothing error // why the first pad that cannot be built cannot
	ground  ground.Input
	pad     pad.Input
	list    limit.List
}

func newPads(in *PadInput) *pads {
	s := &pads{in: in, cases: in.wet(), pairs: in.pairs(), ground: in.Ground, pad: in.Pad, bars: []int{-1}}
	s.list.NoSizes = true
	if len(in.Bars) > 0 {
		s.bars = make([]int, len(in.Bars))
		for i := range s.bars {
			s.bars[i] = i
		}
		slices.SortStableFunc(s.bars, func(a, b int) int { return cmp.Compare(in.Bars[a].Area(), in.Bars[b].Area()) })
	} else {
		s.pad.Reinforcement = pad.Reinforcement{}
	}
	return s
}

// across returns the size along y of a plan: by the aspect, up to whole steps.
func (in *PadInput) across(x float64) float64 {
	if in.Aspect == 0 || in.Aspect == 1 {
		return x
	}
	return math.Ceil(x*in.Aspect/in.Plan.Step-1e-9) * in.Plan.Step
}

// onPlan returns the first pad on a plan that passes, or nil and the closest miss.
func (s *pads) onPlan(x float64, here *miss, r *PadResult) (*PadChoice, error) {
	in := s.in
	c := PadChoice{SizeX: x, SizeY: in.across(x)}
	var thinner miss
	for i := range in.Thickness.count() {
		c.Thickness = in.Thickness.at(i)
		var fewer, at miss
		for _, b := range s.bars {
			c.Bars = b
			built, err := s.try(&c)
			if err != nil {
				return nil, err
			}
			if !built {
				continue
			}
			if s.passes(&c) {
				r.Stops = nil
				if thinner.choice != nil {
					r.Stops = append(r.Stops, PadStop{PadDepth, *thinner.choice})
				}
				if fewer.choice != nil {
					r.Stops = append(r.Stops, PadStop{PadReinforcement, *fewer.choice})
				}
				return &c, nil
			}
			fewer = miss{}
			fewer.take(&c)
			at.take(&c)
			if s.byGround(&c) {
				break // no bars help the ground
			}
		}
		here.take(at.choice)
		thinner = at
	}
	return nil, nil
}

// byGround reports whether the ground is what fails.
func (s *pads) byGround(c *PadChoice) bool {
	for _, k := range ground.Kinds() {
		if k.ID == c.Governing {
			return true
		}
	}
	return false
}

func (s *pads) passes(c *PadChoice) bool {
	return c.Verdict == limit.Pass && (!c.Rated || c.Utilization <= s.in.Most+slack)
}

// build puts a choice into the inputs of ground and pad.
func (s *pads) build(c *PadChoice) {
	in := s.in
	concrete := in.Concrete
	switch {
	case concrete > 0:
	case len(in.Bars) > 0:
		concrete = barsConcrete
	default:
		concrete = plainConcrete
	}
	area := c.SizeX * c.SizeY
	c.Volume = area * c.Thickness
	// The plinth stands where soil would lie.
	plinth, soil := in.Plinth.SizeX*in.Plinth.SizeY, max(0, in.Ground.Depth-c.Thickness)
	high := in.Plinth.height(in.Foot, c.Thickness)
	c.Weight = c.Volume*concrete + (area*soil-plinth*min(soil, high))*in.Soil + plinth*high*plainConcrete
	g, p := &s.ground, &s.pad
	g.Shape, g.SizeX, g.SizeY = ground.Rectangle, c.SizeX, c.SizeY
	height := in.height(c.Thickness)
	g.Height = height
	p.SizeX, p.SizeY, p.Thickness, p.Height = c.SizeX, c.SizeY, c.Thickness, height
	p.Design, p.Factored = in.Ground.Design, true
	if c.Bars >= 0 {
		p.Reinforcement.X, p.Reinforcement.Y = in.Bars[c.Bars], in.Bars[c.Bars]
	}
}

// narrow is why a pad that its plinth reaches beyond cannot be built.
var narrow = limit.Faults{{Field: "pad.plan", Fault: limit.OutOfRange, Reason: "is smaller than the plinth in every choice"}}

// height returns how high the actions act above the underside of a pad of a thickness
// [mm].
func (in *PadInput) height(thickness float64) float64 {
	if in.Foot > 0 {
		return max(thickness, in.Foot)
	}
	return thickness + in.Above
}

// try checks a choice; built is false when the pad cannot be built. The concrete is
// looked at only where the ground holds.
func (s *pads) try(c *PadChoice) (built bool, err error) {
	if s.in.Stop != nil {
		if err := s.in.Stop(); err != nil {
			return false, err
		}
	}
	s.checked++
	if p := &s.in.Plinth; c.SizeX < p.SizeX || c.SizeY < p.SizeY {
		if s.nothing == nil {
			s.nothing = narrow
		}
		return false, nil
	}
	s.build(c)
	for i := range s.pairs {
		g, err := s.onGround(c, i)
		if err != nil {
			return false, err
		}
		s.list.Reset()
		g.States(&s.list)
		s.judge(c, i == 0, s.pairs[i].Name)
	}
	if !s.passes(c) {
		return true, nil
	}
	for i := range s.cases {
		r, err := s.concrete(c, i)
		var faults limit.Faults
		if errors.As(err, &faults) {
			if s.nothing == nil {
				s.nothing = err
			}
			return false, nil
		}
		if err != nil {
			return false, err
		}
		s.list.Reset()
		r.States(&s.list)
		s.judge(c, false, s.cases[i].Name)
	}
	return true, nil
}

// onGround checks the ground in one combination.
func (s *pads) onGround(c *PadChoice, i int) (*ground.Result, error) {
	k := &s.pairs[i]
	g := k.Actions(s.ground)
	g.Weight = k.Weight * c.Weight
	return ground.Check(&g)
}

// concrete checks the concrete in one combination.
func (s *pads) concrete(c *PadChoice, i int) (pad.Result, error) {
	k := &s.cases[i]
	s.pad.Actions, s.pad.Weight = k.Actions, k.Weight*c.Weight
	if k.Afloat {
		s.pad.Weight = max(0, s.pad.Weight-material.WaterWeight*(s.ground.Depth-s.ground.Soil.Water)*c.SizeX*c.SizeY)
	}
	return pad.Check(&s.pad)
}
