package ground

import "math"

// RimOfCircle returns the length of the edge of the part of a circle that bears
// about a resultant [mm]: two arcs, or the rectangle that stands for them where that
// has less.
//
//	u = min(4 R acos(e/R), 2 (B' + L'))
//
// Source: geometry.
func RimOfCircle(radius, e float64, a Effective) float64 {
	return min(4*radius*math.Acos(min(1, e/radius)), 2*(a.Width+a.Length))
}

// LayerSlant returns what an inclined load leaves of the shear of a granular layer
// [-].
//
//	i_s = (1 - theta/phi)^2, theta = atan(H/V), 0 from theta = phi on
//
// It is 1 under a load straight down. Meyerhof and Hanna print charts, which fall
// more slowly.
//
// Source: by analogy with i_gamma of Meyerhof, Bowles, 5th ed., Table 4-3 (from
// memory); on the safe side of the charts as remembered.
func LayerSlant(v, h, phi float64) float64 {
	theta := math.Atan2(h, v)
	if !(theta < phi) {
		return 0
	}
	return (1 - theta/phi) * (1 - theta/phi)
}

// punch takes punching through the layer into account. Beside the base only the
// pressure that is there counts.
//
// Source: LayeredPressure; EN 1997-1:2004 D.3 for the inclination on the clay.
func (r *Result) punch(s *set, l Load, demand float64) {
	in := r.in
	if in.Layer.Thickness == 0 {
		return
	}
	p := &Punch{
		Load: l, Effective: in.effective(l), Demand: max(0, demand), Clay: in.Layer.Clay / s.cu, I: 1,
		Friction: math.Atan(math.Tan(in.Soil.Friction) / s.phi), set: s,
	}
	switch {
	case p.Area == 0:
		p.Reason = noContact
	case l.H > p.Area*p.Clay:
		p.Reason = "the force along the base is more than the clay holds"
	default:
		ratio := p.Width / p.Length
		p.Rim = 2 * (p.Width + p.Length)
		if in.Shape == Circle {
			p.Rim = RimOfCircle(in.Diameter/2, l.E, p.Effective)
		}
		p.Breadth = 2 * p.Area * (1 + ratio) / p.Rim
		p.I = 0.5 * (1 + math.Sqrt(1-l.H/(p.Area*p.Clay)))
		p.Slant = LayerSlant(l.V, l.H, p.Friction)
		p.Pressure = LayeredPressure(p.Clay*p.I, r.Weight, in.Layer.Thickness, r.Overburden/r.Weight, in.Layer.Punching*p.Slant,
			p.Friction, p.Breadth, ratio)
		p.Resistance = p.Pressure * p.Area / s.rv
	}
	was := r.Punch
	if was == nil || was.Resistance > 0 && (p.Resistance == 0 || p.Demand*was.Resistance > was.Demand*p.Resistance) {
		r.Punch = p
	}
}
