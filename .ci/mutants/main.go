// Command mutants changes the kernel in one place at a time and looks whether a
// test notices: constants by 1.2 and 0.8, comparisons turned round, min for max.
//
//	go run ./.ci/mutants [-part pin] [-kind constant] [-most N] [-for 30m] [-short] [-again] [-list] [-at 2]
//
// The kernel is written anew with every such place made to differ on demand, laid over
// the tree, and each test binary is built once. Each test is run once to see which
// places it reaches; a mutant then runs only these, in the order: the published figures,
// its part, the parts that import it, the rest of the service, the golden numbers.
// A test that takes far longer than before has noticed.
//
// What survives must stand in reasons.txt with why it may. Results are kept in
// .cache/mutants.txt, so that a run goes on where the last one stopped; a changed file
// is tried anew, and with -again what survived before.
package main

import (
	"bufio"
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

const kept = ".cache/mutants.txt"

// wish is what is asked of a run.
type wish struct {
	part, kind  string
	most        int
	bound       time.Duration
	list, again bool
	short       bool
	atOnce      int
}

func main() {
	var a wish
	flag.StringVar(&a.part, "part", "", "only these packages of internal/: one, or a,b")
	flag.StringVar(&a.kind, "kind", "", "only constant, comparison or minmax")
	flag.IntVar(&a.most, "most", 1<<30, "stop after so many")
	flag.DurationVar(&a.bound, "for", 24*time.Hour, "stop after this time")
	flag.BoolVar(&a.list, "list", false, "print what would be tried")
	flag.BoolVar(&a.again, "again", false, "try anew what survived")
	flag.BoolVar(&a.short, "short", false, "figures, golden numbers and quick tests of the part alone")
	flag.IntVar(&a.atOnce, "at", 2, "so many at once")
	flag.Parse()
	if err := run(a); err != nil {
		fmt.Fprintln(os.Stderr, "mutants:", err)
		os.Exit(2)
	}
}

func run(a wish) error {
	w, err := load()
	if err != nil {
		return err
	}
	f := find(w)
	parts := strings.Split(a.part, ",")
	all := slices.DeleteFunc(slices.Clone(f.all), func(m *mutant) bool {
		return a.kind != "" && m.kind != a.kind || a.part != "" && !slices.Contains(parts, m.part)
	})
	slices.SortStableFunc(all, func(a, b *mutant) int {
		return slices.Index(parts, a.part) - slices.Index(parts, b.part)
	})
	done, err := results()
	if err != nil {
		return err
	}
	may, err := excuses()
	if err != nil {
		return err
	}
	var todo []*mutant
	for _, m := range all {
		was := done[m.id()]
		again := a.again && excused(may, m) == "" && slices.Contains([]string{survived, nowhere, byGolden, notYet, golden}, was) ||
			!a.short && (was == notYet || was == golden)
		if m.cannot == "" && (was == "" || again) && len(todo) < a.most {
			todo = append(todo, m)
		}
	}
	// What may survive takes longest, as nothing stops it.
	slices.SortStableFunc(todo, func(a, b *mutant) int {
		return min(len(excused(may, a)), 1) - min(len(excused(may, b)), 1)
	})
	if a.list {
		for _, m := range todo {
			fmt.Println(m.id())
		}
		return nil
	}
	if len(todo) > 0 {
		if err := tryAll(w, f, todo, a, done); err != nil {
			return err
		}
	}
	report(all, done, may)
	return nil
}

// tryAll tries mutants, some hundred at a time, and keeps what becomes of them.
func tryAll(w *world, f *finder, todo []*mutant, a wish, done map[string]string) error {
	end := time.Now().Add(a.bound)
	j, err := prepare(w, f, todo, a)
	if err != nil {
		return err
	}
	log, err := os.OpenFile(kept, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		return err
	}
	defer log.Close()
	tried := 0
	for some := range slices.Chunk(todo, 500) {
		if time.Now().After(end) {
			break
		}
		err := j.try(some, func(m *mutant, what string) {
			done[m.id()] = what
			fmt.Fprintln(log, m.id()+"\t"+what)
		})
		if err != nil {
			return err
		}
		tried += len(some)
		fmt.Fprintf(os.Stderr, "%s  %d of %d\n", time.Now().Format(time.TimeOnly), tried, len(todo))
	}
	return nil
}

// prepare builds the tests that mutants need, and measures them.
func prepare(w *world, f *finder, todo []*mutant, a wish) (*judge, error) {
	j := &judge{w: w, suites: map[string]*suite{}, above: map[string][]string{}, atOnce: a.atOnce, short: a.short}
	dirs := []string{service}
	for _, m := range todo {
		if j.above[m.part] != nil {
			continue
		}
		j.above[m.part] = w.above(m.part)
		for i, name := range j.above[m.part] {
			if i > 0 && a.short {
				break
			}
			if d := "internal/" + name; !slices.Contains(dirs, d) {
				dirs = append(dirs, d)
			}
		}
	}
	if err := build(f, dirs); err != nil {
		return nil, err
	}
	for _, d := range dirs {
		fmt.Fprintln(os.Stderr, time.Now().Format(time.TimeOnly), "measures", d)
		s, err := measure(d, d != service, a.atOnce)
		if err != nil {
			return nil, err
		}
		j.suites[filepath.Base(d)] = s
	}
	j.api = j.suites[filepath.Base(service)]
	for _, t := range j.api.quick {
		if t.name == atStart {
			j.bare = t.reaches
		}
	}
	return j, nil
}

// results reads what earlier runs found.
func results() (map[string]string, error) {
	out := map[string]string{}
	text, err := os.ReadFile(kept)
	if os.IsNotExist(err) {
		return out, nil
	}
	for lines := bufio.NewScanner(bytes.NewReader(text)); lines.Scan(); {
		if id, what, ok := strings.Cut(lines.Text(), "\t"); ok {
			out[id] = what
		}
	}
	return out, err
}
