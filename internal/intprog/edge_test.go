package intprog

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// proves checks that the search finds what costs so much, and that nothing costs less, in so many steps.
func proves(t *testing.T, name string, p *Problem, want, steps int64) *Result {
	t.Helper()
	effort := steps
	got := Solve(p, nil, &effort)
	if got.X == nil || !p.Kept(got.X) || p.price(got.X) != want || got.Cost != want || got.Bound != want {
		t.Errorf("%s: %+v after %d steps, want %d", name, got, steps-effort, want)
	}
	t.Log(name, steps-effort)
	return &got
}

// cover returns the problem of fewest points that meet all lines.
func cover(points int, lines [][]int) *Problem {
	p := &Problem{}
	for range points {
		p.Cost, p.Lo, p.Hi = append(p.Cost, 1), append(p.Lo, 0), append(p.Hi, 1)
	}
	for _, l := range lines {
		p.Rows = append(p.Rows, Row{Col: l, Coef: slices.Repeat([]int64{1}, len(l)), Least: 1})
	}
	return p
}

// affine returns the lines of three points of the affine space of a dimension over three elements: points whose
// sum is 0.
func affine(dimension int) (points int, lines [][]int) {
	points = 1
	for range dimension {
		points *= 3
	}
	for a := range points {
		for b := range a {
			c, place := 0, 1
			for x, y := a, b; place < points; x, y, place = x/3, y/3, 3*place {
				c += (6 - x%3 - y%3) % 3 * place
			}
			if c < b {
				lines = append(lines, []int{c, b, a})
			}
		}
	}
	return points, lines
}

// projective returns the lines of three points of the projective space of a dimension over two elements: numbers from 1
// whose exclusive or is 0, less 1.
func projective(dimension int) (points int, lines [][]int) {
	points = 1<<(dimension+1) - 1
	for a := 1; a <= points; a++ {
		for b := 1; b < a; b++ {
			if c := a ^ b; c < b {
				lines = append(lines, []int{c - 1, b - 1, a - 1})
			}
		}
	}
	return points, lines
}

// Covers whose columns and rows are all alike, so that everything ties. Sources: of the affine planes 5 and
// 18: D. R. Fulkerson, G. L. Nemhauser, L. E. Trotter, Two computationally difficult set covering problems, Mathematical
// Programming Study 2 (1974) 72-81, A9 and A27 (from memory). Of the projective ones 3 and 7, a line and a plane: R. C. Bose,
// R. C. Burton, Journal of Combinatorial Theory 1 (1966) 96-104 (from memory).
func TestSolveCovers(t *testing.T) {
	for _, tt := range []struct {
		name      string
		space     func(int) (int, [][]int)
		dimension int
		lines     int
		want      int64
	}{
		{"the affine plane", affine, 2, 12, 5},
		{"the affine space", affine, 3, 117, 18},
		{"the plane of Fano", projective, 2, 7, 3},
		{"the projective space", projective, 3, 35, 7},
	} {
		points, lines := tt.space(tt.dimension)
		if len(lines) != tt.lines {
			t.Fatalf("%s: %d lines, want %d", tt.name, len(lines), tt.lines)
		}
		proves(t, tt.name, cover(points, lines), tt.want, 50_000_000)
	}
}

// Linear programs that pivots cycle in or wander through. Sources: E. M. L. Beale, Cycling in the dual simplex algorithm, Naval
// Research Logistics Quarterly 2 (1955) 269-275, times 100 and with the third column up to 100, so that the least is -5
// at 4 and 100 (from memory). V. Klee, G. J. Minty, How good is the simplex algorithm, Inequalities III (1972) 159-175: the most
// is 5^8 (from memory).
func TestSolveCycles(t *testing.T) {
	beale := &Problem{
		Cost: []int64{-75, 15000, -2, 600}, Lo: []int64{0, 0, 0, 0}, Hi: []int64{1000, 1000, 100, 1000},
		Rows: []Row{{Col: []int{0, 1, 2, 3}, Coef: []int64{-25, 6000, 4, -900}}, {Col: []int{0, 1, 2, 3}, Coef: []int64{-50, 9000, 2, -300}}},
	}
	if got := proves(t, "Beale", beale, -500, 10_000); !slices.Equal(got.X, []int64{4, 0, 100, 0}) {
		t.Errorf("Beale: %v", got.X)
	}
	const n = 8
	klee := &Problem{}
	most := int64(1)
	for j := range n {
		most *= 5
		klee.Cost, klee.Lo, klee.Hi = append(klee.Cost, -1<<(n-1-j)), append(klee.Lo, 0), append(klee.Hi, most)
		row := Row{Least: -most}
		for k := range j {
			row.Col, row.Coef = append(row.Col, k), append(row.Coef, -1<<(j-k+1))
		}
		row.Col, row.Coef = append(row.Col, j), append(row.Coef, -1)
		klee.Rows = append(klee.Rows, row)
	}
	proves(t, "Klee and Minty", klee, -most, 10_000)
}

