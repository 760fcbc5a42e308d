package main

import (
	"fmt"
	"html"
	"io"
	"strconv"
	"strings"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A panel is one chart of the page.
type panel struct {
	title, note string
	head        []string
	rows        [][]string
}

// page writes the charts of the shop on one sheet of letter paper or A4, as HTML to open
// in a browser and print: trees of 4 to 15 ft by rule and by shape, garland by width, the
// garland in hand, and lights.
func page(w io.Writer) error {
	var panels []panel
	for _, make := range []func() (panel, error){byRule, byShape, byWidth, inHand, circuits} {
		p, err := make()
		if err != nil {
			return err
		}
		panels = append(panels, p)
	}
	var b strings.Builder
	b.WriteString(pageHead)
	for _, p := range panels {
		fmt.Fprintf(&b, "<section>\n<h2>%s</h2>\n<table>\n<tr>", html.EscapeString(p.title))
		for _, cell := range p.head {
			b.WriteString("<th>" + html.EscapeString(cell) + "</th>")
		}
		b.WriteString("</tr>\n")
		for _, row := range p.rows {
			b.WriteString("<tr>")
			for _, cell := range row {
				b.WriteString("<td>" + html.EscapeString(cell) + "</td>")
			}
			b.WriteString("</tr>\n")
		}
		b.WriteString("</table>\n")
		if p.note != "" {
			b.WriteString("<p>" + html.EscapeString(p.note) + "</p>\n")
		}
		b.WriteString("</section>\n")
	}
	b.WriteString(pageFoot)
	_, err := io.WriteString(w, b.String())
	return err
}

const pageHead = `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>Tree charts</title>
<style>
@page { margin: 10mm }
body { font: 8.6pt/1.2 sans-serif; margin: 0 auto; max-width: 190mm; padding: 4mm; color: #000; background: #fff }
h1 { font-size: 14pt; margin: 0 0 1mm }
h2 { font-size: 9pt; margin: 2mm 0 .5mm }
main { display: flex; flex-wrap: wrap; column-gap: 6mm }
section { break-inside: avoid }
table { border-collapse: collapse }
th, td { text-align: right; padding: 0 1.3mm; font-variant-numeric: tabular-nums; white-space: nowrap }
th { border-bottom: 1px solid #000; font-weight: bold; white-space: normal; max-width: 14mm; vertical-align: bottom }
tr:nth-child(odd) td { background: #eee; print-color-adjust: exact; -webkit-print-color-adjust: exact }
td:first-child { font-weight: bold }
p { margin: .5mm 0 0; max-width: 85mm }
section:first-child p, footer p { max-width: none }
@media print { body { padding: 0; max-width: none } }
</style>
<h1>How much a Christmas tree takes</h1>
<main>
`

const pageFoot = `</main>
<footer>
<p>Rules of thumb are common practice; “to match” keeps the look of a full 7 ft tree. Measure the width: it matters more than the name
under which a tree is sold. Keep trees and lights away from heat, exits clear, and follow every label; local code decides.
In a public room ask the fire marshal. Above 20 ft no stepladder will do.</p>
</footer>
</html>
`

// heightsOf calls f for trees of 4 to 15 ft with the row so far.
func heightsOf(f func(tree sizing.Tree, row []string) ([]string, error)) (rows [][]string, err error) {
	for feet := units.Length(4); feet <= 15; feet++ {
		row, err := f(sizing.Tree{Height: feet * units.Foot}, []string{strconv.Itoa(int(feet))})
		if err != nil {
			return nil, err
		}
		rows = append(rows, row)
	}
	return rows, nil
}

// feet returns a length to get, up to whole feet.
func feet(l units.Length) string { return strconv.Itoa(int((l + units.Foot - 1) / units.Foot)) }

func byRule() (panel, error) {
	rules := sizing.CommonPractice()
	p := panel{
		title: "Full tree, seen from every side",
		head:  []string{"height, ft", "types", "of each", "picks", "or garland, ft", "strands of 5 ft", "of 6 ft", "of 9 ft", "strings of 100", "wraps apart, in", "to match, ft", "surface, sq ft"},
		note:  "By rule of thumb up to the strings. Above 8 ft the rule comes out thin: go by “to match”. Picks or garland or ribbon: one of them.",
	}
	var err error
	p.rows, err = heightsOf(func(tree sizing.Tree, row []string) ([]string, error) {
		c, err := rules.Compare(sizing.CommonLook(), tree)
		if err != nil {
			return nil, err
		}
		types, err := rules.Types(tree.Height)
		if err != nil {
			return nil, err
		}
		each, err := rules.Each(tree.Height)
		if err != nil {
			return nil, err
		}
		area, err := tree.DressedArea()
		if err != nil {
			return nil, err
		}
		garland := c.Rule[shopping.Garland].Length
		row = append(row, strconv.Itoa(types), each.String(), strconv.Itoa(c.Rule[shopping.Pick].Pieces), feet(garland))
		for _, strand := range []units.Length{5, 6, 9} {
			row = append(row, strconv.Itoa(int((garland+strand*units.Foot-1)/(strand*units.Foot))))
		}
		return append(row, strconv.Itoa((c.Rule[shopping.Light].Pieces+99)/100),
			strconv.FormatFloat(c.RuleLook.Spacing[shopping.Garland].In(units.Inch), 'f', 0, 64),
			feet(c.Shape[shopping.Garland].Length), strconv.FormatFloat(area.In(units.SquareFoot), 'f', 0, 64)), nil
	})
	return p, err
}

func byShape() (panel, error) {
	p := panel{
		title: "To match the 7 ft tree: balls / feet of garland",
		head:  []string{"height, ft", "full", "at a wall", "in a corner", "slim", "pencil"},
		note:  "Small and narrow trees take smaller balls, and more of them.",
	}
	var err error
	p.rows, err = heightsOf(func(tree sizing.Tree, row []string) ([]string, error) {
		for _, shape := range []sizing.Tree{{}, {Exposure: sizing.AgainstWall}, {Exposure: sizing.InCorner}, {Taper: sizing.Slim}, {Taper: sizing.Pencil}} {
			shape.Height = tree.Height
			c, err := sizing.CommonPractice().Compare(sizing.CommonLook(), shape)
			if err != nil {
				return nil, err
			}
			row = append(row, strconv.Itoa(c.Shape[shopping.Ornament].Pieces)+" / "+feet(c.Shape[shopping.Garland].Length))
		}
		return row, nil
	})
	return p, err
}

func byWidth() (panel, error) {
	p := panel{
		title: "Feet of garland to match, by the width of the tree",
		head:  []string{"height, ft"},
		note:  "At a wall take two thirds, in a corner half.",
	}
	for width := 2; width <= 8; width++ {
		p.head = append(p.head, strconv.Itoa(width)+" ft")
	}
	spacing := sizing.CommonLook().Spacing[shopping.Garland]
	var err error
	p.rows, err = heightsOf(func(tree sizing.Tree, row []string) ([]string, error) {
		for width := units.Length(2); width <= 8; width++ {
			tree.Base = width * units.Foot
			text := "–" // wider than any tree
			if 2*tree.Base <= 3*tree.Height {
				garland, err := tree.SpiralLength(spacing)
				if err != nil {
					return nil, err
				}
				text = feet(garland)
			}
			row = append(row, text)
		}
		return row, nil
	})
	return p, err
}

func inHand() (panel, error) {
	p := panel{
		title: "Garland in hand: inches apart on a full tree",
		head:  []string{"height, ft"},
		note:  "On another tree, surface over length is nearly it.",
	}
	lengths := []units.Length{25, 50, 75, 100, 150}
	for _, l := range lengths {
		p.head = append(p.head, strconv.Itoa(int(l))+" ft")
	}
	var err error
	p.rows, err = heightsOf(func(tree sizing.Tree, row []string) ([]string, error) {
		for _, l := range lengths {
			spacing, err := tree.Spacing(l * units.Foot)
			if err != nil {
				return nil, err
			}
			row = append(row, strconv.FormatFloat(spacing.In(units.Inch), 'f', 0, 64))
		}
		return row, nil
	})
	return p, err
}

func circuits() (panel, error) {
	p := panel{
		title: "Strings on a circuit of 120 V, alone on it, for hours",
		head:  []string{"watts of a string", "15 A", "20 A"},
		note:  "80 % of the circuit. The label says the watts, and how many may be joined end to end.",
	}
	for _, watts := range []units.Power{5, 10, 20, 40, 60, 125, 175} {
		row := []string{strconv.Itoa(int(watts))}
		one := lights.Strings{Each: lights.Label{Lamps: 100, Length: 25 * units.Foot, Power: watts * units.Watt}, Count: 1}
		for _, amperes := range []int{15, 20} {
			load, err := one.Load(lights.Circuit{Volts: 120, Amperes: amperes})
			if err != nil {
				return panel{}, err
			}
			row = append(row, strconv.Itoa(int(load.Limit/load.Power)))
		}
		p.rows = append(p.rows, row)
	}
	return p, nil
}
