// Package pack puts pieces into the fewest bins when a bin has so many cells and bears so much: bin
// packing in two measures, with a bound.
//
// Source: S. Martello, P. Toth, Knapsack Problems, Wiley 1990, chapter 8 (from memory).
package pack

import (
	"cmp"
	"slices"
)

// An Item is a number of equal pieces, each of which takes a cell.
type Item struct {
	Count  int   // at least 1
	Weight int64 // of one, at least 0
	Size   int64 // the narrowest cell that takes one
}

// A Bin is a kind of bin. There are any number of each.
type Bin struct {
	Cells int   // at least 1
	Size  int64 // how wide a cell is
	Limit int64 // the most weight that it takes
}

// A Filled is one bin and what is in it.
type Filled struct {
	Bin  int    // which kind
	Take []Part // in the order of the items
}

// A Part is a number of pieces of one item, at least 1.
type Part struct{ Item, Count int }

const maxSearched = 400 // pieces; with more, no search for fewer bins is made

// Fits reports whether a piece of the item fits into the bin alone.
func (b Bin) Fits(i Item) bool { return i.Size <= b.Size && i.Weight <= b.Limit }

// Fewest returns bins that hold all pieces, and a number of bins below which none do. Each piece
// fits into one of the bins. The order of the items is kept where it costs no bin: then each bin goes
// on where the one before it is full. Work is the steps of the search, and is taken off.
//
// The ways tried are, in this order: next fit and first fit in the order of the items; first fit with the
// largest first, by weight, by size, and by the larger share of the two; and a search for
// fewer bins, piece by piece, the heaviest first.
func Fewest(items []Item, bins []Bin, work *int64) (filled []Filled, bound int) {
	bound = least(items, bins)
	order := make([]int, len(items))
	for i := range order {
		order[i] = i
	}
	best := firstFit(items, bins, order, true, work)
	try := func(with []load) {
		if with != nil && len(with) < len(best) {
			best = with
		}
	}
	if len(best) > bound {
		try(firstFit(items, bins, order, false, work))
	}
	if len(bins) > 1 && len(best) > bound {
		bound = mixed(items, bins, bound, len(best), work)
	}
	size := func(i int) (most int) { // the fewest cells that a bin has which takes it
		for _, b := range bins {
			if b.Fits(items[i]) {
				most = max(most, b.Cells)
			}
		}
		return most
	}
	weight := func(a, b int) int { return cmp.Compare(items[b].Weight, items[a].Weight) }
	for _, by := range []func(a, b int) int{
		weight,
		func(a, b int) int { return cmp.Or(cmp.Compare(items[b].Size, items[a].Size), weight(a, b)) },
		func(a, b int) int { return cmp.Or(cmp.Compare(size(a), size(b)), weight(a, b)) },
	} {
		if len(best) > bound {
			sorted := slices.Clone(order)
			slices.SortStableFunc(sorted, by)
			try(firstFit(items, bins, sorted, false, work))
		}
	}
	pieces := 0
	for _, i := range items {
		pieces = min(pieces+i.Count, maxSearched+1)
	}
	if len(best) > bound && pieces <= maxSearched {
		sorted := slices.Clone(order)
		slices.SortStableFunc(sorted, func(a, b int) int {
			return cmp.Or(cmp.Compare(items[b].Size, items[a].Size), weight(a, b))
		})
		for len(best) > bound {
			s := &search{items: items, bins: bins, order: sorted, most: len(best) - 1, work: work}
			found, whole := s.run()
			if found == nil {
				if whole {
					bound = len(best) // every way was looked at
				}
				break
			}
			best = found
		}
	}
	for _, l := range best {
		slices.SortFunc(l.take, func(a, b Part) int { return cmp.Compare(a.Item, b.Item) })
		filled = append(filled, Filled{Bin: smallest(bins, l), Take: l.take})
	}
	return filled, bound
}

