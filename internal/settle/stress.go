package settle

import (
	"math"

	"footward.example/footward/internal/material"
)

// StressBelowCorner returns the vertical stress at the depth z below a corner of
// a flexible rectangle of b by l that presses with q [MPa].
//
//	sigma = q/(2 pi) [2mn sqrt(V)/(V+V1) (V+1)/V + atan(2mn sqrt(V)/(V-V1))]/2
//	m = b/z, n = l/z, V = m^2+n^2+1, V1 = m^2 n^2
//
// It is computed in the equivalent form with R = sqrt(b^2+l^2+z^2), which needs
// no other branch of the arc tangent where V1 > V. At the surface it is q/4.
//
// Source: Boussinesq; Newmark 1935, Simplified computation of vertical pressures
// in elastic foundations (from memory).
func StressBelowCorner(q, b, l, z float64) float64 {
	if !(z > 0) {
		return q / 4
	}
	r := math.Sqrt(b*b + l*l + z*z)
	return q / (2 * math.Pi) * (math.Atan(b*l/(z*r)) + b*l*z/r*(1/(b*b+z*z)+1/(l*l+z*z)))
}

// StressBelowCircle returns the vertical stress at the depth z below the centre
// of a flexible circle of the radius a that presses with q [MPa].
//
//	sigma = q (1 - [1 + (a/z)^2]^-1.5)
//
// Source: Boussinesq, integrated over the circle (from memory).
func StressBelowCircle(q, a, z float64) float64 {
	// Written with z/a, so that the surface needs no case of its own.
	s := z / a
	return q * (1 - s*s*s/math.Pow(1+s*s, 1.5))
}

// SpreadTwoToOne returns the mean vertical stress at the depth z where the load
// of b by l spreads 1 to each side for 2 down [MPa]. A circle is given as
// b = l = D, of which the shape cancels.
//
//	sigma = q b l/((b+z)(l+z))
//
// Near the load it lies below the stress under the centre: never for the peak in
// a thin soft layer.
//
// Source: the 2:1 approximation of common practice (from memory).
func SpreadTwoToOne(q, b, l, z float64) float64 {
	return q * b / (b + z) * l / (l + z)
}

// below is the increase of stress under the centre at the depth z.
func (r *Result) below(q, z float64) float64 {
	switch in := r.in; {
	case in.Spread == TwoToOne:
		return SpreadTwoToOne(q, r.Width, r.Length, z)
	case in.Shape == Circle:
		return StressBelowCircle(q, r.Width/2, z)
	}
	return 4 * StressBelowCorner(q, r.Width/2, r.Length/2, z)
}

// initial is the effective stress at the depth z below the base before the
// footing; known is false where a unit weight is missing.
func (r *Result) initial(z float64) (sigma float64, known bool) {
	in := r.in
	if in.Depth > 0 && in.Above == 0 {
		return 0, false
	}
	sigma = in.Above * in.Depth
	top := 0.0
	for i := range in.Layers {
		if top >= z {
			break
		}
		l := &in.Layers[i]
		h := min(l.Thickness, z-top)
		if i == len(in.Layers)-1 {
			h = z - top
		}
		if l.Weight == 0 {
			return 0, false
		}
		sigma += l.Weight * h
		top += h
	}
	if !in.Dry {
		sigma -= material.WaterWeight * max(0, in.Depth+z-in.Water)
	}
	return max(0, sigma), true
}
