package shopping

import (
	"errors"
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
		s.Owned = append(s.Owned, Owned{Item: Item{Kind: Pick}})
	}
	s.Overlap = map[Item]units.Length{{Kind: Garland}: maxStrand, {Kind: Ribbon}: 0}
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
	s.Overlap[Item{Kind: Ribbon}] = -1
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
	if _, err := c.demand(long); err != nil {
		t.Error(err)
	}
	long[1].Quantity.Length++
	if _, err := c.demand(long); !errors.Is(err, units.ErrRange) {
		t.Errorf("got %v", err)
	}
	choices := []Need{
		{Item: Item{Kind: Ornament, Type: "a"}, Quantity: Quantity{Pieces: 500_000}, Most: 1_000_000},
		{Item: Item{Kind: Ornament, Type: "b"}, Quantity: Quantity{Pieces: 100_000}, Most: 600_000},
	}
	if open, fixed, err := s.choicesOnly(choices); err != nil || len(open) != 2 || fixed != nil {
		t.Errorf("got %v, %v, %v", open, fixed, err)
	}
	choices[1].Most++
	if _, _, err := s.choicesOnly(choices); !errors.Is(err, units.ErrLimit) {
		t.Errorf("got %v", err)
	}
}

// choicesOnly is choices for a shop of nothing.
func (Shop) choicesOnly(choices []Need) (open []int, fixed []Need, err error) {
	return Shop{}.choices(newChecker("Shop.Fullest"), choices)
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
		choices = append(choices, Need{Item: item, Most: 1})
	}
	for budget := range int64(3) {
		s.Budget = decimal.NewFromInt(budget)
		if l, err := s.Fullest(choices); err != nil || !l.Total.Equal(s.Budget) {
			t.Errorf("budget %d: %v, %v", budget, l, err)
		}
	}
	for percent, want := range map[int]int{0: 3, 1: 4, 50: 5, 51: 6, 100: 7} {
		l, err := s.Filled([]Need{{Item: Item{Kind: Ornament}, Quantity: Quantity{Pieces: 3}, Most: 7}}, percent)
		if err != nil || l.Purchases[0].Needs[0].Quantity.Pieces != want {
			t.Errorf("%d %%: %v, %v, want %d", percent, l, err, want)
		}
	}
}

// By hand: each of two rolls of 10 in holds one piece of 6 in, and 4 in are left of
// each, which are 6 in when joined with 2 in of overlap.
func TestSurplusBesideWholePieces(t *testing.T) {
	s := Shop{
		Offers:  []Offer{{Item: Item{Kind: Ribbon}, Name: "roll", Pack: Quantity{Length: 10 * units.Inch}, Price: decimal.NewFromInt(1)}},
		Overlap: map[Item]units.Length{{Kind: Ribbon}: 2 * units.Inch},
	}
	pieces := Need{Item: Item{Kind: Ribbon}, Quantity: Quantity{Pieces: 2, Length: 6 * units.Inch}}
	for _, tt := range []struct{ running, packs, surplus units.Length }{
		{0, 2, 8},
		{1, 2, 5},
		{5, 2, 1},
		{6, 2, 0},
		{7, 3, 7}, // a third roll makes it 8 in more
	} {
		needs := []Need{pieces}
		if tt.running > 0 {
			needs = append(needs, Need{Item: Item{Kind: Ribbon}, Quantity: Quantity{Length: tt.running * units.Inch}})
		}
		p, err := s.Cheapest(needs...)
		if err != nil || p.Buys[0].Packs != int(tt.packs) || p.Surplus.Length != tt.surplus*units.Inch {
			t.Errorf("%v: %v, %v", tt.running, p, err)
		}
	}
	// A roll that is not needed is not cut.
	s.Owned = []Owned{{Item: Item{Kind: Ribbon}, Quantity: Quantity{Pieces: 3, Length: 6 * units.Inch}}}
	p, err := s.Cheapest(pieces)
	if err != nil || len(p.Cuts) != 1 || p.Cuts[0].Rolls != 2 || p.Surplus.Length != 6*units.Inch {
		t.Errorf("%v, %v", p, err)
	}
}

