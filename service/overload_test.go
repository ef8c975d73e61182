package main

import (
	"context"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"

	"footward.example/footward/client"
	"footward.example/footward/client/footward/reading"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// invoke makes a call whose messages stay bytes.
func invoke(ctx context.Context, c *client.Client, method string, wire []byte) ([]byte, error) {
	var got []byte
	err := c.Conn().Invoke(ctx, method, wire, &got, grpc.ForceCodecV2(raw{}))
	return got, err
}

// resident is the memory of the process [bytes].
func (p *process) resident(t *testing.T) int64 {
	t.Helper()
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/statm", p.Process.Pid))
	if err != nil {
		t.Skip("memory cannot be read here: ", err)
	}
	pages, err := strconv.ParseInt(strings.Fields(string(text))[1], 10, 64)
	require.NoError(t, err)
	return pages * int64(os.Getpagesize())
}

// answered are the answers to many calls.
type answered struct {
	mu     sync.Mutex
	took   []time.Duration // of those that were answered
	failed map[codes.Code]int
	hints  int // calls with a delay after which to ask again
}

func (a *answered) add(err error, took time.Duration) {
	a.mu.Lock()
	defer a.mu.Unlock()
	if err == nil {
		a.took = append(a.took, took)
		return
	}
	if a.failed == nil {
		a.failed = map[codes.Code]int{}
	}
	a.failed[status.Code(err)]++
	if overloaded, again := hint(err); overloaded && again > 0 {
		a.hints++
	}
}

// within is the time that so many of 100 answered calls stayed below.
func (a *answered) within(share int) time.Duration {
	slices.Sort(a.took)
	return a.took[len(a.took)*share/100]
}

// p99 is the time that 99 of 100 answered calls stayed below.
func (a *answered) p99() time.Duration { return a.within(99) }

// heavy is a batch of two column bases of the demo: work that is worth far more
// than its refusal. A single small check is answered about as fast as refused.
func heavy(t *testing.T) []byte {
	t.Helper()
	f, err := os.Open("../testdata/demo/5-base.yaml")
	require.NoError(t, err)
	defer func() { _ = f.Close() }()
	items, err := reading.Read(f)
	require.NoError(t, err)
	m := &footwardv1.CheckManyRequest{}
	for range 2 {
		m.Items = append(m.Items, items[0].Check)
	}
	wire, err := proto.Marshal(m)
	require.NoError(t, err)
	return wire
}

// hint returns whether a failed call tells that the service is overloaded, and
// when to ask again.
func hint(err error) (overloaded bool, again time.Duration) {
	for _, d := range status.Convert(err).Details() {
		switch d := d.(type) {
		case *errdetails.ErrorInfo:
			overloaded = d.GetReason() == "OVERLOADED"
		case *errdetails.RetryInfo:
			again = d.GetRetryDelay().AsDuration()
		}
	}
	return overloaded, again
}

// TestOverloadShedsAndKeepsAnswering sends ten times the calls that the service can
// answer, whether they are answered or not. Goodput and waiting are reported: callers
// and service share the machine, with others besides.
func TestOverloadShedsAndKeepsAnswering(t *testing.T) {
	if testing.Short() {
		t.Skip("takes 4 to 12 s")
	}
	const normal, run = 64, 1500 * time.Millisecond
	p := launch(t)
	var conns []*client.Client
	for range 8 {
		conns = append(conns, p.dial(t, client.WithoutAskingLater()))
	}
	wire := heavy(t)
	ask := func(i int, a *answered) {
		ctx, cancel := context.WithTimeout(context.Background(), 2*time.Minute)
		defer cancel()
		began := time.Now()
		_, err := invoke(ctx, conns[i%len(conns)], footwardv1.CheckService_CheckMany_FullMethodName, wire)
		a.add(err, time.Since(began))
	}

	var usual, flooded answered
	var all sync.WaitGroup
	began := time.Now()
	for i := range normal {
		all.Go(func() {
			for time.Since(began) < run {
				ask(i, &usual)
			}
		})
	}
	all.Wait()
	capacity := float64(len(usual.took)) / time.Since(began).Seconds()
	assert.Empty(t, usual.failed, "%d callers are no overload", normal)
	calm := p.resident(t)

	stop := watchOver(t, p)
	sent := 0
	// However slow the machine is, far more come than may wait.
	offered := max(10*capacity, 400)
	for began = time.Now(); time.Since(began) < run; time.Sleep(time.Millisecond) {
		for ; float64(sent) < offered*time.Since(began).Seconds(); sent++ {
			all.Go(func() { ask(sent, &flooded) })
		}
	}
	all.Wait()
	goodput := float64(len(flooded.took)) / time.Since(began).Seconds()
	most, healthy := stop()

	t.Logf("capacity %.0f calls/s, p99 %v; offered %.0f calls/s: goodput %.0f (%.0f %%), p99 of those let in %v (%.1f times), %v; memory %d MiB, at most %d MiB; health asked %d times",
		capacity, usual.p99().Round(time.Millisecond), float64(sent)/run.Seconds(), goodput, 100*goodput/capacity,
		flooded.p99().Round(time.Millisecond), float64(flooded.p99())/float64(usual.p99()), flooded.failed, calm>>20, most>>20, healthy)
	for code := range flooded.failed {
		assert.Equal(t, codes.ResourceExhausted, code)
	}
	assert.Equal(t, flooded.failed[codes.ResourceExhausted], flooded.hints, "each says when to ask again")
	assert.Positive(t, flooded.hints)
	assert.Less(t, most, int64(256<<20))
	assert.Less(t, strings.Count(p.log.String(), "\n"), 50, "the log stays calm")
}

// watchOver asks for health and memory until the function that it returns is
// called, which gives the most memory and the number of questions.
func watchOver(t *testing.T, p *process) (stop func() (most int64, n int)) {
	t.Helper()
	c := grpc_health_v1.NewHealthClient(p.dial(t).Conn())
	ctx, cancel := context.WithCancel(context.Background())
	var most int64
	var n int
	var watching sync.WaitGroup
	watching.Go(func() {
		for ; ctx.Err() == nil; time.Sleep(5 * time.Millisecond) {
			_, err := c.Check(context.Background(), &grpc_health_v1.HealthCheckRequest{})
			assert.NoError(t, err, "health is never shed")
			n++
			most = max(most, p.resident(t))
		}
	})
	return func() (int64, int) {
		cancel()
		watching.Wait()
		return most, n
	}
}
