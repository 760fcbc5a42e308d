package pack

import (
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/fircone/internal/tally"
)

// valid fails the test if a piece is lost, or a bin holds too much, or what is too wide.
func valid(t *testing.T, items []Item, bins []Bin, filled []Filled, bound int) {
	t.Helper()
	counts := make([]int, len(items))
	for _, f := range filled {
		b := bins[f.Bin]
		pieces, weight := 0, int64(0)
		for _, part := range f.Take {
			i, n := part.Item, part.Count
			counts[i] += n
			pieces += n
			weight += int64(n) * items[i].Weight
			if n < 1 || items[i].Size > b.Size {
				t.Fatalf("%d of %+v in %+v", n, items[i], b)
			}
		}
		if pieces == 0 || pieces > b.Cells || weight > b.Limit {
			t.Fatalf("%d pieces of %d in %+v", pieces, weight, b)
		}
	}
	for i, n := range counts {
		if n != items[i].Count {
			t.Fatalf("%d of %+v are packed", n, items[i])
		}
	}
	if len(filled) < bound {
		t.Fatalf("%d bins, fewer than the bound %d", len(filled), bound)
	}
}

func TestByHand(t *testing.T) {
	for _, row := range []struct {
		reason string
		items  []Item
		bins   []Bin
		want   int
	}{
		{"cells: 25 in 12 and 12 and 1", []Item{{25, 1, 3}}, []Bin{{12, 3, 100}}, 3},
		{"weight: 3 of 4 bear a limit of 12", []Item{{9, 4, 3}}, []Bin{{12, 3, 12}}, 3},
		{"6+4, 5+5 and not 6+5", []Item{{1, 6, 0}, {2, 5, 0}, {1, 4, 0}}, []Bin{{12, 1, 10}}, 2},
		{"4 4 2 and 3 3 2 2, each 10; largest first takes 4 4 2, 3 3 2 and 2 too", []Item{{2, 4, 0}, {2, 3, 0}, {3, 2, 0}}, []Bin{{7, 0, 10}}, 2},
		{"wide pieces go only into wide cells: 7 wide in bins of 4, and 1 narrow beside them", []Item{{7, 1, 4}, {1, 1, 2}}, []Bin{{12, 2, 100}, {4, 4, 100}}, 2},
		{"wide pieces do not share with 12 narrow ones", []Item{{4, 1, 4}, {12, 1, 2}}, []Bin{{12, 2, 100}, {4, 4, 100}}, 2},
		{"more than half each: a bin each", []Item{{5, 6, 0}}, []Bin{{12, 0, 10}}, 5},
		{"weighs nothing", []Item{{24, 0, 0}}, []Bin{{12, 0, 0}}, 2},
	} {
		work := int64(1_000_000)
		filled, bound := Fewest(row.items, row.bins, &work)
		valid(t, row.items, row.bins, filled, bound)
		if len(filled) != row.want || bound != row.want {
			t.Errorf("%s: %d, bound %d, want %d", row.reason, len(filled), bound, row.want)
		}
	}
}

// The items keep their order where that costs no bin, and a bin that is not full is the smallest that will do.
func TestOrder(t *testing.T) {
	items := []Item{{10, 1, 3}, {10, 2, 3}, {4, 1, 3}}
	work := int64(1_000_000)
	filled, _ := Fewest(items, []Bin{{12, 3, 100}, {6, 3, 100}}, &work)
	want := []Filled{{0, []Part{{0, 10}, {1, 2}}}, {0, []Part{{1, 8}, {2, 4}}}}
	if !slices.EqualFunc(filled, want, func(a, b Filled) bool { return a.Bin == b.Bin && slices.Equal(a.Take, b.Take) }) {
		t.Errorf("%v, want %v", filled, want)
	}
	filled, _ = Fewest([]Item{{15, 1, 3}}, []Bin{{12, 3, 100}, {6, 3, 100}}, &work)
	if len(filled) != 2 || filled[1].Bin != 1 {
		t.Errorf("%v: the last 3 are not in the smaller bin", filled)
	}
	filled, _ = Fewest([]Item{{5, 1, 3}}, []Bin{{6, 3, 100}, {12, 3, 100}, {6, 3, 100}}, &work)
	if len(filled) != 1 || filled[0].Bin != 0 {
		t.Errorf("%v: not the first of the smallest bins", filled)
	}
}

