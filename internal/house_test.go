package internal_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const module = "footward.example/footward/"

// foundations are what a part may import of the kernel; base and size compose parts.
var foundations = []string{"basis", "material", "geom", "limit", "derive", "section", "friction"}

// standard are the packages of the Go library that the kernel may use.
// distuv holds the distributions, so that the kernel has no quantiles of its own.
var standard = []string{"cmp", "errors", "fmt", "maps", "math", "slices", "sort", "strconv", "strings", "gonum.org/v1/gonum/stat/distuv"}

type file struct {
	path string // from internal/
	set  *token.FileSet
	tree *ast.File
}

func kernel(t *testing.T) []file {
	t.Helper()
	var all []file
	require.NoError(t, filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		set := token.NewFileSet()
		tree, err := parser.ParseFile(set, path, nil, parser.ParseComments|parser.SkipObjectResolution)
		all = append(all, file{path, set, tree})
		return err
	}))
	return all
}

func (f file) at(n ast.Node) string { return f.set.Position(n.Pos()).String() }

func TestKernelImportsOnlyItsFoundations(t *testing.T) {
	for _, f := range kernel(t) {
		part := filepath.Dir(f.path)
		for _, i := range f.tree.Imports {
			path := strings.Trim(i.Path.Value, `"`)
			inner, own := strings.CutPrefix(path, module+"internal/")
			switch {
			case own && (part == "base" || part == "size"):
			case own:
				assert.Contains(t, foundations, inner, "%s imports %s", f.path, path)
			default:
				assert.Contains(t, standard, path, "%s imports %s", f.path, path)
			}
		}
	}
}

func TestKernelStartsNothingAndNeverPanics(t *testing.T) {
	for _, f := range kernel(t) {
		ast.Inspect(f.tree, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.GoStmt:
				t.Errorf("%s: a goroutine", f.at(n))
			case *ast.FuncDecl:
				assert.NotEqual(t, "init", n.Name.Name, f.at(n))
			case *ast.CallExpr:
				if name, ok := n.Fun.(*ast.Ident); ok && name.Name == "panic" {
					t.Errorf("%s: a panic", f.at(n))
				}
			}
			return true
		})
	}
}

// TestEveryQuantityHasUnitAndSource demands, of everything exported from the
// kernel, a [unit] for each number and a Source: for each function that returns
// one.
func TestEveryQuantityHasUnitAndSource(t *testing.T) {
	for _, f := range kernel(t) {
		if strings.HasPrefix(f.path, "derive/") {
			continue // counts in whatever unit a step has
		}
		for _, d := range f.tree.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if d.Name.IsExported() && returnsNumber(d) {
					doc := d.Doc.Text()
					assert.Contains(t, doc, "Source:", "%s %s", f.at(d), d.Name.Name)
					assert.Contains(t, doc, "[", "%s %s has no [unit]", f.at(d), d.Name.Name)
				}
			case *ast.GenDecl:
				for _, s := range d.Specs {
					if s, ok := s.(*ast.TypeSpec); ok && s.Name.IsExported() {
						unitsOf(t, f, s)
					}
				}
			}
		}
	}
}

func returnsNumber(d *ast.FuncDecl) bool {
	return d.Type.Results != nil && slices.ContainsFunc(d.Type.Results.List, func(r *ast.Field) bool {
		return isNumber(r.Type)
	})
}

func isNumber(e ast.Expr) bool {
	if a, ok := e.(*ast.ArrayType); ok {
		return isNumber(a.Elt)
	}
	name, ok := e.(*ast.Ident)
	return ok && name.Name == "float64"
}

// unitsOf looks at the exported numbers of a struct. A number without a comment
// of its own shares that of the number before it.
func unitsOf(t *testing.T, f file, s *ast.TypeSpec) {
	body, ok := s.Type.(*ast.StructType)
	if !ok {
		return
	}
	comment := ""
	for _, field := range body.Fields.List {
		if own := field.Doc.Text() + field.Comment.Text(); own != "" {
			comment = own
		}
		exported := slices.ContainsFunc(field.Names, func(n *ast.Ident) bool { return n.IsExported() })
		if exported && isNumber(field.Type) {
			assert.Contains(t, comment, "[", "%s: %s.%s has no [unit]", f.at(field), s.Name.Name, field.Names[0].Name)
		}
	}
}
