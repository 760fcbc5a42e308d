package shopping

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// What one run costs with deals, against all numbers of packs: no less, and the bound no more. By hand, six strands of 5 ft at 4.10,
// three for 10.00, are 20.00 and no less, though 10.00 is no multiple of three.
func TestRunWithDeals(t *testing.T) {
	garland := Item{Kind: Garland}
	dollars := func(d int64) decimal.Decimal { return decimal.NewFromInt(d) }
	hand := Shop{Offers: []Offer{{Item: garland, Name: "5 ft", Pack: Quantity{Length: 5 * units.Foot}, Price: decimal.New(410, -2), Deals: []Deal{{Packs: 3, Price: dollars(10)}}}}}
	l, err := hand.List([]Need{{Item: garland, Quantity: Quantity{Length: 30 * units.Foot}}})
	if err != nil || !l.Total.Equal(dollars(20)) || !l.Bound.Equal(l.Total) {
		t.Errorf("between %v and %v, %v", l.Bound, l.Total, err)
	}
	r := rand.New(rand.NewPCG(16, 1))
	proved := 0
	for range 300 {
		var s Shop
		for i := range 1 + r.IntN(3) {
			each := 3 * (1 + r.Int64N(9))
			o := Offer{Item: garland, Name: strconv.Itoa(i), Pack: Quantity{Length: units.Length(1+r.IntN(9)) * units.Foot}, Price: dollars(each)}
			switch r.IntN(3) {
			case 0:
				o.Deals = []Deal{{Packs: 2 + r.IntN(3), Price: dollars(each + 1 + r.Int64N(each))}}
			case 1:
				o.Deals = []Deal{{From: 2 + r.IntN(3), Price: dollars(each - 1)}}
			}
			s.Offers = append(s.Offers, o)
		}
		need := units.Length(1+r.IntN(30)) * units.Foot
		l, err := s.List([]Need{{Item: garland, Quantity: Quantity{Length: need}}})
		if err != nil {
			t.Fatal(err)
		}
		// All numbers of packs up to what one offer alone would take.
		best := int64(1 << 40)
		var try func(k int, left units.Length, cost int64)
		try = func(k int, left units.Length, cost int64) {
			if left <= 0 {
				best = min(best, cost)
				return
			}
			if k == len(s.Offers) {
				return
			}
			for n := range int64(left/s.Offers[k].Pack.Length) + 5 { // a bundle may be cheaper than what it lacks
				try(k+1, left-units.Length(n)*s.Offers[k].Pack.Length, cost+s.Offers[k].packsCost(n))
			}
		}
		try(0, need, 0)
		least := dollars(best)
		if l.Total.LessThan(least) || l.Bound.GreaterThan(least) {
			t.Errorf("%+v, %v: between %v and %v, least %v", s, need, l.Bound, l.Total, least)
		}
		if l.Bound.Equal(l.Total) {
			proved++
		}
	}
	if proved < 150 {
		t.Errorf("%d of 300 proved", proved)
	}
}

// packsCost returns what n packs cost, in whole dollars, with at most one deal.
func (o Offer) packsCost(n int64) int64 {
	each := o.Price.IntPart()
	if len(o.Deals) == 0 {
		return n * each
	}
	d := o.Deals[0]
	price := d.Price.IntPart()
	if d.From > 0 {
		if n >= int64(d.From) {
			each = price
		}
		return n * each
	}
	k := int64(d.Packs)
	cost := n * each
	for m := range n/k + 1 {
		cost = min(cost, m*price+(n-m*k)*each)
	}
	return cost
}
