package bed

import "math"

// potential is the potential of freedoms, and what they leave unbalanced.
type potential struct{ value, residual float64 }

// balance writes what a shape leaves unbalanced, its freedoms, and which points
// are on.
func (s *Solver) balance(of *shape) potential {
	g, u := &s.grid, s.u
	s.compose(of)
	clear(s.out)
	s.bend.times(of.bent, s.out)
	value := dot(of.bent, s.out) / 2
	acts := math.Sqrt(dot(s.load, s.load))
	n := 0
	for i := range g.x {
		x := &g.x[i]
		for j := range g.y {
			y := &g.y[j]
			e := g.take(u, i, j)
			var f [16]float64
			for a := range 3 {
				for b := range 3 {
					w := sum(&e, &x.at[a], &y.at[b])
					s.on[n] = w > 0
					if w > 0 {
						p := s.k * x.worth[a] * y.worth[b] * w
						spread(&f, &x.at[a], &y.at[b], p)
						value += p * w / 2
					}
					n++
				}
			}
			g.give(&f, s.out, i, j)
		}
	}
	for i := range s.rods {
		r := &s.rods[i]
		e := g.take(u, r.i, r.j)
		r.pull = max(0, r.preload-r.k*(sum(&e, &r.x, &r.y)+r.gap))
		if s.on[n+i] = r.pull > 0; s.on[n+i] {
			var f [16]float64
			spread(&f, &r.x, &r.y, -r.pull)
			g.give(&f, s.out, r.i, r.j)
			value += r.pull * r.pull / (2 * r.k)
			acts += r.pull
		}
	}
	value -= dot(s.load, u)
	for i := range s.out {
		s.out[i] -= s.load[i]
	}
	residual := 0.0
	if left := math.Sqrt(dot(s.out, s.out)); left > 0 {
		residual = left / acts
	}
	if !(residual <= math.MaxFloat64) {
		residual = math.Inf(1)
	}
	return potential{value, residual}
}

// split takes out of freedoms the plane that fits them on the whole.
func (s *Solver) split(u []float64, out *shape) {
	g := &s.grid
	var a, b, c float64
	count := float64(len(u) / 4)
	for n := 0; n < len(u); n += 4 {
		b += u[n+1] / count
		c += u[n+2] / count
	}
	for i := range len(g.x) + 1 {
		for j := range len(g.y) + 1 {
			n, x, y := 4*g.node(i, j), edge(g.x, i), edge(g.y, j)
			out.bent[n], out.bent[n+1], out.bent[n+2], out.bent[n+3] = u[n]-b*x-c*y, u[n+1]-b, u[n+2]-c, u[n+3]
			a += out.bent[n] / count
		}
	}
	for n := 0; n < len(u); n += 4 {
		out.bent[n] -= a
	}
	out.plane = [3]float64{a, b, c}
}

// compose writes the freedoms of a shape.
func (s *Solver) compose(of *shape) {
	g, p := &s.grid, &of.plane
	copy(s.u, of.bent)
	for i := range len(g.x) + 1 {
		for j := range len(g.y) + 1 {
			n := 4 * g.node(i, j)
			s.u[n] += p[0] + p[1]*edge(g.x, i) + p[2]*edge(g.y, j)
			s.u[n+1] += p[1]
			s.u[n+2] += p[2]
		}
	}
}

// tangent factors the stiffness with the bed and the rods that are on, and a
// share of the bed elsewhere.
func (s *Solver) tangent(ridge float64) bool {
	g := &s.grid
	s.whole.copy(&s.bend)
	copy(s.held, s.on)
	n := 0
	for i := range g.x {
		for j := range g.y {
			x, y := &g.x[i], &g.y[j]
			var share [3][3]float64
			for a := range 3 {
				for b := range 3 {
					share[a][b] = ridge
					if s.on[n] {
						share[a][b] = 1
					}
					share[a][b] *= s.k * x.worth[a] * y.worth[b]
					n++
				}
			}
			k := bedMatrix(x, y, &share)
			g.join(&k, &s.whole, i, j)
		}
	}
	for i := range s.rods {
		r := &s.rods[i]
		if s.on[n+i] {
			var f [16]float64
			spread(&f, &r.x, &r.y, 1)
			var k matrix
			for p := range 16 {
				for q := range p + 1 {
					k[p][q] = r.k * f[p] * f[q]
				}
			}
			g.join(&k, &s.whole, r.i, r.j)
		}
	}
	return s.whole.factor()
}
