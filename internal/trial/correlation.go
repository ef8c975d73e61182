package trial

import "slices"

// correlationMean and correlationLeast are EN 1997-1 Table A.9, 1 to 5 tests.
var (
	correlationMean  = [...]float64{1.40, 1.30, 1.20, 1.10, 1.00}
	correlationLeast = [...]float64{1.40, 1.20, 1.05, 1.00, 1.00}
)

// CorrelationFactors returns xi1 and xi2 of n tests [-].
//
// Source: EN 1997-1:2004 Table A.9.
func CorrelationFactors(n int) (mean, least float64) {
	i := min(n, len(correlationMean)) - 1
	return correlationMean[i], correlationLeast[i]
}

func (r *Result) correlate(loads []float64) {
	in, c := &r.in.Correlation, &r.Correlated
	c.Mean, c.Least = in.Mean, in.Least
	if c.Mean == 0 {
		c.Mean, c.Least = CorrelationFactors(len(loads))
	}
	if in.Stiff {
		c.Mean, c.Least = max(1, c.Mean/1.1), max(1, c.Least/1.1)
	}
	c.Average, c.Worst = sampleOf(loads).mean, slices.Min(loads)
	c.Characteristic = min(c.Average/c.Mean, c.Worst/c.Least)
	if in.Factor > 0 {
		c.Design = c.Characteristic / in.Factor
	}
}