// By hand, with runs and strands that are hardly longer than the overlap of 3 in:
// a strand of 5 in is used up by a run of 5 in, and a run of 3 in takes another.
func TestRunsOfOneStrandEach(t *testing.T) {
	s := Shop{
		Offers:  []Offer{{Item: Item{Kind: Garland}, Name: "strand", Pack: Quantity{Length: 5 * units.Inch}, Price: decimal.NewFromInt(1)}},
		Overlap: map[Item]units.Length{{Kind: Garland}: 3 * units.Inch},
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
		s.Owned = []Owned{{Item: Item{Kind: Garland}, Quantity: Quantity{Length: 3 * units.Inch}}}
	}
	// Nor does it serve a run as short as itself.
	if p, err := s.Cheapest(need(3)); err != nil || p.Buys[0].Packs != 1 || p.Surplus.Length != 2*units.Inch {
		t.Errorf("%v, %v", p, err)
	}
	// Fewer packs at one cost and length.
	s = Shop{Offers: s.Offers, Overlap: s.Overlap}
	s.Offers = append(s.Offers, Offer{Item: Item{Kind: Garland}, Name: "two", Pack: Quantity{Pieces: 2, Length: 5 * units.Inch}, Price: decimal.NewFromInt(2)})
	if p, err := s.Cheapest(need(5), need(5)); err != nil || len(p.Buys) != 1 || p.Buys[0].Packs != 1 || p.Buys[0].Offer.Name != "two" {
		t.Errorf("%v, %v", p, err)
	}
}

func TestLargestCutting(t *testing.T) {
	one := []roll{{length: 100, strands: 1, bulk: 100, cost: 1, limit: 1 << 50}}
	lengths, demand := make([]int64, maxCutKinds+1), make([]int64, maxCutKinds+1)
	for k := range lengths {
		lengths[k], demand[k] = int64(100-k), 1
	}
	rolls := slices.Repeat(one, maxCutKinds+1)
	for _, tt := range []struct {
		pieces       int64
		kinds, rolls int
		ok           bool
	}{
		{maxCutPieces, maxCutKinds, maxCutKinds, true},
		{maxCutPieces + 1, maxCutKinds, maxCutKinds, false},
		{maxCutPieces, maxCutKinds + 1, maxCutKinds, false},
		{maxCutPieces, maxCutKinds, maxCutKinds + 1, false},
	} {
		demand[0] = tt.pieces - int64(tt.kinds) + 1
		if _, ok := newCutter(lengths[:tt.kinds], demand[:tt.kinds], rolls[:tt.rolls]); ok != tt.ok {
			t.Errorf("%+v: %t", tt, ok)
		}
	}
}

// By hand. Three pieces; the costs are 2 and 3 times 200, the bulks 1 and 3 times
// 10. With 3 pieces a number of packs is less than 4, a bulk less than 4·(3·3+1) = 40.
func TestWeightOfRolls(t *testing.T) {
	rolls := []roll{
		{length: 10, strands: 1, bulk: 10, cost: 400, limit: 1 << 50},
		{length: 15, strands: 2, bulk: 30, cost: 600, limit: 1 << 50},
		{length: 12, strands: 1, limit: 2, owned: true},
	}
	c, ok := newCutter([]int64{8, 5}, []int64{2, 1}, rolls)
	if !ok || c.measure != 200 || c.unit != 40 || !slices.Equal(c.weight, []int64{2*40 + 4 + 1, 3*40 + 3*4 + 1, 0}) || c.scale != 1<<20 {
		t.Errorf("%+v", c)
	}
	for i, want := range []int64{3, 2, 2} {
		if c.rolls[i].limit != want {
			t.Errorf("at most %d of roll %d, want %d", c.rolls[i].limit, i, want)
		}
	}
	// With one piece 16·1·(1+1)·(1·1+1)·(cost+2) ≤ 2^60 up to a cost of 2^54 - 2. With
	// 1000 pieces and bulks of 1 and 100 it is 16·1000·1001·(1000·100+1)·(cost+2),
	// which is 2^60 at 719847 or so. The other roll has a cost of 1.
	for _, tt := range []struct{ pieces, bulk, cost, unit, weight, scale int64 }{
		{1, 1, 1<<54 - 2, 4, 4*(1<<54-2) + 2 + 1, 1}, // 16·weight·2 is over 2^60
		{1, 1, 1<<54 + 4, 1, 1<<54 + 4, 2},
		{1, 1, 1 << 55, 1, 1 << 55, 2}, // 16·weight·2 = 2^60
		{1, 1, 1<<55 + 8, 1, 1<<55 + 8, 1},
		{1000, 100, 719_800, 1001 * 100_001, 719_800*1001*100_001 + 100*1001 + 1, 1},
		{1000, 100, 719_900, 1, 719_900, 1 << 20}, // 16·1000·719900·2^20·2 is under 2^60
		{1000, 100, 1 << 31, 1, 1 << 31, 1 << 15}, // 16·1000·2^31·2^15 is, and twice that is not
	} {
		rolls = []roll{{length: 10, strands: tt.bulk, bulk: 10 * tt.bulk, cost: 2 * tt.cost, limit: 1}, {length: 10, strands: 1, bulk: 10, cost: 2, limit: 1}}
		c, ok := newCutter([]int64{8}, []int64{tt.pieces}, rolls)
		if !ok || c.unit != tt.unit || c.weight[0] != tt.weight || c.scale != tt.scale {
			t.Errorf("%+v: got unit %d, weight %d, scale %d", tt, c.unit, c.weight[0], c.scale)
		}
	}
}

