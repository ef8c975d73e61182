package bed

import (
	"fmt"
	"math"
	"slices"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// Solver bends plates. It keeps its memory from one call to the next, so the
// slices of a Result hold until then. A Solver is for one caller at a time.
type Solver struct {
	// Elements along the longer side, at most 64; 0: 12, or more where the plate is
	// thin or a patch stiff.
	Fineness int
	// Most steps of the search; 0: enough for any case.
	Limit int

	in    *Input
	grid  grid
	d     float64 // bending rigidity that is used [Nmm]
	k     float64 // modulus of the bed in units
	bend  band    // stiffness of the plate alone
	whole band    // with bed and rods, factored
	load  []float64
	now   shape
	try   shape
	step  shape
	out   []float64 // unbalanced
	u     []float64 // all freedoms of the shape last looked at
	on    []bool    // points of the bed that press and rods that pull
	held  []bool    // the same, of the factored matrix
	rods  []rod

	along, across [][3]float64 // pressed force per length at Gauss points
	nodes         []geom.Point
	numbers       []float64
	corners       []float64
}

// shape is a plane by which the plate sinks and the freedoms that bend it. In a
// stiff plate the plane is so much greater that its rounding would bend it, too.
type shape struct {
	plane [3]float64 // u = a + b x + c y
	bent  []float64
}

// rod is a rod in units, and the element that it stands on.
type rod struct {
	k, preload, gap float64
	i, j            int
	x, y            [4]float64
	pull            float64
}

// Unsolved is the error of a plate for which no equilibrium was found.
type Unsolved struct {
	Reason   string
	Steps    int
	Residual float64 // what is left of the forces over the loads [-]
}

// Error says why, and how far the search came.
func (u *Unsolved) Error() string {
	if u.Steps == 0 {
		return u.Reason
	}
	return fmt.Sprintf("%s (%d steps, residual %.1e)", u.Reason, u.Steps, u.Residual)
}

// Why there is no equilibrium.
const (
	lifts     = "the plate is lifted and no rods hold it"
	overturns = "the resultant lies outside the plate and no rods hold it"
	topples   = "the bed and the rods give way so far that the plate turns over"
	tightened = "the preload alone stands where the bed does not balance it"
	narrow    = "a stiff patch is narrower than the mesh"
	unsettled = "the pressed area did not converge"
)

const (
	mostSteps   = 100
	precision   = 1e-10 // of the residual
	settled     = 1e-8  // at which a step that helps little ends the search
	enough      = 1e-6  // accepted when no step helps any more
	armijo      = 1e-4
	shrinks     = 0.9  // of the residual, which accepts a step too
	leastRidge  = 1e-9 // of the bed, where it does not press
	ridgeGrowth = 1e2
	leastStep   = 1e-4
	edgeMargin  = 1e-9
	mostTilt    = 0.1 // rad; the statics is that of a plate that lies flat
	// D/(k L^4) above which the plate is rigid for the bed: it is taken as no
	// stiffer, which changes pressures by less than 1e-4.
	stiffest = 1e3
	// D under a stiff patch over that of the plate.
	stiffening = 1e3
)

// Solve bends the plate. Errors: limit.Faults, *Unsolved.
//
// Source: Kirchhoff's plate theory; Bogner, Fox and Schmit 1965 (from memory);
// the least of a convex potential by Newton's method.
func (s *Solver) Solve(in *Input) (Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return Result{}, faults
	}
	s.in = in
	p := &in.Plate
	longer := max(p.SizeX, p.SizeY)
	s.d = min(p.Rigidity(), stiffest*in.Modulus*longer*longer*longer*longer)
	if reason := impossible(in); reason != "" {
		return Result{}, &Unsolved{Reason: reason}
	}
	l := RelativeStiffness(p, in.Modulus)
	s.grid.divide(in, s.Fineness, l)
	for i := range in.Patches {
		if p := &in.Patches[i]; p.Stiff && !s.grid.flattens(p) {
			return Result{}, &Unsolved{Reason: narrow}
		}
	}
	s.assemble()
	if !s.tighten() {
		return Result{}, &Unsolved{Reason: tightened}
	}
	residual, steps := s.newton()
	if !(residual <= enough) {
		return Result{}, &Unsolved{Reason: unsettled, Steps: steps, Residual: residual}
	}
	if len(in.Rods) > 0 && !(s.tilt() <= mostTilt) {
		return Result{}, &Unsolved{Reason: topples, Steps: steps, Residual: residual}
	}
	r := Result{Length: l, Overhang: in.overhang(), Steps: steps}
	s.answer(&r)
	return r, nil
}

