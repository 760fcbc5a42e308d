package shopping

import (
	"encoding/csv"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"
)

// A List is what to buy for any number of trees and mantels: one purchase for
// each item, and what they cost together. The zero value is an empty list.
// encoding/json writes it, and reads it back, with the names of the fields in
// lower case, quantities as [Quantity.MarshalJSON] has them and money as text.
type List struct {
	Purchases []Purchase      `json:"purchases"` // in the order in which the items were first needed
	Total     decimal.Decimal `json:"total"`     // the sum of their costs, exact
}

// List returns what to buy for needs of any items and rooms: for each item the
// purchase that [Shop.Cheapest] returns for all its needs together, so that a
// pack begun for one room serves the next, and what is owned is used once.
// That never costs more than separate lists that share the shelves and what is
// owned, as long as each Bound is equal to its Cost.
//
// Its errors are those of [Shop.Cheapest].
func (s Shop) List(needs []Need) (List, error) {
	c := newChecker("Shop.List")
	if err := c.shop(s); err != nil {
		return List{}, err
	}
	if err := c.needs(needs); err != nil {
		return List{}, err
	}
	return s.list(c, needs)
}

// list is [Shop.List] for a shop and needs that have been checked.
func (s Shop) list(c *checker, needs []Need) (List, error) {
	var l List
	groups := byItem(needs)
	for i, group := range groups {
		c.items = int64(len(groups) - i)
		p, err := s.cheapest(c, group)
		if err != nil {
			return List{}, err
		}
		l.Purchases = append(l.Purchases, p)
		l.Total = l.Total.Add(p.Cost)
	}
	return l, nil
}

// byItem returns needs in groups of one item, in the order in which the items come first.
func byItem(needs []Need) [][]Need {
	var groups [][]Need
	index := make(map[Item]int)
	for _, n := range needs {
		i, ok := index[n.Item]
		if !ok {
			i = len(groups)
			index[n.Item] = i
			groups = append(groups, nil)
		}
		groups[i] = append(groups[i], n)
	}
	return groups
}

// money writes d with two decimal places, or with four if it has more than two.
func money(d decimal.Decimal) string {
	if d.Equal(d.Truncate(2)) {
		return d.StringFixed(2)
	}
	return d.StringFixed(places)
}

// Columns of the texts of a list.
const (
	phoneWidth = 40
	pageWidth  = 76
)

// String returns the list laid out for a phone, in lines of at most 40
// characters: each item with a box to tick, its rooms, what is owned, the packs
// with their price, and what is left over; and the total. Money has two decimal
// places, or four if two would round it. It is not for programs to read.
func (l List) String() string { return l.text(phoneWidth) }

// Page returns the list laid out for a printed page, in lines of at most 76
// characters, and otherwise as [List.String] does.
func (l List) Page() string { return l.text(pageWidth) }

// text lays the list out in lines of at most width characters.
func (l List) text(width int) string {
	w := &writer{width: width}
	for _, p := range l.Purchases {
		p.text(w)
		w.line("")
	}
	w.row(0, "total", money(l.Total))
	return w.String()
}

// String returns the lines that a [List] of this one purchase has, without the total.
func (p Purchase) String() string {
	w := &writer{width: phoneWidth}
	p.text(w)
	return w.String()
}

// text writes p to w.
func (p Purchase) text(w *writer) {
	w.row(0, "[ ] "+p.Item.String(), "")
	for _, n := range p.Needs {
		room := n.Room
		if room == "" {
			room = "needed"
		}
		w.row(4, room, n.Quantity.String())
	}
	if p.Owned != (Quantity{}) {
		w.row(4, "owned", p.Owned.String())
	}
	for _, b := range p.Buys {
		w.row(4, strconv.Itoa(b.Packs)+" x "+b.Offer.Name+" at "+money(b.Offer.Price), money(b.Cost))
	}
	if len(p.Buys) == 0 {
		w.row(4, "nothing to buy", "")
	}
	for _, c := range p.Cuts {
		w.row(4, c.String(), "")
	}
	if p.Surplus != (Quantity{}) {
		w.row(4, "left over", p.Surplus.String())
	}
	if !p.Bound.Equal(p.Cost) {
		w.row(4, "could cost as little as", money(p.Bound))
	}
}

