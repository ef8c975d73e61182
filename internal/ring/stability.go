package ring

import (
	"math"

	"footward.example/footward/internal/basis"
)

// bearing sets what the fill under the shoe would bear without rings.
func (r *Result) bearing() {
	top := &r.Tiers[0].Top
	if r.NoStress == "" && !top.Lost {
		tan := 0.0
		if r.Shear > 0 {
			tan = r.Shear / r.Press // which is positive where there are stresses
		}
		r.Surface = SurfaceBearing(r.in.Tiers[0].Fill.UnitWeight, top.Diameter-2*top.E, r.Tiers[0].Phi, tan)
		if r.in.Design.Basis == basis.USASD {
			r.Surface /= r.Safety.Fill
		} else if r.in.Design.Basis == basis.USLRFD {
			r.Surface *= or(r.Safety.PhiB, 1)
		}
	}
}

// stability sets sliding and overturning.
//
//	EN: N tan(delta)/gamma_phi, ASD: over 1.5, LRFD: times phi
//
// The angle between tiers is the lesser of both fills, two thirds of that of the
// fill against shoe and bottom (from memory: common for steel and for smooth
// concrete). Where friction under the plate is counted by another coefficient too, the
// lesser of both counts: it is one interface.
//
// Source: EN 1997-1:2004 6.5.3; statics.
func (r *Result) stability() {
	in, weight := r.in, 0.0
	factor := r.slideFactor()
	n := len(in.Tiers)
	for i := range n + 1 {
		var s Slide
		switch {
		case i == 0:
			s.Angle = 2.0 / 3.0 * in.Tiers[0].Fill.Phi
		case i == n:
			s.Angle = 2.0 / 3.0 * in.Tiers[n-1].Fill.Phi
		default:
			s.Angle = min(in.Tiers[i-1].Fill.Phi, in.Tiers[i].Fill.Phi)
		}
		if i > 0 {
			t := &in.Tiers[i-1]
			weight += t.Fill.UnitWeight * math.Pi / 4 * t.Diameter * t.Diameter * t.Height
		}
		s.Force = r.Safety.Favourable*weight - in.Actions.N
		if i < n {
			s.Force += in.Clamp
		}
		s.Force = max(0, s.Force)
		s.Holds = s.Force * math.Tan(s.Angle) * factor
		if i == 0 {
			if in.Shoe.Rubs > 0 {
				s.Holds = min(s.Holds, s.Force*in.Shoe.Rubs)
			}
			s.Holds += in.Key
		}
		r.Slides = append(r.Slides, s)
	}
	arm := in.Tiers[n-1].Diameter / 2
	r.Turn = Turn{
		Demand: max(0, in.Actions.N)*arm + momentAt(&in.Actions, r.Height),
		Holds:  (r.Press + r.Safety.Favourable*r.Weight) * arm,
	}
	if in.Design.Basis == basis.USASD {
		r.Turn.Holds /= r.Safety.Stability
	}
}

// Rubs returns the share of a force on the top of the stack that rubs against sliding
// of the shoe [-].
//
// Source: as the sliding of the shoe in Check.
func (r *Result) Rubs() float64 { return math.Tan(r.Slides[0].Angle) * r.slideFactor() }

// slideFactor returns what is left of friction in a check of sliding [-].
func (r *Result) slideFactor() float64 {
	switch r.in.Design.Basis {
	case basis.Eurocode:
		return 1 / r.Safety.GammaPhi
	case basis.USASD:
		return 1 / r.Safety.Stability
	case basis.USLRFD:
		return or(r.Safety.PhiSliding, 1)
	}
	return 1
}
