package ground

import (
	"math"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/material"
)

// Load is what acts on the base in one combination of factors.
type Load struct {
	GammaG float64 // on permanent actions but the weight [-]
	GammaQ float64 // on variable actions [-]
	GammaP float64 // on the variable force across the base [-]
	GammaW float64 // on the weight and on permanent force that presses [-]
	V      float64 // across the base, pressing positive, less buoyancy [N]
	Hx     float64 // along x, magnitude [N]
	Hy     float64 // along y, magnitude [N]
	H      float64 // along the base [N]
	Mx     float64 // about x, at the base, magnitude [Nmm]
	My     float64 // about y, at the base, magnitude [Nmm]
	Ex     float64 // eccentricity along x [mm]; 0 unless V presses
	Ey     float64 // eccentricity along y [mm]; 0 unless V presses
	E      float64 // eccentricity [mm]; 0 unless V presses
}

// by are the factors of a load: on permanent actions, on variable ones, on the
// variable force across the base, and on the weight.
type by struct{ g, q, p, w float64 }

// load returns the actions on the base.
//
//	V = gamma_W (W - N_G + L) - gamma_G L - gamma_Q,N N_Q - U, M_x = |M_x,d| + |V_y,d| h
//
// with L of the permanent force what lifts. A variable shear or moment against the
// permanent one is left out, unless all variable actions come together.
//
// Source: statics; magnitudes added; EN 1990:2002 6.4.3.1(4).
func (in *Input) load(f by) Load {
	a, b := &in.Permanent, &in.Variable
	one := func(g, q float64) float64 {
		d := math.Abs(f.g*g + f.q*q)
		if in.apart() {
			return max(d, math.Abs(f.g*g))
		}
		return d
	}
	lift := in.lift()
	l := Load{
		GammaG: f.g, GammaQ: f.q, GammaP: f.p, GammaW: f.w,
		V:  f.w*(in.Weight-a.N+lift) - f.g*lift - f.p*b.N - in.buoyancy(),
		Hx: one(a.Vx, b.Vx), Hy: one(a.Vy, b.Vy),
	}
	l.H = math.Hypot(l.Hx, l.Hy)
	l.Mx = one(a.Mx, b.Mx) + l.Hy*in.Height
	l.My = one(a.My, b.My) + l.Hx*in.Height
	if l.V > 0 {
		l.Ex, l.Ey = l.My/l.V, l.Mx/l.V
		l.E = math.Hypot(l.Ex, l.Ey)
	}
	return l
}

// apart reports whether parts of the variable actions count without the others.
func (in *Input) apart() bool { return !in.Linked && !in.Design.Basis.US() }

// lift returns the permanent force that lifts.
func (in *Input) lift() float64 { return max(0, in.Permanent.N, in.Lift) }

// head returns the pressure of the water at the base [MPa].
func (in *Input) head() float64 {
	if in.Soil.Dry {
		return 0
	}
	return material.WaterWeight * max(0, in.Depth-in.Soil.Water)
}

// buoyancy returns what the water lifts the base by [N].
func (in *Input) buoyancy() float64 { return in.head() * in.area() }

func (in *Input) area() float64 {
	if in.Shape == Circle {
		return math.Pi * in.Diameter * in.Diameter / 4
	}
	return in.SizeX * in.SizeY
}

// idle reports whether nothing acts.
func (l Load) idle() bool { return l.V == 0 && l.H == 0 && l.Mx == 0 && l.My == 0 }

// factors returns the combinations of factors: everything favourable and
// unfavourable, the variable actions without their force across the base, the weight
// favourable beside what is of another source, and unfavourable beside what lifts.
//
// Source: EN 1990:2002 6.4.3.1(4), Table A1.2(B) note 3; EN 1997-1:2004 2.4.2(9).
func (in *Input) factors(s *set) []by {
	if in.Design.Basis.US() {
		return []by{{1, 1, 1, 1}}
	}
	inf := in.partials().GInf
	all := make([]by, 0, 12)
	add := func(g, w float64) {
		all = append(all, by{g, s.q, s.q, w})
		if in.Variable == (geom.Actions{}) {
			return
		}
		all = append(all, by{g, 0, 0, w})
		if in.apart() && in.Variable.N != 0 {
			all = append(all, by{g, s.q, 0, w})
		}
	}
	add(s.g, s.g)
	add(inf, inf)
	if in.Apart || in.lift() > 0 {
		add(s.g, inf)
	}
	if in.lift() > 0 {
		add(inf, s.g) // what lifts spares the ground least
	}
	return all
}

// unit returns the factors without their size.
func (f by) unit() by {
	one := func(v float64) float64 {
		if v == 0 {
			return 0
		}
		return 1
	}
	return by{1, one(f.q), one(f.p), 1}
}