// A load is what is in one bin, whichever kind it is.
type load struct {
	take   []Part
	pieces int
	weight int64
	size   int64
}

// with returns how many more pieces of an item the load takes, in some bin.
func (l load) with(i Item, bins []Bin) int {
	most := 0
	for _, b := range bins {
		if max(l.size, i.Size) > b.Size || l.weight > b.Limit {
			continue
		}
		n := b.Cells - l.pieces
		if i.Weight > 0 {
			n = int(min(int64(n), (b.Limit-l.weight)/i.Weight))
		}
		most = max(most, n)
	}
	return most
}

// add puts n pieces of the i-th item into the load, which has none of it.
func (l *load) add(items []Item, i, n int) {
	l.take = append(l.take, Part{i, n})
	l.pieces += n
	l.weight += int64(n) * items[i].Weight
	l.size = max(l.size, items[i].Size)
}

// smallest returns the bin of the fewest cells that takes the load; of several the one of the least limit, then
// the narrowest, then the first.
func smallest(bins []Bin, l load) int {
	best := -1
	for k, b := range bins {
		if l.pieces > b.Cells || l.weight > b.Limit || l.size > b.Size {
			continue
		}
		if best < 0 || cmp.Or(cmp.Compare(b.Cells, bins[best].Cells), cmp.Compare(b.Limit, bins[best].Limit), cmp.Compare(b.Size, bins[best].Size)) < 0 {
			best = k
		}
	}
	return best
}

// firstFit puts the items, in their order, each into the first bin with room for it, or only into the last
// one if last is set. It returns nil if that takes more than work, which it does not where last is set.
func firstFit(items []Item, bins []Bin, order []int, last bool, work *int64) []load {
	var loads []load
	for _, i := range order {
		left := items[i].Count
		from := 0
		if last {
			from = max(0, len(loads)-1)
		}
		for k := from; left > 0; k++ {
			if *work -= int64(len(bins)); *work < 0 && !last {
				return nil
			}
			if k == len(loads) {
				loads = append(loads, load{})
			}
			if n := min(left, loads[k].with(items[i], bins)); n > 0 {
				loads[k].add(items, i, n)
				left -= n
			}
		}
	}
	return loads
}

// least returns a number of bins below which none hold all pieces. The pieces of at least a size go only
// into bins with cells so wide. For those, with C the most cells and L the most weight of such a bin, there are at
// least
//
//	Σ pieces / C
//	Σ weight / L
//	pieces heavier than L/2, of which no two share a bin
//	pieces heavier than L-k, plus Σ weight of those from k to L-k / L
//
// for any k up to L/2, since nothing of k or more goes beside the first.
//
// Source: the last two make the bound L2 of S. Martello, P. Toth, Knapsack Problems, Wiley 1990, chapter 8 (from memory).
func least(items []Item, bins []Bin) int {
	var sizes, weights []int64
	for _, i := range items {
		sizes = append(sizes, i.Size)
		weights = append(weights, i.Weight)
	}
	slices.Sort(sizes)
	slices.Sort(weights)
	weights = slices.Compact(weights)
	best := int64(0)
	for _, size := range slices.Compact(sizes) {
		var cells, limit int64
		for _, b := range bins {
			if b.Size >= size {
				cells, limit = max(cells, int64(b.Cells)), max(limit, b.Limit)
			}
		}
		var pieces, weight int64
		for _, i := range items {
			if i.Size >= size {
				pieces += int64(i.Count)
				weight += int64(i.Count) * i.Weight
			}
		}
		best = max(best, up(pieces, cells))
		if limit == 0 {
			continue
		}
		best = max(best, up(weight, limit))
		for _, k := range weights {
			if k == 0 || 2*k > limit {
				continue
			}
			var large, small int64
			for _, i := range items {
				n := int64(i.Count)
				switch w := i.Weight; {
				case i.Size < size || w < k:
				case w > limit-k:
					large += n
				default:
					small += n * w
				}
			}
			best = max(best, large+up(small, limit))
		}
		large := int64(0)
		for _, i := range items {
			if i.Size >= size && 2*i.Weight > limit {
				large += int64(i.Count)
			}
		}
		best = max(best, large)
	}
	return int(best)
}

