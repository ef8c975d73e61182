package main

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"text/tabwriter"
)

const (
	excusedAs = "with a reason"
	notTried  = "not tried"
	cannot    = "cannot"
)

// report prints what survives without a reason, and for each part how many of its
// mutants are killed.
func report(all []*mutant, done map[string]string, may []reason) {
	total := map[string]int{}
	parts := map[string]map[string]int{}
	kinds := map[string]map[string]int{}
	why := map[string]int{}
	for _, m := range all {
		what := done[m.id()]
		reason := excused(may, m)
		switch {
		case m.cannot != "":
			what = cannot
			why[m.cannot]++
		case what == "":
			what = notTried
		case what == golden:
			what = byGolden
		case what == survived || what == nowhere || what == notYet:
			if reason != "" {
				what = excusedAs
			} else {
				fmt.Printf("%s: %s:%d | %s\n", what, m.file.path, m.line, m.reason())
			}
		}
		for _, count := range []map[string]int{total, under(parts, m.part), under(kinds, m.kind)} {
			count[what]++
		}
	}
	out := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', 0)
	fmt.Fprintln(out, "\tkilled\tof\tby its part\tanother part\ta figure\tthe service\tgolden alone\tsurvive with a reason\twithout\tnot tried\tcannot be")
	for _, name := range slices.Sorted(maps.Keys(parts)) {
		row(out, name, parts[name])
	}
	for _, name := range slices.Sorted(maps.Keys(kinds)) {
		row(out, name, kinds[name])
	}
	row(out, "all", total)
	out.Flush()
	for _, w := range slices.Sorted(maps.Keys(why)) {
		fmt.Printf("cannot be tried: %d, %s\n", why[w], w)
	}
	killed, of := sum(total)
	fmt.Printf("%d killed of %d, %d of them by golden numbers alone; %d survive with a reason, %d without\n",
		killed, of, total[byGolden], total[excusedAs], left(total))
}

func under(all map[string]map[string]int, name string) map[string]int {
	if all[name] == nil {
		all[name] = map[string]int{}
	}
	return all[name]
}

// sum is how many were killed, of how many that were tried.
func sum(n map[string]int) (killed, of int) {
	killed = n[byPart] + n[byOther] + n[byFigure] + n[byService] + n[byGolden]
	return killed, killed + n[excusedAs] + left(n)
}

// left is how many survive without a reason.
func left(n map[string]int) int { return n[survived] + n[nowhere] + n[notYet] }

func row(out *tabwriter.Writer, name string, n map[string]int) {
	killed, of := sum(n)
	fmt.Fprintf(out, "%s\t%d\t%d\t%d\t%d\t%d\t%d\t%d\t%d\t%d\t%d\t%d\n", name, killed, of,
		n[byPart], n[byOther], n[byFigure], n[byService], n[byGolden], n[excusedAs], left(n), n[notTried], n[cannot])
}