// String returns a line such as "cut 2 x 10 yd roll into 6 of 4 ft 6 in, 3 ft left of each".
func (c Cut) String() string {
	name := c.Offer
	if name == "" {
		name = "owned " + c.Roll.String()
	}
	pieces := make([]string, len(c.Pieces))
	for i, q := range c.Pieces {
		pieces[i] = q.String()
	}
	s := "cut " + strconv.Itoa(c.Rolls) + " x " + name + " into " + strings.Join(pieces, " + ")
	if c.Left > 0 {
		s += ", " + c.Left.String() + " left"
		if c.Rolls > 1 {
			s += " of each"
		}
	}
	return s
}

// A writer lays out lines of text.
type writer struct {
	strings.Builder
	width int
}

// line writes s as one line.
func (w *writer) line(s string) {
	w.WriteString(s)
	w.WriteByte('\n')
}

// row writes left, and right at the right-hand side, which must fit the width, in
// as many lines as it takes; the first is indented by indent and the others by two more.
func (w *writer) row(indent int, left, right string) {
	margin := strings.Repeat(" ", indent)
	line := margin
	length := utf8.RuneCountInString
	for _, word := range strings.Fields(left) {
		for {
			gap := " "
			if strings.TrimLeft(line, " ") == "" {
				gap = ""
			}
			if length(line)+length(gap)+length(word) <= w.width {
				line += gap + word
				break
			}
			if gap == "" {
				// A word longer than the line is broken.
				runes := []rune(word)
				cut := w.width - length(line)
				line += string(runes[:cut])
				word = string(runes[cut:])
			}
			w.line(line)
			line = margin + "  "
		}
	}
	if right == "" {
		w.line(line)
		return
	}
	if length(line)+1+length(right) > w.width {
		w.line(line)
		line = ""
	}
	w.line(line + strings.Repeat(" ", max(0, w.width-length(line)-length(right))) + right)
}

// CSV returns the list as comma-separated values (RFC 4180, lines ended by a
// line feed) with a header. There is one record for each kind of pack, and one
// without a pack for an item of which nothing is to be bought. The columns are
//
//	item     what it is
//	needs    each room and its share, "ticket hall 27; waiting room 14"
//	owned    what there is of it already
//	surplus  what will be left over
//	offer    what the shelf calls the pack
//	pack     what one pack holds
//	price    of one pack, money as in List.String
//	packs    how many to buy
//	cost     of these packs; the column adds up to the total
//
// The columns from item to surplus are the same in all records of an item. A
// field that begins with one of = + - @, as a name may, has an apostrophe put
// before it, since a spreadsheet would run it as a formula.
func (l List) CSV() string {
	var b strings.Builder
	w := csv.NewWriter(&b)
	write := func(record ...string) {
		for i, field := range record {
			if field != "" && strings.Contains("=+-@", field[:1]) {
				record[i] = "'" + field
			}
		}
		w.Write(record) // a strings.Builder does not fail, so neither does w
	}
	write("item", "needs", "owned", "surplus", "offer", "pack", "price", "packs", "cost")
	for _, p := range l.Purchases {
		needs := make([]string, len(p.Needs))
		for i, n := range p.Needs {
			needs[i] = strings.TrimLeft(n.Room+" "+n.Quantity.String(), " ")
		}
		item := []string{p.Item.String(), strings.Join(needs, "; "), p.Owned.String(), p.Surplus.String()}
		for _, b := range p.Buys {
			write(append(item[:4:4], b.Offer.Name, b.Offer.Pack.String(), money(b.Offer.Price), strconv.Itoa(b.Packs), money(b.Cost))...)
		}
		if len(p.Buys) == 0 {
			write(append(item[:4:4], "", "", "", "0", money(p.Cost))...)
		}
	}
	w.Flush()
	return b.String()
}
