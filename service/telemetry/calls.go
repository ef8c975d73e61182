package telemetry

import (
	"context"
	"log/slog"
	"strings"
	"sync/atomic"
	"time"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/status"
)

// Calls watches every call of one or more servers: it gives it an identity,
// counts it and writes its line of the log.
//
// Unary calls are watched where a method is registered rather than in an
// interceptor, for gRPC reads the request before it comes to interceptors: a
// message that is too large, or that is none, would neither be counted nor logged.
type Calls struct {
	log     *slog.Logger
	metrics *Metrics
	trace   func(context.Context) Trace
	streams map[string]*method // by full name; written before the servers serve
	unknown *method            // all that no server has
}

// NewCalls returns a watch. Nil metrics count nothing. trace, if not nil, says
// which trace a call is in; else it is what the caller says.
func NewCalls(log *slog.Logger, metrics *Metrics, trace func(context.Context) Trace) *Calls {
	if trace == nil {
		trace = callersTrace
	}
	c := &Calls{log: log, metrics: metrics, trace: trace, streams: map[string]*method{}}
	c.unknown = c.series(unknown, unknown, unknown)
	return c
}

// healthPrefix begins the methods that tell whether the service is well.
const healthPrefix = "/grpc.health.v1.Health/"

// Kinds of calls, as labels.
const (
	unary        = "unary"
	clientStream = "client_stream"
	serverStream = "server_stream"
	bidiStream   = "bidi_stream"
	// unknown is the kind, service and name of every method that a server lacks:
	// names that callers make up are no labels.
	unknown = "unknown"
)

// Services is a server that services are registered with; a *grpc.Server is one.
type Services interface {
	grpc.ServiceRegistrar
	GetServiceInfo() map[string]grpc.ServiceInfo
}

// Server is a gRPC server whose services are watched when they are registered
// through it. Its streams are watched by the interceptor Stream, which it needs too.
type Server struct {
	Services
	calls *Calls
}

// Watch returns a server to register services with.
func (c *Calls) Watch(s Services) Server { return Server{s, c} }

// RegisterService implements grpc.ServiceRegistrar.
func (s Server) RegisterService(service *grpc.ServiceDesc, implementation any) {
	watched := *service
	watched.Methods = make([]grpc.MethodDesc, len(service.Methods))
	for i, m := range service.Methods {
		watched.Methods[i] = grpc.MethodDesc{
			MethodName: m.MethodName,
			Handler:    s.calls.unary("/"+service.ServiceName+"/"+m.MethodName, s.calls.series(unary, service.ServiceName, m.MethodName), m.Handler),
		}
	}
	for _, m := range service.Streams {
		kind := bidiStream
		switch {
		case !m.ClientStreams:
			kind = serverStream
		case !m.ServerStreams:
			kind = clientStream
		}
		s.calls.streams["/"+service.ServiceName+"/"+m.StreamName] = s.calls.series(kind, service.ServiceName, m.StreamName)
	}
	s.Services.RegisterService(&watched, implementation)
}

func (c *Calls) series(kind, service, name string) *method {
	if c.metrics == nil {
		return nil
	}
	return c.metrics.rpcs.method(kind, service, name)
}

func (c *Calls) unary(name string, series *method, handle grpc.MethodHandler) grpc.MethodHandler {
	return func(server any, ctx context.Context, decode func(any) error, interceptor grpc.UnaryServerInterceptor) (any, error) {
		began := time.Now()
		series.begin()
		ctx, who := c.identify(ctx)
		var unread error
		answer, err := handle(server, ctx, func(m any) error {
			unread = decode(m)
			return unread
		}, interceptor)
		c.tell(ctx, who, err)
		c.end(ctx, name, series, who, began, err, unread != nil)
		return answer, err
	}
}

// tell puts the id into the answer of a call that failed, that brought an id of
// its own or whose line is in the log whatever comes of it. The rest have no line
// to be found by it, and a field that is new in every answer costs a fifth of the
// call. Where gRPC refused the message unread, its answer has gone already.
func (c *Calls) tell(ctx context.Context, who *identity, err error) {
	if err == nil && !who.given && !c.log.Enabled(ctx, levelOf(codes.OK)) {
		return
	}
	// Without a stream to set them on there is nobody to tell.
	ids := metadata.MD{RequestIDKey: {who.request}}
	_ = grpc.SetTrailer(ctx, ids)
	if err == nil {
		// A header before an error would keep clients from asking again.
		_ = grpc.SetHeader(ctx, ids)
	}
}

