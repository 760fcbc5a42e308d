package shopping_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// As many pieces as the types ask for at the least are still of as many types. By hand: 3.00 buys a box of 3 of each of the two,
// and without types two boxes of the cheaper.
func TestFewestOfTypes(t *testing.T) {
	red := shopping.Item{Kind: shopping.Ornament, Color: "red"}
	ball, star := red, red
	ball.Type, star.Type = "ball", "star"
	s := shopping.Shop{
		Offers: []shopping.Offer{
			{Item: ball, Name: "box", Pack: pieces(3), Price: cents(100)},
			{Item: star, Name: "box", Pack: pieces(3), Price: cents(200)},
		},
		Budget: cents(300),
	}
	l, err := s.Fullest([]shopping.Need{{Item: red, Quantity: pieces(6), Open: units.Range[int]{Min: 6, Max: 12}, Types: 2, Each: units.Range[int]{Min: 3, Max: 6}}})
	if err != nil || !l.Total.Equal(cents(300)) || len(l.Purchases) != 1 || len(l.Purchases[0].Buys) != 2 {
		t.Errorf("%v, %v", l, err)
	}
}

// What one box holds hangs, all of it, though items that are bought together rise in steps of four.
func TestAllOfTheBoxHangs(t *testing.T) {
	ball := func(color string, n int) shopping.Lot {
		return shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Color: color}, Quantity: pieces(n)}
	}
	for _, held := range []int{89, 90, 100} {
		s := shopping.Shop{
			Offers: []shopping.Offer{{Name: "mixed", Contents: []shopping.Lot{ball("red", held), ball("blue", held)}, Price: cents(500)}},
			Budget: cents(500),
		}
		open := func(color string) shopping.Need {
			return shopping.Need{Item: ball(color, 0).Item, Quantity: pieces(1), Open: units.Range[int]{Min: 1, Max: 100}}
		}
		l, err := s.Fullest([]shopping.Need{open("red"), open("blue")})
		if err != nil || !l.Total.Equal(cents(500)) {
			t.Fatalf("%v, %v", l, err)
		}
		for _, share := range l.Purchases[0].Shares {
			if share.Gets != pieces(held) {
				t.Errorf("%v: %v of %d hang", share.Item, share.Gets, held)
			}
		}
	}
}

// With no money, each length that is owned hangs where it is needed, and once.
func TestOwnedLengthsHang(t *testing.T) {
	garland, ribbon := shopping.Item{Kind: shopping.Garland}, shopping.Item{Kind: shopping.Ribbon}
	tinsel := shopping.Item{Kind: shopping.Garland, Type: "tinsel"}
	long := func(item shopping.Item, feet units.Length) shopping.Need {
		return shopping.Need{Item: item, Quantity: ofLength(0, feet*units.Foot)}
	}
	s := shopping.Shop{
		Offers: []shopping.Offer{
			{Item: tinsel, Name: "strand", Pack: ofLength(0, 9*units.Foot), Price: cents(900)},
			{Item: ribbon, Name: "roll", Pack: ofLength(0, 15*units.Foot), Price: cents(900)},
		},
		Owned: []shopping.Lot{
			{Item: tinsel, Quantity: ofLength(1, 6*units.Foot)},
			{Item: ribbon, Quantity: ofLength(1, 9*units.Foot)},
		},
		Budget: cents(100),
	}
	l, err := s.Fullest([]shopping.Need{long(tinsel, 20), long(garland, 20), long(ribbon, 20)})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []units.Length{6, 0, 9} {
		if got := l.Purchases[i].Shares[0].Gets.Length; got != want*units.Foot {
			t.Errorf("%v gets %v, want %v ft", l.Purchases[i].Shares[0].Item, got, int(want))
		}
	}
}

// A text of 200 bytes is read, and one of 201 is not.
func TestLongItems(t *testing.T) {
	pad := func(n int) string { return strings.Repeat(" ", n-len("hooks")) + "hooks" }
	if i, err := shopping.ParseItem(pad(200)); err != nil || i.Kind != shopping.Hook {
		t.Errorf("%v, %v", i, err)
	}
	if _, err := shopping.ParseItem(pad(201)); err == nil {
		t.Error("201 bytes are read")
	}
}

