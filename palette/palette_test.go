package palette

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestFinish(t *testing.T) {
	for _, test := range []struct {
		f    Finish
		want string
	}{
		{0, ""},
		{Matte, "matte"},
		{Shiny, "shiny"},
		{Glitter, "glitter"},
		{Clear, "clear"},
		{Metal, "metal"},
		{Natural, "natural"},
		{Matte | Shiny | Glitter, "matte+shiny+glitter"},
		{allFinishes, "matte+shiny+glitter+clear+metal+natural"},
	} {
		text, err := test.f.MarshalText()
		if err != nil || string(text) != test.want || test.f.String() != test.want {
			t.Errorf("Finish(%d) is %q, %q, %v, want %q", uint8(test.f), test.f, text, err, test.want)
		}
		for _, text := range []string{test.want, strings.ToUpper(test.want), "\t" + strings.ReplaceAll(test.want, "+", " + ") + " "} {
			got, err := parseFinish("Finish.UnmarshalText", text)
			if err != nil || got != test.f {
				t.Errorf("ParseFinish(%q) = %v, %v", text, got, err)
			}
		}
		var back Finish
		if err := back.UnmarshalText(text); err != nil || back != test.f {
			t.Errorf("%q reads as %v, %v", text, back, err)
		}
	}
	if got := Finish(64).String(); got != "not a finish" {
		t.Errorf("Finish(64).String() = %q", got)
	}
	const words = "unknown name: want matte, shiny, glitter, clear, metal or natural"
	_, err := Finish(64).MarshalText()
	checkError(t, err, units.ErrName, `palette.Finish.MarshalText: finish "not a finish": `+words)
	for _, text := range []string{"met al", " mettal", "+", "matte+", "matte,shiny", strings.Repeat(" ", 60) + "metal", strings.Repeat(" ", 65), strings.Repeat("m", 70)} {
		got, err := parseFinish("Finish.UnmarshalText", text)
		checkError(t, err, units.ErrName, `palette.Finish.UnmarshalText: text "`+clip(text)+`": `+words+", or several with + between")
		if got != 0 {
			t.Errorf("%v beside an error", got)
		}
	}
	f := Clear
	checkError(t, f.UnmarshalText([]byte("x")), units.ErrName, `palette.Finish.UnmarshalText: text "x": `+words+", or several with + between")
	if f != Clear {
		t.Errorf("a failed UnmarshalText left %v", f)
	}
}

