package pin

import (
	"math"

	"footward.example/footward/internal/material"
)

// Clauses and factors of NDS in this file are from memory.
const (
	clauseLateralUS = "NDS 2018 12.3, Tables 12.3.1A, 12.3.1B"
	clauseBearingUS = "NDS 2018 12.3.3, 12.3.4"
	clauseGroup     = "NDS 2018 11.3.6"
	clauseLeastUS   = "NDS 2018 Tables 12.5.1A to 12.5.1D, full C_delta"
	clauseSpread    = "NDS 2018 12.5.1.3"
	clauseSplitUS   = "NDS 2018 3.4.3.3"
	clauseBlockUS   = "NDS 2018 Appendix E"
	clauseNetUS     = "NDS 2018 3.8.1, 3.1.2"
	clauseEndUS     = "NDS 2018 3.10.1"
	clauseAdjust    = "NDS 2018 11.3.1, Appendix N"
)

const (
	inch        = 25.4              // mm
	psi         = 0.006894757293168 // MPa
	pound       = 4.4482216152605   // N
	leastUS     = 0.25 * inch       // NDS 2018 Table 12.3.1B
	mostUS      = 1.0 * inch        // NDS 2018 Table 12.3.1B
	faceAlong   = 11200 * psi       // F_e parallel over G; NDS 2018 Table 12.3.3
	faceAcross  = 6100 * psi        // F_e perpendicular over G^1.45/sqrt(D in inches); NDS 2018 Table 12.3.3
	faceSteel   = 1.5               // F_e of hot-rolled steel over F_u; NDS 2018 Appendix I.2
	reduceI     = 4.0               // R_d of modes I over K_theta; NDS 2018 Table 12.3.1B
	reduceIII   = 3.2               // R_d of modes III and IV over K_theta; NDS 2018 Table 12.3.1B
	slip        = 270000.0          // load/slip modulus over D^1.5 of wood to metal, lb/in; NDS 2018 11.3.6
	mostSpread  = 5 * inch          // NDS 2018 12.5.1.3
	acrossStiff = 1.0 / 20          // modulus across the grain over that along it; engineering choice, NDS has none
)

// American holds the intermediate values of NDS at the governing pin. Forces
// are those of a pin with both its shear planes.
type American struct {
	FeAlong  float64 // dowel bearing strength along the grain [MPa]
	FeAcross float64 // across the grain [MPa]
	Fe       float64 // at the angle, F_e,theta [MPa]
	FeSteel  float64 // of the plate [MPa]
	Qm       float64 // of the main member, F_em D [N/mm]
	Qs       float64 // of a side member, F_es D [N/mm]
	Lm       float64 // bearing length in the main member [mm]
	Ls       float64 // bearing length in a side member [mm]
	Mp       float64 // yield moment of the pin, F_yb D^3/6 [Nmm]
	Ktheta   float64 // 1 + 0.25 theta/90 degrees [-]
	// Modes I_m, I_s, III_s, IV, divided by R_d.
	Zi    float64 // mode I_m [N]
	Zs    float64 // mode I_s [N]
	Ziii  float64 // mode III_s [N]
	Ziv   float64 // mode IV [N]
	Z     float64 // reference lateral design value [N]
	Cg    float64 // group action factor [-]
	Given bool    // whether C_g was given
	Kz    float64 // what Z is multiplied by beside C_g [-]
	LD    float64 // length in timber over D [-]
}