// Where nothing takes fewer bins than one after the other does, they are filled one after the other.
func TestOrderKept(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	above := 0
	for range 500 {
		items, bins := random(r, 4, 3)
		work := int64(100_000)
		filled, bound := Fewest(items, bins, &work)
		order := []int{0, 1, 2, 3}
		next := firstFit(items, bins, order, true, &work)
		if len(next) > len(filled) {
			continue
		}
		if len(next) > least(items, bins) {
			above++ // other ways were tried
		}
		for k, f := range filled {
			if !slices.Equal(f.Take, next[k].take) {
				t.Fatalf("%+v in %+v: %v, bound %d; one after the other %v", items, bins, filled, bound, next)
			}
		}
	}
	if above < 10 {
		t.Errorf("only in %d cases was anything else tried", above)
	}
}

// slow returns the fewest bins by putting piece after piece into every bin that is begun, or a new one.
func slow(items []Item, bins []Bin) int {
	var pieces []Item
	for _, i := range items {
		for range i.Count {
			pieces = append(pieces, i)
		}
	}
	type content struct {
		n            int
		weight, size int64
	}
	best := len(pieces)
	var put func(k int, begun []content)
	put = func(k int, begun []content) {
		if len(begun) >= best {
			return
		}
		if k == len(pieces) {
			best = len(begun)
			return
		}
		for j := range len(begun) + 1 {
			next := slices.Clone(begun)
			if j == len(begun) {
				next = append(next, content{})
			}
			c := &next[j]
			c.n++
			c.weight += pieces[k].Weight
			c.size = max(c.size, pieces[k].Size)
			if slices.ContainsFunc(bins, func(b Bin) bool { return c.n <= b.Cells && c.weight <= b.Limit && c.size <= b.Size }) {
				put(k+1, next)
			}
		}
	}
	put(0, nil)
	return best
}

// random returns items that all fit.
func random(r *rand.Rand, kinds, most int) (items []Item, bins []Bin) {
	for range 1 + r.IntN(2) {
		bins = append(bins, Bin{2 + r.IntN(4), int64(2 + r.IntN(3)), int64(8 + r.IntN(8))})
	}
	for len(items) < kinds {
		i := Item{1 + r.IntN(most), int64(r.IntN(10)), int64(1 + r.IntN(4))}
		if slices.ContainsFunc(bins, func(b Bin) bool { return b.Fits(i) }) {
			items = append(items, i)
		}
	}
	return items, bins
}

func TestAgainstPieceByPiece(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		items, bins := random(r, 1+r.IntN(4), 2)
		work := int64(10_000_000)
		filled, bound := Fewest(items, bins, &work)
		valid(t, items, bins, filled, bound)
		if want := slow(items, bins); len(filled) != want || bound != want {
			t.Fatalf("%+v in %+v: %d, bound %d; piece by piece %d", items, bins, len(filled), bound, want)
		}
	}
}

// Boxes of ornaments, as a house has them: what share is proved, within the steps given.
func TestHouse(t *testing.T) {
	if testing.Short() {
		t.Skip("some seconds")
	}
	r := rand.New(rand.NewPCG(3, 4))
	proved := 0
	for range 300 {
		bins := []Bin{{12, 425, 20_000}, {24, 300, 20_000}, {6, 600, 18_000}}
		var items []Item
		for range 2 + r.IntN(12) {
			items = append(items, Item{1 + r.IntN(14), int64(200 + r.IntN(1800)), int64(200 + 50*r.IntN(9))})
		}
		work := int64(600_000)
		filled, bound := Fewest(items, bins, &work)
		valid(t, items, bins, filled, bound)
		if len(filled) == bound {
			proved++
		}
		if work < -1000 {
			t.Errorf("%d steps over", -work)
		}
	}
	t.Logf("%d of 300 proved", proved)
	if proved < 240 {
		t.Errorf("%d of 300 proved", proved)
	}
}

