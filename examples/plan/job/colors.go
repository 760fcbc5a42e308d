package job

import (
	"strconv"
	"strings"

	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
)

// A ColorPlan is what the colors come to.
type ColorPlan struct {
	Reading palette.Reading // how well each two hold apart, and for whom
	Box     palette.Sorting // what of last year's boxes fits
	Pieces  []Piece         // the pieces of Box, in its order
}

// planColors reads the colors, and sorts last year's boxes into them.
func planColors(p palette.Palette, box []Piece) (*ColorPlan, error) {
	rules := palette.CommonPractice()
	plan := &ColorPlan{Pieces: box}
	var err error
	if plan.Reading, err = rules.Read(p); err != nil {
		return nil, err
	}
	pieces := make([]palette.Piece, len(box))
	for i, b := range box {
		pieces[i] = palette.Piece(b)
	}
	plan.Box, err = rules.Sort(p, pieces)
	return plan, err
}

// owned returns the pieces of the boxes that fit, as ornaments that need not be bought.
func (c *ColorPlan) owned() []shopping.Owned {
	var list []shopping.Owned
	for i, s := range c.Reading.Palette.Swatches() {
		if n := c.Box.Kept[i]; n > 0 {
			list = append(list, shopping.Owned{Item: ornaments(s), Quantity: shopping.Quantity{Pieces: n}})
		}
	}
	return list
}

// ornaments is the item that the ornaments of a swatch are bought as.
func ornaments(s palette.Swatch) string { return s.Name + " ornaments" }

// shareOut splits a need for ornaments over the colors. Without types (on a
// mantel) only the pieces are shared, and each count is as it is.
func shareOut(p palette.Palette, n shopping.Need, types int, each sizing.Band) ([]open, error) {
	sharing, err := p.Share(palette.Totals{Types: types, Pieces: n.Quantity.Pieces})
	if err != nil {
		return nil, err
	}
	var list []open
	for _, row := range sharing.Rows {
		if row.Pieces == 0 {
			continue
		}
		o := open{Need: n, least: row.Pieces, most: row.Pieces}
		o.Item = ornaments(row.Swatch)
		o.Quantity.Pieces = row.Pieces
		o.Basis = "a share of " + strconv.Itoa(row.Share) + " % of " + n.Quantity.String()
		if types > 0 {
			o.least, o.most = row.Types*each.Min, row.Types*each.Max
			o.brief = plural(row.Types, "type") + ", " + each.String() + " of each"
			o.Basis += ": " + plural(row.Types, "type") + ", " + counts(row.Each()) + " of each; " + each.String() + " will do"
		}
		list = append(list, o)
	}
	return list, nil
}

// counts returns the different counts in a list that falls: "9", "9 or 8".
func counts(each []int) string {
	var texts []string
	for i, n := range each {
		if i == 0 || n != each[i-1] {
			texts = append(texts, strconv.Itoa(n))
		}
	}
	return strings.Join(texts, " or ")
}

func plural(n int, what string) string {
	if n != 1 {
		what += "s"
	}
	return strconv.Itoa(n) + " " + what
}
