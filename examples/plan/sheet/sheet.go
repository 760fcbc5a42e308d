// Package sheet lays a plan out as text: what to take to the shop and into the rooms.
package sheet

import (
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

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

// subjects are what cautions are about, by their codes, in the order of the sheet; those of other
// codes come last.
var subjects = []struct {
	name  string
	codes []string
}{
	{"Tree", []string{"cut", "exits", "label", "own height", "heat", "trunk", "water", "metal", "prelit", "tie", "marshal", "clear", "ladder", "lift", "deep", "floor", "load", "overload", "days", "off"}},
	{"Mantel", []string{
		"take down before a fire", "not trim", "local code", "candles", "dry greens", "screen", "mirror", "covered", "hook label", "hook heat",
		"hooks side by side", "weigh yours", "half hung", "berries", "reach", "cords", "not measured", "height not given",
		"depth not given", "thickness not given", "opening not given", "low shelf left", "low shelf right", "wall left", "wall right", "above",
		"stairs", "door",
	}},
}

// cautions writes what to mind, by subject.
func (s *sheet) cautions() {
	if len(s.plan.Cautions) == 0 {
		return
	}
	s.heading("Take care")
	var order, last []string
	texts := map[string][]string{}
	seen := map[string]bool{} // the codes that are told
	for _, c := range s.plan.Cautions {
		if seen[c.Code] || slices.Contains(workCodes, c.Code) {
			continue // those of the work are on its own sheets
		}
		seen[c.Code] = true
		text := s.alike(c)
		switch {
		case c.Code == "ladder":
			text = "Ladder: " + c.Text + "."
		case c.Code == "floor" && s.cautioned("ladder"):
			text = "Do not stand on chairs."
		}
		if s.why && c.Source != "" {
			text = strings.TrimSuffix(text, ".") + " (" + c.Source + ")."
		}
		texts[c.Code] = append(texts[c.Code], text)
		order = append(order, c.Code)
	}
	for _, subject := range subjects {
		var list []string
		for _, code := range subject.codes {
			list = append(list, texts[code]...)
			delete(texts, code)
		}
		if len(list) > 0 {
			s.line(subject.name+": "+strings.Join(list, " "), -1, "")
		}
	}
	for _, code := range order {
		last = append(last, texts[code]...)
	}
	if len(last) > 0 {
		s.line("Also: "+strings.Join(last, " "), -1, "")
	}
}

// cautioned reports whether there is a caution of that code.
func (s *sheet) cautioned(code string) bool {
	return slices.ContainsFunc(s.plan.Cautions, func(c units.Caution) bool { return c.Code == code })
}

// alike returns the sentence of a caution, with the figures of all that have its code: "keep it 9 ft or
// 4 ft 6 in away".
func (s *sheet) alike(c units.Caution) string {
	words := strings.Fields(c.Text)
	var others [][]string
	head, tail := len(words), len(words)
	for _, o := range s.plan.Cautions {
		if o.Code != c.Code || o.Text == c.Text {
			continue // a code has one sentence, but for its figures
		}
		other := strings.Fields(o.Text)
		same := 0
		for same < min(len(words), len(other)) && words[same] == other[same] {
			same++
		}
		head, same = min(head, same), 0
		for same < min(len(words), len(other)) && words[len(words)-1-same] == other[len(other)-1-same] {
			same++
		}
		tail = min(tail, same)
		others = append(others, other)
	}
	text := c.Text
	if others != nil {
		if len(words)-head-tail > 1 && tail > 0 && !strings.HasSuffix(words[len(words)-tail-1], ",") {
			tail-- // the unit belongs to the figure
		}
		middle := func(w []string) string { return strings.Join(w[min(head, len(w)-tail):len(w)-tail], " ") }
		variants := []string{strings.TrimSuffix(middle(words), ",")}
		comma := strings.TrimPrefix(middle(words), variants[0])
		for _, o := range others {
			if v := strings.TrimSuffix(middle(o), ","); v != "" && !slices.Contains(variants, v) {
				variants = append(variants, v)
			}
		}
		text = strings.Join(slices.Concat(words[:head], []string{strings.Join(variants, " or ") + comma}, words[len(words)-tail:]), " ")
	}
	text = s.measures(text)
	return strings.ToUpper(text[:1]) + text[1:] + "."
}

// money prints an amount with the places of the house.
func (s *sheet) money(d decimal.Decimal) string {
	if places := int32(s.request.House.Rates.Places); d.Equal(d.Truncate(places)) {
		return d.StringFixed(places)
	}
	return d.String()
}

// style is the units of the house.
func (s *sheet) style() units.Style { return s.request.House.Units }

// length prints a length to a quarter inch, small ones to an eighth; or to half a centimeter, a
// centimeter from a meter on, and 10 cm from 10 m on.
func (s *sheet) length(l units.Length) string {
	step := units.Inch / 4
	if l < 6*units.Inch {
		step = units.Inch / 8
	}
	if s.style() == units.InMetric {
		switch step = units.Centimeter / 2; {
		case l >= 10*units.Meter:
			step = 10 * units.Centimeter
		case l >= units.Meter:
			step = units.Centimeter
		}
	}
	return l.Format(s.style(), step)
}

// quantity prints a quantity in the units of the house.
func (s *sheet) quantity(q shopping.Quantity) string {
	switch {
	case q.Length == 0:
		return strconv.Itoa(q.Pieces)
	case q.Pieces > 1:
		return strconv.Itoa(q.Pieces) + " x " + s.length(q.Length)
	}
	return s.length(q.Length)
}

// item prints an item in the units of the house.
func (s *sheet) item(i shopping.Item) string {
	size, before := i.Size, ""
	i.Size = 0
	if i.Type == "mantel" {
		i.Type, before = "", "mantel "
	}
	text := before + i.String()
	if size > 0 {
		text += ", " + s.length(size)
	}
	return text
}

// lot prints so much of an item, "9 crimson ornaments" or "6 ft of garland".
func (s *sheet) lot(i shopping.Item, q shopping.Quantity) string {
	if q.Length > 0 && q.Pieces == 1 {
		return s.length(q.Length) + " of " + s.item(i)
	}
	if q.Length > 0 {
		return s.quantity(q) + " of " + s.item(i)
	}
	text := s.item(i)
	if q.Pieces == 1 {
		one := strings.TrimPrefix(i.Kind.Count(1), "1 ")
		text = strings.Replace(text, i.Kind.String(), one, 1)
	}
	return strconv.Itoa(q.Pieces) + " " + text
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
		s.b.WriteString("  ")
	} else {
		s.b.WriteString("  " + label + strings.Repeat(" ", max(1, column-utf8.RuneCountInString(label))))
	}
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

// priced writes a line with an amount at its end.
func (s *sheet) priced(text string, amount decimal.Decimal) {
	cost := s.money(amount)
	room := sheetWidth - 2 - utf8.RuneCountInString(text) - utf8.RuneCountInString(cost)
	if room < 1 { // too long for one line
		s.line("", 0, text)
		text, room = "", sheetWidth-2-utf8.RuneCountInString(cost)
	}
	s.b.WriteString("  " + text + strings.Repeat(" ", room) + cost + "\n")
}

// buy lists what to buy, what is taken from the box, what is short, and what goes
// back.
func (s *sheet) buy(list shopping.List) {
	budget := s.request.Shop.Budget
	switch {
	case budget.IsZero():
		s.heading("To buy: the least cost for what is needed")
	case list.Least.GreaterThan(budget):
		s.heading("To buy: as far as " + s.money(budget) + " goes; it takes " + s.money(list.Least) + " to have enough of everything")
	default:
		s.heading("To buy: the fullest trees for " + s.money(budget))
	}
	bought := 0
	for _, p := range list.Purchases {
		var order []string // what the packs hold, and the packs of each
		packs, cost := map[string][]string{}, map[string]decimal.Decimal{}
		for _, b := range p.Buys {
			what := s.item(b.Offer.Item)
			if len(b.Offer.Contents) > 0 {
				what = s.lots(b.Offer.Contents)
			}
			if packs[what] == nil {
				order = append(order, what)
			}
			text := strconv.Itoa(b.Packs) + " x " + b.Offer.Name + " at " + s.money(b.Offer.Price)
			if b.Offer.Store != "" {
				text += ", " + b.Offer.Store
			}
			packs[what], cost[what] = append(packs[what], text), cost[what].Add(b.Cost)
			bought++
		}
		for _, what := range order {
			s.priced("[ ] "+what+": "+strings.Join(packs[what], ", "), cost[what])
		}
	}
	for _, b := range list.Bills {
		if !b.Delivery.IsZero() {
			s.priced("    delivery, "+b.Store, b.Delivery)
		}
		if !b.Tax.IsZero() {
			s.priced("    tax, "+b.Store, b.Tax)
		}
	}
	if bought == 0 {
		s.line("nothing", 0, "")
	}
	s.priced("    total", list.Total)
	var owned []string
	for _, p := range list.Purchases {
		if p.Owned != (shopping.Quantity{}) {
			owned = append(owned, s.lot(p.Shares[0].Item, p.Owned))
		}
	}
	var also []string
	if len(owned) > 0 {
		also = append(also, "From stock: "+listed(owned)+".")
	}
	var left []shopping.Lot
	for _, p := range list.Purchases {
		left = append(left, p.Left...)
	}
	if len(left) > 0 {
		also = append(also, "Left over, back into the box: "+s.lots(left)+".")
	}
	if also != nil {
		s.line(strings.Join(also, " "), -1, "")
	}
	s.short(list)
}

// short lists what is missing, item by item, with the rooms that miss it.
func (s *sheet) short(list shopping.List) {
	var order []shopping.Item
	missing, rooms := map[shopping.Item]shopping.Quantity{}, map[shopping.Item][]string{}
	for _, share := range list.Short() {
		if s.open(share) {
			continue // less than planned, and enough
		}
		q := share.Short()
		m, seen := missing[share.Item]
		if !seen {
			order = append(order, share.Item)
		}
		if q.Length > 0 && q.Pieces == 0 {
			m.Length += q.Length
		} else {
			m.Pieces, m.Length = m.Pieces+q.Pieces, q.Length
		}
		missing[share.Item] = m
		if share.Room != "" {
			rooms[share.Item] = append(rooms[share.Item], share.Room+" "+s.quantity(q))
		}
	}
	if len(order) == 0 {
		return
	}
	poor := !s.request.Shop.Budget.IsZero() && list.Least.GreaterThan(s.request.Shop.Budget)
	for _, part := range []struct {
		why   string
		there bool
	}{{"not to be had for the money", true}, {"on no shelf here", false}} {
		if !poor && part.there {
			part.why = "the shelves have too few"
		}
		head := "  SHORT, " + part.why + ":\n"
		for _, item := range order {
			if s.shelved(item) != part.there {
				continue
			}
			text := s.lot(item, missing[item])
			if len(rooms[item]) > 0 {
				text += " (" + strings.Join(rooms[item], ", ") + ")"
			}
			s.b.WriteString(head)
			head = ""
			s.line("", 2, text)
		}
	}
}

// shelved reports whether a shelf has an item, of whatever size and number.
func (s *sheet) shelved(item shopping.Item) bool {
	is := func(i shopping.Item) bool {
		return i.Kind == item.Kind && (item.Color == "" || i.Color == item.Color) && (item.Type == "" || i.Type == item.Type)
	}
	for _, o := range s.request.Shop.Offers {
		if o.Shelf == shopping.SoldOut {
			continue
		}
		if len(o.Contents) == 0 && is(o.Item) || slices.ContainsFunc(o.Contents, func(l shopping.Lot) bool { return is(l.Item) }) {
			return true
		}
	}
	return false
}

// open reports whether a share gets less than was planned, but enough.
func (s *sheet) open(share shopping.Share) bool { return share.Enough() && share.Gets.Pieces > 0 }

// lots joins lots of one item.
func (s *sheet) lots(lots []shopping.Lot) string {
	var texts []string
	total := map[shopping.Item]int{}
	for _, l := range lots {
		if l.Quantity.Length == 0 {
			total[l.Item] += l.Quantity.Pieces
		}
	}
	for _, l := range lots {
		if l.Quantity.Length > 0 {
			texts = append(texts, s.lot(l.Item, l.Quantity))
		} else if n := total[l.Item]; n > 0 {
			texts = append(texts, s.lot(l.Item, shopping.Quantity{Pieces: n}))
			total[l.Item] = 0
		}
	}
	return listed(texts)
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

// A get is what a need of a room gets, from the basket if there is one.
type get struct {
	shopping.Need
	gets     shopping.Quantity
	replaced shopping.Quantity // by others
	cuts     []string
}

// instead reports whether it stands in for what was not to be had.
func (g get) instead() bool { return strings.HasPrefix(g.Basis, "instead of ") }

// gets returns what the needs of a room get, and what stands in for them.
func (s *sheet) gets(shares []shopping.Share) []get {
	var list []get
	for _, n := range shares {
		g := get{Need: n.Need, gets: n.Gets, replaced: n.Replaced}
		if s.plan.Basket != nil {
			for _, p := range s.plan.Basket.Purchases {
				for _, c := range p.Cuts {
					for _, piece := range c.Pieces {
						if piece.Item.Kind == n.Item.Kind && piece.Room == n.Room {
							g.cuts = append(g.cuts, s.cut(c, piece))
						}
					}
				}
			}
		}
		list = append(list, g)
	}
	return list
}

// cut says what a room gets of a strand.
func (s *sheet) cut(c shopping.Cut, piece shopping.Need) string {
	roll := s.length(c.Roll) + " strand"
	if c.Offer == "" {
		roll = "your own " + roll
	}
	if piece.Quantity.Length == c.Roll {
		return strconv.Itoa(c.Rolls*max(1, piece.Quantity.Pieces)) + " x " + roll
	}
	length := s.length(piece.Quantity.Length)
	if n := c.Rolls * max(1, piece.Quantity.Pieces); n > 1 {
		return strconv.Itoa(n) + " x " + length + " off " + strconv.Itoa(c.Rolls) + " x " + roll
	}
	return length + " off a " + roll
}

// told says how much there is of a need, "81 ft" or "planned 27, budget allows 33".
func (s *sheet) told(g get) string {
	planned, gets := s.quantity(g.Quantity), s.quantity(g.gets)
	switch {
	case g.gets == g.Quantity:
		return planned
	case g.replaced != (shopping.Quantity{}) && g.gets == (shopping.Quantity{}):
		return "planned " + planned + ", " + s.quantity(g.replaced) + " others in their place"
	case g.replaced != (shopping.Quantity{}):
		return "planned " + planned + ", " + gets + " and " + s.quantity(g.replaced) + " others"
	case g.gets == (shopping.Quantity{}):
		return "planned " + planned + ", none to be had"
	case g.gets.Pieces > g.Quantity.Pieces && g.gets.Length == 0:
		return "planned " + planned + ", budget allows " + gets
	case g.gets.Pieces >= g.Open.Min && g.Open.Max > 0:
		return "planned " + planned + ", " + gets + " will do"
	}
	return "planned " + planned + ", only " + gets
}

// reason writes why a need is as it is.
func (s *sheet) reason(n shopping.Need) {
	if !s.why {
		return
	}
	text := n.Basis
	if _, share, found := strings.Cut(text, "; of these "); found {
		text = share // all of them are told before
	}
	if n.Source != "" {
		text += " (" + n.Source + ")"
	}
	s.line("", labelWidth+1, "why: "+text)
}

// dress writes the needs of some kinds.
func (s *sheet) dress(needs []get, kind shopping.Kind, extra string) {
	for _, g := range needs {
		if g.Item.Kind != kind {
			continue
		}
		text := s.told(g)
		if len(g.cuts) > 0 {
			text += ": " + strings.Join(g.cuts, ", ")
		}
		if extra != "" {
			text += "; " + extra
		}
		s.line(s.item(g.Item), labelWidth+1, text)
		s.reason(g.Need)
	}
}

// tree writes the page of a tree, in the order of work. As it was measured it has no handle and bare tip but its own.
func (s *sheet) tree(t job.TreePlan, measured sizing.Tree) {
	name := t.Room
	if name == "" {
		name = "Tree"
	}
	s.heading(name + ": tree, " + s.length(t.Height))
	shape := t.Taper.String()
	if t.Base > 0 {
		grade, _ := measured.Grade()
		shape = s.length(t.Base) + " wide, " + grade
	}
	way := "by rule"
	if t.SizeBy == "shape" {
		way = "by shape"
	}
	step := units.SquareFoot
	if s.style() == units.InMetric {
		step = units.SquareMeter / 10
	}
	area := s.style()
	if area == units.InFeetInches {
		area = units.InFeet
	}
	surface, _ := measured.DressedArea() // which the plan is made by
	if surface < 10*step {
		step /= 10
	}
	room := s.top(t)
	if f := t.Fit; f != nil {
		text, _, _ := strings.Cut(sizing.Format(*f, s.style()), "; ")
		room = "; ceiling " + s.length(t.Space.Ceiling) + ", " + text + s.under(t) + room
	}
	s.line(strings.ToUpper(shape[:1])+shape[1:]+", "+t.Exposure.String()+", "+surface.Format(area, step)+", "+way+room+".", -1, "")
	needs := s.gets(t.Shares)
	extra := ""
	if l := t.Load; l.Limit > 0 {
		c := s.request.House.Circuit
		plugs, _ := t.Strings.Runs()
		extra = say(t.Strings.Count, "string") + " of " + strconv.Itoa(t.Strings.Each.Lamps) + " from " + say(plugs, "plug") + ", " +
			l.Power.String() + ", limit " + l.Limit.String() + " (80 % of a " + strconv.Itoa(c.Amperes) + " A circuit)"
		if l.Power > l.Limit {
			extra += ": OVERLOADED, use more circuits"
		}
	}
	s.dress(needs, shopping.Light, extra)
	for _, kind := range []shopping.Kind{shopping.Garland, shopping.Ribbon} {
		s.dress(needs, kind, s.wraps(t, measured, needs, kind))
	}
	s.dress(needs, shopping.Pick, "")
	s.balls(needs, t)
	if s.why {
		s.line("rule and shape", labelWidth+1, strings.ReplaceAll(sizing.Format(t.Comparison, s.style()), "\n", ". "))
	}
}

// wraps says how far apart a garland or ribbon is wound: what is had of it.
func (s *sheet) wraps(t job.TreePlan, measured sizing.Tree, needs []get, kind shopping.Kind) string {
	apart := t.RuleLook.Spacing[kind]
	if t.ByShape {
		apart = t.Look.Spacing[kind]
	}
	for _, g := range needs {
		if g.Item.Kind == kind && g.gets.Length < g.Quantity.Length {
			apart = 0
			if wide, err := measured.Spacing(g.gets.Length); err == nil {
				apart = wide
			}
		}
	}
	if apart == 0 {
		return ""
	}
	return "wind it " + s.length(apart) + " apart"
}

// under says what else has to go under the ceiling, if it is given or the room is tight.
func (s *sheet) under(t job.TreePlan) string {
	var with []string
	more := ""
	switch room := t.Space; {
	case room.Topper > 0:
		with = append(with, "a topper of "+s.length(room.Topper))
	case room.NoTopper || t.Fit.Verdict == "fits":
	case t.Fit.Topper > 0:
		more = "; room for a topper of " + s.length(t.Fit.Topper) + " at most"
	default:
		more = "; no room for a topper"
	}
	if t.Space.Stand > 0 {
		with = append(with, "a stand of "+s.length(t.Space.Stand))
	}
	if t.Space.Fall > 0 {
		with = append(with, "a vault "+s.length(t.Space.Fall)+" lower a foot to the side")
	}
	if with != nil {
		more = " with " + listing(with) + more
	}
	return more
}

// listing returns "a", "a and b" or "a, b and c".
func listing(texts []string) string {
	if n := len(texts) - 1; n > 0 {
		return strings.Join(texts[:n], ", ") + " and " + texts[n]
	}
	return texts[0]
}

// top says what it takes to reach the top of the tree, unless it does not go under the ceiling.
func (s *sheet) top(t job.TreePlan) string {
	what := "; topper"
	if f := t.Fit; f != nil && f.Verdict == "does not fit" {
		return ""
	} else if t.Space.NoTopper || f != nil && f.Topper == 0 {
		what = "; tip"
	}
	switch {
	case t.Ladder.Lift:
		return "; no stepladder reaches the tip: it takes a lift, and people trained to use it"
	case t.Ladder.Size > 0:
		return what + " from a stepladder of " + s.length(t.Ladder.Size)
	}
	return what + " within reach from the floor"
}

// balls writes the ornaments: how many of each color, and of which sizes they are.
func (s *sheet) balls(needs []get, t job.TreePlan) {
	total, least, most := 0, t.Types*t.Each.Min, t.Types*t.Each.Max
	for _, p := range t.Pieces {
		if p.Item.Kind == shopping.Ornament {
			total += p.Quantity.Pieces
		}
	}
	if t.Planned[shopping.Ornament].Pieces == 0 {
		return
	}
	text := strconv.Itoa(total) + " in all"
	if total < least {
		text += ", too few"
	}
	text += ": " + say(t.Types, "type") + ", " + t.Each.String() + " of each (" +
		strconv.Itoa(least) + " to " + strconv.Itoa(most) + " will do)"
	for _, g := range needs {
		if g.Item.Kind != shopping.Ornament {
			continue
		}
		all, _, shared := strings.Cut(g.Basis, "; of these ")
		for part := range strings.SplitSeq(all, "; ") {
			if strings.Contains(part, " short of ") {
				text += "; " + part
			}
		}
		s.line("ornaments", labelWidth+1, text)
		if shared {
			all := g.Need
			all.Basis, _, _ = strings.Cut(g.Basis, "; of these ")
			s.reason(all)
		}
		break
	}
	others := map[string]int{} // that stand in for those of a color
	for _, g := range needs {
		if g.Item.Kind == shopping.Ornament && g.instead() {
			others[g.Item.Color] += g.gets.Pieces
		}
	}
	for _, g := range needs {
		if g.Item.Kind != shopping.Ornament || g.instead() && others[g.Item.Color] == 0 {
			continue
		}
		color := g.Item.Color
		if color == "" {
			color = "any color"
		}
		if g.Item.Size > 0 {
			color += ", " + s.length(g.Item.Size)
		}
		text := s.told(g)
		if g.instead() {
			color += ", others"
			text = strconv.Itoa(others[g.Item.Color])
			others[g.Item.Color] = 0
		}
		if g.Item.Size == 0 {
			text += s.sizes(t.Pieces, g.Item.Color)
		}
		s.line("  "+color, labelWidth+1, text)
		s.reason(g.Need)
	}
}

// sizes says how many there are of which size of a color.
func (s *sheet) sizes(pieces []shopping.Lot, color string) string {
	var order []units.Length
	count := map[units.Length]int{}
	for _, p := range pieces {
		if p.Item.Kind == shopping.Ornament && p.Item.Color == color && p.Item.Size > 0 {
			if count[p.Item.Size] == 0 {
				order = append(order, p.Item.Size)
			}
			count[p.Item.Size] += p.Quantity.Pieces
		}
	}
	var texts []string
	for _, size := range order {
		texts = append(texts, strconv.Itoa(count[size])+" of "+s.length(size))
	}
	if len(texts) == 0 {
		return ""
	}
	return ": " + strings.Join(texts, ", ")
}

// mantel writes the page of a mantel, in the order of work.
func (s *sheet) mantel(m job.MantelPlan) {
	name := m.Room
	if name == "" {
		name = "Mantel"
	}
	what, hung := s.hung(m)
	s.heading(name + ": " + what)
	needs := s.gets(m.Shares)
	about := s.fire(m) + hung
	if l, ok := m.Loads[shopping.Garland]; ok {
		about += s.loads(" Hooks", "one", l)
	}
	if l, ok := m.Loads[shopping.Stocking]; ok {
		about += s.loads(" Stocking holders", "one", l)
	}
	s.line(about, -1, "")
	if s.why {
		for _, v := range m.Clearances.Violations {
			s.line("", labelWidth+1, "trim: "+s.clearance(v)+" ("+v.Source+")")
		}
	}
	told := map[shopping.Item]bool{}
	var lines []string
	for _, step := range m.Steps {
		text, takes := step.Do, s.takes(step, needs, told)
		if s.why {
			if takes != "" {
				text += " It takes" + strings.TrimPrefix(takes, ":") + "."
			}
			if step.Caution.Text != "" {
				text += " Mind: " + step.Caution.Text + "."
			}
			lines = append(lines, text)
			continue
		}
		if takes == "" && strings.HasPrefix(text, "Step back") {
			continue // the figures are above
		}
		text, _, _ = strings.Cut(text, ". ")
		text, _, _ = strings.Cut(text, ": ")
		lines = append(lines, strings.TrimSuffix(text, ".")+takes)
	}
	for i, line := range lines {
		s.line(strconv.Itoa(i+1), 2, line)
	}
	for _, g := range needs { // what no step names
		if !told[g.Item] {
			s.dress([]get{g}, g.Item.Kind, "")
		}
	}
	if s.why {
		for _, g := range needs {
			s.line(s.item(g.Item), labelWidth+1, g.Basis+" ("+g.Source+")")
		}
	}
}

// hung says what is dressed, and how its garland hangs.
func (s *sheet) hung(m job.MantelPlan) (what, how string) {
	r := m.Run
	if len(r.Hooks) == 0 {
		how = "Garland " + s.hangs(m.Hanging) + "."
		for side, wall := range map[string]bool{"left": m.LeftWall, "right": m.RightWall} {
			if wall {
				how += " The " + side + " end is at a wall."
			}
		}
		return "mantel, " + s.length(m.Length) + ", " + m.Hanging.Look.String(), how
	}
	first, last := r.Hooks[0], r.Hooks[len(r.Hooks)-1]
	switch {
	case r.Balusters > 0:
		what = "stairs, " + s.length(last.Along-first.Along) + " across"
		if rise := first.Below - last.Below; rise != 0 {
			what += ", " + s.length(max(rise, -rise)) + " up"
		}
	case r.To != (mantel.Point{}):
		what = "door or window, " + s.length(r.To.Along) + " by " + s.length(r.To.Below)
	default:
		what = "garland over hooks, " + s.length(last.Along-first.Along) + " across"
	}
	how = "Garland close along it"
	if r.Sag > 0 {
		how = "Garland in " + say(len(r.Hooks)-1, "swag") + " " + s.length(r.Sag) + " deep"
	}
	if r.Left > 0 || r.Right > 0 {
		how += ", falling " + s.length(r.Left) + " at the left, " + s.length(r.Right) + " at the right"
	}
	return what, how + "."
}

// loads says what hooks carry, and what would hold where they do not.
func (s *sheet) loads(hooks, one string, l mantel.Loads) string {
	most, over := units.Mass(0), 0
	for _, h := range l.Hooks {
		most = max(most, h.Total)
		if h.Total > l.Working {
			over++
		}
	}
	text := hooks + " at " + say(len(l.Hooks), "place") + ", at most " + s.weight(most) + " on " + one + "; one may carry " + s.weight(l.Working) + "."
	if over > 0 {
		text += " OVERLOADED at " + say(over, "place") + ": use " + s.measures(l.Remedy) + "."
	}
	return text
}

// weight prints a weight.
func (s *sheet) weight(m units.Mass) string { return m.Format(s.style(), units.Ounce/10) }

// fire says how near what hangs comes to the fire: in one sentence whether a fire may burn, and the worst of the
// figures for trim with its source. With why the rest follow.
func (s *sheet) fire(m job.MantelPlan) string {
	c := m.Clearances
	if m.Opening == (mantel.Rectangle{}) {
		return ""
	}
	var texts []string
	if c.Fire != (mantel.Clearance{}) {
		texts = append(texts, "NO FIRE WHILE THIS HANGS: "+s.length(c.Fire.Measured)+" from the opening ("+c.Fire.Place+"), want "+s.length(c.Fire.Allowed))
	}
	if len(c.Violations) > 0 {
		text := "Worst as trim: " + s.clearance(c.Violations[0]) + " (" + c.Violations[0].Source + ")"
		if n := len(c.Violations) - 1; n > 0 && !s.why {
			text += "; " + strconv.Itoa(n) + " more with -why"
		}
		texts = append(texts, text)
	}
	if texts == nil {
		return "Nothing is within 3 ft of the opening. "
	}
	return strings.Join(texts, ". ") + ". "
}

// clearance says what was measured and what is asked for.
func (s *sheet) clearance(c mantel.Clearance) string {
	bound := ", at most "
	if c.AtLeast {
		bound = ", at least "
	}
	return c.Place + ", " + c.Measure + " " + s.length(c.Measured) + bound + s.length(c.Allowed)
}

// takes says how much a step takes of what no step before it has named.
func (s *sheet) takes(step mantel.Step, needs []get, told map[shopping.Item]bool) string {
	var texts []string
	for _, i := range step.Items {
		if told[i] {
			continue
		}
		var list []get
		for _, g := range needs {
			if g.Item != i {
				continue
			}
			told[i] = true
			if n := len(list); n > 0 && g.Quantity.Length == 0 { // hooks for the garland, and those for stockings
				list[n-1].gets.Pieces += g.gets.Pieces
				list[n-1].Quantity.Pieces += g.Quantity.Pieces
				continue
			}
			list = append(list, g)
		}
		for _, g := range list {
			text := s.lot(i, g.gets)
			switch {
			case g.gets == g.Quantity:
			case g.gets == (shopping.Quantity{}):
				text = "no " + s.item(i) + " (planned " + s.quantity(g.Quantity) + ")"
			default:
				text += " (planned " + s.quantity(g.Quantity) + ")"
			}
			if len(g.cuts) > 0 {
				text += " (" + strings.Join(g.cuts, ", ") + ")"
			}
			if cord := g.Basis[strings.LastIndex(g.Basis, "; ")+1:]; strings.HasSuffix(cord, " of extension cord") {
				text += "," + cord
			}
			texts = append(texts, text)
		}
	}
	if len(texts) == 0 {
		return ""
	}
	return ": " + listed(texts)
}

// hangs says how a garland hangs.
func (s *sheet) hangs(h mantel.Hanging) string {
	text := "straight"
	if h.Swags > 0 {
		text = say(h.Swags, "swag") + " " + s.length(h.Sag) + " deep"
	}
	return text + ", falling " + s.length(h.Left) + " at the left, " + s.length(h.Right) + " at the right"
}

// colors says which colors are taken for one by some, and what parts them.
func (s *sheet) colors(r palette.Reading) {
	s.heading("Colors: " + r.Palette.String())
	if s.why {
		s.b.WriteString(r.String() + "\n")
		return
	}
	apart := true
	for _, p := range r.Pairs {
		var who []string
		for v := palette.Daylight; v <= palette.WarmTritan; v++ {
			if text := viewer(v); p.Difference[v] < r.Apart && !slices.Contains(who, text) {
				who = append(who, text)
			}
		}
		if len(who) == 0 {
			continue
		}
		apart = false
		if slices.Contains(who, "everybody") {
			who = []string{"everybody"}
		}
		text := "look alike to " + strings.Join(who, " and ")
		if p.Mend != (palette.Swatch{}) {
			text += "; " + p.Mend.Name + " as " + p.Mend.Color.String() + " parts them"
		}
		s.line(p.A.Name+" and "+p.B.Name, 0, text)
	}
	if apart {
		s.line("they", 0, "hold apart for everybody")
	}
}

// viewer says who looks in a view, as anybody would.
func viewer(v palette.View) string {
	switch name := v.String(); {
	case strings.HasSuffix(name, "protan"), strings.HasSuffix(name, "deutan"):
		return "people with red-green color blindness"
	case strings.HasSuffix(name, "tritan"):
		return "people with blue-yellow color blindness"
	case v >= palette.WarmLight:
		return "everybody by warm light"
	}
	return "everybody"
}

// say is a number of things in words.
func say(n int, what string) string {
	if n != 1 {
		what += "s"
	}
	return strconv.Itoa(n) + " " + what
}
