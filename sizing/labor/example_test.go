package labor_test

import (
	"encoding/json"
	"fmt"
	"strings"

	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// pieces is a need of so many pieces of a kind.
func pieces(kind shopping.Kind, n int) shopping.Need {
	return shopping.Need{Item: shopping.Item{Kind: kind}, Quantity: shopping.Quantity{Pieces: n}}
}

// station is what there is to dress: a 9 ft tree in the ticket hall, a 4 ft 6 in tree in the
// waiting room, and a 64 in mantel in the tea room, whose shelf is 54 in high. The numbers are those of package sizing by rule.
func station() []labor.Work {
	garland := shopping.Need{Item: shopping.Item{Kind: shopping.BaseGarland}, Quantity: shopping.Quantity{Length: 88 * units.Inch}}
	return []labor.Work{
		{Room: "ticket hall", Place: "artificial tree", Height: 9 * units.Foot, Needs: []shopping.Need{
			pieces(shopping.Light, 900), pieces(shopping.Pick, 27), pieces(shopping.Ornament, 81), pieces(shopping.Topper, 1), pieces(shopping.Skirt, 1),
		}},
		{Room: "waiting room", Place: "artificial tree", Height: 54 * units.Inch, Needs: []shopping.Need{
			pieces(shopping.Light, 450), pieces(shopping.Pick, 14), pieces(shopping.Ornament, 16),
		}},
		{Room: "tea room", Place: "mantel", Height: 54 * units.Inch, Needs: []shopping.Need{garland, pieces(shopping.Pick, 8)}},
	}
}

// house is a house with prices of its own.
func house() labor.Rates {
	r := labor.StartingRates()
	n := decimal.RequireFromString
	r.Price["hour"], r.Price["consultation"], r.Price["visit"] = n("45"), n("80"), n("25")
	r.Percent["goods tax"], r.Percent["discount"] = n("6.25"), n("5")
	return r
}

// basket is the picks of the station, as package shopping buys them: 49 in a box of 6 and two of 24.
func basket() shopping.List {
	offer := func(pack int, name, price string) shopping.Offer {
		return shopping.Offer{Item: shopping.Item{Kind: shopping.Pick}, Name: name, Pack: shopping.Quantity{Pieces: pack}, Price: decimal.RequireFromString(price)}
	}
	shop := shopping.Shop{Offers: []shopping.Offer{offer(6, "box of 6", "5.00"), offer(12, "box of 12", "9.00"), offer(24, "box of 24", "16.00")}}
	list, err := shop.List([]shopping.Need{pieces(shopping.Pick, 27+14+8)})
	if err != nil {
		panic(err)
	}
	return list
}

// clock returns "2:05" for 125 minutes.
func clock(n int) string { return fmt.Sprintf("%d:%02d", n/60, n%60) }

// The day of the station: who does what, and when, with a crew of two. By hand for the level
// above 8 ft of the 9 ft tree: (9-8)²/9² of 81 ornaments is 1, of 27 picks 1/3, so 1, and of 900 lights 11.1, so 12.
func Example_day() {
	r := house()
	tasks, _, err := r.Tasks(station())
	if err != nil {
		fmt.Println(err)
		return
	}
	tasks, time, err := r.Schedule(tasks)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, t := range tasks {
		who := strings.ReplaceAll(strings.Trim(fmt.Sprint(t.Who), "[]"), " ", " and ")
		fmt.Printf("%-15s%-10s%s: %s\n", clock(t.Start)+" to "+clock(t.Start+t.Minutes), who, t.Room, t.Text)
	}
	fmt.Println("done in", time.Max, "min, and in no less than", time.Min)
	// Output:
	// 0:00 to 0:24   1         ticket hall: shape one of 2 sides of the tree, 0 ft to 6 ft
	// 0:00 to 0:24   2         ticket hall: shape one of 2 sides of the tree, 0 ft to 6 ft
	// 0:24 to 0:40   1         ticket hall: shape the tree, 6 ft to 8 ft, from a ladder
	// 0:24 to 0:42   2         waiting room: shape one of 2 sides of the tree
	// 0:42 to 0:54   1 and 2   ticket hall: shape the tree, 8 ft to 9 ft, from a ladder
	// 0:54 to 0:56   1 and 2   ticket hall: string 12 lights, 8 ft to 9 ft, from a ladder
	// 0:56 to 1:04   1         ticket hall: string 88 lights, 6 ft to 8 ft, from a ladder
	// 0:56 to 1:14   2         waiting room: shape one of 2 sides of the tree
	// 1:04 to 2:16   1         ticket hall: string 800 lights, 0 ft to 6 ft
	// 1:14 to 1:55   2         waiting room: string 450 lights
	// 1:55 to 2:16   2         waiting room: set 14 picks
	// 2:16 to 2:30   1 and 2   ticket hall: set 1 topper, from a ladder
	// 2:30 to 2:33   1 and 2   ticket hall: set 1 pick, 8 ft to 9 ft, from a ladder
	// 2:33 to 2:35   1 and 2   ticket hall: hang 1 ornament, 8 ft to 9 ft, from a ladder
	// 2:35 to 2:38   1         ticket hall: set 2 picks, 6 ft to 8 ft, from a ladder
	// 2:35 to 2:45   2         waiting room: hang 8 of 16 ornaments
	// 2:38 to 2:48   1         ticket hall: hang 8 ornaments, 6 ft to 8 ft, from a ladder
	// 2:48 to 3:06   1         ticket hall: set 12 of 24 picks, 0 ft to 6 ft
	// 2:48 to 3:06   2         ticket hall: set 12 of 24 picks, 0 ft to 6 ft
	// 3:06 to 4:32   1         ticket hall: hang 72 ornaments, 0 ft to 6 ft
	// 3:06 to 4:36   2         tea room: dress the mantel
	// 4:32 to 4:42   1         waiting room: hang 8 of 16 ornaments
	// 4:36 to 4:41   2         ticket hall: lay 1 skirt
	// done in 282 min, and in no less than 282
}

// The quote for the station: the picks, all of the work, and two visits. By hand: 37.00 and half of it is 55.50. The sums of
// person-minutes are those of the tasks; 45.00 an hour is 0.75 a minute.
func Example_quote() {
	r := house()
	up, down, err := r.Tasks(station())
	if err != nil {
		fmt.Println(err)
		return
	}
	options, err := r.Quote(basket(), up, down, 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(r.Sheet(options[1], true))
	// Output:
	// done for you
	//   picks, 1 x box of 6, 2 x box of 24                                   55.50
	//   discount of 5 % on the goods                                         -2.78
	//   tax of 6.25 % on the goods                                            3.30
	//   ticket hall, putting up                                             262.50
	//   waiting room, putting up                                             88.50
	//   tea room, putting up                                                 67.50
	//   tea room, taking down and packing                                    27.00
	//   waiting room, taking down and packing                                36.00
	//   ticket hall, taking down and packing                                105.75
	//   discount of 5 % on the work                                         -29.36
	//   2 visits                                                             50.00
	//   discount of 5 % on the travel                                        -2.50
	// total                                                                 661.41
	//   deposit                                                             330.71
	//   balance                                                             330.70
}

// The two smaller options of the same quote. By hand: 80.00 less 5 % are 76.00, 25.00 less 5 % are 23.75; 55.50 - 2.78 + 3.30 = 56.02.
func Example_options() {
	r := house()
	options, err := r.Quote(basket(), nil, nil, 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(r.Sheet(options[0], true), r.Sheet(options[2], true))
	// Output:
	// consultation
	//   consultation                                                         80.00
	//   discount of 5 % on the work                                          -4.00
	//   1 visit                                                              25.00
	//   discount of 5 % on the travel                                        -1.25
	// total                                                                  99.75
	//   deposit                                                              49.88
	//   balance                                                              49.87
	// goods only
	//   picks, 1 x box of 6, 2 x box of 24                                   55.50
	//   discount of 5 % on the goods                                         -2.78
	//   tax of 6.25 % on the goods                                            3.30
	// total                                                                  56.02
	//   deposit                                                              28.01
	//   balance                                                              28.01
}

// The balls of the ticket hall's tree, as package sizing mixes them, all picks and the five left over; in boxes of 12 cells for balls of up to
// 4 in, of 24 for balls of up to 2 1/2 in, and without cells. By hand: 16 + 24 large ones take 4 boxes of 12, and 41 of 2 in take 2 of 24.
func Example_cartons() {
	ball := func(room string, n int, color string, size string, weight string) labor.Thing {
		return labor.Thing{
			Lot:  shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Type: "ball", Color: color, Size: units.Must(units.ParseLength(size))}, Quantity: shopping.Quantity{Pieces: n}},
			Room: room, Weight: units.Must(units.ParseMass(weight)), Fragile: true,
		}
	}
	picks := func(room string, n int) labor.Thing {
		return labor.Thing{Lot: shopping.Lot{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: n}}, Room: room, Weight: 3 * units.Ounce}
	}
	boxes := []labor.Box{
		{Name: "12-cell box", Cells: 12, Cell: 4 * units.Inch},
		{Name: "24-cell box", Cells: 24, Cell: 5 * units.Inch / 2},
		{Name: "open box", Cells: 60},
	}
	cartons, count, err := labor.StartingRates().Pack([]labor.Thing{
		ball("ticket hall", 16, "crimson", "4 in", "3 oz"), ball("ticket hall", 24, "gold", "3 1/8 in", "2 oz"), ball("ticket hall", 41, "ivory", "2 in", "1 oz"),
		picks("ticket hall", 27), picks("waiting room", 14), picks("tea room", 8), picks("spares", 5),
	}, boxes)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range cartons {
		fmt.Println(c.Label)
	}
	fmt.Println("no packing has fewer than", count.Min)
	// Output:
	// 1 of 10, ticket hall, 27 picks
	// 2 of 10, ticket hall, 12 crimson balls, 4 in; fragile
	// 3 of 10, ticket hall, 4 crimson balls, 4 in; 8 gold balls, 3 1/8 in; fragile
	// 4 of 10, ticket hall, 12 gold balls, 3 1/8 in; fragile
	// 5 of 10, ticket hall, 4 gold balls, 3 1/8 in; 8 ivory balls, 2 in; fragile
	// 6 of 10, ticket hall, 24 ivory balls, 2 in; fragile
	// 7 of 10, ticket hall, 9 ivory balls, 2 in; fragile
	// 8 of 10, waiting room, 14 picks
	// 9 of 10, tea room, 8 picks
	// 10 of 10, spares, 5 picks
	// no packing has fewer than 10
}

// The dates of the station: it stands from 28 November 2026 to 6 January 2027, and the tree of the waiting room is now a cut one. By hand:
// 282 min are less than a day of 480; 14 and 28 days before the 26th are 12 November and 29 October; 27 November and 28 days are 25 December.
func Example_dates() {
	stand, err := labor.ParseDate("2026-11-28")
	if err != nil {
		fmt.Println(err)
		return
	}
	works := station()
	works[1].Place = "cut tree"
	var needs []shopping.Need
	for _, w := range works {
		needs = append(needs, w.Needs...)
	}
	days, err := house().Dates(stand, stand+39, 282, works, needs)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, d := range days {
		fmt.Println(d.Date, d.Text)
	}
	// Output:
	// 2026-10-29 order base garland
	// 2026-11-12 order ornaments, picks, lights, toppers, skirts
	// 2026-11-26 everything is in hand
	// 2026-11-26 wire garland and picks, and see that the lights work
	// 2026-11-27 the cut tree comes in, at the earliest
	// 2026-11-27 begin to put up: 4 h 42 min
	// 2026-11-28 it stands
	// 2026-12-25 take down and pack what is on the cut tree
	// 2026-12-25 the cut tree is out, at the latest: 12 days before the rest
	// 2027-01-06 take down and pack
}

