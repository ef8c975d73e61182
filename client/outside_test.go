package client_test

import (
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/service/server"
)

// TestProgramOfAnotherModuleAsksTheService does what README.md tells to import the
// client elsewhere, with nothing but the modules that this test is built of.
func TestProgramOfAnotherModuleAsksTheService(t *testing.T) {
	if testing.Short() {
		t.Skip("links a program, 2 to 10 s")
	}
	checkout, err := filepath.Abs("..")
	require.NoError(t, err)
	studio := t.TempDir()
	// The sums of the checkout, so that no server is asked for them.
	for from, to := range map[string]string{"../go.sum": "go.sum", "testdata/outside/main.go": "main.go"} {
		text, err := os.ReadFile(from)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(studio, to), text, 0o600))
	}
	run := func(name string, arguments ...string) string {
		t.Helper()
		command := exec.CommandContext(t.Context(), name, arguments...)
		command.Dir = studio
		command.Env = append(os.Environ(), "GOFLAGS=-mod=mod", "GOPROXY=off", "GOWORK=off", "GOTOOLCHAIN=local")
		out, err := command.CombinedOutput()
		require.NoError(t, err, "%s %v: %s", name, arguments, out)
		return string(out)
	}
	run("go", "mod", "init", "example.org/studio")
	run("go", "mod", "edit", "-require=footward.example/footward@v0.0.0", "-replace=footward.example/footward="+checkout)
	program := filepath.Join(studio, "studio")
	run("go", "build", "-o", program, ".")

	service, err := server.New(server.Options{})
	require.NoError(t, err)
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	go func() { _ = service.Serve(listener) }()
	t.Cleanup(service.Stop)
	assert.Equal(t, "VERDICT_PASS 0.75\n", run(program, listener.Addr().String()))

	needed, err := os.ReadFile(filepath.Join(studio, "go.mod"))
	require.NoError(t, err)
	assert.NotContains(t, string(needed), "prometheus", "the client needs nothing of the service")
	run("go", "build", "footward.example/footward/client/local")
}
