// Package show makes tables, lists, palettes, bars and plots for a notebook: pieces of
// HTML, to be shown with the kernel's own display function.
package show

import (
	"fmt"
	"html"
	"math"
	"reflect"
	"strconv"
	"strings"
	"unicode"

	"github.com/shopspring/decimal"

	"example.com/fircone/palette"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// Table returns an HTML table of a slice of structs: a row for each, and a column
// for each of the fields named or, if none is, for each exported field. Numbers and
// quantities stand at the right and are rounded: a length to a quarter inch, an area
// to a tenth of a square foot, a number to three digits. A color has a chip beside its
// name, and a slice commas between its values. Any other value is written as
// fmt.Sprint does. It panics if rows is no slice of structs or a field is not there.
func Table(rows any, fields ...string) string {
	list := reflect.ValueOf(rows)
	if list.Kind() != reflect.Slice || list.Type().Elem().Kind() != reflect.Struct {
		panic(fmt.Sprintf("show.Table: %T is no slice of structs", rows))
	}
	typ := list.Type().Elem()
	if len(fields) == 0 {
		for i := range typ.NumField() {
			if typ.Field(i).IsExported() {
				fields = append(fields, typ.Field(i).Name)
			}
		}
	}
	var b strings.Builder
	b.WriteString("<table>\n<tr>")
	sides := make([]string, len(fields))
	for i, name := range fields {
		f, ok := typ.FieldByName(name)
		if !ok {
			panic(fmt.Sprintf("show.Table: %v has no field %q", typ, name))
		}
		sides[i] = side(f.Type)
		b.WriteString(`<th style="text-align:` + sides[i] + `">` + html.EscapeString(words(name)) + "</th>")
	}
	b.WriteString("</tr>\n")
	for i := range list.Len() {
		b.WriteString("<tr>")
		for k, name := range fields {
			b.WriteString(`<td style="text-align:` + sides[k] + `">` + cell(list.Index(i).FieldByName(name)) + "</td>")
		}
		b.WriteString("</tr>\n")
	}
	b.WriteString("</table>")
	return b.String()
}

// side returns the side at which the values of a type stand.
func side(t reflect.Type) string {
	switch reflect.Zero(t).Interface().(type) {
	case units.Length, units.Area, units.Mass, units.Power, shopping.Quantity, decimal.Decimal:
		return "right"
	case fmt.Stringer:
		return "left"
	}
	switch t.Kind() {
	case reflect.Int, reflect.Int64, reflect.Int32, reflect.Uint8, reflect.Float64:
		return "right"
	}
	return "left"
}

// cell returns a value as HTML.
func cell(v reflect.Value) string {
	switch x := v.Interface().(type) {
	case units.Length:
		return html.EscapeString(x.Format(units.InFeetInches, units.Inch/4))
	case units.Area:
		return html.EscapeString(x.Format(units.InFeet, units.SquareFoot/10))
	case float64:
		return strconv.FormatFloat(x, 'g', 3, 64)
	case palette.Color:
		return chip(x) + html.EscapeString(x.String())
	case palette.Swatch:
		return chip(x.Color) + html.EscapeString(x.Name)
	case fmt.Stringer:
		return html.EscapeString(x.String())
	}
	if v.Kind() == reflect.Slice {
		texts := make([]string, v.Len())
		for i := range texts {
			texts[i] = cell(v.Index(i))
		}
		return strings.Join(texts, ", ")
	}
	return html.EscapeString(fmt.Sprint(v.Interface()))
}

// chip returns a small square of a color, with its code for who cannot see it.
func chip(c palette.Color) string {
	code := fmt.Sprintf("#%02x%02x%02x", c[0], c[1], c[2])
	return `<span title="` + code + `" style="display:inline-block;width:1em;height:1em;margin-right:.4em;vertical-align:-.1em;border:1px solid #555;background:` + code + `"></span>`
}

// Palette returns the colors of a palette in a row, each with its name.
func Palette(p palette.Palette) string {
	var b strings.Builder
	b.WriteString("<p>")
	for i, s := range p {
		if i > 0 {
			b.WriteString(" &nbsp; ")
		}
		b.WriteString(cell(reflect.ValueOf(s)))
	}
	b.WriteString("</p>")
	return b.String()
}

// List returns an HTML list of the values of a slice, each written as in a [Table].
// It panics if items is no slice.
func List(items any) string {
	list := reflect.ValueOf(items)
	if list.Kind() != reflect.Slice {
		panic(fmt.Sprintf("show.List: %T is no slice", items))
	}
	var b strings.Builder
	b.WriteString("<ul>\n")
	for i := range list.Len() {
		b.WriteString("<li>" + cell(list.Index(i)) + "</li>\n")
	}
	b.WriteString("</ul>")
	return b.String()
}

// A Bar is one bar of [Bars].
type Bar struct {
	Name  string
	Value float64
}

// Bars returns a picture (SVG) of bars from zero, each with its name to the left and its
// value, in three digits, to the right. It panics if there are none, or if a value is
// negative or not finite.
func Bars(title, unit string, bars ...Bar) string {
	if len(bars) == 0 {
		panic("show.Bars: no bars")
	}
	most := 0.0
	for _, bar := range bars {
		if !(bar.Value >= 0 && bar.Value <= math.MaxFloat32) {
			panic(fmt.Sprintf("show.Bars: bar %q is %g", bar.Name, bar.Value))
		}
		most = max(most, bar.Value)
	}
	const left, right, row, top = 150, 540, 26, 36
	var b strings.Builder
	fmt.Fprintf(&b, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\" role=\"img\" font-family=\"sans-serif\" font-size=\"12\" style=\"background:#fff;max-width:100%%\">\n",
		plotWide, top+row*len(bars)+8, plotWide)
	fmt.Fprintf(&b, "<title>%s</title>\n<text x=\"8\" y=\"20\" font-size=\"15\" font-weight=\"bold\">%s</text>\n", html.EscapeString(title), html.EscapeString(title))
	for i, bar := range bars {
		wide := 0.0
		if most > 0 {
			wide = (right - left) * bar.Value / most
		}
		y := top + row*i
		fmt.Fprintf(&b, "<text x=\"%d\" y=\"%d\" text-anchor=\"end\">%s</text>\n", left-8, y+14, html.EscapeString(bar.Name))
		fmt.Fprintf(&b, "<rect x=\"%d\" y=\"%d\" width=\"%s\" height=\"%d\" fill=\"%s\"/>\n", left, y, tenth(wide), row-8, inks[0])
		fmt.Fprintf(&b, "<text x=\"%s\" y=\"%d\">%s</text>\n", tenth(left+wide+6), y+14, html.EscapeString(strconv.FormatFloat(bar.Value, 'g', 3, 64)+" "+unit))
	}
	b.WriteString("</svg>")
	return b.String()
}

// words returns the words of a Go name: "HookLoad" is "hook load".
func words(name string) string {
	var b strings.Builder
	for i, r := range name {
		if unicode.IsUpper(r) && i > 0 {
			b.WriteByte(' ')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}

// A Line is one line of a plot: the points X[i], Y[i] in order of X. With Points they
// stand alone and are not joined.
type Line struct {
	Name   string
	X, Y   []float64
	Points bool
}

// The plot's measures, in the units of its picture.
const (
	plotWide, plotHigh = 640, 400
	plotLeft, plotTop  = 64, 36
	plotRight          = 490 // to the right of it stand the names of the lines
	plotBottom         = 346
)

// dashes and inks set lines apart, also where there is no color.
var (
	dashes = [...]string{"", "8 4", "2 4", "10 3 2 3", "5 5", "1 3"}
	inks   = [...]string{"#1f5c3a", "#a3142a", "#7a5200", "#1d4f91", "#5b2a86", "#333333"}
)

// Plot returns a picture (SVG) of at most six lines, with axes from zero to round
// numbers and each line named at its end. It panics if a line has no points, not
// as many X as Y, or a number that is negative or not finite.
func Plot(title, x, y string, lines ...Line) string {
	if len(lines) == 0 || len(lines) > len(inks) {
		panic(fmt.Sprintf("show.Plot: %d lines, want 1 to %d", len(lines), len(inks)))
	}
	var mostX, mostY float64
	for _, l := range lines {
		if len(l.X) == 0 || len(l.X) != len(l.Y) {
			panic(fmt.Sprintf("show.Plot: line %q has %d x and %d y", l.Name, len(l.X), len(l.Y)))
		}
		for i := range l.X {
			if !(l.X[i] >= 0 && l.Y[i] >= 0 && l.X[i] <= math.MaxFloat32 && l.Y[i] <= math.MaxFloat32) {
				panic(fmt.Sprintf("show.Plot: line %q has a point at %g, %g", l.Name, l.X[i], l.Y[i]))
			}
			mostX, mostY = max(mostX, l.X[i]), max(mostY, l.Y[i])
		}
	}
	stepX, stepY := step(mostX), step(mostY)
	mostX, mostY = stepX*max(1, math.Ceil(mostX/stepX)), stepY*max(1, math.Ceil(mostY/stepY))
	atX := func(v float64) float64 { return plotLeft + (plotRight-plotLeft)*v/mostX }
	atY := func(v float64) float64 { return plotBottom - (plotBottom-plotTop)*v/mostY }

	var b strings.Builder
	text := func(x, y float64, anchor, more, s string) {
		fmt.Fprintf(&b, "<text x=\"%s\" y=\"%s\" text-anchor=\"%s\"%s>%s</text>\n", tenth(x), tenth(y), anchor, more, html.EscapeString(s))
	}
	fmt.Fprintf(&b, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\" role=\"img\" font-family=\"sans-serif\" font-size=\"12\" style=\"background:#fff;max-width:100%%\">\n",
		plotWide, plotHigh, plotWide)
	fmt.Fprintf(&b, "<title>%s</title>\n", html.EscapeString(title))
	text(plotLeft, 20, "start", " font-size=\"15\" font-weight=\"bold\"", title)
	for i := 0; ; i++ {
		v := float64(i) * stepX
		if v > mostX {
			break
		}
		fmt.Fprintf(&b, "<path d=\"M%s %dV%d\" stroke=\"#ddd\"/>\n", tenth(atX(v)), plotTop, plotBottom)
		text(atX(v), plotBottom+18, "middle", "", number(v))
	}
	for i := 0; ; i++ {
		v := float64(i) * stepY
		if v > mostY {
			break
		}
		fmt.Fprintf(&b, "<path d=\"M%d %sH%d\" stroke=\"#ddd\"/>\n", plotLeft, tenth(atY(v)), plotRight)
		text(plotLeft-8, atY(v)+4, "end", "", number(v))
	}
	text((plotLeft+plotRight)/2, plotBottom+40, "middle", "", x)
	text(16, (plotTop+plotBottom)/2, "middle", fmt.Sprintf(" transform=\"rotate(-90 16 %d)\"", (plotTop+plotBottom)/2), y)
	fmt.Fprintf(&b, "<path d=\"M%d %dV%dH%d\" fill=\"none\" stroke=\"#333\"/>\n", plotLeft, plotTop, plotBottom, plotRight)
	ends := spread(lines, atY)
	for i, l := range lines {
		var path strings.Builder
		for k := range l.X {
			x, y := tenth(atX(l.X[k])), tenth(atY(l.Y[k]))
			if l.Points {
				fmt.Fprintf(&b, "<circle cx=\"%s\" cy=\"%s\" r=\"3\" fill=\"%s\"/>\n", x, y, inks[i])
				continue
			}
			path.WriteString(map[bool]string{true: "M", false: "L"}[k == 0] + x + " " + y)
		}
		if !l.Points {
			fmt.Fprintf(&b, "<path d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"2\" stroke-dasharray=\"%s\"/>\n", path.String(), inks[i], dashes[i])
		}
		last := len(l.X) - 1
		fmt.Fprintf(&b, "<path d=\"M%s %sL%d %s\" stroke=\"%s\" stroke-width=\".7\"/>\n", tenth(atX(l.X[last])), tenth(atY(l.Y[last])), plotRight+8, tenth(ends[i]), inks[i])
		text(plotRight+11, ends[i]+4, "start", " fill=\""+inks[i]+"\"", l.Name)
	}
	b.WriteString("</svg>")
	return b.String()
}

// spread returns how high the name of each line stands: beside its end, but no
// two closer than a line of text.
func spread(lines []Line, atY func(float64) float64) []float64 {
	const apart = 16
	order := make([]int, len(lines))
	ends := make([]float64, len(lines))
	for i, l := range lines {
		order[i], ends[i] = i, atY(l.Y[len(l.Y)-1])
	}
	for i := range order { // from the top down
		for k := i + 1; k < len(order); k++ {
			if ends[order[k]] < ends[order[i]] {
				order[i], order[k] = order[k], order[i]
			}
		}
	}
	for i := 1; i < len(order); i++ {
		ends[order[i]] = max(ends[order[i]], ends[order[i-1]]+apart)
	}
	// If the lowest has left the picture, all above it give way.
	for i, low := len(order)-1, float64(plotBottom); i >= 0; i, low = i-1, low-apart {
		ends[order[i]] = min(ends[order[i]], low)
	}
	return ends
}

// step returns a round number, 1, 2 or 5 times a power of ten, of which at most
// nine reach most.
func step(most float64) float64 {
	if most == 0 {
		return 1
	}
	s := math.Pow(10, math.Floor(math.Log10(most))-1)
	for _, k := range []float64{2, 2.5, 2} {
		if most/s <= 9 {
			return s
		}
		s *= k
	}
	return s
}

// tenth writes a coordinate to a tenth.
func tenth(v float64) string { return strconv.FormatFloat(v, 'f', 1, 64) }

// number writes the label of an axis.
func number(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }
