package anchor

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

func clauses(ec, us string) [basis.Count]string {
	return [basis.Count]string{basis.Eurocode: ec, basis.USLRFD: us, basis.USASD: us}
}

// The limit states, in the order of an answer.
var (
	steelTension = &limit.Kind{ID: "anchor_rod_tension", Title: "Anchored rod in tension", Measure: limit.Force,
		Clause: clauses("EN 1992-4:2018 7.2.1.3", "ACI 318-19 17.6.1")}
	concreteCone = &limit.Kind{ID: "anchor_cone", Title: "Concrete cone (breakout) in tension", Measure: limit.Force,
		Clause: clauses("EN 1992-4:2018 7.2.1.4", "ACI 318-19 17.6.2")}
	pullOut = &limit.Kind{ID: "anchor_pull_out", Title: "Pull-out of a head", Measure: limit.Force,
		Clause: clauses("EN 1992-4:2018 7.2.1.5", "ACI 318-19 17.6.3")}
	blowOutState = &limit.Kind{ID: "anchor_blow_out", Title: "Blow-out of a side face", Measure: limit.Force,
		Clause: clauses("EN 1992-4:2018 7.2.1.8", "ACI 318-19 17.6.4")}
	steelShear = &limit.Kind{ID: "anchor_rod_shear", Title: "Anchored rod in shear", Measure: limit.Force,
		Clause: clauses("EN 1992-4:2018 7.2.2.3.1", "ACI 318-19 17.7.1")}
	pryOut = &limit.Kind{ID: "anchor_pry_out", Title: "Pry-out of the concrete behind the rods", Measure: limit.Force,
		Clause: clauses("EN 1992-4:2018 7.2.2.4", "ACI 318-19 17.7.3")}
	concreteEdge = &limit.Kind{ID: "anchor_edge", Title: "Concrete edge (breakout) in shear", Measure: limit.Force,
		Clause: clauses("EN 1992-4:2018 7.2.2.5", "ACI 318-19 17.7.2")}
	steelBoth = &limit.Kind{ID: "anchor_rod_combined", Title: "Anchored rod in tension and shear together", Measure: limit.Ratio,
		Clause: clauses("EN 1992-4:2018 7.2.3.1, Table 7.3", "")}
	both = &limit.Kind{ID: "anchor_combined", Title: "Anchorage in tension and shear together", Measure: limit.Ratio,
		Clause: clauses("EN 1992-4:2018 7.2.3.1, Table 7.3", "ACI 318-19 17.8")}
)

// Kinds returns the limit states of the part in order.
func Kinds() []*limit.Kind {
	return []*limit.Kind{steelTension, concreteCone, pullOut, blowOutState, steelShear, pryOut, concreteEdge, steelBoth, both}
}

const (
	noTension = "no rod is in tension"
	noShear   = "no rod carries shear"
	farFaces  = "no side face is near enough"
	bends     = "with a lever arm the shear is held beside the tension: see anchor_rod_shear (EN 1992-4:2018 7.2.2.3.2)"
	loose     = "the holes exceed the nominal clearance: rods carry shear only through welded plate washers"
)

// States appends the limit states in their fixed order.
func (r *Result) States(l *limit.List) {
	if r.reason != "" {
		for _, k := range Kinds() {
			if k.Clause[r.in.Design.Basis] != "" {
				l.Add(limit.Beyond(k, r.reason))
			}
		}
		return
	}
	r.tensionStates(l)
	r.shearStates(l)
	if r.ec {
		l.Add(r.steelBothState())
	}
	l.Add(r.bothState())
}

func (r *Result) tensionStates(l *limit.List) {
	if len(r.pulling.rods) == 0 {
		for _, k := range [...]*limit.Kind{steelTension, concreteCone, pullOut, blowOutState} {
			l.Add(limit.Skip(k, noTension))
		}
		return
	}
	l.Add(limit.Evaluate(steelTension, r.Ft, r.Steel.NRd).Of(r.tense + 1))
	l.Add(limit.Evaluate(concreteCone, r.breaking.force, r.Cone.NRd))
	l.Add(limit.Evaluate(pullOut, r.Ft, r.Pull.NRd).Of(r.tense + 1))
	if r.Blow.Applies {
		l.Add(limit.Evaluate(blowOutState, r.Blow.Force, r.Blow.NRd))
	} else {
		l.Add(limit.Skip(blowOutState, farFaces))
	}
}

func (r *Result) shearStates(l *limit.List) {
	if len(r.pushing.rods) == 0 {
		for _, k := range [...]*limit.Kind{steelShear, pryOut, concreteEdge} {
			l.Add(limit.Skip(k, noShear))
		}
		return
	}
	switch {
	case r.Steel.Reason != "":
		l.Add(limit.Beyond(steelShear, r.Steel.Reason))
	case r.ec && r.Steel.Lever.Why != "":
		l.Add(r.leverState())
	default:
		l.Add(limit.Evaluate(steelShear, r.Fv, r.Steel.VRd).Of(r.sheared + 1))
	}
	l.Add(limit.Evaluate(pryOut, r.prying.force, r.PryRd))
	l.Add(limit.Evaluate(concreteEdge, math.Hypot(r.Edge.Vn, r.Edge.Vt), r.Edge.VRd))
}

// leverState holds the rod that governs with a lever arm.
func (r *Result) leverState() limit.State {
	l := &r.Steel.Lever
	state := limit.Evaluate(steelShear, l.Fv, l.VRd).Of(l.Rod + 1)
	state.Clause = "EN 1992-4:2018 7.2.2.3.2, 6.2.2.3"
	return state
}

func (r *Result) alone() string {
	switch {
	case len(r.pulling.rods) == 0:
		return noTension
	case len(r.pushing.rods) == 0:
		return noShear
	}
	return ""
}

func (r *Result) steelBothState() limit.State {
	s := &r.Steel
	switch reason := r.alone(); {
	case reason != "":
		return limit.Skip(steelBoth, reason)
	case s.Reason != "":
		return limit.Beyond(steelBoth, s.Reason)
	case s.Lever.Why != "":
		return limit.Skip(steelBoth, bends)
	}
	return limit.Evaluate(steelBoth, s.Both, 1).Of(s.BothRod + 1)
}

// bothState evaluates tension and shear together.
//
//	EN: N^1.5 + V^1.5 <= 1 or (N + V)/1.2 <= 1, of what is not the rod
//	ACI: (N + V)/1.2 <= 1 of all, where each is more than 0.2
func (r *Result) bothState() limit.State {
	if reason := r.alone(); reason != "" {
		return limit.Skip(both, reason)
	}
	n, v := r.shares()
	if r.ec {
		return limit.Evaluate(both, min(math.Pow(n, 1.5)+math.Pow(v, 1.5), (n+v)/sumACI), 1)
	}
	if n <= lowShare || v <= lowShare {
		return limit.Skip(both, "tension or shear is at most 0.2 of its strength")
	}
	return limit.Evaluate(both, (n+v)/sumACI, 1)
}

// shares returns the greatest utilizations in tension and in shear that count
// together.
func (r *Result) shares() (n, v float64) {
	n = max(r.breaking.force/r.Cone.NRd, r.Ft/r.Pull.NRd)
	if r.Blow.Applies {
		n = max(n, r.Blow.Force/r.Blow.NRd)
	}
	v = max(r.prying.force/r.PryRd, math.Hypot(r.Edge.Vn, r.Edge.Vt)/r.Edge.VRd)
	if !r.ec {
		n, v = max(n, r.Ft/r.Steel.NRd), max(v, r.Fv/r.Steel.VRd)
	}
	return n, v
}
