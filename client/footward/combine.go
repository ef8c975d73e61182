package main

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"io"
	"strings"

	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

const combineHelp = `footward combine FILE : write out the combinations of actions

FILE is YAML or JSON and holds one request; "-" stands for standard input. To start,
see footward example combine.

Exit status: 0 combined; 2 bad input or no answer.

`

func combine(ctx context.Context, args []string, t terminal) int {
	var all bool
	request, answer := &footwardv1.CombineActionsRequest{}, &footwardv1.CombineActionsResponse{}
	q := question{
		command: "combine", help: combineHelp, answer: "CombineActionsResponse", request: request,
		flags: func(f *flag.FlagSet) {
			f.BoolVar(&all, "all", false, "print every combination, not the envelope only")
		},
		ask: func(ctx context.Context, c *client.Client, asJSON bool) (m proto.Message, err error) {
			request.EnvelopeOnly = request.EnvelopeOnly || !all && !asJSON
			answer, err = c.CombineActions(ctx, request)
			return answer, err
		},
		show: func(p *page) { p.combinations(request, answer) },
	}
	return q.run(ctx, args, t)
}

// unanswered says why there is no answer: every field that was refused, by its
// path, or what came between.
func (t terminal) unanswered(file, server string, err error, violations []*footwardv1.FieldViolation) int {
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
	text, err := asJSON(m, "  ")
	if err == nil {
		_, err = io.WriteString(t.out, text)
	}
	if err != nil {
		return t.wrong("%v", err)
	}
	return allPass
}

// asJSON writes a message with a line for each value, or in one line without an
// indent. protojson strews in blanks by chance, lest anybody rely on its text; here
// the same answer is the same text.
func asJSON(m proto.Message, indent string) (string, error) {
	text, err := protojson.MarshalOptions{UseProtoNames: true}.Marshal(m)
	if err != nil {
		return "", err
	}
	var b bytes.Buffer
	if indent == "" {
		err = json.Compact(&b, text)
	} else {
		err = json.Indent(&b, text, "", indent)
	}
	return b.String() + "\n", err
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
