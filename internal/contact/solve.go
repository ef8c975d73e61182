package contact

import (
	"math"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// Solver shares actions. It keeps its memory from one call to the next, so the
// slices of a Result hold until then. A Solver is for one caller at a time.
type Solver struct {
	// Most steps of the search; 0: enough for any case. A search that ends early
	// finds no balance.
	Limit int

	in     *Input
	size   float64 // sqrt of the area [mm]
	force  float64 // by which forces are scaled [N]
	forces []float64
	zone   []geom.Point
	other  []geom.Point
	unit   scaled
	before plane // under the preload alone
}

// scaled is the input in units in which its numbers are near one.
type scaled struct {
	outline, hole []geom.Point
	cuts          [][]geom.Point
	rods          []Rod
	k, f          float64
	load          [3]float64
	whole         moments
}

// Result is how the actions are shared.
type Result struct {
	// Whether there is equilibrium, and why not.
	Found  bool
	Reason string
	// The plane u = A + B x + C y by which the plate sinks [mm], per mm for B
	// and C; zero along the neutral axis.
	A, B, C float64
	// The same under the preload alone [mm], per mm for B0 and C0.
	A0, B0, C0 float64
	// Greatest pressure [MPa].
	Peak float64
	// Pressed force [N].
	Pressed float64
	// Area pressed [mm2].
	Area float64
	// Pressure at each corner of the outline [MPa].
	Corners []float64
	// Corners of the pressed zone; of a plate with holes, before they are taken out.
	Zone []geom.Point
	// Tension of each rod [N].
	Rods []float64
	// What is left of N, M_x, M_y over what acts [-].
	Residual float64
	Steps    int
}

// Why there is no equilibrium.
const (
	lifts     = "the plate is lifted and no rods hold it"
	overturns = "the resultant lies outside the plate and no rods hold it"
	exhausted = "the bed's strength and the rods do not balance the actions"
	topples   = "the bed and the rods give way so far that the plate turns over"
	tightened = "the preload alone is more than the bed bears, or stands where it turns the plate over"
	unheld    = "no balance was found: the rods stand where they cannot hold the plate"
)

const (
	mostSteps   = 200
	precision   = 1e-11 // of the scaled residual
	settled     = 1e-9  // at which a step that helps little ends the search
	enough      = 1e-6  // accepted when no step helps any more: a corner that only just touches
	armijo      = 1e-4
	rounding    = 1e-9  // of what the potential is the sum of, by which it may seem to grow
	shrinks     = 0.9   // of the residual, which accepts a step too
	leastPivot  = 1e-12 // of a diagonal
	leastRidge  = 1e-10 // of the trace of the whole bed
	ridgeGrowth = 1e2
	leastStep   = 1e-6
	edgeMargin  = 1e-9
	mostTilt    = 0.1 // rad; the statics is that of a plate that lies flat
)

// Solve shares the actions. Errors: limit.Faults.
//
// Source: statics of a rigid plate on a bed without tension; the least of a
// convex potential by Newton's method.
func (s *Solver) Solve(in *Input) (Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return Result{}, faults
	}
	s.in = in
	s.scale()
	r := Result{Reason: s.tighten()}
	if r.Reason == "" {
		r.Reason = s.impossible()
	}
	if r.Reason != "" {
		return r, nil
	}
	u, residual, steps := s.newton()
	r.Steps, r.Residual = steps, residual
	if !(residual <= enough) {
		r.Reason = unheld
		if in.Bed.Strength > 0 {
			r.Reason = exhausted
		}
		return r, nil
	}
	s.answer(&r, u)
	// Without rods the modulus does not change the forces and may be any.
	if r.Found = len(in.Rods) == 0 || max(math.Abs(r.B), math.Abs(r.C)) <= mostTilt; !r.Found {
		r.Reason = topples
	}
	return r, nil
}

