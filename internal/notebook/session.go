package notebook

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"
)

const (
	// cellTime is how long one cell may take to compile and run.
	cellTime = 3 * time.Minute

	// maxOutput is how much a cell may write to each of its streams, in bytes.
	maxOutput = 8 << 20
)

// A Session runs cells one after the other, each with what the ones before it
// declared. It keeps a module of its own in a temporary folder until Close.
type Session struct {
	module string // the folder of the module that cells are compiled in
	dir    string // the folder that cells run in
	memory memory
	count  int
}

// NewSession returns a session whose cells run in dir. They may import every
// public package of the module that dir lies in, and what that module requires,
// as any program of another module could. In place of the display package of
// the Go kernel they get the stand-in that this package keeps.
func NewSession(ctx context.Context, dir string) (*Session, error) {
	s := &Session{dir: dir}
	if err := s.open(ctx); err != nil {
		return nil, errors.Join(fmt.Errorf("notebook.NewSession: %w", err), s.Close())
	}
	return s, nil
}

// kernelModule is the module of the Go kernel that the notebooks are written
// for. Only its display package is used.
const kernelModule = "github.com/janpfeifer/gonb"

func (s *Session) open(ctx context.Context) error {
	abs, err := filepath.Abs(s.dir)
	if err != nil {
		return err
	}
	s.dir = abs
	cmd := exec.CommandContext(ctx, "go", "list", "-m", "-json")
	cmd.Dir = abs
	cmd.Env = append(os.Environ(), "GOWORK=off")
	text, err := output(cmd)
	if err != nil {
		return err
	}
	var around struct{ Path, Dir string }
	if err := json.Unmarshal(text, &around); err != nil {
		return err
	}
	if s.module, err = os.MkdirTemp("", "notebook"); err != nil {
		return err
	}
	// The module starts with the requirements and sums of the one around it, so
	// that nothing is looked up that is not already pinned there.
	mod, err := os.ReadFile(filepath.Join(around.Dir, "go.mod"))
	if err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(s.module, "go.mod"), mod, 0o644); err != nil {
		return err
	}
	sum, err := os.ReadFile(filepath.Join(around.Dir, "go.sum"))
	if err != nil && !os.IsNotExist(err) {
		return err
	}
	if err := os.WriteFile(filepath.Join(s.module, "go.sum"), sum, 0o644); err != nil {
		return err
	}
	const version = "v0.0.0-00010101000000-000000000000"
	_, err = output(s.command(ctx, "go", "mod", "edit", "-module=notebook",
		"-require="+around.Path+"@"+version, "-replace="+around.Path+"="+around.Dir,
		"-require="+kernelModule+"@"+version, "-replace="+kernelModule+"="+filepath.Join(around.Dir, "internal", "notebook", "gonb")))
	return err
}

// Close removes the session's temporary folder.
func (s *Session) Close() error {
	if s.module == "" {
		return nil
	}
	return os.RemoveAll(s.module)
}

// Run runs a cell and returns what it gave. A cell fails if the last of its
// outputs is an error; what it declared is then forgotten.
func (s *Session) Run(ctx context.Context, source string) []Output {
	ctx, cancel := context.WithTimeout(ctx, cellTime)
	defer cancel()
	s.count++
	name := "cell" + strconv.Itoa(s.count)
	c, err := parseCell(name, source)
	if err != nil {
		return []Output{failure("compile", err.Error(), nil)}
	}
	var outs []Output
	for _, line := range c.shell {
		cmd := s.command(ctx, "sh", "-c", line)
		if outs = s.run(ctx, cmd, outs); Failed(outs) {
			return outs
		}
	}
	next, err := s.memory.with(name, c.decls)
	if err != nil {
		return append(outs, compileFailure(errorLines(err)))
	}
	program, err := next.program(name, c.main, c.body)
	if err != nil {
		return append(outs, compileFailure(errorLines(err)))
	}
	if err := os.WriteFile(filepath.Join(s.module, "main.go"), []byte(program), 0o644); err != nil {
		return append(outs, failure("runner", err.Error(), nil))
	}
	exe := filepath.Join(s.module, "cell.exe")
	if _, err := output(s.command(ctx, "go", "build", "-ldflags=-s -w", "-o", exe, ".")); err != nil {
		return append(outs, compileFailure(s.tidy(err.Error())))
	}
	cmd := exec.CommandContext(ctx, exe)
	cmd.Dir = s.dir
	cmd.Env = s.environ()
	if outs = s.run(ctx, cmd, outs); !Failed(outs) {
		s.memory = next.withoutMain()
	}
	return outs
}