// Where a delivery brings no more than planned, but as many as planned, it is paid for: 5 of 5 to 10 are to be had without it.
func TestDeliveryForWhatIsPlanned(t *testing.T) {
	pick := shopping.Item{Kind: shopping.Pick}
	s := shopping.Shop{
		Offers: []shopping.Offer{
			{Item: pick, Name: "here", Pack: pieces(5), Price: cents(100), Shelf: 1},
			{Item: pick, Name: "there", Pack: pieces(5), Price: cents(100), Store: "market"},
		},
		Stores: []shopping.Store{{Name: "market", Delivery: cents(500)}},
	}
	l, err := s.List([]shopping.Need{{Item: pick, Quantity: pieces(10), Open: units.Range[int]{Min: 5, Max: 10}}})
	if err != nil || l.Purchases[0].Shares[0].Gets != pieces(10) || !l.Total.Equal(cents(700)) {
		t.Errorf("%v, %v", l, err)
	}
}

// More is bought for a free delivery only where that costs less. By hand: 6.00 of 10.00 are on the list, so that two packs at 2.50
// would cost the 5.00 of the delivery, and at 2.00 they cost 4.00.
func TestNoMoreForAsMuch(t *testing.T) {
	pick, hook := shopping.Item{Kind: shopping.Pick}, shopping.Item{Kind: shopping.Hook}
	for each, want := range map[int64]int{250: 1, 200: 3} {
		s := shopping.Shop{
			Offers: []shopping.Offer{
				{Item: hook, Name: "pair", Pack: pieces(2), Price: cents(600 - each), Shelf: 1, Store: "market"},
				{Item: pick, Name: "bunch", Pack: pieces(6), Price: cents(each), Store: "market"},
			},
			Stores: []shopping.Store{{Name: "market", Delivery: cents(500), FreeFrom: cents(1000)}},
		}
		l, err := s.List([]shopping.Need{{Item: hook, Quantity: pieces(2)}, {Item: pick, Quantity: pieces(6)}})
		if err != nil || l.Purchases[1].Buys[0].Packs != want {
			t.Errorf("at %d: %v, %v", each, l, err)
		}
	}
}

// The end of a strand that is as long as a run is that run, though a join would take as much. By hand: 8 ft 10 in and 2 in of 9 ft.
func TestEndOfAStrand(t *testing.T) {
	g := shopping.Item{Kind: shopping.Garland}
	s := shopping.Shop{
		Offers: []shopping.Offer{{Item: g, Name: "strand", Pack: ofLength(0, 9*units.Foot), Price: cents(100), Shelf: 1}},
		Joins:  map[shopping.Item]shopping.Join{g: {Overlap: 2 * units.Inch}},
	}
	p, err := s.Cheapest(garland(9*units.Foot-2*units.Inch), garland(2*units.Inch))
	if err != nil || p.Shares[0].Short() != (shopping.Quantity{}) || p.Shares[1].Short() != (shopping.Quantity{}) {
		t.Errorf("%v, %v", p, err)
	}
}

// A run of two strands is hung from two, though a short one that is owned comes to mind first.
func TestFewestPiecesOfARun(t *testing.T) {
	g := shopping.Item{Kind: shopping.Garland}
	s := shopping.Shop{Owned: []shopping.Lot{{Item: g, Quantity: ofLength(1, 2*units.Foot)}, {Item: g, Quantity: ofLength(2, 9*units.Foot)}}}
	p, err := s.Cheapest(garland(18 * units.Foot))
	if err != nil || len(p.Cuts) != 1 || p.Cuts[0].Rolls != 2 || p.Cuts[0].Roll != 9*units.Foot {
		t.Errorf("%v, %v", p, err)
	}
}

