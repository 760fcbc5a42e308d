package intprog

import "math"

// A tableau is the relaxation of a problem in dictionary form: each basic variable is
// a sum over the nonbasic ones, which are at one of their bounds. The variables
// are the columns of the problem and, after them, one slack for each row.
type tableau struct {
	n       int       // columns of the problem
	cells   []float64 // row by row, n to each
	basic   []int     // the variable of each row
	nonbase []int     // the variable of each column
	place   []int     // of each variable: its column if nonbasic, else -1 - its row
	lo, hi  []float64 // of each variable
	at      []float64 // its value
	cost    []float64 // reduced, of each column
	rows    []Row
	prices  []int64
	columns [][]element // of the rows
	order   []int
	pivots  int
	weight  []float64 // of each row, for the choice of the one that leaves (devex)
	used    []int     // columns of a line that are not 0
	most    int       // pivots in one call; 0: as many as it takes, more or less
	stuck   int       // the row without a way, -1 if there is none
	stuckUp bool
}

type element struct {
	row  int
	coef int64
}

// What optimize came to.
const (
	optimal = iota
	impossible
	givenUp
)

func newTableau(p *Problem, rows []Row, lo, hi []int64) *tableau {
	n := len(p.Cost)
	t := &tableau{n: n, rows: rows, prices: p.Cost, columns: make([][]element, n)}
	t.lo, t.hi, t.at = make([]float64, n), make([]float64, n), make([]float64, n)
	t.place, t.nonbase = make([]int, n), make([]int, n)
	t.cost = make([]float64, n)
	for j := range n {
		t.place[j], t.nonbase[j] = j, j
		t.lo[j], t.hi[j] = float64(lo[j]), float64(hi[j])
		t.cost[j] = float64(p.Cost[j])
		t.at[j] = t.lo[j]
		if t.cost[j] < 0 {
			t.at[j] = t.hi[j]
		}
	}
	t.appendRows(rows)
	return t
}

// appendRows adds rows whose slacks are basic, while all columns are as in the problem or
// have been expressed by others.
func (t *tableau) appendRows(rows []Row) {
	for _, r := range rows {
		line := make([]float64, t.n)
		sum := -float64(r.Least)
		for k, j := range r.Col {
			t.columns[j] = append(t.columns[j], element{len(t.basic), r.Coef[k]})
			a := float64(r.Coef[k])
			sum += float64(a * t.at[j])
			if q := t.place[j]; q >= 0 {
				line[q] += a
				continue
			}
			for q, x := range t.line(-1 - t.place[j]) {
				line[q] += float64(a * x)
			}
		}
		t.cells = append(t.cells, line...)
		t.place = append(t.place, -1-len(t.basic))
		t.basic = append(t.basic, len(t.place)-1)
		t.weight = append(t.weight, 1)
		t.lo, t.hi, t.at = append(t.lo, 0), append(t.hi, inf), append(t.at, sum)
	}
}

// addRows adds rows to an optimal tableau.
func (t *tableau) addRows(rows []Row) {
	t.appendRows(rows)
	t.rows = append(t.rows[:len(t.rows):len(t.rows)], rows...)
}

// purge leaves out rows beyond the first kept that do not bind, and returns which are left.
func (t *tableau) purge(kept int) []Row {
	var rows []Row
	var cells []float64
	var basic []int
	var weight []float64
	at := make([]int, len(t.rows)) // where each row goes, -1 for nowhere
	for i := range t.rows {
		if q := t.place[t.n+i]; i < kept || q >= 0 {
			at[i] = len(rows)
			rows = append(rows, t.rows[i])
		} else {
			at[i] = -1
		}
	}
	moved := func(v int) int {
		if v < t.n {
			return v
		}
		if at[v-t.n] < 0 {
			return -1
		}
		return t.n + at[v-t.n]
	}
	for i, b := range t.basic {
		if m := moved(b); m >= 0 {
			cells = append(cells, t.line(i)...)
			basic = append(basic, m)
			weight = append(weight, t.weight[i])
		}
	}
	for i, to := range at {
		if to >= 0 {
			t.lo[t.n+to], t.hi[t.n+to], t.at[t.n+to] = 0, inf, t.at[t.n+i]
		}
	}
	all := t.n + len(rows)
	t.lo, t.hi, t.at, t.place = t.lo[:all], t.hi[:all], t.at[:all], t.place[:all]
	for q, v := range t.nonbase {
		t.nonbase[q] = moved(v)
		t.place[t.nonbase[q]] = q
	}
	for i, b := range basic {
		t.place[b] = -1 - i
	}
	t.rows, t.cells, t.basic, t.weight = rows, cells, basic, weight
	for j := range t.columns {
		t.columns[j] = t.columns[j][:0]
	}
	for i, r := range rows {
		for k, j := range r.Col {
			t.columns[j] = append(t.columns[j], element{i, r.Coef[k]})
		}
	}
	return rows
}

