// Mutants breaks the code that ships in one small way after another, and sees whether the tests of the
// package notice.
//
//	go run ./internal/proof/mutants               all packages that ship, or that those import
//	go run ./internal/proof/mutants PACKAGE...    these, such as units or sizing/shopping
//	go run ./internal/proof/mutants FILE...       only what is broken in these files
//	go run ./internal/proof/mutants -every 16     one mutant in 16, others with each commit: what .ci/run does
//	go run ./internal/proof/mutants -table        what came of the last run of each package, from .ci/mutants.tsv
//
// What to break, and how, and which of it the tests reach at all, is what gremlins finds, pinned in .ci/tools.mod:
// + for -, < for <=, == for != and the like. Gremlins itself builds the tests anew for each mutant, which takes
// hours for all of them. Here all mutants of a package are built at once, each behind a switch that the
// environment throws (see rewrite.go), so that a mutant takes no more than the tests do, and most are
// killed by the quick ones, which run first. Those that no switch can hold, in constants that the
// compiler needs, are built one by one.
//
// Fewer than 95 % killed in a package is a failure, and so is a mutant that lives and is not in .ci/survivors, with the
// reason why it is no fault:
//
//	sizing/rules.go | CONDITIONALS_BOUNDARY 14 | if n < 1 { | at n = 1 both branches give 1
//
// file, kind and column within the line, the line, the reason. One that is in the list and was killed is
// a failure too. A mutant that runs longer than the tests take many times over counts as killed.
package main

import (
	"bytes"
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/json"
	"flag"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"
)

const (
	bar       = 95.0 // percent of the reached mutants that the tests must kill
	survivors = ".ci/survivors"
	record    = ".ci/mutants.tsv"
	module    = "example.com/fircone/"
	variable  = "FIRCONE_MUTANT" // the switch
)

// A mutant is one way to break a file.
type mutant struct {
	id     int // what throws its switch
	kind   string
	file   string // its base name
	line   int
	column int
	apart  bool // no switch can hold it
	fate   fate
	passed bool // it was not its turn
}

type fate int

const (
	unreached fate = iota
	twin           // is the same as one before
	unviable       // does not build
	killed
	timeout
	lived
)

func main() {
	verbose := flag.Bool("v", false, "show each mutant that lives, listed or not, and those that time out")
	workers := flag.Int("workers", runtime.NumCPU(), "how many mutants to try at a time")
	every := flag.Int("every", 1, "try one mutant in so many")
	table := flag.Bool("table", false, "print the record")
	flag.Parse()
	if *table {
		if err := tell(); err != nil {
			fmt.Fprintln(os.Stderr, "mutants:", err)
			os.Exit(1)
		}
		return
	}
	if err := run(*verbose, *workers, *every, flag.Args()); err != nil {
		fmt.Fprintln(os.Stderr, "mutants:", err)
		os.Exit(1)
	}
}

