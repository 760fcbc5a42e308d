// Ratios runs the benchmarks in which the library and a rival do the same work in one
// run, and prints how many times as fast the one is as the other, beside the bar that it
// must pass; then how time grows with size, with the exponent fitted to it.
//
//	go run ./ratios                       print
//	go run ./ratios -check                and fail if a bar is missed
//	go run ./ratios -check -slack 0.6     and fail if a ratio is under 0.6 of its bar
//
// Only ratios are judged: a slow machine is slow for both. All benchmarks of a package run in turn,
// round after round, and the quickest of each counts, so that a moment of other work on the machine
// slows no one side for good. Where others work on it all the time, as may be in CI, a bar is missed that an
// idle machine keeps; the slack is for that.
package main

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// A ratio sets one benchmark's time over another's.
type ratio struct {
	what        string
	over, under string  // the names of the benchmarks, as regular expressions
	bar         float64 // the least that the ratio may be; 0 for one that is only told
}

// A growth is a benchmark whose name ends in a size, with the exponent that its time may not pass.
type growth struct {
	what string
	name string // a regular expression, the size in its only group
	unit string // the metric that is time for all of the size: "ns/op", or one for each of it
	bar  float64
}

// A suite is a package's benchmarks: where they are, which to run, and what to make of them.
type suite struct {
	dir, pkg, bench string
	ratios          []ratio
	growths         []growth
	dear            bool // too slow to run more than once
}

var suites = []suite{
	{
		dir: "../..", pkg: "./units", bench: "^BenchmarkParse$",
		ratios: []ratio{
			{"time.ParseDuration(72h30m15s) over ParseLength(7 ft 6 in), 9 bytes each", `Parse/duration=72h30m15s`, `Parse/length=7ft6in`, 1},
		},
	},
	{
		dir: ".", pkg: "./sizing", bench: "^Benchmark(SpiralLength|WholeTree|Trees)$",
		ratios: []ratio{
			// The closed form is asked of a tree, which is checked and made a cone in the same call.
			{"gonum's quadrature of the curve in space over the closed form", `SpiralLength/(?:garland|lights).*quadrature_in_space`, `SpiralLength/(?:garland|lights).*closed_form`, 34},
			{"the same where the tip is bare, and the curve is smoother", `SpiralLength/bare.*quadrature_in_space`, `SpiralLength/bare.*closed_form`, 30},
			{"gonum's quadrature on the cone unrolled by hand over the closed form", `SpiralLength/.*quadrature_with`, `SpiralLength/.*closed_form`, 18},
			{"a closed form, on a cone with a bare tip, over a whole tree with one (0.02: 50 of them)", `SpiralLength/bare_tip,_garland_10_in/closed_form`, `WholeTree`, 0.02},
			{"trees sized on one processor over the same on two", `Trees/trees=100000/workers=1`, `Trees/trees=100000/workers=2`, 1.7},
		},
	},
	{
		dir: "../..", pkg: "./palette", bench: "^Benchmark(Sort|Difference)",
		ratios: []ratio{
			{"the color library's distance, called for each pair, over Sort of 10,000 pieces", `SortLibrary`, `Sort`, 3},
			{"the color library's distance over Difference", `DifferenceLibrary`, `Difference`, 0},
		},
	},
	{
		dir: "../..", pkg: "./sizing/shopping", bench: "^Benchmark(Cheapest|Cuts)$",
		growths: []growth{
			{"cheapest packs, by pieces needed", `Cheapest/need=(\d+)/limited=false`, "ns/op", 1.2},
			{"cheapest packs with limited shelves, by pieces needed", `Cheapest/need=(\d+)/limited=true`, "ns/op", 1.2},
		},
	},
	{
		dir: ".", pkg: "./growth", bench: "^BenchmarkGrowth$",
		growths: []growth{
			{"a slice of trees sized, by trees", `Growth/trees=(\d+)`, "ns/op", 1.1},
			{"a box of pieces sorted into a palette, by pieces", `Growth/sort=(\d+)`, "ns/op", 1.1},
			{"the best palette of a box, by pieces", `Growth/best=(\d+)`, "ns/op", 4},
			{"a count shared out, by shares", `Growth/apportion=(\d+)`, "ns/op", 1.5},
			{"the path of a garland, by points", `Growth/path=(\d+)`, "ns/op", 1.1},
		},
	},
	{
		dir: ".", pkg: "./growth", bench: "^BenchmarkWindows$",
		ratios: []ratio{
			{"10,000 stores' windows planned on one processor over the same on two", `Windows/windows=10000/workers=1`, `Windows/windows=10000/workers=2`, 0},
			{"the same with 90 MB to spare, collected in the time", `Windows/roomy=10000/workers=1`, `Windows/roomy=10000/workers=2`, 1.9},
			{"of a thousand windows, the share of reading the colors", `Windows/part=colors`, `Windows/windows=1000/workers=1`, 0},
			{"of a thousand windows, the share of the basket", `Windows/part=shopping`, `Windows/windows=1000/workers=1`, 0},
			{"of a thousand windows, the share of the rooms, cautions and reasons", `Windows/part=rooms`, `Windows/windows=1000/workers=1`, 0},
		},
		growths: []growth{
			{"stores' windows planned, a job each, by windows", `Windows/windows=(\d+)/workers=1`, "ns/op", 1.05},
		},
	},
}

