package intprog

import (
	"math"
	"slices"
)

// A tableau is the relaxation of a problem with a basis of it: each basic variable is
// a sum over the nonbasic ones, which are at one of their bounds. The variables
// are the columns of the problem and a slack for each row, from 0 up. Kept is no more than
// the inverse of the matrix of the basic columns and the tight rows, whose slacks are
// nonbasic: there are few of those, however many rows and columns there are.
type tableau struct {
	n      int // columns of the problem
	rows   []Row
	prices []int64

	active  []int32   // the columns that are not fixed for good
	unit    []float64 // of each row: what it is multiplied by, a power of two, so that rows are of like size
	base    []float64 // of each row: what the fixed columns come to, less what it must be
	from    []int32   // of each row: where its entries begin, and where those of the last end
	col     []int32
	coef    []float64
	columns [][]element // the same by columns, with those that are fixed
	wide    []float64   // of each column: how far from 0 it may be
	reach   []float64   // of each row: how far from 0 its sum and its least may be, together
	dearest float64     // how far from 0 the cost may be

	basic   []int32 // the basic columns
	tight   []int32 // the tight rows
	place   []int32 // of each column: its place in basic, -1 if nonbasic
	row     []int32 // of each row: its place in tight, -1 if its slack is basic
	inverse []float64
	stride  int // of the inverse: a line for each basic column, an entry for each tight row

	lo, hi, at []float64 // of each column
	side       []float64 // of each column: 1 at its lower bound, -1 at its upper one, 0 if it is basic or cannot move
	slack      []float64 // of each row
	cost       []float64 // reduced, of each column
	dual       []float64 // price of each tight row
	weight     []float64 // of each column and row, for the choice of what leaves (devex); 0 if fixed for good
	rowWeight  []float64

	z       float64 // the cost
	limit   float64 // a cost above it is as good as none
	pivots  int     // since the inverse was worked out
	most    int     // pivots in one call; 0: as many as it takes, more or less
	trial   float64 // how much the prices would change with the pivot that was not made, 0 if there is none
	tried   int     // the column or, from n on, the row that would have left with it
	stuck   int     // the column or, from n on, the row without a way
	stuckUp bool    // it is below its bound
	stale   bool    // the basic variables have to be worked out
	stamp   int     // of the basis: another one has another
	stamps  int     // the last of them
	spent   int64   // steps not yet taken off

	// Scratch.
	alpha, rho, move, change, moved []float64
	passed, next                    []int32
}

type element struct {
	row int32
	a   float64 // the coefficient times the unit of the row
}

// What optimize came to.
const (
	optimal = iota
	impossible
	givenUp
	beyond
)

func newTableau(p *Problem, rows []Row, lo, hi []int64) *tableau {
	t := &tableau{}
	t.begin(p, rows, lo, hi)
	return t
}

// begin makes t the tableau of a problem with rows and bounds, whatever it was before, in the memory it has.
func (t *tableau) begin(p *Problem, rows []Row, lo, hi []int64) {
	n := len(p.Cost)
	all := 0
	for i := range rows {
		all += len(rows[i].Col)
	}
	if t.columns == nil {
		t.columns, t.from = make([][]element, n), []int32{0}
		entries, each := make([]element, n*(all/n+16)), all/n+16
		for j := range n {
			t.columns[j] = entries[j*each : j*each : (j+1)*each]
		}
		t.col, t.coef = make([]int32, 0, all), make([]float64, 0, all)
	}
	t.n, t.prices, t.limit, t.rows = n, p.Cost, inf, nil // the rows that were there may still be in use
	t.spent, t.pivots, t.dearest, t.stale = int64(all/2), 0, 0, false
	t.active, t.unit, t.base, t.reach = t.active[:0], t.unit[:0], t.base[:0], t.reach[:0]
	t.from, t.col, t.coef = t.from[:1], t.col[:0], t.coef[:0]
	t.basic, t.tight, t.dual = t.basic[:0], t.tight[:0], t.dual[:0]
	t.row, t.slack, t.rowWeight = t.row[:0], t.slack[:0], t.rowWeight[:0]
	t.lo, t.hi, t.at, t.side = grow(t.lo, n), grow(t.hi, n), grow(t.at, n), grow(t.side, n)
	t.cost, t.weight, t.alpha, t.wide = grow(t.cost, n), grow(t.weight, n), grow(t.alpha, n), grow(t.wide, n)
	t.place = grow(t.place, n)
	for j := range n {
		t.columns[j] = t.columns[j][:0]
		t.place[j], t.weight[j] = -1, 1
		t.lo[j], t.hi[j] = float64(lo[j]), float64(hi[j])
		t.wide[j] = max(math.Abs(t.lo[j]), math.Abs(t.hi[j]))
		t.dearest += math.Abs(float64(float64(p.Cost[j]) * t.wide[j]))
		t.cost[j] = float64(p.Cost[j])
		t.settle(j)
		if lo[j] < hi[j] {
			t.active = append(t.active, int32(j))
		} else {
			t.weight[j] = 0
		}
	}
	t.addRows(rows)
}

