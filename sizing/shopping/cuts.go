package shopping

import (
	"slices"
	"strconv"

	"example.com/fircone/internal/cover"
	"example.com/fircone/internal/cutting"
	"example.com/fircone/units"
)

// rolls returns what stock has to cut from, the owned strands first.
func (stock itemStock) rolls() []cutting.Roll {
	var rolls []cutting.Roll
	for _, q := range stock.owned {
		st := q.strand()
		rolls = append(rolls, cutting.Roll{Length: int64(st.length), Strands: 1, Limit: st.n, Owned: true})
	}
	for _, o := range stock.offers {
		st := o.Pack.strand()
		rolls = append(rolls, cutting.Roll{Length: int64(st.length), Strands: st.n, Bulk: st.n * int64(st.length), Cost: price(o.Price), Limit: o.Shelf.limit()})
	}
	return rolls
}

// A cutPlan is how many packs of each offer to buy and how to cut them.
type cutPlan struct {
	packs    []int64
	patterns []cutting.Pattern // rolls as in itemStock.rolls
	bound    int64             // of the cost, in units of 1/10,000
}

// cut fills in p for whole pieces, and for a running length beside them.
func (p *Purchase) cut(c *checker, d demand, stock itemStock) error {
	rolls := stock.rolls()
	cut, err := c.wholes(p.Item, d.wholes, stock, rolls)
	if err != nil {
		return err
	}
	if d.running > 0 {
		if cut, err = c.cutAndJoin(p.Item, d, stock, rolls, cut); err != nil {
			return err
		}
	}
	p.buy(stock.offers, cut.packs)
	p.Bound = amount(cut.bound)
	p.Cuts = cuts(d.wholes, stock, rolls, cut.patterns)
	p.Owned.Length = length(stock.strands())
	p.Surplus.Length = p.Owned.Length + length(p.bought())
	for _, q := range d.wholes {
		p.Surplus.Length -= units.Length(q.Pieces) * q.Length
	}
	if d.running > 0 {
		p.Surplus.Length = joined(stock.remnants(d.wholes, rolls, cut), stock.overlap) - d.running
	}
	return nil
}

// wholes finds the cheapest way to have the whole pieces.
func (c *checker) wholes(item Item, wholes []Quantity, stock itemStock, rolls []cutting.Roll) (cutPlan, error) {
	if len(wholes) == 1 {
		return c.cutOne(item, wholes[0], stock, rolls)
	}
	var lengths, demand []int64
	total := 0
	for _, q := range wholes {
		lengths = append(lengths, int64(q.Length))
		demand = append(demand, int64(q.Pieces))
		total += q.Pieces
	}
	var kinds []int
	var some []cutting.Roll
	for i, r := range rolls {
		if r.Limit > 0 && r.Length >= lengths[len(lengths)-1] {
			kinds = append(kinds, i)
			some = append(some, r)
		}
	}
	if len(some) == 0 {
		return cutPlan{}, c.short(item, strconv.Itoa(total)+" whole pieces", "0", strconv.Itoa(total))
	}
	field, value := "needs", item.String()+": "+strconv.Itoa(total)+" whole pieces of "+strconv.Itoa(len(lengths))+" lengths"
	solver, ok := cutting.New(lengths, demand, some, c.work/c.items)
	if !ok {
		return cutPlan{}, c.fail(units.ErrLimit, field, value, "at most "+strconv.Itoa(cutting.MaxPieces)+" pieces of "+strconv.Itoa(cutting.MaxKinds)+" lengths from "+strconv.Itoa(cutting.MaxKinds)+" kinds of rolls")
	}
	share := c.work / c.items
	bound := solver.Solve()
	most := 0
	if solver.Short {
		most = int(solver.Reach())
	}
	c.work -= share - solver.Effort
	switch {
	case solver.Short:
		return cutPlan{}, c.short(item, strconv.Itoa(total)+" whole pieces", strconv.Itoa(most), strconv.Itoa(total-most))
	case solver.Packs == nil:
		return cutPlan{}, c.fail(units.ErrLimit, field, value, "fewer pieces, or fewer items in one list")
	}
	cut := cutPlan{packs: make([]int64, len(stock.offers)), patterns: solver.Patterns, bound: bound / solver.Unit * solver.Measure}
	for i, n := range solver.Packs {
		if k := kinds[i] - len(stock.owned); k >= 0 {
			cut.packs[k] = n
		}
	}
	for i := range cut.patterns {
		cut.patterns[i].Roll = kinds[cut.patterns[i].Roll]
	}
	return cut, nil
}

// cutOne is wholes for pieces of one length: a roll holds so many, as a pack does.
func (c *checker) cutOne(item Item, whole Quantity, stock itemStock, rolls []cutting.Roll) (cutPlan, error) {
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
	if err != nil {
		return cutPlan{}, err
	}
	if short > 0 {
		return cutPlan{}, c.short(item, whole.String(), strconv.FormatInt(int64(whole.Pieces)-short, 10), strconv.FormatInt(short, 10))
	}
	cut := cutPlan{packs: counts}
	left := int64(whole.Pieces)
	for i, r := range rolls {
		n := r.Limit
		if !r.Owned {
			n = counts[i-len(stock.owned)]
			cut.bound += n * r.Cost
		}
		each := r.Length / int64(whole.Length)
		if each == 0 {
			continue
		}
		full := min(n*r.Strands, left/each)
		left -= full * each
		if full > 0 {
			cut.patterns = append(cut.patterns, cutting.Pattern{Roll: i, Take: []int64{each}, Rolls: full})
		}
		if left > 0 && n*r.Strands > full {
			cut.patterns = append(cut.patterns, cutting.Pattern{Roll: i, Take: []int64{left}, Rolls: 1})
			left = 0
		}
	}
	return cut, nil
}

