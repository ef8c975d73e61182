package web_test

import (
	"bytes"
	"context"
	"crypto/tls"
	"io"
	"log/slog"
	"net"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/prometheus/client_golang/prometheus/promhttp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.uber.org/goleak"
	spb "google.golang.org/genproto/googleapis/rpc/status"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/encoding/protojson"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/server"
	"footward.example/footward/service/telemetry"
	"footward.example/footward/service/web"
)

func TestMain(m *testing.M) { goleak.VerifyTestMain(m) }

const (
	messageBytes = 1 << 20
	bearingPath  = footwardv1.CheckService_CheckBearing_FullMethodName
	manyPath     = footwardv1.CheckService_CheckMany_FullMethodName
	streamPath   = footwardv1.CheckService_StreamChecks_FullMethodName
	bearing      = `{"basis": {"eurocode": {}}, "contact": {"size_x_mm": 500, "size_y_mm": 500},
		"forces": {"n_kn": -120}, "support": {"given": {"pressure_kpa": 640, "source": "a test", "medium": "GIVEN_MEDIUM_OTHER"}}}`
)

// served is an HTTP server on a socket.
type served struct {
	*web.Server
	url    string
	client *http.Client
	ended  chan error
}

// serve serves calls over HTTP until the test ends.
func serve(t testing.TB, calls web.Calls, o web.Options) *served {
	t.Helper()
	o.MessageBytes = messageBytes
	w, err := web.New(calls, o)
	require.NoError(t, err)
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	transport := &http.Transport{MaxIdleConnsPerHost: 100}
	s := &served{w, "http://" + l.Addr().String(), &http.Client{Transport: transport, Timeout: 10 * time.Minute}, make(chan error, 1)}
	if o.TLS != nil {
		s.url = "https://" + l.Addr().String()
		transport.TLSClientConfig = &tls.Config{InsecureSkipVerify: true}
	}
	go func() {
		s.ended <- w.Serve(l)
		close(s.ended)
	}()
	t.Cleanup(func() {
		w.Stop()
		<-s.ended
		transport.CloseIdleConnections()
	})
	return s
}

// production is the whole service over HTTP and over gRPC, with its metrics and
// its log.
type production struct {
	*served
	grpc    *client.Client
	metrics *prometheus.Registry
	log     *record
}

func produce(t testing.TB) *production {
	t.Helper()
	p := &production{metrics: prometheus.NewRegistry(), log: &record{}}
	m, err := telemetry.New(p.metrics)
	require.NoError(t, err)
	log := slog.New(slog.NewTextHandler(p.log, &slog.HandlerOptions{Level: slog.LevelDebug}))
	s, err := server.New(server.Options{Log: log, Metrics: m, Web: true})
	require.NoError(t, err)
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	done := make(chan error, 1)
	go func() { done <- s.Serve(l) }()
	t.Cleanup(func() {
		s.Stop()
		<-done
	})
	p.grpc, err = client.Dial(l.Addr().String(), client.WithTimeout(10*time.Minute))
	require.NoError(t, err)
	t.Cleanup(func() { _ = p.grpc.Close() })
	p.served = serve(t, s.Web(), web.Options{Log: log})
	return p
}

// scrape returns the metrics as text.
func (p *production) scrape() string {
	w := httptest.NewRecorder()
	promhttp.HandlerFor(p.metrics, promhttp.HandlerOpts{}).ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/metrics", nil))
	return w.Body.String()
}

// record is a log that may be read while it is written.
type record struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (r *record) Write(b []byte) (int, error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.text.Write(b)
}

func (r *record) String() string {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.text.String()
}

// reply is an answer, read to its end.
type reply struct {
	*http.Response
	body string
}

// hostHeader is by which name a request calls the service.
const hostHeader = "Host"

// send sends a request with header pairs.
func (s *served) send(t testing.TB, method, path string, body io.Reader, header ...string) reply {
	t.Helper()
	r, err := http.NewRequestWithContext(t.Context(), method, s.url+path, body)
	require.NoError(t, err)
	for i := 0; i < len(header); i += 2 {
		if header[i] == hostHeader {
			r.Host = header[i+1]
			continue
		}
		r.Header.Set(header[i], header[i+1])
	}
	answer, err := s.client.Do(r)
	require.NoError(t, err)
	defer func() { _ = answer.Body.Close() }()
	text, err := io.ReadAll(answer.Body)
	require.NoError(t, err)
	return reply{answer, string(text)}
}

