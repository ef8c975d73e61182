package web

import (
	"bytes"
	"encoding/binary"
	"io"
	"net/http"
	"strconv"
	"time"

	"google.golang.org/grpc/codes"
)

// unary answers a call of one message by one message.
func (f *front) unary(c *call) {
	done, err := f.door.Arrive(c.r.Context(), c.r.ContentLength)
	if err != nil {
		turnAway(c.w, err)
		return
	}
	defer done()
	body, refused := f.body(c)
	if refused != nil {
		refuse(c.w, refused)
		return
	}
	control := http.NewResponseController(c.w)
	// The whole request is there. From here on the call's own deadline bounds it.
	_ = control.SetReadDeadline(time.Time{})
	_ = control.SetWriteDeadline(time.Now().Add(f.longest(c) + f.answerTime))
	messages := io.NopCloser(io.MultiReader(bytes.NewReader(head(len(body))), bytes.NewReader(body)))
	a := &answer{w: c.w, header: http.Header{}}
	a.frames = frames{begin: a.begin, data: a.data, end: func() { a.data([]byte("\n")) }}
	r := c.ask(c.r.Context(), messages)
	f.calls.ServeHTTP(a, r)
	if a.begun {
		return
	}
	s := said(r.Context(), a.header)
	if s.Code() == codes.OK {
		s = noAnswer
	}
	passOn(a.header, c.w.Header())
	writeStatus(c.w, httpStatus(s.Code()), s)
}

// longest is how long a call may take.
func (f *front) longest(c *call) time.Duration {
	most := f.deadlines.Longest
	if most <= 0 {
		most = maxTimeout * time.Second
	}
	if c.within > 0 {
		most = min(most, c.within)
	}
	return most
}

// answer takes what gRPC answers, and writes it as HTTP.
type answer struct {
	w      http.ResponseWriter
	header http.Header
	begun  bool
	frames frames
}

// Header implements http.ResponseWriter.
func (a *answer) Header() http.Header { return a.header }

// WriteHeader implements http.ResponseWriter. What gRPC says here is always 200.
func (a *answer) WriteHeader(int) {}

// Flush implements http.Flusher, which gRPC asks for.
func (a *answer) Flush() {}

// Write implements http.ResponseWriter.
func (a *answer) Write(b []byte) (int, error) {
	a.frames.write(b)
	return len(b), nil
}

func (a *answer) begin(size int) {
	a.begun = true
	passOn(a.header, a.w.Header())
	a.w.Header().Set("Content-Type", asJSON)
	a.w.Header().Set("Content-Length", strconv.Itoa(size+1))
	a.w.WriteHeader(http.StatusOK)
}

func (a *answer) data(b []byte) { _, _ = a.w.Write(b) }

// headBytes is what stands before each message of gRPC: whether it is compressed,
// and its length.
const headBytes = 5

func head(size int) []byte {
	b := make([]byte, headBytes)
	binary.BigEndian.PutUint32(b[1:], uint32(size))
	return b
}

// frames takes messages of gRPC out of what is written.
type frames struct {
	begin func(size int)
	data  func([]byte)
	end   func()
	head  []byte // what is there of it
	left  int    // of the message
}

func (f *frames) write(b []byte) {
	for len(b) > 0 {
		if len(f.head) < headBytes {
			n := min(headBytes-len(f.head), len(b))
			f.head, b = append(f.head, b[:n]...), b[n:]
			if len(f.head) == headBytes {
				f.left = int(binary.BigEndian.Uint32(f.head[1:]))
				f.begin(f.left)
			}
		}
		n := min(f.left, len(b))
		if n > 0 {
			f.data(b[:n])
		}
		f.left, b = f.left-n, b[n:]
		if len(f.head) == headBytes && f.left == 0 {
			f.head = f.head[:0]
			f.end()
		}
	}
}
