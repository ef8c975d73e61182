package anchor

import "math"

// Why rods carry shear with a lever arm, EN 1992-4 6.2.2.3.
const (
	bentGap     = "the rods bridge a gap"
	bentWasher  = "washers above the plate alone bear on the rods"
	bentWeak    = "the grout is weaker than 30 MPa"
	bentThick   = "the grout is thicker than 40 mm or 5 d"
	bentCracked = "the grout is thicker than 0.5 d, or weaker than the concrete, and the concrete counts as cracked"
	bentPulled  = "the grout is thicker than 0.5 d, or weaker than the concrete, and it is not shown that neither tension nor a moment acts on the plate"
	bentNear    = "the grout is thicker than 0.5 d, or weaker than the concrete, and the rods are not two or more in the direction of one shear, over 10 d apart"
)

// whyBent says why the rods carry shear with a lever arm; empty: they do not. Grout
// up to 0.5 d that is strong enough needs none; thicker grout only takes from the
// shear where all of 6.2.2.3(2) holds.
//
// EN 1992-4:2018 6.2.2.3.
func (r *Result) whyBent() string {
	in, u := r.in, &r.in.Under
	d := in.Thread.Diameter
	switch {
	case u.Gap > 0:
		return bentGap
	case u.Washer > 0:
		return bentWasher
	case u.GroutThick == 0:
		return ""
	case !(u.GroutStrength >= leastMortar):
		return bentWeak
	case u.GroutThick <= thinGrout*d && u.GroutStrength >= in.Block.Concrete.Strength:
		return ""
	case u.GroutThick > min(mostGrout, 5*d):
		return bentThick
	case !in.Uncracked:
		return bentCracked
	case !u.Level || len(r.pulling.rods) > 0:
		return bentPulled
	case !in.inLine():
		return bentNear
	}
	return ""
}

// inLine reports whether all rods have the same shear and stand, seen along it, in
// two or more places over 10 d apart.
func (in *Input) inLine() bool {
	if len(in.Each) < 2 {
		return false
	}
	f := in.Each[0]
	v := math.Hypot(f.ShearX, f.ShearY)
	places := 0
	for i, g := range in.Each {
		if !(math.Hypot(g.ShearX-f.ShearX, g.ShearY-f.ShearY) <= 1e-6*v) {
			return false
		}
		first := true
		for j := range in.At[:i] {
			p, q := in.At[i], in.At[j]
			apart := math.Abs((p.X-q.X)*f.ShearX+(p.Y-q.Y)*f.ShearY) / v
			switch {
			case apart <= 1e-6*in.Thread.Diameter: // beside each other
				first = false
			case !(apart > widePitch*in.Thread.Diameter):
				return false
			}
		}
		if first {
			places++
		}
	}
	return places >= 2
}

// lever sets the shear with a lever arm, for the rod that governs.
//
//	V_Rk,s,M = alpha_M M_Rk,s / l_a, M_Rk,s = 1.2 W_el f_uk (1 - N_Ed/N_Rd,s)
//	l_a = a_3 + e_1, a_3 = 0.5 d, or 0 where a nut clamps the rods at the surface
//	e_1 = grout + gap + t/2, or + t + t_w/2 where washers alone bear on the rods
//
// Source: EN 1992-4:2018 6.2.2.3, 7.2.2.3.2.
func (r *Result) lever() {
	in, u, s := r.in, &r.in.Under, &r.Steel
	l := &s.Lever
	l.AlphaM = 1
	if u.HoldsRotation {
		l.AlphaM = 2
	}
	if !(u.Gap > 0 && u.Clamped) {
		l.A3 = 0.5 * in.Thread.Diameter
	}
	l.E1 = u.GroutThick + u.Gap + u.Plate/2
	if u.Washer > 0 {
		l.E1 = u.GroutThick + u.Gap + u.Plate + u.Washer/2
	}
	l.Arm = l.A3 + l.E1
	ds := in.Thread.NetDiameter(in.Corrosion)
	l.W = math.Pi * ds * ds * ds / 32
	l.M0 = leverShare * l.W * in.Steel.Fu
	l.Rod = -1
	worst := 0.0
	plain := s.K6 * s.NRk / s.GammaV // without grout or lever arm
	for i, f := range in.Each {
		v := math.Hypot(f.ShearX, f.ShearY)
		m := l.M0 * max(0, 1-f.Tension/s.NRd)
		rd := min(l.AlphaM*m/(l.Arm*s.GammaV), plain)
		use := math.MaxFloat64
		if v == 0 {
			use = 0
		} else if rd > 0 {
			use = v / rd
		}
		if l.Rod < 0 || use > worst {
			l.Rod, worst = i, use
			l.Ft, l.Fv, l.M, l.VRd = f.Tension, v, m, rd
		}
	}
}
