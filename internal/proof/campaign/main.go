// Campaign runs the module's fuzz targets one after another and keeps count.
//
//	go run ./internal/proof/campaign -time 10m           10 minutes for each target, and a line in the ledger for each
//	go run ./internal/proof/campaign -time 10m Length    those whose name has Length in it
//	go run ./internal/proof/campaign -execs 20000        what .ci/run does: a count for each, and no ledger
//	go run ./internal/proof/campaign -blind 10000000     so many inputs for each target of blind.go, without Go's fuzzer
//	go run ./internal/proof/campaign -total              what the ledger adds up to
//
// The ledger, .ci/fuzz.tsv, says of each run when it was, what it ran and how many inputs it tried. A run
// that finds an input stops there and fails; the input stays in the target's testdata/fuzz until it
// is a row of a table of the tests.
package main

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"time"
)

const ledger = ".ci/fuzz.tsv"

type target struct{ pkg, name string }

func main() {
	long := flag.Duration("time", 0, "how long to run each target")
	execs := flag.Int64("execs", 0, "how many inputs to give each target, and keep no ledger")
	workers := flag.Int("workers", 1, "how many inputs to try at a time")
	fast := flag.Int64("blind", 0, "how many inputs to give each blind target")
	seed := flag.Uint64("seed", 1, "the seed of the blind inputs")
	total := flag.Bool("total", false, "print the sum of the ledger")
	flag.Parse()
	var err error
	switch {
	case *total:
		err = sum()
	case *fast > 0:
		err = blind(*fast, *seed, flag.Arg(0))
	case (*long > 0) == (*execs > 0):
		err = fmt.Errorf("say -time, -execs, -blind or -total")
	default:
		err = run(*long, *execs, *workers, flag.Arg(0))
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "campaign:", err)
		os.Exit(1)
	}
}

func run(long time.Duration, execs int64, workers int, match string) error {
	all, err := targets(match)
	if err != nil {
		return err
	}
	fuzztime := fmt.Sprintf("%dx", execs)
	if long > 0 {
		fuzztime = long.String()
	}
	var sum int64
	for _, t := range all {
		start := time.Now()
		n, err := fuzz(t, fuzztime, workers)
		if err != nil {
			return err
		}
		sum += n
		took := time.Since(start).Round(time.Second)
		fmt.Printf("%-20s %-28s %12d inputs in %v\n", t.pkg, t.name, n, took)
		if long > 0 {
			if err := enter(t.pkg, t.name, n, took); err != nil {
				return err
			}
		}
	}
	fmt.Printf("%d targets, %d inputs\n", len(all), sum)
	return nil
}

// enter writes a line of the ledger.
func enter(pkg, name string, n int64, took time.Duration) error {
	f, err := os.OpenFile(ledger, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(f, "%s\t%s\t%s\t%d\t%v\n", time.Now().UTC().Format("2006-01-02 15:04"), pkg, name, n, took)
	if cerr := f.Close(); err == nil {
		err = cerr
	}
	return err
}

// targets finds the fuzz targets whose names contain match.
func targets(match string) ([]target, error) {
	out, err := exec.Command("go", "list", "-f", "{{.ImportPath}}{{range .TestGoFiles}} {{$.Dir}}/{{.}}{{end}}{{range .XTestGoFiles}} {{$.Dir}}/{{.}}{{end}}", "./...").Output()
	if err != nil {
		return nil, err
	}
	decl := regexp.MustCompile(`(?m)^func (Fuzz\w+)\(\w+ \*testing\.F\)`)
	var all []target
	for line := range strings.Lines(string(out)) {
		words := strings.Fields(line)
		pkg := "./" + strings.TrimPrefix(words[0], "example.com/fircone/")
		for _, file := range words[1:] {
			text, err := os.ReadFile(file)
			if err != nil {
				return nil, err
			}
			for _, m := range decl.FindAllStringSubmatch(string(text), -1) {
				if strings.Contains(m[1], match) {
					all = append(all, target{pkg, m[1]})
				}
			}
		}
	}
	if len(all) == 0 {
		return nil, fmt.Errorf("no fuzz target has %q in its name", match)
	}
	return all, nil
}

var count = regexp.MustCompile(`execs: (\d+)`)

// fuzz runs one target and returns how many inputs it tried.
func fuzz(t target, fuzztime string, workers int) (int64, error) {
	c := exec.Command("go", "test", "-run", "^$", "-fuzz", "^"+t.name+"$", "-fuzztime", fuzztime, "-parallel", strconv.Itoa(workers), t.pkg)
	var out bytes.Buffer
	c.Stdout, c.Stderr = &out, &out
	err := c.Run()
	var n int64
	for _, m := range count.FindAllStringSubmatch(out.String(), -1) {
		if v, e := strconv.ParseInt(m[1], 10, 64); e == nil {
			n = max(n, v)
		}
	}
	// Go's fuzzer sometimes reports its own deadline as a failure (go.dev/issue/56238); a real one names an input.
	if err != nil && !strings.Contains(out.String(), "Failing input written") && strings.Contains(out.String(), "context deadline exceeded") {
		err = nil
	}
	if err != nil {
		return n, fmt.Errorf("%s %s: %w\n%s", t.pkg, t.name, err, out.Bytes())
	}
	if n == 0 {
		return 0, fmt.Errorf("%s %s tried no input\n%s", t.pkg, t.name, out.Bytes())
	}
	return n, nil
}

// sum prints what the ledger adds up to.
func sum() error {
	text, err := os.ReadFile(ledger)
	if err != nil {
		return err
	}
	per := map[string]int64{}
	var order []string
	var all int64
	for line := range strings.Lines(string(text)) {
		f := strings.Split(strings.TrimSpace(line), "\t")
		if len(f) < 5 || strings.HasPrefix(line, "#") {
			continue
		}
		n, err := strconv.ParseInt(f[3], 10, 64)
		if err != nil {
			return fmt.Errorf("%s: %w", ledger, err)
		}
		key := f[1] + " " + f[2]
		if per[key] == 0 {
			order = append(order, key)
		}
		per[key] += n
		all += n
	}
	for _, key := range order {
		fmt.Printf("%-50s %12d\n", key, per[key])
	}
	fmt.Printf("%-50s %12d\n", "in all", all)
	return nil
}