func TestParseSwatch(t *testing.T) {
	crimson := Color{220, 20, 60}
	for _, test := range []struct {
		text   string
		want   Swatch
		back   string
		reason string
	}{
		{"crimson", Swatch{"crimson", crimson, 0}, "crimson", "a color name"},
		{"Crimson", Swatch{"Crimson", crimson, 0}, "Crimson", "the name as written"},
		{"#dc143c", Swatch{"#dc143c", crimson, 0}, "#dc143c", "the digits are the name"},
		{"gold:metal", Swatch{"gold", Color{0xd4, 0xaf, 0x37}, Metal}, "gold:metal", "a finish"},
		{"crimson:matte", Swatch{"crimson", crimson, Matte}, "crimson:matte", "matte said"},
		{"crimson:", Swatch{"crimson", crimson, 0}, "crimson", "nothing said"},
		{"ruby:Shiny+matte", Swatch{"ruby", Color{0x78, 0x18, 0x4a}, Matte | Shiny}, "ruby:matte+shiny", "two finishes, an everyday name"},
		{"gold=#ffd700:metal", Swatch{"gold", Color{255, 215, 0}, Metal}, "gold=#ffd700:metal", "gold of the color of paint"},
		{"Forest Green", Swatch{"Forest Green", Color{0x22, 0x8b, 0x22}, 0}, "Forest Green", "a space in a name"},
		{" barn red = #dc143c : shiny ", Swatch{"barn red", crimson, Shiny}, "barn red=#dc143c:shiny", "spaces around each part"},
		{"red=crimson", Swatch{"red", crimson, 0}, "red=#dc143c", "a color name for another color"},
		{"crimson=#dc143c", Swatch{"crimson", crimson, 0}, "crimson", "the name says the color"},
		{"Weihnachtsgrün=#0b3d0b:clear", Swatch{"Weihnachtsgrün", Color{11, 61, 11}, Clear}, "Weihnachtsgrün=#0b3d0b:clear", "other letters"},
		{strings.Repeat("n", 40) + "=gold", Swatch{strings.Repeat("n", 40), Color{255, 215, 0}, 0}, strings.Repeat("n", 40) + "=#ffd700", "the longest name"},
	} {
		got, err := ParseSwatch(test.text)
		if err != nil || got != test.want {
			t.Errorf("%s: ParseSwatch(%q) = %+v, %v, want %+v", test.reason, test.text, got, err, test.want)
		}
		if got.String() != test.back {
			t.Errorf("%s: String() = %q, want %q", test.reason, got, test.back)
		}
		if again, err := ParseSwatch(test.back); err != nil || again != test.want {
			t.Errorf("%s: ParseSwatch(%q) = %+v, %v, want %+v", test.reason, test.back, again, err, test.want)
		}
	}
	long := strings.Repeat("é", 65) // 130 bytes
	const (
		color = "want #rrggbb, #rgb or a color name"
		name  = "want 1 to 40 bytes of printable text without , : = and spaces at the ends"
	)
	for _, test := range []struct {
		text string
		err  error
		want string
	}{
		{long, units.ErrSyntax, `text "` + strings.Repeat("é", 32) + `…": not understood: want [name=]color[:finish] of at most 128 bytes`},
		{"a" + long, units.ErrSyntax, `text "a` + strings.Repeat("é", 31) + `…": not understood: want [name=]color[:finish] of at most 128 bytes`},
		{"", units.ErrSyntax, `text "": not understood: ` + color + ` of 1 to 64 bytes`},
		{"x=", units.ErrSyntax, `text "": not understood: ` + color + ` of 1 to 64 bytes`},
		{"x=y=gold", units.ErrName, `text "y=gold": unknown name: ` + color + "; did you mean gold?"},
		{"gold:metal:metal", units.ErrName, `text "metal:metal": unknown name: want matte, shiny, glitter, clear, metal or natural, or several with + between`},
		{"=gold", units.ErrSyntax, `text "": not understood: ` + name},
		{"a,b=gold", units.ErrSyntax, `text "a,b": not understood: ` + name},
		{"a\tb=gold", units.ErrSyntax, `text "a\tb": not understood: ` + name},
		{"a\xffb=gold", units.ErrSyntax, `text "a\xffb": not understood: ` + name},
		{strings.Repeat("n", 41) + "=gold", units.ErrSyntax, `text "` + strings.Repeat("n", 41) + `": not understood: ` + name},
	} {
		got, err := ParseSwatch(test.text)
		checkError(t, err, test.err, "palette.ParseSwatch: "+test.want)
		if got != (Swatch{}) {
			t.Errorf("%+v beside an error", got)
		}
	}
	if _, err := ParseSwatch("x=gold:metal" + strings.Repeat(" ", 116)); err != nil {
		t.Errorf("128 bytes: %v", err)
	}
	if _, err := ParseSwatch("x=gold:metal" + strings.Repeat(" ", 117)); err == nil {
		t.Error("read 129 bytes")
	}
}