// addRows adds rows, whose slacks are basic.
func (t *tableau) addRows(rows []Row) {
	t.rows = append(t.rows, rows...)
	for _, r := range rows {
		i := len(t.row)
		large, unit := int64(0), 1.0
		for _, a := range r.Coef {
			large = max(large, abs(a))
		}
		for ; large > 64; large /= 2 {
			unit /= 2
		}
		t.unit = append(t.unit, unit)
		base := float64(unit * -float64(r.Least))
		reach := math.Abs(float64(r.Least))
		for k, j := range r.Col {
			reach += math.Abs(float64(float64(r.Coef[k]) * t.wide[j]))
			a := float64(unit * float64(r.Coef[k]))
			t.columns[j] = append(t.columns[j], element{int32(i), a})
			if t.weight[j] == 0 {
				base += float64(a * t.at[j])
				continue
			}
			t.col, t.coef = append(t.col, int32(j)), append(t.coef, a)
		}
		t.base, t.reach = append(t.base, base), append(t.reach, reach)
		t.from = append(t.from, int32(len(t.col)))
		t.row, t.rowWeight = append(t.row, -1), append(t.rowWeight, 1)
		t.slack = append(t.slack, 0)
		t.slack[i] = t.over(i)
	}
}

// over returns the sum of a row less what it must be.
func (t *tableau) over(i int) float64 {
	sum := t.base[i]
	for k := t.from[i]; k < t.from[i+1]; k++ {
		sum += float64(t.coef[k] * t.at[t.col[k]])
	}
	return sum
}

// purge leaves out rows beyond the first kept that are not tight, and returns which are left.
func (t *tableau) purge(kept int) []Row {
	rows := make([]Row, 0, len(t.rows))
	t.next = grow(t.next, len(t.rows))
	end := int32(0)
	for i, r := range t.rows {
		if i >= kept && !t.isTight(i) {
			t.next[i] = -1
			continue
		}
		k := len(rows)
		t.next[i] = int32(k)
		rows = append(rows, r)
		t.unit[k], t.base[k], t.reach[k] = t.unit[i], t.base[i], t.reach[i]
		t.row[k], t.slack[k], t.rowWeight[k] = t.row[i], t.slack[i], t.rowWeight[i]
		if t.isTight(k) {
			t.tight[t.row[k]] = int32(k)
		}
		first, last := t.from[i], t.from[i+1]
		copy(t.col[end:], t.col[first:last])
		copy(t.coef[end:], t.coef[first:last])
		end += last - first
		t.from[k+1] = end
	}
	n := len(rows)
	t.rows, t.unit, t.base, t.reach = rows, t.unit[:n], t.base[:n], t.reach[:n]
	t.row, t.slack, t.rowWeight = t.row[:n], t.slack[:n], t.rowWeight[:n]
	t.from, t.col, t.coef = t.from[:n+1], t.col[:end], t.coef[:end]
	for j, column := range t.columns {
		left := column[:0]
		for _, e := range column {
			if k := t.next[e.row]; k >= 0 {
				left = append(left, element{k, e.a})
			}
		}
		t.columns[j] = left
	}
	return rows
}

