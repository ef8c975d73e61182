package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"

	"footward.example/footward/client"
	"footward.example/footward/client/footward/reading"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

const combineHelp = `footward combine FILE : write out the combinations of actions

FILE is YAML or JSON and holds one request to LoadService.CombineActions; "-"
stands for standard input. To start, see footward example actions.

Exit status: 0 combined; 2 bad input or no answer.

`

func combine(ctx context.Context, args []string, t terminal) int {
	var from connection
	f := flag.NewFlagSet("combine", flag.ContinueOnError)
	asJSON := f.Bool("json", false, "print the answer as JSON (a CombineActionsResponse)")
	all := f.Bool("all", false, "print every combination, not the envelope only")
	from.flags(f)
	names, code, done := parse(f, combineHelp, args, t)
	if done {
		return code
	}
	request := &footwardv1.CombineActionsRequest{}
	if wrong := readOne(names, "combine", request, t); wrong != "" {
		return t.wrong("%s", wrong)
	}
	c, err := from.open()
	if err != nil {
		return t.wrong("%v", err)
	}
	defer c.Close()
	request.EnvelopeOnly = request.EnvelopeOnly || !*all && !*asJSON
	m, err := c.CombineActions(ctx, request)
	if err != nil {
		return t.unanswered(names[0], from.name(), err)
	}
	if *asJSON {
		return t.message(m)
	}
	p := newPage(t.out)
	p.combinations(request, m)
	if _, err := io.WriteString(t.out, p.text.String()); err != nil {
		return t.wrong("%v", err)
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

// unanswered says why there is no answer: every field that was refused, by its
// path, or what came between.
func (t terminal) unanswered(file, server string, err error) int {
	violations := client.Violations(err)
	if len(violations) == 0 {
		return t.wrong("no answer from %s: %v", server, inWords(err))
	}
	lines := []string{file + " was refused"}
	for _, v := range violations {
		lines = append(lines, "  "+v.GetField()+": "+v.GetDescription())
	}
	return t.wrong("%s", strings.Join(lines, "\n"))
}

// message prints an answer as JSON.
func (t terminal) message(m proto.Message) int {
	text, err := protojson.MarshalOptions{Multiline: true, UseProtoNames: true}.Marshal(m)
	if err == nil {
		_, err = fmt.Fprintf(t.out, "%s\n", text)
	}
	if err != nil {
		return t.wrong("%v", err)
	}
	return allPass
}

var forceColumns = []column{
	{title: "N, kN", right: true}, {title: "V_x, kN", right: true}, {title: "V_y, kN", right: true},
	{title: "M_x, kNm", right: true}, {title: "M_y, kNm", right: true}, {title: "T, kNm", right: true},
}

func forceCells(f *footwardv1.ForcesAtFoot) []string {
	return []string{
		short(f.GetNKn()), short(f.GetVXKn()), short(f.GetVYKn()), short(f.GetMXKnm()), short(f.GetMYKnm()), short(f.GetTKnm()),
	}
}

func (p *page) combinations(request *footwardv1.CombineActionsRequest, m *footwardv1.CombineActionsResponse) {
	if m.GetLabel() != "" {
		p.line(m.GetLabel())
		p.blank()
	}
	stages := request.GetActionSet().GetStages()
	var rows [][]string
	for _, c := range m.GetCombinations() {
		stage := ""
		if i := int(c.GetStage()) - 1; i >= 0 && i < len(stages) {
			stage = stages[i].GetName()
		}
		rows = append(rows, append([]string{c.GetName(), stage}, forceCells(c.GetForces())...))
	}
	p.table("  ", append([]column{{title: "Combination", wraps: true}, {title: "Stage", wraps: true}}, forceColumns...), rows)
	p.notices(m.GetNotices())
	p.origin(m.GetProvenance())
}
