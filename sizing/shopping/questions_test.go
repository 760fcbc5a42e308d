package shopping_test

import (
	"fmt"

	"example.com/fircone/units"

	"example.com/fircone/sizing/shopping"

	"github.com/shopspring/decimal"
)

// Which boxes do I buy for 49 balls, in boxes of 6 at 5.00, 12 at 9.00 and 24 at 16.00?
// By hand: two of 24 are one short, and another box of 6 makes it 54 for 37.00;
// four of 12 and one of 6 are 41.00, and three of 24 are 48.00.
func ExampleShop_List_question() {
	offer := func(name string, pieces int, price string) shopping.Offer {
		return shopping.Offer{
			Item: shopping.Item{Kind: shopping.Ornament}, Name: name,
			Pack: shopping.Quantity{Pieces: pieces}, Price: decimal.RequireFromString(price),
		}
	}
	shop := shopping.Shop{Offers: []shopping.Offer{
		offer("box of 6", 6, "5.00"), offer("box of 12", 12, "9.00"), offer("box of 24", 24, "16.00"),
	}}
	list, _ := shop.List([]shopping.Need{{Item: shopping.Item{Kind: shopping.Ornament}, Quantity: shopping.Quantity{Pieces: 49}}})
	p := list.Purchases[0]
	for _, b := range p.Buys {
		fmt.Println(b.Packs, b.Offer.Name)
	}
	fmt.Println(p.Cost, "and", p.Left[0].Quantity, "left over")
	// Output:
	// 1 box of 6
	// 2 box of 24
	// 37 and 5 left over
}

// How full a tree does a budget of 30.00 make, of stars at 2.00 and bells at 3.00, 5 to
// 9 of each? By hand: the fewest cost 25.00; one more of each makes it 30.00.
func ExampleShop_Fullest_question() {
	offer := func(item shopping.Item, price string) shopping.Offer {
		return shopping.Offer{
			Item: item, Name: "single",
			Pack: shopping.Quantity{Pieces: 1}, Price: decimal.RequireFromString(price),
		}
	}
	choice := func(item shopping.Item) shopping.Need {
		return shopping.Need{Item: item, Quantity: shopping.Quantity{Pieces: 5}, Open: units.Range[int]{Min: 5, Max: 9}}
	}
	stars := shopping.Item{Kind: shopping.Ornament, Type: "star"}
	bells := shopping.Item{Kind: shopping.Bell}
	shop := shopping.Shop{
		Offers: []shopping.Offer{offer(stars, "2.00"), offer(bells, "3.00")},
		Budget: decimal.RequireFromString("30.00"),
	}
	needs := []shopping.Need{choice(stars), choice(bells)}
	list, _ := shop.Fullest(needs)
	for _, p := range list.Purchases {
		fmt.Println(p.Shares[0].Gets, p.Shares[0].Item)
	}

	shop.Budget = decimal.RequireFromString("20.00")
	list, _ = shop.Fullest(needs)
	fmt.Println("for 20.00:", list.Purchases[0].Shares[0].Gets, "and", list.Purchases[1].Shares[0].Gets, "for", list.Total)
	fmt.Println("the fewest cost", list.Least)
	// Output:
	// 6 ornaments, star
	// 6 bells
	// for 20.00: 4 and 4 for 20
	// the fewest cost 25
}
