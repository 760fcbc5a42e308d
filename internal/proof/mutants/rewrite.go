package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
)

// switches is what a package is given beside its own files: functions that do what the operator did,
// and something else if the switch of a mutant is thrown.
const switches = `
import (
	"cmp"
	"os"
	"strconv"
)

var mutantOn = func() int { n, _ := strconv.Atoi(os.Getenv("` + variable + `")); return n }()

type mutantInt interface {
	~int | ~int8 | ~int16 | ~int32 | ~int64 | ~uint | ~uint8 | ~uint16 | ~uint32 | ~uint64 | ~uintptr
}

type mutantNumber interface{ mutantInt | ~float32 | ~float64 }

func mutantIs(id int) bool { return mutantOn == id }

func mutantPick[T any](id int, broken, whole T) T {
	if mutantOn == id {
		return broken
	}
	return whole
}

func mutantAdd[T mutantNumber](id int, x, y T) T {
	if mutantOn == id {
		return x - y
	}
	return x + y
}

func mutantSub[T mutantNumber](id int, x, y T) T {
	if mutantOn == id {
		return x + y
	}
	return x - y
}

func mutantMul[T mutantNumber](id int, x, y T) T {
	if mutantOn == id {
		return x / y
	}
	return x * y
}

func mutantQuo[T mutantNumber](id int, x, y T) T {
	if mutantOn == id {
		return x * y
	}
	return x / y
}

func mutantRem[T mutantInt](id int, x, y T) T {
	if mutantOn == id {
		return x * y
	}
	return x % y
}

func mutantNeg[T mutantNumber](id int, x T) T {
	if mutantOn == id {
		return x
	}
	return -x
}

func mutantStep[T mutantNumber](id int) T {
	step := T(1)
	if mutantOn == id {
		return -step
	}
	return step
}

func mutantLess[T cmp.Ordered](bound, other int, x, y T) bool {
	switch mutantOn {
	case bound:
		return x <= y
	case other:
		return x >= y
	}
	return x < y
}

func mutantAtMost[T cmp.Ordered](bound, other int, x, y T) bool {
	switch mutantOn {
	case bound:
		return x < y
	case other:
		return x > y
	}
	return x <= y
}

func mutantMore[T cmp.Ordered](bound, other int, x, y T) bool {
	switch mutantOn {
	case bound:
		return x >= y
	case other:
		return x <= y
	}
	return x > y
}

func mutantAtLeast[T cmp.Ordered](bound, other int, x, y T) bool {
	switch mutantOn {
	case bound:
		return x > y
	case other:
		return x < y
	}
	return x >= y
}
`

// broken tells for each kind of mutant which operator it puts for which.
var broken = map[string]map[token.Token]token.Token{
	"ARITHMETIC_BASE":       {token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL, token.REM: token.MUL},
	"CONDITIONALS_BOUNDARY": {token.LSS: token.LEQ, token.LEQ: token.LSS, token.GTR: token.GEQ, token.GEQ: token.GTR},
	"CONDITIONALS_NEGATION": {
		token.LSS: token.GEQ, token.GEQ: token.LSS, token.GTR: token.LEQ, token.LEQ: token.GTR, token.EQL: token.NEQ, token.NEQ: token.EQL,
	},
	"INCREMENT_DECREMENT": {token.INC: token.DEC, token.DEC: token.INC},
	"INVERT_NEGATIVES":    {token.SUB: token.ADD},
}

// A source is the files of a package that are no tests, with their types.
type source struct {
	fset  *token.FileSet
	name  string
	files map[string]*ast.File // by base name
	text  map[string][]byte
	info  types.Info
	types *types.Package
}

