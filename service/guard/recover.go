package guard

import (
	"context"
	"crypto/rand"
	"fmt"
	"log/slog"
	"runtime/debug"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
)

// RecoverUnary answers INTERNAL with an id when a handler panics, and logs the
// stack under that id. The caller learns nothing else.
func RecoverUnary(log *slog.Logger, tally Tally) grpc.UnaryServerInterceptor {
	return func(ctx context.Context, m any, info *grpc.UnaryServerInfo, handler grpc.UnaryHandler) (answer any, err error) {
		defer func() {
			if p := recover(); p != nil {
				tally.Panicked()
				answer, err = nil, internal(ctx, log, info.FullMethod, p)
			}
		}()
		return handler(ctx, m)
	}
}

// RecoverStream does the same for streams.
func RecoverStream(log *slog.Logger, tally Tally) grpc.StreamServerInterceptor {
	return func(server any, stream grpc.ServerStream, info *grpc.StreamServerInfo, handler grpc.StreamHandler) (err error) {
		defer func() {
			if p := recover(); p != nil {
				tally.Panicked()
				err = internal(stream.Context(), log, info.FullMethod, p)
			}
		}()
		return handler(server, stream)
	}
}

func internal(ctx context.Context, log *slog.Logger, method string, panicked any) error {
	id := rand.Text()
	log.ErrorContext(ctx, "a call panicked", "id", id, "method", method,
		"panic", fmt.Sprint(panicked), "stack", string(debug.Stack()))
	return status.Errorf(codes.Internal, "internal error, id %s: please report it with this id", id)
}
