package shopping

import (
	"slices"
	"strconv"

	"example.com/fircone/units"
)

// rolls returns what stock has to cut from, the owned strands first.
func (stock itemStock) rolls() []roll {
	var rolls []roll
	for _, q := range stock.owned {
		st := q.strand()
		rolls = append(rolls, roll{length: int64(st.length), strands: 1, limit: st.n, owned: true})
	}
	for _, o := range stock.offers {
		st := o.Pack.strand()
		rolls = append(rolls, roll{length: int64(st.length), strands: st.n, bulk: st.n * int64(st.length), cost: price(o.Price), limit: o.Shelf.limit()})
	}
	return rolls
}

// A cutting is how many packs of each offer to buy and how to cut them.
type cutting struct {
	packs    []int64
	patterns []pattern // rolls as in itemStock.rolls
	bound    int64     // of the cost, in units of 1/10,000
}

// cut fills in p for whole pieces, and for a running length beside them.
func (p *Purchase) cut(c *checker, d demand, stock itemStock) error {
	rolls := stock.rolls()
	cut, err := c.cutting(p.Item, d.wholes, stock, rolls)
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

// cutting finds the cheapest way to have the whole pieces.
func (c *checker) cutting(item Item, wholes []Quantity, stock itemStock, rolls []roll) (cutting, error) {
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
	var some []roll
	for i, r := range rolls {
		if r.limit > 0 && r.length >= lengths[len(lengths)-1] {
			kinds = append(kinds, i)
			some = append(some, r)
		}
	}
	if len(some) == 0 {
		return cutting{}, c.short(item, strconv.Itoa(total)+" whole pieces", "0", strconv.Itoa(total))
	}
	field, value := "needs", item.String()+": "+strconv.Itoa(total)+" whole pieces of "+strconv.Itoa(len(lengths))+" lengths"
	solver, ok := newCutter(lengths, demand, some)
	if !ok {
		return cutting{}, c.fail(units.ErrLimit, field, value, "at most "+strconv.Itoa(maxCutPieces)+" pieces of "+strconv.Itoa(maxCutKinds)+" lengths from "+strconv.Itoa(maxCutKinds)+" kinds of rolls")
	}
	share := c.work / c.items
	solver.effort = share
	bound := solver.solve()
	most := 0
	if solver.short {
		most = int(solver.reach())
	}
	c.work -= share - solver.effort
	switch {
	case solver.short:
		return cutting{}, c.short(item, strconv.Itoa(total)+" whole pieces", strconv.Itoa(most), strconv.Itoa(total-most))
	case solver.packs == nil:
		return cutting{}, c.fail(units.ErrLimit, field, value, "fewer pieces, or fewer items in one list")
	}
	cut := cutting{packs: make([]int64, len(stock.offers)), patterns: solver.patterns, bound: bound / solver.unit * solver.measure}
	for i, n := range solver.packs {
		if k := kinds[i] - len(stock.owned); k >= 0 {
			cut.packs[k] = n
		}
	}
	for i := range cut.patterns {
		cut.patterns[i].roll = kinds[cut.patterns[i].roll]
	}
	return cut, nil
}

// cutOne is cutting for pieces of one length: a roll holds so many, as a pack does.
func (c *checker) cutOne(item Item, whole Quantity, stock itemStock, rolls []roll) (cutting, error) {
	need := int64(whole.Pieces)
	var packs []pack
	for _, r := range rolls {
		if size := r.strands * (r.length / int64(whole.Length)); r.owned {
			need -= min(need, size*r.limit)
		} else {
			packs = append(packs, pack{size: size, bulk: r.bulk, cost: r.cost, limit: r.limit})
		}
	}
	counts, short, err := c.cover(item, need, packs)
	if err != nil {
		return cutting{}, err
	}
	if short > 0 {
		return cutting{}, c.short(item, whole.String(), strconv.FormatInt(int64(whole.Pieces)-short, 10), strconv.FormatInt(short, 10))
	}
	cut := cutting{packs: counts}
	left := int64(whole.Pieces)
	for i, r := range rolls {
		n := r.limit
		if !r.owned {
			n = counts[i-len(stock.owned)]
			cut.bound += n * r.cost
		}
		each := r.length / int64(whole.Length)
		if each == 0 {
			continue
		}
		full := min(n*r.strands, left/each)
		left -= full * each
		if full > 0 {
			cut.patterns = append(cut.patterns, pattern{roll: i, take: []int64{each}, rolls: full})
		}
		if left > 0 && n*r.strands > full {
			cut.patterns = append(cut.patterns, pattern{roll: i, take: []int64{left}, rolls: 1})
			left = 0
		}
	}
	return cut, nil
}

// cutAndJoin makes a cutting that also leaves enough to join the running length.
// The least packs that hold both by length alone are a bound; if the pieces can be
// cut from them and what is left joined, they are the answer. Otherwise packs are
// added to those of cut, the best for the pieces.
func (c *checker) cutAndJoin(item Item, d demand, stock itemStock, rolls []roll, cut cutting) (cutting, error) {
	missing := int64(d.running)
	for _, q := range d.wholes {
		missing += int64(q.Pieces) * int64(q.Length)
	}
	need := units.Length(missing)
	var packs []pack
	for _, r := range rolls {
		if r.owned {
			missing -= r.limit * r.length
		} else {
			packs = append(packs, pack{size: r.bulk, bulk: r.bulk, cost: r.cost, limit: r.limit})
		}
	}
	counts, short, err := c.cover(item, missing, packs)
	if err != nil {
		return cutting{}, err
	}
	if short > 0 {
		return cutting{}, c.short(item, need.String(), (need - units.Length(short)).String(), units.Length(short).String())
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
		return cutting{}, err
	}
	if missingLength > 0 {
		return cutting{}, c.short(item, d.running.String()+" beside whole pieces", (d.running - missingLength).String(), missingLength.String())
	}
	for i, n := range more {
		cut.packs[i] += n
	}
	cut.bound = bound
	return cut, nil
}

// recut cuts the pieces from what is owned and the given packs, and reports
// whether it found a way that leaves enough to join.
func (c *checker) recut(d demand, stock itemStock, rolls []roll, counts []int64) (cutting, bool) {
	var lengths, demand []int64
	for _, q := range d.wholes {
		lengths = append(lengths, int64(q.Length))
		demand = append(demand, int64(q.Pieces))
	}
	solver, ok := newCutter(lengths, demand, rolls)
	if !ok {
		return cutting{}, false
	}
	packs := make([]int64, len(rolls))
	for i, r := range solver.rolls {
		packs[i] = r.limit
		if !r.owned {
			packs[i] = min(r.limit, counts[i-len(stock.owned)])
		}
	}
	share := c.work / c.items
	solver.effort = share
	found, _ := solver.try(packs)
	if c.work -= share - solver.effort; !found {
		return cutting{}, false
	}
	cut := cutting{packs: slices.Clone(counts), patterns: solver.patterns}
	return cut, joined(stock.remnants(d.wholes, rolls, cut), stock.overlap) >= d.running
}

// remnants returns what cut leaves of all rolls, owned and bought.
func (stock itemStock) remnants(wholes []Quantity, rolls []roll, cut cutting) []strand {
	whole := make([]int64, len(rolls))
	for i, r := range rolls {
		if whole[i] = r.limit; !r.owned {
			whole[i] = r.strands * cut.packs[i-len(stock.owned)]
		}
	}
	var strands []strand
	for _, p := range cut.patterns {
		whole[p.roll] -= p.rolls
		left := units.Length(rolls[p.roll].length)
		for k, n := range p.take {
			left -= units.Length(n) * wholes[k].Length
		}
		strands = append(strands, strand{p.rolls, left})
	}
	for i, n := range whole {
		strands = append(strands, strand{n, units.Length(rolls[i].length)})
	}
	return strands
}

// cuts returns the patterns as a shopper reads them, equal ones together.
func cuts(wholes []Quantity, stock itemStock, rolls []roll, patterns []pattern) []Cut {
	slices.SortStableFunc(patterns, func(a, b pattern) int {
		if a.roll != b.roll {
			return a.roll - b.roll
		}
		return slices.Compare(b.take, a.take)
	})
	var cuts []Cut
	for i, p := range patterns {
		if i > 0 && p.roll == patterns[i-1].roll && slices.Equal(p.take, patterns[i-1].take) {
			cuts[len(cuts)-1].Rolls += int(p.rolls)
			continue
		}
		cut := Cut{Roll: units.Length(rolls[p.roll].length), Rolls: int(p.rolls)}
		if k := p.roll - len(stock.owned); k >= 0 {
			cut.Offer = stock.offers[k].Name
		}
		cut.Left = cut.Roll
		for k, n := range p.take {
			if n > 0 {
				cut.Pieces = append(cut.Pieces, Quantity{Pieces: int(n), Length: wholes[k].Length})
				cut.Left -= units.Length(n) * wholes[k].Length
			}
		}
		cuts = append(cuts, cut)
	}
	return cuts
}
