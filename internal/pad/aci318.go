package pad

import "math"

// What the customary formulas count in.
const (
	inch = 25.4            // mm; exact
	lbf  = 4.4482216152605 // N; exact
	psi  = lbf / (inch * inch)
)

// Values of ACI 318-19 (from memory).
const (
	phiPlainACI   = 0.60             // Table 21.2.1, plain concrete
	phiBend       = 0.90             // Table 21.2.2, tension-controlled
	phiShear      = 0.75             // Table 21.2.1(b)
	plainBend     = 5                // 14.5.2.1, of sqrt(f'c)
	plainOneWay   = 4.0 / 3          // 14.5.5.1(a)
	earthLoss     = 2 * inch         // 14.5.1.7, cast against soil
	leastPlain    = 8 * inch         // 14.3.2.1
	leastDepth    = 6 * inch         // 13.3.1.2
	leastSteelACI = 0.0018           // 7.6.1.1, 8.6.1.1, of the gross section
	oneWayACI     = 8                // Table 22.5.5.1(c)
	mostOneWay    = 5                // 22.5.5.1.1
	strainACI     = 0.003            // 22.2.2.1; also above the yield strain for tension control, 21.2.2
	blockACI      = 0.85             // 22.2.2.4.1
	thinBar       = 0.75*inch + 1e-9 // No. 6; 25.4.2.3
	leastDevelop  = 12 * inch        // 25.4.2.1(b)
	interior      = 40               // 22.6.5.3, alpha_s
)

// aci sets strengths and resistances.
//
// Source: ACI 318-19, chapters 13, 14, 22.
func (r *Result) aci() {
	in, f := r.in, &r.Strength
	f.Root = math.Sqrt(in.Concrete.Strength * psi)
	f.PhiPlain = phiPlainACI
	f.Counts = in.Thickness - earthLoss
	f.BetaOne = min(0.85, max(0.65, 0.85-0.05*(in.Concrete.Strength/psi-4000)/1000))
	r.band()
	for i := range r.Spans {
		s := &r.Spans[i]
		s.Plain = phiPlainACI * plainBend * f.Root * positive(f.Counts) * positive(f.Counts) / 6
		if in.reinforced() {
			s.bendACI(r)
			s.developACI(r)
			s.shearACI(r)
			continue
		}
		s.At = positive(f.Counts)
		s.V = r.Net * max(0, s.A-s.At)
		s.VRd = phiPlainACI * plainOneWay * f.Root * s.At
	}
	r.punchACI()
}

func positive(v float64) float64 { return max(0, v) }

// band raises the moment of the short bars of a pad that is no square, so that bars
// at an even spacing are as dense as the middle band needs.
//
//	2 beta/(beta + 1), beta the long side over the short one
//
// Source: ACI 318-19 13.3.3.3 and its commentary.
func (r *Result) band() {
	in := r.in
	if !in.reinforced() {
		return
	}
	long, short := max(in.SizeX, in.SizeY), min(in.SizeX, in.SizeY)
	at := 0 // bars along x are the short ones
	if in.SizeX >= in.SizeY {
		at = 1
	}
	s := &r.Spans[at]
	s.Band = 2 * long / (long + short)
	s.M *= s.Band
}

// bendACI sets bending and the least steel.
//
//	phi m_n = 0.9 A_s f_y (d - A_s f_y/(1.7 f'c))
//	A_s so that the strain of the bars is at least f_y/E_s + 0.003
//	A_s,min = 0.0018 h
//
// Source: ACI 318-19 22.2, 21.2.2, 7.3.3.1, 8.3.3.1, 8.6.1.1.
func (s *Span) bendACI(r *Result) {
	fy, block := r.in.Reinforcement.Yield, blockACI*r.in.Concrete.Strength
	s.AsMost = block * r.Strength.BetaOne / fy * s.Depth * strainACI / (2*strainACI + fy/modulus)
	s.MRd = phiBend * bend(min(s.As, s.AsMost), fy, block, s.Depth)
	s.AsNeed = steel(s.M/phiBend, fy, block, s.Depth, s.AsMost)
	s.RhoMin, s.Rho = leastSteelACI, s.As/r.in.Thickness
}

// developACI sets the length that develops a straight bar from the face.
//
//	l_d = f_y psi_g/(25 sqrt(f'c)) d_b, above No. 6 20 instead of 25, in psi; where
//	bars are nearer than 2 d_b clear or less covered than d_b, 1.5 times as long;
//	times A_s required over provided, at least 12 in
//
// Source: ACI 318-19 25.4.2.1, 25.4.2.3, 25.4.2.5, 25.4.10.1.
func (s *Span) developACI(r *Result) {
	bars := &r.in.Reinforcement
	share := 20.0
	if s.Bar <= thinBar {
		share = 25
	}
	s.Bond = bars.Yield / (share * r.Strength.Root) * s.Bar
	if s.Gap < 3*s.Bar || bars.Cover < s.Bar {
		s.Bond *= 1.5
	}
	if bars.Yield > 60e3*psi*1.02 { // Grade 420 counts as Grade 60
		s.Bond *= 1.15
	}
	if s.AsNeed > 0 {
		s.Bond *= min(1, s.AsNeed/s.As)
	}
	s.Bond = max(s.Bond, leastDevelop)
	s.Has = s.A - bars.Cover
	if s.A == 0 {
		s.Bond = 0
	}
}

// shearACI sets shear at d from the face.
//
//	phi V_c = 0.75 min(8 lambda_s rho_w^(1/3), 5) sqrt(f'c) d, in psi
//
// lambda_s is 1 unless the size effect is asked for: 13.2.6.2 lets footings neglect
// it.
//
// Source: ACI 318-19 22.5.5.1, 13.2.6.2.
func (s *Span) shearACI(r *Result) {
	s.At = s.Depth
	s.V = r.Net * max(0, s.A-s.Depth)
	s.K = r.sizeACI(s.Depth)
	s.RhoV = s.As / s.Depth
	s.VRd = phiShear * min(oneWayACI*s.K*math.Cbrt(s.RhoV), mostOneWay) * r.Strength.Root * s.Depth
}

// sizeACI returns lambda_s.
func (r *Result) sizeACI(d float64) float64 {
	if !r.in.SizeEffect {
		return 1
	}
	return min(1, math.Sqrt(2/(1+d/(10*inch))))
}

// punchACI sets two-way shear.
//
//	reinforced: phi v_c = 0.75 min(4, 2 + 4/beta, 2 + 40 d/b_o) lambda_s sqrt(f'c)
//	plain: phi v_n = 0.60 min(1 + 2/beta, 2) 4/3 sqrt(f'c), h less 2 in for d
//
// Source: ACI 318-19 22.6.5.2, 13.2.6.2, Table 14.5.5.1.
func (r *Result) punchACI() {
	in, d := r.in, r.depth()
	if !in.reinforced() {
		d = r.Strength.Counts
	}
	if !(d > 0) {
		return // no depth, no resistance
	}
	if min(r.Spans[0].A, r.Spans[1].A) <= d/2 {
		r.PunchSkip = outside
		return
	}
	r.Punch = r.squarePerimeter(d)
	p := &r.Punch
	beta := max(in.Column.SizeX, in.Column.SizeY) / min(in.Column.SizeX, in.Column.SizeY)
	if !in.reinforced() {
		p.R = phiPlainACI * min(1+2/beta, 2) * plainOneWay * r.Strength.Root
		return
	}
	p.K = r.sizeACI(d)
	p.R = phiShear * min(4, 2+4/beta, 2+interior*d/p.U) * p.K * r.Strength.Root
}
