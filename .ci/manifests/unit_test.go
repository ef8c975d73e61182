package manifests

import (
	"bufio"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/credentials/insecure"
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
	serves(t, given, insecure.NewCredentials(), nil)
}

// TestUnitAllowsWhatTheServerAsksOfTheKernel traces a server that starts,
// answers a call and drains. A refused call would end, or cripple, what no test here
// can start: the unit itself.
func TestUnitAllowsWhatTheServerAsksOfTheKernel(t *testing.T) {
	if _, err := exec.LookPath("strace"); err != nil {
		missing(t, "strace is not installed")
	}
	if out, err := exec.CommandContext(t.Context(), "strace", "-f", "true").CombinedOutput(); err != nil {
		t.Skipf("processes cannot be traced here: %v %s", err, out)
	}
	allowed := map[string]bool{}
	filters := entries(t)["SystemCallFilter"]
	require.Len(t, filters, 2)
	for _, f := range filters {
		list, denied := strings.CutPrefix(f, "~")
		for _, name := range strings.Fields(list) {
			for _, call := range calls(t, name) {
				allowed[call] = !denied
			}
		}
	}
	require.Greater(t, len(allowed), 200)

	traced := filepath.Join(t.TempDir(), "traced")
	serves(t, nil, insecure.NewCredentials(), func(server *exec.Cmd) {
		// With -D the process that was started is the server, not the tracer.
		server.Args = []string{"strace", "-D", "-f", "-o", traced, server.Path}
		var err error
		server.Path, err = exec.LookPath("strace")
		require.NoError(t, err)
	})
	var text []byte
	require.Eventually(t, func() bool {
		var err error
		text, err = os.ReadFile(traced)
		return err == nil && strings.HasSuffix(strings.TrimSpace(string(text)), "+++ exited with 0 +++")
	}, 10*time.Second, 10*time.Millisecond)
	asked := map[string]bool{}
	for _, m := range regexp.MustCompile(`(?m)^\d+ +(\w+)\(`).FindAllStringSubmatch(string(text), -1) {
		asked[m[1]] = true
	}
	require.True(t, asked["listen"] && asked["epoll_pwait"], "it served")
	for call := range asked {
		assert.True(t, allowed[call], "%s is not allowed", call)
	}
}

// calls are the system calls of a group, or the call itself.
func calls(t *testing.T, name string) []string {
	t.Helper()
	if !strings.HasPrefix(name, "@") {
		return []string{name}
	}
	out, err := analyze(t, "syscall-filter", "--no-pager", name)
	require.NoError(t, err, out)
	var all []string
	for _, line := range strings.Split(out, "\n")[1:] {
		if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "#") {
			all = append(all, calls(t, line)...)
		}
	}
	return all
}
