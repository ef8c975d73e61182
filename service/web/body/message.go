package body

import (
	"fmt"

	"buf.build/go/protovalidate"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
	"footward.example/footward/service/spelling"
)

// reader goes through a text by the fields of a message. It sets what can be set,
// and collects what cannot.
type reader struct {
	faults []*footwardv1.FieldViolation
	told   *int // bytes that may still be told, by all readers of a batch
	check  bool // the message is an item, whose check is read by itself
	within int  // faults that its check carries
	err    error
}

// refuse notes a fault.
func (r *reader) refuse(path string, why footwardv1.FieldReason, words string) {
	if r.full() {
		return
	}
	f := &footwardv1.FieldViolation{Field: path, Description: spelling.Cut(words, longestWords), Reason: why}
	if *r.told <= 0 {
		f.Description = "has no place here; too much is wrong with this batch to tell more"
	}
	*r.told -= proto.Size(f)
	r.faults = append(r.faults, f)
}

// full reports whether no more is told here: one fault is in any case.
func (r *reader) full() bool {
	return len(r.faults) >= mostFaults || *r.told <= 0 && len(r.faults) > 0
}

// longestWords is how much is told of one fault [characters], longestKey how much
// is shown of a key.
const (
	longestWords = 300
	longestKey   = 60
)

// message reads the fields of an object.
func (r *reader) message(object []byte, m protoreflect.Message, prefix string) {
	d := m.Descriptor()
	seen := map[protoreflect.FieldNumber]bool{}
	members(object, func(key string, value []byte) {
		f := d.Fields().ByJSONName(key)
		if f == nil {
			f = d.Fields().ByTextName(key)
		}
		switch {
		case f == nil && r.full(): // names are dear to compare
			return
		case f == nil:
			key = spelling.Cut(key, longestKey)
			r.refuse(prefix+key, footwardv1.FieldReason_FIELD_REASON_UNKNOWN_VALUE,
				spelling.Unknown("field", key, spelling.Fields(d), true)+elsewhere(d, key))
			return
		}
		path := prefix + string(f.Name())
		if seen[f.Number()] {
			r.refuse(path, footwardv1.FieldReason_FIELD_REASON_CONFLICT, "stands here for the second time")
			return
		}
		seen[f.Number()] = true
		if value[0] == 'n' { // null is as if it were left out
			return
		}
		if o := f.ContainingOneof(); o != nil && !o.IsSynthetic() {
			if other := m.WhichOneof(o); other != nil {
				r.refuse(path, footwardv1.FieldReason_FIELD_REASON_CONFLICT,
					fmt.Sprintf("excludes %s, which is given too; give one of them", other.Name()))
				return
			}
		}
		r.field(value, m, f, path)
	})
}

// elsewhere says which part of a message has a field that it has not itself.
func elsewhere(d protoreflect.MessageDescriptor, key string) string {
	for i := range d.Fields().Len() {
		f := d.Fields().Get(i)
		if f.Message() != nil && (f.Message().Fields().ByJSONName(key) != nil || f.Message().Fields().ByTextName(key) != nil) {
			return fmt.Sprintf("; %s has one of this name", f.Name())
		}
	}
	return ""
}

func (r *reader) field(value []byte, m protoreflect.Message, f protoreflect.FieldDescriptor, path string) {
	switch {
	case f.IsList():
		r.list(value, m, f, path)
	case f.Message() == nil:
		r.value(value, m, f, path)
	case r.check:
		r.alone(value, m.Mutable(f).Message(), path)
	default:
		r.object(value, m.Mutable(f).Message(), path)
	}
}

// object reads a field that holds a message, which is there whatever it holds.
func (r *reader) object(value []byte, m protoreflect.Message, path string) {
	if value[0] != '{' {
		r.refuse(path, footwardv1.FieldReason_FIELD_REASON_UNKNOWN_VALUE,
			"is "+shown(value)+"; must be an object with the fields of "+string(m.Descriptor().Name()))
		return
	}
	r.message(value, m, path+".")
}

// alone reads the check of an item, which carries its own faults.
func (r *reader) alone(value []byte, m protoreflect.Message, path string) {
	if value[0] != '{' {
		r.object(value, m, path)
		return
	}
	own := reader{told: r.told}
	own.message(value, m, "")
	r.within, r.err = len(own.faults), guard.MarkUnread(m.Interface(), own.faults)
}

// list reads a list, unless it is longer than its schema lets it be.
func (r *reader) list(value []byte, m protoreflect.Message, f protoreflect.FieldDescriptor, path string) {
	if value[0] != '[' {
		r.refuse(path, footwardv1.FieldReason_FIELD_REASON_UNKNOWN_VALUE, "is "+shown(value)+"; must be a list")
		return
	}
	n := 0
	elements(value, func([]byte) bool { n++; return true })
	if most := longest(f); n > most {
		r.refuse(path, footwardv1.FieldReason_FIELD_REASON_COUNT,
			fmt.Sprintf("is a list of %d; must contain no more than %d item(s)", n, most))
		return
	}
	if n == 0 {
		return
	}
	items := isItems(m, f)
	list := m.Mutable(f).List()
	n = 0
	elements(value, func(e []byte) bool {
		at := fmt.Sprintf("%s[%d]", path, n)
		n++
		switch {
		case f.Message() == nil:
			r.element(e, m, f, at)
		case items:
			r.item(e, list.AppendMutable().Message())
		default:
			r.object(e, list.AppendMutable().Message(), at)
		}
		return r.err == nil
	})
}

// isItems reports whether a field holds the items of a batch.
func isItems(m protoreflect.Message, f protoreflect.FieldDescriptor) bool {
	_, ok := m.Interface().(batch)
	return ok && f.Name() == itemsField
}

// longest is how many elements a list may have by its schema.
func longest(f protoreflect.FieldDescriptor) int {
	const any = 1 << 16
	rules, err := protovalidate.ResolveFieldRules(f)
	if err != nil || !rules.GetRepeated().HasMaxItems() {
		return any
	}
	return int(rules.GetRepeated().GetMaxItems())
}
