package watch

import (
	"fmt"
	"math"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/status"

	"footward.example/footward/client"
	"footward.example/footward/client/footward/reading"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

func TestPromtoolPassesConfigurationRulesAndAlerts(t *testing.T) {
	programs(t)
	for _, args := range [][]string{
		{"check", "config", "prometheus.yml"}, {"check", "rules", "rules.yml", "alerts.yml"}, {"test", "rules", "tests.yml"},
	} {
		c := exec.CommandContext(t.Context(), "promtool", args...)
		c.Dir = deploy + "prometheus"
		out, err := c.CombinedOutput()
		assert.NoError(t, err, "%v\n%s", args, out)
	}
}

// How many calls the test makes of each kind.
const (
	goodBearing, badBearing = 37, 5
	goodWeld, badWeld       = 11, 3
	batches, inBatch        = 4, 6
)

const traceID = "4bf92f3577b34da6a3ce929d0e0e4736"

// demo returns the request of a check of the demo.
func demo(t *testing.T, file string) *footwardv1.CheckItem {
	t.Helper()
	f, err := os.Open(filepath.Join("../../testdata/demo", file))
	require.NoError(t, err)
	defer func() { _ = f.Close() }()
	items, err := reading.Read(f)
	require.NoError(t, err)
	return items[0].Check
}

// drive makes the calls, the first of them in a trace, and returns how many fields
// were refused of each kind.
func drive(t *testing.T, at string) (refused map[string]float64) {
	t.Helper()
	refused = map[string]float64{}
	c, err := client.Dial(at)
	require.NoError(t, err)
	defer func() { _ = c.Close() }()
	ctx := metadata.AppendToOutgoingContext(t.Context(), "traceparent", "00-"+traceID+"-00f067aa0ba902b7-01")
	bearing, weld := demo(t, "1-bearing.yaml").GetBearing(), demo(t, "3-weld.yaml").GetWeld()
	for range goodBearing {
		answer, err := c.CheckBearing(ctx, bearing)
		require.NoError(t, err)
		require.Equal(t, footwardv1.Verdict_VERDICT_PASS, answer.GetResult().GetVerdict())
		ctx = t.Context()
	}
	for range goodWeld {
		_, err := c.CheckWeld(ctx, weld)
		require.NoError(t, err)
	}
	var items []*footwardv1.CheckItem
	for range inBatch {
		items = append(items, &footwardv1.CheckItem{Check: &footwardv1.CheckItem_Weld{Weld: weld}})
	}
	for range batches {
		_, err := c.CheckMany(ctx, &footwardv1.CheckManyRequest{Items: items})
		require.NoError(t, err)
	}
	for range badBearing {
		_, err := c.CheckBearing(ctx, &footwardv1.CheckBearingRequest{})
		require.Equal(t, codes.InvalidArgument, status.Code(err))
		refused["bearing"] += float64(len(client.Violations(err)))
	}
	for range badWeld {
		_, err := c.CheckWeld(ctx, &footwardv1.CheckWeldRequest{})
		require.Equal(t, codes.InvalidArgument, status.Code(err))
		refused["weld"] += float64(len(client.Violations(err)))
	}
	require.NotZero(t, refused["bearing"]*refused["weld"])
	return refused
}

// TestPrometheusSeesWhatTheServiceDid to the last call, and that it is gone when
// it is killed.
func TestPrometheusSeesWhatTheServiceDid(t *testing.T) {
	programs(t)
	if testing.Short() {
		t.Skip("takes seconds; .ci/watch runs it")
	}
	calls, metrics, kill := startService(t)
	p := startPrometheus(t, metrics)
	p.arrives(t, `up{job="footward"}`, 1)
	p.arrives(t, `sum(grpc_server_handled_total)`, 0)
	p.arrives(t, `footward_build_info`, 1)

	refused := drive(t, calls)
	figures := map[string]float64{
		`grpc_server_handled_total{grpc_method="CheckBearing", grpc_code="OK"}`:              goodBearing,
		`grpc_server_handled_total{grpc_method="CheckBearing", grpc_code="InvalidArgument"}`: badBearing,
		`grpc_server_handled_total{grpc_method="CheckWeld", grpc_code="OK"}`:                 goodWeld,
		`grpc_server_handled_total{grpc_method="CheckWeld", grpc_code="InvalidArgument"}`:    badWeld,
		`grpc_server_handled_total{grpc_method="CheckMany", grpc_code="OK"}`:                 batches,
		`sum(grpc_server_handled_total{grpc_service=~"footward.*"})`:                         goodBearing + badBearing + goodWeld + badWeld + batches,
		`sum(grpc_server_started_total{grpc_service=~"footward.*"})`:                         goodBearing + badBearing + goodWeld + badWeld + batches,
		`grpc_server_handling_seconds_count{grpc_method="CheckBearing"}`:                     goodBearing + badBearing,
		`grpc_server_handling_seconds_bucket{grpc_method="CheckBearing", le="+Inf"}`:         goodBearing + badBearing,
		`footward_checks_total{check="bearing", basis="eurocode", verdict="pass"}`:           goodBearing,
		`sum(footward_checks_total{check="weld"})`:                                           goodWeld + batches*inBatch,
		`sum(footward_checks_total)`:                                                         goodBearing + goodWeld + batches*inBatch,
		`footward_governing_utilization_ratio_count{check="bearing"}`:                        goodBearing,
		`sum(footward_refused_fields_total{check="bearing"})`:                                refused["bearing"],
		`sum(footward_refused_fields_total)`:                                                 refused["bearing"] + refused["weld"],
		`sum(footward_calls_in_flight{grpc_service=~"footward.*"})`:                          0,
		`sum(footward_calls_turned_away_total)`:                                              0,
		`footward_panics_total`:                                                              0,
	}
	for promQL, want := range figures {
		p.arrives(t, promQL, want)
	}
	var exemplars []struct {
		Exemplars []struct{ Labels map[string]string }
	}
	until(t, "an exemplar", func() (bool, string) {
		err := p.get(t.Context(), "query_exemplars", url.Values{"query": {"grpc_server_handling_seconds_bucket"},
			"start": {"0"}, "end": {"9999999999"}}, &exemplars)
		return err == nil && len(exemplars) > 0, fmt.Sprint(err)
	})
	require.Len(t, exemplars, 1)
	assert.Equal(t, traceID, exemplars[0].Exemplars[0].Labels["trace_id"])

	p.everyQueryHasData(t)
	p.everyRuleIsHealthy(t)
	for promQL, want := range figures {
		got, err := p.query(t.Context(), promQL)
		require.NoError(t, err)
		assert.Equal(t, []float64{want}, got, "%s, and no more later", promQL)
	}

	kill()
	p.arrives(t, `up{job="footward"}`, 0)
	for _, name := range []string{"FootwardDown", "FootwardNoData"} {
		until(t, name, func() (bool, string) {
			var data struct {
				Alerts []struct {
					State  string
					Labels map[string]string
				}
			}
			err := p.get(t.Context(), "alerts", nil, &data)
			for _, a := range data.Alerts {
				if a.Labels["alertname"] == name {
					return a.State == "pending" || a.State == "firing", a.State
				}
			}
			return false, fmt.Sprint(data, err)
		})
	}
}

// everyQueryHasData runs what the dashboard asks and what the rules record. An
// alert only needs to be understood: it has data when something is wrong.
func (p *watcher) everyQueryHasData(t *testing.T) {
	t.Helper()
	for _, panel := range panels(t) {
		for _, q := range panel.Targets {
			p.hasData(t, panel.Title, ready(q.Expr))
		}
	}
	for _, r := range rules(t, "rules.yml") {
		p.hasData(t, r.Record, r.Expr)
		p.hasData(t, r.Record, r.Record)
	}
	for _, r := range rules(t, "alerts.yml") {
		got, err := p.query(t.Context(), r.Expr)
		assert.NoError(t, err, r.Alert)
		assert.Empty(t, got, "%s: nothing is wrong", r.Alert)
	}
}

// hasData waits for a figure: a rate is none until two scrapes saw it grow.
func (p *watcher) hasData(t *testing.T, where, promQL string) {
	t.Helper()
	until(t, where+": "+promQL, func() (bool, string) {
		got, err := p.query(t.Context(), promQL)
		return err == nil && slices.ContainsFunc(got, func(v float64) bool { return !math.IsNaN(v) }), fmt.Sprint(got, err)
	})
}

// everyRuleIsHealthy asks Prometheus what it makes of the rules it evaluates.
func (p *watcher) everyRuleIsHealthy(t *testing.T) {
	t.Helper()
	until(t, "healthy rules", func() (bool, string) {
		var data struct {
			Groups []struct {
				Rules []struct{ Name, Health, LastError string }
			}
		}
		err := p.get(t.Context(), "rules", nil, &data)
		seen := 0
		for _, g := range data.Groups {
			for _, r := range g.Rules {
				if r.Health != "ok" {
					return false, fmt.Sprint(r)
				}
				seen++
			}
		}
		return err == nil && seen == len(rules(t, "rules.yml"))+len(rules(t, "alerts.yml")), fmt.Sprint(seen, err)
	})
}
