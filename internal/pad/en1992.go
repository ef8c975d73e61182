package pad

import "math"

// Values of EN 1992-1-1:2004 with its recommended parameters; national annexes may
// change them.
const (
	plainFactor  = 0.85   // 12.9.3(1)
	plainShear   = 1.5    // 12.6.3(2), k
	blockDepth   = 0.8    // 3.1.7(3), lambda up to C50/60
	crush        = 0.0035 // Table 3.1, epsilon_cu3 up to C50/60
	modulus      = 200e3  // 3.2.7(4), E_s [MPa]
	leastFctm    = 0.26   // 9.2.1.1(1)
	leastShare   = 0.0013 // 9.2.1.1(1)
	shearShare   = 0.18   // 6.2.2(1), C_Rd,c = 0.18/gamma_C
	leastShear   = 0.035  // 6.2.2(1), v_min
	mostRho      = 0.02   // 6.2.2(1), 6.4.4(1)
	strutShare   = 0.5    // 6.2.2(6)
	columnShare  = 0.4    // 6.4.5(3) with A1:2014 (from memory); 0.5 before
	edgeLever    = 0.15   // 9.8.2.2(3), e = 0.15 b
	innerLever   = 0.9    // 9.8.2.2(3), z_i = 0.9 d
	bond         = 2.25   // 8.4.2(2)
	leastBondBar = 10     // 8.6, l_b,min over the diameter; 0.3 l_b,rqd is never more than l_b,rqd
	leastBond    = 100    // l_b,min, 8.4.4(1) [mm]
	leastBarEC   = 8      // 9.8.2.1(1) [mm]
)

// eurocode sets strengths and resistances.
//
// Source: EN 1992-1-1:2004.
func (r *Result) eurocode() {
	in, f := r.in, &r.Strength
	fck, gammaC := in.Concrete.Strength, in.Design.EC.GammaC
	f.AlphaPl, f.GammaS = in.Design.EC.AlphaCTPl, in.Design.EC.GammaS
	f.Fcd = in.Design.EC.AlphaCC * fck / gammaC
	f.Fctm = 0.3 * math.Cbrt(fck*fck)
	f.Fctd = 0.7 * f.Fctm / gammaC
	f.FctdPl = f.AlphaPl * f.Fctd
	f.Fyd = in.Reinforcement.Yield / f.GammaS
	for i := range r.Spans {
		s := &r.Spans[i]
		s.plainEC(r)
		if in.reinforced() {
			s.bendEC(r)
			s.bondEC(r, [2]float64{in.Column.SizeX, in.Column.SizeY}[i])
			s.shearEC(r)
		}
	}
	if in.reinforced() {
		r.punchEC()
	}
}

// plainEC sets what plain concrete needs.
//
//	h_F = a sqrt(3 sigma_gd/f_ctd,pl)/0.85, which is m = sigma_gd a^2/2 on the
//	section 0.85 h_F; 3 with f_ctd,pl is that of a corrigendum, the first print
//	had another pair (from memory)
//	tau_cp = 1.5 sigma_gd a/h <= f_cvd = f_ctd,pl
//	m = f_ctd,pl (0.85 h)^2/6, for the top where the pad hangs
//
// Source: EN 1992-1-1:2004 with AC:2008 or AC:2010 (from memory) 12.9.3(1);
// 12.6.3(2), (3), 12.3.1.
func (s *Span) plainEC(r *Result) {
	h, f := r.in.Thickness, r.Strength.FctdPl
	s.Need = s.A * math.Sqrt(3*r.Net/f) / plainFactor
	s.Plain = f * (plainFactor * h) * (plainFactor * h) / 6
	if !r.in.reinforced() {
		s.V, s.VRd = s.VFace, f*h/plainShear
	}
}

// bendEC sets bending and the least steel.
//
//	m_Rd = A_s f_yd (d - A_s f_yd/(2 f_cd))
//	A_s <= 0.8 d f_cd/f_yd 0.0035/(0.0035 + f_yd/E_s), so that the bars yield
//	rho_min = max(0.26 f_ctm/f_yk, 0.0013)
//
// Source: EN 1992-1-1:2004 6.1, 3.1.7(3), 9.2.1.1(1).
func (s *Span) bendEC(r *Result) {
	f := &r.Strength
	s.AsMost = blockDepth * s.Depth * f.Fcd / f.Fyd * crush / (crush + f.Fyd/modulus)
	s.MRd = bend(min(s.As, s.AsMost), f.Fyd, f.Fcd, s.Depth)
	s.AsNeed = steel(s.M, f.Fyd, f.Fcd, s.Depth, s.AsMost)
	s.RhoMin = max(leastFctm*f.Fctm/r.in.Reinforcement.Yield, leastShare)
	s.Rho = s.As / s.Depth
}

