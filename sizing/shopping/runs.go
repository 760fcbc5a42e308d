package shopping

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"example.com/fircone/internal/cover"
	"example.com/fircone/units"
)

// maxParted is how many runs are shared out in groups: more are joined to one line.
const maxParted = 200

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
	runs    []run    // falling
	strands []strand // falling; the lengths are less the overlap
	work    *int64
	parts   []part // what was found, the last group first
}

// A run is one running length.
type run struct {
	at     int // which of the wishes
	length units.Length
}

// A part is a group of runs and how many of each of the strands serve it.
type part struct {
	runs  []run
	takes []int64
}

// groups returns the most groups that the runs can be put in, or 0 if the strands
// do not serve them at all or the work does not suffice.
func (p *parting) groups() int {
	slack := units.Length(0) // what is over with no group
	for _, s := range p.strands {
		slack += units.Length(s.n) * s.length
	}
	for _, r := range p.runs {
		slack -= r.length
	}
	for g := len(p.runs); g > 0; g-- {
		if over := slack + units.Length(g)*p.overlap; over >= 0 && p.part(p.runs, g, over) {
			return g
		}
	}
	return 0
}

// part reports whether the runs can be put in g groups that waste at most slack.
func (p *parting) part(runs []run, g int, slack units.Length) bool {
	if g == 1 {
		// All that is left is enough; but there has to be something.
		if !slices.ContainsFunc(p.strands, func(s strand) bool { return s.n > 0 }) {
			return false
		}
		all := part{runs: runs}
		for _, s := range p.strands {
			all.takes = append(all.takes, s.n)
		}
		p.parts = []part{all}
		return true
	}
	return p.gather(runs[1:], nil, runs[:1:1], runs[0].length, g, slack)
}

// gather puts some of runs in a group with those of in, of length sum, and rest and the
// others in the other groups of g.
func (p *parting) gather(runs, rest, in []run, sum units.Length, g int, slack units.Length) bool {
	if *p.work -= int64(10 + 4*len(rest)); *p.work < 0 || len(rest)+len(runs) < g-1 {
		return false
	}
	if len(runs) == 0 {
		need := max(1, sum-p.overlap)
		slack -= need - (sum - p.overlap)
		before := p.counts()
		next := func(slack units.Length) bool {
			here := p.counts()
			if !p.part(rest, g-1, slack) {
				return false
			}
			group := part{runs: in}
			for i, n := range here {
				group.takes = append(group.takes, before[i]-n)
			}
			p.parts = append(p.parts, group)
			return true
		}
		return slack >= 0 && p.serve(0, need, slack, next)
	}
	return p.gather(runs[1:], append(rest[:len(rest):len(rest)], runs[0]), in, sum, g, slack) ||
		p.gather(runs[1:], rest, append(in[:len(in):len(in)], runs[0]), sum+runs[0].length, g, slack)
}

// counts returns how many of each of the strands there are.
func (p *parting) counts() []int64 {
	counts := make([]int64, len(p.strands))
	for i, s := range p.strands {
		counts[i] = s.n
	}
	return counts
}

