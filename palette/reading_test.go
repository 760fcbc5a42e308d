package palette

import (
	"math"
	"strings"
	"testing"

	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestRead(t *testing.T) {
	r := CommonPractice()
	p := mustPalette(t, "crimson,forestgreen,gold:metal,ivory")
	got, err := r.Read(p)
	if err != nil {
		t.Fatal(err)
	}
	s := p.Swatches()
	if got.Palette != p || got.Apart != 10 || len(got.Pairs) != 6 {
		t.Fatalf("%+v", got)
	}
	k := 0
	for i := range s {
		for j := i + 1; j < len(s); j++ {
			pair := got.Pairs[k]
			k++
			if pair.A != s[i] || pair.B != s[j] {
				t.Errorf("pair %d is %s and %s", k, pair.A, pair.B)
			}
			for v := Daylight; v <= Tritan; v++ {
				want := labDifference(v.lab(s[i].Color), v.lab(s[j].Color))
				if err != nil || pair.Difference[v] != want || pair.Holds[v] != (want >= 10) {
					t.Errorf("%s and %s in %v: %v, %v, want %v, %v", pair.A, pair.B, v, pair.Difference[v], pair.Holds[v], want, err)
				}
			}
			if all(pair.Holds) != (pair.Mend == Mend{}) {
				t.Errorf("%s and %s: holds %v, mend %+v", pair.A, pair.B, pair.Holds, pair.Mend)
			}
		}
	}
	// Red and green: one to a deutan viewer and to nobody else.
	if got.Pairs[0].Holds != [...]bool{true, true, true, false, true} {
		t.Errorf("crimson and forestgreen hold in %v", got.Pairs[0].Holds)
	}
	for v, want := range []bool{true, true, true, false, true} {
		if holds, err := got.Holds(View(v)); err != nil || holds != want {
			t.Errorf("holds in %v: %v, %v", View(v), holds, err)
		}
	}
	holds, err := got.Holds(5)
	checkError(t, err, units.ErrName, `palette.Reading.Holds: view "View(5)": unknown name: want daylight, warm light, protan, deutan or tritan`)
	if holds {
		t.Error("holds beside an error")
	}

	none, err := r.Read(Palette{})
	checkError(t, err, units.ErrRange, `palette.Rules.Read: palette "": out of range: want 1 to 4 swatches, not 0`)
	if !cmp.Equal(none, Reading{}, cmp.AllowUnexported(Palette{})) {
		t.Errorf("%+v beside an error", none)
	}
	one, err := r.Read(mustPalette(t, "gold:metal"))
	if err != nil || len(one.Pairs) != 0 || one.String() != "gold:metal: one color, nothing to tell apart\n" {
		t.Errorf("%q, %v", one, err)
	}
	if holds, err := one.Holds(Deutan); err != nil || !holds {
		t.Errorf("one color: %v, %v", holds, err)
	}
}

// The figures that the package doc shows, by another way: published matrices, the
// color library's L*a*b* and the formula as the paper prints it.
func TestReadSlow(t *testing.T) {
	for _, text := range []string{"crimson,darkgreen,gold:metal,ivory", "crimson,forestgreen", "silver:metal,white"} {
		reading, err := CommonPractice().Read(mustPalette(t, text))
		if err != nil {
			t.Fatal(err)
		}
		for _, pair := range reading.Pairs {
			for v, got := range pair.Difference {
				want := slowDifference(slowSight(pair.A.Color, View(v)), slowSight(pair.B.Color, View(v)))
				if math.Abs(got-want) > 0.01 {
					t.Errorf("%s and %s in %v: %v, want %v", pair.A, pair.B, View(v), got, want)
				}
			}
		}
	}
}

// slowMends looks at every tint and shade of both swatches of a pair and returns the
// least change by daylight with which all is well, +Inf if none.
func slowMends(t testing.TB, r Rules, p Palette, a, b int) float64 {
	least := math.Inf(1)
	before, err := r.Read(p)
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range [2]int{a, b} {
		for _, mix := range []func(Color, int) Color{Color.tint, Color.shade} {
			for step := 1; step <= 255; step++ {
				q := p
				q.swatch[k].Color = mix(p.swatch[k].Color, step)
				good := true
				i := 0
				for x := range p.n {
					for y := x + 1; y < p.n; y++ {
						for v := Daylight; v <= Tritan; v++ {
							d := labDifference(v.lab(q.swatch[x].Color), v.lab(q.swatch[y].Color))
							if err != nil {
								t.Fatal(err)
							}
							holds := d >= r.Apart && d > 0
							if !holds && (x == a && y == b || before.Pairs[i].Holds[v]) {
								good = false
							}
							if x == a && y == b && !before.Pairs[i].Holds[v] {
								was := math.Abs(v.lab(p.swatch[a].Color).L - v.lab(p.swatch[b].Color).L)
								l, m := v.lab(q.swatch[a].Color).L, v.lab(q.swatch[b].Color).L
								good = good && byLightness(l, m) >= r.Apart && math.Abs(l-m) > was
							}
						}
						i++
					}
				}
				if good {
					least = min(least, p.swatch[k].Color.Difference(q.swatch[k].Color))
					break
				}
			}
		}
	}
	return least
}

// byLightness is ΔE00 of two greys of these lightnesses.
func byLightness(l, m float64) float64 { return slowDifference(Lab{L: l}, Lab{L: m}) }

// ΔL*/SL by hand, SL = 1 + 0.015·m²/√(20 + m²) with m the mean lightness less 50. That
// it is enough does not say that ΔL* is more: SL is less near 50.
func TestByLightness(t *testing.T) {
	at := func(l float64) *sight {
		return &sight{{l: l}, {l: l}, {l: l}, {l: l}, {l: l}}
	}
	for _, test := range []struct {
		was, sees, other float64
		want             bool
		reason           string
	}{
		{95, 97, 80, true, "17/1.574 = 10.8"},
		{95, 95.2, 80, false, "15.2/1.560 = 9.7"},
		{95, 66, 80, false, "14/1.339 = 10.5, but 14 is less than the 15 of now"},
		{95, 65, 80, false, "15/1.331 = 11.3, but 15 is no more than now"},
		{95, 64, 80, true, "16/1.323 = 12.1"},
	} {
		if got := CommonPractice().byLightness([Tritan + 1]float64{}, at(test.was), at(test.sees), at(test.other)); got != test.want {
			t.Errorf("%v to %v beside %v: %v, want %v: %s", test.was, test.sees, test.other, got, test.want, test.reason)
		}
		// Where the two hold now nothing is asked.
		if !CommonPractice().byLightness([Tritan + 1]float64{10, 10, 10, 10, 10}, at(test.was), at(test.sees), at(test.other)) {
			t.Errorf("%v to %v beside %v: asked for more where it holds", test.was, test.sees, test.other)
		}
	}
}

func TestMend(t *testing.T) {
	r := CommonPractice()
	for _, text := range []string{
		"tomato,olivedrab", // a lighter tomato parts by chroma, while the lightness comes nearer
		"#ffe070,#e0c8ff", "gold,yellow", "white,ivory,yellow",
		"crimson,forestgreen", "crimson,forestgreen,gold:metal,ivory", "firebrick,darkolivegreen,gold",
		"barn red=#7c0a02,forest=#0b3d0b,ivory", "navy,purple", "sienna,olivedrab,ivory",
		"teal,seagreen,cadetblue", "#808000,#a0522d,#6b4a1f", "yellow,ivory,pink",
		"crimson,forestgreen,sienna", "crimson,firebrick,tomato", "ivory,white,pink", // the least mend of two would lose the third
	} {
		p, err := (Rules{4, 3, 10}).ParsePalette(text)
		if err != nil {
			t.Fatal(err)
		}
		reading, err := r.Read(p)
		if err != nil {
			t.Fatal(err)
		}
		i := 0
		for x := range p.n {
			for y := x + 1; y < p.n; y++ {
				checkMend(t, r, p, reading.Pairs[i], x, y)
				i++
			}
		}
	}
}

func checkMend(t *testing.T, r Rules, p Palette, pair Pair, x, y int) {
	t.Helper()
	m := pair.Mend
	if all(pair.Holds) {
		return
	}
	want := slowMends(t, r, p, x, y)
	if m == (Mend{}) {
		if !math.IsInf(want, 1) {
			t.Errorf("%s and %s: no mend, one of %v was found", pair.A, pair.B, want)
		}
		return
	}
	k := x
	if m.Swatch.Name == pair.B.Name {
		k = y
	}
	if got := m.Was.Difference(m.Swatch.Color); got != want || m.Was != p.swatch[k].Color || m.Swatch.Finish != p.swatch[k].Finish {
		t.Errorf("%s and %s: mend %+v changes %v, want %v", pair.A, pair.B, m, got, want)
	}
	if m.Lighter != (m.Swatch.Color.Lab().L > m.Was.Lab().L) {
		t.Errorf("%s and %s: lighter %v, from %v to %v", pair.A, pair.B, m.Lighter, m.Was.Lab(), m.Swatch.Color.Lab())
	}
	for v := range pair.Difference {
		if pair.Difference[v] < pair.Difference[m.View] {
			t.Errorf("%s and %s: %v is closer than %v", pair.A, pair.B, View(v), m.View)
		}
	}
	other := pair.A
	if k == x {
		other = pair.B
	}
	now := math.Abs(m.View.lab(pair.A.Color).L - m.View.lab(pair.B.Color).L)
	needed := math.Abs(m.View.lab(m.Swatch.Color).L - m.View.lab(other.Color).L)
	if m.Needed <= m.Now || byLightness(m.View.lab(m.Swatch.Color).L, m.View.lab(other.Color).L) < r.Apart {
		t.Errorf("%s and %s: a difference in lightness of %v does not mend one of %v", pair.A, pair.B, m.Needed, m.Now)
	}
	if m.Now != now || m.Needed != needed {
		t.Errorf("%s and %s: lightness %v now and %v then, want %v and %v", pair.A, pair.B, m.Now, m.Needed, now, needed)
	}
}

// With a threshold that nothing reaches there is no mend, and the reading says so.
func TestNoMend(t *testing.T) {
	r := Rules{4, 100, 10}
	p := mustPalette(t, "crimson,forestgreen")
	reading, err := r.Read(p)
	if err != nil || reading.Pairs[0].Mend != (Mend{}) {
		t.Fatalf("%+v, %v", reading.Pairs, err)
	}
	const want = "* crimson and forestgreen: one color, under 100, to everybody, in every view;\n" +
		"  no lighter or darker color of either parts them by lightness\n"
	if !strings.HasSuffix(reading.String(), "\n"+want) {
		t.Errorf("reading\n%s", reading)
	}
}

// Where two mends are equal the first swatch changes; where two views are, the first is
// named; and white itself is a tint.
func TestMendTies(t *testing.T) {
	grey := Color{120, 120, 120}
	p := Palette{swatch: [maxSwatches]Swatch{{Name: "a", Color: grey}, {Name: "b", Color: grey}}, n: 2}
	reading, err := CommonPractice().Read(p)
	if err != nil {
		t.Fatal(err)
	}
	if m := reading.Pairs[0].Mend; m.Swatch.Name != "a" || m.View != Daylight || m.Now != 0 {
		t.Errorf("two equal greys: %+v", m)
	}
	p.swatch[0].Color, p.swatch[1].Color = Color{}, Color{1, 1, 1}
	reading, err = (Rules{2, 99.9, 0}).Read(p)
	if err != nil {
		t.Fatal(err)
	}
	want := Mend{Swatch: Swatch{Name: "b", Color: Color{255, 255, 255}}, Was: Color{1, 1, 1}, Lighter: true, Needed: 100}
	got := reading.Pairs[0].Mend
	got.View, got.Now = 0, 0
	if got != want {
		t.Errorf("black and nearly black, 99.9 apart: %+v, want %+v", got, want)
	}
}

// What comes with an error does not read as if all were well.
func TestNothingRead(t *testing.T) {
	reading, err := CommonPractice().Read(Palette{})
	if got := reading.String(); got != "nothing was read\n" || err == nil {
		t.Errorf("%q, %v", got, err)
	}
}

func TestAdvice(t *testing.T) {
	a, b := Swatch{Name: "a"}, Swatch{Name: "b"}
	for _, test := range []struct {
		pair Pair
		want string
	}{
		{
			Pair{A: a, B: b, Holds: [...]bool{true, true, true, true, false}},
			"a and b: one color, under 10, to tritan viewers;\n  no lighter or darker color of either parts them by lightness",
		},
		{
			Pair{A: a, B: b, Holds: [...]bool{true, false, false, false, false}},
			"a and b: one color, under 10, to everybody in warm light and protan viewers and deutan viewers and tritan viewers\n" +
				"  (about one man in twelve has some red-green deficiency);\n  no lighter or darker color of either parts them by lightness",
		},
		{
			Pair{A: a, B: b, Holds: [...]bool{true, false, true, true, true}, Mend: Mend{
				Swatch: Swatch{Name: "a", Color: Color{1, 2, 3}}, Was: Color{3, 2, 1}, Lighter: true, View: WarmLight, Now: 1.29, Needed: 7.85,
			}},
			"a and b: one color, under 10, to everybody in warm light;\n  lighter a, #010203 for #030201, mends it: a difference in lightness\n  of 7.8 in warm light, where it is 1.2 now",
		},
		{
			Pair{A: a, B: b, Holds: [...]bool{true, true, false, true, true}, Mend: Mend{
				Swatch: Swatch{Name: "b", Color: Color{1, 2, 3}}, Was: Color{3, 2, 1}, View: Protan, Now: 1, Needed: 7,
			}},
			"a and b: one color, under 10, to protan viewers\n  (about one man in twelve has some red-green deficiency);\n  darker b, #010203 for #030201, mends it: a difference in lightness\n  of 7.0 in the eyes of protan viewers, where it is 1.0 now",
		},
	} {
		if got := test.pair.advice(10); got != test.want {
			t.Errorf("advice\n got %s\nwant %s", got, test.want)
		}
	}
}

func TestReadingTable(t *testing.T) {
	p := mustPalette(t, "crimson,forestgreen,ivory")
	reading, err := CommonPractice().Read(p)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(reading.String(), "\n")
	if len(lines) != 9 || lines[8] != "" {
		t.Fatalf("%d lines\n%s", len(lines), reading)
	}
	for _, line := range lines[1:4] {
		if len(line) != len(lines[0]) {
			t.Errorf("ragged table\n%s", reading)
		}
	}
	if strings.Count(lines[1], "*") != 1 || !strings.Contains(lines[1], " 3.0*") || strings.Contains(lines[2], "*") {
		t.Errorf("stars\n%s", reading)
	}
}

// Of the six greys of a palette no deficiency changes anything.
func TestReadGreys(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Byte().Draw(t, "x")
		y := rapid.Byte().Draw(t, "y")
		if x == y {
			t.Skip("equal")
		}
		a, b := see(Color{x, x, x}), see(Color{y, y, y})
		d := a.differences(&b)
		if d[Protan] != d[Daylight] || d[Deutan] != d[Daylight] || d[Tritan] != d[Daylight] {
			t.Fatalf("%v", d)
		}
	})
}

