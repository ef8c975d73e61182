package pin

import (
	"math"

	"footward.example/footward/internal/material"
)

// Clauses and factors of EN 1995-1-1 in this file are from memory.
const (
	clauseLateralEC = "EN 1995-1-1:2004 8.2.3, 8.5.1, 8.6"
	clauseFace      = "EN 1995-1-1:2004 (8.31) to (8.33)"
	clauseYield     = "EN 1995-1-1:2004 (8.30)"
	clauseRope      = "EN 1995-1-1:2004 8.2.2(2), 8.5.2"
	clauseRowEC     = "EN 1995-1-1:2004 8.1.2(5), (8.34)"
	clauseEffective = "EN 1995-1-1:2004 (8.34), 8.5.1.1(4)"
	clauseLeastEC   = "EN 1995-1-1:2004 Tables 8.4, 8.5"
	clauseSplitEC   = "EN 1995-1-1:2004 8.1.4, 6.1.7"
	clauseBlockEC   = "EN 1995-1-1:2004 Annex A"
	clauseNetEC     = "EN 1995-1-1:2004 6.1.2"
	clauseEndEC     = "EN 1995-1-1:2004 6.1.4"
	clauseDesign    = "EN 1995-1-1:2004 2.4.3"
)

const (
	mostBolt         = 30.0 // mm; EN 1995-1-1:2004 8.5.1.1(2), 8.6(2)
	leastDowel       = 6.0  // mm; EN 1995-1-1:2004 8.6(2)
	tightHole        = 0.1  // clearance over d below which a thick plate holds the pin; 8.2.3(1)
	mostClearance    = 2.0  // mm, or 0.1 d if more; EN 1995-1-1:2004 10.4.3 (clause number from memory)
	ropeBolt         = 0.25 // of the Johansen part; EN 1995-1-1:2004 8.2.2(2)
	underWasher      = 3.0  // over f_c,90,k; EN 1995-1-1:2004 8.5.2(2)
	washerThick      = 12.0 // over t; EN 1995-1-1:2004 8.5.2(3)
	washerWide       = 4.0  // over d; EN 1995-1-1:2004 8.5.2(3)
	washerClearance  = 2.0  // mm; hole of a washer over its bolt (ISO 7094 and the like, from memory)
	threadArea       = 0.72 // stress area over nominal, at most, for coarse threads of M8 and more (ISO 898-1, from memory)
	boltTension      = 0.9  // k_2; EN 1993-1-8:2005 Table 3.4
	onePlastic       = 1.15 // EN 1995-1-1:2004 (8.12), (8.13), (8.11)
	rowExponent      = 0.9  // EN 1995-1-1:2004 (8.34)
	rowSpacing       = 13.0 // over d; EN 1995-1-1:2004 (8.34)
	splitting        = 14.0 // EN 1995-1-1:2004 (8.4), N and mm
	cracked          = 0.67 // k_cr of solid and glued laminated timber, EN 1995-1-1:2004+A1:2008 6.1.7(2) (from memory)
	blockTension     = 1.5  // EN 1995-1-1:2004 (A.1)
	blockShear       = 0.7  // EN 1995-1-1:2004 (A.1)
	farEnd           = 80.0 // mm; EN 1995-1-1:2004 Tables 8.4, 8.5
	dowelEnd         = 40.0 // mm; EN 1995-1-1:2004 Table 8.5 before its amendment A1 (from memory)
	embedmentStiff   = 0.082
	embedmentSlender = 0.01
)

// Mode is a yield mode of EN 1995-1-1, per shear plane.
type Mode struct {
	Name     string  // letter of the formula
	Johansen float64 // without the rope effect [N]
	Total    float64 // with it [N]
	hinges   float64 // 0: the timber alone yields
}

// Eurocode holds the intermediate values of EN 1995-1-1 at the governing pin.
type Eurocode struct {
	Fh0   float64 // embedment along the grain [MPa]
	K90   float64 // [-]
	Fh    float64 // embedment at the angle [MPa]
	Q     float64 // f_h d [N/mm]
	My    float64 // yield moment [Nmm]
	Fax   float64 // axial capacity of the pin [N]
	Bears float64 // its part under the washer or plate [N]
	Pulls float64 // its part of the bolt [N]
	Disc  float64 // diameter that counts as washer [mm]
	Cap   float64 // of the rope effect, over the Johansen part [-]
	// Modes: (8.12) j, k and (8.13) l, m, or (8.11) f, g, h.
	Modes [4]Mode
	Count int
	Thin  float64 // least of the thin plate [N]
	Thick float64 // least of the thick plate [N]
	Share float64 // of the thick plate in between [-]
	FvRk  float64 // of a shear plane [N]
	Nef   float64 // effective number of pins in a row along the grain [-]
	Eff   float64 // effective share of a pin at the angle [-]
	FvRd  float64 // of a pin with both planes, before Eff [N]
	Row   float64 // resistance of a row along the grain [N]
	Along float64 // FvRk of a shear plane along the grain [N]
}

