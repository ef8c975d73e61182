package base

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bed"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/ring"
	"footward.example/footward/internal/settle"
	"footward.example/footward/internal/tie"
)

var underside = &limit.Kind{
	ID: "bottom_plate_on_ground", Title: "Bottom plate in bending on the ground", Measure: limit.UnitMoment, Model: true,
	Clause: [basis.Count]string{
		basis.Eurocode: "EN 1993-1-1:2005 6.2.5, elastic; thin plate on a bed without tension",
		basis.USLRFD:   "AISC 360-22 F11; thin plate on a bed without tension",
		basis.USASD:    "AISC 360-22 F11; thin plate on a bed without tension",
	},
}

// below is what the substructure comes to.
type below struct {
	plan    plan
	stack   *ring.Result // under the service values that press most; nil: no stack
	worst   int          // pair that governs the ground, counted from 0
	settled *settle.Result
	stages  []int // of the actions, of each stage of settled
	pad     padCase
	outer   float64 // bending of a bottom plate by rods outside the fill [Nmm/mm]
	narrow  float64 // least circle through which the plate presses on a stack [mm]; 0: not known
}

// below checks what carries the base below its plate, but for the strength of the
// stack, which every combination has of its own.
func (c *column) below(r *ColumnResult) error {
	s := &c.in.Below
	if s.HasStack {
		if err := c.service(r); err != nil {
			return err
		}
	}
	if s.HasStack || s.HasGround {
		c.remarkBelow(&r.notices)
	}
	if !s.HasGround {
		return nil
	}
	c.foot.plan = c.in.plan(c.foot.stack, narrower(c.foot.narrow, c.in.across(c.in.outstand())))
	if err := c.ground(r); err != nil {
		return err
	}
	if err := c.settlement(r); err != nil {
		return err
	}
	if !s.HasStack {
		return c.padStrength(r)
	}
	return c.bottomPlate(r)
}

// ground checks the ground under every pair.
func (c *column) ground(r *ColumnResult) error {
	s := &c.in.Below
	if s.NoPairs != "" {
		c.beyond(r, ground.Kinds(), s.NoPairs)
		return nil
	}
	loose := s.HasStack && c.in.Base.HasRods && !c.held() && r.pulled()
	var used float64
	for i := range s.Pairs {
		if err := c.in.stopped(); err != nil {
			return err
		}
		k := &s.Pairs[i]
		in := c.in.ground(&c.foot.plan, k)
		out, err := ground.Check(&in)
		if err != nil {
			return err
		}
		out.Notices(&r.notices)
		c.list.Reset()
		out.States(&c.list)
		if loose {
			open(c.list.All(), looseRods)
		}
		if out.Head > 0 && (s.HasStack || c.held()) {
			open(c.list.All(), drowned)
		}
		for _, state := range c.list.All() {
			state.Combination, state.Stage = k.Name, k.Stage
			r.take(state, -1)
		}
		if most := strongest(c.list.All()); most != nil && most.Utilization > used {
			used, c.foot.worst = most.Utilization, i
		}
	}
	return nil
}

// beyond says why limit states of the basis cannot be checked.
func (c *column) beyond(r *ColumnResult, kinds []*limit.Kind, why string) {
	for _, k := range kinds {
		if k.Clause[c.in.Base.Plate.Design.Basis] != "" {
			r.take(limit.Beyond(k, why), -1)
		}
	}
}

// settlement predicts how much the ground settles.
func (c *column) settlement(r *ColumnResult) error {
	if !c.in.Below.HasSettlement {
		return nil
	}
	if why := c.in.Below.NoService; why != "" {
		c.beyond(r, settle.Kinds(), why)
		return nil
	}
	out, in, stages, err := c.settles(false)
	if err != nil {
		return err
	}
	c.foot.settled, c.foot.stages = out, stages
	out.Notices(&r.notices)
	c.list.Reset()
	out.States(&c.list)
	if c.foot.stack != nil && c.foot.stack.Settles.Gap != "" {
		open(c.list.All(), "not verified: how much the stack settles by itself is not wholly known: "+c.foot.stack.Settles.Gap)
	}
	if err := c.openTilt(); err != nil {
		return err
	}
	for _, state := range c.list.All() {
		if state.Stage > 0 {
			// A stage of the settlement is a stage of the actions with some of them.
			state.Combination, state.Stage = in.Stages[state.Stage-1].Name, stages[state.Stage-1]
		}
		r.take(state, -1)
	}
	return nil
}

