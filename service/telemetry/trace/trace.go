// Package trace sends a sample of the calls as OpenTelemetry spans to a collector.
// It stands apart from package telemetry so that who uses the service in process
// does not link an exporter.
package trace

import (
	"context"
	"log/slog"
	"sync"

	"go.opentelemetry.io/contrib/instrumentation/google.golang.org/grpc/otelgrpc"
	"go.opentelemetry.io/contrib/instrumentation/google.golang.org/grpc/otelgrpc/filters"
	"go.opentelemetry.io/otel"
	"go.opentelemetry.io/otel/exporters/otlp/otlptrace"
	"go.opentelemetry.io/otel/exporters/otlp/otlptrace/otlptracegrpc"
	"go.opentelemetry.io/otel/metric/noop"
	"go.opentelemetry.io/otel/propagation"
	"go.opentelemetry.io/otel/sdk/resource"
	tracing "go.opentelemetry.io/otel/sdk/trace"
	semconv "go.opentelemetry.io/otel/semconv/v1.41.0"
	"go.opentelemetry.io/otel/trace"
	"google.golang.org/grpc/stats"

	"footward.example/footward/service/telemetry"
	"footward.example/footward/service/version"
)

// Exporter makes spans of calls and sends them away.
type Exporter struct {
	provider *tracing.TracerProvider
	exporter *otlptrace.Exporter
	faults   *faults
}

// faults logs what goes wrong behind calls, until it is stopped: the library may
// go on for a moment after it was told to end.
type faults struct {
	mu  sync.Mutex
	log *slog.Logger // nil: stopped
}

// Handle implements otel.ErrorHandler.
func (f *faults) Handle(err error) {
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.log != nil {
		f.log.Warn("traces", "error", err)
	}
}

func (f *faults) stop() {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.log = nil
}

// New returns an exporter to a collector at a URL, of which https means
// encryption. A caller that is in a trace decides whether its call is kept; of
// the rest a ratio is. A collector that cannot be reached costs spans and a
// warning in the log, never a call.
//
// What OpenTelemetry leaves to the variables of the environment, such as headers
// and the collector's authority (OTEL_EXPORTER_OTLP_CERTIFICATE), is read there.
func New(ctx context.Context, url string, ratio float64, log *slog.Logger) (*Exporter, error) {
	// The library reports to one handler for the whole process.
	f := &faults{log: log}
	otel.SetErrorHandler(f)
	exporter, err := otlptracegrpc.New(ctx, otlptracegrpc.WithEndpointURL(url))
	if err != nil {
		return nil, err
	}
	is, err := resource.New(ctx, resource.WithAttributes(semconv.ServiceName("footward"), semconv.ServiceVersion(version.String())),
		resource.WithHost(), resource.WithFromEnv(), resource.WithTelemetrySDK())
	if err != nil {
		return nil, err
	}
	return &Exporter{exporter: exporter, faults: f, provider: tracing.NewTracerProvider(
		tracing.WithBatcher(exporter), tracing.WithResource(is),
		tracing.WithSampler(tracing.ParentBased(tracing.TraceIDRatioBased(ratio))),
	)}, nil
}

// Stats is told of every call and makes the spans. Health is asked too often to
// be worth one.
func (e *Exporter) Stats() stats.Handler {
	return otelgrpc.NewServerHandler(
		otelgrpc.WithTracerProvider(e.provider), otelgrpc.WithMeterProvider(noop.NewMeterProvider()),
		otelgrpc.WithPropagators(propagation.TraceContext{}), otelgrpc.WithFilter(filters.Not(filters.HealthCheck())),
	)
}

// Of returns the trace of a call that Stats was told of.
func Of(ctx context.Context) telemetry.Trace {
	span := trace.SpanContextFromContext(ctx)
	if !span.HasTraceID() {
		return telemetry.Trace{}
	}
	return telemetry.Trace{ID: span.TraceID().String(), Sampled: span.IsSampled()}
}

// Stop sends what is left, until ctx ends.
func (e *Exporter) Stop(ctx context.Context) error {
	defer e.faults.stop()
	err := e.provider.Shutdown(ctx)
	if err != nil {
		// The provider leaves an exporter that does not end in time to itself.
		_ = e.exporter.Shutdown(ctx)
	}
	return err
}
