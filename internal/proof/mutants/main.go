// Mutants breaks the code of each package that ships in one small way after another,
// and sees whether the package's own tests notice. The breaking is done by gremlins,
// pinned in .ci/tools.mod; this program keeps the account.
//
//	go run ./internal/proof/mutants PACKAGE...   run all mutants of these, and record the result
//	go run ./internal/proof/mutants -check       what .ci/run does
//	go run ./internal/proof/mutants -table       print the record
//
// The record, .ci/mutants.tsv, says of each package how many mutants were killed and how many
// lived, and a digest of the source and tests that it holds for. The list .ci/survivors
// gives the reason why each one that lived is no fault:
//
//	sizing/rules.go | CONDITIONALS_BOUNDARY 14 | if n < 1 { | at n = 1 both branches give 1
//
// file, kind and column within the line, the line, the reason.
//
// A run fails if fewer than 95 % of the mutants that the tests reach are killed, or if one lives
// that is not listed. With -check a package that has not changed since it was recorded is
// taken at its word, but for one file of all, a different one with each commit, which is
// run again; a package that has changed is run whole.
package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

const (
	bar       = 95.0 // percent of the reached mutants that the tests must kill
	record    = ".ci/mutants.tsv"
	survivors = ".ci/survivors"
	module    = "example.com/fircone/"
)

// A tally is what came of the mutants of one package.
type tally struct {
	pkg                               string
	killed, lived, timeout, unreached int
	date, digest                      string
}

func (t tally) percent() float64 {
	if t.killed+t.lived == 0 {
		return 0
	}
	return 100 * float64(t.killed) / float64(t.killed+t.lived)
}

func (t tally) String() string {
	return fmt.Sprintf("%-18s %4d killed, %3d lived, %2d timed out, %3d not reached: %.1f %%", t.pkg, t.killed, t.lived, t.timeout, t.unreached, t.percent())
}

// A report is gremlins' own.
type report struct {
	Files []struct {
		Name      string `json:"file_name"`
		Mutations []struct {
			Kind   string `json:"type"`
			Status string `json:"status"`
			Line   int    `json:"line"`
			Column int    `json:"column"`
		} `json:"mutations"`
	} `json:"files"`
}

func main() {
	check := flag.Bool("check", false, "run what has changed since it was recorded, and one file more")
	table := flag.Bool("table", false, "print the record")
	verbose := flag.Bool("v", false, "show each mutant that lives, as it is found")
	workers := flag.Int("workers", 2, "how many mutants to try at a time")
	flag.Parse()
	if err := run(*check, *table, *verbose, *workers, flag.Args()); err != nil {
		fmt.Fprintln(os.Stderr, "mutants:", err)
		os.Exit(1)
	}
}

func run(check, table, verbose bool, workers int, pkgs []string) error {
	have, err := readRecord()
	if err != nil {
		return err
	}
	listed, err := readSurvivors()
	if err != nil {
		return err
	}
	all, err := packages()
	if err != nil {
		return err
	}
	if table {
		for _, p := range all {
			fmt.Println(have[p])
		}
		return nil
	}
	m := &mutator{workers: workers, verbose: verbose, listed: listed, seen: map[string]bool{}}
	var bad []string
	judge := func(t tally) {
		fmt.Println(t)
		if t.percent() < bar {
			bad = append(bad, fmt.Sprintf("%s: %.1f %% killed, want %.0f %%", t.pkg, t.percent(), bar))
		}
	}
	if check {
		for _, p := range all {
			now, err := digest(p)
			if err != nil {
				return err
			}
			if have[p].digest == now {
				judge(have[p])
			} else {
				fmt.Printf("%s has changed since it was recorded\n", p)
				pkgs = append(pkgs, p)
			}
		}
	} else if len(pkgs) == 0 {
		return fmt.Errorf("name packages, such as %s, or -check", strings.Join(all, " "))
	}
	for _, p := range pkgs {
		p = strings.Trim(strings.TrimPrefix(p, "./"), "/")
		t, err := m.try(p, "")
		if err != nil {
			return err
		}
		judge(t)
		if !check {
			have[p] = t
			if err := writeRecord(have); err != nil {
				return err
			}
		}
	}
	if check && len(pkgs) == 0 {
		file, err := turn(all)
		if err != nil {
			return err
		}
		t, err := m.try(filepath.Dir(file), filepath.Base(file))
		if err != nil {
			return err
		}
		fmt.Printf("this commit's turn to run again: %s\n%s\n", file, t)
	}
	for _, s := range m.unlisted {
		bad = append(bad, "lives, and is not in "+survivors+": "+s)
	}
	if len(bad) > 0 {
		return fmt.Errorf("%d faults\n%s", len(bad), strings.Join(bad, "\n"))
	}
	return nil
}

