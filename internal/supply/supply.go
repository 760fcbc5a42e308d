// Package supply finds the packs of least cost that serve several demands at once, where a
// pack may hold several things, a demand may be served by any of several things, and
// some demands ask for so many different kinds with so many of each.
//
// It is one integer program: how many packs of each, and which kinds. Who gets what is
// a flow of things to demands, which is whole by itself; so it is left out of the
// program, and the program has for each set of things that the flow is cut by a row
//
//	what all packs hold of the set ≥ what the demands can have from nothing else
//
// which is made when a choice of packs breaks it (Gale 1957; Benders' decomposition).
//
// Sources: D. Gale, A theorem on flows in networks, Pacific Journal of Mathematics 7 (1957)
// 1073-1082 (from memory); J. F. Benders, Numerische Mathematik 4 (1962) 238-252 (from memory).
package supply

import (
	"math"
	"slices"

	"example.com/fircone/internal/intprog"
)

// A Pack is a kind of pack. One that holds nothing is a choice for Problem.Rows.
type Pack struct {
	Holds []Hold
	Cost  int64
	Bulk  int64 // the tie after cost
	Limit int64 // most packs there are
}

// A Hold is a number of one thing.
type Hold struct {
	Thing int
	N     int64
}

// A Demand is for N things of those in Kinds, any of them. With Take above 0 they are to
// be of just so many kinds, from Least to Most of each, and Take·Least ≤ N ≤ Take·Most.
type Demand struct {
	Kinds       [][]int // the things of each kind
	N           int64
	Take        int
	Least, Most int64
}

// A Problem is packs, things and demands.
type Problem struct {
	Packs   []Pack
	Have    []int64 // of each thing, there already
	Demands []Demand
	Rows    []intprog.Row // what the packs must keep besides
}

// A Result is how many packs of each, or nil if nothing was found, and what of each
// thing each demand gets.
type Result struct {
	Packs []int64
	Gets  [][]int64
	Cost  int64
	Bound int64 // nothing that serves the demands costs less
	None  bool  // the demands cannot be served
}

// A kind is where a kind of a demand with Take stands among the columns.
type kind struct{ demand, kind, column int }

type model struct {
	*Problem
	program intprog.Problem
	kinds   []kind
	holders [][]Hold // of each thing: the packs that hold it, and how many
	net     *network
}

// newModel writes down the program of p.
func newModel(p *Problem) *model {
	m := &model{Problem: p, holders: make([][]Hold, len(p.Have))}
	g := &m.program
	column := func(cost, hi int64) int {
		g.Cost, g.Lo, g.Hi = append(g.Cost, cost), append(g.Lo, 0), append(g.Hi, hi)
		return len(g.Cost) - 1
	}
	for i, k := range p.Packs {
		column(k.Cost, k.Limit)
		for _, h := range k.Holds {
			m.holders[h.Thing] = append(m.holders[h.Thing], Hold{i, h.N})
		}
	}
	g.Rows = slices.Clone(p.Rows)
	for d, demand := range p.Demands {
		if demand.Take == 0 {
			continue
		}
		var most, least intprog.Row
		for k := range demand.Kinds {
			j := column(0, 1)
			m.kinds = append(m.kinds, kind{d, k, j})
			least.Col, least.Coef = append(least.Col, j), append(least.Coef, 1)
			most.Col, most.Coef = append(most.Col, j), append(most.Coef, -1)
		}
		least.Least, most.Least = int64(demand.Take), -int64(demand.Take)
		g.Rows = append(g.Rows, least, most)
	}
	m.net = m.network()
	// The row of all things that serve a demand, for each demand; and of each kind.
	for d, demand := range p.Demands {
		in := make([]bool, len(p.Have))
		for _, things := range demand.Kinds {
			for _, a := range things {
				in[a] = true
			}
		}
		g.Rows = append(g.Rows, m.row(in, func(e int) bool { return e == d }))
	}
	for _, k := range m.kinds {
		r := intprog.Row{Col: []int{k.column}, Coef: []int64{-p.Demands[k.demand].Least}}
		for _, a := range p.Demands[k.demand].Kinds[k.kind] {
			m.hold(&r, a)
		}
		g.Rows = append(g.Rows, r)
	}
	g.Broken = m.broken
	if m.ties(p.most()); !g.Weighs() {
		m.ties(0)
	}
	return m
}

