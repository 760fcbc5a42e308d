package shopping

import (
	"cmp"
	"slices"
	"sort"
	"strconv"

	"example.com/fircone/internal/cover"
	"example.com/fircone/internal/cutting"
	"example.com/fircone/units"
)

// A strand is a number of strands or rolls of one length. Of those that are joined, bar is
// where they are in a layout.
type strand struct {
	n      int64
	length units.Length
	bar    int
}

// strand returns what strands q is.
func (q Quantity) strand() strand { return strand{n: int64(max(1, q.Pieces)), length: q.Length} }

// strands returns the strands that are owned.
func (stock itemStock) strands() []strand {
	var strands []strand
	for _, o := range stock.owned {
		strands = append(strands, o.Quantity.strand())
	}
	return strands
}

// length returns the length of strands laid end to end.
func length(strands []strand) units.Length {
	var sum units.Length
	for _, s := range strands {
		sum += units.Length(s.n) * s.length
	}
	return sum
}

// joined returns how long the strands come to with each join losing overlap.
// A strand that is no longer than the overlap adds nothing and is left out.
func joined(strands []strand, overlap units.Length) units.Length {
	var total units.Length
	for _, s := range strands {
		total += units.Length(s.n) * max(0, s.length-overlap)
	}
	if total == 0 {
		return 0
	}
	return total + overlap // there is one join less than there are strands
}

// rolls returns what stock has to cut from, the owned strands first.
func (stock itemStock) rolls() []cutting.Roll {
	rolls := make([]cutting.Roll, 0, len(stock.owned)+len(stock.offers))
	for _, o := range stock.owned {
		st := o.Quantity.strand()
		rolls = append(rolls, cutting.Roll{Length: int64(st.length), Strands: 1, Limit: st.n, Owned: true})
	}
	for _, o := range stock.offers {
		st := o.pack.strand()
		rolls = append(rolls, cutting.Roll{Length: int64(st.length), Strands: st.n, Bulk: st.n * int64(st.length), Cost: o.each, Limit: o.Shelf.limit()})
	}
	return rolls
}

// joinable returns the offers as packs of strands to join.
func (stock itemStock) joinable() []cover.Pack {
	packs := make([]cover.Pack, len(stock.offers))
	for i, o := range stock.offers {
		st := o.pack.strand()
		size := st.n * int64(st.length-stock.join.Overlap)
		packs[i] = cover.Pack{Size: size, Bulk: size, Cost: o.each, Limit: o.Shelf.limit()}
	}
	return packs
}

// raw returns the offers as packs of so much length.
func (stock itemStock) raw() []cover.Pack {
	packs := make([]cover.Pack, len(stock.offers))
	for i, o := range stock.offers {
		st := o.pack.strand()
		size := st.n * int64(st.length)
		packs[i] = cover.Pack{Size: size, Bulk: size, Cost: o.each, Limit: o.Shelf.limit()}
	}
	return packs
}

// weigh returns the cost, the bulk and the number of packs.
func weigh(counts []int64, packs []cover.Pack) (key [3]int64) {
	for i, n := range counts {
		key[0] += n * packs[i].Cost
		key[1] += n * packs[i].Bulk
		key[2] += n
	}
	return key
}

// A measured is lengths of one item as they are bought and cut.
type measured struct {
	counts []int64 // packs of each offer
	cost   int64
	bound  int64
	gets   []Quantity // of each wish
	cuts   []Cut
	left   []Lot
	short  units.Length // what is missing of all wishes
}

// lengths fills in p for lines of lengths that are served by one item.
func (s Shop) lengths(c *checker, p *Purchase, g *group) error {
	item, stock := g.long.item, g.long.stock
	list := g.lines[0].wishes
	for _, l := range g.lines[1:] {
		list = append(list, l.wishes...)
	}
	if _, err := c.demand(list); err != nil {
		return err
	}
	planned := portions(list)
	best, err := c.dealt(item, planned, stock)
	if err != nil {
		return err
	}
	if slices.ContainsFunc(list, func(w *wish) bool { return w.Slack > 0 }) {
		for i, w := range list {
			planned[i].quantity.Length -= w.Slack
		}
		less, err := c.dealt(item, planned, stock)
		if err != nil {
			return err
		}
		if best.short > 0 || less.cost < best.cost {
			best = less
		}
	}
	for i := range p.Shares {
		share := &p.Shares[i]
		share.add(Lot{item, best.gets[i]})
		share.Gets = best.gets[i]
	}
	p.take(stock.offers, best.counts)
	p.bound(best.bound)
	for _, o := range stock.owned {
		o.Quantity.Pieces = max(1, o.Quantity.Pieces)
		p.Owned = append(p.Owned, o)
	}
	p.Cuts, p.Left = best.cuts, best.left
	return nil
}

