package watch

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"
)

// soon bounds every wait for something that is on its way.
const soon = 20 * time.Second

// scrapeEvery replaces the intervals of the configuration, for the test's sake.
const scrapeEvery = "250ms"

// programs skips the test where Prometheus is missing, unless it must not be.
func programs(t *testing.T) {
	t.Helper()
	for _, name := range []string{"prometheus", "promtool"} {
		if _, err := exec.LookPath(name); err != nil {
			if os.Getenv("NEED_PROMETHEUS") != "" {
				t.Fatal(err)
			}
			t.Skipf("%s is not on PATH; .ci/watch brings it", name)
		}
	}
}

// start runs a program until the test ends, and returns how to kill it.
func start(t *testing.T, name string, args ...string) (kill func()) {
	t.Helper()
	var out bytes.Buffer
	c := exec.Command(name, args...)
	c.Stdout, c.Stderr = &out, &out
	// Nothing of this environment may set it up otherwise.
	c.Env = []string{"PATH=" + os.Getenv("PATH"), "HOME=" + t.TempDir()}
	require.NoError(t, c.Start())
	killed := false
	kill = func() {
		if !killed {
			killed = true
			_ = c.Process.Kill()
			_ = c.Wait()
		}
	}
	t.Cleanup(func() {
		kill()
		if t.Failed() {
			t.Logf("%s said:\n%s", filepath.Base(name), out.String())
		}
	})
	return kill
}

// freeAddress returns an address of this machine that nobody listens at.
func freeAddress(t *testing.T) string {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	require.NoError(t, l.Close())
	return l.Addr().String()
}

// startService builds the service and runs it.
func startService(t *testing.T) (calls, metrics string, kill func()) {
	t.Helper()
	program := filepath.Join(t.TempDir(), "footward-service")
	out, err := exec.CommandContext(t.Context(), "go", "build", "-o", program, "..").CombinedOutput()
	require.NoError(t, err, string(out))
	calls, metrics = freeAddress(t), freeAddress(t)
	return calls, metrics, start(t, program, "--grpc-address", calls, "--metrics-address", metrics)
}

// watcher is a running Prometheus.
type watcher struct{ url string }

// startPrometheus runs it with the configuration of deploy, to scrape target.
func startPrometheus(t *testing.T, target string) *watcher {
	t.Helper()
	text, err := os.ReadFile(deploy + "prometheus/prometheus.yml")
	require.NoError(t, err)
	var c map[string]any
	require.NoError(t, yaml.Unmarshal(text, &c))
	c["global"] = map[string]any{"scrape_interval": scrapeEvery, "scrape_timeout": scrapeEvery, "evaluation_interval": scrapeEvery}
	var files []any
	for _, f := range c["rule_files"].([]any) {
		path, err := filepath.Abs(deploy + "prometheus/" + f.(string))
		require.NoError(t, err)
		files = append(files, path)
	}
	c["rule_files"] = files
	job := c["scrape_configs"].([]any)[0].(map[string]any)
	job["static_configs"].([]any)[0].(map[string]any)["targets"] = []any{target}
	text, err = yaml.Marshal(c)
	require.NoError(t, err)
	dir := t.TempDir()
	file := filepath.Join(dir, "prometheus.yml")
	require.NoError(t, os.WriteFile(file, text, 0o600))
	at := freeAddress(t)
	start(t, "prometheus", "--config.file="+file, "--storage.tsdb.path="+filepath.Join(dir, "data"), "--web.listen-address="+at,
		"--enable-feature=exemplar-storage", "--log.level=warn")
	return &watcher{"http://" + at}
}

// get asks its HTTP API, and reads the data of the answer into data.
func (p *watcher) get(ctx context.Context, path string, query url.Values, data any) error {
	ctx, cancel := context.WithTimeout(ctx, soon)
	defer cancel()
	request, err := http.NewRequestWithContext(ctx, http.MethodGet, p.url+"/api/v1/"+path+"?"+query.Encode(), nil)
	if err != nil {
		return err
	}
	answer, err := http.DefaultClient.Do(request)
	if err != nil {
		return err
	}
	defer func() { _ = answer.Body.Close() }()
	text, err := io.ReadAll(answer.Body)
	if err != nil {
		return err
	}
	var m struct {
		Status, Error string
		Data          json.RawMessage
	}
	if err := json.Unmarshal(text, &m); err != nil {
		return fmt.Errorf("%s: %w", text, err)
	}
	if m.Status != "success" {
		return fmt.Errorf("%s: %s", m.Status, m.Error)
	}
	return json.Unmarshal(m.Data, data)
}

// query returns the values of a query, in the order of the answer.
func (p *watcher) query(ctx context.Context, promQL string) ([]float64, error) {
	var data struct {
		Result []struct{ Value [2]any }
	}
	if err := p.get(ctx, "query", url.Values{"query": {promQL}}, &data); err != nil {
		return nil, fmt.Errorf("%s: %w", promQL, err)
	}
	var out []float64
	for _, r := range data.Result {
		text, _ := r.Value[1].(string)
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return nil, err
		}
		out = append(out, v)
	}
	return out, nil
}

// until polls until done is true, and fails with what it said last when that does
// not come.
func until(t *testing.T, what string, done func() (ok bool, said string)) {
	t.Helper()
	said := ""
	for end := time.Now().Add(soon); time.Now().Before(end); time.Sleep(100 * time.Millisecond) {
		var ok bool
		if ok, said = done(); ok {
			return
		}
	}
	require.Failf(t, "not within "+soon.String(), "%s; last: %s", what, said)
}

// arrives waits until a query has one value, exactly want.
func (p *watcher) arrives(t *testing.T, promQL string, want float64) {
	t.Helper()
	until(t, fmt.Sprintf("%s = %v", promQL, want), func() (bool, string) {
		got, err := p.query(t.Context(), promQL)
		return err == nil && len(got) == 1 && got[0] == want, fmt.Sprint(got, err)
	})
}

// ready puts into a query what a dashboard would put in.
func ready(expr string) string {
	return strings.NewReplacer("$__rate_interval", "1m", "$job", "footward").Replace(expr)
}
