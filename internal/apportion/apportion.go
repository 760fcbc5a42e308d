// Package apportion shares whole things out by weight, by largest remainders.
package apportion

import (
	"cmp"
	"slices"
)

// MaxTotal is the largest total, and the largest sum of the weights.
const MaxTotal = 1_000_000_000

// Counts shares total out over the weights, with at least least[i] for weight i: each
// gets its quota, total·weight/sum of the weights, cut to a whole number, and the rest
// goes one each to the largest remainders, the earlier first in a tie. A count under
// its least is raised to it; if that takes more than there is, one thing at a time is
// taken back from the count that is most above its quota and over its least, the
// later first in a tie.
//
// The total is 0 to MaxTotal, the weights are not negative and add up to 1 to MaxTotal,
// and the leasts are as many as the weights, not negative, and add up to at most the total.
func Counts(total int, weights, least []int) []int {
	var sum int64
	for _, w := range weights {
		sum += int64(w)
	}
	left := int64(total)
	counts := make([]int, len(weights))
	// surplus[i]/sum is how far count i is above its quota. All products are below 2·10¹⁸.
	surplus := make([]int64, len(weights))
	for i, w := range weights {
		claim := int64(total) * int64(w)
		counts[i] = max(least[i], int(claim/sum))
		surplus[i] = int64(counts[i])*sum - claim
		left -= int64(counts[i])
	}
	if left > 8 { // each takes one at most, since it is above its quota then
		order := make([]int, len(counts))
		for i := range order {
			order[i] = i
		}
		slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(surplus[i], surplus[j]) })
		for _, i := range order[:left] {
			counts[i]++
		}
		return counts
	}
	for range left { // not at all, if too much is given
		at := 0
		for i, s := range surplus {
			if s < surplus[at] {
				at = i
			}
		}
		counts[at]++
		surplus[at] += sum
	}
	takeBack(int(-left), counts, least, surplus)
	return counts
}

// takeBack takes n things from the counts over their least. Such a count is its quota
// cut, under one below the quota, so the counts give one each in turn, round after round.
func takeBack(n int, counts, least []int, surplus []int64) {
	var givers []int
	for n > 0 {
		if givers == nil {
			for i := range counts {
				if counts[i] > least[i] {
					givers = append(givers, i)
				}
			}
			slices.SortFunc(givers, func(i, j int) int {
				return cmp.Or(cmp.Compare(surplus[j], surplus[i]), cmp.Compare(j, i))
			})
		}
		rounds := n / len(givers)
		for _, i := range givers {
			rounds = min(rounds, counts[i]-least[i])
		}
		if rounds == 0 { // the last round is for the first n of them
			rounds, givers = 1, givers[:n]
		}
		for _, i := range givers {
			counts[i] -= rounds
		}
		n -= rounds * len(givers)
		givers = slices.DeleteFunc(givers, func(i int) bool { return counts[i] == least[i] })
	}
}
