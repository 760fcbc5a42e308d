package shopping_test

import (
	"slices"
	"strconv"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// Two rooms of 6 ft each take a strand of 6 ft each, with nothing to join.
func TestRunsOfTheirOwn(t *testing.T) {
	shop := shopping.Shop{
		Offers: []shopping.Offer{{Item: shopping.Item{Kind: shopping.Garland}, Name: "6 ft", Pack: ofLength(0, 6*units.Foot), Price: cents(750)}},
		Joins:  map[shopping.Item]shopping.Join{{Kind: shopping.Garland}: {Overlap: 2 * units.Inch}},
	}
	for _, tt := range []struct {
		rooms   []units.Length // ft
		owned   int
		left    int
		packs   int
		surplus units.Length
	}{
		{rooms: []units.Length{6, 6}, packs: 2},
		{rooms: []units.Length{6, 6, 6, 6}, packs: 4},
		{rooms: []units.Length{6, 6}, packs: 2, left: 2},
		{rooms: []units.Length{6, 6}, owned: 1, packs: 1},
		{rooms: []units.Length{6, 6}, owned: 2},
		// 3 + 3 of one strand need a join less than 9 + 3; 9 + 9 needs three strands
		// and a cut, which is 18 ft less 4 in, so four: two are whole, and 3 ft 2 in are cut off each of the others.
		{rooms: []units.Length{3, 3}, packs: 1},
		{rooms: []units.Length{9, 9}, packs: 4, surplus: 6*units.Foot - 4*units.Inch},
		{rooms: []units.Length{6, 3, 3}, packs: 2},
		{rooms: []units.Length{6, 5}, packs: 2, surplus: units.Foot},
	} {
		shop.Offers[0].Shelf = 0
		if tt.left > 0 {
			shop.Offers[0].Shelf = onShelf(tt.left)
		}
		shop.Owned = []shopping.Lot{{Item: shopping.Item{Kind: shopping.Garland}, Quantity: ofLength(tt.owned, 6*units.Foot)}}
		if tt.owned == 0 {
			shop.Owned = nil
		}
		var needs []shopping.Need
		for _, l := range tt.rooms {
			needs = append(needs, garland(l*units.Foot))
		}
		p, err := shop.Cheapest(needs...)
		if got := packs(shop, p)[0]; err != nil || got != tt.packs || shopping.Surplus(p.Left).Length != tt.surplus || !p.Bound.Equal(p.Cost) {
			t.Errorf("%v: got %d packs, %v over, %v, want %d, %v", tt.rooms, got, shopping.Surplus(p.Left), err, tt.packs, tt.surplus)
		}
	}
}

// hangs reports whether the strands hang all runs, by doing it: the runs are hung
// one after another, in every order, each from whole strands and remnants in every
// order, and the last of them is cut where the run ends.
func hangs(strands, runs []int, overlap int) bool {
	seen := make(map[string]bool)
	var hang func(strands, runs []int, done int) bool
	hang = func(strands, runs []int, done int) bool {
		slices.Sort(strands)
		state := ""
		for _, n := range slices.Concat(strands, []int{-1}, runs, []int{-1, done}) {
			state += strconv.Itoa(n) + " "
		}
		if seen[state] {
			return false
		}
		seen[state] = true
		if len(runs) == 0 {
			return true
		}
		if done == 0 {
			for i := range runs {
				// The run that is hung now is the first.
				order := slices.Concat(runs[i:i+1], runs[:i], runs[i+1:])
				for j := range strands {
					if start(strands, j, order, 0, hang) {
						return true
					}
				}
			}
			return false
		}
		for j := range strands {
			if strands[j] > overlap && start(strands, j, runs, done-overlap, hang) {
				return true
			}
		}
		return false
	}
	return hang(slices.Clone(strands), runs, 0)
}

// start joins strand j to what is done of the first run.
func start(strands []int, j int, runs []int, done int, hang func(strands, runs []int, done int) bool) bool {
	rest := slices.Delete(slices.Clone(strands), j, j+1)
	if done += strands[j]; done < runs[0] {
		return hang(rest, runs, done)
	}
	if over := done - runs[0]; over > 0 {
		rest = append(rest, over)
	}
	return hang(rest, runs[1:], 0)
}

// TestRunsAreBest holds the strands for several rooms against every choice of
// packs, each tried by hanging it; and a list against lists for one room after the other.
func TestRunsAreBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		overlap := rapid.IntRange(1, 3).Draw(t, "overlap")
		runs := rapid.SliceOfN(rapid.IntRange(4, 14), 2, 3).Draw(t, "runs")
		s := shopping.Shop{Joins: map[shopping.Item]shopping.Join{{Kind: shopping.Garland}: {Overlap: units.Length(overlap) * units.Inch}}}
		for i := range rapid.IntRange(1, 3).Draw(t, "offers") {
			o := shopping.Offer{
				Item: shopping.Item{Kind: shopping.Garland}, Name: strconv.Itoa(i),
				Pack:  ofLength(rapid.IntRange(0, 2).Draw(t, "strands"), units.Length(rapid.IntRange(5, 12).Draw(t, "length"))*units.Inch),
				Price: cents(rapid.Int64Range(0, 9).Draw(t, "price")),
			}
			if rapid.Bool().Draw(t, "limited") {
				o.Shelf = onShelf(rapid.IntRange(0, 3).Draw(t, "left"))
			}
			s.Offers = append(s.Offers, o)
		}
		if rapid.Bool().Draw(t, "owned") {
			s.Owned = []shopping.Lot{{Item: shopping.Item{Kind: shopping.Garland}, Quantity: ofLength(rapid.IntRange(1, 2).Draw(t, "owns"), units.Length(rapid.IntRange(4, 12).Draw(t, "of"))*units.Inch)}}
		}
		var needs []shopping.Need
		for _, l := range runs {
			needs = append(needs, garland(units.Length(l)*units.Inch))
		}
		in := func(l units.Length) int { return int(l / units.Inch) }
		add := func(strands []int, q shopping.Quantity, times int) []int {
			for range times * max(1, q.Pieces) {
				strands = append(strands, in(q.Length))
			}
			return strands
		}
		var best []int
		var bestKey [3]int
		counts := make([]int, len(s.Offers))
		var walk func(i int, strands []int, key [3]int)
		walk = func(i int, strands []int, key [3]int) {
			if best != nil && key[0] > bestKey[0] || len(strands) > 6 {
				return
			}
			if i == len(s.Offers) {
				if (best == nil || slices.Compare(key[:], bestKey[:]) < 0) && hangs(strands, runs, overlap) {
					best, bestKey = slices.Clone(counts), key
				}
				return
			}
			o := s.Offers[i]
			most := 6
			if o.Shelf != 0 {
				most = packsOn(o.Shelf)
			}
			for n := most; n >= 0; n-- {
				counts[i] = n
				size := max(1, o.Pack.Pieces) * (in(o.Pack.Length) - overlap)
				walk(i+1, add(slices.Clip(strands), o.Pack, n), [3]int{key[0] + n*int(o.Price.Shift(2).IntPart()), key[1] + n*size, key[2] + n})
			}
			counts[i] = 0
		}
		var owned []int
		for _, o := range s.Owned {
			owned = add(owned, o.Quantity, 1)
		}
		walk(0, owned, [3]int{})
		p, err := s.Cheapest(needs...)
		if short := (shopping.List{Purchases: []shopping.Purchase{p}}).Short(); err != nil || short != nil {
			if best != nil {
				t.Fatalf("%v, %v, but %v will do", short, err, best)
			}
			return
		}
		strands := owned
		for _, b := range p.Buys {
			strands = add(strands, b.Offer.Pack, b.Packs)
		}
		if len(strands) > 6 {
			return // more than is tried
		}
		if got := packs(s, p); !slices.Equal(got, best) || !p.Bound.Equal(p.Cost) || shopping.Surplus(p.Left).Length < 0 {
			t.Fatalf("got %v, want %v: %+v", got, best, p)
		}
		if s.Owned != nil {
			return
		}
		// Room after room, from what the shelves have left.
		apart := cents(0)
		for _, n := range needs {
			p, err := s.Cheapest(n)
			if err != nil {
				return
			}
			apart = apart.Add(p.Cost)
			for i, n := range packs(s, p) {
				if s.Offers[i].Shelf != 0 {
					s.Offers[i].Shelf = onShelf(packsOn(s.Offers[i].Shelf) - n)
				}
			}
		}
		if p.Cost.GreaterThan(apart) {
			t.Fatalf("%v together, %v apart", p.Cost, apart)
		}
	})
}