// dealt is measure where offers have deals too: it is done at their prices and at the least they
// could come to by the pack, which is a bound, and the better is taken.
func (c *checker) dealt(item Item, list []portion, stock itemStock) (measured, error) {
	best, err := c.measure(item, list, stock)
	if err != nil {
		return measured{}, err
	}
	if !slices.ContainsFunc(stock.offers, func(o stocked) bool { return len(o.Deals) > 0 }) {
		return best, nil
	}
	least := stock
	least.offers = slices.Clone(stock.offers)
	for i := range least.offers {
		o := &least.offers[i]
		for _, d := range o.Deals {
			o.each = min(o.each, price(d.Price)/int64(max(1, d.Packs)))
		}
	}
	other, err := c.measure(item, list, least)
	if err != nil {
		return measured{}, err
	}
	bound := other.bound
	if other.cost < best.cost {
		best = other
	}
	// Whatever is bought comes to a multiple of what all prices are multiples of.
	if common := commonPrice(stock.offers); common > 0 {
		bound = (bound + common - 1) / common * common
	}
	best.bound = min(bound, best.cost)
	return best, nil
}

// commonPrice returns the largest sum of which all prices of offers and deals are multiples, 0 if all are free.
func commonPrice(offers []stocked) (common int64) {
	add := func(price int64) {
		for price != 0 {
			common, price = price, common%price
		}
	}
	for _, o := range offers {
		add(o.each)
		for _, d := range o.Deals {
			add(price(d.Price))
		}
	}
	return common
}

// measure finds the packs for the lengths of wishes at the least cost, and how they are cut.
func (c *checker) measure(item Item, list []portion, stock itemStock) (measured, error) {
	d := sum(list)
	var err error
	m := measured{gets: make([]Quantity, len(list))}
	served := list
	missing := func(l units.Length, n int64) { // n pieces of l are not to be had
		for i := len(served) - 1; i >= 0 && n > 0; i-- {
			if q := &served[i].quantity; q.Length == l && q.Pieces != 0 {
				k := min(n, int64(q.Pieces))
				q.Pieces -= int(k)
				n -= k
				m.short += units.Length(k) * l
				if q.Pieces == 0 {
					*q = Quantity{}
				}
			}
		}
	}
	var cut cutPlan
	var rolls []cutting.Roll // if there are whole pieces
	if len(d.wholes) > 0 {
		rolls = stock.rolls()
		whole, dropped, err := c.wholes(item, d.wholes, stock, rolls)
		if err != nil {
			return measured{}, err
		}
		served = slices.Clone(list)
		for i, n := range dropped {
			missing(d.wholes[i].Length, n)
		}
		d, cut = sum(served), whole
	}
	switch {
	case d.running > 0 && len(d.wholes) == 0:
		var all joining
		all, err = c.join(item, d.runs, stock)
		cut = cutPlan{packs: all.counts, bound: all.bound}
	case d.running > 0:
		cut, err = c.cutAndJoin(item, d, stock, rolls, cut)
	}
	if err != nil {
		return measured{}, err
	}
	short := cut.packs == nil && d.running > 0
	if short {
		// All there is does not do: buy it, and serve the runs in their order.
		cut.packs = make([]int64, len(stock.offers))
		for i, o := range stock.offers {
			cut.packs[i] = min(o.Shelf.limit(), maxPieces)
		}
		if len(d.wholes) > 0 {
			if cut.patterns, _ = c.fit(d.wholes, stock, rolls, cut.packs); cut.patterns == nil {
				return measured{}, c.fail(units.ErrLimit, "needs", item.String(), "fewer pieces, or fewer items in one list")
			}
		}
	}
	m.counts, m.bound = cut.packs, cut.bound
	if m.counts == nil {
		m.counts = make([]int64, len(stock.offers))
	}
	for i, n := range m.counts {
		m.cost += stock.offers[i].cost(n)
	}
	if short {
		m.bound = weigh(m.counts, stock.raw())[0]
	}
	y, got := c.fewest(item, served, d, stock, m.counts, cut.patterns)
	for i, w := range served {
		if q := w.quantity; q.Pieces != 0 && q.Length != 0 {
			m.gets[i] = q
		}
	}
	for i, l := range got {
		if q := served[i].quantity; q.Pieces == 0 {
			m.gets[i].Length = l
			m.short += max(0, q.Length-l)
		}
	}
	m.cuts, m.left = y.finish()
	return m, nil
}

