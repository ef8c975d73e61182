package weld

import (
	"math"

	"footward.example/footward/internal/limit"
)

const (
	mostSize  = 100.0 // greatest throat or leg that is looked for [mm]
	firstSize = 0.25  // first that is tried above what corrosion takes [mm]
	growth    = 1.2   // from one that is tried to the next
	halvedTo  = 1e-9  // precision of the search, the slack of a verdict
	leastLeft = 1e-3  // throat that corrosion must leave [mm]
)

// need adds the least size that a rated state asks for, all else unchanged: the
// leg of a fillet by the US bases, else the throat. Where stresses simply follow
// the throat it is a proportion; where the size also changes what is effective
// of the weld, utilization is searched. A groove throat beyond the thinner part
// is left out.
//
// Source: the clause of the limit state, turned round.
func (r *Result) need(s limit.State) limit.State {
	if !s.Rated || s.Utilization == 0 {
		return s
	}
	w := &r.in.Weld
	leg := w.Type == Fillet && !isEC(r.in)
	var size float64
	switch {
	case r.proportional(s.Utilization):
		size = max(r.A*s.Utilization, leastLeft) + w.Corrosion
		if leg {
			size /= throatOverLeg
		}
	case isEC(r.in) && !r.Grouped && !r.lapped():
		size = r.shortened(s.Utilization)
	default:
		size = r.search(leg, s.Kind)
	}
	switch {
	case size == 0 || size > greatestSize || w.Type == PartialPenetration && size > r.Thin || !r.fits(size):
		return s
	case leg:
		return s.Need(limit.WeldLeg, size)
	}
	return s.Need(limit.WeldThroat, size)
}

// proportional reports whether strength follows the throat up to that needed.
func (r *Result) proportional(utilization float64) bool {
	switch {
	case r.in.Weld.Type == PartialPenetration && !isEC(r.in):
		return true
	case r.lapped():
		return false
	case isEC(r.in):
		return r.End == 0
	}
	return max(r.W, r.W*utilization)*leastLegs <= r.Length
}

// shortened returns the least throat as made [mm] of a run that loses a throat
// at each end, or 0 where there is none.
//
//	(l - 2 x) (x - corrosion) = u (l - 2 a_0) (a_0 - corrosion), the lesser root x
//
// Source: the clause of the limit state, turned round.
func (r *Result) shortened(utilization float64) float64 {
	l, lost := r.in.Run.Length, r.in.Weld.Corrosion
	b := l + 2*lost
	q := l*lost + utilization*r.Length*r.A
	root := b*b - 8*q
	if !(root >= 0) {
		return 0
	}
	return max(2*q/(b+math.Sqrt(root)), lost+leastLeft)
}

// search returns the least leg or throat as made [mm] for which the utilization
// does not exceed 1, or 0 where there is none. A larger size also shortens what
// is effective of a weld, or lengthens what is effective of a lap.
//
// Source: the clause of the limit state, turned round.
func (r *Result) search(leg bool, k *limit.Kind) float64 {
	in := *r.in
	in.Weld.Leg, in.Weld.Throat = 0, 0
	size, lost := &in.Weld.Throat, in.Weld.Corrosion
	if leg {
		size, lost = &in.Weld.Leg, lost/throatOverLeg
	}
	at := func(v float64) float64 {
		*size = v
		if x := compute(&in); !x.none() {
			return x.used(k)
		}
		return math.Inf(1)
	}
	least := lost + 2*leastLeft
	// As if strength followed the size, from below: first once, then along the
	// secant of what that leaves, which is convex and so stays below the root.
	var before, excess float64
	for v, i := least, 0; i < mostStep && v <= mostSize; i++ {
		u := at(v)
		if i == 0 && u <= 1 || i > 0 && u <= 1+halvedTo/2 && u >= 1-halvedTo {
			return v
		}
		e, next := (v-lost)*(u-1), lost+(v-lost)*u
		if slope := (e - excess) / (v - before); i > 0 && slope < 0 {
			next = v - e/slope
		}
		before, excess = v, e
		v = max(least, lost+(next-lost)*(1+halvedTo/8))
	}
	// Up in small steps until one passes; the last is halved.
	low, high := lost, lost+firstSize
	for at(high) > 1 {
		if low, high = high, lost+growth*(high-lost); !(high <= mostSize) {
			return 0
		}
	}
	for high-low > halvedTo/8*high {
		if middle := (low + high) / 2; at(middle) <= 1 {
			high = middle
		} else {
			low = middle
		}
	}
	return max(high, least)
}

// used returns the utilization of a limit state that can ask for a size.
func (r *Result) used(k *limit.Kind) float64 {
	e, u := &r.EC, &r.US
	switch k {
	case directional:
		return use(e.Directional.Value, e.SRd)
	case normal:
		return use(e.Perp.Value, e.NRd)
	case simplified:
		return use(e.Simplified.Value, e.FwRd)
	default:
		return use(u.Demand, u.Metal)
	}
}

// use returns a utilization that stays finite where no resistance is left.
func use(demand, resistance float64) float64 {
	switch {
	case demand == 0:
		return 0
	case !(resistance > 0):
		return math.MaxFloat64
	}
	return demand / resistance
}
