package ground

import "math"

// Three are factors for cohesion, overburden and weight of the ground.
type Three struct {
	C     float64 // [-]
	Q     float64 // [-]
	Gamma float64 // [-]
}

// small is an angle below which the limit for phi = 0 stands [rad].
const small = 1e-9

// BearingFactors returns N_c, N_q and N_gamma [-] of an author for an angle of
// friction from 0 to 50 degrees [rad]; other angles give none.
//
//	N_q = e^(pi tan phi) tan^2(45 + phi/2), N_c = (N_q - 1) cot phi
//	N_gamma: EN 2 (N_q - 1) tan phi, rough base; Hansen 1.5 (N_q - 1) tan phi;
//	Meyerhof (N_q - 1) tan(1.4 phi); Vesic 2 (N_q + 1) tan phi
//	Terzaghi: N_q = e^(2 (3pi/4 - phi/2) tan phi)/(2 cos^2(45 + phi/2)),
//	N_gamma from a table
//
// As phi goes to 0, N_c goes to 2 + pi, with Terzaghi to 3pi/2 + 1.
//
// Source: EN 1997-1:2004 D.4; Bowles, Foundation Analysis and Design, 5th ed.,
// Table 4-1 (from memory); Terzaghi's N_gamma (from memory).
func BearingFactors(a Author, phi float64) Three {
	if !(phi >= 0 && phi <= 50*math.Pi/180) || a < Terzaghi || a > Annex {
		return Three{}
	}
	tan := math.Tan(phi)
	if a == Terzaghi {
		if phi < small {
			return Three{C: 1.5*math.Pi + 1, Q: 1}
		}
		cos := math.Cos(math.Pi/4 + phi/2)
		nq := math.Exp(2*(0.75*math.Pi-phi/2)*tan) / (2 * cos * cos)
		return Three{C: (nq - 1) / tan, Q: nq, Gamma: terzaghiGamma(phi)}
	}
	if phi < small {
		return Three{C: math.Pi + 2, Q: 1}
	}
	// tan^2(45 + phi/2) = (1 + sin)/(1 - sin), so that N_q - 1 keeps its digits.
	sin := math.Sin(phi)
	less := math.Expm1(math.Pi*tan + math.Log1p(sin) - math.Log1p(-sin))
	n := Three{C: less / tan, Q: 1 + less}
	switch a {
	case Meyerhof:
		n.Gamma = less * math.Tan(1.4*phi)
	case Hansen:
		n.Gamma = 1.5 * less * tan
	case Vesic:
		n.Gamma = 2 * (less + 2) * tan
	default:
		n.Gamma = 2 * less * tan
	}
	return n
}

// terzaghiTable is N_gamma at 0, 5 ... 50 degrees: the lesser of the two usual
// printings of it (from memory).
var terzaghiTable = [...]float64{0, 0.14, 0.56, 1.52, 3.64, 8.34, 19.13, 42.4, 100.4, 297.5, 1153}

// terzaghiGamma interpolates the logarithm, which is below a straight line
// between the values; below 5 degrees it goes with the square of the angle.
func terzaghiGamma(phi float64) float64 {
	at := phi * 180 / math.Pi / 5
	if at < 1 {
		return terzaghiTable[1] * at * at
	}
	i := min(int(at), len(terzaghiTable)-2)
	low, high := terzaghiTable[i], terzaghiTable[i+1]
	return low * math.Pow(high/low, at-float64(i))
}

// ShapeFactors returns s_c, s_q and s_gamma [-] for an effective area with the
// ratio B'/L' of its sides [-], under an angle of friction [rad].
//
//	EN: s_q = 1 + r sin phi, s_gamma = 1 - 0.3 r, s_c = (s_q N_q - 1)/(N_q - 1);
//	undrained 1 + 0.2 r
//	Terzaghi: 1 + 0.3 r, 1, 1 - 0.2 r, under a circle 0.6
//	Meyerhof: 1 + 0.2 K_p r, 1 + 0.1 K_p r twice, the latter 1 up to 10 degrees
//	Hansen, Vesic: 1 + N_q/N_c r, 1 + r sin phi (Vesic: tan phi), 1 - 0.4 r
//
// Source: EN 1997-1:2004 D.3, D.4; Bowles, 5th ed., Tables 4-1, 4-3, 4-5 (from
// memory); Terzaghi's between strip and square are common practice.
func ShapeFactors(a Author, phi, ratio float64, circle bool) Three {
	n, sin := BearingFactors(a, phi), math.Sin(phi)
	switch a {
	case Terzaghi:
		s := Three{1 + 0.3*ratio, 1, 1 - 0.2*ratio}
		if circle {
			s.Gamma = 0.6
		}
		return s
	case Meyerhof:
		kp := (1 + sin) / (1 - sin)
		s := Three{1 + 0.2*kp*ratio, 1, 1}
		if phi > 10*math.Pi/180 {
			s.Q = 1 + 0.1*kp*ratio
			s.Gamma = s.Q
		}
		return s
	case Hansen:
		return Three{1 + n.Q/n.C*ratio, 1 + ratio*sin, 1 - 0.4*ratio}
	case Vesic:
		return Three{1 + n.Q/n.C*ratio, 1 + ratio*math.Tan(phi), 1 - 0.4*ratio}
	case Annex:
		if phi < small {
			return Three{1 + 0.2*ratio, 1, 1}
		}
		sq := 1 + ratio*sin
		return Three{1 + (sq-1)*n.Q/(n.C*math.Tan(phi)), sq, 1 - 0.3*ratio}
	}
	return Three{}
}