var (
	benchtime = "30ms"
	rounds    = 5
	slack     = 1.0
)

func main() {
	check := flag.Bool("check", false, "fail if a bar is missed")
	flag.StringVar(&benchtime, "benchtime", benchtime, "how long to run each benchmark in each round")
	flag.IntVar(&rounds, "rounds", rounds, "how many rounds")
	flag.Float64Var(&slack, "slack", slack, "the part of its bar that a ratio may not be under, 0 to 1")
	flag.Parse()
	missed := 0
	for _, s := range suites {
		times, err := run(s, benchtime)
		if err != nil {
			fmt.Fprintln(os.Stderr, "ratios:", err)
			os.Exit(1)
		}
		for _, r := range s.ratios {
			missed += r.judge(times)
		}
		for _, g := range s.growths {
			missed += g.judge(times)
		}
	}
	for _, m := range swags() {
		missed += m
	}
	if missed > 0 {
		fmt.Printf("%d bars missed\n", missed)
		if *check {
			os.Exit(1)
		}
	}
}

// A result is one line of a benchmark: its metrics by unit.
type result map[string]float64

var suffix = regexp.MustCompile(`-\d+$`)

// run returns the results by name, the quickest of all rounds for each.
func run(s suite, benchtime string) (map[string]result, error) {
	best := map[string]result{}
	for round := range rounds {
		if round > 0 && s.dear {
			break
		}
		if err := s.round(benchtime, best); err != nil {
			return nil, err
		}
	}
	return best, nil
}

func (s suite) round(benchtime string, best map[string]result) error {
	c := exec.Command("go", "test", "-run", "^$", "-bench", s.bench, "-benchmem", "-benchtime", benchtime, s.pkg)
	c.Dir = s.dir
	var bad bytes.Buffer
	c.Stderr = &bad
	out, err := c.Output()
	if err != nil {
		return fmt.Errorf("%s: %w\n%s%s", s.pkg, err, out, bad.Bytes())
	}
	for line := range strings.Lines(string(out)) {
		f := strings.Fields(line)
		if len(f) < 4 || !strings.HasPrefix(f[0], "Benchmark") {
			continue
		}
		r := result{}
		for i := 2; i+1 < len(f); i += 2 {
			v, err := strconv.ParseFloat(f[i], 64)
			if err != nil {
				return fmt.Errorf("%s: %q", s.pkg, line)
			}
			r[f[i+1]] = v
		}
		name := suffix.ReplaceAllString(strings.TrimPrefix(f[0], "Benchmark"), "")
		if old := best[name]; old == nil || r["ns/op"] < old["ns/op"] {
			best[name] = r
		}
	}
	if len(best) == 0 {
		return fmt.Errorf("%s: no benchmark matches %s\n%s", s.pkg, s.bench, out)
	}
	return nil
}

// judge prints the ratio, the least of them if the names fit several pairs, and returns 1 if the bar is missed.
func (r ratio) judge(times map[string]result) int {
	over, under := fits(times, r.over), fits(times, r.under)
	least, at := math.Inf(1), ""
	for _, o := range over {
		for _, u := range under {
			// Cases of one benchmark are set against each other only within a case.
			if a, b := caseOf(o), caseOf(u); a != b && len(under) > 1 {
				continue
			}
			if v := times[o]["ns/op"] / times[u]["ns/op"]; v < least {
				least, at = v, fmt.Sprintf("%.0f ns over %.0f ns, %s", times[o]["ns/op"], times[u]["ns/op"], u)
			}
		}
	}
	if math.IsInf(least, 1) {
		fmt.Printf("MISSING  %-70s no %s or no %s\n", r.what, r.over, r.under)
		return 1
	}
	return tell(least >= slack*r.bar, fmt.Sprintf("%-72s %8.3g (bar %g; %s; %g allocs)", r.what, least, r.bar, at, times[under[0]]["allocs/op"]))
}

