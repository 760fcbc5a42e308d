// Package cover finds the packs of least cost that come to at least a need: the
// integer covering problem with one constraint, by dynamic programming.
//
// Source: H. Kellerer, U. Pferschy, D. Pisinger, Knapsack Problems, Springer 2004,
// chapters 5 to 8 (from memory).
package cover

import (
	"cmp"
	"slices"
)

// A Pack is a kind of pack, in whole units.
type Pack struct {
	Size  int64 // how much of the need one pack covers, at least 0
	Cost  int64 // of one pack, at least 0
	Bulk  int64 // how much one pack holds; the tie after cost
	Limit int64 // most packs there are, at least 0
}

// Bounds of the search for a cover. With them it takes at most about 55 MB.
const (
	maxDense  = 1_000_000 // amounts, if the need is counted in a common measure
	maxSparse = 1 << 17   // amounts, if the sizes have no useful common measure
	maxMarks  = 200 << 20 // marks kept at a time, one bit each
)

// Counts returns how many of each pack cover the need, at least 1, at the least
// cost; of several ways the one of least bulk, then the fewest packs, then the most
// of the first pack, of the second, and so on. All packs together must cover
// the need. It takes the steps it needs off work, and reports false if the problem is
// too large.
func Counts(need int64, packs []Pack, work *int64) (counts []int64, ok bool) {
	own := append(make([]Pack, 0, 8), packs...) // up to 8 on the stack
	need, _ = measure(need, own)
	counts = reduce(need, own)
	rest := need
	for i, n := range counts {
		rest -= n * own[i].Size
		own[i].Limit -= n
	}
	if rest <= 0 {
		return counts, true
	}
	c := Cover{packs: own}
	if !c.ready(rest, work) {
		return nil, false
	}
	more, ok := c.counts(work)
	for i, n := range more {
		counts[i] += n
	}
	return counts, ok
}

// measure returns need in the largest measure, which divides every pack smaller
// than the need, and puts packs into it, with no pack larger than the need and no
// more of each than cover it. A pack of no use becomes none of size 1. What
// covers the need stays the same.
func measure(need int64, packs []Pack) (measures, measure int64) {
	for _, p := range packs {
		if p.Limit > 0 && p.Size < need {
			measure = GCD(measure, p.Size)
		}
	}
	if measure == 0 {
		measure = need
	}
	need = (need-1)/measure + 1
	for i := range packs {
		p := &packs[i]
		if p.Size == 0 || p.Limit == 0 {
			*p = Pack{Size: 1}
			continue
		}
		p.Size = min((p.Size-1)/measure+1, need)
		p.Limit = min(p.Limit, (need-1)/p.Size+1)
	}
	return need, measure
}

// reduce returns how many of each pack every cheapest cover has at least, and
// lowers the limits of packs to what a cheapest cover can have at most.
//
// Let the need be filled with packs in the order of their rate, cost over size,
// and let q be the pack that completes it. With the rate of q as the price of
// a unit, the reduced cost of a pack is r = cost - rate·size, and for a cover with n
// of each pack
//
//	cost = rate·need + Σ over r<0 of limit·r + D
//	D    = rate·surplus + Σ over r>0 of n·r + Σ over r<0 of (limit-n)·|r|
//
// in which only D depends on the cover. The filling, with its last q or another
// pack there, is a cover, and no term of a cheapest cover's D is more than the D
// of that. All is multiplied by the size of q.
func reduce(need int64, packs []Pack) (least []int64) {
	least = make([]int64, len(packs))
	order := make([]int, len(packs))
	var size, cost int64
	for i, p := range packs {
		order[i] = i
		size, cost = max(size, p.Size), max(cost, p.Cost)
	}
	if cost > (1<<61)/size {
		return least // the products below might overflow
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(packs[a].Cost*packs[b].Size, packs[b].Cost*packs[a].Size)
	})
	rest := need
	var q Pack
	for _, i := range order {
		q = packs[i]
		if rest <= q.Limit*q.Size {
			break
		}
		rest -= q.Limit * q.Size
	}
	last := (rest-1)%q.Size + 1 // what the last pack has to hold
	most := (q.Size - last) * q.Cost
	for _, p := range packs {
		if p.Size >= last && p.Cost*q.Size > q.Cost*p.Size {
			most = min(most, p.Cost*q.Size-q.Cost*last)
		}
	}
	total := int64(0)
	for i := range packs {
		p := &packs[i]
		switch r := p.Cost*q.Size - q.Cost*p.Size; {
		case r > 0:
			p.Limit = min(p.Limit, most/r)
		case r < 0:
			least[i] = max(0, p.Limit-most/-r)
		}
		total += p.Limit * p.Size
	}
	// What all the others at most leave must come from this one.
	for i, p := range packs {
		if others := total - p.Limit*p.Size; others < need {
			least[i] = max(least[i], (need-others-1)/p.Size+1)
		}
	}
	return least
}

