package size

import (
	"footward.example/footward/internal/base"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pad"
)

// Steps are the sizes that may be taken: the least, and more by whole steps.
type Steps struct {
	Least float64 // [mm]
	Step  float64 // [mm]
	Most  float64 // [mm]
}

// count returns how many sizes there are.
func (s Steps) count() int { return int((s.Most-s.Least)/s.Step+1e-9) + 1 }

func (s Steps) at(i int) float64 { return s.Least + float64(i)*s.Step }

// PadCase is a combination of factored actions that the concrete must hold.
type PadCase struct {
	Name    string
	Actions geom.Actions // at the foot of the column
	Weight  float64      // factor on the weight of pad and soil [-]
	Afloat  bool         // less what water above the base lifts
}

// Plinth is the concrete that stands on a pad up to the plate.
type Plinth struct {
	SizeX float64 // [mm]
	SizeY float64 // [mm]; 0: there is none
	Plate float64 // thickness of the plate on it [mm]
}

// height returns how high a plinth stands on a pad of a thickness [mm].
func (p *Plinth) height(foot, thickness float64) float64 { return max(0, foot-p.Plate-thickness) }

// PadInput is a pad to be sized for its ground and its concrete.
type PadInput struct {
	// Ground gives actions, ground and method; its plan, height and weight are
	// those of each choice.
	Ground ground.Input
	// Pairs are what the ground must hold. None: the actions of Ground.
	Pairs []base.Pair
	// Pad gives column, concrete, cover and yield strength; its plan, thickness,
	// bars, actions, height and weight are those of each choice.
	Pad pad.Input
	// Cases are what the concrete must hold. None: with the Eurocode the sets
	// of A1 on the actions of Ground, with LRFD those actions as they are. ASD
	// needs them, since concrete has no allowable stresses.
	Cases        []PadCase
	Above        float64 // of the place where the actions act, over the top of the pad [mm]; not read with Foot
	Foot         float64 // of the place where the actions act, over the underside [mm]; 0: by Above
	Plinth       Plinth  // between pad and foot; not read without Foot
	Concrete     float64 // unit weight of the pad [N/mm3]; 0: 24 kN/m3 plain, 25 reinforced
	Soil         float64 // unit weight of what lies on the pad up to the surface [N/mm3]
	WeightFactor float64 // LRFD, factor on the weight in the combination of Ground [-]; required there
	Aspect       float64 // size along y over that along x [-]; 0: 1
	Plan         Steps   // of the size along x
	Thickness    Steps
	Bars         []pad.Bars // one of them for both directions; none: plain concrete
	Most         float64    // greatest utilization that passes, rules of detailing not counted [-]
	// Stop is asked before every check; an error ends the search. nil: never.
	Stop func() error
}

// PadChoice is a pad with what came of it.
type PadChoice struct {
	SizeX       float64 // [mm]
	SizeY       float64 // [mm]
	Thickness   float64 // [mm]
	Bars        int     // place in the list; -1: plain
	Weight      float64 // of pad, plinth and soil above, characteristic [N]
	Volume      float64 // of the concrete [mm3]
	Verdict     limit.Verdict
	Governing   string // id of the limit state; empty: the choice cannot be built
	Rated       bool
	Utilization float64 // [-]
	Combination string  // of the concrete
}

// PadStop is the next smaller value of one dimension, and why it does not do.
type PadStop struct {
	Dimension Dimension
	Choice    PadChoice // the closest miss there
}

// PadResult is the outcome of a search.
type PadResult struct {
	Found   bool
	Best    PadChoice // when none is found, the closest miss
	Stops   []PadStop
	Choices int
	Checked int  // choices that were checked
	soil    bool // whether soil lies on the best pad
	proud   bool // whether it stands out of the ground
	derived bool // whether the cases are derived
	states  limit.List
	notices limit.Notices
	ground  *ground.Result // in the combination that uses it most
	pad     *pad.Result    // likewise; nil: the pad cannot be built
}

// Derive writes the ground, then the concrete, each in the combination that uses it
// most.
func (r *PadResult) Derive(s *derive.Sheet) {
	if r.ground != nil {
		r.ground.Derive(s)
	}
	if r.pad != nil {
		r.pad.Derive(s)
	}
}

// States appends the limit states of the best choice: those of the ground, then
// those of the concrete, each in the combination that uses it most.
func (r *PadResult) States(l *limit.List) {
	for _, s := range r.states.All() {
		l.Add(s)
	}
}

// Notices appends the notices of the best choice.
func (r *PadResult) Notices(l *limit.Notices) {
	for _, n := range r.notices.All() {
		l.Add(n)
	}
	l.Add(order)
	if r.soil {
		l.Add(soilAbove)
	}
	if r.proud {
		l.Add(standsOut)
	}
	if r.derived {
		l.Add(derivedCases)
	}
}

// The notices of the search beside those of its parts, in the order of an answer.
var (
	order = &limit.Notice{Code: "size_pad_order", Severity: limit.Info,
		Text: "The smallest plan is taken first, then the least thickness, then the least bars; a wider and thinner pad may need less concrete."}
	standsOut = &limit.Notice{Code: "size_pad_stands_out", Severity: limit.Caution,
		Text: "The pad is thicker than its base is deep: it stands out of the ground. A deeper base, a wider pad or bars may take less concrete."}
	soilAbove = &limit.Notice{Code: "size_pad_soil", Severity: limit.Assumption,
		Text: "The soil on the pad counts by one unit weight, where it presses and where it holds: try the greatest and the least, and the pad before it is covered."}
	derivedCases = &limit.Notice{Code: "size_pad_cases", Severity: limit.Assumption,
		Text: "The concrete was checked for the actions given for the ground: with the Eurocode by set A1 (1.35 or 1.0 of the permanent and 1.5 of the variable ones, as one), with LRFD as they are."}
)

// PadRemarks returns the notices of the search beside those of its parts.
func PadRemarks() []*limit.Notice {
	return []*limit.Notice{order, soilAbove, standsOut, derivedCases}
}
