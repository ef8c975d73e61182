package server

import (
	"context"
	"sync/atomic"
	"time"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/health"
	"google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/status"

	"footward.example/footward/service/guard"
	"footward.example/footward/service/telemetry"
)

// watchable is health whose watches end with ctx: a client that watches until the
// server is gone would otherwise hold up the drain. Nobody is asked who they are, so
// there are so many watches at once in all and of one address, for so long.
type watchable struct {
	*health.Server
	ctx        context.Context
	most, each int // 0: any number
	lasts      time.Duration
	open       atomic.Int64
	tally      *telemetry.Metrics
}

// now is how many watches there are.
func (w *watchable) now() int { return int(w.open.Load()) }

// Watch implements HealthServer.
func (w *watchable) Watch(m *grpc_health_v1.HealthCheckRequest, stream grpc_health_v1.Health_WatchServer) error {
	leave, ok := guard.TakeWatch(stream.Context(), &w.open, w.most, w.each)
	if !ok {
		w.tally.WatchTurnedAway()
		return status.Error(codes.ResourceExhausted, "too many watch the health of the service already; Check tells it too")
	}
	defer leave()
	ctx, cancel := context.WithCancel(stream.Context())
	defer cancel()
	defer context.AfterFunc(w.ctx, cancel)()
	err := w.Server.Watch(m, watching{stream, ctx})
	if stream.Context().Err() == context.DeadlineExceeded {
		return status.Errorf(codes.Unavailable, "a watch lasts %v at most; watch again", w.lasts)
	}
	return err
}

type watching struct {
	grpc_health_v1.Health_WatchServer
	ctx context.Context
}

// Context implements grpc.ServerStream.
func (w watching) Context() context.Context { return w.ctx }
