package job_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"math/big"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// counted returns how much of each item lots have, strands and rolls by their length, strings of lights by their lamps.
func counted(lots []shopping.Lot) map[shopping.Lot]int {
	sum := map[shopping.Lot]int{}
	for _, l := range lots {
		key, n := l, l.Quantity.Pieces
		switch key.Quantity.Pieces = 0; {
		case l.Quantity.Length > 0:
			n = max(1, n)
		case l.Item.Kind == shopping.Light:
			key.Quantity.Pieces, n = n, 1
		}
		sum[key] += n
	}
	return sum
}

// packed returns what is in cartons.
func packed(cartons []labor.Carton) []shopping.Lot {
	var lots []shopping.Lot
	for _, c := range cartons {
		for _, t := range c.Things {
			lots = append(lots, t.Lot)
		}
	}
	return lots
}

// fit checks that what hangs on the trees is in cartons by its size, stated or as hung, each in a cell that takes it or told to be in none.
func fit(t *testing.T, boxes []labor.Box, p job.Plan) {
	t.Helper()
	type ball struct {
		room, color string
		size        units.Length
	}
	count := map[ball]int{}
	for _, tree := range p.Trees {
		for _, x := range tree.Pieces {
			if x.Item.Kind == shopping.Ornament && x.Item.Size > 0 {
				count[ball{tree.Room, x.Item.Color, x.Item.Size}] += x.Quantity.Pieces
			}
		}
	}
	if len(count) == 0 {
		t.Error("no ball has a size")
	}
	for _, c := range p.Cartons {
		at := slices.IndexFunc(boxes, func(b labor.Box) bool { return b.Name == c.Box })
		for _, x := range c.Things {
			if x.Item.Kind == shopping.Ornament {
				count[ball{x.Room, x.Item.Color, max(x.Item.Size, x.Cell)}] -= x.Quantity.Pieces
			}
			if at >= 0 && boxes[at].Cell > 0 && max(x.Item.Size, x.Cell) > boxes[at].Cell || at < 0 && !strings.Contains(c.Label, "no box takes it") {
				t.Errorf("%v in %q, %s", x, c.Box, c.Label)
			}
		}
	}
	for b, n := range count {
		if b.size > 0 && n != 0 {
			t.Errorf("%d of %v are not packed", n, b)
		}
	}
}

// Balls go into cells that take them: those of a 60 ft tree, those that no box takes, and what is left of a color of which two broke.
func TestWorkSizes(t *testing.T) {
	r := job.Request{Stand: units.Must(labor.ParseDate("2026-11-28")), House: job.CommonPractice()}
	r.Trees = []job.Tree{{Tree: sizing.Tree{Height: 25 * units.Foot}, Room: "square"}, {Tree: sizing.Tree{Height: 9 * units.Foot}, Room: "hall"}}
	r.House.Boxes = r.House.Boxes[:2]
	p, err := job.Make(r)
	if err != nil {
		t.Fatal(err)
	}
	fit(t, r.House.Boxes, p)
	if last := p.Cartons[len(p.Cartons)-1]; last.Box != "" || !strings.HasSuffix(last.Label, "; wants a cell of 6 in") {
		t.Errorf("last is %s", last.Label)
	}
	s := station(t)
	crimson := shopping.Item{Kind: shopping.Ornament, Color: "crimson"}
	s.Lost = []shopping.Lot{{Item: crimson, Quantity: shopping.Quantity{Pieces: 6}}}
	if p, err = job.Make(s); err != nil {
		t.Fatal(err)
	}
	left := map[units.Length]int{}
	for _, c := range p.Cartons {
		for _, x := range c.Things {
			if x.Item.Color == "crimson" {
				left[x.Cell] += x.Quantity.Pieces
			}
		}
	}
	// By hand: 37 crimson, 9 of 3 1/8 in and 20 of 2 in on the tall tree, 5 of 1 1/2 in, 3 on the mantel; what is there goes to the rooms in turn.
	if want := map[units.Length]int{25 * units.Inch / 8: 9, 2 * units.Inch: 20, 3 * units.Inch / 2: 2}; !maps.Equal(left, want) {
		t.Errorf("left are %v", left)
	}
}

