package weld

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

func clauses(ec, us string) [basis.Count]string {
	return [basis.Count]string{basis.Eurocode: ec, basis.USLRFD: us, basis.USASD: us}
}

// The limit states, in the order of an answer.
var (
	throatLeast = &limit.Kind{ID: "weld_throat_minimum", Title: "Least throat of a fillet weld", Measure: limit.Length,
		Clause: clauses(clauseThroat, "")}
	sizeLeast = &limit.Kind{ID: "weld_size_minimum", Title: "Least size of the weld by the thinner part", Measure: limit.Length,
		Clause: clauses("", "AISC 360-22 Tables J2.3, J2.4")}
	sizeMost = &limit.Kind{ID: "weld_size_maximum", Title: "Greatest size of a fillet along an edge", Measure: limit.Length,
		Clause: clauses("", clauseJ22b)}
	lengthLeast = &limit.Kind{ID: "weld_length_minimum", Title: "Least effective length of the weld", Measure: limit.Length,
		Clause: clauses(clauseLength, clauseJ22b)}
	directional = &limit.Kind{ID: "weld_directional", Title: "Stresses on the throat, directional method", Measure: limit.Stress,
		Clause: clauses(clauseDirectional, "")}
	normal = &limit.Kind{ID: "weld_normal_stress", Title: "Normal stress on the throat", Measure: limit.Stress,
		Clause: clauses(clauseDirectional, "")}
	simplified = &limit.Kind{ID: "weld_simplified", Title: "Force per length, simplified method", Measure: limit.ForceLength,
		Clause: clauses(clauseSimplified, "")}
	fullPenetration = &limit.Kind{ID: "weld_full_penetration", Title: "Weaker part at a full-penetration weld", Measure: limit.Stress,
		Clause: clauses(clauseButt, "")}
	metal = &limit.Kind{ID: "weld_metal", Title: "Weld metal of a fillet weld", Measure: limit.ForceLength,
		Clause: clauses("", clauseMetal)}
	groove = &limit.Kind{ID: "weld_groove", Title: "Weld metal of a groove weld", Measure: limit.Ratio,
		Clause: clauses("", clauseGroove)}
	centre = &limit.Kind{ID: "weld_group_instantaneous_centre", Title: "Fillet group about its instantaneous centre", Measure: limit.Ratio,
		Clause: clauses("", clauseCentre)}
	baseMetal = &limit.Kind{ID: "weld_base_metal", Title: "Base metal beside the weld", Measure: limit.Ratio,
		Clause: clauses(clauseBeside, clauseBase)}
)

// Kinds returns the limit states of the part in order.
func Kinds() []*limit.Kind {
	return []*limit.Kind{throatLeast, sizeLeast, sizeMost, lengthLeast, directional, normal, simplified,
		fullPenetration, metal, groove, centre, baseMetal}
}

const (
	notFillet = "this is not a fillet weld"
	notGroove = "this is not a partial-penetration weld"
	notFull   = "this is not a complete-penetration weld"
	isFull    = "a complete-penetration weld is as strong as the weaker part"
	byMore    = "the directional method, which is more exact, decides; the figures of the simplified method are for information"
	nothing   = "no effective length of weld is left"
	quarter   = "the weld is shorter than four legs: a quarter of its length counts as its leg"
)

// States appends the limit states in their fixed order.
func (r *Result) States(l *limit.List) {
	if isEC(r.in) {
		r.statesEC(l)
		return
	}
	r.statesUS(l)
}

func (r *Result) statesEC(l *limit.List) {
	e := &r.EC
	why := r.beyondEC()
	if r.in.Weld.Type == Fillet {
		s := limit.Evaluate(throatLeast, leastThroat, r.Throat)
		if r.fits(leastThroat) {
			s = s.Need(limit.WeldThroat, leastThroat)
		}
		l.Add(s)
	} else {
		l.Add(limit.Skip(throatLeast, notFillet))
	}
	if r.in.Weld.Type == CompletePenetration {
		l.Add(limit.Skip(lengthLeast, isFull))
		l.Add(limit.Skip(directional, isFull))
		l.Add(limit.Skip(normal, isFull))
		l.Add(limit.Skip(simplified, isFull))
		l.Add(r.judge(fullPenetration, why, &e.Full, e.FullRd))
		l.Add(limit.Skip(baseMetal, "the weaker part at a full-penetration weld is held by itself"))
		return
	}
	least := max(leastLength, leastThroats*r.Throat)
	l.Add(r.lengthState(least, least+2*r.End))
	d := r.judge(directional, why, &e.Directional, e.SRd)
	n := r.judge(normal, why, &e.Perp, e.NRd)
	s := r.judge(simplified, why, &e.Simplified, e.FwRd)
	if !l.NoSizes {
		d = r.need(d)
		n = r.need(n)
		s = r.need(s)
	}
	if s.Rated {
		s.Verdict, s.Reason = limit.NotApplicable, byMore
	}
	l.Add(d)
	l.Add(n)
	l.Add(s)
	l.Add(limit.Skip(fullPenetration, notFull))
	switch {
	case why != "":
		l.Add(limit.Beyond(baseMetal, why))
	case r.none() && r.loaded():
		l.Add(limit.State{Kind: baseMetal, Verdict: limit.Fail, Reason: nothing})
	default:
		l.Add(limit.Evaluate(baseMetal, e.Beside.Used, 1).Of(e.Beside.Part + 1))
	}
}

