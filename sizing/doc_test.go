package sizing

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Every chart in the package documentation is the output of an Example, line by line,
// which the go command checks, so that neither can drift.
func TestDocIsExampleOutput(t *testing.T) {
	doc, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob("example_*_test.go")
	if err != nil {
		t.Fatal(err)
	}
	var examples strings.Builder
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		examples.Write(text)
	}
	for _, name := range []string{"Example_quickChart", "Example_chartByShape", "Example_chartOfSpacings", "Example_howSure"} {
		_, body, found := strings.Cut(examples.String(), "func "+name+"() {")
		_, body, ok := strings.Cut(body, "\t// Output:\n")
		output, _, end := strings.Cut(body, "}\n")
		if !found || !ok || !end {
			t.Errorf("no output of %s", name)
			continue
		}
		chart := strings.NewReplacer("\t// ", "//\t", "\t//\n", "//\n").Replace(output)
		if !strings.Contains(string(doc), "//\n"+chart+"//\n") {
			t.Errorf("the documentation does not hold the output of %s:\n%s", name, chart)
		}
	}
}
