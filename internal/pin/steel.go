package pin

import (
	"math"

	"footward.example/footward/internal/basis"
)

// Clauses and factors of EN 1993 and AISC 360 for buckling, pins and lateral
// torsional buckling of bars are from memory.
const (
	clausePlateNetEC = "EN 1993-1-1:2005 6.2.3"
	clausePlateNetUS = "AISC 360-22 D2, J4.1"
	clausePlateEC    = "EN 1993-1-1:2005 6.2.1(7), elastic; 6.3.1, 6.3.2.2"
	clausePlateUS    = "AISC 360-22 H1, F11, elastic"
	clauseBuckleEC   = "EN 1993-1-1:2005 6.3.1, curve c"
	clauseBuckleUS   = "AISC 360-22 E3"
	clauseHoleEC     = "EN 1993-1-8:2005 Table 3.4; 3.13 for dowels"
	clauseHoleUS     = "AISC 360-22 J3.11(a)"
	clauseTightEC    = "EN 1993-1-8:2005 Table 3.3"
	clauseTightUS    = "AISC 360-22 J3.4, J3.5, Table J3.4"
	clausePinEC      = "EN 1993-1-8:2005 Table 3.4; Table 3.10 for dowels"
	clausePinUS      = "AISC 360-22 J3.7"
	clauseGapEC      = "EN 1993-1-8:2005 3.13, Table 3.10"
	clauseGapUS      = "AISC 360-22 F11, J3.7; sum of squares: engineering practice"
)

const (
	steelModulus  = 210000.0 // MPa; EN 1993-1-1:2005 3.2.6
	modulusUS     = 29000 * 1000 * psi
	ruptureEC     = 0.9        // EN 1993-1-1:2005 (6.7)
	wider         = inch / 16  // added to the hole for net area; AISC 360-22 B4.3b
	imperfect     = 0.49       // curve c, solid sections; EN 1993-1-1:2005 Tables 6.1, 6.2
	imperfectLT   = 0.76       // curve d; EN 1993-1-1:2005 Tables 6.3, 6.4
	noBuckling    = 0.2        // EN 1993-1-1:2005 6.3.1.2(4), 6.3.2.2(4)
	shearOver     = 81.0 / 210 // G over E; EN 1993-1-1:2005 3.2.6
	lateralUS     = 1.9        // AISC 360-22 F11.2(c)
	boltShear     = 0.5        // alpha_v, the lower value, thread in the plane; EN 1993-1-8:2005 Table 3.4
	pinShear      = 0.6        // EN 1993-1-8:2005 Table 3.10
	pinBearing    = 1.5        // EN 1993-1-8:2005 Table 3.10
	pinBending    = 1.5        // EN 1993-1-8:2005 Table 3.10
	threadsShear  = 0.450      // F_nv over F_u; AISC 360-22 Table J3.2
	bearShare     = 2.4        // AISC 360-22 (J3-6a)
	tearShare     = 1.2        // AISC 360-22 (J3-6c)
	mostYield     = 1.6        // of F_y S; AISC 360-22 (F11-1)
	edgeEC        = 1.2        // over d_0; EN 1993-1-8:2005 Table 3.3
	spacingEC     = 2.4        // over d_0, for p_1 and p_2; EN 1993-1-8:2005 Table 3.3
	edgeUS        = 1.5        // over d; the greatest of AISC 360-22 Table J3.4
	spacingUS     = 8.0 / 3    // over d; AISC 360-22 J3.4
	halfShear     = 0.5        // of the plastic shear; EN 1993-1-1:2005 6.2.8(2)
	euler         = 2.25       // F_y/F_e where (E3-2) ends; AISC 360-22 E3
	inelastic     = 0.658      // AISC 360-22 (E3-2)
	elasticShare  = 0.877      // AISC 360-22 (E3-3)
	without       = 1e9        // mm; stands for a neighbour that is not there
	planesOfGroup = 2          // directions in which a hole is looked at
)

// compression is for members in compression. Source: AISC 360-22 E1.
var compression = basis.Strength{Phi: 0.90, Omega: 1.67}

