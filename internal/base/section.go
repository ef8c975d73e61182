package base

import (
	"math"

	"footward.example/footward/internal/contact"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/plate"
	"footward.example/footward/internal/section"
)

// pressure returns what an elastic bed was found to press, raised where a stiffer
// bed presses more.
func (c *column) pressure(solved *shared) section.Pressure {
	if c.in.Modulus == 0 || !solved.Found {
		return section.Pressure{}
	}
	k := c.in.Modulus
	z := section.Pressure{Zone: solved.Zone, P: k * solved.A, X: k * solved.B, Y: k * solved.C}
	peak := 0.0
	for _, p := range z.Zone {
		peak = max(peak, z.P+z.X*p.X+z.Y*p.Y)
	}
	if peak > 0 && solved.highest > peak {
		raise := solved.highest / peak
		z.P, z.X, z.Y = raise*z.P, raise*z.X, raise*z.Y
	}
	return z
}

// sharer finds how support and rods share the actions of a plate for its sections.
type sharer struct {
	in     *plate.Input
	result *plate.Result
	solver contact.Solver
	bed    contact.Input
	of     []int // rod of the plate for each rod of the contact
}

// alike is the stiffness of every rod on a plastic block [N/mm]: it is the same for
// all, so that places alone share the tension, and small beside the block's.
const alike = 5e5

// contact returns what finds the contact of the plate with its support.
func (r *PlateResult) contact() plate.Finder {
	p := &r.in.Plate
	s := &sharer{in: p, result: &r.Plate}
	s.bed = contact.Input{Actions: p.Actions, Bed: contact.Bed{Strength: p.Bearing.Pressure}}
	for i, at := range p.Rods.At {
		if r.Plate.Counts(i) {
			s.bed.Rods = append(s.bed.Rods, contact.Rod{At: at, Stiffness: alike})
			s.of = append(s.of, i)
		}
	}
	if p.Design.Basis.US() {
		return s.whole
	}
	return s.spread
}

// tensions returns the tension of each rod of the plate: by the contact, or by the
// sharing of the base where that is more.
func (s *sharer) tensions(rods []float64) (all []float64, raised bool) {
	all = make([]float64, len(s.in.Rods.At))
	for k, i := range s.of {
		if k < len(rods) {
			all[i] = rods[k]
		}
	}
	own, shared := 0.0, 0.0
	for i := range all {
		own += all[i]
		if s.in.Shared.Known && s.result.Counts(i) {
			shared += s.in.Shared.Tensions[i]
			all[i] = max(all[i], s.in.Shared.Tensions[i])
		}
	}
	return all, shared > own*(1+raisedBy)
}

// raisedBy is by how much the sharing of the base must exceed the own contact to be
// another.
const raisedBy = 1e-3

// exhausted is why there is no equilibrium at the strength available.
const exhausted = "the bearing strength and the rods do not balance the actions"

// solve finds the contact at a share of the strength.
func (s *sharer) solve(share float64) (contact.Result, bool) {
	s.bed.Bed.Strength = share * s.in.Bearing.Pressure
	r, err := s.solver.Solve(&s.bed)
	return r, err == nil && r.Found
}

// safely is how far above the least strength the contact is solved where no more is
// available: at it the plate just begins to tip, and the rods' share is not settled.
const safely = 1.02

// need returns the contact at the strength available, or at what is needed where that
// is not enough, and the share of it that is needed at least; without rods that alone.
func (s *sharer) need(rods bool) (r contact.Result, share float64, ok bool) {
	a := &s.bed.Actions
	bed := section.Bed{Outline: s.bed.Outline, Cuts: s.bed.Cuts}
	least, ok := section.LeastBlock(&bed, s.places(), a)
	if !ok {
		r, _ = s.solve(1) // tells why
		return r, 0, false
	}
	share = least.Pressure / s.in.Bearing.Pressure
	if !rods {
		return r, share, true
	}
	if share <= 1 {
		if r, ok = s.solve(1); ok {
			return r, share, true
		}
	}
	r, ok = s.solve(max(1, safely*share))
	return r, share, ok
}

// places returns where the rods of the contact stand.
func (s *sharer) places() []geom.Point {
	at := make([]geom.Point, len(s.bed.Rods))
	for i := range at {
		at[i] = s.bed.Rods[i].At
	}
	return at
}

