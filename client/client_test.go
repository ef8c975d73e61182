package client_test

import (
	"context"
	"errors"
	"fmt"
	"net"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/health"
	"google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/resolver"
	"google.golang.org/grpc/resolver/manual"
	"google.golang.org/grpc/status"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// fake answers CheckWeld by a function and counts the calls.
type fake struct {
	footwardv1.UnimplementedCheckServiceServer
	calls  atomic.Int64
	answer func(ctx context.Context, call int64) error
}

func (f *fake) CheckWeld(ctx context.Context, m *footwardv1.CheckWeldRequest) (*footwardv1.CheckWeldResponse, error) {
	if err := f.answer(ctx, f.calls.Add(1)); err != nil {
		return nil, err
	}
	return &footwardv1.CheckWeldResponse{Result: &footwardv1.CheckResult{Label: m.GetLabel()}}, nil
}

func (f *fake) StreamChecks(s grpc.BidiStreamingServer[footwardv1.StreamChecksRequest, footwardv1.StreamChecksResponse]) error {
	return f.answer(s.Context(), f.calls.Add(1))
}

func willing(context.Context, int64) error { return nil }

// serve starts a server on an address of this machine and returns it with the
// address it got.
func serve(t *testing.T, f footwardv1.CheckServiceServer, address string) (*grpc.Server, string) {
	t.Helper()
	listener, err := net.Listen("tcp", address)
	require.NoError(t, err)
	s := grpc.NewServer(grpc.MaxRecvMsgSize(client.MaxMessageBytes))
	footwardv1.RegisterCheckServiceServer(s, f)
	grpc_health_v1.RegisterHealthServer(s, health.NewServer())
	go func() { _ = s.Serve(listener) }()
	t.Cleanup(s.Stop)
	return s, listener.Addr().String()
}

func dial(t *testing.T, target string, options ...client.Option) *client.Client {
	t.Helper()
	c, err := client.Dial(target, options...)
	require.NoError(t, err)
	t.Cleanup(func() { _ = c.Close() })
	return c
}

func TestDeadlineIsAddedOnlyWhereThereIsNone(t *testing.T) {
	var left time.Duration
	var has bool
	f := &fake{answer: func(ctx context.Context, _ int64) error {
		deadline, ok := ctx.Deadline()
		left, has = time.Until(deadline), ok
		return nil
	}}
	_, address := serve(t, f, "127.0.0.1:0")
	weld := func(c *client.Client, ctx context.Context) {
		_, err := c.CheckWeld(ctx, &footwardv1.CheckWeldRequest{})
		require.NoError(t, err)
	}

	c := dial(t, address)
	weld(c, t.Context())
	assert.True(t, has)
	assert.InDelta(t, client.DefaultTimeout.Seconds(), left.Seconds(), 5)

	short, cancel := context.WithTimeout(t.Context(), 3*time.Second)
	defer cancel()
	weld(c, short)
	assert.Less(t, left, 4*time.Second)

	weld(dial(t, address, client.WithTimeout(0)), t.Context())
	assert.False(t, has, "a caller may do without")

	stream, err := c.StreamChecks(t.Context())
	require.NoError(t, err)
	_, err = stream.Recv()
	require.Error(t, err)
	assert.False(t, has, "a stream may last")
}

func TestUnavailableIsTriedAgainAndNothingElse(t *testing.T) {
	for _, c := range []struct {
		name  string
		fails int64
		code  codes.Code
		calls int64
		want  codes.Code
	}{
		{"three failures", 3, codes.Unavailable, 4, codes.OK},
		{"four failures", 4, codes.Unavailable, 4, codes.Unavailable},
		{"shed", 1, codes.ResourceExhausted, 1, codes.ResourceExhausted},
		{"refused", 1, codes.InvalidArgument, 1, codes.InvalidArgument},
		{"broken", 1, codes.Internal, 1, codes.Internal},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := &fake{answer: func(_ context.Context, call int64) error {
				if call <= c.fails {
					return status.Error(c.code, "no")
				}
				return nil
			}}
			_, address := serve(t, f, "127.0.0.1:0")
			_, err := dial(t, address).CheckWeld(t.Context(), &footwardv1.CheckWeldRequest{})
			assert.Equal(t, c.want, status.Code(err), "%v", err)
			assert.Equal(t, c.calls, f.calls.Load())
		})
	}
}

