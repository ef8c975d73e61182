package record

import "footward.example/footward/internal/limit"

// The notices, in the order of an answer.
var (
	memory = &limit.Notice{Code: "record_from_memory", Severity: limit.Caution,
		Text: "Criteria of failure, DIN 18134, the equation of EN 1997-2 K.2 and the hyperbola are quoted from memory; the bounds on when to believe them are engineering choices. Compare with the edition in force."}
	lowerBound = &limit.Notice{Code: "record_lower_bound_only", Severity: limit.Caution,
		Text: "No criterion of failure was met: the greatest load held is a lower bound, to be given on as a test stopped without failure."}
	mode = &limit.Notice{Code: "record_one_mode", Severity: limit.Caution,
		Text: "A test that ends by one mode is a lower bound for every other. State the mode when it is given on to an assessment of tests."}
	unread = &limit.Notice{Code: "record_settlement_falls", Severity: limit.Caution,
		Text: "Settlement falls while load rises: a gauge or its beam moved. What follows that stage was left out."}
	tilted = &limit.Notice{Code: "record_tilt", Severity: limit.Caution,
		Text: "The gauges differ by more than 20 % of their mean: the test was eccentric, and the worst edge is held against a tenth of the width."}
	extrapolated = &limit.Notice{Code: "record_extrapolated", Severity: limit.Caution,
		Text: "The hyperbola's loads are extrapolated: they are no result of a test, and its standard error says nothing of a wrong law. Never give them on as a load at failure."}
	slackens = &limit.Notice{Code: "record_rods_slacken", Severity: limit.Caution,
		Text: "The curve breaks where the rods go slack: that is no failure, but stiffness is less beyond it."}
	clay = &limit.Notice{Code: "record_creep_clay", Severity: limit.Caution,
		Text: "On clay the settlement is not yet linear in log time within a test of hours: the settlement at the design life is a lower bound."}
	creep = &limit.Notice{Code: "record_creep", Severity: limit.Assumption,
		Text: "The settlement at the design life runs the hold on in log time: drained granular ground, constant load and water, and no other stage of load between."}
	bounded = &limit.Notice{Code: "record_creep_bound", Severity: limit.Info,
		Text: "No measurable creep in a hold: its 95 % bound was used, not zero."}
	scale = &limit.Notice{Code: "record_scale", Severity: limit.Caution,
		Text: "The plate sees one and a half to two widths deep only, and measured ratios scatter far more than one formula tells; water that rises may double settlement. Test two sizes of plate."}
	tooWide = &limit.Notice{Code: "record_scale_too_great", Severity: limit.Caution,
		Text: "The footing is more than three times as wide as the plate (an engineering choice): the subgrade reaction is a bound only."}
	moduli = &limit.Notice{Code: "record_moduli", Severity: limit.Info,
		Text: "E_v by 1.5 r is some 5 % above E_PLT at a Poisson's ratio of 0.3. A reload is stiff only below the pressure that the ground has borne before."}
	preload = &limit.Notice{Code: "record_preload", Severity: limit.Caution,
		Text: "A preload by torque is known within 25 to 30 % only (from memory): measure elongation. To tighten again starts its loss anew."}
)

// Remarks returns the notices of the package in order.
func Remarks() []*limit.Notice {
	return []*limit.Notice{memory, lowerBound, mode, unread, tilted, extrapolated, slackens, clay, creep, bounded, scale, tooWide, moduli, preload}
}

// Notices appends the notices.
func (r *Result) Notices(l *limit.Notices) {
	var life, none bool
	for i := range r.Creep {
		life = life || r.Creep[i].Life > 0
		none = none || r.Creep[i].None
	}
	for _, n := range [...]struct {
		is     bool
		notice *limit.Notice
	}{
		{true, memory}, {!r.Failed(), lowerBound}, {true, mode}, {r.Unread > 0, unread}, {r.Tilted, tilted}, {r.Hyperbola.Known, extrapolated},
		{r.SlackBreak, slackens}, {life && r.in.Clay, clay}, {life, creep}, {none, bounded}, {r.Subgrade.Footing > 0, scale},
		{r.Subgrade.BoundOnly, tooWide}, {r.FirstLoading.Known, moduli}, {r.Slack > 0 || r.Fade.Known, preload},
	} {
		if n.is {
			l.Add(n.notice)
		}
	}
}
