package weld

import "math"

// Centre holds what the method of the instantaneous centre gives.
type Centre struct {
	Moment     bool    // whether strengths are moments: torsion without a force
	Force      float64 // resultant force in the plane [N]
	Torsion    float64 // about the centroid, as a magnitude [Nmm]
	Demand     float64 // Force, or Torsion where Moment [N or Nmm]
	Nominal    float64 // nominal strength, of the same kind [N or Nmm]
	Available  float64 // phi or 1/Omega of it [N or Nmm]
	X          float64 // instantaneous centre from the centroid [mm]; 0 where there is no turn
	Y          float64 // [mm]
	Arm        float64 // least eccentricity for which the centre is sought [mm]
	Concentric float64 // strength without turning, where it is used [N]
	AtArm      float64 // strength at the least eccentricity, where it is used [N]
	Between    bool    // whether Nominal lies between these two
	Elements   int     // short pieces of weld
	Converged  bool
}

const (
	elementsMost  = 40   // along the longest segment
	elementsLeast = 4    // along any segment
	elementsAll   = 400  // about as many in the whole group
	nearCentre    = 0.1  // eccentricity over the longest segment below which the strength is interpolated
	plain         = 1e-9 // torsion or force over the other below which it is none
)

// Load-deformation curve of a fillet, theta in degrees, deformations over the
// leg. Source: AISC Manual part 8 (from memory).
const (
	peakShare, peakShift, peakPower = 0.209, 2.0, -0.32
	lastShare, lastShift, lastPower = 1.087, 6.0, -0.65
	lastMost                        = 0.17
	curveA, curveB, curvePower      = 1.9, 0.9, 0.3
)

// Concentric groups of welds along and across the force.
// Source: AISC 360-22 J2.4 (from memory).
const (
	alongWithAcross = 0.85
	acrossAlone     = 1.5
	square          = 1e-3 // sine or cosine below which a weld is along or across
)

// instantaneousCentre returns the strength of the fillet group that turns about
// its instantaneous centre. An element at distance rho from the centre deforms
// by rho times the same turn; the turn is the greatest for which no element
// exceeds its ultimate deformation D_u:
//
//	R = 0.60 F_EXX (1 + 0.5 sin^1.5 theta) (p (1.9 - 0.9 p))^0.3 per throat area
//	p = D/D_m, D_m = 0.209 (theta + 2)^-0.32 w, theta in degrees
//	D_u = 1.087 (theta + 6)^-0.65 w <= 0.17 w
//
// Close to a concentric load (eccentricity below 0.1 of the longest segment) the
// strength is interpolated between that of translation and that at 0.1, since
// the curve itself is not monotone there.
//
// Source: AISC Manual part 8 (from memory; it reproduces printed coefficients of
// two of its tables within 0.7 %).
func (r *Result) instantaneousCentre() Centre {
	a, g := &r.Actions, &r.Group
	torsion := a.T - g.X*a.Vy + g.Y*a.Vx
	force := math.Hypot(a.Vx, a.Vy)
	c := Centre{Force: force, Torsion: math.Abs(torsion), Demand: force}
	if force == 0 && torsion == 0 {
		c.Converged = true
		return c
	}
	s := search{filler: r.in.Weld.Filler.Strength, spread: math.Sqrt((g.Ix + g.Iy) / g.N)}
	longest := r.elements(&s)
	c.Arm, c.Elements = nearCentre*longest, len(s.parts)
	switch arm := math.Abs(torsion); {
	case arm < force*c.Arm:
		c.Between = true
		s.vx, s.vy = a.Vx/force, a.Vy/force
		c.Concentric = s.concentric()
		c.Nominal, c.AtArm, c.Converged = c.Concentric, c.Concentric, true
		if arm > plain*force*c.Arm {
			s.m = math.Copysign(c.Arm, torsion) / s.spread
			s.solve(&c)
			c.AtArm = c.Nominal
			c.Nominal = c.Concentric + (c.AtArm-c.Concentric)*arm/(force*c.Arm)
		}
	case force*s.spread <= plain*arm:
		c.Moment, c.Demand = true, arm
		s.m = math.Copysign(1, torsion)
		s.solve(&c)
		c.Nominal *= s.spread
	default:
		s.vx, s.vy, s.m = a.Vx/force, a.Vy/force, torsion/force/s.spread
		s.solve(&c)
	}
	c.Available = r.US.Factor * c.Nominal
	return c
}

// element is a short piece of fillet.
type element struct {
	x, y   float64 // from the centroid [mm]
	ux, uy float64 // direction of its axis
	l, leg float64 // [mm]
	// Of the motion under trial.
	dx, dy, way float64 // direction and amount of its motion
	theta       float64 // angle of the motion to its axis, in degrees
}

// elements cuts the segments into elements and returns the longest segment [mm].
func (r *Result) elements(s *search) (longest float64) {
	segments := r.in.Group.Segments
	for i := range segments {
		longest = max(longest, segments[i].Length())
	}
	piece := max(longest/elementsMost, r.Group.N/elementsAll)
	for i := range segments {
		g := &segments[i]
		l := g.Length()
		n := max(elementsLeast, int(math.Ceil(l/piece-plain)))
		leg := min(r.W, r.lengthOf(Spot{Segment: i})/leastLegs)
		ux, uy := (g.B.X-g.A.X)/l, (g.B.Y-g.A.Y)/l
		for k := range n {
			at := (float64(k) + 0.5) / float64(n)
			s.parts = append(s.parts, element{
				x: g.A.X + at*(g.B.X-g.A.X) - r.Group.X, y: g.A.Y + at*(g.B.Y-g.A.Y) - r.Group.Y,
				ux: ux, uy: uy, l: l / float64(n), leg: leg,
			})
		}
	}
	return longest
}
