package shopping_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

var quantities = []struct {
	text   string
	want   shopping.Quantity
	json   string
	reason string
}{
	{"0", shopping.Quantity{}, "0", "nothing"},
	{"27", shopping.Quantity{Pieces: 27}, "27", "pieces"},
	{"999999999", shopping.Quantity{Pieces: 999_999_999}, "999999999", "nine digits"},
	{"81 ft", ofLength(0, 81*units.Foot), `"81 ft"`, "a running length"},
	{"4 of 4 ft 6 in", ofLength(4, 54*units.Inch), `"4 of 4 ft 6 in"`, "whole pieces"},
	{"1 of 1 nm", ofLength(1, 1), `"1 of 1 nm"`, "the shortest"},
}

func TestQuantityText(t *testing.T) {
	for _, tt := range quantities {
		got, err := shopping.ParseQuantity(tt.text)
		if err != nil || got != tt.want {
			t.Errorf("%s: got %v, %v", tt.reason, got, err)
		}
		if again, err := shopping.ParseQuantity(tt.want.String()); err != nil || again != tt.want {
			t.Errorf("%s: %v read back as %v, %v", tt.reason, tt.want, again, err)
		}
		data, err := json.Marshal(tt.want)
		if err != nil {
			t.Error(err)
		}
		var back shopping.Quantity
		if err := json.Unmarshal(data, &back); err != nil || back != tt.want {
			t.Errorf("%s: %s read back as %v, %v", tt.reason, data, back, err)
		}
		back = shopping.Quantity{}
		if err := json.Unmarshal([]byte(tt.json), &back); err != nil || back != tt.want {
			t.Errorf("%s: %s read as %v, %v", tt.reason, tt.json, back, err)
		}
	}
	// Other forms of the same.
	for text, want := range map[string]shopping.Quantity{
		`"27"`:              {Pieces: 27},
		`"007"`:             {Pieces: 7},
		`"4 of 54 in"`:      ofLength(4, 54*units.Inch),
		`"7\u00bd ft"`:      ofLength(0, 90*units.Inch),
		`"2 of 1\u00bd yd"`: ofLength(2, 54*units.Inch),
	} {
		var got shopping.Quantity
		if err := json.Unmarshal([]byte(text), &got); err != nil || got != want {
			t.Errorf("%s: got %v, %v", text, got, err)
		}
	}
	q := ofLength(1, 2)
	if err := json.Unmarshal([]byte("null"), &q); err != nil || q != ofLength(1, 2) {
		t.Errorf("null: got %v, %v", q, err)
	}
}

func TestBadQuantityText(t *testing.T) {
	const forms = `a number of pieces, a length, or both as in "4 of 54 in"`
	long := strings.Repeat("7", 81)
	for text, want := range map[string]*units.Error{
		"":                 {Want: forms},
		" ":                {Want: forms},
		"-3":               {Want: forms},
		"+3":               {Want: forms},
		"1234567890":       {Want: forms},
		"3.5":              {Want: forms},
		"four":             {Want: forms},
		"4 of":             {Want: forms},
		"4 of ":            {Want: forms},
		" of 54 in":        {Want: forms},
		"4 of 54":          {Want: forms},
		"0 of 54 in":       {Want: forms},
		"4 of 0 in":        {Want: forms},
		"-4 of 54 in":      {Want: forms},
		"4 of 54 in of 54": {Want: forms},
		long[:80]:          {Want: forms},
		long:               {Value: long[:80] + "...", Want: "at most 80 bytes"},
	} {
		if want.Value == "" {
			want.Value = text
		}
		want.Func, want.Field = "shopping.ParseQuantity", "text"
		_, err := shopping.ParseQuantity(text)
		checkError(t, text, err, units.ErrSyntax, want)
		q := ofLength(1, 2)
		data, _ := json.Marshal(text)
		checkError(t, text, q.UnmarshalJSON(data), units.ErrSyntax, want)
		if q != ofLength(1, 2) {
			t.Errorf("%q: changed to %v", text, q)
		}
	}
	for _, text := range []string{"-1", "1.5", "1e3", "true", "{}", "[1]", "1234567890"} {
		var q shopping.Quantity
		checkError(t, text, json.Unmarshal([]byte(text), &q), units.ErrSyntax, &units.Error{
			Func: "shopping.Quantity.UnmarshalJSON", Field: "quantity", Value: text, Want: "a whole number of at most 9 digits, or a text",
		})
	}
	var q shopping.Quantity
	if err := q.UnmarshalJSON([]byte(`"\x"`)); err == nil {
		t.Error("a bad escape is read")
	}
}

// Every quantity that is not negative reads back as itself.
func TestQuantityRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := shopping.Quantity{
			Pieces: rapid.IntRange(0, 999_999_999).Draw(t, "pieces"),
			Length: units.Length(rapid.Int64Min(0).Draw(t, "length")),
		}
		if got, err := shopping.ParseQuantity(q.String()); err != nil || got != q {
			t.Fatalf("%v: got %v, %v", q, got, err)
		}
		data, err := json.Marshal(q)
		if err != nil {
			t.Fatal(err)
		}
		var back shopping.Quantity
		if err := json.Unmarshal(data, &back); err != nil || back != q {
			t.Fatalf("%s: got %v, %v", data, back, err)
		}
	})
}

// What is read, writes and reads back as itself; and JSON reads the same.
func FuzzParseQuantity(f *testing.F) {
	for _, tt := range quantities {
		f.Add(tt.text)
	}
	f.Add("2 of 1½ yd")
	f.Add("-7 ft")
	f.Add("4 of ")
	f.Fuzz(func(t *testing.T, text string) {
		q, err := shopping.ParseQuantity(text)
		if err != nil {
			if q != (shopping.Quantity{}) {
				t.Fatalf("%v with %v", q, err)
			}
			return
		}
		if again, err := shopping.ParseQuantity(q.String()); err != nil || again != q {
			t.Fatalf("%q: %v read back as %v, %v", text, q, again, err)
		}
		data, err := json.Marshal(text)
		var got shopping.Quantity
		if err != nil || json.Unmarshal(data, &got) != nil || got != q {
			t.Fatalf("%s: got %v, want %v", data, got, q)
		}
	})
}
