package weld

import (
	"fmt"
	"math"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

const (
	oneLine = 0.1  // mm; how near two segments lie that are one and the same line
	askew   = 0.02 // rad; lines at a greater angle cross
)

// stretch is a piece of a segment, from its start [mm].
type stretch struct{ from, to float64 }

// thrice refuses segments of which more lie on one another than can be: two are the
// fillets on both faces of a part drawn as a line, as in the tables of the AISC Manual
// for k = 0; a closed line never lies on itself.
func (g *Group) thrice(faults *limit.Faults) {
	var on [greatestSegments]stretch
	for i := range g.Segments {
		n := 0
		for j := range i {
			p := common(&g.Segments[i], &g.Segments[j])
			if !(p.to-p.from > closes) {
				continue
			}
			if g.Continuous || p.meets(on[:n]) {
				faults.Add(limit.Geometry, fmt.Sprintf("group.segments[%d]", i),
					fmt.Sprintf("lies on segments[%d] over %.3g mm: of one line only two welds count, on both faces of a part, and of a closed line one", j, p.to-p.from))
				return
			}
			on[n] = p
			n++
		}
	}
}

// meets says whether a stretch has a length in common with any of others.
func (p stretch) meets(others []stretch) bool {
	for _, o := range others {
		if min(p.to, o.to)-max(p.from, o.from) > closes {
			return true
		}
	}
	return false
}

// double says whether two segments lie on one another.
func (g *Group) double() bool {
	for i := range g.Segments {
		for j := range i {
			if p := common(&g.Segments[i], &g.Segments[j]); p.to-p.from > closes {
				return true
			}
		}
	}
	return false
}

// common returns the stretch of s within oneLine of t along the same line.
func common(s, t *geom.Segment) stretch {
	l := s.Length()
	ux, uy := (s.B.X-s.A.X)/l, (s.B.Y-s.A.Y)/l
	a, offA := along(s, ux, uy, t.A)
	b, offB := along(s, ux, uy, t.B)
	if min(offA, offB) > oneLine || max(offA, offB) < -oneLine || math.Abs(offB-offA) > askew*t.Length() {
		return stretch{}
	}
	if d := offB - offA; math.Abs(d) > oneLine {
		// Askew: only what lies within oneLine.
		p, q := (-oneLine-offA)/d, (oneLine-offA)/d
		a, b = a+max(0, min(p, q))*(b-a), a+min(1, max(p, q))*(b-a)
	}
	return stretch{from: max(0, min(a, b)), to: min(l, max(a, b))}
}

// along returns where a point lies along a segment from its start, and off its line.
func along(s *geom.Segment, ux, uy float64, p geom.Point) (at, off float64) {
	x, y := p.X-s.A.X, p.Y-s.A.Y
	return x*ux + y*uy, y*ux - x*uy
}
