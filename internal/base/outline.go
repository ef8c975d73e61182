package base

import (
	"math"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/plate"
)

// pipeSides are the sides of the polygon that stands for a round weld.
const pipeSides = 24

// weldLines returns the weld all round a footprint: both faces of flanges, web
// or plates, the outside of a hollow or solid one. A pipe is a polygon inside the
// circle, which is shorter and so on the safe side.
func weldLines(f *plate.Footprint) []geom.Segment {
	x, y := f.SizeX/2, f.SizeY/2
	line := func(x1, y1, x2, y2 float64) geom.Segment {
		return geom.Segment{A: geom.Point{X: x1, Y: y1}, B: geom.Point{X: x2, Y: y2}}
	}
	switch f.Shape {
	case plate.ISection:
		w, in := f.Web/2, y-f.Thick
		out := []geom.Segment{line(-x, y, x, y), line(-x, -y, x, -y), line(-w, -in, -w, in), line(w, -in, w, in)}
		if x > w {
			for _, side := range []float64{-in, in} {
				out = append(out, line(-x, side, -w, side), line(w, side, x, side))
			}
		}
		return out
	case plate.Pipe:
		out := make([]geom.Segment, pipeSides)
		at := func(i int) geom.Point {
			s, c := math.Sincos(2 * math.Pi * float64(i) / pipeSides)
			return geom.Point{X: x * c, Y: x * s}
		}
		for i := range out {
			out[i] = geom.Segment{A: at(i), B: at(i + 1)}
		}
		return out
	case plate.TwoPlates:
		in := x - f.Thick
		return []geom.Segment{line(-x, -y, -x, y), line(-in, -y, -in, y), line(in, -y, in, y), line(x, -y, x, y)}
	}
	return []geom.Segment{line(-x, -y, x, -y), line(x, -y, x, y), line(x, y, -x, y), line(-x, y, -x, -y)}
}
