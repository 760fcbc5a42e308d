package check

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/parser"
	"go/token"
	"go/types"
	"math"
	"slices"
	"testing"
)

// Nothing that ships could give other bits on another machine. See [checker] for the rules.
func TestSameBitsByTheSource(t *testing.T) {
	m := load(t)
	for _, p := range m.Checked() {
		c := checker{fset: m.Fset, info: p.Info}
		for _, f := range p.Files {
			ast.PreorderStack(f, nil, c.node)
		}
		for _, fault := range c.faults {
			t.Error(fault)
		}
	}
}

// faults returns the faults in one file.
func faults(fset *token.FileSet, imp types.Importer, path string, f *ast.File) []string {
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{}}
	conf := types.Config{Importer: imp}
	if _, err := conf.Check(path, fset, []*ast.File{f}, info); err != nil {
		return []string{err.Error()}
	}
	c := checker{fset: fset, info: info}
	ast.PreorderStack(f, nil, c.node)
	return c.faults
}

// A checker refuses
//
//   - a product of floating-point numbers that is kept, passed on or added as it
//     is, since a compiler may fuse it with a sum that it comes to, even through
//     a variable or a result. It has to stand in a conversion, float64(x*y), or
//     go straight into another product, a quotient, a comparison, an integer or
//     [math.Sqrt] and its like, which round it. A factor that is a constant power
//     of two makes an exact product, and so does no harm;
//   - complex arithmetic;
//   - functions of package math that are not exact or correctly rounded, and
//     packages with more of them.
type checker struct {
	fset   *token.FileSet
	info   *types.Info
	faults []string
}

// exactMath lists the functions of package math that have one right answer
// that every machine gives.
var exactMath = []string{
	"Abs", "Ceil", "Copysign", "FMA", "Float32bits", "Float32frombits", "Float64bits", "Float64frombits",
	"Floor", "Frexp", "Inf", "IsInf", "IsNaN", "Ldexp", "Max", "Min", "Mod", "Modf", "NaN", "Nextafter",
	"Round", "RoundToEven", "Signbit", "Sqrt", "Trunc",
}

// roundMath lists those whose result cannot be fused with their argument.
var roundMath = []string{"Ceil", "Floor", "Round", "RoundToEven", "Sqrt", "Trunc"}

func (c *checker) node(n ast.Node, stack []ast.Node) bool {
	switch n := n.(type) {
	case *ast.ImportSpec:
		switch n.Path.Value {
		case `"math/cmplx"`, `"math/rand"`, `"math/rand/v2"`:
			c.fault(n, "import of %s", n.Path.Value)
		}
	case *ast.SelectorExpr:
		f, ok := c.info.Uses[n.Sel].(*types.Func)
		if ok && f.Pkg() != nil && f.Pkg().Path() == "math" && !slices.Contains(exactMath, f.Name()) {
			c.fault(n, "math.%s differs between machines: use internal/elem", f.Name())
		}
	case *ast.BinaryExpr:
		if c.isBasic(n, types.IsComplex) && c.info.Types[n].Value == nil {
			c.fault(n, "complex arithmetic")
		}
		if n.Op == token.MUL && c.inexact(n, n.X, n.Y) && !c.rounded(n, stack) {
			c.fault(n, "product could be fused with a sum: write float64(x*y)")
		}
	case *ast.AssignStmt:
		if n.Tok == token.MUL_ASSIGN && c.inexact(n.Lhs[0], n.Lhs[0], n.Rhs[0]) {
			c.fault(n, "product could be fused with a sum: write x = float64(x*y)")
		}
	}
	return true
}

// inexact reports whether x*y, of the type of e, is a floating-point product
// that has to be rounded.
func (c *checker) inexact(e, x, y ast.Expr) bool {
	if !c.isBasic(e, types.IsFloat) || c.info.Types[e].Value != nil {
		return false
	}
	return !c.powerOfTwo(x) && !c.powerOfTwo(y)
}

// isBasic reports whether the type of e is, or may be, of a kind.
func (c *checker) isBasic(e ast.Expr, kind types.BasicInfo) bool {
	switch u := c.info.TypeOf(e).Underlying().(type) {
	case *types.Basic:
		return u.Info()&kind != 0
	case *types.Interface: // a type parameter
		return true
	}
	return false
}

func (c *checker) powerOfTwo(e ast.Expr) bool {
	v := c.info.Types[e].Value
	if v == nil {
		return false
	}
	f, exact := constant.Float64Val(constant.ToFloat(v))
	m, _ := math.Frexp(math.Abs(f))
	return exact && m == 0.5
}

