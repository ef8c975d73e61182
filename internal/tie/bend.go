package tie

import (
	"math"
	"slices"

	"footward.example/footward/internal/geom"
)

// span is a stretch across the plate.
type span [2]float64

// plan is what of the fill presses on a plate: a rectangle, or a circle.
type plan struct {
	x, y     float64 // [mm]
	diameter float64 // [mm]; 0: a rectangle
}

// plans returns what presses on the bottom plate. Of a circle that reaches past the
// plate, and of fill of unknown plan, the circle in the plate and the whole of it count.
func (in *Input) plans() []plan {
	p := &in.Plate
	switch side := min(p.SizeX, p.SizeY); {
	case in.PressDiameter > side:
		return []plan{{diameter: side}, {x: min(p.SizeX, in.PressDiameter), y: min(p.SizeY, in.PressDiameter)}}
	case in.PressDiameter > 0:
		return []plan{{diameter: in.PressDiameter}}
	case in.PressX == 0 && in.PressY == 0:
		return unknownPlans(p)
	}
	out := plan{x: in.PressX, y: in.PressY}
	if out.x == 0 {
		out.x = p.SizeX
	}
	if out.y == 0 {
		out.y = p.SizeY
	}
	return []plan{out}
}

func unknownPlans(p *geom.Plate) []plan {
	return []plan{{x: p.SizeX, y: p.SizeY}, {diameter: min(p.SizeX, p.SizeY)}}
}

// bender bends a plate along one axis.
type bender struct {
	in    *Input
	each  []float64
	place func(geom.Point) (along, across float64)
	width float64 // of the plate across [mm]
	pull  float64

	sides      [2][]span
	holes, cut []span
}

// bends returns the bending of a plate along x and along y, the worst of the plans.
func bends(p *geom.Plate, in *Input, each []float64, plans []plan) (out [2]Bend) {
	pull, sum := 0.0, geom.Point{}
	for i, at := range in.At {
		if i < len(each) {
			pull += each[i]
			sum.X, sum.Y = sum.X+each[i]*at.X, sum.Y+each[i]*at.Y
		}
	}
	if pull == 0 {
		return out
	}
	e := geom.Point{X: sum.X / pull, Y: sum.Y / pull}
	for k, axis := range [2]bender{
		{place: func(p geom.Point) (float64, float64) { return p.X, p.Y }, width: p.SizeY},
		{place: func(p geom.Point) (float64, float64) { return p.Y, p.X }, width: p.SizeX},
	} {
		axis.in, axis.each, axis.pull = in, each, pull
		for _, plan := range plans {
			press := plan.x
			if k == 1 {
				press = plan.y
			}
			along, _ := axis.place(e)
			b := Bend{Half: press/2 - math.Abs(along), E: along}
			if plan.diameter > 0 {
				b = Bend{Round: true, Half: plan.diameter/2 - math.Hypot(e.X, e.Y), E: along}
			}
			axis.bend(&b)
			if out[k].PerMM == 0 && out[k].Reason == "" || b.Reason != "" || out[k].Reason == "" && b.PerMM > out[k].PerMM {
				out[k] = b
			}
		}
	}
	return out
}

// sections between two places where the moment changes its form.
const sections = 16

// bend finds the section of a plate that its rods and the even pressure of the fill
// about their resultant bend most: a block as long on both sides of it as the fill
// reaches on the nearer one, or the circle round it within the fill's.
//
//	M(s) = sum of T_i (s_i - s) over s_i > s - p (end - s)^2/2
//	of a circle less p (2/3 (R^2 - z^2)^1.5 - z (R^2 acos(z/R) - z sqrt(R^2 - z^2))), z = s - e
//
// Source: statics; the spread at 45 degrees is common practice, no source.
func (v *bender) bend(b *Bend) {
	if !(b.Half > 0) {
		b.Reason = "the rods pull beyond the edge of the fill that presses on the plate"
		return
	}
	b.Load = v.pull / (2 * b.Half)
	if b.Round {
		b.Load = v.pull / (math.Pi * b.Half * b.Half)
	}
	stations := make([]float64, 0, len(v.in.At)+2)
	for _, p := range v.in.At {
		s, _ := v.place(p)
		stations = append(stations, s)
	}
	stations = append(stations, b.E-b.Half, b.E+b.Half)
	slices.Sort(stations)
	for i := 0; i+1 < len(stations); i++ {
		from, to := stations[i], stations[i+1]
		for k := range sections + 1 {
			v.section(b, from+(to-from)*float64(k)/sections)
		}
	}
	// The width jumps at the rims of nuts and holes: both sides of each.
	low, high := stations[0], stations[len(stations)-1]
	for _, p := range v.in.At {
		s, _ := v.place(p)
		for _, r := range [...]float64{-v.in.contact() / 2, -v.in.Hole / 2, v.in.Hole / 2, v.in.contact() / 2} {
			for _, at := range [...]float64{s + r*(1-rim), s + r*(1+rim)} {
				if at > low && at < high {
					v.section(b, at)
				}
			}
		}
	}
}

