package settle

import (
	"math"

	"footward.example/footward/internal/limit"
)

// The notices, in the order of an answer.
var (
	spread = &limit.Notice{Code: "settle_spread", Severity: limit.Caution,
		Text: "Predicted settlement is uncertain by a factor of about 2 whatever the method: confirm it by levelling from the first load on."}
	apart = &limit.Notice{Code: "settle_methods_differ", Severity: limit.Caution,
		Text: "The two methods for sand differ by more than a factor of 2: look at cone resistance and blow count again, and design for the greater."}
	single = &limit.Notice{Code: "settle_not_added", Severity: limit.Assumption,
		Text: "Layers with an oedometer test are clay and consolidate; the methods for sand leave them out. What different methods find of different layers is added in settle_total. Immediate settlement and creep of clay come on top (EN 1997-1 6.6.2(2)), often a tenth or more of the consolidation of soft clay."}
	usual = &limit.Notice{Code: "settle_routine_only", Severity: limit.Caution,
		Text: "The default limits, 50 mm and 1/500, are for routine structures; EN 1997-1 Annex H excludes structures that are out of the ordinary or loaded very unevenly, as ring pads may be. Halve the distortion where the middle rises against the ends."}
	creep = &limit.Notice{Code: "settle_no_creep", Severity: limit.Assumption,
		Text: "Settlement of sand is given without growth in time: give creep_years for it."}
	rest = &limit.Notice{Code: "settle_loads_at_rest", Severity: limit.Assumption,
		Text: "Growth in time is that of loads at rest; under loads that come and go it is several times greater and not covered."}
	untimed = &limit.Notice{Code: "settle_years_sand_only", Severity: limit.Assumption,
		Text: "creep_years acts on sand alone: consolidation is the whole primary one, however long it takes, and creep after it is not counted."}
	bottom = &limit.Notice{Code: "settle_rigid_bottom", Severity: limit.Assumption,
		Text: "Below the last layer the ground is taken as rigid: layers must reach down to rock or dense ground, or half_space be set."}
	water = &limit.Notice{Code: "settle_water_at_surface", Severity: limit.Assumption,
		Text: "Water is taken at the surface, the safe side for cone resistance and consolidation: give water_depth_mm or dry."}
	drier = &limit.Notice{Code: "settle_water_blow_count", Severity: limit.Caution,
		Text: "Water is taken at the surface, which is not the safe side for the method of Burland and Burbidge: deeper water raises its figure, by a third of the stress that the buoyancy takes at the base. Give water_depth_mm or dry."}
	slope = &limit.Notice{Code: "settle_no_tilt_limit", Severity: limit.Caution,
		Text: "The footing tilts and no limit was given: what the ground makes of it is let pass unchecked up to 1/500, what turns above the ground whatever it is. Say what column, doors and rails tolerate."}
	centre = &limit.Notice{Code: "settle_stress_below_centre", Severity: limit.Info,
		Text: "Consolidation takes the stress below the centre of a flexible footing, which is on the safe side for a rigid one."}
	mean = &limit.Notice{Code: "settle_mean_stress", Severity: limit.Caution,
		Text: "The 2:1 spread is a mean: near the base it lies below the stress under the centre and must not be used for a thin soft layer."}
	coarse = &limit.Notice{Code: "settle_one_slice", Severity: limit.Caution,
		Text: "Each clay layer is taken as one slice with a mean stress by Simpson's rule, which is rough for thick layers."}
	lifts = &limit.Notice{Code: "settle_edge_lifts", Severity: limit.Caution,
		Text: "The moment is so great against the net force that an edge may lift: settlement and tilt are then greater than given."}
	lighter = &limit.Notice{Code: "settle_unloading", Severity: limit.Info,
		Text: "A stage is lighter than one before it: its figures are those of first loading, and the limit states take the greatest of the stages."}
	organic = &limit.Notice{Code: "settle_out_of_scope_ground", Severity: limit.Caution,
		Text: "Peat, organic soil, mud and loose fill are out of scope, and so are repeated loads, swelling, collapsible and liquefiable ground."}
	nothing = &limit.Notice{Code: "settle_no_method", Severity: limit.Caution,
		Text: "No method can be used: give modulus, cone resistance, blow count or oedometer data of the layers."}
)

// Remarks returns the notices of the part in order.
func Remarks() []*limit.Notice {
	return []*limit.Notice{spread, apart, single, usual, creep, rest, untimed, bottom, water, drier, slope, centre, mean, coarse, lifts, lighter, organic, nothing}
}

// Notices appends the notices.
func (r *Result) Notices(l *limit.Notices) {
	in := r.in
	sand := r.NoSchmertmann == "" || r.NoBurland == ""
	clay := r.NoConsolidation == ""
	add := func(when bool, n *limit.Notice) {
		if when {
			l.Add(n)
		}
	}
	l.Add(spread)
	add(r.differ(), apart)
	l.Add(single)
	l.Add(usual)
	add(sand && in.Years == 0, creep)
	add(sand && in.Years > 0, rest)
	add(clay && in.Years > 0, untimed)
	add(!in.HalfSpace, bottom)
	surface := !in.Dry && in.Water == 0
	add((r.NoSchmertmann == "" || clay) && surface, water)
	add(r.NoBurland == "" && surface && in.Depth > 0, drier)
	add(in.Limits.Tilt == 0 && r.Stages[r.greatest(tiltOf)].Tilt > 0, slope)
	add(clay && in.Spread == Boussinesq, centre)
	add(clay && in.Spread == TwoToOne, mean)
	add(clay && in.Simpson, coarse)
	add(r.lifts(), lifts)
	add(r.lighter(), lighter)
	l.Add(organic)
	add(!sand && !clay && r.NoElastic != "", nothing)
}

// differ says whether the two methods for sand lie more than a factor of 2 apart
// in any stage.
func (r *Result) differ() bool {
	if r.NoSchmertmann != "" || r.NoBurland != "" {
		return false
	}
	for i := range r.Stages {
		a, b := r.Stages[i].Schmertmann, r.Stages[i].Burland
		if max(a, b) > 2*min(a, b) {
			return true
		}
	}
	return false
}

// lifts says whether a moment leaves the core of the base in any stage.
func (r *Result) lifts() bool {
	for i := range r.in.Stages {
		s, n := &r.in.Stages[i], r.Stages[i].Pressure*r.Area
		if r.in.Shape == Circle {
			if math.Hypot(s.Mx, s.My) > n*r.Width/8 {
				return true
			}
			continue
		}
		if math.Abs(s.Mx)/r.in.SizeY+math.Abs(s.My)/r.in.SizeX > n/6 {
			return true
		}
	}
	return false
}

func (r *Result) lighter() bool {
	for i := 1; i < len(r.Stages); i++ {
		if r.Stages[i].Pressure < r.Stages[i-1].Pressure {
			return true
		}
	}
	return false
}
