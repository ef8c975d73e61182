package trial

import (
	"cmp"
	"math"
	"slices"
)

// Route is how the characteristic value was found.
type Route uint8

// The routes.
const (
	NoRoute      Route = iota
	ByAnnexD           // all tests failed by the mode
	ByLikelihood       // some survived
	BySurvivors        // none failed: a lower bound
	ByFamily           // sizes of a family
)

// Result holds every intermediate value.
type Result struct {
	in      *Input
	counted []Test

	Failed, Survived int
	Mean             float64 // of the loads at failure [N]
	Deviation        float64 // s [N]
	Variation        float64 // V of the sample [-]
	LogMean          float64 // m_y [ln of N]
	LogDeviation     float64 // s_y of the sample [-]
	Used             float64 // V used [-]
	UsedLog          float64 // s_y used [-]
	Knowledge        Knowledge
	Floored          bool // V raised to 0.10
	Contradicted     bool // the sample contradicts the V agreed

	Route          Route
	Factor         float64 // k_n [-]
	FactorPrinted  bool
	FactorDirect   float64 // k_d,n [-]; 0: none
	DirectPrinted  bool
	Degrees        float64 // of freedom, with a prior [-]
	PriorDeviation float64 // s'' of the logarithms [-]
	Normal         float64 // X_k, normal [N]; not above 0: none
	LogNormal      float64 // X_k, log-normal [N]
	LikelyLog      float64 // ln of the most likely median [ln of N]
	LikelyError    float64 // its standard error [-]
	AsFailures     float64 // X_k with survivors counted as failures [N]
	Characteristic float64 // that stands [N]
	Reason         string  // why there is none
	Conversion     float64 // eta_d [-]; 0: not stated
	Design         float64 // by D7.2 [N]
	DesignReason   string
	Direct         float64 // by D7.3 [N]
	DirectReason   string
	Least          float64 // load that every counted test bore [N]
	Share          float64 // of the population above Least [-]
	Bound          float64 // X_k by the median's bound, all survived [N]
	Needed         int     // survivors for a 5 % fractile
	Trend          Trend
	Everything     float64 // X_k with the tests that were left out [N]; 0: none left out, or none found
	Removed        int

	Correlated Correlated
	Allowance  Allowance
	Resistance Resistance
	Model      Model
}

// Correlated is what EN 1997-1 7.6.2.2(8) comes to.
type Correlated struct {
	Mean, Least    float64 // xi1, xi2 used [-]
	Average, Worst float64 // mean and least load [N]
	Characteristic float64 // [N]
	Design         float64 // [N]; 0: no factor
}

// Trend is the slope of the loads with the order of testing.
type Trend struct {
	Slope, Error float64 // [N]
	Clear, Maybe bool
}

const notHomogeneous = "the coefficient of variation is above 0.30: the sample is not homogeneous, and no value stands without an engineer's ruling"

func reasonUnless(holds bool, reason string) string {
	if holds {
		return ""
	}
	return reason
}

// Assess evaluates the tests. It refuses what does not fit together.
func Assess(in *Input) (*Result, error) {
	if err := check(in); err != nil {
		return nil, err
	}
	r := assess(in, false)
	if r.Removed > 0 {
		r.Everything = assess(in, true).Characteristic
	}
	return r, nil
}

func assess(in *Input, everything bool) *Result {
	r := &Result{in: in, Knowledge: in.Variation.Knowledge, Least: math.Inf(1)}
	for _, t := range in.Tests {
		if t.Removed != "" && !everything {
			r.Removed++
			continue
		}
		r.counted = append(r.counted, t)
	}
	slices.SortStableFunc(r.counted, func(a, b Test) int { return cmp.Compare(a.Date, b.Date) })
	var failed, survived, all, logs []float64
	for _, t := range r.counted {
		all, logs = append(all, t.Load), append(logs, math.Log(t.Load))
		r.Least = min(r.Least, t.Load)
		if t.Failed && t.Mode == in.Mode {
			failed = append(failed, t.Load)
		} else {
			survived = append(survived, t.Load)
		}
	}
	r.Failed, r.Survived = len(failed), len(survived)
	r.Share, r.Needed = SurvivorShare(len(all), in.Confidence), SurvivorsNeeded(0.95, in.Confidence)
	if r.Survived == 0 {
		s, l := sampleOf(failed), sampleOf(logs)
		r.Mean, r.Deviation, r.Variation, r.LogMean, r.LogDeviation = s.mean, s.dev, s.dev/s.mean, l.mean, l.dev
		if !in.Family.Asked {
			r.trend(failed)
		}
	}
	r.Conversion = conversion(in.Conversions)
	switch {
	case r.Trend.Clear:
		r.Reason = "the loads follow the order of testing (learning or wear): this is not one population"
	case in.Family.Asked:
		r.family(failed)
	case r.Survived == 0:
		r.failedAll(all)
	default:
		r.someSurvived(failed, survived)
	}
	r.design()
	if !in.Family.Asked {
		r.correlate(all)
		r.Allowance, r.Resistance = allowance(r.counted), r.resistance(failed)
		if r.Reason == notHomogeneous || r.Trend.Clear {
			r.Correlated, r.Allowance, r.Resistance = Correlated{}, Allowance{Reason: r.Reason}, Resistance{Reason: r.Reason}
		}
	} else {
		reason := "the tests are of different sizes"
		r.Allowance, r.Resistance = Allowance{Reason: reason}, Resistance{Reason: reason}
	}
	return r
}

