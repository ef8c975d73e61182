package web_test

import (
	"context"
	"encoding/json"
	"io"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/encoding/protojson"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
	"footward.example/footward/service/server"
	"footward.example/footward/service/telemetry"
	"footward.example/footward/service/web"
)

// TestEveryRefusalIsAStatus holds the kinds of bad request to their HTTP status,
// their code and their words.
func TestEveryRefusalIsAStatus(t *testing.T) {
	p := produce(t)
	const asJSON = "application/json"
	deep := strings.Repeat(`{"basis":`, 20000) + "1" + strings.Repeat("}", 20000)
	for _, c := range []struct {
		name, method, path, kind, body string
		http                           int
		code                           codes.Code
		text                           string
	}{
		{"broken off", "POST", bearingPath, asJSON, bearing[:60], 400, codes.InvalidArgument, "the body is not JSON: it breaks off at column 61"},
		{"no JSON", "POST", bearingPath, asJSON, "basis: eurocode", 400, codes.InvalidArgument, "at column 1"},
		{"a list", "POST", bearingPath, asJSON, "[" + bearing + "]", 400, codes.InvalidArgument, "the body is a list; it must be an object with the fields of CheckBearingRequest"},
		{"two requests", "POST", bearingPath, asJSON, bearing + bearing, 400, codes.InvalidArgument, "after top-level value at line 2, column 125"},
		{"unknown field", "POST", bearingPath, asJSON, `{"basis": {"bases": 1}}`, 400, codes.InvalidArgument, `basis.bases: unknown field "bases"; known are eurocode, us_lrfd, us_asd`},
		{"unknown name", "POST", bearingPath, asJSON, `{"detail": "EUROPE"}`, 400, codes.InvalidArgument, `detail: is "EUROPE"; must be one of `},
		{"text for a number", "POST", bearingPath, asJSON, `{"forces": {"n_kn": "much"}}`, 400, codes.InvalidArgument, `forces.n_kn: is "much"; must be a number`},
		{"field twice", "POST", bearingPath, asJSON, `{"forces": {"n_kn": 1, "nKn": 2}}`, 400, codes.InvalidArgument, `forces.n_kn: stands here for the second time`},
		{"two of one", "POST", bearingPath, asJSON, `{"support": {"given": {}, "concrete": {}}}`, 400, codes.InvalidArgument, "support.concrete: excludes given"},
		{"no UTF-8", "POST", bearingPath, asJSON, "{\"label\": \"\xff\"}", 400, codes.InvalidArgument, "the body is not text in UTF-8: byte 0xFF at column 12"},
		{"very deep", "POST", bearingPath, asJSON, deep, 400, codes.InvalidArgument, ""},
		{"no number", "POST", bearingPath, asJSON, strings.Replace(bearing, "-120", `"NaN"`, 1), 400, codes.InvalidArgument, "forces.n_kn: is NaN"},
		{"number of an enum", "POST", bearingPath, asJSON, strings.Replace(bearing, `"GIVEN_MEDIUM_OTHER"`, "99", 1), 400, codes.InvalidArgument, "medium: must be one of"},
		{"nothing", "POST", bearingPath, asJSON, "", 400, codes.InvalidArgument, "is required"},
		{"query", "POST", bearingPath + "?label=x", asJSON, bearing, 400, codes.InvalidArgument, "query"},
		{"unknown method", "POST", "/footward.v1.CheckService/CheckLuck", asJSON, "{}", 404, codes.NotFound, "GET /"},
		{"unknown service", "POST", "/grpc.health.v1.Health/Check", asJSON, "{}", 404, codes.NotFound, "GET /"},
		{"path with more", "POST", bearingPath + "/", asJSON, "{}", 404, codes.NotFound, "GET /"},
		{"GET", "GET", bearingPath, "", "", 405, codes.Unimplemented, "only POST"},
		{"preflight of a web page", "OPTIONS", bearingPath, "", "", 405, codes.Unimplemented, "only POST"},
		{"too large", "POST", bearingPath, asJSON, strings.Repeat(" ", messageBytes+1), 413, codes.ResourceExhausted, "1048576 bytes"},
		{"form", "POST", bearingPath, "application/x-www-form-urlencoded", bearing, 415, codes.InvalidArgument, "application/json"},
		{"gRPC", "POST", bearingPath, "application/grpc", bearing, 415, codes.InvalidArgument, "application/json"},
		{"no type", "POST", bearingPath, "", bearing, 415, codes.InvalidArgument, "application/json"},
		{"other letters", "POST", bearingPath, asJSON + "; charset=latin1", bearing, 415, codes.InvalidArgument, "UTF-8"},
		{"stream", "POST", streamPath, asJSON, "{}", 415, codes.InvalidArgument, "application/x-ndjson"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := p.send(t, c.method, c.path, strings.NewReader(c.body), "Content-Type", c.kind)
			assert.Equal(t, c.http, r.StatusCode, r.body)
			assert.Equal(t, c.code, r.status(t).Code())
			assert.Contains(t, r.status(t).Message(), c.text)
			assert.Empty(t, r.Header.Get("Access-Control-Allow-Origin"))
			assert.Equal(t, "nosniff", r.Header.Get("X-Content-Type-Options"))
			assert.NotEmpty(t, r.Header.Get("Date"))
			if c.http == http.StatusMethodNotAllowed {
				assert.Equal(t, "POST", r.Header.Get("Allow"))
			}
		})
	}

	// A body of unknown length, and compressed ones.
	r := p.send(t, "POST", bearingPath, io.MultiReader(strings.NewReader(strings.Repeat(" ", 2*messageBytes))), "Content-Type", asJSON)
	assert.Equal(t, http.StatusRequestEntityTooLarge, r.StatusCode)
	r = p.post(t, bearingPath, bearing, "Content-Encoding", "gzip")
	assert.Equal(t, http.StatusUnsupportedMediaType, r.StatusCode)
	assert.Contains(t, r.status(t).Message(), "compression")
	for _, timeout := range []string{"0", "-1", "soon", "NaN", "Inf", "3601"} {
		r = p.post(t, bearingPath, bearing, "Request-Timeout", timeout)
		assert.Equal(t, http.StatusBadRequest, r.StatusCode, timeout)
		assert.Contains(t, r.status(t).Message(), "Request-Timeout")
	}
	assert.NotContains(t, p.log.String(), "level=ERROR")
}

