package shopping_test

import (
	"maps"
	"slices"
	"strconv"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// drawRolls draws a shop of ribbon, with rolls up to longest inches.
func drawRolls(t *rapid.T, longest int) shopping.Shop {
	var s shopping.Shop
	for i := range rapid.IntRange(1, 3).Draw(t, "offers") {
		o := shopping.Offer{
			Item: shopping.Item{Kind: shopping.Ribbon}, Name: strconv.Itoa(i),
			Pack:  shopping.Quantity{Length: units.Length(rapid.IntRange(4, longest).Draw(t, "length")) * units.Inch},
			Price: cents(rapid.Int64Range(0, 9).Draw(t, "price")),
		}
		if rapid.Bool().Draw(t, "several") {
			o.Pack.Pieces = rapid.IntRange(1, 2).Draw(t, "rolls")
		}
		if rapid.Bool().Draw(t, "limited") {
			o.Shelf = onShelf(rapid.IntRange(0, 3).Draw(t, "left"))
		}
		s.Offers = append(s.Offers, o)
	}
	for range rapid.IntRange(0, 2).Draw(t, "owned") {
		s.Owned = append(s.Owned, shopping.Lot{Item: shopping.Item{Kind: shopping.Ribbon}, Quantity: shopping.Quantity{
			Pieces: rapid.IntRange(0, 2).Draw(t, "owns"), Length: units.Length(rapid.IntRange(1, longest).Draw(t, "of")) * units.Inch,
		}})
	}
	return s
}

// checkCuts checks that the cuts of p make the pieces, and no more than is there.
func checkCuts(t *rapid.T, s shopping.Shop, p shopping.Purchase) {
	pieces := make(map[units.Length]int)
	for _, n := range p.Shares {
		if n.Gets.Pieces > 0 {
			pieces[n.Gets.Length] += n.Gets.Pieces
		}
	}
	type source struct {
		offer string
		roll  units.Length
	}
	there := make(map[source]int)
	for _, o := range s.Owned {
		there[source{"", o.Quantity.Length}] += max(1, o.Quantity.Pieces)
	}
	for _, b := range p.Buys {
		there[source{b.Offer.Name, b.Offer.Pack.Length}] += b.Packs * max(1, b.Offer.Pack.Pieces)
	}
	for _, c := range p.Cuts {
		sum := shopping.LeftOf(c)
		for _, q := range c.Pieces {
			sum += units.Length(max(1, q.Quantity.Pieces)) * q.Quantity.Length
			if q.Quantity.Pieces > 0 {
				pieces[q.Quantity.Length] -= c.Rolls * q.Quantity.Pieces
			}
		}
		if sum != c.Roll || shopping.LeftOf(c) < 0 || c.Rolls < 1 {
			t.Fatalf("%+v does not add up", c)
		}
		there[source{c.Offer, c.Roll}] -= c.Rolls
	}
	for l, n := range pieces {
		if n != 0 {
			t.Fatalf("%d of %v missing in %+v", n, l, p)
		}
	}
	for from, n := range there {
		if n < 0 {
			t.Fatalf("%d too many of %v cut in %+v", -n, from, p)
		}
	}
}

// TestWholePieces holds pieces of one length against every choice of counts.
func TestWholePieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawRolls(t, 40)
		need := shopping.Quantity{Pieces: rapid.IntRange(1, 12).Draw(t, "pieces"), Length: units.Length(rapid.IntRange(3, 15).Draw(t, "piece")) * units.Inch}
		holds := func(q shopping.Quantity) int { return max(1, q.Pieces) * int(q.Length/need.Length) }
		owned := 0
		var length units.Length
		for _, o := range s.Owned {
			owned += holds(o.Quantity)
			length += units.Length(max(1, o.Quantity.Pieces)) * o.Quantity.Length
		}
		var best []int
		var bestKey [3]int64
		reach := 0
		counts := make([]int, len(s.Offers))
		var walk func(i, have int, key [3]int64)
		walk = func(i, have int, key [3]int64) {
			if i == len(counts) {
				reach = max(reach, have)
				if have >= need.Pieces && (best == nil || slices.Compare(key[:], bestKey[:]) < 0) {
					best, bestKey = slices.Clone(counts), key
				}
				return
			}
			o := s.Offers[i]
			most := need.Pieces
			if o.Shelf != 0 {
				most = min(most, packsOn(o.Shelf))
			}
			for n := most; n >= 0; n-- {
				counts[i] = n
				packed := int64(max(1, o.Pack.Pieces)) * int64(o.Pack.Length)
				walk(i+1, have+n*holds(o.Pack), [3]int64{key[0] + int64(n)*o.Price.Shift(2).IntPart(), key[1] + int64(n)*packed, key[2] + int64(n)})
			}
		}
		walk(0, owned, [3]int64{})
		p, err := s.Cheapest(shopping.Need{Item: shopping.Item{Kind: shopping.Ribbon}, Quantity: need})
		if best == nil {
			if got := p.Shares[0]; err != nil || got.Gets.Pieces != reach || got.Short() != (shopping.Quantity{Pieces: need.Pieces - reach, Length: need.Length}) {
				t.Fatalf("got %+v, %v, want %d", got, err, reach)
			}
			checkCuts(t, s, p)
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		surplus := length + units.Length(bestKey[1]) - units.Length(need.Pieces)*need.Length
		if got := packs(s, p); !slices.Equal(got, best) || shopping.Surplus(p.Left).Length != surplus || shopping.Surplus(p.Owned).Length != length || !p.Bound.Equal(p.Cost) {
			t.Fatalf("got %v: %+v\nwant %v, %v over", got, p, best, surplus)
		}
		checkCuts(t, s, p)
	})
}

