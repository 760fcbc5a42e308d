package show_test

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"

	"example.com/fircone/examples/notebook/show"
	"example.com/fircone/palette"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

func ExampleTable() {
	needs := []shopping.Need{
		{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: 27}, Basis: "3 for each foot of 9 ft"},
		{Item: shopping.Item{Kind: shopping.Garland, Type: "pine & cone"}, Quantity: shopping.Quantity{Length: 81 * units.Foot}},
	}
	fmt.Println(show.Table(needs, "Item", "Quantity", "Basis"))
	// Output:
	// <table>
	// <tr><th style="text-align:left">item</th><th style="text-align:right">quantity</th><th style="text-align:left">basis</th></tr>
	// <tr><td style="text-align:left">picks</td><td style="text-align:right">27</td><td style="text-align:left">3 for each foot of 9 ft</td></tr>
	// <tr><td style="text-align:left">garland, pine &amp; cone</td><td style="text-align:right">81 ft</td><td style="text-align:left"></td></tr>
	// </table>
}

func TestTableOfAllFields(t *testing.T) {
	type row struct {
		HookLoad int
		hidden   int
	}
	got := show.Table([]row{{HookLoad: 1, hidden: 2}})
	if want := "<table>\n<tr><th style=\"text-align:right\">hook load</th></tr>\n<tr><td style=\"text-align:right\">1</td></tr>\n</table>"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// Numbers and lengths stand at the right, rounded; colors have a chip; slices have commas.
func TestCells(t *testing.T) {
	type row struct {
		Apart units.Length
		Area  units.Area
		Ratio float64
		Color palette.Swatch
		Plain palette.Color
		Sizes []units.Length
		Said  bool
	}
	red := palette.Color{220, 20, 60}
	got := show.Table([]row{{
		Apart: 10*units.Inch + units.Inch/5, Area: 12 * units.SquareInch, Ratio: 1.23456, Color: palette.Swatch{Name: "red <b>", Color: red}, Plain: red,
		Sizes: []units.Length{units.Inch, units.Foot},
	}})
	for _, want := range []string{
		`<td style="text-align:right">10 1/4 in</td>`, `<td style="text-align:right">0.1 sq ft</td>`, `<td style="text-align:right">1.23</td>`,
		`background:#dc143c"></span>red &lt;b&gt;</td>`, `></span>#dc143c</td>`, `<td style="text-align:left">1 in, 1 ft</td>`, `<td style="text-align:left">false</td>`,
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %s in\n%s", want, got)
		}
	}
}

func ExampleList() {
	fmt.Println(show.List([]units.Length{6 * units.Inch, 3 * units.Foot}))
	// Output:
	// <ul>
	// <li>6 in</li>
	// <li>3 ft</li>
	// </ul>
}

func ExamplePalette() {
	colors, err := palette.CommonPractice().ParsePalette("crimson,ivory")
	html := show.Palette(colors)
	fmt.Println(strings.Count(html, "<span"), strings.Contains(html, "#dc143c"), strings.Contains(html, "ivory"), err)
	// Output: 2 true true <nil>
}

// The longest bar is 390 wide, and 36 of 72 is half of that.
func ExampleBars() {
	svg := show.Bars("Garland", "ft", show.Bar{Name: "4 ft", Value: 36}, show.Bar{Name: "8 ft", Value: 72})
	fmt.Println(strings.Contains(svg, `width="195.0"`), strings.Contains(svg, `width="390.0"`), strings.Contains(svg, ">72 ft<"))
	// Output: true true true
}

func TestBarsAndPoints(t *testing.T) {
	if svg := show.Bars("none <", "ft", show.Bar{Name: "a"}); !strings.Contains(svg, `width="0.0"`) || !strings.Contains(svg, "none &lt;") {
		t.Error(svg)
	}
	svg := show.Plot("t", "x", "y", show.Line{Name: "p", X: []float64{1, 2, 3}, Y: []float64{1, 2, 3}, Points: true})
	if strings.Count(svg, "<circle") != 3 || strings.Contains(svg, "stroke-dasharray") {
		t.Error(svg)
	}
}

func ExamplePlot() {
	svg := show.Plot("Garland", "height, ft", "garland, ft", show.Line{
		Name: "by rule", X: []float64{4, 16}, Y: []float64{36, 144},
	})
	fmt.Println(strings.Contains(svg, "<title>Garland</title>"))
	// The axes go to 16 and to 160: the line runs from a quarter of the way along,
	// 36/160 of the way up, to the end, 144/160 of the way up.
	fmt.Println(strings.Contains(svg, `d="M170.5 276.2L490.0 67.0"`))
	// Output:
	// true
	// true
}

// Whatever the numbers, a plot is well-formed XML with a name for each line, and
// no two names in one place.
func TestPlot(t *testing.T) {
	for _, most := range []float64{0, 1e-3, 0.9, 1, 9, 9.1, 10, 12, 45, 46, 99, 1e6} {
		var lines []show.Line
		for i := range 6 {
			lines = append(lines, show.Line{Name: fmt.Sprintf("<%d>", i), X: []float64{0, most}, Y: []float64{most, most}})
		}
		svg := show.Plot("a & b", "x", "y", lines...)
		dec := xml.NewDecoder(strings.NewReader(svg))
		marks, names := 0, map[string]bool{}
		for {
			token, err := dec.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatalf("most %g: %v\n%s", most, err, svg)
			}
			e, ok := token.(xml.StartElement)
			if !ok || e.Name.Local != "text" {
				continue
			}
			at := map[string]string{}
			for _, a := range e.Attr {
				at[a.Name.Local] = a.Value
			}
			switch {
			case at["x"] == "501.0":
				names[at["y"]] = true
			case at["text-anchor"] == "end":
				marks++
			}
		}
		if len(names) != 6 {
			t.Errorf("most %g: %d places for 6 names", most, len(names))
		}
		if marks < 2 || marks > 11 {
			t.Errorf("most %g: %d marks on an axis", most, marks)
		}
	}
}

func TestPanics(t *testing.T) {
	one := []float64{1}
	for reason, call := range map[string]func(){
		"no slice":           func() { show.Table(1) },
		"a slice of numbers": func() { show.Table(one) },
		"no such field":      func() { show.Table([]shopping.Need{}, "Price") },
		"no list":            func() { show.List(1) },
		"no bars":            func() { show.Bars("", "") },
		"a bar of nothing":   func() { show.Bars("", "", show.Bar{Value: math.NaN()}) },
		"no line":            func() { show.Plot("", "", "") },
		"seven lines":        func() { show.Plot("", "", "", make([]show.Line, 7)...) },
		"no points":          func() { show.Plot("", "", "", show.Line{}) },
		"more x than y":      func() { show.Plot("", "", "", show.Line{X: []float64{1, 2}, Y: one}) },
		"a negative":         func() { show.Plot("", "", "", show.Line{X: one, Y: []float64{-1}}) },
		"no number":          func() { show.Plot("", "", "", show.Line{X: one, Y: []float64{math.NaN()}}) },
		"an infinity":        func() { show.Plot("", "", "", show.Line{X: []float64{math.Inf(1)}, Y: one}) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s: no panic", reason)
				}
			}()
			call()
		}()
	}
}
