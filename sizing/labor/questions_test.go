package labor_test

import (
	"fmt"

	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// How long do two people take to hang 100 ornaments on a 10 ft tree? Rates from memory. By hand: 4 are above 8 ft, at 1.68 min 6.72, so 7 for both; 12
// more are above 6 ft, 7 + 15 = 22 in all; the 84 from the floor take 100, 50 for each of two.
func ExampleRates_Schedule_question() {
	r := labor.StartingRates()
	tree := labor.Work{Height: 10 * units.Foot, Needs: []shopping.Need{pieces(shopping.Ornament, 100)}}
	tasks, _, err := r.Tasks([]labor.Work{tree})
	if err != nil {
		fmt.Println(err)
		return
	}
	_, time, err := r.Schedule(tasks)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(time.Max, "min; 4 of them above 8 ft by two people:", tasks[0].People == 2 && tasks[0].Quantity.Pieces == 4)
	// Output:
	// 72 min; 4 of them above 8 ft by two people: true
}

// What do I ask for a mantel, at 45.00 an hour and 25.00 a visit? By hand: 90 min are 67.50, with the visit 92.50.
func ExampleRates_Quote_question() {
	r := labor.StartingRates()
	r.Price["hour"], r.Price["visit"] = decimal.NewFromInt(45), decimal.NewFromInt(25)
	tasks, _, err := r.Tasks([]labor.Work{{Room: "tea room", Place: "mantel", Height: 54 * units.Inch}})
	if err != nil {
		fmt.Println(err)
		return
	}
	options, err := r.Quote(shopping.List{}, tasks, nil, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(options[1].Total.StringFixed(2))
	// Output:
	// 92.50
}

// How many cartons of 12 cells do 14 stars and 10 bells take? By hand: 24 pieces are 2.
func ExampleRates_Pack_question() {
	thing := func(name string, n int) labor.Thing {
		return labor.Thing{Lot: shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Type: name}, Quantity: shopping.Quantity{Pieces: n}}}
	}
	cartons, count, err := labor.StartingRates().Pack([]labor.Thing{thing("star", 14), thing("bell", 10)}, []labor.Box{{Name: "12-cell box", Cells: 12}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(len(cartons), "and no packing has fewer:", count.Min == len(cartons))
	// Output:
	// 2 and no packing has fewer: true
}

// When do I order garland for a tree that must stand on 2026-11-28? By hand: a day to put it up, one to wire, and 28 of lead.
func ExampleRates_Dates_question() {
	stand, err := labor.ParseDate("2026-11-28")
	if err != nil {
		fmt.Println(err)
		return
	}
	days, err := labor.StartingRates().Dates(stand, stand+39, 282, nil, []shopping.Need{{Item: shopping.Item{Kind: shopping.Garland}}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(days[0].Date, days[0].Text)
	// Output:
	// 2026-10-29 order garland
}
