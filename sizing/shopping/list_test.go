package shopping_test

import (
	"encoding/csv"
	"encoding/json"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// bigShop has every kind of item, and names that are hard to lay out.
func bigShop() (shopping.Shop, []shopping.Need) {
	long := strings.Repeat("½", 16) + strings.Repeat("x", 32)
	shop := shopping.Shop{
		Offers: []shopping.Offer{
			{Item: shopping.Item{Kind: shopping.Pick}, Name: "box of 12", Pack: shopping.Quantity{Pieces: 12}, Price: cents(899)},
			{Item: shopping.Item{Kind: shopping.Pick}, Name: `loose, "as they come"`, Pack: shopping.Quantity{Pieces: 1}, Price: decimal.New(8125, -4)},
			{Item: shopping.Item{Kind: shopping.Garland}, Name: "strand of fir with cones and red berries", Pack: ofLength(0, 6*units.Foot), Price: cents(123456)},
			{Item: shopping.Item{Kind: shopping.Ribbon}, Name: "roll", Pack: ofLength(2, 10*units.Yard), Price: cents(790)},
			{Item: shopping.Item{Kind: shopping.Ornament, Type: long}, Name: long, Pack: shopping.Quantity{Pieces: 1}, Price: cents(1)},
		},
		Owned: []shopping.Lot{
			{Item: shopping.Item{Kind: shopping.Ribbon}, Quantity: ofLength(3, 2*units.Yard)},
			{Item: shopping.Item{Kind: shopping.Bell}, Quantity: shopping.Quantity{Pieces: 20}},
			{Item: shopping.Item{Kind: shopping.Garland}, Quantity: ofLength(0, 7*units.Foot)},
		},
		Joins: map[shopping.Item]shopping.Join{{Kind: shopping.Garland}: {Overlap: units.Inch}},
	}
	needs := []shopping.Need{
		{Item: shopping.Item{Kind: shopping.Pick}, Room: "ticket hall", Quantity: shopping.Quantity{Pieces: 27}, Basis: "3 for each foot of 9 ft", Source: "common practice"},
		{Item: shopping.Item{Kind: shopping.Bell}, Quantity: shopping.Quantity{Pieces: 20}},
		{Item: shopping.Item{Kind: shopping.Garland}, Room: "ticket hall", Quantity: ofLength(0, 81*units.Foot+1)},
		{Item: shopping.Item{Kind: shopping.Pick}, Room: "waiting room", Quantity: shopping.Quantity{Pieces: 14}},
		{Item: shopping.Item{Kind: shopping.Ribbon}, Room: "tea room", Quantity: ofLength(5, 54*units.Inch)},
		{Item: shopping.Item{Kind: shopping.Ribbon}, Room: "ticket hall", Quantity: ofLength(0, 9*units.Foot)},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: long}, Room: long, Quantity: shopping.Quantity{Pieces: 1_000_000}},
	}
	return shop, needs
}