// copyTo makes u equal to t but for what it does not change.
func (t *tableau) copyTo(u *tableau) {
	old := *u
	*u = *t
	u.basic, u.tight = append(old.basic[:0], t.basic...), append(old.tight[:0], t.tight...)
	u.place, u.row = append(old.place[:0], t.place...), append(old.row[:0], t.row...)
	u.inverse = grow(old.inverse, len(t.inverse))
	copy(u.inverse, t.inverse[:len(t.basic)*t.stride])
	u.lo, u.hi, u.at = append(old.lo[:0], t.lo...), append(old.hi[:0], t.hi...), append(old.at[:0], t.at...)
	u.side, u.moved = append(old.side[:0], t.side...), old.moved
	u.slack, u.cost, u.dual = append(old.slack[:0], t.slack...), append(old.cost[:0], t.cost...), append(old.dual[:0], t.dual...)
	u.weight, u.rowWeight = append(old.weight[:0], t.weight...), append(old.rowWeight[:0], t.rowWeight...)
	u.alpha, u.rho, u.move, u.change, u.passed = append(old.alpha[:0], t.alpha...), old.rho, old.move, old.change, old.passed
}

// line returns the entries of a basic column in the inverse.
func (t *tableau) line(c int) []float64 { return t.inverse[c*t.stride : c*t.stride+len(t.tight)] }

// whole returns the coefficient of an element, as near as a float64 is.
func (t *tableau) whole(e element) int64 { return int64(e.a / t.unit[e.row]) }

// price returns the price of a row, after the pivot that was not made if optimize came to beyond.
func (t *tableau) price(i int) float64 {
	switch r := t.row[i]; {
	case r >= 0 && t.trial != 0:
		return float64((t.dual[r] - float64(t.trial*t.rho[r])) * t.unit[i])
	case r >= 0:
		return float64(t.dual[r] * t.unit[i])
	case t.n+i == t.tried:
		return float64(t.trial * t.unit[i])
	}
	return 0
}

func (t *tableau) objective() float64 {
	z := 0.0
	for j, c := range t.prices {
		z += float64(float64(c) * t.at[j])
	}
	return z
}

// setBounds sets the bounds of the columns, and puts nonbasic ones on that which their
// reduced cost asks for.
func (t *tableau) setBounds(lo, hi []int64) {
	for _, j := range t.active {
		t.lo[j], t.hi[j] = float64(lo[j]), float64(hi[j])
		if t.place[j] < 0 {
			was := t.at[j]
			t.settle(int(j))
			t.stale = t.stale || t.at[j] != was
		}
	}
	if t.pivots > 50+2*len(t.basic) {
		t.rebuild()
		t.stale = true
	}
	if t.stale {
		t.values()
	}
}

// A basis is what a tableau has to be given to be as it was, but for its bounds.
type basis struct {
	good                                   bool // the rows have the numbers that they had
	pivots, stamp                          int
	basic, tight                           []int32
	inverse, cost, dual, weight, rowWeight []float64
}

// save keeps the basis in b.
func (t *tableau) save(b *basis) {
	b.good, b.pivots, b.stamp = true, t.pivots, t.stamp
	b.basic, b.tight = append(b.basic[:0], t.basic...), append(b.tight[:0], t.tight...)
	b.inverse = slices.Grow(b.inverse[:0], len(t.basic)*len(t.tight))
	for c := range t.basic {
		b.inverse = append(b.inverse, t.line(c)...)
	}
	b.cost, b.dual = append(b.cost[:0], t.cost...), append(b.dual[:0], t.dual...)
	b.weight, b.rowWeight = append(b.weight[:0], t.weight...), append(b.rowWeight[:0], t.rowWeight...)
}

// load takes the basis b, unless it has it or rows have been left out since it was kept. Rows that are new since
// then are not tight in it.
func (t *tableau) load(b *basis) {
	if !b.good || b.stamp == t.stamp {
		return
	}
	t.stamp = b.stamp
	for _, j := range t.basic {
		t.place[j] = -1
	}
	for _, i := range t.tight {
		t.row[i] = -1
	}
	t.pivots = b.pivots
	t.basic, t.tight = append(t.basic[:0], b.basic...), append(t.tight[:0], b.tight...)
	for c, j := range t.basic {
		t.place[j], t.side[j] = int32(c), 0
		copy(t.line(c), b.inverse[c*len(b.tight):])
	}
	for r, i := range t.tight {
		t.row[i] = int32(r)
	}
	copy(t.cost, b.cost)
	t.dual = append(t.dual[:0], b.dual...)
	copy(t.weight, b.weight)
	copy(t.rowWeight, b.rowWeight)
	t.stale = true
}

