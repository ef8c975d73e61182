package client

import (
	"context"
	"math/rand/v2"
	"time"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
)

// RetryDelay returns for how long a service that turned a call away asks to be
// left alone before that call is made again, and false when it does not ask that.
// A wrapped error will do. A Client has asked a second time by itself where it
// could; see [WithoutAskingLater].
func RetryDelay(err error) (time.Duration, bool) {
	s, ok := status.FromError(err)
	if !ok || s.Code() != codes.ResourceExhausted {
		return 0, false
	}
	for _, d := range s.Details() {
		if info, ok := d.(*errdetails.RetryInfo); ok && info.GetRetryDelay().IsValid() {
			return max(0, info.GetRetryDelay().AsDuration()), true
		}
	}
	return 0, false
}

// longestDelay is the longest that a call waits by itself; whether to wait longer
// is for the caller to say.
const longestDelay = time.Minute

// later makes a call a second time that a service with too much to do has turned
// away, when the service has said to.
type later struct{ throttle throttle }

func (l *later) unary(ctx context.Context, method string, request, reply any, conn *grpc.ClientConn, invoke grpc.UnaryInvoker, options ...grpc.CallOption) error {
	err := invoke(ctx, method, request, reply, conn, options...)
	second, err := l.wait(ctx, err)
	if !second {
		return err
	}
	err = invoke(ctx, method, request, reply, conn, options...)
	l.count(err)
	return err
}

// wait waits as long as a call that ended with err should, and returns whether to
// make it a second time; if not, the error that it ends with.
//
// Calls that were turned away together would come back together, so each waits by
// chance up to twice the delay. At least as long again must be left until the
// deadline, for the call itself.
func (l *later) wait(ctx context.Context, err error) (second bool, _ error) {
	room := l.count(err)
	delay, asked := RetryDelay(err)
	if !room || !asked || delay == 0 || delay > longestDelay {
		return false, err
	}
	delay += rand.N(delay)
	if deadline, has := ctx.Deadline(); has && time.Until(deadline) < 2*delay {
		return false, err
	}
	timer := time.NewTimer(delay)
	defer timer.Stop()
	select {
	case <-timer.C:
		return true, nil
	case <-ctx.Done():
		return false, status.FromContextError(ctx.Err()).Err()
	}
}

// count tells the throttle of a call that was answered or turned away, and returns
// whether there is room for repeats.
func (l *later) count(err error) (room bool) {
	_, away := RetryDelay(err)
	if err != nil && !away {
		return false
	}
	return l.throttle.count(away)
}
