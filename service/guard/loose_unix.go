//go:build unix

package guard

import (
	"io/fs"
	"os"
	"syscall"
)

// groupRead is how a service reads a file that is not its own.
const groupRead fs.FileMode = 0o040

// loose is what others than its owner may do with a file, but for what the service
// needs itself.
func loose(i fs.FileInfo) fs.FileMode {
	mode := i.Mode().Perm()
	if of, ok := i.Sys().(*syscall.Stat_t); ok && int(of.Uid) != os.Geteuid() {
		mode &^= groupRead
	}
	return mode & 0o077
}
