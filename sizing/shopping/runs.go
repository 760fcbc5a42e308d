package shopping

import (
	"cmp"
	"math"
	"slices"

	"example.com/fircone/internal/cover"
	"example.com/fircone/units"
)

// A parting shares strands out among several runs, each joined for itself.
//
// Let s be the length of a strand less the overlap, and let runs of length L be
// put in groups, each served by strands of its own. The strands of a group are
// joined to one line that is cut between the runs, which takes
//
//	Σs ≥ ΣL - overlap
//
// and g groups of all the strands take Σs ≥ ΣL - g·overlap together: each group
// more saves a join, where the end of a run falls on the end of a strand. There is
// no other way to save one, since a cut makes one piece more to join.
type parting struct {
	overlap units.Length
	runs    []units.Length // falling
	strands []strand       // falling; the lengths are less the overlap
	work    *int64
}

// groups returns the most groups that the runs can be put in, or 0 if the strands
// do not serve them at all or the work does not suffice.
func (p *parting) groups() int {
	slack := units.Length(0) // what is over with no group
	for _, s := range p.strands {
		slack += units.Length(s.n) * s.length
	}
	for _, l := range p.runs {
		slack -= l
	}
	for g := len(p.runs); g > 0; g-- {
		if over := slack + units.Length(g)*p.overlap; over >= 0 && p.part(p.runs, g, over) {
			return g
		}
	}
	return 0
}

// part reports whether the runs can be put in g groups that waste at most slack.
func (p *parting) part(runs []units.Length, g int, slack units.Length) bool {
	if g == 1 {
		// All that is left is enough; but there has to be something.
		return slices.ContainsFunc(p.strands, func(s strand) bool { return s.n > 0 })
	}
	return p.gather(runs[1:], nil, runs[0], g, slack)
}

// gather puts some of runs in a group of length sum, and rest and the others in
// the other groups of g.
func (p *parting) gather(runs, rest []units.Length, sum units.Length, g int, slack units.Length) bool {
	if *p.work -= int64(10 + 4*len(rest)); *p.work < 0 || len(rest)+len(runs) < g-1 {
		return false
	}
	if len(runs) == 0 {
		need := max(1, sum-p.overlap)
		slack -= need - (sum - p.overlap)
		return slack >= 0 && p.serve(0, need, slack, func(slack units.Length) bool { return p.part(rest, g-1, slack) })
	}
	return p.gather(runs[1:], append(rest[:len(rest):len(rest)], runs[0]), sum, g, slack) ||
		p.gather(runs[1:], rest, sum+runs[0], g, slack)
}

// serve takes strands from the i-th on that come to need and at most slack more,
// and reports whether next does with what is left of slack.
func (p *parting) serve(i int, need, slack units.Length, next func(slack units.Length) bool) bool {
	if *p.work -= 10; *p.work < 0 {
		return false
	}
	if need <= 0 {
		return need+slack >= 0 && next(need+slack)
	}
	if i == len(p.strands) {
		return false
	}
	s := &p.strands[i]
	all := s.n
	for n := min(all, int64((need+slack)/s.length)); n >= 0; n-- {
		s.n = all - n
		if p.serve(i+1, need-units.Length(n)*s.length, slack, next) {
			return true // the strands are of no more use
		}
	}
	s.n = all
	return false
}

// A joining is packs to join for several runs.
type joining struct {
	counts []int64 // nil if there is no way
	key    [3]int64
	groups int   // of runs that have strands of their own
	bound  int64 // the least cost that is possible
}

// part improves best, the packs for all runs joined to one line, if strands of
// their own for some of the runs cost less. It tries, in the order that
// [Shop.Cheapest] documents, all packs that fall short of one line by less than the
// joins that can be saved.
func (c *checker) part(item Item, runs []units.Length, packs []cover.Pack, stock itemStock, best joining) (joining, error) {
	runs = slices.Clone(runs)
	slices.Sort(runs)
	slices.Reverse(runs)
	least := -units.Length(len(runs)) * stock.overlap
	for _, l := range runs {
		least += l
	}
	var owned []strand
	for _, s := range stock.strands() {
		if s.length > stock.overlap {
			owned = append(owned, strand{s.n, s.length - stock.overlap})
		}
	}
	least -= length(owned)
	fewest, short, err := c.cover(item, int64(least), packs)
	if err != nil || short > 0 {
		return best, err
	}
	best.bound = weigh(fewest, packs)[0]
	if slices.Equal(fewest, best.counts) {
		return best, nil
	}
	line := int64(least) + int64(len(runs)-1)*int64(stock.overlap) // what one line takes
	// What the packs from each one on come to at most, and their least price by length.
	reach, rate := make([]int64, len(packs)+1), make([]float64, len(packs)+1)
	rate[len(packs)] = math.Inf(1)
	for i := len(packs) - 1; i >= 0; i-- {
		p := packs[i]
		reach[i] = min(line, reach[i+1]+p.Size*min(p.Limit, line/p.Size+1))
		rate[i] = min(rate[i+1], float64(p.Cost)/float64(p.Size))
	}
	share := c.work / c.items
	work := share
	counts := make([]int64, len(packs))
	var walk func(i int, held int64, key [3]int64)
	walk = func(i int, held int64, key [3]int64) {
		missing := int64(least) - held
		if work -= 10; work < 0 || missing > reach[i] {
			return
		}
		if best.counts != nil {
			lower := float64(key[0])
			if missing > 0 {
				lower += float64(rate[i] * float64(missing))
			}
			if lower > float64((1+1e-9)*float64(best.key[0])) {
				return
			}
		}
		if i == len(packs) {
			if best.counts != nil && slices.Compare(key[:], best.key[:]) >= 0 {
				return
			}
			work -= int64(10 * (len(owned) + len(counts)))
			p := &parting{overlap: stock.overlap, runs: runs, strands: slices.Clone(owned), work: &work}
			for j, n := range counts {
				st := stock.offers[j].Pack.strand()
				p.strands = append(p.strands, strand{st.n * n, st.length - stock.overlap})
			}
			slices.SortFunc(p.strands, func(a, b strand) int { return cmp.Compare(b.length, a.length) })
			if g := p.groups(); g > 0 {
				best.counts, best.key, best.groups = slices.Clone(counts), key, g
			}
			return
		}
		p := packs[i]
		for n := min(p.Limit, max(0, line-1-held)/p.Size); n >= 0; n-- {
			if held+n*p.Size+reach[i+1] < int64(least) {
				break
			}
			counts[i] = n
			walk(i+1, held+n*p.Size, [3]int64{key[0] + n*p.Cost, key[1] + n*p.Bulk, key[2] + n})
		}
		counts[i] = 0
	}
	walk(0, 0, [3]int64{})
	c.work -= share - work
	switch {
	case work >= 0:
		best.bound = best.key[0] // all has been tried
	case best.counts == nil:
		return best, c.size(item, len(packs))
	}
	return best, nil
}