// impossible says why there can be no equilibrium, where that is plain.
func impossible(in *Input) string {
	a := in.actions()
	switch {
	case len(in.Rods) > 0 || a.N == 0 && a.Mx == 0 && a.My == 0:
		return ""
	case !(a.N < 0):
		return lifts
	case !(math.Abs(a.My) < -a.N*in.Plate.SizeX*(0.5-edgeMargin) && math.Abs(a.Mx) < -a.N*in.Plate.SizeY*(0.5-edgeMargin)):
		return overturns
	}
	return ""
}

// zeros returns a slice of n zeros in the memory of v.
func zeros(v []float64, n int) []float64 {
	v = slices.Grow(v[:0], n)[:n]
	clear(v)
	return v
}

// assemble writes stiffness, loads and rods in units: lengths in those of the
// grid, D as one.
func (s *Solver) assemble() {
	g, in := &s.grid, s.in
	n, width := g.freedoms()
	s.bend.reset(n, width)
	s.k = in.Modulus * math.Pow(g.unit, 4) / s.d
	for i := range g.x {
		for j := range g.y {
			k := plateMatrix(&g.x[i], &g.y[j], in.Plate.Nu)
			if in.stiff((g.x[i].start+g.x[i].end)/2*g.unit, (g.y[j].start+g.y[j].end)/2*g.unit) {
				k.times(stiffening)
			}
			g.join(&k, &s.bend, i, j)
		}
	}
	s.load = zeros(s.load, n)
	for i := range in.Patches {
		s.press(&in.Patches[i])
	}
	s.rods = s.rods[:0]
	for i := range in.Rods {
		r := &in.Rods[i]
		u := rod{k: r.Stiffness * g.unit * g.unit / s.d, preload: r.Preload * g.unit / s.d, gap: r.Gap / g.unit}
		var sx, sy float64
		u.i, u.j, sx, sy = g.place(r.At.X/g.unit, r.At.Y/g.unit)
		u.x, u.y = hermite(sx, g.x[u.i].h), hermite(sy, g.y[u.j].h)
		s.rods = append(s.rods, u)
	}
	points := 9*len(g.x)*len(g.y) + len(s.rods)
	s.on = slices.Grow(s.on[:0], points)[:points]
	s.held = slices.Grow(s.held[:0], points)[:points]
	s.u, s.out = zeros(s.u, n), zeros(s.out, n)
	for _, v := range []*shape{&s.now, &s.try, &s.step} {
		v.bent = zeros(v.bent, n)
	}
}

// press adds the pressure of a patch, integrated exactly where it lies.
func (s *Solver) press(p *Patch) {
	g := &s.grid
	x, y, bx, by := p.At.X/g.unit, p.At.Y/g.unit, p.SizeX/g.unit, p.SizeY/g.unit
	area := bx * by
	even := -p.N * g.unit / s.d / area
	slopeX, slopeY := 12*p.My/s.d/(area*bx*bx), -12*p.Mx/s.d/(area*by*by)
	for i := range g.x {
		if !(g.x[i].end > x-bx/2 && g.x[i].start < x+bx/2) {
			continue
		}
		fx, firstX := g.x[i].integral(x-bx/2, x+bx/2, x)
		for j := range g.y {
			if !(g.y[j].end > y-by/2 && g.y[j].start < y+by/2) {
				continue
			}
			fy, firstY := g.y[j].integral(y-by/2, y+by/2, y)
			var e [16]float64
			spread(&e, &fx, &fy, even)
			spread(&e, &firstX, &fy, slopeX)
			spread(&e, &fx, &firstY, slopeY)
			g.give(&e, s.load, i, j)
		}
	}
}

