package reading

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"footward.example/footward/service/spelling"
)

var (
	// The message library puts ":line:column reason" before the line itself.
	placed = regexp.MustCompile(`^:(\d+):(\d+) (.*)`)
	// The YAML parser puts "line n: " into its reason, counted from 1.
	lined     = regexp.MustCompile(`^(?:yaml: )?(?:line (\d+): )?`)
	notNumber = regexp.MustCompile(`^invalid (?:float|integer): .*parsing (".*"): (.*)$`)
	// It names what it knows of fields and of values of an enum.
	unknown = regexp.MustCompile(`^unknown (field|enum value) "(.*)", expected one of \[(.*)\]$`)
)

// unspecified ends the name of each enum's zero, which is refused where a value is
// needed and is the default elsewhere.
const unspecified = "_UNSPECIFIED"

// longest is how much of a line or value is shown.
const longest = 200

// faults splits an error into what is wrong at each place.
func (d document) faults(err error) []Fault {
	if err == nil {
		return nil
	}
	all := []error{err}
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		all = joined.Unwrap()
	}
	var out []Fault
	for _, e := range all[:min(len(all), maxFaults)] {
		out = append(out, d.fault(e.Error()))
	}
	return out
}

func (d document) fault(text string) Fault {
	text, source, _ := strings.Cut(text, "\n")
	if m := placed.FindStringSubmatch(text); m != nil {
		f := Fault{Reason: inWords(m[3])}
		f.Line, _ = strconv.Atoi(m[1])
		f.Column, _ = strconv.Atoi(m[2])
		f.Line += d.first
		if _, line, ok := strings.Cut(source, " | "); ok {
			line, _, _ = strings.Cut(line, "\n")
			f.Source = shorten(line)
		}
		return f
	}
	m := lined.FindStringSubmatch(text)
	f := Fault{Reason: shorten(text[len(m[0]):])}
	if m[1] != "" {
		f.Line, _ = strconv.Atoi(m[1])
		f.Line += d.first
	}
	return f
}

// inWords puts a reason into the words of somebody who writes requests.
func inWords(reason string) string {
	if m := notNumber.FindStringSubmatch(reason); m != nil {
		if m[2] == "value out of range" {
			return shorten(m[1]) + " is too large for a number"
		}
		return shorten(m[1]) + " is not a number; units stand in the name of the field"
	}
	if m := unknown.FindStringSubmatch(reason); m != nil {
		known := slices.DeleteFunc(whole(strings.Fields(m[3])), func(name string) bool { return strings.HasSuffix(name, unspecified) })
		return spelling.Unknown(m[1], m[2], known, true)
	}
	reason = strings.ReplaceAll(reason, "expected fields for footward.v1.", "expected the fields of ")
	return shorten(reason)
}

func shorten(s string) string {
	if len(s) <= longest {
		return s
	}
	return strings.ToValidUTF8(s[:longest], "") + " ..."
}
