package api

import (
	"footward.example/footward/internal/limit"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

// reasons maps the kernel's faults to the contract's.
var reasons = [...]footwardv1.FieldReason{
	limit.Missing:      footwardv1.FieldReason_FIELD_REASON_MISSING,
	limit.OutOfRange:   footwardv1.FieldReason_FIELD_REASON_OUT_OF_RANGE,
	limit.UnknownValue: footwardv1.FieldReason_FIELD_REASON_UNKNOWN_VALUE,
	limit.Conflict:     footwardv1.FieldReason_FIELD_REASON_CONFLICT,
	limit.Geometry:     footwardv1.FieldReason_FIELD_REASON_GEOMETRY,
	limit.Number:       footwardv1.FieldReason_FIELD_REASON_COUNT,
}

// merge adds to the schema's violations the kernel's faults on other fields: a
// field that the schema refused already, or that lies inside one, is not named
// twice.
func merge(violations []*footwardv1.FieldViolation, faults limit.Faults) []*footwardv1.FieldViolation {
	for _, f := range faults {
		if guard.Named(violations, f.Field) {
			continue
		}
		violations = append(violations, &footwardv1.FieldViolation{
			Field: f.Field, Description: f.Reason, Reason: reasons[f.Fault],
		})
	}
	return violations
}
