package shopping_test

import (
	"errors"
	"runtime"
	"strconv"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// TestMemory holds the claim that a need of a million pieces stays within 64 MB,
// with 20 offers on limited shelves at one price a piece, the hardest there is.
func TestMemory(t *testing.T) {
	if testing.Short() {
		t.Skip("a few seconds")
	}
	shop := oneRate(20, 2_000)
	runtime.GC()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	p, err := shop.Cheapest(balls(1_000_000))
	if err != nil {
		t.Fatal(err)
	}
	runtime.ReadMemStats(&after)
	if got := after.TotalAlloc - before.TotalAlloc; got > 64<<20 {
		t.Errorf("allocated %d MB in all", got>>20)
	}
	// At one price a piece nothing over is the least.
	if shopping.Surplus(p.Left).Pieces != 0 || !p.Cost.Equal(decimal.NewFromInt(500_000)) {
		t.Errorf("%v over, for %v", shopping.Surplus(p.Left), p.Cost)
	}
}

// Sizes that have no common divisor and are as large as can be: the largest total
// that 999 and 1000 do not make is 999·1000 - 999 - 1000 = 997001 (Sylvester).
func TestCoprimePacks(t *testing.T) {
	shop := shopping.Shop{Offers: []shopping.Offer{
		{Item: shopping.Item{Kind: shopping.Ornament}, Name: "999", Pack: shopping.Quantity{Pieces: 999}, Price: cents(999)},
		{Item: shopping.Item{Kind: shopping.Ornament}, Name: "1000", Pack: shopping.Quantity{Pieces: 1000}, Price: cents(1000)},
	}}
	for need, surplus := range map[int]int{997_001: 1, 997_002: 0, 1: 998, 1001: 997} {
		p, err := shop.Cheapest(balls(need))
		if err != nil || shopping.Surplus(p.Left).Pieces != surplus {
			t.Errorf("need %d: %v over, %v, want %d", need, shopping.Surplus(p.Left), err, surplus)
		}
	}
}

// One pack that holds far more than is needed is no more work than a small one.
func TestHugePack(t *testing.T) {
	shop := shopping.Shop{Offers: []shopping.Offer{
		{Item: shopping.Item{Kind: shopping.Ornament}, Name: "crate", Pack: shopping.Quantity{Pieces: 1_000_000}, Price: cents(1000)},
		{Item: shopping.Item{Kind: shopping.Ornament}, Name: "box", Pack: shopping.Quantity{Pieces: 7}, Price: cents(100)},
	}}
	for need, want := range map[int][]int{69: {0, 10}, 70: {0, 10}, 71: {1, 0}, 999_999: {1, 0}} {
		p, err := shop.Cheapest(balls(need))
		if got := packs(shop, p); err != nil || got[0] != want[0] || got[1] != want[1] {
			t.Errorf("need %d: got %v, %v, want %v", need, got, err, want)
		}
	}
}

func TestThousandsOfOffers(t *testing.T) {
	// Different rates settle most of it.
	shop := manyOffers(1000, -1)
	for i := range shop.Offers {
		shop.Offers[i].Price = cents(int64(40+i%20) * int64(shop.Offers[i].Pack.Pieces))
	}
	if _, err := shop.Cheapest(balls(1_000_000)); err != nil {
		t.Error(err)
	}
	// At one rate the search itself has to do it, up to its bound.
	shop = oneRate(5000, 3)
	if _, err := shop.Cheapest(balls(2_000)); err != nil {
		t.Error(err)
	}
	_, err := shop.Cheapest(balls(1_000_000))
	if !errors.Is(err, units.ErrLimit) {
		t.Errorf("got %v, want ErrLimit", err)
	}
	want := `shopping.Shop.List: /offers "5000 of ornaments": too large to solve: want fewer offers, a smaller need, or sizes with a larger common measure`
	if err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
	if _, err := oneRate(250, -1).Cheapest(balls(1_000_000)); !errors.Is(err, units.ErrLimit) {
		t.Errorf("got %v, want ErrLimit", err)
	}
	_, err = shop.Fullest([]shopping.Need{open(balls(0), 1_000_000)})
	if !errors.Is(err, units.ErrLimit) {
		t.Errorf("got %v, want ErrLimit", err)
	}
}

// Strands whose lengths have no common measure but a nanometer.
func TestNoCommonMeasure(t *testing.T) {
	strand := func(name string, l units.Length, price int64) shopping.Offer {
		return shopping.Offer{Item: shopping.Item{Kind: shopping.Garland}, Name: name, Pack: ofLength(0, l), Price: cents(price)}
	}
	shop := shopping.Shop{Offers: []shopping.Offer{
		strand("a", 1_828_800_001, 750),
		strand("b", 2_743_200_007, 1050),
		strand("c", 914_400_011, 400),
	}}
	p, err := shop.Cheapest(garland(81 * units.Foot))
	// Nine strands b are 81 ft and 63 nm, and no rate is better than theirs.
	if err != nil || p.Buys[0].Packs != 9 || shopping.Surplus(p.Left).Length != 63 || !p.Cost.Equal(cents(9450)) {
		t.Errorf("got %v, %v", p, err)
	}
	// One price by length: nothing is settled beforehand.
	for i := range shop.Offers {
		o := &shop.Offers[i]
		o.Price = cents(int64(o.Pack.Length))
		o.Price = decimal.New(int64(o.Pack.Length), -9).Truncate(4)
	}
	if _, err := shop.Cheapest(garland(81 * units.Foot)); err != nil {
		t.Error(err)
	}
	for i := range 40 {
		shop.Offers = append(shop.Offers, strand(strconv.Itoa(i), units.Length(1_000_000_007+7919*i*i), 1))
	}
	for i := range shop.Offers {
		shop.Offers[i].Price = cents(0) // all are equally good
	}
	if _, err := shop.Cheapest(garland(1_000_000 * units.Meter)); !errors.Is(err, units.ErrLimit) {
		t.Errorf("got %v, want ErrLimit", err)
	}
	// The shortest strand there is, and the longest need.
	shop.Offers = []shopping.Offer{strand("speck", 1, 0), strand("a", 2_000_000_011, 0)}
	shop.Offers[0].Price = decimal.New(1, -4)
	shop.Offers[1].Price = decimal.New(2_000_000_011, -4)
	if _, err := shop.Cheapest(garland(999_983 * units.Meter)); !errors.Is(err, units.ErrLimit) {
		t.Errorf("got %v, want ErrLimit", err)
	}
}

// Whole pieces of one length are as packs, and have their bounds.
func TestManyRolls(t *testing.T) {
	var shop shopping.Shop
	for i := range 4000 {
		shop.Offers = append(shop.Offers, shopping.Offer{
			Item: shopping.Item{Kind: shopping.Ribbon}, Name: strconv.Itoa(i), Pack: ofLength(0, units.Length(i+1)*units.Inch),
			Price: cents(int64(i + 1)), Shelf: 3,
		})
	}
	needs := []shopping.Need{{Item: shopping.Item{Kind: shopping.Ribbon}, Quantity: ofLength(1_000_000, units.Inch)}}
	if _, err := shop.Cheapest(needs...); !errors.Is(err, units.ErrLimit) {
		t.Errorf("got %v, want ErrLimit", err)
	}
	// More pieces than one search for a packing takes, beside a running length.
	needs[0].Quantity.Pieces = 10_001
	needs = append(needs, shopping.Need{Item: shopping.Item{Kind: shopping.Ribbon}, Quantity: ofLength(0, units.Inch)})
	if p, err := shop.Cheapest(needs...); err != nil || p.Bound.GreaterThan(p.Cost) {
		t.Errorf("between %v and %v, %v", p.Bound, p.Cost, err)
	}
	// The length of all is one more cover.
	needs[0].Quantity.Pieces = 1
	needs[1].Quantity.Length = 500_000 * units.Inch
	if _, err := shop.Cheapest(needs...); !errors.Is(err, units.ErrLimit) {
		t.Errorf("got %v, want ErrLimit", err)
	}
}

// An overlap can take away the common measure.
func TestOverlapWithoutMeasure(t *testing.T) {
	shop := shopping.Shop{Joins: map[shopping.Item]shopping.Join{{Kind: shopping.Ribbon}: {Overlap: 300*units.Millimeter + 7}}}
	for i := range 40 {
		shop.Offers = append(shop.Offers, shopping.Offer{Item: shopping.Item{Kind: shopping.Ribbon}, Name: strconv.Itoa(i), Pack: ofLength(0, units.Length(i+1)*units.Yard), Price: cents(0)})
	}
	needs := []shopping.Need{
		{Item: shopping.Item{Kind: shopping.Ribbon}, Quantity: ofLength(1, units.Yard)},
		{Item: shopping.Item{Kind: shopping.Ribbon}, Quantity: ofLength(0, 20_000*units.Yard)},
	}
	if _, err := shop.Cheapest(needs...); !errors.Is(err, units.ErrLimit) {
		t.Errorf("got %v, want ErrLimit", err)
	}
}

// Whole pieces past the bounds of an exact answer: there is an answer, it is
// valid, and the bound is below it.
func TestManyCuts(t *testing.T) {
	shop := shopping.Shop{Offers: []shopping.Offer{
		{Item: shopping.Item{Kind: shopping.Ribbon}, Name: "10 yd", Pack: ofLength(0, 10*units.Yard), Price: cents(799)},
		{Item: shopping.Item{Kind: shopping.Ribbon}, Name: "7 m", Pack: ofLength(0, 7*units.Meter), Price: cents(612)},
	}}
	need := func(n int, l units.Length) shopping.Need {
		return shopping.Need{Item: shopping.Item{Kind: shopping.Ribbon}, Quantity: ofLength(n, l)}
	}
	var needs []shopping.Need
	for k := range 20 {
		needs = append(needs, need(25, units.Length(200+37*k)*units.Millimeter+units.Length(k)))
	}
	p, err := shop.Cheapest(needs...)
	if err != nil || p.Bound.GreaterThan(p.Cost) || p.Bound.LessThan(p.Cost.Mul(decimal.New(95, -2))) {
		t.Errorf("between %v and %v, %v", p.Bound, p.Cost, err)
	}
	// Too many pieces, lengths, kinds of rolls.
	for reason, needs := range map[string][]shopping.Need{
		"pieces": {need(10_000, units.Foot), need(1, units.Yard)},
		"lengths": func() (all []shopping.Need) {
			for k := range 65 {
				all = append(all, need(1, units.Length(k+1)*units.Inch))
			}
			return all
		}(),
	} {
		if _, err := shop.Cheapest(needs...); !errors.Is(err, units.ErrLimit) {
			t.Errorf("%s: got %v, want ErrLimit", reason, err)
		}
	}
	for i := range 63 {
		shop.Offers = append(shop.Offers, shopping.Offer{Item: shopping.Item{Kind: shopping.Ribbon}, Name: strconv.Itoa(i), Pack: ofLength(0, units.Length(i+80)*units.Inch), Price: cents(500)})
	}
	if _, err := shop.Cheapest(need(1, units.Foot), need(1, units.Yard)); !errors.Is(err, units.ErrLimit) {
		t.Errorf("got %v, want ErrLimit", err)
	}
	// One length is the same problem as packs, and has their bounds.
	shop.Offers = shop.Offers[:2]
	p, err = shop.Cheapest(need(1_000_000, units.Yard))
	if err != nil || !p.Bound.Equal(p.Cost) {
		t.Errorf("between %v and %v, %v", p.Bound, p.Cost, err)
	}
}
