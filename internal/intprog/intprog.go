// Package intprog solves integer programs of moderate size: the whole numbers of least
// cost within bounds that keep a number of linear inequalities.
//
// It is branch and bound over the linear relaxation, which is solved by the dual
// simplex method with bounded variables on the inverse of the basis, and tightened at the root
// by mixed-integer rounding of single rows and of sums of them. After a few nodes the search is for
// what costs much less than the best so far: see run. The relaxation runs in floating point, but
// only to find good prices of the rows. Rounded to whole numbers Y they give, for x
// within any bounds, the bound
//
//	Σ Y·least + Σ over x of the least of (cost - Σ Y·coefficient)·x
//
// which holds for any Y ≥ 0 and is computed in integers. What is found is checked in
// integers too. So cost and bound are exact, whatever the rounding did.
//
// Sources: the dual simplex method, branch and bound, mixed-integer rounding, Gomory's cuts, bounds drawn
// in by reduced costs: L. A. Wolsey, Integer Programming, Wiley 1998 (from memory). Bounds from rounded prices: A. Neumaier,
// O. Shcherbina, Safe bounds in linear and mixed-integer linear programming, Mathematical
// Programming 99 (2004) 283-296 (from memory). What leaves the basis (devex): J. J. Forrest, D. Goldfarb, Mathematical
// Programming 57 (1992) 341-374 (from memory). The columns to branch on, and the basis of the node above for both of its
// children: T. Achterberg, Constraint Integer Programming, TU Berlin 2007 (from memory). Two aims in one number, the
// second below the least step of the first: R. E. Steuer, Multiple Criteria Optimization, Wiley 1986 (from memory).
package intprog

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
)

// A Problem asks for x of least Σ Cost·x with Lo ≤ x ≤ Hi that keeps all rows, and of those for
// one of least Σ Tie·x.
type Problem struct {
	Cost   []int64
	Tie    []int64 // nil: any x of the least cost will do
	Lo, Hi []int64 // at most 2^40 from 0
	Rows   []Row
	First  []bool // which x to decide before the others; nil: all alike

	// Broken returns rows that x breaks of those that the problem has besides Rows, none
	// if there is none. They may be too many to write down. Where x is whole it
	// must find one if there is one. Nil: there are none.
	Broken func(x []float64) []Row
}

// A Row is the inequality Σ Coef·x[Col] ≥ Least. No column stands in it twice.
type Row struct {
	Col   []int
	Coef  []int64
	Least int64
}

// A Result is what a search came to. X is the least that is possible if Cost equals
// Bound. If X is nil, nothing was found, and nothing is possible if None is set.
type Result struct {
	X     []int64
	Cost  int64
	Bound int64 // nothing that keeps all rows costs less
	None  bool
}

// Bounds of a problem.
const (
	MaxCells = 1 << 21 // rows times columns
	maxSum   = 1 << 61 // sums of products
	maxNodes = 1 << 17 // open nodes
	maxTies  = 100_000 // steps for what is of equal cost
	maxBases = 1 << 19 // numbers in the bases that are kept
)

const (
	feasible = 1e-7 // a value may be so far out of its bounds, in relation to its row
	small    = 1e-8 // a pivot is larger
	whole    = 1e-6 // a value is whole if so near
	inf      = math.MaxFloat64
)

// Kept reports whether x is within bounds and keeps all rows.
func (p *Problem) Kept(x []int64) bool { return p.kept(x, make([]float64, len(x))) }

// kept is Kept with room for x in other numbers.
func (p *Problem) kept(x []int64, f []float64) bool {
	for j, v := range x {
		if v < p.Lo[j] || v > p.Hi[j] {
			return false
		}
	}
	for i := range p.Rows {
		if p.Rows[i].value(x) < p.Rows[i].Least {
			return false
		}
	}
	if p.Broken == nil {
		return true
	}
	for j, v := range x {
		f[j] = float64(v)
	}
	return len(p.Broken(f)) == 0
}

