package shopping

import (
	"cmp"
	"math"
	"slices"
)

// A roll is a kind of pack of rolls to cut, as the solver sees it.
type roll struct {
	length  int64 // of each roll
	strands int64 // rolls in a pack
	cost    int64 // of a pack
	bulk    int64 // length in a pack, 0 if it is owned
	limit   int64 // most packs there are
	owned   bool  // all packs are there, at no cost
}

// A pattern is one way to cut a roll.
type pattern struct {
	roll int     // index of the roll
	take []int64 // pieces of each length
}

// Bounds of the search for a cutting.
const (
	maxCutPieces = 10_000        // pieces
	maxCutKinds  = 64            // lengths of pieces; kinds of rolls
	maxCutEffort = 1_000_000_000 // elementary steps, a few seconds
	maxPackSteps = 20_000        // rolls tried in one search for a packing
	maxKnapsack  = 1 << 14       // entries in the list of a knapsack
	maxSimplex   = 2_000         // pivots in one relaxation
	maxWeighing  = 1 << 60       // sums of weights
)

// A cutter finds the rolls of least weight from which all pieces can be cut.
//
// It is branch and bound over the number of packs of each kind. The bound is the
// linear relaxation over all ways to cut a roll (Gilmore and Gomory), whose ways
// are made as they are wanted by solving a knapsack for the prices of the pieces.
// The relaxation runs in floating point, but only to find good prices: rounded to
// whole numbers Y they give, with M the most that the pieces from one roll are
// worth, the bound
//
//	Σ Y·demand + Σ over rolls of the least of n·(weight - strands·M) for n in its range
//
// which holds for any Y ≥ 0 and is computed in integers. Whether given rolls do
// hold the pieces is decided by a search over ways to cut, roll after roll.
type cutter struct {
	lengths []int64 // of the pieces, falling
	demand  []int64
	rolls   []roll
	weight  []int64 // of a pack of each roll: cost, then bulk, then packs
	unit    int64   // the weight of one unit of cost
	measure int64   // one unit of cost, in units of 1/10,000
	scale   int64   // of prices Y to weights
	effort  int64

	best     int64 // weight of the best so far, or more than any
	packs    []int64
	patterns []pattern // one for each roll that is cut
	missing  int64     // pieces left over by the best packing that failed
}

// A branch is a part of the search: packs of each roll in a range.
type branch struct {
	lo, hi []int64
	bound  int64
	packs  []float64 // in the relaxation
}

// newCutter readies a cutter. It reports false if the problem is too large.
func newCutter(lengths, demand []int64, rolls []roll) (*cutter, bool) {
	c := &cutter{lengths: lengths, demand: demand, rolls: slices.Clone(rolls)}
	pieces := int64(0)
	for _, d := range demand {
		pieces += d
	}
	if pieces > maxCutPieces || len(lengths) > maxCutKinds || len(rolls) > maxCutKinds {
		return nil, false
	}
	c.missing = pieces
	var length, maxCost, maxBulk int64
	for i := range c.rolls {
		r := &c.rolls[i]
		// More packs than pieces are never cut.
		r.limit = min(r.limit, (pieces-1)/r.strands+1)
		if r.owned {
			r.limit = min(r.limit, pieces)
		}
		c.measure = gcd(c.measure, r.cost)
		length = gcd(length, r.bulk)
	}
	c.measure, length = max(1, c.measure), max(1, length)
	for _, r := range c.rolls {
		maxCost, maxBulk = max(maxCost, r.cost/c.measure), max(maxBulk, r.bulk/length)
	}
	// The weight of a pack is cost, bulk and 1 as digits of one number, if the
	// sums of all three fit; else the cost alone.
	perBulk := pieces + 1
	c.unit = perBulk
	fits := func(unit int64) bool {
		most := float64(unit)*float64(maxCost+1) + float64(perBulk)*float64(maxBulk)
		return 16*float64(pieces)*most <= maxWeighing
	}
	if float64(perBulk)*float64(pieces)*float64(maxBulk) < maxWeighing && fits(perBulk*(pieces*maxBulk+1)) {
		c.unit = perBulk * (pieces*maxBulk + 1)
	} else {
		c.unit, perBulk = 1, 0
	}
	heaviest := int64(1)
	for _, r := range c.rolls {
		w := int64(0)
		if !r.owned {
			w = r.cost/c.measure*c.unit + r.bulk/length*perBulk + min(1, perBulk)
		}
		c.weight = append(c.weight, w)
		heaviest = max(heaviest, w)
	}
	c.scale = 1
	for c.scale < 1<<20 && 16*float64(pieces)*float64(heaviest)*float64(2*c.scale) <= maxWeighing {
		c.scale *= 2
	}
	c.best = math.MaxInt64
	return c, true
}