// copyTo makes u equal to t but for what it does not change.
func (t *tableau) copyTo(u *tableau) {
	cells, basic, nonbase, place := u.cells[:0], u.basic[:0], u.nonbase[:0], u.place[:0]
	lo, hi, at, cost, weight, used := u.lo[:0], u.hi[:0], u.at[:0], u.cost[:0], u.weight[:0], u.used
	*u = *t
	u.cells, u.basic, u.nonbase, u.place = append(cells, t.cells...), append(basic, t.basic...), append(nonbase, t.nonbase...), append(place, t.place...)
	u.lo, u.hi, u.at, u.cost, u.weight = append(lo, t.lo...), append(hi, t.hi...), append(at, t.at...), append(cost, t.cost...), append(weight, t.weight...)
	u.used = used
}

func (t *tableau) line(i int) []float64 { return t.cells[i*t.n : (i+1)*t.n] }

func (t *tableau) value(j int) float64 { return t.at[j] }

// dual returns the price of a row.
func (t *tableau) dual(i int) float64 {
	if q := t.place[t.n+i]; q >= 0 {
		return t.cost[q]
	}
	return 0
}

func (t *tableau) objective(cost []int64) float64 {
	z := 0.0
	for j, c := range cost {
		z += float64(float64(c) * t.at[j])
	}
	return z
}

// setBounds sets the bounds of the columns, and puts nonbasic ones on that which their
// reduced cost asks for.
func (t *tableau) setBounds(lo, hi []int64) {
	for j := range t.n {
		t.lo[j], t.hi[j] = float64(lo[j]), float64(hi[j])
	}
	fresh := t.pivots > 400
	if fresh {
		t.rebuild()
	}
	for q, j := range t.nonbase {
		to := t.lo[j]
		if t.cost[q] < 0 && t.hi[j] < inf {
			to = t.hi[j]
		}
		move := to - t.at[j]
		t.at[j] = to
		if move == 0 || fresh {
			continue
		}
		for i, b := range t.basic {
			if a := t.cells[i*t.n+q]; a != 0 {
				t.at[b] += float64(a * move)
			}
		}
	}
	if fresh {
		t.values()
	}
}

// values works out the basic variables from the nonbasic ones. The slack of a row is its sum
// less Least, so where a slack s stands in a line, s + Least is the sum of the row.
func (t *tableau) values() {
	for i, b := range t.basic {
		sum := 0.0
		if b >= t.n {
			sum = -float64(t.rows[b-t.n].Least)
		}
		for q, a := range t.line(i) {
			if a == 0 {
				continue
			}
			j := t.nonbase[q]
			v := t.at[j]
			if j >= t.n {
				v += float64(t.rows[j-t.n].Least)
			}
			sum += float64(a * v)
		}
		t.at[b] = sum
	}
}

// optimize makes the tableau optimal by the dual simplex method.
func (t *tableau) optimize(effort *int64) int {
	t.stuck = -1
	most := t.most
	if most == 0 {
		most = 50 + 20*len(t.basic)
	}
	for range most {
		*effort -= int64(len(t.basic)/4 + 2)
		// The row that is furthest out of its bounds.
		r, far, up := -1, 0.0, false
		for i, b := range t.basic {
			v := t.at[b]
			tolerance := float64(feasible * (1 + math.Abs(v)))
			d, low := t.lo[b]-v, true
			if d <= tolerance {
				if d, low = v-t.hi[b], false; d <= tolerance {
					continue
				}
			}
			if d = float64(d*d) / t.weight[i]; d > far {
				r, far, up = i, d, low
			}
		}
		if r < 0 {
			return optimal
		}
		// The column that keeps all reduced costs on their side.
		q, least, size := -1, 0.0, 0.0
		for k, a := range t.line(r) {
			j := t.nonbase[k]
			if !up {
				a = -a
			}
			if t.lo[j] == t.hi[j] {
				continue
			}
			atLow := t.at[j] == t.lo[j]
			if atLow && a <= small || !atLow && a >= -small {
				continue
			}
			ratio := math.Abs(t.cost[k]) / math.Abs(a)
			if q < 0 || ratio < least-1e-12 || ratio <= least+1e-12 && math.Abs(a) > size {
				q, least, size = k, ratio, math.Abs(a)
			}
		}
		if q < 0 {
			t.stuck, t.stuckUp = r, up
			return impossible
		}
		b := t.basic[r]
		to := t.hi[b]
		if up {
			to = t.lo[b]
		}
		t.pivot(r, q, to)
		*effort -= int64(len(t.cells)) / 4
		if *effort < 0 {
			return givenUp
		}
	}
	return givenUp
}

