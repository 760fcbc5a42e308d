// Mutants breaks the code that ships in one small way after another, and sees whether the
// tests of the package notice. The breaking is done by gremlins, pinned in .ci/tools.mod; this
// program keeps the account, file by file.
//
//	go run ./internal/proof/mutants FILE...     run all mutants of these files, and record the result
//	go run ./internal/proof/mutants PACKAGE...  the same for each file of a package
//	go run ./internal/proof/mutants -check      what .ci/run does
//	go run ./internal/proof/mutants -table      print the record, package by package
//
// The record, .ci/mutants.tsv, says of each file how many mutants were killed and how many lived, and a
// digest of the file and the package's tests that it holds for. The list .ci/survivors gives the
// reason why each one that lived is no fault:
//
//	sizing/rules.go | CONDITIONALS_BOUNDARY 14 | if n < 1 { | at n = 1 both branches give 1
//
// file, kind and column within the line, the line, the reason.
//
// Fewer than 95 % killed of the mutants that the tests of a package reach is a failure, and so is one
// that lives and is not listed. A mutant takes a second or two, and all of them hours; so -check
// judges the record, says for how much of the code it still holds, and runs one file again, a different
// one with each commit.
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

// A tally is what came of the mutants of one file, or of all of a package.
type tally struct {
	name                              string
	killed, lived, timeout, unreached int
	date, digest                      string
}

func (t *tally) add(u tally) {
	t.killed += u.killed
	t.lived += u.lived
	t.timeout += u.timeout
	t.unreached += u.unreached
}

func (t tally) percent() float64 {
	if t.killed+t.lived == 0 {
		return 0
	}
	return 100 * float64(t.killed) / float64(t.killed+t.lived)
}

func (t tally) String() string {
	return fmt.Sprintf("%-34s %4d killed, %3d lived, %2d timed out, %3d not reached: %.1f %%", t.name, t.killed, t.lived, t.timeout, t.unreached, t.percent())
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
	check := flag.Bool("check", false, "judge the record, and run one file again")
	table := flag.Bool("table", false, "print the record")
	verbose := flag.Bool("v", false, "show each mutant that lives, as it is found")
	workers := flag.Int("workers", 2, "how many mutants to try at a time")
	flag.Parse()
	if err := run(*check, *table, *verbose, *workers, flag.Args()); err != nil {
		fmt.Fprintln(os.Stderr, "mutants:", err)
		os.Exit(1)
	}
}

func run(check, table, verbose bool, workers int, args []string) error {
	have, err := readRecord()
	if err != nil {
		return err
	}
	listed, err := readSurvivors()
	if err != nil {
		return err
	}
	pkgs, err := packages()
	if err != nil {
		return err
	}
	m := &mutator{workers: workers, verbose: verbose, listed: listed}
	var bad []string
	if check || table {
		var all []string
		for _, p := range pkgs {
			files, err := sources(p)
			if err != nil {
				return err
			}
			sum, stale := tally{name: p}, 0
			for _, f := range files {
				now, err := digest(f)
				if err != nil {
					return err
				}
				if have[f].digest != now {
					stale++
				}
				sum.add(have[f])
			}
			fmt.Printf("%v; %d of %d files as they were then\n", sum, len(files)-stale, len(files))
			if sum.killed+sum.lived > 0 && sum.percent() < bar {
				bad = append(bad, fmt.Sprintf("%s: %.1f %% killed, want %.0f %%", p, sum.percent(), bar))
			}
			all = append(all, files...)
		}
		args = nil
		if check {
			file, err := turn(slices.DeleteFunc(all, func(f string) bool { return have[f].digest == "" || have[f].timeout > 3 }))
			if err != nil {
				return err
			}
			fmt.Printf("this commit's turn to run again: %s\n", file)
			args = []string{file}
		}
	} else if len(args) == 0 {
		return fmt.Errorf("name files or packages, such as %s, or -check", strings.Join(pkgs, " "))
	}
	var files []string
	for _, a := range args {
		a = strings.Trim(strings.TrimPrefix(a, "./"), "/")
		if strings.HasSuffix(a, ".go") {
			files = append(files, a)
			continue
		}
		more, err := sources(a)
		if err != nil {
			return err
		}
		files = append(files, more...)
	}
	for _, f := range files {
		t, err := m.try(f)
		if err != nil {
			return err
		}
		fmt.Println(t)
		if t.killed+t.lived >= 20 && t.percent() < bar {
			bad = append(bad, fmt.Sprintf("%s: %.1f %% killed, want %.0f %%", f, t.percent(), bar))
		}
		if !check {
			have[f] = t
			if err := writeRecord(have); err != nil {
				return err
			}
		}
	}
	for _, s := range m.unlisted {
		bad = append(bad, "lives, and is not in "+survivors+": "+s)
	}
	if len(bad) > 0 {
		return fmt.Errorf("%d faults\n%s", len(bad), strings.Join(bad, "\n"))
	}
	return nil
}

