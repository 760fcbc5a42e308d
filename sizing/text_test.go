package sizing

import (
	"database/sql"
	"database/sql/driver"
	"encoding"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// Every name of every enumeration reads back, in upper case too; another is refused
// and leaves the value as it was; and a value that has no name prints as its number
// and is not written.
func TestNames(t *testing.T) {
	for _, row := range []struct {
		names []string
		fresh func(i int) encoding.TextUnmarshaler
		value func(v encoding.TextUnmarshaler) int
		text  func(i int) ([]byte, error)
		print func(i int) string
		kind  string
	}{
		{
			taperNames[:], func(i int) encoding.TextUnmarshaler { v := Taper(i); return &v }, func(v encoding.TextUnmarshaler) int { return int(*v.(*Taper)) },
			func(i int) ([]byte, error) { return Taper(i).MarshalText() }, func(i int) string { return Taper(i).String() }, "Taper",
		},
		{
			exposureNames[:], func(i int) encoding.TextUnmarshaler { v := Exposure(i); return &v }, func(v encoding.TextUnmarshaler) int { return int(*v.(*Exposure)) },
			func(i int) ([]byte, error) { return Exposure(i).MarshalText() }, func(i int) string { return Exposure(i).String() }, "Exposure",
		},
		{
			kindNames[:], func(i int) encoding.TextUnmarshaler { v := TreeKind(i); return &v }, func(v encoding.TextUnmarshaler) int { return int(*v.(*TreeKind)) },
			func(i int) ([]byte, error) { return TreeKind(i).MarshalText() }, func(i int) string { return TreeKind(i).String() }, "TreeKind",
		},
	} {
		for i, name := range row.names {
			for _, text := range []string{name, strings.ToUpper(name), " " + name + " "} {
				v := row.fresh(0)
				if err := v.UnmarshalText([]byte(text)); err != nil || row.value(v) != i {
					t.Errorf("%s %q: %d, %v", row.kind, text, row.value(v), err)
				}
			}
			if text, err := row.text(i); err != nil || string(text) != name || row.print(i) != name {
				t.Errorf("%s %d: %s, %v, %s", row.kind, i, text, err, row.print(i))
			}
		}
		for _, text := range []string{"", "x", row.names[0] + "s", strings.Repeat("x", 65)} {
			v := row.fresh(1)
			if err := v.UnmarshalText([]byte(text)); !errors.Is(err, units.ErrName) || row.value(v) != 1 {
				t.Errorf("%s %q: %d, %v", row.kind, text, row.value(v), err)
			}
		}
		none := len(row.names)
		if text, err := row.text(none); err == nil || text != nil || row.print(none) != fmt.Sprintf("%s(%d)", row.kind, none) {
			t.Errorf("%s of nothing: %s, %v, %s", row.kind, text, err, row.print(none))
		}
	}
}

// Arcs read and print in thousandths of a Degree, in every spelling.
func TestArcs(t *testing.T) {
	for text, want := range map[string]Exposure{
		"1 degree": 1000, "200 degrees": 200_000, "200 deg": 200_000, "200°": 200_000, "202.5 DEGREES": 202_500, "37.125degrees": 37_125, "360 degrees": 360_000,
	} {
		e, err := exposureOf(text)
		back, err2 := exposureOf(e.String())
		if e != want || err != nil || back != e || err2 != nil {
			t.Errorf("%q: %v, %v; back %v, %v", text, e, err, back, err2)
		}
	}
	for text, want := range map[string]error{
		"0.999 degrees": units.ErrRange, "360.001 degrees": units.ErrRange, "99999999999999999999 degrees": units.ErrRange,
		"200": units.ErrName, "20.1234 degrees": units.ErrName, ". degrees": units.ErrName, "1. degrees": units.ErrName, "2x degrees": units.ErrName, "-5 degrees": units.ErrName,
	} {
		if e, err := exposureOf(text); e != 0 || !errors.Is(err, want) {
			t.Errorf("%q: %v, %v; want %v", text, e, err, want)
		}
	}
	if _, err := Exposure(7).Degrees(); !errors.Is(err, units.ErrRange) {
		t.Errorf("no exposure: %v", err)
	}
}

// Lengths in every style: measured to the nearest, left down, over and to buy up.
func TestStyles(t *testing.T) {
	const l = 90*in + in/3 // 7.5278 ft, 2.50926 yd, 229.45 cm
	for _, row := range []struct {
		style                    units.Style
		tape, left, over, enough string
	}{
		{units.InFeetInches, "7 ft 6 3/8 in", "7 ft 6 1/4 in", "7 ft 6 1/2 in", "8 ft"},
		{units.InFeet, "7.53 ft", "7.52 ft", "7.53 ft", "8 ft"},
		{units.InInches, "90 3/8 in", "90 1/4 in", "90 1/2 in", "8 ft"},
		{units.InYards, "2.51 yd", "2.5 yd", "2.51 yd", "2.6 yd"},
		{units.InMetric, "2.29 m", "2.29 m", "2.295 m", "2.3 m"},
	} {
		if got := tape(l, row.style); got != row.tape {
			t.Errorf("%v: measured %s, want %s", row.style, got, row.tape)
		}
		if got := left(l, row.style); got != row.left {
			t.Errorf("%v: left %s, want %s", row.style, got, row.left)
		}
		if got := over(l, row.style); got != row.over {
			t.Errorf("%v: over %s, want %s", row.style, got, row.over)
		}
		if got := enough(l, row.style); got != row.enough {
			t.Errorf("%v: to buy %s, want %s", row.style, got, row.enough)
		}
	}
	if got := apart(70*units.Centimeter-1, units.InMetric); got != "70 cm" {
		t.Errorf("wide wraps are %s apart", got)
	}
}

// What a program made up by itself is refused by name or told as it is.
func TestMadeUpComparisons(t *testing.T) {
	c, err := CommonPractice().Compare(CommonLook(), Tree{Height: 1*ft + 3*in})
	if err != nil {
		t.Fatal(err)
	}
	c.ByShape = false
	needs, err := c.Needs(units.InFeetInches)
	if want := "1 type, 1 for each whole foot of 1 ft 3 in; 1 of each, and 1 to 3 will do"; err != nil || needs[0].Basis != want {
		t.Errorf("%v, %v; want %s", needs, err, want)
	}
	c.ByShape = true
	needs, err = c.Needs(units.InFeetInches)
	if want := "4.1 % of 1.7 sq ft covered, by sizes of 3/4 in"; err != nil || needs[0].Basis != want {
		t.Errorf("%v, %v; want %s", needs, err, want)
	}
	c.Look = Look{}
	needs, err = c.Needs(units.InFeetInches)
	if want := "no to the square foot over 1.7 sq ft"; err != nil || needs[1].Basis != want {
		t.Errorf("%v, %v; want %s", needs, err, want)
	}
	c.Tree.Height = 0
	if needs, err = c.Needs(units.InFeetInches); err != nil || !strings.Contains(needs[0].Basis, "sizes of ") {
		t.Errorf("%v, %v", needs, err)
	}
	c.ByShape = false
	_, err = c.Needs(units.InFeetInches)
	refused(t, err, units.ErrRange, "Comparison.Needs", "/tree/height")
	_, err = Rules{TypesPerFoot: -1}.Compare(CommonLook(), Tree{Height: 9 * ft})
	refused(t, err, units.ErrRange, "Rules.Compare", "/typesPerFoot")
	_, err = Tree{Height: 9 * ft}.SpiralLength(minSpacing - 1)
	refused(t, err, units.ErrRange, "Tree.SpiralLength", "spacing")
	if m, err := (Rules{}).Mix(Tree{Height: 48 * ft, Public: true}, 1); err != nil || m[0].Item.Size != 6*in {
		t.Errorf("%v, %v", m, err)
	}
	if a, err := ruled(Rules{}, Tree{Height: 9 * ft, Kind: numKinds}); a != (shopping.ByKind[shopping.Quantity]{}) || !errors.Is(err, units.ErrName) {
		t.Errorf("%v, %v", a, err)
	}
}

// By rule where all that is known is a height in the chart; a width, a taper, a place or a bare
// part is enough for the shape.
func TestByShape(t *testing.T) {
	for _, row := range []struct {
		reason string
		t      Tree
		want   bool
	}{
		{"only a height", Tree{Height: 9 * ft}, false},
		{"the lowest of the chart", Tree{Height: 4 * ft}, false},
		{"the highest of the chart", Tree{Height: 15 * ft}, false},
		{"under the chart", Tree{Height: 4*ft - 1}, true},
		{"over the chart", Tree{Height: 15*ft + 1}, true},
		{"what it is made of and who uses the room do not count", Tree{Height: 9 * ft, Kind: PreLit, Public: true}, false},
		{"a width", Tree{Height: 9 * ft, Base: 5 * ft}, true},
		{"a taper", Tree{Height: 9 * ft, Taper: Slim}, true},
		{"a place", Tree{Height: 9 * ft, Exposure: AgainstWall}, true},
		{"a bare tip", Tree{Height: 9 * ft, BareTip: 9 * in}, true},
		{"a bare base", Tree{Height: 9 * ft, BareBase: 9 * in}, true},
		{"a handle", Tree{Height: 9 * ft, Handle: 9 * in}, true},
	} {
		if c, err := CommonPractice().Compare(CommonLook(), row.t); c.ByShape != row.want || err != nil {
			t.Errorf("%s: %v, %v; want %v", row.reason, c.ByShape, err, row.want)
		}
	}
}

// A database column holds the text, as a string or as bytes.
func TestColumns(t *testing.T) {
	const arc = 202*Degree + Degree/2
	for _, row := range []struct {
		v    driver.Valuer
		into sql.Scanner
		text string
	}{
		{Slim, new(Taper), "slim"},
		{PreLit, new(TreeKind), "pre-lit"},
		{arc, new(Exposure), "202.5 degrees"},
		{InCorner, new(Exposure), "corner"},
	} {
		text, err := row.v.Value()
		if text != row.text || err != nil {
			t.Errorf("%v: %v, %v", row.v, text, err)
		}
		for _, src := range []any{row.text, []byte(row.text)} {
			if err := row.into.Scan(src); err != nil || reflect.ValueOf(row.into).Elem().Interface() != row.v {
				t.Errorf("%v: %v, %v", src, row.into, err)
			}
		}
		for _, src := range []any{nil, int64(1), 1.5} {
			err := row.into.Scan(src)
			if !errors.Is(err, units.ErrSyntax) || !strings.Contains(err.Error(), ".Scan: src") || reflect.ValueOf(row.into).Elem().Interface() != row.v {
				t.Errorf("%v: %v, %v", src, row.into, err)
			}
		}
	}
	for _, none := range []driver.Valuer{Taper(9), TreeKind(9), Exposure(9)} {
		if text, err := none.Value(); text != nil || err == nil {
			t.Errorf("%v: %v, %v", none, text, err)
		}
	}
}

// What is shorter than a foot or a yard is in inches.
func TestShortStyles(t *testing.T) {
	for style, want := range map[units.Style]string{units.InFeet: "4 1/4 in", units.InYards: "4 1/4 in", units.InInches: "4 1/4 in", units.InFeetInches: "4 1/4 in"} {
		if got := left(4*in+in/3, style); got != want {
			t.Errorf("%v: %s, want %s", style, got, want)
		}
	}
}