// rounded reports whether what the product n goes into rounds it first.
func (c *checker) rounded(n ast.Expr, stack []ast.Node) bool {
	child := ast.Node(n)
	for _, parent := range slices.Backward(stack) {
		switch p := parent.(type) {
		case *ast.ParenExpr:
			child = p
			continue
		case *ast.BinaryExpr:
			switch p.Op {
			case token.MUL, token.QUO, token.EQL, token.NEQ, token.LSS, token.LEQ, token.GTR, token.GEQ:
				return true
			}
		case *ast.CallExpr:
			if p.Fun == child {
				return false
			}
			if c.info.Types[p.Fun].IsType() {
				return true
			}
			if s, ok := p.Fun.(*ast.SelectorExpr); ok {
				f, ok := c.info.Uses[s.Sel].(*types.Func)
				return ok && f.Pkg() != nil && f.Pkg().Path() == "math" && slices.Contains(roundMath, f.Name())
			}
		}
		return false
	}
	return false
}

func (c *checker) fault(n ast.Node, format string, args ...any) {
	c.faults = append(c.faults, fmt.Sprintf("%v: %s", c.fset.Position(n.Pos()), fmt.Sprintf(format, args...)))
}

// TestChecker shows the checker what it must refuse and what it must let pass.
func TestChecker(t *testing.T) {
	tests := []struct {
		body   string
		faults int
		reason string
	}{
		{"return x*y + z", 1, "product in a sum"},
		{"return z - x*y", 1, "product in a difference"},
		{"return float64(x*y) + z", 0, "converted"},
		{"return (float64((x * y))) + z", 0, "converted, with parentheses"},
		{"return -(x*y) + z", 1, "the sign does not round"},
		{"p := x*y; return p + z", 1, "through a variable"},
		{"return x*y", 1, "through a result"},
		{"x *= y; return x", 1, "short for a product"},
		{"x *= 2; return x", 0, "exact"},
		{"x += y*z; return x", 1, "short for a sum"},
		{"x += float64(y*z); return x", 0, "short for a sum, converted"},
		{"return x*y*z", 1, "the outer product only"},
		{"return x*y/z + 1", 0, "a quotient rounds"},
		{"return x/(y*z) + 1", 0, "a quotient rounds"},
		{"return 2*x + z*0.25", 0, "exact products"},
		{"return 3*x + z", 1, "not exact"},
		{"const k = 3.0 * 5; return k + z", 0, "constant"},
		{"return float64(i*j) + z", 0, "integers"},
		{"i = i*j + 1; return z", 0, "integers"},
		{"return math.Sqrt(x*y) + z", 0, "rounded by the root"},
		{"return math.Abs(x*y) + z", 1, "the absolute value does not round"},
		{"return math.Copysign(x*y, z) + z", 1, "nor does the sign"},
		{"return math.Log(x)", 1, "not the same everywhere"},
		{"f := math.Hypot; return f(x, y)", 1, "not the same everywhere, as a value"},
		{"if x*y > z { return 1 }; return 0", 0, "a comparison"},
		{"c := complex(x, y); return real(c*c)", 1, "complex"},
		{"return float64(float32(x)*float32(y) + float32(z))", 1, "single precision"},
		{"return g(x*y)", 1, "through an argument"},
		{"return func() float64 { return x*y }() + z", 1, "through a function literal"},
	}
	for _, tt := range tests {
		src := "package p\nimport \"math\"\nvar _ = math.Pi\nfunc g(x float64) float64 { return x }\n" +
			"func f(x, y, z float64, i, j int) float64 {" + tt.body + "}\n"
		fset := token.NewFileSet()
		f, err := parser.ParseFile(fset, "p.go", src, parser.SkipObjectResolution)
		if err != nil {
			t.Fatalf("%s: %v", tt.body, err)
		}
		got := faults(fset, fakeMath{}, "p", f)
		if len(got) != tt.faults {
			t.Errorf("%s (%s): %d faults, want %d: %q", tt.body, tt.reason, len(got), tt.faults, got)
		}
	}
}

// fakeMath imports a package math that has just what TestChecker uses, so that
// the test runs on any machine.
type fakeMath struct{}

func (fakeMath) Import(path string) (*types.Package, error) {
	const src = `package math
const Pi = 3
func Sqrt(x float64) float64
func Abs(x float64) float64
func Log(x float64) float64
func Copysign(x, y float64) float64
func Hypot(x, y float64) float64`
	fset := token.NewFileSet()
	f, err := parser.ParseFile(fset, "math.go", src, 0)
	if err != nil {
		return nil, err
	}
	return (&types.Config{}).Check(path, fset, []*ast.File{f}, nil)
}
