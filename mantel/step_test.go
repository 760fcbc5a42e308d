package mantel_test

import (
	"slices"
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

// texts returns the texts of items.
func texts(items []shopping.Item) (list []string) {
	for _, item := range items {
		list = append(list, item.String())
	}
	return list
}

func itemsOf(needs []shopping.Need) (items []string) {
	for _, n := range needs {
		items = append(items, n.Item.String())
	}
	return items
}

func TestSteps(t *testing.T) {
	all := []string{"base garland", "picks, mantel", "ornaments, mantel", "ribbon, mantel", "bells", "wire ties", "hooks"}
	// Each step by a word of what it does and what it takes.
	type step struct{ word, items string }
	for _, test := range []struct {
		reason string
		look   mantel.Look
		items  []string
		want   []step
	}{
		{"everything", mantel.AsymmetricalLeft, all, []step{
			{"fluff", "base garland"},
			{"one for each pick", "picks, mantel"},
			{"light end; each pick lies over", "picks, mantel; wire ties"},
			{"gaps", "ornaments, mantel; wire ties"},
			{"hooks", "hooks"},
			{"from the light end on", "base garland"},
			{"at the heavy end", "ribbon, mantel; bells; wire ties"},
			{"measure", ""},
		}},
		{"no ribbon, bells or hooks", mantel.Traditional, []string{"base garland", "picks, mantel", "ornaments, mantel", "wire ties"}, []step{
			{"fluff", "base garland"},
			{"one for each pick", "picks, mantel"},
			{"outwards, left and right in turn", "picks, mantel; wire ties"},
			{"gaps", "ornaments, mantel; wire ties"},
			{"both ends fall alike", "base garland"},
			{"measure", ""},
		}},
		{"bells alone, and something that is not for a mantel", mantel.Traditional, []string{"base garland", "bells", "lights"}, []step{
			{"fluff", "base garland"},
			{"from the middle outwards", "base garland"},
			{"over the middle of the shelf", "bells"},
			{"measure", ""},
		}},
		{"ties alone are for nothing", mantel.Traditional, []string{"wire ties"}, []step{{"measure", ""}}},
		{"nothing", mantel.Traditional, nil, []step{{"measure", ""}}},
	} {
		var needs []shopping.Need
		for _, item := range test.items {
			needs = append(needs, shopping.Need{Item: parsed(item)})
		}
		got, err := mantel.Steps(test.look, needs)
		if err != nil || len(got) != len(test.want) {
			t.Errorf("%s: %v, %v", test.reason, got, err)
			continue
		}
		for i, want := range test.want {
			if !strings.Contains(got[i].Do, want.word) || strings.Join(texts(got[i].Items), "; ") != want.items {
				t.Errorf("%s: step %d is %v, want %v", test.reason, i+1, got[i], want)
			}
		}
	}
	got, err := mantel.Steps(3, nil)
	checkError(t, "look", err, &units.Error{Func: "mantel.Steps", Field: "look", Want: wantLook, Err: units.ErrName})
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
		steps, err := mantel.Steps(look, needs)
		if err != nil {
			t.Fatal(err)
		}
		var used []string
		for _, s := range steps {
			used = append(used, texts(s.Items)...)
		}
		items := itemsOf(needs)
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
