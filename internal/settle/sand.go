package settle

import "math"

// SchmertmannInfluence returns the strain influence I_z at the depth z below a
// footing of the width b and the length l, where its peak is peak [-].
//
//	L/B = 1:   0.1 at the base, peak at 0.5 B, 0 at 2 B
//	L/B >= 10: 0.2 at the base, peak at 1.0 B, 0 at 4 B
//
// Between the two, base, depth of the peak and end go in a straight line with
// L/B.
//
// Source: Schmertmann, Hartman and Brown 1978, Improved strain influence factor
// diagrams (from memory).
func SchmertmannInfluence(z, b, l, peak float64) float64 {
	share := planeShare(b, l)
	at, end := peakDepth(b, share), endDepth(b, share)
	switch {
	case !(z >= 0) || z >= end:
		return 0
	case z <= at:
		start := 0.1 + 0.1*share
		return start + (peak-start)*z/at
	}
	return peak * (end - z) / (end - at)
}

// planeShare is 0 for a square or circle and 1 for a strip.
func planeShare(b, l float64) float64 { return min(1, max(0, (l/b-1)/9)) }

func peakDepth(b, share float64) float64 { return b * (0.5 + 0.5*share) }
func endDepth(b, share float64) float64  { return b * (2 + 2*share) }

// Sand are the intermediate values of the two methods for sand.
type Sand struct {
	Share     float64   // of plane strain [-]
	Overlying float64   // effective stress at the base before the footing [MPa]
	AtPeak    float64   // effective stress at the depth of the peak [MPa]
	Creep     float64   // C_2 [-]
	Moduli    []float64 // E of each layer by its cone resistance [MPa]

	Reach   float64 // depth of influence z_I by Burland and Burbidge [mm]
	Thick   float64 // of the sand that counts, at most the depth of influence [mm]
	Blows   float64 // mean N60 over it [-]
	Shape   float64 // f_s [-]
	Layer   float64 // f_l [-]
	Time    float64 // f_t [-]
	Index   float64 // I_c [-]
	Highest float64 // greatest effective stress that the base has known [MPa]
}

// onlyClay is why a method for sand has nothing to predict.
const onlyClay = "every layer within its reach has an oedometer test, which makes it clay"

// schmertmann prepares the method of Schmertmann. Layers with an oedometer test are
// clay, which consolidates, and are left out.
func (r *Result) schmertmann() {
	in, s := r.in, &r.Sand
	s.Share = planeShare(r.Width, r.Length)
	s.Creep = 1
	if in.Years > 0.1 {
		s.Creep = 1 + 0.2*math.Log10(in.Years/0.1)
	}
	end, top, counts := endDepth(r.Width, s.Share), 0.0, false
	s.Moduli = make([]float64, len(in.Layers))
	for i := range in.Layers {
		l := &in.Layers[i]
		if top >= end {
			break
		}
		if l.clay() {
			top += l.Thickness
			continue
		}
		counts = true
		if l.Cone == 0 {
			r.NoSchmertmann = nameless(i, "cone_resistance_mpa")
			return
		}
		s.Moduli[i] = (2.5 + s.Share) * l.Cone
		top += l.Thickness
	}
	if !counts {
		r.NoSchmertmann = onlyClay
		return
	}
	var base, peak bool
	s.Overlying, base = r.initial(0)
	s.AtPeak, peak = r.initial(peakDepth(r.Width, s.Share))
	if !base || !peak || !(s.AtPeak > 0) {
		r.NoSchmertmann = noWeights
	}
}

// peak is the greatest strain influence under the net pressure q.
func (s *Sand) peak(q float64) float64 { return 0.5 + 0.1*math.Sqrt(q/s.AtPeak) }

// depthFactor is C_1 under the net pressure q, which is not 0.
func (s *Sand) depthFactor(q float64) float64 { return max(0.5, 1-0.5*s.Overlying/q) }

// areas returns the area of the strain influence over each layer [mm].
func (r *Result) areas(q float64) []float64 {
	in, s := r.in, &r.Sand
	peak, end := s.peak(q), endDepth(r.Width, s.Share)
	at := peakDepth(r.Width, s.Share)
	iz := func(z float64) float64 { return SchmertmannInfluence(z, r.Width, r.Length, peak) }
	piece := func(a, b float64) float64 {
		if !(b > a) {
			return 0
		}
		return (b - a) * (iz(a) + iz(b)) / 2
	}
	out, top := make([]float64, len(in.Layers)), 0.0
	for i := range in.Layers {
		bottom := min(end, top+in.Layers[i].Thickness)
		if in.HalfSpace && i == len(in.Layers)-1 {
			bottom = end
		}
		if bottom > top {
			out[i] = piece(top, min(bottom, at)) + piece(max(top, at), bottom)
		}
		top = max(top, bottom)
	}
	return out
}

