package watch

import (
	"encoding/json"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"footward.example/footward/service/server"
	"footward.example/footward/service/telemetry"
)

const deploy = "../../deploy/"

// rule is a rule that records or alerts.
type rule struct {
	Record, Alert, Expr string
	Labels, Annotations map[string]string
}

func rules(t *testing.T, file string) (out []rule) {
	t.Helper()
	text, err := os.ReadFile(deploy + "prometheus/" + file)
	require.NoError(t, err)
	var f struct{ Groups []struct{ Rules []rule } }
	require.NoError(t, yaml.Unmarshal(text, &f))
	for _, g := range f.Groups {
		out = append(out, g.Rules...)
	}
	require.NotEmpty(t, out)
	return out
}

// panel is a part of the dashboard.
type panel struct {
	ID      int
	Title   string
	Targets []struct{ Expr string }
}

func panels(t *testing.T) []panel {
	t.Helper()
	text, err := os.ReadFile(deploy + "dashboard.json")
	require.NoError(t, err)
	var d struct{ Panels []panel }
	require.NoError(t, json.Unmarshal(text, &d))
	require.NotEmpty(t, d.Panels)
	return d.Panels
}

func TestEveryAlertHasASeverityAndARunbook(t *testing.T) {
	text, err := os.ReadFile(deploy + "prometheus/README.md")
	require.NoError(t, err)
	headings := map[string]bool{}
	for _, line := range strings.Split(string(text), "\n") {
		if name, is := strings.CutPrefix(line, "## "); is {
			headings[name] = true
		}
	}
	for _, r := range rules(t, "alerts.yml") {
		assert.Contains(t, []string{"page", "ticket"}, r.Labels["severity"], r.Alert)
		assert.NotEmpty(t, r.Annotations["summary"], r.Alert)
		assert.Equal(t, "deploy/prometheus/README.md#"+strings.ToLower(r.Alert), r.Annotations["runbook"])
		assert.True(t, headings[r.Alert], "%s has no heading in the runbook", r.Alert)
		delete(headings, r.Alert)
	}
	assert.Empty(t, headings, "headings without an alert")
}

func TestEveryAlertIsTested(t *testing.T) {
	text, err := os.ReadFile(deploy + "prometheus/tests.yml")
	require.NoError(t, err)
	var f struct {
		Tests []struct {
			Alerts []struct {
				Name    string `yaml:"alertname"`
				Expects []any  `yaml:"exp_alerts"`
			} `yaml:"alert_rule_test"`
		}
	}
	require.NoError(t, yaml.Unmarshal(text, &f))
	fires, still := map[string]bool{}, map[string]bool{}
	for _, test := range f.Tests {
		for _, a := range test.Alerts {
			if len(a.Expects) > 0 {
				fires[a.Name] = true
			} else {
				still[a.Name] = true
			}
		}
	}
	for _, r := range rules(t, "alerts.yml") {
		assert.True(t, fires[r.Alert], "no test sees %s fire", r.Alert)
	}
	assert.NotEmpty(t, still)
}

var names = regexp.MustCompile(`\b(?:footward|grpc|process|go|job|job_check_verdict)[_:][a-z0-9_:]+\b`)

// TestQueriesNameSeriesThatExist: a query for a series that nobody makes is no
// error, it just shows nothing.
func TestQueriesNameSeriesThatExist(t *testing.T) {
	registry := prometheus.NewRegistry()
	metrics, err := telemetry.New(registry)
	require.NoError(t, err)
	s, err := server.New(server.Options{Metrics: metrics, AtOnce: 1})
	require.NoError(t, err)
	defer s.Stop()
	families, err := registry.Gather()
	require.NoError(t, err)
	exist := map[string]bool{}
	for _, f := range families {
		exist[f.GetName()] = true
		if f.GetType().String() == "HISTOGRAM" {
			exist[f.GetName()+"_bucket"] = true
		}
		for _, l := range f.GetMetric()[0].GetLabel() {
			exist[l.GetName()] = true
		}
	}
	exprs := map[string]string{}
	for _, file := range []string{"rules.yml", "alerts.yml"} {
		for _, r := range rules(t, file) {
			exist[r.Record] = true
			exprs[r.Record+r.Alert] = r.Expr
		}
	}
	for _, p := range panels(t) {
		for _, q := range p.Targets {
			exprs[p.Title+": "+q.Expr] = q.Expr
		}
	}
	for where, expr := range exprs {
		found := names.FindAllString(expr, -1)
		assert.True(t, len(found) > 0 || strings.Contains(expr, "up{"), "%s names no series", where)
		for _, name := range found {
			assert.True(t, exist[name], "%s: there is no %s", where, name)
		}
	}
}

func TestPanelsHaveIDsOfTheirOwn(t *testing.T) {
	seen := map[int]string{}
	for _, p := range panels(t) {
		assert.NotZero(t, p.ID)
		assert.Empty(t, seen[p.ID], "%s has the same id", p.Title)
		seen[p.ID] = p.Title
		assert.NotEmpty(t, p.Targets, p.Title)
	}
}
