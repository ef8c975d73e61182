package client

import (
	"context"
	"errors"
	"io"
	"sync"

	"google.golang.org/grpc"
	"google.golang.org/grpc/metadata"
	"google.golang.org/protobuf/proto"
)

// keptBytes is how much is kept of what was sent on a stream before its first
// answer. What a service reads before it answers or turns away is far less.
const keptBytes = 1 << 20

// stream opens a stream a second time when it was turned away before its first
// answer came, and sends anew what was sent.
func (l *later) stream(ctx context.Context, what *grpc.StreamDesc, conn *grpc.ClientConn, method string, streamer grpc.Streamer, options ...grpc.CallOption) (grpc.ClientStream, error) {
	open := func() (grpc.ClientStream, error) { return streamer(ctx, what, conn, method, options...) }
	first, err := open()
	if err != nil {
		return nil, err
	}
	return &reopened{later: l, ctx: ctx, open: open, stream: first, keeps: true}, nil
}

// reopened is a stream that may be opened a second time. As with any stream, one
// goroutine may send while another receives.
type reopened struct {
	later *later
	ctx   context.Context // that of the call
	open  func() (grpc.ClientStream, error)
	begun bool // something has been received; only for who receives

	mu     sync.Mutex
	stream grpc.ClientStream
	keeps  bool // until the first answer, or until more was sent than is kept
	kept   []any
	bytes  int
	closed bool          // for sending
	pause  chan struct{} // not nil: closed when sending may go on
}

// Header is that of the first stream when it is asked for before the first answer.
func (s *reopened) Header() (metadata.MD, error) { return s.now().Header() }

func (s *reopened) Trailer() metadata.MD { return s.now().Trailer() }

func (s *reopened) Context() context.Context { return s.now().Context() }

func (s *reopened) now() grpc.ClientStream {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.stream
}

func (s *reopened) SendMsg(m any) error {
	s.mu.Lock()
	if pause := s.pause; pause != nil { // there is one at most
		s.mu.Unlock()
		<-pause
		s.mu.Lock()
	}
	kept := s.keep(m)
	stream := s.stream
	s.mu.Unlock()
	err := stream.SendMsg(m)
	if kept && errors.Is(err, io.EOF) {
		return nil // it is sent anew, or the receiver is told why the stream ended
	}
	return err
}

// keep keeps a message, which may not be changed once it is sent, and returns
// whether it did.
func (s *reopened) keep(m any) bool {
	message, ok := m.(proto.Message)
	if s.keeps && ok {
		s.bytes += proto.Size(message)
	}
	if !s.keeps || !ok || s.bytes > keptBytes {
		s.keeps, s.kept = false, nil
		return false
	}
	s.kept = append(s.kept, m)
	return true
}

func (s *reopened) CloseSend() error {
	s.mu.Lock()
	s.closed = true
	stream, pause := s.stream, s.pause
	s.mu.Unlock()
	if pause != nil {
		return nil // comes after what is sent anew
	}
	return stream.CloseSend()
}

func (s *reopened) RecvMsg(m any) error {
	err := s.now().RecvMsg(m)
	if s.begun {
		return err
	}
	s.begun = true
	kept, all := s.hold()
	second := false
	if all {
		second, err = s.later.wait(s.ctx, err)
	} else {
		s.later.count(err)
	}
	if !second {
		s.release()
		return err
	}
	stream, err := s.open()
	if err != nil {
		s.release()
		return err
	}
	s.mu.Lock()
	s.stream = stream
	s.mu.Unlock()
	// Meanwhile answers are taken, or the service would not read on.
	go s.anew(stream, kept)
	err = stream.RecvMsg(m)
	s.later.count(err)
	return err
}

// hold has sending wait for release, and returns what was sent, if that is all.
func (s *reopened) hold() (kept []any, all bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	kept, all = s.kept, s.keeps
	s.kept, s.keeps = nil, false
	s.pause = make(chan struct{})
	return kept, all
}

// release lets sending go on, and returns whether it has been closed.
func (s *reopened) release() (closed bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	close(s.pause)
	s.pause = nil
	return s.closed
}

// anew sends on the second stream what was sent on the first. An error ends it,
// and the receiver is told.
func (s *reopened) anew(stream grpc.ClientStream, kept []any) {
	for _, m := range kept {
		if stream.SendMsg(m) != nil {
			break
		}
	}
	if s.release() {
		_ = stream.CloseSend()
	}
}