// rim is how near both sides of a rim are taken, as a part of its distance.
const rim = 1e-6

// section takes a section into account.
func (v *bender) section(b *Bend, s float64) {
	m := 0.0
	for i, p := range v.in.At {
		if at, _ := v.place(p); at > s {
			m += v.each[i] * (at - s)
		}
	}
	switch end := b.E + b.Half - s; {
	case end >= 2*b.Half:
		m -= v.pull * (b.E - s)
	case end > 0 && b.Round:
		m -= b.Load * segment(b.Half, s-b.E)
	case end > 0:
		m -= b.Load * end * end / 2
	}
	w := v.spread(b, s, m > 0)
	if m == 0 || w < 0 {
		return
	}
	if perMM := math.Abs(m) / max(w, 1e-9); perMM > b.PerMM {
		b.At, b.M, b.Width, b.PerMM = s, m, w, perMM
	}
}

// segment returns the moment of area of the part of a circle of radius R beyond a line
// at z from its middle, about that line [mm3]. At the middle it is that of half the
// circle, whose centroid is 4 R/(3 pi) away.
//
// Source: geometry.
func segment(r, z float64) float64 {
	h := math.Sqrt(max(0, r*r-z*z))
	return 2.0/3.0*h*h*h - z*(r*r*math.Acos(max(-1, min(1, z/r)))-z*h)
}

// contact returns the width on which a rod holds a plate: its nut, or the washer where
// the nut alone would slip through the hole.
func (in *Input) contact() float64 {
	if in.Nut > in.Hole {
		return in.Nut
	}
	return max(in.Nut, in.Cover)
}

// spread returns the width over which a moment spreads: where the rods bend the
// plate up, from the nuts at 45 degrees to the section, the narrower of both
// sides; where the fill bends it down, from the nuts as far as the fill reaches
// beyond. Holes within it are taken off. It is negative for a section within a nut.
func (v *bender) spread(b *Bend, s float64, up bool) float64 {
	in, nut := v.in, v.in.contact()
	outer := max(0, min(b.E+b.Half-s, s-b.E+b.Half))
	v.sides[0], v.sides[1], v.holes = v.sides[0][:0], v.sides[1][:0], v.holes[:0]
	for i, p := range in.At {
		at, across := v.place(p)
		reach := math.Abs(at - s)
		if reach < in.Hole/2 {
			v.holes = append(v.holes, span{across - in.Hole/2, across + in.Hole/2})
		}
		if v.each[i] == 0 {
			continue
		}
		if up && reach < nut/2 {
			return -1
		}
		if !up {
			reach = outer
		}
		half := reach + nut/2
		over := span{max(-v.width/2, across-half), min(v.width/2, across+half)}
		if !up || at > s {
			v.sides[0] = append(v.sides[0], over)
		}
		if !up || at <= s {
			v.sides[1] = append(v.sides[1], over)
		}
	}
	least := math.Inf(1)
	for _, spans := range v.sides {
		if len(spans) > 0 {
			least = min(least, covered(spans)-v.taken(spans))
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return max(0, least)
}

// taken returns the width that holes take off spans.
func (v *bender) taken(spans []span) float64 {
	v.cut = v.cut[:0]
	for _, h := range v.holes {
		for _, s := range spans {
			if c := (span{max(h[0], s[0]), min(h[1], s[1])}); c[0] < c[1] {
				v.cut = append(v.cut, c)
			}
		}
	}
	return covered(v.cut)
}

// covered returns the length that spans cover together.
func covered(spans []span) float64 {
	slices.SortFunc(spans, func(a, b span) int {
		if a[0] < b[0] {
			return -1
		}
		return 1
	})
	sum, end := 0.0, math.Inf(-1)
	for _, s := range spans {
		sum += max(0, s[1]-max(s[0], end))
		end = max(end, s[1])
	}
	return sum
}

// Moment returns the greatest moment per width under the nuts of the bottom plate
// [Nmm/mm], for whoever adds another that bends it the same way; false where there is
// no balance.
//
// Source: as the limit state.
func (r *Result) Moment() (float64, bool) {
	b := worst(&r.Bend)
	return b.PerMM, b.Reason == ""
}
