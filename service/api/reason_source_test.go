package api_test

import (
	"go/ast"
	"go/token"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// function is where an expression stands.
type function struct {
	pkg  string
	name string
	kind *ast.FuncType
	body *ast.BlockStmt
	in   *function // of a literal
}

// functions visits the functions of a package, and the literals that have a name.
func (r *reasons) functions(pkg string, visit func(*function)) {
	for _, file := range r.pkgs[pkg] {
		for _, d := range file.Decls {
			if d, ok := d.(*ast.FuncDecl); ok && d.Body != nil {
				f := &function{pkg: pkg, name: d.Name.Name, kind: d.Type, body: d.Body}
				visit(f)
				ast.Inspect(d.Body, func(n ast.Node) bool {
					if a, ok := n.(*ast.AssignStmt); ok && len(a.Lhs) == 1 && len(a.Rhs) == 1 {
						if lit, ok := a.Rhs[0].(*ast.FuncLit); ok {
							visit(&function{pkg, a.Lhs[0].(*ast.Ident).Name, lit.Type, lit.Body, f})
						}
					}
					return true
				})
			}
		}
	}
}

func (r *reasons) calls(f *function, visit func(name string, call *ast.CallExpr)) {
	ast.Inspect(f.body, func(n ast.Node) bool {
		if c, ok := n.(*ast.CallExpr); ok {
			visit(nameOf(c.Fun), c)
		}
		return true
	})
}

// nameOf returns the name of what is called, with the package's where one qualifies it.
func nameOf(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.SelectorExpr:
		if x, ok := e.X.(*ast.Ident); ok && (x.Name == "limit" || x.Name == "fmt" || x.Name == "strings") {
			return x.Name + "." + e.Sel.Name
		}
		return e.Sel.Name
	}
	return ""
}

// assigned visits what is assigned to a field or a variable in a function.
func (r *reasons) assigned(f *function, name string, field bool, visit func(ast.Expr)) {
	ast.Inspect(f.body, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.AssignStmt:
			for i, to := range n.Lhs {
				s, isField := to.(*ast.SelectorExpr)
				v, isVar := to.(*ast.Ident)
				if field && isField && s.Sel.Name == name || !field && isVar && v.Name == name {
					visit(n.Rhs[min(i, len(n.Rhs)-1)])
				}
			}
		case *ast.KeyValueExpr:
			if k, ok := n.Key.(*ast.Ident); ok && field && k.Name == name {
				visit(n.Value)
			}
		case *ast.CompositeLit:
			if of, ok := n.Type.(*ast.ArrayType); ok && field {
				if place := slices.Index(r.order[nameOf(of.Elt)], name); place >= 0 {
					for _, e := range n.Elts {
						if e, ok := e.(*ast.CompositeLit); ok && place < len(e.Elts) {
							visit(e.Elts[place])
						}
					}
				}
			}
		case *ast.ValueSpec:
			for i, v := range n.Names {
				if !field && v.Name == name && i < len(n.Values) {
					visit(n.Values[i])
				}
			}
		case *ast.RangeStmt:
			if v, ok := n.Value.(*ast.Ident); ok && !field && v.Name == name {
				visit(n.X)
			}
		}
		return true
	})
}

func (r *reasons) once(key string) bool {
	seen := r.done[key]
	r.done[key] = true
	return !seen
}

