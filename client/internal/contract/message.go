package contract

import (
	"google.golang.org/protobuf/reflect/protoreflect"
)

// part is what one side of the contract is made of, in the order in which it is
// needed.
type part struct {
	messages []protoreflect.MessageDescriptor
	enums    []protoreflect.EnumDescriptor
	seen     map[protoreflect.FullName]bool
}

// methods are all that are no streams.
func methods() []protoreflect.MethodDescriptor {
	var out []protoreflect.MethodDescriptor
	for _, f := range Files() {
		for i := range f.Services().Len() {
			all := f.Services().Get(i).Methods()
			for j := range all.Len() {
				if m := all.Get(j); !m.IsStreamingClient() && !m.IsStreamingServer() {
					out = append(out, m)
				}
			}
		}
	}
	return out
}

// requests is what callers write.
func requests() *part {
	p := &part{seen: map[protoreflect.FullName]bool{}}
	for _, m := range methods() {
		p.add(m.Input())
	}
	return p
}

// responses is what callers read.
func responses() *part {
	p := &part{seen: map[protoreflect.FullName]bool{}}
	for _, m := range methods() {
		p.add(m.Output())
	}
	return p
}

// add adds a message behind all that its fields hold.
func (p *part) add(m protoreflect.MessageDescriptor) {
	if p.seen[m.FullName()] {
		return
	}
	p.seen[m.FullName()] = true
	for i := range m.Fields().Len() {
		f := m.Fields().Get(i)
		if e := f.Enum(); e != nil && !p.seen[e.FullName()] {
			p.seen[e.FullName()] = true
			p.enums = append(p.enums, e)
		}
		if f.Message() != nil {
			p.add(f.Message())
		}
	}
	p.messages = append(p.messages, m)
}

// values are the names of an enum that stand for something.
func values(e protoreflect.EnumDescriptor) []protoreflect.EnumValueDescriptor {
	var out []protoreflect.EnumValueDescriptor
	for i := range e.Values().Len() {
		out = append(out, e.Values().Get(i))
	}
	return out
}