// Solve searches for the packs of least cost, and of those, as far as the steps reach,
// for those of least bulk and then the fewest. It begins with start, which may be nil.
func Solve(p *Problem, start []int64, effort *int64) Result {
	m := newModel(p)
	var begin []int64
	if start != nil {
		begin = m.complete(start)
	}
	found := intprog.Solve(&m.program, begin, effort)
	out := Result{Cost: found.Cost, Bound: found.Bound, None: found.None}
	if found.X == nil {
		return out
	}
	out.Packs = slices.Clone(found.X[:len(p.Packs)])
	f := make([]float64, len(found.X))
	for j, v := range found.X {
		f[j] = float64(v)
	}
	m.net.set(f)
	m.net.flow()
	out.Gets = m.net.gets()
	return out
}

// most returns how many packs there are in all, or 2^20 if there are more.
func (p *Problem) most() int64 {
	most := 0.0
	for _, k := range p.Packs {
		most += float64(k.Limit)
	}
	return int64(min(most, 1<<20))
}

// ties sets what packs count by where the cost is the same: bulk, and so little for each pack that most of them
// count less than a unit of bulk; with 0, bulk alone. A pack of no bulk is a choice and counts nothing.
func (m *model) ties(most int64) {
	m.program.Tie = make([]int64, len(m.program.Cost))
	for i, k := range m.Packs {
		if k.Bulk > 0 {
			m.program.Tie[i] = min(k.Bulk, 1<<40)*(most+1) + min(most, 1)
		}
	}
}

// hold adds to r what packs hold of a thing, and what there is of it.
func (m *model) hold(r *intprog.Row, thing int) {
	for _, h := range m.holders[thing] {
		add(r, h.Thing, h.N)
	}
	r.Least -= m.Have[thing]
}

func add(r *intprog.Row, column int, coef int64) {
	if k := slices.Index(r.Col, column); k >= 0 {
		r.Coef[k] += coef
		return
	}
	r.Col, r.Coef = append(r.Col, column), append(r.Coef, coef)
}

// row returns the row of a set of things for the demands that have nothing else.
func (m *model) row(in []bool, demand func(d int) bool) intprog.Row {
	var r intprog.Row
	for a, ok := range in {
		if ok {
			m.hold(&r, a)
		}
	}
	for d := range m.Demands {
		if demand(d) {
			r.Least += m.Demands[d].N
		}
	}
	return r
}

// complete returns the columns of a choice of packs: the kinds with most of the things.
func (m *model) complete(packs []int64) []int64 {
	x := slices.Clone(packs)
	there := slices.Clone(m.Have)
	for i, n := range packs {
		for _, h := range m.Packs[i].Holds {
			there[h.Thing] += n * h.N
		}
	}
	for range m.kinds {
		x = append(x, 0)
	}
	for d, demand := range m.Demands {
		if demand.Take == 0 {
			continue
		}
		type lot struct {
			column int
			n      int64
		}
		var lots []lot
		for _, k := range m.kinds {
			if k.demand == d {
				l := lot{column: k.column}
				for _, a := range demand.Kinds[k.kind] {
					l.n += there[a]
				}
				lots = append(lots, l)
			}
		}
		slices.SortStableFunc(lots, func(a, b lot) int { return int(b.n - a.n) })
		for _, l := range lots[:min(demand.Take, len(lots))] {
			x[l.column] = 1
		}
	}
	return x
}

// broken returns the rows of sets of things of which x has too few, one of each part.
func (m *model) broken(x []float64) []intprog.Row {
	m.net.set(x)
	m.net.flow()
	return m.net.cuts()
}

// A network carries things to demands. Its nodes are the source, the sink, the demands (those of
// least numbers of kinds included), the kinds and the things. It falls into parts that
// share no things and no demands.
type network struct {
	*model
	arcs   []arc
	first  []int32 // of each node: where its arcs begin in out
	out    []int32
	thing0 int     // the first thing
	part   []int32 // of each node but the source and the sink
	parts  int
	there  []float64 // of each thing, by x
	supply []float64 // what is left of it
	level  []int32
	next   []int32
	line   []int32
	made   intprog.Row // the row being made
	place  []int       // of each column in it, -1 if not yet
}

type arc struct {
	to      int32
	endless bool
	room    float64
}

