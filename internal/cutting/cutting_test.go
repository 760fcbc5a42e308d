package cutting

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// bruteCut returns the least (cost, bulk, packs) of rolls that hold the pieces,
// by trying all counts of packs and all ways to lay each piece in each roll. It
// reports false if there is none.
func bruteCut(lengths, demand []int64, rolls []Roll) (best [3]int64, ok bool) {
	var pieces []int64
	for k, n := range demand {
		for range n {
			pieces = append(pieces, lengths[k])
		}
	}
	var fits func(k int, bins []int64) bool
	fits = func(k int, bins []int64) bool {
		if k == len(pieces) {
			return true
		}
		tried := map[int64]bool{}
		for b := range bins {
			if bins[b] < pieces[k] || tried[bins[b]] {
				continue
			}
			tried[bins[b]] = true
			bins[b] -= pieces[k]
			if fits(k+1, bins) {
				bins[b] += pieces[k]
				return true
			}
			bins[b] += pieces[k]
		}
		return false
	}
	best = [3]int64{math.MaxInt64}
	var walk func(i int, bins []int64, key [3]int64)
	walk = func(i int, bins []int64, key [3]int64) {
		if slices.Compare(key[:], best[:]) >= 0 {
			return
		}
		if i == len(rolls) {
			if fits(0, bins) {
				best, ok = key, true
			}
			return
		}
		r := rolls[i]
		for n := int64(0); n <= min(r.Limit, int64(len(pieces))); n++ {
			if r.Owned {
				n = r.Limit
			}
			more := slices.Clone(bins)
			for range n * r.Strands {
				more = append(more, r.Length)
			}
			next := key
			if !r.Owned {
				next = [3]int64{key[0] + n*r.Cost, key[1] + n*r.Bulk, key[2] + n}
			}
			walk(i+1, more, next)
		}
	}
	walk(0, nil, [3]int64{})
	return best, ok
}

// bruteReach returns how many of the pieces can be cut, any of them, by trying
// all numbers of each length that are no more than the demand.
func bruteReach(lengths, demand []int64, rolls []Roll) (most int64) {
	some := make([]int64, len(demand))
	var walk func(k int, pieces int64)
	walk = func(k int, pieces int64) {
		if k < len(demand) {
			for some[k] = 0; some[k] <= demand[k]; some[k]++ {
				walk(k+1, pieces+some[k])
			}
			return
		}
		if pieces > most {
			if _, ok := bruteCut(lengths, some, rolls); ok {
				most = pieces
			}
		}
	}
	walk(0, 0)
	return most
}

// One roll of 9 holds two of the pieces, the shorter ones.
func TestReach(t *testing.T) {
	c, _ := newCutter([]int64{5, 4}, []int64{2, 2}, []Roll{{Length: 9, Strands: 1, Bulk: 9, Cost: 1, Limit: 1}})
	if c.Solve(); c.Packs != nil || c.Reach() != 2 {
		t.Errorf("%v, %d pieces", c.Packs, c.Reach())
	}
}

func drawCutting(t *rapid.T, kinds, count int, longest int64) (lengths, demand []int64, rolls []Roll) {
	lengths = rapid.SliceOfNDistinct(rapid.Int64Range(1, longest), 2, kinds, rapid.ID).Draw(t, "lengths")
	slices.Sort(lengths)
	slices.Reverse(lengths)
	for range lengths {
		demand = append(demand, rapid.Int64Range(1, int64(count)).Draw(t, "demand"))
	}
	for range rapid.IntRange(1, 3).Draw(t, "rolls") {
		r := Roll{
			Length:  rapid.Int64Range(longest/2, 2*longest).Draw(t, "roll"),
			Strands: rapid.Int64Range(1, 2).Draw(t, "strands"),
			Cost:    rapid.Int64Range(0, 9).Draw(t, "cost"),
			Limit:   1 << 50,
		}
		r.Bulk = r.Length * r.Strands
		if rapid.Bool().Draw(t, "limited") {
			r.Limit = rapid.Int64Range(1, 3).Draw(t, "limit")
		}
		if rapid.IntRange(0, 4).Draw(t, "owned") == 0 {
			r.Owned, r.Limit, r.Strands, r.Cost, r.Bulk = true, rapid.Int64Range(1, 2).Draw(t, "owns"), 1, 0, 0
		}
		rolls = append(rolls, r)
	}
	return lengths, demand, rolls
}

func TestCuttingIsBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lengths, demand, rolls := drawCutting(t, 3, 2, 12)
		want, ok := bruteCut(lengths, demand, rolls)
		c, _ := newCutter(lengths, demand, rolls)
		bound := c.Solve()
		if !ok {
			if c.Packs != nil {
				t.Fatalf("%v, where there is no way", c.Packs)
			}
			if got, want := c.Reach(), bruteReach(lengths, demand, rolls); got != want {
				t.Fatalf("%v of %v from %+v: got %d pieces, want %d", demand, lengths, rolls, got, want)
			}
			return
		}
		var got [3]int64
		for i, n := range c.Packs {
			if r := rolls[i]; !r.Owned {
				got = [3]int64{got[0] + n*r.Cost, got[1] + n*r.Bulk, got[2] + n}
			}
		}
		if got != want || c.Best != bound {
			t.Fatalf("%v of %v from %+v:\n got %v %v, weight %d, bound %d\nwant %v", demand, lengths, rolls, c.Packs, got, c.Best, bound, want)
		}
		checkCutting(t, lengths, demand, rolls, c)
	})
}

// checkCutting checks that the patterns are all pieces, fit their rolls, and need no more packs than are bought.
func checkCutting(t *rapid.T, lengths, demand []int64, rolls []Roll, c *Cutter) {
	cut := make([]int64, len(demand))
	used := make([]int64, len(rolls))
	for _, p := range c.Patterns {
		left := rolls[p.Roll].Length
		for k, n := range p.Take {
			cut[k] += n * p.Rolls
			left -= n * lengths[k]
		}
		if left < 0 {
			t.Fatalf("pattern %+v is too long", p)
		}
		used[p.Roll] += p.Rolls
	}
	if !slices.Equal(cut, demand) {
		t.Fatalf("cut %v, want %v", cut, demand)
	}
	for i, r := range rolls {
		if used[i] > c.Packs[i]*r.Strands || c.Packs[i] > r.Limit {
			t.Fatalf("%d rolls and %d packs of %+v", used[i], c.Packs[i], r)
		}
	}
}

// Both searches for a packing agree with the plainest one there is.
func TestPackingSearches(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lengths, demand, rolls := drawCutting(t, 3, 3, 12)
		packs := make([]int64, len(rolls))
		for i := range rolls {
			packs[i] = rapid.Int64Range(1, 2).Draw(t, "packs")
			rolls[i].Owned, rolls[i].Limit = true, packs[i]*rolls[i].Strands
			packs[i], rolls[i].Strands = rolls[i].Limit, 1
		}
		_, want := bruteCut(lengths, demand, rolls)
		c, _ := newCutter(lengths, demand, rolls)
		for _, guided := range []bool{false, true} {
			s := c.packing(packs)
			s.failed = make(map[string]bool)
			if got := s.fill(guided); got != want || s.steps > c.patience {
				t.Fatalf("guided %t: %v of %v from %+v: got %t in %d steps", guided, demand, lengths, rolls, got, s.steps)
			}
		}
	})
}

// Pieces that fit by their sum and number, but not even in fractions, are found
// out at the first step: from two rolls of 10 nothing may be wasted of 7 + 6 + 5 + 2,
// and no pieces come to 10.
func TestPackingNotEvenInFractions(t *testing.T) {
	c, _ := newCutter([]int64{7, 6, 5, 2}, []int64{1, 1, 1, 1}, []Roll{{Length: 10, Strands: 1, Bulk: 10, Cost: 1, Limit: 2}})
	s := c.packing([]int64{2})
	s.failed = make(map[string]bool)
	if s.fill(true) || s.steps != 100 {
		t.Errorf("%d steps", s.steps)
	}
}

