package intprog

import "math"

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
	columns [][]element // the same by columns

	basic   []int32 // the basic columns
	tight   []int32 // the tight rows
	place   []int32 // of each column: its place in basic, -1 if nonbasic
	row     []int32 // of each row: its place in tight, -1 if its slack is basic
	inverse []float64
	stride  int // of the inverse: a line for each basic column, an entry for each tight row

	lo, hi, at []float64 // of each column
	slack      []float64 // of each row
	cost       []float64 // reduced, of each column
	dual       []float64 // price of each tight row
	weight     []float64 // of each column and row, for the choice of what leaves (devex); 0 if fixed for good
	rowWeight  []float64

	z       float64 // the cost
	limit   float64 // a cost above it is as good as none
	pivots  int     // since the inverse was worked out
	most    int     // pivots in one call; 0: as many as it takes, more or less
	stuck   int     // the column or, from n on, the row without a way
	stuckUp bool    // it is below its bound
	order   []int
	spent   int64 // steps not yet taken off

	// Scratch.
	alpha, rho, move, change []float64
	passed                   []int32
}

type element struct {
	row  int32
	coef int64
}

// What optimize came to.
const (
	optimal = iota
	impossible
	givenUp
	beyond
)

func newTableau(p *Problem, rows []Row, lo, hi []int64) *tableau {
	n := len(p.Cost)
	t := &tableau{n: n, prices: p.Cost, columns: make([][]element, n), from: []int32{0}, limit: inf}
	t.lo, t.hi, t.at = make([]float64, n), make([]float64, n), make([]float64, n)
	t.cost, t.weight, t.alpha = make([]float64, n), make([]float64, n), make([]float64, n)
	t.place = make([]int32, n)
	all := 0
	for i := range rows {
		all += len(rows[i].Col)
	}
	t.spent = int64(all / 2)
	t.col, t.coef = make([]int32, 0, all), make([]float64, 0, all)
	entries, each := make([]element, n*(all/n+8)), all/n+8
	for j := range n {
		t.columns[j] = entries[j*each : j*each : (j+1)*each]
		t.place[j], t.weight[j] = -1, 1
		t.lo[j], t.hi[j] = float64(lo[j]), float64(hi[j])
		t.cost[j] = float64(p.Cost[j])
		t.at[j] = t.lo[j]
		if t.cost[j] < 0 {
			t.at[j] = t.hi[j]
		}
		if lo[j] < hi[j] {
			t.active = append(t.active, int32(j))
		} else {
			t.weight[j] = 0
		}
	}
	t.addRows(rows)
	return t
}

