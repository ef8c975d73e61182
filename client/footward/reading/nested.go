package reading

import (
	"fmt"
	"strings"

	"go.yaml.in/yaml/v3"
	"google.golang.org/protobuf/reflect/protoreflect"
)

// level is a mapping of a document: what it stands under, and what it is read as.
type level struct {
	name    string
	message protoreflect.MessageDescriptor
}

// nested adds to faults about unknown fields that the field belongs to a level above
// or to what stands before it, for then the indentation is wrong and not the name.
func (d document) nested(root *yaml.Node, m protoreflect.MessageDescriptor, faults []Fault) []Fault {
	for i, f := range faults {
		if !strings.HasPrefix(f.Reason, "unknown field ") {
			continue
		}
		if belongs := d.belongs(root, []level{{"the request", m}}, f); belongs != "" {
			name, _, _ := strings.Cut(strings.TrimPrefix(f.Reason, "unknown field "), `"; `)
			name, _, _ = strings.Cut(name, `", `)
			faults[i].Reason = fmt.Sprintf(`unknown field %s"; %s`, name, belongs)
		}
	}
	return faults
}

// belongs finds the key of a fault, and says where the field belongs.
func (d document) belongs(n *yaml.Node, in []level, f Fault) string {
	if n.Kind == yaml.SequenceNode {
		for _, c := range n.Content {
			if s := d.belongs(c, in, f); s != "" {
				return s
			}
		}
	}
	if n.Kind != yaml.MappingNode {
		return ""
	}
	here := in[len(in)-1].message
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		if d.first+key.Line == f.Line && key.Column == f.Column {
			return elsewhere(key.Value, before(n, i), in)
		}
		if field := fieldOf(here, key.Value); field != nil && field.Message() != nil {
			if s := d.belongs(value, append(in[:len(in):len(in)], level{key.Value, field.Message()}), f); s != "" {
				return s
			}
		}
	}
	return ""
}

// before is the key that stands before the one at i; empty: there is none.
func before(n *yaml.Node, i int) string {
	if i == 0 {
		return ""
	}
	return n.Content[i-2].Value
}

// elsewhere says to which level above, or to which field before it, a name belongs.
func elsewhere(name, before string, in []level) string {
	here := in[len(in)-1].message
	if b := fieldOf(here, before); b != nil && b.Message() != nil && fieldOf(b.Message(), name) != nil {
		return "it is a field of " + before + " before it: this line is indented too little"
	}
	for i := len(in) - 2; i >= 0; i-- {
		if fieldOf(in[i].message, name) != nil {
			return "it is a field of " + in[i].name + ": this line is indented too far"
		}
	}
	return ""
}

func fieldOf(m protoreflect.MessageDescriptor, name string) protoreflect.FieldDescriptor {
	if f := m.Fields().ByName(protoreflect.Name(name)); f != nil {
		return f
	}
	return m.Fields().ByJSONName(name)
}