// Failed reports whether the cell that gave outs failed.
func Failed(outs []Output) bool {
	return len(outs) > 0 && outs[len(outs)-1].Type == "error"
}

func failure(name, value string, trace []string) Output {
	return Output{Type: "error", ErrorName: name, ErrorValue: value, Traceback: trace}
}

func compileFailure(lines []string) Output {
	if len(lines) == 0 {
		lines = []string{"the cell does not compile"}
	}
	return failure("compile", lines[0], lines)
}

// environ is what commands and cells find in their environment: cells are built
// in their own module alone, and the dialect's name for the notebook's folder.
func (s *Session) environ() []string {
	return append(os.Environ(), "GOWORK=off", "GOFLAGS=-mod=mod", "GONB_DIR="+s.dir)
}

// command returns a command that runs in the session's module.
func (s *Session) command(ctx context.Context, name string, args ...string) *exec.Cmd {
	cmd := exec.CommandContext(ctx, name, args...)
	cmd.Dir = s.module
	cmd.Env = s.environ()
	return cmd
}

// output runs cmd and returns its standard output. The error of one that fails
// is what it wrote to its standard error.
func output(cmd *exec.Cmd) ([]byte, error) {
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	text, err := cmd.Output()
	if err != nil {
		return nil, errors.New(strings.TrimSpace(stderr.String() + "\n" + err.Error()))
	}
	return text, nil
}

// tidy returns the lines of what the compiler wrote, without the paths of the
// session's folder and the lines that say only which command failed.
func (s *Session) tidy(text string) []string {
	text = strings.NewReplacer(s.module+string(filepath.Separator), "", "./", "").Replace(text)
	return slices.DeleteFunc(strings.Split(text, "\n"), func(line string) bool {
		return line == "" || strings.HasPrefix(line, "# ") || strings.HasPrefix(line, "exit status")
	})
}

// run runs cmd and appends what it gave to outs: first what it wrote to its
// standard output, in order, then its standard error, then how it failed.
func (s *Session) run(ctx context.Context, cmd *exec.Cmd, outs []Output) []Output {
	stdout, stderr := &bounded{most: maxOutput}, &bounded{most: maxOutput}
	cmd.Stdout, cmd.Stderr = stdout, stderr
	cmd.WaitDelay = time.Second
	err := cmd.Run()
	outs = appendRecords(outs, stdout.text.String())
	if text := strings.ReplaceAll(stderr.text.String(), s.module+string(filepath.Separator), ""); text != "" {
		outs = append(outs, Output{Type: "stream", Name: "stderr", Text: text})
	}
	switch {
	case stdout.over || stderr.over:
		return append(outs, failure("output", fmt.Sprintf("more than %d bytes on one stream", maxOutput), nil))
	case ctx.Err() != nil:
		return append(outs, failure("time", ctx.Err().Error(), nil))
	case err != nil:
		return append(outs, failure("exit", err.Error(), nil))
	}
	return outs
}

// appendRecords appends what a program wrote to its standard output. Plain text
// is a stream; a JSON text between a record separator and a newline, as in RFC
// 7464, is something to display.
func appendRecords(outs []Output, text string) []Output {
	for text != "" {
		plain, rest, found := strings.Cut(text, "\x1e")
		if plain != "" {
			if n := len(outs); n > 0 && outs[n-1].Type == "stream" && outs[n-1].Name == "stdout" {
				outs[n-1].Text += plain
			} else {
				outs = append(outs, Output{Type: "stream", Name: "stdout", Text: plain})
			}
		}
		if !found {
			break
		}
		record, after, _ := strings.Cut(rest, "\n")
		var data map[string]string
		if err := json.Unmarshal([]byte(record), &data); err != nil {
			outs = append(outs, Output{Type: "stream", Name: "stderr", Text: "display: " + err.Error() + "\n"})
		} else {
			outs = append(outs, Output{Type: "display_data", Data: data})
		}
		text = after
	}
	return outs
}

// A bounded keeps the first bytes written to it and notes if there were more.
type bounded struct {
	text bytes.Buffer
	most int
	over bool
}

func (b *bounded) Write(p []byte) (int, error) {
	if b.text.Len()+len(p) > b.most {
		b.over = true
		return 0, errors.New("too much output")
	}
	return b.text.Write(p)
}
