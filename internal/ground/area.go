package ground

import "math"

// Effective is the part of the base that bears, about the resultant.
type Effective struct {
	Area   float64 // A' [mm2]
	Width  float64 // B', the lesser side [mm]
	Length float64 // L' [mm]
}

// EffectiveRectangle returns the effective area [mm2] of a rectangle under
// eccentricities that are not negative; zero where nothing bears.
//
//	B' = B - 2 e_B, L' = L - 2 e_L, A' = B' L'
//
// Source: EN 1997-1:2004 D.2; Meyerhof 1953.
func EffectiveRectangle(sizeX, sizeY, ex, ey float64) Effective {
	x, y := sizeX-2*ex, sizeY-2*ey
	if !(x > 0 && y > 0) {
		return Effective{}
	}
	return Effective{Area: x * y, Width: min(x, y), Length: max(x, y)}
}

// EffectiveCircle returns the effective area [mm2] of a circle; zero where
// nothing bears.
//
//	A' = 2 (R^2 acos(e/R) - e sqrt(R^2 - e^2))
//	b_e = 2 (R - e), l_e = 2 sqrt(R^2 - e^2)
//	L' = sqrt(A' l_e/b_e), B' = L' b_e/l_e
//
// Source: API RP 2GEO and DNV-ST-0126 (from memory).
func EffectiveCircle(radius, e float64) Effective {
	if !(e < radius) {
		return Effective{}
	}
	if e == 0 {
		side := math.Sqrt(math.Pi) * radius
		return Effective{Area: math.Pi * radius * radius, Width: side, Length: side}
	}
	half := math.Sqrt((radius - e) * (radius + e))
	area := 2 * (radius*radius*math.Acos(e/radius) - e*half)
	if !(area > 1e-9*radius*radius) {
		return Effective{}
	}
	length := math.Sqrt(area * half / (radius - e))
	return Effective{Area: area, Width: area / length, Length: length}
}
