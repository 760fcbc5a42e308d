package shopping_test

import (
	"encoding/json"
	"errors"
	"math"
	"math/big"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

// offer returns a good offer of picks, for a test to spoil.
func offer() shopping.Offer {
	return shopping.Offer{Item: shopping.Item{Kind: shopping.Pick}, Name: "box of 12", Pack: shopping.Quantity{Pieces: 12}, Price: cents(900)}
}

func picks(n int) shopping.Need {
	return shopping.Need{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: n}}
}

func garland(l units.Length) shopping.Need {
	return shopping.Need{Item: shopping.Item{Kind: shopping.Garland}, Quantity: shopping.Quantity{Length: l}}
}

func ofLength(n int, l units.Length) shopping.Quantity {
	return shopping.Quantity{Pieces: n, Length: l}
}

// with returns a shop of one offer, changed.
func with(change func(*shopping.Offer)) shopping.Shop {
	o := offer()
	change(&o)
	return shopping.Shop{Offers: []shopping.Offer{o}}
}

// kindNames are the names that an item of no kind is told.
const kindNames = "ornaments, garland, ribbon, picks, lights, toppers, skirts, base garland, bells, stockings, wire ties or hooks"

func TestBadShop(t *testing.T) {
	const names = "1 to 64 bytes of text in one line"
	const money = "0 to 1000000 with at most 4 decimal places"
	many := strings.Repeat("x", 65)
	price := func(d decimal.Decimal) shopping.Shop {
		return with(func(o *shopping.Offer) { o.Price = d })
	}
	pack := func(q shopping.Quantity) shopping.Shop { return with(func(o *shopping.Offer) { o.Pack = q }) }
	owned := func(item shopping.Item, q shopping.Quantity) shopping.Shop {
		return shopping.Shop{Owned: []shopping.Lot{{Item: item, Quantity: q}}}
	}
	for _, tt := range []struct {
		reason string
		shop   shopping.Shop
		err    error
		field  string
		value  string
		want   string
	}{
		{"no name", with(func(o *shopping.Offer) { o.Name = "" }), units.ErrSyntax, "/offers/0/name", "", names},
		{"long name", with(func(o *shopping.Offer) { o.Name = many }), units.ErrSyntax, "/offers/0/name", many, names},
		{"two lines", with(func(o *shopping.Offer) { o.Name = "a\nb" }), units.ErrSyntax, "/offers/0/name", "a\nb", names},
		{"not text", with(func(o *shopping.Offer) { o.Name = "\xff" }), units.ErrSyntax, "/offers/0/name", "\xff", names},
		{"no item", with(func(o *shopping.Offer) { o.Item = shopping.Item{} }), units.ErrName, "/offers/0/item", "Kind(0)", kindNames},
		{"the same name twice", shopping.Shop{Offers: []shopping.Offer{offer(), offer()}}, units.ErrDuplicate, "/offers/1/name", "box of 12", `one offer of that name for "picks"`},
		{"empty pack", pack(shopping.Quantity{}), units.ErrRange, "/offers/0/pack", "0", "at least 1 piece or a length"},
		{"negative pack", pack(shopping.Quantity{Pieces: -1}), units.ErrRange, "/offers/0/pack", "-1", "0 to 1000000 pieces"},
		{"huge pack", pack(shopping.Quantity{Pieces: 1_000_001}), units.ErrRange, "/offers/0/pack", "1000001", "0 to 1000000 pieces"},
		{"negative strand", pack(ofLength(0, -units.Foot)), units.ErrRange, "/offers/0/pack", "-1 ft", "0 to 1000 m"},
		{"long strand", pack(ofLength(0, 1000*units.Meter+1)), units.ErrRange, "/offers/0/pack", (1000*units.Meter + 1).String(), "0 to 1000 m"},
		{"negative strands", pack(ofLength(2, -units.Foot)), units.ErrRange, "/offers/0/pack", "2 of -1 ft", "pieces of 0 to 1000 m each"},
		{"long strands", pack(ofLength(2, 1000*units.Meter+1)), units.ErrRange, "/offers/0/pack", "2 of " + (1000*units.Meter + 1).String(), "pieces of 0 to 1000 m each"},
		{"long pack", pack(ofLength(2, 501*units.Meter)), units.ErrRange, "/offers/0/pack", "2 of 501 m", "at most 1000 m in all"},
		{"negative price", price(cents(-1)), units.ErrRange, "/offers/0/price", "-0.01", money},
		{"price over a million", price(decimal.RequireFromString("1000000.01")), units.ErrRange, "/offers/0/price", "1000000.01", money},
		{"five places", price(decimal.New(12345, -5)), units.ErrRange, "/offers/0/price", "0.12345", money},
		{"absurd exponent", price(decimal.New(1, -1_000_000)), units.ErrRange, "/offers/0/price", "a number of 1 digits times 10^-1000000", money},
		{"least exponent", price(decimal.New(1, math.MinInt32)), units.ErrRange, "/offers/0/price", "a number of 1 digits times 10^-2147483648", money},
		{"greatest exponent", price(decimal.New(1, math.MaxInt32)), units.ErrRange, "/offers/0/price", "a number of 1 digits times 10^2147483647", money},
		{"nothing, with an absurd exponent", price(decimal.New(0, 65)), units.ErrRange, "/offers/0/price", "a number of 1 digits times 10^65", money},
		{"nothing, with as absurd an exponent below", price(decimal.New(0, -65)), units.ErrRange, "/offers/0/price", "a number of 1 digits times 10^-65", money},
		{"many digits", price(decimal.NewFromBigInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(64), nil), -64)), units.ErrRange, "/offers/0/price", "a number of 65 digits times 10^-64", money},
		{"negative shelf", with(func(o *shopping.Offer) { o.Shelf = -2 }), units.ErrRange, "/offers/0/shelf", "-2", "0 to 999999999, or SoldOut"},
		{"huge shelf", with(func(o *shopping.Offer) { o.Shelf = 1_000_000_000 }), units.ErrRange, "/offers/0/shelf", "1000000000", "0 to 999999999, or SoldOut"},
		{"owned by nobody", owned(shopping.Item{}, shopping.Quantity{Pieces: 1}), units.ErrName, "/owned/0/item", "Kind(0)", kindNames},
		{"negative stock", owned(shopping.Item{Kind: shopping.Pick}, shopping.Quantity{Pieces: -5}), units.ErrRange, "/owned/0/quantity", "-5", "0 to 1000000 pieces"},
		{"long stock", owned(shopping.Item{Kind: shopping.Garland}, ofLength(1001, 1000*units.Meter)), units.ErrRange, "/owned/0/quantity", "1001 of 1000 m", "at most 1000000 m in all"},
		{"negative overlap", shopping.Shop{Joins: map[shopping.Item]shopping.Join{{Kind: shopping.Garland}: {Overlap: -1}}}, units.ErrRange, "/joins/garland/overlap", "-0.000001 mm", "0 to 1000 m"},
		{"long overlap", shopping.Shop{Joins: map[shopping.Item]shopping.Join{{Kind: shopping.Garland}: {Overlap: 1001 * units.Meter}, {Kind: shopping.Ribbon}: {Overlap: -1}}}, units.ErrRange, "/joins/garland/overlap", "1001 m", "0 to 1000 m"},
		{
			"a strand that is all overlap",
			shopping.Shop{Offers: []shopping.Offer{{Item: shopping.Item{Kind: shopping.Garland}, Name: "short", Pack: ofLength(0, 2*units.Inch)}}, Joins: map[shopping.Item]shopping.Join{{Kind: shopping.Garland}: {Overlap: 2 * units.Inch}}},
			units.ErrRange, "/offers/0/pack", "2 in", "strands longer than the overlap of 2 in",
		},
		{"too many offers", shopping.Shop{Offers: make([]shopping.Offer, 5001)}, units.ErrRange, "/offers", "5001", "at most 5000 of them"},
		{"too much owned", shopping.Shop{Owned: make([]shopping.Lot, 5001)}, units.ErrRange, "/owned", "5001", "at most 5000 entries"},
	} {
		for name, call := range map[string]func() error{
			"Shop.List":    func() error { _, err := tt.shop.List([]shopping.Need{picks(1)}); return err },
			"Shop.Fullest": func() error { _, err := tt.shop.Fullest([]shopping.Need{picks(1)}); return err },
		} {
			want := &units.Error{Func: name, Field: tt.field, Value: tt.value, Want: tt.want}
			checkError(t, tt.reason, call(), tt.err, want)
		}
	}
}