// More pieces than are searched, and fewer steps than it takes, still end in bins that hold all, and a bound below. By hand: of 300 pieces of 6 and 300
// of 5, each 6 is alone in a bin of 10, and the 5s go two by two: 450.
func TestMany(t *testing.T) {
	items := []Item{{300, 6, 0}, {300, 5, 0}}
	for _, steps := range []int64{0, 1_000_000} {
		work := steps
		filled, bound := Fewest(items, []Bin{{3, 0, 10}}, &work)
		valid(t, items, []Bin{{3, 0, 10}}, filled, bound)
		if len(filled) != 450 || bound > 450 {
			t.Errorf("%d steps: %d bins, bound %d", steps, len(filled), bound)
		}
	}
	r := rand.New(rand.NewPCG(5, 6))
	for range 60 {
		items, bins := random(r, 8, 9)
		work := int64(r.IntN(300))
		filled, bound := Fewest(items, bins, &work)
		valid(t, items, bins, filled, bound)
		all := int64(200_000)
		if most, least := Fewest(items, bins, &all); bound > len(most) || len(filled) < least {
			t.Errorf("%+v in %+v: %d to %d with few steps, %d to %d with many", items, bins, bound, len(filled), least, len(most))
		}
	}
}

// 550 pieces are more than are searched for fewer bins.
func TestMoreThanIsSearched(t *testing.T) {
	items := []Item{{250, 7, 0}, {200, 4, 0}, {100, 3, 0}}
	bins := []Bin{{2, 0, 11}, {3, 0, 9}}
	work := int64(1_000_000)
	filled, bound := Fewest(items, bins, &work)
	valid(t, items, bins, filled, bound)
	// By hand: each 7 is in a bin of its own with a 4 or a 3: 250 bins take 250 of the 300 others, and 50 left take 50/3, 17, or 25 by twos.
	if len(filled) < 267 || len(filled) > 275 || bound > len(filled) {
		t.Errorf("%d bins, bound %d", len(filled), bound)
	}
}

// The steps that the search takes, with enough of them and with few, for small boxes and for those of a house.
func TestWork(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	c := tally.New()
	for k := range 300 {
		items, bins := random(r, 2+k%5, 6)
		if k%4 == 0 {
			bins = []Bin{{12, 425, 20_000}, {24, 300, 20_000}, {6, 600, 18_000}}
			for i := range items {
				items[i] = Item{1 + r.IntN(14), int64(200 + r.IntN(1800)), int64(200 + 50*r.IntN(9))}
			}
		}
		all := int64(30_000)
		if k%3 == 0 {
			all = int64(r.IntN(3_000))
		}
		work := all
		filled, bound := Fewest(items, bins, &work)
		valid(t, items, bins, filled, bound)
		c.Add(all-work, int64(len(filled)), int64(bound))
	}
	// As many pieces as are searched, and one more, in bins whose bound is not reached.
	for _, more := range []int{0, 1} {
		items := []Item{{100, 370, 1}, {100, 410, 1}, {100, 290, 1}, {100 + more, 550, 1}}
		work := int64(100_000)
		filled, bound := Fewest(items, []Bin{{4, 1, 1000}}, &work)
		if spent := 100_000 - work; (spent > 50_000) != (more == 0) || len(filled) <= bound {
			t.Errorf("%d pieces more than are searched: %d steps, %d bins, bound %d", more, spent, len(filled), bound)
		}
	}
	c.Check(t, "357771 7bf1fe6eb45b5127")
}
