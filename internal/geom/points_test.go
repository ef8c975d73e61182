package geom_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/material"
)

func points(t *rapid.T) []geom.Point {
	at := make([]geom.Point, rapid.IntRange(3, 12).Draw(t, "n"))
	c := rapid.Float64Range(-500, 500)
	for i := range at {
		at[i] = geom.Point{X: c.Draw(t, "x"), Y: c.Draw(t, "y")}
	}
	return at
}

func TestSharedForcesBalanceTheActions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := points(t)
		f := rapid.Float64Range(-1e5, 1e5)
		a := geom.Actions{N: f.Draw(t, "N"), Vx: f.Draw(t, "Vx"), Vy: f.Draw(t, "Vy"),
			Mx: 100 * f.Draw(t, "Mx"), My: 100 * f.Draw(t, "My"), T: 100 * f.Draw(t, "T")}
		s := geom.Shared(at, &a)
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
	s := geom.Shared(line, &geom.Actions{My: -2e6})
	assert.True(t, s.Bends)
	assert.InDelta(t, 1e4, s.Axial(line[1]), 1e-6)
	assert.False(t, func() bool { s := geom.Shared(line, &geom.Actions{Mx: 1e6}); return s.Bends }())
	one := []geom.Point{{X: 50}}
	s = geom.Shared(one, &geom.Actions{N: 1e3})
	assert.False(t, s.Bends, "N at the origin bends a single point off it")
	s = geom.Shared(one, &geom.Actions{T: 1e3})
	assert.False(t, s.Turns)
	s = geom.Shared([]geom.Point{{}}, &geom.Actions{N: 1e3, Vx: 1e3})
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
