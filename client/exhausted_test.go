package client_test

import (
	"context"
	"errors"
	"fmt"
	"io"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// ending is a stream that is told nothing but its end.
type ending struct {
	grpc.ClientStream
	err error
}

func (e ending) SendMsg(any) error { return e.err }

func (e ending) RecvMsg(any) error { return e.err }

// TestLastOfTheAttemptsHasAStatus has a transport that reports the end of all
// attempts as gRPC does when a server ends the last before the request is written.
func TestLastOfTheAttemptsHasAStatus(t *testing.T) {
	spent := fmt.Errorf("max retries exhausted: failed after 4 attempts: %w", io.EOF)
	for _, c := range []struct {
		err  error
		code codes.Code
	}{
		{spent, codes.Unavailable},
		{status.Error(codes.Internal, "no"), codes.Internal},
		{fmt.Errorf("failed after 4 attempts: %w", status.Error(codes.Unavailable, "no")), codes.Unavailable},
	} {
		caller := dial(t, "127.0.0.1:1", client.WithoutAskingLater(), client.WithDialOptions(
			grpc.WithChainUnaryInterceptor(func(context.Context, string, any, any, *grpc.ClientConn, grpc.UnaryInvoker, ...grpc.CallOption) error {
				return c.err
			}),
			grpc.WithChainStreamInterceptor(func(context.Context, *grpc.StreamDesc, *grpc.ClientConn, string, grpc.Streamer, ...grpc.CallOption) (grpc.ClientStream, error) {
				return ending{err: c.err}, nil
			})))
		_, err := caller.CheckWeld(t.Context(), &footwardv1.CheckWeldRequest{})
		assert.Equal(t, c.code, status.Code(err), "%v", err)

		stream, err := caller.StreamChecks(t.Context())
		require.NoError(t, err)
		if errors.Is(c.err, io.EOF) {
			assert.Equal(t, io.EOF, stream.Send(labelled("")), "why is received")
		}
		_, err = stream.Recv()
		assert.Equal(t, c.code, status.Code(err), "%v", err)
		assert.False(t, errors.Is(err, io.EOF), "not all answers have come: %v", err)
	}
}

func TestStreamThatIsAnsweredEndsByEOF(t *testing.T) {
	_, address := serve(t, &streams{}, "127.0.0.1:0")
	stream, err := dial(t, address).StreamChecks(t.Context())
	require.NoError(t, err)
	require.NoError(t, stream.CloseSend())
	_, err = stream.Recv()
	assert.Equal(t, io.EOF, err)
}
