package manifests

import (
	"bufio"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const unit = "deploy/systemd/footward.service"

// installed is where the unit expects the server.
const installed = "/usr/local/bin/footward"

// exposure is the most that systemd may find open, in tenths of its scale of 0
// to 10. What is left is a server's own: the network, and the host's files to read.
const exposure = "10"

// entries are the values of each key of the unit.
func entries(t *testing.T) map[string][]string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(top, unit))
	require.NoError(t, err)
	all := map[string][]string{}
	for lines := bufio.NewScanner(strings.NewReader(string(text))); lines.Scan(); {
		if key, value, found := strings.Cut(lines.Text(), "="); found && !strings.HasPrefix(key, "#") {
			all[key] = append(all[key], value)
		}
	}
	return all
}

func analyze(t *testing.T, args ...string) (string, error) {
	t.Helper()
	if _, err := exec.LookPath("systemd-analyze"); err != nil {
		missing(t, "systemd-analyze is not installed")
	}
	out, err := exec.CommandContext(t.Context(), "systemd-analyze", args...).CombinedOutput()
	return string(out), err
}

// verify lets systemd read the unit, with the server put where it can be found.
func verify(t *testing.T, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "footward.service")
	require.NoError(t, os.WriteFile(path, []byte(strings.ReplaceAll(text, installed, binary)), 0o600))
	// The exit status is 0 with an unknown key too: what it says counts.
	out, err := analyze(t, "verify", "--man=no", path)
	require.NoError(t, err, out)
	return out
}

func TestSystemdReadsEveryLineOfTheUnit(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(top, unit))
	require.NoError(t, err)
	require.Equal(t, []string{installed}, entries(t)["ExecStart"])
	assert.Empty(t, verify(t, string(text)))
	assert.Contains(t, verify(t, strings.Replace(string(text), "NoNewPrivileges", "NoNewPrivilege", 1)), "NoNewPrivilege",
		"this test finds a misspelt key")
}

func TestUnitIsShutIn(t *testing.T) {
	out, err := analyze(t, "security", "--offline=true", "--no-pager", "--threshold="+exposure, filepath.Join(top, unit))
	assert.NoError(t, err, out)
}

func TestUnitEndsByItselfAndWithinItsMemory(t *testing.T) {
	e, given := entries(t), map[string]string{}
	for _, v := range e["Environment"] {
		name, value, _ := strings.Cut(v, "=")
		given[name] = value
	}
	require.Len(t, e["TimeoutStopSec"], 1)
	stop, err := time.ParseDuration(e["TimeoutStopSec"][0])
	require.NoError(t, err)
	drains(t, given, stop)
	var aim, limit int64
	require.NoError(t, size(given["GOMEMLIMIT"], &aim))
	require.Len(t, e["MemoryMax"], 1)
	require.NoError(t, size(e["MemoryMax"][0]+"iB", &limit))
	room(t, aim, limit)
	given["FOOTWARD_GRPC_ADDRESS"], given["FOOTWARD_METRICS_ADDRESS"] = "127.0.0.1:0", "127.0.0.1:0"
	serves(t, given, nil)
}
