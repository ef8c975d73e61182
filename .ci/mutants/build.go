package main

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

//go:embed laid/mutant.go
var laidMutant string

//go:embed laid/answers_test.go.txt
var laidAnswers string

const (
	work    = ".cache/mutants"
	service = "service/api"
)

// build writes the kernel anew, lays it over the tree and builds the tests of the
// packages, each once.
func build(f *finder, dirs []string) error {
	if f.places >= 1<<15 {
		return fmt.Errorf("%d places: raise the number in laid/mutant.go", f.places)
	}
	texts := map[string]string{
		"internal/mutant/mutant.go":     laidMutant,
		service + "/mutant_all_test.go": laidAnswers,
	}
	f.eachFile(func(file *file) { texts[filepath.ToSlash(file.path)] = f.laid(file) })
	replace := map[string]string{}
	for path, text := range texts {
		from, err := filepath.Abs(path)
		if err != nil {
			return err
		}
		to, err := filepath.Abs(filepath.Join(work, "laid", path+".laid"))
		if err != nil {
			return err
		}
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(to, []byte(text), 0o644); err != nil {
			return err
		}
		replace[from] = to
	}
	text, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return err
	}
	overlay := filepath.Join(work, "overlay.json")
	if err := os.WriteFile(overlay, text, 0o644); err != nil {
		return err
	}
	bin := filepath.Join(work, "bin") + "/"
	if err := os.MkdirAll(bin, 0o755); err != nil {
		return err
	}
	args := []string{"test", "-c", "-vet=off", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-overlay", overlay, "-o", bin}
	for _, d := range dirs {
		args = append(args, "./"+d)
	}
	c := exec.Command("go", args...)
	c.Stdout, c.Stderr = os.Stderr, os.Stderr
	return c.Run()
}

// above are the parts that import one, itself first.
func (w *world) above(name string) []string {
	out := []string{name}
	for _, p := range w.order {
		if p.name != name && slices.ContainsFunc(w.order, func(q *part) bool {
			return q.name == name && imports(w, p, q, map[string]bool{})
		}) {
			out = append(out, p.name)
		}
	}
	return out
}

func imports(w *world, p, q *part, seen map[string]bool) bool {
	if seen[p.name] {
		return false
	}
	seen[p.name] = true
	for _, i := range p.types.Imports() {
		name, ours := strings.CutPrefix(i.Path(), kernel)
		if ours && (name == q.name || imports(w, w.parts[name], q, seen)) {
			return true
		}
	}
	return false
}
