package section

import (
	"math"

	"footward.example/footward/internal/geom"
)

// mostEvents is the most angles at which a line may turn from one corner to
// another, or meet something new; with more, lines are tried at even steps too.
const mostEvents = 192

const (
	evenSteps = 720
	nearly    = 1e-9        // rad, to either side of an event
	same      = 1e-12       // rad, between two events
	widest    = math.Pi / 6 // of an interval
	golden    = 0.6180339887498949
	narrowing = 20 // steps of golden section: to 1e-4 of an interval, 1e-8 of its peak
	rivals    = 2  // intervals that are searched
)

// events are the angles between which the moment changes smoothly.
type events struct {
	n    int
	at   [mostEvents]float64
	full bool
}

func (e *events) add(angle float64) {
	if e.n == mostEvents {
		e.full = true
		return
	}
	if angle -= 2 * math.Pi * math.Floor(angle/(2*math.Pi)); !(angle >= 0 && angle < 2*math.Pi) {
		angle = 0
	}
	k := e.n
	for k > 0 && e.at[k-1] > angle {
		k--
	}
	if k > 0 && angle-e.at[k-1] < same || k < e.n && e.at[k]-angle < same {
		return
	}
	copy(e.at[k+1:e.n+1], e.at[k:e.n])
	e.at[k] = angle
	e.n++
}

// turns adds the angles at which a line turns from one corner of the hull to the
// next.
func (e *events) turns(h *Hull) {
	e.add(0)
	for i, a := range h.Corners {
		b := h.Corners[(i+1)%len(h.Corners)]
		if a != b {
			e.add(math.Atan2(a.X-b.X, b.Y-a.Y))
		}
	}
}

// meets adds the angles at which a line that touches the hull meets a point.
func (e *events) meets(h *Hull, q geom.Point) {
	for _, c := range h.Corners {
		dx, dy := q.X-c.X, q.Y-c.Y
		far := math.Hypot(dx, dy)
		if !(far > h.Round) {
			continue
		}
		towards, off := math.Atan2(dy, dx), math.Acos(min(1, h.Round/far))
		for _, angle := range [2]float64{towards - off, towards + off} {
			sin, cos := math.Sincos(angle)
			n, touches := geom.Point{X: cos, Y: sin}, true
			for _, other := range h.Corners {
				touches = touches && dot(n, other) <= dot(n, c)+1e-9*far
			}
			if touches {
				e.add(angle)
			}
		}
	}
}

// peak is an interval within which a section was the worst of those tried.
type peak struct {
	low, high, value float64
}

// worst returns the angle at which unit is greatest.
func (e *events) worst(unit func(angle float64) float64) (angle float64) {
	value := math.Inf(-1)
	var top [rivals]peak
	for i := range top {
		top[i].value = math.Inf(-1)
	}
	try := func(at float64) float64 {
		v := unit(at)
		if v > value {
			value, angle = v, at
		}
		return v
	}
	span := func(from, to float64) {
		wide := to - from
		if !(wide > 4*nearly) {
			try((from + to) / 2)
			return
		}
		at := [...]float64{from + nearly, from + wide/4, from + wide/2, from + 3*wide/4, to - nearly}
		best, k := math.Inf(-1), 0
		for i := range at {
			if v := try(at[i]); v > best {
				best, k = v, i
			}
		}
		p := peak{at[max(0, k-1)], at[min(len(at)-1, k+1)], best}
		for i := range top {
			if p.value > top[i].value {
				p, top[i] = top[i], p
			}
		}
	}
	for i := range e.n {
		from, to := e.at[i], e.at[0]+2*math.Pi
		if i+1 < e.n {
			to = e.at[i+1]
		}
		try(from)
		parts := math.Ceil((to - from) / widest)
		for k := range int(parts) {
			span(from+(to-from)*float64(k)/parts, from+(to-from)*float64(k+1)/parts)
		}
	}
	if e.full {
		for i := range evenSteps {
			span(2*math.Pi*float64(i)/evenSteps, 2*math.Pi*float64(i+1)/evenSteps)
		}
	}
	for _, p := range top {
		// The slope between two samples could hide no more than so much.
		if !(p.value > 0.9*value) {
			continue
		}
		narrow(p.low, p.high, try)
	}
	return angle
}

// narrow searches an interval by golden section.
func narrow(low, high float64, try func(float64) float64) {
	a, b := high-golden*(high-low), low+golden*(high-low)
	va, vb := try(a), try(b)
	for range narrowing {
		if va >= vb {
			high, b, vb = b, a, va
			a = high - golden*(high-low)
			va = try(a)
		} else {
			low, a, va = a, b, vb
			b = low + golden*(high-low)
			vb = try(b)
		}
	}
}

// turned brings an angle between 0 and 2 pi.
func turned(angle float64) float64 {
	if angle -= 2 * math.Pi * math.Floor(angle/(2*math.Pi)); angle >= 0 && angle < 2*math.Pi {
		return angle
	}
	return 0
}
