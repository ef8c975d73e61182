package ground

import (
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
)

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
	Breadth    float64 // width that counts in the term of weight [mm]
	M          float64 // exponent m of inclination [-]
	N          Three   // bearing factors
	S          Three   // shape factors that count
	D          Three   // depth factors
	I          Three   // inclination factors
	Pressure   float64 // ultimate [MPa]
	Resistance float64 // design [N]
	set        *set
	by         by // factors of the demand
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
	Slant      float64 // inclination factor of the shear of the layer [-]
	Rim        float64 // edge along which the layer shears [mm]
	Breadth    float64 // width whose shear is as much as that of the edge [mm]
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

	Head        float64   // pressure of the water at the base [MPa]
	Buoyancy    float64   // force of it [N]
	Beside      float64   // weight of the ground beside the base [MPa]
	Overburden  float64   // pressure beside the base, effective [MPa]
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

// Check verifies a footing on its ground. Errors: limit.Faults.
func Check(in *Input) (*Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	r := &Result{in: in, Head: in.head(), Buoyancy: in.buoyancy(), Beside: in.Soil.Above * in.Depth, Weight: in.Soil.Below}
	r.Overburden = max(0, r.Beside-r.Head)
	if in.Soil.Below > 0 && !in.Soil.Dry && in.Soil.Water < in.Depth+in.width() {
		r.Weight -= material.WaterWeight
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

// approach takes the combinations of one approach.
func (r *Result) approach(s *set) {
	in := r.in
	var worst *Bearing
	for _, f := range in.factors(s) {
		l := in.load(f)
		if l.idle() {
			continue
		}
		r.reach(l)
		r.slide(s, l)
		acts := l
		if s.late {
			acts = in.load(f.unit())
			r.reach(acts)
		}
		// The water may be lower than the highest: it takes nothing off the demand.
		demand := l.V + r.Buoyancy
		r.punch(s, acts, demand)
		for _, drained := range [...]bool{true, false} {
			if drained && in.Soil.Friction > 0 || !drained && in.Soil.Undrained > 0 {
				b := r.bear(s, acts, demand, drained)
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
	if l.V-l.GammaW*in.Bed <= 0 {
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
