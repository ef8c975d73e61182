package body

import (
	"bytes"
	"errors"

	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/reflect/protoregistry"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

// Bounds on what is read and told.
const (
	// manyValues is from where on a text is read with its lists counted first. The
	// largest request by itself has some 30 000 values.
	manyValues = 1 << 16
	// mostFaults are told of one request, or of one item of a batch.
	mostFaults = 100
	// mostTold is how much is told of all items of a batch [bytes].
	mostTold = 4 << 20
)

// unmarshal refuses fields that the contract does not have.
var unmarshal = protojson.UnmarshalOptions{Resolver: protoregistry.GlobalTypes}

// batch is a message whose items are answered in their places.
type batch interface {
	GetItems() []*footwardv1.CheckItem
}

// itemsField is the field of a batch that holds them.
const itemsField = "items"

// Read fills m from a text. What of the text has no place in it is noted in it.
func Read(text []byte, m proto.Message) error {
	_, many := m.(batch)
	var first error
	if !many && few(text) {
		if first = unmarshal.Unmarshal(text, m); first == nil {
			return nil
		}
		proto.Reset(m)
	}
	if why := unreadable(text); why != "" {
		what := "the body "
		if _, line := m.(*footwardv1.StreamChecksRequest); line {
			what = "the line "
		}
		return guard.MarkUnread(m, []*footwardv1.FieldViolation{{
			Description: what + why, Reason: footwardv1.FieldReason_FIELD_REASON_UNKNOWN_VALUE,
		}})
	}
	told := mostTold
	r := reader{told: &told}
	r.root(trim(text), m.ProtoReflect())
	r.other(first, "")
	return errors.Join(r.err, guard.MarkUnread(m, r.faults))
}

// few reports whether a text cannot hold so much that reading it would take more
// memory than it is worth. Every value but the first stands behind one of these.
func few(text []byte) bool {
	n := 0
	for _, sign := range []string{"{", "[", ","} {
		n += bytes.Count(text, []byte(sign))
	}
	return n < manyValues
}

// root reads a request from the text of its value.
func (r *reader) root(text []byte, m protoreflect.Message) {
	if text[0] != '{' {
		r.refuse("", footwardv1.FieldReason_FIELD_REASON_UNKNOWN_VALUE,
			"the body is "+kindOf(text)+"; it must be an object with the fields of "+string(m.Descriptor().Name()))
		return
	}
	r.message(text, m, "")
}

// item reads an item of a batch. What is wrong with it is noted in its check, or
// in the item where it is beside the check.
func (r *reader) item(text []byte, m protoreflect.Message) {
	item := m.Interface()
	var first error
	if few(text) {
		if first = unmarshal.Unmarshal(text, item); first == nil {
			return
		}
		proto.Reset(item)
	}
	own := reader{told: r.told}
	if text[0] != '{' {
		own.refuse("check", footwardv1.FieldReason_FIELD_REASON_UNKNOWN_VALUE,
			"the item is "+kindOf(text)+"; it must be an object with one check, such as bearing")
	} else {
		own.check = true
		own.message(text, m, "")
	}
	own.other(first, "check")
	r.err = errors.Join(r.err, own.err, guard.MarkUnread(item, own.faults))
}

// other notes what protobuf's own reader found where nothing else was: what it
// does not take is never answered.
func (r *reader) other(err error, path string) {
	if err != nil && len(r.faults)+r.within == 0 {
		r.refuse(path, footwardv1.FieldReason_FIELD_REASON_UNKNOWN_VALUE, "cannot be read: "+plainError(err))
	}
}
