package client

import (
	"context"
	"sync"
	"testing"
	"testing/synctest"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/types/known/durationpb"
)

// away is the answer to a call that is turned away, to be made again after delay.
func away(t *testing.T, code codes.Code, delay time.Duration) error {
	t.Helper()
	s, err := status.New(code, "overloaded").WithDetails(
		&errdetails.ErrorInfo{Reason: "OVERLOADED", Domain: "footward.v1"},
		&errdetails.RetryInfo{RetryDelay: durationpb.New(delay)})
	require.NoError(t, err)
	return s.Err()
}

// asked makes a call by l; answers are those to its first and second asking. It
// returns when it was asked, from the beginning, and how it ended.
func asked(ctx context.Context, l *later, answers ...error) (at []time.Duration, err error) {
	began := time.Now()
	err = l.unary(ctx, "", nil, nil, nil, func(context.Context, string, any, any, *grpc.ClientConn, ...grpc.CallOption) error {
		at = append(at, time.Since(began))
		return answers[len(at)-1]
	})
	return at, err
}

func TestCallThatIsTurnedAwayIsMadeOnceMore(t *testing.T) {
	const soon = 400 * time.Millisecond
	full := away(t, codes.ResourceExhausted, soon)
	for _, c := range []struct {
		name     string
		answers  []error
		deadline time.Duration // 0: none
		calls    int
		want     codes.Code
	}{
		{"answered then", []error{full, nil}, 30 * time.Second, 2, codes.OK},
		{"without a deadline", []error{full, nil}, 0, 2, codes.OK},
		{"with just room", []error{full, nil}, 4 * soon, 2, codes.OK},
		{"turned away again", []error{full, full}, 0, 2, codes.ResourceExhausted},
		{"refused then", []error{full, status.Error(codes.InvalidArgument, "no")}, 0, 2, codes.InvalidArgument},
		{"without room", []error{full}, 2*soon - 1, 1, codes.ResourceExhausted},
		{"not asked to", []error{status.Error(codes.ResourceExhausted, "too large")}, 0, 1, codes.ResourceExhausted},
		{"at once, all together", []error{away(t, codes.ResourceExhausted, 0)}, 0, 1, codes.ResourceExhausted},
		{"before it was made", []error{away(t, codes.ResourceExhausted, -soon)}, 0, 1, codes.ResourceExhausted},
		{"for ever", []error{away(t, codes.ResourceExhausted, 290*365*24*time.Hour)}, 0, 1, codes.ResourceExhausted},
		{"for another reason", []error{away(t, codes.FailedPrecondition, soon)}, 0, 1, codes.FailedPrecondition},
		{"answered", []error{nil}, 0, 1, codes.OK},
	} {
		t.Run(c.name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				ctx := t.Context()
				if c.deadline > 0 {
					var cancel context.CancelFunc
					ctx, cancel = context.WithTimeout(ctx, c.deadline)
					defer cancel()
				}
				began := time.Now()
				at, err := asked(ctx, &later{}, c.answers...)
				assert.Equal(t, c.want, status.Code(err), "%v", err)
				require.Len(t, at, c.calls)
				if c.calls == 1 {
					assert.Zero(t, time.Since(began), "nothing is waited for in vain")
					return
				}
				assert.GreaterOrEqual(t, at[1], soon)
				assert.Less(t, at[1], 2*soon)
			})
		})
	}
}

func TestWaitingEndsWhenTheCallerGivesUp(t *testing.T) {
	full := away(t, codes.ResourceExhausted, time.Second)
	synctest.Test(t, func(t *testing.T) {
		ctx, cancel := context.WithCancel(t.Context())
		time.AfterFunc(time.Second/2, cancel)
		began := time.Now()
		at, err := asked(ctx, &later{}, full)
		assert.Equal(t, codes.Canceled, status.Code(err), "%v", err)
		assert.Len(t, at, 1)
		assert.Equal(t, time.Second/2, time.Since(began))
	})
}

// TestCallersTurnedAwayTogetherComeBackApart has callers that are all turned away
// at one moment, and all told the same delay.
func TestCallersTurnedAwayTogetherComeBackApart(t *testing.T) {
	const callers, delay, slots = 400, time.Second, 10
	full := away(t, codes.ResourceExhausted, delay)
	synctest.Test(t, func(t *testing.T) {
		var l later
		var mu sync.Mutex
		var back [slots]int
		var all sync.WaitGroup
		for range callers {
			all.Go(func() {
				at, err := asked(t.Context(), &l, full, nil)
				if assert.NoError(t, err) {
					mu.Lock()
					defer mu.Unlock()
					back[(at[1]-delay)*slots/delay]++
				}
			})
		}
		all.Wait()
		t.Logf("of %d, in tenths of the delay: %v", callers, back)
		for _, n := range back {
			assert.LessOrEqual(t, n, 2*callers/slots)
		}
	})
}

// TestServiceThatStaysFullIsLeftAlone has a service that turns every call away,
// then recovers.
func TestServiceThatStaysFullIsLeftAlone(t *testing.T) {
	const calls = 5000
	full := away(t, codes.ResourceExhausted, time.Second)
	synctest.Test(t, func(t *testing.T) {
		var l later
		twice := 0
		for range calls {
			at, err := asked(t.Context(), &l, full, full)
			require.Error(t, err)
			twice += len(at) - 1
		}
		assert.Positive(t, twice)
		assert.LessOrEqual(t, twice, throttleTokens/2)

		for range int(throttleTokens / throttleRatio) {
			_, err := asked(t.Context(), &l, nil)
			require.NoError(t, err)
		}
		at, err := asked(t.Context(), &l, full, nil)
		require.NoError(t, err)
		assert.Len(t, at, 2, "once it answers, calls are made again")
	})
}