// A Cover is the cheapest way to hold any amount up to a need.
//
// It is dynamic programming over the amount still to cover. With the packs from
// the i-th on, let best(i, t) be the least (cost, bulk, packs), in that order of
// weight, to cover t. Then best(i, t) is the lesser of best(i+1, t) and one pack
// i more than best(i, t - size): a pass over all t for a pack without limit.
// A pack with a limit is split into lots of 1, 2, 4, ... packs and a last one of
// the rest, each taken whole or not at all, a pass for each lot. Between equals
// the pack or lot is taken, which makes the counts the lexicographically largest
// of all that are best: nothing as good has more packs of i without the lot, since
// it could give up as many of them for the lot, and the others are made of earlier lots.
//
// Only one row of values is kept. Each pass leaves one bit for each t, "taken",
// from which the counts are read back; where the bits of all passes would take
// too much room, the earlier passes are run again for theirs.
type Cover struct {
	packs   []Pack  // in measures
	Measure int64   // how much one measure is
	top     int     // the index of the need among the amounts
	amounts []int64 // all amounts that can be left to cover, from 0 up; if nil they are 0, 1, ..., top
	passes  []pass
}

// A pass takes a lot of packs of one kind whole or not at all, or, if again is
// set, takes single packs any number of times.
type pass struct {
	kind  int
	lot   int64
	again bool
}

// A weight is what a choice of packs comes to.
type weight struct{ cost, bulk, packs int64 }

// Never is the cost of what cannot be covered. It can be added to.
const Never = 1 << 62

// atMost reports whether w is no more than v.
func (w *weight) atMost(v *weight) bool {
	return w.cost < v.cost || w.cost == v.cost && (w.bulk < v.bulk || w.bulk == v.bulk && w.packs <= v.packs)
}

// New readies a cover of need, at least 1. It takes the steps it needs off
// work, and reports false if the problem is too large.
func New(need int64, packs []Pack, work *int64) (*Cover, bool) {
	c := &Cover{packs: slices.Clone(packs)}
	if !c.ready(need, work) {
		return nil, false
	}
	return c, true
}

// ready readies a cover of need by the packs that it has, which it changes.
func (c *Cover) ready(need int64, work *int64) bool {
	need, c.Measure = measure(need, c.packs)
	if need <= maxDense {
		c.top = int(need)
	} else {
		if c.amounts = remainders(need, c.packs, work); c.amounts == nil {
			return false
		}
		c.top = len(c.amounts) - 1
	}
	passes := make([]pass, 0, len(c.packs)) // one each, or more for those with a limit
	for kind := len(c.packs) - 1; kind >= 0; kind-- {
		p := c.packs[kind]
		if p.Limit == (need-1)/p.Size+1 {
			passes = append(passes, pass{kind: kind, lot: 1, again: true})
			continue
		}
		for lot, rest := int64(1), p.Limit; rest > 0; lot *= 2 {
			lot = min(lot, rest)
			passes = append(passes, pass{kind: kind, lot: lot})
			rest -= lot
		}
	}
	c.passes = passes
	return true
}

