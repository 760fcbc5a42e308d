package placement_test

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// Every field of every argument and receiver, put out of its range, is named by a
// pointer that finds it in the JSON of that value, and the function is the one called.
func TestFields(t *testing.T) {
	const fn = "placement."
	tree := sizing.Tree{Height: 9 * units.Foot, Base: 5 * units.Foot, Handle: 6 * units.Inch, BareTip: 9 * units.Inch, Exposure: sizing.InCorner, Taper: sizing.Full}
	layout := placement.Layout{Tree: tree, Facing: 30 * placement.Degree}
	pieces := []shopping.Lot{
		{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: 3}},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "star", Size: units.Inch}, Quantity: shopping.Quantity{Pieces: 2}},
	}
	winding := placement.Winding{Spacing: units.Foot, Length: 90 * units.Foot, Step: units.Inch, Drape: sizing.Drape{Span: units.Foot, Sag: units.Inch}}
	places, err := layout.Places(pieces)
	if err != nil {
		t.Fatal(err)
	}
	order := placement.Order{Ladder: 6 * units.Foot, Side: 20 * units.Inch}

	count := 0
	try := func(name string, receiver any, args map[string]any, call func() error) {
		t.Helper()
		if err := call(); err != nil {
			t.Fatal(name, err)
		}
		walk(reflect.ValueOf(receiver).Elem(), "", func(at string, v reflect.Value) { count += mustRefuse(t, fn+name, at, v, args, receiver, call) })
		for arg, value := range args {
			walk(reflect.ValueOf(value).Elem(), "/"+arg, func(at string, v reflect.Value) { count += mustRefuse(t, fn+name, at, v, args, receiver, call) })
		}
	}
	try("Layout.Places", &layout, map[string]any{"pieces": &pieces}, func() error { _, err := layout.Places(pieces); return err })
	try("Layout.Wind", &layout, map[string]any{"winding": &winding}, func() error { _, err := layout.Wind(winding); return err })
	some := places[:2]
	try("Order.Stations", &order, map[string]any{"places": &some}, func() error { _, err := order.Stations(some); return err })
	if count < 25 {
		t.Errorf("only %d fields refused", count)
	}
}

// free are fields that take every value of their type.
var free = map[string]bool{
	"/mirror": true,
	// Where a piece goes is the same whatever the tree is made of.
	"/tree/kind": true, "/tree/public": true,
	// A Taper says nothing where the base was measured.
	"/tree/taper": true,
	// Of places only the height is looked at.
	"/places/0/item": true, "/places/0/azimuth": true, "/places/0/depth": true, "/places/0/left": true, "/places/0/at/x": true, "/places/0/at/y": true, "/places/0/at/z": true,
	"/places/1/item": true, "/places/1/azimuth": true, "/places/1/depth": true, "/places/1/left": true, "/places/1/at/x": true, "/places/1/at/y": true, "/places/1/at/z": true,
}

func mustRefuse(t *testing.T, fn, at string, v reflect.Value, args map[string]any, receiver any, call func() error) int {
	t.Helper()
	if free[at] {
		return 0
	}
	was := reflect.ValueOf(v.Interface())
	defer v.Set(was)
	switch {
	case v.CanInt():
		v.SetInt(-1)
		if v.Type() == reflect.TypeFor[placement.Angle]() {
			v.SetInt(math.MinInt32)
		}
	case v.CanUint():
		v.SetUint(255)
	case v.Type() == reflect.TypeFor[shopping.Item]():
		v.FieldByName("Size").SetInt(-1)
	default:
		t.Fatalf("%s: a %v is not looked at", at, v.Type())
	}
	err := call()
	var e *units.Error
	if !errors.As(err, &e) || e.Field != at || e.Func != fn || !errors.Is(err, units.ErrRange) {
		t.Errorf("%s: %s put to %v: %v", fn, at, v, err)
		return 0
	}
	v.Set(was)
	root := receiver
	path := e.Field
	if arg, rest, _ := strings.Cut(path[1:], "/"); args[arg] != nil {
		root, path = args[arg], "/"+rest
	}
	if !resolves(t, root, path) {
		t.Errorf("%s: nothing at %s of %T", fn, path, root)
	}
	return 1
}

// walk calls f with each field that has no fields of its own in JSON, and its pointer.
func walk(v reflect.Value, at string, f func(string, reflect.Value)) {
	switch {
	case v.Type() == reflect.TypeFor[shopping.Item]():
		f(at, v)
	case v.Type() == reflect.TypeFor[shopping.Quantity]():
		f(at, v.FieldByName("Pieces"))
		f(at, v.FieldByName("Length"))
	case v.Kind() == reflect.Slice:
		for i := range v.Len() {
			walk(v.Index(i), at+"/"+strconv.Itoa(i), f)
		}
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
			walk(v.Field(i), at+"/"+name, f)
		}
	default:
		f(at, v)
	}
}

// resolves reports whether a pointer, RFC 6901, finds something in the JSON of v.
func resolves(t *testing.T, v any, pointer string) bool {
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

// A name that is none of its kind is ErrName, wherever it is.
func TestNames(t *testing.T) {
	for at, layout := range map[string]placement.Layout{
		"/tree/taper":    {Tree: sizing.Tree{Height: 9 * units.Foot, Taper: 99}},
		"/pieces/0/item": {Tree: sizing.Tree{Height: 9 * units.Foot}},
	} {
		_, err := layout.Places([]shopping.Lot{{Item: shopping.Item{Kind: 99}, Quantity: shopping.Quantity{Pieces: 1}}})
		var e *units.Error
		if !errors.As(err, &e) || !errors.Is(err, units.ErrName) || e.Field != at {
			t.Errorf("%s: %v", at, err)
		}
	}
}
