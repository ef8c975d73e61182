package web

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"sync"
	"time"

	"golang.org/x/net/http2"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/grpc/tap"

	"footward.example/footward/service/guard"
)

// stream answers each line of a body by a line, as they come.
func (f *front) stream(c *call) {
	control := http.NewResponseController(c.w)
	// HTTP/1 would else read the rest of the body before it answers; HTTP/2 never does.
	_ = control.EnableFullDuplex()
	if c.r.ProtoMajor == 1 {
		c.w.Header().Set("Connection", "close") // a read that is ended spoils it for the next request
	}
	_ = control.SetReadDeadline(time.Time{})
	ctx, leave := context.WithCancel(guard.WithLines(c.r.Context()))
	defer leave()
	ctx, err := f.begin(ctx, &tap.Info{FullMethodName: c.r.URL.Path})
	if err != nil {
		refuse(c.w, &refusal{http.StatusServiceUnavailable, codes.Unavailable, err.Error()})
		return
	}
	arriving, giveUp := context.WithCancel(ctx)
	defer giveUp()
	in := &lines{
		text: bufio.NewReader(c.r.Body), most: f.messageBytes, leave: leave,
		arrive:   func() (func(), error) { return f.door.Arrive(arriving, -1) },
		answered: make(chan struct{}, 1), closed: make(chan struct{}),
		stop: sync.OnceFunc(func() {
			_ = control.SetReadDeadline(time.Unix(1, 0))
			giveUp()
		}),
	}
	defer in.give() // gRPC reads no more when the call has ended
	a := &answer{w: c.w, header: http.Header{}}
	a.frames = frames{
		begin: func(int) {
			// A caller who takes no answer for so long is given up.
			_ = control.SetWriteDeadline(time.Now().Add(f.answerTime))
			if !a.begun {
				a.beginLines()
			}
		},
		data: a.data,
		end: func() {
			a.data([]byte("\n"))
			_ = control.Flush()
			in.answer()
		},
	}
	f.calls.ServeHTTP(a, c.ask(ctx, in))
	s := said(ctx, a.header)
	code := httpStatus(s.Code())
	if in.fault != nil {
		s, code = in.fault.status(), in.fault.http
	}
	_ = control.SetWriteDeadline(time.Now().Add(f.answerTime))
	switch {
	case s.Code() == codes.OK && !a.begun: // no line
		a.beginLines()
	case s.Code() == codes.OK:
	case !a.begun:
		passOn(a.header, c.w.Header())
		writeStatus(c.w, code, s)
	default:
		a.data(fmt.Appendf(nil, "{\"error\":%s}\n", statusText(s)))
	}
}

// beginLines begins an answer of lines.
func (a *answer) beginLines() {
	a.begun = true
	passOn(a.header, a.w.Header())
	a.w.Header().Set("Content-Type", asLines)
	a.w.WriteHeader(http.StatusOK)
}

// lines gives the lines of a body as messages of gRPC. A line is given when the one
// before it has been answered: a caller who does not read is not read from. The
// next is read meanwhile, so that one who leaves is noticed.
type lines struct {
	text     *bufio.Reader
	most     int // bytes of a line
	leave    context.CancelFunc
	stop     func() // ends a read that waits, be it for room
	answered chan struct{}
	closed   chan struct{}
	arrive   func() (done func(), err error)
	given    bool     // there was a line
	rest     []byte   // of the message that is being given
	fault    *refusal // why the lines ended early
	// Long lines take room: the next as it is read, and the last until it is answered.
	next, last room
}

// room is what a line has taken of it.
type room struct {
	mu   sync.Mutex
	done func() // nil: nothing
}

// set keeps what was taken, and gives back what was kept before.
func (r *room) set(done func()) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.done != nil {
		r.done()
	}
	r.done = done
}

// move hands what was taken over.
func (r *room) move(to *room) {
	r.mu.Lock()
	done := r.done
	r.done = nil
	r.mu.Unlock()
	to.set(done)
}

// answer tells that the last line is answered.
func (l *lines) answer() {
	l.last.set(nil)
	l.answered <- struct{}{}
}

// Read implements io.Reader.
func (l *lines) Read(b []byte) (int, error) {
	if len(l.rest) == 0 {
		line, err := l.line()
		if err != nil {
			return 0, err
		}
		if l.given {
			select {
			case <-l.answered:
			case <-l.closed:
				return 0, io.ErrClosedPipe
			}
		}
		l.next.move(&l.last)
		l.given, l.rest = true, append(head(len(line)), line...)
	}
	n := copy(b, l.rest)
	l.rest = l.rest[n:]
	return n, nil
}

// Close implements io.Closer: the call has ended.
func (l *lines) Close() error {
	close(l.closed)
	l.stop()
	return nil
}

// give gives all room back, once nobody reads any more.
func (l *lines) give() {
	l.next.set(nil)
	l.last.set(nil)
}

// over reports whether the call has ended, which is why a read failed.
func (l *lines) over() bool {
	select {
	case <-l.closed:
		return true
	default:
		return false
	}
}

// line reads the next line that is not blank.
func (l *lines) line() ([]byte, error) {
	var line []byte
	long := false
	for {
		part, err := l.text.ReadSlice('\n')
		line = append(line, part...)
		if len(line) > guard.Window && !long {
			long = true
			done, full := l.arrive()
			if full != nil {
				s := status.Convert(full)
				l.fault = &refusal{httpStatus(s.Code()), s.Code(), s.Message()}
				return nil, http2.StreamError{Code: http2.ErrCodeEnhanceYourCalm}
			}
			l.next.set(done)
		}
		switch {
		case len(line) > l.most+1:
			l.fault = &refusal{http.StatusRequestEntityTooLarge, codes.ResourceExhausted,
				fmt.Sprintf("a line is larger than %d bytes; divide its checks among several lines", l.most)}
			return nil, http2.StreamError{Code: http2.ErrCodeEnhanceYourCalm} // how gRPC tells the reason
		case errors.Is(err, bufio.ErrBufferFull):
			continue
		case err != nil && !errors.Is(err, io.EOF) && l.over():
			return nil, io.ErrClosedPipe
		case err != nil && !errors.Is(err, io.EOF):
			l.fault = &refusal{http.StatusBadRequest, codes.Canceled, "the body broke off"}
			l.leave()
			return nil, http2.StreamError{Code: http2.ErrCodeCancel}
		}
		if text := bytes.TrimSpace(line); len(text) > 0 {
			return text, nil
		}
		if err != nil {
			return nil, io.EOF
		}
		line = line[:0]
	}
}
