package ring

import (
	"footward.example/footward/internal/limit"
)

// The notices, in the order of an answer.
var (
	model = &limit.Notice{Code: "ring_outside_codes", Severity: limit.Caution,
		Text: "No code covers a free-standing stack of filled rings as a footing, and no capacity is published: the numbers alone verify nothing."}
	test = &limit.Notice{Code: "ring_load_test", Severity: limit.Caution,
		Text: "Confirm by a load test to at least 1.5 times the service load, with its eccentricity, or by the observational method (EN 1997-1 2.7)."}
	tyre = &limit.Notice{Code: "ring_tyre_strength", Severity: limit.Caution,
		Text: "Strength and stiffness of a tyre come only from a test of that type, size and age: no published value was found. Cut or worn tyres need their own."}
	joint = &limit.Notice{Code: "ring_joint", Severity: limit.Assumption,
		Text: "The joint usually governs a stiff ring. Shares for durability and joint that were not given are chosen on the cautious side, without a source."}
	rest = &limit.Notice{Code: "ring_at_rest", Severity: limit.Assumption,
		Text: "A ring that its design hoop force stretches too little for the fill to become active bears more than the active pressure, up to that at rest by the characteristic angle, under design loads too (EN 1997-1 9.5.2(2); Annex C, not compared with the printed edition)."}
	open = &limit.Notice{Code: "ring_open_fill_moves", Severity: limit.Caution,
		Text: "The fill beside the plate is open, and by statics cannot react to what confines the loaded fill: cover it so that it cannot rise, or widen the plate. A load test stands for it only through a plate no larger than this one."}
	levelled = &limit.Notice{Code: "ring_levelled", Severity: limit.Assumption,
		Text: "What the fill settles by tightening of the rods is taken to be levelled out then: the settlement is that of load and own weight."}
	eaten = &limit.Notice{Code: "ring_corrosion", Severity: limit.Assumption,
		Text: "Of steel rings wall and joint lose the exposure's loss on both faces where wall_thickness_mm is given; a durability without it is taken to hold the corrosion. Rings of other materials are not reduced by it."}
	once = &limit.Notice{Code: "ring_one_effect", Severity: limit.Info,
		Text: "Confinement by the ring and apparent cohesion are one effect written twice: never add them."}
	friction = &limit.Notice{Code: "ring_wall_friction", Severity: limit.Assumption,
		Text: "Friction on the wall of the ring (Janssen) is ignored for the fill; the ring must carry it as vertical load."}
	spread = &limit.Notice{Code: "ring_load_spread", Severity: limit.Assumption,
		Text: "The load is taken to spread 2 down to 1 across inside the rings, which is an approximation. The loaded circle of the shoe counts only as far as its outstand can bend."}
	far = &limit.Notice{Code: "ring_eccentricity", Severity: limit.Caution,
		Text: "The edge lifts (eccentricity beyond D/8): beyond 0.3 D special precautions are due (EN 1997-1 6.5.4 likewise for rectangles)."}
	loose = &limit.Notice{Code: "ring_fill_untested", Severity: limit.Assumption,
		Text: "Density and friction of the fill were not measured: hand-rammed fill is not taken above Sn-90, nor its friction above 38 degrees."}
	groundwork = &limit.Notice{Code: "ring_ground_apart", Severity: limit.Caution,
		Text: "The ground under the stack is not checked here, nor uplift."}
	site = &limit.Notice{Code: "ring_site", Severity: limit.Caution,
		Text: "Not for slopes, machine load, collapsible, expansive or liquefiable ground, or water above the base; the base is below frost or the fill not susceptible."}
	drainage = &limit.Notice{Code: "ring_drainage", Severity: limit.Caution,
		Text: "Keep the stack drained, with a geotextile against fines: washed-out or lost fill takes all strength, as does a ring that opens."}
	ageing = &limit.Notice{Code: "ring_ageing", Severity: limit.Caution,
		Text: "Protect the rings from fire, ultraviolet light and corrosion; tyres leach: ask what the site allows."}
	bedding = &limit.Notice{Code: "ring_bedding", Severity: limit.Assumption,
		Text: "No allowance for bedding of shoe and tiers was given: the settlement leaves it out, and that of the ground."}
	loss = &limit.Notice{Code: "ring_preload_lost", Severity: limit.Caution,
		Text: "Preload presses the fill but is never counted on: a fraction of a millimetre takes it. Tighten again after the first load; rods carry tension only after slack."}
)

// Remarks returns the notices of the part in order.
func Remarks() []*limit.Notice {
	return []*limit.Notice{model, test, tyre, joint, rest, open, levelled, eaten, once, friction, spread, far, loose, groundwork, site, drainage, ageing, bedding, loss}
}

// Notices appends the notices.
func (r *Result) Notices(l *limit.Notices) {
	var hasTyre, lifts, untested, atRest bool
	for i := range r.Tiers {
		t, out := &r.in.Tiers[i], &r.Tiers[i]
		hasTyre = hasTyre || t.Ring.Kind == Tyre
		untested = untested || !t.Fill.Tested
		atRest = atRest || out.K > out.Ka
		for _, f := range [...]*Face{&out.Top, &out.Within, &out.Bottom, &out.ServiceTop, &out.ServiceWithin, &out.ServiceBottom} {
			lifts = lifts || f.Lost || f.E > f.Diameter/8
		}
	}
	rods := &r.in.Rods
	for _, n := range [...]struct {
		due bool
		n   *limit.Notice
	}{
		{true, model}, {true, test}, {hasTyre, tyre}, {true, joint}, {atRest, rest},
		{r.Heave.Depth > 0 && !(r.Heave.Needed <= r.Heave.Holds), open},
		{rods.Count > 0 && rods.Preload > 0, levelled}, {r.in.Exposed, eaten}, {true, once}, {true, friction}, {true, spread},
		{lifts, far}, {untested, loose}, {true, groundwork}, {true, site}, {true, drainage}, {true, ageing},
		{r.in.Bedding == 0, bedding}, {rods.Count > 0 && max(rods.Preload, rods.Needed) > 0, loss},
	} {
		if n.due {
			l.Add(n.n)
		}
	}
}
