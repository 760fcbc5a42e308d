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
	s := p
	if !slices.Equal(got.Palette, p) || got.Apart != 10 || len(got.Pairs) != 6 {
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
				if pair.Difference[v] != want {
					t.Errorf("%s and %s in %v: %v, want %v", pair.A, pair.B, v, pair.Difference[v], want)
				}
			}
			if all(pair.holds(r)) != (pair.Mend == Swatch{}) {
				t.Errorf("%s and %s: holds %v, mend %+v", pair.A, pair.B, pair.holds(r), pair.Mend)
			}
		}
	}
	// Red and green: one to a deutan viewer and to nobody else.
	if holds := got.Pairs[0].holds(r); holds != [views]bool{true, true, false, true, true, true, false, true} {
		t.Errorf("crimson and forestgreen hold in %v", holds)
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
				q := slices.Clone(p)
				q[k].Color = mix(p[k].Color, step)
				good := true
				i := 0
				for x := range len(p) {
					for y := x + 1; y < len(p); y++ {
						held := before.Pairs[i].holds(r)
						for v := Daylight; v < views; v++ {
							d := labDifference(v.lab(q[x].Color), v.lab(q[y].Color))
							holds := d >= r.Apart && d > 0
							if !holds && (x == a && y == b || held[v]) {
								good = false
							}
							if x == a && y == b && !held[v] {
								was := math.Abs(v.lab(p[a].Color).L - v.lab(p[b].Color).L)
								l, m := v.lab(q[a].Color).L, v.lab(q[b].Color).L
								good = good && byLightness(l, m) >= r.Apart && math.Abs(l-m) > was
							}
						}
						i++
					}
				}
				if good {
					least = min(least, p[k].Color.Difference(q[k].Color))
					break
				}
			}
		}
	}
	return least
}

// byLightness is ΔE00 of two greys of these lightnesses.
func byLightness(l, m float64) float64 { return slowDifference(cielab{L: l}, cielab{L: m}) }

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
	var now differences
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
			if math.Abs(c.lab().L-test.sees) < math.Abs(grey.lab().L-test.sees) {
				grey = c
			}
		}
		nearer := between(&was, &other)
		if got := CommonPractice().byLightness(now, grey, &was, &other, &nearer); got != test.want {
			t.Errorf("%v to %v (%v) beside %v: %v, want %v: %s", test.was, test.sees, grey, test.other, got, test.want, test.reason)
		}
		if !CommonPractice().byLightness(differences{10, 10, 10, 10, 10, 10, 10, 10}, grey, &was, &other, &nearer) {
			t.Errorf("%v to %v beside %v: asked for more where it holds", test.was, test.sees, test.other)
		}
	}
}

// What luminance rules out, lightness rules out too: on grays of every step, and on colors at random.
func TestBetween(t *testing.T) {
	nothing := [views][2]float64{}
	ruledOut := 0
	same := func(t interface{ Fatalf(string, ...any) }, was, other, color Color) {
		a, b := see(was), see(other)
		now := a.differences(&b)
		nearer := between(&a, &b)
		if quick, whole := CommonPractice().byLightness(now, color, &a, &b, &nearer), CommonPractice().byLightness(now, color, &a, &b, &nothing); quick != whole {
			t.Fatalf("%v to %v beside %v: %v by luminance, %v by lightness", was, color, other, quick, whole)
		}
		if y := Daylight.stimulus(color)[1]; y > nearer[0][0] && y < nearer[0][1] {
			ruledOut++
		}
	}
	gray := func(v int) Color { return Color{uint8(v), uint8(v), uint8(v)} }
	for was := 0; was < 256; was += 5 {
		for other := range 256 {
			for _, color := range []int{was, was - 1, was + 1, 2*other - was, 2*other - was - 1, 2*other - was + 1} {
				if color >= 0 && color < 256 {
					same(t, gray(was), gray(other), gray(color))
				}
			}
		}
	}
	if ruledOut < 1000 {
		t.Errorf("luminance ruled out %d, want some", ruledOut)
	}
	rapid.Check(t, func(t *rapid.T) {
		color := rapid.Custom(func(t *rapid.T) Color {
			return Color{rapid.Byte().Draw(t, "r"), rapid.Byte().Draw(t, "g"), rapid.Byte().Draw(t, "b")}
		})
		same(t, color.Draw(t, "was"), color.Draw(t, "other"), color.Draw(t, "color"))
	})
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
		for x := range len(p) {
			for y := x + 1; y < len(p); y++ {
				checkMend(t, r, p, reading.Pairs[i], x, y)
				i++
			}
		}
	}
}

func checkMend(t *testing.T, r Rules, p Palette, pair Pair, x, y int) {
	t.Helper()
	m := pair.Mend
	if all(pair.holds(r)) {
		return
	}
	want := slowMends(t, r, p, x, y)
	if m == (Swatch{}) {
		if !math.IsInf(want, 1) {
			t.Errorf("%s and %s: no mend, one of %v was found", pair.A, pair.B, want)
		}
		return
	}
	was, other := p[x], p[y]
	if m.Name == pair.B.Name {
		was, other = other, was
	}
	if got := was.Color.Difference(m.Color); got != want || m.Finish != was.Finish {
		t.Errorf("%s and %s: mend %+v changes %v, want %v", pair.A, pair.B, m, got, want)
	}
	if c, d := pair.mended(); c != was.Color || d != other.Color {
		t.Errorf("%s and %s: mend %+v stands for %v beside %v", pair.A, pair.B, m, c, d)
	}
	v := pair.worst()
	for w := range views {
		if pair.Difference[w] < pair.Difference[v] {
			t.Errorf("%s and %s: %v is closer than %v", pair.A, pair.B, w, v)
		}
	}
	now := math.Abs(v.lab(pair.A.Color).L - v.lab(pair.B.Color).L)
	needed := math.Abs(v.lab(m.Color).L - v.lab(other.Color).L)
	if needed <= now || byLightness(v.lab(m.Color).L, v.lab(other.Color).L) < r.Apart {
		t.Errorf("%s and %s: a difference in lightness of %v does not mend one of %v", pair.A, pair.B, needed, now)
	}
}

