package client_test

import (
	"context"
	"fmt"
	"net"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/server"
	"footward.example/footward/service/web"
)

// missing skips a test that this machine cannot run, or fails it where all tests
// are demanded.
func missing(t *testing.T, why string) {
	t.Helper()
	if os.Getenv("DEMAND_ALL_TESTS") != "" {
		t.Fatalf("%s, and DEMAND_ALL_TESTS is set", why)
	}
	t.Skip(why)
}

// needs runs a command that succeeds where what a script needs is there.
func needs(t *testing.T, command ...string) {
	t.Helper()
	run := exec.CommandContext(t.Context(), command[0], command[1:]...)
	if out, err := run.CombinedOutput(); err != nil {
		missing(t, fmt.Sprintf("%s: %v: %.300s", strings.Join(command, " "), err, out))
	}
}

// TestScriptsPrintTheWholeDerivation runs the examples for Python and Node from the
// checkout against a server, over gRPC and over HTTP, and expects of each what the
// Go client is answered.
func TestScriptsPrintTheWholeDerivation(t *testing.T) {
	service, err := server.New(server.Options{Web: true})
	require.NoError(t, err)
	front, err := web.New(service.Web(), web.Options{MessageBytes: client.MaxMessageBytes})
	require.NoError(t, err)
	address := listen(t, service.Serve, service.Stop)
	url := "http://" + listen(t, front.Serve, front.Stop)

	t.Run("python over HTTP", func(t *testing.T) {
		needs(t, "/usr/bin/python3", "-c", "import sys; assert sys.version_info >= (3, 10)")
		prints(t, address, "/usr/bin/python3", "-B", "python/check.py", url)
	})
	t.Run("python over gRPC", func(t *testing.T) {
		needs(t, "/usr/bin/python3", "-c", "import grpc, google.protobuf")
		prints(t, address, "/usr/bin/python3", "-B", "python/check.py", address)
	})
	t.Run("node over HTTP", func(t *testing.T) {
		needs(t, "node", "-e", "fetch")
		prints(t, address, "node", "node/check.js", url)
	})
	t.Run("node over gRPC", func(t *testing.T) {
		needs(t, "node", "--version")
		needs(t, "ls", "node/node_modules/@bufbuild")
		prints(t, address, "node", "node/check.js", address)
	})
}

// listen serves on a port of its own until the test ends, and returns where.
func listen(t *testing.T, run func(net.Listener) error, stop func()) string {
	t.Helper()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	go func() { _ = run(listener) }()
	t.Cleanup(stop)
	return listener.Addr().String()
}

// prints runs a script and holds its lines to the answer of the same request.
func prints(t *testing.T, address string, command ...string) {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	request := bracket(4)
	request.Detail = footwardv1.Detail_DETAIL_DERIVATION
	answer, err := dial(t, address).CheckWeld(ctx, request)
	require.NoError(t, err)
	var want strings.Builder
	fmt.Fprintln(&want, "bracket: VERDICT_PASS, utilization 0.750 by weld_throat_minimum")
	for _, s := range answer.GetResult().GetDerivation() {
		line := s.GetSymbol()
		for _, part := range []string{s.GetExpression(), s.GetNumbers(), strings.TrimSpace(fmt.Sprintf("%.6g %s", s.GetValue(), s.GetUnit()))} {
			if part != "" {
				line += " = " + part
			}
		}
		fmt.Fprintf(&want, "%s  [%s]\n", line, s.GetClause())
	}
	fmt.Fprintln(&want, "N, mm and MPa; a blank between two factors multiplies.")
	fmt.Fprintln(&want, answer.GetProvenance().GetCaution())

	run := exec.CommandContext(ctx, command[0], command[1:]...)
	var told strings.Builder
	run.Stderr = &told
	out, err := run.Output()
	require.NoError(t, err, told.String())
	assert.Equal(t, want.String(), string(out))
}
