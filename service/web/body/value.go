package body

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"

	"google.golang.org/protobuf/reflect/protoreflect"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/spelling"
)

// value sets a field that holds no message.
func (r *reader) value(value []byte, m protoreflect.Message, f protoreflect.FieldDescriptor, path string) {
	got := taken(value, m, f)
	switch {
	case got == nil:
		why, words := wrongValue(value, f)
		r.refuse(path, why, words)
	case got.Has(f): // else it is what is there without it
		m.Set(f, got.Get(f))
	}
}

// element adds to a list of values. One that is wrong leaves its place empty.
func (r *reader) element(value []byte, m protoreflect.Message, f protoreflect.FieldDescriptor, path string) {
	list := m.Mutable(f).List()
	if got := taken([]byte("["+string(value)+"]"), m, f); got != nil {
		list.Append(got.Get(f).List().Get(0))
		return
	}
	list.Append(list.NewElement())
	why, words := wrongValue(value, f)
	r.refuse(path, why, words)
}

// taken is a message like m that has nothing but the value of a field; nil: it is
// no value of the field. Protobuf's own reader decides that, so that nothing is
// taken here that is refused where nothing is wrong.
func taken(value []byte, m protoreflect.Message, f protoreflect.FieldDescriptor) protoreflect.Message {
	one := m.New()
	if unmarshal.Unmarshal(fmt.Appendf(nil, "{%q:%s}", f.JSONName(), value), one.Interface()) != nil {
		return nil
	}
	return one
}

// wrongValue says what is wrong with a value that is none of a field's.
func wrongValue(value []byte, f protoreflect.FieldDescriptor) (footwardv1.FieldReason, string) {
	unknown, is := footwardv1.FieldReason_FIELD_REASON_UNKNOWN_VALUE, "is "+shown(value)
	text, isText := textOf(value)
	number := value[0] == '-' || value[0] >= '0' && value[0] <= '9'
	switch f.Kind() {
	case protoreflect.EnumKind:
		known := spelling.Values(f.Enum())
		return unknown, is + spelling.Hint(text, known) + "; must be one of " + strings.Join(known, ", ")
	case protoreflect.DoubleKind:
		if !isText {
			text = string(value)
		}
		if v, err := strconv.ParseFloat(strings.TrimSpace(text), 64); err != nil && math.IsInf(v, 0) {
			return footwardv1.FieldReason_FIELD_REASON_OUT_OF_RANGE, is + "; is too large for a number"
		}
		if isText {
			return unknown, is + "; must be a number; units stand in the name of the field"
		}
		return unknown, is + "; must be a number"
	case protoreflect.BoolKind:
		return unknown, is + "; must be true or false"
	case protoreflect.StringKind:
		if isText {
			return unknown, is + "; must be a text whose letters are whole"
		}
		return unknown, is + "; must be a text"
	}
	if number {
		return footwardv1.FieldReason_FIELD_REASON_OUT_OF_RANGE, is + "; must be a whole number, from 0 to 4294967295"
	}
	return unknown, is + "; must be a whole number"
}

// longestValue is how much is shown of a value [characters].
const longestValue = 80

// shown is a value as it stands in the text, or what it is.
func shown(value []byte) string {
	switch value[0] {
	case '{', '[', 'n':
		return kindOf(value)
	case '"':
		text, _ := textOf(value)
		return strconv.Quote(spelling.Cut(text, longestValue))
	}
	return spelling.Cut(string(value), longestValue)
}

// kindOf says what a value is.
func kindOf(value []byte) string {
	switch value[0] {
	case '{':
		return "an object"
	case '[':
		return "a list"
	case '"':
		return "a text"
	case 't', 'f':
		return "true or false"
	case 'n':
		return "null"
	}
	return "a number"
}

// textOf is what a text says.
func textOf(value []byte) (text string, ok bool) {
	ok = value[0] == '"' && json.Unmarshal(value, &text) == nil
	return text, ok
}

// plainError is what protobuf's reader says, without what is before it.
func plainError(err error) string {
	// It puts one of two kinds of blank behind its name, lest anybody rely on the text.
	return spelling.Cut(strings.TrimLeft(strings.TrimPrefix(err.Error(), "proto:"), " \u00a0"), longestWords)
}
