package shopping_test

import (
	"errors"
	"strconv"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// What is as much as a shop or a need may have is taken, and one more is refused.
func TestAtTheLimits(t *testing.T) {
	ball := shopping.Item{Kind: shopping.Ornament, Size: 2 * units.Inch}
	need := func(change func(*shopping.Need)) func() (shopping.Shop, []shopping.Need) {
		return func() (shopping.Shop, []shopping.Need) {
			n := shopping.Need{Item: ball, Quantity: pieces(1)}
			change(&n)
			return shopping.Shop{}, []shopping.Need{n}
		}
	}
	offered := func(change func(*shopping.Offer)) func() (shopping.Shop, []shopping.Need) {
		return func() (shopping.Shop, []shopping.Need) { return with(change), nil }
	}
	stores := func(n int) func() (shopping.Shop, []shopping.Need) {
		return func() (s shopping.Shop, needs []shopping.Need) {
			for i := range n {
				s.Stores = append(s.Stores, shopping.Store{Name: strconv.Itoa(i)})
			}
			return s, nil
		}
	}
	contents := func(n int) func(*shopping.Offer) {
		return func(o *shopping.Offer) {
			o.Item, o.Pack = shopping.Item{}, shopping.Quantity{}
			for i := range n {
				o.Contents = append(o.Contents, shopping.Lot{Item: shopping.Item{Kind: shopping.Pick, Type: strconv.Itoa(i)}, Quantity: pieces(1)})
			}
		}
	}
	deals := func(n int) func(*shopping.Offer) {
		return func(o *shopping.Offer) {
			o.Price = cents(100)
			for i := range n {
				o.Deals = append(o.Deals, shopping.Deal{Packs: 2 + i, Price: cents(int64(199 + 100*i))})
			}
		}
	}
	owned := func(n int) func() (shopping.Shop, []shopping.Need) {
		return func() (shopping.Shop, []shopping.Need) {
			s := shopping.Shop{}
			for ; n > 0; n -= 1_000_000 {
				s.Owned = append(s.Owned, shopping.Lot{Item: ball, Quantity: pieces(min(n, 1_000_000))})
			}
			return s, []shopping.Need{{Item: ball, Quantity: pieces(1)}}
		}
	}
	together := func(red int) func() (shopping.Shop, []shopping.Need) {
		return func() (shopping.Shop, []shopping.Need) {
			ball := func(color string, n int) shopping.Lot {
				return shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Color: color}, Quantity: pieces(n)}
			}
			box := shopping.Offer{Name: "box", Contents: []shopping.Lot{ball("red", 500_000), ball("blue", 500_000)}, Price: cents(100)}
			return shopping.Shop{Offers: []shopping.Offer{box}}, []shopping.Need{
				{Item: ball("red", 0).Item, Quantity: pieces(red)}, {Item: ball("blue", 0).Item, Quantity: pieces(500_000)},
			}
		}
	}
	shortest := func(l units.Length) func() (shopping.Shop, []shopping.Need) {
		return func() (shopping.Shop, []shopping.Need) {
			return shopping.Shop{Joins: map[shopping.Item]shopping.Join{{Kind: shopping.Garland}: {Shortest: l, Overlap: l}}}, nil
		}
	}
	for _, row := range []struct {
		reason string
		in     func() (shopping.Shop, []shopping.Need)
		ok     bool
	}{
		{"one size", need(func(n *shopping.Need) { n.MaxSize = 2 * units.Inch }), true},
		{"no size", need(func(n *shopping.Need) { n.MaxSize = 2*units.Inch - 1 }), false},
		{"100 ft", need(func(n *shopping.Need) { n.MaxSize = 100 * units.Foot }), true},
		{"over 100 ft", need(func(n *shopping.Need) { n.MaxSize = 100*units.Foot + 1 }), false},
		{"substitutes of one size", need(func(n *shopping.Need) { n.Instead = []shopping.Need{{Item: ball, MaxSize: 2 * units.Inch}} }), true},
		{"substitutes of no size", need(func(n *shopping.Need) { n.Instead = []shopping.Need{{Item: ball, MaxSize: 2*units.Inch - 1}} }), false},
		{"substitutes to 100 ft", need(func(n *shopping.Need) { n.Instead = []shopping.Need{{Item: ball, MaxSize: 100 * units.Foot}} }), true},
		{"substitutes over 100 ft", need(func(n *shopping.Need) { n.Instead = []shopping.Need{{Item: ball, MaxSize: 100*units.Foot + 1}} }), false},
		{"8 substitutes", need(func(n *shopping.Need) {
			for i := range 8 {
				n.Instead = append(n.Instead, shopping.Need{Item: shopping.Item{Kind: shopping.Pick, Type: strconv.Itoa(i)}})
			}
		}), true},
		{"slack of a nanometer less than the length", need(func(n *shopping.Need) {
			n.Item, n.Quantity, n.Slack = shopping.Item{Kind: shopping.Garland}, ofLength(0, units.Foot), units.Foot-1
		}), true},
		{"slack of the length", need(func(n *shopping.Need) {
			n.Item, n.Quantity, n.Slack = shopping.Item{Kind: shopping.Garland}, ofLength(0, units.Foot), units.Foot
		}), false},
		{"1,000,000 of each type", need(func(n *shopping.Need) { n.Types, n.Each = 1, units.Range[int]{Min: 1, Max: 1_000_000} }), true},
		{"1,000,001 of each type", need(func(n *shopping.Need) { n.Types, n.Each = 1, units.Range[int]{Min: 1, Max: 1_000_001} }), false},
		{"1,000,000 in a box", offered(func(o *shopping.Offer) {
			contents(2)(o)
			o.Contents[0].Quantity.Pieces = 999_999
		}), true},
		{"1,000,001 in a box", offered(func(o *shopping.Offer) {
			contents(2)(o)
			o.Contents[0].Quantity.Pieces = 1_000_000
		}), false},
		{"1,000,000 of one thing in a box", offered(func(o *shopping.Offer) {
			contents(1)(o)
			o.Contents[0].Quantity.Pieces = 1_000_000
		}), true},
		{"a bundle of 1000", offered(func(o *shopping.Offer) {
			o.Price, o.Deals = cents(100), []shopping.Deal{{Packs: 1000, Price: cents(100)}}
		}), true},
		{"a bundle of 1001", offered(func(o *shopping.Offer) {
			o.Price, o.Deals = cents(100), []shopping.Deal{{Packs: 1001, Price: cents(100)}}
		}), false},
		{"from 1000", offered(func(o *shopping.Offer) {
			o.Price, o.Deals = cents(100), []shopping.Deal{{From: 1000, Price: cents(50)}}
		}), true},
		{"from 1001", offered(func(o *shopping.Offer) {
			o.Price, o.Deals = cents(100), []shopping.Deal{{From: 1001, Price: cents(50)}}
		}), false},
		{"1,000,000,000 owned", owned(1_000_000_000), true},
		{"1,000,000,001 owned", owned(1_000_000_001), false},
		{"1,001,000,000 strands owned", func() (shopping.Shop, []shopping.Need) {
			s, _ := owned(1_001_000_000)()
			for i := range s.Owned {
				s.Owned[i].Item, s.Owned[i].Quantity.Length = shopping.Item{Kind: shopping.Garland}, units.Foot
			}
			return s, []shopping.Need{garland(units.Foot)}
		}, true},
		{"1,000,000 bought together", together(500_000), true},
		{"1,000,001 bought together", together(500_001), false},
		{"8 stores", stores(8), true},
		{"9 stores", stores(9), false},
		{"64 things in a box", offered(contents(64)), true},
		{"65 things in a box", offered(contents(65)), false},
		{"8 deals", offered(deals(8)), true},
		{"9 deals", offered(deals(9)), false},
		{"pieces of 1 km, joined by as much", shortest(units.Length(1000 * units.Meter)), true},
		{"over 1 km", shortest(units.Length(1000*units.Meter) + 1), false},
	} {
		s, needs := row.in()
		if _, err := s.List(needs); (err == nil) != row.ok || err != nil && !errors.Is(err, units.ErrRange) {
			t.Errorf("%s: %v", row.reason, err)
		}
	}
}

