// Package draw makes SVG pictures of dressed trees and mantels, with the standard
// library: to scale, readable in black and white, and with a title and a
// description for those who do not see them. It is there to be copied.
package draw

import (
	"example.com/fircone/palette"
	"example.com/fircone/sizing/placement"
)

// A Tree is what there is to draw of a tree.
type Tree struct {
	Title   string // "Ticket hall"
	Layout  placement.Layout
	Pieces  []placement.Piece // those of no Size are drawn as picks; a Color is the name of one in Palette
	Garland placement.Winding // no Spacing: none; Step is not used
	Ribbon  Ribbon
	Lights  placement.Winding // no Spacing: none
	Palette palette.Palette
}

// fill returns the color of a swatch, and the color of text on it.
func fill(p palette.Palette, swatch string) (color, text string) {
	for _, s := range p {
		if s.Name == swatch {
			if lab, err := palette.Daylight.Lab(s.Color); err == nil && lab[0] < 60 {
				return s.Color.String(), paper
			}
			return s.Color.String(), ink
		}
	}
	return paper, ink
}
