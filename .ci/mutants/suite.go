package main

import (
	"cmp"
	"crypto/sha256"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"
)

// suite is the tests of one package.
type suite struct {
	dir string
	bin string
	// quick are its tests with -short, whole those without.
	quick, whole []test
}

// test is one test, the processor time that it takes and the places that it reaches.
type test struct {
	name    string
	seconds float64
	reaches map[int]bool
}

// Processor time: what takes more is left out, or has noticed.
const (
	slow = 5.0  // s
	most = 20.0 // s, at least, before a test counts as endless
)

// atStart is no test: what a process reaches without any.
const atStart = "TestOfNothing"

// golden holds numbers to what they were, not to what is right: it is asked by itself.
var apart = []string{numbers, "TestMutants"}

// measure runs each test of a package once by itself. What it finds is kept for as
// long as the built tests are the same.
func measure(dir string, whole bool, atOnce int) (*suite, error) {
	bin, err := filepath.Abs(filepath.Join(work, "bin", filepath.Base(dir)+".test"))
	if err != nil {
		return nil, err
	}
	s := &suite{dir: dir, bin: bin}
	file, err := os.Open(bin)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	sum := sha256.New()
	if _, err := io.Copy(sum, file); err != nil {
		return nil, err
	}
	kept := filepath.Join(work, filepath.Base(dir)+".cover")
	head := fmt.Sprintf("%x", sum.Sum(nil))
	if text, err := os.ReadFile(kept); err == nil && strings.HasPrefix(string(text), head) {
		s.read(string(text))
		return s, nil
	}
	list, err := s.command(nil, 20, "-test.list", ".").Output()
	if err != nil {
		return nil, err
	}
	names := append([]string{atStart}, strings.Fields(string(list))...)
	var lock sync.Mutex
	each(names, atOnce, func(name string) {
		if strings.HasPrefix(name, "Benchmark") || slices.Contains(apart, name) {
			return
		}
		quick, ok := s.measure(name, "-test.short")
		long, also := test{}, false
		if whole {
			long, also = s.measure(name)
		}
		lock.Lock()
		defer lock.Unlock()
		if ok {
			s.quick = append(s.quick, quick)
		}
		if also {
			s.whole = append(s.whole, long)
		}
	})
	return s, os.WriteFile(kept, []byte(head+"\n"+s.text()), 0o644)
}

func (s *suite) measure(name string, args ...string) (test, bool) {
	seen := filepath.Join(filepath.Dir(s.bin), "seen-"+name)
	defer os.Remove(seen)
	c := s.command([]string{"MUTANT_SEEN=" + seen}, slow, append(args, "-test.run", "^"+name+"$")...)
	err := c.Run()
	if err != nil {
		fmt.Fprintf(os.Stderr, "left out: %s %s %v: %v after %v of processor time\n", s.dir, name, args, err,
			(c.ProcessState.UserTime() + c.ProcessState.SystemTime()).Round(time.Second/10))
		return test{}, false
	}
	t := test{name, (c.ProcessState.UserTime() + c.ProcessState.SystemTime()).Seconds(), map[int]bool{}}
	text, _ := os.ReadFile(seen)
	for _, p := range strings.Fields(string(text)) {
		if n, err := strconv.Atoi(p); err == nil {
			t.reaches[n] = true
		}
	}
	return t, true
}

func (s *suite) text() string {
	var b strings.Builder
	for i, all := range [][]test{s.quick, s.whole} {
		for _, t := range all {
			fmt.Fprint(&b, i, " ", t.name, " ", t.seconds)
			for p := range t.reaches {
				fmt.Fprint(&b, " ", p)
			}
			b.WriteByte('\n')
		}
	}
	return b.String()
}

func (s *suite) read(text string) {
	_, text, _ = strings.Cut(text, "\n")
	for line := range strings.Lines(text) {
		words := strings.Fields(line)
		t := test{name: words[1], reaches: map[int]bool{}}
		t.seconds, _ = strconv.ParseFloat(words[2], 64)
		for _, w := range words[3:] {
			n, _ := strconv.Atoi(w)
			t.reaches[n] = true
		}
		if words[0] == "0" {
			s.quick = append(s.quick, t)
		} else {
			s.whole = append(s.whole, t)
		}
	}
}

// command is a run of the tests bound in processor time [s] and memory: what a mutant
// makes endless ends.
func (s *suite) command(env []string, seconds float64, args ...string) *exec.Cmd {
	limit := fmt.Sprintf(`ulimit -t %d; ulimit -v 8000000; exec "$0" "$@"`, int(seconds)+1)
	c := exec.Command("sh", append([]string{"-c", limit, s.bin, "-test.timeout", "10m"}, args...)...)
	c.Dir = s.dir
	c.Env = append(append(os.Environ(), "GOMAXPROCS=1", "RAPID_SEED=3", "RAPID_NOFAILFILE=true", "RAPID_SHRINKTIME=0s"), env...)
	return c
}

// reaching are the tests that reach one of the places, the short ones first.
func reaching(all []test, places []int) (out []test) {
	for _, t := range all {
		if slices.ContainsFunc(places, func(p int) bool { return t.reaches[p] }) {
			out = append(out, t)
		}
	}
	slices.SortStableFunc(out, func(a, b test) int { return cmp.Compare(a.seconds, b.seconds) })
	return out
}

// notices is whether one of the tests fails under a change, or does not end.
func (s *suite) notices(change string, all []test, args ...string) bool {
	const little = 0.1 // s
	quick := slices.IndexFunc(all, func(t test) bool { return t.seconds > little })
	if quick < 0 {
		quick = len(all)
	}
	for _, some := range [][]test{all[:quick], all[quick:]} {
		if len(some) == 0 {
			continue
		}
		names, seconds := make([]string, len(some)), most
		for i, t := range some {
			names[i] = t.name
			seconds += 3 * t.seconds
		}
		run := append([]string{"-test.failfast", "-test.run", "^(" + strings.Join(names, "|") + ")$"}, args...)
		if s.command([]string{"MUTANT=" + change}, seconds, run...).Run() != nil {
			return true
		}
	}
	return false
}

// each calls do for all, some at once.
func each[T any](all []T, atOnce int, do func(T)) {
	var group sync.WaitGroup
	next := make(chan T)
	for range atOnce {
		group.Go(func() {
			for v := range next {
				do(v)
			}
		})
	}
	for _, v := range all {
		next <- v
	}
	close(next)
	group.Wait()
}