// Of many packs too the deals give the least price: 5 for 4.00, so that 4003 packs are 800 times that and 3 at 1.00; and of two
// bundles the better one is taken as often as it goes. The reference tries every last bundle of every number.
func TestDealsOfMany(t *testing.T) {
	for _, row := range []struct {
		n     int
		deals []shopping.Deal
		want  string
	}{
		{4003, []shopping.Deal{{Packs: 5, Price: cents(400)}}, "3203"},
		{4004, []shopping.Deal{{Packs: 5, Price: cents(400)}}, "3204"},
		{4005, []shopping.Deal{{Packs: 5, Price: cents(400)}}, "3204"},
		{12_001, []shopping.Deal{{Packs: 3, Price: cents(270)}, {Packs: 10, Price: cents(700)}}, ""},
		{12_001, []shopping.Deal{{Packs: 10, Price: cents(700)}, {Packs: 3, Price: cents(270)}}, ""},
		{9_999, []shopping.Deal{{Packs: 7, Price: cents(630)}, {Packs: 4, Price: cents(300)}, {Packs: 6, Price: cents(480)}}, ""},
	} {
		least := make([]int64, row.n+1) // in cents
		for k := 1; k <= row.n; k++ {
			least[k] = least[k-1] + 100
			for _, d := range row.deals {
				if k >= d.Packs {
					least[k] = min(least[k], least[k-d.Packs]+d.Price.Shift(2).IntPart())
				}
			}
		}
		want := decimal.New(least[row.n], -2)
		if row.want != "" && want.String() != row.want {
			t.Fatalf("the reference has %v for %d", want, row.n)
		}
		s := with(func(o *shopping.Offer) { o.Pack, o.Price, o.Deals = pieces(1), cents(100), row.deals })
		p, err := s.Cheapest(picks(row.n))
		if err != nil || !p.Cost.Equal(want) {
			t.Errorf("%d of %v: %v, %v, want %v", row.n, row.deals, p.Cost, err, want)
		}
	}
}