func (r *Row) value(x []int64) int64 {
	sum := int64(0)
	for k, j := range r.Col {
		sum += r.Coef[k] * x[j]
	}
	return sum
}

// price returns the cost of x.
func (p *Problem) price(x []int64) int64 {
	sum := int64(0)
	for j, v := range x {
		sum += p.Cost[j] * v
	}
	return sum
}

// fits reports whether no sum of products overflows.
func (p *Problem) fits() bool {
	for _, r := range p.Rows {
		sum := math.Abs(float64(r.Least))
		for k, j := range r.Col {
			sum += p.reach(r.Coef[k], j)
		}
		if sum > maxSum {
			return false
		}
	}
	return p.total(p.Cost) <= maxSum
}

// reach returns how far from 0 a number and a times the j-th x may be.
func (p *Problem) reach(a int64, j int) float64 {
	return math.Abs(float64(float64(a) * max(1, math.Abs(float64(p.Lo[j])), math.Abs(float64(p.Hi[j])))))
}

// total returns how far from 0 the sum of costs may be.
func (p *Problem) total(costs []int64) float64 {
	sum := 0.0
	for j, c := range costs {
		sum += p.reach(c, j)
	}
	return sum
}

// A node is a part of the search: within the bounds of the node above it, one bound that is tighter.
type node struct {
	depth  int // of the bounds of the node above it
	column int
	low    bool // the bound is Lo[column], else Hi[column]
	value  int64
	bound  int64
	above  int64   // the bound of the node above
	moved  float64 // how far its value was moved
}

// A search is a problem being solved.
type search struct {
	*Problem
	value
	rows   []Row // the problem's and those that follow from them
	base   int   // rows at the root
	ties   int64 // steps left for what costs as much as the best
	effort *int64
	lo, hi []int64      // of the node at hand
	top    [2][]int64   // bounds of all nodes
	levels [][2][]int64 // bounds below a node of each depth
	bases  []basis      // of a node of each depth
	t      *tableau
	scale  float64
	scaled []int64 // costs times the scale
	best   []int64
	cost   int64 // of best
	up     []average
	down   []average
	all    average
	whole  []int64 // scratch, as are the next ones
	total  []int64
	spare  []int64
	values []float64
	likely []candidate
	open   []node
	order  []int    // the columns that cost anything, the dearest first
	other  *tableau // for probes
	sum    int64    // the last bound, times the scale
	ceil   int64    // only what costs less is looked for
	root   prices   // at the root of all
	begin  prices   // at the root of the stage
}

// Prices are the reduced costs and the bound at a root, both times the scale, and the bounds there.
type prices struct {
	lo, hi, reduced []int64 // no reduced costs if they may overflow
	sum             int64
	bound           int64 // not times the scale
}

// An average is of how much the bound rose for each unit that a value was moved.
type average struct {
	sum   float64
	times int
}

// mean returns the average, or what is usual if it is of nothing.
func (a average) mean(usual float64) float64 {
	if a.times == 0 {
		return usual
	}
	return a.sum / float64(a.times)
}