// us sets what does not depend on the angle.
//
//	F_e parallel = 11 200 G, F_e perpendicular = 6100 G^1.45/sqrt(D) [psi, in]
//	M_p = F_yb D^3/6
//
// Source: NDS 2018 12.3.3, Table 12.3.3; AWC TR12.
func (r *Result) us() {
	in, u, d := r.in, &r.US, r.in.Pin.Diameter
	u.LD = r.Timber.Width / d
	switch {
	case d < leastUS-rounding || d > mostUS+rounding:
		r.reason = "pins under 1/4 in or over 1 in are beyond NDS Table 12.3.1B"
	case in.Plates.Hole-d > mostClearance+rounding:
		r.reason = "holes exceed the pin by more than 2 mm (NDS 12.1.3.2: 1/16 in)"
	}
	if r.reason != "" {
		return
	}
	u.Cg = r.group()
	if u.Cg == 0 {
		r.reason = "several pins in line need C_g: give group_factor, or the modulus of the timber for NDS 11.3.6"
		return
	}
	g := in.Timber.Gravity
	u.FeAlong = faceAlong * g
	u.FeAcross = faceAcross * math.Pow(g, 1.45) / math.Sqrt(d/inch)
	u.FeSteel = in.Plates.Embedment
	if u.FeSteel == 0 {
		_, fu, _ := in.Plates.Steel.At(in.Plates.Thickness)
		u.FeSteel = faceSteel * fu
	}
	u.Mp = in.Pin.Fyb * d * d * d / 6
	u.Kz = r.adjust(&ndsConnection)
}

// lateralUS returns the adjusted lateral design value of a pin at an angle to
// the grain [N].
//
//	I_m: D l_m F_em/R_d; I_s: 2 D l_s F_es/R_d
//	III_s: 2 k_3 D l_s F_em/((2 + R_e) R_d)
//	IV: 2 D^2/R_d sqrt(2 F_em F_yb/(3 (1 + R_e)))
//	F_e,theta = F_par F_perp/(F_par sin^2 + F_perp cos^2)
//
// III_s and IV are computed in the equal form of AWC TR12 (from memory), which
// also holds across a gap: P^2 A + P B = K with
//
//	III_s: A = 1/(4 q_s) + 1/(2 q_m), B = l_s/2 + g, K = M_p + q_s l_s^2/4
//	IV:    A = 1/(2 q_s) + 1/(2 q_m), B = g, K = 2 M_p
//
// Source: NDS 2018 Tables 12.3.1A, 12.3.1B, 12.3.4.
func (r *Result) lateralUS(theta float64) float64 {
	in, u, d := r.in, &r.US, r.in.Pin.Diameter
	sin, cos := math.Sincos(theta)
	u.Fe = u.FeAlong * u.FeAcross / (u.FeAlong*sin*sin + u.FeAcross*cos*cos)
	u.Qm, u.Lm, u.Qs, u.Ls = u.Fe*d, in.Timber.AlongPin, u.FeSteel*d, r.net()
	if in.Plates.Arrangement == Inside {
		u.Qm, u.Lm, u.Qs, u.Ls = u.FeSteel*d, r.net(), u.Fe*d, r.Timber.Side
	}
	u.Ktheta = 1 + 0.25*theta/(math.Pi/2)
	one, three, g := reduceI*u.Ktheta, reduceIII*u.Ktheta, in.Plates.Gap
	u.Zi = u.Qm * u.Lm / one
	u.Zs = planes * u.Qs * u.Ls / one
	u.Ziii = planes * root(1/(4*u.Qs)+1/(2*u.Qm), u.Ls/2+g, u.Mp+u.Qs*u.Ls*u.Ls/4) / three
	u.Ziv = planes * root(1/(2*u.Qs)+1/(2*u.Qm), g, 2*u.Mp) / three
	u.Z = min(min(u.Zi, u.Zs), min(u.Ziii, u.Ziv))
	return u.Z * u.Cg * u.Kz
}

// root returns the positive root of a p^2 + b p = k.
func root(a, b, k float64) float64 { return 2 * k / (b + math.Sqrt(b*b+4*a*k)) }

