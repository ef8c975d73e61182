package server

import (
	"bytes"
	"context"
	"errors"
	"io"
	"runtime"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
)

func heap() int64 {
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return int64(m.HeapAlloc)
}

// TestSlowReaderHoldsUpItselfAlone sends on a stream and never reads: the server
// stops to take more, keeps little, and answers others although it works on one
// call at a time.
func TestSlowReaderHoldsUpItselfAlone(t *testing.T) {
	o := production()
	o.AtOnce = 1
	h := start(t, o)
	piece := &footwardv1.StreamChecksRequest{Items: batch(t, 300).GetItems()}
	before := heap()
	var sent atomic.Int64
	ctx, cancel := context.WithCancel(t.Context())
	var all sync.WaitGroup
	for range 4 {
		stream, err := h.dial(t).StreamChecks(ctx)
		require.NoError(t, err)
		all.Go(func() {
			for stream.Send(piece) == nil {
				sent.Add(1)
			}
		})
	}
	last := int64(-1)
	require.Eventually(t, func() bool {
		now := sent.Load()
		defer func() { last = now }()
		return now == last && now > 0
	}, 5*time.Second, 150*time.Millisecond, "it goes on to take messages")
	grown := heap() - before
	n := keepCallingFor(t, h, 100*time.Millisecond)
	cancel()
	all.Wait()
	assert.Less(t, grown, int64(64<<20))
	t.Logf("4 streams stopped after %d messages of %d KiB, and both sides keep %d KiB; %d calls of others went through",
		last, proto.Size(piece)>>10, grown>>10, n)
}

func keepCallingFor(t *testing.T, h *house, d time.Duration) int {
	t.Helper()
	stop := keepCalling(t, h.dial(t))
	time.Sleep(d)
	return stop()
}

// TestSameRequestHasTheSameBytesAlways in 10 000 calls of 64 callers; 1000 with
// -short.
func TestSameRequestHasTheSameBytesAlways(t *testing.T) {
	h := start(t, production())
	c := h.dial(t)
	for _, i := range demo(t) {
		m := i.GetAnchorRods()
		if m == nil {
			continue
		}
		m.Detail = footwardv1.Detail_DETAIL_DERIVATION
		wire, err := proto.Marshal(m)
		require.NoError(t, err)
		want, err := invoke(t.Context(), c, footwardv1.CheckService_CheckAnchorRods_FullMethodName, wire)
		require.NoError(t, err)
		require.NotEmpty(t, want)
		var left, other atomic.Int64
		left.Store(10000)
		if testing.Short() {
			left.Store(1000)
		}
		var all sync.WaitGroup
		for range 64 {
			all.Go(func() {
				for left.Add(-1) >= 0 {
					got, err := invoke(t.Context(), c, footwardv1.CheckService_CheckAnchorRods_FullMethodName, wire)
					if err != nil || !bytes.Equal(got, want) {
						other.Add(1)
					}
				}
			})
		}
		all.Wait()
		assert.Zero(t, other.Load(), "64 callers are neither turned away nor answered otherwise")
	}
}

// held answers batches once it is let go.
type held struct {
	footwardv1.CheckServiceServer
	gone chan struct{}
}

func (s *held) CheckMany(ctx context.Context, m *footwardv1.CheckManyRequest) (*footwardv1.CheckManyResponse, error) {
	<-s.gone
	return s.CheckServiceServer.CheckMany(ctx, m)
}

// TestDrainAnswersEveryCallUnderWay and every one that waits. No call ends before
// the drain has begun, however slow the machine is.
func TestDrainAnswersEveryCallUnderWay(t *testing.T) {
	const name = "footward.test.Held"
	s := &held{CheckServiceServer: api.NewCheck(nil, nil, 1<<20), gone: make(chan struct{})}
	h := start(t, production(), func(g *grpc.Server) {
		d := footwardv1.CheckService_ServiceDesc
		d.ServiceName = name
		g.RegisterService(&d, s)
	})
	var once sync.Once
	release := func() { once.Do(func() { close(s.gone) }) }
	defer release()
	c := h.dial(t)
	watch, err := grpc_health_v1.NewHealthClient(h.dial(t).Conn()).Watch(t.Context(), &grpc_health_v1.HealthCheckRequest{})
	require.NoError(t, err)
	_, err = watch.Recv()
	require.NoError(t, err)
	m := batch(t, 10)
	var all sync.WaitGroup
	var answered atomic.Int64
	const callers = 32
	for range callers {
		all.Go(func() {
			r := &footwardv1.CheckManyResponse{}
			err := c.Conn().Invoke(t.Context(), "/"+name+"/CheckMany", m, r)
			if assert.NoError(t, err) && assert.Len(t, r.GetOutcomes(), len(m.GetItems())) {
				answered.Add(1)
			}
		})
	}
	// Calls that were not yet sent would be refused: all have been read.
	require.Eventually(t, func() bool {
		return h.value(t, "footward_calls_under_way")+h.value(t, "footward_calls_waiting") == callers
	}, enough, time.Millisecond)
	drained := make(chan error, 1)
	go func() { drained <- h.Drain(deadline(t, 10*time.Second), 0) }()
	said, err := watch.Recv()
	require.NoError(t, err)
	assert.Equal(t, grpc_health_v1.HealthCheckResponse_NOT_SERVING, said.GetStatus())
	release()
	require.NoError(t, <-drained)
	all.Wait()
	assert.Equal(t, int64(callers), answered.Load())
}