// eurocode sets what does not depend on the angle.
//
//	f_h,0,k = 0.082 (1 - 0.01 d) rho_k, M_y,Rk = 0.3 f_u,k d^2.6
//	k_90 = 1.35 + 0.015 d (softwood), 0.90 + 0.015 d (hardwood)
//	n_ef = min(n, n^0.9 (a_1/(13 d))^(1/4))
//
// Source: EN 1995-1-1:2004 (8.30), (8.32), (8.33), (8.34).
func (r *Result) eurocode() {
	in, e, d := r.in, &r.EC, r.in.Pin.Diameter
	switch {
	case d > mostBolt+rounding:
		r.reason = "pins over 30 mm are beyond EN 1995-1-1 8.5.1.1(2) and 8.6(2)"
	case in.Pin.Kind == Dowel && !(d > leastDowel):
		r.reason = "dowels of 6 mm or less are beyond EN 1995-1-1 8.6(2)"
	case in.Plates.Hole-d > max(mostClearance, tightHole*d)+rounding:
		r.reason = "holes of the plates exceed the pin by more than 2 mm or 0.1 d (EN 1995-1-1 10.4.3)"
	}
	if r.reason != "" {
		return
	}
	e.Fh0 = embedmentStiff * (1 - embedmentSlender*d) * in.Timber.Density
	e.K90 = 1.35 + 0.015*d
	if in.Timber.Kind == material.SolidHardwood {
		e.K90 = 0.90 + 0.015*d
	}
	e.My = 0.3 * in.Pin.Fu * math.Pow(d, 2.6)
	e.Nef = 1
	if n := float64(in.Layout.InRow); n > 1 {
		e.Nef = min(n, math.Pow(n, rowExponent)*math.Pow(in.Layout.SpacingAlong/(rowSpacing*d), 0.25))
	}
	r.rope()
	r.lateralEC(0)
	e.Along = e.FvRk
	e.Row = e.Nef * planes * e.Along * r.Timber.Kmod / r.Timber.GammaC
}

// rope sets the axial capacity of a bolt, which counts where nuts press steel or
// washers on the timber without a gap.
//
//	F_ax,Rk = min(3 f_c,90,k A_washer, 0.9 f_u A_s)
//
// A plate counts as a washer of min(12 t, 4 d).
//
// Source: EN 1995-1-1:2004 8.5.2; EN 1993-1-8:2005 Table 3.4.
func (r *Result) rope() {
	in, e, d := r.in, &r.EC, r.in.Pin.Diameter
	if in.Pin.Kind != Bolt || !in.Pin.Nuts {
		return
	}
	hole := in.Plates.Hole
	switch {
	case in.Plates.Arrangement == Inside:
		e.Disc, hole = in.Pin.Washer, d+washerClearance
	case in.Plates.Gap == 0:
		e.Disc = min(washerThick*r.net(), washerWide*d)
	}
	e.Bears = underWasher * in.Timber.Across * max(0, math.Pi/4*(e.Disc*e.Disc-hole*hole))
	e.Pulls = boltTension * in.Pin.Fu * threadArea * math.Pi / 4 * d * d
	e.Fax = min(e.Bears, e.Pulls)
	e.Cap = ropeBolt
}