// The station's work: the cartons hold next year's stock and nothing else; what hung in a room is packed for it; the quote
// is that of the formula in exact fractions, over the tasks and the basket of this plan.
func TestWork(t *testing.T) {
	r := station(t)
	p, err := job.Make(r)
	if err != nil {
		t.Fatal(err)
	}
	have, in := counted(p.Stock), counted(packed(p.Cartons))
	for l, n := range have {
		if in[l] != n {
			t.Errorf("%d of %v in cartons, %d owned", in[l], l, n)
		}
	}
	if len(in) != len(have) {
		t.Errorf("%d things in cartons, %d owned", len(in), len(have))
	}
	byRoom := map[string]int{}
	for _, c := range p.Cartons {
		for _, x := range c.Things {
			if x.Item.Kind == shopping.Ornament {
				byRoom[x.Room] += x.Quantity.Pieces
				if !x.Fragile {
					t.Errorf("%v is no glass", x)
				}
			}
		}
	}
	fit(t, r.House.Boxes, p)
	hung := map[string]int{}
	for _, tree := range p.Trees {
		for _, x := range tree.Pieces {
			if x.Item.Kind == shopping.Ornament {
				hung[tree.Room] += x.Quantity.Pieces
			}
		}
	}
	for _, room := range []string{"ticket hall", "waiting room"} {
		if byRoom[room] != hung[room] || hung[room] == 0 {
			t.Errorf("%s: %d hung, %d packed", room, hung[room], byRoom[room])
		}
	}
	// Person-minutes by room; each room is one line of the quote.
	price := func(tasks []labor.Task) *big.Rat {
		minutes, sum := map[string]int64{}, new(big.Rat)
		for _, x := range tasks {
			minutes[x.Room] += int64(x.Minutes * x.People)
		}
		for _, n := range minutes {
			sum.Add(sum, cents(new(big.Rat).Mul(big.NewRat(45, 60), big.NewRat(n, 1))))
		}
		return sum
	}
	goods := new(big.Rat)
	for _, b := range p.Basket.Purchases {
		goods.Add(goods, cents(new(big.Rat).Mul(b.Cost.Rat(), big.NewRat(3, 2))))
	}
	off := func(x *big.Rat) *big.Rat { return new(big.Rat).Sub(x, cents(new(big.Rat).Mul(x, big.NewRat(5, 100)))) }
	goods = off(goods)
	goods.Add(goods, cents(new(big.Rat).Mul(goods, big.NewRat(625, 10_000))))
	total := new(big.Rat).Add(goods, off(price(p.Work).Add(price(p.Work), price(p.TakeDown))))
	total.Add(total, off(big.NewRat(75, 1))) // three visits of 25.00: to put up, for the cut tree, for the rest
	if want := p.Quote[1]; want.Total.Rat().Cmp(total) != 0 || want.Deposit.Rat().Cmp(cents(new(big.Rat).Quo(total, big.NewRat(2, 1)))) != 0 {
		t.Errorf("total %s, deposit %s, by fractions %s", want.Total, want.Deposit, total.FloatString(2))
	}
	if p.Time.Max < p.Time.Min || p.Time.Min < personMinutes(p.Work)/2 {
		t.Errorf("%v min for %d person-minutes", p.Time, personMinutes(p.Work))
	}
	last := p.Dates[len(p.Dates)-1]
	if last.Date != r.Down || last.Text != "take down and pack" {
		t.Errorf("the last date is %v", last)
	}
	for _, d := range p.Dates {
		if strings.HasPrefix(d.Text, "order") && strings.Contains(d.Text, "ties") {
			t.Errorf("%v, which are owned", d)
		}
	}
	codes := map[string]bool{}
	for _, c := range p.Cautions {
		codes[c.Code] = true
	}
	for _, code := range []string{"work ladder", "two people", "work cords", "glass", "lifting"} {
		if !codes[code] {
			t.Errorf("no caution about %s", code)
		}
	}
}

// cents rounds to cents, half away from zero, what is not below zero.
func cents(x *big.Rat) *big.Rat {
	n := new(big.Rat).Add(new(big.Rat).Mul(x, big.NewRat(100, 1)), big.NewRat(1, 2))
	return new(big.Rat).SetFrac(new(big.Int).Quo(n.Num(), n.Denom()), big.NewInt(100))
}

func personMinutes(tasks []labor.Task) (sum int) {
	for _, t := range tasks {
		sum += t.Minutes * t.People
	}
	return sum
}

