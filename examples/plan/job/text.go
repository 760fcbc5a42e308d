package job

import (
	"strings"
	"unicode/utf8"

	"example.com/fircone/sizing/shopping"
)

// The sheet is as wide as a printed page and a phone held sideways both show.
const (
	sheetWidth = 72
	labelWidth = 16
)

// String returns the sheet to take to the shop: for each room what is needed,
// how much of it and why, and at the end the cautions that apply.
func (p Plan) String() string {
	var s sheet
	for _, t := range p.Trees {
		s.heading(t.Room, "tree, "+t.Height.String())
		s.needs(t.needs)
	}
	for _, m := range p.Mantels {
		s.heading(m.Room, "mantel, "+m.Length.String()+", "+m.Look.String())
		s.needs(m.needs)
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
func (s *sheet) needs(needs []shopping.Need) {
	for _, n := range needs {
		s.line(n.Item, labelWidth, n.Quantity.String())
		s.line("", labelWidth, n.Basis+" ("+n.Source+")")
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
