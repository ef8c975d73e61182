package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
)

// What became of a mutant. Golden numbers hold what a number was, not that it is
// right: what they alone notice is counted by itself.
const (
	byPart    = "killed by its part"
	byOther   = "killed by another part"
	byFigure  = "killed by a figure"
	byService = "killed by the service"
	byGolden  = "killed by golden numbers alone"
	survived  = "survives"
	nowhere   = "survives, reached by nothing"
)

// judge tries mutants: first the published figures, many mutants in one process, then
// the tests of the kernel and of the service.
type judge struct {
	w      *world
	suites map[string]*suite
	above  map[string][]string
	api    *suite
	bare   map[int]bool // places reached at the start of a process
	atOnce int
}

// try says what becomes of each mutant.
func (j *judge) try(all []*mutant) (map[*mutant]string, error) {
	var lock sync.Mutex
	out := map[*mutant]string{}
	set := func(m *mutant, what string) {
		lock.Lock()
		defer lock.Unlock()
		out[m] = what
	}
	asked, err := j.ask(all)
	if err != nil {
		return nil, err
	}
	each(all, j.atOnce, func(m *mutant) {
		set(m, j.fate(m, asked[m]))
	})
	return out, nil
}

// fate is what becomes of a mutant of which the service was asked: "figure", "golden",
// "none", or nothing where it could not be.
func (j *judge) fate(m *mutant, asked string) string {
	reached := reaching(j.api.quick, m.cover)
	figures := func(t test) bool { return t.name == "TestPublishedFigures" }
	if asked == "figure" {
		return byFigure
	}
	for _, name := range j.above[m.part] {
		s, what := j.suites[name], byOther
		if name == m.part {
			what = byPart
		}
		if s.notices(m.change(), reaching(s.quick, m.cover), "-test.short") ||
			name == m.part && s.notices(m.change(), reaching(s.whole, m.cover)) {
			return what
		}
	}
	switch {
	case asked == "" && j.api.notices(m.change(), slices.DeleteFunc(slices.Clone(reached), func(t test) bool { return !figures(t) })):
		return byFigure
	case j.api.notices(m.change(), slices.DeleteFunc(slices.Clone(reached), figures), "-test.short"):
		return byService
	case asked == "golden",
		asked == "" && j.api.notices(m.change(), []test{{name: "TestResultsChangeWithTheRevision", seconds: 5}}):
		return byGolden
	case len(reached) == 0 && !j.reached(m):
		return nowhere
	}
	return survived
}

// reached is whether any test of the kernel reaches a mutant.
func (j *judge) reached(m *mutant) bool {
	return slices.ContainsFunc(j.above[m.part], func(name string) bool {
		s := j.suites[name]
		return len(reaching(s.quick, m.cover)) > 0 || len(reaching(s.whole, m.cover)) > 0
	})
}

// ask asks the published requests and those of the golden numbers for many mutants in
// one process: "figure", "golden" or "none". What acts while tables are filled needs a
// process of its own and is left to fate.
func (j *judge) ask(all []*mutant) (map[*mutant]string, error) {
	out := map[*mutant]string{}
	todo := slices.DeleteFunc(slices.Clone(all), func(m *mutant) bool {
		return m.start || slices.ContainsFunc(m.cover, func(p int) bool { return j.bare[p] })
	})
	for len(todo) > 0 {
		n, err := j.askOnce(todo, out)
		if err != nil {
			return nil, err
		}
		todo = todo[n:]
	}
	return out, nil
}

// askOnce runs one process, and says how many it got through.
func (j *judge) askOnce(all []*mutant, out map[*mutant]string) (int, error) {
	list, err := filepath.Abs(filepath.Join(work, "list.txt"))
	if err != nil {
		return 0, err
	}
	answers := list + ".out"
	var b strings.Builder
	for i, m := range all {
		fmt.Fprint(&b, i, " ", m.change())
		for _, p := range m.cover {
			fmt.Fprint(&b, " ", p)
		}
		b.WriteByte('\n')
	}
	if err := os.WriteFile(list, []byte(b.String()), 0o644); err != nil {
		return 0, err
	}
	if err := os.RemoveAll(answers); err != nil {
		return 0, err
	}
	c := j.api.command([]string{"MUTANT_LIST=" + list, "MUTANT_OUT=" + answers}, 3600, "-test.run", "^TestMutants$")
	said, failed := c.CombinedOutput()
	text, err := os.ReadFile(answers)
	if err != nil {
		return 0, fmt.Errorf("asking the service: %w\n%s", failed, said)
	}
	asks := map[int]string{}
	done := 0
	for line := range strings.Lines(string(text)) {
		words := strings.Fields(line)
		i, err := strconv.Atoi(words[0])
		if err != nil {
			return 0, err
		}
		if done = i; words[1] == "asks" {
			asks[i] = words[2]
			continue
		}
		delete(asks, i)
		out[all[i]] = words[1]
	}
	// What it asked and did not answer ended the process: endless, or out of memory.
	for i, what := range asks {
		out[all[i]] = what
	}
	if done+1 < len(all) && failed == nil {
		return 0, fmt.Errorf("asking the service: stopped after %d of %d\n%s", done+1, len(all), said)
	}
	return done + 1, nil
}
