// Package cutting finds the rolls of least cost from which pieces of several lengths
// can be cut: the cutting-stock problem, by branch and bound over a relaxation.
//
// Source: P. C. Gilmore, R. E. Gomory, A linear programming approach to the cutting-stock
// problem, Operations Research 9 (1961) 849-859 (from memory).
package cutting

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"example.com/fircone/internal/cover"
)

// A Roll is a kind of pack of rolls to cut.
type Roll struct {
	Length  int64 // of each roll
	Strands int64 // rolls in a pack
	Cost    int64 // of a pack
	Bulk    int64 // length in a pack, 0 if it is owned
	Limit   int64 // most packs there are
	Owned   bool  // all packs are there, at no cost
}

// A Pattern is one way to cut a roll, and how many rolls are cut that way.
type Pattern struct {
	Roll  int     // index of the roll
	Take  []int64 // pieces of each length
	Rolls int64
}

// Bounds of the search for a cutting.
const (
	MaxPieces    = 10_000  // pieces
	MaxKinds     = 64      // lengths of pieces; kinds of rolls
	maxPackSteps = 50_000  // ways to cut tried in one search for a packing; a relaxation counts for 100
	maxKnapsack  = 1 << 14 // entries in the list of a knapsack
	maxSimplex   = 2_000   // pivots in one relaxation
	maxWeighing  = 1 << 60 // sums of weights
)

// A Cutter finds the rolls of least weight from which all pieces can be cut.
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
type Cutter struct {
	lengths  []int64 // of the pieces, falling
	demand   []int64
	Rolls    []Roll   // as given, with no more of each than can be cut
	weight   []int64  // of a pack of each roll: cost, then bulk, then packs
	Unit     int64    // the weight of one unit of cost
	Measure  int64    // how much one unit of cost is
	scale    int64    // of prices Y to weights
	Effort   int64    // steps that are left
	patience int      // steps in one search for a packing
	sack     knapsack // the last one, for its room

	Short    bool      // all there is does not hold the pieces
	Best     int64     // weight of the best so far, or more than any
	Packs    []int64   // how many of each roll, nil if no way was found
	Patterns []Pattern // one for each roll that is cut
}

// A branch is a part of the search: packs of each roll in a range.
type branch struct {
	lo, hi []int64
	bound  int64
	packs  []float64 // in the relaxation
}

// New readies a cutter of pieces of lengths, falling, in the numbers of demand, that
// gives up after so many steps. It reports false if the problem is too large.
func New(lengths, demand []int64, rolls []Roll, effort int64) (*Cutter, bool) {
	c := &Cutter{lengths: lengths, demand: demand, Rolls: slices.Clone(rolls), patience: maxPackSteps, Effort: effort}
	pieces := int64(0)
	for _, d := range demand {
		pieces += d
	}
	if pieces > MaxPieces || len(lengths) > MaxKinds || len(rolls) > MaxKinds {
		return nil, false
	}
	var length, maxCost, maxBulk int64
	for i := range c.Rolls {
		r := &c.Rolls[i]
		// More packs than pieces are never cut.
		r.Limit = min(r.Limit, (pieces-1)/r.Strands+1)
		if r.Owned {
			r.Limit = min(r.Limit, pieces)
		}
		c.Measure = cover.GCD(c.Measure, r.Cost)
		length = cover.GCD(length, r.Bulk)
	}
	c.Measure, length = max(1, c.Measure), max(1, length)
	for _, r := range c.Rolls {
		maxCost, maxBulk = max(maxCost, r.Cost/c.Measure), max(maxBulk, r.Bulk/length)
	}
	// The weight of a pack is cost, bulk and 1 as digits of one number, if the
	// sums of all three fit; else the cost alone.
	perBulk := pieces + 1
	bulk := float64(float64(pieces)*float64(maxBulk)) + 1
	if 16*float64(pieces)*float64(perBulk)*bulk*float64(maxCost+2) <= maxWeighing {
		c.Unit = perBulk * (pieces*maxBulk + 1)
	} else {
		c.Unit, perBulk = 1, 0
	}
	heaviest := int64(1)
	for _, r := range c.Rolls {
		w := int64(0)
		if !r.Owned {
			w = r.Cost/c.Measure*c.Unit + r.Bulk/length*perBulk + min(1, perBulk)
		}
		c.weight = append(c.weight, w)
		heaviest = max(heaviest, w)
	}
	c.scale = 1
	for c.scale < 1<<20 && 16*float64(pieces)*float64(heaviest)*float64(2*c.scale) <= maxWeighing {
		c.scale *= 2
	}
	c.Best = math.MaxInt64
	return c, true
}

