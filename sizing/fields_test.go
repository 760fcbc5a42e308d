package sizing_test

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// Every field of every struct that is a receiver or an argument, put out of its range
// in turn, is refused by a function that uses it, and the pointer of the error, RFC
// 6901, finds the field in the JSON of that value.
func TestFields(t *testing.T) {
	const ft, in = units.Foot, units.Inch
	tree := sizing.Tree{Height: 9 * ft, Base: 5 * ft, Handle: 6 * in, BareTip: 9 * in, BareBase: 6 * in, Exposure: sizing.InCorner, Kind: sizing.Artificial, Public: true}
	drape := sizing.Drape{Span: ft, Sag: in}
	rules, look := sizing.CommonPractice(), sizing.CommonLook()
	room := sizing.Room{Ceiling: 14 * ft, Fall: in, Clearance: ft, Topper: ft, TopperWidth: ft, Stand: in}
	label := lights.Label{Lamps: 100, Length: 25 * ft, Power: 5 * units.Watt, EndToEnd: 3}
	strings := lights.Strings{Each: label, Count: 9}
	circuit := lights.Circuit{Volts: 120, Amperes: 15, Other: units.Watt}
	count := 0
	// Each value by the name of its argument, or none for a receiver, with what uses it.
	try := func(at string, value any, calls ...func() error) {
		t.Helper()
		for _, call := range calls {
			if err := call(); err != nil {
				t.Fatal(err)
			}
		}
		walkFields(reflect.ValueOf(value).Elem(), at, func(pointer string, v reflect.Value) {
			was := reflect.ValueOf(v.Interface())
			refusals := 0
			for _, bad := range outOfRange(t, pointer, v.Type()) {
				v.Set(bad)
				for _, call := range calls {
					err := call()
					var e *units.Error
					if err == nil {
						continue
					}
					refusals++
					if !errors.As(err, &e) || e.Field != pointer || !errors.Is(err, units.ErrRange) && !errors.Is(err, units.ErrName) {
						t.Errorf("%s put to %v: %v", pointer, bad, err)
					}
				}
			}
			v.Set(was)
			if refusals == 0 {
				t.Errorf("%s of %T is never refused", pointer, value)
			}
			count++
			if !found(t, value, pointer[len(at):]) {
				t.Errorf("nothing at %s in the JSON of %T", pointer, value)
			}
		})
	}
	use := func(calls ...func() error) []func() error { return calls }
	// A taper counts where the base was not measured.
	tapered := tree
	tapered.Base = 0
	ofTree := func(tree *sizing.Tree) []func() error {
		return use(
			func() error { _, err := rules.Compare(look, *tree); return err },
			func() error { _, err := rules.Mix(*tree, 9); return err },
		)
	}
	try("/tree", &tapered, ofTree(&tapered)...)
	try("/tree", &tree, ofTree(&tree)...)
	try("", &tree,
		func() error { _, err := tree.DressedArea(); return err },
		func() error { _, err := tree.Spacing(20 * ft); return err },
		func() error { _, err := tree.SpiralLength(in); return err },
		func() error { _, err := tree.Seen(90, 300*ft); return err },
		func() error { _, err := tree.Cautions(units.InMetric); return err },
		func() error { _, err := tree.Skirt(); return err },
	)
	try("", &drape, func() error { _, err := drape.Stretch(); return err })
	home := tree
	home.Public = false
	try("", &rules,
		func() error { _, err := rules.Compare(look, tree); return err },
		func() error { _, err := rules.Mix(home, 9); return err },
		func() error { _, err := rules.Each(9 * ft); return err },
	)
	try("/look", &look, func() error { _, err := rules.Compare(look, tree); return err })
	try("", &room, func() error { _, err := room.Fit(tree); return err }, func() error { _, err := room.Ladder(tree); return err })
	try("", &label, func() error { _, err := label.For(shopping.Quantity{Pieces: 9}); return err })
	try("", &strings, func() error { _, err := strings.Runs(); return err })
	try("/circuit", &circuit, func() error { _, err := strings.Load(circuit); return err })
	if count < 90 {
		t.Errorf("only %d fields tried", count)
	}
}

// outOfRange returns values of a field that no function takes where it uses it.
func outOfRange(t *testing.T, pointer string, typ reflect.Type) []reflect.Value {
	switch v := reflect.New(typ).Elem(); {
	case typ == reflect.TypeFor[shopping.Quantity]():
		return []reflect.Value{reflect.ValueOf(shopping.Quantity{Pieces: -1}), reflect.ValueOf(shopping.Quantity{Length: -1})}
	case typ == reflect.TypeFor[decimal.Decimal]():
		return []reflect.Value{reflect.ValueOf(decimal.New(-1, 0))}
	case v.CanInt():
		v.SetInt(-1)
		return []reflect.Value{v}
	case v.CanUint():
		v.SetUint(255)
		return []reflect.Value{v}
	case v.CanFloat():
		v.SetFloat(math.NaN())
		return []reflect.Value{v}
	}
	t.Fatalf("%s: a %v is not looked at", pointer, typ)
	return nil
}

// walkFields calls f with each field that has no fields of its own in JSON, and its
// pointer. Flags that say that something is left out have no range.
func walkFields(v reflect.Value, at string, f func(string, reflect.Value)) {
	switch {
	case v.Type() == reflect.TypeFor[shopping.Quantity](), v.Type() == reflect.TypeFor[decimal.Decimal]():
		f(at, v)
	case v.Kind() == reflect.Array: // a ByKind
		for i := 1; i < v.Len(); i++ {
			f(at+"/"+shopping.Kind(i).String(), v.Index(i))
		}
	case v.Kind() == reflect.Slice:
		for i := range v.Len() {
			walkFields(v.Index(i), at+"/"+strconv.Itoa(i), f)
		}
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			walkFields(v.Field(i), at+"/"+v.Type().Field(i).Tag.Get("json"), f)
		}
	case v.Kind() != reflect.Bool:
		f(at, v)
	}
}

// found reports whether a pointer finds something in the JSON of v. A table by kind has
// no member for a kind that is zero, so there the table will do.
func found(t *testing.T, v any, pointer string) bool {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	var at any
	if err := json.Unmarshal(text, &at); err != nil {
		t.Fatal(err)
	}
	for _, name := range strings.Split(pointer, "/")[1:] {
		if _, err := shopping.ParseItem(name); err == nil {
			return at != nil
		}
		switch x := at.(type) {
		case map[string]any:
			at = x[name]
		case []any:
			i, err := strconv.Atoi(name)
			if err != nil || i < 0 || i >= len(x) {
				return false
			}
			at = x[i]
		default:
			return false
		}
	}
	return at != nil
}
