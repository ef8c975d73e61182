package anchor

import "math"

// What the customary formulas count in.
const (
	inch = 25.4            // mm; exact
	lbf  = 4.4482216152605 // N; exact
	psi  = lbf / (inch * inch)
)

// rootPsi turns a coefficient of sqrt(f'c) in psi, for a length in inches to some
// power and a force in pounds, into N, mm and MPa.
func rootPsi(power float64) float64 {
	return lbf / math.Sqrt(psi) / math.Pow(inch, power)
}

// Factors of ACI 318-19 chapter 17 for cast-in headed rods (from memory).
var (
	coneACI = 24 * rootPsi(1.5)   // 17.6.2.2.1, k_c
	deepACI = 16 * rootPsi(5.0/3) // 17.6.2.2.3, h_ef from 11 to 25 in.
	blowOut = 160 * rootPsi(2)    // 17.6.4.1, c_a1 sqrt(A_brg)
	edgeOne = 7 * rootPsi(2)      // 17.7.2.2.1(a), sqrt(d) c_a1^1.5
	edgeTwo = 9 * rootPsi(1.5)    // 17.7.2.2.1(b), c_a1^1.5
	mostFu  = 125e3 * psi         // 17.6.1.2
	pryDeep = 2.5 * inch          // 17.7.3.1
)

const (
	deepFrom         = 11 * inch
	deepTo           = 25 * inch
	coneUncrackedACI = 1.25 // 17.6.2.5.1
	pullACIFactor    = 8    // 17.6.3.2.2
	pullUncrackedACI = 1.4  // 17.6.3.3.1
	edgeUncrackedACI = 1.4  // 17.7.2.5.1
	phiConcrete      = 0.70 // Table 17.5.3(b) and (c), without supplementary reinforcement
	phiTension       = 0.75 // Table 17.5.3(a), ductile
	phiTensionHard   = 0.65
	phiShear         = 0.65
	phiShearHard     = 0.60
	shearShare       = 0.6 // 17.7.1.2
	groutShare       = 0.8 // 17.7.1.2.1
	yieldShare       = 1.9 // 17.6.1.2
	lowShare         = 0.2 // 17.8.1, 17.8.2
	sumACI           = 1.2 // 17.8.3; the same in EN 1992-4 Table 7.3
)

// light returns lambda_a.
func (r *Result) light() float64 {
	if r.in.LightFactor == 0 {
		return 1
	}
	return r.in.LightFactor
}

func pryACI(h float64) float64 {
	if h < pryDeep {
		return 1
	}
	return 2
}

// steelACI sets the strengths of a rod.
//
//	N_sa = A_se f_uta, V_sa = 0.6 A_se f_uta, times 0.8 on a grout pad
//	f_uta <= 1.9 f_ya and 125 000 psi
//
// Source: ACI 318-19 17.6.1.2, 17.7.1.2, Table 17.5.3(a).
func (r *Result) steelACI() {
	in, s := r.in, &r.Steel
	fu := min(in.Steel.Fu, yieldShare*in.Steel.Fy, mostFu)
	s.GammaN, s.GammaV = phiTension, phiShear
	if r.Brittle {
		s.GammaN, s.GammaV = phiTensionHard, phiShearHard
	}
	s.K6, s.KGrout = shearShare, 1
	if in.Under.GroutThick > 0 || in.Under.Gap > 0 {
		s.KGrout = groutShare
	}
	s.NRk = r.As * fu
	s.VRk = s.K6 * s.KGrout * s.NRk
	s.NRd, s.VRd = s.NRk*s.GammaN, s.VRk*s.GammaV
}

// pullACI returns the pull-out of a rod.
//
//	N_pn = psi_c,P 8 A_brg f'c
//
// Source: ACI 318-19 17.6.3.
func (r *Result) pullACI() Pull {
	p := Pull{K: pullACIFactor}
	if r.in.Uncracked {
		p.K *= pullUncrackedACI
	}
	p.NRk = p.K * r.Ah * r.in.Block.Concrete.Strength
	p.NRd = p.NRk * r.Factor
	return p
}

// blowACI sets the side-face blow-out of a row.
//
//	N_sb = 160 c_a1 sqrt(A_brg) lambda_a sqrt(f'c), times (1 + c_a2/c_a1)/4 near a
//	corner; of a group times 1 + s/(6 c_a1)
//
// The step between neighbours counts with at most 6 c_a1, and the force with at
// least that of the rod that pulls most at every place.
//
// Source: ACI 318-19 17.6.4.
func (r *Result) blowACI(b *Blow, row []int) {
	in, c1 := r.in, b.C1
	b.N0 = blowOut * r.light() * c1 * math.Sqrt(r.Ah*in.Block.Concrete.Strength)
	b.PsiS, b.PsiG, b.PsiEc = 1, 1, 1
	if b.C2 < 3*c1 {
		b.PsiS = (1 + max(1, b.C2/c1)) / 4
	}
	at := in.places(row, b.Side)
	for i := 1; i < len(at); i++ {
		b.S += at[i] - at[i-1]
		b.PsiG += min(1, (at[i]-at[i-1])/(6*c1))
	}
	most := 0.0
	for _, i := range row {
		b.Force += in.Each[i].Tension
		most = max(most, in.Each[i].Tension)
	}
	b.Force = max(b.Force, most*b.PsiG)
	b.NRk = b.N0 * b.PsiS * b.PsiG
	b.NRd = b.NRk * r.Factor
}

// edgeACI sets the strength of one rod at a concrete edge.
//
//	V_b = min(7 (l_e/d_a)^0.2 sqrt(d_a), 9) lambda_a sqrt(f'c) c_a1^1.5
//	l_e = h_ef <= 8 d_a; d_a in inches in the first
//
// Source: ACI 318-19 17.7.2.2.1.
func (r *Result) edgeACI(e *Edge) {
	in, d := r.in, r.D
	e.Lf = min(in.Embedment, 8*d)
	v := r.light() * math.Sqrt(in.Block.Concrete.Strength) * math.Pow(e.C1, 1.5)
	e.V0 = v * min(edgeOne*math.Pow(e.Lf/d, 0.2)*math.Sqrt(d), edgeTwo)
	if in.Uncracked {
		e.PsiC = edgeUncrackedACI
	}
}
