package sheet

import (
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/shopping"

	"github.com/shopspring/decimal"
)

// buy lists what to buy, what is taken from the box, what is short, and what goes
// back.
func (s *sheet) buy(list shopping.List) {
	budget, what := s.request.Shop.Budget, "To buy"
	if s.cautioned(sizesUnsaid) {
		what += " in the sizes below"
	}
	switch {
	case budget.IsZero():
		s.heading(what + ": the least cost for what is needed")
	case list.Least.GreaterThan(budget):
		s.heading(what + ": as far as " + s.money(budget) + " goes; it takes " + s.money(list.Least) + " to have enough of everything")
	case len(s.plan.Trees) == 0:
		s.heading(what + ": what is needed, for " + s.money(budget) + " at most")
	default:
		s.heading(what + ": the fullest trees for " + s.money(budget))
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
		if m.Cord > 0 {
			cords = append(cords, s.cord(m)+" ("+m.Room+")")
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
	var shares []shopping.Share // of the rooms, as their pages have them
	for _, t := range s.plan.Trees {
		shares = append(shares, t.Shares...)
	}
	for _, m := range s.plan.Mantels {
		for _, share := range m.Shares {
			if !bare(m) || share.Item.Kind == shopping.BaseGarland || share.Item.Kind == shopping.Stocking {
				shares = append(shares, share) // the rest is of no use without garland
			}
		}
	}
	for _, share := range shares {
		q := share.Short()
		if q == (shopping.Quantity{}) || s.open(share) {
			continue // less than planned, and enough
		}
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
			part.why = "the shelves have too few of one sort"
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
