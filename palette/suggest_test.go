package palette

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// Suggestions against the rule as the doc has it, worked out the slow way.
func TestSuggest(t *testing.T) {
	fir := swatches("fir")[0]
	shelf := swatches("navy", "plum:shiny", "royalblue", "crimson", "white", "#0b3d0b", "silver:metal")
	for _, test := range []struct {
		rules   Rules
		palette string
		on      Swatch
		shelf   []Swatch
	}{
		{CommonPractice(), "crimson", Swatch{}, nil},
		{CommonPractice(), "crimson,gold:metal", Swatch{}, shelf},
		{CommonPractice(), "crimson,gold:metal", fir, shelf},
		{CommonPractice(), "ivory,crimson,gold:metal", fir, nil},
		{CommonPractice(), "silver:metal,white", Swatch{}, shelf},
		{Rules{6, 10, 10}, "red,lime,blue,white,black", fir, shelf},
		{Rules{4, 2, 10}, "red", Swatch{}, shelf},
		{Rules{4, 30, 10}, "red", fir, shelf},
	} {
		p, err := (Rules{6, 2, 10}).ParsePalette(test.palette)
		if err != nil {
			t.Fatal(err)
		}
		got, err := test.rules.Suggest(p, test.on, test.shelf)
		if err != nil {
			t.Fatal(err)
		}
		var want []Suggestion
		for _, group := range append([]struct {
			why   string
			list  []Swatch
			limit int
		}{{"on the shelf", test.shelf, 1000}}, namedGroups()...) {
			want = append(want, slowGroup(test.rules, p, test.on, want, group.why, group.list, group.limit)...)
		}
		if !cmp.Equal(got, want) {
			t.Errorf("%s on %q:\n got %v\nwant %v", test.palette, test.on.Name, got, want)
		}
		for _, s := range got {
			if _, err := test.rules.Palette(append(p, s.Swatch)...); err != nil {
				t.Errorf("%s: %v", test.palette, err)
			}
		}
	}
}

func namedGroups() (list []struct {
	why   string
	list  []Swatch
	limit int
},
) {
	for _, g := range groups {
		list = append(list, struct {
			why   string
			list  []Swatch
			limit int
		}{g.why, swatches(g.swatches...), 3})
	}
	return list
}

// slowGroup takes the clearest of what is left of a group, one at a time.
func slowGroup(r Rules, p Palette, on Swatch, before []Suggestion, why string, list []Swatch, limit int) (got []Suggestion) {
	against := slices.Clone(p)
	if on.Name != "" {
		against = append(against, on)
	}
	left := slices.Clone(list)
	for len(got) < limit {
		best, least, at := Suggestion{}, -1.0, -1
		for i, s := range left {
			ok := !slices.ContainsFunc(p, func(t Swatch) bool { return strings.EqualFold(s.Name, t.Name) })
			this, near := Suggestion{Swatch: s, Why: why}, math.Inf(1)
			for _, t := range against {
				ok = ok && r.apart(s.Color.Difference(t.Color))
				d := map[View]float64{}
				for v := Daylight; v < views; v++ {
					d[v] = labDifference(v.lab(t.Color), v.lab(s.Color))
				}
				if n := slices.Min(slices.Collect(maps.Values(d))); n < near {
					near, this.Nearest = n, Pair{A: t, B: s, Difference: d}
				}
			}
			for _, t := range slices.Concat(before, got) {
				ok = ok && r.apart(s.Color.Difference(t.Swatch.Color))
			}
			if ok && near > least {
				best, least, at = this, near, i
			}
		}
		if at < 0 {
			return got
		}
		got = append(got, best)
		left = slices.Delete(left, at, at+1)
	}
	return got
}

func TestSuggestRefuses(t *testing.T) {
	r := CommonPractice()
	for _, test := range []struct {
		r    Rules
		p    Palette
		want string
	}{
		{r, Palette{}, `palette "": out of range: want 1 to 4 swatches, not 0`},
		{r, mustPalette(t, "red,lime,blue,white"), `palette "red,lime,blue,white": out of range: want under 4 swatches, to have room for one more`},
		{Rules{4, -2, 0}, mustPalette(t, "red"), `/apart "-2": out of range: want 0 to 100`},
	} {
		got, err := test.r.Suggest(test.p, Swatch{}, nil)
		checkError(t, err, units.ErrRange, "palette.Rules.Suggest: "+test.want)
		if got != nil {
			t.Errorf("%v beside an error", got)
		}
	}
	_, err := r.Suggest(mustPalette(t, "red"), Swatch{}, make([]Swatch, 1001))
	checkError(t, err, units.ErrRange, `palette.Rules.Suggest: shelf "1001": out of range: want at most 1000 colors`)
	if got, err := (Rules{4, 100, 0}).Suggest(mustPalette(t, "red"), Swatch{}, swatches("lime")); err != nil || len(got) != 0 {
		t.Errorf("nothing is 100 from red: %v, %v", got, err)
	}
	// Of two colors that are as near, the one first in the palette is named.
	alike := Palette{{Name: "a", Color: Color{255}}, {Name: "b", Color: Color{255}}}
	if got, err := r.Suggest(alike, Swatch{}, swatches("navy")); err != nil || got[0].Nearest.A != alike[0] {
		t.Errorf("two of one color: %v, %v", got, err)
	}
	many := make([]Swatch, 1000)
	for i := range many {
		many[i] = Swatch{"same", Color{0, 0, 128}, 0}
	}
	if got, err := r.Suggest(mustPalette(t, "red"), Swatch{}, many); err != nil || got[0].Why != "on the shelf" || got[1].Why == "on the shelf" {
		t.Errorf("a thousand of one color: %v, %v", got, err)
	}
}