// isTight reports whether a row is tight, so that it has no slack.
func (t *tableau) isTight(i int) bool { return t.row[i] >= 0 }

// settle puts a nonbasic column on the bound that its reduced cost asks for.
func (t *tableau) settle(j int) { t.rest(j, t.cost[j] < 0) }

// rest puts a nonbasic column on its upper or its lower bound.
func (t *tableau) rest(j int, high bool) {
	t.at[j], t.side[j] = t.lo[j], 1
	if high {
		t.at[j], t.side[j] = t.hi[j], -1
	}
	if t.lo[j] == t.hi[j] {
		t.side[j] = 0
	}
}

// values works out the basic variables from the nonbasic ones. Most of those are 0 and add nothing to the rows.
func (t *tableau) values() {
	t.spent += (int64(len(t.basic))*int64(len(t.basic)) + int64(len(t.col))) / 8
	t.stale = false
	copy(t.slack, t.base)
	for _, j := range t.active {
		if t.place[j] < 0 {
			spread(t.slack, t.columns[j], t.at[j])
		}
	}
	t.rho = grow(t.rho, len(t.tight))
	for r, i := range t.tight {
		t.rho[r] = -t.slack[i]
	}
	for c, j := range t.basic {
		sum := 0.0
		line := t.line(c)
		rho := t.rho[:len(line)] // as long, so that no index is checked
		for r, w := range line {
			sum += float64(w * rho[r])
		}
		t.at[j] = sum
		spread(t.slack, t.columns[j], sum)
	}
	for _, i := range t.tight {
		t.slack[i] = 0
	}
}

// spread adds to sums of the rows what so much of a column brings.
func spread(sums []float64, column []element, v float64) {
	if v == 0 {
		return
	}
	for k := range column {
		e := &column[k]
		sums[e.row] += float64(e.a * v)
	}
}

// add adds a multiple of one line to another that is no shorter.
func add(to, line []float64, by float64) {
	to = to[:len(line)]
	k := 0
	for ; k < len(line)&^3; k += 4 { // four at a time are faster
		a, b := line[k:k+4:k+4], to[k:k+4:k+4]
		b[0] += float64(by * a[0])
		b[1] += float64(by * a[1])
		b[2] += float64(by * a[2])
		b[3] += float64(by * a[3])
	}
	for ; k < len(line); k++ {
		to[k] += float64(by * line[k])
	}
}

// optimize makes the tableau optimal by the dual simplex method.
func (t *tableau) optimize(effort *int64) int {
	most := t.most
	if most == 0 {
		most = 50 + 20*len(t.row)
	}
	t.z = t.objective()
	t.trial = 0
	*effort -= t.spent
	t.spent = 0
	again := true // the inverse may be worked out once more
	for range most {
		// What is furthest out of its bounds.
		out, far := -1, 0.0
		for _, j := range t.basic {
			d := t.short(int(j))
			if math.Abs(d) <= float64(feasible*(1+math.Abs(t.at[j]))) {
				continue
			}
			if d = float64(d*d) / t.weight[j]; d > far {
				out, far = int(j), d
			}
		}
		for i, v := range t.slack {
			if v >= -feasible {
				continue
			}
			if d := float64(v*v) / t.rowWeight[i]; d > far {
				out, far = t.n+i, d
			}
		}
		*effort -= int64(len(t.col)/8 + t.n/4 + 4)
		if out < 0 {
			return optimal
		}
		t.direction(out)
		short := t.short(out)
		up := short > 0
		in, flips := t.enter(up, math.Abs(short))
		*effort -= int64(len(t.tight))*int64(len(t.tight)+8)/4 + int64(t.n)/4
		if in < 0 {
			t.stuck, t.stuckUp = out, up
			return impossible
		}
		if spent(effort) {
			return givenUp
		}
		if flips {
			t.values()
			t.z = t.objective()
			t.direction(out)
			*effort -= int64(len(t.col) / 8)
		}
		p, by, ratio := t.step(out, in)
		if float64(t.z+float64(ratio*by)) > t.limit {
			t.trial, t.tried = ratio, out
			return beyond
		}
		if !t.pivot(out, in, up, p, by, ratio) {
			if !again {
				return givenUp
			}
			again = false
			t.rebuild()
			t.values()
			t.z = t.objective()
		}
	}
	return givenUp
}

