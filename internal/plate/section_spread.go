package plate

import (
	"math"

	"footward.example/footward/internal/geom"
)

// roundSides are the sides of the polygon that stands for a circle.
const roundSides = 48

// leastCut is the least size of a part that does not press [mm].
const leastCut = 1e-3

// Spread returns what the support presses on when the plate spreads the pressure of
// the footprint by c: an outline, clipped by the plate, and the parts of it that do
// not press.
//
// Source: EN 1993-1-8:2005 6.2.5(5), (6), Figure 6.4.
func (in *Input) Spread(c float64) (outline []geom.Point, cuts [][]geom.Point) {
	f, halfX, halfY := &in.Footprint, in.Plate.SizeX/2, in.Plate.SizeY/2
	outX, outY := min(f.SizeX/2+c, halfX), min(f.SizeY/2+c, halfY)
	rect := func(x0, y0, x1, y1 float64) []geom.Point {
		return []geom.Point{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
	}
	outline = rect(-outX, -outY, outX, outY)
	inX, inY := f.SizeX/2-f.Thick-c, f.SizeY/2-f.Thick-c
	switch f.Shape {
	case ISection:
		if web := f.Web/2 + c; outX-web > leastCut && inY > leastCut {
			cuts = [][]geom.Point{rect(-outX, -inY, -web, inY), rect(web, -inY, outX, inY)}
		}
	case Tube:
		if inX > leastCut && inY > leastCut {
			cuts = [][]geom.Point{rect(-inX, -inY, inX, inY)}
		}
	case TwoPlates:
		if inX > leastCut {
			cuts = [][]geom.Point{rect(-inX, -outY, inX, outY)}
		}
	case Pipe:
		outline = clipped(circle(f.SizeX/2+c), halfX, halfY)
		if inX > leastCut {
			cuts = [][]geom.Point{circle(inX / math.Cos(math.Pi/roundSides))}
		}
	}
	return outline, cuts
}

// circle returns a polygon whose corners lie on a circle.
func circle(radius float64) []geom.Point {
	out := make([]geom.Point, roundSides)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / roundSides)
		out[i] = geom.Point{X: radius * cos, Y: radius * sin}
	}
	return out
}

// clipped cuts a polygon at a rectangle about the origin.
func clipped(p []geom.Point, halfX, halfY float64) []geom.Point {
	for _, e := range [4]struct {
		toward geom.Point
		half   float64
	}{{geom.Point{X: -1}, halfX}, {geom.Point{X: 1}, halfX}, {geom.Point{Y: -1}, halfY}, {geom.Point{Y: 1}, halfY}} {
		p = geom.Beyond(p, e.toward, -e.half)
	}
	return p
}