func TestSuggestionString(t *testing.T) {
	d := differences{60, 70, 27.39, 80, 90, 70, 60, 50}
	navy := Swatch{Name: "navy", Color: Color{0, 0, 128}}
	s := Suggestion{Swatch: navy, Why: "on the shelf", Nearest: Pair{A: Swatch{Name: "forest"}, B: navy, Difference: d.byView()}}
	if got, want := s.String(), "navy #000080, on the shelf; at least 27.3 from every color in every view (least for deutan viewers by daylight, from forest)"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := (Suggestion{}).String(); got != "no suggestion" {
		t.Errorf("%q", got)
	}
}

// The background changes nothing between the swatches, but that a mend must not spoil it,
// and is never mended.
func TestReadBackground(t *testing.T) {
	r := CommonPractice()
	rapid.Check(t, func(t *rapid.T) {
		p := palettes(r).Draw(t, "p")
		on := Swatch{Name: "wall", Color: colors().Draw(t, "on")}
		bare, err := r.Read(p, Swatch{})
		if err != nil || len(bare.Pairs) != len(p)*(len(p)-1)/2 {
			t.Fatal(bare, err)
		}
		got, err := r.Read(p, on)
		if err != nil || len(got.Pairs) != len(bare.Pairs)+len(p) {
			t.Fatal(got, err)
		}
		for i, pair := range got.Pairs[:len(bare.Pairs)] {
			if !maps.Equal(pair.Difference, bare.Pairs[i].Difference) {
				t.Fatalf("%v, without the background %v", pair, bare.Pairs[i])
			}
			if m := pair.Mend; m != (Swatch{}) {
				keeps(t, r, got, m)
			}
		}
		for i, pair := range got.Pairs[len(bare.Pairs):] {
			if pair.A != p[i] || pair.B != on {
				t.Fatalf("%d is %v and %v", i, pair.A, pair.B)
			}
			for v := Daylight; v < views; v++ {
				d := labDifference(v.lab(pair.A.Color), v.lab(on.Color))
				if pair.Difference[v] != d {
					t.Fatalf("%v on %v in %v: %v, want %v", pair.A, on, v, pair.Difference[v], d)
				}
			}
			if m := pair.Mend; m != (Swatch{}) {
				if m.Name != pair.A.Name {
					t.Fatalf("%v on %v: mends %v", pair.A, on, m)
				}
				keeps(t, r, got, m)
			}
		}
		for v := Daylight; v < views; v++ {
			want := true
			for _, pair := range got.Pairs {
				want = want && r.apart(pair.Difference[v])
			}
			if holds, err := got.Holds(v); err != nil || holds != want {
				t.Fatalf("holds in %v: %v, %v, want %v", v, holds, err, want)
			}
		}
	})
}

// keeps checks that a palette with the mend in it loses nothing that held, the background included.
func keeps(t *rapid.T, r Rules, before Reading, m Swatch) {
	t.Helper()
	list := before.Palette
	for i := range list {
		if list[i].Name == m.Name {
			list[i] = m
		}
	}
	on := before.Pairs[len(before.Pairs)-1].B
	seen := append(list, on)
	old := append(slices.Clone(before.Palette), on)
	for i := range seen {
		for j := range i {
			for v := Daylight; v < views; v++ {
				was := r.apart(labDifference(v.lab(old[i].Color), v.lab(old[j].Color)))
				if is := r.apart(labDifference(v.lab(seen[i].Color), v.lab(seen[j].Color))); was && !is {
					t.Fatalf("%v: with %v, %s and %s are no longer two in %v", before.Palette, m, seen[i], seen[j], v)
				}
			}
		}
	}
}

// The figures of the trap: on fir green crimson is one color to a protan viewer. And of the pairs of
// CSS colors that hold in the five views of old, those that fall under 10 to a
// dichromat by warm light, as counted by an independent program.
func TestWarmDichromats(t *testing.T) {
	fir := see(mustColor("fir"))
	crimson := see(mustColor("crimson"))
	if d := crimson.differences(&fir); d[Protan] >= 10 || d[Daylight] < 50 {
		t.Errorf("crimson on fir: %v", d)
	}
	seagreen := see(mustColor("seagreen"))
	if d := crimson.differences(&seagreen); cut(d[WarmDeutan], 1) != "9.3" {
		t.Errorf("crimson and seagreen: %v", d)
	}
	hold, fall := 0, 0
	var sights []sight
	for _, css := range cssColors {
		if css.color.Name() == css.name {
			sights = append(sights, see(css.color))
		}
	}
	for i := range sights {
		for j := range i {
			d := sights[i].differences(&sights[j])
			if min(d[Daylight], d[WarmLight], d[Protan], d[Deutan], d[Tritan]) >= 10 {
				hold++
				if min(d[WarmProtan], d[WarmDeutan], d[WarmTritan]) < 10 {
					fall++
				}
			}
		}
	}
	if hold != 7947 || fall != 201 {
		t.Errorf("%d pairs hold and %d fall, want 7947 and 201", hold, fall)
	}
}
