package shopping

import (
	"cmp"
	"container/heap"
	"errors"
	"slices"
	"sort"
	"strconv"

	"example.com/fircone/internal/cover"
	"example.com/fircone/units"
)

// String returns "picks, mantel: 8", or "ornaments: 5 to 9" if the number is open.
func (n Need) String() string {
	if least, most := n.open(); n.Quantity.Length == 0 && most != least {
		return n.Item.String() + ": " + n.span()
	}
	return n.Item.String() + ": " + n.Quantity.String()
}

// span returns "5 to 9".
func (n Need) span() string {
	least, most := n.open()
	return strconv.FormatInt(least, 10) + " to " + strconv.FormatInt(most, 10)
}

// Bounds of the search for the fullest tree.
const (
	maxOpen = 1000      // open needs
	maxSpan = 1_000_000 // counts of all open needs together
	exactly = 100       // open needs of which the fullest is found exactly

	maxTries = 12 // of how much of the budget is for the goods
)

// Fullest returns the fullest and most even list that s.Budget allows. With n pieces of an
// open item in all rooms its fullness is
//
//	(n - least) / (most - least)
//
// from 0 to 1. Of all lists within the budget it is one whose least full item is as full as
// can be; among these, one whose next least full item is as full as can be; and so on (the
// leximin order); of equal fullness, one of the least cost. Each room has its least, and the
// rest in proportion to its most - least, by largest remainder. Needs that are not open are
// bought in any case. The Basis of an open need says what was chosen: "8 of 5 to 9".
//
// The answer is exact for up to 100 items, except with several stores or items bought together:
// items that share a pack rise together, in at most 24 steps; then each of the 24 least full takes
// whatever adds no cost. Twelve tries find how much deliveries and tax leave for goods.
//
// A budget too small for the least of everything first buys base garland and its hooks, if it can,
// and then part of the rest in the same way. Lengths and hooks are all or nothing; owned lengths
// hang anyway. Least is the budget that would do. Substitutes come last, and only where they cost
// no more than is left.
//
// Of more than 100 items, the least full is as full as can be, and as few as can be stay there; the
// money that is left goes to the least full in turn. At most 1,000 items may be open, by 1,000,000
// pieces in all (else ErrLimit). For the least cost at some fullness, plan least + ⌈fullness ·
// (most - least)⌉ of each and call [Shop.List].
//
// Source: the leximin order: A. Sen, Collective Choice and Social Welfare, 1970 (from
// memory).
func (s Shop) Fullest(needs []Need) (List, error) {
	c := newChecker("Shop.Fullest")
	f, err := s.filling(c, needs)
	if err != nil {
		return List{}, err
	}
	budget, err := c.money("/budget", s.Budget, maxBudget)
	if err != nil {
		return List{}, err
	}
	// What the fewest cost.
	fewest, err := s.list(c, f.wishes(f.least(), true))
	if err != nil {
		return List{}, err
	}
	poor := fewest.Total.GreaterThan(s.Budget)
	best, err := f.within(c, budget, fewest, poor)
	best.Least = fewest.Total
	return best, err
}

// within returns the fullest list found whose total, deliveries and tax included, is within the budget.
func (f *openNeeds) within(c *checker, budget int64, fewest List, poor bool) (List, error) {
	best := fewest
	// So much money for goods is known to do, and so much not to.
	enough, over := int64(-1), budget+1
	if !poor {
		enough = fewest.goods()
	}
	money := budget
	for try := range maxTries {
		if try == maxTries-1 && enough < 0 {
			money = 0 // what costs nothing
		}
		l, err := f.fullest(c, money, fewest, poor)
		if try > 0 && enough >= 0 && errors.Is(err, units.ErrLimit) {
			break // what was found will do
		}
		if err != nil {
			return List{}, err
		}
		more := l.Total.Sub(f.shop.Budget)
		if more.Sign() > 0 {
			over = min(money, l.goods()) // as much would buy the same
			// Deliveries and tax: so much less for the goods.
			money -= price(more.RoundUp(places))
		} else {
			best, enough = l, money
		}
		if over-enough <= 1 {
			break
		}
		if money <= enough || money >= over {
			money = enough + (over-enough)/2
		}
	}
	return best, nil
}

