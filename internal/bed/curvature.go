package bed

import "math"

// superconvergent is where along an element curvatures are most exact.
var superconvergent = [2]float64{0.5 - 0.5/math.Sqrt(3), 0.5 + 0.5/math.Sqrt(3)}

// stencil is four places along a direction and their weights of a cubic.
type stencil struct {
	element [4]int
	share   [4]float64
	weight  [4]float64
}

// around returns the stencil for a point of the lines.
func around(l []line, v float64) stencil {
	i, share := 0, 0.0
	for i+1 < len(l) && v > l[i].end {
		i++
	}
	share = (v - l[i].start) / l[i].h
	first := 2*i - 2
	switch {
	case share > superconvergent[1]:
		first = 2 * i
	case share > superconvergent[0]:
		first = 2*i - 1
	}
	first = max(0, min(first, 2*len(l)-4))
	var s stencil
	var at [4]float64
	for k := range 4 {
		e := (first + k) / 2
		s.element[k], s.share[k] = e, superconvergent[(first+k)%2]
		at[k] = l[e].start + s.share[k]*l[e].h
	}
	for k := range 4 {
		s.weight[k] = 1
		for m := range 4 {
			if m != k {
				s.weight[k] *= (v - at[m]) / (at[k] - at[m])
			}
		}
	}
	return s
}

// local returns the moments per width at a point [Nmm/mm], by a cubic through
// the curvatures where the elements have them best.
func (s *Solver) local(x, y float64) (mx, my float64) {
	g := &s.grid
	a, b := around(g.x, x/g.unit), around(g.y, y/g.unit)
	var cx, cy float64
	for i := range 4 {
		hx := g.x[a.element[i]].h
		fx, bx := hermite(a.share[i], hx), bends(a.share[i], hx)
		for j := range 4 {
			hy := g.y[b.element[j]].h
			fy, by := hermite(b.share[j], hy), bends(b.share[j], hy)
			e := g.take(s.now.bent, a.element[i], b.element[j])
			w := a.weight[i] * b.weight[j]
			cx += w * sum(&e, &bx, &fy)
			cy += w * sum(&e, &fx, &by)
		}
	}
	nu := s.in.Plate.Nu
	scale := s.d / g.unit
	return 0 - scale*(cx+nu*cy), 0 - scale*(cy+nu*cx)
}
