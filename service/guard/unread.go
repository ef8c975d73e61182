package guard

import (
	"context"
	"strings"

	"google.golang.org/grpc"
	"google.golang.org/protobuf/encoding/protowire"
	"google.golang.org/protobuf/proto"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// unreadNumber is the field in which a message carries what of its text could not
// be read. No contract can have it: protobuf keeps 19000 to 19999 for those who
// implement it. A caller who sends it over gRPC refuses himself.
const unreadNumber = 19999

// MarkUnread notes in a message what of the text that it was read from has no
// place in it, so that it is refused where everything else is. Paths are from m.
func MarkUnread(m proto.Message, faults []*footwardv1.FieldViolation) error {
	known := m.ProtoReflect().GetUnknown()
	for _, f := range faults {
		text, err := proto.Marshal(f)
		if err != nil {
			return err
		}
		known = protowire.AppendTag(known, unreadNumber, protowire.BytesType)
		known = protowire.AppendBytes(known, text)
	}
	m.ProtoReflect().SetUnknown(known)
	return nil
}

// Unread returns what MarkUnread has noted, or nil. A message that has some was
// read in part, and must not be answered.
func Unread(m proto.Message) []*footwardv1.FieldViolation {
	var out []*footwardv1.FieldViolation
	for rest := m.ProtoReflect().GetUnknown(); len(rest) > 0; {
		number, kind, n := protowire.ConsumeTag(rest)
		if n < 0 {
			break
		}
		size := protowire.ConsumeFieldValue(number, kind, rest[n:])
		if size < 0 {
			break
		}
		if number == unreadNumber && kind == protowire.BytesType {
			text, _ := protowire.ConsumeBytes(rest[n:])
			f := &footwardv1.FieldViolation{}
			if proto.Unmarshal(text, f) != nil {
				f.Description = "cannot be read"
			}
			out = append(out, f)
		}
		rest = rest[n+size:]
	}
	return out
}

// RefuseUnread answers no call whose request was read in part. It stands next to
// the handlers, which tell all that is wrong with a request: this is for those
// that look at no field.
func RefuseUnread(ctx context.Context, m any, _ *grpc.UnaryServerInfo, handler grpc.UnaryHandler) (any, error) {
	answer, err := handler(ctx, m)
	if request, ok := m.(proto.Message); ok && err == nil {
		if unread := Unread(request); unread != nil {
			return nil, InvalidArgument(unread)
		}
	}
	return answer, err
}

// Violations returns everything that is wrong with a request by itself, one
// violation a field, or nil: what of it could not be read, and what the schema
// forbids about the rest. A nil request is an empty one.
func (v *Validator) Violations(m proto.Message) []*footwardv1.FieldViolation {
	unread := Unread(m)
	if unread == nil {
		return v.forbidden(m)
	}
	for _, f := range v.forbidden(m) {
		if !Named(unread, f.GetField()) {
			unread = append(unread, f)
		}
	}
	return unread
}

// Named reports whether violations name a field, one that it lies in or one that
// lies in it. No field at all is the request as a whole.
func Named(violations []*footwardv1.FieldViolation, field string) bool {
	for _, v := range violations {
		if v.GetField() == "" || inside(field, v.GetField()) || inside(v.GetField(), field) {
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

// linesKey marks calls whose messages are lines of text.
type linesKey struct{}

// WithLines says that each message of a stream is a line that its caller wrote: a
// bad one is answered in its place, and the stream goes on.
func WithLines(ctx context.Context) context.Context {
	return context.WithValue(ctx, linesKey{}, true)
}

// Lines reports whether a call is one of WithLines.
func Lines(ctx context.Context) bool { return ctx.Value(linesKey{}) != nil }
