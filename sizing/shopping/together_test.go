package shopping

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"example.com/fircone/internal/tally"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// someBoxes returns a shop of boxes of one to three colors, with deals, shelves and what is owned, and needs of colors or of any
// color. With types some needs are for so many types.
func someBoxes(r *rand.Rand, types bool) (Shop, []Need) {
	var s Shop
	item := func() Item {
		i := Item{Kind: Ornament, Color: strconv.Itoa(r.IntN(3))}
		if types {
			i.Type = "t" + strconv.Itoa(r.IntN(3))
		}
		return i
	}
	for i := range 1 + r.IntN(3) {
		o := Offer{Name: strconv.Itoa(i)}
		all := int64(0)
		for range 1 + r.IntN(3) {
			n := 1 + r.IntN(4)
			o.Contents = append(o.Contents, Lot{item(), Quantity{Pieces: n}})
			all += int64(n)
		}
		cents := 20*all + r.Int64N(30*all)
		o.Price = decimal.New(cents, -2)
		switch k := 2 + r.Int64N(3); r.IntN(4) {
		case 0:
			o.Deals = []Deal{{Packs: int(k), Price: decimal.New(k*cents-1-r.Int64N(cents), -2)}}
		case 1:
			o.Deals = []Deal{{From: int(k), Price: decimal.New(cents-1-r.Int64N(cents/2), -2)}}
		case 2:
			o.Deals = []Deal{{From: int(k), Price: decimal.New(cents-1-r.Int64N(cents/2), -2)}, {Packs: int(k), Price: decimal.New(k*cents*2/3, -2)}}
		}
		if r.IntN(3) == 0 {
			o.Shelf = Shelf(1 + r.IntN(5))
		}
		s.Offers = append(s.Offers, o)
	}
	for range r.IntN(3) {
		s.Owned = append(s.Owned, Lot{item(), Quantity{Pieces: r.IntN(4)}})
	}
	var needs []Need
	for i := range 1 + r.IntN(4) {
		n := Need{Item: Item{Kind: Ornament}, Room: strconv.Itoa(i), Quantity: Quantity{Pieces: r.IntN(6)}}
		if r.IntN(3) > 0 {
			n.Item.Color = strconv.Itoa(r.IntN(3))
		}
		if types && r.IntN(2) == 0 {
			n.Item.Color = ""
			n.Types, n.Each = 1+r.IntN(2), units.Range[int]{Min: 1, Max: 1 + r.IntN(3)}
			n.Quantity.Pieces = n.Types * (n.Each.Min + r.IntN(n.Each.Max-n.Each.Min+1))
		}
		needs = append(needs, n)
	}
	return s, needs
}

// costOf returns the least that so many packs cost, by trying every way to buy them.
func costOf(o Offer, packs int) int64 {
	best := make([]int64, packs+1)
	for n := 1; n <= packs; n++ {
		best[n] = best[n-1] + price(o.Price)
		for _, d := range o.Deals {
			if d.Packs > 0 && d.Packs <= n {
				best[n] = min(best[n], best[n-d.Packs]+price(d.Price))
			}
		}
	}
	least := best[packs]
	for _, d := range o.Deals {
		for n := d.From; d.From > 0 && n <= packs; n++ {
			least = min(least, best[packs-n]+int64(n)*price(d.Price))
		}
	}
	return least
}

// leastOf returns the least that all needs cost, none of them for types, by trying all numbers of packs up to 12 of each offer. By
// Hall's theorem they serve if there is enough for every set of needs. It reports false if they never do.
func leastOf(s Shop, needs []Need) (least int64, ok bool) {
	all := lines(wishes(needs))
	least = math.MaxInt64
	var walk func(i int, lots []Lot, cost int64)
	walk = func(i int, lots []Lot, cost int64) {
		if cost >= least {
			return
		}
		if i < len(s.Offers) {
			o := s.Offers[i]
			most := 12
			if o.Shelf > 0 {
				most = int(o.Shelf)
			}
			for n := range most + 1 {
				walk(i+1, times(lots[:len(lots):len(lots)], o.holds(), int64(n)), cost+costOf(o, n))
			}
			return
		}
		for set := range 1 << len(all) {
			wanted, there := 0, 0
			for k, l := range all {
				if set>>k&1 == 1 {
					for _, w := range l.wishes {
						wanted += w.Quantity.Pieces
					}
				}
			}
			for _, lot := range lots {
				for k, l := range all {
					if set>>k&1 == 1 && l.takes(lot.Item) {
						there += lot.Quantity.Pieces
						break
					}
				}
			}
			if there < wanted {
				return
			}
		}
		least, ok = cost, true
	}
	walk(0, s.Owned, 0)
	return least, ok
}

