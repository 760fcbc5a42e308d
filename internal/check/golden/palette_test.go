package golden

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/fircone/palette"
	"example.com/fircone/units"
)

// colors are the ones that the lines are about: those of the season, greys, and the corners of sRGB.
var colors = strings.Fields(`#dc143c #b22222 #8b0000 #228b22 #006400 #2e8b57 #ffd700 #daa520 #c0c0c0 #ffffff #fffff0 #000000 #4169e1 #000080 #87ceeb
	#008080 #dda0dd #d2691e #ff0000 #00ff00 #0000ff #ffff00 #00ffff #ff00ff #808080 #7c0a02 #cd5c5c #010101 #fefefe #f5f5dc`)

func color(hex string) palette.Color { return units.Must(palette.ParseColor(hex)) }

func lab(l [3]float64) string { return num(l[0]) + " " + num(l[1]) + " " + num(l[2]) }

// least returns the least difference of a pair, and its view.
func least(p palette.Pair) (least float64, in palette.View) {
	least = p.Difference[palette.Daylight]
	for v, d := range p.Difference {
		if d < least || d == least && v < in {
			least, in = d, v
		}
	}
	return least, in
}

// lightness returns L* of a color in a view.
func lightness(v palette.View, c palette.Color) float64 { return units.Must(v.Lab(c))[0] }

// best returns where in a palette the first match of a sorting belongs.
func best(s palette.Sorting) string {
	m := s.Matches[0]
	return fmt.Sprintf("%d, %s away, fits %t", slices.Index(s.Palette, m.Swatch)+1, num(m.Difference), m.Fits)
}

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
		p.add("color %s = lab %s, name %q", hex, or(lab)(palette.Daylight.Lab(c)), c.Name())
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
		for _, t := range []struct {
			types, pieces int
			shares        []int
		}{{types: 7, pieces: 49}, {types: 9, pieces: 81}, {pieces: 30}, {types: 4}, {types: 2, pieces: 3}, {types: 12, pieces: 144, shares: []int{4, 3, 2, 1}[:len(hexes)]}} {
			row := make([]string, 0, len(hexes))
			s, err := made(hexes).Share(t.types, t.pieces, t.shares...)
			for _, r := range s {
				var each []int
				if r.Types > 0 {
					each = units.Must(palette.Apportion(r.Pieces, slices.Repeat([]int{1}, r.Types), 0))
				}
				row = append(row, fmt.Sprintf("%d types %d pieces (%s)", r.Types, r.Pieces, count(each)))
			}
			p.add("deal %d types %d pieces by %v over %d colors = %s", t.types, t.pieces, t.shares, len(hexes), or(func([]string) string { return strings.Join(row, ", ") })(row, err))
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
				p.add("tell apart %s %s by %s = %s, %t", pair.A.Color, pair.B.Color, v.word, num(pair.Difference[v.view]), pair.Difference[v.view] >= r.Apart)
			}
			if m := pair.Mend; m != (palette.Swatch{}) {
				was, other := pair.A.Color, pair.B.Color
				if m.Name == pair.B.Name {
					was, other = other, was
				}
				_, v := least(pair)
				p.add("mend %s %s = %s to %s, lightness %s to %s in %s", pair.A.Color, pair.B.Color, was, m.Color,
					num(math.Abs(lightness(v, was)-lightness(v, other))), num(math.Abs(lightness(v, m.Color)-lightness(v, other))), v)
			}
		}
		if len(hexes) < 4 {
			more, err := r.Suggest(made(hexes), palette.Swatch{}, nil)
			if err != nil {
				p.add("add to %s = %s", strings.Join(hexes, " "), refusal(err))
			}
			for i, s := range more {
				d, v := least(s.Nearest)
				p.add("add to %s, %d = %s, least %s to %s by %s, %t", strings.Join(hexes, " "), i+1, s.Swatch.Color, num(d), s.Nearest.A.Color, v, d >= r.Apart)
			}
		}
		for _, hex := range colors {
			p.add("match %s with %s = %s", hex, strings.Join(hexes, " "), or(best)(r.Sort(made(hexes), []palette.Piece{{Color: color(hex)}})))
		}
	}
	fir := palette.Swatch{Name: "fir", Color: color("#355e3b")}
	for _, hexes := range palettes {
		reading, err := r.Read(made(hexes), fir)
		if err != nil {
			p.add("on fir %s = %s", strings.Join(hexes, " "), refusal(err))
		}
		for _, pair := range reading.Pairs[len(hexes)*(len(hexes)-1)/2:] {
			for _, v := range views {
				p.add("on fir %s by %s = %s, %t", pair.A.Color, v.word, num(pair.Difference[v.view]), pair.Difference[v.view] >= r.Apart)
			}
			p.add("on fir %s, mended = %s", pair.A.Color, pair.Mend.Color)
		}
	}
	gold, err := r.ParsePalette("gold:metal,silver:metal,copper:metal,bronze:metal")
	if err != nil {
		p.add("metals = %s", refusal(err))
	}
	for _, hex := range append([]string{"#d4af37", "#b8913d", "#c9ae5d", "#b87333", "#cb6d51", "#d8d8d8", "#848482", "#6c541e"}, colors...) {
		p.add("metal %s = %s", hex, or(best)(r.Sort(gold, []palette.Piece{{Color: color(hex), Finish: palette.Metal}})))
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
		most, err := r.Best(box)
		p.add("best of %s = %s", strings.Join(texts, ", "), or(func(s palette.Sorting) string {
			words := make([]string, 0, 4)
			for _, s := range most.Palette {
				words = append(words, s.Color.String())
			}
			return strings.Join(words, " ") + ": " + kept(s)
		})(most, err))
	}
}

func kept(s palette.Sorting) string {
	six := [6]int{}
	copy(six[:], s.Kept)
	return fmt.Sprintf("kept %s, left %d", count(six[:]), s.Left)
}