// Plan, buy, lose two, pack, plan again from the cartons: the second basket has exactly the two, where they are sold singly.
func TestWorkRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		colors := []string{"crimson", "gold", "ivory"}
		r := job.Request{
			Stand: units.Must(labor.ParseDate("2026-11-28")), Down: units.Must(labor.ParseDate("2027-01-06")),
			Colors: units.Must(palette.CommonPractice().ParsePalette(strings.Join(colors, ","))),
		}
		for i := range rapid.IntRange(1, 3).Draw(t, "trees") {
			tree := job.Tree{Room: "room " + string(rune('A'+i)), Accents: []shopping.Kind{shopping.Pick}}
			tree.Height = units.Length(rapid.IntRange(3, 12).Draw(t, "height")) * units.Foot
			tree.Kind = rapid.SampledFrom([]sizing.TreeKind{sizing.Cut, sizing.Artificial}).Draw(t, "kind")
			r.Trees = append(r.Trees, tree)
		}
		if rapid.Bool().Draw(t, "mantel") {
			m := job.Mantel{Room: "tea room"}
			m.Length = units.Length(rapid.IntRange(4, 8).Draw(t, "length")) * units.Foot
			r.Mantels = append(r.Mantels, m)
		}
		single := func(item string, price int64) {
			i := units.Must(shopping.ParseItem(item))
			r.Shop.Offers = append(r.Shop.Offers, shopping.Offer{Item: i, Name: "single", Pack: shopping.Quantity{Pieces: 1}, Price: decimal.NewFromInt(price)})
		}
		for _, color := range colors {
			single(color+" ornaments", 2)
			i := shopping.Item{Kind: shopping.Ornament, Color: color}
			r.Shop.Offers = append(r.Shop.Offers, shopping.Offer{Item: i, Name: "box of 12", Pack: shopping.Quantity{Pieces: 12}, Price: decimal.NewFromInt(20)})
		}
		single("picks", 1)
		single("picks, mantel", 1)
		single("hooks", 1)
		single("wire ties", 1)
		for _, name := range []string{"garland", "base garland", "ribbon"} {
			kind := units.Must(shopping.ParseItem(name)).Kind
			r.Shop.Offers = append(r.Shop.Offers, shopping.Offer{Item: shopping.Item{Kind: kind}, Name: "9 ft", Pack: shopping.Quantity{Length: 9 * units.Foot}, Price: decimal.NewFromInt(9)})
		}
		r.Shop.Offers = append(r.Shop.Offers, shopping.Offer{Item: shopping.Item{Kind: shopping.Light}, Name: "string of 100", Pack: shopping.Quantity{Pieces: 100}, Price: decimal.NewFromInt(9)})
		gold := shopping.Item{Kind: shopping.Ornament, Color: "gold"}
		r.Shop.Owned = []shopping.Lot{{Item: gold, Quantity: shopping.Quantity{Pieces: rapid.IntRange(0, 20).Draw(t, "owned")}}}

		first, err := job.Make(r)
		if err != nil {
			t.Fatal(err)
		}
		surplus := 0
		for _, p := range first.Basket.Purchases {
			if p.Shares[0].Item == gold {
				for _, l := range p.Left {
					surplus += l.Quantity.Pieces
				}
			}
		}
		r.Lost = []shopping.Lot{{Item: gold, Quantity: shopping.Quantity{Pieces: 2}}}
		if first, err = job.Make(r); err != nil {
			t.Fatal(err)
		}
		r.Shop.Owned, r.Lost = packed(first.Cartons), nil
		second, err := job.Make(r)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range second.Basket.Purchases {
			bought := 0
			for _, b := range p.Buys {
				bought += b.Packs * max(1, b.Offer.Pack.Pieces)
			}
			want := 0
			if p.Shares[0].Item == gold {
				want = max(0, 2-surplus)
			}
			if bought != want {
				t.Fatalf("bought %d of %v, want %d:\n%v", bought, p.Shares[0].Item, want, second.Basket)
			}
		}
	})
}

