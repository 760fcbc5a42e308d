package proof

import (
	"bufio"
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
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
		// product returns the multiplication that e is, before or after a change of sign.
		var product func(e ast.Expr) *ast.BinaryExpr
		product = func(e ast.Expr) *ast.BinaryExpr {
			switch e := ast.Unparen(e).(type) {
			case *ast.BinaryExpr:
				if e.Op == token.MUL && isFloat(p.Info.TypeOf(e)) && p.Info.Types[e].Value == nil {
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
// multiply-add but at a call of math.FMA. This also finds a product that reaches a sum
// through a variable or an inlined call.
func TestCompilersFuseNothing(t *testing.T) {
	if testing.Short() {
		t.Skip("compiles for four architectures")
	}
	m := load(t)
	args := []string{"build", "-gcflags=" + "-S"}
	for _, p := range m.Checked() {
		args = append(args, p.ImportPath)
	}
	for _, arch := range []struct{ env, fused string }{
		{"GOARCH=amd64 GOAMD64=v3", `VFN?M(ADD|SUB)\w*`},
		{"GOARCH=arm64", `FN?M(ADD|SUB)[SD]`},
		{"GOARCH=riscv64", `FN?M(ADD|SUB)[SD]`},
		{"GOARCH=s390x", `W?FM(ADD|SUB|S|A)\w*`},
	} {
		t.Run(arch.env, func(t *testing.T) {
			c := exec.Command("go", args...)
			c.Dir = m.Root
			c.Env = append(os.Environ(), append(strings.Fields(arch.env), "GOOS=linux", "CGO_ENABLED=0")...)
			out, err := c.CombinedOutput()
			if err != nil {
				t.Fatalf("%v: %v\n%s", c.Args, err, out)
			}
			listing := string(out)
			if !strings.Contains(listing, "STEXT") {
				t.Fatalf("no listing in %d bytes of output", len(out))
			}
			line := regexp.MustCompile(`\(([^()]+\.go):(\d+)\)\t(` + arch.fused + `)\t`)
			seen := map[string]bool{}
			for _, hit := range line.FindAllStringSubmatch(listing, -1) {
				at := hit[1] + ":" + hit[2]
				if seen[at] {
					continue
				}
				seen[at] = true
				text, err := sourceLine(m.Root, hit[1], hit[2])
				if err != nil {
					t.Error(err)
				}
				if !strings.Contains(text, "math.FMA(") {
					t.Errorf("%s: fused into %s: %s", at, hit[3], strings.TrimSpace(text))
				}
			}
		})
	}
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
