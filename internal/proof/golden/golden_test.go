package golden

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"errors"
	"flag"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/fircone/internal/proof/surface"
)

var update = flag.Bool("update", false, "write the golden results anew")

// perFunc is the most cases of one function, and least the fewest cases in all.
const (
	perFunc = 300
	least   = 20_000
)

// fewer lists functions that take long, with the cases that are enough for them.
var fewer = map[string]int{
	"placement.Layout.AppendPlaces": 30, "placement.Layout.Places": 60, "placement.Layout.Wind": 100,
	"palette.Rules.Read": 100, "palette.Rules.Suggest": 60, "palette.Rules.Best": 100,
}

// cases returns the arguments that f is called with.
func cases(f surface.Func) [][]reflect.Value {
	if n, ok := fewer[f.Name]; ok {
		return surface.Cases(f, n)
	}
	return surface.Cases(f, perFunc)
}

// A result is what one function gave for its cases.
type result struct {
	name    string
	rows    []string
	refused int  // cases that it returned an error for
	errors  bool // whether it can return an error
}

func (r result) digest() string {
	return fmt.Sprintf("%s %d %x", r.name, len(r.rows), sha256.Sum256([]byte(strings.Join(r.rows, "\n"))))
}

func run(t *testing.T, f surface.Func) result {
	t.Helper()
	r := result{name: f.Name}
	for _, args := range cases(f) {
		row := f.Name + "(" + surface.Encode(args) + ") = "
		func() {
			defer func() {
				if p := recover(); p != nil {
					if e, ok := args[0].Interface().(error); !f.Must() && !(ok && errors.Unwrap(e) == nil) {
						t.Errorf("%spanic: %v", row, p)
					}
					row += "panic"
				}
			}()
			out := f.Call(args)
			row += surface.Encode(out)
			var err error
			if err, r.errors = f.Err(out); err != nil {
				r.refused++
			}
		}()
		r.rows = append(r.rows, row)
	}
	return r
}

// Every function gives what it gave when the golden results were written, on every architecture.
func TestGolden(t *testing.T) {
	byPackage := map[string][]result{}
	total := 0
	for _, f := range surface.Funcs {
		start := time.Now()
		r := run(t, f)
		if d := time.Since(start); d > 200*time.Millisecond {
			t.Logf("%s takes %v for %d cases", f.Name, d, len(r.rows))
		}
		total += len(r.rows)
		byPackage[f.Package()] = append(byPackage[f.Package()], r)
		if r.errors && 2*r.refused > len(r.rows) && len(r.rows) > 1 && !isParser(f) {
			t.Logf("%s refuses %d of %d cases: give it better arguments in package surface", f.Name, r.refused, len(r.rows))
		}
	}
	t.Logf("%d functions, %d cases", len(surface.Funcs), total)
	if total < least {
		t.Errorf("%d cases, want at least %d", total, least)
	}
	if *update {
		write(t, byPackage)
		return
	}
	text, err := os.ReadFile(filepath.Join("testdata", "digests.txt"))
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]string{}
	for line := range strings.Lines(string(text)) {
		name, _, _ := strings.Cut(line, " ")
		want[name] = strings.TrimSpace(line)
	}
	for _, pkg := range slices.Sorted(maps.Keys(byPackage)) {
		shown := false
		for _, r := range byPackage[pkg] {
			if r.digest() == want[r.name] {
				delete(want, r.name)
				continue
			}
			switch _, recorded := want[r.name]; {
			case !recorded:
				t.Errorf("%s is not recorded", r.name)
			case shown:
				t.Errorf("%s differs too", r.name)
			default:
				shown = true
				t.Errorf("%s differs:\n%s", r.name, difference(t, pkg, r))
			}
			delete(want, r.name)
		}
	}
	for name := range want {
		t.Errorf("%s is recorded, and there is no such function", name)
	}
	if t.Failed() {
		t.Log("if the change is meant, and checked: go test ./internal/proof/golden -update")
	}
}

// isParser reports whether f reads texts, most of which are another parser's to read.
func isParser(f surface.Func) bool {
	return strings.Contains(f.Name, ".Parse") || strings.HasSuffix(f.Name, ".UnmarshalText")
}

// write records the results.
func write(t *testing.T, byPackage map[string][]result) {
	t.Helper()
	if err := os.MkdirAll("testdata", 0o755); err != nil {
		t.Fatal(err)
	}
	var digests bytes.Buffer
	for _, pkg := range slices.Sorted(maps.Keys(byPackage)) {
		var rows bytes.Buffer
		z, err := gzip.NewWriterLevel(&rows, gzip.BestCompression)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range byPackage[pkg] {
			fmt.Fprintln(&digests, r.digest())
			for _, row := range r.rows {
				fmt.Fprintln(z, row)
			}
		}
		if err := z.Close(); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join("testdata", pkg+".txt.gz"), rows.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join("testdata", "digests.txt"), digests.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

// difference returns the first row of r that is not the recorded one.
func difference(t *testing.T, pkg string, r result) string {
	t.Helper()
	f, err := os.Open(filepath.Join("testdata", pkg+".txt.gz"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(z)
	if err != nil {
		t.Fatal(err)
	}
	var old []string
	for line := range strings.Lines(string(text)) {
		if strings.HasPrefix(line, r.name+"(") {
			old = append(old, strings.TrimSuffix(line, "\n"))
		}
	}
	for i, row := range r.rows {
		if i == len(old) {
			return fmt.Sprintf("%d cases were recorded, and there are %d", len(old), len(r.rows))
		}
		if row != old[i] {
			return fmt.Sprintf("was %s\nis  %s", old[i], row)
		}
	}
	return fmt.Sprintf("%d cases were recorded, and there are %d", len(old), len(r.rows))
}