// Unknown answers calls of methods that a server lacks, so that Stream sees them:
// it is how a caller built for another version shows.
func Unknown() grpc.ServerOption {
	return grpc.UnknownServiceHandler(func(any, grpc.ServerStream) error {
		return status.Error(codes.Unimplemented, "the service has no such method")
	})
}

// Stream watches streams.
func (c *Calls) Stream() grpc.StreamServerInterceptor {
	return func(server any, stream grpc.ServerStream, info *grpc.StreamServerInfo, handle grpc.StreamHandler) error {
		began := time.Now()
		name := info.FullMethod
		series, known := c.streams[name]
		if !known {
			series, name = c.unknown, unknown
		}
		series.begin()
		ctx, who := c.identify(stream.Context())
		ids := metadata.MD{RequestIDKey: {who.request}}
		stream.SetTrailer(ids)
		watched := &watchedStream{ServerStream: stream, ctx: ctx, series: series, ids: ids}
		err := handle(server, watched)
		c.end(ctx, name, series, who, began, err, watched.unread.Load())
		return err
	}
}

func (c *Calls) identify(ctx context.Context) (context.Context, *identity) {
	who := &identity{trace: c.trace(ctx)}
	who.request, who.given = requestID(ctx)
	return context.WithValue(ctx, identityKey{}, who), who
}

func (c *Calls) end(ctx context.Context, name string, series *method, who *identity, began time.Time, err error, unread bool) {
	took := time.Since(began)
	code := codeOf(err)
	if code == codes.Canceled && timedOut(ctx, began) {
		code = codes.DeadlineExceeded
	}
	if unread && code == codes.Internal {
		// gRPC answers INTERNAL to bytes that are no message, and JSON over HTTP 400: it
		// is the caller's fault, and counts as that.
		code = codes.InvalidArgument
	}
	level := levelOf(code)
	switch {
	case strings.HasPrefix(name, healthPrefix) && level < slog.LevelError:
		// Nobody needs a token for it, and every watch ends one day: no news.
		level = slog.LevelDebug
	case unread && (code == codes.Canceled || turnedAway(err)):
		// The caller left before it had asked, or was asked to come again: no news, and
		// not to be had by the hundred.
		level = slog.LevelDebug
	case unread:
		level = slog.LevelInfo
	}
	write(ctx, c.log, level, name, code, took)
	series.end(code, took, who.trace)
}

// turnedAway reports whether a status asks its caller to come again.
func turnedAway(err error) bool {
	for _, d := range status.Convert(err).Details() {
		if _, again := d.(*errdetails.RetryInfo); again {
			return true
		}
	}
	return false
}

// A caller's clock for a deadline runs ahead of the service's by what the call took on
// its way: so much of the time that a call had, at least a few ms.
const (
	aheadShare = 100
	aheadLeast = 5 * time.Millisecond
)

// timedOut reports whether a call that was cancelled ended at its deadline: then the
// caller's word of that mostly arrives before the service's own timer fires.
func timedOut(ctx context.Context, began time.Time) bool {
	deadline, has := ctx.Deadline()
	return has && time.Until(deadline) <= max(aheadLeast, deadline.Sub(began)/aheadShare)
}

// codeOf is the code that gRPC sends for an error of a handler.
func codeOf(err error) codes.Code {
	if s, ok := status.FromError(err); ok {
		return s.Code()
	}
	return status.FromContextError(err).Code()
}

// watchedStream counts messages, and sends the ids with the first.
type watchedStream struct {
	grpc.ServerStream
	ctx    context.Context
	series *method
	ids    metadata.MD // nil once they are set
	unread atomic.Bool // bytes came that are no message
}

// Context implements grpc.ServerStream.
func (s *watchedStream) Context() context.Context { return s.ctx }

// SendMsg implements grpc.ServerStream.
func (s *watchedStream) SendMsg(m any) error {
	if s.ids != nil {
		_ = s.SetHeader(s.ids)
		s.ids = nil
	}
	err := s.ServerStream.SendMsg(m)
	if err == nil {
		s.series.sentOne()
	}
	return err
}

// RecvMsg implements grpc.ServerStream.
func (s *watchedStream) RecvMsg(m any) error {
	err := s.ServerStream.RecvMsg(m)
	switch {
	case err == nil:
		s.series.receivedOne()
	case codeOf(err) == codes.Internal:
		s.unread.Store(true)
	}
	return err
}