// TestPiecesAndLength asks for pieces of two lengths and a running length of one item.
func TestPiecesAndLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawRolls(t, 20)
		overlap := units.Length(rapid.SampledFrom([]int{0, 0, 1, 3}).Draw(t, "overlap")) * units.Inch
		s.Joins = map[shopping.Item]shopping.Join{{Kind: shopping.Ribbon}: {Overlap: overlap}}
		running := units.Length(rapid.IntRange(1, 30).Draw(t, "running")) * units.Inch
		needs := []shopping.Need{{Item: shopping.Item{Kind: shopping.Ribbon}, Room: "ticket hall", Quantity: shopping.Quantity{Length: running}}}
		var pieces []units.Length
		for i := range rapid.IntRange(1, 2).Draw(t, "lengths") {
			q := shopping.Quantity{Pieces: rapid.IntRange(1, 2).Draw(t, "pieces"), Length: units.Length(5+6*i) * units.Inch}
			needs = append(needs, shopping.Need{Item: shopping.Item{Kind: shopping.Ribbon}, Quantity: q})
			for range q.Pieces {
				pieces = append(pieces, q.Length)
			}
		}
		// The least cost by brute force: every count, every way to lay the pieces.
		best := int64(-1)
		var longest func(k int, strands []units.Length) units.Length
		longest = func(k int, strands []units.Length) units.Length {
			if k == len(pieces) {
				sum := units.Length(0)
				for _, l := range strands {
					sum += max(0, l-overlap)
				}
				if sum > 0 {
					sum += overlap
				}
				return sum
			}
			most := units.Length(-1)
			for b := range strands {
				if strands[b] >= pieces[k] {
					strands[b] -= pieces[k]
					most = max(most, longest(k+1, strands))
					strands[b] += pieces[k]
				}
			}
			return most
		}
		var walk func(i int, strands []units.Length, cost int64)
		walk = func(i int, strands []units.Length, cost int64) {
			if best >= 0 && cost >= best {
				return
			}
			if i == len(s.Offers) {
				if longest(0, strands) >= running {
					best = cost
				}
				return
			}
			o := s.Offers[i]
			most := 4
			if o.Shelf != 0 {
				most = packsOn(o.Shelf)
			}
			for n := range most + 1 {
				if n > 0 {
					for range max(1, o.Pack.Pieces) {
						strands = append(slices.Clone(strands), o.Pack.Length)
					}
				}
				if len(strands) < 7 {
					walk(i+1, strands, cost+int64(n)*o.Price.Shift(2).IntPart())
				}
			}
		}
		var owned []units.Length
		for _, o := range s.Owned {
			for range max(1, o.Quantity.Pieces) {
				owned = append(owned, o.Quantity.Length)
			}
		}
		for _, o := range s.Offers {
			if o.Pack.Length <= overlap {
				t.Skip("too short")
			}
		}
		walk(0, owned, 0)
		p, err := s.Cheapest(needs...)
		if err != nil {
			if best >= 0 && overlap == 0 {
				t.Fatalf("there is a way for %d: %v", best, err)
			}
			return
		}
		checkCuts(t, s, p)
		if shopping.Surplus(p.Left).Length < 0 || p.Bound.GreaterThan(p.Cost) {
			t.Fatalf("%+v", p)
		}
		if best >= 0 && p.Bound.GreaterThan(cents(best)) {
			t.Fatalf("bound %v, but there is a way for %d", p.Bound, best)
		}
	})
}

// Rolls that are cut alike go to the rooms in the order of their needs, each as many pieces as it asks for.
func TestCutsByRoom(t *testing.T) {
	roll := shopping.Offer{Item: shopping.Item{Kind: shopping.Ribbon}, Name: "roll", Pack: shopping.Quantity{Length: 6 * units.Foot}, Price: cents(100)}
	piece := func(n int, room string) shopping.Need {
		return shopping.Need{Item: roll.Item, Quantity: shopping.Quantity{Pieces: n, Length: 3 * units.Foot}, Room: room}
	}
	l, err := shopping.Shop{Offers: []shopping.Offer{roll}}.List([]shopping.Need{piece(12, "hall"), piece(6, "tea room"), piece(2, "office")})
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]int{}
	for _, c := range l.Purchases[0].Cuts {
		for _, n := range c.Pieces {
			got[n.Room] += c.Rolls * n.Quantity.Pieces
		}
	}
	if want := map[string]int{"hall": 12, "tea room": 6, "office": 2}; !maps.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
