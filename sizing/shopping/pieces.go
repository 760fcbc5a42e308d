package shopping

import (
	"cmp"
	"container/heap"
	"slices"
	"strconv"

	"example.com/fircone/internal/apportion"
	"example.com/fircone/internal/cover"
	"example.com/fircone/internal/intprog"
	"example.com/fircone/internal/supply"
	"example.com/fircone/units"
)

// pieces fills in p for lines of pieces that are bought together.
func (s Shop) pieces(c *checker, p *Purchase, group []*line) error {
	l := group[0]
	need, _ := l.planned()
	stock, err := s.stock(c, l, demand{pieces: need}, make([]stocked, 0, few))
	if err != nil {
		return err
	}
	there := len(stock.offers)+len(stock.owned) > 0
	if len(group) > 1 || there && (l.assort() != (assortment{}) || stock.coupled(l)) {
		return s.together(c, p, group)
	}
	return s.alone(c, p, l, need, stock)
}

// coupled reports whether the packs of one line cannot be bought by their size alone: since
// what several cost is not a price by the pack, or strings of lights are not divided.
func (stock itemStock) coupled(l *line) bool {
	for _, o := range stock.offers {
		for _, d := range o.Deals {
			if d.From > 0 || o.Shelf != 0 {
				return true
			}
		}
	}
	return l.like.Item.Kind.whole()
}

// packs returns how many pieces are owned, and appends to a list the offers, and after them their
// bundles, as packs of pieces.
func (stock itemStock) packs(packs []cover.Pack) (owned int64, all []cover.Pack) {
	for _, q := range stock.owned {
		owned += int64(q.Quantity.Pieces)
	}
	for _, o := range stock.offers {
		n := int64(o.pack.Pieces)
		packs = append(packs, cover.Pack{Size: n, Bulk: n, Cost: price(o.Price), Limit: o.Shelf.limit()})
	}
	for _, o := range stock.offers {
		for _, d := range o.Deals {
			n := int64(o.pack.Pieces) * int64(d.Packs)
			packs = append(packs, cover.Pack{Size: n, Bulk: n, Cost: price(d.Price), Limit: 1 << 50})
		}
	}
	return owned, packs
}

// counted returns how many packs of each offer counts of packs and bundles are.
func (stock itemStock) counted(counts []int64) []int64 {
	if len(counts) == len(stock.offers) {
		return counts
	}
	sums := slices.Clone(counts[:len(stock.offers)])
	k := len(stock.offers)
	for i, o := range stock.offers {
		for _, d := range o.Deals {
			sums[i] += counts[k] * int64(d.Packs)
			k++
		}
	}
	return sums
}

// alone fills in p for one line that shares nothing with others.
func (s Shop) alone(c *checker, p *Purchase, l *line, need int64, stock itemStock) error {
	owned, packs := stock.packs(make([]cover.Pack, 0, few))
	gets := need
	counts, short, err := c.cover(l.like.Item, need-owned, packs)
	if short > 0 {
		gets = need - short
		counts, _, err = c.cover(l.like.Item, gets-owned, packs)
	}
	if err != nil {
		return err
	}
	counts = stock.counted(counts)
	p.Owned = rest(stock.owned)
	lots := append(make([]Lot, 0, few), stock.owned...)
	for i, n := range counts {
		lots = times(lots, stock.offers[i].holds(), n)
	}
	p.take(stock.offers, counts)
	p.Bound = p.Cost
	for i, n := range allot(gets, l.wishes) {
		p.Shares[i].take(l, n, lots)
	}
	p.Left = rest(lots)
	return nil
}

// times appends to a list lots n times.
func times(list, lots []Lot, n int64) []Lot {
	if n == 0 {
		return list
	}
	for _, l := range lots {
		l.Quantity.Pieces *= int(n)
		list = append(list, l)
	}
	return list
}

// take gives s n pieces of the lots that do for l, in their order.
func (s *Share) take(l *line, n int64, lots []Lot) {
	for i := range lots {
		lot := &lots[i]
		if k := min(n, int64(lot.Quantity.Pieces)); k != 0 && l.takes(lot.Item) {
			n -= k
			lot.Quantity.Pieces -= int(k)
			s.add(Lot{lot.Item, Quantity{Pieces: int(k)}})
		}
	}
}

