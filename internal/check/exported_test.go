package check

import (
	"flag"
	"go/types"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the list of exported names anew")

// What a newcomer has to look over: the most exported identifiers of all packages that ship together, of all but
// labor and job, and the most types in sizing. An identifier is a constant, a variable, a function, a type, a method or a
// field. 800 in all is what we want to come to.
const (
	mostNames = 800
	mostWords = 660 // of the packages but labor and job
	mostTypes = 18
)

// exported returns a line for every exported identifier of a package: its kind, its name and its type.
func exported(pkg *types.Package) []string {
	qualify := types.RelativeTo(pkg)
	var lines []string
	add := func(kind, name string, t types.Type) {
		lines = append(lines, pkg.Name()+" "+kind+" "+name+" "+types.TypeString(t, func(p *types.Package) string {
			if qualify(p) == "" {
				return ""
			}
			return p.Name()
		}))
	}
	for _, name := range pkg.Scope().Names() {
		obj := pkg.Scope().Lookup(name)
		if !obj.Exported() {
			continue
		}
		switch obj := obj.(type) {
		case *types.Const:
			add("const", name, obj.Type())
			lines[len(lines)-1] += " = " + obj.Val().ExactString()
		case *types.Var:
			add("var", name, obj.Type())
		case *types.Func:
			add("func", name, obj.Type())
		case *types.TypeName:
			under := obj.Type().Underlying()
			if s, ok := under.(*types.Struct); ok {
				lines = append(lines, pkg.Name()+" type "+name+" struct")
				for i := range s.NumFields() {
					if f := s.Field(i); f.Exported() {
						add("field", name+"."+f.Name(), f.Type())
						lines[len(lines)-1] += " `" + s.Tag(i) + "`"
					}
				}
			} else {
				add("type", name, under)
			}
			if named, ok := obj.Type().(*types.Named); ok {
				for m := range named.Methods() {
					if m.Exported() {
						recv := name
						if _, ok := m.Signature().Recv().Type().(*types.Pointer); ok {
							recv = "(*" + name + ")"
						}
						add("method", recv+"."+m.Name(), m.Type())
					}
				}
			}
		}
	}
	slices.Sort(lines)
	return lines
}

// The exported names are those of .ci/exported.txt: a line each, so that a change of the surface is seen in the
// commit that makes it.
func TestExportedNames(t *testing.T) {
	m := load(t)
	var now []string
	for _, p := range m.Shipped() {
		now = append(now, exported(p.Types)...)
	}
	path := filepath.Join(m.Root, ".ci", "exported.txt")
	if *update {
		if err := os.WriteFile(path, []byte(strings.Join(now, "\n")+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	was := strings.Split(strings.TrimSpace(string(text)), "\n")
	for _, line := range was {
		if !slices.Contains(now, line) {
			t.Errorf("gone or changed: %s", line)
		}
	}
	for _, line := range now {
		if !slices.Contains(was, line) {
			t.Errorf("not recorded: %s", line)
		}
	}
	if t.Failed() {
		t.Log("if this is meant: .ci/record, and say so in the commit")
	}
}

// The surface is small enough to look over.
func TestExportedNamesAreFew(t *testing.T) {
	all, words, types := 0, 0, 0
	byKind := map[string]int{}
	for _, p := range load(t).Shipped() {
		for _, line := range exported(p.Types) {
			kind := strings.Fields(line)[1]
			all++
			byKind[kind]++
			if p.Rel() != "sizing/labor" && p.Rel() != "sizing/job" {
				words++
			}
			if p.Rel() == "sizing" && kind == "type" {
				types++
			}
		}
	}
	t.Logf("%d exported identifiers, of at most %d: %v; %d without labor and job, of at most %d; %d types in sizing, of at most %d",
		all, mostNames, byKind, words, mostWords, types, mostTypes)
	if all > mostNames || words > mostWords || types > mostTypes {
		t.Error("too many")
	}
}