// An openLine is a line and the pieces that will do; least is most if it is not open.
type openLine struct {
	*line
	least, most int64
}

// An openNeeds is needs, some of which are open.
type openNeeds struct {
	shop  Shop
	all   []wish
	lines []openLine
}

// filling checks s and needs, and finds what is open.
func (s Shop) filling(c *checker, needs []Need) (*openNeeds, error) {
	if err := c.shop(s); err != nil {
		return nil, err
	}
	if err := c.needs(needs); err != nil {
		return nil, err
	}
	f := &openNeeds{shop: s, all: wishes(needs)}
	counts, open := int64(0), 0
	for _, l := range lines(f.all) {
		o := openLine{line: l}
		for _, w := range l.wishes {
			if w.Quantity.Length == 0 {
				o.least += w.least
				o.most += w.top()
			}
		}
		if all := o.most + int64(spares(int(min(o.most, maxPieces)), s.Spares[l.like.Item.Kind])); all > maxPieces {
			return nil, c.fail(units.ErrRange, "needs", l.like.Item.String()+" in all: "+strconv.FormatInt(all, 10), "0 to "+strconv.Itoa(maxPieces)+" pieces")
		}
		if o.most != o.least {
			open++
			counts += o.most - o.least
		}
		f.lines = append(f.lines, o)
	}
	if open > maxOpen {
		return nil, c.fail(units.ErrLimit, "needs", strconv.Itoa(open), "at most "+strconv.Itoa(maxOpen)+" needs that are open")
	}
	if counts > maxSpan {
		return nil, c.fail(units.ErrLimit, "needs", strconv.FormatInt(counts, 10), "at most "+strconv.Itoa(maxSpan)+" pieces open in all")
	}
	return f, nil
}

// open returns the fewest and the most pieces that will do.
func (n Need) open() (least, most int64) {
	least = int64(n.Quantity.Pieces)
	if n.Open != (units.Range[int]{}) {
		least = int64(n.Open.Min)
	}
	return least, int64(max(n.Quantity.Pieces, n.Open.Max))
}

// top returns the most pieces that will do.
func (w wish) top() int64 { return int64(max(w.Quantity.Pieces, w.Open.Max)) }

// least returns the fewest pieces of each line.
func (f *openNeeds) least() []int64 {
	counts := make([]int64, len(f.lines))
	for k, o := range f.lines {
		counts[k] = o.least
	}
	return counts
}

// wishes returns the needs with so many pieces of each line; of a line of lengths, all for
// a count of 0 and none for -1. Without reasons the Basis stays as it is.
func (f *openNeeds) wishes(counts []int64, reasons bool) []wish {
	chosen := slices.Clone(f.all)
	for k, o := range f.lines {
		n := counts[k]
		if n == o.least && n == o.most {
			continue // as it is
		}
		widths, least := make([]int, len(o.wishes)), make([]int, len(o.wishes))
		for i, w := range o.wishes {
			widths[i], least[i] = int(w.top()-w.least), int(w.least)
		}
		base, more := share(n, least), share(n-o.least, widths)
		for i, given := range o.wishes {
			w := &chosen[given.at]
			need := *w.Need
			w.Need = &need
			if w.Quantity.Length != 0 {
				if n == -1 {
					w.Quantity = Quantity{}
				}
				continue
			}
			count := int64(base[i] + more[i])
			if widths[i] != 0 && reasons {
				basis := strconv.FormatInt(count, 10) + " of " + w.span()
				if w.Basis != "" {
					basis = w.Basis + "; " + basis
				}
				w.Basis = basis
			}
			w.Quantity.Pieces = int(count)
			w.least = min(w.least, count)
			if w.Open != (units.Range[int]{}) {
				w.Open = units.Range[int]{Min: int(w.least), Max: int(count)}
			}
			if a := w.assortment(); count < int64(a.types)*a.least {
				w.Types, w.Each = 0, units.Range[int]{}
			}
		}
	}
	return chosen
}

// maxSteps is how many steps lines that are bought together rise in.
const maxSteps = 24

