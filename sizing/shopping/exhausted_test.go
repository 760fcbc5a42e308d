package shopping

import (
	"errors"
	"testing"

	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// Whatever number of steps a search is given, it comes to a list whose bound is not over its total, or says that the
// problem is past its limit.
func TestStepsSpent(t *testing.T) {
	price := func(n int64) decimal.Decimal { return decimal.New(n, -2) }
	ball := func(color, kind string) Item { return Item{Kind: Ornament, Color: color, Type: kind} }
	garland, ribbon, pick := Item{Kind: Garland}, Item{Kind: Ribbon}, Item{Kind: Pick}
	s := Shop{
		Offers: []Offer{
			{Name: "mixed", Contents: []Lot{{ball("red", "ball"), Quantity{Pieces: 3}}, {ball("gold", "ball"), Quantity{Pieces: 2}}}, Price: price(500)},
			{Name: "red", Contents: []Lot{{ball("red", "star"), Quantity{Pieces: 4}}}, Price: price(450), Shelf: 3, Store: "yard"},
			{Item: garland, Name: "6 ft", Pack: Quantity{Length: 6 * units.Foot}, Price: price(475), Deals: []Deal{{Packs: 3, Price: price(1200)}}},
			{Item: Item{Kind: Garland, Color: "green"}, Name: "9 ft", Pack: Quantity{Length: 9 * units.Foot}, Price: price(690)},
			{Item: ribbon, Name: "5 yd", Pack: Quantity{Length: 5 * units.Yard}, Price: price(880)},
			{Item: ribbon, Name: "7 ft", Pack: Quantity{Pieces: 2, Length: 7 * units.Foot}, Price: price(777)},
			{Item: pick, Name: "7", Pack: Quantity{Pieces: 7}, Price: price(501), Shelf: 2},
			{Item: pick, Name: "11", Pack: Quantity{Pieces: 11}, Price: price(700), Shelf: 1},
		},
		Owned:  []Lot{{ribbon, Quantity{Pieces: 2, Length: 4 * units.Foot}}, {garland, Quantity{Length: 3 * units.Foot}}},
		Joins:  map[Item]Join{garland: {Overlap: 2 * units.Inch}, ribbon: {Shortest: units.Foot}},
		Stores: []Store{{Name: "yard", Delivery: price(300)}},
	}
	s.Budget = price(6000)
	lists := [][]Need{
		{{Item: Item{Kind: Ornament, Color: "red"}, Quantity: Quantity{Pieces: 9}, Open: units.Range[int]{Min: 6, Max: 12}}, {Item: Item{Kind: Ornament, Color: "gold"}, Quantity: Quantity{Pieces: 5}}},
		{{Item: garland, Quantity: Quantity{Length: 31 * units.Foot}, Slack: units.Foot}, {Item: garland, Room: "b", Quantity: Quantity{Length: 17 * units.Foot}}},
		{{Item: ribbon, Quantity: Quantity{Pieces: 5, Length: 54 * units.Inch}}, {Item: ribbon, Quantity: Quantity{Pieces: 3, Length: 41 * units.Inch}}, {Item: ribbon, Quantity: Quantity{Length: 19 * units.Foot}}},
		{{Item: ribbon, Quantity: Quantity{Length: 19 * units.Foot}}, {Item: ribbon, Room: "b", Quantity: Quantity{Length: 8 * units.Foot}}},
		{{Item: pick, Quantity: Quantity{Pieces: 40}, Open: units.Range[int]{Min: 10, Max: 50}, Instead: []Need{{Item: Item{Kind: Garland}, Quantity: Quantity{Length: 80 * units.Foot}}, {Item: ribbon, Quantity: Quantity{Length: 80 * units.Foot}}}}},
	}
	lists = append(lists, append(append([]Need{}, lists[0]...), append(lists[2], lists[4]...)...))
	spent := 0
	check := func(l List, err error, work int64) {
		switch {
		case err != nil && !errors.Is(err, units.ErrLimit):
			t.Fatalf("%d steps: %v", work, err)
		case err != nil:
			spent++
		case l.Bound.GreaterThan(l.Total):
			t.Fatalf("%d steps: between %v and %v", work, l.Bound, l.Total)
		}
	}
	for _, needs := range lists {
		for work := int64(0); work < 3_000_000; work += 1 + work/3 {
			c := newChecker("Shop.List")
			c.work = work
			l, err := s.list(c, wishes(needs))
			check(l, err, work)
			c.work = work
			f, err := s.filling(c, needs)
			if err != nil {
				t.Fatal(err)
			}
			for _, poor := range []bool{false, true} {
				l, err = f.fullest(c, 600_000, List{}, poor)
				check(l, err, work)
			}
		}
	}
	if spent == 0 {
		t.Error("no search was too long")
	}
}