// Solve searches for the least, taking the steps it needs off effort until that is spent.
// It begins with start, if that keeps all rows; start may be nil. A problem whose sums
// may overflow, or of too many cells, is given up at once: nothing found, and a bound
// of the least that x can cost within its bounds or, if that overflows, math.MinInt64. Where only the
// sums with Tie may overflow, Tie is left out.
func Solve(p *Problem, start []int64, effort *int64) Result {
	if !p.fits() {
		return Result{Cost: math.MaxInt64, Bound: math.MinInt64}
	}
	p, v := p.weighed()
	s := &search{Problem: p, value: v, rows: slices.Clip(p.Rows), effort: effort, cost: math.MaxInt64, ceil: math.MaxInt64, ties: maxTies}
	s.up, s.down = make([]average, len(p.Cost)), make([]average, len(p.Cost))
	s.lo, s.hi = slices.Clone(p.Lo), slices.Clone(p.Hi)
	bound := int64(0)
	for j, c := range p.Cost {
		bound += min(c*p.Lo[j], c*p.Hi[j])
	}
	for j := range s.lo {
		if s.lo[j] > s.hi[j] {
			return Result{Cost: math.MaxInt64, Bound: math.MaxInt64, None: true}
		}
	}
	if start != nil && p.Kept(start) {
		if s.keep(start); s.cost <= bound {
			return s.result(bound, true)
		}
	}
	if len(p.Rows)*len(p.Cost) > MaxCells || len(p.Cost) == 0 {
		if len(p.Cost) == 0 && p.Kept(nil) {
			return Result{X: []int64{}}
		}
		return s.result(bound, len(p.Cost) == 0)
	}
	if !s.tighten(s.lo, s.hi) {
		return s.result(math.MaxInt64, true)
	}
	s.top = [2][]int64{slices.Clone(s.lo), slices.Clone(s.hi)}
	s.whole = make([]int64, len(p.Cost))
	s.atRoot()
	return s.run(bound)
}

// A value is how cost and tie make one number: cost/step·weight + tie, where the tie of x within bounds
// is from least to least+weight-1. So of two numbers the one with the lower cost is the lower.
type value struct{ step, weight, least int64 }

// weighed returns p with one cost for cost and tie.
func (p *Problem) weighed() (*Problem, value) {
	v := value{weight: 1}
	for _, c := range p.Cost {
		v.step = gcd(v.step, abs(c))
	}
	v.step = max(1, v.step)
	q := *p
	q.Cost, q.Tie = slices.Clone(p.Cost), nil
	for j := range q.Cost {
		q.Cost[j] /= v.step
	}
	weight := 1.0
	for j, t := range p.Tie {
		weight += math.Abs(float64(float64(t) * float64(p.Hi[j]-p.Lo[j])))
	}
	if float64(p.total(q.Cost)*weight)+p.total(p.Tie) > maxSum {
		return &q, v
	}
	for j, t := range p.Tie {
		a, b := t*p.Lo[j], t*p.Hi[j]
		v.least += min(a, b)
		v.weight += max(a, b) - min(a, b)
	}
	for j, t := range p.Tie {
		q.Cost[j] = q.Cost[j]*v.weight + t
	}
	return &q, v
}

// Weighs reports whether the search looks at Tie: whether no sums with it overflow.
func (p *Problem) Weighs() bool {
	_, v := p.weighed()
	return v.weight > 1
}

// even returns the least number of the same cost.
func (v value) even(n int64) int64 { return n - mod(n-v.least, v.weight) }

// costs returns the cost of a number.
func (v value) costs(n int64) int64 { return (v.even(n) - v.least) / v.weight * v.step }

func abs(a int64) int64 { return max(a, -a) }

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func (s *search) result(bound int64, all bool) Result {
	r := Result{X: s.best, Cost: s.cost, Bound: min(bound, s.cost)}
	if s.best != nil {
		r.Cost = s.costs(s.cost)
	}
	if r.Bound < math.MaxInt64 {
		r.Bound = s.costs(r.Bound)
	}
	r.None = all && s.best == nil
	return r
}

// keep takes x as the best so far if it is, and reports whether it is.
func (s *search) keep(x []int64) bool {
	if c := s.price(x); s.best == nil || c < s.cost {
		s.best, s.cost = slices.Clone(x), c
		s.ceil = min(s.ceil, s.goal())
		return true
	}
	return false
}

// goal returns what is to be less: the best so far or, after the steps for ties, all of its cost.
func (s *search) goal() int64 {
	if s.best != nil && s.ties < 0 {
		return s.even(s.cost)
	}
	return s.cost
}

