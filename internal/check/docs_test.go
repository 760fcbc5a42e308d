package check

import (
	"go/ast"
	"go/doc"
	"go/doc/comment"
	"go/token"
	"go/types"
	"os/exec"
	"regexp"
	"strings"
	"testing"

	"example.com/fircone/internal/check/source"
)

// Each package that ships has one package comment, in one file.
func TestPackagesAreDocumented(t *testing.T) {
	for _, p := range load(t).Shipped() {
		n := 0
		for _, f := range p.Files {
			if f.Doc.Text() != "" {
				n++
			}
		}
		if n != 1 {
			t.Errorf("%s has %d package comments", p.Rel(), n)
		}
	}
}

// mostDocs is how many words all documentation has at most, with declarations, as a reader of the terminal gets it.
const mostDocs = 30_000

func TestDocsAreShort(t *testing.T) {
	m, err := source.Load()
	if err != nil {
		t.Fatal(err)
	}
	all, words := 0, map[string]int{}
	for _, p := range m.Shipped() {
		c := exec.Command("go", "doc", "-all", p.ImportPath)
		c.Dir = m.Root
		text, err := c.Output()
		if err != nil {
			t.Fatalf("%s: %v", p.ImportPath, err)
		}
		words[p.Name] = len(strings.Fields(string(text)))
		all += words[p.Name]
	}
	if all > mostDocs {
		t.Errorf("%d words of documentation, of at most %d: %v", all, mostDocs, words)
	}
}

// Every exported type, function, method, constant, variable and field is documented, by
// a comment of its own or of the group that it stands in.
func TestNamesAreDocumented(t *testing.T) {
	m := load(t)
	for _, p := range m.Shipped() {
		bare := func(id *ast.Ident, docs ...*ast.CommentGroup) {
			if !id.IsExported() {
				return
			}
			for _, d := range docs {
				if strings.TrimSpace(d.Text()) != "" {
					return
				}
			}
			t.Errorf("%s: %s has no documentation", m.At(id.Pos()), id.Name)
		}
		for _, f := range p.Files {
			for _, d := range f.Decls {
				switch d := d.(type) {
				case *ast.FuncDecl:
					if exportedFunc(d) {
						bare(d.Name, d.Doc)
					}
				case *ast.GenDecl:
					for _, s := range d.Specs {
						switch s := s.(type) {
						case *ast.TypeSpec:
							bare(s.Name, d.Doc, s.Doc)
							members(s, d.Doc.Text()+s.Doc.Text(), bare)
						case *ast.ValueSpec:
							for _, id := range s.Names {
								bare(id, d.Doc, s.Doc, s.Comment)
							}
						}
					}
				}
			}
		}
	}
}

// members calls bare with each exported field or interface method of an exported type that no comment of
// the type or in it speaks of by name.
func members(s *ast.TypeSpec, about string, bare func(*ast.Ident, ...*ast.CommentGroup)) {
	if !s.Name.IsExported() {
		return
	}
	var list *ast.FieldList
	switch t := s.Type.(type) {
	case *ast.StructType:
		list = t.Fields
	case *ast.InterfaceType:
		list = t.Methods
	default:
		return
	}
	for _, f := range list.List {
		about += f.Doc.Text() + f.Comment.Text()
	}
	for _, f := range list.List {
		for _, id := range f.Names {
			if !regexp.MustCompile(`\b` + id.Name + `\b`).MatchString(about) {
				bare(id, f.Doc, f.Comment)
			}
		}
	}
}

