package main

import (
	"bytes"
	"context"
	"io"
	"log/slog"
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/reflection/grpc_reflection_v1"
	"google.golang.org/grpc/status"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

func TestSettings(t *testing.T) {
	for _, c := range []struct {
		name      string
		args, env []string
		wrong     string // part of the error; empty: none
	}{
		{"none", nil, nil, ""},
		{"flag", []string{"--message-mib", "4"}, nil, ""},
		{"variable", nil, []string{"FOOTWARD_LOG_LEVEL=debug", "PATH=/bin"}, ""},
		{"flag before variable", []string{"--log-level", "info"}, []string{"FOOTWARD_LOG_LEVEL=nonsense"}, ""},
		{"metrics off", []string{"--metrics-address", ""}, nil, ""},
		{"IPv6 loopback", []string{"--grpc-address", "[::1]:1"}, nil, ""},
		{"other machines, meant", []string{"--grpc-address", "0.0.0.0:1", "--plaintext-to-other-machines"}, nil, ""},
		{"unknown flag", []string{"--colour"}, nil, "colour"},
		{"argument", []string{"now"}, nil, "no flag"},
		{"unknown variable", nil, []string{"FOOTWARD_GRPC_ADRESS=x"}, "FOOTWARD_GRPC_ADRESS"},
		{"wrong value", nil, []string{"FOOTWARD_MESSAGE_MIB=many"}, "many"},
		{"message too large", []string{"--message-mib", "257"}, nil, "256"},
		{"message too small", []string{"--message-mib", "0"}, nil, "between"},
		{"other machines", []string{"--grpc-address", "0.0.0.0:1"}, nil, "encrypted"},
		{"metrics to other machines", []string{"--metrics-address", ":1"}, nil, "encrypted"},
		{"HTTP to other machines", []string{"--http-address", ":1"}, nil, "http-address"},
		{"no port", []string{"--grpc-address", "localhost"}, nil, "grpc-address"},
		{"other machines, encrypted", []string{"--grpc-address", "0.0.0.0:1", "--tls-cert", "c", "--tls-key", "k"}, nil, ""},
		{"tokens on loopback", []string{"--token-file", "t"}, nil, ""},
		{"tokens in the clear", []string{"--grpc-address", "0.0.0.0:1", "--plaintext-to-other-machines", "--token-file", "t"}, nil, "in the clear"},
		{"certificate without key", []string{"--tls-cert", "c"}, nil, "tls-key"},
		{"key without certificate", []string{"--tls-key", "k"}, nil, "tls-cert"},
		{"authorities without certificate", []string{"--tls-client-ca", "a"}, nil, "tls-client-ca"},
		{"names without authorities", []string{"--tls-cert", "c", "--tls-key", "k", "--tls-client-names", "a"}, nil, "tls-client-names"},
		{"no timeout", []string{"--call-timeout", "0s"}, nil, "call-timeout"},
		{"cap below default", []string{"--call-timeout-most", "1s"}, nil, "call-timeout-most"},
		{"least above cap", []string{"--call-timeout-least", "1h"}, nil, "call-timeout-least"},
		{"nothing at once", []string{"--calls-at-once", "0"}, nil, "calls-at-once"},
		{"none waits", []string{"--calls-waiting", "0"}, nil, ""},
		{"no call open", []string{"--calls-open", "0"}, nil, "calls-open"},
		{"no watch", []string{"--health-watches", "0"}, nil, "health-watches"},
		{"address has nothing", []string{"--address-share", "0"}, nil, "address-share"},
		{"address has more than all", []string{"--address-share", "1.1"}, nil, "address-share"},
		{"address share is no number", []string{"--address-share", "NaN"}, nil, "address-share"},
		{"address has all", []string{"--address-share", "1"}, nil, ""},
		{"timeout below delay", []string{"--drain-delay", "30s"}, nil, "drain-timeout"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := readSettings(c.args, c.env, io.Discard)
			if c.wrong == "" {
				assert.NoError(t, err)
				return
			}
			assert.ErrorContains(t, err, c.wrong)
			var stdout, stderr bytes.Buffer
			assert.Equal(t, wrongSetting, run(t.Context(), c.args, c.env, &stdout, &stderr))
			assert.Contains(t, stderr.String(), c.wrong)
		})
	}
}

