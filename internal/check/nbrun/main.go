// Nbrun runs Go notebooks without a browser, with the Go command alone, so that the notebooks of
// examples/notebook keep the outputs that they were committed with.
//
//	nbrun FILE.ipynb ...         run each and write its outputs into it
//	nbrun -check FILE.ipynb ...  run each and fail if that would change it
//
// A notebook is a Jupyter file of format 4 whose code cells are Go, in the dialect of compiled Go kernels:
// what a cell declares is there for the cells below; a line of %% begins the body of main, which runs now; a
// line that begins with !* is run by the shell in the folder of the module that the cells are
// compiled in, where GONB_DIR is the notebook's folder. Each cell is compiled with all
// declarations so far and without the imports that it does not use, and runs as a process of its own.
//
// Source: nbformat.readthedocs.io, The Notebook file format.
package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strconv"
	"strings"
)

func main() {
	check := flag.Bool("check", false, "compare with the outputs in the file and write nothing")
	flag.Parse()
	status := 0
	for _, name := range flag.Args() {
		if err := process(name, *check); err != nil {
			fmt.Fprintf(os.Stderr, "nbrun: %s: %v\n", name, err)
			status = 1
			continue
		}
		fmt.Println("ok", name)
	}
	os.Exit(status)
}

// process runs the cells of a file, and writes it or compares it with what it was.
func process(name string, check bool) error {
	was, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	var doc struct {
		Cells []any `json:"cells"`
	}
	var whole map[string]any
	if err := decode(was, &whole); err != nil {
		return err
	}
	if err := decode(was, &doc); err != nil {
		return err
	}
	s, err := newSession(filepath.Dir(name))
	if err != nil {
		return err
	}
	defer os.RemoveAll(s.module)
	n := 0
	for _, c := range doc.Cells {
		cell, ok := c.(map[string]any)
		if !ok || cell["cell_type"] != "code" {
			continue
		}
		n++
		outputs, err := s.run(n, text(cell["source"]))
		if err != nil {
			return fmt.Errorf("code cell %d: %w", n, err)
		}
		cell["outputs"], cell["execution_count"] = outputs, n
	}
	whole["cells"] = doc.Cells
	var now bytes.Buffer
	enc := json.NewEncoder(&now) // as Jupyter itself saves it: keys in order, an indent of one space
	enc.SetEscapeHTML(false)
	enc.SetIndent("", " ")
	if err := enc.Encode(whole); err != nil {
		return err
	}
	if !check {
		return os.WriteFile(name, now.Bytes(), 0o644)
	}
	old, fresh := strings.Split(string(was), "\n"), strings.Split(now.String(), "\n")
	for i := range fresh {
		if i >= len(old) || old[i] != fresh[i] {
			return fmt.Errorf("line %d would be %s", i+1, strings.TrimSpace(fresh[i]))
		}
	}
	return nil
}

// decode reads JSON and keeps numbers as they are written.
func decode(data []byte, v any) error {
	d := json.NewDecoder(bytes.NewReader(data))
	d.UseNumber()
	return d.Decode(v)
}

// text returns the source of a cell, which is a string or a list of them.
func text(v any) string {
	list, ok := v.([]any)
	if !ok {
		return fmt.Sprint(v)
	}
	s := ""
	for _, line := range list {
		s += fmt.Sprint(line)
	}
	return s
}

// stored returns text as the format has it: lines, each with its newline.
func stored(text string) []any {
	lines := []any{}
	for line := range strings.Lines(text) {
		lines = append(lines, line)
	}
	return lines
}

// A session is the module that the cells of a notebook are compiled in, and what they have declared.
type session struct {
	dir, module  string
	imports      map[string]string // by the name that an import goes by
	declarations string
}

// kernel is the module of the Go kernel that the notebooks are written for. Of it, only the display package is
// used, for which gonb is a stand-in.
const kernel = "github.com/janpfeifer/gonb"

func newSession(dir string) (*session, error) {
	s := &session{imports: map[string]string{}}
	var err error
	if s.dir, err = filepath.Abs(dir); err != nil {
		return nil, err
	}
	c := exec.Command("go", "list", "-m", "-f", "{{.Dir}}")
	c.Dir = s.dir
	out, err := c.Output()
	if err != nil {
		return nil, err
	}
	root := strings.TrimSpace(string(out))
	if s.module, err = os.MkdirTemp("", "notebook"); err != nil {
		return nil, err
	}
	// The module begins with the library's requirements and sums, so that nothing is looked up that is not pinned there.
	for _, name := range []string{"go.mod", "go.sum"} {
		b, err := os.ReadFile(filepath.Join(root, name))
		if err != nil {
			return nil, err
		}
		if err := os.WriteFile(filepath.Join(s.module, name), b, 0o644); err != nil {
			return nil, err
		}
	}
	const library, version = "example.com/fircone", "v0.0.0-00010101000000-000000000000"
	_, _, err = s.command(s.module, "go", "mod", "edit", "-module=notebook", "-require="+library+"@"+version, "-replace="+library+"="+root,
		"-require="+kernel+"@"+version, "-replace="+kernel+"="+filepath.Join(root, "internal", "check", "nbrun", "gonb"))
	return s, err
}