// From memory, as the documentation says: 50 ornaments an hour are 1.2 min each.
func ExampleStartingRates() {
	r := labor.StartingRates()
	fmt.Println(r.Minutes["ornaments"], "min an ornament")
	fmt.Println(r.Minutes["artificial tree"], "min a foot of artificial tree")
	r.Minutes["ornaments"] = decimal.RequireFromString("1.5") // your own
	fmt.Println(r.Minutes["ornaments"], "min an ornament")
	// Output:
	// 1.2 min an ornament
	// 8 min a foot of artificial tree
	// 1.5 min an ornament
}

// By hand: 4.5 ft at 8 min are 36; 450 lights at 9 min a hundred are 40.5, so 41; 14 picks at 1.5 are 21; 16
// ornaments at 1.2 are 19.2, so 20.
func ExampleRates_Tasks() {
	tasks, _, err := labor.StartingRates().Tasks(station()[1:2])
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, t := range tasks {
		fmt.Printf("%s: %s: %d min (%s)\n", t.Room, t.Text, t.Minutes, t.Basis)
	}
	// Output:
	// waiting room: shape the tree: 36 min (8 min for each foot of 4 ft 6 in)
	// waiting room: string 450 lights: 41 min (9 min for each 100 of 450)
	// waiting room: set 14 picks: 21 min (1.5 min for each of 14)
	// waiting room: hang 16 ornaments: 20 min (1.2 min for each of 16)
}

