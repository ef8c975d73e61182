package body

import (
	"bytes"
	"encoding/json"
)

// What is here walks over text that json.Valid has found to be JSON; it copies
// nothing but keys.

// blanks are those of JSON.
const blanks = " \t\r\n"

// trim takes blanks off both ends.
func trim(text []byte) []byte { return bytes.Trim(text, blanks) }

// members calls each with every key and value of an object in turn.
func members(object []byte, each func(key string, value []byte)) {
	rest := trim(object[1:])
	for len(rest) > 0 && rest[0] == '"' {
		n := span(rest)
		var key string
		_ = json.Unmarshal(rest[:n], &key) // cannot fail: it is a text
		rest = trim(rest[n:])
		rest = trim(rest[1:]) // the colon
		n = span(rest)
		each(key, rest[:n])
		rest = after(rest[n:])
	}
}

// elements calls each with every value of a list in turn, until it returns false.
func elements(list []byte, each func(value []byte) bool) {
	rest := trim(list[1:])
	for len(rest) > 0 && rest[0] != ']' {
		n := span(rest)
		if !each(rest[:n]) {
			return
		}
		rest = after(rest[n:])
	}
}

// after is what stands behind the comma.
func after(rest []byte) []byte {
	rest = bytes.TrimLeft(rest, blanks)
	if len(rest) > 0 && rest[0] == ',' {
		rest = rest[1:]
	}
	return bytes.TrimLeft(rest, blanks)
}

// span is how long the value is that a text begins with.
func span(text []byte) int {
	switch text[0] {
	case '"':
		return spanText(text)
	case '{', '[':
		deep := 0
		for i := 0; i < len(text); i++ {
			switch text[i] {
			case '"':
				i += spanText(text[i:]) - 1
			case '{', '[':
				deep++
			case '}', ']':
				if deep--; deep == 0 {
					return i + 1
				}
			}
		}
		return len(text)
	}
	if n := bytes.IndexAny(text, ",]} \t\r\n:"); n >= 0 {
		return n
	}
	return len(text)
}

func spanText(text []byte) int {
	for i := 1; i < len(text); i++ {
		switch text[i] {
		case '\\':
			i++
		case '"':
			return i + 1
		}
	}
	return len(text)
}