// pivot lets the variable of line r leave to the value to, and that of column q enter.
func (t *tableau) pivot(r, q int, to float64) {
	t.pivots++
	row := t.line(r)
	p := row[q]
	w := t.weight[r]
	for i := range t.basic {
		if a := t.cells[i*t.n+q] / p; i != r && a != 0 {
			t.weight[i] = max(t.weight[i], float64(float64(a*a)*w))
		}
	}
	t.weight[r] = max(w/float64(p*p), 1)
	if t.weight[r] > 1e12 {
		for i := range t.weight {
			t.weight[i] = 1
		}
	}
	out, in := t.basic[r], t.nonbase[q]
	move := (to - t.at[out]) / p
	for i, b := range t.basic {
		if i != r {
			t.at[b] += float64(t.cells[i*t.n+q] * move)
		}
	}
	t.at[in] += move
	t.at[out] = to
	t.swap(r, q, p, row)
}

func (t *tableau) swap(r, q int, p float64, row []float64) {
	inverse := 1 / p
	t.used = t.used[:0]
	for k, x := range row {
		if math.Abs(x) > 1e-12 {
			row[k] = float64(-x * inverse)
			t.used = append(t.used, k)
		} else {
			row[k] = 0
		}
	}
	row[q] = inverse
	eliminate := func(line []float64) {
		f := line[q]
		if f == 0 {
			return
		}
		line[q] = 0
		for _, k := range t.used {
			line[k] += float64(f * row[k])
		}
	}
	for i := range t.basic {
		if i != r {
			eliminate(t.line(i))
		}
	}
	eliminate(t.cost)
	out, in := t.basic[r], t.nonbase[q]
	t.basic[r], t.nonbase[q] = in, out
	t.place[in], t.place[out] = -1-r, q
}

// rebuild works the dictionary out anew from the rows, so that errors do not add up.
func (t *tableau) rebuild() {
	t.pivots = 0
	want := make([]bool, len(t.place))
	for _, b := range t.basic {
		want[b] = true
	}
	clear(t.cells)
	for j := range t.n {
		t.nonbase[j], t.place[j] = j, j
		t.cost[j] = float64(t.prices[j])
	}
	for i, r := range t.rows {
		t.basic[i], t.place[t.n+i] = t.n+i, -1-i
		for k, j := range r.Col {
			t.cells[i*t.n+j] = float64(r.Coef[k])
		}
	}
	for j := range t.n {
		if !want[j] {
			continue
		}
		q := t.place[j]
		r, size := -1, small
		for i, b := range t.basic {
			if a := math.Abs(t.cells[i*t.n+q]); !want[b] && a > size {
				r, size = i, a
			}
		}
		if r >= 0 {
			row := t.line(r)
			t.swap(r, q, row[q], row)
		}
	}
}

// ray returns weights of the rows, none below 0, by which they cannot all be kept, after
// optimize has found that impossible.
func (t *tableau) ray() []float64 {
	y := make([]float64, len(t.rows))
	sign := 1.0
	if !t.stuckUp {
		sign = -1
	}
	if b := t.basic[t.stuck]; b >= t.n {
		y[b-t.n] = sign
	}
	for q, a := range t.line(t.stuck) {
		if j := t.nonbase[q]; j >= t.n {
			y[j-t.n] = float64(-sign * a)
		}
	}
	for i := range y {
		y[i] = max(0, y[i])
	}
	return y
}
