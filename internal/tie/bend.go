package tie

import (
	"math"
	"slices"

	"footward.example/footward/internal/geom"
)

// span is a stretch across the plate.
type span [2]float64

// sections between two places where the moment changes its form.
const sections = 16

// bend returns the bending of the plate along an axis: place gives coordinates
// along and across it, press is the length on which fill presses, width that of
// the plate across.
//
//	M(s) = sum of T_i (s_i - s) over s_i > s - p (end - s)^2/2
//
// Source: statics; the spread at 45 degrees is common practice, no source.
func (r *Result) bend(place func(geom.Point) (along, across float64), press, width float64) Bend {
	in := r.in
	b := Bend{Half: press / 2}
	if r.Pull == 0 {
		return b
	}
	var sides [2][]span
	stations := make([]float64, 0, len(in.At)+4)
	for i, p := range in.At {
		s, _ := place(p)
		b.E += in.Each[i] * s / r.Pull
		stations = append(stations, s)
	}
	b.Half -= math.Abs(b.E)
	if !(b.Half > 0) {
		b.Reason = "the rods pull beyond the edge of the fill that presses on the bottom plate"
		return b
	}
	b.Load = r.Pull / (2 * b.Half)
	stations = append(stations, b.E-b.Half, b.E+b.Half)
	slices.Sort(stations)
	for i := 0; i+1 < len(stations); i++ {
		from, to := stations[i], stations[i+1]
		for k := range sections + 1 {
			r.section(&b, place, from+(to-from)*float64(k)/sections, width, &sides)
		}
	}
	return b
}

// section takes a section into account.
func (r *Result) section(b *Bend, place func(geom.Point) (float64, float64), s, width float64, sides *[2][]span) {
	in := r.in
	m := 0.0
	for i, p := range in.At {
		if at, _ := place(p); at > s {
			m += in.Each[i] * (at - s)
		}
	}
	end := b.E + b.Half - s
	switch {
	case end > 2*b.Half:
		m -= r.Pull * (b.E - s)
	case end > 0:
		m -= b.Load * end * end / 2
	}
	w := r.spread(b, place, s, width, m > 0, sides)
	if m == 0 || w < 0 {
		return
	}
	if perMM := math.Abs(m) / max(w, 1e-9); perMM > b.PerMM {
		b.At, b.M, b.Width, b.PerMM = s, m, w, perMM
	}
}

// spread returns the width over which a moment spreads: where the rods bend the
// plate up, from the nuts at 45 degrees to the section, the narrower of both
// sides; where the fill bends it down, from the nuts as far as the fill reaches
// beyond. It is negative for a section within a nut.
func (r *Result) spread(b *Bend, place func(geom.Point) (float64, float64), s, width float64, up bool, sides *[2][]span) float64 {
	in := r.in
	outer := max(0, min(b.E+b.Half-s, s-b.E+b.Half))
	sides[0], sides[1] = sides[0][:0], sides[1][:0]
	holes := 0.0
	for i, p := range in.At {
		at, across := place(p)
		reach := math.Abs(at - s)
		if reach < in.Hole/2 {
			holes += in.Hole
		}
		if in.Each[i] == 0 {
			continue
		}
		if up && reach < in.Nut/2 {
			return -1
		}
		if !up {
			reach = outer
		}
		half := reach + in.Nut/2
		over := span{max(-width/2, across-half), min(width/2, across+half)}
		if !up || at > s {
			sides[0] = append(sides[0], over)
		}
		if !up || at <= s {
			sides[1] = append(sides[1], over)
		}
	}
	least := math.Inf(1)
	for _, spans := range sides {
		if len(spans) > 0 {
			least = min(least, covered(spans))
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return max(0, least-holes)
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