// A cutPlan is how many packs of each offer to buy and how to cut them.
type cutPlan struct {
	packs    []int64
	patterns []cutting.Pattern // rolls as in itemStock.rolls
	bound    int64             // of the cost, in units of 1/10,000
}

// wholes finds the cheapest way to have the whole pieces, and how many of each length are
// not to be had.
func (c *checker) wholes(item Item, wholes []Quantity, stock itemStock, rolls []cutting.Roll) (cut cutPlan, dropped []int64, err error) {
	dropped = make([]int64, len(wholes))
	if len(wholes) == 1 {
		cut, dropped[0], err = c.cutOne(item, wholes[0], stock, rolls)
		return cut, dropped, err
	}
	var lengths, demand []int64
	total := int64(0)
	for _, q := range wholes {
		lengths = append(lengths, int64(q.Length))
		demand = append(demand, int64(q.Pieces))
		total += int64(q.Pieces)
	}
	kinds, some := longer(rolls, lengths[len(lengths)-1])
	if len(some) == 0 {
		return cutPlan{}, demand, nil
	}
	field, value := "needs", item.String()+": "+strconv.FormatInt(total, 10)+" whole pieces of "+strconv.Itoa(len(lengths))+" lengths"
	share := c.work / c.items
	solver, ok := cutting.New(lengths, demand, some, share)
	if !ok {
		return cutPlan{}, nil, c.fail(units.ErrLimit, field, value, "at most "+strconv.Itoa(cutting.MaxPieces)+" pieces of "+strconv.Itoa(cutting.MaxKinds)+" lengths from "+strconv.Itoa(cutting.MaxKinds)+" kinds of rolls")
	}
	bound := solver.Solve()
	if solver.Short {
		// As many pieces as can be cut are the shortest ones.
		most := solver.Reach()
		c.work -= share - solver.Effort
		left := most
		var fewer []Quantity
		for k := len(wholes) - 1; k >= 0; k-- {
			n := min(left, demand[k])
			left -= n
			dropped[k] = demand[k] - n
			if n > 0 {
				fewer = append(fewer, Quantity{Pieces: int(n), Length: wholes[k].Length})
			}
		}
		slices.Reverse(fewer)
		if len(fewer) == 0 {
			return cutPlan{}, dropped, nil
		}
		cut, _, err = c.wholes(item, fewer, stock, rolls)
		for i := range cut.patterns { // the lengths that are left are the last ones
			cut.patterns[i].Take = cut.patterns[i].Take[:len(fewer):len(fewer)]
		}
		return cut, dropped, err
	}
	c.work -= share - solver.Effort
	if solver.Packs == nil {
		return cutPlan{}, nil, c.fail(units.ErrLimit, field, value, "fewer pieces, or fewer items in one list")
	}
	cut = cutPlan{packs: make([]int64, len(stock.offers)), patterns: solver.Patterns, bound: bound / solver.Unit * solver.Measure}
	cost := int64(0)
	for i, n := range solver.Packs {
		if k := kinds[i] - len(stock.owned); k >= 0 {
			cut.packs[k] = n
			cost += n * some[i].Cost
		}
	}
	for i := range cut.patterns {
		cut.patterns[i].Roll = kinds[cut.patterns[i].Roll]
	}
	if cut.bound < cost {
		c.single(wholes, stock, rolls, &cut, cost)
	}
	c.spareLongest(wholes, stock, rolls, &cut)
	return cut, dropped, nil
}

