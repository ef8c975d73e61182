package main

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"strings"

	"footward.example/footward/proto/schema"
	"footward.example/footward/service/spelling"
)

// command is what follows footward at a prompt.
type command struct {
	name, takes, does string
	run               func(context.Context, []string, terminal) int
	// words are what it takes, asked for only where they are shown; nil: files.
	words func() []string
}

// commands are all of them, in the order in which they are told.
func commands() []command {
	return []command{
		{"check", "FILE...", "check the requests in files and folders", check, nil},
		{"combine", "FILE", "write out the combinations of actions", combine, nil},
		{"size", "FILE", "look for the cheapest column base that holds", sizing, nil},
		{"compare", "FILE", "hold a ring footing against a concrete pad", comparing, nil},
		{"tests", "FILE", "find what load tests of one population allow", tests, nil},
		{"reading", "FILE", "read the record of one load test", loadTest, nil},
		{"evidence", "", "print what holds the numbers, figure by figure", evidence, nothing},
		{"catalog", "[LIST...]", "list the names that requests may use", catalog, listNames},
		{"example", "KIND", "print a request to start from", example, exampleKinds},
		{"schema", "[KIND]", "print the JSON Schema of a request file", printSchema, schemaKinds},
		{"completion", "SHELL", "print a script by which a shell completes all this", completion, func() []string { return shells }},
		{"version", "", "print which build this is", version, nothing},
	}
}

func usage() string {
	var b strings.Builder
	b.WriteString("Footward checks the parts of a column base, from files.\n\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "  footward %-19s %s\n", c.name+" "+c.takes, c.does)
	}
	b.WriteString("\nEach explains itself with --help.\n")
	return b.String()
}

func commandNames() []string {
	var names []string
	for _, c := range commands() {
		names = append(names, c.name)
	}
	return names
}

func nothing() []string { return nil }

func exampleKinds() []string { return slices.Sorted(maps.Keys(exampleFiles)) }

func schemaKinds() []string {
	kinds, err := schema.Kinds()
	if err != nil {
		return []string{}
	}
	return kinds
}

// alike returns the known name that is spelt like a name, with - or _ and in capitals
// or not; empty: there is none.
func alike(name string, known []string) string {
	plain := func(s string) string { return strings.ReplaceAll(strings.ToLower(s), "-", "_") }
	for _, k := range known {
		if plain(k) == plain(name) {
			return k
		}
	}
	return ""
}

// none says that a name is none of the known ones, which is nearest, and which there
// are.
func none(kind, name string, known []string) string {
	return fmt.Sprintf("there is no %s %q%s; name one of %s", kind, name, spelling.Hint(name, known), strings.Join(known, ", "))
}
