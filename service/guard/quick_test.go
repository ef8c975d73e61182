package guard

import (
	"flag"
	"fmt"
	"go/format"
	"os"
	"slices"
	"strings"
	"testing"

	"buf.build/gen/go/bufbuild/protovalidate/protocolbuffers/go/buf/validate"
	"buf.build/go/protovalidate"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/reflect/protoreflect"
)

var update = flag.Bool("update", false, "write quick.go from the rules of the contract")

// TestQuickRulesAreCurrent holds quick.go to the rules of the contract. With
// -update it writes the file.
func TestQuickRulesAreCurrent(t *testing.T) {
	want, err := quickSource()
	require.NoError(t, err)
	if *update {
		require.NoError(t, os.WriteFile("quick.go", want, 0o644))
	}
	got, err := os.ReadFile("quick.go")
	require.NoError(t, err)
	assert.Equal(t, string(want), string(got), "run .ci/generate")
}

// quickSource writes a Go function for every message that a request can hold.
// It fails on a rule that it does not know.
func quickSource() ([]byte, error) {
	g := &generator{seen: map[protoreflect.FullName]bool{}}
	requests := requests()
	for _, m := range requests {
		if err := g.message(m.ProtoReflect().Descriptor()); err != nil {
			return nil, err
		}
	}
	var b strings.Builder
	b.WriteString(`// Code generated from the rules of the contract by quick_test.go. DO NOT EDIT.

package guard

import (
	"unicode/utf8"

	"google.golang.org/protobuf/proto"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// quick reports whether a request surely keeps every rule of its schema.
func quick(m proto.Message) bool {
	switch m := m.(type) {
`)
	for _, m := range requests {
		name := m.ProtoReflect().Descriptor().Name()
		fmt.Fprintf(&b, "case *footwardv1.%s:\nreturn m != nil && quick%s(m)\n", name, name)
	}
	b.WriteString("}\nreturn false\n}\n\nfunc between(n, least, most int) bool { return n >= least && n <= most }\n")
	for _, f := range g.functions {
		b.WriteString("\n" + f)
	}
	return format.Source([]byte(b.String()))
}

type generator struct {
	seen      map[protoreflect.FullName]bool
	functions []string
}

func (g *generator) message(d protoreflect.MessageDescriptor) error {
	if g.seen[d.FullName()] {
		return nil
	}
	g.seen[d.FullName()] = true
	var terms []string
	for i := range d.Oneofs().Len() {
		o := d.Oneofs().Get(i)
		if o.IsSynthetic() {
			continue
		}
		rules, err := protovalidate.ResolveOneofRules(o)
		if err != nil {
			return err
		}
		if rules.GetRequired() {
			terms = append(terms, fmt.Sprintf("m.%s != nil", goName(string(o.Name()))))
		}
	}
	after := ""
	for i := range d.Fields().Len() {
		f := d.Fields().Get(i)
		rules, err := protovalidate.ResolveFieldRules(f)
		if err != nil {
			return err
		}
		if err := onlyKnown(rules); err != nil {
			return fmt.Errorf("%s: %w", f.FullName(), err)
		}
		more, loop, err := g.field(f, rules)
		if err != nil {
			return fmt.Errorf("%s: %w", f.FullName(), err)
		}
		terms = append(terms, more...)
		after += loop
	}
	slices.Sort(terms)
	body := "return " + strings.Join(terms, " &&\n") + "\n"
	switch {
	case len(terms) == 0:
		body = after + "return true\n"
	case after != "":
		body = "if !(" + strings.Join(terms, " &&\n") + ") {\nreturn false\n}\n" + after + "return true\n"
	}
	parameter := "m"
	if len(terms) == 0 && after == "" {
		parameter = "_"
	}
	g.functions = append(g.functions, fmt.Sprintf("func quick%s(%s *footwardv1.%s) bool {\n%s}\n", d.Name(), parameter, d.Name(), body))
	return nil
}

