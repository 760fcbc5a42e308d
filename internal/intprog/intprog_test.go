package intprog

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// brute returns the least cost by trying all x.
func brute(p *Problem) (best int64, ok bool) {
	best, _, ok = both(p)
	return best, ok
}

// both returns the least cost, and the least tie at that.
func both(p *Problem) (best, tie int64, ok bool) {
	x := slices.Clone(p.Lo)
	best = math.MaxInt64
	var walk func(j int)
	walk = func(j int) {
		if j == len(x) {
			if p.Kept(x) {
				if c := p.price(x); c < best || c == best && p.tie(x) < tie {
					best, tie = c, p.tie(x)
				}
				ok = true
			}
			return
		}
		for x[j] = p.Lo[j]; x[j] <= p.Hi[j]; x[j]++ {
			walk(j + 1)
		}
		x[j] = p.Lo[j]
	}
	walk(0)
	return best, tie, ok
}

// tie returns the tie of x.
func (p *Problem) tie(x []int64) int64 {
	sum := int64(0)
	for j, c := range p.Tie {
		sum += c * x[j]
	}
	return sum
}

func draw(t *rapid.T) *Problem {
	p := &Problem{}
	n := rapid.IntRange(1, 5).Draw(t, "columns")
	for range n {
		p.Cost = append(p.Cost, rapid.Int64Range(-3, 9).Draw(t, "cost")*rapid.SampledFrom([]int64{1, 1, 7}).Draw(t, "times"))
		lo := rapid.Int64Range(-2, 2).Draw(t, "lo")
		p.Lo = append(p.Lo, lo)
		p.Hi = append(p.Hi, lo+rapid.Int64Range(0, 5).Draw(t, "wide"))
	}
	for range rapid.IntRange(0, 4).Draw(t, "rows") {
		r := Row{Least: rapid.Int64Range(-10, 25).Draw(t, "least")}
		for j := range n {
			if a := rapid.Int64Range(-4, 9).Draw(t, "coefficient"); a != 0 {
				r.Col, r.Coef = append(r.Col, j), append(r.Coef, a)
			}
		}
		p.Rows = append(p.Rows, r)
	}
	if rapid.Bool().Draw(t, "tie") {
		for range n {
			p.Tie = append(p.Tie, rapid.Int64Range(-2, 9).Draw(t, "of a tie"))
		}
	}
	if rapid.Bool().Draw(t, "first") {
		for range n {
			p.First = append(p.First, rapid.Bool().Draw(t, "of all"))
		}
	}
	return p
}

// Against every x, with all the steps there are and with few.
func TestSolveIsBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { isBest(t, draw(t), rapid.Int64Range(0, 400).Draw(t, "effort")) })
	// The same problems every time.
	problems := rapid.Custom(draw)
	for seed := range 300 {
		isBest(t, problems.Example(seed), int64(seed))
	}
}

func isBest(t rapid.TB, p *Problem, little int64) {
	want, tie, ok := both(p)
	effort := int64(10_000_000)
	got := Solve(p, nil, &effort)
	if got.None == ok || ok && (got.X == nil || !p.Kept(got.X) || p.price(got.X) != want || p.tie(got.X) != tie || got.Cost != want || got.Bound != want) {
		t.Fatalf("got %+v, want %d, %t", got, want, ok)
	}
	effort = little
	few := Solve(p, nil, &effort)
	if ok && (few.None || few.Bound > want || few.X != nil && (!p.Kept(few.X) || few.Cost < want)) || !ok && few.X != nil {
		t.Fatalf("with little effort %+v, want %d, %t", few, want, ok)
	}
	if ok {
		effort = 0
		if again := Solve(p, got.X, &effort); again.Cost != want || again.Bound > want {
			t.Fatalf("from the best %+v, want %d", again, want)
		}
	}
}

// Rows that follow from others cut off nothing: every x that keeps the rows keeps them.
func TestCutsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { cutsHold(t, draw(t)) })
	problems := rapid.Custom(draw)
	for seed := range 300 {
		cutsHold(t, problems.Example(seed))
	}
	r := rand.New(rand.NewPCG(13, 8))
	made := 0
	for range 40 { // larger ones, with more rows that follow
		p := &Problem{}
		for range 6 {
			p.Cost = append(p.Cost, 50+r.Int64N(60))
			p.Lo, p.Hi = append(p.Lo, 0), append(p.Hi, 1+r.Int64N(3))
		}
		for range 3 {
			row := Row{Least: 20 + r.Int64N(20)}
			for j := range 6 {
				if r.IntN(3) > 0 {
					row.Col, row.Coef = append(row.Col, j), append(row.Coef, 3+r.Int64N(14))
				}
			}
			p.Rows = append(p.Rows, row)
		}
		made += cutsHold(t, p)
	}
	if made < 40 {
		t.Errorf("only %d rows that follow", made)
	}
}

// cutsHold returns how many rows follow.
func cutsHold(t rapid.TB, p *Problem) int {
	effort := int64(10_000_000)
	s := &search{whole: make([]int64, len(p.Cost)), cost: math.MaxInt64, ceil: math.MaxInt64, Problem: p, rows: slices.Clip(p.Rows), effort: &effort, lo: slices.Clone(p.Lo), hi: slices.Clone(p.Hi)}
	s.atRoot()
	x := slices.Clone(p.Lo)
	var walk func(j int)
	walk = func(j int) {
		if j == len(x) {
			if p.Kept(x) {
				for _, r := range s.rows {
					if r.value(x) < r.Least {
						t.Fatalf("%v breaks %+v", x, r)
					}
				}
			}
			return
		}
		for x[j] = p.Lo[j]; x[j] <= p.Hi[j]; x[j]++ {
			walk(j + 1)
		}
		x[j] = p.Lo[j]
	}
	walk(0)
	return len(s.rows) - len(p.Rows)
}