// load reads and checks a package.
func load(pkg string) (*source, error) {
	list := exec.Command("go", "list", "-export", "-deps", "-f", "{{.ImportPath}}\t{{.Export}}", "./"+pkg)
	out, err := list.Output()
	if err != nil {
		return nil, err
	}
	exports := map[string]string{}
	for l := range strings.Lines(string(out)) {
		if path, file, ok := strings.Cut(strings.TrimSpace(l), "\t"); ok {
			exports[path] = file
		}
	}
	s := &source{
		fset: token.NewFileSet(), files: map[string]*ast.File{}, text: map[string][]byte{},
		info: types.Info{Types: map[ast.Expr]types.TypeAndValue{}},
	}
	paths, err := filepath.Glob(filepath.Join(pkg, "*.go"))
	if err != nil {
		return nil, err
	}
	var all []*ast.File
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		f, err := parser.ParseFile(s.fset, path, text, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		base := filepath.Base(path)
		s.files[base], s.text[base], s.name = f, text, f.Name.Name
		all = append(all, f)
	}
	conf := types.Config{Importer: importer.ForCompiler(s.fset, "gc", func(path string) (io.ReadCloser, error) {
		if exports[path] == "" {
			return nil, fmt.Errorf("no export data of %s", path)
		}
		return os.Open(exports[path])
	})}
	s.types, err = conf.Check(module+pkg, s.fset, all, &s.info)
	return s, err
}

// A site is a node of the syntax tree that is broken in one or more ways.
type site struct {
	node    ast.Node
	op      token.Pos // of the operator
	tok     token.Token
	mutants []*mutant
	whole   ast.Expr // the outermost constant that the node is part of; nil if it is none
}

// sites finds where the mutants are in a file. Those that a switch cannot hold are set apart.
func (s *source) sites(base string, all []*mutant) (map[ast.Node]*site, error) {
	f := s.files[base]
	at := map[[2]int][]*mutant{}
	for _, m := range all {
		if m.file == base {
			at[[2]int{m.line, m.column}] = append(at[[2]int{m.line, m.column}], m)
		}
	}
	found := map[ast.Node]*site{}
	var stack []ast.Node
	ast.Inspect(f, func(n ast.Node) bool {
		if n == nil {
			stack = stack[:len(stack)-1]
			return true
		}
		stack = append(stack, n)
		st := &site{node: n}
		switch n := n.(type) {
		case *ast.BinaryExpr:
			st.op, st.tok = n.OpPos, n.Op
		case *ast.UnaryExpr:
			st.op, st.tok = n.OpPos, n.Op
		case *ast.IncDecStmt:
			st.op, st.tok = n.TokPos, n.Tok
		default:
			return true
		}
		p := s.fset.Position(st.op)
		here := at[[2]int{p.Line, p.Column}]
		if here == nil {
			return true
		}
		delete(at, [2]int{p.Line, p.Column})
		if e, ok := n.(ast.Expr); ok && isText(s.info.Types[e].Type) { // texts have no minus
			for _, m := range here {
				m.fate = unviable
			}
			return true
		}
		st.mutants = distinct(here, st.tok)
		found[n] = st
		for _, up := range stack {
			if d, ok := up.(*ast.GenDecl); ok && d.Tok == token.CONST {
				st.setApart()
			}
			if a, ok := up.(*ast.ArrayType); ok && a.Len != nil && a.Len.Pos() <= n.Pos() && n.End() <= a.Len.End() {
				st.setApart()
			}
		}
		if e, ok := n.(ast.Expr); ok && s.info.Types[e].Value != nil {
			st.whole = e
			for i := len(stack) - 2; i >= 0; i-- {
				up, ok := stack[i].(ast.Expr)
				if !ok || s.info.Types[up].Value == nil {
					break
				}
				st.whole = up
			}
			t, ok := s.info.Types[st.whole].Type.(*types.Basic)
			lines := s.fset.Position(st.whole.End()).Line - s.fset.Position(st.whole.Pos()).Line
			if ok && t.Info()&types.IsUntyped != 0 || lines != 0 {
				st.setApart()
			}
		}
		return true
	})
	for where, ms := range at {
		return nil, fmt.Errorf("%s:%d:%d: no operator for %s", base, where[0], where[1], ms[0].kind)
	}
	return found, nil
}

