package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"golang.org/x/term"
)

// progress is a bar on a terminal, and nothing anywhere else.
type progress struct {
	w     io.Writer
	total int
}

// newProgress returns a bar, shown only where one call is not enough.
func newProgress(w io.Writer, total int) progress {
	if _, ok := isTerminal(w); !ok || total <= perCall {
		w = nil
	}
	return progress{w, total}
}

const barLength = 30

func (p progress) show(done int) {
	if p.w == nil {
		return
	}
	n := barLength * done / p.total
	fmt.Fprintf(p.w, "\r%s%s %d of %d checks", strings.Repeat("=", n), strings.Repeat(".", barLength-n), done, p.total)
}

func (p progress) clear() {
	if p.w != nil {
		fmt.Fprint(p.w, "\r\x1b[K")
	}
}

// isTerminal returns the descriptor of a terminal; false: it is none.
func isTerminal(w io.Writer) (int, bool) {
	f, ok := w.(*os.File)
	if !ok {
		return 0, false
	}
	return int(f.Fd()), term.IsTerminal(int(f.Fd()))
}

// terminalWidth returns the width of a terminal; false: it has none.
func terminalWidth(w io.Writer) (int, bool) {
	descriptor, ok := isTerminal(w)
	if !ok {
		return 0, false
	}
	width, _, err := term.GetSize(descriptor)
	return width, err == nil && width > 0
}