// fullest returns the fullest list for so much money: above the fewest of everything, or, if
// poor, below it.
func (f *openNeeds) fullest(c *checker, money int64, fewest List, poor bool) (List, error) {
	from, to := f.least(), make([]int64, len(f.lines))
	for k, o := range f.lines {
		if to[k] = o.most; poor {
			to[k], from[k] = from[k], 0
			if from[k] == to[k] {
				from[k] = -1 // a length, or nothing
			}
		}
	}
	groups, err := f.shop.groups(c, f.wishes(to, false))
	if err != nil {
		return List{}, err
	}
	index := map[int]int{} // of the line with this first wish
	for k, o := range f.lines {
		index[o.wishes[0].at] = k
	}
	fill := filling{budget: money}
	var members [][]int
	var vectors [][][]int64 // of each group, the counts at each step
	if !poor {
		fill.budget -= fewest.goods()
	}
	for _, g := range groups {
		var some []int
		rises := false
		for _, l := range g.lines {
			k := index[l.wishes[0].at]
			some = append(some, k)
			rises = rises || from[k] != to[k]
		}
		if !rises {
			continue
		}
		steps, counts, err := f.steps(c, g, some, from, to, poor)
		if err != nil {
			return List{}, err
		}
		if !poor {
			fill.budget += steps[0].cost
		}
		fill.items, members, vectors = append(fill.items, steps), append(members, some), append(vectors, counts)
	}
	counts := from
	need := int64(0)
	for _, steps := range fill.items {
		need += steps[0].cost
	}
	if poor {
		for _, kind := range [...]Kind{BaseGarland, Hook} {
			need = fill.first(need, func(i int) bool {
				return !slices.ContainsFunc(members[i], func(k int) bool { return f.lines[k].like.Item.Kind != kind })
			})
		}
	}
	if need <= fill.budget && len(fill.items) != 0 {
		for i, n := range fill.fill() {
			for k, v := range vectors[i][n] {
				counts[members[i][k]] = v
			}
		}
	}
	for _, some := range members {
		if len(some) > 1 {
			f.top(c, some, counts, to, poor)
		}
	}
	chosen := f.shop.withSpares(f.wishes(counts, true))
	var dear func(List) bool
	if poor { // substitutes come last, with what money is left
		dear = func(l List) bool { return l.Total.GreaterThan(f.shop.Budget) }
	}
	l, err := f.shop.replaced(c, chosen, dear)
	if err == nil && poor {
		err = f.owned(c, &l, counts)
	}
	if err != nil || !poor {
		return l.List, err
	}
	// What was planned is the fewest, whatever the money buys of it.
	for i, w := range f.wishes(f.least(), true) {
		l.share(i).Need = *w.Need
	}
	return l.List, nil
}

// owned hangs what is owned of the lengths that no money is spent on. What another purchase has is in its list.
func (f *openNeeds) owned(c *checker, l *located, counts []int64) error {
	own := Shop{Joins: f.shop.Joins}
	for _, o := range f.shop.Owned {
		taken := func(p Purchase) bool {
			return slices.ContainsFunc(p.Owned, func(q Lot) bool { return q.Item == o.Item })
		}
		if o.Quantity.Length != 0 && !slices.ContainsFunc(l.Purchases, taken) {
			own.Owned = append(own.Owned, o)
		}
	}
	for k, o := range f.lines {
		if counts[k] >= 0 || o.wishes[0].Quantity.Length == 0 || own.Owned == nil {
			continue
		}
		var some []wish
		for _, w := range o.wishes {
			some = append(some, *w)
		}
		found, err := own.once(c, some)
		if err != nil {
			return err
		}
		p := found.Purchases[0]
		own.Owned = slices.DeleteFunc(own.Owned, func(o Lot) bool {
			return slices.ContainsFunc(p.Owned, func(q Lot) bool { return q.Item == o.Item })
		})
		l.Purchases[l.at[o.wishes[0].at].purchase] = p
	}
	return nil
}

// goods returns what a list costs without deliveries and tax.
func (l List) goods() (sum int64) {
	for _, p := range l.Purchases {
		sum += goods(p)
	}
	return sum
}

