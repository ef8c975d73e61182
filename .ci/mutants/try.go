package main

import (
	"fmt"
	"maps"
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
	// After a short run:
	notYet = "survives so far"
	golden = "golden numbers so far"
)

const (
	figures = "TestPublishedFigures"
	numbers = "TestResultsChangeWithTheRevision"
	enough  = 2.0 // s of tests of its part in a short run
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
	// short leaves out the parts above, the service and what takes long.
	short bool
}

// try says what becomes of each mutant, one by one.
func (j *judge) try(all []*mutant, say func(*mutant, string)) error {
	asked, err := j.ask(all)
	if err != nil {
		return err
	}
	var lock sync.Mutex
	each(all, j.atOnce, func(m *mutant) {
		what := j.fate(m, asked[m])
		lock.Lock()
		defer lock.Unlock()
		say(m, what)
	})
	return nil
}

// fate is what becomes of a mutant of which the service was asked: "figure", "golden",
// "none", or nothing where it could not be.
func (j *judge) fate(m *mutant, asked string) string {
	own, change := j.suites[m.part], m.change()
	switch {
	case asked == "figure":
		return byFigure
	case own.notices(change, j.some(reaching(own.quick, m.cover)), "-test.short"):
		return byPart
	}
	if asked == "" {
		asked = j.process(m)
	}
	switch {
	case asked == "figure":
		return byFigure
	case j.short && asked == "golden":
		return golden
	case j.short:
		return notYet
	case own.notices(change, reaching(own.whole, m.cover)):
		return byPart
	}
	for _, name := range j.above[m.part][1:] {
		if s := j.suites[name]; s.notices(change, reaching(s.quick, m.cover), "-test.short") {
			return byOther
		}
	}
	rest := slices.DeleteFunc(reaching(j.api.quick, m.cover), func(t test) bool { return t.name == figures })
	switch {
	case j.api.notices(change, rest, "-test.short"):
		return byService
	case asked == "golden":
		return byGolden
	case len(rest) == 0 && !j.reached(m):
		return nowhere
	}
	return survived
}

// some are the quickest of the tests, where a run is to be short.
func (j *judge) some(all []test) []test {
	sum := 0.0
	for i, t := range all {
		if sum += t.seconds; j.short && sum > enough {
			return all[:i]
		}
	}
	return all
}

// process asks the service in a process of its own.
func (j *judge) process(m *mutant) string {
	switch {
	case j.api.notices(m.change(), []test{{name: figures, seconds: 2}}):
		return "figure"
	case j.api.notices(m.change(), []test{{name: numbers, seconds: 5}}):
		return "golden"
	}
	return "none"
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
	if len(todo) == 0 {
		return out, nil
	}
	var lock sync.Mutex
	var failed error
	each(slices.Collect(slices.Chunk(todo, (len(todo)+j.atOnce-1)/j.atOnce)), j.atOnce, func(some []*mutant) {
		list, err := filepath.Abs(filepath.Join(work, fmt.Sprintf("asked-%d", some[0].sites[0].place)))
		for n := 0; err == nil && len(some) > 0; some = some[n:] {
			var got map[*mutant]string
			n, got, err = j.askOnce(list, some)
			lock.Lock()
			maps.Copy(out, got)
			lock.Unlock()
		}
		os.Remove(list)
		os.Remove(list + ".out")
		if err != nil {
			lock.Lock()
			failed = err
			lock.Unlock()
		}
	})
	return out, failed
}

// askOnce runs one process, and says how many it got through, and what it found.
func (j *judge) askOnce(list string, all []*mutant) (int, map[*mutant]string, error) {
	out, answers := map[*mutant]string{}, list+".out"
	var b strings.Builder
	for i, m := range all {
		fmt.Fprint(&b, i, " ", m.change())
		for _, p := range m.cover {
			fmt.Fprint(&b, " ", p)
		}
		b.WriteByte('\n')
	}
	if err := os.WriteFile(list, []byte(b.String()), 0o644); err != nil {
		return 0, nil, err
	}
	if err := os.RemoveAll(answers); err != nil {
		return 0, nil, err
	}
	c := j.api.command([]string{"MUTANT_LIST=" + list, "MUTANT_OUT=" + answers}, 3600, "-test.run", "^TestMutants$")
	said, failed := c.CombinedOutput()
	text, err := os.ReadFile(answers)
	if err != nil {
		return 0, nil, fmt.Errorf("asking the service: %w\n%s", failed, said)
	}
	asks := map[int]string{}
	done := 0
	for line := range strings.Lines(string(text)) {
		words := strings.Fields(line)
		i, err := strconv.Atoi(words[0])
		if err != nil {
			return 0, nil, err
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
		return 0, nil, fmt.Errorf("asking the service: stopped after %d of %d\n%s", done+1, len(all), said)
	}
	return done + 1, out, nil
}
