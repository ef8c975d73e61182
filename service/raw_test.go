package main

import (
	"fmt"

	"google.golang.org/grpc/mem"
)

// raw is a codec that leaves messages as the bytes they are.
type raw struct{}

func (raw) Name() string { return "proto" }

func (raw) Marshal(v any) (mem.BufferSlice, error) {
	b, ok := v.([]byte)
	if !ok {
		return nil, fmt.Errorf("%T is no []byte", v)
	}
	return mem.BufferSlice{mem.SliceBuffer(b)}, nil
}

func (raw) Unmarshal(data mem.BufferSlice, v any) error {
	b, ok := v.(*[]byte)
	if !ok {
		return fmt.Errorf("%T is no *[]byte", v)
	}
	*b = data.Materialize()
	return nil
}
