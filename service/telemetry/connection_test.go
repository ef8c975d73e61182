package telemetry_test

import (
	"testing"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/prometheus/client_golang/prometheus/testutil"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/service/telemetry"
)

func TestSeriesOfConnectionsFollowTheConventions(t *testing.T) {
	registry := prometheus.NewRegistry()
	m, err := telemetry.New(registry)
	require.NoError(t, err)
	require.NoError(t, m.Watches(func() int { return 3 }))
	require.NoError(t, m.Messages(func() (arriving, decoded int) { return 1, 2 }))
	problems, err := testutil.GatherAndLint(registry)
	require.NoError(t, err)
	assert.Empty(t, problems)

	c := m.Connections(telemetry.GRPC)
	c.Accepted()
	c.Accepted()
	c.Closed()
	c.Full()
	c.OfAddress()
	c.Silent()
	m.WatchTurnedAway()
	want := map[string]float64{
		"footward_connections_accepted_total": 2, "footward_connections_open": 1, "footward_connections_turned_away_total": 3,
		"footward_health_watches": 3, "footward_health_watches_turned_away_total": 1, "footward_messages_bytes": 3,
	}
	families, err := registry.Gather()
	require.NoError(t, err)
	got := map[string]float64{}
	for _, f := range families {
		for _, s := range f.GetMetric() {
			if _, asked := want[f.GetName()]; asked {
				got[f.GetName()] += s.GetCounter().GetValue() + s.GetGauge().GetValue()
			}
		}
	}
	assert.Equal(t, want, got)
}

func TestNoMetricsCountNoConnections(*testing.T) {
	var m *telemetry.Metrics
	c := m.Connections(telemetry.HTTP)
	c.Accepted()
	c.Closed()
	c.Full()
	c.OfAddress()
	c.Silent()
	m.WatchTurnedAway()
}
