package main

import (
	"slices"
	"strings"

	"buf.build/go/protovalidate"
	"google.golang.org/protobuf/reflect/protoreflect"
)

// of is the schema of a field of a message.
func (g generated) of(f protoreflect.FieldDescriptor) generated {
	properties, _ := g["properties"].(map[string]any)
	field, _ := properties[string(f.Name())].(map[string]any)
	return field
}

func (g generated) items() generated {
	items, _ := g["items"].(map[string]any)
	return items
}

// demands reports whether the generator demands a field of a message.
func (g generated) demands(f protoreflect.FieldDescriptor) bool {
	required, _ := g["required"].([]any)
	return slices.Contains(required, any(string(f.Name())))
}

// ways are the ways in which a value may be written: as a number or as text.
func (g generated) ways() []generated {
	list, _ := g["anyOf"].([]any)
	if list == nil {
		return []generated{g}
	}
	var all []generated
	for _, way := range list {
		w, _ := way.(map[string]any)
		all = append(all, w)
	}
	return all
}

// scalar keeps of a value its usual form with its range: a number as a number, and
// 64 bits as text, as protobuf writes them.
func (g generated) scalar() object {
	ways := g.ways()
	way := ways[0]
	if _, ranged := way["maximum"]; way["type"] == "integer" && !ranged && len(ways) > 1 {
		way = ways[len(ways)-1]
	}
	s := object{}
	for _, rule := range []string{"type", "minimum", "exclusiveMinimum", "maximum", "exclusiveMaximum", "minLength", "maxLength", "pattern"} {
		if v, has := way[rule]; has {
			s.set(rule, v)
		}
	}
	return s
}

// unspecified reports whether an enum may be left unspecified.
func (g generated) unspecified() bool {
	if items := g.items(); items != nil {
		return items.unspecified()
	}
	return slices.ContainsFunc(g.ways(), func(w generated) bool {
		pattern, _ := w["pattern"].(string)
		names, _ := w["enum"].([]any)
		first := ""
		if len(names) > 0 {
			first, _ = names[0].(string)
		}
		return strings.HasSuffix(pattern, "_UNSPECIFIED$") || strings.HasSuffix(first, "_UNSPECIFIED")
	})
}

// refusesZero reports whether a field that is left out would be refused, since it
// then counts as zero or empty.
func (g generated) refusesZero(f protoreflect.FieldDescriptor) bool {
	if f.HasPresence() {
		return false
	}
	above := func(g generated, rules ...string) bool {
		return slices.ContainsFunc(rules, func(rule string) bool { v, _ := g[rule].(float64); return v > 0 })
	}
	switch way := g.ways()[0]; {
	case f.IsList():
		return above(g, "minItems")
	case f.Enum() != nil:
		return !g.unspecified()
	case f.Kind() == protoreflect.StringKind:
		return above(g, "minLength")
	default:
		least, exclusive := way["exclusiveMinimum"].(float64)
		most, below := way["maximum"].(float64)
		return exclusive && least >= 0 || above(way, "minimum") || below && most < 0
	}
}

func requiresChoice(o protoreflect.OneofDescriptor) bool {
	rules, err := protovalidate.ResolveOneofRules(o)
	return err == nil && rules.GetRequired()
}

// comment is what the contract says about something. Lines that are indented stand
// by themselves, others are joined; an empty line divides.
func comment(d protoreflect.Descriptor) string {
	var out strings.Builder
	fresh := true
	for line := range strings.Lines(d.ParentFile().SourceLocations().ByDescriptor(d).LeadingComments) {
		line = strings.TrimPrefix(strings.TrimRight(line, " \n"), " ")
		switch {
		case line == "":
			out.WriteString("\n\n")
			fresh = true
			continue
		case strings.HasPrefix(line, " "):
			out.WriteString("\n")
		case !fresh:
			out.WriteString(" ")
		}
		out.WriteString(line)
		fresh = false
	}
	return strings.TrimSpace(out.String())
}
