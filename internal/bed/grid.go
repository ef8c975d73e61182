package bed

import (
	"math"
	"slices"

	"footward.example/footward/internal/geom"
)

const (
	// Elements along the longer side.
	fewest = 12
	most   = 20
	// The same, with a stiff patch: its corners converge with the first power only.
	fewestStiff = 16
	// What a caller may ask for.
	finest = 64
	// Elements along any side of the plate.
	fewestAcross = 6
	// Elements per length l.
	perLength = 1
	// Edges of patches nearer than this share of an element become one line.
	nearby = 0.1
)

// grid is the lines that divide the plate, in units of about one element.
type grid struct {
	unit   float64 // of lengths [mm]
	x, y   []line
	marks  []float64
	across bool // whether nodes are counted along x first
}

// divide lays lines on the edges of the patches and between them.
func (g *grid) divide(in *Input, fineness int, l float64) {
	p := &in.Plate
	longer := max(p.SizeX, p.SizeY)
	if fineness <= 0 {
		fineness = fewest
		if slices.ContainsFunc(in.Patches, func(p Patch) bool { return p.Stiff }) {
			fineness = fewestStiff
		}
		fineness = min(most, max(fineness, int(math.Ceil(perLength*longer/l))))
	}
	g.unit = longer / float64(min(fineness, finest))
	lines := func(size float64, out []line, edge func(*Patch) (at, size float64)) []line {
		half := size / 2 / g.unit
		g.marks = append(g.marks[:0], -half, half)
		for i := range in.Patches {
			at, b := edge(&in.Patches[i])
			g.marks = append(g.marks, (at-b/2)/g.unit, (at+b/2)/g.unit)
		}
		g.merge(half)
		return subdivide(g.marks, min(1, 2*half/fewestAcross), out[:0])
	}
	g.x = lines(p.SizeX, g.x, func(p *Patch) (float64, float64) { return p.At.X, p.SizeX })
	g.y = lines(p.SizeY, g.y, func(p *Patch) (float64, float64) { return p.At.Y, p.SizeY })
	g.across = len(g.x) < len(g.y)
}

// merge sorts the marks and makes one of those that are close together, in
// between them or on the edge of the plate.
func (g *grid) merge(half float64) {
	m := g.marks
	slices.Sort(m)
	out := m[:0]
	for i := 0; i < len(m); {
		j := i + 1
		for j < len(m) && m[j]-m[j-1] < nearby {
			j++
		}
		v := (m[i] + m[j-1]) / 2
		switch {
		case i == 0:
			v = -half
		case j == len(m):
			v = half
		}
		out = append(out, v)
		i = j
	}
	if len(out) == 1 { // closer together than any element
		out = append(out[:0], -half, half)
	}
	g.marks = out
}

// subdivide appends elements of at most a length between the marks.
func subdivide(marks []float64, length float64, out []line) []line {
	for i := 1; i < len(marks); i++ {
		a, b := marks[i-1], marks[i]
		n := max(1, math.Ceil((b-a)/length-1e-6))
		for j := range int(n) {
			out = append(out, newLine(a+(b-a)*float64(j)/n, a+(b-a)*float64(j+1)/n))
		}
	}
	return out
}

// flattens reports whether a stiff patch covers an element, as it does unless it
// is narrower than the mesh.
func (g *grid) flattens(p *Patch) bool {
	covered := func(l []line, at, size float64) bool {
		return slices.ContainsFunc(l, func(l line) bool { return math.Abs((l.start+l.end)/2*g.unit-at) < size/2 })
	}
	return covered(g.x, p.At.X, p.SizeX) && covered(g.y, p.At.Y, p.SizeY)
}

// node returns the number of a node.
func (g *grid) node(i, j int) int {
	if g.across {
		return j*(len(g.x)+1) + i
	}
	return i*(len(g.y)+1) + j
}

// freedoms returns how many there are, and how far apart those of an element.
func (g *grid) freedoms() (n, width int) {
	return 4 * (len(g.x) + 1) * (len(g.y) + 1), 4*(min(len(g.x), len(g.y))+2) + 3
}

// of returns the first freedom of each node of an element, in the order of side.
func (g *grid) of(i, j int) [4]int {
	return [4]int{4 * g.node(i, j), 4 * g.node(i, j+1), 4 * g.node(i+1, j), 4 * g.node(i+1, j+1)}
}

// take copies the freedoms of an element out of those of the plate.
func (g *grid) take(u []float64, i, j int) (e [16]float64) {
	for k, n := range g.of(i, j) {
		copy(e[4*k:4*k+4], u[n:n+4])
	}
	return e
}

// give adds the freedoms of an element to those of the plate.
func (g *grid) give(e *[16]float64, u []float64, i, j int) {
	for k, n := range g.of(i, j) {
		for d := range 4 {
			u[n+d] += e[4*k+d]
		}
	}
}

// join adds the matrix of an element to that of the plate.
func (g *grid) join(k *matrix, b *band, i, j int) {
	of := g.of(i, j)
	for p := range 16 {
		row := of[p>>2] + p&3
		for q := range p + 1 {
			col := of[q>>2] + q&3
			b.add(max(row, col), min(row, col), k[p][q])
		}
	}
}

// place returns the element that holds a point in units, and the shares of it.
func (g *grid) place(x, y float64) (i, j int, sx, sy float64) {
	find := func(l []line, v float64) (int, float64) {
		i := 0
		for i+1 < len(l) && v > l[i].end {
			i++
		}
		return i, min(1, max(0, (v-l[i].start)/l[i].h))
	}
	i, sx = find(g.x, x)
	j, sy = find(g.y, y)
	return i, j, sx, sy
}

// edge returns a line between elements.
func edge(l []line, i int) float64 {
	if i < len(l) {
		return l[i].start
	}
	return l[i-1].end
}

// at returns a node in mm.
func (g *grid) at(i, j int) geom.Point {
	return geom.Point{X: edge(g.x, i) * g.unit, Y: edge(g.y, j) * g.unit}
}