func TestSuggest(t *testing.T) {
	for _, test := range []struct {
		rules   Rules
		palette string
	}{
		{CommonPractice(), "crimson"},
		{CommonPractice(), "ivory,crimson,gold:metal"},
		{CommonPractice(), "silver:metal,white"},
		{CommonPractice(), "pine=#0b3d0b"},
		{CommonPractice(), "navy=#ffffff,black"},
		{Rules{6, 10, 10}, "red,lime,blue,white,black"},
		{Rules{4, 2, 10}, "red"},
	} {
		p, err := (Rules{6, 2, 10}).ParsePalette(test.palette)
		if err != nil {
			t.Fatal(err)
		}
		got, err := test.rules.Suggest(p)
		if err != nil || len(got) == 0 || len(got) > 8 {
			t.Fatalf("%s: %d suggestions, %v", test.palette, len(got), err)
		}
		found := 0
		for i, s := range got {
			if s.Swatch.Color.Name() != s.Swatch.Name || s.Swatch.Finish != Matte {
				t.Errorf("%s: %+v is no CSS color", test.palette, s.Swatch)
			}
			want, err := test.rules.Palette(append(p.Swatches(), s.Swatch)...)
			if err != nil || s.Palette != want {
				t.Errorf("%s: palette %v, want %v, %v", test.palette, s.Palette, want, err)
			}
			reading, err := test.rules.Read(s.Palette)
			if err != nil {
				t.Fatal(err)
			}
			least, holds := math.Inf(1), true
			for _, pair := range reading.Pairs {
				if pair.B != s.Swatch {
					continue
				}
				for v, d := range pair.Difference {
					least = min(least, d)
					holds = holds && pair.Holds[v]
					if d == s.Least && pair.A == s.Nearest && View(v) == s.View {
						found++ // it is where it says
					}
				}
			}
			if s.Least != least || s.Holds != holds || found != i+1 {
				t.Errorf("%s: %+v, want least %v, holds %v", test.palette, s, least, holds)
			}
			for _, before := range got[:i] {
				if before.Least < s.Least || before.Swatch.Color.Difference(s.Swatch.Color) < test.rules.Apart {
					t.Errorf("%s: %v after %v", test.palette, s, before)
				}
			}
		}
		checkSuggestionsComplete(t, test.rules, p, got)
	}
}

