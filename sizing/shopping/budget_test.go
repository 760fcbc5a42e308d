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

// With too little money what is owned hangs, and is counted. By hand: a run of 20 ft takes a strand of 9 ft beside one of 12 ft
// that is owned, which costs too much; so 12 ft hang, and the other 9 ft of another color are what is left for the mantel of 5 ft.
func TestOwnedHangsWithoutMoney(t *testing.T) {
	item := Item{Kind: Garland, Color: "green"}
	red := Item{Kind: Garland, Color: "red"}
	s := Shop{
		Offers: []Offer{{Item: item, Name: "9 ft", Pack: Quantity{Length: 9 * units.Foot}, Price: decimal.NewFromInt(9)}},
		Owned: []Lot{
			{item, Quantity{Pieces: 1, Length: 12 * units.Foot}}, {red, Quantity{Pieces: 1, Length: 9 * units.Foot}}, {Item{Kind: Pick}, Quantity{Pieces: 2}},
		},
		Budget: decimal.NewFromInt(8),
	}
	run := func(i Item, feet units.Length) Need {
		return Need{Item: i, Room: "hall", Quantity: Quantity{Length: feet * units.Foot}}
	}
	needs := []Need{{Item: Item{Kind: Pick}, Quantity: Quantity{Pieces: 3}}, run(item, 20), run(Item{Kind: Garland, Color: "red"}, 5), run(Item{Kind: Ribbon}, 5), run(Item{Kind: Garland, Type: "none"}, 5)}
	l, err := s.Fullest(needs)
	if err != nil {
		t.Fatal(err)
	}
	gets := map[Item]Quantity{}
	owned, there := map[Item]units.Length{}, map[Item]units.Length{}
	for _, p := range l.Purchases {
		for _, share := range p.Shares {
			gets[share.Item] = share.Gets
			if share.Quantity != needs[slices.IndexFunc(needs, func(n Need) bool { return n.Item == share.Item })].Quantity {
				t.Errorf("planned is %v", share.Need)
			}
		}
		for _, o := range p.Owned {
			owned[o.Item] += units.Length(o.Quantity.Pieces) * o.Quantity.Length
		}
		for _, c := range p.Cuts {
			there[c.Pieces[0].Item] += units.Length(c.Rolls) * (c.Roll - c.left())
		}
		for _, o := range p.Left {
			there[o.Item] += units.Length(o.Quantity.Pieces) * o.Quantity.Length
		}
	}
	if gets[item].Length != 12*units.Foot || gets[red].Length != 5*units.Foot || gets[Item{Kind: Ribbon}] != (Quantity{}) || gets[Item{Kind: Pick}].Pieces != 2 || !l.Total.IsZero() {
		t.Errorf("%v, for %v", gets, l.Total)
	}
	if owned[item] != 12*units.Foot || owned[red] != 9*units.Foot || there[item] != owned[item] || there[red] != owned[red] {
		t.Errorf("owned %v, hung and left %v", owned, there)
	}
	// Where the steps are spent the error says so.
	cut := func(feet units.Length) Need {
		return Need{Item: item, Quantity: Quantity{Pieces: 1, Length: feet * units.Foot}}
	}
	c := newChecker("Shop.Fullest")
	f, err := s.filling(c, []Need{cut(2), cut(3)})
	if err != nil {
		t.Fatal(err)
	}
	c.work = 0
	if err := f.owned(c, &located{at: make([]place, 2)}, []int64{-1}); !errors.Is(err, units.ErrLimit) {
		t.Errorf("got %v, want units.ErrLimit", err)
	}
}

// With too little money base garland and its hooks come first, whole or not at all. By hand: garland of 6 ft costs 10, hooks 3 a
// pair of which 2 pairs are needed, and picks 1 each.
func TestGarlandFirst(t *testing.T) {
	s := Shop{Offers: []Offer{
		{Item: Item{Kind: Pick}, Name: "pick", Pack: Quantity{Pieces: 1}, Price: decimal.NewFromInt(1)},
		{Item: Item{Kind: Hook}, Name: "pair", Pack: Quantity{Pieces: 2}, Price: decimal.NewFromInt(3)},
		{Item: Item{Kind: BaseGarland}, Name: "6 ft", Pack: Quantity{Length: 6 * units.Foot}, Price: decimal.NewFromInt(10)},
	}}
	needs := []Need{
		{Item: Item{Kind: Pick}, Quantity: Quantity{Pieces: 20}},
		{Item: Item{Kind: Hook}, Quantity: Quantity{Pieces: 4}},
		{Item: Item{Kind: BaseGarland}, Quantity: Quantity{Length: 6 * units.Foot}},
	}
	for _, row := range []struct {
		budget       int64
		owned        int // hooks
		picks, hooks int
		feet         units.Length
	}{
		{35, 0, 19, 4, 6},
		{17, 0, 1, 4, 6},
		{16, 0, 0, 4, 6},
		{15, 0, 5, 0, 6},
		{15, 1, 5, 1, 6}, // 3 more hooks are 2 pairs
		{15, 2, 2, 4, 6},
		{9, 0, 3, 4, 0},
		{5, 0, 5, 0, 0},
	} {
		s.Budget = decimal.NewFromInt(row.budget)
		s.Owned = []Lot{{Item{Kind: Hook}, Quantity{Pieces: row.owned}}}
		l, err := s.Fullest(needs)
		if err != nil {
			t.Fatal(err)
		}
		got := ByKind[Quantity]{}
		for _, p := range l.Purchases {
			got[p.Shares[0].Item.Kind] = p.Shares[0].Gets
		}
		if got[Pick].Pieces != row.picks || got[Hook].Pieces != row.hooks || got[BaseGarland].Length != row.feet*units.Foot {
			t.Errorf("for %d with %d hooks owned: %v", row.budget, row.owned, got)
		}
	}
}
