package main

import (
	"context"
	"flag"
	"fmt"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

const versionHelp = `footward version : print which build this is

With --server: which build answers there. A result may change when the revision of the
calculation kernel does.

`

func version(ctx context.Context, args []string, t terminal) int {
	var from connection
	f := flag.NewFlagSet("version", flag.ContinueOnError)
	from.flags(f)
	names, code, done := parse(f, versionHelp, args, t)
	switch {
	case done:
		return code
	case len(names) > 0:
		return t.wrong("version takes nothing; see footward version --help")
	}
	c, err := from.open()
	if err != nil {
		return t.wrong("%v", err)
	}
	defer c.Close()
	// Every answer says what produced it, also that to an item without a check.
	m, err := c.CheckMany(ctx, &footwardv1.CheckManyRequest{Items: []*footwardv1.CheckItem{{}}})
	if err != nil {
		return t.wrong("no answer from %s: %v", from.name(), inWords(err))
	}
	p := m.GetProvenance()
	fmt.Fprintf(t.out, "Footward %s, calculation kernel revision %d\n", p.GetServiceVersion(), p.GetKernelRevision())
	return allPass
}
