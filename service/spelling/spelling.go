// Package spelling tells somebody who misspelt a name which one was meant, and
// which there are.
package spelling

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"google.golang.org/protobuf/reflect/protoreflect"
)

// Fields are the names of a message's fields in the contract.
func Fields(d protoreflect.MessageDescriptor) []string {
	out := make([]string, d.Fields().Len())
	for i := range out {
		out[i] = string(d.Fields().Get(i).Name())
	}
	return out
}

// Values are the names of an enum that may be sent: all but that of zero.
func Values(e protoreflect.EnumDescriptor) []string {
	var out []string
	for i := range e.Values().Len() {
		if v := e.Values().Get(i); v.Number() != 0 {
			out = append(out, string(v.Name()))
		}
	}
	return out
}

// Unknown says that none of the known names is one, such as a field: which is
// nearest, and which there are.
func Unknown(kind, name string, known []string) string {
	return fmt.Sprintf("unknown %s %q%s; known are %s", kind, Cut(name, longestName), Hint(name, known), strings.Join(known, ", "))
}

// Hint names the known name that is nearest, behind a comma; empty: none is near.
func Hint(name string, known []string) string {
	if near := Nearest(name, known); near != "" {
		return ", nearest is " + near
	}
	return ""
}

// longestName is how much is shown of a name [characters].
const longestName = 60

// Cut shortens a text to so many characters, and marks where it did.
func Cut(text string, most int) string {
	if utf8.RuneCountInString(text) <= most {
		return strings.ToValidUTF8(text, "\ufffd")
	}
	return string([]rune(strings.ToValidUTF8(text, "\ufffd"))[:most]) + "..."
}
