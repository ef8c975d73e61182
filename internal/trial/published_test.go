package trial_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/trial"
	"footward.example/footward/testdata/evidence"
)

// five are tests to failure of one size [N].
var five = []float64{212e3, 187e3, 240e3, 205e3, 221e3}

// failing is a population that failed by one mode.
func failing(loads ...float64) *trial.Input {
	in := &trial.Input{Mode: trial.RingBurst, Confidence: 0.75, States: trial.States{Beta: 3.5, Material: 0.1, Fabrication: 0.15}}
	for _, p := range loads {
		in.Tests = append(in.Tests, trial.Test{Load: p, Failed: true, Mode: trial.RingBurst})
	}
	return in
}

// surviving adds tests that were stopped.
func surviving(in *trial.Input, loads ...float64) *trial.Input {
	for _, p := range loads {
		in.Tests = append(in.Tests, trial.Test{Load: p})
	}
	return in
}

func known(in *trial.Input, v float64) *trial.Input {
	in.Variation = trial.Variation{Knowledge: trial.Known, Value: v}
	return in
}

func assessed(t testing.TB, in *trial.Input) *trial.Result {
	t.Helper()
	r, err := trial.Assess(in)
	require.NoError(t, err)
	return r
}

func newtons(all []float64) (out []float64) {
	for _, v := range all {
		out = append(out, v*1e3)
	}
	return out
}

// TestFiguresOfPopulations holds the kernel against every figure of testdata.
func TestFiguresOfPopulations(t *testing.T) {
	all, err := evidence.Loads()
	require.NoError(t, err)
	for _, f := range all {
		if strings.HasPrefix(f.ID, "B-") {
			continue
		}
		t.Run(f.ID, func(t *testing.T) {
			require.NotEmpty(t, f.Source)
			require.NotEmpty(t, f.Provenance)
			got := figure(t, &f)
			require.Len(t, got, len(f.Expect))
			for i, want := range f.Expect {
				assert.InDelta(t, want, got[i], f.Tolerance+1e-12)
			}
		})
	}
}

func one(v float64) []float64 { return []float64{v} }

func figure(t *testing.T, f *evidence.Figure) []float64 {
	id := f.ID
	switch {
	case strings.HasPrefix(id, "D1-"), strings.HasPrefix(id, "D2-"):
		n := math.MaxInt32
		if v := int(f.Number("n")); v > 0 {
			n = v
		}
		factor := trial.CharacteristicFactor
		if strings.HasPrefix(id, "D2-") {
			factor = trial.DirectFactor
		}
		k, _ := factor(n, f.Inputs["V_X"] == "known")
		return one(k)
	case strings.HasPrefix(id, "T-"):
		return one(trial.Student(f.Number("upper_tail"), f.Number("dof")))
	case strings.HasPrefix(id, "US-"):
		return states(t, f)
	case strings.HasPrefix(id, "D8-"):
		m := trial.FamilyModel(f.Numbers("r_e"), f.Numbers("r_t"), f.Number("V_rt"))
		return one(map[string]float64{"D8-Vdelta": m.ErrorVariation, "D8-Vr": m.Variation, "D8-rk": m.Characteristic, "D8-rd": m.Design}[id])
	case strings.HasPrefix(id, "A-zero-need"):
		return one(float64(trial.SurvivorsNeeded(f.Number("reliability"), f.Number("confidence"))))
	case strings.HasPrefix(id, "A-zero"):
		return one(trial.SurvivorShare(int(f.Number("n")), f.Number("confidence")))
	case strings.HasPrefix(id, "A-proof"):
		in := known(surviving(failing(), make([]float64, int(f.Number("n")))...), f.Number("V_X"))
		for i := range in.Tests {
			in.Tests[i].Load = 1000
		}
		in.Confidence = f.Number("confidence")
		return one(assessed(t, in).Bound / 1000)
	case strings.HasPrefix(id, "A-cens"):
		r := assessed(t, known(surviving(failing(newtons(f.Numbers("failed_kN"))...), newtons(f.Numbers("survived_kN"))...), f.Number("V_X")))
		return one(map[string]float64{"A-cens-median": math.Exp(r.LikelyLog) / 1e3, "A-cens-se": r.LikelyError, "A-cens-Xk": r.Characteristic / 1e3}[id])
	case strings.HasPrefix(id, "A-xi-table"):
		a, b := trial.CorrelationFactors(int(f.Number("n")))
		return []float64{a, b}
	case id == "A-xi-DA2": // R_k is given: a single load, xi 1
		in := failing(f.Number("R_ck_kN") * 1e3)
		in.Correlation = trial.Correlation{Mean: 1, Least: 1, Source: "given", Factor: f.Number("gamma_t")}
		return one(assessed(t, in).Correlated.Design / 1e3)
	case strings.HasPrefix(id, "A-xi"):
		in := failing(newtons(f.Numbers("measured_kN"))...)
		c := &in.Correlation
		if c.Mean, c.Least, c.Source = f.Number("xi1"), f.Number("xi2"), "given"; id == "A-xi-Rcd" {
			c.Mean, c.Least, c.Factor = 1.38, 1.15, f.Number("gamma_t")
			return one(assessed(t, in).Correlated.Design / 1e3)
		}
		return one(assessed(t, in).Correlated.Characteristic / 1e3)
	}
	return sample(t, f)
}

