package server

import (
	"bytes"
	"errors"
	"io"
	"net"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"golang.org/x/net/http2"
	"golang.org/x/net/http2/hpack"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// wire is a connection on which a test says in HTTP/2 whatever it likes.
type wire struct {
	net.Conn
	*http2.Framer
	block bytes.Buffer
	hpack *hpack.Encoder
}

// connect opens a connection up to its first settings.
func (h *house) connect(t *testing.T) *wire {
	t.Helper()
	w := &wire{Conn: h.tcp(t)}
	_, err := w.Write([]byte(http2.ClientPreface))
	require.NoError(t, err)
	w.Framer = http2.NewFramer(w.Conn, w.Conn)
	w.hpack = hpack.NewEncoder(&w.block)
	require.NoError(t, w.WriteSettings())
	return w
}

func (h *house) tcp(t *testing.T) net.Conn {
	t.Helper()
	c, err := net.Dial("tcp", h.at)
	require.NoError(t, err)
	t.Cleanup(func() { _ = c.Close() })
	return c
}

// open sends the headers of a call, with more of them in pairs.
func (w *wire) open(id uint32, method string, more ...string) error {
	w.block.Reset()
	fields := append([]string{":method", "POST", ":scheme", "http", ":path", method, ":authority", "a",
		"content-type", "application/grpc", "te", "trailers"}, more...)
	for i := 0; i < len(fields); i += 2 {
		if err := w.hpack.WriteField(hpack.HeaderField{Name: fields[i], Value: fields[i+1]}); err != nil {
			return err
		}
	}
	const most = 16 << 10 // of a frame
	rest := w.block.Bytes()
	piece := rest[:min(len(rest), most)]
	rest = rest[len(piece):]
	err := w.WriteHeaders(http2.HeadersFrameParam{StreamID: id, BlockFragment: piece, EndHeaders: len(rest) == 0})
	for err == nil && len(rest) > 0 {
		piece = rest[:min(len(rest), most)]
		rest = rest[len(piece):]
		err = w.WriteContinuation(id, len(rest) == 0, piece)
	}
	return err
}

// status reads on until a call has ended, and returns its grpc-status.
func (w *wire) status(t *testing.T, id uint32) string {
	t.Helper()
	require.NoError(t, w.SetReadDeadline(time.Now().Add(5*time.Second)))
	got := ""
	if w.ReadMetaHeaders == nil {
		w.ReadMetaHeaders = hpack.NewDecoder(4096, nil)
	}
	for {
		f, err := w.ReadFrame()
		require.NoError(t, err)
		if f, ok := f.(*http2.MetaHeadersFrame); ok && f.StreamID == id {
			for _, field := range f.Fields {
				if field.Name == "grpc-status" {
					got = field.Value
				}
			}
			if f.StreamEnded() {
				return got
			}
		}
	}
}

// closed reads on until the connection ends, and returns how long that took.
func closed(t *testing.T, c net.Conn, within time.Duration) time.Duration {
	t.Helper()
	began := time.Now()
	require.NoError(t, c.SetReadDeadline(began.Add(within)))
	_, err := io.Copy(io.Discard, c)
	require.False(t, timedOut(err), "still open after %v", within)
	return time.Since(began)
}

func timedOut(err error) bool {
	var e net.Error
	return errors.As(err, &e) && e.Timeout()
}

const unary = footwardv1.CheckService_CheckBearing_FullMethodName

// TestHostileConnectionsAreClosedAndOthersServed has another client call all the
// time.
func TestHostileConnectionsAreClosedAndOthersServed(t *testing.T) {
	o := production()
	o.Streams = 100
	o.patience = &patience{handshake: 300 * time.Millisecond, idle: 400 * time.Millisecond, silence: time.Second, answer: 200 * time.Millisecond}
	h := start(t, o)
	stop := keepCalling(t, h.dial(t))
	const soon = enough
	t.Run("together", func(t *testing.T) {
		for name, attack := range map[string]func(*testing.T){
			"silent": func(t *testing.T) { closed(t, h.tcp(t), soon) },
			"slow": func(t *testing.T) {
				c := h.tcp(t)
				go func() {
					for _, b := range []byte(http2.ClientPreface) {
						if _, err := c.Write([]byte{b}); err != nil {
							return
						}
						time.Sleep(50 * time.Millisecond)
					}
				}()
				closed(t, c, soon)
			},
			"idle": func(t *testing.T) { // one that answers no ping is given 5 s more
				w := h.connect(t)
				require.NoError(t, w.SetReadDeadline(time.Now().Add(soon)))
				for {
					f, err := w.ReadFrame()
					if err != nil {
						require.False(t, timedOut(err))
						return
					}
					if ping, ok := f.(*http2.PingFrame); ok && !ping.IsAck() {
						require.NoError(t, w.WritePing(true, ping.Data))
					}
				}
			},
			"dead": func(t *testing.T) { // in a call, and answers no ping
				w := h.connect(t)
				require.NoError(t, w.open(1, unary))
				closed(t, w, soon)
			},
			"ping flood": func(t *testing.T) {
				w := h.connect(t)
				go func() {
					for range 20000 {
						if w.WritePing(false, [8]byte{}) != nil {
							return
						}
					}
				}()
				closed(t, w, soon)
			},
			"HTTP/1": func(t *testing.T) {
				c := h.tcp(t)
				_, err := c.Write([]byte("GET / HTTP/1.1\r\nHost: a\r\n\r\n"))
				require.NoError(t, err)
				closed(t, c, soon)
			},
			"junk": func(t *testing.T) {
				c := h.tcp(t)
				_, err := c.Write(bytes.Repeat([]byte{0xff, 0x00, 0x7f}, 1000))
				require.NoError(t, err)
				closed(t, c, soon)
			},
			"junk after the preface": func(t *testing.T) {
				w := h.connect(t)
				_, err := w.Write(bytes.Repeat([]byte{0xfe}, 1000))
				require.NoError(t, err)
				closed(t, w, soon)
			},
			"big headers": func(t *testing.T) {
				w := h.connect(t)
				_ = w.open(1, unary, "big", strings.Repeat("~", 17<<10))
				require.NoError(t, w.SetReadDeadline(time.Now().Add(soon)))
				for { // the call is reset, or the connection closed
					f, err := w.ReadFrame()
					if _, ok := f.(*http2.RSTStreamFrame); ok || err != nil {
						require.False(t, timedOut(err))
						return
					}
				}
			},
			"headers without end": func(t *testing.T) {
				w := h.connect(t)
				go func() {
					_ = w.open(1, unary, "big", strings.Repeat("~", 10<<20))
				}()
				closed(t, w, soon)
			},
			"too many streams": func(t *testing.T) {
				w := h.connect(t)
				for i := range uint32(o.Streams + 1) {
					require.NoError(t, w.open(2*i+1, unary))
				}
				reset(t, w, uint32(2*o.Streams+1), http2.ErrCodeRefusedStream)
			},
		} {
			t.Run(name, func(t *testing.T) {
				t.Parallel()
				attack(t)
			})
		}
	})
	n := stop()
	t.Logf("0 of %d calls of another client failed; %d bytes of log", n, len(h.log.String()))
	assertCalm(t, h)
}

// assertCalm demands that what clients do fills no log.
func assertCalm(t *testing.T, h *house) {
	t.Helper()
	require.Less(t, strings.Count(h.log.String(), "\n"), 20, h.log.String())
	require.NotContains(t, h.log.String(), "level=ERROR")
}

// reset reads on until a call is reset.
func reset(t *testing.T, w *wire, id uint32, code http2.ErrCode) {
	t.Helper()
	require.NoError(t, w.SetReadDeadline(time.Now().Add(5*time.Second)))
	for {
		f, err := w.ReadFrame()
		require.NoError(t, err)
		if f, ok := f.(*http2.RSTStreamFrame); ok && f.StreamID == id {
			require.Equal(t, code, f.ErrCode)
			return
		}
	}
}

func TestConnectionsAreLimited(t *testing.T) {
	o := production()
	o.Connections, o.AddressShare = 3, 1
	h := start(t, o)
	c := h.dial(t)
	_, err := c.CheckBearing(t.Context(), bearing()) // connects
	require.NoError(t, err)
	stop := keepCalling(t, c)
	held := []net.Conn{h.connect(t), h.connect(t)}
	require.Eventually(t, func() bool { // the client's own counts too
		c := h.tcp(t)
		defer func() { _ = c.Close() }()
		_ = c.SetReadDeadline(time.Now().Add(50 * time.Millisecond))
		_, err := c.Read(make([]byte, 1))
		return err != nil && !timedOut(err)
	}, 5*time.Second, time.Millisecond, "one too many is closed")
	require.NoError(t, held[0].Close())
	require.Eventually(t, func() bool { // the freed place is taken
		c := h.tcp(t)
		defer func() { _ = c.Close() }()
		if _, err := c.Write([]byte(http2.ClientPreface)); err != nil {
			return false // still one too many
		}
		_ = c.SetReadDeadline(time.Now().Add(50 * time.Millisecond))
		_, err := c.Read(make([]byte, 1)) // of the server's settings
		return err == nil
	}, enough, time.Millisecond)
	stop()
}

// TestOldConnectionsAreMadeAnew: a client learns of new replicas when it connects.
func TestOldConnectionsAreMadeAnew(t *testing.T) {
	o := production()
	o.ConnectionAge = 200 * time.Millisecond
	h := start(t, o)
	stop := keepCalling(t, h.dial(t)) // none may fail meanwhile
	w := h.connect(t)
	require.NoError(t, w.SetReadDeadline(time.Now().Add(5*time.Second)))
	for {
		f, err := w.ReadFrame()
		require.NoError(t, err)
		if _, asked := f.(*http2.GoAwayFrame); asked {
			break
		}
	}
	stop()
}