func TestCallsOutliveARestartOfTheServer(t *testing.T) {
	f := &fake{answer: willing}
	s, address := serve(t, f, "127.0.0.1:0")
	c := dial(t, address)
	_, err := c.CheckWeld(t.Context(), &footwardv1.CheckWeldRequest{})
	require.NoError(t, err)

	s.Stop()
	result := make(chan error)
	go func() {
		_, err := c.CheckWeld(t.Context(), &footwardv1.CheckWeldRequest{})
		result <- err
	}()
	time.Sleep(300 * time.Millisecond)
	serve(t, f, address)
	assert.NoError(t, <-result)
}

// cutting is a listener that can cut its connections.
type cutting struct {
	net.Listener
	latest atomic.Pointer[net.Conn]
}

func (l *cutting) Accept() (net.Conn, error) {
	c, err := l.Listener.Accept()
	l.latest.Store(&c)
	return c, err
}

func TestAnswerThatIsCutOffIsAskedForAgain(t *testing.T) {
	for _, c := range []struct {
		name       string
		cut, calls int64
		want       codes.Code
	}{
		{"three times", 3, 4, codes.OK},
		{"every time", 9, 4, codes.Unavailable},
	} {
		t.Run(c.name, func(t *testing.T) {
			listener, err := net.Listen("tcp", "127.0.0.1:0")
			require.NoError(t, err)
			cut := &cutting{Listener: listener}
			f := &fake{answer: func(ctx context.Context, call int64) error {
				if call <= c.cut {
					assert.NoError(t, grpc.SendHeader(ctx, metadata.Pairs("answer", "begun")))
					time.Sleep(50 * time.Millisecond) // the header is on its way
					assert.NoError(t, (*cut.latest.Load()).Close())
				}
				return nil
			}}
			s := grpc.NewServer()
			footwardv1.RegisterCheckServiceServer(s, f)
			grpc_health_v1.RegisterHealthServer(s, health.NewServer())
			go func() { _ = s.Serve(cut) }()
			t.Cleanup(s.Stop)
			_, err = dial(t, listener.Addr().String()).CheckWeld(t.Context(), &footwardv1.CheckWeldRequest{})
			assert.Equal(t, c.want, status.Code(err), "%v", err)
			assert.Equal(t, c.calls, f.calls.Load())
		})
	}
}

func TestWithoutWaitingFailsSoon(t *testing.T) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	address := listener.Addr().String()
	require.NoError(t, listener.Close())

	_, err = dial(t, address, client.WithoutWaiting()).CheckWeld(t.Context(), &footwardv1.CheckWeldRequest{})
	assert.Equal(t, codes.Unavailable, status.Code(err))
}

func TestMessagesUpToTheServicesLimitPass(t *testing.T) {
	_, address := serve(t, &fake{answer: willing}, "127.0.0.1:0")
	label := strings.Repeat("x", 15<<20)
	r, err := dial(t, address).CheckWeld(t.Context(), &footwardv1.CheckWeldRequest{Label: label})
	require.NoError(t, err)
	assert.Len(t, r.GetResult().GetLabel(), len(label))
}