func states(t *testing.T, f *evidence.Figure) []float64 {
	switch {
	case f.ID == "US-IBC":
		in := failing(f.Number("failure_kN")*1e3, f.Number("max_applied_kN")*1e3)
		for i := range in.Tests {
			in.Tests[i].Deflection = f.Number("load_at_deflection_limit_kN") * 1e3
		}
		return one(assessed(t, in).Allowance.Load / 1e3)
	case strings.HasPrefix(f.ID, "US-CP"):
		return one(trial.SampleCorrection(int(f.Number("n"))))
	case strings.HasPrefix(f.ID, "US-Cphi"):
		c, _ := trial.LoadCalibration(f.Number("D/L"))
		return one(c)
	case strings.HasPrefix(f.ID, "US-VQ"):
		_, v := trial.LoadCalibration(f.Number("D/L"))
		return one(v)
	}
	c, v := f.Number("C_phi"), f.Number("V_Q")
	if c == 0 {
		c, v = trial.LoadCalibration(f.Number("D/L"))
	}
	return one(trial.ResistanceFactor(int(f.Number("n")), f.Number("beta0"), f.Number("V_M"), f.Number("V_F"), f.Number("V_P"), c, v))
}

func sample(t *testing.T, f *evidence.Figure) []float64 {
	r := assessed(t, failing(five...))
	tenth, more := assessed(t, known(failing(five...), 0.10)), assessed(t, known(failing(five...), 0.15))
	more.Direct = math.Exp(more.LogMean - more.FactorDirect*more.UsedLog)
	single := assessed(t, known(failing(1000), 0.20))
	k, _ := trial.DirectFactor(5, false)
	pooled := trial.PooledDeviation(2, 0.08, 10, 0.15)
	all := map[string]float64{
		"A-sd": r.Deviation / 1e3, "A-V": r.Variation, "A-Xk-normal-unknown": r.Normal / 1e3, "A-Xk-normal-known": tenth.Normal / 1e3,
		"A-ln-s_y": r.LogDeviation, "A-ln-floor": trial.LogDeviation(0.10), "A-Xk-ln-unknown": r.LogNormal / 1e3,
		"A-Xk-ln-known15": more.LogNormal / 1e3, "A-Xd-ln-unknown": math.Exp(r.LogMean-k*r.UsedLog) / 1e3, "A-Xd-ln-known15": more.Direct / 1e3,
		"A-one-test-normal": single.Normal / 1e3, "A-one-test-ln": single.LogNormal / 1e3,
		"A-bayes-s2": trial.PooledDeviation(4, 4.6, 6, 4.4), "A-bayes-x": 29.2 - trial.Student(0.05, 10)*4.5*math.Sqrt(1.2),
		"A-pred-x": 29.2 - trial.Student(0.05, 4)*4.6*math.Sqrt(1.2), "A-bayes-ln": math.Exp(-trial.Student(0.05, 12) * pooled * math.Sqrt(4.0/3)),
		"A-V-check-n3": trial.ContradictionRatio(3),
	}
	v, has := all[f.ID]
	require.True(t, has, "nothing is held against the figure")
	return one(v)
}
