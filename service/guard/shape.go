package guard

import (
	"reflect"
	"sync"

	"buf.build/gen/go/bufbuild/protovalidate/protocolbuffers/go/buf/validate"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/reflect/protoregistry"
)

// shape is what one kind of message takes in memory, and its fields.
type shape struct {
	bytes  int           // of one, by itself
	fields []*shapeField // by number; nil: none has it
	names  map[string]*shapeField
	batch  *shapeField // its list of items, if it is a batch
}

type shapeField struct {
	message *shape // nil: no message
	// each is what a value takes beside what it is itself: a pointer to it, its place
	// in a list.
	each int
	// grows is how many bytes in memory one of a packed list can become; 0: it is no
	// such list.
	grows  int
	number protoreflect.FieldNumber
	name   string
	most   uint64 // items of a batch
}

// What Go takes for values that are not in the message itself [bytes].
const (
	pointer = 16 // a small value by itself, or the wrapper of a choice
	place   = 16 // in a list, which has grown to twice its length
	text    = 24 // a string by itself, without its characters
)

// shapes keeps what shapeOf has found, by the full name of the message.
var shapes sync.Map

// shapeOf returns the shape of a message of the contract.
func shapeOf(d protoreflect.MessageDescriptor) *shape {
	if s, known := shapes.Load(d.FullName()); known {
		return s.(*shape)
	}
	s := newShape(d, map[protoreflect.FullName]*shape{})
	shapes.Store(d.FullName(), s)
	return s
}

func newShape(d protoreflect.MessageDescriptor, made map[protoreflect.FullName]*shape) *shape {
	if s, known := made[d.FullName()]; known {
		return s
	}
	s := &shape{bytes: sizeOf(d), names: map[string]*shapeField{}}
	made[d.FullName()] = s
	for i := range d.Fields().Len() {
		f := d.Fields().Get(i)
		own := newShapeField(f)
		if m := f.Message(); m != nil {
			own.message = newShape(m, made)
		}
		for len(s.fields) <= int(f.Number()) {
			s.fields = append(s.fields, nil)
		}
		s.fields[f.Number()] = own
		s.names[f.JSONName()], s.names[string(f.Name())] = own, own
		if f.IsList() && f.Message() != nil && f.Message().FullName() == "footward.v1.CheckItem" {
			rules, _ := proto.GetExtension(f.Options(), validate.E_Field).(*validate.FieldRules)
			own.most = rules.GetRepeated().GetMaxItems()
			s.batch = own
		}
	}
	return s
}

func newShapeField(f protoreflect.FieldDescriptor) *shapeField {
	own := &shapeField{number: f.Number(), name: string(f.Name())}
	long := f.Kind() == protoreflect.StringKind || f.Kind() == protoreflect.BytesKind
	switch {
	case f.IsList() && long:
		own.each = text + place
	case f.IsList():
		own.each = place
	case f.HasPresence() && long:
		own.each = text
	case f.HasPresence():
		own.each = pointer
	}
	if f.IsList() && f.Message() == nil && !long {
		own.grows = place
		switch f.Kind() {
		case protoreflect.DoubleKind, protoreflect.FloatKind, protoreflect.Fixed32Kind, protoreflect.Fixed64Kind,
			protoreflect.Sfixed32Kind, protoreflect.Sfixed64Kind:
			own.grows = 2
		}
	}
	return own
}

// sizeOf is what Go takes for an empty message, with what is lost to the classes of
// sizes that memory is given out in.
func sizeOf(d protoreflect.MessageDescriptor) int {
	const unknown = 256
	t, err := protoregistry.GlobalTypes.FindMessageByName(d.FullName())
	if err != nil {
		return unknown
	}
	own := reflect.TypeOf(t.Zero().Interface())
	if own.Kind() != reflect.Pointer {
		return unknown
	}
	size := int(own.Elem().Size())
	return size + size/8
}