// newton finds the freedoms of least potential.
func (s *Solver) newton() (residual float64, steps int) {
	// As if the bed could pull and every rod push, which is exact while all do.
	for i := range s.on {
		s.on[i] = true
	}
	copy(s.u, s.load)
	for i := range s.rods {
		r := &s.rods[i]
		var e [16]float64
		spread(&e, &r.x, &r.y, r.preload-r.k*r.gap)
		s.grid.give(&e, s.u, r.i, r.j)
	}
	if !s.tangent(0) {
		return math.Inf(1), 1
	}
	s.whole.solve(s.u)
	s.split(s.u, &s.now)
	now := s.balance(&s.now)
	limit := mostSteps
	if s.Limit > 0 {
		limit = s.Limit
	}
	for steps = 1; steps < limit && !(now.residual <= precision); steps++ {
		next, moved := now, false
		for ridge := 0.0; !moved && ridge <= 1; ridge = max(leastRidge, ridge*ridgeGrowth) {
			next, moved = s.advance(&now, ridge)
		}
		if !moved {
			break
		}
		stays := now.residual <= settled && next.residual > now.residual/2
		now = next
		if stays {
			break
		}
	}
	return now.residual, steps
}

// advance goes along Newton's direction as far as it helps.
func (s *Solver) advance(now *potential, ridge float64) (potential, bool) {
	if ridge > 0 || !slices.Equal(s.on, s.held) {
		if !s.tangent(ridge) {
			return *now, false
		}
	}
	copy(s.u, s.out)
	s.whole.solve(s.u)
	slope := dot(s.u, s.out)
	s.split(s.u, &s.step)
	for length := 1.0; length > leastStep; length /= 2 {
		for i := range s.try.plane {
			s.try.plane[i] = s.now.plane[i] - length*s.step.plane[i]
		}
		for i := range s.try.bent {
			s.try.bent[i] = s.now.bent[i] - length*s.step.bent[i]
		}
		next := s.balance(&s.try)
		if next.value <= now.value-armijo*length*slope || next.residual < shrinks*now.residual {
			s.now, s.try = s.try, s.now
			return next, true
		}
	}
	s.balance(&s.now)
	return *now, false
}

// tighten has the preload press plate and bed before the actions come: from then on
// a rod pulls as if it had been tightened so much more on a bed that nothing presses.
//
//	F_0' = F_0 + k_r w_0
func (s *Solver) tighten() bool {
	rods, load, preload := s.rods, s.load, 0.0
	for i := range rods {
		preload += rods[i].preload
	}
	if preload == 0 {
		return true
	}
	s.load = make([]float64, len(load))
	for i := range rods {
		r := &rods[i]
		var e [16]float64
		spread(&e, &r.x, &r.y, r.preload)
		s.grid.give(&e, s.load, r.i, r.j)
	}
	s.rods = nil
	residual, _ := s.newton()
	s.compose(&s.now)
	for i := range rods {
		r := &rods[i]
		e := s.grid.take(s.u, r.i, r.j)
		r.preload += r.k * sum(&e, &r.x, &r.y)
	}
	s.rods, s.load = rods, load
	return residual <= enough
}

// tilt returns the greatest slope of the plate's middle plane at the nodes.
func (s *Solver) tilt() float64 {
	most := 0.0
	for n := 0; n < len(s.u); n += 4 {
		most = max(most, math.Abs(s.u[n+1]), math.Abs(s.u[n+2]))
	}
	return most
}
