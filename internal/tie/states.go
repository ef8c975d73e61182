package tie

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

func clauses(ec, lrfd, asd string) [basis.Count]string {
	return [basis.Count]string{basis.Eurocode: ec, basis.USLRFD: lrfd, basis.USASD: asd}
}

// The limit states, in the order of an answer.
var (
	bending = &limit.Kind{ID: "tie_plate_bending", Title: "Bottom plate in bending under the nuts", Measure: limit.UnitMoment, Model: true,
		Clause: clauses("statics; EN 1993-1-1:2005 6.2.5", "statics; AISC 360-22 F11", "statics; AISC 360-22 F11")}
	punching = &limit.Kind{ID: "tie_plate_punching", Title: "Bottom plate in punching under a nut", Measure: limit.Force,
		Clause: clauses("EN 1993-1-8:2005 Table 3.4", "AISC 360-22 J4.2(b)", "AISC 360-22 J4.2(b)")}
	strained = &limit.Kind{ID: "tie_rod_tension", Title: "Rod in tension, initial preload included", Measure: limit.Force,
		Clause: clauses("EN 1993-1-8:2005 Table 3.4; springs in parallel", "AISC 360-22 J3.7; springs in parallel", "AISC 360-22 J3.7; springs in parallel")}
	topBending = &limit.Kind{ID: "tie_top_bending", Title: "Upper plate in bending under the initial preload", Measure: limit.UnitMoment, Model: true,
		Clause: clauses("statics; EN 1993-1-1:2005 6.2.5", "statics; AISC 360-22 F11", "statics; AISC 360-22 F11")}
	topPunching = &limit.Kind{ID: "tie_top_punching", Title: "Upper plate in punching by the initial preload", Measure: limit.Force,
		Clause: clauses("EN 1993-1-8:2005 Table 3.4", "AISC 360-22 J4.2(b)", "AISC 360-22 J4.2(b)")}
	uplift = &limit.Kind{ID: "tie_uplift", Title: "Weight against uplift", Measure: limit.Force,
		Clause: clauses("EN 1997-1:2004 2.4.7.4, Table A.15", "ASCE 7-22 2.3.1 and 2.4.1", "ASCE 7-22 2.3.1 and 2.4.1")}
	overturning = &limit.Kind{ID: "tie_overturning", Title: "Weight against overturning about an edge of the bottom plate", Measure: limit.Moment,
		Clause: clauses("EN 1990:2002 6.4.1, Table A1.2(A)", "ASCE 7-22 2.3.1 and 2.4.1", "ASCE 7-22 2.3.1 and 2.4.1")}
	stretch = &limit.Kind{ID: "tie_stretch", Title: "Stretch of a rod", Measure: limit.Length,
		Clause: clauses("statics", "statics", "statics")}
	clamping = &limit.Kind{ID: "tie_preload", Title: "Preload needed against preload left", Measure: limit.Force, Model: true,
		Clause: clauses("statics", "statics", "statics")}
)

// Kinds returns the limit states of the part in order.
func Kinds() []*limit.Kind {
	return []*limit.Kind{bending, punching, strained, topBending, topPunching, uplift, overturning, stretch, clamping}
}

const noTension = "no rod is in tension"

// States appends the limit states in their fixed order.
func (r *Result) States(l *limit.List) {
	in := r.in
	switch {
	case in.ShareReason != "":
		l.Add(limit.Beyond(bending, in.ShareReason))
		l.Add(limit.Beyond(punching, in.ShareReason))
	case r.Pull == 0:
		l.Add(limit.Skip(bending, noTension))
		l.Add(limit.Skip(punching, noTension))
	default:
		l.Add(bendState(bending, worst(&r.Bend), r.Resists, &in.Plate, in))
		l.Add(limit.Evaluate(punching, r.Ft, r.Punch).Of(r.tense+1).Need(limit.PlateThickness,
			in.Plate.Needed(func(_, fu float64) float64 { return r.Ft / r.punchPerMM(fu) })))
	}
	r.preloadStates(l)
	if in.Actions.N > 0 {
		l.Add(r.upliftState())
	} else {
		l.Add(limit.Skip(uplift, "the foot is not lifted"))
	}
	l.Add(r.turnState())
	switch {
	case in.ShareReason != "":
		l.Add(limit.Beyond(stretch, in.ShareReason))
	case r.Acts == 0:
		l.Add(limit.Skip(stretch, noTension))
	case in.MostStretch == 0:
		s := limit.Skip(stretch, "no limit was given")
		s.Demand = r.Stretch
		l.Add(s)
	default:
		l.Add(limit.Evaluate(stretch, r.Stretch, in.MostStretch).Of(r.acted + 1))
	}
	if in.Needed == 0 {
		l.Add(limit.Skip(clamping, "no preload is needed"))
		return
	}
	s := limit.Evaluate(clamping, in.Needed, r.Springs.Left)
	if s.Verdict == limit.Pass {
		s.Verdict, s.Reason = limit.OutOfScope, "not verified: preload through granular fill is never counted on"
	}
	l.Add(s)
}