// tied reports whether nothing of at least bound costs less than the best so far.
func (s *search) tied(bound int64) bool { return s.best != nil && bound >= s.even(s.cost) }

// hopeless reports whether nothing of at least bound is looked for.
func (s *search) hopeless(bound int64) bool { return bound >= s.ceil }

// tighten draws lo and hi together as far as each row by itself forces, and reports
// whether anything is left between them.
func (s *search) tighten(lo, hi []int64) bool {
	for range 8 {
		changed := false
		for i := range s.Problem.Rows {
			r := &s.Problem.Rows[i]
			most := int64(0)
			for k, j := range r.Col {
				most += max(r.Coef[k]*lo[j], r.Coef[k]*hi[j])
			}
			slack := most - r.Least
			if slack < 0 {
				return false
			}
			for k, j := range r.Col {
				a := r.Coef[k]
				switch {
				case a > 0 && a*(hi[j]-lo[j]) > slack:
					lo[j], changed = hi[j]-slack/a, true
				case a < 0 && -a*(hi[j]-lo[j]) > slack:
					hi[j], changed = lo[j]+slack/-a, true
				} // the bounds do not cross, and the slack stays as it is
			}
		}
		*s.effort -= int64(len(s.Problem.Rows))
		if !changed {
			break
		}
	}
	return true
}

// bound returns a whole number that no x between lo and hi that keeps all rows costs
// less than, by the prices of the tableau. With reduced it also fills in the reduced
// costs, times the scale.
func (s *search) bound(lo, hi []int64, reduced []int64) int64 {
	copy(reduced, s.scaled)
	sum, fits := s.safe(lo, hi, reduced, float64(s.scale*s.t.dearest), s.scale, s.t.price)
	if !fits {
		return math.MinInt64
	}
	s.sum = sum
	scale := int64(s.scale)
	q := sum / scale
	if q*scale < sum {
		q++
	}
	return q
}

// safe returns what the cost of any x between lo and hi that keeps all rows is at least, by prices of the rows that are
// multiplied by the scale and rounded down, and whether no sum overflows. It takes the cost of the columns and makes
// it the reduced cost; size is how far from 0 the cost of x may be.
func (s *search) safe(lo, hi, cost []int64, size, scale float64, price func(row int) float64) (sum int64, fits bool) {
	for i := range s.rows {
		y := math.Floor(max(0, float64(price(i)*scale)))
		if y == 0 {
			continue
		}
		r, whole := &s.rows[i], int64(y)
		sum += whole * r.Least
		size += float64(y * s.t.reach[i])
		for k, j := range r.Col {
			cost[j] -= whole * r.Coef[k]
		}
	}
	for j, d := range cost {
		sum += min(d*lo[j], d*hi[j])
	}
	return sum, size <= maxSum
}

// atRoot solves the relaxation at the root.
func (s *search) atRoot() {
	heaviest := 1.0
	for j, c := range s.Cost {
		heaviest += float64(math.Abs(float64(c)) * (1 + math.Abs(float64(s.hi[j]-s.lo[j]))))
	}
	scale := int64(1) << max(0, min(24, 53-bits.Len64(uint64(heaviest)))) // so that heaviest times it is 2^52 or more
	s.scale, s.scaled = float64(scale), make([]int64, len(s.Cost))
	for j, c := range s.Cost {
		s.scaled[j] = scale * c
	}
	s.relax(60)
	s.root = s.prices()
}

// relax solves the relaxation within the bounds, in rounds of rows that follow from others.
func (s *search) relax(rounds int) {
	if s.t == nil {
		s.t = &tableau{}
	}
	s.t.begin(s.Problem, s.rows, s.lo, s.hi)
	last := 0.0
	for round := range rounds {
		if s.t.optimize(s.effort) != optimal || spent(s.effort) {
			break
		}
		if z := s.t.objective(); round > 3 && z < last+float64(1e-4*math.Abs(last)) {
			break
		} else {
			last = z
		}
		s.round(s.whole, true)
		more := s.cuts()
		more = append(more, s.broken()...)
		if len(more) == 0 {
			break
		}
		s.t.addRows(more)
		s.rows = s.t.rows
	}
	s.purge()
	s.base = len(s.rows)
}

