package shopping

import (
	"encoding/csv"
	"math/big"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// A List is what to buy for any number of trees and mantels. The zero value is an empty list.
type List struct {
	Purchases []Purchase      `json:"purchases"`       // in the order in which the items were first needed
	Bills     []Bill          `json:"bills,omitempty"` // of each of Shop.Stores that something is bought at
	Total     decimal.Decimal `json:"total"`           // what is paid: all costs, deliveries and tax
	Bound     decimal.Decimal `json:"bound"`           // no list that serves as much costs less, before tax is rounded; Total if that is proved
	Least     decimal.Decimal `json:"least,omitzero"`  // of Shop.Fullest: cost of the fewest of everything; if over Shop.Budget, the budget is too small
}

// A Bill is what is paid at one store.
type Bill struct {
	Store    string          `json:"store"`    // as Shop.Stores names it
	Goods    decimal.Decimal `json:"goods"`    // what the offers cost there
	Delivery decimal.Decimal `json:"delivery"` // 0 from Store.FreeFrom on
	Tax      decimal.Decimal `json:"tax"`      // on both, rounded to Shop.Coin; the bill is the sum of the three
}

// Short returns what is missing: every share that gets less than was planned, spares aside.
func (l List) Short() []Share {
	var short []Share
	for _, p := range l.Purchases {
		for _, s := range p.Shares {
			if s.Short() != (Quantity{}) && !s.Spare || !s.Enough() {
				short = append(short, s)
			}
		}
	}
	return short
}

// List returns what to buy for needs of any items and rooms at the least cost: for each
// item one purchase for all its needs together, so that a pack begun for one room serves
// the next. Items that share a mixed box or an owned piece are one purchase. A length whose
// type or color is open is served by the one item that costs least. What is owned is used
// first, once for all needs together. A need for pieces ignores lengths, and the reverse.
//
// Where shelves are short, List buys what there is and shares it out: first the least of
// each need, then in proportion to the plan (lengths: in the order of needs). Substitutes
// stand in, in their order, as needs of their own. Spares come last.
//
// Each need for a running length is its own run. For k runs, n strands of lengths L
// with c cuts come to
//
//	ΣL - (n+c-k)·overlap
//
// Each run but the last ends in a cut (c = k-1) unless it ends where a strand does. An owned strand
// no longer than the overlap cannot be joined. One whole piece is never joined from two. If whole
// pieces and runs need the same item, runs use what pieces leave. Of the ways tried (up to 200
// runs) List takes the one with the fewest pieces joined, then the longest strands left.
//
// At equal cost List takes the purchase with the least surplus (rolls to cut: the least
// length bought; several runs: the least length bought, each strand less the overlap), then
// the fewest packs, then the most packs of the first offer, of the second, and so on.
//
// Bound equals Cost and the answer is exact for pieces and, without deals, for whole pieces of one
// length, one run, or several runs without overlap. Otherwise the least cost lies between Bound and
// Cost: lengths with deals; several runs with overlap (nearly always proved for up to 6 runs in
// whole feet); whole pieces of several lengths (proved for up to 60 pieces of 8 lengths in steps of
// 3 in, and mostly for odd inches); whole pieces beside runs; mixed boxes, numbers of types, and
// lights. In these cases the order of the offers breaks no tie, and the cost is never above that of
// the best single offer. Where so much is bought together that the search finds no way, as for ten
// trees from a shelf nearly sold out, the needs are served in turn, each at the least cost, of any
// types if need be, and Bound is 0.
//
// With stores that charge for delivery, List tries every set of them, each at the least cost
// of the goods and tax. If more of the listed pieces bring goods to free delivery for less
// than the fee, List adds them, in the cheapest packs without deals. Bound may then lie
// below a total that is in fact the least.
func (s Shop) List(needs []Need) (List, error) {
	c := newChecker("Shop.List")
	if err := c.shop(s); err != nil {
		return List{}, err
	}
	if err := c.needs(needs); err != nil {
		return List{}, err
	}
	return s.list(c, wishes(needs))
}

// list is [Shop.List] for a shop and needs that have been checked.
func (s Shop) list(c *checker, list []wish) (List, error) {
	list = s.withSpares(list)
	found, err := s.replaced(c, list, nil)
	return found.List, err
}

// A located is a list, and where the share of each wish is in it.
type located struct {
	List
	at []place
}

type place struct{ purchase, share int }

func (l located) share(i int) *Share { return &l.Purchases[l.at[i].purchase].Shares[l.at[i].share] }

// replaced returns the list for wishes with substitutes for what is short, but for those with which the list is too dear.
func (s Shop) replaced(c *checker, list []wish, dear func(List) bool) (located, error) {
	found, err := s.cheapestStores(c, list)
	if err != nil {
		return located{}, err
	}
	count := len(list)
	for step := range 2 * maxInstead {
		k, keep := step/2, step%2 == 0 // first with as many types as are missing, then with any
		for most := count; most != 0; {
			stands := map[int]int{} // for each wish that is short, the substitute added for it
			first := len(list)
			for i := range count {
				if len(stands) == most || k >= len(list[i].Instead) || list[i].spare {
					continue
				}
				m := found.share(i).Short()
				if m == (Quantity{}) {
					continue
				}
				sub := list[i].Instead[k]
				need := Need{
					Item: sub.Item, MaxSize: sub.MaxSize, Room: list[i].Room, Quantity: sub.of(m, list[i].planned),
					Basis: "instead of " + m.String() + " " + list[i].Item.String() + " that the shelves are short of", Source: list[i].Source,
				}
				w := wish{Need: &need, of: list[i].Need}
				if keep && !w.keepTypes(list[i], sub, found.share(i)) {
					continue
				}
				stands[i] = len(list)
				list = append(list, w)
			}
			if len(stands) == 0 {
				break
			}
			more, err := s.cheapestStores(c, list)
			if err != nil {
				return located{}, err
			}
			again := false
			for i := range count {
				j, ok := stands[i]
				if !ok {
					continue
				}
				missing := found.share(i).Short()
				got := list[i].Instead[k].stands(more.share(j).Gets, missing, list[i].planned)
				list[i].replaced = plus(list[i].replaced, got)
				if want := list[i].Instead[k].of(got, list[i].planned); want != list[j].Quantity {
					list[j].Quantity, again = want, true
					if list[j].Types != 0 {
						list[j].fewerTypes(len(types(more.share(j).Parts)))
					}
				}
			}
			if again {
				if more, err = s.cheapestStores(c, list); err != nil {
					return located{}, err
				}
			}
			if dear != nil && dear(more.List) {
				list = list[:first]
				for i := range stands {
					list[i].replaced = found.share(i).Replaced
				}
				most = len(stands) / 2 // as many as the money will do for, about
				continue
			}
			for i := range stands {
				more.share(i).Replaced = list[i].replaced
			}
			found = more
			break
		}
	}
	return found, nil
}

// keepTypes lets w, which the substitute sub makes for what is missing of a share, have as many other types as the
// share is short of. It reports whether there are any.
func (w *wish) keepTypes(of wish, sub Need, got *Share) bool {
	a := of.assortment()
	if a.types == 0 || sub.Item.Type != "" || w.Quantity.Length != 0 {
		return false
	}
	for name, n := range types(got.Parts) {
		if w.not = append(w.not, name); n >= a.least {
			a.types--
		}
	}
	if w.Types = min(a.types, w.Quantity.Pieces); w.Types < 1 {
		return false
	}
	scaled := func(n int64) int { return sub.of(Quantity{Pieces: int(n)}, of.planned).Pieces }
	each := w.Quantity.Pieces / w.Types
	w.Each = units.Range[int]{Min: min(scaled(a.least), each), Max: max(scaled(a.most), each+1)}
	return true
}

// fewerTypes lets w have only so many types; with none, any will do.
func (w *wish) fewerTypes(n int) {
	if w.Types = min(n, w.Quantity.Pieces); w.Types == 0 {
		w.Each, w.not = units.Range[int]{}, nil
		return
	}
	w.Each.Min = min(w.Each.Min, w.Quantity.Pieces/w.Types)
}

// types returns how many there are of each type.
func types(parts []Lot) map[string]int64 {
	counts := map[string]int64{}
	for _, p := range parts {
		counts[p.Item.Type] += int64(p.Quantity.Pieces)
	}
	return counts
}

// of returns how much of the substitute n stands for q of what was planned, rounded up.
func (n Need) of(q, planned Quantity) Quantity {
	if n.Quantity == (Quantity{}) {
		return q
	}
	per := amountOf(planned)
	of := proportion(amountOf(q), amountOf(n.Quantity), per-1, per)
	most := int64(maxPieces)
	if n.Quantity.Length != 0 {
		most = int64(maxLength)
	}
	// Where more is open than was planned it may be past the bounds, which is found as for any need.
	quo := most + 1
	if of.IsInt64() {
		quo = min(quo, of.Int64())
	}
	if n.Quantity.Length != 0 {
		return Quantity{Length: units.Length(quo)}
	}
	return Quantity{Pieces: int(quo)}
}

// proportion returns (a·b + c)/d, rounded down.
func proportion(a, b, c, d int64) *big.Int {
	x := new(big.Int).Mul(big.NewInt(a), big.NewInt(b))
	return x.Quo(x.Add(x, big.NewInt(c)), big.NewInt(d))
}

// amountOf returns a quantity as a number, of pieces or of nanometers.
func amountOf(q Quantity) int64 {
	if q.Length != 0 && q.Pieces == 0 {
		return int64(q.Length)
	}
	return int64(q.Pieces)
}

// stands returns how much of missing so much of the substitute stands for, rounded down.
func (n Need) stands(gets, missing, planned Quantity) Quantity {
	got := amountOf(gets)
	if n.Quantity != (Quantity{}) {
		got = proportion(got, amountOf(planned), 0, amountOf(n.Quantity)).Int64()
	}
	got = min(got, amountOf(missing))
	switch {
	case got == 0:
		return Quantity{}
	case missing.Length != 0 && missing.Pieces == 0:
		return Quantity{Length: units.Length(got)}
	}
	return Quantity{Pieces: int(got), Length: missing.Length}
}

func plus(a, b Quantity) Quantity {
	if a == (Quantity{}) {
		return b
	}
	if b.Pieces == 0 {
		a.Length += b.Length
	}
	a.Pieces += b.Pieces
	return a
}

// once returns the purchases for wishes.
func (s Shop) once(c *checker, list []wish) (located, error) {
	l := located{at: make([]place, len(list))}
	groups, err := s.groups(c, list)
	if err != nil {
		return located{}, err
	}
	l.Purchases = make([]Purchase, len(groups))
	shares := make([]Share, 0, len(list)) // of all purchases
	for i := range groups {
		p, g, first := &l.Purchases[i], &groups[i], len(shares)
		for _, line := range g.lines {
			for _, w := range line.wishes {
				l.at[w.at] = place{i, len(shares) - first}
				share := Share{Need: *w.Need, Replaced: w.replaced, Spare: w.spare}
				if w.of != nil {
					share.For = w.of.Item
				}
				shares = append(shares, share)
			}
		}
		p.Shares = shares[first:len(shares):len(shares)]
		c.items = int64(len(groups) - i)
		if g.long != nil {
			err = s.lengths(c, p, g)
		} else {
			err = s.pieces(c, p, g.lines)
		}
		if err != nil {
			return located{}, err
		}
	}
	return l, nil
}

// A group is lines that are bought together.
type group struct {
	lines []*line
	long  *material // what lengths are cut from; nil for pieces
}

// A material is an item of lengths, and what there is of it.
type material struct {
	item  Item
	stock itemStock
}

// groups puts wishes into groups, in the order in which they come first.
func (s Shop) groups(c *checker, list []wish) ([]group, error) {
	all := lines(list)
	groups := make([]group, 0, len(all))
	for i, l := range all {
		d, err := c.demand(l.wishes)
		if err != nil {
			return nil, err
		}
		if d.pieces == 0 && (d.running > 0 || d.wholes != nil) {
			long, err := s.choose(c, l, d)
			if err != nil {
				return nil, err
			}
			if k := slices.IndexFunc(groups, func(g group) bool { return g.long != nil && g.long.item == long.item }); k >= 0 {
				groups[k].lines = append(groups[k].lines, l)
			} else {
				groups = append(groups, group{all[i : i+1 : i+1], long})
			}
			continue
		}
		groups = append(groups, group{lines: all[i : i+1 : i+1]})
	}
	// Lines of pieces that one pack or one owned piece serves.
	parent, joined := make([]int, len(groups)), false
	for i := range parent {
		parent[i] = i
	}
	root := func(i int) int {
		for parent[i] != i {
			i = parent[i]
		}
		return i
	}
	join := func(lots []Lot) {
		first := -1
		c.work -= int64(8 * len(groups) * len(lots))
		for i, g := range groups {
			if c.work < 0 || g.long != nil || d0(g.lines[0]) {
				continue
			}
			for _, h := range lots {
				if h.Quantity.Length == 0 && h.Quantity.Pieces > 0 && g.lines[0].takes(h.Item) {
					if first < 0 {
						first = root(i)
					} else if r := root(i); r != first {
						parent[max(r, first)] = min(r, first)
						first, joined = min(r, first), true
					}
					break
				}
			}
		}
	}
	if len(groups) > 1 {
		for _, o := range s.Offers {
			join(o.holds())
		}
		owned := make([]Lot, 1)
		for _, o := range s.Owned {
			owned[0] = o
			join(owned)
		}
		if c.work < 0 {
			return nil, c.size(list[0].Item, len(s.Offers))
		}
	}
	if !joined {
		return groups, nil
	}
	out := make([]group, 0, len(groups))
	index := make(map[int]int, len(groups))
	for i, g := range groups {
		r := root(i)
		if k, ok := index[r]; ok {
			out[k].lines = append(out[k].lines, g.lines...)
			continue
		}
		index[r] = len(out)
		out = append(out, g)
	}
	return out, nil
}

// d0 reports whether nothing of l is needed.
func d0(l *line) bool {
	n, _ := l.planned()
	return n == 0
}

// choose returns the item that serves a line of lengths at the least cost, if there are
// several that will do, and what there is of it: first the one that leaves least missing.
func (s Shop) choose(c *checker, l *line, d demand) (*material, error) {
	all, err := s.stock(c, l, d, nil)
	if err != nil {
		return nil, err
	}
	item := l.like.Item
	switch {
	case len(all.offers) > 0:
		item = all.offers[0].Item
	case len(all.owned) > 0:
		item = all.owned[0].Item
	}
	if !slices.ContainsFunc(all.offers, func(o stocked) bool { return o.Item != item }) && !slices.ContainsFunc(all.owned, func(o Lot) bool { return o.Item != item }) {
		all.join = s.join(item)
		return &material{item, all}, nil
	}
	var items []Item
	var stocks []itemStock
	of := func(i Item) *itemStock {
		k := slices.Index(items, i)
		if k < 0 {
			k = len(items)
			items, stocks = append(items, i), append(stocks, itemStock{join: s.join(i)})
		}
		return &stocks[k]
	}
	for _, o := range all.offers {
		stock := of(o.Item)
		stock.offers = append(stock.offers, o)
	}
	for _, o := range all.owned {
		stock := of(o.Item)
		stock.owned = append(stock.owned, o)
	}
	best := 0
	var least measured
	for i, item := range items {
		m, err := c.dealt(item, portions(l.wishes), stocks[i])
		if err != nil {
			return nil, err
		}
		if i == 0 || m.short < least.short || m.short == least.short && m.cost < least.cost {
			best, least = i, m
		}
	}
	return &material{items[best], stocks[best]}, nil
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

// String returns the list for a phone, in lines of at most 40 characters: each item with a
// box to tick, its rooms, what is owned, the packs with their price, what is left over, and
// the total. It is not for programs to read.
func (l List) String() string { return l.text(phoneWidth) }

// Page returns the list for print, in lines of at most 76 characters, with the basis of each need.
func (l List) Page() string { return l.text(pageWidth) }

// text lays the list out in lines of at most width characters.
func (l List) text(width int) string {
	w := &writer{width: width}
	for _, p := range l.Purchases {
		p.text(w, l.Least.GreaterThan(l.Total))
		w.line("")
	}
	for _, b := range l.Bills {
		w.row(0, b.Store, "")
		w.row(4, "goods", money(b.Goods))
		if !b.Delivery.IsZero() {
			w.row(4, "delivery", money(b.Delivery))
		}
		if !b.Tax.IsZero() {
			w.row(4, "tax", money(b.Tax))
		}
		w.row(4, "to pay", money(b.Goods.Add(b.Delivery).Add(b.Tax)))
	}
	if l.Bills != nil {
		w.line("")
	}
	w.row(0, "total", money(l.Total))
	if !l.Bound.Equal(l.Total) && !l.Bound.IsZero() {
		w.row(0, "could cost as little as", money(l.Bound))
	}
	if l.Least.GreaterThan(l.Total) {
		w.row(0, "the budget is too small: the least of everything costs", money(l.Least))
	}
	return w.String()
}

// String returns the purchase as [List.String] prints it.
func (p Purchase) String() string {
	w := &writer{width: phoneWidth}
	p.text(w, false)
	return w.String()
}

// text writes p to w. Poor says that the budget is too small for the least of everything.
func (p Purchase) text(w *writer, poor bool) {
	var last Item
	several := false
	for k, s := range p.Shares {
		if k == 0 || s.Item != last {
			several = k > 0
			last = s.Item
			w.row(0, "[ ] "+last.String(), "")
		}
		s.text(w, !poor && len(p.Shares) == 1 && len(p.Owned) == 0)
	}
	lots := func(what string, list []Lot) {
		for _, l := range list {
			name := what
			if several || l.Item != last {
				name += ", " + l.Item.String()
			}
			w.row(4, name, l.Quantity.one())
		}
	}
	lots("owned", p.Owned)
	for _, b := range p.Buys {
		at := " at " + money(b.Offer.Price)
		if !b.Offer.Price.Mul(decimal.NewFromInt(int64(b.Packs))).Equal(b.Cost) {
			at += ", less by a deal"
		}
		if b.Offer.Store != "" {
			at += ", " + b.Offer.Store
		}
		w.row(4, strconv.Itoa(b.Packs)+" x "+b.Offer.Name+at, money(b.Cost))
	}
	if len(p.Buys) == 0 {
		w.row(4, "nothing to buy", "")
	}
	for _, c := range p.Cuts {
		w.row(4, c.String(), "")
	}
	if lost := p.lost(); lost > 0 {
		w.row(4, "lost in joins", lost.String())
	}
	lots("left over", p.Left)
	if !p.Bound.Equal(p.Cost) && !p.Bound.IsZero() {
		w.row(4, "could cost as little as", money(p.Bound))
	}
}

// lost returns what the joins of running lengths lose of the strands: the pieces are longer than what hangs.
func (p Purchase) lost() (lost units.Length) {
	for _, c := range p.Cuts {
		for _, n := range c.Pieces {
			if n.Quantity.Pieces == 0 {
				lost += units.Length(c.Rolls) * n.Quantity.Length
			}
		}
	}
	for _, s := range p.Shares {
		if s.Gets.Pieces == 0 {
			lost -= s.Gets.Length
		}
	}
	return lost
}

// text writes s to w. Shelf says that what it gets is what the shelf holds.
func (s Share) text(w *writer, shelf bool) {
	there := " to be had, "
	if shelf {
		there = " on the shelf, "
	}
	room := s.Room
	if room == "" {
		room = "needed"
	}
	w.row(4, room, s.as(s.Gets))
	if s.Item.Kind.whole() && s.Gets.Pieces > s.Quantity.Pieces {
		w.row(6, "for "+s.Quantity.String()+", in whole strings", "")
	}
	for parts := s.Parts; len(parts) > 0; {
		p, n := parts[0], alike(parts)
		if parts = parts[n:]; p.Item.Kind.whole() {
			w.row(6, strconv.Itoa(n)+" x "+p.Quantity.String()+" "+p.Item.String(), "")
		} else if len(s.Parts) != 1 || p.Item != s.Item {
			w.row(6, p.Item.String(), p.Quantity.String())
		}
	}
	if short := s.Short(); short != (Quantity{}) && s.Enough() && !s.Spare {
		w.row(6, short.String()+" fewer than the "+s.Quantity.String()+" planned, which will do", "")
	} else if short != (Quantity{}) {
		w.row(6, "not enough: "+s.as(s.Gets)+there+short.String()+" short", "")
	} else if !s.Enough() {
		w.row(6, "not enough for "+s.assortment().String(), "")
	}
	if s.Replaced != (Quantity{}) {
		w.row(6, "a substitute stands for "+s.Replaced.String(), "")
	}
	if why := s.why(); why != "" && w.width >= pageWidth {
		w.row(6, why, "")
	}
}

// as returns q as text, nothing of a length as "0 ft".
func (s Share) as(q Quantity) string {
	if q == (Quantity{}) && s.Quantity.Length != 0 && s.Quantity.Pieces == 0 {
		return q.Length.String()
	}
	return q.String()
}

// alike returns how many of lots from the first on are the same, as several strings of lights are.
func alike(lots []Lot) int {
	n := 1
	for n < len(lots) && lots[n] == lots[0] {
		n++
	}
	return n
}

// why returns the basis and the source of the need.
func (s Share) why() string {
	if s.Source != "" && s.Basis != "" {
		return s.Basis + " (" + s.Source + ")"
	}
	return s.Basis + s.Source
}

// one returns q, one piece of a length as the length alone.
func (q Quantity) one() string {
	if q.Pieces == 1 && q.Length != 0 {
		return q.Length.String()
	}
	return q.String()
}

// String returns a line such as "cut 2 x 10 yd roll into 6 of 4 ft 6 in for tea room, 3 ft
// left of each", or "use 8 x 9 ft strand whole for ticket hall".
func (c Cut) String() string {
	name := c.Offer
	if name == "" {
		name = "owned " + c.Roll.String()
	}
	name = strconv.Itoa(c.Rolls) + " x " + name
	left := c.left()
	if len(c.Pieces) == 1 && left == 0 && c.Pieces[0].Quantity.Pieces <= 1 {
		return "use " + name + " whole" + c.Pieces[0].in()
	}
	pieces := make([]string, len(c.Pieces))
	for i, p := range c.Pieces {
		pieces[i] = p.Quantity.String() + p.in()
	}
	s := "cut " + name + " into " + strings.Join(pieces, " + ")
	if left != 0 {
		s += ", " + left.String() + " left"
		if c.Rolls > 1 {
			s += " of each"
		}
	}
	return s
}

// in returns " for tea room".
func (n Need) in() string {
	if n.Room == "" {
		return ""
	}
	return " for " + n.Room
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

// csvHeader are the columns of [List.CSV].
var csvHeader = []string{"record", "item", "room", "quantity", "planned", "offer", "store", "price", "packs", "cost", "note"}

// CSV returns the list as comma-separated values (RFC 4180, lines ended by a line feed),
// with or without a header. The first column says what a record is:
//
//	need      what one room gets, of how much planned, and why
//	part      which things the preceding need gets, where that is open
//	buy       packs of an offer: pack, price and cost
//	cut       how strands or rolls are used, and what is left of each
//	left      what goes back into the box
//	delivery  of a store
//	tax       of a store
//
// The column cost adds up to the total. A cell in which a spreadsheet would find a formula, at
// its beginning or after a separator, has an apostrophe before it.
func (l List) CSV(header bool) string {
	var b strings.Builder
	w := csv.NewWriter(&b)
	if header {
		w.Write(csvHeader)
	}
	w.WriteAll(l.records()) // a strings.Builder does not fail, so neither does w
	return b.String()
}

// records returns the records of [List.CSV] cell by cell, without the header.
func (l List) records() [][]string {
	var records [][]string
	add := func(cells ...string) {
		for i, c := range cells {
			cells[i] = harmless(c)
		}
		records = append(records, cells)
	}
	for _, p := range l.Purchases {
		for _, s := range p.Shares {
			note := s.why()
			if short := s.Short(); short != (Quantity{}) {
				note = strings.TrimPrefix(note+"; "+short.String()+" short", "; ")
			}
			add("need", s.Item.String(), s.Room, s.as(s.Gets), s.Quantity.String(), "", "", "", "", "", note)
			for parts := s.Parts; len(parts) > 0; {
				part, n := parts[0], alike(parts)
				if parts = parts[n:]; n > 1 {
					part.Quantity.Pieces *= n
					add("part", part.Item.String(), s.Room, part.Quantity.String(), "", "", "", "", "", "", strconv.Itoa(n)+" x "+strconv.Itoa(part.Quantity.Pieces/n))
					continue
				}
				add("part", part.Item.String(), s.Room, part.Quantity.String(), "", "", "", "", "", "", "")
			}
		}
		for _, b := range p.Buys {
			holds := b.Offer.holds()
			names := make([]string, len(holds))
			for i, h := range holds {
				names[i] = h.Quantity.String() + " " + h.Item.String()
			}
			item := holds[0].Item.String()
			if len(holds) > 1 {
				item = ""
			}
			add("buy", item, "", "", "", b.Offer.Name, b.Offer.Store, money(b.Offer.Price), strconv.Itoa(b.Packs), money(b.Cost), strings.Join(names, " + "))
		}
		for _, c := range p.Cuts {
			add("cut", c.Pieces[0].Item.String(), "", c.Roll.String(), "", c.Offer, "", "", strconv.Itoa(c.Rolls), "", c.String())
		}
		for _, o := range p.Left {
			add("left", o.Item.String(), "", o.Quantity.String(), "", "", "", "", "", "", "")
		}
	}
	for _, b := range l.Bills {
		if !b.Delivery.IsZero() {
			add("delivery", "", "", "", "", "", b.Store, "", "", money(b.Delivery), "")
		}
		if !b.Tax.IsZero() {
			add("tax", "", "", "", "", "", b.Store, "", "", money(b.Tax), "")
		}
	}
	return records
}

// harmless returns s with an apostrophe before each sign by which a spreadsheet knows a
// formula, at the beginning of the cell or of what may be taken for one.
func harmless(s string) string {
	var b strings.Builder
	begins := true
	for _, r := range s {
		if begins && strings.ContainsRune("=+-@", r) {
			b.WriteByte('\'')
		}
		b.WriteRune(r)
		begins = strings.ContainsRune(",;|\t\r\n", r) || begins && r == ' '
	}
	return b.String()
}