// remainders returns 0 and all amounts that can be left of need with the packs
// taken in order, ascending, or nil if there are too many.
func remainders(need int64, packs []Pack, work *int64) []int64 {
	amounts := []int64{need}
	for _, p := range packs {
		if p.Limit == 0 {
			continue
		}
		for _, t := range amounts[:len(amounts):len(amounts)] {
			for n := int64(1); n <= p.Limit && t > p.Size; n++ {
				t -= p.Size
				if amounts = append(amounts, t); len(amounts) > 8*maxSparse {
					return nil
				}
			}
		}
		// Sorting takes about so many steps.
		if *work -= 20 * int64(len(amounts)); *work < 0 {
			return nil
		}
		slices.Sort(amounts)
		if amounts = slices.Compact(amounts); len(amounts) > maxSparse {
			return nil
		}
	}
	return append([]int64{0}, amounts...)
}

// below returns the index of what is left of the t-th amount after size is
// covered: of the least amount that is no less.
func (c *Cover) below(t int, size int64) int {
	if c.amounts == nil {
		return int(max(0, int64(t)-size))
	}
	j, _ := slices.BinarySearch(c.amounts, max(0, c.amounts[t]-size))
	return j
}

// spend takes passes over all amounts off work, and reports whether that was enough.
func (c *Cover) spend(passes int, work *int64) bool {
	*work -= int64(passes) * int64(c.top+1)
	return *work >= 0
}

// run makes passes over the amounts up to the last of best, which it fills in. It
// returns the marks of the passes from the given one on.
func (c *Cover) run(best []weight, passes []pass, from int) (marks [][]uint64) {
	for t := range best {
		best[t] = weight{cost: Never}
	}
	best[0] = weight{}
	for k, p := range passes {
		var mark []uint64
		if k >= from {
			mark = make([]uint64, len(best)/64+1)
			marks = append(marks, mark)
		}
		one := c.packs[p.kind]
		size := p.lot * one.Size
		lot := weight{p.lot * one.Cost, p.lot * one.Bulk, p.lot}
		// Single packs are taken again from what the pass has already done, lots
		// from what it has not.
		t, step := len(best)-1, -1
		if p.again {
			t, step = 1, 1
		}
		j := c.below(t, size)
		for ; 0 < t && t < len(best); t += step {
			if c.amounts == nil {
				j = max(0, t-int(size))
			} else {
				for left := c.amounts[t] - size; c.amounts[j] < left; {
					j++
				}
				for left := c.amounts[t] - size; j > 0 && c.amounts[j-1] >= left; {
					j--
				}
			}
			cost := best[j].cost + lot.cost
			if cost > best[t].cost {
				continue
			}
			w := weight{cost, best[j].bulk + lot.bulk, best[j].packs + lot.packs}
			if w.atMost(&best[t]) {
				best[t] = w
				if mark != nil {
					mark[t/64] |= 1 << (t % 64)
				}
			}
		}
	}
	return marks
}

// counts returns how many packs of each kind to take. All there are must cover
// the need. It reports false if that takes more than work.
func (c *Cover) counts(work *int64) ([]int64, bool) {
	kept := max(1, maxMarks/(c.top+1))
	passes := 0
	for hi := len(c.passes); hi > 0; hi -= kept {
		passes += hi
	}
	if !c.spend(passes, work) {
		return nil, false
	}
	counts := make([]int64, len(c.packs))
	best := make([]weight, c.top+1)
	t := c.top
	for hi := len(c.passes); t > 0; hi -= kept {
		from := max(0, hi-kept)
		marks := c.run(best[:t+1], c.passes[:hi], from)
		for k := len(marks) - 1; k >= 0; k-- {
			p := c.passes[from+k]
			for marks[k][t/64]>>(t%64)&1 == 1 { // never for t = 0
				counts[p.kind] += p.lot
				t = c.below(t, p.lot*c.packs[p.kind].Size)
				if !p.again {
					break
				}
			}
		}
	}
	return counts, true
}

// Costs returns the least cost of covering 0, 1, ... measures up to the need, Never
// where the packs do not reach. The need must be at most maxDense measures. It
// reports false if that takes more than work.
func (c *Cover) Costs(work *int64) ([]int64, bool) {
	if !c.spend(len(c.passes), work) {
		return nil, false
	}
	best := make([]weight, c.top+1)
	c.run(best, c.passes, len(c.passes))
	costs := make([]int64, len(best))
	for t := range best {
		costs[t] = best[t].cost
	}
	return costs, true
}

// GCD returns the greatest common divisor of a and b, neither of them negative.
func GCD(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
