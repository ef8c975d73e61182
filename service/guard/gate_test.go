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
	"footward.example/footward/service/cost"
	"footward.example/footward/service/guard"
)

// batch returns a batch of bearings.
func batch(n int) *footwardv1.CheckManyRequest {
	m := &footwardv1.CheckManyRequest{}
	for range n {
		m.Items = append(m.Items, &footwardv1.CheckItem{Check: &footwardv1.CheckItem_Bearing{Bearing: &footwardv1.CheckBearingRequest{}}})
	}
	return m
}

// gate returns one with a room and without names or tokens.
func gate(r guard.Room) *guard.Gate { return guard.NewGate(r, guard.Callers{}) }

// short calls under way and waiting, and long ones.
func holdsBoth(t *testing.T, g *guard.Gate, busy, waiting, longBusy, longWaiting int) {
	t.Helper()
	require.Eventually(t, func() bool {
		b, w := g.Short()
		lb, lw := g.Long()
		return b == busy && w == waiting && lb == longBusy && lw == longWaiting
	}, time.Minute, time.Millisecond)
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

// holds waits for the weight of short calls.
func holds(t *testing.T, g *guard.Gate, busy, waiting int) {
	t.Helper()
	holdsBoth(t, g, busy, waiting, 0, 0)
}

func TestGateLetsInWaitsAndTurnsAway(t *testing.T) {
	g, c, ctx := gate(guard.Room{AtOnce: 2, Waiting: 1}), &tally{}, t.Context()
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
	g, c := gate(guard.Room{AtOnce: 1, Waiting: 1}), &tally{}
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

func TestShortCallsCountByTheirWork(t *testing.T) {
	each := cost.Of(batch(1)).Usual
	for _, c := range []struct {
		work   time.Duration
		weight int
	}{
		{each, 1}, {guard.WorkShare - each, 1}, {guard.WorkShare + each, 2}, {3*guard.WorkShare + each, 4}, {guard.LongFrom, 4},
	} {
		g := gate(guard.Room{AtOnce: 8}) // the heaviest leave room for a second
		inside, end := visit(t.Context(), g, &tally{}, batch(int(c.work/each)), "/a/B")
		holds(t, g, c.weight, 0)
		end()
		assert.NoError(t, <-inside)
		holds(t, g, 0, 0)
	}
}

func TestLongBatchesCountByTheirItems(t *testing.T) {
	least := int(guard.LongFrom/cost.Of(batch(1)).Usual) + 1
	for n, weight := range map[int]int{least: 1 + least/guard.BatchShare, 10000: 10} {
		g := gate(guard.Room{AtOnce: 20})
		inside, end := visit(t.Context(), g, &tally{}, batch(n), "/a/B")
		holdsBoth(t, g, 0, 0, weight, 0)
		end()
		assert.NoError(t, <-inside)
		holds(t, g, 0, 0)
	}
}

// TestNeverMoreAtOnceThanTheGateAllows has callers come, wait and give up at random.
func TestNeverMoreAtOnceThanTheGateAllows(t *testing.T) {
	const most = 7
	var batches []*footwardv1.CheckManyRequest
	for _, n := range []int{1, 500, 1000, 1500, 2000, 3000} {
		batches = append(batches, batch(n))
		require.Less(t, cost.Of(batches[len(batches)-1]).Usual, guard.LongFrom)
	}
	g, c := gate(guard.Room{AtOnce: most, Waiting: 20}), &tally{}
	var inside, answered atomic.Int64
	var all sync.WaitGroup
	for range 40 {
		all.Go(func() {
			for range 200 {
				ctx, cancel := context.WithTimeout(t.Context(), time.Duration(rand.IntN(300))*time.Microsecond)
				m := batches[rand.IntN(len(batches))]
				weight := int64(min(1+cost.Of(m).Usual/guard.WorkShare, most/2))
				_, err := g.Unary(c)(ctx, m, &grpc.UnaryServerInfo{FullMethod: "/a/B"}, func(context.Context, any) (any, error) {
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
	pass := gate(guard.Room{AtOnce: 8}).Unary(&tally{})
	info := &grpc.UnaryServerInfo{FullMethod: "/a/B"}
	m := &footwardv1.CheckBearingRequest{}
	ctx, done := context.Background(), func(context.Context, any) (any, error) { return nil, nil }
	b.ReportAllocs()
	for b.Loop() {
		if _, err := pass(ctx, m, info, done); err != nil {
			b.Fatal(err)
		}
	}
}
