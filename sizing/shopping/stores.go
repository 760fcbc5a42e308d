package shopping

import (
	"slices"

	"example.com/fircone/internal/cover"

	"github.com/shopspring/decimal"
)

// cheapestStores returns the purchases for wishes from the set of stores that costs least,
// deliveries and tax included.
func (s Shop) cheapestStores(c *checker, list []wish) (located, error) {
	var fees []string // stores that deliver for a fee and have offers
	for _, st := range s.Stores {
		if !st.Delivery.IsZero() && slices.ContainsFunc(s.Offers, func(o Offer) bool { return o.Store == st.Name }) {
			fees = append(fees, st.Name)
		}
	}
	shop, mixed := s.taxed()
	var best located
	var key [4]int64
	var bound decimal.Decimal
	sets := 1 << len(fees)
	work := c.work
	for set := range sets {
		some := shop
		if set != sets-1 {
			some.Offers = slices.DeleteFunc(slices.Clone(shop.Offers), func(o Offer) bool {
				k := slices.Index(fees, o.Store)
				return k >= 0 && set>>k&1 == 0
			})
		}
		c.work = work / int64(sets)
		began := c.work
		l, err := some.once(c, list)
		if err != nil {
			return located{}, err
		}
		s.settle(&l.List, mixed)
		s.pad(c, &l.List)
		work -= began - c.work
		// What no way to buy from this set is under.
		least := l.Bound
		now := missing(l.List)
		switch {
		case set == 0 || slices.Compare(now[:], key[:]) < 0:
			best, key, bound = l, now, least
		case now == key:
			if l.Total.LessThan(best.Total) {
				best = l
			}
			bound = decimal.Min(bound, least)
		}
	}
	c.work = work
	best.Bound = decimal.Min(bound, best.Total)
	s.round(&best.List)
	return best, nil
}

// pad buys more of what is on the list at stores whose delivery is free then, where that costs less than the
// delivery: packs of pieces that are not lights, without deals.
func (s Shop) pad(c *checker, l *List) {
	padded := false
	for _, b := range l.Bills {
		st := s.store(b.Store)
		gap := price(st.FreeFrom) - price(b.Goods)
		if gap <= 0 || gap >= price(b.Delivery) {
			continue // free already or never, or what it takes is no less
		}
		var packs []cover.Pack
		var offers, at []int
		for i, o := range s.Offers {
			k := slices.IndexFunc(l.Purchases, func(p Purchase) bool { return p.serves(o) })
			if k < 0 || o.Store != b.Store || o.Deals != nil || o.Price.Sign() == 0 {
				continue
			}
			room := o.Shelf.limit()
			if n := l.Purchases[k].bought(o); n != -1 {
				room -= int64(l.Purchases[k].Buys[n].Packs)
			}
			each := price(o.Price)
			packs = append(packs, cover.Pack{Size: each, Bulk: each, Cost: each, Limit: room})
			offers, at = append(offers, i), append(at, k)
		}
		counts, short, err := c.cover(Item{}, gap, packs)
		if err != nil || short != 0 || weigh(counts, packs)[0] >= price(b.Delivery) {
			continue
		}
		for k, n := range counts {
			l.Purchases[at[k]].more(s.Offers[offers[k]], n)
		}
		padded = true
	}
	if !padded {
		return
	}
	bound, bounds := l.Bound, make([]decimal.Decimal, len(l.Purchases))
	for i, p := range l.Purchases {
		bounds[i] = p.Bound
	}
	s.settle(l, false)
	l.Bound = decimal.Min(bound, l.Total)
	for i := range bounds {
		l.Purchases[i].Bound = bounds[i]
	}
}

// serves reports whether a pack of o is pieces, and some of them serve p.
func (p Purchase) serves(o Offer) bool {
	pieces := !slices.ContainsFunc(o.holds(), func(h Lot) bool { return h.Quantity.Length != 0 || h.Item.Kind.whole() })
	return pieces && slices.ContainsFunc(p.Shares, func(s Share) bool {
		return s.Quantity.Length == 0 && slices.ContainsFunc(o.holds(), func(h Lot) bool { return matches(s.Item, s.MaxSize, h.Item) })
	})
}

// bought returns which of the buys of p is of o, or -1.
func (p Purchase) bought(o Offer) int {
	return slices.IndexFunc(p.Buys, func(b Buy) bool { return b.Offer.Name == o.Name && b.Offer.holds()[0].Item == o.holds()[0].Item })
}

// more adds n packs of o to what p buys, all of them left over.
func (p *Purchase) more(o Offer, n int64) {
	if n == 0 {
		return
	}
	k := p.bought(o)
	if k == -1 {
		k = len(p.Buys)
		p.Buys = append(p.Buys, Buy{Offer: o})
	}
	b := &p.Buys[k]
	b.Packs += int(n)
	cost := amount(o.cost(int64(b.Packs)))
	p.Cost, b.Cost = p.Cost.Add(cost.Sub(b.Cost)), cost
	for _, h := range times(nil, o.holds(), n) {
		p.Left = merged(p.Left, h)
	}
}

// missing returns how many shares get too little, how many less than planned, and by how much in pieces and in length.
func missing(l List) (key [4]int64) {
	for i := range l.Purchases {
		shares := l.Purchases[i].Shares
		for k := range shares {
			s := &shares[k]
			if !s.Enough() {
				key[0]++
			}
			if short := s.Short(); short != (Quantity{}) {
				key[1]++
				key[2] += int64(short.Pieces)
				key[3] += int64(short.Length)
			}
		}
	}
	return key
}

