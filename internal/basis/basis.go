// Package basis holds the design bases: which standards are used, in which
// edition, with which partial or resistance factors.
package basis

// Basis is a family of standards.
type Basis uint8

// The bases. The zero value is none of them.
const (
	Unset Basis = iota
	Eurocode
	USLRFD
	USASD
)

// Count is one more than the greatest Basis: the length of an array indexed
// by Basis.
const Count = 4

// US reports whether b is one of the two United States bases.
func (b Basis) US() bool { return b == USLRFD || b == USASD }

// Valid reports whether b is one of the bases.
func (b Basis) Valid() bool { return b >= Eurocode && b <= USASD }

// Strength is the pair of factors that turns a nominal strength into an
// available one by United States practice.
//
//	LRFD: phi R_n    ASD: R_n / Omega
//
// Source: AISC 360-22 B3.1, B3.2.
type Strength struct {
	Phi   float64 // resistance factor [-]
	Omega float64 // safety factor [-]
}

// Factor returns what a nominal strength is multiplied by [-]: phi for LRFD,
// 1/Omega for ASD, 0 for any other basis.
//
// Source: AISC 360-22 B3.1, B3.2.
func (s Strength) Factor(b Basis) float64 {
	switch b {
	case USLRFD:
		return s.Phi
	case USASD:
		return 1 / s.Omega
	}
	return 0
}

// Resistance and safety factors of AISC 360-22, each with its clause.
var (
	// ConcreteBearing is for concrete under a plate. Source: AISC 360-22 J8.
	ConcreteBearing = Strength{Phi: 0.65, Omega: 2.31}
	// Flexure is for plates in bending. Source: AISC 360-22 F1.
	Flexure = Strength{Phi: 0.90, Omega: 1.67}
	// Rupture is for bolts, threaded parts, fillet welds, bearing, tear-out and
	// rupture of base metal. Source: AISC 360-22 J3.7, J3.8, J3.11, J2.4, J4.2.
	Rupture = Strength{Phi: 0.75, Omega: 2.00}
	// Friction is for friction under a base plate, FrictionLimit for what its contact
	// takes. Source: AISC Design Guide 1, 3rd ed. (2024), Eq. 4-30; Omega = 1.5/phi.
	Friction      = Strength{Phi: 0.65, Omega: 2.31}
	FrictionLimit = Strength{Phi: 0.75, Omega: 2.00}
	// ShearYield is for yielding of connected parts in shear. Source: AISC 360-22 J4.2(a).
	ShearYield = Strength{Phi: 1.00, Omega: 1.50}
	// TensionYield is for yielding of connected parts in tension. Source: AISC 360-22 J4.1(a).
	TensionYield = Strength{Phi: 0.90, Omega: 1.67}
	// GrooveTension is for partial-penetration groove welds in tension normal
	// to the axis, weld metal. Source: AISC 360-22 Table J2.5.
	GrooveTension = Strength{Phi: 0.80, Omega: 1.88}
)

// Factors are the nationally determined parameters of the Eurocode checks.
type Factors struct {
	GammaM0      float64 // yielding of steel [-]
	GammaM2      float64 // rupture of steel, bolts, welds [-]
	GammaC       float64 // concrete [-]
	AlphaCC      float64 // long-term effects on concrete [-]
	BetaJ        float64 // foundation joint coefficient [-]
	CFd          float64 // friction between plate and grout [-]
	GammaMTimber float64 // timber [-]; 0: by the kind of timber
	GammaS       float64 // reinforcement [-]
	AlphaCTPl    float64 // tensile strength of plain concrete [-]
	Ground       Ground
}

// Recommended returns the recommended values of the Eurocodes.
//
// Source: EN 1993-1-1:2005 6.1 (gamma_M0), EN 1993-1-8:2005 Table 2.1
// (gamma_M2), 6.2.5(7) (beta_j), 6.2.2(6) (C_f,d), EN 1992-1-1:2004 2.4.2.4
// (gamma_C, gamma_S), 3.1.6 (alpha_cc), 12.3.1 (alpha_ct,pl).
func Recommended() Factors {
	return Factors{
		GammaM0: 1.0, GammaM2: 1.25, GammaC: 1.5, AlphaCC: 1.0,
		BetaJ: 2.0 / 3.0, CFd: 0.20,
		GammaS: 1.15, AlphaCTPl: 0.8, Ground: RecommendedGround(),
	}
}

// Design is a basis with its factors, as every check takes it.
type Design struct {
	Basis Basis
	EC    Factors // used by Eurocode only
}

// Valid reports whether the basis is known and, for the Eurocode, whether every
// factor is one by which a resistance can be computed.
func (d *Design) Valid() bool {
	if d.Basis != Eurocode {
		return d.Basis.US()
	}
	f := &d.EC
	return within(f.GammaM0, 0.9, 2) && within(f.GammaM2, 1, 2) && within(f.GammaC, 1, 3) &&
		within(f.AlphaCC, 0.7, 1) && within(f.BetaJ, 1e-6, 2.0/3.0+1e-9) && within(f.CFd, 0, 0.5) &&
		(f.GammaMTimber == 0 || within(f.GammaMTimber, 1, 2)) &&
		within(f.GammaS, 1, 2) && within(f.AlphaCTPl, 0.1, 1) && f.Ground.Valid()
}

func within(v, low, high float64) bool { return v >= low && v <= high }
