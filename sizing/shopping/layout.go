package shopping

import (
	"cmp"
	"slices"

	"example.com/fircone/internal/cutting"
	"example.com/fircone/units"
)

// A layout is strands and rolls being cut, the pieces of each room from the shortest that
// will do, so that the longest remain.
type layout struct {
	item  Item
	join  Join
	bars  []bar // by rising length; of equal length, in the order of the stock
	cuts  []bar
	begun bar // a strand that the last run was cut from; its n is 0 if there is none
}

// A bar is a number of strands or rolls, all cut in one way so far.
type bar struct {
	from   int // in the order of the stock: owned first
	order  int // of those from there, in the order of the patterns
	offer  string
	roll   units.Length
	left   units.Length
	n      int64
	pieces []portion
}

// A portion is what one room gets of a strand or a roll.
type portion struct {
	room     string
	quantity Quantity
}

// layout lays the whole pieces out as the patterns say.
func (c *checker) layout(item Item, list []portion, d demand, stock itemStock, counts []int64, patterns []cutting.Pattern) layout {
	y := layout{item: item, join: stock.join}
	there := make([]int64, 0, len(stock.owned)+len(stock.offers)) // strands and rolls, in the order of the stock
	for _, o := range stock.owned {
		there = append(there, o.Quantity.strand().n)
	}
	for i, o := range stock.offers {
		there = append(there, o.pack.strand().n*counts[i])
	}
	y.bars = make([]bar, 0, len(patterns)+len(there))
	name := func(i int) string {
		if k := i - len(stock.owned); k >= 0 {
			return stock.offers[k].Name
		}
		return ""
	}
	// Who still gets pieces of each length, in the order of the wishes.
	left := make([]int, len(list))
	for i, w := range list {
		if w.quantity.Length != 0 {
			left[i] = w.quantity.Pieces
		}
	}
	pick := func(l units.Length, n int64, rolls int64) (pieces []portion, many int64) {
		for i := range list {
			if list[i].quantity.Length != l || left[i] == 0 {
				continue
			}
			if len(pieces) == 0 && int64(left[i]) >= n {
				return []portion{{list[i].room, Quantity{Pieces: int(n), Length: l}}}, min(rolls, int64(left[i])/n)
			}
			k := min(int64(left[i]), n)
			pieces = append(pieces, portion{list[i].room, Quantity{Pieces: int(k), Length: l}})
			if n -= k; n == 0 {
				break
			}
		}
		return pieces, 1
	}
	take := func(pieces []portion, many int64) {
		for _, p := range pieces {
			n := p.quantity.Pieces * int(many)
			for i := range list {
				if list[i].quantity.Length == p.quantity.Length && list[i].room == p.room && n != 0 {
					k := min(n, left[i])
					left[i] -= k
					n -= k
				}
			}
		}
	}
	patterns = slices.Clone(patterns)
	slices.SortStableFunc(patterns, func(a, b cutting.Pattern) int {
		if a.Roll != b.Roll {
			return a.Roll - b.Roll
		}
		return slices.Compare(b.Take, a.Take)
	})
	for _, p := range patterns {
		for rolls := p.Rolls; rolls > 0; {
			many := rolls
			var all []portion
			rest := units.Length(0)
			for k, n := range p.Take {
				if n == 0 {
					continue
				}
				pieces, m := pick(d.wholes[k].Length, n, rolls)
				all, many = append(all, pieces...), min(many, m)
				rest += units.Length(n) * d.wholes[k].Length
			}
			many = max(1, many)
			take(all, many)
			roll := units.Length(y.length(stock, p.Roll))
			y.bars = append(y.bars, bar{from: p.Roll, order: len(y.bars), offer: name(p.Roll), roll: roll, left: roll - rest, n: many, pieces: all})
			there[p.Roll] -= many
			rolls -= many
		}
	}
	for i, n := range there {
		if n > 0 {
			l := y.length(stock, i)
			y.bars = append(y.bars, bar{from: i, order: len(y.bars), offer: name(i), roll: l, left: l, n: n})
		}
	}
	slices.SortStableFunc(y.bars, func(a, b bar) int { return cmp.Compare(a.left, b.left) })
	return y
}