// Sizes a decorator meets: up to 60 pieces of up to 8 lengths, in steps of 3 in
// from 9 in to 6 ft, from up to 6 kinds of rolls in whole yards, dearer by the yard if shorter.
func TestCuttingProvesItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lengths := rapid.SliceOfNDistinct(rapid.Int64Range(3, 24), 2, 8, rapid.ID).Draw(t, "lengths")
		slices.Sort(lengths)
		slices.Reverse(lengths)
		demand := make([]int64, len(lengths))
		for k := range lengths {
			lengths[k] *= 3
			demand[k] = rapid.Int64Range(1, 60/int64(len(lengths))).Draw(t, "demand")
		}
		var rolls []Roll
		for range rapid.IntRange(1, 6).Draw(t, "rolls") {
			yards := rapid.Int64Range(2, 25).Draw(t, "yards")
			cents := yards*rapid.Int64Range(30, 60).Draw(t, "rate") + 99
			r := Roll{Length: 36 * yards, Strands: 1, Bulk: 36 * yards, Cost: 100 * cents, Limit: 1 << 50}
			if rapid.Bool().Draw(t, "limited") {
				r.Limit = rapid.Int64Range(1, 20).Draw(t, "limit")
			}
			rolls = append(rolls, r)
		}
		c, _ := newCutter(lengths, demand, rolls)
		bound := c.Solve()
		if c.Packs == nil {
			return
		}
		checkCutting(t, lengths, demand, rolls, c)
		if bound != c.Best {
			t.Fatalf("%v of %v from %+v: weight %d, bound %d", demand, lengths, rolls, c.Best, bound)
		}
	})
}

// hard returns 60 pieces of 8 lengths in odd inches and 1 to 8 kinds of rolls.
func hard(seed uint64) (lengths, demand []int64, rolls []Roll) {
	r := rand.New(rand.NewPCG(seed, 0))
	for len(lengths) < 8 {
		if l := 9 + r.Int64N(112); !slices.Contains(lengths, l) {
			lengths = append(lengths, l)
			demand = append(demand, 1)
		}
	}
	slices.Sort(lengths)
	slices.Reverse(lengths)
	for range 52 {
		demand[r.IntN(8)]++
	}
	for range 1 + r.IntN(8) {
		l := 120 + r.Int64N(781)
		rolls = append(rolls, Roll{Length: l, Strands: 1, Bulk: l, Cost: 100 * (l / 36 * (40 + r.Int64N(51))), Limit: 1 << 50})
	}
	return lengths, demand, rolls
}

// Pieces that leave hardly any waste: the plain search does not find how to cut
// them, the relaxation does. The bound needs nothing but the relaxation.
func TestHardCuttings(t *testing.T) {
	proved := 0
	const tries = 10
	for seed := range uint64(tries) {
		lengths, demand, rolls := hard(seed)
		c, _ := newCutter(lengths, demand, rolls)
		bound := c.Solve()
		if c.Packs == nil || bound > c.Best || float64(bound) < 0.97*float64(c.Best) {
			t.Errorf("seed %d: between %d and %d", seed, bound, c.Best)
		}
		if bound == c.Best {
			proved++
		}
	}
	if proved < tries*9/10 {
		t.Errorf("only %d of %d proved", proved, tries)
	}
}

