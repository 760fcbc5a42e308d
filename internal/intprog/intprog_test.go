package intprog

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// brute returns the least cost by trying all x.
func brute(p *Problem) (best int64, ok bool) {
	x := slices.Clone(p.Lo)
	best = math.MaxInt64
	var walk func(j int)
	walk = func(j int) {
		if j == len(x) {
			if p.Kept(x) {
				best, ok = min(best, p.price(x)), true
			}
			return
		}
		for x[j] = p.Lo[j]; x[j] <= p.Hi[j]; x[j]++ {
			walk(j + 1)
		}
		x[j] = p.Lo[j]
	}
	walk(0)
	return best, ok
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
	if rapid.Bool().Draw(t, "first") {
		for range n {
			p.First = append(p.First, rapid.Bool().Draw(t, "of all"))
		}
	}
	return p
}

// Against every x, with all the steps there are and with few.
func TestSolveIsBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := draw(t)
		want, ok := brute(p)
		effort := int64(10_000_000)
		got := Solve(p, nil, &effort)
		if got.None == ok || ok && (got.X == nil || !p.Kept(got.X) || p.price(got.X) != want || got.Cost != want || got.Bound != want) {
			t.Fatalf("got %+v, want %d, %t", got, want, ok)
		}
		effort = rapid.Int64Range(0, 400).Draw(t, "effort")
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
	})
}

// Rows that follow from others cut off nothing: every x that keeps the rows keeps them.
func TestCutsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := draw(t)
		effort := int64(10_000_000)
		s := &search{Problem: p, rows: slices.Clip(p.Rows), effort: &effort, lo: slices.Clone(p.Lo), hi: slices.Clone(p.Hi), step: 1}
		s.root()
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
	})
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
		hidden.Broken = func(x []float64) (Row, bool) {
			for _, row := range p.Rows[1:] {
				sum := 0.0
				for k, j := range row.Col {
					sum += float64(float64(row.Coef[k]) * x[j])
				}
				if sum < float64(row.Least)-1e-6 {
					return row, true
				}
			}
			return Row{}, false
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
