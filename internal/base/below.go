package base

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bed"
	"footward.example/footward/internal/contact"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/ring"
	"footward.example/footward/internal/settle"
	"footward.example/footward/internal/tie"
)

var underside = &limit.Kind{
	ID: "bottom_plate_on_ground", Title: "Bottom plate in bending on the ground", Measure: limit.UnitMoment,
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
	pad     padCase
}

// stackPart is a stack under one combination: the fill under what the plate
// presses on it, the stack as a whole under the actions themselves.
type stackPart struct {
	stress, stability *ring.Result
	loose             bool // rods pull, and nothing holds them below
}

func (p *stackPart) States(l *limit.List) {
	p.stress.StressStates(l)
	from := len(l.All())
	p.stability.StabilityStates(l)
	if p.loose {
		open(l.All()[from:], looseRods)
	}
}

// open leaves states that pass to an engineer, for a reason.
func open(all []limit.State, why string) {
	for i := range all {
		if all[i].Verdict == limit.Pass {
			all[i].Verdict, all[i].Reason = limit.OutOfScope, why
		}
	}
}

func (p *stackPart) Notices(l *limit.Notices) { p.stress.Notices(l) }

func (p *stackPart) Derive(s *derive.Sheet) {
	p.stress.DeriveStress(s)
	p.stability.DeriveStability(s)
}

// held reports whether what the rods pull ends in a bottom plate below the stack.
func (c *column) held() bool { return c.in.Anchorage.Kind == Through }

// looseRods is why a stack whose rods end nowhere cannot be balanced.
const looseRods = "rods pull, and what holds them below the stack is not given: weight and clamping do not count"

// drowned is why a stack, or what rods clamp, is not let pass in water: fill and weight
// that hold there count as dry above the ground.
const drowned = "water above the base takes weight and strength from what stands in it, which is counted in the ground alone"

// stackUnder checks the stack under one combination. Rods that pull press plate
// and tiers together and leave the ground alone.
func (c *column) stackUnder(a *geom.Actions, solved *contact.Result) (part, error) {
	in := c.in.Below.Stack
	in.Actions = c.in.onFill(*a)
	pull := 0.0
	for _, t := range solved.Rods {
		pull += t
	}
	if c.held() {
		in.Clamp = pull
	}
	stability, err := ring.Check(&in)
	if err != nil {
		return nil, err
	}
	out := &stackPart{stress: stability, stability: stability, loose: pull > 0 && !c.held()}
	if !solved.Found || pull == 0 {
		return out, nil
	}
	pressed := in
	pressed.Actions = c.pressed(a, solved)
	out.stress, err = ring.Check(&pressed)
	return out, err
}

// unevenMost is the eccentricity over the diameter up to which the stress below a
// circle is told by it.
const unevenMost = 0.4

// pressed returns what a plate that rods pull presses on its fill: all over the
// loaded circle the greatest of what the rigid plate presses, what it presses through
// the rectangle that its bending allows, and what the circle would by the same
// eccentricity. That is more than it presses. Whether the stack balances at all is
// looked at under the actions themselves.
//
//	C = sum T - N, p = max(p_max, C/(b_x b_y) k_x k_y, 4 C/(pi d_0^2) k_e)
//
// Source: statics; straight line of pressure without tension.
func (c *column) pressed(a *geom.Actions, solved *contact.Result) geom.Actions {
	n := solved.Pressed
	if !(n > 0) {
		return geom.Actions{}
	}
	mx, my := a.Mx, a.My
	for i, t := range solved.Rods {
		at := c.in.Base.At[i]
		my += at.X * t
		mx -= at.Y * t
	}
	d := c.in.Below.Stack.Shoe.Loaded
	bx, by := c.in.pressing(c.strength.Pressure)
	ex, ey := math.Abs(my)/n, math.Abs(mx)/n
	if ex >= bx/2 || ey >= by/2 {
		// The plate is too thin to press where the resultant lies.
		return geom.Actions{N: -n, My: n * d, Vx: a.Vx, Vy: a.Vy, T: a.T}
	}
	area := math.Pi / 4 * d * d
	e := min(math.Hypot(ex, ey), unevenMost*d)
	p := max(solved.Peak, n/(bx*by)*straight(ex/bx)*straight(ey/by), n/area*ring.EdgeFactor(d, e))
	return geom.Actions{N: -p * area, Vx: a.Vx, Vy: a.Vy, T: a.T}
}

