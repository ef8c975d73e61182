package trial

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Quantiles of EN 1990 Annex D.
const (
	fractile = 1.645 // 5 %, standard normal
	direct   = 3.08  // what Table D2 is made with; its last column prints 3.04
	floor    = 0.10  // least coefficient of variation
	most     = 0.30  // beyond it a sample is not homogeneous
)

// Printed rows, by the number of tests.
var (
	characteristicKnown   = map[int]float64{1: 2.31, 2: 2.01, 3: 1.89, 4: 1.83, 5: 1.80, 6: 1.77, 8: 1.74, 10: 1.72, 20: 1.68, 30: 1.67}
	characteristicUnknown = map[int]float64{3: 3.37, 4: 2.63, 5: 2.33, 6: 2.18, 8: 2.00, 10: 1.92, 20: 1.76, 30: 1.73}
	directKnown           = map[int]float64{1: 4.36, 2: 3.77, 3: 3.56, 4: 3.44, 5: 3.37, 6: 3.33, 8: 3.27, 10: 3.23, 20: 3.16, 30: 3.13}
	directUnknown         = map[int]float64{4: 11.40, 5: 7.85, 6: 6.36, 8: 5.07, 10: 4.51, 20: 3.64, 30: 3.44}
)

// CharacteristicFactor returns k_n of n tests [-], and whether it is printed; 0
// where there is none. Between printed columns
//
//	k_n = 1.645 sqrt(1 + 1/n), or t(0.05; n-1) sqrt(1 + 1/n)
//
// Source: EN 1990:2002 Table D1 (from memory).
func CharacteristicFactor(n int, known bool) (k float64, printed bool) {
	if known {
		return factor(n, 1, characteristicKnown, func() float64 { return fractile })
	}
	return factor(n, 3, characteristicUnknown, func() float64 { return Student(0.05, float64(n-1)) })
}

// DirectFactor returns k_d,n of n tests [-], and whether it is printed; 0 where
// there is none. Between printed columns
//
//	k_d,n = 3.08 sqrt(1 + 1/n), or t(0.001; n-1) sqrt(1 + 1/n)
//
// Source: EN 1990:2002 Table D2 (from memory).
func DirectFactor(n int, known bool) (k float64, printed bool) {
	if known {
		return factor(n, 1, directKnown, func() float64 { return direct })
	}
	return factor(n, 4, directUnknown, func() float64 { return Student(0.001, float64(n-1)) })
}

func factor(n, least int, row map[int]float64, quantile func() float64) (float64, bool) {
	if n < least {
		return 0, false
	}
	if k, is := row[n]; is {
		return k, true
	}
	return quantile() * math.Sqrt(1+1/float64(n)), false
}

// Student returns the quantile that is exceeded with probability p [-].
//
// Source: Student's distribution with dof degrees of freedom.
func Student(p, dof float64) float64 {
	return -distuv.StudentsT{Mu: 0, Sigma: 1, Nu: dof}.Quantile(p)
}

// SurvivorShare returns the share of the population that bears more than the
// load n tests survived, at a confidence [-].
//
//	R = (1 - C)^(1/n)
//
// Source: binomial distribution without failure.
func SurvivorShare(n int, confidence float64) float64 {
	return math.Pow(1-confidence, 1/float64(n))
}

// SurvivorsNeeded returns how many tests without failure show a share at a
// confidence.
//
// Source: binomial distribution without failure.
func SurvivorsNeeded(share, confidence float64) int {
	return int(math.Ceil(math.Log(1-confidence)/math.Log(share) - 1e-9))
}

// ContradictionRatio returns how many times an agreed deviation the deviation of n
// tests may be before it contradicts it [-].
//
//	sqrt(chi2(0.95; n-1) / (n - 1))
//
// Source: chi-square test of a variance, 95 %.
func ContradictionRatio(n int) float64 {
	dof := float64(n - 1)
	return math.Sqrt(distuv.ChiSquared{K: dof}.Quantile(0.95) / dof)
}

// LogDeviation returns the deviation of the logarithms [-].
//
//	s_y = sqrt(ln(1 + V^2))
//
// Source: EN 1990:2002 D7.2 (from memory).
func LogDeviation(v float64) float64 { return math.Sqrt(math.Log1p(v * v)) }

// PooledDeviation returns the deviation of a sample and a prior [unit of s], with
// dof and prior degrees of freedom.
//
//	s'' = sqrt((nu s^2 + nu' s'^2) / (nu + nu'))
//
// Source: ISO 12491 (from memory).
func PooledDeviation(dof, s, prior, sPrior float64) float64 {
	return math.Sqrt((dof*s*s + prior*sPrior*sPrior) / (dof + prior))
}

// sample is what numbers come to.
type sample struct {
	n                       int
	sum, mean, squares, dev float64
}

func sampleOf(values []float64) (s sample) {
	s.n = len(values)
	for _, v := range values {
		s.sum += v
	}
	s.mean = s.sum / float64(s.n)
	for _, v := range values {
		s.squares += (v - s.mean) * (v - s.mean)
	}
	if s.n > 1 {
		s.dev = math.Sqrt(s.squares / float64(s.n-1))
	}
	return s
}

// slope is a straight line's, with its standard error; x must vary, n > 2.
func slope(x, y []float64) (b, se float64) {
	sx, sy := sampleOf(x), sampleOf(y)
	var xy float64
	for i := range x {
		xy += (x[i] - sx.mean) * (y[i] - sy.mean)
	}
	b = xy / sx.squares
	var rest float64
	for i := range x {
		r := y[i] - sy.mean - b*(x[i]-sx.mean)
		rest += r * r
	}
	return b, math.Sqrt(rest / float64(len(x)-2) / sx.squares)
}
