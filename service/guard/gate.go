package guard

import (
	"context"
	"fmt"
	"math/rand/v2"
	"runtime"
	"sync/atomic"
	"time"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/types/known/durationpb"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/cost"
)

// BatchShare is how many items of a batch that waits count as one call more, for they
// take memory.
const BatchShare = 512

// SmallTo and LongFrom part calls by how much of a processor they take, as estimated.
const (
	SmallTo  = time.Millisecond
	LongFrom = 100 * time.Millisecond
)

// WorkShare is how much work of a call that is worked on counts as one call more.
const WorkShare = 5 * time.Millisecond

// watchFrom is the estimate from which it is watched how long a call takes.
const watchFrom = 200 * time.Microsecond

// longAfter is how long a call that was estimated to be none of the long ones may take
// before it goes on among them.
const longAfter = 250 * time.Millisecond

// When to ask again after the gate was shut: soon, but not all at once.
const (
	leastRetry = 200 * time.Millisecond
	mostRetry  = 600 * time.Millisecond
)

// Gate bounds the work that is done at once, by what it is estimated to cost. A few
// calls more may wait their turn; beyond that they are turned away while that is still
// cheap, so that what was let in is answered in time and memory stays bounded.
//
// Small calls, middling ones and long ones have lanes of their own. Of the long ones
// that have begun only a few compute at once, by turns, and all but small ones let
// others go before now and then while they compute. So a small call finds a processor
// whatever else is asked. In each lane the caller goes first that has had least.
//
// A stream passes for every message, after it came and until its answer is ready:
// neither an idle stream nor one that is read slowly keeps others out. Once open
// it waits its turn rather than being turned away.
type Gate struct {
	small, middling, long lane
	callers               Callers
}

// Room is how much a gate lets in.
type Room struct {
	AtOnce  int // weight of the calls that have begun, in each lane
	Waiting int // weight that waits for that, in each lane
	Long    int // long calls that compute at once; 0: HalfOfProcessors
}

// HalfOfProcessors is how many long calls compute at once by default.
func HalfOfProcessors() int { return max(1, runtime.GOMAXPROCS(0)/2) }

// NewGate lets in what there is room for, and shares it among callers.
func NewGate(r Room, callers Callers) *Gate {
	if r.Long <= 0 {
		r.Long = HalfOfProcessors()
	}
	return &Gate{
		callers:  callers,
		small:    lane{name: "small", room: r.AtOnce, share: r.AtOnce, most: r.Waiting},
		middling: lane{name: "middling", room: r.AtOnce, share: r.AtOnce, most: r.Waiting},
		long:     lane{name: "long", room: r.AtOnce, share: max(1, r.AtOnce/2), most: r.Waiting, turns: r.Long},
	}
}

// Loads returns for each size of calls what tells the weight that is worked on and
// that which waits.
func (g *Gate) Loads() map[string]func() (busy, waiting int) {
	out := map[string]func() (busy, waiting int){}
	for _, l := range []*lane{&g.small, &g.middling, &g.long} {
		out[l.name] = l.load
	}
	return out
}

// shut reports whether a call of a caller would be turned away, as far as its method
// tells its size.
func (g *Gate) shut(ctx context.Context, method string) bool {
	l := &g.small
	if method == footwardv1.CheckService_CheckMany_FullMethodName || method == footwardv1.CheckService_StreamChecks_FullMethodName {
		l = &g.middling
	}
	return l.full(func() string { return g.callers.who(ctx) })
}

// turnOf returns what a call asks of the lane that it belongs to.
func (g *Gate) turnOf(ctx context.Context, c cost.Cost) (*lane, turn) {
	// The largest leave room for a second.
	most := max(1, g.small.room/2)
	t := turn{who: g.callers.who(ctx), weight: 1, places: min(1+c.Items/BatchShare, most), cost: c.Usual, least: c.Least}
	switch {
	case c.Usual <= SmallTo:
		return &g.small, t
	case c.Usual <= LongFrom:
		t.weight = min(1+int(c.Usual/WorkShare), most)
		return &g.middling, t
	}
	t.weight = t.places // what has begun holds its answers, and mostly does not compute
	return &g.long, t
}

// visit is a call inside the gate, or on its way in.
type visit struct {
	gate *Gate
	lane *lane
	turn turn
	from time.Time // when it was let in
}

// enter waits until a message may be worked on. Unless it is patient it is turned
// away when too much waits already, or when it cannot end in time.
func (g *Gate) enter(ctx context.Context, m any, patient bool, tally Tally) (*visit, error) {
	c := cost.Of(m)
	if !patient {
		if err := inTime(ctx, c, tally); err != nil {
			return nil, err
		}
	}
	v := &visit{gate: g}
	v.lane, v.turn = g.turnOf(ctx, c)
	v.turn.patient = patient
	shut, err := v.lane.enter(ctx, &v.turn)
	switch {
	case shut:
		return nil, v.lane.overloaded(tally)
	case err != nil:
		return nil, status.FromContextError(err).Err()
	}
	v.from = time.Now()
	return v, nil
}

