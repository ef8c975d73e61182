package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"slices"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

const checkHelp = `footward check FILE... : check the requests in files and folders

A file is YAML or JSON and holds a check (bearing, plate_bending, weld,
anchor_rods, anchorage, pin, ring_stack, footing, settlement or column_base),
several of them under "items", or several documents divided by lines of "---". A
folder stands for every .yaml, .yml and .json file in it and in its folders. "-"
stands for standard input. To start, see footward example.

Up to 10 checks are printed in full, with a summary; of more only the summary.

Exit status: 0 all pass; 1 a check fails, is out of scope or not applicable;
2 bad input or no answer.

`

// fullUpTo is the most checks that are printed in full unless asked otherwise.
const fullUpTo = 10

// checkOptions is what the caller of check wants.
type checkOptions struct {
	derivation, json, full, brief bool
	connection                    connection
}

func (o *checkOptions) flags() *flag.FlagSet {
	f := flag.NewFlagSet("check", flag.ContinueOnError)
	f.BoolVar(&o.derivation, "derivation", false, "print the calculation too, step by step")
	f.BoolVar(&o.json, "json", false, "print the answers as JSON (a CheckManyResponse)")
	f.BoolVar(&o.full, "full", false, "print every check in full, however many there are")
	f.BoolVar(&o.brief, "brief", false, "print the summary only")
	o.connection.flags(f)
	return f
}

func check(ctx context.Context, args []string, t terminal) int {
	var o checkOptions
	names, code, done := parse(o.flags(), checkHelp, args, t)
	switch {
	case done:
		return code
	case len(names) == 0:
		return t.wrong("check what? Name a file or folder; see footward check --help")
	case o.brief && (o.full || o.derivation):
		return t.wrong("--brief goes neither with --full nor with --derivation")
	}
	tasks := gather(names, t.in)
	if !o.full && !o.derivation {
		o.brief = o.brief || len(tasks) > fullUpTo
	}
	c, err := o.connection.open()
	if err != nil {
		return t.wrong("%v", err)
	}
	defer c.Close()
	provenance, failed := ask(ctx, c, tasks, &o, t.err)
	if failed != nil && !slices.ContainsFunc(tasks, func(k *task) bool { return k.outcome != nil }) {
		return t.wrong("no answer from %s: %v", o.connection.name(), failed)
	}
	if o.json {
		err = printJSON(t, tasks, provenance)
	} else {
		for _, k := range tasks {
			atAPrompt(ctx, c, k.outcome.GetRefusal().GetViolations())
		}
		err = printReport(t, tasks, provenance, &o)
	}
	switch {
	case failed != nil:
		return t.wrong("no answer from %s: %v", o.connection.name(), failed)
	case err != nil:
		return t.wrong("%v", err)
	}
	return verdict(t, tasks)
}

// verdict returns the exit status, and says on standard error if some checks
// could not be made.
func verdict(t terminal, tasks []*task) int {
	code, unmade := allPass, 0
	for _, k := range tasks {
		switch r := k.outcome.GetResult(); {
		case r == nil:
			unmade++
		case r.GetVerdict() != footwardv1.Verdict_VERDICT_PASS:
			code = notAll
		}
	}
	if unmade > 0 {
		return t.wrong("%d of %s could not be made", unmade, counted(len(tasks), "check"))
	}
	return code
}

func printJSON(t terminal, tasks []*task, provenance *footwardv1.Provenance) error {
	m := &footwardv1.CheckManyResponse{Provenance: provenance}
	for i, k := range tasks {
		o := k.outcome
		if o == nil {
			o = &footwardv1.CheckOutcome{Outcome: &footwardv1.CheckOutcome_Refusal{Refusal: k.unreadable()}}
		}
		o.Index = uint32(i)
		m.Outcomes = append(m.Outcomes, o)
	}
	text, err := asJSON(m, "  ")
	if err != nil {
		return err
	}
	_, err = io.WriteString(t.out, text)
	return err
}

// unreadable puts the faults of a file in the words of the contract.
func (t *task) unreadable() *footwardv1.Refusal {
	r := &footwardv1.Refusal{}
	for _, f := range t.item.Faults {
		r.Violations = append(r.Violations, &footwardv1.FieldViolation{
			Description: fmt.Sprintf("%s: %s", faultPlace(t.file, f), f.Reason),
			Reason:      footwardv1.FieldReason_FIELD_REASON_UNKNOWN_VALUE,
		})
	}
	return r
}
