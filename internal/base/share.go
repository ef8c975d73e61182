package base

import (
	"math"

	"footward.example/footward/internal/contact"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/rod"
)

// shared is how support and rods share a case, in every way in which they may.
type shared struct {
	contact.Result         // of the bed and the rods as they are given
	highest        float64 // greatest pressure of all ways [MPa]
	most           []float64
	ways           []share // the given one first
}

// share is one way.
type share struct {
	rods    []float64
	pressed float64    // force on the bed [N]
	tilt    [2]float64 // about x and about y [-]
	spread  bool       // on the bed of a stack in which the load spreads
}

// way is one way to share: how stiff bed and rods are and what preload they have.
type way struct {
	in    contact.Input
	tight bool // whether the rods have the preload to which they are tightened
}

// prepare sets up the bed and the rods, which are the same in every case: as they
// are given; with rods that have lost nothing to corrosion, which are stiffer and
// hand on more; with the stiff bed of a stack, which presses more; with the preload
// to which rods are tightened, of which nobody knows how long it lasts.
func (c *column) prepare() {
	b := &c.in.Base
	p := &b.Plate.Plate
	c.bed = contact.Input{Outline: contact.Rectangle(p.SizeX, p.SizeY), Bed: contact.Bed{Modulus: c.in.Modulus}}
	if c.in.Modulus == 0 {
		c.bed.Bed.Strength = c.strength.Pressure
	}
	if b.HasRods {
		c.bed.Rods = c.rodsOf(b.Rod.Corrosion, c.in.Preload)
		c.each, c.pull = make([]rod.Force, len(b.At)), make([]float64, len(b.At))
	}
	c.ways = c.ways[:0]
	for _, bed := range c.beds() {
		for _, loss := range losses(&b.Rod, b.HasRods) {
			for _, preload := range c.preloads() {
				w := way{in: c.bed, tight: preload != c.in.Preload}
				w.in.Bed = bed
				if b.HasRods {
					w.in.Rods = c.rodsOf(loss, preload)
				}
				c.ways = append(c.ways, w)
			}
		}
	}
	if c.tight = c.preload(); c.tight > 0 && b.HasRods {
		w := c.ways[len(c.ways)-1].in
		w.Actions = geom.Actions{}
		if r, err := c.other.Solve(&w); err == nil && r.Found {
			c.tightest = r.Peak
		}
	}
}

// beds returns the bed, and the stiff one where its modulus was found from a stack.
func (c *column) beds() []contact.Bed {
	out := []contact.Bed{c.bed.Bed}
	s := c.foot.stack
	if c.given.Modulus > 0 || c.in.Modulus == 0 || s == nil {
		return out
	}
	p := &c.in.Base.Plate.Plate
	if k := s.Stiffness() / (p.SizeX * p.SizeY); k > c.in.Modulus {
		out = append(out, contact.Bed{Modulus: k})
	}
	return out
}

func losses(r *rod.Rod, has bool) []float64 {
	if has && r.Corrosion > 0 {
		return []float64{r.Corrosion, 0}
	}
	return []float64{r.Corrosion}
}

func (c *column) preloads() []float64 {
	if p := c.preload(); p > c.in.Preload {
		return []float64{c.in.Preload, p}
	}
	return []float64{c.in.Preload}
}

// preload returns the greatest preload of a rod at any time [N].
func (c *column) preload() float64 {
	if c.in.Anchorage.Kind == Through {
		return max(c.in.Preload, c.in.Anchorage.Through.Preload)
	}
	return c.in.Preload
}

func (c *column) rodsOf(loss, preload float64) []contact.Rod {
	b := &c.in.Base
	k := rodModulus(b.Plate.Design.Basis) * b.Rod.Thread.NetArea(loss) / StretchLength(b)
	out := make([]contact.Rod, len(b.At))
	for i, at := range b.At {
		out[i] = contact.Rod{At: at, Stiffness: k, Preload: preload}
	}
	return out
}

// share shares actions at the level of contact. Every rod has at least the preload
// to which it is tightened, and the bed what that presses.
func (c *column) share(a geom.Actions) (shared, error) {
	c.bed.Actions = a
	var out shared
	solved, err := c.solver.Solve(&c.bed)
	out.Result, out.highest = solved, solved.Peak
	if err != nil || !solved.Found {
		return out, err
	}
	out.most = append(c.most[:0], solved.Rods...)
	out.ways = append(c.shares[:0], shareOf(&solved))
	for i := range c.ways[1:] {
		w := &c.ways[1+i]
		w.in.Actions = a
		if c.in.Modulus == 0 {
			w.in.Bed = c.bed.Bed // the strength of the case
		}
		r, err := c.other.Solve(&w.in)
		if err != nil {
			return out, err
		}
		if !r.Found {
			if w.tight {
				out.Found, out.Reason = false, r.Reason
				return out, nil
			}
			continue
		}
		out.highest = max(out.highest, r.Peak)
		for k, t := range r.Rods {
			out.most[k] = max(out.most[k], t)
		}
		out.ways = append(out.ways, shareOf(&r))
		out.ways[len(out.ways)-1].spread = w.in.Bed != c.bed.Bed
	}
	for k := range out.most {
		out.most[k] = max(out.most[k], c.tight)
	}
	out.highest = max(out.highest, c.tightest)
	c.most, c.shares = out.most, out.ways
	return out, nil
}

func shareOf(r *contact.Result) share {
	return share{rods: append([]float64(nil), r.Rods...), pressed: pressedOf(r),
		tilt: [2]float64{math.Abs(r.C), math.Abs(r.B)}}
}

// pulls reports whether any rod is in tension.
func (s *shared) pulls() bool {
	return anyPulls(s.most)
}

func anyPulls(rods []float64) bool {
	for _, t := range rods {
		if t > 0 {
			return true
		}
	}
	return false
}

// nothing is the force on the bed, over all there is, that is left by rounding alone.
const nothing = 1e-6

// pressedOf returns the force on the bed, 0 where it is left by rounding alone [N].
func pressedOf(r *contact.Result) float64 {
	sum := 0.0
	for _, t := range r.Rods {
		sum += t
	}
	if r.Pressed <= nothing*sum {
		return 0
	}
	return r.Pressed
}