// short returns by how much a column or, from n on, a row has to rise to be within its bounds, less than 0 if it has to fall.
func (t *tableau) short(out int) float64 {
	if out >= t.n {
		return -t.slack[out-t.n]
	}
	return max(0, t.lo[out]-t.at[out]) + min(0, t.hi[out]-t.at[out])
}

// step returns what is known of a pivot before it: the entry of the tableau that it is on, by how much what leaves
// moves, and how much the cost rises with each unit of that.
func (t *tableau) step(out, in int) (p, by, ratio float64) {
	by = t.short(out)
	if in < t.n {
		p = t.alpha[in]
		return p, by, t.cost[in] / p
	}
	r := t.row[in-t.n]
	p = t.rho[r]
	return p, by, t.dual[r] / p
}

// direction works out how a basic variable depends on the nonbasic ones: on the columns in
// alpha, on the slacks of the tight rows in rho.
func (t *tableau) direction(out int) {
	clear(t.alpha)
	k := len(t.tight)
	t.rho = grow(t.rho, k)
	rho := t.rho
	if out < t.n {
		copy(rho, t.line(int(t.place[out])))
	} else {
		clear(rho)
		i := out - t.n
		for e := t.from[i]; e < t.from[i+1]; e++ {
			a, j := t.coef[e], t.col[e]
			c := t.place[j]
			if c < 0 {
				t.alpha[j] = a
				continue
			}
			add(rho, t.line(int(c)), a)
		}
	}
	for r, w := range rho {
		if math.Abs(w) < 1e-12 {
			rho[r] = 0
			continue
		}
		i := t.tight[r]
		cols := t.col[t.from[i]:t.from[i+1]]
		coef := t.coef[t.from[i]:t.from[i+1]]
		for e, j := range cols {
			t.alpha[j] -= float64(w * coef[e])
		}
	}
}

// grow returns s or another slice, of n of whatever was there.
func grow[T any](s []T, n int) []T {
	return slices.Grow(s[:0], n)[:n]
}

// enter returns what is to enter, a column or a row from n on, so that all reduced costs stay on their side,
// or -1. Columns whose range does not make up for what is short are put on their other bound.
func (t *tableau) enter(up bool, short float64) (in int, flips bool) {
	t.passed = t.passed[:0]
	var best int
	var least, size float64
	try := func(in int, a, cost float64) {
		if !up {
			a = -a
		}
		if a <= small {
			return
		}
		if ratio := math.Abs(cost) / a; ratio < least-1e-12 || ratio <= least+1e-12 && a > size {
			best, least, size = in, ratio, a
		}
	}
	for {
		best, least, size = -1, inf, 0
		side := t.side[:len(t.alpha)]
		for j, a := range t.alpha {
			if a != 0 {
				try(j, float64(a*side[j]), t.cost[j])
			}
		}
		for r, a := range t.rho {
			try(t.n+int(t.tight[r]), a, t.dual[r])
		}
		if best < 0 {
			for _, j := range t.passed {
				t.flip(int(j))
			}
			return -1, false
		}
		if best < t.n {
			if span := float64(size * (t.hi[best] - t.lo[best])); span+feasible < short {
				short -= span
				t.flip(best)
				t.passed = append(t.passed, int32(best))
				continue
			}
		}
		return best, len(t.passed) > 0
	}
}

func (t *tableau) flip(j int) { t.rest(j, t.side[j] == 1) }