// longer returns the rolls that are at least as long as a piece, with their indices.
func longer(rolls []cutting.Roll, piece int64) (kinds []int, some []cutting.Roll) {
	for i, r := range rolls {
		if r.Limit > 0 && r.Length >= piece {
			kinds = append(kinds, i)
			some = append(some, r)
		}
	}
	return kinds, some
}

// single replaces cut by the packs of one offer, cut the first way that comes to mind, if
// they cost less.
func (c *checker) single(wholes []Quantity, stock itemStock, rolls []cutting.Roll, cut *cutPlan, cost int64) {
	for i, o := range stock.offers {
		counts := make([]int64, len(stock.offers))
		fits := func(n int) []cutting.Pattern {
			counts[i] = int64(n)
			return firstFit(wholes, stock, rolls, counts)
		}
		room := int(min(o.Shelf.limit(), 10_000))
		n := sort.Search(room, func(n int) bool { return fits(n) != nil })
		if patterns := fits(n); patterns != nil && int64(n)*o.each < cost {
			cost = int64(n) * o.each
			cut.packs, cut.patterns = slices.Clone(counts), patterns
		}
	}
}

// firstFit cuts the pieces, the longest first, each from the first roll that holds it, owned
// rolls before bought ones. It returns nil if they do not all fit.
func firstFit(wholes []Quantity, stock itemStock, rolls []cutting.Roll, counts []int64) []cutting.Pattern {
	type bin struct {
		roll int
		left int64
		take []int64
	}
	var bins []bin
	next, used := 0, int64(0)
	open := func(l int64) *bin {
		for ; next < len(rolls); next, used = next+1, 0 {
			r := rolls[next]
			there := r.Limit
			if !r.Owned {
				there = r.Strands * counts[next-len(stock.owned)]
			}
			if used < there && r.Length >= l {
				used++
				bins = append(bins, bin{next, r.Length, make([]int64, len(wholes))})
				return &bins[len(bins)-1]
			}
		}
		return nil
	}
	for k, q := range wholes {
		l := int64(q.Length)
		at := 0
		for range q.Pieces {
			for at < len(bins) && bins[at].left < l {
				at++
			}
			b := (*bin)(nil)
			if at < len(bins) {
				b = &bins[at]
			} else if b = open(l); b == nil {
				return nil
			}
			b.left -= l
			b.take[k]++
		}
	}
	var patterns []cutting.Pattern
	for _, b := range bins {
		patterns = append(patterns, cutting.Pattern{Roll: b.roll, Take: b.take, Rolls: 1})
	}
	return patterns
}

// spareLongest cuts the pieces from shorter owned rolls, if that spares longer ones.
func (c *checker) spareLongest(wholes []Quantity, stock itemStock, rolls []cutting.Roll, cut *cutPlan) {
	limits := make([]int64, len(rolls))
	order := make([]int, len(stock.owned))
	for i, r := range rolls {
		if limits[i] = r.Limit; i >= len(stock.owned) {
			limits[i] = cut.packs[i-len(stock.owned)]
		} else {
			order[i] = i
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(rolls[b].Length, rolls[a].Length) })
	for _, i := range order[:min(len(order), 20)] {
		for limits[i] != 0 && limits[i] <= 20 {
			limits[i]--
			patterns, ok := c.fitIn(wholes, rolls, limits)
			if !ok {
				limits[i]++
				break
			}
			cut.patterns = patterns
		}
	}
}

// fitIn cuts the pieces from at most so many packs of each roll.
func (c *checker) fitIn(wholes []Quantity, rolls []cutting.Roll, limits []int64) ([]cutting.Pattern, bool) {
	var lengths, demand []int64
	for _, q := range wholes {
		lengths = append(lengths, int64(q.Length))
		demand = append(demand, int64(q.Pieces))
	}
	kinds, some := longer(rolls, lengths[len(lengths)-1])
	share := min(c.work/c.items, 400_000)
	solver, _ := cutting.New(lengths, demand, some, share) // small enough, as in wholes
	most := make([]int64, len(some))
	for k, i := range kinds {
		limits[i] = min(limits[i], solver.Rolls[k].Limit)
		most[k] = limits[i]
	}
	patterns, found, proved := solver.Fit(most)
	for k := range patterns {
		patterns[k].Roll = kinds[patterns[k].Roll]
	}
	c.work -= share - solver.Effort
	c.tired = c.tired || !found && !proved
	return patterns, found
}