// goods returns what a purchase costs without tax.
func goods(p Purchase) int64 {
	sum := int64(0)
	for _, b := range p.Buys {
		sum += price(b.Cost)
	}
	return sum
}

// steps returns the numbers worth choosing of the lines of a group, from the lowest on, with
// what they cost, and the counts of the lines at each.
func (f *openNeeds) steps(c *checker, g group, some []int, from, to []int64, poor bool) (steps []step, counts [][]int64, err error) {
	add := func(count int, of, all, cost int64) {
		if k := len(steps); k > 0 && steps[k-1].cost >= cost {
			steps = steps[:k-1]
		}
		steps = append(steps, step{count: count, level: level{of, max(1, all)}, cost: cost})
	}
	l := g.lines[0]
	if g.long == nil && len(g.lines) == 1 && l.assort() == (assortment{}) {
		k := some[0]
		stock, err := f.shop.stock(c, l, demand{pieces: to[k]}, nil)
		if err != nil {
			return nil, nil, err
		}
		if !stock.coupled(l) {
			owned, packs := stock.packs(nil)
			percent := f.shop.Spares[l.like.Item.Kind]
			all := func(n int64) int64 { return n + int64(spares(int(n), percent)) }
			costs, err := c.costs(l.like.Item, all(to[k])-owned, packs)
			if err != nil {
				return nil, nil, err
			}
			low := max(0, from[k])
			numbers := make([]int64, max(0, to[k]-low+1))
			for i := range numbers {
				n := low + int64(i)
				numbers[i] = n
				counts = append(counts, numbers[i:i+1])
				cost := costs(all(n) - owned)
				if cost == cover.Never {
					if n > low && !poor {
						break
					}
					cost = costs(reach(packs))
				}
				add(len(counts)-1, n-low, to[k]-low, cost)
			}
			return steps, counts, nil
		}
	}
	span := int64(1)
	for _, k := range some {
		span = max(span, to[k]-from[k])
	}
	span = min(span, maxSteps)
	share := c.work
	for n := range span + 1 {
		at := slices.Clone(to)
		var now []int64
		for _, k := range some {
			at[k] = from[k] + (to[k]-from[k])*n/span
			now = append(now, at[k])
		}
		c.work = share / (span + 1)
		left := share - c.work
		cost, short, err := f.cost(c, some, at)
		share = left + max(0, c.work)
		if n > 0 && errors.Is(err, units.ErrLimit) {
			break // the search gets no further
		}
		if err != nil {
			return nil, nil, err
		}
		if n > 0 && short && !poor {
			break // the shelves go no further
		}
		counts = append(counts, now)
		add(int(n), n, span, cost)
	}
	c.work = share
	return steps, counts, nil
}

// cost returns what some lines cost at these counts, and whether the shelves are short of them.
func (f *openNeeds) cost(c *checker, some []int, counts []int64) (cost int64, short bool, err error) {
	chosen := f.wishes(counts, false)
	var own []wish
	for _, k := range some {
		for _, w := range f.lines[k].wishes {
			own = append(own, chosen[w.at])
		}
	}
	l, err := f.shop.once(c, f.shop.withSpares(own))
	if err != nil {
		return 0, false, err
	}
	for _, p := range l.Purchases {
		cost += goods(p)
	}
	return cost, missing(l.List)[1] > 0, nil
}

// top raises the counts of lines that are bought together as far as they cost no more, so that nothing stays in the box that
// one of them could have: all alike, and then each, the least full first.
func (f *openNeeds) top(c *checker, some []int, counts, to []int64, poor bool) {
	share := c.work
	try := func(at []int64) (int64, bool) {
		c.work = share / 16
		left := share - c.work
		cost, short, err := f.cost(c, some, at)
		share = left + max(0, c.work)
		return cost, err == nil && (poor || !short)
	}
	defer func() { c.work = share }()
	most, ok := try(counts)
	if !ok {
		return
	}
	raise := func(lines []int) {
		span := int64(0)
		for _, k := range lines {
			span = max(span, to[k]-counts[k])
		}
		raised := func(n int64) []int64 {
			at := slices.Clone(counts)
			for _, k := range lines {
				at[k] += (to[k] - counts[k]) * n / span
			}
			return at
		}
		lo := int64(0)
		for hi := span; lo < hi; {
			mid := lo + (hi-lo+1)/2
			if cost, ok := try(raised(mid)); ok && cost <= most {
				lo = mid
			} else {
				hi = mid - 1
			}
		}
		if lo > 0 {
			copy(counts, raised(lo))
		}
	}
	raise(some)
	order := slices.Clone(some)
	slices.SortStableFunc(order, func(a, b int) int {
		return level{counts[a], max(1, to[a])}.compare(level{counts[b], max(1, to[b])})
	})
	for _, k := range order[:min(len(order), maxSteps)] {
		raise([]int{k})
	}
}

