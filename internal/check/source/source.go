// Package source reads the library's source for the tests that hold it to its
// design: the files parsed, the packages type-checked.
package source

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// Path is the import path of the library.
const Path = "example.com/fircone"

// A Package is one package of the module: what go list says of it, and its files.
type Package struct {
	ImportPath   string   // "example.com/fircone/sizing/shopping"
	Name         string   // "shopping"
	Dir          string   // where it is on this disk
	Imports      []string // what its files import, tests left out
	GoFiles      []string // the names of its files, tests left out
	XTestGoFiles []string // the names of the test files outside the package
	Export       string   // the file of export data

	Files  []*ast.File    // GoFiles, parsed
	XTests []*ast.File    // XTestGoFiles, parsed
	Types  *types.Package // type-checked
	Info   *types.Info    // uses, definitions, types and selections in Files
}

// Rel returns the import path without the module's, "sizing/shopping", and "." for the root.
func (p *Package) Rel() string {
	if p.ImportPath == Path {
		return "."
	}
	return strings.TrimPrefix(p.ImportPath, Path+"/")
}

// Shipped reports whether users can import p: it is no program and not internal.
func (p *Package) Shipped() bool {
	return p.Name != "main" && !strings.HasPrefix(p.Rel(), "examples/") && !strings.HasPrefix(p.Rel(), "internal/")
}

// A Module is the whole module, read.
type Module struct {
	Root     string // the folder of go.mod
	Fset     *token.FileSet
	Packages []*Package // every package of the module, sorted by path
}

// Load reads the module of the library, as this one replaces it. The packages that ship, and
// what they import of the module's own, are parsed and type-checked; the others are only listed.
func Load() (*Module, error) {
	root, err := run(".", "go", "list", "-m", "-f", "{{.Dir}}", Path)
	if err != nil {
		return nil, err
	}
	m := &Module{Root: strings.TrimSpace(root), Fset: token.NewFileSet()}
	if m.Packages, err = list(m.Root, "-e", "./..."); err != nil {
		return nil, err
	}
	args := []string{"-deps", "-export"}
	for _, p := range m.Packages {
		if p.Shipped() {
			args = append(args, p.ImportPath)
		}
	}
	deps, err := list(m.Root, args...)
	if err != nil {
		return nil, err
	}
	exports := map[string]string{}
	used := map[string]bool{}
	for _, p := range deps {
		exports[p.ImportPath] = p.Export
		used[p.ImportPath] = true
	}
	imports := importer.ForCompiler(m.Fset, "gc", func(path string) (io.ReadCloser, error) {
		if exports[path] == "" {
			return nil, fmt.Errorf("no export data for %s", path)
		}
		return os.Open(exports[path])
	})
	for _, p := range m.Packages {
		if !used[p.ImportPath] {
			continue
		}
		if p.Files, err = m.parse(p, p.GoFiles); err != nil {
			return nil, err
		}
		if p.XTests, err = m.parse(p, p.XTestGoFiles); err != nil {
			return nil, err
		}
		p.Info = &types.Info{
			Types:      map[ast.Expr]types.TypeAndValue{},
			Defs:       map[*ast.Ident]types.Object{},
			Uses:       map[*ast.Ident]types.Object{},
			Selections: map[*ast.SelectorExpr]*types.Selection{},
		}
		conf := types.Config{Importer: imports}
		if p.Types, err = conf.Check(p.ImportPath, m.Fset, p.Files, p.Info); err != nil {
			return nil, err
		}
	}
	return m, nil
}

// Shipped returns the packages that users can import.
func (m *Module) Shipped() []*Package {
	var s []*Package
	for _, p := range m.Packages {
		if p.Shipped() {
			s = append(s, p)
		}
	}
	return s
}

// Checked returns the packages that are type-checked: those shipped, and those of the
// module's own that they import.
func (m *Module) Checked() []*Package {
	var s []*Package
	for _, p := range m.Packages {
		if p.Types != nil {
			s = append(s, p)
		}
	}
	return s
}

// At returns where pos is, from the module's root.
func (m *Module) At(pos token.Pos) string {
	p := m.Fset.Position(pos)
	if rel, err := filepath.Rel(m.Root, p.Filename); err == nil {
		p.Filename = rel
	}
	return p.String()
}

// list returns what go list says of the packages that args name.
func list(dir string, args ...string) ([]*Package, error) {
	out, err := run(dir, "go", append([]string{"list", "-json=ImportPath,Name,Dir,Imports,GoFiles,XTestGoFiles,Export"}, args...)...)
	if err != nil {
		return nil, err
	}
	var all []*Package
	for d := json.NewDecoder(strings.NewReader(out)); ; {
		p := new(Package)
		if err := d.Decode(p); errors.Is(err, io.EOF) {
			return all, nil
		} else if err != nil {
			return nil, err
		}
		all = append(all, p)
	}
}

func (m *Module) parse(p *Package, names []string) ([]*ast.File, error) {
	var files []*ast.File
	for _, name := range names {
		f, err := parser.ParseFile(m.Fset, filepath.Join(p.Dir, name), nil, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		files = append(files, f)
	}
	return files, nil
}

func run(dir, name string, args ...string) (string, error) {
	var out, bad bytes.Buffer
	c := exec.Command(name, args...)
	c.Dir, c.Stdout, c.Stderr = dir, &out, &bad
	if err := c.Run(); err != nil {
		return "", fmt.Errorf("%s %s: %w\n%s", name, strings.Join(args, " "), err, bad.Bytes())
	}
	return out.String(), nil
}
