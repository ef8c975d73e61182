package base

import (
	"math"
	"slices"

	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/ring"
	"footward.example/footward/internal/settle"
	"footward.example/footward/internal/tie"
)

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
// and tiers together and leave the ground alone: what presses is the worst of the
// ways to share and of the tensions that the rods are checked with, stability has the
// least of their clamping.
func (c *column) stackUnder(a *geom.Actions, solved *shared) (part, error) {
	in := c.in.Below.Stack
	in.Actions = lowered(*a, c.in.Base.Plate.Plate.Thickness)
	in.Shoe.Loaded = c.in.circle(&in.Actions)
	c.foot.narrow = narrower(c.foot.narrow, in.Shoe.Loaded)
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
	out := &stackPart{stress: stability, stability: stability, loose: solved.pulls() && !c.held()}
	if !solved.Found || !solved.pulls() {
		return out, nil
	}
	pressed := in
	pressed.Actions, pressed.Shoe.Loaded = c.worstPressed(&in.Actions, solved, c.pull)
	c.foot.narrow = narrower(c.foot.narrow, pressed.Shoe.Loaded)
	// What they clamp is in what presses.
	pressed.Rods.Preload = 0
	out.stress, err = ring.Check(&pressed)
	return out, err
}

func narrower(d, than float64) float64 {
	if d == 0 {
		return than
	}
	return min(d, than)
}

// worstPressed returns the worst that the plate presses on its fill, and the circle
// through which it does [mm].
func (c *column) worstPressed(a *geom.Actions, solved *shared, pull []float64) (worst geom.Actions, d float64) {
	most := 0.0
	for i := range solved.ways {
		w := &solved.ways[i]
		one, circle := c.pressed(a, w, solved.highest)
		if d == 0 || one.My > worst.My || one.My == worst.My && one.N < worst.N {
			worst = one
		}
		d, most = narrower(d, circle), max(most, w.pressed)
	}
	if most == 0 {
		return worst, d // both sides lift
	}
	// What more the plate's own method has the rods pull, it also presses, nearer to the
	// footprint than the sharing does, and on both sides of the rods where it pries.
	n := -a.N
	for _, t := range pull {
		n += t
	}
	worst.N -= max(0, n-most)
	return worst, d
}

// unevenMost is the eccentricity over the diameter up to which the stress below a
// circle is told by it.
const unevenMost = 0.4

// pressed returns what a plate that rods pull presses on its fill, and the circle
// through which it does [mm]: all over that circle the greatest of what the rigid plate
// presses, what it presses through the rectangle that its bending allows, and what the
// circle would by the same eccentricity. That is more than it presses. Whether the
// stack balances at all is looked at under the actions themselves.
//
//	C = sum T - N, p = max(p_max, C/(b_x b_y) k_x k_y, 4 C/(pi d_0^2) k_e)
//
// Source: statics; straight line of pressure without tension.
func (c *column) pressed(a *geom.Actions, w *share, peak float64) (geom.Actions, float64) {
	n, mx, my := w.pressed, a.Mx, a.My
	for i, t := range w.rods {
		at := c.in.Base.At[i]
		my += at.X * t
		mx -= at.Y * t
	}
	most := c.in.outstand()
	if !(n > 0) {
		// All rods pull: the fill has its own weight, and shear meets that of the stack
		// where it slides and turns over.
		return geom.Actions{T: a.T}, c.in.across(most)
	}
	ex, ey := math.Abs(my)/n, math.Abs(mx)/n
	rectangle := func(out float64) (bx, by float64) {
		p, f := &c.in.Base.Plate.Plate, &c.in.Base.Plate.Footprint
		return min(p.SizeX, f.SizeX+2*out), min(p.SizeY, f.SizeY+2*out)
	}
	out := c.in.reaches(func(out float64) float64 {
		bx, by := rectangle(out)
		d := c.in.across(out)
		e := min(math.Hypot(ex, ey), unevenMost*d)
		return max(n/(max(0, bx-2*ex)*max(0, by-2*ey)), n/ring.EffectiveArea(d, e))
	})
	d := c.in.across(out)
	bx, by := rectangle(out)
	if ex >= bx/2 || ey >= by/2 {
		// The plate is too thin to press where the resultant lies.
		return geom.Actions{N: -n, My: n * d, Vx: a.Vx, Vy: a.Vy, T: a.T}, d
	}
	e := min(math.Hypot(ex, ey), unevenMost*d)
	p := max(n/(bx*by)*straight(ex/bx)*straight(ey/by), n/(math.Pi/4*d*d)*ring.EdgeFactor(d, e))
	return geom.Actions{N: -max(p, peak) * math.Pi / 4 * d * d, Vx: a.Vx, Vy: a.Vy, T: a.T}, d
}

