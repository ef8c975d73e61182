package ring

import (
	"fmt"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

func clauses(ec, us string) [basis.Count]string {
	return [basis.Count]string{basis.Eurocode: ec, basis.USLRFD: us, basis.USASD: us}
}

// The limit states, in the order of an answer.
var (
	localEdge = &limit.Kind{ID: "ring_local_edge", Title: "Vertical load on the edge of a ring", Measure: limit.Force, Model: true,
		Clause: clauses("statics; Janssen 1895", "statics; Janssen 1895")}
	fill = &limit.Kind{ID: "ring_fill_strength", Title: "Confined fill under the even stress", Measure: limit.Stress, Model: true,
		Clause: clauses("Mohr and Coulomb; EN 1997-1:2004 Annex A", "Mohr and Coulomb; factor of safety")}
	edge = &limit.Kind{ID: "ring_edge_stress", Title: "Confined fill under the greatest edge stress", Measure: limit.Stress, Model: true,
		Clause: clauses("Mohr and Coulomb; EN 1997-1:2004 Annex A", "Mohr and Coulomb; factor of safety")}
	ultimate = &limit.Kind{ID: "ring_hoop_ultimate", Title: "Hoop force, ultimate", Measure: limit.Force, Model: true,
		Clause: clauses("EN 1997-1:2004 9.5.2(2), Annex C; Rankine; thin cylinder", "Jaky 1944; Rankine; thin cylinder")}
	heaving = &limit.Kind{ID: "ring_open_fill", Title: "Heave of the open fill beside the plate", Measure: limit.Stress, Model: true,
		Clause: clauses("Rankine; statics of the annulus", "Rankine; statics of the annulus")}
	service = &limit.Kind{ID: "ring_hoop_service", Title: "Hoop force in service, earth pressure at rest", Measure: limit.Force, Model: true,
		Clause: clauses("EN 1997-1:2004 9.5.2; thin cylinder", "Jaky 1944; thin cylinder")}
	surface = &limit.Kind{ID: "ring_shoe_bearing", Title: "Shoe on the fill without rings, for information", Measure: limit.Stress, Model: true,
		Clause: clauses("EN 1997-1:2004 Annex D.4", "EN 1997-1:2004 Annex D.4")}
	sliding = &limit.Kind{ID: "ring_sliding", Title: "Sliding at shoe, tiers and bottom", Measure: limit.Force,
		Clause: clauses("EN 1997-1:2004 6.5.3", "statics; factor of safety")}
	overturning = &limit.Kind{ID: "ring_overturning", Title: "Overturning about the edge of the lowest tier", Measure: limit.Moment,
		Clause: clauses("EN 1990:2002 6.4.1, Table A1.2(A)", "statics; factor of safety")}
	settling = &limit.Kind{ID: "ring_settlement", Title: "Settlement of the stack itself", Measure: limit.Length,
		Clause: clauses("EN 1997-1:2004 6.6; constrained moduli", "constrained moduli")}
	clamping = &limit.Kind{ID: "ring_preload", Title: "Preload counted on against preload left", Measure: limit.Force, Model: true,
		Clause: clauses("statics", "statics")}
)

// Kinds returns the limit states of the part in order.
func Kinds() []*limit.Kind {
	return []*limit.Kind{localEdge, fill, edge, ultimate, heaving, service, surface, sliding, overturning, settling, clamping}
}

// unknownRing is why a tier has no resistance.
const unknownRing = "not verified: the strength of the ring of tier %d is not known: give its capacity_kn, from a test of rings of this type; a load test of the stack proves it, but is no strength"

// leaves is why a face has no stresses.
const leaves = "the resultant leaves the loaded area: there is no balance"

// States appends the limit states in their fixed order.
func (r *Result) States(l *limit.List) {
	r.StressStates(l)
	r.ServiceState(l)
	l.Add(r.surfaceState())
	r.StabilityStates(l)
	r.SettlementStates(l)
}

// StressStates appends what the design stresses of the fill decide.
func (r *Result) StressStates(l *limit.List) {
	l.Add(r.localState())
	own := r.ownFactor()
	l.Add(r.strengthState(fill, own, func(t *TierResult) (float64, float64) { return t.Even, t.Strength }))
	l.Add(r.strengthState(edge, own, func(t *TierResult) (float64, float64) { return t.Edge, t.Strength }))
	l.Add(r.strengthState(ultimate, own, func(t *TierResult) (float64, float64) { return t.Ultimate, t.Rd }))
	l.Add(r.heaveState())
}

// ServiceState appends the hoop force in service.
func (r *Result) ServiceState(l *limit.List) { l.Add(r.serviceState(r.ownFactor())) }

// StabilityStates appends what the actions on the stack as a whole decide.
func (r *Result) StabilityStates(l *limit.List) {
	l.Add(r.slideState())
	l.Add(r.turnState())
}

// SettlementStates appends what the settlement of the stack in service decides.
func (r *Result) SettlementStates(l *limit.List) {
	l.Add(r.settleState())
	l.Add(r.clampState())
}

func (r *Result) ownFactor() string {
	return r.withoutFactor("basis.us_lrfd.fill_resistance_factor", r.Safety.PhiB)
}

// noStress returns the state of fill without stresses.
func (r *Result) noStress(k *limit.Kind) limit.State {
	if r.Skipped {
		return limit.Skip(k, r.NoStress)
	}
	return limit.Beyond(k, r.NoStress)
}

func (r *Result) strengthState(k *limit.Kind, own string, of func(*TierResult) (float64, float64)) limit.State {
	if r.NoStress != "" {
		return r.noStress(k)
	}
	if own == "" && r.far() {
		own = "the eccentricity is beyond 0.3 of the diameter"
	}
	return r.worst(k, own, func(t *TierResult) bool { return t.lost() }, of)
}

// far reports whether the resultant is further out than special precautions allow.
func (r *Result) far() bool {
	for i := range r.Tiers {
		for _, f := range [...]*Face{&r.Tiers[i].Top, &r.Tiers[i].Within, &r.Tiers[i].Bottom} {
			if f.E > 0.3*f.Diameter {
				return true
			}
		}
	}
	return false
}

// worst returns the state of the tier that governs: one whose resultant leaves the
// loaded area, else one that fails, else one whose ring is not known, else the one
// used most.
func (r *Result) worst(k *limit.Kind, own string, lost func(*TierResult) bool, of func(*TierResult) (float64, float64)) limit.State {
	var worst, unknown *limit.State
	for i := range r.Tiers {
		t := &r.Tiers[i]
		if lost(t) {
			return limit.State{Kind: k, Verdict: limit.Fail, Member: i + 1, Reason: leaves}
		}
		demand, resistance := of(t)
		if t.Left == 0 {
			return limit.State{Kind: k, Demand: demand, Verdict: limit.Fail, Member: i + 1,
				Reason: fmt.Sprintf("corrosion leaves nothing of the ring of tier %d", i+1)}
		}
		if t.Reduced == 0 {
			if unknown == nil || demand > unknown.Demand {
				s := limit.Beyond(k, fmt.Sprintf(unknownRing, i+1)).Of(i + 1)
				s.Demand = demand
				unknown = &s
			}
			continue
		}
		if s := limit.Evaluate(k, demand, resistance).Of(i + 1); worst == nil || worse(&s, worst) {
			worst = &s
		}
	}
	if unknown != nil && (worst == nil || worst.Verdict != limit.Fail) {
		return *unknown
	}
	return r.bound(*worst, own)
}

// worse reports whether a state is worse than another: without numbers and failed
// is worst.
func worse(s, than *limit.State) bool {
	a, b := s.Verdict == limit.Fail && !s.Rated, than.Verdict == limit.Fail && !than.Rated
	if a != b {
		return a
	}
	return s.Utilization > than.Utilization
}

// aroundEdge is the greatest eccentricity over the diameter at which all of a thin
// ring is still pressed.
const aroundEdge = 0.25

// liftedEdge is why the edge of a ring cannot be held against a load rated all round.
const liftedEdge = "the resultant on tier %d is beyond a quarter of its ring's diameter: part of the edge is not pressed, for which no load is rated"

// localState is about what reaches over the edge of a ring, all of whose load the
// ring may have to carry, and about the friction of the fill elsewhere. A rated load
// presses all round: where the resultant is off the middle, the load counts that
// would press all round as much as this one does where it presses most, which is at the
// foot of the ring, to which shear turns it.
//
//	P = N (1 + 4 e/D), e = M/N_l up to D/4, M at the foot, N and the light N_l on top
//
// Source: statics of a thin ring.
func (r *Result) localState() limit.State {
	if r.NoStress != "" {
		return r.noStress(localEdge)
	}
	var worst, open *limit.State
	friction := 0.0
	for i := range r.Tiers {
		t, rated := &r.Tiers[i], r.in.Tiers[i].Ring.EdgeLoad
		demand, e := t.Wall, 0.0
		if t.Bottom.Moment > 0 {
			e = t.Bottom.Moment / t.Top.Light / r.in.Tiers[i].Diameter
		}
		if t.Wider {
			demand = max(demand, t.Top.Force*(1+4*e))
		}
		friction = max(friction, t.Wall)
		if lost := t.Top.Lost || !(e <= aroundEdge); rated > 0 && t.Wider && lost {
			s := limit.Beyond(localEdge, fmt.Sprintf(liftedEdge, i+1)).Of(i + 1)
			open = &s
		} else if rated > 0 {
			if s := limit.Evaluate(localEdge, demand, rated).Of(i + 1); worst == nil || worse(&s, worst) {
				worst = &s
			}
		} else if t.Wider && (open == nil || demand > open.Demand) {
			s := limit.Beyond(localEdge, fmt.Sprintf(
				"not verified: what presses on tier %d reaches over the edge of its ring, which has no rated edge load", i+1)).Of(i + 1)
			s.Demand = demand
			open = &s
		}
	}
	switch {
	case worst != nil && (worst.Verdict == limit.Fail || open == nil):
		return r.bound(*worst, "")
	case open != nil:
		return *open
	}
	s := limit.Skip(localEdge, "nothing reaches over the edge of a ring; the friction of the fill may load it by the demand shown")
	s.Demand = friction
	return s
}

func (r *Result) serviceState(own string) limit.State {
	if r.NoService != "" {
		a := &r.in.Service
		if !(a.N < 0) && (a.Mx != 0 || a.My != 0 || a.Vx != 0 || a.Vy != 0) {
			return limit.Beyond(service, r.NoService)
		}
		return limit.Skip(service, r.NoService)
	}
	return r.worst(service, own, func(t *TierResult) bool { return t.serviceLost() },
		func(t *TierResult) (float64, float64) { return t.ByRest, t.Rd })
}

func (r *Result) surfaceState() limit.State {
	if r.NoStress != "" {
		return limit.Skip(surface, r.NoStress)
	}
	s := limit.Skip(surface, "for information: what is above it the rings must carry")
	top := &r.Tiers[0].Top
	if e := limit.Evaluate(surface, top.Even, r.Surface); e.Rated && !top.Lost {
		s.Demand, s.Resistance, s.Utilization, s.Rated = e.Demand, e.Resistance, e.Utilization, true
	}
	return s.Of(1)
}

// slideState names the tier under the interface; the bottom counts as one more.
func (r *Result) slideState() limit.State {
	if r.Shear == 0 {
		return limit.Skip(sliding, "there is no shear")
	}
	var worst limit.State
	for i := range r.Slides {
		if s := limit.Evaluate(sliding, r.Shear, r.Slides[i].Holds).Of(i + 1); i == 0 || worse(&s, &worst) {
			worst = s
		}
	}
	return r.bound(worst, r.withoutFactor("basis.us_lrfd.sliding_resistance_factor", r.Safety.PhiSliding))
}

func (r *Result) turnState() limit.State {
	if r.Turn.Demand == 0 {
		return limit.Skip(overturning, "nothing overturns the stack")
	}
	return r.bound(limit.Evaluate(overturning, r.Turn.Demand, r.Turn.Holds).Of(len(r.Tiers)), "")
}

func (r *Result) settleState() limit.State {
	if r.NoService != "" {
		return limit.Skip(settling, r.NoService)
	}
	if r.in.Settlement == 0 {
		s := limit.Skip(settling, "no limit was given")
		if r.Settles.Gap != "" {
			s.Reason += "; the number shown is too small: " + r.Settles.Gap
		}
		s.Demand = r.Settles.Total
		return s
	}
	s := limit.Evaluate(settling, r.Settles.Total, r.in.Settlement)
	if s.Verdict == limit.Pass && r.Settles.Gap != "" {
		s.Verdict, s.Reason = limit.OutOfScope, "not verified: "+r.Settles.Gap
	} else if s.Verdict == limit.Pass && (r.in.Repeated || r.in.Sloping || r.in.Flooded) {
		s.Verdict, s.Reason = limit.OutOfScope, r.Unverified
	}
	return s
}

// clampState shows what is left of the preload, and never lets anybody count on it.
func (r *Result) clampState() limit.State {
	rods := &r.in.Rods
	switch {
	case rods.Count == 0 || rods.Preload == 0 && rods.Needed == 0:
		return limit.Skip(clamping, "there is no preload")
	case rods.Needed == 0:
		s := limit.Skip(clamping, "nobody counts on preload; the demand shown is what relaxation, load and settlement take")
		s.Demand = min(rods.Preload, r.Springs.Relaxed+r.Springs.Load+r.Springs.Settled)
		return s
	}
	s := limit.Evaluate(clamping, rods.Needed, r.Springs.Left)
	if s.Verdict == limit.Pass {
		s.Verdict, s.Reason = limit.OutOfScope, "not verified: preload through granular fill is never counted on"
	}
	return s
}
