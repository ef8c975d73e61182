package anchor_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"footward.example/footward/internal/anchor"
)

// faceCells counts the cells of a block's face that lie within a reach of a rod along it,
// and between two depths.
func faceCells(width float64, rods []float64, reach, from, to float64) float64 {
	const parts = 4000
	inside := 0
	for i := range parts {
		at := width * ((float64(i)+0.5)/parts - 0.5)
		for _, x := range rods {
			if math.Abs(x-at) <= reach {
				inside++
				break
			}
		}
	}
	return width * float64(inside) / parts * (to - from)
}

// TestAreasOnTheFacesAreThoseOfCells: of the edge under shear (4.5 c_1^2 of one rod, cut off
// at corners and underside) and, by EN, of blow-out, 2 c_1 round each head.
func TestAreasOnTheFacesAreThoseOfCells(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		r, _ := check(t, in)
		row := func(side int, c1 float64, carries func(anchor.Force) bool) (at []float64, width float64) {
			for i, p := range in.At {
				away := [4]float64{in.Block.SizeX/2 + p.X, in.Block.SizeX/2 - p.X, in.Block.SizeY/2 + p.Y, in.Block.SizeY/2 - p.Y}[side]
				if math.Abs(away-c1) < 1 && carries(in.Each[i]) {
					at = append(at, [4]float64{p.Y, p.Y, p.X, p.X}[side])
				}
			}
			return at, [4]float64{in.Block.SizeY, in.Block.SizeY, in.Block.SizeX, in.Block.SizeX}[side]
		}
		if e := &r.Edge; e.Applies {
			near := math.Inf(1)
			for i, p := range in.At {
				if f := in.Each[i]; math.Hypot(f.ShearX, f.ShearY) > 1e-6 {
					near = min(near, [4]float64{in.Block.SizeX/2 + p.X, in.Block.SizeX/2 - p.X, in.Block.SizeY/2 + p.Y, in.Block.SizeY/2 - p.Y}[e.Side])
				}
			}
			rods, width := row(e.Side, near, func(f anchor.Force) bool { return math.Hypot(f.ShearX, f.ShearY) > 1e-6 })
			want := faceCells(width, rods, 1.5*e.C1, 0, min(in.Block.Height, 1.5*e.C1))
			if !(math.Abs(want-e.A) <= 0.03*want+2*width/4000*1.5*e.C1*float64(len(rods))) {
				t.Fatalf("edge: %g mm2 by cells, %g", want, e.A)
			}
		}
		if b := &r.Blow; b.Applies && b.A > 0 {
			rods, width := row(b.Side, b.C1, func(f anchor.Force) bool { return f.Tension > 1e-6 })
			want := faceCells(width, rods, 2*b.C1, 0, 2*b.C1+min(2*b.C1, in.Block.Height-in.Embedment))
			if !(math.Abs(want-b.A) <= 0.03*want+2*width/4000*4*b.C1*float64(len(rods))) {
				t.Fatalf("blow-out: %g mm2 by cells, %g", want, b.A)
			}
		}
	})
}
