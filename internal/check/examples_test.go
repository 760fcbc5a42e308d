package check

import (
	"go/ast"
	"go/doc"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/internal/check/source"
)

// coveredByType lists the methods that an Example of the error shows, however it is called: nobody calls
// them by name.
var coveredByType = []string{"Error.Error", "Error.Unwrap"}

// Every exported function and method has an Example in a file outside its package, with
// the output that go test compares, and a comment that says where the figures come
// from or what they show.
func TestFunctionsHaveExamples(t *testing.T) {
	m := load(t)
	for _, p := range m.Shipped() {
		have := examples(p)
		for _, f := range p.Files {
			for _, d := range f.Decls {
				fn, ok := d.(*ast.FuncDecl)
				if !ok || !exportedFunc(fn) {
					continue
				}
				name := fn.Name.Name
				if r := receiver(fn); r != "" {
					name = r + "." + name
				}
				want := strings.ReplaceAll(name, ".", "_")
				if !have[want] && !(slices.Contains(coveredByType, name) && (have["Error"] || have["Error_Error"])) {
					t.Errorf("%s: %s has no Example%s", m.At(fn.Pos()), name, want)
				}
			}
		}
	}
}

func TestExamplesHaveOutputAndCitation(t *testing.T) {
	m := load(t)
	for _, p := range m.Shipped() {
		for _, e := range doc.Examples(p.XTests...) {
			if e.Output == "" && !e.EmptyOutput {
				t.Errorf("%s: Example%s has no // Output:, so go test does not run it", p.Rel(), e.Name)
			}
			said := strings.TrimSpace(e.Doc) != ""
			for _, c := range e.Comments {
				text := strings.ToLower(strings.TrimSpace(c.Text()))
				said = said || text != "" && !strings.HasPrefix(text, "output:") && !strings.HasPrefix(text, "unordered output:")
			}
			if !said {
				t.Errorf("%s: Example%s does not say where its figures come from", p.Rel(), e.Name)
			}
		}
	}
}

// examples returns the names that p has Examples for, "Rules_Picks", without the suffixes
// that begin in lower case.
func examples(p *source.Package) map[string]bool {
	have := map[string]bool{}
	for _, e := range doc.Examples(p.XTests...) {
		name := e.Name
		if i := strings.LastIndexByte(name, '_'); i >= 0 && i+1 < len(name) && name[i+1] >= 'a' && name[i+1] <= 'z' {
			name = name[:i]
		}
		have[name] = true
	}
	return have
}