func TestPalette(t *testing.T) {
	r := CommonPractice()
	four := swatches("crimson", "forestgreen", "gold:metal", "silver:metal")
	p, err := r.Palette(four...)
	if err != nil {
		t.Fatal(err)
	}
	if len(p) != 4 || !slices.Equal(p, four) || p.String() != "crimson,forestgreen,gold:metal,silver:metal" {
		t.Errorf("palette %v, %d", p, len(p))
	}
	four[0].Name = "changed"
	if p.String() != "crimson,forestgreen,gold:metal,silver:metal" {
		t.Error("a palette was changed through the swatches that it was made of")
	}
	four[0].Name = "crimson"
	if q := mustPalette(t, " crimson , forestgreen,gold:metal,silver:metal"); !slices.Equal(q, p) {
		t.Errorf("%v is not %v", q, p)
	}
	if (Palette{}).String() != "" {
		t.Error("the zero palette has something in it")
	}

	six := swatches("black", "white", "red", "lime", "blue", "yellow")
	five := r
	five.Limit = 5
	if q, err := five.Palette(six[:5]...); err != nil || len(q) != 5 {
		t.Errorf("a house that allows five: %v, %v", q, err)
	} else {
		text, _ := q.MarshalText()
		var back Palette
		if err := back.UnmarshalText(text); err != nil || !slices.Equal(back, q) {
			t.Errorf("%s reads as %v, %v", text, back, err)
		}
		if again, err := five.ParsePalette(string(text)); err != nil || !slices.Equal(again, q) {
			t.Errorf("%s reads by the house rules as %v, %v", text, again, err)
		}
	}
	most := r
	most.Limit = maxSwatches
	if q, err := most.Palette(six...); err != nil || len(q) != 6 {
		t.Errorf("a house that allows six: %v, %v", q, err)
	}
	one := r
	one.Limit = 1
	if q, err := one.Palette(six[0]); err != nil || len(q) != 1 {
		t.Errorf("a house that allows one: %v, %v", q, err)
	}

	for _, test := range []struct {
		rules    Rules
		swatches []Swatch
		err      error
		want     string
		reason   string
	}{
		{r, nil, units.ErrRange, `swatches "": out of range: want 1 to 4 of them, not 0`, "none"},
		{r, six[:5], units.ErrRange, `swatches "black, white, red, lime, blue": out of range: want 1 to 4 of them, not 5`, "five, metals or not"},
		{one, six[:2], units.ErrRange, `swatches "black, white": out of range: want 1 to 1 of them, not 2`, "a house that allows one"},
		{r, []Swatch{{"", Color{}, 0}}, units.ErrSyntax, `/swatches/0/name "": not understood: want 1 to 40 bytes of printable text without , : = and spaces at the ends`, "no name"},
		{r, []Swatch{{" x", Color{}, 0}}, units.ErrSyntax, `/swatches/0/name " x": not understood: want 1 to 40 bytes of printable text without , : = and spaces at the ends`, "a space before"},
		{r, []Swatch{{"x", Color{}, 64}}, units.ErrName, `/swatches/0/finish "not a finish": unknown name: want matte, shiny, glitter, clear, metal or natural`, "no such finish"},
		{r, []Swatch{{"Ruby", Color{255, 0, 0}, 0}, {"pine", Color{0, 99, 0}, 0}, {"RUBY", Color{0, 0, 255}, 0}}, units.ErrDuplicate, `/swatches/2/name "Ruby and RUBY": duplicate: want a name of its own for each`, "one name in two spellings"},
		// By the paper's formula in slow form: 9.7135.
		{r, swatches("gold", "crimson", "indianred"), units.ErrFit, `/swatches/2/color "crimson and indianred, 9.71 apart": does not fit: want at least 10 apart`, "two that the eye takes for one"},
		{r, []Swatch{{"a", Color{1, 2, 3}, Matte}, {"b", Color{1, 2, 3}, Metal}}, units.ErrFit, `/swatches/1/color "a and b, 0.00 apart": does not fit: want at least 10 apart`, "a finish is no color of its own"},
		{Rules{2, 0, 0}, []Swatch{{"a", Color{1, 2, 3}, Matte}, {"b", Color{1, 2, 3}, Metal}}, units.ErrFit, `/swatches/1/color "a and b, 0.00 apart": does not fit: want at least 0 apart`, "equal colors, even at 0"},
		{Rules{0, 10, 10}, six[:1], units.ErrRange, `/limit "0": out of range: want 1 to 6`, "no limit"},
		{Rules{7, 10, 10}, six[:1], units.ErrRange, `/limit "7": out of range: want 1 to 6`, "a limit over the room"},
		{Rules{4, -1, 10}, six[:1], units.ErrRange, `/apart "-1": out of range: want 0 to 100`, "a negative threshold"},
		{Rules{4, 101, 10}, six[:1], units.ErrRange, `/apart "101": out of range: want 0 to 100`, "a threshold over black to white"},
		{Rules{4, math.NaN(), 10}, six[:1], units.ErrRange, `/apart "NaN": out of range: want 0 to 100`, "no number"},
		{Rules{4, 10, -0.5}, six[:1], units.ErrRange, `/fit "-0.5": out of range: want 0 to 100`, "a negative tolerance"},
		{Rules{4, 10, math.Inf(1)}, six[:1], units.ErrRange, `/fit "+Inf": out of range: want 0 to 100`, "no number"},
	} {
		got, err := test.rules.Palette(test.swatches...)
		checkError(t, err, test.err, "palette.Rules.Palette: "+test.want)
		if got != nil {
			t.Errorf("%s: %v beside an error", test.reason, got)
		}
	}

	// The threshold itself holds, and the next float above it does not.
	d := four[0].Color.Difference(four[1].Color)
	if _, err := (Rules{4, d, 0}).Palette(four[:2]...); err != nil {
		t.Errorf("exactly the threshold apart: %v", err)
	}
	if _, err := (Rules{4, math.Nextafter(d, 100), 0}).Palette(four[:2]...); err == nil {
		t.Error("just under the threshold apart is taken for two colors")
	}
	if _, err := (Rules{4, 0, 100}).Palette(four[:2]...); err != nil {
		t.Errorf("the ends of the ranges: %v", err)
	}
	if _, err := (Rules{4, 100, 0}).Palette(four[0]); err != nil {
		t.Errorf("the ends of the ranges: %v", err)
	}
}

