package golden

import (
	"fmt"
	"strings"

	"example.com/fircone/palette"
)

// colors are the ones that the lines are about: those of the season, greys, and the corners of sRGB.
var colors = strings.Fields(`#dc143c #b22222 #8b0000 #228b22 #006400 #2e8b57 #ffd700 #daa520 #c0c0c0 #ffffff #fffff0 #000000 #4169e1 #000080 #87ceeb
	#008080 #dda0dd #d2691e #ff0000 #00ff00 #0000ff #ffff00 #00ffff #ff00ff #808080 #7c0a02 #cd5c5c #010101 #fefefe #f5f5dc`)

func color(hex string) palette.Color { return palette.MustParseColor(hex) }

func lab(l palette.Lab) string { return num(l.L) + " " + num(l.A) + " " + num(l.B) }

func count(n []int) string { return strings.Trim(fmt.Sprint(n), "[]") }

// views are the ways of looking, in the order of the palette's own.
var views = []struct {
	word string
	view palette.View
}{
	{"daylight", palette.Daylight},
	{"warm", palette.WarmLight},
	{"protan", palette.Protan},
	{"deutan", palette.Deutan},
	{"tritan", palette.Tritan},
	{"warm protan", palette.WarmProtan},
	{"warm deutan", palette.WarmDeutan},
	{"warm tritan", palette.WarmTritan},
}

func palettePage(p *page) {
	for _, hex := range colors {
		c := color(hex)
		l := c.Lab()
		p.add("color %s = lab %s, chroma %s, hue %s, name %q", hex, lab(l), num(l.Chroma()), num(l.Hue()), c.Name())
		for _, v := range views {
			p.add("seen %s by %s = %s", hex, v.word, or(lab)(v.view.Lab(c)))
		}
	}
	for i, a := range colors {
		for _, b := range colors[i+1:] {
			p.add("apart %s %s = %s", a, b, num(color(a).Difference(color(b))))
		}
	}
	for _, text := range []string{
		"crimson", "Forest Green", "forestgreen", " NAVY ", "#0f0", "#B22222", "#b2222", "#gggggg", "", "red red", "rebeccapurple", "grey", "gray",
		"aqua", "cyan", "#12345678", "tinsel", "0f0",
	} {
		p.add("read color %q = %s", text, or(palette.Color.String)(palette.ParseColor(text)))
	}
	shares(p)
	boxes(p)
}

func shares(p *page) {
	for _, total := range []int{0, 1, 2, 7, 49, 50, 63, 100, 999, 1_000_000} {
		for _, weights := range [][]int{{100}, {60, 40}, {60, 30, 10}, {40, 30, 20, 10}, {1, 1, 1}, {1, 2, 3, 4, 5, 6, 7}, {5, 0, 5}, {333, 333, 334}, {0, 0}, {1, -1}} {
			for _, least := range []int{0, 1, 3} {
				p.add("share out %d by %s, least %d = %s", total, count(weights), least, or(count)(palette.Apportion(total, weights, least)))
			}
		}
	}
	for _, hexes := range palettes {
		for _, t := range []palette.Totals{{Types: 7, Pieces: 49}, {Types: 9, Pieces: 81}, {Pieces: 30}, {Types: 4}, {Types: 2, Pieces: 3}, {Types: 12, Pieces: 144, Shares: []int{4, 3, 2, 1}[:len(hexes)]}} {
			row := make([]string, 0, len(hexes))
			s, err := made(hexes).Share(t)
			for _, r := range s {
				row = append(row, fmt.Sprintf("%d types %d pieces (%s)", r.Types, r.Pieces, count(r.Each())))
			}
			p.add("deal %d types %d pieces by %v over %d colors = %s", t.Types, t.Pieces, t.Shares, len(hexes), or(func([]string) string { return strings.Join(row, ", ") })(row, err))
		}
	}
}

// palettes are palettes of one to four colors.
var palettes = [][]string{
	{"#dc143c", "#228b22", "#ffd700", "#fffff0"},
	{"#000080", "#c0c0c0", "#ffffff"},
	{"#8b0000", "#006400"},
	{"#008080", "#dda0dd", "#daa520", "#000000"},
	{"#b22222", "#2e8b57", "#fffff0", "#ffd700"},
	{"#4169e1"},
}