// add gives s a part. As long as the parts say no more than the need they are left out.
func (s *Share) add(part Lot) {
	before := s.Gets.Pieces
	s.Gets.Pieces += part.Quantity.Pieces
	if part.Quantity.Pieces == 0 {
		return
	}
	if s.Parts == nil {
		if part.Item == s.Item && !s.Item.Kind.whole() && s.assortment() == (assortment{}) {
			return
		}
		if before > 0 {
			s.Parts = []Lot{{s.Item, Quantity{Pieces: before}}}
		}
	}
	s.Parts = merged(s.Parts, part)
}

// merged adds pieces of an item to lots. A string of lights is a lot of its own.
func merged(lots []Lot, more Lot) []Lot {
	if more.Item.Kind.whole() {
		return append(lots, more)
	}
	for i := range lots {
		if lots[i].Item == more.Item {
			lots[i].Quantity.Pieces += more.Quantity.Pieces
			return lots
		}
	}
	return append(lots, more)
}

// rest returns what is left of lots, each item once.
func rest(lots []Lot) []Lot {
	var left []Lot
	for _, l := range lots {
		if l.Quantity.Pieces > 0 {
			left = merged(left, l)
		}
	}
	return left
}

// allot shares n pieces out: what is planned or, if that is too much, first the least of
// each and then in proportion to what is planned beyond it. Spares come last.
func allot(n int64, wishes []*wish) []int64 {
	if len(wishes) == 1 {
		return []int64{max(0, min(n, int64(wishes[0].Quantity.Pieces)))}
	}
	shares := make([]int64, len(wishes))
	weights := make([]int, len(wishes))
	give := func(spare bool, weight func(i int) int64) {
		for i, w := range wishes {
			if weights[i] = 0; w.spare == spare {
				weights[i] = int(weight(i))
			}
		}
		for i, k := range share(n, weights) {
			shares[i] += int64(k)
			n -= int64(k)
		}
	}
	give(false, func(i int) int64 { return wishes[i].least })
	give(false, func(i int) int64 { return int64(wishes[i].Quantity.Pieces) - shares[i] })
	give(true, func(i int) int64 { return int64(wishes[i].Quantity.Pieces) })
	return shares
}

// share shares n out in proportion to weights: at most what they come to, and nothing if n is negative.
func share(n int64, weights []int) []int {
	total := int64(0)
	for _, w := range weights {
		total += int64(w)
	}
	if n = min(n, total); n <= 0 {
		return make([]int, len(weights))
	}
	return apportion.Counts(int(n), weights, make([]int, len(weights)))
}

// A column is a way to buy packs of an offer, by themselves, in a bundle or in a tier; or, of no packs, a choice that goes with them.
type column struct {
	offer int
	packs int64 // of the offer, for one of the column
}

// A coupling is the program for lines that are bought together.
type coupling struct {
	shop    Shop
	lines   []*line
	program supply.Problem
	things  []Item // what the things of the program are; of lights, the rooms are the things
	columns []column
	demands []target // in the order of the program
	owned   []Lot
	spread  []stringLot // of lights
}

// A stringLot is the strings of lights of one entry: owned, or bought in the packs of some columns.
type stringLot struct {
	lot   Lot
	count int64 // if owned
	from  []int // nil if owned
	uses  []stringUse
}

// A stringUse is the column of the strings that one room gets.
type stringUse struct{ room, column int }

// A target is a demand of the program: a line or, of lights, a wish of it.
type target struct {
	line, wish int // wish is -1 for the whole line
}

