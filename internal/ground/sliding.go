package ground

import "math"

// critical returns the angle of friction at constant volume.
func (in *Input) critical() float64 {
	if in.Soil.Critical > 0 {
		return in.Soil.Critical
	}
	return min(in.Soil.Friction, mostCritical*math.Pi/180)
}

// slide takes the resistance against sliding into account.
//
//	drained: R = V tan delta/gamma_R,h, tan delta = tan(share phi_cv)/gamma_phi
//	undrained: R = A' c_u/gamma_R,h, at most 0.4 V unless sealed
//
// Cohesion and passive resistance do not count.
//
// Source: EN 1997-1:2004 6.5.3(8) to (12).
func (r *Result) slide(s *set, l Load) {
	in := r.in
	if l.H == 0 {
		return
	}
	v := max(0, l.V)
	if in.Soil.Friction > 0 {
		one := &Sliding{Load: l, Drained: true, set: s, Angle: math.Atan(math.Tan(in.Interface.Share*in.critical()) / s.phi)}
		one.Resistance = v * math.Tan(one.Angle) / s.rh
		r.slides(one)
	}
	if in.Soil.Undrained > 0 {
		one := &Sliding{Load: l, Effective: in.effective(l), set: s, Strength: in.Interface.Share * in.Soil.Undrained / s.cu}
		one.Resistance = one.Area * one.Strength / s.rh
		if !in.Interface.Sealed {
			one.Resistance = min(one.Resistance, nu0*v/in.over(s))
		}
		r.slides(one)
	}
}

// over is what the cap of undrained sliding is divided by: nothing in EN 1997-1.
func (in *Input) over(s *set) float64 {
	if in.Design.Basis.US() {
		return s.rh
	}
	return 1
}

func (r *Result) slides(one *Sliding) {
	was := r.Sliding
	if was == nil || was.Resistance > 0 && (one.Resistance == 0 || one.H*was.Resistance > was.H*one.Resistance) {
		r.Sliding = one
	}
}