// group returns the group action factor [-], the least along and across the
// grain where pins stand in line with a force; 0 where it is not known.
func (r *Result) group() float64 {
	in, l := r.in, &r.in.Layout
	along := l.InRow > 1 && r.Lengthy
	across := l.Rows > 1 && r.Sideways
	switch {
	case l.GroupFactor > 0:
		r.US.Given = true
		return l.GroupFactor
	case !along && !across:
		return 1
	case in.Timber.Modulus == 0:
		return 0
	}
	steel := r.count() * r.net() * steelModulus
	c := 1.0
	if along {
		c = min(c, r.groupOf(l.InRow, l.SpacingAlong, in.Timber.Modulus*r.Timber.Gross, steel*in.Plates.Width))
	}
	if across {
		// Across the grain the group's own width along it carries; NDS 2018 11.3.6.3.
		width := max(in.along(), minimumWidth*in.Pin.Diameter)
		c = min(c, r.groupOf(l.Rows, l.SpacingAcross, acrossStiff*in.Timber.Modulus*r.Timber.Width*width, steel*width))
	}
	return c
}

// minimumWidth is the width of one line of pins over d, where it is loaded
// across the grain: the least spacing of lines, NDS 2018 11.3.6.3 (from memory).
const minimumWidth = 4.0

// groupOf returns the group action factor of n pins in line at spacing s, with
// the stiffnesses EA of the timber and of all plates [-].
//
//	C_g = m (1 - m^2n)/(n ((1 + R m^n)(1 + m) - 1 + m^2n)) (1 + R)/(1 - m)
//	m = u - sqrt(u^2 - 1), u = 1 + gamma s/2 (1/(E_m A_m) + 1/(E_s A_s))
//	gamma = 270 000 D^1.5 [lb/in, in], R the smaller ratio of the stiffnesses
//
// Source: NDS 2018 (11.3-1).
func (r *Result) groupOf(n int, s, timber, steel float64) float64 {
	gamma := slip * math.Pow(r.in.Pin.Diameter/inch, 1.5) * pound / inch
	ratio := min(timber/steel, steel/timber)
	more := gamma * s / 2 * (1/timber + 1/steel) // u - 1
	m := 1 + more - math.Sqrt(more*(more+2))
	if !(m < 1-1e-9) {
		return 1
	}
	k := float64(n)
	mn := math.Pow(m, k)
	c := m * (1 - mn*mn) / (k * ((1+ratio*mn)*(1+m) - 1 + mn*mn)) * (1 + ratio) / (1 - m)
	return min(1, c)
}

// leastUS sets the least distances for the full geometry factor. At an angle to
// the grain both directions must hold.
//
//	along the grain: a_1 4 D, a_2 1.5 D, end 7 D (5 D hardwood) or 4 D, edge 1.5 D,
//	  or half of a_2 where l/D > 6
//	across it: a_1 2.5 D for l/D <= 2, (5 l + 10 D)/8 between, 5 D from l/D = 6,
//	  a_2 4 D, end 4 D, edge 4 D
//
// Source: NDS 2018 Tables 12.5.1A to D (from memory).
func (r *Result) leastUS() {
	in, d := r.in, r.in.Pin.Diameter
	a1, a2, a3, a4 := 0.0, 0.0, 4*d, 1.5*d
	if r.Lengthy || !r.Loaded {
		a1, a2 = 4*d, 1.5*d
		if r.US.LD > 6 && in.Layout.Rows > 1 {
			a4 = max(a4, in.Layout.SpacingAcross/2)
		}
	}
	if r.Toward {
		a3 = 7 * d
		if in.Timber.Kind == material.SolidHardwood {
			a3 = 5 * d
		}
	}
	if r.Sideways {
		a1 = max(a1, min(5*d, max(2.5*d, (5*r.Timber.Width+10*d)/8)))
		a2, a4 = max(a2, 4*d), max(a4, 4*d)
	}
	r.distances(a1, a2, a3, a4)
}

// splittingUS sets the shear that the timber carries at the pins.
//
//	V'_r = 2/3 F'_v b d_e (d_e/d)^2
//
// Source: NDS 2018 (3.4-6), connections less than five depths from the end.
func (r *Result) splittingUS() {
	s, h := &r.Timber, r.in.Timber.AcrossPin
	s.Split = 2.0 / 3 * s.Fv * s.Width * s.He * (s.He / h) * (s.He / h)
}
