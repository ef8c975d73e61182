package base

import (
	"math"
	"strconv"

	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
)

// components are the parts of actions as the derivation names them.
func components(a *geom.Actions) [6]struct {
	symbol string
	v      float64
	unit   string
} {
	return [6]struct {
		symbol string
		v      float64
		unit   string
	}{{"N", a.N, "N"}, {"V_x", a.Vx, "N"}, {"V_y", a.Vy, "N"}, {"M_x", a.Mx, "Nmm"}, {"M_y", a.My, "Nmm"}, {"T", a.T, "Nmm"}}
}

// deriveCase writes a case as the sum of its actions, each times its factor.
func (in *ColumnInput) deriveCase(s *derive.Sheet, k *Case) {
	if len(k.Factors) != len(in.Actions) || len(in.Actions) == 0 {
		return
	}
	var sums [6]string
	for i := range in.Actions {
		if k.Factors[i] == 0 {
			continue
		}
		at := "_a" + strconv.Itoa(i+1)
		s.Given("gamma"+at, k.Factors[i], "", "factor of "+in.Actions[i].Name+" in this combination")
		for j, v := range components(&in.Actions[i].Forces) {
			if v.v == 0 {
				continue
			}
			s.Given(v.symbol+at, v.v, v.unit, in.Actions[i].Name)
			if sums[j] != "" {
				sums[j] += " + "
			}
			sums[j] += "gamma" + at + " " + v.symbol + at
		}
	}
	for j, v := range components(&k.Actions) {
		if sums[j] != "" {
			s.Step(v.symbol+",c", sums[j], v.v, v.unit, "sum of the combination")
		}
	}
}

// deriveAmount writes a part of a case by its amount, as what deriveCase has written.
func (in *ColumnInput) deriveAmount(s *derive.Sheet, k *Case, symbol string, v float64, unit string) {
	const clause = "of the case, by its amount"
	for _, a := range in.Actions {
		for _, part := range components(&a.Forces) {
			if part.symbol == symbol && part.v != 0 && len(k.Factors) == len(in.Actions) && v != 0 {
				s.Step(symbol, "abs("+symbol+",c)", math.Abs(v), unit, clause)
				return
			}
		}
	}
	s.Given(symbol, math.Abs(v), unit, clause)
}
