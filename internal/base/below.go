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
		basis.Eurocode: "EN 1993-1-1:2005 6.2.5, elastic; statics, or a thin plate on a bed without tension where it is not stiff",
		basis.USLRFD:   "AISC 360-22 F11; statics, or a thin plate on a bed without tension where it is not stiff",
		basis.USASD:    "AISC 360-22 F11; statics, or a thin plate on a bed without tension where it is not stiff",
	},
}

// below is what the substructure comes to.
type below struct {
	plan    plan
	stack   *ring.Result // under the service values that press most; nil: no stack
	worst   int          // pair that governs the ground, counted from 0
	settled *settle.Result
}

// stackPart is a stack under one combination: the fill under what the plate
// presses on it, the stack as a whole under the actions themselves.
type stackPart struct{ stress, stability *ring.Result }

func (p *stackPart) States(l *limit.List) {
	p.stress.StressStates(l)
	p.stability.StabilityStates(l)
}

func (p *stackPart) Notices(l *limit.Notices) { p.stress.Notices(l) }

func (p *stackPart) Derive(s *derive.Sheet) {
	p.stress.DeriveStress(s)
	p.stability.DeriveStability(s)
}

// stackUnder checks the stack under one combination. Rods that pull press plate
// and tiers together and leave the ground alone.
func (c *column) stackUnder(a *geom.Actions, solved *contact.Result) (part, error) {
	in := c.in.Below.Stack
	in.Actions = *a
	for _, t := range solved.Rods {
		in.Clamp += t
	}
	stability, err := ring.Check(&in)
	if err != nil {
		return nil, err
	}
	if !solved.Found || in.Clamp == 0 {
		return &stackPart{stability, stability}, nil
	}
	pressed := in
	pressed.Actions = c.pressed(a, solved)
	stress, err := ring.Check(&pressed)
	if err != nil {
		return nil, err
	}
	return &stackPart{stress, stability}, nil
}

// pressed returns what a plate that rods pull presses on its fill: its greatest
// pressure all over the loaded circle, which is more than it presses. Whether the
// stack balances at all is looked at under the actions themselves.
//
//	C = max(sum T - N, p_max pi d_0^2/4)
//
// Source: statics.
func (c *column) pressed(a *geom.Actions, solved *contact.Result) geom.Actions {
	d := c.in.Below.Stack.Shoe.Loaded
	return geom.Actions{N: -max(solved.Pressed, solved.Peak*math.Pi/4*d*d), Vx: a.Vx, Vy: a.Vy, T: a.T}
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
		in.Service = k.Actions
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
	in := c.in.settlement(&c.foot.plan)
	out, err := settle.Check(&in)
	if err != nil {
		return err
	}
	c.foot.settled = out
	out.Notices(&r.notices)
	c.list.Reset()
	out.States(&c.list)
	for _, state := range c.list.All() {
		if state.Stage > 0 {
			// A stage of the settlement is a stage of the actions with some of them.
			state.Combination, state.Stage = in.Stages[state.Stage-1].Name, 0
		}
		r.take(state, -1)
	}
	return nil
}

// bottomPlate holds a bottom plate that reaches past the fill against its bending
// on the ground, under the greatest compression and the greatest moments of all
// combinations together.
//
//	m_Ed = p_max a^2/2, stiff; else the greatest section moment of a thin plate
//
// Source: statics; Kirchhoff's plate theory.
func (c *column) bottomPlate(r *ColumnResult) error {
	if c.in.Anchorage.Kind != Through {
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
	acts := c.greatest()
	resists := tie.MomentResistance(b, &c.in.Base.Plate.Design)
	over := (max(b.SizeX, b.SizeY) - p.stack) / 2
	l := bed.RelativeStiffness(thin(b, c.in.Base.Plate.Design.Basis), c.in.Below.Subgrade)
	if bed.Rigid(over, l) {
		solved, err := c.probe.Solve(&contact.Input{
			Outline: contact.Rectangle(b.SizeX, b.SizeY), Bed: contact.Bed{Modulus: c.in.Below.Subgrade}, Actions: acts})
		if err != nil {
			return err
		}
		if !solved.Found {
			r.take(limit.State{Kind: underside, Verdict: limit.Fail, Reason: solved.Reason}, -1)
			return nil
		}
		m := solved.Peak * over * over / 2
		t := tie.NeededThickness(b, &c.in.Base.Plate.Design, m)
		r.take(limit.Evaluate(underside, m, resists).Need(limit.PlateThickness, t), -1)
		return nil
	}
	// The fill presses on a square of the area of its circle.
	side := p.stack * math.Sqrt(math.Pi) / 2
	var solver bed.Solver
	solved, err := solver.Solve(&bed.Input{
		Plate: *thin(b, c.in.Base.Plate.Design.Basis), Modulus: c.in.Below.Subgrade,
		Patches: []bed.Patch{{SizeX: side, SizeY: side, N: acts.N, Mx: acts.Mx, My: acts.My}},
	})
	if err != nil {
		r.take(limit.Beyond(underside, "the plate is too thin for its size to be computed: "+err.Error()), -1)
		return nil
	}
	m := 0.0
	for _, v := range [...]*bed.Bending{&solved.X, &solved.Y} {
		m = max(m, math.Abs(v.Sag.Unit), math.Abs(v.Hog.Unit), math.Abs(v.Local))
	}
	r.take(limit.Evaluate(underside, m, resists), -1)
	return nil
}

// greatest returns the greatest compression and the greatest moments of all
// combinations together, at the underside of the footing, weight included.
func (c *column) greatest() geom.Actions {
	var most geom.Actions
	p := &c.foot.plan
	for i := range c.in.Cases {
		a := p.move(c.in.Cases[i].Actions)
		most.N = min(most.N, a.N)
		most.Mx = max(most.Mx, math.Abs(a.Mx)+math.Abs(a.Vy)*p.height)
		most.My = max(most.My, math.Abs(a.My)+math.Abs(a.Vx)*p.height)
	}
	most.N -= c.foot.stack.Safety.Unfavourable * p.weight
	return most
}

// The notices of the substructure, in the order of an answer.
var (
	wholePath = &limit.Notice{Code: "below_one_path", Severity: limit.Info,
		Text: "Plate, stack and ground are checked in one path: the fill under what the plate presses on it with the rods' pull, the ground under the actions of the column and all weights."}
	spreadPlan = &limit.Notice{Code: "below_plan_by_spread", Severity: limit.Assumption,
		Text: "The ground is pressed by the circle to which the load spreads 2 to 1 in the stack, and by as much of a wider bottom plate as is stiff on the ground given. All weights press on it."}
	persistent = &limit.Notice{Code: "below_persistent_only", Severity: limit.Caution,
		Text: "The ground is checked for persistent situations, all permanent actions together favourable or not: accidental and seismic ones are not part of it."}
	byStack = &limit.Notice{Code: "below_support_by_stack", Severity: limit.Assumption,
		Text: "No support was given: the plate stands on the confined fill of the top tier, by its design strength."}
	softBed = &limit.Notice{Code: "below_modulus_by_stack", Severity: limit.Assumption,
		Text: "No modulus of the bed was given: that of the tiers in a row, without spread, which is rather too soft and gives the rods more."}
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
		l.Add(persistent)
	}
}

// deriveBelow writes the ground under the pair that governs it, and the
// settlement.
func (c *column) deriveBelow(s *derive.Sheet) {
	b := &c.in.Below
	if c.foot.stack != nil {
		c.foot.stack.DeriveMovement(s)
	}
	if !b.HasGround || len(b.Pairs) == 0 {
		return
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
}
