package ground

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

func clauses(ec, us string) [basis.Count]string {
	return [basis.Count]string{basis.Eurocode: ec, basis.USLRFD: us, basis.USASD: us}
}

const (
	drainedClause   = "EN 1997-1:2004 6.5.2, Annex D.4"
	undrainedClause = "EN 1997-1:2004 6.5.2, Annex D.3"
)

// The limit states, in the order of an answer. Those of a basis that has no
// clause for them are left out.
var (
	approaches = [...]*limit.Kind{
		{ID: "ground_bearing_da1_1", Title: "Bearing of the ground, design approach 1, combination 1", Measure: limit.Force, Clause: clauses(drainedClause, "")},
		{ID: "ground_bearing_da1_2", Title: "Bearing of the ground, design approach 1, combination 2", Measure: limit.Force, Clause: clauses(drainedClause, "")},
		{ID: "ground_bearing_da2", Title: "Bearing of the ground, design approach 2*", Measure: limit.Force, Clause: clauses(drainedClause, "")},
		{ID: "ground_bearing_da3", Title: "Bearing of the ground, design approach 3", Measure: limit.Force, Clause: clauses(drainedClause, "")},
	}
	classic = &limit.Kind{
		ID: "ground_bearing", Title: "Bearing of the ground by the named author", Measure: limit.Force,
		Clause: clauses("", "bearing capacity theory, the author as named"),
	}
	sliding = &limit.Kind{
		ID: "ground_sliding", Title: "Sliding on the ground", Measure: limit.Force,
		Clause: clauses("EN 1997-1:2004 6.5.3", "common practice: factor of safety"),
	}
	eccentricity = &limit.Kind{
		ID: "ground_eccentricity", Title: "Eccentricity of the resultant over the width of the base", Measure: limit.Ratio,
		Clause: clauses("EN 1997-1:2004 6.5.4", "common practice: a third of the width"),
	}
	overturning = &limit.Kind{
		ID: "ground_overturning", Title: "Overturning about an edge of the base", Measure: limit.Moment,
		Clause: clauses("EN 1990:2002 6.4.1, Table A1.2(A)", "common practice: factor of safety"),
	}
	uplift = &limit.Kind{
		ID: "ground_uplift", Title: "Weight against uplift", Measure: limit.Force,
		Clause: clauses("EN 1997-1:2004 2.4.7.4, Table A.15", "common practice: factor of safety"),
	}
	presumed = &limit.Kind{
		ID: "ground_presumptive", Title: "Presumptive pressure under unfactored loads", Measure: limit.Stress,
		Clause: clauses("EN 1997-1:2004 6.5.2.4", "presumptive value, its source as given"),
	}
	punching = &limit.Kind{
		ID: "ground_punching", Title: "Punching through the granular layer into the clay", Measure: limit.Force,
		Clause: clauses("EN 1997-1:2004 6.5.2.2; Meyerhof and Hanna 1978", "Meyerhof and Hanna 1978"),
	}
)

// Kinds returns the limit states of the part in order.
func Kinds() []*limit.Kind {
	return append(approaches[:len(approaches):len(approaches)],
		classic, sliding, eccentricity, overturning, uplift, presumed, punching)
}

const (
	noStrength = "no strength of the ground was given"
	nothing    = "nothing acts on the base"
	thinLayer  = "a layer thinner than a quarter of the width is no layer: give the ground below as the soil"
)

// States appends the limit states in their fixed order.
func (r *Result) States(l *limit.List) {
	if r.in.Design.Basis.US() {
		l.Add(r.bearingState(classic, NoApproach))
	} else {
		for i, k := range approaches {
			if r.in.takes(i) == nil {
				l.Add(limit.Skip(k, "this design approach was not chosen"))
				continue
			}
			l.Add(r.bearingState(k, sets[i].id))
		}
	}
	l.Add(r.slidingState())
	l.Add(r.eccentricityState())
	l.Add(r.overturningState())
	if r.Uplift.Demand == 0 {
		l.Add(limit.Skip(uplift, "nothing lifts the footing"))
	} else {
		l.Add(limit.Evaluate(uplift, r.Uplift.Demand, r.Uplift.Holds))
	}
	l.Add(r.presumedState())
	l.Add(r.punchingState())
}

func (in *Input) known() bool { return in.Soil.Friction > 0 || in.Soil.Undrained > 0 }

// thin reports whether the layer is not a real one.
func (in *Input) thin() bool {
	return in.Layer.Thickness > 0 && in.Layer.Thickness < leastLayer*in.width()*(1-1e-9)
}

