package notebook

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"strings"
)

// Run runs every code cell of the notebook, in order, and writes the outputs
// into it. It stops at the first cell that fails, with an error that says which.
// The cells run in dir, see [NewSession].
func (nb *Notebook) Run(ctx context.Context, dir string) error {
	s, err := NewSession(ctx, dir)
	if err != nil {
		return err
	}
	err = nb.run(ctx, s)
	if closing := s.Close(); err == nil {
		err = closing
	}
	return err
}

func (nb *Notebook) run(ctx context.Context, s *Session) error {
	for i, cell := range nb.code() {
		source, err := joinLines(cell["source"])
		if err != nil {
			return fmt.Errorf("notebook.Notebook.Run: code cell %d: source %w", i+1, err)
		}
		outs := s.Run(ctx, source)
		stored := []any{}
		for _, o := range outs {
			stored = append(stored, o.stored())
		}
		cell["outputs"] = stored
		cell["execution_count"] = i + 1
		if Failed(outs) {
			last := outs[len(outs)-1]
			lines := append([]string{last.ErrorName + ": " + last.ErrorValue}, last.Traceback...)
			for _, o := range outs {
				if o.Name == "stderr" {
					lines = append(lines, o.Text)
				}
			}
			return fmt.Errorf("notebook.Notebook.Run: code cell %d: %s", i+1, strings.Join(lines, "\n\t"))
		}
	}
	return nil
}

// A Difference is a code cell whose outputs are not those that were stored.
type Difference struct {
	Cell      int    // which code cell, from 1
	Want, Got string // the stored outputs and the new ones, as JSON
}

// String returns the lines that differ, at most 20 on each side, those of the file
// after a minus and the new ones after a plus.
func (d Difference) String() string {
	want, got := readable(d.Want), readable(d.Got)
	for len(want) > 0 && len(got) > 0 && want[0] == got[0] {
		want, got = want[1:], got[1:]
	}
	for len(want) > 0 && len(got) > 0 && want[len(want)-1] == got[len(got)-1] {
		want, got = want[:len(want)-1], got[:len(got)-1]
	}
	var b strings.Builder
	show := func(mark string, lines []string) {
		for i, line := range lines {
			if i == 20 {
				fmt.Fprintf(&b, "%s ... and %d lines more\n", mark, len(lines)-i)
				break
			}
			if len(line) > 160 {
				line = strings.ToValidUTF8(line[:160], "") + "..."
			}
			b.WriteString(mark + " " + line + "\n")
		}
	}
	show("-", want)
	show("+", got)
	return b.String()
}

// readable returns the lines of outputs in JSON, with the lines of each text
// apart.
func readable(outputs string) []string {
	return strings.Split(strings.ReplaceAll(outputs, `\n`, "\n"), "\n")
}

// Check runs a copy of the notebook as [Notebook.Run] does and returns the cells
// whose outputs differ from the stored ones.
func (nb *Notebook) Check(ctx context.Context, dir string) ([]Difference, error) {
	text, err := encode(nb.doc)
	if err != nil {
		return nil, err
	}
	fresh, err := Read(bytes.NewReader(text))
	if err != nil {
		return nil, err
	}
	if err := fresh.Run(ctx, dir); err != nil {
		return nil, err
	}
	var diffs []Difference
	news := fresh.code()
	for i, old := range nb.code() {
		want, err := canonical(old)
		if err != nil {
			return nil, err
		}
		got, err := canonical(news[i])
		if err != nil {
			return nil, err
		}
		if want != got {
			diffs = append(diffs, Difference{Cell: i + 1, Want: want, Got: got})
		}
	}
	return diffs, nil
}

// canonical returns the outputs and the count of a cell as JSON. Text that is
// stored as one string and as a list of lines comes to the same.
func canonical(cell map[string]any) (string, error) {
	text, err := json.Marshal(map[string]any{"execution_count": cell["execution_count"], "outputs": cell["outputs"]})
	if err != nil {
		return "", err
	}
	var v any
	if err := json.Unmarshal(text, &v); err != nil {
		return "", err
	}
	out, err := encode(joinAll(v))
	return string(out), err
}

// joinAll returns v with every list of strings joined into one.
func joinAll(v any) any {
	switch v := v.(type) {
	case map[string]any:
		for k := range v {
			v[k] = joinAll(v[k])
		}
	case []any:
		if len(v) > 0 {
			if text, err := joinLines(v); err == nil {
				return text
			}
		}
		for i := range v {
			v[i] = joinAll(v[i])
		}
	}
	return v
}