// post posts JSON.
func (s *served) post(t testing.TB, path, body string, header ...string) reply {
	t.Helper()
	return s.send(t, http.MethodPost, path, strings.NewReader(body), append([]string{"Content-Type", "application/json"}, header...)...)
}

// status reads the answer as a google.rpc.Status.
func (r reply) status(t testing.TB) *status.Status {
	t.Helper()
	assert.Equal(t, "application/json", r.Header.Get("Content-Type"), r.body)
	var s spb.Status
	require.NoError(t, protojson.Unmarshal([]byte(r.body), &s), r.body)
	return status.FromProto(&s)
}

// TestCallsPassEverythingBeforeTheHandlers comes first: what guards, counts and
// logs calls over gRPC must do so here.
func TestCallsPassEverythingBeforeTheHandlers(t *testing.T) {
	p := produce(t)
	r := p.post(t, bearingPath, bearing)
	require.Equal(t, http.StatusOK, r.StatusCode, r.body)
	var answer footwardv1.CheckBearingResponse
	require.NoError(t, protojson.Unmarshal([]byte(r.body), &answer))
	assert.InDelta(t, 0.75, answer.GetResult().GetGoverningUtilization(), 1e-9)

	r = p.post(t, bearingPath, strings.ReplaceAll(bearing, "500", "-1"))
	require.Equal(t, http.StatusBadRequest, r.StatusCode, r.body)
	assert.Equal(t, codes.InvalidArgument, r.status(t).Code())
	violations := client.Violations(r.status(t).Err())
	require.Len(t, violations, 2)
	assert.Equal(t, "contact.size_x_mm", violations[0].GetField())
	assert.Equal(t, footwardv1.FieldReason_FIELD_REASON_OUT_OF_RANGE, violations[0].GetReason())

	for _, counted := range []string{
		`grpc_server_handled_total{grpc_code="OK",grpc_method="CheckBearing",grpc_service="footward.v1.CheckService",grpc_type="unary"} 1`,
		`grpc_server_handled_total{grpc_code="InvalidArgument",grpc_method="CheckBearing",grpc_service="footward.v1.CheckService",grpc_type="unary"} 1`,
		`footward_checks_total{basis="eurocode",check="bearing",verdict="pass"} 1`,
		`footward_refused_fields_total{check="bearing",reason="out_of_range"} 2`,
	} {
		assert.Contains(t, p.scrape(), counted+"\n")
	}
	assert.Contains(t, p.log.String(), "method=/footward.v1.CheckService/CheckBearing code=OK")
	assert.Contains(t, p.log.String(), "code=InvalidArgument")
	assert.Regexp(t, `peer=127\.0\.0\.1:\d+`, p.log.String(), "the caller's own address")
	assert.NotContains(t, p.log.String(), "a test", "nothing that a caller sent is logged")
}

// noCalls is a server without services.
type noCalls struct{ http.Handler }

func (noCalls) GetServiceInfo() map[string]grpc.ServiceInfo { return nil }

// fake is a service whose CheckBearing does what a test needs.
type fake struct {
	footwardv1.UnimplementedCheckServiceServer
	bearing func(context.Context) error
}

func (f fake) CheckBearing(ctx context.Context, _ *footwardv1.CheckBearingRequest) (*footwardv1.CheckBearingResponse, error) {
	return &footwardv1.CheckBearingResponse{}, f.bearing(ctx)
}

func serveFake(t testing.TB, o web.Options, bearing func(context.Context) error, interceptors ...grpc.UnaryServerInterceptor) *served {
	t.Helper()
	g := grpc.NewServer(append(web.ServerOptions(messageBytes), grpc.ChainUnaryInterceptor(interceptors...))...)
	footwardv1.RegisterCheckServiceServer(g, fake{bearing: bearing})
	t.Cleanup(g.Stop)
	return serve(t, g, o)
}
