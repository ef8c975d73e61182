package section

import (
	"math"

	"footward.example/footward/internal/geom"
)

// Bed is what can press: a convex outline and parts of it that do not press, convex
// and apart.
type Bed struct {
	Outline []geom.Point
	Cuts    [][]geom.Point
}

// Block is the even pressure of least strength that balances a plate, with rods that
// hold it down if there are any.
type Block struct {
	Pressure float64 // [MPa]
	// It presses where Toward is further than From from the origin.
	Toward geom.Point
	From   float64 // [mm]; minus infinity: everywhere
}

const (
	tries     = 16 // directions tried at even steps
	lineSteps = 40
)

// LeastBlock returns the plastic block of least strength that balances N, M_x and
// M_y, or false where none does [MPa].
//
//	f = max over lines of (moment of the actions about the line) /
//	    (integral of the distance from it over what lies beyond it)
//
// Every line, as a hinge about which the plate tips without lifting a rod, asks for
// some strength; the greatest is the least that suffices (the two theorems of
// plasticity). For each direction the best line has the middle of what it cuts off
// under the resultant, or runs through a rod.
//
// Source: statics; plastic limit analysis.
func LeastBlock(bed *Bed, rods []geom.Point, a *geom.Actions) (Block, bool) {
	whole := bed.area()
	b := Block{From: math.Inf(-1), Toward: geom.Point{X: 1}}
	if !(whole > 0) {
		return b, false
	}
	b.Pressure = max(0, -a.N/whole)
	if a.Mx == 0 && a.My == 0 && !(a.N > 0) {
		return b, true
	}
	ok := true
	try := func(angle float64) float64 {
		sin, cos := math.Sincos(angle)
		n := geom.Point{X: cos, Y: sin}
		p, from, can := bed.about(n, rods, a)
		if !can {
			ok = false
		}
		if p > b.Pressure {
			b.Pressure, b.Toward, b.From = p, n, from
		}
		return p
	}
	best, most := math.Atan2(-a.Mx, a.My), math.Inf(-1)
	start := best
	for i := range tries {
		angle := start + 2*math.Pi*float64(i)/tries
		if p := try(angle); p > most {
			best, most = angle, p
		}
		if !ok {
			return b, false
		}
	}
	narrow(best-2*math.Pi/tries, best+2*math.Pi/tries, try)
	return b, ok
}

// about returns the strength that the worst line across a direction asks for, and
// where it lies; can is false where nothing balances the actions about it.
func (bed *Bed) about(n geom.Point, rods []geom.Point, a *geom.Actions) (p, from float64, can bool) {
	low, high := math.Inf(1), math.Inf(-1)
	for _, c := range bed.Outline {
		low, high = min(low, dot(n, c)), max(high, dot(n, c))
	}
	size := high - low
	last := high
	for _, r := range rods {
		last = min(last, dot(n, r))
	}
	moment := a.My*n.X - a.Mx*n.Y // at the origin, tipping towards n
	act := func(d float64) float64 { return moment + a.N*d }
	scale := math.Abs(moment) + math.Abs(a.N)*size
	if last >= high-leastShare*size {
		// No rod holds: the resultant must lie within the outline.
		if act(high) > leastShare*scale {
			return 0, high, false
		}
		last = high
	}
	asks := func(d float64) float64 {
		_, s := bed.beyond(n, d)
		if v := act(d); v > 0 && s > 0 {
			return v / s
		}
		return 0
	}
	// N S + V A, of the sign in which more is asked.
	slope := func(d float64) float64 {
		area, s := bed.beyond(n, d)
		return a.N*s + act(d)*area
	}
	if last <= low || last < high && slope(last) >= 0 {
		return asks(last), last, true
	}
	at, til := low, last
	sa, st := slope(at), slope(til)
	if !(sa > 0) {
		return asks(at), at, true // the whole is pressed
	}
	// Regula falsi (Illinois), with a halving now and then.
	side := 0
	for i := range lineSteps {
		d := (at*st - til*sa) / (st - sa)
		if i%4 == 3 || !(d > at && d < til) {
			d, side = (at+til)/2, 0
		}
		s := slope(d)
		if s > 0 {
			at, sa = d, s
			if side == 1 {
				st /= 2
			}
			side = 1
		} else {
			til, st = d, s
			if side == -1 {
				sa /= 2
			}
			side = -1
		}
		if til-at < 1e-8*size || s == 0 {
			break
		}
	}
	d := (at + til) / 2
	return asks(d), d, true
}

// leastShare is the share of a size below which a length counts as nothing.
const leastShare = 1e-9

// beyond returns the area of the bed beyond a line, and the integral of the distance
// from it.
func (bed *Bed) beyond(n geom.Point, from float64) (area, first float64) {
	area, first = part(bed.Outline, n, from)
	for _, c := range bed.Cuts {
		a, s := part(c, n, from)
		area, first = area-a, first-s
	}
	return area, first
}

// area returns the area of the bed.
func (bed *Bed) area() float64 {
	low := math.Inf(1)
	for _, c := range bed.Outline {
		low = min(low, c.X)
	}
	a, _ := bed.beyond(geom.Point{X: 1}, low-1)
	return a
}

// part does so for a convex polygon.
func part(p []geom.Point, n geom.Point, from float64) (area, first float64) {
	if len(p) < 3 {
		return 0, 0
	}
	f := frame{n: n, t: geom.Point{X: -n.Y, Y: n.X}, offset: from}
	var begin, last geom.Point
	count := 0
	corner := func(q geom.Point) {
		if count == 0 {
			begin = q
		} else {
			w := (last.X-begin.X)*(q.Y-begin.Y) - (q.X-begin.X)*(last.Y-begin.Y)
			area += w / 2
			first += w * (begin.Y + last.Y + q.Y) / 6
		}
		last = q
		count++
	}
	a := f.local(p[len(p)-1])
	for _, c := range p {
		b := f.local(c)
		if (a.Y > 0) != (b.Y > 0) {
			corner(geom.Point{X: a.X + a.Y/(a.Y-b.Y)*(b.X-a.X)})
		}
		if b.Y > 0 {
			corner(b)
		}
		a = b
	}
	return math.Abs(area), math.Abs(first)
}