// With a threshold that nothing reaches there is no mend, and the reading says so.
func TestNoMend(t *testing.T) {
	r := Rules{4, 100, 10}
	p := mustPalette(t, "crimson,forestgreen")
	reading, err := r.Read(p, Swatch{})
	if err != nil || reading.Pairs[0].Mend != (Swatch{}) {
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
	p := Palette{{Name: "a", Color: grey}, {Name: "b", Color: grey}}
	reading, err := CommonPractice().Read(p, Swatch{})
	if err != nil {
		t.Fatal(err)
	}
	if pair := reading.Pairs[0]; pair.Mend.Name != "a" || pair.worst() != Daylight {
		t.Errorf("two equal greys: %v", pair)
	}
	p = Palette{{Name: "a"}, {Name: "b", Color: Color{1, 1, 1}}}
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
	want := Swatch{Name: "b", Color: Color{255, 255, 255}}
	if got := reading.Pairs[0].Mend; got != want {
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
	a, b, fir := Swatch{Name: "a", Color: Color{200, 20, 60}}, Swatch{Name: "b"}, Swatch{Name: "fir"}
	but := func(views ...View) map[View]float64 {
		d := differences{20, 20, 20, 20, 20, 20, 20, 20}
		for i, v := range views {
			d[v] = 9 - float64(i)
		}
		return d.byView()
	}
	const noWay = ";\n  no lighter or darker color of either parts them by lightness"
	const twelve = "\n  (about one man in twelve has some red-green deficiency)"
	for _, test := range []struct {
		pair Pair
		want string
	}{
		{Pair{A: a, B: b, Difference: but(Tritan)}, "a and b: one color, under 10, to tritan viewers by daylight" + noWay},
		{Pair{A: a, B: b, Difference: but(Tritan, WarmTritan)}, "a and b: one color, under 10, to tritan viewers" + noWay},
		{
			Pair{A: a, B: b, Difference: but(WarmLight, Protan, WarmProtan, Deutan, Tritan)},
			"a and b: one color, under 10, to usual viewers by warm light and protan viewers and deutan viewers by daylight and tritan viewers by daylight" + twelve + noWay,
		},
		{Pair{A: a, B: b, Difference: but(Daylight, Protan, Deutan, Tritan, WarmLight, WarmProtan, WarmDeutan, WarmTritan)}, "a and b: one color, under 10, to everybody, in every view" + noWay},
		{Pair{A: a, B: fir, Difference: but(WarmProtan)}, "a on fir: one color, under 10, to protan viewers by warm light" + twelve + ";\n  no lighter or darker color of it parts them by lightness"},
		{
			// L* by warm light: black is 0 in every view, and white 99.99 (the example of View.Lab).
			Pair{A: Swatch{Name: "a"}, B: b, Difference: but(WarmLight), Mend: Swatch{Name: "b", Color: Color{255, 255, 255}}},
			"a and b: one color, under 10, to usual viewers by warm light;\n  lighter b, #ffffff for #000000, mends it: a difference in lightness\n  of 99.9 to usual viewers by warm light, where it is 0.0 now",
		},
		{
			// Greys are unchanged in Protan: white is 100, black 0.
			Pair{A: Swatch{Name: "a", Color: Color{255, 255, 255}}, B: fir, Difference: but(WarmProtan, Protan), Mend: Swatch{Name: "a"}},
			"a on fir: one color, under 10, to protan viewers" + twelve + ";\n  darker a, #000000 for #ffffff, mends it: a difference in lightness\n  of 0.0 to protan viewers by daylight, where it is 100.0 now",
		},
	} {
		r := Reading{Palette: Palette{a, b}, Apart: 10, Pairs: []Pair{test.pair, test.pair}}
		i := 0
		if test.pair.B == fir {
			i = 1
		}
		if got := r.advice(i); got != test.want {
			t.Errorf("advice\n got %s\nwant %s", got, test.want)
		}
	}
}

func TestPairString(t *testing.T) {
	d := differences{12, 11, 10, 9, 8, 7.19, 8, 9}
	a, b := Swatch{Name: "a"}, Swatch{Name: "b", Color: Color{1, 2, 3}}
	for want, p := range map[string]Pair{
		"no pair": {},
		"a and b: 7.1 apart at least, for protan viewers by warm light":                     {A: a, B: b, Difference: d.byView()},
		"a and b: 7.1 apart at least, for protan viewers by warm light; b=#0a0b0c mends it": {A: a, B: b, Difference: d.byView(), Mend: Swatch{Name: "b", Color: Color{10, 11, 12}}},
	} {
		if got := p.String(); got != want {
			t.Errorf("%q, want %q", got, want)
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
