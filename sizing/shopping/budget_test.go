package shopping

import (
	"errors"
	"math/big"
	"slices"
	"strconv"
	"testing"

	"example.com/fircone/units"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// TestFullestIsLeximin holds Fullest against every combination of counts: the
// fullness of all items, sorted, is compared from the least full on, and then the cost.
func TestFullestIsLeximin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var s Shop
		var choices []Need
		for i := range rapid.IntRange(1, 4).Draw(t, "items") {
			item := Item{Kind: Ornament, Type: "type " + strconv.Itoa(i)}
			for j := range rapid.IntRange(1, 2).Draw(t, "offers") {
				o := Offer{
					Item: item, Name: strconv.Itoa(j),
					Pack:  Quantity{Pieces: rapid.IntRange(1, 4).Draw(t, "pack")},
					Price: decimal.New(rapid.Int64Range(0, 20).Draw(t, "price"), -1),
				}
				if rapid.IntRange(0, 3).Draw(t, "limited") == 0 {
					o.Shelf = onShelf(rapid.IntRange(0, 4).Draw(t, "left"))
				}
				s.Offers = append(s.Offers, o)
			}
			if rapid.Bool().Draw(t, "owned") {
				s.Owned = append(s.Owned, Lot{Item: item, Quantity: Quantity{Pieces: rapid.IntRange(0, 3).Draw(t, "owns")}})
			}
			c := Need{Item: item, Quantity: Quantity{Pieces: rapid.IntRange(0, 5).Draw(t, "fewest")}}
			c.Open = units.Range[int]{Min: c.Quantity.Pieces, Max: c.Quantity.Pieces + rapid.IntRange(0, 6).Draw(t, "span")}
			choices = append(choices, c)
		}
		s.Budget = decimal.New(rapid.Int64Range(0, 120).Draw(t, "budget"), -1)

		// Brute force, with the cost of each count from Cheapest.
		type outcome struct {
			levels []*big.Rat
			cost   decimal.Decimal
		}
		better := func(a, b *outcome) bool {
			if b == nil {
				return true
			}
			if c := slices.CompareFunc(a.levels, b.levels, (*big.Rat).Cmp); c != 0 {
				return c > 0
			}
			return a.cost.LessThan(b.cost)
		}
		var best *outcome
		least := decimal.NewFromInt(0)
		short := false
		cost := func(c Need, n int) (decimal.Decimal, bool) {
			need := c
			need.Quantity.Pieces, need.Open = n, units.Range[int]{}
			p, err := s.Cheapest(need)
			return p.Cost, err == nil && p.Shares[0].Short() == Quantity{}
		}
		for _, c := range choices {
			d, ok := cost(c, c.Quantity.Pieces)
			least, short = least.Add(d), short || !ok
		}
		var walk func(i int, o outcome)
		walk = func(i int, o outcome) {
			if i == len(choices) {
				slices.SortFunc(o.levels, (*big.Rat).Cmp)
				if better(&o, best) {
					best = &o
				}
				return
			}
			c := choices[i]
			fewest := c.Quantity.Pieces
			for n := fewest; n <= max(fewest, c.Open.Max); n++ {
				d, ok := cost(c, n)
				d = d.Add(o.cost)
				if !ok || d.GreaterThan(s.Budget) {
					break
				}
				level := big.NewRat(1, 1)
				if c.Open.Max > fewest {
					level = big.NewRat(int64(n-fewest), int64(c.Open.Max-fewest))
				}
				walk(i+1, outcome{append(slices.Clone(o.levels), level), d})
			}
		}
		walk(0, outcome{})

		got, err := s.Fullest(choices)
		switch {
		case short:
			if err != nil || got.Short() == nil {
				t.Fatalf("got %v, %v, and the shelves are short", got, err)
			}
			return
		case best == nil:
			if err != nil || !got.Least.Equal(least) || got.Total.GreaterThan(s.Budget) {
				t.Fatalf("got %v for %v, %v, want no more than %v and %v", got, got.Total, err, s.Budget, least)
			}
			return
		case err != nil:
			t.Fatal(err)
		}
		var levels []*big.Rat
		for i, p := range got.Purchases {
			c := choices[i]
			fewest := c.Quantity.Pieces
			level := big.NewRat(1, 1)
			if c.Open.Max > fewest {
				level = big.NewRat(int64(p.Shares[0].Gets.Pieces-fewest), int64(c.Open.Max-fewest))
			}
			levels = append(levels, level)
		}
		slices.SortFunc(levels, (*big.Rat).Cmp)
		if slices.CompareFunc(levels, best.levels, (*big.Rat).Cmp) != 0 || !got.Total.Equal(best.cost) {
			t.Fatalf("got %v for %v, want %v for %v", levels, got.Total, best.levels, best.cost)
		}
	})
}

func TestBasisOfOpenNeed(t *testing.T) {
	s := Shop{Offers: []Offer{
		{Item: Item{Kind: Bell}, Name: "bell", Pack: Quantity{Pieces: 1}, Price: decimal.NewFromInt(0)},
		{Item: Item{Kind: Ribbon, Type: "reel"}, Name: "reel", Pack: Quantity{Length: 1}, Price: decimal.NewFromInt(0)},
	}}
	choice := func(item Item) []Need {
		return []Need{{Item: item, Quantity: Quantity{Pieces: 5}, Open: units.Range[int]{Min: 5, Max: 9}, Basis: "7 ft less 2"}}
	}
	l, err := s.Fullest(choice(Item{Kind: Bell}))
	if err != nil || l.Purchases[0].Shares[0].Basis != "7 ft less 2; 9 of 5 to 9" {
		t.Errorf("got %v, %v", l.Purchases, err)
	}
	s.Offers[0].Shelf = 8
	l, err = s.Fullest(choice(Item{Kind: Bell}))
	if err != nil || l.Purchases[0].Shares[0].Quantity.Pieces != 8 {
		t.Errorf("got %v, %v, want no more than are left", l.Purchases, err)
	}
	if _, err := s.Fullest(choice(Item{Kind: Ribbon, Type: "reel"})); !errors.Is(err, units.ErrFit) {
		t.Errorf("got %v, want units.ErrFit", err)
	}
}

// onShelf returns a shelf with n packs, and packsOn how many there are on one that is known.
func onShelf(n int) Shelf {
	if n == 0 {
		return SoldOut
	}
	return Shelf(n)
}