// A tree of 100 ft, 100 types of 100, is packed; eleven of them are too many, and the fault names one that has the most: 10,000 balls,
// 100 strings of lights and 900 ft of garland in one. Days without one on which it stands are no plan.
func TestWorkOfManyPieces(t *testing.T) {
	stand := units.Must(labor.ParseDate("2026-11-28"))
	tall := job.Tree{Tree: sizing.Tree{Height: 100 * units.Foot, Kind: sizing.Artificial, Public: true}, Room: "square", SizeBy: "rule"}
	p, err := job.Make(job.Request{Trees: []job.Tree{tall}, Stand: stand})
	if err != nil {
		t.Fatal(err)
	}
	pieces := 0
	for _, l := range packed(p.Cartons) {
		if l.Item.Kind == shopping.Ornament {
			pieces += l.Quantity.Pieces
		}
	}
	if pieces != 10_000 {
		t.Errorf("%d ornaments packed", pieces)
	}
	many := job.Request{Trees: []job.Tree{{Tree: sizing.Tree{Height: 7 * units.Foot}, Room: "hall"}}, Stand: stand}
	for i := range 11 {
		tall.Room = fmt.Sprint("square ", i)
		many.Trees = append(many.Trees, tall)
	}
	_, err = job.Make(many)
	const want = "want at most 100,000 pieces in all to pack; without a day to stand nothing is packed"
	if list := job.Faults(err); len(list) != 1 || list[0].Field != "/trees/1" || list[0].Value != "10101 pieces" || !strings.Contains(err.Error(), want) {
		t.Errorf("%v", err)
	}
	for _, r := range []job.Request{{Down: stand}, {Lost: []shopping.Lot{{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: 1}}}}} {
		_, err := job.Make(r)
		if list := job.Faults(err); len(list) != 1 || list[0].Field != "/stand" || !errors.Is(err, units.ErrFit) {
			t.Errorf("%+v: %v", r, err)
		}
	}
}

// What a label says can be lost: the stock has the same items, and a size only where somebody stated one.
func TestWorkLabelsAgreeWithStock(t *testing.T) {
	r := station(t)
	p, err := job.Make(r)
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range packed(p.Cartons) {
		lost := l
		if l.Quantity.Length == 0 && l.Item.Kind != shopping.Light {
			lost.Quantity.Pieces = 1
		}
		if l.Item.Kind == shopping.Ornament && l.Item.Size != 0 {
			t.Errorf("%v: nobody stated a size", l)
		}
		if _, err := labor.NextStock(p.Stock, shopping.List{}, []shopping.Lot{lost}); err != nil {
			t.Errorf("a label has %v: %v", l, err)
		}
	}
	r.Shop.Owned = append(r.Shop.Owned, shopping.Lot{Item: units.Must(shopping.ParseItem("crimson ornaments, 2 in")), Quantity: shopping.Quantity{Pieces: 6}})
	r.Lost = []shopping.Lot{{Item: units.Must(shopping.ParseItem("crimson ornaments, 2 in")), Quantity: shopping.Quantity{Pieces: 2}}}
	if p, err = job.Make(r); err != nil {
		t.Fatal(err)
	}
	if sum := counted(packed(p.Cartons)); sum[shopping.Lot{Item: r.Lost[0].Item}] != 4 {
		t.Errorf("%v", sum)
	}
}

// Without a day there is no work; without a day to take it down, no taking down; without a shop, what is planned is packed.
func TestWorkLeftOut(t *testing.T) {
	r := station(t)
	r.Stand, r.Down = 0, 0
	p, err := job.Make(r)
	if err != nil || p.Work != nil || p.Quote != nil || p.Cartons != nil || p.Dates != nil || p.Stock != nil || p.Time.Max != 0 {
		t.Errorf("%v, %v", p.Work, err)
	}
	r = station(t)
	r.Down = 0
	p, err = job.Make(r)
	if err != nil || len(p.TakeDown) > 0 || len(p.Work) == 0 || strings.Contains(job.CommonPractice().Rates.Sheet(p.Quote[1], true), "taking down") {
		t.Errorf("%v, %v", p.TakeDown, err)
	}
	// By hand: a 4 ft artificial tree takes 32 min to shape; 8 types of 3 ... the needs say how many of each, and all of them are packed.
	bare := job.Request{Stand: r.Stand, Trees: []job.Tree{{Tree: sizing.Tree{Height: 4 * units.Foot, Kind: sizing.Artificial}, Room: "attic"}}}
	p, err = job.Make(bare)
	if err != nil || p.Work[0].Kind != 0 || p.Basket != nil {
		t.Fatalf("%v, %v", p.Work, err)
	}
	shaping := 0
	for _, x := range p.Work {
		if x.Kind == 0 {
			shaping += x.Minutes
		}
	}
	if shaping != 32 {
		t.Errorf("%d min to shape 4 ft", shaping)
	}
	needs := counted(nil)
	for _, n := range p.Trees[0].Shares {
		if n.Item.Kind == shopping.Light {
			n.Quantity.Pieces /= 4 // into four strings of 100
			needs[shopping.Lot{Item: n.Item, Quantity: n.Quantity}] = 4
			continue
		}
		for l, k := range counted([]shopping.Lot{{Item: n.Item, Quantity: n.Quantity}}) {
			needs[l] += k
		}
	}
	in := counted(packed(p.Cartons))
	for l, n := range needs {
		if n > 0 && in[l] != n {
			t.Errorf("%d of %v packed, %d planned", in[l], l, n)
		}
	}
	for _, c := range p.Cartons {
		if c.Things[0].Room != "attic" {
			t.Errorf("%s", c.Label)
		}
	}
}

