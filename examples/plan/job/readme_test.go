package job_test

import (
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
// (7.5/7)²/2 · 49 ornaments and · 700 lights are 28.1 and 401.8, 450 by half strings.
func Example_readme() {
	tree := sizing.Tree{Height: units.MustParseLength("7 ft 6 in"), Exposure: sizing.InCorner}
	rules, look := sizing.CommonPractice(), sizing.CommonLook()
	c, err := rules.Compare(look, tree, sizing.Auto) // by height alone, and by what is seen of it
	if err != nil {
		log.Fatal(err)
	}
	needs, err := c.Needs(units.InFeetInches, shopping.Garland)
	if err != nil {
		log.Fatal(err)
	}
	for _, n := range needs {
		fmt.Printf("%s: %v - %s; by rule %v\n", n.Item, n.Quantity, n.Basis, c.Rule[n.Item.Kind])
	}
	// Output:
	// ornaments: 28 - 4.1 % of 30.2 sq ft covered, by sizes of 4 in, 3 1/8 in and 2 in; by rule 49
	// garland: 37 ft 2 in - wraps 10 1/4 in apart over 30.2 sq ft; by rule 67 ft 6 in
	// lights: 450 - 13 to the square foot over 30.2 sq ft; by rule 750
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
