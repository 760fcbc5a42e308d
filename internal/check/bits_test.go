package check

import (
	"bufio"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// The compilers fuse nothing in what ships: their own listings show no fused
// multiply-add but at a call of math.FMA, and where one factor is a constant power of two,
// as in x/2 + y, whose product is exact, so that rounding it once or twice is the same. This also
// finds a product that reaches a sum through a variable or an inlined call.
func TestCompilersFuseNothing(t *testing.T) {
	if testing.Short() {
		t.Skip("compiles for four architectures")
	}
	m := load(t)
	args := []string{"build", "-gcflags=" + "-S"}
	for _, p := range m.Checked() {
		args = append(args, p.ImportPath)
	}
	for _, arch := range []struct {
		env, fused string
		factors    [2]int // which operands are multiplied; another is added
	}{
		{"GOARCH=amd64 GOAMD64=v3", `VFN?M(ADD|SUB)231SD`, [2]int{0, 1}},
		{"GOARCH=arm64", `FN?M(ADD|SUB)D`, [2]int{0, 2}},
		{"GOARCH=riscv64", `FN?M(ADD|SUB)D`, [2]int{0, 1}},
		{"GOARCH=s390x", `W?FM(ADD|SUB|ADB|SDB)`, [2]int{0, 1}},
	} {
		t.Run(arch.env, func(t *testing.T) {
			c := exec.Command("go", args...)
			c.Dir = m.Root
			c.Env = append(os.Environ(), append(strings.Fields(arch.env), "GOOS=linux", "CGO_ENABLED=0")...)
			out, err := c.CombinedOutput()
			if err != nil {
				t.Fatalf("%v: %v\n%s", c.Args, err, out)
			}
			fused := regexp.MustCompile("^" + arch.fused + "$")
			instruction := regexp.MustCompile(`\(([^()]+\.go):(\d+)\)\t(\w+)\t(.*)$`)
			constants := map[string]float64{} // what is known to be in a register
			seen := map[string]bool{}
			functions := 0
			for line := range strings.Lines(string(out)) {
				if strings.Contains(line, " STEXT ") {
					functions++
					clear(constants)
				}
				f := instruction.FindStringSubmatch(strings.TrimRight(line, "\n"))
				if f == nil {
					continue
				}
				operands := strings.Split(f[4], ", ")
				target := operands[len(operands)-1]
				if !fused.MatchString(f[3]) {
					delete(constants, target)
					if v, ok := fixed(operands[0]); ok && len(operands) == 2 {
						constants[target] = v
					}
					continue
				}
				exact := false
				for _, i := range arch.factors {
					v, ok := fixed(operands[i])
					if !ok {
						v, ok = constants[operands[i]]
					}
					if frac, _ := math.Frexp(math.Abs(v)); ok && frac == 0.5 {
						exact = true
					}
				}
				delete(constants, target)
				at := f[1] + ":" + f[2]
				if exact || seen[at] {
					continue
				}
				seen[at] = true
				text, err := sourceLine(m.Root, f[1], f[2])
				if err != nil {
					t.Error(err)
				}
				if !strings.Contains(text, "math.FMA(") {
					t.Errorf("%s: fused into %s: %s", at, f[3], strings.TrimSpace(text))
				}
			}
			if functions < 100 {
				t.Fatalf("the listing has %d functions", functions)
			}
		})
	}
}

// fixed reads an operand that is a floating-point constant, in either of the ways that listings write one.
func fixed(operand string) (float64, bool) {
	if hex, ok := strings.CutPrefix(operand, "$f64."); ok {
		bits, err := strconv.ParseUint(strings.TrimSuffix(hex, "(SB)"), 16, 64)
		return math.Float64frombits(bits), err == nil
	}
	if dec, ok := strings.CutPrefix(operand, "$("); ok {
		v, err := strconv.ParseFloat(strings.TrimSuffix(dec, ")"), 64)
		return v, err == nil
	}
	return 0, false
}

func sourceLine(root, file, line string) (string, error) {
	if !filepath.IsAbs(file) {
		file = filepath.Join(root, file)
	}
	want, err := strconv.Atoi(line)
	if err != nil {
		return "", err
	}
	f, err := os.Open(file)
	if err != nil {
		return "", err
	}
	defer f.Close()
	s := bufio.NewScanner(f)
	for n := 1; s.Scan(); n++ {
		if n == want {
			return s.Text(), nil
		}
	}
	return "", fmt.Errorf("%s has no line %d", file, want)
}
