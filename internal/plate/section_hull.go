package plate

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/section"
)

// hull is the outline within which a footprint holds the plate: a rectangle, or a
// point for a pipe, widened by round.
type hull struct {
	at    [4]geom.Point
	n     int
	round float64
}

func (h *hull) corners() []geom.Point { return h.at[:h.n] }

func box(x, y, round float64) hull {
	return hull{at: section.Rectangle(x, y), n: 4, round: round}
}

// outside reports whether a point lies outside the hull.
func (h *hull) outside(p geom.Point) bool {
	if h.n == 1 {
		return math.Hypot(p.X, p.Y) > h.round
	}
	return math.Hypot(max(0, math.Abs(p.X)-h.at[2].X), max(0, math.Abs(p.Y)-h.at[2].Y)) > h.round
}

// bendingLines returns the hull of the pressed side in United States practice.
//
// Source: AISC Manual Part 14.
func (in *Input) bendingLines() hull {
	x, y := in.lines()
	if in.Footprint.Shape == Pipe {
		return hull{n: 1, round: x / 2}
	}
	return box(x, y, 0)
}

// holdingLines returns the hull of the pulled side: by Eurocode the face of the
// footprint and 0.8 sqrt(2) a of its weld, in United States practice the middle of
// flange, wall or plate.
//
// Source: EN 1993-1-8:2005 Figure 6.8; AISC Design Guide 1, 3rd ed. 2024, chapter 4.
func (in *Input) holdingLines() hull {
	f := &in.Footprint
	weld, wall := weldReach*math.Sqrt2*in.weldLeft(), 0.0
	if in.Design.Basis != basis.Eurocode {
		weld, wall = 0, f.Thick
	}
	switch f.Shape {
	case Pipe:
		return hull{n: 1, round: (f.SizeX-wall)/2 + weld}
	case Tube:
		return box(f.SizeX-wall, f.SizeY-wall, weld)
	case ISection:
		return box(f.SizeX, f.SizeY-wall, weld)
	case TwoPlates:
		return box(f.SizeX-wall, f.SizeY, weld)
	}
	return box(f.SizeX, f.SizeY, weld)
}

// inBay returns how far a rod stands off the web of an I-section, or off the nearer
// of two plates, and whether it stands between flanges or plates at all [mm].
func (in *Input) inBay(p geom.Point) (arm float64, ok bool) {
	f := &in.Footprint
	weld, wall := weldReach*math.Sqrt2*in.weldLeft(), 0.0
	if in.Design.Basis != basis.Eurocode {
		weld, wall = 0, 1
	}
	switch x, y := math.Abs(p.X), math.Abs(p.Y); f.Shape {
	case ISection:
		arm = x - f.Web/2 - weld + wall*f.Web/2
		return arm, x > f.Web/2+weld && x <= f.SizeX/2 && y < f.SizeY/2-f.Thick-weld
	case TwoPlates:
		face := f.SizeX/2 - f.Thick
		arm = face - x - weld + wall*f.Thick/2
		return arm, x < face-weld && y <= f.SizeY/2
	}
	return 0, false
}

// Counts reports whether rod i counts where actions are shared for the sections:
// outside the footprint, or between its flanges or plates. Rods on its weld, or
// inside a hollow or solid footprint, are left out.
func (r *Result) Counts(i int) bool {
	h, p := r.in.holdingLines(), r.in.Rods.At[i]
	if h.outside(p) {
		return true
	}
	_, ok := r.in.inBay(p)
	return ok
}

// pressedWithin returns the area of a convex zone within a rectangle about the
// origin [mm2].
func pressedWithin(zone []geom.Point, halfX, halfY float64) float64 {
	var a, b [32]geom.Point
	n := copy(a[:24], zone)
	for _, e := range [4][3]float64{{1, 0, halfX}, {-1, 0, halfX}, {0, 1, halfY}, {0, -1, halfY}} {
		m := 0
		for i := range n {
			p, q := a[i], a[(i+1)%n]
			u, v := e[2]-e[0]*p.X-e[1]*p.Y, e[2]-e[0]*q.X-e[1]*q.Y
			if u > 0 {
				b[m] = p
				m++
			}
			if (u > 0) != (v > 0) {
				k := u / (u - v)
				b[m] = geom.Point{X: p.X + k*(q.X-p.X), Y: p.Y + k*(q.Y-p.Y)}
				m++
			}
		}
		a, n = b, min(m, 24)
	}
	area := 0.0
	for i := range n {
		q := a[(i+1)%n]
		area += a[i].X*q.Y - q.X*a[i].Y
	}
	return math.Abs(area) / 2
}
