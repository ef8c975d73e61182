package schema_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"buf.build/gen/go/bufbuild/protovalidate/protocolbuffers/go/buf/validate"
	"buf.build/go/protovalidate"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/reflect/protoreflect"
)

// element is a good element of a list.
func element(t *testing.T, f protoreflect.FieldDescriptor) any {
	m := newMessage(f.Parent().FullName())
	appendGood(t, m, f)
	text, err := protojson.MarshalOptions{UseProtoNames: true}.Marshal(m.Interface())
	require.NoError(t, err)
	var out map[string][]any
	require.NoError(t, json.Unmarshal(text, &out))
	return out[string(f.Name())][0]
}

// some is a good value of a choice.
func some(t *testing.T, f protoreflect.FieldDescriptor) any {
	m := newMessage(f.Parent().FullName())
	if f.Message() != nil {
		fill(t, m.Mutable(f).Message())
	} else if f.Enum() != nil {
		m.Set(f, protoreflect.ValueOfEnum(1))
	} else {
		rules, err := protovalidate.ResolveFieldRules(f)
		require.NoError(t, err)
		v, ok := good(f, rules)
		require.True(t, ok, f.FullName())
		m.Set(f, v)
	}
	text, err := protojson.MarshalOptions{UseProtoNames: true}.Marshal(m.Interface())
	require.NoError(t, err)
	var out map[string]any
	require.NoError(t, json.Unmarshal(text, &out))
	return out[string(f.Name())]
}

func appendGood(t *testing.T, m protoreflect.Message, f protoreflect.FieldDescriptor) {
	list := m.Mutable(f).List()
	rules, err := protovalidate.ResolveFieldRules(f)
	require.NoError(t, err)
	if f.Message() != nil {
		fill(t, list.AppendMutable().Message())
		return
	}
	v, ok := good(f, rules.GetRepeated().GetItems())
	require.True(t, ok, f.FullName())
	list.Append(v)
}

// fill gives a message what its rules demand and no more.
func fill(t *testing.T, m protoreflect.Message) {
	d := m.Descriptor()
	for i := range d.Oneofs().Len() {
		o := d.Oneofs().Get(i)
		if rules, err := protovalidate.ResolveOneofRules(o); err == nil && rules.GetRequired() && m.WhichOneof(o) == nil {
			fill(t, m.Mutable(o.Fields().Get(0)).Message())
		}
	}
	for i := range d.Fields().Len() {
		f := d.Fields().Get(i)
		rules, err := protovalidate.ResolveFieldRules(f)
		require.NoError(t, err)
		switch {
		case m.Has(f) && f.Message() != nil && !f.IsList():
			fill(t, m.Mutable(f).Message())
		case f.IsList():
			for uint64(m.Get(f).List().Len()) < rules.GetRepeated().GetMinItems() {
				appendGood(t, m, f)
			}
		case f.Message() != nil && rules.GetRequired():
			fill(t, m.Mutable(f).Message())
		case f.Message() == nil && !f.HasPresence():
			if v, ok := good(f, rules); ok {
				m.Set(f, v)
			}
		}
	}
}

// good is a value within the rules, where there are any.
func good(f protoreflect.FieldDescriptor, rules *validate.FieldRules) (protoreflect.Value, bool) {
	switch f.Kind() {
	case protoreflect.DoubleKind:
		r := rules.GetDouble()
		high := max(r.GetLt(), r.GetLte())
		if r.HasGte() {
			return protoreflect.ValueOfFloat64(r.GetGte()), true
		}
		return protoreflect.ValueOfFloat64((r.GetGt() + high) / 2), r.HasGt()
	case protoreflect.Uint32Kind:
		return protoreflect.ValueOfUint32(rules.GetUint32().GetGte()), true
	case protoreflect.StringKind:
		return protoreflect.ValueOfString(strings.Repeat("a", int(rules.GetString().GetMinLen()))), true
	case protoreflect.EnumKind:
		if slices.Contains(rules.GetEnum().GetNotIn(), 0) {
			return protoreflect.ValueOfEnum(1), true
		}
	}
	return protoreflect.Value{}, false
}