func conversion(all []Conversion) float64 {
	if len(all) == 0 {
		return 0
	}
	eta := 1.0
	for _, c := range all {
		eta *= c.Value
	}
	return eta
}

func (r *Result) trend(loads []float64) {
	n := len(loads)
	if n < 4 {
		return
	}
	order := make([]float64, n)
	for i := range order {
		order[i] = float64(i + 1)
	}
	b, se := slope(order, loads)
	certain := math.Abs(b) > Student(0.025, float64(n-2))*se && math.Abs(b) > 1e-9*r.Mean
	r.Trend = Trend{b, se, certain, math.Abs(b) > 2*se && math.Abs(b) > 1e-9*r.Mean && !certain}
}

// known settles the V that was agreed, and whether it may stand.
func (r *Result) known() {
	v := &r.in.Variation
	r.Used = v.Value
	if r.Used < floor && v.Comparable < 20 {
		r.Used, r.Floored = floor, true
	}
	r.UsedLog = LogDeviation(r.Used)
}

// failedAll is Annex D proper: every test failed by the mode.
func (r *Result) failedAll(all []float64) {
	n := len(all)
	if r.Knowledge == Known {
		r.known()
		r.Contradicted = n > 1 && r.Variation > ContradictionRatio(n)*r.Used
		if r.Contradicted {
			r.Knowledge = Unknown
		}
	}
	switch r.Knowledge {
	case Unknown:
		r.Floored = r.Variation < floor
		r.Used, r.UsedLog = max(floor, r.Variation), max(LogDeviation(floor), r.LogDeviation)
	case Prior:
		r.prior()
	}
	k := r.Knowledge == Known
	r.Factor, r.FactorPrinted = CharacteristicFactor(n, k)
	r.FactorDirect, r.DirectPrinted = DirectFactor(n, k)
	if r.Knowledge == Prior {
		spread := math.Sqrt(1 + 1/float64(n))
		r.Factor, r.FactorDirect = Student(0.05, r.Degrees)*spread, Student(0.001, r.Degrees)*spread
	}
	switch {
	case r.Factor == 0:
		r.Reason = "with V unknown at least 3 tests are needed (Table D1): V must be given, or more tests made"
		if r.Contradicted {
			r.Reason = "the two results contradict the V that was agreed: more tests are needed"
		}
		return
	case max(r.Used, r.Variation) > most:
		r.Reason = notHomogeneous
		return
	}
	r.Route = ByAnnexD
	r.values(r.Mean, r.LogMean)
	r.stand()
}

// values are X_k by both distributions, and X_d by the log-normal.
func (r *Result) values(mean, logMean float64) {
	r.Normal = mean * (1 - r.Factor*r.Used)
	r.LogNormal = math.Exp(logMean - r.Factor*r.UsedLog)
	if r.FactorDirect > 0 && r.Conversion > 0 {
		r.Direct = r.Conversion * math.Exp(logMean-r.FactorDirect*r.UsedLog)
	}
	switch {
	case r.Conversion == 0:
		r.DirectReason = noConversion
	case r.Knowledge == Unknown && r.Failed < 10:
		r.Direct, r.DirectReason = 0, "D7.3 with V unknown needs at least 10 tests to be of use: give V, or a partial factor for D7.2"
	}
}

// stand chooses the value that stands.
func (r *Result) stand() {
	switch {
	case r.in.LogNormal:
		r.Characteristic = r.LogNormal
	case !(r.Normal > 0):
		r.Reason = "k V is 1 or more, so that the normal distribution has no positive characteristic value: state the log-normal and why, or make more tests"
	default:
		r.Characteristic = min(r.Normal, r.LogNormal)
	}
}

func (r *Result) prior() {
	v, dof := &r.in.Variation, float64(r.Failed-1)
	r.Degrees = dof + v.Degrees
	r.Used = PooledDeviation(dof, r.Variation, v.Degrees, v.Value)
	r.PriorDeviation = PooledDeviation(dof, r.LogDeviation, v.Degrees, LogDeviation(v.Value))
	r.Floored = r.Used < floor
	r.Used, r.UsedLog = max(floor, r.Used), max(LogDeviation(floor), r.PriorDeviation)
}

const noConversion = "no conversion factor is stated: eta_d = 1 is a decision, not a default"

func (r *Result) design() {
	switch {
	case r.Characteristic == 0:
		r.Direct = 0
		r.DesignReason, r.DirectReason = "there is no characteristic value", "there is no characteristic value"
	case r.Conversion == 0:
		r.Direct = 0
		r.DesignReason, r.DirectReason = noConversion, noConversion
	case r.in.Factor == 0:
		r.DesignReason = "no partial factor is given: the characteristic value alone is found"
	default:
		r.Design = r.Conversion * r.Characteristic / r.in.Factor
	}
}