// store returns the store of that name; one that is not listed adds nothing.
func (s Shop) store(name string) Store {
	for _, st := range s.Stores {
		if st.Name == name {
			return st
		}
	}
	return Store{Name: name}
}

// with returns what d comes to with the tax of st.
func (st Store) with(d decimal.Decimal) decimal.Decimal {
	if st.Tax.Sign() == 0 {
		return d
	}
	return d.Add(d.Mul(st.Tax).Shift(-2))
}

// taxed returns s with prices that have the tax in them, rounded down to 1/10,000, if stores
// differ in their tax, since then it decides where to buy.
func (s Shop) taxed() (shop Shop, mixed bool) {
	for _, o := range s.Offers {
		mixed = mixed || !s.store(o.Store).Tax.Equal(s.store(s.Offers[0].Store).Tax)
	}
	if !mixed {
		return s, false
	}
	s.Offers = slices.Clone(s.Offers)
	for i := range s.Offers {
		o := &s.Offers[i]
		st := s.store(o.Store)
		o.Price = st.with(o.Price).Truncate(places)
		o.Deals = slices.Clone(o.Deals)
		for k := range o.Deals {
			o.Deals[k].Price = st.with(o.Deals[k].Price).Truncate(places)
		}
	}
	return s, true
}

// settle fills in what l costs, with tax and deliveries, and its bound. With mixed the offers
// in l are those of [Shop.taxed].
func (s Shop) settle(l *List, mixed bool) {
	goods := make([]decimal.Decimal, len(s.Stores))
	bought := make([]bool, len(s.Stores))
	l.Total, l.Bound = decimal.Decimal{}, decimal.Decimal{}
	most := decimal.Decimal{} // the highest tax that there is, in percent
	taxed := slices.ContainsFunc(s.Stores, func(st Store) bool { return !st.Tax.IsZero() })
	proved := true // so far, that all is the least
	for _, o := range s.Offers {
		if mixed {
			most = decimal.Max(most, s.store(o.Store).Tax)
		}
	}
	for i := range l.Purchases {
		p := &l.Purchases[i]
		var paid decimal.Decimal // with tax
		least := p.Bound.Equal(p.Cost)
		if mixed {
			p.Cost = decimal.Decimal{}
		}
		for k := range p.Buys {
			b := &p.Buys[k]
			if mixed {
				at := slices.IndexFunc(s.Offers, func(o Offer) bool {
					return o.Name == b.Offer.Name && o.holds()[0].Item == b.Offer.holds()[0].Item
				})
				b.Offer = s.Offers[at]
				b.Cost = amount(b.Offer.cost(int64(b.Packs)))
				p.Cost = added(p.Cost, b.Cost)
			}
			if at := slices.IndexFunc(s.Stores, func(st Store) bool { return st.Name == b.Offer.Store }); at >= 0 {
				goods[at], bought[at] = added(goods[at], b.Cost), true
			}
			if taxed {
				paid = added(paid, s.store(b.Offer.Store).with(b.Cost))
			}
		}
		if !taxed {
			paid = p.Cost
		}
		bound := p.Bound // with tax
		switch {
		case mixed && least:
			bound, p.Bound = paid, p.Cost
		case mixed:
			hundred := decimal.NewFromInt(100)
			p.Bound, _ = p.Bound.Mul(hundred).QuoRem(hundred.Add(most), places)
		case len(s.Offers) > 0:
			bound = s.store(s.Offers[0].Store).with(bound)
		}
		p.Bound = decimal.Min(p.Bound, p.Cost)
		l.Total = added(l.Total, paid)
		if proved = proved && bound.GreaterThanOrEqual(paid); proved {
			l.Bound = l.Total
		} else {
			l.Bound = added(l.Bound, decimal.Min(bound, paid))
		}
	}
	l.Bills = nil
	for i, st := range s.Stores {
		if !bought[i] {
			continue
		}
		sum := goods[i]
		b := Bill{Store: st.Name, Goods: sum, Delivery: st.Delivery}
		free := st.FreeFrom.Sign() > 0 && sum.GreaterThanOrEqual(st.FreeFrom)
		if free || st.Delivery.Sign() == 0 {
			b.Delivery = decimal.NewFromInt(0)
		}
		before := b.Goods.Add(b.Delivery)
		b.Tax = st.with(before).Sub(before)
		l.Bills = append(l.Bills, b)
		l.Total = l.Total.Add(st.with(b.Delivery))
		if st.FreeFrom.Sign() == 0 {
			l.Bound = l.Bound.Add(st.with(b.Delivery))
		}
	}
}

// round rounds the tax of each bill as a till does, and what l costs with it. What was proved the least stays so.
func (s Shop) round(l *List) {
	coin := s.Coin
	if coin.Sign() == 0 {
		coin = decimal.New(1, -2)
	}
	coins := func(d decimal.Decimal) decimal.Decimal { return d.DivRound(coin, 0).Mul(coin) }
	exact, taxed := l.Total, false
	for i := range l.Bills {
		b := &l.Bills[i]
		tax := coins(b.Tax)
		l.Total = l.Total.Add(tax.Sub(b.Tax))
		taxed, b.Tax = taxed || !b.Tax.IsZero(), tax
	}
	switch {
	case l.Bound.Equal(exact):
		l.Bound = l.Total
	case taxed:
		l.Bound = decimal.Min(coins(l.Bound), l.Total)
	}
}