// outstand returns the greatest outstand of the plate beyond its footprint [mm].
func (in *ColumnInput) outstand() float64 {
	p, f := &in.Base.Plate.Plate, &in.Base.Plate.Footprint
	return max(0, p.SizeX-f.SizeX, p.SizeY-f.SizeY) / 2
}

// across returns the circle through which the plate presses where it does so an
// outstand beyond its footprint [mm]: at most the lesser side, or what was given.
func (in *ColumnInput) across(out float64) float64 {
	p, f := &in.Base.Plate.Plate, &in.Base.Plate.Footprint
	if d := in.Below.Stack.Shoe.Loaded; d > 0 {
		return d
	}
	return min(p.SizeX, p.SizeY, min(f.SizeX, f.SizeY)+2*out)
}

// steps of the search for an outstand.
const outstands = 64

// reaches returns the greatest outstand of the plate beyond its footprint that its
// bending carries under what presses there [mm], or 0.
//
//	p(c) c^2/2 <= m_R
//
// with the even pressure about the resultant. It does not depend on how strong the bed
// is: any pressure that balances the actions, and that plate and bed carry, will do.
//
// Source: statics of a cantilever, lower bound; EN 1993-1-8:2005 6.2.5(4).
func (in *ColumnInput) reaches(presses func(out float64) float64) float64 {
	m, most := tie.MomentResistance(&in.Base.Plate.Plate, &in.Base.Plate.Design), in.outstand()
	carries := func(c float64) bool { return presses(c)*c*c <= 2*m }
	if most == 0 || carries(most) {
		return most
	}
	high := most
	for i := outstands - 1; i > 0; i-- {
		low := most * float64(i) / outstands
		if !carries(low) {
			high = low
			continue
		}
		for range halvings {
			if middle := (low + high) / 2; carries(middle) {
				low = middle
			} else {
				high = middle
			}
		}
		return low
	}
	return 0
}

// circle returns the circle through which the plate presses under actions on top of
// the fill and the preload of rods [mm]: the footprint with as much of the plate as
// its bending carries, at most the lesser side.
func (in *ColumnInput) circle(a *geom.Actions) float64 {
	n, m := max(0, -a.N), math.Hypot(a.Mx, a.My)
	force := n
	if s := &in.Below.Stack; s.Rods.Count > 0 {
		force += float64(s.Rods.Count) * s.Rods.Preload
	}
	if force == 0 || in.Base.Plate.Footprint.Shape == 0 {
		return in.across(in.outstand())
	}
	e := 0.0
	if m > 0 {
		e = m / n
	}
	out := in.reaches(func(c float64) float64 {
		return force / ring.EffectiveArea(in.across(c), e)
	})
	if ring.EffectiveArea(in.across(out), e) == 0 {
		out = in.outstand() // the resultant is off the plate whatever presses
	}
	return in.across(out)
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
		stress, moves, err := c.served(k)
		if err != nil {
			return err
		}
		c.list.Reset()
		stress.ServiceState(&c.list)
		moves.SettlementStates(&c.list)
		for _, state := range c.list.All() {
			state.Combination, state.Stage = k.Name, k.Stage
			r.take(state, -1)
		}
	}
	return nil
}

