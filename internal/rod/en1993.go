package rod

import "math"

const (
	clauseTension  = "EN 1993-1-8:2005 Table 3.4, 3.6.1(3)"
	clauseShear    = "EN 1993-1-8:2005 Table 3.4, 3.6.1(3), (5)"
	clauseCombined = "EN 1993-1-8:2005 Table 3.4"
	clauseBase     = "EN 1993-1-8:2005 6.2.2(6) to (8)"
	clauseAnchor   = "EN 1993-1-8:2005 6.2.2(7)"
	clauseBearing  = "EN 1993-1-8:2005 Table 3.4"
	clausePunch    = "EN 1993-1-8:2005 Table 3.4"
	clauseBendEC   = "EN 1992-4:2018 7.2.2.3.2, 6.2.2.3"
	clauseTight    = "EN 1993-1-8:2005 Table 3.3"
)

const (
	k2Plain       = 0.9    // EN 1993-1-8:2005 Table 3.4
	k2Countersunk = 0.63   // EN 1993-1-8:2005 Table 3.4
	cutThread     = 0.85   // EN 1993-1-8:2005 3.6.1(3)
	wideSmall     = 0.85   // M12 and M14 in 2 mm clearance; EN 1993-1-8:2005 3.6.1(5)
	alphaHigh     = 0.6    // 4.6, 5.6, 8.8, or the shank in the shear plane; EN 1993-1-8:2005 Table 3.4
	alphaLow      = 0.5    // 4.8, 5.8, 6.8, 10.9; EN 1993-1-8:2005 Table 3.4
	mostFub       = 1000.0 // MPa; EN 1993-1-8:2005 Table 3.1 ends at class 10.9
	nutOverRod    = 1.5    // mean nut width over d; below any standard hexagon nut (ISO 4032, from memory)
	oversizedBear = 0.8    // EN 1993-1-8:2005 Table 3.4, note on oversized holes
)

// Eurocode holds the intermediate values of EN 1993-1-8.
type Eurocode struct {
	K2      float64 // [-]
	AlphaV  float64 // [-]
	Cut     float64 // factor on threads cut on site [-]
	Wide    float64 // factor of 3.6.1(5) [-]
	Av      float64 // shear area [mm2]
	AlphaBc float64 // [-]
	F1vb    float64 // shear of a rod by Table 3.4 or the plate's bearing, the least [N]
	F2vb    float64 // shear of an anchor bolt by 6.2.2(7) [N]
	FvbRd   float64 // the smaller of both [N]
	FvRd    float64 // shear resistance of the base [N]
	Dm      float64 // mean width of nut or head [mm]
	BpRd    float64 // punching resistance [N]
	TooHard bool    // f_ub beyond the standard
	NoAlpha bool    // f_yb beyond 235 to 640 MPa
}

// eurocode computes the resistances of a rod.
//
//	F_t,Rd = k2 f_ub A_s / gamma_M2, F_v,Rd = alpha_v f_ub A / gamma_M2
//	B_p,Rd = 0.6 pi d_m t_p f_u / gamma_M2
//	F_2,vb,Rd = alpha_bc f_ub A_s / gamma_M2, alpha_bc = 0.44 - 0.0003 f_yb
//	F_v,Rd = F_f,Rd + n min(F_1,vb,Rd, F_2,vb,Rd)
//
// Source: EN 1993-1-8:2005 Table 3.4, 3.6.1, 6.2.2.
func (r *Result) eurocode() {
	in, e, g := r.in, &r.EC, r.in.Design.EC.GammaM2
	fub, fyb := in.Rod.Steel.Fu, in.Rod.Steel.Fy
	e.TooHard = fub > mostFub
	e.K2, e.Cut, e.Wide = k2Plain, 1, 1
	if in.Rod.Countersunk {
		e.K2 = k2Countersunk
	}
	if in.Rod.Making != Standard {
		e.Cut = cutThread
	}
	// 4.6 and 5.6 are the ductile classes that 3.6.1(5) leaves alone.
	class := in.Rod.Steel.Class
	ductile := class == "ISO 898-1 4.6" || class == "ISO 898-1 5.6"
	d, gap := in.Rod.Thread.Diameter, in.Holes.Diameter-in.Rod.Thread.Diameter
	if d <= 14 && gap > 1+1e-9 && !ductile {
		e.Wide = wideSmall
	}
	e.AlphaV, e.Av = alphaLow, r.As
	if ductile || class == "ISO 898-1 8.8" {
		e.AlphaV = alphaHigh
	}
	if in.Rod.ShankInPlane {
		e.AlphaV, e.Av = alphaHigh, r.Ab
	}
	r.FtRd = e.Cut * e.K2 * fub * r.As / g
	r.Washer = r.washer()
	r.FvRd = e.Cut * e.Wide * e.AlphaV * fub * e.Av / g

	_, fu, _ := in.Plate.Steel.At(in.Plate.Thickness)
	e.Dm = r.nut()
	e.BpRd = 0.6 * math.Pi * e.Dm * in.Plate.Net() * fu / g

	e.NoAlpha = fyb < 235 || fyb > 640
	e.AlphaBc = 0.44 - 0.0003*fyb
	e.F2vb = e.AlphaBc * fub * r.As / g
	e.F1vb = r.FvRd // the plate's bearing is held against it rod by rod
}

// base computes the shear resistance of the base, once the bearing of the plate
// is known at every rod.
//
// Source: EN 1993-1-8:2005 6.2.2(8).
func (e *Eurocode) base(friction, rods float64) {
	e.FvbRd = min(e.F1vb, e.F2vb)
	e.FvRd = friction + rods*e.FvbRd
}

// nut returns the mean width of the nut or head d_m [mm].
//
// Source: the request, or below any standard nut.
func (r *Result) nut() float64 {
	if r.in.Rod.NutWidth > 0 {
		return r.in.Rod.NutWidth
	}
	return nutOverRod * r.in.Rod.Thread.Diameter
}

// plateBearingEC returns the bearing resistance of the plate at a hole [N].
//
//	F_b,Rd = k1 alpha_b f_u d t / gamma_M2
//	alpha_b = min(e1/(3 d0), p1/(3 d0) - 1/4, f_ub/f_u, 1)
//	k1 = min(2.8 e2/d0 - 1.7, 1.4 p2/d0 - 1.7, 2.5)
//
// End and inner values are taken together, the least for every rod. Oversized
// holes carry 0.8 of it.
//
// Source: EN 1993-1-8:2005 Table 3.4.
func (r *Result) plateBearingEC(h *Surround) float64 {
	in := r.in
	_, fu, _ := in.Plate.Steel.At(in.Plate.Thickness)
	return in.Plate.Net() * r.bearingPerMM(h, fu)
}

func (r *Result) bearingPerMM(h *Surround, fu float64) float64 {
	in := r.in
	alpha, k1 := bearingFactors(h, in.Holes.Diameter, in.Rod.Steel.Fu/fu)
	f := k1 * alpha * fu * r.D / in.Design.EC.GammaM2
	if r.Oversize {
		f *= oversizedBear
	}
	return max(0, f)
}

func bearingFactors(h *Surround, d0, ratio float64) (alpha, k1 float64) {
	alpha = min(min(h.E1/(3*d0), h.P1/(3*d0)-0.25), min(ratio, 1))
	k1 = min(min(2.8*h.E2/d0-1.7, 1.4*h.P2/d0-1.7), 2.5)
	return alpha, k1
}