func (g *generator) field(f protoreflect.FieldDescriptor, rules *validate.FieldRules) (terms []string, loop string, err error) {
	name := "m." + goName(string(f.Name()))
	value := "m.Get" + goName(string(f.Name())) + "()"
	inOneof := f.ContainingOneof() != nil && !f.ContainingOneof().IsSynthetic()
	if f.IsList() {
		r := rules.GetRepeated()
		least, most := r.GetMinItems(), r.GetMaxItems()
		if most > 0 || least > 0 {
			terms = append(terms, fmt.Sprintf("between(len(%s), %d, %d)", name, least, most))
		}
		items := r.GetItems()
		switch {
		case items.GetIgnore() == validate.Ignore_IGNORE_ALWAYS:
			return terms, "", nil
		case f.Kind() == protoreflect.EnumKind && items.GetEnum().GetDefinedOnly():
			low, high, err := known(f.Enum(), items.GetEnum())
			return terms, fmt.Sprintf("for _, e := range %s {\nif !between(int(e), %d, %d) {\nreturn false\n}\n}\n", name, low, high), err
		case f.Kind() == protoreflect.DoubleKind:
			in, _, err := number("", "e", false, items.GetDouble())
			return terms, each(name, in), err
		case f.Kind() == protoreflect.StringKind && items.GetString() != nil:
			return terms, each(name, []string{characters("e", items.GetString())}), nil
		case f.Message() == nil:
			return nil, "", fmt.Errorf("a list of %s is not known to quick rules", f.Kind())
		}
		if err := g.message(f.Message()); err != nil {
			return nil, "", err
		}
		return terms, fmt.Sprintf("for _, e := range %s {\nif e == nil || !quick%s(e) {\nreturn false\n}\n}\n", name, f.Message().Name()), nil
	}
	if rules.GetRequired() && f.Kind() != protoreflect.MessageKind && (f.Kind() != protoreflect.DoubleKind || !f.HasPresence() || inOneof) {
		return nil, "", fmt.Errorf("a required %s", f.Kind())
	}
	switch f.Kind() {
	case protoreflect.MessageKind:
		if err := g.message(f.Message()); err != nil {
			return nil, "", err
		}
		quick := fmt.Sprintf("quick%s(%s)", f.Message().Name(), value)
		switch {
		case rules.GetRequired() && !inOneof:
			return []string{name + " != nil && " + quick}, "", nil
		case inOneof:
			// A choice that is set without a message is left to the rules proper.
			wrapper := fmt.Sprintf("footwardv1.%s_%s", f.Parent().Name(), goName(string(f.Name())))
			is := fmt.Sprintf("if c, ok := m.%s.(*%s); ok && (c == nil || c.%s == nil || !quick%s(c.%s)) {\nreturn false\n}\n",
				goName(string(f.ContainingOneof().Name())), wrapper, goName(string(f.Name())), f.Message().Name(), goName(string(f.Name())))
			return nil, is, nil
		}
		return []string{fmt.Sprintf("(%s == nil || %s)", name, quick)}, "", nil
	case protoreflect.DoubleKind:
		if r := rules.GetDouble(); inOneof && (r.HasGt() || r.GetGte() > 0) {
			return nil, "", fmt.Errorf("a choice that counts as wrong where it is not made")
		}
		terms, loop, err := number(name, value, f.HasPresence() && !inOneof && !rules.GetRequired(), rules.GetDouble())
		if rules.GetRequired() {
			terms = append([]string{name + " != nil"}, terms...)
		}
		return terms, loop, err
	case protoreflect.Uint32Kind:
		if rules.GetUint32() == nil {
			return nil, "", nil
		}
		u := rules.GetUint32()
		if u.HasLt() || u.HasGt() || u.HasConst() || len(u.GetIn())+len(u.GetNotIn()) > 0 {
			return nil, "", fmt.Errorf("a whole number by %v", u)
		}
		var terms []string
		if u.HasGte() {
			terms = append(terms, fmt.Sprintf("%s >= %d", value, u.GetGte()))
		}
		if u.HasLte() {
			terms = append(terms, fmt.Sprintf("%s <= %d", value, u.GetLte()))
		}
		return terms, "", nil
	case protoreflect.StringKind:
		s := rules.GetString()
		if s == nil {
			return nil, "", nil
		}
		return []string{characters(value, s)}, "", nil
	case protoreflect.EnumKind:
		if !rules.GetEnum().GetDefinedOnly() {
			return nil, "", fmt.Errorf("an enum of any value")
		}
		low, high, err := known(f.Enum(), rules.GetEnum())
		return []string{fmt.Sprintf("between(int(%s), %d, %d)", value, low, high)}, "", err
	case protoreflect.BoolKind:
		return nil, "", nil
	}
	return nil, "", fmt.Errorf("%s is not known to quick rules", f.Kind())
}