// distinct leaves out mutants that put the same operator as one before: gremlins finds a minus twice.
func distinct(all []*mutant, tok token.Token) []*mutant {
	var kept []*mutant
	seen := map[token.Token]bool{}
	for _, m := range all {
		if t := broken[m.kind][tok]; seen[t] {
			m.fate = twin
		} else {
			seen[t] = true
			kept = append(kept, m)
		}
	}
	return kept
}

func isText(t types.Type) bool {
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&types.IsString != 0
}

func (st *site) setApart() {
	for _, m := range st.mutants {
		m.apart = true
	}
}

func (st *site) id(kind string) int {
	for _, m := range st.mutants {
		if m.kind == kind {
			return m.id
		}
	}
	return -1
}

var comparisons = map[token.Token]string{token.LSS: "mutantLess", token.LEQ: "mutantAtMost", token.GTR: "mutantMore", token.GEQ: "mutantAtLeast"}

var operations = map[token.Token]string{token.ADD: "mutantAdd", token.SUB: "mutantSub", token.MUL: "mutantMul", token.QUO: "mutantQuo", token.REM: "mutantRem"}

// switched returns the text of a file with a switch at each site. It has as many lines as before.
func (s *source) switched(base string, sites map[ast.Node]*site) []byte {
	// The sites in one constant are written together.
	constants := map[ast.Node][]*site{}
	for _, st := range sites {
		if st.whole != nil && !st.mutants[0].apart {
			constants[st.whole] = append(constants[st.whole], st)
		}
	}
	text, off := s.text[base], func(p token.Pos) int { return s.fset.Position(p).Offset }
	var write func(out *bytes.Buffer, from, to token.Pos, root ast.Node)
	inside := func(n ast.Node) string {
		var out bytes.Buffer
		write(&out, n.Pos(), n.End(), n)
		return out.String()
	}
	typeOf := func(e ast.Expr) string {
		return types.TypeString(s.info.Types[e].Type, func(p *types.Package) string {
			if p == s.types {
				return ""
			}
			return p.Name()
		})
	}
	node := func(n ast.Node) (string, bool) {
		if all := constants[n]; all != nil {
			whole := string(text[off(n.Pos()):off(n.End())])
			out := whole
			for _, st := range all {
				at := off(st.op) - off(n.Pos())
				for _, m := range st.mutants {
					other := whole[:at] + broken[m.kind][st.tok].String() + whole[at+len(st.tok.String()):]
					out = fmt.Sprintf("mutantPick[%s](%d, %s, %s)", typeOf(n.(ast.Expr)), m.id, other, out)
				}
			}
			return out, true
		}
		st := sites[n]
		if st == nil || st.whole != nil || st.mutants[0].apart {
			return "", false
		}
		switch n := n.(type) {
		case *ast.BinaryExpr:
			// What stands between the operands, a line break perhaps, without the operator.
			before, after := string(text[off(n.X.End()):off(n.OpPos)]), string(text[off(n.OpPos)+len(n.Op.String()):off(n.Y.Pos())])
			if f := comparisons[n.Op]; f != "" {
				return fmt.Sprintf("%s(%d, %d, %s%s,%s%s)", f, st.id("CONDITIONALS_BOUNDARY"), st.id("CONDITIONALS_NEGATION"), inside(n.X), before, after, inside(n.Y)), true
			}
			if f := operations[n.Op]; f != "" {
				return fmt.Sprintf("%s(%d, %s%s,%s%s)", f, st.mutants[0].id, inside(n.X), before, after, inside(n.Y)), true
			}
			return fmt.Sprintf("((%s%s%s%s%s) != mutantIs(%d))", inside(n.X), before, n.Op, after, inside(n.Y), st.mutants[0].id), true
		case *ast.UnaryExpr:
			return fmt.Sprintf("mutantNeg(%d, %s)", st.mutants[0].id, inside(n.X)), true
		case *ast.IncDecStmt:
			return fmt.Sprintf("%s %s mutantStep[%s](%d)", inside(n.X), map[token.Token]string{token.INC: "+=", token.DEC: "-="}[n.Tok], typeOf(n.X), st.mutants[0].id), true
		}
		return "", false
	}
	write = func(out *bytes.Buffer, from, to token.Pos, root ast.Node) {
		ast.Inspect(root, func(n ast.Node) bool {
			if n == nil || n.Pos() < from {
				return n != nil
			}
			if t, ok := node(n); ok {
				out.Write(text[off(from):off(n.Pos())])
				out.WriteString(t)
				from = n.End()
				return false
			}
			return true
		})
		out.Write(text[off(from):off(to)])
	}
	var out bytes.Buffer
	f := s.files[base]
	end := f.FileEnd
	write(&out, f.FileStart, end, f)
	return out.Bytes()
}

