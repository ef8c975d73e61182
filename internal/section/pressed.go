package section

import (
	"math"

	"footward.example/footward/internal/geom"
)

// Pressure is what presses on the plate from below: over a convex zone, p = P + X x
// + Y y, nowhere negative within it.
type Pressure struct {
	Zone []geom.Point // in either sense
	P    float64      // at the origin [MPa]
	X    float64      // slope along x [N/mm3]
	Y    float64      // slope along y [N/mm3]
}

// WorstPressed returns the section that pressure bends most [Nmm/mm]. Rods that
// pull within the length that it bends relieve it; those beside it do not.
//
// Source: statics; the length at 45 degrees as AISC Design Guide 1 has it of rods.
func WorstPressed(p *Plate, h *Hull, z *Pressure, rods []Rod) Line {
	if len(z.Zone) < 3 || len(h.Corners) == 0 {
		return Line{}
	}
	var e events
	e.turns(h)
	for _, c := range p.Outline {
		e.meets(h, c)
	}
	for _, c := range z.Zone {
		e.meets(h, c)
	}
	for i := range rods {
		if rods[i].Tension > leastTension {
			e.meets(h, rods[i].At)
		}
	}
	angle := e.worst(func(angle float64) float64 { l := PressedAt(p, h, z, rods, angle); return l.Unit })
	return PressedAt(p, h, z, rods, angle)
}

// PressedAt returns the section at an angle [rad] that pressure bends [Nmm/mm].
//
// Source: statics.
func PressedAt(p *Plate, h *Hull, z *Pressure, rods []Rod, angle float64) Line {
	f := h.at(angle)
	moment, low, high := z.beyond(&f)
	var length float64
	if moment > 0 {
		for i := range rods {
			q := f.local(rods[i].At)
			if q.Y > 0 && q.X >= low && q.X <= high {
				moment -= rods[i].Tension * q.Y
			}
		}
		f.low, f.high = p.chord(&f)
		length = min(high-low, p.net(&f))
	}
	l := f.line(length, moment)
	l.Angle = turned(angle)
	return l
}

// beyond returns the moment of the pressure beyond a line about it, and the part of
// the line that 45 degrees from the pressed part reach.
func (z *Pressure) beyond(f *frame) (moment, low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	var m integral
	var first, last geom.Point // along the line and off it
	count := 0
	corner := func(q geom.Point) {
		low, high = min(low, q.X-q.Y), max(high, q.X+q.Y)
		if count == 0 {
			first = q
		} else {
			m.add(last, q)
		}
		last = q
		count++
	}
	n := len(z.Zone)
	a := f.local(z.Zone[n-1])
	for _, c := range z.Zone {
		b := f.local(c)
		if (a.Y > 0) != (b.Y > 0) {
			k := a.Y / (a.Y - b.Y)
			corner(geom.Point{X: a.X + k*(b.X-a.X)})
		}
		if b.Y > 0 {
			corner(b)
		}
		a = b
	}
	if count < 3 {
		return 0, 0, 0
	}
	m.add(last, first)
	// The pressure in the line's own axes: s along it, u off it.
	p := z.P + f.offset*(z.X*f.n.X+z.Y*f.n.Y)
	ps, pu := z.X*f.t.X+z.Y*f.t.Y, z.X*f.n.X+z.Y*f.n.Y
	return math.Abs(p*m.u + ps*m.su + pu*m.uu), low, high
}

// local returns a point along the line (X) and off it (Y).
func (f *frame) local(p geom.Point) geom.Point {
	return geom.Point{X: dot(f.t, p), Y: dot(f.n, p) - f.offset}
}

// integral holds the moments of a polygon that the bending about a line needs.
type integral struct{ u, su, uu float64 }

func (m *integral) add(a, b geom.Point) {
	w := a.X*b.Y - b.X*a.Y
	m.u += w * (a.Y + b.Y) / 6
	m.uu += w * (a.Y*a.Y + a.Y*b.Y + b.Y*b.Y) / 12
	m.su += w * (a.X*b.Y + 2*a.X*a.Y + 2*b.X*b.Y + b.X*a.Y) / 24
}
