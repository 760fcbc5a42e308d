// Covered holds the tests of each package that ships to all of its statements. It reads
// a coverage profile and a list of exceptions, and fails if a statement that no test
// runs is not on the list, or if the list names one that is run or is not there.
//
//	go test -coverprofile=FILE PACKAGES
//	go run ./internal/check/covered FILE .ci/uncovered
//
// An exception is a line of three parts: the file, the first line of the statements as it
// stands in the source, and why no test can run it:
//
//	units/parse.go | panic("unreachable") | the scanner has returned by then
package main

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// openYet begins the reason of statements for which a test is still to be written. Tests
// that draw at random may run one of them now and then.
const openYet = "not tested yet"

const module = "example.com/fircone/"

// A block is a run of statements without a branch.
type block struct {
	file       string
	line       int // of its first statement
	statements int
}

func main() {
	if len(os.Args) != 3 {
		fmt.Fprintln(os.Stderr, "usage: covered PROFILE EXCEPTIONS")
		os.Exit(2)
	}
	if err := run(os.Args[1], os.Args[2]); err != nil {
		fmt.Fprintln(os.Stderr, "covered:", err)
		os.Exit(1)
	}
}

func run(profile, exceptions string) error {
	all, missed, err := read(profile)
	if err != nil {
		return err
	}
	if all == 0 {
		return fmt.Errorf("%s covers no statement", profile)
	}
	listed, err := list(exceptions)
	if err != nil {
		return err
	}
	used := map[string]bool{}
	bad, excepted := 0, 0
	for _, b := range missed {
		text, err := line(b.file, b.line)
		if err != nil {
			return err
		}
		if key := b.file + " | " + text; listed[key] != "" {
			used[key] = true
			excepted += b.statements
			continue
		}
		bad++
		fmt.Printf("%s:%d: no test runs: %s\n", b.file, b.line, text)
	}
	for key, why := range listed {
		if !used[key] && strings.HasPrefix(why, openYet) {
			fmt.Printf("%s: run this time; it may come off the list of exceptions\n", key)
			continue
		}
		if !used[key] {
			bad++
			fmt.Printf("%s: on the list of exceptions, and not among what no test runs\n", key)
		}
	}
	fmt.Printf("%d statements, %d of them exceptions (%d listed)\n", all, excepted, len(listed))
	if bad > 0 {
		return fmt.Errorf("%d to mend, with a test or a line in %s", bad, exceptions)
	}
	return nil
}

var entry = regexp.MustCompile(`^(.+):(\d+)\.\d+,\d+\.\d+ (\d+) (\d+)$`)

// read returns the number of statements in a profile, and the blocks that were not run.
func read(profile string) (all int, missed []block, err error) {
	f, err := os.Open(profile)
	if err != nil {
		return 0, nil, err
	}
	defer f.Close()
	count := map[string]int{}
	blocks := map[string]block{}
	s := bufio.NewScanner(f)
	for s.Scan() {
		m := entry.FindStringSubmatch(s.Text())
		if m == nil {
			continue // the mode
		}
		key, _, _ := strings.Cut(s.Text(), " ")
		line, _ := strconv.Atoi(m[2])
		statements, _ := strconv.Atoi(m[3])
		runs, _ := strconv.Atoi(m[4])
		if _, ok := blocks[key]; !ok {
			all += statements
		}
		blocks[key] = block{strings.TrimPrefix(m[1], module), line, statements}
		count[key] += runs
	}
	for key, b := range blocks {
		if count[key] == 0 && b.statements > 0 {
			missed = append(missed, b)
		}
	}
	slices.SortFunc(missed, func(a, b block) int {
		if a.file != b.file {
			return strings.Compare(a.file, b.file)
		}
		return a.line - b.line
	})
	return all, missed, s.Err()
}

// line returns the first line of a block that says something: a block often begins behind a brace.
func line(file string, n int) (string, error) {
	text, err := os.ReadFile(filepath.FromSlash(file))
	if err != nil {
		return "", err
	}
	lines := strings.Split(string(text), "\n")
	for i := n - 1; i < len(lines); i++ {
		s := strings.TrimSpace(lines[i])
		if i == n-1 && strings.HasSuffix(s, "{") {
			continue
		}
		if s != "" {
			return s, nil
		}
	}
	return "", fmt.Errorf("%s has no line %d", file, n)
}

// list reads the exceptions: their reasons by file and text.
func list(name string) (map[string]string, error) {
	text, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	listed := map[string]string{}
	for l := range strings.Lines(string(text)) {
		l = strings.TrimSpace(l)
		if l == "" || strings.HasPrefix(l, "#") {
			continue
		}
		file, rest, ok := strings.Cut(l, " | ")
		i := strings.LastIndex(rest, " | ")
		if !ok || i < 0 {
			return nil, fmt.Errorf("%s: want FILE | TEXT | REASON: %s", name, l)
		}
		listed[file+" | "+rest[:i]] = rest[i+3:]
	}
	return listed, nil
}