// checkError checks that err is want with sentinel in it.
func checkError(t *testing.T, reason string, err, sentinel error, want *units.Error) {
	t.Helper()
	var got *units.Error
	if !errors.As(err, &got) || !errors.Is(err, sentinel) {
		t.Errorf("%s: got %v, want %v", reason, err, sentinel)
		return
	}
	want.Func = "shopping." + strings.TrimPrefix(want.Func, "shopping.")
	plain := *got
	plain.Err = nil
	if diff := cmp.Diff(want, &plain); diff != "" {
		t.Errorf("%s: -want +got\n%s", reason, diff)
	}
	if text := want.Func + ": " + want.Field + " " + strconv.Quote(want.Value) + ": " + sentinel.Error() + ": want " + want.Want; err.Error() != text {
		t.Errorf("%s: got %q\nwant %q", reason, err, text)
	}
}

func TestGoodBounds(t *testing.T) {
	for _, tt := range []struct {
		reason string
		shop   shopping.Shop
		need   shopping.Need
		cost   string
	}{
		{"free", with(func(o *shopping.Offer) { o.Price = cents(0) }), picks(13), "0"},
		{"trailing zeros are no places", with(func(o *shopping.Offer) { o.Price = decimal.New(900_000_000, -8) }), picks(13), "18"},
		{"four places", with(func(o *shopping.Offer) { o.Price = decimal.New(1, -4) }), picks(13), "0.0002"},
		{"sixty-four places of nothing", with(func(o *shopping.Offer) { o.Price = decimal.New(0, -64) }), picks(13), "0"},
		{"dearest, and the most of them", with(func(o *shopping.Offer) { o.Price, o.Pack.Pieces = decimal.New(1, 6), 1 }), picks(1_000_000), "1000000000000"},
		{"name of 64 bytes", with(func(o *shopping.Offer) { o.Name = strings.Repeat("½", 32) }), picks(12), "9"},
		{"a pack that is far too large", with(func(o *shopping.Offer) { o.Pack.Pieces = 1_000_000 }), picks(1), "9"},
		{"just enough left", with(func(o *shopping.Offer) { o.Shelf = 2 }), picks(24), "18"},
		{"more left than any need takes", with(func(o *shopping.Offer) { o.Shelf = 999_999_999 }), picks(25), "27"},
		{"nothing needed of what is not offered", shopping.Shop{}, picks(0), "0"},
		{"a length of nothing", with(func(*shopping.Offer) {}), garland(0), "0"},
		{"owned to the last piece", shopping.Shop{Owned: []shopping.Lot{{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: 7}}}}, picks(7), "0"},
		{
			"the longest strands",
			shopping.Shop{Offers: []shopping.Offer{{Item: shopping.Item{Kind: shopping.Garland}, Name: "reel", Pack: ofLength(2, 500*units.Meter), Price: cents(1)}}},
			garland(1_000_000 * units.Meter), "10",
		},
		{
			"a millionth of a millimeter short",
			shopping.Shop{Offers: []shopping.Offer{{Item: shopping.Item{Kind: shopping.Garland}, Name: "6 ft", Pack: ofLength(0, 6*units.Foot), Price: cents(100)}}},
			garland(12*units.Foot + 1), "3",
		},
	} {
		p, err := tt.shop.Cheapest(tt.need)
		if err != nil || !p.Cost.Equal(decimal.RequireFromString(tt.cost)) {
			t.Errorf("%s: got %v, %v, want %s", tt.reason, p.Cost, err, tt.cost)
		}
	}
}