// checkSuggestionsComplete walks the colors the slow way: no color that was left out
// is clearer than one taken, unless it was like one taken.
func checkSuggestionsComplete(t *testing.T, r Rules, p Palette, got []Suggestion) {
	t.Helper()
	taken := map[string]bool{}
	for _, s := range got {
		taken[s.Swatch.Name] = true
	}
	for _, css := range cssColors {
		_, err := r.Palette(append(p.Swatches(), Swatch{Name: css.name, Color: css.color})...)
		if err != nil || taken[css.name] || css.color.Name() != css.name {
			continue
		}
		least := math.Inf(1)
		for _, s := range p.Swatches() {
			for v := Daylight; v <= Tritan; v++ {
				d := labDifference(v.lab(s.Color), v.lab(css.color))
				least = min(least, d)
			}
		}
		alike := false
		for _, s := range got {
			if s.Least >= least {
				alike = alike || s.Swatch.Color.Difference(css.color) < r.Apart
			}
		}
		full := len(got) == 8 && got[7].Least >= least
		if !full && !alike {
			t.Errorf("%v: %s, %v at least, was left out of %v", p, css.name, least, got)
		}
	}
}

func TestSuggestRange(t *testing.T) {
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
		got, err := test.r.Suggest(test.p)
		checkError(t, err, units.ErrRange, "palette.Rules.Suggest: "+test.want)
		if got != nil {
			t.Errorf("%v beside an error", got)
		}
	}
	if got, err := (Rules{4, 100, 0}).Suggest(mustPalette(t, "red")); err != nil || len(got) != 0 {
		t.Errorf("nothing is 100 from red: %v, %v", got, err)
	}
}

func TestSuggestionString(t *testing.T) {
	s := Suggestion{
		Swatch: Swatch{Name: "navy", Color: Color{0, 0, 128}},
		Least:  27.39, Nearest: Swatch{Name: "forest"}, View: Deutan, Holds: true,
	}
	if got, want := s.String(), "navy #000080: at least 27.3 from every color for everybody (least in deutan, from forest)"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	s.Holds = false
	if got, want := s.String(), "navy #000080: only 27.3 from forest in deutan"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