// network builds the nodes and arcs; their room is set for each x.
func (m *model) network() *network {
	n := &network{model: m}
	n.thing0 = 2 + len(m.Demands) + 2*len(m.kinds)
	nodes := n.thing0 + len(m.Have)
	var from []int32
	join := func(a, b int, endless bool) {
		from = append(from, int32(a), int32(b))
		n.arcs = append(n.arcs, arc{to: int32(b), endless: endless}, arc{to: int32(a)})
	}
	for d, demand := range m.Demands {
		join(0, 2+d, false)
		if demand.Take > 0 {
			continue
		}
		for _, things := range demand.Kinds {
			for _, a := range things {
				join(2+d, n.thing0+a, true)
			}
		}
	}
	base := 2 + len(m.Demands)
	for i, k := range m.kinds {
		firm, free := base+2*i, base+2*i+1
		join(0, firm, false)
		join(2+k.demand, free, false)
		for _, a := range m.Demands[k.demand].Kinds[k.kind] {
			join(firm, n.thing0+a, true)
			join(free, n.thing0+a, true)
		}
	}
	for a := range m.Have {
		join(n.thing0+a, 1, false)
	}
	n.first = make([]int32, nodes+1)
	for _, v := range from {
		n.first[v+1]++
	}
	for v := range nodes {
		n.first[v+1] += n.first[v]
	}
	n.out = make([]int32, len(from))
	n.next = slices.Clone(n.first[:nodes])
	for e, v := range from {
		n.out[n.next[v]] = int32(e)
		n.next[v]++
	}
	n.level, n.line = make([]int32, nodes), make([]int32, 0, nodes)
	n.there, n.supply = make([]float64, len(m.Have)), make([]float64, len(m.Have))
	n.place = make([]int, len(m.program.Cost))
	for j := range n.place {
		n.place[j] = -1
	}
	n.divide()
	return n
}

// divide numbers the parts.
func (n *network) divide() {
	n.part = make([]int32, len(n.level))
	for v := range n.part {
		n.part[v] = -1
	}
	for v := 2; v < len(n.part); v++ {
		if n.part[v] >= 0 {
			continue
		}
		n.part[v] = int32(n.parts)
		line := append(n.line[:0], int32(v))
		for k := 0; k < len(line); k++ {
			at := line[k]
			for _, e := range n.out[n.first[at]:n.first[at+1]] {
				if to := n.arcs[e].to; to > 1 && n.part[to] < 0 {
					n.part[to] = int32(n.parts)
					line = append(line, to)
				}
			}
		}
		n.parts++
	}
}

// set gives the arcs the room that x makes, and sends what goes by the first ways there are.
func (n *network) set(x []float64) {
	for a, there := range n.Have {
		n.there[a] = float64(there)
	}
	for i, packs := range x[:len(n.Packs)] {
		if packs == 0 {
			continue
		}
		for _, h := range n.Packs[i].Holds {
			n.there[h.Thing] += float64(float64(h.N) * packs)
		}
	}
	for a, there := range n.there {
		n.there[a] = max(0, there)
		n.supply[a] = n.there[a]
	}
	e := 0
	for d := range n.Demands {
		demand := &n.Demands[d]
		free := float64(demand.N - int64(demand.Take)*demand.Least)
		if demand.Take > 0 {
			n.room(e, free, 0)
			e += 2
			continue
		}
		first, sent := e, 0.0
		e += 2
		for _, things := range demand.Kinds {
			sent += n.ways(things, e, 2, free-sent)
			e += 2 * len(things)
		}
		n.room(first, free, sent)
	}
	for _, k := range n.kinds {
		demand := &n.Demands[k.demand]
		y := x[k.column]
		things := demand.Kinds[k.kind]
		firm, more := max(0, float64(float64(demand.Least)*y)), max(0, float64(float64(demand.Most-demand.Least)*y))
		sent := n.ways(things, e+4, 4, firm)
		n.room(e, firm, sent)
		d := n.first[2+k.demand] // the arc from the source to the demand comes first
		source := n.out[d] ^ 1
		left := n.arcs[source].room
		sent = n.ways(things, e+6, 4, min(left, more))
		n.room(e+2, more, sent)
		n.arcs[source].room -= sent
		n.arcs[source^1].room += sent
		e += 4 + 4*len(things)
	}
	for a, there := range n.there {
		n.room(e, there, there-n.supply[a])
		e += 2
	}
}

// room gives an arc its room, of which some is used.
func (n *network) room(e int, all, used float64) { n.arcs[e].room, n.arcs[e+1].room = all-used, used }

// ways sends as much as is there of things, and at most so much, by the arcs to them, which begin at e and are so
// far apart, and returns how much that is.
func (n *network) ways(things []int, e, step int, most float64) float64 {
	sent := 0.0
	for _, a := range things {
		f := min(n.supply[a], max(0, most-sent))
		n.supply[a] -= f
		n.arcs[e].room, n.arcs[e+1].room = math.MaxFloat64, f
		sent += f
		e += step
	}
	return sent
}

