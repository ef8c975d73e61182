package settle

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

func clauses(ec, us string) [basis.Count]string {
	return [basis.Count]string{basis.Eurocode: ec, basis.USLRFD: us, basis.USASD: us}
}

// The limit states, in the order of an answer. The paragraphs of EN 1997-1 6.6.2
// and of the annexes of EN 1997-2 are cited from memory.
var (
	elastic = &limit.Kind{ID: "settle_elastic", Title: "Settlement of the elastic half space or layers", Measure: limit.Length,
		Clause: clauses("EN 1997-1:2004 6.6.2, Annex F.2; Steinbrenner 1934", "Steinbrenner 1934; Boussinesq")}
	schmertmann = &limit.Kind{ID: "settle_schmertmann", Title: "Settlement of sand by cone resistance", Measure: limit.Length,
		Clause: clauses("Schmertmann et al. 1978; EN 1997-2:2007 Annex D.3", "Schmertmann et al. 1978")}
	burland = &limit.Kind{ID: "settle_burland_burbidge", Title: "Settlement of sand by blow count", Measure: limit.Length,
		Clause: clauses("Burland and Burbidge 1985; EN 1997-2:2007 Annex F.3", "Burland and Burbidge 1985")}
	consolidation = &limit.Kind{ID: "settle_consolidation", Title: "Consolidation of clay", Measure: limit.Length,
		Clause: clauses("EN 1997-1:2004 6.6.2, Annex F.3; Terzaghi", "Terzaghi")}
	total = &limit.Kind{ID: "settle_total", Title: "Settlement of all layers, the parts of the methods added", Measure: limit.Length,
		Clause: clauses("EN 1997-1:2004 6.6.1(2), 6.6.2(2), (6)", "sum of the layers")}
	tilt = &limit.Kind{ID: "settle_tilt", Title: "Tilt of the footing", Measure: limit.Ratio,
		Clause: clauses("EN 1997-1:2004 6.6.2(16), Annex H", "elastic half space")}
	differential = &limit.Kind{ID: "settle_differential", Title: "Angular distortion against a neighbour", Measure: limit.Ratio,
		Clause: clauses("EN 1997-1:2004 2.4.9, Annex H", "Bjerrum 1963")}
)

// Kinds returns the limit states of the part in order.
func Kinds() []*limit.Kind {
	return []*limit.Kind{elastic, schmertmann, burland, consolidation, total, tilt, differential}
}

// States appends the limit states in their fixed order.
func (r *Result) States(l *limit.List) {
	kinds := [...]*limit.Kind{elastic, schmertmann, burland, consolidation, total}
	for i, m := range r.methods() {
		at := r.greatest(m.of)
		s := limit.Evaluate(kinds[i], m.of(&r.Stages[at]), r.Total)
		s.Stage = at + 1
		switch {
		case m.reason == "":
		case kinds[i] != total || r.whole.gap == "":
			s = limit.Skip(kinds[i], m.reason)
		case s.Verdict == limit.Pass:
			// What is known holds, what is not comes on top.
			s = limit.Beyond(total, "not all layers that the stress reaches can be predicted: "+m.reason)
			s.Demand, s.Stage = m.of(&r.Stages[at]), at+1
		}
		l.Add(s)
	}
	l.Add(r.tiltState())
	l.Add(r.unevenState())
}

// mostTilt is up to where a tilt without a limit needs no word: the relative
// rotation that EN 1997-1 Annex H takes as acceptable for many structures.
const mostTilt = 1.0 / 500

func tiltOf(s *Settled) float64 { return s.Tilt }

// ground returns the tilt of a stage that the ground alone makes [rad]; what stands on
// it may turn besides, by design.
func (r *Result) ground(stage int) float64 {
	s, given := &r.Stages[stage], &r.in.Stages[stage]
	return math.Hypot(s.TiltX-given.TurnX, s.TiltY-given.TurnY)
}

func (r *Result) tiltState() limit.State {
	at := r.greatest(tiltOf)
	demand := r.Stages[at].Tilt
	switch {
	case r.NoTilt != "" && r.in.Limits.Tilt > 0 && r.turned():
		return limit.Beyond(tilt, r.NoTilt+", so that the tilt cannot be held to its limit")
	case r.NoTilt != "":
		return limit.Skip(tilt, r.NoTilt)
	case demand == 0:
		return limit.Skip(tilt, "no moment acts on the base")
	case r.in.Limits.Tilt == 0:
		s := limit.Skip(tilt, "no limit was given")
		if r.ground(at) > mostTilt {
			s = limit.Beyond(tilt, "the ground lets the footing tilt by more than 1/500 and no limit was given: say what the structure tolerates")
		}
		s.Demand, s.Stage = demand, at+1
		return s
	}
	s := limit.Evaluate(tilt, demand, r.in.Limits.Tilt)
	s.Stage = at + 1
	return s
}

// turned reports whether a moment acts in any stage.
func (r *Result) turned() bool {
	for i := range r.in.Stages {
		if s := &r.in.Stages[i]; s.Mx != 0 || s.My != 0 {
			return true
		}
	}
	return false
}

func (r *Result) unevenState() limit.State {
	switch {
	case len(r.in.Neighbours) == 0:
		return limit.Skip(differential, "no neighbour was given")
	case r.Worst.Neighbour == 0:
		return limit.Skip(differential, "no method gives a settlement")
	}
	return limit.Evaluate(differential, r.Worst.Ratio, r.Distortion).Of(r.Worst.Neighbour)
}
