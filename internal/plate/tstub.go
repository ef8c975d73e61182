package plate

import "math"

// TStub is the equivalent T-stub of a row of two rods outside a flange.
type TStub struct {
	M      float64 // from the rods to the weld of the flange m [mm]
	Ex     float64 // from the rods to the edge of the plate e_x [mm]
	N      float64 // n = min(e_x, 1.25 m) [mm]
	Lcp    float64 // effective length, circular patterns with prying [mm]
	Lnc    float64 // effective length, non-circular patterns [mm]
	L1     float64 // effective length of mode 1, or of modes 1-2 without prying [mm]
	Lb     float64 // stretch length of the rods L_b [mm]
	LbStar float64 // greatest stretch length with prying L_b* [mm]
	Prying bool
	Mpl1   float64 // plastic moment of the length L1 [Nmm]
	Mpl2   float64 // plastic moment of the length Lnc [Nmm]
	F1     float64 // resistance of mode 1, or of modes 1-2 without prying [N]
	F2     float64 // resistance of mode 2, with prying only [N]
	F3     float64 // resistance of mode 3, both rods [N]
	FtRd   float64 // resistance of the T-stub [N]
}

const (
	weldReach   = 0.8 // of sqrt(2) a, from the face to the start of the cantilever; EN 1993-1-8:2005 Figure 6.8
	edgeShare   = 1.25
	anchorReach = 8.0 // diameters of a cast-in rod that stretch; EN 1993-1-8:2005 Table 6.2
	halfNut     = 0.4 // of a diameter: half a nut of 0.8 d (ISO 4032)
	pryingLimit = 8.8 // of L_b*; EN 1993-1-8:2005 Table 6.2
)

// tstub computes the tension side.
//
//	M_pl = 0.25 l_eff t^2 f_y / gamma_M0
//	without prying, L_b > L_b*: F_T,1-2 = 2 M_pl,1 / m, circular patterns doubled
//	with prying: F_T,1 = 4 M_pl,1 / m, F_T,2 = (2 M_pl,2 + n sum F_t,Rd)/(m + n)
//	F_T,3 = sum F_t,Rd
//
// Source: EN 1993-1-8:2005 Table 6.2, Table 6.6 (row outside the tension flange).
func (r *Result) tstub() {
	in, s := r.in, &r.EC.TStub
	s.M = r.Row.S - r.frame.H/2 - weldReach*math.Sqrt2*in.WeldThroat
	s.Ex = r.frame.L/2 - r.Row.S
	if !(s.M > 0) {
		r.Reason, r.EC.Lifted = "the rods stand on the weld of the footprint", false
		return
	}
	if r.beyondTips() > s.M {
		r.Reason, r.EC.Lifted = farBeyond, false
		return
	}
	s.N = min(s.Ex, edgeShare*s.M)
	w, e := r.Row.Gauge, r.Row.Edge
	s.Lcp = min(2*math.Pi*s.M, math.Pi*s.M+w, math.Pi*s.M+2*e)
	s.Lnc = min(4*s.M+1.25*s.Ex, e+2*s.M+0.625*s.Ex, r.frame.B/2, w/2+2*s.M+0.625*s.Ex)
	rods := &in.Rods
	s.Lb = rods.Stretch
	if s.Lb == 0 {
		s.Lb = CastInLength(rods.Diameter, in.Bearing.GroutThick, in.Plate.Thickness, rods.Washer)
	}
	s.F3 = 2 * rods.Resistance
	s.LbStar = s.limitLength(rods.StressArea, r.T)
	s.Prying = s.Lb <= s.LbStar
	s.strength(r.T, r.Fy/in.Design.EC.GammaM0)
}

// CastInLength returns the stretch length of an anchor bolt cast in concrete: 8 d
// + grout + plate + washer + half a nut of 0.8 d [mm].
//
// Source: EN 1993-1-8:2005 Table 6.2.
func CastInLength(diameter, grout, thickness, washer float64) float64 {
	return (anchorReach+halfNut)*diameter + grout + thickness + washer
}

// limitLength returns L_b* for a plate of thickness t [mm].
func (s *TStub) limitLength(stressArea, t float64) float64 {
	return pryingLimit * s.M * s.M * s.M * stressArea / (min(s.Lcp, s.Lnc) * t * t * t)
}

func (s *TStub) strength(t, f float64) {
	unit := t * t * f / 4
	s.Mpl2 = s.Lnc * unit
	if !s.Prying {
		s.L1 = min(2*s.Lcp, s.Lnc)
		s.Mpl1 = s.L1 * unit
		s.F1 = 2 * s.Mpl1 / s.M
		s.FtRd = min(s.F1, s.F3)
		return
	}
	s.L1 = min(s.Lcp, s.Lnc)
	s.Mpl1 = s.L1 * unit
	s.F1 = 4 * s.Mpl1 / s.M
	s.F2 = (2*s.Mpl2 + s.N*s.F3) / (s.M + s.N)
	s.FtRd = min(s.F1, s.F2, s.F3)
}

// stubNeed returns the thickness left after corrosion that carries the tension
// where the steel has the design strength f [mm], or 0 where the rods give way
// first. The tension follows the thickness a little, through z_C.
func (r *Result) stubNeed(f float64) float64 {
	e := &r.EC
	ft, t := e.Ft, 0.0
	for range 8 {
		if t = r.stubThickness(ft, f); t == 0 || !e.Pressed || e.Shared {
			break
		}
		_, z := r.pressed(t / r.T * e.C)
		ft = max(0, (r.M+r.N*z)/(r.Row.S+z))
	}
	return t
}

// stubThickness returns the thickness that carries ft [mm], or 0.
//
// Without prying the resistance is never more than with it, so a plate that
// needs no prying is enough at any greater thickness too.
func (r *Result) stubThickness(ft, f float64) float64 {
	s, rods := &r.EC.TStub, &r.in.Rods
	if ft > s.F3 {
		return 0
	}
	free := math.Sqrt(2 * ft * s.M / (min(2*s.Lcp, s.Lnc) * f))
	if !s.Prying {
		return free
	}
	one := math.Sqrt(ft * s.M / (min(s.Lcp, s.Lnc) * f))
	two := math.Sqrt(max(0, 2*(ft*(s.M+s.N)-s.N*s.F3)/(s.Lnc*f)))
	t, stretch := max(one, two), s.Lb
	if rods.Stretch == 0 {
		stretch += t - r.T // the plate is part of it
	}
	if stretch <= s.limitLength(rods.StressArea, t) {
		return t
	}
	return free
}
