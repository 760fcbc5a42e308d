package check

import (
	"go/types"
	"testing"
)

// Every exported type works with go-cmp without options. Of a type that has no method Equal for itself go-cmp
// looks into the parts, and it refuses a field that is not exported.
func TestTypesCompare(t *testing.T) {
	m := load(t)
	n := 0
	for _, p := range m.Shipped() {
		eachType(p.Types, func(name string, typ types.Type) {
			n++
			for _, bad := range incomparable(typ, p.Name+"."+name, map[types.Type]bool{}) {
				t.Errorf("%s: go-cmp needs options for %s", p.Rel(), bad)
			}
		})
	}
	if n < 60 {
		t.Errorf("%d types found", n)
	}
}

// eachType calls f with the exported types of a package.
func eachType(p *types.Package, f func(string, types.Type)) {
	for _, name := range p.Scope().Names() {
		if obj, ok := p.Scope().Lookup(name).(*types.TypeName); ok && obj.Exported() {
			f(name, obj.Type())
		}
	}
}

// incomparable returns the fields that go-cmp would refuse.
func incomparable(t types.Type, path string, seen map[types.Type]bool) (bad []string) {
	if seen[t] || hasEqual(t) {
		return nil
	}
	seen[t] = true
	switch u := t.Underlying().(type) {
	case *types.Struct:
		for f := range u.Fields() {
			if !f.Exported() {
				bad = append(bad, path+"."+f.Name())
			} else {
				bad = append(bad, incomparable(f.Type(), path+"."+f.Name(), seen)...)
			}
		}
	case *types.Map:
		bad = append(incomparable(u.Key(), path, seen), incomparable(u.Elem(), path, seen)...)
	case interface{ Elem() types.Type }: // a pointer, slice or array
		bad = incomparable(u.Elem(), path, seen)
	}
	return bad
}

// hasEqual says whether t has a method Equal(t) bool.
func hasEqual(t types.Type) bool {
	s := types.NewMethodSet(t).Lookup(nil, "Equal")
	if s == nil {
		return false
	}
	sig := s.Obj().Type().(*types.Signature)
	return sig.Params().Len() == 1 && types.AssignableTo(t, sig.Params().At(0).Type()) && sig.Results().Len() == 1 &&
		types.Identical(sig.Results().At(0).Type(), types.Typ[types.Bool])
}

// Every type with a text form can be stored in a database column, by Value and Scan. A type has a text form if it
// reads one, or if a function ParseX makes it of one.
func TestTextFormsAreStored(t *testing.T) {
	m := load(t)
	n := 0
	for _, p := range m.Shipped() {
		eachType(p.Types, func(name string, typ types.Type) {
			if _, ok := typ.Underlying().(*types.Interface); ok {
				return
			}
			has := func(t types.Type, method string) bool { return types.NewMethodSet(t).Lookup(p.Types, method) != nil }
			pointer := types.NewPointer(typ)
			text := has(pointer, "UnmarshalText")
			if f, ok := p.Types.Scope().Lookup("Parse" + name).(*types.Func); ok {
				text = text || has(typ, "String") && types.Identical(f.Signature().Results().At(0).Type(), typ)
			}
			if !text {
				return
			}
			n++
			if !has(typ, "Value") || !has(pointer, "Scan") || !has(typ, "String") {
				t.Errorf("%s.%s has a text form and not all of String, Value and Scan", p.Rel(), name)
			}
		})
	}
	if n < 15 {
		t.Errorf("%d types with a text form", n)
	}
}
