package record

import "math"

// Criterion is one way to call a test failed.
type Criterion uint8

// The criteria.
const (
	NoCriterion Criterion = iota
	Plunge
	TenthOfWidth
	Tangents
	CreepBreak
	Damage
)

// Judged is one criterion held against the record.
type Judged struct {
	Criterion Criterion
	Met       bool
	Load      float64 // [N]; 0: not met
	Reason    string  // why it was not met, or could not be judged
}

// TangentLoad returns where an initial line P = k0 s meets a final line
// P = P1 + k1 s [N].
//
//	P* = k0 P1/(k0 - k1)
//
// Source: tangent intersection.
func TangentLoad(k0, p1, k1 float64) float64 { return k0 * p1 / (k0 - k1) }

// Hyperbola is s/P = c2 + c1 s by least squares.
type Hyperbola struct {
	Known    bool
	Ultimate float64 // 1/c1, at a settlement without end [N]
	Initial  float64 // 1/c2 [N/mm]
	Error    float64 // of the ultimate [N]
	Tenth    float64 // at a tenth of the width [N]
	Bound    float64 // least of Tenth and 1.25 of the greatest load [N]
	Reason   string
}

// HyperbolaOf returns the hyperbola of settlements [mm] and loads [N].
//
// Source: Kondner 1963, Chin 1970 (from memory).
func HyperbolaOf(s, p []float64) (h Hyperbola, ok bool) {
	ratio := make([]float64, len(s))
	for i := range s {
		if !(s[i] > 0 && p[i] > 0) {
			return h, false
		}
		ratio[i] = s[i] / p[i]
	}
	l, ok := LineOf(s, ratio)
	if !ok || l.Slope <= 0 || l.Intercept <= 0 || l.Slope < 2*l.Error {
		return h, false
	}
	h.Ultimate, h.Initial = 1/l.Slope, 1/l.Intercept
	h.Error = l.Error * h.Ultimate * h.Ultimate
	return h, true
}

// at is the load at a settlement.
func (h *Hyperbola) at(s float64) float64 { return s / (1/h.Initial + s/h.Ultimate) }

func (r *Result) hyperbola() {
	s, p := r.firstLoading()
	h := &r.Hyperbola
	if len(s) < 5 {
		h.Reason = "fewer than 5 stages of load"
		return
	}
	found, ok := HyperbolaOf(s, p)
	*h = found
	switch {
	case !ok:
		h.Reason = "the record does not curve as a hyperbola does"
	case r.Most < 0.5*h.Ultimate:
		h.Reason = "the greatest load is below half of the load it would run to"
	case !h.fits(s, p, r.Most):
		h.Reason = "the loads stray from the hyperbola by more than 3 % of the greatest, or to one side in a run"
	case r.Slack > 0 && r.Slack < r.Most:
		h.Reason = "the rods go slack within the record"
	default:
		h.Known = true
		h.Tenth = h.at(0.1 * r.Width)
		h.Bound = min(h.Tenth, 1.25*r.Most)
	}
}

// fits tells whether the loads lie about the hyperbola without a run.
func (h *Hyperbola) fits(s, p []float64, most float64) bool {
	run, side := 0, 0.0
	for i := range s {
		rest := p[i] - h.at(s[i])
		if math.Abs(rest) > 0.03*most {
			return false
		}
		if math.Abs(rest) < 1e-3*most { // rounding of readings is no run
			run = 0
			continue
		}
		if now := math.Copysign(1, rest); now != side {
			run, side = 0, now
		}
		if run++; run > len(s)/2 {
			return false
		}
	}
	return true
}

// failure holds every criterion against the record; the least governs.
func (r *Result) failure() {
	r.Criteria = []Judged{r.plunge(), r.tenth(), r.tangents(), r.creepCriterion(), r.damage()}
	r.Resistance = r.Most
	for _, c := range r.Criteria {
		if c.Met && (r.Governing == NoCriterion || c.Load < r.Resistance) {
			r.Resistance, r.Governing = c.Load, c.Criterion
		}
	}
}

func (r *Result) plunge() Judged {
	if !r.in.Plunged {
		return Judged{Criterion: Plunge, Reason: "every load was held"}
	}
	// The load that could not be held is no resistance: the greatest that was held is.
	held := 0.0
	for i := range r.in.Stages[:len(r.in.Stages)-1] {
		held = max(held, r.in.Stages[i].Load)
	}
	return Judged{Criterion: Plunge, Met: true, Load: held}
}

func (r *Result) tenth() Judged {
	load, ok := r.loadAt(0.1*r.Width, true)
	if !ok { // a reload may go on where the first loading ended
		held := 0.0
		for i := range r.usable {
			v := &r.usable[i]
			if v.Settlement >= 0.1*r.Width || r.Tilted && v.Edge >= 0.1*r.Width {
				return Judged{Criterion: TenthOfWidth, Met: true, Load: held}
			}
			held = max(held, v.Load)
		}
		return Judged{Criterion: TenthOfWidth, Reason: "the settlement stays below a tenth of the width"}
	}
	return Judged{Criterion: TenthOfWidth, Met: true, Load: load}
}

// steepest is the share of the initial stiffness below which the final line counts
// as failure; an engineering choice.
const steepest = 0.2

func (r *Result) tangents() Judged {
	s, p := r.firstLoading()
	j := Judged{Criterion: Tangents}
	if len(s) < 6 {
		j.Reason = "fewer than 6 stages of load: no two tangents"
		return j
	}
	b, ok := BreakOf(s, p)
	switch {
	case !ok || b.Past.Slope > steepest*b.Before.Slope:
		j.Reason = "the final line keeps more than a fifth of the initial stiffness: no failure"
	case r.Slack > 0 && math.Abs(b.Value-r.Slack) <= 0.15*r.Slack:
		j.Reason = "the break is where the rods go slack, which is no failure"
		r.SlackBreak = true
	default:
		j.Met, j.Load = true, min(b.Value, r.Most)
	}
	return j
}

func (r *Result) creepCriterion() Judged {
	if r.CreepLoad == 0 {
		return Judged{Criterion: CreepBreak, Reason: "creep does not double from one stage to the next at a break, or fewer than 4 holds tell"}
	}
	return Judged{Criterion: CreepBreak, Met: true, Load: r.CreepLoad}
}

func (r *Result) damage() Judged {
	if r.in.Damaged == 0 {
		return Judged{Criterion: Damage, Reason: "none was recorded"}
	}
	// Damage seen at a stage: the load before it was borne whole.
	before := 0.0
	for i := range r.in.Stages[:r.in.Damaged-1] {
		before = max(before, r.in.Stages[i].Load)
	}
	return Judged{Criterion: Damage, Met: true, Load: before, Reason: r.in.Damage}
}
