package body

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"unicode/utf8"
)

// unreadable says why a text is no JSON; empty: it is.
func unreadable(text []byte) string {
	switch {
	case bytes.HasPrefix(text, []byte("\xff\xfe")) || bytes.HasPrefix(text, []byte("\xfe\xff")):
		return "is not text in UTF-8, but in UTF-16 by its first bytes"
	case bytes.HasPrefix(text, []byte("\xef\xbb\xbf")):
		return "begins with a byte order mark; leave it out"
	case !utf8.Valid(text):
		n := invalid(text)
		return fmt.Sprintf("is not text in UTF-8: byte 0x%02X at %s", text[n], place(text, n))
	case len(bytes.Trim(text, blanks)) == 0:
		return "is blank; a request without fields is {}"
	case json.Valid(text):
		return ""
	}
	var wrong *json.SyntaxError
	if err := json.Unmarshal(text, new(json.RawMessage)); !errors.As(err, &wrong) {
		return "is not JSON"
	}
	// The offset is behind the letter that is wrong, and the end has none.
	at := max(0, int(wrong.Offset)-1)
	if wrong.Error() == "unexpected end of JSON input" {
		return "is not JSON: it breaks off at " + place(text, len(text))
	}
	return fmt.Sprintf("is not JSON: %s at %s", wrong, place(text, at))
}

// invalid is where the first byte stands that is not UTF-8.
func invalid(text []byte) int {
	for at := 0; at < len(text); {
		r, n := utf8.DecodeRune(text[at:])
		if r == utf8.RuneError && n < 2 {
			return at
		}
		at += n
	}
	return len(text)
}

// place tells where a byte stands, by line and column, both counted from 1. A text
// of one line has no line to tell.
func place(text []byte, at int) string {
	before := text[:min(at, len(text))]
	line := bytes.LastIndexByte(before, '\n') + 1
	column := fmt.Sprintf("column %d", 1+utf8.RuneCount(before[line:]))
	if bytes.IndexByte(text, '\n') < 0 {
		return column
	}
	return fmt.Sprintf("line %d, %s", 1+bytes.Count(before, []byte("\n")), column)
}
