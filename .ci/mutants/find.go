package main

import (
	"cmp"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"slices"
	"strconv"
	"strings"
)

// finder lists the mutants of the kernel and how its files are written for them.
type finder struct {
	w      *world
	places int
	all    []*mutant
	of     map[*ast.BasicLit][2]*mutant
	edits  map[*file][]edit

	// A table of the package is filled once: what reads it tells whether it matters.
	tables map[types.Object]*table
	bodies []body
}

// table is a variable of a package: what stands in it and what it is made of.
type table struct {
	mutants []*mutant
	from    []*table
	place   int
}

// body is that of a function, with the tables that it names.
type body struct {
	file  *file
	block *ast.BlockStmt
	reads []*table
}

// within is where an expression stands: in a function, or in a table.
type within struct {
	file  *file
	body  *int
	table *table
}

var turned = map[token.Token]struct{ after, call string }{
	token.LSS: {">", "Less"}, token.GTR: {"<", "More"}, token.LEQ: {">=", "Most"}, token.GEQ: {"<=", "Least"},
	token.EQL: {"!=", "Same"}, token.NEQ: {"==", "Same"},
}

var factors = []struct {
	text string
	by   constant.Value
}{
	{"1.2", constant.MakeFromLiteral("1.2", token.FLOAT, 0)},
	{"0.8", constant.MakeFromLiteral("0.8", token.FLOAT, 0)},
}

func find(w *world) *finder {
	f := &finder{w: w, of: map[*ast.BasicLit][2]*mutant{}, edits: map[*file][]edit{}, tables: map[types.Object]*table{}}
	f.eachFile(f.numbers)
	f.eachFile(func(file *file) {
		for _, d := range file.tree.Decls {
			f.table(file, d)
		}
	})
	f.eachFile(func(file *file) {
		for _, d := range file.tree.Decls {
			f.declaration(file, d)
		}
	})
	f.readers()
	for _, m := range f.all {
		if m.cannot == "" && len(m.sites) == 0 {
			m.cannot = "used by no code of the kernel"
		}
	}
	slices.SortStableFunc(f.all, func(a, b *mutant) int {
		return cmp.Or(strings.Compare(a.file.path, b.file.path), cmp.Compare(a.line, b.line), cmp.Compare(a.column, b.column))
	})
	return f
}

func (f *finder) eachFile(do func(*file)) {
	for _, p := range f.w.order {
		for _, file := range p.files {
			do(file)
		}
	}
}

func (f *finder) add(file *file, at token.Pos, kind, before, after string) *mutant {
	p := f.w.set.Position(at)
	m := &mutant{part: file.part.name, file: file, line: p.Line, column: p.Column, kind: kind, before: before, after: after}
	f.all = append(f.all, m)
	return m
}

func (f *finder) place() int {
	f.places++
	return f.places
}

// numbers lists the constants of a file: the numbers of declarations of constants and
// of variables of the package, and those with a point in a formula.
func (f *finder) numbers(file *file) {
	number := func(b *ast.BasicLit, cannot string) {
		if b.Kind != token.FLOAT && b.Kind != token.INT || strings.Trim(b.Value, "0.e") == "" {
			return
		}
		var two [2]*mutant
		for i, by := range factors {
			two[i] = f.add(file, b.Pos(), "constant", b.Value, "("+by.text+" * "+b.Value+")")
			two[i].cannot = cannot
		}
		f.of[b] = two
	}
	var declared func(n ast.Node, cannot string)
	declared = func(n ast.Node, cannot string) {
		ast.Inspect(n, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ArrayType:
				declared(n.Elt, cannot)
				return false
			case *ast.CompositeLit:
				f.elements(file.part, n, func(e ast.Expr) { declared(e, cannot) })
				return false
			case *ast.BasicLit:
				number(n, cannot)
			}
			return true
		})
	}
	for _, d := range file.tree.Decls {
		g, top := d.(*ast.GenDecl)
		if top && g.Tok == token.VAR {
			declared(g, "")
			continue
		}
		ast.Inspect(d, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.GenDecl:
				if n.Tok != token.CONST {
					return true
				}
				for _, s := range n.Specs {
					for _, v := range s.(*ast.ValueSpec).Values {
						if counts(v) {
							declared(v, "counts the members of a list")
						} else {
							declared(v, "")
						}
					}
				}
				return false
			case *ast.BasicLit:
				if n.Kind == token.FLOAT {
					number(n, "")
				}
			}
			return true
		})
	}
}

// elements calls do for the elements of a literal and for its type, not for the keys
// of an array.
func (f *finder) elements(p *part, n *ast.CompositeLit, do func(ast.Expr)) {
	if n.Type != nil {
		do(n.Type)
	}
	keyed := false
	switch p.info.TypeOf(n).Underlying().(type) {
	case *types.Map:
		keyed = true
	}
	for _, e := range n.Elts {
		if kv, ok := e.(*ast.KeyValueExpr); ok {
			if keyed {
				do(kv.Key)
			}
			e = kv.Value
		}
		do(e)
	}
}

// use writes a constant expression so that its numbers can differ.
func (f *finder) use(in within, e ast.Expr) {
	p := in.file.part
	var touched []*mutant
	place := 0
	for _, b := range f.w.literals(p, e) {
		two, ok := f.of[b]
		if !ok {
			continue
		}
		t := types.Default(p.info.TypeOf(e))
		for i, m := range two {
			v := f.w.value(p, e, b, other(b, factors[i].by, whole(t)))
			if v == nil || whole(t) && constant.ToInt(v).Kind() != constant.Int {
				m.cannot = "stands where no other value fits"
				continue
			}
			if place == 0 {
				name, ok := f.typeName(in.file, t)
				if !ok {
					m.cannot = "its type has no name here"
					continue
				}
				place = f.place()
				f.around(in.file, e, "mutant.At("+strconv.Itoa(place)+", "+name+"(", "))")
			}
			x, _ := constant.Float64Val(constant.ToFloat(v))
			m.sites = append(m.sites, site{place, strconv.FormatFloat(x, 'g', -1, 64)})
			touched = append(touched, m)
		}
	}
	f.touch(in, place, touched...)
}

// touch notes where mutants act.
func (f *finder) touch(in within, place int, all ...*mutant) {
	for _, m := range all {
		if in.body == nil && in.table != nil {
			m.start = true
			in.table.mutants = append(in.table.mutants, m)
			continue
		}
		m.cover = append(m.cover, place)
	}
}

// other is the number of a literal changed; an integer is at least one off.
func other(b *ast.BasicLit, by constant.Value, whole bool) constant.Value {
	v := constant.MakeFromLiteral(b.Value, b.Kind, 0)
	out := constant.BinaryOp(constant.ToFloat(v), token.MUL, by)
	if !whole || b.Kind != token.INT {
		return out
	}
	was, _ := constant.Int64Val(v)
	x, _ := constant.Float64Val(out)
	is := int64(x + 0.5)
	if is == was {
		if float64(was) < x {
			is++
		} else {
			is--
		}
	}
	return constant.MakeInt64(is)
}

// typeName is how a type is written in a file.
func (f *finder) typeName(file *file, t types.Type) (string, bool) {
	ok := true
	name := types.TypeString(t, func(p *types.Package) string {
		if p == file.part.types {
			return ""
		}
		for _, i := range file.tree.Imports {
			if path, _ := strconv.Unquote(i.Path.Value); path == p.Path() {
				if i.Name != nil {
					return i.Name.Name
				}
				return p.Name()
			}
		}
		ok = false
		return ""
	})
	return name, ok
}
