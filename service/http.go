package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"slices"
	"strings"
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
	w, err := web.New(service.Web(), web.Options{
		Log: o.Log, MessageBytes: o.MessageBytes, TLS: o.TLS, Deadlines: o.Deadlines, Hosts: s.hosts(), Door: service.Door(),
	})
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

// everyHost is the setting that takes every name.
const everyHost = "*"

// hosts are the names by which the service may be called over HTTP; nil: any.
// Where the setting names none, names matter only where a page that its reader's
// browser shows could reach the service and nothing else keeps it out: on this
// machine alone, without a certificate that would have to fit the page's name.
func (s *settings) hosts() []string {
	listed := names(s.httpHosts)
	host, _, _ := net.SplitHostPort(s.http)
	switch {
	case slices.Contains(listed, everyHost):
		return nil
	case len(listed) == 0 && (s.access.cert != "" || !loopback(host)):
		return nil
	}
	return append(listed, host)
}

// checkHosts says what is wrong with the setting.
func (s *settings) checkHosts() (wrong []error) {
	for _, n := range names(s.httpHosts) {
		if strings.ContainsAny(n, "/ ") {
			wrong = append(wrong, fmt.Errorf("http-hosts: %q is no name of a host, such as checks.example.org", n))
		}
	}
	if s.httpHosts != "" && s.http == "" {
		wrong = append(wrong, errors.New("http-hosts: needs --http-address"))
	}
	return wrong
}
