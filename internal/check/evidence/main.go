// Evidence measures what this repository promises and prints the table of it, in
// Markdown: each promise with the figure, the bar and the command that gave it. Nothing in
// it is typed; .ci/evidence runs this.
//
//	.ci/evidence            all of it
//	.ci/evidence -quick     without the other architectures and the speed
package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"runtime"
	"strings"
	"time"
)

// A row is one promise. The figure is what the first group of find matches in the command's output, or all
// that it matches if it has no group; several matches stand one under the other.
type row struct {
	promise, bar, command, find string
	slow                        bool
}

// emulated is a command that runs the golden results on another architecture.
func emulated(arch, qemu string) string {
	return inCheck + "GOARCH=" + arch + " CGO_ENABLED=0 go test -count=1 -v -exec qemu-" + qemu + "-static ./golden"
}

const (
	inCheck = "cd internal/check && "
	golden  = `(\d+ lines)`
)

var rows = []row{
	{"the numbers are those recorded", "equal", inCheck + "go test -count=1 -v -run Golden ./golden", golden, false},
	{"the same bits: amd64 with fused multiply-add", "equal", inCheck + "GOAMD64=v3 go test -count=1 -v -run Golden ./golden", golden, false},
	{"the same bits: arm64", "equal", emulated("arm64", "aarch64"), golden, true},
	{"the same bits: arm", "equal", emulated("arm", "arm"), golden, true},
	{"the same bits: riscv64", "equal", emulated("riscv64", "riscv64"), golden, true},
	{"the same bits: s390x", "equal", emulated("s390x", "s390x"), golden, true},
	{
		"the same bits: wasm under node", "equal",
		inCheck + "GOOS=js GOARCH=wasm go test -v -exec $(go env GOROOT)/lib/wasm/go_js_wasm_exec ./golden", golden, true,
	},
	{"compilers fuse no product into a sum", "none on 4 architectures", inCheck + "go test -count=1 -v -run FuseNothing .", `--- (PASS: TestCompilersFuseNothing)`, false},
	{"recorded numbers worked out a second way", "all true", inCheck + "go test -count=1 -v -run Oracle ./golden", `(\d+ of \d+ lines worked out again)`, false},
	{"nothing breaks it: each field at its extremes", "no panic, no NaN, the field is named", inCheck + "go test -count=1 -v ./hostile", `(\d+ functions, \d+ calls.*)`, false},
	{"statements that the packages' own tests run", "all but those listed", ".ci/run coverage", `(\d+ statements, \d+ of them exceptions.*)`, false},
	{"mutants that the packages' own tests kill", "95 in 100", "cat .ci/mutants.tsv", `(?m)^(#? ?\w.*)$`, false},
	{"inputs that fuzzing drew, guided by coverage", "10,000,000 and 20,000 in each CI run", "awk -F'\\t' '{n += $3} END {print n, \"inputs to\", NR - 1, \"targets\"}' .ci/fuzzed.tsv", `(\d+ inputs.*)`, false},
	{"exported names", "800 in all, 660 without labor and job, 18 types in sizing", inCheck + "go test -count=1 -v -run ExportedNamesAreFew .", `(\d+ exported identifiers.*)`, false},
	{"a garland's length on a cone, against math/big", "1 nm", "go test -count=1 -v -run Spiral ./sizing", `worst: (.* nm)`, false},
	{"elementary functions, against math/big", "stated in internal/elem", "go test -count=1 -v ./internal/elem", `(worst of \d+: [\d.]+ ulp)`, false},
	{"as fast as it says, beside rivals in the same run", "in the line", "cd internal/bench && go run ./ratios -check", `(?m)^((?:ok|MISSED|MISSING) .*)$`, true},
	{"memory held by the largest orders", "64 MB", "go test -count=1 -v -run WorstOrders ./sizing/shopping", `worst_test.go:\d+: (.*? MB held)`, false},
	{"an importer of units downloads", "decimal only", inCheck + "go test -count=1 -v -run UnitsDownloadsLittle .", `--- (PASS: TestUnitsDownloadsLittle)`, false},
	{"what ships requires", "decimal, go-colorful; go-cmp and rapid for tests", "go mod edit -json", `"Path": "((?:github|pgregory)[^"]*)"`, false},
	{"size of the library in a browser", "told", ".ci/run wasmsize", `(\S+\.wasm: .*)`, true},
}

func main() {
	quick := flag.Bool("quick", false, "leave out what takes minutes")
	flag.Parse()
	version := strings.TrimPrefix(runtime.Version(), "go")
	fmt.Printf("Measured on %s with Go %s, %s/%s, %d processors, by `.ci/evidence`.\n\n", time.Now().UTC().Format("2006-01-02 15:04 UTC"), version, runtime.GOOS, runtime.GOARCH, runtime.NumCPU())
	fmt.Println("| promise | measured | bar | command |")
	fmt.Println("|---|---|---|---|")
	failed := 0
	for _, r := range rows {
		if r.slow && *quick {
			continue
		}
		figure, ok := r.measure()
		if !ok {
			failed++
		}
		fmt.Printf("| %s | %s | %s | `%s` |\n", r.promise, figure, r.bar, r.command)
	}
	if failed > 0 {
		fmt.Fprintf(os.Stderr, "evidence: %d of %d rows failed\n", failed, len(rows))
		os.Exit(1)
	}
}

// measure runs the command and returns the figure, and whether the command passed.
func (r row) measure() (string, bool) {
	out, err := exec.Command("bash", "-c", r.command).CombinedOutput()
	var found []string
	seen := map[string]bool{}
	for _, m := range regexp.MustCompile(r.find).FindAllStringSubmatch(string(out), -1) {
		s := strings.ReplaceAll(strings.Join(strings.Fields(m[len(m)-1]), " "), "|", `\|`)
		if !seen[s] {
			seen[s] = true
			found = append(found, s)
		}
	}
	switch {
	case err != nil:
		return "**failed** " + strings.Join(found, "<br>"), false
	case found == nil:
		return "**no figure**", false
	}
	return strings.Join(found, "<br>"), true
}
