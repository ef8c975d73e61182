package trial

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"
)

// LikelyMedian returns the most likely logarithm of the median [ln of N] and its
// standard error [-], where some tests failed, others survived, and the deviation s of the logarithms
// is known.
//
//	sum_failed (y - mu)/s^2 + sum_survived h((mu - y)/s)/s = 0,  h = phi/Phi
//	1/se^2 = n_f/s^2 + sum h (h + z)/s^2
//
// Source: right-censored maximum likelihood, log-normal.
func LikelyMedian(failed, survived []float64, s float64) (mu, se float64) {
	score := func(mu float64) (v float64) {
		for _, y := range failed {
			v += (math.Log(y) - mu) / s
		}
		for _, y := range survived {
			v += hazard((mu - math.Log(y)) / s)
		}
		return v
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, all := range [][]float64{failed, survived} {
		for _, y := range all {
			low, high = min(low, math.Log(y)), max(high, math.Log(y))
		}
	}
	// Every survivor adds less than one deviation beyond the highest load once mu is
	// there, so that the root lies below this end.
	mu = root(score, low, high+s*(1+float64(len(survived))))
	information := float64(len(failed))
	for _, y := range survived {
		z := (mu - math.Log(y)) / s
		h := hazard(z)
		information += h * (h + z)
	}
	return mu, s / math.Sqrt(information)
}

// SurvivedMedian returns the logarithm that the median exceeds at a confidence [ln of N],
// where every test survived its load.
//
//	product of Phi((mu - y)/s) = 1 - C
//
// Source: probability that all survive; for equal loads mu = y + s Phi^-1((1-C)^(1/n)).
func SurvivedMedian(survived []float64, s, confidence float64) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for _, y := range survived {
		low, high = min(low, math.Log(y)), max(high, math.Log(y))
	}
	return root(func(mu float64) float64 {
		lasting := math.Log(1 - confidence)
		for _, y := range survived {
			lasting -= math.Log(distuv.UnitNormal.CDF((mu - math.Log(y)) / s))
		}
		return lasting
	}, low-8*s, high+8*s)
}

// strays tells whether failures among n tests contradict a known deviation of the
// logarithms: by their own scatter, or by a lowest one that n tests have with less than 5 %.
func strays(failed []float64, n int, mu, s float64) bool {
	logs := make([]float64, len(failed))
	for i, y := range failed {
		logs[i] = math.Log(y)
	}
	if len(logs) > 1 && sampleOf(logs).dev > ContradictionRatio(len(logs))*s {
		return true
	}
	low := distuv.UnitNormal.CDF((slices.Min(logs) - mu) / s)
	return 1-math.Pow(1-low, float64(n)) < 0.05
}

// hazard is phi/Phi, by its asymptote where Phi has no digits left.
func hazard(z float64) float64 {
	if z < -30 {
		return -z
	}
	return distuv.UnitNormal.Prob(z) / distuv.UnitNormal.CDF(z)
}

// root halves until a falling function changes sign.
func root(f func(float64) float64, low, high float64) float64 {
	for range 200 {
		middle := (low + high) / 2
		if middle == low || middle == high {
			break
		}
		if f(middle) > 0 {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}