func (r *Result) bearingState(k *limit.Kind, a Approach) limit.State {
	in := r.in
	var b *Bearing
	for i := range r.Bearing {
		if r.Bearing[i].set.id == a {
			b = &r.Bearing[i]
		}
	}
	switch {
	case !in.known():
		return limit.Skip(k, noStrength)
	case b == nil:
		return limit.Skip(k, nothing)
	case in.thin():
		return limit.Beyond(k, thinLayer)
	case in.Soil.Friction > 0 && in.Interface.Share < 0.5:
		return limit.Beyond(k, "a base smoother than half the friction angle has less than the factors of a rough base")
	case in.Design.Basis.US() && in.Author == Terzaghi && b.H > 0:
		return limit.Beyond(k, "Terzaghi has no factors for an inclined force: name another author")
	}
	s := limit.Evaluate(k, b.Demand, b.Resistance)
	if b.Reason != "" {
		s.Verdict, s.Reason = limit.Fail, b.Reason
	}
	if !in.Design.Basis.US() && !b.Drained {
		s.Clause = undrainedClause
	}
	return s
}

func (r *Result) slidingState() limit.State {
	in, sum := r.in, r.in.sum()
	switch {
	case sum.T != 0 || in.Permanent.T != 0:
		return limit.Beyond(sliding, "torsion on the base is not covered")
	case !in.pushed():
		return limit.Skip(sliding, "nothing pushes the footing")
	case !in.known():
		return limit.Beyond(sliding, "friction on the ground is not known: "+noStrength)
	case r.Sliding == nil:
		return limit.Skip(sliding, "nothing pushes the footing")
	}
	return limit.Evaluate(sliding, r.Sliding.H, r.Sliding.Resistance)
}

func (in *Input) pushed() bool {
	g, q := &in.Permanent, &in.Variable
	return g.Vx != 0 || g.Vy != 0 || q.Vx != 0 || q.Vy != 0
}

// mostShare returns the eccentricity beyond which special precautions are asked
// for: a third of the width, 0.6 of the radius.
func (in *Input) mostShare() float64 {
	if in.Shape == Circle {
		return 0.3
	}
	return 1.0 / 3
}

func (r *Result) eccentricityState() limit.State {
	most := r.in.mostShare()
	switch {
	case r.Lifted:
		return limit.State{Kind: eccentricity, Verdict: limit.Fail, Reason: noContact}
	case r.Reach.V == 0 && r.in.idle():
		return limit.Skip(eccentricity, nothing)
	case r.Share > most*(1+1e-9):
		s := limit.Beyond(eccentricity, "the resultant is beyond a third of the width, or 0.6 of the radius: special precautions are needed (EN 1997-1 6.5.4)")
		s.Demand = r.Share
		return s
	}
	return limit.Evaluate(eccentricity, r.Share, most)
}

// idle reports whether no combination acts.
func (in *Input) idle() bool {
	l := in.load(by{1, 1, 1, 1})
	return l.idle()
}

func (r *Result) overturningState() limit.State {
	t := r.turn()
	if t.Demand == 0 {
		return limit.Skip(overturning, "nothing overturns the footing")
	}
	return limit.Evaluate(overturning, t.Demand, t.Holds)
}

// turn returns the worse of the two directions.
func (r *Result) turn() Turn {
	a, b := r.Overturning[0], r.Overturning[1]
	// Of two without weight that holds, the one that is turned.
	if b.Demand*a.Holds > a.Demand*b.Holds || a.Demand == 0 {
		return b
	}
	return a
}

func (r *Result) presumedState() limit.State {
	in := r.in
	switch {
	case in.Presumptive.Pressure == 0:
		return limit.Skip(presumed, "no presumptive pressure was given")
	case in.Design.Basis == basis.USLRFD:
		return limit.Beyond(presumed, "a presumptive pressure is for unfactored loads: check it with the ASD basis")
	case !r.Kern:
		return limit.Beyond(presumed, "a presumptive pressure is for a base that presses as a whole: the resultant is outside its kern")
	}
	return limit.Evaluate(presumed, r.Peak, in.Presumptive.Pressure)
}

func (r *Result) punchingState() limit.State {
	in := r.in
	switch {
	case in.Layer.Thickness == 0:
		return limit.Skip(punching, "no granular layer over clay was given")
	case in.thin():
		return limit.Beyond(punching, thinLayer)
	case r.Punch == nil:
		return limit.Skip(punching, nothing)
	}
	p := r.Punch
	s := limit.Evaluate(punching, p.Demand, p.Resistance)
	if p.Reason != "" {
		s.Verdict, s.Reason = limit.Fail, p.Reason
	}
	return s
}

// Governs returns the row of Bearing that is used most, or -1. A row without
// resistance is used most of all.
func (r *Result) Governs() int {
	most, at := 0.0, -1
	for i := range r.Bearing {
		u := math.Inf(1)
		if b := &r.Bearing[i]; b.Resistance > 0 {
			u = b.Demand / b.Resistance
		}
		if at < 0 || u > most {
			most, at = u, i
		}
	}
	return at
}
