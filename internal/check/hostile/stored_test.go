package hostile

import (
	"database/sql"
	"database/sql/driver"
	"fmt"
	"go/types"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/internal/check/source"
	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// stored are ordinary values of every type that has Value and Scan. The test compares the list with the source.
var stored = []driver.Valuer{
	7*units.Foot + 6*units.Inch, 12 * units.SquareFoot, 52 * units.Ounce, 1500 * units.Watt, units.InMetric,
	red, palette.Matte | palette.Metal, palette.WarmDeutan, units.Must(palette.ParseSwatch("barn red=#7c0a02:shiny")),
	units.Must(palette.CommonPractice().ParsePalette("crimson,gold:metal")),
	mantel.AsymmetricalLeft, sizing.InCorner, sizing.Slim, sizing.Metal,
	units.Must(labor.ParseDate("2026-11-28")), 37 * placement.Degree,
	shopping.Pick, ball, units.Must(shopping.ParseQuantity("4 of 54 in")), shopping.Shelf(12),
}

// Every type with Value and Scan comes back from a database as it was, as a string and as bytes, and so does its
// zero value if it can be stored; and what cannot be read leaves a value alone.
func TestStoredComesBack(t *testing.T) {
	m, err := source.Load()
	if err != nil {
		t.Fatal(err)
	}
	var want, got []string
	for _, p := range m.Shipped() {
		for _, name := range p.Types.Scope().Names() {
			if obj, ok := p.Types.Scope().Lookup(name).(*types.TypeName); ok && obj.Exported() &&
				types.NewMethodSet(types.NewPointer(obj.Type())).Lookup(p.Types, "Scan") != nil {
				want = append(want, p.Name+"."+name)
			}
		}
	}
	for _, v := range stored {
		got = append(got, strings.TrimPrefix(fmt.Sprintf("%T", v), "*"))
		typ := reflect.TypeOf(v)
		for _, value := range []any{v, reflect.Zero(typ).Interface()} {
			text, err := value.(driver.Valuer).Value()
			if err != nil {
				if reflect.DeepEqual(value, any(v)) {
					t.Errorf("%T %v is not stored: %v", v, v, err)
				}
				continue
			}
			sources := []any{text}
			if s, ok := text.(string); ok {
				sources = append(sources, []byte(s))
			}
			for _, src := range sources {
				back := reflect.New(typ)
				if err := back.Interface().(sql.Scanner).Scan(src); err != nil || !reflect.DeepEqual(back.Elem().Interface(), value) {
					t.Errorf("%T %v, stored as %q, comes back as %v, %v", v, value, text, back.Elem(), err)
				}
			}
			kept := reflect.New(typ)
			kept.Elem().Set(reflect.ValueOf(v))
			for _, bad := range []any{struct{}{}, "\xff", true} {
				if err := kept.Interface().(sql.Scanner).Scan(bad); err == nil || !reflect.DeepEqual(kept.Elem().Interface(), any(v)) {
					t.Errorf("%T reads %#v as %v, %v", v, bad, kept.Elem(), err)
				}
			}
		}
	}
	slices.Sort(want)
	slices.Sort(got)
	if !slices.Equal(got, want) {
		t.Errorf("tried\n%v\nbut these can be stored\n%v", got, want)
	}
}
