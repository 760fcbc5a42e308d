package shopping_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// all are all kinds, which end where String has no name.
func all() []shopping.Kind {
	var kinds []shopping.Kind
	for k := shopping.Kind(1); !strings.HasPrefix(k.String(), "Kind("); k++ {
		kinds = append(kinds, k)
	}
	return kinds
}

// Each kind has a name of its own that reads back, in upper case too, as a kind and
// as an item of nothing but the kind; and one piece of what is counted has its own name.
func TestKinds(t *testing.T) {
	kinds := all()
	if len(kinds) < 12 {
		t.Fatalf("%d kinds", len(kinds))
	}
	for _, k := range kinds {
		for _, text := range []string{k.String(), strings.ToUpper(k.String()), " " + k.String() + " "} {
			var got shopping.Kind
			if err := got.UnmarshalText([]byte(text)); err != nil || got != k {
				t.Errorf("%q: got %v, %v", text, got, err)
			}
			if got, err := shopping.ParseItem(text); err != nil || got != (shopping.Item{Kind: k}) {
				t.Errorf("%q: got item %v, %v", text, got, err)
			}
		}
		one, several := k.Count(1), k.Count(2)
		if several != "2 "+k.String() || (one == "1 "+k.String()) != k.Running() {
			t.Errorf("%v: %s, %s", k, one, several)
		}
	}
	for _, k := range []shopping.Kind{0, kinds[len(kinds)-1] + 1, 255} {
		if _, err := k.MarshalText(); !errors.Is(err, units.ErrName) || k.Running() || k.Count(1) != "1 "+k.String() {
			t.Errorf("%v: %v", k, err)
		}
	}
}

func TestBadKind(t *testing.T) {
	for text, meant := range map[string]string{
		"": "", "ornament": "ornaments", "Kind(1)": "", "base  garland": "base garland", "garlands": "garland", strings.Repeat("x", 65): "",
	} {
		if meant != "" {
			meant = "; did you mean " + meant + "?"
		}
		k := shopping.Bell
		err := k.UnmarshalText([]byte(text))
		checkError(t, text, err, units.ErrName, &units.Error{Func: "shopping.Kind.UnmarshalText", Field: "kind", Value: text, Want: kindNames + meant})
		if k != shopping.Bell {
			t.Errorf("%q: %v, changed to %v", text, err, k)
		}
	}
}

// A table reads back as it was, whatever is in it.
func TestByKindJSON(t *testing.T) {
	kinds := all()
	rapid.Check(t, func(t *rapid.T) {
		var table shopping.ByKind[units.Length]
		for _, k := range kinds {
			if rapid.Bool().Draw(t, "used") {
				table[k] = units.Length(rapid.Int64Range(-9, 9).Draw(t, "inches")) * units.Inch
			}
		}
		data, err := json.Marshal(table)
		if err != nil {
			t.Fatal(err)
		}
		back := shopping.ByKind[units.Length]{shopping.Hook: units.Foot} // what was there goes
		if err := json.Unmarshal(data, &back); err != nil || back != table {
			t.Fatalf("%s: got %v, %v", data, back, err)
		}
	})
	table := shopping.ByKind[int]{shopping.Pick: 7}
	for text, sentinel := range map[string]error{`{"garlands":1}`: units.ErrName, `{"picks":"x"}`: nil, `[1]`: nil} {
		err := json.Unmarshal([]byte(text), &table)
		if err == nil || sentinel != nil && !errors.Is(err, sentinel) || table != (shopping.ByKind[int]{shopping.Pick: 7}) {
			t.Errorf("%s: %v, %v", text, err, table)
		}
	}
	if _, err := json.Marshal(shopping.ByKind[shopping.Kind]{shopping.Pick: 200}); err == nil {
		t.Error("a value that does not marshal is written")
	}
}

// Whatever its kind, a value is named, those that are zero are not, and a table without
// values says so.
func TestByKindString(t *testing.T) {
	if got := (shopping.ByKind[int]{}).String(); got != "nothing" {
		t.Errorf("an empty table reads %q", got)
	}
	var table shopping.ByKind[int]
	want := make([]string, 0, len(table))
	for i, k := range all() {
		var one shopping.ByKind[int]
		one[k] = -7
		if got, alone := one.String(), k.String()+" -7"; got != alone {
			t.Errorf("%v: got %q, want %q", k, got, alone)
		}
		table[k] = i + 1
		want = append(want, fmt.Sprintf("%v %d", k, i+1))
	}
	if got := table.String(); got != strings.Join(want, ", ") {
		t.Errorf("got %q, want %q", got, strings.Join(want, ", "))
	}
}

// What is read is written as one of the names, which reads as the same kind.
func FuzzKind(f *testing.F) {
	for _, k := range all() {
		f.Add(k.String())
	}
	f.Add("WIRE TIES ")
	f.Add("ornament")
	f.Fuzz(func(t *testing.T, text string) {
		var k shopping.Kind
		err := k.UnmarshalText([]byte(text))
		if err != nil {
			if k != 0 || !errors.Is(err, units.ErrName) {
				t.Fatalf("%v with %v", k, err)
			}
			return
		}
		if !strings.EqualFold(strings.TrimSpace(text), k.String()) {
			t.Fatalf("%q read as %v", text, k)
		}
		var again shopping.Kind
		if err := again.UnmarshalText([]byte(k.String())); err != nil || again != k {
			t.Fatalf("%v read back as %v, %v", k, again, err)
		}
	})
}
