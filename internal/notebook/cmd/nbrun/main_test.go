package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const small = `{
 "cells": [
  {
   "cell_type": "code",
   "execution_count": null,
   "id": "a1",
   "metadata": {},
   "outputs": [],
   "source": [
    "import \"fmt\"\n",
    "%%\n",
    "fmt.Println(6 * 7)"
   ]
  }
 ],
 "metadata": {},
 "nbformat": 4,
 "nbformat_minor": 5
}
`

// The notebook has to lie inside the module, since its cells may import it.
func writeSmall(t *testing.T, text string) string {
	t.Helper()
	dir, err := os.MkdirTemp(".", "test")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(dir) })
	name := filepath.Join(dir, "small.ipynb")
	if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return name
}

func TestRunThenCheck(t *testing.T) {
	name := writeSmall(t, small)
	var out, errs bytes.Buffer
	if status := run(t.Context(), []string{"-check", name}, nil, &out, &errs); status != 1 {
		t.Errorf("check of a notebook without outputs: status %d, want 1", status)
	}
	if !strings.Contains(out.String(), `+    "text": "42`) {
		t.Errorf("the difference is not shown:\n%s", out.String())
	}
	if status := run(t.Context(), []string{name}, nil, &out, &errs); status != 0 {
		t.Fatalf("run: status %d: %s", status, errs.String())
	}
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(text), `"42\n"`) {
		t.Errorf("the output was not written:\n%s", text)
	}
	if status := run(t.Context(), []string{"-check", name}, nil, &out, &errs); status != 0 {
		t.Errorf("check of what was written: status %d, want 0", status)
	}
}

func TestFailingCell(t *testing.T) {
	name := writeSmall(t, strings.Replace(small, "6 * 7", "6 * x", 1))
	var out, errs bytes.Buffer
	if status := run(t.Context(), []string{name}, nil, &out, &errs); status != 1 {
		t.Errorf("status %d, want 1", status)
	}
	if want := "code cell 1: compile: cell1:3:17: undefined: x"; !strings.Contains(errs.String(), want) {
		t.Errorf("error %q, want %q in it", errs.String(), want)
	}
}

func TestServe(t *testing.T) {
	var out, errs bytes.Buffer
	in := strings.NewReader(`{"code":"import \"fmt\"\nvar x = 6"}
{"code":"%%\nfmt.Print(7*x)"}
{"code":"%%\nfmt.Print(7*y)"}
`)
	if status := run(t.Context(), []string{"-serve", "."}, in, &out, &errs); status != 0 {
		t.Fatalf("status %d: %s", status, errs.String())
	}
	want := `{"ok":true,"outputs":null}
{"ok":true,"outputs":[{"output_type":"stream","name":"stdout","text":"42"}]}
{"ok":false,"outputs":[{"output_type":"error","ename":"compile","evalue":"cell3:2:13: undefined: y","traceback":["cell3:2:13: undefined: y"]}]}
`
	if got := out.String(); got != want {
		t.Errorf("answers:\n%swant:\n%s", got, want)
	}
}

func TestUsage(t *testing.T) {
	for _, args := range [][]string{nil, {"-check"}, {"-serve"}, {"-serve", "a", "b"}, {"-unknown"}} {
		var out, errs bytes.Buffer
		if status := run(t.Context(), args, nil, &out, &errs); status != 2 || errs.Len() == 0 {
			t.Errorf("%q: status %d with %q, want 2 and a word on usage", args, status, errs.String())
		}
	}
	var out, errs bytes.Buffer
	if status := run(t.Context(), []string{"missing.ipynb"}, nil, &out, &errs); status != 1 {
		t.Errorf("a file that is not there: status %d, want 1", status)
	}
}