// together fills in p for lines that are bought together, by one integer program.
func (s Shop) together(c *checker, p *Purchase, group []*line) error {
	m := &coupling{shop: s, lines: group}
	lights := group[0].like.Item.Kind.whole()
	if lights {
		m.lights()
	} else {
		m.boxes()
	}
	most := int64(0)
	for i := range m.program.Demands {
		most += m.program.Demands[i].N
	}
	if most > maxPieces {
		return c.fail(units.ErrRange, "needs", group[0].like.Item.String()+" and others in all: "+strconv.FormatInt(most, 10), "0 to "+strconv.Itoa(maxPieces)+" pieces")
	}
	if cells := len(m.program.Packs) * (len(m.program.Demands) + len(m.program.Rows)); cells > intprog.MaxCells {
		return c.size(group[0].like.Item, len(m.program.Packs))
	}
	planned, found := slices.Clone(m.program.Demands), supply.Result{}
	for _, search := range [...]func(*int64) supply.Result{m.solve, m.inTurn} {
		copy(m.program.Demands, planned)
		share := min(c.work/c.items, maxTogether)
		effort := share
		found = search(&effort)
		c.work -= share - effort
		if found.Packs != nil {
			break
		}
	}
	if found.Packs == nil {
		return c.fail(units.ErrLimit, "needs", group[0].like.Item.String()+" and what is bought with it", "fewer offers, needs, or items in one list")
	}
	counts := map[int]int64{}
	for i, col := range m.columns {
		counts[col.offer] += found.Packs[i] * col.packs
	}
	for i := range s.Offers {
		p.buy(&s.Offers[i], counts[i])
	}
	p.bound(found.Bound)
	if lights {
		if !m.light(p, found) {
			return c.fail(units.ErrLimit, "needs", group[0].like.Item.String(), "at most "+strconv.Itoa(maxStrings)+" strings in all")
		}
		// What else the packs hold is left over.
		var others []Lot
		for i, o := range s.Offers {
			for _, h := range times(nil, o.holds(), counts[i]) {
				if !slices.ContainsFunc(group, func(l *line) bool { return l.takes(h.Item) }) {
					others = append(others, h)
				}
			}
		}
		p.Left = append(p.Left, rest(others)...)
	} else {
		m.unpack(p, found, counts)
	}
	return nil
}

// solve searches for the packs that serve the demands at the least cost, lowered to what can be served.
func (m *coupling) solve(effort *int64) supply.Result {
	found := supply.Solve(&m.program, m.start(), effort)
	if found.None {
		m.shrink(effort)
		found = supply.Solve(&m.program, m.start(), effort)
	}
	return found
}

// inTurn serves the demands one after another, each at the least cost from what those before it leave: a way,
// where the search for the best one is too long. What all cost at the least is not known.
func (m *coupling) inTurn(effort *int64) supply.Result {
	g := &m.program
	all := supply.Result{Packs: make([]int64, len(g.Packs))}
	have := slices.Clone(g.Have)
	for d := range g.Demands {
		one := *m
		one.demands = m.demands[d : d+1]
		one.program = supply.Problem{Packs: slices.Clone(g.Packs), Have: have, Demands: g.Demands[d : d+1], Rows: slices.Clone(g.Rows)}
		for j, n := range all.Packs {
			one.program.Packs[j].Limit -= n
		}
		for i := range one.program.Rows {
			r := &one.program.Rows[i]
			for k, j := range r.Col {
				r.Least -= r.Coef[k] * all.Packs[j]
			}
		}
		planned, found := g.Demands[d], supply.Result{}
		for range 2 {
			share := *effort / int64(2*(len(g.Demands)-d))
			left := share
			found = one.solve(&left)
			*effort -= share - left
			if found.Packs != nil {
				break
			}
			planned.Take = 0 // of any types, then
			one.program.Demands[0] = planned
		}
		if found.Packs == nil {
			return found
		}
		for j, n := range found.Packs {
			all.Packs[j] += n
			for _, h := range g.Packs[j].Holds {
				have[h.Thing] += n * h.N
			}
		}
		for t, n := range found.Gets[0] {
			have[t] -= n
		}
		all.Gets = append(all.Gets, found.Gets[0])
	}
	return all
}

