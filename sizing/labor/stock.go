package labor

import (
	"cmp"
	"slices"
	"strconv"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// NextStock returns what is owned next year, the Owned of its [shopping.Shop]: what was owned and bought, less what was lost.
//
// Pieces add up by item; each string of lights is a lot; strands count by length, and cut ones
// become their pieces and what is left. If a strand got shorter, list it as lost and append its
// remainder to the result. For the same needs, a shop then buys what was lost, less what was
// left over.
//
// ErrRange reports a loss of more than there is, ErrFit a cut of rolls that are not there. At most 5,000 lots of each.
func NextStock(owned []shopping.Lot, bought shopping.List, lost []shopping.Lot) ([]shopping.Lot, error) {
	c := &checker{fn: "NextStock"}
	s := &stock{pieces: map[strand]int{}}
	for _, list := range [...]struct {
		name    string
		entries []shopping.Lot
	}{{"/owned", owned}, {"/lost", lost}} {
		if len(list.entries) > maxNeeds {
			c.fail(units.ErrRange, list.name, strconv.Itoa(len(list.entries)), "at most 5,000 entries")
			return nil, c.err
		}
		for i, o := range list.entries {
			if c.item(at(list.name, i, "item"), o.Item) {
				c.owned(at(list.name, i, "quantity"), o.Quantity)
			}
			if c.err != nil {
				return nil, c.err
			}
		}
	}
	for _, o := range owned {
		s.add(o.Item, o.Quantity, 1)
	}
	s.purchases(c, bought)
	for i, o := range lost {
		if c.err != nil {
			break
		}
		key, n := strandOf(o.Item, o.Quantity)
		if have := s.pieces[key]; n > have {
			c.fail(units.ErrRange, at("/lost", i, "quantity"), o.Quantity.String(), "at most "+strconv.Itoa(have)+", which is all there is of "+key.String())
		}
		s.pieces[key] -= n
	}
	var lots []shopping.Lot
	if c.err == nil {
		lots = s.lots(c)
	}
	return lots, c.err
}

// owned checks how much there is of an item.
func (c *checker) owned(field string, q shopping.Quantity) {
	if q.Pieces < 0 || q.Pieces > maxPieces || q.Length < 0 || q.Length > maxLength {
		c.fail(units.ErrRange, field, q.String(), "0 to 1,000,000 pieces, or a length up to 1,000 km")
	}
}

// A strand is what is counted: an item in pieces, of one length, or as strings of so many lamps.
type strand struct {
	item   shopping.Item
	length units.Length
	lamps  int
}

// String returns "picks", "ribbon of 6 ft" or "lights, strings of 100".
func (s strand) String() string {
	switch {
	case s.length > 0:
		return s.item.String() + " of " + s.length.String()
	case s.lamps > 0:
		return s.item.String() + ", strings of " + strconv.Itoa(s.lamps)
	}
	return s.item.String()
}

// strandOf returns what a quantity counts, and how many there are.
func strandOf(i shopping.Item, q shopping.Quantity) (strand, int) {
	switch {
	case q.Length > 0:
		return strand{item: i, length: q.Length}, max(1, q.Pieces)
	case i.Kind == shopping.Light && q.Pieces > 0:
		return strand{item: i, lamps: q.Pieces}, 1
	}
	return strand{item: i}, q.Pieces
}

// A stock is what there is.
type stock struct {
	pieces map[strand]int
	order  []shopping.Item
}

// add adds so many times a quantity.
func (s *stock) add(i shopping.Item, q shopping.Quantity, times int) {
	key, n := strandOf(i, q)
	if !slices.Contains(s.order, i) {
		s.order = append(s.order, i)
	}
	s.pieces[key] += n * times
}

// purchases adds what a list buys, and cuts what it cuts.
func (s *stock) purchases(c *checker, l shopping.List) {
	if len(l.Purchases) > maxNeeds {
		c.fail(units.ErrRange, "/bought/purchases", strconv.Itoa(len(l.Purchases)), "at most 5,000 purchases")
	}
	for i, p := range l.Purchases {
		where := at("/bought/purchases", i, "")
		for j, b := range p.Buys {
			s.buy(c, at(where+"/buys", j, ""), b)
		}
		for j, cut := range p.Cuts {
			if c.err != nil {
				return
			}
			s.cut(c, at(where+"/cuts", j, ""), cut)
		}
	}
}

// buy adds packs of an offer.
func (s *stock) buy(c *checker, where string, b shopping.Buy) {
	contents := b.Offer.Contents
	list := where + "/offer/contents"
	if len(contents) == 0 {
		contents = []shopping.Lot{{Item: b.Offer.Item, Quantity: b.Offer.Pack}}
	}
	c.whole(where+"/packs", b.Packs, 0, maxPieces)
	for k, lot := range contents {
		item, quantity := at(list, k, "item"), at(list, k, "quantity")
		if len(b.Offer.Contents) == 0 {
			item, quantity = where+"/offer/item", where+"/offer/pack"
		}
		if c.err != nil || !c.item(item, lot.Item) {
			return
		}
		if c.owned(quantity, lot.Quantity); c.err == nil {
			_, n := strandOf(lot.Item, lot.Quantity)
			c.whole(where+"/packs", b.Packs, 0, maxPieces/max(1, n))
		}
		if c.err == nil {
			s.add(lot.Item, lot.Quantity, b.Packs)
		}
	}
}

// cut makes pieces of strands or rolls.
func (s *stock) cut(c *checker, where string, cut shopping.Cut) {
	if len(cut.Pieces) == 0 {
		c.fail(units.ErrRange, where+"/pieces", "none", "at least 1 piece")
		return
	}
	item, left := cut.Pieces[0].Item, cut.Roll
	for k, p := range cut.Pieces {
		if field := at(where+"/pieces", k, "item"); c.item(field, p.Item) && p.Item != item {
			c.fail(units.ErrFit, field, p.Item.String(), item.String()+", as the first piece is")
		}
	}
	if c.err != nil {
		return
	}
	roll := strand{item: item, length: cut.Roll}
	c.length(where+"/roll", cut.Roll, maxLength)
	if c.whole(where+"/rolls", cut.Rolls, 0, maxPieces); c.err == nil && s.pieces[roll] < cut.Rolls {
		c.fail(units.ErrFit, where+"/rolls", strconv.Itoa(cut.Rolls), "at most "+strconv.Itoa(s.pieces[roll])+", which is all there is of "+roll.String())
	}
	for k, p := range cut.Pieces {
		field := at(where+"/pieces", k, "quantity")
		c.owned(field, p.Quantity)
		if c.err != nil {
			return
		}
		_, n := strandOf(item, p.Quantity)
		c.whole(where+"/rolls", cut.Rolls, 0, maxPieces/max(1, n))
		if each := p.Quantity.Length; each > left/units.Length(max(1, n)) {
			c.fail(units.ErrFit, field, p.Quantity.String(), "at most "+left.String()+", which is left of the roll")
		} else {
			left -= units.Length(n) * each
		}
	}
	if c.err != nil {
		return
	}
	s.pieces[roll] -= cut.Rolls
	for _, p := range cut.Pieces {
		s.add(item, p.Quantity, cut.Rolls)
	}
	s.add(item, shopping.Quantity{Length: left}, cut.Rolls) // if nothing is left, it counts none
}

// lots returns what there is.
func (s *stock) lots(c *checker) []shopping.Lot {
	byItem := map[shopping.Item][]strand{}
	for key, n := range s.pieces {
		if n > 0 {
			byItem[key.item] = append(byItem[key.item], key)
		}
	}
	var all []shopping.Lot
	for _, item := range s.order {
		keys := byItem[item]
		slices.SortFunc(keys, func(a, b strand) int { return cmp.Or(cmp.Compare(b.length, a.length), cmp.Compare(b.lamps, a.lamps)) })
		for _, key := range keys {
			n := s.pieces[key]
			q, times := shopping.Quantity{Pieces: n, Length: key.length}, 1
			switch {
			case key.lamps > 0:
				q, times = shopping.Quantity{Pieces: key.lamps}, n
			case key.length > 0 && n == 1:
				q.Pieces = 0
			}
			if len(all)+times > maxNeeds {
				c.fail(units.ErrRange, "/bought/purchases", strconv.Itoa(len(all)+times)+" lots", "what makes at most 5,000 lots")
				return nil
			}
			for range times {
				all = append(all, shopping.Lot{Item: item, Quantity: q})
			}
		}
	}
	return all
}
