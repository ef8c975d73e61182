package trial

import "math"

// Model is what a family of sizes comes to by D8.
type Model struct {
	Bias           float64   // b [-]
	Errors         []float64 // Delta of each test [-]
	ErrorDeviation float64   // s_Delta [-]
	ErrorVariation float64   // V_delta, not below what makes V_r 0.10 [-]
	Variation      float64   // V_r [-]
	Characteristic float64   // r_k over g_rt [-]
	Design         float64   // r_d over g_rt [-]; 0: fewer than 4 tests
	Floored        bool
	Trend          bool // the error follows the size
}

// FamilyModel holds tests of different sizes against a model.
//
//	b = sum(r_e r_t)/sum(r_t^2),  Delta = ln(r_e/(b r_t)),  V_delta^2 = exp(s_Delta^2) - 1
//	V_r^2 = (V_delta^2 + 1)(V_rt^2 + 1) - 1
//	r_k = b g_rt exp(-1.64 a_rt Q_rt - k_n a_delta Q_delta - 0.5 Q^2)
//
// Source: EN 1990:2002 D8.2 and D8.3 (from memory).
func FamilyModel(tested, predicted []float64, vrt float64) (m Model) {
	var et, tt float64
	for i, t := range predicted {
		et += tested[i] * t
		tt += t * t
	}
	m.Bias = et / tt
	logs := make([]float64, len(predicted))
	for i, t := range predicted {
		m.Errors = append(m.Errors, math.Log(tested[i]/(m.Bias*t)))
		logs[i] = math.Log(t)
	}
	s := sampleOf(m.Errors)
	m.ErrorDeviation = s.dev
	m.ErrorVariation = math.Sqrt(math.Expm1(s.dev * s.dev))
	if least := math.Sqrt(max(0, (1+floor*floor)/(1+vrt*vrt)-1)); m.ErrorVariation < least {
		m.ErrorVariation, m.Floored = least, true
	}
	m.Variation = math.Sqrt((m.ErrorVariation*m.ErrorVariation+1)*(vrt*vrt+1) - 1)
	if n := len(tested); n >= 4 && sampleOf(logs).squares > 0 {
		b, se := slope(logs, m.Errors)
		m.Trend = math.Abs(b) > Student(0.025, float64(n-2))*se
	}
	n := len(tested)
	k, _ := CharacteristicFactor(n, false)
	m.Characteristic = m.ratio(1.64, k, vrt)
	if k, _ := DirectFactor(n, false); k > 0 {
		m.Design = m.ratio(3.04, k, vrt)
	}
	return m
}

func (m *Model) ratio(whole, k, vrt float64) float64 {
	q, qt, qd := LogDeviation(m.Variation), LogDeviation(vrt), LogDeviation(m.ErrorVariation)
	return m.Bias * math.Exp(-whole*qt*qt/q-k*qd*qd/q-0.5*q*q)
}

// family is r_k of the design size.
func (r *Result) family(failed []float64) {
	var predicted []float64
	for _, t := range r.counted {
		predicted = append(predicted, t.Predicted)
	}
	switch {
	case r.Survived > 0:
		r.Reason = "a test without failure of the mode has no place in a family of sizes (D8): load it to failure, or assess its size alone"
		return
	case len(failed) < 3:
		r.Reason = "a family of sizes needs at least 3 tests to failure (Table D1)"
		return
	}
	r.Model = FamilyModel(failed, predicted, r.in.Family.Variation)
	switch {
	case r.Model.Trend:
		r.Reason = "the error of the model follows the size: the model is biased, the sizes are not to be pooled"
		return
	case r.Model.Variation > most:
		r.Reason = notHomogeneous
		return
	}
	r.Route = ByFamily
	r.Characteristic = r.Model.Characteristic * r.in.Family.Predicted
	r.Direct = r.Model.Design * r.in.Family.Predicted * r.Conversion
	r.DirectReason = reasonUnless(r.Model.Design > 0, "a family of sizes needs at least 4 tests (Table D2)")
}
