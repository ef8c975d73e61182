package server

import (
	"context"
	"fmt"

	"google.golang.org/grpc"
	"google.golang.org/grpc/mem"

	"footward.example/footward/client"
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

var rawly = grpc.ForceCodecV2(raw{})

// invoke makes a call whose messages stay bytes.
func invoke(ctx context.Context, c *client.Client, method string, wire []byte) ([]byte, error) {
	var got []byte
	err := c.Conn().Invoke(ctx, method, wire, &got, rawly)
	return got, err
}
