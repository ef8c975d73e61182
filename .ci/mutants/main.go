// Command mutants changes the kernel in one place at a time and looks whether a
// test notices: constants by 1.2 and 0.8, comparisons turned round, min for max.
//
//	go run ./.ci/mutants [-part pin] [-kind constant] [-most N] [-for 30m] [-list]
//
// What survives must stand in reasons.txt with why it may. The tree is not touched:
// the changed file is laid over it. Results are kept in .cache/mutants.txt, so that
// a run goes on where the last one stopped; a changed file is tried anew.
package main

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// mutant is one change of one file.
type mutant struct {
	file     string
	from, to int // bytes
	line     int
	kind     string
	before   string
	after    string
}

// id names a mutant without its place in the file, so that a line added above
// changes nothing.
func (m *mutant) id(text []byte) string {
	sum := sha256.Sum256(text)
	return fmt.Sprintf("%s:%d %s %q -> %q %x", m.file, m.line, m.kind, m.before, m.after, sum[:4])
}

// reason is the key of a mutant in reasons.txt: file, line's text, change.
func (m *mutant) reason(text []byte) string {
	lines := strings.Split(string(text), "\n")
	return fmt.Sprintf("%s | %s | %s -> %s", m.file, strings.TrimSpace(lines[m.line-1]), m.before, m.after)
}

const (
	kept    = ".cache/mutants.txt"
	reasons = ".ci/mutants/reasons.txt"
)

func main() {
	part := flag.String("part", "", "only this package of internal/")
	kind := flag.String("kind", "", "only constant, comparison or minmax")
	most := flag.Int("most", 1<<30, "stop after so many")
	bound := flag.Duration("for", 24*time.Hour, "stop after this time")
	list := flag.Bool("list", false, "print what would be tried")
	flag.Parse()
	if err := run(*part, *kind, *most, *bound, *list); err != nil {
		fmt.Fprintln(os.Stderr, "mutants:", err)
		os.Exit(2)
	}
}

func run(part, kind string, most int, bound time.Duration, list bool) error {
	files, err := filepath.Glob("internal/*/*.go")
	if err != nil {
		return err
	}
	done, err := results()
	if err != nil {
		return err
	}
	excused, err := excuses()
	if err != nil {
		return err
	}
	log, err := os.OpenFile(kept, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		return err
	}
	defer log.Close()
	end := time.Now().Add(bound)
	count := map[string]int{}
	tried := 0
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") || part != "" && filepath.Base(filepath.Dir(file)) != part {
			continue
		}
		text, err := os.ReadFile(file)
		if err != nil {
			return err
		}
		all, err := mutantsOf(file, text)
		if err != nil {
			return err
		}
		for i := range all {
			m := &all[i]
			if kind != "" && m.kind != kind {
				continue
			}
			id := m.id(text)
			outcome, known := done[id]
			switch {
			case list:
				fmt.Println(id)
				continue
			case !known && (tried >= most || time.Now().After(end)):
				count["not tried"]++
				continue
			case !known:
				tried++
				if outcome, err = try(m, text); err != nil {
					return err
				}
				fmt.Fprintln(log, id+"\t"+outcome)
			}
			if outcome == survived {
				if why := excused[m.reason(text)]; why != "" {
					outcome = "excused"
				} else {
					fmt.Println("survives:", m.reason(text))
				}
			}
			count[outcome]++
		}
	}
	fmt.Printf("%d killed by their part, %d by the whole, %d survive with a reason, %d without, %d do not compile, %d not tried\n",
		count[killedBelow], count[killedAbove], count["excused"], count[survived], count[broken], count["not tried"])
	return nil
}

const (
	killedBelow = "killed by part"
	killedAbove = "killed by whole"
	survived    = "survived"
	broken      = "does not compile"
)

// results reads what earlier runs found.
func results() (map[string]string, error) {
	return pairs(kept, "\t")
}

// excuses reads why mutants may survive.
func excuses() (map[string]string, error) {
	return pairs(reasons, " # ")
}

