package plate_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/plate"
)

// line is a straight yield line along the outline of a footprint: u on it from the
// column axis, the normal pointing away from the footprint.
type line struct{ nx, ny, at float64 }

func (l line) beyond(p geom.Point) float64 { return l.nx*p.X + l.ny*p.Y - l.at }

// cut returns the part of a polygon beyond the line.
func (l line) cut(in []geom.Point) []geom.Point {
	var out []geom.Point
	for i, a := range in {
		b := in[(i+1)%len(in)]
		da, db := l.beyond(a), l.beyond(b)
		if da >= 0 {
			out = append(out, a)
		}
		if da*db < 0 {
			s := da / (da - db)
			out = append(out, geom.Point{X: a.X + s*(b.X-a.X), Y: a.Y + s*(b.Y-a.Y)})
		}
	}
	return out
}

// length returns the length of the line within a rectangle about the origin.
func (l line) length(halfX, halfY float64) float64 {
	low, high := -math.MaxFloat64, math.MaxFloat64
	clip := func(at, along, half float64) {
		if along == 0 {
			return
		}
		a, b := (-half-at)/along, (half-at)/along
		low, high = max(low, min(a, b)), min(high, max(a, b))
	}
	clip(l.at*l.nx, -l.ny, halfX)
	clip(l.at*l.ny, l.nx, halfY)
	return high - low
}

// moment returns the first moment of a polygon about the line.
func (l line) moment(p []geom.Point) float64 {
	sum := 0.0
	for i := 1; i+1 < len(p); i++ {
		area := ((p[i].X-p[0].X)*(p[i+1].Y-p[0].Y) - (p[i+1].X-p[0].X)*(p[i].Y-p[0].Y)) / 2
		sum += area * (l.beyond(p[0]) + l.beyond(p[i]) + l.beyond(p[i+1])) / 3
	}
	return sum
}

func rectangle(lowX, highX, lowY, highY float64) []geom.Point {
	return []geom.Point{{X: lowX, Y: lowY}, {X: highX, Y: lowY}, {X: highX, Y: highY}, {X: lowX, Y: highY}}
}

// lines are the yield lines that touch a footprint, its weld left out.
func lines(f *plate.Footprint, weld float64) []line {
	var out []line
	for deg := 0; deg < 360; deg += 2 {
		s, c := math.Sincos(float64(deg) * math.Pi / 180)
		if deg%90 == 0 {
			s, c = math.Round(s), math.Round(c)
		}
		at := math.Abs(c)*f.SizeX/2 + math.Abs(s)*f.SizeY/2
		if f.Shape == plate.Pipe {
			at = f.SizeX / 2
		}
		out = append(out, line{nx: c, ny: s, at: at + weld})
	}
	return out
}

// greatestTension returns the least upper bound by straight lines and by a fan about
// a rod of what rods that pull alike can bring [N each], the plate having the plastic
// moment m per width.
func greatestTension(in *plate.Input, pull func(i int) bool, m, weld float64) float64 {
	least := 4 * math.Pi * m
	for _, l := range lines(&in.Footprint, weld) {
		arms := 0.0
		for i, p := range in.Rods.At {
			if pull(i) {
				arms += max(0, l.beyond(p))
			}
		}
		if arms > 0 {
			least = min(least, m*l.length(in.Plate.SizeX/2, in.Plate.SizeY/2)/arms)
		}
	}
	return least
}

// TestNoPlateHoldsMoreTensionThanItsYieldLines takes yield lines at any angle along
// the outline of the footprint, across the corners of the plate too, and fans about
// the rods: what the plate is credited with is never more.
func TestNoPlateHoldsMoreTensionThanItsYieldLines(t *testing.T) {
	held := 0
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t)
		in.Footprint.Shape = rapid.SampledFrom([]plate.Shape{plate.ISection, plate.Tube, plate.TwoPlates}).Draw(t, "flanged")
		in.Rods.Resistance = 1e7
		if rapid.Bool().Draw(t, "pulled") {
			in.Actions = geom.Actions{N: 1e5}
		}
		r, err := plate.Check(in)
		if err != nil {
			t.Skip(err)
		}
		m, weld, u := r.US.Rm, 0.0, &r.US
		each := u.Tu / float64(max(1, r.Row.Count)) * u.Rm / u.Mt
		if in.Design.Basis == basis.Eurocode {
			m, weld = r.T*r.T*r.Fy/4/in.Design.EC.GammaM0, 0.8*math.Sqrt2*in.WeldThroat
			each = r.EC.TStub.FtRd / 2
		}
		if !(r.EC.Lifted || u.Lifted && u.Mt > 0) {
			return
		}
		held++
		if most := greatestTension(in, func(i int) bool { return r.RodPull(i) > 0 }, m, weld); !(each <= most*1.005) {
			t.Fatalf("a rod is held for %g N, yield lines hold %g N", each, most)
		}
	})
	if held == 0 {
		t.Fatal("no plate was held")
	}
}

// TestPressedPlateHoldsEveryYieldLine takes the pressure beyond yield lines at any
// angle along the footprint: the moment per width that the plate is asked for is
// never less.
func TestPressedPlateHoldsEveryYieldLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t)
		in.Design.Basis = basis.USLRFD
		r, err := plate.Check(in)
		if err != nil {
			t.Skip(err)
		}
		u, a := &r.US, &in.Actions
		if u.Fp == 0 || u.Y < 1e-3 {
			return
		}
		x, y := in.Plate.SizeX/2, in.Plate.SizeY/2
		pressed := rectangle(-x, x, -y, y)
		switch {
		case r.Case == plate.Concentric: // a moment may be that of a rounding error
		case a.Mx > 0:
			pressed = rectangle(-x, x, -y, -y+u.Y)
		case a.Mx < 0:
			pressed = rectangle(-x, x, y-u.Y, y)
		case a.My > 0:
			pressed = rectangle(x-u.Y, x, -y, y)
		case a.My < 0:
			pressed = rectangle(-x, -x+u.Y, -y, y)
		}
		for _, l := range lines(&in.Footprint, 0) {
			across := l.length(x, y)
			if !(across > 1e-6) {
				continue // the footprint reaches the edge there
			}
			m := u.Fp * l.moment(l.cut(pressed)) / across
			if !(m <= u.Mu*(1+1e-9)) {
				t.Fatalf("%g across the line %+v, %g asked for", m, l, u.Mu)
			}
		}
	})
}
