package shopping

import (
	"math"
	"slices"
)

// A pack is an offer as the solvers see it, in whole units.
type pack struct {
	size  int64 // how much of the need one pack covers, at least 1
	cost  int64 // price, in units of 1/10,000
	bulk  int64 // how much one pack holds; the tie after cost
	limit int64 // most packs there are
}

// Bounds of the search for a cover. With them it takes at most about 50 MB.
const (
	maxDense  = 1_000_000 // values of the need, if it is counted in a common measure
	maxSparse = 1 << 17   // values of the need, if the sizes have no useful common measure
	maxSteps  = 1 << 29   // values times passes
	maxMarks  = 1 << 27   // marks kept at a time, one bit each
)

// A cover finds the packs that hold at least need at the least cost.
//
// It is dynamic programming over the amount still to cover. With the packs from
// the i-th on, let best(i, t) be the least (cost, bulk, packs), in that order of
// weight, to cover t. Then best(i, t) is the lesser of best(i+1, t) and one pack
// i more than best(i, t - size): a pass over all t for a pack without limit.
// A pack with a limit is split into lots of 1, 2, 4, ... packs and a last one of
// the rest, each taken whole or not at all, a pass for each lot. Between equals
// the one with more packs of i is taken, which makes the counts the
// lexicographically largest of all that are best.
//
// Only one row of values is kept. Each pass leaves one bit for each t, "taken",
// from which the counts are read back; where the bits of all passes would take
// too much room, the earlier passes are run again for theirs.
type cover struct {
	packs   []pack // sizes in measures
	measure int64
	values  []int64 // 0, and all amounts that can be left to cover, ascending, the need last
	passes  []pass
}

// A pass takes a lot of packs of one kind whole or not at all, or, if again is
// set, takes single packs any number of times.
type pass struct {
	kind  int
	lot   int64
	again bool
	first bool // of its kind
}

// A weight is what a choice of packs comes to.
type weight struct {
	cost, bulk int64
	packs      int32
	kind       int32 // packs of the kind of the pass
}

const never = math.MaxInt64 // the cost of what cannot be covered

// atMost reports whether w is to be taken rather than v: it is less, or equal and
// has no fewer packs of the present kind.
func (w weight) atMost(v weight) bool {
	switch {
	case w.cost != v.cost:
		return w.cost < v.cost
	case w.bulk != v.bulk:
		return w.bulk < v.bulk
	case w.packs != v.packs:
		return w.packs < v.packs
	}
	return w.kind >= v.kind
}

// newCover readies a cover of need, at least 1. It reports false if the problem
// is too large.
func newCover(need int64, packs []pack) (*cover, bool) {
	c := &cover{packs: slices.Clone(packs)}
	// A pack that covers the need alone covers it in any measure.
	var measure int64
	for _, p := range c.packs {
		if p.size < need {
			measure = gcd(measure, p.size)
		}
	}
	if measure == 0 {
		measure = need
	}
	c.measure = measure
	need = (need-1)/measure + 1
	for i := range c.packs {
		p := &c.packs[i]
		p.size = min((p.size-1)/measure+1, need)
		p.limit = min(p.limit, (need-1)/p.size+1)
	}
	if need <= maxDense {
		c.values = make([]int64, need+1)
		for t := range c.values {
			c.values[t] = int64(t)
		}
	} else if c.values = remainders(need, c.packs); c.values == nil {
		return nil, false
	}
	for kind := len(c.packs) - 1; kind >= 0; kind-- {
		p, first := c.packs[kind], true
		if p.limit == (need-1)/p.size+1 {
			c.passes = append(c.passes, pass{kind: kind, lot: 1, again: true, first: true})
			continue
		}
		for lot, rest := int64(1), p.limit; rest > 0; lot *= 2 {
			lot = min(lot, rest)
			c.passes = append(c.passes, pass{kind: kind, lot: lot, first: first})
			first = false
			rest -= lot
		}
	}
	return c, int64(len(c.passes)) <= maxSteps/int64(len(c.values))
}

// remainders returns 0 and all amounts that can be left of need with the packs
// taken in order, ascending, or nil if there are too many.
func remainders(need int64, packs []pack) []int64 {
	values := []int64{need}
	for _, p := range packs {
		before := values
		for _, v := range before {
			for n := int64(1); n <= p.limit && v > n*p.size; n++ {
				values = append(values, v-n*p.size)
			}
			if len(values) > 4*maxSparse {
				return nil
			}
		}
		slices.Sort(values)
		if values = slices.Compact(values); len(values) > maxSparse {
			return nil
		}
	}
	return append([]int64{0}, values...)
}

// run makes the passes over the first top+1 values. It returns what it takes to
// cover each, and the marks of the passes from the given one on.
func (c *cover) run(passes []pass, from, top int) ([]weight, [][]uint64) {
	best := make([]weight, top+1)
	for t := 1; t <= top; t++ {
		best[t].cost = never
	}
	marks := make([][]uint64, len(passes)-from)
	for k, p := range passes {
		var mark []uint64
		if k >= from {
			mark = make([]uint64, top/64+1)
			marks[k-from] = mark
		}
		if p.first {
			for t := range best {
				best[t].kind = 0
			}
		}
		one := c.packs[p.kind]
		size, cost, bulk := p.lot*one.size, p.lot*one.cost, p.lot*one.bulk
		// try weighs one more lot for the value at t, the rest being the value at j.
		try := func(t, j int) {
			w := best[j]
			if w.cost == never {
				return
			}
			w.cost += cost
			w.bulk += bulk
			w.packs += int32(p.lot)
			w.kind += int32(p.lot)
			if w.atMost(best[t]) {
				best[t] = w
				if mark != nil {
					mark[t/64] |= 1 << (t % 64)
				}
			}
		}
		if p.again {
			for t, j := 1, 0; t <= top; t++ {
				for c.values[j] < c.values[t]-size {
					j++
				}
				try(t, j)
			}
			continue
		}
		for t, j := top, top; t > 0; t-- {
			for j > 0 && c.values[j-1] >= c.values[t]-size {
				j--
			}
			try(t, j)
		}
	}
	return best, marks
}

// counts returns how many packs of each kind to take. All there are must cover
// the need.
func (c *cover) counts() []int64 {
	counts := make([]int64, len(c.packs))
	t := len(c.values) - 1
	kept := max(1, maxMarks/len(c.values))
	for hi := len(c.passes); t > 0; hi -= kept {
		from := max(0, hi-kept)
		_, marks := c.run(c.passes[:hi], from, t)
		for k := len(marks) - 1; k >= 0; k-- {
			p := c.passes[from+k]
			for t > 0 && marks[k][t/64]>>(t%64)&1 == 1 {
				counts[p.kind] += p.lot
				t, _ = slices.BinarySearch(c.values, max(0, c.values[t]-p.lot*c.packs[p.kind].size))
				if !p.again {
					break
				}
			}
		}
	}
	return counts
}

// costs returns the least cost of covering 0, 1, ... measures up to the need, never
// where the packs do not reach. The need must be at most maxDense measures.
func (c *cover) costs() []int64 {
	best, _ := c.run(c.passes, len(c.passes), len(c.values)-1)
	costs := make([]int64, len(best))
	for t := range best {
		costs[t] = best[t].cost
	}
	return costs
}

// gcd returns the greatest common divisor of a and b, neither of them negative.
func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
