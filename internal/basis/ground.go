package basis

// Ground are the nationally determined partial factors of EN 1997-1.
type Ground struct {
	Phi  float64 // M2, on tan phi' [-]
	C    float64 // M2, on effective cohesion [-]
	Cu   float64 // M2, on undrained strength [-]
	Rv   float64 // R2, bearing [-]
	Rh   float64 // R2, sliding [-]
	GSup float64 // A1, permanent, unfavourable [-]
	GInf float64 // A1 and A2, permanent, favourable [-]
	Q    float64 // A1, variable [-]
	QA2  float64 // A2, variable [-]
	GDst float64 // EQU and UPL, permanent, destabilising [-]
	GStb float64 // EQU and UPL, permanent, stabilising [-]
	QDst float64 // EQU and UPL, variable, destabilising [-]
}

// RecommendedGround returns the recommended values of EN 1997-1. UPL has 1.0 on
// permanent actions that lift; the 1.1 of EQU is on the safe side of it.
//
// Source: EN 1997-1:2004 Tables A.1, A.3, A.4, A.5, A.15 (A.1, A.5 and A.15 from
// memory).
func RecommendedGround() Ground {
	return Ground{
		Phi: 1.25, C: 1.25, Cu: 1.4, Rv: 1.4, Rh: 1.1,
		GSup: 1.35, GInf: 1.0, Q: 1.5, QA2: 1.3, GDst: 1.1, GStb: 0.9, QDst: 1.5,
	}
}

// Valid reports whether every factor is one by which a check can be made.
func (g *Ground) Valid() bool {
	for _, v := range [...]float64{g.Phi, g.C, g.Cu, g.Rv, g.Rh} {
		if !within(v, 1, 3) {
			return false
		}
	}
	for _, v := range [...]float64{g.GSup, g.Q, g.QA2, g.GDst, g.QDst} {
		if !within(v, 1, 2) {
			return false
		}
	}
	return within(g.GInf, 0.5, 1) && within(g.GStb, 0.5, 1)
}