// DepthFactors returns d_c, d_q and d_gamma [-] for a base at a depth [mm], by
// its whole width [mm] and the angle of friction [rad].
//
//	Meyerhof: 1 + 0.2 sqrt(K_p) D/B, 1 + 0.1 sqrt(K_p) D/B twice, the latter 1 up
//	to 10 degrees
//	Hansen, Vesic: 1 + 0.4 k, 1 + 2 tan phi (1 - sin phi)^2 k, 1
//	k = D/B up to 1, atan(D/B) beyond
//
// The printed k falls back at D = B; here it stays at pi/4 until atan(D/B)
// passes that. D counts up to 2.5 B, no deeper than a shallow footing. EN 1997-1
// Annex D and Terzaghi have none.
//
// Source: Bowles, 5th ed., Tables 4-3, 4-5 (from memory).
func DepthFactors(a Author, phi, depth, width float64) Three {
	k, sin := min(depth/width, 2.5), math.Sin(phi)
	switch a {
	case Meyerhof:
		root := math.Sqrt((1 + sin) / (1 - sin))
		d := Three{1 + 0.2*root*k, 1, 1}
		if phi > 10*math.Pi/180 {
			d.Q = 1 + 0.1*root*k
			d.Gamma = d.Q
		}
		return d
	case Hansen, Vesic:
		k = depthRatio(k)
		return Three{1 + 0.4*k, 1 + 2*math.Tan(phi)*(1-sin)*(1-sin)*k, 1}
	}
	return Three{1, 1, 1}
}

func depthRatio(k float64) float64 { return min(k, max(math.Pi/4, math.Atan(k))) }

// Inclined is a load on an effective area.
type Inclined struct {
	V      float64 // across the base [N]
	H      float64 // along the base [N]
	Area   float64 // effective [mm2]
	Grip   float64 // adhesion on the base, or the undrained strength [MPa]
	M      float64 // exponent m [-]
	Choice Author
}

// InclinationFactors returns i_c, i_q and i_gamma [-] under an angle of friction
// [rad], and whether the base holds the load along it at all.
//
//	EN, Vesic: i_q = (1 - H/(V + A' c cot phi))^m, i_gamma the same to m + 1
//	Hansen: (1 - 0.5 H/(V + A' c cot phi))^5, (1 - 0.7 H/(V + A' c cot phi))^5
//	all three: i_c = i_q - (1 - i_q)/(N_c tan phi)
//	undrained: EN, Hansen 0.5 (1 + sqrt(1 - H/(A' c_u))); Vesic 1 - m H/(A' c_u N_c)
//	Meyerhof: (1 - theta/90)^2 twice, (1 - theta/phi)^2
//
// Terzaghi has none.
//
// Source: EN 1997-1:2004 D.3, D.4; Bowles, 5th ed., Tables 4-3, 4-5 (from memory).
func InclinationFactors(l Inclined, phi float64) (i Three, holds bool) {
	if l.H == 0 {
		return Three{1, 1, 1}, true
	}
	tan := math.Tan(phi)
	n := BearingFactors(l.Choice, phi)
	drained := phi >= small
	if !drained && !(l.H <= l.Area*l.Grip) || drained && !(l.H < l.V+l.Area*l.Grip/tan) {
		return Three{}, false
	}
	rest := l.H
	if drained {
		rest /= l.V + l.Area*l.Grip/tan
	} else {
		rest /= l.Area * l.Grip
	}
	switch l.Choice {
	case Meyerhof:
		theta := math.Atan2(l.H, l.V)
		k := 1 - theta/(math.Pi/2)
		i = Three{C: k * k, Q: k * k}
		if drained && theta < phi {
			i.Gamma = (1 - theta/phi) * (1 - theta/phi)
		}
		return i, true
	case Vesic, Annex:
		if !drained {
			if l.Choice == Vesic {
				return Three{1 - l.M*rest/n.C, 1, 1}, true
			}
			return Three{0.5 * (1 + math.Sqrt(1-rest)), 1, 1}, true
		}
		i.Q = math.Pow(1-rest, l.M)
		i.Gamma = math.Pow(1-rest, l.M+1)
	case Hansen:
		if !drained {
			return Three{0.5 * (1 + math.Sqrt(1-rest)), 1, 1}, true
		}
		i.Q = math.Pow(1-0.5*rest, 5)
		i.Gamma = math.Pow(1-0.7*rest, 5)
	default:
		return Three{}, false
	}
	i.C = i.Q - (1-i.Q)/(n.C*tan)
	return i, true
}

// LayeredPressure returns what a footing bears on a granular layer over clay
// before it punches through the layer [MPa]; ratio is B/L.
//
//	q_u = (1 + 0.2 r) 5.14 c_2 + (1 + r) gamma_1 H^2 (1 + 2 D/H) K_s tan phi_1/B + gamma_1 D
//
// The pressure that the layer itself bears is a limit beside it.
//
// Source: Meyerhof and Hanna 1978, as in Das, Principles of Foundation
// Engineering, 4.4; the shape of a rectangle from memory.
func LayeredPressure(clay, weight, thickness, depth, punching, phi, width, ratio float64) float64 {
	return (1+0.2*ratio)*(math.Pi+2)*clay + (1+ratio)*weight*thickness*(thickness+2*depth)*punching*math.Tan(phi)/width + weight*depth
}