func TestBadNeeds(t *testing.T) {
	shop := shopping.Shop{
		Offers: []shopping.Offer{
			offer(),
			{Item: shopping.Item{Kind: shopping.Garland}, Name: "6 ft strand", Pack: ofLength(0, 6*units.Foot), Price: cents(750), Shelf: 2},
		},
		Owned: []shopping.Lot{
			{Item: shopping.Item{Kind: shopping.Ornament, Type: "bow"}, Quantity: shopping.Quantity{Pieces: 3}},
			{Item: shopping.Item{Kind: shopping.Ribbon, Type: "lace"}, Quantity: ofLength(0, units.Yard)},
		},
	}
	need := func(item shopping.Item, q shopping.Quantity) shopping.Need {
		return shopping.Need{Item: item, Quantity: q}
	}
	for _, tt := range []struct {
		reason string
		needs  []shopping.Need
		err    error
		field  string
		value  string
		want   string
	}{
		{"no item", []shopping.Need{need(shopping.Item{}, shopping.Quantity{Pieces: 1})}, units.ErrName, "/needs/0/item", "Kind(0)", kindNames},
		{"long room", []shopping.Need{picks(1), {Item: shopping.Item{Kind: shopping.Pick}, Room: strings.Repeat("x", 65)}}, units.ErrSyntax, "/needs/1/room", strings.Repeat("x", 65), "at most 64 bytes of text in one line"},
		{"negative", []shopping.Need{picks(-1)}, units.ErrRange, "/needs/0/quantity", "-1", "0 to 1000000 pieces"},
		{"over a million", []shopping.Need{picks(1_000_001)}, units.ErrRange, "/needs/0/quantity", "1000001", "0 to 1000000 pieces"},
		{"over a million together", []shopping.Need{picks(1_000_000), picks(1)}, units.ErrRange, "needs", "picks in all: " + "1000001", "0 to 1000000 pieces"},
		{"over a million whole pieces", []shopping.Need{need(shopping.Item{Kind: shopping.Ribbon, Type: "lace"}, ofLength(1_000_000, units.Inch)), need(shopping.Item{Kind: shopping.Ribbon, Type: "lace"}, ofLength(1, units.Inch))}, units.ErrRange, "needs", "ribbon, lace in all: " + "1000001", "0 to 1000000 pieces"},
		{"over a thousand kilometers", []shopping.Need{garland(1_000_000 * units.Meter), garland(1)}, units.ErrRange, "needs", "garland in all: " + (1_000_000*units.Meter + 1).String(), "0 to 1000000 m"},
		{"pieces and lengths", []shopping.Need{picks(2), need(shopping.Item{Kind: shopping.Pick}, ofLength(0, units.Yard))}, units.ErrFit, "needs", "picks in all: 3 ft and 2 pieces", "either pieces or lengths"},
		{"a length of what comes in pieces", []shopping.Need{need(shopping.Item{Kind: shopping.Pick}, ofLength(0, units.Yard))}, units.ErrFit, "/offers/0/pack", "12", "lengths, as it is needed"},
		{"pieces of what comes by length", []shopping.Need{need(shopping.Item{Kind: shopping.Garland}, shopping.Quantity{Pieces: 1})}, units.ErrFit, "/offers/1/pack", "6 ft", "pieces, as it is needed"},
		{"owned pieces", []shopping.Need{need(shopping.Item{Kind: shopping.Ornament, Type: "bow"}, ofLength(1, units.Yard))}, units.ErrFit, "/owned/0/quantity", "3", "lengths, as it is needed"},
		{"owned length", []shopping.Need{need(shopping.Item{Kind: shopping.Ribbon, Type: "lace"}, shopping.Quantity{Pieces: 1})}, units.ErrFit, "/owned/1/quantity", "3 ft", "pieces, as it is needed"},
	} {
		for name, call := range map[string]func() error{
			"Shop.List": func() error { _, err := shop.List(tt.needs); return err },
		} {
			want := &units.Error{Func: name, Field: tt.field, Value: tt.value, Want: tt.want}
			checkError(t, tt.reason, call(), tt.err, want)
		}
	}
	// Length enough for both, but not with what the join loses: 4 + 10 - 2 in.
	tight := shopping.Shop{
		Offers: []shopping.Offer{{Item: shopping.Item{Kind: shopping.Ribbon}, Name: "roll", Pack: ofLength(0, 10*units.Inch), Price: cents(0), Shelf: 2}},
		Joins:  map[shopping.Item]shopping.Join{{Kind: shopping.Ribbon}: {Overlap: 2 * units.Inch}},
	}
	p, err := tight.Cheapest(need(shopping.Item{Kind: shopping.Ribbon}, ofLength(1, 6*units.Inch)), need(shopping.Item{Kind: shopping.Ribbon}, ofLength(0, 13*units.Inch)))
	if err != nil || p.Shares[0].Short() != (shopping.Quantity{}) || p.Shares[1].Short().Length != units.Inch {
		t.Errorf("the join: %v, %v", p, err)
	}
	p, err = tight.Cheapest(need(shopping.Item{Kind: shopping.Ribbon}, ofLength(1, 6*units.Inch)), need(shopping.Item{Kind: shopping.Ribbon}, ofLength(0, 12*units.Inch)))
	if err != nil || !p.Shares[1].Enough() {
		t.Error(err)
	}
	hoard := shopping.Shop{Owned: make([]shopping.Lot, 1001)}
	for i := range hoard.Owned {
		hoard.Owned[i] = shopping.Lot{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: 1_000_000}}
	}
	_, err = hoard.Cheapest(picks(1))
	checkError(t, "a hoard", err, units.ErrRange, &units.Error{Func: "shopping.Shop.List", Field: "/owned", Value: "picks in all: 1001000000", Want: "at most 1000000000 pieces"})
	hoard.Owned = hoard.Owned[1:]
	if p, err := hoard.Cheapest(picks(1)); err != nil || shopping.Surplus(p.Left).Pieces != 999_999_999 {
		t.Errorf("got %v, %v", p, err)
	}
	_, err = shop.List(make([]shopping.Need, 5001))
	checkError(t, "too many needs", err, units.ErrRange, &units.Error{Func: "shopping.Shop.List", Field: "needs", Value: "5001", Want: "at most 5000 of them"})
}

