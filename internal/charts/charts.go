// Package charts is for the tests that hold the charts of a package's documentation to what the code
// prints.
package charts

import (
	"go/ast"
	"go/doc"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// InDoc fails the test for each of the named Examples of the package in the working folder whose Output
// does not stand in doc.go, line by line, as text set apart. The go command checks the Output, so
// that neither can drift.
func InDoc(t *testing.T, examples ...string) {
	t.Helper()
	text, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	printed := outputs(t)
	for _, name := range examples {
		output, ok := printed[name]
		if !ok || strings.TrimSpace(output) == "" {
			t.Errorf("no output of %s", name)
			continue
		}
		chart := "//\n"
		for line := range strings.Lines(output) {
			chart += strings.TrimRight("//\t"+strings.TrimSuffix(line, "\n"), "\t ") + "\n"
		}
		if !strings.Contains(string(text), chart+"//\n") {
			t.Errorf("the documentation does not have the output of %s:\n%s", name, chart)
		}
	}
}

// outputs returns what each Example of the package in the working folder prints.
func outputs(t *testing.T) map[string]string {
	t.Helper()
	paths, err := filepath.Glob("*_test.go")
	if err != nil {
		t.Fatal(err)
	}
	fset := token.NewFileSet()
	var files []*ast.File
	for _, path := range slices.Sorted(slices.Values(paths)) {
		f, err := parser.ParseFile(fset, path, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, f)
	}
	printed := map[string]string{}
	for _, e := range doc.Examples(files...) {
		printed["Example"+e.Name] = e.Output
	}
	return printed
}
