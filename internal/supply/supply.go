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

// Solve searches for the packs of least cost, and of those, as far as the steps reach,
// for those of least bulk and then the fewest. It begins with start, which may be nil.
func Solve(p *Problem, start []int64, effort *int64) Result {
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
	var begin []int64
	if start != nil {
		begin = m.complete(start)
	}
	found := intprog.Solve(g, begin, effort)
	out := Result{Cost: found.Cost, Bound: found.Bound, None: found.None}
	if found.X == nil {
		return out
	}
	x := found.X
	if found.Cost == found.Bound {
		x = m.lightest(x, found.Cost, effort)
	}
	out.Packs = slices.Clone(x[:len(p.Packs)])
	f := make([]float64, len(x))
	for j, v := range x {
		f[j] = float64(v)
	}
	m.net.set(f)
	m.net.flow()
	out.Gets = m.net.gets()
	return out
}

// lightest returns x or another of the same cost with less bulk, or as much in fewer packs.
func (m *model) lightest(x []int64, cost int64, effort *int64) []int64 {
	second := m.program
	second.Cost = make([]int64, len(x))
	packs, all := int64(0), 1.0
	for i, k := range m.Packs {
		packs += x[i]
		all += float64(float64(k.Bulk) * float64(k.Limit))
	}
	if float64(all*float64(packs+1)) > 1<<50 {
		return x
	}
	same := intprog.Row{Least: -cost}
	for i, k := range m.Packs {
		if k.Bulk == 0 {
			continue
		}
		second.Cost[i] = k.Bulk*(packs+1) + 1
		if k.Cost != 0 {
			same.Col, same.Coef = append(same.Col, i), append(same.Coef, -k.Cost)
		}
	}
	second.Rows = append(slices.Clone(m.program.Rows), same)
	share := min(*effort, 2_000_000)
	left := share
	found := intprog.Solve(&second, x, &left)
	*effort -= share - left
	if found.X == nil {
		return x
	}
	return found.X
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

// broken returns the row of a set of things of which x has too few.
func (m *model) broken(x []float64) (intprog.Row, bool) {
	m.net.set(x)
	missing := m.net.wanted - m.net.flow()
	if missing < 1e-5*(1+math.Abs(m.net.wanted)) && missing < 0.5 {
		return intprog.Row{}, false
	}
	return m.net.cut()
}

// A network carries things to demands. Its nodes are the source, the demands (those of
// least numbers of kinds included), the kinds, the things and the sink.
type network struct {
	*model
	arcs   []arc
	out    [][]int // of each node: its arcs
	node   int     // nodes
	wanted float64
	level  []int
	next   []int
	thing0 int // the first thing
}

type arc struct {
	to   int
	room float64
	full float64
}

// network builds the nodes and arcs; their room is set for each x.
func (m *model) network() *network {
	n := &network{model: m}
	n.node = 2 + len(m.Demands) + 2*len(m.kinds)
	n.thing0 = n.node
	n.node += len(m.Have)
	n.out = make([][]int, n.node)
	for d, demand := range m.Demands {
		n.arc(0, 2+d)
		if demand.Take > 0 {
			continue
		}
		for _, things := range demand.Kinds {
			for _, a := range things {
				n.arc(2+d, n.thing0+a)
			}
		}
	}
	base := 2 + len(m.Demands)
	for i, k := range m.kinds {
		firm, free := base+2*i, base+2*i+1
		n.arc(0, firm)
		n.arc(2+k.demand, free)
		for _, a := range m.Demands[k.demand].Kinds[k.kind] {
			n.arc(firm, n.thing0+a)
			n.arc(free, n.thing0+a)
		}
	}
	for a := range m.Have {
		n.arc(n.thing0+a, 1)
	}
	return n
}

func (n *network) arc(from, to int) {
	n.out[from] = append(n.out[from], len(n.arcs))
	n.arcs = append(n.arcs, arc{to: to})
	n.out[to] = append(n.out[to], len(n.arcs))
	n.arcs = append(n.arcs, arc{to: from})
}

// set gives the arcs the room that x makes.
func (n *network) set(x []float64) {
	n.wanted = 0
	e := 0
	room := func(v float64) {
		v = max(0, v)
		n.arcs[e].room, n.arcs[e].full, n.arcs[e+1].room = v, v, 0
		e += 2
	}
	for _, demand := range n.Demands {
		free := float64(demand.N - int64(demand.Take)*demand.Least)
		room(free)
		n.wanted += free
		if demand.Take > 0 {
			continue
		}
		for _, things := range demand.Kinds {
			for range things {
				room(math.MaxFloat64)
			}
		}
	}
	for _, k := range n.kinds {
		demand := &n.Demands[k.demand]
		y := x[k.column]
		firm := float64(float64(demand.Least) * y)
		room(firm)
		n.wanted += max(0, firm)
		room(float64(float64(demand.Most-demand.Least) * y))
		for range demand.Kinds[k.kind] {
			room(math.MaxFloat64)
			room(math.MaxFloat64)
		}
	}
	for a, there := range n.Have {
		sum := float64(there)
		for _, h := range n.holders[a] {
			sum += float64(float64(h.N) * x[h.Thing])
		}
		room(sum)
	}
}

const drop = 1e-9

// flow sends as much as goes from the source to the sink, and returns how much (Dinic).
func (n *network) flow() float64 {
	total := 0.0
	for n.levels() {
		n.next = make([]int, n.node)
		for {
			f := n.send(0, math.MaxFloat64)
			if f <= drop {
				break
			}
			total += f
		}
	}
	return total
}

// levels works out how far each node is from the source, and reports whether the sink is
// within reach.
func (n *network) levels() bool {
	n.level = make([]int, n.node)
	n.level[0] = 1
	line := []int{0}
	for len(line) > 0 {
		v := line[0]
		line = line[1:]
		for _, e := range n.out[v] {
			if a := n.arcs[e]; a.room > drop && n.level[a.to] == 0 {
				n.level[a.to] = n.level[v] + 1
				line = append(line, a.to)
			}
		}
	}
	return n.level[1] > 0
}

func (n *network) send(v int, most float64) float64 {
	if v == 1 {
		return most
	}
	for ; n.next[v] < len(n.out[v]); n.next[v]++ {
		e := n.out[v][n.next[v]]
		a := &n.arcs[e]
		if a.room <= drop || n.level[a.to] != n.level[v]+1 {
			continue
		}
		if f := n.send(a.to, min(most, a.room)); f > drop {
			if a.full < math.MaxFloat64 || e%2 == 1 {
				a.room -= f
			}
			n.arcs[e^1].room += f
			return f
		}
	}
	return 0
}

// cut returns the row of the nodes that the source still reaches after the flow.
func (n *network) cut() (intprog.Row, bool) {
	n.levels()
	var r intprog.Row
	for d, demand := range n.Demands {
		if n.level[2+d] > 0 {
			r.Least += demand.N - int64(demand.Take)*demand.Least
		}
	}
	base := 2 + len(n.Demands)
	for i, k := range n.kinds {
		demand := n.Demands[k.demand]
		if n.level[base+2*i] > 0 { // its least is wanted here
			add(&r, k.column, -demand.Least)
		}
		if n.level[2+k.demand] > 0 && n.level[base+2*i+1] == 0 { // so much can be had elsewhere
			add(&r, k.column, demand.Most-demand.Least)
		}
	}
	for a := range n.Have {
		if n.level[n.thing0+a] > 0 {
			n.hold(&r, a)
		}
	}
	return r, true
}

// gets returns what each demand has of each thing by the flow.
func (n *network) gets() [][]int64 {
	gets := make([][]int64, len(n.Demands))
	for d := range gets {
		gets[d] = make([]int64, len(n.Have))
	}
	take := func(v, d int) {
		for _, e := range n.out[v] {
			if a := n.arcs[e]; e%2 == 0 && a.to >= n.thing0 {
				gets[d][a.to-n.thing0] += int64(math.Round(n.arcs[e^1].room))
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
