package cover

import (
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// bruteCover is the documented order in its plainest form: every choice of counts
// is tried, from the most of the first pack down, and only a strictly better one
// replaces the best so far.
func bruteCover(need int64, packs []Pack) (best []int64) {
	var bestKey [3]int64
	counts := make([]int64, len(packs))
	var walk func(i int, held int64, key [3]int64)
	walk = func(i int, held int64, key [3]int64) {
		if i == len(packs) {
			if held >= need && (best == nil || slices.Compare(key[:], bestKey[:]) < 0) {
				best, bestKey = slices.Clone(counts), key
			}
			return
		}
		p := packs[i]
		for n := min(p.Limit, (need+p.Size-1)/p.Size); n >= 0; n-- {
			counts[i] = n
			walk(i+1, held+n*p.Size, [3]int64{key[0] + n*p.Cost, key[1] + n*p.Bulk, key[2] + n})
		}
		counts[i] = 0
	}
	walk(0, 0, [3]int64{})
	return best
}

func drawPacks(t *rapid.T, maxSize int64) []Pack {
	packs := make([]Pack, rapid.IntRange(1, 4).Draw(t, "kinds"))
	for i := range packs {
		p := &packs[i]
		p.Size = rapid.Int64Range(1, maxSize).Draw(t, "size")
		p.Cost = rapid.Int64Range(0, 8).Draw(t, "cost")
		p.Bulk = p.Size
		if rapid.Bool().Draw(t, "rolls") {
			p.Bulk += rapid.Int64Range(0, 3).Draw(t, "bulk")
		}
		p.Limit = 1 << 50
		if rapid.Bool().Draw(t, "limited") {
			p.Limit = rapid.Int64Range(1, 6).Draw(t, "limit")
		}
	}
	return packs
}

func TestCoverIsBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		packs := drawPacks(t, 12)
		work := int64(testWork)
		need := rapid.Int64Range(1, 40).Draw(t, "need")
		scale := rapid.SampledFrom([]int64{1, 1, 6, 100_000_007}).Draw(t, "scale")
		for i := range packs {
			packs[i].Size *= scale
		}
		need = max(1, need*scale-rapid.Int64Range(0, scale-1).Draw(t, "odd"))
		want := bruteCover(need, packs)
		if want == nil {
			c, _ := New(need, packs, &work)
			if got, _ := c.Costs(&work); got[len(got)-1] != Never {
				t.Fatalf("cost %d of what cannot be covered", got[len(got)-1])
			}
			return
		}
		c, ok := New(need, packs, &work)
		if !ok {
			t.Fatal("too large")
		}
		if got, _ := c.counts(&work); !slices.Equal(got, want) {
			t.Fatalf("not reduced, need %d of %+v:\n got %v\nwant %v", need, packs, got, want)
		}
		if got, ok := Counts(need, packs, &work); !ok || !slices.Equal(got, want) {
			t.Fatalf("need %d of %+v:\n got %v\nwant %v", need, packs, got, want)
		}
	})
}

// Packs that cover nothing and packs of which there are none are not taken, and cost no step.
func TestUselessPacks(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	for range 400 {
		packs, need := somePacks(r, 1+r.IntN(4), 12), 1+r.Int64N(24)
		if bruteCover(need, packs) == nil {
			continue
		}
		steps := int64(testWork)
		want, _ := Counts(need, packs, &steps)
		at := r.IntN(len(packs) + 1)
		for _, useless := range []Pack{{Size: 0, Limit: 1 + r.Int64N(9)}, {Size: 1 + r.Int64N(12), Cost: r.Int64N(3)}} {
			more := int64(testWork)
			got, _ := Counts(need, slices.Insert(slices.Clone(packs), at, useless), &more)
			if !slices.Equal(got, slices.Insert(slices.Clone(want), at, 0)) || more != steps {
				t.Errorf("need %d of %+v with %+v at %d: got %v in %d steps, want %v in %d", need, packs, useless, at, got, testWork-more, want, testWork-steps)
			}
		}
	}
}

// Sizes without a common measure, some of them limited, against every choice.
func TestSparseCover(t *testing.T) {
	packs := []Pack{
		{Size: 3_000_017, Cost: 3, Bulk: 3_000_017, Limit: 3},
		{Size: 2_000_003, Cost: 2, Bulk: 2_000_003, Limit: 1 << 50},
		{Size: 5_000_011, Cost: 5, Bulk: 5_000_011, Limit: 2},
	}
	for _, need := range []int64{30_000_000, 17_000_031, 19_000_060} {
		work := int64(testWork)
		c, ok := New(need, packs, &work)
		if !ok || c.amounts == nil {
			t.Fatal("not sparse")
		}
		want := bruteCover(need, packs)
		if got, _ := c.counts(&work); !slices.Equal(got, want) {
			t.Errorf("need %d: got %v, want %v", need, got, want)
		}
		// A pack of which there are none changes nothing.
		more := int64(testWork)
		c, _ = New(need, slices.Insert(slices.Clone(packs), 1, Pack{Size: 1_000_003, Bulk: 1_000_003}), &more)
		if got, _ := c.counts(&more); !slices.Equal(got, slices.Insert(want, 1, 0)) || more != work {
			t.Errorf("need %d with none of another: got %v in %d steps, want %v in %d", need, got, testWork-more, want, testWork-work)
		}
	}
}