// served checks the stack under a case of service values: its rings under what the
// plate presses, its settlement under the whole compression, which is the mean all
// over the circle.
func (c *column) served(k *Case) (stress, moves *ring.Result, err error) {
	solved, err := c.share(lowered(k.Actions, c.in.lever()))
	if err != nil {
		return nil, nil, err
	}
	in := c.in.Below.Stack
	in.Actions = geom.Actions{}
	in.Service = lowered(k.Actions, c.in.Base.Plate.Plate.Thickness)
	in.Shoe.Loaded = c.in.circle(&in.Service)
	if !solved.Found || !solved.pulls() {
		stress, err = ring.Check(&in)
		return stress, stress, err
	}
	pressed := in
	pressed.Service, pressed.Shoe.Loaded = c.worstPressed(&in.Service, &solved, nil)
	pressed.Rods.Preload = 0
	if stress, err = ring.Check(&pressed); err != nil {
		return nil, nil, err
	}
	// What it settles by tightening is levelled out then.
	n := max(0, -in.Service.N, solved.ways[0].pressed-float64(in.Rods.Count)*c.in.Preload)
	in.Service = geom.Actions{N: -n}
	moves, err = ring.Check(&in)
	return stress, moves, err
}

// sinks adds how much a stack settles and turns by itself in a case of service; least
// has it turn as little as it may.
func (c *column) sinks(k *Case, s *settle.Stage, least bool) error {
	if c.foot.stack == nil {
		return nil
	}
	_, moves, err := c.served(k)
	if err != nil {
		return err
	}
	if moves.NoService == "" {
		s.Above = moves.Settles.Total
	}
	turn, err := c.turn(k, least)
	s.TurnX, s.TurnY = turn[0], turn[1]
	return err
}

// mostTurn is how far a plate turns that the bed and the rods do not balance [rad].
const mostTurn = 0.1

// turn returns how far the plate turns on its stack about x and y [rad], under the
// moment that acts at half its height, for shear makes it grow evenly downwards, on a
// bed as stiff as the stack in which the load spreads:
//
//	theta = M/(k I) where all of the plate is pressed; else by the lift-off of the bed
//
// That is more than the spreading tiers turn, which are stiffer in turning than in sinking.
//
// Source: statics of a rigid plate on springs.
func (c *column) turn(k *Case, least bool) ([2]float64, error) {
	if least {
		return c.turnsLeast(k), nil
	}
	solved, err := c.share(lowered(k.Actions, c.in.Base.Plate.Plate.Thickness+c.foot.stack.Height/2))
	if err != nil || !solved.Found {
		return [2]float64{mostTurn, mostTurn}, err
	}
	var turn [2]float64
	spreads := slices.ContainsFunc(solved.ways, func(w share) bool { return w.spread })
	for i := range solved.ways {
		w := &solved.ways[i]
		if w.spread != spreads {
			continue
		}
		turn[0], turn[1] = max(turn[0], w.tilt[0]), max(turn[1], w.tilt[1])
	}
	return turn, nil
}

// layers of a tier in a sum over its height.
const layers = 64

// turnsLeast returns how far a plate all of which is pressed turns at least about x and
// y [rad], on tiers in which the load spreads.
//
//	theta = sum of M(z) dz/(M_s pi d(z)^4/64), d(0)^4 = 64 I/pi of the plate
//
// Source: statics of a bar that grows wider, 2 to 1.
func (c *column) turnsLeast(k *Case) (turn [2]float64) {
	p := &c.in.Base.Plate.Plate
	for i, size := range [2][2]float64{{p.SizeX, p.SizeY}, {p.SizeY, p.SizeX}} {
		d := math.Sqrt(math.Sqrt(64 / math.Pi * size[0] * size[1] * size[1] * size[1] / 12))
		depth := p.Thickness
		for n := range c.in.Below.Stack.Tiers {
			t, stiff := &c.in.Below.Stack.Tiers[n], c.foot.stack.Tiers[n].Modulus
			d = min(d, t.Diameter)
			for j := range layers {
				z := (float64(j) + 0.5) / layers * t.Height
				m, wide := lowered(k.Actions, depth+z), min(t.Diameter, d+z)
				about := [2]float64{math.Abs(m.Mx), math.Abs(m.My)}[i]
				if stiff > 0 {
					turn[i] += about * t.Height / layers / (stiff * math.Pi * wide * wide * wide * wide / 64)
				}
			}
			d, depth = min(t.Diameter, d+t.Height), depth+t.Height
		}
	}
	return turn
}

// atLeast tells that a tilt is greater than shown.
const atLeast = "at least: of a plate all of which is pressed, on tiers in which the load spreads"

// betweenTurns is why a tilt is open.
const betweenTurns = "not verified: the plate turns too far on a bed as stiff as its stack, and little enough with all of it pressed on tiers in which the load spreads"