// fit cuts the pieces from what is owned and the given packs of each offer.
func (c *checker) fit(wholes []Quantity, stock itemStock, rolls []cutting.Roll, counts []int64) ([]cutting.Pattern, bool) {
	if len(wholes) == 1 {
		return oneLength(int64(wholes[0].Pieces), int64(wholes[0].Length), stock, rolls, counts)
	}
	limits := make([]int64, len(rolls))
	for i, r := range rolls {
		if limits[i] = r.Limit; !r.Owned {
			limits[i] = counts[i-len(stock.owned)]
		}
	}
	return c.fitIn(wholes, rolls, limits)
}

// cutOne is wholes for pieces of one length: a roll holds so many, as a pack does.
func (c *checker) cutOne(item Item, whole Quantity, stock itemStock, rolls []cutting.Roll) (cut cutPlan, dropped int64, err error) {
	need := int64(whole.Pieces)
	var packs []cover.Pack
	for _, r := range rolls {
		if size := r.Strands * (r.Length / int64(whole.Length)); r.Owned {
			need -= min(need, size*r.Limit)
		} else {
			packs = append(packs, cover.Pack{Size: size, Bulk: r.Bulk, Cost: r.Cost, Limit: r.Limit})
		}
	}
	counts, short, err := c.cover(item, need, packs)
	if err == nil && short > 0 {
		counts, _, err = c.cover(item, need-short, packs)
	}
	if err != nil {
		return cutPlan{}, 0, err
	}
	cut = cutPlan{packs: counts, bound: weigh(counts, packs)[0]}
	cut.patterns, _ = oneLength(int64(whole.Pieces)-short, int64(whole.Length), stock, rolls, counts)
	return cut, short, nil
}

// oneLength cuts n pieces of one length, from the shortest rolls that will do, so that the
// longest remain.
func oneLength(n, l int64, stock itemStock, rolls []cutting.Roll, counts []int64) ([]cutting.Pattern, bool) {
	type source struct {
		roll  int
		each  int64 // pieces from one
		there int64
	}
	var sources []source
	for i, r := range rolls {
		s := source{i, r.Length / l, r.Limit}
		if !r.Owned {
			s.there = r.Strands * counts[i-len(stock.owned)]
		}
		if s.each != 0 && s.there != 0 {
			sources = append(sources, s)
		}
	}
	slices.SortStableFunc(sources, func(a, b source) int { return cmp.Compare(rolls[a.roll].Length, rolls[b.roll].Length) })
	patterns := []cutting.Pattern{}
	for n > 0 {
		at := slices.IndexFunc(sources, func(s source) bool { return s.there > 0 })
		if at < 0 {
			return nil, false
		}
		take := min(n, sources[at].each)
		many := min(sources[at].there, n/take)
		sources[at].there -= many
		n -= take * many
		patterns = append(patterns, cutting.Pattern{Roll: sources[at].roll, Take: []int64{take}, Rolls: many})
	}
	return patterns, true
}

// join finds the strands for running lengths, one for each run. If all there are do not do, its
// counts are nil.
func (c *checker) join(item Item, runs []units.Length, stock itemStock) (joining, error) {
	var need units.Length
	for _, l := range runs {
		need += l
	}
	have := joined(stock.strands(), stock.join.Overlap)
	packs := stock.joinable()
	best := joining{groups: 1}
	counts, err := c.strands(item, need, have, stock, packs)
	if err != nil {
		return best, err
	}
	if counts != nil {
		best.counts, best.key = counts, weigh(counts, packs)
		best.bound = best.key[0]
	}
	if len(runs) > 1 && stock.join.Overlap != 0 && len(runs) <= maxParted {
		if best, err = c.part(item, runs, packs, stock, best); err != nil {
			return best, err
		}
	}
	if j := stock.join; j.Shortest > 0 || j.Uncut {
		return c.joinPieces(item, runs, stock, packs, best)
	}
	return best, nil
}