// reach returns what all packs there are come to.
func reach(packs []cover.Pack) int64 {
	sum := int64(0)
	for _, p := range packs {
		sum += p.Size * min(p.Limit, maxPieces)
	}
	return sum
}

// A step is a count of an item worth choosing: one more would cost more.
type step struct {
	count int
	level level
	cost  int64
}

// A level is the fullness of an item, of/all, with all at least 1.
type level struct{ of, all int64 }

func (a level) compare(b level) int { return cmp.Compare(a.of*b.all, b.of*a.all) }

// A filling finds the counts of the leximin order.
//
// Sorted from the least full on, one outcome is better than another if the first
// level in which they differ is higher. So the lowest level v is made as high as
// the budget allows, then as few items as possible are left at v, then the rest
// are made as full as the budget allows, and so on. At each point some slots are
// given out, so many at each level up to v, and the other items are higher. The
// cheapest way to do that is an assignment of the slots to items, since an item in
// no slot takes its cheapest count above v.
type filling struct {
	items  [][]step
	budget int64
}

// first leaves some items no step but their last, if all of them are served by it and the budget carries that, or else
// but their first, which is what is owned. It returns what the first steps of all items cost then.
func (f *filling) first(need int64, of func(i int) bool) int64 {
	for i, steps := range f.items {
		if !of(i) {
			continue
		}
		last := steps[len(steps)-1]
		if more := need - steps[0].cost + last.cost; more <= f.budget && last.level.of == last.level.all {
			f.items[i], need = []step{last}, more
		} else {
			f.items[i] = steps[:1]
		}
	}
	return need
}

// fill returns the count of each item. The first step of each must be within the budget.
func (f *filling) fill() []int {
	if len(f.items) > exactly {
		return f.rise()
	}
	var levels []level
	for _, steps := range f.items {
		for _, s := range steps {
			levels = append(levels, s.level)
		}
	}
	slices.SortFunc(levels, level.compare)
	levels = slices.CompactFunc(levels, func(a, b level) bool { return a.compare(b) == 0 })

	var slots []level
	at := 0 // the level from which the other items are chosen
	for len(slots) < len(f.items) {
		// The highest level that all items without a slot can have.
		at += sort.Search(len(levels)-at, func(k int) bool {
			cost, _ := f.assign(slots, levels[at+k:])
			return cost > f.budget
		}) - 1
		// The fewest of them that have to stay there.
		for {
			slots = append(slots, levels[at])
			if cost, _ := f.assign(slots, levels[at+1:]); cost <= f.budget {
				break
			}
		}
	}
	_, steps := f.assign(slots, nil)
	counts := make([]int, len(steps))
	for i, s := range steps {
		counts[i] = s.count
	}
	return counts
}

// rise is fill for many items: the least full one rises a step, and of those that are as full the
// one whose step costs least, while there is money for it.
func (f *filling) rise() []int {
	r := rising{items: f.items, at: make([]int, len(f.items))}
	left := f.budget
	for i, steps := range f.items {
		left -= steps[0].cost
		if len(steps) > 1 {
			heap.Push(&r, i)
		}
	}
	for len(r.open) != 0 {
		i := r.open[0]
		if more := r.more(i); more <= left {
			left -= more
			if r.at[i]++; r.at[i]+1 < len(f.items[i]) {
				heap.Fix(&r, 0)
				continue
			}
		}
		heap.Pop(&r)
	}
	counts := make([]int, len(f.items))
	for i, steps := range f.items {
		counts[i] = steps[r.at[i]].count
	}
	return counts
}

