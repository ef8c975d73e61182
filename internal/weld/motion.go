package weld

import "math"

// vector is a force in the plane with its moment over the spread of the group,
// or a motion: translation of the centroid and turn times the spread.
type vector struct{ x, y, m float64 }

func (v vector) dot(w vector) float64 { return v.x*w.x + v.y*w.y + v.m*w.m }

func (v vector) size() float64 { return math.Sqrt(v.dot(v)) }

func (v vector) plus(k float64, w vector) vector {
	return vector{v.x + k*w.x, v.y + k*w.y, v.m + k*w.m}
}

func (v vector) unit() vector {
	l := v.size()
	return vector{v.x / l, v.y / l, v.m / l}
}

// across returns two unit vectors square to a unit vector and to each other.
func (v vector) across() (p, q vector) {
	p = vector{-v.y, v.x, 0}
	if math.Abs(v.m) > 0.9 {
		p = vector{0, -v.m, v.y}
	}
	p = p.unit()
	return p, vector{v.y*p.m - v.m*p.y, v.m*p.x - v.x*p.m, v.x*p.y - v.y*p.x}
}

// search looks for the motion in which the elements resist in the direction of
// the load (vx, vy, m), the last over the spread.
type search struct {
	parts     []element
	filler    float64 // [MPa]
	spread    float64 // radius of gyration of the group [mm]
	vx, vy, m float64
	tries     int // motions tried so far
}

const (
	degree   = math.Pi / 180
	settled  = 1e-8 // sine of the angle between load and resistance at which the search ends
	accepted = 1e-5 // up to which its result is used
	mostTurn = 0.5  // greatest step [rad]
	mostStep = 60
	halvings = 30
	mostTry  = 3000 // motions in all, so that a search ends soon in any group
	probe    = 1e-7 // [rad]
)

// ultimate returns D_u over the leg, for an angle in degrees.
func ultimate(theta float64) float64 {
	return min(lastMost, lastShare*math.Pow(theta+lastShift, lastPower))
}

// strength returns the force of the element that moves by deformation, in legs
// [N].
func (e *element) strength(filler, deformation float64) float64 {
	p := deformation / (peakShare * math.Pow(e.theta+peakShift, peakPower))
	shape := math.Pow(max(0, p*(curveA-curveB*p)), curvePower)
	more := 1 + acrossMore*math.Pow(math.Sin(e.theta*degree), acrossPower)
	return metalShare * filler * more * shape * throatOverLeg * e.leg * e.l
}

// resist returns the resultant of the elements in a motion, taken as far as the
// least ductile element allows.
func (s *search) resist(u vector) vector {
	s.tries++
	scale := math.MaxFloat64
	for i := range s.parts {
		e := &s.parts[i]
		e.dx, e.dy = u.x-u.m*e.y/s.spread, u.y+u.m*e.x/s.spread
		e.way = math.Hypot(e.dx, e.dy)
		if !(e.way > 0) {
			continue
		}
		e.dx, e.dy = e.dx/e.way, e.dy/e.way
		e.theta = math.Asin(min(1, math.Abs(e.dx*e.uy-e.dy*e.ux))) / degree
		scale = min(scale, ultimate(e.theta)*e.leg/e.way)
	}
	var f vector
	for i := range s.parts {
		e := &s.parts[i]
		if e.way > 0 {
			r := e.strength(s.filler, e.way*scale/e.leg)
			f = f.plus(r, vector{e.dx, e.dy, (e.x*e.dy - e.y*e.dx) / s.spread})
		}
	}
	return f
}

// solve finds the motion and what it resists. Motion and load count as
// directions: in an elastic group they are the same, so the load's own is where
// the search starts. The curve has kinks, where another element becomes the least
// ductile; a search that ends in one starts again from motions ever farther away.
func (s *search) solve(c *Centre) {
	load := vector{s.vx, s.vy, s.m}
	full := load.size()
	load = load.unit()
	p, q := load.across()
	u, f, off := s.newton(load, load)
	for i := 0; off > accepted && i < len(restarts) && s.tries < mostTry; i++ {
		a := &restarts[i]
		start := load.plus(a[0], p).plus(a[1], q).unit()
		if v, g, o := s.newton(load, start); o < off {
			u, f, off = v, g, o
		}
	}
	c.Converged = off <= accepted
	c.Nominal = f.dot(load) / full
	if u.m != 0 {
		c.X, c.Y = -u.y/u.m*s.spread, u.x/u.m*s.spread
	}
}

