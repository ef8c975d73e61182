package guard

import (
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"log/slog"
	"os"
)

// secretBytes is the most that a file of certificates, keys or tokens may hold: far
// more than any does, and what is without end, such as a device, is not read on.
const secretBytes = 1 << 20

// mark is what some editors begin a text with (byte order mark of UTF-8).
var mark = []byte("\xef\xbb\xbf")

// readSecret reads a file of certificates, keys or tokens.
func readSecret(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer func() { _ = f.Close() }()
	text, err := io.ReadAll(io.LimitReader(f, secretBytes+1))
	switch {
	case err != nil:
		return nil, err
	case len(text) > secretBytes:
		return nil, fmt.Errorf("%s: is larger than %d MiB", path, secretBytes>>20)
	}
	return bytes.TrimPrefix(text, mark), nil
}

// What others than its owner may not do with a file.
const (
	secret fs.FileMode = 0o077 // read or write
	public fs.FileMode = 0o022 // write
)

// warnOfOthers says in the log when others than its owner may do with a file what they
// may not.
func warnOfOthers(log *slog.Logger, path string, not fs.FileMode) {
	i, err := os.Stat(path)
	if err != nil || !i.Mode().IsRegular() {
		return
	}
	what := "read"
	switch loose := loose(i) & not; {
	case loose == 0:
		return
	case loose&public != 0:
		what = "changed"
	}
	log.Warn("a file can be "+what+" by others than its owner", "file", path, "mode", fmt.Sprintf("%04o", i.Mode().Perm()))
}