// length returns the length of the i-th roll of the stock.
func (y *layout) length(stock itemStock, i int) units.Length {
	if k := i - len(stock.owned); k >= 0 {
		return stock.offers[k].pack.Length
	}
	return stock.owned[i].Quantity.Length
}

// runs lays out the running lengths among the wishes, and returns what each gets.
func (y *layout) runs(c *checker, list []portion) []units.Length {
	gets := make([]units.Length, len(list))
	var runs []run
	for i, w := range list {
		if w.quantity.Pieces == 0 && w.quantity.Length != 0 {
			runs = append(runs, run{i, w.quantity.Length})
		}
	}
	y.cuts = make([]bar, 0, len(y.bars)+2*len(runs)) // most runs end one strand and begin another
	hang := func(runs []run) {
		for _, r := range runs {
			gets[r.at] = y.run(list[r.at].room, r.length)
		}
		y.put()
	}
	clusters := y.groups(c, runs)
	if clusters == nil {
		hang(runs)
	}
	all := y.bars
	for _, g := range clusters {
		y.bars = g.bars
		slices.SortFunc(g.runs, func(a, b run) int { return a.at - b.at })
		hang(g.runs)
		for k, b := range y.bars { // what is not used goes back
			all[g.of[k]].n += b.n
		}
	}
	y.bars = all
	return gets
}

// A cluster is runs that are hung from strands of their own.
type cluster struct {
	runs []run
	bars []bar
	of   []int // which of all bars they are
}

// groups puts runs together that share strands, if that saves joins, or else returns nil.
func (y *layout) groups(c *checker, runs []run) []cluster {
	if len(runs) < 2 || len(runs) > maxParted || y.join.Overlap == 0 || y.join.Shortest != 0 || y.join.Uncut {
		return nil
	}
	work := min(c.work, 2_000_000)
	began := work
	p := &parting{overlap: y.join.Overlap, runs: slices.Clone(runs), work: &work}
	falling(p.runs)
	for i, b := range y.bars {
		if b.left > y.join.Overlap && b.n != 0 {
			p.strands = append(p.strands, strand{n: b.n, length: b.left - y.join.Overlap, bar: i})
		}
	}
	slices.SortStableFunc(p.strands, func(a, b strand) int { return cmp.Compare(b.length, a.length) })
	g := p.groups()
	c.work -= began - work
	if g < 2 {
		return nil
	}
	var clusters []cluster
	for _, part := range p.parts {
		cl := cluster{runs: slices.Clone(part.runs)}
		for k := len(p.strands) - 1; k >= 0; k-- { // by rising length
			if n := part.takes[k]; n != 0 {
				b := y.bars[p.strands[k].bar]
				b.n = n
				cl.bars, cl.of = append(cl.bars, b), append(cl.of, p.strands[k].bar)
				y.bars[p.strands[k].bar].n -= n
			}
		}
		clusters = append(clusters, cl)
	}
	return clusters
}

// put lays the strand that was begun aside, for its offcut.
func (y *layout) put() {
	if b := &y.begun; b.n > 0 {
		y.cuts = append(y.cuts, *b)
		b.n = 0
	}
}

// cut returns n of b as a cut.
func (y *layout) cut(b *bar, n int64, left units.Length) bar {
	c := *b
	c.n, c.left = n, left
	return c
}

