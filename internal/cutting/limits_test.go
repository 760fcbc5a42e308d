package cutting

import (
	"slices"
	"testing"
)

func TestLargestCutting(t *testing.T) {
	one := []Roll{{Length: 100, Strands: 1, Bulk: 100, Cost: 1, Limit: 1 << 50}}
	lengths, demand := make([]int64, MaxKinds+1), make([]int64, MaxKinds+1)
	for k := range lengths {
		lengths[k], demand[k] = int64(100-k), 1
	}
	rolls := slices.Repeat(one, MaxKinds+1)
	for _, tt := range []struct {
		pieces       int64
		kinds, rolls int
		ok           bool
	}{
		{MaxPieces, MaxKinds, MaxKinds, true},
		{MaxPieces + 1, MaxKinds, MaxKinds, false},
		{MaxPieces, MaxKinds + 1, MaxKinds, false},
		{MaxPieces, MaxKinds, MaxKinds + 1, false},
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
	rolls := []Roll{
		{Length: 10, Strands: 1, Bulk: 10, Cost: 400, Limit: 1 << 50},
		{Length: 15, Strands: 2, Bulk: 30, Cost: 600, Limit: 1 << 50},
		{Length: 12, Strands: 1, Limit: 2, Owned: true},
	}
	c, ok := newCutter([]int64{8, 5}, []int64{2, 1}, rolls)
	if !ok || c.Measure != 200 || c.Unit != 40 || !slices.Equal(c.weight, []int64{2*40 + 4 + 1, 3*40 + 3*4 + 1, 0}) || c.scale != 1<<20 {
		t.Errorf("%+v", c)
	}
	for i, want := range []int64{3, 2, 2} {
		if c.Rolls[i].Limit != want {
			t.Errorf("at most %d of roll %d, want %d", c.Rolls[i].Limit, i, want)
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
		rolls = []Roll{{Length: 10, Strands: tt.bulk, Bulk: 10 * tt.bulk, Cost: 2 * tt.cost, Limit: 1}, {Length: 10, Strands: 1, Bulk: 10, Cost: 2, Limit: 1}}
		c, ok := newCutter([]int64{8}, []int64{tt.pieces}, rolls)
		if !ok || c.Unit != tt.unit || c.weight[0] != tt.weight || c.scale != tt.scale {
			t.Errorf("%+v: got unit %d, weight %d, scale %d", tt, c.Unit, c.weight[0], c.scale)
		}
	}
}

// By hand: 7 pieces at a price p, of which no roll holds as many as it costs, are
// worth 7p, in whole weights rounded up; and a roll that is worth more than its
// weight takes off what is over, for as many as there may be.
func TestBoundOfPrices(t *testing.T) {
	c, _ := newCutter([]int64{3}, []int64{7}, []Roll{{Length: 10, Strands: 1, Bulk: 10, Cost: 1, Limit: 5}})
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
		c, _ := newCutter([]int64{2}, []int64{1}, []Roll{{Length: long, Strands: 1, Bulk: long, Cost: 1, Limit: 1}})
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

// By hand: a roll of 10 holds one piece of 6, or two of 5. So from two rolls the shortest three of three of 6 and three of 5 can be
// cut, 5 + 5 and 5; a fourth is of 6.
func TestReachOfTwoLengths(t *testing.T) {
	c, _ := newCutter([]int64{6, 5}, []int64{3, 3}, []Roll{{Length: 10, Strands: 1, Limit: 2, Owned: true}})
	if bound := c.Solve(); !c.Short || c.Packs != nil || bound != c.Best {
		t.Fatalf("%+v", c)
	}
	if got := c.Reach(); got != 3 {
		t.Errorf("got %d pieces, want 3", got)
	}
}

// By hand: 6 and 5 do not come from one roll of 10, and from two rolls they do.
func TestFitOfGivenRolls(t *testing.T) {
	c, _ := newCutter([]int64{6, 5}, []int64{1, 1}, []Roll{{Length: 10, Strands: 1, Bulk: 10, Cost: 1, Limit: 9}})
	for n, want := range map[int64]bool{1: false, 2: true} {
		patterns, found, proved := c.Fit([]int64{n})
		if found != want || !proved || found != (len(patterns) == 2) {
			t.Errorf("%d rolls: %v, %t, %t", n, patterns, found, proved)
		}
	}
}
