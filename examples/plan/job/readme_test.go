package job_test

import (
	"errors"
	"fmt"
	"log"
	"os"
	"strings"
	"testing"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// The README shows this example; TestReadme holds the two together.
// Common practice for the rules; by hand, a 7 ft 6 in tree has (7.5/7)² of the
// surface of the 7 ft one that the look is taken from, and half of it is seen:
// (7.5/7)²/2 · 49 ornaments and · 700 lights are 28.1 and 401.8.
func Example_readme() {
	tree := sizing.Tree{Height: units.MustParseLength("7 ft 6 in"), Exposure: sizing.InCorner}
	rules, look := sizing.CommonPractice(), sizing.CommonLook()
	byRule, err := rules.Needs(tree, shopping.Garland)  // by height alone
	byShape, err2 := look.Needs(tree, shopping.Garland) // by what is seen of it
	if err := errors.Join(err, err2); err != nil {
		log.Fatal(err)
	}
	for i, n := range byRule {
		fmt.Printf("%s: %v - %s; in the corner %v\n", n.Item, n.Quantity, n.Basis, byShape[i].Quantity)
	}
	// Output:
	// ornaments: 49 - 7 types, 1 for each whole foot of 7 ft 6 in; 7 of each, and 5 to 9 will do; in the corner 29
	// garland: 67 ft 6 in - 9 ft for each foot of 7 ft 6 in; in the corner 37 ft 2 in
	// lights: 750 - 100 for each foot of 7 ft 6 in; in the corner 402
}

// TestReadme checks that the README's program and its output are those of the example above.
func TestReadme(t *testing.T) {
	readme, err := os.ReadFile("../../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	source, err := os.ReadFile("readme_test.go")
	if err != nil {
		t.Fatal(err)
	}
	_, example, _ := strings.Cut(string(source), "func Example_readme() {\n")
	program, output, _ := strings.Cut(example, "\t// Output:\n")
	output, _, _ = strings.Cut(output, "\n}\n")
	for _, part := range []struct{ fence, prefix, want string }{
		{"```go\n", "\t", strings.TrimSuffix(program, "\n")},
		{"```text\n", "\t// ", output},
	} {
		_, block, found := strings.Cut(string(readme), part.fence)
		block, _, closed := strings.Cut(block, "\n```")
		if !found || !closed {
			t.Fatalf("the README has no block %q", part.fence)
		}
		var want []string
		for _, line := range strings.Split(part.want, "\n") {
			want = append(want, strings.TrimPrefix(line, part.prefix))
		}
		if got := strings.Split(block, "\n"); strings.Join(got, "\n") != strings.Join(want, "\n") {
			t.Errorf("the README shows\n%s\nand the example is\n%s", block, strings.Join(want, "\n"))
		}
	}
}
