package section

import (
	"math"

	"footward.example/footward/internal/geom"
)

// Rod pulls the plate down at a point.
type Rod struct {
	At      geom.Point
	Tension float64 // [N]
}

// Spread is how much of a line a rod bends.
type Spread uint8

// The spreads.
const (
	// Wedge is what 45 degrees from the rod reach: the habit of the United States.
	Wedge Spread = iota
	// YieldLines is the effective length of the yield lines about the rod, without
	// prying: half a fan, or lines to the plate's edge, as EN 1993-1-8 has them at a
	// flange.
	YieldLines
)

// straightOn is by how much the cosine of a direction may miss 1.
const straightOn = 1e-9

// leastTension is the least that counts [N]: less does not keep its digits.
const leastTension = 1e-9

// mostRods is the most rods that a line is held for.
const mostRods = 64

// fewRods is up to how many rods each pair is tried in line.
const fewRods = 8

// pull is a rod beyond a line.
type pull struct {
	s, arm, moment float64
	rod            int
	left, right    float64 // length that bends on either side
	fan            float64 // length of the fan about it
}

// pulls are the rods beyond a line, in order along it.
type pulls struct {
	n  int
	at [mostRods]pull
}

// WorstPulled returns the section that rods bend most [Nmm/mm].
//
// Source: statics; AISC Design Guide 1, 3rd ed. 2024, chapter 4; EN 1993-1-8:2005 Table 6.6.
func WorstPulled(p *Plate, h *Hull, rods []Rod, spread Spread) Line {
	var e events
	e.turns(h)
	any := false
	for i := range rods {
		if !(rods[i].Tension > leastTension) {
			continue
		}
		any = true
		e.meets(h, rods[i].At)
		if n, ok := h.towards(rods[i].At); ok {
			e.add(math.Atan2(n.Y, n.X))
		}
		if len(rods) > fewRods {
			continue
		}
		// One rod behind another: they bend the same part of the line.
		for j := range i {
			if d, from := rods[i].At, rods[j].At; rods[j].Tension > leastTension && d != from {
				angle := math.Atan2(d.Y-from.Y, d.X-from.X)
				e.add(angle)
				e.add(angle + math.Pi)
			}
		}
	}
	if !any || len(h.Corners) == 0 {
		return Line{}
	}
	for _, c := range p.Outline {
		e.meets(h, c)
	}
	var all pulls
	angle := e.worst(func(angle float64) float64 { return all.bend(p, h, rods, spread, angle).Unit })
	return all.bend(p, h, rods, spread, angle)
}

// PulledAt returns the section at an angle [rad] that rods bend [Nmm/mm].
//
// Source: as WorstPulled.
func PulledAt(p *Plate, h *Hull, rods []Rod, spread Spread, angle float64) Line {
	var all pulls
	return all.bend(p, h, rods, spread, angle)
}

// bend finds the rods beyond the line at an angle and the group of neighbours among
// them that bends its own length most.
func (b *pulls) bend(p *Plate, h *Hull, rods []Rod, spread Spread, angle float64) Line {
	f := h.at(angle)
	worst := Line{Angle: turned(angle), Offset: f.offset}
	b.n = 0
	for i := range rods {
		r := &rods[i]
		if arm := dot(f.n, r.At) - f.offset; r.Tension > leastTension && arm > 0 {
			if b.n == 0 {
				f.low, f.high = p.chord(&f)
			}
			b.add(p, h, &f, r, i, arm, spread)
		}
	}
	if b.n == 0 {
		return worst
	}
	whole := p.net(&f)
	for i := range b.n {
		moment, fan := 0.0, 0.0
		low, high := math.Inf(1), math.Inf(-1)
		for j := i; j < b.n; j++ {
			r := &b.at[j]
			apart := r.s - b.at[i].s
			if j > i && apart-r.left >= high {
				break // what lies apart bends by itself
			}
			moment += r.moment
			low, high = min(low, apart-r.left), max(high, apart+r.right)
			fan += r.moment * r.fan // the mean, so that a rod on the line does not count
			l := f.line(min(high-low, fan/moment+2*apart, whole), moment)
			if l.Unit > worst.Unit {
				l.Angle, l.Count, l.Rod, l.Arm = worst.Angle, j-i+1, b.at[i].rod, b.at[i].arm
				worst = l
			}
		}
	}
	return worst
}

// add puts a rod in its place along the line.
//
//	wedge: a on either side
//	yield lines: 2 a + 0.625 e on either side; a fan of 2 pi a, or pi a + 2 e_1
//
// a is the rod's distance from the line, e from the plate's edge beyond it, e_1 from
// the nearer end of the line. Along a face of the hull neither side reaches beyond
// the end of the line; at a corner the line is free to turn about it, and the two
// sides together are no longer than it. Yield lines about a rod form along a face, or
// across the shortest way to the hull; any other line bends as a whole.
func (b *pulls) add(p *Plate, h *Hull, f *frame, r *Rod, rod int, arm float64, spread Spread) {
	if b.n == mostRods {
		return
	}
	q := pull{s: dot(f.t, r.At), arm: arm, moment: r.Tension * arm, rod: rod, fan: math.Inf(1)}
	left, right := math.Inf(1), math.Inf(1)
	if f.face {
		left, right = max(0, q.s-f.low), max(0, f.high-q.s)
	}
	reach := arm
	switch n, ok := h.towards(r.At); {
	case spread == Wedge:
	case !f.face && !(ok && dot(n, f.n) > 1-straightOn):
		reach = math.Inf(1)
	default:
		reach = 2*arm + 0.625*p.edge(r.At, f.n)
		q.fan = math.Pi * (arm + min(arm, 2/math.Pi*min(left, right)))
	}
	q.left, q.right = min(reach, left), min(reach, right)
	k := b.n
	for ; k > 0 && b.at[k-1].s > q.s; k-- {
		b.at[k] = b.at[k-1]
	}
	b.at[k] = q
	b.n++
}
