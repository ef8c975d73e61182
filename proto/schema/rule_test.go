package schema_test

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"buf.build/gen/go/bufbuild/protovalidate/protocolbuffers/go/buf/validate"
	"buf.build/go/protovalidate"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/reflect/protoregistry"

	"footward.example/footward/proto/schema"
	"footward.example/footward/service/guard"
)

// TestSchemaAndServiceRefuseAlike breaks every rule of the contract in a request that
// keeps all the others, and holds what the schema says to what the service says. It
// goes as near to each limit as a number can.
func TestSchemaAndServiceRefuseAlike(t *testing.T) {
	guarded, err := guard.NewValidator()
	require.NoError(t, err)
	kinds, err := schema.Kinds()
	require.NoError(t, err)
	tried := &tally{seen: map[protoreflect.FullName]bool{}}
	for _, kind := range kinds {
		if kind == schema.Check || testing.Short() && kind != "weld" {
			continue // the others, one by one
		}
		w := &walk{t: t, tally: tried, kind: kind}
		accepts := compiled(t, kind)
		w.both = func(file any) (bool, bool) {
			text, err := json.Marshal(file)
			require.NoError(t, err)
			m := w.root.ProtoReflect().New().Interface()
			read := protojson.Unmarshal(text, m) == nil
			return accepts.Validate(value(t, text)) == nil, read && guarded.Violations(inner(m)) == nil
		}
		w.root = request(kind)
		w.message(nil, inner(w.root).ProtoReflect().Descriptor())
	}
	t.Logf("%d rules broken or just kept: %d refused, %d taken by both", tried.refused+tried.taken, tried.refused, tried.taken)
	if testing.Short() {
		return
	}
	assert.Greater(t, tried.refused, 2000)
	assert.Greater(t, tried.taken, 1000)
}

// tally is what was tried; a message of several requests is tried in one of them.
type tally struct {
	refused, taken int
	seen           map[protoreflect.FullName]bool
}

// walk visits every message of a kind of request.
type walk struct {
	*tally
	t    *testing.T
	kind string
	root proto.Message
	both func(file any) (bySchema, byService bool)
}

// request is an empty file of a kind.
func request(kind string) proto.Message {
	item := newMessage("footward.v1.CheckItem")
	if f := item.Descriptor().Fields().ByName(protoreflect.Name(kind)); f != nil {
		item.Mutable(f)
		return item.Interface()
	}
	return newMessage(map[string]protoreflect.FullName{
		"combine": "footward.v1.CombineActionsRequest", "size": "footward.v1.SizeColumnBaseRequest", "compare": "footward.v1.CompareFootingsRequest",
		"tests": "footward.v1.AssessLoadTestsRequest", "reading": "footward.v1.ReadLoadTestRequest",
	}[kind]).Interface()
}

func newMessage(name protoreflect.FullName) protoreflect.Message {
	t, err := protoregistry.GlobalTypes.FindMessageByName(name)
	if err != nil {
		panic(err)
	}
	return t.New()
}

// inner is the check of an item, or the request itself.
func inner(m proto.Message) proto.Message {
	r := m.ProtoReflect()
	if r.Descriptor().Name() != "CheckItem" {
		return m
	}
	if f := r.WhichOneof(r.Descriptor().Oneofs().Get(0)); f != nil {
		return r.Get(f).Message().Interface()
	}
	return m
}

// message tries every field of a message at the end of a path.
func (w *walk) message(path []protoreflect.FieldDescriptor, d protoreflect.MessageDescriptor) {
	if w.seen[d.FullName()] {
		return
	}
	w.seen[d.FullName()] = true
	at := w.good(path)
	w.try(at, "as it is", func(map[string]any) {})
	w.try(at, "a field that is none", func(m map[string]any) { m["nonsense"] = 1 })
	for i := range d.Oneofs().Len() {
		o := d.Oneofs().Get(i)
		if o.IsSynthetic() {
			continue
		}
		for j := range o.Fields().Len() {
			name := string(o.Fields().Get(j).Name())
			w.try(at, name+" beside the others", func(m map[string]any) {
				for k := range o.Fields().Len() {
					m[string(o.Fields().Get(k).Name())] = some(w.t, o.Fields().Get(k))
				}
			})
			w.try(at, name+" in place of the others", func(m map[string]any) {
				for k := range o.Fields().Len() {
					delete(m, string(o.Fields().Get(k).Name()))
				}
				m[name] = some(w.t, o.Fields().Get(j))
			})
			w.try(at, "without "+name, func(m map[string]any) { delete(m, name) })
		}
	}
	for i := range d.Fields().Len() {
		f := d.Fields().Get(i)
		w.field(at, f)
		if f.Message() != nil {
			w.message(append(slices.Clone(path), f), f.Message())
		}
	}
}

