package bed

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/geom"
)

// supported returns a square plate of 100 mm without a bed, with D = 1 in units
// of the mesh, under a patch of 1 N or over all of it, solved with its edges
// supported or clamped. Lengths are in units of the mesh, a = n.
func supported(t *testing.T, n int, p Patch, clamped bool) *Solver {
	in := &Input{Plate: Plate{SizeX: 100, SizeY: 100, Thickness: 1, E: 12 * 0.91, Nu: 0.3}, Patches: []Patch{p}}
	s := &Solver{Fineness: n, in: in, d: 1}
	s.grid.divide(in, n, 1)
	s.assemble()
	s.whole.copy(&s.bend)
	u := s.now.bent
	copy(u, s.load)
	g := &s.grid
	hold := func(f int) { s.whole.add(f, f, 1e12) }
	for i := range n + 1 {
		for j := range n + 1 {
			f := 4 * g.node(i, j)
			alongY, alongX := i == 0 || i == n, j == 0 || j == n
			if alongX || alongY {
				hold(f)
			}
			if alongX || clamped && alongY {
				hold(f + 1)
			}
			if alongY || clamped && alongX {
				hold(f + 2)
			}
			if clamped && (alongX || alongY) {
				hold(f + 3)
			}
		}
	}
	require.True(t, s.whole.factor())
	s.whole.solve(u)
	return s
}

// edge returns the moment per width in the middle of the edge x = a/2.
func (s *Solver) edge() float64 {
	g := &s.grid
	i, j := len(g.x)-1, len(g.y)/2
	x, y := bends(1, g.x[i].h), hermite(0, g.y[j].h)
	e := g.take(s.now.bent, i, j)
	return -sum(&e, &x, &y) * s.d / g.unit
}

// TestPlatesOnTheirEdges holds square plates with nu = 0.3 (Timoshenko and
// Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. 1959, tables 8, 35, 23
// and 37; coefficients from memory, sure, table numbers fairly sure), with their
// series to more digits beside.
func TestPlatesOnTheirEdges(t *testing.T) {
	const n = 16
	const a = 100.0
	all, middle := Patch{SizeX: a, SizeY: a, N: -1}, Patch{SizeX: 1e-4, SizeY: 1e-4, N: -1}
	for _, c := range []struct {
		name                      string
		patch                     Patch
		clamped                   bool
		table, sink, centre, edge float64
	}{
		{"supported, even load", all, false, 0.00406, 0.00406235, 0.0478864, 0},
		{"clamped, even load", all, true, 0.00126, 0.00126532, 0.0229051, -0.0513338},
		{"supported, point load", middle, false, 0.01160, 0.0116008, 0, 0},
		{"clamped, point load", middle, true, 0.00560, 0.0056120, 0, -0.1257},
	} {
		s := supported(t, n, c.patch, c.clamped)
		w := s.now.bent[4*s.grid.node(n/2, n/2)] * s.grid.unit / (a * a)
		m, _ := s.local(0, 0)
		t.Logf("%s: w %.7f (%.1e) M %.6f (%.1e) edge %.5f (%.1e)", c.name, w, w/c.sink-1, m, m/c.centre-1, s.edge(), s.edge()/c.edge-1)
		assert.InEpsilon(t, c.table, w, 0.006, c.name)
		assert.InEpsilon(t, c.sink, w, 0.0015, c.name)
		if c.centre != 0 {
			assert.InEpsilon(t, c.centre, m, 0.001, c.name)
		}
		if c.edge != 0 {
			assert.InEpsilon(t, c.edge, s.edge(), 0.015, c.name)
		}
	}
}

// TestMostIsNotMissedOffTheMiddle: under a moment the plate bends most beside its
// middle, where no place between the nodes has much more.
func TestMostIsNotMissedOffTheMiddle(t *testing.T) {
	for _, c := range []struct{ thick, k, e float64 }{{15, 0.2, 0}, {15, 0.2, 88}, {20, 0.05, 150}, {30, 0.02, 200}} {
		in := &Input{Plate: Plate{SizeX: 1000, SizeY: 1000, Thickness: c.thick, E: 210e3, Nu: 0.3}, Modulus: c.k,
			Patches: []Patch{{SizeX: 532, SizeY: 532, N: -100e3, My: 100e3 * c.e}}}
		var s Solver
		r, err := s.Solve(in)
		require.NoError(t, err)
		most := 0.0
		for x := -500.0; x <= 500; x += 5 {
			m, _ := s.local(x, 0)
			most = max(most, math.Abs(m))
		}
		assert.LessOrEqual(t, math.Abs(r.X.Local), r.X.Most, "%v", c)
		assert.InEpsilon(t, most, r.X.Most, 0.03, "%v", c)
		if c.e > 0 {
			assert.Greater(t, r.X.Most, 1.3*max(math.Abs(r.X.Local), r.X.Sag.Unit, -r.X.Hog.Unit), "%v", c)
		}
	}
}

