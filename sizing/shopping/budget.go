package shopping

import (
	"cmp"
	"slices"
	"sort"
	"strconv"

	"example.com/fircone/internal/cover"
	"example.com/fircone/units"
)

// String returns "picks, 27", or "ornaments, 5 to 9" if the number is open.
func (n Need) String() string {
	if !n.open() {
		return n.Item.String() + ", " + n.Quantity.String()
	}
	return n.Item.String() + ", " + n.span()
}

// span returns "5 to 9".
func (n Need) span() string {
	return strconv.Itoa(n.Quantity.Pieces) + " to " + strconv.Itoa(n.Most)
}

// open reports whether n leaves anything to choose.
func (n Need) open() bool { return n.Most != 0 && n.Most != n.Quantity.Pieces }

// Bounds of the search for the fullest tree.
const (
	maxOpen = 100       // open needs
	maxSpan = 1_000_000 // counts of all open needs together
)

// Fullest returns the list that makes the fullest tree for s.Budget, evenly. With
// n pieces of an item that is open between the fewest and the most,
// its fullness is
//
//	(n - fewest) / (most - fewest)
//
// from 0 to 1. Of all lists that cost no more than the budget, it is one whose
// least full item is as full as can be; among these, one whose next least full
// item is as full as can be; and so on to the fullest (the leximin order). Of
// several with equal fullness in this sense, it is one of the least cost.
// The needs that are not open are bought in any case. The Basis of an
// open need says what was chosen, as in "8 of 5 to 9".
//
// The answer is exact. A fuller item does not always cost more: a pack that is
// opened is used up to the most.
//
// An item that is open may appear only once, at most 100 are open, and their
// counts, from fewest to most, are at most 1,000,000 together.
// If even the fewest cost more than the budget, the error wraps [units.ErrBudget] and
// says what budget would do; so it does for a budget of zero, unless what is owned will
// do or the offers are free. The other errors are those of [Shop.Cheapest].
//
// Source: the leximin order is that of A. Sen, Collective Choice and Social
// Welfare, 1970 (from memory). Which items are at each level is an assignment
// problem: H. W. Kuhn, The Hungarian method, Naval Research Logistics Quarterly
// 2 (1955) 83-97 (from memory).
func (s Shop) Fullest(needs []Need) (List, error) {
	c := newChecker("Shop.Fullest")
	open, fixed, err := s.choices(c, needs)
	if err != nil {
		return List{}, err
	}
	budget, err := c.money("/budget", s.Budget, maxBudget)
	if err != nil {
		return List{}, err
	}
	l, err := s.list(c, fixed)
	if err != nil {
		return List{}, err
	}
	spent := price(l.Total)
	f := filling{}
	least := spent
	for _, i := range open {
		steps, fewest, err := s.steps(c, needs[i])
		if err != nil {
			return List{}, err
		}
		f.items = append(f.items, steps)
		least += fewest
	}
	if least > budget {
		return List{}, c.fail(units.ErrBudget, "/budget", money(s.Budget), "at least "+money(amount(least))+" for the fewest")
	}
	f.budget = budget - spent
	counts := f.fill()
	return s.chosen(c, needs, open, counts)
}

// Filled returns the list of the least cost that makes every open item at least
// so full, in percent: of an item that is open from the fewest to the most it has
//
//	fewest + ⌈percent/100 · (most - fewest)⌉
//
// pieces, with 0 ≤ percent ≤ 100. It leaves s.Budget alone. Fullness, the needs
// and the errors are as for [Shop.Fullest].
func (s Shop) Filled(needs []Need, percent int) (List, error) {
	c := newChecker("Shop.Filled")
	open, _, err := s.choices(c, needs)
	if err != nil {
		return List{}, err
	}
	if percent < 0 || percent > 100 {
		return List{}, c.fail(units.ErrRange, "percent", strconv.Itoa(percent), "0 to 100")
	}
	counts := make([]int, len(open))
	for k, i := range open {
		fewest := needs[i].Quantity.Pieces
		counts[k] = fewest + (percent*(needs[i].Most-fewest)+99)/100
	}
	return s.chosen(c, needs, open, counts)
}

