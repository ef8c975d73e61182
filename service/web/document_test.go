package web_test

import (
	"context"
	"encoding/json"
	"io"
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/service/guard"
	"footward.example/footward/service/server"
	"footward.example/footward/service/version"
	"footward.example/footward/service/web"
)

func TestHealthSaysWhenTheServiceLeaves(t *testing.T) {
	s := serveFake(t, web.Options{}, func(context.Context) error { return nil })
	r := s.send(t, http.MethodGet, "/healthz", nil)
	assert.Equal(t, http.StatusOK, r.StatusCode)
	assert.JSONEq(t, `{"status":"SERVING"}`, r.body)
	assert.Equal(t, "no-store", r.Header.Get("Cache-Control"))
	drained := make(chan error)
	go func() { drained <- s.Drain(t.Context(), time.Second) }()
	for r.StatusCode == http.StatusOK {
		r = s.send(t, http.MethodGet, "/healthz", nil)
	}
	assert.Equal(t, http.StatusServiceUnavailable, r.StatusCode)
	assert.JSONEq(t, `{"status":"NOT_SERVING"}`, r.body)
	assert.NoError(t, <-drained)
}

// TestHealthAndVersionNeedNoToken, as health over gRPC does not.
func TestHealthAndVersionNeedNoToken(t *testing.T) {
	s, err := server.New(server.Options{Web: true, Callers: guard.Callers{Names: []string{"nobody"}}})
	require.NoError(t, err)
	t.Cleanup(s.Stop)
	w := serve(t, s.Web(), web.Options{})
	assert.Equal(t, http.StatusForbidden, w.post(t, bearingPath, bearing).StatusCode)
	assert.Equal(t, http.StatusOK, w.send(t, http.MethodGet, "/healthz", nil).StatusCode)
	r := w.send(t, http.MethodGet, "/version", nil)
	assert.Equal(t, http.StatusOK, r.StatusCode)
	var got map[string]any
	require.NoError(t, json.Unmarshal([]byte(r.body), &got))
	assert.Equal(t, map[string]any{"service_version": version.String(), "kernel_revision": float64(basis.Revision)}, got)
}

func TestFurtherDocumentsStandInTheIndex(t *testing.T) {
	hello := http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { _, _ = io.WriteString(w, "{}\n") })
	s := serveFake(t, web.Options{Documents: map[string]http.Handler{"/contract.json": hello}}, func(context.Context) error { return nil })
	assert.Equal(t, "{}\n", s.send(t, http.MethodGet, "/contract.json", nil).body)
	assert.Contains(t, s.send(t, http.MethodGet, "/", nil).body, "  GET  /contract.json\n")
	r := s.send(t, http.MethodHead, "/contract.json", nil)
	assert.Equal(t, http.StatusOK, r.StatusCode)
	r = s.send(t, http.MethodPost, "/contract.json", nil)
	assert.Equal(t, http.StatusMethodNotAllowed, r.StatusCode)
	assert.Equal(t, "GET, HEAD", r.Header.Get("Allow"))
	for _, path := range []string{"/", "/healthz", "contract.json"} {
		_, err := web.New(noCalls{}, web.Options{MessageBytes: 1, Documents: map[string]http.Handler{path: hello}})
		assert.ErrorContains(t, err, "no path for a further document", path)
	}
}

// TestEveryBodyEndsItsLine, so that the prompt of a shell stands on its own.
func TestEveryBodyEndsItsLine(t *testing.T) {
	p := produce(t)
	for _, r := range []reply{
		p.post(t, bearingPath, bearing), p.post(t, bearingPath, "{}"), p.post(t, bearingPath, "nonsense"), p.post(t, "/x", "{}"),
		p.send(t, http.MethodGet, bearingPath, nil), p.send(t, http.MethodGet, "/", nil), p.send(t, http.MethodGet, "/healthz", nil),
		p.send(t, http.MethodGet, "/version", nil), p.post(t, manyPath, `{"items": [{}]}`),
	} {
		assert.True(t, strings.HasSuffix(r.body, "\n"), r.body)
		assert.False(t, strings.HasSuffix(r.body, "\n\n"), r.body)
		if r.ContentLength >= 0 {
			assert.EqualValues(t, len(r.body), r.ContentLength)
		}
	}
}
