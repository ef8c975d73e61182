package api

import (
	"strings"

	"footward.example/footward/internal/limit"
	footwardv1 "footward.example/footward/proto/footward/v1"
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
		if named(violations, f.Field) {
			continue
		}
		violations = append(violations, &footwardv1.FieldViolation{
			Field: f.Field, Description: f.Reason, Reason: reasons[f.Fault],
		})
	}
	return violations
}

func named(violations []*footwardv1.FieldViolation, field string) bool {
	for _, v := range violations {
		if inside(field, v.GetField()) || inside(v.GetField(), field) {
			return true
		}
	}
	return false
}

// inside reports whether field is outer or lies in it.
func inside(field, outer string) bool {
	rest, ok := strings.CutPrefix(field, outer)
	return ok && (rest == "" || rest[0] == '.' || rest[0] == '[')
}
