package ring

import "math"

// Passive returns the passive coefficient of Rankine K_p [-].
//
//	K_p = (1 + sin phi)/(1 - sin phi)
//
// phi [rad] from 0 to below pi/2.
//
// Source: Rankine 1857; Mohr and Coulomb.
func Passive(phi float64) float64 { return (1 + math.Sin(phi)) / (1 - math.Sin(phi)) }

// Active returns the active coefficient of Rankine K_a = 1/K_p [-].
//
// Source: Rankine 1857.
func Active(phi float64) float64 { return 1 / Passive(phi) }

// AtRest returns the coefficient of earth pressure at rest K_0 [-] of fill that is
// not overconsolidated; what compaction locks in comes on top.
//
//	K_0 = 1 - sin phi
//
// Source: Jaky 1944; EN 1997-1:2004 9.5.2(3).
func AtRest(phi float64) float64 { return 1 - math.Sin(phi) }

// Strength returns the greatest vertical stress [MPa] of fill under a confining
// stress [MPa], with its cohesion c [MPa].
//
//	sigma_1 = K_p sigma_3 + 2 c sqrt(K_p)
//
// Source: Mohr and Coulomb.
func Strength(confinement, phi, c float64) float64 {
	kp := Passive(phi)
	return kp*confinement + 2*c*math.Sqrt(kp)
}

// Needed returns the confining stress [MPa] that fill needs under a vertical stress
// q [MPa].
//
//	sigma_3 = (q - 2 c sqrt(K_p))/K_p
//
// Source: Mohr and Coulomb, turned round.
func Needed(q, phi, c float64) float64 {
	kp := Passive(phi)
	return max(0, q-2*c*math.Sqrt(kp)) / kp
}

// ApparentCohesion returns the cohesion [MPa] that has the effect of a confining
// stress [MPa]. It is the same effect written twice: never add both.
//
//	c_r = sigma_3 sqrt(K_p)/2
//
// Source: Henkel and Gilbert 1952; Bathurst and Karpurapu 1993 (from memory).
func ApparentCohesion(confinement, phi float64) float64 {
	return confinement * math.Sqrt(Passive(phi)) / 2
}

// Hoop returns the hoop force [N] of a ring under a stress [MPa] from inside, of
// inner diameter and height [mm].
//
//	T = sigma D h/2
//
// Source: statics of a thin cylinder.
func Hoop(stress, diameter, height float64) float64 { return stress * diameter * height / 2 }

// Confinement returns the stress [MPa] by which a hoop force [N] confines the fill.
//
//	sigma_3 = 2 T/(D h)
//
// Source: statics of a thin cylinder.
func Confinement(hoop, diameter, height float64) float64 { return 2 * hoop / (diameter * height) }

// Membrane returns the stress [MPa] by which a ring of stiffness M [N/mm] confines
// fill that has been shortened by the axial strain, at constant volume.
//
//	sigma_3 = (2 M/D)(1 - sqrt(1 - e_a))/(1 - e_a)
//
// strain [-] from 0 to below 1.
//
// Source: Henkel and Gilbert 1952; Bathurst and Karpurapu 1993 (from memory).
func Membrane(stiffness, diameter, strain float64) float64 {
	return 2 * stiffness / diameter * (1 - math.Sqrt(1-strain)) / (1 - strain)
}

// Janssen returns the vertical stress [MPa] that is left at a depth z [mm] below the
// stress q [MPa], when the wall carries by friction what it can.
//
//	sigma_v = gamma D/(4 K mu) (1 - e^-l) + q e^-l, l = 4 K mu z/D
//
// The fill is checked without it; what it takes off is a vertical load of the ring.
//
// Source: Janssen 1895; EN 1991-4 (from memory).
func Janssen(q, weight, diameter, k, mu, z float64) float64 {
	l := 4 * k * mu / diameter
	if !(l > 0) {
		return q + weight*z
	}
	return weight/l*-math.Expm1(-l*z) + q*math.Exp(-l*z)
}

const psi = 0.006894757293168 // [MPa]

// moduli are the constrained moduli [psi] at the levels of vertical stress [psi].
//
// Source: AASHTO LRFD Table 12.12.3.5-1 after McGrath 1998 (from memory; the rows
// of Sn-95 and Sn-90 with more confidence than the others).
var (
	levels = [6]float64{1, 5, 10, 20, 40, 60}
	moduli = [...][6]float64{
		Sn100: {2350, 3450, 4200, 5500, 7500, 9300},
		Sn95:  {2000, 2600, 3000, 3450, 4250, 5000},
		Sn90:  {1275, 1500, 1625, 1800, 2100, 2500},
		Sn85:  {470, 520, 570, 650, 825, 1000},
	}
)

// ConstrainedModulus returns M_s [MPa] of compacted gravel or sand at a vertical
// stress [MPa], by straight lines between the levels of the table. Beyond the last
// level that of the last counts, which is the safe side; so does the first before
// the first. 0 for no grade.
//
// Source: AASHTO LRFD Table 12.12.3.5-1 (from memory).
func ConstrainedModulus(g Grade, stress float64) float64 {
	if g < Sn100 || g > Sn85 {
		return 0
	}
	row, s := &moduli[g], stress/psi
	if !(s > levels[0]) {
		return row[0] * psi
	}
	for i := 1; i < len(levels); i++ {
		if s <= levels[i] {
			return psi * (row[i-1] + (row[i]-row[i-1])*(s-levels[i-1])/(levels[i]-levels[i-1]))
		}
	}
	return row[len(row)-1] * psi
}

// SurfaceBearing returns the bearing resistance [MPa] of a circle of diameter B [mm]
// on the surface of fill without a ring, under a load inclined by tan = H/V [-].
//
//	q = 0.5 gamma B N_gamma s_gamma i_gamma
//	N_gamma = 2 (N_q - 1) tan phi, s_gamma = 0.7, i_gamma = (1 - H/V)^2.5
//
// Cohesion is left out.
//
// Source: EN 1997-1:2004 Annex D.4 (m = 1.5 for B = L).
func SurfaceBearing(weight, diameter, phi, tan float64) float64 {
	nq := math.Exp(math.Pi*math.Tan(phi)) * Passive(phi)
	return 0.5 * weight * diameter * 2 * (nq - 1) * math.Tan(phi) * 0.7 * math.Pow(max(0, 1-tan), 2.5)
}
