package pin

import (
	"math"

	"footward.example/footward/internal/basis"
)

// holes sets the resistance of a hole against the pin that presses hardest, the
// lesser of both directions, and the tightest distance of the holes.
//
//	EN: k_1 alpha_b f_u d t/gamma_M2; dowels also 1.5 d t f_y/gamma_M0
//	US: 2.4 d t F_u, 1.2 l_c t F_u
//
// Source: EN 1993-1-8:2005 Table 3.4, Table 3.10; AISC 360-22 (J3-6a), (J3-6c).
func (r *Result) holes() {
	in, s, d, d0 := r.in, &r.Steel, r.in.Pin.Diameter, r.in.Plates.Hole
	edge, along, across := in.around()
	nearEdge, nearHole := min(edge, in.Plates.EndDistance), min(along, across)
	needEdge, needHole := edgeEC*d0, spacingEC*d0
	if !r.ec {
		needEdge, needHole = edgeUS*d, spacingUS*d
	}
	s.Needs, s.Has = needEdge, nearEdge
	if needHole/nearHole > needEdge/nearEdge {
		s.Needs, s.Has = needHole, nearHole
	}
	if !r.ec {
		f := basis.Rupture.Factor(in.Design.Basis)
		s.Hole = f * bearShare * d * s.T * s.Fu
		s.Lc = max(0, min(nearEdge-d0/2, nearHole-d0))
		s.Tear = f * tearShare * s.Lc * s.T * s.Fu
		return
	}
	s.Alpha, s.K1 = in.table34(s.Fu)
	s.Table34 = s.K1 * s.Alpha * s.Fu * d * s.T / in.Design.EC.GammaM2
	s.Hole = s.Table34
	if in.Pin.Kind == Dowel {
		s.Pin310 = pinBearing * d * s.T * min(s.Fy, in.Pin.Fy) / in.Design.EC.GammaM0
		s.Hole = min(s.Hole, s.Pin310)
	}
}

// around returns the distance of a hole to the edge of its plate, and to the
// holes next to it along and across the plate [mm].
func (in *Input) around() (edge, along, across float64) {
	edge, along, across = (in.Plates.Width-in.across())/2, in.Layout.SpacingAlong, in.Layout.SpacingAcross
	if in.Layout.InRow == 1 {
		along = without
	}
	if in.Layout.Rows == 1 {
		across = without
	}
	return edge, along, across
}

// table34 returns alpha_b and k_1 of the direction in which a hole in plates of a
// tensile strength bears least [-].
//
// Source: EN 1993-1-8:2005 Table 3.4.
func (in *Input) table34(fu float64) (alpha, k1 float64) {
	edge, along, across := in.around()
	d0 := in.Plates.Hole
	for i, h := range [planesOfGroup][4]float64{
		{in.Plates.EndDistance, along, edge, across}, {edge, across, in.Plates.EndDistance, along},
	} {
		a := max(0, min(min(h[0]/(3*d0), h[1]/(3*d0)-0.25), min(in.Pin.Fu/fu, 1)))
		k := max(0, min(min(2.8*h[2]/d0-1.7, 1.4*h[3]/d0-1.7), 2.5))
		if i == 0 || k*a < k1*alpha {
			alpha, k1 = a, k
		}
	}
	return alpha, k1
}

// cut sets the resistance of a shear plane of the pin [N].
//
//	EN: bolts 0.5 f_u A_s/gamma_M2 with A_s = 0.72 of the nominal area, dowels 0.6 f_u A/gamma_M2
//	US: 0.45 F_u A_b
//
// Source: EN 1993-1-8:2005 Tables 3.4, 3.10; AISC 360-22 J3.7.
func (r *Result) cut() {
	in, s := r.in, &r.Steel
	full := math.Pi / 4 * in.Pin.Diameter * in.Pin.Diameter * in.Pin.Fu
	switch {
	case !r.ec:
		s.Cut = basis.Rupture.Factor(in.Design.Basis) * threadsShear * full
	case in.Pin.Kind == Dowel:
		s.Cut = pinShear * full / in.Design.EC.GammaM2
	default:
		s.Cut = boltShear * threadArea * full / in.Design.EC.GammaM2
	}
}

// bridge sets the bending of the pin with the greatest force across the gap.
//
//	M = F/8 (b + 4 c + 2 a), M_Rd = 1.5 W_el f_y/gamma_M0 or F_y Z <= 1.6 F_y S
//	(M/M_Rd)^2 + (F_v/F_v,Rd)^2 <= 1
//
// In place of the timber's whole width stands the length x that its embedment
// resistance needs at each face to balance the plane's force: b = 2 x where the
// timber is inside, a = x where it is outside. Pressure that near to the plates
// is in equilibrium and within what the timber carries.
//
// Source: EN 1993-1-8:2005 Table 3.10; AISC 360-22 F11, J3.7.
func (r *Result) bridge() {
	in, s, d := r.in, &r.Steel, r.in.Pin.Diameter
	if in.Plates.Gap == 0 || r.reason != "" || r.Unshared != "" {
		return
	}
	s.Q = r.resists()
	most := in.Timber.AlongPin / 2
	if in.Plates.Arrangement == Inside {
		most = r.Timber.Side
	}
	s.Block = min(use(s.Plane, s.Q), most)
	s.Arm = (s.T+s.Block)/2 + in.Plates.Gap
	if in.Plates.Arrangement == Inside {
		s.Arm = s.T/4 + s.Block/2 + in.Plates.Gap
	}
	s.Bend = s.Plane * s.Arm
	elastic := math.Pi * d * d * d / 32
	if r.ec {
		s.BendRd = pinBending * elastic * in.Pin.Fy / in.Design.EC.GammaM0
	} else {
		s.BendRd = basis.Flexure.Factor(in.Design.Basis) * in.Pin.Fy * min(d*d*d/6, mostYield*elastic)
	}
	m, v := s.Bend/s.BendRd, s.Plane/s.Cut
	s.Sum = m*m + v*v
}

// resists returns what the timber resists per length of a pin, as it may be
// used, at the angle of any pin that is farthest from the grain [N/mm].
//
// Source: EN 1995-1-1:2004 (8.31); NDS 2018 12.3.4, Table 12.3.1B.
func (r *Result) resists() float64 {
	d, sin2 := r.in.Pin.Diameter, r.MaxSin*r.MaxSin
	if r.ec {
		e := &r.EC
		return e.Fh0 / (e.K90*sin2 + 1 - sin2) * d * r.Timber.Kmod / r.Timber.GammaC
	}
	u := &r.US
	fe := u.FeAlong * u.FeAcross / (u.FeAlong*sin2 + u.FeAcross*(1-sin2))
	return fe * d / (reduceI * (1 + 0.25*math.Asin(min(1, r.MaxSin))/(math.Pi/2))) * u.Kz
}
