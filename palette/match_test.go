package palette

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// slowMatch is what Sort says of a piece, without its short cut.
func slowMatch(r Rules, p Palette, piece Piece) Match {
	best := Match{Difference: math.Inf(1)}
	for _, s := range p {
		d := s.Color.Difference(piece.Color)
		if s.Finish&Metal != 0 && (piece.Finish&Metal != 0 || piece.Finish == 0) {
			d = weighed(pointOf(s.Color.lab()), pointOf(piece.Color.lab()), anyFar, 0.25)
		}
		if d < best.Difference {
			best = Match{s, d, d <= r.Fit}
		}
	}
	return best
}

func TestMatch(t *testing.T) {
	r := CommonPractice()
	p := mustPalette(t, "crimson,forestgreen,gold:metal,ivory")
	s := p
	for _, test := range []struct {
		color string
		index int
		fits  bool
	}{
		{"crimson", 0, true},
		{"#d01030", 0, true},
		{"darkgreen", 1, false}, // 13.5 away by the color library
		{"green", 1, true},
		{"goldenrod", 2, true}, // matte: as a color
		{"#996515", 2, false},
		{"white", 3, true},
		{"navy", 0, false}, // the nearest of four far ones
	} {
		c := mustColor(test.color)
		got, err := matchOf(r, p, Piece{Color: c, Finish: Matte})
		want := Match{s[test.index], s[test.index].Color.Difference(c), test.fits}
		if err != nil || got != want {
			t.Errorf("%s: %+v, %v, want %+v", test.color, got, err, want)
		}
	}

	// The tolerance itself fits, and the float below it does not.
	c := mustColor("darkgreen")
	d := c.Difference(s[1].Color)
	if m, err := matchOf(Rules{4, 10, d}, p, Piece{Color: c}); err != nil || !m.Fits {
		t.Errorf("exactly the tolerance away: %+v, %v", m, err)
	}
	if m, err := matchOf(Rules{4, 10, math.Nextafter(d, 0)}, p, Piece{Color: c}); err != nil || m.Fits {
		t.Errorf("just over the tolerance away: %+v, %v", m, err)
	}

	got, err := matchOf(r, nil, Piece{Color: c})
	checkError(t, err, units.ErrRange, `palette.Rules.Sort: palette "": out of range: want 1 to 4 swatches, not 0`)
	if got != (Match{}) {
		t.Errorf("%+v beside an error", got)
	}
	_, err = matchOf(Rules{3, 10, 10}, p, Piece{Color: c})
	checkError(t, err, units.ErrRange, `palette.Rules.Sort: palette "crimson,forestgreen,gold:metal,ivory": out of range: want 1 to 3 swatches, not 4`)
	_, err = matchOf(Rules{0, 10, 10}, p, Piece{Color: c})
	checkError(t, err, units.ErrRange, `palette.Rules.Sort: /limit "0": out of range: want 1 to 6`)
}

// Between two swatches equally near, the earlier: matching is stable. Greys above
// and below a middle one differ from it by rounding only, so equal swatches are used.
func TestMatchStable(t *testing.T) {
	a, b := Swatch{"a", Color{10, 20, 30}, Matte}, Swatch{"b", Color{10, 20, 30}, Metal}
	p := Palette{a, b}
	m, err := matchOf(CommonPractice(), p, Piece{Color: Color{12, 20, 30}, Finish: Matte})
	if err != nil || m.Swatch != a {
		t.Errorf("%+v, %v, want the first of two equal swatches", m, err)
	}
}

func TestMatchProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Rules{maxSwatches, rapid.Float64Range(0, 20).Draw(t, "apart"), rapid.Float64Range(0, 30).Draw(t, "fit")}
		p := palettes(r).Draw(t, "p")
		c := colors().Draw(t, "c")
		piece := Piece{Color: c, Finish: rapid.SampledFrom([]Finish{0, Shiny, Metal, Metal | Matte}).Draw(t, "finish")}
		got, err := matchOf(r, p, piece)
		if want := slowMatch(r, p, piece); err != nil || got != want {
			t.Fatalf("%v, %v: %+v, %v, want %+v", p, c, got, err, want)
		}
		for _, s := range p {
			if m, err := matchOf(r, p, Piece{Color: s.Color, Finish: s.Finish}); err != nil || m.Swatch != s || m.Difference != 0 || !m.Fits {
				t.Fatalf("%v does not match itself: %+v, %v", s, m, err)
			}
		}
	})
}

func TestMatchString(t *testing.T) {
	s := Swatch{Name: "crimson"}
	for _, test := range []struct {
		m    Match
		want string
	}{
		{Match{s, 0, true}, "crimson, 0.0 away"},
		{Match{s, 4.21, true}, "crimson, 4.3 away"},
		{Match{s, 10.01, false}, "none: crimson is nearest, 10.1 away"},
		{Match{}, "no match"},
	} {
		if got := test.m.String(); got != test.want {
			t.Errorf("%q, want %q", got, test.want)
		}
	}
}

