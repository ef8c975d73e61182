package reading

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
)

// mostSearch is how much is read at most to find the line that breaks a document.
const mostSearch = 4 << 20

// layout says what is wrong with a text that is no YAML. The parser names the place
// where the part began that it could not end, and calls a tab a character.
func (d document) layout(err error) Fault {
	f := d.fault(err.Error())
	lines := strings.Split(strings.TrimRight(string(d.text), "\n"), "\n")
	if strings.Contains(f.Reason, "tab character") || strings.Contains(f.Reason, "cannot start any token") {
		for i := max(0, f.Line-d.first-1); i < len(lines); i++ {
			if at := tabAt(lines[i]); at >= 0 {
				return Fault{Line: d.first + i + 1, Column: at + 1, Source: shorten(lines[i]),
					Reason: "a tab stands before the text of this line; YAML is indented with blanks"}
			}
		}
	}
	if len(lines)*len(d.text) > mostSearch {
		return f
	}
	i := breaks(lines)
	f.Line, f.Source = d.first+i+1, shorten(lines[i])
	at, open := indent(lines[i]), columns(lines[:i])
	f.Column = at + 1
	switch {
	case !slices.Contains(open, at) && (at < open[len(open)-1] || !strings.HasSuffix(lastText(lines[:i]), ":")):
		f.Reason = fmt.Sprintf("the indentation is wrong: this line starts at column %d, where no line above it does that it could go on from (%s)",
			at+1, among(open))
	case strings.Contains(f.Reason, "'-' indicator"):
		f.Reason = "a list stands above: either - is missing here, or the indentation is wrong"
	case strings.Contains(f.Reason, "mapping values are not allowed") && i > 0:
		f.Reason = "a name and its colon cannot stand here: the line above may lack its own colon, or the blank behind it"
	}
	return f
}

// tabAt is where a tab stands before the text of a line, or -1.
func tabAt(line string) int {
	return strings.IndexByte(line[:len(line)-len(strings.TrimLeft(line, "\t -"))], '\t')
}

// breaks is the line that breaks a text: the longest part above it can be read.
func breaks(lines []string) int {
	for n := len(lines) - 1; n > 0; n-- {
		part := document{text: []byte(strings.Join(lines[:n], "\n") + "\n")}
		if _, err := part.parse(); err == nil {
			return n
		}
	}
	return 0
}

func indent(line string) int { return len(line) - len(strings.TrimLeft(line, " ")) }

// columns are those at which a line may go on from the lines above it, counted
// from 0.
func columns(above []string) []int {
	open := []int{0}
	for _, line := range above {
		text := strings.TrimLeft(line, " ")
		if text == "" || text[0] == '#' {
			continue
		}
		at := len(line) - len(text)
		for len(open) > 0 && open[len(open)-1] > at {
			open = open[:len(open)-1]
		}
		if len(open) == 0 || open[len(open)-1] < at {
			open = append(open, at)
		}
		for strings.HasPrefix(text, "- ") {
			text = strings.TrimLeft(text[1:], " ")
			open = append(open, len(line)-len(text))
		}
	}
	return open
}

// lastText is the last line with text, without a comment behind it.
func lastText(lines []string) string {
	for _, line := range slices.Backward(lines) {
		line, _, _ = strings.Cut(line, " #")
		if line = strings.TrimSpace(line); line != "" && line[0] != '#' {
			return line
		}
	}
	return ""
}

// among names columns, counted from 1.
func among(columns []int) string {
	var b bytes.Buffer
	for i, c := range columns {
		if i > 0 {
			b.WriteString(", ")
		}
		fmt.Fprint(&b, c+1)
	}
	return "columns " + b.String()
}
