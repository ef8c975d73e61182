package guard_test

import (
	"log/slog"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/metadata"

	"footward.example/footward/service/guard"
)

const token = "alder-and-birch-1977"

// tokens writes a file of tokens and reads it.
func tokens(t *testing.T, text string, mode os.FileMode, log *slog.Logger) (*guard.Tokens, error) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "tokens")
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	require.NoError(t, os.Chmod(path, mode))
	return guard.ReadTokens(path, 0, log)
}

func TestTokensAreReadAsEditorsWriteThem(t *testing.T) {
	quiet := slog.New(slog.DiscardHandler)
	for name, text := range map[string]string{
		"plain": token, "ends of lines": "# first\r\n" + token + "\r\n", "byte order mark": "\xef\xbb\xbf" + token + "\n",
		"comment behind": token + " # of the studio\n", "comment behind a tab": "\xef\xbb\xbf" + token + "\t# of the studio",
		"comment at its begin": "#" + token + "x\n" + token, "indented": "  " + token + "  ",
	} {
		got, err := tokens(t, text, 0o600, quiet)
		if assert.NoError(t, err, name) {
			assert.True(t, knows(t, got, token), name)
		}
	}
	for name, text := range map[string]string{
		"UTF-16": "\xff\xfea\x00l\x00d\x00e\x00r\x00-\x00a\x00n\x00d\x00-\x00b\x00i\x00r\x00c\x00h\x00", "letters beyond ASCII": "größe-und-länge-1977",
		"two on a line": token + " " + token, "short before a comment": "short # of the studio-and-more",
	} {
		_, err := tokens(t, text, 0o600, quiet)
		if assert.ErrorContains(t, err, "line 1", name) {
			assert.NotContains(t, err.Error(), "short")
			assert.NotContains(t, err.Error(), token)
		}
	}
}

// knows reports whether a call with a token passes.
func knows(t *testing.T, by *guard.Tokens, token string) bool {
	t.Helper()
	return by.Known(metadata.NewIncomingContext(t.Context(), metadata.Pairs("authorization", "Bearer "+token)))
}

func TestFilesWithoutAnEndAreNotReadOn(t *testing.T) {
	if _, err := os.Stat("/dev/zero"); err != nil {
		t.Skip(err)
	}
	quiet := slog.New(slog.DiscardHandler)
	_, err := guard.ReadTokens("/dev/zero", 0, quiet)
	assert.ErrorContains(t, err, "larger than 1 MiB")
	_, err = guard.CertificateFiles{Cert: "/dev/zero", Key: "/dev/zero"}.TLS(quiet)
	assert.ErrorContains(t, err, "larger than 1 MiB")
}

func TestFilesThatOthersMayReadAreToldOf(t *testing.T) {
	for mode, want := range map[os.FileMode]string{
		0o600: "", 0o400: "", 0o640: "can be read by others", 0o604: "can be read by others", 0o620: "can be changed by others", 0o666: "can be changed by others",
	} {
		var log strings.Builder
		_, err := tokens(t, token, mode, slog.New(slog.NewTextHandler(&log, nil)))
		require.NoError(t, err)
		if want == "" {
			assert.Empty(t, log.String(), "%o", mode)
			continue
		}
		assert.Contains(t, log.String(), "level=WARN", "%o", mode)
		assert.Contains(t, log.String(), want, "%o", mode)
		assert.NotContains(t, log.String(), token)
	}
}

func TestFilesAreLookedAtWhenAsked(t *testing.T) {
	path := filepath.Join(t.TempDir(), "tokens")
	require.NoError(t, os.WriteFile(path, []byte(token), 0o600))
	got, err := guard.ReadTokens(path, time.Hour, slog.New(slog.DiscardHandler))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, []byte(token+"-anew"), 0o600))
	assert.False(t, knows(t, got, token+"-anew"))
	got.Look()
	assert.True(t, knows(t, got, token+"-anew"))
	assert.False(t, knows(t, got, token))
}
