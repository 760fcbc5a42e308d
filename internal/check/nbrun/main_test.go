package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// notebook writes a notebook of these cells where the library's module is found, and returns its name.
func notebook(t *testing.T, cells ...string) string {
	t.Helper()
	dir, err := os.MkdirTemp("../../..", ".notebook")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(dir) })
	name := filepath.Join(dir, "test.ipynb")
	text := `{"cells": [{"cell_type": "markdown", "source": ["# <b>kept</b>"]}`
	for _, c := range cells {
		text += `,{"cell_type": "code", "outputs": [], "source": "` + strings.NewReplacer("\n", `\n`, "\t", " ", `"`, `\"`).Replace(c) + `"}`
	}
	if err := os.WriteFile(name, []byte(text+`], "metadata": {}, "nbformat": 4, "nbformat_minor": 5}`), 0o644); err != nil {
		t.Fatal(err)
	}
	return name
}

// The cells show the whole dialect; what they give was written by hand from its rules.
func TestRunThenCheck(t *testing.T) {
	name := notebook(t,
		"!*echo building\nimport (\n\t\"fmt\"\n\t\"strings\"\n\t\"github.com/janpfeifer/gonb/gonbui\"\n)\nfunc greet(who string) string { return \"hello \" + who }",
		"%%\nfmt.Println(greet(\"hall\"))\ngonbui.DisplayHTML(\"<b>1 < 2</b>\")\nfmt.Println(\"after\")\nprintln(\"aside\")",
		"import \"example.com/fircone/units\"\n%%\nfmt.Print(strings.ToUpper(units.Foot.String()))")
	if err := process(name, true); err == nil {
		t.Error("a notebook without outputs passes the check")
	}
	if err := process(name, false); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	flat := strings.Join(strings.Fields(string(text)), " ")
	for _, want := range []string{
		`"building\n"`, `[ "hello hall\n" ]`, `"data": { "text/html": [ "<b>1 < 2</b>" ] }`, `[ "after\n" ]`, `"name": "stderr", "output_type": "stream", "text": [ "aside\n" ]`,
		`[ "1 FT" ]`, `"execution_count": 3`, `# <b>kept</b>`,
	} {
		if !strings.Contains(flat, want) {
			t.Errorf("no %s in %s", want, text)
		}
	}
	if err := process(name, true); err != nil {
		t.Errorf("what was written does not pass the check: %v", err)
	}
	if err := os.WriteFile(name, []byte(strings.Replace(string(text), "1 FT", "2 FT", 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := process(name, true); err == nil || !strings.Contains(err.Error(), `would be "1 FT"`) {
		t.Errorf("another output: %v", err)
	}
}

func TestFailures(t *testing.T) {
	for _, test := range []struct{ reason, cell, want string }{
		{"a name that is not declared, by its place in the cell", "func f() {}\n%%\nf()\n  nope()", "cell1:4"},
		{"a program that fails", "import \"os\"\n%%\nos.Exit(4)", "exit status 4"},
		{"a command that fails", "!*exit 3", "exit status 3"},
		{"an internal package", "import _ \"example.com/fircone/internal/elem\"\nimport \"example.com/fircone/internal/elem\"\n%%\nelem.Log(1)", "internal package"},
	} {
		if err := process(notebook(t, test.cell), true); err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("%s: %v, want %s", test.reason, err, test.want)
		}
	}
}
