package shopping_test

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

var items = []struct {
	text   string // as String writes it
	other  string // another form of the same
	want   shopping.Item
	reason string
}{
	{"picks", "PICKS,", shopping.Item{Kind: shopping.Pick}, "a kind alone"},
	{"crimson ornaments", "crimson  ORNAMENTS , ", shopping.Item{Kind: shopping.Ornament, Color: "crimson"}, "a color"},
	{"crimson ornaments, star, 3 in", "crimson ornaments,star,3\"", shopping.Item{Kind: shopping.Ornament, Type: "star", Color: "crimson", Size: 3 * units.Inch}, "all four"},
	{"picks, mantel", " picks , mantel ", shopping.Item{Kind: shopping.Pick, Type: "mantel"}, "a type"},
	{"ornaments, 5 1/2 in", "ornaments, 5.5 in", shopping.Item{Kind: shopping.Ornament, Size: 11 * units.Inch / 2}, "a size that is no type"},
	{"base garland", "Base Garland", shopping.Item{Kind: shopping.BaseGarland}, "the longer of two names"},
	{"dark green base garland, fir", "dark green base garland ,fir", shopping.Item{Kind: shopping.BaseGarland, Type: "fir", Color: "dark green"}, "a color of two words"},
	{"base ornaments", "base ornaments", shopping.Item{Kind: shopping.Ornament, Color: "base"}, "a color that is part of the name of another kind"},
	{"ornaments ornaments", "Ornaments ornaments", shopping.Item{Kind: shopping.Ornament, Color: "ornaments"}, "a color that is named as a kind"},
	{"ornaments, 100 ft", "ornaments, 1200 in", shopping.Item{Kind: shopping.Ornament, Size: 100 * units.Foot}, "the largest"},
}

func TestItemText(t *testing.T) {
	for _, tt := range items {
		if got := tt.want.String(); got != tt.text {
			t.Errorf("%s: got %q, want %q", tt.reason, got, tt.text)
		}
		for _, text := range []string{tt.text, tt.other} {
			got, err := shopping.ParseItem(text)
			if got.Color == "Ornaments" {
				got.Color = "ornaments" // colors keep their case
			}
			if err != nil || got != tt.want {
				t.Errorf("%s: %q: got %#v, %v", tt.reason, text, got, err)
			}
		}
		data, err := json.Marshal(tt.want)
		var back shopping.Item
		if err != nil || json.Unmarshal(data, &back) != nil || back != tt.want {
			t.Errorf("%s: %s, %v: got %v", tt.reason, data, err, back)
		}
	}
}

func TestBadItemText(t *testing.T) {
	const word = "at most 64 bytes of text in one line, without commas and without spaces at its ends"
	long := strings.Repeat("x", 201)
	for _, tt := range []struct {
		text   string
		err    error
		value  string
		want   string
		reason string
	}{
		{"", units.ErrName, "", kindNames, "nothing"},
		{"crimson", units.ErrName, "crimson", kindNames, "a color alone"},
		{"crimsonpicks", units.ErrName, "crimsonpicks", kindNames, "no space before the kind"},
		{"1 pick", units.ErrName, "1 pick", kindNames + "; did you mean picks?", "one of them"},
		{"red base garlnd, 3 in", units.ErrName, "red base garlnd, 3 in", kindNames + "; did you mean base garland?", "a letter is missing"},
		{"picks crimson", units.ErrName, "picks crimson", kindNames, "the color behind"},
		{"picks, a, b", units.ErrSyntax, "a, b", word, "two types"},
		{"picks, 3 in, star", units.ErrSyntax, "3 in, star", word, "the size before the type"},
		{"picks, 3 in, 4 in", units.ErrSyntax, "3 in", "a word, which a length is not", "two sizes"},
		{"picks, -3 in", units.ErrSyntax, "-3 in", "0 ft to 100 ft", "a size below 0"},
		{"picks, 101 ft", units.ErrSyntax, "101 ft", "0 ft to 100 ft", "a size over the bound"},
		{"picks, a\nb", units.ErrSyntax, "a\nb", word, "two lines"},
		{"\xff picks", units.ErrSyntax, "\xff", word, "not text"},
		{strings.Repeat("x", 65) + " picks", units.ErrSyntax, strings.Repeat("x", 65), word, "a long color"},
		{long, units.ErrSyntax, long[:80] + "...", "at most 200 bytes", "a long text"},
	} {
		_, err := shopping.ParseItem(tt.text)
		checkError(t, tt.reason, err, tt.err, &units.Error{Func: "shopping.ParseItem", Field: "text", Value: tt.value, Want: tt.want})
		i := shopping.Item{Kind: shopping.Bell}
		if err := i.UnmarshalText([]byte(tt.text)); !errors.Is(err, tt.err) || i != (shopping.Item{Kind: shopping.Bell}) {
			t.Errorf("%s: %v, changed to %v", tt.reason, err, i)
		}
	}
}

