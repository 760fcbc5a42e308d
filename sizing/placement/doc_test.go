package placement_test

import (
	"os"
	"strings"
	"testing"
)

// Every chart in the package documentation is the output of an Example, line by
// line, so that it cannot drift from what the code prints. The table of evenness is
// that of BenchmarkTable, which TestTable holds.
func TestDocIsExampleOutput(t *testing.T) {
	doc, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	examples, err := os.ReadFile("example_test.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"Example_pieces", "Example_ticketHall", "ExampleOrder_Sections"} {
		_, body, found := strings.Cut(string(examples), "func "+name+"() {")
		_, body, ok := strings.Cut(body, "\t// Output:\n")
		output, _, end := strings.Cut(body, "}\n")
		if !found || !ok || !end {
			t.Errorf("no output of %s", name)
			continue
		}
		chart := strings.ReplaceAll(output, "\t// ", "//\t")
		if !strings.Contains(string(doc), "//\n"+chart+"//\n") {
			t.Errorf("the documentation does not hold the output of %s:\n%s", name, chart)
		}
	}
}