// boxes makes the program of lines of pieces.
func (m *coupling) boxes() {
	index := map[Item]int{}
	thing := func(i Item) int {
		if t, ok := index[i]; ok {
			return t
		}
		if !slices.ContainsFunc(m.lines, func(l *line) bool { return l.takes(i) }) {
			return -1
		}
		index[i] = len(m.things)
		m.things = append(m.things, i)
		m.program.Have = append(m.program.Have, 0)
		return index[i]
	}
	for _, o := range m.shop.Owned {
		if o.Quantity.Length != 0 {
			continue
		}
		if t := thing(o.Item); t >= 0 {
			m.program.Have[t] += int64(o.Quantity.Pieces)
			m.owned = append(m.owned, o)
		}
	}
	type box struct {
		offer int
		holds []supply.Hold
	}
	var boxes []box
	for i, o := range m.shop.Offers {
		b := box{offer: i}
		for _, h := range o.holds() {
			if h.Quantity.Length != 0 {
				continue
			}
			if t := thing(h.Item); t >= 0 {
				if k := slices.IndexFunc(b.holds, func(x supply.Hold) bool { return x.Thing == t }); k >= 0 {
					b.holds[k].N += int64(h.Quantity.Pieces)
				} else {
					b.holds = append(b.holds, supply.Hold{Thing: t, N: int64(h.Quantity.Pieces)})
				}
			}
		}
		if b.holds != nil {
			boxes = append(boxes, b)
		}
	}
	wanted := make([]int64, len(m.things)) // of each thing, at most
	for k, l := range m.lines {
		need, _ := l.planned()
		d := supply.Demand{N: need}
		if a := l.assort(); a.types != 0 {
			d.Take, d.Least, d.Most = a.types, a.least, a.most
		}
		types := map[string]int{}
		for t, i := range m.things {
			if !l.takes(i) {
				continue
			}
			wanted[t] += need
			k, ok := types[i.Type]
			if !ok {
				k = len(d.Kinds)
				types[i.Type] = k
				d.Kinds = append(d.Kinds, nil)
			}
			d.Kinds[k] = append(d.Kinds[k], t)
		}
		m.program.Demands = append(m.program.Demands, d)
		m.demands = append(m.demands, target{k, -1})
	}
	for _, b := range boxes {
		most := int64(0)
		for _, h := range b.holds {
			most = max(most, (wanted[h.Thing]+h.N-1)/h.N)
		}
		m.offer(b.offer, b.holds, most)
	}
}

// offer adds the columns of an offer, of which no more than most packs are of use.
func (m *coupling) offer(offer int, holds []supply.Hold, most int64) {
	o := m.shop.Offers[offer]
	g := &m.program
	limit := min(o.Shelf.limit(), most)
	bulk := int64(0)
	for _, h := range o.holds() {
		bulk += int64(h.Quantity.Pieces)
	}
	first := len(g.Packs)
	add := func(packs, cost, limit int64) int {
		var many []supply.Hold
		for _, h := range holds {
			many = append(many, supply.Hold{Thing: h.Thing, N: packs * h.N})
		}
		g.Packs = append(g.Packs, supply.Pack{Holds: many, Cost: cost, Bulk: packs * bulk, Limit: limit})
		m.columns = append(m.columns, column{offer, packs})
		return len(g.Packs) - 1
	}
	add(1, price(o.Price), limit)
	for _, d := range o.Deals {
		n := int64(d.Packs)
		if d.Packs > 0 {
			// More than is of use may be the cheaper, up to one bundle.
			if room := min(o.Shelf.limit(), most+n-1) / n; room > 0 {
				add(n, price(d.Price), room)
			}
			continue
		}
		n = int64(d.From)
		room := min(o.Shelf.limit(), max(most, n))
		if room < n {
			continue
		}
		j := add(1, price(d.Price), room)
		g.Packs = append(g.Packs, supply.Pack{Limit: 1})
		m.columns = append(m.columns, column{})
		g.Rows = append(g.Rows,
			intprog.Row{Col: []int{j, j + 1}, Coef: []int64{1, -n}},
			intprog.Row{Col: []int{j, j + 1}, Coef: []int64{-1, room}})
	}
	if last := len(g.Packs); o.Shelf != 0 && last-first > 1 {
		row := intprog.Row{Least: -o.Shelf.limit()}
		for j := first; j < last; j++ {
			if m.columns[j].packs != 0 {
				row.Col, row.Coef = append(row.Col, j), append(row.Coef, -m.columns[j].packs)
			}
		}
		g.Rows = append(g.Rows, row)
	}
}

