package trial

import (
	"math"
	"slices"
)

// someSurvived takes tests that did not fail by the mode for what they are.
func (r *Result) someSurvived(failed, survived []float64) {
	if r.Knowledge != Known {
		r.Reason = "lower bound only: with tests that did not fail by the mode V must be known beforehand; such few tests do not show it"
		return
	}
	r.known()
	if r.Used > most {
		r.Reason = notHomogeneous
		return
	}
	all := append(slices.Clone(failed), survived...)
	n := len(all)
	r.Factor, r.FactorPrinted = CharacteristicFactor(n, true)
	r.FactorDirect, r.DirectPrinted = DirectFactor(n, true)
	s := sampleOf(all)
	var logs float64
	for _, y := range all {
		logs += math.Log(y)
	}
	r.values(s.mean, logs/float64(n))
	if r.Failed == 0 {
		r.Route, r.Mean, r.LogMean = BySurvivors, s.mean, logs/float64(n)
		r.Bound = math.Exp(SurvivedMedian(survived, r.UsedLog, r.in.Confidence) - fractile*r.UsedLog)
		r.stand()
		return
	}
	mu, se := LikelyMedian(failed, survived, r.UsedLog)
	if r.Contradicted = strays(failed, n, mu, r.UsedLog); r.Contradicted {
		r.Direct = 0
		r.Reason = "the failures contradict the V that was agreed, and tests that did not fail do not show another: more tests to failure are needed"
		return
	}
	r.Route = ByLikelihood
	r.AsFailures = min(r.Normal, r.LogNormal)
	r.LikelyLog, r.LikelyError = mu, se
	spread := math.Hypot(r.UsedLog, r.LikelyError)
	r.Characteristic = math.Exp(r.LikelyLog - fractile*spread)
	if r.Conversion > 0 {
		r.Direct = r.Conversion * math.Exp(r.LikelyLog-direct*spread)
	}
}
