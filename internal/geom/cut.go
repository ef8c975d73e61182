package geom

import "math"

// Beyond returns the part of a convex outline beyond a line: where the coordinate toward
// a unit vector is more than from [mm].
//
// Source: geometry.
func Beyond(outline []Point, toward Point, from float64) []Point {
	out := make([]Point, 0, len(outline)+2)
	if math.IsInf(from, -1) {
		return append(out, outline...)
	}
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		u, v := toward.X*a.X+toward.Y*a.Y-from, toward.X*b.X+toward.Y*b.Y-from
		if u > 0 {
			out = append(out, a)
		}
		if (u > 0) != (v > 0) {
			k := u / (u - v)
			out = append(out, Point{X: a.X + k*(b.X-a.X), Y: a.Y + k*(b.Y-a.Y)})
		}
	}
	return out
}
