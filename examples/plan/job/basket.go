package job

import (
	"example.com/fircone/sizing/shopping"

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
	wanted := make([]shopping.Need, len(needs))
	for i, n := range needs {
		wanted[i] = n.Need
		if n.most > n.least {
			wanted[i].Least, wanted[i].Most = n.least, n.most
		}
	}
	var err error
	if shop.Budget.IsZero() {
		b.List, err = shop.List(wanted)
	} else {
		b.List, err = shop.Fullest(wanted)
	}
	if err != nil {
		return nil, err
	}
	for _, s := range b.List.Short() {
		b.Missing = append(b.Missing, Missing{[]shopping.Need{s.Need}, s.Gets.String() + " to be had, " + s.Short().String() + " short"})
	}
	return b, nil
}