// lights makes the program of strings of lights: each goes to one room, and the strings of a
// room are of one type and color.
func (m *coupling) lights() {
	g := &m.program
	for k, l := range m.lines {
		for w, wish := range l.wishes {
			g.Demands = append(g.Demands, supply.Demand{Kinds: [][]int{{len(g.Have)}}, N: int64(wish.Quantity.Pieces)})
			g.Have = append(g.Have, 0)
			m.demands = append(m.demands, target{k, w})
		}
	}
	wanted := func(i Item) bool {
		return slices.ContainsFunc(m.lines, func(l *line) bool { return l.takes(i) })
	}
	for _, o := range m.shop.Owned {
		if o.Quantity.Length == 0 && o.Quantity.Pieces != 0 && wanted(o.Item) {
			m.share(stringLot{lot: o, count: 1}, 1)
		}
	}
	for i, o := range m.shop.Offers {
		var holds []Lot
		most := int64(0)
		for _, h := range o.holds() {
			if h.Quantity.Length != 0 || !wanted(h.Item) {
				continue
			}
			holds = append(holds, h)
			for r, t := range m.demands {
				if m.lines[t.line].takes(h.Item) {
					most += (g.Demands[r].N + int64(h.Quantity.Pieces) - 1) / int64(h.Quantity.Pieces)
				}
			}
		}
		if len(holds) == 0 {
			continue
		}
		var from []int
		first := len(g.Packs)
		m.offer(i, nil, most)
		for k := first; k < len(g.Packs); k++ {
			if m.columns[k].packs != 0 {
				from = append(from, k)
			}
		}
		for _, h := range holds {
			m.share(stringLot{lot: h, from: from}, min(o.Shelf.limit(), most+1000))
		}
	}
	m.alike()
}

// share adds the columns that give strings, of which there are at most so many, to rooms.
func (m *coupling) share(s stringLot, most int64) {
	g := &m.program
	row := intprog.Row{Least: -s.count}
	for _, k := range s.from {
		row.Col, row.Coef = append(row.Col, k), append(row.Coef, m.columns[k].packs)
	}
	lamps := int64(s.lot.Quantity.Pieces)
	for room, t := range m.demands {
		if !m.lines[t.line].takes(s.lot.Item) {
			continue
		}
		j := len(g.Packs)
		g.Packs = append(g.Packs, supply.Pack{Holds: []supply.Hold{{Thing: room, N: lamps}}, Limit: min(most, (g.Demands[room].N+lamps-1)/lamps)})
		m.columns = append(m.columns, column{})
		row.Col, row.Coef = append(row.Col, j), append(row.Coef, -1)
		s.uses = append(s.uses, stringUse{room, j})
	}
	g.Rows = append(g.Rows, row)
	m.spread = append(m.spread, s)
}

// alike lets each room have strings of one type and color only.
func (m *coupling) alike() {
	g := &m.program
	var varieties []Item
	variety := func(s stringLot) Item {
		i := s.lot.Item
		i.Size = 0
		return i
	}
	for _, s := range m.spread {
		if v := variety(s); !slices.Contains(varieties, v) {
			varieties = append(varieties, v)
		}
	}
	if len(varieties) < 2 {
		return
	}
	for room := range m.demands {
		one := intprog.Row{Least: -1}
		for _, v := range varieties {
			y := len(g.Packs)
			g.Packs = append(g.Packs, supply.Pack{Limit: 1})
			m.columns = append(m.columns, column{})
			one.Col, one.Coef = append(one.Col, y), append(one.Coef, -1)
			for _, s := range m.spread {
				if variety(s) != v {
					continue
				}
				for _, u := range s.uses {
					if u.room == room {
						g.Rows = append(g.Rows, intprog.Row{Col: []int{y, u.column}, Coef: []int64{g.Packs[u.column].Limit, -1}})
					}
				}
			}
		}
		g.Rows = append(g.Rows, one)
	}
}

// start returns packs to begin with, or all there are where greedy serves not every demand. Of lights there is no
// such start.
func (m *coupling) start() []int64 {
	if m.lines[0].like.Item.Kind.whole() {
		return nil
	}
	if x := m.greedy(); x != nil {
		return x
	}
	return m.all()
}