// Beyond these the ground outside the prism is not known to come along: steeper
// surfaces than usual, and plates so deep that it is the ground around them that
// yields. 2.5 is the least critical ratio of depth to width of Meyerhof and Adams
// 1968, that of 20 degrees (from memory); 30 degrees is common practice, no source.
const (
	widestWedge  = 30 * math.Pi / 180
	deepestWedge = 2.5
)

// upliftState counts on the ground outside the prism only within its limits.
func (r *Result) upliftState() limit.State {
	in := r.in
	s := limit.Evaluate(uplift, in.Actions.N, r.Holds)
	if s.Verdict != limit.Pass || in.Actions.N <= r.Share*in.Clamped {
		return s
	}
	switch {
	case in.Soil.Angle > widestWedge*(1+1e-9):
		s.Reason = "not verified: ground is counted outside the prism beyond 30 degrees"
	case in.Soil.Depth > deepestWedge*min(in.Plate.SizeX, in.Plate.SizeY):
		s.Reason = "not verified: the plate is deeper than 2.5 times its width, where the ground outside the prism no longer comes along to the surface"
	default:
		return s
	}
	s.Verdict = limit.OutOfScope
	return s
}

// preloadStates are about what rods and upper plate bear when the nuts are tightened.
func (r *Result) preloadStates(l *limit.List) {
	in := r.in
	kinds := [...]*limit.Kind{strained, topBending, topPunching}
	if in.Preload == 0 {
		for _, k := range kinds {
			l.Add(limit.Skip(k, "the rods have no initial preload"))
		}
		return
	}
	switch {
	case in.ShareReason != "":
		l.Add(limit.Beyond(strained, in.ShareReason))
	case in.RodStrength == 0:
		l.Add(limit.Beyond(strained, "the strength of the rods is not known"))
	default:
		l.Add(limit.Evaluate(strained, r.Ft, in.RodStrength).Of(r.tense + 1))
	}
	if in.Top.Thickness == 0 {
		for _, k := range kinds[1:] {
			l.Add(limit.Skip(k, "the upper plate is not known"))
		}
		return
	}
	l.Add(r.topState())
	l.Add(limit.Evaluate(topPunching, in.Preload, r.TopPunch).Need(limit.PlateThickness,
		in.Top.Needed(func(_, fu float64) float64 { return in.Preload / r.punchPerMM(fu) })))
}

// topState leaves a plate that does not bear the preload by itself to an engineer: what
// stands on it may stiffen it.
func (r *Result) topState() limit.State {
	s := bendState(topBending, worst(&r.Top), r.TopHolds, &r.in.Top, r.in)
	if s.Verdict == limit.Fail {
		s.Verdict = limit.OutOfScope
		s.Reason = "not verified: the plate does not bear the initial preload by itself; what stands on it may stiffen it, which is not counted"
	}
	return s
}

// axis returns the place of the bending that governs.
func axis(of *[2]Bend) int {
	if a, b := &of[0], &of[1]; b.Reason != "" || a.Reason == "" && b.PerMM > a.PerMM {
		return 1
	}
	return 0
}

// worst returns the bending that governs.
func worst(of *[2]Bend) *Bend { return &of[axis(of)] }

func bendState(k *limit.Kind, b *Bend, resists float64, p *geom.Plate, in *Input) limit.State {
	if b.Reason != "" {
		return limit.State{Kind: k, Verdict: limit.Fail, Reason: b.Reason}
	}
	return limit.Evaluate(k, b.PerMM, resists).Need(limit.PlateThickness, NeededThickness(p, &in.Design, b.PerMM))
}

func (r *Result) turnState() limit.State {
	worst := 0
	a, b := &r.Turn[0], &r.Turn[1]
	if a.Demand == 0 && b.Demand == 0 {
		return limit.Skip(overturning, "nothing overturns the foot")
	}
	// Of two without weight that holds, the one that is turned.
	if b.Demand > 0 && (a.Demand == 0 || b.Demand/b.Holds > a.Demand/a.Holds) {
		worst = 1
	}
	return limit.Evaluate(overturning, r.Turn[worst].Demand, r.Turn[worst].Holds)
}