// straight returns the greatest pressure over the mean along one direction of a
// rectangle [-], by the eccentricity over the size, below a half.
//
//	1 + 6 e/b, beyond the kern 4/(3 (1 - 2 e/b))
//
// Source: statics of a straight line of pressure without tension.
func straight(share float64) float64 {
	if share <= 1.0/6 {
		return 1 + 6*share
	}
	return 4 / (3 * (1 - 2*share))
}

// serviceStates are what a stack comes to in service.
type serviceStates struct{ *ring.Result }

func (s serviceStates) States(l *limit.List) {
	s.ServiceState(l)
	s.SettlementStates(l)
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
	// What the parts say of what they leave out is not left out here.
	defer r.notices.Drop("ring_ground_apart")
	defer r.notices.Drop("tie_overturning_edge")
	if !s.HasStack {
		defer r.notices.Drop("ground_ring_footing")
	}
	if s.HasSettlement {
		defer r.notices.Drop("ground_settlement")
	}
	c.foot.plan = c.in.plan(c.foot.stack)
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

// service checks the stack under the combinations of service values.
func (c *column) service(r *ColumnResult) error {
	s := &c.in.Below
	if len(s.Service) == 0 {
		c.list.Reset()
		serviceStates{c.foot.stack}.States(&c.list)
		for _, k := range c.list.All() {
			r.take(k, -1)
		}
		return nil
	}
	for i := range s.Service {
		if err := c.in.stopped(); err != nil {
			return err
		}
		k := &s.Service[i]
		c.bed.Actions = k.Actions
		solved, err := c.solver.Solve(&c.bed)
		if err != nil {
			return err
		}
		in := s.Stack
		in.Service = c.in.onFill(k.Actions)
		if solved.Found && pulls(&solved) {
			in.Service = c.pressed(&k.Actions, &solved)
		}
		out, err := ring.Check(&in)
		if err != nil {
			return err
		}
		c.list.Reset()
		serviceStates{out}.States(&c.list)
		for _, state := range c.list.All() {
			state.Combination, state.Stage = k.Name, k.Stage
			r.take(state, -1)
		}
	}
	return nil
}

// ground checks the ground under every pair.
func (c *column) ground(r *ColumnResult) error {
	s := &c.in.Below
	if s.NoPairs != "" {
		c.beyond(r, ground.Kinds(), s.NoPairs)
		return nil
	}
	loose := s.HasStack && c.in.Base.HasRods && !c.held() && r.pulled()
	var worst limit.State
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
			if worst.Kind == nil || worse(&state, &worst) {
				worst, c.foot.worst = state, i
			}
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
	in, stages := c.in.settlement(&c.foot.plan)
	out, err := settle.Check(&in)
	if err != nil {
		return err
	}
	c.foot.settled = out
	out.Notices(&r.notices)
	c.list.Reset()
	out.States(&c.list)
	if c.foot.stack != nil && c.foot.stack.Settles.Gap != "" {
		open(c.list.All(), "not verified: how much the stack settles by itself is not wholly known: "+c.foot.stack.Settles.Gap)
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

// bottomPlate holds a bottom plate that reaches past the fill against its bending
// on the ground, as a thin plate on a bed without tension, pressed by a square of the
// area of the fill's circle: under the greatest compression with the greatest moments
// of all combinations, and under the combination that turns most.
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
	s := limit.Evaluate(underside, m, resists)
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
		Text: "The ground is checked for persistent situations, all permanent actions together favourable or not: accidental and seismic ones are not part of it."}
	byStack = &limit.Notice{Code: "below_support_by_stack", Severity: limit.Assumption,
		Text: "No support was given: the plate stands on the confined fill of the top tier, by its design strength."}
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
	if !b.HasGround || len(b.Pairs) == 0 {
		return // the pad is checked and shown by its own combinations only beside the ground
	}
	k := &b.Pairs[c.foot.worst]
	s.Given("pair", float64(c.foot.worst+1), "", "combination that governs the ground: "+k.Name)
	in := c.in.ground(&c.foot.plan, k)
	if out, err := ground.Check(&in); err == nil {
		out.Derive(s)
	}
	if c.foot.settled != nil {
		c.foot.settled.Derive(s)
	}
	c.derivePad(s)
}
