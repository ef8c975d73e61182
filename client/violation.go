package client

import (
	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/status"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// Violations returns the fields for which a call was refused, or nil when that
// is not why it failed. A wrapped error will do. In CheckMany and StreamChecks a
// bad item does not fail the call: its outcome holds the same violations.
func Violations(err error) []*footwardv1.FieldViolation {
	s, ok := status.FromError(err)
	if err == nil || !ok {
		return nil
	}
	var out []*footwardv1.FieldViolation
	for _, d := range s.Details() {
		refused, ok := d.(*errdetails.BadRequest)
		if !ok {
			continue
		}
		for _, v := range refused.GetFieldViolations() {
			out = append(out, &footwardv1.FieldViolation{
				Field: v.GetField(), Description: v.GetDescription(),
				// A reason that a newer service has added reads as unspecified.
				Reason: footwardv1.FieldReason(footwardv1.FieldReason_value[v.GetReason()]),
			})
		}
	}
	return out
}
