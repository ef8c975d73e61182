package pad_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/contact"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/pad"
)

// away is how far a place lies outside the column, straight and by the greater of both ways.
func away(c *pad.Column, x, y float64) (straight, square float64) {
	x, y = max(0, math.Abs(x)-c.SizeX/2), max(0, math.Abs(y)-c.SizeY/2)
	return math.Hypot(x, y), max(x, y)
}

// TestPerimeterEnclosesTheCellsNearTheColumn: area inside by counting cells of a grid, and
// length by those of a band along it, both codes.
func TestPerimeterEnclosesTheCellsNearTheColumn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		r, _ := check(t, in)
		for _, p := range []pad.Perimeter{r.Punch, r.Column} {
			if !(p.U > 0) {
				continue
			}
			const parts = 250
			band := p.A / 2
			reach := p.A + 1.2*band
			wide, long := in.Column.SizeX+2*reach, in.Column.SizeY+2*reach
			cell, inside, along := wide*long/parts/parts, 0.0, 0.0
			for i := range parts {
				for j := range parts {
					d, square := away(&in.Column, wide*((float64(i)+0.5)/parts-0.5), long*((float64(j)+0.5)/parts-0.5))
					if in.Design.Basis.US() {
						d = square
					}
					if d <= p.A {
						inside += cell
					}
					if math.Abs(d-p.A) <= band {
						along += cell / 2 / band
					}
				}
			}
			if band < 5*max(wide, long)/parts {
				along = p.U // a few cells, or that of the column itself
			}
			if !(math.Abs(inside-p.Area) <= 0.03*p.Area) {
				t.Fatalf("%g mm2 by cells, %g", inside, p.Area)
			}
			if !(math.Abs(along-p.U) <= 0.05*p.U) {
				t.Fatalf("%g mm by cells, %g", along, p.U)
			}
		}
	})
}

// TestSectionsByCellsAreWithinThoseOfThePad: the pressure of a rigid plate in cells, less
// the pad's own weight, bends and shears no section at the column more than the pad is
// checked for, underside or top; in the kern under a centric load just as much.
func TestSectionsByCellsAreWithinThoseOfThePad(t *testing.T) {
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		in.Actions.Vx, in.Actions.Vy = 0, 0
		centric := rapid.Bool().Draw(t, "centric")
		if centric {
			in.Actions.Mx, in.Actions.My = 0, 0
		}
		r, _ := check(t, in)
		if !r.OnPad || r.Share > 0.9 || !(r.V > 0) {
			return
		}
		compared++
		var solver contact.Solver
		exact, err := solver.Solve(&contact.Input{Outline: contact.Rectangle(in.SizeX, in.SizeY), Bed: contact.Bed{Modulus: 0.1},
			Actions: geom.Actions{N: -r.V, Mx: in.Actions.Mx, My: in.Actions.My}})
		if err != nil || !exact.Found {
			return
		}
		const parts = 80
		// Of the strips beyond each face: moment and shear per width about it.
		var m, v [4]float64
		for i := range parts {
			for j := range parts {
				x, y := in.SizeX*((float64(i)+0.5)/parts-0.5), in.SizeY*((float64(j)+0.5)/parts-0.5)
				p := 0.1*max(0, exact.A+exact.B*x+exact.C*y) - in.Weight/in.SizeX/in.SizeY
				beyond := [4]float64{x - in.Column.SizeX/2, -x - in.Column.SizeX/2, y - in.Column.SizeY/2, -y - in.Column.SizeY/2}
				for k, out := range beyond {
					area := in.SizeX * in.SizeY / parts / parts / [4]float64{in.SizeY, in.SizeY, in.SizeX, in.SizeX}[k]
					if out > 0 {
						m[k], v[k] = m[k]+p*area*out, v[k]+p*area
					}
				}
			}
		}
		for k := range m {
			s := &r.Spans[k/2]
			size := [4]float64{in.SizeX, in.SizeX, in.SizeY, in.SizeY}[k]
			if s.A < size/10 {
				continue // a few cells
			}
			slack := 0.03 * r.Gross * s.A * size / 2
			if m[k] > s.M+slack || -m[k] > s.MTop+slack || v[k] > s.VFace+0.03*r.Gross*size {
				t.Fatalf("side %d: %g Nmm/mm and %g N/mm by cells; %g, top %g, %g", k, m[k], v[k], s.M, s.MTop, s.VFace)
			}
			// The bars of the middle band (ACI 318-19 13.3.3.3) have more than the mean.
			if centric && math.Abs(m[k]-s.M/s.Band) > slack {
				t.Fatalf("side %d: %g by cells, %g", k, m[k], s.M/s.Band)
			}
		}
	})
	assert.Positive(t, compared)
}

// TestMomentTurnedByAnyAngleIsNeverUsedLess than its parts along x and along y alone.
func TestMomentTurnedByAnyAngleIsNeverUsedLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		in.Design.Basis = rapid.SampledFrom([]basis.Basis{basis.Eurocode, basis.USLRFD}).Draw(t, "code")
		m, v, angle := math.Abs(in.Actions.Mx), math.Abs(in.Actions.Vx), rapid.Float64Range(0, 2*math.Pi).Draw(t, "angle")
		load := func(x, y float64) pad.Input {
			out := in
			a := &out.Actions
			a.Vx, a.Vy, a.Mx, a.My = v*x, v*y, -m*y, m*x
			return out
		}
		s, c := math.Sincos(angle)
		whole, _ := check(t, load(c, s))
		_, states := check(t, load(c, s))
		for _, part := range []pad.Input{load(c, 0), load(0, s)} {
			one, before := check(t, part)
			if whole.OnPad && one.OnPad {
				notWorse(t, states, before)
			}
			assert.GreaterOrEqual(t, whole.Share, one.Share*(1-1e-9))
		}
	})
}
