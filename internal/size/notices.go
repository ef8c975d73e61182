package size

import (
	"slices"
	"strings"

	"footward.example/footward/internal/limit"
)

// The notices of the search of a base, in the order of an answer.
var (
	free = &limit.Notice{Code: "size_costs_nothing", Severity: limit.Assumption,
		Text: "By the rates these cost nothing: PARTS. The cheapest choice has as much of them as it likes."}
	ownStack = &limit.Notice{Code: "size_stack_of_base", Severity: limit.Caution,
		Text: "Loaded circle, shear key, other weight and modulus of the bed are those given for the base, whatever stack is offered: see that they are right for the one that is chosen."}
)

// SearchRemarks returns the notices of the search of a base beside those of its parts.
func SearchRemarks() []*limit.Notice { return []*limit.Notice{free, ownStack} }

// remark appends the notices of the search.
func (in *Input) remark(l *limit.Notices) {
	if parts := in.free(); parts != "" {
		l.Add(&limit.Notice{Code: free.Code, Severity: free.Severity, Text: strings.Replace(free.Text, "PARTS", parts, 1)})
	}
	b := &in.Base
	if s := &b.Below; len(in.Stacks) > 0 && (s.Stack.Shoe.Loaded > 0 || s.Stack.Key > 0 || s.OtherWeight > 0 || b.Modulus > 0) {
		l.Add(ownStack)
	}
}

// free names what costs nothing beside what costs something.
func (in *Input) free() string {
	if in.Rates == Mass {
		return ""
	}
	b, r := &in.Base, &in.Rates
	ownKg := len(in.Rods) > 0 && !slices.ContainsFunc(in.Rods, func(r Rod) bool { return !r.OwnKg || r.PerKg == 0 })
	rings := slices.ContainsFunc(in.Stacks, func(k Stack) bool { return k.RingsCost > 0 })
	var parts []string
	for _, v := range [...]struct {
		name string
		yes  bool
	}{
		{"plates", r.PlateKg == 0},
		{"rods", b.Base.HasRods && r.RodKg == 0 && r.EachRod == 0 && !ownKg},
		{"weld", b.HasWeld && r.WeldKg == 0},
		{"fill", b.Below.HasStack && r.FillKg == 0},
		{"rings", len(in.Stacks) > 0 && !rings},
	} {
		if v.yes {
			parts = append(parts, v.name)
		}
	}
	return strings.Join(parts, ", ")
}

var lightRings = &limit.Notice{Code: "compare_rings_weightless", Severity: limit.Caution,
	Text: "The rings are heavier than other_weight_kn: they are counted as material, and do not or not wholly press on the ground nor hold anything down."}

// CompareRemarks returns the notices of a comparison beside those of its count.
func CompareRemarks() []*limit.Notice { return []*limit.Notice{lightRings} }