func TestHelpExplainsEverySetting(t *testing.T) {
	var stdout, stderr bytes.Buffer
	assert.Equal(t, stopped, run(t.Context(), []string{"--help"}, nil, &stdout, &stderr))
	for _, name := range []string{"grpc-address", "http-address", "metrics-address", "reflection", "log-level", "drain-timeout", "message-mib"} {
		assert.Contains(t, stdout.String(), "-"+name)
	}
	assert.Contains(t, stdout.String(), "Exit status")
}

func TestAddressInUseFails(t *testing.T) {
	s := start(t)
	var stderr bytes.Buffer
	code := run(t.Context(), []string{"--grpc-address", s.at.grpc.String()}, nil, io.Discard, &stderr)
	assert.Equal(t, failed, code)
	assert.Contains(t, stderr.String(), "in use")
}

// running is a service that a test started.
type running struct {
	at   addresses
	stop context.CancelFunc
	end  chan error
	log  *bytes.Buffer // to be read after the end
}

func start(t *testing.T, args ...string) *running {
	t.Helper()
	s, err := readSettings(append([]string{"--grpc-address", "127.0.0.1:0", "--metrics-address", "127.0.0.1:0"}, args...), nil, io.Discard)
	require.NoError(t, err)
	ctx, stop := context.WithCancel(t.Context())
	r := &running{stop: stop, end: make(chan error, 1), log: &bytes.Buffer{}}
	ready := make(chan addresses, 1)
	go func() {
		r.end <- serve(ctx, s, slog.New(slog.NewTextHandler(r.log, nil)), func(a addresses) { ready <- a })
		close(r.end)
	}()
	t.Cleanup(func() {
		stop()
		<-r.end
	})
	select {
	case r.at = <-ready:
	case err := <-r.end:
		require.NoError(t, err)
	}
	return r
}

func dial(t *testing.T, r *running) *client.Client {
	t.Helper()
	c, err := client.Dial(r.at.grpc.String(), client.WithoutWaiting())
	require.NoError(t, err)
	t.Cleanup(func() { _ = c.Close() })
	return c
}

func item(n float64) *footwardv1.CheckItem {
	return &footwardv1.CheckItem{Check: &footwardv1.CheckItem_Bearing{Bearing: &footwardv1.CheckBearingRequest{
		Basis:   footwardv1.On(footwardv1.Basis_BASIS_EUROCODE),
		Contact: &footwardv1.SolidRectangle{SizeXMm: 500, SizeYMm: 500},
		Forces:  &footwardv1.ForcesAtFoot{NKn: n},
		Support: &footwardv1.Support{Medium: &footwardv1.Support_Given{Given: &footwardv1.GivenPressure{
			PressureKpa: 640, Source: "invented for the test", Medium: footwardv1.GivenMedium_GIVEN_MEDIUM_OTHER,
		}}},
	}}}
}

func scrape(t *testing.T, r *running) string {
	t.Helper()
	request, err := http.NewRequestWithContext(t.Context(), http.MethodGet, "http://"+r.at.metrics.String()+"/metrics", nil)
	require.NoError(t, err)
	transport := &http.Transport{}
	defer transport.CloseIdleConnections()
	answer, err := (&http.Client{Transport: transport}).Do(request)
	require.NoError(t, err)
	defer func() { _ = answer.Body.Close() }()
	text, err := io.ReadAll(answer.Body)
	require.NoError(t, err)
	assert.Equal(t, http.StatusOK, answer.StatusCode)
	return string(text)
}

