package server

import (
	"math"
	"runtime"

	"google.golang.org/grpc"
	"google.golang.org/grpc/credentials"
	"google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/keepalive"
	"google.golang.org/grpc/reflection/grpc_reflection_v1"
	"google.golang.org/grpc/reflection/grpc_reflection_v1alpha"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
	"footward.example/footward/service/telemetry"
)

// interceptors are what a call passes behind the door and before its handler, inside
// the watch over all calls: limits (gate may be nil), and recovery innermost.
func (o *Options) interceptors(calls *telemetry.Calls, gate *guard.Gate) []grpc.ServerOption {
	unary := []grpc.UnaryServerInterceptor{o.Deadlines.Unary(o.Metrics)}
	stream := []grpc.StreamServerInterceptor{o.Deadlines.Stream(o.Metrics)}
	if gate != nil {
		unary, stream = append(unary, gate.Unary(o.Metrics)), append(stream, gate.Stream(o.Metrics))
	}
	unary = append(unary, guard.RecoverUnary(o.Log, o.Metrics))
	stream = append(stream, guard.RecoverStream(o.Log, o.Metrics))
	return []grpc.ServerOption{
		grpc.ChainUnaryInterceptor(unary...), grpc.ChainStreamInterceptor(stream...),
		telemetry.Unknown(), grpc.InTapHandle(o.Deadlines.Tap(streams)),
	}
}

// behind puts the streams of a server behind a door. What comes first in the chain is
// outermost, and a server takes the one interceptor that is not of a chain before it.
func behind(door *guard.Door, calls *telemetry.Calls) grpc.ServerOption {
	messages, watch, enter := door.Messages(), calls.Stream(), door.Stream()
	return grpc.StreamInterceptor(func(server any, stream grpc.ServerStream, info *grpc.StreamServerInfo, handler grpc.StreamHandler) error {
		return messages(server, stream, info, func(server any, stream grpc.ServerStream) error {
			return watch(server, stream, info, func(server any, stream grpc.ServerStream) error {
				return enter(server, stream, info, handler)
			})
		})
	})
}

// streams are the methods that are streams.
var streams = map[string]bool{
	footwardv1.CheckService_StreamChecks_FullMethodName:                          true,
	grpc_health_v1.Health_Watch_FullMethodName:                                   true,
	grpc_reflection_v1.ServerReflection_ServerReflectionInfo_FullMethodName:      true,
	grpc_reflection_v1alpha.ServerReflection_ServerReflectionInfo_FullMethodName: true,
}

// transport bounds messages and connections.
func (o *Options) transport() []grpc.ServerOption {
	out := []grpc.ServerOption{
		grpc.MaxRecvMsgSize(o.MessageBytes), grpc.MaxSendMsgSize(o.MessageBytes),
		grpc.MaxHeaderListSize(HeaderBytes), grpc.ConnectionTimeout(o.patience.handshake),
		// What nobody reads stays small, however fast it came. A message that is larger
		// is let come once it is asked for, and those of others beside it.
		grpc.StaticStreamWindowSize(guard.Window), grpc.StaticConnWindowSize(connectionWindow),
		// Goroutines that live on keep the stack that a check has grown.
		grpc.NumStreamWorkers(uint32(workers * runtime.GOMAXPROCS(0))),
		grpc.KeepaliveEnforcementPolicy(keepalive.EnforcementPolicy{MinTime: leastPing}),
		grpc.KeepaliveParams(keepalive.ServerParameters{
			MaxConnectionIdle: o.patience.idle, MaxConnectionAge: o.ConnectionAge, MaxConnectionAgeGrace: max(o.Deadlines.Longest, o.Deadlines.Streams),
			Time: o.patience.silence, Timeout: o.patience.answer,
		}),
	}
	if o.Streams > 0 {
		out = append(out, grpc.MaxConcurrentStreams(uint32(min(o.Streams, math.MaxInt32))))
	}
	if o.Stats != nil {
		out = append(out, grpc.StatsHandler(o.Stats))
	}
	if o.TLS != nil {
		out = append(out, grpc.Creds(credentials.NewTLS(o.TLS)))
	}
	return out
}
