package mantel_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// parsed returns the item of a text.
func parsed(text string) shopping.Item {
	item, err := shopping.ParseItem(text)
	if err != nil {
		panic(err)
	}
	return item
}

// texts returns the texts of the items of lots, and of how many pieces they are.
func texts(lots []shopping.Lot) (items, amounts []string) {
	for _, l := range lots {
		items, amounts = append(items, l.Item.String()), append(amounts, strconv.Itoa(l.Quantity.Pieces))
	}
	return items, amounts
}

func itemsOf(needs []shopping.Need) (items []string) {
	for _, n := range needs {
		items = append(items, n.Item.String())
	}
	return items
}

func TestSteps(t *testing.T) {
	all := []string{"base garland", "8 picks, mantel", "7 ornaments, mantel", "1 ribbon, mantel", "3 bells", "16 wire ties", "2 hooks"}
	// Each step by a word of what it does and what it uses.
	type step struct{ word, items, pieces string }
	for _, test := range []struct {
		reason string
		look   mantel.Look
		right  units.Length // what falls there; 1 ft falls at the left
		items  []string
		want   []step
	}{
		{"everything", mantel.AsymmetricalLeft, 0, all, []step{
			{"fluff", "base garland", "0"},
			{"one for each pick", "picks, mantel", "8"},
			{"light end; each pick lies over", "picks, mantel; wire ties", "8; 8"},
			{"gaps", "ornaments, mantel; wire ties", "7; 7"},
			{"hooks", "hooks", "2"},
			{"from the light end on, and let the rest fall at the left.", "base garland", "0"},
			{"at the heavy end", "ribbon, mantel; bells; wire ties", "1; 3; 1"},
			{"measure", "", ""},
		}},
		{"no ribbon, bells or hooks", mantel.Traditional, ft, []string{"base garland", "8 picks, mantel", "7 ornaments, mantel", "10 wire ties"}, []step{
			{"fluff", "base garland", "0"},
			{"one for each pick", "picks, mantel", "8"},
			{"outwards, left and right in turn", "picks, mantel; wire ties", "8; 8"},
			{"gaps", "ornaments, mantel; wire ties", "7; 2"},
			{"both ends fall alike", "base garland", "0"},
			{"measure", "", ""},
		}},
		{"bells alone, and something that is not for a mantel", mantel.Traditional, 2 * ft, []string{"base garland", "3 bells", "100 lights"}, []step{
			{"fluff", "base garland", "0"},
			{"from the middle outwards, and let more fall at the right than at the left.", "base garland", "0"},
			{"over the middle of the shelf", "bells", "3"},
			{"measure", "", ""},
		}},
		{"garland and stockings of two kinds of mantel", mantel.Traditional, 6 * in, []string{"base garland", "2 hooks", "3 hooks", "3 stockings"}, []step{
			{"fluff", "base garland", "0"},
			{"hooks", "hooks", "5"},
			{"and let more fall at the left than at the right.", "base garland", "0"},
			{"stockings", "stockings", "3"},
			{"measure", "", ""},
		}},
		{"ties alone are for nothing", mantel.Traditional, 0, []string{"4 wire ties"}, []step{{"measure", "", ""}}},
		{"nothing", mantel.Traditional, 0, nil, []step{{"measure", "", ""}}},
	} {
		var needs []shopping.Need
		for _, item := range test.items {
			number, name, _ := strings.Cut(item, " ")
			n, err := strconv.Atoi(number)
			if err != nil {
				name = item
			}
			needs = append(needs, shopping.Need{Item: parsed(name), Quantity: shopping.Quantity{Pieces: n}})
		}
		got, err := mantel.Steps(mantel.Hanging{Look: test.look, Left: ft, Right: test.right}, needs)
		if err != nil || len(got) != len(test.want) {
			t.Errorf("%s: %v, %v", test.reason, got, err)
			continue
		}
		for i, want := range test.want {
			items, pieces := texts(got[i].Uses)
			if !strings.Contains(got[i].Do, want.word) || strings.Join(items, "; ") != want.items || strings.Join(pieces, "; ") != want.pieces {
				t.Errorf("%s: step %d is %v, want %v", test.reason, i+1, got[i], want)
			}
		}
	}
	for text, h := range map[string]mantel.Hanging{
		"the middle outwards.": {}, "let the rest fall at the right.": {Right: ft}, "let the rest fall at the left.": {Left: ft},
		"the light end on.": {Look: mantel.AsymmetricalRight},
	} {
		steps, err := mantel.Steps(h, []shopping.Need{{Item: parsed("base garland")}})
		if err != nil || !strings.HasSuffix(steps[1].Do, text) {
			t.Errorf("%v: %v, %v", h, steps, err)
		}
	}
	for text, fall := range map[string]units.Length{"as a bow": 0, "let it fall": 2 * ft} {
		steps, err := mantel.Steps(mantel.Hanging{Look: mantel.AsymmetricalLeft, Fall: fall}, []shopping.Need{{Item: parsed("ribbon, mantel"), Quantity: shopping.Quantity{Pieces: 1}}})
		if err != nil || !strings.Contains(steps[0].Do, text) {
			t.Errorf("falling %v: %v, %v, want %s", fall, steps, err, text)
		}
	}
	got, err := mantel.Steps(mantel.Hanging{Look: 3}, nil)
	checkError(t, "look", err, &units.Error{Func: "mantel.Steps", Field: "/hanging/look", Want: wantLook, Err: units.ErrName})
	if got != nil {
		t.Errorf("%v with an error", got)
	}
}

