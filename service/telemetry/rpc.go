package telemetry

import (
	"time"

	client "github.com/prometheus/client_golang/prometheus"
	"google.golang.org/grpc/codes"
)

// latencyBuckets reach from a small check to the longest that a call may take [s].
var latencyBuckets = []float64{0.0001, 0.00025, 0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30, 60, 120, 300}

// lastCode is the greatest code of gRPC.
const lastCode = codes.Unauthenticated

// rpcs are the series of calls, under the names that are common for gRPC servers.
type rpcs struct {
	started, handled, received, sent *client.CounterVec
	seconds                          *client.HistogramVec
	inFlight                         *client.GaugeVec
}

func newRPCs() *rpcs {
	method := []string{"grpc_type", "grpc_service", "grpc_method"}
	counter := func(name, help string, labels ...string) *client.CounterVec {
		return client.NewCounterVec(client.CounterOpts{Name: name, Help: help}, append(method, labels...))
	}
	return &rpcs{
		started:  counter("grpc_server_started_total", "Calls that came in, by method."),
		handled:  counter("grpc_server_handled_total", "Calls that ended, by method and status code.", "grpc_code"),
		received: counter("grpc_server_msg_received_total", "Messages that came in on streams, by method."),
		sent:     counter("grpc_server_msg_sent_total", "Messages that were sent on streams, by method."),
		seconds: client.NewHistogramVec(client.HistogramOpts{
			Name: "grpc_server_handling_seconds", Buckets: latencyBuckets,
			Help: "Time from the headers of a call until its answer was ready to be written, by method.",
		}, method),
		inFlight: client.NewGaugeVec(client.GaugeOpts{
			Name: "footward_calls_in_flight", Help: "Calls that came in and have not ended, waiting ones and idle streams too, by method.",
		}, method),
	}
}

func (r *rpcs) collectors() []client.Collector {
	return []client.Collector{r.started, r.handled, r.received, r.sent, r.seconds, r.inFlight}
}

// method holds the series of one method, so that a call looks none up. A nil
// *method counts nothing.
type method struct {
	started, received, sent client.Counter // the last two: nil unless it streams
	handled                 [lastCode + 1]client.Counter
	seconds                 client.ExemplarObserver
	inFlight                client.Gauge
}

// method makes the series of a method, at zero.
func (r *rpcs) method(kind, service, name string) *method {
	m := &method{
		started:  r.started.WithLabelValues(kind, service, name),
		seconds:  r.seconds.WithLabelValues(kind, service, name).(client.ExemplarObserver),
		inFlight: r.inFlight.WithLabelValues(kind, service, name),
	}
	for code := range m.handled {
		m.handled[code] = r.handled.WithLabelValues(kind, service, name, codes.Code(code).String())
	}
	if kind != unary && kind != unknown {
		m.received = r.received.WithLabelValues(kind, service, name)
		m.sent = r.sent.WithLabelValues(kind, service, name)
	}
	return m
}

func (m *method) begin() {
	if m != nil {
		m.started.Inc()
		m.inFlight.Inc()
	}
}

func (m *method) end(code codes.Code, took time.Duration, trace Trace) {
	if m == nil {
		return
	}
	m.inFlight.Dec()
	if code > lastCode {
		code = codes.Unknown
	}
	m.handled[code].Inc()
	var exemplar client.Labels
	if trace.Sampled {
		exemplar = client.Labels{"trace_id": trace.ID}
	}
	m.seconds.ObserveWithExemplar(took.Seconds(), exemplar)
}

func (m *method) receivedOne() {
	if m != nil && m.received != nil {
		m.received.Inc()
	}
}

func (m *method) sentOne() {
	if m != nil && m.sent != nil {
		m.sent.Inc()
	}
}