// purge leaves out rows that follow from others and do not bind. A basis that was kept has other numbers for the rest.
func (s *search) purge() {
	s.rows = s.t.purge(len(s.Problem.Rows))
	for d := range s.bases {
		s.bases[d].good = false
	}
}

// prices returns those of the tableau within the bounds.
func (s *search) prices() prices {
	p := prices{lo: slices.Clone(s.lo), hi: slices.Clone(s.hi), reduced: make([]int64, len(s.Cost))}
	if p.bound = s.bound(p.lo, p.hi, p.reduced); p.bound == math.MinInt64 {
		p.reduced = nil
	}
	p.sum = s.sum
	return p
}

// broken returns rows of the problem that the values of the tableau break and that it
// has not.
func (s *search) broken() []Row {
	if s.Broken == nil {
		return nil
	}
	x := s.t.at
	*s.effort -= int64(4 * len(x))
	rows := s.Broken(x)
	kept := rows[:0]
	for _, r := range rows {
		sum, size := 0.0, 1.0
		for k, j := range r.Col {
			v := float64(float64(r.Coef[k]) * x[j])
			sum += v
			size += math.Abs(v)
		}
		if float64(r.Least)-sum > float64(feasible*size) {
			kept = append(kept, r)
		}
	}
	return s.fit(kept)
}

// run searches until the best is proved or the effort is spent. Nothing costs less than floor.
// After a few steps it does not look for all that is better than the best so far, but for
// what costs much less, and if there is nothing, for what costs less: with a low ceiling few columns
// are left, and what is there at all is found sooner.
func (s *search) run(floor int64) Result {
	floor = max(floor, s.root.bound)
	rows := slices.Clip(s.rows)
	low := floor
	last := *s.effort / 4
	done := true
	for part := int64(0); floor < s.goal(); part++ {
		s.ceil = s.goal()
		most := few
		if part > 0 {
			most = math.MaxInt
			if part < parts && s.best != nil && *s.effort > last {
				s.ceil = min(s.goal(), max(low+(s.cost-low)/parts*part, floor+1))
			}
		}
		s.rows = rows
		var bound int64
		bound, done = s.stage(most, part == 0, floor)
		if floor = max(floor, bound); spent(s.effort) {
			if s.best != nil {
				s.trim()
			}
			break
		}
	}
	return s.result(floor, done)
}

// spent reports whether no steps are left.
func spent(effort *int64) bool { return *effort < 0 }

// trim takes off the best so far what can be spared, the dearest first, if there are no steps left for more.
func (s *search) trim() {
	x := slices.Clone(s.best)
	tries := min(2000, 4_000_000/(len(s.Rows)+len(x))) // each looks at all of them
	for _, j := range s.dearest() {
		for n := x[j] - s.Lo[j]; n > 0 && tries > 0; tries-- {
			if x[j] -= n; s.Kept(x) {
				n = min(n, x[j]-s.Lo[j])
			} else {
				x[j] += n
				n /= 2
			}
		}
	}
	s.keep(x)
}

// dearest returns the columns that cost anything, the dearest first.
func (s *search) dearest() []int {
	if s.order == nil {
		for j, c := range s.Cost {
			if c > 0 {
				s.order = append(s.order, j)
			}
		}
		slices.SortStableFunc(s.order, func(a, b int) int { return cmp.Compare(s.Cost[b], s.Cost[a]) })
	}
	return s.order
}

const (
	few   = 40 // nodes before the ceiling is lowered
	parts = 3  // in which it rises to the cost of the best
)