// TestAMessageMayBeLargerThanItsJSON: a list of numbers grows fourfold, and is
// refused for its length, not as something to be tried again.
func TestAMessageMayBeLargerThanItsJSON(t *testing.T) {
	s, err := server.New(server.Options{Web: true, MessageBytes: messageBytes})
	require.NoError(t, err)
	t.Cleanup(s.Stop)
	r := serve(t, s.Web(), web.Options{}).post(t, footwardv1.ColumnBaseService_SizeColumnBase_FullMethodName,
		`{"offer": {"thickness_mm": [1`+strings.Repeat(",1", messageBytes/2-30)+"]}}")
	assert.Equal(t, http.StatusBadRequest, r.StatusCode, r.body)
	assert.Contains(t, r.body, "offer.thickness_mm")
}

// FuzzBodies sends bytes to a check: each is answered or refused, in JSON.
func FuzzBodies(f *testing.F) {
	p := produce(f)
	for _, i := range demo(f) {
		body, err := protojson.Marshal(check(i))
		require.NoError(f, err)
		f.Add(body)
	}
	f.Add([]byte(bearing))
	f.Add([]byte(`{"basis": null, "forces": {"n_kn": "-Infinity"}}`))
	f.Fuzz(func(t *testing.T, body []byte) {
		for _, path := range []string{bearingPath, footwardv1.CheckService_CheckMany_FullMethodName} {
			r := p.post(t, path, string(body))
			if r.StatusCode != http.StatusOK {
				assert.Contains(t, []int{http.StatusBadRequest, http.StatusRequestEntityTooLarge}, r.StatusCode, r.body)
				assert.NotEmpty(t, r.status(t).Message())
				continue
			}
			assert.True(t, json.Valid([]byte(r.body)), r.body)
			assert.NotContains(t, r.body, "NaN")
		}
	})
}

