package labor_test

import (
	"math/big"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/shopping"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// drawnGoods draws a list of purchases.
func drawnGoods(t *rapid.T) shopping.List {
	var l shopping.List
	for range rapid.IntRange(0, 4).Draw(t, "purchases") {
		cost := decimal.New(int64(rapid.IntRange(0, 5_000_000).Draw(t, "cost")), -4)
		item := shopping.Item{Kind: shopping.Pick}
		l.Purchases = append(l.Purchases, shopping.Purchase{Shares: []shopping.Share{{Need: shopping.Need{Item: item}}}, Cost: cost, Buys: []shopping.Buy{{Offer: shopping.Offer{Item: item, Name: "box"}, Packs: 1, Cost: cost}}})
		l.Total = l.Total.Add(cost)
	}
	if rapid.Bool().Draw(t, "delivery") {
		l.Total = l.Total.Add(decimal.New(495, -2))
	}
	return l
}

// rounded returns a fraction rounded to so many places, half away from zero: a slow reference.
func rounded(x *big.Rat, places int) decimal.Decimal {
	scaled := new(big.Rat).Mul(x, new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil)))
	half := big.NewRat(1, 2)
	if scaled.Sign() < 0 {
		half.Neg(half)
	}
	scaled.Add(scaled, half)
	return decimal.NewFromBigInt(new(big.Int).Quo(scaled.Num(), scaled.Denom()), -int32(places))
}

// times returns x·percent/100.
func times(x decimal.Decimal, percent decimal.Decimal) *big.Rat {
	return new(big.Rat).Mul(x.Rat(), percent.Shift(-2).Rat())
}

// kindOf returns what a line is for, by its text.
func kindOf(l labor.Line) string {
	for _, k := range []struct{ text, kind string }{
		{"discount of ", "discount"}, {"tax of ", "tax"}, {" visit", "travel"}, {"putting up", "work"}, {"taking down", "work"}, {"consultation", "work"},
	} {
		if strings.Contains(l.Text, k.text) {
			return k.kind
		}
	}
	return "goods"
}

// Every price is that of the formula, in exact fractions, rounded to the places; the lines add up to the total as they
// are printed; and the client's sheet has the same prices without costs and bases.
func TestQuote(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, goods, visits := drawnRates(t), drawnGoods(t), rapid.IntRange(0, 3).Draw(t, "visits")
		tasks, _ := tasksOf(t, r, drawnWork(t))
		options := must[[]labor.Option](t)(r.Quote(goods, tasks, nil, visits))
		for i, o := range options {
			total := decimal.Zero
			sums := map[string]decimal.Decimal{}
			last := ""
			minutes := int64(personMinutes(tasks))
			goodsLine := 0
			for _, l := range o.Lines {
				want := rounded(new(big.Rat), r.Places)
				kind := kindOf(l)
				switch kind {
				case "goods":
					cost := goods.Total
					for _, p := range goods.Purchases {
						cost = cost.Sub(p.Cost)
					}
					if goodsLine < len(goods.Purchases) {
						cost = goods.Purchases[goodsLine].Cost
					}
					goodsLine++
					want = rounded(times(cost, decimal.NewFromInt(100).Add(r.Percent["markup"])), r.Places)
				case "work":
					want = rounded(new(big.Rat).Mul(r.Price["hour"].Rat(), big.NewRat(minutes, 60)), r.Places)
					if i == 0 {
						want = rounded(r.Price["consultation"].Rat(), r.Places)
					}
				case "travel":
					n := visits
					if i == 0 {
						n = 1
					}
					want = rounded(r.Price["visit"].Mul(decimal.NewFromInt(int64(n))).Rat(), r.Places)
				case "discount":
					want = rounded(times(sums[last], r.Percent["discount"]), r.Places).Neg()
				case "tax":
					want = rounded(times(sums[last], r.Percent[last+" tax"]), r.Places)
				}
				if !l.Price.Equal(want) {
					t.Fatalf("%s: %+v, want %s", o.Name, l, want)
				}
				if kind != "discount" && kind != "tax" {
					last = kind
				}
				if kind != "tax" {
					sums[last] = sums[last].Add(l.Price)
				}
				total = total.Add(decimal.RequireFromString(l.Price.StringFixed(int32(r.Places)))) // as printed
			}
			if !total.Equal(o.Total) || !o.Deposit.Equal(rounded(times(o.Total, r.Percent["deposit"]), r.Places)) {
				t.Fatalf("%s: lines of %s, total %s, deposit %s", o.Name, total, o.Total, o.Deposit)
			}
			for i := range o.Lines {
				o.Lines[i].Basis = ""
			}
			if client := r.Sheet(o, true); r.Sheet(o, false) != client || strings.Contains(client, " an hour") {
				t.Fatalf("for the client\n%s", client)
			}
		}
	})
}

