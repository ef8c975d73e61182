package main

import (
	"bufio"
	"context"
	"io"
	"os"
	"os/exec"
	"regexp"
	"strconv"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.uber.org/goleak"
	"google.golang.org/grpc"
	"google.golang.org/grpc/health/grpc_health_v1"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// asProgram has the binary of the tests be the service itself, with so much memory if
// memoryOfProgram says how much.
const (
	asProgram       = "SERVICE_TEST_AS_PROGRAM"
	memoryOfProgram = "SERVICE_TEST_MEMORY"
)

func TestMain(m *testing.M) {
	if os.Getenv(asProgram) != "" {
		if most, err := strconv.ParseUint(os.Getenv(memoryOfProgram), 10, 64); err == nil {
			if err := syscall.Setrlimit(syscall.RLIMIT_DATA, &syscall.Rlimit{Cur: most, Max: most}); err != nil {
				panic(err)
			}
		}
		main()
	}
	goleak.VerifyTestMain(m)
}

// process is the service as a process of its own.
type process struct {
	*exec.Cmd
	at   string
	log  lines
	read chan struct{} // closed when the log is complete
	// Where the log is read from.
	stderr io.Closer
}

// lines is a log that is written and read at once.
type lines struct {
	mu   sync.Mutex
	text []byte
}

func (l *lines) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.text = append(l.text, p...)
	return len(p), nil
}

func (l *lines) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return string(l.text)
}

var listening = regexp.MustCompile(`msg=serving .*listening=(\S+)`)

// launch starts the service on a free port and waits until it listens.
func launch(t *testing.T, args ...string) *process {
	t.Helper()
	return launchWith(t, nil, args...)
}

// launchWith does so with more of the environment.
func launchWith(t *testing.T, environment []string, args ...string) *process {
	t.Helper()
	p := &process{Cmd: exec.Command(os.Args[0], append([]string{"--grpc-address", "127.0.0.1:0", "--metrics-address", ""}, args...)...)}
	p.Env = append(append(os.Environ(), asProgram+"=1"), environment...)
	stderr, err := p.StderrPipe()
	require.NoError(t, err)
	p.stderr = stderr
	require.NoError(t, p.Start())
	at := make(chan string, 1)
	p.read = make(chan struct{})
	go func() {
		defer close(p.read)
		for in := bufio.NewReader(io.TeeReader(stderr, &p.log)); ; {
			line, err := in.ReadString('\n')
			if found := listening.FindStringSubmatch(line); found != nil {
				at <- found[1]
			}
			if err != nil {
				close(at)
				return
			}
		}
	}()
	t.Cleanup(func() {
		_ = p.Process.Kill() // of no effect when it has ended
		<-p.read
		_ = p.Wait()
	})
	p.at = <-at
	require.NotEmpty(t, p.at, "%v", &p.log)
	return p
}

func (p *process) dial(t *testing.T, options ...client.Option) *client.Client {
	t.Helper()
	c, err := client.Dial(p.at, append([]client.Option{client.WithoutWaiting()}, options...)...)
	require.NoError(t, err)
	t.Cleanup(func() { _ = c.Close() })
	return c
}

// end waits for the end of the process.
func (p *process) end(t *testing.T) *os.ProcessState {
	t.Helper()
	late := time.AfterFunc(2*time.Minute, func() { _ = p.Process.Kill() })
	defer late.Stop()
	<-p.read
	_ = p.Wait()
	return p.ProcessState
}

// health follows what the process says of itself.
func health(t *testing.T, ctx context.Context, c *client.Client) grpc_health_v1.Health_WatchClient {
	t.Helper()
	w, err := grpc_health_v1.NewHealthClient(c.Conn()).Watch(ctx, &grpc_health_v1.HealthCheckRequest{})
	require.NoError(t, err)
	says(t, w, grpc_health_v1.HealthCheckResponse_SERVING)
	return w
}

func says(t *testing.T, w grpc_health_v1.Health_WatchClient, want grpc_health_v1.HealthCheckResponse_ServingStatus) {
	t.Helper()
	m, err := w.Recv()
	require.NoError(t, err)
	require.Equal(t, want, m.GetStatus())
}

// TestSignalDrainsTheProcess keeps a stream open across the signal, beside a watch
// of health that nobody ends: it may not hold the process up.
func TestSignalDrainsTheProcess(t *testing.T) {
	p := launch(t, "--drain-delay", "100ms")
	// A client that watches health would not call any more.
	c := p.dial(t, client.WithDialOptions(grpc.WithDisableHealthCheck()))
	watch := health(t, t.Context(), p.dial(t))
	stream, err := c.StreamChecks(t.Context())
	require.NoError(t, err)
	one := func() {
		t.Helper()
		require.NoError(t, stream.Send(&footwardv1.StreamChecksRequest{Items: []*footwardv1.CheckItem{item(-120)}}))
		_, err := stream.Recv()
		require.NoError(t, err)
	}
	one()
	require.NoError(t, p.Process.Signal(syscall.SIGTERM))
	says(t, watch, grpc_health_v1.HealthCheckResponse_NOT_SERVING)
	_, err = c.CheckBearing(t.Context(), item(-120).GetBearing())
	assert.NoError(t, err, "calls are taken in the grace period")
	one()
	_, err = watch.Recv()
	assert.Error(t, err, "the watch is ended")
	one()
	require.NoError(t, stream.CloseSend())
	_, err = stream.Recv()
	require.ErrorIs(t, err, io.EOF)
	assert.Equal(t, stopped, p.end(t).ExitCode(), "%v", &p.log)
	assert.Contains(t, p.log.String(), "cut_off=false")
}

func TestSecondSignalEndsTheProcessAtOnce(t *testing.T) {
	for _, second := range []syscall.Signal{syscall.SIGTERM, syscall.SIGINT} {
		p := launch(t, "--drain-delay", "15s")
		watch := health(t, t.Context(), p.dial(t))
		require.NoError(t, p.Process.Signal(syscall.SIGTERM))
		says(t, watch, grpc_health_v1.HealthCheckResponse_NOT_SERVING)
		require.NoError(t, p.Process.Signal(second))
		state := p.end(t)
		assert.Equal(t, bySignal+int(second), state.ExitCode(), "%v", &p.log)
	}
}

func TestProcessTellsByItsExitStatusThatCallsWereCutOff(t *testing.T) {
	p := launch(t, "--drain-timeout", "100ms")
	stream, err := p.dial(t).StreamChecks(t.Context())
	require.NoError(t, err)
	require.NoError(t, stream.Send(&footwardv1.StreamChecksRequest{Items: []*footwardv1.CheckItem{item(-1)}}))
	_, err = stream.Recv()
	require.NoError(t, err)
	require.NoError(t, p.Process.Signal(syscall.SIGTERM))
	assert.Equal(t, failed, p.end(t).ExitCode())
	assert.Contains(t, p.log.String(), "cut_off=true")
}
