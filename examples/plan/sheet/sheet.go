// Package sheet lays a plan out as text: what to take to the shop and into the rooms.
package sheet

import (
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/fircone/sizing/job"

	"github.com/shopspring/decimal"
)

// The sheet is as wide as a printed page and a phone held sideways both show.
const (
	sheetWidth = 79
	labelWidth = 13
)

// A sheet is a plan being laid out as text.
type sheet struct {
	b       strings.Builder
	request job.Request
	plan    job.Plan
	why     bool // with the reason and the source of every figure
}

// Text returns the sheet of a plan for a request, in lines of at most 79 characters:
// what to buy, a page for each room in the order of work, the colors, and what to
// mind. With why it has the reason and the source of every figure.
func Text(r job.Request, p job.Plan, why bool) string {
	s := &sheet{request: r, plan: p, why: why}
	if s.request.House.Circuit.Volts == 0 {
		s.request.House = job.CommonPractice()
	}
	if p.Basket != nil {
		s.buy(*p.Basket)
	}
	for i, t := range p.Trees {
		s.tree(t, s.request.Trees[i].Tree)
	}
	for _, m := range p.Mantels {
		s.mantel(m)
	}
	if p.Colors != nil {
		s.colors(*p.Colors)
	}
	s.cautions()
	if why {
		s.b.WriteString("\nCommon practice is a rule of thumb of the trade, for which there is no\npublished standard.\n")
	}
	return s.b.String()
}

// heading begins a section.
func (s *sheet) heading(name string) {
	if s.b.Len() > 0 {
		s.b.WriteByte('\n')
	}
	first, rest, _ := strings.Cut(name, ": ")
	s.b.WriteString(strings.ToUpper(first))
	if rest != "" {
		s.b.WriteString(": " + rest)
	}
	s.b.WriteByte('\n')
}

// line writes a label and, from a column on, a text that wraps in that column.
func (s *sheet) line(label string, column int, text string) {
	if column < 0 { // a paragraph
		column, text, label = 0, label, ""
	}
	gap := max(1, column-utf8.RuneCountInString(label))
	switch {
	case label == "":
		gap = column
	case text == "":
		gap = 0
	case column > labelWidth:
		gap = max(2, gap)
	}
	s.b.WriteString("  " + label + strings.Repeat(" ", gap))
	lines := wrapped(text, sheetWidth-2-column, sheetWidth-2-utf8.RuneCountInString(label)-gap)
	s.b.WriteString(strings.Join(lines, "\n  "+strings.Repeat(" ", column)) + "\n")
}

// wrapped returns a text as lines of so many characters at most, the first of them of its own number.
func wrapped(text string, width, first int) []string {
	lines, room := []string{""}, first
	words := strings.Fields(text)
	for i := len(words) - 1; i > 0; i-- { // a number of things stays with its x
		if words[i] == "x" {
			words = slices.Replace(words, i-1, i+1, words[i-1]+" x")
		}
	}
	for i, word := range words {
		last := len(lines) - 1
		switch n := utf8.RuneCountInString(word); {
		case i == 0:
			lines[0] = word
			room -= n
		case n < room:
			lines[last] += " " + word
			room -= n + 1
		default:
			lines = append(lines, word)
			room = width - n
		}
	}
	return lines
}

// priced writes a text that wraps after its mark, with an amount at the end of its last line.
func (s *sheet) priced(mark, text string, amount decimal.Decimal) {
	cost := s.money(amount)
	width := sheetWidth - 2 - utf8.RuneCountInString(mark) - utf8.RuneCountInString(cost) - 1
	indent := "  " + strings.Repeat(" ", utf8.RuneCountInString(mark))
	lines := wrapped(text, width, width)
	last := lines[len(lines)-1]
	s.b.WriteString("  " + mark + strings.Join(lines, "\n"+indent) + strings.Repeat(" ", width+1-utf8.RuneCountInString(last)) + cost + "\n")
}

// listed joins amounts of things, and says ornaments once: "9 crimson, 5 gold ornaments, 6 ft of garland".
func listed(texts []string) string {
	for i := range len(texts) - 1 {
		_, _, this := strings.Cut(texts[i], " ornament")
		_, _, next := strings.Cut(texts[i+1], " ornament")
		short := strings.TrimSuffix(strings.TrimSuffix(texts[i], " ornaments"), " ornament")
		if this && next && strings.Contains(short, " ") {
			texts[i] = short
		}
	}
	return strings.Join(texts, ", ")
}

// listing returns "a", "a and b" or "a, b and c".
func listing(texts []string) string {
	if n := len(texts) - 1; n > 0 {
		return strings.Join(texts[:n], ", ") + " and " + texts[n]
	}
	return texts[0]
}

// say is a number of things in words.
func say(n int, what string) string {
	if n != 1 {
		what += "s"
	}
	return strconv.Itoa(n) + " " + what
}