// Solve searches for the best cutting, and returns the weight that no cutting is
// below. It has found none if c.Packs is nil; if c.Short is set, there is none.
func (c *Cutter) Solve() (bound int64) {
	root := branch{lo: make([]int64, len(c.Rolls)), hi: make([]int64, len(c.Rolls))}
	for i, r := range c.Rolls {
		root.hi[i] = r.Limit
		if r.Owned {
			root.lo[i] = r.Limit
		}
	}
	if found, proved := c.Try(root.hi); !found && proved {
		c.Short = true
		return c.Best
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
		c.Effort -= int64(len(open))
		if b.bound >= c.Best || c.Effort < 0 {
			return min(c.Best, b.bound, undecided)
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
			if child.bound < c.Best {
				open = append(open, child)
			}
		}
	}
	return min(c.Best, undecided)
}

// split tries the packs of b's relaxation, rounded up, and returns the roll to
// branch on. If there is none, since b has no choice left, it returns -1 and
// whether the attempt has decided b.
func (c *Cutter) split(b branch) (split int, decided bool) {
	packs := make([]int64, len(b.packs))
	split = -1
	far := 1e-6
	for i, x := range b.packs {
		packs[i] = max(b.lo[i], min(b.hi[i], int64(math.Ceil(x-1e-6))))
		if d := math.Abs(x - math.Round(x)); d > far { // a number of packs without a choice is whole
			split, far = i, d
		}
	}
	found, proved := c.Try(packs)
	if split < 0 {
		for i := range packs {
			if b.lo[i] < b.hi[i] && (split < 0 || b.hi[i]-b.lo[i] > b.hi[split]-b.lo[split]) {
				split = i
			}
		}
	}
	return split, found || proved
}

// Try looks for a way to cut all pieces from the given packs, and keeps it if it
// is the best so far. It reports whether it found one, and if not, whether it is
// proved that there is none.
func (c *Cutter) Try(packs []int64) (found, proved bool) {
	s := c.packing(packs)
	found, proved = s.search()
	if !found {
		return false, proved
	}
	used := make([]int64, len(c.Rolls))
	for _, p := range s.patterns {
		used[p.Roll] += p.Rolls
	}
	weight := int64(0)
	for i, r := range c.Rolls {
		used[i] = (used[i] + r.Strands - 1) / r.Strands
		weight += used[i] * c.weight[i]
	}
	if weight < c.Best {
		c.Best, c.Packs, c.Patterns = weight, used, s.patterns
	}
	return true, true
}

// Fit looks for a way to cut all pieces from the given packs, whatever they weigh. If it found none, proved
// says whether there is none.
func (c *Cutter) Fit(packs []int64) (patterns []Pattern, found, proved bool) {
	s := c.packing(packs)
	found, proved = s.search()
	return s.patterns, found, proved
}

// Reach returns how many of the pieces can be cut from all rolls there are. Any
// piece can give way to a shorter one, so they are the shortest.
func (c *Cutter) Reach() int64 {
	packs, pieces := make([]int64, len(c.Rolls)), int64(0)
	for i, r := range c.Rolls {
		packs[i] = r.Limit
	}
	for _, n := range c.demand {
		pieces += n
	}
	return int64(sort.Search(int(pieces), func(n int) bool {
		s := c.packing(packs)
		rest := int64(n + 1)
		for k := len(s.left) - 1; k >= 0; k-- {
			s.left[k] = min(s.left[k], rest)
			rest -= s.left[k]
		}
		found, _ := s.search()
		return !found
	}))
}

// A packing is a search for a way to cut the pieces from given rolls.
type packing struct {
	*Cutter
	stacks   []stack
	left     []int64 // pieces still to cut
	failed   map[string]bool
	patterns []Pattern
	steps    int // ways to cut tried
}

// A stack is the rolls of one kind in a packing.
type stack struct {
	roll   int
	length int64
	bins   int64 // rolls still to cut
}

