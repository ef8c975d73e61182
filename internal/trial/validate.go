package trial

import (
	"fmt"

	"footward.example/footward/internal/limit"
)

// Validate adds what does not fit together.
func Validate(in *Input, f *limit.Faults) {
	counted := 0
	var first *Test
	predicted := 0
	for i := range in.Tests {
		t := &in.Tests[i]
		at := func(name string) string { return fmt.Sprintf("tests[%d].%s", i, name) }
		if !(t.Load > 0) || !(t.Load <= 1e9) {
			f.Add(limit.OutOfRange, at("load_kn"), "must be above 0 and finite")
		}
		if t.Failed != (t.Mode != NoMode) {
			f.Add(limit.Conflict, at("mode"), "goes with a test that failed, and only with one")
		}
		if t.Date != "" && !isDate(t.Date) {
			f.Add(limit.UnknownValue, at("date"), "must be a date by ISO 8601, such as 2026-04-30")
		}
		if (t.Date == "") != (in.Tests[0].Date == "") {
			f.Add(limit.Conflict, at("date"), "must be given for every test or for none: the order of testing is read from it")
		}
		if t.Deflection > t.Load {
			f.Add(limit.Conflict, at("deflection_load_kn"), "is above the load of the test")
		}
		if t.Removed != "" {
			continue
		}
		counted++
		if t.Predicted > 0 {
			predicted++
		}
		if first == nil {
			first = t
			continue
		}
		if t.Specimen != first.Specimen {
			f.Add(limit.Conflict, at("specimen"), "differs: tests of unlike specimens are not one population, assess them apart")
		}
		if in.Mode == GroundFailed && t.Ground != first.Ground {
			f.Add(limit.Conflict, at("ground"), "differs: failure of the ground is pooled only within one ground unit")
		}
		if t.Size != first.Size && !in.Family.Asked {
			f.Add(limit.Conflict, at("size_mm"), "differs: sizes are one family only through a model (family, with predicted_kn of every test)")
		}
	}
	if counted == 0 {
		f.Add(limit.Number, "tests", "at least one test must count")
	}
	if in.Family.Asked && predicted < counted {
		f.Add(limit.Missing, "tests", "each needs predicted_kn for a family of sizes")
	}
	if in.Mode == NoMode {
		f.Add(limit.Missing, "mode", "must be stated: whose resistance is asked")
	}
	in.numbers(f)
}

func (in *Input) numbers(f *limit.Faults) {
	f.Range("confidence", in.Confidence, 0.5, 0.999, 1, "")
	if in.Variation.Knowledge != Unknown {
		f.Range("variation.value", in.Variation.Value, 0.01, 1, 1, "")
	}
	if in.Variation.Knowledge == Prior {
		f.Range("variation.prior_degrees_of_freedom", in.Variation.Degrees, 1, 100, 1, "")
	}
	if in.Factor != 0 {
		f.Range("partial_factor.value", in.Factor, 1, 5, 1, "")
	}
	for i, c := range in.Conversions {
		f.Range(fmt.Sprintf("conversion_factors[%d].value", i), c.Value, 0.1, 1, 1, "")
	}
	c := &in.Correlation
	if (c.Mean == 0) != (c.Least == 0) {
		f.Add(limit.Conflict, "correlation.xi_least", "xi_mean and xi_least go together")
	}
	if c.Mean != 0 {
		f.Range("correlation.xi_mean", c.Mean, 1, 3, 1, "")
		f.Range("correlation.xi_least", c.Least, 1, 3, 1, "")
		if c.Source == "" {
			f.Add(limit.Missing, "correlation.source", "must say where the factors come from")
		}
	}
}

func isDate(s string) bool {
	if len(s) != 10 || s[4] != '-' || s[7] != '-' {
		return false
	}
	for i := range len(s) {
		if i != 4 && i != 7 && (s[i] < '0' || s[i] > '9') {
			return false
		}
	}
	month, day := s[5:7], s[8:]
	return month >= "01" && month <= "12" && day >= "01" && day <= "31"
}

func check(in *Input) error {
	var f limit.Faults
	Validate(in, &f)
	return f.Err()
}
