package size

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
)

// Plan is a plan of the plate with the places of its rods.
type Plan struct {
	SizeX float64      // [mm]
	SizeY float64      // [mm]
	At    []geom.Point // nil: as in the base
}

// Rod is a rod that may be chosen.
type Rod struct {
	Thread material.Thread
	Steel  material.RodSteel // without strength: that of the base
	OwnKg  bool              // whether PerKg takes the place of Rates.RodKg
	PerKg  float64           // for each kg of this rod [1/kg]
}

// Rates are what a choice costs, in any one unit.
type Rates struct {
	PlateKg float64 // for each kg of plate [1/kg]
	RodKg   float64 // for each kg of rod [1/kg]
	EachRod float64 // for each rod [-]
	WeldKg  float64 // for each kg of weld metal [1/kg]
}

// Mass is what every kg costs when the mass itself is sought.
var Mass = Rates{PlateKg: 1, RodKg: 1, WeldKg: 1}

// Input is a base with what may be chosen of it. An empty list leaves the base's
// own value.
type Input struct {
	Base      base.ColumnInput
	Plans     []Plan
	Thickness []float64 // of the plate [mm]
	Rods      []Rod
	Throats   []float64 // of the weld [mm]
	Rates     Rates
	Most      float64 // greatest utilization that passes [-]
	// Stop is asked before every check; an error ends the search. nil: never.
	Stop func() error
}

// MostChoices is the most that one search may have.
const MostChoices = 200000

// Choice is one choice, by its places in the lists.
type Choice struct {
	Plan, Thickness, Rod, Throat int

	Mass        float64 // plate, rods over their stretch length, weld metal [kg]
	Cost        float64 // by the rates [-]
	Verdict     limit.Verdict
	Governing   string // id of the limit state; empty: the choice cannot be built
	Rated       bool
	Utilization float64 // [-]
	Combination string
}

// Dimension is what is chosen.
type Dimension uint8

// The dimensions.
const (
	PlanSize Dimension = iota + 1
	PlateThickness
	RodSize
	WeldThroat
)