// stage looks for what costs less than the ceiling, where nothing costs less than floor. It returns what
// nothing costs less than, and whether all has been looked at.
func (s *search) stage(most int, first bool, floor int64) (int64, bool) {
	begun, tied := *s.effort, s.tied(floor)
	s.top = [2][]int64{slices.Clone(s.root.lo), slices.Clone(s.root.hi)}
	s.begin = s.root
	if s.fix(); !s.tighten(s.top[0], s.top[1]) {
		return s.ceil, true
	}
	if !first {
		copy(s.lo, s.top[0])
		copy(s.hi, s.top[1])
		s.relax(6)
	}
	s.begin = prices{}
	reduced := make([]int64, len(s.Cost))
	x := s.whole
	open := append(s.open[:0], node{depth: -1, bound: math.MinInt64, above: math.MinInt64})
	defer func() { s.open = open }()
	back := true // the tableau is not that of the node above
	for len(open) > 0 {
		if tied {
			s.ties -= begun - *s.effort
			s.ceil = min(s.ceil, s.goal())
		}
		at := open[len(open)-1]
		begun, tied = *s.effort, s.tied(max(floor, at.bound))
		if s.hopeless(at.bound) {
			open = open[:len(open)-1]
			continue
		}
		if most--; spent(s.effort) || most < 0 || len(open) > maxNodes {
			bound := s.ceil
			for _, n := range open {
				bound = min(bound, n.bound)
			}
			return bound, false
		}
		open = open[:len(open)-1]
		if len(s.rows) > s.base+s.base/2+16 {
			s.purge()
			s.base = max(s.base, len(s.rows))
		}
		if back && at.depth >= 0 && at.depth < len(s.bases) {
			s.t.load(&s.bases[at.depth])
		}
		back = true
		if !s.enter(at) {
			continue
		}
		s.t.limit = float64(s.ceil-1) + 1e-3
		state := s.t.optimize(s.effort)
		for state == optimal && !spent(s.effort) {
			more := s.broken()
			if len(more) == 0 {
				break
			}
			s.t.addRows(more)
			s.rows = s.t.rows
			state = s.t.optimize(s.effort)
		}
		if state == impossible && s.ray() {
			continue
		}
		b := s.bound(s.lo, s.hi, reduced)
		if state == beyond && !s.hopeless(b) {
			s.t.limit = inf
			s.t.optimize(s.effort)
			b = s.bound(s.lo, s.hi, reduced)
		}
		if b > at.bound {
			if at.above > math.MinInt64 {
				s.learn(at, b)
			}
			at.bound = b
		}
		*s.effort -= int64(len(s.rows) + len(s.Cost))
		if s.hopeless(at.bound) {
			continue
		}
		improved := s.round(x, most%4 == 0)
		if improved && s.hopeless(at.bound) {
			continue
		}
		if at.depth < 0 && b > math.MinInt64 {
			s.begin = prices{lo: slices.Clone(s.lo), hi: slices.Clone(s.hi), reduced: slices.Clone(reduced), sum: s.sum}
		}
		if at.depth < 0 || improved {
			s.fix() // something is left: the node at hand is not hopeless, and bounds rise on the way to it
		}
		j, n, part := s.branch()
		if j < 0 {
			continue // one x is left, and round has tried it
		}
		n = max(s.lo[j], min(n, s.hi[j]-1))
		// The bounds below this node, by its reduced costs.
		depth := at.depth + 1
		if depth == len(s.levels) {
			s.levels = append(s.levels, [2][]int64{make([]int64, len(s.Cost)), make([]int64, len(s.Cost))})
		}
		copy(s.levels[depth][0], s.lo)
		copy(s.levels[depth][1], s.hi)
		if b > math.MinInt64 {
			s.draw(s.levels[depth], s.lo, s.hi, reduced, s.sum)
		}
		s.save(depth)
		back = false
		below := node{depth: depth, column: j, value: n, bound: at.bound, above: at.bound, moved: part}
		over := node{depth: depth, column: j, low: true, value: n + 1, bound: at.bound, above: at.bound, moved: 1 - part}
		if part > 0.4 {
			open = append(open, below, over)
		} else {
			open = append(open, over, below)
		}
	}
	return s.ceil, true
}