// By hand: with 100 ornaments spread over a 10 ft tree, (2/10)² above 8 ft are 4, (4/10)² above 6 ft are 16.
func ExampleRates_Tasks_levels() {
	tree := labor.Work{Room: "ticket hall", Height: 10 * units.Foot, Needs: []shopping.Need{pieces(shopping.Ornament, 100)}}
	tasks, _, err := labor.StartingRates().Tasks([]labor.Work{tree})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, t := range tasks {
		fmt.Printf("%s: %d min x %d\n", t.Text, t.Minutes, t.People)
	}
	// Output:
	// hang 4 ornaments, 8 ft to 10 ft, from a ladder: 7 min x 2
	// hang 12 ornaments, 6 ft to 8 ft, from a ladder: 15 min x 1
	// hang 84 ornaments, 0 ft to 6 ft: 100 min x 1
}

// By hand: the waiting room takes 118 min of one person and the mantel 90: 208 in all, no less than 104 for two. Shaping on both sides takes
// 18; then one goes on with 41 + 21 + 20 = 82 and the other with the mantel: 18 + 90 = 108. That nothing is shorter is what the search proves.
func ExampleRates_Schedule() {
	r := labor.StartingRates()
	tasks, _, err := r.Tasks(station()[1:])
	if err != nil {
		fmt.Println(err)
		return
	}
	_, time, err := r.Schedule(tasks)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(time.Max, "min, bound", time.Min)

	r.Crew = 1
	_, time, err = r.Schedule(tasks)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(time.Max, "min alone")
	// Output:
	// 108 min, bound 108
	// 208 min alone
}

// By hand: 40 % of 20, 21, 41 and 36 min are 8, 8.4, 16.4 and 14.4: rounded up from the first put up, 14.4 to 15, 30.8 to 31,
// 39.2 to 40, 47.2 to 48.
func ExampleRates_Tasks_down() {
	_, down, err := labor.StartingRates().Tasks(station()[1:2])
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, t := range down {
		fmt.Printf("%s: %d min\n", t.Text, t.Minutes)
	}
	// Output:
	// take off 16 ornaments: 8 min
	// pull 14 picks: 9 min
	// unstring 450 lights: 16 min
	// fold the tree: 15 min
}

// By hand: 90 min at 45.00 an hour are 67.50. The picks cost 37.00 and are passed on at 55.50.
func ExampleRates_Quote() {
	r := labor.StartingRates()
	r.Price["hour"] = decimal.NewFromInt(45)
	tasks, _, err := r.Tasks(station()[2:])
	if err != nil {
		fmt.Println(err)
		return
	}
	options, err := r.Quote(basket(), tasks, nil, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, o := range options {
		fmt.Println(o.Name, o.Total, "deposit", o.Deposit)
	}
	// Output:
	// consultation 0 deposit 0
	// done for you 123 deposit 61.5
	// goods only 55.5 deposit 27.75
}

// The sheet for the house has the costs, and the one for the client has not. By hand: half of 37.00 is 18.50; half of 55.50 is 27.75.
func ExampleRates_Sheet() {
	r := labor.StartingRates()
	options, err := r.Quote(basket(), nil, nil, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(r.Sheet(options[2], false), r.Sheet(options[2], true))
	// Output:
	// goods only
	//   picks, 1 x box of 6, 2 x box of 24                                   55.50
	//     cost 37.00, and 50 %
	// total                                                                  55.50
	//   deposit                                                              27.75
	//   balance                                                              27.75
	// goods only
	//   picks, 1 x box of 6, 2 x box of 24                                   55.50
	// total                                                                  55.50
	//   deposit                                                              27.75
	//   balance                                                              27.75
}

// By hand: 14 stars and 10 bells are 24 pieces, two boxes of 12.
func ExampleRates_Pack() {
	thing := func(name string, n int) labor.Thing {
		return labor.Thing{
			Lot:  shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Type: name, Color: "crimson", Size: 3 * units.Inch}, Quantity: shopping.Quantity{Pieces: n}},
			Room: "ticket hall", Weight: 2 * units.Ounce,
		}
	}
	cartons, _, err := labor.StartingRates().Pack([]labor.Thing{thing("star", 14), thing("bell", 10)}, []labor.Box{{Name: "12-cell box", Cells: 12, Cell: 4 * units.Inch}})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range cartons {
		fmt.Println(c.Label)
		fmt.Println("  ", c.Box)
	}
	// Output:
	// 1 of 2, ticket hall, 10 crimson bells, 3 in; 2 crimson stars, 3 in
	//    12-cell box
	// 2 of 2, ticket hall, 12 crimson stars, 3 in
	//    12-cell box
}

