package main

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

const (
	module = "footward.example/footward"
	kernel = module + "/internal/"
)

// file is one file of the kernel.
type file struct {
	path string // from the root of the repository
	text []byte
	tree *ast.File
	part *part
}

// part is one package of the kernel.
type part struct {
	name  string
	files []*file
	types *types.Package
	info  *types.Info
}

// declared is where a constant is declared.
type declared struct {
	value ast.Expr
	iota  bool // one of a list that counts
	part  *part
}

// world is the kernel with its types. Packages of the kernel are read here, so that an
// object is the same in all of them.
type world struct {
	set    *token.FileSet
	parts  map[string]*part
	order  []*part
	consts map[types.Object]declared
	std    types.Importer
}

func load() (*world, error) {
	w := &world{set: token.NewFileSet(), parts: map[string]*part{}, consts: map[types.Object]declared{}}
	w.std = importer.ForCompiler(w.set, "source", nil)
	dirs, err := os.ReadDir("internal")
	if err != nil {
		return nil, err
	}
	for _, d := range dirs {
		if !d.IsDir() {
			continue
		}
		if _, err := w.Import(kernel + d.Name()); err != nil {
			return nil, err
		}
	}
	slices.SortFunc(w.order, func(a, b *part) int { return strings.Compare(a.name, b.name) })
	for _, p := range w.order {
		for _, f := range p.files {
			w.declare(f)
		}
	}
	return w, nil
}

// Import reads a package of the kernel, or one of the standard library.
func (w *world) Import(path string) (*types.Package, error) {
	name, ours := strings.CutPrefix(path, kernel)
	if !ours {
		return w.std.Import(path)
	}
	if p := w.parts[name]; p != nil {
		return p.types, nil
	}
	paths, err := filepath.Glob(filepath.Join("internal", name, "*.go"))
	if err != nil {
		return nil, err
	}
	p := &part{name: name, info: &types.Info{
		Types: map[ast.Expr]types.TypeAndValue{}, Defs: map[*ast.Ident]types.Object{}, Uses: map[*ast.Ident]types.Object{},
	}}
	var trees []*ast.File
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		tree, err := parser.ParseFile(w.set, path, text, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		p.files = append(p.files, &file{path, text, tree, p})
		trees = append(trees, tree)
	}
	if p.types, err = (&types.Config{Importer: w}).Check(path, w.set, trees, p.info); err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	w.parts[name] = p
	w.order = append(w.order, p)
	return p.types, nil
}

// declare notes the constants of a file, those inside functions too.
func (w *world) declare(f *file) {
	ast.Inspect(f.tree, func(n ast.Node) bool {
		g, ok := n.(*ast.GenDecl)
		if !ok || g.Tok != token.CONST {
			return true
		}
		var values []ast.Expr
		for _, s := range g.Specs {
			s := s.(*ast.ValueSpec)
			again := len(s.Values) == 0
			if !again {
				values = s.Values
			}
			for i, name := range s.Names {
				if i < len(values) {
					w.consts[f.part.info.Defs[name]] = declared{values[i], again || counts(values[i]), f.part}
				}
			}
		}
		return true
	})
}

// counts is whether an expression holds iota.
func counts(e ast.Expr) bool {
	found := false
	ast.Inspect(e, func(n ast.Node) bool {
		id, ok := n.(*ast.Ident)
		found = found || ok && id.Name == "iota"
		return true
	})
	return found
}

// constOf returns where the constant named by e is declared.
func (w *world) constOf(p *part, e ast.Expr) (declared, bool) {
	id, ok := e.(*ast.Ident)
	if s, is := e.(*ast.SelectorExpr); is {
		id, ok = s.Sel, true
	}
	if !ok {
		return declared{}, false
	}
	d, ok := w.consts[p.info.Uses[id]]
	return d, ok
}

// literals are the numbers that a constant expression rests on, through the
// constants that it names.
func (w *world) literals(p *part, e ast.Expr) []*ast.BasicLit {
	var out []*ast.BasicLit
	ast.Inspect(e, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BasicLit:
			out = append(out, n)
		case *ast.Ident, *ast.SelectorExpr:
			if d, ok := w.constOf(p, n.(ast.Expr)); ok && !d.iota {
				out = append(out, w.literals(d.part, d.value)...)
			}
			return false
		}
		return true
	})
	slices.SortFunc(out, func(a, b *ast.BasicLit) int { return int(a.Pos() - b.Pos()) })
	return slices.Compact(out)
}

// value is that of a constant expression when one number in it is another; nil where
// it cannot be told.
func (w *world) value(p *part, e ast.Expr, at *ast.BasicLit, other constant.Value) constant.Value {
	if !slices.Contains(w.literals(p, e), at) {
		return p.info.Types[e].Value
	}
	switch e := e.(type) {
	case *ast.BasicLit:
		return other
	case *ast.ParenExpr:
		return w.value(p, e.X, at, other)
	case *ast.UnaryExpr:
		if x := w.value(p, e.X, at, other); x != nil {
			return constant.UnaryOp(e.Op, x, 0)
		}
	case *ast.BinaryExpr:
		return w.binary(p, e, at, other)
	case *ast.Ident, *ast.SelectorExpr:
		if d, ok := w.constOf(p, e.(ast.Expr)); ok {
			return w.value(d.part, d.value, at, other)
		}
	case *ast.CallExpr:
		if len(e.Args) == 1 && p.info.Types[e.Fun].IsType() {
			return w.value(p, e.Args[0], at, other)
		}
	}
	return nil
}

func (w *world) binary(p *part, e *ast.BinaryExpr, at *ast.BasicLit, other constant.Value) constant.Value {
	x, y := w.value(p, e.X, at, other), w.value(p, e.Y, at, other)
	if x == nil || y == nil {
		return nil
	}
	op := e.Op
	switch op {
	case token.QUO:
		if constant.Sign(y) == 0 {
			return nil
		}
		if whole(p.info.TypeOf(e.X)) && whole(p.info.TypeOf(e.Y)) && x.Kind() == constant.Int && y.Kind() == constant.Int {
			op = token.QUO_ASSIGN
		}
	case token.ADD, token.SUB, token.MUL:
	default:
		return nil
	}
	return constant.BinaryOp(x, op, y)
}

// whole is whether a type holds integers alone.
func whole(t types.Type) bool {
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&types.IsInteger != 0
}