// needs checks s and needs. It returns the indices of the open ones, and the
// needs of the others.
func (s Shop) choices(c *checker, needs []Need) (open []int, fixed []Need, err error) {
	if err := c.shop(s); err != nil {
		return nil, nil, err
	}
	items := make(map[Item]int)
	for _, need := range needs {
		items[need.Item]++
	}
	if err := c.needs(needs); err != nil {
		return nil, nil, err
	}
	counts := int64(0)
	for i, need := range needs {
		if !need.open() {
			fixed = append(fixed, need)
			continue
		}
		q := need.Quantity
		switch {
		case q.Length != 0:
			return nil, nil, c.fail(units.ErrFit, at("needs", i, "quantity"), q.String(), "pieces, or 0 for the most")
		case need.Most < q.Pieces || need.Most > maxPieces:
			return nil, nil, c.fail(units.ErrRange, at("needs", i, "most"), strconv.Itoa(need.Most), "0, or "+q.String()+" to "+strconv.Itoa(maxPieces))
		case items[need.Item] > 1:
			return nil, nil, c.fail(units.ErrDuplicate, at("needs", i, "item"), need.Item.String(), "one need of an item that is open")
		}
		open = append(open, i)
		counts += int64(need.Most - q.Pieces)
	}
	if len(open) > maxOpen {
		return nil, nil, c.fail(units.ErrLimit, "needs", strconv.Itoa(len(open)), "at most "+strconv.Itoa(maxOpen)+" of them open")
	}
	if counts > maxSpan {
		return nil, nil, c.fail(units.ErrLimit, "needs", strconv.FormatInt(counts, 10), "at most "+strconv.Itoa(maxSpan)+" pieces open in all")
	}
	return open, fixed, nil
}

// chosen returns the list for needs with the counts of the open ones.
func (s Shop) chosen(c *checker, needs []Need, open, counts []int) (List, error) {
	chosen := slices.Clone(needs)
	for k, i := range open {
		chosen[i].Quantity.Pieces = counts[k]
		basis := strconv.Itoa(counts[k]) + " of " + needs[i].span()
		if chosen[i].Basis != "" {
			basis = chosen[i].Basis + "; " + basis
		}
		chosen[i].Basis, chosen[i].Most = basis, 0
	}
	return s.list(c, chosen)
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

// steps returns the counts worth choosing of an open need, fewest first, and
// what the fewest cost.
func (s Shop) steps(c *checker, need Need) (steps []step, fewest int64, err error) {
	item, least := need.Item, need.Quantity.Pieces
	stock, err := s.stock(c, item, demand{pieces: int64(need.Most)})
	if err != nil {
		return nil, 0, err
	}
	// This gives an error if even the fewest are not to be had.
	p := Purchase{Item: item}
	if err := p.pack(c, int64(least), stock); err != nil {
		return nil, 0, err
	}
	owned, packs := stock.packs()
	costs, err := c.costs(item, int64(need.Most)-owned, packs)
	if err != nil {
		return nil, 0, err
	}
	for n := least; n <= need.Most; n++ {
		cost := costs(int64(n) - owned)
		if cost == cover.Never {
			break
		}
		if k := len(steps); k > 0 && steps[k-1].cost == cost {
			steps = steps[:k-1]
		}
		steps = append(steps, step{count: n, level: level{int64(n - least), int64(need.Most - least)}, cost: cost})
	}
	return steps, price(p.Cost), nil
}

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

// fill returns the count of each item. The first step of each must be within the budget.
func (f *filling) fill() []int {
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
	saving := make([][]int64, len(slots))
	steps := make([][]step, len(slots))
	for j, slot := range slots {
		saving[j] = make([]int64, len(f.items))
		steps[j] = make([]step, len(f.items))
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
	for i := 1; i <= rows; i++ {
		row[0] = i
		least := make([]int64, columns+1)
		done := make([]bool, columns+1)
		for j := range least {
			least[j] = cover.Never
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