func TestBadOpenNeeds(t *testing.T) {
	shop := shopping.Shop{Offers: []shopping.Offer{offer()}, Budget: cents(1000)}
	for _, tt := range []struct {
		reason  string
		choices []shopping.Need
		err     error
		field   string
		value   string
		want    string
	}{
		{"a length", []shopping.Need{open(garland(units.Foot), 3)}, units.ErrFit, "/needs/0/quantity", "1 ft", "pieces, or nothing open"},
		{"most below fewest", []shopping.Need{open(picks(5), 4)}, units.ErrRange, "/needs/0/open/max", "4", "5 to 1000000"},
		{"negative most", []shopping.Need{open(picks(5), -1)}, units.ErrRange, "/needs/0/open/max", "-1", "5 to 1000000"},
		{"most over a million", []shopping.Need{open(picks(999_999), 1_000_001)}, units.ErrRange, "/needs/0/open/max", "1000001", "999999 to 1000000"},
		{"no item", []shopping.Need{{Open: units.Range[int]{Max: 5}}}, units.ErrName, "/needs/0/item", "Kind(0)", kindNames},
	} {
		_, err := shop.Fullest(tt.choices)
		checkError(t, tt.reason, err, tt.err, &units.Error{Func: "shopping.Shop.Fullest", Field: tt.field, Value: tt.value, Want: tt.want})
	}

	budget := func(d decimal.Decimal) error {
		shop.Budget = d
		_, err := shop.Fullest([]shopping.Need{open(picks(13), 30)})
		return err
	}
	const money = "0 to 1000000000 with at most 4 decimal places"
	checkError(t, "below zero", budget(cents(-1)), units.ErrRange, &units.Error{Func: "shopping.Shop.Fullest", Field: "/budget", Value: "-0.01", Want: money})
	checkError(t, "absurd", budget(decimal.New(1, -1_000_000)), units.ErrRange, &units.Error{Func: "shopping.Shop.Fullest", Field: "/budget", Value: "a number of 1 digits times 10^-1000000", Want: money})
	checkError(t, "over a billion", budget(decimal.New(100_000_000_001, -2)), units.ErrRange, &units.Error{Func: "shopping.Shop.Fullest", Field: "/budget", Value: "1000000000.01", Want: money})
	shop.Budget = cents(1799)
	if l, err := shop.Fullest([]shopping.Need{open(picks(13), 30)}); err != nil || l.Total.String() != "9" || l.Least.String() != "18" || l.Purchases[0].Shares[0].Gets.Pieces != 12 {
		t.Errorf("a cent short: %v, %v", l, err)
	}
	if err := budget(cents(1800)); err != nil {
		t.Error(err)
	}
	if err := budget(decimal.New(1, 9)); err != nil {
		t.Error(err)
	}
	many := make([]shopping.Need, 1001)
	for i := range many {
		many[i] = shopping.Need{Item: shopping.Item{Kind: shopping.Ornament, Type: strconv.Itoa(i)}, Open: units.Range[int]{Max: 1}}
	}
	_, err := shop.Fullest(many)
	checkError(t, "1001 open", err, units.ErrLimit, &units.Error{Func: "shopping.Shop.Fullest", Field: "needs", Value: "1001", Want: "at most 1000 needs that are open"})
	if _, err = shop.Fullest(many[:1000]); err != nil {
		t.Error(err)
	}
	_, err = shop.Fullest([]shopping.Need{open(picks(0), 1_000_000), open(balls(0), 1)})
	checkError(t, "too many counts", err, units.ErrLimit, &units.Error{Func: "shopping.Shop.Fullest", Field: "needs", Value: "1000001", Want: "at most 1000000 pieces open in all"})
}