// addsUp checks that every piece that is owned or bought is given to a need or left over, that no need gets more than it asks for
// or what is not its own, and that the total is what the packs cost.
func addsUp(t *testing.T, s Shop, l List) {
	t.Helper()
	there, total := map[Item]int{}, int64(0)
	for _, p := range l.Purchases {
		for _, q := range p.Owned {
			there[q.Item] += q.Quantity.Pieces
		}
		for _, b := range p.Buys {
			total += costOf(b.Offer, b.Packs)
			for _, h := range b.Offer.holds() {
				there[h.Item] += b.Packs * h.Quantity.Pieces
			}
		}
		for _, q := range p.Left {
			there[q.Item] -= q.Quantity.Pieces
		}
		for _, share := range p.Shares {
			got := 0
			for _, q := range share.Parts {
				got += q.Quantity.Pieces
				there[q.Item] -= q.Quantity.Pieces
				if share.Item.Color != "" && share.Item.Color != q.Item.Color {
					t.Errorf("%+v: %v for %v", s, q, share.Item)
				}
			}
			if share.Parts == nil {
				there[share.Item] -= share.Gets.Pieces
			} else if got != share.Gets.Pieces {
				t.Errorf("%+v: parts of %d for %d", s, got, share.Gets.Pieces)
			}
			if share.Item.Kind != Light && share.Gets.Pieces > share.Quantity.Pieces {
				t.Errorf("%+v: %v of %v", s, share.Gets, share.Quantity)
			}
		}
	}
	for i, n := range there {
		if n != 0 {
			t.Errorf("%+v: %d of %v are in no place: %+v", s, n, i, l.Purchases)
		}
	}
	if price(l.Total) != total || l.Bound.GreaterThan(l.Total) {
		t.Errorf("%+v: between %v and %v, the packs cost %d", s, l.Bound, l.Total, total)
	}
}

// tallied counts a list.
func tallied(c *tally.Tally, work int64, l List) {
	c.Add(work, price(l.Total), price(l.Bound), tally.Bit(l.Short() != nil))
	for _, p := range l.Purchases {
		for _, b := range p.Buys {
			c.Add(0, int64(b.Packs), price(b.Cost))
		}
		for _, share := range p.Shares {
			c.Add(0, int64(share.Gets.Pieces), int64(len(share.Parts)))
			for _, q := range share.Parts {
				c.Add(0, int64(q.Quantity.Pieces))
			}
		}
		for _, q := range p.Left {
			c.Add(0, int64(q.Quantity.Pieces))
		}
	}
}

// Boxes that several needs share, against all numbers of packs.
func TestBoxesWork(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 1))
	c := tally.New()
	served := 0
	for k := range 160 {
		s, needs := someBoxes(r, k%4 == 3)
		check := newChecker("Shop.List")
		l, err := s.list(check, wishes(needs))
		if err != nil {
			t.Fatalf("%+v, %v: %v", s, needs, err)
		}
		tallied(c, maxWork-check.work, l)
		addsUp(t, s, l)
		if k%4 == 3 {
			continue
		}
		least, ok := leastOf(s, needs)
		if ok == (l.Short() != nil) || ok && (price(l.Total) != least || price(l.Bound) != least) {
			t.Errorf("%+v, %v: between %v and %v, short of %v, want %d, %t", s, needs, l.Bound, l.Total, l.Short(), least, ok)
		}
		if ok {
			served++
		}
	}
	if served < 40 {
		t.Errorf("only %d served", served)
	}
	c.Check(t, "93793 f8953260a8a548d6")
}

// Strings of lights, each for one room, and those of a room of one color.
func TestLightsWork(t *testing.T) {
	r := rand.New(rand.NewPCG(22, 1))
	c := tally.New()
	for range 60 {
		var s Shop
		for i := range 1 + r.IntN(3) {
			o := Offer{Name: strconv.Itoa(i), Price: decimal.New(300+r.Int64N(500), -2)}
			for range 1 + r.IntN(2) {
				o.Contents = append(o.Contents, Lot{Item{Kind: Light, Color: strconv.Itoa(r.IntN(2))}, Quantity{Pieces: 20 + 5*r.IntN(7)}})
			}
			if r.IntN(3) == 0 {
				o.Shelf = Shelf(1 + r.IntN(4))
			}
			if r.IntN(3) == 0 {
				o.Deals = []Deal{{From: 3, Price: decimal.New(299-r.Int64N(100), -2)}}
			}
			s.Offers = append(s.Offers, o)
		}
		for range r.IntN(3) {
			s.Owned = append(s.Owned, Lot{Item{Kind: Light, Color: strconv.Itoa(r.IntN(2))}, Quantity{Pieces: 20 + 5*r.IntN(7)}})
		}
		var needs []Need
		for i := range 1 + r.IntN(3) {
			n := Need{Item: Item{Kind: Light}, Room: strconv.Itoa(i), Quantity: Quantity{Pieces: 10 + r.IntN(120)}}
			if r.IntN(3) == 0 {
				n.Item.Color = strconv.Itoa(r.IntN(2))
			}
			needs = append(needs, n)
		}
		check := newChecker("Shop.List")
		l, err := s.list(check, wishes(needs))
		if err != nil {
			t.Fatalf("%+v, %v: %v", s, needs, err)
		}
		tallied(c, maxWork-check.work, l)
		addsUp(t, s, l)
		for _, p := range l.Purchases {
			for _, share := range p.Shares {
				for _, q := range share.Parts {
					if q.Item != share.Parts[0].Item {
						// Sizes may differ, here there are none.
						t.Errorf("%+v: %v and %v in one room", s, q, share.Parts[0])
					}
				}
			}
		}
	}
	c.Check(t, "553413 b1add96043290f6a")
}
