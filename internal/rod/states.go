package rod

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

func clauses(ec, us string) [basis.Count]string {
	return [basis.Count]string{basis.Eurocode: ec, basis.USLRFD: us, basis.USASD: us}
}

// The limit states, in the order of an answer.
var (
	tension = &limit.Kind{ID: "rod_tension", Title: "Rod in tension", Measure: limit.Force,
		Clause: clauses(clauseTension, clauseJ37)}
	shear = &limit.Kind{ID: "rod_shear", Title: "Rod in shear", Measure: limit.Force,
		Clause: clauses(clauseShear, clauseJ37)}
	combined = &limit.Kind{ID: "rod_combined", Title: "Rod in tension and shear together", Measure: limit.Ratio,
		Clause: clauses(clauseCombined, clauseJ38)}
	baseShear = &limit.Kind{ID: "base_shear", Title: "Shear of the base by friction and rods", Measure: limit.Force,
		Clause: clauses(clauseBase, clauseMu)}
	anchorShear = &limit.Kind{ID: "rod_anchor_shear", Title: "Rod in shear as an anchor bolt", Measure: limit.Force,
		Clause: clauses(clauseAnchor, "")}
	plateBearing = &limit.Kind{ID: "plate_bearing", Title: "Plate in bearing at a hole", Measure: limit.Force,
		Clause: clauses(clauseBearing, clauseJ311)}
	plateTearOut = &limit.Kind{ID: "plate_tear_out", Title: "Plate in tear-out at a hole", Measure: limit.Force,
		Clause: clauses("", clauseJ311)}
	punching = &limit.Kind{ID: "plate_punching", Title: "Plate in punching under a nut", Measure: limit.Force,
		Clause: clauses(clausePunch, clausePunch4)}
	washerBending = &limit.Kind{ID: "plate_washer_bending", Title: "Plate washer in bending over the hole", Measure: limit.Force, Model: true,
		Clause: clauses(clauseWasher, clauseWasher)}
	standOff = &limit.Kind{ID: "rod_stand_off_bending", Title: "Rod in bending across a gap or a wide hole", Measure: limit.Force,
		Clause: clauses(clauseBendEC, "")}
	standOffUS = &limit.Kind{ID: "rod_stand_off_stress", Title: "Rod in tension and bending across a gap or a wide hole", Measure: limit.Stress,
		Clause: clauses("", clauseBendUS)}
	tolerance = &limit.Kind{ID: "hole_tolerance", Title: "Hole against position tolerance", Measure: limit.Length,
		Clause: clauses("geometry", "geometry")}
	tight = &limit.Kind{ID: "hole_pattern_minimum", Title: "Least edge distance and spacing of the holes", Measure: limit.Length,
		Clause: clauses(clauseTight, clauseJ34)}
)

// Kinds returns the limit states of the part in order.
func Kinds() []*limit.Kind {
	return []*limit.Kind{tension, shear, combined, baseShear, anchorShear, plateBearing, plateTearOut, punching,
		washerBending, standOff, standOffUS, tolerance, tight}
}

const (
	noTension = "no rod is in tension"
	noShear   = "no shear is left to the rods"
	tooHard   = "f_ub above 1000 MPa is beyond EN 1993-1-8 Table 3.1"
	sunken    = "a countersunk head takes thickness from the plate, and its depth is not described"
	noAlpha   = "alpha_bc holds for f_yb from 235 to 640 MPa only (EN 1993-1-8 6.2.2(7))"
	throughs  = "the nut is not wider than the hole and no washer is given: it would be pulled through"
	noSide    = "the nut is not wider than the hole, so the washer must bridge it: give washer_side_mm"
	loose     = "the holes exceed the nominal clearance: rods carry shear only through welded plate washers"
)

// States appends the limit states in their fixed order.
func (r *Result) States(l *limit.List) {
	l.Add(r.tensionState())
	l.Add(r.shearState())
	l.Add(r.combinedState())
	l.Add(r.baseState())
	if !r.in.Design.Basis.US() {
		l.Add(r.anchorState())
	}
	r.plateStates(l)
	l.Add(r.BendState())
	h, d := &r.in.Holes, r.in.Rod.Thread.Diameter
	if h.Tolerance == 0 {
		l.Add(limit.Skip(tolerance, "no position tolerance is given"))
	} else {
		l.Add(limit.Evaluate(tolerance, h.Tolerance, (h.Diameter-d)/2).Need(limit.HoleDiameter, d+2*h.Tolerance))
	}
	if len(r.in.At) > 0 {
		l.Add(limit.Evaluate(tight, r.Edge.Needs, r.Edge.Has).Of(r.Edge.Rod + 1))
	}
}

// beyond says why the basis does not cover tension or shear; empty: it does.
func (r *Result) beyond(reason string) string {
	if r.EC.TooHard {
		return tooHard
	}
	return reason
}

