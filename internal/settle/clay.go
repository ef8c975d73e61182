package settle

import "math"

// Oedometer is what an oedometer test says of a layer. Without C_c the layer
// has no test.
type Oedometer struct {
	Compression      float64 // C_c [-]; 0: no test
	Recompression    float64 // C_r [-]; 0: as C_c
	Void             float64 // e_0 [-]
	Preconsolidation float64 // greatest effective stress ever [MPa]; 0: normally consolidated
}

// Consolidation returns the primary compression of a layer of the thickness h
// whose effective stress grows by delta from sigma [mm].
//
//	s = h/(1+e_0) [C_r log10(min(sigma+delta, sigma_p)/sigma)
//	    + C_c log10((sigma+delta)/max(sigma, sigma_p))], each where positive
//
// Source: Terzaghi; Das, Principles of foundation engineering, Ex 5.10 (its
// normally consolidated branch; the other from memory).
func Consolidation(o Oedometer, h, sigma, delta float64) float64 {
	if !(delta > 0) {
		return 0
	}
	again := o.Recompression
	if again == 0 {
		again = o.Compression
	}
	end, past := sigma+delta, max(sigma, o.Preconsolidation)
	strain := again * math.Log10(min(end, past)/sigma)
	if end > past {
		strain += o.Compression * math.Log10(end/past)
	}
	return h / (1 + o.Void) * strain
}

// SimpsonMean returns the mean of a stress over a layer by its values at top,
// middle and bottom [MPa].
//
//	(top + 4 middle + bottom)/6
//
// Source: Simpson's rule, as Das, Principles of foundation engineering, Ex 5.10.
func SimpsonMean(top, middle, bottom float64) float64 { return (top + 4*middle + bottom) / 6 }

// consolidation asks whether the data allow the method.
func (r *Result) consolidation() {
	in := r.in
	r.NoConsolidation = "no layer has an oedometer test"
	depth := 0.0
	for i := range in.Layers {
		depth += in.Layers[i].Thickness
		if in.Layers[i].Oedometer.Compression == 0 {
			continue
		}
		r.NoConsolidation = ""
		if _, known := r.initial(depth); !known {
			r.NoConsolidation = noWeights
			return
		}
	}
}

// compressions returns what each layer compresses under the net pressure q.
func (r *Result) compressions(q float64) []float64 {
	in := r.in
	out, top := make([]float64, len(in.Layers)), 0.0
	for i := range in.Layers {
		l := &in.Layers[i]
		if l.Oedometer.Compression > 0 {
			out[i] = r.compression(l, q, top)
		}
		top += l.Thickness
	}
	return out
}

func (r *Result) compression(l *Layer, q, top float64) float64 {
	if r.in.Simpson {
		sigma, _ := r.initial(top + l.Thickness/2)
		delta := SimpsonMean(r.below(q, top), r.below(q, top+l.Thickness/2), r.below(q, top+l.Thickness))
		return Consolidation(l.Oedometer, l.Thickness, sigma, delta)
	}
	// Slices thin against the width, where the stress bends most, and thinner
	// towards the top, where the logarithm does: at the depth h t^2 the thickness
	// is 2 h t dt.
	n := int(min(400, max(40, math.Ceil(32*l.Thickness/r.Width))))
	dt, sum := 1/float64(n), 0.0
	for i := range n {
		t := (float64(i) + 0.5) * dt
		z := top + l.Thickness*t*t
		sigma, _ := r.initial(z)
		sum += Consolidation(l.Oedometer, 2*l.Thickness*t*dt, sigma, r.below(q, z))
	}
	return sum
}

func (r *Result) consolidationOf(q float64) float64 {
	if r.NoConsolidation != "" {
		return 0
	}
	sum := 0.0
	for _, s := range r.compressions(q) {
		sum += s
	}
	return sum
}