// mixed returns a number of bins from low to high below which no mix of the kinds has the cells and bears the weight: for each
// size, those with cells so wide must have cells enough for the pieces of at least that size, and bear them.
func mixed(items []Item, bins []Bin, low, high int, work *int64) int {
	var kinds []Bin // the widest first, without those that are no better than another in anything
	for k, b := range bins {
		if !slices.ContainsFunc(bins[:k], func(o Bin) bool { return o == b }) &&
			!slices.ContainsFunc(bins, func(o Bin) bool { return o != b && o.Cells >= b.Cells && o.Size >= b.Size && o.Limit >= b.Limit }) {
			kinds = append(kinds, b)
		}
	}
	slices.SortStableFunc(kinds, func(a, b Bin) int { return cmp.Compare(b.Size, a.Size) })
	// What must go into one of the first k+1 kinds, since it is wider than the cells of the others.
	pieces, weight := make([]int64, len(kinds)), make([]int64, len(kinds))
	for k := range kinds {
		for _, i := range items {
			if k+1 == len(kinds) || i.Size > kinds[k+1].Size {
				pieces[k] += int64(i.Count)
				weight[k] += int64(i.Count) * i.Weight
			}
		}
	}
	var enough func(k, left int, cells, limit int64) bool
	enough = func(k, left int, cells, limit int64) bool {
		if *work--; *work < 0 {
			return true // not known to be too few
		}
		b := kinds[k]
		least := 0
		if k+1 == len(kinds) {
			least = left
		}
		for n := least; n <= left; n++ {
			c, l := cells+int64(n)*int64(b.Cells), limit+int64(n)*b.Limit
			if c >= pieces[k] && l >= weight[k] && (k+1 == len(kinds) || enough(k+1, left-n, c, l)) {
				return true
			}
		}
		return false
	}
	for low < high && !enough(0, low, 0, 0) {
		low++
	}
	return low
}

// up returns a/b, rounded up.
func up(a, b int64) int64 { return (a + b - 1) / b }

// A search puts all pieces into at most so many bins, if it can.
type search struct {
	items   []Item
	bins    []Bin
	order   []int
	most    int
	work    *int64
	loads   []load
	stopped bool
}

// run returns the loads, or nil, and whether every way was looked at.
func (s *search) run() (found []load, whole bool) {
	if s.item(0, s.items[s.order[0]].Count, 0) {
		return s.loads, true
	}
	return nil, !s.stopped
}

// item puts what is left of the k-th item in order into the bins from the given one on: as many as fit
// first, then one fewer, and so on.
func (s *search) item(k, left, from int) bool {
	if *s.work -= int64(len(s.bins)); *s.work < 0 {
		s.stopped = true
		return false
	}
	if left == 0 {
		if k++; k == len(s.order) {
			return true
		}
		left, from = s.items[s.order[k]].Count, 0
	}
	i := s.order[k]
	if from == s.most {
		return false
	}
	opened := from == len(s.loads)
	if opened {
		s.loads = append(s.loads, load{})
	}
	l := &s.loads[from]
	was := *l
	fits := min(left, l.with(s.items[i], s.bins))
	lowest := 0
	if opened {
		lowest = 1 // an empty bin is as good as the next one
	}
	for n := fits; n >= lowest && !s.stopped; n-- {
		l = &s.loads[from] // they may have moved
		*l = was
		if n > 0 {
			l.add(s.items, i, n)
		}
		if s.item(k, left-n, from+1) {
			return true
		}
	}
	s.loads[from] = was
	if opened {
		s.loads = s.loads[:from]
	}
	return false
}
