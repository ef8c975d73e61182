package main

import (
	"bytes"
	"compress/gzip"
	"encoding/binary"
	"net"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"golang.org/x/net/http2"
	"golang.org/x/net/http2/hpack"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// stranger is a connection of somebody whose own part costs next to nothing: what he
// sends was made before, and he does not wait until he may send it.
type stranger struct {
	net.Conn
	*http2.Framer
	next uint32
}

// comes opens a connection.
func comes(t *testing.T, at string) *stranger {
	t.Helper()
	c, err := net.Dial("tcp", at)
	require.NoError(t, err)
	t.Cleanup(func() { _ = c.Close() })
	_, err = c.Write([]byte(http2.ClientPreface))
	require.NoError(t, err)
	s := &stranger{Conn: c, Framer: http2.NewFramer(c, c), next: 1}
	require.NoError(t, s.WriteSettings())
	s.ReadMetaHeaders = hpack.NewDecoder(4096, nil)
	return s
}

// frame is a message as gRPC sends it; squeezed: compressed.
func frame(message []byte, squeezed bool) []byte {
	flag := byte(0)
	if squeezed {
		flag = 1
		var b bytes.Buffer
		w := gzip.NewWriter(&b)
		_, _ = w.Write(message)
		_ = w.Close()
		message = b.Bytes()
	}
	return append(binary.BigEndian.AppendUint32([]byte{flag}, uint32(len(message))), message...)
}

// ask calls CheckMany with the beginning of a frame, all of it if it is no longer, and
// returns the grpc-status that it is answered with.
func (s *stranger) ask(beginning []byte, end bool, more ...string) (string, error) {
	id := s.next
	s.next += 2
	var block bytes.Buffer
	to := hpack.NewEncoder(&block)
	fields := append([]string{":method", "POST", ":scheme", "http", ":path", footwardv1.CheckService_CheckMany_FullMethodName,
		":authority", "a", "content-type", "application/grpc", "te", "trailers"}, more...)
	for i := 0; i < len(fields); i += 2 {
		if err := to.WriteField(hpack.HeaderField{Name: fields[i], Value: fields[i+1]}); err != nil {
			return "", err
		}
	}
	if err := s.WriteHeaders(http2.HeadersFrameParam{StreamID: id, BlockFragment: block.Bytes(), EndHeaders: true}); err != nil {
		return "", err
	}
	for len(beginning) > 0 {
		const most = 16 << 10
		n := min(most, len(beginning))
		if err := s.WriteData(id, end && n == len(beginning), beginning[:n]); err != nil {
			return "", err
		}
		beginning = beginning[n:]
	}
	return s.status(id)
}

func (s *stranger) status(id uint32) (string, error) {
	if err := s.SetReadDeadline(time.Now().Add(time.Minute)); err != nil {
		return "", err
	}
	got := ""
	for {
		f, err := s.ReadFrame()
		if err != nil {
			return "", err
		}
		switch f := f.(type) {
		case *http2.PingFrame:
			if !f.IsAck() {
				if err := s.WritePing(true, f.Data); err != nil {
					return "", err
				}
			}
		case *http2.MetaHeadersFrame:
			for _, field := range f.Fields {
				if f.StreamID == id && field.Name == "grpc-status" {
					got = field.Value
				}
			}
			if f.StreamID == id && f.StreamEnded() {
				return got, nil
			}
		}
	}
}