// addRows adds rows, whose slacks are basic.
func (t *tableau) addRows(rows []Row) {
	t.rows = append(t.rows, rows...)
	for _, r := range rows {
		i := len(t.row)
		large, unit := int64(0), 1.0
		for _, a := range r.Coef {
			large = max(large, a, -a)
		}
		for ; large > 64; large /= 2 {
			unit /= 2
		}
		t.unit = append(t.unit, unit)
		base := float64(unit * -float64(r.Least))
		for k, j := range r.Col {
			a := float64(unit * float64(r.Coef[k]))
			t.columns[j] = append(t.columns[j], element{int32(i), r.Coef[k]})
			if t.weight[j] == 0 {
				base += float64(a * t.at[j])
				continue
			}
			t.col, t.coef = append(t.col, int32(j)), append(t.coef, a)
		}
		t.base = append(t.base, base)
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
	var rows []Row
	old, weight, slack := t.row, t.rowWeight, t.slack
	for i, r := range t.rows {
		if i < kept || old[i] >= 0 {
			old[len(rows)], weight[len(rows)], slack[len(rows)] = old[i], weight[i], slack[i]
			if old[i] >= 0 {
				t.tight[old[i]] = int32(len(rows))
			}
			rows = append(rows, r)
		}
	}
	for j := range t.columns {
		t.columns[j] = t.columns[j][:0]
	}
	n := len(rows)
	t.rows, t.unit, t.base, t.from, t.col, t.coef = nil, t.unit[:0], t.base[:0], t.from[:1], t.col[:0], t.coef[:0]
	t.row, t.rowWeight, t.slack = nil, nil, nil
	t.addRows(rows)
	t.row, t.rowWeight, t.slack = old[:n], weight[:n], slack[:n]
	return t.rows
}

// copyTo makes u equal to t but for what it does not change.
func (t *tableau) copyTo(u *tableau) {
	old := *u
	*u = *t
	u.basic, u.tight = append(old.basic[:0], t.basic...), append(old.tight[:0], t.tight...)
	u.place, u.row = append(old.place[:0], t.place...), append(old.row[:0], t.row...)
	u.inverse = append(old.inverse[:0], t.inverse[:len(t.basic)*t.stride]...)
	u.lo, u.hi, u.at = append(old.lo[:0], t.lo...), append(old.hi[:0], t.hi...), append(old.at[:0], t.at...)
	u.slack, u.cost, u.dual = append(old.slack[:0], t.slack...), append(old.cost[:0], t.cost...), append(old.dual[:0], t.dual...)
	u.weight, u.rowWeight = append(old.weight[:0], t.weight...), append(old.rowWeight[:0], t.rowWeight...)
	u.alpha, u.rho, u.move, u.change, u.passed = append(old.alpha[:0], t.alpha...), old.rho, old.move, old.change, old.passed
}

// line returns the entries of a basic column in the inverse.
func (t *tableau) line(c int) []float64 { return t.inverse[c*t.stride : c*t.stride+len(t.tight)] }

// price returns the price of a row.
func (t *tableau) price(i int) float64 {
	if r := t.row[i]; r >= 0 {
		return float64(t.dual[r] * t.unit[i])
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
			t.at[j] = t.lo[j]
			if t.cost[j] < 0 {
				t.at[j] = t.hi[j]
			}
		}
	}
	if t.pivots > 50+2*len(t.basic) {
		t.rebuild()
	}
	t.values()
}

// values works out the basic variables from the nonbasic ones.
func (t *tableau) values() {
	t.spent += (int64(len(t.basic))*int64(len(t.basic)) + int64(len(t.col))) / 8
	need := t.rho[:0]
	for _, i := range t.tight {
		b := -t.base[i]
		for k := t.from[i]; k < t.from[i+1]; k++ {
			if j := t.col[k]; t.place[j] < 0 {
				b -= float64(t.coef[k] * t.at[j])
			}
		}
		need = append(need, b)
		t.slack[i] = 0
	}
	t.rho = need
	for c, j := range t.basic {
		sum := 0.0
		for r, w := range t.line(c) {
			sum += float64(w * need[r])
		}
		t.at[j] = sum
	}
	for i, r := range t.row {
		if r < 0 {
			t.slack[i] = t.over(i)
		}
	}
}