// solve searches for the best cutting, and returns the weight that no cutting is
// below. It has found none if c.packs is nil.
func (c *cutter) solve() (bound int64) {
	root := branch{lo: make([]int64, len(c.rolls)), hi: make([]int64, len(c.rolls))}
	for i, r := range c.rolls {
		root.hi[i] = r.limit
		if r.owned {
			root.lo[i] = r.limit
		}
	}
	if found, proved := c.try(root.hi); !found && proved {
		return c.best // all there is does not hold the pieces
	}
	c.relax(&root)
	open := []branch{root}
	undecided := int64(math.MaxInt64)
	for len(open) > 0 {
		least := 0
		for i, b := range open {
			if b.bound < open[least].bound {
				least = i
			}
		}
		b := open[least]
		if b.bound >= c.best || c.effort > maxCutEffort {
			return min(c.best, b.bound, undecided)
		}
		open = slices.Delete(open, least, least+1)
		split, proved := c.split(b)
		if split < 0 {
			if !proved {
				undecided = min(undecided, b.bound)
			}
			continue
		}
		n := int64(math.Floor(b.packs[split] + 1e-6))
		for _, part := range [][2]int64{{b.lo[split], n - 1}, {n, n}, {n + 1, b.hi[split]}} {
			if part[0] > part[1] {
				continue
			}
			child := branch{lo: slices.Clone(b.lo), hi: slices.Clone(b.hi)}
			child.lo[split], child.hi[split] = part[0], part[1]
			c.relax(&child)
			child.bound = max(child.bound, b.bound)
			if child.bound < c.best {
				open = append(open, child)
			}
		}
	}
	return min(c.best, undecided)
}

// split tries the packs of b's relaxation, rounded up, and returns the roll to
// branch on. If there is none, since b has no choice left, it returns -1 and
// whether the attempt has decided b.
func (c *cutter) split(b branch) (split int, decided bool) {
	packs := make([]int64, len(b.packs))
	split = -1
	far := 1e-6
	for i, x := range b.packs {
		packs[i] = max(b.lo[i], min(b.hi[i], int64(math.Ceil(x-1e-6))))
		if d := math.Abs(x - math.Round(x)); b.lo[i] < b.hi[i] && d > far {
			split, far = i, d
		}
	}
	found, proved := c.try(packs)
	if split < 0 {
		for i := range packs {
			if b.lo[i] < b.hi[i] && (split < 0 || b.hi[i]-b.lo[i] > b.hi[split]-b.lo[split]) {
				split = i
			}
		}
	}
	return split, found || proved
}

// try looks for a way to cut all pieces from the given packs, and keeps it if it
// is the best so far. It reports whether it found one, and if not, whether it is
// proved that there is none.
func (c *cutter) try(packs []int64) (found, proved bool) {
	s := c.packing(packs)
	found = s.fill(0, s.stacks[0].bins)
	c.effort += 20 * s.steps
	c.missing = min(c.missing, s.least)
	if !found {
		return false, s.steps <= maxPackSteps
	}
	used := make([]int64, len(c.rolls))
	for _, p := range s.patterns {
		used[p.roll]++
	}
	weight := int64(0)
	for i, r := range c.rolls {
		used[i] = (used[i] + r.strands - 1) / r.strands
		weight += used[i] * c.weight[i]
	}
	if weight < c.best {
		c.best, c.packs, c.patterns = weight, used, s.patterns
	}
	return true, true
}

