package trial

import "footward.example/footward/internal/limit"

// The notices, in the order of an answer.
var (
	notStandard = &limit.Notice{Code: "trial_no_code", Severity: limit.Caution,
		Text: "No code gives the strength of a stack of rings rammed with fill: similarity of the specimens to the works, and every factor, are for an engineer to answer for (EN 1997-1 2.6: other ground at the works, time, scale)."}
	memory = &limit.Notice{Code: "trial_from_memory", Severity: limit.Caution,
		Text: "EN 1990 Annex D (its tables, D7, D8), 7.6.2.2(8) of EN 1997-1 and AISI S100 K2 are quoted from memory, formulas recomputed; Table A.9 and IBC 1709.3.1 were read. Compare with the edition in force."}
	reliability = &limit.Notice{Code: "trial_reliability", Severity: limit.Assumption,
		Text: "The factors of Annex D hold for a reliability index of 3.8 alone."}
	floored = &limit.Notice{Code: "trial_variation_floor", Severity: limit.Info,
		Text: "The coefficient of variation is below 0.10 and was taken as 0.10 (Annex D, from memory; here also where V is called known from fewer than 20 comparable tests, an engineering choice)."}
	contradicted = &limit.Notice{Code: "trial_variation_contradicted", Severity: limit.Caution,
		Text: "The sample contradicts the V that was agreed (95 %): V was taken as unknown."}
	lowerBound = &limit.Notice{Code: "trial_lower_bound_only", Severity: limit.Caution,
		Text: "Lower bound only: no test failed by the mode. Loads held count as failures with V known; that this is safe rests on V, which such tests do not show. Load one to failure."}
	censored = &limit.Notice{Code: "trial_survivors", Severity: limit.Info,
		Text: "Tests that were stopped, or ended by another mode, count as having borne their load: by likelihood, never as failures and never left out."}
	removed = &limit.Notice{Code: "trial_test_left_out", Severity: limit.Caution,
		Text: "A test was left out for a cause on record; the value with it is stated beside. Fewer than 10 results never prove an outlier by statistics, and a low one governs."}
	maybeTrend = &limit.Notice{Code: "trial_trend", Severity: limit.Caution,
		Text: "The loads may follow the order of testing (slope above 2 standard errors, below the 95 % bound of Student): look for learning or wear."}
	lessSafe = &limit.Notice{Code: "trial_correlation_less_safe", Severity: limit.Caution,
		Text: "The correlation factors of Table A.9 were calibrated on piles and carry no V: with V above 0.10 they are less safe than Annex D. For a stack they are an analogy to be agreed."}
	logNormal = &limit.Notice{Code: "trial_log_normal_stated", Severity: limit.Assumption,
		Text: "The log-normal value stands because the request states it; otherwise the lesser of normal and log-normal stands."}
	states = &limit.Notice{Code: "trial_united_states", Severity: limit.Assumption,
		Text: "phi follows the pattern of AISI S100 K2 for materials not listed, P_m, M_m and F_m 1, calibrated for 1.2 D + 1.6 L: snow and wind need their own. The 2.5 of IBC 1709.3.1 is a total factor for ASD and needs its procedure: twice the design load held 24 hours, three quarters of the deflection recovered. Do not apply it to a characteristic value."}
	model = &limit.Notice{Code: "trial_family", Severity: limit.Assumption,
		Text: "A family of sizes holds for one mode, within the sizes tested; V of the model's inputs must come from ground and fill, not from these tests."}
	mean = &limit.Notice{Code: "trial_not_for_stiffness", Severity: limit.Info,
		Text: "The values are of resistance. Stiffness and settlement want a cautious mean, and a test of hours says little of years."}
)

// Remarks returns the notices of the package in order.
func Remarks() []*limit.Notice {
	return []*limit.Notice{notStandard, memory, reliability, floored, contradicted, lowerBound, censored, removed, maybeTrend, lessSafe, logNormal, states, model, mean}
}

// Notices appends the notices.
func (r *Result) Notices(l *limit.Notices) {
	for _, n := range [...]struct {
		is     bool
		notice *limit.Notice
	}{
		{true, notStandard}, {true, memory}, {r.Characteristic > 0, reliability}, {r.Floored || r.Model.Floored, floored}, {r.Contradicted, contradicted},
		{r.Failed == 0, lowerBound}, {r.Survived > 0 && r.Failed > 0, censored}, {r.Removed > 0, removed}, {r.Trend.Maybe, maybeTrend},
		{r.Correlated.Characteristic > 0 && max(r.Variation, r.Used) > floor, lessSafe}, {r.in.LogNormal, logNormal},
		{r.Allowance.Load > 0 || r.Resistance.Phi > 0, states}, {r.in.Family.Asked, model}, {true, mean},
	} {
		if n.is {
			l.Add(n.notice)
		}
	}
}
