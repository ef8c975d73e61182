package server

import (
	"context"

	"google.golang.org/grpc/health"
	"google.golang.org/grpc/health/grpc_health_v1"
)

// watchable is health whose watches end with ctx: a client that watches until the
// server is gone would otherwise hold up the drain.
type watchable struct {
	*health.Server
	ctx context.Context
}

// Watch implements HealthServer.
func (w watchable) Watch(m *grpc_health_v1.HealthCheckRequest, stream grpc_health_v1.Health_WatchServer) error {
	ctx, cancel := context.WithCancel(stream.Context())
	defer cancel()
	defer context.AfterFunc(w.ctx, cancel)()
	return w.Server.Watch(m, watching{stream, ctx})
}

type watching struct {
	grpc_health_v1.Health_WatchServer
	ctx context.Context
}

// Context implements grpc.ServerStream.
func (w watching) Context() context.Context { return w.ctx }