// greedy returns packs taken one after another, each time the pack that costs least for a piece
// that is still missing, or nil if something stays missing or so many types are asked for.
func (m *coupling) greedy() []int64 {
	g := &m.program
	serves := make([][]int, len(g.Have)) // of each thing, the demands
	missing := make([]int64, len(g.Demands))
	all := int64(0)
	for d, demand := range g.Demands {
		if demand.Take != 0 {
			return nil
		}
		missing[d] = demand.N
		all += demand.N
		for _, things := range demand.Kinds {
			for _, t := range things {
				serves[t] = append(serves[t], d)
			}
		}
	}
	give := func(t int, n int64) {
		for _, d := range serves[t] {
			k := min(n, missing[d])
			missing[d] -= k
			all -= k
			n -= k
		}
	}
	for t, n := range g.Have {
		give(t, n)
	}
	x := make([]int64, len(g.Packs))
	// worth returns how many pieces of a pack are missing, and how many such packs in a row are worth as much.
	worth := func(j int) (pieces, packs int64) {
		packs = g.Packs[j].Limit - x[j]
		if packs == 0 {
			return 0, 0
		}
		for _, h := range g.Packs[j].Holds {
			wanted := int64(0)
			for _, d := range serves[h.Thing] {
				wanted += missing[d]
			}
			pieces += min(h.N, wanted)
			packs = min(packs, max(1, wanted/h.N))
		}
		return pieces, packs
	}
	var queue worths
	for j, k := range g.Packs {
		if pieces, _ := worth(j); pieces != 0 && m.columns[j].packs == 1 {
			heap.Push(&queue, worthOf{j, k.Cost, pieces})
		}
	}
	for all != 0 && len(queue) != 0 {
		top := &queue[0]
		pieces, packs := worth(top.pack)
		switch {
		case pieces == 0:
			heap.Pop(&queue)
		case pieces < top.pieces: // others have brought some of them
			top.pieces = pieces
			heap.Fix(&queue, 0)
		default:
			x[top.pack] += packs
			for _, h := range g.Packs[top.pack].Holds {
				give(h.Thing, h.N*packs)
			}
		}
	}
	if all != 0 {
		return nil
	}
	return x
}

// A worthOf is how many pieces that are missing a pack brings, and what it costs.
type worthOf struct {
	pack         int
	cost, pieces int64
}

// worths are a heap, the pack that costs least for a missing piece first.
type worths []worthOf

func (w worths) Len() int      { return len(w) }
func (w worths) Swap(i, j int) { w[i], w[j] = w[j], w[i] }
func (w *worths) Push(x any)   { *w = append(*w, x.(worthOf)) }
func (w *worths) Pop() any {
	last := (*w)[len(*w)-1]
	*w = (*w)[:len(*w)-1]
	return last
}

func (w worths) Less(i, j int) bool {
	a, b := w[i], w[j]
	return cmp.Or(cmp.Compare(a.cost*b.pieces, b.cost*a.pieces), cmp.Compare(a.pack, b.pack)) < 0
}

// all returns all packs there are.
func (m *coupling) all() []int64 {
	x := make([]int64, len(m.program.Packs))
	for j, k := range m.program.Packs {
		if m.columns[j].packs == 1 {
			x[j] = k.Limit
		}
	}
	return x
}