// falling puts runs in the order of their length, the longest first.
func falling(runs []run) {
	slices.SortStableFunc(runs, func(a, b run) int { return cmp.Compare(b.length, a.length) })
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
// [Shop.List] documents, all packs that fall short of one line by less than the
// joins that can be saved.
func (c *checker) part(item Item, lengths []units.Length, packs []cover.Pack, stock itemStock, best joining) (joining, error) {
	overlap := stock.join.Overlap
	runs := make([]run, len(lengths))
	least := -units.Length(len(runs)) * overlap
	for i, l := range lengths {
		runs[i] = run{i, l}
		least += l
	}
	falling(runs)
	var owned []strand
	for _, s := range stock.strands() {
		if s.length > overlap {
			owned = append(owned, strand{n: s.n, length: s.length - overlap})
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
	line := int64(least) + int64(len(runs)-1)*int64(overlap) // what one line takes
	groups := 0
	best, all := c.walk(packs, int64(least), line, best, func(counts []int64) bool {
		c.work -= int64(10 * (len(owned) + len(counts)))
		p := &parting{overlap: overlap, runs: runs, strands: slices.Clone(owned), work: &c.work}
		for j, n := range counts {
			st := stock.offers[j].pack.strand()
			p.strands = append(p.strands, strand{n: st.n * n, length: st.length - overlap})
		}
		slices.SortFunc(p.strands, func(a, b strand) int { return cmp.Compare(b.length, a.length) })
		groups = p.groups()
		return groups > 0
	}, func(j *joining) { j.groups = groups })
	switch {
	case all:
		best.bound = best.key[0] // all has been tried
	case best.counts == nil:
		return best, c.size(item, len(packs))
	}
	return best, nil
}

// walk improves best by packs of at least the size least, as do reports whether they will do. It tries
// them in the order that [Shop.List] documents, with none begun where those before come to most,
// and reports whether it tried all that could be better. keep is called for each that is better.
func (c *checker) walk(packs []cover.Pack, least, most int64, best joining, do func(counts []int64) bool, keep ...func(*joining)) (joining, bool) {
	// What the packs from each one on come to at most, and their least price by length.
	reach, rate := make([]int64, len(packs)+1), make([]float64, len(packs)+1)
	rate[len(packs)] = math.Inf(1)
	for i := len(packs) - 1; i >= 0; i-- {
		p := packs[i]
		reach[i] = min(most, reach[i+1]+p.Size*min(p.Limit, most/p.Size+1))
		rate[i] = min(rate[i+1], float64(p.Cost)/float64(p.Size))
	}
	all := c.work
	share := all / c.items
	c.work = share // the search may use no more
	counts := make([]int64, len(packs))
	var step func(i int, held int64, key [3]int64)
	step = func(i int, held int64, key [3]int64) {
		missing := least - held
		if c.work -= 10; c.work < 0 || missing > reach[i] {
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
			if do(counts) {
				best.counts, best.key = slices.Clone(counts), key
				for _, k := range keep {
					k(&best)
				}
			}
			return
		}
		p := packs[i]
		for n := min(p.Limit, max(0, most-1-held)/p.Size); n >= 0; n-- {
			if held+n*p.Size+reach[i+1] < least {
				break
			}
			counts[i] = n
			step(i+1, held+n*p.Size, [3]int64{key[0] + n*p.Cost, key[1] + n*p.Bulk, key[2] + n})
		}
		counts[i] = 0
	}
	step(0, 0, [3]int64{})
	complete := c.work >= 0
	c.work += all - share
	return best, complete
}

// cover returns how many of each of packs cover need at the least cost, or how
// much is missing if all of them do not. It takes nothing if need is not positive.
func (c *checker) cover(item Item, need int64, packs []cover.Pack) (counts []int64, short int64, err error) {
	if need <= 0 {
		return make([]int64, len(packs)), 0, nil
	}
	short = need
	for _, p := range packs {
		short = max(0, short-p.Size*min(p.Limit, need/max(1, p.Size)+1))
	}
	if short > 0 {
		return nil, short, nil
	}
	counts, ok := cover.Counts(need, packs, &c.work)
	if !ok {
		return nil, 0, c.size(item, len(packs))
	}
	return counts, 0, nil
}

// costs returns a function for the least cost of covering n, for n up to need;
// it is cover.Never if the packs do not reach.
func (c *checker) costs(item Item, need int64, packs []cover.Pack) (func(n int64) int64, error) {
	var costs []int64
	held, ok := cover.New(max(1, need), packs, &c.work)
	if ok {
		costs, ok = held.Costs(&c.work)
	}
	if !ok {
		return nil, c.size(item, len(packs))
	}
	return func(n int64) int64 { return costs[(max(0, n)+held.Measure-1)/held.Measure] }, nil
}

// size makes the error for a search that is too large.
func (c *checker) size(item Item, offers int) error {
	return c.fail(units.ErrLimit, "/offers", strconv.Itoa(offers)+" of "+item.String(), "fewer offers, a smaller need, or sizes with a larger common measure")
}