// restarts are how far other starts lie from the load, along two directions
// square to it.
var restarts = [...][2]float64{
	{0.2, 0}, {-0.2, 0}, {0, 0.2}, {0, -0.2}, {0.5, 0}, {-0.5, 0}, {0, 0.5}, {0, -0.5},
	{0.5, 0.5}, {-0.5, 0.5}, {0.5, -0.5}, {-0.5, -0.5}, {1.2, 0}, {-1.2, 0}, {0, 1.2}, {0, -1.2},
	{1.5, 1.5}, {-1.5, 1.5}, {1.5, -1.5}, {-1.5, -1.5}, {4, 0}, {-4, 0}, {0, 4}, {0, -4},
}

// newton goes from a start by Newton's method with a difference Jacobian, steps
// limited and halved until they help; where none helps, by what is unbalanced.
// It returns the motion, what it resists, and how far that is off the load.
func (s *search) newton(load, start vector) (u, f vector, size float64) {
	p, q := load.across()
	off := func(f vector) (a, b float64) {
		l := f.size()
		if !(f.dot(load) > 0) {
			return 1, 1
		}
		return f.dot(p) / l, f.dot(q) / l
	}
	u, f = start, s.resist(start)
	a, b := off(f)
	for range mostStep {
		if math.Hypot(a, b) <= settled || s.tries >= mostTry {
			break
		}
		pu, qu := u.across()
		pa, pb := off(s.resist(u.plus(probe, pu).unit()))
		qa, qb := off(s.resist(u.plus(probe, qu).unit()))
		j11, j21, j12, j22 := (pa-a)/probe, (pb-b)/probe, (qa-a)/probe, (qb-b)/probe
		det := j11*j22 - j12*j21
		step := vector{}.plus(-(a*j22-b*j12)/det, pu).plus(-(b*j11-a*j21)/det, qu)
		next, better := s.along(u, step, math.Hypot(a, b), off)
		if !better {
			next, better = s.along(u, vector{}.plus(-a, p).plus(-b, q), math.Hypot(a, b), off)
		}
		if !better {
			break
		}
		u = next
		f = s.resist(u)
		a, b = off(f)
	}
	return u, f, math.Hypot(a, b)
}

// along goes from u by a step, or by less, to where less is unbalanced.
func (s *search) along(u, step vector, size float64, off func(vector) (a, b float64)) (vector, bool) {
	l := step.size()
	if !(l > 0 && l <= math.MaxFloat64) {
		return u, false
	}
	k := min(1, mostTurn/l)
	for range halvings {
		next := u.plus(k, step).unit()
		if a, b := off(s.resist(next)); math.Hypot(a, b) < size {
			return next, true
		}
		k /= 2
	}
	return u, false
}

// concentric returns the strength without turning [N]: the greatest of the plain
// sum without directional increase, which is always allowed; of all elements
// moving alike as far as the least ductile allows; and, where all welds lie along
// or across the force, of what is given for these.
//
//	R_n = max(R_l + R_t, 0.85 R_l + 1.5 R_t)
//
// Source: AISC 360-22 J2.4.
func (s *search) concentric() float64 {
	var along, across, other float64
	for i := range s.parts {
		e := &s.parts[i]
		f := metalShare * s.filler * throatOverLeg * e.leg * e.l
		switch {
		case math.Abs(s.vx*e.uy-s.vy*e.ux) < square:
			along += f
		case math.Abs(s.vx*e.ux+s.vy*e.uy) < square:
			across += f
		default:
			other += f
		}
	}
	best := along + across + other
	if other == 0 {
		best = max(best, alongWithAcross*along+acrossAlone*across)
	}
	alike := s.resist(vector{s.vx, s.vy, 0})
	return max(best, alike.x*s.vx+alike.y*s.vy)
}