// TestConstantCurvature holds the patch test on an irregular mesh: w = x^2 + 0.7
// x y + 0.4 y^2 leaves nothing unbalanced within the plate, and has moments of
// -2.24 and -1.4 with D = 1 and nu = 0.3 (derived).
func TestConstantCurvature(t *testing.T) {
	in := &Input{Plate: Plate{SizeX: 10, SizeY: 7, Thickness: 1, E: 12 * 0.91, Nu: 0.3}, Modulus: 1,
		Patches: []Patch{{At: geom.Point{X: 1.3, Y: -0.8}, SizeX: 3.1, SizeY: 2.7}, {At: geom.Point{X: -3, Y: 1}, SizeX: 1, SizeY: 2.2}}}
	s := &Solver{Fineness: 6, in: in, d: 1}
	s.grid.divide(in, 6, 1)
	s.assemble()
	g := &s.grid
	for i := range len(g.x) + 1 {
		for j := range len(g.y) + 1 {
			p, f := g.at(i, j), 4*g.node(i, j)
			x, y := p.X/g.unit, p.Y/g.unit
			copy(s.u[f:f+4], []float64{x*x + 0.7*x*y + 0.4*y*y, 2*x + 0.7*y, 0.7*x + 0.8*y, 0.7})
		}
	}
	s.bend.times(s.u, s.out)
	for i := 1; i < len(g.x); i++ {
		for j := 1; j < len(g.y); j++ {
			for d := range 4 {
				assert.InDelta(t, 0, s.out[4*g.node(i, j)+d], 1e-10)
			}
		}
	}
	s.split(s.u, &s.now)
	for _, at := range []geom.Point{{}, {X: 4.9, Y: -3.4}, {X: -1.1, Y: 2.2}} {
		mx, my := s.local(at.X, at.Y)
		assert.InDelta(t, -2.24, mx*g.unit, 1e-10)
		assert.InDelta(t, -1.4, my*g.unit, 1e-10)
	}
	u, out := slices.Clone(s.u), make([]float64, len(s.u))
	s.compose(&s.now)
	assert.InDeltaSlice(t, u, s.u, 1e-12)
	s.bend.times(s.now.bent, out)
	assert.InDeltaSlice(t, s.out, out, 1e-10, "a plane does not bend the plate")
}

func TestShareOfTriangle(t *testing.T) {
	for _, c := range [][4]float64{{1, 1, 1, 1}, {-1, -1, -1, 0}, {1, -1, -1, 0.25}, {-1, 1, -1, 0.25}, {-1, -1, 1, 0.25},
		{-1, 1, 1, 0.75}, {1, -1, 1, 0.75}, {1, 1, -1, 0.75}, {0, 1, 1, 1}, {0, 0, 0, 0}, {0, -1, 1, 0.5}, {1, 0, 0, 1}} {
		assert.InDelta(t, c[3], sinks(c[0], c[1], c[2]), 1e-15, "%v", c)
	}
}

func TestBandSolves(t *testing.T) {
	var k, l band
	k.reset(40, 7)
	for i := range k.n {
		for j := max(0, i-7); j <= i; j++ {
			k.add(i, j, math.Sin(float64(3*i+j)))
		}
		k.add(i, i, 20)
	}
	want, v := make([]float64, k.n), make([]float64, k.n)
	for i := range want {
		want[i] = math.Cos(float64(i))
	}
	k.times(want, v)
	l.copy(&k)
	require.True(t, l.factor())
	l.solve(v)
	assert.InDeltaSlice(t, want, v, 1e-13)
	k.add(20, 20, -60)
	assert.False(t, k.factor())
}
