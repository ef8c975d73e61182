package ring

import "math"

// Face is the contact at the top or the bottom of a tier.
type Face struct {
	Diameter  float64 // of the loaded circle [mm]
	Depth     float64 // below the shoe [mm]
	Force     float64 // that presses [N]
	Light     float64 // the same without preload and with the weight's favourable share [N]
	Moment    float64 // [Nmm]
	E         float64 // eccentricity Moment/Light [mm]
	Area      float64 // of the loaded circle [mm2]
	Effective float64 // area A' around the resultant [mm2]
	Mean      float64 // Force over Area [MPa]
	Even      float64 // Force over Effective [MPa]
	Edge      float64 // greatest elastic stress, no tension taken [MPa]
	Lost      bool    // the resultant leaves the circle: no stresses
	Level     int     // eighths of the tier's height below its top, of a face within it
}

// keep takes a face within a tier if it has more than top, bottom and what was kept.
func (f *Face) keep(other Face, level int, top, bottom *Face) {
	if f.Lost || !(other.Lost || other.Edge > max(f.Edge, top.Edge, bottom.Edge)*(1+1e-9)) {
		return
	}
	*f, f.Level = other, level
}

// keepUneven takes a face within a tier if its edge stress is more times its mean stress
// than at top, bottom and what was kept.
func (f *Face) keepUneven(other Face, level int, top, bottom *Face) {
	if other.Lost || !(other.uneven() > max(f.uneven(), top.uneven(), bottom.uneven())*(1+1e-9)) {
		return
	}
	*f, f.Level = other, level
}

// uneven returns the edge stress over the mean stress [-]; 0 where there are none.
func (f *Face) uneven() float64 {
	if !(f.Edge > 0) {
		return 0
	}
	return f.Edge / f.Mean
}

// furthest is the eccentricity over the radius from which on no balance is looked for.
const furthest = 0.98

// face sets the stresses. Force over the area by the eccentricity of Light is at
// least what either weight alone gives.
func face(f Face) Face {
	radius := f.Diameter / 2
	f.Area = math.Pi * radius * radius
	f.Mean = f.Force / f.Area
	if f.Moment > 0 {
		f.E = f.Moment / f.Light
		if !(f.Light > 0) || !(f.E < furthest*radius) {
			f.E, f.Lost = 0, true
			return f
		}
	}
	f.Effective = EffectiveArea(f.Diameter, f.E)
	f.Even = f.Force / f.Effective
	f.Edge = f.Mean * EdgeFactor(f.Diameter, f.E)
	return f
}

// EffectiveArea returns the area of a circle of a diameter [mm] whose centre of
// gravity is at the eccentricity e [mm], of the shape cut by two arcs [mm2].
//
//	A' = 2 (R^2 acos(e/R) - e sqrt(R^2 - e^2))
//
// 0 from e = R on.
//
// Source: offshore practice for circular footings; geometry.
func EffectiveArea(diameter, e float64) float64 {
	r := diameter / 2
	if !(e < r) {
		return 0
	}
	return 2 * (r*r*math.Acos(e/r) - e*math.Sqrt(r*r-e*e))
}

// EdgeFactor returns the greatest elastic stress over the mean stress of a circular
// contact of a diameter [mm] that takes no tension, at the eccentricity e [mm] [-].
//
//	within the kern, e <= D/8: 1 + 8 e/D
//
// Beyond it the neutral axis at the angle b from the pressed edge follows from
//
//	I_1 = 2/3 sin^3 b - cos b (b - sin b cos b)
//	I_2 = b/4 - sin(4 b)/16 - 2/3 cos b sin^3 b
//	e/R = I_2/I_1, factor = pi (1 - cos b)/I_1
//
// Infinite from e = R on.
//
// Source: statics of a straight-line stress on a circle.
func EdgeFactor(diameter, e float64) float64 {
	r := diameter / 2
	if e <= diameter/8 {
		return 1 + 8*e/diameter
	}
	if !(e < r) {
		return math.Inf(1)
	}
	integrals := func(b float64) (float64, float64) {
		s, c := math.Sincos(b)
		return 2.0/3.0*s*s*s - c*(b-s*c), b/4 - math.Sin(4*b)/16 - 2.0/3.0*c*s*s*s
	}
	// e/R falls from 1 to 1/4 as the pressed part grows.
	low, high := 0.05, math.Pi
	for range 60 {
		mid := (low + high) / 2
		if i1, i2 := integrals(mid); i2 > e/r*i1 {
			low = mid
		} else {
			high = mid
		}
	}
	i1, _ := integrals(low)
	return math.Pi * (1 - math.Cos(low)) / i1
}