// quickRules are the rules that are written as quick ones; another would be lost.
var quickRules = map[string]bool{
	"required": true, "ignore": true, "double": true, "uint32": true, "string": true, "enum": true, "repeated": true, "items": true,
	"gt": true, "gte": true, "lt": true, "lte": true, "finite": true, "min_len": true, "max_len": true, "min_items": true, "max_items": true,
	"defined_only": true, "not_in": true,
}

// onlyKnown reports a rule that no quick rule is written for.
func onlyKnown(rules *validate.FieldRules) error {
	var unknown error
	var in func(protoreflect.Message)
	in = func(m protoreflect.Message) {
		m.Range(func(f protoreflect.FieldDescriptor, v protoreflect.Value) bool {
			if !quickRules[string(f.Name())] {
				unknown = fmt.Errorf("no quick rule is written for %s", f.FullName())
			}
			if f.Message() != nil && !f.IsList() {
				in(v.Message())
			}
			return true
		})
	}
	in(rules.ProtoReflect())
	return unknown
}

// each demands the terms of every e of a list.
func each(name string, terms []string) string {
	return fmt.Sprintf("for _, e := range %s {\nif !(%s) {\nreturn false\n}\n}\n", name, strings.Join(terms, " && "))
}

func characters(value string, r *validate.StringRules) string {
	return fmt.Sprintf("between(utf8.RuneCountInString(%s), %d, %d)", value, r.GetMinLen(), r.GetMaxLen())
}

// known returns the least and the greatest value of an enum that may be sent.
func known(e protoreflect.EnumDescriptor, r *validate.EnumRules) (low, high int, err error) {
	if slices.Contains(r.GetNotIn(), 0) {
		low = 1
	}
	for i := range e.Values().Len() {
		if int(e.Values().Get(i).Number()) != i {
			return 0, 0, fmt.Errorf("an enum with gaps")
		}
	}
	return low, e.Values().Len() - 1, nil
}

func number(name, value string, optional bool, r *validate.DoubleRules) ([]string, string, error) {
	if r == nil {
		return nil, "", fmt.Errorf("a number of any size")
	}
	var low, high string
	switch {
	case r.HasGt():
		low = fmt.Sprintf("%s > %v", value, r.GetGt())
	case r.HasGte():
		low = fmt.Sprintf("%s >= %v", value, r.GetGte())
	default:
		return nil, "", fmt.Errorf("a number without a lower limit")
	}
	switch {
	case r.HasLt():
		high = fmt.Sprintf("%s < %v", value, r.GetLt())
	case r.HasLte():
		high = fmt.Sprintf("%s <= %v", value, r.GetLte())
	default:
		return nil, "", fmt.Errorf("a number without an upper limit")
	}
	both := low + " && " + high
	if optional {
		both = fmt.Sprintf("(%s == nil || %s)", name, both)
	}
	return []string{both}, "", nil
}

// goName is the name that the Go code of the contract gives to a field.
func goName(name string) string {
	var b strings.Builder
	up := true
	for i := range len(name) {
		c := name[i]
		switch {
		case c == '_' && i+1 < len(name) && name[i+1] >= 'a' && name[i+1] <= 'z':
			up = true
			continue
		case up && c >= 'a' && c <= 'z':
			b.WriteByte(c - 'a' + 'A')
		default:
			b.WriteByte(c)
		}
		up = false
	}
	return b.String()
}
