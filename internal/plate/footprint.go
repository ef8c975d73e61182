package plate

import "math"

// spreadArea returns the area of the footprint widened by c on every side
// [mm2], clipped by the plate and with no part counted twice.
//
// Source: EN 1993-1-8:2005 6.2.5(5), (6), Figure 6.4.
func (in *Input) spreadArea(c float64) float64 {
	f, halfX, halfY := &in.Footprint, in.Plate.SizeX/2, in.Plate.SizeY/2
	outX, outY := min(f.SizeX/2+c, halfX), min(f.SizeY/2+c, halfY)
	switch f.Shape {
	case ISection:
		inner := max(0, f.SizeY/2-f.Thick-c)
		web := min(f.Web/2+c, outX)
		return 4*outX*(outY-inner) + 4*web*inner
	case Tube:
		return 4*outX*outY - 4*max(0, f.SizeX/2-f.Thick-c)*max(0, f.SizeY/2-f.Thick-c)
	case Pipe:
		return clippedCircle(f.SizeX/2+c, halfX, halfY) - math.Pi*square(max(0, f.SizeX/2-f.Thick-c))
	case TwoPlates:
		return 4 * (outX - max(0, f.SizeX/2-f.Thick-c)) * outY
	}
	return 4 * outX * outY
}

func square(v float64) float64 { return v * v }

// clippedCircle returns the area that a circle and a rectangle with the same
// centre have in common [mm2].
func clippedCircle(r, halfX, halfY float64) float64 {
	if r <= halfX && r <= halfY {
		return math.Pi * r * r
	}
	flat := math.Sqrt(max(0, r*r-halfY*halfY)) // up to here the rectangle's edge is the lower
	if flat >= halfX {
		return 4 * halfX * halfY
	}
	under := func(x float64) float64 {
		return (x*math.Sqrt(max(0, r*r-x*x)) + r*r*math.Asin(min(1, x/r))) / 2
	}
	return 4 * (halfY*min(flat, r) + under(min(halfX, r)) - under(flat))
}

// frame is the plate seen along the direction in which the moment presses.
type frame struct {
	AlongY bool
	L, B   float64 // plate along and across [mm]
	H, W   float64 // footprint along and across [mm]
	Side   float64 // +1 or -1: the side that lifts
}

func (in *Input) frame(alongY bool, side float64) frame {
	p, f := &in.Plate, &in.Footprint
	if alongY {
		return frame{AlongY: true, L: p.SizeY, B: p.SizeX, H: f.SizeY, W: f.SizeX, Side: side}
	}
	return frame{L: p.SizeX, B: p.SizeY, H: f.SizeX, W: f.SizeY, Side: side}
}

// flanged reports whether the footprint has a straight flange, wall or plate
// across the given direction, which presses on one side and holds on the other.
func (f *Footprint) flanged(alongY bool) bool {
	switch f.Shape {
	case ISection:
		return alongY
	case Tube:
		return true
	case TwoPlates:
		return !alongY
	}
	return false
}

// Row is the row of rods that holds the lifted side.
type Row struct {
	Count int
	S     float64 // from the column axis [mm]
	Gauge float64 // between the outermost rods [mm]
	High  float64 // place of the outermost across [mm]
	Edge  float64 // from an outermost rod to the side of the plate [mm]
}

// How far rods may be out of line and a row out of the middle.
const (
	inLine   = 0.5 // mm
	inMiddle = 1.0 // mm
)

// row returns the row of rods outside the footprint on the lifted side, or why
// there is none. Rods inside the footprint are left out, on the safe side.
func (in *Input) row(f *frame) (r Row, why Misfit) {
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range in.Rods.At {
		s, across := p.X, p.Y
		if f.AlongY {
			s, across = p.Y, p.X
		}
		s *= f.Side
		if s <= f.H/2 {
			continue
		}
		if r.Count > 0 && math.Abs(s-r.S) > inLine {
			return r, ManyRows
		}
		r.Count++
		r.S = s
		low, high = min(low, across), max(high, across)
	}
	if r.Count == 0 {
		return r, NoRow
	}
	if math.Abs(low+high) > inMiddle {
		return r, OffMiddle
	}
	r.Gauge, r.High, r.Edge = high-low, high, f.B/2-max(math.Abs(low), math.Abs(high))
	return r, Fits
}