// cutAndJoin makes a plan that also leaves enough to join the running length.
// The least packs that hold both by length alone are a bound; if the pieces can be
// cut from them and what is left joined, they are the answer. Otherwise packs are
// added to those of cut, the best for the pieces.
func (c *checker) cutAndJoin(item Item, d demand, stock itemStock, rolls []cutting.Roll, cut cutPlan) (cutPlan, error) {
	missing := int64(d.running)
	for _, q := range d.wholes {
		missing += int64(q.Pieces) * int64(q.Length)
	}
	need := units.Length(missing)
	var packs []cover.Pack
	for _, r := range rolls {
		if r.Owned {
			missing -= r.Limit * r.Length
		} else {
			packs = append(packs, cover.Pack{Size: r.Bulk, Bulk: r.Bulk, Cost: r.Cost, Limit: r.Limit})
		}
	}
	counts, short, err := c.cover(item, missing, packs)
	if err != nil {
		return cutPlan{}, err
	}
	if short > 0 {
		return cutPlan{}, c.short(item, need.String(), (need - units.Length(short)).String(), units.Length(short).String())
	}
	bound := max(cut.bound, weigh(counts, packs)[0])
	if all, ok := c.recut(d, stock, rolls, counts); ok {
		all.bound = bound
		return all, nil
	}
	rest := itemStock{offers: slices.Clone(stock.offers), overlap: stock.overlap}
	for i := range rest.offers {
		if s := &rest.offers[i].Shelf; s.Known {
			s.Packs -= int(cut.packs[i])
		}
	}
	have := joined(stock.remnants(d.wholes, rolls, cut), stock.overlap)
	more, missingLength, err := c.strands(item, d.running, have, rest)
	if err != nil {
		return cutPlan{}, err
	}
	if missingLength > 0 {
		return cutPlan{}, c.short(item, d.running.String()+" beside whole pieces", (d.running - missingLength).String(), missingLength.String())
	}
	for i, n := range more {
		cut.packs[i] += n
	}
	cut.bound = bound
	return cut, nil
}

// recut cuts the pieces from what is owned and the given packs, and reports
// whether it found a way that leaves enough to join.
func (c *checker) recut(d demand, stock itemStock, rolls []cutting.Roll, counts []int64) (cutPlan, bool) {
	var lengths, demand []int64
	for _, q := range d.wholes {
		lengths = append(lengths, int64(q.Length))
		demand = append(demand, int64(q.Pieces))
	}
	solver, ok := cutting.New(lengths, demand, rolls, c.work/c.items)
	if !ok {
		return cutPlan{}, false
	}
	packs := make([]int64, len(rolls))
	for i, r := range solver.Rolls {
		packs[i] = r.Limit
		if !r.Owned {
			packs[i] = min(r.Limit, counts[i-len(stock.owned)])
		}
	}
	share := c.work / c.items
	found, _ := solver.Try(packs)
	if c.work -= share - solver.Effort; !found {
		return cutPlan{}, false
	}
	cut := cutPlan{packs: slices.Clone(counts), patterns: solver.Patterns}
	return cut, joined(stock.remnants(d.wholes, rolls, cut), stock.overlap) >= d.running
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
		strands = append(strands, strand{p.Rolls, left})
	}
	for i, n := range whole {
		strands = append(strands, strand{n, units.Length(rolls[i].Length)})
	}
	return strands
}

// cuts returns the patterns as a shopper reads them, equal ones together.
func cuts(wholes []Quantity, stock itemStock, rolls []cutting.Roll, patterns []cutting.Pattern) []Cut {
	slices.SortStableFunc(patterns, func(a, b cutting.Pattern) int {
		if a.Roll != b.Roll {
			return a.Roll - b.Roll
		}
		return slices.Compare(b.Take, a.Take)
	})
	var cuts []Cut
	for i, p := range patterns {
		if i > 0 && p.Roll == patterns[i-1].Roll && slices.Equal(p.Take, patterns[i-1].Take) {
			cuts[len(cuts)-1].Rolls += int(p.Rolls)
			continue
		}
		cut := Cut{Roll: units.Length(rolls[p.Roll].Length), Rolls: int(p.Rolls)}
		if k := p.Roll - len(stock.owned); k >= 0 {
			cut.Offer = stock.offers[k].Name
		}
		cut.Left = cut.Roll
		for k, n := range p.Take {
			if n > 0 {
				cut.Pieces = append(cut.Pieces, Quantity{Pieces: int(n), Length: wholes[k].Length})
				cut.Left -= units.Length(n) * wholes[k].Length
			}
		}
		cuts = append(cuts, cut)
	}
	return cuts
}