// What a substitute stands for counts: by hand, 4 and 7 of 12 will do where 11 are the least.
func TestEnoughWithSubstitutes(t *testing.T) {
	s := shopping.Share{Need: shopping.Need{Quantity: pieces(12), Open: units.Range[int]{Min: 11, Max: 12}}, Gets: pieces(4), Replaced: pieces(7)}
	if !s.Enough() {
		t.Error("4 and 7 are not enough")
	}
	if s.Replaced = pieces(6); s.Enough() {
		t.Error("4 and 6 are enough")
	}
}

// What the budget allows beyond the least is shared out by how open each room is. By hand, at 1.00 a piece: 10 to 20 and 2 to 7
// begin with 12; of 9 more 6 go where 10 are open and 3 where 5 are.
func TestRestByHowOpen(t *testing.T) {
	s := with(func(o *shopping.Offer) { o.Pack, o.Price = pieces(1), cents(100) })
	s.Budget = cents(2500)
	hall, tea, stairs := picks(20), picks(7), picks(4) // on the stairs nothing is open
	hall.Room, hall.Open = "hall", units.Range[int]{Min: 10, Max: 20}
	tea.Room, tea.Open = "tea room", units.Range[int]{Min: 2, Max: 7}
	l, err := s.Fullest([]shopping.Need{hall, tea, stairs})
	if err != nil {
		t.Fatal(err)
	}
	if shares := l.Purchases[0].Shares; shares[0].Gets.Pieces != 16 || shares[1].Gets.Pieces != 5 || shares[2].Gets.Pieces != 4 || shares[2].Open != (units.Range[int]{}) {
		t.Errorf("%v", l)
	}
	// Two types of 3 to 5 stay two types: 5 at 1.00 and 5 at 2.00, though 10 of the one cost less.
	s.Offers = nil
	for name, price := range map[string]int64{"star": 100, "bell": 200} {
		s.Offers = append(s.Offers, shopping.Offer{Item: shopping.Item{Kind: shopping.Ornament, Type: name}, Name: name, Pack: pieces(1), Price: cents(price)})
	}
	n := shopping.Need{
		Item: shopping.Item{Kind: shopping.Ornament}, Quantity: pieces(8),
		Open: units.Range[int]{Min: 6, Max: 10}, Types: 2, Each: units.Range[int]{Min: 3, Max: 5},
	}
	if l, err = s.Fullest([]shopping.Need{n}); err != nil || !l.Total.Equal(cents(1500)) || len(l.Purchases[0].Shares[0].Parts) != 2 {
		t.Errorf("%v, %v", l, err)
	}
}