// The doc links, [Name] and [pkg.Name], name something that is there.
func TestDocLinksResolve(t *testing.T) {
	m, err := source.Load() // its own, since go/doc takes out of the syntax tree what it does not show
	if err != nil {
		t.Fatal(err)
	}
	byName := map[string]*source.Package{}
	for _, p := range m.Shipped() {
		byName[p.Name] = p
	}
	for _, p := range m.Shipped() {
		d, err := doc.NewFromFiles(m.Fset, p.Files, p.ImportPath)
		if err != nil {
			t.Fatal(err)
		}
		texts := map[string]string{"package " + p.Name: d.Doc}
		values := func(where string, vs []*doc.Value) {
			for _, v := range vs {
				texts[where+" "+strings.Join(v.Names, ", ")] = v.Doc
			}
		}
		funcs := func(where string, fs []*doc.Func) {
			for _, f := range fs {
				texts[where+" "+f.Name] = f.Doc
			}
		}
		values(p.Name, d.Consts)
		values(p.Name, d.Vars)
		funcs(p.Name, d.Funcs)
		for _, ty := range d.Types {
			texts[p.Name+" "+ty.Name] = ty.Doc
			values(p.Name, ty.Consts)
			values(p.Name, ty.Vars)
			funcs(p.Name+" "+ty.Name, ty.Funcs)
			funcs(p.Name+" "+ty.Name, ty.Methods)
		}
		parser := comment.Parser{
			// A link in our own docs is checked below, so every name is let through here.
			LookupSym:     func(recv, name string) bool { return token.IsExported(name) },
			LookupPackage: func(name string) (string, bool) { return lookupPackage(p, byName, name) },
		}
		for where, text := range texts {
			walk(parser.Parse(text), func(l *comment.DocLink) {
				target := p.Types
				if l.ImportPath != "" && l.ImportPath != p.ImportPath {
					other := byName[l.ImportPath[strings.LastIndexByte(l.ImportPath, '/')+1:]]
					if other == nil || other.ImportPath != l.ImportPath {
						return // Go's own, or another module's
					}
					target = other.Types
				}
				if !declares(target, l.Recv, l.Name) {
					t.Errorf("%s: the link [%s] leads nowhere", where, strings.Trim(l.Recv+"."+l.Name, "."))
				}
			})
		}
	}
}

// lookupPackage finds the import path that name stands for in the docs of p: one that its
// files import, or one of ours.
func lookupPackage(p *source.Package, ours map[string]*source.Package, name string) (string, bool) {
	for _, path := range p.Imports {
		if path == name || strings.HasSuffix(path, "/"+name) {
			return path, true
		}
	}
	if o := ours[name]; o != nil {
		return o.ImportPath, true
	}
	return comment.DefaultLookupPackage(name)
}

// declares reports whether pkg has the exported function or type name, or the method or
// field name of the type recv.
func declares(pkg *types.Package, recv, name string) bool {
	if name == "" {
		return true // a link to the package
	}
	if recv == "" {
		return pkg.Scope().Lookup(name) != nil
	}
	ty := pkg.Scope().Lookup(strings.TrimPrefix(recv, "*"))
	if ty == nil {
		return false
	}
	obj, _, _ := types.LookupFieldOrMethod(ty.Type(), true, pkg, name)
	return obj != nil
}

func walk(d *comment.Doc, f func(*comment.DocLink)) {
	var text func([]comment.Text)
	text = func(ts []comment.Text) {
		for _, t := range ts {
			switch t := t.(type) {
			case *comment.DocLink:
				f(t)
			case *comment.Link:
				text(t.Text)
			}
		}
	}
	var blocks func([]comment.Block)
	blocks = func(bs []comment.Block) {
		for _, b := range bs {
			switch b := b.(type) {
			case *comment.Paragraph:
				text(b.Text)
			case *comment.Heading:
				text(b.Text)
			case *comment.List:
				for _, i := range b.Items {
					blocks(i.Content)
				}
			}
		}
	}
	blocks(d.Content)
}

// exportedFunc reports whether d is an exported function, or an exported method of an exported type.
func exportedFunc(d *ast.FuncDecl) bool {
	return d.Name.IsExported() && (d.Recv == nil || ast.IsExported(receiver(d)))
}

// receiver returns the name of the type that the method d is of, "" for a function.
func receiver(d *ast.FuncDecl) string {
	if d.Recv == nil {
		return ""
	}
	e := d.Recv.List[0].Type
	for {
		switch x := e.(type) {
		case *ast.StarExpr:
			e = x.X
		case *ast.IndexExpr:
			e = x.X
		case *ast.Ident:
			return x.Name
		default:
			return ""
		}
	}
}
