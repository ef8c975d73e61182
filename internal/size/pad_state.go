package size

import (
	"errors"

	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pad"
)

// judge takes the states of one check into a choice. What is out of scope governs
// over what passes, and what fails over both.
func (s *pads) judge(c *PadChoice, first bool, combination string) {
	v, g := s.list.Verdict(), s.list.Governing()
	switch v {
	case limit.OutOfScope:
		g = outside(&s.list)
	case limit.Pass:
		g = strength(&s.list)
	}
	same := rank(v) == rank(c.Verdict) && c.Rated && g != nil && (!g.Rated || g.Utilization > c.Utilization)
	if !first && rank(v) <= rank(c.Verdict) && !same {
		return
	}
	c.Verdict, c.Combination = v, combination
	c.Governing, c.Rated, c.Utilization = "", false, 0
	if g != nil {
		c.Governing, c.Rated, c.Utilization = g.Kind.ID, g.Rated, g.Utilization
	}
}

// strength returns the state that is used most, but for rules of detailing: cover of
// just the least value leaves as much margin as any other.
func strength(l *limit.List) *limit.State {
	var g *limit.State
	all := l.All()
	for i := range all {
		if k := &all[i]; k.Rated && k.Verdict == limit.Pass && !pad.Detailing(k.Kind) && (g == nil || k.Utilization > g.Utilization) {
			g = k
		}
	}
	return g
}

// outside returns the first state that is out of scope.
func outside(l *limit.List) *limit.State {
	all := l.All()
	for i := range all {
		if all[i].Verdict == limit.OutOfScope {
			return &all[i]
		}
	}
	return nil
}

// rank orders verdicts from good to bad.
func rank(v limit.Verdict) int {
	switch v {
	case limit.Fail:
		return 3
	case limit.OutOfScope:
		return 2
	case limit.NotApplicable:
		return 1
	}
	return 0
}

// explain finds states and notices of the best choice.
func (s *pads) explain(r *PadResult) error {
	c := r.Best
	s.build(&c)
	r.proud = s.in.Ground.Depth < c.Thickness
	r.soil, r.derived = s.in.Ground.Depth > c.Thickness, len(s.in.Cases) == 0
	for i := range s.pairs {
		g, err := s.onGround(&c, i)
		if err != nil {
			return err
		}
		g.Notices(&r.notices)
		var l limit.List
		g.States(&l)
		if worst := r.merge(&l, 0, i == 0, s.pairs[i].Name, s.pairs[i].Stage); worst {
			r.ground = g
		}
	}
	if v := r.states.Verdict(); !r.Found && v != limit.Pass {
		return nil // what the ground says is the reason
	}
	from := len(r.states.All())
	for i := range s.cases {
		p, err := s.concrete(&c, i)
		var faults limit.Faults
		if errors.As(err, &faults) && !r.Found {
			r.unbuilt(faults)
			return nil
		}
		if err != nil {
			return err
		}
		p.Notices(&r.notices)
		var l limit.List
		p.States(&l)
		if worst := r.merge(&l, from, i == 0, s.cases[i].Name, 0); worst {
			r.pad = &p
		}
	}
	return nil
}

// unbuilt says of a pad that cannot be built why, so that what the ground says of it
// is no pass.
func (r *PadResult) unbuilt(faults limit.Faults) {
	r.states.Add(limit.State{Kind: pad.Kinds()[0], Verdict: limit.Fail, Reason: "the pad cannot be built: " + faults.Error()})
}

// merge takes the states of one combination into those from a place on, the first
// as they are, then the worse of both. It reports whether a state of this
// combination is the worst of them all so far.
func (r *PadResult) merge(l *limit.List, from int, first bool, combination string, stage int) bool {
	var was limit.State
	if !first {
		was = worstOf(r.states.All()[from:])
	}
	all := l.All()
	for j := range all {
		state := all[j]
		state.Combination, state.Stage = combination, stage
		if first {
			r.states.Add(state)
		} else if at := &r.states.All()[from+j]; used(&state, at) {
			*at = state
		}
	}
	now := worstOf(all)
	return first || used(&now, &was)
}

func worstOf(all []limit.State) limit.State {
	worst := all[0]
	for i := range all {
		if used(&all[i], &worst) {
			worst = all[i]
		}
	}
	return worst
}

// used reports whether a state is nearer to failing than another of its kind.
func used(a, than *limit.State) bool {
	if x, y := rank(a.Verdict), rank(than.Verdict); x != y && max(x, y) > 1 {
		return x > y
	}
	if a.Rated != than.Rated {
		return a.Rated
	}
	return a.Utilization > than.Utilization
}
