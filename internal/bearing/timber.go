package bearing

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/material"
)

const (
	clauseAlongEC  = "EN 1995-1-1:2004 6.1.4(1)"
	clauseAcrossEC = "EN 1995-1-1:2004+A1:2008 6.1.5(1)"
	clauseAlongUS  = "NDS 2018 3.10.1"
	clauseAcrossUS = "NDS 2018 3.10.2, 3.10.4"
)

// TimberStrength is the strength of timber under a loaded rectangle.
type TimberStrength struct {
	// Eurocode.
	Kmod   float64 // modification factor [-]
	GammaM float64 // partial factor [-]
	F      float64 // design strength along or across the grain [MPa]
	Kc90   float64 // factor across the grain [-]
	// US.
	CD, Lambda float64 // load duration factor (ASD), time effect factor (LRFD) [-]
	CM         float64 // wet service factor [-]
	Cb         float64 // bearing area factor [-]
	KF, Phi    float64 // format conversion and resistance factor (LRFD) [-]
	// Both.
	Length   float64 // contact length along the grain [mm]
	Width    float64 // contact width across the grain [mm]
	Extra    float64 // added to the contact length at each end [mm]
	Area     float64 // area that counts [mm2]
	contact  float64 // contact area [mm2]
	Capacity float64 // resistance of the contact [N]
}

// Pressure returns the resistance over the contact area [MPa].
//
// Source: EN 1995-1-1:2004 6.1.4, 6.1.5; NDS 2018 3.10.
func (t *TimberStrength) Pressure() float64 { return t.Capacity / t.contact }

func timberClause(in *Input) string {
	along := in.Timber.Direction == AlongGrain
	switch {
	case in.Design.Basis.US() && along:
		return clauseAlongUS
	case in.Design.Basis.US():
		return clauseAcrossUS
	case along:
		return clauseAlongEC
	}
	return clauseAcrossEC
}

func timberStrength(in *Input, x, y float64) TimberStrength {
	t := TimberStrength{Length: x, Width: y, contact: x * y}
	if in.Timber.GrainAlongY {
		t.Length, t.Width = y, x
	}
	t.Area = t.contact
	if in.Design.Basis.US() {
		t.us(in)
	} else {
		t.eurocode(in)
	}
	t.Capacity = t.Area * t.F
	return t
}

// kmod is EN 1995-1-1:2004 Table 3.1 for solid and glued laminated timber, by
// service class 1 and 2, and 3.
var kmod = [2][Instantaneous + 1]float64{
	{NotStated: 0.60, Permanent: 0.60, LongTerm: 0.70, MediumTerm: 0.80, ShortTerm: 0.90, Instantaneous: 1.10},
	{NotStated: 0.50, Permanent: 0.50, LongTerm: 0.55, MediumTerm: 0.65, ShortTerm: 0.70, Instantaneous: 0.90},
}

const (
	gammaSolid     = 1.30  // EN 1995-1-1:2004 Table 2.3
	gammaLaminated = 1.25  // EN 1995-1-1:2004 Table 2.3
	mostExtra      = 30.0  // mm; EN 1995-1-1:2004+A1:2008 6.1.5(1)
	longContact    = 400.0 // mm; EN 1995-1-1:2004+A1:2008 6.1.5(4)
)

// eurocode computes the design strength.
//
//	along:  k_mod f_c,0,k / gamma_M
//	across: k_c,90 k_mod f_c,90,k / gamma_M on the effective area, the contact
//	        lengthened at each end by min(30 mm, a, l, l_1/2)
//
// Source: EN 1995-1-1:2004+A1:2008 2.4.1, 6.1.4, 6.1.5.
func (t *TimberStrength) eurocode(in *Input) {
	b := &in.Timber
	wet := 0
	if b.ServiceClass == 3 {
		wet = 1
	}
	t.Kmod = kmod[wet][b.Duration]
	t.GammaM = in.Design.EC.GammaMTimber
	if t.GammaM == 0 {
		t.GammaM = gammaSolid
		if b.Timber.Kind == material.GluedLaminated {
			t.GammaM = gammaLaminated
		}
	}
	if b.Direction == AlongGrain {
		t.F = t.Kmod * b.Timber.Along / t.GammaM
		return
	}
	t.Extra = min(mostExtra, min(b.EndDistance, t.Length))
	if b.HasNeighbour {
		t.Extra = min(t.Extra, b.ClearSpacing/2)
	}
	t.Area = t.Width * (t.Length + 2*t.Extra)
	t.Kc90 = kc90(b, t.Length)
	t.F = t.Kc90 * t.Kmod * b.Timber.Across / t.GammaM
}

