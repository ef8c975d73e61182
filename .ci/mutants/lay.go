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

// edit is text put into a file, in place of some of it.
type edit struct {
	at, drop int
	text     string
	// order is that of edits at one offset: ends before starts, inner ends first.
	order int
}

func (f *finder) put(file *file, at token.Pos, drop int, text string, ends bool) {
	order := len(f.edits[file]) + 1
	if ends {
		order = -order
	}
	f.edits[file] = append(f.edits[file], edit{f.w.set.Position(at).Offset, drop, text, order})
}

// around puts text before and after an expression. What is around comes first.
func (f *finder) around(file *file, n ast.Node, before, after string) {
	f.put(file, n.Pos(), 0, before, false)
	f.put(file, n.End(), 0, after, true)
}

// laid is the text of a file with its edits.
func (f *finder) laid(file *file) string {
	edits := slices.Clone(f.edits[file])
	if len(edits) == 0 {
		return string(file.text)
	}
	name := f.w.set.Position(file.tree.Name.End()).Offset
	edits = append(edits, edit{name, 0, `; import "` + kernel + `mutant"`, 0})
	slices.SortFunc(edits, func(a, b edit) int { return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.order, b.order)) })
	var b strings.Builder
	at := 0
	for _, e := range edits {
		b.Write(file.text[at:e.at])
		b.WriteString(e.text)
		at = e.at + e.drop
	}
	b.Write(file.text[at:])
	return b.String()
}

// table notes the variables of a package.
func (f *finder) table(file *file, d ast.Decl) {
	g, ok := d.(*ast.GenDecl)
	if !ok || g.Tok != token.VAR {
		return
	}
	for _, s := range g.Specs {
		t := &table{}
		for _, name := range s.(*ast.ValueSpec).Names {
			f.tables[file.part.info.Defs[name]] = t
		}
	}
}

func (f *finder) declaration(file *file, d ast.Decl) {
	switch d := d.(type) {
	case *ast.GenDecl:
		for _, s := range d.Specs {
			switch s := s.(type) {
			case *ast.ValueSpec:
				if d.Tok == token.VAR {
					in := within{file: file, table: f.tables[file.part.info.Defs[s.Names[0]]]}
					f.walk(in, s)
				}
			case *ast.TypeSpec:
				f.walk(within{file: file}, s)
			}
		}
	case *ast.FuncDecl:
		if d.Recv != nil {
			f.walk(within{file: file}, d.Recv)
		}
		f.walk(within{file: file}, d.Type)
		if d.Body != nil {
			f.body(within{file: file}, d.Body)
		}
	}
}

func (f *finder) body(in within, block *ast.BlockStmt) {
	i := len(f.bodies)
	f.bodies = append(f.bodies, body{file: in.file, block: block})
	in.body = &i
	for _, s := range block.List {
		f.walk(in, s)
	}
}

// walk writes what stands in n.
func (f *finder) walk(in within, n ast.Node) {
	info := in.file.part.info
	ast.Inspect(n, func(n ast.Node) bool {
		if e, ok := n.(ast.Expr); ok {
			if tv := info.Types[e]; tv.Value != nil {
				if b, basic := tv.Type.Underlying().(*types.Basic); basic && b.Info()&types.IsNumeric != 0 && tv.Value.Kind() != constant.Complex {
					f.use(in, e)
				}
				return false
			}
		}
		switch n := n.(type) {
		case *ast.FuncLit:
			f.walk(in, n.Type)
			f.body(in, n.Body)
			return false
		case *ast.GenDecl:
			return n.Tok != token.CONST
		case *ast.ArrayType:
			f.fixed(in, n)
			return false
		case *ast.CompositeLit:
			f.elements(in.file.part, n, func(e ast.Expr) { f.walk(in, e) })
			return false
		case *ast.BinaryExpr:
			f.comparison(in, n)
		case *ast.CallExpr:
			f.least(in, n)
		case *ast.Ident:
			f.names(in, info.Uses[n])
		}
		return true
	})
}

// fixed notes the numbers that a length of an array rests on.
func (f *finder) fixed(in within, n *ast.ArrayType) {
	if n.Len != nil {
		for _, b := range f.w.literals(in.file.part, n.Len) {
			for _, m := range f.of[b] {
				if m != nil {
					m.cannot = "is the length of an array"
				}
			}
		}
	}
	f.walk(in, n.Elt)
}

func (f *finder) comparison(in within, n *ast.BinaryExpr) {
	t, ok := turned[n.Op]
	if !ok {
		return
	}
	m := f.add(in.file, n.OpPos, "comparison", n.Op.String(), t.after)
	place := f.place()
	m.sites = []site{{place, ""}}
	f.touch(in, place, m)
	f.around(in.file, n, "mutant."+t.call+"("+strconv.Itoa(place)+", ", ")")
	if t.call != "Same" {
		f.put(in.file, n.OpPos, len(n.Op.String()), ",", true)
	}
}

func (f *finder) least(in within, n *ast.CallExpr) {
	id, ok := n.Fun.(*ast.Ident)
	if !ok || id.Name != "min" && id.Name != "max" {
		return
	}
	if _, builtin := in.file.part.info.Uses[id].(*types.Builtin); !builtin || len(n.Args) < 2 {
		return
	}
	call, after := "mutant.Min", "max"
	if id.Name == "max" {
		call, after = "mutant.Max", "min"
	}
	m := f.add(in.file, n.Pos(), "minmax", id.Name, after)
	place := f.place()
	m.sites = []site{{place, ""}}
	f.touch(in, place, m)
	f.put(in.file, id.Pos(), len(id.Name), call, false)
	f.put(in.file, n.Lparen+1, 0, strconv.Itoa(place)+", ", false)
}

// names notes that a table is named.
func (f *finder) names(in within, o types.Object) {
	t := f.tables[o]
	switch {
	case t == nil:
	case in.body != nil:
		b := &f.bodies[*in.body]
		if !slices.Contains(b.reads, t) {
			b.reads = append(b.reads, t)
		}
	case in.table != nil:
		in.table.from = append(in.table.from, t)
	}
}

// readers has the functions tell when they read a table in which a number stands.
func (f *finder) readers() {
	for _, b := range f.bodies {
		for _, t := range b.reads {
			made := closure(t, map[*table]bool{})
			held := false
			for m := range made {
				held = held || len(m.mutants) > 0
			}
			if !held {
				continue
			}
			if t.place == 0 {
				t.place = f.place()
				for from := range made {
					for _, m := range from.mutants {
						m.cover = append(m.cover, t.place)
					}
				}
			}
			f.put(b.file, b.block.Lbrace+1, 0, "mutant.Reach("+strconv.Itoa(t.place)+");", false)
		}
	}
}

func closure(t *table, out map[*table]bool) map[*table]bool {
	if !out[t] {
		out[t] = true
		for _, from := range t.from {
			closure(from, out)
		}
	}
	return out
}
