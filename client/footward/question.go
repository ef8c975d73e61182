package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"google.golang.org/protobuf/proto"

	"footward.example/footward/client"
	"footward.example/footward/client/footward/reading"
)

// question is a command that sends the one request of a file and prints the answer.
type question struct {
	command, help string
	answer        string              // name of the message that --json prints
	flags         func(*flag.FlagSet) // of its own; nil: none
	request       proto.Message
	more          func() error // completes the request from other files; nil: nothing
	ask           func(ctx context.Context, c *client.Client, asJSON bool) (proto.Message, error)
	show          func(*page)
	passes        func() bool // nil: any answer is what was asked for
}

// run asks the question and returns the exit status.
func (q *question) run(ctx context.Context, args []string, t terminal) int {
	var from connection
	f := flag.NewFlagSet(q.command, flag.ContinueOnError)
	inJSON := f.Bool("json", false, "print the answer as JSON (a "+q.answer+")")
	if q.flags != nil {
		q.flags(f)
	}
	from.flags(f)
	names, code, done := parse(f, q.help, args, t)
	if done {
		return code
	}
	if wrong := readOne(names, q.command, q.request, t); wrong != "" {
		return t.wrong("%s", wrong)
	}
	if q.more != nil {
		if err := q.more(); err != nil {
			return t.wrong("%v", err)
		}
	}
	c, err := from.open()
	if err != nil {
		return t.wrong("%v", err)
	}
	defer c.Close()
	m, err := q.ask(ctx, c, *inJSON)
	if err != nil {
		violations := client.Violations(err)
		atAPrompt(ctx, c, violations)
		return t.unanswered(names[0], from.name(), err, violations)
	}
	if *inJSON {
		if code := t.message(m); code != allPass {
			return code
		}
	} else {
		p := newPage(t.out)
		q.show(p)
		if _, err := io.WriteString(t.out, p.text.String()); err != nil {
			return t.wrong("%v", err)
		}
	}
	if q.passes != nil && !q.passes() {
		return notAll
	}
	return allPass
}

// readOne reads the one request that is named, or says what is wrong.
func readOne(names []string, command string, m proto.Message, t terminal) string {
	if len(names) != 1 {
		return fmt.Sprintf("name one file; see footward %s --help", command)
	}
	source, name := t.in, names[0]
	if name != standardInput {
		opened, err := os.Open(name)
		if err != nil {
			return fmt.Sprintf("%s: %s", name, plain(err))
		}
		defer opened.Close()
		source = opened
	}
	faults, err := reading.One(source, m)
	if err != nil {
		return fmt.Sprintf("%s %v", name, err)
	}
	var out []string
	for _, f := range faults {
		out = append(out, fmt.Sprintf("%s: %s", faultPlace(name, f), f.Reason))
	}
	return strings.Join(out, "\n")
}