// packing readies a packing into the given packs, longest rolls first.
func (c *Cutter) packing(packs []int64) *packing {
	s := &packing{Cutter: c, left: slices.Clone(c.demand)}
	for i, r := range c.Rolls {
		s.stacks = append(s.stacks, stack{roll: i, length: r.Length, bins: packs[i] * r.Strands})
	}
	slices.SortStableFunc(s.stacks, func(a, b stack) int { return cmp.Compare(b.length, a.length) })
	return s
}

// search looks for a way to cut what is left, first by plain search, then with
// the relaxation as a guide. It reports whether it found one, and if not, whether
// there is none.
func (s *packing) search() (found, proved bool) {
	for _, guided := range []bool{false, true} {
		s.failed, s.steps = make(map[string]bool), 0
		if s.fill(guided) {
			return true, true
		}
		if !s.tired() {
			return false, true
		}
	}
	return false, false
}

// tired reports whether the search is to be given up.
func (s *packing) tired() bool { return s.steps > s.patience || s.Effort < 0 }

// fill cuts what is left from the rolls there are, and reports whether it could.
func (s *packing) fill(guided bool) bool {
	s.Effort -= int64(10 * (len(s.stacks) + 1) * len(s.left))
	var room, pieces int64
	for _, t := range s.stacks {
		room += t.bins * t.length
	}
	fits := true
	for k, n := range s.left {
		room -= n * s.lengths[k]
		pieces += n
		// Rolls hold so many pieces that are no shorter than this one.
		holds := int64(0)
		for _, t := range s.stacks {
			holds += t.bins * (t.length / s.lengths[k])
		}
		fits = fits && pieces <= holds
	}
	if pieces == 0 {
		return true
	}
	if room < 0 || !fits {
		return false
	}
	key := s.key()
	if s.failed[key] {
		return false
	}
	if s.tired() {
		return false
	}
	var ok bool
	if guided {
		s.steps += 100
		ok = s.guide(room)
	} else {
		i := slices.IndexFunc(s.stacks, func(t stack) bool { return t.bins > 0 })
		ok = s.each(i, room, func(take []int64) bool { return s.cut(i, take, false) })
	}
	if !ok {
		s.failed[key] = true
	}
	return ok
}

// cut cuts a roll of the i-th stack as take says and fills the others.
func (s *packing) cut(i int, take []int64, guided bool) bool {
	s.patterns = append(s.patterns, Pattern{Roll: s.stacks[i].roll, Take: slices.Clone(take), Rolls: 1})
	s.stacks[i].bins--
	for k, n := range take {
		s.left[k] -= n
	}
	if s.fill(guided) {
		return true
	}
	for k, n := range take {
		s.left[k] += n
	}
	s.stacks[i].bins++
	s.patterns = s.patterns[:len(s.patterns)-1]
	return false
}

// guide is fill with the ways to cut of the relaxation tried first: of the stack in
// which one of them is used most. It returns false at once if what is left does
// not even fit in fractions.
func (s *packing) guide(room int64) bool {
	var sources []source
	for _, t := range s.stacks {
		if t.bins > 0 {
			sources = append(sources, source{roll: t.roll, limit: float64(t.bins)})
		}
	}
	prices, basis := s.solveLP(s.left, sources)
	k := s.knapsack(prices, s.left)
	var over bounded
	for i, n := range s.left {
		over.add(n, prices[i])
	}
	for _, t := range s.stacks {
		over.add(-t.bins, k.most(t.length))
	}
	if over.positive() > 0 {
		return false
	}
	basis = slices.DeleteFunc(basis, func(c column) bool { return c.take == nil || slices.Max(c.take) == 0 })
	slices.SortStableFunc(basis, func(a, b column) int { return cmp.Compare(b.value, a.value) })
	i := slices.IndexFunc(s.stacks, func(t stack) bool { return t.bins > 0 && (len(basis) == 0 || t.roll == basis[0].roll) })
	visit := func(take []int64) bool { return s.cut(i, take, true) }
	for _, col := range basis {
		if col.roll == s.stacks[i].roll && visit(col.take) {
			return true
		}
	}
	return s.each(i, room, visit)
}