// A cut tree is taken down by the day on which it is out, all else on the day for it, each thing once and with a visit of its own. What
// takes longer than a day begins before the cut tree is out, and goes on after the day for the rest.
func TestWorkCutTree(t *testing.T) {
	down := units.Must(labor.ParseDate("2027-01-06"))
	dates := func(p job.Plan) (text []string) {
		for _, d := range p.Dates {
			if d.Date > p.Dates[0].Date+30 {
				text = append(text, fmt.Sprint(d.Date, " ", d.Text, " ", d.Down))
			}
		}
		return text
	}
	visits := func(p job.Plan) string {
		for _, l := range p.Quote[1].Lines {
			if strings.HasSuffix(l.Text, " visits") {
				return l.Text
			}
		}
		return "no visits"
	}
	r := job.Request{Stand: units.Must(labor.ParseDate("2026-11-28")), Down: down, House: job.CommonPractice()}
	r.Trees = []job.Tree{{Tree: sizing.Tree{Height: 7 * units.Foot}}, {Tree: sizing.Tree{Height: 9 * units.Foot, Kind: sizing.Artificial}}}
	r.House.Rates.Price["visit"] = decimal.Zero // said, so that the visits are not without a price
	both := r
	both.Trees = r.Trees[:1]
	long := r
	long.House.Rates.Minutes = maps.Clone(r.House.Rates.Minutes)
	long.House.Rates.Minutes["day"] = decimal.NewFromInt(30)
	for _, row := range []struct {
		r      job.Request
		visits string
		want   []string
	}{
		{r, "3 visits", []string{"2026-12-25 take down and pack what is on the cut tree [0]", "2026-12-25 the cut tree is out, at the latest: 12 days before the rest []", "2027-01-06 take down and pack [1]"}},
		{both, "2 visits", []string{"2026-12-25 take down and pack [0]", "2026-12-25 the cut tree is out, at the latest, and not on 2027-01-06 []"}},
	} {
		p, err := job.Make(row.r)
		if err != nil {
			t.Fatal(err)
		}
		if got := dates(p); !slices.Equal(got, row.want) || visits(p) != row.visits {
			t.Errorf("%q, %s", got, visits(p))
		}
		for i, x := range p.TakeDown {
			if i > 0 && x.Work < p.TakeDown[i-1].Work {
				t.Errorf("task %d, %v, is not in its day", i, x)
			}
		}
		if p.TakeDown[0].Start != 0 || p.TakeDown[len(p.TakeDown)-1].Work != len(row.r.Trees)-1 {
			t.Errorf("%v", p.TakeDown)
		}
	}
	p, err := job.Make(long)
	if err != nil {
		t.Fatal(err)
	}
	// The dates by the minutes of each tree, in days of 30.
	ends := map[int]int{}
	for _, x := range p.TakeDown {
		ends[x.Work] = max(ends[x.Work], x.Start+x.Minutes)
	}
	begin := p.Dates[slices.IndexFunc(p.Dates, func(d labor.Day) bool { return strings.HasPrefix(d.Text, "begin to put up") })].Date
	out := begin + 28
	cut, rest := (ends[0]+29)/30, (ends[1]+29)/30
	want := []string{
		fmt.Sprintf("%v begin to take down and pack what is on the cut tree: %d days [0]", out-labor.Date(cut-1), cut),
		fmt.Sprintf("%v the cut tree is out, at the latest: %d days before the rest []", out, down-out),
		fmt.Sprintf("%v begin to take down and pack: %d days [1]", down, rest),
		fmt.Sprintf("%v all is down and packed []", down+labor.Date(rest-1)),
	}
	if got := dates(p); cut < 2 || rest < 2 || !slices.Equal(got[len(got)-4:], want) || visits(p) != fmt.Sprint((p.Time.Max+29)/30+cut+rest, " visits") {
		t.Errorf("%q, want %q, %s", got, want, visits(p))
	}
	long.Stand, long.Down = units.Must(labor.ParseDate("9999-12-01")), units.Must(labor.ParseDate("9999-12-31"))
	_, err = job.Make(long)
	if list := job.Faults(err); len(list) != 1 || list[0].Field != "/down" || !errors.Is(list[0], units.ErrRange) {
		t.Errorf("%v", err)
	}
}

