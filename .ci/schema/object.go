package main

import (
	"bytes"
	"encoding/json"
)

// object is a JSON object that keeps its order, so that fields stand as in the
// contract.
type object []member

type member struct {
	name  string
	value any
}

func (o *object) set(name string, value any) { *o = append(*o, member{name, value}) }

// MarshalJSON implements json.Marshaler.
func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	for i, m := range o {
		name, err := json.Marshal(m.name)
		if err != nil {
			return nil, err
		}
		value, err := json.Marshal(m.value)
		if err != nil {
			return nil, err
		}
		if i > 0 {
			b.WriteByte(',')
		}
		b.Write(name)
		b.WriteByte(':')
		b.Write(value)
	}
	return []byte("{" + b.String() + "}"), nil
}
