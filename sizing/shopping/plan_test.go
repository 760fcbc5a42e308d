package shopping_test

import (
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// drawJob draws a shop and needs of pieces that are open in one way or another, of lengths, and of lights.
func drawJob(t *rapid.T) (shopping.Shop, []shopping.Need) {
	var s shopping.Shop
	colors, types := []string{"", "red", "gold"}, []string{"", "ball", "star"}
	item := func() shopping.Item {
		kind := rapid.SampledFrom([]shopping.Kind{shopping.Ornament, shopping.Ornament, shopping.Pick, shopping.Garland, shopping.Light}).Draw(t, "kind")
		i := shopping.Item{Kind: kind, Color: rapid.SampledFrom(colors).Draw(t, "color")}
		if kind == shopping.Ornament {
			i.Type = rapid.SampledFrom(types).Draw(t, "type")
			i.Size = units.Length(rapid.IntRange(0, 2).Draw(t, "size")) * units.Inch
		}
		return i
	}
	for i := range rapid.IntRange(1, 6).Draw(t, "offers") {
		o := shopping.Offer{Item: item(), Name: strconv.Itoa(i), Price: cents(rapid.Int64Range(0, 40).Draw(t, "price"))}
		switch {
		case o.Item.Kind == shopping.Garland:
			o.Pack = ofLength(rapid.IntRange(0, 2).Draw(t, "strands"), units.Length(rapid.IntRange(3, 12).Draw(t, "feet"))*units.Foot)
		case rapid.IntRange(0, 2).Draw(t, "mixed") == 0:
			other := item()
			if other.Kind = shopping.Ornament; o.Item.Kind == shopping.Light {
				other.Kind = shopping.Light
			}
			o.Contents = []shopping.Lot{
				{Item: o.Item, Quantity: shopping.Quantity{Pieces: rapid.IntRange(1, 6).Draw(t, "one")}},
				{Item: other, Quantity: shopping.Quantity{Pieces: rapid.IntRange(1, 6).Draw(t, "other")}},
			}
			o.Item = shopping.Item{}
		default:
			o.Pack.Pieces = rapid.IntRange(1, 9).Draw(t, "pack")
		}
		if rapid.IntRange(0, 2).Draw(t, "deal") == 0 {
			o.Deals = []shopping.Deal{{Packs: 3, Price: o.Price.Mul(decimal.NewFromInt(2))}}
			if o.Price.Sign() > 0 && rapid.Bool().Draw(t, "tier") {
				o.Deals = []shopping.Deal{{From: 3, Price: o.Price.Mul(decimal.New(5, -1))}}
			}
		}
		if rapid.IntRange(0, 2).Draw(t, "limited") == 0 {
			o.Shelf = onShelf(rapid.IntRange(0, 4).Draw(t, "left"))
		}
		s.Offers = append(s.Offers, o)
	}
	lot := func() shopping.Lot {
		l := shopping.Lot{Item: item()}
		if l.Quantity.Pieces = rapid.IntRange(1, 5).Draw(t, "owned"); l.Item.Kind == shopping.Garland {
			l.Quantity.Length = units.Length(rapid.IntRange(1, 9).Draw(t, "feet")) * units.Foot
		}
		return l
	}
	for range rapid.IntRange(0, 3).Draw(t, "lots") {
		s.Owned = append(s.Owned, lot())
	}
	s.Joins = map[shopping.Item]shopping.Join{{Kind: shopping.Garland}: {
		Overlap:  units.Length(rapid.IntRange(0, 2).Draw(t, "overlap")) * units.Inch,
		Shortest: units.Length(rapid.IntRange(0, 1).Draw(t, "shortest")) * units.Foot,
		Uncut:    rapid.IntRange(0, 4).Draw(t, "uncut") == 0,
	}}
	if rapid.IntRange(0, 3).Draw(t, "spare") == 0 {
		s.Spares[shopping.Ornament] = 10
	}
	var needs []shopping.Need
	for i := range rapid.IntRange(1, 4).Draw(t, "needs") {
		n := shopping.Need{Item: item(), Room: "room " + strconv.Itoa(i)}
		switch n.Item.Kind {
		case shopping.Garland:
			n.Quantity.Length = units.Length(rapid.IntRange(1, 20).Draw(t, "run")) * units.Foot
			n.Slack = units.Length(rapid.IntRange(0, 1).Draw(t, "slack")) * 3 * units.Inch
			if rapid.IntRange(0, 2).Draw(t, "whole") == 0 {
				n.Quantity.Pieces, n.Quantity.Length = rapid.IntRange(1, 3).Draw(t, "wholes"), n.Quantity.Length/4
				n.Slack = 0
			}
		case shopping.Ornament:
			n.Quantity.Pieces = rapid.IntRange(0, 9).Draw(t, "pieces")
			if n.Item.Size > 0 {
				n.MaxSize = n.Item.Size + units.Inch
			}
			if n.Item.Type == "" && rapid.Bool().Draw(t, "assort") {
				n.Types, n.Each = rapid.IntRange(1, 2).Draw(t, "types"), units.Range[int]{Min: 2, Max: 4}
				n.Quantity.Pieces = rapid.IntRange(2*n.Types, 4*n.Types).Draw(t, "of all")
			}
		default:
			n.Quantity.Pieces = rapid.IntRange(1, 12).Draw(t, "pieces")
		}
		if n.Quantity.Length == 0 && n.Quantity.Pieces > 1 && rapid.Bool().Draw(t, "least") && n.Types == 0 {
			n.Open = units.Range[int]{Min: rapid.IntRange(0, n.Quantity.Pieces).Draw(t, "fewest"), Max: n.Quantity.Pieces}
		}
		if rapid.IntRange(0, 3).Draw(t, "instead") == 0 && n.Item.Kind == shopping.Pick {
			n.Instead = []shopping.Need{{Item: shopping.Item{Kind: shopping.Ornament}, Quantity: shopping.Quantity{Pieces: 2 * n.Quantity.Pieces}}}
		}
		needs = append(needs, n)
	}
	return s, needs
}

// checkPlan checks that a list can be carried out: what is owned and bought is what rooms get and what is
// left, every piece is of a thing that the need takes, every strand is cut to what it is long, and every run
// comes to what it gets.
func checkPlan(t *rapid.T, s shopping.Shop, l shopping.List) {
	there := map[shopping.Item]int{}
	length := map[shopping.Item]units.Length{}
	add := func(lot shopping.Lot, n int) {
		if q := lot.Quantity; q.Length > 0 {
			length[lot.Item] += units.Length(n*max(1, q.Pieces)) * q.Length
		} else {
			there[lot.Item] += n * q.Pieces
		}
	}
	used := map[shopping.Item]bool{}
	total := decimal.Zero
	for _, p := range l.Purchases {
		for _, b := range p.Buys {
			holds := b.Offer.Contents
			if holds == nil {
				holds = []shopping.Lot{{Item: b.Offer.Item, Quantity: b.Offer.Pack}}
			}
			for _, h := range holds {
				add(h, b.Packs)
			}
			if b.Offer.Shelf != 0 && b.Packs > packsOn(b.Offer.Shelf) {
				t.Fatalf("%d packs of %+v", b.Packs, b.Offer)
			}
			total = total.Add(b.Cost)
		}
		for _, lot := range p.Left {
			add(lot, -1)
			used[lot.Item] = used[lot.Item] || lot.Item.Kind == shopping.Garland
		}
		runs := map[string]units.Length{}
		joints := map[string]units.Length{}
		ends := map[string]int{} // of all runs of a room, the pieces that are joined to another
		for _, c := range p.Cuts {
			sum := shopping.LeftOf(c)
			for _, q := range c.Pieces {
				sum += units.Length(max(1, q.Quantity.Pieces)) * q.Quantity.Length
				if q.Quantity.Pieces == 0 {
					over := s.Joins[shopping.Item{Kind: shopping.Garland}].Overlap
					runs[q.Room] += units.Length(c.Rolls) * (q.Quantity.Length - over)
					joints[q.Room] = over
					ends[q.Room] += c.Rolls
					if join := s.Joins[shopping.Item{Kind: shopping.Garland}]; q.Quantity.Length < join.Shortest || join.Uncut && q.Quantity.Length < c.Roll && q.Quantity.Length+units.Foot*0 < c.Roll && len(c.Pieces) == 1 {
						t.Fatalf("a piece of %v in %+v", q.Quantity, c)
					}
				}
			}
			if sum != c.Roll || c.Rolls < 1 {
				t.Fatalf("%+v does not add up", c)
			}
			length[c.Pieces[0].Item] -= units.Length(c.Rolls) * (c.Roll - shopping.LeftOf(c))
			used[c.Pieces[0].Item] = true
		}
		for _, sh := range p.Shares {
			pieces := 0
			for _, part := range sh.Parts {
				if part.Item.Kind != sh.Item.Kind || sh.Item.Color != "" && part.Item.Color != sh.Item.Color || sh.Item.Type != "" && part.Item.Type != sh.Item.Type ||
					sh.Item.Size > 0 && (part.Item.Size < sh.Item.Size || part.Item.Size > max(sh.Item.Size, sh.MaxSize)) {
					t.Fatalf("%v for %+v", part, sh.Need)
				}
				pieces += part.Quantity.Pieces
				if part.Quantity.Length == 0 {
					there[part.Item] -= part.Quantity.Pieces
				}
			}
			if sh.Parts == nil && sh.Gets.Length == 0 && sh.Gets.Pieces > 0 {
				there[sh.Item] -= sh.Gets.Pieces
			}
			if sh.Parts != nil && pieces != sh.Gets.Pieces || sh.Item.Kind != shopping.Light && sh.Gets.Pieces > sh.Quantity.Pieces {
				t.Fatalf("%+v", sh)
			}
			if sh.Item.Kind == shopping.Garland && sh.Gets.Pieces == 0 && sh.Gets.Length > 0 && runs[sh.Room]+joints[sh.Room] < sh.Gets.Length {
				t.Fatalf("%v of %v in %+v", runs[sh.Room]+joints[sh.Room], sh.Gets, p)
			}
			if a := sh.Each; sh.Types > 0 && sh.Enough() && sh.Replaced == (shopping.Quantity{}) {
				kinds := map[string]int{}
				for _, part := range sh.Parts {
					kinds[part.Item.Type] += part.Quantity.Pieces
				}
				for _, n := range kinds {
					if n < a.Min || n > a.Max {
						t.Fatalf("%v for %v", sh.Parts, a)
					}
				}
				if len(kinds) != sh.Types && sh.Parts != nil {
					t.Fatalf("%v for %v", sh.Parts, a)
				}
			}
		}
		// What is owned and bought hangs, is lost in the overlaps, or is left.
		hung := map[string]units.Length{}
		for _, sh := range p.Shares {
			if sh.Item.Kind == shopping.Garland && sh.Gets.Pieces == 0 && sh.Gets.Length > 0 {
				hung[sh.Room] += sh.Gets.Length - joints[sh.Room]
				ends[sh.Room]--
			}
		}
		for room, l := range hung {
			if l != runs[room] {
				t.Fatalf("%v hangs in %q, and the pieces come to %v with %d joins of %v: %v", l, room, runs[room], ends[room], joints[room], p)
			}
		}
		if p.Bound.GreaterThan(p.Cost) || shopping.Surplus(p.Left).Pieces < 0 || shopping.Surplus(p.Left).Length < 0 {
			t.Fatalf("%+v", p)
		}
	}
	for _, p := range l.Purchases {
		for _, sh := range p.Shares {
			for _, o := range s.Owned {
				i, want := o.Item, sh.Item
				if sh.Quantity != (shopping.Quantity{}) && i.Kind != shopping.Garland && i.Kind == want.Kind && (want.Color == "" || i.Color == want.Color) && (want.Type == "" || i.Type == want.Type) &&
					(want.Size == 0 || want.Size <= i.Size && i.Size <= max(want.Size, sh.MaxSize)) {
					used[i] = true
				}
			}
		}
	}
	for _, o := range s.Owned {
		if used[o.Item] {
			add(o, 1)
		}
	}
	for item, n := range there {
		if n != 0 {
			t.Fatalf("%d of %v are nowhere: %v", n, item, l)
		}
	}
	for item, n := range length {
		if n != 0 {
			t.Fatalf("%v of %v are nowhere: %v", n, item, l)
		}
	}
	if s.Stores == nil && !total.Equal(l.Total) || l.Bound.GreaterThan(l.Total) {
		t.Fatalf("%v, lines add up to %v, bound %v", l.Total, total, l.Bound)
	}
}

// Every list can be carried out as it is printed.
func TestPlanAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, needs := drawJob(t)
		l, err := s.List(needs)
		if err != nil {
			return // pieces of what comes by length, or the reverse
		}
		checkPlan(t, s, l)
		_ = l.String()
	})
}