// The station buys 54 picks for its 49 and breaks eight. By hand: 46 are left, 3 short of 49: next year it buys one box of 6.
func ExampleNextStock() {
	picks := shopping.Item{Kind: shopping.Pick}
	lost := []shopping.Lot{{Item: picks, Quantity: shopping.Quantity{Pieces: 8}}}
	owned, err := labor.NextStock(nil, basket(), lost)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("owned:", owned[0].Quantity, owned[0].Item)

	shop := shopping.Shop{
		Offers: []shopping.Offer{{Item: picks, Name: "box of 6", Pack: shopping.Quantity{Pieces: 6}, Price: decimal.NewFromInt(5)}},
		Owned:  owned,
	}
	list, err := shop.List([]shopping.Need{pieces(shopping.Pick, 49)})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(list)
	// Output:
	// owned: 46 picks
	// [ ] picks
	//     needed                            49
	//     owned                             46
	//     1 x box of 6 at 5.00            5.00
	//     left over                          3
	//
	// total                               5.00
}

// By hand: 24 min end on the day before.
func ExampleRates_Dates() {
	stand, err := labor.ParseDate("2026-12-01")
	if err != nil {
		fmt.Println(err)
		return
	}
	days, err := labor.StartingRates().Dates(stand, stand+36, 24, nil, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, d := range days {
		fmt.Println(d.Date, d.Text)
	}
	// Output:
	// 2026-11-29 lay everything ready
	// 2026-11-30 begin to put up: 24 min
	// 2026-12-01 it stands
	// 2027-01-06 take down and pack
}

// ISO 8601. Day 1 is 0001-01-01, so 719,163 is the first day of Unix time (Reingold and Dershowitz).
func ExampleParseDate() {
	d, err := labor.ParseDate("1970-01-01")
	fmt.Println(int(d), err)
	_, err = labor.ParseDate("2026-02-30")
	fmt.Println(err)
	// Output:
	// 719163 <nil>
	// labor.ParseDate: text "2026-02-30": not understood: want a day such as 2026-11-28
}

// By the calendar: 2028 is a leap year, 2027 is not.
func ExampleDate_String() {
	for _, s := range []string{"2027-02-28", "2028-02-28"} {
		d, err := labor.ParseDate(s)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(d, "is followed by", (d + 1).String())
	}
	// Output:
	// 2027-02-28 is followed by 2027-03-01
	// 2028-02-28 is followed by 2028-02-29
}

// A date in JSON is its text.
func ExampleDate_MarshalText() {
	text, err := json.Marshal(labor.Day{Date: 739_942, Text: "order garland"})
	fmt.Println(string(text), err)
	// Output:
	// {"date":"2026-11-22","text":"order garland"} <nil>
}

// What stands in a file of JSON is read as ParseDate does.
func ExampleDate_UnmarshalText() {
	var d labor.Date
	fmt.Println(json.Unmarshal([]byte(`"2026-11-28"`), &d), d)
	// Output:
	// <nil> 2026-11-28
}

// A column of text holds a date, and NULL is none.
func ExampleDate_Value() {
	column, err := labor.Date(739_948).Value()
	fmt.Println(column, err)
	column, err = labor.Date(0).Value()
	fmt.Println(column, err)
	// Output:
	// 2026-11-28 <nil>
	// <nil> <nil>
}

// What a driver hands over for a column of text, and for NULL.
func ExampleDate_Scan() {
	var d labor.Date
	fmt.Println(d.Scan([]byte("2026-11-28")), d)
	fmt.Println(d.Scan(nil), d)
	// Output:
	// <nil> 2026-11-28
	// <nil> no date
}

// Each applies once, however many tasks call for it.
func ExampleRates_Cautions() {
	tasks, _, err := labor.StartingRates().Tasks(station())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range labor.StartingRates().Cautions(tasks, nil) {
		fmt.Println(c.Code + ": " + c.Text)
	}
	// Output:
	// work ladder: use a ladder made for the height, open and locked on level ground, with nobody working below; face it, do not lean out, come down and move it; its label says how high to stand and what it bears
	// two people: do not begin a task for two until both are there: one works, the other holds the ladder and hands things up, or takes the other side of the carton
	// work cords: unplug before stringing and unstringing; leave out a string with a bare wire or a broken lamp holder; keep cords off walkways and from under ladders; the label says how many strings may be joined
}
