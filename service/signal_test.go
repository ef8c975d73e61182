//go:build unix

package main

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/status"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// TestReaderOfTheLogThatIsGoneEndsNoService: whoever read standard error may go; what
// is written then is lost, and no more.
func TestReaderOfTheLogThatIsGoneEndsNoService(t *testing.T) {
	p := launch(t)
	c := p.dial(t)
	require.NoError(t, p.stderr.Close())
	for range 3 {
		_, err := c.CheckBearing(t.Context(), &footwardv1.CheckBearingRequest{}) // has a line
		require.Equal(t, codes.InvalidArgument, status.Code(err))
	}
	_, err := c.CheckBearing(t.Context(), item(-120).GetBearing())
	assert.NoError(t, err)
	require.NoError(t, p.Process.Signal(syscall.SIGTERM))
	assert.Equal(t, stopped, p.end(t).ExitCode())
}

// TestHangupHasFilesReadAnew and ends nothing.
func TestHangupHasFilesReadAnew(t *testing.T) {
	path := filepath.Join(t.TempDir(), "tokens")
	require.NoError(t, os.WriteFile(path, []byte("the-token-that-was\n"), 0o600))
	p := launch(t, "--token-file", path)
	require.NoError(t, os.WriteFile(path, []byte("the-token-that-came\n"), 0o600))
	require.NoError(t, p.Process.Signal(syscall.SIGHUP))
	require.Eventually(t, func() bool { return strings.Contains(p.log.String(), "read anew") }, time.Minute, time.Millisecond, "without a call")
	ctx := metadata.AppendToOutgoingContext(t.Context(), "authorization", "Bearer the-token-that-came")
	_, err := p.dial(t).CheckBearing(ctx, item(-120).GetBearing())
	assert.NoError(t, err)
	require.NoError(t, p.Process.Signal(syscall.SIGTERM))
	assert.Equal(t, stopped, p.end(t).ExitCode(), "%v", &p.log)
}

// TestSignalWhileFilesAreReadEndsTheStart: a pipe may keep silent for ever.
func TestSignalWhileFilesAreReadEndsTheStart(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "tokens")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	c := exec.CommandContext(t.Context(), os.Args[0], "--grpc-address", "127.0.0.1:0", "--metrics-address", "", "--token-file", pipe)
	c.Env = append(os.Environ(), asProgram+"=1")
	var log lines
	c.Stderr = &log
	require.NoError(t, c.Start())
	// It reads once this can be opened.
	opened := make(chan *os.File, 1)
	go func() {
		f, _ := os.OpenFile(pipe, os.O_WRONLY, 0)
		opened <- f
	}()
	f := <-opened
	require.NotNil(t, f)
	defer func() { _ = f.Close() }()
	require.NoError(t, c.Process.Signal(syscall.SIGTERM))
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	defer context.AfterFunc(ctx, func() { _ = c.Process.Kill() })()
	_ = c.Wait()
	assert.Equal(t, stopped, c.ProcessState.ExitCode(), "%v", &log)
	assert.Contains(t, log.String(), "stopped while files were read")
}