// optimize makes the tableau optimal by the dual simplex method.
func (t *tableau) optimize(effort *int64) int {
	most := t.most
	if most == 0 {
		most = 50 + 20*len(t.row)
	}
	t.z = t.objective()
	*effort -= t.spent
	t.spent = 0
	again := true // the inverse may be worked out once more
	for range most {
		// What is furthest out of its bounds.
		out, far, up := -1, 0.0, false
		for _, j := range t.basic {
			v := t.at[j]
			d, low := t.lo[j]-v, true
			if d < 0 {
				d, low = v-t.hi[j], false
			}
			if d <= float64(feasible*(1+math.Abs(v))) {
				continue
			}
			if d = float64(d*d) / t.weight[j]; d > far {
				out, far, up = int(j), d, low
			}
		}
		for i, v := range t.slack {
			if v >= -feasible || t.row[i] >= 0 {
				continue
			}
			if d := float64(v*v) / t.rowWeight[i]; d > far && -v > float64(feasible*(1-v)) {
				out, far, up = t.n+i, d, true
			}
		}
		*effort -= int64(len(t.col)/8 + t.n/4 + 4)
		if out < 0 {
			return optimal
		}
		t.direction(out)
		short := 0.0
		switch {
		case out >= t.n:
			short = -t.slack[out-t.n]
		case up:
			short = t.lo[out] - t.at[out]
		default:
			short = t.at[out] - t.hi[out]
		}
		in, flips := t.enter(up, short)
		*effort -= int64(len(t.tight))*int64(len(t.tight)+8)/4 + int64(t.n)/4
		if in < 0 {
			t.stuck, t.stuckUp = out, up
			return impossible
		}
		if *effort < 0 {
			return givenUp
		}
		if flips {
			t.values()
			t.z = t.objective()
			t.direction(out)
			*effort -= int64(len(t.col) / 8)
		}
		if !t.pivot(out, in, up) {
			if !again {
				return givenUp
			}
			again = false
			t.rebuild()
			t.values()
			t.z = t.objective()
		}
		if t.z > t.limit {
			return beyond
		}
	}
	return givenUp
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
			for r, w := range t.line(int(c)) {
				rho[r] += float64(a * w)
			}
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

func grow(s []float64, n int) []float64 {
	if cap(s) < n {
		return make([]float64, n, 2*n)
	}
	return s[:n]
}

// enter returns what is to enter, a column or a row from n on, so that all reduced costs stay on their side,
// or -1. Columns whose range does not make up for what is short are put on their other bound.
func (t *tableau) enter(up bool, short float64) (in int, flips bool) {
	t.passed = t.passed[:0]
	for {
		best, least, size := -1, 0.0, 0.0
		for _, j := range t.active {
			a := t.alpha[j]
			if a == 0 || t.place[j] >= 0 || t.lo[j] == t.hi[j] {
				continue
			}
			if !up {
				a = -a
			}
			if t.at[j] != t.lo[j] {
				a = -a
			}
			if a <= small {
				continue
			}
			ratio := math.Abs(t.cost[j]) / a
			if best < 0 || ratio < least-1e-12 || ratio <= least+1e-12 && a > size {
				best, least, size = int(j), ratio, a
			}
		}
		for r, a := range t.rho {
			if !up {
				a = -a
			}
			if a <= small {
				continue
			}
			ratio := math.Abs(t.dual[r]) / a
			if best < 0 || ratio < least-1e-12 || ratio <= least+1e-12 && a > size {
				best, least, size = t.n+int(t.tight[r]), ratio, a
			}
		}
		if best < 0 {
			for _, j := range t.passed {
				t.flip(int(j))
			}
			return -1, false
		}
		if best < t.n {
			if span := float64(size * (t.hi[best] - t.lo[best])); span < short-float64(feasible*(1+short)) {
				short -= span
				t.flip(best)
				t.passed = append(t.passed, int32(best))
				continue
			}
		}
		return best, len(t.passed) > 0
	}
}

func (t *tableau) flip(j int) {
	if t.at[j] == t.lo[j] {
		t.at[j] = t.hi[j]
	} else {
		t.at[j] = t.lo[j]
	}
}

// pivot lets out leave to its bound, and in enter. It reports false, with nothing done, if the
// inverse is no longer good enough for that.
func (t *tableau) pivot(out, in int, up bool) bool {
	k := len(t.tight)
	// How the basic columns move with in.
	t.move = grow(t.move, k)
	move := t.move
	var p float64
	if in < t.n {
		clear(move)
		for _, e := range t.columns[in] {
			r := t.row[e.row]
			if r < 0 {
				continue
			}
			a := float64(t.unit[e.row] * float64(e.coef))
			for c := range move {
				move[c] -= float64(a * t.inverse[c*t.stride+int(r)])
			}
		}
		p = t.alpha[in]
	} else {
		r := int(t.row[in-t.n])
		for c := range move {
			move[c] = t.inverse[c*t.stride+r]
		}
		p = t.rho[r]
	}
	if out < t.n {
		if q := move[t.place[out]]; math.Abs(q-p) > float64(1e-7*(1+math.Abs(p))) {
			return false
		}
	}
	t.pivots++
	step := 0.0
	weight := 1.0
	switch {
	case out >= t.n:
		step, weight = -t.slack[out-t.n]/p, t.rowWeight[out-t.n]
	case up:
		step, weight = (t.lo[out]-t.at[out])/p, t.weight[out]
	default:
		step, weight = (t.hi[out]-t.at[out])/p, t.weight[out]
	}
	weight /= float64(p * p)
	// The slacks, by how all columns move.
	t.change = grow(t.change, t.n)
	change := t.change
	clear(change)
	for c, j := range t.basic {
		d := move[c]
		change[j] = d
		t.at[j] += float64(d * step)
		t.weight[j] = max(t.weight[j], float64(float64(d*d)*weight))
	}
	if in < t.n {
		change[in] = 1
		t.at[in] += step
	}
	for i, r := range t.row {
		if r >= 0 {
			continue
		}
		d := 0.0
		cols := t.col[t.from[i]:t.from[i+1]]
		coef := t.coef[t.from[i]:t.from[i+1]]
		for e, j := range cols {
			d += float64(coef[e] * change[j])
		}
		t.slack[i] += float64(d * step)
		t.rowWeight[i] = max(t.rowWeight[i], float64(float64(d*d)*weight))
	}
	// Reduced costs and prices.
	ratio := 0.0
	if in < t.n {
		ratio = t.cost[in] / p
	} else {
		ratio = t.dual[t.row[in-t.n]] / p
	}
	if ratio != 0 {
		for _, j := range t.active {
			t.cost[j] -= float64(ratio * t.alpha[j])
		}
		for r, a := range t.rho {
			t.dual[r] -= float64(ratio * a)
		}
	}
	for _, j := range t.basic {
		t.cost[j] = 0
	}
	t.z += float64(ratio * float64(p*step))
	t.update(out, in, p, ratio)
	if out < t.n {
		if up {
			t.at[out] = t.lo[out]
		} else {
			t.at[out] = t.hi[out]
		}
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
		t.cost[in] = 0
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
				for r, w := range rho {
					line[r] -= float64(d * w)
				}
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
		for len(t.inverse) < (k+1)*s {
			t.inverse = append(t.inverse, 0)
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
				to := t.line(c)
				for r, w := range line {
					to[r] += float64(d * w)
				}
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
			to := t.line(o)
			for r, w := range line {
				to[r] += float64(d * w)
			}
		}
	}
	t.place[out], t.place[in], t.basic[c] = -1, int32(c), int32(in)
}

// widen makes room for more tight rows.
func (t *tableau) widen() {
	wide := 2*t.stride + 16
	inverse := make([]float64, len(t.basic)*wide, (len(t.basic)+1)*wide)
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
					t.move[c] -= float64(float64(t.unit[e.row]*float64(e.coef)) * t.inverse[c*t.stride+int(r)])
				}
			}
		}
		for c, b := range t.basic {
			t.change[b] = t.move[c]
		}
		t.change[j] = 1
		best, size := -1, 1e-7
		for _, i := range tight {
			if t.row[i] >= 0 {
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
			t.at[j] = t.lo[j]
			if t.cost[j] < 0 {
				t.at[j] = t.hi[j]
			}
			continue
		}
		t.rho = grow(t.rho, k)
		clear(t.rho)
		for e := t.from[best]; e < t.from[best+1]; e++ {
			if c := t.place[t.col[e]]; c >= 0 {
				for r, w := range t.line(int(c)) {
					t.rho[r] += float64(t.coef[e] * w)
				}
			}
		}
		t.update(t.n+best, int(j), size, 0)
	}
	for r := range t.dual {
		t.dual[r] = 0
	}
	for c, j := range t.basic {
		for r, w := range t.line(c) {
			t.dual[r] += float64(float64(t.prices[j]) * w)
		}
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
	y := make([]float64, len(t.rows))
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
