package server

import (
	"math"
	"runtime"

	"google.golang.org/grpc"
	"google.golang.org/grpc/credentials"
	"google.golang.org/grpc/keepalive"
	"google.golang.org/grpc/reflection/grpc_reflection_v1"
	"google.golang.org/grpc/reflection/grpc_reflection_v1alpha"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
	"footward.example/footward/service/telemetry"
)

// interceptors are what a call passes before its handler, inside the watch over
// all calls: callers, limits (gate may be nil), and recovery innermost.
func (o *Options) interceptors(calls *telemetry.Calls, gate *guard.Gate) ([]grpc.ServerOption, error) {
	unary := []grpc.UnaryServerInterceptor{o.Callers.Unary(o.Metrics), o.Deadlines.Unary(o.Metrics)}
	stream := []grpc.StreamServerInterceptor{calls.Stream(), o.Callers.Stream(o.Metrics), o.Deadlines.Stream(o.Metrics)}
	if gate != nil {
		unary, stream = append(unary, gate.Unary(o.Metrics)), append(stream, gate.Stream(o.Metrics))
		if o.Metrics != nil {
			if err := o.Metrics.Load(gate.Loads()); err != nil {
				return nil, err
			}
		}
	}
	unary = append(unary, guard.RecoverUnary(o.Log, o.Metrics))
	stream = append(stream, guard.RecoverStream(o.Log, o.Metrics))
	return []grpc.ServerOption{
		grpc.ChainUnaryInterceptor(unary...), grpc.ChainStreamInterceptor(stream...),
		telemetry.Unknown(), grpc.InTapHandle(o.Deadlines.Tap(streams)),
	}, nil
}

// streams are the methods that are streams, but for those of health.
var streams = map[string]bool{
	footwardv1.CheckService_StreamChecks_FullMethodName:                          true,
	grpc_reflection_v1.ServerReflection_ServerReflectionInfo_FullMethodName:      true,
	grpc_reflection_v1alpha.ServerReflection_ServerReflectionInfo_FullMethodName: true,
}

// transport bounds messages and connections.
func (o *Options) transport() []grpc.ServerOption {
	out := []grpc.ServerOption{
		grpc.MaxRecvMsgSize(o.MessageBytes), grpc.MaxSendMsgSize(o.MessageBytes),
		grpc.MaxHeaderListSize(HeaderBytes), grpc.ConnectionTimeout(o.patience.handshake),
		// Goroutines that live on keep the stack that a check has grown.
		grpc.NumStreamWorkers(uint32(workers * runtime.GOMAXPROCS(0))),
		grpc.KeepaliveEnforcementPolicy(keepalive.EnforcementPolicy{MinTime: leastPing}),
		grpc.KeepaliveParams(keepalive.ServerParameters{
			MaxConnectionIdle: o.patience.idle, MaxConnectionAge: o.ConnectionAge, Time: o.patience.silence, Timeout: o.patience.answer,
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
