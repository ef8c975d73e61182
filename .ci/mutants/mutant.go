package main

import (
	"crypto/sha256"
	"fmt"
	"strings"
)

// site is one place that a mutant makes differ; a comparison has no value.
type site struct {
	place int
	value string
}

// mutant is one change of one file.
type mutant struct {
	part   string
	file   *file
	line   int
	column int
	kind   string
	before string
	after  string

	sites []site
	// cover are the places of which one must be reached for the mutant to matter.
	cover []int
	// start is whether it acts while the package's tables are filled.
	start bool
	// cannot is why it cannot be tried.
	cannot string
}

// id names a mutant; a change of its file makes it a new one.
func (m *mutant) id() string {
	sum := sha256.Sum256(m.file.text)
	return fmt.Sprintf("%s:%d:%d %s %q -> %q %x", m.file.path, m.line, m.column, m.kind, m.before, m.after, sum[:4])
}

// text is the line of a mutant.
func (m *mutant) text() string {
	return strings.TrimSpace(strings.Split(string(m.file.text), "\n")[m.line-1])
}

// reason is the key of a mutant in reasons.txt. It does not tell the line's place in
// the file, so that a line added above changes nothing.
func (m *mutant) reason() string {
	return fmt.Sprintf("%s | %s | %s -> %s", m.file.path, m.text(), m.before, m.after)
}

// change is what makes the laid code differ (laid/mutant.go).
func (m *mutant) change() string {
	var b strings.Builder
	for i, s := range m.sites {
		if i > 0 {
			b.WriteByte(',')
		}
		fmt.Fprint(&b, s.place)
		if s.value != "" {
			b.WriteString("=" + s.value)
		}
	}
	return b.String()
}