// One more work, one more purchase, another visit and a higher rate never cost less. Nor does more of a need, but for the minute of
// a part of the height that has none of it when it is shared out anew.
func TestMoreNeverCostsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, goods, w, visits := drawnRates(t), drawnGoods(t), drawnWork(t), 2
		quote := func(r labor.Rates, goods shopping.List, work []labor.Work, visits int) []labor.Option {
			up, down := tasksOf(t, r, work...)
			return must[[]labor.Option](t)(r.Quote(goods, up, down, visits))
		}
		w.Needs = append(w.Needs, pieces(shopping.Ornament, rapid.IntRange(0, 200).Draw(t, "ornaments")))
		before := quote(r, goods, []labor.Work{w}, visits)
		slack := decimal.Zero
		moreWork := []labor.Work{w}
		moreWork[0].Needs = append([]shopping.Need(nil), w.Needs...)
		switch rapid.IntRange(0, 5).Draw(t, "what") {
		case 0:
			last := &moreWork[0].Needs[len(w.Needs)-1].Quantity.Pieces
			*last += rapid.IntRange(0, 5).Draw(t, "more")
			up, down := tasksOf(t, r, w)
			tasks := decimal.NewFromInt(int64(len(up) + len(down)))
			// Of two people, doubled by the highest tax, and what rounding does.
			slack = r.Price["hour"].Mul(tasks).Mul(decimal.NewFromInt(4)).Div(decimal.NewFromInt(60)).Add(decimal.New(4, -int32(r.Places)))
		case 1:
			moreWork = append(moreWork, w)
		case 2:
			more := pieces(shopping.Pick, 1)
			goods.Purchases = append(goods.Purchases[:len(goods.Purchases):len(goods.Purchases)], shopping.Purchase{Shares: []shopping.Share{{Need: more}}, Cost: decimal.New(1, -4), Buys: []shopping.Buy{{Offer: shopping.Offer{Item: more.Item, Name: "x"}, Packs: 1}}})
			goods.Total = goods.Total.Add(decimal.New(1, -4))
		case 3:
			visits++
		case 4:
			r.Price["hour"] = r.Price["hour"].Add(decimal.New(1, -4))
		case 5:
			r.Minutes["ornaments"] = r.Minutes["ornaments"].Add(decimal.New(1, -4))
		}
		after := quote(r, goods, moreWork, visits)
		for i := range before {
			if after[i].Total.LessThan(before[i].Total.Sub(slack)) {
				t.Fatalf("%s: %s, and with more %s", before[i].Name, before[i].Total, after[i].Total)
			}
		}
	})
}