// pivot lets out leave to its bound, and in enter. It reports false, with nothing done, if the
// inverse is no longer good enough for that.
func (t *tableau) pivot(out, in int, up bool, p, by, ratio float64) bool {
	k := len(t.tight)
	// How the basic columns move with in.
	t.move = grow(t.move, k)
	move := t.move
	if in < t.n {
		clear(move)
		for _, e := range t.columns[in] {
			r := t.row[e.row]
			if r < 0 {
				continue
			}
			for c := range move {
				move[c] -= float64(e.a * t.inverse[c*t.stride+int(r)])
			}
		}
	} else {
		r := int(t.row[in-t.n])
		for c := range move {
			move[c] = t.inverse[c*t.stride+r]
		}
	}
	if out < t.n {
		if q := move[t.place[out]]; math.Abs(q-p) > float64(1e-7*max(1, math.Abs(p))) {
			return false
		}
	}
	t.pivots++
	t.stamps++
	t.stamp = t.stamps
	step, weight := by/p, 0.0
	if out >= t.n {
		weight = t.rowWeight[out-t.n]
	} else {
		weight = t.weight[out]
	}
	weight /= float64(p * p)
	// The slacks, by how all columns move.
	t.moved = grow(t.moved, len(t.row))
	moved := t.moved
	clear(moved)
	for c, j := range t.basic {
		d := move[c]
		spread(moved, t.columns[j], d)
		t.at[j] += float64(d * step)
		t.weight[j] = max(t.weight[j], float64(float64(d*d)*weight))
	}
	if in < t.n {
		spread(moved, t.columns[in], 1)
		t.at[in] += step
	}
	for i, d := range moved {
		if d == 0 || t.isTight(i) {
			continue
		}
		t.slack[i] += float64(d * step)
		t.rowWeight[i] = max(t.rowWeight[i], float64(float64(d*d)*weight))
	}
	// Reduced costs and prices.
	if ratio != 0 {
		add(t.cost, t.alpha, -ratio)
		add(t.dual, t.rho, -ratio)
	}
	for _, j := range t.basic {
		t.cost[j] = 0
	}
	t.z += float64(ratio * by)
	t.update(out, in, p, ratio)
	if out < t.n {
		t.rest(out, !up)
	} else {
		t.slack[out-t.n] = 0
	}
	if weight = max(weight, 1); weight > 1e12 {
		for _, j := range t.active {
			t.weight[j] = 1
		}
		for i := range t.rowWeight {
			t.rowWeight[i] = 1
		}
		weight = 1
	}
	if in < t.n {
		t.weight[in] = weight
		t.cost[in], t.side[in] = 0, 0
	} else {
		t.rowWeight[in-t.n] = weight
		t.slack[in-t.n] = step
	}
	if out < t.n {
		t.cost[out] = ratio
	}
	return true
}

// update brings the inverse up to date. With the reduced cost ratio of what leaves.
func (t *tableau) update(out, in int, p, ratio float64) {
	k := len(t.tight)
	s := t.stride
	move, rho := t.move, t.rho
	if in >= t.n { // a slack becomes basic: its row is no longer tight
		q := int(t.row[in-t.n])
		for c := range move {
			if d := move[c] / p; d != 0 && (out >= t.n || c != int(t.place[out])) {
				line := t.line(c)
				add(line, rho, -d)
				line[q] = d
			}
		}
		t.row[in-t.n] = -1
		if out >= t.n { // another row is tight in its place
			t.tight[q], t.row[out-t.n] = int32(out-t.n), int32(q)
			t.dual[q] = ratio
			return
		}
		// The last line and the last entry of each take the places of those that go.
		last := k - 1
		c := int(t.place[out])
		t.place[out] = -1
		if c != last {
			copy(t.line(c), t.line(last))
			t.basic[c] = t.basic[last]
			t.place[t.basic[c]] = int32(c)
		}
		if q != last {
			for c := range last {
				t.inverse[c*s+q] = t.inverse[c*s+last]
			}
			t.tight[q], t.dual[q] = t.tight[last], t.dual[last]
			t.row[t.tight[q]] = int32(q)
		}
		t.basic, t.tight, t.dual = t.basic[:last], t.tight[:last], t.dual[:last]
		return
	}
	if out >= t.n { // one more basic column and tight row
		if k == s {
			t.widen()
			s = t.stride
		}
		for c := range move {
			t.inverse[c*s+k] = 0
		}
		t.basic, t.place[in] = append(t.basic, int32(in)), int32(k)
		t.tight, t.row[out-t.n] = append(t.tight, int32(out-t.n)), int32(k)
		t.dual = append(t.dual, ratio)
		line := t.line(k)
		for r, w := range rho {
			line[r] = -w / p
		}
		line[k] = 1 / p
		for c, d := range move {
			if d != 0 {
				add(t.line(c), line, d)
			}
		}
		return
	}
	c := int(t.place[out])
	line := t.line(c)
	for r, w := range rho {
		line[r] = -w / p
	}
	for o, d := range move {
		if o != c && d != 0 {
			add(t.line(o), line, d)
		}
	}
	t.place[out], t.place[in], t.basic[c] = -1, int32(c), int32(in)
}

