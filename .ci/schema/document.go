package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"

	"google.golang.org/protobuf/reflect/protoreflect"
)

const refs = "#/components/schemas/"

// document is the contract as schemas.
type document struct {
	folder  string
	asked   map[protoreflect.FullName]bool // messages that callers send
	open    map[protoreflect.FullName]bool // enums that a caller may leave unspecified
	sent    map[protoreflect.FullName]bool // enums that a caller sends
	seen    map[protoreflect.FullName]bool
	schemas object
}

func newDocument(methods []protoreflect.MethodDescriptor, folder string) (*document, error) {
	names := func() map[protoreflect.FullName]bool { return map[protoreflect.FullName]bool{} }
	d := &document{folder: folder, asked: names(), open: names(), sent: names(), seen: names()}
	for _, m := range methods {
		if err := d.visit(m.Input()); err != nil {
			return nil, err
		}
	}
	for _, m := range methods {
		for _, message := range []protoreflect.MessageDescriptor{m.Input(), m.Output()} {
			if err := d.message(message); err != nil {
				return nil, err
			}
		}
	}
	return d, nil
}

// visit notes what a caller can send.
func (d *document) visit(m protoreflect.MessageDescriptor) error {
	if d.asked[m.FullName()] {
		return nil
	}
	d.asked[m.FullName()] = true
	given, err := d.generated(m)
	if err != nil {
		return err
	}
	for i := range m.Fields().Len() {
		f := m.Fields().Get(i)
		switch {
		case f.Enum() != nil:
			d.sent[f.Enum().FullName()] = true
			if given.of(f).unspecified() {
				d.open[f.Enum().FullName()] = true
			}
		case f.Message() != nil:
			if err := d.visit(f.Message()); err != nil {
				return err
			}
		}
	}
	return nil
}

// message writes the schema of a message and of what it holds.
func (d *document) message(m protoreflect.MessageDescriptor) error {
	if d.seen[m.FullName()] {
		return nil
	}
	d.seen[m.FullName()] = true
	given, err := d.generated(m)
	if err != nil {
		return err
	}
	properties, required := object{}, []string{}
	for i := range m.Fields().Len() {
		f := m.Fields().Get(i)
		g := given.of(f)
		properties.set(string(f.Name()), d.field(f, g))
		if d.asked[m.FullName()] && (given.demands(f) || g.refusesZero(f)) || !d.asked[m.FullName()] && !f.HasPresence() {
			required = append(required, string(f.Name()))
		}
	}
	schema := object{{"description", comment(m)}, {"type", "object"}, {"properties", properties}}
	if len(required) > 0 {
		schema.set("required", required)
	}
	for i := range m.Oneofs().Len() {
		if o := m.Oneofs().Get(i); !o.IsSynthetic() {
			schema.set("oneOf", choices(o))
		}
	}
	schema.set("additionalProperties", false)
	d.schemas.set(string(m.Name()), schema)
	for i := range m.Fields().Len() {
		f := m.Fields().Get(i)
		if f.Enum() != nil {
			d.enum(f.Enum())
		}
		if f.Message() != nil {
			if err := d.message(f.Message()); err != nil {
				return err
			}
		}
	}
	return nil
}

// field writes the schema of a field.
func (d *document) field(f protoreflect.FieldDescriptor, g generated) object {
	schema := object{{"description", comment(f)}}
	if !f.IsList() {
		return append(schema, d.value(f, g)...)
	}
	schema.set("type", "array")
	for _, rule := range []string{"minItems", "maxItems"} {
		if v, has := g[rule]; has {
			schema.set(rule, v)
		}
	}
	schema.set("items", d.value(f, g.items()))
	return schema
}

func (d *document) value(f protoreflect.FieldDescriptor, g generated) object {
	switch {
	case f.Message() != nil:
		return object{{"$ref", refs + string(f.Message().Name())}}
	case f.Enum() != nil:
		s := object{{"$ref", refs + string(f.Enum().Name())}}
		if d.asked[f.Parent().FullName()] && d.open[f.Enum().FullName()] && !g.unspecified() {
			s.set("not", object{{"const", f.Enum().Values().ByNumber(0).Name()}})
		}
		return s
	}
	return g.scalar()
}

// enum writes the names of an enum with what they mean. Unspecified is left out where
// every request that has it would be refused, and no answer has it.
func (d *document) enum(e protoreflect.EnumDescriptor) {
	if d.seen[e.FullName()] {
		return
	}
	d.seen[e.FullName()] = true
	var names, meanings []string
	text := comment(e) + "\n"
	for i := range e.Values().Len() {
		v := e.Values().Get(i)
		if v.Number() == 0 && d.sent[e.FullName()] && !d.open[e.FullName()] {
			continue
		}
		names, meanings = append(names, string(v.Name())), append(meanings, comment(v))
		text += "\n- " + string(v.Name()) + ": " + comment(v)
	}
	// enumDescriptions is what editors show beside a name.
	d.schemas.set(string(e.Name()), object{{"description", text}, {"type", "string"}, {"enum", names}, {"enumDescriptions", meanings}})
}

// choices says that one of the fields is given, or none where that is allowed.
func choices(o protoreflect.OneofDescriptor) []object {
	var all []object
	for i := range o.Fields().Len() {
		all = append(all, object{{"required", []string{string(o.Fields().Get(i).Name())}}})
	}
	if !requiresChoice(o) {
		all = append(all, object{{"not", object{{"anyOf", all}}}})
	}
	return all
}

// generated is a schema as the generator wrote it.
type generated map[string]any

func (d *document) generated(m protoreflect.MessageDescriptor) (generated, error) {
	text, err := os.ReadFile(filepath.Join(d.folder, string(m.FullName())+".schema.json"))
	if err != nil {
		return nil, err
	}
	var g generated
	if err := json.Unmarshal(text, &g); err != nil {
		return nil, fmt.Errorf("%s: %w", m.FullName(), err)
	}
	return g, nil
}