// lateralEC returns the design resistance of a pin with both shear planes at an
// angle to the grain [N], reduced for the row along the grain.
//
//	f_h,alpha,k = f_h,0,k/(k_90 sin^2 alpha + cos^2 alpha)
//	plates outside: thin min(j, k), thick min(l, m), linear from 0.5 d to d
//	plate inside: min(f, g, h)
//
// A plate of any thickness whose hole is wider than the pin by 0.1 d or more
// counts as thin: it cannot hold the pin.
//
// Source: EN 1995-1-1:2004 (8.11), (8.12), (8.13), (8.31), 8.5.1.1(4).
func (r *Result) lateralEC(alpha float64) float64 {
	in, e, d := r.in, &r.EC, r.in.Pin.Diameter
	sin, cos := math.Sincos(alpha)
	e.Fh = e.Fh0 / (e.K90*sin*sin + cos*cos)
	e.Q = e.Fh * d
	if in.Plates.Arrangement == Inside {
		t1 := r.Timber.Side
		e.Modes = [4]Mode{
			{Name: "f", Johansen: e.Q * t1},
			{Name: "g", Johansen: tilted(e.Q, t1, in.Plates.Gap, e.My), hinges: 1},
			{Name: "h", Johansen: onePlastic * hinged(e.Q, in.Plates.Gap, 2*e.My), hinges: 2},
		}
		e.Count = 3
	} else {
		half := e.Q * in.Timber.AlongPin / 2
		e.Modes = [4]Mode{
			{Name: "j", Johansen: half},
			{Name: "k", Johansen: onePlastic * hinged(e.Q, in.Plates.Gap, e.My), hinges: 1},
			{Name: "l", Johansen: half},
			{Name: "m", Johansen: onePlastic * hinged(e.Q, in.Plates.Gap, 2*e.My), hinges: 2},
		}
		e.Count = 4
	}
	for i := range e.Modes[:e.Count] {
		m := &e.Modes[i]
		m.Total = m.Johansen
		if m.hinges > 0 {
			m.Total += min(e.Fax/4, e.Cap*m.Johansen)
		}
	}
	m := &e.Modes
	if in.Plates.Arrangement == Inside {
		e.FvRk = min(m[0].Total, min(m[1].Total, m[2].Total))
	} else {
		e.Thin, e.Thick = min(m[0].Total, m[1].Total), min(m[2].Total, m[3].Total)
		e.Share = min(1, max(0, r.net()/(0.5*d)-1))
		if in.loose() {
			e.Share = 0
		}
		e.FvRk = e.Thin + e.Share*(e.Thick-e.Thin)
	}
	e.FvRd = planes * e.FvRk * r.Timber.Kmod / r.Timber.GammaC
	alone := e.Nef / float64(in.Layout.InRow)
	e.Eff = alone + (1-alone)*alpha/(math.Pi/2)
	return e.Eff * e.FvRd
}

// loose reports whether the holes of the plates are too wide to hold the pin.
func (in *Input) loose() bool {
	return in.Plates.Hole-in.Pin.Diameter >= tightHole*in.Pin.Diameter-rounding
}

// hinged returns the force at which pins yield beside timber that carries q per
// length [N]: moment = P c + P^2/(2 q).
func hinged(q, gap, moment float64) float64 {
	return 2 * moment / (math.Sqrt(gap*gap+2*moment/q) + gap)
}

// tilted returns the force at which a pin yields at a plate while timber of
// thickness t turns on it [N]: moment = P c + P^2/(4 q) + P t/2 - q t^2/4.
func tilted(q, t, gap, moment float64) float64 {
	b, k := t/2+gap, q*t*t/4+moment
	return 2 * k / (b + math.Sqrt(b*b+k/q))
}

// leastEC sets the least distances, each for the worst angle of any pin.
//
//	bolts:  a_1 (4 + |cos|) d, a_2 4 d, a_3,t max(7 d, 80), a_3,c max((1 + 6 sin) d, 4 d)
//	dowels: a_1 (3 + 2 |cos|) d, a_2 3 d, a_3,t max(7 d, 80), a_3,c max(a_3,t sin, 3.5 d, 40)
//	both:   a_4,t max((2 + 2 sin) d, 3 d), a_4,c 3 d
//
// For the unloaded end of dowels the stricter of the editions is taken.
//
// Source: EN 1995-1-1:2004 Tables 8.4, 8.5 (from memory).
func (r *Result) leastEC() {
	d, sin, cos := r.in.Pin.Diameter, r.MaxSin, r.MaxCos
	if !r.Loaded {
		cos = 1
	}
	a1, a2 := (4+cos)*d, 4*d
	end := max(7*d, farEnd)
	free := max((1+6*sin)*d, 4*d)
	if r.in.Pin.Kind == Dowel {
		a1, a2 = (3+2*cos)*d, 3*d
		free = max(end*sin, max(3.5*d, dowelEnd))
	}
	a3 := free
	if r.Toward {
		a3 = max(end, free)
	}
	r.distances(a1, a2, a3, max((2+2*sin)*d, 3*d))
}

// splittingEC sets the resistance to splitting across the grain, no greater than
// what the section bears in shear: towards the far edge (8.4) grows without limit.
//
//	F_90,Rk = 14 b w sqrt(h_e/(1 - h_e/h)), w = 1
//	V_Rd = 2/3 k_cr b h f_v,d, k_cr = 0.67
//
// Source: EN 1995-1-1:2004 (8.4), (8.5); (6.13), (6.13a) as amended in 2008 (from
// memory).
func (r *Result) splittingEC() {
	s := &r.Timber
	k := splitting * s.Width * math.Sqrt(s.He/(1-s.He/r.in.Timber.AcrossPin))
	s.Split = min(k*s.Kmod/s.GammaC, r.shearEC())
}

// shearEC returns what the whole section bears in shear across the grain [N].
func (r *Result) shearEC() float64 {
	return 2.0 / 3 * cracked * r.Timber.Gross * r.Timber.Fv
}
