package check

import (
	"go/ast"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/internal/check/source"
)

// texts returns the files of prose that lead a reader into the code, with the Markdown
// files of the examples.
func texts(t *testing.T, root string) map[string]string {
	t.Helper()
	names := []string{"README.md", "DEVELOPERS.md"}
	for _, pattern := range []string{"examples/*.md", "examples/*/*.md", "internal/*/*.md"} {
		more, err := filepath.Glob(filepath.Join(root, pattern))
		if err != nil {
			t.Fatal(err)
		}
		for _, path := range more {
			rel, err := filepath.Rel(root, path)
			if err != nil {
				t.Fatal(err)
			}
			names = append(names, rel)
		}
	}
	found := map[string]string{}
	for _, name := range names {
		b, err := os.ReadFile(filepath.Join(root, name))
		if err != nil {
			t.Error(err)
			continue
		}
		found[name] = string(b)
	}
	return found
}

var (
	inCode  = regexp.MustCompile("`([^`\n]+)`")
	named   = regexp.MustCompile(`\b([a-z]+)\.([A-Z]\w*)(?:\.([A-Z]\w*))?`)
	linked  = regexp.MustCompile(`\]\(([^)\s]+)\)`)
	fenced  = regexp.MustCompile("(?ms)^```([a-z]*)\n(.*?)^```$")
	isPath  = regexp.MustCompile(`^\.{0,2}/?[\w.-]+(/[\w.-]+)+/?$`)
	command = regexp.MustCompile(`\bgo run (\./[\w./-]+)`)
)

// What the prose and its code call by name, sizing.Rules.Picks, is there.
func TestTextNamesExist(t *testing.T) {
	m := load(t)
	byName := map[string]*source.Package{}
	for _, p := range m.Shipped() {
		byName[p.Name] = p
	}
	all := texts(t, m.Root)
	if doc, err := os.ReadFile(filepath.Join(m.Root, "doc.go")); err == nil {
		all["doc.go"] = string(doc)
	}
	for file, text := range all {
		for _, ref := range named.FindAllStringSubmatch(text, -1) {
			p := byName[ref[1]]
			if p == nil {
				continue // another library's, or a method of a variable
			}
			ok := p.Types.Scope().Lookup(ref[2]) != nil
			if ok && ref[3] != "" {
				ok = declares(p.Types, ref[2], ref[3])
			}
			if !ok {
				t.Errorf("%s: there is no %s", file, ref[0])
			}
		}
	}
}

// The files and folders that the prose names, and the programs it says to run, are there.
func TestTextPathsExist(t *testing.T) {
	m := load(t)
	for file, text := range texts(t, m.Root) {
		dir := filepath.Dir(file)
		check := func(path string) {
			path, _, _ = strings.Cut(path, "#")
			if path == "" {
				return
			}
			for _, base := range []string{dir, "."} {
				if _, err := os.Stat(filepath.Join(m.Root, base, path)); err == nil {
					return
				}
			}
			t.Errorf("%s: there is no %s", file, path)
		}
		for _, l := range linked.FindAllStringSubmatch(text, -1) {
			if !strings.Contains(l[1], "://") && !strings.HasPrefix(l[1], "mailto:") {
				check(l[1])
			}
		}
		for _, c := range command.FindAllStringSubmatch(text, -1) {
			check(strings.TrimSuffix(c[1], "/..."))
		}
		for _, c := range inCode.FindAllStringSubmatch(text, -1) {
			first, _, _ := strings.Cut(strings.TrimPrefix(c[1], "./"), "/")
			if isPath.MatchString(c[1]) && slices.Contains(topLevel, first) {
				check(c[1])
			}
		}
	}
}

// Each piece of Go in the README and the guide, whole program or not, prints what the block after it shows.
func TestTextProgramsRun(t *testing.T) {
	m := load(t)
	imports := map[string]string{"fmt": "fmt", "log": "log", "errors": "errors"}
	for _, p := range m.Shipped() {
		imports[p.Name] = p.ImportPath
	}
	found := 0
	for file, text := range texts(t, m.Root) {
		blocks := fenced.FindAllStringSubmatch(text, -1)
		for i, b := range blocks {
			if b[1] != "go" {
				continue
			}
			found++
			if i+1 == len(blocks) || blocks[i+1][1] != "" && blocks[i+1][1] != "text" {
				t.Errorf("%s: the program in block %d is not followed by its output", file, i+1)
				continue
			}
			// Inside the module, where the imports resolve; the underscore hides it from ./... .
			dir, err := os.MkdirTemp(filepath.Join(m.Root, "internal"), "_text")
			if err != nil {
				t.Fatal(err)
			}
			t.Cleanup(func() { os.RemoveAll(dir) })
			main := filepath.Join(dir, "main.go")
			if err := os.WriteFile(main, []byte(program(b[2], imports)), 0o600); err != nil {
				t.Fatal(err)
			}
			c := exec.Command("go", "run", main)
			c.Dir = m.Root
			out, err := c.CombinedOutput()
			if err != nil {
				t.Errorf("%s: block %d: %v\n%s", file, i+1, err, out)
			} else if got, want := trim(string(out)), trim(blocks[i+1][2]); got != want {
				t.Errorf("%s: block %d prints\n%s\nand the text says\n%s", file, i+1, got, want)
			}
		}
	}
	if found == 0 {
		t.Error("no program was found")
	}
}

// program makes a whole program of the body of a main function, with the imports that it needs.
func program(text string, imports map[string]string) string {
	if strings.HasPrefix(text, "package main") {
		return text
	}
	var paths []string
	for _, ref := range named.FindAllStringSubmatch(text, -1) {
		if path := imports[ref[1]]; path != "" && !slices.Contains(paths, path) {
			paths = append(paths, path)
		}
	}
	return "package main\n\nimport (\n\t\"" + strings.Join(paths, "\"\n\t\"") + "\"\n)\n\nfunc main() {\n" + text + "}\n"
}

// trim drops the space at the ends of s and of its lines.
func trim(s string) string {
	lines := strings.Split(strings.TrimSpace(s), "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return strings.Join(lines, "\n")
}

// The root has no code: only its documentation, and the imports that its links need, with variables
// named _ and without a value to use them.
func TestRootIsDocsOnly(t *testing.T) {
	m := load(t)
	documented := false
	for _, p := range m.Packages {
		if p.ImportPath != source.Path {
			continue
		}
		for _, f := range p.Files {
			documented = documented || f.Name.Name == "fircone" && f.Doc != nil
			for _, d := range f.Decls {
				g, ok := d.(*ast.GenDecl)
				for i := 0; ok && i < len(g.Specs); i++ {
					switch s := g.Specs[i].(type) {
					case *ast.ImportSpec:
					case *ast.ValueSpec:
						ok = len(s.Names) == 1 && s.Names[0].Name == "_" && s.Values == nil
					default:
						ok = false
					}
				}
				if !ok {
					t.Errorf("%s: the root package is documentation only", m.At(d.Pos()))
				}
			}
		}
	}
	if !documented {
		t.Error("the root has no documentation of package fircone")
	}
}
