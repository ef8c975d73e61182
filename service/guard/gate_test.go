package guard_test

import (
	"context"
	"math/rand/v2"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

func items(n int) *footwardv1.CheckManyRequest {
	return &footwardv1.CheckManyRequest{Items: make([]*footwardv1.CheckItem, n)}
}

// visit sends a message through a gate to a handler that ends when it is let go.
func visit(ctx context.Context, g *guard.Gate, c *tally, m any, method string) (ended chan error, letGo func()) {
	ended = make(chan error, 1)
	hold := make(chan struct{})
	go func() {
		_, err := g.Unary(c)(ctx, m, &grpc.UnaryServerInfo{FullMethod: method}, func(context.Context, any) (any, error) {
			<-hold
			return nil, nil
		})
		ended <- err
	}()
	return ended, func() { close(hold) }
}

func holds(t *testing.T, g *guard.Gate, busy, waiting int) {
	t.Helper()
	require.Eventually(t, func() bool {
		b, w := g.Load()
		return b == busy && w == waiting
	}, time.Minute, time.Millisecond)
}

func TestGateLetsInWaitsAndTurnsAway(t *testing.T) {
	g, c, ctx := guard.NewGate(2, 1), &tally{}, t.Context()
	first, endFirst := visit(ctx, g, c, nil, "/a/B")
	second, endSecond := visit(ctx, g, c, nil, "/a/B")
	holds(t, g, 2, 0)
	waits, endWaiting := visit(ctx, g, c, nil, "/a/B")
	holds(t, g, 2, 1)

	away, _ := visit(ctx, g, c, nil, "/a/B")
	s := status.Convert(<-away)
	assert.Equal(t, codes.ResourceExhausted, s.Code())
	assert.Contains(t, s.Message(), "2 calls are worked on and 1 wait")
	require.Len(t, s.Details(), 2)
	again := s.Details()[0].(*errdetails.RetryInfo).GetRetryDelay().AsDuration()
	assert.True(t, again >= 200*time.Millisecond && again < 600*time.Millisecond, again)
	assert.Equal(t, "OVERLOADED", s.Details()[1].(*errdetails.ErrorInfo).GetReason())
	assert.Equal(t, map[footwardv1.CallReason]int{footwardv1.CallReason_CALL_REASON_OVERLOADED: 1}, c.away)

	health, endHealth := visit(ctx, g, c, nil, "/grpc.health.v1.Health/Check")
	endHealth()
	assert.NoError(t, <-health, "never turned away")

	endFirst()
	assert.NoError(t, <-first)
	holds(t, g, 2, 0)
	endWaiting()
	assert.NoError(t, <-waits)
	endSecond()
	assert.NoError(t, <-second)
	holds(t, g, 0, 0)
}

func TestWhoGivesUpWaitingMakesRoom(t *testing.T) {
	g, c := guard.NewGate(1, 1), &tally{}
	inside, end := visit(t.Context(), g, c, nil, "/a/B")
	holds(t, g, 1, 0)
	ctx, cancel := context.WithCancel(t.Context())
	waits, _ := visit(ctx, g, c, nil, "/a/B")
	holds(t, g, 1, 1)
	cancel()
	assert.Equal(t, codes.Canceled, status.Code(<-waits))
	holds(t, g, 1, 0)
	end()
	assert.NoError(t, <-inside)
	holds(t, g, 0, 0)
}

func TestBatchesCountByTheirItems(t *testing.T) {
	for n, weight := range map[int]int{1: 1, 511: 1, 512: 2, 1500: 3, 10000: 5} {
		g := guard.NewGate(10, 0)
		inside, end := visit(t.Context(), g, &tally{}, items(n), "/a/B")
		holds(t, g, weight, 0) // the largest leave room for a second
		end()
		assert.NoError(t, <-inside)
	}
}

// TestNeverMoreAtOnceThanTheGateAllows has callers come, wait and give up at random.
func TestNeverMoreAtOnceThanTheGateAllows(t *testing.T) {
	const most = 7
	g, c := guard.NewGate(most, 20), &tally{}
	var inside, answered atomic.Int64
	var all sync.WaitGroup
	for range 40 {
		all.Go(func() {
			for range 200 {
				ctx, cancel := context.WithTimeout(t.Context(), time.Duration(rand.IntN(300))*time.Microsecond)
				n := rand.IntN(2000)
				weight := int64(min(1+n/512, most/2))
				_, err := g.Unary(c)(ctx, items(n), &grpc.UnaryServerInfo{FullMethod: "/a/B"}, func(context.Context, any) (any, error) {
					assert.LessOrEqual(t, inside.Add(weight), int64(most))
					time.Sleep(time.Duration(rand.IntN(50)) * time.Microsecond)
					inside.Add(-weight)
					answered.Add(1)
					return nil, nil
				})
				cancel()
				if code := status.Code(err); err != nil {
					assert.Contains(t, []codes.Code{codes.ResourceExhausted, codes.DeadlineExceeded}, code)
				}
			}
		})
	}
	all.Wait()
	assert.Positive(t, answered.Load())
	holds(t, g, 0, 0)
}

func BenchmarkGate(b *testing.B) {
	pass := guard.NewGate(8, 0).Unary(&tally{})
	info := &grpc.UnaryServerInfo{FullMethod: "/a/B"}
	ctx, done := context.Background(), func(context.Context, any) (any, error) { return nil, nil }
	b.ReportAllocs()
	for b.Loop() {
		if _, err := pass(ctx, nil, info, done); err != nil {
			b.Fatal(err)
		}
	}
}
