package check

import (
	"go/ast"
	"go/token"
	"go/types"
	"slices"
	"testing"

	"example.com/fircone/internal/check/source"
)

// No init function, no goroutine, no channel: a call does its work and returns.
func TestNoInitNoGoroutine(t *testing.T) {
	m := load(t)
	for _, p := range m.Checked() {
		for _, f := range p.Files {
			ast.Inspect(f, func(n ast.Node) bool {
				switch n := n.(type) {
				case *ast.FuncDecl:
					if n.Recv == nil && n.Name.Name == "init" {
						t.Errorf("%s: func init", m.At(n.Pos()))
					}
				case *ast.GoStmt:
					t.Errorf("%s: go statement", m.At(n.Pos()))
				case *ast.SelectStmt:
					t.Errorf("%s: select statement", m.At(n.Pos()))
				case *ast.ChanType:
					t.Errorf("%s: channel", m.At(n.Pos()))
				}
				return true
			})
		}
	}
}

// pureCalls lists the functions that may give a package variable its value: each only
// makes a value of its arguments.
var pureCalls = []string{
	"errors.New",
	"github.com/shopspring/decimal.New",
	"github.com/shopspring/decimal.NewFromInt",
	"github.com/shopspring/decimal.NewFromInt32",
}

// Package variables get their values from literals and the few functions above, so
// starting a program that imports us does no work worth the name.
func TestPackageVariablesDoNoWork(t *testing.T) {
	m := load(t)
	for _, p := range m.Checked() {
		each(p, func(spec *ast.ValueSpec) {
			for _, v := range spec.Values {
				ast.Inspect(v, func(n ast.Node) bool {
					if _, ok := n.(*ast.FuncLit); ok {
						return false // it runs when it is called, not at init
					}
					call, ok := n.(*ast.CallExpr)
					if !ok || p.Info.Types[call.Fun].IsType() || p.Info.Types[call].Value != nil {
						return true
					}
					if f := called(p, call); f == nil || !slices.Contains(pureCalls, f.FullName()) {
						t.Errorf("%s: a package variable calls %s", m.At(call.Pos()), types.ExprString(call.Fun))
					}
					return true
				})
			}
		})
	}
}

// No package variable changes after init: none is assigned to, counted up or down,
// has its address taken, is cleared, deleted from, appended or copied to, sorted, or is
// handed out as a slice or map for others to change.
func TestPackageVariablesNeverChange(t *testing.T) {
	m := load(t)
	for _, p := range m.Checked() {
		// global returns the package variable that e is a part of, or nil.
		var global func(e ast.Expr) *types.Var
		global = func(e ast.Expr) *types.Var {
			switch e := ast.Unparen(e).(type) {
			case *ast.Ident:
				if v, ok := p.Info.Uses[e].(*types.Var); ok && v.Pkg() != nil && v.Parent() == v.Pkg().Scope() {
					return v
				}
			case *ast.SelectorExpr:
				if _, ok := p.Info.Selections[e]; !ok {
					return global(e.Sel) // another package's variable
				}
				return global(e.X)
			case *ast.IndexExpr:
				return global(e.X)
			case *ast.SliceExpr:
				return global(e.X)
			case *ast.StarExpr:
				return global(e.X)
			}
			return nil
		}
		only := neverWritten(p)
		wrong := func(n ast.Node, e ast.Expr, what string) {
			if v := global(e); v != nil {
				t.Errorf("%s: the package variable %s %s", m.At(n.Pos()), v.Name(), what)
			}
		}
		// escapes is wrong for e, a package variable, or a part of one, through which a
		// holder could change it.
		escapes := func(n ast.Node, e ast.Expr, what string) {
			switch p.Info.TypeOf(e).Underlying().(type) {
			case *types.Slice, *types.Map, *types.Pointer:
				wrong(n, e, what)
			}
		}
		for _, f := range p.Files {
			ast.Inspect(f, func(n ast.Node) bool {
				switch n := n.(type) {
				case *ast.AssignStmt:
					if n.Tok != token.DEFINE {
						for _, e := range n.Lhs {
							wrong(n, e, "is assigned to")
						}
					}
				case *ast.IncDecStmt:
					wrong(n, n.X, "is counted")
				case *ast.RangeStmt:
					if n.Tok == token.ASSIGN {
						wrong(n, n.Key, "is assigned to")
						wrong(n, n.Value, "is assigned to")
					}
				case *ast.UnaryExpr:
					if n.Op == token.AND && !only[p.Info.TypeOf(n.X).String()] {
						wrong(n, n.X, "has its address taken")
					}
				case *ast.ReturnStmt:
					for _, e := range n.Results {
						escapes(n, e, "is returned to be changed")
					}
				case *ast.SelectorExpr:
					s, ok := p.Info.Selections[n]
					if !ok || s.Kind() != types.MethodVal {
						return true
					}
					if sig := s.Obj().Type().(*types.Signature); isPointer(sig.Recv().Type()) && !isPointer(p.Info.TypeOf(n.X)) &&
						!only[p.Info.TypeOf(n.X).String()] {
						wrong(n, n.X, "is changed by "+n.Sel.Name)
					}
				case *ast.CallExpr:
					if id, ok := ast.Unparen(n.Fun).(*ast.Ident); ok {
						if b, ok := p.Info.Uses[id].(*types.Builtin); ok {
							switch b.Name() {
							case "append", "clear", "copy", "delete":
								wrong(n, n.Args[0], "is changed by "+b.Name())
							}
							return true
						}
					}
					if f := called(p, n); f != nil && f.Pkg() != nil && (f.Pkg().Path() == "slices" || f.Pkg().Path() == "sort") {
						switch f.Name() {
						case "Sort", "SortFunc", "SortStableFunc", "Stable", "Slice", "SliceStable", "Ints", "Strings", "Float64s",
							"Reverse", "Delete", "DeleteFunc", "Insert", "Replace", "Compact", "CompactFunc", "Grow", "Clip":
							wrong(n, n.Args[0], "is changed by "+f.FullName())
						}
					}
				}
				return true
			})
		}
	}
}