// save keeps the basis of a node above others at a depth, if there is room for it.
func (s *search) save(depth int) {
	if room := maxBases / (len(s.t.basic)*len(s.t.basic) + 3*len(s.Cost) + len(s.rows)); depth >= room {
		return
	}
	for len(s.bases) <= depth {
		s.bases = append(s.bases, basis{})
	}
	s.t.save(&s.bases[depth])
}

// learn keeps how much the bound rose when the bound of one column was drawn in.
func (s *search) learn(at node, bound int64) {
	a := &s.down[at.column]
	if at.low {
		a = &s.up[at.column]
	}
	s.rose(a, float64(bound-at.above), at.moved)
}

// rose adds to a, and to the average of all, how much the bound rose when a value was moved by so much.
func (s *search) rose(a *average, rise, by float64) {
	rise /= max(by, whole)
	a.sum += rise
	a.times++
	s.all.sum += rise
	s.all.times++
}

// enter sets the bounds of a node, and reports whether there is anything between them.
func (s *search) enter(at node) bool {
	copy(s.lo, s.top[0])
	copy(s.hi, s.top[1])
	if at.depth >= 0 {
		for j, lo := range s.levels[at.depth][0] {
			s.lo[j] = max(s.lo[j], lo)
		}
		for j, hi := range s.levels[at.depth][1] {
			s.hi[j] = min(s.hi[j], hi)
		}
		if at.low {
			s.lo[at.column] = max(s.lo[at.column], at.value)
		} else {
			s.hi[at.column] = min(s.hi[at.column], at.value)
		}
	}
	for j, lo := range s.lo {
		if lo > s.hi[j] {
			return false
		}
	}
	s.t.setBounds(s.lo, s.hi)
	return true
}

// fix draws the bounds of all nodes in by the reduced costs at the root of the stage: what a value
// away from its bound would cost more than the ceiling.
func (s *search) fix() {
	if p := &s.begin; p.reduced != nil {
		s.draw(s.top, p.lo, p.hi, p.reduced, p.sum)
	}
}

// draw draws bounds in by reduced costs and a bound below the ceiling, both times the scale, for values between lo and hi.
func (s *search) draw(bounds [2][]int64, lo, hi, reduced []int64, sum int64) {
	if s.ceil == math.MaxInt64 {
		return
	}
	room := (s.ceil-1)*int64(s.scale) - sum
	for j, d := range reduced {
		switch {
		case d > 0:
			bounds[1][j] = min(bounds[1][j], lo[j]+room/d)
		case d < 0:
			bounds[0][j] = max(bounds[0][j], hi[j]-room/-d)
		}
	}
}

// ray reports whether the row that the tableau found without a way proves, in
// integers, that nothing within the bounds keeps all rows.
func (s *search) ray() bool {
	y := s.t.ray()
	most := 0.0
	for _, v := range y {
		most = max(most, v)
	}
	s.total = grow(s.total, len(s.Cost))
	clear(s.total)
	sum, fits := s.safe(s.lo, s.hi, s.total, 0, float64(1<<24)/max(most, small), func(i int) float64 { return y[i] })
	return fits && sum > 0
}

// A candidate is a column to branch on.
type candidate struct {
	column int
	below  int64   // the whole number below its value
	part   float64 // how far above that it is
	score  float64
}

