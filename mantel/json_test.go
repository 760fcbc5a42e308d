package mantel_test

import (
	"encoding"
	"encoding/json"
	"reflect"
	"strings"
	"testing"
	"unicode"

	"example.com/fircone/mantel"
	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
)

// Everything that an app might store or send goes through JSON under names in
// lower camel case, and comes back the same.
func TestJSON(t *testing.T) {
	h, err := tearoom.FindDrops(9*ft, mantel.Hanging{
		Look: mantel.AsymmetricalRight, Swags: 3, Sag: 6 * in, Right: 3 * in, Fall: 20 * in, Thickness: 8 * in,
	})
	if err != nil {
		t.Fatal(err)
	}
	hook := mantel.Hook{Rating: 5 * units.Pound, Factor: 6}
	run, err := tearoom.Hang(h)
	if err != nil {
		t.Fatal(err)
	}
	loads, err := run.Loads(8*units.Ounce, hook, units.InFeetInches)
	if err != nil {
		t.Fatal(err)
	}
	clearances, err := tearoom.Clearances(h, units.InFeetInches)
	if err != nil || len(clearances.Violations) == 0 {
		t.Fatal(clearances, err)
	}
	rules := mantel.CommonPractice()
	spots, err := rules.Spots(tearoom, mantel.AsymmetricalRight)
	if err != nil {
		t.Fatal(err)
	}
	needs, err := rules.Needs(tearoom, mantel.Hanging{Look: mantel.AsymmetricalLeft}, units.InFeetInches)
	if err != nil {
		t.Fatal(err)
	}
	steps, err := mantel.Steps(mantel.Hanging{Look: mantel.AsymmetricalLeft}, needs)
	if err != nil {
		t.Fatal(err)
	}
	stockings := mantel.Stockings{Count: 3, Spacing: 9 * in, Length: 18 * in, Thickness: 8 * in, Weight: units.Pound}
	for _, v := range []any{tearoom, h, hook, loads, clearances, rules, spots[len(spots)-1], steps[0], run, stockings} {
		text, err := json.Marshal(v)
		back := reflect.New(reflect.TypeOf(v))
		if err != nil || json.Unmarshal(text, back.Interface()) != nil || !cmp.Equal(v, back.Elem().Interface()) {
			t.Errorf("%T: %s, %v, comes back as %+v", v, text, err, back.Elem())
		}
		namesAre(t, reflect.TypeOf(v))
	}
}

// namesAre checks that a field's name in JSON is its name in Go but for the first letter.
func namesAre(t *testing.T, typ reflect.Type) {
	t.Helper()
	for typ.Kind() == reflect.Slice {
		typ = typ.Elem()
	}
	if typ.Kind() != reflect.Struct || typ.PkgPath() != reflect.TypeFor[mantel.Run]().PkgPath() || typ.Implements(reflect.TypeFor[encoding.TextMarshaler]()) {
		return
	}
	for i := range typ.NumField() {
		f := typ.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if want := string(unicode.ToLower(rune(f.Name[0]))) + f.Name[1:]; name != want {
			t.Errorf("%v.%s is %q in JSON", typ, f.Name, name)
		}
		namesAre(t, f.Type)
	}
}