// In another order it costs the same; with an offer more, or something owned, no more.
func TestPermutationAndAddition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, needs := drawJob(t)
		s.Joins, s.Spares = nil, shopping.ByKind[int]{}
		for i := range needs {
			needs[i].Instead = nil
		}
		l, err := s.List(needs)
		if err != nil || !l.Bound.Equal(l.Total) || l.Short() != nil {
			return
		}
		r := rand.New(rand.NewPCG(1, rapid.Uint64().Draw(t, "seed")))
		other := s
		other.Offers, other.Owned = slices.Clone(s.Offers), slices.Clone(s.Owned)
		turned := slices.Clone(needs)
		r.Shuffle(len(other.Offers), func(i, j int) { other.Offers[i], other.Offers[j] = other.Offers[j], other.Offers[i] })
		r.Shuffle(len(other.Owned), func(i, j int) { other.Owned[i], other.Owned[j] = other.Owned[j], other.Owned[i] })
		r.Shuffle(len(turned), func(i, j int) { turned[i], turned[j] = turned[j], turned[i] })
		again, err := other.List(turned)
		if err != nil || again.Bound.Equal(again.Total) && !again.Total.Equal(l.Total) {
			t.Fatalf("%v, %v in another order, %v", l.Total, again.Total, err)
		}
		more, _ := drawJob(t)
		for i := range more.Offers {
			more.Offers[i].Name += " more"
		}
		for _, wider := range []shopping.Shop{
			{Offers: append(slices.Clone(s.Offers), more.Offers...), Owned: s.Owned, Spares: s.Spares},
			{Offers: s.Offers, Owned: append(slices.Clone(s.Owned), more.Owned...), Spares: s.Spares},
		} {
			if w, err := wider.List(needs); err != nil || w.Total.GreaterThan(l.Total) && w.Bound.Equal(w.Total) || w.Short() != nil {
				t.Fatalf("%v, and with more %v, %v\n%v\n%v", l.Total, w.Total, err, l, w)
			}
		}
	})
}

