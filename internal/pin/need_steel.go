package pin

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

// The net thicknesses between which a size is looked for [mm].
const (
	thinnest = leastSize / 2
	thickest = 300.0
)

// toNet returns the thickness of the plates that tension at the holes needs.
func (r *Result) toNet(*limit.State) size {
	s, in := &r.Steel, r.in
	gross, net := s.A/s.T, s.Anet/s.T
	return r.plate(func(fy, fu float64) float64 {
		if r.ec {
			return max(s.N/(gross*fy/in.Design.EC.GammaM0), s.N/(ruptureEC*net*fu/in.Design.EC.GammaM2))
		}
		b := in.Design.Basis
		return max(s.N/(gross*fy*basis.TensionYield.Factor(b)), s.N/(net*fu*basis.Rupture.Factor(b)))
	})
}

// grown returns the least net thickness at which a utilization that falls with
// thickness does not exceed 1 [mm], the thinnest where even that would do.
//
// Source: the clause of the limit state, turned round.
func grown(used func(t float64) float64) float64 {
	low, high := thinnest, thickest
	switch {
	case used(low) <= 1:
		return low
	case !(used(high) <= 1):
		return math.Inf(1)
	}
	for range mostSteps {
		if high-low <= closeTo*high {
			break
		}
		if middle := (low + high) / 2; used(middle) <= 1 {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}

// toBuckle returns the thickness of the plates that compression needs.
func (r *Result) toBuckle(*limit.State) size {
	x := *r
	gross := r.Steel.A / r.Steel.T
	return r.plate(func(fy, _ float64) float64 {
		return grown(func(t float64) float64 {
			x.slender(t, fy)
			strength := gross * t * fy * x.pressed()
			if !r.ec {
				strength = compression.Factor(r.in.Design.Basis) * x.Steel.Chi * gross * t * fy
			}
			return use(r.Steel.N, strength)
		})
	})
}

// toBend returns the thickness of the plates that bending needs, with shear not
// above half of the plastic shear.
func (r *Result) toBend(*limit.State) size {
	x, s, in := *r, &r.Steel, r.in
	gross, net, w := s.A/s.T, s.Anet/s.T, s.W/s.T
	return r.plate(func(fy, _ float64) float64 {
		shear := fy / in.Design.EC.GammaM0 / math.Sqrt(3)
		if !r.ec {
			shear = basis.ShearYield.Factor(in.Design.Basis) * 0.6 * fy
		}
		bent := grown(func(t float64) float64 {
			x.slender(t, fy)
			allowed := basis.Flexure.Factor(in.Design.Basis) * fy
			if r.ec {
				allowed = fy / x.ofStress()
			}
			stress := use(s.M, w*t*x.Steel.ChiLT)
			if r.Nj < 0 {
				stress += use(s.N, net*t*x.Steel.Chi)
			} else {
				stress += use(s.N, net*t)
			}
			return stress / allowed
		})
		return max(bent, s.V*(1+closeTo)/(halfShear*shear*gross))
	})
}

// toBear returns the thickness of the plates that bearing at a hole needs.
func (r *Result) toBear(*limit.State) size {
	s, in := &r.Steel, r.in
	d := in.Pin.Diameter
	return r.plate(func(fy, fu float64) float64 {
		if !r.ec {
			return s.Share / (basis.Rupture.Factor(in.Design.Basis) * bearShare * d * fu)
		}
		alpha, k1 := in.table34(fu)
		t := s.Share / (k1 * alpha * fu * d / in.Design.EC.GammaM2)
		if in.Pin.Kind == Dowel {
			t = max(t, s.Share/(pinBearing*d*min(fy, in.Pin.Fy)/in.Design.EC.GammaM0))
		}
		return t
	})
}

// toTear returns the thickness of the plates that tear-out at a hole needs.
func (r *Result) toTear(*limit.State) size {
	s := &r.Steel
	return r.plate(func(_, fu float64) float64 {
		return s.Share / (basis.Rupture.Factor(r.in.Design.Basis) * tearShare * s.Lc * fu)
	})
}

// toPattern returns the distance of the plates' holes that is tightest, where all
// others hold with it.
func (r *Result) toPattern(*limit.State) size {
	in := r.in
	edge, along, across := in.around()
	end, d0, d := in.Plates.EndDistance, in.Plates.Hole, in.Pin.Diameter
	needEdge, needHole := edgeEC*d0, spacingEC*d0
	if !r.ec {
		needEdge, needHole = edgeUS*d, spacingUS*d
	}
	if needHole/min(along, across) > needEdge/min(edge, end) {
		switch {
		case min(edge, end) < needEdge:
			return size{}
		case along <= across && across >= needHole:
			return size{limit.PinSpacingAlong, needHole}
		case across < along && along >= needHole && (in.Plates.Width-float64(in.Layout.Rows-1)*needHole)/2 >= needEdge:
			return size{limit.PinSpacingAcross, needHole}
		}
		return size{}
	}
	switch {
	case min(along, across) < needHole:
		return size{}
	case end <= edge && edge >= needEdge:
		return size{limit.BracketEndDistance, needEdge}
	case edge < end && end >= needEdge:
		return size{limit.BracketWidth, in.across() + 2*needEdge}
	}
	return size{}
}
