package check

import (
	"bufio"
	"fmt"
	"go/ast"
	constvalue "go/constant"
	"go/token"
	"go/types"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// exact lists the functions of package math that give the same bits on every
// architecture: those that IEEE 754 rounds correctly, and those that only look at or
// move bits.
var exact = []string{
	"Abs", "Ceil", "Copysign", "FMA", "Float64bits", "Float64frombits", "Floor", "Frexp", "Inf", "IsInf", "IsNaN",
	"Ldexp", "Max", "Min", "Mod", "NaN", "Nextafter", "Round", "RoundToEven", "Signbit", "Sqrt", "Trunc",
}

// Nothing that ships calls a function of package math whose last digits differ between
// architectures, uses complex numbers, or float32.
func TestFloatsAreExact(t *testing.T) {
	m := load(t)
	for _, p := range m.Checked() {
		for id, obj := range p.Info.Uses {
			f, ok := obj.(*types.Func)
			if ok && f.Pkg() != nil && f.Pkg().Path() == "math" && !slices.Contains(exact, f.Name()) {
				t.Errorf("%s: math.%s differs between architectures; see internal/elem", m.At(id.Pos()), f.Name())
			}
		}
		for e, tv := range p.Info.Types {
			b, ok := tv.Type.Underlying().(*types.Basic)
			if ok && b.Info()&types.IsComplex != 0 {
				t.Errorf("%s: complex arithmetic differs between architectures", m.At(e.Pos()))
			}
		}
	}
}

// Every floating-point product that is a term of a sum is converted, float64(x*y) + z:
// the language lets a compiler round x*y + z once, and some do.
func TestProductsAreRounded(t *testing.T) {
	m := load(t)
	for _, p := range m.Checked() {
		// scales reports whether e is a constant power of two, by which a product is exact.
		scales := func(e ast.Expr) bool {
			v := p.Info.Types[e].Value
			if v == nil {
				return false
			}
			f, _ := constvalue.Float64Val(constvalue.ToFloat(v))
			frac, _ := math.Frexp(math.Abs(f))
			return frac == 0.5
		}
		// product returns the multiplication that e is, before or after a change of sign.
		var product func(e ast.Expr) *ast.BinaryExpr
		product = func(e ast.Expr) *ast.BinaryExpr {
			switch e := ast.Unparen(e).(type) {
			case *ast.BinaryExpr:
				if e.Op == token.MUL && isFloat(p.Info.TypeOf(e)) && p.Info.Types[e].Value == nil && !scales(e.X) && !scales(e.Y) {
					return e
				}
			case *ast.UnaryExpr:
				if e.Op == token.SUB || e.Op == token.ADD {
					return product(e.X)
				}
			}
			return nil
		}
		check := func(terms ...ast.Expr) {
			for _, e := range terms {
				if mul := product(e); mul != nil {
					t.Errorf("%s: write float64(%s): a product in a sum may be fused", m.At(mul.Pos()), types.ExprString(mul))
				}
			}
		}
		for _, f := range p.Files {
			ast.Inspect(f, func(n ast.Node) bool {
				switch n := n.(type) {
				case *ast.BinaryExpr:
					if n.Op == token.ADD || n.Op == token.SUB {
						check(n.X, n.Y)
					}
				case *ast.AssignStmt:
					if n.Tok == token.ADD_ASSIGN || n.Tok == token.SUB_ASSIGN {
						check(n.Rhs...)
					}
				}
				return true
			})
		}
	}
}

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
					if v, ok := constant(operands[0]); ok && len(operands) == 2 {
						constants[target] = v
					}
					continue
				}
				exact := false
				for _, i := range arch.factors {
					v, ok := constant(operands[i])
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

// constant reads an operand that is a floating-point constant, in either of the ways that listings write one.
func constant(operand string) (float64, bool) {
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

func isFloat(t types.Type) bool {
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&types.IsFloat != 0
}
