package telemetry

import (
	"context"
	"log/slog"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/peer"
	"google.golang.org/grpc/status"
)

// LogUnary writes one line a call: debug when it was answered or turned away, error
// when the service was at fault, info otherwise. Nothing that the caller sent is written.
func LogUnary(log *slog.Logger) grpc.UnaryServerInterceptor {
	return func(ctx context.Context, m any, info *grpc.UnaryServerInfo, handler grpc.UnaryHandler) (any, error) {
		began := time.Now()
		answer, err := handler(ctx, m)
		write(ctx, log, info.FullMethod, began, err)
		return answer, err
	}
}

// LogStream does the same for streams.
func LogStream(log *slog.Logger) grpc.StreamServerInterceptor {
	return func(server any, stream grpc.ServerStream, info *grpc.StreamServerInfo, handler grpc.StreamHandler) error {
		began := time.Now()
		err := handler(server, stream)
		write(stream.Context(), log, info.FullMethod, began, err)
		return err
	}
}

func write(ctx context.Context, log *slog.Logger, method string, began time.Time, err error) {
	code := status.Code(err)
	level := levelOf(code)
	if !log.Enabled(ctx, level) {
		return
	}
	from := ""
	if p, ok := peer.FromContext(ctx); ok {
		from = p.Addr.String()
	}
	log.LogAttrs(ctx, level, "call", slog.String("method", method), slog.String("code", code.String()),
		slog.Duration("took", time.Since(began)), slog.String("peer", from))
}

func levelOf(code codes.Code) slog.Level {
	switch code {
	case codes.OK:
		return slog.LevelDebug
	case codes.ResourceExhausted, codes.Unauthenticated, codes.PermissionDenied:
		// Turned away, and counted by reason: who keeps on asking must not fill the log.
		return slog.LevelDebug
	case codes.Internal, codes.Unknown, codes.DataLoss:
		return slog.LevelError
	}
	return slog.LevelInfo
}
