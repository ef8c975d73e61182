package pad

import "math"

const (
	outside = "the perimeter of punching lies outside the pad"
	scans   = 12 // perimeters tried before the worst is closed in on
	closing = 12 // steps of closing in; each leaves 0.62 of the interval, and the top is flat
)

// punchEC finds the control perimeter that governs, within 2 d and on the pad, and
// the one of the loaded area.
//
//	v_Ed = V_Ed,red/(u d) + sum of k M/(W d), or p_net (A - A_u)/(u d) if greater
//	v_Rd = max(0.18/gamma_C k (100 rho f_ck)^(1/3), v_min) 2 d/a
//	at the loaded area v_Rd,max = 0.4 nu f_cd
//
// The moments are not reduced by the pressure inside the perimeter, and where the
// pad lifts the column's force is not either.
//
// Source: EN 1992-1-1:2004 6.4.2(2), 6.4.3(3), Table 6.1, 6.4.4(2), 6.4.5(3).
func (r *Result) punchEC() {
	in, d := r.in, r.depth()
	r.Column = r.roundPerimeter(0)
	r.Column.R = columnShare * nu(in.Concrete.Strength) * r.Strength.Fcd
	far := min(2*d, r.Spans[0].A, r.Spans[1].A)
	if !(far > 0) {
		r.PunchSkip = outside
		return
	}
	k, rho := sizeEC(d), min(math.Sqrt(r.Spans[0].Rho*r.Spans[1].Rho), mostRho)
	stress := shearStress(in, k, rho)
	use := func(a float64) float64 { return r.roundPerimeter(a).V * a }
	worst, at := 0.0, far
	for i := 1; i <= scans; i++ {
		a := far * float64(i) / scans
		if u := use(a); u > worst {
			worst, at = u, a
		}
	}
	low, high := at-far/scans, min(at+far/scans, far)
	const golden = 0.6180339887498949
	for range closing {
		one, two := high-golden*(high-low), low+golden*(high-low)
		if use(one) > use(two) {
			high = two
		} else {
			low = one
		}
	}
	if a := (low + high) / 2; use(a) > worst {
		at = a
	}
	r.Punch = r.roundPerimeter(at)
	r.Punch.K, r.Punch.Rho, r.Punch.R = k, rho, stress*2*d/at
}

// roundPerimeter returns the perimeter with rounded corners at a distance.
func (r *Result) roundPerimeter(a float64) Perimeter {
	cx, cy := r.in.Column.SizeX, r.in.Column.SizeY
	p := Perimeter{
		A: a, D: r.depth(),
		U:    2*(cx+cy) + 2*math.Pi*a,
		Area: cx*cy + 2*(cx+cy)*a + math.Pi*a*a,
	}
	r.stress(&p)
	p.Turn += (uneven(cx, cy)*r.My/perimeterModulus(cx, cy, a) + uneven(cy, cx)*r.Mx/perimeterModulus(cy, cx, a)) / p.D
	p.V = max(p.Even, p.Turn)
	return p
}

// stress sets the stresses without the moments.
func (r *Result) stress(p *Perimeter) {
	area := r.in.SizeX * r.in.SizeY
	p.Force = max(0, -r.in.Actions.N)
	if r.Kern {
		p.Force *= max(0, 1-p.Area/area)
	}
	p.Even = r.Net * max(0, area-p.Area) / (p.U * p.D)
	p.Turn = p.Force / (p.U * p.D)
}

// perimeterModulus returns W of (6.40) for a perimeter at a distance a instead of
// 2 d; one is the size of the column along the eccentricity.
//
//	W = c_1^2/2 + c_1 c_2 + 2 c_2 a + 4 a^2 + pi a c_1
//
// Source: EN 1992-1-1:2004 6.4.3(3), (6.41).
func perimeterModulus(one, two, a float64) float64 {
	return one*one/2 + one*two + 2*two*a + 4*a*a + math.Pi*a*one
}

// uneven returns k of Table 6.1.
//
// Source: EN 1992-1-1:2004 Table 6.1.
func uneven(one, two float64) float64 {
	switch c := one / two; {
	case c <= 0.5:
		return 0.45
	case c <= 1:
		return 0.45 + 0.15*(c-0.5)/0.5
	case c <= 2:
		return 0.6 + 0.1*(c-1)
	case c < 3:
		return 0.7 + 0.1*(c-2)
	}
	return 0.8
}

// squarePerimeter sets the stresses on the rectangle at half the depth from the
// loaded area.
//
//	v_u = V_u/(b_o d) + sum of gamma_v M b/(2 J), or p_net (A - A_o)/(b_o d) if greater
//	gamma_v = 1 - 1/(1 + 2/3 sqrt(b_1/b_2)), J = d b_1^3/6 + b_1 d^3/6 + d b_2 b_1^2/2
//
// Source: ACI 318-19 22.6.4.1, 8.4.2.2, 8.4.4.2.
func (r *Result) squarePerimeter(d float64) Perimeter {
	one, two := r.in.Column.SizeX+d, r.in.Column.SizeY+d
	p := Perimeter{A: d / 2, D: d, U: 2 * (one + two), Area: one * two}
	r.stress(&p)
	p.Turn += turnACI(r.My, one, two, d) + turnACI(r.Mx, two, one, d)
	p.V = max(p.Even, p.Turn)
	return p
}

// turnACI returns the shear stress by a moment.
func turnACI(m, one, two, d float64) float64 {
	return gamma(one, two) * m * one / 2 / polar(one, two, d)
}

// gamma returns the share of a moment that shear carries.
func gamma(one, two float64) float64 { return 1 - 1/(1+2.0/3*math.Sqrt(one/two)) }

// polar returns J of the perimeter.
func polar(one, two, d float64) float64 {
	return d*one*one*one/6 + one*d*d*d/6 + d*two*one*one/2
}