func TestSort(t *testing.T) {
	r := CommonPractice()
	p := mustPalette(t, "crimson,forestgreen,gold:metal,ivory")
	box := []Piece{
		{"balls", mustColor("#d01030"), Shiny, 24},
		{"stars", mustColor("gold"), Metal, 12},
		{"icicles", mustColor("white"), Clear, 0},
		{"ribbon", mustColor("navy"), Matte, 3},
		{"more balls", mustColor("crimson"), Matte, 1},
	}
	got, err := r.Sort(p, box)
	if err != nil {
		t.Fatal(err)
	}
	if !cmp.Equal(got.Palette, p) || !cmp.Equal(got.Kept, []int{25, 0, 12, 1}) || got.Left != 3 {
		t.Errorf("%+v", got)
	}
	for i, piece := range box {
		if want := slowMatch(r, p, piece); got.Matches[i] != want {
			t.Errorf("%s: %+v, want %+v", piece.Name, got.Matches[i], want)
		}
	}
	const table = "crimson      25\nforestgreen   0\ngold:metal   12\nivory         1\nleft out      3\n"
	if got.String() != table {
		t.Errorf("table\n%swant\n%s", got, table)
	}
	if got := (Sorting{Palette: p, Kept: []int{3}, Left: 1}).String(); got != "crimson   3\nleft out  1\n" { // made by hand, and not whole
		t.Errorf("%q", got)
	}
	if got, err := r.Sort(p, nil); err != nil || len(got.Matches) != 0 || got.Left != 0 {
		t.Errorf("an empty box: %+v, %v", got, err)
	}

	for _, test := range []struct {
		r    Rules
		p    Palette
		box  []Piece
		want string
	}{
		{r, Palette{}, box, `palette "": out of range: want 1 to 4 swatches, not 0`},
		{Rules{4, 10, 200}, p, box, `/fit "200": out of range: want 0 to 100`},
		{r, p, []Piece{{}, {Count: -1}}, `/box/1/count "-1": out of range: want 0 to 1000000`},
		{r, p, []Piece{{Count: 1_000_001}}, `/box/0/count "1000001": out of range: want 0 to 1000000`},
		{r, p, []Piece{{Finish: allFinishes, Count: 1_000_000}, {Count: -1}}, `/box/1/count "-1": out of range: want 0 to 1000000`},
		{r, p, make([]Piece, 1_000_001), `box "1000001": out of range: want at most 1000000 entries`},
	} {
		got, err := test.r.Sort(test.p, test.box)
		checkError(t, err, units.ErrRange, "palette.Rules.Sort: "+test.want)
		if !cmp.Equal(got, Sorting{}) {
			t.Errorf("%+v beside an error", got)
		}
	}
	full := make([]Piece, 1001)
	for i := range full {
		full[i].Count = 1_000_000
	}
	if got, err := r.Sort(p, full[:1000]); err != nil || got.Left != 1_000_000_000 {
		t.Errorf("a thousand million: %d, %v", got.Left, err)
	}
	_, err = r.Sort(p, full)
	checkError(t, err, units.ErrRange, `palette.Rules.Sort: box "1001000000": out of range: want at most 1000000000 pieces in all`)
}

// Ten times the pieces make no more allocations.
func TestSortAllocations(t *testing.T) {
	r := CommonPractice()
	p := mustPalette(t, "crimson,forestgreen,gold:metal,ivory")
	for _, n := range []int{100, 1000} {
		box := randomBox(n, 1)
		if got := testing.AllocsPerRun(10, func() {
			if _, err := r.Sort(p, box); err != nil {
				t.Fatal(err)
			}
		}); got != 3 {
			t.Errorf("sorting %d pieces allocates %v times, want three times: the palette, the matches and the counts", n, got)
		}
	}
}

// randomBox returns n pieces of all colors, the same for the same seed.
func randomBox(n int, seed uint32) []Piece {
	box := make([]Piece, n)
	for i := range box {
		seed = seed*1664525 + 1013904223
		box[i] = Piece{Color: Color{uint8(seed >> 24), uint8(seed >> 16), uint8(seed >> 8)}, Count: int(seed>>4)%7 + 1}
	}
	return box
}