// What takes just a day takes one visit, and a minute more two.
func TestVisitsOfADay(t *testing.T) {
	r := job.Request{Stand: units.Must(labor.ParseDate("2026-11-28")), House: job.CommonPractice()}
	r.Trees = []job.Tree{{Tree: sizing.Tree{Height: 7 * units.Foot}}}
	r.House.Rates.Price["visit"] = decimal.Zero
	p, err := job.Make(r)
	if err != nil {
		t.Fatal(err)
	}
	for day, want := range map[int]string{p.Time.Max: "1 visit", p.Time.Max - 1: "2 visits"} {
		r.House.Rates.Minutes["day"] = decimal.NewFromInt(int64(day))
		p, err := job.Make(r)
		if err != nil || !slices.ContainsFunc(p.Quote[1].Lines, func(l labor.Line) bool { return l.Text == want }) {
			t.Errorf("%d min in days of %d: %v, %v", p.Time.Max, day, p.Quote, err)
		}
	}
}

// Ribbon cut from rolls is packed for the rooms where its pieces hung: by hand, of rolls of 30 yd the tall tree has more than the low one.
func TestCutPiecesInTheirRooms(t *testing.T) {
	ribbon := shopping.Item{Kind: shopping.Ribbon}
	r := job.Request{Stand: units.Must(labor.ParseDate("2026-11-28"))}
	for i, room := range []string{"hall", "attic"} {
		r.Trees = append(r.Trees, job.Tree{Tree: sizing.Tree{Height: units.Length(9-5*i) * units.Foot}, Room: room, Accents: []shopping.Kind{shopping.Ribbon}})
	}
	r.Shop.Offers = []shopping.Offer{{Item: ribbon, Name: "30 yd roll", Pack: shopping.Quantity{Length: 30 * units.Yard}, Price: decimal.NewFromInt(9)}}
	p, err := job.Make(r)
	if err != nil {
		t.Fatal(err)
	}
	length := func(things []labor.Thing, room string) (sum units.Length) {
		for _, x := range things {
			if x.Room == room && x.Item == ribbon {
				sum += x.Quantity.Length * units.Length(max(1, x.Quantity.Pieces))
			}
		}
		return sum
	}
	for _, tree := range p.Trees {
		packed := units.Length(0)
		for _, c := range p.Cartons {
			packed += length(c.Things, tree.Room)
		}
		if want := tree.Planned[shopping.Ribbon].Length; packed != want || want == 0 {
			t.Errorf("%s: %v of ribbon packed, %v planned", tree.Room, packed, want)
		}
	}
}

// Lights hang, are packed and are there next year by whole strings: those that the basket has, or else by their label, or of 100. By hand:
// 7 ft take 700 lights, in 24 strings of 30; a basket of two strings of 200 for 400 hangs all of both.
func TestWorkStrings(t *testing.T) {
	light := shopping.Item{Kind: shopping.Light}
	for _, row := range []struct {
		name          string
		put           func(*job.Request)
		strings, each int
	}{
		{"a label", func(r *job.Request) { r.Trees[0].Lights.Lamps = 30 }, 24, 30},
		{"no label", func(r *job.Request) { r.Trees[0].Lights = lights.Label{} }, 7, 100},
		{"a basket", func(r *job.Request) {
			r.Shop.Offers = []shopping.Offer{{Item: light, Name: "string", Pack: shopping.Quantity{Pieces: 400}, Price: decimal.NewFromInt(1)}}
		}, 2, 400},
	} {
		r := job.Request{Stand: units.Must(labor.ParseDate("2026-11-28")), House: job.CommonPractice()}
		r.Trees = []job.Tree{{Tree: sizing.Tree{Height: 7 * units.Foot}, Lights: lights.Label{Lamps: 50, Length: 16 * units.Foot, Power: 2 * units.Watt}}}
		row.put(&r)
		p, err := job.Make(r)
		if err != nil {
			t.Fatal(err)
		}
		lamps := 0
		for _, x := range p.Work {
			if x.Kind == shopping.Light {
				lamps += x.Quantity.Pieces
			}
		}
		one := shopping.Lot{Item: light, Quantity: shopping.Quantity{Pieces: row.each}}
		if n := counted(packed(p.Cartons))[one]; n != row.strings || counted(p.Stock)[one] != n || lamps != n*row.each {
			t.Errorf("%s: %d packed, %d in stock, %d lamps strung: want %d of %d", row.name, n, counted(p.Stock)[one], lamps, row.strings, row.each)
		}
	}
}

