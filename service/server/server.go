package server

import (
	"context"
	"log/slog"
	"net"
	"runtime"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/health"
	"google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/keepalive"
	"google.golang.org/grpc/reflection"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
	"footward.example/footward/service/guard"
	"footward.example/footward/service/telemetry"
)

// Options are what a server needs to know. The zero value serves without log,
// metrics or reflection.
type Options struct {
	Log     *slog.Logger       // nil: none
	Metrics *telemetry.Metrics // nil: none
	// MessageBytes is the largest message taken or sent; 0: DefaultMessageBytes.
	MessageBytes int
	Reflection   bool
}

// DefaultMessageBytes is the largest message by default.
const DefaultMessageBytes = 16 << 20

// room is what a message needs around the outcomes of a batch.
const room = 64 << 10

// workers is how many calls are answered on goroutines that live on, for each
// processor; calls beyond that get one of their own.
const workers = 64

// leastPing is how often a client may ask whether the connection lives.
const leastPing = time.Minute

// Server is the whole service on a gRPC server.
type Server struct {
	grpc   *grpc.Server
	health *health.Server
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
	unary := []grpc.UnaryServerInterceptor{telemetry.LogUnary(o.Log), guard.RecoverUnary(o.Log)}
	stream := []grpc.StreamServerInterceptor{telemetry.LogStream(o.Log), guard.RecoverStream(o.Log)}
	if o.Metrics != nil {
		unary = append([]grpc.UnaryServerInterceptor{o.Metrics.Unary()}, unary...)
		stream = append([]grpc.StreamServerInterceptor{o.Metrics.Stream()}, stream...)
	}
	s := &Server{
		grpc: grpc.NewServer(
			grpc.ChainUnaryInterceptor(unary...), grpc.ChainStreamInterceptor(stream...),
			grpc.MaxRecvMsgSize(o.MessageBytes), grpc.MaxSendMsgSize(o.MessageBytes),
			// Goroutines that live on keep the stack that a check has grown.
			grpc.NumStreamWorkers(uint32(workers*runtime.GOMAXPROCS(0))),
			grpc.KeepaliveEnforcementPolicy(keepalive.EnforcementPolicy{MinTime: leastPing}),
		),
		health: health.NewServer(),
	}
	check := api.NewCheck(validator, o.Metrics, max(room, o.MessageBytes-room))
	footwardv1.RegisterCheckServiceServer(s.grpc, check)
	footwardv1.RegisterColumnBaseServiceServer(s.grpc, check)
	footwardv1.RegisterCompareServiceServer(s.grpc, check)
	footwardv1.RegisterLoadServiceServer(s.grpc, api.NewLoad(validator))
	footwardv1.RegisterCatalogServiceServer(s.grpc, api.NewCatalog())
	grpc_health_v1.RegisterHealthServer(s.grpc, s.health)
	for name := range s.grpc.GetServiceInfo() {
		s.health.SetServingStatus(name, grpc_health_v1.HealthCheckResponse_SERVING)
	}
	if o.Reflection {
		reflection.Register(s.grpc)
	}
	if o.Metrics != nil {
		o.Metrics.Server(s.grpc)
	}
	return s, nil
}

// Serve answers calls until Stop or Drain has ended.
func (s *Server) Serve(l net.Listener) error { return s.grpc.Serve(l) }

// Drain ends the service gracefully: health says NOT_SERVING at once, after
// delay no new call is taken, and the calls under way are answered. When ctx
// ends first they are cut off, and Drain returns its error.
func (s *Server) Drain(ctx context.Context, delay time.Duration) error {
	s.health.Shutdown()
	select {
	case <-time.After(delay):
	case <-ctx.Done():
	}
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
func (s *Server) Stop() { s.grpc.Stop() }