func pairs(file, between string) (map[string]string, error) {
	out := map[string]string{}
	text, err := os.ReadFile(file)
	if os.IsNotExist(err) {
		return out, nil
	}
	lines := bufio.NewScanner(bytes.NewReader(text))
	for lines.Scan() {
		if a, b, ok := strings.Cut(lines.Text(), between); ok {
			out[a] = b
		}
	}
	return out, err
}

var turned = map[token.Token]token.Token{
	token.LSS: token.GTR, token.GTR: token.LSS, token.LEQ: token.GEQ, token.GEQ: token.LEQ,
	token.EQL: token.NEQ, token.NEQ: token.EQL,
}

// mutantsOf lists the changes of a file. A constant is a number in a declaration of
// constants or variables of the package, or a number with a point in a formula.
func mutantsOf(file string, text []byte) ([]mutant, error) {
	set := token.NewFileSet()
	tree, err := parser.ParseFile(set, file, text, parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	var out []mutant
	add := func(from, to token.Pos, kind, after string) {
		a, b := set.Position(from).Offset, set.Position(to).Offset
		out = append(out, mutant{file: file, from: a, to: b, line: set.Position(from).Line, kind: kind,
			before: string(text[a:b]), after: after})
	}
	constant := func(n ast.Node) bool {
		b, ok := n.(*ast.BasicLit)
		if !ok || b.Kind != token.FLOAT && b.Kind != token.INT || strings.Trim(b.Value, "0.e") == "" {
			return true
		}
		for _, by := range []string{"1.2", "0.8"} {
			add(b.Pos(), b.End(), "constant", "("+by+" * "+b.Value+")")
		}
		return true
	}
	for _, d := range tree.Decls {
		if g, ok := d.(*ast.GenDecl); ok && (g.Tok == token.CONST || g.Tok == token.VAR) {
			ast.Inspect(g, constant)
			continue
		}
		ast.Inspect(d, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.BasicLit:
				if n.Kind == token.FLOAT {
					constant(n)
				}
			case *ast.BinaryExpr:
				if op, ok := turned[n.Op]; ok {
					add(n.OpPos, n.OpPos+token.Pos(len(n.Op.String())), "comparison", op.String())
				}
			case *ast.CallExpr:
				if f, ok := n.Fun.(*ast.Ident); ok && (f.Name == "min" || f.Name == "max") {
					add(f.Pos(), f.End(), "minmax", map[string]string{"min": "max", "max": "min"}[f.Name])
				}
			}
			return true
		})
	}
	return out, nil
}

// try lays the changed file over the tree and runs the tests of its part, then
// those of base, size and the service's answers.
func try(m *mutant, text []byte) (string, error) {
	dir, err := os.MkdirTemp("", "mutant")
	if err != nil {
		return "", err
	}
	defer os.RemoveAll(dir)
	changed := slices.Concat(text[:m.from], []byte(m.after), text[m.to:])
	laid := filepath.Join(dir, filepath.Base(m.file))
	if err := os.WriteFile(laid, changed, 0o644); err != nil {
		return "", err
	}
	path, err := filepath.Abs(m.file)
	if err != nil {
		return "", err
	}
	overlay := filepath.Join(dir, "overlay.json")
	what, err := json.Marshal(map[string]map[string]string{"Replace": {path: laid}})
	if err != nil {
		return "", err
	}
	if err := os.WriteFile(overlay, what, 0o644); err != nil {
		return "", err
	}
	part := "./" + filepath.Dir(m.file)
	if noticed, out := tests(overlay, part); noticed {
		if strings.Contains(out, "[build failed]") || strings.Contains(out, "[setup failed]") {
			return broken, nil
		}
		return killedBelow, nil
	}
	if noticed, _ := tests(overlay, "./internal/base", "./internal/size", "./service/api"); noticed {
		return killedAbove, nil
	}
	return survived, nil
}

func tests(overlay string, packages ...string) (noticed bool, out string) {
	args := append([]string{"test", "-short", "-failfast", "-vet=off", "-timeout", "3m", "-overlay", overlay}, packages...)
	c := exec.Command("go", args...)
	c.Env = append(os.Environ(), "RAPID_NOFAILFILE=true", "RAPID_SHRINKTIME=0s", "RAPID_SEED=1")
	text, err := c.CombinedOutput()
	return err != nil, string(text)
}
