package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"math"
	"slices"

	"footward.example/footward/client"
	"footward.example/footward/client/footward/proof"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/spelling"
	"footward.example/footward/testdata/published"
)

const evidenceHelp = `footward evidence : print what holds the numbers, figure by figure

Asks for every figure that was printed elsewhere or worked by hand, and sets what is
answered beside it. The deviation is in per cent of the figure; the tolerance is what
the source's rounding allows.

Exit status: 0 every figure is met; 1 one is not; 2 no answer.

`

// held is how an answer names the evidence of a limit state.
var held = map[footwardv1.Evidence]string{
	footwardv1.Evidence_EVIDENCE_UNSPECIFIED: "",
	footwardv1.Evidence_EVIDENCE_PRINTED:     "printed",
	footwardv1.Evidence_EVIDENCE_WORKED:      "worked",
	footwardv1.Evidence_EVIDENCE_MODEL:       "model",
}

// sum counts the figures that were set side by side.
type sum struct{ printed, worked, missed int }

func evidence(ctx context.Context, args []string, t terminal) int {
	var from connection
	f := flag.NewFlagSet("evidence", flag.ContinueOnError)
	state := f.String("state", "", "print the figures of the limit state with this `ID` only")
	from.flags(f)
	names, code, done := parse(f, evidenceHelp, args, t)
	switch {
	case done:
		return code
	case len(names) > 0:
		return t.wrong("evidence takes no file; see footward evidence --help")
	}
	sources, err := proof.Read(published.Files)
	if err != nil {
		return t.wrong("%v", err)
	}
	if *state != "" {
		known := heldStates(sources)
		if alike(*state, known) == "" {
			return t.wrong("no figure holds a limit state %q%s; footward catalog limit-states lists them", *state, spelling.Hint(*state, known))
		}
		*state = alike(*state, known)
	}
	c, err := from.open()
	if err != nil {
		return t.wrong("%v", err)
	}
	defer c.Close()
	p := newPage(t.out)
	var all sum
	for i := range sources {
		if err := p.source(ctx, c, &sources[i], *state, &all); err != nil {
			return t.wrong("no answer from %s: %v", from.name(), inWords(err))
		}
	}
	p.line(fmt.Sprintf("%d printed figures and %d worked by hand; %d are not met.", all.printed, all.worked, all.missed))
	if _, err := io.WriteString(t.out, p.text.String()); err != nil {
		return t.wrong("%v", err)
	}
	if all.missed > 0 {
		return notAll
	}
	return allPass
}

// heldStates are the limit states that have figures.
func heldStates(sources []proof.Source) []string {
	var all []string
	for _, s := range sources {
		for _, f := range s.Figures {
			for _, v := range f.Expect {
				all = append(all, v.State)
			}
		}
	}
	slices.Sort(all)
	return slices.DeleteFunc(slices.Compact(all), func(id string) bool { return id == "" })
}

var evidenceColumns = []column{
	{title: "Limit state"}, {title: "What", wraps: true}, {title: "Given", right: true},
	{title: "Computed", right: true}, {title: "Unit"}, {title: "Deviation", right: true}, {title: ""},
}

// source writes the figures of one source, those of a state only where it is named.
func (p *page) source(ctx context.Context, c *client.Client, s *proof.Source, state string, all *sum) error {
	titled := false
	for i := range s.Figures {
		f := &s.Figures[i]
		item, err := f.Item()
		if err != nil {
			return err
		}
		answer, err := c.CheckMany(ctx, &footwardv1.CheckManyRequest{Items: []*footwardv1.CheckItem{item}})
		if err != nil {
			return err
		}
		var rows [][]string
		for j := range f.Expect {
			v := &f.Expect[j]
			if state != "" && v.State != state {
				continue
			}
			got, err := v.Computed(answer.GetOutcomes()[0].GetResult())
			met := err == nil && math.Abs(got-v.Value) <= v.Tolerance
			all.count(s.Constructed, met)
			rows = append(rows, evidenceRow(v, got, met))
		}
		if len(rows) == 0 {
			continue
		}
		if !titled {
			p.heading(s)
			titled = true
		}
		p.paragraph("  "+f.ID+": ", f.Place)
		p.table("    ", evidenceColumns, rows)
		p.blank()
	}
	return nil
}

func (p *page) heading(s *proof.Source) {
	kind := "Printed"
	if s.Constructed {
		kind = "Worked by hand"
	}
	p.paragraph("", kind+": "+s.Source+", "+s.Edition)
	p.paragraph("  ", s.Provenance)
	p.blank()
}

func (s *sum) count(constructed, met bool) {
	if constructed {
		s.worked++
	} else {
		s.printed++
	}
	if !met {
		s.missed++
	}
}

func evidenceRow(v *proof.Value, got float64, met bool) []string {
	what := v.What
	if v.Symbol != "" {
		what = v.Symbol
	}
	row := []string{v.State, what, figure(v.Value), "", v.Unit, "", ""}
	if !math.IsNaN(got) {
		row[3] = figure(got)
		if v.Value != 0 {
			row[5] = fmt.Sprintf("%.2f %%", 100*(got-v.Value)/math.Abs(v.Value))
		}
	}
	if !met {
		row[6] = "NOT MET"
	}
	return row
}