// A rate of zero is shown as a line of 0.00, and goods that are not bought as none.
func TestZeroRateIsShown(t *testing.T) {
	r := labor.StartingRates()
	tasks, _ := tasksOf(t, r, station()...)
	list := basket()
	list.Purchases = append(list.Purchases, shopping.Purchase{Shares: []shopping.Share{{Need: shopping.Need{Item: shopping.Item{Kind: shopping.Bell}}}}})
	list.Total = list.Total.Add(decimal.RequireFromString("4.95"))
	got := r.Sheet(must[[]labor.Option](t)(r.Quote(list, tasks, nil, 1))[1], true)
	// By hand: 4.95 and half of it are 7.425, rounded away from zero; 55.50 + 7.43 = 62.93, and half is 31.465.
	const want = `done for you
  picks, 1 x box of 6, 2 x box of 24                                   55.50
  delivery and the like                                                 7.43
  ticket hall, putting up, without a price                              0.00
  waiting room, putting up, without a price                             0.00
  tea room, putting up, without a price                                 0.00
  1 visit, without a price                                              0.00
total                                                                  62.93
  deposit                                                              31.47
  balance                                                              31.46
`
	if got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}

// A sheet has lines of at most 76 characters, also of long names, and of a word with no place to break it.
func TestSheetWidth(t *testing.T) {
	o := labor.Option{Name: "done for you", Lines: []labor.Line{
		{Text: strings.Repeat("crimson stars and ", 12), Price: decimal.NewFromInt(1_000_000)},
		{Text: strings.Repeat("ö", 200), Price: decimal.NewFromInt(3)},
		{Text: " " + strings.Repeat("x", 80)},
	}}
	for line := range strings.Lines(labor.StartingRates().Sheet(o, false)) {
		if n := len([]rune(strings.TrimSuffix(line, "\n"))); n > 76 || strings.TrimSpace(line) == "" {
			t.Errorf("%d characters: %s", n, line)
		}
	}
	if strings.Count(labor.StartingRates().Sheet(o, false), "ö") != 200 || strings.Count(labor.StartingRates().Sheet(o, false), "crimson") != 12 {
		t.Errorf("text is lost:\n%s", labor.StartingRates().Sheet(o, false))
	}
}

// A text of 64 characters, with the two before it, stands before its price; a longer one is broken at the last
// space up to there, or where there is none, after 64.
func TestSheetBreaks(t *testing.T) {
	word := func(n int) string { return strings.Repeat("ö", n) }
	for _, row := range []struct{ text, first string }{
		{word(62), "  " + word(62) + "        1.00"},
		{word(63), "  " + word(62)},
		{"gold " + word(57), "  gold " + word(57) + "        1.00"},
		{"gold " + word(57) + " more", "  gold " + word(57)},
		{"gold " + word(58), "  gold"},
	} {
		o := labor.Option{Lines: []labor.Line{{Text: row.text, Price: decimal.NewFromInt(1)}}}
		if lines := strings.Split(labor.StartingRates().Sheet(o, true), "\n"); lines[1] != row.first {
			t.Errorf("%q begins %q", row.text, lines[1])
		}
	}
}

// A purchase of what comes in types is told as it is said: picks and mantel picks, once each.
func TestTypesInALine(t *testing.T) {
	list := basket()
	mantel := shopping.Need{Item: shopping.Item{Kind: shopping.Pick, Type: "mantel"}}
	list.Purchases[0].Shares = append(list.Purchases[0].Shares, shopping.Share{Need: mantel}, shopping.Share{Need: mantel})
	o := must[[]labor.Option](t)(labor.StartingRates().Quote(list, nil, nil, 0))[2]
	if got := o.Lines[0].Text; got != "picks and mantel picks, 1 x box of 6, 2 x box of 24" {
		t.Error(got)
	}
}

