package client_test

import (
	"context"
	"errors"
	"io"
	"net"
	"reflect"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc"
	"google.golang.org/grpc/backoff"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/health"
	"google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/status"
	"google.golang.org/grpc/test/bufconn"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/reflect/protoregistry"
	"google.golang.org/protobuf/types/dynamicpb"
	"google.golang.org/protobuf/types/known/emptypb"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// methods are all of the contract.
func methods(t *testing.T) []protoreflect.MethodDescriptor {
	t.Helper()
	var out []protoreflect.MethodDescriptor
	contract := footwardv1.File_footward_v1_check_proto.Package()
	protoregistry.GlobalFiles.RangeFilesByPackage(contract, func(f protoreflect.FileDescriptor) bool {
		for i := range f.Services().Len() {
			of := f.Services().Get(i).Methods()
			for j := range of.Len() {
				out = append(out, of.Get(j))
			}
		}
		return true
	})
	require.NotEmpty(t, out)
	return out
}

// path is that of a method in a call.
func path(m protoreflect.MethodDescriptor) string {
	return "/" + string(m.Parent().FullName()) + "/" + string(m.Name())
}

// call makes a call of a method with an empty message.
func call(ctx context.Context, c *client.Client, m protoreflect.MethodDescriptor) error {
	in, out := dynamicpb.NewMessage(m.Input()), dynamicpb.NewMessage(m.Output())
	if !m.IsStreamingClient() && !m.IsStreamingServer() {
		return c.Conn().Invoke(ctx, path(m), in, out)
	}
	stream, err := c.Conn().NewStream(ctx, &grpc.StreamDesc{
		ClientStreams: m.IsStreamingClient(), ServerStreams: m.IsStreamingServer(),
	}, path(m))
	if err != nil {
		return err
	}
	if err := stream.SendMsg(in); err != nil && !errors.Is(err, io.EOF) { // EOF: why is received
		return err
	}
	if err := stream.CloseSend(); err != nil {
		return err
	}
	if err := stream.RecvMsg(out); err != nil {
		return err
	}
	if err := stream.RecvMsg(out); !errors.Is(err, io.EOF) {
		return err
	}
	return nil
}

// anyCall answers every method by one function, which is told the method's path.
func anyCall(t *testing.T, listener net.Listener, answer func(method string) error) {
	t.Helper()
	s := grpc.NewServer(grpc.UnknownServiceHandler(func(_ any, stream grpc.ServerStream) error {
		method, _ := grpc.MethodFromServerStream(stream)
		if err := answer(method); err != nil {
			return err
		}
		return stream.SendMsg(&emptypb.Empty{})
	}))
	grpc_health_v1.RegisterHealthServer(s, health.NewServer())
	go func() { _ = s.Serve(listener) }()
	t.Cleanup(s.Stop)
}

func TestClientHasEveryMethodOfTheContract(t *testing.T) {
	for _, m := range methods(t) {
		_, has := reflect.TypeFor[*client.Client]().MethodByName(string(m.Name()))
		assert.True(t, has, "%s", m.FullName())
	}
}

func TestEveryMethodIsAskedFourTimes(t *testing.T) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	var asked sync.Map // of *atomic.Int64, by path
	anyCall(t, listener, func(method string) error {
		n, _ := asked.LoadOrStore(method, new(atomic.Int64))
		n.(*atomic.Int64).Add(1)
		return status.Error(codes.Unavailable, "no")
	})
	c := dial(t, listener.Addr().String())
	var all sync.WaitGroup
	for _, m := range methods(t) {
		all.Go(func() {
			err := call(t.Context(), c, m)
			assert.Equal(t, codes.Unavailable, status.Code(err), "%s: %v", m.FullName(), err)
			n, called := asked.Load(path(m))
			if assert.True(t, called, "%s", m.FullName()) {
				assert.EqualValues(t, 4, n.(*atomic.Int64).Load(), "%s", m.FullName())
			}
		})
	}
	all.Wait()
}

// TestEveryMethodWaitsForAServer has a server that comes when a call that does not
// wait has been given up, twice.
func TestEveryMethodWaitsForAServer(t *testing.T) {
	listener := bufconn.Listen(1 << 16)
	var there atomic.Bool
	connect := client.WithDialOptions(
		grpc.WithContextDialer(func(ctx context.Context, _ string) (net.Conn, error) {
			if !there.Load() {
				return nil, errors.New("nobody listens")
			}
			return listener.DialContext(ctx)
		}),
		grpc.WithConnectParams(grpc.ConnectParams{Backoff: backoff.Config{
			BaseDelay: 10 * time.Millisecond, Multiplier: 1, MaxDelay: 10 * time.Millisecond,
		}}))
	c := dial(t, "passthrough:///later", client.WithPlaintext(), connect)
	var all sync.WaitGroup
	for _, m := range methods(t) {
		all.Go(func() {
			ctx, cancel := context.WithTimeout(t.Context(), 2*time.Minute)
			defer cancel()
			assert.NoError(t, call(ctx, c, m), "%s", m.FullName())
		})
	}
	hasty := dial(t, "passthrough:///later", client.WithPlaintext(), connect, client.WithoutWaiting())
	for range 2 {
		_, err := hasty.CheckWeld(t.Context(), &footwardv1.CheckWeldRequest{})
		require.Equal(t, codes.Unavailable, status.Code(err), "%v", err)
	}
	anyCall(t, listener, func(string) error { return nil })
	there.Store(true)
	all.Wait()
}
