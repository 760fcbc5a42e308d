package strictjson

import (
	"bytes"
	"encoding/json"
	"errors"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/palette"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

type inner struct {
	Deep []int `json:"deep"`
}

type sample struct {
	inner
	Name   string                         `json:"name"`
	Flag   bool                           `json:"flag"`
	Count  int                            `json:"count"`
	Share  float64                        `json:"share"`
	Length units.Length                   `json:"length"`
	Mass   units.Mass                     `json:"mass"`
	Power  units.Power                    `json:"power"`
	Price  decimal.Decimal                `json:"price"`
	Much   shopping.Quantity              `json:"much"`
	Shelf  shopping.Shelf                 `json:"shelf"`
	Kinds  shopping.ByKind[int]           `json:"kinds"`
	Joins  map[shopping.Item]units.Length `json:"joins"`
	In     inner                          `json:"in"`
	Colors palette.Palette                `json:"colors"`
	Item   shopping.Item                  `json:"item"`
	Hidden int                            `json:"-"`
	Plain  int
}

// faults returns what is wrong with a text, as "pointer value: want".
func faults(text string, v any) []string {
	err := Unmarshal("test.F", []byte(text), v)
	if err == nil {
		return nil
	}
	var list []string
	for _, e := range err.(interface{ Unwrap() []error }).Unwrap() {
		var f *units.Error
		if !errors.As(e, &f) || f.Func != "test.F" || f.Want == "" || f.Err == nil {
			return []string{"no proper fault: " + e.Error()}
		}
		list = append(list, f.Field+" "+f.Value+": "+f.Want)
	}
	return list
}

// What is given is set, and what is not stays.
func TestUnmarshal(t *testing.T) {
	v := sample{Count: 5, Name: "old"}
	v.Kinds[shopping.Pick], v.Kinds[shopping.Light] = 3, 100
	v.Joins = map[shopping.Item]units.Length{{Kind: shopping.Ribbon}: units.Inch, {Kind: shopping.Garland}: units.Inch}
	before := v.Joins
	got := faults(`{"deep":[1,2],"name":"new","flag":true,"share":0.5,"length":"7 ft","mass":"6 oz","power":"5 W","price":9.5,"much":"4 of 54 in","shelf":null,`+
		`"kinds":{"picks":4},"joins":{"garland":"2 in"},"in":{"deep":[]}}`, &v)
	if got != nil {
		t.Fatal(got)
	}
	want := sample{
		inner: inner{[]int{1, 2}}, Name: "new", Flag: true, Count: 5, Share: 0.5, Length: 7 * units.Foot, Mass: 6 * units.Ounce, Power: 5 * units.Watt,
		Price: decimal.RequireFromString("9.5"), Much: shopping.Quantity{Pieces: 4, Length: 54 * units.Inch},
		Joins: map[shopping.Item]units.Length{{Kind: shopping.Garland}: 2 * units.Inch, {Kind: shopping.Ribbon}: units.Inch}, In: inner{[]int{}},
	}
	want.Kinds[shopping.Pick], want.Kinds[shopping.Light] = 4, 100
	if diff := cmp.Diff(want, v, cmp.AllowUnexported(sample{}, inner{})); diff != "" {
		t.Error(diff)
	}
	if before[shopping.Item{Kind: shopping.Garland}] != units.Inch {
		t.Error("the table of somebody else was changed")
	}
	if f, ok := Field(reflect.ValueOf(v), "deep"); !ok || f.Len() != 2 {
		t.Error("the field of an embedded struct is not found")
	}
}

func TestFaults(t *testing.T) {
	for _, row := range []struct{ reason, text, want string }{
		{"no JSON", `tree`, "data tree: one JSON object: at byte 3"},
		{"nothing", ``, "data : one JSON object: the text ends too soon"},
		{"half of a list", `{"in":[`, `ends too soon`},
		{"half of an object", `{"in":{"deep"`, `ends too soon`},
		{"half of a name", `{"in`, `ends too soon`},
		{"half of a pair", `{"in":`, `ends too soon`},
		{"half of a list of lists", `{"deep":[[`, `ends too soon`},
		{"a name that is none", `{7:1}`, "at byte"},
		{"a list without commas", `{"deep":[1 2]}`, "at byte"},
		{"more than one", `{} {}`, "there is more after its end"},
		{"not UTF-8", "{\"\xff\":1}", "this is not UTF-8"},
		{"too long", `{"name":"` + strings.Repeat("x", MaxBytes) + `"}`, "bytes: at most 4194304 bytes"},
		{"too deep", strings.Repeat(`{"in":`, 20), "more than 16 levels deep"},
		{"a list too long", `{"deep":[` + strings.Repeat("0,", MaxList) + `0]}`, `more than 5000 values in "/deep"`},
		{"too many names", `{` + strings.Repeat(`"a":1,`, 1) + many(MaxList) + `}`, `more than 5000 names in ""`},
		{"a list", `[]`, " a list: an object"},
		{"a name twice", `{"count":1,"count":2}`, "/count 2: each name once in an object"},
		{"an unknown name", `{"a/b~c":"x"}`, "/a~1b~0c x: one of deep, name, flag"},
		{"upper case", `{"Name":"x"}`, "/Name x: one of name (did you mean that?), deep, flag"},
		{"a letter left out", `{"nme":"x"}`, "/nme x: one of name (did you mean that?), deep, flag"},
		{"the first of the names", `{"dep":"x"}`, "/dep x: one of deep (did you mean that?), name, flag"},
		{"two letters changed places", `{"falg":true}`, "/falg true: one of flag (did you mean that?), deep, name"},
		{"a name like none", `{"opening":"x"}`, "/opening x: one of deep, name, flag"},
		{"a long name", `{"namenamenamenamenamenamenamenamename":"x"}`, "/namenamenamenamenamenamenamenamename x: one of deep, name, flag"},
		{"a field without a name", `{"Plain":1}`, "/Plain 1: one of"},
		{"no text", `{"name":7}`, "/name 7: a text"},
		{"no list", `{"deep":{}}`, "/deep an object: a list"},
		{"no object", `{"in":[]}`, "/in a list: an object"},
		{"neither true nor false", `{"flag":"true"}`, "/flag true: true or false"},
		{"no whole number", `{"count":1.5}`, "/count 1.5: a whole number"},
		{"too large", `{"count":9223372036854775808}`, "/count 9223372036854775808: a whole number"},
		{"no number", `{"share":"x"}`, "/share x: a number"},
		{"an absurd number", `{"share":1e999}`, "/share 1e999: a number"},
		{"a bare number", `{"length":7}`, `/length 7: a text, such as "7 ft 6 in"`},
		{"no unit", `{"length":"7"}`, "/length 7: a number and a unit, such as 7 ft 6 in"},
		{"a mass", `{"mass":7}`, `such as "6 oz"`},
		{"a power", `{"power":true}`, `/power true: a text, such as "4.8 W"`},
		{"a price", `{"price":"x"}`, "/price x: a number, such as 4.75"},
		{"a price of null", `{"price":null}`, "/price null: a number or a text, such as 4.75"},
		{"a price with an absurd exponent", `{"price":1e9999999999}`, "/price 1e9999999999: a number"},
		{"a quantity", `{"much":[]}`, `/much a list: a number or a text, such as 12 or "9 ft"`},
		{"colors in a list", `{"colors":["crimson"]}`, `/colors a list: a text, such as "crimson,gold:metal"`},
		{"an item in a list", `{"item":["picks"]}`, `/item a list: a text`},
		{"a shelf", `{"shelf":"x"}`, "/shelf x: "},
		{"an unknown kind", `{"kinds":{"pciks":1}}`, "/kinds/pciks pciks: ornaments, garland"},
		{"a kind twice", `{"kinds":{"picks":1,"Picks":2}}`, "/kinds/Picks Picks: each kind once"},
		{"kinds that are no object", `{"kinds":[]}`, "/kinds a list: an object"},
		{"a kind that is no number", `{"kinds":{"picks":"x"}}`, "/kinds/picks x: a whole number"},
		{"a key twice", `{"joins":{"garland":"2 in","Garland":"3 in"}}`, "/joins/Garland Garland: each key once"},
		{"no key", `{"joins":{"x":"2 in"}}`, "/joins/x x: "},
		{"a map that is no object", `{"joins":7}`, "/joins 7: an object"},
		{"a long value", `{"count":"x` + strings.Repeat("ä", 200) + `"}`, "x" + strings.Repeat("ä", 59) + "…: a whole number"},
		{"120 bytes", `{"count":"` + strings.Repeat("x", 120) + `"}`, "/count " + strings.Repeat("x", 120) + ": a whole number"},
		{"long, and no UTF-8 at all", strings.Repeat("\xb1", 121), "data …: "},
	} {
		got := faults(row.text, new(sample))
		if len(got) != 1 || !strings.Contains(got[0], row.want) {
			t.Errorf("%s: %.200q, want %q", row.reason, got, row.want)
		}
	}
	if got := faults(`{"count":"x","flag":1,"in":{"deep":[1,"y",2,"z"]},"z":0}`, new(sample)); len(got) != 5 {
		t.Errorf("all at once: %q", got)
	}
	if got := faults(`{"deep":[`+strings.Repeat(`"x",`, 200)+`"x"]}`, new(sample)); len(got) != MaxFaults {
		t.Errorf("%d faults are told, want %d", len(got), MaxFaults)
	}
}

// What is at a limit is read, and what is one over it is not.
func TestAtTheLimits(t *testing.T) {
	if got := faults("{}"+strings.Repeat(" ", MaxBytes-2), new(sample)); got != nil {
		t.Errorf("the longest text: %q", got)
	}
	if got := faults("{}"+strings.Repeat(" ", MaxBytes-1), new(sample)); len(got) != 1 || !strings.HasSuffix(got[0], "at most 4194304 bytes") {
		t.Errorf("a byte more: %q", got)
	}
	for _, row := range []struct{ reason, open, end string }{
		{"objects", `{"a":`, "}"},
		{"lists", "[", "]"},
	} {
		levels := func(n int) string { return strings.Repeat(row.open, n) + "0" + strings.Repeat(row.end, n) }
		deep := func(n int) bool {
			got := faults(levels(n), new(sample))
			return len(got) == 1 && strings.Contains(got[0], "more than 16 levels deep")
		}
		if deep(MaxDepth) || !deep(MaxDepth+1) {
			t.Errorf("%s in each other: %d levels are refused: %t, one more: %t", row.reason, MaxDepth, deep(MaxDepth), deep(MaxDepth+1))
		}
	}
}

// A name of up to 32 bytes is compared with those there are; the first of two that are as like is meant, and
// of 8 letters up to 3 may be wrong.
func TestNearest(t *testing.T) {
	long := strings.Repeat("a", 33)
	for _, row := range []struct {
		name  string
		names []string
		want  string
	}{
		{long[:32], []string{"b", long[:31]}, long[:31]},
		{long, []string{"b", long[:32]}, ""},
		{"cat", []string{"dog", "bat", "hat"}, "bat"},
		{"abcdefgh", []string{"b", "abcdexyz"}, "abcdexyz"},
		{"abcdefgh", []string{"b", "abcdwxyz"}, ""},
	} {
		first, told := strings.CutSuffix(nearest(row.name, row.names)[0], " (did you mean that?)")
		if told != (row.want != "") || told && first != row.want {
			t.Errorf("%s among %q: %q, %t; want %q", row.name, row.names, first, told, row.want)
		}
	}
}

// many returns n members of an object.
func many(n int) string {
	var list []string
	for i := range n {
		list = append(list, `"n`+strconv.Itoa(i)+`":0`)
	}
	return strings.Join(list, ",")
}

// Whatever is read without a fault is what encoding/json reads.
func FuzzUnmarshal(f *testing.F) {
	for _, s := range []string{`{}`, `{"count":1}`, `{"deep":[1,2],"name":"x","much":"4 of 54 in","kinds":{"picks":4},"joins":{"garland":"2 in"}}`, `{"share":1e3,"shelf":null}`, `[`, `{"a":1,"a":2}`} {
		f.Add([]byte(s))
	}
	f.Add(bytes.Repeat([]byte{0xb1}, 121)) // no UTF-8, and longer than an answer carries
	f.Fuzz(func(t *testing.T, data []byte) {
		var v, w sample
		if Unmarshal("test.F", data, &v) != nil {
			return
		}
		if err := json.Unmarshal(data, &w); err != nil {
			t.Fatalf("%q is taken, and encoding/json says %v", data, err)
		}
		if diff := cmp.Diff(w, v, cmp.AllowUnexported(sample{}, inner{})); diff != "" {
			t.Errorf("%q: %s", data, diff)
		}
	})
}
