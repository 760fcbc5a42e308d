package notebook

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/scanner"
	"go/token"
	"path"
	"slices"
	"strconv"
	"strings"
)

// A cell is the source of one cell, taken apart. Each part keeps the line that
// it stood on.
type cell struct {
	shell []string // commands of the lines that begin with !*
	decls string   // what stands before the body, special lines blanked
	body  string   // the body of main, without the %% line
	main  int      // the line of %%, or 0 if there is none
}

// parseCell takes a cell apart.
func parseCell(name, source string) (cell, error) {
	var c cell
	var decls, body strings.Builder
	n := 0
	for line := range strings.Lines(source) {
		n++
		text := strings.TrimSpace(line)
		if c.main > 0 {
			body.WriteString(line)
			continue
		}
		switch {
		case text == "%%" || text == "%main":
			c.main = n
			continue
		case strings.HasPrefix(text, "!*"):
			c.shell = append(c.shell, strings.TrimPrefix(text, "!*"))
			line = "\n"
		case strings.HasPrefix(text, "%") || strings.HasPrefix(text, "!"):
			return cell{}, fmt.Errorf("%s:%d: special line %q: want %%%%, %%main or !*", name, n, text)
		}
		decls.WriteString(line)
	}
	c.decls, c.body = decls.String(), body.String()
	return c, nil
}

// A declaration is one remembered top-level declaration.
type declaration struct {
	names []string // what it declares; a method as "Type.Method"
	text  string
	cell  string // the name of the cell it came from
	line  int    // its line there
}

// A memory is what the cells so far have declared.
type memory struct {
	imports map[string]string // an import's text by the name it goes by
	decls   []declaration
}

// with returns the memory with the declarations of a cell added. It leaves m as it
// was.
func (m memory) with(name, decls string) (memory, error) {
	// The comment makes positions those in the cell.
	text := "package main;/*line " + name + ":1:1*/" + decls
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, "", text, parser.ParseComments)
	if err != nil {
		return memory{}, err
	}
	next := memory{imports: map[string]string{}, decls: slices.Clone(m.decls)}
	for k, v := range m.imports {
		next.imports[k] = v
	}
	cut := func(from, to token.Pos) string {
		return text[fset.PositionFor(from, false).Offset:fset.PositionFor(to, false).Offset]
	}
	add := func(names []string, from, to token.Pos, prefix string) {
		next.forget(names)
		next.decls = append(next.decls, declaration{
			names: names,
			text:  prefix + cut(from, to),
			cell:  name,
			line:  fset.Position(from).Line,
		})
	}
	for _, d := range file.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			from := d.Pos()
			if d.Doc != nil {
				from = d.Doc.Pos()
			}
			add([]string{funcName(d)}, from, d.End(), "")
		case *ast.GenDecl:
			switch {
			case d.Tok == token.IMPORT:
				for _, spec := range d.Specs {
					spec := spec.(*ast.ImportSpec)
					next.imports[importName(spec)] = cut(spec.Pos(), spec.End())
				}
			case d.Tok == token.CONST || !d.Lparen.IsValid():
				// The specs of a const group lean on each other: they stay together.
				from := d.Pos()
				if d.Doc != nil {
					from = d.Doc.Pos()
				}
				var names []string
				for _, spec := range d.Specs {
					names = append(names, specNames(spec)...)
				}
				add(names, from, d.End(), "")
			default:
				for _, spec := range d.Specs {
					add(specNames(spec), spec.Pos(), spec.End(), d.Tok.String()+" ")
				}
			}
		}
	}
	return next, nil
}

// forget drops every declaration that shares a name with names. The blank name
// and init may be declared any number of times.
func (m *memory) forget(names []string) {
	m.decls = slices.DeleteFunc(m.decls, func(d declaration) bool {
		return slices.ContainsFunc(d.names, func(n string) bool {
			return n != "_" && n != "init" && slices.Contains(names, n)
		})
	})
}

// program returns the source of a program with all that is remembered, whose
// main has the given body, of a cell in which %% stands on the given line.
// Imports that it does not use are left out.
func (m memory) program(name string, main int, body string) (string, error) {
	var rest strings.Builder
	hasMain := false
	for _, d := range m.decls {
		fmt.Fprintf(&rest, "//line %s:%d:1\n%s\n", d.cell, d.line, d.text)
		hasMain = hasMain || slices.Contains(d.names, "main")
	}
	switch {
	case main > 0:
		fmt.Fprintf(&rest, "//line %s:%d:1\nfunc main() {\n%s\n}\n", name, main, body)
	case !hasMain:
		rest.WriteString("func main() {}\n")
	}
	file, err := parser.ParseFile(token.NewFileSet(), "", "package main\n"+rest.String(), 0)
	if err != nil {
		return "", err
	}
	// What no scope of the program resolves is predeclared or an import.
	used := map[string]bool{}
	for _, id := range file.Unresolved {
		used[id.Name] = true
	}
	var out strings.Builder
	out.WriteString("package main\n\nimport (\n")
	names := make([]string, 0, len(m.imports))
	for name := range m.imports {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		if used[name] || name == "_" || name == "." {
			out.WriteString("\t" + m.imports[name] + "\n")
		}
	}
	out.WriteString(")\n\n" + rest.String())
	return out.String(), nil
}

// withoutMain returns the memory without main, which a cell does not leave to
// those after it.
func (m memory) withoutMain() memory {
	m.decls = slices.Clone(m.decls)
	m.forget([]string{"main"})
	return m
}

func funcName(d *ast.FuncDecl) string {
	if d.Recv == nil || len(d.Recv.List) == 0 {
		return d.Name.Name
	}
	typ := d.Recv.List[0].Type
	for {
		switch t := typ.(type) {
		case *ast.StarExpr:
			typ = t.X
		case *ast.ParenExpr:
			typ = t.X
		case *ast.IndexExpr:
			typ = t.X
		case *ast.IndexListExpr:
			typ = t.X
		case *ast.Ident:
			return t.Name + "." + d.Name.Name
		default:
			return "?." + d.Name.Name
		}
	}
}

func specNames(spec ast.Spec) []string {
	switch spec := spec.(type) {
	case *ast.TypeSpec:
		return []string{spec.Name.Name}
	case *ast.ValueSpec:
		var names []string
		for _, id := range spec.Names {
			names = append(names, id.Name)
		}
		return names
	}
	return nil
}

// importName returns the name that a program uses an import by: the one given,
// or the last part of the path that is not a version.
func importName(spec *ast.ImportSpec) string {
	if spec.Name != nil {
		return spec.Name.Name
	}
	p, _ := strconv.Unquote(spec.Path.Value)
	base := path.Base(p)
	if digits, ok := strings.CutPrefix(base, "v"); ok && strings.Trim(digits, "0123456789") == "" {
		base = path.Base(path.Dir(p))
	}
	return base
}

// errorLines returns the lines of an error of the parser, at most ten.
func errorLines(err error) []string {
	list, ok := err.(scanner.ErrorList)
	if !ok {
		return []string{err.Error()}
	}
	var lines []string
	for _, e := range list[:min(len(list), 10)] {
		lines = append(lines, e.Error())
	}
	return lines
}