// Sums that may overflow are given up at once.
func TestTooLarge(t *testing.T) {
	effort := int64(1000)
	p := &Problem{Cost: []int64{math.MaxInt64 / 2}, Lo: []int64{0}, Hi: []int64{9}}
	if got := Solve(p, nil, &effort); got.X != nil || got.None || got.Bound != math.MinInt64 {
		t.Errorf("%+v", got)
	}
}

// Problems that take some branching: covers of three rows with packs that hold a little of each, against every x.
func TestSolveBranches(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	for n := range 60 {
		p := &Problem{}
		for range 8 {
			p.Cost = append(p.Cost, 50+r.Int64N(60))
			p.Lo, p.Hi = append(p.Lo, 0), append(p.Hi, 2)
		}
		for range 3 {
			row := Row{Least: 60 + r.Int64N(40)}
			for j := range 8 {
				row.Col, row.Coef = append(row.Col, j), append(row.Coef, 3+r.Int64N(14))
			}
			p.Rows = append(p.Rows, row)
		}
		if n%3 == 0 { // and one that is kept by taking little
			p.Rows = append(p.Rows, Row{Col: []int{0, 3, 5}, Coef: []int64{-7, -5, -3}, Least: -11})
		}
		want, ok := brute(p)
		effort := int64(50_000_000)
		if got := Solve(p, nil, &effort); got.None == ok || ok && (got.Cost != want || got.Bound != want || !p.Kept(got.X)) {
			t.Errorf("%d: got %+v, want %d, %t", n, got, want, ok)
		}
		// With rows that are found only when they are broken.
		hidden := *p
		hidden.Rows = p.Rows[:1]
		hidden.Broken = func(x []float64) []Row {
			for _, row := range p.Rows[1:] {
				sum := 0.0
				for k, j := range row.Col {
					sum += float64(float64(row.Coef[k]) * x[j])
				}
				if sum < float64(row.Least)-1e-6 {
					return []Row{row}
				}
			}
			return nil
		}
		effort = 50_000_000
		if got := Solve(&hidden, nil, &effort); got.None == ok || ok && (got.Cost != want || got.Bound != want || !p.Kept(got.X)) {
			t.Errorf("%d, hidden: got %+v, want %d, %t", n, got, want, ok)
		}
		for steps := int64(500); steps < 60_000; steps *= 3 {
			effort = steps
			if got := Solve(p, nil, &effort); ok && (got.None || got.Bound > want || got.X != nil && got.Cost < want) {
				t.Errorf("%d with %d steps: got %+v, want %d", n, steps, got, want)
			}
		}
	}
}

// What is given up or decided before any search, by hand.
func TestSolveAtOnce(t *testing.T) {
	broad := &Problem{Cost: make([]int64, 1<<11), Lo: make([]int64, 1<<11), Hi: make([]int64, 1<<11), Rows: make([]Row, 1<<10+1)}
	broad.Cost[3], broad.Hi[3], broad.Cost[8], broad.Hi[8] = -5, 2, 4, 2
	nothing := Result{Cost: math.MaxInt64, Bound: math.MaxInt64, None: true}
	for _, c := range []struct {
		name string
		p    Problem
		want Result
	}{
		{"a row that may overflow", Problem{Cost: []int64{1}, Lo: []int64{0}, Hi: []int64{1 << 31}, Rows: []Row{{Col: []int{0}, Coef: []int64{1 << 31}}}}, Result{Cost: math.MaxInt64, Bound: math.MinInt64}},
		{"a row that only just fits: 2^31 times 2^30", Problem{Cost: []int64{1}, Lo: []int64{0}, Hi: []int64{1 << 30}, Rows: []Row{{Col: []int{0}, Coef: []int64{1 << 31}}}}, Result{X: []int64{0}}},
		{"a cost that only just fits", Problem{Cost: []int64{1 << 31}, Lo: []int64{0}, Hi: []int64{1 << 30}}, Result{X: []int64{0}}},
		{"a cost that may overflow", Problem{Cost: []int64{1<<31 + 1}, Lo: []int64{0}, Hi: []int64{1 << 30}}, Result{Cost: math.MaxInt64, Bound: math.MinInt64}},
		{"bounds that cross", Problem{Cost: []int64{1}, Lo: []int64{2}, Hi: []int64{1}}, nothing},
		{"no columns, a row that 0 keeps", Problem{Rows: []Row{{Least: -1}}}, Result{X: []int64{}}},
		{"no columns, a row that 0 breaks", Problem{Rows: []Row{{Least: 1}}}, Result{Cost: math.MaxInt64, Bound: 0, None: true}},
		{"too many cells", *broad, Result{Cost: math.MaxInt64, Bound: -10}},
	} {
		effort := int64(1000)
		got := Solve(&c.p, nil, &effort)
		if got.None != c.want.None || got.Cost != c.want.Cost || got.Bound != c.want.Bound || !slices.Equal(got.X, c.want.X) || (got.X == nil) != (c.want.X == nil) {
			t.Errorf("%s: got %+v, want %+v", c.name, got, c.want)
		}
	}
	// A start that is out of bounds is no start: 9 costs least, but is too much; 3 is the most there is.
	p := &Problem{Cost: []int64{-2}, Lo: []int64{0}, Hi: []int64{3}}
	effort := int64(1000)
	if got := Solve(p, []int64{9}, &effort); !slices.Equal(got.X, []int64{3}) || got.Cost != -6 || got.Bound != -6 {
		t.Errorf("from a start out of bounds: %+v", got)
	}
	// A start that costs the least that its bounds allow is proved without a step.
	effort = 1000
	if got := Solve(p, []int64{3}, &effort); got.Cost != -6 || got.Bound != -6 || effort != 1000 {
		t.Errorf("from the least there is: %+v, %d steps left", got, effort)
	}
}