// run joins strands for one run, and returns how long it comes to: at most need, but where a strand is not cut or a
// piece is not to be shorter.
func (y *layout) run(room string, need units.Length) units.Length {
	over, shortest := y.join.Overlap, y.join.Shortest
	got := units.Length(0)
	for got < need {
		lost := over // by the join to what there is
		if got == 0 {
			lost = 0
		}
		want := max(need-got+lost, shortest)
		if b := &y.begun; b.n > 0 {
			if (b.left > over || b.left >= want) && b.left >= shortest {
				l := min(b.left, want)
				b.pieces = append(slices.Clip(b.pieces), piece(room, l))
				b.left -= l
				got += l - lost
				if b.left == 0 {
					y.put()
				}
				continue
			}
			y.put()
		}
		usable := func(b bar) bool { return b.n != 0 && b.left > over && b.left >= shortest }
		at := slices.IndexFunc(y.bars, func(b bar) bool { return usable(b) && b.left >= want })
		many := int64(1)
		if at == -1 {
			if at = slices.IndexFunc(y.bars, usable); at < 0 {
				break
			}
			// As many of them as it takes for the rest to come from one of the longest, or all.
			if b := y.bars[at]; got > 0 {
				many = min(b.n, int64(max(1, (want-y.longest()+b.left-over-1)/(b.left-over))))
			}
		}
		b := &y.bars[at]
		b.n -= many
		one := *b
		one.n = 1
		one.pieces = slices.Clone(b.pieces)
		if many > 1 || one.left <= want || y.join.Uncut {
			one.pieces = append(one.pieces, piece(room, one.left))
			y.cuts = append(y.cuts, y.cut(&one, many, 0))
			got += units.Length(many) * (one.left - lost)
			continue
		}
		y.begun = one
	}
	return got
}

// fewest returns the layout that joins the fewest pieces of those tried, and what each of the wishes gets: the one of runs
// or, where that joins more than one piece for each run and more than it takes, one of long.
func (c *checker) fewest(item Item, list []portion, d demand, stock itemStock, counts []int64, patterns []cutting.Pattern) (layout, []units.Length) {
	best := c.layout(item, list, d, stock, counts, patterns)
	gets := best.runs(c, list)
	pieces := best.pieces()
	if len(d.runs) > maxParted || stock.join.Uncut || pieces <= max(int64(len(d.runs)), best.least(gets)) {
		return best, gets
	}
	for _, longest := range []bool{true, false} {
		y := c.layout(item, list, d, stock, counts, patterns)
		got := y.long(list, longest)
		less := false // than before, of any
		for i, l := range got {
			less = less || l < gets[i]
		}
		if n := y.pieces(); !less && n < pieces {
			best, gets, pieces = y, got, n
		}
	}
	return best, gets
}

// least returns how many pieces each run takes at least that comes to as much, since none is longer than the longest roll.
func (y *layout) least(gets []units.Length) (n int64) {
	longest := units.Length(0)
	for _, list := range [][]bar{y.cuts, y.bars} {
		for _, b := range list {
			longest = max(longest, b.roll)
		}
	}
	for _, l := range gets {
		if l > 0 {
			n++
		}
		if more := l - longest; more > 0 { // from strands that add to it, and so are longer than the overlap
			n += int64((more-1)/(longest-y.join.Overlap)) + 1
		}
	}
	return n
}

// pieces returns how many pieces there are of all runs.
func (y *layout) pieces() (n int64) {
	for _, list := range [][]bar{y.cuts, y.bars} {
		for _, b := range list {
			for _, p := range b.pieces {
				if p.quantity.Pieces == 0 {
					n += b.n
				}
			}
		}
	}
	return n
}

