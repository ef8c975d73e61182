package main

import (
	"bytes"
	"context"
	"fmt"
	"net"
	"os"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/http2"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/encoding/protowire"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// deployed is the memory that a service has in deploy/.
const deployed = 512 << 20

// confined starts the service with no more memory than in deploy/. Beyond that it
// dies.
func confined(t *testing.T, args ...string) *process {
	t.Helper()
	return launchWith(t, []string{memoryOfProgram + "=" + strconv.Itoa(deployed), "GOMEMLIMIT=432MiB"}, args...)
}

// guarded is confined, and asks for a token.
func guarded(t *testing.T, args ...string) *process {
	t.Helper()
	path := t.TempDir() + "/tokens"
	require.NoError(t, os.WriteFile(path, []byte(token+"\n"), 0o600))
	return confined(t, append(args, "--token-file", path)...)
}

const token = "hazel-and-hornbeam-1618"

// known is a client with the token that guarded asks for. Tokens travel in the clear
// on this machine alone.
func (p *process) known(t *testing.T, options ...client.Option) *client.Client {
	t.Helper()
	return p.dial(t, append(options, client.WithToken(func() (string, error) { return token, nil }))...)
}

// bombs are bodies of CheckMany that are small or become much.
func bombs() map[string][]byte {
	field := func(n protowire.Number, of []byte) []byte {
		return protowire.AppendBytes(protowire.AppendTag(nil, n, protowire.BytesType), of)
	}
	number := (&footwardv1.CheckItem{}).ProtoReflect().Descriptor().Fields().ByName("settlement").Number()
	layers := (&footwardv1.CheckSettlementRequest{}).ProtoReflect().Descriptor().Fields().ByName("layers").Number()
	const most = 16<<20 - 1
	fill := func(item []byte) []byte { return bytes.Repeat(item, most/len(item)) }
	return map[string][]byte{
		"empty items":       fill(field(1, nil)),
		"empty settlements": fill(field(1, field(number, nil))),
		"10 000 items":      fill(field(1, field(number, bytes.Repeat(field(layers, nil), most/9999/2)))),
	}
}

// figures are what the system says of a process.
type figures struct {
	now, most int64 // memory [bytes]
	used      time.Duration
}

func (p *process) figures(t *testing.T) (f figures) {
	t.Helper()
	at := fmt.Sprintf("/proc/%d/", p.Process.Pid)
	text, err := os.ReadFile(at + "status")
	if err != nil {
		t.Skip("a process cannot be watched here: ", err)
	}
	for _, line := range strings.Split(string(text), "\n") {
		name, value, _ := strings.Cut(line, ":")
		kib, _ := strconv.ParseInt(strings.TrimSpace(strings.TrimSuffix(value, "kB")), 10, 64)
		switch name {
		case "VmRSS":
			f.now = kib << 10
		case "VmHWM":
			f.most = kib << 10
		}
	}
	text, err = os.ReadFile(at + "stat")
	require.NoError(t, err)
	_, rest, _ := strings.Cut(string(text), ") ")
	const user, system, perSecond = 11, 12, 100
	parts := strings.Fields(rest)
	for _, at := range []int{user, system} {
		ticks, err := strconv.Atoi(parts[at])
		require.NoError(t, err)
		f.used += time.Duration(ticks) * time.Second / perSecond
	}
	return f
}

// among keeps asking for a check of another caller while it does something, and
// returns what became of that. Times are reported, not asserted.
func (p *process) among(t *testing.T, c *client.Client, do func()) *answered {
	t.Helper()
	var a answered
	ctx, stop := context.WithCancel(context.Background())
	var all sync.WaitGroup
	all.Go(func() {
		for ctx.Err() == nil {
			began := time.Now()
			_, err := c.CheckBearing(context.Background(), item(-120).GetBearing())
			a.add(err, time.Since(began))
			time.Sleep(time.Millisecond)
		}
	})
	do()
	stop()
	all.Wait()
	return &a
}

// TestCallersWithoutTokenCostLittle: neither what expands nor what is large is read of
// them, six at once, again and again.
func TestCallersWithoutTokenCostLittle(t *testing.T) {
	if testing.Short() {
		t.Skip("takes seconds")
	}
	const atOnce, rounds, window = 6, 50, 60 << 10
	p := guarded(t)
	others := p.known(t)
	calm := p.among(t, others, func() { time.Sleep(time.Second) })
	large := bombs()["empty settlements"]
	squeezed, plain := frame(large, true), frame(large, false)[:window]
	before := p.figures(t)
	attacked := p.among(t, others, func() {
		var all sync.WaitGroup
		for i := range atOnce {
			s := comes(t, p.at)
			all.Go(func() {
				for range rounds {
					beginning, how := plain, []string(nil)
					if i%2 == 0 {
						beginning, how = squeezed, []string{"grpc-encoding", "gzip"}
					}
					code, err := s.ask(beginning, i%2 == 0, how...)
					if !assert.NoError(t, err) || !assert.Equal(t, "16", code, "UNAUTHENTICATED") {
						return
					}
					time.Sleep(20 * time.Millisecond)
				}
			})
		}
		all.Wait()
	})
	after := p.figures(t)
	const calls = atOnce * rounds
	t.Logf("%d calls: memory %d MiB before, %d MiB at most: %d KiB each; %v of processors each, with %d calls of another; p99 of those %v, calm %v",
		calls, before.now>>20, after.most>>20, (after.most-before.now)/calls>>10,
		(after.used-before.used)/calls, len(attacked.took), attacked.p99(), calm.p99())
	assert.Empty(t, attacked.failed, "others are served")
	assert.Less(t, after.most-before.now, int64(24<<20))
	assert.NotContains(t, p.log.String(), "msg=call")
}

// invokeMany asks for CheckMany.
func invokeMany(c *client.Client, wire []byte) error {
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	var got []byte
	return c.Conn().Invoke(ctx, footwardv1.CheckService_CheckMany_FullMethodName, wire, &got, grpc.ForceCodecV2(raw{}))
}

// TestMessagesAreMeasuredBeforeTheyAreDecoded: a caller who was let in is told what is
// wrong with what would become a gigabyte, and the service lives.
func TestMessagesAreMeasuredBeforeTheyAreDecoded(t *testing.T) {
	if testing.Short() {
		t.Skip("takes seconds")
	}
	p := confined(t)
	others := p.dial(t)
	before := p.figures(t)
	a := p.among(t, others, func() {
		var all sync.WaitGroup
		for name, wire := range bombs() {
			want := codes.InvalidArgument
			if name == "10 000 items" {
				want = codes.OutOfRange
			}
			for range 2 {
				c := p.dial(t)
				all.Go(func() {
					err := invokeMany(c, wire)
					assert.Equal(t, want, status.Code(err), "%s: %v", name, err)
				})
			}
		}
		all.Wait()
	})
	after := p.figures(t)
	t.Logf("memory %d MiB before, %d MiB at most; %v of processors; p99 of %d calls of another %v",
		before.now>>20, after.most>>20, after.used-before.used, len(a.took), a.p99())
	assert.Empty(t, a.failed, "others are served")
	assert.Less(t, after.most, int64(300<<20))
}

// TestWatchesOfStrangersAreBounded: health can be asked without a token, not watched
// without an end.
func TestWatchesOfStrangersAreBounded(t *testing.T) {
	if testing.Short() {
		t.Skip("takes seconds")
	}
	p := guarded(t)
	before := p.figures(t)
	open := 0
	for range 8 {
		c := grpc_health_v1.NewHealthClient(p.dial(t, client.WithDialOptions(grpc.WithDisableHealthCheck())).Conn())
		var all []grpc_health_v1.Health_WatchClient
		for range 200 {
			w, err := c.Watch(t.Context(), &grpc_health_v1.HealthCheckRequest{})
			require.NoError(t, err)
			all = append(all, w)
		}
		for _, w := range all {
			if _, err := w.Recv(); err == nil {
				open++
			}
		}
	}
	after := p.figures(t)
	t.Logf("1600 watches asked for, %d open; memory %d MiB before, %d MiB at most", open, before.now>>20, after.most>>20)
	assert.Equal(t, 256, open, "a quarter of 1024")
	_, err := p.known(t, client.WithDialOptions(from("127.0.0.2"))).CheckBearing(t.Context(), item(-120).GetBearing())
	assert.NoError(t, err)
}

// from dials from another address of this machine.
func from(address string) grpc.DialOption {
	d := net.Dialer{LocalAddr: &net.TCPAddr{IP: net.ParseIP(address)}}
	return grpc.WithContextDialer(func(ctx context.Context, at string) (net.Conn, error) { return d.DialContext(ctx, "tcp", at) })
}

// TestSilentConnectionsLockNobodyOut: as many as the service takes, of one address.
func TestSilentConnectionsLockNobodyOut(t *testing.T) {
	if testing.Short() {
		t.Skip("takes seconds")
	}
	p := guarded(t)
	for range 1024 {
		c, err := net.Dial("tcp", p.at)
		require.NoError(t, err)
		t.Cleanup(func() { _ = c.Close() })
		// One that is turned away may be closed by now.
		_, _ = c.Write([]byte(http2.ClientPreface))
		_ = http2.NewFramer(c, nil).WriteSettings()
	}
	_, err := p.known(t, client.WithDialOptions(from("127.0.0.2"))).CheckBearing(t.Context(), item(-120).GetBearing())
	assert.NoError(t, err)
}