// Stop is what stops the next smaller value of a list.
type Stop struct {
	Dimension   Dimension
	Place       int
	State       string // id of the limit state; empty: it passes and costs more
	Rated       bool
	Utilization float64 // [-]
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

// steel is the density of steel [kg/mm3]: EN 1991-1-1:2002 Table A.4, 77 to 78.5
// kN/m3 (from memory).
const steel = 7.85e-6

// Search finds the cheapest choice that holds. Errors: limit.Faults; *limit.Scope
// where the basis covers no choice; that of Stop.
func Search(in *Input) (*Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	s := &search{in: in, noRod: map[[3]int]bool{}, noWeld: map[[2]int]bool{}}
	all := s.choices()
	r := &Result{Choices: len(all)}
	var miss *Choice
	for i := range all {
		c := &all[i]
		if s.noRod[[3]int{c.Plan, c.Thickness, c.Rod}] || s.noWeld[[2]int{c.Thickness, c.Throat}] {
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
				miss = c
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
	noRod   map[[3]int]bool // plan, thickness, rod: whatever the throat
	noWeld  map[[2]int]bool // thickness, throat: whatever the plan and rod
	checked int
	nothing error // why the first choice that cannot be built cannot
	notices limit.Notices
}

// choices returns every choice, the cheapest first.
func (s *search) choices() []Choice {
	in := s.in
	var out []Choice
	for p := range max(1, len(in.Plans)) {
		for t := range max(1, len(in.Thickness)) {
			for d := range max(1, len(in.Rods)) {
				for a := range max(1, len(in.Throats)) {
					c := Choice{Plan: p, Thickness: t, Rod: d, Throat: a}
					s.weigh(&c)
					out = append(out, c)
				}
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Choice) int { return cmp.Compare(a.Cost, b.Cost) })
	return out
}

// weigh finds mass and cost.
func (s *search) weigh(c *Choice) {
	b, rates := s.in.Build(c), &s.in.Rates
	p := &b.Base.Plate.Plate
	plate := p.SizeX * p.SizeY * p.Thickness * steel
	rods, n := 0.0, 0
	if b.Base.HasRods {
		d := b.Base.Rod.Thread.Diameter
		n = len(b.Base.At)
		rods = float64(n) * math.Pi / 4 * d * d * base.StretchLength(&b.Base) * steel
	}
	weld := 0.0
	if b.HasWeld {
		a := b.Base.Plate.WeldThroat
		weld = base.WeldLength(&b.Base) * a * a * steel
	}
	c.Mass = plate + rods + weld
	perKg := rates.RodKg
	if len(s.in.Rods) > 0 && s.in.Rods[c.Rod].OwnKg {
		perKg = s.in.Rods[c.Rod].PerKg
	}
	c.Cost = rates.PlateKg*plate + perKg*rods + rates.EachRod*float64(n) + rates.WeldKg*weld
}

// Build returns the base of a choice.
func (in *Input) Build(c *Choice) base.ColumnInput {
	b := in.Base
	b.NoSizes = true
	if len(in.Plans) > 0 {
		p := &in.Plans[c.Plan]
		b.Base.Plate.Plate.SizeX, b.Base.Plate.Plate.SizeY = p.SizeX, p.SizeY
		b.Base.Support.SizeX, b.Base.Support.SizeY = p.SizeX, p.SizeY
		if p.At != nil {
			b.Base.At = p.At
		}
	}
	if len(in.Thickness) > 0 {
		b.Base.Plate.Plate.Thickness = in.Thickness[c.Thickness]
		b.Weld.Parts[0].Thickness = in.Thickness[c.Thickness]
	}
	if len(in.Rods) > 0 {
		clearance := b.Base.Holes.Diameter - b.Base.Rod.Thread.Diameter
		b.Base.Rod.Thread = in.Rods[c.Rod].Thread
		if steel := in.Rods[c.Rod].Steel; steel.Fu > 0 {
			b.Base.Rod.Steel = steel
		}
		b.Base.Holes.Diameter = b.Base.Rod.Thread.Diameter + clearance
		b.Base.Rod.NutWidth = 0 // that of the base's own rod does not fit others
	}
	if len(in.Throats) > 0 {
		b.Weld.Throat, b.Base.Plate.WeldThroat = in.Throats[c.Throat], in.Throats[c.Throat]
	}
	return b
}

// strength returns by what rods are ordered from small to great: that of a rod in
// tension.
func (in *Input) strength(i int) float64 {
	steel := in.Rods[i].Steel
	if steel.Fu == 0 {
		steel = in.Base.Base.Rod.Steel
	}
	return in.Rods[i].Thread.StressArea * steel.Fu
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
	if g := l.Governing(); g != nil {
		c.Governing, c.Rated, c.Utilization, c.Combination = g.Kind.ID, g.Rated, g.Utilization, g.Combination
	}
	s.notices.Reset()
	r.Notices(&s.notices)
	return true, nil
}

// learn remembers what a state that does not pass says of other choices.
func (s *search) learn(c *Choice, k *limit.State) {
	fails := k.Verdict == limit.Fail || k.Verdict == limit.OutOfScope || k.Verdict == limit.Pass && k.Rated && k.Utilization > s.in.Most
	switch {
	case !fails:
	case strings.HasPrefix(k.Kind.ID, "weld_"):
		s.noWeld[[2]int{c.Thickness, c.Throat}] = true
	// The lever arm of the T-stub reaches to the weld, and whether the plate is
	// covered at all depends on it.
	case k.Kind.ID != "plate_tension_tstub" && !(k.Verdict == limit.OutOfScope && strings.HasPrefix(k.Kind.ID, "plate_")):
		s.noRod[[3]int{c.Plan, c.Thickness, c.Rod}] = true
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
			stop.State, stop.Rated, stop.Utilization = smaller.Governing, smaller.Rated, smaller.Utilization
		}
		r.Stops = append(r.Stops, stop)
	}
	return nil
}

// notBuilt stands for a choice whose parts do not fit together.
const notBuilt = "does_not_fit"

// Validate adds to faults everything about the offer that does not fit; what does
// not fit of the base shows in every choice.
func Validate(in *Input, faults *limit.Faults) {
	choices := 1
	for _, n := range []int{len(in.Plans), len(in.Thickness), len(in.Rods), len(in.Throats)} {
		if choices *= max(1, n); choices > MostChoices {
			faults.Add(limit.Number, "offer", fmt.Sprintf("makes more than %d choices", MostChoices))
			return
		}
	}
	if len(in.Rods) > 0 && !in.Base.Base.HasRods {
		faults.Add(limit.Conflict, "offer.rods", "needs base.rods")
	}
	if len(in.Throats) > 0 && (!in.Base.HasWeld || in.Base.Weld.Throat == 0) {
		faults.Add(limit.Conflict, "offer.throat_mm", "needs base.weld with a throat")
	}
	positive := func(field string, list []float64) {
		for i, v := range list {
			if !(v > 0 && v <= 1e4) {
				faults.Add(limit.OutOfRange, fmt.Sprintf("%s[%d]", field, i), "must be a positive length")
			}
		}
	}
	positive("offer.thickness_mm", in.Thickness)
	positive("offer.throat_mm", in.Throats)
	for i, p := range in.Plans {
		if !(p.SizeX > 0 && p.SizeX <= 1e5 && p.SizeY > 0 && p.SizeY <= 1e5) {
			faults.Add(limit.OutOfRange, fmt.Sprintf("offer.plans[%d]", i), "needs positive lengths")
		}
		if len(p.At) > 0 && !in.Base.Base.HasRods {
			faults.Add(limit.Conflict, fmt.Sprintf("offer.plans[%d].positions", i), "needs base.rods")
		}
	}
	if !(in.Most > 0 && in.Most <= 1) {
		faults.Add(limit.OutOfRange, "most_utilization", "must be over 0 and at most 1")
	}
	for i, v := range in.Rods {
		if !(v.PerKg >= 0 && v.PerKg <= 1e9) {
			faults.Add(limit.OutOfRange, fmt.Sprintf("offer.rods[%d].per_kg", i), "must be a number of usual size, not negative")
		}
	}
	r := &in.Rates
	for _, v := range []float64{r.PlateKg, r.RodKg, r.EachRod, r.WeldKg} {
		if !(v >= 0 && v <= 1e9) {
			faults.Add(limit.OutOfRange, "rates", "must be numbers of usual size, not negative")
			break
		}
	}
}