// packages returns the packages that ship or that those import, and that have Go files besides doc.go.
func packages() ([]string, error) {
	c := exec.Command("bash", "-c", `go list -deps $(go list ./... | grep -vE "^`+module+`(examples|internal)/")`)
	out, err := c.Output()
	if err != nil {
		return nil, err
	}
	var all []string
	for path := range strings.Lines(string(out)) {
		if rel, ok := strings.CutPrefix(strings.TrimSpace(path), module); ok { // the root has no code
			all = append(all, rel)
		}
	}
	slices.Sort(all)
	return all, nil
}

// sources returns the files of a package that are no tests.
func sources(pkg string) ([]string, error) {
	files, err := filepath.Glob(filepath.Join(pkg, "*.go"))
	files = slices.DeleteFunc(files, func(f string) bool {
		return strings.HasSuffix(f, "_test.go") || strings.HasSuffix(f, "/doc.go")
	})
	if err == nil && len(files) == 0 {
		err = fmt.Errorf("%s has no Go files", pkg)
	}
	return files, err
}

// digest returns a digest of a file and the tests of its package.
func digest(file string) (string, error) {
	files, err := filepath.Glob(filepath.Join(filepath.Dir(file), "*_test.go"))
	if err != nil {
		return "", err
	}
	h := sha256.New()
	for _, f := range append(files, file) {
		text, err := os.ReadFile(f)
		if err != nil {
			return "", err
		}
		fmt.Fprintf(h, "%s %d\n%s", f, len(text), text)
	}
	return fmt.Sprintf("%x", h.Sum(nil))[:16], nil
}

// turn returns the file, of those recorded, whose turn it is with this commit. Large files, and those with mutants that run until
// their time is out, take longer than CI has, and are left to whoever changes them.
func turn(all []string) (string, error) {
	all = slices.DeleteFunc(slices.Clone(all), func(f string) bool {
		info, err := os.Stat(f)
		return err != nil || info.Size() > 6_000 || slow[filepath.Dir(f)]
	})
	if len(all) == 0 {
		return "", fmt.Errorf("%s holds no file that CI could run again", record)
	}
	out, err := exec.Command("git", "rev-list", "--count", "HEAD").Output()
	if err != nil {
		return "", err
	}
	n, err := strconv.Atoi(strings.TrimSpace(string(out)))
	if err != nil {
		return "", err
	}
	return all[n%len(all)], nil
}

// slow lists the packages whose tests take so long that a file of mutants does not fit into CI.
var slow = map[string]bool{"internal/elem": true, "sizing/shopping": true, "sizing/placement": true}

type mutator struct {
	workers  int
	verbose  bool
	listed   map[string]string
	unlisted []string
}

// try runs the mutants of a file.
func (m *mutator) try(file string) (tally, error) {
	t := tally{name: file, date: time.Now().UTC().Format(time.DateOnly)}
	var err error
	if t.digest, err = digest(file); err != nil {
		return t, err
	}
	dir, err := os.MkdirTemp("", "mutants")
	if err != nil {
		return t, err
	}
	defer os.RemoveAll(dir)
	pkg := filepath.Dir(file)
	out := filepath.Join(dir, "report.json")
	// The folders in that of the package are other packages.
	args := []string{"unleash", "./" + pkg, "--workers", strconv.Itoa(m.workers), "--timeout-coefficient", "20", "-o", out, "-S", "lt", "-E", "/"}
	others, err := sources(pkg)
	if err != nil {
		return t, err
	}
	for _, f := range others {
		if f != file {
			args = append(args, "-E", "^"+regexp.QuoteMeta(filepath.Base(f))+"$")
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
		if filepath.Base(f.Name) != filepath.Base(file) {
			return t, fmt.Errorf("gremlins ran %s with %s", f.Name, file)
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
				key, err := key(file, mu.Kind, mu.Line, mu.Column)
				if err != nil {
					return t, err
				}
				if m.listed[key] == "" {
					m.unlisted = append(m.unlisted, fmt.Sprintf("%s (line %d)", key, mu.Line))
				}
			}
		}
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
		if _, err := fmt.Sscanf(l, "%s\t%d\t%d\t%d\t%d\t%s\t%s", &t.name, &t.killed, &t.lived, &t.timeout, &t.unreached, &t.date, &t.digest); err != nil {
			return nil, fmt.Errorf("%s: %q: %w", record, l, err)
		}
		have[t.name] = t
	}
	return have, err
}

func writeRecord(have map[string]tally) error {
	lines := []string{"# file\tkilled\tlived\ttimed out\tnot reached\tdate\tdigest; written by internal/proof/mutants"}
	for _, t := range have {
		lines = append(lines, fmt.Sprintf("%s\t%d\t%d\t%d\t%d\t%s\t%s", t.name, t.killed, t.lived, t.timeout, t.unreached, t.date, t.digest))
	}
	slices.Sort(lines[1:])
	return os.WriteFile(record, []byte(strings.Join(lines, "\n")+"\n"), 0o644)
}