// inTime refuses a call that surely needs more time than is left.
func inTime(ctx context.Context, c cost.Cost, tally Tally) error {
	deadline, has := ctx.Deadline()
	if !has {
		return nil
	}
	if left := time.Until(deadline); c.Least/hopeless > left {
		return turnAway(tally, codes.DeadlineExceeded, footwardv1.CallReason_CALL_REASON_DEADLINE_TOO_SHORT,
			fmt.Sprintf("%v is left until the deadline; this takes about %v", max(left, 0).Round(time.Millisecond), c.Usual.Round(time.Millisecond)))
	}
	return nil
}

// pause is asked by the work itself now and then. A call that turns out to be a long
// one goes on among those.
func (v *visit) pause(ctx context.Context) {
	if v.lane != &v.gate.long && time.Since(v.from) > longAfter {
		v.lane.leave(&v.turn)
		v.lane, v.turn.weight = &v.gate.long, 1
		v.lane.join(ctx, &v.turn)
		return
	}
	v.lane.pause(ctx, &v.turn)
}

// leave ends the visit.
func (v *visit) leave() { v.lane.leave(&v.turn) }

// paced is the context of a call whose work, when it asks whether to go on, lets
// others go before. It is for the goroutine of the handler alone.
type paced struct {
	context.Context
	visit func() *visit // nil: none at present
}

// Err implements context.Context.
func (p paced) Err() error {
	if err := p.Context.Err(); err != nil {
		return err
	}
	if v := p.visit(); v != nil {
		v.pause(p.Context)
	}
	return p.Context.Err()
}

// overloaded is the status of a call that is turned away.
func (l *lane) overloaded(tally Tally) error {
	again := leastRetry + rand.N(mostRetry-leastRetry)
	return turnAway(tally, codes.ResourceExhausted, footwardv1.CallReason_CALL_REASON_OVERLOADED,
		fmt.Sprintf("the service is overloaded: %d %s calls are worked on and %d wait; ask again in %v",
			l.room, l.name, l.most, again.Round(time.Millisecond)),
		&errdetails.RetryInfo{RetryDelay: durationpb.New(again)})
}

// Unary lets calls through the gate.
func (g *Gate) Unary(tally Tally) grpc.UnaryServerInterceptor {
	return func(ctx context.Context, m any, info *grpc.UnaryServerInfo, handler grpc.UnaryHandler) (any, error) {
		if open(info.FullMethod) {
			return handler(ctx, m)
		}
		if cost.Of(m).Usual <= watchFrom && g.small.slip() {
			defer g.small.done()
			return handler(ctx, m)
		}
		v, err := g.enter(ctx, m, false, tally)
		if err != nil {
			return nil, err
		}
		defer v.leave()
		return handler(paced{ctx, func() *visit { return v }}, m)
	}
}

// Stream lets the messages of streams through the gate, and opens no stream while
// calls would be turned away.
func (g *Gate) Stream(tally Tally) grpc.StreamServerInterceptor {
	return func(server any, stream grpc.ServerStream, info *grpc.StreamServerInfo, handler grpc.StreamHandler) error {
		if open(info.FullMethod) {
			return handler(server, stream)
		}
		if g.shut(stream.Context(), info.FullMethod) {
			return g.middling.overloaded(tally)
		}
		s := &gated{ServerStream: stream, gate: g, tally: tally}
		defer s.pass()
		return handler(server, s)
	}
}

// gated is a stream whose handler is inside the gate from each message to its
// answer.
type gated struct {
	grpc.ServerStream
	gate   *Gate
	tally  Tally
	inside atomic.Pointer[visit] // a handler may take and send from two goroutines
}

// Context implements grpc.ServerStream.
func (s *gated) Context() context.Context { return paced{s.ServerStream.Context(), s.inside.Load} }

func (s *gated) pass() {
	if v := s.inside.Swap(nil); v != nil {
		v.leave()
	}
}

func (s *gated) RecvMsg(m any) error {
	s.pass()
	if err := s.ServerStream.RecvMsg(m); err != nil {
		return err
	}
	v, err := s.gate.enter(s.ServerStream.Context(), m, true, s.tally)
	if err != nil {
		return err
	}
	s.inside.Store(v)
	return nil
}

func (s *gated) SendMsg(m any) error {
	s.pass()
	return s.ServerStream.SendMsg(m)
}
