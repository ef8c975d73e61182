package rod

import (
	"math"

	"footward.example/footward/internal/basis"
)

// Surround is what lies round a hole, seen along the direction of a force.
type Surround struct {
	E1 float64 // nearest edge along the force, either way [mm]
	E2 float64 // nearest edge across it [mm]
	P1 float64 // nearest hole along it [mm]; very large: none
	P2 float64 // nearest hole across it [mm]; very large: none
}

// far stands for a hole that is not there [mm].
const far = 1e9

// surround measures edges and holes round rod i. The edge along the force is
// the nearer of the two, since the force may turn.
func surround(in *Input, i int, alongY bool) Surround {
	p := in.At[i]
	ex := in.Plate.SizeX/2 - math.Abs(p.X)
	ey := in.Plate.SizeY/2 - math.Abs(p.Y)
	s := Surround{E1: ex, E2: ey, P1: far, P2: far}
	if alongY {
		s.E1, s.E2 = ey, ex
	}
	row := 2 * in.Holes.Diameter // holes that near are counted as in line
	for j, q := range in.At {
		if j == i {
			continue
		}
		dx, dy := math.Abs(q.X-p.X), math.Abs(q.Y-p.Y)
		if alongY {
			dx, dy = dy, dx
		}
		if dy < row {
			s.P1 = min(s.P1, dx)
		}
		if dx < row {
			s.P2 = min(s.P2, dy)
		}
	}
	return s
}

// clearance returns the nominal clearance of a hole [mm], beyond which it
// counts as oversized.
//
// EN 1090-2 Table 11: 1 mm up to M14 (M12 and M14 2 mm by EN 1993-1-8 3.6.1(5)),
// 2 mm up to M24, 3 mm above. AISC 360-22 Table J3.3: 1/16 in below 1 in, 1/8 in from there;
// Table J3.3M: 2 mm to M22, 3 mm above.
func clearance(in *Input) float64 {
	d := in.Rod.Thread.Diameter
	if in.Design.Basis.US() {
		if d < 23.9 {
			return 2
		}
		return 3.2
	}
	switch {
	case d < 12:
		return 1
	case d <= 24:
		return 2
	}
	return 3
}

// Oversized reports whether the holes exceed the nominal clearance, so that the
// plate does not bear on the rods.
func Oversized(in *Input) bool {
	return in.Holes.Diameter-in.Rod.Thread.Diameter > clearance(in)+1e-9
}

// WasherThickness returns the thickness of welded washers [mm]; where it is not
// given, that of the plate.
//
// Source: the request, or a cautious choice.
func WasherThickness(in *Input) float64 {
	if in.Holes.WasherThickness > 0 {
		return in.Holes.WasherThickness
	}
	return in.Plate.Thickness
}

// Spacing is the tightest distance of the hole pattern.
type Spacing struct {
	Has      float64 // distance from centre to edge or centre to centre [mm]
	Needs    float64 // least allowed [mm]
	Rod      int     // counted from 0
	ToEdge   bool
	EdgeNeed float64 // least distance to an edge [mm]
	HoleNeed float64 // least distance between holes [mm]
}

const (
	edgeEC    = 1.2     // e_1, e_2 over d_0; EN 1993-1-8:2005 Table 3.3
	spacingEC = 2.4     // the greater of p_1 and p_2 over d_0; EN 1993-1-8:2005 Table 3.3
	spacingUS = 8.0 / 3 // over d; AISC 360-22 J3.4
	edgeThick = 1.25    // over d above 1 1/4 in; AISC 360-22 Table J3.4
	// oversizedEdge is added to the edge distance of an oversized hole [mm]: the
	// greatest C_2 of AISC 360-22 Table J3.5, 1/8 in; a still larger hole adds
	// half of what exceeds the standard one.
	oversizedEdge = 25.4 / 8
)

// edgesUS is AISC 360-22 Table J3.4 in mm: diameter and least edge distance.
var edgesUS = [...][2]float64{
	{12.7, 19.05}, {15.875, 22.225}, {19.05, 25.4}, {22.225, 28.575},
	{25.4, 31.75}, {28.575, 38.1}, {31.75, 41.275},
}

// leastSpacing finds the distance that is tightest against its minimum.
func leastSpacing(in *Input) Spacing {
	s := Spacing{Has: far, Needs: 0, EdgeNeed: edgeEC * in.Holes.Diameter, HoleNeed: spacingEC * in.Holes.Diameter}
	if in.Design.Basis != basis.Eurocode {
		d := in.Rod.Thread.Diameter
		s.HoleNeed, s.EdgeNeed = spacingUS*d, edgeThick*d
		for _, row := range edgesUS {
			if d <= row[0]+1e-6 {
				s.EdgeNeed = row[1]
				break
			}
		}
		if excess := in.Holes.Diameter - d - clearance(in); excess > 1e-9 {
			s.EdgeNeed += max(oversizedEdge, excess/2)
		}
	}
	// Squares of distances order as distances do.
	edge, hole := far, far*far
	edgeRod, holeRod := 0, 0
	for i, p := range in.At {
		e := min(in.Plate.SizeX/2-math.Abs(p.X), in.Plate.SizeY/2-math.Abs(p.Y))
		if e < edge {
			edge, edgeRod = e, i
		}
		for _, q := range in.At[:i] {
			if d := (p.X-q.X)*(p.X-q.X) + (p.Y-q.Y)*(p.Y-q.Y); d < hole {
				hole, holeRod = d, i
			}
		}
	}
	hole = math.Sqrt(hole)
	s.Has, s.Needs, s.Rod, s.ToEdge = edge, s.EdgeNeed, edgeRod, true
	if use(s.HoleNeed, hole) > use(s.EdgeNeed, edge) {
		s.Has, s.Needs, s.Rod, s.ToEdge = hole, s.HoleNeed, holeRod, false
	}
	return s
}
