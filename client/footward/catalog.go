package main

import (
	"context"
	"flag"
	"io"
	"slices"
	"strings"

	"google.golang.org/protobuf/proto"

	"footward.example/footward/client"
)

var catalogHelp = `footward catalog [LIST...] : list the names that requests may use

LIST is one or more of the following. Without any, all are printed.

  ` + strings.Join(listNames(), "\n  ") + `

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
	inJSON := f.Bool("json", false, "print the answers of the service as JSON, one a line")
	from.flags(f)
	names, code, done := parse(f, catalogHelp, args, t)
	if done {
		return code
	}
	wanted, unknown := chosen(names)
	if unknown != "" {
		return t.wrong("%s", none("list", unknown, listNames()))
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
		if *inJSON {
			text, err := asJSON(m, "")
			if err != nil {
				return t.wrong("%v", err)
			}
			p.text.WriteString(text)
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

// listNames are the names of all lists.
func listNames() []string {
	names := make([]string, len(lists))
	for i, l := range lists {
		names[i] = l.name
	}
	return names
}

// chosen returns the lists by name, or the first name that is none.
func chosen(names []string) (wanted []list, unknown string) {
	if len(names) == 0 {
		return lists, ""
	}
	known := listNames()
	for _, name := range names {
		i := slices.Index(known, alike(name, known))
		if i < 0 {
			return nil, name
		}
		wanted = append(wanted, lists[i])
	}
	return wanted, ""
}
