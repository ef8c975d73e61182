package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"slices"
)

// flagged takes the options of a command.
type flagged func(*flag.FlagSet)

// parse reads options from among the arguments, in any order, and returns the
// other arguments. After -- nothing is an option. When done is true there is
// nothing more to do but to exit with code.
func parse(f *flag.FlagSet, help string, args []string, t terminal) (rest []string, code int, done bool) {
	if t.flags != nil {
		t.flags(f)
		return nil, allPass, true
	}
	f.SetOutput(io.Discard)
	f.Usage = func() {}
	var plain []string
	if i := slices.Index(args, "--"); i >= 0 {
		args, plain = args[:i], args[i+1:]
	}
	for {
		err := f.Parse(args)
		if errors.Is(err, flag.ErrHelp) {
			fmt.Fprint(t.out, help)
			f.VisitAll(func(o *flag.Flag) { describe(t.out, o) })
			return nil, allPass, true
		}
		if err != nil {
			return nil, t.wrong("%v; see footward %s --help", err, f.Name()), true
		}
		if f.NArg() == 0 {
			return append(rest, plain...), allPass, false
		}
		rest, args = append(rest, f.Arg(0)), f.Args()[1:]
	}
}

func describe(w io.Writer, o *flag.Flag) {
	value, words := flag.UnquoteUsage(o)
	name := "--" + o.Name
	if value != "" {
		name += " " + value
	}
	fmt.Fprintf(w, "  %-22s %s\n", name, words)
}
