package pad

import "math"

// kern is the eccentricity over the size, both directions added, up to which the
// whole underside presses.
const kern = 1.0 / 6

// press sets the pressure on the underside.
//
//	V = W - N, e_x = (|M_y| + |V_x| h_a)/V, e_y likewise
//	p_max = V/A (1 + 6 e_x/B + 6 e_y/L) inside the kern
//	p_max = V/A k_x k_y outside it, k = 1 + 6 e/B, above B/6: 4/(3 (1 - 2 e/B))
//	p_net = p_max - W/A
//
// Source: statics of a straight line of pressure without tension; the product of
// both directions is an upper bound that the tests hold against a rigid plate on a
// bed without tension.
func (r *Result) press() {
	in, a := r.in, &r.in.Actions
	area := in.SizeX * in.SizeY
	r.V = in.Weight - a.N
	r.Mx = math.Abs(a.Mx) + math.Abs(a.Vy)*in.lever()
	r.My = math.Abs(a.My) + math.Abs(a.Vx)*in.lever()
	r.Own = in.Weight / area
	if !(r.V > 0) {
		r.OnPad, r.Kern, r.Factor, r.Hang = r.V == 0 && a.N <= 0 && r.Mx == 0 && r.My == 0, true, 1, r.Own
		return
	}
	r.Ex, r.Ey = r.My/r.V, r.Mx/r.V
	x, y := r.Ex/in.SizeX, r.Ey/in.SizeY
	r.Share = 2 * max(x, y)
	r.OnPad = r.Share < 1
	if !r.OnPad {
		return
	}
	mean := r.V / area
	r.Kern = x+y <= kern
	if r.Kern {
		r.Factor = 1 + 6*(x+y)
		r.Hang = max(0, r.Own-mean*(1-6*(x+y)))
	} else {
		r.Factor = oneWay(x) * oneWay(y)
		r.Hang = r.Own
	}
	r.Gross = mean * r.Factor
	r.Net = max(0, r.Gross-r.Own)
}

// oneWay returns the greatest pressure over the mean for an eccentricity, in parts
// of the size, along one direction.
func oneWay(share float64) float64 {
	if share <= kern {
		return 1 + 6*share
	}
	return 4 / (3 * (1 - 2*share))
}
