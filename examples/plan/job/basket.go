package job

import (
	"errors"

	"example.com/fircone/palette"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// A Basket is what to buy.
type Basket struct {
	Budget  decimal.Decimal // zero: no budget, just what is needed at the least cost
	List    shopping.List
	Missing []Missing // what cannot be bought from the offers: to be had elsewhere
}

// Missing is an item that the offers and what is owned do not cover.
type Missing struct {
	Needs []shopping.Need // the share of each room
	Why   string          // how far the offers and what is owned go
}

// fill returns the basket for the needs: the least cost for just what is needed
// or, where there is a budget, the fullest trees that it buys.
func fill(shop shopping.Shop, needs []open) (*Basket, error) {
	b := &Basket{Budget: shop.Budget}
	var items []shopping.Item
	byItem := map[shopping.Item][]open{}
	for _, n := range needs {
		if _, seen := byItem[n.Item]; !seen {
			items = append(items, n.Item)
		}
		byItem[n.Item] = append(byItem[n.Item], n)
	}
	var wanted []shopping.Need
	var open []shopping.Need // with the items that are open put together
	for _, item := range items {
		group := byItem[item]
		plain := make([]shopping.Need, len(group))
		for i, n := range group {
			plain[i] = n.Need
		}
		var short *units.Error
		_, err := shop.Cheapest(plain...)
		if errors.Is(err, units.ErrShort) && errors.As(err, &short) {
			b.Missing = append(b.Missing, Missing{plain, short.Want})
			continue
		}
		if err != nil {
			return nil, err
		}
		wanted = append(wanted, plain...)
		open = append(open, choose(group)...)
	}
	var err error
	if shop.Budget.IsZero() {
		b.List, err = shop.List(wanted)
		return b, err
	}
	b.List, err = shop.Fullest(open)
	if err != nil {
		return nil, err
	}
	for i := range b.List.Purchases {
		p := &b.List.Purchases[i]
		if p.Needs, err = divide(p.Needs, byItem[p.Item]); err != nil {
			return nil, err
		}
	}
	return b, nil
}

// choose returns the needs of an item: one for all rooms together where it is
// open, and the needs as they stand where it is not.
func choose(group []open) []shopping.Need {
	all := group[0].Need
	all.Room, all.Quantity.Pieces = "", 0
	var fixed []shopping.Need
	for _, n := range group {
		fixed = append(fixed, n.Need)
		all.Quantity.Pieces += n.least
		all.Most += n.most
	}
	if all.Most == all.Quantity.Pieces {
		return fixed
	}
	return []shopping.Need{all}
}

// divide shares what was chosen of an open item over the rooms, in proportion to
// how open each room's need was.
func divide(chosen []shopping.Need, group []open) ([]shopping.Need, error) {
	widths, width, left := make([]int, len(group)), 0, 0
	for i, n := range group {
		widths[i] = n.most - n.least
		width += widths[i]
		left -= n.least
	}
	if width == 0 {
		return chosen, nil
	}
	left += chosen[0].Quantity.Pieces
	more, err := palette.Apportion(left, widths, 0)
	if err != nil {
		return nil, err
	}
	rooms := make([]shopping.Need, len(group))
	for i, n := range group {
		rooms[i] = n.Need
		rooms[i].Quantity.Pieces = n.least + more[i]
		if n.most > n.least {
			rooms[i].Basis = n.brief + "; " + n.Quantity.String() + " by its share, " + rooms[i].Quantity.String() + " as the budget allows"
		}
	}
	return rooms, nil
}
