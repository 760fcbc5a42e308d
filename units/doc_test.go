package units

import (
	"os"
	"strings"
	"testing"
)

// TestDocTables checks that each table in the package documentation is the Output of its Example.
func TestDocTables(t *testing.T) {
	doc, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	examples, err := os.ReadFile("example_test.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"forms", "refusals", "conversions"} {
		_, body, found := strings.Cut(string(examples), "func Example_"+name+"() {")
		_, body, found2 := strings.Cut(body, "// Output:\n")
		output, _, found3 := strings.Cut(body, "}\n")
		if !found || !found2 || !found3 || strings.Count(output, "\n") < 10 {
			t.Fatalf("no Output of Example_%s", name)
		}
		table := strings.ReplaceAll(output, "\t// ", "//\t")
		if !strings.Contains(string(doc), "//\n"+table+"//\n") {
			t.Errorf("the package documentation does not have this table:\n%s", table)
		}
	}
}
