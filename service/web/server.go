package web

import (
	"context"
	"crypto/tls"
	"errors"
	"log/slog"
	"net"
	"net/http"
	"time"

	"google.golang.org/grpc"

	"footward.example/footward/service/guard"
	"footward.example/footward/service/web/body"
)

// Calls answers gRPC calls that came as HTTP requests; a *grpc.Server with
// ServerOptions does.
type Calls interface {
	http.Handler
	GetServiceInfo() map[string]grpc.ServiceInfo
}

// jsonGrowth is how many times larger than a message its JSON may be, names,
// zeros and all.
const jsonGrowth = 32

// ServerOptions are those that a gRPC server needs for its calls to be answered
// here; messageBytes is the largest message that it sends.
func ServerOptions(messageBytes int) []grpc.ServerOption {
	return []grpc.ServerOption{
		body.ServerOption(), grpc.MaxSendMsgSize(jsonGrowth * messageBytes), grpc.ChainUnaryInterceptor(guard.RefuseUnread),
	}
}

// Options are what a server needs to know.
type Options struct {
	Log *slog.Logger // nil: none
	// MessageBytes is the largest body, or line of a stream, that is taken. It must
	// not be less than 1.
	MessageBytes int
	TLS          *tls.Config // nil: plain text
	// Deadlines are those of the calls. None: an hour.
	Deadlines guard.Deadlines
	// RequestTime is within which a whole request must arrive; 0: 30 s.
	RequestTime time.Duration
	// AnswerTime is within which an answer must be taken once it is there; 0: 2 min.
	AnswerTime time.Duration
	// Hosts are the names that requests may call the service by, beside localhost
	// and the addresses of this machine. nil: any.
	Hosts []string
	// Documents are served by GET, beside those of this package, by path.
	Documents map[string]http.Handler
	Door      Door // nil: everybody may send as much as the bounds let
}

// Bounds on a connection.
const (
	headerTime  = 5 * time.Second
	requestTime = 30 * time.Second
	answerTime  = 2 * time.Minute
	idleTime    = 2 * time.Minute
	headerBytes = 16 << 10
)

// Server answers calls over HTTP.
type Server struct {
	http  *http.Server
	front *front
}

// New returns a server for the calls of Footward's services. The calls must have
// a server of their own, for one that drains breaks off what comes over HTTP.
func New(calls Calls, o Options) (*Server, error) {
	if o.Log == nil {
		o.Log = slog.New(slog.DiscardHandler)
	}
	if o.RequestTime == 0 {
		o.RequestTime = requestTime
	}
	if o.Door == nil {
		o.Door = everybody{}
	}
	if o.AnswerTime == 0 {
		o.AnswerTime = answerTime
	}
	front, err := newFront(calls, o)
	if err != nil {
		return nil, err
	}
	return &Server{front: front, http: &http.Server{
		Handler:           front,
		TLSConfig:         o.TLS,
		ReadHeaderTimeout: headerTime,
		ReadTimeout:       o.RequestTime,
		// Until a call begins, which knows how long it may take.
		WriteTimeout:   o.RequestTime + o.AnswerTime,
		IdleTimeout:    idleTime,
		MaxHeaderBytes: headerBytes,
		// Anybody can cause these lines, such as by a failed handshake.
		ErrorLog: slog.NewLogLogger(o.Log.Handler(), slog.LevelInfo),
	}}, nil
}

// Serve answers calls until Drain or Stop; then it returns nil.
func (s *Server) Serve(l net.Listener) error {
	var err error
	if s.http.TLSConfig != nil {
		err = s.http.ServeTLS(l, "", "")
	} else {
		err = s.http.Serve(l)
	}
	if errors.Is(err, http.ErrServerClosed) {
		return nil
	}
	return err
}

// Drain takes no new call after delay, and waits until those under way are
// answered. When ctx ends first they are cut off, and Drain returns its error.
//
// During the delay every answer asks its caller to connect anew, so that few are
// left to find their connection closed under them.
func (s *Server) Drain(ctx context.Context, delay time.Duration) error {
	s.front.leaving.Store(true)
	select {
	case <-time.After(delay):
	case <-ctx.Done():
	}
	err := s.http.Shutdown(ctx)
	if err != nil {
		s.Stop()
	}
	return err
}

// Stop cuts off every call.
func (s *Server) Stop() { _ = s.http.Close() }