// command runs a program and returns what it wrote to its two streams.
func (s *session) command(dir, name string, args ...string) (stdout, stderr string, err error) {
	var out, bad bytes.Buffer
	c := exec.Command(name, args...)
	c.Dir, c.Stdout, c.Stderr = dir, &out, &bad
	c.Env = append(os.Environ(), "GOWORK=off", "GOFLAGS=-mod=mod", "GONB_DIR="+s.dir)
	if err := c.Run(); err != nil {
		return "", "", fmt.Errorf("%w\n%s", err, bad.String())
	}
	return out.String(), bad.String(), nil
}

// run runs cell n and returns its outputs.
func (s *session) run(n int, source string) ([]any, error) {
	outputs := []any{}
	declarations, body, _ := strings.Cut("\n"+source, "\n%%\n")
	var kept strings.Builder
	for line := range strings.Lines(strings.TrimPrefix(declarations, "\n")) {
		if command, ok := strings.CutPrefix(line, "!*"); ok {
			stdout, stderr, err := s.command(s.module, "sh", "-c", command)
			if err != nil {
				return nil, err
			}
			outputs, line = append(outputs, shown(stdout, stderr)...), "\n"
		}
		kept.WriteString(line)
	}
	at := fmt.Sprintf("//line cell%d:", n)
	if err := s.declare(kept.String(), at); err != nil {
		return nil, err
	}
	program := s.declarations + fmt.Sprintf("\n%s%d\nfunc main() {\n%s\n}\n", at, strings.Count(declarations, "\n")+1, body)
	file, err := parser.ParseFile(token.NewFileSet(), "", "package main\n"+program, 0)
	if err != nil {
		return nil, err
	}
	used := map[string]bool{}
	for _, id := range file.Unresolved {
		used[id.Name] = true
	}
	head := "package main\n"
	for name, spec := range s.imports {
		if used[name] {
			head += "import " + spec + "\n"
		}
	}
	if err := os.WriteFile(filepath.Join(s.module, "main.go"), []byte(head+program), 0o644); err != nil {
		return nil, err
	}
	exe := filepath.Join(s.module, "cell.exe")
	if _, _, err := s.command(s.module, "go", "build", "-ldflags=-s -w", "-o", exe, "."); err != nil {
		return nil, err
	}
	stdout, stderr, err := s.command(s.dir, exe)
	return append(outputs, shown(stdout, stderr)...), err
}

// declare keeps the declarations and the imports of a cell.
func (s *session) declare(text, at string) error {
	const head = "package main\n"
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, "", head+text, parser.ParseComments)
	if err != nil {
		return err
	}
	from := 0
	for _, d := range file.Decls {
		g, ok := d.(*ast.GenDecl)
		if !ok || g.Tok != token.IMPORT {
			continue
		}
		for _, spec := range g.Specs {
			i := spec.(*ast.ImportSpec)
			importPath, err := strconv.Unquote(i.Path.Value)
			if err != nil {
				return err
			}
			name, text := path.Base(importPath), i.Path.Value
			if i.Name != nil {
				name, text = i.Name.Name, i.Name.Name+" "+text
			}
			s.imports[name] = text
		}
		from = fset.Position(g.End()).Offset - len(head)
	}
	s.declarations += fmt.Sprintf("\n%s%d\n%s", at, strings.Count(text[:from], "\n")+1, text[from:])
	return nil
}

// shown returns what a program wrote as the outputs of a cell. Text is a stream; a JSON text between a record separator
// and a newline, as in RFC 7464, is something to display.
func shown(stdout, stderr string) []any {
	var outputs []any
	stream := func(name, text string) {
		if text != "" {
			outputs = append(outputs, map[string]any{"output_type": "stream", "name": name, "text": stored(text)})
		}
	}
	for stdout != "" {
		plain, rest, _ := strings.Cut(stdout, "\x1e")
		stream("stdout", plain)
		record, after, _ := strings.Cut(rest, "\n")
		var data map[string]string
		if json.Unmarshal([]byte(record), &data) == nil {
			lines := map[string]any{}
			for media, text := range data {
				lines[media] = stored(text)
			}
			outputs = append(outputs, map[string]any{"output_type": "display_data", "data": lines, "metadata": map[string]any{}})
		}
		stdout = after
	}
	stream("stderr", stderr)
	return outputs
}
