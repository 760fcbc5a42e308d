package job

import (
	"strconv"

	"example.com/fircone/palette"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
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
	if _, err := rules.Palette(p.Swatches()...); err != nil {
		return nil, err // a palette is read by any rules, and this plan goes by the usual ones
	}
	if plan.Reading, err = rules.Read(p, palette.Swatch{}); err != nil {
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
func (c *ColorPlan) owned() []shopping.Lot {
	var list []shopping.Lot
	for i, s := range c.Reading.Palette.Swatches() {
		if n := c.Box.Kept[i]; n > 0 {
			list = append(list, shopping.Lot{Item: ornaments(s), Quantity: shopping.Quantity{Pieces: n}})
		}
	}
	return list
}

// ornaments is the item that the ornaments of a swatch are bought as.
func ornaments(s palette.Swatch) shopping.Item {
	return shopping.Item{Kind: shopping.Ornament, Color: s.Name}
}

// shareOut splits a need for ornaments over the colors. On a tree the types are
// shared by the palette, and every type has as many pieces as the next, so that
// each stays in its band; on a mantel, without types, the pieces are shared.
func shareOut(p palette.Palette, n shopping.Need, types int, each units.Range[int]) ([]open, error) {
	pieces := n.Quantity.Pieces
	totals := palette.Totals{Types: types, Pieces: pieces}
	if types > 0 {
		totals.Pieces = types
	}
	sharing, err := p.Share(totals)
	if err != nil {
		return nil, err
	}
	counts := make([]int, len(sharing))
	for i, row := range sharing {
		counts[i] = row.Pieces
	}
	if types > 0 {
		if counts, err = palette.Apportion(pieces, counts, 0); err != nil {
			return nil, err
		}
	}
	var list []open
	for i, row := range sharing {
		if counts[i] == 0 {
			continue
		}
		o := open{Need: n, least: counts[i], most: counts[i], ornaments: true}
		o.Item = ornaments(row.Swatch)
		o.Quantity.Pieces = counts[i]
		o.Basis = "a share of " + strconv.Itoa(row.Share) + " % of " + n.Quantity.String()
		if types > 0 {
			o.least, o.most = row.Types*each.Min, row.Types*each.Max
			o.brief = plural(row.Types, "type") + ", " + each.String() + " of each"
			o.Basis = plural(row.Types, "type") + " of " + strconv.Itoa(types) + ", a share of " + strconv.Itoa(row.Share) +
				" %; " + each.String() + " of each will do"
		}
		list = append(list, o)
	}
	return list, nil
}

func plural(n int, what string) string {
	if n != 1 {
		what += "s"
	}
	return strconv.Itoa(n) + " " + what
}