// A packing is a search for a way to cut the pieces from given rolls.
type packing struct {
	*cutter
	stacks   []stack
	left     []int64 // pieces still to cut
	failed   map[string]bool
	patterns []pattern
	steps    int64
	least    int64 // fewest pieces that were ever left
}

// A stack is the rolls of one kind in a packing.
type stack struct {
	roll   int
	length int64
	bins   int64
	room   int64   // length of all rolls in the stacks after this one
	holds  []int64 // how many pieces as long as the k-th they hold
}

// packing readies a packing into the given packs, longest rolls first.
func (c *cutter) packing(packs []int64) *packing {
	s := &packing{cutter: c, left: slices.Clone(c.demand), failed: make(map[string]bool)}
	for i, r := range c.rolls {
		s.stacks = append(s.stacks, stack{roll: i, length: r.length, bins: packs[i] * r.strands})
	}
	slices.SortStableFunc(s.stacks, func(a, b stack) int { return cmp.Compare(b.length, a.length) })
	room, holds := int64(0), make([]int64, len(c.lengths))
	for i := len(s.stacks) - 1; i >= 0; i-- {
		t := &s.stacks[i]
		t.room, t.holds = room, slices.Clone(holds)
		room += t.bins * t.length
		for k, piece := range c.lengths {
			holds[k] += t.bins * (t.length / piece)
		}
	}
	for _, n := range s.left {
		s.least += n
	}
	return s
}

// fill cuts what is left from the last bins of the i-th stack and from the stacks
// after it, and reports whether it could. It gives up after maxPackSteps.
func (s *packing) fill(i int, bins int64) bool {
	for bins == 0 {
		if i++; i == len(s.stacks) {
			return s.done()
		}
		bins = s.stacks[i].bins
	}
	if s.done() {
		return true
	}
	t := s.stacks[i]
	room := t.room + bins*t.length
	pieces := int64(0)
	for k, n := range s.left {
		pieces += n
		room -= n * s.lengths[k]
		if room < 0 || pieces > t.holds[k]+bins*(t.length/s.lengths[k]) {
			return false
		}
	}
	key := s.key(i, bins)
	if s.failed[key] {
		return false
	}
	take := make([]int64, len(s.lengths))
	s.patterns = append(s.patterns, pattern{roll: t.roll, take: take})
	if s.choose(i, bins, 0, t.length, room, take) {
		return true
	}
	s.patterns = s.patterns[:len(s.patterns)-1]
	s.failed[key] = true
	return false
}

// done reports whether no pieces are left.
func (s *packing) done() bool {
	pieces := int64(0)
	for _, n := range s.left {
		pieces += n
	}
	s.least = min(s.least, pieces)
	return pieces == 0
}

// choose takes pieces from the k-th length on for a bin of the i-th stack, of
// which free is left, wasting no more than waste, and fills the other bins. It
// takes as many of the longest as it can first, and leaves no room in which
// another piece would go.
func (s *packing) choose(i int, bins int64, k int, free, waste int64, take []int64) bool {
	if s.steps++; s.steps > maxPackSteps {
		return false
	}
	for k < len(s.lengths) && (s.left[k] == 0 || s.lengths[k] > free) {
		k++
	}
	if k < len(s.lengths) {
		for n := min(s.left[k], free/s.lengths[k]); n >= 0; n-- {
			take[k] += n
			s.left[k] -= n
			if s.choose(i, bins, k+1, free-n*s.lengths[k], waste, take) {
				return true
			}
			take[k] -= n
			s.left[k] += n
		}
		return false
	}
	if free > waste {
		return false
	}
	for j, n := range s.left {
		if n > 0 && s.lengths[j] <= free {
			return false
		}
	}
	if slices.Max(take) > 0 {
		return s.fill(i, bins-1)
	}
	// No piece goes into this stack.
	last := len(s.patterns) - 1
	unused := s.patterns[last]
	s.patterns = s.patterns[:last]
	if s.fill(i, 0) {
		return true
	}
	s.patterns = append(s.patterns, unused)
	return false
}

// key names what is left at the last bins of the i-th stack.
func (s *packing) key(i int, bins int64) string {
	b := append(make([]byte, 0, 2*len(s.left)+4), byte(i), byte(bins), byte(bins>>8), byte(bins>>16))
	for _, n := range s.left {
		b = append(b, byte(n), byte(n>>8))
	}
	return string(b)
}

