package rod

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

// Bending holds the bending of rods that bridge a gap, or carry shear from welded
// washers above holes in which the plate does not bear.
type Bending struct {
	Arm     float64 // lever arm l_a [mm]
	AlphaM  float64 // 1: the plate may turn, 2: it may not [-]
	Washers bool    // whether the shear comes from washers above the plate
	Tw      float64 // thickness of those washers [mm]
	W       float64 // section modulus, or Z of the nominal section by the US example [mm3]
	Rod     int     // governing rod, counted from 0
	Ft, Fv  float64 // its tension and shear [N]
	// Eurocode.
	GammaN float64 // gamma_Ms in tension [-]
	GammaV float64 // gamma_Ms in shear [-]
	M0     float64 // characteristic bending resistance without tension [Nmm]
	NRd    float64 // tension resistance by EN 1992-4 [N]
	M      float64 // bending resistance beside the tension [Nmm]
	VRd    float64 // shear resistance with lever arm [N]
	// US.
	Stress    float64 // tension plus bending [MPa]
	Available float64 // tensile stress that the shear leaves [MPa]
	use       float64
}

const (
	bendShare   = 1.2 // EN 1992-4:2018 (7.37), M0_Rk,s = 1.2 W_el f_uk
	leastGammaN = 1.4 // EN 1992-4:2018 Table 4.1
	leastGammaV = 1.25
	hardGammaV  = 1.5
)

// bends reports whether the rods carry their shear by bending.
func (r *Result) bends() bool { return r.in.StandOff.Gap > 0 || r.Bend.Washers }

// bending finds the rod that governs in bending.
//
//	l_a = a_3 + gap + t/2, a_3 = 0.5 d, or 0 where a nut clamps the rod
//	l_a = a_3 + gap + t + t_w/2 where welded washers alone bear on the rods
//
// Eurocode: V_Rd = alpha_M M_Rk,s / (l_a gamma_Ms), M_Rk,s = 1.2 W_el f_uk
// (1 - N_Ed/N_Rd,s). US: the stress of tension and bending, M = V l_a / alpha_M,
// against F'_nt; across a gap on the elastic section of the stress diameter, under
// washers as printed: a_3 = 0, both ends held, Z = d^3/6.
//
// Source: EN 1992-4:2018 6.2.2.3, 7.2.2.3.2, Table 4.1; AISC Design Guide 1,
// 3rd ed. (2024), Example 4.7-6, AISC 360-22 J3.8.
func (r *Result) bending() {
	in, b := r.in, &r.Bend
	b.Rod = -1
	b.Washers = r.Oversize && in.Holes.WeldedWashers
	if !r.bends() {
		return
	}
	r.arm()
	fu, fy := in.Rod.Steel.Fu, in.Rod.Steel.Fy
	b.GammaN = max(leastGammaN, 1.2*fu/fy)
	b.GammaV = max(leastGammaV, fu/fy)
	if fu > 800 || fy/fu > 0.8 {
		b.GammaV = hardGammaV
	}
	b.M0 = bendShare * b.W * fu
	b.NRd = r.As * fu / b.GammaN
	for i := range in.At {
		f := r.Force(i)
		v := math.Hypot(f.ShearX, f.ShearY)
		var u, vrd, m, stress, available float64
		if in.Design.Basis == basis.Eurocode {
			m = b.M0 * max(0, 1-f.Tension/b.NRd)
			vrd = b.AlphaM * m / (b.Arm * b.GammaV)
			u = use(v, vrd)
		} else {
			stress = f.Tension/r.Ab + v*b.Arm/b.AlphaM/b.W
			available = r.availableTension(v)
			u = use(stress, available)
		}
		if b.Rod < 0 || u > b.use {
			b.Rod, b.use, b.Ft, b.Fv = i, u, f.Tension, v
			b.M, b.VRd, b.Stress, b.Available = m, vrd, stress, available
		}
	}
}

// arm sets lever arm, restraint and section.
func (r *Result) arm() {
	in, b := r.in, &r.Bend
	gap := in.StandOff.Gap > 0
	printed := !gap && in.Design.Basis.US()
	b.AlphaM = 1
	if gap && in.StandOff.PlateHoldsRotation || !gap && in.Holes.HoldsRotation || printed {
		b.AlphaM = 2
	}
	b.Arm = in.StandOff.Gap + in.Plate.Thickness/2
	if b.Washers {
		b.Tw = WasherThickness(in)
		b.Arm = in.StandOff.Gap + in.Plate.Thickness + b.Tw/2
	}
	b.Arm += r.inside()
	b.W = math.Pi * r.Ds * r.Ds * r.Ds / 32
	if printed {
		b.W = r.D * r.D * r.D / 6
		if r.Worn {
			b.W = r.Ds * r.Ds * r.Ds / 6
		}
	}
}

// inside returns how far below the surface the rod is held [mm].
//
// Source: EN 1992-4:2018 6.2.2.3; AISC Design Guide 1, 3rd ed., Example 4.7-6.
func (r *Result) inside() float64 {
	in := r.in
	if in.StandOff.ClampedAtSurface || in.StandOff.Gap == 0 && in.Design.Basis.US() {
		return 0
	}
	return in.Rod.Thread.Diameter / 2
}

// ClauseBend is where the bending of rods by US practice comes from.
const ClauseBend = clauseBendUS

// BendState returns how the rods bend across a gap or under welded washers.
func (r *Result) BendState() limit.State {
	k := standOff
	if r.in.Design.Basis.US() {
		k = standOffUS
	}
	b := &r.Bend
	switch {
	case !r.bends():
		return limit.Skip(k, "the rods bridge no open gap, and no washers alone carry their shear")
	case r.TensionReason != "":
		return limit.Beyond(k, r.TensionReason)
	case r.ShearReason != "":
		return limit.Beyond(k, r.ShearReason)
	case !r.Sheared:
		return limit.Skip(k, noShear)
	case k == standOff:
		return limit.Evaluate(k, b.Fv, b.VRd).Of(b.Rod + 1)
	}
	return limit.Evaluate(k, b.Stress, b.Available).Of(b.Rod + 1)
}
