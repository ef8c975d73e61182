package geom_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/material"
)

// points are places on a plate to a tenth of a millimetre, as they are drawn.
func points(t *rapid.T) []geom.Point {
	at := make([]geom.Point, rapid.IntRange(3, 12).Draw(t, "n"))
	c := rapid.IntRange(-5000, 5000)
	for i := range at {
		at[i] = geom.Point{X: float64(c.Draw(t, "x")) / 10, Y: float64(c.Draw(t, "y")) / 10}
	}
	return at
}

func TestSharedForcesBalanceTheActions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := points(t)
		f := rapid.Float64Range(-1e5, 1e5)
		a := geom.Actions{N: f.Draw(t, "N"), Vx: f.Draw(t, "Vx"), Vy: f.Draw(t, "Vy"),
			Mx: 100 * f.Draw(t, "Mx"), My: 100 * f.Draw(t, "My"), T: 100 * f.Draw(t, "T")}
		s := geom.PointGroup(at).Share(&a)
		g := s.Group
		if g.Ix*g.Iy-g.Ixy*g.Ixy < 1e-4*(g.Ix+g.Iy)*(g.Ix+g.Iy) {
			t.Skip("nearly a line")
		}
		var r geom.Actions
		for _, p := range at {
			n := s.Axial(p)
			x, y := s.Shear(p)
			r.N += n
			r.Vx += x
			r.Vy += y
			r.Mx += p.Y * n
			r.My -= p.X * n
			r.T += p.X*y - p.Y*x
		}
		assert.InDelta(t, a.N, r.N, 1e-3)
		assert.InDelta(t, a.Vx, r.Vx, 1e-3)
		assert.InDelta(t, a.Vy, r.Vy, 1e-3)
		assert.InDelta(t, a.Mx, r.Mx, 1)
		assert.InDelta(t, a.My, r.My, 1)
		assert.InDelta(t, a.T, r.T, 1)
	})
}

func TestLineOfPointsCarriesMomentsAlongItOnly(t *testing.T) {
	line := []geom.Point{{X: -100}, {X: 100}}
	s := geom.PointGroup(line).Share(&geom.Actions{My: -2e6})
	assert.True(t, s.Bends)
	assert.InDelta(t, 1e4, s.Axial(line[1]), 1e-6)
	assert.False(t, func() bool { s := geom.PointGroup(line).Share(&geom.Actions{Mx: 1e6}); return s.Bends }())
	one := []geom.Point{{X: 50}}
	s = geom.PointGroup(one).Share(&geom.Actions{N: 1e3})
	assert.False(t, s.Bends, "N at the origin bends a single point off it")
	s = geom.PointGroup(one).Share(&geom.Actions{T: 1e3})
	assert.False(t, s.Turns)
	s = geom.PointGroup([]geom.Point{{}}).Share(&geom.Actions{N: 1e3, Vx: 1e3})
	assert.True(t, s.Bends && s.Turns)
}

func TestNeededThicknessEntersTheNextBand(t *testing.T) {
	grade := &material.SteelGrade{Bands: []material.SteelBand{{UpTo: 16, Fy: 355, Fu: 470}, {UpTo: 40, Fy: 345, Fu: 470}}}
	p := geom.Plate{Corrosion: 2, Steel: material.Steel{Grade: grade}}
	constant := func(v float64) func(fy, fu float64) float64 { return func(_, _ float64) float64 { return v } }
	assert.InDelta(t, 12, p.Needed(constant(10)), 1e-12)
	assert.InDelta(t, 22, p.Needed(constant(20)), 1e-12)
	assert.Zero(t, p.Needed(constant(60)))
	assert.Zero(t, p.Needed(constant(math.NaN())))
	p.Steel = material.Steel{Fy: 300, Fu: 400}
	assert.InDelta(t, 62, p.Needed(constant(60)), 1e-12)
	// Only the weaker band demands more than the thinner band allows.
	assert.InDelta(t, 16, (&geom.Plate{Steel: material.Steel{Grade: grade}}).Needed(func(fy, _ float64) float64 {
		if fy == 355 {
			return 16.1
		}
		return 15
	}), 1e-3)
}

// Line properties of J. E. Shigley, Mechanical Engineering Design, tables of
// weld groups treated as lines (formulas from memory), for b = 3, d = 5.
func TestLineGroupsOfTheHandbook(t *testing.T) {
	const b, d = 3.0, 5.0
	line := func(xy ...float64) (out []geom.Segment) {
		for i := 0; i+3 < len(xy); i += 4 {
			out = append(out, geom.Segment{A: geom.Point{X: xy[i], Y: xy[i+1]}, B: geom.Point{X: xy[i+2], Y: xy[i+3]}})
		}
		return out
	}
	for _, c := range []struct {
		name  string
		lines []geom.Segment
		polar float64
		ix    float64 // 0: not printed
	}{
		{"box", line(0, 0, b, 0, b, 0, b, d, b, d, 0, d, 0, d, 0, 0), (b + d) * (b + d) * (b + d) / 6, d * d / 6 * (3*b + d)},
		{"C", line(0, 0, b, 0, 0, 0, 0, d, 0, d, b, d), 58.55303, 0},
		{"L", line(0, 0, b, 0, 0, 0, 0, d), 28.60417, 0},
		{"two lines", line(0, 0, 0, d, b, 0, b, d), d * (3*b*b + d*d) / 6, d * d * d / 6},
		{"one line", line(0, 0, 0, d), d * d * d / 12, d * d * d / 12},
	} {
		g := geom.LineGroup(c.lines, 0)
		assert.InEpsilon(t, c.polar, g.Ix+g.Iy, 1e-6, c.name)
		if c.ix != 0 {
			assert.InEpsilon(t, c.ix, g.Ix, 1e-12, c.name)
		}
	}
}