// each calls visit with ways to cut a roll of the i-th stack until it returns true,
// and reports whether it did. They are all ways that leave no room for another
// piece and waste no more than waste; those with most of the longest come first.
func (s *packing) each(i int, waste int64, visit func(take []int64) bool) bool {
	take := make([]int64, len(s.lengths))
	var walk func(k int, free, least int64) bool
	walk = func(k int, free, least int64) bool {
		if s.tired() {
			return false
		}
		for k < len(take) && (s.left[k] == 0 || s.lengths[k] > free) {
			if s.left[k] > 0 {
				least = s.lengths[k]
			}
			k++
		}
		if k == len(take) {
			s.steps++
			s.Effort -= int64(10 * len(take))
			return free <= waste && free < least && visit(take)
		}
		for n := min(s.left[k], free/s.lengths[k]); n >= 0; n-- {
			if take[k] = n; n < s.left[k] {
				least = s.lengths[k]
			}
			if walk(k+1, free-n*s.lengths[k], least) {
				return true
			}
		}
		return false
	}
	return walk(0, s.stacks[i].length, math.MaxInt64)
}

// key names the state of the search.
func (s *packing) key() string {
	b := make([]byte, 0, 64)
	for _, t := range s.stacks {
		b = append(b, byte(t.bins), byte(t.bins>>8), byte(t.bins>>16))
	}
	for _, n := range s.left {
		b = append(b, byte(n), byte(n>>8))
	}
	return string(b)
}

// A column is a variable of the relaxation: a pattern if take is set, else a slack
// or a piece that is not cut.
type column struct {
	row   int     // of the limit of the rolls, or of the slack
	roll  int     // of a pattern
	take  []int64 // of a pattern
	slack float64 // 1 or -1
	cost  float64
	value float64 // in the basis
}

// A source is rolls of one kind in the relaxation.
type source struct {
	roll  int
	limit float64 // how many
	cost  float64 // of one
}

// relax solves the relaxation of b and fills in its bound and packs.
func (c *Cutter) relax(b *branch) {
	// The packs up to b.lo are bought in any case, those from there to b.hi are not.
	var sources []source
	extra := 0 // sources[:extra] are the packs up to b.lo
	for i, r := range c.Rolls {
		if b.lo[i] > 0 {
			sources = append(sources, source{roll: i, limit: float64(b.lo[i] * r.Strands)})
		}
	}
	extra = len(sources)
	for i, r := range c.Rolls {
		if b.hi[i] > b.lo[i] {
			sources = append(sources, source{roll: i, limit: float64((b.hi[i] - b.lo[i]) * r.Strands), cost: float64(c.weight[i]) / float64(r.Strands)})
		}
	}
	prices, basis := c.solveLP(c.demand, sources)
	b.packs = make([]float64, len(c.Rolls))
	for i, lo := range b.lo {
		b.packs[i] = float64(lo)
	}
	for _, col := range basis {
		if col.take != nil && col.row-len(c.lengths) >= extra {
			b.packs[col.roll] += col.value / float64(c.Rolls[col.roll].Strands)
		}
	}
	b.bound = c.bound(b, prices)
}

