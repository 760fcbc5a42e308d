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
	{"Tree", []string{"cut", "exits", "label", "own height", "heat", "trunk", "water", "metal", "prelit", "overfull", "tie", "marshal", "clear", "ladder", "lift", "deep", "floor", "load", "overload", "other strings", "days", "off"}},
	{"Mantel", []string{
		"take down before a fire", "not trim", "local code", "candles", "dry greens", "screen", "mirror", "covered", "hook label", "hook heat",
		"hooks side by side", "weigh yours", "lifted", "half hung", "berries", "reach", "cords", "not measured", "height not given",
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

// scale returns what a length is rounded to, and the style that it is printed in: a quarter inch, an
// eighth of a small one; half a centimeter, a centimeter from a meter on, and 10 cm from 10 m on. What
// is shorter than a foot or a yard is in inches.
func (s *sheet) scale(l units.Length) (units.Length, units.Style) {
	switch style := s.style(); {
	case style == units.InMetric && l >= 10*units.Meter:
		return 10 * units.Centimeter, style
	case style == units.InMetric && l >= units.Meter:
		return units.Centimeter, style
	case style == units.InMetric:
		return units.Centimeter / 2, style
	case style == units.InFeet && l >= units.Foot:
		return units.Foot / 100, style
	case style == units.InYards && l >= units.Yard:
		return units.Yard / 100, style
	case l < 6*units.Inch:
		return units.Inch / 8, inches(style)
	default:
		return units.Inch / 4, inches(style)
	}
}

// inches returns the style of what is shorter than a foot or a yard.
func inches(style units.Style) units.Style {
	if style == units.InFeetInches {
		return style
	}
	return units.InInches
}

// length prints a length.
func (s *sheet) length(l units.Length) string {
	step, style := s.scale(l)
	return l.Format(style, step)
}

// least prints a length that may be no shorter, rounded up, and most one that may be no longer, down. What a tape
// shows is exact.
func (s *sheet) least(l units.Length) string { return s.sided(l, units.Ceil) }
func (s *sheet) most(l units.Length) string  { return s.sided(l, units.Floor) }

func (s *sheet) sided(l units.Length, round func(l, step units.Length) (units.Length, error)) string {
	step, style := s.scale(l)
	if style == units.InMetric && l%units.Millimeter == 0 {
		step = units.Millimeter
	}
	l, _ = round(l, step)
	return l.Format(style, step)
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

// buy lists what to buy, what is taken from the box, what is short, and what goes
// back.
func (s *sheet) buy(list shopping.List) {
	budget := s.request.Shop.Budget
	switch {
	case budget.IsZero():
		s.heading("To buy: the least cost for what is needed")
	case list.Least.GreaterThan(budget):
		s.heading("To buy: as far as " + s.money(budget) + " goes; it takes " + s.money(list.Least) + " to have enough of everything")
	case len(s.plan.Trees) == 0:
		s.heading("To buy: what is needed, for " + s.money(budget) + " at most")
	default:
		s.heading("To buy: the fullest trees for " + s.money(budget))
	}
	for _, p := range list.Purchases {
		var order []string // what the packs hold, and the packs of each
		packs, cost := map[string][]string{}, map[string]decimal.Decimal{}
		for _, b := range p.Buys {
			if len(b.Offer.Contents) > 0 {
				s.priced("[ ] ", s.packs(b)+": "+s.lots(b.Offer.Contents)+" in each", b.Cost)
				continue
			}
			what := s.item(b.Offer.Item)
			if packs[what] == nil {
				order = append(order, what)
			}
			packs[what], cost[what] = append(packs[what], s.packs(b)), cost[what].Add(b.Cost)
		}
		for _, what := range order {
			s.priced("[ ] ", what+": "+strings.Join(packs[what], ", ")+s.weak(p), cost[what])
		}
	}
	for _, b := range list.Bills {
		if !b.Delivery.IsZero() {
			s.priced("    ", "delivery, "+b.Store, b.Delivery)
		}
		if !b.Tax.IsZero() {
			s.priced("    ", "tax, "+b.Store, b.Tax)
		}
	}
	if !slices.ContainsFunc(list.Purchases, func(p shopping.Purchase) bool { return len(p.Buys) > 0 }) {
		s.line("nothing", 0, "")
	}
	s.priced("    ", "total", list.Total)
	var also, spare []string
	var left []shopping.Lot
	for _, p := range list.Purchases {
		for _, share := range p.Shares {
			if share.Spare && share.Gets != (shopping.Quantity{}) {
				spare = append(spare, s.lot(share.Item, share.Gets))
			}
		}
		left = append(left, p.Left...)
	}
	if owned := s.stock(list); len(owned) > 0 {
		also = append(also, "From stock: "+listed(owned)+".")
	}
	if len(spare) > 0 {
		also = append(also, "Spares, for what breaks: "+listed(spare)+".")
	}
	if len(left) > 0 {
		also = append(also, "Left over, back into the box: "+s.lots(left)+".")
	}
	var cords []string
	for _, m := range s.plan.Mantels {
		for _, share := range m.Shares {
			if cord := cord(share.Need); cord != "" {
				cords = append(cords, cord+" ("+m.Room+")")
			}
		}
	}
	if cords != nil {
		also = append(also, "Get too: "+listing(cords)+".")
	}
	if also != nil {
		s.line(strings.Join(also, " "), -1, "")
	}
	s.short(list)
}

// packs says how many packs of an offer are bought, at which price and where: "4 x box of 5 at 7.00 (3 for 14.00)".
func (s *sheet) packs(b shopping.Buy) string {
	text := strconv.Itoa(b.Packs) + " x " + b.Offer.Name + " at " + s.money(b.Offer.Price)
	var notes []string
	if !b.Cost.Equal(b.Offer.Price.Mul(decimal.NewFromInt(int64(b.Packs)))) {
		for _, d := range b.Offer.Deals {
			switch {
			case d.Packs > 0 && d.Packs <= b.Packs:
				notes = append(notes, strconv.Itoa(d.Packs)+" for "+s.money(d.Price))
			case d.From > 0 && d.From <= b.Packs:
				notes = append(notes, s.money(d.Price)+" each from "+strconv.Itoa(d.From)+" on")
			}
		}
	}
	if b.Offer.Store != "" {
		notes = append(notes, b.Offer.Store)
	}
	if notes != nil {
		text += " (" + strings.Join(notes, "; ") + ")"
	}
	return text
}

// weak says of hooks in which rooms they carry too much.
func (s *sheet) weak(p shopping.Purchase) string {
	var rooms []string
	for _, m := range s.plan.Mantels {
		for _, l := range m.Loads {
			over := slices.ContainsFunc(l.Hooks, func(h mantel.HookLoad) bool { return h.Total > l.Working })
			if over && !slices.Contains(rooms, m.Room) {
				rooms = append(rooms, m.Room)
			}
		}
	}
	if rooms == nil || p.Shares[0].Item.Kind != shopping.Hook {
		return ""
	}
	return "; TOO WEAK for " + listing(rooms) + ", see there before you buy"
}

// A piece is what is taken from a shelf or a box at once: a thing, a strand or a string of lights.
type piece struct {
	item  shopping.Item
	one   shopping.Quantity // of one of them
	count int
}

// pieces returns so many lots as pieces.
func pieces(lot shopping.Lot, times int) piece {
	p := piece{item: lot.Item, one: shopping.Quantity{Pieces: 1, Length: lot.Quantity.Length}, count: times * lot.Quantity.Pieces}
	switch {
	case lot.Item.Kind == shopping.Light:
		p.one, p.count = lot.Quantity, times
	case lot.Quantity.Length > 0:
		p.one.Pieces, p.count = 0, times*max(1, lot.Quantity.Pieces)
	}
	return p
}

// stock says what is taken from what is owned, item by item: "5 forest green ornaments", or "15 of 50 wire ties" where the rest is left.
func (s *sheet) stock(list shopping.List) []string {
	var owned []piece
	add := func(list *[]piece, p piece) {
		for i := range *list {
			if o := &(*list)[i]; o.item == p.item && o.one == p.one {
				o.count += p.count
				return
			}
		}
		*list = append(*list, p)
	}
	var other []piece // bought, less what is left
	for _, p := range list.Purchases {
		for _, lot := range p.Owned {
			add(&owned, pieces(lot, 1))
		}
		for _, b := range p.Buys {
			for _, lot := range b.Offer.Contents {
				add(&other, pieces(lot, b.Packs))
			}
			if len(b.Offer.Contents) == 0 {
				add(&other, pieces(shopping.Lot{Item: b.Offer.Item, Quantity: b.Offer.Pack}, b.Packs))
			}
		}
		for _, lot := range p.Left {
			add(&other, pieces(lot, -1))
		}
	}
	var texts []string
	for _, o := range owned {
		used := 0
		switch at := slices.IndexFunc(other, func(b piece) bool { return b.item == o.item && b.one == o.one }); {
		case o.one.Length > 0: // strands may be cut
			for _, p := range list.Purchases {
				for _, c := range p.Cuts {
					if c.Offer == "" && c.Roll == o.one.Length && wants(p, o.item) {
						used += c.Rolls
					}
				}
			}
		case at >= 0:
			used = o.count + min(0, other[at].count)
		default:
			used = o.count
		}
		if used == 0 {
			continue
		}
		all := ""
		if used < o.count {
			all = strconv.Itoa(o.count)
		}
		texts = append(texts, s.amount(o, used, all))
	}
	return texts
}

// amount says that so many pieces are taken, of all if that is not empty.
func (s *sheet) amount(p piece, used int, all string) string {
	if p.one.Length == 0 && p.item.Kind != shopping.Light {
		if all == "" {
			return s.lot(p.item, shopping.Quantity{Pieces: used})
		}
		return strconv.Itoa(used) + " of " + s.lot(p.item, shopping.Quantity{Pieces: p.count})
	}
	one := s.lot(p.item, p.one)
	if all != "" {
		return strconv.Itoa(used) + " of " + all + " x " + one
	}
	if used > 1 {
		return strconv.Itoa(used) + " x " + one
	}
	return one
}

// wants reports whether an item serves a need of a purchase.
func wants(p shopping.Purchase, i shopping.Item) bool {
	return slices.ContainsFunc(p.Shares, func(share shopping.Share) bool {
		n := share.Item
		return n.Kind == i.Kind && (n.Color == "" || n.Color == i.Color) && (n.Type == "" || n.Type == i.Type) &&
			(n.Size == 0 || n.Size <= i.Size && i.Size <= max(n.Size, share.MaxSize))
	})
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
			if item.Kind == shopping.Stocking && !part.there {
				text += ": bring your own, for which the list has hooks"
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
	parts    []shopping.Lot    // which things, where the need leaves that open
	cuts     []string
	hangs    units.Length // what the cuts come to, joined
	lap      units.Length // that each join takes
}

// instead reports whether it stands in for what was not to be had.
func (g get) instead() bool { return strings.HasPrefix(g.Basis, "instead of ") }

// gets returns what the needs of a room get, and what stands in for them.
func (s *sheet) gets(shares []shopping.Share) []get {
	var list []get
	for _, n := range shares {
		g := get{Need: n.Need, gets: n.Gets, replaced: n.Replaced, parts: n.Parts}
		strands := 0
		if s.plan.Basket != nil {
			for _, p := range s.plan.Basket.Purchases {
				for _, c := range p.Cuts {
					for _, piece := range c.Pieces {
						if piece.Item.Kind == n.Item.Kind && piece.Room == n.Room {
							if last := len(g.cuts) - 1; last >= 0 && !strings.Contains(g.cuts[last], " off ") { // said once
								g.cuts[last] = strings.TrimSuffix(strings.TrimSuffix(g.cuts[last], " strand"), " roll")
							}
							g.cuts = append(g.cuts, s.cut(c, piece))
							n := c.Rolls * max(1, piece.Quantity.Pieces)
							g.hangs += units.Length(n) * piece.Quantity.Length
							strands += n
						}
					}
				}
			}
		}
		if strands > 1 && n.Quantity.Pieces == 0 {
			join, known := s.request.Shop.Joins[shopping.Item{Kind: n.Item.Kind, Type: n.Item.Type}]
			if !known {
				join = s.request.Shop.Joins[shopping.Item{Kind: n.Item.Kind}]
			}
			g.lap = join.Overlap
			g.hangs -= units.Length(strands-1) * g.lap
		}
		list = append(list, g)
	}
	return list
}

// cut says what a room gets of a strand.
func (s *sheet) cut(c shopping.Cut, piece shopping.Need) string {
	own, roll := "a ", s.length(c.Roll)+" strand"
	if piece.Item.Kind == shopping.Ribbon {
		roll = s.length(c.Roll) + " roll"
	}
	if c.Offer == "" {
		own, roll = "", "your own "+roll
	}
	if piece.Quantity.Length == c.Roll {
		return strconv.Itoa(c.Rolls*max(1, piece.Quantity.Pieces)) + " x " + roll
	}
	length := s.length(piece.Quantity.Length)
	if n := c.Rolls * max(1, piece.Quantity.Pieces); n > 1 {
		return strconv.Itoa(n) + " x " + length + " off " + strconv.Itoa(c.Rolls) + " x " + roll
	}
	return length + " off " + own + roll
}

// told says how much there is of a need, "81 ft" or "planned 27, budget allows 29".
func (s *sheet) told(g get) string {
	planned, gets := s.quantity(g.Quantity), s.quantity(g.gets)
	switch {
	case g.gets == g.Quantity && g.Quantity.Pieces == 0 && g.hangs > g.gets.Length+units.Inch: // uncut, or of pieces not too short
		return s.length(g.hangs) + " (planned " + planned + ")"
	case g.gets == g.Quantity:
		return planned
	case g.replaced != (shopping.Quantity{}) && g.gets == (shopping.Quantity{}):
		return "planned " + planned + ", " + s.quantity(g.replaced) + " others in their place"
	case g.replaced != (shopping.Quantity{}):
		return "planned " + planned + ", " + gets + " and " + s.quantity(g.replaced) + " others"
	case g.gets == (shopping.Quantity{}):
		return "planned " + planned + ", none to be had"
	case g.gets.Pieces > g.Quantity.Pieces && g.gets.Length == 0 && g.Open.Max > 0:
		return "planned " + planned + ", budget allows " + gets
	case g.gets.Pieces > g.Quantity.Pieces && g.gets.Length == 0:
		return gets + " (planned " + planned + ")" // whole strings of lights
	case g.gets.Pieces == 0 && g.gets.Length > g.Quantity.Length:
		return gets + " (planned " + planned + ")" // since strands are not cut, or not short
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
		if g.lap > 0 {
			text += ", lapped " + s.length(g.lap)
		}
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
	s.lamps(needs, t)
	for _, kind := range []shopping.Kind{shopping.Garland, shopping.Ribbon} {
		s.dress(needs, kind, s.wraps(t, measured, needs, kind))
	}
	s.dress(needs, shopping.Pick, "")
	s.balls(needs, t)
	if s.why {
		s.line("rule and shape", labelWidth+1, strings.ReplaceAll(sizing.Format(t.Comparison, s.style()), "\n", ". "))
	}
}

// lamps writes the lights: how many, which strings, and what they draw by their label.
func (s *sheet) lamps(needs []get, t job.TreePlan) {
	for i, g := range needs {
		if g.Item.Kind != shopping.Light {
			continue
		}
		text := s.told(g)
		l := t.Load
		want, differ := lots(t.Strings.Each.Lamps, t.Strings.Count), false
		hang := g.parts
		if len(hang) == 0 && g.gets.Pieces > 0 {
			hang = want
		}
		for _, p := range hang {
			differ = differ || p.Quantity.Pieces != t.Strings.Each.Lamps
		}
		if len(hang) > 0 {
			text += ": " + stringsOf(hang)
		}
		if first := i == slices.IndexFunc(needs, func(o get) bool { return o.Item.Kind == shopping.Light }); l.Limit > 0 && first && len(hang) > 0 {
			plugs, _ := t.Strings.Runs()
			if differ {
				text += "; the label given is of a string of " + strconv.Itoa(t.Strings.Each.Lamps) + ", and " + strconv.Itoa(t.Strings.Count) + " of them draw " +
					l.Power.String() + " from " + say(plugs, "plug") + ": go by the labels of yours; limit "
			} else {
				text += ", " + say(plugs, "plug") + ", " + l.Power.String() + ", limit "
			}
			text += l.Limit.String() + ", 80 % of " + strconv.Itoa(s.request.House.Circuit.Amperes) + " A"
			if l.Power > l.Limit {
				text += ": OVERLOADED, use more circuits"
			}
		}
		s.line(s.item(g.Item), labelWidth+1, text)
		s.reason(g.Need)
	}
}

// lots returns so many strings of so many lamps, and none of none.
func lots(lamps, count int) []shopping.Lot {
	if lamps == 0 || count == 0 {
		return nil
	}
	return slices.Repeat([]shopping.Lot{{Quantity: shopping.Quantity{Pieces: lamps}}}, count)
}

// stringsOf counts strings by their lamps: "4 strings of 100, 1 of 50".
func stringsOf(list []shopping.Lot) string {
	var order []int
	count := map[int]int{}
	for _, l := range list {
		n := l.Quantity.Pieces
		if count[n] == 0 {
			order = append(order, n)
		}
		count[n]++
	}
	var texts []string
	for i, n := range order {
		if i == 0 {
			texts = append(texts, say(count[n], "string")+" of "+strconv.Itoa(n))
		} else {
			texts = append(texts, strconv.Itoa(count[n])+" of "+strconv.Itoa(n))
		}
	}
	return strings.Join(texts, ", ")
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
		return what + " from a stepladder of " + s.ladder(t.Ladder.Size)
	}
	return what + " within reach from the floor"
}

// ladder prints the size of a stepladder, which is sold by feet.
func (s *sheet) ladder(size units.Length) string {
	if s.style() == units.InMetric {
		return s.length(size)
	}
	return size.Format(units.InFeetInches, units.Inch)
}

// balls writes the ornaments: how many of each color, and of which sizes they are.
func (s *sheet) balls(needs []get, t job.TreePlan) {
	total, least, most := 0, t.Types*t.Each.Min, t.Types*t.Each.Max
	types := map[shopping.Item]bool{}
	for _, p := range t.Pieces {
		if p.Item.Kind == shopping.Ornament {
			total += p.Quantity.Pieces
			types[p.Item] = true
		}
	}
	if t.Planned[shopping.Ornament].Pieces == 0 {
		return
	}
	text := strconv.Itoa(total) + " in all"
	if total < least {
		text += ", too few"
	}
	kinds := say(t.Types, "type")
	if len(types) < t.Types {
		kinds += " planned, fewer to be had"
	}
	text += ": " + kinds + ", " + t.Each.String() + " of each (" +
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
	hung := slices.Clone(t.Pieces) // those that no line has told yet
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
		text, n := s.told(g), g.gets.Pieces
		if g.instead() {
			color += ", others"
			n = others[g.Item.Color]
			text = strconv.Itoa(n)
			others[g.Item.Color] = 0
		}
		s.line("  "+color, labelWidth+1, text+s.which(taken(hung, g, n), g.Item.Size > 0, g.instead()))
		s.reason(g.Need)
	}
}

// taken takes n pieces of the color of a get, and of its size if it has one, from what hangs in a room.
func taken(hung []shopping.Lot, g get, n int) []shopping.Lot {
	var list []shopping.Lot
	for i := range hung {
		p := &hung[i]
		k := min(n, p.Quantity.Pieces)
		if p.Item.Kind != shopping.Ornament || p.Item.Color != g.Item.Color || g.Item.Size > 0 && !g.serves(p.Item) || k == 0 {
			continue
		}
		list = append(list, shopping.Lot{Item: p.Item, Quantity: shopping.Quantity{Pieces: k}})
		p.Quantity.Pieces -= k
		n -= k
	}
	return list
}

// serves reports whether an item has a size that the need takes.
func (g get) serves(i shopping.Item) bool {
	return i.Size >= g.Item.Size && i.Size <= max(g.Item.Size, g.MaxSize)
}

// which says how many there are of which size, and of which types. Where one size is asked for only the types are said; of
// others in their place it is not known how many types without a name they are.
func (s *sheet) which(pieces []shopping.Lot, sized, others bool) string {
	type sort struct {
		size  units.Length
		named string // empty where the shelves have no types
	}
	var order []sort
	count, types := map[sort]int{}, map[sort]int{}
	for _, p := range pieces {
		key := sort{size: p.Item.Size, named: p.Item.Type}
		if numbered(p.Item.Type) {
			key.named = ""
		}
		if count[key] == 0 {
			order = append(order, key)
		}
		count[key] += p.Quantity.Pieces
		types[key]++
	}
	plain := len(order) == 1 && order[0].named == ""
	if len(order) == 0 || plain && (sized || order[0].size == 0) {
		return ""
	}
	if len(order) == 1 && sized {
		return " (" + order[0].named + ")"
	}
	var texts []string
	for _, key := range order {
		text := strconv.Itoa(count[key])
		switch {
		case key.size > 0 && !sized:
			text += " of " + s.length(key.size)
		case key.size == 0:
			text += " of no stated size"
		}
		switch {
		case key.named != "":
			text += " (" + key.named + ")"
		case types[key] > 1 && !others:
			text += " (" + say(types[key], "type") + ")"
		}
		texts = append(texts, text)
	}
	return ": " + strings.Join(texts, ", ")
}

// numbered reports whether a type is a number of the plan's own, as "ball 2": the shelves tell none.
func numbered(name string) bool {
	number, found := strings.CutPrefix(name, "ball ")
	_, err := strconv.Atoi(number)
	return found && err == nil
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
		if takes == "" && !had(step, needs) {
			continue // there is nothing to do it with, as a step before has told
		}
		places := s.places(step.Code, m)
		if s.why {
			if takes != "" {
				text += " It takes" + strings.TrimPrefix(takes, ":") + "."
			}
			if places != "" {
				text += " Places: " + places + "."
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
		if places != "" {
			places = "; " + places
		}
		lines = append(lines, strings.TrimSuffix(text, ".")+takes+places)
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

// places says where along the shelf, or how far from the first hook to the right, what a step marks, wires or puts up goes.
func (s *sheet) places(code string, m job.MantelPlan) string {
	switch code {
	case "mark":
		return s.layers(m)
	case "wire ornaments":
		return s.gaps(m.Spots)
	case "hooks":
		var texts []string
		for _, kind := range []shopping.Kind{shopping.Garland, shopping.Stocking} {
			var at []units.Length
			for _, h := range m.Loads[kind].Hooks {
				at = append(at, h.At.Along-start(m))
			}
			if len(at) > 0 {
				texts = append(texts, s.along(at))
			}
		}
		if len(texts) == 2 {
			return "of the garland " + texts[0] + "; of the stockings " + texts[1]
		}
		return strings.Join(texts, "")
	}
	return ""
}

// start is where the places of a mantel count from: the left end of the shelf, or the first hook of a run.
func start(m job.MantelPlan) units.Length {
	if len(m.Run.Hooks) > 0 {
		return m.Run.Hooks[0].Along
	}
	return 0
}

// layers says where the picks go, layer by layer if there are several.
func (s *sheet) layers(m job.MantelPlan) string {
	var all []units.Length
	var order []int
	layers := map[int][]units.Length{}
	for _, spot := range m.Spots {
		if spot.Item.Kind != shopping.Pick {
			continue
		}
		all = append(all, spot.Along)
		if layers[spot.Layer] == nil {
			order = append(order, spot.Layer)
		}
		layers[spot.Layer] = append(layers[spot.Layer], spot.Along)
	}
	if all == nil { // along stairs or a door
		garland, picks := units.Length(0), 0
		for _, share := range m.Shares {
			switch share.Item.Kind {
			case shopping.BaseGarland:
				garland += share.Quantity.Length
			case shopping.Pick:
				picks += share.Quantity.Pieces
			}
		}
		if picks == 0 {
			return ""
		}
		return "every " + s.length(garland/units.Length(picks)) + " along it"
	}
	text := s.along(all)
	if len(order) < 2 {
		return text
	}
	slices.Sort(order)
	for _, layer := range order {
		at := layers[layer]
		text += "; layer " + strconv.Itoa(layer) + " from " + s.place(slices.Min(at)) + " to " + s.place(slices.Max(at))
	}
	return text
}

// gaps says which ornament goes into which gap between the picks.
func (s *sheet) gaps(spots []mantel.Spot) string {
	var order []shopping.Item
	at := map[shopping.Item][]string{}
	n := 0
	for _, spot := range spots {
		if spot.Item.Kind != shopping.Ornament {
			continue
		}
		n++
		if at[spot.Item] == nil {
			order = append(order, spot.Item)
		}
		at[spot.Item] = append(at[spot.Item], strconv.Itoa(n))
	}
	if len(order) < 2 { // all alike
		return ""
	}
	var texts []string
	for _, item := range order {
		name := item.Color
		if name == "" {
			name = "any color"
		}
		if item.Size > 0 {
			name += " of " + s.length(item.Size)
		}
		texts = append(texts, strings.Join(at[item], ", ")+" "+name)
	}
	return "gaps from the left: " + strings.Join(texts, "; ")
}

// along says places: each, or the first and how far apart they are.
func (s *sheet) along(at []units.Length) string {
	step := units.Length(0)
	if len(at) > 2 {
		step = at[1] - at[0]
	}
	for i := 1; i < len(at); i++ {
		if off := at[i] - at[i-1] - step; off > units.Millimeter/1000 || off < -units.Millimeter/1000 {
			step = 0
		}
	}
	if step > 0 {
		return s.place(at[0]) + " from the left, then every " + s.place(step)
	}
	var texts []string
	for i, l := range at {
		if i == 0 || l != at[i-1] {
			texts = append(texts, s.place(l))
		}
	}
	if texts == nil {
		return ""
	}
	return listing(texts) + " from the left"
}

// place prints a place to an eighth of an inch, or to a millimeter.
func (s *sheet) place(l units.Length) string {
	_, style := s.scale(l)
	if style == units.InMetric {
		return l.Format(style, units.Millimeter)
	}
	return l.Format(style, units.Inch/8)
}

// hung says what is dressed, and how its garland hangs.
func (s *sheet) hung(m job.MantelPlan) (what, how string) {
	r := m.Run
	if len(r.Hooks) == 0 {
		how = "Garland " + s.hangs(m.Hanging) + "."
		if m.LeftWall {
			how += " The left end is at a wall."
		}
		if m.RightWall {
			how += " The right end is at a wall."
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
		how += s.falling(r.Left, r.Right)
	}
	return what, how + "."
}

// loads says what hooks carry, and what would hold where they do not.
func (s *sheet) loads(hooks, one string, l mantel.Loads) string {
	most, over := units.Mass(0), 0
	var lifted []units.Length
	for _, h := range l.Hooks {
		if h.Down < 0 {
			lifted = append(lifted, h.At.Along-l.Hooks[0].At.Along)
		}
		most = max(most, h.Total)
		if h.Total > l.Working {
			over++
		}
	}
	text := hooks + " at " + say(len(l.Hooks), "place") + ", at most " + s.load(most) + " on " + one + "; one may carry " + s.carries(l.Working) + "."
	if lifted != nil {
		text += " The garland lifts off the hook " + s.along(lifted) + ": tie it down there."
	}
	if over > 0 {
		text += " OVERLOADED at " + say(over, "place") + ": use " + l.Remedy + "."
	}
	return text
}

// load prints a load, rounded up to a tenth of an ounce, or to 5 g unless it is whole grams, from 1 kg on 10 g; and
// carries what a hook may carry, rounded down.
func (s *sheet) load(m units.Mass) string    { return s.weight(m, units.Ceil) }
func (s *sheet) carries(m units.Mass) string { return s.weight(m, units.Floor) }

func (s *sheet) weight(m units.Mass, round func(m, step units.Mass) (units.Mass, error)) string {
	step, tenths := 5*units.Gram, units.Mass(1)
	switch {
	case s.style() != units.InMetric:
		step, tenths = units.Ounce, 10 // a tenth of it is no whole number of nanograms
	case m%units.Gram == 0:
		step = units.Gram
	case m >= units.Kilogram:
		step = 10 * units.Gram
	}
	m, _ = round(tenths*m, step)
	if tenths > 1 {
		return ((m + 5) / 10).Format(units.InFeetInches, units.Ounce/10)
	}
	return m.Format(units.InMetric, step)
}

// fire says how near what hangs comes to the fire: in one sentence whether a fire may burn, and the worst of the
// figures for trim with its source. With why the rest follow.
func (s *sheet) fire(m job.MantelPlan) string {
	c := m.Clearances
	if m.Opening == (mantel.Rectangle{}) {
		return ""
	}
	var texts []string
	if c.Fire != (mantel.Clearance{}) {
		texts = append(texts, "NO FIRE WHILE THIS HANGS: "+s.most(c.Fire.Measured)+" from the opening ("+c.Fire.Place+"), want "+s.least(c.Fire.Allowed))
	}
	if len(c.Violations) > 0 {
		worst := c.Violations[0]
		if worst.Place == c.Fire.Place {
			worst.Place = "" // as before
		}
		text := "Worst as trim: " + s.clearance(worst) + " (" + worst.Source + ")"
		if n := len(c.Violations) - 1; n > 0 && !s.why {
			text += "; " + strconv.Itoa(n) + " more with -why"
		}
		texts = append(texts, text)
	}
	if texts == nil {
		return "Nothing is within " + s.least(3*units.Foot) + " of the opening. "
	}
	return strings.Join(texts, ". ") + ". "
}

// clearance says what was measured and what is asked for.
func (s *sheet) clearance(c mantel.Clearance) string {
	what := c.Measure + " "
	if c.Place != "" {
		what = c.Place + ", " + what
	}
	if c.AtLeast {
		return what + s.most(c.Measured) + ", at least " + s.least(c.Allowed)
	}
	return what + s.least(c.Measured) + ", at most " + s.most(c.Allowed)
}

// takes says how much a step takes of what no step before it has named.
func (s *sheet) takes(step mantel.Step, needs []get, told map[shopping.Item]bool) string {
	var texts []string
	for _, u := range step.Uses {
		i := u.Item
		if i.Kind == shopping.Tie {
			told[i] = true
			texts = append(texts, s.ties(u, step, needs)...)
			continue
		}
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
				lap := ""
				if g.lap > 0 {
					lap = "lapped " + s.length(g.lap) + ": "
				}
				text += " (" + lap + strings.Join(g.cuts, ", ") + ")"
			}
			if i.Kind == shopping.Light && len(g.parts) > 0 {
				text += " (" + stringsOf(g.parts) + ")"
			}
			if cord := cord(g.Need); cord != "" {
				text += ", " + cord
			}
			texts = append(texts, text)
		}
	}
	if len(texts) == 0 {
		return ""
	}
	return ": " + listed(texts)
}

// cord returns how much extension cord goes with a need, "4 ft of extension cord", or nothing.
func cord(n shopping.Need) string {
	_, cord, found := strings.Cut(n.Basis, "; extension cord of ")
	if !found {
		return ""
	}
	length, _, _ := strings.Cut(cord, " from the ")
	return length + " of extension cord"
}

// ties says how many wire ties a step takes: one for each piece that there is to tie.
func (s *sheet) ties(ties shopping.Lot, step mantel.Step, needs []get) []string {
	tied, there := 0, 0
	for _, g := range needs {
		if g.Item == ties.Item {
			there += g.gets.Pieces
		} else if g.Item.Kind != shopping.Bell && slices.ContainsFunc(step.Uses, func(l shopping.Lot) bool { return l.Item == g.Item }) {
			tied += g.gets.Pieces
		}
	}
	switch tied = min(tied, ties.Quantity.Pieces); {
	case tied == 0:
		return nil
	case there == 0:
		return []string{"no " + s.item(ties.Item) + " (planned " + strconv.Itoa(tied) + ")"}
	}
	return []string{s.lot(ties.Item, shopping.Quantity{Pieces: tied})}
}

// had reports whether there is anything of what a step uses.
func had(step mantel.Step, needs []get) bool {
	return len(step.Uses) == 0 || slices.ContainsFunc(needs, func(g get) bool {
		return g.gets != (shopping.Quantity{}) && slices.ContainsFunc(step.Uses, func(l shopping.Lot) bool { return l.Item == g.Item && l.Item.Kind != shopping.Tie })
	})
}

// hangs says how a garland hangs.
func (s *sheet) hangs(h mantel.Hanging) string {
	text := "straight"
	if h.Swags > 0 {
		text = say(h.Swags, "swag") + " " + s.length(h.Sag) + " deep"
	}
	return text + s.falling(h.Left, h.Right)
}

// falling says how far the ends fall.
func (s *sheet) falling(left, right units.Length) string {
	switch {
	case left == right:
		return ", falling " + s.length(left) + " at each end"
	case left == 0:
		return ", falling " + s.length(right) + " at the right"
	case right == 0:
		return ", falling " + s.length(left) + " at the left"
	}
	return ", falling " + s.length(left) + " at the left, " + s.length(right) + " at the right"
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
