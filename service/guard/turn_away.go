package guard

import (
	"strings"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/protoadapt"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// Tally counts what the guard does, such as *telemetry.Metrics; none may be nil
// within, but the interface must not be.
type Tally interface {
	// Panicked counts a call that panicked.
	Panicked()
	// TurnedAway counts a call that was turned away whole.
	TurnedAway(reason footwardv1.CallReason)
}

// healthPrefix begins the methods that are open to everybody at any time, so that
// whoever runs the service can tell an overloaded one from a dead one.
const healthPrefix = "/grpc.health.v1.Health/"

func open(method string) bool { return strings.HasPrefix(method, healthPrefix) }

// turnAway counts a call and returns its status.
func turnAway(tally Tally, code codes.Code, reason footwardv1.CallReason, message string, more ...protoadapt.MessageV1) error {
	tally.TurnedAway(reason)
	return withDetails(status.New(code, message), append(more, info(reason))...)
}

// info is the ErrorInfo of a reason.
func info(reason footwardv1.CallReason) *errdetails.ErrorInfo {
	return &errdetails.ErrorInfo{Domain: Domain, Reason: strings.TrimPrefix(reason.String(), "CALL_REASON_")}
}

func withDetails(s *status.Status, details ...protoadapt.MessageV1) error {
	if with, err := s.WithDetails(details...); err == nil {
		s = with
	}
	return s.Err()
}
