package guard

import (
	"context"
	"errors"
	"fmt"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/grpc/tap"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// Deadlines bound how long calls may take. A zero bounds nothing.
type Deadlines struct {
	Default time.Duration // of a call whose client sets none
	Longest time.Duration // of any call; a client that asks for more gets this
	Streams time.Duration // of any stream, in place of both
	Idle    time.Duration // of a stream on which nothing is taken or sent
	// Least is the time that must be left at the start: with less, no answer
	// would reach its caller in time, so none is worked out.
	Least time.Duration
}

// errIdle is why an idle stream is ended.
var errIdle = errors.New("nothing moved on the stream")

// streamKey leads to the function that ends a stream from outside.
type streamKey struct{}

// held is a context whose end the guard has brought forward. It need not be
// cancelled: gRPC ends the parent with the call, and with it the timer.
type held struct {
	context.Context
	cancel context.CancelFunc
}

// within bounds a context to longest, or to usual when it has no deadline.
func within(ctx context.Context, usual, longest time.Duration) (context.Context, context.CancelFunc) {
	if longest > 0 && (usual <= 0 || usual > longest) {
		usual = longest
	}
	most := longest
	if _, has := ctx.Deadline(); !has {
		most = usual
	}
	if deadline, has := ctx.Deadline(); most <= 0 || has && time.Until(deadline) <= most {
		return ctx, func() {}
	}
	return context.WithTimeout(ctx, most)
}

// Tap gives calls their deadline when their headers arrive, so that it also ends
// the wait for a message that trickles in. It refuses nothing: gRPC would keep
// the timer of a call that is refused here until it fires. streams holds the full
// names of the methods that are streams.
func (d Deadlines) Tap(streams map[string]bool) tap.ServerInHandle {
	return func(ctx context.Context, info *tap.Info) (context.Context, error) {
		if !streams[info.FullMethodName] {
			usual, longest := d.Default, d.Longest
			if open(info.FullMethodName) {
				usual, longest = healthTime, healthTime
			}
			bounded, cancel := within(ctx, usual, longest)
			if bounded == ctx {
				return ctx, nil
			}
			return held{bounded, cancel}, nil
		}
		bounded, cancel := within(ctx, d.Streams, d.Streams)
		bounded, end := context.WithCancelCause(bounded)
		return late{context.WithValue(bounded, streamKey{}, func(cause error) {
			end(cause)
			cancel()
		})}, nil
	}
}

// late is a context whose end by errIdle counts as that of a deadline: gRPC tells
// the client by itself, before the handler can.
type late struct{ context.Context }

// Err implements context.Context.
func (l late) Err() error {
	err := l.Context.Err()
	if err != nil && errors.Is(context.Cause(l.Context), errIdle) {
		return context.DeadlineExceeded
	}
	return err
}

// Unary refuses calls with too little time, and bounds those that came without
// Tap.
func (d Deadlines) Unary(tally Tally) grpc.UnaryServerInterceptor {
	return func(ctx context.Context, m any, info *grpc.UnaryServerInfo, handler grpc.UnaryHandler) (any, error) {
		if open(info.FullMethod) {
			return handler(ctx, m)
		}
		if err := d.enough(ctx, tally); err != nil {
			return nil, err
		}
		ctx, cancel := within(ctx, d.Default, d.Longest)
		defer cancel()
		return handler(ctx, m)
	}
}

// Stream does the same for streams, and ends those that are idle.
func (d Deadlines) Stream(tally Tally) grpc.StreamServerInterceptor {
	return func(server any, stream grpc.ServerStream, info *grpc.StreamServerInfo, handler grpc.StreamHandler) error {
		ctx := stream.Context()
		if open(info.FullMethod) {
			return handler(server, stream)
		}
		if err := d.enough(ctx, tally); err != nil {
			return err
		}
		end, has := ctx.Value(streamKey{}).(func(error))
		if !has || d.Idle <= 0 {
			return handler(server, stream)
		}
		idle := time.AfterFunc(d.Idle, func() { end(errIdle) })
		defer idle.Stop()
		err := handler(server, &watched{stream, idle, d.Idle})
		if err != nil && errors.Is(context.Cause(ctx), errIdle) {
			return status.Error(codes.DeadlineExceeded, errIdle.Error()) // not that it was cancelled
		}
		return err
	}
}

// enough refuses a call that has less than the least time left.
func (d Deadlines) enough(ctx context.Context, tally Tally) error {
	deadline, has := ctx.Deadline()
	if !has {
		return nil
	}
	if left := time.Until(deadline); left < max(d.Least, 1) {
		return turnAway(tally, codes.DeadlineExceeded, footwardv1.CallReason_CALL_REASON_DEADLINE_TOO_SHORT,
			fmt.Sprintf("%v is left until the deadline; at least %v is needed", max(left, 0), d.Least))
	}
	return nil
}

// watched puts off the end of a stream whenever a message moves.
type watched struct {
	grpc.ServerStream
	idle  *time.Timer
	after time.Duration
}

func (w *watched) RecvMsg(m any) error {
	err := w.ServerStream.RecvMsg(m)
	w.idle.Reset(w.after)
	return err
}

func (w *watched) SendMsg(m any) error {
	err := w.ServerStream.SendMsg(m)
	w.idle.Reset(w.after)
	return err
}