// neverWritten returns the struct types of p, and those without a name that its variables are tables of, that no code of p changes through a pointer:
// pointing at a table of them is reading it. Their fields are not exported, or another
// package could.
func neverWritten(p *source.Package) map[string]bool {
	only := map[string]bool{}
	for _, name := range p.Types.Scope().Names() {
		var t types.Type
		switch obj := p.Types.Scope().Lookup(name).(type) {
		case *types.TypeName:
			t = obj.Type()
		case *types.Var:
			table, ok := obj.Type().Underlying().(interface{ Elem() types.Type })
			if !ok {
				continue
			}
			t = table.Elem()
		default:
			continue
		}
		if s, ok := t.Underlying().(*types.Struct); ok {
			hidden := true
			for f := range s.Fields() {
				hidden = hidden && !f.Exported()
			}
			only[t.String()] = hidden
		}
	}
	var written func(e ast.Expr)
	written = func(e ast.Expr) {
		switch e := ast.Unparen(e).(type) {
		case *ast.SelectorExpr:
			if ptr, ok := p.Info.TypeOf(e.X).Underlying().(*types.Pointer); ok {
				delete(only, ptr.Elem().String())
			}
			written(e.X)
		case *ast.StarExpr:
			if ptr, ok := p.Info.TypeOf(e.X).Underlying().(*types.Pointer); ok {
				delete(only, ptr.Elem().String())
			}
			written(e.X)
		case *ast.IndexExpr:
			written(e.X)
		}
	}
	for _, f := range p.Files {
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.AssignStmt:
				for _, e := range n.Lhs {
					written(e)
				}
			case *ast.IncDecStmt:
				written(n.X)
			case *ast.UnaryExpr:
				if n.Op == token.AND {
					if _, whole := ast.Unparen(n.X).(*ast.SelectorExpr); whole {
						written(n.X)
					}
				}
			}
			return true
		})
	}
	return only
}

// each calls f with each declaration of package variables in p.
func each(p *source.Package, f func(*ast.ValueSpec)) {
	for _, file := range p.Files {
		for _, d := range file.Decls {
			if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.VAR {
				for _, s := range g.Specs {
					f(s.(*ast.ValueSpec))
				}
			}
		}
	}
}

// called returns the function or method that call calls, or nil if that is not known by name.
func called(p *source.Package, call *ast.CallExpr) *types.Func {
	var id *ast.Ident
	switch e := ast.Unparen(call.Fun).(type) {
	case *ast.Ident:
		id = e
	case *ast.SelectorExpr:
		id = e.Sel
	default:
		return nil
	}
	f, _ := p.Info.Uses[id].(*types.Func)
	return f
}

func isPointer(t types.Type) bool {
	_, ok := t.Underlying().(*types.Pointer)
	return ok
}