// A column is a variable of the relaxation.
type column struct {
	roll int     // of a pattern; -1 for a slack
	row  int     // of the limit of its rolls, or of the slack
	cost float64 // for one roll
	take []int64 // pieces of each length
	sign float64 // of a slack
}

// relax solves the relaxation of b and fills in its bound and packs.
func (c *cutter) relax(b *branch) {
	m := len(c.lengths)
	// The packs up to b.lo are paid for, those from there to b.hi are not.
	type source struct {
		roll  int
		paid  bool
		limit float64
		cost  float64
	}
	var sources []source
	for i, r := range c.rolls {
		if b.lo[i] > 0 {
			sources = append(sources, source{i, true, float64(b.lo[i] * r.strands), 0})
		}
		if b.hi[i] > b.lo[i] {
			sources = append(sources, source{i, false, float64((b.hi[i] - b.lo[i]) * r.strands), float64(c.weight[i]) / float64(r.strands)})
		}
	}
	rows := m + len(sources)
	heavy := 8 * float64(slices.Max(c.weight)+1)
	tolerance := 1e-9 * heavy
	inverse := make([][]float64, rows)
	basis := make([]column, rows)
	value := make([]float64, rows)
	for i := range rows {
		inverse[i] = make([]float64, rows)
		inverse[i][i] = 1
		basis[i] = column{roll: -1, row: i}
		if i < m {
			basis[i].cost = heavy
			value[i] = float64(c.demand[i])
		} else {
			value[i] = sources[i-m].limit
		}
	}
	prices := make([]int64, m)
	for range maxSimplex {
		dual := make([]float64, rows)
		for i := range rows {
			if basis[i].cost == 0 {
				continue
			}
			for j := range rows {
				dual[j] += float64(basis[i].cost * inverse[i][j])
			}
		}
		var enter column
		gain := tolerance
		for i, y := range dual {
			if i < m && -y > gain {
				enter, gain = column{roll: -1, row: i, sign: -1}, -y
			}
			if i >= m && y > gain {
				enter, gain = column{roll: -1, row: i, sign: 1}, y
			}
			if i < m {
				prices[i] = int64(max(0, y) * float64(c.scale))
			}
		}
		k := c.knapsack(prices)
		for i, src := range sources {
			worth, take := k.best(c.rolls[src.roll].length)
			if g := float64(worth)/float64(c.scale) + dual[m+i] - src.cost; g > gain {
				enter, gain = column{roll: src.roll, row: m + i, cost: src.cost, take: take}, g
			}
		}
		c.effort += int64(len(k.entries)) + int64(rows*rows)
		if gain == tolerance {
			break
		}
		// The entering column in terms of the basis.
		in := make([]float64, rows)
		for i := range rows {
			if enter.roll < 0 {
				in[i] = enter.sign * inverse[i][enter.row]
				continue
			}
			in[i] = inverse[i][enter.row]
			for j, n := range enter.take {
				in[i] += float64(inverse[i][j] * float64(n))
			}
		}
		out, step := -1, math.Inf(1)
		for i := range rows {
			if in[i] > 1e-9 && value[i]/in[i] < step {
				out, step = i, value[i]/in[i]
			}
		}
		if out < 0 {
			break
		}
		for i := range rows {
			if i == out || in[i] == 0 {
				continue
			}
			value[i] = max(0, value[i]-float64(step*in[i]))
			f := in[i] / in[out]
			for j := range rows {
				inverse[i][j] -= float64(f * inverse[out][j])
			}
		}
		value[out] = step
		for j := range rows {
			inverse[out][j] /= in[out]
		}
		basis[out] = enter
	}
	b.packs = make([]float64, len(c.rolls))
	for i, lo := range b.lo {
		b.packs[i] = float64(lo)
	}
	for i, col := range basis {
		if col.roll >= 0 && !sources[col.row-m].paid {
			b.packs[col.roll] += value[i] / float64(c.rolls[col.roll].strands)
		}
	}
	b.bound = c.bound(b, prices)
}

