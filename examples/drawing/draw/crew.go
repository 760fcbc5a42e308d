package draw

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Paper is the size of a sheet, in 1/96 in.
type Paper struct {
	Name          string // as CSS has it: "letter"
	Width, Height float64
}

// The papers of a crew sheet.
var (
	Letter = Paper{"letter", 816, 1056}
	A4     = Paper{"A4", 793.7, 1122.52}
)

// Print returns a page of HTML that prints each sheet on a page of paper, in its colors.
func Print(title string, paper Paper, sheets []string) string {
	var b strings.Builder
	fmt.Fprintf(&b, `<!DOCTYPE html>
<html lang="en">
<meta charset="utf-8">
<title>%s</title>
<style>
@page { size: %s portrait; margin: 0 }
body { margin: 0; background: #fff; print-color-adjust: exact; -webkit-print-color-adjust: exact }
section { width: %.1fpx; height: %.1fpx; overflow: hidden; break-inside: avoid }
section + section { break-before: page }
@media screen { body { background: #777 } section { margin: 12px auto; background: #fff } }
</style>
`, escape(title), paper.Name, paper.Width, paper.Height-0.5) // a hair less, or rounding adds pages
	for _, sheet := range sheets {
		b.WriteString("<section>\n" + sheet + "</section>\n")
	}
	b.WriteString("</html>\n")
	return b.String()
}

// perSheet is how many pieces a sheet lists at the most. A station of more takes two.
const perSheet = 44

const edge = 54.0 // the margin of a sheet

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
	rowHeight, listed := 17.0, 11.5
	if last-first > 26 {
		rowHeight, listed = 13.4, 10
	}
	stand := "on the floor"
	switch {
	case s.Ladder.Lift:
		stand = "OUT OF REACH: a platform or a lift, and trained people"
	case s.Ladder.Size > 0:
		stand = "a " + feet(s.Ladder.Size) + " stepladder"
	}
	head := fmt.Sprintf("Station %d of %d: %s, at %d o'clock", number, len(v.stations), stand, s.Clock)
	if len(s.Places) > perSheet {
		head += fmt.Sprintf(", sheet %d of %d", first/perSheet+1, (len(s.Places)+perSheet-1)/perSheet)
	}
	c.page(paper, v.Title+", station "+fmt.Sprint(number), fmt.Sprintf("%s. Pieces %d to %d of %d.", head, s.First+first, s.First+last-1, len(v.places)))
	y := edge
	for i, line := range wrap(v.Title, paper.Width-2*edge, 15) {
		c.text(point{edge, y + 20*float64(i)}, `font-size="15"`, line)
	}
	y += 20 * float64(len(wrap(v.Title, paper.Width-2*edge, 15)))
	for _, line := range wrap(head, paper.Width-2*edge, 19) {
		c.text(point{edge, y + 6}, `font-size="17" font-weight="bold"`, line)
		y += 24
	}
	mind := "6 o'clock faces the viewer. Hang from the top down; left and right are as you face the trunk."
	for i, c := range s.Ladder.Cautions {
		if i == 0 {
			mind = ""
		}
		mind += strings.ToUpper(c.Text[:1]) + c.Text[1:] + ". "
	}
	for _, line := range wrap(mind, paper.Width-2*edge, 11) {
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
	disks := make([]disk, len(s.Places))
	for i, step := range s.Places {
		disks[i] = disk{point{middle + spots[i].across*scale, bottom - (spots[i].up-low)*scale}, max(step.Item.Size.In(units.Inch)/2*scale, 4)}
		color, _ := fill(v.Palette, step.Item.Color)
		d := disks[i]
		switch {
		case i < first || i >= last:
			c.circle(d.point, d.r, `fill="none" stroke="`+faint+`"`)
		case step.Item.Size == 0:
			sprig(c, d.point, 9, color)
		default:
			c.circle(d.point, d.r, `fill="`+color+`" stroke="`+ink+`" stroke-width="1.2"`)
		}
	}
	c.plates(disks, first, last, s.First, box{edge + 30, y - 8, paper.Width - edge, bottom + 2})
	c.raw("</g>\n")

	// The list to check off.
	y = bottom + 40
	c.raw(`<g data-part="list" font-size="`, num(listed), `">`, "\n")
	for i, step := range s.Places[first:last] {
		c.rect(edge, y-rowHeight*0.58, rowHeight*0.62, rowHeight*0.62, `fill="none" stroke="`+ink+`"`)
		c.text(point{edge + 20, y}, `font-weight="bold"`, fmt.Sprint(s.First+first+i))
		c.squeeze(point{edge + 52, y}, paper.Width*0.43-edge-58, listed, step.Item.String())
		c.squeeze(point{paper.Width * 0.43, y}, paper.Width*0.57-edge, listed, where(s, first+i))
		c.line(point{edge, y + rowHeight*0.26}, point{paper.Width - edge, y + rowHeight*0.26}, `stroke="#ccc" stroke-width="0.6"`)
		y += rowHeight
	}
	c.raw("</g>\n")
	return c.close()
}

