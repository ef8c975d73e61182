package main

import (
	"context"
	"net"
	"time"

	"footward.example/footward/service/server"
	"footward.example/footward/service/web"
)

// front answers calls over HTTP; nil answers none.
type front struct {
	server   *web.Server
	listener net.Listener
}

// newFront listens where the settings say; nowhere: it returns nil. It encrypts,
// and bounds connections, as the service itself does.
func newFront(s *settings, service *server.Server, o server.Options) (*front, error) {
	if s.http == "" {
		return nil, nil
	}
	w, err := web.New(service.Web(), web.Options{Log: o.Log, MessageBytes: o.MessageBytes, TLS: o.TLS, Door: service.Door()})
	if err != nil {
		return nil, err
	}
	l, err := net.Listen("tcp", s.http)
	if err != nil {
		return nil, err
	}
	return &front{w, o.Limit(l)}, nil
}

// address is where it listens, as text; empty: nowhere.
func (f *front) address() string {
	if f == nil {
		return ""
	}
	return f.listener.Addr().String()
}

func (f *front) serve(ended chan<- error) {
	if f != nil {
		go func() { ended <- f.server.Serve(f.listener) }()
	}
}

func (f *front) drain(ctx context.Context, delay time.Duration) error {
	if f == nil {
		return nil
	}
	return f.server.Drain(ctx, delay)
}

func (f *front) stop() {
	if f != nil {
		f.server.Stop()
		_ = f.listener.Close() // had it never served
	}
}
