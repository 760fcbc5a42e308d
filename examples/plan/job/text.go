package job

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// The sheet is as wide as a printed page and a phone held sideways both show.
const (
	sheetWidth = 76
	labelWidth = 23
)

// String returns the sheet to take to the shop: for each room what is needed,
// how much of it and why; how the colors hold together; what to buy; and the
// cautions that apply.
func (p Plan) String() string {
	var s sheet
	for _, t := range p.Trees {
		s.heading(t.Room, "tree, "+t.Height.String())
		s.tree(t)
		s.needs(t.needs)
		s.comparison(t)
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
	s.b.WriteString("\nWhere no source stands beside a figure it is common practice: a rule of\nthumb of the trade, for which there is no published standard.\n")
	if len(p.Cautions) > 0 {
		s.heading("Take care", "")
		for _, c := range p.Cautions {
			s.line("-", 2, c)
		}
	}
	return s.b.String()
}

// commonPractice is the source that goes without saying.
const commonPractice = "common practice"

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

// needs lists how much there must be of each thing, and why. The source is told
// where it is not common practice.
func (s *sheet) needs(needs []open) {
	for _, n := range needs {
		text := n.Quantity.String() + " - " + n.Basis
		if n.Source != commonPractice {
			text += " (" + n.Source + ")"
		}
		s.line(n.Item.String(), labelWidth, text)
	}
}

// tree says what kind of tree it is, and whether it goes into the room.
func (s *sheet) tree(t TreePlan) {
	shape := t.Width.String() + " wide, a " + t.Grade + " taper"
	if t.Width == 0 {
		shape = t.Taper.String() + ", by the usual width"
	}
	step := units.SquareFoot
	if t.Comparison.Area < 10*step {
		step /= 10
	}
	degrees, _ := t.Where.Degrees() // the comparison has taken it
	s.line("shape", labelWidth, shape+"; "+strconv.FormatFloat(degrees, 'f', -1, 64)+" degrees seen; "+
		t.Comparison.Area.Format(units.InFeet, step)+" to dress")
	if f := t.Fit; f != nil {
		label := map[string]string{"fits": "ceiling", "tight": "TIGHT", "does not fit": "TOO TALL"}[f.Verdict]
		verdict, _, _ := strings.Cut(f.String(), ";")
		s.line(label, labelWidth, feet(t.Ceiling)+", "+verdict)
	}
	s.line("ornament types", labelWidth, strconv.Itoa(t.OrnamentTypes)+", "+t.OrnamentsPerType.String()+" of each; "+t.Ornaments.String()+" ornaments in all")
	switch {
	case t.Ladder.Lift:
		s.line("to set the topper", labelWidth, "no stepladder will do: it takes a lift, and people trained to use it")
	case t.Ladder.Size > 0:
		s.line("to set the topper", labelWidth, t.Ladder.Size.String()+" stepladder")
	}
}

// comparison says what the other way of sizing would ask for, and how the
// garland or the picks come out by rule.
func (s *sheet) comparison(t TreePlan) {
	s.line("ball sizes", labelWidth, t.Sizes.String())
	if l := t.Strings; l != nil {
		label := "light strings"
		if l.Load.Over {
			label = "OVERLOADED"
		}
		s.line(label, labelWidth, plural(l.Count, "string")+" of "+strconv.Itoa(l.Each.Lamps)+" from "+plural(l.Runs, "plug")+", "+
			l.Load.Power.String()+" of the "+l.Load.Limit.String()+" that 15 A at 120 V carries for hours")
	}
	label, instead := "by shape instead", t.Comparison
	instead.Way = sizing.ByShape
	if t.Comparison.Way == sizing.ByShape {
		label, instead.Way = "by rule instead", sizing.ByRule
	}
	accents, _ := t.Accent.kinds()
	list, _ := instead.Needs(units.InFeetInches, accents...) // the plan has asked for them too
	other := make([]string, len(list))
	for i, n := range list {
		other[i] = n.Item.String() + " " + n.Quantity.String()
	}
	s.line(label, labelWidth, strings.Join(other, ", "))
	for line := range strings.Lines(t.Comparison.String()) {
		what, text, _ := strings.Cut(line, ": ")
		if slices.ContainsFunc(accents, func(k shopping.Kind) bool { return strings.Contains(what, k.String()) }) {
			s.line("", labelWidth, text)
		}
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
			s.line("", labelWidth, "OVERLOADED at "+plural(l.Overloaded, "place")+": use "+l.Remedy)
		}
	}
	if len(m.violations()) == 0 && m.Opening != (Opening{}) {
		s.line("clear of the fire", labelWidth, "no published figure is broken while the fire is out")
	}
	for _, text := range tooNear(m.violations()) {
		s.line("TOO NEAR", labelWidth, text)
	}
}

// tooNear returns a sentence for each published figure that is broken, with every
// place where it is.
func tooNear(violations []mantel.Violation) []string {
	var rules []mantel.Violation // without place and measure
	places := map[mantel.Violation][]string{}
	for _, v := range violations {
		place := v.Place + " " + v.Measured.Format(units.InInches, units.Inch/8)
		v.Place, v.Measured = "", 0
		v.Allowed = v.Allowed / (units.Inch / 8) * (units.Inch / 8) // as it is printed
		if places[v] == nil {
			rules = append(rules, v)
		}
		places[v] = append(places[v], place)
	}
	var list []string
	for _, v := range rules {
		bound := "at most "
		if v.AtLeast {
			bound = "at least "
		}
		list = append(list, v.Measure+": "+strings.Join(places[v], ", ")+"; "+bound+v.Allowed.Format(units.InInches, units.Inch/8)+
			" by "+v.Source+", "+v.Edition)
	}
	return list
}

// feet prints a length as a tape measure shows it, rounded down to a quarter inch.
func feet(l units.Length) string {
	down, err := l.Floor(units.Inch / 4)
	if err != nil {
		return l.String()
	}
	return down.String()
}

// weight prints a weight to the ounce, as a kitchen scale does.
func weight(m units.Mass) string { return m.Format(units.InFeetInches, units.Ounce/10) }

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
	label := "not to be had"
	for _, m := range b.Missing {
		for _, n := range m.Needs {
			s.line(label, labelWidth, n.Quantity.String()+" "+n.Item.String()+", "+n.Room+": "+m.Why)
			label = ""
		}
	}
}

// pairs tabulates how far apart each two colors are, by daylight and in the worst
// view, and says how to mend a pair that is taken for one color by some.
func (s *sheet) pairs(r palette.Reading) {
	const row = "  %-24s%10s%10s  %s\n"
	fmt.Fprintf(&s.b, row, "how far apart", palette.Daylight, "worst", "which is")
	for _, p := range r.Pairs {
		worst := palette.Daylight
		for v, d := range p.Difference {
			if d < p.Difference[worst] {
				worst = palette.View(v)
			}
		}
		cell := func(v palette.View) string {
			mark := " "
			if !p.Holds[v] {
				mark = "*"
			}
			return strconv.FormatFloat(math.Floor(p.Difference[v]*10)/10, 'f', 1, 64) + mark
		}
		fmt.Fprintf(&s.b, row, p.A.Name+", "+p.B.Name, cell(palette.Daylight), cell(worst), worst)
	}
	// What follows the table in the reading are its sentences, each behind a star.
	if _, advice, found := strings.Cut(r.String(), "\n* "); found {
		for sentence := range strings.SplitSeq(advice, "\n* ") {
			s.line("*", 2, sentence)
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
