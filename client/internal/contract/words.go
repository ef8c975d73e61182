package contract

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"strings"

	"google.golang.org/protobuf/reflect/protoreflect"
)

// words are the comments of the contract, by the full name of what they are about.
// Descriptors that are linked into a program have none; the Go code that is made of
// the contract has them all.
type words map[protoreflect.FullName]string

const prefix = "footward.v1."

// readWords reads the generated Go code in a folder.
func readWords(folder string) (words, error) {
	names, err := filepath.Glob(filepath.Join(folder, "*.pb.go"))
	if err != nil {
		return nil, err
	}
	w := words{}
	for _, name := range names {
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			return nil, err
		}
		for _, d := range f.Decls {
			if g, ok := d.(*ast.GenDecl); ok {
				w.declared(g)
			}
		}
	}
	return w, nil
}

func (w words) declared(g *ast.GenDecl) {
	for _, s := range g.Specs {
		switch s := s.(type) {
		case *ast.TypeSpec:
			doc := s.Doc
			if doc == nil {
				doc = g.Doc
			}
			w.note(protoreflect.FullName(prefix+s.Name.Name), doc)
			if fields, ok := s.Type.(*ast.StructType); ok {
				w.fields(s.Name.Name, fields)
			}
			if methods, ok := s.Type.(*ast.InterfaceType); ok {
				w.methods(strings.TrimSuffix(s.Name.Name, "Client"), methods)
			}
		case *ast.ValueSpec: // Basis_BASIS_EUROCODE Basis = 1
			if _, value, ok := strings.Cut(s.Names[0].Name, "_"); ok {
				w.note(protoreflect.FullName(prefix+value), s.Doc)
			}
		}
	}
}

// fields notes those of a message, or of the wrapper of a choice: CheckItem_Bearing
// holds the field bearing of CheckItem.
func (w words) fields(message string, s *ast.StructType) {
	message, _, _ = strings.Cut(message, "_")
	for _, f := range s.Fields.List {
		if f.Tag == nil {
			continue
		}
		for _, part := range strings.Split(reflect.StructTag(strings.Trim(f.Tag.Value, "`")).Get("protobuf"), ",") {
			if name, ok := strings.CutPrefix(part, "name="); ok {
				w.note(protoreflect.FullName(prefix+message+"."+name), f.Doc)
			}
		}
	}
}

func (w words) methods(service string, i *ast.InterfaceType) {
	for _, m := range i.Methods.List {
		if len(m.Names) == 1 {
			w.note(protoreflect.FullName(prefix+service+"."+m.Names[0].Name), m.Doc)
		}
	}
}

func (w words) note(name protoreflect.FullName, doc *ast.CommentGroup) {
	if text := strings.TrimSpace(doc.Text()); text != "" {
		w[name] = text
	}
}

// lines returns the lines of a comment.
func (w words) lines(d protoreflect.Descriptor) []string {
	return strings.Split(w[d.FullName()], "\n")
}
