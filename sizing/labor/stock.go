package labor

import (
	"slices"
	"strconv"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// NextStock returns what is owned next year, for the Owned of next year's [shopping.Shop]: what was owned, and what was bought,
// without what was lost.
//
//   - Pieces add up, by item.
//   - Strands and rolls are counted by item and length. Those that a purchase cuts become the pieces and
//     what is left of the roll.
//   - A loss is a number of pieces, or of strands of one length; of a strand that is only shorter now, lose the
//     whole and add what is left to the result.
//
// The entries come in the order in which their items were first seen, the longest first. Shopped with it for the same needs, a shop
// buys only what was lost and not already over: see the example.
//
// It returns an error wrapping [units.ErrRange] for a loss of more than there is and for a quantity out of its range,
// [units.ErrFit] for a purchase that cuts rolls that are not there, and [units.ErrSyntax] or [units.ErrName] for an item that is none.
// At most 5,000 entries of each.
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
	if c.err != nil {
		return nil, c.err
	}
	return s.entries(), nil
}

// owned checks how much there is of an item.
func (c *checker) owned(field string, q shopping.Quantity) {
	if q.Pieces < 0 || q.Pieces > maxPieces || q.Length < 0 || q.Length > maxLength {
		c.fail(units.ErrRange, field, q.String(), "0 to 1,000,000 pieces, or a length up to 1,000 km")
	}
}

// A strand is what is counted: an item in pieces, or of one length.
type strand struct {
	item   shopping.Item
	length units.Length
}

// String returns "picks" or "ribbon of 6 ft".
func (s strand) String() string {
	if s.length == 0 {
		return s.item.String()
	}
	return s.item.String() + " of " + s.length.String()
}

// strandOf returns what a quantity counts, and how many there are.
func strandOf(i shopping.Item, q shopping.Quantity) (strand, int) {
	if q.Length > 0 {
		return strand{i, q.Length}, max(1, q.Pieces)
	}
	return strand{i, 0}, q.Pieces
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
		if c.err != nil {
			return
		}
		for j, b := range p.Buys {
			holds := b.Offer.Contents
			field := at(where+"/buys", j, "offer")
			if len(holds) == 0 {
				holds = []shopping.Lot{{Item: b.Offer.Item, Quantity: b.Offer.Pack}}
			}
			for k, h := range holds {
				lot := field
				if len(b.Offer.Contents) > 0 {
					lot = at(field+"/contents", k, "")
				}
				if !c.item(lot+"/item", h.Item) {
					return
				}
				if len(b.Offer.Contents) > 0 {
					c.owned(lot+"/quantity", h.Quantity)
				} else {
					c.owned(lot+"/pack", h.Quantity)
				}
				if c.whole(at(where+"/buys", j, "packs"), b.Packs, 0, maxPieces/max(1, h.Quantity.Pieces)); c.err != nil {
					return
				}
				s.add(h.Item, h.Quantity, b.Packs)
			}
		}
		for j, cut := range p.Cuts {
			if !c.item(at(where+"/cuts", j, "item"), cut.Item) {
				return
			}
			roll := strand{cut.Item, cut.Roll}
			field := at(where+"/cuts", j, "rolls")
			c.length(at(where+"/cuts", j, "roll"), cut.Roll, maxLength)
			if c.whole(field, cut.Rolls, 0, maxPieces); c.err == nil && s.pieces[roll] < cut.Rolls {
				c.fail(units.ErrFit, field, strconv.Itoa(cut.Rolls), "at most "+strconv.Itoa(s.pieces[roll])+", which is all there is of "+roll.String())
			}
			for k, q := range cut.Pieces {
				c.owned(at(at(where+"/cuts", j, "pieces"), k, "quantity"), q.Quantity)
			}
			if c.length(at(where+"/cuts", j, "left"), cut.Left, maxLength); c.err != nil {
				return
			}
			s.pieces[roll] -= cut.Rolls
			for _, q := range cut.Pieces {
				s.add(cut.Item, q.Quantity, cut.Rolls)
			}
			if cut.Left > 0 {
				s.add(cut.Item, shopping.Quantity{Length: cut.Left}, cut.Rolls)
			}
		}
	}
}

// entries returns what there is.
func (s *stock) entries() []shopping.Lot {
	byItem := map[shopping.Item][]strand{}
	for key, n := range s.pieces {
		if n > 0 {
			byItem[key.item] = append(byItem[key.item], key)
		}
	}
	var all []shopping.Lot
	for _, item := range s.order {
		keys := byItem[item]
		slices.SortFunc(keys, func(a, b strand) int {
			if a.length > b.length {
				return -1
			}
			return 1
		})
		for _, key := range keys {
			q := shopping.Quantity{Pieces: s.pieces[key], Length: key.length}
			if q.Length > 0 && q.Pieces == 1 {
				q.Pieces = 0
			}
			all = append(all, shopping.Lot{Item: item, Quantity: q})
		}
	}
	return all
}
