package api_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// reasons are the texts in the kernel's source that can become the reason of a limit
// state, each as what matches it in an answer.
type reasons struct {
	pkgs    map[string][]*ast.File // by folder
	found   map[string]*regexp.Regexp
	done    map[string]bool
	order   map[string][]string // fields of a type
	texts   map[string]bool     // fields and parameters that are texts
	cached  map[string][]string
	crossed map[string]bool // told on one side of an edge only
	told    map[string]bool // told of a state that does not apply or is out of scope
	judged  map[string]bool // told of one that passes or fails
	unknown map[string]bool // told, and not found in the source
}

// in returns the texts of the source that a reason is made of.
func (r *reasons) in(why string) []string {
	out, known := r.cached[why]
	if known || why == "" {
		return out
	}
	for text, pattern := range r.found {
		if pattern.MatchString(why) {
			out = append(out, text)
		}
	}
	slices.Sort(out)
	if r.cached[why] = out; out == nil {
		r.unknown[why] = true
	}
	return out
}

// cross notes what is told on one side of an edge only, each as state: reason.
func (r *reasons) cross(a, b map[string]bool) {
	for _, sides := range [...][2]map[string]bool{{a, b}, {b, a}} {
		for told := range sides[0] {
			if _, text, _ := strings.Cut(told, ": "); !sides[1][told] {
				r.crossed[text] = true
			}
		}
	}
}

// assert wants every reason seen on both sides of an edge, but for edgeless ones.
func (r *reasons) assert(t *testing.T) {
	for why := range r.unknown {
		t.Errorf("%q is a reason that was not found in the source", why)
	}
	for _, text := range slices.Sorted(maps.Keys(r.found)) {
		switch {
		case r.crossed[text] || edgeless[text] != "":
		case r.judged[text] && !r.told[text]: // of what fails, or notes what governs
		default:
			t.Errorf("%q was not seen on both sides of an edge", text)
		}
	}
	t.Logf("%d of %d reasons were seen on both sides of an edge", len(r.crossed), len(r.found))
}

// reasonsOf follows, name by name, what is given to limit.Skip and limit.Beyond and what
// becomes a Reason to the literals that it comes from.
func reasonsOf(t testing.TB) *reasons {
	r := &reasons{
		pkgs: map[string][]*ast.File{}, found: map[string]*regexp.Regexp{}, done: map[string]bool{}, texts: map[string]bool{}, order: map[string][]string{},
		cached: map[string][]string{}, crossed: map[string]bool{}, told: map[string]bool{}, judged: map[string]bool{}, unknown: map[string]bool{},
	}
	files := token.NewFileSet()
	read := func(path string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		pkg := filepath.Dir(path)
		if slices.Contains([]string{"compare", "size", "trial", "record"}, filepath.Base(pkg)) {
			return nil // which have other reasons
		}
		f, err := parser.ParseFile(files, path, nil, 0)
		r.pkgs[pkg] = append(r.pkgs[pkg], f)
		ast.Inspect(f, func(n ast.Node) bool {
			if d, ok := n.(*ast.TypeSpec); ok {
				if s, ok := d.Type.(*ast.StructType); ok {
					for _, f := range s.Fields.List {
						for _, name := range f.Names {
							r.order[d.Name.Name] = append(r.order[d.Name.Name], name.Name)
						}
					}
				}
			}
			if f, ok := n.(*ast.Field); ok {
				if kind, ok := f.Type.(*ast.Ident); ok && kind.Name == "string" {
					for _, name := range f.Names {
						r.texts[name.Name] = true
					}
				}
			}
			return true
		})
		return err
	}
	for _, root := range [...]string{"../../internal", "../../service/api"} {
		require.NoError(t, filepath.WalkDir(root, read))
	}
	for pkg := range r.pkgs {
		if pkg == "../../service/api" {
			continue // which only tells the kernel why it gives something not
		}
		r.functions(pkg, func(f *function) {
			r.calls(f, func(name string, call *ast.CallExpr) {
				if name == "limit.Skip" || name == "limit.Beyond" {
					r.follow(f, call.Args[1])
				}
			})
			r.assigned(f, "Reason", true, func(e ast.Expr) { r.follow(f, e) })
		})
	}
	return r
}
