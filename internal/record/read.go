package record

import (
	"fmt"
	"math"

	"footward.example/footward/internal/limit"
)

// Point is what a stage comes to.
type Point struct {
	Phase      Phase
	Load       float64 // [N]
	Settlement float64 // mean of the gauges at the last reading [mm]
	Edge       float64 // greatest of the gauges [mm]
	Tilt       float64 // [rad]; 0: not asked
}

// Result holds every intermediate value.
type Result struct {
	in     *Input
	usable []Point

	Width  float64 // diameter or lesser side [mm]
	Area   float64 // [mm2]
	Points []Point // of every stage
	Unread int     // stage from which on the record is unusable, counted from 1; 0: none
	Tilted bool    // gauges differ by more than 20 % of the mean
	Most   float64 // greatest load that was held [N]

	Greatest             float64 // greatest stress of the first loading [MPa]
	FirstLoading, Reload Cycle
	Subgrade             Subgrade
	Creep                []Creep
	CreepLoad            float64 // [N]; 0: none
	Hyperbola            Hyperbola
	Slack                float64 // load at which the rods go slack [N]; 0: not asked
	SlackLeft            float64 // the same with the preload that embedment leaves [N]
	Lost                 float64 // preload that embedment takes [N]
	Fade                 Fade
	SlackBreak           bool // a break of the curve is the rods going slack

	Criteria   []Judged
	Governing  Criterion // NoCriterion: not failed
	Resistance float64   // at failure, or the greatest load held: a lower bound [N]

	creepBreak Break
}

// Failed tells whether a criterion was met.
func (r *Result) Failed() bool { return r.Governing != NoCriterion }

// Read evaluates a record. It refuses what does not fit together.
func Read(in *Input) (*Result, error) {
	var f limit.Faults
	Validate(in, &f)
	if err := f.Err(); err != nil {
		return nil, err
	}
	r := &Result{in: in}
	r.Width, r.Area = in.Diameter, math.Pi*in.Diameter*in.Diameter/4
	if in.Diameter == 0 {
		r.Width, r.Area = min(in.SizeX, in.SizeY), in.SizeX*in.SizeY
	}
	r.points()
	r.moduli()
	r.subgrade()
	r.creep()
	if c := &in.Clamp; c.Asked {
		r.Slack, r.Lost = SlackLoad(c), PreloadLoss(c)
		left := *c
		left.Preload -= r.Lost
		r.SlackLeft = SlackLoad(&left)
	}
	r.fade()
	r.hyperbola()
	r.failure()
	return r, nil
}

// points settles what each stage comes to, and from where on the record is of no
// use.
func (r *Result) points() {
	highest, deepest := 0.0, 0.0
	for i := range r.in.Stages {
		s := &r.in.Stages[i]
		gauges := s.Readings[len(s.Readings)-1].Gauges
		p := Point{Phase: s.Phase, Load: s.Load, Settlement: meanOf(gauges), Edge: edgeOf(gauges)}
		if r.in.GaugeRadius > 0 {
			p.Tilt = Tilt(gauges, r.in.GaugeRadius)
		}
		if spread(gauges) > 0.2*math.Abs(p.Settlement) && len(gauges) > 1 {
			r.Tilted = true
		}
		r.Points = append(r.Points, p)
		if s.Phase == First {
			if s.Load > highest && p.Settlement < deepest && r.Unread == 0 {
				r.Unread = i + 1
			}
			highest, deepest = max(highest, s.Load), max(deepest, p.Settlement)
		}
		if r.Unread == 0 && (!r.in.Plunged || i < len(r.in.Stages)-1) {
			r.Most = max(r.Most, s.Load)
		}
	}
	r.usable = r.Points
	if r.Unread > 0 {
		r.usable = r.Points[:r.Unread-1]
	}
}

// firstLoading are settlements and loads of the first loading.
func (r *Result) firstLoading() (s, p []float64) {
	for i := range r.usable {
		if v := &r.usable[i]; v.Phase == First {
			s, p = append(s, v.Settlement), append(p, v.Load)
		}
	}
	return s, p
}