// A search that is cut short still has a bound that holds.
func TestUndecidedCutting(t *testing.T) {
	lengths, demand, rolls := hard(3)
	c, _ := newCutter(lengths, demand, rolls)
	c.Solve()
	for _, patience := range []int{20, 150, 500} {
		hasty, _ := newCutter(lengths, demand, rolls)
		hasty.patience = patience
		if bound := hasty.Solve(); bound > c.Best || bound <= 0 || hasty.Best < c.Best {
			t.Errorf("patience %d: between %d and %d, but %d is the best", patience, bound, hasty.Best, c.Best)
		}
	}
	c, _ = newCutter(lengths, demand, rolls)
	c.Effort = 3_000_000
	if bound := c.Solve(); c.Packs == nil || bound > c.Best || bound <= 0 {
		t.Errorf("little effort: between %d and %d", bound, c.Best)
	}
	c, _ = newCutter(lengths, demand, rolls)
	c.Effort = -1
	if c.Solve(); c.Packs != nil || c.Short {
		t.Errorf("no effort: %v, short %t", c.Packs, c.Short)
	}
	// All rolls there are, in a stack that holds them only just.
	tight := []Roll{{Length: 100, Strands: 1, Bulk: 100, Cost: 1, Limit: 3}}
	c, _ = newCutter([]int64{47, 33, 20}, []int64{3, 3, 3}, tight)
	if c.Solve(); !slices.Equal(c.Packs, []int64{3}) {
		t.Errorf("got %v", c.Packs)
	}
	c, _ = newCutter([]int64{47, 33, 20}, []int64{3, 3, 3}, tight)
	c.patience = 0
	if bound := c.Solve(); c.Packs != nil || bound > 3*c.Unit*2 {
		t.Errorf("got %v, %d", c.Packs, bound)
	}
}

// Weights that do not fit in one number are weighed by cost alone.
func TestHeavyCutting(t *testing.T) {
	lengths := []int64{1_000_000_000_000 - 1, 1_000_000_007}
	demand := []int64{3, 900}
	rolls := []Roll{{Length: 1_000_000_000_000, Strands: 1, Bulk: 1_000_000_000_000, Cost: 9_999_999_999, Limit: 1 << 50}, {Length: 1_000_000_009, Strands: 1, Bulk: 1_000_000_009, Cost: 9_999_998, Limit: 1 << 50}}
	c, ok := newCutter(lengths, demand, rolls)
	if !ok || c.Unit != 1 {
		t.Fatalf("unit %d, %t", c.Unit, ok)
	}
	bound := c.Solve()
	// Three long rolls, which hold nothing else, and a long roll (999 pieces) or 900 short ones.
	if want := int64(3*9_999_999_999 + 900*9_999_998); bound*c.Measure != want || c.Best*c.Measure != want {
		t.Errorf("between %d and %d, want %d", bound*c.Measure, c.Best*c.Measure, want)
	}
}

func TestBounded(t *testing.T) {
	var b bounded
	b.add(3, 5)
	b.add(-2, 4)
	if got := b.positive(); got != 7 {
		t.Errorf("got %d", got)
	}
	b.add(-2, 4)
	if got := b.positive(); got != 0 {
		t.Errorf("got %d, want 0 for a negative sum", got)
	}
	b = bounded{}
	b.add(1<<31, 1<<31)
	if got := b.positive(); got != 1<<62 {
		t.Errorf("got %d", got)
	}
	b.add(1, 1<<20)
	if got := b.positive(); got != 0 {
		t.Errorf("got %d, want 0 for a sum that may overflow", got)
	}
}

// A knapsack whose list is cut short says what no filling is worth more than.
func TestFullKnapsack(t *testing.T) {
	var lengths, demand, prices []int64
	r := rand.New(rand.NewPCG(1, 1))
	for range 20 {
		lengths = append(lengths, 1_000_000_000+r.Int64N(1_000_000_000))
		demand = append(demand, 20)
	}
	slices.Sort(lengths)
	slices.Reverse(lengths)
	for _, l := range lengths {
		prices = append(prices, l/1000+r.Int64N(1000))
	}
	const long = 40_000_000_000
	c, _ := newCutter(lengths, demand, []Roll{{Length: long, Strands: 1, Bulk: long, Cost: 1, Limit: 1 << 50}})
	k := c.knapsack(prices, demand)
	if !k.full {
		t.Fatalf("%d entries are not many", len(k.list))
	}
	worth := int64(0)
	for i, n := range k.take(long) {
		worth += n * prices[i]
	}
	if most := k.most(long); worth <= 0 || worth > most || most > worth+worth/10 {
		t.Errorf("worth %d, at most %d", worth, most)
	}
}

// testWork is as many steps as a search has.
const testWork = 250_000_000

// newCutter is New with as many.
func newCutter(lengths, demand []int64, rolls []Roll) (*Cutter, bool) {
	return New(lengths, demand, rolls, testWork)
}
