package ground

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// Load is what acts on the base in one combination of factors.
type Load struct {
	GammaG float64 // on permanent actions and weight [-]
	GammaQ float64 // on variable actions [-]
	GammaP float64 // on the variable force across the base [-]
	V      float64 // across the base, pressing positive [N]
	Hx     float64 // along x, magnitude [N]
	Hy     float64 // along y, magnitude [N]
	H      float64 // along the base [N]
	Mx     float64 // about x, at the base, magnitude [Nmm]
	My     float64 // about y, at the base, magnitude [Nmm]
	Ex     float64 // eccentricity along x [mm]; 0 unless V presses
	Ey     float64 // eccentricity along y [mm]; 0 unless V presses
	E      float64 // eccentricity [mm]; 0 unless V presses
}

// Bearing is one evaluation of the bearing resistance.
type Bearing struct {
	Load
	Effective
	Reason     string  // why there is no resistance; empty: there is
	Author     Author  // whose factors
	Drained    bool    // whether by the drained strength
	Demand     float64 // V_d [N]
	Friction   float64 // design angle of friction [rad]; 0 undrained
	Strength   float64 // design cohesion or undrained strength [MPa]
	Grip       float64 // adhesion on the base [MPa]
	Overburden float64 // pressure beside the base [MPa]
	Weight     float64 // unit weight that counts below the base [N/mm3]
	M          float64 // exponent m of inclination [-]
	N          Three   // bearing factors
	S          Three   // shape factors that count
	D          Three   // depth factors
	I          Three   // inclination factors
	Pressure   float64 // ultimate [MPa]
	Resistance float64 // design [N]
	set        *set
	by         [3]float64 // factors of the demand on G, Q and what Q presses
}

// Sliding is one evaluation of the resistance against sliding.
type Sliding struct {
	Load
	Effective
	Drained    bool
	Angle      float64 // design friction angle of the base [rad]; 0 undrained
	Strength   float64 // design undrained strength [MPa]
	Resistance float64 // design [N]
	set        *set
}

// Punch is one evaluation of punching through the layer.
type Punch struct {
	Load
	Effective
	Reason     string  // why there is no resistance; empty: there is
	Clay       float64 // design undrained strength of the clay [MPa]
	Friction   float64 // design angle of friction of the layer [rad]
	I          float64 // inclination factor i_c, as for a base on the clay [-]
	Pressure   float64 // ultimate [MPa]
	Demand     float64 // [N]
	Resistance float64 // design [N]
	set        *set
}

// Turn is a demand with what holds it: a moment about an edge or a force.
type Turn struct {
	Demand float64 // [Nmm] or [N]
	Holds  float64 // [Nmm] or [N]
}

// Result holds every intermediate value of a check.
type Result struct {
	in *Input

	Scope       string    // why nothing can be checked; empty: it can
	Overburden  float64   // pressure beside the base [MPa]
	Weight      float64   // unit weight that counts below the base [N/mm3]
	Bearing     []Bearing // one per approach taken, the worst of it; United States bases: one
	Sliding     *Sliding  // the worst; nil: nothing pushes
	Reach       Load      // with the greatest eccentricity
	Share       float64   // e/B of it, both directions added, or e/D [-]
	Lifted      bool      // whether a combination has no balance on the base
	Overturning [2]Turn   // along x and along y; a circle: the first
	Uplift      Turn
	Contact     Load    // of the presumptive pressure, unfactored
	Peak        float64 // greatest pressure by a straight line [MPa]
	Kern        bool    // whether the whole base presses
	Punch       *Punch  // the worst; nil: no layer
}

const waterAbove = "water above the base is not covered: buoyancy and seepage are not counted"

// Check verifies a footing on its ground. Errors: limit.Faults.
func Check(in *Input) (*Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	r := &Result{in: in, Overburden: in.Soil.Above * in.Depth, Weight: in.Soil.Below}
	if !in.Soil.Dry && in.Soil.Water < in.Depth {
		r.Scope = waterAbove
		return r, nil
	}
	if in.Soil.Below > 0 && !in.Soil.Dry && in.Soil.Water < in.Depth+in.width() {
		r.Weight -= waterWeight
	}
	for i := range sets {
		if s := in.takes(i); s != nil {
			r.approach(s)
		}
	}
	r.balance()
	r.presumptive()
	return r, nil
}

// plain is the set of the United States bases: no factor but the one on the
// resistance.
func (in *Input) plain() *set {
	fs := in.Stability
	if fs == 0 {
		fs = stabilityFS
	}
	bearing := in.Safety
	if bearing == 0 {
		bearing = bearingFS
	}
	if in.Design.Basis == basis.USLRFD {
		bearing = 1 / in.Resistance
	}
	return &set{g: 1, q: 1, phi: 1, c: 1, cu: 1, rv: bearing, rh: fs}
}

