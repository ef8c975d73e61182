package guard

import (
	"fmt"
	"strconv"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// Domain is that of every ErrorInfo; its reason is a CallReason.
const Domain = "footward.v1"

// statusBytes is the most that the violations of one status may take. A status
// travels in the trailers of HTTP/2, which common clients limit to 8 KiB of
// text: 4/3 of this, and the rest.
const statusBytes = 5 << 10

// InvalidArgument returns the status of a request whose fields were refused. It
// names them all; when they are more than a status can hold, the first of them,
// and the message says how many there are.
func InvalidArgument(violations []*footwardv1.FieldViolation) error {
	bad := &errdetails.BadRequest{}
	size := 0
	for _, v := range violations {
		one := &errdetails.BadRequest_FieldViolation{
			Field: v.GetField(), Description: v.GetDescription(), Reason: v.GetReason().String(),
		}
		if size += proto.Size(one) + 4; size > statusBytes && len(bad.FieldViolations) > 0 {
			break
		}
		bad.FieldViolations = append(bad.FieldViolations, one)
	}
	s := status.New(codes.InvalidArgument, message(violations, len(bad.GetFieldViolations())))
	return withDetails(s, bad, info(footwardv1.CallReason_CALL_REASON_FIELDS_REFUSED))
}

// AnswerTooLarge returns the status of a batch whose answers do not fit into a message of
// most bytes from item on, counted from 0, of all.
func AnswerTooLarge(item, all, most int) error {
	why := info(footwardv1.CallReason_CALL_REASON_ANSWER_TOO_LARGE)
	why.Metadata = map[string]string{"item": strconv.Itoa(item), "bytes": strconv.Itoa(most)}
	return withDetails(status.New(codes.OutOfRange, fmt.Sprintf(
		"the answers exceed %d bytes at item %d of %d: send fewer items in one message or ask for less detail",
		most, item+1, all)), why)
}

// messageRunes is the most characters of a field and its fault in a message.
const messageRunes = 300

func message(violations []*footwardv1.FieldViolation, named int) string {
	if len(violations) == 0 {
		return "the request was refused"
	}
	first := violations[0].GetDescription()
	if field := violations[0].GetField(); field != "" { // else it is the request as a whole
		first = field + ": " + first
	}
	if r := []rune(first); len(r) > messageRunes {
		first = string(r[:messageRunes]) + "..."
	}
	switch rest := len(violations) - 1; {
	case rest == 0:
		return first
	case named < len(violations):
		return fmt.Sprintf("%s (and %d more fields, of which the first %d are named)", first, rest, named-1)
	case rest == 1:
		return first + " (and 1 more field)"
	default:
		return fmt.Sprintf("%s (and %d more fields)", first, rest)
	}
}
