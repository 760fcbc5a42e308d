package palette

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/units"
)

// An argument is a value that a function takes, by the name that its errors begin with;
// the receiver of a method has none.
type argument struct {
	name  string
	value any
}

// Every field of Rules and of the struct arguments, put out of its range, is refused
// with the JSON Pointer of just that field. RFC 6901: each token is the name of a
// member or the index of an element.
func TestErrorFields(t *testing.T) {
	four := mustPalette(t, "crimson,darkgreen,gold:metal,ivory")
	r := CommonPractice()
	with := func(change func(*Rules)) Rules { r := r; change(&r); return r }
	box := func(p Piece) []Piece { return []Piece{{Count: 1}, {Count: 2}, p} }
	two := swatches("crimson", "navy")
	pair := func(s Swatch) []Swatch { return []Swatch{two[0], s} }
	tested := map[string]bool{}
	check := func(want string, wrapped, err error, a argument) {
		t.Helper()
		var e *units.Error
		if !errors.As(err, &e) || e.Field != want || !errors.Is(err, wrapped) {
			t.Errorf("%v, want %v at %s", err, wrapped, want)
			return
		}
		rest := strings.TrimPrefix(want, "/"+a.name)
		if a.name == "" {
			rest = want
		}
		typ, ok := resolve(a.value, rest)
		if !ok {
			t.Errorf("%s is not in the JSON of %T", want, a.value)
		}
		tested[typ] = true
	}
	for _, v := range []int{0, 7, -1} {
		bad := with(func(r *Rules) { r.Limit = v })
		_, err := bad.Palette(two...)
		check("/limit", units.ErrRange, err, argument{value: bad})
		_, err = bad.Sort(four, nil)
		check("/limit", units.ErrRange, err, argument{value: bad})
	}
	for _, v := range []float64{-1, 100.5, math.NaN(), math.Inf(1)} {
		shown := r // JSON has no NaN; the field is the same
		_, err := with(func(r *Rules) { r.Apart = v }).Read(four, Swatch{})
		check("/apart", units.ErrRange, err, argument{value: shown})
		_, err = with(func(r *Rules) { r.Fit = v }).Sort(four, nil)
		check("/fit", units.ErrRange, err, argument{value: shown})
	}
	for _, test := range []struct {
		want string
		err  error
		bad  Swatch
	}{
		{"/swatches/1/name", units.ErrSyntax, Swatch{"a,b", Color{}, Matte}},
		{"/swatches/1/name", units.ErrDuplicate, Swatch{"CRIMSON", Color{}, Matte}},
		{"/swatches/1/color", units.ErrFit, Swatch{"red", two[0].Color, Matte}},
		{"/swatches/1/finish", units.ErrName, Swatch{"red", Color{}, 77}},
	} {
		_, err := r.Palette(pair(test.bad)...)
		check(test.want, test.err, err, argument{"swatches", pair(Swatch{"red", Color{}, Matte})})
	}
	for _, v := range []int{-1, 1_000_001} {
		_, err := r.Sort(four, box(Piece{Count: v}))
		check("/box/2/count", units.ErrRange, err, argument{"box", box(Piece{Count: v})})
		_, err = r.Best(box(Piece{Count: v}))
		check("/box/2/count", units.ErrRange, err, argument{"box", box(Piece{Count: v})})
		shares := []int{1, 1, v, 1}
		_, err = four.Share(0, 9, shares...)
		check("/shares/2", units.ErrRange, err, argument{"shares", shares})
	}
	odd := Piece{Finish: 77}
	_, err := r.Sort(four, box(odd))
	check("/box/2/finish", units.ErrName, err, argument{"box", box(Piece{Finish: Matte})})
	for want, bad := range map[string]Swatch{"name": {"", Color{1, 2, 3}, Matte}, "finish": {"red", Color{}, 77}} {
		why := map[string]error{"name": units.ErrSyntax, "finish": units.ErrName}[want]
		_, err = r.Read(four, bad)
		check("/on/"+want, why, err, argument{"on", two[0].with(Matte)})
		three := mustPalette(t, "crimson")
		_, err = r.Suggest(three, bad, nil)
		check("/on/"+want, why, err, argument{"on", two[0].with(Matte)})
		_, err = r.Suggest(three, Swatch{}, []Swatch{two[0], bad})
		check("/shelf/1/"+want, why, err, argument{"shelf", []Swatch{two[0], two[0].with(Matte)}})
	}
	_, err = Apportion(5, []int{1, -1}, 0)
	check("/shares/1", units.ErrRange, err, argument{"shares", []int{1, -1}})

	// No field that has a range was forgotten. Any Color is a color, and a piece's name is only printed.
	free := []string{"Piece.Name", "Piece.Color"}
	for _, v := range []any{Rules{}, Piece{}, Swatch{}} {
		typ := reflect.TypeOf(v)
		for i := range typ.NumField() {
			name := typ.Name() + "." + typ.Field(i).Name
			if !tested[name] && !strings.Contains(strings.Join(free, " "), name) {
				t.Errorf("no error is about %s", name)
			}
		}
	}
}

// with returns s in a finish, so that its JSON has one.
func (s Swatch) with(f Finish) Swatch { s.Finish = f; return s }

// resolve walks the JSON of v by a JSON Pointer, and reports whether it leads somewhere
// and the last field of a struct on the way, as in "Piece.Count".
func resolve(v any, pointer string) (field string, ok bool) {
	text, err := json.Marshal(v)
	var at any
	if err != nil || json.Unmarshal(text, &at) != nil {
		return fmt.Sprint(err), false
	}
	typ := reflect.TypeOf(v)
	for token := range strings.SplitSeq(strings.TrimPrefix(pointer, "/"), "/") {
		switch node := at.(type) {
		case map[string]any:
			if at, ok = node[token]; !ok {
				return field, false
			}
			name := strings.ToUpper(token[:1]) + token[1:]
			f, _ := typ.FieldByName(name)
			field, typ = typ.Name()+"."+name, f.Type
		case []any:
			i, err := strconv.Atoi(token)
			if err != nil || i < 0 || i >= len(node) {
				return field, false
			}
			at, typ = node[i], typ.Elem()
		default:
			return field, token == "" && pointer == ""
		}
	}
	return field, true
}
