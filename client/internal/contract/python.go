package contract

import (
	"fmt"
	"strings"

	"google.golang.org/protobuf/reflect/protoreflect"
)

const pythonHead = `# Written from the contract by .ci/generate. Do not edit.
"""%s"""

from __future__ import annotations

`

// PythonRequests returns the module of what callers write: a typed dictionary for
// every message, so that an editor knows the fields.
func PythonRequests(w words) string {
	var b strings.Builder
	fmt.Fprintf(&b, pythonHead, `The requests of the contract, as typed dictionaries.

They are for editors and type checkers: any dictionary with these names will do. The
unit of a field stands in its name.`)
	b.WriteString("from typing import Literal, TypedDict\n")
	p := requests()
	pythonEnums(&b, w, p)
	for _, m := range p.messages {
		fmt.Fprintf(&b, "\n\nclass %s(TypedDict, total=False):\n%s", m.Name(), docstring(w, m))
		if m.Fields().Len() == 0 {
			b.WriteString("    pass\n")
		}
		for i := range m.Fields().Len() {
			f := m.Fields().Get(i)
			fmt.Fprintf(&b, "%s    %s: %s\n", remark(w, f, "    # "), f.Name(), pythonType(f))
		}
	}
	return b.String()
}

// PythonResponses returns the module of what callers read: a data class for every
// message.
func PythonResponses(w words) string {
	var b strings.Builder
	fmt.Fprintf(&b, pythonHead, `The responses of the contract, as data classes.

What has no value is None, such as the utilization where there is no resistance.`)
	b.WriteString("from dataclasses import dataclass, field\nfrom typing import List, Literal, Optional\n")
	p := responses()
	pythonEnums(&b, w, p)
	for _, m := range p.messages {
		fmt.Fprintf(&b, "\n\n@dataclass\nclass %s:\n%s", m.Name(), docstring(w, m))
		for i := range m.Fields().Len() {
			f := m.Fields().Get(i)
			kind, value := pythonType(f), ""
			switch {
			case f.IsList():
				kind, value = "List["+strings.TrimPrefix(kind, "list["), "field(default_factory=list)"
			case f.HasPresence():
				kind, value = "Optional["+kind+"]", "None"
			case f.Enum() != nil:
				value = fmt.Sprintf("%q", f.Enum().Values().Get(0).Name())
			default:
				value = map[string]string{"float": "0.0", "int": "0", "bool": "False", "str": `""`}[kind]
			}
			fmt.Fprintf(&b, "%s    %s: %s = %s\n", remark(w, f, "    # "), f.Name(), kind, value)
		}
	}
	return b.String()
}

func pythonEnums(b *strings.Builder, w words, p *part) {
	for _, e := range p.enums {
		fmt.Fprintf(b, "\n%s%s = Literal[\n", remark(w, e, "# "), e.Name())
		for _, v := range values(e) {
			fmt.Fprintf(b, "%s    %q,\n", remark(w, v, "    # "), v.Name())
		}
		b.WriteString("]\n")
	}
}

func pythonType(f protoreflect.FieldDescriptor) string {
	kind := ""
	switch f.Kind() {
	case protoreflect.DoubleKind:
		kind = "float"
	case protoreflect.Uint32Kind, protoreflect.Int32Kind, protoreflect.Uint64Kind, protoreflect.Int64Kind:
		kind = "int"
	case protoreflect.BoolKind:
		kind = "bool"
	case protoreflect.StringKind:
		kind = "str"
	case protoreflect.EnumKind:
		kind = string(f.Enum().Name())
	case protoreflect.MessageKind:
		kind = string(f.Message().Name())
	default:
		panic(fmt.Sprintf("%s is of a kind that the packages do not know", f.FullName()))
	}
	if f.IsList() {
		return "list[" + kind + "]"
	}
	return kind
}

// docstring is what the contract says of a message.
func docstring(w words, m protoreflect.MessageDescriptor) string {
	text := strings.ReplaceAll(strings.Join(w.lines(m), "\n    "), `\`, `\\`)
	if strings.Contains(text, "\n") {
		text += "\n    "
	}
	return fmt.Sprintf("    \"\"\"%s\"\"\"\n\n", text)
}

// remark is what the contract says, line by line.
func remark(w words, d protoreflect.Descriptor, lead string) string {
	var b strings.Builder
	for _, l := range w.lines(d) {
		b.WriteString(strings.TrimRight(lead+l, " ") + "\n")
	}
	return b.String()
}
