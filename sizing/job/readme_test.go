package job_test

import (
	"fmt"
	"log"
	"os"
	"strings"
	"testing"

	"example.com/fircone/sizing/job"
)

// The README shows this example; TestReadme holds the two together.
// Common practice for the rules; by hand, a 7 ft tree takes 7 types of 7, and 63 ft of
// garland that seven strands of 9 ft make without a join lost.
func Example_readme() {
	request, err := job.ParseRequest([]byte(`{"trees": [{"room": "hall", "height": "7 ft"}], "shop": {"offers": [
		{"item": "ornaments", "name": "box of 12", "pack": 12, "price": "14.00"},
		{"item": "garland", "name": "9 ft strand", "pack": "9 ft", "price": "6.90", "shelf": 5}]}}`))
	if err != nil {
		log.Fatal(err) // every mistake in it at once, each with its JSON Pointer
	}
	plan, err := job.Make(request)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Print(plan.Basket)
	// Output:
	// [ ] ornaments
	//     hall                              49
	//     5 x box of 12 at 14.00         70.00
	//     left over                         11
	//
	// [ ] garland
	//     hall                           45 ft
	//       not enough: 45 ft on the shelf, 18
	//         ft short
	//     5 x 9 ft strand at 6.90        34.50
	//     use 5 x 9 ft strand whole for hall
	//
	// [ ] lights
	//     hall                               0
	//       not enough: 0 on the shelf, 700
	//         short
	//     nothing to buy
	//
	// total                             104.50
}

// TestReadme checks that the README's program and its output are those of the example above.
func TestReadme(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
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
			if line == "\t//" {
				line = "" // an empty line of the output
			}
			want = append(want, strings.TrimPrefix(line, part.prefix))
		}
		if got := strings.Split(block, "\n"); strings.Join(got, "\n") != strings.Join(want, "\n") {
			t.Errorf("the README shows\n%s\nand the example is\n%s", block, strings.Join(want, "\n"))
		}
	}
}
