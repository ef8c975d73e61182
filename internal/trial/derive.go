package trial

import (
	"fmt"
	"math"

	"footward.example/footward/internal/derive"
)

const (
	d72    = "EN 1990:2002 D7.2 (from memory)"
	d73    = "EN 1990:2002 D7.3 (from memory)"
	tested = "load tests"
)

// Derive writes the steps.
func (r *Result) Derive(d *derive.Sheet) {
	n := float64(len(r.counted))
	for i := range r.counted {
		d.Given(fmt.Sprintf("P_%d", i+1), r.counted[i].Load, "N", tested)
	}
	d.Given("n", n, "", tested)
	switch r.Route {
	case ByAnnexD, BySurvivors:
		r.deriveAnnexD(d, n)
	case ByLikelihood:
		r.deriveLikelihood(d)
	case ByFamily:
		r.deriveFamily(d)
	}
	r.deriveDesign(d)
	r.deriveBeside(d)
}

func (r *Result) deriveAnnexD(d *derive.Sheet, n float64) {
	d.Given("m_X", r.Mean, "N", "mean of the loads")
	d.Given("m_y", r.LogMean, "", "mean of the logarithms of the loads in N")
	if r.Survived == 0 && n > 1 {
		d.Given("s_x", r.Deviation, "N", "deviation with n - 1")
		d.Step("V_sample", "s_x / m_X", r.Variation, "", d72)
	}
	r.variation(d)
	r.factors(d)
	d.Step("X_k,normal", "m_X (1 - k_n V_X)", r.Normal, "N", d72)
	d.Step("X_k,log", "exp(m_y - k_n s_y)", r.LogNormal, "N", d72)
	if r.in.LogNormal {
		d.Step("X_k", "X_k,log", r.Characteristic, "N", "log-normal stated in the request")
	} else if r.Characteristic > 0 {
		d.Step("X_k", "min(X_k,normal, X_k,log)", r.Characteristic, "N", "lesser of both distributions")
	}
	if r.Route == BySurvivors {
		d.Given("C", r.in.Confidence, "", "confidence")
		d.Step("R", "(1 - C)^(1/n)", r.Share, "", "binomial, no failure")
		d.Step("X_k,bound", fmt.Sprintf("exp(mu_bound - %g s_y)", fractile), r.bound(d), "N", "median at confidence C")
	}
}

func (r *Result) bound(d *derive.Sheet) float64 {
	d.Given("mu_bound", math.Log(r.Bound)+fractile*r.UsedLog, "", "ln of the median that all tests survive with 1 - C")
	return r.Bound
}

func (r *Result) variation(d *derive.Sheet) {
	if r.Knowledge == Prior {
		d.Given("s_y", r.UsedLog, "", "ISO 12491 (from memory): sqrt((nu s^2 + nu' s'^2)/(nu + nu')), not below V 0.10")
		d.Factor("V_X", r.Used, "prior and sample: "+r.in.Variation.Source)
		return
	}
	d.Factor("V_X", r.Used, r.origin())
	if r.Knowledge == Known || r.UsedLog == LogDeviation(floor) {
		d.Step("s_y", "sqrt(ln(1 + V_X^2))", LogDeviation(max(r.Used, floor)), "", d72)
		if r.UsedLog != LogDeviation(max(r.Used, floor)) {
			d.Given("s_y", r.UsedLog, "", "deviation of the logarithms")
		}
		return
	}
	d.Given("s_y", r.UsedLog, "", "deviation of the logarithms, not below V 0.10")
}

// origin says where the V that was used comes from.
func (r *Result) origin() string {
	source := "of the sample"
	if r.Knowledge == Known {
		source = "agreed beforehand: " + r.in.Variation.Source
	}
	if r.Floored {
		source = "raised to 0.10; " + source
	}
	return source
}

func (r *Result) factors(d *derive.Sheet) {
	one := func(symbol, table string, k, quantile float64, p string, printed bool) {
		switch {
		case k == 0:
		case printed:
			d.Factor(symbol, k, "EN 1990:2002 Table "+table+" (from memory)")
		case d.FactorsOnly:
			d.Factor(symbol, k, "between columns of EN 1990:2002 Table "+table+" (from memory)")
		case r.Knowledge == Known:
			d.Step(symbol, fmt.Sprintf("%g sqrt(1 + 1/n)", quantile), k, "", "between columns of Table "+table)
		default:
			t := "t_" + p
			d.Given(t, k/math.Sqrt(1+1/float64(len(r.counted))), "", "Student's quantile")
			d.Step(symbol, t+" sqrt(1 + 1/n)", k, "", "between columns of Table "+table)
		}
	}
	one("k_n", "D1", r.Factor, fractile, "0.05", r.FactorPrinted && r.Knowledge != Prior)
	if r.Direct > 0 {
		one("k_d,n", "D2", r.FactorDirect, direct, "0.001", r.DirectPrinted && r.Knowledge != Prior)
	}
}

func (r *Result) deriveLikelihood(d *derive.Sheet) {
	d.Factor("V_X", r.Used, r.origin())
	d.Step("s_y", "sqrt(ln(1 + V_X^2))", r.UsedLog, "", d72)
	d.Given("mu", r.LikelyLog, "", "sum over failed (y - mu)/s_y^2 + sum over survived h(z)/s_y = 0")
	d.Given("se", r.LikelyError, "", "from the information at mu")
	d.Step("X_k", fmt.Sprintf("exp(mu - %g sqrt(s_y^2 + se^2))", fractile), r.Characteristic, "N", "censored likelihood, log-normal")
	d.Given("X_k,failures", r.AsFailures, "N", "beside: survivors counted as failures")
}

