package anchor

import (
	"math"
	"slices"

	"footward.example/footward/internal/geom"
)

// box is a rectangle.
type box struct{ x0, y0, x1, y1 float64 }

// union returns the area that boxes cover together.
func union(all []box) float64 {
	xs := make([]float64, 0, 2*len(all))
	for _, b := range all {
		xs = append(xs, b.x0, b.x1)
	}
	slices.Sort(xs)
	slices.SortFunc(all, func(a, b box) int {
		if a.y0 < b.y0 {
			return -1
		}
		return 1
	})
	sum := 0.0
	for i := 0; i+1 < len(xs); i++ {
		middle, end := (xs[i]+xs[i+1])/2, math.Inf(-1)
		for _, b := range all {
			if b.x0 < middle && middle < b.x1 {
				sum += (xs[i+1] - xs[i]) * max(0, b.y1-max(b.y0, end))
				end = max(end, b.y1)
			}
		}
	}
	return sum
}

// The sides of the block, each with the direction outwards.
var sides = [4]struct {
	name string
	out  geom.Point
}{
	{"-x", geom.Point{X: -1}}, {"+x", geom.Point{X: 1}},
	{"-y", geom.Point{Y: -1}}, {"+y", geom.Point{Y: 1}},
}

// along returns the coordinate of a point along a side.
func along(p geom.Point, side int) float64 {
	if side < 2 {
		return p.Y
	}
	return p.X
}

// edges returns the distances of a point from the four sides of the block.
func (in *Input) edges(p geom.Point) [4]float64 {
	b := &in.Block
	x, y := p.X+b.OffsetX, p.Y+b.OffsetY
	return [4]float64{b.SizeX/2 + x, b.SizeX/2 - x, b.SizeY/2 + y, b.SizeY/2 - y}
}

// cones returns the area of the cones about some rods that reach so far, cut off
// at the block.
func (in *Input) cones(rods []int, reach float64) float64 {
	all := make([]box, len(rods))
	for k, i := range rods {
		p, e := in.At[i], in.edges(in.At[i])
		all[k] = box{p.X - min(reach, e[0]), p.Y - min(reach, e[2]), p.X + min(reach, e[1]), p.Y + min(reach, e[3])}
	}
	return union(all)
}

// group is a set of rods that carry something together.
type group struct {
	rods    []int
	force   float64    // sum of their forces
	ex, ey  float64    // eccentricity of the force from their centroid
	spacing float64    // greatest step between neighbours along x or y
	least   float64    // nearest edge
	near    [4]float64 // nearest edge of each side
}

// nothing is a force that counts as none [N].
const nothing = 1e-6

// gather returns the rods with a force, and their group.
func (in *Input) gather(force func(Force) float64) group {
	var rods []int
	for i, f := range in.Each {
		if force(f) > nothing {
			rods = append(rods, i)
		}
	}
	return in.group(rods, force)
}

// group returns what some rods carry together.
func (in *Input) group(rods []int, force func(Force) float64) group {
	g := group{rods: rods, least: math.Inf(1)}
	for s := range g.near {
		g.near[s] = math.Inf(1)
	}
	var cx, cy, fx, fy float64
	for _, i := range rods {
		w, p := force(in.Each[i]), in.At[i]
		g.force += w
		cx, cy = cx+p.X, cy+p.Y
		fx, fy = fx+w*p.X, fy+w*p.Y
		for s, e := range in.edges(p) {
			g.near[s] = min(g.near[s], e)
			g.least = min(g.least, e)
		}
	}
	if n := float64(len(g.rods)); n > 0 {
		g.ex, g.ey = math.Abs(fx/g.force-cx/n), math.Abs(fy/g.force-cy/n)
	}
	g.spacing = max(in.widest(g.rods, 0), in.widest(g.rods, 2))
	return g
}

// places returns the coordinates of rods along a side, sorted.
func (in *Input) places(rods []int, side int) []float64 {
	at := make([]float64, len(rods))
	for k, i := range rods {
		at[k] = along(in.At[i], side)
	}
	slices.Sort(at)
	return at
}

// widest returns the greatest step between rods along a side.
func (in *Input) widest(rods []int, side int) float64 {
	most, at := 0.0, in.places(rods, side)
	for i := 1; i < len(at); i++ {
		most = max(most, at[i]-at[i-1])
	}
	return most
}

// reduced returns the embedment that counts where three or four edges are nearer
// than 1.5 h_ef.
//
// Source: EN 1992-4:2018 7.2.1.4(8); ACI 318-19 17.6.2.1.2.
func (g *group) reduced(h float64) float64 {
	near, most := 0, 0.0
	for _, e := range g.near {
		if e < 1.5*h {
			near++
			most = max(most, e)
		}
	}
	if near < 3 {
		return h
	}
	return min(h, max(most/1.5, g.spacing/3))
}

// sameRow is how much edge distances of rods in one row may differ [mm].
const sameRow = 1.0

// row returns the rods of a list that stand as far from a side as one of them.
func (in *Input) row(rods []int, side int, c1 float64) []int {
	var out []int
	for _, i := range rods {
		if math.Abs(in.edges(in.At[i])[side]-c1) < sameRow {
			out = append(out, i)
		}
	}
	return out
}

// corner returns the distance of the nearest of some rods from the two sides
// beside a side.
func (in *Input) corner(rods []int, side int) float64 {
	least, first := math.Inf(1), 2-side/2*2
	for _, i := range rods {
		e := in.edges(in.At[i])
		least = min(least, e[first], e[first+1])
	}
	return least
}

// farCorner returns the distance of the row from the farther of the two sides
// beside a side.
func (in *Input) farCorner(rods []int, side int) float64 {
	one, two, first := math.Inf(1), math.Inf(1), 2-side/2*2
	for _, i := range rods {
		e := in.edges(in.At[i])
		one, two = min(one, e[first]), min(two, e[first+1])
	}
	return max(one, two)
}

// width returns how much of a side the cones of some rods cover that reach so far
// along it.
func (in *Input) width(rods []int, side int, reach float64) float64 {
	all, first := make([]box, len(rods)), 2-side/2*2
	for k, i := range rods {
		at, e := along(in.At[i], side), in.edges(in.At[i])
		all[k] = box{at - min(reach, e[first]), 0, at + min(reach, e[first+1]), 1}
	}
	return union(all)
}
