package pin

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/material"
)

// Section is the timber at the pins: its sizes and its strengths as they may be
// used.
type Section struct {
	Kmod   float64 // Eurocode [-]
	GammaM float64 // of the timber, Eurocode [-]
	GammaC float64 // of connections, Eurocode [-]
	CD     float64 // load duration factor, ASD [-]
	Lambda float64 // time effect factor, LRFD [-]
	CM     float64 // wet service factor of connections, US [-]

	Width    float64 // along the pins, without the slot [mm]
	Side     float64 // on one side of a slot, t_1 [mm]; 0: no slot
	Hole     float64 // of the timber [mm]
	Net      float64 // area at the pins, holes and slot taken off [mm2]
	Gross    float64 // area of the end, slot taken off [mm2]
	He       float64 // loaded edge to the farthest pin, h_e [mm]
	Ft       float64 // tension along the grain [MPa]
	Fc       float64 // compression along the grain [MPa]
	Fv       float64 // shear [MPa]
	Tension  float64 // resistance of the net section [N]
	Bearing  float64 // resistance of the end grain [N]
	Split    float64 // resistance across the grain [N]
	Lv       float64 // net length in shear of the block or plug, both sides [mm]
	TearRow  float64 // resistance of one row to tear-out, US [N]
	Out      int     // rows that shear out together, where it is worst; 0: none pulls
	Pull     float64 // what they pull with [N]
	Lt       float64 // net width between them in tension [mm]
	Block    float64 // their resistance to shearing out along the grain [N]
	Straight bool    // whether the block is as thick as the timber
	Tef      float64 // thickness of the plug otherwise, t_ef [mm]
}

// kmod is EN 1995-1-1:2004 Table 3.1 for solid and glued laminated timber, by
// service class 1 and 2, and 3.
var kmod = [2][Instantaneous + 1]float64{
	{NotStated: 0.60, Permanent: 0.60, LongTerm: 0.70, MediumTerm: 0.80, ShortTerm: 0.90, Instantaneous: 1.10},
	{NotStated: 0.50, Permanent: 0.50, LongTerm: 0.55, MediumTerm: 0.65, ShortTerm: 0.70, Instantaneous: 0.90},
}

const (
	gammaSolid      = 1.30 // EN 1995-1-1:2004 Table 2.3
	gammaLaminated  = 1.25 // EN 1995-1-1:2004 Table 2.3
	gammaConnection = 1.30 // EN 1995-1-1:2004 Table 2.3
	clearanceEC     = 1.0  // mm; hole in timber over bolt, EN 1995-1-1:2004 10.4.3(1)
	clearanceUS     = inch / 16
	permanentCD     = 0.9 // NDS 2018 Table 2.3.2
	permanentLambda = 0.6 // NDS 2018 Table N3
	wetZ            = 0.7 // NDS 2018 Table 11.3.3, dowel-type, dry when made, wet in service (from memory)
)

// strength is a reference design value of NDS and what adjusts it.
type strength struct {
	kf, phi, wet, wetLaminated float64
}

// NDS 2018 Tables N1, N2; wet service factors of the NDS Supplement 2018 Tables
// 4A and 5A (from memory).
var (
	ndsTension     = strength{2.70, 0.80, 1.00, 0.80}
	ndsShear       = strength{2.88, 0.75, 0.97, 0.875}
	ndsCompression = strength{2.40, 0.90, 0.80, 0.73}
	ndsConnection  = strength{3.32, 0.65, wetZ, wetZ}
)

// section sets the sizes and strengths of the timber.
func (r *Result) section() {
	in, t, s := r.in, &r.in.Timber, &r.Timber
	s.Width = t.AlongPin - in.slot()
	if in.Plates.Arrangement == Inside {
		s.Side = s.Width / 2
	}
	s.Hole = in.Pin.Diameter
	if in.Pin.Kind == Bolt {
		s.Hole += clearanceEC
		if !r.ec {
			s.Hole += clearanceUS - clearanceEC
		}
	}
	s.Net = s.Width * max(0, t.AcrossPin-float64(in.Layout.Rows)*s.Hole)
	s.Gross = s.Width * t.AcrossPin
	s.He = in.across() + in.Layout.EdgeDistance
	laminated := t.Kind == material.GluedLaminated
	if r.ec {
		wet := 0
		if t.ServiceClass == 3 {
			wet = 1
		}
		s.Kmod = orElse(t.Kmod, kmod[wet][t.Duration])
		s.GammaC = orElse(in.GammaConnection, gammaConnection)
		s.GammaM = gammaSolid
		if laminated {
			s.GammaM = gammaLaminated
		}
		s.GammaM = orElse(in.Design.EC.GammaMTimber, s.GammaM)
		k := s.Kmod / s.GammaM
		s.Ft, s.Fc, s.Fv = k*t.Tension, k*t.Compression, k*t.Shear
	} else {
		s.CD, s.Lambda, s.CM = orElse(t.LoadDuration, permanentCD), orElse(t.TimeEffect, permanentLambda), 1
		if r.wet() {
			s.CM = wetZ
		}
		s.CM = orElse(t.WetFactor, s.CM)
		s.Ft = t.Tension * r.adjust(&ndsTension)
		s.Fc = t.Compression * r.adjust(&ndsCompression)
		s.Fv = t.Shear * r.adjust(&ndsShear)
	}
	s.Tension, s.Bearing = s.Net*s.Ft, s.Gross*s.Fc
}

// wet reports whether the timber counts as wet in service, US.
func (r *Result) wet() bool { return r.in.Timber.ServiceClass == 0 || r.in.Timber.ServiceClass == 3 }

// moisture returns the wet service factor of a reference design value [-].
func (r *Result) moisture(f *strength) float64 {
	switch {
	case f == &ndsConnection:
		return r.Timber.CM
	case !r.wet():
		return 1
	case r.in.Timber.Kind == material.GluedLaminated:
		return f.wetLaminated
	}
	return f.wet
}

// adjust returns what a reference design value is multiplied by [-].
//
//	ASD: C_D C_M; LRFD: C_M K_F phi lambda
//
// C_t, C_i and C_eg are 1.
//
// Source: NDS 2018 4.3, 5.3, 11.3, Appendix N.
func (r *Result) adjust(f *strength) float64 {
	if r.in.Design.Basis == basis.USLRFD {
		return r.moisture(f) * f.kf * f.phi * r.Timber.Lambda
	}
	return r.moisture(f) * r.Timber.CD
}

func orElse(v, otherwise float64) float64 {
	if v == 0 {
		return otherwise
	}
	return v
}
