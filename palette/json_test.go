package palette

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"
	"unicode"
)

// Everything that an app might store or send goes through JSON under names in
// lower camel case, and comes back the same.
func TestJSON(t *testing.T) {
	rules := CommonPractice()
	p, err := rules.ParsePalette("crimson,forestgreen,gold:metal")
	if err != nil {
		t.Fatal(err)
	}
	reading, err := rules.Read(p, swatches("fir")[0])
	if err != nil || reading.Pairs[0].Mend == (Swatch{}) {
		t.Fatal(reading, err)
	}
	box := []Piece{{Name: "glass balls", Color: mustColor("#c8102e"), Finish: Shiny, Count: 24}, {Color: mustColor("teal")}}
	sorting, err := rules.Sort(p, box)
	if err != nil {
		t.Fatal(err)
	}
	suggestions, err := rules.Suggest(p, Swatch{}, swatches("navy"))
	if err != nil {
		t.Fatal(err)
	}
	sharing, err := p.Share(7, 49, 50, 30, 20)
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range []any{rules, reading, box, sorting, suggestions, sharing} {
		text, err := json.Marshal(v)
		back := reflect.New(reflect.TypeOf(v))
		if err != nil || json.Unmarshal(text, back.Interface()) != nil || !reflect.DeepEqual(v, back.Elem().Interface()) {
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
	if typ.Kind() != reflect.Struct || typ == reflect.TypeFor[Color]() || typ == reflect.TypeFor[Palette]() {
		return // a text
	}
	for i := range typ.NumField() {
		f := typ.Field(i)
		if got, want := strings.Split(f.Tag.Get("json"), ",")[0], string(unicode.ToLower(rune(f.Name[0])))+f.Name[1:]; got != want {
			t.Errorf("%v.%s is %q in JSON", typ, f.Name, got)
		}
		namesAre(t, f.Type)
	}
}