// By hand: 7 pieces at a price p, of which no roll holds as many as it costs, are
// worth 7p, in whole weights rounded up; and a roll that is worth more than its
// weight takes off what is over, for as many as there may be.
func TestBoundOfPrices(t *testing.T) {
	c, _ := newCutter([]int64{3}, []int64{7}, []roll{{length: 10, strands: 1, bulk: 10, cost: 1, limit: 5}})
	weight := int64(8*8 + 8 + 1)
	b := &branch{lo: []int64{1}, hi: []int64{4}}
	for _, tt := range []struct{ price, want int64 }{
		{24 * c.scale, 24*7 + 1}, // one roll is taken in any case, 1 over its 3 pieces
		{24*c.scale + 1, 24*7 + 2},
		{24*c.scale - 1, 24*7 + 1},
		{30 * c.scale, 30*7 - 4*(90-weight)},
		{0, weight},
	} {
		if got := c.bound(b, []int64{tt.price}); got != tt.want {
			t.Errorf("price %d: got %d, want %d", tt.price, got, tt.want)
		}
	}
}

// A knapsack is full with one entry more than its room; then it says what the
// dearest pieces for their length are worth, all the roll over.
func TestKnapsackJustFull(t *testing.T) {
	for _, more := range []int64{0, 1} {
		long := int64(40_000_000_000)
		c, _ := newCutter([]int64{2}, []int64{1}, []roll{{length: long, strands: 1, bulk: long, cost: 1, limit: 1}})
		k := c.knapsack([]int64{3}, []int64{maxKnapsack - 1 + more})
		if len(k.list) != int(maxKnapsack+more) || k.full != (more == 1) {
			t.Errorf("%d entries, full %t", len(k.list), k.full)
		}
		most := k.most(long)
		if more == 0 && most != 3*(maxKnapsack-1) || more == 1 && (most < long/2*3 || most > long/2*3+long/100_000_000) {
			t.Errorf("%d entries: worth %d", len(k.list), most)
		}
	}
}

// Products up to 2^61 are within reach of reduce, which sees that the large pack is too dear.
func TestReduceOfLargeProducts(t *testing.T) {
	for _, more := range []int64{0, 1} {
		packs := []pack{{size: 1 << 20, cost: 1<<41 + more, limit: 5}, {size: 1, cost: 1, limit: 5}}
		if reduce(1, packs); packs[0].limit != 5*more {
			t.Errorf("%d more: at most %d", more, packs[0].limit)
		}
	}
}

// By hand: 20 packs of up to 2047 each take 11 passes each, 220 in all. Of a million
// amounts and 0 the marks of 209 passes are kept, and the 11 before are run again.
func TestPassesThatRunAgain(t *testing.T) {
	packs := slices.Repeat([]pack{{size: 1, cost: 1, bulk: 1, limit: 2047}}, 20)
	work := int64(maxWork)
	c, ok := newCover(maxDense, packs, &work)
	if !ok || len(c.passes) != 220 || work != maxWork {
		t.Fatalf("%t, %d passes", ok, len(c.passes))
	}
	work = 0 // too little: nothing is done
	if _, ok := c.counts(&work); ok || work != -(220+11)*1_000_001 {
		t.Errorf("%t, %d steps", ok, -work)
	}
}

// The amounts that a sparse cover has room for, with 0.
func TestMostAmounts(t *testing.T) {
	for limit, want := range map[int64]int{maxSparse - 1: maxSparse + 1, maxSparse: 0} {
		work := int64(maxWork)
		if got := len(remainders(1<<50, []pack{{size: 3, limit: limit}}, &work)); got != want {
			t.Errorf("%d amounts, want %d", got, want)
		}
	}
}

// And before those that are equal are put together: 1024·1024.
func TestMostEqualAmounts(t *testing.T) {
	for limit, want := range map[int64]int{1023: 2047 + 1, 1024: 0} {
		work := int64(maxWork)
		if got := len(remainders(1<<50, []pack{{size: 3, limit: 1023}, {size: 3, limit: limit}}, &work)); got != want {
			t.Errorf("%d amounts, want %d", got, want)
		}
	}
}