// A mantel for which nothing of its garland is to be had is no work; its stockings still hang, from as many hooks as there are.
func TestWorkWithoutGarland(t *testing.T) {
	hour := func(r job.Request) (texts []string) {
		p, err := job.Make(r)
		if err != nil {
			t.Fatal(err)
		}
		for _, x := range append(p.Work, p.TakeDown...) {
			texts = append(texts, x.Text)
		}
		return texts
	}
	offer := func(kind shopping.Kind, n int, length units.Length) shopping.Offer {
		return shopping.Offer{Item: shopping.Item{Kind: kind}, Name: kind.String(), Pack: shopping.Quantity{Pieces: n, Length: length}, Price: decimal.NewFromInt(1)}
	}
	day := units.Must(labor.ParseDate("2026-11-28"))
	r := job.Request{Stand: day, Down: day + 30, House: job.CommonPractice()}
	m := job.Mantel{Hook: mantel.Hook{Rating: 5 * units.Pound}, PerFoot: units.Pound / 2}
	m.Length = 64 * units.Inch
	r.Mantels = []job.Mantel{m}
	r.Shop.Offers = []shopping.Offer{offer(shopping.Pick, 1, 0), offer(shopping.Tie, 1, 0), offer(shopping.Hook, 1, 0)}
	if got := hour(r); got != nil {
		t.Errorf("without garland: %q", got)
	}
	if p, err := job.Make(r); err != nil || slices.ContainsFunc(p.Dates, func(d labor.Day) bool { return len(d.Down) > 0 }) {
		t.Errorf("without garland there is something to take down: %v, %v", p.Dates, err)
	}
	r.Mantels[0].Stockings = mantel.Stockings{Count: 4, Length: 18 * units.Inch, Weight: units.Pound}
	r.Shop.Offers = append(r.Shop.Offers, offer(shopping.Stocking, 1, 0))
	if got, want := hour(r), []string{
		"hang 2 of 4 hooks", "hang 2 of 4 hooks", "hang 2 of 4 stockings", "hang 2 of 4 stockings",
		"take off 2 of 4 stockings", "take off 2 of 4 stockings", "take off 2 of 4 hooks", "take off 2 of 4 hooks",
	}; !slices.Equal(got, want) {
		t.Errorf("with stockings: %q", got)
	}
	r.Shop.Offers = append(r.Shop.Offers, offer(shopping.BaseGarland, 0, 9*units.Foot))
	if got, want := hour(r), []string{"dress the mantel; call a second person to lift the garland", "clear the mantel"}; !slices.Equal(got, want) {
		t.Errorf("with garland: %q", got)
	}
}