func (r *Result) schmertmannOf(q float64) float64 {
	if r.NoSchmertmann != "" || q == 0 {
		return 0
	}
	sum := 0.0
	for i, a := range r.areas(q) {
		if a > 0 && r.Sand.Moduli[i] > 0 {
			sum += a / r.Sand.Moduli[i]
		}
	}
	return r.Sand.depthFactor(q) * r.Sand.Creep * q * sum
}

// burland prepares the method of Burland and Burbidge.
//
//	z_I = B^0.75 with B in m, or 2 B where N falls with depth
//	f_s = (1.25 L/B/(L/B + 0.25))^2, f_l = H/z_I (2 - H/z_I)
//	f_t = 1 + R_3 + R_t log10(t/3), 0.3 and 0.2 for loads at rest; up to 3 years
//	the growth of all three
//
// H goes down to the last sand within z_I, as if clay in between were sand too,
// which is on the safe side; N is the mean of the sand alone.
//
// Source: Burland and Burbidge 1985, Settlement of foundations on sand and
// gravel (from memory).
func (r *Result) burland() {
	in, s := r.in, &r.Sand
	ratio := r.Length / r.Width
	s.Shape = 1.25 * ratio / (ratio + 0.25)
	s.Shape *= s.Shape
	s.Time = 1
	if in.Years > 0 {
		s.Time = 1 + 0.3 + 0.2*math.Log10(max(1, in.Years/3))
	}
	s.Reach = 1000 * math.Pow(r.Width/1000, 0.75)
	last, above := len(in.Layers)-1, 0.0
	top := 0.0
	for i := 0; i <= last && top < 2*r.Width; i++ {
		l := &in.Layers[i]
		if l.N60 > 0 && !l.clay() {
			if l.N60 < above {
				s.Reach = max(s.Reach, 2*r.Width)
			}
			above = l.N60
		}
		top += l.Thickness
	}
	sum, sand := 0.0, 0.0
	top = 0
	for i := 0; i <= last && top < s.Reach; i++ {
		l := &in.Layers[i]
		if l.clay() {
			top += l.Thickness
			continue
		}
		if l.N60 == 0 {
			r.NoBurland = nameless(i, "n60")
			return
		}
		bottom := min(s.Reach, top+l.Thickness)
		if in.HalfSpace && i == last {
			bottom = s.Reach
		}
		sum += l.N60 * (bottom - top)
		sand += bottom - top
		top = bottom
		s.Thick = bottom
	}
	if sand == 0 {
		r.NoBurland = onlyClay
		return
	}
	s.Blows = sum / sand
	s.Layer = s.Thick / s.Reach * (2 - s.Thick/s.Reach)
	s.Index = 1.71 / math.Pow(s.Blows, 1.4)
	var known bool
	if s.Overlying, known = r.initial(0); !known {
		r.NoBurland = noWeights
		return
	}
	s.Highest = max(s.Overlying, in.Preloaded)
}

// burlandOf returns the settlement under the net pressure q.
//
//	s = f_s f_l f_t (q' - 2/3 sigma'_p) B^0.7 I_c   above sigma'_p
//	s = f_s f_l f_t q'/3 B^0.7 I_c                  below
//
// with q' the gross effective pressure in kPa, B in m and s in mm.
func (r *Result) burlandOf(q float64) float64 {
	if r.NoBurland != "" || q == 0 {
		return 0
	}
	s := &r.Sand
	gross := q + s.Overlying
	counts := gross / 3
	if gross > s.Highest {
		counts = gross - s.Highest*2/3
	}
	return s.Shape * s.Layer * s.Time * 1000 * counts * math.Pow(r.Width/1000, 0.7) * s.Index
}

// BlowCount returns the settlement of a footing of the width b at the depth d
// on sand by its blow count [mm].
//
//	s = 1.25 q/(N60 F_d) for B <= 1.22 m, else 2 q/(N60 F_d) (B/(B+0.3))^2
//	F_d = 1 + 0.33 D/B <= 1.33, with q in kPa and B in m
//
// Source: Meyerhof 1956 as changed by Bowles; Das, Principles of foundation
// engineering, Ex 5.8 (the small width from memory).
func BlowCount(q, b, d, n60 float64) float64 {
	fd := min(1.33, 1+0.33*d/b)
	if m := b / 1000; m > 1.22 {
		return 2000 * q / (n60 * fd) * m / (m + 0.3) * m / (m + 0.3)
	}
	return 1250 * q / (n60 * fd)
}