// packages returns the packages that ship or that those import, and that have tests and mutants.
func packages() ([]string, error) {
	c := exec.Command("bash", "-c", `go list -deps $(go list ./... | grep -vE "^`+module+`(examples|internal)/")`)
	out, err := c.Output()
	if err != nil {
		return nil, err
	}
	var all []string
	for path := range strings.Lines(string(out)) {
		if rel, ok := strings.CutPrefix(strings.TrimSpace(path), module); ok {
			all = append(all, rel)
		}
	}
	slices.Sort(all)
	return all, nil
}

// sources returns the names of the Go files of a package.
func sources(pkg string) ([]string, error) {
	files, err := filepath.Glob(filepath.Join(pkg, "*.go"))
	if err == nil && files == nil {
		err = fmt.Errorf("%s has no Go files", pkg)
	}
	return files, err
}

// digest returns a digest of the source and the tests of a package.
func digest(pkg string) (string, error) {
	files, err := sources(pkg)
	if err != nil {
		return "", err
	}
	h := sha256.New()
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			return "", err
		}
		fmt.Fprintf(h, "%s %d\n%s", f, len(text), text)
	}
	return fmt.Sprintf("%x", h.Sum(nil))[:16], nil
}

// turn returns the file whose turn it is with this commit.
func turn(pkgs []string) (string, error) {
	var files []string
	for _, p := range pkgs {
		fs, err := sources(p)
		if err != nil {
			return "", err
		}
		for _, f := range fs {
			if !strings.HasSuffix(f, "_test.go") && !strings.HasSuffix(f, "doc.go") {
				files = append(files, f)
			}
		}
	}
	out, err := exec.Command("git", "rev-list", "--count", "HEAD").Output()
	if err != nil {
		return "", err
	}
	n, err := strconv.Atoi(strings.TrimSpace(string(out)))
	if err != nil {
		return "", err
	}
	return files[n%len(files)], nil
}

type mutator struct {
	workers  int
	verbose  bool
	listed   map[string]string
	seen     map[string]bool
	unlisted []string
}