// Tax that a store took is passed on: no markup, no discount and no tax of the house on it. By hand: goods of 80.00 with 50 % are
// 120.00, less 10 % 108.00, and 5 % of that 5.40; delivery of 6.00 is in the goods, 9.00; the tax is 5.38.
func TestTaxIsPassedOn(t *testing.T) {
	r := labor.StartingRates()
	r.Percent = map[string]decimal.Decimal{"markup": decimal.NewFromInt(50), "discount": decimal.NewFromInt(10), "goods tax": decimal.NewFromInt(5)}
	ribbon := shopping.Item{Kind: shopping.Ribbon}
	goods := shopping.List{
		Purchases: []shopping.Purchase{{Shares: []shopping.Share{{Need: shopping.Need{Item: ribbon}}}, Cost: decimal.NewFromInt(80), Buys: []shopping.Buy{{Offer: shopping.Offer{Item: ribbon, Name: "roll"}, Packs: 8}}}},
		Bills:     []shopping.Bill{{Store: "corner", Goods: decimal.NewFromInt(80), Delivery: decimal.NewFromInt(6), Tax: decimal.New(538, -2)}},
		Total:     decimal.New(9138, -2),
	}
	o := must[[]labor.Option](t)(r.Quote(goods, nil, nil, 0))[2]
	var got []string
	for _, l := range o.Lines {
		got = append(got, l.Price.StringFixed(2)+" "+l.Text)
	}
	want := []string{
		"120.00 ribbon, 8 x roll", "9.00 delivery and the like", "-12.90 discount of 10 % on the goods",
		"5.81 tax of 5 % on the goods", "5.38 tax on the goods, as paid",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got %q", got)
	}
}

// A price that is left out is told in each line that it counts nothing in; one of zero is a price.
func TestWithoutAPrice(t *testing.T) {
	r := labor.StartingRates()
	tasks := []labor.Task{{Room: "hall", Minutes: 30, People: 1}, {Minutes: 30, People: 1}}
	texts := func() (list []string) {
		for _, o := range must[[]labor.Option](t)(r.Quote(shopping.List{}, tasks, nil, 2)) {
			for _, l := range o.Lines {
				list = append(list, l.Text)
			}
		}
		return list
	}
	const none = ", without a price"
	if got, want := texts(), []string{"consultation" + none, "1 visit" + none, "hall, putting up" + none, "putting up" + none, "2 visits" + none}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	r.Price["visit"], r.Price["hour"] = decimal.Zero, decimal.NewFromInt(45)
	if got, want := texts(), []string{"consultation" + none, "1 visit", "hall, putting up", "putting up", "2 visits"}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}

// A purchase of several sizes and colors names each color once, with its sizes; where nothing is bought there is no option of goods alone.
func TestQuoteOfSizes(t *testing.T) {
	rates := labor.StartingRates()
	share := func(text string) shopping.Share {
		return shopping.Share{Need: shopping.Need{Item: must[shopping.Item](t)(shopping.ParseItem(text))}}
	}
	for _, row := range []struct {
		shares []string
		want   string
	}{
		{[]string{"crimson ornaments", "gold ornaments", "crimson ornaments"}, "crimson ornaments and gold ornaments, 1 x box"},
		{[]string{"crimson ornaments", "crimson ornaments, 2 in", "crimson ornaments, 4 in", "crimson ornaments, 2 in"}, "crimson ornaments, 2 in and 4 in, 1 x box"},
		{[]string{"crimson ornaments, 2 in", "gold ornaments"}, "crimson ornaments, 2 in, and gold ornaments, 1 x box"},
	} {
		p := shopping.Purchase{Buys: []shopping.Buy{{Offer: shopping.Offer{Name: "box"}, Packs: 1}}}
		for _, text := range row.shares {
			p.Shares = append(p.Shares, share(text))
		}
		options := must[[]labor.Option](t)(rates.Quote(shopping.List{Purchases: []shopping.Purchase{p}}, nil, nil, 1))
		if got := options[2].Lines[0].Text; len(options) != 3 || got != row.want {
			t.Errorf("%q: %q, want %q", row.shares, got, row.want)
		}
	}
	options := must[[]labor.Option](t)(rates.Quote(shopping.List{}, nil, nil, 1))
	if len(options) != 2 || options[1].Name != "done for you" {
		t.Errorf("%+v", options)
	}
}
