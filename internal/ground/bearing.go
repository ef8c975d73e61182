package ground

import "math"

const noContact = "there is no balance: the resultant is outside the base or lifts it"

// bear returns the bearing resistance.
//
//	drained: q_ult = c N_c s_c d_c i_c + q N_q s_q d_q i_q + 0.5 gamma B' N_gamma s_gamma d_gamma i_gamma
//	undrained: q_ult = c_u N_c s_c d_c i_c + q s_q d_q i_q
//
// Source: EN 1997-1:2004 D.3, D.4; Bowles, 5th ed., Table 4-1 (from memory).
func (r *Result) bear(s *set, l Load, demand float64, drained bool) *Bearing {
	in := r.in
	b := &Bearing{
		Load: l, Effective: in.effective(l), Author: Annex, Drained: drained, Demand: max(0, demand),
		Overburden: r.Beside, Weight: r.Weight, Strength: in.Soil.Undrained / s.cu, set: s,
	}
	share := 1.0
	if in.Design.Basis.US() {
		b.Author, share = in.Author, in.Interface.Share
	}
	if drained {
		b.Overburden = r.Overburden
		b.Friction, b.Strength = math.Atan(math.Tan(in.Soil.Friction)/s.phi), in.Soil.Cohesion/s.c
	}
	if b.Area == 0 {
		b.Reason = noContact
		return b
	}
	ratio := b.Width / b.Length
	b.Grip = share * b.Strength
	b.M = in.exponent(l, ratio)
	b.N = BearingFactors(b.Author, b.Friction)
	b.S = ShapeFactors(b.Author, b.Friction, ratio, in.Shape == Circle)
	if l.H > 0 && (b.Author == Hansen || b.Author == Vesic) {
		b.S = Three{min(1, b.S.C), min(1, b.S.Q), min(1, b.S.Gamma)}
	}
	b.D = DepthFactors(b.Author, b.Friction, in.Depth, in.width())
	if b.Author == Terzaghi {
		b.I = Three{1, 1, 1} // an inclined load is out of scope
	} else {
		var holds bool
		b.I, holds = InclinationFactors(Inclined{l.V, l.H, b.Area, b.Grip, b.M, b.Author}, b.Friction)
		if !holds {
			b.Reason = "the force along the base is more than the ground under it holds"
			return b
		}
	}
	b.Breadth = b.Width
	if b.Author == Terzaghi && in.Shape == Circle {
		b.Breadth *= 2 / math.SqrtPi // his circle counts by its diameter
	}
	b.Pressure = b.Strength*b.N.C*b.together() + b.Overburden*b.N.Q*b.S.Q*b.D.Q*b.I.Q +
		0.5*b.Weight*b.Breadth*b.N.Gamma*b.S.Gamma*b.D.Gamma*b.I.Gamma
	if !(b.Pressure > 0) {
		b.Pressure, b.Reason = 0, "no bearing resistance is left under the inclined force"
		return b
	}
	b.Resistance = b.Pressure * b.Area / s.rv
	return b
}

// together returns the shape, depth and inclination factors of cohesion. Hansen
// and Vesic add them for undrained clay; of the sum and the product the lesser
// is taken.
func (b *Bearing) together() float64 {
	product := b.S.C * b.D.C * b.I.C
	if b.added() {
		return min(product, b.S.C+b.D.C+b.I.C-2)
	}
	return product
}

func (b *Bearing) added() bool { return !b.Drained && (b.Author == Hansen || b.Author == Vesic) }

// exponent returns m; for a circle, whose sides have no direction of their own,
// the greater, across.
//
//	m_B = (2 + r)/(1 + r), m_L = (2 + 1/r)/(1 + 1/r), m = m_L cos^2 theta + m_B sin^2 theta
//
// theta is the angle of H from L'.
//
// Source: EN 1997-1:2004 D.4; Vesic 1975 (from memory).
func (in *Input) exponent(l Load, ratio float64) float64 {
	mb, ml := (2+ratio)/(1+ratio), (2*ratio+1)/(ratio+1)
	if in.Shape == Circle || l.H == 0 {
		return mb
	}
	along := l.Hx / l.H
	if in.SizeX-2*l.Ex < in.SizeY-2*l.Ey {
		along = l.Hy / l.H
	}
	return ml*along*along + mb*(1-along*along)
}
