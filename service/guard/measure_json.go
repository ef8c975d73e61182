package guard

import (
	"bytes"
	"encoding/json"
)

// body measures a message in protobuf's JSON form, as wire does. It returns how many
// items its batch has, be they too many or not.
func (m *meter) body(s *shape, text []byte) (items uint64) {
	j := &jsonMeter{meter: m, rest: text}
	j.blank()
	j.object(s, 0)
	return j.items
}

// jsonMeter reads on from rest. Each of its methods reports whether to go on.
type jsonMeter struct {
	*meter
	rest  []byte
	items uint64
}

func (j *jsonMeter) blank() { j.rest = bytes.TrimLeft(j.rest, " \t\r\n") }

// next takes one character and the blanks around it.
func (j *jsonMeter) next(c byte) bool {
	j.blank()
	if len(j.rest) == 0 || j.rest[0] != c {
		return false
	}
	j.rest = j.rest[1:]
	j.blank()
	return true
}

func (j *jsonMeter) object(s *shape, depth int) bool {
	if j.spent += s.bytes; j.spent > j.most || depth > deepest || !j.next('{') {
		return false
	}
	if j.next('}') {
		return true
	}
	for {
		name, ok := j.text()
		if !ok || !j.next(':') {
			return false
		}
		// A field that the message does not have becomes nothing.
		f := s.names[name]
		if f == nil && !j.skip() || f != nil && !j.values(f, f == s.batch, depth) {
			return false
		}
		if !j.next(',') {
			return j.next('}')
		}
	}
}

// values measures a field: one value, or a list of them.
func (j *jsonMeter) values(f *shapeField, batch bool, depth int) bool {
	if !j.next('[') {
		return j.value(f, depth)
	}
	if j.next(']') {
		return true
	}
	goesOn := true
	for {
		if batch {
			j.items++
		}
		at := j.rest
		if goesOn = goesOn && j.value(f, depth); !goesOn {
			// The items of a batch are counted to the end.
			if j.rest = at; !batch || j.late != nil || !j.skip() {
				return false
			}
		}
		if !j.next(',') {
			return j.next(']') && goesOn
		}
	}
}

func (j *jsonMeter) value(f *shapeField, depth int) bool {
	if j.spent += f.each; j.spent > j.most || !j.step() {
		return false
	}
	j.blank()
	switch {
	case len(j.rest) == 0:
		return false
	case j.rest[0] == '{' && f.message != nil:
		return j.object(f.message, depth+1)
	case j.rest[0] == '{' || j.rest[0] == '[':
		return j.skip()
	case j.rest[0] == '"':
		text, ok := j.text()
		j.spent += len(text)
		return ok
	}
	return j.word()
}

// word takes a number or a literal.
func (j *jsonMeter) word() bool {
	n := bytes.IndexAny(j.rest, ",]} \t\r\n")
	if n <= 0 || bytes.ContainsAny(j.rest[:n], `[{"`) {
		return false
	}
	j.rest = j.rest[n:]
	return true
}

// text takes a string.
func (j *jsonMeter) text() (string, bool) {
	n := end(j.rest)
	if n == 0 {
		return "", false
	}
	raw := j.rest[:n]
	j.rest = j.rest[n:]
	if bytes.IndexByte(raw, '\\') < 0 {
		return string(raw[1 : n-1]), true
	}
	var out string
	err := json.Unmarshal(raw, &out)
	return out, err == nil
}

// end is where a string at the front of b is over; 0: there is none.
func end(b []byte) int {
	if len(b) == 0 || b[0] != '"' {
		return 0
	}
	for i := 1; i < len(b); i++ {
		switch b[i] {
		case '\\':
			i++
		case '"':
			return i + 1
		}
	}
	return 0
}

// skip leaves out what is left of a value, up to the comma or bracket behind it.
func (j *jsonMeter) skip() bool {
	for depth := 0; len(j.rest) > 0; {
		n := 1
		switch j.rest[0] {
		case '{', '[':
			depth++
		case '}', ']', ',':
			if depth == 0 {
				return true
			}
			if j.rest[0] != ',' {
				depth--
			}
		case '"':
			if n = end(j.rest); n == 0 {
				return false
			}
		}
		j.rest = j.rest[n:]
	}
	return false
}