// outside keeps the bending of a bottom plate by rods that stand outside the lowest
// ring: the fill presses within them, so it is of the same sense as that by the ground
// past the fill.
func (c *column) outside(held part) {
	r, through := held.(*tie.Result)
	if !through || !c.in.Below.HasStack {
		return
	}
	tiers := c.in.Below.Stack.Tiers
	for i, at := range c.in.Base.At {
		if c.pull[i] > 0 && math.Hypot(at.X, at.Y) > tiers[len(tiers)-1].Diameter/2 {
			c.foot.outer = max(c.foot.outer, r.Bend[0].PerMM, r.Bend[1].PerMM)
		}
	}
}

// settles predicts how much the ground and what stands on it settle and turn.
func (c *column) settles(least bool) (*settle.Result, *settle.Input, []int, error) {
	var failed error
	in, stages := c.in.settlement(&c.foot.plan, func(k *Case, s *settle.Stage) {
		if err := c.sinks(k, s, least); err != nil {
			failed = err
		}
	})
	if failed != nil {
		return nil, nil, nil, failed
	}
	out, err := settle.Check(&in)
	return out, &in, stages, err
}

// openTilt leaves a tilt of the list open that is too great by the one limit of how
// stiff a stack is and not by the other; where it is by both, the lesser is shown.
func (c *column) openTilt() error {
	all := c.list.All()
	for i := range all {
		if c.foot.stack == nil || all[i].Kind.ID != "settle_tilt" || all[i].Verdict != limit.Fail {
			continue
		}
		out, _, _, err := c.settles(true)
		if err != nil {
			return err
		}
		var l limit.List
		out.States(&l)
		for _, s := range l.All() {
			switch {
			case s.Kind != all[i].Kind:
			case s.Verdict == limit.Fail:
				// What is certain is shown, and derived.
				all[i], c.foot.settled = s, out
				all[i].Reason = atLeast
			default:
				all[i].Verdict, all[i].Reason = limit.OutOfScope, betweenTurns
			}
		}
	}
	return nil
}

// bottomPlate holds a bottom plate that reaches past the fill against its bending
// on the ground, as a thin plate on a bed without tension, pressed by a square of the
// area of the fill's circle: under the greatest compression with the greatest moments
// of all combinations, and under the combination that turns most.
//
// Where rods stand outside the fill, what they bend the plate at most comes on top.
//
// Source: Kirchhoff's plate theory.
func (c *column) bottomPlate(r *ColumnResult) error {
	if !c.held() {
		return nil
	}
	p := &c.foot.plan
	b := &c.in.Anchorage.Through.Plate
	if p.side == 0 {
		why := "no part of it reaches past the fill"
		if min(b.SizeX, b.SizeY) > p.stack {
			why = "what reaches past the fill does not count: the stiffness of the ground is not known"
		}
		r.take(limit.Skip(underside, why), -1)
		return nil
	}
	side := p.stack * math.Sqrt(math.Pi) / 2
	most, turning := c.greatest()
	resists, m := tie.MomentResistance(b, &c.in.Base.Plate.Design), 0.0
	var solver bed.Solver
	for _, acts := range [...]geom.Actions{most, turning} {
		solved, err := solver.Solve(&bed.Input{
			Plate: *thin(b, c.in.Base.Plate.Design.Basis), Modulus: c.in.Below.Subgrade,
			Patches: []bed.Patch{{SizeX: side, SizeY: side, N: acts.N, Mx: acts.Mx, My: acts.My}},
		})
		if err != nil {
			r.take(limit.Beyond(underside, "the plate cannot be computed as a thin plate on the ground: "+err.Error()), -1)
			return nil
		}
		for _, v := range [...]*bed.Bending{&solved.X, &solved.Y} {
			m = max(m, math.Abs(v.Sag.Unit), math.Abs(v.Hog.Unit), v.Most)
		}
	}
	s := limit.Evaluate(underside, m+c.foot.outer, resists)
	s.Combination = "the greatest compression with the greatest moments of all combinations, or the one that turns most"
	r.take(s, -1)
	return nil
}

// greatest returns the greatest compression with the greatest moments of all
// combinations, and the combination with the greatest moment, at the underside of the
// footing, weight included where it presses.
func (c *column) greatest() (most, turning geom.Actions) {
	p := &c.foot.plan
	for i := range c.in.Cases {
		a := p.move(c.in.Cases[i].Actions)
		a.Mx, a.My = math.Abs(a.Mx)+math.Abs(a.Vy)*p.height, math.Abs(a.My)+math.Abs(a.Vx)*p.height
		most.N, most.Mx, most.My = min(most.N, a.N), max(most.Mx, a.Mx), max(most.My, a.My)
		if a.N-p.weight < 0 && math.Hypot(a.Mx, a.My) >= math.Hypot(turning.Mx, turning.My) {
			turning = geom.Actions{N: a.N - p.weight, Mx: a.Mx, My: a.My}
		}
	}
	most.N -= c.foot.stack.Safety.Unfavourable * p.weight
	if turning.N == 0 {
		turning = most
	}
	return most, turning
}

