package plate

import "math"

const (
	clauseCompression = "EN 1993-1-8:2005 6.2.5"
	clauseMoment      = "EN 1993-1-8:2005 6.2.8.3, Table 6.7"
	clauseTStub       = "EN 1993-1-8:2005 Table 6.2, 6.2.6.11, Table 6.6"
)

// Eurocode holds the intermediate values by Eurocode.
type Eurocode struct {
	C        float64 // spread of the pressure c [mm]
	Area     float64 // effective area of the whole footprint [mm2]
	FcRd     float64 // resistance under compression alone [N]
	Pressed  bool    // whether a flange is pressed by a moment
	Flange   float64 // effective area under the pressed flange [mm2]
	Zc       float64 // from the column axis to the middle of that area [mm]
	Fc       float64 // compression under that flange [N]
	FcFlange float64 // its resistance [N]
	Lifted   bool    // whether a side lifts and rods hold it
	Ft       float64 // tension on the lifted side [N]
	Prying   float64 // prying on the rods of that side, which bends the plate no more [N]
	Shared   bool    // whether that is the tension of the base's sharing
	TStub    TStub
}

// eurocode finds compression and tension, and the resistances against them.
//
//	c = t sqrt(f_y / (3 f_jd gamma_M0))
//	F_C,Rd = f_jd A_eff
//
// Source: EN 1993-1-8:2005 6.2.5(4), 6.2.8.2, 6.2.8.3.
func (r *Result) eurocode() {
	in, e := r.in, &r.EC
	fjd := in.Bearing.Pressure
	e.C = r.T * math.Sqrt(r.Fy/(3*fjd*in.Design.EC.GammaM0))
	switch r.Case {
	case Concentric:
		e.Area = in.spreadArea(e.C)
		e.FcRd = fjd * e.Area
	case Uniaxial, Uplift:
		if !in.Footprint.flanged(r.frame.AlongY) {
			r.Misfit = NoFlange
			return
		}
		e.Flange, e.Zc = r.pressed(e.C)
		e.FcFlange = fjd * e.Flange
		r.balance()
		if r.share() && e.Pressed {
			e.Fc = r.compression(e.Zc)
		}
		r.stubs()
	}
}

// pressed returns the effective area under one flange when the plate spreads
// the pressure by c [mm2], and the distance of its middle from the axis [mm].
func (r *Result) pressed(c float64) (area, z float64) {
	f := &r.frame
	outer := min(f.H/2+c, f.L/2)
	inner := max(0, f.H/2-r.in.Footprint.Thick-c)
	return min(f.W+2*c, f.B) * (outer - inner), (outer + inner) / 2
}

// balance shares N and M between the pressed flange and the rods.
func (r *Result) balance() {
	e, l := &r.EC, &r.lifts
	held := r.rows()
	switch {
	case r.P > 0 && r.M <= r.P*e.Zc: // both flanges pressed
		e.Pressed, e.Fc = true, r.compression(e.Zc)
	case !held:
		r.Loose = true
	case l.why[first] != Fits:
		r.Misfit = l.why[first]
	case r.M < r.N*l.row[first].S: // both sides lift
		r.pullBoth()
	default:
		e.Pressed, e.Fc = true, r.compression(e.Zc)
		r.raise(first, r.tension(e.Zc), false)
	}
}

// tension returns the tension of the lifted side when the middle of the pressed
// flange lies at z [N].
func (r *Result) tension(z float64) float64 {
	return max(0, (r.M+r.N*z)/(r.lifts.row[first].S+z))
}

// compression returns the force under the pressed flange when its middle lies at
// z [N]: by equilibrium with the rods of its own, and with those of the base's
// sharing where they are more, no more then than the whole compression.
func (r *Result) compression(z float64) float64 {
	own := r.P/2 + r.M/(2*z)
	if !(r.P > 0 && r.M <= r.P*z) {
		zt := r.lifts.row[first].S
		own = (r.M - r.N*zt) / (zt + z)
	}
	if !r.lifts.shared[first] && !r.lifts.shared[other] {
		return own
	}
	_, sum, moment := r.sharing()
	all := sum - r.N
	return max(own, min(all, all/2+(r.M-moment)/(2*z)))
}

// compressionNeed returns the spread c that carries the compression [mm], or 0.
// The search starts from the spread there is, so that it agrees with the verdict.
func (r *Result) compressionNeed() float64 {
	fjd := r.in.Bearing.Pressure
	enough := func(c float64) bool {
		if r.Case == Concentric {
			return fjd*r.in.spreadArea(c) >= r.P
		}
		area, z := r.pressed(c)
		return fjd*area >= r.compression(z)
	}
	low, high := 0.0, max(r.in.Plate.SizeX, r.in.Plate.SizeY)
	if enough(r.EC.C) {
		high = min(high, r.EC.C)
	} else {
		low = min(high, r.EC.C)
	}
	if !enough(high) {
		return 0
	}
	for range 60 {
		if middle := (low + high) / 2; enough(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}