func (r *Result) deriveFamily(d *derive.Sheet) {
	m, f := &r.Model, &r.in.Family
	const d8 = "EN 1990:2002 D8 (from memory)"
	d.Given("b", m.Bias, "", "sum of r_e r_t over sum of r_t^2")
	d.Given("s_Delta", m.ErrorDeviation, "", "deviation of ln(r_e/(b r_t))")
	if m.Floored {
		d.Given("V_delta", m.ErrorVariation, "", "raised so that V_r is 0.10")
	} else {
		d.Step("V_delta", "sqrt(exp(s_Delta^2) - 1)", m.ErrorVariation, "", d8)
	}
	d.Factor("V_rt", f.Variation, f.Source)
	d.Step("V_r", "sqrt((V_delta^2 + 1) (V_rt^2 + 1) - 1)", m.Variation, "", d8)
	d.Step("Q", "sqrt(ln(1 + V_r^2))", LogDeviation(m.Variation), "", d8)
	d.Step("Q_rt", "sqrt(ln(1 + V_rt^2))", LogDeviation(f.Variation), "", d8)
	d.Step("Q_delta", "sqrt(ln(1 + V_delta^2))", LogDeviation(m.ErrorVariation), "", d8)
	k, _ := CharacteristicFactor(r.Failed, false)
	d.Factor("k_n", k, "EN 1990:2002 Table D1 (from memory)")
	d.Given("g_rt", f.Predicted, "N", "model at mean values")
	d.Step("X_k", "b g_rt exp(-1.64 Q_rt^2 / Q - k_n Q_delta^2 / Q - 0.5 Q^2)", r.Characteristic, "N", d8)
	if r.Direct > 0 {
		k, _ := DirectFactor(r.Failed, false)
		d.Given("k_d,n", k, "", "EN 1990:2002 Table D2 (from memory)")
		d.Step("r_d", "b g_rt exp(-3.04 Q_rt^2 / Q - k_d,n Q_delta^2 / Q - 0.5 Q^2)", m.Design*f.Predicted, "N", d8)
	}
}

func (r *Result) deriveDesign(d *derive.Sheet) {
	if r.Conversion > 0 && r.Characteristic > 0 {
		product := ""
		for i, c := range r.in.Conversions {
			name := fmt.Sprintf("eta_%d", i+1)
			d.Factor(name, c.Value, c.Reason)
			product += " " + name
		}
		d.Step("eta_d", product[1:], r.Conversion, "", "product of the conversion factors")
	}
	if r.Design > 0 {
		d.Factor("gamma_M", r.in.Factor, r.in.Source)
		d.Step("X_d", "eta_d X_k / gamma_M", r.Design, "N", d72)
	}
	if !(r.Direct > 0) {
		return
	}
	switch r.Route {
	case ByFamily:
		d.Step("X_d,direct", "eta_d r_d", r.Direct, "N", "EN 1990:2002 D8.3 (from memory)")
	case ByLikelihood:
		d.Step("X_d,direct", fmt.Sprintf("eta_d exp(mu - %g sqrt(s_y^2 + se^2))", direct), r.Direct, "N", d73)
	default:
		d.Step("X_d,direct", "eta_d exp(m_y - k_d,n s_y)", r.Direct, "N", d73)
	}
}

func (r *Result) deriveBeside(d *derive.Sheet) {
	if c := &r.Correlated; c.Characteristic > 0 {
		source := "EN 1997-1:2004 Table A.9"
		if r.in.Correlation.Mean > 0 {
			source = r.in.Correlation.Source
		}
		d.Factor("xi_1", c.Mean, source)
		d.Factor("xi_2", c.Least, source)
		d.Given("R_mean", c.Average, "N", tested)
		d.Given("R_min", c.Worst, "N", tested)
		d.Step("R_k", "min(R_mean / xi_1, R_min / xi_2)", c.Characteristic, "N", "EN 1997-1:2004 7.6.2.2(8) (from memory)")
		if c.Design > 0 {
			d.Factor("gamma_t", r.in.Correlation.Factor, r.in.Correlation.FactorSource)
			d.Step("R_d", "R_k / gamma_t", c.Design, "N", "EN 1997-1:2004 7.6.2.2")
		}
	}
	if a := &r.Allowance; a.Load > 0 {
		d.Given("P_defl", a.Deflection, "N", "least load at the deflection limit")
		d.Given("P_max", a.Tested, "N", "least of the largest loads")
		expression := "min(P_defl, P_max / 2.5)"
		if a.Failure > 0 {
			d.Given("P_fail", a.Failure, "N", "least load at failure")
			expression = "min(P_defl, P_max / 2.5, P_fail / 2.5)"
		}
		d.Step("P_allow", expression, a.Load, "N", "IBC 1709.3.1")
	}
	if s := &r.Resistance; s.Phi > 0 {
		const k2 = "AISI S100-16 K2.1.1 (from memory)"
		in := &r.in.States
		d.Given("C_phi", s.CPhi, "", k2)
		d.Given("V_Q", s.VQ, "", k2)
		d.Given("beta_0", in.Beta, "", "given, or by default")
		d.Given("V_M", in.Material, "", "given, or by default")
		d.Given("V_F", in.Fabrication, "", "given, or by default")
		d.Given("V_P", s.VP, "", "of the sample, not below 0.065")
		d.Given("C_P", s.CP, "", k2)
		d.Step("phi", "C_phi exp(-beta_0 sqrt(V_M^2 + V_F^2 + C_P V_P^2 + V_Q^2))", s.Phi, "", k2)
		d.Given("m_R", r.Mean, "N", "mean of the loads at failure")
		d.Step("phi_R", "phi m_R", s.Load, "N", k2)
	}
}
