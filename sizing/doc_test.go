package sizing

import (
	"os"
	"slices"
	"strings"
	"testing"
)

// The chart in the package documentation is the output of Example_quickChart,
// which the go command checks, so that neither can drift.
func TestQuickChartIsTheExamples(t *testing.T) {
	chart := func(file string) []string {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var rows []string
		for line := range strings.Lines(string(text)) {
			row := strings.TrimLeft(strings.TrimSpace(line), "/ \t")
			if len(rows) > 0 || strings.HasPrefix(row, "height   types") {
				rows = append(rows, row)
			}
			if strings.HasPrefix(row, "15 ft") && len(rows) > 0 {
				return rows
			}
		}
		t.Fatalf("no chart in %s", file)
		return nil
	}
	doc, example := chart("doc.go"), chart("example_shape_test.go")
	if len(doc) != 7 || !slices.Equal(doc, example) {
		t.Errorf("doc.go has\n%s\nthe example\n%s", strings.Join(doc, "\n"), strings.Join(example, "\n"))
	}
}