// judge prints the times by size and the exponent, and returns 1 if it passes the bar.
func (g growth) judge(times map[string]result) int {
	re := regexp.MustCompile("^" + g.name + "$")
	type point struct{ n, t float64 }
	var points []point
	for name, r := range times {
		if m := re.FindStringSubmatch(name); m != nil {
			n, err := strconv.ParseFloat(m[1], 64)
			if err == nil && r[g.unit] > 0 {
				points = append(points, point{n, r[g.unit]})
			}
		}
	}
	if len(points) < 2 {
		fmt.Printf("MISSING  %-70s no sizes of %s\n", g.what, g.name)
		return 1
	}
	slices.SortFunc(points, func(a, b point) int { return int(math.Copysign(1, a.n-b.n)) })
	// The slope of the logarithms by least squares.
	var sx, sy, sxx, sxy float64
	var curve []string
	for _, p := range points {
		x, y := math.Log(p.n), math.Log(p.t)
		sx, sy, sxx, sxy = sx+x, sy+y, sxx+x*x, sxy+x*y
		curve = append(curve, fmt.Sprintf("%g: %s", p.n, nanoseconds(p.t)))
	}
	n := float64(len(points))
	slope := (n*sxy - sx*sy) / (n*sxx - sx*sx)
	return tell(slope <= g.bar+(1-slack)/2, fmt.Sprintf("%-72s n^%.2f (bar %g; %s)", g.what, slope, g.bar, strings.Join(curve, ", ")))
}

// swags judges the benchmark that reports ratios of its own.
func swags() []int {
	times, err := run(suite{dir: ".", pkg: "./mantel", bench: "^BenchmarkSag$"}, "20ms")
	if err != nil {
		fmt.Fprintln(os.Stderr, "ratios:", err)
		return []int{1}
	}
	var missed []int
	for _, s := range []struct {
		rival string
		flat  bool // the flattest swag, whose textbook equation is quick, and has lost half of its digits; or the others
		bar   float64
	}{{"bisection/library", true, 2.6}, {"bisection/library", false, 4}, {"brent/library", false, 0}} {
		least, at := math.Inf(1), ""
		for name, r := range times {
			if strings.HasSuffix(name, "/flat") == s.flat && r[s.rival] > 0 && r[s.rival] < least {
				least, at = r[s.rival], name
			}
		}
		missed = append(missed, tell(least >= slack*s.bar, fmt.Sprintf("%-72s %8.2f (bar %g; %s)", "sag of a swag: "+s.rival, least, s.bar, at)))
	}
	return missed
}

func tell(ok bool, line string) int {
	if ok {
		fmt.Println("ok      ", line)
		return 0
	}
	fmt.Println("MISSED  ", line)
	return 1
}

func nanoseconds(t float64) string {
	switch {
	case t >= 1e9:
		return fmt.Sprintf("%.2f s", t/1e9)
	case t >= 1e6:
		return fmt.Sprintf("%.2f ms", t/1e6)
	case t >= 1e3:
		return fmt.Sprintf("%.1f µs", t/1e3)
	}
	return fmt.Sprintf("%.0f ns", t)
}

// caseOf returns the case in the name of a benchmark: what stands between its name and the way of doing it.
func caseOf(name string) string {
	f := strings.Split(name, "/")
	if len(f) < 3 {
		return ""
	}
	return strings.Join(f[1:len(f)-1], "/")
}

// fits returns the names that a regular expression fits whole.
func fits(times map[string]result, re string) []string {
	whole := regexp.MustCompile("^(" + re + `[^/]*|` + re + ")$")
	exact := regexp.MustCompile("^(" + re + ")$")
	var loose, tight []string
	for name := range times {
		if exact.MatchString(name) {
			tight = append(tight, name)
		} else if whole.MatchString(name) {
			loose = append(loose, name)
		}
	}
	slices.Sort(tight)
	slices.Sort(loose)
	if tight != nil {
		return tight
	}
	return loose
}
