package shopping_test

import (
	"encoding/json"
	"errors"
	"fmt"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// boxes are the picks of the station's shop, in three sizes of box.
func boxes() []shopping.Offer {
	return []shopping.Offer{
		{Item: shopping.Item{Kind: shopping.Pick}, Name: "box of 6", Pack: shopping.Quantity{Pieces: 6}, Price: decimal.RequireFromString("5.00")},
		{Item: shopping.Item{Kind: shopping.Pick}, Name: "box of 12", Pack: shopping.Quantity{Pieces: 12}, Price: decimal.RequireFromString("9.00")},
		{Item: shopping.Item{Kind: shopping.Pick}, Name: "box of 24", Pack: shopping.Quantity{Pieces: 24}, Price: decimal.RequireFromString("16.00")},
	}
}

// station is what picks the three rooms of the station take: 3 for each foot of a
// 9 ft tree and of a 4 ft 6 in tree, and one each 8 in of a 64 in mantel.
func station() []shopping.Need {
	return []shopping.Need{
		{Item: shopping.Item{Kind: shopping.Pick}, Room: "ticket hall", Quantity: shopping.Quantity{Pieces: 27}},
		{Item: shopping.Item{Kind: shopping.Pick}, Room: "waiting room", Quantity: shopping.Quantity{Pieces: 14}},
		{Item: shopping.Item{Kind: shopping.Pick}, Room: "tea room", Quantity: shopping.Quantity{Pieces: 8}},
	}
}

// The worked example of the package documentation. The optimum for packs of 6, 12
// and 24 and a need of 49 is in testdata/packs.csv, found there by two methods.
func Example() {
	shop := shopping.Shop{Offers: boxes()}
	apart := decimal.Zero
	for _, need := range station() {
		list, err := shop.List([]shopping.Need{need})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(need.Room, need.Quantity, "for", list.Total.StringFixed(2))
		apart = apart.Add(list.Total)
	}
	fmt.Println("each room by itself:", apart.StringFixed(2))

	list, err := shop.List(station())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("together:")
	fmt.Print(list)
	// Output:
	// ticket hall 27 for 21.00
	// waiting room 14 for 14.00
	// tea room 8 for 9.00
	// each room by itself: 44.00
	// together:
	// [ ] picks
	//     ticket hall                       27
	//     waiting room                      14
	//     tea room                           8
	//     1 x box of 6 at 5.00            5.00
	//     2 x box of 24 at 16.00         32.00
	//     left over                          5
	//
	// total                              37.00
}

// Sources: J. Burkardt, CHANGE_MAKING test set (FSU), problem 5, for 1, 3 and 4; the
// others are in testdata/packs.csv, found there by two methods. The obvious ways by
// hand: 4+1+1 at 1.00 a piece; 10.00+10.00+3.00; 15.00+7.00.
func Example_obviousWays() {
	for _, row := range []struct {
		need  int
		packs []int
		price []string
	}{
		{6, []int{1, 3, 4}, []string{"1.00", "3.00", "4.00"}},
		{43, []int{9, 20, 6}, []string{"4.50", "10.00", "3.00"}},
		{30, []int{1, 10, 25}, []string{"1.00", "7.00", "15.00"}},
	} {
		var shop shopping.Shop
		for i, n := range row.packs {
			shop.Offers = append(shop.Offers, shopping.Offer{
				Item: shopping.Item{Kind: shopping.Ornament}, Name: fmt.Sprint(n),
				Pack: shopping.Quantity{Pieces: n}, Price: decimal.RequireFromString(row.price[i]),
			})
		}
		list, err := shop.List([]shopping.Need{{Item: shopping.Item{Kind: shopping.Ornament}, Quantity: shopping.Quantity{Pieces: row.need}}})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Print(row.need, ":")
		for _, b := range list.Purchases[0].Buys {
			fmt.Printf(" %d x %s", b.Packs, b.Offer.Name)
		}
		fmt.Println(" for", list.Total.StringFixed(2))
	}
	// Output:
	// 6: 2 x 3 for 6.00
	// 43: 2 x 9 1 x 20 1 x 6 for 22.00
	// 30: 5 x 1 1 x 25 for 20.00
}

// Source: testdata/packs.csv, packs of 9, 20 and 6 and a need of 43, by dynamic
// programming and by full enumeration. By hand: 20 + 20 + 6 for 23.00 against
// 9 + 9 + 20 + 6 for 22.00.
func ExampleShop_List_packs() {
	shop := shopping.Shop{Offers: []shopping.Offer{
		{Item: shopping.Item{Kind: shopping.Ornament}, Name: "box of 9", Pack: shopping.Quantity{Pieces: 9}, Price: decimal.RequireFromString("4.50")},
		{Item: shopping.Item{Kind: shopping.Ornament}, Name: "tub of 20", Pack: shopping.Quantity{Pieces: 20}, Price: decimal.RequireFromString("10.00")},
		{Item: shopping.Item{Kind: shopping.Ornament}, Name: "box of 6", Pack: shopping.Quantity{Pieces: 6}, Price: decimal.RequireFromString("3.00")},
	}}
	list, err := shop.List([]shopping.Need{{Item: shopping.Item{Kind: shopping.Ornament}, Quantity: shopping.Quantity{Pieces: 43}}})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, b := range list.Purchases[0].Buys {
		fmt.Println(b.Packs, b.Offer.Name)
	}
	fmt.Println(list.Total.StringFixed(2), "with", list.Purchases[0].Left[0].Quantity, "over")
	// Output:
	// 2 box of 9
	// 1 tub of 20
	// 1 box of 6
	// 22.00 with 1 over
}

// By hand: with 2 in lost at each join, a strand of 9 ft adds 106 in and one of
// 6 ft adds 70 in, and 972 - 2 = 970 in are wanted. 8·106 + 2·70 = 988 does that
// for 99.00; 9 and 1 cost 102.00, 7 and 4 cost 103.50, 6 and 5 cost 100.50. Nine of them are
// 75 ft less 16 in, and 7 ft 6 in of the tenth less 2 in makes it 81 ft.
func ExampleShop_List_strands() {
	shop := shopping.Shop{
		Offers: []shopping.Offer{
			{Item: shopping.Item{Kind: shopping.Garland}, Name: "6 ft strand", Pack: shopping.Quantity{Length: 6 * units.Foot}, Price: decimal.RequireFromString("7.50")},
			{Item: shopping.Item{Kind: shopping.Garland}, Name: "9 ft strand", Pack: shopping.Quantity{Length: 9 * units.Foot}, Price: decimal.RequireFromString("10.50")},
		},
		Joins: map[shopping.Item]shopping.Join{{Kind: shopping.Garland}: {Overlap: 2 * units.Inch}},
	}
	list, err := shop.List([]shopping.Need{{Item: shopping.Item{Kind: shopping.Garland}, Room: "ticket hall", Quantity: shopping.Quantity{Length: 81 * units.Foot}}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(list)
	// Output:
	// [ ] garland
	//     ticket hall                    81 ft
	//     2 x 6 ft strand at 7.50        15.00
	//     8 x 9 ft strand at 10.50       84.00
	//     use 2 x 6 ft strand whole for ticket
	//       hall
	//     use 7 x 9 ft strand whole for ticket
	//       hall
	//     cut 1 x 9 ft strand into 7 ft 6 in
	//       for ticket hall, 1 ft 6 in left
	//     lost in joins              1 ft 6 in
	//     left over                  1 ft 6 in
	//
	// total                              99.00
}

// By hand: 4·54 in + 6·27 in = 378 in is more than one 10 yd roll (360 in) or two
// of 5 yd; a 10 yd (4 and 5 pieces, 351 in) and a 5 yd roll cost 12.30, three of 5 yd 13.20, two of 10 yd 15.80.
func ExampleShop_List_wholePieces() {
	shop := shopping.Shop{Offers: []shopping.Offer{
		{Item: shopping.Item{Kind: shopping.Ribbon}, Name: "5 yd roll", Pack: shopping.Quantity{Length: 5 * units.Yard}, Price: decimal.RequireFromString("4.40")},
		{Item: shopping.Item{Kind: shopping.Ribbon}, Name: "10 yd roll", Pack: shopping.Quantity{Length: 10 * units.Yard}, Price: decimal.RequireFromString("7.90")},
	}}
	list, err := shop.List([]shopping.Need{
		{Item: shopping.Item{Kind: shopping.Ribbon}, Room: "tea room", Quantity: shopping.Quantity{Pieces: 4, Length: 54 * units.Inch}},
		{Item: shopping.Item{Kind: shopping.Ribbon}, Room: "waiting room", Quantity: shopping.Quantity{Pieces: 6, Length: 27 * units.Inch}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(list.Total.StringFixed(2), "and nothing costs less than", list.Bound.StringFixed(2))
	for _, c := range list.Purchases[0].Cuts {
		fmt.Println(c)
	}
	// Output:
	// 12.30 and nothing costs less than 12.30
	// cut 1 x 5 yd roll into 1 of 2 ft 3 in for waiting room, 12 ft 9 in left
	// cut 1 x 10 yd roll into 4 of 4 ft 6 in for tea room + 5 of 2 ft 3 in for waiting room, 9 in left
}

// By hand: 5 picks are owned, so 44 of 49 are missing; two boxes of 24 for 32.00
// hold 48. One box of 24 and two of 12 cost 34.00.
func ExampleShop_List() {
	shop := shopping.Shop{
		Offers: boxes(),
		Owned:  []shopping.Lot{{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: 5}}},
	}
	list, err := shop.List(station())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(list)
	// Output:
	// [ ] picks
	//     ticket hall                       27
	//     waiting room                      14
	//     tea room                           8
	//     owned                              5
	//     2 x box of 24 at 16.00         32.00
	//     left over                          4
	//
	// total                              32.00
}

// If the shelves do not cover the need, the list says who gets how much. By hand: 3·12 = 36
// of 49; in proportion to 27, 14 and 8 that is 19.8, 10.3 and 5.9, by the largest remainder
// 20, 10 and 6.
func ExampleShop_List_shelf() {
	shop := shopping.Shop{Offers: boxes()[1:2]}
	shop.Offers[0].Shelf = 3
	list, err := shop.List(station())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(list)
	// Output:
	// [ ] picks
	//     ticket hall                       20
	//       not enough: 20 to be had, 7 short
	//     waiting room                      10
	//       not enough: 10 to be had, 4 short
	//     tea room                           6
	//       not enough: 6 to be had, 2 short
	//     3 x box of 12 at 9.00          27.00
	//
	// total                              27.00
}

// 24 of 28 will do where 20 are enough.
func ExampleShare_Enough() {
	shop := shopping.Shop{Offers: boxes()[1:2]}
	shop.Offers[0].Shelf = 2
	list, err := shop.List([]shopping.Need{{
		Item: shopping.Item{Kind: shopping.Pick}, Room: "ticket hall",
		Quantity: shopping.Quantity{Pieces: 28}, Open: units.Range[int]{Min: 20, Max: 28},
	}})
	if err != nil {
		fmt.Println(err)
		return
	}
	share := list.Purchases[0].Shares[0]
	fmt.Println(share.Gets, "of", share.Quantity, "and", share.Short(), "short:", share.Enough())
	// Output:
	// 24 of 28 and 4 short: true
}

func ExampleShare_Short() {
	list, _ := shopping.Shop{}.List(station())
	share := list.Purchases[0].Shares[0]
	fmt.Println(share.Room, share.Short(), share.Enough())
	// Output:
	// ticket hall 27 false
}

// What is missing of a list, and from which room.
func ExampleList_Short() {
	shop := shopping.Shop{Offers: boxes()[1:2]}
	shop.Offers[0].Shelf = 3
	list, err := shop.List(station())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range list.Short() {
		fmt.Println(s.Room, s.Short(), "of", s.Quantity)
	}
	// Output:
	// ticket hall 7 of 27
	// waiting room 4 of 14
	// tea room 2 of 8
}

// What goes back into the box is the owned stock of next year.
func ExamplePurchase_left() {
	shop := shopping.Shop{Offers: boxes()}
	list, err := shop.List(station())
	if err != nil {
		fmt.Println(err)
		return
	}
	var next shopping.Shop
	for _, p := range list.Purchases {
		next.Owned = append(next.Owned, p.Left...)
	}
	data, err := json.Marshal(next)
	fmt.Println(string(data), err)
	// Output:
	// {"owned":[{"item":"picks","quantity":5}]} <nil>
}

// A mixed box of 8 crimson, 8 gold and 8 ivory ornaments at 20.00, beside boxes of 12 of one color
// at 14.00. By hand: 16, 8 and 8 are wanted. Two mixed boxes are 40.00; one, and a box of
// crimson for the other 8, are 34.00; boxes of one color alone are 56.00.
func Example_mixedBox() {
	ornament := func(color string) shopping.Item { return shopping.Item{Kind: shopping.Ornament, Color: color} }
	mixed := shopping.Offer{Name: "mixed box", Price: decimal.RequireFromString("20.00")}
	shop := shopping.Shop{}
	var needs []shopping.Need
	for _, color := range []string{"crimson", "gold", "ivory"} {
		mixed.Contents = append(mixed.Contents, shopping.Lot{Item: ornament(color), Quantity: shopping.Quantity{Pieces: 8}})
		shop.Offers = append(shop.Offers, shopping.Offer{
			Item: ornament(color), Name: "box of 12", Pack: shopping.Quantity{Pieces: 12}, Price: decimal.RequireFromString("14.00"),
		})
		needs = append(needs, shopping.Need{Item: ornament(color), Room: "ticket hall", Quantity: shopping.Quantity{Pieces: 8}})
	}
	needs[0].Quantity.Pieces = 16
	shop.Offers = append(shop.Offers, mixed)
	list, err := shop.List(needs)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(list)
	// Output:
	// [ ] crimson ornaments
	//     ticket hall                       16
	// [ ] gold ornaments
	//     ticket hall                        8
	// [ ] ivory ornaments
	//     ticket hall                        8
	//     1 x box of 12 at 14.00         14.00
	//     1 x mixed box at 20.00         20.00
	//     left over, crimson ornaments       4
	//
	// total                              34.00
}

// Two of the crimson types on offer, 3 to 5 of each, 8 in all. By hand: 4 stars and 4 balls are
// a card and a box, 11.00; 5 and 3 take the second card, and birds are dearer.
func ExampleNeed_types() {
	offer := func(kind, name string, pieces int, price string) shopping.Offer {
		return shopping.Offer{
			Item: shopping.Item{Kind: shopping.Ornament, Color: "crimson", Type: kind}, Name: name,
			Pack: shopping.Quantity{Pieces: pieces}, Price: decimal.RequireFromString(price),
		}
	}
	shop := shopping.Shop{Offers: []shopping.Offer{
		offer("star", "card of 4", 4, "5.00"), offer("ball", "box of 4", 4, "6.00"), offer("bird", "bird", 1, "3.00"),
	}}
	list, err := shop.List([]shopping.Need{{
		Item: shopping.Item{Kind: shopping.Ornament, Color: "crimson"}, Room: "waiting room",
		Quantity: shopping.Quantity{Pieces: 8}, Types: 2, Each: units.Range[int]{Min: 3, Max: 5},
	}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(list)
	// Output:
	// [ ] crimson ornaments
	//     waiting room                       8
	//       crimson ornaments, star          4
	//       crimson ornaments, ball          4
	//     1 x card of 4 at 5.00           5.00
	//     1 x box of 4 at 6.00            6.00
	//
	// total                              11.00
}

// A string of lights is not divided: 750 and 450 lamps are 8 and 5 strings of 100, not 12.
func Example_lights() {
	lights := shopping.Item{Kind: shopping.Light}
	shop := shopping.Shop{Offers: []shopping.Offer{
		{Item: lights, Name: "string of 100", Pack: shopping.Quantity{Pieces: 100}, Price: decimal.RequireFromString("8.90")},
	}}
	list, err := shop.List([]shopping.Need{
		{Item: lights, Room: "ticket hall", Quantity: shopping.Quantity{Pieces: 750}},
		{Item: lights, Room: "waiting room", Quantity: shopping.Quantity{Pieces: 450}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(list)
	// Output:
	// [ ] lights
	//     ticket hall                      800
	//       for 750, in whole strings
	//       8 x 100 lights
	//     waiting room                     500
	//       for 450, in whole strings
	//       5 x 100 lights
	//     13 x string of 100 at 8.90    115.70
	//
	// total                             115.70
}

// Where the shelf is short of picks, 9 ft of garland stand for 3 of them. By hand: 12 of 27 are
// on the shelf; the other 15 are 45 ft, five strands of 9 ft.
func ExampleNeed_instead() {
	picks, garland := shopping.Item{Kind: shopping.Pick}, shopping.Item{Kind: shopping.Garland}
	shop := shopping.Shop{Offers: []shopping.Offer{
		{Item: picks, Name: "box of 12", Pack: shopping.Quantity{Pieces: 12}, Price: decimal.RequireFromString("9.00"), Shelf: 1},
		{Item: garland, Name: "9 ft strand", Pack: shopping.Quantity{Length: 9 * units.Foot}, Price: decimal.RequireFromString("10.50")},
	}}
	list, err := shop.List([]shopping.Need{{
		Item: picks, Room: "ticket hall", Quantity: shopping.Quantity{Pieces: 27},
		Instead: []shopping.Need{{Item: garland, Quantity: shopping.Quantity{Length: 27 / 3 * 9 * units.Foot}}},
	}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(list)
	// Output:
	// [ ] picks
	//     ticket hall                       12
	//       a substitute stands for 15
	//     1 x box of 12 at 9.00           9.00
	//
	// [ ] garland
	//     ticket hall                    45 ft
	//     5 x 9 ft strand at 10.50       52.50
	//     use 5 x 9 ft strand whole for ticket
	//       hall
	//
	// total                              61.50
}

// 3 for the price of 2. By hand: 5 boxes of 9.00 are three for 18.00 and two for 18.00.
func ExampleDeal() {
	offer := boxes()[1]
	offer.Deals = []shopping.Deal{{Packs: 3, Price: decimal.RequireFromString("18.00")}}
	list, err := shopping.Shop{Offers: []shopping.Offer{offer}}.List(station())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(list.Purchases[0].Buys[0].Packs, "boxes for", list.Total.StringFixed(2))
	// Output:
	// 5 boxes for 36.00
}

// Two stores: the near one is dearer, the far one delivers for 6.00, free from 40.00 on, and adds
// 5 % tax. By hand: 8 picks are a box, 9.00 near or 7.00 and the delivery, with the tax 13.65; 49
// take five, 45.00 near or 35.00 + 6.00 and the tax, 43.05.
func ExampleStore() {
	near, far := boxes()[1], boxes()[1]
	near.Name, near.Store = "box of 12, near", "corner shop"
	far.Name, far.Store, far.Price = "box of 12, far", "mail order", decimal.RequireFromString("7.00")
	shop := shopping.Shop{
		Offers: []shopping.Offer{near, far},
		Stores: []shopping.Store{{
			Name: "mail order", Delivery: decimal.RequireFromString("6.00"),
			FreeFrom: decimal.RequireFromString("40.00"), Tax: decimal.RequireFromString("5"),
		}},
	}
	for _, needs := range [][]shopping.Need{station()[2:], station()} {
		list, err := shop.List(needs)
		if err != nil {
			fmt.Println(err)
			return
		}
		for _, p := range list.Purchases {
			for _, b := range p.Buys {
				fmt.Println(b.Packs, b.Offer.Store, "for", list.Total.StringFixed(2))
			}
		}
	}
	// Output:
	// 1 corner shop for 9.00
	// 5 mail order for 43.05
}

func ExampleOffer_MarshalJSON() {
	data, err := json.Marshal([]shopping.Offer{
		{Item: shopping.Item{Kind: shopping.Pick}, Name: "sample", Pack: shopping.Quantity{Pieces: 1}, Price: decimal.NewFromInt(0), Deals: []shopping.Deal{{Packs: 3, Price: decimal.NewFromInt(0)}}},
		{Item: shopping.Item{Kind: shopping.Pick}, Name: "ask at the counter", Pack: shopping.Quantity{Pieces: 6}},
	})
	fmt.Println(string(data), err)
	// Output:
	// [{"item":"picks","name":"sample","pack":1,"price":"0","deals":[{"packs":3,"price":"0"}]},{"item":"picks","name":"ask at the counter","pack":6}] <nil>
}

// choices are three types of ornament for a 9 ft tree, 7 to 11 of each.
func choices() (shopping.Shop, []shopping.Need) {
	price := decimal.RequireFromString
	shop := shopping.Shop{
		Offers: []shopping.Offer{
			{Item: shopping.Item{Kind: shopping.Ornament, Type: "glass"}, Name: "box of 6", Pack: shopping.Quantity{Pieces: 6}, Price: price("9.00")},
			{Item: shopping.Item{Kind: shopping.Bell}, Name: "card of 4", Pack: shopping.Quantity{Pieces: 4}, Price: price("5.00")},
			{Item: shopping.Item{Kind: shopping.Ornament, Type: "star"}, Name: "star", Pack: shopping.Quantity{Pieces: 1}, Price: price("2.25")},
		},
		Budget: price("52.00"),
	}
	var choices []shopping.Need
	for _, item := range []shopping.Item{{Kind: shopping.Ornament, Type: "glass"}, {Kind: shopping.Bell}, {Kind: shopping.Ornament, Type: "star"}} {
		choices = append(choices, shopping.Need{Item: item, Room: "ticket hall", Quantity: shopping.Quantity{Pieces: 7}, Open: units.Range[int]{Min: 7, Max: 11}})
	}
	return shop, choices
}

// By hand: two boxes of glass balls cost 18.00 and hold 12, so 11 of them are no
// dearer than 7. With 9 bells (three cards, 15.00) and 9 stars (20.25) that is 53.25,
// over the budget, so one of these has to stay below half full. Either 8 bells
// (10.00) and 10 stars (22.50), or 11 bells (15.00) and 8 stars (18.00): both have
// one item a quarter full, and the next is fuller in the second.
func ExampleShop_Fullest() {
	shop, choices := choices()
	list, err := shop.Fullest(choices)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range list.Purchases {
		fmt.Println(p.Shares[0].Item, p.Shares[0].Basis, "for", p.Cost.StringFixed(2))
	}
	fmt.Println("total", list.Total.StringFixed(2))

	shop.Budget = decimal.RequireFromString("40.00")
	list, err = shop.Fullest(choices)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("for 40.00:")
	for _, p := range list.Purchases {
		fmt.Println(p.Shares[0].Gets, "of", p.Shares[0].Quantity, p.Shares[0].Item)
	}
	fmt.Println("the fewest cost", list.Least)
	// Output:
	// ornaments, glass 11 of 7 to 11 for 18.00
	// bells 11 of 7 to 11 for 15.00
	// ornaments, star 8 of 7 to 11 for 18.00
	// total 51.00
	// for 40.00:
	// 6 of 7 ornaments, glass
	// 7 of 7 bells
	// 7 of 7 ornaments, star
	// the fewest cost 43.75
}

// A budget that is left out is no money. By hand: with 5 bells owned the fewest, 5, need
// no money and the most, 9, are past it; with 4 owned a fifth costs 3.00.
func ExampleShop_Fullest_noMoney() {
	shop := shopping.Shop{
		Offers: []shopping.Offer{{Item: shopping.Item{Kind: shopping.Bell}, Name: "one", Pack: shopping.Quantity{Pieces: 1}, Price: decimal.RequireFromString("3.00")}},
		Owned:  []shopping.Lot{{Item: shopping.Item{Kind: shopping.Bell}, Quantity: shopping.Quantity{Pieces: 5}}},
	}
	bells := []shopping.Need{{Item: shopping.Item{Kind: shopping.Bell}, Quantity: shopping.Quantity{Pieces: 5}, Open: units.Range[int]{Min: 5, Max: 9}}}
	list, err := shop.Fullest(bells)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(list.Purchases[0].Shares[0].Basis, "for", list.Total)

	shop.Owned[0].Quantity.Pieces = 4
	list, err = shop.Fullest(bells)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(list.Purchases[0].Shares[0].Gets, "for", list.Total, "and the least costs", list.Least)
	// Output:
	// 5 of 5 to 9 for 0
	// 4 for 0 and the least costs 3
}

func ExampleNeed_String() {
	_, choices := choices()
	fmt.Println(choices[0])
	fmt.Println(shopping.Need{Item: shopping.Item{Kind: shopping.Garland}, Quantity: shopping.Quantity{Length: 81 * units.Foot}})
	// Output:
	// ornaments, glass: 7 to 11
	// garland: 81 ft
}

func ExampleLot_String() {
	fmt.Println(shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Size: 4 * units.Inch}, Quantity: shopping.Quantity{Pieces: 16}})
	// Output: ornaments, 4 in: 16
}

func ExampleShare_String() {
	need := shopping.Need{Item: shopping.Item{Kind: shopping.Pick, Type: "mantel"}, Room: "tea room", Quantity: shopping.Quantity{Pieces: 8}}
	fmt.Println(shopping.Share{Need: need, Gets: shopping.Quantity{Pieces: 4}})
	need.Room = ""
	fmt.Println(shopping.Share{Need: need, Gets: need.Quantity})
	// Output:
	// picks, mantel (tea room): 4 of 8
	// picks, mantel: 8 of 8
}

func ExampleKind_String() {
	fmt.Println(shopping.Ornament, "and", shopping.BaseGarland)
	// Output:
	// ornaments and base garland
}

func ExampleKind_Count() {
	fmt.Println(shopping.Pick.Count(1))
	fmt.Println(shopping.Pick.Count(27))
	// Output:
	// 1 pick
	// 27 picks
}

func ExampleKind_Running() {
	fmt.Println(shopping.Garland.Running(), shopping.Ornament.Running())
	// Output:
	// true false
}

func ExampleKind_UnmarshalText_names() {
	var k shopping.Kind
	err := k.UnmarshalText([]byte("Wire ties"))
	fmt.Println(k == shopping.Tie, err)
	err = k.UnmarshalText([]byte("tinsel"))
	fmt.Println(errors.Is(err, units.ErrName))
	// Output:
	// true <nil>
	// true
}

func ExampleKind_MarshalText() {
	data, err := json.Marshal(map[shopping.Kind]int{shopping.Pick: 27})
	fmt.Println(string(data), err)
	// Output:
	// {"picks":27} <nil>
}

func ExampleKind_UnmarshalText() {
	var k shopping.Kind
	err := json.Unmarshal([]byte(`"garland"`), &k)
	fmt.Println(k, k == shopping.Garland, err)
	// Output:
	// garland true <nil>
}

func ExampleByKind_String() {
	fmt.Println(shopping.ByKind[shopping.Quantity]{
		shopping.Ornament: {Pieces: 49},
		shopping.Garland:  {Length: 63 * units.Foot},
	})
	// Output:
	// ornaments 49, garland 63 ft
}

func ExampleByKind_MarshalJSON() {
	var table shopping.ByKind[int]
	table[shopping.Ornament] = 49
	table[shopping.Pick] = 27
	data, err := json.Marshal(table)
	fmt.Println(string(data), err)
	// Output:
	// {"ornaments":49,"picks":27} <nil>
}

func ExampleByKind_UnmarshalJSON() {
	var table shopping.ByKind[units.Length]
	err := json.Unmarshal([]byte(`{"garland": "81 ft", "base garland": "10 ft"}`), &table)
	fmt.Println(table[shopping.Garland], table[shopping.Ribbon], err)
	// Output:
	// 81 ft 0 ft <nil>
}

func ExampleItem_String() {
	fmt.Println(shopping.Item{Kind: shopping.Pick})
	fmt.Println(shopping.Item{Kind: shopping.Ornament, Type: "star", Color: "crimson", Size: 3 * units.Inch})
	// Output:
	// picks
	// crimson ornaments, star, 3 in
}

func ExampleParseItem() {
	for _, text := range []string{"Crimson ornaments, star, 3 in", "dark green base garland", "picks, a, b"} {
		i, err := shopping.ParseItem(text)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%v: type %q, color %q, size %v\n", i.Kind, i.Type, i.Color, i.Size)
	}
	// Output:
	// ornaments: type "star", color "Crimson", size 3 in
	// base garland: type "", color "dark green", size 0 ft
	// shopping.ParseItem: text "a, b": not understood: want at most 64 bytes of text in one line, without commas and without spaces at its ends
}

func ExampleItem_MarshalText() {
	data, err := json.Marshal(shopping.Item{Kind: shopping.Ribbon, Color: "ivory", Size: 5 * units.Inch / 2})
	fmt.Println(string(data), err)
	// Output:
	// "ivory ribbon, 2 1/2 in" <nil>
}

func ExampleItem_UnmarshalText() {
	var i shopping.Item
	err := json.Unmarshal([]byte(`"picks, berries"`), &i)
	fmt.Println(i.Kind, "of", i.Type, err)
	// Output:
	// picks of berries <nil>
}

func ExampleShelf_MarshalJSON() {
	data, err := json.Marshal([]shopping.Shelf{0, shopping.SoldOut, 3})
	fmt.Println(string(data), err)
	// Output:
	// [null,0,3] <nil>
}

func ExampleShelf_UnmarshalJSON() {
	var shelves []shopping.Shelf
	err := json.Unmarshal([]byte("[null, 0, 3]"), &shelves)
	fmt.Println(shelves, err)
	// Output:
	// [0 -1 3] <nil>
}

func ExampleParseQuantity() {
	for _, text := range []string{"27", "27 yd", "4 of 1 1/2 yd", "27 of"} {
		q, err := shopping.ParseQuantity(text)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(q)
	}
	// Output:
	// 27
	// 81 ft
	// 4 of 4 ft 6 in
	// shopping.ParseQuantity: text "27 of": not understood: want a number of pieces, a length, or both as in "4 of 54 in"
}

func ExampleQuantity_String() {
	fmt.Println(shopping.Quantity{Pieces: 27})
	fmt.Println(shopping.Quantity{Length: 81 * units.Foot})
	fmt.Println(shopping.Quantity{Pieces: 4, Length: 54 * units.Inch})
	// Output:
	// 27
	// 81 ft
	// 4 of 4 ft 6 in
}

func ExampleQuantity_MarshalJSON() {
	data, err := json.Marshal([]shopping.Quantity{
		{Pieces: 27},
		{Length: 81 * units.Foot},
		{Pieces: 4, Length: 54 * units.Inch},
	})
	fmt.Println(string(data), err)
	// Output:
	// [27,"81 ft","4 of 4 ft 6 in"] <nil>
}

func ExampleQuantity_UnmarshalJSON() {
	var quantities []shopping.Quantity
	err := json.Unmarshal([]byte(`[27, "81 ft", "4 of 54 in"]`), &quantities)
	fmt.Println(quantities, err)
	// Output:
	// [27 81 ft 4 of 4 ft 6 in] <nil>
}

// The file format, read and used. By hand: 5 of 8 picks are owned, and one box of
// 6 for 5.00 holds the other 3.
func ExampleShop() {
	const file = `{
	  "offers": [
	    {"item": "picks", "name": "box of 6", "pack": 6, "price": "5.00"},
	    {"item": "picks", "name": "box of 12", "pack": 12, "price": "9.00", "shelf": 3}
	  ],
	  "owned": [{"item": "picks", "quantity": 5}]
	}`
	var shop shopping.Shop
	if err := json.Unmarshal([]byte(file), &shop); err != nil {
		fmt.Println(err)
		return
	}
	list, err := shop.List([]shopping.Need{{Item: shopping.Item{Kind: shopping.Pick}, Room: "tea room", Quantity: shopping.Quantity{Pieces: 8}}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(list.Purchases[0].Buys[0].Packs, list.Purchases[0].Buys[0].Offer.Name, "for", list.Total.StringFixed(2))
	// Output:
	// 1 box of 6 for 5.00
}

func ExampleList_String() {
	shop := shopping.Shop{Offers: boxes()}
	list, err := shop.List(station()[2:])
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(list.String())
	// Output:
	// [ ] picks
	//     tea room                           8
	//     1 x box of 12 at 9.00           9.00
	//     left over                          4
	//
	// total                               9.00
}

func ExamplePurchase_String() {
	shop := shopping.Shop{Offers: boxes()}
	list, err := shop.List(station()[2:])
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(list.Purchases[0])
	// Output:
	// [ ] picks
	//     tea room                           8
	//     1 x box of 12 at 9.00           9.00
	//     left over                          4
}

func ExampleList_Page() {
	shop := shopping.Shop{Offers: boxes()}
	list, err := shop.List(station()[2:])
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(list.Page())
	// Output:
	// [ ] picks
	//     tea room                                                               8
	//     1 x box of 12 at 9.00                                               9.00
	//     left over                                                              4
	//
	// total                                                                   9.00
}

func ExampleList_CSV() {
	shop := shopping.Shop{Offers: boxes()}
	list, err := shop.List(station())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(list.CSV(true))
	// Output:
	// record,item,room,quantity,planned,offer,store,price,packs,cost,note
	// need,picks,ticket hall,27,27,,,,,,
	// need,picks,waiting room,14,14,,,,,,
	// need,picks,tea room,8,8,,,,,,
	// buy,picks,,,,box of 6,,5.00,1,5.00,6 picks
	// buy,picks,,,,box of 24,,16.00,2,32.00,24 picks
	// left,picks,,5,,,,,,,
}

func ExampleList() {
	shop := shopping.Shop{Offers: boxes()}
	list, err := shop.List(station()[2:])
	if err != nil {
		fmt.Println(err)
		return
	}
	data, err := json.MarshalIndent(list, "", "  ")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(string(data))
	// Output:
	// {
	//   "purchases": [
	//     {
	//       "shares": [
	//         {
	//           "item": "picks",
	//           "room": "tea room",
	//           "quantity": 8,
	//           "gets": 8
	//         }
	//       ],
	//       "buys": [
	//         {
	//           "offer": {
	//             "item": "picks",
	//             "name": "box of 12",
	//             "pack": 12,
	//             "price": "9"
	//           },
	//           "packs": 1,
	//           "cost": "9"
	//         }
	//       ],
	//       "left": [
	//         {
	//           "item": "picks",
	//           "quantity": 4
	//         }
	//       ],
	//       "cost": "9",
	//       "bound": "9"
	//     }
	//   ],
	//   "total": "9",
	//   "bound": "9"
	// }
}

func ExampleCut_String() {
	fmt.Println(shopping.Cut{
		Offer: "10 yd roll", Roll: 10 * units.Yard, Rolls: 2,
		Pieces: []shopping.Need{{Room: "tea room", Quantity: shopping.Quantity{Pieces: 6, Length: 54 * units.Inch}}},
	})
	// Output:
	// cut 2 x 10 yd roll into 6 of 4 ft 6 in for tea room, 3 ft left of each
}

func Example_badPrice() {
	shop := shopping.Shop{Offers: boxes()}
	shop.Offers[1].Price = decimal.RequireFromString("-9.00")
	_, err := shop.List(nil)
	fmt.Println(err)
	// Output:
	// shopping.Shop.List: /offers/1/price "-9": out of range: want 0 to 1000000 with at most 4 decimal places
}
