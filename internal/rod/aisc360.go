package rod

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/friction"
)

const (
	clauseJ37    = "AISC 360-22 J3.7"
	clauseJ38    = "AISC 360-22 J3.8"
	clauseJ311   = "AISC 360-22 J3.11(a)"
	clauseMu     = friction.ClauseUS + "; AISC 360-22 J3.7"
	clausePunch4 = "AISC 360-22 J4.2(b), on the perimeter of the nut"
	clauseWasher = "engineering model: plate washer as a simple beam across the hole; common practice, no source"
	clauseBendUS = "AISC Design Guide 1, 3rd ed. (2024), rods in bending, Example 4.7-6; AISC 360-22 J3.8"
	clauseJ34    = "AISC 360-22 J3.4, J3.5, Table J3.4"
)

const (
	tensionShare  = 0.75  // F_nt over F_u; AISC 360-22 Table J3.2
	threadsShear  = 0.450 // F_nv over F_u, threads in the shear plane; AISC 360-22 Table J3.2
	shankShear    = 0.563 // F_nv over F_u, threads excluded; AISC 360-22 Table J3.2
	combinedShare = 1.3   // AISC 360-22 (J3-3)
	bearShare     = 2.4   // AISC 360-22 (J3-6a)
	tearShare     = 1.2   // AISC 360-22 (J3-6c)
	shearRupture  = 0.60  // AISC 360-22 (J4-4)
)

// American holds the intermediate values of AISC 360.
type American struct {
	Factor   float64 // phi or 1/Omega of rods, bearing and tear-out [-]
	Fnt      float64 // nominal tensile stress [MPa]
	Fnv      float64 // nominal shear stress [MPa]
	Reduced  float64 // available tensile stress beside shear, of the governing rod [MPa]
	Base     float64 // shear strength of the base [N]
	Punching float64 // strength of the plate round a nut [N]
}

// us computes the strengths of a rod.
//
//	R_n = F_nt A_b, F_nt = 0.75 F_u; R_n = F_nv A_b, F_nv = 0.450 or 0.563 F_u
//
// The shares 0.75 and 0.450 stand for the net area of an intact thread. Of a worn
// thread, or one that the table does not know, no more counts than its own area:
// F_nt A_b <= F_u A_s, F_nv A_b <= 0.563 F_u A_s.
//
// Source: AISC 360-22 J3.7, Table J3.2; statics.
func (r *Result) us() {
	in, u := r.in, &r.US
	fu := in.Rod.Steel.Fu
	u.Factor = basis.Rupture.Factor(in.Design.Basis)
	u.Fnt, u.Fnv = tensionShare*fu, threadsShear*fu
	if r.Worn {
		u.Fnt, u.Fnv = min(u.Fnt, fu*r.As/r.Ab), min(u.Fnv, shankShear*fu*r.As/r.Ab)
	}
	if in.Rod.ShankInPlane {
		u.Fnv = shankShear * fu
	}
	r.FtRd = u.Factor * u.Fnt * r.Ab
	r.FvRd = u.Factor * u.Fnv * r.Ab
	_, fu, _ = in.Plate.Steel.At(in.Plate.Thickness)
	u.Punching = u.Factor * shearRupture * fu * math.Pi * r.nut() * in.Plate.Net()
	r.Washer = r.washer()
}

// reduced returns the tension of a rod over what its shear leaves [-].
//
//	F'_nt = 1.3 F_nt - F_nt f_rv / (phi F_nv) <= F_nt   (LRFD)
//	F'_nt = 1.3 F_nt - Omega F_nt f_rv / F_nv <= F_nt   (ASD)
//
// Source: AISC 360-22 (J3-3a), (J3-3b).
func (r *Result) reduced(t, v float64) float64 {
	return use(t/r.Ab, r.availableTension(v))
}

func (r *Result) availableTension(v float64) float64 {
	u := &r.US
	f := min(u.Fnt, combinedShare*u.Fnt-u.Fnt*(v/r.Ab)/(u.Factor*u.Fnv))
	return u.Factor * max(0, f)
}

// plateBearingUS returns the bearing strength of the plate at a hole [N], with
// deformation at the hole under service load considered.
//
//	R_n = 2.4 d t F_u
//
// Source: AISC 360-22 (J3-6a).
func (r *Result) plateBearingUS() float64 {
	_, fu, _ := r.in.Plate.Steel.At(r.in.Plate.Thickness)
	return r.US.Factor * bearShare * r.D * r.in.Plate.Net() * fu
}

// tearOut returns the strength of the plate between a hole and the next edge or
// hole at clear distance lc [mm] along the force [N].
//
//	R_n = 1.2 l_c t F_u
//
// Source: AISC 360-22 (J3-6c).
func (r *Result) tearOut(lc float64) float64 {
	_, fu, _ := r.in.Plate.Steel.At(r.in.Plate.Thickness)
	return r.US.Factor * tearShare * max(0, lc) * r.in.Plate.Net() * fu
}

// washer returns the rod tension that a square plate washer carries across the
// hole of the plate [N]: a simple beam of the hole's diameter with the load in
// its middle, on the washer's width less its own hole, plastic section.
//
//	M = T d_0 / 4, M_p = f_y (s - d - 2 mm) t_w^2 / 4, over gamma_M0, times phi or over Omega
//
// Source: engineering model, common practice, no source; EN 1993-1-1:2005 6.2.5,
// AISC 360-22 F1 for the section.
func (r *Result) washer() float64 {
	in, h := r.in, &r.in.Holes
	if h.WasherSide == 0 || h.WasherThickness == 0 {
		return 0
	}
	factor := 1 / in.Design.EC.GammaM0
	if in.Design.Basis.US() {
		factor = basis.Flexure.Factor(in.Design.Basis)
	}
	width := max(0, h.WasherSide-in.Rod.Thread.Diameter-washerHole)
	return factor * r.washerFy() * width * h.WasherThickness * h.WasherThickness / h.Diameter
}

// washerFy returns the yield strength of a plate washer [MPa].
//
// Source: the request, or as the plate's steel.
func (r *Result) washerFy() float64 {
	if r.in.Holes.WasherFy > 0 {
		return r.in.Holes.WasherFy
	}
	fy, _, _ := r.in.Plate.Steel.At(r.in.Plate.Thickness)
	return fy
}

// spans reports whether what stands on the hole must bridge it: the nut does not
// reach beyond the hole, or the hole exceeds the nominal clearance.
func (r *Result) spans() bool { return r.Oversize || !(r.nut() > r.in.Holes.Diameter) }

// falls reports whether a nut can be pulled through its hole.
func (r *Result) falls() bool {
	h := &r.in.Holes
	return !(max(r.nut(), h.WasherSide) > h.Diameter) && h.WasherThickness == 0
}

// washerHole is how much wider than the rod the washer's own hole is [mm].
const washerHole = 2.0
