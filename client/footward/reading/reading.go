package reading

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// Bounds on a file.
const (
	MaxBytes  = 16 << 20
	maxValues = 1 << 19 // 10 000 checks of 50 values
	maxDepth  = 32      // the deepest request has 10 levels
	maxFaults = 20      // told of one document
)

// Item is a check of a file, or what is wrong with it.
type Item struct {
	Document int // counted from 1
	Number   int // place in the document's list, counted from 1; 0: it is no list
	Line     int // where it starts, counted from 1
	Check    *footwardv1.CheckItem
	Faults   []Fault // when there are any, Check is nil
}

// Fault is something in a file that is not part of a request.
type Fault struct {
	Line   int // counted from 1; 0: the file as a whole
	Column int // in characters, counted from 1
	Reason string
	Source string // the line itself
}

// Read returns the checks of a file in order. The error says why the file could
// not be read at all; what is wrong with its content stands in the items.
func Read(r io.Reader) ([]Item, error) {
	data, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	switch {
	case err != nil:
		return nil, err
	case len(data) > MaxBytes:
		return nil, fmt.Errorf("is larger than %d MiB; divide it into several files", MaxBytes>>20)
	case !utf8.Valid(data):
		return nil, fmt.Errorf("is not text in UTF-8")
	}
	text := plainBreaks(string(data))
	// Parsed, a value takes a hundred times the two bytes that it takes in a
	// file, and every value but the first stands behind a comma or a line break.
	if strings.Count(text, ",")+strings.Count(text, "\n") > maxValues {
		return nil, fmt.Errorf("holds more than %d values; divide it into several files", maxValues)
	}
	var items []Item
	documents := split(text)
	for i, d := range documents {
		for _, item := range d.items() {
			item.Document = i + 1
			items = append(items, item)
		}
	}
	if len(items) == 0 {
		return nil, fmt.Errorf("holds no check")
	}
	return items, nil
}

// plainBreaks makes every line end with a line feed alone. YAML knows five line
// breaks; with one, lines can be counted by anybody. The three that are not
// ASCII become blanks.
func plainBreaks(text string) string {
	text = strings.TrimPrefix(text, "\ufeff")
	return strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u0085", " ", "\u2028", " ", "\u2029", " ").Replace(text)
}

// document is the text of one YAML document.
type document struct {
	text  []byte
	first int // lines before it
}

// split cuts a text at its document marks, lines that start with --- or ..., and
// leaves out documents without content.
func split(text string) []document {
	var all []document
	var now bytes.Buffer
	first, line, content := 0, 0, false
	flush := func() {
		if content {
			all = append(all, document{text: bytes.Clone(now.Bytes()), first: first})
		}
		now.Reset()
		first, content = line, false
	}
	for part := range strings.Lines(text) {
		mark := isMark(part)
		if mark {
			flush()
		}
		rest := part
		if mark {
			rest = part[3:]
		}
		if rest = strings.TrimSpace(rest); rest != "" && rest[0] != '#' {
			content = true
		}
		if mark && part[0] == '.' {
			part = "\n" // ends a document and starts none
		}
		now.WriteString(part)
		line++
	}
	flush()
	return all
}

func isMark(line string) bool {
	if !strings.HasPrefix(line, "---") && !strings.HasPrefix(line, "...") {
		return false
	}
	return len(line) == 3 || strings.ContainsRune(" \t\n", rune(line[3]))
}