// solveLP finds the least cost to cut at least the demand in fractions of rolls,
// each kind of them within its limit, by the revised simplex method. Pieces that
// are not cut cost more than any roll. It returns whole prices of the pieces, and
// the basis.
func (c *Cutter) solveLP(demand []int64, sources []source) (prices []int64, basis []column) {
	m := len(c.lengths)
	rows := m + len(sources)
	heavy := 8 * float64(slices.Max(c.weight)+1)
	tolerance := float64(1e-9 * heavy)
	inverse := make([][]float64, rows)
	basis = make([]column, rows)
	for i := range rows {
		inverse[i] = make([]float64, rows)
		inverse[i][i] = 1
		if basis[i].row = i; i < m {
			basis[i].cost, basis[i].value = heavy, float64(demand[i])
		} else {
			basis[i].value = sources[i-m].limit
		}
	}
	prices = make([]int64, m)
	dual := make([]float64, rows)
	in := make([]float64, rows)
	for range maxSimplex {
		clear(dual)
		for i := range rows {
			if basis[i].cost == 0 {
				continue
			}
			for j, x := range inverse[i] {
				dual[j] += float64(basis[i].cost * x)
			}
		}
		var enter column
		gain := tolerance
		for i, y := range dual {
			if i < m {
				prices[i] = int64(max(0, y) * float64(c.scale))
				if -y > gain {
					enter, gain = column{row: i, slack: -1}, -y
				}
			} else if y > gain {
				enter, gain = column{row: i, slack: 1}, y
			}
		}
		k := c.knapsack(prices, demand)
		for i, src := range sources {
			worth := k.entries[k.at(c.Rolls[src.roll].Length)].worth
			if g := float64(worth)/float64(c.scale) + dual[m+i] - src.cost; g > gain {
				enter, gain = column{row: m + i, roll: src.roll, cost: src.cost, take: k.take(c.Rolls[src.roll].Length)}, g
			}
		}
		c.Effort -= int64(2 * rows * rows)
		if gain == tolerance || c.Effort < 0 {
			break
		}
		// The entering column in terms of the basis, and the row that it leaves by.
		out := -1
		for i, row := range inverse {
			in[i] = float64(enter.slack * row[enter.row])
			if enter.take != nil {
				in[i] = row[enter.row]
				for j, n := range enter.take {
					in[i] += float64(row[j] * float64(n))
				}
			}
			if in[i] > 1e-9 && (out < 0 || basis[i].value/in[i] < enter.value) {
				out, enter.value = i, basis[i].value/in[i]
			}
		}
		if out < 0 {
			break
		}
		for i, row := range inverse {
			if i == out || in[i] == 0 {
				continue
			}
			basis[i].value = max(0, basis[i].value-float64(enter.value*in[i]))
			f := in[i] / in[out]
			for j, x := range inverse[out] {
				row[j] -= float64(f * x)
			}
		}
		for j := range rows {
			inverse[out][j] /= in[out]
		}
		basis[out] = enter
	}
	return prices, basis
}

// bound returns the weight below which there is no cutting in b, from any prices.
func (c *Cutter) bound(b *branch, prices []int64) int64 {
	k := c.knapsack(prices, c.demand)
	var sum bounded
	for i, d := range c.demand {
		sum.add(d, prices[i])
	}
	for i, r := range c.Rolls {
		reduced := c.scale*c.weight[i] - r.Strands*k.most(r.Length)
		if reduced < 0 {
			sum.add(b.hi[i], reduced)
		} else {
			sum.add(b.lo[i], reduced)
		}
	}
	return (sum.positive() + c.scale - 1) / c.scale
}

// A bounded is a sum of products that knows if it may have overflowed.
type bounded struct {
	sum  int64
	size float64
}

func (b *bounded) add(n, x int64) {
	b.size += float64(float64(n) * math.Abs(float64(x)))
	b.sum += n * x
}

// positive returns the sum, or 0 if it is negative or too large to be sure of.
func (b *bounded) positive() int64 {
	if b.size > 4*maxWeighing {
		return 0
	}
	return max(0, b.sum)
}

// A knapsack is what pieces a roll can hold at given prices, for every length of
// roll: entries of rising length and worth, none of them bettered by a shorter.
type knapsack struct {
	*Cutter
	prices  []int64
	entries []entry
	list    []int32 // indices of entries
	spare   []int32 // room for the next list
	full    bool    // the list was cut short
}

// An entry is a lot of pieces of one length, on top of another entry.
type entry struct {
	length, worth int64
	below         int32
	kind          int32
	lot           int64
}

// knapsack builds the list up to the longest roll, for no more pieces than the demand.
// It stands until the next one is built.
func (c *Cutter) knapsack(prices, demand []int64) *knapsack {
	k := &c.sack
	*k = knapsack{Cutter: c, prices: prices, entries: append(k.entries[:0], entry{}), list: append(k.list[:0], 0), spare: k.spare}
	longest := int64(0)
	for _, r := range c.Rolls {
		longest = max(longest, r.Length)
	}
	for kind, price := range prices {
		if price == 0 {
			continue
		}
		length := c.lengths[kind]
		rest := min(demand[kind], longest/length)
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
	list := k.spare[:0]
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
	k.list, k.spare = list, k.list
	k.Effort -= int64(10 * len(list))
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

// take returns the pieces of most worth for a roll of the given length.
func (k *knapsack) take(length int64) []int64 {
	take := make([]int64, len(k.lengths))
	for i := k.at(length); i > 0; i = k.entries[i].below {
		take[k.entries[i].kind] += k.entries[i].lot
	}
	return take
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