// bruteBest looks at every set of at most four colors, by kind of finish, in the order
// of the box, and returns the pieces kept by the first that keeps the most with the fewest
// colors, and its colors in that order.
func bruteBest(r Rules, box []Piece) (most int, best []Color) {
	var distinct []Piece
	for _, piece := range box {
		if !slices.ContainsFunc(distinct, func(p Piece) bool {
			return p.Color == piece.Color && p.Finish&Metal == piece.Finish&Metal && (p.Finish == 0) == (piece.Finish == 0)
		}) {
			distinct = append(distinct, piece)
		}
	}
	for size := 1; size <= min(r.Limit, 4); size++ {
		var try func(next int, set []Piece)
		try = func(next int, set []Piece) {
			if len(set) == size {
				kept := 0
				for _, piece := range box {
					for _, c := range set {
						if slowMatch(r, Palette{{"x", c.Color, c.Finish}}, piece).Fits {
							kept += max(piece.Count, 1)
							break
						}
					}
				}
				if kept > most {
					most, best = kept, nil
					for _, c := range set {
						best = append(best, c.Color)
					}
				}
				return
			}
		candidates:
			for i := next; i < len(distinct); i++ {
				for _, c := range set {
					if d := c.Color.Difference(distinct[i].Color); d < r.Apart || d == 0 {
						continue candidates
					}
				}
				try(i+1, append(set[:len(set):len(set)], distinct[i]))
			}
		}
		try(0, nil)
	}
	return most, best
}

func TestBestAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := Rules{
			Limit: rapid.IntRange(1, maxSwatches).Draw(t, "limit"),
			Apart: rapid.SampledFrom([]float64{0, 5, 10, 25, 60}).Draw(t, "apart"),
			Fit:   rapid.SampledFrom([]float64{0, 5, 10, 20, 40, 100}).Draw(t, "fit"),
		}
		// Colors of a coarse grid or of one corner, so that they meet.
		step := rapid.SampledFrom([]int{5, 20, 60}).Draw(t, "step")
		box := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Piece {
			channel := rapid.IntRange(0, min(4, 255/step))
			return Piece{
				Color:  Color{uint8(step * channel.Draw(t, "r")), uint8(step * channel.Draw(t, "g")), uint8(step * channel.Draw(t, "b"))},
				Finish: rapid.SampledFrom([]Finish{0, Matte, Metal}).Draw(t, "finish"),
				Count:  rapid.IntRange(0, 5).Draw(t, "count"),
			}
		}), 1, 14).Draw(t, "box")
		got, err := r.Best(box)
		if err != nil {
			t.Fatal(err)
		}
		most, best := bruteBest(r, box)
		if sum(got.Kept) != most {
			t.Fatalf("keeps %d, brute force %d with %v", sum(got.Kept), most, best)
		}
		chosen := map[Color]bool{}
		for _, s := range got.Palette {
			chosen[s.Color] = true
		}
		for _, c := range best {
			if !chosen[c] {
				t.Fatalf("chose %v, brute force %v", got.Palette, best)
			}
		}
		if len(chosen) != len(best) {
			t.Fatalf("chose %v, brute force %v", got.Palette, best)
		}
		// It is a palette that the rules allow, and the box sorts into it.
		if p, err := r.Palette(got.Palette...); err != nil || !cmp.Equal(p, got.Palette) {
			t.Fatalf("%v: %v", got.Palette, err)
		}
		sorted, err := r.Sort(got.Palette, box)
		if err != nil || !cmp.Equal(sorted, got) {
			t.Fatalf("%+v, sorted %+v, %v", got, sorted, err)
		}
		for i := 1; i < len(got.Palette); i++ {
			if got.Kept[i] > got.Kept[i-1] {
				t.Fatalf("swatch %d keeps %d, the one before %d", i, got.Kept[i], got.Kept[i-1])
			}
		}
	})
}

