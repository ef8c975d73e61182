package telemetry_test

import (
	"strings"
	"testing"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/prometheus/client_golang/prometheus/testutil"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/telemetry"
)

func TestMetricsFollowTheConventions(t *testing.T) {
	registry := prometheus.NewRegistry()
	m, err := telemetry.New(registry)
	require.NoError(t, err)
	loads := map[string]func() (busy, waiting int){
		"small": func() (busy, waiting int) { return 1, 2 }, "long": func() (busy, waiting int) { return 3, 4 },
	}
	require.NoError(t, m.Load(loads))
	assert.Error(t, m.Load(loads), "of two servers")
	problems, err := testutil.GatherAndLint(registry)
	require.NoError(t, err)
	assert.Empty(t, problems)

	_, err = telemetry.New(registry)
	assert.Error(t, err, "twice in one registry")
}

// TestEverySeriesExistsFromTheStart counts the combinations of the labels, and
// holds their number to it whatever is counted.
func TestEverySeriesExistsFromTheStart(t *testing.T) {
	registry := prometheus.NewRegistry()
	m, err := telemetry.New(registry)
	require.NoError(t, err)
	count := func() map[string]int {
		families, err := registry.Gather()
		require.NoError(t, err)
		out := map[string]int{}
		for _, f := range families {
			if name := f.GetName(); strings.HasPrefix(name, "footward_") {
				out[name] = len(f.GetMetric())
			}
		}
		return out
	}
	kinds, bases, verdicts := len(footwardv1.CheckKind_name)-1, len(footwardv1.Basis_name)-1, len(footwardv1.Verdict_name)-1
	fieldReasons, callReasons := len(footwardv1.FieldReason_name)-1, len(footwardv1.CallReason_name)-3 // fields refused are counted by field, and too large answers were worked out
	const listeners = 2
	want := map[string]int{
		"footward_build_info":                       1,
		"footward_calls_turned_away_total":          callReasons,
		"footward_checks_total":                     kinds * bases * verdicts,
		"footward_connections_accepted_total":       listeners,
		"footward_connections_open":                 listeners,
		"footward_connections_turned_away_total":    listeners * 3,
		"footward_governing_utilization_ratio":      kinds,
		"footward_health_watches_turned_away_total": 1,
		"footward_panics_total":                     1,
		"footward_refused_fields_total":             kinds * fieldReasons,
	}
	assert.Equal(t, want, count())

	u := 0.9
	for kind := range footwardv1.CheckKind(kinds + 5) {
		for basis := range footwardv1.Basis(bases + 5) {
			m.Check(kind, &footwardv1.CheckResult{Basis: basis, Verdict: footwardv1.Verdict_VERDICT_PASS, GoverningUtilization: &u})
		}
		m.Refused(kind, []*footwardv1.FieldViolation{{Reason: 99}, {Reason: footwardv1.FieldReason_FIELD_REASON_MISSING}})
	}
	for reason := range footwardv1.CallReason(99) {
		m.TurnedAway(reason)
	}
	m.Panicked()
	assert.Equal(t, want, count(), "values that the contract does not have make no series")
}

func TestNoMetricsCountNothing(*testing.T) {
	var m *telemetry.Metrics
	m.Check(footwardv1.CheckKind_CHECK_KIND_WELD, &footwardv1.CheckResult{})
	m.Refused(footwardv1.CheckKind_CHECK_KIND_WELD, nil)
	m.Panicked()
	m.TurnedAway(footwardv1.CallReason_CALL_REASON_OVERLOADED)
}
