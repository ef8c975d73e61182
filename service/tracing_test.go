package main

import (
	"context"
	"encoding/hex"
	"io"
	"net"
	"net/http"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	collector "go.opentelemetry.io/proto/otlp/collector/trace/v1"
	tracev1 "go.opentelemetry.io/proto/otlp/trace/v1"
	"google.golang.org/grpc"
	"google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/metadata"

	"footward.example/footward/service/server"
)

func TestTraceSettings(t *testing.T) {
	for _, c := range []struct {
		args  []string
		wrong string // part of the error; empty: none
	}{
		{[]string{"--trace-endpoint", "http://127.0.0.1:4317", "--trace-ratio", "1"}, ""},
		{[]string{"--trace-endpoint", "https://collector.example.org:4317"}, ""},
		{[]string{"--trace-endpoint", "http://collector.example.org:4317", "--plaintext-to-other-machines"}, ""},
		{[]string{"--trace-endpoint", "http://collector.example.org:4317"}, "encrypted"},
		{[]string{"--trace-endpoint", "https://collector.example.org"}, "port"},
		{[]string{"--trace-endpoint", "localhost:4317"}, "http or https"},
		{[]string{"--trace-ratio", "1.1"}, "between 0 and 1"},
		{[]string{"--trace-ratio", "NaN"}, "between 0 and 1"},
	} {
		_, err := readSettings(c.args, nil, io.Discard)
		if c.wrong == "" {
			assert.NoError(t, err, "%v", c.args)
		} else {
			assert.ErrorContains(t, err, c.wrong, "%v", c.args)
		}
	}
}

// stub is a collector that keeps the spans it is sent, by name.
type stub struct {
	collector.UnimplementedTraceServiceServer
	at string

	mu      sync.Mutex
	service string
	spans   map[string][]*tracev1.Span
}

func newStub(t *testing.T) *stub {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	c := &stub{at: l.Addr().String(), spans: map[string][]*tracev1.Span{}}
	s := grpc.NewServer()
	collector.RegisterTraceServiceServer(s, c)
	done := make(chan struct{})
	go func() {
		defer close(done)
		_ = s.Serve(l)
	}()
	t.Cleanup(func() {
		s.Stop()
		<-done
	})
	return c
}

func (c *stub) Export(_ context.Context, m *collector.ExportTraceServiceRequest) (*collector.ExportTraceServiceResponse, error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	for _, r := range m.GetResourceSpans() {
		for _, a := range r.GetResource().GetAttributes() {
			if a.GetKey() == "service.name" {
				c.service = a.GetValue().GetStringValue()
			}
		}
		for _, scope := range r.GetScopeSpans() {
			for _, span := range scope.GetSpans() {
				c.spans[span.GetName()] = append(c.spans[span.GetName()], span)
			}
		}
	}
	return &collector.ExportTraceServiceResponse{}, nil
}

const callersTraceID = "4bf92f3577b34da6a3ce929d0e0e4736"

// TestSpansArriveAtACollector: a call in a trace of its caller's, one in none, and
// questions about health, which make none.
func TestSpansArriveAtACollector(t *testing.T) {
	c := newStub(t)
	r := start(t, "--trace-endpoint", "http://"+c.at, "--trace-ratio", "0")
	ask := dial(t, r)
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	_, err := grpc_health_v1.NewHealthClient(ask.Conn()).Check(ctx, &grpc_health_v1.HealthCheckRequest{})
	require.NoError(t, err)
	_, err = ask.CheckBearing(ctx, item(-120).GetBearing())
	require.NoError(t, err)
	in := metadata.AppendToOutgoingContext(ctx, "traceparent", "00-"+callersTraceID+"-00f067aa0ba902b7-01")
	bad := item(-120).GetBearing()
	bad.Contact.SizeXMm = -1
	_, err = ask.CheckBearing(in, bad)
	require.Error(t, err)
	assert.Contains(t, openMetrics(t, r), `# {trace_id="`+callersTraceID+`"}`, "an exemplar leads to the trace")
	r.stop()
	require.NoError(t, <-r.end)

	c.mu.Lock()
	defer c.mu.Unlock()
	assert.Equal(t, "footward", c.service)
	require.Len(t, c.spans, 1)
	spans := c.spans["footward.v1.CheckService/CheckBearing"]
	require.Len(t, spans, 1, "at a ratio of 0 the caller's alone")
	assert.Equal(t, callersTraceID, hex.EncodeToString(spans[0].GetTraceId()))
	assert.Equal(t, "00f067aa0ba902b7", hex.EncodeToString(spans[0].GetParentSpanId()))
	assert.Equal(t, tracev1.Span_SPAN_KIND_SERVER, spans[0].GetKind())
	assert.Contains(t, r.log.String(), "code=InvalidArgument")
	assert.Contains(t, r.log.String(), "trace_id="+callersTraceID)
}

// TestTracesBeginHereToo: without a caller's trace the service begins one, and the
// log has its id.
func TestTracesBeginHereToo(t *testing.T) {
	c := newStub(t)
	r := start(t, "--trace-endpoint", "http://"+c.at, "--trace-ratio", "1")
	bad := item(-120).GetBearing()
	bad.Contact.SizeXMm = -1
	_, err := dial(t, r).CheckBearing(t.Context(), bad)
	require.Error(t, err)
	r.stop()
	require.NoError(t, <-r.end)
	c.mu.Lock()
	defer c.mu.Unlock()
	spans := c.spans["footward.v1.CheckService/CheckBearing"]
	require.Len(t, spans, 1)
	assert.Contains(t, r.log.String(), "trace_id="+hex.EncodeToString(spans[0].GetTraceId()))
}

// TestCallsDoNotWaitForACollector that nobody runs.
func TestCallsDoNotWaitForACollector(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	nobody := l.Addr().String()
	require.NoError(t, l.Close())
	r := start(t, "--trace-endpoint", "http://"+nobody, "--trace-ratio", "1")
	ask := dial(t, r)
	ctx, cancel := context.WithTimeout(t.Context(), 10*time.Second)
	defer cancel()
	for range 100 {
		_, err := ask.CheckBearing(ctx, item(-120).GetBearing())
		require.NoError(t, err)
	}
	r.stop()
	require.NoError(t, <-r.end)
	assert.Contains(t, r.log.String(), "msg=traces")
}

func TestTracesAreOffUnlessAskedFor(t *testing.T) {
	s, err := readSettings(nil, nil, io.Discard)
	require.NoError(t, err)
	var o server.Options
	stop, err := s.tracing.put(t.Context(), &o, nil)
	require.NoError(t, err)
	stop()
	assert.Nil(t, o.Stats)
	assert.Nil(t, o.Trace)
}

// openMetrics is what Prometheus gets, which asks for exemplars.
func openMetrics(t *testing.T, r *running) string {
	t.Helper()
	request, err := http.NewRequestWithContext(t.Context(), http.MethodGet, "http://"+r.at.metrics.String()+"/metrics", nil)
	require.NoError(t, err)
	request.Header.Set("Accept", "application/openmetrics-text; version=1.0.0")
	transport := &http.Transport{}
	defer transport.CloseIdleConnections()
	answer, err := (&http.Client{Transport: transport}).Do(request)
	require.NoError(t, err)
	defer func() { _ = answer.Body.Close() }()
	text, err := io.ReadAll(answer.Body)
	require.NoError(t, err)
	return string(text)
}