// strands returns how many packs of each offer to join to a strand of length
// have, which may be 0, to make need, or nil if all the packs there are will not do.
func (c *checker) strands(item Item, need, have units.Length, stock itemStock, packs []cover.Pack) (counts []int64, err error) {
	missing := int64(need - have)
	if have == 0 {
		// The first strand joins nothing; and any one strand is longer than the overlap.
		missing = max(1, missing-int64(stock.join.Overlap))
	}
	counts, _, err = c.cover(item, missing, packs)
	return counts, err
}

// joinPieces is join where strands are not cut, or pieces may not be short: it tries packs in the order
// of their cost, from those that would do without that.
func (c *checker) joinPieces(item Item, runs []units.Length, stock itemStock, packs []cover.Pack, loose joining) (joining, error) {
	if loose.counts == nil {
		return loose, nil
	}
	list := make([]portion, 0, len(runs))
	for _, l := range runs {
		list = append(list, piece("", l))
	}
	hangs := func(counts []int64) bool {
		if c.work -= int64(400 * (len(list) + len(counts))); c.work < 0 {
			return false
		}
		y := c.layout(item, list, demand{}, stock, counts, nil)
		for i, got := range y.runs(c, list) {
			if got < runs[i] {
				return false
			}
		}
		return true
	}
	if hangs(loose.counts) {
		return loose, nil
	}
	best := joining{groups: 1, bound: loose.bound}
	spare := stock.raw()
	best.counts, best.key = c.obvious(stock, spare, int64(len(runs)), hangs)
	least := int64(0)
	for _, l := range runs {
		least += int64(l)
	}
	least -= int64(length(stock.strands()))
	// Whether they hang is tried in one way only, so that no way was found proves nothing.
	best, _ = c.walk(spare, least, least+int64(len(runs)+1)*largest(spare), best, hangs)
	best.bound = loose.bound
	return best, nil
}

// largest returns the size of the largest pack.
func largest(packs []cover.Pack) int64 {
	most := int64(1)
	for _, p := range packs {
		most = max(most, p.Size)
	}
	return most
}

// obvious returns the cheapest packs of one offer alone that do, or all there are, or nil.
func (c *checker) obvious(stock itemStock, packs []cover.Pack, pieces int64, do func(counts []int64) bool) (best []int64, key [3]int64) {
	for i, p := range packs {
		counts := make([]int64, len(packs))
		try := func(n int64) bool {
			counts[i] = n
			c.work -= 100
			return c.work > 0 && do(counts)
		}
		room := min(p.Limit, 1<<20)
		hi := int64(1)
		for hi < room && !try(hi) {
			hi = min(2*hi, room)
		}
		if room < 1 || !try(hi) {
			continue
		}
		lo := hi / 2
		for lo < hi-1 {
			if mid := (lo + hi) / 2; try(mid) {
				hi = mid
			} else {
				lo = mid
			}
		}
		counts[i] = hi
		if k := weigh(counts, packs); best == nil || slices.Compare(k[:], key[:]) < 0 {
			best, key = slices.Clone(counts), k
		}
	}
	if best == nil {
		counts := make([]int64, len(packs))
		for i, p := range packs {
			counts[i] = min(p.Limit, pieces+1)
		}
		if do(counts) {
			best, key = counts, weigh(counts, packs)
		}
	}
	return best, key
}

