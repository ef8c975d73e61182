package server

import (
	"bytes"
	"context"
	"errors"
	"log/slog"
	"net"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"testing"
	"time"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/stretchr/testify/require"
	"go.uber.org/goleak"
	"google.golang.org/grpc"

	"footward.example/footward/client"
	"footward.example/footward/client/footward/reading"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
	"footward.example/footward/service/telemetry"
)

// house is a server on a socket, with everything that stands before a handler in
// production.
type house struct {
	*Server
	at       string
	log      *lines
	registry *prometheus.Registry
}

// production are the program's own settings.
func production() Options {
	return Options{
		AtOnce: 4 * runtime.GOMAXPROCS(0), Waiting: 128, Streams: 256, Connections: 1024, Open: 2048, Watches: 1024, AddressShare: 0.25, Reflection: true,
		Deadlines: guard.Deadlines{
			Default: 30 * time.Second, Longest: 5 * time.Minute, Least: time.Millisecond, Streams: time.Hour, Idle: 5 * time.Minute,
		},
	}
}

// start serves until the test ends; then no goroutine may be left.
func start(t *testing.T, o Options, more ...func(*grpc.Server)) *house {
	t.Helper()
	before := goleak.IgnoreCurrent()
	h := &house{log: &lines{}, registry: prometheus.NewRegistry()}
	o.Log = slog.New(slog.NewTextHandler(h.log, nil))
	var err error
	o.Metrics, err = telemetry.New(h.registry)
	require.NoError(t, err)
	h.Server, err = New(o)
	require.NoError(t, err)
	for _, add := range more {
		add(h.grpc)
	}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	h.at = l.Addr().String()
	ended := make(chan error, 1)
	go func() { ended <- h.Serve(l) }()
	t.Cleanup(func() {
		h.Stop()
		if err := <-ended; !errors.Is(err, grpc.ErrServerStopped) { // before it served at all
			require.NoError(t, err)
		}
		goleak.VerifyNone(t, before)
	})
	return h
}

// dial connects; what the client does by itself to hide failures is left out.
func (h *house) dial(t *testing.T, options ...client.Option) *client.Client {
	t.Helper()
	c, err := client.Dial(h.at, append([]client.Option{client.WithoutWaiting(), client.WithoutAskingLater(),
		client.WithDialOptions(grpc.WithDisableRetry())}, options...)...)
	require.NoError(t, err)
	t.Cleanup(func() { _ = c.Close() })
	return c
}

// dialFrom connects from another address of this machine.
func (h *house) dialFrom(t *testing.T, address string, options ...client.Option) *client.Client {
	t.Helper()
	from := net.Dialer{LocalAddr: &net.TCPAddr{IP: net.ParseIP(address)}}
	return h.dial(t, append(options, client.WithDialOptions(grpc.WithContextDialer(func(ctx context.Context, at string) (net.Conn, error) {
		return from.DialContext(ctx, "tcp", at)
	})))...)
}

// value is that of a metric without labels, or the sum over all labels.
func (h *house) value(t *testing.T, name string) (sum float64) {
	t.Helper()
	families, err := h.registry.Gather()
	require.NoError(t, err)
	for _, f := range families {
		for _, m := range f.GetMetric() {
			if f.GetName() == name {
				sum += m.GetCounter().GetValue() + m.GetGauge().GetValue()
			}
		}
	}
	return sum
}

// enough is how long a test waits for what must come, on however busy a machine.
const enough = time.Minute

// idle waits until no call is worked on, and returns how long that took.
func (h *house) idle(t *testing.T) time.Duration {
	t.Helper()
	began := time.Now()
	require.Eventually(t, func() bool { return h.value(t, "footward_calls_under_way") == 0 }, enough, time.Millisecond)
	return time.Since(began)
}

// lines is a log that many goroutines write and read.
type lines struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (l *lines) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.text.Write(p)
}

func (l *lines) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.text.String()
}

// demo returns the checks of the demo.
func demo(t testing.TB) []*footwardv1.CheckItem {
	t.Helper()
	files, err := filepath.Glob("../../testdata/demo/*.yaml")
	require.NoError(t, err)
	var out []*footwardv1.CheckItem
	for _, path := range files {
		f, err := os.Open(path)
		require.NoError(t, err)
		items, err := reading.Read(f)
		require.NoError(t, err)
		require.NoError(t, f.Close())
		for _, i := range items {
			if i.Check.GetCheck() != nil {
				out = append(out, i.Check)
			}
		}
	}
	require.NotEmpty(t, out)
	return out
}

// batch repeats the parts of the demo until it has n items.
func batch(t testing.TB, n int) *footwardv1.CheckManyRequest {
	t.Helper()
	m := &footwardv1.CheckManyRequest{}
	for all := demo(t); len(m.Items) < n; {
		for _, i := range all {
			if i.GetColumnBase() == nil && len(m.Items) < n {
				m.Items = append(m.Items, i)
			}
		}
	}
	return m
}

func bearing() *footwardv1.CheckBearingRequest {
	return &footwardv1.CheckBearingRequest{
		Basis:   footwardv1.On(footwardv1.Basis_BASIS_EUROCODE),
		Contact: &footwardv1.SolidRectangle{SizeXMm: 500, SizeYMm: 500},
		Forces:  &footwardv1.ForcesAtFoot{NKn: -120},
		Support: &footwardv1.Support{Medium: &footwardv1.Support_Given{Given: &footwardv1.GivenPressure{
			PressureKpa: 640, Source: "a test", Medium: footwardv1.GivenMedium_GIVEN_MEDIUM_OTHER,
		}}},
	}
}

// keepCalling calls until the function that it returns is called, which gives
// the number of calls and demands that none failed.
func keepCalling(t *testing.T, c *client.Client) (stop func() int) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	done := make(chan error, 1)
	n := 0
	go func() {
		for ctx.Err() == nil {
			if _, err := c.CheckBearing(context.Background(), bearing()); err != nil {
				done <- err
				return
			}
			n++
		}
		done <- nil
	}()
	return func() int {
		cancel()
		require.NoError(t, <-done)
		return n
	}
}

// TestEveryStreamIsBoundedAsOne holds the list of streams to what is served.
func TestEveryStreamIsBoundedAsOne(t *testing.T) {
	h := start(t, production())
	for name, s := range h.grpc.GetServiceInfo() {
		for _, m := range s.Methods {
			method := "/" + name + "/" + m.Name
			if name != "grpc.health.v1.Health" {
				require.Equal(t, m.IsClientStream || m.IsServerStream, streams[method], method)
			}
		}
	}
}
