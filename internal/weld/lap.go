package weld

import (
	"math"

	"footward.example/footward/internal/geom"
)

const (
	parallel = 1e-3 // sine of the angle below which two segments are parallel
	closes   = 0.5  // mm; between the end of a segment of a closed line and the start of the next
)

// lapped reports whether the weld is that of a lap, loaded from its end.
func (r *Result) lapped() bool {
	if r.Grouped {
		return r.in.Group.EndLoaded
	}
	return r.in.Run.EndLoaded
}

// lap returns the length of a lap along its force [mm]: that of a run, or of the
// longest line of a group, from end to end of all segments along it, which cutting
// a line into segments does not shorten.
//
// Source: EN 1993-1-8:2005 4.11(2), L_j; AISC 360-22 J2.2b(d).
func (r *Result) lap() float64 {
	if !r.Grouped {
		return r.in.Run.Length
	}
	longest := 0.0
	for i := range r.in.Group.Segments {
		longest = max(longest, r.line(i))
	}
	return longest
}

// line returns how long the segments along one are from end to end [mm].
func (r *Result) line(i int) float64 {
	segments := r.in.Group.Segments
	ux, uy := direction(&segments[i])
	low, high := math.MaxFloat64, -math.MaxFloat64
	for j := range segments {
		s := &segments[j]
		if vx, vy := direction(s); math.Abs(ux*vy-uy*vx) > parallel {
			continue
		}
		for _, p := range [2]geom.Point{s.A, s.B} {
			at := ux*p.X + uy*p.Y
			low, high = min(low, at), max(high, at)
		}
	}
	return high - low
}

func direction(s *geom.Segment) (x, y float64) {
	l := s.Length()
	return (s.B.X - s.A.X) / l, (s.B.Y - s.A.Y) / l
}

// long reports whether a line along which the weld carries is longer than what
// counts in full in a lap, and the reduction was not asked for.
//
// Source: EN 1993-1-8:2005 4.11(1); AISC 360-22 J2.2b(d).
func (r *Result) long() bool {
	most := longLap * r.A
	if !isEC(r.in) {
		most = endLegs * r.W
	}
	if r.in.Weld.Type == CompletePenetration || r.lapped() || !isEC(r.in) && r.in.Weld.Type != Fillet {
		return false
	}
	found := false
	r.flows(func(at Spot, f Flow) {
		length := r.in.Run.Length
		if r.Grouped {
			length = r.line(at.Segment)
		}
		found = found || f.Along > 0 && length > most
	})
	return found
}

// open returns the first segment that does not start where the one before ends,
// of those that are said to be one closed line; -1: none.
func (g *Group) open() int {
	for i := range g.Segments {
		before := &g.Segments[(i+len(g.Segments)-1)%len(g.Segments)]
		if !(math.Hypot(g.Segments[i].A.X-before.B.X, g.Segments[i].A.Y-before.B.Y) <= closes) {
			return i
		}
	}
	return -1
}