// A number of cost and tie, against both by themselves: 6, 9 and 15 are multiples of 3, and the ties are from -2·5 to 3·4.
func TestWeighed(t *testing.T) {
	p := &Problem{Cost: []int64{6, -9, 15}, Tie: []int64{-2, 3, 0}, Lo: []int64{0, 0, -1}, Hi: []int64{5, 4, 3}}
	q, v := p.weighed()
	if want := (value{step: 3, weight: 23, least: -10}); !p.Weighs() || v != want || q.Tie != nil || !slices.Equal(q.Cost, []int64{2*23 - 2, -3*23 + 3, 5 * 23}) {
		t.Fatalf("%+v, %+v", v, q)
	}
	for _, x := range [][]int64{{0, 0, -1}, {5, 0, 3}, {0, 4, 0}, {1, 2, 3}, {5, 4, -1}} {
		n := q.price(x)
		if got := v.costs(n); got != p.price(x) {
			t.Errorf("%v: %d, costs %d", x, got, p.price(x))
		}
		if even := v.even(n); v.costs(even) != p.price(x) || v.costs(even-1) >= p.price(x) || even > n {
			t.Errorf("%v: %d, from %d on", x, n, even)
		}
	}
}

// Ties that are too large to weigh are left out: by themselves, with the cost, and in all.
func TestTiesTooLarge(t *testing.T) {
	for _, c := range []struct {
		cost, tie []int64
	}{
		{[]int64{1, 2}, []int64{1 << 61, 1}},
		{[]int64{1 << 40, 1}, []int64{1 << 40, 1}},
		{[]int64{1 << 38, 1<<38 + 1}, []int64{1 << 18, 1 << 18}},
	} {
		p := &Problem{Cost: c.cost, Tie: c.tie, Lo: []int64{0, 0}, Hi: []int64{5, 5}, Rows: []Row{{Col: []int{0, 1}, Coef: []int64{1, 1}, Least: 3}}}
		q, v := p.weighed()
		if p.Weighs() || v != (value{step: 1, weight: 1}) || !slices.Equal(q.Cost, c.cost) {
			t.Errorf("%+v: %+v, %+v", c, v, q)
		}
		want, _ := brute(p)
		effort := int64(1_000_000)
		if got := Solve(p, nil, &effort); got.Cost != want || got.Bound != want {
			t.Errorf("%+v: got %+v, want %d", c, got, want)
		}
	}
}

// Of very many x of the least cost the search for the one of the least tie ends after some steps, and the cost
// is proved all the same. By hand: any 15 of 30 cost 15.
func TestTiesEnd(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 5))
	p := &Problem{}
	all, split, other := Row{Least: 15}, Row{}, Row{}
	for j := range 30 {
		a, b := 1000+r.Int64N(1000), 1000+r.Int64N(1000)
		p.Cost, p.Tie, p.Lo, p.Hi = append(p.Cost, 1), append(p.Tie, a+b), append(p.Lo, 0), append(p.Hi, 1)
		all.Col, all.Coef = append(all.Col, j), append(all.Coef, 1)
		split.Col, split.Coef, split.Least = append(split.Col, j), append(split.Coef, a), split.Least+a/2
		other.Col, other.Coef, other.Least = append(other.Col, j), append(other.Coef, b), other.Least+b/2
	}
	p.Rows = []Row{all, split, other}
	const steps = 50_000_000
	effort := int64(steps)
	if got := Solve(p, nil, &effort); got.Cost != 15 || got.Bound != 15 || effort < steps-3*maxTies {
		t.Errorf("%+v after %d steps", got, steps-effort)
	}
}

// Costs and coefficients so large that prices prove nothing, or that a pivot on them is too
// small, against every x. No row that follows has large numbers.
func TestSolveLarge(t *testing.T) {
	const a = 1 << 40
	problems := []*Problem{
		// So would a cut of this one, which nothing divides.
		{Cost: []int64{3, 6}, Lo: []int64{0, 0}, Hi: []int64{5, 5}, Rows: []Row{{Col: []int{0, 1}, Coef: []int64{a + 1, 3 * a / 2}, Least: 3*a/2 + 12346}}},
		// A cut of the row would have numbers as large as its own.
		{Cost: []int64{3, 4}, Lo: []int64{0, 0}, Hi: []int64{5, 5}, Rows: []Row{{Col: []int{0, 1}, Coef: []int64{a + 1, a}, Least: 3 * a / 2}}},
		{Cost: []int64{3, 4, 2}, Lo: []int64{0, 0, 0}, Hi: []int64{5, 5, 2}, Rows: []Row{
			{Col: []int{0, 1}, Coef: []int64{a + 1, a}, Least: 3 * a / 2}, {Col: []int{0, 1, 2}, Coef: []int64{a, 3*a + 7, a / 5}, Least: 4*a + 1},
		}},
		// The bound of it does not fit.
		{Cost: []int64{1 << 59, 1 << 59}, Lo: []int64{0, 0}, Hi: []int64{1, 1}, Rows: []Row{{Col: []int{0, 1}, Coef: []int64{1, 1}, Least: 1}}},
		{Cost: []int64{1 << 59, 3 << 58}, Lo: []int64{0, 0}, Hi: []int64{1, 1}, Rows: []Row{{Col: []int{0, 1}, Coef: []int64{2, 2}, Least: 3}}},
	}
	// The price of a row times its numbers does not fit: the first column is dear, the others fill the row by much, and
	// there are to be few of them.
	r := rand.New(rand.NewPCG(17, 3))
	for range 40 {
		p := &Problem{Cost: []int64{1<<54 + r.Int64N(1<<57)}, Lo: []int64{0}, Hi: []int64{4}}
		heavy := 3 + r.Int64N(1000)
		fill, few := Row{Col: []int{0}, Coef: []int64{1}}, Row{Least: -2}
		for j := 1; j < 5; j++ {
			p.Cost, p.Lo, p.Hi = append(p.Cost, r.Int64N(9)), append(p.Lo, 0), append(p.Hi, 1)
			fill.Col, fill.Coef = append(fill.Col, j), append(fill.Coef, heavy)
			few.Col, few.Coef = append(few.Col, j), append(few.Coef, -1)
		}
		fill.Least = 2*heavy + 1 + r.Int64N(3)
		p.Rows = []Row{fill, few}
		problems = append(problems, p)
	}
	for _, p := range problems {
		want, _ := brute(p)
		effort := int64(1_000_000)
		s := &search{whole: make([]int64, len(p.Cost)), cost: math.MaxInt64, ceil: math.MaxInt64, Problem: p, rows: slices.Clip(p.Rows), effort: &effort, lo: slices.Clone(p.Lo), hi: slices.Clone(p.Hi)}
		s.atRoot()
		if b := s.bound(p.Lo, p.Hi, make([]int64, len(p.Cost))); b > want {
			t.Errorf("%+v: bound %d, where %d is possible", p, b, want)
		}
		for _, row := range s.rows[len(p.Rows):] {
			if slices.Max(row.Coef) > 1<<30 || slices.Min(row.Coef) < -1<<30 {
				t.Errorf("%+v: so large a row that follows: %+v", p, row)
			}
		}
		effort = 1_000_000
		if got := Solve(p, nil, &effort); got.X == nil || !p.Kept(got.X) || p.price(got.X) != want || got.Cost != want || got.Bound != want {
			t.Errorf("%+v: got %+v, want %d", p, got, want)
		}
	}
}

