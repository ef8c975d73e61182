package main

import (
	"errors"
	"flag"
	"fmt"
	"log/slog"
	"runtime"
	"time"

	"footward.example/footward/service/guard"
	"footward.example/footward/service/server"
)

// bounds are the settings of what calls and connections may take.
type bounds struct {
	call, callMost, callLeast, stream, streamIdle         time.Duration
	connectionAge                                         time.Duration
	atOnce, long, waiting, connectionStreams, connections int
	open, watches                                         int
	addressShare                                          float64
}

// atOnce is how many calls are worked on at once for each processor. A check only
// computes, so that more would gain nothing, and those who read what comes in
// would have to wait for their turn among them. It stands for small calls and again
// for middling ones; as many long ones may have begun, of which few compute.
const atOnce = 4

func (b *bounds) flags(f *flag.FlagSet) {
	f.DurationVar(&b.call, "call-timeout", 30*time.Second, "end a call after this `TIME` when its client sets no deadline")
	f.DurationVar(&b.callMost, "call-timeout-most", 5*time.Minute, "end every call after this `TIME`, whatever deadline its client sets")
	f.DurationVar(&b.callLeast, "call-timeout-least", time.Millisecond, "refuse a call that has less than this `TIME` left until its deadline")
	f.DurationVar(&b.stream, "stream-timeout", time.Hour, "end a stream after this `TIME`")
	f.DurationVar(&b.streamIdle, "stream-idle-timeout", 5*time.Minute, "end a stream on which nothing is sent or taken for this `TIME`")
	f.IntVar(&b.atOnce, "calls-at-once", atOnce*runtime.GOMAXPROCS(0), "work on this `NUMBER` of calls at once, of small, of middling and of long ones; default 4 for each processor")
	f.IntVar(&b.long, "long-calls-at-once", guard.HalfOfProcessors(), "of the long calls have this `NUMBER` compute at once, by turns; long is what takes more than a tenth of a second; default half of the processors")
	f.IntVar(&b.waiting, "calls-waiting", 128, "let this `NUMBER` of calls of each size wait beyond that, a batch counting one more for every 512 items, and turn further ones away with RESOURCE_EXHAUSTED")
	f.IntVar(&b.connectionStreams, "connection-calls", 256, "take this `NUMBER` of calls and streams at once on one connection")
	f.DurationVar(&b.connectionAge, "connection-age", 30*time.Minute, "ask clients to connect anew after this `TIME`, give or take a tenth, so that they learn of new replicas; 0: never")
	f.IntVar(&b.connections, "connections", 1024, "take this `NUMBER` of connections and close further ones")
	f.IntVar(&b.open, "calls-open", 2048, "take this `NUMBER` of calls and streams at once on all connections, whether their message has come or not")
	f.IntVar(&b.watches, "health-watches", 1024, "let this `NUMBER` of streams watch health at once; they need no token")
	f.Float64Var(&b.addressShare, "address-share", 0.25, "let one address (of IPv6: one network of 64 bits) have this `SHARE` of connections, calls-open and health-watches; 1 behind a proxy, whose callers all have its address")
}

func (b *bounds) check() (wrong []error) {
	for _, d := range []struct {
		name string
		time.Duration
	}{
		{"call-timeout", b.call}, {"call-timeout-most", b.callMost}, {"stream-timeout", b.stream}, {"stream-idle-timeout", b.streamIdle},
	} {
		if d.Duration <= 0 {
			wrong = append(wrong, fmt.Errorf("%s: must be longer than 0", d.name))
		}
	}
	if b.connectionAge < 0 || b.connectionAge > 0 && b.connectionAge < time.Second {
		wrong = append(wrong, errors.New("connection-age: must be 0 or at least a second"))
	}
	if b.callMost < b.call {
		wrong = append(wrong, errors.New("call-timeout-most: must not be shorter than call-timeout"))
	}
	if b.callLeast < 0 || b.callLeast >= b.callMost {
		wrong = append(wrong, errors.New("call-timeout-least: must be shorter than call-timeout-most, and not negative"))
	}
	for _, n := range []struct {
		name        string
		value, from int
	}{
		{"calls-at-once", b.atOnce, 1}, {"long-calls-at-once", b.long, 1}, {"calls-waiting", b.waiting, 0}, {"connection-calls", b.connectionStreams, 1}, {"connections", b.connections, 1},
		{"calls-open", b.open, 1}, {"health-watches", b.watches, 1},
	} {
		if n.value < n.from || n.value > 1e6 {
			wrong = append(wrong, fmt.Errorf("%s: %d is not between %d and 1000000", n.name, n.value, n.from))
		}
	}
	// The condition is written so that NaN fails.
	if !(b.addressShare > 0 && b.addressShare <= 1) {
		wrong = append(wrong, fmt.Errorf("address-share: %v is not over 0 and at most 1", b.addressShare))
	}
	return wrong
}

func (b *bounds) put(o *server.Options) {
	o.Deadlines = guard.Deadlines{
		Default: b.call, Longest: b.callMost, Least: b.callLeast, Streams: b.stream, Idle: b.streamIdle,
	}
	o.ConnectionAge = b.connectionAge
	o.AtOnce, o.Long, o.Waiting, o.Streams, o.Connections = b.atOnce, b.long, b.waiting, b.connectionStreams, b.connections
	o.Open, o.Watches, o.AddressShare = b.open, b.watches, b.addressShare
}

// LogValue implements slog.LogValuer.
func (b bounds) LogValue() slog.Value {
	return slog.GroupValue(
		slog.Duration("call_timeout", b.call), slog.Duration("call_timeout_most", b.callMost), slog.Duration("call_timeout_least", b.callLeast),
		slog.Duration("stream_timeout", b.stream), slog.Duration("stream_idle_timeout", b.streamIdle),
		slog.Int("calls_at_once", b.atOnce), slog.Int("long_calls_at_once", b.long), slog.Int("calls_waiting", b.waiting),
		slog.Int("connection_calls", b.connectionStreams), slog.Int("connections", b.connections),
		slog.Int("calls_open", b.open), slog.Int("health_watches", b.watches), slog.Float64("address_share", b.addressShare),
		slog.Duration("connection_age", b.connectionAge))
}