// follow goes from an expression in a function to the literals behind it.
func (r *reasons) follow(f *function, e ast.Expr) {
	switch e := e.(type) {
	case *ast.BasicLit:
		if e.Kind == token.STRING {
			r.keep(e.Value)
		}
	case *ast.ParenExpr:
		r.follow(f, e.X)
	case *ast.StarExpr:
		r.follow(f, e.X)
	case *ast.UnaryExpr:
		r.follow(f, e.X)
	case *ast.BinaryExpr:
		if e.Op == token.ADD {
			r.follow(f, e.X)
			r.follow(f, e.Y)
		}
	case *ast.IndexExpr:
		r.follow(f, e.X)
	case *ast.CompositeLit:
		if nameOf(e.Type) == "limit.Kind" {
			return
		}
		for _, v := range e.Elts {
			if kv, ok := v.(*ast.KeyValueExpr); ok {
				if k, ok := kv.Key.(*ast.Ident); ok && k.Name == "Clause" {
					continue
				}
				v = kv.Value
			}
			r.follow(f, v)
		}
	case *ast.SelectorExpr:
		if r.texts[e.Sel.Name] && !slices.Contains([]string{"Clause", "Name"}, e.Sel.Name) && r.once("field "+e.Sel.Name) {
			for pkg := range r.pkgs {
				r.functions(pkg, func(f *function) {
					r.assigned(f, e.Sel.Name, true, func(e ast.Expr) { r.follow(f, e) })
				})
			}
		}
	case *ast.CallExpr:
		switch name := nameOf(e.Fun); name {
		case "fmt.Sprintf", "strings.Join":
			r.follow(f, e.Args[0])
		case "append":
			for _, a := range e.Args[1:] {
				r.follow(f, a)
			}
		case "Error", "String": // of a limit, an error or an enumeration
		default:
			r.returned(f.pkg, name)
		}
	case *ast.Ident:
		r.variable(f, e.Name)
	}
}

// returned follows what a function returns.
func (r *reasons) returned(pkg, name string) {
	if !r.once("returned " + name) {
		return
	}
	for at := range r.pkgs {
		if at == "../../service/api" {
			continue
		}
		r.functions(at, func(f *function) {
			if f.name != name || f.in != nil && at != pkg {
				return
			}
			ast.Inspect(f.body, func(n ast.Node) bool {
				if back, ok := n.(*ast.ReturnStmt); ok {
					for _, e := range back.Results {
						r.follow(f, e)
					}
				}
				return true
			})
			if f.kind.Results != nil {
				for _, v := range f.kind.Results.List {
					for _, name := range v.Names {
						r.assigned(f, name.Name, false, func(e ast.Expr) { r.follow(f, e) })
					}
				}
			}
		})
	}
}

// variable follows a name: of the package, of a parameter, or of the function.
func (r *reasons) variable(f *function, name string) {
	if !r.once(f.pkg + " " + f.name + " " + name) {
		return
	}
	for at := f; at != nil; at = at.in {
		r.assigned(at, name, false, func(e ast.Expr) { r.follow(at, e) })
		r.parameter(at, name)
	}
	r.functions(f.pkg, func(inner *function) {
		if inner.in != nil && inner.in.name == f.name && f.in == nil {
			r.parameter(inner, name)
		}
	})
	for _, file := range r.pkgs[f.pkg] {
		for _, d := range file.Decls {
			d, ok := d.(*ast.GenDecl)
			for i := 0; ok && i < len(d.Specs); i++ {
				v, ok := d.Specs[i].(*ast.ValueSpec)
				for j := 0; ok && j < len(v.Names); j++ {
					if v.Names[j].Name == name && j < len(v.Values) {
						r.follow(&function{pkg: f.pkg, kind: &ast.FuncType{Params: &ast.FieldList{}}, body: &ast.BlockStmt{}}, v.Values[j])
					}
				}
			}
		}
	}
}

// parameter follows what callers give for a parameter, if a function has one of that name.
func (r *reasons) parameter(f *function, name string) {
	place := 0
	for _, p := range f.kind.Params.List {
		for _, n := range p.Names {
			if at := place; n.Name == name {
				r.functions(f.pkg, func(from *function) {
					if f.in != nil && from.name != f.in.name {
						return
					}
					r.calls(from, func(called string, call *ast.CallExpr) {
						if called == f.name && at < len(call.Args) {
							r.follow(from, call.Args[at])
						}
					})
				})
			}
			place++
		}
	}
}

var verb = regexp.MustCompile(`%[.0-9]*[a-z]`)

// keep keeps a text of at least two words.
func (r *reasons) keep(literal string) {
	text, _ := strconv.Unquote(literal)
	if !strings.Contains(strings.TrimSpace(text), " ") {
		return
	}
	parts := verb.Split(text, -1)
	for i := range parts {
		parts[i] = regexp.QuoteMeta(parts[i])
	}
	r.found[text] = regexp.MustCompile(strings.Join(parts, ".*"))
}