// scale measures lengths in the square root of the area, and forces in the
// greatest of the actions, the preloads and what closes a gap.
func (s *Solver) scale() {
	in, n := s.in, &s.unit
	whole := integrate(in.Outline)
	if len(in.Hole) > 0 {
		whole.add(integrate(in.Hole), -1)
	}
	for _, c := range in.Cuts {
		whole.add(integrate(c), -1)
	}
	s.size = math.Sqrt(whole.a)
	a := &in.Actions
	force := math.Abs(a.N) + (math.Abs(a.Mx)+math.Abs(a.My))/s.size
	for i := range in.Rods {
		r := &in.Rods[i]
		force = max(force, r.Preload, r.Gap*min(r.Stiffness, in.Bed.modulus()*s.size*s.size))
	}
	if force == 0 {
		force = 1
	}
	// Displacements are measured so that the stiffest of bed and rods has one.
	k := in.Bed.modulus() * s.size * s.size
	shrink := func(p, out []geom.Point) []geom.Point {
		out = out[:0]
		for _, v := range p {
			out = append(out, geom.Point{X: v.X / s.size, Y: v.Y / s.size})
		}
		return out
	}
	n.outline, n.hole = shrink(in.Outline, n.outline), shrink(in.Hole, n.hole)
	for len(n.cuts) < len(in.Cuts) {
		n.cuts = append(n.cuts, nil)
	}
	n.cuts = n.cuts[:len(in.Cuts)]
	for i, c := range in.Cuts {
		n.cuts[i] = shrink(c, n.cuts[i])
	}
	n.k, n.f = 1, in.Bed.Strength*s.size*s.size/force
	// Down, and the moments that press the +x and the +y side.
	n.load = [3]float64{-a.N / force, a.My / force / s.size, -a.Mx / force / s.size}
	s.force = force
	n.rods = n.rods[:0]
	for i := range in.Rods {
		r := &in.Rods[i]
		n.rods = append(n.rods, Rod{
			At:        geom.Point{X: r.At.X / s.size, Y: r.At.Y / s.size},
			Stiffness: r.Stiffness / k, Preload: r.Preload / force, Gap: r.Gap * k / force,
		})
	}
	n.whole = integrate(n.outline)
	if len(n.hole) > 0 {
		n.whole.add(integrate(n.hole), -1)
	}
	for _, c := range n.cuts {
		n.whole.add(integrate(c), -1)
	}
}

// tighten has the preload press the bed before the actions come: from then on a rod
// pulls as if it had been tightened so much more on a bed that nothing presses.
//
//	F_0' = F_0 + k_r u_0; in the middle of the plate F_0 + k_r sum F_0/(k A)
func (s *Solver) tighten() string {
	n := &s.unit
	rods, load := n.rods, n.load
	n.load = [3]float64{}
	for i := range rods {
		f := rods[i].Preload
		n.load[0] += f
		n.load[1] += f * rods[i].At.X
		n.load[2] += f * rods[i].At.Y
	}
	if n.load[0] == 0 {
		n.load, s.before = load, plane{}
		return ""
	}
	n.rods = nil
	u, residual := plane{}, math.Inf(1)
	if s.impossible() == "" {
		u, residual, _ = s.newton()
	}
	n.rods, n.load, s.before = rods, load, u
	for i := range rods {
		rods[i].Preload += rods[i].Stiffness * u.at(rods[i].At)
	}
	if !(residual <= enough) {
		return tightened
	}
	return ""
}

// impossible says why there can be no equilibrium, where that is plain.
func (s *Solver) impossible() string {
	n := &s.unit
	if len(n.rods) > 0 {
		return "" // rods inside the outline can balance anything on an elastic bed
	}
	if !(n.load[0] > 0) {
		if n.load == [3]float64{} {
			return ""
		}
		return lifts
	}
	if !inside(n.outline, geom.Point{X: n.load[1] / n.load[0], Y: n.load[2] / n.load[0]}, edgeMargin) {
		return overturns
	}
	if n.f > 0 && n.load[0] > n.f*n.whole.a {
		return exhausted
	}
	return ""
}

// newton returns the plane of least potential in scaled units.
func (s *Solver) newton() (u plane, residual float64, steps int) {
	u = s.bonded()
	now := s.state(u)
	most := mostSteps
	if s.Limit > 0 {
		most = s.Limit
	}
	for ; steps < most && !(now.residual <= precision); steps++ {
		next, moved := now, false
		// Where contact is lost and the rods leave the plate free to turn, the
		// tangent is singular or nearly so: a ridge on it bounds the step.
		for extra := 0.0; !moved && extra <= 1; extra = max(leastRidge, extra*ridgeGrowth) {
			u, next, moved = s.step(u, &now, extra)
		}
		if !moved || now.residual <= settled && next.residual > now.residual/2 {
			break
		}
		now = next
	}
	return u, now.residual, steps
}