var fault = regexp.MustCompile(`(?m)^(?:vet: )?(\S+?\.go):(\d+):\d+: .*$`)

// build builds the tests of a package with all switches. A mutant that does not build behind its switch is
// set apart.
func build(pkg, dir string, src *source, all []*mutant) (*battery, error) {
	b := &battery{pkg: pkg, src: src, program: filepath.Join(dir, "all.test")}
	for range 20 {
		overlay := map[string]string{}
		put := func(base string, text []byte) error {
			path, err := filepath.Abs(filepath.Join(pkg, base))
			if err != nil {
				return err
			}
			overlay[path] = filepath.Join(dir, base)
			return os.WriteFile(overlay[path], text, 0o600)
		}
		for base := range src.files {
			sites, err := src.sites(base, all)
			if err != nil {
				return nil, err
			}
			if len(sites) == 0 {
				continue
			}
			if err := put(base, src.switched(base, sites)); err != nil {
				return nil, err
			}
		}
		if err := put("mutant_switches.go", []byte("package "+src.name+"\n"+switches)); err != nil {
			return nil, err
		}
		out, err := compile(pkg, dir, b.program, overlay)
		if err == nil {
			return b, nil
		}
		found := false
		for _, m := range fault.FindAllSubmatch(out, -1) {
			line, err := strconv.Atoi(string(m[2]))
			if err != nil {
				return nil, err
			}
			for _, mu := range all {
				if mu.file == filepath.Base(string(m[1])) && mu.line == line && !mu.apart {
					mu.apart, found = true, true
				}
			}
		}
		if !found {
			return nil, fmt.Errorf("does not build with switches: %w\n%s", err, out)
		}
	}
	return nil, fmt.Errorf("does not build with switches")
}

// alone builds the tests with one mutant. It returns no program if that does not build.
func (s *source) alone(pkg, dir string, m *mutant) (string, error) {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return "", err
	}
	sites, err := s.sites(m.file, []*mutant{m})
	if err != nil {
		return "", err
	}
	for _, st := range sites {
		text, at := s.text[m.file], s.fset.Position(st.op).Offset
		var out []byte
		out = append(out, text[:at]...)
		out = append(out, broken[m.kind][st.tok].String()...)
		out = append(out, text[at+len(st.tok.String()):]...)
		path, err := filepath.Abs(filepath.Join(pkg, m.file))
		if err != nil {
			return "", err
		}
		file := filepath.Join(dir, m.file)
		if err := os.WriteFile(file, out, 0o600); err != nil {
			return "", err
		}
		program := filepath.Join(dir, "one.test")
		if _, err := compile(pkg, dir, program, map[string]string{path: file}); err != nil {
			return "", nil
		}
		return program, nil
	}
	return "", fmt.Errorf("%s:%d: nothing to break", m.file, m.line)
}

// compile builds the tests of a package with some files in the place of others.
func compile(pkg, dir, program string, overlay map[string]string) ([]byte, error) {
	text, err := json.Marshal(map[string]any{"Replace": overlay})
	if err != nil {
		return nil, err
	}
	file := filepath.Join(dir, "overlay.json")
	if err := os.WriteFile(file, text, 0o600); err != nil {
		return nil, err
	}
	// No debug symbols: linking takes most of the time.
	c := exec.Command("go", "test", "-c", "-vet=off", "-ldflags=-w -s", "-gcflags=-e", "-overlay", file, "-o", program, "./"+pkg)
	return c.CombinedOutput()
}
