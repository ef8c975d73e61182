package manifests

import (
	"bufio"
	"bytes"
	"context"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc"
	"google.golang.org/grpc/credentials"
	"google.golang.org/grpc/health/grpc_health_v1"
)

// top is the top of the checkout.
var top string

// binary is the server as deploy/Containerfile builds it, and nothing beside it
// in its folder.
var binary string

func TestMain(m *testing.M) {
	flag.Parse()
	status := 1
	if err := build(); err != nil {
		fmt.Fprintln(os.Stderr, err)
	} else {
		status = m.Run()
	}
	_ = os.RemoveAll(filepath.Dir(binary))
	os.Exit(status)
}

// build runs the Containerfile's own command in the checkout.
func build() error {
	var err error
	if top, err = filepath.Abs("../.."); err != nil {
		return err
	}
	text, err := os.ReadFile(filepath.Join(top, "deploy/Containerfile"))
	if err != nil {
		return err
	}
	command := regexp.MustCompile(`(?m)^RUN (CGO_ENABLED=0 go build .* )-o /footward (\S+)$`).FindSubmatch(text)
	if command == nil {
		return fmt.Errorf("deploy/Containerfile has no line that builds /footward")
	}
	folder, err := os.MkdirTemp("", "footward")
	if err != nil {
		return err
	}
	// Another user starts it in a test.
	if err := os.Chmod(folder, 0o755); err != nil { //nolint:gosec // holds nothing secret
		return err
	}
	binary = filepath.Join(folder, "footward")
	run := exec.Command("sh", "-c", fmt.Sprintf("%s-o %s %s", command[1], binary, command[2]))
	run.Dir = top
	if out, err := run.CombinedOutput(); err != nil {
		return fmt.Errorf("%s: %w\n%s", run, err, out)
	}
	return nil
}

// missing skips a test that this machine cannot run, or fails it where all tests
// are demanded.
func missing(t *testing.T, why string) {
	t.Helper()
	if os.Getenv("DEMAND_ALL_TESTS") != "" {
		t.Fatalf("%s, and DEMAND_ALL_TESTS is set", why)
	}
	t.Skip(why)
}

// help returns what the server tells about its settings: the default of each.
func help(t *testing.T) map[string]string {
	t.Helper()
	out, err := exec.CommandContext(t.Context(), binary, "--help").Output()
	require.NoError(t, err)
	settings := map[string]string{}
	for _, m := range regexp.MustCompile(`(?m)^  -(\S+).*\n.*?(?:\(default "?(.*?)"?\))?$`).FindAllStringSubmatch(string(out), -1) {
		settings[m[1]] = m[2]
	}
	require.NotEmpty(t, settings)
	return settings
}

// variable is the variable of the environment that stands for a setting.
func variable(setting string) string {
	return "FOOTWARD_" + strings.ToUpper(strings.ReplaceAll(setting, "-", "_"))
}

// port returns the default port of a setting that is an address.
func port(t *testing.T, setting string) string {
	t.Helper()
	address := help(t)[setting]
	_, port, found := strings.Cut(address, ":")
	require.True(t, found, "default %q of %s", address, setting)
	return port
}

// serves starts the server with the environment of a manifest, expects that it
// says it is healthy, tells it to stop and expects it to end well.
func serves(t *testing.T, environment map[string]string, encryption credentials.TransportCredentials, change func(*exec.Cmd)) {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	server := exec.CommandContext(ctx, binary)
	// Ports may be taken, and nobody is to wait for the drain here.
	server.Env = []string{variable("drain-delay") + "=0s"}
	for _, setting := range []string{"grpc-address", "metrics-address"} {
		address, given := environment[variable(setting)]
		if !given {
			address = help(t)[setting]
		}
		server.Env = append(server.Env, variable(setting)+"="+address[:strings.LastIndex(address, ":")]+":0")
	}
	for name, value := range environment {
		if !strings.HasSuffix(name, "_ADDRESS") && name != variable("drain-delay") {
			server.Env = append(server.Env, name+"="+value)
		}
	}
	if change != nil {
		change(server)
	}
	log, err := server.StderrPipe()
	require.NoError(t, err)
	require.NoError(t, server.Start())
	var told bytes.Buffer
	for lines := bufio.NewScanner(log); lines.Scan(); {
		told.WriteString(lines.Text() + "\n")
		if at := regexp.MustCompile(`listening"?[=:]"?[^ ,"]*:(\d+)`).FindStringSubmatch(lines.Text()); at != nil {
			healthy(t, ctx, "127.0.0.1:"+at[1], encryption)
			require.NoError(t, server.Process.Signal(syscall.SIGTERM))
		}
	}
	assert.NoError(t, server.Wait(), told.String())
	assert.Contains(t, told.String(), "listening")
	assert.Contains(t, told.String(), "drained")
}

func healthy(t *testing.T, ctx context.Context, address string, encryption credentials.TransportCredentials) {
	t.Helper()
	conn, err := grpc.NewClient(address, grpc.WithTransportCredentials(encryption))
	require.NoError(t, err)
	defer func() { assert.NoError(t, conn.Close()) }()
	answer, err := grpc_health_v1.NewHealthClient(conn).Check(ctx, &grpc_health_v1.HealthCheckRequest{})
	if assert.NoError(t, err) {
		assert.Equal(t, grpc_health_v1.HealthCheckResponse_SERVING, answer.GetStatus())
	}
}

// drains checks that the server ends by itself before it is killed.
func drains(t *testing.T, environment map[string]string, killedAfter time.Duration) {
	t.Helper()
	timeout, err := time.ParseDuration(environment[variable("drain-timeout")])
	require.NoError(t, err)
	assert.GreaterOrEqual(t, killedAfter-timeout, 5*time.Second, "room between drain and kill")
	if text, given := environment[variable("drain-delay")]; given {
		delay, err := time.ParseDuration(text)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, timeout-delay, 30*time.Second, "room for calls under way")
	}
}

// TestEverySettingNamedExists reads all texts of deploy/, comments too.
func TestEverySettingNamedExists(t *testing.T) {
	known := []string{}
	for setting := range help(t) {
		known = append(known, variable(setting))
	}
	require.Contains(t, known, "FOOTWARD_DRAIN_DELAY")
	named := regexp.MustCompile(`FOOTWARD_[A-Z_]+[A-Z]`)
	found := 0
	require.NoError(t, filepath.WalkDir(filepath.Join(top, "deploy"), func(path string, entry os.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := os.ReadFile(path)
		for _, name := range named.FindAllString(string(text), -1) {
			found++
			// A Service's port is what the server would refuse.
			assert.True(t, slices.Contains(known, name) || name == "FOOTWARD_PORT", "%s names %s", path, name)
		}
		return err
	}))
	assert.Positive(t, found)
}
