package telemetry_test

import (
	"bytes"
	"context"
	"log/slog"
	"strings"
	"testing"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/prometheus/client_golang/prometheus/testutil"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/telemetry"
)

func TestMetricsFollowTheConventions(t *testing.T) {
	registry := prometheus.NewRegistry()
	m, err := telemetry.New(registry)
	require.NoError(t, err)
	require.NoError(t, m.Load(func() (busy, waiting int) { return 1, 2 }))
	assert.Error(t, m.Load(nil), "of two servers")
	problems, err := testutil.GatherAndLint(registry)
	require.NoError(t, err)
	assert.Empty(t, problems)

	_, err = telemetry.New(registry)
	assert.Error(t, err, "twice in one registry")
}

// TestEverySeriesExistsFromTheStart counts the combinations of the labels.
func TestEverySeriesExistsFromTheStart(t *testing.T) {
	registry := prometheus.NewRegistry()
	m, err := telemetry.New(registry)
	require.NoError(t, err)
	count := func() (checks, refused int) {
		checks, err := testutil.GatherAndCount(registry, "footward_checks_total")
		require.NoError(t, err)
		refused, err = testutil.GatherAndCount(registry, "footward_refused_fields_total")
		require.NoError(t, err)
		return checks, refused
	}
	checks, refused := count()
	assert.Equal(t, 10*3*4, checks)
	assert.Equal(t, 10*6, refused)

	u := 0.9
	for kind := range footwardv1.CheckKind(9) {
		for basis := range footwardv1.Basis(9) {
			m.Check(kind, &footwardv1.CheckResult{Basis: basis, Verdict: footwardv1.Verdict_VERDICT_PASS, GoverningUtilization: &u})
		}
		m.Refused(kind, []*footwardv1.FieldViolation{{Reason: 99}, {Reason: footwardv1.FieldReason_FIELD_REASON_MISSING}})
	}
	for reason := range footwardv1.CallReason(99) {
		m.TurnedAway(reason)
	}
	away, err := testutil.GatherAndCount(registry, "footward_calls_turned_away_total")
	require.NoError(t, err)
	assert.Equal(t, 4, away, "all but refused fields, which have series of their own")
	again, refusedAgain := count()
	assert.Equal(t, checks, again, "values that the contract does not have make no series")
	assert.Equal(t, refused, refusedAgain)
}

func TestNoMetricsCountNothing(*testing.T) {
	var m *telemetry.Metrics
	m.Check(footwardv1.CheckKind_CHECK_KIND_WELD, &footwardv1.CheckResult{})
	m.Refused(footwardv1.CheckKind_CHECK_KIND_WELD, nil)
	m.Panicked()
	m.TurnedAway(footwardv1.CallReason_CALL_REASON_OVERLOADED)
}

func TestLogLevelFollowsTheFault(t *testing.T) {
	for code, level := range map[codes.Code]string{
		codes.OK: "DEBUG", codes.InvalidArgument: "INFO", codes.Canceled: "INFO", codes.ResourceExhausted: "DEBUG", codes.Unauthenticated: "DEBUG",
		codes.Internal: "ERROR", codes.Unknown: "ERROR",
	} {
		var out bytes.Buffer
		log := slog.New(slog.NewTextHandler(&out, &slog.HandlerOptions{Level: slog.LevelDebug}))
		_, err := telemetry.LogUnary(log)(context.Background(), "secret", &grpc.UnaryServerInfo{FullMethod: "/a/b"},
			func(context.Context, any) (any, error) { return nil, status.Error(code, "private") })
		assert.Equal(t, code, status.Code(err))
		assert.Contains(t, out.String(), "level="+level)
		assert.Contains(t, out.String(), "code="+code.String())
		assert.False(t, strings.Contains(out.String(), "secret") || strings.Contains(out.String(), "private"))
	}
}