func TestListAddsUp(t *testing.T) {
	shop, needs := bigShop()
	list, err := shop.List(needs)
	if err != nil {
		t.Fatal(err)
	}
	var items []string
	var shares []shopping.Need
	total := decimal.Zero
	for _, p := range list.Purchases {
		items = append(items, p.Shares[0].Item.String())
		for _, s := range p.Shares {
			needs := s.Need
			shares = append(shares, needs)
		}
		for _, b := range p.Buys {
			total = total.Add(b.Offer.Price.Mul(decimal.NewFromInt(int64(b.Packs))))
		}
		alone, err := shop.Cheapest(shares[len(shares)-len(p.Shares):]...)
		if diff := cmp.Diff(alone, p); err != nil || diff != "" {
			t.Errorf("%s: %v, -alone +together\n%s", p.Shares[0].Item, err, diff)
		}
	}
	if want := []string{"picks", "bells", "garland", "ribbon", needs[6].Item.String()}; !slices.Equal(items, want) {
		t.Errorf("items %q, want %q", items, want)
	}
	if want := []shopping.Need{needs[0], needs[3], needs[1], needs[2], needs[4], needs[5], needs[6]}; !cmp.Equal(shares, want) {
		t.Errorf("shares %v", shares)
	}
	if !list.Total.Equal(total) {
		t.Errorf("total %v, lines add up to %v", list.Total, total)
	}

	data, err := json.Marshal(list)
	if err != nil {
		t.Fatal(err)
	}
	var back shopping.List
	if err := json.Unmarshal(data, &back); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(list, back); diff != "" {
		t.Errorf("JSON: -list +back\n%s", diff)
	}

	records, err := csv.NewReader(strings.NewReader(list.CSV(true))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	sum := decimal.Zero
	if with, without := list.CSV(true), list.CSV(false); with != strings.Join(records[0], ",")+"\n"+without || !cmp.Equal(records[1:], list.Records()) {
		t.Errorf("with a header %q, without %q", with, without)
	}
	var names []string
	for _, r := range records[1:] {
		if r[0] != "buy" {
			if r[9] != "" {
				t.Errorf("%q", r)
			}
			continue
		}
		cost := decimal.RequireFromString(r[9])
		if !cost.Equal(decimal.RequireFromString(r[7]).Mul(decimal.RequireFromString(r[8]))) {
			t.Errorf("%q", r)
		}
		sum = sum.Add(cost)
		names = append(names, r[5])
	}
	if !sum.Equal(list.Total) {
		t.Errorf("CSV adds up to %v, want %v", sum, list.Total)
	}
	if want := []string{"need", "picks", "ticket hall", "27", "27", "", "", "", "", "", "3 for each foot of 9 ft (common practice)"}; !slices.Equal(records[1], want) {
		t.Errorf("got %q, want %q", records[1], want)
	}
	if names[1] != `loose, "as they come"` {
		t.Errorf("got %q", names)
	}
}

// A spreadsheet takes a cell that begins with one of = + - @ as a formula.
// Source: OWASP, CSV Injection (from memory).
func TestNoFormulaInCSV(t *testing.T) {
	for _, sign := range []string{"=", "+", "-", "@"} {
		p := shopping.Purchase{
			Shares: []shopping.Share{{Need: shopping.Need{Item: shopping.Item{Kind: shopping.Pick, Color: sign + "red"}, Room: sign + "hall", Basis: "a; " + sign + "1,|" + sign + "2"}}},
			Buys:   []shopping.Buy{{Offer: shopping.Offer{Name: sign + "box", Pack: shopping.Quantity{Pieces: 2}}, Packs: 1}},
		}
		records, err := csv.NewReader(strings.NewReader(shopping.List{Purchases: []shopping.Purchase{p}}.CSV(true))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range records {
			for _, cell := range r {
				for _, part := range strings.FieldsFunc(cell, func(r rune) bool { return strings.ContainsRune(",;|\t", r) }) {
					if strings.HasPrefix(strings.TrimLeft(part, " "), sign) {
						t.Errorf("%q may run", cell)
					}
				}
			}
		}
		if got, want := records[1][2]+records[2][5], "'"+sign+"hall"+"'"+sign+"box"; got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// The layout was read line by line against the values; by hand: 41 picks are 3
// boxes of 12 (26.97) and 5 loose (4.0625).
func TestListText(t *testing.T) {
	shop, needs := bigShop()
	list, err := shop.List(needs)
	if err != nil {
		t.Fatal(err)
	}
	const want = `[ ] picks
    ticket hall                       27
    waiting room                      14
    3 x box of 12 at 8.99          26.97
    5 x loose, "as they come" at 0.8125
                                  4.0625

[ ] bells
    needed                            20
    owned                             20
    nothing to buy

`
	if got := list.String(); !strings.HasPrefix(got, want) {
		t.Errorf("got\n%s", got)
	}
	for width, text := range map[int]string{40: list.String(), 76: list.Page()} {
		if !strings.HasSuffix(text, "\n") || strings.Contains(text, "\n\n\n") {
			t.Errorf("width %d: bad line ends in\n%s", width, text)
		}
		for line := range strings.Lines(text) {
			line = strings.TrimSuffix(line, "\n")
			if utf8.RuneCountInString(line) > width || strings.TrimRight(line, " ") != line {
				t.Errorf("width %d: %q", width, line)
			}
		}
		// All words are there, in order: nothing is lost by breaking lines.
		for _, p := range list.Purchases {
			squeezed := strings.Join(strings.Fields(text), "")
			for _, b := range p.Buys {
				line := strings.Join(strings.Fields(strconv.Itoa(b.Packs)+"x"+b.Offer.Name+"at"), "")
				if !strings.Contains(squeezed, line) {
					t.Errorf("width %d: %q is lost", width, line)
				}
			}
		}
	}
	if got := (shopping.List{}).String(); got != "total                               0.00\n" {
		t.Errorf("empty: %q", got)
	}
}

// A list that is not proved the cheapest says so.
func TestListTextOfBound(t *testing.T) {
	p := shopping.Purchase{
		Shares: []shopping.Share{{Need: shopping.Need{Item: shopping.Item{Kind: shopping.Garland}, Quantity: ofLength(1, units.Yard)}, Gets: ofLength(1, units.Yard)}},
		Cost:   cents(200),
		Bound:  cents(100),
		Cuts:   []shopping.Cut{{Roll: units.Yard, Rolls: 1, Pieces: []shopping.Need{{Quantity: ofLength(1, units.Yard)}}}},
	}
	const want = `[ ] garland
    needed                     1 of 3 ft
    nothing to buy
    use 1 x owned 3 ft whole
    could cost as little as         1.00

total                               0.00
`
	if got := (shopping.List{Purchases: []shopping.Purchase{p}}).String(); got != want {
		t.Errorf("got\n%s", got)
	}
}

func TestMergingRoomsNeverCostsMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shop, _ := bigShop()
		shop.Owned = nil // it cannot be used in every room
		kinds := []shopping.Kind{shopping.Pick, shopping.Garland, shopping.Ribbon}
		var all []shopping.Need
		apart := decimal.Zero
		for range 3 {
			var room []shopping.Need
			for range rapid.IntRange(0, 3).Draw(t, "needs") {
				n := shopping.Need{Item: shopping.Item{Kind: rapid.SampledFrom(kinds).Draw(t, "kind")}}
				switch n.Item.Kind {
				case shopping.Pick:
					n.Quantity.Pieces = rapid.IntRange(0, 30).Draw(t, "pieces")
				case shopping.Garland:
					n.Quantity.Length = units.Length(rapid.IntRange(0, 999).Draw(t, "in")) * units.Inch
				default:
					n.Quantity = ofLength(rapid.IntRange(1, 9).Draw(t, "bows"), 54*units.Inch)
				}
				room = append(room, n)
			}
			list, err := shop.List(room)
			if err != nil {
				t.Fatal(err)
			}
			apart = apart.Add(list.Total)
			all = append(all, room...)
		}
		list, err := shop.List(all)
		if err != nil {
			t.Fatal(err)
		}
		if list.Total.GreaterThan(apart) {
			t.Fatalf("%v together, %v apart", list.Total, apart)
		}
	})
}