// Covers of all edges of a ring of 13, whose relaxation has a half everywhere, so that there are more
// columns to branch on than are looked at closely; and one column of no cost and one that pays.
// Against every x.
func TestSolveRing(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 2))
	for range 10 {
		const n = 13
		p := &Problem{}
		for j := range n {
			p.Cost = append(p.Cost, 50+r.Int64N(12))
			p.Lo, p.Hi = append(p.Lo, 0), append(p.Hi, 1)
			p.Rows = append(p.Rows, Row{Col: []int{j, (j + 1) % n}, Coef: []int64{1, 1}, Least: 1})
		}
		p.Cost, p.Lo, p.Hi = append(p.Cost, 0, -5), append(p.Lo, 0, 0), append(p.Hi, 1, 1)
		p.Rows = append(p.Rows, Row{Col: []int{n, n + 1}, Coef: []int64{1, -1}})
		want, _ := brute(p)
		effort := int64(50_000_000)
		if got := Solve(p, nil, &effort); got.X == nil || !p.Kept(got.X) || p.price(got.X) != want || got.Cost != want || got.Bound != want {
			t.Errorf("%v: got %+v, want %d", p.Cost, got, want)
		}
	}
}

// Many rows that are found only when they are broken, so that those that do not bind have to go, against every x.
func TestSolveManyHidden(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 4))
	for n := range 10 {
		p := &Problem{}
		var hidden []Row
		for j := range 9 {
			p.Cost = append(p.Cost, 50+r.Int64N(20))
			p.Lo, p.Hi = append(p.Lo, 0), append(p.Hi, 2)
			for k := range j {
				for l := range k {
					hidden = append(hidden, Row{Col: []int{j, k, l}, Coef: []int64{3 + r.Int64N(5), 3 + r.Int64N(5), 3 + r.Int64N(5)}, Least: 8 + r.Int64N(5)})
				}
			}
		}
		all := *p
		all.Rows = hidden
		want, ok := brute(&all)
		p.Broken = func(x []float64) []Row {
			for _, row := range hidden {
				sum := 0.0
				for k, j := range row.Col {
					sum += float64(float64(row.Coef[k]) * x[j])
				}
				if sum < float64(row.Least)-1e-6 {
					return []Row{row}
				}
			}
			return nil
		}
		effort := int64(50_000_000)
		if got := Solve(p, nil, &effort); got.None == ok || ok && (got.Cost != want || got.Bound != want || !all.Kept(got.X)) {
			t.Errorf("%d: got %+v, want %d, %t", n, got, want, ok)
		}
	}
}

// Rows that follow from others are left out where there is no room for them. Each row 2x + y ≥ 3 has
// x = 3/2 in the relaxation if x costs 1 and y 2, and x + y ≥ 2 follows from it.
func TestCutsHaveRoom(t *testing.T) {
	for _, rows := range []int{128, 127, 125} {
		const n = MaxCells / 128
		p := &Problem{Cost: make([]int64, n), Lo: make([]int64, n), Hi: make([]int64, n)}
		for j := range n {
			p.Cost[j], p.Hi[j] = 1+int64(j%2), 9
		}
		for i := range rows {
			p.Rows = append(p.Rows, Row{Col: []int{2 * i, 2*i + 1}, Coef: []int64{2, 1}, Least: 3})
		}
		effort := int64(math.MaxInt64)
		s := &search{whole: make([]int64, len(p.Cost)), cost: math.MaxInt64, ceil: math.MaxInt64, Problem: p, rows: slices.Clip(p.Rows), effort: &effort, lo: p.Lo, hi: p.Hi}
		s.t = newTableau(p, s.rows, s.lo, s.hi)
		if s.t.optimize(&effort) != optimal {
			t.Fatal("no optimum")
		}
		more := s.cuts()
		if len(more) != 128-rows {
			t.Errorf("%d more with %d", len(more), rows)
		}
		for i, r := range more {
			if !slices.Equal(r.Col, []int{2 * i, 2*i + 1}) || !slices.Equal(r.Coef, []int64{1, 1}) || r.Least != 2 {
				t.Errorf("%+v", r)
			}
		}
	}
}

// relaxed returns a problem whose relaxation takes some pivots.
func relaxed(r *rand.Rand) *Problem {
	p := &Problem{}
	for range 10 {
		p.Cost = append(p.Cost, 10+r.Int64N(60))
		p.Lo, p.Hi = append(p.Lo, 0), append(p.Hi, 6)
	}
	for range 7 {
		row := Row{Least: 60 + r.Int64N(60)}
		for j := range 10 {
			if a := r.Int64N(16) - 4; a > 0 || a < -2 {
				row.Col, row.Coef = append(row.Col, j), append(row.Coef, a)
			}
		}
		p.Rows = append(p.Rows, row)
	}
	return p
}