// TestMessagesAboveTheLimitAreRefused both ways.
func TestMessagesAboveTheLimitAreRefused(t *testing.T) {
	o := production()
	o.MessageBytes = 256 << 10
	c := start(t, o).dial(t)
	large := bearing()
	large.Label = string(bytes.Repeat([]byte("x"), o.MessageBytes))
	_, err := c.CheckBearing(t.Context(), large)
	assert.Equal(t, codes.ResourceExhausted, status.Code(err), "taken: %v", err)
	many := batch(t, 400)
	for _, i := range many.GetItems() {
		if m := i.GetWeld(); m != nil {
			m.Detail = footwardv1.Detail_DETAIL_DERIVATION
		}
	}
	require.Less(t, proto.Size(many), o.MessageBytes)
	_, err = c.CheckMany(t.Context(), many)
	assert.Equal(t, codes.OutOfRange, status.Code(err), "sent: %v", err)
	assert.ErrorContains(t, err, "send fewer items")
	_, err = c.CheckMany(t.Context(), &footwardv1.CheckManyRequest{Items: make([]*footwardv1.CheckItem, 10001)})
	assert.Equal(t, codes.InvalidArgument, status.Code(err))
	assert.ErrorContains(t, err, "10001")
	assert.ErrorContains(t, err, "10000")
	_, err = c.CheckBearing(t.Context(), bearing())
	assert.NoError(t, err)
}

// TestBrokenMessagesAreRefusedByGRPC: bytes that are no message, texts that are
// none, fields of another type. gRPC answers INTERNAL by itself, before anything
// of the service runs; nothing is logged, and nothing panics.
func TestBrokenMessagesAreRefusedByGRPC(t *testing.T) {
	h := start(t, production())
	c := h.dial(t)
	whole, err := proto.Marshal(bearing())
	require.NoError(t, err)
	bad := map[string][]byte{
		"junk": {0xff, 0xff, 0xff, 0xff}, "endless varint": bytes.Repeat([]byte{0x80}, 20), "group without end": {0x0b},
		"label that is no UTF-8": {0x0a, 2, 0xff, 0xfe}, "truncated": whole[:len(whole)-3],
	}
	var methods []string
	for name, s := range h.grpc.GetServiceInfo() {
		for _, m := range s.Methods {
			if !m.IsClientStream && !m.IsServerStream {
				methods = append(methods, "/"+name+"/"+m.Name)
			}
		}
	}
	require.Greater(t, len(methods), 20)
	for _, method := range methods {
		for name, wire := range bad {
			_, err := invoke(t.Context(), c, method, wire)
			assert.Contains(t, []codes.Code{codes.Internal, codes.InvalidArgument, codes.OK, codes.NotFound}, status.Code(err), "%s: %s: %v", method, name, err)
			assert.NotErrorIs(t, err, io.EOF)
		}
	}
	// Fields of another type are fields that are not known.
	other, err := proto.Marshal(&footwardv1.CheckManyRequest{Items: batch(t, 3).GetItems()})
	require.NoError(t, err)
	_, err = invoke(t.Context(), c, unary, other)
	assert.Contains(t, []codes.Code{codes.Internal, codes.InvalidArgument}, status.Code(err))
	stream, err := c.Conn().NewStream(t.Context(), &footwardv1.CheckService_ServiceDesc.Streams[0], footwardv1.CheckService_StreamChecks_FullMethodName, rawly)
	require.NoError(t, err)
	require.NoError(t, stream.SendMsg(bad["junk"]))
	var got []byte
	err = stream.RecvMsg(&got)
	assert.False(t, err == nil || errors.Is(err, io.EOF))
	assert.Zero(t, h.value(t, "footward_panics_total"))
	_, err = c.CheckBearing(t.Context(), bearing())
	assert.NoError(t, err)
	assert.NotContains(t, h.log.String(), "panic")
}