func run(verbose bool, workers, every int, args []string) error {
	turn, err := commits()
	if err != nil {
		return err
	}
	listed, err := readSurvivors()
	if err != nil {
		return err
	}
	// files has, for each package, the files to break; none for all.
	files := map[string][]string{}
	for _, a := range args {
		a = strings.Trim(strings.TrimPrefix(a, "./"), "/")
		if strings.HasSuffix(a, ".go") {
			files[filepath.Dir(a)] = append(files[filepath.Dir(a)], filepath.Base(a))
		} else {
			files[a] = nil
		}
	}
	if len(args) == 0 {
		all, err := packages()
		if err != nil {
			return err
		}
		for _, p := range all {
			files[p] = nil
		}
	}
	var bad []string
	for _, pkg := range slices.Sorted(maps.Keys(files)) {
		began := time.Now()
		all, err := try(pkg, files[pkg], workers, func(m *mutant) bool { return (m.id+turn)%every == 0 })
		if err != nil {
			return fmt.Errorf("%s: %w", pkg, err)
		}
		count := map[fate]int{}
		alive, tried := map[string]bool{}, map[string]bool{}
		for _, m := range all {
			if m.passed {
				continue
			}
			count[m.fate]++
			key, err := key(pkg, m)
			if err != nil {
				return err
			}
			if m.fate == lived {
				alive[key] = true
				if listed[key] == "" {
					bad = append(bad, fmt.Sprintf("lives, and is not in %s: %s (line %d)", survivors, key, m.line))
				}
			}
			tried[key] = true
			if verbose && (m.fate == lived || m.fate == timeout) {
				fmt.Printf("%s %s (line %d)\n", map[fate]string{lived: "lives", timeout: "timed out"}[m.fate], key, m.line)
			}
		}
		for _, key := range slices.Sorted(maps.Keys(listed)) {
			if tried[key] && !alive[key] && every == 1 || files[pkg] == nil && every == 1 && !tried[key] && filepath.Dir(key[:strings.Index(key, " ")]) == pkg {
				bad = append(bad, fmt.Sprintf("is in %s, but none lives: %s", survivors, key))
			}
		}
		dead, total := count[killed]+count[timeout], count[killed]+count[timeout]+count[lived]
		percent := 100 * float64(dead) / float64(max(total, 1))
		fmt.Printf("%-18s %4d killed, %2d of them by time, %3d lived, %3d not reached: %.1f %% killed, in %.0f s\n",
			pkg, dead, count[timeout], count[lived], count[unreached], percent, time.Since(began).Seconds())
		if files[pkg] == nil && every == 1 {
			if err := keep(pkg, dead, count[lived], count[unreached]); err != nil {
				return err
			}
		}
		if percent < bar && files[pkg] == nil && every == 1 {
			bad = append(bad, fmt.Sprintf("%s: %.1f %% killed, want %.0f %%", pkg, percent, bar))
		}
	}
	if len(bad) > 0 {
		return fmt.Errorf("%d faults\n%s", len(bad), strings.Join(bad, "\n"))
	}
	return nil
}

// A row is what came of a full run of a package, and what it holds for.
type row struct {
	pkg                      string
	killed, lived, unreached int
	date, digest             string
}

// digest returns a digest of a package and its tests.
func digest(pkg string) (string, error) {
	files, err := filepath.Glob(filepath.Join(pkg, "*.go"))
	if err != nil {
		return "", err
	}
	h := sha256.New()
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			return "", err
		}
		fmt.Fprintf(h, "%s %d\n%s", filepath.Base(f), len(text), text)
	}
	return fmt.Sprintf("%x", h.Sum(nil))[:16], nil
}

func rows() (map[string]row, error) {
	all := map[string]row{}
	text, err := os.ReadFile(record)
	if os.IsNotExist(err) {
		return all, nil
	}
	for l := range strings.Lines(string(text)) {
		if strings.HasPrefix(l, "#") {
			continue
		}
		var r row
		if _, err := fmt.Sscanf(l, "%s\t%d\t%d\t%d\t%s\t%s", &r.pkg, &r.killed, &r.lived, &r.unreached, &r.date, &r.digest); err != nil {
			return nil, fmt.Errorf("%s: %q: %w", record, l, err)
		}
		all[r.pkg] = r
	}
	return all, err
}

// keep writes the row of a package into the record.
func keep(pkg string, killed, lived, unreached int) error {
	all, err := rows()
	if err != nil {
		return err
	}
	sum, err := digest(pkg)
	if err != nil {
		return err
	}
	all[pkg] = row{pkg, killed, lived, unreached, time.Now().UTC().Format(time.DateOnly), sum}
	out := "# package\tkilled\tlived\tnot reached\tdate\tdigest of the package and its tests; written by internal/proof/mutants\n"
	for _, pkg := range slices.Sorted(maps.Keys(all)) {
		r := all[pkg]
		out += fmt.Sprintf("%s\t%d\t%d\t%d\t%s\t%s\n", r.pkg, r.killed, r.lived, r.unreached, r.date, r.digest)
	}
	return os.WriteFile(record, []byte(out), 0o644)
}

