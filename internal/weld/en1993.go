package weld

import "math"

const (
	clauseThroat      = "EN 1993-1-8:2005 4.5.2(2)"
	clauseEffective   = "EN 1993-1-8:2005 4.5.1(1)"
	clauseLength      = "EN 1993-1-8:2005 4.5.1(2)"
	clauseDirectional = "EN 1993-1-8:2005 4.5.3.2"
	clauseSimplified  = "EN 1993-1-8:2005 4.5.3.3"
	clauseButt        = "EN 1993-1-8:2005 4.7.1"
	clauseLap         = "EN 1993-1-8:2005 4.11(2)"
	clauseWeaker      = "EN 1993-1-8:2005 4.5.3.2(6)"
)

const (
	leastThroat   = 3.0   // mm; EN 1993-1-8:2005 4.5.2(2)
	leastLength   = 30.0  // mm; EN 1993-1-8:2005 4.5.1(2)
	leastThroats  = 6.0   // throats; EN 1993-1-8:2005 4.5.1(2)
	normalShare   = 0.9   // EN 1993-1-8:2005 (4.1)
	longLap       = 150.0 // throats; EN 1993-1-8:2005 4.11(1), (2)
	lapStart      = 1.2   // EN 1993-1-8:2005 (4.9)
	lapFall       = 0.2   // EN 1993-1-8:2005 (4.9)
	thinnestPart  = 4.0   // mm; EN 1993-1-8:2005 4.1(1)
	greatestYield = 460.0 // MPa; EN 1993-1-8:2005 1.1(1), Table 4.1
)

// Eurocode holds the intermediate values of EN 1993-1-8.
type Eurocode struct {
	FuBeta float64 // least f_u/beta_w of the parts [MPa]
	Fu     float64 // least f_u of the parts [MPa]
	Fy     float64 // least f_y of the parts [MPa]
	BetaLw float64 // reduction of long laps [-]
	SRd    float64 // directional resistance, f_u/(beta_w gamma_M2) with beta_Lw [MPa]
	NRd    float64 // normal stress resistance, 0.9 f_u/gamma_M2 with beta_Lw [MPa]
	FwRd   float64 // simplified resistance per length [N/mm]

	Directional Stress
	Perp        Stress
	Simplified  Stress
	Full        Stress
	FullRd      float64 // f_y/gamma_M0 of the weaker part [MPa]
	Beside      Beside  // the part beside the weld that is used most
}

// Stress is the flow that governs a criterion, and what it gives.
type Stress struct {
	Spot  Spot
	Flow  Flow
	SPerp float64 // normal stress on the throat [MPa]
	TPerp float64 // shear stress across the axis [MPa]
	TPar  float64 // shear stress along the axis [MPa]
	Value float64 // criterion [MPa, simplified N/mm]
	Plane bool    // the throat lies along one of the forces, not at 45 degrees
}

