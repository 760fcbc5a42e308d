package shopping_test

import (
	"errors"
	"math/rand/v2"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// Of strands at one price, those that leave less are taken, whichever is offered
// first. By hand: two runs of 6 ft, joined with 2 in of overlap. Three strands of
// 4 ft come to 12 ft, but each run has a join, and 4 in are missing. With one of
// 4 ft 6 in it is 12 ft 2 in: 4 ft and 2 ft 2 in of the long one, and 4 ft and the
// 2 ft 4 in that are left of it, 2 in of which are over.
func TestRunsOfEqualCost(t *testing.T) {
	offer := func(name string, length units.Length) shopping.Offer {
		return shopping.Offer{Item: shopping.Item{Kind: shopping.Garland}, Name: name, Pack: shopping.Quantity{Length: length}, Price: decimal.RequireFromString("5.00")}
	}
	need := func(room string) shopping.Need {
		return shopping.Need{Item: shopping.Item{Kind: shopping.Garland}, Room: room, Quantity: shopping.Quantity{Length: 6 * units.Foot}}
	}
	short, long := offer("short", 4*units.Foot), offer("long", 54*units.Inch)
	for _, offers := range [][]shopping.Offer{{short, long}, {long, short}} {
		shop := shopping.Shop{Offers: offers, Joins: map[shopping.Item]shopping.Join{{Kind: shopping.Garland}: {Overlap: 2 * units.Inch}}}
		p, err := shop.Cheapest(need("ticket hall"), need("waiting room"))
		if err != nil || p.Cost.String() != "15" || shopping.Surplus(p.Left).Length != 2*units.Inch {
			t.Errorf("%v first: %v, %v", offers[0].Name, p, err)
		}
		for _, b := range p.Buys {
			if want := map[string]int{"short": 2, "long": 1}[b.Offer.Name]; b.Packs != want {
				t.Errorf("%v first: %d %s, want %d", offers[0].Name, b.Packs, b.Offer.Name, want)
			}
		}
	}
}

// Together never costs more than apart, where the least cost is proved: the same
// cases each time, besides those that are drawn.
func TestRunsTogetherOrApart(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		shop := shopping.Shop{Joins: map[shopping.Item]shopping.Join{{Kind: shopping.Garland}: {Overlap: units.Length(r.IntN(4)) * units.Inch}}}
		for _, name := range []string{"a", "b", "c"} {
			shop.Offers = append(shop.Offers, shopping.Offer{
				Item: shopping.Item{Kind: shopping.Garland}, Name: name, Price: decimal.NewFromInt(int64(3 + r.IntN(4))),
				Pack: shopping.Quantity{Length: units.Length(24+r.IntN(48)) * units.Inch},
			})
		}
		var needs []shopping.Need
		apart := decimal.Decimal{}
		for range 2 + r.IntN(2) {
			n := shopping.Need{Item: shopping.Item{Kind: shopping.Garland}, Quantity: shopping.Quantity{Length: units.Length(24+r.IntN(96)) * units.Inch}}
			p, err := shop.Cheapest(n)
			if err != nil {
				t.Fatal(err)
			}
			needs, apart = append(needs, n), apart.Add(p.Cost)
		}
		p, err := shop.Cheapest(needs...)
		if errors.Is(err, units.ErrLimit) {
			continue
		}
		if err != nil || p.Cost.GreaterThan(apart) || p.Bound.GreaterThan(p.Cost) {
			t.Errorf("%+v, %v: %v, %v; apart %v", shop, needs, p, err, apart)
		}
	}
}
