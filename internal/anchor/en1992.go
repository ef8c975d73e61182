package anchor

import "math"

// Factors of EN 1992-4:2018 for headed fasteners (from memory).
const (
	coneCracked   = 8.9  // 7.2.1.4, k_cr,N
	coneUncracked = 12.7 // k_ucr,N
	pullCracked   = 7.5  // 7.2.1.5, k_2
	pullUncracked = 10.5
	blowCracked   = 8.7 // 7.2.1.8, k_5
	blowUncracked = 12.2
	edgeCracked   = 1.7 // 7.2.2.5, k_9
	edgeUncracked = 2.4
	leastGammaN   = 1.4 // Table 4.1
	leastGammaV   = 1.25
	hardGammaV    = 1.5
	softShear     = 0.6 // 7.2.2.3.1, k_6 for f_uk up to 500 MPa
	hardShear     = 0.5
	brittleShare  = 0.8 // k_7
	mostGrout     = 40  // 6.2.2.3(2): grout up to min(40 mm, 5 d)
	leastMortar   = 30  // MPa; 6.2.2.3
	thinGrout     = 0.5 // of d; 6.2.2.3(1)
	widePitch     = 10  // of d; 6.2.2.3(2)
	leverShare    = 1.2 // (7.37), M0_Rk,s = 1.2 W_el f_uk
)

func kCone(uncracked bool) float64 {
	if uncracked {
		return coneUncracked
	}
	return coneCracked
}

// steelEN sets the resistances of a rod.
//
//	N_Rk,s = A_s f_uk, gamma_Ms = 1.2 f_uk/f_yk >= 1.4
//	V_Rk,s = k_7 k_6 A_s f_uk (1 - 0.01 t_grout), gamma_Ms = f_uk/f_yk >= 1.25
//	(1.5 where f_uk > 800 MPa or f_yk/f_uk > 0.8)
//
// Source: EN 1992-4:2018 7.2.1.3, 7.2.2.3.1, 6.2.2.3, Table 4.1.
func (r *Result) steelEN() {
	in, s := r.in, &r.Steel
	fu, fy := in.Steel.Fu, in.Steel.Fy
	s.GammaN, s.GammaV = max(leastGammaN, 1.2*fu/fy), max(leastGammaV, fu/fy)
	if fu > 800 || fy/fu > 0.8 {
		s.GammaV = hardGammaV
	}
	s.NRk = r.As * fu
	s.K6 = softShear
	if fu > 500 {
		s.K6 = hardShear
	}
	if r.Brittle {
		s.K6 *= brittleShare
	}
	s.KGrout = max(0, 1-0.01*min(in.Under.GroutThick, mostGrout))
	switch {
	case fu > 1000:
		s.Reason = "f_uk above 1000 MPa is beyond EN 1992-4 7.2.2.3.1"
	case in.Under.Loose:
		s.Reason = loose
	}
	s.VRk = s.K6 * s.KGrout * s.NRk
	s.NRd, s.VRd = s.NRk/s.GammaN, s.VRk/s.GammaV
	for i, f := range in.Each {
		n, v := f.Tension/s.NRd, math.Hypot(f.ShearX, f.ShearY)/s.VRd
		if u := n*n + v*v; u > s.Both {
			s.Both, s.BothRod = u, i
		}
	}
	if s.Lever.Why = r.whyBent(); s.Lever.Why != "" {
		r.lever()
	}
}

// pullEN returns the pull-out of a rod.
//
//	N_Rk,p = k_2 A_h f_ck
//
// Source: EN 1992-4:2018 7.2.1.5.
func (r *Result) pullEN() Pull {
	p := Pull{K: pullCracked}
	if r.in.Uncracked {
		p.K = pullUncracked
	}
	p.NRk = p.K * r.Ah * r.in.Block.Concrete.Strength
	p.NRd = p.NRk * r.Factor
	return p
}

// blowEN sets the blow-out of a row near a side face.
//
//	N_Rk,cb = N_0 A/A_0 psi_s psi_g psi_ec, N_0 = k_5 c_1 sqrt(A_h f_ck)
//	A_0 = (4 c_1)^2, psi_s = 0.7 + 0.3 c_2/(2 c_1) <= 1
//	psi_g = sqrt(n) + (1 - sqrt(n)) s/(4 c_1) >= 1, psi_ec = 1/(1 + 2 e/(4 c_1))
//
// Source: EN 1992-4:2018 7.2.1.8.
func (r *Result) blowEN(b *Blow, row []int) {
	in, c1 := r.in, b.C1
	k := blowCracked
	if in.Uncracked {
		k = blowUncracked
	}
	b.N0 = k * c1 * math.Sqrt(r.Ah*in.Block.Concrete.Strength)
	b.A0 = 16 * c1 * c1
	b.A = in.width(row, b.Side, 2*c1) * (2*c1 + min(2*c1, in.Block.Height-in.Embedment))
	b.S = in.widest(row, b.Side)
	b.PsiS = min(1, 0.7+0.3*b.C2/(2*c1))
	n := math.Sqrt(float64(len(row)))
	b.PsiG = max(1, n+(1-n)*b.S/(4*c1))
	var at, middle float64
	for _, i := range row {
		b.Force += in.Each[i].Tension
		at += in.Each[i].Tension * along(in.At[i], b.Side)
		middle += along(in.At[i], b.Side) / float64(len(row))
	}
	b.PsiEc = 1 / (1 + 2*math.Abs(at/b.Force-middle)/(4*c1))
	b.NRk = b.N0 * b.A / b.A0 * b.PsiS * b.PsiG * b.PsiEc
	b.NRd = b.NRk * r.Factor
}

// edgeEN sets the strength of one rod at a concrete edge.
//
//	V_0 = k_9 d^alpha l_f^beta sqrt(f_ck) c_1^1.5
//	alpha = 0.1 (l_f/c_1)^0.5, beta = 0.1 (d/c_1)^0.2
//	l_f = h_ef <= 12 d; for d above 24 mm l_f <= max(8 d, 300 mm)
//
// Source: EN 1992-4:2018 7.2.2.5 (7.41) to (7.43).
func (r *Result) edgeEN(e *Edge) {
	in, d := r.in, r.D
	k := edgeCracked
	if in.Uncracked {
		k = edgeUncracked
	}
	e.Lf = min(in.Embedment, 12*d)
	if d > 24 {
		e.Lf = min(in.Embedment, max(8*d, 300))
	}
	e.Alpha, e.Beta = 0.1*math.Sqrt(e.Lf/e.C1), 0.1*math.Pow(d/e.C1, 0.2)
	e.V0 = k * math.Pow(d, e.Alpha) * math.Pow(e.Lf, e.Beta) * math.Sqrt(in.Block.Concrete.Strength) * math.Pow(e.C1, 1.5)
}