func (w *walk) field(at place, f protoreflect.FieldDescriptor) {
	rules, err := protovalidate.ResolveFieldRules(f)
	require.NoError(w.t, err)
	name := string(f.Name())
	set := func(v any) { w.try(at, fmt.Sprintf("%s: %.80v", name, v), func(m map[string]any) { m[name] = v }) }
	w.try(at, "no "+name, func(m map[string]any) { delete(m, name) })
	if !f.IsList() {
		for _, v := range values(w.t, f, rules) {
			set(v)
		}
		set([]any{})
		return
	}
	one := element(w.t, f)
	r := rules.GetRepeated()
	known(w.t, r, "min_items", "max_items", "items")
	for _, n := range []uint64{0, r.GetMinItems() - 1, r.GetMinItems(), r.GetMaxItems(), r.GetMaxItems() + 1} {
		if n <= 1000 {
			set(slices.Repeat([]any{one}, int(n)))
		}
	}
	for _, v := range values(w.t, f, r.GetItems()) {
		set([]any{v})
	}
	set(one)
}

// place is a message in a good file.
type place struct {
	name string
	file []byte
	keys []string // from the file to the message; a list is left by its first element
}

// good writes a file that has what the rules demand and the message at a path.
func (w *walk) good(path []protoreflect.FieldDescriptor) place {
	root := proto.Clone(w.root)
	m := inner(root).ProtoReflect()
	fill(w.t, m)
	at := place{name: w.kind}
	if inner(root) != root {
		at.keys = []string{w.kind}
	}
	for _, f := range path {
		at.name += "." + string(f.Name())
		at.keys = append(at.keys, string(f.Name()))
		if !f.IsList() {
			m = m.Mutable(f).Message()
			fill(w.t, m)
			continue
		}
		list := m.Mutable(f).List()
		if list.Len() == 0 {
			fill(w.t, list.AppendMutable().Message())
		}
		m = list.Get(0).Message()
	}
	var err error
	at.file, err = protojson.MarshalOptions{UseProtoNames: true}.Marshal(root)
	require.NoError(w.t, err)
	return at
}

// try changes a message of a good file, and holds the two to each other.
func (w *walk) try(at place, what string, change func(map[string]any)) {
	w.t.Helper()
	var file map[string]any
	require.NoError(w.t, json.Unmarshal(at.file, &file))
	m := file
	for _, key := range at.keys {
		next := m[key]
		if list, is := next.([]any); is {
			next = list[0]
		}
		m, _ = next.(map[string]any)
	}
	change(m)
	bySchema, byService := w.both(file)
	assert.Equal(w.t, byService, bySchema, "taken by the service (expected) and by the schema: %s, %s", at.name, what)
	if bySchema {
		w.taken++
	} else {
		w.refused++
	}
}

// known fails on a rule that this test does not know how to break.
func known(t *testing.T, rules proto.Message, names ...string) {
	t.Helper()
	if rules == nil || !rules.ProtoReflect().IsValid() {
		return
	}
	rules.ProtoReflect().Range(func(f protoreflect.FieldDescriptor, _ protoreflect.Value) bool {
		assert.Contains(t, names, string(f.Name()))
		return true
	})
}

// values are what a field is tried with: just within and just beyond its rules, and of
// another type.
func values(t *testing.T, f protoreflect.FieldDescriptor, rules *validate.FieldRules) []any {
	known(t, rules, "required", "double", "uint32", "string", "enum", "repeated")
	switch f.Kind() {
	case protoreflect.DoubleKind:
		r := rules.GetDouble()
		known(t, r, "gt", "gte", "lt", "lte", "finite")
		out := []any{"NaN", "Infinity", "-Infinity", "many", true}
		for _, limit := range []float64{r.GetGt(), r.GetGte(), r.GetLt(), r.GetLte()} {
			out = append(out, limit, math.Nextafter(limit, math.Inf(1)), math.Nextafter(limit, math.Inf(-1)))
		}
		return append(out, math.MaxFloat64, -math.MaxFloat64)
	case protoreflect.Uint32Kind:
		r := rules.GetUint32()
		known(t, r, "gte", "lte")
		return []any{float64(r.GetLte()), float64(r.GetLte()) + 1, float64(r.GetGte()), float64(r.GetGte()) - 1, 1.5, 1e11, "many", true}
	case protoreflect.StringKind:
		r := rules.GetString()
		known(t, r, "min_len", "max_len")
		out := []any{5, true}
		for _, n := range []uint64{r.GetMinLen() - 1, r.GetMinLen(), r.GetMaxLen(), r.GetMaxLen() + 1} {
			if n <= 10_000 {
				out = append(out, strings.Repeat("é", int(n)))
			}
		}
		return out
	case protoreflect.EnumKind:
		known(t, rules.GetEnum(), "defined_only", "not_in")
		out := []any{"NOTHING_OF_THE_KIND", true}
		for i := range f.Enum().Values().Len() {
			out = append(out, string(f.Enum().Values().Get(i).Name()))
		}
		return out
	case protoreflect.BoolKind:
		return []any{true, false, "yes", 1}
	case protoreflect.MessageKind:
		return []any{5, "text", false}
	}
	assert.Fail(t, "a field of a kind that is not known here", "%s", f.FullName())
	return nil
}
