package telemetry

import (
	"context"
	"log/slog"
	"time"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/peer"
)

// Logger returns a log that adds the ids of the call to every line that is written
// with the call's context, whoever writes it.
func Logger(log *slog.Logger) *slog.Logger { return slog.New(identified{log.Handler()}) }

type identified struct{ slog.Handler }

func (h identified) Handle(ctx context.Context, r slog.Record) error {
	if who := identityOf(ctx); who != nil {
		r.AddAttrs(slog.String("request_id", who.request))
		if who.trace.ID != "" {
			r.AddAttrs(slog.String("trace_id", who.trace.ID))
		}
	}
	return h.Handler.Handle(ctx, r)
}

func (h identified) WithAttrs(attrs []slog.Attr) slog.Handler {
	return identified{h.Handler.WithAttrs(attrs)}
}

func (h identified) WithGroup(name string) slog.Handler {
	return identified{h.Handler.WithGroup(name)}
}

// write writes the line of a call.
func write(ctx context.Context, log *slog.Logger, level slog.Level, method string, code codes.Code, took time.Duration) {
	if !log.Enabled(ctx, level) {
		return
	}
	from := ""
	if p, ok := peer.FromContext(ctx); ok {
		from = p.Addr.String()
	}
	log.LogAttrs(ctx, level, "call", slog.String("method", method), slog.String("code", code.String()),
		slog.Duration("took", took), slog.String("peer", from))
}

// levelOf is debug for a call that was answered or turned away, error when the
// service was at fault, and info otherwise.
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
