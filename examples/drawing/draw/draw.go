// Package draw makes SVG pictures of dressed trees and mantels, with the standard
// library: to scale, readable in black and white, and with a title and a
// description for those who do not see them. It is there to be copied; same.go says what to
// put for a package that is fircone's own.
package draw

import (
	"math"

	"example.com/fircone/palette"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
)

// A Tree is what there is to draw of a tree.
type Tree struct {
	Title   string // "Ticket hall"
	Layout  placement.Layout
	Pieces  []shopping.Lot    // those of no Size are drawn as picks; a Color is the name of one in Palette
	Garland placement.Winding // no Spacing: none; Step is not used
	Ribbon  Ribbon
	Lights  placement.Winding // no Spacing: none
	Palette palette.Palette
}

// fill returns the color of a swatch, and the color of text on it: black or white,
// whichever contrasts more. That is never less than 4.58:1, since the two have 21:1
// between them (W3C, Web Content Accessibility Guidelines 2.2, contrast ratio).
func fill(p palette.Palette, swatch string) (color, text string) {
	for _, s := range p {
		if s.Name == swatch {
			if luminance(s.Color) > 0.179 { // √(1.05·0.05) - 0.05, as far from one as from the other
				return s.Color.String(), "#000"
			}
			return s.Color.String(), paper
		}
	}
	return paper, "#000"
}

// luminance returns the relative luminance of a color, from 0 to 1.
func luminance(c palette.Color) float64 {
	sum := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		x := float64(c[i]) / 255
		if x <= 0.04045 {
			x /= 12.92
		} else {
			x = math.Pow((x+0.055)/1.055, 2.4)
		}
		sum += weight * x
	}
	return sum
}