func TestShelfText(t *testing.T) {
	for text, want := range map[string]shopping.Shelf{"null": 0, "0": shopping.SoldOut, "12": 12} {
		got := shopping.Shelf(99)
		if err := json.Unmarshal([]byte(text), &got); err != nil || got != want {
			t.Errorf("%s: got %v, %v", text, got, err)
		}
		if back, err := json.Marshal(want); err != nil || string(back) != text {
			t.Errorf("%v: got %s, %v", want, back, err)
		}
	}
	for _, text := range []string{"-1", "1.5", "1e3", `"3"`, "1234567890"} {
		s := shopping.Shelf(99)
		err := json.Unmarshal([]byte(text), &s)
		checkError(t, text, err, units.ErrSyntax, &units.Error{Func: "shopping.Shelf.UnmarshalJSON", Field: "shelf", Value: text, Want: "a whole number of at most 9 digits, or null"})
		if s != 99 {
			t.Errorf("%s: changed to %v", text, s)
		}
	}
}

// An offer for which nobody wrote a price would be taken before all others. One
// that costs nothing says so.
func TestNoPrice(t *testing.T) {
	read := func(price string) error {
		var s shopping.Shop
		if err := json.Unmarshal([]byte(`{"offers":[{"item":"picks","name":"box of 12","pack":12`+price+`}]}`), &s); err != nil {
			t.Errorf("%s: %v", price, err)
		}
		_, err := s.Cheapest(picks(1))
		return err
	}
	want := &units.Error{Func: "shopping.Shop.List", Field: "/offers/0/price", Value: "none", Want: "a price, written out even if it is 0"}
	checkError(t, "left out", read(``), units.ErrRange, want)
	checkError(t, "null", read(`,"price":null`), units.ErrRange, want)
	for _, price := range []string{`0`, `"0"`, `"0.00"`} {
		if err := read(`,"price":` + price); err != nil {
			t.Errorf("%s: %v", price, err)
		}
	}
	for _, free := range []decimal.Decimal{decimal.New(0, 0), decimal.NewFromInt(0), decimal.RequireFromString("0"), cents(5).Sub(cents(5))} {
		if _, err := with(func(o *shopping.Offer) { o.Price = free }).Cheapest(picks(1)); err != nil {
			t.Error(err)
		}
	}
}

