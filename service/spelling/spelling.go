// Package spelling tells somebody who misspelt a name which one was meant, and
// which there are.
package spelling

import (
	"fmt"
	"slices"
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

// All are the names of an enum's values.
func All(e protoreflect.EnumDescriptor) []string {
	out := make([]string, e.Values().Len())
	for i := range out {
		out[i] = string(e.Values().Get(i).Name())
	}
	return out
}

// Values are those that may be sent: all but that of zero.
func Values(e protoreflect.EnumDescriptor) []string {
	zero := e.Values().ByNumber(0)
	return slices.DeleteFunc(All(e), func(name string) bool { return zero != nil && name == string(zero.Name()) })
}

// Unknown says that none of the known names is one, such as a field: which is
// nearest, and which there are. Without a hint it leaves out the first.
func Unknown(kind, name string, known []string, hint bool) string {
	near := ""
	if hint {
		near = Hint(name, known)
	}
	return fmt.Sprintf("unknown %s %q%s; known are %s", kind, Cut(name, longestName), near, strings.Join(known, ", "))
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
