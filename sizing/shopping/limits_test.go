package shopping

import (
	"errors"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// What is refused is in TestBadShop and TestBadNeeds; here is the last that is taken.
func TestLastThatIsTaken(t *testing.T) {
	var s Shop
	for i := range maxEntries {
		s.Offers = append(s.Offers, Offer{Item: Item{Kind: Bell}, Name: strconv.Itoa(i), Pack: Quantity{Pieces: 1}, Price: decimal.NewFromInt(1)})
		s.Owned = append(s.Owned, Lot{Item: Item{Kind: Pick}})
	}
	s.Joins = map[Item]Join{{Kind: Garland}: {Overlap: maxStrand}, {Kind: Ribbon}: {}}
	c := newChecker("Shop.List")
	if err := c.shop(s); err != nil {
		t.Error(err)
	}
	needs := make([]Need, maxEntries)
	for i := range needs {
		needs[i].Item = Item{Kind: Bell}
	}
	if err := c.needs(needs); err != nil {
		t.Error(err)
	}
	s.Joins[Item{Kind: Ribbon}] = Join{Overlap: -1}
	if err := c.shop(s); !errors.Is(err, units.ErrRange) {
		t.Errorf("got %v", err)
	}
	for _, d := range []decimal.Decimal{
		decimal.New(0, 64), decimal.New(0, -64),
		decimal.RequireFromString("7." + strings.Repeat("0", 63)),
	} {
		if _, err := c.money("price", d, maxPrice); err != nil {
			t.Error(err)
		}
	}
	for _, d := range []decimal.Decimal{
		decimal.New(0, 65), decimal.New(0, -65),
		decimal.RequireFromString("10." + strings.Repeat("0", 63)),
	} {
		if _, err := c.money("price", d, maxPrice); err == nil {
			t.Errorf("%d digits, exponent %d", d.NumDigits(), d.Exponent())
		}
	}
	long := []Need{{Item: Item{Kind: Ribbon, Type: "lace"}, Quantity: Quantity{Pieces: 999, Length: maxStrand}}, {Item: Item{Kind: Ribbon, Type: "lace"}, Quantity: Quantity{Pieces: 2, Length: maxStrand / 2}}}
	if _, err := c.demand(lines(wishes(long))[0].wishes); err != nil {
		t.Error(err)
	}
	long[1].Quantity.Length++
	if _, err := c.demand(lines(wishes(long))[0].wishes); !errors.Is(err, units.ErrRange) {
		t.Errorf("got %v", err)
	}
	open := []Need{
		{Item: Item{Kind: Ornament, Type: "a"}, Quantity: Quantity{Pieces: 500_000}, Open: units.Range[int]{Min: 500_000, Max: 1_000_000}},
		{Item: Item{Kind: Ornament, Type: "b"}, Quantity: Quantity{Pieces: 100_000}, Open: units.Range[int]{Min: 100_000, Max: 600_000}},
	}
	if f, err := (Shop{}).filling(newChecker("Shop.Fullest"), open); err != nil || len(f.lines) != 2 {
		t.Errorf("got %v, %v", f, err)
	}
	open[1].Open.Max++
	if _, err := (Shop{}).filling(newChecker("Shop.Fullest"), open); !errors.Is(err, units.ErrLimit) {
		t.Errorf("got %v", err)
	}
}

// cheapest is the purchase for needs of one item.
func (s Shop) cheapest(c *checker, needs []Need) (Purchase, error) {
	items := c.items
	groups, err := s.groups(c, wishes(needs))
	if err != nil {
		return Purchase{}, err
	}
	c.items = items
	var p Purchase
	for _, l := range groups[0].lines {
		for _, w := range l.wishes {
			p.Shares = append(p.Shares, Share{Need: *w.Need})
		}
	}
	if groups[0].long != nil {
		err = s.lengths(c, &p, &groups[0])
	} else {
		err = s.pieces(c, &p, groups[0].lines)
	}
	if err != nil {
		return Purchase{}, err
	}
	return p, nil
}

// Money adds up as decimals do, also where it is not of one exponent or takes more than 64 bits.
func TestAdded(t *testing.T) {
	for _, tt := range [][2]string{{"0", "2.50"}, {"2.50", "0"}, {"2.50", "0.75"}, {"2.5", "0.75"}, {"999999999999999999", "999999999999999999"}, {"9223372036854775807", "1"}, {"1", "9223372036854775807"}} {
		a, b := decimal.RequireFromString(tt[0]), decimal.RequireFromString(tt[1])
		if got := added(a, b); !got.Equal(a.Add(b)) {
			t.Errorf("%s + %s: got %s", a, b, got)
		}
	}
}

// What a share gets is told in parts once some of it is not the item as needed, that included.
func TestPartsBesideTheItem(t *testing.T) {
	star := Item{Kind: Ornament, Type: "star"}
	s := Shop{Owned: []Lot{{Item{Kind: Ornament}, Quantity{Pieces: 4}}, {star, Quantity{Pieces: 9}}}}
	for n, want := range map[int][]Lot{4: nil, 10: {{Item{Kind: Ornament}, Quantity{Pieces: 4}}, {star, Quantity{Pieces: 6}}}} {
		l, err := s.List([]Need{{Item: Item{Kind: Ornament}, Quantity: Quantity{Pieces: n}}})
		if err != nil || !slices.Equal(l.Purchases[0].Shares[0].Parts, want) {
			t.Errorf("%d: got %v, %v", n, l, err)
		}
	}
}

// Lines are full to the last character, and not fuller.
func TestFullLines(t *testing.T) {
	x := func(n int) string { return strings.Repeat("x", n) }
	for _, tt := range []struct {
		left, right string
		want        string
	}{
		{x(5) + " " + x(6), "", "    xxxxx xxxxxx\n"},
		{x(5) + " " + x(7), "", "    xxxxx\n      xxxxxxx\n"},
		{x(12), "", "    " + x(12) + "\n"},
		{x(13), "", "    " + x(12) + "\n      x\n"},
		{x(9), "12", "    " + x(9) + " 12\n"},
		{x(10), "12", "    " + x(10) + "\n              12\n"},
		{x(1), x(15), "    x\n " + x(15) + "\n"},
	} {
		w := &writer{width: 16}
		if w.row(4, tt.left, tt.right); w.String() != tt.want {
			t.Errorf("got\n%swant\n%s", w, tt.want)
		}
	}
}

// By hand: of two items of one piece each at 1, a budget of 1 buys one.
func TestFullestToTheLastCent(t *testing.T) {
	var s Shop
	var choices []Need
	for _, item := range []Item{{Kind: Ornament}, {Kind: Bell}} {
		s.Offers = append(s.Offers, Offer{Item: item, Name: item.String(), Pack: Quantity{Pieces: 1}, Price: decimal.NewFromInt(1)})
		choices = append(choices, Need{Item: item, Open: units.Range[int]{Max: 1}})
	}
	for budget := range int64(3) {
		s.Budget = decimal.NewFromInt(budget)
		if l, err := s.Fullest(choices); err != nil || !l.Total.Equal(s.Budget) {
			t.Errorf("budget %d: %v, %v", budget, l, err)
		}
	}
	for percent, want := range map[int]int{0: 3, 1: 4, 50: 5, 51: 6, 100: 7} {
		l, err := s.Filled([]Need{{Item: Item{Kind: Ornament}, Quantity: Quantity{Pieces: 3}, Open: units.Range[int]{Min: 3, Max: 7}}}, percent)
		if err != nil || l.Purchases[0].Shares[0].Quantity.Pieces != want {
			t.Errorf("%d %%: %v, %v, want %d", percent, l, err, want)
		}
	}
}

// By hand: each of two rolls of 10 in holds one piece of 6 in, and 4 in are left of
// each, which are 6 in when joined with 2 in of overlap. A run of 1 in is cut from one of them, and of
// 7 in from a third roll.
func TestSurplusBesideWholePieces(t *testing.T) {
	s := Shop{
		Offers: []Offer{{Item: Item{Kind: Ribbon}, Name: "roll", Pack: Quantity{Length: 10 * units.Inch}, Price: decimal.NewFromInt(1)}},
		Joins:  map[Item]Join{{Kind: Ribbon}: {Overlap: 2 * units.Inch}},
	}
	pieces := Need{Item: Item{Kind: Ribbon}, Quantity: Quantity{Pieces: 2, Length: 6 * units.Inch}}
	for _, tt := range []struct{ running, packs, surplus units.Length }{
		{0, 2, 8},
		{1, 2, 7},
		{5, 2, 1},
		{6, 2, 0},
		{7, 3, 11},
	} {
		needs := []Need{pieces}
		if tt.running > 0 {
			needs = append(needs, Need{Item: Item{Kind: Ribbon}, Quantity: Quantity{Length: tt.running * units.Inch}})
		}
		p, err := s.Cheapest(needs...)
		if err != nil || p.Buys[0].Packs != int(tt.packs) || Surplus(p.Left).Length != tt.surplus*units.Inch {
			t.Errorf("%v: %v, %v", tt.running, p, err)
		}
	}
	// A roll that is not needed is not cut.
	s.Owned = []Lot{{Item: Item{Kind: Ribbon}, Quantity: Quantity{Pieces: 3, Length: 6 * units.Inch}}}
	p, err := s.Cheapest(pieces)
	if err != nil || len(p.Cuts) != 1 || p.Cuts[0].Rolls != 2 || Surplus(p.Left).Length != 6*units.Inch {
		t.Errorf("%v, %v", p, err)
	}
}

// By hand, with runs and strands that are hardly longer than the overlap of 3 in:
// a strand of 5 in is used up by a run of 5 in, and a run of 3 in takes another.
func TestRunsOfOneStrandEach(t *testing.T) {
	s := Shop{
		Offers: []Offer{{Item: Item{Kind: Garland}, Name: "strand", Pack: Quantity{Length: 5 * units.Inch}, Price: decimal.NewFromInt(1)}},
		Joins:  map[Item]Join{{Kind: Garland}: {Overlap: 3 * units.Inch}},
	}
	need := func(inches units.Length) Need {
		return Need{Item: Item{Kind: Garland}, Quantity: Quantity{Length: inches * units.Inch}}
	}
	for range 2 {
		p, err := s.Cheapest(need(5), need(3))
		if err != nil || p.Buys[0].Packs != 2 || !p.Bound.Equal(p.Cost) {
			t.Errorf("%v, %v", p, err)
		}
		// One that is as short as the overlap makes no line longer.
		s.Owned = []Lot{{Item: Item{Kind: Garland}, Quantity: Quantity{Length: 3 * units.Inch}}}
	}
	// Nor does it serve a run as short as itself: 3 in of it are left, and 2 in of the strand.
	if p, err := s.Cheapest(need(3)); err != nil || p.Buys[0].Packs != 1 || Surplus(p.Left).Length != 5*units.Inch {
		t.Errorf("%v, %v", p, err)
	}
	// Fewer packs at one cost and length.
	s = Shop{Offers: s.Offers, Joins: s.Joins}
	s.Offers = append(s.Offers, Offer{Item: Item{Kind: Garland}, Name: "two", Pack: Quantity{Pieces: 2, Length: 5 * units.Inch}, Price: decimal.NewFromInt(2)})
	if p, err := s.Cheapest(need(5), need(5)); err != nil || len(p.Buys) != 1 || p.Buys[0].Packs != 1 || p.Buys[0].Offer.Name != "two" {
		t.Errorf("%v, %v", p, err)
	}
}

// A run takes one strand that is long enough, and of the ways to join it that of the fewest pieces. By hand, in feet.
func TestFewestPieces(t *testing.T) {
	const ft = units.Foot
	item := Item{Kind: Ribbon}
	for _, tt := range []struct {
		reason  string
		overlap units.Length
		owned   []int // strands of so many feet
		runs    []int
		pieces  int64
		left    []int
	}{
		{"a strand of its own length", 0, []int{9, 9}, []int{7, 9}, 2, []int{2}},
		{"a whole roll before two pieces", 0, []int{9, 5, 15}, []int{14}, 1, []int{9, 5, 1}},
		{"not the short ones first", 0, []int{6, 9, 9, 9}, []int{27}, 3, []int{6}},
		{"many at once", 0, []int{2, 2, 2, 2, 9, 9, 9}, []int{30}, 5, []int{2, 2, 1}},
		{"the shortest first", 0, []int{4, 6, 10}, []int{4, 16}, 3, nil},
		{"with an overlap", 1, []int{9, 9, 9}, []int{8, 9}, 2, []int{9, 1}},
		{"too little", 1, []int{3, 3}, []int{9}, 2, nil},
		{"too short to join", 1, []int{1, 6, 6, 1}, []int{9}, 2, []int{2, 1, 1}},
	} {
		s := Shop{Joins: map[Item]Join{item: {Overlap: tt.overlap * ft}}}
		for _, n := range tt.owned {
			s.Owned = append(s.Owned, Lot{item, Quantity{Pieces: 1, Length: units.Length(n) * ft}})
		}
		var needs []Need
		for i, n := range tt.runs {
			needs = append(needs, Need{Item: item, Room: strconv.Itoa(i), Quantity: Quantity{Length: units.Length(n) * ft}})
		}
		p, err := s.Cheapest(needs...)
		if err != nil {
			t.Fatal(tt.reason, err)
		}
		pieces, left := int64(0), []int{}
		for _, c := range p.Cuts {
			pieces += int64(c.Rolls * len(c.Pieces))
		}
		for _, l := range p.Left {
			for range l.Quantity.Pieces {
				left = append(left, int(l.Quantity.Length/ft))
			}
		}
		if pieces != tt.pieces || !slices.Equal(left, append([]int{}, tt.left...)) {
			t.Errorf("%s: %d pieces, %v left, %v", tt.reason, pieces, left, p)
		}
	}
}

// No layout joins more pieces than that which takes the shortest strands first, and none hangs less.
func TestNoMorePieces(t *testing.T) {
	fewer := 0
	r := rand.New(rand.NewPCG(11, 5))
	for range 2000 {
		stock := itemStock{join: Join{Overlap: units.Length(r.IntN(3)) * units.Inch, Shortest: units.Length(r.IntN(2)*r.IntN(12)) * units.Inch}}
		for range 1 + r.IntN(5) {
			stock.owned = append(stock.owned, Lot{Item{Kind: Ribbon}, Quantity{Pieces: 1 + r.IntN(3), Length: units.Length(3+r.IntN(40)) * units.Inch}})
		}
		list := make([]portion, 1+r.IntN(4))
		for i := range list {
			list[i] = piece(strconv.Itoa(i), units.Length(1+r.IntN(90))*units.Inch)
		}
		d := sum(list)
		c := newChecker("Shop.List")
		plain := c.layout(Item{Kind: Ribbon}, list, d, stock, nil, nil)
		want := plain.runs(c, list)
		y, got := c.fewest(Item{Kind: Ribbon}, list, d, stock, nil, nil)
		for i := range got {
			if got[i] < want[i] {
				t.Fatalf("%v of %v, %v: %v, want %v", stock, list, i, got, want)
			}
		}
		if y.pieces() < plain.pieces() {
			fewer++
		}
		pieces, joins := y.pieces(), y.pieces()
		cuts, left := y.finish()
		there, hung := length(stock.strands()), units.Length(0)
		for _, l := range got {
			if hung += l; l > 0 {
				joins--
			}
		}
		if pieces > plain.pieces() || there != hung+units.Length(joins)*stock.join.Overlap+Surplus(left).Length {
			t.Fatalf("%v of %v: %d pieces, %d before; %v left, %v", stock, list, pieces, plain.pieces(), left, cuts)
		}
	}
	if fewer < 300 {
		t.Errorf("%d layouts of fewer pieces", fewer)
	}
}