// widen makes room for more tight rows.
func (t *tableau) widen() {
	wide := 2*t.stride + 16
	inverse := make([]float64, wide*wide)
	for c := range t.basic {
		copy(inverse[c*wide:], t.line(c))
	}
	t.inverse, t.stride = inverse, wide
}

// rebuild works the inverse out anew from the rows, so that errors do not add up.
func (t *tableau) rebuild() {
	k := int64(len(t.basic))
	t.spent += k * (k*k + int64(len(t.col))) / 8
	t.pivots = 0
	t.stamps++
	t.stamp = t.stamps
	basic, tight := append([]int32(nil), t.basic...), append([]int32(nil), t.tight...)
	for _, j := range basic {
		t.place[j] = -1
	}
	for _, i := range tight {
		t.row[i] = -1
	}
	t.basic, t.tight, t.dual = t.basic[:0], t.tight[:0], t.dual[:0]
	t.change = grow(t.change, t.n)
	for _, j := range basic {
		k := len(t.tight)
		t.move = grow(t.move, k)
		clear(t.move)
		clear(t.change)
		for _, e := range t.columns[j] {
			if r := t.row[e.row]; r >= 0 {
				for c := range t.move {
					t.move[c] -= float64(e.a * t.inverse[c*t.stride+int(r)])
				}
			}
		}
		for c, b := range t.basic {
			t.change[b] = t.move[c]
		}
		t.change[j] = 1
		best, size := -1, 1e-7
		for _, i := range tight {
			if t.isTight(int(i)) {
				continue
			}
			d := 0.0
			for e := t.from[i]; e < t.from[i+1]; e++ {
				d += float64(t.coef[e] * t.change[t.col[e]])
			}
			if math.Abs(d) > math.Abs(size) {
				best, size = int(i), d
			}
		}
		if best < 0 { // the columns depend on each other: this one goes to a bound
			t.settle(int(j))
			continue
		}
		t.rho = grow(t.rho, k)
		clear(t.rho)
		for e := t.from[best]; e < t.from[best+1]; e++ {
			if c := t.place[t.col[e]]; c >= 0 {
				add(t.rho, t.line(int(c)), t.coef[e])
			}
		}
		t.update(t.n+best, int(j), size, 0)
	}
	for r := range t.dual {
		t.dual[r] = 0
	}
	for c, j := range t.basic {
		add(t.dual, t.line(c), float64(t.prices[j]))
	}
	for j, c := range t.prices {
		t.cost[j] = float64(c)
	}
	for r, i := range t.tight {
		for e := t.from[i]; e < t.from[i+1]; e++ {
			t.cost[t.col[e]] -= float64(t.dual[r] * t.coef[e])
		}
	}
	for _, j := range t.basic {
		t.cost[j] = 0
	}
}

// ray returns weights of the rows, none below 0, by which they cannot all be kept, after
// optimize has found that impossible.
func (t *tableau) ray() []float64 {
	t.moved = grow(t.moved, len(t.rows))
	y := t.moved
	clear(y)
	sign := 1.0
	if !t.stuckUp {
		sign = -1
	}
	if t.stuck >= t.n {
		y[t.stuck-t.n] = float64(sign * t.unit[t.stuck-t.n])
	}
	for r, a := range t.rho {
		y[t.tight[r]] = max(0, float64(-sign*float64(a*t.unit[t.tight[r]])))
	}
	return y
}
