package guard_test

import (
	"context"
	"io"
	"net"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/peer"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/cost"
	"footward.example/footward/service/guard"
)

// from returns the context of calls from an address.
func from(ctx context.Context, last byte) context.Context {
	return peer.NewContext(ctx, &peer.Peer{Addr: &net.TCPAddr{IP: net.IPv4(127, 0, 0, last), Port: 4000}})
}

// long returns a request whose work is long.
func long() *footwardv1.CheckColumnBaseRequest { return worth(2 * guard.LongFrom) }

func TestSmallCallsDoNotWaitForOthers(t *testing.T) {
	g := gate(guard.Room{AtOnce: 4, Waiting: 20, Long: 1})
	var letGo []func()
	for who := range byte(10) {
		_, end := visit(from(t.Context(), who), g, &tally{}, long(), "/a/B")
		_, endToo := visit(from(t.Context(), who), g, &tally{}, worth(guard.LongFrom/2), "/a/B")
		letGo = append(letGo, end, endToo)
	}
	require.Eventually(t, func() bool { return loads(g)[middling] == load{4, 8} && loads(g)[longest].busy >= 4 }, time.Minute, time.Millisecond)
	for range 100 {
		_, err := g.Unary(&tally{})(t.Context(), batch(1), &grpc.UnaryServerInfo{FullMethod: "/a/B"},
			func(context.Context, any) (any, error) { return nil, nil })
		require.NoError(t, err)
	}
	for _, end := range letGo {
		end()
	}
	holds(t, g, "", 0, 0)
}

// work asks its context as often as it is told, and sleeps between.
func work(ctx context.Context, times int, done *atomic.Int64) error {
	for range times {
		if err := ctx.Err(); err != nil {
			return status.FromContextError(err).Err()
		}
		time.Sleep(2 * time.Millisecond)
		done.Add(1)
	}
	return nil
}

// TestCallersShareTheLongLane: one that came last with one call does not wait until
// another's many are done.
func TestCallersShareTheLongLane(t *testing.T) {
	const times, calls = 60, 4
	g := gate(guard.Room{AtOnce: 8, Waiting: 8, Long: 1})
	m := long()
	var first, second atomic.Int64
	var all sync.WaitGroup
	call := func(who byte, done *atomic.Int64) {
		_, err := g.Unary(&tally{})(from(t.Context(), who), m, &grpc.UnaryServerInfo{FullMethod: "/a/B"},
			func(ctx context.Context, _ any) (any, error) { return nil, work(ctx, times, done) })
		assert.NoError(t, err)
	}
	for range calls {
		all.Go(func() { call(1, &first) })
	}
	require.Eventually(t, func() bool { return first.Load() > 0 }, time.Minute, time.Millisecond)
	call(2, &second)
	assert.Equal(t, int64(times), second.Load())
	assert.Less(t, first.Load(), int64(calls*times), "by turns it has about as many as the other")
	all.Wait()
	assert.Equal(t, int64(calls*times), first.Load())
	holds(t, g, "", 0, 0)
}

// TestLongCallsComputeByTurns: never more of them than are allowed.
func TestLongCallsComputeByTurns(t *testing.T) {
	const most = 2
	g := gate(guard.Room{AtOnce: 8, Waiting: 8, Long: most})
	m := long()
	var computing, done atomic.Int64
	var all sync.WaitGroup
	for who := range byte(6) {
		all.Go(func() {
			_, err := g.Unary(&tally{})(from(t.Context(), who), m, &grpc.UnaryServerInfo{FullMethod: "/a/B"}, func(ctx context.Context, _ any) (any, error) {
				for range 20 {
					assert.LessOrEqual(t, computing.Add(1), int64(most))
					time.Sleep(2 * time.Millisecond)
					computing.Add(-1)
					if err := ctx.Err(); err != nil { // waits here
						return nil, err
					}
				}
				done.Add(1)
				return nil, nil
			})
			assert.NoError(t, err)
		})
	}
	all.Wait()
	assert.Equal(t, int64(6), done.Load())
	holds(t, g, "", 0, 0)
}