// squeeze writes a text, smaller than size where it would be wider than most.
func (c *canvas) squeeze(p point, most, size float64, text string) {
	attrs := ""
	if w := wide(text, size); w > most {
		attrs = `font-size="` + num(size*most/w) + `"`
	}
	c.text(p, attrs, text)
}

// page begins a sheet of paper.
func (c *canvas) page(paper Paper, title, desc string) {
	c.open(paper.Width, paper.Height, title, desc)
}

type (
	disk struct {
		point
		r float64
	}
	box struct{ x0, y0, x1, y1 float64 }
)

func (b box) covers(o box) float64 {
	return max(min(b.x1, o.x1)-max(b.x0, o.x0), 0) * max(min(b.y1, o.y1)-max(b.y0, o.y0), 0)
}

// plates draws the numbers of disks, each on a plate so that it is read on every color:
// in the disk if there is room, else beside it, over no other number, and over no other
// disk if that can be had. One that has to go farther has a line to its disk.
func (c *canvas) plates(disks []disk, first, last, number int, within box) {
	var done []box
	for i := first; i < last; i++ {
		d := disks[i]
		label := fmt.Sprint(number + i)
		w, h := wide(label, 11.5)+7, 15.0
		best, least := box{}, math.Inf(1)
		try := func(x, y, price float64) {
			b := box{x - w/2, y - h/2, x + w/2, y + h/2}
			for _, o := range done {
				price += 1000 * b.covers(o)
			}
			for k, o := range disks {
				if k != i {
					price += 10 * b.covers(box{o.x - o.r, o.y - o.r, o.x + o.r, o.y + o.r})
				}
			}
			price += 1e6 * max(within.x0-b.x0, b.x1-within.x1, within.y0-b.y0, b.y1-within.y1, 0)
			if price < least {
				best, least = b, price
			}
		}
		if d.r >= w/2+3 {
			try(d.x, d.y, 0)
		}
		for ring := range 6 {
			far := 2 + 13*float64(ring)
			for k := range 12 {
				sin, cos := sincos(float64(k) * math.Pi / 6)
				try(d.x+(d.r+far+w/2)*cos, d.y+(d.r+far+h/2)*sin, 1+30*float64(ring)+float64(k)/10)
			}
		}
		done = append(done, best)
		x, y := (best.x0+best.x1)/2, (best.y0+best.y1)/2
		if hypot(x-d.x, y-d.y) > d.r+w/2+12 {
			c.line(d.point, point{x, y}, `stroke="`+ink+`" stroke-width="0.6"`)
		}
		c.rect(best.x0, best.y0, w, h, `rx="3" fill="#fff" stroke="`+ink+`" stroke-width="0.6"`)
		c.text(point{x, y + 4}, `font-size="11.5" font-weight="bold"`, label)
	}
}

// Crew returns the sheets to dress a mantel from: where each thing goes along the shelf,
// numbered in the order of [mantel.Rules.Spots], and the steps of [mantel.Steps] that the
// needs take, each to check off. Nil needs are those of the rules.
func (m Mantel) Crew(paper Paper, needs []shopping.Need) ([]string, error) {
	s, err := m.lay()
	if err != nil {
		return nil, err
	}
	if needs == nil {
		if needs, err = m.Rules.Needs(m.Mantel, m.Hanging, units.InFeetInches); err != nil {
			return nil, err
		}
	}
	steps, err := mantel.Steps(m.Hanging, needs)
	if err != nil {
		return nil, err
	}
	const row = 13.4
	wideness := paper.Width - 2*edge
	head := "Mantel of " + feet(m.Mantel.Length) + ", " + m.Hanging.String()
	s.page(paper, m.Title+", sheet for the crew", fmt.Sprintf("%s. %d spots along the shelf.", head, len(s.Spots)))
	y := s.sheetHead(m.Title, head, wideness)
	for _, l := range wrap("Distances are along the shelf. The fireplace must be cold. "+caution, wideness, 11) {
		s.canvas.text(point{edge, y + 4}, `font-size="11"`, l)
		y += 14
	}

	// The picture, with a number over or under each spot. Room is left for the rows of them.
	room := paper.Height - edge - (y + 96) - 48 - row*float64(len(s.Spots))
	s.fit(edge, wideness, y+96, min(max(room, 210), 340))
	if err := s.draw(); err != nil {
		return nil, err
	}
	s.measures(84)
	s.numbers()
	y = s.floor() + 24
	s.scaleBar(point{edge, y}, s.scale)
	y += 24

	// The spots to check off, in as many pages as they take.
	var sheets []string
	next := func() {
		sheets = append(sheets, s.close())
		s.canvas = &canvas{}
		s.page(paper, m.Title+", sheet for the crew, continued", head+". Continued: what is to be done.")
		y = s.sheetHead(m.Title, head+", continued", wideness)
	}
	length := m.Mantel.Length
	s.raw(`<g data-part="list" font-size="10">`, "\n")
	for i, spot := range s.Spots {
		if y > paper.Height-edge-row {
			s.raw("</g>\n")
			next()
			s.raw(`<g data-part="list" font-size="10">`, "\n")
		}
		s.tick(y, row)
		s.canvas.text(point{edge + 20, y}, `font-weight="bold"`, fmt.Sprint(i+1))
		s.squeeze(point{edge + 52, y}, paper.Width*0.42-edge-58, 10, spot.Item.String())
		s.canvas.text(point{paper.Width * 0.42, y}, "", fmt.Sprintf("%s from the left end, %s from the right; layer %d", half(spot.Along), half(length-spot.Along), spot.Layer))
		s.line(point{edge, y + row*0.26}, point{paper.Width - edge, y + row*0.26}, `stroke="#ccc" stroke-width="0.6"`)
		y += row
	}
	s.raw("</g>\n")

	// The steps, on one page with their heading.
	type lines struct{ do, mind []string }
	var work []lines
	tall := 30.0
	for _, step := range steps {
		l := lines{do: wrap(step.Do, wideness-52, 11.5)}
		if step.Caution.Text != "" {
			l.mind = wrap("Mind: "+step.Caution.Text+".", wideness-52, 11.5)
		}
		work = append(work, l)
		tall += 15*float64(len(l.do)+len(l.mind)) + 6
	}
	if y+tall > paper.Height-edge {
		next()
	}
	y += 18
	s.canvas.text(point{edge, y}, `font-size="14" font-weight="bold"`, "In this order")
	y += 22
	s.raw(`<g data-part="steps" font-size="11.5">`, "\n")
	for i, l := range work {
		s.tick(y, 17)
		s.canvas.text(point{edge + 20, y}, `font-weight="bold"`, fmt.Sprint(i+1))
		for _, t := range l.do {
			s.canvas.text(point{edge + 48, y}, "", t)
			y += 15
		}
		for _, t := range l.mind {
			s.canvas.text(point{edge + 48, y}, `font-style="italic"`, t)
			y += 15
		}
		y += 6
	}
	s.raw("</g>\n")
	return append(sheets, s.close()), nil
}

