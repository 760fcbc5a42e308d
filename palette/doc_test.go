package palette

import (
	"os"
	"strings"
	"testing"
)

// Every figure in the package doc is the output of an Example: each line that is set
// apart in doc.go stands in a comment of example_test.go.
func TestDocFigures(t *testing.T) {
	doc, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	examples, err := os.ReadFile("example_test.go")
	if err != nil {
		t.Fatal(err)
	}
	printed := map[string]bool{}
	output := false
	for line := range strings.SplitSeq(string(examples), "\n") {
		text, comment := strings.CutPrefix(line, "\t// ")
		output = comment && (output || text == "Output:")
		if output {
			printed[text] = true
		}
	}
	figures := 0
	for line := range strings.SplitSeq(string(doc), "\n") {
		text, ok := strings.CutPrefix(line, "//\t")
		if !ok {
			continue
		}
		figures++
		if !printed[text] {
			t.Errorf("no Example prints %q", text)
		}
	}
	if figures < 55 {
		t.Errorf("%d figures found in the doc", figures)
	}
}
