package main

import (
	"embed"
	"flag"
	"maps"
	"slices"
	"strings"
)

// The demo's requests again, since an embedded file must lie below its package.
// A test holds the two sets together.
//
//go:embed example/*.yaml
var examples embed.FS

var exampleFiles = map[string]string{
	"bearing":       "example/1-bearing.yaml",
	"plate-bending": "example/2-plate.yaml",
	"weld":          "example/3-weld.yaml",
	"anchor-rods":   "example/4-rods.yaml",
	"column-base":   "example/5-base.yaml",
	"pin":           "example/6-pins.yaml",
	"anchorage":     "example/anchorage.yaml",
	"ring-stack":    "example/ring-stack.yaml",
	"footing":       "example/footing.yaml",
	"settlement":    "example/settlement.yaml",
	"actions":       "example/actions.yaml",
	"sizes":         "example/sizes.yaml",
	"compare":       "example/compare.yaml",
}

const exampleHelp = `footward example KIND : print a request to start from

KIND is one of bearing, plate-bending, weld, anchor-rods, anchorage, pin, ring-stack,
footing, settlement, column-base (to check), actions (to combine), sizes (to size),
compare. The request explains itself; write it to a file, change it, and check it:

  footward example weld > weld.yaml
  footward check weld.yaml
`

func example(args []string, t terminal) int {
	kinds, code, done := parse(flag.NewFlagSet("example", flag.ContinueOnError), exampleHelp, args, t)
	if done {
		return code
	}
	known := strings.Join(slices.Sorted(maps.Keys(exampleFiles)), ", ")
	if len(kinds) != 1 {
		return t.wrong("name one of %s", known)
	}
	file, ok := exampleFiles[kinds[0]]
	if !ok {
		return t.wrong("there is no example %q; name one of %s", kinds[0], known)
	}
	text, err := examples.ReadFile(file)
	if err == nil {
		_, err = t.out.Write(text)
	}
	if err != nil {
		return t.wrong("%v", err)
	}
	return allPass
}
