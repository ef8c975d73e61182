package contract

import (
	"fmt"
	"strings"

	"google.golang.org/protobuf/reflect/protoreflect"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// TypeScriptRequests returns the types of what callers write: every field may be
// left out, and the service says which it misses.
func TypeScriptRequests(w words) string {
	return typeScript(w, requests(), "The requests of the contract. The unit of a field stands in its name.",
		func(protoreflect.FieldDescriptor) bool { return true })
}

// TypeScriptResponses returns the types of what callers read.
func TypeScriptResponses(w words) string {
	return typeScript(w, responses(), "The responses of the contract. Left out is what has no value, such as the\n// utilization where there is no resistance.",
		func(f protoreflect.FieldDescriptor) bool { return f.HasPresence() })
}

func typeScript(w words, p *part, head string, optional func(protoreflect.FieldDescriptor) bool) string {
	var b strings.Builder
	fmt.Fprintf(&b, "// Written from the contract by .ci/generate. Do not edit.\n// %s\n", head)
	for _, e := range p.enums {
		fmt.Fprintf(&b, "\n%sexport type %s =", jsdoc(w, e, ""), e.Name())
		for _, v := range values(e) {
			fmt.Fprintf(&b, "\n%s  | '%s'", jsdoc(w, v, "  "), v.Name())
		}
		b.WriteString(";\n")
	}
	for _, m := range p.messages {
		fmt.Fprintf(&b, "\n%sexport interface %s {\n", jsdoc(w, m, ""), m.Name())
		for i := range m.Fields().Len() {
			f := m.Fields().Get(i)
			mark := ""
			if optional(f) {
				mark = "?"
			}
			fmt.Fprintf(&b, "%s  %s%s: %s;\n", jsdoc(w, f, "  "), f.Name(), mark, typeScriptType(f))
		}
		b.WriteString("}\n")
	}
	return b.String()
}

// typeScriptType follows the JSON form of protobuf: integers of 64 bits are text.
func typeScriptType(f protoreflect.FieldDescriptor) string {
	kind := ""
	switch f.Kind() {
	case protoreflect.DoubleKind, protoreflect.Uint32Kind, protoreflect.Int32Kind:
		kind = "number"
	case protoreflect.BoolKind:
		kind = "boolean"
	case protoreflect.StringKind, protoreflect.Uint64Kind, protoreflect.Int64Kind:
		kind = "string"
	case protoreflect.EnumKind:
		kind = string(f.Enum().Name())
	case protoreflect.MessageKind:
		kind = string(f.Message().Name())
	default:
		panic(fmt.Sprintf("%s is of a kind that the packages do not know", f.FullName()))
	}
	if f.IsList() {
		return kind + "[]"
	}
	return kind
}

func jsdoc(w words, d protoreflect.Descriptor, indent string) string {
	return fmt.Sprintf("%s/** %s */\n", indent, strings.ReplaceAll(strings.Join(w.lines(d), "\n"+indent+" * "), "*/", "* /"))
}

// TypeScriptMethods returns a type that has request and response of every method by
// its name, and one that has the method of every kind of check.
func TypeScriptMethods(w words) string {
	var b strings.Builder
	b.WriteString(`// Written from the contract by .ci/generate. Do not edit.
import type * as requests from './requests';
import type * as responses from './responses';

/** Request and response of every method. */
export interface Methods {
`)
	byRequest := map[protoreflect.FullName]protoreflect.Name{}
	for _, m := range methods() {
		byRequest[m.Input().FullName()] = m.Name()
		fmt.Fprintf(&b, "%s  %s: { request: requests.%s; response: responses.%s };\n",
			jsdoc(w, m, "  "), m.Name(), m.Input().Name(), m.Output().Name())
	}
	b.WriteString("}\n\n/** The method of every kind of check. */\nexport interface Kinds {\n")
	kinds := (*footwardv1.CheckItem)(nil).ProtoReflect().Descriptor().Fields()
	for i := range kinds.Len() {
		fmt.Fprintf(&b, "  %s: '%s';\n", kinds.Get(i).Name(), byRequest[kinds.Get(i).Message().FullName()])
	}
	b.WriteString("}\n")
	return b.String()
}
