package bed

import (
	"math"

	"footward.example/footward/internal/geom"
)

// Result is how the plate bends and presses.
type Result struct {
	// Relative stiffness l [mm].
	Length float64
	// Greatest overhang of the plate past the outline of the patches a [mm].
	Overhang float64
	// Nodes of the mesh, along y first.
	Nodes []geom.Point
	// Pressure at each node [MPa].
	Pressure []float64
	// Sink of each node, downwards positive [mm].
	Sink []float64
	// Greatest pressure [MPa] and where.
	Peak   float64
	PeakAt geom.Point
	// Greatest sink [mm].
	Deepest float64
	// Sink at the plate's centre [mm].
	Centre float64
	// Area pressed over the area of the plate [-].
	Contact float64
	// Pressed force [N].
	Pressed float64
	// Tension of each rod [N].
	Rods []float64
	// Moments of straight sections x = const and y = const.
	X, Y Bending
	// What is left of N, M_x, M_y over what acts [-].
	Residual float64
	Steps    int
	// Elements along x and along y.
	Elements [2]int
}

// answer writes the result of the freedoms.
func (s *Solver) answer(r *Result) {
	g, in := &s.grid, s.in
	s.balance(&s.now)
	stress := s.k * s.d / (g.unit * g.unit * g.unit) // of a sink in units
	count := len(s.u) / 4
	s.nodes = s.nodes[:0]
	s.numbers = zeros(s.numbers, 2*count+len(s.rods))
	r.Pressure, r.Sink, r.Rods = s.numbers[:count], s.numbers[count:2*count], s.numbers[2*count:]
	for i := range len(g.x) + 1 {
		for j := range len(g.y) + 1 {
			w, n := s.u[4*g.node(i, j)], len(s.nodes)
			s.nodes = append(s.nodes, g.at(i, j))
			r.Sink[n], r.Pressure[n] = w*g.unit, max(0, w*stress)
			r.Deepest = max(r.Deepest, r.Sink[n])
			if r.Pressure[n] > r.Peak {
				r.Peak, r.PeakAt = r.Pressure[n], s.nodes[n]
			}
		}
	}
	r.Nodes = s.nodes
	i, j, sx, sy := g.place(0, 0)
	e := g.take(s.u, i, j)
	x, y := hermite(sx, g.x[i].h), hermite(sy, g.y[j].h)
	r.Centre = sum(&e, &x, &y) * g.unit

	b := s.pressed(r, stress)
	a := in.actions()
	lever := max(in.Plate.SizeX, in.Plate.SizeY)
	acts := math.Abs(b.N) + math.Abs(a.N) + (math.Abs(a.Mx)+math.Abs(a.My))/lever
	for i := range in.Rods {
		t := s.rods[i].pull * s.d / g.unit
		r.Rods[i] = t
		acts += t
		b.N -= t
		b.My -= t * in.Rods[i].At.X
		b.Mx += t * in.Rods[i].At.Y
	}
	if acts > 0 {
		r.Residual = max(math.Abs(b.N+a.N), math.Abs(b.Mx-a.Mx)/lever, math.Abs(b.My-a.My)/lever) / acts
	}
	r.Elements = [2]int{len(g.x), len(g.y)}
	s.bendings(r)
}

// pressed sums what the bed does, by which it is equal to the actions when there
// are no rods: N pressed, M_x and M_y from it.
func (s *Solver) pressed(r *Result, stress float64) (b geom.Actions) {
	g := &s.grid
	s.along = append(s.along[:0], make([][3]float64, len(g.x))...)
	s.across = append(s.across[:0], make([][3]float64, len(g.y))...)
	area := 0.0
	for i := range g.x {
		x := &g.x[i]
		for j := range g.y {
			y := &g.y[j]
			e := g.take(s.u, i, j)
			for m := range 3 {
				for n := range 3 {
					w := sum(&e, &x.at[m], &y.at[n])
					if !(w > 0) {
						continue
					}
					p := w * stress
					at := geom.Point{X: (x.start + gaussAt[m]*x.h) * g.unit, Y: (y.start + gaussAt[n]*y.h) * g.unit}
					if p > r.Peak {
						r.Peak, r.PeakAt = p, at
					}
					r.Deepest = max(r.Deepest, w*g.unit)
					s.along[i][m] += p * y.worth[n] * g.unit
					s.across[j][n] += p * x.worth[m] * g.unit
					f := p * x.worth[m] * y.worth[n] * g.unit * g.unit
					b.N += f
					b.My += f * at.X
					b.Mx -= f * at.Y
				}
			}
			area += positive(&e, x, y)
		}
	}
	r.Pressed = b.N
	r.Contact = min(1, area*g.unit*g.unit/(s.in.Plate.SizeX*s.in.Plate.SizeY))
	return b
}

// positive returns the area of an element that sinks, by four triangles between
// its nodes and its middle.
func positive(e *[16]float64, x, y *line) float64 {
	c := sum(e, &x.at[1], &y.at[1])
	w := [4]float64{e[0], e[4], e[12], e[8]}
	share := 0.0
	for i := range w {
		share += sinks(c, w[i], w[(i+1)%4]) / 4
	}
	return share * x.h * y.h
}

// sinks returns the share of a triangle where a plane through its corners is
// positive.
func sinks(a, b, c float64) float64 {
	// The corner that is alone on its side of zero comes first.
	switch {
	case (a > 0) == (b > 0) && (b > 0) == (c > 0):
		if a > 0 {
			return 1
		}
		return 0
	case (a > 0) == (c > 0):
		a, b, c = b, c, a
	case (a > 0) == (b > 0):
		a, b, c = c, a, b
	}
	cut := a / (a - b) * (a / (a - c))
	if a > 0 {
		return cut
	}
	return 1 - cut
}