// step goes along Newton's direction as far as it helps, with a ridge on the
// tangent of a share of that of the whole bed.
func (s *Solver) step(u plane, now *balance, extra float64) (plane, balance, bool) {
	t := now.tangent
	w := &s.unit.whole
	e := extra * s.unit.k * (w.a + w.xx + w.yy)
	t[0] += e
	t[3] += e
	t[5] += e
	d, ok := solve3(t, now.out)
	if !ok {
		return u, *now, false
	}
	slope := now.out[0]*d[0] + now.out[1]*d[1] + now.out[2]*d[2] // of the potential along -d
	for length := 1.0; length > leastStep; length /= 2 {
		try := plane{u.a - length*d[0], u.b - length*d[1], u.c - length*d[2]}
		next := s.state(try)
		// Near the least the potential has no digits left, and the residual tells more. Far
		// from it a smaller share may be left over from a greater potential, round in circles.
		if next.potential <= now.potential-armijo*length*slope ||
			next.residual < shrinks*now.residual && next.potential <= now.potential+rounding*now.work {
			return try, next, true
		}
	}
	return u, *now, false
}

// bonded returns the plane as if the bed could pull and every rod push, which is
// exact while the whole plate is pressed.
func (s *Solver) bonded() plane {
	n := &s.unit
	m := n.whole
	t := [6]float64{n.k * m.a, n.k * m.x, n.k * m.y, n.k * m.xx, n.k * m.xy, n.k * m.yy}
	g := n.load
	for i := range n.rods {
		r := &n.rods[i]
		addRod(&t, r)
		pull := r.Preload - r.Stiffness*r.Gap
		g[0] += pull
		g[1] += pull * r.At.X
		g[2] += pull * r.At.Y
	}
	d, ok := solve3(t, g)
	if !ok {
		return plane{a: 1}
	}
	return plane{d[0], d[1], d[2]}
}

func addRod(t *[6]float64, r *Rod) {
	k, x, y := r.Stiffness, r.At.X, r.At.Y
	t[0] += k
	t[1] += k * x
	t[2] += k * y
	t[3] += k * x * x
	t[4] += k * x * y
	t[5] += k * y * y
}

// balance is what a plane leaves unbalanced, its potential and tangent.
type balance struct {
	out       [3]float64
	potential float64
	work      float64    // what the potential is the sum of, without signs
	tangent   [6]float64 // a a, a b, a c, b b, b c, c c
	residual  float64
}

func (s *Solver) state(u plane) balance {
	n := &s.unit
	var b balance
	s.press(&b, u, 0, 1)
	if n.f > 0 {
		s.press(&b, u, n.f/n.k, -1)
	}
	acts := max(1, b.out[0]) // what acts in all, of which the residual is a share
	for i := range n.rods {
		r := &n.rods[i]
		t := r.Preload - r.Stiffness*(u.at(r.At)+r.Gap)
		if !(t > 0) {
			continue
		}
		acts += t
		b.out[0] -= t
		b.out[1] -= t * r.At.X
		b.out[2] -= t * r.At.Y
		b.potential += t * t / (2 * r.Stiffness)
		b.work += t * t / (2 * r.Stiffness)
		addRod(&b.tangent, r)
	}
	for i := range b.out {
		b.out[i] -= n.load[i]
		b.residual = max(b.residual, math.Abs(b.out[i])/acts)
	}
	b.work += math.Abs(n.load[0]*u.a) + math.Abs(n.load[1]*u.b) + math.Abs(n.load[2]*u.c)
	b.potential -= n.load[0]*u.a + n.load[1]*u.b + n.load[2]*u.c
	if !(b.residual <= math.MaxFloat64) {
		b.residual = math.Inf(1)
	}
	return b
}

