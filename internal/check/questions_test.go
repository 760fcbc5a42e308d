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
	examples := map[string]string{} // by package and function: the comment
	outputs := map[string]string{}
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
			of, ok := strings.CutSuffix(strings.TrimPrefix(fn.Name.Name, "Example"), "_question")
			if !ok {
				t.Errorf("%s.%s is no question", name, fn.Name.Name)
			}
			of = name + "." + strings.ReplaceAll(of, "_", ".")
			examples[of] = strings.Join(strings.Fields(fn.Doc.Text()), " ")
			for _, c := range file.Comments {
				if fn.Body.Pos() < c.Pos() && c.End() < fn.Body.End() && strings.HasPrefix(c.Text(), "Output:") {
					outputs[of] = c.Text()
				}
			}
		}
	}
	for _, line := range lines {
		question, answer := line[1], line[2]
		functions := strings.FieldsFunc(line[3], func(r rune) bool { return strings.ContainsRune("[], ", r) })
		of := functions[0]
		for _, f := range functions {
			if strings.HasPrefix(examples[f], question) {
				of = f
			}
		}
		if comment := examples[of]; !strings.HasPrefix(comment, question) {
			t.Errorf("%q leads to %s, whose example says %q", question, of, comment)
		}
		left := numbers.FindAllString(outputs[of], -1)
		for _, number := range numbers.FindAllString(answer, -1) {
			i := slices.Index(left, number)
			if i < 0 {
				t.Errorf("%q is answered by %q, but the output of its example has no %s there:\n%s", question, answer, number, outputs[of])
				break
			}
			left = left[i+1:]
		}
		delete(examples, of)
	}
	for of, comment := range examples {
		t.Errorf("the front page does not lead to %s: %s", of, comment)
	}
}
