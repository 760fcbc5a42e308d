package cover

import (
	"slices"
	"testing"
)

// Products up to 2^61 are within reach of reduce, which sees that the large pack is too dear.
func TestReduceOfLargeProducts(t *testing.T) {
	for _, more := range []int64{0, 1} {
		packs := []Pack{{Size: 1 << 20, Cost: 1<<41 + more, Limit: 5}, {Size: 1, Cost: 1, Limit: 5}}
		if reduce(1, packs); packs[0].Limit != 5*more {
			t.Errorf("%d more: at most %d", more, packs[0].Limit)
		}
	}
}

// By hand: 20 packs of up to 2047 each take 11 passes each, 220 in all. Of a million
// amounts and 0 the marks of 209 passes are kept, and the 11 before are run again.
func TestPassesThatRunAgain(t *testing.T) {
	packs := slices.Repeat([]Pack{{Size: 1, Cost: 1, Bulk: 1, Limit: 2047}}, 20)
	work := int64(testWork)
	c, ok := New(maxDense, packs, &work)
	if !ok || len(c.passes) != 220 || work != testWork {
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
		work := int64(testWork)
		if got := len(remainders(1<<50, []Pack{{Size: 3, Limit: limit}}, &work)); got != want {
			t.Errorf("%d amounts, want %d", got, want)
		}
	}
}

// And before those that are equal are put together: 1024·1024.
func TestMostEqualAmounts(t *testing.T) {
	for limit, want := range map[int64]int{1023: 2047 + 1, 1024: 0} {
		work := int64(testWork)
		if got := len(remainders(1<<50, []Pack{{Size: 3, Limit: 1023}, {Size: 3, Limit: limit}}, &work)); got != want {
			t.Errorf("%d amounts, want %d", got, want)
		}
	}
}

// A search that has too few steps says so, whether it counts every amount or those that the sizes leave over.
func TestTooFewSteps(t *testing.T) {
	for _, tt := range []struct {
		reason string
		need   int64
		packs  []Pack
	}{
		{"every amount", 9, []Pack{{Size: 2, Cost: 3, Limit: 9}, {Size: 5, Cost: 6, Limit: 9}}},
		{"few amounts", 40 << 20, []Pack{{Size: 3<<20 + 1, Cost: 3, Limit: 9}, {Size: 5<<20 + 3, Cost: 5, Limit: 9}}},
	} {
		work := int64(testWork)
		if _, ok := Counts(tt.need, tt.packs, &work); !ok {
			t.Errorf("%s: not solved", tt.reason)
		}
		took := testWork - work
		if took == 0 {
			t.Errorf("%s: no step", tt.reason)
		}
		for enough := range int64(2) {
			work = took - 1 + enough
			if counts, ok := Counts(tt.need, tt.packs, &work); ok != (enough == 1) {
				t.Errorf("%s with %d of %d steps: %v, %t", tt.reason, took-1+enough, took, counts, ok)
			}
		}
		work = 0
		if _, ok := Counts(tt.need, tt.packs, &work); ok {
			t.Errorf("%s with no step", tt.reason)
		}
	}
	work := int64(testWork)
	c, ok := New(9, []Pack{{Size: 2, Cost: 3, Limit: 9}, {Size: 5, Cost: 6, Limit: 9}}, &work)
	if work = 0; !ok {
		t.Fatal("not readied")
	}
	if costs, ok := c.Costs(&work); ok || costs != nil {
		t.Errorf("costs with no step: %v", costs)
	}
	// By hand, of 0, 1, ... 9: 2 and 5 at 3 and 6.
	work = testWork
	if costs, ok := c.Costs(&work); !ok || !slices.Equal(costs, []int64{0, 3, 3, 6, 6, 6, 9, 9, 12, 12}) {
		t.Errorf("costs: %v", costs)
	}
}