// bend returns the moment that bars of one layer carry with a block of concrete.
func bend(as, yield, block, d float64) float64 {
	return as * yield * (d - as*yield/(2*block))
}

// steel turns bend round; 0 where no bars are enough.
func steel(m, yield, block, d, most float64) float64 {
	inside := d*d - 2*m/block
	if !(inside >= 0) {
		return 0
	}
	// d - sqrt(d^2 - 2 m/block), without the difference of nearly equal numbers.
	as := 2 * m / (d + math.Sqrt(inside)) / yield
	if as > most {
		return 0
	}
	return as
}

// bondEC sets the anchorage of straight bars, or bars bent up, at the edge.
//
//	x = h/2 for straight bars, else the worst x from there to the face; R = sigma x, F_s = R z_e/z_i, z_e = a + 0.15 b - x/2, z_i = 0.9 d
//	l_bd = phi/4 (F_s/A_s)/f_bd >= max(10 phi, 100 mm), f_bd = 2.25 f_ctd
//
// Source: EN 1992-1-1:2004 9.8.2.2, 8.4.2, 8.4.3, 8.4.4.
func (s *Span) bondEC(r *Result, column float64) {
	bars := &r.in.Reinforcement
	at := func(x float64) {
		s.Reach = x
		s.Pull = r.Net * x * (s.A + edgeLever*column - x/2) / (innerLever * s.Depth)
		s.Bond = max(s.Bar/4*s.Pull/s.As/(bond*r.Strength.Fctd), leastBondBar*s.Bar, leastBond)
		s.Has = x - bars.Cover + bars.Bend
	}
	from := min(r.in.Thickness/2, s.A)
	at(from)
	if s.A == 0 {
		s.Bond = 0
		return
	}
	if bars.Bend == 0 {
		return
	}
	worst, most := from, 0.0
	for i := range bondScans + 1 {
		x := from + (s.A-from)*float64(i)/bondScans
		if at(x); s.Bond/s.Has > most {
			worst, most = x, s.Bond/s.Has
		}
	}
	at(worst)
}

// bondScans is how many places of bent bars are tried.
const bondScans = 64

// shearEC sets shear at d from the face and the strut at the face.
//
//	v_Rd,c = max(0.18/gamma_C k (100 rho f_ck)^(1/3), 0.035 k^1.5 sqrt(f_ck)) d
//	v_Rd,max = 0.5 d nu f_cd, nu = 0.6 (1 - f_ck/250)
//
// Bars count only where they reach l_bd + d beyond the section.
//
// Source: EN 1992-1-1:2004 6.2.1(8), 6.2.2(1), (6), Figure 6.3.
func (s *Span) shearEC(r *Result) {
	in, f := r.in, &r.Strength
	s.At = s.Depth
	s.V = r.Net * max(0, s.A-s.Depth)
	full := s.Bar / 4 * f.Fyd / (bond * f.Fctd)
	if s.A-s.Depth-in.Reinforcement.Cover+in.Reinforcement.Bend >= full+s.Depth {
		s.RhoV = min(s.Rho, mostRho)
	}
	s.K = sizeEC(s.Depth)
	s.VRd = shearStress(in, s.K, s.RhoV) * s.Depth
	s.Strut = strutShare * s.Depth * nu(in.Concrete.Strength) * f.Fcd
}

func nu(fck float64) float64 { return 0.6 * (1 - fck/250) }

func sizeEC(d float64) float64 { return min(1+math.Sqrt(200/d), 2) }

// shearStress returns v_Rd,c.
func shearStress(in *Input, k, rho float64) float64 {
	fck := in.Concrete.Strength
	return max(shearShare/in.Design.EC.GammaC*k*math.Cbrt(100*rho*fck), leastShear*k*math.Sqrt(k*fck))
}