// Strands that are not cut: two runs of 5 ft and one of 8 ft take two of 6 ft and one of 9 ft, less than three of 9 ft or four of 6 ft.
func TestUncutOfTwoLengths(t *testing.T) {
	g := shopping.Item{Kind: shopping.Garland}
	s := shopping.Shop{
		Offers: []shopping.Offer{
			{Item: g, Name: "9 ft", Pack: ofLength(0, 9*units.Foot), Price: cents(120)},
			{Item: g, Name: "6 ft", Pack: ofLength(0, 6*units.Foot), Price: cents(100)},
		},
		Joins: map[shopping.Item]shopping.Join{g: {Uncut: true}},
	}
	p, err := s.Cheapest(garland(5*units.Foot), garland(5*units.Foot), garland(8*units.Foot))
	if err != nil || !p.Cost.Equal(cents(320)) {
		t.Errorf("%v, %v", p, err)
	}
}

// Spares are paid for out of the budget too. By hand, at 1.00 a piece and half as many spares: 16 and 8 are 24.00.
func TestSparesWithinBudget(t *testing.T) {
	pick := shopping.Item{Kind: shopping.Pick}
	s := shopping.Shop{
		Offers: []shopping.Offer{{Item: pick, Name: "one", Pack: pieces(1), Price: cents(100)}},
		Budget: cents(2400),
	}
	s.Spares[shopping.Pick] = 50
	l, err := s.Fullest([]shopping.Need{{Item: pick, Quantity: pieces(10), Open: units.Range[int]{Min: 10, Max: 20}}})
	if err != nil || l.Purchases[0].Shares[0].Gets != pieces(16) || !l.Total.Equal(cents(2400)) {
		t.Errorf("%v, %v", l, err)
	}
}

// Each string of lights is listed, up to 100,000 of them.
func TestMostStrings(t *testing.T) {
	lights := shopping.Item{Kind: shopping.Light}
	s := shopping.Shop{Offers: []shopping.Offer{{Item: lights, Name: "string", Pack: pieces(1), Price: cents(100)}}}
	for n, want := range map[int]error{100_000: nil, 100_001: units.ErrLimit} {
		if p, err := s.Cheapest(shopping.Need{Item: lights, Quantity: pieces(n)}); !errors.Is(err, want) || err == nil && len(p.Shares[0].Parts) != n {
			t.Errorf("%d strings: %d listed, %v", n, len(p.Shares[0].Parts), err)
		}
	}
}

// What could cost less is told, unless nothing is known of how much less.
func TestUnknownBound(t *testing.T) {
	p := shopping.Purchase{Shares: []shopping.Share{{Need: picks(1), Gets: pieces(1)}}, Cost: cents(500)}
	for bound, told := range map[int64]bool{0: false, 300: true, 500: false} {
		p.Bound = cents(bound)
		if text := p.String(); strings.Contains(text, "as little as") != told {
			t.Errorf("%d: %s", bound, text)
		}
	}
}

// Substitutes come last, with what money is left. By hand: of 10 red ones the shelf has 4 at 1.00, and 6 blue ones at 5.00 are too
// dear for 10.00 but not at 1.00.
func TestSubstitutesWithinBudget(t *testing.T) {
	red, blue := shopping.Item{Kind: shopping.Pick, Color: "red"}, shopping.Item{Kind: shopping.Pick, Color: "blue"}
	gold := shopping.Item{Kind: shopping.Ornament, Color: "gold"}
	for each, want := range map[int64]int64{500: 400, 100: 1000} {
		s := shopping.Shop{
			Offers: []shopping.Offer{
				{Item: red, Name: "one", Pack: pieces(1), Price: cents(100), Shelf: 4},
				{Item: blue, Name: "one", Pack: pieces(1), Price: cents(each)},
				{Item: gold, Name: "box", Pack: pieces(20), Price: cents(5000)},
			},
			Budget: cents(1000),
		}
		l, err := s.Fullest([]shopping.Need{
			{Item: red, Quantity: pieces(10), Instead: []shopping.Need{{Item: blue}}},
			{Item: gold, Quantity: pieces(20)},
		})
		if err != nil || !l.Total.Equal(cents(want)) || l.Purchases[0].Shares[0].Gets != pieces(4) {
			t.Errorf("at %d: %v, %v", each, l, err)
		}
	}
}
