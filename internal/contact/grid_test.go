package contact_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/contact"
	"footward.example/footward/internal/geom"
)

// Another way to the plane of the plate: the bed is cut into cells, and sink and both
// slopes are found by bisection, one within the other. What is potential energy's least
// is balance of N, of M_y and of M_x, each of which grows with its own unknown.

// gridded is a plate whose bed is cells.
type gridded struct {
	in    *contact.Input
	cells []geom.Point
	area  float64 // of one
	// What each rod has before the actions, at the plane of its preload.
	before []float64
}

const cellsAlong = 32

func grid(in *contact.Input) *gridded {
	lx, ly := 2*in.Outline[2].X, 2*in.Outline[2].Y
	g := &gridded{in: in, area: lx * ly / (cellsAlong * cellsAlong)}
	for i := range cellsAlong {
		for j := range cellsAlong {
			g.cells = append(g.cells, geom.Point{
				X: lx * ((float64(i)+0.5)/cellsAlong - 0.5), Y: ly * ((float64(j)+0.5)/cellsAlong - 0.5)})
		}
	}
	return g
}

func (g *gridded) pressure(u float64) float64 {
	p := g.in.Bed.Modulus * max(0, u)
	if f := g.in.Bed.Strength; f > 0 {
		return min(p, f)
	}
	return p
}

func (g *gridded) pull(i int, u float64) float64 {
	r := g.in.Rods[i]
	if g.before == nil {
		return r.Preload
	}
	return max(0, r.Preload-r.Stiffness*(u-g.before[i]+r.Gap))
}

// gives returns how much more the cells and rods hold for each mm of sink.
func (g *gridded) gives(plane [3]float64) (k float64) {
	for _, p := range g.cells {
		if w := plane[0] + plane[1]*p.X + plane[2]*p.Y; w > 0 && (g.in.Bed.Strength == 0 || g.in.Bed.Modulus*w < g.in.Bed.Strength) {
			k += g.in.Bed.Modulus * g.area
		}
	}
	for i, r := range g.in.Rods {
		if g.before != nil && g.pull(i, plane[0]+plane[1]*r.At.X+plane[2]*r.At.Y) > 0 {
			k += r.Stiffness
		}
	}
	return k
}

// holds returns the force up, its moment about y, and about x turned to grow with c.
func (g *gridded) holds(plane [3]float64) (f [3]float64) {
	add := func(v float64, p geom.Point) { f[0] += v; f[1] += v * p.X; f[2] += v * p.Y }
	u := func(p geom.Point) float64 { return plane[0] + plane[1]*p.X + plane[2]*p.Y }
	for _, p := range g.cells {
		if w := u(p); w > 0 {
			add(g.pressure(w)*g.area, p)
		}
	}
	for i, r := range g.in.Rods {
		add(-g.pull(i, u(r.At)), r.At)
	}
	return f
}

// balance finds unknown i and those before it for given others.
func (g *gridded) balance(plane [3]float64, i int, want [3]float64, steps int) [3]float64 {
	at := func(v float64) ([3]float64, bool) {
		p := plane
		p[i] = v
		if i > 0 {
			p = g.balance(p, i-1, want, steps)
		}
		return p, g.holds(p)[i] < want[i]
	}
	size := []float64{1, 1 / g.in.Outline[2].X, 1 / g.in.Outline[2].Y}[i] / 100
	low, high := plane[i]-size, plane[i]+size
	for range 60 {
		if _, less := at(low); less {
			break
		}
		low, high = low-2*(high-low), low
	}
	for range 60 {
		if _, less := at(high); !less {
			break
		}
		low, high = high, high+2*(high-low)
	}
	var p [3]float64
	next := math.NaN()
	for range steps {
		mid := (low + high) / 2
		if next > low && next < high {
			mid = next
		}
		var less bool
		if p, less = at(mid); less {
			low = mid
		} else {
			high = mid
		}
		if i == 0 {
			// N alone is shorter found along its slope.
			step := (want[0] - g.holds(p)[0]) / g.gives(p)
			if next = mid + step; math.Abs(step) <= 1e-12*size {
				break
			}
		}
	}
	return p
}

func (g *gridded) solve() [3]float64 {
	const steps = 40
	for i := range g.in.Rods {
		if g.in.Rods[i].Preload > 0 {
			p := g.balance([3]float64{}, 2, [3]float64{}, steps)
			for _, r := range g.in.Rods {
				g.before = append(g.before, p[0]+p[1]*r.At.X+p[2]*r.At.Y)
			}
			break
		}
	}
	if g.before == nil {
		g.before = make([]float64, len(g.in.Rods))
	}
	a := g.in.Actions
	return g.balance([3]float64{}, 2, [3]float64{-a.N, a.My, -a.Mx}, steps)
}

// TestCellsAndBisectionFindTheSamePlane for drawn plates, elastic and with a strength:
// rods within 1 % of what the rods and the load bring, peak within 3 %.
func TestCellsAndBisectionFindTheSamePlane(t *testing.T) {
	compared := 0
	for seed := 0; compared < 20 && seed < 300; seed++ {
		in := rapid.Custom(draw).Example(seed)
		if seed%3 == 2 {
			in.Bed.Strength = 5 * math.Abs(in.Actions.N) / (4 * in.Outline[2].X * in.Outline[2].Y)
		}
		r := solve(t, in)
		// What presses on a few cells is not the business of cells, nor is a turn by
		// moments beside which the force is nothing that of bisection.
		a := in.Actions
		if !r.Found || r.Area < 0.1*4*in.Outline[2].X*in.Outline[2].Y || math.Hypot(a.Mx, a.My) > 5*math.Abs(a.N)*(in.Outline[2].X+in.Outline[2].Y) {
			continue
		}
		compared++
		g := grid(in)
		p := g.solve()
		scale := math.Abs(in.Actions.N)
		for i := range in.Rods {
			scale = max(scale, r.Rods[i])
		}
		for i, rod := range in.Rods {
			got := g.pull(i, p[0]+p[1]*rod.At.X+p[2]*rod.At.Y)
			assert.InDelta(t, got, r.Rods[i], 0.01*scale, "plate %d, rod %d", seed, i)
		}
		peak := 0.0
		for _, c := range in.Outline {
			peak = max(peak, g.pressure(p[0]+p[1]*c.X+p[2]*c.Y))
		}
		assert.InEpsilon(t, peak, r.Peak, 0.03, "plate %d", seed)
		// The cells' pressure under the solver's own plane balances the load.
		f := g.holds([3]float64{r.A, r.B, r.C})
		arm := max(in.Outline[2].X, in.Outline[2].Y)
		assert.InDelta(t, -a.N, f[0], 0.03*scale, "plate %d: N", seed)
		assert.InDelta(t, a.My, f[1], 0.03*scale*arm, "plate %d: M_y", seed)
		assert.InDelta(t, -a.Mx, f[2], 0.03*scale*arm, "plate %d: M_x", seed)
	}
	require.Equal(t, 20, compared)
}
