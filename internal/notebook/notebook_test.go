package notebook

import (
	"bytes"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func readSample(t *testing.T) *Notebook {
	t.Helper()
	f, err := os.Open("testdata/sample.ipynb")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	nb, err := Read(f)
	if err != nil {
		t.Fatal(err)
	}
	return nb
}

// A notebook that is not run is written back byte for byte: the layout is the
// one that Jupyter saves, and what is not known here is kept.
func TestRoundTrip(t *testing.T) {
	want, err := os.ReadFile("testdata/sample.ipynb")
	if err != nil {
		t.Fatal(err)
	}
	var got bytes.Buffer
	if _, err := readSample(t).WriteTo(&got); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got.String()); diff != "" {
		t.Errorf("written back (-want +got):\n%s", diff)
	}
}

func TestReadErrors(t *testing.T) {
	for _, test := range []struct{ reason, text, want string }{
		{"no JSON", "#", "invalid character"},
		{"an older format", `{"nbformat":3,"cells":[]}`, `nbformat "3": want 4`},
		{"no cells", `{"nbformat":4}`, "no list of cells"},
		{"a cell that is no object", `{"nbformat":4,"cells":[1]}`, "cell 1 of the file is not an object"},
		{"a source that is no text", `{"nbformat":4,"cells":[{"source":[1]}]}`, "is not text: 1"},
		{"no source", `{"nbformat":4,"cells":[{}]}`, "is not text: <nil>"},
		{"two texts", `{"nbformat":4,"cells":[]}{}`, "after the end"},
		{"too large", strings.Repeat(" ", maxFile+1), "more than"},
	} {
		_, err := Read(strings.NewReader(test.text))
		if err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("%s: error %v, want one with %q", test.reason, err, test.want)
		}
	}
}

// The sample shows the whole dialect; what its cells must give was written by
// hand from its rules.
func TestRunAndCheck(t *testing.T) {
	t.Parallel()
	nb := readSample(t)
	if err := nb.Run(t.Context(), "testdata"); err != nil {
		t.Fatal(err)
	}
	stream := func(name string, lines ...any) any {
		return map[string]any{"output_type": "stream", "name": name, "text": lines}
	}
	want := [][]any{
		{},
		{
			stream("stdout", "HELLO hall\n"),
			map[string]any{
				"output_type": "display_data", "metadata": map[string]any{},
				"data": map[string]any{"text/html": []any{"<b>1 < 2</b>\n", "<i>&</i>"}},
			},
			stream("stdout", "after\n"),
		},
		{stream("stdout", "bye hall"), stream("stderr", "to stderr\n")},
	}
	for i, cell := range nb.code() {
		if diff := cmp.Diff(want[i], cell["outputs"]); diff != "" {
			t.Errorf("cell %d (-want +got):\n%s", i+1, diff)
		}
	}

	// What was just written is the same, also as text in one string; other text is not.
	first := func(cell int) map[string]any {
		return nb.code()[cell]["outputs"].([]any)[0].(map[string]any)
	}
	first(1)["text"] = "HELLO hall\n"
	first(2)["text"] = "bye, hall"
	diffs, err := nb.Check(t.Context(), "testdata")
	if err != nil || len(diffs) != 1 || diffs[0].Cell != 3 {
		t.Fatalf("a changed output: %v, %v, want one difference in cell 3", diffs, err)
	}
	if got, want := diffs[0].String(), "-    \"text\": \"bye, hall\"\n+    \"text\": \"bye hall\"\n"; got != want {
		t.Errorf("shown as\n%swant\n%s", got, want)
	}
}

func TestSessionErrors(t *testing.T) {
	t.Parallel()
	s, err := NewSession(t.Context(), "testdata")
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	last := func(source string) Output {
		t.Helper()
		outs := s.Run(t.Context(), source)
		if !Failed(outs) {
			t.Fatalf("%q did not fail: %v", source, outs)
		}
		return outs[len(outs)-1]
	}
	for _, test := range []struct{ reason, source, name, want string }{
		{"a syntax error has its place in the cell", "import \"fmt\"\nfunc f( {}", "compile", "cell1:2:9: expected ')', found '{'"},
		{"so has one in the body", "%%\nx := := 1", "compile", "cell2:2:6: expected operand"},
		{"and one of the compiler", "%%\n\n  undefinedName()", "compile", "cell3:3:3: undefined: undefinedName"},
		{"an unknown special line", "%timeit", "compile", `cell4:1: special line "%timeit"`},
		{"a failing command", "!*exit 3", "exit", "exit status 3"},
		{"a failing program", "import \"os\"\n%%\nos.Exit(4)", "exit", "exit status 4"},
		{"a panic", "%%\npanic(\"ouch\")", "exit", "exit status 2"},
		{"too much output", "import \"strings\"\nimport \"fmt\"\n%%\nfmt.Print(strings.Repeat(\"x\", 9<<20))", "output", "more than"},
		{"an internal package of the module", "import _ \"example.com/fircone/internal/notebook\"\n", "compile", "internal package"},
		{"a cell that failed leaves nothing", "%%\nos.Exit(0)", "compile", "undefined: os"},
	} {
		got := last(test.source)
		if got.ErrorName != test.name || !strings.Contains(got.ErrorValue+strings.Join(got.Traceback, "\n"), test.want) {
			t.Errorf("%s: %s: %s %q, want %s: ...%s", test.reason, got.ErrorName, got.ErrorValue, got.Traceback, test.name, test.want)
		}
	}
	nb := readSample(t)
	nb.code()[2]["source"] = "%%\nnope()"
	err = nb.Run(t.Context(), "testdata")
	if err == nil || !strings.Contains(err.Error(), "code cell 3: compile: cell3:2:1: undefined: nope") {
		t.Errorf("a notebook whose third cell fails: %v", err)
	}
}