func TestGivesUp(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 8))
	gave := 0
	for range 50 {
		p := relaxed(r)
		effort := int64(math.MaxInt64)
		fresh := newTableau(p, p.Rows, p.Lo, p.Hi)
		state := fresh.optimize(&effort)
		short := newTableau(p, p.Rows, p.Lo, p.Hi)
		short.most = 1
		if short.optimize(&effort) == givenUp {
			if gave++; short.pivots != 1 || fresh.pivots < 1 {
				t.Fatalf("gave up after %d pivots, of %d", short.pivots, fresh.pivots)
			}
		}
		short.most = 0
		if got := short.optimize(&effort); got != state || state == optimal && math.Abs(short.objective()-fresh.objective()) > 1e-9*fresh.objective() {
			t.Fatalf("%d at %v, want %d at %v", got, short.objective(), state, fresh.objective())
		}
	}
	if gave < 20 {
		t.Errorf("gave up %d times only", gave)
	}
}

// After many pivots the inverse is worked out anew. Whatever errors are in it by then, it comes out as
// before them, with the reduced costs that the prices of the rows give, and with the optimum that a
// new tableau has.
func TestRebuild(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 6))
	near := func(a, b float64) bool { return math.Abs(a-b) <= float64(1e-9*(1+math.Abs(a))) }
	done, columns := 0, 0
	for range 200 {
		p := relaxed(r)
		effort := int64(math.MaxInt64)
		tab := newTableau(p, p.Rows, p.Lo, p.Hi)
		if tab.optimize(&effort) != optimal {
			continue
		}
		lo, hi := slices.Clone(p.Lo), slices.Clone(p.Hi)
		for range 3 {
			j := r.IntN(len(lo))
			lo[j] = r.Int64N(3)
			hi[j] = lo[j] + r.Int64N(4)
		}
		good, bad := &tableau{}, &tableau{}
		tab.copyTo(good)
		tab.copyTo(bad)
		bad.columns = slices.Clone(bad.columns)
		good.setBounds(lo, hi)
		for k := range bad.inverse {
			bad.inverse[k] += float64(1e-4 * (r.Float64() - 0.5))
		}
		for k := range bad.cost {
			if bad.place[k] < 0 {
				bad.cost[k] += float64(1e-5 * bad.cost[k])
			}
		}
		bad.pivots = 1000
		bad.setBounds(lo, hi)
		if bad.pivots != 0 {
			t.Fatalf("not rebuilt: %d pivots", bad.pivots)
		}
		for j := range lo {
			if (good.place[j] < 0) != (bad.place[j] < 0) || !near(good.at[j], bad.at[j]) || !near(good.cost[j], bad.cost[j]) {
				t.Fatalf("column %d: %d, %v at %v, want %d, %v at %v", j, bad.place[j], bad.cost[j], bad.at[j], good.place[j], good.cost[j], good.at[j])
			}
			if good.place[j] < 0 {
				continue
			}
			columns++
			for i, g := range good.row {
				b := bad.row[i]
				if (g < 0) != (b < 0) {
					t.Fatalf("row %d is tight in one", i)
				}
				if g >= 0 && !near(good.line(int(good.place[j]))[g], bad.line(int(bad.place[j]))[b]) {
					t.Fatalf("of column %d and row %d: %v, want %v", j, i, bad.line(int(bad.place[j]))[b], good.line(int(good.place[j]))[g])
				}
			}
		}
		for i, row := range p.Rows {
			sum := -float64(row.Least)
			for k, j := range row.Col {
				sum += float64(float64(row.Coef[k]) * bad.at[j])
			}
			if !near(sum, bad.slack[i]) {
				t.Fatalf("slack %d: %v, want %v", i, bad.slack[i], sum)
			}
		}
		for j, c := range p.Cost {
			rest := float64(c)
			for i, row := range p.Rows {
				if k := slices.Index(row.Col, j); k >= 0 {
					rest -= float64(float64(row.Coef[k]) * bad.price(i))
				}
			}
			if !near(bad.cost[j], rest) {
				t.Fatalf("reduced cost of %d: %v, by the prices %v", j, bad.cost[j], rest)
			}
		}
		fresh := newTableau(p, p.Rows, lo, hi)
		state := fresh.optimize(&effort)
		if got := bad.optimize(&effort); got != state || state == optimal && !near(fresh.objective(), bad.objective()) {
			t.Fatalf("%d at %v, want %d at %v", got, bad.objective(), state, fresh.objective())
		}
		if state == optimal {
			done++
		}
	}
	if done < 50 || columns < 200 {
		t.Errorf("only %d optima, %d basic columns", done, columns)
	}
}

// A tableau with a basis that was kept is optimal again within the bounds that it was optimal in, without a pivot,
// whatever was done to it in between; but rows that are left out change what the numbers of a basis mean.
func TestLoad(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 4))
	done := 0
	for range 50 {
		p := relaxed(r)
		effort := int64(math.MaxInt64)
		tab := newTableau(p, p.Rows, p.Lo, p.Hi)
		if tab.optimize(&effort) != optimal {
			continue
		}
		want := slices.Clone(tab.at)
		var b basis
		tab.save(&b)
		pivots := tab.pivots
		for range 3 {
			lo, hi := slices.Clone(p.Lo), slices.Clone(p.Hi)
			for j := range hi {
				lo[j] = r.Int64N(3)
				hi[j] = lo[j] + r.Int64N(4)
			}
			tab.setBounds(lo, hi)
			tab.optimize(&effort)
		}
		if tab.pivots > pivots {
			done++
		}
		tab.load(&b)
		tab.setBounds(p.Lo, p.Hi)
		if state := tab.optimize(&effort); state != optimal || tab.pivots != pivots {
			t.Fatalf("%d after %d pivots, not %d", state, tab.pivots, pivots)
		}
		for j, v := range tab.at {
			if math.Abs(v-want[j]) > 1e-6 {
				t.Fatalf("%v, want %v", tab.at, want)
			}
		}
		s := &search{Problem: &Problem{}, t: tab, bases: []basis{b}}
		s.purge()
		s.bases[0].pivots = -1
		if tab.load(&s.bases[0]); tab.pivots != pivots {
			t.Error("a basis from before rows were left out is taken")
		}
	}
	if done < 20 {
		t.Errorf("only %d with other pivots", done)
	}
}

