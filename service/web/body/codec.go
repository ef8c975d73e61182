package body

import (
	"bytes"
	"encoding/json"
	"fmt"
	"sync"

	"google.golang.org/grpc"
	"google.golang.org/grpc/mem"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoregistry"
)

// ServerOption has a gRPC server read and write messages as JSON, so that a
// request is read where its caller is known and has been let in.
func ServerOption() grpc.ServerOption { return grpc.ForceServerCodecV2(codec{}) }

type codec struct{}

// Name implements encoding.CodecV2.
func (codec) Name() string { return "json" }

// Unmarshal implements encoding.CodecV2.
func (codec) Unmarshal(data mem.BufferSlice, v any) error {
	m, ok := v.(proto.Message)
	if !ok {
		return fmt.Errorf("%T is no message", v)
	}
	text := data.MaterializeToBuffer(mem.DefaultBufferPool())
	defer text.Free()
	return Read(text.ReadOnlyData(), m)
}

// Marshal implements encoding.CodecV2.
func (codec) Marshal(v any) (mem.BufferSlice, error) {
	m, ok := v.(proto.Message)
	if !ok {
		return nil, fmt.Errorf("%T is no message", v)
	}
	text, err := Write(m)
	if err != nil {
		return nil, err
	}
	return mem.BufferSlice{mem.SliceBuffer(text)}, nil
}

// marshal writes fields under their names in the contract, and writes them even
// when they are zero or empty, so that a reader finds every one. Absent is only
// what has no value, such as the utilization where there is no resistance.
var marshal = protojson.MarshalOptions{UseProtoNames: true, EmitDefaultValues: true, Resolver: protoregistry.GlobalTypes}

// Write returns a message as JSON, on one line that has no blank it could do
// without: protobuf strews some in, lest anybody compare texts.
func Write(m proto.Message) ([]byte, error) {
	room := scratch.Get().(*[]byte)
	text, err := marshal.MarshalAppend((*room)[:0], m)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	out.Grow(len(text) + 1)
	err = json.Compact(&out, text)
	if *room = text; cap(text) <= mostScratch {
		scratch.Put(room)
	}
	return out.Bytes(), err
}

// scratch is where a text is written before it is compacted; what is larger than
// the answer to one check is let go.
var scratch = sync.Pool{New: func() any { return new([]byte) }}

const mostScratch = 256 << 10
