package ground_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
)

// cells counts the cells of a square of a size about the origin where both a place and its
// image in the point of the resultant lie on the base: the part that bears about it.
func cells(size float64, on func(x, y float64) bool, ex, ey float64) (area, cx, cy float64) {
	const parts = 400
	cell := size * size / parts / parts
	for i := range parts {
		for j := range parts {
			x, y := size*((float64(i)+0.5)/parts-0.5), size*((float64(j)+0.5)/parts-0.5)
			if on(x, y) && on(2*ex-x, 2*ey-y) {
				area, cx, cy = area+cell, cx+cell*x, cy+cell*y
			}
		}
	}
	return area, cx / area, cy / area
}

// TestEffectiveAreaIsThatOfCellsAboutTheResultant for circle and rectangle, and its
// centre is where the resultant acts.
func TestEffectiveAreaIsThatOfCellsAboutTheResultant(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		radius, e := number("R", 200, 2000), number("e/R", 0, 0.8)
		e *= radius
		area, x, y := cells(2*radius, func(x, y float64) bool { return math.Hypot(x, y) <= radius }, e, 0)
		got := ground.EffectiveCircle(radius, e)
		assert.InEpsilon(t, area, got.Area, 0.02)
		assert.InEpsilon(t, got.Area, got.Width*got.Length, 1e-9)
		assert.InDelta(t, e, x, 0.01*radius)
		assert.InDelta(t, 0, y, 0.01*radius)

		b, l := number("x", 300, 4000), number("y", 300, 4000)
		ex, ey := number("e_x/x", 0, 0.4)*b, number("e_y/y", 0, 0.4)*l
		// One scale for both sides keeps the cells square enough.
		area, x, y = cells(1, func(x, y float64) bool { return math.Abs(x) <= 0.5 && math.Abs(y) <= 0.5 }, ex/b, ey/l)
		got = ground.EffectiveRectangle(b, l, ex, ey)
		assert.InEpsilon(t, area*b*l, got.Area, 0.04)
		assert.InDelta(t, ex/b, x, 0.01)
		assert.InDelta(t, ey/l, y, 0.01)
	})
}

// turned is the force along the base and the moment of one action, turned by an angle.
func turned(in ground.Input, v, m, x, y float64) ground.Input {
	in.Permanent = geom.Actions{N: in.Permanent.N, Vx: v * x, Vy: v * y, Mx: -m * y, My: m * x}
	return in
}

// TestLoadTurnedByAnyAngleIsBorneNoBetter than its parts along x and along y alone, on one
// layer or two; a circle bears it alike at every angle.
func TestLoadTurnedByAnyAngleIsBorneNoBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		in.Permanent.N, in.Variable, in.Lift = -rapid.Float64Range(300e3, 900e3).Draw(t, "press"), geom.Actions{}, 0
		v, m := float64(rapid.IntRange(0, 20000).Draw(t, "V")), float64(rapid.IntRange(0, 30000000).Draw(t, "M all"))
		if in.Author == ground.Terzaghi {
			in.Author = ground.Vesic
		}
		angle := rapid.Float64Range(0, 2*math.Pi).Draw(t, "angle")
		s, c := math.Sincos(angle)
		_, whole := check(t, turned(in, v, m, c, s))
		if in.Shape == ground.Circle {
			_, straight := check(t, turned(in, v, m, 1, 0))
			for id, one := range straight {
				assert.Equal(t, one.Verdict, whole[id].Verdict, id)
				assert.InDelta(t, one.Utilization, whole[id].Utilization, 1e-6*(1+one.Utilization), id)
			}
		}
		for _, part := range []ground.Input{turned(in, v, m, c, 0), turned(in, v, m, 0, s)} {
			_, one := check(t, part)
			for id, a := range one {
				b := whole[id]
				rated := (a.Verdict == limit.Pass || a.Verdict == limit.Fail) && (b.Verdict == limit.Pass || b.Verdict == limit.Fail) && a.Rated && b.Rated
				if rated && b.Utilization < a.Utilization*(1-1e-6) {
					t.Fatalf("%s: %g of all, %g of a part", id, b.Utilization, a.Utilization)
				}
			}
		}
	})
}
