package guard

import (
	"fmt"
	"log/slog"
	"os"
	"strings"
	"sync"
	"sync/atomic"
	"time"
)

// LookEvery is how often files are looked at for changes, at most.
const LookEvery = 2 * time.Second

// fromFiles is a value that is read from files, and again when they change. While
// new files cannot be read the value stays as it was.
type fromFiles[T any] struct {
	what  string // for the log
	paths []string
	read  func() (T, error)
	log   *slog.Logger
	every time.Duration

	value atomic.Pointer[T]
	next  atomic.Int64 // when to look again [ns since 1970]
	mu    sync.Mutex
	seen  string // state of the files that were read last, well or not
	once  bool   // a pipe or a device among them cannot be read again
}

// load reads the files for the first time.
func (f *fromFiles[T]) load() error {
	f.seen, f.once = f.state(), !f.regular()
	v, err := f.read()
	if err != nil {
		return err
	}
	f.value.Store(&v)
	f.next.Store(time.Now().Add(f.every).UnixNano())
	return nil
}

// get returns the value. Whoever comes first when it is time looks at the files;
// the others go on with what there is.
func (f *fromFiles[T]) get() T {
	if now := time.Now(); !f.once && now.UnixNano() >= f.next.Load() && f.mu.TryLock() {
		f.next.Store(now.Add(f.every).UnixNano())
		f.again()
		f.mu.Unlock()
	}
	return *f.value.Load()
}

// look looks at the files now.
func (f *fromFiles[T]) look() {
	if f.once {
		return
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	f.again()
}

// regular reports whether all are files that end and may be read at any time.
func (f *fromFiles[T]) regular() bool {
	for _, path := range f.paths {
		if i, err := os.Stat(path); err == nil && !i.Mode().IsRegular() {
			return false
		}
	}
	return true
}

func (f *fromFiles[T]) again() {
	// Taken before reading: a file that is half written now differs later.
	state := f.state()
	if state == f.seen {
		return
	}
	f.seen = state
	if !f.regular() {
		f.log.Error("new files are no files: the old ones stay in use", "what", f.what)
		return
	}
	v, err := f.read()
	if err != nil {
		f.log.Error("new files cannot be used: the old ones stay in use", "what", f.what, "error", err)
		return
	}
	f.value.Store(&v)
	f.log.Info("read anew", "what", f.what)
}

// state tells apart what the files held at different times.
func (f *fromFiles[T]) state() string {
	var b strings.Builder
	for _, path := range f.paths {
		switch i, err := os.Stat(path); {
		case err != nil:
			b.WriteString("missing;")
		default:
			fmt.Fprintf(&b, "%d %d;", i.ModTime().UnixNano(), i.Size())
		}
	}
	return b.String()
}
