package shopping

import (
	"slices"
	"strconv"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// Against the exact search: the least full is as full, as many are no fuller, the budget holds, and no further step is within it.
func TestRiseBesideFill(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var f filling
		for range rapid.IntRange(1, 7).Draw(t, "items") {
			all := rapid.Int64Range(1, 6).Draw(t, "all")
			cost := rapid.Int64Range(0, 5).Draw(t, "cost")
			steps := []step{{level: level{0, all}, cost: cost}}
			for n := int64(1); n <= all; n++ {
				if rapid.IntRange(0, 3).Draw(t, "step") > 0 {
					cost += rapid.Int64Range(1, 9).Draw(t, "more")
					steps = append(steps, step{count: int(n), level: level{n, all}, cost: cost})
				}
			}
			f.items = append(f.items, steps)
			f.budget += steps[0].cost
		}
		f.budget += rapid.Int64Range(0, 60).Draw(t, "budget")
		levels := func(counts []int) (sorted []level, cost int64) {
			for i, n := range counts {
				k := slices.IndexFunc(f.items[i], func(s step) bool { return s.count == n })
				sorted, cost = append(sorted, f.items[i][k].level), cost+f.items[i][k].cost
			}
			slices.SortFunc(sorted, level.compare)
			return sorted, cost
		}
		risen := f.rise()
		got, cost := levels(risen)
		want, _ := levels(f.fill())
		if cost > f.budget {
			t.Fatalf("%d of %d", cost, f.budget)
		}
		if got[0].compare(want[0]) != 0 {
			t.Fatalf("the least full at %v, want %v", got[0], want[0])
		}
		lowest := func(all []level) (n int) {
			for _, l := range all {
				if l.compare(all[0]) == 0 {
					n++
				}
			}
			return n
		}
		if lowest(got) != lowest(want) || slices.CompareFunc(got, want, level.compare) > 0 {
			t.Fatalf("%v, want no fuller than %v", got, want)
		}
		for i, n := range risen {
			k := slices.IndexFunc(f.items[i], func(s step) bool { return s.count == n })
			if k+1 < len(f.items[i]) && cost-f.items[i][k].cost+f.items[i][k+1].cost <= f.budget {
				t.Fatalf("item %d could be fuller", i)
			}
		}
	})
}

// By hand: packs of 3 at 5.00, of which a thousand items take four each. 6000.00 is a pack for each and a second one for 200.
func TestThousandItemsWithinBudget(t *testing.T) {
	for _, n := range []int{100, 105, 1000} {
		s := Shop{Budget: decimal.NewFromInt(int64(6 * n))}
		var needs []Need
		for i := range n {
			item := Item{Kind: Pick, Type: "n" + strconv.Itoa(i)}
			s.Offers = append(s.Offers, Offer{Item: item, Name: "bunch", Pack: Quantity{Pieces: 3}, Price: decimal.NewFromInt(5)})
			needs = append(needs, Need{Item: item, Quantity: Quantity{Pieces: 10}})
		}
		l, err := s.Fullest(needs)
		if err != nil {
			t.Fatal(err)
		}
		counts := map[int]int{}
		for _, p := range l.Purchases {
			counts[p.Shares[0].Gets.Pieces]++
		}
		if !l.Total.Equal(s.Budget) || !l.Least.Equal(decimal.NewFromInt(int64(20*n))) || counts[3] != n*4/5 || counts[6] != n/5 {
			t.Errorf("%d: %v of %v, %v", n, l.Total, s.Budget, counts)
		}
	}
}