// takes returns the set of row i, or nil if it is not taken; the United States
// bases take their own once.
func (in *Input) takes(i int) *set {
	if in.Design.Basis.US() {
		if i == 0 {
			return in.plain()
		}
		return nil
	}
	if len(in.Approaches) == 0 {
		return in.own(&sets[i])
	}
	for _, a := range in.Approaches {
		if a == sets[i].id {
			return in.own(&sets[i])
		}
	}
	return nil
}

// load returns the actions on the base.
//
//	V = gamma_G (W - N_G) - gamma_Q N_Q, M_x = |M_x,d| + |V_y,d| h
//
// Source: statics; magnitudes added.
func (in *Input) load(g, q, p float64) Load {
	a, b := &in.Permanent, &in.Variable
	l := Load{
		GammaG: g, GammaQ: q, GammaP: p,
		V:  g*(in.Weight-a.N) - p*b.N,
		Hx: math.Abs(g*a.Vx + q*b.Vx), Hy: math.Abs(g*a.Vy + q*b.Vy),
	}
	l.H = math.Hypot(l.Hx, l.Hy)
	l.Mx = math.Abs(g*a.Mx+q*b.Mx) + l.Hy*in.Height
	l.My = math.Abs(g*a.My+q*b.My) + l.Hx*in.Height
	if l.V > 0 {
		l.Ex, l.Ey = l.My/l.V, l.Mx/l.V
		l.E = math.Hypot(l.Ex, l.Ey)
	}
	return l
}

// idle reports whether nothing acts.
func (l Load) idle() bool { return l.V == 0 && l.H == 0 && l.Mx == 0 && l.My == 0 }

// factors returns the combinations of factors on permanent actions, on variable
// actions, and on the variable force across the base: everything favourable and
// unfavourable, and the variable actions without what they press.
func (in *Input) factors(s *set) [][3]float64 {
	if in.Design.Basis.US() {
		return [][3]float64{{1, 1, 1}}
	}
	var all [][3]float64
	for _, g := range [...]float64{s.g, in.partials().GInf} {
		all = append(all, [3]float64{g, s.q, s.q})
		if in.Variable == (geom.Actions{}) {
			continue
		}
		all = append(all, [3]float64{g, 0, 0})
		if !in.Linked && in.Variable.N < 0 {
			all = append(all, [3]float64{g, s.q, 0})
		}
	}
	return all
}

func unit(v float64) float64 {
	if v == 0 {
		return 0
	}
	return 1
}

// approach takes the combinations of one approach.
func (r *Result) approach(s *set) {
	in := r.in
	var worst *Bearing
	for _, f := range in.factors(s) {
		l := in.load(f[0], f[1], f[2])
		if l.idle() {
			continue
		}
		r.reach(l)
		r.slide(s, l)
		acts := l
		if s.late {
			acts = in.load(1, unit(f[1]), unit(f[2]))
			r.reach(acts)
		}
		r.punch(s, acts, l.V)
		for _, drained := range [...]bool{true, false} {
			if drained && in.Soil.Friction > 0 || !drained && in.Soil.Undrained > 0 {
				b := r.bear(s, acts, l.V, drained)
				b.by = f
				worst = worse(worst, b)
			}
		}
	}
	if worst != nil {
		r.Bearing = append(r.Bearing, *worst)
	}
}

func worse(a, b *Bearing) *Bearing {
	if a == nil || a.Resistance > 0 && (b.Resistance == 0 || b.Demand*a.Resistance > a.Demand*b.Resistance) {
		return b
	}
	return a
}

// effective returns the effective area under a load.
func (in *Input) effective(l Load) Effective {
	switch {
	case !(l.V > 0):
		return Effective{}
	case in.Shape == Circle:
		return EffectiveCircle(in.Diameter/2, l.E)
	}
	return EffectiveRectangle(in.SizeX, in.SizeY, l.Ex, l.Ey)
}

// reach takes the eccentricity into account.
func (r *Result) reach(l Load) {
	in := r.in
	if l.V-l.GammaG*in.Bed <= 0 {
		r.Lifted = true
		return
	}
	var share float64
	if in.Shape == Circle {
		share = l.E / in.Diameter
	} else {
		share = l.Ex/in.SizeX + l.Ey/in.SizeY
	}
	if share > r.Share {
		r.Share, r.Reach = share, l
	}
	r.Lifted = r.Lifted || in.effective(l).Area == 0
}