func TestWhoWaitsToComputeAndLeavesEndsAtOnce(t *testing.T) {
	g := gate(guard.Room{AtOnce: 8, Waiting: 8, Long: 1})
	ctx, cancel := context.WithCancel(from(t.Context(), 1))
	begun := make(chan struct{})
	left := make(chan error, 1)
	go func() {
		_, err := g.Unary(&tally{})(ctx, long(), &grpc.UnaryServerInfo{FullMethod: "/a/B"}, func(ctx context.Context, _ any) (any, error) {
			close(begun)
			for ctx.Err() == nil {
				time.Sleep(time.Millisecond)
			}
			return nil, ctx.Err()
		})
		left <- err
	}()
	<-begun
	// This one takes the turn of the other and does not ask to go on.
	holder, end := visit(from(t.Context(), 2), g, &tally{}, long(), "/a/B")
	holds(t, g, longest, 2, 0)
	cancel()
	assert.ErrorIs(t, <-left, context.Canceled)
	end()
	assert.NoError(t, <-holder)
	holds(t, g, "", 0, 0)
}

func TestCallThatTurnsOutToBeLongGoesOnAmongThose(t *testing.T) {
	g := gate(guard.Room{AtOnce: 2, Long: 1})
	ended := make(chan error, 1)
	hold := make(chan struct{})
	go func() {
		_, err := g.Unary(&tally{})(t.Context(), worth(2*time.Millisecond), &grpc.UnaryServerInfo{FullMethod: "/a/B"}, func(ctx context.Context, _ any) (any, error) {
			for {
				select {
				case <-hold:
					return nil, ctx.Err()
				case <-time.After(time.Millisecond):
					if err := ctx.Err(); err != nil {
						return nil, err
					}
				}
			}
		})
		ended <- err
	}()
	holds(t, g, middling, 1, 0)
	holds(t, g, longest, 1, 0)
	close(hold)
	assert.NoError(t, <-ended)
	holds(t, g, "", 0, 0)
}

// TestWhoFillsTheWaitingRoomIsTurnedAwayFirst: the newest of the caller of whom most
// waits makes room for another's.
func TestWhoFillsTheWaitingRoomIsTurnedAwayFirst(t *testing.T) {
	g, c := gate(guard.Room{AtOnce: 1, Waiting: 3}), &tally{}
	inside, endInside := visit(from(t.Context(), 1), g, c, nil, "/a/B")
	holds(t, g, small, 1, 0)
	var waits []chan error
	var letGo []func()
	for n := range 3 {
		one, end := visit(from(t.Context(), 1), g, c, nil, "/a/B")
		waits, letGo = append(waits, one), append(letGo, end)
		holds(t, g, small, 1, n+1)
	}
	again, _ := visit(from(t.Context(), 1), g, c, nil, "/a/B")
	assert.Equal(t, codes.ResourceExhausted, status.Code(<-again), "its own room is full")

	other, endOther := visit(from(t.Context(), 2), g, c, nil, "/a/B")
	assert.Equal(t, codes.ResourceExhausted, status.Code(<-waits[2]))
	holds(t, g, small, 1, 3)
	endInside()
	assert.NoError(t, <-inside)
	endOther()
	letGo[0]()
	letGo[1]()
	assert.NoError(t, <-other)
	assert.NoError(t, <-waits[0])
	assert.NoError(t, <-waits[1])
	holds(t, g, "", 0, 0)
}

// TestOneOfManyCallersIsNotLast: of those that wait the caller goes first that has had
// least, not the one that came first.
func TestOneOfManyCallersIsNotLast(t *testing.T) {
	g, c := gate(guard.Room{AtOnce: 1, Waiting: 10}), &tally{}
	inside, end := visit(from(t.Context(), 1), g, c, nil, "/a/B")
	holds(t, g, small, 1, 0)
	var mu sync.Mutex
	var order []byte
	var all sync.WaitGroup
	for n, who := range []byte{1, 1, 1, 2} {
		all.Go(func() {
			_, err := g.Unary(c)(from(t.Context(), who), batch(10), &grpc.UnaryServerInfo{FullMethod: "/a/B"}, func(context.Context, any) (any, error) {
				mu.Lock()
				defer mu.Unlock()
				order = append(order, who)
				return nil, nil
			})
			assert.NoError(t, err)
		})
		holds(t, g, small, 1, n+1)
	}
	end()
	assert.NoError(t, <-inside)
	all.Wait()
	assert.Equal(t, []byte{1, 2, 1, 1}, order)
}