func TestShopJSON(t *testing.T) {
	const text = `{"offers":[` +
		`{"item":"picks","name":"box of 12","pack":12,"price":"9","shelf":3},` +
		`{"item":"garland","name":"6 ft strand","pack":"6 ft","price":"7.5"},` +
		`{"item":"ribbon","name":"2 rolls","pack":"2 of 5 yd","price":"8.8","shelf":0}],` +
		`"owned":[{"item":"picks","quantity":5}],` +
		`"joins":{"garland":{"overlap":"2 in"}},"budget":"120"}`
	want := shopping.Shop{
		Offers: []shopping.Offer{
			{Item: shopping.Item{Kind: shopping.Pick}, Name: "box of 12", Pack: shopping.Quantity{Pieces: 12}, Price: cents(900), Shelf: 3},
			{Item: shopping.Item{Kind: shopping.Garland}, Name: "6 ft strand", Pack: ofLength(0, 6*units.Foot), Price: cents(750)},
			{Item: shopping.Item{Kind: shopping.Ribbon}, Name: "2 rolls", Pack: ofLength(2, 5*units.Yard), Price: cents(880), Shelf: shopping.SoldOut},
		},
		Owned:  []shopping.Lot{{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: 5}}},
		Joins:  map[shopping.Item]shopping.Join{{Kind: shopping.Garland}: {Overlap: 2 * units.Inch}},
		Budget: cents(12000),
	}
	var got shopping.Shop
	if err := json.Unmarshal([]byte(text), &got); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("-want +got\n%s", diff)
	}
	back, err := json.Marshal(want)
	if err != nil {
		t.Fatal(err)
	}
	var again shopping.Shop
	if err := json.Unmarshal(back, &again); err != nil || !cmp.Equal(want, again) {
		t.Errorf("%v from %s", err, back)
	}
	if empty, err := json.Marshal(shopping.Shop{}); err != nil || string(empty) != "{}" {
		t.Errorf("got %s, %v", empty, err)
	}
}