// Up to 3 rooms in whole feet, from up to 5 kinds of strands in whole feet, each at
// about one price by the foot: the least cost is proved, and it is no more than
// lists for the rooms one by one, and in two groups.
func TestRunsProveThemselves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := shopping.Shop{Joins: map[shopping.Item]shopping.Join{{Kind: shopping.Garland}: {Overlap: units.Length(rapid.IntRange(1, 6).Draw(t, "overlap")) * units.Inch}}}
		for i := range rapid.IntRange(1, 5).Draw(t, "offers") {
			feet := rapid.IntRange(3, 15).Draw(t, "feet")
			s.Offers = append(s.Offers, shopping.Offer{
				Item: shopping.Item{Kind: shopping.Garland}, Name: strconv.Itoa(i), Pack: ofLength(0, units.Length(feet)*units.Foot),
				Price: cents(int64(feet) * rapid.Int64Range(100, 140).Draw(t, "rate")),
			})
		}
		var needs []shopping.Need
		for range rapid.IntRange(2, 3).Draw(t, "rooms") {
			needs = append(needs, garland(units.Length(rapid.IntRange(3, 90).Draw(t, "room"))*units.Foot))
		}
		cost := func(needs ...shopping.Need) decimal.Decimal {
			p, err := s.Cheapest(needs...)
			if err != nil || !p.Bound.Equal(p.Cost) {
				t.Fatalf("between %v and %v, %v", p.Bound, p.Cost, err)
			}
			return p.Cost
		}
		together := cost(needs...)
		apart := decimal.Zero
		for _, n := range needs {
			apart = apart.Add(cost(n))
		}
		half := len(needs) / 2
		if together.GreaterThan(apart) || together.GreaterThan(cost(needs[:half]...).Add(cost(needs[half:]...))) {
			t.Fatalf("%v together, %v apart", together, apart)
		}
	})
}
