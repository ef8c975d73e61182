package guard

import (
	"context"

	"google.golang.org/protobuf/encoding/protowire"
)

// meter works out what a message would take in memory without decoding it: two bytes
// can be a message of two hundred. It stops where decoding would: at the end, at the
// first fault, or once the message takes too much.
type meter struct {
	ctx         context.Context
	spent, most int
	steps       int
	late        error // ctx has ended
}

// deepest is as far as a message is followed; the contract's own are far less deep.
const deepest = 64

// lookEvery is after how many fields a meter asks whether its call goes on.
const lookEvery = 4096

// wire measures a message in protobuf's wire format, and reports whether to go on.
func (m *meter) wire(s *shape, b []byte, depth int) bool {
	if m.spent += s.bytes; m.spent > m.most {
		return false
	}
	for len(b) > 0 {
		if !m.step() {
			return false
		}
		number, kind, n := protowire.ConsumeTag(b)
		if n < 0 {
			return false
		}
		b = b[n:]
		size := protowire.ConsumeFieldValue(number, kind, b)
		if size < 0 {
			// The last field is cut off, but what it holds so far is decoded.
			size = len(b)
		}
		if !m.field(s, number, kind, b[:size], depth) {
			return false
		}
		b = b[size:]
	}
	return true
}

func (m *meter) field(s *shape, number protowire.Number, kind protowire.Type, value []byte, depth int) bool {
	var f *shapeField
	if int(number) < len(s.fields) {
		f = s.fields[number]
	}
	if f == nil || depth > deepest {
		m.spent += 2 * len(value) // kept as it is
		return m.spent <= m.most
	}
	m.spent += f.each
	if kind != protowire.BytesType {
		return m.spent <= m.most
	}
	_, n := protowire.ConsumeVarint(value)
	content := value[max(n, 0):]
	switch {
	case f.message != nil:
		return m.wire(f.message, content, depth+1)
	case f.grows > 0:
		m.spent += f.grows * len(content)
	default:
		m.spent += len(content)
	}
	return m.spent <= m.most
}

func (m *meter) step() bool {
	if m.steps++; m.steps%lookEvery == 0 {
		m.late = m.ctx.Err()
	}
	return m.late == nil
}

// count is how many messages a field has at the top of a message.
func count(b []byte, field protowire.Number) (n uint64) {
	for len(b) > 0 {
		number, kind, size := protowire.ConsumeField(b)
		if size < 0 {
			return n
		}
		if number == field && kind == protowire.BytesType {
			n++
		}
		b = b[size:]
	}
	return n
}
