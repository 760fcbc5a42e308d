package job

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/fircone/palette"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// The sheet is as wide as a printed page and a phone held sideways both show.
const (
	sheetWidth = 76
	labelWidth = 18
)

// String returns the sheet to take to the shop: for each room what is needed,
// how much of it and why; how the colors hold together; what to buy; and the
// cautions that apply.
func (p Plan) String() string {
	var s sheet
	for _, t := range p.Trees {
		s.heading(t.Room, "tree, "+t.Height.String())
		s.needs(t.needs)
	}
	for _, m := range p.Mantels {
		s.heading(m.Room, "mantel, "+m.Length.String()+", "+m.Look.String())
		s.needs(m.needs)
		s.hanging(m)
	}
	if p.Colors != nil {
		s.colors(p.Colors)
	}
	if p.Basket != nil {
		s.basket(p.Basket)
	}
	if len(p.Cautions) > 0 {
		s.heading("Take care", "")
		for _, c := range p.Cautions {
			s.line("-", 2, c)
		}
	}
	return s.b.String()
}

// A sheet is text being laid out.
type sheet struct{ b strings.Builder }

// heading begins a section: the room, and what stands in it.
func (s *sheet) heading(room, what string) {
	if s.b.Len() > 0 {
		s.b.WriteByte('\n')
	}
	s.b.WriteString(strings.ToUpper(room))
	if room != "" && what != "" {
		s.b.WriteString(": ")
	}
	s.b.WriteString(what)
	s.b.WriteByte('\n')
}

// needs lists how much there must be of each thing, and below it why.
func (s *sheet) needs(needs []open) {
	for _, n := range needs {
		s.line(n.Item, labelWidth, n.Quantity.String())
		s.line("", labelWidth, n.Basis+" ("+n.Source+")")
	}
}

// hanging says how the garland of a mantel hangs, what holds it and what it
// comes near.
func (s *sheet) hanging(m MantelPlan) {
	s.line("hangs", labelWidth, m.Hanging.String())
	if l := m.Loads; l != nil {
		h := l.Hooks[l.Heaviest]
		s.line("hooks", labelWidth, plural(len(l.Hooks), "place")+"; the most is "+weight(h.Total)+" at "+h.Along.Format(units.InFeetInches, units.Inch/4)+
			" from the left, and one hook may carry "+weight(l.Working))
		if l.Overloaded > 0 {
			s.line("", labelWidth, "OVERLOADED at "+plural(l.Overloaded, "place")+": use more hooks, or a higher rating")
		}
	}
	if len(m.Clearances.Violations) == 0 && m.Opening != (Opening{}) {
		s.line("clear of the fire", labelWidth, "no published figure is broken while the fire is out")
	}
	for _, v := range m.Clearances.Violations {
		s.line("TOO NEAR", labelWidth, v.String())
	}
}

// weight prints a weight to the ounce, as a kitchen scale does.
func weight(m units.Mass) string { return m.Format(units.InPoundsOunces, units.Ounce/10) }

// colors says how well the colors hold apart, and what of the boxes fits.
func (s *sheet) colors(c *ColorPlan) {
	s.heading("Colors", c.Reading.Palette.String())
	s.pairs(c.Reading)
	for i, m := range c.Box.Matches {
		p := c.Pieces[i]
		verdict := "out: " + m.String()
		if m.Fits {
			verdict = "fits " + m.String()
		}
		s.line(p.Name, labelWidth, strconv.Itoa(max(1, p.Count))+", "+verdict)
	}
}

// basket lists what to buy, and what to look for elsewhere.
func (s *sheet) basket(b *Basket) {
	what := "the least cost for what is needed"
	if !b.Budget.IsZero() {
		what = "the fullest trees for a budget of " + b.Budget.StringFixed(2)
	}
	s.heading("To buy", what)
	s.b.WriteString(b.List.Page())
	s.unpriced(b.Unpriced)
}

func (s *sheet) unpriced(needs []shopping.Need) {
	for i, n := range needs {
		label := ""
		if i == 0 {
			label = "nobody offers"
		}
		s.line(label, labelWidth, n.Quantity.String()+" "+n.Item+", "+n.Room)
	}
}

// pairs tabulates how far apart each two colors are, for every viewer and light,
// and says how to mend a pair that is taken for one color by some.
func (s *sheet) pairs(r palette.Reading) {
	const row = "  %-24s%10s%12s%9s%9s%9s\n"
	fmt.Fprintf(&s.b, row, "how far apart", palette.Daylight, palette.WarmLight, palette.Protan, palette.Deutan, palette.Tritan)
	for _, p := range r.Pairs {
		cells := []any{p.A.Name + ", " + p.B.Name}
		for v, d := range p.Difference {
			mark := " "
			if !p.Holds[v] {
				mark = "*"
			}
			cells = append(cells, strconv.FormatFloat(math.Floor(d*10)/10, 'f', 1, 64)+mark)
		}
		s.b.WriteString(strings.TrimRight(fmt.Sprintf(row, cells...), " \n") + "\n")
	}
	// What follows the table in the reading are its sentences, one a pair.
	for line := range strings.Lines(r.String()) {
		if advice, ok := strings.CutPrefix(line, "* "); ok {
			s.line("*", 2, advice)
		}
	}
}

// line writes a label and, from a column on, a text that wraps in that column.
func (s *sheet) line(label string, column int, text string) {
	s.b.WriteString("  " + label + strings.Repeat(" ", max(1, column-utf8.RuneCountInString(label))))
	at := 2 + max(column, utf8.RuneCountInString(label)+1)
	for i, word := range strings.Fields(text) {
		n := utf8.RuneCountInString(word)
		switch {
		case i == 0:
		case at+1+n > sheetWidth:
			s.b.WriteString("\n  " + strings.Repeat(" ", column))
			at = 2 + column
		default:
			s.b.WriteByte(' ')
			at++
		}
		s.b.WriteString(word)
		at += n
	}
	s.b.WriteByte('\n')
}
