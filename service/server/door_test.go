package server

import (
	"bytes"
	"encoding/binary"
	"net"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/http2"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/encoding/gzip"
	"google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/status"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

// guarded are the production settings with a token that nobody knows.
func guarded(t *testing.T) Options {
	t.Helper()
	path := t.TempDir() + "/tokens"
	put(t, path, []byte("yew-and-juniper-2718\n"))
	o := production()
	var err error
	o.Callers.Tokens, err = guard.ReadTokens(path, 0, nil)
	require.NoError(t, err)
	return o
}

// announced is the head of a message of so many bytes, which need never come.
func announced(size int) []byte {
	head := make([]byte, 5)
	binary.BigEndian.PutUint32(head[1:], uint32(size))
	return head
}

// TestTokenIsAskedBeforeTheMessage of every method: the call is refused while its
// message is still to come. Nothing of that is in the log, and each is counted.
func TestTokenIsAskedBeforeTheMessage(t *testing.T) {
	h := start(t, guarded(t))
	w := h.connect(t)
	id, asked := uint32(1), 0
	for service, info := range h.grpc.GetServiceInfo() {
		for _, m := range info.Methods {
			if strings.HasPrefix(service, "grpc.health.") {
				continue
			}
			require.NoError(t, w.open(id, "/"+service+"/"+m.Name))
			require.NoError(t, w.WriteData(id, false, announced(DefaultMessageBytes)))
			assert.Equal(t, "16", w.status(t, id), "%s.%s: UNAUTHENTICATED", service, m.Name)
			id, asked = id+2, asked+1
		}
	}
	require.NoError(t, w.open(id, "/no.such/Method"))
	assert.Equal(t, "16", w.status(t, id), "what there is, a stranger is not told")
	require.Greater(t, asked, 15)
	require.Eventually(t, func() bool { return h.value(t, "footward_calls_turned_away_total") == float64(asked+1) }, enough, time.Millisecond)
	assert.NotContains(t, h.log.String(), "msg=call")
}

// TestCallsWithoutTokenOrMessageAreNotLogged, however many there are.
func TestCallsWithoutTokenOrMessageAreNotLogged(t *testing.T) {
	h := start(t, guarded(t))
	w := h.connect(t)
	const calls = 100
	for i := range uint32(calls) {
		w.block.Reset()
		require.NoError(t, w.open(2*i+1, unary))
		require.NoError(t, w.WriteData(2*i+1, true, nil))
	}
	require.Eventually(t, func() bool { return h.value(t, "footward_calls_turned_away_total") == calls }, enough, time.Millisecond)
	assert.NotContains(t, h.log.String(), "msg=call")
}

// TestHealthTakesSmallMessagesAndFillsNoLog: everybody may ask for it.
func TestHealthTakesSmallMessagesAndFillsNoLog(t *testing.T) {
	h := start(t, guarded(t))
	c := h.dial(t)
	for _, wire := range [][]byte{{0xff, 0xff}, bytes.Repeat([]byte{0x10, 1}, 4<<10), []byte("\x0a\x04none")} {
		_, err := invoke(t.Context(), c, grpc_health_v1.Health_Check_FullMethodName, wire)
		assert.Contains(t, []codes.Code{codes.Internal, codes.ResourceExhausted, codes.NotFound}, status.Code(err))
	}
	w := h.connect(t)
	require.NoError(t, w.open(1, grpc_health_v1.Health_Check_FullMethodName))
	require.NoError(t, w.WriteData(1, false, announced(1<<20)))
	assert.Equal(t, "8", w.status(t, 1), "RESOURCE_EXHAUSTED before the message has come")
	assert.NotContains(t, h.log.String(), "msg=call")
}

// TestMessagesAreTakenWithoutCompressionOnly, although a library that sends traces
// brings one with it.
func TestMessagesAreTakenWithoutCompressionOnly(t *testing.T) {
	h := start(t, production())
	c := h.dial(t)
	_, err := footwardv1.NewCheckServiceClient(c.Conn()).CheckBearing(t.Context(), bearing(), grpc.UseCompressor(gzip.Name))
	assert.Equal(t, codes.Unimplemented, status.Code(err), "%v", err)
	assert.ErrorContains(t, err, "gzip")
	stream, err := footwardv1.NewCheckServiceClient(c.Conn()).StreamChecks(t.Context(), grpc.UseCompressor(gzip.Name))
	require.NoError(t, err)
	_, err = stream.Recv()
	assert.Equal(t, codes.Unimplemented, status.Code(err))
	w := h.connect(t)
	require.NoError(t, w.open(1, unary, "grpc-encoding", "identity"))
	require.NoError(t, w.WriteData(1, true, append([]byte{1}, announced(1)[1:]...)))
	assert.Equal(t, "13", w.status(t, 1), "a message that says otherwise")
}

// TestLargeMessagesShareTheirRoom: those that do not come to their end are waited
// for, while small calls are answered; then others have the room.
func TestLargeMessagesShareTheirRoom(t *testing.T) {
	const size = 1 << 20
	o := production()
	o.MessageBytes = size
	h := start(t, o)
	arriving := func() float64 { return h.value(t, "footward_messages_bytes") }
	w := h.connect(t)
	const calls = 9
	for i := range uint32(calls) {
		require.NoError(t, w.open(2*i+1, footwardv1.CheckService_CheckMany_FullMethodName))
		require.NoError(t, w.WriteData(2*i+1, false, append(announced(size), make([]byte, 1000)...)))
	}
	require.Eventually(t, func() bool { return arriving() == 4*size }, enough, time.Millisecond)
	_, err := h.dial(t).CheckBearing(t.Context(), bearing())
	assert.NoError(t, err)
	assert.Equal(t, float64(4*size), arriving(), "the others wait")
	for i := range uint32(calls) {
		require.NoError(t, w.WriteRSTStream(2*i+1, http2.ErrCodeCancel))
	}
	require.Eventually(t, func() bool { return arriving() == 0 }, enough, time.Millisecond)
	_, err = h.dial(t).CheckMany(t.Context(), batch(t, 200))
	assert.NoError(t, err)
}

// TestUnreadMessagesAreHeldUpByTheirSender: a connection may send ahead no more than a
// window for each call, however fast it has been before.
func TestUnreadMessagesAreHeldUpByTheirSender(t *testing.T) {
	w := start(t, production()).connect(t)
	require.NoError(t, w.SetReadDeadline(time.Now().Add(enough)))
	for {
		f, err := w.ReadFrame()
		require.NoError(t, err)
		if s, ok := f.(*http2.SettingsFrame); ok && !s.IsAck() {
			size, told := s.Value(http2.SettingInitialWindowSize)
			assert.True(t, told)
			assert.Equal(t, uint32(guard.Window), size)
			return
		}
	}
}

// TestOpenCallsAreSharedByAddress: one address has its share of them, and another its
// own.
func TestOpenCallsAreSharedByAddress(t *testing.T) {
	o := production()
	o.Open, o.AddressShare = 40, 0.25
	h := start(t, o)
	w := h.connect(t)
	for i := range uint32(10) {
		require.NoError(t, w.open(2*i+1, unary))
	}
	require.Eventually(t, func() bool { return h.value(t, "grpc_server_started_total") == 10 }, enough, time.Millisecond)
	_, err := h.dial(t).CheckBearing(t.Context(), bearing())
	assert.Equal(t, codes.ResourceExhausted, status.Code(err))
	assert.Equal(t, "OVERLOADED", reason(err))
	elsewhere := h.dialFrom(t, "127.0.0.2")
	_, err = elsewhere.CheckBearing(t.Context(), bearing())
	assert.NoError(t, err)
}

// TestConnectionsAreSharedByAddress likewise, and are counted.
func TestConnectionsAreSharedByAddress(t *testing.T) {
	o := production()
	o.Connections, o.AddressShare = 8, 0.5
	h := start(t, o)
	var held []net.Conn
	for range 4 {
		held = append(held, h.connect(t))
	}
	closed(t, h.tcp(t), enough)
	_, err := h.dialFrom(t, "127.0.0.2").CheckBearing(t.Context(), bearing())
	assert.NoError(t, err)
	assert.Equal(t, 5.0, h.value(t, "footward_connections_accepted_total"))
	assert.Equal(t, 1.0, h.value(t, "footward_connections_turned_away_total"))
	assert.Equal(t, 5.0, h.value(t, "footward_connections_open"))
	for _, c := range held {
		require.NoError(t, c.Close())
	}
	require.Eventually(t, func() bool { return h.value(t, "footward_connections_open") == 1 }, enough, time.Millisecond)
	_, err = h.dial(t).CheckBearing(t.Context(), bearing())
	assert.NoError(t, err, "what is free is taken")
}

// TestSilentConnectionsAreEnded until somebody was let in on them.
func TestSilentConnectionsAreEnded(t *testing.T) {
	o := guarded(t)
	hasty := usual
	hasty.stranger = 300 * time.Millisecond
	o.patience = &hasty
	h := start(t, o)
	w := h.connect(t)
	require.NoError(t, w.open(1, unary))
	assert.Equal(t, "16", w.status(t, 1), "a call that was turned away does not count")
	watches := h.dial(t)
	watch, err := grpc_health_v1.NewHealthClient(watches.Conn()).Watch(t.Context(), &grpc_health_v1.HealthCheckRequest{})
	require.NoError(t, err)
	_, err = watch.Recv()
	require.NoError(t, err)
	closed(t, w, enough)
	closed(t, h.connect(t), enough)
	require.Eventually(t, func() bool { return h.value(t, "footward_connections_turned_away_total") == 2 }, enough, time.Millisecond)
	remain := func(what string) {
		t.Helper()
		require.Eventually(t, func() bool { return h.value(t, "footward_connections_open") == 1 }, enough, time.Millisecond, what)
	}
	remain("one on which health is watched stays")
	assert.Positive(t, h.value(t, "footward_health_watches"))

	p := production()
	p.patience = &hasty
	h = start(t, p)
	c := h.dial(t)
	_, err = c.CheckBearing(t.Context(), bearing())
	require.NoError(t, err)
	closed(t, h.connect(t), enough)
	closed(t, h.connect(t), enough)
	remain("one on which a caller was let in stays")
}

// TestWatchesAreBoundedAndEnded in all, for each address and in time.
func TestWatchesAreBoundedAndEnded(t *testing.T) {
	o := guarded(t)
	o.Watches, o.AddressShare = 16, 0.25
	o.Deadlines.Streams = 500 * time.Millisecond
	h := start(t, o)
	own := client.WithDialOptions(grpc.WithDisableHealthCheck())
	c := grpc_health_v1.NewHealthClient(h.dial(t, own).Conn())
	var open []grpc_health_v1.Health_WatchClient
	for range 5 {
		w, err := c.Watch(t.Context(), &grpc_health_v1.HealthCheckRequest{})
		require.NoError(t, err)
		if _, err = w.Recv(); err == nil {
			open = append(open, w)
			continue
		}
		assert.Equal(t, codes.ResourceExhausted, status.Code(err))
	}
	assert.Len(t, open, 4)
	assert.Equal(t, 1.0, h.value(t, "footward_health_watches_turned_away_total"))
	_, err := c.Check(t.Context(), &grpc_health_v1.HealthCheckRequest{})
	assert.NoError(t, err)
	other, err := grpc_health_v1.NewHealthClient(h.dialFrom(t, "127.0.0.2", own).Conn()).Watch(t.Context(), &grpc_health_v1.HealthCheckRequest{})
	require.NoError(t, err)
	_, err = other.Recv()
	assert.NoError(t, err)
	for _, w := range open {
		_, err := w.Recv()
		assert.Contains(t, []codes.Code{codes.Unavailable, codes.DeadlineExceeded}, status.Code(err), "ended: %v", err)
	}
	require.Eventually(t, func() bool { return h.value(t, "footward_health_watches") == 0 }, enough, time.Millisecond)
}