// loadAt is the load of the first loading at a settlement, of the mean or of the
// worst edge where the plate tilts.
func (r *Result) loadAt(settlement float64, edge bool) (float64, bool) {
	var s0, p0 float64
	for i := range r.usable {
		v := &r.usable[i]
		if v.Phase != First {
			continue
		}
		s := v.Settlement
		if edge && r.Tilted {
			s = v.Edge
		}
		if s >= settlement && s > s0 {
			return p0 + (v.Load-p0)*(settlement-s0)/(s-s0), true
		}
		s0, p0 = max(s0, s), v.Load
	}
	return 0, false
}

// Tilt returns the slope of the plane through gauges at equal angles on a circle
// of a radius [rad].
//
// Source: least squares; exact for three gauges.
func Tilt(gauges []float64, radius float64) float64 {
	n := float64(len(gauges))
	if n < 3 {
		return 0
	}
	var a, b float64
	for i, s := range gauges {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		a += 2 * s * cos / n
		b += 2 * s * sin / n
	}
	return math.Hypot(a, b) / radius
}

func meanOf(v []float64) (m float64) {
	for _, s := range v {
		m += s / float64(len(v))
	}
	return m
}

func edgeOf(v []float64) float64 {
	m := math.Inf(-1)
	for _, s := range v {
		m = max(m, s)
	}
	return m
}

func spread(v []float64) float64 {
	least := math.Inf(1)
	for _, s := range v {
		least = min(least, s)
	}
	return edgeOf(v) - least
}

// Validate adds what does not fit together.
func Validate(in *Input, f *limit.Faults) {
	if !(in.Diameter > 0) && !(in.SizeX > 0 && in.SizeY > 0) {
		f.Add(limit.Missing, "plate", "needs a circle or a rectangle")
	}
	if len(in.Stages) == 0 {
		f.Add(limit.Missing, "stages", "at least one is needed")
	}
	for i := range in.Stages {
		in.stage(i, f)
	}
	if in.Damaged > len(in.Stages) {
		f.Add(limit.OutOfRange, "damage.stage", fmt.Sprintf("is %d, and there are %d stages", in.Damaged, len(in.Stages)))
	}
	if in.Damaged == 1 || in.Plunged && len(in.Stages) == 1 {
		f.Add(limit.Number, "stages", "no stage was held whole: the record shows no resistance")
	}
	if !(in.SubgradeAt > 0) {
		f.Add(limit.OutOfRange, "subgrade_settlement_mm", "must be above 0")
	}
	if c := &in.Clamp; c.Asked && !(c.Fill > 0 && c.Rods > 0) {
		f.Add(limit.OutOfRange, "clamp", "needs the stiffness of the fill and of the rods, above 0")
	}
	at := 0.0
	for i, v := range in.PreloadRecord {
		if !(v.Minutes > at) {
			f.Add(limit.Conflict, fmt.Sprintf("preload_record[%d].minutes", i), "must be above that of the reading before")
		}
		at = v.Minutes
	}
}

func (in *Input) stage(i int, f *limit.Faults) {
	s := &in.Stages[i]
	at := fmt.Sprintf("stages[%d].", i)
	if !(s.Load >= 0) || !(s.Load <= 1e9) {
		f.Add(limit.OutOfRange, at+"load_kn", "must be 0 or above, and finite")
	}
	if s.Phase == 0 {
		f.Add(limit.Missing, at+"phase", "must be stated")
	}
	if len(s.Readings) == 0 {
		f.Add(limit.Missing, at+"readings", "at least one is needed")
	}
	minutes := -1.0
	for j := range s.Readings {
		v := &s.Readings[j]
		path := fmt.Sprintf("%sreadings[%d].", at, j)
		if !(v.Minutes > minutes) {
			f.Add(limit.Conflict, path+"minutes", "must be above that of the reading before, counted from the start of the stage")
		}
		minutes = v.Minutes
		if len(v.Gauges) == 0 || len(v.Gauges) != len(in.Stages[0].firstGauges()) {
			f.Add(limit.Number, path+"settlements_mm", "every reading needs the same gauges, at least one")
		}
	}
}

func (s *Stage) firstGauges() []float64 {
	if len(s.Readings) == 0 {
		return nil
	}
	return s.Readings[0].Gauges
}