func TestServesChecksHealthReflectionAndMetrics(t *testing.T) {
	r := start(t)
	c := dial(t, r)
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()

	h, err := grpc_health_v1.NewHealthClient(c.Conn()).Check(ctx, &grpc_health_v1.HealthCheckRequest{Service: "footward.v1.CheckService"})
	require.NoError(t, err)
	assert.Equal(t, grpc_health_v1.HealthCheckResponse_SERVING, h.GetStatus())

	ask, err := grpc_reflection_v1.NewServerReflectionClient(c.Conn()).ServerReflectionInfo(ctx)
	require.NoError(t, err)
	require.NoError(t, ask.Send(&grpc_reflection_v1.ServerReflectionRequest{
		MessageRequest: &grpc_reflection_v1.ServerReflectionRequest_ListServices{},
	}))
	told, err := ask.Recv()
	require.NoError(t, err)
	var services []string
	for _, s := range told.GetListServicesResponse().GetService() {
		services = append(services, s.GetName())
	}
	assert.Subset(t, services, []string{"footward.v1.CheckService", "footward.v1.CatalogService", "grpc.health.v1.Health"})
	require.NoError(t, ask.CloseSend())

	const passes = `footward_checks_total{basis="eurocode",check="bearing",verdict="pass"} `
	const refused = `footward_refused_fields_total{check="bearing",reason="out_of_range"} `
	assert.Contains(t, scrape(t, r), passes+"0\n")
	_, err = c.CheckBearing(ctx, item(-120).GetBearing())
	require.NoError(t, err)
	bad := item(-120).GetBearing()
	bad.Contact.SizeXMm = -1
	_, err = c.CheckBearing(ctx, bad)
	require.Equal(t, codes.InvalidArgument, status.Code(err))

	text := scrape(t, r)
	assert.Contains(t, text, passes+"1\n")
	assert.Contains(t, text, refused+"1\n")
	assert.Contains(t, text, `footward_governing_utilization_ratio_bucket{check="bearing",le="0.8"} 1`)
	assert.Contains(t, text, `grpc_server_handled_total{grpc_code="InvalidArgument",grpc_method="CheckBearing",grpc_service="footward.v1.CheckService",grpc_type="unary"} 1`)
	assert.Contains(t, text, "grpc_server_handling_seconds_bucket")

	r.stop()
	require.NoError(t, <-r.end)
	assert.Contains(t, r.log.String(), "code=InvalidArgument")
	assert.NotContains(t, r.log.String(), "invented for the test", "nothing that a caller sent is logged")
}

// TestDrainAnswersWhatIsUnderWay keeps a stream open across the signal to stop.
func TestDrainAnswersWhatIsUnderWay(t *testing.T) {
	r := start(t)
	c := dial(t, r)
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	stream, err := c.StreamChecks(ctx)
	require.NoError(t, err)
	one := func(n float64) {
		t.Helper()
		require.NoError(t, stream.Send(&footwardv1.StreamChecksRequest{Items: []*footwardv1.CheckItem{item(n)}}))
		m, err := stream.Recv()
		require.NoError(t, err)
		require.NotNil(t, m.GetOutcomes()[0].GetResult())
	}
	watch, err := grpc_health_v1.NewHealthClient(c.Conn()).Watch(ctx, &grpc_health_v1.HealthCheckRequest{})
	require.NoError(t, err)
	first, err := watch.Recv()
	require.NoError(t, err)
	require.Equal(t, grpc_health_v1.HealthCheckResponse_SERVING, first.GetStatus())

	one(-120)
	r.stop()
	then, err := watch.Recv()
	require.NoError(t, err)
	assert.Equal(t, grpc_health_v1.HealthCheckResponse_NOT_SERVING, then.GetStatus())
	one(-130)
	assert.Contains(t, scrape(t, r), "grpc_server_started_total", "metrics outlast the calls")
	require.NoError(t, stream.CloseSend())
	_, err = stream.Recv()
	require.ErrorIs(t, err, io.EOF)
	cancel() // ends the watch of health
	require.NoError(t, <-r.end)
	assert.Contains(t, r.log.String(), "cut_off=false")
	assert.NotContains(t, r.log.String(), "Health/Watch", "every client that watches health ends so")
}

func TestDrainCutsOffWhatDoesNotEnd(t *testing.T) {
	r := start(t, "--drain-timeout", "50ms")
	stream, err := dial(t, r).StreamChecks(t.Context())
	require.NoError(t, err)
	require.NoError(t, stream.Send(&footwardv1.StreamChecksRequest{Items: []*footwardv1.CheckItem{item(-1)}}))
	_, err = stream.Recv()
	require.NoError(t, err)
	r.stop()
	assert.ErrorIs(t, <-r.end, context.DeadlineExceeded)
	_, err = stream.Recv()
	assert.Error(t, err)
	assert.Contains(t, r.log.String(), "cut_off=true")
}

func TestReflectionCanBeTurnedOff(t *testing.T) {
	r := start(t, "--reflection=false")
	ask, err := grpc_reflection_v1.NewServerReflectionClient(dial(t, r).Conn()).ServerReflectionInfo(t.Context())
	require.NoError(t, err)
	_, err = ask.Recv()
	assert.Equal(t, codes.Unimplemented, status.Code(err))
}

func TestRunStopsAsAsked(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	var stderr bytes.Buffer
	ended := make(chan int)
	go func() {
		ended <- run(ctx, []string{"--grpc-address", "127.0.0.1:0", "--metrics-address", "", "--log-json"}, nil, io.Discard, &stderr)
	}()
	time.Sleep(100 * time.Millisecond)
	stop()
	assert.Equal(t, stopped, <-ended)
	assert.True(t, strings.HasPrefix(stderr.String(), "{"), stderr.String())
}