// bound returns the weight below which there is no cutting in b, from any prices.
func (c *cutter) bound(b *branch, prices []int64) int64 {
	k := c.knapsack(prices)
	sum, size := int64(0), 0.0
	add := func(n, x int64) {
		size += float64(n) * math.Abs(float64(x))
		sum += n * x
	}
	for i, d := range c.demand {
		add(d, prices[i])
	}
	for i, r := range c.rolls {
		reduced := c.scale*c.weight[i] - r.strands*k.most(r.length)
		if reduced < 0 {
			add(b.hi[i], reduced)
		} else {
			add(b.lo[i], reduced)
		}
	}
	if size > 4*maxWeighing || sum < 0 {
		return 0
	}
	return (sum + c.scale - 1) / c.scale
}

// A knapsack is what pieces a roll can hold at given prices, for every length of
// roll: entries of rising length and worth, none of them bettered by a shorter.
type knapsack struct {
	*cutter
	prices  []int64
	entries []entry
	list    []int32 // indices of entries
	full    bool    // the list was cut short
}

// An entry is a lot of pieces of one length, on top of another entry.
type entry struct {
	length, worth int64
	below         int32
	kind          int32
	lot           int64
}

// knapsack builds the list up to the longest roll.
func (c *cutter) knapsack(prices []int64) *knapsack {
	k := &knapsack{cutter: c, prices: prices, entries: make([]entry, 1, 256), list: []int32{0}}
	longest := int64(0)
	for _, r := range c.rolls {
		longest = max(longest, r.length)
	}
	for kind, price := range prices {
		if price == 0 {
			continue
		}
		length := c.lengths[kind]
		rest := min(c.demand[kind], longest/length)
		for lot := int64(1); rest > 0; lot *= 2 {
			lot = min(lot, rest)
			rest -= lot
			k.add(int32(kind), lot, longest)
			if len(k.list) > maxKnapsack {
				k.full = true
				return k
			}
		}
	}
	return k
}

// add merges the list with itself shifted by a lot of pieces.
func (k *knapsack) add(kind int32, lot, longest int64) {
	length, worth := lot*k.lengths[kind], lot*k.prices[kind]
	list := make([]int32, 0, 2*len(k.list))
	most := int64(-1)
	keep := func(i int32) {
		if e := k.entries[i]; e.worth > most {
			if n := len(list); n > 0 && k.entries[list[n-1]].length == e.length {
				list = list[:n-1]
			}
			list = append(list, i)
			most = e.worth
		}
	}
	next := 0
	for _, i := range k.list {
		below := k.entries[i]
		e := entry{length: below.length + length, worth: below.worth + worth, below: i, kind: kind, lot: lot}
		if e.length > longest {
			break
		}
		for next < len(k.list) && k.entries[k.list[next]].length <= e.length {
			keep(k.list[next])
			next++
		}
		if e.worth > most {
			k.entries = append(k.entries, e)
			keep(int32(len(k.entries) - 1))
		}
	}
	for ; next < len(k.list); next++ {
		keep(k.list[next])
	}
	k.list = list
}

// at returns the index of the entry of most worth for a roll of the given length.
func (k *knapsack) at(length int64) int32 {
	n, _ := slices.BinarySearchFunc(k.list, length, func(i int32, l int64) int {
		if k.entries[i].length <= l {
			return -1
		}
		return 1
	})
	return k.list[n-1]
}

// best returns the pieces of most worth for a roll of the given length.
func (k *knapsack) best(length int64) (worth int64, take []int64) {
	take = make([]int64, len(k.lengths))
	i := k.at(length)
	worth = k.entries[i].worth
	for ; i > 0; i = k.entries[i].below {
		take[k.entries[i].kind] += k.entries[i].lot
	}
	return worth, take
}

// most returns what no roll of the given length is worth more than.
func (k *knapsack) most(length int64) int64 {
	if !k.full {
		return k.entries[k.at(length)].worth
	}
	// As if the dearest pieces for their length could be cut in parts.
	ratio := 0.0
	for kind, price := range k.prices {
		ratio = max(ratio, float64(price)/float64(k.lengths[kind]))
	}
	return int64(math.Ceil(ratio * float64(length) * (1 + 1e-9)))
}