// kc90 returns the factor of 6.1.5(2) to (4) [-]; 1 wherever its conditions are
// not known to hold.
func kc90(b *TimberBearing, length float64) float64 {
	apart := !b.HasNeighbour || (b.Depth > 0 && b.ClearSpacing >= 2*b.Depth)
	solid := b.Timber.Kind == material.SolidSoftwood
	laminated := b.Timber.Kind == material.GluedLaminated
	switch {
	case !apart:
		return 1
	case b.Support == Continuous && solid:
		return 1.25
	case b.Support == Continuous && laminated:
		return 1.5
	case b.Support == Discrete && solid:
		return 1.5
	case b.Support == Discrete && laminated && length <= longContact:
		return 1.75
	}
	return 1
}

const (
	permanentCD     = 0.9          // NDS 2018 Table 2.3.2
	permanentLambda = 0.6          // NDS 2018 Table N3
	phiCompression  = 0.90         // NDS 2018 Table N2
	kfAlong         = 2.40         // NDS 2018 Table N1
	kfAcross        = 1.67         // NDS 2018 Table N1
	shortBearing    = 6 * 25.4     // mm; NDS 2018 3.10.4
	endBearing      = 3 * 25.4     // mm; NDS 2018 3.10.4
	bearingExtra    = 0.375 * 25.4 // mm; NDS 2018 3.10.4
	rounding        = 1e-6         // mm; a contact of 6 in converted from inches is no shorter
)

// us computes the adjusted design value.
//
//	along:  F_c C_M C_D (ASD), F_c C_M K_F phi lambda (LRFD)
//	across: F_c-perp C_M C_b (ASD), F_c-perp C_M C_b K_F phi (LRFD)
//
// C_b = (l_b + 3/8 in)/l_b for contacts shorter than 6 in that stand at least
// 3 in from the end. C_t and C_i are 1.
//
// Source: NDS 2018 3.10, 4.3, 5.3, Appendix N; wet service factors of the NDS
// Supplement 2018 Tables 4A and 5A (from memory).
func (t *TimberStrength) us(in *Input) {
	b := &in.Timber
	wet := b.ServiceClass == 3 || b.ServiceClass == 0
	laminated := b.Timber.Kind == material.GluedLaminated
	lrfd := in.Design.Basis == basis.USLRFD
	t.CM, t.KF, t.Phi = 1, 1, 1
	if lrfd {
		t.Phi = phiCompression
	}
	if b.Direction == AlongGrain {
		if wet {
			t.CM = 0.8
			if laminated {
				t.CM = 0.73
			}
		}
		t.F = b.Timber.Along * t.CM
		if lrfd {
			t.KF, t.Lambda = kfAlong, orElse(b.TimeEffect, permanentLambda)
			t.F *= t.KF * t.Phi * t.Lambda
			return
		}
		t.CD = orElse(b.LoadDuration, permanentCD)
		t.F *= t.CD
		return
	}
	if wet {
		t.CM = 0.67
		if laminated {
			t.CM = 0.53
		}
	}
	t.Cb = 1
	if t.Length < shortBearing-rounding && b.EndDistance >= endBearing {
		t.Cb = (t.Length + bearingExtra) / t.Length
	}
	if lrfd {
		t.KF = kfAcross
	}
	t.F = b.Timber.Across * t.CM * t.Cb * t.KF * t.Phi
}

func orElse(v, otherwise float64) float64 {
	if v == 0 {
		return otherwise
	}
	return v
}