// A palette that was put together by hand is checked where it is used; in JSON it is a text, so that the whole is at fault.
func TestPaletteByHand(t *testing.T) {
	a, b := Swatch{Name: "a"}, Swatch{Name: "b", Color: Color{255, 255, 255}}
	for _, test := range []struct {
		p    Palette
		err  error
		want string
	}{
		{Palette{a, {Name: "b,c"}}, units.ErrSyntax, `palette "b,c": not understood: want 1 to 40 bytes of printable text without , : = and spaces at the ends`},
		{Palette{a, {Name: "b", Finish: 64}}, units.ErrName, `palette "not a finish": unknown name: want matte, shiny, glitter, clear, metal or natural`},
		{Palette{a, b, {Name: "A", Color: Color{9, 9, 200}}}, units.ErrDuplicate, `palette "A": duplicate: want a name of its own for each`},
	} {
		_, err := CommonPractice().Read(test.p, Swatch{})
		checkError(t, err, test.err, "palette.Rules.Read: "+test.want)
		_, err = test.p.Share(7, 49)
		checkError(t, err, test.err, "palette.Palette.Share: "+test.want)
	}
	if got := (Swatch{}).String(); got != "" {
		t.Errorf("no swatch prints as %q", got)
	}
}

func TestParsePalette(t *testing.T) {
	r := CommonPractice()
	for _, test := range []struct {
		text string
		err  error
		want string
	}{
		{"", units.ErrSyntax, `text "": not understood: want #rrggbb, #rgb or a color name of 1 to 64 bytes`},
		{"crimson,", units.ErrSyntax, `text "": not understood: want #rrggbb, #rgb or a color name of 1 to 64 bytes`},
		{"crimson;gold", units.ErrName, `text "crimson;gold": unknown name: want #rrggbb, #rgb or a color name`},
		{"red,lime,blue,white,black", units.ErrRange, `text "red, lime, blue, white, black": out of range: want 1 to 4 of them, not 5`},
		{strings.Repeat(" ", 1025), units.ErrSyntax, `text "` + strings.Repeat(" ", 64) + `…": not understood: want at most 1024 bytes`},
	} {
		got, err := r.ParsePalette(test.text)
		checkError(t, err, test.err, "palette.Rules.ParsePalette: "+test.want)
		if got != nil {
			t.Errorf("%v beside an error", got)
		}
	}
	blank := strings.Repeat(" ", 340)
	if _, err := r.ParsePalette("red" + strings.Repeat(" ", 117) + ",gold"); err != nil {
		t.Errorf("spaces: %v", err)
	}
	if _, err := r.ParsePalette(blank + blank + blank + "gold"); err == nil || !strings.Contains(err.Error(), "128 bytes") {
		t.Errorf("1024 bytes in one swatch: %v", err)
	}
}