// leastShare is the share of the strength below which nothing but rounding presses [-].
const leastShare = 1e-9

// spread finds the contact of the footprint widened by c, a plastic block of the
// bearing strength: EN 1993-1-8 6.2.5 under any moments. Where the base was found to
// pull its rods more, the support presses as much more.
func (s *sharer) spread(c float64, rods bool) plate.Contact {
	s.bed.Outline, s.bed.Cuts = s.in.Spread(c)
	r, share, ok := s.need(rods)
	out := plate.Contact{Found: ok, Reason: r.Reason, Need: share}
	if !ok || !rods && !s.in.Shared.Known {
		return out
	}
	var raised bool
	if !rods {
		r, _, _ = s.need(true)
	}
	if out.Tensions, raised = s.tensions(r.Rods); raised {
		own, press := s.bed, -s.in.Actions.N
		s.bed.Rods = nil
		for i, t := range s.in.Shared.Tensions {
			at, a := s.in.Rods.At[i], &s.bed.Actions
			a.N, a.Mx, a.My = a.N-t, a.Mx-t*at.Y, a.My+t*at.X
			press += t
		}
		// No more than in proportion: where the tensions hardly differ, so does what
		// presses, wherever it presses.
		most := math.Inf(1)
		if share > leastShare && r.Pressed > 0 {
			most = share * press / r.Pressed
		}
		_, more, ok := s.need(false)
		if !ok {
			more = most
		}
		if more = min(more, most); more < math.Inf(1) {
			out.Need = max(out.Need, more)
		}
		s.bed = own
	}
	return out
}

// whole finds the contact of the whole plate: an even block about the resultant while
// that needs no rods, else a block of the bearing strength and rods.
func (s *sharer) whole(float64, bool) plate.Contact {
	p := &s.in.Plate
	s.bed.Outline = contact.Rectangle(p.SizeX, p.SizeY)
	shared := &s.in.Shared
	out := plate.Contact{Pressure: shared.Pressure}
	if z, ok := s.even(); ok {
		out.Found = true
		out.Tensions, _ = s.tensions(nil)
		if !shared.Elastic {
			out.Pressure = z
		}
		return s.raised(out)
	}
	r, need, ok := s.need(true)
	if !ok || need > 1+1e-9 {
		out.Reason, out.Need = exhausted, need
		if !ok {
			out.Reason = r.Reason
		}
		return out
	}
	out.Found = true
	if !shared.Elastic && r.Pressed > 0 {
		out.Pressure = section.Pressure{Zone: append([]geom.Point(nil), r.Zone...), P: r.Pressed / r.Area}
	}
	out.Tensions, _ = s.tensions(r.Rods)
	return s.raised(out)
}

// raised takes the block of the base's sharing where its rods pull more.
func (s *sharer) raised(out plate.Contact) plate.Contact {
	if _, raised := s.tensions(nil); !raised || s.in.Shared.Elastic {
		return out
	}
	sum, own := 0.0, out.Pressure
	for _, t := range s.in.Shared.Tensions {
		sum += t
	}
	// All rods press the plate down on a block of full strength; where that is more
	// than the own block it is taken over the same zone, or the whole plate.
	if press := sum - s.in.Actions.N; press > 0 && len(own.Zone) == 0 {
		p := &s.in.Plate
		out.Pressure = section.Pressure{Zone: contact.Rectangle(p.SizeX, p.SizeY), P: min(s.in.Bearing.Pressure, max(s.in.Shared.Peak, press/(p.SizeX*p.SizeY)))}
	} else if press > 0 {
		out.Pressure.P = max(own.P, s.in.Shared.Peak)
	}
	return out
}

// even finds the even block about the resultant of least pressure that needs no
// rods: the part of the plate that a straight line cuts off with the resultant in
// its middle.
func (s *sharer) even() (z section.Pressure, ok bool) {
	a := &s.in.Actions
	if !(a.N < 0) {
		return z, false
	}
	outline := s.bed.Outline
	b, ok := section.LeastBlock(&section.Bed{Outline: outline}, nil, a)
	if !ok || b.Pressure > s.in.Bearing.Pressure {
		return z, false
	}
	return section.Pressure{Zone: geom.Beyond(outline, b.Toward, b.From), P: b.Pressure}, true
}