// eurocode computes the stresses on the throat and the resistances.
//
//	sqrt(s_perp^2 + 3 (t_perp^2 + t_par^2)) <= f_u / (beta_w gamma_M2)
//	s_perp <= 0.9 f_u / gamma_M2
//	F_w,Ed <= f_u a / (sqrt(3) beta_w gamma_M2)   (simplified)
//
// f_u is that of the weaker part; where the parts differ, the least f_u and the
// least f_u/beta_w count. Laps loaded from their end and longer than 150 a carry
// beta_Lw = 1.2 - 0.2 L_j/(150 a) of it. A full-penetration weld is as strong as
// the weaker part, on the thickness that corrosion leaves.
//
// Source: EN 1993-1-8:2005 4.5.3.2, 4.5.3.3, 4.11, 4.7.1.
func (r *Result) eurocode() {
	in, e := r.in, &r.EC
	e.Fu, e.FuBeta, e.Fy = math.MaxFloat64, math.MaxFloat64, math.MaxFloat64
	for i := range in.Weld.Parts {
		p := &in.Weld.Parts[i]
		fy, fu := p.strengths()
		e.Fy, e.Fu = min(e.Fy, fy), min(e.Fu, fu)
		e.FuBeta = min(e.FuBeta, fu/p.Steel.Correlation())
	}
	e.FullRd = e.Fy / in.Design.EC.GammaM0
	g := in.Design.EC.GammaM2
	e.BetaLw = 1
	if r.lapped() {
		e.BetaLw = min(1, max(0, lapStart-lapFall*r.lap()/(longLap*r.A)))
	}
	e.SRd = e.BetaLw * e.FuBeta / g
	e.NRd = e.BetaLw * normalShare * e.Fu / g
	e.FwRd = e.SRd * r.A / math.Sqrt(3)
	r.flows(func(at Spot, f Flow) {
		if in.Weld.Type == CompletePenetration {
			s := Stress{Spot: at, Flow: f, SPerp: f.Normal / r.A, TPerp: f.Across / r.A, TPar: f.Along / r.A}
			s.Value = s.equivalent()
			keep(&e.Full, s)
			return
		}
		keep(&e.Directional, r.directional(at, f))
		keep(&e.Perp, r.perpendicular(at, f))
		keep(&e.Simplified, Stress{Spot: at, Flow: f, Value: f.size()})
	})
}

func keep(worst *Stress, s Stress) {
	if s.Value > worst.Value {
		*worst = s
	}
}

func (s *Stress) equivalent() float64 {
	return math.Sqrt(s.SPerp*s.SPerp + 3*(s.TPerp*s.TPerp+s.TPar*s.TPar))
}

// directional returns the stresses with the greatest equivalent stress. On a
// throat at 45 degrees the forces across the axis add up in one stress and
// cancel in the other: in the shear, which counts three times, is the worse. A
// groove weld's throat may also lie along either force.
func (r *Result) directional(at Spot, f Flow) Stress {
	s := Stress{Spot: at, Flow: f, TPar: f.Along / r.A}
	s.SPerp = math.Abs(f.Normal-f.Across) / math.Sqrt2 / r.A
	s.TPerp = (f.Normal + f.Across) / math.Sqrt2 / r.A
	s.Value = s.equivalent()
	if r.in.Weld.Type == PartialPenetration {
		turned := s
		turned.SPerp, turned.TPerp = min(f.Normal, f.Across)/r.A, max(f.Normal, f.Across)/r.A
		if turned.Value = turned.equivalent(); turned.Value > s.Value {
			turned.Plane = true
			return turned
		}
	}
	return s
}

// perpendicular returns the stresses with the greatest normal stress.
func (r *Result) perpendicular(at Spot, f Flow) Stress {
	s := Stress{Spot: at, Flow: f, TPar: f.Along / r.A}
	s.SPerp = (f.Normal + f.Across) / math.Sqrt2 / r.A
	if r.in.Weld.Type == PartialPenetration {
		s.SPerp = max(s.SPerp, f.Normal/r.A, f.Across/r.A)
	}
	s.Value = s.SPerp
	return s
}

// beyondEC says why EN 1993-1-8 does not cover the weld; empty: it does.
func (r *Result) beyondEC() string {
	w := &r.in.Weld
	for i := range w.Parts {
		if fy, _ := w.Parts[i].strengths(); fy > greatestYield {
			return "steel with f_y above 460 MPa is beyond EN 1993-1-8 Table 4.1"
		}
	}
	f := w.Filler.Strength
	switch {
	case r.Thin < thinnestPart:
		return "parts thinner than 4 mm are beyond EN 1993-1-8 4.1(1) (hollow sections from 2.5 mm: see its section 7)"
	case f > 0 && f < r.EC.Fu:
		return "a filler weaker than the weaker part is beyond EN 1993-1-8 4.2(2)"
	case !r.elastic():
		return "the instantaneous centre is a method of US practice"
	}
	return r.Reason
}