// shrink lowers the demands to what can be served: as many types as there are, then the
// least of each line and then what is planned, in the order of the lines.
func (m *coupling) shrink(effort *int64) {
	planned := slices.Clone(m.program.Demands)
	served := &m.program
	easy := *served // of no cost and no bulk: only whether there is a way
	easy.Packs = slices.Clone(served.Packs)
	for j := range easy.Packs {
		easy.Packs[j].Cost, easy.Packs[j].Bulk = 0, 0
	}
	for d := range served.Demands {
		demand := &served.Demands[d]
		demand.N, demand.Take = 0, 0
	}
	possible := func() bool {
		// What the program takes to be written down, besides what its search takes.
		if *effort -= int64(20 * (len(easy.Packs) + len(served.Demands) + len(served.Rows))); *effort < 0 {
			return false
		}
		easy.Demands = served.Demands
		share := max(1000, *effort/4)
		left := share
		r := supply.Solve(&easy, m.all(), &left)
		*effort -= share - left
		return r.Packs != nil
	}
	raise := func(d int, from, to int64) {
		demand := &served.Demands[d]
		lo, hi := from, to // lo is possible
		for demand.N = hi; lo < hi; {
			if possible() {
				lo = demand.N
			} else {
				hi = demand.N - 1
			}
			demand.N = lo + (hi-lo+1)/2
		}
		demand.N = lo
	}
	bounded := func(spare bool, upTo func(l *line, d int) int64) {
		for d, t := range m.demands {
			l := m.lines[t.line]
			if isSpare := l.wishes[max(0, t.wish)].spare; isSpare != spare {
				continue
			}
			demand := &served.Demands[d]
			to := upTo(l, d)
			if demand.Take == 0 && planned[d].Take != 0 && demand.N == 0 {
				// As many types as there are at least so many of.
				for take := planned[d].Take; take != 0; take-- {
					demand.Take, demand.N = take, int64(take)*demand.Least
					if possible() {
						break
					}
					demand.Take, demand.N = 0, 0
				}
			}
			if demand.Take > 0 {
				to = min(to, int64(demand.Take)*demand.Most)
			}
			if demand.N < to {
				raise(d, demand.N, to)
			}
		}
	}
	leastOf := func(l *line, d int) int64 {
		if t := m.demands[d]; t.wish >= 0 {
			return l.wishes[t.wish].least
		}
		_, least := l.planned()
		return least
	}
	bounded(false, leastOf)
	bounded(false, func(l *line, d int) int64 { return planned[d].N })
	bounded(true, func(l *line, d int) int64 { return planned[d].N })
}

// unpack shares out what was found, thing by thing.
func (m *coupling) unpack(p *Purchase, found supply.Result, counts map[int]int64) {
	p.Owned = rest(m.owned)
	lots := slices.Clone(m.owned)
	for i, o := range m.shop.Offers {
		lots = times(lots, o.holds(), counts[i])
	}
	where := make(map[Item][]int, len(m.things)) // of each thing, its lots
	for _, thing := range m.things {
		where[thing] = nil
	}
	for i, l := range lots {
		if at, ok := where[l.Item]; ok {
			where[l.Item] = append(at, i)
		}
	}
	first := 0
	for d, l := range m.lines {
		total := int64(0)
		for _, n := range found.Gets[d] {
			total += n
		}
		t := 0
		for w, n := range allot(total, l.wishes) {
			share := &p.Shares[first+w]
			for ; n > 0; t++ {
				k := min(n, found.Gets[d][t])
				if k == 0 {
					continue
				}
				found.Gets[d][t] -= k
				n -= k
				share.add(Lot{m.things[t], Quantity{Pieces: int(k)}})
				for _, i := range where[m.things[t]] {
					took := min(k, int64(lots[i].Quantity.Pieces))
					lots[i].Quantity.Pieces -= int(took)
					k -= took
				}
				if n == 0 {
					break
				}
			}
		}
		first += len(l.wishes)
	}
	p.Left = rest(lots)
}

// light says which strings go to which room, unless they are too many.
func (m *coupling) light(p *Purchase, found supply.Result) bool {
	strings := int64(0)
	type kept struct {
		lot  Lot
		left int64
	}
	lots := make([]kept, 0, len(m.spread))
	for _, sp := range m.spread {
		n := sp.count
		if sp.from != nil {
			n = 0
			for _, j := range sp.from {
				n += found.Packs[j] * m.columns[j].packs
			}
		} else {
			p.Owned = append(p.Owned, sp.lot)
		}
		strings += n
		lots = append(lots, kept{sp.lot, n})
	}
	if strings > maxStrings {
		return false
	}
	for d := range m.demands {
		share := &p.Shares[d]
		for k, sp := range m.spread {
			for _, u := range sp.uses {
				n := found.Packs[u.column]
				if u.room != d || n == 0 {
					continue
				}
				lots[k].left -= n
				for range n {
					share.add(sp.lot)
				}
			}
		}
	}
	for _, k := range lots {
		for range k.left {
			p.Left = append(p.Left, k.lot)
		}
	}
	return true
}