// Steel holds the intermediate values of the plates and of the pin as steel.
// Forces are those of all plates together, but for the hole's.
type Steel struct {
	Count   float64 // plates [-]
	T       float64 // thickness of a plate, corrosion taken off [mm]
	Fy      float64 // [MPa]
	Fu      float64 // [MPa]
	A       float64 // gross area [mm2]
	Anet    float64 // net area [mm2]
	W       float64 // elastic section modulus at the pins, holes taken off [mm3]
	Yield   float64 // resistance of the gross section [N]
	Rupture float64 // resistance of the net section [N]
	K       float64 // of the length of buckling, of the plates out of their plane [-]
	Lambda  float64 // relative slenderness; US: F_y/F_e [-]
	Chi     float64 // reduction for buckling; US: F_cr/F_y [-]
	Buckle  float64 // resistance in compression [N]
	LambLT  float64 // K L w/t^2 f_y/E, and by Eurocode its slenderness in lateral torsional buckling [-]
	ChiLT   float64 // reduction for lateral torsional buckling [-]
	N       float64 // force along the plates, a magnitude [N]
	V       float64 // force across the plates, a magnitude [N]
	M       float64 // moment on the plates [Nmm]
	Stress  float64 // from axial force and moment [MPa]
	Allowed float64 // f_y/gamma_M0 or gamma_M1, phi F_y or F_y/Omega [MPa]
	Vlimit  float64 // shear below which bending is not reduced [N]
	Share   float64 // force of the most loaded pin on one plate [N]
	Alpha   float64 // alpha_b, Eurocode [-]
	K1      float64 // k_1, Eurocode [-]
	Table34 float64 // resistance of the hole by Table 3.4, Eurocode [N]
	Pin310  float64 // resistance of the hole by Table 3.10, dowels, Eurocode [N]
	Hole    float64 // resistance of a hole [N]
	Lc      float64 // least clear distance, US [mm]
	Tear    float64 // resistance to tear-out, US [N]
	Ends    Tearing // block that tears towards the plates' end
	Sides   Tearing // block that tears towards their side
	Torn    float64 // force of the first, the second counted in [N]
	Whole   float64 // resistance of the first, or of the second where it is alone [N]
	Plane   float64 // force on a shear plane of the pin [N]
	Cut     float64 // resistance of a shear plane [N]
	Q       float64 // what the timber resists per length, at the worst angle of any pin [N/mm]
	Block   float64 // length of the pressure that balances a plane's force, x [mm]
	Arm     float64 // of the bending across the gap [mm]
	Bend    float64 // moment in the pin [Nmm]
	BendRd  float64 // resistance of the pin in bending [Nmm]
	Sum     float64 // of squares [-]
	Needs   float64 // the tightest distance of the holes: needed [mm]
	Has     float64 // and there [mm]
}

// net returns the thickness of a plate that corrosion leaves [mm].
func (r *Result) net() float64 { return r.in.Plates.Thickness - r.in.Plates.Corrosion }

// count returns the number of plates [-].
func (r *Result) count() float64 {
	if r.in.Plates.Arrangement == Inside {
		return 1
	}
	return 2
}

// steel sets the plates and the pin as steel.
func (r *Result) steel() {
	in, s, p := r.in, &r.Steel, &r.in.Plates
	s.Count, s.T = r.count(), r.net()
	s.K = r.sways()
	s.Fy, s.Fu, _ = p.Steel.At(p.Thickness)
	hole := p.Hole
	if !r.ec {
		hole += wider
	}
	s.A = s.Count * s.T * p.Width
	s.Anet = s.Count * s.T * max(0, p.Width-float64(in.Layout.Rows)*hole)
	inertia := p.Width * p.Width * p.Width / 12
	for row := range in.Layout.Rows {
		x, _ := r.place(row, 0)
		inertia -= hole*hole*hole/12 + hole*x*x
	}
	s.W = s.Count * s.T * max(0, inertia) / (p.Width / 2)
	s.N, s.V = r.Uneven*math.Abs(r.Nj), r.Uneven*math.Abs(in.Actions.V)
	s.M = r.Uneven*math.Abs(in.Actions.M) + s.V*p.Arm
	s.Share, s.Plane = r.Most/s.Count, r.Most/planes
	r.plates()
	s.Stress = use(s.M, s.W*s.ChiLT)
	if r.Nj < 0 {
		s.Stress += use(s.N, s.Anet*s.Chi)
	} else {
		s.Stress += use(s.N, s.Anet)
	}
	r.holes()
	r.tearing()
	r.cut()
	r.bridge()
}

