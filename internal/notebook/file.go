package notebook

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"
)

// maxFile is the largest notebook that Read takes, in bytes.
const maxFile = 32 << 20

// A Notebook is a Jupyter file. What this package does not use (metadata, ids,
// attachments) is kept as it was read.
type Notebook struct {
	doc   map[string]any
	cells []map[string]any
}

// Read reads a notebook of format 4, of at most 32 MiB.
func Read(r io.Reader) (*Notebook, error) {
	text, err := io.ReadAll(io.LimitReader(r, maxFile+1))
	if err != nil {
		return nil, fmt.Errorf("notebook.Read: %w", err)
	}
	if len(text) > maxFile {
		return nil, fmt.Errorf("notebook.Read: more than %d bytes", maxFile)
	}
	dec := json.NewDecoder(bytes.NewReader(text))
	dec.UseNumber() // a number is written back as it was read
	nb := new(Notebook)
	if err := dec.Decode(&nb.doc); err != nil {
		return nil, fmt.Errorf("notebook.Read: %w", err)
	}
	if _, err := dec.Token(); err != io.EOF {
		return nil, fmt.Errorf("notebook.Read: text after the end of the notebook")
	}
	if format := fmt.Sprint(nb.doc["nbformat"]); format != "4" {
		return nil, fmt.Errorf("notebook.Read: nbformat %q: want 4", format)
	}
	cells, ok := nb.doc["cells"].([]any)
	if !ok {
		return nil, fmt.Errorf("notebook.Read: no list of cells")
	}
	for i, c := range cells {
		cell, ok := c.(map[string]any)
		if !ok {
			return nil, fmt.Errorf("notebook.Read: cell %d of the file is not an object", i+1)
		}
		if _, err := joinLines(cell["source"]); err != nil {
			return nil, fmt.Errorf("notebook.Read: cell %d of the file: source %w", i+1, err)
		}
		nb.cells = append(nb.cells, cell)
	}
	return nb, nil
}

// WriteTo writes the notebook as Jupyter itself saves one: keys in order, an
// indent of one space, a newline at the end.
func (nb *Notebook) WriteTo(w io.Writer) (int64, error) {
	text, err := encode(nb.doc)
	if err != nil {
		return 0, fmt.Errorf("notebook.Notebook.WriteTo: %w", err)
	}
	n, err := w.Write(text)
	return int64(n), err
}

// code returns the code cells, in order.
func (nb *Notebook) code() []map[string]any {
	var code []map[string]any
	for _, cell := range nb.cells {
		if cell["cell_type"] == "code" {
			code = append(code, cell)
		}
	}
	return code
}

// encode returns v as indented JSON, with <, > and & as they are.
func encode(v any) ([]byte, error) {
	var buf bytes.Buffer
	enc := json.NewEncoder(&buf)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", " ")
	err := enc.Encode(v)
	return buf.Bytes(), err
}

// joinLines returns the text of v, which is one string or a list of them.
func joinLines(v any) (string, error) {
	switch v := v.(type) {
	case string:
		return v, nil
	case []any:
		var text strings.Builder
		for _, line := range v {
			s, ok := line.(string)
			if !ok {
				return "", fmt.Errorf("is not text: %v", line)
			}
			text.WriteString(s)
		}
		return text.String(), nil
	}
	return "", fmt.Errorf("is not text: %v", v)
}

// splitLines returns the lines of text as the format stores them, each with its
// newline.
func splitLines(text string) []any {
	lines := []any{}
	for line := range strings.Lines(text) {
		lines = append(lines, line)
	}
	return lines
}

// An Output is one thing that a cell gave: text on a stream, something to
// display, or an error. Which of the three says Type.
type Output struct {
	Type string `json:"output_type"` // "stream", "display_data" or "error"

	Name string `json:"name,omitempty"` // of a stream: "stdout" or "stderr"
	Text string `json:"text,omitempty"` // of a stream

	Data map[string]string `json:"data,omitempty"` // of a display: contents by media type

	ErrorName  string   `json:"ename,omitempty"`  // of an error: "compile", "exit", ...
	ErrorValue string   `json:"evalue,omitempty"` // of an error: one line
	Traceback  []string `json:"traceback,omitempty"`
}

// stored returns o as the notebook file holds it.
func (o Output) stored() map[string]any {
	out := map[string]any{"output_type": o.Type}
	switch o.Type {
	case "stream":
		out["name"], out["text"] = o.Name, splitLines(o.Text)
	case "display_data":
		data := map[string]any{}
		for media, text := range o.Data {
			data[media] = splitLines(text)
		}
		out["data"], out["metadata"] = data, map[string]any{}
	case "error":
		trace := []any{}
		for _, line := range o.Traceback {
			trace = append(trace, line)
		}
		out["ename"], out["evalue"], out["traceback"] = o.ErrorName, o.ErrorValue, trace
	}
	return out
}