func TestCallThatCannotEndInTimeIsRefusedAtOnce(t *testing.T) {
	g := gate(guard.Room{AtOnce: 4, Waiting: 10, Long: 1})
	m := long()
	takes := cost.Of(m).Least
	c := &tally{}
	ctx, cancel := context.WithTimeout(t.Context(), takes/10)
	defer cancel()
	never := func(context.Context, any) (any, error) { panic("was begun") }
	_, err := g.Unary(c)(ctx, m, &grpc.UnaryServerInfo{FullMethod: "/a/B"}, never)
	assert.Equal(t, codes.DeadlineExceeded, status.Code(err))
	assert.Equal(t, map[footwardv1.CallReason]int{footwardv1.CallReason_CALL_REASON_DEADLINE_TOO_SHORT: 1}, c.away)

	// What is only tight is tried.
	ctx, cancel = context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	_, err = g.Unary(c)(ctx, m, &grpc.UnaryServerInfo{FullMethod: "/a/B"}, func(context.Context, any) (any, error) { return nil, nil })
	assert.NoError(t, err)
}

func TestCallBehindTooMuchOfItsCallerIsTurnedAwayAtOnce(t *testing.T) {
	g, c := gate(guard.Room{AtOnce: 1, Waiting: 100, Long: 1}), &tally{}
	m := long()
	takes := cost.Of(m).Least
	inside, end := visit(from(t.Context(), 1), g, c, m, "/a/B")
	holds(t, g, longest, 1, 0)
	ctx, cancel := context.WithCancel(from(t.Context(), 1))
	var waits []chan error
	for n := range 30 {
		one, _ := visit(ctx, g, c, m, "/a/B")
		waits = append(waits, one)
		holds(t, g, longest, 1, n+1)
	}
	tight, cancelTight := context.WithTimeout(from(t.Context(), 1), 9*takes)
	defer cancelTight()
	late, _ := visit(tight, g, c, m, "/a/B")
	assert.Equal(t, codes.ResourceExhausted, status.Code(<-late), "a third of 31 times what it takes is more than 9 times")
	cancel()
	for _, one := range waits {
		assert.Equal(t, codes.Canceled, status.Code(<-one))
	}
	end()
	assert.NoError(t, <-inside)
	holds(t, g, "", 0, 0)
}

// piped is a stream of which a test sends and takes the messages.
type piped struct {
	grpc.ServerStream
	ctx context.Context
	in  chan *footwardv1.StreamChecksRequest
}

func (p *piped) Context() context.Context { return p.ctx }

func (p *piped) RecvMsg(to any) error {
	m, more := <-p.in
	if !more {
		return io.EOF
	}
	proto.Merge(to.(proto.Message), m)
	return nil
}

func (p *piped) SendMsg(any) error { return nil }

// TestMessagesOfStreamsAreWeighedAlike: one whose work is long goes among the long ones
// until it is answered.
func TestMessagesOfStreamsAreWeighedAlike(t *testing.T) {
	g := gate(guard.Room{AtOnce: 4, Waiting: 4, Long: 1})
	s := &piped{ctx: from(t.Context(), 1), in: make(chan *footwardv1.StreamChecksRequest)}
	taken, answer, ended := make(chan struct{}), make(chan struct{}), make(chan error, 1)
	go func() {
		ended <- g.Stream(&tally{})(nil, s, &grpc.StreamServerInfo{FullMethod: "/a/B"}, func(_ any, stream grpc.ServerStream) error {
			for {
				if err := stream.RecvMsg(&footwardv1.StreamChecksRequest{}); err != nil {
					return err
				}
				taken <- struct{}{}
				<-answer
				if err := stream.Context().Err(); err != nil {
					return err
				}
				if err := stream.SendMsg(nil); err != nil {
					return err
				}
			}
		})
	}()
	for _, c := range []struct {
		work time.Duration
		size string
	}{{guard.SmallTo / 2, small}, {guard.SmallTo * 2, middling}, {guard.LongFrom * 2, longest}} {
		holds(t, g, "", 0, 0)
		s.in <- &footwardv1.StreamChecksRequest{Items: []*footwardv1.CheckItem{{Check: &footwardv1.CheckItem_ColumnBase{ColumnBase: worth(c.work)}}}}
		<-taken
		holds(t, g, c.size, 1, 0)
		answer <- struct{}{}
	}
	close(s.in)
	assert.ErrorIs(t, <-ended, io.EOF)
	holds(t, g, "", 0, 0)
}