// A basis is kept only where there is room for it: not with so many columns or rows, or so deep. A basis
// without tight rows has three numbers for each column and one for each row.
func TestSaveHasRoom(t *testing.T) {
	for _, tt := range []struct{ columns, rows, depth, want int }{
		{1, 0, 0, 1},
		{maxBases / 3, 0, 0, 1},
		{maxBases/3 + 1, 0, 0, 0},
		{1, maxBases - 3, 0, 1},
		{1, maxBases - 2, 0, 0},
		{1, maxBases/2 - 3, 1, 2},
		{1, maxBases/2 - 2, 1, 0},
	} {
		p := &Problem{Cost: make([]int64, tt.columns), Lo: make([]int64, tt.columns), Hi: make([]int64, tt.columns), Rows: make([]Row, tt.rows)}
		s := &search{Problem: p, rows: p.Rows, t: newTableau(p, nil, p.Lo, p.Hi)}
		if s.save(tt.depth); len(s.bases) != tt.want {
			t.Errorf("%+v: %d bases are kept", tt, len(s.bases))
		}
	}
}

// An inverse that is no longer good enough is worked out anew once, before it is given up.
func TestRebuildInTime(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 6))
	mended, given := 0, 0
	for range 200 {
		p := relaxed(r)
		effort := int64(math.MaxInt64)
		tab := newTableau(p, p.Rows, p.Lo, p.Hi)
		if tab.optimize(&effort) != optimal || len(tab.basic) == 0 {
			continue
		}
		lo, hi := slices.Clone(p.Lo), slices.Clone(p.Hi)
		j := tab.basic[0]
		hi[j] = max(lo[j], int64(tab.at[j])-1)
		if tab.at[j] < float64(hi[j]) {
			continue
		}
		fresh := newTableau(p, p.Rows, lo, hi)
		state := fresh.optimize(&effort)
		tab.setBounds(lo, hi)
		for k := range tab.inverse {
			tab.inverse[k] += float64(1e-3 * (r.Float64() - 0.5))
		}
		if got := tab.optimize(&effort); got == givenUp {
			given++
		} else if got == state && (state != optimal || math.Abs(fresh.objective()-tab.objective()) < 1e-6) {
			mended++
		}
	}
	if mended < 5 || given+mended < 7 {
		t.Errorf("%d mended, %d given up", mended, given)
	}

	// With rows whose entries are not what the columns say, working it out anew does not help.
	p := &Problem{Cost: []int64{3, 4}, Lo: []int64{0, 0}, Hi: []int64{9, 9}, Rows: []Row{{Col: []int{0, 1}, Coef: []int64{2, 3}, Least: 12}}}
	effort := int64(1 << 40)
	tab := newTableau(p, p.Rows, p.Lo, p.Hi)
	if got := tab.optimize(&effort); got != optimal {
		t.Fatal(got)
	}
	lo, hi := []int64{0, 0}, []int64{9, 9}
	hi[tab.basic[0]] = 1
	tab.setBounds(lo, hi)
	for j := range tab.columns {
		if tab.place[j] < 0 {
			tab.columns[j][0].a = 7
		}
	}
	if got := tab.optimize(&effort); got != givenUp {
		t.Errorf("got %d", got)
	}
}

// Columns that depend on each other cannot all be basic: one goes back to a bound.
func TestRebuildDependent(t *testing.T) {
	for _, cost := range []int64{3, -3} {
		p := &Problem{Cost: []int64{2, cost}, Lo: []int64{0, 1}, Hi: []int64{9, 9}, Rows: []Row{
			{Col: []int{0, 1}, Coef: []int64{1, 1}, Least: 4}, {Col: []int{0, 1}, Coef: []int64{2, 2}, Least: 8},
		}}
		effort := int64(1 << 40)
		tab := newTableau(p, p.Rows, p.Lo, p.Hi)
		tab.optimize(&effort)
		tab.basic, tab.tight, tab.dual = []int32{0, 1}, []int32{0, 1}, []float64{0, 0}
		tab.place, tab.row = []int32{0, 1}, []int32{0, 1}
		tab.rebuild()
		tab.values()
		want := 1.0
		if cost < 0 {
			want = 9
		}
		if len(tab.basic) != 1 || len(tab.tight) != 1 || tab.place[1] >= 0 || tab.at[1] != want || tab.at[0] != 4-want {
			t.Errorf("basic %v, tight %v, at %v", tab.basic, tab.tight, tab.at)
		}
	}
}

// Bounds in the wrong order leave nothing.
func TestNoRoom(t *testing.T) {
	effort := int64(1000)
	if got := Solve(&Problem{Cost: []int64{1}, Lo: []int64{2}, Hi: []int64{1}}, nil, &effort); !got.None {
		t.Errorf("%+v", got)
	}
}