// An item that would not read back as itself is not written, and not used.
func TestBadItem(t *testing.T) {
	for _, tt := range []struct {
		item   shopping.Item
		err    error
		value  string
		want   string
		reason string
	}{
		{shopping.Item{}, units.ErrName, "Kind(0)", kindNames, "no kind"},
		{shopping.Item{Kind: shopping.Garland, Color: "red base"}, units.ErrSyntax, "red base", "a color that is a color that does not read as base garland", "reads as another kind"},
		{shopping.Item{Kind: shopping.Pick, Type: "3 in"}, units.ErrSyntax, "3 in", "a type that is a word, which a length is not", "a type that reads as a size"},
		{shopping.Item{Kind: shopping.Pick, Type: " star"}, units.ErrSyntax, " star", "a type that is at most 64 bytes of text in one line, without commas and without spaces at its ends", "a space"},
		{shopping.Item{Kind: shopping.Pick, Color: "red, or so"}, units.ErrSyntax, "red, or so", "a color that is at most 64 bytes of text in one line, without commas and without spaces at its ends", "a comma"},
		{shopping.Item{Kind: shopping.Pick, Size: -1}, units.ErrRange, "-0.000001 mm", "a size that is 0 ft to 100 ft", "below 0"},
		{shopping.Item{Kind: shopping.Pick, Size: 100*units.Foot + 1}, units.ErrRange, (100*units.Foot + 1).String(), "a size that is 0 ft to 100 ft", "over the bound"},
	} {
		want := &units.Error{Func: "shopping.Item.MarshalText", Field: "item", Value: tt.value, Want: tt.want}
		_, err := tt.item.MarshalText()
		checkError(t, tt.reason, err, tt.err, want)
		need := shopping.Need{Item: tt.item, Quantity: shopping.Quantity{Pieces: 1}}
		_, err = shopping.Shop{}.List([]shopping.Need{need})
		want = &units.Error{Func: "shopping.Shop.List", Field: "/needs/0/item", Value: tt.value, Want: tt.want}
		checkError(t, tt.reason, err, tt.err, want)
		joins := map[shopping.Item]shopping.Join{tt.item: {}}
		if _, err := (shopping.Shop{Joins: joins}).List(nil); !errors.Is(err, tt.err) {
			t.Errorf("%s: joins: %v", tt.reason, err)
		}
	}
}

// Every item that is written reads back as itself.
func TestItemRoundTrip(t *testing.T) {
	kinds := all()
	word := rapid.OneOf(
		rapid.SampledFrom([]string{"", "star", "crimson", "base", "red base", "wire", "ornaments", "3", "3 in", "ice blue"}),
		rapid.StringN(0, 12, 64),
	)
	rapid.Check(t, func(t *rapid.T) {
		i := shopping.Item{
			Kind:  rapid.SampledFrom(kinds).Draw(t, "kind"),
			Type:  word.Draw(t, "type"),
			Color: word.Draw(t, "color"),
			Size:  units.Length(rapid.Int64Range(0, int64(100*units.Foot)).Draw(t, "size")),
		}
		text, err := i.MarshalText()
		if err != nil {
			return
		}
		if got, err := shopping.ParseItem(string(text)); err != nil || got != i {
			t.Fatalf("%#v: %q read back as %#v, %v", i, text, got, err)
		}
	})
}

// What is read, writes and reads back as itself.
func FuzzParseItem(f *testing.F) {
	for _, tt := range items {
		f.Add(tt.text)
		f.Add(tt.other)
	}
	f.Add("picks, 3 in, 4 in")
	f.Add("red base garland")
	f.Fuzz(func(t *testing.T, text string) {
		i, err := shopping.ParseItem(text)
		if err != nil {
			if i != (shopping.Item{}) || !errors.Is(err, units.ErrName) && !errors.Is(err, units.ErrSyntax) {
				t.Fatalf("%v with %v", i, err)
			}
			return
		}
		back, err := i.MarshalText()
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		if again, err := shopping.ParseItem(string(back)); err != nil || again != i {
			t.Fatalf("%q: %#v written as %q, read back as %#v, %v", text, i, back, again, err)
		}
	})
}