// A rising is a heap of the items that may rise.
type rising struct {
	items [][]step
	at    []int // the step of each item
	open  []int
}

// more returns what the next step of an item costs.
func (r *rising) more(i int) int64 { return r.items[i][r.at[i]+1].cost - r.items[i][r.at[i]].cost }

func (r *rising) Len() int      { return len(r.open) }
func (r *rising) Swap(i, j int) { r.open[i], r.open[j] = r.open[j], r.open[i] }
func (r *rising) Push(x any)    { r.open = append(r.open, x.(int)) }
func (r *rising) Pop() any {
	last := r.open[len(r.open)-1]
	r.open = r.open[:len(r.open)-1]
	return last
}

func (r *rising) Less(i, j int) bool {
	a, b := r.open[i], r.open[j]
	return cmp.Or(r.items[a][r.at[a]].level.compare(r.items[b][r.at[b]].level), cmp.Compare(r.more(a), r.more(b)), cmp.Compare(a, b)) < 0
}

// assign returns the least cost at which each item either has one of the slots,
// which are levels, or is at one of the levels above or higher; and the step of
// each. The cost is over the budget if there is no such way.
func (f *filling) assign(slots, above []level) (int64, []step) {
	over := f.budget + 1
	chosen := make([]step, len(f.items))
	total := int64(0)
	for i, steps := range f.items {
		chosen[i].cost = over
		if len(above) > 0 {
			if k, _ := slices.BinarySearchFunc(steps, above[0], func(s step, l level) int { return s.level.compare(l) }); k < len(steps) {
				chosen[i] = steps[k]
				chosen[i].cost = min(over, steps[k].cost)
			}
		}
	}
	// What each slot saves with each item.
	n := len(f.items)
	saving, steps := make([][]int64, len(slots)), make([][]step, len(slots))
	savings, all := make([]int64, len(slots)*n), make([]step, len(slots)*n)
	for j, slot := range slots {
		saving[j], steps[j] = savings[j*n:][:n], all[j*n:][:n]
		for i := range f.items {
			k, ok := slices.BinarySearchFunc(f.items[i], slot, func(s step, l level) int { return s.level.compare(l) })
			steps[j][i] = chosen[i]
			if ok && f.items[i][k].cost < chosen[i].cost {
				steps[j][i] = f.items[i][k]
			}
			saving[j][i] = chosen[i].cost - steps[j][i].cost
		}
	}
	for j, i := range match(saving) {
		chosen[i] = steps[j][i]
	}
	for _, s := range chosen {
		total += s.cost
	}
	return total, chosen
}

// match returns for each row of a matrix a column of its own such that the sum of
// the entries is the greatest. There must be no more rows than columns. It is the
// Hungarian method, with potentials and shortest augmenting paths.
func match(gain [][]int64) []int {
	rows := len(gain)
	if rows == 0 {
		return nil
	}
	columns := len(gain[0])
	// Row and column 0 are beside the matrix; row[j] is the row that has column j.
	u, v := make([]int64, rows+1), make([]int64, columns+1)
	row, from := make([]int, columns+1), make([]int, columns+1)
	least, done := make([]int64, columns+1), make([]bool, columns+1)
	for i := 1; i <= rows; i++ {
		row[0] = i
		for j := range least {
			least[j], done[j] = cover.Never, false
		}
		j := 0
		for row[j] != 0 {
			done[j] = true
			delta, next := int64(cover.Never), 0
			for k := 1; k <= columns; k++ {
				if done[k] {
					continue
				}
				if d := -gain[row[j]-1][k-1] - u[row[j]] - v[k]; d < least[k] {
					least[k], from[k] = d, j
				}
				if least[k] < delta {
					delta, next = least[k], k
				}
			}
			for k := range done {
				if done[k] {
					u[row[k]] += delta
					v[k] -= delta
				} else {
					least[k] -= delta
				}
			}
			j = next
		}
		for j != 0 {
			row[j] = row[from[j]]
			j = from[j]
		}
	}
	columnOf := make([]int, rows)
	for j := 1; j <= columns; j++ {
		if row[j] != 0 {
			columnOf[row[j]-1] = j - 1
		}
	}
	return columnOf
}
