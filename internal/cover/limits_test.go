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