// Four bows and a run are never dearer than from the best single roll.
func TestNoWorseThanOneOffer(t *testing.T) {
	ribbon := shopping.Item{Kind: shopping.Ribbon}
	rapid.Check(t, func(t *rapid.T) {
		var s shopping.Shop
		for i := range rapid.IntRange(1, 4).Draw(t, "offers") {
			yards := rapid.IntRange(2, 25).Draw(t, "yards")
			s.Offers = append(s.Offers, shopping.Offer{
				Item: ribbon, Name: strconv.Itoa(i), Pack: ofLength(0, units.Length(yards)*units.Yard),
				Price: cents(int64(yards)*rapid.Int64Range(30, 90).Draw(t, "rate") + 99),
			})
		}
		s.Joins = map[shopping.Item]shopping.Join{ribbon: {Overlap: units.Length(rapid.IntRange(0, 2).Draw(t, "overlap")) * units.Inch}}
		needs := []shopping.Need{
			{Item: ribbon, Room: "bows", Quantity: ofLength(rapid.IntRange(1, 6).Draw(t, "bows"), 54*units.Inch)},
			{Item: ribbon, Room: "tree", Quantity: ofLength(0, units.Length(rapid.IntRange(3, 90).Draw(t, "feet"))*units.Foot)},
		}
		p, err := s.Cheapest(needs...)
		if err != nil {
			t.Fatal(err)
		}
		for _, o := range s.Offers {
			one := shopping.Shop{Offers: []shopping.Offer{o}, Joins: s.Joins}
			q, err := one.Cheapest(needs...)
			if err == nil && q.Shares[0].Enough() && p.Cost.GreaterThan(q.Cost) {
				t.Fatalf("%v, and %v with %s alone", p.Cost, q.Cost, o.Name)
			}
		}
		checkPlan(t, s, shopping.List{Purchases: []shopping.Purchase{p}, Total: p.Cost, Bound: p.Bound})
	})
}
