package web_test

import (
	"context"
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"

	"footward.example/footward/service/web"
)

// ask posts to a path under a name.
func (s *served) ask(t *testing.T, host, path string) reply {
	t.Helper()
	return s.send(t, http.MethodPost, path, nil, "Content-Type", "application/json", hostHeader, host)
}

func TestCallsByOtherNamesAreRefused(t *testing.T) {
	called := 0
	s := serveFake(t, web.Options{Hosts: []string{"checks.example.org", "[fd00::7]"}}, func(context.Context) error { called++; return nil })
	for host, want := range map[string]int{
		"localhost": 200, "LOCALHOST:8061": 200, "localhost.": 200, "127.0.0.1:8061": 200, "127.9.9.9": 200, "[::1]:8061": 200, "::1": 200,
		"checks.example.org": 200, "Checks.Example.org:443": 200, "[fd00::7]:80": 200,
		"evil.example": 403, "evil.example:8061": 403, "checks.example.org.evil.example": 403, "10.0.0.1": 403, "localhost.evil.example": 403,
		"127.0.0.1.evil.example": 403, "[fd00::8]": 403,
	} {
		before := called
		r := s.ask(t, host, bearingPath)
		assert.Equal(t, want, r.StatusCode, host)
		assert.Equal(t, want == 200, called > before, host)
		if want == http.StatusForbidden {
			assert.Equal(t, codes.PermissionDenied, r.status(t).Code())
			assert.Contains(t, r.status(t).Message(), "--http-hosts")
			assert.Equal(t, want, s.send(t, http.MethodGet, "/version", nil, hostHeader, host).StatusCode)
		}
	}
}

func TestAnyNameIsTakenWhereNoneIsSet(t *testing.T) {
	s := serveFake(t, web.Options{}, func(context.Context) error { return nil })
	assert.Equal(t, http.StatusOK, s.ask(t, "evil.example", bearingPath).StatusCode)
}

// TestPathsAreTakenAsTheyAreWritten: a proxy in front sees no other path than this
// one does.
func TestPathsAreTakenAsTheyAreWritten(t *testing.T) {
	s := serveFake(t, web.Options{}, func(context.Context) error { return nil })
	for _, path := range []string{
		"/footward.v1.CheckService%2FCheckBearing", "/footward.v1.CheckService%2fCheckBearing", "/footward.v1.CheckService/Check%42earing",
		"/%66ootward.v1.CheckService/CheckBearing", "//footward.v1.CheckService/CheckBearing", "/./footward.v1.CheckService/CheckBearing",
	} {
		r := s.post(t, path, "{}")
		assert.Equal(t, http.StatusNotFound, r.StatusCode, path)
	}
}

func TestAPathThatIsNearlyOneIsTold(t *testing.T) {
	s := serveFake(t, web.Options{}, func(context.Context) error { return nil })
	for path, want := range map[string]string{
		"/footward.v1.checkservice/checkbearing":  bearingPath,
		"/footward.v1.CheckService/CheckBearng":   bearingPath,
		"/CheckBearing":                           bearingPath,
		"/footward.v1.CheckService/CheckBearing/": "",
		"/footward.v1.CheckService/Nonsense":      "",
		"/grpc.health.v1.Health/Check":            "",
	} {
		r := s.post(t, path, "{}")
		require.Equal(t, http.StatusNotFound, r.StatusCode)
		if want == "" {
			assert.NotContains(t, r.body, "nearest", path)
		} else {
			assert.Contains(t, r.status(t).Message(), ", nearest is "+want+";", path)
		}
	}
}
