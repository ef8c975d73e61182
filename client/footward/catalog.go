package main

import (
	"context"
	"flag"
	"io"
	"strings"

	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"

	"footward.example/footward/client"
)

const catalogHelp = `footward catalog [LIST...] : list the names that requests may use

LIST is one or more of bases, steels, rod-steels, threads, fillers, concretes,
timbers, unit-weights, limit-states, notices. Without any, all are printed.

`

// list is a list of the catalogue.
type list struct {
	name, title string
	// fetch returns the answer, and its entries as rows under the columns.
	fetch   func(context.Context, *client.Client) (proto.Message, [][]string, error)
	columns []column
}

func catalog(ctx context.Context, args []string, t terminal) int {
	var from connection
	f := flag.NewFlagSet("catalog", flag.ContinueOnError)
	asJSON := f.Bool("json", false, "print the answers of the service as JSON, one a line")
	from.flags(f)
	names, code, done := parse(f, catalogHelp, args, t)
	if done {
		return code
	}
	wanted, unknown := chosen(names)
	if unknown != "" {
		return t.wrong("there is no list %q; see footward catalog --help", unknown)
	}
	c, err := from.open()
	if err != nil {
		return t.wrong("%v", err)
	}
	defer c.Close()
	p := newPage(t.out)
	for _, l := range wanted {
		m, rows, err := l.fetch(ctx, c)
		if err != nil {
			return t.wrong("no answer from %s: %v", from.name(), inWords(err))
		}
		if *asJSON {
			text, err := protojson.MarshalOptions{UseProtoNames: true}.Marshal(m)
			if err != nil {
				return t.wrong("%v", err)
			}
			p.text.Write(append(text, '\n'))
			continue
		}
		if p.text.Len() > 0 {
			p.blank()
		}
		p.line(l.title)
		p.table("  ", l.columns, rows)
	}
	if _, err := io.WriteString(t.out, p.text.String()); err != nil {
		return t.wrong("%v", err)
	}
	return allPass
}

// chosen returns the lists by name, or the first name that is none.
func chosen(names []string) (wanted []list, unknown string) {
	if len(names) == 0 {
		return lists, ""
	}
	for _, name := range names {
		found := false
		for _, l := range lists {
			if strings.EqualFold(l.name, name) {
				wanted, found = append(wanted, l), true
			}
		}
		if !found {
			return nil, name
		}
	}
	return wanted, ""
}
