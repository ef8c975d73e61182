package settle

import "math"

// RigidCircle returns the settlement of a rigid circle of the radius a under the
// central force p on a half space [mm].
//
//	w = P (1 - nu^2)/(2 a E)
//
// Source: Boussinesq's punch; Timoshenko and Goodier, Theory of elasticity;
// Poulos and Davis 1974 (from memory).
func RigidCircle(p, a, e, nu float64) float64 { return p * (1 - nu*nu) / (2 * a * e) }

// FlexibleCircle returns the settlement of the centre of a flexible circle of
// the radius a under the pressure q on a half space [mm]; the edge settles 2/pi
// of it.
//
//	w = 2 q a (1 - nu^2)/E
//
// Source: Boussinesq; Poulos and Davis 1974 (from memory).
func FlexibleCircle(q, a, e, nu float64) float64 { return 2 * q * a * (1 - nu*nu) / e }

// TiltOfCircle returns the rotation of a rigid circle of the radius a under the
// moment m on a half space [rad].
//
//	theta = 3 M (1 - nu^2)/(4 a^3 E)
//
// Source: Borowicka 1943; Poulos and Davis 1974 (from memory).
func TiltOfCircle(m, a, e, nu float64) float64 { return 3 * m * (1 - nu*nu) / (4 * a * a * a * e) }

// flexibleTilt is the mean rotation of a flexible circle over that of a rigid one:
// 128 M/(15 pi^2 a^3 E') over 3 M/(4 a^3 E') [-]. Source: half space under a straight
// line of pressure, by its Hankel transform.
const flexibleTilt = 512 / (45 * math.Pi * math.Pi)

// bends returns how much more than a rigid one the footing turns [-].
func (r *Result) bends() float64 {
	if r.in.Rigid {
		return 1
	}
	return flexibleTilt
}

// Steinbrenner returns the factors F1 and F2 of the corner of a flexible
// rectangle [-], with m the ratio of its sides, the longer over the shorter, and
// n the depth of the layer over the shorter side; n may be infinite.
//
//	A0 = m ln((1+sqrt(m^2+1)) sqrt(m^2+n^2)/(m (1+sqrt(m^2+n^2+1))))
//	A1 = ln((m+sqrt(m^2+1)) sqrt(1+n^2)/(m+sqrt(m^2+n^2+1)))
//	F1 = (A0+A1)/pi, F2 = n/(2 pi) atan(m/(n sqrt(m^2+n^2+1)))
//	s = q B' (1-nu^2)/E (F1 + (1-2 nu)/(1-nu) F2)
//
// Source: Steinbrenner 1934; Bowles, Foundation analysis and design, 5-6 (from
// memory; F1 and F2 checked against Das, Principles of foundation engineering,
// Ex 5.4).
func Steinbrenner(m, n float64) (f1, f2 float64) {
	edge := math.Sqrt(m*m + 1)
	if math.IsInf(n, 1) {
		return (m*math.Log((1+edge)/m) + math.Log(m+edge)) / math.Pi, 0
	}
	r := math.Sqrt(m*m + n*n + 1)
	a0 := m * math.Log((1+edge)*math.Sqrt(m*m+n*n)/(m*(1+r)))
	a1 := math.Log((m + edge) * math.Sqrt(1+n*n) / (m + r))
	return (a0 + a1) / math.Pi, n / (2 * math.Pi) * math.Atan2(m, n*r)
}

// rigidFinite is the settlement of a rigid footing over that of the centre of a
// flexible one, on a layer that ends. Source: Bowles; Das (from memory). A rigid
// circle on a half space has pi/4 exactly.
const rigidFinite = 0.93

// influence is the settlement of the centre over q B_/E of a homogeneous layer
// from the base to the depth z, with B_ the least width; z may be infinite.
func (r *Result) influence(z, nu float64) float64 {
	if r.in.Shape == Circle {
		// w(0) - w(z), with w(z) on the axis from Foster and Ahlvin 1954.
		surface := (1 - nu*nu)
		if math.IsInf(z, 1) {
			return surface
		}
		s := 2 * z / r.Width
		root := math.Sqrt(1 + s*s)
		return surface - (1+nu)/2*(1/root+(1-2*nu)/(root+s))
	}
	f1, f2 := Steinbrenner(r.Length/r.Width, 2*z/r.Width)
	return 2 * (1 - nu*nu) * (f1 + (1-2*nu)/(1-nu)*f2)
}

// elastic sets the influence of each layer and their sum over the moduli, which is
// that of the whole ground only where every layer has one.
func (r *Result) elastic() {
	in := r.in
	r.Factor = 1
	if in.Rigid {
		r.Factor = rigidFinite
		if in.Shape == Circle && in.HalfSpace {
			r.Factor = math.Pi / 4
		}
	}
	r.Embedment = in.Embedment
	if r.Embedment == 0 {
		r.Embedment = 1
	}
	top := 0.0
	r.Influence = make([]float64, len(in.Layers))
	for i := range in.Layers {
		l := &in.Layers[i]
		bottom := top + l.Thickness
		if in.HalfSpace && i == len(in.Layers)-1 {
			bottom = math.Inf(1)
		}
		// A thin deep layer may come out below zero by rounding alone.
		r.Influence[i] = max(0, r.influence(bottom, l.Poisson)-r.influence(top, l.Poisson))
		if l.Modulus == 0 {
			r.NoElastic = firstOf(r.NoElastic, nameless(i, "modulus_mpa"))
			if top < r.Width {
				r.NoTilt = firstOf(r.NoTilt, nameless(i, "modulus_mpa"))
			}
			top = bottom
			continue
		}
		r.flexibility += r.Influence[i] / l.Modulus
		// The softest of what lies within one width governs the tilt.
		if give := (1 - l.Poisson*l.Poisson) / l.Modulus; top < r.Width && give > r.Give {
			r.Give, r.softest = give, i
		}
		top = bottom
	}
}

// radii of the circles that turn as the footing does about x and about y: those
// with the same second moment of area.
func (r *Result) radii() [2]float64 {
	in := r.in
	if in.Shape == Circle {
		return [2]float64{r.Width / 2, r.Width / 2}
	}
	x, y := in.SizeX, in.SizeY
	return [2]float64{
		math.Pow(x*y*y*y/(3*math.Pi), 0.25),
		math.Pow(y*x*x*x/(3*math.Pi), 0.25),
	}
}
