package shopping

import (
	"errors"
	"math/rand/v2"
	"testing"

	"example.com/fircone/internal/tally"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// Whatever number of steps a search is given, it comes to a list whose bound is not over its total, or says that the
// problem is past its limit.
func TestStepsSpent(t *testing.T) {
	cents := func(n int64) decimal.Decimal { return decimal.New(n, -2) }
	ball := func(color, kind string) Item { return Item{Kind: Ornament, Color: color, Type: kind} }
	garland, ribbon, pick := Item{Kind: Garland}, Item{Kind: Ribbon}, Item{Kind: Pick}
	s := Shop{
		Offers: []Offer{
			{Name: "mixed", Contents: []Lot{{ball("red", "ball"), Quantity{Pieces: 3}}, {ball("gold", "ball"), Quantity{Pieces: 2}}}, Price: cents(500)},
			{Name: "red", Contents: []Lot{{ball("red", "star"), Quantity{Pieces: 4}}}, Price: cents(450), Shelf: 3, Store: "yard"},
			{Item: garland, Name: "6 ft", Pack: Quantity{Length: 6 * units.Foot}, Price: cents(475), Deals: []Deal{{Packs: 3, Price: cents(1200)}}},
			{Item: Item{Kind: Garland, Color: "green"}, Name: "9 ft", Pack: Quantity{Length: 9 * units.Foot}, Price: cents(690)},
			{Item: ribbon, Name: "5 yd", Pack: Quantity{Length: 5 * units.Yard}, Price: cents(880)},
			{Item: ribbon, Name: "7 ft", Pack: Quantity{Pieces: 2, Length: 7 * units.Foot}, Price: cents(777)},
			{Item: pick, Name: "7", Pack: Quantity{Pieces: 7}, Price: cents(501), Shelf: 2},
			{Item: pick, Name: "11", Pack: Quantity{Pieces: 11}, Price: cents(700), Shelf: 1},
		},
		Owned:  []Lot{{ribbon, Quantity{Pieces: 2, Length: 4 * units.Foot}}, {garland, Quantity{Length: 3 * units.Foot}}},
		Joins:  map[Item]Join{garland: {Overlap: 2 * units.Inch}, ribbon: {Shortest: units.Foot}},
		Stores: []Store{{Name: "yard", Delivery: cents(300)}},
	}
	s.Budget = cents(6000)
	lists := [][]Need{
		{{Item: Item{Kind: Ornament, Color: "red"}, Quantity: Quantity{Pieces: 9}, Open: units.Range[int]{Min: 6, Max: 12}}, {Item: Item{Kind: Ornament, Color: "gold"}, Quantity: Quantity{Pieces: 5}}},
		{{Item: garland, Quantity: Quantity{Length: 31 * units.Foot}, Slack: units.Foot}, {Item: garland, Room: "b", Quantity: Quantity{Length: 17 * units.Foot}}},
		{{Item: ribbon, Quantity: Quantity{Pieces: 5, Length: 54 * units.Inch}}, {Item: ribbon, Quantity: Quantity{Pieces: 3, Length: 41 * units.Inch}}, {Item: ribbon, Quantity: Quantity{Length: 19 * units.Foot}}},
		{{Item: ribbon, Quantity: Quantity{Length: 19 * units.Foot}}, {Item: ribbon, Room: "b", Quantity: Quantity{Length: 8 * units.Foot}}},
		{{Item: pick, Quantity: Quantity{Pieces: 40}, Open: units.Range[int]{Min: 10, Max: 50}, Instead: []Need{{Item: Item{Kind: Garland}, Quantity: Quantity{Length: 80 * units.Foot}}, {Item: ribbon, Quantity: Quantity{Length: 80 * units.Foot}}}}},
	}
	lists = append(lists, append(append([]Need{}, lists[0]...), append(lists[2], lists[4]...)...))
	spent := 0
	counts := tally.New()
	check := func(c *checker, l List, err error, work int64) {
		counts.Add(work-c.work, price(l.Total), price(l.Bound), tally.Bit(err != nil))
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
		for work := int64(0); work < 3_000_000; work += 1 + work/10 {
			c := newChecker("Shop.List")
			c.work = work
			l, err := s.list(c, wishes(needs))
			check(c, l, err, work)
			c.work = work
			f, err := s.filling(c, needs)
			if err != nil {
				t.Fatal(err)
			}
			for _, poor := range []bool{false, true} {
				l, err = f.fullest(c, 600_000, List{}, poor)
				check(c, l, err, work)
			}
		}
	}
	if spent == 0 {
		t.Error("no search was too long")
	}
	counts.Check(t, counted[t.Name()])
}

// The same for boxes of several things and for strands, within a budget and without.
func TestBoxesAtEveryWork(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 1))
	counts := tally.New()
	for i := range 24 {
		s, needs := someBoxes(r, i%2 == 0)
		if i%4 == 3 {
			s, needs = someLights(r)
		}
		for k := range needs {
			if n := &needs[k]; n.Types == 0 && n.Item.Kind == Ornament {
				n.Open = units.Range[int]{Min: n.Quantity.Pieces / 2, Max: 2 * n.Quantity.Pieces}
			}
		}
		s.Budget = decimal.New(100+r.Int64N(2000), -2)
		for work := int64(0); work < 300_000; work += 1 + work/2 {
			c := newChecker("Shop.List")
			c.work = work
			l, err := s.list(c, wishes(needs))
			if err != nil && !errors.Is(err, units.ErrLimit) || l.Bound.GreaterThan(l.Total) {
				t.Fatalf("%+v, %+v with %d: %v, between %v and %v", s, needs, work, err, l.Bound, l.Total)
			}
			counts.Add(work-c.work, price(l.Total), price(l.Bound), tally.Bit(err != nil))
			f, err := s.filling(c, needs)
			if err != nil {
				t.Fatal(err)
			}
			for _, poor := range []bool{false, true} {
				c.work = work
				l, err := f.fullest(c, 2_000_000, List{}, poor)
				if err != nil && !errors.Is(err, units.ErrLimit) || l.Bound.GreaterThan(l.Total) {
					t.Fatalf("%+v, %+v with %d: %v, between %v and %v", s, needs, work, err, l.Bound, l.Total)
				}
				counts.Add(work-c.work, price(l.Total), price(l.Bound), tally.Bit(err != nil))
			}
		}
	}
	counts.Check(t, counted[t.Name()])
}