// What the package gives back goes through JSON and comes back as it was.
func TestResultsReadBack(t *testing.T) {
	r := CommonPractice()
	p := mustPalette(t, "crimson,forestgreen,gold:metal")
	reading, err := r.Read(p, Swatch{})
	if err != nil {
		t.Fatal(err)
	}
	readsBack(t, reading)
	suggestions, err := r.Suggest(p, Swatch{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	readsBack(t, suggestions)
	sorting, err := r.Sort(p, randomBox(20, 1))
	if err != nil {
		t.Fatal(err)
	}
	readsBack(t, sorting)
	sharing, err := p.Share(7, 49)
	if err != nil {
		t.Fatal(err)
	}
	readsBack(t, sharing)
}

func readsBack[T any](t *testing.T, in T) {
	t.Helper()
	text, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	var out T
	if err := json.Unmarshal(text, &out); err != nil {
		t.Errorf("%s does not read: %v", text, err)
	}
	if diff := cmp.Diff(in, out); diff != "" {
		t.Errorf("%T reads back otherwise (-in +out):\n%s", in, diff)
	}
}

func TestPaletteText(t *testing.T) {
	type document struct {
		Palette Palette
		Extra   Swatch
	}
	in := document{mustPalette(t, "crimson,pine=#0b3d0b:glitter,gold:metal"), Swatch{"ivory", Color{255, 255, 240}, Shiny}}
	text, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	const want = `{"Palette":"crimson,pine=#0b3d0b:glitter,gold:metal","Extra":{"name":"ivory","color":"#fffff0","finish":"shiny"}}`
	if string(text) != want {
		t.Errorf("JSON %s, want %s", text, want)
	}
	var out document
	if err := json.Unmarshal(text, &out); err != nil || !cmp.Equal(out, in) {
		t.Errorf("%s reads as %v, %v", text, out, err)
	}

	var p Palette
	flags := flag.NewFlagSet("", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.TextVar(&p, "colors", Palette{}, "")
	if err := flags.Parse([]string{"-colors", "crimson,gold:metal"}); err != nil || !slices.Equal(p, mustPalette(t, "crimson,gold:metal")) {
		t.Errorf("flag gives %v, %v", p, err)
	}
	checkError(t, p.UnmarshalText([]byte("x")), units.ErrName, `palette.Palette.UnmarshalText: text "x": unknown name: want #rrggbb, #rgb or a color name`)
	if !slices.Equal(p, mustPalette(t, "crimson,gold:metal")) {
		t.Errorf("a failed UnmarshalText left %v", p)
	}
	if err := p.UnmarshalText(nil); err != nil || p != nil {
		t.Errorf("the empty text reads as %v, %v", p, err)
	}
	if text, err := (Palette{}).MarshalText(); err != nil || len(text) != 0 {
		t.Errorf("the zero palette is %q, %v", text, err)
	}
}

// palettes draws palettes that r allows.
func palettes(r Rules) *rapid.Generator[Palette] {
	return rapid.Custom(func(t *rapid.T) Palette {
		n := rapid.IntRange(1, r.Limit).Draw(t, "n")
		var s []Swatch
		for i := range n {
			s = append(s, Swatch{fmt.Sprint("color ", i), colors().Draw(t, "color"), Finish(rapid.IntRange(0, 4).Draw(t, "finish"))})
		}
		p, err := r.Palette(s...)
		for err != nil { // two alike: one fewer
			s = s[:len(s)-1]
			p, err = r.Palette(s...)
		}
		return p
	})
}

func TestPaletteRoundTrip(t *testing.T) {
	r := CommonPractice()
	rapid.Check(t, func(t *rapid.T) {
		p := palettes(r).Draw(t, "p")
		if got, err := r.ParsePalette(p.String()); err != nil || !slices.Equal(got, p) {
			t.Fatalf("ParsePalette(%q) = %v, %v", p, got, err)
		}
	})
}

func FuzzParsePalette(f *testing.F) {
	for _, s := range []string{"", "crimson", "crimson,forestgreen,gold:metal,ivory", "a=#123:clear,b=#fed", "#fff,#000", ",", "=", ":", "x=gold:", "é=gold", "red,RED"} {
		f.Add(s)
	}
	r := CommonPractice()
	f.Fuzz(func(t *testing.T, text string) {
		p, err := r.ParsePalette(text)
		if err != nil {
			if p != nil {
				t.Errorf("%v beside %v", p, err)
			}
			return
		}
		if len(p) < 1 || len(p) > 4 || strings.Count(text, ",")+1 != len(p) {
			t.Errorf("%q has %d swatches", text, len(p))
		}
		if again, err := r.ParsePalette(p.String()); err != nil || !slices.Equal(again, p) {
			t.Errorf("%q reads as %v, and that as %v, %v", text, p, again, err)
		}
	})
}

func FuzzParseSwatch(f *testing.F) {
	for _, s := range []string{"", "crimson", "gold:metal", "barn red=#7c0a02:shiny", "a=b=c", "a:b:c", " x = red : clear "} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := ParseSwatch(text)
		if err != nil {
			if s != (Swatch{}) {
				t.Errorf("%v beside %v", s, err)
			}
			return
		}
		if err := s.check("", "", ""); err != nil {
			t.Errorf("%q reads as %+v, which no palette takes: %v", text, s, err)
		}
		if again, err := ParseSwatch(s.String()); err != nil || again != s {
			t.Errorf("%q reads as %+v, and that as %+v, %v", text, s, again, err)
		}
	})
}

func FuzzParseFinish(f *testing.F) {
	f.Add("metal")
	f.Add("")
	f.Fuzz(func(t *testing.T, text string) {
		got, err := parseFinish("Finish.UnmarshalText", text)
		if err == nil && got.String() != strings.ToLower(strings.TrimSpace(text)) {
			t.Errorf("ParseFinish(%q) = %v", text, got)
		}
		if err != nil && got != 0 {
			t.Errorf("%v beside %v", got, err)
		}
	})
}

func TestClip(t *testing.T) {
	for _, test := range []struct{ text, want string }{
		{strings.Repeat("x", 64), strings.Repeat("x", 64)},
		{strings.Repeat("x", 65), strings.Repeat("x", 64) + "…"},
		{strings.Repeat("x", 63) + "éé", strings.Repeat("x", 63) + "…"},
		{strings.Repeat("x", 61) + "𝄞x", strings.Repeat("x", 61) + "…"},
		{strings.Repeat("\x80", 70), strings.Repeat("\x80", 60) + "…"},
	} {
		if got := clip(test.text); got != test.want {
			t.Errorf("clip(%q) = %q, want %q", test.text, got, test.want)
		}
	}
}

func TestCut(t *testing.T) {
	for _, test := range []struct {
		v      float64
		places int
		want   string
	}{
		{9.999, 2, "9.99"},
		{9.96, 1, "9.9"},
		{10, 1, "10.0"},
		{0, 1, "0.0"},
		{0.05, 1, "0.0"},
	} {
		if got := cut(test.v, test.places); got != test.want {
			t.Errorf("cut(%v, %d) = %s, want %s", test.v, test.places, got, test.want)
		}
	}
}
