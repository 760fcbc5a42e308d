package sizing

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"
	"unicode"

	"github.com/google/go-cmp/cmp"
)

// Everything that an app might store or send goes through JSON under names in
// lower camel case, and comes back the same.
func TestJSON(t *testing.T) {
	tree := Tree{Height: 9 * ft, Taper: Slim, BareTip: 10 * in, Exposure: InCorner, Kind: PreLit, Public: true}
	comparison, err := CommonPractice().Compare(CommonLook(), tree)
	if err != nil {
		t.Fatal(err)
	}
	room := Room{Ceiling: 14 * ft, Clearance: 2 * ft, Topper: 10 * in, Stand: 6 * in}
	fit, _ := room.Fit(tree)
	ladder, _ := room.Ladder(tree)
	for _, v := range []any{
		comparison, room, fit, ladder,
		Drape{Span: 10 * in, Sag: 2 * in},
		counts{Min: 7, Max: 11},
		lengthRange{Min: in, Max: ft},
	} {
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
	for i := range typ.NumField() {
		f := typ.Field(i)
		first, rest := unicode.ToLower(rune(f.Name[0])), f.Name[1:]
		if got, _, _ := strings.Cut(f.Tag.Get("json"), ","); got != string(first)+rest {
			t.Errorf("%v.%s is %q in JSON", typ, f.Name, got)
		}
		if f.Type.Kind() == reflect.Struct && strings.HasPrefix(f.Type.PkgPath(), "example.com/") {
			namesAre(t, f.Type)
		}
	}
}
