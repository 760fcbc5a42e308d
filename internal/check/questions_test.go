package check

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// The front page leads from questions to functions, with the answers. Under one of the
// functions of each line stands an example whose comment begins with that question, and
// whose output has the numbers of the answer in their order.
func TestQuestions(t *testing.T) {
	front, err := os.ReadFile("../../doc.go")
	if err != nil {
		t.Fatal(err)
	}
	folders := map[string]string{
		"units": "units", "palette": "palette", "sizing": "sizing", "mantel": "mantel",
		"shopping": "sizing/shopping", "placement": "sizing/placement", "labor": "sizing/labor", "lights": "sizing/lights",
	}
	numbers := regexp.MustCompile(`\d+/\d+|[\d.]*\d|#\w+`)
	lines := regexp.MustCompile(`(?m)^//   - (.*\?) (.*) \((\[.*\])\)\.$`).FindAllStringSubmatch(string(front), -1)
	if len(lines) < 20 {
		t.Fatalf("%d questions, want 20 or more", len(lines))
	}
	type asked struct{ question, output string }
	examples := map[string][]asked{} // by package and function
	for name, folder := range folders {
		file, err := parser.ParseFile(token.NewFileSet(), "../../"+folder+"/questions_test.go", nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		for _, decl := range file.Decls {
			fn, ok := decl.(*ast.FuncDecl)
			if !ok {
				continue
			}
			of := strings.TrimPrefix(fn.Name.Name, "Example")
			if i := strings.LastIndexByte(of, '_'); i > 0 && of[i+1:] == strings.ToLower(of[i+1:]) {
				of = of[:i] // an example has a word of its own behind the function
			} else {
				t.Errorf("%s.%s is no question", name, fn.Name.Name)
			}
			of = name + "." + strings.ReplaceAll(of, "_", ".")
			this := asked{question: strings.Join(strings.Fields(fn.Doc.Text()), " ")}
			for _, c := range file.Comments {
				if fn.Body.Pos() < c.Pos() && c.End() < fn.Body.End() && strings.HasPrefix(c.Text(), "Output:") {
					this.output = c.Text()
				}
			}
			examples[of] = append(examples[of], this)
		}
	}
	for _, line := range lines {
		question, answer := line[1], line[2]
		functions := strings.FieldsFunc(line[3], func(r rune) bool { return strings.ContainsRune("[], ", r) })
		var found asked
		for _, f := range functions {
			if i := slices.IndexFunc(examples[f], func(a asked) bool { return strings.HasPrefix(a.question, question) }); i >= 0 {
				found = examples[f][i]
				examples[f] = slices.Delete(examples[f], i, i+1)
				break
			}
		}
		if found == (asked{}) {
			t.Errorf("%q leads to %v, under which no example asks it", question, functions)
			continue
		}
		left := numbers.FindAllString(found.output, -1)
		for _, number := range numbers.FindAllString(answer, -1) {
			i := slices.Index(left, number)
			if i < 0 {
				t.Errorf("%q is answered by %q, but the output of its example has no %s there:\n%s", question, answer, number, found.output)
				break
			}
			left = left[i+1:]
		}
	}
	for of, rest := range examples {
		for _, a := range rest {
			t.Errorf("the front page does not lead to %s: %s", of, a.question)
		}
	}
}
