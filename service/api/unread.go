package api

import (
	"strings"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

// beside collects all that is wrong with an item that holds more than a check can
// have beside it, such as a field of no check or two checks.
func (c *Check) beside(item *footwardv1.CheckItem) []*footwardv1.FieldViolation {
	violations := guard.Unread(item)
	m := item.ProtoReflect()
	kind := footwardv1.CheckKind_CHECK_KIND_UNSPECIFIED
	if f := m.WhichOneof(m.Descriptor().Oneofs().ByName("check")); f != nil {
		kind = footwardv1.CheckKind(footwardv1.CheckKind_value["CHECK_KIND_"+strings.ToUpper(string(f.Name()))])
		check := m.Get(f).Message().Interface()
		for _, v := range append(c.validator.Violations(check), guard.Foreign(check)...) {
			v.Field = string(f.Name()) + "." + v.GetField()
			violations = append(violations, v)
		}
	}
	c.metrics.Refused(kind, violations)
	return violations
}

// refusedOutcome is an outcome without an answer.
func refusedOutcome(violations []*footwardv1.FieldViolation) *footwardv1.CheckOutcome_Refusal {
	return &footwardv1.CheckOutcome_Refusal{Refusal: &footwardv1.Refusal{Violations: violations}}
}