// Where a price, a row at its price, or the costs do not fit when multiplied by the scale, there is no bound. By hand: 3 at 2^40 each, and the
// row comes to 9 + 3 at most.
func TestPriceTooLarge(t *testing.T) {
	p := &Problem{Cost: []int64{1 << 40}, Lo: []int64{0}, Hi: []int64{9}, Rows: []Row{{Col: []int{0}, Coef: []int64{1}, Least: 3}}}
	for _, tt := range []struct {
		reason string
		scale  int64
		price  float64
		want   int64
	}{
		{"the price of the relaxation", 4, 1 << 40, 3 << 40},
		{"no price", 4, 0, 0},
		{"4·2^60 for a unit", 4, 1 << 60, math.MinInt64},
		{"4·2^58 for a unit, 12 of them", 4, 1 << 58, math.MinInt64},
		{"2^19 times the cost of 9", 1 << 19, 1, math.MinInt64},
	} {
		effort := int64(1000)
		s := &search{Problem: p, rows: p.Rows, effort: &effort, lo: p.Lo, hi: p.Hi, scale: float64(tt.scale), scaled: []int64{tt.scale << 40}}
		s.t = newTableau(p, p.Rows, p.Lo, p.Hi)
		s.t.optimize(&effort)
		s.t.dual[0] = tt.price
		if got := s.bound(s.lo, s.hi, make([]int64, 1)); got != tt.want {
			t.Errorf("%s: got %d, want %d", tt.reason, got, tt.want)
		}
	}
	// Up to 2^61: 2^17 times the cost of 2^3 at 2^40, and as much for the row, whose sum and least come to 2^4, at 2^39.
	p = &Problem{Cost: []int64{1 << 40}, Lo: []int64{0}, Hi: []int64{8}, Rows: []Row{{Col: []int{0}, Coef: []int64{1}, Least: 8}}}
	for price, want := range map[float64]int64{1 << 39: 8 << 39, 1<<39 + 1: math.MinInt64} {
		effort := int64(1000)
		s := &search{Problem: p, rows: p.Rows, effort: &effort, lo: p.Lo, hi: p.Hi, scale: 1 << 17, scaled: []int64{1 << 57}}
		s.t = newTableau(p, p.Rows, p.Lo, p.Hi)
		s.t.optimize(&effort)
		s.t.dual[0] = price
		if got := s.bound(s.lo, s.hi, make([]int64, 1)); got != want {
			t.Errorf("at %v: got %d, want %d", price, got, want)
		}
	}
}

// Sums of rows that may overflow, or whose entries are of too different sizes, are not rounded.
func TestGomoryTooLarge(t *testing.T) {
	for _, test := range []struct {
		reason string
		hi     int64
		rows   []Row
		want   int
	}{
		{"2x + 3y ≥ 7 and 3x + 2y ≥ 7 at 1.4 each", 9, []Row{{Col: []int{0, 1}, Coef: []int64{2, 3}, Least: 7}, {Col: []int{0, 1}, Coef: []int64{3, 2}, Least: 7}}, 1},
		{"the same with bounds that overflow", 1 << 40, []Row{{Col: []int{0, 1}, Coef: []int64{2 << 18, 3 << 18}, Least: 7 << 18}, {Col: []int{0, 1}, Coef: []int64{3 << 18, 2 << 18}, Least: 7 << 18}}, 0},
		{"with 650z besides", 9, []Row{{Col: []int{0, 1}, Coef: []int64{2, 3}, Least: 7}, {Col: []int{0, 1, 2}, Coef: []int64{3, 2, 650}, Least: 7}}, 1},
		{"the same with z up to 2^40: 650·2^40 times 0.2·2^14 is more than 2^61", 1 << 40, []Row{{Col: []int{0, 1}, Coef: []int64{2, 3}, Least: 7}, {Col: []int{0, 1, 2}, Coef: []int64{3, 2, 650}, Least: 7}}, 0},
		{"with 900,000z besides", 9, []Row{{Col: []int{0, 1}, Coef: []int64{2, 3}, Least: 7}, {Col: []int{0, 1, 2}, Coef: []int64{3, 2, 900_000}, Least: 7}}, 0},
	} {
		p := &Problem{Cost: []int64{1, 1, 1 << 30}, Lo: []int64{0, 0, 0}, Hi: []int64{test.hi, test.hi, test.hi}, Rows: test.rows}
		effort := int64(1 << 40)
		s := &search{Problem: p, rows: p.Rows, effort: &effort, lo: p.Lo, hi: p.Hi, scale: 1, scaled: p.Cost}
		s.t = newTableau(p, p.Rows, p.Lo, p.Hi)
		if s.t.optimize(&effort) != optimal {
			t.Fatal(test.reason)
		}
		if got := s.gomory(); (len(got) > 0) != (test.want > 0) {
			t.Errorf("%s: %v", test.reason, got)
		}
	}
}

// With no steps at all, what can be spared is taken off the start. By hand: of three and three, one of the cheaper is enough.
func TestTrim(t *testing.T) {
	p := &Problem{Cost: []int64{3, 5}, Lo: []int64{0, 0}, Hi: []int64{3, 3}, Rows: []Row{{Col: []int{0, 1}, Coef: []int64{2, 2}, Least: 1}}}
	effort := int64(0)
	if got := Solve(p, []int64{3, 3}, &effort); !slices.Equal(got.X, []int64{1, 0}) || got.Cost != 3 || got.Bound > 3 {
		t.Errorf("%+v", got)
	}
	// The dearest first, down to its lower bound: 2·(-2) + 2·y ≥ 1 takes 3 of y. What costs nothing, and what pays, stays.
	p = &Problem{Cost: []int64{5, 3, 0, -1}, Lo: []int64{-2, -3, 0, 0}, Hi: []int64{3, 6, 4, 4}, Rows: []Row{{Col: []int{0, 1}, Coef: []int64{2, 2}, Least: 1}}}
	effort = 0
	if got := Solve(p, []int64{3, 6, 2, 3}, &effort); !slices.Equal(got.X, []int64{-2, 3, 2, 3}) || got.Cost != -4 || got.Bound > -4 {
		t.Errorf("%+v", got)
	}
}

// What is spared takes no more than four million looks at a column or a row, besides the one at the start.
func TestTrimEnds(t *testing.T) {
	const n = 3999
	p := &Problem{Rows: []Row{{Least: n}}}
	for j := range n {
		p.Cost, p.Lo, p.Hi = append(p.Cost, 1), append(p.Lo, 0), append(p.Hi, 2)
		p.Rows[0].Col, p.Rows[0].Coef = append(p.Rows[0].Col, j), append(p.Rows[0].Coef, 1)
	}
	looks := 0
	p.Broken = func([]float64) []Row {
		looks++
		return nil
	}
	effort := int64(0)
	got := Solve(p, p.Hi, &effort)
	if want := 1 + 4_000_000/(n+1); looks > want || got.Cost > 2*n-int64(want)/2 || !p.Kept(got.X) {
		t.Errorf("%d looks, want %d, to a cost of %d", looks, want, got.Cost)
	}
}

