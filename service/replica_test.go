package main

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"net"
	"os"
	"os/exec"
	"runtime"
	"strconv"
	"sync"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc"
	"google.golang.org/grpc/peer"
	"google.golang.org/grpc/resolver"
	"google.golang.org/grpc/resolver/manual"

	"footward.example/footward/client"
)

// replicaRounds is how often every replica is restarted or killed.
var replicaRounds = flag.Int("replica.rounds", 1, "how often every replica is restarted, and killed, under load")

// replica is a server in a process of its own.
type replica struct {
	address string
	process *exec.Cmd
	log     *bytes.Buffer // to be read after the end
}

// replicas starts three servers that differ in their address alone.
func replicas(t *testing.T) []*replica {
	t.Helper()
	if runtime.GOOS == "windows" {
		missing(t, "this system has no signal to stop a process in good order")
	}
	port := freePort(t)
	var all []*replica
	for _, host := range hosts {
		r := &replica{address: net.JoinHostPort(host, strconv.Itoa(port))}
		r.start(t)
		t.Cleanup(func() {
			_ = r.process.Process.Kill()
			_ = r.process.Wait()
		})
		all = append(all, r)
	}
	return all
}

// hosts are where the replicas listen, all at one port.
var hosts = []string{"127.0.0.2", "127.0.0.3", "127.0.0.4"}

// freePort returns a port that is free at all hosts. It lies below those that
// systems give to connections by themselves, so that it stays free while a
// replica is away.
func freePort(t *testing.T) int {
	t.Helper()
	for {
		port, taken := 20_000+rand.IntN(10_000), false
		for _, host := range hosts {
			l, err := net.Listen("tcp", net.JoinHostPort(host, strconv.Itoa(port)))
			switch {
			case err == nil:
				require.NoError(t, l.Close())
			case errors.Is(err, syscall.EADDRINUSE):
				taken = true
			default:
				missing(t, "this system has 127.0.0.1 alone: "+err.Error())
			}
		}
		if !taken {
			return port
		}
	}
}

// missing skips a test that this machine cannot run, or fails it where all tests
// are demanded.
func missing(t *testing.T, why string) {
	t.Helper()
	if os.Getenv("DEMAND_ALL_TESTS") != "" {
		t.Fatalf("%s, and DEMAND_ALL_TESTS is set", why)
	}
	t.Skip(why)
}

// start starts the process and returns when it listens.
func (r *replica) start(t *testing.T) {
	t.Helper()
	program, err := os.Executable()
	require.NoError(t, err)
	r.log = &bytes.Buffer{}
	r.process = exec.Command(program, "--grpc-address", r.address, "--metrics-address", "", "--drain-delay", "200ms")
	r.process.Env = []string{asProgram + "=1"}
	r.process.Stderr = r.log
	require.NoError(t, r.process.Start())
	for end := time.Now().Add(time.Minute); ; time.Sleep(10 * time.Millisecond) {
		conn, err := net.Dial("tcp", r.address)
		if err == nil {
			require.NoError(t, conn.Close())
			return
		}
		if time.Now().After(end) {
			_ = r.process.Process.Kill()
			_ = r.process.Wait()
			t.Fatalf("%v; the server's log:\n%s", err, r.log)
		}
	}
}

// restart stops the process as a cluster does, and starts it again.
func (r *replica) restart(t *testing.T) {
	t.Helper()
	require.NoError(t, r.process.Process.Signal(syscall.SIGTERM))
	require.NoError(t, r.process.Wait(), r.log)
	assert.Contains(t, r.log.String(), "cut_off=false")
	r.start(t)
}

// kill ends the process without a warning, and starts it again.
func (r *replica) kill(t *testing.T) {
	t.Helper()
	require.NoError(t, r.process.Process.Kill())
	var exit *exec.ExitError
	require.ErrorAs(t, r.process.Wait(), &exit)
	r.start(t)
}

// load is callers that call one after another until they are told to stop.
type load struct {
	calls, failed atomic.Int64
	first         atomic.Pointer[error] // the first failure
	answered      map[string]*atomic.Int64
	stop          func()
}

// callers is how many call at a time.
const callers = 16

// press puts load on the replicas through one Client, which finds them under one
// name.
func press(t *testing.T, all []*replica, options ...client.Option) *load {
	t.Helper()
	name := manual.NewBuilderWithScheme("replicas")
	state := resolver.State{}
	l := &load{answered: map[string]*atomic.Int64{}}
	for _, r := range all {
		state.Addresses = append(state.Addresses, resolver.Address{Addr: r.address})
		l.answered[r.address] = &atomic.Int64{}
	}
	name.InitialState(state)
	options = append(options, client.WithPlaintext(), client.WithDialOptions(grpc.WithResolvers(name)))
	c, err := client.Dial("replicas:///footward", options...)
	require.NoError(t, err)
	ctx, cancel := context.WithCancel(t.Context())
	var ended sync.WaitGroup
	for i := range callers {
		ended.Go(func() {
			for ctx.Err() == nil {
				if err := l.call(c, -float64(i+1)); err != nil {
					l.failed.Add(1)
					l.first.CompareAndSwap(nil, &err)
				}
			}
		})
	}
	l.stop = sync.OnceFunc(func() {
		cancel()
		ended.Wait()
		assert.NoError(t, c.Close())
	})
	t.Cleanup(l.stop)
	return l
}

// call makes one call and looks at its answer. It outlives the end of the load.
func (l *load) call(c *client.Client, n float64) error {
	var from peer.Peer
	answer, err := c.CheckBearing(context.Background(), item(n).GetBearing(), grpc.Peer(&from))
	l.calls.Add(1)
	if err != nil {
		return err
	}
	l.answered[from.Addr.String()].Add(1)
	// 640 kPa on a quarter of a square metre.
	if want := -n / 160; !(math.Abs(answer.GetResult().GetGoverningUtilization()-want) < 1e-9) {
		return fmt.Errorf("utilization %v for %v kN", answer.GetResult().GetGoverningUtilization(), n)
	}
	return nil
}

// until waits for many calls to a replica, or to all.
func until(t *testing.T, counter *atomic.Int64, calls int64) {
	t.Helper()
	require.Eventually(t, func() bool { return counter.Load() >= calls }, time.Minute, 5*time.Millisecond)
}

// disturb does something to one replica after the other while calls go on, each
// time after the one before is back at work, and expects that no call fails: of a
// Client as it is, and of one that does not wait for a server.
func disturb(t *testing.T, what func(*replica, *testing.T)) {
	t.Helper()
	t.Parallel() // most of the time it waits for clients to come back
	all := replicas(t)
	loads := []*load{press(t, all), press(t, all, client.WithoutWaiting())}
	atWork := func(r *replica) {
		t.Helper()
		for _, l := range loads {
			until(t, l.answered[r.address], l.answered[r.address].Load()+100)
		}
	}
	for _, r := range all {
		atWork(r)
	}
	for range *replicaRounds {
		for _, r := range all {
			what(r, t)
			atWork(r)
		}
	}
	least := int64(20_000)
	if testing.Short() {
		least = 2_000
	}
	for _, l := range loads {
		until(t, &l.calls, least)
		l.stop()
		if first := l.first.Load(); first != nil {
			t.Errorf("the first of the failures: %v", *first)
		}
		t.Logf("%d calls, %d failed", l.calls.Load(), l.failed.Load())
	}
}

func TestNoCallFailsWhileReplicasAreRestarted(t *testing.T) { disturb(t, (*replica).restart) }

func TestNoCallFailsWhileReplicasAreKilled(t *testing.T) { disturb(t, (*replica).kill) }
