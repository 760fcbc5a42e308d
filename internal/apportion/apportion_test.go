package apportion

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// slow is Counts as its doc has it, one thing at a time.
func slow(total int, shares, least []int) []int {
	sum := 0
	for _, s := range shares {
		sum += s
	}
	counts := make([]int, len(shares))
	left := total
	for i, s := range shares {
		counts[i] = max(least[i], total*s/sum)
		left -= counts[i]
	}
	// How far count i is above its quota, times the sum.
	above := func(i int) int { return counts[i]*sum - total*shares[i] }
	for ; left > 0; left-- {
		to := 0
		for i := range counts {
			if above(i) < above(to) {
				to = i
			}
		}
		counts[to]++
	}
	for ; left < 0; left++ {
		from := -1
		for i := range counts {
			if counts[i] > least[i] && (from < 0 || above(i) >= above(from)) {
				from = i
			}
		}
		counts[from]--
	}
	return counts
}

func TestCountsSlow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shares := rapid.SliceOfN(rapid.OneOf(rapid.IntRange(0, 5), rapid.IntRange(0, 1000)), 1, 12).Draw(t, "shares")
		if !slices.ContainsFunc(shares, func(s int) bool { return s > 0 }) {
			t.Skip("no shares")
		}
		total := rapid.IntRange(0, 2000).Draw(t, "total")
		most := total / len(shares)
		least := rapid.OneOf(rapid.IntRange(0, most), rapid.IntRange(max(0, most-3), most)).Draw(t, "least")
		leasts := make([]int, len(shares))
		for i := range leasts {
			leasts[i] = rapid.IntRange(0, least).Draw(t, "least of one")
		}
		got := Counts(total, shares, leasts)
		if want := slow(total, shares, leasts); !cmp.Equal(got, want) {
			t.Fatalf("%v, want %v", got, want)
		}
	})
}

// The most that can be taken back: the first has nearly all by its share, and all are
// raised to the same. One at a time that takes the better part of an hour.
func TestTakesBackMost(t *testing.T) {
	shares := slices.Repeat([]int{1}, 1000)
	shares[0] = 1_000_000
	got := Counts(MaxTotal, shares, slices.Repeat([]int{1_000_000}, 1000))
	if want := slices.Repeat([]int{1_000_000}, 1000); !cmp.Equal(got, want) {
		t.Errorf("%v, want 1,000,000 each", got)
	}
	// One thing more: the last to be taken back stays. Half of the shares give.
	for i := range shares {
		shares[i] = 1 + i%2*1000
	}
	got = Counts(MaxTotal, shares, slices.Repeat([]int{999_999}, 1000))
	for i, n := range got {
		// 1000 things over the least, for the 500 that gave: two for each.
		if want := 999_999 + i%2*2; n != want {
			t.Fatalf("count %d is %d, want %d", i, n, want)
		}
	}
}

// Many remainders: by hand, 20 alike share 9, the first nine one each, and 29, the first nine two each; and where every
// other one has the larger remainder, those come first.
func TestManyRemainders(t *testing.T) {
	ones := slices.Repeat([]int{1}, 20)
	for total, want := range map[int][2]int{9: {1, 0}, 29: {2, 1}} {
		for i, n := range Counts(total, ones, make([]int, 20)) {
			if k := min(1, i/9); n != want[k] {
				t.Errorf("%d of %d: %d, want %d", i, total, n, want[k])
			}
		}
	}
	// Weights of 3 and 2 in turn, 50 in all: of 12, 0.72 and 0.48 each. All ten of 3 have one, and the first two of 2.
	got := Counts(12, slices.Repeat([]int{3, 2}, 10), make([]int, 20))
	if want := []int{1, 1, 1, 1, 1, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 0}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
