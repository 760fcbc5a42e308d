package shopping

import (
	"errors"
	"slices"
	"strconv"
	"testing"

	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// The items of a list share the work of one call. What is left over goes on to the
// next, and where too little is left for any answer the error says so.
func TestWorkIsShared(t *testing.T) {
	shop := Shop{Offers: []Offer{{Item: Item{Kind: Ribbon}, Name: "10 yd", Pack: Quantity{Length: 10 * units.Yard}, Price: decimal.New(799, -2)}}}
	needs := []Need{
		{Item: Item{Kind: Ribbon}, Quantity: Quantity{Pieces: 40, Length: 54 * units.Inch}},
		{Item: Item{Kind: Ribbon}, Quantity: Quantity{Pieces: 30, Length: 41 * units.Inch}},
	}
	spent := func(work, items int64) (int64, error) {
		c := &checker{method: "Shop.List", work: work, items: items}
		_, err := shop.cheapest(c, needs)
		return work - c.work, err
	}
	all, err := spent(maxWork, 1)
	if err != nil || all <= 0 {
		t.Fatalf("%d, %v", all, err)
	}
	if few, err := spent(200, 1); !errors.Is(err, units.ErrLimit) || few < 200 {
		t.Errorf("%d, %v, want units.ErrLimit", few, err)
	}
	if few, err := spent(2000, 10); !errors.Is(err, units.ErrLimit) || few < 200 || few > 2000 {
		t.Errorf("%d of ten, %v, want units.ErrLimit", few, err)
	}

	balls := Shop{Offers: []Offer{
		{Item: Item{Kind: Ornament}, Name: "7", Pack: Quantity{Pieces: 7}, Price: decimal.New(7, 0)},
		{Item: Item{Kind: Ornament}, Name: "5", Pack: Quantity{Pieces: 5}, Price: decimal.New(5, 0)},
	}}
	c := &checker{method: "Shop.List", work: 3000, items: 2}
	for _, want := range []error{nil, units.ErrLimit} {
		if _, err := balls.cheapest(c, []Need{{Item: Item{Kind: Ornament}, Quantity: Quantity{Pieces: 999}}}); !errors.Is(err, want) {
			t.Errorf("got %v, want %v", err, want)
		}
	}
}

// Many rooms end the search for runs, and the bound tells; where no way at all is
// found, the error says that it ended.
func TestUndecidedRuns(t *testing.T) {
	shop := Shop{Joins: map[Item]Join{{Kind: Garland}: {Overlap: 2 * units.Inch}}}
	for i, feet := range []int64{5, 7, 11} {
		shop.Offers = append(shop.Offers, Offer{Item: Item{Kind: Garland}, Name: strconv.Itoa(i), Pack: Quantity{Length: units.Length(feet) * units.Foot}, Price: decimal.New(feet, 0)})
	}
	var needs []Need
	for i := range 40 {
		needs = append(needs, Need{Item: Item{Kind: Garland}, Quantity: Quantity{Length: units.Length(40+7*i) * units.Inch}})
	}
	c := &checker{method: "Shop.List", work: 1_000_000, items: 1}
	p, err := shop.cheapest(c, needs)
	if err != nil || !p.Bound.LessThan(p.Cost) || p.Bound.LessThan(p.Cost.Mul(decimal.New(95, -2))) {
		t.Errorf("between %v and %v, %v", p.Bound, p.Cost, err)
	}
	// Where stores differ in tax, what is not proved is a bound without tax too: 10 % less at most.
	taxed := shop
	taxed.Offers, taxed.Stores = slices.Clone(shop.Offers), []Store{{Name: "far", Tax: decimal.NewFromInt(10)}}
	taxed.Offers[1].Store = "far"
	c = &checker{method: "Shop.List", work: 1_000_000, items: 1}
	found, err := taxed.cheapestStores(c, wishes(needs))
	if err != nil || !found.Bound.LessThan(found.Total) {
		t.Fatalf("between %v and %v, %v", found.Bound, found.Total, err)
	}
	if p := found.Purchases[0]; !p.Bound.LessThan(p.Cost) || p.Bound.LessThan(found.Bound.Mul(decimal.New(90, -2))) || p.Bound.GreaterThan(found.Bound) {
		t.Errorf("between %v and %v, with tax %v and %v", p.Bound, p.Cost, found.Bound, found.Total)
	}
	shop.Offers = shop.Offers[:1]
	shop.Offers[0].Shelf = 4
	for i := range 4 {
		needs[i].Quantity.Length = 5 * units.Foot
	}
	c = &checker{method: "Shop.List", work: 1000, items: 100}
	if _, err := shop.cheapest(c, needs[:4]); !errors.Is(err, units.ErrLimit) {
		t.Errorf("got %v, want units.ErrLimit", err)
	}
	c = &checker{method: "Shop.List", work: 100_000, items: 100}
	if p, err := shop.cheapest(c, needs[:4]); err != nil || p.Buys[0].Packs != 4 {
		t.Errorf("got %v, %v", p, err)
	}
}
