package server

import (
	"context"
	"fmt"
	"io"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

func TestDeadlineThatIsPastOrTooShortIsRefused(t *testing.T) {
	o := production()
	h := start(t, o)
	w := h.connect(t)
	require.NoError(t, w.open(1, unary, "grpc-timeout", "1n"))
	require.NoError(t, w.WriteData(1, true, []byte{0, 0, 0, 0, 0}))
	assert.Equal(t, "4", w.status(t, 1), "DEADLINE_EXCEEDED")

	c := h.dial(t)
	for range 100 {
		ctx, cancel := context.WithTimeout(t.Context(), time.Millisecond)
		_, err := c.CheckMany(ctx, batch(t, 10))
		cancel()
		require.Equal(t, codes.DeadlineExceeded, status.Code(err), "%v", err)
	}
	h.idle(t)
	_, err := c.CheckBearing(t.Context(), bearing())
	assert.NoError(t, err)
}

// TestTooLittleTimeIsToldSo has a server that asks for more than the client gives.
func TestTooLittleTimeIsToldSo(t *testing.T) {
	o := production()
	o.Deadlines.Least = time.Minute
	h := start(t, o)
	ctx, cancel := context.WithTimeout(t.Context(), 10*time.Second)
	defer cancel()
	c := h.dial(t)
	_, err := c.CheckBearing(ctx, bearing())
	assert.Equal(t, codes.DeadlineExceeded, status.Code(err))
	assert.Equal(t, "DEADLINE_TOO_SHORT", reason(err))
	assert.ErrorContains(t, err, "1m0s")
	stream, err := c.StreamChecks(ctx)
	require.NoError(t, err)
	_, err = stream.Recv()
	assert.Equal(t, "DEADLINE_TOO_SHORT", reason(err))
}

// long is a call that would take a second: column bases under 400 combinations.
func long(t *testing.T) *footwardv1.CheckManyRequest {
	t.Helper()
	m := &footwardv1.CheckManyRequest{}
	item := columnBaseOf(t, 400)
	for range 100 {
		m.Items = append(m.Items, item)
	}
	return m
}

// TestServerEndsCallsByItself: whatever the client asks for, the server's own
// bounds hold, and the work stops.
func TestServerEndsCallsByItself(t *testing.T) {
	o := production()
	o.Deadlines.Default, o.Deadlines.Longest, o.Deadlines.Streams = 100*time.Millisecond, 200*time.Millisecond, 150*time.Millisecond
	h := start(t, o)
	m := long(t)
	for name, ctx := range map[string]context.Context{"no deadline": context.Background(), "too long": deadline(t, time.Hour)} {
		_, err := h.dial(t, client.WithTimeout(0)).CheckMany(ctx, m)
		assert.Equal(t, codes.DeadlineExceeded, status.Code(err), "%s: %v", name, err)
		h.idle(t)
	}
	// A message that trickles in is waited for no longer.
	w := h.connect(t)
	require.NoError(t, w.open(1, unary))
	require.NoError(t, w.WriteData(1, false, []byte{0, 0, 0, 1, 0, 1, 2, 3}))
	assert.Equal(t, "4", w.status(t, 1))

	stream, err := h.dial(t).StreamChecks(t.Context())
	require.NoError(t, err)
	_, err = stream.Recv()
	assert.Equal(t, codes.DeadlineExceeded, status.Code(err))
}

func TestIdleStreamIsEnded(t *testing.T) {
	o := production()
	o.Deadlines.Idle = time.Second
	h := start(t, o)
	stream, err := h.dial(t).StreamChecks(t.Context())
	require.NoError(t, err)
	for range 6 { // longer than the bound, but never idle
		require.NoError(t, stream.Send(&footwardv1.StreamChecksRequest{Items: batch(t, 1).GetItems()}))
		_, err = stream.Recv()
		require.NoError(t, err)
		time.Sleep(o.Deadlines.Idle / 4)
	}
	_, err = stream.Recv()
	assert.Equal(t, codes.DeadlineExceeded, status.Code(err))
}

// TestCancelEndsTheWork in a batch and in a stream.
func TestCancelEndsTheWork(t *testing.T) {
	h := start(t, production())
	c, m := h.dial(t), long(t)
	busy := func() bool { return h.value(t, "footward_calls_under_way") > 0 }
	fastest, slowest := time.Hour, time.Duration(0)
	over := func() {
		took := h.idle(t)
		fastest, slowest = min(fastest, took), max(slowest, took)
	}
	for range 3 {
		ctx, cancel := context.WithCancel(t.Context())
		done := make(chan error, 1)
		go func() {
			_, err := c.CheckMany(ctx, m)
			done <- err
		}()
		require.Eventually(t, busy, enough, time.Millisecond)
		cancel()
		over()
		require.Equal(t, codes.Canceled, status.Code(<-done))

		ctx, cancel = context.WithCancel(t.Context())
		stream, err := c.StreamChecks(ctx)
		require.NoError(t, err)
		require.NoError(t, stream.Send(&footwardv1.StreamChecksRequest{Items: m.GetItems()}))
		require.Eventually(t, busy, enough, time.Millisecond)
		cancel()
		over()
		_, err = stream.Recv()
		require.NotErrorIs(t, err, io.EOF)
	}
	t.Logf("work was gone %v to %v after its call", fastest, slowest)
}

// columnBaseOf is that of the demo under n combinations.
func columnBaseOf(t *testing.T, n int) *footwardv1.CheckItem {
	t.Helper()
	for _, i := range demo(t) {
		m := i.GetColumnBase()
		if m == nil {
			continue
		}
		cases := &footwardv1.LoadCases{}
		for k := range n {
			cases.Cases = append(cases.Cases, &footwardv1.LoadCase{
				Name: fmt.Sprint(k), Forces: &footwardv1.ForcesAtFoot{NKn: -20, MXKnm: 1 + float64(k%7), MYKnm: float64(k % 5)},
			})
		}
		m.Loads = &footwardv1.CheckColumnBaseRequest_LoadCases{LoadCases: cases}
		return i
	}
	t.Fatal("the demo has no column base")
	return nil
}

func deadline(t *testing.T, d time.Duration) context.Context {
	t.Helper()
	ctx, cancel := context.WithTimeout(context.Background(), d)
	t.Cleanup(cancel)
	return ctx
}