// press adds what the bed does where the plane is above a level: as an elastic
// bed, or with sign -1 what its yielding takes off.
func (s *Solver) press(b *balance, u plane, level, sign float64) {
	n := &s.unit
	s.zone = cut(n.outline, u, level, s.zone[:0])
	m := integrate(s.zone)
	if len(n.hole) > 0 {
		s.other = cut(n.hole, u, level, s.other[:0])
		m.add(integrate(s.other), -1)
	}
	for _, c := range n.cuts {
		s.other = cut(c, u, level, s.other[:0])
		m.add(integrate(s.other), -1)
	}
	k := sign * n.k
	a := u.a - level
	b.out[0] += k * (a*m.a + u.b*m.x + u.c*m.y)
	b.out[1] += k * (a*m.x + u.b*m.xx + u.c*m.xy)
	b.out[2] += k * (a*m.y + u.b*m.xy + u.c*m.yy)
	squares, crossed := a*a*m.a+u.b*u.b*m.xx+u.c*u.c*m.yy, [3]float64{2 * a * u.b * m.x, 2 * a * u.c * m.y, 2 * u.b * u.c * m.xy}
	b.potential += k / 2 * (squares + crossed[0] + crossed[1] + crossed[2])
	b.work += n.k / 2 * (squares + math.Abs(crossed[0]) + math.Abs(crossed[1]) + math.Abs(crossed[2]))
	for i, v := range [6]float64{m.a, m.x, m.y, m.xx, m.xy, m.yy} {
		b.tangent[i] += k * v
	}
}

// solve3 solves a symmetric system by elimination; ok is false when it is
// singular.
func solve3(t [6]float64, g [3]float64) (d [3]float64, ok bool) {
	if !(t[0] > 0) {
		return d, false
	}
	l1, l2 := t[1]/t[0], t[2]/t[0]
	p, q, r := t[3]-l1*t[1], t[4]-l1*t[2], t[5]-l2*t[2]
	g1, g2 := g[1]-l1*g[0], g[2]-l2*g[0]
	if !(p > leastPivot*t[3]) {
		return d, false
	}
	l := q / p
	r -= l * q
	g2 -= l * g1
	if !(r > leastPivot*t[5]) {
		return d, false
	}
	d[2] = g2 / r
	d[1] = (g1 - q*d[2]) / p
	d[0] = (g[0] - t[1]*d[1] - t[2]*d[2]) / t[0]
	return d, true
}

// answer writes the result of a plane in scaled units.
func (s *Solver) answer(r *Result, u plane) {
	in, n := s.in, &s.unit
	force, stress := s.force, s.force/(s.size*s.size)
	sink := force / (in.Bed.modulus() * s.size * s.size)
	r.A, r.B, r.C = u.a*sink, u.b*sink/s.size, u.c*sink/s.size
	r.A0, r.B0, r.C0 = s.before.a*sink, s.before.b*sink/s.size, s.before.c*sink/s.size

	s.forces = s.forces[:0]
	for _, p := range n.outline {
		v := max(0, n.k*u.at(p))
		if n.f > 0 {
			v = min(v, n.f)
		}
		s.forces = append(s.forces, v*stress)
		r.Peak = max(r.Peak, v*stress)
	}
	total := n.load[0]
	for i := range n.rods {
		t := max(0, n.rods[i].Preload-n.rods[i].Stiffness*(u.at(n.rods[i].At)+n.rods[i].Gap))
		total += t
		s.forces = append(s.forces, t*force)
	}
	r.Corners, r.Rods = s.forces[:len(n.outline)], s.forces[len(n.outline):]
	r.Pressed = max(0, total) * force
	s.zone = cut(n.outline, u, 0, s.zone[:0])
	r.Area = integrate(s.zone).a
	if len(n.hole) > 0 {
		s.other = cut(n.hole, u, 0, s.other[:0])
		r.Area -= integrate(s.other).a
	}
	for _, c := range n.cuts {
		s.other = cut(c, u, 0, s.other[:0])
		r.Area -= integrate(s.other).a
	}
	r.Area *= s.size * s.size
	for i := range s.zone {
		s.zone[i].X *= s.size
		s.zone[i].Y *= s.size
	}
	r.Zone = s.zone
}
