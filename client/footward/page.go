package main

import (
	"io"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Bounds on the width of a page; usualWidth is used where there is no terminal.
const (
	leastWidth = 64
	usualWidth = 100
	mostWidth  = 130
)

// page is text laid out within a width.
type page struct {
	text  strings.Builder
	width int
}

func newPage(w io.Writer) *page {
	width, ok := terminalWidth(w)
	if !ok {
		width = usualWidth
	}
	return &page{width: min(max(width, leastWidth), mostWidth)}
}

func (p *page) blank() { p.text.WriteByte('\n') }

// line writes a line as it is, however long.
func (p *page) line(s string) {
	p.text.WriteString(strings.TrimRight(printable(s), " "))
	p.text.WriteByte('\n')
}

// paragraph writes text after a lead, and its further lines below it.
func (p *page) paragraph(lead, text string) {
	indent := strings.Repeat(" ", length(lead))
	for _, l := range wrap(text, p.width-length(lead)) {
		p.line(lead + l)
		lead = indent
	}
}

// column is a column of a table.
type column struct {
	title string
	right bool // numbers stand on the right
	wraps bool // gives way when the page is narrow
}

// gap stands between columns.
const gap = "  "

// table writes rows under their titles. Each cell is a text without line breaks.
func (p *page) table(indent string, columns []column, rows [][]string) {
	widths := p.widths(indent, columns, rows)
	titles := make([]string, len(columns))
	for i, c := range columns {
		titles[i] = c.title
	}
	for _, row := range append([][]string{titles}, rows...) {
		p.row(indent, columns, widths, row)
	}
}

// widths gives every column what it needs, and takes what is too much off the
// columns that wrap, the widest first.
func (p *page) widths(indent string, columns []column, rows [][]string) []int {
	widths := make([]int, len(columns))
	total := length(indent) + len(gap)*(len(columns)-1)
	for i, c := range columns {
		widths[i] = length(c.title)
		for _, row := range rows {
			widths[i] = max(widths[i], length(row[i]))
		}
		total += widths[i]
	}
	for ; total > p.width; total-- {
		widest := -1
		for i, c := range columns {
			if c.wraps && widths[i] > leastColumn && (widest < 0 || widths[i] > widths[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			break
		}
		widths[widest]--
	}
	return widths
}

const leastColumn = 12

func (p *page) row(indent string, columns []column, widths []int, row []string) {
	cells := make([][]string, len(row))
	lines := 1
	for i, text := range row {
		cells[i] = []string{text}
		if columns[i].wraps {
			cells[i] = wrap(text, widths[i])
		}
		lines = max(lines, len(cells[i]))
	}
	for n := range lines {
		var b strings.Builder
		b.WriteString(indent)
		for i := range cells {
			if i > 0 {
				b.WriteString(gap)
			}
			text := ""
			if n < len(cells[i]) {
				text = cells[i][n]
			}
			space := strings.Repeat(" ", max(0, widths[i]-length(text)))
			if columns[i].right {
				b.WriteString(space + text)
			} else {
				b.WriteString(text + space)
			}
		}
		p.line(b.String())
		indent = strings.Repeat(" ", length(indent)) // a mark stands once
	}
}

// wrap breaks a text at blanks; a word longer than width is cut.
func wrap(text string, width int) []string {
	width = max(width, leastColumn)
	var lines []string
	now := ""
	for _, word := range strings.Fields(printable(text)) {
		for now == "" && length(word) > width {
			cut := len(string([]rune(word)[:width]))
			lines, word = append(lines, word[:cut]), word[cut:]
		}
		switch {
		case now == "":
			now = word
		case length(now)+1+length(word) <= width:
			now += " " + word
		default:
			lines, now = append(lines, now), ""
			for length(word) > width {
				cut := len(string([]rune(word)[:width]))
				lines, word = append(lines, word[:cut]), word[cut:]
			}
			now = word
		}
	}
	if now != "" || lines == nil {
		lines = append(lines, now)
	}
	return lines
}

func length(s string) int { return utf8.RuneCountInString(s) }

// printable puts a question mark for what could move the cursor or hide text:
// labels and file names come from anywhere.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\n':
			return ' '
		case unicode.IsPrint(r):
			return r
		}
		return '?'
	}, s)
}