// The largest ties that are weighed: costs of 12 in all at a weight of 1 + 4·a, and 4·a for the ties, come to 12 + 52·a.
func TestTiesFit(t *testing.T) {
	for a, want := range map[int64]bool{(maxSum - 12) / 52: true, (maxSum-12)/52 + 100: false} {
		p := &Problem{Cost: []int64{2, 1}, Tie: []int64{0, -a}, Lo: []int64{0, 0}, Hi: []int64{4, 4}, Rows: []Row{{Col: []int{0, 1}, Coef: []int64{2, 1}, Least: 4}}}
		if got := p.Weighs(); got != want {
			t.Errorf("%d: %t", a, got)
		}
		if effort := int64(100_000); want {
			if got := Solve(p, nil, &effort); !slices.Equal(got.X, []int64{0, 4}) || got.Bound != 4 {
				t.Errorf("%d: %+v", a, got)
			}
		}
	}
}

// Rows that follow have no number beyond 2^30. By hand: 2x ≥ 2n - 1 asks for x ≥ n,
// and -2x ≥ -2n - 1 for -x ≥ -n.
func TestCutsAreSmall(t *testing.T) {
	for _, tt := range []struct {
		cost, row []int64
		least     int64
		want      *Row
	}{
		{[]int64{1}, []int64{2}, 1<<31 - 1, &Row{[]int{0}, []int64{1}, 1 << 30}},
		{[]int64{1}, []int64{2}, 1<<31 + 1, nil},
		{[]int64{-1}, []int64{-2}, -1<<31 - 1, &Row{[]int{0}, []int64{-1}, -1 << 30}},
		{[]int64{-1}, []int64{-2}, -1<<31 - 3, nil},
	} {
		n := len(tt.cost)
		p := &Problem{Cost: tt.cost, Lo: make([]int64, n), Hi: slices.Repeat([]int64{1 << 32}, n), Rows: []Row{{[]int{0, 1}[:n], tt.row, tt.least}}}
		effort := int64(1000)
		s := &search{Problem: p, rows: p.Rows, effort: &effort, lo: p.Lo, hi: p.Hi, t: newTableau(p, p.Rows, p.Lo, p.Hi)}
		if s.t.optimize(&effort) != optimal {
			t.Fatal(tt)
		}
		got := s.cuts()
		if len(got) > 1 || (len(got) > 0) != (tt.want != nil) || tt.want != nil && !cmp.Equal(got[0], *tt.want) {
			t.Errorf("%v: %v", tt, got)
		}
	}
}

// A value that is no further from whole than that is whole.
func TestSplit(t *testing.T) {
	for v, want := range map[float64]bool{3: false, 3.25: false, 2.75: false, 3.26: true, 2.74: true, -3.25: false, -3.26: true, 3.5: true} {
		if got := split(v, 0.25); got != want {
			t.Errorf("%v: %t", v, got)
		}
	}
}

// Values so large that rounding takes them out of their bounds by more than is allowed near 0 are within them: three rows fix three values, and
// the first may be no more than it is.
func TestValuesFarFromZero(t *testing.T) {
	r := rand.New(rand.NewPCG(40, 1))
	for k := range 100 {
		p := &Problem{Cost: make([]int64, 3), Lo: make([]int64, 3), Hi: []int64{0, 1 << 40, 1 << 40}}
		x := []int64{1<<39 + r.Int64N(1<<38), 1<<39 + r.Int64N(1<<38), 1<<39 + r.Int64N(1<<38)}
		p.Hi[0] = x[0]
		for range 3 {
			row := Row{Col: []int{0, 1, 2}}
			for j := range 3 {
				row.Coef = append(row.Coef, 1+r.Int64N(60))
				p.Cost[j] += row.Coef[j]
			}
			row.Least = row.value(x)
			p.Rows = append(p.Rows, row)
		}
		effort := int64(100_000)
		tab := newTableau(p, p.Rows, p.Lo, p.Hi)
		if got := tab.optimize(&effort); got != optimal {
			t.Errorf("%d: %d at %v after %d pivots, want %v", k, got, tab.at, tab.pivots, x)
		}
	}
}

// Ties that the relaxation cannot tell from none end too. Half of what the columns weigh, to be met as near as may be: a market split.
// Source: G. Cornuéjols, M. Dawande, A class of hard small 0-1 programs, INFORMS Journal on Computing 11 (1999) 205-210 (from
// memory).
func TestSplitTiesEnd(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 6))
	p := &Problem{}
	const n = 40
	all := Row{Least: 1}
	for range 3 {
		over, under := Row{}, Row{}
		for j := range n {
			a := r.Int64N(100)
			over.Col, over.Coef, over.Least = append(over.Col, j), append(over.Coef, a), over.Least+a
			under.Col, under.Coef = append(under.Col, j), append(under.Coef, -a)
		}
		half := over.Least / 2
		over.Least, under.Least = half, -half
		p.Rows = append(p.Rows, over, under)
	}
	for range n {
		p.Cost, p.Tie, p.Lo, p.Hi = append(p.Cost, 0), append(p.Tie, 0), append(p.Lo, 0), append(p.Hi, 1)
	}
	for i := range p.Rows {
		p.Rows[i].Col, p.Rows[i].Coef = append(p.Rows[i].Col, n+i), append(p.Rows[i].Coef, 1)
		p.Cost, p.Tie, p.Lo, p.Hi = append(p.Cost, 0), append(p.Tie, 1), append(p.Lo, 0), append(p.Hi, 5000)
	}
	p.Cost, p.Tie, p.Lo, p.Hi = append(p.Cost, 1), append(p.Tie, 0), append(p.Lo, 0), append(p.Hi, 1)
	all.Col, all.Coef = []int{len(p.Cost) - 1}, []int64{1}
	p.Rows = append(p.Rows, all)
	const steps = 4_000_000
	effort := int64(steps)
	if got := Solve(p, nil, &effort); got.Cost != 1 || got.Bound != 1 || effort < steps-10*maxTies {
		t.Errorf("%+v after %d steps", got, steps-effort)
	}
}
