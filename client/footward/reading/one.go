package reading

import (
	"fmt"
	"io"
	"unicode/utf8"

	"google.golang.org/protobuf/proto"
)

// One reads a single request of any kind from a file. The faults say what in the
// file is not part of the request, the error why it could not be read at all.
func One(r io.Reader, m proto.Message) ([]Fault, error) {
	data, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	switch {
	case err != nil:
		return nil, err
	case len(data) > MaxBytes:
		return nil, fmt.Errorf("is larger than %d MiB", MaxBytes>>20)
	case !utf8.Valid(data):
		return nil, fmt.Errorf("is not text in UTF-8")
	}
	documents := split(plainBreaks(string(data)))
	if len(documents) != 1 {
		return nil, fmt.Errorf("holds %d documents; it must hold one request", len(documents))
	}
	d := documents[0]
	root, err := d.parse()
	if err != nil {
		return []Fault{d.layout(err)}, nil
	}
	if faults := d.forbidden(root, 0); faults != nil {
		return faults, nil
	}
	if other := d.misplaced(root, m.ProtoReflect().Descriptor()); other != nil {
		return other, nil
	}
	return d.nested(root, m.ProtoReflect().Descriptor(), d.faults(d.fill(m))), nil
}
