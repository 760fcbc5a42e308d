package shopping

import (
	"errors"
	"strconv"
	"testing"

	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// Where the shelves are short, what there is comes from the store with a fee too. By hand: 1 at 1.00 nearby, and 40 at 1.00 with a
// delivery of 5.00.
func TestShortBesideAFee(t *testing.T) {
	ball := Item{Kind: Ornament}
	s := Shop{
		Offers: []Offer{
			{Item: ball, Name: "near", Pack: Quantity{Pieces: 1}, Price: decimal.NewFromInt(1), Shelf: 1},
			{Item: ball, Name: "far", Pack: Quantity{Pieces: 1}, Price: decimal.NewFromInt(1), Shelf: 40, Store: "far"},
		},
		Stores: []Store{{Name: "far", Delivery: decimal.NewFromInt(5)}},
	}
	l, err := s.List([]Need{{Item: ball, Quantity: Quantity{Pieces: 49}}})
	if err != nil || l.Purchases[0].Shares[0].Gets.Pieces != 41 || l.Total.String() != "46" {
		t.Errorf("%v, %v", l, err)
	}
}

// What deliveries and tax leave for the goods is spent, by hand.
func TestBudgetWithFees(t *testing.T) {
	crimson, gold := Item{Kind: Ornament, Color: "crimson"}, Item{Kind: Ornament, Color: "gold"}
	need := func(i Item, least, planned, most int) Need {
		return Need{Item: i, Quantity: Quantity{Pieces: planned}, Open: units.Range[int]{Min: least, Max: most}}
	}
	far := func(i Item, pack int, dollars int64) Offer {
		return Offer{Item: i, Name: "far " + i.Color, Pack: Quantity{Pieces: pack}, Price: decimal.NewFromInt(dollars), Store: "far"}
	}
	for _, row := range []struct {
		name   string
		shop   Shop
		needs  []Need
		budget int64
		want   []int
		total  string
	}{
		// 50 at 1.00 and a fifth are 60.
		{"tax", Shop{Offers: []Offer{far(crimson, 1, 1)}, Stores: []Store{{Name: "far", Tax: decimal.NewFromInt(20)}}}, []Need{need(crimson, 35, 49, 63)}, 60, []int{50}, "60"},
		// Two sets, eight balls and 41 are 169, and one set, nine balls and 41 are 110.
		{"lumps", Shop{Offers: []Offer{far(crimson, 10, 60), far(gold, 1, 1)}, Stores: []Store{{Name: "far", Delivery: decimal.NewFromInt(41)}}}, []Need{need(crimson, 10, 15, 20), need(gold, 5, 7, 9)}, 169, []int{20, 8}, "169"},
		{"a set too few", Shop{Offers: []Offer{far(crimson, 10, 60), far(gold, 1, 1)}, Stores: []Store{{Name: "far", Delivery: decimal.NewFromInt(41)}}}, []Need{need(crimson, 10, 15, 20), need(gold, 5, 7, 9)}, 160, []int{10, 9}, "110"},
		// The delivery alone is over the budget, and the fewest halvings of a price of a hundredth of a cent do not come to nothing.
		{"a hundredth of a cent", Shop{Offers: []Offer{{Item: crimson, Name: "far", Pack: Quantity{Pieces: 1}, Price: decimal.New(1, -4), Store: "far"}}, Stores: []Store{{Name: "far", Delivery: decimal.NewFromInt(2)}}}, []Need{need(crimson, 8000, 8500, 9000)}, 1, []int{0}, "0"},
		// A set and 41 are 101: what is owned hangs, and gold is had nearby.
		{"poor", Shop{
			Offers: []Offer{far(crimson, 10, 60), {Item: gold, Name: "near", Pack: Quantity{Pieces: 1}, Price: decimal.NewFromInt(1)}},
			Owned:  []Lot{{crimson, Quantity{Pieces: 5}}, {gold, Quantity{Pieces: 2}}}, Stores: []Store{{Name: "far", Delivery: decimal.NewFromInt(41)}},
		}, []Need{need(crimson, 10, 15, 20), need(gold, 5, 7, 9)}, 100, []int{5, 5}, "3"},
	} {
		row.shop.Budget = decimal.NewFromInt(row.budget)
		l, err := row.shop.Fullest(row.needs)
		if err != nil {
			t.Fatal(err)
		}
		for i, want := range row.want {
			if got := l.Purchases[i].Shares[0].Gets.Pieces; got != want || l.Total.String() != row.total {
				t.Errorf("%s: %d of %v for %v, want %d for %s", row.name, got, row.needs[i], l.Total, want, row.total)
			}
		}
	}
}

// What is owned hangs beside what is sold out, however little money there is: the least, 7 of 10.
func TestOwnedBesideSoldOut(t *testing.T) {
	ball := func(inches units.Length) Item { return Item{Kind: Ornament, Color: "crimson", Size: inches / 2} }
	s := Shop{Owned: []Lot{{ball(0), Quantity{Pieces: 10}}}, Budget: decimal.New(1, -2)}
	big, small := ball(4*units.Inch), ball(3*units.Inch)
	big.Type, small.Type = "star", "bird"
	s.Offers = []Offer{{Item: big, Name: "big", Pack: Quantity{Pieces: 24}, Price: decimal.NewFromInt(26)}, {Item: small, Name: "small", Pack: Quantity{Pieces: 4}, Price: decimal.NewFromInt(4)}}
	s.Offers[0].Shelf = SoldOut
	need := func(size units.Length, least, planned, most int) Need {
		return Need{Item: ball(size), Quantity: Quantity{Pieces: planned}, Open: units.Range[int]{Min: least, Max: most}}
	}
	l, err := s.Fullest([]Need{need(0, 7, 10, 11), need(3*units.Inch, 6, 10, 14), need(4*units.Inch, 28, 36, 44)})
	if err != nil || !l.Total.IsZero() {
		t.Fatalf("%v, %v", l, err)
	}
	gets := 0
	for _, p := range l.Purchases {
		for _, share := range p.Shares {
			gets += share.Gets.Pieces
		}
	}
	if gets < 7 {
		t.Errorf("%d hang of 10 owned: %v", gets, l)
	}
}

// Where the steps are spent before what is left beside a delivery is found, it stays at what was found, or at the fewest.
func TestStepsSpentBesideAFee(t *testing.T) {
	crimson := Item{Kind: Ornament, Color: "crimson"}
	s := Shop{Budget: decimal.NewFromInt(200), Stores: []Store{{Name: "far", Delivery: decimal.NewFromInt(30), Tax: decimal.NewFromInt(7)}}}
	for i, n := range []int{7, 11, 12} {
		s.Offers = append(s.Offers, Offer{Item: crimson, Name: strconv.Itoa(n), Pack: Quantity{Pieces: n}, Price: decimal.New(int64(433*n+i), -2).Div(decimal.NewFromInt(4)).Round(2), Store: "far"})
	}
	needs := []Need{{Item: crimson, Quantity: Quantity{Pieces: 100}, Open: units.Range[int]{Min: 50, Max: 250}}}
	fewest, err := s.List([]Need{{Item: crimson, Quantity: Quantity{Pieces: 50}}})
	if err != nil {
		t.Fatal(err)
	}
	spent, got := 0, map[int]int{}
	for work := int64(10); work < 100_000; work += 1 + work/20 {
		c := newChecker("Shop.Fullest")
		f, err := s.filling(c, needs)
		if err != nil {
			t.Fatal(err)
		}
		c.work = work
		l, err := f.within(c, price(s.Budget), fewest, false)
		switch {
		case errors.Is(err, units.ErrLimit):
			spent++
		case err != nil || l.Total.GreaterThan(s.Budget):
			t.Fatalf("%d steps: %v, %v", work, l.Total, err)
		default:
			got[l.Purchases[0].Shares[0].Gets.Pieces]++
		}
	}
	// By hand: 12 boxes of 12 at 13.00 and the delivery are 186.00, with tax 199.02, and no pack gives a piece for less than 1.08.
	if best := 144; spent == 0 || len(got) < 2 || got[best] == 0 {
		t.Errorf("%d spent, %v", spent, got)
	}
}