// tell prints the record.
func tell() error {
	all, err := rows()
	if err != nil {
		return err
	}
	pkgs, err := packages()
	if err != nil {
		return err
	}
	for _, pkg := range pkgs {
		r, ok := all[pkg]
		if !ok {
			return fmt.Errorf("%s has nothing of %s", record, pkg)
		}
		sum, err := digest(pkg)
		if err != nil {
			return err
		}
		state := "as it is now"
		if sum != r.digest {
			state = "changed since"
		}
		fmt.Printf("%s: %d killed, %d lived, each with its reason, of %d: %.1f %%, on %s, %s\n",
			pkg, r.killed, r.lived, r.killed+r.lived, 100*float64(r.killed)/float64(r.killed+r.lived), r.date, state)
	}
	return nil
}

// commits returns how many commits there are.
func commits() (int, error) {
	out, err := exec.Command("git", "rev-list", "--count", "HEAD").Output()
	if err != nil {
		return 0, err
	}
	return strconv.Atoi(strings.TrimSpace(string(out)))
}

// packages returns the packages that ship or that those import, and that have code.
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

// find returns the mutants of a package, or of some of its files, as gremlins finds them.
func find(pkg string, files []string, dir string) ([]*mutant, error) {
	// The folders in that of the package are other packages.
	report := filepath.Join(dir, "report.json")
	c := exec.Command("gremlins", "unleash", "./"+pkg, "--dry-run", "-o", report, "-E", "/")
	if out, err := c.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("gremlins: %w\n%s", err, out)
	}
	text, err := os.ReadFile(report)
	if err != nil {
		return nil, err
	}
	var r struct {
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
	if err := json.Unmarshal(text, &r); err != nil {
		return nil, err
	}
	var all []*mutant
	for _, f := range r.Files {
		if base := filepath.Base(f.Name); files == nil || slices.Contains(files, base) {
			for _, mu := range f.Mutations {
				m := &mutant{kind: mu.Kind, file: base, line: mu.Line, column: mu.Column}
				if mu.Status == "RUNNABLE" {
					m.fate = lived // until it is killed
				}
				all = append(all, m)
			}
		}
	}
	if len(all) == 0 {
		return nil, fmt.Errorf("gremlins finds nothing to break")
	}
	slices.SortFunc(all, func(a, b *mutant) int {
		if c := strings.Compare(a.file, b.file); c != 0 {
			return c
		}
		if c := a.line - b.line; c != 0 {
			return c
		}
		if c := a.column - b.column; c != 0 {
			return c
		}
		return strings.Compare(a.kind, b.kind)
	})
	for i, m := range all {
		m.id = i + 1
	}
	return all, nil
}

// try runs the mutants of a package whose turn it is.
func try(pkg string, files []string, workers int, turn func(*mutant) bool) ([]*mutant, error) {
	dir, err := os.MkdirTemp("", "mutants")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	all, err := find(pkg, files, dir)
	if err != nil {
		return nil, err
	}
	src, err := load(pkg)
	if err != nil {
		return nil, err
	}
	b, err := build(pkg, dir, src, all)
	if err != nil {
		return nil, err
	}
	if err := b.measure(); err != nil {
		return nil, err
	}
	queue := make(chan *mutant)
	var wg sync.WaitGroup
	var mu sync.Mutex
	var first error
	for w := range workers {
		wg.Go(func() {
			for m := range queue {
				got, err := b.one(m, filepath.Join(dir, "worker"+strconv.Itoa(w)))
				if err != nil {
					mu.Lock()
					if first == nil {
						first = err
					}
					mu.Unlock()
				}
				m.fate = got
			}
		})
	}
	for _, m := range all {
		if m.passed = !turn(m); m.fate == lived && !m.passed {
			queue <- m
		}
	}
	close(queue)
	wg.Wait()
	return all, first
}

// A battery is the tests of a package, built with all switches, and how to run them.
type battery struct {
	pkg, program string
	src          *source
	flags        []string // of packages that the tests use
	parts        []part   // the quick tests together, then the others one by one, the shorter first
}

// A part is some of the tests, and how long they take.
type part struct {
	pattern string
	time    time.Duration
}

// moment is how long a test may take to be among those that run first.
const moment = 40 * time.Millisecond