func TestMemory(t *testing.T) {
	var m memory
	step := func(decls string) {
		t.Helper()
		next, err := m.with("cell1", decls)
		if err != nil {
			t.Fatal(err)
		}
		m = next.withoutMain()
	}
	names := func() string {
		var all []string
		for _, d := range m.decls {
			all = append(all, strings.Join(d.names, "+"))
		}
		return strings.Join(all, " ")
	}
	for _, test := range []struct{ reason, decls, want string }{
		{"a group of variables comes apart, constants stay together", "var (\n a = 1\n b, c = 2, 3\n)\nconst (\n d = iota\n e\n)", "a b+c d+e"},
		{"a later variable takes the place of an earlier one", "var a = 9", "b+c d+e a"},
		{"and of all that came with it", "func c() {}", "d+e a c"},
		{"methods go by their type", "type T[P any] struct{}\nfunc (T[P]) M() {}\nfunc (*T[P]) N() {}", "d+e a c T T.M T.N"},
		{"a method anew", "func (*T[P]) M() {}", "d+e a c T T.N T.M"},
		{"the blank name any number of times, main never", "var _ = 1\nvar _ = 2\nfunc main() {}", "d+e a c T T.N T.M _ _"},
	} {
		step(test.decls)
		if got := names(); got != test.want {
			t.Errorf("%s: %s, want %s", test.reason, got, test.want)
		}
	}
}

// Only the imports that a program uses stand in it.
func TestImports(t *testing.T) {
	m, err := memory{}.with("cell1", `import (
		"fmt"
		"math/rand/v2"
		str "strings"
		_ "embed"
	)`)
	if err != nil {
		t.Fatal(err)
	}
	for _, test := range []struct{ body, want string }{
		{"", `_ "embed"`},
		{"rand.Int()", `_ "embed",math/rand/v2`},
		{"fmt.Print(str.ToUpper(``))", `_ "embed",fmt,str "strings"`},
		{"fmt := 1; _ = fmt", `_ "embed"`},
	} {
		text, err := m.program("cell2", 1, test.body)
		if err != nil {
			t.Fatal(err)
		}
		_, list, _ := strings.Cut(text, "import (\n")
		list, _, _ = strings.Cut(list, ")")
		var got []string
		for line := range strings.Lines(list) {
			got = append(got, strings.TrimSpace(line))
		}
		want := strings.Split(test.want, ",")
		for i, w := range want {
			if !strings.Contains(w, `"`) {
				want[i] = `"` + w + `"`
			}
		}
		slices.Sort(got)
		slices.Sort(want)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("imports for %q (-want +got):\n%s", test.body, diff)
		}
	}
}

func TestDifferenceIsShort(t *testing.T) {
	d := Difference{Want: "same\\nold\n" + strings.Repeat("x\n", 30) + "end", Got: "same\\n" + strings.Repeat("y", 200) + "\nend"}
	want := "- old\n" + strings.Repeat("- x\n", 19) + "- ... and 11 lines more\n+ " + strings.Repeat("y", 160) + "...\n"
	if diff := cmp.Diff(want, d.String()); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestRecords(t *testing.T) {
	got := appendRecords(nil, "one\ntw\x1e{\"text/html\":\"<p>\"}\no\n\x1enot json\nend")
	want := []Output{
		{Type: "stream", Name: "stdout", Text: "one\ntw"},
		{Type: "display_data", Data: map[string]string{"text/html": "<p>"}},
		{Type: "stream", Name: "stdout", Text: "o\n"},
		{Type: "stream", Name: "stderr", Text: "display: invalid character 'o' in literal null (expecting 'u')\n"},
		{Type: "stream", Name: "stdout", Text: "end"},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}
