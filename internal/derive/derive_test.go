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

func TestStepWritesAsManyDigitsAsItsValueNeeds(t *testing.T) {
	f := 233.99949
	var s derive.Sheet
	s.Given("f_rv", f, "MPa", "")
	s.Step("F'_nt", "1.3 600 - 2 600 f_rv / 360", 1.3*600-2*600*f/360, "MPa", "")
	assert.Equal(t, "1.3 600 - 2 600 233.99949 / 360", s.Steps[1].Numbers)
	require.NoError(t, derive.Verify(s.Steps))
}

func TestStepThatCancelsWhollyIsAValue(t *testing.T) {
	a := 1e9 / 3
	var s derive.Sheet
	s.Given("a", a, "mm", "")
	s.Given("b", a*(1-1e-15), "mm", "")
	s.Step("c", "a - b", 1e-6, "mm", "")    // within what rounding hides
	s.Step("d", "2 (a - b)", 1, "mm", "")   // not within it: the formula is wrong
	s.Step("e", "sqrt(a - a)", 1, "mm", "") // nor here
	assert.Empty(t, s.Steps[2].Expression)
	assert.Empty(t, s.Steps[2].Numbers)
	assert.NotEmpty(t, s.Steps[3].Numbers)
	assert.NotEmpty(t, s.Steps[4].Numbers)
	assert.Error(t, derive.Verify(s.Steps))
}

func TestStepsOfRandomNumbersAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(1e-6, 1e6)
		a, b, c := v.Draw(t, "a"), v.Draw(t, "b"), v.Draw(t, "c")
		var s derive.Sheet
		s.Given("a", a, "", "")
		s.Given("b", b, "", "")
		s.Given("c", c, "", "")
		s.Step("d", "a b / c - a (b / c - 1e-3)", a*b/c-a*(b/c-1e-3), "", "")
		s.Step("e", "sqrt(max(a, b)^2 - a^2) + acos(min(a, b) / max(a, b))", math.Sqrt(max(a, b)*max(a, b)-a*a)+math.Acos(min(a, b)/max(a, b)), "", "")
		s.Step("f", "tan(a / (a + b)) exp(-c / (a + c)) ln(1 + b)", math.Tan(a/(a+b))*math.Exp(-c/(a+c))*math.Log(1+b), "", "")
		if err := derive.Verify(s.Steps); err != nil {
			t.Fatal(err)
		}
		var wrong derive.Sheet
		wrong.Given("a", a, "", "")
		wrong.Given("b", b, "", "")
		wrong.Step("g", "a b", 1.01*a*b, "", "")
		if derive.Verify(wrong.Steps) == nil && a*b > 1e-6 {
			t.Fatal("a wrong formula is hidden")
		}
	})
}
