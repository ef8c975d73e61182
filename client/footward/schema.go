package main

import (
	"context"
	"flag"

	"footward.example/footward/proto/schema"
)

const schemaHelp = `footward schema [KIND] : print the JSON Schema of a request file

By it an editor completes and checks a file while it is written, with the unit, the
range and the default of every field. KIND is check (any checks; also without KIND),
one check such as plate_bending, combine, size or compare:

  footward schema > check.schema.json

An editor with a YAML language server takes it up by a first line in the request,
which footward example prints:

  # yaml-language-server: $schema=check.schema.json
`

func printSchema(_ context.Context, args []string, t terminal) int {
	names, code, done := parse(flag.NewFlagSet("schema", flag.ContinueOnError), schemaHelp, args, t)
	if done {
		return code
	}
	kind := schema.Check
	if len(names) > 0 {
		kind = alike(names[0], schemaKinds())
	}
	switch {
	case len(names) > 1:
		return t.wrong("schema takes one kind; see footward schema --help")
	case kind == "":
		return t.wrong("%s", none("kind", names[0], schemaKinds()))
	}
	text, err := schema.File(kind)
	if err == nil {
		_, err = t.out.Write(text)
	}
	if err != nil {
		return t.wrong("%v", err)
	}
	return allPass
}
