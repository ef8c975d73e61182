package section

import (
	"math"

	"footward.example/footward/internal/geom"
)

// Plate is what bends.
type Plate struct {
	Outline []geom.Point // convex, in either sense
	// Holes of one diameter, where rods go through; a line that crosses one is
	// shorter by its chord.
	Holes    []geom.Point
	Diameter float64 // of the holes [mm]; 0: none are taken off
}

// Hull is the convex outline within which the plate is held: its corners,
// counter-clockwise, widened by Round. A circle is one corner and its radius.
type Hull struct {
	Corners []geom.Point
	Round   float64 // [mm]
}

// Rectangle returns the corners of a rectangle about the origin.
func Rectangle(sizeX, sizeY float64) [4]geom.Point {
	x, y := sizeX/2, sizeY/2
	return [4]geom.Point{{X: -x, Y: -y}, {X: x, Y: -y}, {X: x, Y: y}, {X: -x, Y: y}}
}

// Line is a section of the plate along a straight line.
type Line struct {
	// Direction in which the part cut off lies, from the x axis towards the y
	// axis [rad], from 0 to 2 pi.
	Angle  float64
	Offset float64 // of the line from the origin in that direction [mm]
	Length float64 // that bends [mm]
	Moment float64 // of what acts beyond it [Nmm]
	Unit   float64 // moment per length [Nmm/mm]
	Count  int     // rods that bend it
	Rod    int     // one of them, counted from 0
	Arm    float64 // of that rod from the line [mm]
}

// frame is a line that touches the hull: n points outwards, t along it.
type frame struct {
	n, t   geom.Point
	offset float64
	// Whether the line lies along a face of the hull, not at a corner or a circle.
	face bool
	// Ends of the line within the plate, along t.
	low, high float64
}

func dot(a, b geom.Point) float64 { return a.X*b.X + a.Y*b.Y }

// onFace is how near to a corner of the hull a line must pass to touch it too, as a
// share of its distance from the origin.
const onFace = 1e-9

// at returns the line at an angle; its ends are not yet known.
func (h *Hull) at(angle float64) frame {
	sin, cos := math.Sincos(angle)
	f := frame{n: geom.Point{X: cos, Y: sin}, t: geom.Point{X: -sin, Y: cos}, offset: math.Inf(-1)}
	second := f.offset
	for _, c := range h.Corners {
		if d := dot(f.n, c); d > f.offset {
			f.offset, second = d, f.offset
		} else {
			second = max(second, d)
		}
	}
	f.face = f.offset-second <= onFace*(math.Abs(f.offset)+h.Round)
	f.offset += h.Round
	return f
}

// towards returns the direction from the nearest corner or face of the hull, without
// its rounding, to a point outside it.
func (h *Hull) towards(p geom.Point) (n geom.Point, ok bool) {
	least := math.Inf(1)
	inside := len(h.Corners) > 2
	for i, a := range h.Corners {
		b := h.Corners[(i+1)%len(h.Corners)]
		d, q := geom.Point{X: b.X - a.X, Y: b.Y - a.Y}, geom.Point{X: p.X - a.X, Y: p.Y - a.Y}
		if k := dot(d, d); k > 0 {
			inside = inside && d.X*q.Y-d.Y*q.X >= 0
			k = min(1, max(0, dot(d, q)/k))
			q = geom.Point{X: q.X - k*d.X, Y: q.Y - k*d.Y}
		}
		if far := math.Hypot(q.X, q.Y); far < least && far > 0 {
			least, n = far, geom.Point{X: q.X / far, Y: q.Y / far}
		}
	}
	return n, !inside && least < math.Inf(1)
}

// chord returns where the line enters and leaves the plate; low is above high where
// it misses it.
func (p *Plate) chord(f *frame) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	n := len(p.Outline)
	if n == 0 {
		return low, high
	}
	a := f.local(p.Outline[n-1])
	for _, c := range p.Outline {
		b := f.local(c)
		if (a.Y > 0) != (b.Y > 0) {
			s := a.X + a.Y/(a.Y-b.Y)*(b.X-a.X)
			low, high = min(low, s), max(high, s)
		}
		a = b
	}
	return low, high
}

// edge returns how far it is from a point within the plate to its edge in a
// direction [mm].
func (p *Plate) edge(at, to geom.Point) float64 {
	far := math.Inf(1)
	for i, a := range p.Outline {
		b := p.Outline[(i+1)%len(p.Outline)]
		n := geom.Point{X: b.Y - a.Y, Y: a.X - b.X}
		off, speed := dot(n, a)-dot(n, at), dot(n, to)
		if off < 0 {
			off, speed = -off, -speed
		}
		if speed > 0 {
			far = min(far, off/speed)
		}
	}
	return far
}

// net returns the length of the line within the plate less the holes that it
// crosses.
func (p *Plate) net(f *frame) float64 {
	length := max(0, f.high-f.low)
	if p.Diameter == 0 {
		return length
	}
	for _, c := range p.Holes {
		away := dot(f.n, c) - f.offset
		if half := p.Diameter*p.Diameter/4 - away*away; half > 0 {
			s, half := dot(f.t, c), math.Sqrt(half)
			length -= max(0, min(f.high, s+half)-max(f.low, s-half))
		}
	}
	return max(0, length)
}

func (f *frame) line(length, moment float64) Line {
	l := Line{Offset: f.offset, Length: length, Moment: moment}
	switch {
	case !(moment > 0):
		l.Moment = 0
	case length > 0:
		l.Unit = moment / length
	default:
		l.Unit = math.Inf(1)
	}
	return l
}
