package draw

import (
	"fmt"
	"math"
	"strings"

	"example.com/fircone/sizing/placement"
	"example.com/fircone/units"
)

// A Paper is the size of a sheet, in 1/96 in.
type Paper struct{ Width, Height float64 }

// The papers of a crew sheet.
var (
	Letter = Paper{816, 1056}
	A4     = Paper{793.7, 1122.5}
)

const perSheet = 28 // steps on a sheet at the most

// Crew returns the sheets to hang from, one or more for each station of
// [placement.Order]: where to stand, a picture of what is in front of you with the number
// of each piece, and a list to check off.
func (t Tree) Crew(paper Paper) ([]string, error) {
	v, err := t.lay()
	if err != nil {
		return nil, err
	}
	var sheets []string
	for i, s := range v.stations {
		for first := 0; first < len(s.Places); first += perSheet {
			sheets = append(sheets, v.sheet(paper, i+1, s, first, min(first+perSheet, len(s.Places))))
		}
	}
	return sheets, nil
}

// sheet draws the steps of a station from first up to last, the others faint.
func (v *view) sheet(paper Paper, number int, s placement.Station, first, last int) string {
	c := &canvas{}
	const edge, rowHeight = 54.0, 17.0
	stand := "on the floor"
	switch {
	case s.Ladder.Lift:
		stand = "OUT OF REACH: a platform or a lift, and trained people"
	case s.Ladder.Size > 0:
		stand = "a " + feet(s.Ladder.Size) + " stepladder"
	}
	head := fmt.Sprintf("Station %d of %d: %s, at %d o'clock", number, len(v.stations), stand, s.Clock)
	c.open(paper.Width, paper.Height, v.Title+", station "+fmt.Sprint(number), fmt.Sprintf("%s. Pieces %d to %d of %d.", head, s.First+first, s.First+last-1, len(v.places)))
	y := edge
	for i, line := range wrap(v.Title, paper.Width-2*edge, 15) {
		c.text(point{edge, y + 20*float64(i)}, `font-size="15"`, line)
	}
	y += 20 * float64(len(wrap(v.Title, paper.Width-2*edge, 15)))
	for _, line := range wrap(head, paper.Width-2*edge, 19) {
		c.text(point{edge, y + 6}, `font-size="17" font-weight="bold"`, line)
		y += 24
	}
	caution := "6 o'clock faces the viewer. Hang from the top down; left and right are as you face the trunk."
	for i, c := range s.Ladder.Cautions {
		if i == 0 {
			caution = ""
		}
		caution += strings.ToUpper(c.Text[:1]) + c.Text[1:] + ". "
	}
	for _, line := range wrap(caution, paper.Width-2*edge, 11) {
		c.text(point{edge, y + 4}, `font-size="11"`, line)
		y += 14
	}
	y += 12

	// What is in front: across is how far from the middle along the branches.
	type spot struct{ across, up float64 }
	spots := make([]spot, len(s.Places))
	across, most := 0.0, 8.0
	for i, step := range s.Places {
		if i == 0 {
			across = -step.Left.In(units.Inch)
		} else {
			across -= step.Left.In(units.Inch)
		}
		spots[i] = spot{across, step.Height.In(units.Inch)}
		most = max(most, math.Abs(across)+step.Item.Size.In(units.Inch))
	}
	low, high := s.From.In(units.Inch)-6, s.To.In(units.Inch)+6
	list := rowHeight*float64(last-first) + 34
	room := paper.Height - edge - y - list - 30
	scale := min((paper.Width-2*edge-130)/(2*most), room/(high-low), 8)
	middle, bottom := paper.Width/2, y+(high-low)*scale
	c.raw(`<g stroke="`, faint, `" fill="none" stroke-dasharray="3 4">`, "\n")
	c.line(point{middle, y}, point{middle, bottom}, "")
	for z := math.Ceil(low/12) * 12; z < high; z += 12 {
		c.line(point{edge + 44, bottom - (z-low)*scale}, point{paper.Width - edge, bottom - (z-low)*scale}, "")
	}
	c.raw("</g>\n")
	for z := math.Ceil(low/12) * 12; z < high; z += 12 {
		c.text(point{edge, bottom - (z-low)*scale + 4}, `font-size="11"`, fmt.Sprintf("%.0f ft", z/12))
	}
	c.text(point{middle, bottom + 14}, `text-anchor="middle" font-size="11"`, fmt.Sprintf("you stand here, at %d o'clock", s.Clock))
	c.raw(`<g data-part="pieces" text-anchor="middle">`, "\n")
	for i, step := range s.Places {
		at := point{middle + spots[i].across*scale, bottom - (spots[i].up-low)*scale}
		color, _ := fill(v.Palette, step.Item.Color)
		r := max(step.Item.Size.In(units.Inch)/2*scale, 4)
		if i < first || i >= last {
			c.circle(at, r, `fill="none" stroke="`+faint+`"`)
			continue
		}
		c.circle(at, r, `fill="`+color+`" stroke="`+ink+`" stroke-width="1.2"`)
		// The number on a plate of its own, so that it is read on every color.
		label := fmt.Sprint(s.First + i)
		w := wide(label, 11.5) + 7
		if r < w/2+4 { // beside a small piece
			at.x += r + w/2 + 1
		}
		c.rect(at.x-w/2, at.y-8, w, 15, `rx="3" fill="#fff" stroke="`+ink+`" stroke-width="0.6"`)
		c.text(point{at.x, at.y + 4}, `font-size="11.5" font-weight="bold"`, label)
	}
	c.raw("</g>\n")

	// The list to check off.
	y = bottom + 40
	c.raw(`<g data-part="list" font-size="11.5">`, "\n")
	for i, step := range s.Places[first:last] {
		c.rect(edge, y-10, 11, 11, `fill="none" stroke="`+ink+`"`)
		c.text(point{edge + 20, y}, `font-weight="bold"`, fmt.Sprint(s.First+first+i))
		c.text(point{edge + 52, y}, "", step.Item.String())
		c.text(point{paper.Width * 0.45, y}, "", where(step, first+i == 0))
		c.line(point{edge, y + 4.5}, point{paper.Width - edge, y + 4.5}, `stroke="#ccc" stroke-width="0.6"`)
		y += rowHeight
	}
	c.raw("</g>\n")
	return c.close()
}

// where says where a piece hangs, the first of a station from its middle.
func where(s placement.Place, first bool) string {
	half := func(l units.Length) string { return l.Format(units.InFeetInches, units.Inch/2) }
	from, side, off := "last", "left", s.Left
	if first {
		from = "middle"
	}
	if off < 0 {
		side, off = "right", -off
	}
	text := fmt.Sprintf("%s up, %d o'clock, %s %s of the %s", half(s.Height), s.Azimuth.Clock(), half(off), side, from)
	if s.Depth > 0 {
		text += ", " + half(s.Depth) + " deep"
	}
	return text
}