func (r *Result) tensionState() limit.State {
	switch why := r.beyond(r.TensionReason); {
	case why != "":
		return limit.Beyond(tension, why)
	case !r.Tense:
		return limit.Skip(tension, noTension)
	}
	w := &r.Worst
	return limit.Evaluate(tension, w.Ft, r.FtRd).Of(w.Tension+1).Need(limit.RodDiameter, r.tensionDiameter(w.Ft))
}

// tensionDiameter returns the nominal diameter that a tension asks for [mm].
//
// Source: the formulas of F_t,Rd and R_n turned round.
func (r *Result) tensionDiameter(t float64) float64 {
	if !r.in.Design.Basis.US() {
		return r.diameterFor(t/r.FtRd, r.Ds)
	}
	f := r.US.Factor * r.in.Rod.Steel.Fu
	d := r.diameterFor(t/(f*tensionShare*r.Ab), r.D)
	if r.Worn {
		d = max(d, r.diameterFor(t/(f*r.As), r.Ds))
	}
	return d
}

// shearDiameter returns the nominal diameter that a shear asks for [mm].
//
// Source: the formulas of F_v,Rd and R_n turned round.
func (r *Result) shearDiameter(v float64) float64 {
	switch {
	case r.in.Rod.ShankInPlane:
		return r.diameterFor(v/r.FvRd, r.D)
	case !r.in.Design.Basis.US():
		return r.diameterFor(v/r.FvRd, r.Ds)
	}
	f := r.US.Factor * r.in.Rod.Steel.Fu
	d := r.diameterFor(v/(f*threadsShear*r.Ab), r.D)
	if r.Worn {
		d = max(d, r.diameterFor(v/(f*shankShear*r.As), r.Ds))
	}
	return d
}

// diameterFor returns the nominal diameter whose area is the present area times
// a factor [mm]; of is the diameter of that area left after corrosion. The ratio
// of stress to nominal diameter is kept.
//
// Source: geometry.
func (r *Result) diameterFor(factor, of float64) float64 {
	c := r.in.Rod.Corrosion
	return r.in.Rod.Thread.Diameter / (of + c) * (of*math.Sqrt(factor) + c)
}

func (r *Result) shearState() limit.State {
	switch why := r.beyond(r.ShearReason); {
	case why != "":
		return limit.Beyond(shear, why)
	case !r.Sheared:
		return limit.Skip(shear, noShear)
	case r.Oversize && !r.in.Holes.WeldedWashers:
		return limit.State{Kind: shear, Verdict: limit.Fail, Demand: r.Worst.Fv, Reason: loose, Member: r.Worst.Shear + 1}
	}
	return limit.Evaluate(shear, r.Worst.Fv, r.FvRd).Of(r.Worst.Shear+1).Need(limit.RodDiameter, r.shearDiameter(r.Worst.Fv))
}

func (r *Result) combinedState() limit.State {
	switch why := r.beyond(r.TensionReason + r.ShearReason); {
	case why != "":
		return limit.Beyond(combined, why)
	case !r.Tense || !r.Sheared:
		return limit.Skip(combined, "there is no tension and shear together")
	case r.Worst.Interaction >= math.MaxFloat64:
		return limit.State{Kind: combined, Verdict: limit.Fail, Reason: "the shear leaves no resistance in tension", Member: r.Worst.Combined + 1}
	}
	return limit.Evaluate(combined, r.Worst.Interaction, 1).Of(r.Worst.Combined + 1)
}

func (r *Result) baseState() limit.State {
	in := r.in
	switch {
	case r.beyond(r.ShearReason) != "":
		return limit.Beyond(baseShear, r.beyond(r.ShearReason))
	case r.V == 0:
		return limit.Skip(baseShear, "there is no shear")
	case in.Rod.Countersunk:
		return limit.Beyond(baseShear, sunken)
	case in.StandOff.Gap > 0:
		return limit.Skip(baseShear, "the rods bridge a gap: see bending across the gap")
	case in.Design.Basis.US():
		return limit.Evaluate(baseShear, r.V, r.US.Base)
	case r.EC.NoAlpha:
		return limit.Beyond(baseShear, noAlpha)
	}
	return limit.Evaluate(baseShear, r.V, r.EC.FvRd)
}

// anchorState holds the rod that is sheared most against the limit of an anchor
// bolt, whatever the shears of the group add up to.
//
// Source: EN 1993-1-8:2005 6.2.2(7).
func (r *Result) anchorState() limit.State {
	switch {
	case r.beyond(r.ShearReason) != "":
		return limit.Beyond(anchorShear, r.beyond(r.ShearReason))
	case !r.Sheared:
		return limit.Skip(anchorShear, noShear)
	case r.in.StandOff.Gap > 0:
		return limit.Skip(anchorShear, "the rods bridge a gap: see bending across the gap")
	case r.EC.NoAlpha:
		return limit.Beyond(anchorShear, noAlpha)
	}
	w := &r.Worst
	return limit.Evaluate(anchorShear, w.Fv, r.EC.F2vb).Of(w.Shear+1).Need(limit.RodDiameter, r.diameterFor(w.Fv/r.EC.F2vb, r.Ds))
}
