package derive_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/derive"
)

func TestStepPutsNumbersIn(t *testing.T) {
	var s derive.Sheet
	s.Factor("gamma_M2", 1.25, "EN 1993-1-8:2005 Table 2.1")
	s.Given("f_ub", 800, "MPa", "")
	s.Given("A_s", 245, "mm2", "")
	s.Given("F'_nt", -3, "MPa", "")
	s.Step("F_t,Rd", "0.9 f_ub A_s / gamma_M2", 141120, "N", "EN 1993-1-8:2005 Table 3.4")
	s.Step("u", "max(F_t,Rd, 1e3) + F'_nt", 141117, "", "")

	require.Len(t, s.Steps, 5)
	assert.Equal(t, "0.9 800 245 / 1.25", s.Steps[3].Numbers)
	assert.Equal(t, "max(141120, 1e3) + (-3)", s.Steps[4].Numbers)
	require.NoError(t, derive.Verify(s.Steps))
}

func TestVerifyFindsWrongSteps(t *testing.T) {
	for name, write := range map[string]func(*derive.Sheet){
		"wrong value":       func(s *derive.Sheet) { s.Step("c", "2 a", 5, "", "") },
		"name not noted":    func(s *derive.Sheet) { s.Step("c", "2 b", 4, "", "") },
		"open parenthesis":  func(s *derive.Sheet) { s.Step("c", "2 (a", 4, "", "") },
		"operand missing":   func(s *derive.Sheet) { s.Step("c", "2 *", 4, "", "") },
		"two for one value": func(s *derive.Sheet) { s.Step("c", "sqrt(a, a)", 4, "", "") },
	} {
		t.Run(name, func(t *testing.T) {
			var s derive.Sheet
			s.Given("a", 2, "", "")
			write(&s)
			assert.Error(t, derive.Verify(s.Steps))
		})
	}
}

func TestStepWithoutAFiniteValueIsLeftOut(t *testing.T) {
	var s derive.Sheet
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1} {
		s.Step("u", "1", v, "", "")
	}
	assert.Len(t, s.Steps, 1)
}

func TestEvaluate(t *testing.T) {
	for text, want := range map[string]float64{
		"2 3 / 4 5":            2 * 3. / 4 * 5, // from left to right
		"2 + 3 4":              14,
		"-2^2":                 -4,
		"2^-1":                 0.5,
		"2^3^2":                512,
		"sqrt(2 (1 + 1)) pi":   2 * math.Pi,
		"min(3, 2, 4) max(1)":  2,
		"1 - (-3)":             4,
		"1.5e-2 200":           3,
		"abs(-2) + ln(exp(1))": 3,
		"acos(cos(0.3))":       0.3,
		"sin(0.5)^1.5":         math.Pow(math.Sin(0.5), 1.5),
		"tan(0.5) - 1e0":       math.Tan(0.5) - 1,
		"3 (2) (1)":            6,
	} {
		got, err := derive.Evaluate(text)
		if assert.NoError(t, err, text) {
			assert.InDelta(t, want, got, 1e-12, text)
		}
	}
}

func TestNumberKeepsSixDigits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-1e12, 1e12).Draw(t, "v")
		got, err := derive.Evaluate(derive.Number(v))
		if err != nil || !(math.Abs(got-v) <= 1e-5*math.Abs(v)) {
			t.Fatalf("%g is written %s", v, derive.Number(v))
		}
	})
}

func TestEvaluateNeverPanics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, _ = derive.Evaluate(rapid.String().Draw(t, "text"))
	})
}

func TestFactorsOnlyKeepsNoSteps(t *testing.T) {
	var s derive.Sheet
	s.Given("a", 1, "mm", "")
	s.Reset(true)
	s.Given("a", 1, "mm", "")
	s.Step("b", "2 a", 2, "mm", "")
	s.Factor("phi", 0.9, "AISC 360-22 F1")
	assert.Empty(t, s.Steps)
	assert.Len(t, s.Factors, 1)
}
