package web

import (
	"context"
	"encoding/base64"
	"errors"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	_ "google.golang.org/genproto/googleapis/rpc/errdetails" // the details of a status, by name
	spb "google.golang.org/genproto/googleapis/rpc/status"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"

	"footward.example/footward/service/web/body"
)

// refusal is why a request does not become a call, or ends early.
type refusal struct {
	http int
	code codes.Code
	text string
}

func (f *refusal) status() *status.Status { return status.New(f.code, f.text) }

// refuse answers as refused calls are answered.
func refuse(w http.ResponseWriter, f *refusal) { writeStatus(w, f.http, f.status()) }

// retryAfter is when to try again what was turned away for want of room [s].
const retryAfter = "1"

// writeStatus answers with a google.rpc.Status.
func writeStatus(w http.ResponseWriter, code int, s *status.Status) {
	h := w.Header()
	switch {
	case code == http.StatusUnauthorized:
		h.Set("WWW-Authenticate", "Bearer")
	case (code == http.StatusTooManyRequests || code == http.StatusServiceUnavailable) && h.Get("Retry-After") == "":
		h.Set("Retry-After", retryAfter)
	}
	h.Set("Content-Type", asJSON)
	text := append(statusText(s), '\n')
	h.Set("Content-Length", strconv.Itoa(len(text)))
	w.WriteHeader(code)
	_, _ = w.Write(text)
}

// statusText is a status as JSON. Details of a kind that nobody here knows are
// left out.
func statusText(s *status.Status) []byte {
	m := s.Proto()
	m.Message = strings.ToValidUTF8(m.GetMessage(), "\ufffd")
	text, err := body.Write(m)
	if err != nil {
		m.Details = nil
		text, _ = body.Write(m) // cannot fail: two plain fields
	}
	return text
}

// said is the status of a call by what gRPC left in its headers.
func said(ctx context.Context, h http.Header) *status.Status {
	text, ended := h.Get("Grpc-Status"), ctx.Err()
	switch {
	// It was left before it could say any, or says cancelled of what was too late.
	case text == "" && ended != nil, text != "0" && errors.Is(ended, context.DeadlineExceeded):
		return status.New(status.FromContextError(ended).Code(), context.Cause(ctx).Error())
	case text == "":
		return status.New(codes.Unavailable, "the call was broken off")
	}
	if details, err := base64.RawStdEncoding.DecodeString(h.Get("Grpc-Status-Details-Bin")); err == nil && len(details) > 0 {
		m := &spb.Status{}
		if proto.Unmarshal(details, m) == nil {
			return status.FromProto(m)
		}
	}
	code, err := strconv.ParseUint(text, 10, 32)
	if err != nil {
		code = uint64(codes.Unknown)
	}
	message := h.Get("Grpc-Message")
	if plain, err := url.PathUnescape(message); err == nil {
		message = plain
	}
	return status.New(codes.Code(code), message)
}

// statuses of HTTP by those of calls; the rest are 500.
var statuses = map[codes.Code]int{
	codes.InvalidArgument: http.StatusBadRequest, codes.FailedPrecondition: http.StatusBadRequest, codes.OutOfRange: http.StatusBadRequest,
	codes.Unauthenticated: http.StatusUnauthorized, codes.PermissionDenied: http.StatusForbidden, codes.NotFound: http.StatusNotFound,
	codes.ResourceExhausted: http.StatusTooManyRequests, codes.Unimplemented: http.StatusNotImplemented,
	codes.Unavailable: http.StatusServiceUnavailable, codes.DeadlineExceeded: http.StatusGatewayTimeout,
	codes.Canceled: statusLeft,
}

// statusLeft is what is commonly noted of a caller who left; nobody reads it.
const statusLeft = 499

func httpStatus(code codes.Code) int {
	if s, ok := statuses[code]; ok {
		return s
	}
	return http.StatusInternalServerError
}

// passOn gives the headers and trailers that a handler has set to the caller.
func passOn(from, to http.Header) {
	for name, values := range from {
		name = strings.TrimPrefix(name, http.TrailerPrefix)
		switch key := http.CanonicalHeaderKey(name); {
		case key == "Content-Type" || key == "Trailer" || key == "Date" || strings.HasPrefix(key, "Grpc-"):
		default:
			to[key] = values
		}
	}
}