// The notices of the substructure, in the order of an answer.
var (
	wholePath = &limit.Notice{Code: "below_one_path", Severity: limit.Info,
		Text: "Plate, stack and ground are checked in one path: the fill under what the plate presses on it with the rods' pull, the ground under the actions of the column and all weights."}
	spreadPlan = &limit.Notice{Code: "below_plan_by_spread", Severity: limit.Assumption,
		Text: "The ground is pressed by the circle to which the load spreads 2 to 1 in the stack, and by as much of a wider bottom plate as is stiff on the ground given. All weights press on it."}
	within = &limit.Notice{Code: "below_plate_within_rings", Severity: limit.Caution,
		Text: "The bottom plate is smaller than the lowest ring: the rings do not stand on it, and only the fill straight above it is clamped and counts against uplift. The fill around it must not run out."}
	persistent = &limit.Notice{Code: "below_persistent_only", Severity: limit.Caution,
		Text: "The ground is checked for persistent and given accidental situations, all permanent actions together favourable or not: seismic ones are not part of it."}
	byStack = &limit.Notice{Code: "below_support_by_stack", Severity: limit.Assumption,
		Text: "No support was given: the plate stands on the confined fill of the top tier, by its design strength."}
	steelBelow = &limit.Notice{Code: "below_steel_on_ground", Severity: limit.Assumption,
		Text: "The bottom plate lies on the ground with steel: two thirds of the angle of friction count at most, however great friction_share is."}
	ringWeight = &limit.Notice{Code: "below_rings_weigh_nothing", Severity: limit.Caution,
		Text: "other_weight_kn is 0, so rings of steel or concrete weigh nothing here: give their weight, which presses the ground."}
	softBed = &limit.Notice{Code: "below_modulus_by_stack", Severity: limit.Assumption,
		Text: "No modulus of the bed was given: the rods have what the tiers in a row give without spread, which is rather too soft; the pressure also what they give with it, which is stiffer."}
)

func (c *column) remarkBelow(l *limit.Notices) {
	s := &c.in.Below
	l.Add(wholePath)
	if s.HasStack {
		c.foot.stack.Notices(l)
	}
	if c.given.Base.Support.Medium == 0 {
		l.Add(byStack)
	}
	if c.given.Modulus == 0 && c.in.Modulus > 0 {
		l.Add(softBed)
	}
	if s.HasGround && c.in.onSteel() && s.Ground.Interface.Share > smoothSteel {
		l.Add(steelBelow)
	}
	if s.HasStack && s.HasGround && s.OtherWeight == 0 && s.heavyRings() {
		l.Add(ringWeight)
	}
	if s.HasGround {
		if s.HasStack {
			l.Add(spreadPlan)
		}
		if p := &c.in.Anchorage.Through.Plate; s.HasStack && c.held() && min(p.SizeX, p.SizeY) < s.Stack.Tiers[len(s.Stack.Tiers)-1].Diameter {
			l.Add(within)
		}
		l.Add(persistent)
	}
}

// heavyRings reports whether a stack has rings whose weight is worth counting.
func (s *Substructure) heavyRings() bool {
	for i := range s.Stack.Tiers {
		if k := s.Stack.Tiers[i].Ring.Kind; k == ring.Steel || k == ring.Concrete {
			return true
		}
	}
	return false
}

// pulled reports whether rods pull under any combination.
func (r *ColumnResult) pulled() bool {
	for i := range r.Rows {
		for _, t := range r.Rows[i].Tensions {
			if t > 0 {
				return true
			}
		}
	}
	return false
}

// deriveBelow writes the ground under the pair that governs it, and the
// settlement.
func (c *column) deriveBelow(s *derive.Sheet) {
	b := &c.in.Below
	if c.foot.stack != nil {
		c.foot.stack.DeriveMovement(s)
	}
	if !b.HasGround {
		return
	}
	if len(b.Pairs) > 0 { // none where the actions come combined, which the pad takes as they are
		k := &b.Pairs[c.foot.worst]
		s.Given("pair", float64(c.foot.worst+1), "", "combination that governs the ground: "+k.Name)
		in := c.in.ground(&c.foot.plan, k)
		if out, err := ground.Check(&in); err == nil {
			c.deriveWeight(s, k)
			out.Derive(s)
		}
	}
	if c.foot.settled != nil {
		c.foot.settled.Derive(s)
	}
	c.derivePad(s)
}