// one runs the tests with a mutant.
func (b *battery) one(m *mutant, dir string) (fate, error) {
	program := b.program
	if m.apart {
		var err error
		if program, err = b.src.alone(b.pkg, dir, m); err != nil {
			return lived, err
		}
		if program == "" {
			return unviable, nil
		}
	}
	for _, p := range b.parts {
		limit := 5*time.Second + 10*p.time
		out, err := b.test(program, m.id, limit, "-test.failfast", "-test.run", p.pattern)
		switch {
		case err == nil:
		case out == nil || bytes.Contains(out, []byte("panic: test timed out")):
			return timeout, nil
		default:
			return killed, nil
		}
	}
	return lived, nil
}

// test runs the program with a switch thrown; 0 is no switch. It returns no output if the time
// is out.
func (b *battery) test(program string, id int, limit time.Duration, args ...string) ([]byte, error) {
	ctx, cancel := context.WithTimeout(context.Background(), limit+2*time.Second)
	defer cancel()
	args = append(args, "-test.timeout", limit.String())
	// What breaks may also ask for all memory there is.
	c := exec.CommandContext(ctx, "bash", append([]string{"-c", `ulimit -v 8000000; exec "$0" "$@"`, program}, append(args, b.flags...)...)...)
	c.Dir = b.pkg
	c.Env = append(os.Environ(), variable+"="+strconv.Itoa(id), "GOTRACEBACK=none")
	out, err := c.CombinedOutput()
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	return append(out, ' '), err
}

var passed = regexp.MustCompile(`(?m)^--- PASS: (\w+) \((\d+\.\d+)s\)$`)

// measure runs the tests with no switch thrown, and parts them into quick and slow ones.
func (b *battery) measure() error {
	tests, err := filepath.Glob(filepath.Join(b.pkg, "*_test.go"))
	if err != nil {
		return err
	}
	for _, t := range tests {
		text, err := os.ReadFile(t)
		if err != nil {
			return err
		}
		if b.flags == nil && bytes.Contains(text, []byte(`"pgregory.net/rapid"`)) {
			b.flags = []string{"-rapid.seed=1", "-rapid.nofailfile", "-rapid.shrinktime=0s"}
		}
	}
	out, err := b.test(b.program, 0, 5*time.Minute, "-test.v")
	if err != nil {
		return fmt.Errorf("the tests fail with no switch thrown: %w\n%s", err, out)
	}
	var quick []string
	for _, m := range passed.FindAllSubmatch(out, -1) {
		t, err := time.ParseDuration(string(m[2]) + "s")
		if err != nil {
			return err
		}
		if t <= moment {
			quick = append(quick, string(m[1]))
		} else {
			b.parts = append(b.parts, part{"^" + string(m[1]) + "$", t})
		}
	}
	if quick == nil && b.parts == nil {
		return fmt.Errorf("no test passes\n%s", out)
	}
	slices.SortFunc(b.parts, func(x, y part) int { return cmp.Compare(x.time, y.time) })
	b.parts = slices.Insert(b.parts, 0, part{pattern: "^(" + strings.Join(quick, "|") + ")$"})
	// What tests say they took leaves out what they ran beside themselves.
	for i := range b.parts {
		began := time.Now()
		if out, err := b.test(b.program, 0, 5*time.Minute, "-test.run", b.parts[i].pattern); err != nil {
			return fmt.Errorf("%s fails with no switch thrown: %w\n%s", b.parts[i].pattern, err, out)
		}
		b.parts[i].time = time.Since(began)
	}
	return nil
}

// key names a mutant by what stands in its line, so that it keeps its name when lines move.
func key(pkg string, m *mutant) (string, error) {
	file := filepath.Join(pkg, m.file)
	text, err := os.ReadFile(file)
	if err != nil {
		return "", err
	}
	lines := strings.Split(string(text), "\n")
	if m.line < 1 || m.line > len(lines) {
		return "", fmt.Errorf("%s has no line %d", file, m.line)
	}
	l := lines[m.line-1]
	s := strings.TrimSpace(l)
	return fmt.Sprintf("%s | %s %d | %s", file, m.kind, m.column-strings.Index(l, s), s), nil
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
