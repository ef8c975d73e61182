package client_test

import (
	"context"
	"fmt"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/resolver"
	"google.golang.org/grpc/resolver/manual"
	"google.golang.org/grpc/status"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// TestRepeatsDoNotStorm has servers that answer every other call UNAVAILABLE, or
// turn it away to come back later. Callers who called again each time would bring
// nearly twice the calls, or half as many more.
func TestRepeatsDoNotStorm(t *testing.T) {
	const callers, most = 200, 1.2
	broken, full := status.Error(codes.Unavailable, "overwhelmed"), full(t, time.Millisecond)
	for _, c := range []struct {
		troubled int // servers
		answer   error
		// The throttle lets some hundred repeats pass before it holds, so few calls
		// would show little of it.
		calls int
	}{{1, broken, 20_000}, {3, broken, 20_000}, {3, full, 5_000}} {
		if testing.Short() {
			if c.troubled == 1 {
				continue
			}
			c.calls = min(c.calls, 5_000)
		}
		t.Run(fmt.Sprintf("%d of 3 servers, %v", c.troubled, status.Code(c.answer)), func(t *testing.T) {
			name := manual.NewBuilderWithScheme("storm")
			state := resolver.State{}
			servers := make([]*fake, 3)
			for i := range servers {
				servers[i] = &fake{answer: willing}
				if i < c.troubled {
					servers[i].answer = func(_ context.Context, call int64) error {
						if call%2 == 0 {
							return c.answer
						}
						return nil
					}
				}
				_, address := serve(t, servers[i], "127.0.0.1:0")
				state.Addresses = append(state.Addresses, resolver.Address{Addr: address})
			}
			name.InitialState(state)
			caller := dial(t, "storm:///footward", client.WithPlaintext(), client.WithDialOptions(grpc.WithResolvers(name)))

			var left, failed atomic.Int64
			left.Store(int64(c.calls))
			var ended sync.WaitGroup
			for range callers {
				ended.Go(func() {
					for left.Add(-1) >= 0 {
						if _, err := caller.CheckWeld(context.Background(), &footwardv1.CheckWeldRequest{}); err != nil {
							failed.Add(1)
						}
					}
				})
			}
			ended.Wait()
			var arrived int64
			for _, s := range servers {
				require.Positive(t, s.calls.Load())
				arrived += s.calls.Load()
			}
			each := float64(arrived) / float64(c.calls)
			t.Logf("%.3f calls arrived for each that was made; %d of %d failed", each, failed.Load(), c.calls)
			assert.LessOrEqual(t, each, most)
		})
	}
}
