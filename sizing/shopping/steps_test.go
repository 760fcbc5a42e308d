package shopping

import (
	"errors"
	"testing"

	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// Small orders with every number of steps from none to more than enough, one after the other. Each comes to a list that
// costs no less than the best, with a bound that is not over it, or says that the problem is past its limit.
func TestEveryNumberOfSteps(t *testing.T) {
	price := func(cents int64) decimal.Decimal { return decimal.New(cents, -2) }
	pieces := func(n int) Quantity { return Quantity{Pieces: n} }
	long := func(l units.Length) Quantity { return Quantity{Length: l} }
	ball := func(color string) Item { return Item{Kind: Ornament, Color: color} }
	garland, ribbon, pick, bell, light := Item{Kind: Garland}, Item{Kind: Ribbon}, Item{Kind: Pick}, Item{Kind: Bell}, Item{Kind: Light}
	for _, tt := range []struct {
		reason string
		shop   Shop
		needs  []Need
	}{
		{
			"a substitute, of which less stands in than was asked for first",
			Shop{Offers: []Offer{
				{Item: pick, Name: "7", Pack: pieces(7), Price: price(501), Shelf: 1},
				{Item: bell, Name: "3", Pack: pieces(3), Price: price(311), Shelf: 2},
				{Item: bell, Name: "5", Pack: pieces(5), Price: price(502), Shelf: 1},
			}},
			[]Need{{Item: pick, Quantity: pieces(30), Instead: []Need{{Item: bell}}}},
		},
		{
			"strands with a deal, the run with slack",
			Shop{
				Offers: []Offer{
					{Item: garland, Name: "6 ft", Pack: long(6 * units.Foot), Price: price(475), Deals: []Deal{{Packs: 3, Price: price(1000)}}},
					{Item: garland, Name: "4 ft", Pack: long(4 * units.Foot), Price: price(317)},
				},
				Joins: map[Item]Join{garland: {Overlap: 2 * units.Inch}},
			},
			[]Need{{Item: garland, Quantity: long(31 * units.Foot), Slack: units.Foot}, {Item: garland, Room: "b", Quantity: long(17 * units.Foot)}},
		},
		{
			"whole pieces and a run from rolls that are short of both",
			Shop{Offers: []Offer{{Item: ribbon, Name: "7 ft", Pack: long(7 * units.Foot), Price: price(777), Shelf: 3}}},
			[]Need{
				{Item: ribbon, Quantity: Quantity{Pieces: 2, Length: 41 * units.Inch}},
				{Item: ribbon, Quantity: Quantity{Pieces: 2, Length: 29 * units.Inch}},
				{Item: ribbon, Quantity: long(19 * units.Foot)},
			},
		},
		{
			"lights, of one color each",
			Shop{Offers: []Offer{
				{Item: Item{Kind: Light, Color: "white"}, Name: "50", Pack: pieces(50), Price: price(500), Shelf: 3},
				{Item: Item{Kind: Light, Color: "red"}, Name: "35", Pack: pieces(35), Price: price(400), Shelf: 3},
			}},
			[]Need{{Item: light, Room: "a", Quantity: pieces(120)}, {Item: light, Room: "b", Quantity: pieces(90)}, {Item: Item{Kind: Light, Color: "red"}, Room: "c", Quantity: pieces(20)}},
		},
		{
			"mixed boxes that are too few",
			Shop{Offers: []Offer{
				{Name: "mixed", Contents: []Lot{{ball("red"), pieces(3)}, {ball("gold"), pieces(2)}}, Price: price(500), Shelf: 2},
				{Name: "red", Contents: []Lot{{ball("red"), pieces(4)}}, Price: price(450), Shelf: 1},
			}},
			[]Need{{Item: ball("red"), Quantity: pieces(15)}, {Item: ball("gold"), Quantity: pieces(5)}},
		},
	} {
		list := func(work int64) (List, error) {
			c := newChecker("Shop.List")
			c.work = work
			return tt.shop.list(c, wishes(tt.needs))
		}
		best, err := list(maxWork)
		if err != nil {
			t.Errorf("%s: %v", tt.reason, err)
			continue
		}
		some := 0
		for work := int64(0); work < 60_000; work += 1 + work/40 {
			l, err := list(work)
			switch {
			case err != nil && !errors.Is(err, units.ErrLimit):
				t.Fatalf("%s with %d steps: %v", tt.reason, work, err)
			case err != nil:
				some++
			case l.Bound.GreaterThan(l.Total) || best.Short() == nil && (l.Total.LessThan(best.Total) || l.Bound.GreaterThan(best.Total)):
				t.Fatalf("%s with %d steps: between %v and %v, not %v", tt.reason, work, l.Bound, l.Total, best.Total)
			}
		}
		if some == 0 {
			t.Errorf("%s: no search was too long", tt.reason)
		}
	}
}