func TestTokenIsAskedForAtEveryCall(t *testing.T) {
	var got []string
	f := &fake{answer: func(ctx context.Context, _ int64) error {
		got = append(got, metadata.ValueFromIncomingContext(ctx, "authorization")...)
		return nil
	}}
	_, address := serve(t, f, "127.0.0.1:0")
	// Health is watched with the token too, so what is asked for is not counted.
	var token atomic.Value
	c := dial(t, address, client.WithToken(func() (string, error) {
		if now := token.Load().(string); now != "" {
			return now, nil
		}
		return "", errors.New("no file")
	}))
	for _, now := range []string{"first", "second"} {
		token.Store(now)
		_, err := c.CheckWeld(t.Context(), &footwardv1.CheckWeldRequest{})
		require.NoError(t, err)
	}
	assert.Equal(t, []string{"Bearer first", "Bearer second"}, got)
	token.Store("")
	_, err := c.CheckWeld(t.Context(), &footwardv1.CheckWeldRequest{})
	assert.ErrorContains(t, err, "no file")
}

func TestTokenNeverTravelsInTheClear(t *testing.T) {
	_, err := client.Dial("checks.example.org:443", client.WithPlaintext(),
		client.WithToken(func() (string, error) { return "secret", nil }))
	assert.Error(t, err)
}

// TestCallsGoToServersThatServe has two addresses behind one name.
func TestCallsGoToServersThatServe(t *testing.T) {
	servers := [2]*fake{{answer: willing}, {answer: willing}}
	checks := [2]*health.Server{health.NewServer(), health.NewServer()}
	r := manual.NewBuilderWithScheme("several")
	var state resolver.State
	for i, f := range servers {
		listener, err := net.Listen("tcp", "127.0.0.1:0")
		require.NoError(t, err)
		s := grpc.NewServer()
		footwardv1.RegisterCheckServiceServer(s, f)
		grpc_health_v1.RegisterHealthServer(s, checks[i])
		go func() { _ = s.Serve(listener) }()
		t.Cleanup(s.Stop)
		state.Addresses = append(state.Addresses, resolver.Address{Addr: listener.Addr().String()})
	}
	r.InitialState(state)
	c := dial(t, "several:///checks", client.WithPlaintext(), client.WithDialOptions(grpc.WithResolvers(r)))
	call := func() {
		_, err := c.CheckWeld(t.Context(), &footwardv1.CheckWeldRequest{})
		require.NoError(t, err)
	}
	require.Eventually(t, func() bool {
		call()
		return servers[0].calls.Load() > 0 && servers[1].calls.Load() > 0
	}, time.Minute, time.Millisecond, "both serve")

	checks[0].Shutdown()
	require.Eventually(t, func() bool {
		before := servers[0].calls.Load()
		for range 10 {
			call()
		}
		return servers[0].calls.Load() == before
	}, time.Minute, time.Millisecond, "the one that shuts down is left out")
}

func TestViolations(t *testing.T) {
	s, err := status.New(codes.InvalidArgument, "refused").WithDetails(
		&errdetails.BadRequest{FieldViolations: []*errdetails.BadRequest_FieldViolation{
			{Field: "weld.leg_mm", Description: "give leg or throat", Reason: "FIELD_REASON_CONFLICT"},
			{Field: "run.length_mm", Description: "is of a kind to come", Reason: "FIELD_REASON_LATER"},
		}})
	require.NoError(t, err)
	got := client.Violations(fmt.Errorf("shoe: %w", s.Err()))
	require.Len(t, got, 2)
	assert.Equal(t, "weld.leg_mm", got[0].GetField())
	assert.Equal(t, footwardv1.FieldReason_FIELD_REASON_CONFLICT, got[0].GetReason())
	assert.Equal(t, footwardv1.FieldReason_FIELD_REASON_UNSPECIFIED, got[1].GetReason())

	assert.Nil(t, client.Violations(nil))
	assert.Nil(t, client.Violations(errors.New("no")))
	assert.Nil(t, client.Violations(status.Error(codes.Unavailable, "no")))
}

func TestCloseRunsWhatItWasGiven(t *testing.T) {
	no := errors.New("no")
	c, err := client.Dial("127.0.0.1:1", client.WithOnClose(func() error { return no }))
	require.NoError(t, err)
	assert.ErrorIs(t, c.Close(), no)
}