// TestStatusesOfCallsHaveTheirHTTPStatus: whatever stands before a handler may
// answer these.
func TestStatusesOfCallsHaveTheirHTTPStatus(t *testing.T) {
	for code, want := range map[codes.Code]int{
		codes.InvalidArgument: 400, codes.FailedPrecondition: 400, codes.OutOfRange: 400, codes.Unauthenticated: 401,
		codes.PermissionDenied: 403, codes.NotFound: 404, codes.ResourceExhausted: 429, codes.Internal: 500,
		codes.Unknown: 500, codes.Unimplemented: 501, codes.Unavailable: 503, codes.DeadlineExceeded: 504,
	} {
		s := serveFake(t, web.Options{}, func(context.Context) error { return status.Error(code, "Maß ≥ 3 mm") })
		r := s.post(t, bearingPath, "{}")
		assert.Equal(t, want, r.StatusCode, code)
		assert.Equal(t, code, r.status(t).Code())
		assert.Equal(t, "Maß ≥ 3 mm", r.status(t).Message())
		assert.Equal(t, want == 429 || want == 503, r.Header.Get("Retry-After") == "1", code)
		assert.Equal(t, want == 401, r.Header.Get("WWW-Authenticate") == "Bearer", code)
	}
}

func TestAServiceMaySayWhenToRetry(t *testing.T) {
	s := serveFake(t, web.Options{}, func(ctx context.Context) error {
		_ = grpc.SetHeader(ctx, metadata.Pairs("retry-after", "7"))
		return status.Error(codes.ResourceExhausted, "full")
	})
	assert.Equal(t, "7", s.post(t, bearingPath, "{}").Header.Get("Retry-After"))
}

func TestPanicBecomesAnID(t *testing.T) {
	log := &record{}
	s := serveFake(t, web.Options{}, func(context.Context) error { panic("secret") }, guard.RecoverUnary(logTo(log), (*telemetry.Metrics)(nil)))
	for range 2 {
		r := s.post(t, bearingPath, "{}")
		assert.Equal(t, http.StatusInternalServerError, r.StatusCode)
		assert.Contains(t, r.status(t).Message(), "internal error, id ")
		assert.NotContains(t, r.body, "secret")
	}
	assert.Contains(t, log.String(), "stack=")
}

// TestHeadersReachTheCall: those of a call pass, and no others.
func TestHeadersReachTheCall(t *testing.T) {
	var got metadata.MD
	s := serveFake(t, web.Options{}, func(ctx context.Context) error {
		got, _ = metadata.FromIncomingContext(ctx)
		return grpc.SetHeader(ctx, metadata.Pairs("x-request-id", got.Get("x-request-id")[0]))
	})
	r := s.post(t, bearingPath, "{}", "X-Request-Id", "41-B2", "Authorization", "Bearer of tidings",
		"Traceparent", "00-0af7651916cd43dd8448eb211c80319c-b7ad6b7169203331-01", "Cookie", "a=b",
		"X-Server-Timeout", "0.000001", "Grpc-Timeout", "1n", "Connect-Protocol-Version", "1")
	require.Equal(t, http.StatusOK, r.StatusCode, r.body)
	assert.Equal(t, "41-B2", r.Header.Get("X-Request-Id"))
	assert.Equal(t, []string{"Bearer of tidings"}, got.Get("authorization"))
	assert.Len(t, got.Get("traceparent"), 1)
	for _, name := range []string{"cookie", "x-server-timeout", "connect-protocol-version"} {
		assert.Empty(t, got.Get(name), name)
	}

	r = s.post(t, bearingPath, "{}", "X-Request-Id", strings.Repeat("x", 40<<10))
	assert.Equal(t, http.StatusRequestHeaderFieldsTooLarge, r.StatusCode)
}
