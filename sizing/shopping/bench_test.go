package shopping_test

import (
	"fmt"
	"strconv"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// manyOffers returns n offers of balls whose sizes have no common divisor, each
// at its own price, limited to left packs unless that is negative.
func manyOffers(n, left int) shopping.Shop {
	var s shopping.Shop
	for i := range n {
		size := 7 + 4*i + i%3
		o := shopping.Offer{
			Item: shopping.Item{Kind: shopping.Ornament}, Name: strconv.Itoa(i), Pack: shopping.Quantity{Pieces: size},
			Price: cents(int64(50*size - size*size%97 + 99)),
		}
		if left >= 0 {
			o.Shelf = onShelf(left)
		}
		s.Offers = append(s.Offers, o)
	}
	return s
}

// BenchmarkCheapest shows how time and memory grow with the need, with 20 offers
// that are not limited, and with as many of each on the shelf as make the need only
// together. B/op is all that is allocated in one call, so more than is held at once.
func BenchmarkCheapest(b *testing.B) {
	for _, need := range []int{100, 1_000, 10_000, 100_000, 1_000_000} {
		for _, limited := range []bool{false, true} {
			left := -1
			if limited {
				left = need/500 + 2
			}
			shop := manyOffers(20, left)
			b.Run(fmt.Sprintf("need=%d/limited=%t", need, limited), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := shop.Cheapest(balls(need)); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

// oneRate is manyOffers at one price for a piece: no pack is better than another,
// so nothing can be settled before the search.
func oneRate(n, left int) shopping.Shop {
	s := manyOffers(n, left)
	for i := range s.Offers {
		s.Offers[i].Price = cents(int64(50 * s.Offers[i].Pack.Pieces))
	}
	return s
}

// BenchmarkOneRate is BenchmarkCheapest with the hardest prices.
func BenchmarkOneRate(b *testing.B) {
	for _, need := range []int{1_000, 10_000, 100_000, 1_000_000} {
		for _, left := range []int{-1, need/500 + 2} {
			shop := oneRate(20, left)
			b.Run(fmt.Sprintf("need=%d/limited=%t", need, left >= 0), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := shop.Cheapest(balls(need)); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

// BenchmarkCuts cuts whole pieces of 8 lengths from rolls of 4.
func BenchmarkCuts(b *testing.B) {
	var shop shopping.Shop
	for i, yards := range []units.Length{3, 5, 10, 25} {
		shop.Offers = append(shop.Offers, shopping.Offer{Item: shopping.Item{Kind: shopping.Ribbon}, Name: strconv.Itoa(i), Pack: ofLength(0, yards*units.Yard), Price: cents(int64(yards*75 + 120))})
	}
	for _, pieces := range []int{8, 16, 32, 60, 120, 480} {
		var needs []shopping.Need
		for k := range 8 {
			n := pieces / 8
			if k < pieces%8 {
				n++
			}
			needs = append(needs, shopping.Need{Item: shopping.Item{Kind: shopping.Ribbon}, Quantity: ofLength(n, units.Length(9+6*k)*units.Inch)})
		}
		b.Run(fmt.Sprintf("pieces=%d", pieces), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				p, err := shop.Cheapest(needs...)
				if err != nil {
					b.Fatal(err)
				}
				if !p.Bound.Equal(p.Cost) {
					b.Logf("between %v and %v", p.Bound, p.Cost)
				}
			}
		})
	}
}

// BenchmarkFullest chooses among n types from 10 to 14 each, at half of what all would cost.
func BenchmarkFullest(b *testing.B) {
	for _, n := range []int{5, 12, 30, 100} {
		var shop shopping.Shop
		var choices []shopping.Need
		for i := range n {
			item := shopping.Item{Kind: shopping.Ornament, Type: strconv.Itoa(i)}
			for _, size := range []int{1, 4, 6} {
				shop.Offers = append(shop.Offers, shopping.Offer{Item: item, Name: strconv.Itoa(size), Pack: shopping.Quantity{Pieces: size}, Price: cents(int64(100*size + 37*i%250))})
			}
			choices = append(choices, shopping.Need{Item: item, Quantity: shopping.Quantity{Pieces: 10}, Open: units.Range[int]{Min: 10, Max: 14}})
		}
		least, err := shop.Filled(choices, 0)
		if err != nil {
			b.Fatal(err)
		}
		most, err := shop.Filled(choices, 100)
		if err != nil {
			b.Fatal(err)
		}
		shop.Budget = least.Total.Add(most.Total).Div(cents(200)).Truncate(2)
		b.Run(fmt.Sprintf("types=%d", n), func(b *testing.B) {
			for b.Loop() {
				if _, err := shop.Fullest(choices); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
