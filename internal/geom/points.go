package geom

import "math"

// Points are the properties of a group of equal points about its centroid.
type Points struct {
	N   float64 // number of points [-]
	X   float64 // centroid [mm]
	Y   float64 // centroid [mm]
	Ix  float64 // sum of (y - Y)^2 [mm2]
	Iy  float64 // sum of (x - X)^2 [mm2]
	Ixy float64 // sum of (x - X)(y - Y) [mm2]
}

// PointGroup returns the properties of a group of points.
func PointGroup(at []Point) Points {
	g := Points{N: float64(len(at))}
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

// Share is a linear distribution of forces over a group of points: the axial
// force at (x, y) is Mean + SlopeX (x - X) + SlopeY (y - Y), the shear is the
// mean shear plus Turn times the distance from the centroid, square to it.
type Share struct {
	Group  Points
	Mean   float64 // N/n [N]
	SlopeX float64 // [N/mm]
	SlopeY float64 // [N/mm]
	Vx     float64 // V_x/n [N]
	Vy     float64 // V_y/n [N]
	Turn   float64 // T/J [N/mm]
	// Whether the group can carry the moments and the torsion at all.
	Bends bool
	Turns bool
}

// straight is how thin a group may be, as a ratio of its inertias, before it
// counts as a line.
const straight = 1e-9

// Shared returns how a group of points shares actions at the origin by the
// elastic method: the moments about the centroid with the full coupling of
// I_x, I_y and I_xy, the torsion by the polar inertia.
//
//	T_i = N/n + alpha (x_i - X) + beta (y_i - Y)
//	V_i = V/n + T/J times the arm
//
// Source: elastic method of bolt groups, statics.
func Shared(at []Point, a *Actions) Share {
	g := PointGroup(at)
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

// Axial returns the axial force at a point [N].
//
// Source: elastic method of bolt groups.
func (s *Share) Axial(p Point) float64 {
	return s.Mean + s.SlopeX*(p.X-s.Group.X) + s.SlopeY*(p.Y-s.Group.Y)
}

// Shear returns the shear at a point along x and y [N].
//
// Source: elastic method of bolt groups.
func (s *Share) Shear(p Point) (x, y float64) {
	return s.Vx - s.Turn*(p.Y-s.Group.Y), s.Vy + s.Turn*(p.X-s.Group.X)
}
