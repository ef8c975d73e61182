package ring

import (
	"math"

	"footward.example/footward/internal/basis"
)

// strength sets what ring and fill of a tier resist.
//
//	EN: phi_d, c_d by gamma_phi, T_Rd = T_k k_d k_j/gamma_M, sigma_Rd by T_Rd
//	US: phi, c as they are; sigma_R by T_k k_d k_j, over FS or times phi_b
//
// Source: EN 1997-1:2004 Annex A (gamma_phi); allowable-stress practice (FS 3);
// Mohr and Coulomb.
func (r *Result) strength(i int) {
	in, t, out := r.in, &r.in.Tiers[i], &r.Tiers[i]
	out.Phi, out.C, out.K0 = t.Fill.Phi, t.Fill.Cohesion, AtRest(t.Fill.Phi)
	if in.Design.Basis == basis.Eurocode {
		out.Phi, out.C = math.Atan(math.Tan(out.Phi)/r.Safety.GammaPhi), out.C/r.Safety.GammaPhi
	}
	out.Kp, out.Ka = Passive(out.Phi), Active(out.Phi)
	ring := &t.Ring
	out.Durability, out.Joint = or(ring.Durability, durability[ring.Kind]), or(ring.Joint, joints[ring.Kind])
	out.Left = 1
	if in.Exposed && ring.Wall > 0 {
		out.Left = ring.left(in.Face)
		out.Durability = min(out.Durability, out.Left)
	}
	out.Stiffness = ring.Stiffness * out.Left
	factor, forFill := 1.0, 1.0
	switch in.Design.Basis {
	case basis.Eurocode:
		out.Partial = or(ring.Partial, partials[ring.Kind])
		forFill = out.Partial
	case basis.USLRFD:
		factor = or(r.Safety.PhiB, 1)
		out.Partial = or(ring.Partial, max(partials[ring.Kind], 1/factor))
	case basis.USASD:
		factor = 1 / r.Safety.Fill
		out.Partial = or(ring.Partial, r.Safety.Fill)
	}
	shares := out.Durability * out.Joint
	if r.stretches(i) {
		out.Stretch = Hoop(Membrane(ring.Stiffness*shares, t.Diameter, or(ring.Strain, strainByDefault)), t.Diameter, t.Height)
	}
	if ring.Capacity == 0 {
		return
	}
	out.Reduced = ring.Capacity * shares
	holds := out.Reduced
	if out.Stretch > 0 {
		holds = min(holds, out.Stretch)
	}
	out.Rd = holds / out.Partial
	out.Confinement = Confinement(holds/forFill, t.Diameter, t.Height)
	out.Apparent = ApparentCohesion(out.Confinement, out.Phi)
	out.Strength = factor * Strength(out.Confinement, out.Phi, out.C)
	out.ByCohesion = factor * Strength(0, out.Phi, out.C+out.Apparent)
}

// stretches reports whether the stiffness of a ring limits what it confines.
func (r *Result) stretches(i int) bool {
	ring := &r.in.Tiers[i].Ring
	return ring.Stiffness > 0 && (ring.Kind.extensible() || ring.Strain > 0)
}

// left returns the share of a steel ring that the loss of every face leaves: of its
// wall, of the bolts in its joint by their area, of what else is in the joint [-].
func (r *Ring) left(face float64) float64 {
	return min(corroded(r.Wall, face, false), corroded(r.Bolt, face, true), corroded(r.Lug, face, false))
}

// corroded returns the share that is left of a thickness, or of the area of something
// round.
func corroded(thick, face float64, round bool) float64 {
	share := 1.0
	if thick > 0 {
		share = max(0, 1-2*face/thick)
	}
	if round {
		return share * share
	}
	return share
}

// Movement of a wall over its height up to which the fill is at rest, and from which
// it is active, dense fill pushing a wall without turning it: EN 1997-1:2004 9.5.2(2),
// Annex C Table C.1 (from memory).
const (
	restUpTo   = 5e-4
	activeFrom = 1e-3
)

// earth returns the coefficient of the pressure [-] that is left in the fill when its
// ring has stretched as far as the design hoop force stretches it, as built, or as far as
// it stood in a test. A stiff ring of unknown stiffness does not move; an extensible one
// does, but is not verified.
//
//	u = max(T_Rd/(M h), e_t) D/2, K = K_0 - (K_0 - K_a) (u/h - 0.0005)/0.0005, from K_0 to K_a
func (out *TierResult) earth(t *Tier) float64 {
	strain := t.Ring.Yields
	if t.Ring.Stiffness > 0 {
		strain = max(strain, out.Rd/(t.Ring.Stiffness*t.Height))
	} else if t.Ring.Kind.extensible() {
		return out.Ka
	}
	out.Moves = strain * t.Diameter / 2
	share := (out.Moves/t.Height - restUpTo) / (activeFrom - restUpTo)
	return max(out.Ka, out.K0-(out.K0-out.Ka)*min(1, max(0, share)))
}

// hoops sets the hoop forces that a tier asks for.
//
//	T = (K sigma_v + sigma_comp) D h/2 with the greatest edge stress of the tier
//	T = sigma_3 D h/2 with sigma_3 = (sigma_v - 2 c sqrt(K_p))/K_p
//
// Source: Rankine; Jaky 1944; EN 1997-1:2004 9.5.2; statics of a thin cylinder.
func (r *Result) hoops(i int) {
	t, out := &r.in.Tiers[i], &r.Tiers[i]
	out.Even = max(out.Top.Even, out.Bottom.Even, out.Within.Even)
	out.Edge = max(out.Top.Edge, out.Bottom.Edge, out.Within.Edge)
	out.Service = max(out.ServiceTop.Edge, out.ServiceBottom.Edge, out.ServiceWithin.Edge)
	out.Needed = Needed(out.Edge, out.Phi, out.C)
	out.ByNeed = Hoop(out.Needed, t.Diameter, t.Height)
	out.K = out.earth(t)
	out.ByEarth = Hoop(out.K*out.Edge+r.Safety.Unfavourable*t.Fill.Compaction, t.Diameter, t.Height)
	out.Ultimate = max(out.ByNeed, out.ByEarth)
	out.ByRest = Hoop(out.K0*out.Service+t.Fill.Compaction, t.Diameter, t.Height)

	// The ring must carry the friction of its tier and of those above, as if it were
	// all round what it is where the fill presses most, at any depth of the tier.
	out.Uneven = max(out.Top.uneven(), out.Bottom.uneven(), out.UnevenWithin.uneven())
	q, mu := out.Uneven*out.Top.Mean, math.Tan(2.0/3.0*t.Fill.Phi)
	own := r.Safety.Unfavourable * t.Fill.UnitWeight
	out.Wall = (q-Janssen(q, 0, t.Diameter, out.K0, mu, t.Height))*out.Top.Area +
		(own*t.Height-Janssen(0, own, t.Diameter, out.K0, mu, t.Height))*math.Pi/4*t.Diameter*t.Diameter
	if i > 0 {
		out.Wall += r.Tiers[i-1].Wall
	}
}