// long lays out the running lengths, the longest or the shortest first, each from one strand if there is any as long, and
// else from the longest strands. It returns what each gets.
func (y *layout) long(list []portion, longest bool) []units.Length {
	gets := make([]units.Length, len(list))
	var order []int
	for i, w := range list {
		if w.quantity.Pieces == 0 && w.quantity.Length != 0 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		if longest {
			a, b = b, a
		}
		return cmp.Compare(list[a].quantity.Length, list[b].quantity.Length)
	})
	for _, i := range order {
		over, need, got := y.join.Overlap, list[i].quantity.Length, units.Length(0)
		for got < need {
			lost := over // by the join to what there is
			if got == 0 {
				lost = 0
			}
			want := max(need-got+lost, y.join.Shortest)
			at := slices.IndexFunc(y.bars, func(b bar) bool { return b.n > 0 && b.left >= want })
			many, piece := int64(1), want
			if at == -1 {
				// All of the longest, as far as it takes more than one.
				for at = len(y.bars) - 1; at >= 0 && y.bars[at].n == 0; at-- {
				}
				if at == -1 || y.bars[at].left <= over || y.bars[at].left < y.join.Shortest {
					break
				}
				if piece = y.bars[at].left; got > 0 {
					many = min(y.bars[at].n, int64((need-got-1)/(piece-over)))
				}
			}
			y.take(at, many, list[i].room, piece)
			got += units.Length(many) * (piece - lost)
		}
		gets[i] = got
	}
	return gets
}

// take cuts a piece for a room off so many of a bar, each of which goes back to where its length puts it.
func (y *layout) take(at int, many int64, room string, l units.Length) {
	b := &y.bars[at]
	b.n -= many
	rest := *b
	rest.n, rest.left = many, b.left-l
	rest.pieces = append(slices.Clip(b.pieces), piece(room, l))
	to, _ := slices.BinarySearchFunc(y.bars, rest.left, func(b bar, l units.Length) int { return cmp.Compare(b.left, l) })
	y.bars = slices.Insert(y.bars, to, rest)
}

func piece(room string, l units.Length) portion { return portion{room, Quantity{Length: l}} }

// longest returns the length of the longest strand there is.
func (y *layout) longest() units.Length {
	most := units.Length(0)
	for _, b := range y.bars {
		if b.n != 0 {
			most = max(most, b.left)
		}
	}
	return most
}

// finish returns all cuts, in the order of the stock and equal ones together, and what is left.
func (y *layout) finish() ([]Cut, []Lot) {
	var left []Lot
	keep := func(l units.Length, n int64) {
		if n == 0 || l == 0 {
			return
		}
		if k := len(left) - 1; k != -1 && left[k].Quantity.Length == l {
			left[k].Quantity.Pieces += int(n)
			return
		}
		left = append(left, Lot{y.item, Quantity{Pieces: int(n), Length: l}})
	}
	for i := range y.bars {
		b := &y.bars[i]
		if b.n > 0 && b.pieces != nil {
			y.cuts = append(y.cuts, y.cut(b, b.n, b.left))
			b.n = 0
		}
	}
	slices.SortStableFunc(y.cuts, func(a, b bar) int { return cmp.Or(a.from-b.from, a.order-b.order) })
	made := y.cuts[:0]
	for _, p := range y.cuts {
		if k := len(made) - 1; k >= 0 && made[k].from == p.from && made[k].left == p.left && slices.Equal(made[k].pieces, p.pieces) {
			made[k].n += p.n
			continue
		}
		made = append(made, p)
	}
	cuts := slices.Grow([]Cut(nil), len(made))
	for _, b := range made {
		c := Cut{Offer: b.offer, Roll: b.roll, Rolls: int(b.n), Pieces: make([]Need, len(b.pieces))}
		for i, p := range b.pieces {
			c.Pieces[i] = Need{Item: y.item, Room: p.room, Quantity: p.quantity}
		}
		cuts = append(cuts, c)
	}
	type stretch struct {
		l units.Length
		n int64
	}
	all := make([]stretch, 0, few)
	for _, b := range y.bars {
		all = append(all, stretch{b.left, b.n})
	}
	for _, b := range made {
		all = append(all, stretch{b.left, b.n})
	}
	slices.SortStableFunc(all, func(a, b stretch) int { return cmp.Compare(b.l, a.l) })
	for _, s := range all {
		keep(s.l, s.n)
	}
	return cuts, left
}