func TestBest(t *testing.T) {
	r := CommonPractice()
	box := []Piece{
		{"a", mustColor("navy"), Matte, 2},
		{"b", mustColor("crimson"), Shiny, 9},
		{"c", mustColor("#d01030"), Matte, 9},
		{"d", mustColor("#010203"), Clear, 5},
		{"e", mustColor("crimson"), Metal, 1},
		{"f", mustColor("#d4af37"), Metal, 7},
		{"g", mustColor("lime"), Matte, 0},
	}
	got, err := r.Best(box)
	// Crimson and #d01030 pass for each other; lime, one piece, goes.
	const want = "crimson:shiny,gold:metal,#010203:clear,navy:matte"
	if err != nil || got.Palette.String() != want || got.Left != 1 || !cmp.Equal(got.Kept, []int{19, 7, 5, 2}) {
		t.Errorf("%v %v %d, %v, want %s", got.Palette, got.Kept, got.Left, err, want)
	}
	// Three colors keep all of it: no fourth is added.
	if got, err := r.Best(box[1:6]); err != nil || got.Palette.String() != "crimson:shiny,gold:metal,#010203:clear" || got.Left != 0 {
		t.Errorf("%v %v %d, %v", got.Palette, got.Kept, got.Left, err)
	}
	// Gold foil passes for gold, though it is 9.8 away, since between metals lightness counts half: both together are more
	// than the reds.
	gold := []Piece{{Color: mustColor("crimson"), Count: 3}, {Color: mustColor("#d4af37"), Finish: Metal, Count: 2}, {Color: mustColor("#fdd017"), Finish: Metal, Count: 2}}
	if got, err := (Rules{1, 10, 8}).Best(gold); err != nil || got.Palette.String() != "gold:metal" || got.Left != 3 {
		t.Errorf("two golds and a red: %v, %d left, %v", got.Palette, got.Left, err)
	}
	// A piece that is exactly as far as the tolerance is kept, and at the float below not.
	two := []Piece{{Color: mustColor("crimson")}, {Color: mustColor("#d01030"), Count: 2}}
	d := two[0].Color.Difference(two[1].Color)
	if got, err := (Rules{1, 10, d}).Best(two); err != nil || got.Left != 0 || got.Palette.String() != "crimson" {
		t.Errorf("at the tolerance: %v, %d left, %v", got.Palette, got.Left, err)
	}
	if got, err := (Rules{1, 10, math.Nextafter(d, 0)}).Best(two); err != nil || got.Left != 1 || got.Palette.String() != "#d01030" {
		t.Errorf("over the tolerance: %v, %d left, %v", got.Palette, got.Left, err)
	}
	// Two colors that are exactly as far apart as they must be both go in.
	if got, err := (Rules{2, d, 0}).Best(two); err != nil || got.Left != 0 || got.Palette.String() != "#d01030,crimson" {
		t.Errorf("at the threshold: %v, %d left, %v", got.Palette, got.Left, err)
	}
	if got, err := (Rules{2, math.Nextafter(d, 100), 0}).Best(two); err != nil || got.Left != 1 || got.Palette.String() != "#d01030" {
		t.Errorf("under the threshold: %v, %d left, %v", got.Palette, got.Left, err)
	}
	// A house that allows six still gets four.
	r.Limit = 6
	if got, err := r.Best(box); err != nil || len(got.Palette) != 4 {
		t.Errorf("%v, %v", got.Palette, err)
	}

	r = CommonPractice()
	for _, test := range []struct {
		r    Rules
		box  []Piece
		want string
	}{
		{r, nil, `box "0": out of range: want 1 to 200 entries`},
		{r, make([]Piece, 201), `box "201": out of range: want at most 200 entries`},
		{r, []Piece{{Count: -1}}, `/box/0/count "-1": out of range: want 0 to 1000000`},
		{Rules{}, box, `/limit "0": out of range: want 1 to 6`},
	} {
		got, err := test.r.Best(test.box)
		checkError(t, err, units.ErrRange, "palette.Rules.Best: "+test.want)
		if !cmp.Equal(got, Sorting{}) {
			t.Errorf("%+v beside an error", got)
		}
	}
	if got, err := r.Best(make([]Piece, 200)); err != nil || got.Palette.String() != "black" || sum(got.Kept) != 200 {
		t.Errorf("200 black pieces: %v, %v", got, err)
	}
}

// The largest box of the largest counts: no sum overflows, and the order holds beyond
// the first word of the sets.
func TestBestLarge(t *testing.T) {
	box := make([]Piece, maxBestPieces)
	for i := range box {
		box[i] = Piece{Name: fmt.Sprint(i), Color: Color{uint8(i), uint8(i), uint8(i)}, Count: 1_000_000}
	}
	r := Rules{4, 0, 0} // every grey keeps only itself
	got, err := r.Best(box)
	if err != nil || got.Palette.String() != "black,#010101,#020202,#030303" || got.Left != 196_000_000 {
		t.Errorf("%v, %d left, %v", got.Palette, got.Left, err)
	}
	box[70].Count, box[199].Count = 999_999, 1_000_000
	for i := range box {
		if i != 70 && i != 130 && i != 199 {
			box[i].Count = 999_998
		}
	}
	got, err = r.Best(box)
	if err != nil || got.Palette.String() != "#828282,#c7c7c7,#464646,black" {
		t.Errorf("%v, %v", got.Palette, err)
	}
}

func TestSortingTableWidths(t *testing.T) {
	p := mustPalette(t, "Weihnachtsgrün=#0b3d0b,gold")
	got, err := CommonPractice().Sort(p, []Piece{{Color: mustColor("gold"), Count: 1234}})
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSuffix(got.String(), "\n"), "\n")
	for _, line := range lines {
		if len([]rune(line)) != len([]rune(lines[0])) {
			t.Errorf("ragged table\n%s", got)
		}
	}
}

func sum(counts []int) (n int) {
	for _, c := range counts {
		n += c
	}
	return n
}