const drop = 1e-9

// flow sends as much more as goes from the source to the sink (Dinic).
func (n *network) flow() {
	for n.levels() {
		copy(n.next, n.first)
		for n.send(0, math.MaxFloat64) > 0 {
		}
	}
}

// levels works out how far each node is from the source, and reports whether the sink is
// within reach.
func (n *network) levels() bool {
	clear(n.level)
	n.level[0] = 1
	n.line = append(n.line[:0], 0)
	for k := 0; k < len(n.line) && n.level[1] == 0; k++ {
		v := n.line[k]
		for _, e := range n.out[n.first[v]:n.first[v+1]] {
			if a := &n.arcs[e]; a.room > drop && n.level[a.to] == 0 {
				n.level[a.to] = n.level[v] + 1
				n.line = append(n.line, a.to)
			}
		}
	}
	return n.level[1] > 0
}

func (n *network) send(v int32, most float64) float64 {
	if v == 1 {
		return most
	}
	for k, last := n.next[v], n.first[v+1]; k < last; k++ {
		e := n.out[k]
		a := &n.arcs[e]
		if a.room <= drop || n.level[a.to] != n.level[v]+1 {
			continue
		}
		if f := n.send(a.to, min(most, a.room)); f > drop {
			if !a.endless {
				a.room -= f
			}
			if back := &n.arcs[e^1]; !back.endless {
				back.room += f
			}
			n.next[v] = k
			return f
		}
	}
	n.next[v] = n.first[v+1]
	return 0
}

// cuts returns the rows of the nodes that the source still reaches after a flow that could not be more, one of
// each part.
func (n *network) cuts() []intprog.Row {
	short := make([]bool, n.parts)
	missing, wanted := 0.0, 0.0
	for _, e := range n.out[:n.first[1]] {
		a := &n.arcs[e]
		missing += a.room
		wanted += a.room + n.arcs[e^1].room
		if a.room > drop {
			short[n.part[a.to]] = true
		}
	}
	if missing < min(float64(1e-5*(1+wanted)), 0.5) {
		return nil
	}
	var rows []intprog.Row
	for part, is := range short {
		if is {
			rows = append(rows, n.cut(int32(part)))
		}
	}
	return rows
}

// cut returns the row of the nodes of one part.
func (n *network) cut(part int32) intprog.Row {
	r := intprog.Row{Col: n.made.Col[:0], Coef: n.made.Coef[:0]}
	add := func(column int, coef int64) {
		k := n.place[column]
		if k < 0 {
			k = len(r.Col)
			n.place[column] = k
			r.Col, r.Coef = append(r.Col, column), append(r.Coef, 0)
		}
		r.Coef[k] += coef
	}
	reached := func(v int) bool { return n.part[v] == part && n.level[v] > 0 }
	for d, demand := range n.Demands {
		if reached(2 + d) {
			r.Least += demand.N - int64(demand.Take)*demand.Least
		}
	}
	base := 2 + len(n.Demands)
	for i, k := range n.kinds {
		demand := &n.Demands[k.demand]
		if reached(base + 2*i) { // its least is wanted here
			add(k.column, -demand.Least)
		}
		if reached(2+k.demand) && n.level[base+2*i+1] == 0 { // so much can be had elsewhere
			add(k.column, demand.Most-demand.Least)
		}
	}
	for a := range n.Have {
		if reached(n.thing0 + a) {
			for _, h := range n.holders[a] {
				add(h.Thing, h.N)
			}
			r.Least -= n.Have[a]
		}
	}
	for _, j := range r.Col {
		n.place[j] = -1
	}
	n.made = r
	return intprog.Row{Col: slices.Clone(r.Col), Coef: slices.Clone(r.Coef), Least: r.Least}
}

// gets returns what each demand has of each thing by the flow.
func (n *network) gets() [][]int64 {
	gets := make([][]int64, len(n.Demands))
	for d := range gets {
		gets[d] = make([]int64, len(n.Have))
	}
	take := func(v, d int) {
		for _, e := range n.out[n.first[v]:n.first[v+1]] {
			if to := int(n.arcs[e].to); e%2 == 0 && to >= n.thing0 {
				gets[d][to-n.thing0] += int64(math.Round(n.arcs[e^1].room))
			}
		}
	}
	base := 2 + len(n.Demands)
	for d := range n.Demands {
		take(2+d, d)
	}
	for i, k := range n.kinds {
		take(base+2*i, k.demand)
		take(base+2*i+1, k.demand)
	}
	return gets
}
