package guard_test

import (
	"context"
	"maps"
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

// Sizes of calls.
const small, middling, longest = "small", "middling", "long"

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

// load is how much of a size of calls is worked on and waits.
type load struct{ busy, waiting int }

// loads are those of sizes of which there is any.
func loads(g *guard.Gate) map[string]load {
	out := map[string]load{}
	for size, tell := range g.Loads() {
		if busy, waiting := tell(); busy+waiting > 0 {
			out[size] = load{busy, waiting}
		}
	}
	return out
}

// holds waits until a gate holds nothing but so much of a size.
func holds(t *testing.T, g *guard.Gate, size string, busy, waiting int) {
	t.Helper()
	want := map[string]load{}
	if busy+waiting > 0 {
		want[size] = load{busy, waiting}
	}
	require.Eventually(t, func() bool { return maps.Equal(want, loads(g)) }, time.Minute, time.Millisecond, "%s", size)
}

func TestGateLetsInWaitsAndTurnsAway(t *testing.T) {
	g, c, ctx := gate(guard.Room{AtOnce: 2, Waiting: 1}), &tally{}, t.Context()
	first, endFirst := visit(ctx, g, c, nil, "/a/B")
	second, endSecond := visit(ctx, g, c, nil, "/a/B")
	holds(t, g, small, 2, 0)
	waits, endWaiting := visit(ctx, g, c, nil, "/a/B")
	holds(t, g, small, 2, 1)

	away, _ := visit(ctx, g, c, nil, "/a/B")
	s := status.Convert(<-away)
	assert.Equal(t, codes.ResourceExhausted, s.Code())
	assert.Contains(t, s.Message(), "2 small calls are worked on and 1 wait")
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
	holds(t, g, small, 2, 0)
	endWaiting()
	assert.NoError(t, <-waits)
	endSecond()
	assert.NoError(t, <-second)
	holds(t, g, small, 0, 0)
}

func TestWhoGivesUpWaitingMakesRoom(t *testing.T) {
	g, c := gate(guard.Room{AtOnce: 1, Waiting: 1}), &tally{}
	inside, end := visit(t.Context(), g, c, nil, "/a/B")
	holds(t, g, small, 1, 0)
	ctx, cancel := context.WithCancel(t.Context())
	waits, _ := visit(ctx, g, c, nil, "/a/B")
	holds(t, g, small, 1, 1)
	cancel()
	assert.Equal(t, codes.Canceled, status.Code(<-waits))
	holds(t, g, small, 1, 0)
	end()
	assert.NoError(t, <-inside)
	holds(t, g, small, 0, 0)
}

// worth returns a request whose work is estimated to take so long, from 1 ms up.
func worth(d time.Duration) *footwardv1.CheckColumnBaseRequest {
	of := func(n int) *footwardv1.CheckColumnBaseRequest {
		return &footwardv1.CheckColumnBaseRequest{Loads: &footwardv1.CheckColumnBaseRequest_LoadCases{
			LoadCases: &footwardv1.LoadCases{Cases: make([]*footwardv1.LoadCase, n)},
		}}
	}
	first := cost.Of(of(1)).Usual
	return of(1 + int((d-first)/(cost.Of(of(2)).Usual-first)))
}

func TestCallsCountByTheirWork(t *testing.T) {
	const bit = 50 * time.Microsecond
	for _, c := range []struct {
		work   time.Duration
		size   string
		weight int
	}{
		{guard.SmallTo - bit, small, 1}, {guard.SmallTo + bit, middling, 1}, {guard.WorkShare - bit, middling, 1},
		{guard.WorkShare + bit, middling, 2}, {2*guard.WorkShare + bit, middling, 3},
		{guard.LongFrom - bit, middling, 4}, // which leaves room for a second
		{guard.LongFrom + bit, longest, 1},
	} {
		g, m := gate(guard.Room{AtOnce: 8}), worth(c.work)
		require.InDelta(t, c.work, cost.Of(m).Usual, float64(bit/2))
		inside, end := visit(t.Context(), g, &tally{}, m, "/a/B")
		holds(t, g, c.size, c.weight, 0)
		end()
		assert.NoError(t, <-inside)
		holds(t, g, c.size, 0, 0)
	}
}

func TestBatchesThatWaitCountByTheirItems(t *testing.T) {
	const items = 3000
	places := 1 + items/guard.BatchShare
	g, c := gate(guard.Room{AtOnce: 20, Waiting: 2*places - 1}), &tally{}
	weight := 1 + int(cost.Of(batch(items)).Usual/guard.WorkShare)
	var inside []chan error
	var letGo []func()
	for n := range 20/weight + 1 {
		one, end := visit(t.Context(), g, c, batch(items), "/a/B")
		inside, letGo = append(inside, one), append(letGo, end)
		if n < 20/weight {
			holds(t, g, middling, (n+1)*weight, 0)
		}
	}
	holds(t, g, middling, 20/weight*weight, places)
	away, _ := visit(t.Context(), g, c, batch(items), "/a/B")
	assert.Equal(t, codes.ResourceExhausted, status.Code(<-away))
	for i, end := range letGo {
		end()
		assert.NoError(t, <-inside[i])
	}
	holds(t, g, middling, 0, 0)
}

// TestNeverMoreAtOnceThanTheGateAllows has callers come, wait and give up at random.
func TestNeverMoreAtOnceThanTheGateAllows(t *testing.T) {
	const most = 7
	var batches []*footwardv1.CheckManyRequest
	for _, n := range []int{200, 500, 1000, 1500, 2000, 3000} { // middling ones
		batches = append(batches, batch(n))
	}
	g, c := gate(guard.Room{AtOnce: most, Waiting: 20}), &tally{}
	var inside, answered atomic.Int64
	var all sync.WaitGroup
	for range 40 {
		all.Go(func() {
			for range 200 {
				ctx, cancel := context.WithCancel(t.Context())
				time.AfterFunc(time.Duration(rand.IntN(300))*time.Microsecond, cancel)
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
					assert.Contains(t, []codes.Code{codes.ResourceExhausted, codes.Canceled}, code)
				}
			}
		})
	}
	all.Wait()
	assert.Positive(t, answered.Load())
	holds(t, g, small, 0, 0)
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