// Every fault of the work is told, at its place in the request, alone and with the others.
func TestWorkFaults(t *testing.T) {
	all := map[string]func(*job.Request){
		"/house/rates/minutes/picks":  func(r *job.Request) { r.House.Rates.Minutes["picks"] = decimal.NewFromInt(-1) },
		"/house/rates/minutes/day":    func(r *job.Request) { r.House.Rates.Minutes["day"] = decimal.Zero },
		"/house/rates/days/garland":   func(r *job.Request) { r.House.Rates.Days["garland"] = 400 },
		"/house/rates/percent/so~1fa": func(r *job.Request) { r.House.Rates.Percent["so/fa"] = decimal.NewFromInt(1) },
		"/house/rates/price/hour":     func(r *job.Request) { r.House.Rates.Price["hour"] = decimal.NewFromInt(-45) },
		"/house/rates/crew":           func(r *job.Request) { r.House.Rates.Crew = 0 },
		"/house/rates/lift":           func(r *job.Request) { r.House.Rates.Lift = 0 },
		"/house/rates/places":         func(r *job.Request) { r.House.Rates.Places = 7 },
		"/house/rates/reach":          func(r *job.Request) { r.House.Rates.Reach = -1 },
		"/house/boxes/1/cells":        func(r *job.Request) { r.House.Boxes[1].Cells = 0 },
		"/down":                       func(r *job.Request) { r.Down = r.Stand - 1 },
		"/lost/1/quantity":            func(r *job.Request) { r.Lost[1].Quantity.Pieces = -1 },
	}
	fresh := func() job.Request {
		r := station(t)
		lot := shopping.Lot{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: 1}}
		r.Lost = []shopping.Lot{lot, lot}
		return r
	}
	together := fresh()
	for pointer, change := range all {
		r := fresh()
		change(&r)
		change(&together)
		_, err := job.Make(r)
		if list := job.Faults(err); len(list) != 1 || list[0].Field != pointer || list[0].Func != "job.Make" {
			t.Errorf("%s: %v", pointer, err)
		}
	}
	_, err := job.Make(together)
	for _, f := range job.Faults(err) {
		if all[f.Field] == nil {
			t.Errorf("nothing is wrong with %v", f)
		}
		delete(all, f.Field)
	}
	for pointer := range all {
		t.Errorf("of several faults %s is not told", pointer)
	}
	for _, row := range []struct {
		pointer string
		reason  error
		spoil   func(*job.Request)
	}{
		{"/stand", units.ErrFit, func(r *job.Request) { r.Stand = 0 }},
		{"/stand", units.ErrRange, func(r *job.Request) { r.Stand, r.Down = 10, 40 }}, // no time to order
		{"/lost/1/quantity", units.ErrRange, func(r *job.Request) { r.Lost[1].Quantity.Pieces = 1000 }},
		{"/house/rates/crew", units.ErrFit, func(r *job.Request) { r.House.Rates.Crew = 1 }},
		{"/house/rates/minutes", units.ErrRange, func(r *job.Request) {
			r.House.Rates.Minutes["lights"] = decimal.NewFromInt(1000)
			r.Trees[0].Height, r.Trees[0].Space = 100*units.Foot, sizing.Room{}
			r.House.Trees.PerFoot[shopping.Light].Pieces = 1000
			r.Shop.Offers, r.Shop.Owned, r.Shop.Budget = nil, nil, decimal.Zero
			r.Box = nil
		}},
	} {
		r := fresh()
		row.spoil(&r)
		_, err := job.Make(r)
		list := job.Faults(err)
		if len(list) != 1 || list[0].Field != row.pointer || !errors.Is(list[0], row.reason) {
			t.Errorf("%s: %v", row.pointer, err)
		}
	}
}

// Of the rates what is not named in a request stays as it was; dates and losses are read.
func TestWorkJSON(t *testing.T) {
	r, err := job.ParseRequest([]byte(`{"house": {"rates": {"minutes": {"picks": 2}, "price": {"hour": "45.00"}}}, "trees": [{"height": "7 ft", "accents": ["picks"]}],
		"stand": "2026-11-28", "lost": [{"item": "picks", "quantity": 2}]}`))
	if err != nil {
		t.Fatal(err)
	}
	rates := r.House.Rates
	if rates.Minutes["picks"].String() != "2" || rates.Minutes["ornaments"].String() != "1.2" || rates.Price["hour"].String() != "45" || r.Stand != 739_948 || r.Lost[0].Quantity.Pieces != 2 {
		t.Errorf("%+v", r)
	}
	data, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	if back, err := job.ParseRequest(data); err != nil || back.House.Rates.Minutes["picks"].String() != "2" || back.Stand != r.Stand {
		t.Error(err)
	}
	_, err = job.ParseRequest([]byte(`{"trees": [{"height": "7 ft"}], "stand": "2026-02-30", "house": {"rates": {"price": {"day": 1}}}}`))
	var told []string
	for _, f := range job.Faults(err) {
		told = append(told, f.Field)
	}
	if strings.Join(told, " ") != "/stand /house/rates/price/day" && strings.Join(told, " ") != "/house/rates/price/day /stand" {
		t.Error(told, err)
	}
}
