package server

import (
	"context"
	"crypto/tls"
	"log/slog"
	"net"
	"slices"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/health"
	"google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/reflection"
	"google.golang.org/grpc/stats"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
	"footward.example/footward/service/guard"
	"footward.example/footward/service/telemetry"
	"footward.example/footward/service/web"
	"footward.example/footward/service/web/body"
)

// Options are what a server needs to know. The zero value serves without log,
// metrics or reflection.
type Options struct {
	Log     *slog.Logger       // nil: none
	Metrics *telemetry.Metrics // nil: none
	// Trace says which trace a call is in; nil: that which its caller names.
	Trace func(context.Context) telemetry.Trace
	// Stats, if not nil, is told of every call.
	Stats stats.Handler
	// MessageBytes is the largest message taken or sent; 0: DefaultMessageBytes.
	MessageBytes int
	Reflection   bool
	TLS          *tls.Config // nil: plaintext
	Callers      guard.Callers
	Deadlines    guard.Deadlines
	// Calls are worked on at once up to AtOnce, and as many as Waiting wait beyond
	// that; the rest are turned away. 0: any number.
	AtOnce, Waiting int
	// Long is how many long calls compute at once; 0: half as many as processors.
	Long int
	// Streams is the most calls at once on one connection, Connections the most
	// connections. 0: any number.
	Streams, Connections int
	// Open is the most calls and streams at once on all connections, whether their
	// message has come or not; Watches the most watches of health. 0: any number.
	Open, Watches int
	// AddressShare is the share of Connections, Open and Watches that one address may
	// have. 0 or 1: all.
	AddressShare float64
	// ConnectionAge is how long a connection lasts before its client is asked to
	// connect anew; calls under way are answered. 0: as long as it is used.
	ConnectionAge time.Duration

	// Web asks for Server.Web.
	Web bool

	patience *patience // nil: usual; tests have less
}

// DefaultMessageBytes is the largest message by default.
const DefaultMessageBytes = 16 << 20

// room is what a message needs around the outcomes of a batch.
const room = 64 << 10

// connectionWindow is how much a connection may send ahead, over all its calls [bytes].
const connectionWindow = 4 << 20

// workers is how many calls are answered on goroutines that live on, for each
// processor; calls beyond that get one of their own.
const workers = 64

// leastPing is the least time between two questions of a client whether the
// connection lives. Common clients take 5 minutes of silence for granted.
const leastPing = time.Minute

// HeaderBytes is the most that the headers of a call may have [bytes]. Common
// clients send less than 8 KiB.
const HeaderBytes = 16 << 10

// patience is how long a connection is borne with.
type patience struct {
	handshake time.Duration // for encryption and the first settings
	idle      time.Duration // without a call; then it is closed
	silence   time.Duration // until the server asks whether the client lives
	answer    time.Duration // for the client's answer
	stranger  time.Duration // without a call, until a first caller was let in
}

var usual = patience{handshake: 10 * time.Second, stranger: 20 * time.Second, idle: 15 * time.Minute, silence: 2 * time.Minute, answer: 20 * time.Second}

// Server is the whole service on a gRPC server.
type Server struct {
	grpc     *grpc.Server
	web      *grpc.Server // answers calls of HTTP; nil: none
	door     *guard.Door
	health   *health.Server
	limit    func(net.Listener) net.Listener
	stopping context.CancelFunc // ends the watches of health
}

// New returns a server that is ready to serve.
func New(o Options) (*Server, error) {
	validator, err := guard.NewValidator()
	if err != nil {
		return nil, err
	}
	if o.Log == nil {
		o.Log = slog.New(slog.DiscardHandler)
	}
	if o.MessageBytes == 0 {
		o.MessageBytes = DefaultMessageBytes
	}
	if o.patience == nil {
		o.patience = &usual
	}
	var gate *guard.Gate
	if o.AtOnce > 0 {
		gate = guard.NewGate(guard.Room{AtOnce: o.AtOnce, Waiting: o.Waiting, Long: o.Long}, o.Callers)
	}
	o.Log = telemetry.Logger(o.Log)
	calls := telemetry.NewCalls(o.Log, o.Metrics, o.Trace)
	watching, stopping := context.WithCancel(context.Background())
	options := slices.Clip(append(o.interceptors(calls, gate), o.transport()...))
	s := &Server{door: guard.NewDoor(o.doorway()), health: health.NewServer(), limit: o.limitCalls, stopping: stopping}
	health := &watchable{Server: s.health, ctx: watching, most: o.Watches, each: o.share(o.Watches), lasts: o.Deadlines.Streams, tally: o.Metrics}
	if err := o.show(gate, s.door, health); err != nil {
		stopping()
		return nil, err
	}
	s.grpc = grpc.NewServer(append(options, behind(s.door, calls))...)
	check := api.NewCheck(validator, o.Metrics, max(room, o.MessageBytes-room))
	register := func(doored grpc.ServiceRegistrar) {
		to := doored
		if gate != nil {
			to = gate.Early(doored)
		}
		footwardv1.RegisterCheckServiceServer(to, check)
		footwardv1.RegisterColumnBaseServiceServer(to, check)
		footwardv1.RegisterCompareServiceServer(to, check)
		footwardv1.RegisterLoadServiceServer(to, api.NewLoad(validator))
		footwardv1.RegisterEvidenceServiceServer(to, api.NewEvidence(validator))
		footwardv1.RegisterCatalogServiceServer(to, api.NewCatalog())
	}
	doored := s.door.Register(calls.Watch(s.door.Reads(s.grpc)))
	register(doored)
	if o.Web {
		door := s.door.Inner(body.Read)
		s.web = grpc.NewServer(append(append(options, web.ServerOptions(o.MessageBytes)...), behind(door, calls))...)
		register(door.Register(calls.Watch(door.Reads(s.web))))
	}
	grpc_health_v1.RegisterHealthServer(doored, health)
	for name := range s.grpc.GetServiceInfo() {
		s.health.SetServingStatus(name, grpc_health_v1.HealthCheckResponse_SERVING)
	}
	if o.Reflection {
		reflection.Register(doored)
	}
	return s, nil
}

// Serve answers calls until Stop or Drain has ended.
func (s *Server) Serve(l net.Listener) error {
	return s.grpc.Serve(s.limit(l))
}

// Web answers gRPC calls that come as HTTP requests, with messages in JSON, behind the
// same interceptors as Serve. It is a server of its own: one that drains breaks such calls off, so
// Drain leaves them to the HTTP server in front, which is to be drained
// meanwhile, and to Stop. Options.Web asks for it.
func (s *Server) Web() *grpc.Server { return s.web }

// Door is what an HTTP server asks before it reads a body.
func (s *Server) Door() *guard.Door { return s.door }

// Drain ends the service gracefully: health says NOT_SERVING at once, after
// delay no new call is taken, and the calls under way are answered. When ctx
// ends first they are cut off, and Drain returns its error.
func (s *Server) Drain(ctx context.Context, delay time.Duration) error {
	s.health.Shutdown()
	select {
	case <-time.After(delay):
	case <-ctx.Done():
	}
	s.stopping()
	done := make(chan struct{})
	go func() {
		s.grpc.GracefulStop()
		close(done)
	}()
	select {
	case <-done:
		return nil
	case <-ctx.Done():
		s.grpc.Stop()
		<-done
		return ctx.Err()
	}
}

// Stop ends the service at once.
func (s *Server) Stop() {
	s.stopping()
	s.grpc.Stop()
	if s.web != nil {
		s.web.Stop()
	}
}
