package palette

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestRead(t *testing.T) {
	r := CommonPractice()
	p := mustPalette(t, "crimson,forestgreen,gold:metal,ivory")
	got, err := r.Read(p, Swatch{})
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
			for v := Daylight; v < views; v++ {
				want := labDifference(v.lab(s[i].Color), v.lab(s[j].Color))
				if pair.Difference[v] != want || pair.Holds[v] != (want >= 10) {
					t.Errorf("%s and %s in %v: %v, %v, want %v", pair.A, pair.B, v, pair.Difference[v], pair.Holds[v], want)
				}
			}
			if all(pair.Holds) != (pair.Mend == Mend{}) {
				t.Errorf("%s and %s: holds %v, mend %+v", pair.A, pair.B, pair.Holds, pair.Mend)
			}
		}
	}
	// Red and green: one to a deutan viewer and to nobody else.
	if got.Pairs[0].Holds != (ByView[bool]{true, true, false, true, true, true, false, true}) {
		t.Errorf("crimson and forestgreen hold in %v", got.Pairs[0].Holds)
	}
	for v, want := range []bool{true, true, false, true, true, true, false, true} {
		if holds, err := got.Holds(View(v)); err != nil || holds != want {
			t.Errorf("holds in %v: %v, %v", View(v), holds, err)
		}
	}
	holds, err := got.Holds(8)
	checkError(t, err, units.ErrName, `palette.Reading.Holds: view "View(8)": unknown name: want daylight, protan, deutan, tritan, warm light, warm protan, warm deutan or warm tritan`)
	if holds {
		t.Error("holds beside an error")
	}

	none, err := r.Read(Palette{}, Swatch{})
	checkError(t, err, units.ErrRange, `palette.Rules.Read: palette "": out of range: want 1 to 4 swatches, not 0`)
	if !cmp.Equal(none, Reading{}) {
		t.Errorf("%+v beside an error", none)
	}
	one, err := r.Read(mustPalette(t, "gold:metal"), Swatch{})
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
		reading, err := CommonPractice().Read(mustPalette(t, text), Swatch{})
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
	before, err := r.Read(p, Swatch{})
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
						for v := Daylight; v < views; v++ {
							d := labDifference(v.lab(q.swatch[x].Color), v.lab(q.swatch[y].Color))
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
// it is enough does not say that ΔL* is more: SL is less near 50. The greys are the ones
// nearest to the lightness.
func TestByLightness(t *testing.T) {
	at := func(l float64) (s sight) {
		for v := range s {
			s[v].l = l
		}
		return s
	}
	var now ByView[float64]
	for v := range now {
		if v != int(Daylight) {
			now[v] = 10 // where the two hold nothing is asked
		}
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
		was, other := at(test.was), at(test.other)
		var grey Color
		for g := range 256 {
			c := Color{uint8(g), uint8(g), uint8(g)}
			if math.Abs(c.Lab().L-test.sees) < math.Abs(grey.Lab().L-test.sees) {
				grey = c
			}
		}
		if got := CommonPractice().byLightness(now, grey, &was, &other); got != test.want {
			t.Errorf("%v to %v (%v) beside %v: %v, want %v: %s", test.was, test.sees, grey, test.other, got, test.want, test.reason)
		}
		if !CommonPractice().byLightness(ByView[float64]{10, 10, 10, 10, 10, 10, 10, 10}, grey, &was, &other) {
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
		reading, err := r.Read(p, Swatch{})
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
	reading, err := r.Read(p, Swatch{})
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
	reading, err := CommonPractice().Read(p, Swatch{})
	if err != nil {
		t.Fatal(err)
	}
	if m := reading.Pairs[0].Mend; m.Swatch.Name != "a" || m.View != Daylight || m.Now != 0 {
		t.Errorf("two equal greys: %+v", m)
	}
	p.swatch[0].Color, p.swatch[1].Color = Color{}, Color{1, 1, 1}
	// No tint but white is as light as white in the view that shows it darkest.
	black, white := see(Color{}), see(Color{255, 255, 255})
	apart := math.Inf(1)
	for v := range white {
		apart = min(apart, math.Sqrt(lightnessTerm(white[v], black[v])))
	}
	reading, err = (Rules{2, apart, 0}).Read(p, Swatch{})
	if err != nil {
		t.Fatal(err)
	}
	want := Mend{Swatch: Swatch{Name: "b", Color: Color{255, 255, 255}}, Was: Color{1, 1, 1}, Lighter: true, Needed: 100}
	got := reading.Pairs[0].Mend
	got.View, got.Now, got.Needed = 0, 0, want.Needed
	if got != want {
		t.Errorf("black and nearly black, %v apart: %+v, want %+v", apart, got, want)
	}
}

// What comes with an error does not read as if all were well.
func TestNothingRead(t *testing.T) {
	reading, err := CommonPractice().Read(Palette{}, Swatch{})
	if got := reading.String(); got != "nothing was read\n" || err == nil {
		t.Errorf("%q, %v", got, err)
	}
}

func TestAdvice(t *testing.T) {
	a, b, fir := Swatch{Name: "a"}, Swatch{Name: "b"}, Swatch{Name: "fir"}
	but := func(views ...View) (holds ByView[bool]) {
		for v := range holds {
			holds[v] = !slices.Contains(views, View(v))
		}
		return holds
	}
	const noWay = ";\n  no lighter or darker color of either parts them by lightness"
	const twelve = "\n  (about one man in twelve has some red-green deficiency)"
	for _, test := range []struct {
		pair Pair
		want string
	}{
		{Pair{A: a, B: b, Holds: but(Tritan)}, "a and b: one color, under 10, to tritan viewers by daylight" + noWay},
		{Pair{A: a, B: b, Holds: but(Tritan, WarmTritan)}, "a and b: one color, under 10, to tritan viewers" + noWay},
		{
			Pair{A: a, B: b, Holds: but(WarmLight, Protan, WarmProtan, Deutan, Tritan)},
			"a and b: one color, under 10, to usual viewers by warm light and protan viewers and deutan viewers by daylight and tritan viewers by daylight" + twelve + noWay,
		},
		{Pair{A: a, B: b, Holds: ByView[bool]{}}, "a and b: one color, under 10, to everybody, in every view" + noWay},
		{Pair{A: a, B: fir, Holds: but(WarmProtan)}, "a on fir: one color, under 10, to protan viewers by warm light" + twelve + ";\n  no lighter or darker color of it parts them by lightness"},
		{
			Pair{A: a, B: b, Holds: but(WarmLight), Mend: Mend{
				Swatch: Swatch{Name: "a", Color: Color{1, 2, 3}}, Was: Color{3, 2, 1}, Lighter: true, View: WarmLight, Now: 1.29, Needed: 7.85,
			}},
			"a and b: one color, under 10, to usual viewers by warm light;\n  lighter a, #010203 for #030201, mends it: a difference in lightness\n  of 7.8 to usual viewers by warm light, where it is 1.2 now",
		},
		{
			Pair{A: a, B: fir, Holds: but(Protan, WarmProtan), Mend: Mend{
				Swatch: Swatch{Name: "a", Color: Color{1, 2, 3}}, Was: Color{3, 2, 1}, View: Protan, Now: 1, Needed: 7,
			}},
			"a on fir: one color, under 10, to protan viewers" + twelve + ";\n  darker a, #010203 for #030201, mends it: a difference in lightness\n  of 7.0 to protan viewers by daylight, where it is 1.0 now",
		},
	} {
		if got := test.pair.advice(Reading{Apart: 10, On: fir}); got != test.want {
			t.Errorf("advice\n got %s\nwant %s", got, test.want)
		}
	}
}

func TestReadingTable(t *testing.T) {
	p := mustPalette(t, "crimson,forestgreen,ivory")
	reading, err := CommonPractice().Read(p, swatches("flocked")[0])
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(reading.String(), "\n")
	if !strings.HasPrefix(lines[0], "pair ") || !strings.HasPrefix(lines[1], "   ") || !strings.HasPrefix(lines[7], "ivory on flocked ") || !strings.HasPrefix(lines[8], "* crimson and forestgreen: ") {
		t.Fatalf("lines\n%s", reading)
	}
	// A number, and a star behind it, ends in the column where its head does, and the lights stand over
	// the first column of theirs.
	for _, line := range lines[2:8] {
		for _, head := range []string{"usual", "protan", "deutan", "tritan"} {
			for _, at := range []int{strings.Index(lines[1], head) + len(head), strings.LastIndex(lines[1], head) + len(head)} {
				if line[at-1] < '0' || line[at-1] > '9' || at < len(line) && line[at] != ' ' && line[at] != '*' {
					t.Errorf("ragged at %d\n%s", at, reading)
				}
			}
		}
	}
	if i, j := strings.Index(lines[0], "by daylight"), strings.Index(lines[1], " usual"); i > j+1 || i < len("forestgreen, ivory") {
		t.Errorf("the lights\n%s", reading)
	}
	if strings.Count(lines[2], "*") != 2 || !strings.Contains(lines[2], " 3.0*") || strings.Contains(lines[3], "*") {
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
