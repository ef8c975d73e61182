package web_test

import (
	"context"
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/proto/schema"
	"footward.example/footward/service/web"
)

func TestTheContractIsServedAsOpenAPI(t *testing.T) {
	s := serveFake(t, web.Options{}, func(context.Context) error { return nil })
	r := s.send(t, http.MethodGet, "/openapi.json", nil)
	assert.Equal(t, http.StatusOK, r.StatusCode)
	assert.Equal(t, "application/json", r.Header.Get("Content-Type"))
	assert.Equal(t, string(schema.OpenAPI()), r.body)
	assert.Contains(t, s.send(t, http.MethodGet, "/", nil).body, "GET  /openapi.json\n")
	assert.Equal(t, http.StatusMethodNotAllowed, s.send(t, http.MethodPost, "/openapi.json", nil).StatusCode)
}