// sheetHead draws the two headings of a sheet, and returns where it goes on.
func (c *canvas) sheetHead(title, head string, wideness float64) float64 {
	y := edge
	for _, l := range wrap(title, wideness, 15) {
		c.text(point{edge, y}, `font-size="15"`, l)
		y += 20
	}
	for _, l := range wrap(head, wideness, 19) {
		c.text(point{edge, y + 6}, `font-size="17" font-weight="bold"`, l)
		y += 24
	}
	return y
}

// tick draws a box to check off.
func (c *canvas) tick(y, row float64) {
	c.rect(edge, y-row*0.58, row*0.62, row*0.62, `fill="none" stroke="`+ink+`"`)
}

// numbers draws the number of each spot above the picture or, for what hangs, over the
// opening, with a line to it: in rows, so that none is over another.
func (s *shelf) numbers() {
	order := make([]int, len(s.at))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(s.at[i].x, s.at[j].x) })
	var ends [4]float64
	var plates []func()
	s.raw(`<g data-part="numbers" text-anchor="middle">`, "\n")
	for _, i := range order {
		p := s.at[i]
		label := fmt.Sprint(i + 1)
		w := wide(label, 9.5) + 5
		row := 0
		for k := range ends {
			if ends[k] <= p.x-w/2 {
				row = k
				break
			}
			if ends[k] < ends[row] {
				row = k
			}
		}
		x := max(p.x, ends[row]+w/2)
		ends[row] = x + w/2 + 2
		y := s.top - 16 - 14*float64(row) - 4*s.scale
		s.line(point{x, y + 5}, p, `stroke="#777" stroke-width="0.5"`)
		plates = append(plates, func() {
			s.rect(x-w/2, y-7, w, 12.5, `rx="2.5" fill="#fff" stroke="`+ink+`" stroke-width="0.5"`)
			s.canvas.text(point{x, y + 3}, `font-size="9.5" font-weight="bold"`, label)
		})
	}
	for _, draw := range plates { // over all lines
		draw()
	}
	s.raw("</g>\n")
}

// half prints a length to half an inch.
func half(l units.Length) string { return l.Format(units.InFeetInches, units.Inch/2) }

// where says where piece i of a station hangs, the first from its middle.
func where(s placement.Station, i int) string {
	p := s.Places[i]
	from, straight := "the last", "straight below the last"
	if i == 0 {
		from, straight = "the middle", "in the middle"
	} else if p.Height > s.Places[i-1].Height {
		straight = "straight above the last"
	}
	side, off := "left", p.Left
	if off < 0 {
		side, off = "right", -off
	}
	if off >= units.Inch/4 {
		straight = half(off) + " " + side + " of " + from
	}
	text := fmt.Sprintf("%s up, %d o'clock, %s", half(p.Height), p.Azimuth.Clock(), straight)
	if p.Depth > 0 {
		text += ", " + half(p.Depth) + " deep"
	}
	return text
}
