package main

import (
	"bufio"
	"bytes"
	"os"
	"path"
	"slices"
	"strings"
)

const reasons = ".ci/mutants/reasons.txt"

// reason is why mutants may survive: file | line | change # why. The file may be a
// pattern; the line * or *words that it holds*; the change "0.5 -> (1.2 * 0.5)", or a kind,
// or a kind and what stands there: "constant 0.5".
type reason struct {
	file, line, change, why string
}

func excuses() ([]reason, error) {
	text, err := os.ReadFile(reasons)
	if err != nil {
		return nil, err
	}
	var out []reason
	for lines := bufio.NewScanner(bytes.NewReader(text)); lines.Scan(); {
		key, why, ok := strings.Cut(lines.Text(), " # ")
		if !ok {
			continue
		}
		file, rest, _ := strings.Cut(key, " | ")
		at := strings.LastIndex(rest, " | ")
		if at < 0 {
			continue
		}
		out = append(out, reason{file, rest[:at], rest[at+3:], why})
	}
	return out, nil
}

func (r *reason) covers(m *mutant) bool {
	if same, err := path.Match(r.file, m.file.path); !same || err != nil {
		return false
	}
	if inside := strings.Trim(r.line, "*"); strings.HasPrefix(r.line, "*") && !strings.Contains(m.text(), inside) ||
		!strings.HasPrefix(r.line, "*") && r.line != m.text() {
		return false
	}
	return slices.Contains([]string{m.kind, m.kind + " " + m.before, m.before + " -> " + m.after}, r.change)
}

// excused is why a mutant may survive; empty where nothing says so.
func excused(all []reason, m *mutant) string {
	for i := range all {
		if all[i].covers(m) {
			return all[i].why
		}
	}
	return ""
}