// The least at the edges of what is taken, by hand.
func TestSolveEdges(t *testing.T) {
	// 4x + 4y ≥ 4·10^9 - 3 asks for x + y ≥ 10^9. One x is cheaper than one y by 1, so that x is 2^30, and y makes up for it.
	const c, far, sum = 1 << 20, 1 << 30, 1_000_000_000
	proves(t, "dear and far from 0", &Problem{
		Cost: []int64{c, c + 1}, Lo: []int64{-far, -far}, Hi: []int64{far, far},
		Rows: []Row{{Col: []int{0, 1}, Coef: []int64{4, 4}, Least: 4*sum - 3}},
	}, c*far+(c+1)*(sum-far), 1000)

	// As many cells as there may be, with what pays.
	broad := &Problem{Cost: make([]int64, 1<<11), Lo: make([]int64, 1<<11), Hi: make([]int64, 1<<11), Rows: make([]Row, MaxCells>>11)}
	broad.Cost[3], broad.Hi[3], broad.Cost[8], broad.Hi[8] = -5, 2, 4, 2
	proves(t, "as many cells as there may be", broad, -10, 10_000_000)

	// Rows with a column that does not count: 3x ≥ 7, and of y at least 1.
	proves(t, "coefficients of 0", &Problem{
		Cost: []int64{5, 3, 1}, Lo: []int64{0, 0, 0}, Hi: []int64{9, 9, 9},
		Rows: []Row{{Col: []int{0, 1, 2}, Coef: []int64{3, 0, 0}, Least: 7}, {Col: []int{0, 1, 2}, Coef: []int64{0, 7, 0}, Least: 2}},
	}, 18, 1000)
}

// A row is not broken by what rounding makes of large numbers, even if Broken says so: a search ends. By hand: 3x + 7y ≥ 10^6 with
// 7 to 3 for the cost of y and x, and all of it a billionfold.
func TestSolveRounded(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 9))
	for range 20 {
		const large = 1_000_003
		p := &Problem{}
		var rows []Row
		for range 3 {
			row := Row{Least: large * (100 + r.Int64N(900))}
			for j := range 4 {
				row.Col, row.Coef = append(row.Col, j), append(row.Coef, large*(1+r.Int64N(20))+r.Int64N(1000))
			}
			rows = append(rows, row)
		}
		for range 4 {
			p.Cost, p.Lo, p.Hi = append(p.Cost, 50+r.Int64N(50)), append(p.Lo, 0), append(p.Hi, 1000)
		}
		open := *p
		open.Rows = rows
		effort := int64(100_000)
		want := Solve(&open, nil, &effort)
		p.Broken = func(x []float64) (broken []Row) {
			for _, row := range rows {
				sum := 0.0
				for k, j := range row.Col {
					sum += float64(float64(row.Coef[k]) * x[j])
				}
				if sum < float64(row.Least) {
					broken = append(broken, row)
				}
			}
			return broken
		}
		effort = 100_000
		got := Solve(p, nil, &effort)
		if want.Cost != want.Bound || got.Cost != want.Cost || got.Bound != want.Bound {
			t.Errorf("%+v after %d steps, want %+v", got, 100_000-effort, want)
		}
	}
}

// Where there are so many columns that few bases are kept, the search ends as it does without those that do not count.
func TestSolveFewBases(t *testing.T) {
	p := cover(projective(3))
	for range maxBases / 9 {
		p.Cost, p.Lo, p.Hi = append(p.Cost, 1), append(p.Lo, 0), append(p.Hi, 0)
	}
	proves(t, "few bases", p, 7, 1_000_000_000)
}

// The steps that a search takes are enough for it: with as many it ends as it does with more.
func TestStepsAreEnough(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 7))
	for k := range 60 {
		p := basket(r, 6+k%10, 3)
		effort := int64(1_000_000)
		want := Solve(p, nil, &effort)
		used := 1_000_000 - effort
		if want.Bound < want.Cost {
			continue
		}
		effort = used
		if got := Solve(p, nil, &effort); got.Bound != want.Bound || !slices.Equal(got.X, want.X) || effort != 0 {
			t.Errorf("%d: %+v with %d steps and %d left, want %+v", k, got, used, effort, want)
		}
	}
}

// What is proved impossible by a row: that all of it, at the weights found, comes to less than what is asked for. A row that can only
// just be kept proves nothing.
func TestRay(t *testing.T) {
	for _, tt := range []struct {
		reason string
		least  int64
		want   bool
	}{{"3·3 + 2·2 is less than 14", 14, true}, {"and as much as 13", 13, false}} {
		p := &Problem{Cost: []int64{1, 1}, Lo: []int64{0, 0}, Hi: []int64{3, 2}, Rows: []Row{{Col: []int{0, 1}, Coef: []int64{3, 2}, Least: tt.least}}}
		s := &search{Problem: p, rows: p.Rows, lo: p.Lo, hi: p.Hi, t: newTableau(p, p.Rows, p.Lo, p.Hi)}
		s.t.stuck, s.t.stuckUp = s.t.n, true
		if got := s.ray(); got != tt.want {
			t.Errorf("%s: %t", tt.reason, got)
		}
	}
}

// A tight row has no slack, however many pivots came before.
func TestTightRowsHaveNoSlack(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 17))
	for range 200 {
		p := relaxed(r)
		effort := int64(math.MaxInt64)
		tab := newTableau(p, p.Rows, p.Lo, p.Hi)
		tab.optimize(&effort)
		for i, v := range tab.slack {
			if tab.isTight(i) && v != 0 {
				t.Fatalf("%v in row %d", v, i)
			}
		}
	}
}