// cutAndJoin makes a plan that also leaves enough to join the running length; its packs are nil
// if there is none. The least packs that hold both by length alone are a bound. It tries what is
// best for the pieces and packs added for the run, the packs of each offer alone, and
// then all packs in the order of their cost that could be better.
func (c *checker) cutAndJoin(item Item, d demand, stock itemStock, rolls []cutting.Roll, cut cutPlan) (cutPlan, error) {
	least := int64(d.running)
	for _, q := range d.wholes {
		least += int64(q.Pieces) * int64(q.Length)
	}
	least -= int64(length(stock.strands()))
	packs := stock.raw()
	counts, short, err := c.cover(item, least, packs)
	if err != nil {
		return cutPlan{}, err
	}
	if short > 0 {
		return cutPlan{patterns: cut.patterns}, nil
	}
	bound := max(cut.bound, weigh(counts, packs)[0])
	var patterns []cutting.Pattern
	do := func(counts []int64) bool {
		found, ok := c.fit(d.wholes, stock, rolls, counts)
		if !ok {
			return false
		}
		if joined(stock.remnants(d.wholes, rolls, cutPlan{packs: counts, patterns: found}), stock.join.Overlap) < d.running && len(d.runs) < 2 {
			return false
		}
		if !c.hangs(item, d, stock, counts, found) {
			return false
		}
		patterns = found
		return true
	}
	if do(counts) {
		return cutPlan{packs: counts, patterns: patterns, bound: weigh(counts, packs)[0]}, nil
	}
	best := joining{bound: bound}
	c.tired = false
	pieces := int64(len(d.runs))
	for _, q := range d.wholes {
		pieces += int64(q.Pieces)
	}
	best.counts, best.key = c.obvious(stock, packs, pieces, do)
	if more, err := c.addTo(item, d, stock, rolls, cut, do); err != nil {
		return cutPlan{}, err
	} else if more != nil {
		if key := weigh(more, packs); best.counts == nil || slices.Compare(key[:], best.key[:]) < 0 {
			best.counts, best.key = more, key
		}
	}
	best, all := c.walk(packs, least, least+pieces*largest(packs), best, do)
	if best.counts == nil {
		if !all {
			return cutPlan{}, c.size(item, len(packs))
		}
		return cutPlan{patterns: cut.patterns}, nil
	}
	if all && !c.tired && stock.join == (Join{}) {
		best.bound = best.key[0] // what is left of the rolls is as long whichever way they are cut
	}
	if !do(best.counts) {
		return cutPlan{}, c.size(item, len(packs)) // the steps are spent
	}
	return cutPlan{packs: best.counts, patterns: patterns, bound: min(best.key[0], max(bound, best.bound))}, nil
}

// hangs reports whether what patterns leave of all rolls hangs the runs.
func (c *checker) hangs(item Item, d demand, stock itemStock, counts []int64, patterns []cutting.Pattern) bool {
	list := make([]portion, 0, len(d.wholes)+len(d.runs))
	for _, q := range d.wholes {
		list = append(list, portion{quantity: q})
	}
	for _, l := range d.runs {
		list = append(list, piece("", l))
	}
	if c.work -= int64(400 * (len(list) + len(counts))); c.work < 0 {
		return false
	}
	y := c.layout(item, list, d, stock, counts, patterns)
	for i, got := range y.runs(c, list) {
		if q := list[i].quantity; q.Pieces == 0 && got < q.Length {
			return false
		}
	}
	return true
}

// addTo returns the packs of cut, the best for the pieces, with as many added as the
// run takes, or nil.
func (c *checker) addTo(item Item, d demand, stock itemStock, rolls []cutting.Roll, cut cutPlan, do func(counts []int64) bool) ([]int64, error) {
	rest := itemStock{offers: slices.Clone(stock.offers), join: stock.join}
	for i := range rest.offers {
		if s := &rest.offers[i].Shelf; *s != 0 {
			*s = left(s.limit() - cut.packs[i])
		}
	}
	have := joined(stock.remnants(d.wholes, rolls, cut), stock.join.Overlap)
	more, err := c.strands(item, d.running+units.Length(len(d.runs)-1)*stock.join.Overlap, have, rest, rest.joinable())
	if err != nil || more == nil {
		return nil, err
	}
	for i := range more {
		more[i] += cut.packs[i]
	}
	if !do(more) {
		return nil, nil
	}
	return more, nil
}

// remnants returns what cut leaves of all rolls, owned and bought.
func (stock itemStock) remnants(wholes []Quantity, rolls []cutting.Roll, cut cutPlan) []strand {
	whole := make([]int64, len(rolls))
	for i, r := range rolls {
		if whole[i] = r.Limit; !r.Owned {
			whole[i] = r.Strands * cut.packs[i-len(stock.owned)]
		}
	}
	var strands []strand
	for _, p := range cut.patterns {
		whole[p.Roll] -= p.Rolls
		left := units.Length(rolls[p.Roll].Length)
		for k, n := range p.Take {
			left -= units.Length(n) * wholes[k].Length
		}
		strands = append(strands, strand{n: p.Rolls, length: left})
	}
	for i, n := range whole {
		strands = append(strands, strand{n: n, length: units.Length(rolls[i].Length)})
	}
	return strands
}
