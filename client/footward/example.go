package main

import (
	"context"
	"embed"
	"flag"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"footward.example/footward/proto/schema"
)

// The demo's requests again, each with a heading of its own, since it stands alone
// where it is printed. A test holds the two sets together.
//
//go:embed example/*.yaml
var examples embed.FS

// exampleFiles are the examples by their kind, spelt as in files and as commands.
var exampleFiles = map[string]string{
	"bearing":       "example/1-bearing.yaml",
	"plate_bending": "example/2-plate.yaml",
	"weld":          "example/3-weld.yaml",
	"anchor_rods":   "example/4-rods.yaml",
	"column_base":   "example/5-base.yaml",
	"pin":           "example/6-pins.yaml",
	"anchorage":     "example/anchorage.yaml",
	"ring_stack":    "example/ring-stack.yaml",
	"footing":       "example/footing.yaml",
	"settlement":    "example/settlement.yaml",
	"combine":       "example/actions.yaml",
	"size":          "example/sizes.yaml",
	"compare":       "example/compare.yaml",
	"tests":         "example/tests.yaml",
	"reading":       "example/reading.yaml",
}

// earlier are names that examples once had.
var earlier = map[string]string{"actions": "combine", "sizes": "size"}

const exampleHelp = `footward example KIND : print a request to start from

KIND is one of bearing, plate_bending, weld, anchor_rods, anchorage, pin, ring_stack,
footing, settlement, column_base (to check), combine, size, compare, tests,
reading; - will do for _.
The request explains itself; write it to a file, change it, and check it:

  footward example weld > weld.yaml
  footward check weld.yaml
`

func example(_ context.Context, args []string, t terminal) int {
	kinds, code, done := parse(flag.NewFlagSet("example", flag.ContinueOnError), exampleHelp, args, t)
	if done {
		return code
	}
	known := exampleKinds()
	if len(kinds) != 1 {
		return t.wrong("name one of %s", strings.Join(known, ", "))
	}
	kind := alike(kinds[0], known)
	if kind == "" {
		kind = earlier[alike(kinds[0], slices.Collect(maps.Keys(earlier)))]
	}
	if kind == "" {
		return t.wrong("%s", none("example", kinds[0], known))
	}
	text, err := examples.ReadFile(exampleFiles[kind])
	if err == nil {
		_, err = t.out.Write(standingAlone(text))
	}
	if err != nil {
		return t.wrong("%v", err)
	}
	return allPass
}

// schemaLine is the first line of a request, by which editors find its schema.
var schemaLine = regexp.MustCompile(`^# yaml-language-server: \$schema=\S*?(\w+)\.schema\.json\n`)

// standingAlone names a schema beside the file, and how to get it there.
func standingAlone(text []byte) []byte {
	return schemaLine.ReplaceAllFunc(text, func(line []byte) []byte {
		kind := string(schemaLine.FindSubmatch(line)[1])
		command := "footward schema " + kind
		if kind == schema.Check {
			command = "footward schema"
		}
		return fmt.Appendf(nil, "# yaml-language-server: $schema=%s.schema.json\n"+
			"# Editors that know this line complete and check the file, once you have said:\n#   %s > %[1]s.schema.json\n#\n", kind, command)
	})
}
