package geom

import "math"

// Group holds the properties of a group of equal points, or of lines, about its
// centroid.
type Group struct {
	N   float64 // number of points [-], or length of the lines [mm]
	X   float64 // centroid [mm]
	Y   float64 // centroid [mm]
	Ix  float64 // sum of (y - Y)^2 [mm2, of lines mm3]
	Iy  float64 // sum of (x - X)^2 [mm2, of lines mm3]
	Ixy float64 // sum of (x - X)(y - Y) [mm2, of lines mm3]
}

// PointGroup returns the properties of a group of points.
func PointGroup(at []Point) Group {
	g := Group{N: float64(len(at))}
	for _, p := range at {
		g.X += p.X / g.N
		g.Y += p.Y / g.N
	}
	for _, p := range at {
		x, y := p.X-g.X, p.Y-g.Y
		g.Ix += y * y
		g.Iy += x * x
		g.Ixy += x * y
	}
	return g
}

// Share is a linear distribution of forces over a group: the axial force at
// (x, y) is Mean + SlopeX (x - X) + SlopeY (y - Y), the shear is the mean shear
// plus Turn times the distance from the centroid, square to it. Over points it
// gives forces, over lines forces per length.
type Share struct {
	Group  Group
	Mean   float64 // N/n [N, of lines N/mm]
	SlopeX float64 // [N/mm, of lines N/mm2]
	SlopeY float64 // [N/mm, of lines N/mm2]
	Vx     float64 // V_x/n [N, of lines N/mm]
	Vy     float64 // V_y/n [N, of lines N/mm]
	Turn   float64 // T/J [N/mm, of lines N/mm2]
	// Whether the group can carry the moments and the torsion at all.
	Bends bool
	Turns bool
}

// straight is how thin a group may be, as a ratio of its inertias, before it
// counts as a line.
const straight = 1e-9

// Share returns how a group shares actions at the origin by the elastic method:
// the moments about the centroid with the full coupling of I_x, I_y and I_xy,
// the torsion by the polar inertia.
//
//	T_i = N/n + alpha (x_i - X) + beta (y_i - Y)
//	V_i = V/n + T/J times the arm
//
// Source: elastic method of bolt and weld groups, statics.
func (g Group) Share(a *Actions) Share {
	s := Share{Group: g, Mean: a.N / g.N, Vx: a.Vx / g.N, Vy: a.Vy / g.N, Bends: true, Turns: true}
	// First moments that the axial forces must have about the centroid.
	mx := -(a.My + g.X*a.N) // sum of T_i (x_i - X)
	my := a.Mx - g.Y*a.N    // sum of T_i (y_i - Y)
	polar := g.Ix + g.Iy
	torsion := a.T - g.X*a.Vy + g.Y*a.Vx
	small := straight * (math.Abs(a.Mx) + math.Abs(a.My) + math.Abs(a.N)*math.Sqrt(polar/g.N))
	switch det := g.Ix*g.Iy - g.Ixy*g.Ixy; {
	case det > straight*polar*polar:
		s.SlopeX = (mx*g.Ix - my*g.Ixy) / det
		s.SlopeY = (my*g.Iy - mx*g.Ixy) / det
	case polar > 0:
		// All points on one line through the centroid, along (ux, uy).
		ux, uy := g.Iy, g.Ixy
		if g.Ix > g.Iy {
			ux, uy = g.Ixy, g.Ix
		}
		l := math.Hypot(ux, uy)
		ux, uy = ux/l, uy/l
		s.Bends = math.Abs(mx*uy-my*ux) <= small
		slope := (mx*ux + my*uy) / polar
		s.SlopeX, s.SlopeY = slope*ux, slope*uy
	default:
		s.Bends = math.Abs(mx)+math.Abs(my) <= small
	}
	if polar > 0 {
		s.Turn = torsion / polar
	} else {
		s.Turns = math.Abs(torsion) <= straight*math.Abs(a.T)
	}
	return s
}

// Axial returns the axial force at a point [N, of lines N/mm].
//
// Source: elastic method of bolt groups.
func (s *Share) Axial(p Point) float64 {
	return s.Mean + s.SlopeX*(p.X-s.Group.X) + s.SlopeY*(p.Y-s.Group.Y)
}

// Shear returns the shear at a point along x and y [N, of lines N/mm].
//
// Source: elastic method of bolt groups.
func (s *Share) Shear(p Point) (x, y float64) {
	return s.Vx - s.Turn*(p.Y-s.Group.Y), s.Vy + s.Turn*(p.X-s.Group.X)
}

// Length returns the length of a segment [mm].
//
// Source: geometry.
func (s *Segment) Length() float64 { return math.Hypot(s.B.X-s.A.X, s.B.Y-s.A.Y) }

// Trimmed returns the segment without a length at each end [mm]; what is
// shorter shrinks to its middle.
func (s *Segment) Trimmed(end float64) Segment {
	l := s.Length()
	if !(l > 2*end) {
		m := Point{(s.A.X + s.B.X) / 2, (s.A.Y + s.B.Y) / 2}
		return Segment{m, m}
	}
	dx, dy := (s.B.X-s.A.X)/l*end, (s.B.Y-s.A.Y)/l*end
	return Segment{Point{s.A.X + dx, s.A.Y + dy}, Point{s.B.X - dx, s.B.Y - dy}}
}

// LineGroup returns the properties of straight segments, each without a length
// at both its ends [mm], by exact integrals along them.
func LineGroup(segments []Segment, end float64) Group {
	var g Group
	var sx, sy float64
	for i := range segments {
		s := segments[i].Trimmed(end)
		l := s.Length()
		g.N += l
		sx += l * (s.A.X + s.B.X) / 2
		sy += l * (s.A.Y + s.B.Y) / 2
	}
	if g.N == 0 {
		return g
	}
	g.X, g.Y = sx/g.N, sy/g.N
	for i := range segments {
		s := segments[i].Trimmed(end)
		l := s.Length()
		dx, dy := s.B.X-s.A.X, s.B.Y-s.A.Y
		mx, my := (s.A.X+s.B.X)/2-g.X, (s.A.Y+s.B.Y)/2-g.Y
		g.Ix += l * (my*my + dy*dy/12)
		g.Iy += l * (mx*mx + dx*dx/12)
		g.Ixy += l * (mx*my + dx*dy/12)
	}
	return g
}

// At returns the same actions, applied at (x, y, z), as seen from the origin.
func (a Actions) At(x, y, z float64) Actions {
	a.Mx += y*a.N - z*a.Vy
	a.My += z*a.Vx - x*a.N
	a.T += x*a.Vy - y*a.Vx
	return a
}
