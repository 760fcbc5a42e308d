package palette

import (
	"database/sql"
	"database/sql/driver"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// A box of colors as shops photograph them, and where a person puts each beside
// crimson, dark green, gold metal and ivory, or none. Codes and answers were invented for this
// test. Where the rule says otherwise the row says so.
func TestRealBox(t *testing.T) {
	box := []struct {
		color  string
		finish Finish
		where  string
		as     string
		missed bool
	}{
		{"#c8102e", Shiny, "crimson", "red glass", false},
		{"#d7153a", Shiny, "crimson", "red balls", false},
		{"#b8132f", Shiny, "crimson", "deeper red glass", false},
		{"#e0243f", Matte, "crimson", "bright red felt", false},
		{"#d81840", Glitter, "crimson", "red glitter", false},
		{"#8b0000", Matte, "", "dark red velvet", false},
		{"#722f37", Matte, "", "wine velvet", false},
		{"#cd5c5c", Matte, "", "dusty pink, strong", false},
		{"#c08081", Matte, "", "old rose", false},
		{"#d9a6a9", Matte, "", "dusty pink", false},
		{"#c9607a", Shiny, "", "raspberry pink", false},
		{"#ff2400", Shiny, "", "orange red", false},
		{"#f88379", Matte, "", "coral", false},
		{"#b3446c", Shiny, "", "raspberry", false},
		{"#00622d", Shiny, "darkgreen", "holly green", false},
		{"#0b5d1e", Matte, "darkgreen", "green felt", false},
		{"#1b4d3e", Shiny, "", "bottle green", false},
		{"#2e8b57", Shiny, "", "sea green", false},
		{"#8a9a5b", Matte, "", "sage", false},
		{"#90ee90", Shiny, "", "mint", false},
		{"#4a5d23", Matte, "", "moss", false},
		{"#d4af37", Metal, "gold", "gold balls", false},
		{"#b8913d", Metal, "gold", "gold balls in the shade", false},
		{"#cfb53b", Metal, "gold", "gold star", false},
		{"#c9a227", Metal, "gold", "gold bells", false},
		{"#fdd017", Metal, "gold", "gold foil", false},
		{"#e6be5a", Metal, "gold", "light gold", false},
		{"#aa8c2c", Metal, "gold", "antique gold", false},
		{"#c9ae5d", Metal, "gold", "brass horns", false},
		{"#c0c0c0", Metal, "", "silver balls", false},
		{"#b4745e", Metal, "", "copper", false},
		{"#b76e79", Metal, "", "rose gold", false},
		{"#826644", Metal, "", "bronze", false},
		{"#555555", Metal, "", "pewter", false},
		{"#848482", Metal, "", "nickel", false},
		{"#c2b280", Metal, "", "champagne", false},
		{"#ffd700", Matte, "", "yellow felt", false},
		{"#ffffff", Clear, "ivory", "icicles", false},
		{"#f8f4e3", Matte, "ivory", "cream wool", false},
		{"#f0ead6", Matte, "ivory", "cream", false},
		{"#fffdd0", Shiny, "ivory", "a yellower cream, 9.2 from ivory", true},
		{"#be8a3d", Metal, "gold", "gold in a brown room, 10.5 from gold", true},
		{"#e0d0b0", Natural, "", "linen", false},
		{"#a67b5b", Natural, "", "wood", false},
		{"#4169e1", Shiny, "", "blue", false},
		{"#000080", Shiny, "", "navy", false},
		{"#dda0dd", Matte, "", "plum", false},
		{"#008080", Shiny, "", "teal", false},
	}
	if len(box) < 40 {
		t.Errorf("%d codes", len(box))
	}
	r, p := CommonPractice(), mustPalette(t, "crimson,darkgreen,gold:metal,ivory")
	for _, b := range box {
		m, err := matchOf(r, p, Piece{Color: mustColor(b.color), Finish: b.finish})
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		if m.Fits {
			got = m.Swatch.Name
		}
		if (got != b.where) != b.missed {
			t.Errorf("%s, %s %s: %v, a person says %q, missed: %v", b.as, b.color, b.finish, m, b.where, b.missed)
		}
	}
	// The other metals keep to themselves too.
	p = mustPalette(t, "silver:metal,copper:metal,rose gold:metal,champagne:metal")
	for color, want := range map[string]string{
		"#c0c0c0": "silver", "#d8d8d8": "silver", "#a8a9ad": "silver", "#b9b8b5": "silver", "#555555": "",
		"#b87333": "copper", "#b4745e": "copper", "#cb6d51": "copper", "#b76e79": "rose gold",
		"#d6c6a0": "champagne", "#c2b280": "champagne", "#d4af37": "", "#826644": "", "#6c541e": "",
	} {
		m, err := matchOf(r, p, Piece{Color: mustColor(color), Finish: Metal})
		if got := m.Swatch.Name; err != nil || m.Fits != (want != "") || m.Fits && got != want {
			t.Errorf("%s: %v, %v, a person says %q", color, m, err, want)
		}
	}
}

// Between two metals kL is 2: by hand, for greys, ΔE00 is ΔL*/SL, and then half of it.
func TestMetalsOfGrey(t *testing.T) {
	a, b := mustColor("#808080"), mustColor("#909090")
	p, err := CommonPractice().Palette(Swatch{"steel", a, Metal})
	if err != nil {
		t.Fatal(err)
	}
	whole := byLightness(a.lab().L, b.lab().L)
	for f, want := range map[Finish]float64{0: whole / 2, Matte: whole, Metal: whole / 2, Metal | Shiny: whole / 2} {
		m, err := matchOf(CommonPractice(), p, Piece{Color: b, Finish: f})
		if err != nil || !(m.Difference-want < 1e-12 && want-m.Difference < 1e-12) {
			t.Errorf("%v: %v, %v, want %v", f, m.Difference, err, want)
		}
	}
}

// Each finish gets its equal part, and the parts add up.
func TestFinishes(t *testing.T) {
	ruby := func(f Finish) Swatch { return Swatch{"ruby", mustColor("ruby"), f} }
	three := Matte | Shiny | Glitter
	for _, test := range []struct {
		row  Row
		want []Row
	}{
		{Row{ruby(three), 60, 6, 42}, []Row{{ruby(Matte), 20, 2, 14}, {ruby(Shiny), 20, 2, 14}, {ruby(Glitter), 20, 2, 14}}},
		// 40, 4 types, 33 pieces over three: the first has what is left over.
		{Row{ruby(three), 40, 4, 33}, []Row{{ruby(Matte), 14, 2, 11}, {ruby(Shiny), 13, 1, 11}, {ruby(Glitter), 13, 1, 11}}},
		// Two types over three finishes: the last has none, and so no piece.
		{Row{ruby(three), 40, 2, 9}, []Row{{ruby(Matte), 14, 1, 5}, {ruby(Shiny), 13, 1, 4}, {ruby(Glitter), 13, 0, 0}}},
		{Row{ruby(three), 10, 0, 4}, []Row{{ruby(Matte), 4, 0, 2}, {ruby(Shiny), 3, 0, 1}, {ruby(Glitter), 3, 0, 1}}},
		{Row{ruby(Metal), 40, 4, 33}, []Row{{ruby(Metal), 40, 4, 33}}},
		{Row{ruby(0), 40, 4, 33}, []Row{{ruby(0), 40, 4, 33}}},
		{Row{ruby(Metal), 40, 4, 1_000_000}, []Row{{ruby(Metal), 40, 4, 1_000_000}}},
		{Row{ruby(three), -1, 4, 33}, nil},
		{Row{ruby(three), 40, 4, 3}, nil},
		{Row{ruby(three), 40, 4, 1_000_001}, nil},
	} {
		if got := test.row.Finishes(); !cmp.Equal(got, test.want) {
			t.Errorf("%+v: %+v, want %+v", test.row, got, test.want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		row := Row{ruby(Finish(rapid.IntRange(0, int(allFinishes)).Draw(t, "finish"))), rapid.IntRange(1, 100).Draw(t, "share"), rapid.IntRange(0, 40).Draw(t, "types"), 0}
		row.Pieces = row.Types + rapid.IntRange(0, 200).Draw(t, "more")
		sum := Row{Swatch: ruby(0)}
		for _, part := range row.Finishes() {
			sum.Share, sum.Types, sum.Pieces = sum.Share+part.Share, sum.Types+part.Types, sum.Pieces+part.Pieces
			if sum.Swatch.Finish&part.Swatch.Finish != 0 || part.Pieces < part.Types {
				t.Fatalf("%+v: %+v", row, part)
			}
			sum.Swatch.Finish |= part.Swatch.Finish
		}
		if sum != row {
			t.Fatalf("%+v adds up to %+v", row, sum)
		}
	})
}

// What is stored as SQL text is read back the same, as a string or as bytes.
func TestSQL(t *testing.T) {
	p := mustPalette(t, "crimson,gold:metal,barn red=#7c0a02:matte+shiny")
	f := Matte | Glitter
	v := WarmDeutan
	c := mustColor("teal")
	s := p[2]
	var p2 Palette
	var f2 Finish
	var v2 View
	var c2 Color
	var s2 Swatch
	for _, test := range []struct {
		in   driver.Valuer
		out  sql.Scanner
		text string
		same func() bool
	}{
		{p, &p2, "crimson,gold:metal,barn red=#7c0a02:matte+shiny", func() bool { return slices.Equal(p2, p) }},
		{f, &f2, "matte+glitter", func() bool { return f2 == f }},
		{v, &v2, "warm deutan", func() bool { return v2 == v }},
		{c, &c2, "#008080", func() bool { return c2 == c }},
		{s, &s2, "barn red=#7c0a02:matte+shiny", func() bool { return s2 == s }},
	} {
		stored, err := test.in.Value()
		if err != nil || stored != test.text || !driver.IsValue(stored) {
			t.Errorf("%T is stored as %v, %v, want %q", test.in, stored, err, test.text)
		}
		for _, src := range []any{test.text, []byte(test.text)} {
			p2, f2, v2, c2, s2 = Palette{}, 0, 0, Color{}, Swatch{}
			if err := test.out.Scan(src); err != nil || !test.same() {
				t.Errorf("%T from %T: %v, %v", test.out, src, test.out, err)
			}
		}
		for _, src := range []any{nil, 7, "no such thing", "\xff"} {
			err := test.out.Scan(src)
			var e *units.Error
			name := strings.TrimPrefix(fmt.Sprintf("%T.Scan", test.out), "*")
			if !errors.As(err, &e) || !test.same() {
				t.Errorf("%T from %v: %v, %v", test.out, src, test.out, err)
			} else if _, text := src.(string); !text && (e.Func != name || e.Field != "src") {
				t.Errorf("%v", err)
			}
		}
	}
	if err := s2.Scan(""); err != nil || s2 != (Swatch{}) {
		t.Errorf("no swatch comes back as %v, %v", s2, err)
	}
	for _, bad := range []driver.Valuer{Finish(200), View(9)} {
		if got, err := bad.Value(); err == nil || got != nil {
			t.Errorf("%v is stored as %v", bad, got)
		}
	}
}

// Every palette that some rules allow can be read again, and so can a result with it in it; what no
// rules allow cannot.
func TestHousePalettesReadBack(t *testing.T) {
	house := Rules{6, 1, 20}
	p, err := house.ParsePalette("red,#fe0000=#f00000,blue,white,ivory,black")
	if err != nil {
		t.Fatal(err)
	}
	sorting, err := house.Sort(p, randomBox(20, 3))
	if err != nil {
		t.Fatal(err)
	}
	reading, err := house.Read(p, swatches("flocked")[0])
	if err != nil {
		t.Fatal(err)
	}
	suggestions, err := house.Suggest(mustPalette(t, "red"), Swatch{}, swatches("navy:metal"))
	if err != nil {
		t.Fatal(err)
	}
	readsBack(t, sorting)
	readsBack(t, reading)
	readsBack(t, suggestions)
	for _, text := range []string{`"red,red"`, `"red,ruby=red"`, `"red,lime,blue,white,black,yellow,navy"`, `"gold:metal,x"`} {
		var q Palette
		if err := json.Unmarshal([]byte(text), &q); err == nil || q != nil {
			t.Errorf("%s reads as %v, %v", text, q, err)
		}
	}
}