// branch returns the column to branch on, the whole number below its value and how far above that it is, or -1 if one x is left. Where
// little is known of the columns that look best, both ways are tried for some pivots first.
func (s *search) branch() (column int, below int64, part float64) {
	usual := s.all.mean(1)
	score := func(j int, part float64) float64 {
		down, up := float64(s.down[j].mean(usual)*part), float64(s.up[j].mean(usual)*(1-part))
		return float64((down + 1e-6) * (up + 1e-6))
	}
	all := s.likely[:0]
	for pass := range 2 {
		for j := range s.Cost {
			if s.lo[j] == s.hi[j] || s.First != nil && s.First[j] != (pass == 0) {
				continue
			}
			if v := s.t.at[j]; split(v, whole) {
				n := math.Floor(v)
				all = append(all, candidate{j, int64(n), v - n, score(j, v-n)})
			}
		}
		if len(all) > 0 || s.First == nil {
			break
		}
	}
	s.likely = all
	if len(all) == 0 {
		// All values are whole, but the rounding of them keeps not all rows, or the
		// tableau gave up: any that is open will do.
		for j, lo := range s.lo {
			if lo < s.hi[j] {
				return j, lo, 0.5
			}
		}
		return -1, 0, 0
	}
	slices.SortStableFunc(all, func(a, b candidate) int { return cmp.Compare(b.score, a.score) })
	var best candidate // no score is 0
	z := s.t.objective()
	for _, c := range all[:min(len(all), tried)] {
		j := c.column
		if s.down[j].times == 0 {
			s.probe(&s.down[j], j, z, c.part, s.lo[j], c.below)
		}
		if s.up[j].times == 0 {
			s.probe(&s.up[j], j, z, 1-c.part, c.below+1, s.hi[j])
		}
		if c.score = score(j, c.part); c.score > best.score {
			best = c
		}
	}
	return best.column, best.below, best.part
}

const tried = 8 // columns that are looked at closely

// probe adds to a how much the cost rises if the j-th value is moved by so much, to between lo and hi.
func (s *search) probe(a *average, j int, z, by float64, lo, hi int64) {
	if s.other == nil {
		s.other = &tableau{}
	}
	s.t.copyTo(s.other)
	u := s.other
	u.lo[j], u.hi[j] = float64(lo), float64(hi)
	u.most = 8
	state := u.optimize(s.effort)
	*s.effort -= int64(len(u.col)/8 + len(u.basic)*u.stride/8)
	rise := max(0, u.z-z)
	if state == impossible && s.ceil < math.MaxInt64 {
		rise = max(rise, float64(s.ceil)-z)
	}
	s.rose(a, rise, by)
}

// round tries whole numbers near the values of the tableau: as they are, and rounded up
// with what is too much taken off again. It reports whether one of them is the best so far.
func (s *search) round(x []int64, all bool) bool {
	better := false
	isWhole := true
	for j := range x {
		v := s.t.at[j]
		isWhole = isWhole && !split(v, whole)
		x[j] = max(s.lo[j], min(s.hi[j], int64(math.Round(v))))
	}
	if !isWhole && !all {
		return false
	}
	s.values = grow(s.values, len(x))
	if s.kept(x, s.values) {
		better = s.keep(x)
	}
	if isWhole {
		return better
	}
	for j := range x {
		v := math.Ceil(s.t.at[j] - whole)
		x[j] = max(s.lo[j], min(s.hi[j], int64(v)))
	}
	if !s.kept(x, s.values) {
		return better
	}
	// Take off what can be spared, the dearest first.
	s.spare = grow(s.spare, len(s.rows))
	spare := s.spare
	for i := range spare {
		spare[i] = max(0, s.rows[i].value(x)-s.rows[i].Least)
	}
	for _, j := range s.dearest() {
		n := x[j] - s.lo[j]
		for _, e := range s.t.columns[j] {
			if e.a > 0 {
				n = min(n, spare[e.row]/s.t.whole(e))
			}
		}
		x[j] -= n
		for _, e := range s.t.columns[j] {
			spare[e.row] -= n * s.t.whole(e)
		}
	}
	*s.effort -= int64(2 * len(x))
	return s.kept(x, s.values) && s.keep(x) || better
}
