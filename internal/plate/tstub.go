package plate

import "math"

// TStub is the equivalent T-stub of a row of two rods outside a flange.
type TStub struct {
	M      float64 // from the rods to the weld of the flange m [mm]
	Ex     float64 // from the rods to the edge of the plate e_x [mm]
	N      float64 // n = min(e_x, 1.25 m) [mm]
	Lcp    float64 // effective length, circular patterns [mm]
	Lnc    float64 // effective length, non-circular patterns [mm]
	Corner Corner  // straight yield line past the flange that holds least
	Ly     float64 // its effective length [mm]
	L1     float64 // the shortest [mm]
	Lb     float64 // stretch length of the rods L_b [mm]
	LbStar float64 // greatest stretch length with prying L_b* [mm]
	Prying bool    // whether it develops, for the rods and what holds them
	Mpl1   float64 // plastic moment of the length L1 [Nmm]
	F1     float64 // resistance of the plate, modes 1-2 without prying [N]
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

// stubs computes the T-stubs of the sides that lift and shows the one that is used
// most.
func (r *Result) stubs() {
	e, l := &r.EC, &r.lifts
	if r.Misfit != Fits || r.Loose {
		return
	}
	worst := -1.0
	for k := range l.t {
		if !(l.t[k] > 0) {
			continue
		}
		s := TStub{}
		if r.Misfit = r.tstub(&s, k); r.Misfit != Fits {
			e.Lifted = false
			return
		}
		l.prying[k] = s.pry(l.t[k])
		if used := l.t[k] / s.FtRd; used > worst {
			worst = used
			e.Lifted, e.Shared, e.Ft, e.Prying, e.TStub = true, l.shared[k], l.t[k], l.prying[k], s
			r.turn(k)
		}
	}
}

// tstub computes the T-stub of a row, or says why it is none.
//
//	M_pl = 0.25 l_eff t^2 f_y / gamma_M0
//	F_T,1-2 = 2 M_pl,1 / m   F_T,3 = sum F_t,Rd
//
// Prying does not help the plate: with it mode 2, (2 M_pl,2 + n F_T,3)/(m + n), is
// never less than the smaller of the two, and mode 1 is not counted.
//
// Source: EN 1993-1-8:2005 6.2.6.11(2), Table 6.2, Table 6.6 (row outside the
// tension flange).
func (r *Result) tstub(s *TStub, k int) Misfit {
	in, row, f := r.in, &r.lifts.row[k], r.side(k)
	s.M = row.S - f.H/2 - weldReach*math.Sqrt2*in.weldLeft()
	s.Ex = f.L/2 - row.S
	switch {
	case row.Count != 2:
		return OtherNumber
	case !(s.M > 0):
		return OnWeld
	case (row.Gauge-f.W)/2 > s.M:
		return RoundCorner
	}
	s.N = min(s.Ex, edgeShare*s.M)
	w, e := row.Gauge, row.Edge
	s.Lcp = min(2*math.Pi*s.M, math.Pi*s.M+w, math.Pi*s.M+2*e)
	s.Lnc = min(4*s.M+1.25*s.Ex, e+2*s.M+0.625*s.Ex, f.B/2, w/2+2*s.M+0.625*s.Ex)
	s.Corner = in.corner(&f, row, s.M, r.pulled())
	s.Ly = s.Corner.Hold * s.M / 2
	s.L1 = min(s.Lcp, s.Lnc, s.Ly)
	rods := &in.Rods
	s.Lb = rods.Stretch
	if s.Lb == 0 {
		s.Lb = CastInLength(rods.Diameter, in.Bearing.GroutThick, in.Plate.Thickness, rods.Washer)
	}
	s.LbStar = pryingLimit * s.M * s.M * s.M * rods.StressArea / (s.L1 * r.T * r.T * r.T)
	s.Prying = s.Lb <= s.LbStar
	s.Mpl1 = s.L1 * r.T * r.T / 4 * r.Fy / in.Design.EC.GammaM0
	s.F1 = 2 * s.Mpl1 / s.M
	s.F3 = 2 * rods.Resistance
	s.FtRd = min(s.F1, s.F3)
	return Fits
}

// pry returns the prying on a row under the tension f [N], 0 where the rods stretch
// so far that none develops.
//
//	Q = F (m^2 n/2 - k)/(m n^2 + n^3/3 + k), k = 0.625 m^3 L_b/L_b*
//	2 M_pl/m < F: at least Q = (F m - 2 M_pl)/n; never above 2 M_pl/n
//
// An elastic strip is held flat at the weld and by the rods, which stretch, and
// rests at the distance n beyond them; at the greatest n of 1.25 m it touches there
// no more where the rods stretch by L_b*. Beyond the plastic moment at the weld
// prying must do the rest, up to that moment at the rods.
//
// Source: statics of that strip; EN 1993-1-8:2005 6.2.6.11(3), Table 6.2.
func (s *TStub) pry(f float64) float64 {
	if !s.Prying || !(s.N > 0) {
		return 0
	}
	m, n := s.M, s.N
	k := edgeShare / 2 * m * m * m * s.Lb / s.LbStar
	q := max(0, f*(m*m*n/2-k)/(m*n*n+n*n*n/3+k))
	return min(max(q, (f*m-2*s.Mpl1)/n), 2*s.Mpl1/n)
}

// CastInLength returns the stretch length of an anchor bolt cast in concrete: 8 d
// + grout + plate + washer + half a nut of 0.8 d [mm].
//
// Source: EN 1993-1-8:2005 Table 6.2.
func CastInLength(diameter, grout, thickness, washer float64) float64 {
	return (anchorReach+halfNut)*diameter + grout + thickness + washer
}

// stubNeed returns the thickness left after corrosion that carries the tension
// where the steel has the design strength f [mm], or 0 where the rods give way
// first. The tension follows the thickness a little, through z_C.
func (r *Result) stubNeed(f float64) float64 {
	e, s := &r.EC, &r.EC.TStub
	spread := e.C / r.T * math.Sqrt(f*r.in.Design.EC.GammaM0/r.Fy) // c of each mm
	ft, t := e.Ft, 0.0
	for range 200 {
		if ft > s.F3 {
			return 0
		}
		last := t
		t = math.Sqrt(2 * ft * s.M / (s.L1 * f))
		if !e.Pressed || e.Shared || math.Abs(t-last) <= 1e-13*t {
			break
		}
		_, z := r.pressed(t * spread)
		ft = r.tension(z)
	}
	return t
}