// lengthState holds the effective length of the run or of the shortest segment
// against the least; long is how long end to end that has to be.
func (r *Result) lengthState(least, long float64) limit.State {
	s := limit.Evaluate(lengthLeast, least, r.Length).Need(limit.WeldLength, long)
	if r.Grouped && !r.in.Group.Continuous {
		s = s.Of(r.Shortest + 1)
	}
	return s
}

// judge compares a governing stress with its resistance, unless the basis does
// not cover the weld or no length of it is left.
func (r *Result) judge(k *limit.Kind, why string, s *Stress, resistance float64) limit.State {
	if why != "" {
		return limit.Beyond(k, why)
	}
	if r.none() && r.loaded() {
		return limit.State{Kind: k, Verdict: limit.Fail, Reason: nothing}
	}
	out := limit.Evaluate(k, s.Value, resistance)
	if r.Grouped {
		out = out.Of(s.Spot.Segment + 1)
	}
	return out
}

func (r *Result) statesUS(l *limit.List) {
	u := &r.US
	fillet := r.in.Weld.Type == Fillet
	switch r.in.Weld.Type {
	case Fillet:
		s := limit.Evaluate(sizeLeast, u.Least, r.Leg).Need(limit.WeldLeg, u.Least)
		s.Clause = clauseJ24
		l.Add(s)
	case PartialPenetration:
		s := limit.Evaluate(sizeLeast, u.Least, r.Throat)
		if u.Least <= r.Thin {
			s = s.Need(limit.WeldThroat, u.Least)
		}
		s.Clause = clauseJ23
		l.Add(s)
	default:
		l.Add(limit.Skip(sizeLeast, isFull))
	}
	if fillet && u.Most > 0 {
		l.Add(limit.Evaluate(sizeMost, r.Leg, u.Most))
	} else {
		l.Add(limit.Skip(sizeMost, "the weld is no fillet along an edge"))
	}
	if fillet {
		s := r.lengthState(leastLegs*r.Leg, leastLegs*r.Leg)
		if s.Verdict == limit.Fail {
			s.Verdict, s.Reason = limit.NotApplicable, quarter
		}
		l.Add(s)
	} else {
		l.Add(limit.Skip(lengthLeast, notFillet))
	}
	l.Add(r.metalState(l))
	l.Add(r.grooveState())
	l.Add(r.centreState())
	if why := r.beyondUS(); why != "" {
		l.Add(limit.Beyond(baseMetal, why))
	} else {
		l.Add(limit.Evaluate(baseMetal, u.Base, 1).Of(u.Part + 1))
	}
}

func (r *Result) metalState(l *limit.List) limit.State {
	u, w := &r.US, &r.in.Weld
	switch {
	case w.Type == CompletePenetration:
		return limit.Skip(metal, isFull)
	case w.Type != Fillet:
		return limit.Skip(metal, notFillet)
	case !r.elastic():
		return limit.Skip(metal, "the group is taken to turn about its instantaneous centre")
	case r.Reason != "":
		return limit.Beyond(metal, r.Reason)
	}
	s := limit.Evaluate(metal, u.Demand, u.Metal)
	if r.Grouped {
		s = s.Of(u.Spot.Segment + 1)
	}
	if l.NoSizes {
		return s
	}
	return r.need(s)
}

func (r *Result) grooveState() limit.State {
	switch w := &r.in.Weld; {
	case w.Type == CompletePenetration:
		return limit.Skip(groove, isFull)
	case w.Type != PartialPenetration:
		return limit.Skip(groove, notGroove)
	case r.Reason != "":
		return limit.Beyond(groove, r.Reason)
	}
	s := limit.Evaluate(groove, r.US.Groove, 1)
	if r.Grouped {
		s = s.Of(r.US.GrooveSpot.Segment + 1)
	}
	return r.need(s)
}

func (r *Result) centreState() limit.State {
	c := &r.Centre
	switch {
	case r.elastic():
		return limit.Skip(centre, "the elastic vector method is used")
	case r.in.Weld.Type != Fillet:
		return limit.Beyond(centre, "the instantaneous centre holds for fillet welds only")
	case !c.Converged:
		return limit.Beyond(centre, "no instantaneous centre was found; use the elastic method")
	}
	s := limit.Evaluate(centre, use(c.Demand, c.Available), 1)
	// Strength follows the leg as long as every segment is four legs long.
	if leg := r.W * s.Utilization; max(leg, r.W)*leastLegs <= r.Length {
		return s.Need(limit.WeldLeg, leg+r.Leg-r.W)
	}
	return s
}