// try runs the mutants of a package, or of one file of it.
func (m *mutator) try(pkg, only string) (tally, error) {
	t := tally{pkg: pkg, date: time.Now().UTC().Format(time.DateOnly)}
	var err error
	if t.digest, err = digest(pkg); err != nil {
		return t, err
	}
	dir, err := os.MkdirTemp("", "mutants")
	if err != nil {
		return t, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "report.json")
	args := []string{
		"unleash", "./" + pkg, "--workers", strconv.Itoa(m.workers), "--timeout-coefficient", "20", "-o", out, "-S", "lt",
		"-E", "/",
	} // the folders in it are other packages
	if only != "" {
		files, err := sources(pkg)
		if err != nil {
			return t, err
		}
		for _, f := range files {
			if filepath.Base(f) != only {
				args = append(args, "-E", "^"+regexp.QuoteMeta(filepath.Base(f))+"$")
			}
		}
	}
	c := exec.Command("gremlins", args...)
	// No vet and no debug symbols: each mutant is a build of its own.
	c.Env = append(os.Environ(), "GOFLAGS=-vet=off -ldflags=-w")
	var log bytes.Buffer
	var show io.Writer = &log
	if m.verbose {
		show = io.MultiWriter(&log, os.Stderr)
	}
	c.Stdout, c.Stderr = show, show
	if err := c.Run(); err != nil {
		return t, fmt.Errorf("gremlins %s: %w\n%s", strings.Join(args, " "), err, tail(log.String()))
	}
	text, err := os.ReadFile(out)
	if err != nil {
		return t, fmt.Errorf("%w\n%s", err, tail(log.String()))
	}
	var r report
	if err := json.Unmarshal(text, &r); err != nil {
		return t, err
	}
	for _, f := range r.Files {
		name := f.Name
		if !strings.HasPrefix(name, pkg+"/") {
			name = filepath.Join(pkg, filepath.Base(name))
		}
		for _, mu := range f.Mutations {
			switch mu.Status {
			case "KILLED":
				t.killed++
			case "TIMED OUT":
				t.timeout++
			case "NOT COVERED":
				t.unreached++
			case "LIVED":
				t.lived++
				key, err := key(name, mu.Kind, mu.Line, mu.Column)
				if err != nil {
					return t, err
				}
				if m.listed[key] == "" {
					m.unlisted = append(m.unlisted, fmt.Sprintf("%s (line %d)", key, mu.Line))
				}
			}
		}
	}
	if only == "" && t.killed == 0 {
		return t, fmt.Errorf("gremlins killed no mutant of %s\n%s", pkg, tail(log.String()))
	}
	return t, nil
}

func tail(s string) string { return s[max(0, len(s)-4000):] }

// key names a mutant by what stands in its line, so that it keeps its name when lines move.
func key(file, kind string, line, column int) (string, error) {
	text, err := os.ReadFile(file)
	if err != nil {
		return "", err
	}
	lines := strings.Split(string(text), "\n")
	if line < 1 || line > len(lines) {
		return "", fmt.Errorf("%s has no line %d", file, line)
	}
	l := lines[line-1]
	s := strings.TrimSpace(l)
	return fmt.Sprintf("%s | %s %d | %s", file, kind, column-strings.Index(l, s), s), nil
}

func readSurvivors() (map[string]string, error) {
	text, err := os.ReadFile(survivors)
	if err != nil {
		return nil, err
	}
	listed := map[string]string{}
	for l := range strings.Lines(string(text)) {
		l = strings.TrimSpace(l)
		if l == "" || strings.HasPrefix(l, "#") {
			continue
		}
		i := strings.LastIndex(l, " | ")
		if i < 0 || strings.Count(l, " | ") < 3 {
			return nil, fmt.Errorf("%s: want FILE | KIND COLUMN | LINE | REASON: %s", survivors, l)
		}
		listed[l[:i]] = l[i+3:]
	}
	return listed, nil
}

func readRecord() (map[string]tally, error) {
	have := map[string]tally{}
	text, err := os.ReadFile(record)
	if os.IsNotExist(err) {
		return have, nil
	}
	for l := range strings.Lines(string(text)) {
		var t tally
		if strings.HasPrefix(l, "#") {
			continue
		}
		if _, err := fmt.Sscanf(l, "%s\t%d\t%d\t%d\t%d\t%s\t%s", &t.pkg, &t.killed, &t.lived, &t.timeout, &t.unreached, &t.date, &t.digest); err != nil {
			return nil, fmt.Errorf("%s: %q: %w", record, l, err)
		}
		have[t.pkg] = t
	}
	return have, err
}

func writeRecord(have map[string]tally) error {
	var b strings.Builder
	b.WriteString("# package\tkilled\tlived\ttimed out\tnot reached\tdate\tdigest; written by internal/proof/mutants\n")
	for _, t := range have {
		fmt.Fprintf(&b, "%s\t%d\t%d\t%d\t%d\t%s\t%s\n", t.pkg, t.killed, t.lived, t.timeout, t.unreached, t.date, t.digest)
	}
	lines := strings.SplitAfter(strings.TrimSuffix(b.String(), "\n"), "\n")
	slices.Sort(lines[1:])
	return os.WriteFile(record, []byte(strings.TrimSuffix(strings.Join(lines, ""), "\n")+"\n"), 0o644)
}
