package client

import (
	"context"
	"errors"
	"io"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
)

// exhausted gives the end of the last attempt its status. When a server ends that
// before the request is written, gRPC says no more than that it got to io.EOF, in
// words: the caller would read an unknown fault or, on a stream, that all answers
// have come, which io.EOF alone says. Only UNAVAILABLE is attempted more than once.
func exhausted(err error) error {
	if _, known := status.FromError(err); known || err == io.EOF || !errors.Is(err, io.EOF) {
		return err
	}
	return status.Error(codes.Unavailable, err.Error())
}

// exhaustedStream does so for the streams of a Client.
func exhaustedStream(ctx context.Context, what *grpc.StreamDesc, conn *grpc.ClientConn, method string, streamer grpc.Streamer, options ...grpc.CallOption) (grpc.ClientStream, error) {
	stream, err := streamer(ctx, what, conn, method, options...)
	if err != nil {
		return nil, exhausted(err)
	}
	return telling{stream}, nil
}

// telling is a stream that tells who receives why it ended, and who sends to ask
// there.
type telling struct{ grpc.ClientStream }

func (s telling) SendMsg(m any) error {
	err := s.ClientStream.SendMsg(m)
	if errors.Is(err, io.EOF) {
		return io.EOF
	}
	return err
}

func (s telling) RecvMsg(m any) error { return exhausted(s.ClientStream.RecvMsg(m)) }
