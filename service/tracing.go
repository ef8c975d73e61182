package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"log/slog"
	"net/url"
	"time"

	"footward.example/footward/service/server"
	"footward.example/footward/service/telemetry/trace"
)

// tracing are the settings of traces.
type tracing struct {
	endpoint string
	ratio    float64
}

// lastSpans is how long the end waits for a collector to take what is left.
const lastSpans = 3 * time.Second

func (t *tracing) flags(f *flag.FlagSet) {
	f.StringVar(&t.endpoint, "trace-endpoint", "", "send OpenTelemetry traces (OTLP over gRPC) to the collector at this `URL`, such as https://collector.example.org:4317; empty: make none")
	f.Float64Var(&t.ratio, "trace-ratio", 0.05, "trace this `SHARE` of the calls whose caller does not decide it, 0 to 1")
}

func (t *tracing) check(plaintext bool) (wrong []error) {
	// The condition is written so that NaN fails.
	if !(t.ratio >= 0 && t.ratio <= 1) {
		wrong = append(wrong, fmt.Errorf("trace-ratio: %v is not between 0 and 1", t.ratio))
	}
	if t.endpoint == "" {
		return wrong
	}
	at, err := url.Parse(t.endpoint)
	switch {
	case err != nil:
		return append(wrong, fmt.Errorf("trace-endpoint: %w", err))
	case at.Scheme != "http" && at.Scheme != "https", at.Hostname() == "", at.Port() == "", at.Path != "" && at.Path != "/", at.User != nil:
		return append(wrong, errors.New("trace-endpoint: must be http or https, a host and a port, as https://collector.example.org:4317"))
	case at.Scheme == "http" && !loopback(at.Hostname()) && !plaintext:
		return append(wrong, fmt.Errorf("trace-endpoint: %s is another machine and nothing is encrypted; "+
			"if that is meant, say --plaintext-to-other-machines", t.endpoint))
	}
	return wrong
}

// put starts an exporter and has the server use it; without an endpoint nothing
// is made and calls cost nothing more. stop ends it.
func (t *tracing) put(ctx context.Context, o *server.Options, log *slog.Logger) (stop func(), err error) {
	if t.endpoint == "" {
		return func() {}, nil
	}
	e, err := trace.New(ctx, t.endpoint, t.ratio, log)
	if err != nil {
		return nil, err
	}
	o.Stats, o.Trace = e.Stats(), trace.Of
	return func() {
		limit, cancel := context.WithTimeout(context.WithoutCancel(ctx), lastSpans)
		defer cancel()
		if err := e.Stop(limit); err != nil {
			log.Warn("traces", "error", err)
		}
	}, nil
}
