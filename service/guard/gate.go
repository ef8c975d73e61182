package guard

import (
	"container/list"
	"context"
	"fmt"
	"math/rand/v2"
	"sync"
	"sync/atomic"
	"time"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/types/known/durationpb"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// BatchShare is how many items of a batch count as one call more.
const BatchShare = 512

// When to ask again after the gate was shut: soon, but not all at once.
const (
	leastRetry = 200 * time.Millisecond
	mostRetry  = 600 * time.Millisecond
)

// Gate bounds the work that is done at once. A few calls more may wait their
// turn; beyond that they are turned away while that is still cheap, so that what
// was let in is answered in time and memory stays bounded. A call counts 1, and a
// batch 1 more for every 512 items.
//
// A stream passes for every message, after it came and until its answer is ready:
// neither an idle stream nor one that is read slowly keeps others out. Once open
// it waits its turn rather than being turned away.
type Gate struct {
	atOnce, most int // weights: under way, waiting

	mu      sync.Mutex
	busy    int       // weight under way
	held    int       // weight that waits
	waiting list.List // of *turn
}

// turn is one that waits; let is closed when it is let in.
type turn struct {
	weight int
	let    chan struct{}
}

// NewGate lets in a weight of atOnce, and has as much as waiting wait.
func NewGate(atOnce, waiting int) *Gate { return &Gate{atOnce: atOnce, most: waiting} }

// Load returns the weight under way and that which waits.
func (g *Gate) Load() (busy, waiting int) {
	g.mu.Lock()
	defer g.mu.Unlock()
	return g.busy, g.held
}

// shut reports whether a call that is not patient would be turned away.
func (g *Gate) shut() bool {
	g.mu.Lock()
	defer g.mu.Unlock()
	return g.held >= g.most && (g.waiting.Len() > 0 || g.busy >= g.atOnce)
}

// weigh returns what a message counts.
func (g *Gate) weigh(m any) int {
	if batch, ok := m.(interface {
		GetItems() []*footwardv1.CheckItem
	}); ok {
		// The largest batch leaves room for a second.
		return min(1+len(batch.GetItems())/BatchShare, max(1, g.atOnce/2))
	}
	return 1
}

// enter waits until weight is let in. Unless it is patient it is turned away,
// which shut tells, when too much waits already.
func (g *Gate) enter(ctx context.Context, weight int, patient bool) (shut bool, err error) {
	g.mu.Lock()
	if g.waiting.Len() == 0 && g.busy+weight <= g.atOnce {
		g.busy += weight
		g.mu.Unlock()
		return false, nil
	}
	if !patient && g.held+weight > g.most {
		g.mu.Unlock()
		return true, nil
	}
	t := &turn{weight, make(chan struct{})}
	at := g.waiting.PushBack(t)
	g.held += weight
	g.mu.Unlock()
	select {
	case <-t.let:
		return false, nil
	case <-ctx.Done():
	}
	g.mu.Lock()
	defer g.mu.Unlock()
	select {
	case <-t.let: // both at once: give the turn on
		g.busy -= weight
	default:
		g.waiting.Remove(at)
		g.held -= weight
	}
	g.next()
	return false, status.FromContextError(ctx.Err()).Err()
}

// leave ends what enter let in.
func (g *Gate) leave(weight int) {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.busy -= weight
	g.next()
}

// next lets in those whose turn it is.
func (g *Gate) next() {
	for at := g.waiting.Front(); at != nil; at = g.waiting.Front() {
		t := at.Value.(*turn)
		if g.busy+t.weight > g.atOnce {
			return
		}
		g.waiting.Remove(at)
		g.held -= t.weight
		g.busy += t.weight
		close(t.let)
	}
}

// overloaded is the status of a call that is turned away.
func (g *Gate) overloaded(tally Tally) error {
	again := leastRetry + rand.N(mostRetry-leastRetry)
	return turnAway(tally, codes.ResourceExhausted, footwardv1.CallReason_CALL_REASON_OVERLOADED,
		fmt.Sprintf("the service is overloaded: %d calls are worked on and %d wait; ask again in %v",
			g.atOnce, g.most, again.Round(time.Millisecond)),
		&errdetails.RetryInfo{RetryDelay: durationpb.New(again)})
}

// Unary lets calls through the gate.
func (g *Gate) Unary(tally Tally) grpc.UnaryServerInterceptor {
	return func(ctx context.Context, m any, info *grpc.UnaryServerInfo, handler grpc.UnaryHandler) (any, error) {
		if open(info.FullMethod) {
			return handler(ctx, m)
		}
		weight := g.weigh(m)
		shut, err := g.enter(ctx, weight, false)
		switch {
		case shut:
			return nil, g.overloaded(tally)
		case err != nil:
			return nil, err
		}
		defer g.leave(weight)
		return handler(ctx, m)
	}
}

// Stream lets the messages of streams through the gate, and opens no stream while
// calls would be turned away.
func (g *Gate) Stream(tally Tally) grpc.StreamServerInterceptor {
	return func(server any, stream grpc.ServerStream, info *grpc.StreamServerInfo, handler grpc.StreamHandler) error {
		if open(info.FullMethod) {
			return handler(server, stream)
		}
		if g.shut() {
			return g.overloaded(tally)
		}
		s := &gated{ServerStream: stream, gate: g}
		defer s.pass()
		return handler(server, s)
	}
}

// gated is a stream whose handler is inside the gate from each message to its
// answer.
type gated struct {
	grpc.ServerStream
	gate *Gate
	// Weight; a handler may take and send from two goroutines.
	inside atomic.Int64
}

func (s *gated) pass() {
	if weight := s.inside.Swap(0); weight > 0 {
		s.gate.leave(int(weight))
	}
}

func (s *gated) RecvMsg(m any) error {
	s.pass()
	if err := s.ServerStream.RecvMsg(m); err != nil {
		return err
	}
	weight := s.gate.weigh(m)
	if _, err := s.gate.enter(s.Context(), weight, true); err != nil {
		return err
	}
	s.inside.Add(int64(weight))
	return nil
}

func (s *gated) SendMsg(m any) error {
	s.pass()
	return s.ServerStream.SendMsg(m)
}