// use returns a ratio that stays finite where the divisor is nothing.
func use(v, over float64) float64 {
	if v == 0 {
		return 0
	}
	if !(over > 0) {
		return math.MaxFloat64 / 4
	}
	return v / over
}

// plates sets the resistances of the plates as members.
//
//	EN: N_t,Rd = min(A f_y/gamma_M0, 0.9 A_net f_u/gamma_M2)
//	    N_b,Rd = chi A f_y/gamma_M1, not above A f_y/gamma_M0
//	US: F_y A_g, F_u A_e; F_cr A_g with 0.658^(F_y/F_e) F_y or 0.877 F_e
//	stress N/(chi A_net) + M/(chi_LT W) against f_y/gamma_M0, or where it may buckle
//	    the greater of gamma_M0 and gamma_M1; F_y with phi or Omega
//	EN: lambda_LT = sqrt(W f_y/M_cr), M_cr = pi w t^3 sqrt(E G)/(6 K L), curve d
//	US: chi_LT = 1.9 E t^2/(K L w F_y) <= 1
//
// chi counts under compression only. The length of buckling is K times the arm.
//
// Source: EN 1993-1-1:2005 6.2.3, 6.3.1, 6.3.2.2, 6.2.5; AISC 360-22 D2, E3, F11.
func (r *Result) plates() {
	in, s := r.in, &r.Steel
	r.slender(s.T, s.Fy)
	if r.ec {
		g := &in.Design.EC
		s.Allowed = s.Fy / r.ofStress()
		s.Yield = s.A * s.Fy / g.GammaM0
		s.Rupture = ruptureEC * s.Anet * s.Fu / g.GammaM2
		s.Vlimit = halfShear * s.Yield / math.Sqrt(3)
		s.Buckle = s.A * s.Fy * r.pressed()
		return
	}
	b := in.Design.Basis
	s.Allowed = basis.Flexure.Factor(b) * s.Fy
	s.Yield = basis.TensionYield.Factor(b) * s.Fy * s.A
	s.Rupture = basis.Rupture.Factor(b) * s.Fu * s.Anet
	s.Vlimit = halfShear * basis.ShearYield.Factor(b) * 0.6 * s.Fy * s.A
	s.Buckle = compression.Factor(b) * s.Chi * s.Fy * s.A
}

// slender sets the reductions for buckling of plates of a net thickness and yield
// strength.
func (r *Result) slender(t, fy float64) {
	s, p := &r.Steel, &r.in.Plates
	length := s.K * p.Arm
	slenderness, long := length*math.Sqrt(12)/t, length*p.Width/(t*t)
	if r.ec {
		s.Lambda = slenderness / (math.Pi * math.Sqrt(steelModulus/fy))
		s.Chi = curve(s.Lambda, imperfect)
		s.LambLT = math.Sqrt(long * fy / steelModulus / (math.Pi * math.Sqrt(shearOver)))
		s.ChiLT = curve(s.LambLT, imperfectLT)
		return
	}
	s.Lambda = fy * slenderness * slenderness / (math.Pi * math.Pi * modulusUS)
	s.Chi = math.Pow(inelastic, s.Lambda)
	if s.Lambda > euler {
		s.Chi = elasticShare / s.Lambda
	}
	s.LambLT = long * fy / modulusUS
	s.ChiLT = min(1, lateralUS/s.LambLT)
}

// curve returns the reduction for buckling [-].
//
//	phi = (1 + alpha (lambda - 0.2) + lambda^2)/2, chi = 1/(phi + sqrt(phi^2 - lambda^2)) <= 1
//
// Source: EN 1993-1-1:2005 (6.49), (6.56).
func curve(lambda, alpha float64) float64 {
	if lambda <= noBuckling {
		return 1
	}
	phi := 0.5 * (1 + alpha*(lambda-noBuckling) + lambda*lambda)
	return min(1, 1/(phi+math.Sqrt(max(0, phi*phi-lambda*lambda))))
}