// Every item of the needs is in some step, and every item of a step is in the needs.
func TestStepsUseTheNeeds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		look := looks().Draw(t, "look")
		m := mantel.Mantel{Length: lengths(ft, 50*ft).Draw(t, "length")}
		perGap, bells := rapid.IntRange(0, 2).Draw(t, "per gap"), rapid.IntRange(0, 2).Draw(t, "bells")
		ribbon, spacing := lengths(0, 2).Draw(t, "ribbon"), rapid.SampledFrom([]int{0, 3, 8}).Draw(t, "spacing")
		r := custom(func(l *mantel.LookRules) {
			l.OrnamentsPerGap, l.Bells, l.Ribbon = perGap, bells, ribbon*ft
			l.PickSpacing = in * units.Length(spacing)
		})
		needs, err := r.Needs(m, mantel.Hanging{Look: look}, units.InFeetInches)
		if err != nil {
			t.Fatal(err)
		}
		hung, err := loads(m, mantel.Hanging{Left: ft}, oz, mantel.Hook{Rating: lb})
		if err != nil {
			t.Fatal(err)
		}
		needs = append(needs, hung.Needs...)
		steps, err := mantel.Steps(mantel.Hanging{Look: look}, needs)
		if err != nil {
			t.Fatal(err)
		}
		var used []string
		ties := 0
		for _, s := range steps {
			items, _ := texts(s.Uses)
			used = append(used, items...)
			for _, l := range s.Uses {
				if l.Item.Kind == shopping.Tie {
					ties += l.Quantity.Pieces
				}
			}
		}
		items := itemsOf(needs)
		for _, n := range needs {
			if n.Item.Kind == shopping.Tie && n.Quantity.Pieces != ties {
				t.Fatalf("the steps use %d ties of %d", ties, n.Quantity.Pieces)
			}
		}
		for _, item := range items {
			if !slices.Contains(used, item) {
				t.Fatalf("no step uses the %s", item)
			}
		}
		for _, item := range used {
			if !slices.Contains(items, item) {
				t.Fatalf("a step takes %s, which is not among %q", item, items)
			}
		}
		// What the spots place is what the needs count.
		spots, err := r.Spots(m, look)
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range needs {
			if slices.Contains([]string{"base garland", "wire ties", "hooks"}, n.Item.String()) {
				continue
			}
			if along, _ := alongs(spots, n.Item.String()); len(along) != n.Quantity.Pieces {
				t.Fatalf("%d spots for %v", len(along), n)
			}
		}
	})
}