// made makes a palette of the table above.
func made(hexes []string) palette.Palette {
	swatches := make([]palette.Swatch, 0, len(hexes))
	for _, hex := range hexes {
		swatches = append(swatches, palette.Swatch{Name: "c" + hex[1:], Color: color(hex)})
	}
	made, err := palette.CommonPractice().Palette(swatches...)
	if err != nil {
		panic(err)
	}
	return made
}

// boxes adds what palettes say of themselves and of what is owned.
func boxes(p *page) {
	r := palette.CommonPractice()
	for _, hexes := range palettes {
		reading, err := r.Read(made(hexes), palette.Swatch{})
		if err != nil {
			p.add("tell apart %s = %s", strings.Join(hexes, " "), refusal(err))
		}
		for _, pair := range reading.Pairs {
			for _, v := range views {
				p.add("tell apart %s %s by %s = %s, %t", pair.A.Color, pair.B.Color, v.word, num(pair.Difference[v.view]), pair.Holds[v.view])
			}
			if m := pair.Mend; m != (palette.Mend{}) {
				p.add("mend %s %s = %s to %s, lightness %s to %s in %s", pair.A.Color, pair.B.Color, m.Was, m.Swatch.Color, num(m.Now), num(m.Needed), m.View)
			}
		}
		if len(hexes) < 4 {
			more, err := r.Suggest(made(hexes), palette.Swatch{}, nil)
			if err != nil {
				p.add("add to %s = %s", strings.Join(hexes, " "), refusal(err))
			}
			for i, s := range more {
				p.add("add to %s, %d = %s, least %s to %s by %s, %t", strings.Join(hexes, " "), i+1, s.Swatch.Color, num(s.Least), s.Nearest.Color, s.View, s.Holds)
			}
		}
		for _, hex := range colors {
			m, err := r.Match(made(hexes), palette.Piece{Color: color(hex)})
			p.add("match %s with %s = %s", hex, strings.Join(hexes, " "), or(func(m palette.Match) string {
				return fmt.Sprintf("%d, %s away, fits %t", m.Index+1, num(m.Difference), m.Fits)
			})(m, err))
		}
	}
	fir := palette.Swatch{Name: "fir", Color: color("#355e3b")}
	for _, hexes := range palettes {
		reading, err := r.Read(made(hexes), fir)
		if err != nil {
			p.add("on fir %s = %s", strings.Join(hexes, " "), refusal(err))
		}
		for _, pair := range reading.Background {
			for _, v := range views {
				p.add("on fir %s by %s = %s, %t", pair.A.Color, v.word, num(pair.Difference[v.view]), pair.Holds[v.view])
			}
			p.add("on fir %s, mended = %s", pair.A.Color, pair.Mend.Swatch.Color)
		}
	}
	gold, err := r.ParsePalette("gold:metal,silver:metal,copper:metal,bronze:metal")
	if err != nil {
		p.add("metals = %s", refusal(err))
	}
	for _, hex := range append([]string{"#d4af37", "#b8913d", "#c9ae5d", "#b87333", "#cb6d51", "#d8d8d8", "#848482", "#6c541e"}, colors...) {
		p.add("metal %s = %s", hex, or(func(m palette.Match) string {
			return fmt.Sprintf("%d, %s away, fits %t", m.Index+1, num(m.Difference), m.Fits)
		})(r.Match(gold, palette.Piece{Color: color(hex), Finish: palette.Metal})))
	}
	var d draw
	for range 40 {
		box := make([]palette.Piece, 1+d.upTo(9))
		texts := make([]string, len(box))
		for i := range box {
			box[i] = palette.Piece{Color: color(colors[d.upTo(len(colors))]), Count: 1 + d.upTo(12)}
			texts[i] = fmt.Sprintf("%d %s", box[i].Count, box[i].Color)
		}
		hexes := palettes[d.upTo(len(palettes))]
		sorted, err := r.Sort(made(hexes), box)
		p.add("sort %s by %s = %s", strings.Join(texts, ", "), strings.Join(hexes, " "), or(kept)(sorted, err))
		best, err := r.Best(box)
		p.add("best of %s = %s", strings.Join(texts, ", "), or(func(s palette.Sorting) string {
			words := make([]string, 0, 4)
			for _, s := range best.Palette.Swatches() {
				words = append(words, s.Color.String())
			}
			return strings.Join(words, " ") + ": " + kept(s)
		})(best, err))
	}
}

func kept(s palette.Sorting) string {
	six := [6]int{}
	copy(six[:], s.Kept)
	return fmt.Sprintf("kept %s, left %d", count(six[:]), s.Left)
}
